//! Working along the wall from the anchor's plumb line: how much further down, how fast, and into
//! what the worker swings.
//!
//! Roof and wall are unfolded flat about the eave (`physics::point`): the engine's own line, the
//! worker a point mass at the D-ring, upright to the feet. Each fall is run twice: with the rope
//! free to slide along the edge (against the worker: the longest swing), and with the edge's
//! friction, which holds the rope until it drags and saws along. Left out: the body's turning, the
//! ladder, a rope round a dormer's corner.

use crate::physics::equipment::{LineParams, SLIP_DOWN_ROOF_M_S};
use crate::physics::geometry::{DRING_SHARE, Geometry, p, path_length, taut_path};
use crate::physics::point::{PointRun, Sheet};
use crate::scenario::{Scenario, Stance};
use serde::{Deserialize, Serialize};

/// Furthest offset computed, m.
pub const FURTHEST_M: f64 = 8.0;
/// Distance between two offsets, m.
pub const STEP_M: f64 = 0.25;
/// Longest swing followed, s.
const SWING_TIME_S: f64 = 4.0;
/// Steps between two points of a path.
const STEPS_PER_POINT: usize = 24;

/// A moment of a swing, in the unfolded plane.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Moment {
    /// Along the wall from the anchor's plumb line, m.
    pub x_m: f64,
    /// Down from the anchor, over the roof and then the wall, m.
    pub down_m: f64,
    /// Sideways speed towards the plumb line and past it, m/s.
    pub speed_m_s: f64,
}

/// One fall in the unfolded plane.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Fall {
    /// Drop of the D-ring, m.
    pub drop_m: f64,
    /// Sideways speed under the anchor, m/s.
    pub speed_m_s: f64,
    /// Largest force at the D-ring, N.
    pub peak_force_n: f64,
    /// Room left under the feet, m; negative is how much is missing. None while on the roof.
    pub room_m: Option<f64>,
    /// Where the rope crossed the edge at the start and at the end, m along the wall.
    pub edge_m: (f64, f64),
    /// How far it dragged along the edge, m.
    pub dragged_m: f64,
    /// The way of the D-ring, to the far end of the first swing.
    pub path: Vec<Moment>,
}

/// The fall from one place along the wall.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Swing {
    /// Along the wall from the anchor's plumb line, m.
    pub offset_m: f64,
    /// Lean of the rope from the line straight down the roof, rad.
    pub lean_rad: f64,
    /// With the rope free to slide along the edge.
    pub free: Fall,
    /// With the edge's friction.
    pub held: Fall,
    /// How much of the free drop the offset added, m.
    pub extra_m: f64,
}

impl Swing {
    /// Room left, the lesser of both ways, m; none while on the roof.
    pub fn room_m(&self) -> Option<f64> {
        match (self.free.room_m, self.held.room_m) {
            (Some(a), Some(b)) => Some(a.min(b)),
            (a, b) => a.or(b),
        }
    }
}

impl Fall {
    /// Speed at which the swing meets something that stands `at_m` along the wall (negative is past
    /// the anchor's plumb line), m/s; none where it does not get there.
    pub fn speed_at_m_s(&self, at_m: f64) -> Option<f64> {
        let w = self.path.windows(2).find(|w| w[0].x_m > at_m && w[1].x_m <= at_m)?;
        let k = (w[0].x_m - at_m) / (w[0].x_m - w[1].x_m);
        Some(w[0].speed_m_s + (w[1].speed_m_s - w[0].speed_m_s) * k)
    }
}

/// Everything the falls of a set-up share.
struct Ground {
    sheet: Sheet,
    /// Anchor to D-ring down roof and wall, m.
    down_m: f64,
    /// Height of the eave over what lies below, m.
    eave_m: f64,
    /// D-ring over the feet, m.
    feet_m: f64,
    /// The worker stands on the roof.
    on_roof: bool,
}

