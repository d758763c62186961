//! A working day and what has been worked out of it: the signals that its screens share.

use crate::physics::trace::Trace;
use crate::practice::day::{Before, Risk, Shift};
use crate::practice::houses::HouseKind;
use crate::texts::Lang;
use crate::texts::say::Reader;
use crate::ui::shared::asking;
use crate::ui::shared::store;
use crate::worker::questions::{Fall, Shift as ShiftLog};
use leptos::prelude::*;
use serde::{Deserialize, Serialize};
use std::sync::Arc;

/// Minute of the day when the shift begins.
const STARTS_MIN: u32 = 7 * 60 + 30;
/// A minute of the shift as a time of day.
pub fn clock(r: Reader, minute: u32) -> String {
    let m = STARTS_MIN + minute;
    let mark = if r.lang == Lang::Fr { " h " } else { ":" };
    format!("{}{mark}{:02}", m / 60, m % 60)
}

/// A day as this tab keeps it.
#[derive(Serialize, Deserialize)]
struct Kept {
    shift: Shift,
    before: Before,
    looked: Option<u32>,
    over: bool,
    begun: (HouseKind, u64),
}

/// A day and what has been worked out of it.
#[derive(Clone, Copy)]
pub struct Today {
    /// The house.
    pub house: RwSignal<HouseKind>,
    /// The day's number.
    pub seed: RwSignal<u64>,
    /// The shift.
    pub shift: RwSignal<Option<Shift>>,
    /// What is to be done before the next job.
    pub before: RwSignal<Before>,
    /// Minute of the last look at bolt and latch, if there was one.
    pub looked: RwSignal<Option<u32>>,
    /// It is over.
    pub over: RwSignal<bool>,
    /// What a slip in each stretch would have come to.
    pub risks: RwSignal<Option<Vec<Risk>>>,
    /// The engine cannot say.
    pub failed: RwSignal<bool>,
    /// The fall that came, if one did.
    pub fall: RwSignal<Option<Arc<Trace>>>,
    /// House and number of the day that was begun last.
    begun: StoredValue<(HouseKind, u64)>,
    turn: StoredValue<u32>,
}

impl Today {
    /// A day at the usual house.
    pub fn new() -> Today {
        Today {
            house: RwSignal::new(HouseKind::TwoStorey),
            seed: RwSignal::new(super::desk::fresh_seed() % 1000),
            shift: RwSignal::new(None),
            before: RwSignal::new(Before::default()),
            looked: RwSignal::new(None),
            over: RwSignal::new(false),
            risks: RwSignal::new(None),
            failed: RwSignal::new(false),
            fall: RwSignal::new(None),
            begun: StoredValue::new((HouseKind::TwoStorey, 0)),
            turn: StoredValue::new(0),
        }
    }

    /// Begins this day, from its first minute.
    pub fn start(self, place: &str) {
        self.begun.set_value((self.house.get_untracked(), self.seed.get_untracked()));
        self.shift.set(Some(Shift::of(self.seed.get_untracked(), self.house.get_untracked(), place)));
        self.before.set(Before::default());
        self.looked.set(None);
        self.over.set(false);
        self.risks.set(None);
        self.fall.set(None);
        self.turn.update_value(|t| *t += 1);
    }

    /// Keeps the day for this tab; reads every signal that it keeps, so an effect around it runs on each change.
    pub fn keep(self) {
        let (before, looked, over) = (self.before.get(), self.looked.get(), self.over.get());
        let begun = self.begun.get_value();
        if let Some(shift) = self.shift.get() {
            store::keep_here(store::DAY, &Kept { shift, before, looked, over, begun });
        }
    }

    /// Goes on with the day that this tab was left in; false where there is none.
    pub fn take_up(self) -> bool {
        let Some(kept) = store::kept_here::<Kept>(store::DAY).filter(|k| k.shift.is_possible()) else {
            return false;
        };
        self.begun.set_value(kept.begun);
        self.same();
        self.shift.set(Some(kept.shift));
        self.before.set(kept.before);
        self.looked.set(kept.looked);
        if kept.over {
            self.finish();
        }
        true
    }

    /// Goes back to house and number of the day that was begun last.
    pub fn same(self) {
        let (house, seed) = self.begun.get_value();
        self.house.set(house);
        self.seed.set(seed);
    }

    /// Ends it: each stretch is judged.
    pub fn finish(self) {
        let Some(s) = self.shift.get_untracked() else { return };
        self.over.set(true);
        self.failed.set(false);
        self.risks.set(None);
        self.fall.set(None);
        self.turn.update_value(|t| *t += 1);
        // An answer to a shift that is gone says nothing of this one.
        let mine = self.turn.get_value();
        let is_mine = move || self.turn.try_get_value() == Some(mine);
        if let Some(set_up) = s.slipped.then(|| s.set_up.set_up().ok()).flatten() {
            asking::ask(Fall(set_up), move |answer| {
                if let Some(t) = answer.ok().filter(|t| is_mine() && t.is_sound()) {
                    let _ = self.fall.try_set(Some(Arc::new(t)));
                }
            });
        }
        asking::ask(ShiftLog(s.log), move |answer| {
            if is_mine() {
                match answer {
                    Ok(all) => self.risks.set(Some(all)),
                    Err(_) => self.failed.set(true),
                }
            }
        });
    }
}
