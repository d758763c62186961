//! A body against a solid: flesh that gives, and rubs.
//!
//! A rigid contact turns the smallest difference in time of a touch into another tumble. Flesh and
//! clothes give some centimetres, so the force here grows smoothly from nothing with depth (a spring
//! that stiffens), with damping after Hunt and Crossley, 'Coefficient of restitution interpreted as
//! damping in vibroimpact', J. Applied Mechanics 42 (1975) 440-445, and Coulomb friction that is
//! smooth through rest. Each capsule meets a solid with its two round ends and, between them, with
//! the solid's corners. Stiffness and damping are assumed.

use super::constants::{SKIN_DAMPING_M_S, SKIN_HARDENS_M, SKIN_N_PER_M};
use crate::geometry::{P, p};

/// How far past a capsule's axis a corner still counts as one that it was pressed onto, m.
const PAST_CORNER_M: f64 = 0.15;

/// One place where a capsule presses on a solid.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Press {
    /// How deep, m.
    pub depth_m: f64,
    /// Unit vector out of the solid.
    pub out: P,
    /// Where the force acts, m.
    pub at: P,
    /// Share of the full stiffness, 0 to 1: a corner counts less near the capsule's round ends.
    pub full_share: f64,
    /// What that share's growth along the capsule does: how much of the energy is lost in a metre along it, per m.
    pub aside_per_m: P,
}

/// Nearest point of a segment, and how far along it lies (0 to 1).
fn nearest(a: P, b: P, q: P) -> (P, f64) {
    let (dx, dy) = (b.x - a.x, b.y - a.y);
    let l2 = dx * dx + dy * dy;
    let t = if l2 > 0.0 { (((q.x - a.x) * dx + (q.y - a.y) * dy) / l2).clamp(0.0, 1.0) } else { 0.0 };
    (a.lerp(b, t), t)
}

/// A convex solid.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Solid {
    /// Clockwise.
    corners: Vec<P>,
    /// Its faces' outward normals, and how far out each face lies along its own, m.
    faces: Vec<(P, f64)>,
}

impl Solid {
    /// The solid of these corners, m, which stand clockwise.
    pub fn new(corners: &[P]) -> Solid {
        let next = corners.iter().cycle().skip(1);
        let faces = corners.iter().zip(next).map(|(a, b)| {
            let l = a.dist(*b).max(1e-12);
            // Clockwise: outward is to the left of the way round.
            let out = p(-(b.y - a.y) / l, (b.x - a.x) / l);
            (out, a.x * out.x + a.y * out.y)
        });
        Solid { corners: corners.to_vec(), faces: faces.collect() }
    }

    /// How far `q` lies outside the face that it lies outside most, m, and that face's normal.
    fn over(&self, q: P) -> (f64, P) {
        self.faces.iter().fold((f64::NEG_INFINITY, p(0.0, 1.0)), |most, (out, at_m)| {
            let over = q.x * out.x + q.y * out.y - at_m;
            if over > most.0 { (over, *out) } else { most }
        })
    }

    /// Whether everything within `reach_m` of `q` is outside, as far as one face tells.
    pub fn is_beyond(&self, q: P, reach_m: f64) -> bool {
        self.faces.iter().any(|(out, at_m)| q.x * out.x + q.y * out.y - at_m > reach_m)
    }

    /// A round end.
    fn round_end(&self, centre: P, radius_m: f64, near_m: f64) -> Option<Press> {
        let (over_m, out) = self.over(centre);
        if over_m > radius_m + near_m {
            return None;
        }
        let (depth_m, out) = if over_m <= 0.0 {
            // The nearest face's plane from within, the nearest point from outside.
            (radius_m - over_m, out)
        } else {
            let next = self.corners.iter().cycle().skip(1);
            let (d, q) = self.corners.iter().zip(next).fold((f64::INFINITY, centre), |near, (a, b)| {
                let (q, _) = nearest(*a, *b, centre);
                let d = q.dist(centre);
                if d < near.0 { (d, q) } else { near }
            });
            (radius_m - d, p((centre.x - q.x) / d.max(1e-12), (centre.y - q.y) / d.max(1e-12)))
        };
        (depth_m > -near_m).then(|| Press {
            depth_m,
            out,
            at: p(centre.x - out.x * (radius_m - depth_m), centre.y - out.y * (radius_m - depth_m)),
            full_share: 1.0,
            aside_per_m: p(0.0, 0.0),
        })
    }

