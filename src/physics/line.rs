//! The arrest line: rope, edge friction, grab, lanyard, absorber, harness, anchor, in series.
//!
//! Tension only. The line is one thread of material, numbered by its unstretched length from the
//! anchor: first rope up to the grab, then lanyard, torn absorber and harness slide. Roof corners
//! divide it into segments; in each, tension is elongation over compliance, plus light damping.
//! Three sliders add material in the last segment when its tension reaches their force (absorber,
//! grab, harness slide); at a corner material moves over when tensions differ by more than
//! e^(mu phi) (capstan). All are solved together each step by projected Gauss-Seidel: increments
//! may shrink back to zero within a step, so the order of the sliders does not matter.
//! Left out: the rope's mass and bending, air, heat.

use super::constants::{
    COMPLIANCE_FLOOR_M_PER_N, EDGE_MOVE_M, OVER_EDGE_M, SLIP_SWEEPS, SLIP_TOLERANCE_N, TAUT_FORCE_N,
};
use super::equipment::LineParams;
use crate::geometry::{P, taut_path};
use serde::{Deserialize, Serialize};

/// Most corners a rope bends over here: ridge, eave, fascia.
pub const MAX_CORNERS: usize = 3;
const MAX_SEG: usize = MAX_CORNERS + 1;

/// Energy in the line, J. All but `elastic_j` only grow (damping to within one step's rounding).
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct LineEnergy {
    /// Stored in stretch.
    pub elastic_j: f64,
    /// Spent tearing the absorber.
    pub absorber_j: f64,
    /// Spent in the grab.
    pub grab_j: f64,
    /// Spent sliding the harness.
    pub harness_j: f64,
    /// Spent over roof edges.
    pub edge_j: f64,
    /// Spent in damping.
    pub damping_j: f64,
    /// Stretch lost when the anchor gave way or the rope left the grab.
    pub lost_j: f64,
}

impl LineEnergy {
    /// Everything spent, J.
    pub fn spent_j(&self) -> f64 {
        self.absorber_j + self.grab_j + self.harness_j + self.edge_j + self.damping_j + self.lost_j
    }
}

/// A sheet folded at the eave and laid out flat: the rope bends over the edge at one point that can
/// move along it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fold {
    /// Slope of the roof, rad: at the edge the rope turns by a right angle less this.
    pub pitch_rad: f64,
}

impl Fold {
    /// How far the rope turns at the edge, rad.
    pub fn turn_rad(self) -> f64 {
        core::f64::consts::FRAC_PI_2 - self.pitch_rad
    }
}

/// The line in motion.
#[derive(Clone, Debug)]
pub struct Line {
    params: LineParams,
    anchor: P,
    corners: Vec<P>,
    /// The only corner is an edge of a flat sheet.
    fold: Option<Fold>,
    /// How far the rope has dragged along that edge, m.
    edge_dragged_m: f64,
    /// Material coordinate at each corner, m; meaningful while the corner is active.
    at_corner_m: [f64; MAX_CORNERS],
    active: [bool; MAX_CORNERS],
    /// Rope between anchor and grab, m.
    grab_rope_m: f64,
    start_grab_rope_m: f64,
    /// Absorber extension, m.
    absorber_m: f64,
    /// Harness slide, m.
    slide_m: f64,
    /// Last step's elongation of each segment (clamped at zero), m.
    last_elongation_m: [f64; MAX_SEG],
    last_force_n: [f64; MAX_SEG],
    slack_m: f64,
    /// Energy ledger.
    pub energy: LineEnergy,
    /// The anchor has given way.
    pub anchor_failed: bool,
    /// The rope has left the grab.
    pub off_rope: bool,
    /// The rope has broken.
    pub rope_parted: bool,
    /// Lanyard, connector or harness has let go.
    pub link_parted: bool,
    /// A reversed or slipping grab has met the knot at the rope's end.
    pub at_end: bool,
}

/// What the line does to the worker in one step.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Pull {
    /// Force at the D-ring, N, never negative.
    pub dring_n: f64,
    /// Load on the anchor, N.
    pub anchor_n: f64,
    /// Its direction at the D-ring: a unit vector along the line.
    pub toward: P,
}

