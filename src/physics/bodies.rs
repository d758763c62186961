//! Rigid bodies joined by hinges, in the plane.
//!
//! Positions and velocities are advanced by leapfrog: velocities stand half a step behind positions. The
//! hinges' impulses are found so that the hinges close at the end of the step (SHAKE: Ryckaert, Ciccotti and
//! Berendsen, 'Numerical integration of the cartesian equations of motion of a system with constraints',
//! J. Computational Physics 23 (1977) 327-341): second order, and without drift of energy or of the hinges.
//! The equations are those of the hinges, two each, and as sparse as the tree: eliminated from hands and
//! feet towards the trunk nothing fills in. `f64` throughout and sines from `libm`, so that the bits are the
//! same on every platform.

use crate::geometry::body::Pose;
use crate::geometry::{P, p};
use crate::units::G_M_S2;

/// Hinges count as closed at this gap, m.
const CLOSED_M: f64 = 1e-8;
/// Most corrections of a step; two to three are usual.
const MOST_CORRECTIONS: usize = 12;

/// One body.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Body {
    /// Mass, kg.
    pub mass_kg: f64,
    /// Moment of inertia about its centre, kg m².
    pub inertia_kg_m2: f64,
    /// Centre, m.
    pub at: P,
    /// Cosine and sine of its angle.
    pub cos: f64,
    /// See `cos`.
    pub sin: f64,
    /// Velocity of the centre half a step before the positions' time, m/s.
    pub velocity: P,
    /// Counter-clockwise, rad/s, likewise.
    pub turn_rad_s: f64,
    /// Both a step earlier.
    earlier: (P, f64),
    /// Force at the centre in this step, N, and torque about it, N m.
    load: (P, f64),
    /// What of it springs give.
    spring: (P, f64),
    /// One over the mass, 1/kg, and over the moment of inertia, 1/(kg m²).
    gives: (f64, f64),
}

/// A velocity, m/s, and a rate of turning, rad/s.
pub type Motion = (P, f64);

impl Body {
    /// A body of a mass, kg, and a moment of inertia, kg m², at `pose`, that moves at `velocity`, m/s, and turns, rad/s.
    pub fn new(mass_kg: f64, inertia_kg_m2: f64, pose: Pose, velocity: P, turn_rad_s: f64) -> Body {
        Body {
            mass_kg,
            inertia_kg_m2,
            at: pose.at,
            cos: libm::cos(pose.angle_rad),
            sin: libm::sin(pose.angle_rad),
            velocity,
            turn_rad_s,
            earlier: (velocity, turn_rad_s),
            load: (p(0.0, 0.0), 0.0),
            spring: (p(0.0, 0.0), 0.0),
            gives: (1.0 / mass_kg, 1.0 / inertia_kg_m2),
        }
    }

    /// From its centre to a local point, in the plane's directions, m.
    pub fn arm(&self, local: P) -> P {
        p(self.cos * local.x - self.sin * local.y, self.sin * local.x + self.cos * local.y)
    }

    /// The local point of a place in the plane, m.
    pub fn local(&self, place: P) -> P {
        let (x, y) = (place.x - self.at.x, place.y - self.at.y);
        p(self.cos * x + self.sin * y, self.cos * y - self.sin * x)
    }

    /// The most speed that an impulse with the lever arm `r`, m, can give its own place, m/s per N s.
    pub fn gives_most(&self, r: P) -> f64 {
        self.gives.0 + (r.x * r.x + r.y * r.y) * self.gives.1
    }

    /// The plane's place of a local point, m.
    pub fn place(&self, local: P) -> P {
        let r = self.arm(local);
        p(self.at.x + r.x, self.at.y + r.y)
    }

    /// At rest, with velocities half a step of `dt_s` back.
    pub fn rest(&mut self, dt_s: f64) {
        (self.velocity, self.turn_rad_s) = (p(0.0, G_M_S2 * dt_s / 2.0), 0.0);
        self.earlier = (self.velocity, self.turn_rad_s);
    }

    /// Where it is.
    pub fn pose(&self) -> Pose {
        Pose { at: self.at, angle_rad: libm::atan2(self.sin, self.cos) }
    }

    /// Its motion at the positions' own time, `back` being half of the last step over the two last ones' mean.
    pub fn motion_now(&self, back: f64) -> Motion {
        let (was, was_rad_s) = self.earlier;
        let v = self.velocity;
        (
            p(v.x + (v.x - was.x) * back, v.y + (v.y - was.y) * back),
            self.turn_rad_s + (self.turn_rad_s - was_rad_s) * back,
        )
    }

