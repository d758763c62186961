//! The falls of what is shown, asked of the engine once each.

use crate::geometry::SetUp;
use crate::grade::report::Report;
use crate::practice::demos::{Demo, Ends, ended};
use crate::studies::along_wall::Swing;
use crate::ui::shared::asking;
use crate::worker::questions::{Fall, Swings};
use leptos::prelude::*;
use std::collections::{HashMap, HashSet};
use std::sync::Arc;

/// A fall and what it means; along the wall with its swing.
#[derive(Clone)]
pub struct Fallen {
    /// The judged fall.
    pub report: Arc<Report>,
    /// The swing from its place along the wall.
    pub swing: Option<Arc<Swing>>,
}

impl Fallen {
    /// How it ended, in the room's words; none where it cannot be shown.
    pub fn ended(&self) -> Option<Ends> {
        ended(&self.report, self.swing.as_deref())
    }
}

/// The falls of scenarios under a place's rules, by number and place along the wall.
#[derive(Clone, Copy)]
pub struct Falls {
    all: RwSignal<HashMap<u32, Fallen>>,
    asked: StoredValue<HashMap<u32, (Demo, String)>>,
    /// Those whose set-up cannot be played.
    bad: RwSignal<HashSet<u32>>,
}

impl Falls {
    pub fn new() -> Falls {
        Falls {
            all: RwSignal::new(HashMap::new()),
            asked: StoredValue::new(HashMap::new()),
            bad: RwSignal::new(HashSet::new()),
        }
    }

    /// The fall of a number, once it is there.
    pub fn of(self, id: u32) -> Option<Fallen> {
        self.all.with(|all| all.get(&id).cloned())
    }

    /// Asks for a scenario's fall, unless it has been asked for as it is.
    pub fn ask(self, d: &Demo, place: &str) {
        let now = (d.clone(), place.to_owned());
        if self.asked.with_value(|a| a.get(&d.id) == Some(&now)) {
            return;
        }
        self.all.update(|all| {
            all.remove(&d.id);
        });
        self.asked.update_value(|a| {
            a.insert(d.id, now);
        });
        let Ok(set_up) = d.under(place).set_up() else {
            return self.bad.update(|b| {
                b.insert(d.id);
            });
        };
        self.bad.update(|b| {
            b.remove(&d.id);
        });
        let (d, asked) = (d.clone(), set_up.clone());
        asking::ask(Fall(set_up), move |answer| {
            let report = answer.ok().and_then(|t| Report::of(asked.clone(), t));
            match report {
                Some(report) if d.is_along() => self.ask_swing(d, asked, report),
                Some(report) => self.put(&d, Fallen { report: Arc::new(report), swing: None }),
                None => self.forget(d.id),
            }
        });
    }

    fn ask_swing(self, d: Demo, set_up: SetUp, report: Report) {
        asking::ask(Swings(set_up), move |answer| {
            let far = |w: &Swing| (w.offset_m - d.along_m).abs();
            let near = answer.unwrap_or_default().into_iter().min_by(|a, b| far(a).total_cmp(&far(b)));
            match near {
                Some(w) => self.put(&d, Fallen { report: Arc::new(report), swing: Some(Arc::new(w)) }),
                None => self.forget(d.id),
            }
        });
    }

    /// Whether its set-up cannot be played.
    pub fn is_bad(self, id: u32) -> bool {
        self.bad.with(|b| b.contains(&id))
    }

    /// It may have been changed since, or the room left.
    fn put(self, d: &Demo, fallen: Fallen) {
        let law = fallen.report.set_up.place.clone();
        let same = |a: &HashMap<u32, (Demo, String)>| a.get(&d.id).is_some_and(|x| x.0 == *d && x.1 == law);
        if self.asked.try_with_value(same) == Some(true) {
            self.all.try_update(|all| all.insert(d.id, fallen));
        }
    }

    /// Asked for again when it is next needed.
    fn forget(self, id: u32) {
        self.asked.try_update_value(|a| a.remove(&id));
    }
}