struct Segs {
    n: usize,
    corner_of: [usize; MAX_SEG],
    len_m: [f64; MAX_SEG],
    hold: [f64; MAX_SEG],
}

/// The pieces of the line within a step, from the anchor on.
struct Trial {
    n: usize,
    corner_of: [usize; MAX_SEG],
    /// What friction at the corner after a piece holds, e^(mu phi).
    hold: [f64; MAX_SEG],
    /// Material coordinate of each piece's end, m.
    to_m: [f64; MAX_SEG],
    /// Elongation, m; negative is slack.
    x_m: [f64; MAX_SEG],
    last_x_m: [f64; MAX_SEG],
    c_m_per_n: [f64; MAX_SEG],
    /// Relaxation time over the step's.
    damp_ratio: f64,
}

impl Trial {
    fn force_n(&self, k: usize) -> f64 {
        let (x, c) = (self.x_m[k], self.c_m_per_n[k]);
        let el = x / c;
        if x <= 0.0 { el } else { el + self.damp_ratio * (x - self.last_x_m[k]) / c }
    }

    /// Stiffness with damping included.
    fn stiff_n_per_m(&self, k: usize) -> f64 {
        (1.0 + self.damp_ratio) / self.c_m_per_n[k]
    }

    fn forces_n(&self) -> [f64; MAX_SEG] {
        core::array::from_fn(|k| if k < self.n { self.force_n(k).max(0.0) } else { 0.0 })
    }

    /// Moves material over the corner after piece `k`, towards the worker or back; how much force moved, N.
    fn over_corner(&mut self, k: usize, forward: bool, total: &mut f64) -> f64 {
        let e = self.hold[k];
        let (f1, f2) = (self.force_n(k), self.force_n(k + 1));
        let (stiff1, stiff2) = (self.stiff_n_per_m(k), self.stiff_n_per_m(k + 1));
        let (gap, k_gap) = if forward {
            (f2 - f1 * e, stiff2 + stiff1 * e)
        } else {
            (f1 - f2.max(0.0) * e, stiff1 + stiff2 * e)
        };
        if gap > 0.0 && if forward { f2 <= 0.0 } else { f1 <= 0.0 } {
            return 0.0;
        }
        let next = (*total + gap / k_gap).max(0.0);
        let step = next - *total;
        *total = next;
        let sign = if forward { 1.0 } else { -1.0 };
        self.x_m[k] += sign * step;
        self.x_m[k + 1] -= sign * step;
        (step * k_gap).abs()
    }

    /// Lets a slider in piece `k` give way at `limit`, N, which rises by `hard` a metre; how much force moved, N.
    fn slide(&mut self, k: usize, total: &mut f64, left: f64, limit: f64, hard: f64) -> f64 {
        let stiff = self.stiff_n_per_m(k);
        let next = (*total + (self.force_n(k) - limit) / (stiff + hard)).clamp(0.0, left);
        let step = next - *total;
        *total = next;
        self.x_m[k] -= step;
        (step * stiff).abs()
    }
}

/// What slid in a step, m.
#[derive(Default)]
struct Moved {
    /// Over the corner after each piece, towards the worker ...
    forward_m: [f64; MAX_SEG],
    /// ... and back.
    back_m: [f64; MAX_SEG],
    absorber_m: f64,
    grab_m: f64,
    harness_m: f64,
}

impl Moved {
    /// Material over the corner after piece `k` towards the worker, m.
    fn over_corner_m(&self, k: usize) -> f64 {
        self.forward_m[k] - self.back_m[k]
    }
}

impl Line {
    /// A line just laid out: rope touching the corners between `anchor` and `dring` without
    /// tension, `grab_rope_m` of rope before the grab.
    pub fn new(params: LineParams, anchor: P, corners: &[P], dring: P, grab_rope_m: f64) -> Line {
        let mut line = Line {
            params,
            anchor,
            corners: corners[..corners.len().min(MAX_CORNERS)].to_vec(),
            fold: None,
            edge_dragged_m: 0.0,
            at_corner_m: [0.0; MAX_CORNERS],
            active: [false; MAX_CORNERS],
            grab_rope_m,
            start_grab_rope_m: grab_rope_m,
            absorber_m: 0.0,
            slide_m: 0.0,
            last_elongation_m: [0.0; MAX_SEG],
            last_force_n: [0.0; MAX_SEG],
            slack_m: 0.0,
            energy: LineEnergy::default(),
            anchor_failed: false,
            off_rope: false,
            rope_parted: false,
            link_parted: false,
            at_end: false,
        };
        line.lay_out(dring);
        line
    }

