//! The signals everything shares: settings, the bench (set-up, prediction, run), and how they change.

use crate::geometry::{Geometry, P};
use crate::grade::changes::ChangeEffect;
use crate::grade::report::{Report, problems};
use crate::physics::trace::Outcome;
use crate::practice::hand::Held;
use crate::practice::inspection::GearPart;
use crate::scenario::{Problem, Scenario};
use crate::texts::say;
use crate::texts::{Key, Stage as S};
use crate::ui::shared::asking::NoAnswer;
use crate::ui::shared::settings::Settings;
use crate::ui::shared::{asking, store, view};
use crate::worker::questions::{Changes, Fall};
use leptos::prelude::*;
use std::sync::Arc;

/// Where the bench is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Phase {
    /// Choosing a set-up and a prediction.
    Choosing,
    /// The fall is being computed.
    Computing,
    /// The first showing, before the verdict.
    Playing,
    /// The verdict is shown.
    Shown,
}

/// An answer before the fall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Said {
    /// How it will end.
    Ends(Outcome),
    /// Not to go ahead, but to stop and ask.
    Ask,
}

/// Why a part in hand goes no further.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stop {
    /// Where the part is, m.
    pub at: P,
    /// Which way it would go, a unit vector.
    pub way: P,
    /// What is there.
    pub word: S,
}

/// The answers, in the order of their keys.
pub const ANSWERS: [Said; 4] =
    [Said::Ends(Outcome::Stopped), Said::Ends(Outcome::Strikes), Said::Ends(Outcome::LetGo), Said::Ask];

/// Gives the answer of a number key.
pub fn answer(bench: Bench, key: &str) {
    if let Some(o) = key.parse::<usize>().ok().and_then(|n| ANSWERS.get(n.wrapping_sub(1))) {
        bench.prediction.set(Some(*o));
    }
}

/// Where the flag stands before anybody has moved it, m: a metre under the boots.
pub fn start_m(g: &Geometry) -> f64 {
    (g.soles.y - 1.0).max(g.surface_below_m(g.soles.x, 0.2))
}

/// The set-up, the prediction and the run.
#[derive(Clone, Copy)]
pub struct Bench {
    pub scenario: RwSignal<Scenario>,
    past: RwSignal<Vec<Scenario>>,
    future: RwSignal<Vec<Scenario>>,
    pub prediction: RwSignal<Option<Said>>,
    /// Where the boots stop, as guessed by the flag, m above the ground; none while nobody moved it.
    pub guess: RwSignal<Option<f64>>,
    /// What keeps the part in hand from going on.
    pub stop: RwSignal<Option<Stop>>,
    pub phase: RwSignal<Phase>,
    pub run: RwSignal<Option<Arc<Report>>>,
    pub ghost: RwSignal<Option<Arc<Report>>>,
    /// What single changes would do, once the engine has said.
    pub effects: RwSignal<Option<Result<Vec<ChangeEffect>, NoAnswer>>>,
    /// The parts looked over before the climb, and whether each was passed as fit.
    pub looked: RwSignal<Vec<(GearPart, bool)>>,
    /// Distance along the wall that is looked at, m.
    pub along: RwSignal<f64>,
    /// What came is about a place along the wall: it is looked at from in front.
    pub from_front: RwSignal<bool>,
    /// What the live region says.
    pub said: RwSignal<String>,
    /// What became of the last file or link, as a sentence.
    pub notice: RwSignal<String>,
    pub kept: RwSignal<bool>,
    /// The set-up on the bench came by a link and is only looked at: it is not kept until it is edited.
    looked_at: RwSignal<bool>,
    /// The set-ups that links took the place of, the last one last.
    pub mine: RwSignal<Vec<Scenario>>,
    pub problems: Memo<Vec<Problem>>,
    /// The last geometry that could be built.
    pub geometry: Memo<Option<Geometry>>,
    /// The set-up that is drawn: the last one whose numbers are in range.
    pub drawn: Memo<Scenario>,
    /// The part that the handles are at.
    pub held: RwSignal<Held>,
    /// The set-up before a part was picked up, while one is in hand.
    before_hand: RwSignal<Option<Scenario>>,
    generation: StoredValue<u32>,
}

/// Set-ups that undo can go back to.
const UNDO_DEPTH: usize = 100;

