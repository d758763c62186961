//! One change at a time: the same fall computed again with a single thing put right.
//!
//! Each change is a whole run of the engine, not an estimate, so the score it promises is the score
//! it gives. Left out: changes of what the person cannot choose (mass, house).

use crate::geometry::SetUp;
use crate::grade::report::Report;
use crate::grade::scoring::Grade;
use crate::physics::simulate;
use crate::scenario::{
    Absorber, AnchorChosenBy, AnchorKind, Arrow, Bolt, Gear, HarnessFit, Latch, RescuePlan, RopeEdge,
    RopeEnd, Scenario, Stance,
};
use serde::{Deserialize, Serialize};

macro_rules! changes {
    ($($name:ident, $doc:literal, $apply:expr;)*) => {
        /// A single change of a set-up.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
        #[serde(rename_all = "snake_case")]
        pub enum Change { $(#[doc = $doc] $name,)* }
        impl Change {
            /// All, in the order of the system from the anchor down.
            pub const ALL: &'static [Change] = &[$(Change::$name,)*];

            /// Makes the change.
            pub fn apply(self, s: &mut Scenario) {
                match self { $(Change::$name => { let f: fn(&mut Scenario) = $apply; f(s) })* }
            }
        }
    };
}

changes! {
    Framing, "The anchor into the framing.",
        |s| { s.anchor.kind = AnchorKind::RidgePlateInFraming; s.anchor.fasteners.missed = 0 };
    Rated, "A rated anchor.",
        |s| s.anchor.kind = AnchorKind::RatedEye;
    RopeEnd, "The maker's stop at the rope's end.", |s| s.lifeline.end = RopeEnd::MakersStop;
    NoSlack, "The slack taken out of the lifeline.", |s| s.lifeline.slack_m = 0.0;
    PadEdge, "A pad on the roof's edge.", |s| s.lifeline.edge = RopeEdge::Padded;
    GrabUp, "The grab as high as the lanyard reaches.", raise_grab;
    ArrowUp, "The grab's arrow to the anchor.", |s| s.grab.arrow = Arrow::Up;
    BoltTight, "The grab's bolt tight.", |s| s.grab.bolt = Bolt::Tight;
    LatchClosed, "The grab's latch closed.", |s| s.grab.latch = Latch::Closed;
    WithAbsorber, "A lanyard with an absorber.",
        |s| if s.lanyard.absorber.is_none() { s.lanyard.absorber = Some(Absorber::default()) };
    ShortLanyard, "A link of 0.6 m.",
        |s| if s.lanyard.length_m > 0.6 && s.grab.above_dring_m.abs() < 0.6 { s.lanyard.length_m = 0.6 };
    ClipIn, "The lanyard clipped in.", |s| s.lanyard.clipped = true;
    TieLadder, "The ladder tied at the top.",
        |s| if matches!(s.stance, Stance::Ladder { .. }) { s.ladder.tied = true };
    StandInLine, "Standing between the rails.",
        |s| if matches!(s.stance, Stance::Ladder { .. }) { s.ladder.reach_out_m = 0.0 };
    HarnessSnug, "The harness drawn up.", |s| s.worker.harness = HarnessFit::Snug;
    SoundGear, "Faulty gear changed.", |s| s.gear = Gear::default();
    LadderFoot, "The ladder's foot at a quarter of its length.",
        |s| if matches!(s.stance, Stance::Ladder { .. })
            && let Some(g) = crate::geometry::Geometry::of(s) {
            let length_m = g.ladder.foot.dist(g.ladder.support);
            s.ladder.foot_distance_m = libm::round(length_m * 5.0) / 20.0;
        };
    RescueWritten, "A rescue plan in writing.", |s| s.plan.rescue = RescuePlan::Written;
    CompetentChooser, "The anchor chosen by a competent person.",
        |s| if s.plan.anchor_by == AnchorChosenBy::Worker { s.plan.anchor_by = AnchorChosenBy::CompetentPerson };
}

/// Steps down from a lanyard's length, since the rope does not run through the D-ring.
fn raise_grab(s: &mut Scenario) {
    let mut tried = s.clone();
    let mut twentieths = (s.lanyard.length_m.min(2.0) * 20.0).floor();
    while twentieths / 20.0 > s.grab.above_dring_m + 0.04 {
        tried.grab.above_dring_m = twentieths / 20.0;
        if tried.problems().is_empty() {
            s.grab.above_dring_m = tried.grab.above_dring_m;
            return;
        }
        twentieths -= 1.0;
    }
}

/// What a change did.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct ChangeEffect {
    /// The change.
    pub change: Change,
    /// The score with it, 0 to 100.
    pub score: u32,
    /// No critical finding with it.
    pub passes: bool,
}

/// Every change that scores higher than the set-up does, or passes where it does not, best first.
pub fn effects(s: &SetUp) -> Vec<ChangeEffect> {
    let graded = |s: SetUp| {
        let t = simulate(&s);
        match Report::of(s, t).map(|r| r.grade) {
            Some(Grade::Graded { score, passes, .. }) => Some((passes, score)),
            _ => None,
        }
    };
    let Some(before) = graded(s.clone()) else { return Vec::new() };
    let mut out: Vec<ChangeEffect> = Change::ALL
        .iter()
        .filter_map(|&change| {
            let mut after = s.scenario().clone();
            change.apply(&mut after);
            if after == *s.scenario() {
                return None;
            }
            let (passes, score) = graded(after.set_up().ok()?).filter(|a| *a > before)?;
            Some(ChangeEffect { change, score, passes })
        })
        .collect();
    // A stable order: equal ones stay in the order of the system.
    out.sort_by_key(|e| std::cmp::Reverse((e.passes, e.score)));
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn turning_a_reversed_grab_helps_most_and_keeps_its_promise() {
        let mut s = Scenario::default();
        s.grab.arrow = Arrow::Down;
        let all = effects(&s.set_up().expect("possible"));
        assert_eq!(all.first().map(|e| e.change), Some(Change::ArrowUp));
        Change::ArrowUp.apply(&mut s);
        let r = Report::run(&s).expect("runs");
        assert!(matches!(r.grade, Grade::Graded { score, .. } if score == all[0].score));
    }

    #[test]
    fn a_change_that_changes_nothing_or_cannot_be_built_is_not_offered() {
        let s = Scenario::default();
        assert!(
            effects(&s.set_up().expect("possible"))
                .iter()
                .all(|e| e.change != Change::ArrowUp && e.change != Change::HarnessSnug)
        );
    }
}