impl Ground {
    fn of(s: &Scenario) -> Option<Ground> {
        let g = Geometry::of(s).filter(|_| s.problems().is_empty())?;
        // Anchor to eave over the roof, then down the wall to the D-ring.
        let roof_m = path_length(&taut_path(g.anchor, &g.corners, g.eave));
        let on_roof = matches!(s.stance, Stance::Roof { .. });
        let (down_m, x_m) = match s.stance {
            Stance::Roof { from_eave_m } => (roof_m - from_eave_m, g.eave.x + 0.2),
            Stance::Ladder { .. } if g.dring.y < g.eave.y => (roof_m + g.eave.dist(g.dring), g.soles.x),
            Stance::Ladder { .. } => return None,
        };
        let sheet = Sheet { roof_m, pitch_rad: s.house.roof_pitch_rad, edge_holds: false };
        let feet_m = if on_roof { DRING_SHARE * s.worker.stature_m } else { g.dring.y - g.soles.y };
        // From a ladder the D-ring hangs a little out from the eave's own plumb line: take its height.
        let eave_m = if on_roof { g.eave.y } else { g.dring.y + g.eave.dist(g.dring) };
        Some(Ground { sheet, down_m, eave_m: eave_m - g.surface_below_m(x_m, 0.25), feet_m, on_roof })
    }

    /// One fall from `offset_m`; none when its energy does not balance.
    fn fall(&self, s: &Scenario, offset_m: f64, edge_holds: bool) -> Option<Fall> {
        let to_dring_m = libm::hypot(offset_m, self.down_m);
        let rope_m = (to_dring_m - s.grab.above_dring_m).max(0.3);
        let mut line = LineParams::of(s);
        // Nothing gives way here: the question is where the worker swings.
        line.anchor_capacity_n = f64::INFINITY;
        let speed = p(0.0, if self.on_roof { -SLIP_DOWN_ROOF_M_S } else { 0.0 });
        let sheet = Sheet { edge_holds, ..self.sheet };
        let at = p(offset_m, -self.down_m);
        let mut run = PointRun::new(sheet, s.worker.mass_kg, at, speed, line, rope_m);
        let edge = |run: &PointRun| {
            run.line().edge().map_or_else(
                || {
                    let q = run.at();
                    if q.y < -sheet.roof_m { q.x * sheet.roof_m / -q.y } else { q.x }
                },
                |e| e.x,
            )
        };
        let edge_start_m = edge(&run);
        let moment =
            |run: &PointRun| Moment { x_m: run.at().x, down_m: -run.at().y, speed_m_s: -run.speed().x };
        let mut path = vec![moment(&run)];
        let (mut speed_m_s, mut crossed, mut steps) = (0.0, false, 0);
        while run.time_s() < SWING_TIME_S {
            let before = run.at();
            run.step();
            steps += 1;
            if steps % STEPS_PER_POINT == 0 {
                path.push(moment(&run));
            }
            if before.x > 0.0 && run.at().x <= 0.0 && !crossed {
                (crossed, speed_m_s) = (true, -run.speed().x);
            }
            // The far end of the first swing; straight under the anchor there is none.
            if run.time_s() > 1.0
                && run.speed().x >= 0.0
                && (crossed || offset_m == 0.0)
                && run.time_s() > 1.6
            {
                break;
            }
        }
        path.push(moment(&run));
        let lowest_m = self.eave_m + run_start_height(&sheet, self.down_m) - run.drop_m();
        let over = run.at().y < -sheet.roof_m;
        let dragged_m =
            if edge_holds { run.line().edge_dragged_m() } else { (edge_start_m - edge(&run)).abs() };
        run.is_sound().then(|| Fall {
            drop_m: run.drop_m(),
            speed_m_s,
            peak_force_n: run.peak_n(),
            room_m: over.then_some(lowest_m - self.feet_m),
            edge_m: (edge_start_m, edge(&run)),
            dragged_m,
            path,
        })
    }
}

/// Height of the D-ring over the eave at the start, m.
fn run_start_height(sheet: &Sheet, down_m: f64) -> f64 {
    let up = sheet.roof_m - down_m;
    if up > 0.0 { up * libm::sin(sheet.pitch_rad) } else { up }
}

/// The fall from one offset; none for a set-up with problems, a D-ring above the eave, or a run
/// that fails its own energy check.
pub fn swing(s: &Scenario, offset_m: f64) -> Option<Swing> {
    let ground = Ground::of(s)?;
    let straight_m = ground.fall(s, 0.0, false)?.drop_m;
    one(&ground, s, offset_m, straight_m)
}

