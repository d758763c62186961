//! The same line on a point mass, in a plane that may be folded at the eave: roof above, wall
//! below, laid out flat.
//!
//! x runs along the eave, y down the roof and then down the wall (negative); the anchor is at the
//! origin. Gravity is what acts in the plane: all of it on the wall, its slope part on the roof,
//! where the body also rubs. The rope bends over the edge at one point, which holds until its
//! sideways pull beats the edge's friction, then drags along (the rope saws). Stepped as the rigid
//! bodies are (leapfrog, the same step), in f64. Left out: the body's size and turning, the ladder.

use super::constants::{DT_S, EDGE_PARTS, RESIDUAL_FLOOR_J, RESIDUAL_LIMIT};
use super::equipment::{LineParams, ROOF_SLIP_FRICTION};
use super::line::{Fold, Line};
use crate::geometry::{P, p};
use crate::units::G_M_S2;

/// The plane.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sheet {
    /// Anchor to eave, along the roof, m; 0 is a plain wall.
    pub roof_m: f64,
    /// Slope of the roof, rad.
    pub pitch_rad: f64,
    /// The rope stays where it bends over the edge until friction is beaten; without, it runs
    /// straight from the anchor (against the worker: the longest swing).
    pub edge_holds: bool,
}

impl Sheet {
    /// Parts in which a step is made on it.
    pub fn parts(&self) -> usize {
        if self.edge_holds { EDGE_PARTS } else { 1 }
    }
}

/// A point mass on the line.
pub struct PointRun {
    dt_s: f64,
    sheet: Sheet,
    mass_kg: f64,
    at: P,
    /// Half a step behind `at`.
    speed: P,
    line: Line,
    step_no: usize,
    /// Energy at the start, J, and the largest error of the balance since.
    had_j: f64,
    error_j: f64,
    rubbed_j: f64,
    drop_m: f64,
    start_height_m: f64,
    peak_n: f64,
}

impl PointRun {
    /// At `at` with `speed`, on a rope of `rope_m` to the grab, laid straight.
    pub fn new(sheet: Sheet, mass_kg: f64, at: P, speed: P, params: LineParams, rope_m: f64) -> PointRun {
        PointRun::finer(sheet, mass_kg, at, speed, params, rope_m, 1)
    }

    /// The same at steps `fineness` times as fine.
    #[allow(clippy::too_many_arguments)]
    pub fn finer(
        sheet: Sheet,
        mass_kg: f64,
        at: P,
        speed: P,
        params: LineParams,
        rope_m: f64,
        fineness: usize,
    ) -> PointRun {
        let dt_s = DT_S / (sheet.parts() * fineness.max(1)) as f64;
        let anchor = p(0.0, 0.0);
        let line = if sheet.edge_holds {
            let edge = p(at.x * sheet.roof_m / at.y.abs().max(sheet.roof_m).max(1e-6), -sheet.roof_m);
            Line::folded(params, anchor, edge, Fold { pitch_rad: sheet.pitch_rad }, at, rope_m)
        } else {
            Line::new(params, anchor, &[], at, rope_m)
        };
        let mut run = PointRun {
            dt_s,
            sheet,
            mass_kg,
            at,
            speed,
            line,
            step_no: 0,
            had_j: 0.0,
            error_j: 0.0,
            rubbed_j: 0.0,
            drop_m: 0.0,
            start_height_m: 0.0,
            peak_n: 0.0,
        };
        run.start_height_m = run.height_m();
        let a = run.pull_of_gravity();
        // Half a step back, so that velocities stand half a step behind.
        run.speed = p(speed.x - a.x * dt_s / 2.0, speed.y - a.y * dt_s / 2.0);
        run.had_j = 0.5 * mass_kg * (speed.x * speed.x + speed.y * speed.y);
        run
    }

    fn on_roof(&self) -> bool {
        self.at.y > -self.sheet.roof_m
    }

    /// Height over the eave, m.
    pub fn height_m(&self) -> f64 {
        let up = self.at.y + self.sheet.roof_m;
        if up > 0.0 { up * libm::sin(self.sheet.pitch_rad) } else { up }
    }

    fn pull_of_gravity(&self) -> P {
        let slope = if self.on_roof() { libm::sin(self.sheet.pitch_rad) } else { 1.0 };
        p(0.0, -G_M_S2 * slope)
    }

    /// Where it is, m.
    pub fn at(&self) -> P {
        self.at
    }
    /// Speed half a step back, m/s.
    pub fn speed(&self) -> P {
        self.speed
    }
    /// Time run so far, s.
    pub fn time_s(&self) -> f64 {
        self.step_no as f64 * self.dt_s
    }
    /// Largest drop so far, m.
    pub fn drop_m(&self) -> f64 {
        self.drop_m
    }
    /// Largest force so far, N.
    pub fn peak_n(&self) -> f64 {
        self.peak_n
    }
    /// The line.
    pub fn line(&self) -> &Line {
        &self.line
    }
    /// Largest error of the energy balance, J.
    pub fn error_j(&self) -> f64 {
        self.error_j
    }
    /// Whether the energy balance held.
    pub fn is_sound(&self) -> bool {
        let scale_j = (self.mass_kg * G_M_S2 * self.drop_m + self.had_j).max(RESIDUAL_FLOOR_J);
        self.error_j <= RESIDUAL_LIMIT * scale_j
    }