    /// Adds a force at a place, N.
    pub fn push(&mut self, f: P, at: P) {
        self.add_load(self.at_centre(f, at));
    }

    /// The same, of which springs give the part `spring`, N.
    pub fn press(&mut self, f: P, spring: P, at: P) {
        self.push(f, at);
        let (by, torque_nm) = self.at_centre(spring, at);
        self.spring = (p(self.spring.0.x + by.x, self.spring.0.y + by.y), self.spring.1 + torque_nm);
    }

    fn at_centre(&self, f: P, at: P) -> (P, f64) {
        let (x, y) = (at.x - self.at.x, at.y - self.at.y);
        (f, x * f.y - y * f.x)
    }

    /// Adds a torque, N m, of which springs give the part `spring_nm`.
    pub fn twist(&mut self, torque_nm: f64, spring_nm: f64) {
        self.load.1 += torque_nm;
        self.spring.1 += spring_nm;
    }

    /// What springs give of the load, N at the centre and N m, taken off.
    pub fn take_spring(&mut self) -> (P, f64) {
        core::mem::replace(&mut self.spring, (p(0.0, 0.0), 0.0))
    }

    /// Adds a load: N at the centre, and N m.
    pub fn add_load(&mut self, (f, torque_nm): (P, f64)) {
        self.load = (p(self.load.0.x + f.x, self.load.0.y + f.y), self.load.1 + torque_nm);
    }

    /// The load so far, N at the centre and N m, taken off it.
    pub fn take_load(&mut self) -> (P, f64) {
        core::mem::replace(&mut self.load, (p(0.0, 0.0), 0.0))
    }

    /// Kinetic energy of its velocities, J.
    pub fn kinetic_j(&self) -> f64 {
        let v = self.velocity;
        0.5 * self.mass_kg * (v.x * v.x + v.y * v.y)
            + 0.5 * self.inertia_kg_m2 * self.turn_rad_s * self.turn_rad_s
    }

    /// Work of `load` in a step that took the motion from `before` to what it is now, J: by mean velocities,
    /// exact for impulses.
    pub fn work_j(&self, load: (P, f64), before: Motion, dt_s: f64) -> f64 {
        let (f, torque_nm) = load;
        let (v, w) = before;
        0.5 * dt_s
            * (f.x * (v.x + self.velocity.x)
                + f.y * (v.y + self.velocity.y)
                + torque_nm * (w + self.turn_rad_s))
    }

    /// Lets gravity and `load` (N at the centre, N m) act for `kick_s`.
    pub fn kick(&mut self, load: (P, f64), kick_s: f64) {
        self.earlier = (self.velocity, self.turn_rad_s);
        let (by_mass, by_inertia) = self.gives;
        self.velocity.x += kick_s * load.0.x * by_mass;
        self.velocity.y += kick_s * (load.0.y * by_mass - G_M_S2);
        self.turn_rad_s += kick_s * load.1 * by_inertia;
    }

    /// Where its velocities bring it in `dt_s`.
    fn ahead(&self, dt_s: f64) -> (P, f64, f64) {
        let (sin, cos) = sin_cos(self.turn_rad_s * dt_s);
        let at = p(self.at.x + dt_s * self.velocity.x, self.at.y + dt_s * self.velocity.y);
        (at, self.cos * cos - self.sin * sin, self.sin * cos + self.cos * sin)
    }

    /// Moves it there.
    pub fn drift(&mut self, dt_s: f64) {
        self.come_to(self.ahead(dt_s));
    }

    fn come_to(&mut self, (at, cos, sin): (P, f64, f64)) {
        // Rounding does not add up.
        let unit = 1.5 - 0.5 * (cos * cos + sin * sin);
        (self.at, self.cos, self.sin) = (at, cos * unit, sin * unit);
    }
}

/// Sine and cosine; what a body turns by in a step is small.
fn sin_cos(a: f64) -> (f64, f64) {
    if a.abs() > 0.1 {
        return (libm::sin(a), libm::cos(a));
    }
    // The series' next term is under 1e-17.
    let q = a * a;
    let sin = a * (1.0 - q / 6.0 * (1.0 - q / 20.0 * (1.0 - q / 42.0 * (1.0 - q / 72.0))));
    let cos = 1.0 - q / 2.0 * (1.0 - q / 12.0 * (1.0 - q / 30.0 * (1.0 - q / 56.0 * (1.0 - q / 90.0))));
    (sin, cos)
}

