//! Working along the wall from the anchor's plumb line: how much further down and how fast the
//! worker swings.
//!
//! Roof and wall are unfolded flat about the eave; without friction the rope is a straight line
//! there, and the worker a weight on it. The line is the engine's own; the worker is a point mass
//! at the D-ring, upright to the feet. Left out: friction of the rope along the eave (it would slow
//! the swing), the body's turning, and the ladder.

use crate::physics::Run;
use crate::physics::equipment::LineParams;
use crate::physics::geometry::{Geometry, p, path_length, taut_path};
use crate::scenario::{Scenario, Stance};
use serde::{Deserialize, Serialize};

/// Furthest offset computed, m.
pub const FURTHEST_M: f64 = 8.0;
/// Distance between two offsets, m.
pub const STEP_M: f64 = 0.25;
/// Time in which the first swing ends, s.
const SWING_TIME_S: f64 = 3.5;

/// The fall from one place along the wall.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Swing {
    /// Along the wall from the anchor's plumb line, m.
    pub offset_m: f64,
    /// Lean of the rope from the line straight down the roof, rad.
    pub lean_rad: f64,
    /// Drop of the D-ring, m.
    pub drop_m: f64,
    /// How much of it the offset added, m.
    pub extra_m: f64,
    /// Sideways speed under the anchor, m/s: what a corner or a downspout there would meet.
    pub speed_m_s: f64,
    /// Largest force at the D-ring, N.
    pub peak_force_n: f64,
    /// Room left under the feet, m; negative is how much is missing.
    pub room_m: f64,
}

/// The falls at every offset; none for a set-up with problems or a worker on the roof.
pub fn swings(s: &Scenario) -> Vec<Swing> {
    let (Some(g), Stance::Ladder { .. }) = (Geometry::of(s), s.stance) else { return Vec::new() };
    if !s.problems().is_empty() || g.dring.y >= g.eave.y {
        return Vec::new();
    }
    // Anchor to eave over the roof, then down the wall to the D-ring.
    let roof_m = path_length(&taut_path(g.anchor, &g.corners, g.eave));
    let down_m = roof_m + g.eave.dist(g.dring);
    let feet_room_m = g.soles.y - g.surface_below_m(g.soles.x, 0.25);
    let count = (FURTHEST_M / STEP_M).round() as usize;
    let mut straight_m = 0.0;
    (0..=count)
        .map(|i| {
            let offset_m = i as f64 * STEP_M;
            let (drop_m, speed_m_s, peak_force_n) = swing(s, offset_m, down_m);
            if i == 0 {
                straight_m = drop_m;
            }
            Swing {
                offset_m,
                lean_rad: libm::atan2(offset_m, down_m),
                drop_m,
                extra_m: drop_m - straight_m,
                speed_m_s,
                peak_force_n,
                room_m: feet_room_m - drop_m,
            }
        })
        .collect()
}

/// Drop, speed under the anchor, and peak force of one swing.
fn swing(s: &Scenario, offset_m: f64, down_m: f64) -> (f64, f64, f64) {
    let to_dring_m = libm::hypot(offset_m, down_m);
    let rope_m = (to_dring_m - s.grab.above_dring_m).max(0.3);
    let mut line = LineParams::of(s);
    // Nothing gives way here: the question is where the worker swings.
    line.anchor_capacity_n = f64::INFINITY;
    let mut run = Run::point_mass_at(s.worker.mass_kg, p(0.0, 0.0), &[], p(offset_m, -down_m), line, rope_m);
    let start_m = run.dring_y_m();
    let (mut low_m, mut speed_m_s, mut before, mut time_s) = (start_m, 0.0, run.dring(), 0.0);
    while run.time_s() < SWING_TIME_S && !run.step() {
        let now = run.dring();
        let dt_s = run.time_s() - time_s;
        low_m = low_m.min(now.y);
        if before.x > 0.0 && now.x <= 0.0 {
            speed_m_s = (before.x - now.x) / dt_s;
            if run.time_s() > 0.6 {
                break;
            }
        }
        (before, time_s) = (now, run.time_s());
    }
    (start_m - low_m, speed_m_s, run.finish().peak_force_n)
}

/// Furthest offset, from the plumb line on without a gap, at which at least `reserve_m` is left.
pub fn reach_m(all: &[Swing], reserve_m: f64) -> Option<f64> {
    all.iter().take_while(|w| w.room_m >= reserve_m).last().map(|w| w.offset_m)
}

