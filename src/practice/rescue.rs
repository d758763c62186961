//! After the stop: how a hanging worker is reached, and how long that takes.
//!
//! What can be done follows from where the worker hangs (the fall's own end), from whether the ladder
//! still stands, from how hard the stop was, and from what the crew planned and brought. Times of steps
//! are assumed and marked so; what a step needs is computed: a ladder's reach, a rung under the boots, a
//! pull over an edge. Left out: weather, and injuries beyond one figure for the blow.

use crate::geometry::SetUp;
use crate::physics::equipment::{EDGE_FRICTION, ROOF_SLIP_FRICTION};
use crate::physics::trace::{EventKind, Outcome, Thing, Trace};
use crate::practice::houses::HouseKind;
use crate::scenario::{AnchorKind, RescuePlan, Scenario, Stance, Weather};
use crate::units::G_M_S2;
use serde::{Deserialize, Serialize};

/// Minutes within which the hanging worker should be reached (ANSI/ASSP Z359.2: contact within six
/// minutes; from memory).
pub const CONTACT_MIN: u32 = 6;
/// Minutes of hanging still after which the clock turns serious: a plan to have somebody down in nine
/// (Hsiao and others, Human Factors 54 (2012), abstract read); in a laboratory nineteen in twenty healthy
/// volunteers hung still from the back ring for eleven (Turner and others, J. Occup. Environ. Hyg. 5
/// (2008), abstract read).
pub const SERIOUS_MIN: [u32; 2] = [9, 11];
/// Half of the same volunteers had to be let down by then, min (Turner and others 2008; range 5 to 56).
pub const HALF_MIN: u32 = 31;
/// Minutes from the call until the fire service arrives, and until it has the worker down (assumed).
pub const SERVICE_MIN: [u32; 2] = [12, 10];
/// A steady pull of one person on a rope, N (assumed), and how many pull.
pub const PULL_N: f64 = 350.0;
/// The same of the two on the roof, N.
pub const TWO_PULL_N: f64 = 2.0 * PULL_N;
/// A rescuer's reach over the rung stood on, m: to the chest of a worker (assumed).
const ARM_M: f64 = 1.6;
/// Rungs that stay below a ladder's top, m (common practice: not the top three).
const TOP_M: f64 = 0.9;
/// Angle of a ladder at one in four, rad.
const ANGLE_RAD: f64 = 1.318;
/// Distance from the D-ring to rails or eave within which hands and boots can take hold, m (assumed: an
/// arm less the depth of the body).
const GRASP_M: f64 = 0.45;
/// Lowest rung over the ladder's foot, m (common practice: about a foot).
const LOWEST_RUNG_M: f64 = 0.3;
/// A blow against wall or ladder after which nobody is counted on to climb, m/s (assumed: a drop of
/// 0.8 m).
const STUNNED_M_S: f64 = 4.0;
/// A stop after which nobody is counted on to climb, N (assumed; half of the limit that most places set).
const SHAKEN_N: f64 = 4_000.0;

/// Falls that leave somebody hanging, each in another way: from the ordinary one to those in which the worker cannot
/// help herself or the ladder is no longer there.
pub fn cases(place: &str, plan: RescuePlan) -> Vec<Scenario> {
    let base = || {
        let mut s = Scenario { place: place.to_owned(), ..Scenario::default() };
        s.plan.rescue = plan;
        s
    };
    let with = |change: &dyn Fn(&mut Scenario)| {
        let mut s = base();
        change(&mut s);
        s
    };
    vec![
        base(),
        // The foot goes out on ice, and the ladder with it.
        with(&|s| {
            s.ladder.tied = false;
            s.weather = Weather::Frozen;
        }),
        // A hard stop: no absorber, and the grab left low on a short rope.
        with(&|s| {
            s.anchor.kind = AnchorKind::RatedEye;
            s.anchor.from_ridge_m = 3.6;
            s.lanyard.absorber = None;
            s.grab.above_dring_m = -0.4;
        }),
        // High, heavy, and the ladder goes: the longest rope.
        with(&|s| {
            HouseKind::TallGable.move_in(s);
            s.ladder.tied = false;
            s.weather = Weather::Frozen;
            s.worker.mass_kg = 105.0;
        }),
        with(&|s| s.stance = Stance::Roof { from_eave_m: 1.2 }),
        with(&|s| HouseKind::WalkOut.move_in(s)),
    ]
}