pub fn provide_bench(s: Settings) -> Bench {
    let opened = store::load_scenario(s);
    let scenario = RwSignal::new(opened.now);
    let looked_at = RwSignal::new(opened.looked_at);
    let mine = RwSignal::new(opened.mine);
    let bench = Bench {
        scenario,
        past: RwSignal::new(vec![]),
        future: RwSignal::new(vec![]),
        prediction: RwSignal::new(None),
        guess: RwSignal::new(None),
        stop: RwSignal::new(None),
        phase: RwSignal::new(Phase::Choosing),
        run: RwSignal::new(None),
        ghost: RwSignal::new(None),
        effects: RwSignal::new(None),
        looked: RwSignal::new(vec![]),
        along: RwSignal::new(2.0),
        from_front: RwSignal::new(false),
        said: RwSignal::new(String::new()),
        notice: RwSignal::new(opened.notice),
        kept: RwSignal::new(true),
        looked_at,
        mine,
        problems: Memo::new(move |_| scenario.with(problems)),
        drawn: Memo::new(move |old: Option<&Scenario>| {
            let fits = scenario.with(|s| s.range_problems().is_empty());
            if fits { scenario.get() } else { old.cloned().unwrap_or_default() }
        }),
        geometry: Memo::new(move |old: Option<&Option<Geometry>>| {
            let fresh = scenario.with(|s| s.range_problems().is_empty().then(|| Geometry::of(s)).flatten());
            fresh.or_else(|| old.cloned().flatten())
        }),
        held: RwSignal::new(Held::Grab),
        before_hand: RwSignal::new(None),
        generation: StoredValue::new(0),
    };
    provide_context(bench);
    Effect::new(move |_| {
        // What is out of range is not kept: it would come back with the next visit.
        if bench.looked_at.get() {
            return;
        }
        let kept = bench.drawn.with(store::save_scenario);
        bench.kept.set(kept);
    });
    Effect::new(move |_| bench.mine.with(|m| store::save_mine(m)));
    // The rooms read what is drawn and how this reader sees it.
    Effect::new(move |_| bench.drawn.with(|now| view::post(s, now)));
    view::take_set_ups(scenario, move |found| match store::known(found) {
        Ok(fresh) => bench.look_at(fresh),
        Err(e) => {
            bench.notice.set(say::file_error(s.reader_now(), &e));
            // The address is again that of what is on the bench.
            if bench.looked_at.get_untracked() {
                view::show_link(&bench.scenario.get_untracked());
            } else {
                view::forget_link();
            }
        }
    });
    bench
}

pub fn bench() -> Bench {
    expect_context()
}

impl Bench {
    /// Opens a set-up that came by a link or from a room. It is looked at: the one that was there is one
    /// step back, however much is done with the new one.
    pub fn look_at(self, fresh: Scenario) {
        self.notice.set(String::new());
        if let Some(m) = store::take_aside() {
            self.along.set(m);
            self.from_front.set(m > 0.0);
        }
        let before = self.drawn.get_untracked();
        if fresh == before {
            return;
        }
        // One that was itself only looked at is not one's own.
        if !self.looked_at.get_untracked() && self.mine.with_untracked(|m| m.last() != Some(&before)) {
            self.mine.update(|m| m.push(before));
        }
        // Not by the edit: the address now holds the new one.
        self.looked_at.set(false);
        self.edit(|now| *now = fresh);
        self.looked_at.set(true);
    }

    /// Whether what is on the bench came by a link and is not kept yet.
    pub fn is_looked_at(self) -> bool {
        self.looked_at.get()
    }

    /// Goes back to the set-up that a link took the place of.
    pub fn back_to_mine(self) {
        let Some(mine) = self.mine.with_untracked(|m| m.last().cloned()) else { return };
        self.mine.update(|m| drop(m.pop()));
        self.edit(|now| *now = mine);
        self.make_own();
    }

    /// Keeps the set-up on the bench; what it took the place of can still be had by undo.
    pub fn keep_this_one(self) {
        self.mine.set(vec![]);
        self.make_own();
    }

    /// From now on the set-up on the bench is the one that is kept.
    fn make_own(self) {
        if self.looked_at.get_untracked() {
            self.looked_at.set(false);
            view::forget_link();
        }
    }

    /// Changes the set-up; the fall shown, if any, becomes the ghost.
    pub fn edit(self, change: impl FnOnce(&mut Scenario)) {
        let before = self.scenario.get_untracked();
        let mut after = before.clone();
        change(&mut after);
        if after == before {
            return;
        }
        self.past.update(|p| {
            p.push(before);
            if p.len() > UNDO_DEPTH {
                p.remove(0);
            }
        });
        self.future.set(vec![]);
        self.scenario.set(after);
        self.notice.set(String::new());
        self.make_own();
        self.back_to_choosing();
    }