    /// The same on a flat sheet whose edge the rope crosses at `edge`.
    pub fn folded(params: LineParams, anchor: P, edge: P, fold: Fold, dring: P, grab_rope_m: f64) -> Line {
        let mut line = Line::new(params, anchor, &[], dring, grab_rope_m);
        (line.corners, line.fold) = (vec![edge], Some(fold));
        line.lay_out(dring);
        line
    }

    fn lay_out(&mut self, dring: P) {
        let mut total = 0.0;
        let path = self.path(dring);
        for w in path.windows(2) {
            total += w[0].dist(w[1]);
            if let Some(i) = self.corners.iter().position(|c| *c == w[1]) {
                self.active[i] = true;
                self.at_corner_m[i] = total;
            }
        }
    }

    /// The points that the taut rope passes.
    fn path(&self, d: P) -> Vec<P> {
        match (self.fold, self.corners.first()) {
            (Some(_), Some(&edge)) if d.y < edge.y - OVER_EDGE_M => vec![self.anchor, edge, d],
            (Some(_), _) => vec![self.anchor, d],
            _ => taut_path(self.anchor, &self.corners, d),
        }
    }

    /// Where the rope crosses the edge of a folded sheet.
    pub fn edge(&self) -> Option<P> {
        self.fold.and_then(|_| self.corners.first().copied())
    }

    /// Moves that place along the edge, before the fall.
    pub fn set_edge(&mut self, at: P) {
        if let Some(c) = self.corners.first_mut() {
            *c = at;
        }
    }

    /// How far the rope has dragged along the edge, m.
    pub fn edge_dragged_m(&self) -> f64 {
        self.edge_dragged_m
    }

    /// Lets the rope slide along a folded sheet's edge where its sideways pull beats the friction:
    /// one Newton step towards the point where it no longer does. Call it after each step of the line.
    ///
    /// The pull of the step comes back as the mean of before and after, which keeps the energy.
    pub fn drag_along_edge(&mut self, d: P, pull: Pull) -> Pull {
        let before = pull.toward;
        if !self.drag(d) {
            return pull;
        }
        let (a, b) = (pull.dring_n, self.last_force_n[1]);
        let after = self.toward(d);
        let (x, y) = (0.5 * (a * before.x + b * after.x), 0.5 * (a * before.y + b * after.y));
        let n = libm::hypot(x, y);
        let toward = if n > 1e-9 { P { x: x / n, y: y / n } } else { after };
        Pull { dring_n: n, anchor_n: pull.anchor_n, toward }
    }

