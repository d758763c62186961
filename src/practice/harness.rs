//! Putting the harness on: its straps, what is left wrong, and what that does to a fall.
//!
//! Computed: where the ring sits on the back, and how far it slides up before the straps hold; from the fall itself
//! how the trunk hangs and whether it comes upside down while the line pulls. Told only: pain and injury, and that a
//! body leaves its harness (a possibility, never drawn as a fact). Left out: anything across the section, so a ring
//! over one blade changes no figure here.

use crate::draw::Draw;
use crate::geometry::body::Part;
use crate::physics::Worn;
use crate::physics::equipment::{HARNESS_SLIDE_LOOSE_M, HARNESS_SLIDE_SNUG_M};
use crate::physics::trace::Trace;
use crate::rules::Severity;
use crate::scenario::{LabelState, Scenario, WebbingState};
use serde::{Deserialize, Serialize};

/// Slack up to which a leg strap is snug, cm (common practice: a flat hand fits between, a fist does not).
pub const SNUG_CM: u32 = 3;
/// The most that a leg strap is let out here, cm.
pub const MOST_CM: u32 = 15;
/// How far below its place a ring sits that has slid down, and one at the waist, m (assumed: a hand's breadth, and
/// the top of the pelvis).
const RING_DOWN_M: [f64; 2] = [0.15, 0.30];
/// Force from which on the line holds the trunk in its place, N.
const BEARS_N: f64 = 150.0;
/// So long before its end a fall shows how the trunk hangs, s.
const REST_S: f64 = 0.3;

/// The steps of putting it on, in the order that is taught (common practice; makers differ, and chest and legs may
/// change places).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Step {
    /// Webbing, stitching, metal, label.
    LookOver,
    /// By the ring, until the straps hang free.
    ShakeOut,
    /// Like a vest, nothing twisted.
    Shoulders,
    /// Across the middle of the chest.
    Chest,
    /// Round each thigh.
    Legs,
    /// A flat hand fits, not a fist.
    Snug,
    /// Tails under their keepers.
    Tails,
    /// Between the shoulder blades.
    Ring,
    /// Somebody else looks.
    Other,
}

impl Step {
    /// All, in order.
    pub const ALL: [Step; 9] = [
        Step::LookOver,
        Step::ShakeOut,
        Step::Shoulders,
        Step::Chest,
        Step::Legs,
        Step::Snug,
        Step::Tails,
        Step::Ring,
        Step::Other,
    ];

    /// Whether it is seen on the back.
    pub fn is_behind(self) -> bool {
        matches!(self, Step::Ring | Step::ShakeOut)
    }
}

/// The chest strap.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Chest {
    /// Its ends hang.
    Open,
    /// Across the middle of the chest.
    Closed,
    /// At the throat.
    High,
}

/// Where the ring sits.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Ring {
    /// Between the shoulder blades.
    Blades,
    /// A hand's breadth lower.
    Low,
    /// At the waist.
    Waist,
    /// Over one blade.
    Aside,
}

/// A leg strap.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Leg {
    /// Its buckle is closed.
    pub closed: bool,
    /// So far it hangs off the thigh, cm.
    pub slack_cm: u32,
}

/// A harness as somebody wears it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Harness {
    /// Was looked over.
    pub looked: bool,
    /// Was shaken out.
    pub shaken: bool,
    /// A shoulder strap is twisted.
    pub twisted: bool,
    /// The chest strap.
    pub chest: Chest,
    /// The wearer's left and right leg strap.
    pub legs: [Leg; 2],
    /// The straps' ends are under their keepers.
    pub tucked: bool,
    /// The ring.
    pub ring: Ring,
    /// Somebody else has looked.
    pub checked: bool,
}