/// A hinge between two bodies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hinge {
    /// Number of the body nearer the trunk, and where on it, m.
    pub parent: usize,
    /// See `parent`.
    pub on_parent: P,
    /// Number of the other, and where on it, m.
    pub child: usize,
    /// See `child`.
    pub on_child: P,
    /// Least and most angle of child against parent, rad.
    pub limits_rad: [f64; 2],
    /// Rate at which muscle tone takes its turning away, 1/s; 0 is none, nor any limit.
    pub tone_per_s: f64,
    /// What resists that turning, kg m².
    pub inertia_kg_m2: f64,
}

/// A hinge's range, so that being within it costs no arc tangent.
#[derive(Clone, Copy, Debug)]
struct Range {
    /// Cosine and sine of its middle.
    middle: (f64, f64),
    /// Cosine of half its width.
    edge_cos: f64,
    half_rad: f64,
}

impl Range {
    fn of(h: &Hinge) -> Range {
        let [least, most] = h.limits_rad;
        let (middle, half_rad) = (0.5 * (least + most), 0.5 * (most - least));
        // Half a turn either way is no limit.
        let edge_cos = if half_rad < core::f64::consts::PI { libm::cos(half_rad) } else { -2.0 };
        let middle = if middle.is_finite() { middle } else { 0.0 };
        Range { middle: (libm::cos(middle), libm::sin(middle)), edge_cos, half_rad }
    }
}

/// Two rows and columns, row by row.
type Block = [f64; 4];

fn times(a: &Block, b: &Block) -> Block {
    [
        a[0] * b[0] + a[1] * b[2],
        a[0] * b[1] + a[1] * b[3],
        a[2] * b[0] + a[3] * b[2],
        a[2] * b[1] + a[3] * b[3],
    ]
}

fn turned(a: &Block) -> Block {
    [a[0], a[2], a[1], a[3]]
}

fn on(a: &Block, x: P) -> P {
    p(a[0] * x.x + a[1] * x.y, a[2] * x.x + a[3] * x.y)
}

fn less(a: &mut Block, off: &Block) {
    for (a, off) in a.iter_mut().zip(off) {
        *a -= off;
    }
}

/// Inverse of a symmetric block that is positive.
fn inverse(a: &Block) -> Block {
    let det = a[0] * a[3] - a[1] * a[2];
    [a[3] / det, -a[1] / det, -a[2] / det, a[0] / det]
}

/// Two hinges that share a body: the parent of the later one.
#[derive(Clone, Copy, Debug)]
struct Pair {
    late: usize,
    early: usize,
    /// The body is the child of the earlier one, not its parent.
    is_child: bool,
}

/// What giving way at a hinge does to the pair of two that it is paired with: numbers of pairs.
#[derive(Clone, Copy, Debug)]
struct Fill {
    first: usize,
    second: usize,
    /// The earlier hinges of `first` (later) and `second`, as a pair.
    onto: usize,
}

/// Bodies and their hinges. A hinge stands after the one that joins its parent to the trunk.
#[derive(Clone, Debug, Default)]
pub struct Bodies {
    /// The bodies; the first is the trunk.
    pub all: Vec<Body>,
    hinges: Vec<Hinge>,
    ranges: Vec<Range>,
    /// In the order of elimination.
    pairs: Vec<Pair>,
    fills: Vec<Fill>,
    /// For each hinge its pairs, as a range of `pairs`, and its fills.
    mine: Vec<(core::ops::Range<usize>, core::ops::Range<usize>)>,
    // Of one step: lever arms on parent and child, blocks on and off the diagonal, right sides.
    arms: Vec<(P, P)>,
    diagonal: Vec<Block>,
    beside: Vec<Block>,
    shares: Vec<Block>,
    rest: Vec<P>,
    /// Where the bodies' velocities bring them.
    next: Vec<(P, f64, f64)>,
}