    /// Whether it moved.
    fn drag(&mut self, d: P) -> bool {
        let (Some(fold), Some(&edge)) = (self.fold, self.corners.first()) else { return false };
        let (l1, l2) = (edge.dist(self.anchor), edge.dist(d));
        if !self.active[0] || !self.holds() || l1 < 1e-6 || l2 < 1e-6 {
            return false;
        }
        let (f1, f2) = (self.last_force_n[0], self.last_force_n[1]);
        let (s1, s2) = ((self.anchor.x - edge.x) / l1, (d.x - edge.x) / l2);
        let (a, b) = (f1 * (self.anchor.y - edge.y).abs() / l1, f2 * (d.y - edge.y).abs() / l2);
        let sideways_n = f1 * s1 + f2 * s2;
        // What presses the rope on the edge: the two pulls across it, at the angle of the fold.
        let press_n = libm::sqrt((a * a + b * b - 2.0 * a * b * libm::cos(fold.turn_rad())).max(0.0));
        let over_n = sideways_n.abs() - self.params.edge_friction * press_n;
        if over_n <= 0.0 {
            return false;
        }
        let end_m = self.total_m();
        let mid_m = self.at_corner_m[0];
        let (c1, c2) = (self.compliance(0.0, mid_m, false), self.compliance(mid_m, end_m, true));
        let stiff = f1 / l1 + f2 / l2 + s1 * s1 / c1 + s2 * s2 / c2;
        let by_m = (over_n / stiff).min(EDGE_MOVE_M) * sideways_n.signum();
        let gives = |by_m: f64| {
            let moved = P { x: edge.x + by_m, y: edge.y };
            (moved, [moved.dist(self.anchor) - l1, moved.dist(d) - l2])
        };
        // It goes no further than to where a side falls slack.
        let slack_at = gives(by_m)
            .1
            .into_iter()
            .zip(self.last_elongation_m)
            .map(|(gave, x)| if x + gave < 0.0 { x / -gave } else { 1.0 });
        let by_m = by_m * slack_at.fold(1.0, f64::min);
        let (moved, gave) = gives(by_m);
        self.edge_dragged_m += by_m.abs();
        self.corners[0] = moved;
        // What the bend gives is not damped: the stretch it takes or adds is as if it had been there
        // before. What the line holds less of afterwards went into friction.
        let held_j = |x: &[f64; MAX_SEG]| 0.5 * (x[0] * x[0] / c1 + x[1] * x[1] / c2);
        let before_j = held_j(&self.last_elongation_m);
        for ((x, n), (by, c)) in
            self.last_elongation_m.iter_mut().zip(&mut self.last_force_n).zip(gave.into_iter().zip([c1, c2]))
        {
            let was = *x;
            *x = (was + by).max(0.0);
            *n = (*n + (*x - was) / c).max(0.0);
        }
        let after_j = held_j(&self.last_elongation_m);
        self.energy.edge_j += before_j - after_j;
        self.energy.elastic_j += after_j - before_j;
        true
    }

    /// How far the line was from taut at the last step, m; negative where it pulls.
    pub fn slack_m(&self) -> f64 {
        self.slack_m
    }

    /// Rope between the anchor and the grab, m.
    pub fn grab_rope_m(&self) -> f64 {
        self.grab_rope_m
    }
    /// How far the grab has slipped, m.
    pub fn grab_slip_m(&self) -> f64 {
        self.grab_rope_m - self.start_grab_rope_m
    }
    /// How much of that was before it bit, m.
    pub fn dead_travel_m(&self) -> f64 {
        if self.params.grab.locks { self.grab_slip_m().min(self.params.grab.dead_travel_m) } else { 0.0 }
    }
    /// How far the absorber has torn, m.
    pub fn absorber_m(&self) -> f64 {
        self.absorber_m
    }
    /// How far the D-ring has slid on the harness, m.
    pub fn slide_m(&self) -> f64 {
        self.slide_m
    }
    /// Lanyard, absorber and slide together: the distance from grab to D-ring when taut, m.
    pub fn below_grab_m(&self) -> f64 {
        self.params.lanyard_length_m + self.absorber_m + self.slide_m
    }
    /// Whether the absorber has torn to its end.
    pub fn absorber_spent(&self) -> bool {
        self.params.absorber.is_some_and(|a| self.absorber_m >= a.max_extension_m - 1e-9)
    }
    /// Whether a pull is none, or only the drag of a grab that does not lock.
    pub fn is_slack(&self, pull: &Pull) -> bool {
        let running =
            (!self.params.grab.locks || self.grab_slip_m() < self.params.grab.dead_travel_m) && !self.at_end;
        let drag_n = if running { self.params.grab.drag_n } else { 0.0 };
        // A pack that tore before pays out without holding.
        let pays_n = self.params.absorber.map_or(0.0, |a| a.opening_n);
        let pays_n = if pays_n < TAUT_FORCE_N && !self.absorber_spent() { pays_n } else { 0.0 };
        pull.dring_n <= drag_n.max(pays_n) * 1.01
    }
    /// Whether the line still joins worker and house.
    pub fn holds(&self) -> bool {
        !(self.anchor_failed || self.off_rope || self.rope_parted || self.link_parted)
    }
    /// Stretch of the rope between anchor and grab, m.
    pub fn rope_stretch_m(&self) -> f64 {
        let mut stretch = 0.0;
        let mut from = 0.0;
        let n = 1 + self.active.iter().filter(|a| **a).count();
        let mut bounds = self.bounds();
        bounds.push(self.total_m());
        for (k, to) in bounds.into_iter().enumerate().take(n) {
            let rope = to.min(self.grab_rope_m) - from;
            if rope > 0.0 {
                stretch += rope * self.last_force_n[k].max(0.0) / self.params.rope_modulus_n;
            }
            from = to;
        }
        stretch
    }