/// A step of the rescue.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Step {
    /// Call the emergency services.
    Call,
    /// Talk to the worker; legs into the relief straps.
    Straps,
    /// The worker gets back onto ladder or roof alone.
    Climb,
    /// Raise the ladder to the worker and bring her down it.
    Ladder,
    /// Fetch the rescue line and lower the worker.
    Lower,
    /// Pull the worker up by hand.
    Haul,
    /// Wait for the fire service.
    Wait,
}

impl Step {
    /// All, in no order of merit.
    pub const ALL: [Step; 7] =
        [Step::Haul, Step::Ladder, Step::Call, Step::Wait, Step::Straps, Step::Lower, Step::Climb];
}

/// Why a step does not bring the worker down.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Hindered {
    /// The ladder is too short by this much, in mm.
    TooShortMm(u32),
    /// The pull over the edge is more than two people have: what it takes, N.
    TooHeavyN(u32),
    /// Nothing to hold within reach: distance, in mm.
    OutOfReachMm(u32),
    /// Nobody was called.
    NobodyCalled,
    /// The ladder is no longer where it stood: it slid, tipped or was knocked away.
    LadderGone,
    /// No rung or roof is under the boots: the lowest is this far over them, in mm.
    NoRungMm(u32),
    /// The worker was struck too hard, or stopped too hard, to be counted on.
    Hurt,
    /// Nothing on the site lifts the load off a locked grab.
    NoKit,
    /// One rescuer on a ladder cannot take a hanging person's weight off the rope, N.
    NotAloneN(u32),
}

/// Where the worker hangs.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Hanging {
    /// D-ring above the ground, m.
    pub dring_m: f64,
    /// Lowest part above what lies below, m.
    pub room_m: f64,
    /// D-ring to the nearest of rungs and eave, m.
    pub grasp_m: f64,
    /// Highest D-ring that the crew's ladder lets a rescuer reach, m.
    pub ladder_reach_m: f64,
    /// Pull that lifting over the edge takes, N.
    pub haul_n: f64,
    /// Still on the roof.
    pub on_roof: bool,
    /// The ladder still stands where it stood.
    pub ladder_stands: bool,
    /// The lowest rung over the lowest part of the body, m; negative is below it.
    pub rung_over_feet_m: f64,
    /// Struck or stopped too hard to be counted on.
    pub hurt: bool,
    /// Weight, N.
    pub weight_n: f64,
}

/// Where a fall left the worker; none where nobody hangs.
pub fn hanging(s: &SetUp, t: &Trace) -> Option<Hanging> {
    let g = s.geometry();
    let last = t.samples.last()?;
    if t.outcome != Outcome::Stopped {
        return None;
    }
    let d = last.dring;
    // Distance of the ring to the line of the rails, as far as they go up.
    let ladder_m = {
        let (a, b) = (g.ladder.foot, g.ladder.tip);
        let (ux, uy) = (b.x - a.x, b.y - a.y);
        let k = (((d.x - a.x) * ux + (d.y - a.y) * uy) / (ux * ux + uy * uy)).clamp(0.0, 1.0);
        a.lerp(b, k).dist(d)
    };
    let grasp_m = ladder_m.min(g.eave.dist(d));
    // The rope bends over the eave from the slope to plumb, and further at the anchor's far side.
    let turn_rad = core::f64::consts::FRAC_PI_2 - s.house.roof_pitch_rad;
    // Both heights count from what lies under the worker; the ladder stands beside it.
    let below_m = g.surface_below_m(d.x, 0.2);
    let weight_n = s.worker.mass_kg * G_M_S2;
    let gone = [EventKind::LadderSlides, EventKind::LadderTips].iter().any(|k| t.time_of(*k).is_some());
    let blow_m_s = t
        .impacts
        .iter()
        .filter(|i| matches!(i.what, Thing::Wall | Thing::Ladder | Thing::Roof))
        .map(|i| i.speed_m_s)
        .fold(0.0, f64::max);
    let room_m = t.clearance_margin_m.unwrap_or(0.0);
    let pitch_rad = s.house.roof_pitch_rad;
    // On the slope the rope pulls along it; over the eave it bends as well.
    let haul_n = if t.left_roof {
        weight_n * libm::exp(EDGE_FRICTION * turn_rad.max(0.0))
    } else {
        weight_n * (libm::sin(pitch_rad) + ROOF_SLIP_FRICTION * libm::cos(pitch_rad))
    };
    Some(Hanging {
        ladder_stands: !gone,
        rung_over_feet_m: g.ladder.foot.y + LOWEST_RUNG_M - (below_m + room_m),
        hurt: blow_m_s >= STUNNED_M_S || t.peak_force_n >= SHAKEN_N,
        weight_n,
        dring_m: d.y - below_m,
        room_m,
        grasp_m,
        ladder_reach_m: g.ladder.foot.y - below_m
            + (s.ladder.length_m - TOP_M) * libm::sin(ANGLE_RAD)
            + ARM_M,
        haul_n,
        on_roof: !t.left_roof,
    })
}

