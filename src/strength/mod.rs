//! What the anchor holds: fasteners in wood, a chimney, rated hardware.
//!
//! Every anchor gets a mean breaking load, a low one (the weakest in twenty, which the simulation
//! uses: against the worker) and, where a code gives one, an allowable load. The last two are
//! different types and cannot be compared. Only a qualified person can judge a real anchor.
//!
//! A ridge anchor is a pair of steel plates hinged over the peak. The rope pulls along the worker's
//! slope: fasteners there are loaded sideways, and those on the far slope by cos of twice the pitch
//! (virtual work; bearing of the far plate is left out, against the worker). The ring stands off
//! the roof, so the pull also pries the plate up.

pub mod chimney;
pub mod wood;

use crate::scenario::{AnchorKind, MOST_FASTENERS_PER_SIDE, Scenario, Stance};
use crate::units::{IN_M, KN_N};
use wood::{Fastener, SHEATHING_M, Side, combined_n, lateral, withdrawal, withdrawal_from_sheathing};

/// A load within allowable stress, N. Compares with its own kind only:
///
/// ```compile_fail
/// use shortfall::strength::{BreakingLoadN, WorkingLoadN};
/// assert!(WorkingLoadN(8000.0) < BreakingLoadN(18000.0));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct WorkingLoadN(pub f64);

/// A load at which a thing may break, N. Compares with its own kind only.
///
/// ```
/// use shortfall::strength::BreakingLoadN;
/// assert!(BreakingLoadN(9000.0) < BreakingLoadN(18000.0));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct BreakingLoadN(pub f64);

/// Thickness of the anchor's plate, m (12 gauge, 0.105 in; assumed).
pub const PLATE_M: f64 = 0.105 * IN_M;
/// How far the ring stands off the roof, m (assumed).
pub const RING_HEIGHT_M: f64 = 0.05;
/// Length of a plate from its first to its last fastener, m (assumed).
pub const PLATE_LENGTH_M: f64 = 0.25;
/// How far off the roof the rope leaves the anchor when the worker lies on the slope, rad (assumed:
/// a D-ring a hand above the roof, a body's length down the slope).
pub const LYING_PULL_RAD: f64 = 0.15;
/// Load-duration factor for a load of seconds (NDS Table 2.3.2, ten minutes; connections may not
/// take the factor for impact).
pub const LOAD_DURATION_RATIO: f64 = 1.6;
/// Spread of fasteners in wood: standard deviation over mean (from memory, 0.15 to 0.3).
pub const WOOD_SPREAD_RATIO: f64 = 0.2;
/// Spread of a chimney's weight and friction (assumed).
pub const CHIMNEY_SPREAD_RATIO: f64 = 0.25;
/// Standard deviations under the mean that leave one in twenty below.
const ONE_IN_TWENTY: f64 = 1.645;

/// Where a strength comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ground {
    /// Computed from fasteners by the NDS and the Wood Handbook.
    Fasteners,
    /// Computed from a chimney's statics.
    Masonry,
    /// Stated by its maker.
    Stated,
    /// No anchor at all: a small assumed figure.
    Unsuitable,
}

/// Most fasteners in one row of the plate before a 38 mm rafter is likely to split: seven 16d nails are ten
/// diameters apart over the plate's length (NDS commentary, from memory).
pub const MOST_IN_A_ROW: u32 = 7;

/// What an anchor holds for the pull that this set-up gives.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strength {
    /// Mean breaking load.
    pub mean: BreakingLoadN,
    /// The weakest in twenty.
    pub low: BreakingLoadN,
    /// Allowable load; none where no code gives one.
    pub allowable: Option<WorkingLoadN>,
    /// Where it comes from.
    pub ground: Ground,
    /// Fasteners in framing and in sheathing alone.
    pub fasteners: (u32, u32),
}

fn spread(mean_n: f64, ratio: f64) -> BreakingLoadN {
    BreakingLoadN(mean_n * (1.0 - ONE_IN_TWENTY * ratio))
}