    fn bounds(&self) -> Vec<f64> {
        (0..self.corners.len()).filter(|&i| self.active[i]).map(|i| self.at_corner_m[i]).collect()
    }

    fn total_m(&self) -> f64 {
        self.grab_rope_m + self.below_grab_m()
    }

    /// Follows the rope's path to a D-ring at `d`: corners that it now bends over get their share
    /// of material at equal strain, corners it has left give theirs up.
    fn segments(&mut self, d: P) -> Segs {
        if let (Some(_), false, Some(edge)) = (self.fold, self.active[0], self.corners.first_mut())
            && d.y < edge.y - OVER_EDGE_M
        {
            // The worker goes over the edge here: the rope crosses it where it runs straight.
            edge.x = self.anchor.x + (d.x - self.anchor.x) * (edge.y - self.anchor.y) / (d.y - self.anchor.y);
        }
        let path = self.path(d);
        let mut now = [false; MAX_CORNERS];
        for q in &path[1..path.len() - 1] {
            if let Some(i) = self.corners.iter().position(|c| c == q) {
                now[i] = true;
            }
        }
        if now != self.active {
            self.recut(now, &path);
        }
        let mut s = Segs {
            n: path.len() - 1,
            corner_of: [usize::MAX; MAX_SEG],
            len_m: [0.0; MAX_SEG],
            hold: [1.0; MAX_SEG],
        };
        for k in 0..s.n {
            s.len_m[k] = path[k].dist(path[k + 1]);
            if k + 1 < s.n {
                if let Some(i) = self.corners.iter().position(|c| *c == path[k + 1]) {
                    s.corner_of[k] = i;
                }
                let (a, b, c) = (path[k], path[k + 1], path[k + 2]);
                let (ux, uy, vx, vy) = (b.x - a.x, b.y - a.y, c.x - b.x, c.y - b.y);
                let phi = match self.fold {
                    Some(fold) => fold.turn_rad(),
                    None => libm::atan2((ux * vy - uy * vx).abs(), ux * vx + uy * vy),
                };
                s.hold[k] = libm::exp(self.params.edge_friction * phi);
            }
        }
        s
    }

    /// Hands material over when the set of corners changes. A corner is met or left at a bend of
    /// zero, where tensions on both sides agree.
    fn recut(&mut self, now: [bool; MAX_CORNERS], path: &[P]) {
        let (mut old_ends, old_force_n) = (self.bounds(), self.last_force_n);
        old_ends.push(self.total_m());
        let mut from_m = 0.0;
        let mut k = 0;
        while k + 1 < path.len() {
            // A run of new corners between two kept ones (or the line's ends).
            let mut j = k + 1;
            while j + 1 < path.len() {
                let i = self.corners.iter().position(|c| *c == path[j]);
                if i.is_some_and(|i| self.active[i]) {
                    break;
                }
                j += 1;
            }
            let end_m = match self.corners.iter().position(|c| *c == path[j]) {
                Some(i) if j + 1 < path.len() => self.at_corner_m[i],
                _ => self.total_m(),
            };
            let run: f64 = (k..j).map(|q| path[q].dist(path[q + 1])).sum();
            // Equal tension in all pieces; slack stays in the last one.
            let c = self.compliance(from_m, end_m, j + 1 == path.len());
            let tension_n = ((run - (end_m - from_m)) / c).max(0.0);
            let mut m = from_m;
            for q in k..j.saturating_sub(1) {
                m = self.lay(m, path[q].dist(path[q + 1]), tension_n);
                // The last piece may be less than the harness has stretched: then that is what lies past the
                // corner, and no rope.
                if j + 1 < path.len() {
                    m = m.min(end_m);
                }
                if let Some(i) = self.corners.iter().position(|c| *c == path[q + 1]) {
                    self.at_corner_m[i] = m;
                }
            }
            from_m = end_m;
            k = j;
        }
        self.active = now;
        // The damping starts from the new cut, without a jump.
        let bounds = self.bounds();
        let mut prev = 0.0;
        for s in 0..path.len() - 1 {
            let to = bounds.get(s).copied().unwrap_or_else(|| self.total_m());
            self.last_elongation_m[s] = (path[s].dist(path[s + 1]) - (to - prev)).max(0.0);
            // Each piece keeps the force that its rope had.
            let was = old_ends.iter().position(|end| *end >= 0.5 * (prev + to)).unwrap_or(old_ends.len() - 1);
            self.last_force_n[s] = old_force_n[was.min(MAX_SEG - 1)];
            prev = to;
        }
    }

