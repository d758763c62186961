//! Finding the framing under a roof: what a tap tells, what a fastener feels on its way in, and the
//! anchor that comes of it.
//!
//! The rafters stand at their true spacing, the first one anywhere. What a fastener holds on its way
//! in is the withdrawal of `strength::wood`, by the depth it has reached. Left out: knots, splits,
//! a fastener that runs along a rafter's face.

use crate::scenario::{AnchorKind, Scenario};
use crate::strength::PLATE_M;
use crate::strength::wood::{
    Fastener, SHEATHING_M, specific_gravity_ratio, withdrawal, withdrawal_from_sheathing,
};
use serde::{Deserialize, Serialize};

/// Length of roof that can be tapped, m.
pub const WIDTH_M: f64 = 2.4;
/// Thickness of a rafter, m (a dressed 2 by: 1 1/2 in; American Softwood Lumber Standard PS 20).
pub const RAFTER_M: f64 = 0.038;
/// Nearest that a fastener may come to a rafter's face and count as in it, m (assumed: a nail's
/// diameter and a half).
pub const FACE_M: f64 = 0.006;
/// A tap sounds solid to this distance from a rafter's middle, and between the two to the next, m
/// (assumed).
pub const SOUNDS_M: [f64; 2] = [0.03, 0.07];
/// Usual spacings, m: 16 and 24 in.
pub const SPACINGS_M: [f64; 2] = [0.406_4, 0.609_6];
/// How far up the slope it can be reached, m.
pub const HEIGHT_M: f64 = 1.6;
/// Nearest that two fasteners may stand, in any direction, m (assumed; wood splits between nails that are closer).
pub const APART_M: f64 = 0.02;
/// A blow this near to a fastener goes on with it, m.
pub const SAME_M: f64 = 0.004;
/// Fasteners that the plate takes on a slope.
pub const PLATE_HOLES: usize = 6;

/// A stretch of roof over rafters.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Roof {
    /// Middle to middle, m.
    pub spacing_m: f64,
    /// Middle of the first rafter, m from the left end.
    pub first_m: f64,
}

/// What a tap sounds like.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Sound {
    /// Over a rafter.
    Solid,
    /// Beside one.
    Between,
    /// Over the space between two.
    Hollow,
}

impl Roof {
    /// The roof of a seed.
    pub fn of(seed: u64) -> Roof {
        let mut pick = crate::draw::Draw::with_seed(seed ^ 0x00F0_0F1E);
        let spacing_m = pick.one(SPACINGS_M);
        Roof { spacing_m, first_m: (0.05 + pick.unit() * (spacing_m - 0.1)) }
    }

    /// Middles of the rafters, m.
    pub fn rafters_m(&self) -> Vec<f64> {
        (0..16).map(|i| self.first_m + f64::from(i) * self.spacing_m).take_while(|x| *x < WIDTH_M).collect()
    }

    /// Distance to the nearest rafter's middle, m.
    pub fn off_m(&self, x_m: f64) -> f64 {
        self.rafters_m().into_iter().map(|r| (r - x_m).abs()).fold(f64::INFINITY, f64::min)
    }

    /// The sound of a tap.
    pub fn tap(&self, x_m: f64) -> Sound {
        match self.off_m(x_m) {
            d if d <= SOUNDS_M[0] => Sound::Solid,
            d if d <= SOUNDS_M[1] => Sound::Between,
            _ => Sound::Hollow,
        }
    }

    /// Whether a fastener at `x_m` is in a rafter.
    pub fn is_framing(&self, x_m: f64) -> bool {
        self.off_m(x_m) <= RAFTER_M / 2.0 - FACE_M
    }
}

/// A fastener on its way in.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Driven {
    /// Where, m from the left end.
    pub x_m: f64,
    /// How far up the slope, m.
    pub y_m: f64,
    /// Share of its length that is in.
    pub in_share: f64,
    /// Pulled again.
    pub pulled: bool,
    /// Its hole is sealed.
    pub sealed: bool,
}