    /// A corner `v` against the side of a capsule, between its round ends: pressed past its axis, it still
    /// pushes the capsule out.
    fn corner(&self, v: P, a: P, b: P, radius_m: f64, near_m: f64) -> Option<Press> {
        let (q, t) = nearest(a, b, v);
        let (d, l) = (q.dist(v), a.dist(b));
        let from_end_m = t.min(1.0 - t) * l;
        if d > (radius_m + near_m).max(PAST_CORNER_M) || from_end_m <= 0.0 || d < 1e-6 {
            return None;
        }
        let side = if self.over(q).0 < 0.0 { -1.0 } else { 1.0 };
        let depth_m = radius_m - side * d;
        (depth_m > -near_m).then(|| Press {
            depth_m,
            out: p(side * (q.x - v.x) / d, side * (q.y - v.y) / d),
            at: v,
            full_share: (from_end_m / radius_m).min(1.0),
            aside_per_m: if from_end_m < radius_m {
                let k = if t < 0.5 { 1.0 } else { -1.0 } / (from_end_m * l);
                p(k * (b.x - a.x), k * (b.y - a.y))
            } else {
                p(0.0, 0.0)
            },
        })
    }

    /// Where a capsule from `a` to `b` presses on it, or is as near to it as `near_m`: the depth is then
    /// negative.
    pub fn presses(&self, a: P, b: P, radius_m: f64, near_m: f64) -> impl Iterator<Item = Press> + '_ {
        let ends = [a, b].into_iter().filter_map(move |c| self.round_end(c, radius_m, near_m));
        ends.chain(self.corners.iter().filter_map(move |&v| self.corner(v, a, b, radius_m, near_m)))
    }
}

impl Press {
    /// Energy stored in the flesh, J.
    pub fn elastic_j(&self) -> f64 {
        let (d, h) = (self.depth_m, SKIN_HARDENS_M);
        self.full_share * SKIN_N_PER_M * d * d * (0.5 + 0.25 * d * d / (h * h))
    }

    /// Force of the spring alone, N.
    pub fn spring_n(&self) -> f64 {
        let (d, h) = (self.depth_m, SKIN_HARDENS_M);
        self.full_share * SKIN_N_PER_M * d * (1.0 + d * d / (h * h))
    }

    /// Force of the spring as a vector, N: the slope of the energy, also along a capsule whose end is near.
    pub fn spring(&self) -> P {
        let (n, j) = (self.spring_n(), self.elastic_j());
        p(n * self.out.x + j * self.aside_per_m.x, n * self.out.y + j * self.aside_per_m.y)
    }