    /// Material coordinate reached when `length_m` is laid out from `from_m` at a tension.
    fn lay(&self, from_m: f64, length_m: f64, tension_n: f64) -> f64 {
        let rope = 1.0 + tension_n / self.params.rope_modulus_n;
        let lanyard = 1.0 + tension_n / self.params.lanyard_modulus_n;
        let rope_left = (self.grab_rope_m - from_m).max(0.0) * rope;
        if length_m <= rope_left {
            from_m + length_m / rope
        } else {
            from_m.max(self.grab_rope_m) + (length_m - rope_left) / lanyard
        }
    }

    fn compliance(&self, from_m: f64, to_m: f64, last: bool) -> f64 {
        let p = &self.params;
        let rope = (to_m.min(self.grab_rope_m) - from_m).max(0.0);
        let lan_end = self.grab_rope_m + p.lanyard_length_m;
        let lan = (to_m.min(lan_end) - from_m.max(self.grab_rope_m)).max(0.0);
        let mut c = rope / p.rope_modulus_n + lan / p.lanyard_modulus_n;
        if last {
            c += p.harness_compliance_m_per_n;
        }
        c.max(COMPLIANCE_FLOOR_M_PER_N)
    }

    /// Advances the line to a D-ring at `d` after `dt_s` and returns what it pulls with.
    pub fn step(&mut self, d: P, dt_s: f64) -> Pull {
        if !self.holds() {
            return Pull { dring_n: 0.0, anchor_n: 0.0, toward: p_up() };
        }
        let mut trial = self.trial(d, dt_s);
        let moved = self.relax(&mut trial);
        let forces = trial.forces_n();
        self.book(&trial, &moved, &forces);
        self.commit(&trial, &moved, &forces);
        let pull = Pull { dring_n: forces[trial.n - 1], anchor_n: forces[0], toward: self.toward(d) };
        self.give_way(&forces[..trial.n], pull.dring_n);
        pull
    }

    /// The pieces as they would be if nothing slid.
    fn trial(&mut self, d: P, dt_s: f64) -> Trial {
        let segs = self.segments(d);
        let n = segs.n;
        let mut to = [0.0; MAX_SEG];
        for (end, corner) in to.iter_mut().zip(segs.corner_of).take(n - 1) {
            *end = self.at_corner_m[corner];
        }
        to[n - 1] = self.total_m();
        self.slack_m = to[n - 1] - segs.len_m.iter().take(n).sum::<f64>();
        let mut x = [0.0; MAX_SEG];
        let mut c = [0.0; MAX_SEG];
        let mut from = 0.0;
        for k in 0..n {
            x[k] = segs.len_m[k] - (to[k] - from);
            c[k] = self.compliance(from, to[k], k == n - 1);
            from = to[k];
        }
        Trial {
            n,
            corner_of: segs.corner_of,
            hold: segs.hold,
            to_m: to,
            x_m: x,
            last_x_m: self.last_elongation_m,
            c_m_per_n: c,
            damp_ratio: self.params.relaxation_s / dt_s,
        }
    }

