//! Many falls: the same set-up over what nobody knows exactly.
//!
//! Each fall is a whole run of the engine (not a reduced model) until its outcome is settled, with
//! one draw of every uncertain input. A fall's draw depends on the seed and its own number alone,
//! so the falls can be run in any order and in parts. Left out: how inputs hang together.

use crate::draw::Draw;
use crate::geometry::SetUp;
use crate::physics::equipment::{
    ABSORBER_SHARE, ABSORBER_SHARE_MIDDLE, AbsorberParams, GRAB_DEAD_TRAVEL_M, GRAB_DEAD_TRAVELS_M,
    GRAB_GRIP_N, GRAB_GRIPS_N, LineParams, ROOF_SLIP_FRICTION, rope_modulus_n,
};
use crate::physics::trace::Outcome;
use crate::physics::{Settled, Start, settle};
use crate::scenario::{AbsorberClass, RopeKind};
use crate::strength;
use serde::{Deserialize, Serialize};

/// How many falls make a spread.
pub const FALLS: u32 = 1_000;
/// Below this many falls, ranks say nothing of which input matters.
pub const FEW: usize = 20;

/// An input that is not known exactly.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Uncertain {
    /// Mass with clothes and tools: standard deviation 3 kg (assumed).
    Mass,
    /// Force at which the absorber tears: 0.65 to 0.85 of its class figure (CSA Z259.11-05), or so
    /// far about a stated force.
    AbsorberForce,
    /// Rope modulus: two thirds to four thirds, the span of EN 1891's limits about their middle.
    RopeModulus,
    /// How far the grab runs before it bites: 0.05 to 0.3 m (assumed).
    DeadTravel,
    /// Force at which it then slips: 3 to 8 kN (assumed).
    GrabGrip,
    /// Friction over the roof's edge: 0.2 to 0.4 (assumed).
    EdgeFriction,
    /// Strength of the anchor: normal about its mean.
    AnchorStrength,
    /// Speed with which the slip begins: half to one and a half of the assumed one (assumed).
    SlipSpeed,
    /// Friction of the body on the roof: 0.15 to 0.5 (assumed: wet and dusty to dry).
    RoofFriction,
}

/// Number of inputs that are not known exactly.
pub const INPUTS: usize = 9;

impl Uncertain {
    /// All, in the order of a draw.
    pub const ALL: [Uncertain; INPUTS] = [
        Uncertain::Mass,
        Uncertain::AbsorberForce,
        Uncertain::RopeModulus,
        Uncertain::DeadTravel,
        Uncertain::GrabGrip,
        Uncertain::EdgeFriction,
        Uncertain::AnchorStrength,
        Uncertain::SlipSpeed,
        Uncertain::RoofFriction,
    ];
}

/// One fall of a spread.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct SpreadFall {
    /// Its draw, in the order of [`Uncertain::ALL`], each as a share of its middle.
    pub draw: [f64; INPUTS],
    /// How it ended.
    pub settled: Settled,
}

/// Normal deviate by Box and Muller (1958), from two uniform ones.
fn normal(pick: &mut Draw) -> f64 {
    let (u, v) = (1.0 - pick.unit(), pick.unit());
    libm::sqrt(-2.0 * libm::log(u)) * libm::cos(core::f64::consts::TAU * v)
}