/// One fastener of the plate at an angle off the roof: (ultimate, allowable), N.
fn one(s: &Scenario, in_framing: bool, off_rad: f64) -> (f64, f64) {
    let a = &s.anchor.fasteners;
    let f = Fastener::of(a.kind);
    let g = wood::specific_gravity_ratio(a.species);
    let in_wood_m = f.length_m - PLATE_M - SHEATHING_M;
    let (w, z) = if in_framing {
        (
            withdrawal(&f, g, in_wood_m.min(f.threaded_m())),
            lateral(&f, g.min(wood::SHEATHING_LATERAL_RATIO), in_wood_m + SHEATHING_M, Side::Steel(PLATE_M)),
        )
    } else {
        // Sheathing is under six diameters deep: the code gives no lateral value, so the nail is
        // taken to work loose and hold what its withdrawal holds.
        let w = withdrawal_from_sheathing(&f);
        debug_assert!(SHEATHING_M < wood::LEAST_DEPTH_RATIO * f.diameter_m);
        (w, w)
    };
    let (wet_w, wet_z) = wood::wet_share(a.moisture, f.shank, in_framing);
    let (w, z) = (w.times(wet_w), z.times(wet_z));
    (
        combined_n(w.ultimate_n, z.ultimate_n, off_rad),
        LOAD_DURATION_RATIO * combined_n(w.allowable_n, z.allowable_n, off_rad),
    )
}

/// The rope's own angle off the roof, rad.
fn lift_rad(s: &Scenario) -> f64 {
    match s.stance {
        Stance::Ladder { .. } => 0.0,
        Stance::Roof { .. } => LYING_PULL_RAD,
    }
}

/// Angle between the force on the fastener that is pried most and the roof, rad: the rope's own, and the ring
/// that stands off the roof. About the plate's lower end a row of `n` at even spacing takes the moment in
/// proportion to its distances, so the row at the ridge takes x / sum of x^2 of it and lets go first; the
/// rest then follows.
fn pried_rad(lift_rad: f64, n: u32) -> f64 {
    let n = f64::from(n.max(1));
    // x_i = L i / n; the pull on one is its share of the moment over its share of the shear.
    let pried = 6.0 * n * n * RING_HEIGHT_M / (PLATE_LENGTH_M * (n + 1.0) * (2.0 * n + 1.0));
    libm::atan(libm::tan(lift_rad) + pried)
}

fn ridge(s: &Scenario, all_in_sheathing: bool) -> Strength {
    let a = &s.anchor.fasteners;
    let n = a.per_side.min(MOST_FASTENERS_PER_SIDE);
    let missed = if all_in_sheathing { 2 * n } else { a.missed.min(2 * n) };
    // Misses count on the worker's side first.
    let (miss_near, miss_far) = (missed.min(n), missed - missed.min(n));
    let lift = lift_rad(s);
    let off = pried_rad(lift, n);
    // Of the rope's pull each fastener bears its share of the shear; prying adds to that.
    let share = libm::cos(off) / libm::cos(lift);
    let each = |in_framing: bool| {
        let (ultimate_n, allowable_n) = one(s, in_framing, off);
        (share * ultimate_n, share * allowable_n)
    };
    let (framing, sheathing) = (each(true), each(false));
    let far = libm::cos(2.0 * s.house.roof_pitch_rad).max(0.0);
    let sum = |pick: fn((f64, f64)) -> f64| {
        let side = |missed: u32| f64::from(n - missed) * pick(framing) + f64::from(missed) * pick(sheathing);
        side(miss_near) + far * side(miss_far)
    };
    let mean_n = sum(|p| p.0);
    Strength {
        mean: BreakingLoadN(mean_n),
        low: spread(mean_n, WOOD_SPREAD_RATIO),
        allowable: Some(WorkingLoadN(sum(|p| p.1))),
        ground: Ground::Fasteners,
        fasteners: (2 * n - missed, missed),
    }
}