impl Hanging {
    /// Why the worker cannot get back onto ladder or roof alone; none when she can.
    pub fn climb_hindered(&self) -> Option<Hindered> {
        let mm = |m: f64| (m * 1e3).max(0.0).ceil() as u32;
        if self.hurt {
            Some(Hindered::Hurt)
        } else if self.on_roof {
            None
        } else if !self.ladder_stands {
            Some(Hindered::LadderGone)
        } else if self.grasp_m > GRASP_M {
            Some(Hindered::OutOfReachMm(mm(self.grasp_m)))
        } else if self.rung_over_feet_m > 0.0 {
            Some(Hindered::NoRungMm(mm(self.rung_over_feet_m)))
        } else {
            None
        }
    }
}

/// The drill so far.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Drill {
    /// Minutes since the stop.
    pub minute: u32,
    /// Steps taken, with the minute each was done.
    pub taken: Vec<(Step, u32)>,
    /// Minute of the call.
    pub called_min: Option<u32>,
    /// Minute from which the straps bear part of the weight.
    pub straps_min: Option<u32>,
    /// Minute at which somebody was with the worker.
    pub reached_min: Option<u32>,
    /// Minute at which the worker was down or back.
    pub down_min: Option<u32>,
}

/// Minutes a step takes with what was planned (assumed): a plan read beforehand has the gear at hand.
pub fn minutes(step: Step, plan: RescuePlan) -> u32 {
    let late = match plan {
        RescuePlan::Written => 0,
        RescuePlan::Spoken => 4,
        RescuePlan::NoPlan => 9,
    };
    match step {
        // Somebody else calls while the others begin.
        Step::Call => 0,
        Step::Straps => 1,
        Step::Climb => 2,
        // A taut line is not taken off a person by a ladder alone: a second line or a lift comes first.
        Step::Ladder => 9 + late / 2,
        Step::Lower => 5 + late,
        Step::Haul => 3,
        Step::Wait => 0,
    }
}