impl Bodies {
    /// Bodies and hinges; each hinge's child is in no earlier hinge.
    pub fn new(all: Vec<Body>, hinges: Vec<Hinge>) -> Bodies {
        let n = hinges.len();
        let (mut pairs, mut ranges) = (Vec::new(), vec![0..0; n]);
        for late in (0..n).rev() {
            let (from, body) = (pairs.len(), hinges[late].parent);
            let shares = |h: &Hinge| h.parent == body || h.child == body;
            pairs.extend((0..late).filter(|&q| shares(&hinges[q])).map(|early| Pair {
                late,
                early,
                is_child: hinges[early].child == body,
            }));
            ranges[late] = from..pairs.len();
        }
        let (mut fills, mut mine) = (Vec::new(), Vec::new());
        for range in ranges {
            let from = fills.len();
            for first in range.clone() {
                for second in range.start..first {
                    // Both share the body that `late` hangs from, so they are a pair themselves.
                    let (late, early) = (pairs[first].early, pairs[second].early);
                    let onto = pairs.iter().position(|q: &Pair| q.late == late && q.early == early);
                    fills.extend(onto.map(|onto| Fill { first, second, onto }));
                }
            }
            mine.push((range, from..fills.len()));
        }
        Bodies {
            ranges: hinges.iter().map(Range::of).collect(),
            fills,
            mine,
            arms: vec![(p(0.0, 0.0), p(0.0, 0.0)); n],
            diagonal: vec![[0.0; 4]; n],
            beside: vec![[0.0; 4]; pairs.len()],
            shares: vec![[0.0; 4]; pairs.len()],
            pairs,
            rest: vec![p(0.0, 0.0); n],
            next: Vec::with_capacity(all.len()),
            hinges,
            all,
        }
    }

    /// The hinges.
    pub fn hinges(&self) -> &[Hinge] {
        &self.hinges
    }

    /// Rate at which the child of hinge `i` turns against its parent at the positions' time, rad/s.
    pub fn rate_rad_s(&self, i: usize, back: f64) -> f64 {
        let h = &self.hinges[i];
        self.all[h.child].motion_now(back).1 - self.all[h.parent].motion_now(back).1
    }

    /// How far past its range hinge `i` is bent, rad: negative past the lower end, 0 within.
    pub fn over_rad(&self, i: usize) -> f64 {
        let h = &self.hinges[i];
        let (a, b) = (&self.all[h.parent], &self.all[h.child]);
        let (sin, cos) = (b.sin * a.cos - b.cos * a.sin, b.cos * a.cos + b.sin * a.sin);
        let Range { middle, edge_cos, half_rad } = self.ranges[i];
        let off_middle = cos * middle.0 + sin * middle.1;
        if off_middle >= edge_cos {
            return 0.0;
        }
        // From the middle: an arm that goes over backwards does not come round to its other end.
        let off_rad = libm::atan2(sin * middle.0 - cos * middle.1, off_middle);
        off_rad - half_rad.copysign(off_rad)
    }

    /// Largest distance between the two sides of any hinge, m.
    pub fn gap_m(&self) -> f64 {
        self.hinges.iter().fold(0.0, |gap: f64, h| {
            gap.max(self.all[h.parent].place(h.on_parent).dist(self.all[h.child].place(h.on_child)))
        })
    }

    /// Moves everything on by `dt_s`, hinges closed: the impulses at the hinges change the velocities.
    pub fn drift(&mut self, dt_s: f64) {
        self.factor();
        self.look_ahead(dt_s);
        for _ in 0..MOST_CORRECTIONS {
            if self.gaps_ahead(dt_s) < CLOSED_M {
                break;
            }
            self.solve();
            self.strike();
            self.look_ahead(dt_s);
        }
        for (b, next) in self.all.iter_mut().zip(&self.next) {
            b.come_to(*next);
        }
    }

    /// The hinges' equations at these positions: what an impulse at one does to the speed at another.
    fn factor(&mut self) {
        for (i, h) in self.hinges.iter().enumerate() {
            let (a, b) = (&self.all[h.parent], &self.all[h.child]);
            let (ra, rb) = (a.arm(h.on_parent), b.arm(h.on_child));
            self.arms[i] = (ra, rb);
            let (on_a, on_b) = (gives(a, ra, ra), gives(b, rb, rb));
            self.diagonal[i] = core::array::from_fn(|k| on_a[k] + on_b[k]);
        }
        for (q, beside) in self.pairs.iter().zip(&mut self.beside) {
            let (its, sign) =
                if q.is_child { (self.arms[q.early].1, -1.0) } else { (self.arms[q.early].0, 1.0) };
            let g = gives(&self.all[self.hinges[q.late].parent], self.arms[q.late].0, its);
            *beside = g.map(|g| sign * g);
        }
        // From the last hinge on: what is left of the earlier ones when a later one gives way.
        for late in (0..self.hinges.len()).rev() {
            let inv = inverse(&self.diagonal[late]);
            self.diagonal[late] = inv;
            let (pairs, fills) = &self.mine[late];
            for k in pairs.clone() {
                self.shares[k] = times(&turned(&self.beside[k]), &inv);
                let off = times(&self.shares[k], &self.beside[k]);
                less(&mut self.diagonal[self.pairs[k].early], &off);
            }
            for q in &self.fills[fills.clone()] {
                let off = times(&self.shares[q.first], &self.beside[q.second]);
                less(&mut self.beside[q.onto], &off);
            }
        }
    }