/// Something left wrong.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Fault {
    /// The chest strap is open.
    ChestOpen,
    /// A leg strap is open.
    LegOpen,
    /// A leg strap hangs off.
    LegSlack,
    /// The ring is at the waist.
    RingWaist,
    /// The ring sits too low.
    RingLow,
    /// The ring sits over one blade.
    RingAside,
    /// The chest strap is at the throat.
    ChestHigh,
    /// A strap is twisted.
    Twisted,
    /// Nobody looked it over.
    NotLooked,
    /// Ends hang loose.
    TailsLoose,
    /// It was not shaken out.
    NotShaken,
    /// Nobody else looked.
    NotChecked,
}

impl Fault {
    /// How grave it is. A slack leg strap is no small finding.
    pub fn severity(self) -> Severity {
        match self {
            Fault::ChestOpen | Fault::LegOpen => Severity::Critical,
            Fault::LegSlack
            | Fault::RingWaist
            | Fault::RingLow
            | Fault::RingAside
            | Fault::ChestHigh
            | Fault::Twisted
            | Fault::NotLooked => Severity::Major,
            Fault::TailsLoose | Fault::NotShaken | Fault::NotChecked => Severity::Minor,
        }
    }

    /// The step at which it is put right.
    pub fn step(self) -> Step {
        match self {
            Fault::ChestOpen | Fault::ChestHigh => Step::Chest,
            Fault::LegOpen => Step::Legs,
            Fault::LegSlack => Step::Snug,
            Fault::RingWaist | Fault::RingLow | Fault::RingAside => Step::Ring,
            Fault::Twisted => Step::Shoulders,
            Fault::NotLooked => Step::LookOver,
            Fault::TailsLoose => Step::Tails,
            Fault::NotShaken => Step::ShakeOut,
            Fault::NotChecked => Step::Other,
        }
    }
}

impl Harness {
    /// As it should be.
    pub fn right() -> Harness {
        let leg = Leg { closed: true, slack_cm: 2 };
        Harness {
            looked: true,
            shaken: true,
            twisted: false,
            chest: Chest::Closed,
            legs: [leg; 2],
            tucked: true,
            ring: Ring::Blades,
            checked: true,
        }
    }

    /// As somebody in a hurry pulls it on.
    pub fn pulled_on() -> Harness {
        Harness {
            looked: false,
            shaken: false,
            twisted: true,
            chest: Chest::Open,
            legs: [Leg { closed: false, slack_cm: 9 }, Leg { closed: true, slack_cm: 9 }],
            tucked: false,
            ring: Ring::Low,
            checked: false,
        }
    }

    /// Another painter's, to be looked at before the climb: up to two things that can be seen are wrong.
    pub fn of_another(seed: u64) -> Harness {
        let mut draw = Draw::with_seed(seed ^ 0x6861_726e_6573);
        let mut h = Harness::right();
        for _ in 0..draw.u32(0..=2) {
            match draw.u32(0..8) {
                0 => h.twisted = true,
                1 => h.chest = Chest::Open,
                2 => h.chest = Chest::High,
                3 => h.legs[0].slack_cm = 9,
                4 => h.legs[1].slack_cm = 11,
                5 => h.ring = Ring::Waist,
                6 => h.ring = Ring::Aside,
                _ => h.tucked = false,
            }
        }
        h
    }

    /// What is left wrong, gravest first.
    pub fn faults(&self) -> Vec<Fault> {
        let mut all = Vec::new();
        let mut when = |is: bool, f: Fault| {
            if is {
                all.push(f);
            }
        };
        when(self.chest == Chest::Open, Fault::ChestOpen);
        when(self.legs.iter().any(|l| !l.closed), Fault::LegOpen);
        when(self.legs.iter().any(|l| l.closed && l.slack_cm > SNUG_CM), Fault::LegSlack);
        when(self.ring == Ring::Waist, Fault::RingWaist);
        when(self.ring == Ring::Low, Fault::RingLow);
        when(self.ring == Ring::Aside, Fault::RingAside);
        when(self.chest == Chest::High, Fault::ChestHigh);
        when(self.twisted, Fault::Twisted);
        when(!self.looked, Fault::NotLooked);
        when(!self.tucked, Fault::TailsLoose);
        when(!self.shaken, Fault::NotShaken);
        when(!self.checked, Fault::NotChecked);
        all
    }