impl Drill {
    /// Takes a step. Says what hindered it; it has cost its time all the same.
    pub fn take(&mut self, step: Step, h: &Hanging, plan: RescuePlan) -> Option<Hindered> {
        if self.down_min.is_some() {
            return None;
        }
        self.minute += minutes(step, plan);
        let mm = |m: f64| (m * 1e3).max(0.0).ceil() as u32;
        let mut hindered = None;
        let mut down = false;
        match step {
            Step::Call => {
                self.called_min.get_or_insert(self.minute);
            }
            Step::Straps => {
                // Talking from afar is not being there.
                self.straps_min.get_or_insert(self.minute);
            }
            Step::Climb => match h.climb_hindered() {
                None => down = true,
                some => hindered = some,
            },
            Step::Ladder if h.dring_m > h.ladder_reach_m => {
                hindered = Some(Hindered::TooShortMm(mm(h.dring_m - h.ladder_reach_m)));
            }
            // Reached, but not off the line: that takes the kit of the plan.
            Step::Ladder if plan == RescuePlan::NoPlan => {
                self.reached_min.get_or_insert(self.minute);
                hindered = Some(Hindered::NotAloneN(h.weight_n.ceil() as u32));
            }
            Step::Ladder => down = true,
            // A locked grab under load does not let go: something has to lift the load off it, and only a
            // plan in writing has brought it.
            Step::Lower if plan != RescuePlan::Written => hindered = Some(Hindered::NoKit),
            Step::Lower => down = true,
            Step::Haul if h.haul_n <= TWO_PULL_N => down = true,
            Step::Haul => hindered = Some(Hindered::TooHeavyN(h.haul_n.ceil() as u32)),
            Step::Wait => match self.called_min {
                Some(at) => {
                    self.reached_min.get_or_insert(at + SERVICE_MIN[0]);
                    self.minute = self.minute.max(at + SERVICE_MIN[0] + SERVICE_MIN[1]);
                    down = true;
                }
                None => {
                    self.minute += 5;
                    hindered = Some(Hindered::NobodyCalled);
                }
            },
        }
        // Who was called comes, whatever is tried meanwhile.
        if let Some(at) = self.called_min.filter(|_| !down) {
            let (there, done) = (at + SERVICE_MIN[0], at + SERVICE_MIN[0] + SERVICE_MIN[1]);
            if self.minute >= there {
                self.reached_min.get_or_insert(there);
            }
            if self.minute >= done {
                (self.minute, down) = (done, true);
            }
        }
        if down {
            self.reached_min.get_or_insert(self.minute);
            self.down_min = Some(self.minute);
        }
        self.taken.push((step, self.minute));
        hindered
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::physics::simulate;

    fn hung(s: &Scenario) -> Hanging {
        hanging(&s.set_up().expect("possible"), &simulate(&s.set_up().expect("possible"))).expect("hangs")
    }

    /// Capstan: T = W e^(mu phi), Euler and Eytelwein; an edge of 63.4 degrees under a 6 in 12 roof.
    #[test]
    fn two_people_cannot_pull_a_worker_over_the_eave() {
        let s = Scenario::default();
        let h = hung(&s);
        let want = 85.0 * G_M_S2 * (0.3 * 63.434_949_f64.to_radians()).exp();
        assert!((h.haul_n - want).abs() < 0.01, "{} {want}", h.haul_n);
        let mut d = Drill::default();
        assert!(
            matches!(d.take(Step::Haul, &h, RescuePlan::Written), Some(Hindered::TooHeavyN(n)) if n > 1_000)
        );
        assert_eq!((d.minute, d.down_min), (3, None));
    }

    #[test]
    fn a_written_plan_is_quicker_than_none_and_waiting_needs_a_call() {
        let h = hung(&Scenario::default());
        let down = |plan| {
            let mut d = Drill::default();
            d.take(Step::Lower, &h, plan);
            d.down_min.unwrap_or(u32::MAX)
        };
        assert!(down(RescuePlan::Written) <= CONTACT_MIN);
        // A bug: a locked grab was let down with no kit and no plan.
        for plan in [RescuePlan::Spoken, RescuePlan::NoPlan] {
            let mut d = Drill::default();
            assert_eq!(d.take(Step::Lower, &h, plan), Some(Hindered::NoKit));
            assert!(d.down_min.is_none() && d.minute > CONTACT_MIN);
        }
        let mut d = Drill::default();
        assert_eq!(d.take(Step::Wait, &h, RescuePlan::Written), Some(Hindered::NobodyCalled));
        d.take(Step::Call, &h, RescuePlan::Written);
        d.take(Step::Straps, &h, RescuePlan::Written);
        assert_eq!((d.reached_min, d.straps_min.is_some()), (None, true));
        assert_eq!(d.take(Step::Wait, &h, RescuePlan::Written), None);
        assert!(d.down_min.is_some_and(|m| m > SERIOUS_MIN[1] && m < 2 * HALF_MIN));
        let before = d.clone();
        d.take(Step::Lower, &h, RescuePlan::Written);
        assert_eq!(d, before);
    }

    /// A bug: called at minute 0, the fire service came at 12, and then stood by until somebody waited for it.
    #[test]
    fn who_was_called_comes_whatever_is_tried_meanwhile() {
        let h = hung(&Scenario::default());
        let [there, done] = [SERVICE_MIN[0], SERVICE_MIN[0] + SERVICE_MIN[1]];
        let mut d = Drill::default();
        for step in [Step::Call, Step::Ladder, Step::Lower, Step::Lower, Step::Lower] {
            d.take(step, &h, RescuePlan::NoPlan);
        }
        assert_eq!(d.down_min, Some(done));
        assert!(d.reached_min.is_some_and(|m| m <= there + 1), "{d:?}");
        let mut d = Drill::default();
        for step in [Step::Call, Step::Lower, Step::Wait] {
            d.take(step, &h, RescuePlan::NoPlan);
        }
        assert_eq!((d.reached_min, d.down_min), (Some(there), Some(done)));
    }

    #[test]
    fn a_short_ladder_does_not_reach_a_worker_under_a_high_eave() {
        let mut s = Scenario::default();
        crate::practice::houses::HouseKind::TallGable.move_in(&mut s);
        let h = hung(&s);
        assert!(h.dring_m < h.ladder_reach_m);
        let short = Hanging { ladder_reach_m: h.dring_m - 0.4, ..h };
        let mut d = Drill::default();
        assert!(matches!(
            d.take(Step::Ladder, &short, RescuePlan::Written),
            Some(Hindered::TooShortMm(400 | 401))
        ));
    }

    #[test]
    fn over_a_deck_the_ladder_reaches_no_higher_than_beside_it() {
        let bare = Scenario::default();
        let mut deck = bare.clone();
        deck.house.below = crate::scenario::ORDINARY_OBSTACLE;
        let (a, b) = (hung(&bare), hung(&deck));
        let gap = |h: &Hanging| h.ladder_reach_m - h.dring_m;
        assert!((gap(&a) - gap(&b)).abs() < 0.05, "{a:?} {b:?}");
    }

    /// A bug: climbing back succeeded in 240 of 240 hangings, also onto a ladder that lay on the ground.
    #[test]
    fn climbing_back_can_fail_for_each_reason() {
        let h = Hanging {
            dring_m: 4.0,
            room_m: 2.0,
            grasp_m: 0.3,
            ladder_reach_m: 7.0,
            haul_n: 1_100.0,
            on_roof: false,
            ladder_stands: true,
            rung_over_feet_m: -1.0,
            hurt: false,
            weight_n: 830.0,
        };
        assert_eq!(h.climb_hindered(), None);
        assert_eq!(Hanging { ladder_stands: false, ..h }.climb_hindered(), Some(Hindered::LadderGone));
        assert_eq!(Hanging { hurt: true, ..h }.climb_hindered(), Some(Hindered::Hurt));
        assert_eq!(Hanging { grasp_m: 0.6, ..h }.climb_hindered(), Some(Hindered::OutOfReachMm(600)));
        assert_eq!(Hanging { rung_over_feet_m: 0.25, ..h }.climb_hindered(), Some(Hindered::NoRungMm(250)));
        // On an icy ground an untied ladder goes first: there are no rungs to climb back onto.
        let mut s = Scenario { weather: crate::scenario::Weather::Frozen, ..Scenario::default() };
        s.ladder.tied = false;
        let t = simulate(&s.set_up().expect("possible"));
        assert!(t.time_of(EventKind::LadderSlides).is_some());
        if let Some(h) = hanging(&s.set_up().expect("possible"), &t) {
            assert!(h.climb_hindered().is_some());
        }
    }

    /// Each case leaves somebody hanging, no two alike; with a written plan and the right steps all are reached in six
    /// minutes, and without one, whatever is tried, at most half of them.
    #[test]
    fn without_a_plan_half_of_the_cases_fail() {
        let hangs: Vec<Hanging> = cases("on", RescuePlan::Written).iter().map(hung).collect();
        let in_time = |h: &Hanging, plan| {
            Step::ALL.into_iter().any(|step| {
                let mut d = Drill::default();
                d.take(Step::Call, h, plan);
                d.take(step, h, plan);
                d.reached_min.is_some_and(|m| m <= CONTACT_MIN) && d.down_min.is_some()
            })
        };
        let kept = |plan| hangs.iter().filter(|h| in_time(h, plan)).count();
        assert_eq!(kept(RescuePlan::Written), hangs.len());
        assert!(
            2 * kept(RescuePlan::NoPlan) <= hangs.len(),
            "{} of {}",
            kept(RescuePlan::NoPlan),
            hangs.len()
        );
        // Climbing back fails in several, and not always for the same reason.
        let mut why: Vec<String> = hangs
            .iter()
            .filter_map(|h| h.climb_hindered().map(|w| format!("{w:?}").chars().take(5).collect()))
            .collect();
        why.sort();
        why.dedup();
        assert!(why.len() >= 2, "{why:?}");
    }

    #[test]
    fn nobody_hangs_who_came_down() {
        let mut s = Scenario::default();
        s.lanyard.clipped = false;
        assert_eq!(hanging(&s.set_up().expect("possible"), &simulate(&s.set_up().expect("possible"))), None);
    }
}
