//! After the stop: how a hanging worker is reached, and how long that takes.
//!
//! What can be done follows from where the worker hangs (the fall's own end) and from what the crew
//! planned. Times of steps are assumed and marked so; what a step needs is computed: a ladder's
//! reach, a pull over an edge. Left out: the worker's own strength, weather, injuries.

use crate::physics::equipment::EDGE_FRICTION;
use crate::physics::geometry::Geometry;
use crate::physics::trace::{Outcome, Trace};
use crate::scenario::{RescuePlan, Scenario};
use crate::units::G_M_S2;
use serde::{Deserialize, Serialize};

/// Minutes within which the hanging worker should be reached (ANSI/ASSP Z359.2: contact within six
/// minutes; from memory).
pub const CONTACT_MIN: u32 = 6;
/// Minutes of motionless hanging that can kill (OSHA SHIB 03-24-2004: less than 30; from memory).
pub const DANGER_MIN: u32 = 30;
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
/// Distance from rungs or eave to which a worker can help herself, m (assumed: an arm).
const GRASP_M: f64 = 0.75;

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
}

/// Where a fall left the worker; none where nobody hangs.
pub fn hanging(s: &Scenario, t: &Trace) -> Option<Hanging> {
    let g = Geometry::of(s)?;
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
    Some(Hanging {
        dring_m: d.y - below_m,
        room_m: t.clearance_margin_m.unwrap_or(0.0),
        grasp_m,
        ladder_reach_m: g.ladder.foot.y - below_m
            + (s.ladder.length_m - TOP_M) * libm::sin(ANGLE_RAD)
            + ARM_M,
        haul_n: s.worker.mass_kg * G_M_S2 * libm::exp(EDGE_FRICTION * turn_rad.max(0.0)),
        on_roof: !t.left_roof,
    })
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
        Step::Call | Step::Straps => 1,
        Step::Climb => 2,
        Step::Ladder => 3 + late / 2,
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
            Step::Climb if h.grasp_m <= GRASP_M || h.on_roof => down = true,
            Step::Climb => hindered = Some(Hindered::OutOfReachMm(mm(h.grasp_m))),
            Step::Ladder if h.dring_m <= h.ladder_reach_m => down = true,
            Step::Ladder => hindered = Some(Hindered::TooShortMm(mm(h.dring_m - h.ladder_reach_m))),
            Step::Lower => down = true,
            Step::Haul if h.haul_n <= TWO_PULL_N => down = true,
            Step::Haul => hindered = Some(Hindered::TooHeavyN(h.haul_n.ceil() as u32)),
            Step::Wait => match self.called_min {
                Some(at) => {
                    self.minute = self.minute.max(at + SERVICE_MIN[0]);
                    self.reached_min.get_or_insert(self.minute);
                    self.minute += SERVICE_MIN[1];
                    down = true;
                }
                None => {
                    self.minute += 5;
                    hindered = Some(Hindered::NobodyCalled);
                }
            },
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
        hanging(s, &simulate(s).expect("falls")).expect("hangs")
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
            d.down_min.expect("down")
        };
        assert!(down(RescuePlan::Written) <= CONTACT_MIN && down(RescuePlan::NoPlan) > 2 * CONTACT_MIN);
        let mut d = Drill::default();
        assert_eq!(d.take(Step::Wait, &h, RescuePlan::Written), Some(Hindered::NobodyCalled));
        d.take(Step::Call, &h, RescuePlan::Written);
        d.take(Step::Straps, &h, RescuePlan::Written);
        assert_eq!((d.reached_min, d.straps_min.is_some()), (None, true));
        assert_eq!(d.take(Step::Wait, &h, RescuePlan::Written), None);
        assert!(d.down_min.is_some_and(|m| m > 20 && m < 2 * DANGER_MIN));
        let before = d.clone();
        d.take(Step::Lower, &h, RescuePlan::Written);
        assert_eq!(d, before);
    }

    #[test]
    fn a_short_ladder_does_not_reach_a_worker_under_a_high_eave() {
        let mut s = Scenario::default();
        crate::houses::HouseKind::TallGable.move_in(&mut s);
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

    #[test]
    fn nobody_hangs_who_came_down() {
        let mut s = Scenario::default();
        s.lanyard.clipped = false;
        assert_eq!(hanging(&s, &simulate(&s).expect("falls")), None);
    }
}
