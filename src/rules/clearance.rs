//! The clearance sum that tables and guides use: what has to be free below, all at its worst.
//!
//! It is no simulation: the absorber is taken as torn to its end. It answers whether fall arrest
//! has a chance at this height at all. Left out: swing, and the rope's stretch, which tables of
//! fixed anchors do not know.

use crate::physics::equipment::{
    ABSORBER_SHARE, AbsorberParams, GRAB_LOCKING_TRAVEL_M, HARNESS_COMPLIANCE_M_PER_N, HARNESS_SLIDE_LOOSE_M,
    HARNESS_SLIDE_SNUG_M,
};
use crate::scenario::{HarnessFit, Scenario};

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

/// Room needed under the feet of a set-up, m, with the grab `above_m` over the D-ring.
pub fn needed_under_feet_m(s: &Scenario, above_m: f64, reserve_m: f64) -> f64 {
    let (tear_m, force_n) =
        AbsorberParams::of(s, ABSORBER_SHARE.1).map_or((0.0, 0.0), |a| (a.max_extension_m, a.opening_n));
    let slide_m = match s.worker.harness {
        HarnessFit::Snug => HARNESS_SLIDE_SNUG_M,
        HarnessFit::Loose => HARNESS_SLIDE_LOOSE_M,
    };
    let shift_m = slide_m + HARNESS_COMPLIANCE_M_PER_N * force_n;
    sum_m(free_fall_m(s.lanyard.length_m, above_m), tear_m + GRAB_LOCKING_TRAVEL_M, shift_m, 0.0, reserve_m)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::FT_M;

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