    /// What it does to a fall.
    pub fn worn(&self) -> Worn {
        // A strap that is open gives as much as one let out as far as it goes (assumed).
        let given = |l: &Leg| if l.closed { l.slack_cm.saturating_sub(SNUG_CM) } else { MOST_CM - SNUG_CM };
        let share = f64::from(self.legs.iter().map(given).sum::<u32>()) / f64::from(2 * (MOST_CM - SNUG_CM));
        Worn {
            ring_drop_m: match self.ring {
                Ring::Blades | Ring::Aside => 0.0,
                Ring::Low => RING_DOWN_M[0],
                Ring::Waist => RING_DOWN_M[1],
            },
            slide_m: HARNESS_SLIDE_SNUG_M + (HARNESS_SLIDE_LOOSE_M - HARNESS_SLIDE_SNUG_M) * share.min(1.0),
        }
    }
}

/// How a worn harness held its wearer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hung {
    /// How far the trunk leans forward at rest, rad; half a turn is head down.
    pub rest_rad: f64,
    /// The furthest it came from upright while the line held it, rad.
    pub worst_rad: f64,
    /// The wearer can slip out: head down past an open chest strap, or with nothing round either thigh.
    pub can_slip_out: bool,
}

/// What a fall in it came to.
pub fn hung(h: &Harness, t: &Trace) -> Hung {
    let lean = |angle_rad: f64| libm::acos(libm::cos(angle_rad));
    let trunk = Part::Torso as usize;
    let end_s = t.duration_s();
    let (mut worst_rad, mut sum_rad, mut n) = (0.0_f64, 0.0, 0.0);
    for q in &t.samples {
        let Some(pose) = q.poses.get(trunk) else { continue };
        if q.force_n > BEARS_N {
            worst_rad = worst_rad.max(lean(pose.angle_rad));
        }
        if q.time_s > end_s - REST_S {
            (sum_rad, n) = (sum_rad + lean(pose.angle_rad), n + 1.0);
        }
    }
    let head_down = worst_rad > core::f64::consts::FRAC_PI_2;
    let no_legs = h.legs.iter().all(|l| !l.closed);
    Hung {
        rest_rad: if n > 0.0 { sum_rad / n } else { 0.0 },
        worst_rad,
        can_slip_out: (h.chest == Chest::Open && head_down) || no_legs,
    }
}

/// What a look at a harness from the hook shows: of three one has a cut, of three one has lost its label.
pub fn from_the_hook(seed: u64) -> (WebbingState, LabelState) {
    let mut draw = Draw::with_seed(seed ^ 0x6c6f_6f6b);
    let webbing = if draw.below(3) == 0 { WebbingState::Cut } else { WebbingState::Sound };
    (webbing, if draw.below(3) == 0 { LabelState::Missing } else { LabelState::Legible })
}