    /// Lets slide what slides: over the corners, in the harness, the absorber and the grab, until no force
    /// is over what holds it. Each increment is clamped at zero and may shrink back.
    fn relax(&self, t: &mut Trial) -> Moved {
        let prm = self.params;
        let mut m = Moved::default();
        let abs_left = prm.absorber.map_or(0.0, |a| a.max_extension_m - self.absorber_m).max(0.0);
        let slide_left = (prm.harness_slide_m - self.slide_m).max(0.0);
        let grab_left = (prm.rope_length_m - self.grab_rope_m).max(0.0);
        let slip0 = self.grab_slip_m();
        let harden = if prm.grab.locks && prm.grab.bite_m > 0.0 {
            ((prm.grab.grip_n - prm.grab.drag_n) / prm.grab.bite_m).max(0.0)
        } else {
            0.0
        };
        let last = t.n - 1;
        let kg = self.grab_piece(t);
        for _ in 0..SLIP_SWEEPS {
            let mut most_n = 0.0f64;
            for k in 0..last {
                most_n = most_n.max(t.over_corner(k, true, &mut m.forward_m[k]));
                most_n = most_n.max(t.over_corner(k, false, &mut m.back_m[k]));
            }
            if slide_left > 0.0 {
                let limit = prm.harness_slide_force_n;
                most_n = most_n.max(t.slide(last, &mut m.harness_m, slide_left, limit, 0.0));
            }
            if let Some(a) = prm.absorber
                && abs_left > 0.0
            {
                let limit = a.limit_n(self.absorber_m);
                most_n = most_n.max(t.slide(last, &mut m.absorber_m, abs_left, limit, 0.0));
            }
            if grab_left > 0.0 {
                let slip = slip0 + m.grab_m;
                let bitten_m = slip - prm.grab.dead_travel_m;
                let h = if (0.0..prm.grab.bite_m).contains(&bitten_m) { harden } else { 0.0 };
                most_n = most_n.max(t.slide(kg, &mut m.grab_m, grab_left, prm.grab.grip_n(slip), h));
            }
            if most_n < SLIP_TOLERANCE_N {
                break;
            }
        }
        m
    }

    /// The piece that the grab acts in; past a corner, that is not the last one.
    fn grab_piece(&self, t: &Trial) -> usize {
        (0..t.n - 1).find(|&k| t.to_m[k] >= self.grab_rope_m).unwrap_or(t.n - 1)
    }

    /// Books the energy of a step, by the mean of its forces before and after.
    fn book(&mut self, t: &Trial, m: &Moved, f: &[f64; MAX_SEG]) {
        let prm = self.params;
        let kg = self.grab_piece(t);
        let slip0 = self.grab_slip_m();
        let e = &mut self.energy;
        let mean = |k: usize| 0.5 * (f[k] + self.last_force_n[k]);
        if let Some(a) = prm.absorber {
            e.absorber_j += a.limit_n(self.absorber_m) * m.absorber_m;
        }
        e.harness_j += prm.harness_slide_force_n * m.harness_m;
        // Rope that moves from tension a to tension b takes its stretch along: per metre of material,
        // T + Te^2 / 2M is freed on one side and taken up on the other, where the strain it carries is
        // that of the elastic tension Te alone, not of the damping in T.
        let elastic_n = |k: usize| 0.5 * (t.x_m[k].max(0.0) + t.last_x_m[k].max(0.0)) / t.c_m_per_n[k];
        let grip = |slip: f64| prm.grab.grip_n(slip);
        let g0 = grip(slip0).min(f[kg].max(grip(slip0 + m.grab_m)));
        let te = elastic_n(kg);
        // A grip without a limit does not slip, and no slip takes no energy.
        if m.grab_m > 0.0 {
            e.grab_j += (0.5 * (g0 + grip(slip0 + m.grab_m)) + 0.5 * te * te / prm.rope_modulus_n) * m.grab_m;
        }
        for k in 0..t.n - 1 {
            // Past the grab it is the lanyard that runs over the edge.
            let modulus_n =
                if t.to_m[k] > self.grab_rope_m { prm.lanyard_modulus_n } else { prm.rope_modulus_n };
            let freed = |k: usize| mean(k) + 0.5 * elastic_n(k) * elastic_n(k) / modulus_n;
            e.edge_j += ((freed(k + 1) - freed(k)) * m.over_corner_m(k)).max(0.0);
        }
        e.elastic_j = 0.0;
        for k in 0..t.n {
            let xk = t.x_m[k].max(0.0);
            e.elastic_j += 0.5 * xk * xk / t.c_m_per_n[k];
            let dx = xk - t.last_x_m[k];
            // The part of the force that is not elastic, over the stretch it acted along.
            e.damping_j += (mean(k) - 0.5 * (xk + t.last_x_m[k]) / t.c_m_per_n[k]) * dx;
        }
    }