/// One fall of the spread with this seed; `None` when the set-up has problems.
pub fn fall(s: &SetUp, seed: u64, number: u32) -> Option<SpreadFall> {
    let mut pick = Draw::with_seed(seed.wrapping_add(u64::from(number).wrapping_mul(0x9e37_79b9)));
    let between = |pick: &mut Draw, a: f64, b: f64| a + (b - a) * pick.unit();
    let mut drawn = s.scenario().clone();
    let mass_share = 1.0 + 3.0 / s.worker.mass_kg * normal(&mut pick);
    drawn.worker.mass_kg = (s.worker.mass_kg * mass_share).clamp(40.0, 180.0);
    let tear_share = between(&mut pick, ABSORBER_SHARE.0, ABSORBER_SHARE.1);
    let stated = s.lanyard.absorber.is_some_and(|a| a.class == AbsorberClass::Stated);
    let modulus_share = between(&mut pick, 0.654, 1.373);
    drawn.lifeline.modulus_n = (rope_modulus_n(&s.lifeline) * modulus_share).clamp(5_000.0, 200_000.0);
    drawn.lifeline.kind = RopeKind::Stated;
    let mut line = LineParams::of(&drawn);
    line.absorber = AbsorberParams::of(&drawn, tear_share);
    if let Some(a) = line.absorber.as_mut().filter(|_| stated) {
        // A stated force is taken as the middle of what such packs do.
        let share = tear_share / ABSORBER_SHARE_MIDDLE;
        (a.opening_n, a.force_n) = (a.opening_n * share, a.force_n * share);
    }
    line.grab.dead_travel_m = between(&mut pick, GRAB_DEAD_TRAVELS_M.0, GRAB_DEAD_TRAVELS_M.1);
    let grip_n = between(&mut pick, GRAB_GRIPS_N.0, GRAB_GRIPS_N.1);
    line.grab.grip_n = line.grab.grip_n.min(grip_n);
    line.edge_friction = between(&mut pick, 0.2, 0.4);
    let anchor = strength::anchor(&drawn);
    // One in twenty lies 1.645 standard deviations under the mean.
    let spread_n = (anchor.mean.0 - anchor.low.0) / 1.645;
    let anchor_n = (anchor.mean.0 + spread_n * normal(&mut pick)).max(0.1 * anchor.mean.0);
    line.anchor_capacity_n = anchor_n;
    let start = Start {
        slip_share: between(&mut pick, 0.5, 1.5),
        roof_friction: between(&mut pick, 0.15, 0.5),
        ..Start::default()
    };
    let draw = [
        drawn.worker.mass_kg / s.worker.mass_kg,
        tear_share / ABSORBER_SHARE_MIDDLE,
        modulus_share,
        line.grab.dead_travel_m / GRAB_DEAD_TRAVEL_M,
        grip_n / GRAB_GRIP_N,
        line.edge_friction / 0.3,
        anchor_n / anchor.mean.0,
        start.slip_share,
        start.roof_friction / ROOF_SLIP_FRICTION,
    ];
    let drawn = drawn.set_up().ok()?;
    Some(SpreadFall { draw, settled: settle(&drawn, line, start) })
}

/// `count` falls of a spread from number `first` on.
pub fn falls(s: &SetUp, seed: u64, first: u32, count: u32) -> Vec<SpreadFall> {
    (first..first.saturating_add(count.min(FALLS))).filter_map(|i| fall(s, seed, i)).collect()
}

/// Fifth, fiftieth and ninety-fifth percentile.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// One in twenty lies below.
    pub low: f64,
    /// Half lie below.
    pub middle: f64,
    /// One in twenty lies above.
    pub high: f64,
}

fn band(mut values: Vec<f64>) -> Option<Band> {
    values.sort_by(f64::total_cmp);
    let last = values.len().checked_sub(1)?;
    let at = |share: f64| values[(share * last as f64).round() as usize];
    Some(Band { low: at(0.05), middle: at(0.5), high: at(0.95) })
}

/// What many falls say together.
#[derive(Clone, Debug, PartialEq)]
pub struct Summary {
    /// Falls that count: those that pass their own energy check.
    pub counted: usize,
    /// Falls that do not.
    pub unsound: usize,
    /// Of those that count, how many struck something below.
    pub struck: usize,
    /// And how many came off the rope or the anchor.
    pub let_go: usize,
    /// Peak force of those that stopped, N.
    pub force_n: Option<Band>,
    /// Room left by those that stopped, m.
    pub room_m: Option<Band>,
    /// The input whose rank goes most with the room left, and how closely (Spearman, -1 to 1).
    pub matters: Option<(Uncertain, f64)>,
}

fn ranks(values: &[f64]) -> Vec<f64> {
    let mut order: Vec<usize> = (0..values.len()).collect();
    order.sort_by(|a, b| values[*a].total_cmp(&values[*b]));
    let mut out = vec![0.0; values.len()];
    let mut i = 0;
    while i < order.len() {
        // Equal values share their mean rank.
        let mut j = i;
        while j + 1 < order.len() && values[order[j + 1]] == values[order[i]] {
            j += 1;
        }
        for &k in &order[i..=j] {
            out[k] = (i + j) as f64 / 2.0;
        }
        i = j + 1;
    }
    out
}

/// Rank correlation (Spearman 1904); 0 where one side does not vary.
pub fn rank_correlation(a: &[f64], b: &[f64]) -> f64 {
    let (a, b) = (ranks(a), ranks(b));
    let n = a.len() as f64;
    let mean = (n - 1.0) / 2.0;
    let (mut ab, mut aa, mut bb) = (0.0, 0.0, 0.0);
    for (x, y) in a.iter().zip(&b) {
        ab += (x - mean) * (y - mean);
        aa += (x - mean) * (x - mean);
        bb += (y - mean) * (y - mean);
    }
    if aa * bb > 0.0 { ab / libm::sqrt(aa * bb) } else { 0.0 }
}