/// What a blow at a place would do.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Blow {
    /// Go on with the fastener of this number.
    On(usize),
    /// Start a new one.
    New,
    /// Too near to another fastener, or to a hole: this far, m.
    TooNear(f64),
    /// The plate has no hole left.
    Full,
}

/// What a blow does: one fastener has one place, in both directions.
pub fn blow(work: &[Driven], x_m: f64, y_m: f64) -> Blow {
    let far = |d: &Driven| libm::hypot(d.x_m - x_m, d.y_m - y_m);
    if let Some(i) = work.iter().rposition(|d| !d.pulled && d.in_share < 0.99 && far(d) <= SAME_M) {
        return Blow::On(i);
    }
    let near = work.iter().map(far).fold(f64::INFINITY, f64::min);
    if near < APART_M - 1e-9 {
        Blow::TooNear(near)
    } else if work.iter().filter(|d| !d.pulled).count() >= PLATE_HOLES {
        Blow::Full
    } else {
        Blow::New
    }
}

/// Length of a fastener in sheathing and framing when it is in to `in_share`, m.
fn depth_m(f: &Fastener, in_share: f64) -> f64 {
    (f.length_m * in_share - PLATE_M).max(0.0)
}

/// What a fastener at `x_m` holds against being pulled straight out when it is in to `in_share`:
/// the mean, N.
pub fn holds_n(s: &Scenario, roof: &Roof, x_m: f64, in_share: f64) -> f64 {
    let f = Fastener::of(s.anchor.fasteners.kind);
    let depth = depth_m(&f, in_share);
    let sheathing_n = withdrawal_from_sheathing(&f).ultimate_n * (depth / SHEATHING_M).min(1.0);
    if !roof.is_framing(x_m) {
        return sheathing_n;
    }
    let gravity_ratio = specific_gravity_ratio(s.anchor.fasteners.species);
    // In framing the sheathing is not counted, as in the strength of the whole plate.
    sheathing_n.max(withdrawal(&f, gravity_ratio, (depth - SHEATHING_M).max(0.0)).ultimate_n)
}

/// What is wrong with the work as it is left.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Left {
    /// Fasteners in framing.
    pub hits: u32,
    /// Fasteners in sheathing alone, still in.
    pub misses: u32,
    /// Holes of pulled fasteners that are open to the rain.
    pub open_holes: u32,
    /// Fasteners not driven home.
    pub proud: u32,
}

/// Looks the work over.
pub fn left(roof: &Roof, work: &[Driven]) -> Left {
    let mut out = Left::default();
    for d in work {
        match (d.pulled, d.in_share < 0.99, roof.is_framing(d.x_m)) {
            (true, ..) => out.open_holes += u32::from(!d.sealed),
            (false, true, _) => out.proud += 1,
            (false, false, true) => out.hits += 1,
            (false, false, false) => out.misses += 1,
        }
    }
    out
}

