//! The clearance sum that tables and guides use: what has to be free below, all at its worst.
//!
//! It is no simulation: the absorber is taken as torn to its end and the lifeline as stretched by what
//! its maker prints. It answers whether fall arrest has a chance at this height at all. Left out: swing.

use crate::geometry::SetUp;
use crate::physics::equipment::{
    ABSORBER_SHARE, AbsorberParams, GRAB_BITE_M, GRAB_DEAD_TRAVELS_M, HARNESS_COMPLIANCE_M_PER_N,
    HARNESS_SLIDE_LOOSE_M, HARNESS_SLIDE_SNUG_M, ROPE_TABLE_N, rope_modulus_n,
};
use crate::scenario::{Absorber, HarnessFit};

/// Least shift of the D-ring and stretch of the harness that tables allow, m: 1 ft (OSHA Technical
/// Manual V-4; the figure from memory).
pub const HARNESS_TABLE_M: f64 = 0.3048;

/// Free fall, deceleration distance, D-ring shift, height of the D-ring above the feet and reserve,
/// added up, m: the clearance below the place where the lanyard hangs taut beside the D-ring
/// (OSHA Technical Manual, section V chapter 4).
pub fn sum_m(
    free_fall_m: f64,
    deceleration_m: f64,
    shift_m: f64,
    dring_height_m: f64,
    reserve_m: f64,
) -> f64 {
    free_fall_m + deceleration_m + shift_m + dring_height_m + reserve_m
}

/// Free fall on a lanyard whose grab is `above_m` over the D-ring, m: what is slack (check 12).
pub fn free_fall_m(lanyard_m: f64, above_m: f64) -> f64 {
    (lanyard_m - above_m).max(0.0)
}

/// A term of the sum.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Term {
    /// Slack of lanyard and line: what is fallen freely.
    FreeFall,
    /// The absorber, all torn.
    Absorber,
    /// Travel of the grab until it bites.
    Grab,
    /// The lifeline's stretch.
    Rope,
    /// Shift of the D-ring and stretch of the harness.
    Harness,
    /// Reserve.
    Reserve,
}

/// The terms of the room needed under the feet, m, with the grab `above_m` over the D-ring.
pub fn terms(s: &SetUp, above_m: f64, reserve_m: f64) -> [(Term, f64); 6] {
    // Without an absorber the stop is shorter and far harder; tables leave no room out for that.
    let ordinary_m = Absorber::default().max_extension_m;
    let (tear_m, force_n) = AbsorberParams::of(s, ABSORBER_SHARE.1)
        .map_or((ordinary_m, 0.0), |a| (a.max_extension_m.max(ordinary_m), a.opening_n));
    let slide_m = match s.worker.harness {
        HarnessFit::Snug => HARNESS_SLIDE_SNUG_M,
        HarnessFit::Loose => HARNESS_SLIDE_LOOSE_M,
    };
    [
        (Term::FreeFall, free_fall_m(s.lanyard.length_m, above_m) + s.lifeline.slack_m),
        (Term::Absorber, tear_m),
        (Term::Grab, GRAB_DEAD_TRAVELS_M.1 + GRAB_BITE_M),
        (Term::Rope, stretch_m(s)),
        (Term::Harness, (slide_m + HARNESS_COMPLIANCE_M_PER_N * force_n).max(HARNESS_TABLE_M)),
        (Term::Reserve, reserve_m),
    ]
}

/// Room needed under the feet of a set-up, m, with the grab `above_m` over the D-ring: its terms, added up as
/// [`sum_m`] does.
pub fn needed_under_feet_m(s: &SetUp, above_m: f64, reserve_m: f64) -> f64 {
    let [free, tear, grab, rope, shift, reserve] = terms(s, above_m, reserve_m).map(|t| t.1);
    sum_m(free, tear + grab + rope, shift, 0.0, reserve)
}

/// What the sum allows for the lifeline's stretch between anchor and grab, m: its elongation at
/// [`ROPE_TABLE_N`], as makers print it (about a tenth of the length for the usual 16 mm line).
pub fn stretch_m(s: &SetUp) -> f64 {
    s.geometry().grab_rope_m * ROPE_TABLE_N / rope_modulus_n(&s.lifeline)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Geometry;
    use crate::scenario::Scenario;
    use crate::units::FT_M;

    /// Two bugs: the sum left the lifeline's stretch out, and taking the absorber off lowered it from
    /// 2.68 to 1.38 m.
    #[test]
    fn the_sum_has_a_tenth_of_the_usual_line_and_no_less_without_an_absorber() {
        let mut s = Scenario::default();
        let rope_m = Geometry::of(&s).expect("stands").grab_rope_m;
        assert!(
            (stretch_m(&s.set_up().expect("possible")) - 0.1 * rope_m).abs() < 1e-3,
            "{} of {rope_m}",
            stretch_m(&s.set_up().expect("possible"))
        );
        let with = needed_under_feet_m(&s.set_up().expect("possible"), 0.3, 0.6);
        // By hand: 0.75 - 0.3 slack, 1.2 torn, 0.3 of dead travel and 0.05 to bite, a tenth of the rope, 0.3048, 0.6.
        assert!((with - (0.45 + 1.2 + 0.35 + 0.1 * rope_m + 0.3048 + 0.6)).abs() < 2e-3, "{with}");
        s.lanyard.absorber = None;
        assert!(needed_under_feet_m(&s.set_up().expect("possible"), 0.3, 0.6) >= with - 1e-9);
    }

    /// OSHA Technical Manual V-4 (the 1 and 2 ft from memory).
    #[test]
    fn check_14_the_clearance_sum() {
        let ft = |x: f64| x * FT_M;
        let whole = sum_m(ft(6.0), ft(3.5), ft(1.0), ft(5.0), ft(2.0));
        assert!((whole - ft(17.5)).abs() < 1e-9);
        // The anchor 4 ft above the D-ring takes 4 ft off the free fall.
        let higher = sum_m(free_fall_m(ft(6.0), ft(4.0)), ft(3.5), ft(1.0), ft(5.0), ft(2.0));
        assert!((higher - ft(13.5)).abs() < 1e-9);
    }

    /// Geometry.
    #[test]
    fn check_12_free_fall_by_the_grabs_height() {
        for (above, want) in [(-0.9, 1.8), (0.3, 0.6), (0.9, 0.0)] {
            assert!((free_fall_m(0.9, above) - want).abs() < 1e-12);
        }
    }
}