/// Offset at which both of a place's limits are still kept, m: a distance, and a lean (the smaller
/// of the two, against the worker).
pub fn offset_within_m(most_m: f64, lean_rad: f64, down_m: f64) -> f64 {
    most_m.min(down_m * libm::tan(lean_rad))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::G_M_S2;

    /// Period of a pendulum by the arithmetic-geometric mean: T = 2 pi sqrt(L/g) / agm(1, cos(a/2)).
    fn period_s(length_m: f64, angle_rad: f64) -> f64 {
        let (mut a, mut b) = (1.0, (angle_rad / 2.0).cos());
        for _ in 0..8 {
            (a, b) = ((a + b) / 2.0, (a * b).sqrt());
        }
        std::f64::consts::TAU * (length_m / G_M_S2).sqrt() / a
    }

    /// The elliptic integral, for the swing of a taut, nearly inextensible line.
    #[test]
    fn a_taut_swing_keeps_the_time_of_the_elliptic_integral() {
        for deg in [10.0, 22.0, 45.0, 70.0] {
            let (l, a) = (6.0, f64::to_radians(deg));
            let line = LineParams { relaxation_s: 0.02, ..LineParams::ideal(3e6, l) };
            let at = p(l * a.sin(), -l * a.cos());
            let mut run = Run::point_mass_at(90.0, p(0.0, 0.0), &[], at, line, l);
            while run.dring().x > 0.0 && run.time_s() < 5.0 {
                run.step();
            }
            let quarter = period_s(l, a) / 4.0;
            assert!((run.time_s() / quarter - 1.0).abs() < 3e-3, "{deg}: {} {quarter}", run.time_s());
        }
    }

    /// Check 23: 3 m of offset is 22 degrees at 8.01 m (Quebec construction code, s. 2.10.15 (4)).
    /// With less rope than length the swing speed is that of the pendulum, v = sqrt(2 g L (1 - cos a)).
    #[test]
    fn check_23_further_along_is_lower_and_faster() {
        // The published 8.01 m is the rope's length: 3 / sin 22 degrees.
        assert!((3.0 / f64::to_radians(22.0).sin() - 8.01).abs() < 0.01);
        assert!((offset_within_m(3.0, f64::to_radians(22.0), 5.0) - 2.02).abs() < 0.01);
        let s = Scenario::default();
        let all = swings(&s);
        assert_eq!(all.len(), 33);
        assert!(all.windows(2).all(|w| w[1].drop_m >= w[0].drop_m - 0.03 && w[1].lean_rad > w[0].lean_rad));
        assert!(all[0].extra_m == 0.0 && all[0].speed_m_s == 0.0);
        let far = all[16];
        // 4 m along: no faster than the whole drop, no slower than a taut pendulum.
        let g = Geometry::of(&s).expect("built");
        let l = 4.0 / far.lean_rad.sin();
        let pendulum = (2.0 * G_M_S2 * l * (1.0 - far.lean_rad.cos())).sqrt();
        let most = (2.0 * G_M_S2 * far.drop_m).sqrt();
        assert!(far.speed_m_s > 0.8 * pendulum && far.speed_m_s <= most, "{} {pendulum}", far.speed_m_s);
        // The swing stretches rope and harness less than the straight fall, so the extra drop is less
        // than the pendulum's own.
        let whole = l * (1.0 - far.lean_rad.cos());
        assert!(far.extra_m > 0.5 * whole && far.extra_m < whole + 0.05, "{} {whole}", far.extra_m);
        assert!(g.dring.y > far.drop_m || far.room_m < 0.0);
    }

    #[test]
    fn straight_under_the_anchor_it_agrees_with_the_whole_worker() {
        // A point mass straight under the eave drops further than nine bodies that also swing in
        // towards the rope: against the worker, and not by much.
        let mut s = Scenario::default();
        s.grab.above_dring_m = 0.0;
        let whole = crate::physics::simulate(&s).expect("falls");
        let point = swings(&s)[0];
        let more_m = point.drop_m - whole.total_fall_m;
        assert!((0.0..0.45).contains(&more_m), "{} {}", point.drop_m, whole.total_fall_m);
    }

    #[test]
    fn the_reach_is_shorter_with_less_room() {
        let mut s = Scenario::default();
        let high = reach_m(&swings(&s), 0.6);
        s.stance = Stance::Ladder { standing_height_m: 3.0 };
        s.grab.above_dring_m = 0.1;
        let low = reach_m(&swings(&s), 0.6);
        assert!(high > low, "{high:?} {low:?}");
        s.stance = Stance::Roof { from_eave_m: 1.0 };
        assert!(swings(&s).is_empty());
    }
}