/// The fall in which it is tried: the usual job with the grab left low, as it often is.
pub fn case(place: &str) -> Scenario {
    let mut s = Scenario { place: place.to_owned(), ..Scenario::default() };
    s.grab.above_dring_m = -0.45;
    s
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::physics::trace::Outcome;
    use crate::physics::{simulate, simulate_worn};

    fn fall(h: &Harness) -> Trace {
        simulate_worn(&case("on").set_up().expect("possible"), h.worn())
    }

    #[test]
    fn rightly_worn_it_is_the_usual_fall() {
        let usual = simulate(&case("on").set_up().expect("possible"));
        assert_eq!(fall(&Harness::right()).hash(), usual.hash());
        assert!(Harness::right().faults().is_empty());
    }

    /// By hand, a rigid body hung at a point: its centre of mass comes plumb under the point. From the ring between
    /// the blades the centre is some 0.38 m down and 0.115 m in front: it leans 17 degrees; from the waist some 0.08 m
    /// down: 55 degrees. Hips that bend bring the legs forward, so a body leans further than a rigid one.
    #[test]
    fn a_ring_at_the_waist_folds_its_wearer_forward() {
        let high = hung(&Harness::right(), &fall(&Harness::right()));
        let worn = Harness { ring: Ring::Waist, ..Harness::right() };
        let low = hung(&worn, &fall(&worn));
        assert!((17.0..50.0).contains(&high.rest_rad.to_degrees()), "{}", high.rest_rad.to_degrees());
        assert!(low.rest_rad.to_degrees() > 55.0, "{}", low.rest_rad.to_degrees());
        assert!(!high.can_slip_out && !low.can_slip_out);
        let open = Harness { chest: Chest::Open, ..worn };
        assert!(hung(&open, &fall(&open)).can_slip_out);
        // Upright an open chest strap lets nobody out, in this fall.
        let open = Harness { chest: Chest::Open, ..Harness::right() };
        assert!(!hung(&open, &fall(&open)).can_slip_out);
    }

    /// Slack in both leg straps is way that the ring slides and room that is gone, one to one: 0.20 m more of it
    /// (`HARNESS_SLIDE_LOOSE_M`, Hsiao 2008), less what the softer stop gives back.
    #[test]
    fn slack_leg_straps_cost_room() {
        let slack = Leg { closed: true, slack_cm: MOST_CM };
        let loose = Harness { legs: [slack; 2], ..Harness::right() };
        let (a, b) = (fall(&Harness::right()), fall(&loose));
        let lost_m = a.clearance_margin_m.expect("held") - b.clearance_margin_m.expect("held");
        assert!((0.12..0.26).contains(&lost_m), "{lost_m}");
        assert!((b.harness_slide_m - a.harness_slide_m - 0.20).abs() < 0.02);
        assert_eq!(loose.faults(), [Fault::LegSlack]);
        assert_eq!(Fault::LegSlack.severity(), Severity::Major);
    }

    /// However it is worn, the fall passes its own energy check and is held.
    #[test]
    fn every_way_to_wear_it_can_be_shown() {
        for ring in [Ring::Blades, Ring::Low, Ring::Waist] {
            for slack_cm in 0..=MOST_CM {
                let leg = Leg { closed: true, slack_cm };
                for other in [leg, Leg { closed: false, slack_cm: 9 }] {
                    let h = Harness { ring, legs: [leg, other], ..Harness::right() };
                    let t = fall(&h);
                    assert!(t.is_sound() && t.outcome == Outcome::Stopped, "{h:?} {}", t.energy_residual);
                }
            }
        }
    }

    #[test]
    fn a_third_of_what_hangs_there_is_cut_and_a_third_has_no_label() {
        let all: Vec<_> = (0..300).map(from_the_hook).collect();
        let cut = all.iter().filter(|s| s.0 == WebbingState::Cut).count();
        let bare = all.iter().filter(|s| s.1 == LabelState::Missing).count();
        assert!((70..130).contains(&cut) && (70..130).contains(&bare), "{cut} {bare}");
    }

    /// Whatever is wrong has its step, and putting that step right takes it away.
    #[test]
    fn each_fault_is_put_right_at_its_step() {
        let all = Harness::pulled_on().faults();
        assert_eq!(
            all,
            [
                Fault::ChestOpen,
                Fault::LegOpen,
                Fault::LegSlack,
                Fault::RingLow,
                Fault::Twisted,
                Fault::NotLooked,
                Fault::TailsLoose,
                Fault::NotShaken,
                Fault::NotChecked
            ]
        );
        let steps: std::collections::HashSet<Step> = all.iter().map(|f| f.step()).collect();
        assert_eq!(steps.len(), Step::ALL.len());
        // Another's harness has nought, one or two things wrong that can be seen.
        let counts: Vec<usize> = (0..60).map(|n| Harness::of_another(n).faults().len()).collect();
        assert!((0..3).all(|k| counts.contains(&k)) && counts.iter().all(|n| *n <= 2), "{counts:?}");
    }
}