/// The set-up on the anchor that was built: the far slope is taken to be like this one. None with
/// nothing driven home.
pub fn build(before: &Scenario, roof: &Roof, work: &[Driven]) -> Option<Scenario> {
    let found = left(roof, work);
    let n = found.hits + found.misses;
    if n == 0 {
        return None;
    }
    let mut s = before.clone();
    s.anchor.kind =
        if found.hits == 0 { AnchorKind::RidgePlateInSheathing } else { AnchorKind::RidgePlateInFraming };
    s.anchor.fasteners.per_side = n.min(crate::scenario::MOST_FASTENERS_PER_SIDE);
    s.anchor.fasteners.missed = (2 * found.misses).min(2 * s.anchor.fasteners.per_side);
    Some(s)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::strength::anchor;

    #[test]
    fn a_tap_is_solid_over_every_rafter_and_hollow_between() {
        for seed in 0..200 {
            let roof = Roof::of(seed);
            let all = roof.rafters_m();
            assert!(all.len() >= 3 && all.windows(2).all(|w| (w[1] - w[0] - roof.spacing_m).abs() < 1e-9));
            for r in &all {
                assert_eq!(roof.tap(*r), Sound::Solid);
                assert!(roof.is_framing(*r) && !roof.is_framing(r + 0.02));
            }
            assert_eq!(roof.tap(all[0] + roof.spacing_m / 2.0), Sound::Hollow);
        }
    }

    /// Wood Handbook (FPL-GTR-282) ch. 8: withdrawal grows with depth; the whole plate's own figures.
    #[test]
    fn resistance_rises_in_framing_and_stops_rising_in_sheathing() {
        let (s, roof) = (Scenario::default(), Roof::of(3));
        let r = roof.rafters_m()[1];
        let at = |x, k| holds_n(&s, &roof, x, k);
        let steps: Vec<f64> = (0..=10).map(|i| at(r, f64::from(i) / 10.0)).collect();
        assert!(steps.windows(2).all(|w| w[1] >= w[0]));
        let miss = r + 0.1;
        assert!((at(miss, 1.0) - at(miss, 0.5)).abs() < 1e-9);
        assert!(at(r, 1.0) > 2.5 * at(miss, 1.0), "{} {}", at(r, 1.0), at(miss, 1.0));
    }

    /// A bug: nails of one x were stacked on one point. Each has a place of its own, 2 cm from the next, and a sixth
    /// is the last.
    #[test]
    fn one_fastener_has_one_place_in_two_directions() {
        let at = |x_m, y_m, in_share| Driven { x_m, y_m, in_share, pulled: false, sealed: false };
        let begun = [at(0.5, 0.8, 0.34)];
        assert_eq!(blow(&begun, 0.5, 0.8), Blow::On(0));
        let home = [at(0.5, 0.8, 1.0)];
        assert!(matches!(blow(&home, 0.5, 0.8), Blow::TooNear(_)));
        // 12 mm aside and 16 mm up is 20 mm away; 12 and 12 is 17.
        assert_eq!(blow(&home, 0.512, 0.816), Blow::New);
        assert!(matches!(blow(&home, 0.512, 0.812), Blow::TooNear(m) if (m - 0.016_97).abs() < 1e-4));
        // A hole counts as well as a nail.
        assert!(matches!(blow(&[Driven { pulled: true, ..home[0] }], 0.5, 0.81), Blow::TooNear(_)));
        let six: Vec<Driven> = (0..6).map(|i| at(0.5, 0.1 * f64::from(i), 1.0)).collect();
        assert_eq!(blow(&six, 0.5, 1.0), Blow::Full);
    }

    #[test]
    fn what_was_built_is_the_next_falls_anchor() {
        let (s, roof) = (Scenario::default(), Roof::of(9));
        let r = roof.rafters_m()[1];
        let home = |x_m| Driven { x_m, y_m: 0.5, in_share: 1.0, pulled: false, sealed: false };
        assert_eq!(build(&s, &roof, &[]), None);
        let good = build(&s, &roof, &[home(r); 6]).expect("built");
        let poor = build(&s, &roof, &[home(r), home(r + 0.1), home(r + 0.1), home(r + 0.1)]).expect("built");
        let none = build(&s, &roof, &[home(r + 0.1); 4]).expect("built");
        assert_eq!((good.anchor.fasteners.per_side, good.anchor.fasteners.missed), (6, 0));
        assert!(anchor(&good).low.0 > anchor(&poor).low.0 && anchor(&poor).low.0 > anchor(&none).low.0);
        let pulled = Driven { pulled: true, ..home(r + 0.1) };
        let found = left(&roof, &[home(r), pulled, Driven { in_share: 0.5, ..home(r) }]);
        assert_eq!((found.hits, found.misses, found.open_holes, found.proud), (1, 0, 1, 1));
    }
}
