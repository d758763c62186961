//! What a trainer shows to a room: set-ups with a question, what they teach, a partner that differs in one choice, and
//! how the fall is said to end. One file each in `demos/`; another file is another of them, without code.
//!
//! Houses and people are invented. A test plays every one and holds it to the end that it claims.

use crate::grade::report::Report;
use crate::physics::trace::Outcome;
use crate::practice::hand::Held;
use crate::rules::{Bilingual, Finding, FindingCode, HARD_SWING_M_S, Severity};
use crate::scenario::Scenario;
use crate::studies::along_wall::Swing;
use include_dir::{Dir, include_dir};
use serde::{Deserialize, Serialize};
use std::sync::LazyLock;

static FILES: Dir = include_dir!("$CARGO_MANIFEST_DIR/src/practice/demos");

/// A kind of place or work.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Family {
    /// Soffit from a ladder.
    Soffit,
    /// On the slope, at a dormer.
    Dormer,
    /// Tied to, or beside, a chimney.
    Chimney,
    /// A gable end.
    Gable,
    /// A walk-out basement or a deck.
    Basement,
    /// Moving along the wall.
    Along,
}

impl Family {
    /// All, in the order in which they are shown.
    pub const ALL: [Family; 6] =
        [Family::Soffit, Family::Dormer, Family::Chimney, Family::Gable, Family::Basement, Family::Along];
}

/// How a fall ends, as a room can say it beforehand.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Ends {
    /// It holds.
    Holds,
    /// On the ground, or on what stands there.
    Down,
    /// Something on the line lets go.
    Loose,
    /// Held, with a swing as fast as a bad drop.
    Swings,
    /// Nobody should go up here as it is: another method, or somebody to ask.
    Asks,
}

/// One of them.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Demo {
    /// Its number, as in its address.
    pub id: u32,
    /// Family.
    pub family: Family,
    /// Its own name, which the room does not read before the end.
    pub name: Bilingual,
    /// What it teaches.
    pub point: Bilingual,
    /// What the trainer says while it is asked.
    pub say: Bilingual,
    /// What to ask the room afterwards.
    pub after: Bilingual,
    /// The part that matters.
    pub part: Part,
    /// The one that differs in one choice.
    pub partner: u32,
    /// How it is said to end.
    pub expected: Ends,
    /// So long it takes in a room, min.
    pub minutes: u32,
    /// How far along the wall from the anchor's plumb line the worker is, m.
    #[serde(default)]
    pub along_m: f64,
    /// The set-up; what is not said is as usual.
    pub set_up: Scenario,
}

/// What a lens is on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Part {
    /// The grab.
    Grab,
    /// The anchor.
    Anchor,
    /// The link.
    Lanyard,
    /// The rope.
    Lifeline,
    /// The ladder.
    Ladder,
    /// None: it is the place.
    Place,
}

impl Part {
    /// The part in the hand.
    pub fn held(self) -> Option<Held> {
        match self {
            Part::Grab => Some(Held::Grab),
            Part::Anchor => Some(Held::Anchor),
            _ => None,
        }
    }
}

static DEMOS: LazyLock<Vec<Demo>> = LazyLock::new(|| {
    let mut all: Vec<Demo> =
        FILES.files().filter_map(|f| serde_json::from_slice(f.contents()).ok()).collect();
    all.sort_by_key(|d| d.id);
    all
});

/// All, by number.
pub fn demos() -> &'static [Demo] {
    &DEMOS
}

/// The one of a number.
pub fn demo(id: u32) -> Option<&'static Demo> {
    demos().iter().find(|d| d.id == id)
}

impl Demo {
    /// The set-up under a place's rules.
    pub fn under(&self, place: &str) -> Scenario {
        Scenario { place: place.to_owned(), ..self.set_up.clone() }
    }

    /// Whether it is seen from in front.
    pub fn is_along(&self) -> bool {
        self.family == Family::Along
    }

