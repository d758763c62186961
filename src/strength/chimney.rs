//! A rope round an unreinforced chimney: it tips about its base or slides on a bed joint.
//!
//! Statics of a block: self-weight, no mortar tension. Sound mortar lets the stack act whole down
//! to the roof; weak mortar lets only the bricks above the sling resist. Left out: the flashing,
//! what stands inside, and everything a mason would see.

use crate::scenario::{Chimney, Mortar};

/// Friction on a bed joint (assumed).
pub const BED_FRICTION: f64 = 0.6;

/// Horizontal pull at which the stack tips about its edge at the roof, N: W b / 2 h.
pub fn tipping_n(c: &Chimney) -> f64 {
    c.weight_n_per_m * c.height_m * c.width_m / (2.0 * c.sling_height_m.max(1e-3))
}

/// Horizontal pull at which bricks slide, N: the whole stack at the roof, or, in weak mortar, only
/// what stands above the sling.
pub fn sliding_n(c: &Chimney) -> f64 {
    let above_m = match c.mortar {
        Mortar::Sound => c.height_m,
        Mortar::Weak => (c.height_m - c.sling_height_m).max(0.0),
    };
    BED_FRICTION * c.weight_n_per_m * above_m
}

/// The lesser of the two, N.
pub fn holds_n(c: &Chimney) -> f64 {
    tipping_n(c).min(sliding_n(c))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{FT_M, IN_M, LBF_N};

    /// W b / 2 h, no mortar tension; friction 0.6 assumed.
    #[test]
    fn check_22_a_chimney_under_a_sling() {
        let mut c = Chimney {
            width_m: 18.0 * IN_M,
            height_m: 4.333 * FT_M,
            sling_height_m: 2.0 * FT_M,
            weight_n_per_m: 160.0 * LBF_N / FT_M,
            mortar: Mortar::Sound,
        };
        let near = |got: f64, want: f64| assert!((got - want).abs() < 0.01 * want, "{got} is not {want}");
        near(tipping_n(&c) * c.sling_height_m / (LBF_N * FT_M), 520.0);
        near(holds_n(&c) / LBF_N, 260.0);
        near(holds_n(&c), 1160.0);
        c.sling_height_m = 0.5 * FT_M;
        near(sliding_n(&c) / LBF_N, 416.0);
        near(tipping_n(&c) / LBF_N, 1040.0);
        near(holds_n(&c) / LBF_N, 416.0);
        c.mortar = Mortar::Weak;
        assert!(holds_n(&c) < 416.0 * LBF_N);
    }
}