    /// One step.
    pub fn step(&mut self) {
        let m = self.mass_kg;
        let pull = self.line.step(self.at, self.dt_s);
        self.peak_n = self.peak_n.max(pull.dring_n);
        let pull = self.line.drag_along_edge(self.at, pull);
        let g = self.pull_of_gravity();
        let mut a = p(g.x + pull.dring_n * pull.toward.x / m, g.y + pull.dring_n * pull.toward.y / m);
        let before = self.speed;
        let v = libm::hypot(before.x, before.y);
        let rubs =
            if self.on_roof() { ROOF_SLIP_FRICTION * G_M_S2 * libm::cos(self.sheet.pitch_rad) } else { 0.0 };
        if rubs > 0.0 && v > 1e-9 {
            // Friction stops, it does not push back.
            let rubs = rubs.min(v / self.dt_s);
            a = p(a.x - rubs * before.x / v, a.y - rubs * before.y / v);
        }
        let after = p(before.x + a.x * self.dt_s, before.y + a.y * self.dt_s);
        if rubs > 0.0 && v > 1e-9 {
            let mid = p((before.x + after.x) / 2.0, (before.y + after.y) / 2.0);
            self.rubbed_j +=
                m * rubs.min(v / self.dt_s) * (mid.x * before.x + mid.y * before.y) / v * self.dt_s;
        }
        // The balance at this moment: kinetic energy half way between two half steps.
        let ke = |q: P| 0.5 * m * (q.x * q.x + q.y * q.y);
        let have_j = 0.5 * (ke(before) + ke(after))
            + m * G_M_S2 * (self.height_m() - self.start_height_m)
            + self.line.energy.elastic_j
            + self.line.energy.spent_j()
            + self.rubbed_j;
        self.error_j = self.error_j.max((have_j - self.had_j).abs());
        self.speed = after;
        self.at = p(self.at.x + after.x * self.dt_s, self.at.y + after.y * self.dt_s);
        self.drop_m = self.drop_m.max(self.start_height_m - self.height_m());
        self.step_no += 1;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::physics::Run;
    use crate::scenario::Scenario;

    /// Check 23's pendulum and the engine on a plain wall: two steppers, one line.
    #[test]
    fn on_a_plain_wall_it_is_the_engines_point_mass() {
        let s = Scenario::default();
        for (x, y, rope) in [(0.0, -3.0, 3.4), (2.0, -5.0, 5.2), (4.0, -6.0, 7.0)] {
            let params = LineParams { anchor_capacity_n: f64::INFINITY, ..LineParams::of(&s) };
            let sheet = Sheet { roof_m: 0.0, pitch_rad: 0.0, edge_holds: false };
            let mut mine = PointRun::new(sheet, 85.0, p(x, y), p(0.0, 0.0), params, rope);
            let mut theirs = Run::point_mass_at(85.0, p(0.0, 0.0), &[], p(x, y), params, rope);
            let mut low = y;
            while theirs.time_s() < 2.0 && !theirs.step() {
                low = low.min(theirs.dring().y);
                mine.step();
            }
            let peak = theirs.finish().peak_force_n;
            assert!((mine.peak_n() / peak - 1.0).abs() < 1e-3, "{} {peak}", mine.peak_n());
            assert!((mine.drop_m() - (y - low)).abs() < 2e-3, "{} {}", mine.drop_m(), y - low);
            assert!(mine.is_sound());
        }
    }

    /// Sliding down a plane: a = g (sin - mu cos).
    #[test]
    fn a_slide_down_the_roof_is_the_closed_form() {
        let sheet = Sheet { roof_m: 6.0, pitch_rad: 0.6, edge_holds: true };
        let line = LineParams::ideal(30_000.0, 50.0);
        let mut run = PointRun::new(sheet, 90.0, p(1.0, -1.0), p(0.0, -1.0), line, 40.0);
        while run.time_s() < 0.9 {
            run.step();
        }
        let t = run.time_s();
        let a = G_M_S2 * (0.6_f64.sin() - ROOF_SLIP_FRICTION * 0.6_f64.cos());
        let want = -1.0 - t - 0.5 * a * t * t;
        assert!((run.at().y - want).abs() < 2e-3, "{} {want}", run.at().y);
        assert!(run.is_sound());
    }

    /// The rope stays at its bend while the sideways pull is under the edge's friction: roof and
    /// rope turn by 90 degrees less the pitch; at equal tension T the edge bears 2 T sin(turn / 2).
    #[test]
    fn an_edge_holds_the_rope_up_to_its_friction_angle() {
        let pitch = 0.463_647_6;
        let dragged = |lean: f64| {
            let sheet = Sheet { roof_m: 4.0, pitch_rad: pitch, edge_holds: true };
            // Nearly inextensible, already hanging plumb under the bend.
            let line = LineParams { edge_friction: 0.3, relaxation_s: 0.01, ..LineParams::ideal(3e6, 20.0) };
            let x = 4.0 * f64::tan(lean);
            let rope = x.hypot(4.0) + 2.0;
            let mut run = PointRun::new(sheet, 85.0, p(x * 6.0 / 4.0, -6.0), p(0.0, 0.0), line, rope);
            run.line.set_edge(p(x, -4.0));
            run.at = p(x, -6.0);
            while run.time_s() < 1.0 {
                run.step();
            }
            assert!(run.is_sound());
            run.line.edge_dragged_m()
        };
        // mu 2 sin(turn / 2) = 0.315, so 18 degrees at equal tension; friction along the rope
        // leaves the roof's part with less, which lets it lean a little further.
        assert!(dragged(f64::to_radians(15.0)) < 1e-3);
        assert!(dragged(f64::to_radians(35.0)) > 0.05, "{}", dragged(f64::to_radians(35.0)));
    }
}