    /// What a room can answer.
    pub fn answers(&self) -> [Ends; 4] {
        match self.is_along() {
            true => [Ends::Holds, Ends::Swings, Ends::Down, Ends::Asks],
            false => [Ends::Holds, Ends::Down, Ends::Loose, Ends::Asks],
        }
    }
}

/// What nobody should go up with, whatever the fall would do.
const STOPS: [FindingCode; 3] =
    [FindingCode::WireUnknown, FindingCode::PowerLine, FindingCode::RescueMissing];

/// What says that nobody should go up, if anything does.
pub fn stop_of(rep: &Report) -> Option<&Finding> {
    rep.findings.iter().find(|f| STOPS.contains(&f.code) && f.severity <= Severity::Major)
}

/// How it ended, in the room's words; none where the run failed its own check. `swing` is the one of the place
/// along the wall, where there is one.
pub fn ended(rep: &Report, swing: Option<&Swing>) -> Option<Ends> {
    if !rep.trace.is_sound() {
        return None;
    }
    if stop_of(rep).is_some() {
        return Some(Ends::Asks);
    }
    Some(match rep.trace.outcome {
        Outcome::LetGo => Ends::Loose,
        Outcome::Strikes => Ends::Down,
        Outcome::Stopped => match swing {
            Some(w) if w.room_m().is_some_and(|m| m < 0.0) => Ends::Down,
            Some(w) if w.free.speed_m_s >= HARD_SWING_M_S => Ends::Swings,
            _ => Ends::Holds,
        },
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::physics::simulate;
    use crate::studies::along_wall::swing;

    #[test]
    fn there_are_twenty_four_in_six_families_and_every_file_is_read() {
        assert_eq!(FILES.files().count(), demos().len());
        assert_eq!(demos().len(), 24);
        for f in Family::ALL {
            assert_eq!(demos().iter().filter(|d| d.family == f).count(), 4, "{f:?}");
        }
        let mut ids: Vec<u32> = demos().iter().map(|d| d.id).collect();
        ids.dedup();
        assert_eq!(ids.len(), 24);
        for d in demos() {
            let words = [&d.name, &d.point, &d.say, &d.after];
            assert!(words.iter().all(|w| !w.en.is_empty() && !w.fr.is_empty() && w.en != w.fr), "{}", d.id);
            assert!(d.answers().contains(&d.expected), "{}", d.id);
        }
    }

    /// Every one is played, under the rules of four places, and ends as it claims.
    #[test]
    fn each_ends_as_it_claims() {
        let mut wrong = Vec::new();
        for d in demos() {
            for place in ["on", "qc", "us_construction", "ab"] {
                let s = d.under(place);
                let Ok(set_up) = s.set_up() else {
                    wrong.push(format!("{} {:?}", d.id, s.problems()));
                    continue;
                };
                let w = swing(&set_up, d.along_m).filter(|_| d.is_along());
                let rep = Report::of(set_up.clone(), simulate(&set_up)).expect("a place");
                let came = ended(&rep, w.as_ref());
                if came != Some(d.expected) {
                    let told = rep.findings.iter().take(3).map(|f| f.code).collect::<Vec<_>>();
                    let t = &rep.trace;
                    wrong.push(format!(
                        "{} {place}: {came:?}, not {:?}; {told:?} {:.0} N, room {:?}",
                        d.id, d.expected, t.peak_force_n, t.clearance_margin_m
                    ));
                }
            }
        }
        assert!(wrong.is_empty(), "{wrong:#?}");
    }

    /// A contrast is one change: one part of the set-up, or the place along the wall.
    #[test]
    fn partners_differ_in_one_thing() {
        for d in demos() {
            let other = demo(d.partner).expect("is there");
            let (x, y) = (serde_json::to_value(&d.set_up), serde_json::to_value(&other.set_up));
            let (x, y) = (x.expect("writes"), y.expect("writes"));
            let parts = x.as_object().expect("parts").iter().filter(|(k, v)| y[k.as_str()] != **v).count();
            let aside = usize::from(d.along_m != other.along_m);
            assert_eq!(parts + aside, 1, "{} and {}", d.id, other.id);
        }
    }
}