    /// Where the velocities bring the bodies in `dt_s`.
    fn look_ahead(&mut self, dt_s: f64) {
        self.next.clear();
        self.next.extend(self.all.iter().map(|b| b.ahead(dt_s)));
    }

    /// How far apart each hinge would be after `dt_s`, as a speed to take away; the largest gap, m.
    fn gaps_ahead(&mut self, dt_s: f64) -> f64 {
        let mut most: f64 = 0.0;
        for (i, h) in self.hinges.iter().enumerate() {
            let place = |body: usize, local: P| {
                let (at, cos, sin) = self.next[body];
                p(at.x + cos * local.x - sin * local.y, at.y + sin * local.x + cos * local.y)
            };
            let (a, b) = (place(h.parent, h.on_parent), place(h.child, h.on_child));
            let gap = p(b.x - a.x, b.y - a.y);
            most = most.max(gap.x.abs()).max(gap.y.abs());
            self.rest[i] = p(-gap.x / dt_s, -gap.y / dt_s);
        }
        most
    }

    /// The impulses that take those speeds away, in place of them.
    fn solve(&mut self) {
        for late in (0..self.hinges.len()).rev() {
            let x = on(&self.diagonal[late], self.rest[late]);
            for k in self.mine[late].0.clone() {
                let off = on(&turned(&self.beside[k]), x);
                let r = &mut self.rest[self.pairs[k].early];
                (r.x, r.y) = (r.x - off.x, r.y - off.y);
            }
        }
        for late in 0..self.hinges.len() {
            let mut r = self.rest[late];
            for k in self.mine[late].0.clone() {
                let off = on(&self.beside[k], self.rest[self.pairs[k].early]);
                (r.x, r.y) = (r.x - off.x, r.y - off.y);
            }
            self.rest[late] = on(&self.diagonal[late], r);
        }
    }

    /// Lets the impulses act.
    fn strike(&mut self) {
        for (i, h) in self.hinges.iter().enumerate() {
            let (j, (ra, rb)) = (self.rest[i], self.arms[i]);
            for (body, arm, sign) in [(h.parent, ra, -1.0), (h.child, rb, 1.0)] {
                let b = &mut self.all[body];
                b.velocity.x += sign * j.x * b.gives.0;
                b.velocity.y += sign * j.y * b.gives.0;
                b.turn_rad_s += sign * (arm.x * j.y - arm.y * j.x) * b.gives.1;
            }
        }
    }
}