    /// Takes a step's lengths and forces over.
    fn commit(&mut self, t: &Trial, m: &Moved, f: &[f64; MAX_SEG]) {
        let kg = self.grab_piece(t);
        for k in 0..t.n - 1 {
            // Slip puts rope in before the grab; what lies past it moves on.
            let shift = if k >= kg { m.grab_m } else { 0.0 };
            self.at_corner_m[t.corner_of[k]] += shift - m.over_corner_m(k);
        }
        for k in 0..t.n {
            self.last_elongation_m[k] = t.x_m[k].max(0.0);
        }
        self.last_force_n = *f;
        self.absorber_m += m.absorber_m;
        self.slide_m += m.harness_m;
        self.grab_rope_m += m.grab_m;
        if m.grab_m > 0.0 && self.grab_rope_m >= self.params.rope_length_m - 1e-9 {
            if self.params.end_stop {
                self.at_end = true;
            } else {
                self.off_rope = true;
            }
        }
        if self.params.grab.release_slip_m.is_some_and(|r| self.grab_slip_m() > r) {
            self.off_rope = true;
        }
    }

    /// Whether something lets go under the forces of the pieces.
    fn give_way(&mut self, forces_n: &[f64], dring_n: f64) {
        // The rope lies before the grab; what hangs below it shares the last segment's force.
        let rope_n = forces_n.iter().fold(0.0_f64, |a, b| a.max(*b));
        // Against the worker: no edge is sure to help the anchor (a wet rope, a roller, an edge pad).
        if rope_n > self.params.anchor_capacity_n {
            self.anchor_failed = true;
        }
        self.rope_parted |= rope_n > self.params.rope_strength_n;
        self.link_parted |= dring_n > self.params.link_strength_n;
        if !self.holds() {
            self.energy.lost_j += self.energy.elastic_j;
            self.energy.elastic_j = 0.0;
        }
    }

    fn toward(&self, d: P) -> P {
        let last =
            (0..self.corners.len()).rev().find(|&i| self.active[i]).map_or(self.anchor, |i| self.corners[i]);
        let r = d.dist(last);
        if r < 1e-9 { p_up() } else { P { x: (last.x - d.x) / r, y: (last.y - d.y) / r } }
    }
}

const fn p_up() -> P {
    P { x: 0.0, y: 1.0 }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::p;

    /// A bug: a ring that swung back in under the fascia's corner, 4 cm past it on a harness stretched by as much,
    /// had no rope left to lay past the corner, and the piece before it was pulled with 16 kN: 141 J from nowhere (22 J here).
    /// Past the corner by less than the harness's stretch the line goes on as it was: its pull changes by no more
    /// than its length does over its compliance.
    #[test]
    fn a_corner_met_within_the_harness_stretch_makes_no_force() {
        let mut params = LineParams {
            lanyard_length_m: 0.9,
            lanyard_modulus_n: 100_000.0,
            harness_compliance_m_per_n: 2e-5,
            edge_friction: 0.3,
            ..LineParams::ideal(37_000.0, 25.0)
        };
        params.grab.grip_n = 50_000.0;
        let (eave, fascia) = (p(0.58, 4.41), p(0.58, 4.23));
        let at = |x: f64, y_m: f64| p(0.58 + x, y_m);
        // Laid out over the eave alone, then pulled taut outside, clear of the fascia's corner.
        let out = |r: f64| at(0.45 * r, 4.41 - 0.893 * r);
        let (mut line, mut r) = (Line::new(params, p(-5.6, 8.5), &[eave, fascia], out(0.01), 6.372), 0.01);
        while line.last_force_n[1] < 2_000.0 {
            r += 1e-4;
            line.step(out(r), 1e-3);
        }
        assert!((0.19..0.24).contains(&r), "{r}");
        let before = line.last_force_n[1];
        // Then in under the eave at the same distance from its corner: as deep as the harness has stretched.
        let into = at(-2e-5, 4.41 - r);
        let before_j = line.energy.elastic_j + line.energy.spent_j();
        line.step(into, 1e-3);
        let most_n = line.last_force_n.iter().fold(0.0_f64, |a, b| a.max(*b));
        assert!(most_n < 1.25 * before.max(line.last_force_n[0]), "{:?} {before}", line.last_force_n);
        let after_j = line.energy.elastic_j + line.energy.spent_j();
        assert!((after_j - before_j).abs() < 10.0, "{before_j} {after_j}");
    }
}