/// What a set-up's anchor holds.
pub fn anchor(s: &Scenario) -> Strength {
    let unsuitable = |n: f64| Strength {
        mean: BreakingLoadN(n),
        low: BreakingLoadN(n),
        allowable: None,
        ground: Ground::Unsuitable,
        fasteners: (0, 0),
    };
    match s.anchor.kind {
        AnchorKind::RidgePlateInFraming => ridge(s, false),
        AnchorKind::RidgePlateInSheathing => ridge(s, true),
        AnchorKind::ChimneySling => {
            let mean_n = chimney::holds_n(&s.anchor.chimney);
            Strength {
                mean: BreakingLoadN(mean_n),
                low: spread(mean_n, CHIMNEY_SPREAD_RATIO),
                allowable: None,
                ground: Ground::Masonry,
                fasteners: (0, 0),
            }
        }
        AnchorKind::RatedEye => Strength {
            mean: BreakingLoadN(s.anchor.stated_breaking_n),
            low: BreakingLoadN(s.anchor.stated_breaking_n),
            allowable: None,
            ground: Ground::Stated,
            fasteners: (0, 0),
        },
        // Assumed small figures: none of these is an anchor.
        AnchorKind::VentPipe => unsuitable(0.9 * KN_N),
        AnchorKind::Gutter => unsuitable(0.6 * KN_N),
        AnchorKind::RoofVent => unsuitable(0.5 * KN_N),
        AnchorKind::AntennaMast => unsuitable(0.7 * KN_N),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scenario::{FastenerKind, Fasteners, Moisture, Species};

    fn with(change: impl FnOnce(&mut Fasteners)) -> Strength {
        let mut s = Scenario::default();
        change(&mut s.anchor.fasteners);
        anchor(&s)
    }

    #[test]
    fn more_fasteners_denser_wood_and_no_misses_hold_more() {
        let base = with(|_| {});
        assert!(with(|f| f.per_side = 10).low > base.low);
        assert!(with(|f| f.species = Species::SouthernPine).low > base.low);
        assert!(with(|f| f.missed = 2).low < base.low);
        assert!(with(|f| f.moisture = Moisture::Wet).low < base.low);
        assert!(base.low < base.mean);
        // An allowable load holds back more than the weakest in twenty does.
        assert!(base.allowable.is_some_and(|a| a.0 < base.low.0));
    }

    #[test]
    fn an_allowable_load_is_never_more_than_the_weakest_in_twenty() {
        for &kind in FastenerKind::ALL {
            for &species in crate::scenario::Species::ALL {
                for &moisture in Moisture::ALL {
                    for missed in [0, 5, 12] {
                        let a = with(|f| {
                            (f.kind, f.species, f.moisture, f.missed) = (kind, species, moisture, missed);
                        });
                        let allowable = a.allowable.expect("by the code");
                        assert!(allowable.0 < a.low.0, "{kind:?} {species:?} {moisture:?} {missed}");
                    }
                }
            }
        }
    }

    /// A bug: prying was spread evenly over the plate, 11 degrees for each. By hand for six: moment F 0.05 m
    /// about the lower end of 0.25 m, distances L/6 to L, so the last takes 6 / 91 of it over L; times six for
    /// its share of the shear: tan = 6 * 0.05 / 0.25 * 36 / 91 = 0.475, 25.4 degrees; three: 0.386, 21.1.
    #[test]
    fn the_row_at_the_ridge_is_pried_most() {
        assert!((pried_rad(0.0, 6).to_degrees() - 25.4).abs() < 0.05);
        assert!((pried_rad(0.0, 3).to_degrees() - 21.1).abs() < 0.05);
        // Six 16d a side in dry spruce: with Z and W of one nail, V = 1 / (1 / Z + tan / W) each, six on the
        // near side and 0.6 of them on the far one (cos 2 x 26.6 degrees).
        let mut s = Scenario::default();
        s.anchor.fasteners.per_side = 6;
        let f = Fastener::of(s.anchor.fasteners.kind);
        let depth_m = f.length_m - PLATE_M - SHEATHING_M;
        let w = withdrawal(&f, 0.42, depth_m).ultimate_n;
        let z = lateral(&f, 0.42, depth_m + SHEATHING_M, Side::Steel(PLATE_M)).ultimate_n;
        let by_hand_n = 6.0 * 1.6 / (1.0 / z + 0.4747 / w);
        assert!((anchor(&s).mean.0 / by_hand_n - 1.0).abs() < 2e-3, "{:?} {by_hand_n}", anchor(&s));
    }

    #[test]
    fn a_plate_all_of_whose_fasteners_missed_is_a_plate_in_sheathing() {
        let missed = with(|f| f.missed = 99);
        let mut s = Scenario::default();
        s.anchor.kind = AnchorKind::RidgePlateInSheathing;
        assert_eq!(missed, anchor(&s));
    }

    #[test]
    fn on_a_steeper_roof_the_far_plate_helps_less() {
        let mut s = Scenario::default();
        let flat = anchor(&s).low;
        s.house.roof_pitch_rad = core::f64::consts::FRAC_PI_4;
        let steep = anchor(&s).low;
        assert!(steep < flat);
        // At 45 degrees the far slope stands square to the pull.
        s.anchor.fasteners.missed = 0;
        assert!(
            (steep.0 / flat.0 - 1.0 / (1.0 + (2.0 * Scenario::default().house.roof_pitch_rad).cos())).abs()
                < 1e-9
        );
    }

    #[test]
    fn every_kind_holds_something_and_no_more_than_its_mean() {
        for kind in AnchorKind::ALL {
            let mut s = Scenario::default();
            s.anchor.kind = kind;
            let a = anchor(&s);
            assert!(a.low.0 > 0.0 && a.low <= a.mean, "{kind:?}");
            let sound = matches!(kind, AnchorKind::RidgePlateInFraming | AnchorKind::RatedEye);
            assert_eq!(a.low.0 > 4.0 * KN_N, sound, "{kind:?}: {:.0} N", a.low.0);
        }
    }
}