    /// Whether a part is in hand.
    pub fn has_in_hand(self) -> bool {
        self.before_hand.with(Option::is_some)
    }

    /// Picks the part up: what follows can be put back as one.
    pub fn pick_up(self) {
        if self.before_hand.with_untracked(Option::is_none) {
            self.before_hand.set(Some(self.scenario.get_untracked()));
        }
    }

    /// The set-up while the part is in hand.
    pub fn carry(self, now: Scenario) {
        if self.scenario.with_untracked(|s| *s != now) {
            self.scenario.set(now);
        }
    }

    /// Puts the part down, or back where it was.
    pub fn put_down(self, keep: bool) {
        let Some(before) = self.before_hand.get_untracked() else { return };
        self.before_hand.set(None);
        let now = self.scenario.get_untracked();
        if now != before {
            self.scenario.set(before);
            if keep {
                self.edit(|s| *s = now);
            }
        }
    }

    /// Sets the flag, between the lowest ground and the boots as they stand.
    pub fn set_guess(self, at_m: f64) {
        let range = self.geometry.with_untracked(|g| {
            g.as_ref().map(|g| (g.ground_y_m(g.ladder.foot.x.max(g.soles.x)).min(0.0), g.soles.y))
        });
        let Some((low, high)) = range else { return };
        if at_m.is_finite() {
            self.guess.set(Some(crate::units::within((at_m * 20.0).round() / 20.0, low, high)));
        }
    }

    /// From the fall back to the set-up, which stays as it is.
    pub fn leave_fall(self) {
        self.back_to_choosing();
    }

    fn back_to_choosing(self) {
        self.said.set(String::new());
        self.generation.update_value(|g| *g += 1);
        if self.phase.get_untracked() != Phase::Choosing {
            if let Some(r) = self.run.get_untracked() {
                self.ghost.set(Some(r));
            }
            self.run.set(None);
            self.effects.set(None);
            self.prediction.set(None);
            self.guess.set(None);
            self.phase.set(Phase::Choosing);
        }
    }

    pub fn can_undo(self) -> bool {
        self.past.with(|p| !p.is_empty())
    }
    pub fn can_redo(self) -> bool {
        self.future.with(|p| !p.is_empty())
    }
    pub fn undo(self) {
        self.step(self.past, self.future);
    }
    pub fn redo(self) {
        self.step(self.future, self.past);
    }
    fn step(self, from: RwSignal<Vec<Scenario>>, to: RwSignal<Vec<Scenario>>) {
        let mut taken = None;
        from.update(|p| taken = p.pop());
        if let Some(s) = taken {
            to.update(|p| p.push(self.scenario.get_untracked()));
            self.scenario.set(s);
            self.make_own();
            self.back_to_choosing();
        }
    }

    /// Asks the engine for the fall, then hands it to `then`.
    pub fn play(self, settings: Settings, then: impl Fn(Arc<Report>) + 'static) {
        let scenario = self.scenario.get_untracked();
        if self.prediction.get_untracked().is_none() {
            self.said.set(settings.reader_now().t(S::SayFirst).to_owned());
            return;
        }
        let Some(set_up) = scenario.set_up().ok().filter(|_| problems(&scenario).is_empty()) else { return };
        self.phase.set(Phase::Computing);
        self.generation.update_value(|g| *g += 1);
        let generation = self.generation.get_value();
        asking::ask(Fall(set_up.clone()), move |answer| {
            if self.generation.try_get_value() != Some(generation) {
                return;
            }
            if let Some(r) = answer.ok().and_then(|t| Report::of(set_up, t)) {
                let r = Arc::new(r);
                self.run.set(Some(r.clone()));
                then(r);
            } else {
                self.phase.set(Phase::Choosing);
                self.notice.set(settings.reader_now().t(Key::EngineMissing).to_owned());
            }
        });
    }

    /// Shows the verdict and says it.
    pub fn show(self, settings: Settings) {
        self.phase.set(Phase::Shown);
        view::to_view("verdict");
        let generation = self.generation.get_value();
        if let Some(r) = self.run.get_untracked() {
            asking::ask(Changes(r.set_up.clone()), move |answer| {
                if self.generation.try_get_value() == Some(generation) {
                    self.effects.set(Some(answer));
                }
            });
            if r.trace.is_sound() {
                store::add_endings(crate::practice::lessons::Ending::of(&r.trace));
            }
            let reader = settings.reader_now();
            let head = say::headline(reader, &r);
            self.said.set(format!("{} {}", head.sentence, head.figure));
        }
    }
}