/// Sums up falls.
pub fn summary(all: &[SpreadFall]) -> Summary {
    let sound: Vec<&SpreadFall> = all.iter().filter(|f| f.settled.sound).collect();
    let count = |o| sound.iter().filter(|f| f.settled.outcome == o).count();
    let stopped: Vec<&Settled> =
        sound.iter().map(|f| &f.settled).filter(|s| s.outcome == Outcome::Stopped).collect();
    // Struck or let go has no room left at all: it ranks below every stop.
    let room: Vec<f64> = sound
        .iter()
        .map(|f| if f.settled.outcome == Outcome::Stopped { f.settled.room_left_m } else { -1.0 })
        .collect();
    let matters = Uncertain::ALL
        .into_iter()
        .enumerate()
        .map(|(i, u)| {
            let drawn: Vec<f64> = sound.iter().map(|f| f.draw[i]).collect();
            (u, rank_correlation(&drawn, &room))
        })
        .max_by(|a, b| a.1.abs().total_cmp(&b.1.abs()))
        .filter(|m| sound.len() >= FEW && m.1.abs() >= 0.1);
    Summary {
        counted: sound.len(),
        unsound: all.len() - sound.len(),
        struck: count(Outcome::Strikes),
        let_go: count(Outcome::LetGo),
        force_n: band(stopped.iter().map(|s| s.peak_force_n).collect()),
        room_m: band(stopped.iter().map(|s| s.room_left_m).collect()),
        matters,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::physics::simulate;
    use crate::scenario::Scenario;
    use crate::scenario::{AnchorKind, Arrow};

    #[test]
    fn a_fall_of_a_spread_depends_on_seed_and_number_alone() {
        let s = Scenario::default();
        let whole = falls(&s.set_up().expect("possible"), 11, 0, 12);
        let mut parts = falls(&s.set_up().expect("possible"), 11, 0, 5);
        parts.extend(falls(&s.set_up().expect("possible"), 11, 5, 7));
        assert_eq!(whole, parts);
        assert_ne!(whole, falls(&s.set_up().expect("possible"), 12, 0, 12));
    }

    #[test]
    fn a_settled_fall_is_the_whole_fall() {
        for (change, what) in [
            ((|_| {}) as fn(&mut Scenario), "plain"),
            (|s| s.grab.above_dring_m = -0.4, "low"),
            (|s| s.grab.arrow = Arrow::Down, "reversed"),
            (|s| s.anchor.kind = AnchorKind::VentPipe, "vent"),
            (|s| s.stance = crate::scenario::Stance::Roof { from_eave_m: 1.0 }, "roof"),
        ] {
            let mut s = Scenario::default();
            change(&mut s);
            let whole = simulate(&s.set_up().expect("possible"));
            let settled = settle(&s.set_up().expect("possible"), LineParams::of(&s), Start::default());
            assert_eq!(settled.outcome, whole.outcome, "{what}");
            if settled.outcome == Outcome::Stopped {
                assert!((settled.peak_force_n / whole.peak_force_n - 1.0).abs() < 1e-9, "{what}");
                let room = whole.clearance_margin_m.expect("held");
                assert!((settled.room_left_m - room).abs() < 0.02, "{what}: {} {room}", settled.room_left_m);
            }
        }
    }

    #[test]
    fn less_room_means_more_strikes_and_a_weak_anchor_lets_go_more_often() {
        let mut s = Scenario::default();
        let plain = summary(&falls(&s.set_up().expect("possible"), 5, 0, 40));
        assert_eq!((plain.struck, plain.let_go), (0, 0));
        assert!(plain.room_m.is_some_and(|b| b.low < b.middle && b.middle < b.high));
        s.house.below = crate::scenario::ORDINARY_OBSTACLE;
        s.ladder.foot_distance_m = 1.45;
        s.lanyard.length_m = 1.8;
        s.grab.above_dring_m = -1.4;
        assert!(summary(&falls(&s.set_up().expect("possible"), 5, 0, 40)).struck > 0);
        let mut s = Scenario::default();
        s.anchor.kind = AnchorKind::RidgePlateInSheathing;
        let some = summary(&falls(&s.set_up().expect("possible"), 5, 0, 60));
        assert!(some.let_go > 0, "{some:?}");
    }

    #[test]
    fn rank_correlation_of_known_lists() {
        assert!((rank_correlation(&[1.0, 2.0, 3.0, 4.0], &[10.0, 20.0, 35.0, 90.0]) - 1.0).abs() < 1e-12);
        assert!((rank_correlation(&[1.0, 2.0, 3.0, 4.0], &[9.0, 7.0, 5.0, 1.0]) + 1.0).abs() < 1e-12);
        assert_eq!(rank_correlation(&[1.0, 1.0, 1.0], &[1.0, 2.0, 3.0]), 0.0);
    }
}