fn one(ground: &Ground, s: &Scenario, offset_m: f64, straight_m: f64) -> Option<Swing> {
    let free = ground.fall(s, offset_m, false)?;
    Some(Swing {
        offset_m,
        lean_rad: libm::atan2(offset_m, ground.down_m),
        extra_m: free.drop_m - straight_m,
        held: ground.fall(s, offset_m, true)?,
        free,
    })
}

/// The falls at every offset; none where [`swing`] has none.
pub fn swings(s: &Scenario) -> Vec<Swing> {
    let Some(ground) = Ground::of(s) else { return Vec::new() };
    let Some(straight) = ground.fall(s, 0.0, false) else { return Vec::new() };
    let count = (FURTHEST_M / STEP_M).round() as usize;
    (0..=count).map_while(|i| one(&ground, s, i as f64 * STEP_M, straight.drop_m)).collect()
}

/// Furthest offset, from the plumb line on without a gap, at which at least `reserve_m` is left and
/// the swing is slower than `fastest_m_s`.
pub fn reach_m(all: &[Swing], reserve_m: f64, fastest_m_s: f64) -> Option<f64> {
    all.iter()
        .take_while(|w| w.room_m().is_none_or(|m| m >= reserve_m) && w.free.speed_m_s < fastest_m_s)
        .last()
        .map(|w| w.offset_m)
}