/// What an impulse at `there` does to the speed at `here`, both lever arms of one body.
fn gives(b: &Body, here: P, there: P) -> Block {
    let (m, i) = b.gives;
    [m + here.y * there.y * i, -here.y * there.x * i, -here.x * there.y * i, m + here.x * there.x * i]
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rod(at: P, angle_rad: f64, mass_kg: f64, inertia_kg_m2: f64) -> Body {
        Body::new(mass_kg, inertia_kg_m2, Pose { at, angle_rad }, p(0.0, 0.0), 0.0)
    }

    fn hinge(parent: usize, on_parent: P, child: usize, on_child: P) -> Hinge {
        Hinge {
            parent,
            on_parent,
            child,
            on_child,
            limits_rad: [-9.0, 9.0],
            tone_per_s: 0.0,
            inertia_kg_m2: 0.0,
        }
    }

    #[test]
    fn sines_of_small_turns_are_sines() {
        for i in -100..=100 {
            let a = f64::from(i) * 1e-3;
            let (s, c) = sin_cos(a);
            assert!((s - a.sin()).abs() < 1e-16 && (c - a.cos()).abs() < 2e-16, "{a}");
        }
    }

    /// A rod on a hinge at its end against a mass that does not give: T = 2 pi sqrt(I / (m g l)) for small
    /// swings, I about the hinge (any mechanics text). 1 m, 3 kg: I = 1, T = 2 pi sqrt(1 / 14.709975) s.
    #[test]
    fn a_rod_swings_with_its_period() {
        let all = vec![
            rod(p(0.0, 0.0), 0.0, 1e12, 1e12),
            rod(p(0.5 * 0.01f64.sin(), -0.5 * 0.01f64.cos()), 0.01, 3.0, 0.25),
        ];
        let mut w = Bodies::new(all, vec![hinge(0, p(0.0, 0.0), 1, p(0.0, 0.5))]);
        let dt_s = 1e-3;
        let (mut last, mut crossed) = (1.0, Vec::new());
        for n in 1..4000 {
            for b in &mut w.all {
                b.kick((p(0.0, b.mass_kg * G_M_S2 * f64::from(b.mass_kg > 1e9)), 0.0), dt_s);
            }
            w.drift(dt_s);
            let s = w.all[1].sin;
            if last > 0.0 && s <= 0.0 {
                crossed.push((f64::from(n) - s / (s - last)) * dt_s);
            }
            last = s;
        }
        let period_s = crossed[1] - crossed[0];
        let want_s = 2.0 * core::f64::consts::PI / 14.709975f64.sqrt();
        assert!((period_s / want_s - 1.0).abs() < 2e-5, "{period_s} {want_s}");
        assert!(w.gap_m() < 1e-7);
    }

    /// A tree that branches: thrown and spinning, it keeps its momentum, its turning about its own centre and
    /// its energy, and its hinges stay closed, for seconds.
    #[test]
    fn a_branching_tree_in_flight_keeps_what_it_has() {
        let all = vec![
            rod(p(0.0, 0.0), 0.0, 5.0, 0.4),
            rod(p(0.0, -1.0), 0.0, 2.0, 0.1),
            rod(p(0.0, 1.0), 0.0, 3.0, 0.2),
            rod(p(0.0, -2.0), 0.0, 1.0, 0.1),
            rod(p(0.5, -1.5), core::f64::consts::FRAC_PI_2, 1.5, 0.1),
        ];
        let hinges = vec![
            hinge(0, p(0.0, -0.5), 1, p(0.0, 0.5)),
            hinge(0, p(0.0, 0.5), 2, p(0.0, -0.5)),
            hinge(1, p(0.0, -0.5), 3, p(0.0, 0.5)),
            hinge(1, p(0.0, -0.5), 4, p(0.0, 0.5)),
        ];
        let mut w = Bodies::new(all, hinges);
        assert!(w.gap_m() < 1e-12, "{}", w.gap_m());
        w.all[3].turn_rad_s = 8.0;
        w.all[2].velocity = p(1.0, 0.0);
        let dt_s = 1e-3;
        let told = |w: &Bodies| {
            let m: f64 = w.all.iter().map(|b| b.mass_kg).sum();
            let of = |f: fn(&Body) -> f64| w.all.iter().map(|b| b.mass_kg * f(b)).sum::<f64>() / m;
            let (cx, cy) = (of(|b| b.at.x), of(|b| b.at.y));
            let (vx, vy) = (of(|b| b.velocity.x), of(|b| b.velocity.y));
            let spin: f64 = w
                .all
                .iter()
                .map(|b| {
                    // Positions half a step back, where the velocities are.
                    let (x, y) = (
                        b.at.x - cx - dt_s / 2.0 * (b.velocity.x - vx),
                        b.at.y - cy - dt_s / 2.0 * (b.velocity.y - vy),
                    );
                    b.mass_kg * (x * (b.velocity.y - vy) - y * (b.velocity.x - vx))
                        + b.inertia_kg_m2 * b.turn_rad_s
                })
                .sum();
            let kinetic: f64 = w.all.iter().map(Body::kinetic_j).sum();
            (vx * m, spin, kinetic - 0.5 * m * vy * vy)
        };
        let step = |w: &mut Bodies| {
            for b in &mut w.all {
                b.kick((p(0.0, 0.0), 0.0), dt_s);
            }
            w.drift(dt_s);
        };
        step(&mut w);
        let first = told(&w);
        let mut energy = (first.2, first.2);
        for _ in 0..3000 {
            step(&mut w);
            let now = told(&w);
            assert!(
                (now.0 - first.0).abs() < 1e-9 && (now.1 - first.1).abs() < 1e-6 * first.1.abs(),
                "{now:?} {first:?}"
            );
            energy = (energy.0.min(now.2), energy.1.max(now.2));
            assert!(w.gap_m() < 2.0 * CLOSED_M);
        }
        assert!((energy.1 - energy.0) < 1e-3 * first.2, "{energy:?}");
    }
}