    /// Force on the body, N: `speed` is that of the body at the place, m/s; `mass_kg` what a force
    /// there has to move, which bounds what damping and friction can do in a step of `dt_s`; `stick_m_s` the
    /// slip under which friction fades towards rest, m/s.
    pub fn force_n(&self, speed: P, friction: f64, stick_m_s: f64, mass_kg: f64, dt_s: f64) -> P {
        let spring_n = self.spring_n();
        let into_m_s = -(speed.x * self.out.x + speed.y * self.out.y);
        let most_n = mass_kg * into_m_s.abs() / dt_s;
        let damp_n = (spring_n * into_m_s / SKIN_DAMPING_M_S).clamp(-most_n, most_n);
        let press_n = (spring_n + damp_n).max(0.0);
        let along = p(-self.out.y, self.out.x);
        let v = speed.x * along.x + speed.y * along.y;
        // Sticking at less than this is creeping; a step may stop what rubs, not push it back.
        let creep_m_s = stick_m_s.max(friction * press_n * dt_s / mass_kg);
        let rub_n = friction * press_n * v / libm::sqrt(v * v + creep_m_s * creep_m_s);
        let (j, aside) = (self.elastic_j(), self.aside_per_m);
        p(
            press_n * self.out.x - rub_n * along.x + j * aside.x,
            press_n * self.out.y - rub_n * along.y + j * aside.y,
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A roof with its ridge at (-3, 2) and its eave at the origin.
    fn solid() -> Solid {
        Solid::new(&[p(-3.0, 2.0), p(0.0, 0.0), p(0.0, -0.2), p(-6.0, -0.2), p(-6.0, 0.0)])
    }

    #[test]
    fn an_end_on_the_slope_presses_square_to_it() {
        // By hand: the slope's outward normal is (2, 3) / sqrt 13; 0.05 off it, radius 0.07.
        let n = p(2.0 / 13f64.sqrt(), 3.0 / 13f64.sqrt());
        let c = p(-1.5 + 0.05 * n.x, 1.0 + 0.05 * n.y);
        let up = p(c.x + 3.0 * n.x, c.y + 3.0 * n.y);
        let solid = solid();
        let all: Vec<Press> = solid.presses(c, up, 0.07, 0.0).collect();
        assert_eq!(all.len(), 1);
        assert!((all[0].depth_m - 0.02).abs() < 1e-12, "{all:?}");
        assert!(all[0].out.dist(n) < 1e-12 && all[0].at.dist(p(-1.5, 1.0)) < 1e-12, "{all:?}");
    }

    #[test]
    fn a_thigh_across_the_eave_is_held_by_its_corner() {
        // Upright beside the eave, 0.04 off it.
        let solid = solid();
        let all: Vec<Press> = solid.presses(p(0.04, 0.3), p(0.04, -0.6), 0.06, 0.0).collect();
        assert!(all.iter().any(|q| q.full_share == 1.0 && (q.depth_m - 0.02).abs() < 1e-12), "{all:?}");
        assert!(all.iter().all(|q| q.out.dist(p(1.0, 0.0)) < 1e-9), "{all:?}");
    }

    /// Near a capsule's end as between its ends the spring is the slope of the energy, wherever the capsule is moved:
    /// else a corner would make energy, 2 % of a fall's in one of fifty.
    #[test]
    fn a_corner_near_a_round_end_keeps_the_energy() {
        let (solid, h) = (solid(), 1e-7);
        // A thigh that lies over the eave, its end 2 cm past the corner's foot on it.
        let place = |x: f64, y: f64| (p(-0.02 + x, 0.045 + y), p(0.3 + x, 0.12 + y));
        let eave = |x: f64, y: f64| {
            let (a, b) = place(x, y);
            let mut all = solid.presses(a, b, 0.06, 0.0);
            all.find(|q| q.at.dist(p(0.0, 0.0)) < 1e-9 && q.full_share < 1.0).expect("pressed")
        };
        let f = eave(0.0, 0.0).spring();
        let along = (eave(h, 0.0).elastic_j() - eave(-h, 0.0).elastic_j()) / (2.0 * h);
        let across = (eave(0.0, h).elastic_j() - eave(0.0, -h).elastic_j()) / (2.0 * h);
        assert!((f.x + along).abs() < 1e-3 && (f.y + across).abs() < 1e-3, "{f:?} {along} {across}");
        assert!(f.x.abs() > 1.0, "{f:?}");
    }

    /// A bug: a ladder struck hard went through the eave, since a corner past the axis pulled it on.
    #[test]
    fn a_corner_pressed_past_the_axis_still_pushes_out() {
        // Rails against the eave at the origin, their axis 1 cm inside it.
        let solid = solid();
        let all: Vec<Press> = solid.presses(p(-0.01, 1.0), p(-0.01, -2.0), 0.03, 0.0).collect();
        let eave = all.iter().find(|q| q.at.dist(p(0.0, 0.0)) < 1e-9).expect("pressed");
        assert!((eave.depth_m - 0.04).abs() < 1e-12 && eave.out.dist(p(1.0, 0.0)) < 1e-9, "{eave:?}");
    }

    #[test]
    fn the_force_is_the_slope_of_the_energy_and_friction_acts_against_the_slip() {
        let at = |depth_m: f64| Press {
            depth_m,
            out: p(0.0, 1.0),
            at: p(0.0, 0.0),
            full_share: 1.0,
            aside_per_m: p(0.0, 0.0),
        };
        let h = 1e-6;
        for d in [0.001, 0.01, 0.04] {
            let slope = (at(d + h).elastic_j() - at(d - h).elastic_j()) / (2.0 * h);
            let f = at(d).force_n(p(0.0, 0.0), 0.25, 0.1, 5.0, 1e-3);
            assert!((f.y / slope - 1.0).abs() < 1e-6 && f.x == 0.0, "{f:?} {slope}");
        }
        let f = at(0.01).force_n(p(3.0, 0.0), 0.25, 0.1, 50.0, 1e-3);
        assert!((f.x / f.y + 0.25).abs() < 1e-3, "{f:?}");
        // Leaving fast, the flesh does not pull back.
        assert_eq!(at(0.01).force_n(p(0.0, 9.0), 0.25, 0.1, 5.0, 1e-4).y, 0.0);
    }
}