/// The same for a set-up, running no further than it has to.
pub fn reach_of_m(s: &Scenario, reserve_m: f64, fastest_m_s: f64) -> Option<f64> {
    let ground = Ground::of(s)?;
    let straight_m = ground.fall(s, 0.0, false)?.drop_m;
    let mut reach_m = None;
    for i in 0..=(FURTHEST_M / STEP_M).round() as usize {
        let w = one(&ground, s, i as f64 * STEP_M, straight_m)?;
        match self::reach_m(&[w], reserve_m, fastest_m_s) {
            None => break,
            further => reach_m = further,
        }
    }
    reach_m
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

    /// The elliptic integral, for the swing of a taut, nearly inextensible line; and at the bottom
    /// formula C, v = sqrt(2 g L (1 - cos a)).
    #[test]
    fn a_taut_swing_keeps_the_time_of_the_elliptic_integral() {
        for deg in [10.0, 22.0, 45.0, 70.0] {
            let (l, a) = (5.0, f64::to_radians(deg));
            let line = LineParams { relaxation_s: 0.02, ..LineParams::ideal(3e6, l) };
            let sheet = Sheet { roof_m: 0.0, pitch_rad: 0.0, edge_holds: false };
            let at = p(l * a.sin(), -l * a.cos());
            let mut run = PointRun::new(sheet, 90.0, at, p(0.0, 0.0), line, l);
            while run.at().x > 0.0 && run.time_s() < 5.0 {
                run.step();
            }
            let quarter = period_s(l, a) / 4.0;
            assert!((run.time_s() / quarter - 1.0).abs() < 3e-3, "{deg}: {} {quarter}", run.time_s());
            let v = (2.0 * G_M_S2 * l * (1.0 - a.cos())).sqrt();
            assert!((-run.speed().x / v - 1.0).abs() < 5e-3, "{deg}: {} {v}", -run.speed().x);
        }
    }

    /// Check 23: 3 m of offset is 22 degrees at 8.01 m (Quebec construction code, s. 2.10.15 (4)).
    #[test]
    fn check_23_further_along_is_lower_and_faster() {
        // The published 8.01 m is the rope's length: 3 / sin 22 degrees.
        assert!((3.0 / f64::to_radians(22.0).sin() - 8.01).abs() < 0.01);
        assert!((offset_within_m(3.0, f64::to_radians(22.0), 5.0) - 2.02).abs() < 0.01);
        let s = Scenario::default();
        let all = swings(&s);
        assert_eq!(all.len(), 33);
        assert!(
            all.windows(2)
                .all(|w| w[1].free.drop_m >= w[0].free.drop_m - 0.03 && w[1].lean_rad > w[0].lean_rad)
        );
        assert!(all[0].extra_m == 0.0 && all[0].free.speed_m_s == 0.0);
        let far = &all[16];
        // 4 m along: no faster than the whole drop, no slower than a taut pendulum.
        let l = 4.0 / far.lean_rad.sin();
        let pendulum = (2.0 * G_M_S2 * l * (1.0 - far.lean_rad.cos())).sqrt();
        let (drop, speed) = (far.free.drop_m, far.free.speed_m_s);
        assert!(speed > 0.8 * pendulum && speed <= (2.0 * G_M_S2 * drop).sqrt(), "{speed} {pendulum}");
        // The swing stretches rope and harness less than the straight fall, so the extra drop is
        // less than the pendulum's own.
        let whole = l * (1.0 - far.lean_rad.cos());
        assert!(far.extra_m > 0.5 * whole && far.extra_m < whole + 0.05, "{} {whole}", far.extra_m);
    }

    #[test]
    fn friction_at_the_edge_shortens_the_swing_and_saws_the_rope() {
        let all = swings(&Scenario::default());
        for w in all.iter().skip(1) {
            assert!(
                w.held.drop_m <= w.free.drop_m + 0.05,
                "{}: {} {}",
                w.offset_m,
                w.held.drop_m,
                w.free.drop_m
            );
            assert!(w.held.speed_m_s <= w.free.speed_m_s + 0.05, "{}", w.offset_m);
            assert!(w.held.edge_m.1 <= w.held.edge_m.0 + 1e-6 && w.held.dragged_m >= 0.0);
        }
        // A little way along the edge holds the rope where it lies; far along it drags.
        assert!(all[4].held.dragged_m < 0.05, "{}", all[4].held.dragged_m);
        assert!(all[24].held.dragged_m > 0.3, "{}", all[24].held.dragged_m);
    }

    #[test]
    fn from_the_roof_the_worker_slides_swings_and_may_go_over_the_eave() {
        let mut s = Scenario { stance: Stance::Roof { from_eave_m: 1.0 }, ..Scenario::default() };
        let near = &swings(&s)[8];
        s.grab.above_dring_m = -0.8;
        let slack = &swings(&s)[8];
        assert!(slack.free.drop_m > near.free.drop_m);
        assert!(slack.free.room_m.is_some());
        // Slope part of gravity only: a swing over the roof is slower than one down the wall.
        s.stance = Stance::Roof { from_eave_m: 3.4 };
        s.grab.above_dring_m = 0.3;
        let stays = swing(&s, 1.0).expect("swings");
        assert!(stays.free.room_m.is_none());
        assert!(stays.free.drop_m < 1.0, "{}", stays.free.drop_m);
    }

    #[test]
    fn what_stands_in_the_way_is_met_at_the_speed_of_the_swing() {
        let w = swing(&Scenario::default(), 3.0).expect("swings");
        let under = w.free.speed_at_m_s(0.0).expect("comes by");
        assert!((under / w.free.speed_m_s - 1.0).abs() < 0.05, "{under} {}", w.free.speed_m_s);
        assert!(w.free.speed_at_m_s(2.9).is_some_and(|v| v < under));
        assert_eq!(w.free.speed_at_m_s(-7.5), None);
        assert_eq!(w.free.speed_at_m_s(3.5), None);
    }

    #[test]
    fn straight_under_the_anchor_it_agrees_with_the_whole_worker() {
        // A point mass straight under the eave drops further than nine bodies that also swing in
        // towards the rope: against the worker, and not by much.
        let mut s = Scenario::default();
        s.grab.above_dring_m = 0.0;
        let whole = crate::physics::simulate(&s).expect("falls");
        let point = &swings(&s)[0];
        let more_m = point.free.drop_m - whole.total_fall_m;
        assert!((0.0..0.45).contains(&more_m), "{} {}", point.free.drop_m, whole.total_fall_m);
    }

    #[test]
    fn the_reach_is_shorter_with_less_room() {
        let mut s = Scenario::default();
        let high = reach_m(&swings(&s), 0.6, 9.0);
        s.stance = Stance::Ladder { standing_height_m: 3.0 };
        s.grab.above_dring_m = 0.1;
        let low = reach_m(&swings(&s), 0.6, 9.0);
        assert!(high > low, "{high:?} {low:?}");
        assert!(reach_m(&swings(&Scenario::default()), 0.6, 2.0) < high);
        assert_eq!(reach_of_m(&Scenario::default(), 0.6, 9.0), high);
    }
}
