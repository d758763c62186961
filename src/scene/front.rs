//! The house from in front: what a section cannot show, the way along the wall. x runs along the wall from the
//! anchor's plumb line, y is height; the roof is seen as it rises, so a rope that lies on it is drawn where its
//! straight line on the unfolded roof and wall comes to lie.
//!
//! Windows, door and downspout are the house's own and stand for scale; what a swing meets is asked of the
//! person, since no set-up says where it stands.

use super::house::courses;
use super::ink::{Shape, Turned, circle, closed, cm, line, rect};
use super::worker::Bones;
use super::{Gone, Scene};
use crate::geometry::{DRING_SHARE, Geometry, P, p, taut_path};
use crate::physics::ladder::{Footing, TIPS_RAD_S, stand};
use crate::practice::houses::HouseKind;
use crate::scenario::{Arrow, Scenario, Stance};
use crate::studies::along_wall::{Moment, Swing};
use crate::units::G_M_S2;

/// Half the usual house's length along the wall, m.
pub const HALF_M: f64 = 6.2;
/// Width of the ladder between its rails, m (29 CFR 1926.1053(a)(4): at least 11.5 in; 16 in is common).
const RAILS_M: f64 = 0.4;
/// From the lean to hanging plumb under the ring, s; only of the drawing.
const HANGS_S: f64 = 0.4;

/// What is shown of a set-up from in front.
#[derive(Clone, Copy, Debug)]
pub struct Front<'a> {
    /// The set-up.
    pub s: &'a Scenario,
    /// Its places.
    pub g: &'a Geometry,
    /// Where the worker stands, m along the wall from the anchor's plumb line.
    pub along_m: f64,
    /// The fall from there, once it may be seen.
    pub swing: Option<&'a Swing>,
    /// A moment of the section's fall: the same scene, and how long after the slip, s.
    pub moment: Option<(&'a Scene, f64)>,
    /// A moment of the swing: where the ring is. Nothing else of the swing is drawn then.
    pub swung: Option<Moment>,
    /// Something in the way, m along the wall.
    pub thing_m: Option<f64>,
    /// How far along one may work, m.
    pub reach_m: Option<f64>,
    /// Half the house's length along the wall, m.
    pub half_m: f64,
}

impl<'a> Front<'a> {
    /// A set-up as it stands under its anchor.
    pub fn of(s: &'a Scenario, g: &'a Geometry) -> Front<'a> {
        Front {
            s,
            g,
            along_m: 0.0,
            swing: None,
            moment: None,
            swung: None,
            thing_m: None,
            reach_m: None,
            half_m: HALF_M,
        }
    }

    /// Length of the roof under the rope, m: from the anchor, over the ridge where it lies behind it.
    fn roof_m(&self) -> f64 {
        let g = self.g;
        let over = taut_path(g.anchor, &g.corners, p(g.eave.x + 0.2, g.eave.y - 1.0));
        over.windows(2).take_while(|w| w[1].y > g.eave.y - 0.01).map(|w| w[0].dist(w[1])).sum()
    }

    /// A point of the unfolded sheet where it is seen.
    fn at(&self, x_m: f64, down_m: f64) -> P {
        let roof_m = self.roof_m();
        let g = self.g;
        if down_m < roof_m {
            p(x_m, g.anchor.y + (g.eave.y - g.anchor.y) * down_m / roof_m)
        } else {
            p(x_m, g.eave.y - (down_m - roof_m))
        }
    }

    /// How far down the unfolded sheet the ring is before the slip, m.
    fn ring_down_m(&self) -> f64 {
        self.roof_m() + (self.g.eave.y - self.g.dring.y)
    }

    /// The part of the plane that shows it all, m: left, bottom, right, top.
    pub fn bounds(&self) -> super::camera::Frame {
        let low = self.swing.map_or(0.0, |w| w.free.path.iter().fold(0.0_f64, |a, q| a.min(q.x_m)));
        let left = (low - 0.9).min(-2.4).min(-self.reach_m.unwrap_or(0.0) - 0.6);
        let right = (self.along_m + 1.1)
            .max(3.0)
            .max(self.reach_m.unwrap_or(0.0) + 0.6)
            .max(self.thing_m.unwrap_or(0.0) + 0.6);
        super::camera::Frame {
            left_m: left,
            right_m: right,
            bottom_m: self.g.ground_y_m(self.g.ladder.foot.x) - 0.4,
            top_m: self.g.ridge.y.max(self.g.dring.y + 0.6) + 0.5,
        }
    }

    /// Everything, back to front.
    pub fn shapes(&self) -> Vec<Shape> {
        let mut out = self.behind();
        out.extend(self.moving());
        out
    }

    /// The house and what is told on it, back to front.
    pub fn behind(&self) -> Vec<Shape> {
        let mut out = Vec::new();
        self.house(&mut out);
        self.reach(&mut out);
        out
    }

    /// Ladder, rope and worker.
    pub fn moving(&self) -> Vec<Shape> {
        let g = self.g;
        let plumb = line(&[g_anchor(g), p(0.0, g.ground_y_m(g.ladder.foot.x))]);
        let mut out = vec![Shape::new("plumb", plumb)];
        self.ladder(&mut out);
        self.fall(&mut out);
        out
    }

    /// The same part of the house as a frame of the section shows, with the anchor's plumb line in the middle.
    pub fn beside(section: super::camera::Frame) -> super::camera::Frame {
        let half_m = section.width_m() / 2.0;
        super::camera::Frame { left_m: -half_m, right_m: half_m, ..section }
    }

    fn house(&self, out: &mut Vec<Shape>) {
        let g = self.g;
        let (eave, ridge, floor) = (g.eave.y, g.ridge.y, 0.0);
        let ground = g.ground_y_m(g.ladder.foot.x);
        out.push(Shape::new("earth", rect(p(-20.0, ground), p(20.0, ground - 12.0))));
        out.push(Shape::new("concrete", rect(p(-self.half_m, 0.2), p(self.half_m, ground))));
        out.push(Shape::new("siding", rect(p(-self.half_m, 0.2), p(self.half_m, eave))));
        let laps: String = (1..)
            .map(|i| 0.2 + 0.18 * f64::from(i))
            .take_while(|y| *y < eave)
            .map(|y| line(&[p(-self.half_m, y), p(self.half_m, y)]))
            .collect();
        out.push(Shape::new("fine", laps));
        // Windows storey by storey, a door below, a downspout at the corner.
        let (mut frames, mut panes) = (String::new(), String::new());
        let mut y = 0.95;
        while y + 1.3 < eave {
            for x in [-4.6, -1.5, 1.5, 4.6] {
                if y < 1.0 && x == 1.5 {
                    continue;
                }
                frames.push_str(&rect(p(x - 0.5, y), p(x + 0.5, y + 1.15)));
                panes.push_str(
                    &(line(&[p(x, y), p(x, y + 1.15)])
                        + &line(&[p(x - 0.5, y + 0.57), p(x + 0.5, y + 0.57)])),
                );
            }
            y += 2.6;
        }
        out.push(Shape::new("room", frames.clone()));
        out.push(Shape::new("grain", panes));
        out.push(Shape::new("outline", frames));
        out.push(Shape::new("timber", rect(p(1.05, 0.15), p(1.95, 2.2))));
        out.push(Shape::new("board", rect(p(self.half_m - 0.28, floor), p(self.half_m - 0.18, eave))));
        // The roof rises behind the eave; its courses lie level.
        out.push(Shape::new("roofing", rect(p(-self.half_m - 0.35, eave), p(self.half_m + 0.35, ridge))));
        let sheets: String = (1..)
            .map(|i| eave + 0.14 * (ridge - eave) / g.ridge.dist(g.eave) * 2.0 * f64::from(i))
            .take_while(|y| *y < ridge - 0.03)
            .map(|y| line(&[p(-self.half_m - 0.35, y), p(self.half_m + 0.35, y)]))
            .collect();
        out.push(Shape::new("courses", sheets));
        match HouseKind::of(self.s) {
            Some(HouseKind::Cape) => {
                for x in [-3.6, 3.6] {
                    let (y0, y1) = (eave + 0.5, eave + 1.75);
                    out.push(Shape::new("siding", rect(p(x - 0.75, y0), p(x + 0.75, y1))));
                    out.push(Shape::new("room", rect(p(x - 0.4, y0 + 0.25), p(x + 0.4, y1 - 0.15))));
                    out.push(Shape::new(
                        "roofing",
                        closed(&[p(x - 0.95, y1), p(x, y1 + 0.6), p(x + 0.95, y1)]),
                    ));
                }
            }
            Some(HouseKind::TallGable) => {
                out.push(Shape::new("brick", rect(p(2.6, ridge - 0.4), p(3.3, ridge + 0.75))));
                out.push(Shape::new("grain", courses(2.6, 3.3, ridge - 0.4, ridge + 0.75)));
            }
            _ => {}
        }
        // A deck before the wall, where there is one.
        if let Some((_, _, top)) = g.obstacle {
            out.push(Shape::new("timber", rect(p(-self.half_m, top), p(self.half_m, top - 0.14))));
            let posts: String = (0..=6)
                .map(|i| self.half_m * (f64::from(i) / 3.0 - 1.0))
                .map(|x| rect(p(x - 0.05, top - 0.14), p(x + 0.05, ground)))
                .collect();
            out.push(Shape::new("timber", posts));
        }
        out.push(Shape::new(
            "gutter",
            rect(p(-self.half_m - 0.35, eave - 0.13), p(self.half_m + 0.35, eave)),
        ));
        out.push(Shape::new("ground", line(&[p(-20.0, ground), p(20.0, ground)])));
    }

    /// How far one may work, and where not: a solid band on the eave, a broken one beyond.
    fn reach(&self, out: &mut Vec<Shape>) {
        let Some(m) = self.reach_m else { return };
        let y = self.g.eave.y + 0.08;
        out.push(Shape::new("band", line(&[p(-m, y), p(m, y)])));
        out.push(Shape::new(
            "band-end",
            line(&[p(-m, y + 0.25), p(-m, y - 0.25)]) + &line(&[p(m, y + 0.25), p(m, y - 0.25)]),
        ));
        out.push(Shape::new(
            "beyond",
            line(&[p(-self.half_m, y), p(-m, y)]) + &line(&[p(m, y), p(self.half_m, y)]),
        ));
    }

    fn ladder(&self, out: &mut Vec<Shape>) {
        if !matches!(self.s.stance, Stance::Ladder { .. }) {
            return;
        }
        let (foot, tip) = self
            .moment
            .and_then(|(q, _)| q.ladder)
            .map_or((self.g.ladder.foot.y, self.g.ladder.tip.y), |(a, b)| (a.y, b.y));
        let (half, high) = (RAILS_M / 2.0, (tip - foot).max(0.1));
        // One that goes over sideways turns about the foot on the side that is leant to.
        let t = Turned { at: p(self.along_m + half, foot), by_rad: -self.tipped_rad() };
        let n = (high / 0.3).max(1.0) as usize;
        let rungs: String = (1..=n)
            .map(|i| high * i as f64 / (n as f64 + 0.5))
            .map(|y| line(&t.all(&[(-RAILS_M, y), (0.0, y)])))
            .collect();
        out.push(Shape::new("rung", rungs));
        for x in [-RAILS_M, 0.0] {
            let rail = [(x - 0.035, 0.0), (x + 0.035, 0.0), (x + 0.035, high), (x - 0.035, high)];
            out.push(Shape::new("rail", closed(&t.all(&rail))));
        }
    }

    /// How far the ladder has gone over sideways at this moment, rad: a rod that turns about its foot, from the
    /// speed at which the engine takes a ladder to begin.
    fn tipped_rad(&self) -> f64 {
        let Some((_, since_s)) = self.moment else { return 0.0 };
        if stand(self.s, self.g).is_none_or(|q| q.footing != Footing::TipsSideways) {
            return 0.0;
        }
        let long_m = self.g.ladder.foot.dist(self.g.ladder.tip).max(0.5);
        let (mut turned_rad, mut rad_s) = (0.0, TIPS_RAD_S);
        let steps = (since_s / 0.005) as usize;
        for _ in 0..steps {
            rad_s += 1.5 * G_M_S2 / long_m * libm::sin(turned_rad) * 0.005;
            turned_rad += rad_s * 0.005;
        }
        f64::min(turned_rad, core::f64::consts::FRAC_PI_2)
    }

    fn fall(&self, out: &mut Vec<Shape>) {
        let g = self.g;
        let lean =
            if matches!(self.s.stance, Stance::Ladder { .. }) { self.s.ladder.reach_out_m } else { 0.0 };
        let ring = p(self.along_m + lean, g.dring.y);
        let down = self.ring_down_m();
        if let Some(x) = self.thing_m {
            let top = if down < self.roof_m() { g.eave.y + 1.2 } else { g.eave.y };
            out.push(Shape::new("thing", line(&[p(x, g.ground_y_m(g.ladder.foot.x)), p(x, top)])));
        }
        // The rope crosses the eave where its straight line on the unfolded sheet does.
        let rope = |x: f64, d: f64| {
            let roof = self.roof_m();
            if d <= roof {
                line(&[self.at(0.0, 0.0), self.at(x, d)])
            } else {
                line(&[self.at(0.0, 0.0), self.at(x * roof / d, roof), self.at(x, d)])
            }
        };
        if let Some(q) = self.swung {
            let at = self.at(q.x_m, q.down_m);
            out.push(Shape::new("casing", rope(q.x_m, q.down_m)));
            out.push(Shape::new("rope", rope(q.x_m, q.down_m)));
            out.extend(behind(at, self.s.worker.stature_m, false, (q.speed_m_s * 0.08).clamp(-0.5, 0.5)));
            out.push(Shape::new("dring", circle(at, 0.055)));
            out.push(Shape::new("anchor", circle(g_anchor(g), 0.09)));
            return;
        }
        if let Some(w) = self.swing {
            let end = w
                .free
                .path
                .iter()
                .find(|q| q.x_m <= self.thing_m.unwrap_or(0.0))
                .or_else(|| w.free.path.iter().max_by(|a, b| a.down_m.total_cmp(&b.down_m)));
            let way: Vec<P> = w.free.path.iter().map(|q| self.at(q.x_m, q.down_m)).collect();
            out.push(Shape::new("swing", line(&way)));
            if let Some(f) = &w.held {
                out.push(Shape::new(
                    "sawn",
                    line(&[self.at(f.edge_m.0, self.roof_m()), self.at(f.edge_m.1, self.roof_m())]),
                ));
            }
            if let Some(q) = end {
                let at = self.at(q.x_m, q.down_m);
                out.push(Shape::new("rope gone", rope(q.x_m, q.down_m)));
                out.extend(behind(
                    at,
                    self.s.worker.stature_m,
                    true,
                    (ring.x - at.x).clamp(-1.0, 1.0) * 0.25,
                ));
                if self.thing_m.is_some_and(|x| w.free.speed_at_m_s(x).is_some()) {
                    out.push(Shape::new("blow-ring", circle(at, 0.26)));
                }
            }
        }
        self.hanging(&rope, lean, out);
        // What has let go is no longer there.
        if !self.moment.is_some_and(|(q, _)| matches!(q.gone, Gone::Anchor(_))) {
            out.push(Shape::new("anchor", circle(g_anchor(g), 0.09)));
        }
    }

    /// Rope, tail, lanyard, grab and worker: as the worker stands, or at a moment of the section's fall.
    fn hanging(&self, rope: &dyn Fn(f64, f64) -> String, lean_m: f64, out: &mut Vec<Shape>) {
        let g = self.g;
        let (ring_y, grab_y) = self.moment.map_or((g.dring.y, g.grab.y), |(q, _)| (q.dring.y, q.grab.y));
        let gone = self.moment.map_or(Gone::Nothing, |(q, _)| q.gone);
        let ring = p(self.along_m + lean_m, ring_y);
        // Where they are on the unfolded sheet: below the eave by height, on the roof by their share of its rise.
        let down = |y: f64| {
            let rise = (g.anchor.y - g.eave.y).max(0.01);
            if y < g.eave.y { self.roof_m() + g.eave.y - y } else { self.roof_m() * (g.anchor.y - y) / rise }
        };
        let (ring_down, grab_down) = (down(ring_y), down(grab_y).max(0.05));
        // The grab lies on the rope's line to the ring.
        let grab_x = ring.x * (grab_down / ring_down.max(0.1)).min(1.0);
        match gone {
            Gone::Anchor(_) | Gone::Rope => {}
            Gone::OffRope => out.push(Shape::new("rope", rope(0.0, self.roof_m() + 1.0))),
            Gone::Nothing | Gone::Link => {
                out.push(Shape::new("casing", rope(grab_x, grab_down)));
                out.push(Shape::new("rope", rope(grab_x, grab_down)));
                let tail_y = g.ground_y_m(g.ladder.foot.x) + 0.03;
                out.push(Shape::new("rope tail", line(&[p(grab_x, grab_y), p(grab_x, tail_y)])));
            }
        }
        let grab = p(grab_x, grab_y);
        let stature_m = self.s.worker.stature_m;
        // Who leans out keeps the boots on the rung, and hangs plumb once they have left it.
        let lean_rad = libm::atan2(lean_m, stature_m * DRING_SHARE);
        let bones = self.moment.and_then(|(q, since_s)| Some((Bones::of(&q.limbs)?, since_s)));
        out.extend(match bones {
            Some((b, since_s)) => {
                Back::of(&b, ring, lean_m / (stature_m * DRING_SHARE) * (1.0 - since_s / HANGS_S).max(0.0))
                    .drawn(ring)
            }
            None => behind(ring, stature_m, false, -lean_rad),
        });
        if self.s.lanyard.clipped && gone != Gone::Link {
            out.push(Shape::new("lanyard", line(&[grab, ring])));
        }
        let case = Turned { at: grab, by_rad: libm::atan2(grab_x - ring.x * 0.98, 1.0) * 0.5 };
        out.push(Shape::new(
            "case",
            closed(&case.all(&[(-0.08, -0.13), (0.08, -0.13), (0.08, 0.13), (-0.08, 0.13)])),
        ));
        let up = if self.s.grab.arrow == Arrow::Up { 1.0 } else { -1.0 };
        let arrow = [
            (0.0, 0.09),
            (0.05, 0.02),
            (0.018, 0.02),
            (0.018, -0.09),
            (-0.018, -0.09),
            (-0.018, 0.02),
            (-0.05, 0.02),
        ];
        out.push(Shape::new("arrow", closed(&case.all(&arrow.map(|(x, y)| (x, y * up))))));
        out.push(Shape::new("dring", circle(ring, 0.055)));
    }
}

fn g_anchor(g: &Geometry) -> P {
    p(0.0, g.anchor.y)
}

/// The worker's joints from behind: neck and hip, head, shoulder to hand and hip to ankle of both sides, left first.
struct Back {
    neck: P,
    hip: P,
    head: P,
    head_radius_m: f64,
    arms: [[P; 3]; 2],
    legs: [[P; 3]; 2],
}

impl Back {
    /// The section's joints at their own heights, as wide as a body is; `lean_ratio` is how far a point lies aside
    /// for each metre that it is over the ring.
    fn of(b: &Bones, ring: P, lean_ratio: f64) -> Back {
        let at = |x: f64, y: f64| p(ring.x + x + (y - ring.y) * lean_ratio, y);
        let leg = |side: f64, l: &[P; 3]| {
            [at(0.08 * side, l[0].y), at(0.13 * side, l[1].y), at(0.11 * side, l[2].y)]
        };
        let arm = |side: f64| {
            [at(0.17 * side, b.arm[0].y), at(0.3 * side, b.arm[1].y), at(0.21 * side, b.arm[2].y)]
        };
        Back {
            neck: at(0.0, b.neck.y),
            hip: at(0.0, b.hip.y),
            head: at(0.0, b.head.y),
            head_radius_m: b.head_radius_m,
            arms: [arm(-1.0), arm(1.0)],
            legs: [leg(-1.0, &b.near_leg), leg(1.0, &b.far_leg)],
        }
    }

    /// With the ring at a point, standing, turned so far, rad; hanging with the arms down where it is only how it ends.
    fn standing(t: Turned, k: f64, hangs: bool) -> Back {
        let q = |x: f64, y: f64| t.place(x * k, y * k);
        let leg = |side: f64| [q(0.08 * side, -0.46), q(0.13 * side, -0.9), q(0.11 * side, -1.33)];
        let arm = |side: f64| {
            if hangs {
                [q(0.17 * side, 0.1), q(0.25 * side, -0.15), q(0.22 * side, -0.4)]
            } else {
                [q(0.17 * side, 0.1), q(0.3 * side, -0.06), q(0.21 * side, 0.27)]
            }
        };
        Back {
            neck: q(0.0, 0.13),
            hip: q(0.0, -0.5),
            head: q(0.0, 0.27),
            head_radius_m: 0.12 * k,
            arms: [arm(-1.0), arm(1.0)],
            legs: [leg(-1.0), leg(1.0)],
        }
    }

    /// Shoulders, waist and hips as an outline; `across` is how wide, `along` how far down the back.
    fn on_back(&self, across_m: f64, along: f64) -> P {
        let d = self.neck.dist(self.hip).max(0.05);
        let (ux, uy) = ((self.hip.x - self.neck.x) / d, (self.hip.y - self.neck.y) / d);
        let c = self.neck.lerp(self.hip, along);
        // Across is to the right of the way from the hip up.
        p(c.x - uy * across_m, c.y + ux * across_m)
    }

    fn outline(&self) -> String {
        let q = |x: f64, k: f64| self.on_back(x, k);
        closed(&[q(-0.19, 0.0), q(0.19, 0.0), q(0.155, 0.52), q(0.15, 1.0), q(-0.15, 1.0), q(-0.155, 0.52)])
    }

    /// As bones: only how it ends.
    fn bones(&self) -> Vec<Shape> {
        vec![
            Shape::new("bone", circle(self.head, self.head_radius_m * 0.9)),
            Shape::new("bone", self.outline()),
            Shape::new("bone", self.legs.iter().chain(&self.arms).map(|l| line(l)).collect()),
        ]
    }

    /// Arms first: they reach to the ladder, away from us.
    fn drawn(&self, ring: P) -> Vec<Shape> {
        let mut out = Vec::new();
        for a in &self.arms {
            out.push(Shape::new("limb ink arm", line(a)));
            out.push(Shape::new("limb cloth arm", line(a)));
            out.push(Shape::new("hand", circle(a[2], 0.05)));
        }
        for l in &self.legs {
            out.push(Shape::new("limb ink thigh", line(l)));
            out.push(Shape::new("limb cloth thigh", line(l)));
            let a = l[2];
            out.push(Shape::new(
                "boot",
                closed(&[
                    p(a.x - 0.06, a.y + 0.04),
                    p(a.x + 0.06, a.y + 0.04),
                    p(a.x + 0.075, a.y - 0.07),
                    p(a.x - 0.075, a.y - 0.07),
                ]),
            ));
        }
        let r = self.head_radius_m;
        out.push(Shape::new("face", circle(self.head, r * 0.75)));
        out.push(Shape::new("torso", self.outline()));
        // Straps cross at the ring; belt and leg loops below.
        let q = |x: f64, k: f64| self.on_back(x, k);
        let looped = |l: &[P; 3], wide: f64| {
            let a = l[0].lerp(l[1], 0.35);
            line(&[p(a.x - wide, a.y), p(a.x + wide, a.y)])
        };
        out.push(Shape::new(
            "strap",
            line(&[q(-0.14, 0.0), ring, q(0.13, 0.87)])
                + &line(&[q(0.14, 0.0), ring, q(-0.13, 0.87)])
                + &line(&[q(-0.145, 0.89), q(0.145, 0.89)])
                + &self.legs.iter().map(|l| looped(l, 0.07)).collect::<String>(),
        ));
        // A helmet from behind has no peak, but a rim; it turns with the back.
        let d = self.neck.dist(self.head).max(0.02);
        let (ux, uy) = ((self.head.x - self.neck.x) / d, (self.head.y - self.neck.y) / d);
        let rim = |side: f64| p(self.head.x + uy * r * 1.12 * side, self.head.y - ux * r * 1.12 * side);
        let (a, b) = (rim(-1.0), rim(1.0));
        out.push(Shape::new(
            "helmet",
            format!("M{} {}A{r} {r} 0 0 0 {} {}Z", cm(a.x), cm(a.y), cm(b.x), cm(b.y), r = cm(1.12 * r)),
        ));
        out
    }
}

/// The worker from behind with the ring at a point; turned so far, rad; as bones where it is only how
/// it ends.
fn behind(ring: P, stature_m: f64, bones: bool, turned_rad: f64) -> Vec<Shape> {
    let back = Back::standing(Turned { at: ring, by_rad: turned_rad }, stature_m * DRING_SHARE / 1.4, bones);
    if bones { back.bones() } else { back.drawn(ring) }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The roof is seen as it rises: a point on the unfolded sheet at the eave is drawn at the eave, the anchor at
    /// its own height, and a metre below the eave a metre lower.
    #[test]
    fn the_unfolded_sheet_is_seen_where_it_stands() {
        let s = Scenario::default();
        let g = Geometry::of(&s).expect("stands");
        let f = Front { along_m: 2.0, ..Front::of(&s, &g) };
        // Ridge to eave on a roof of 6 in 12: 4 m of run are 4.472 m of slope.
        assert!((f.roof_m() - 20f64.sqrt()).abs() < 1e-9, "{}", f.roof_m());
        assert!((f.at(0.0, 0.0).y - 7.6).abs() < 1e-9);
        assert!((f.at(1.0, 20f64.sqrt()).y - 5.6).abs() < 1e-9);
        assert!((f.at(1.0, 20f64.sqrt() + 1.0).y - 4.6).abs() < 1e-9);
        // Halfway down the slope is halfway in height.
        assert!((f.at(0.0, 5f64.sqrt()).y - 6.6).abs() < 1e-9);
    }

    #[test]
    fn what_is_hidden_until_the_fall_is_not_drawn() {
        let s = Scenario::default();
        let g = Geometry::of(&s).expect("stands");
        let f = Front { along_m: 2.0, ..Front::of(&s, &g) };
        assert!(f.shapes().iter().all(|q| !["swing", "bone", "band", "blow-ring"].contains(&q.class)));
        let all = crate::studies::along_wall::swings(&s.set_up().expect("possible"));
        let w = all.iter().find(|w| (w.offset_m - 2.0).abs() < 0.1);
        assert!(Front { swing: w, ..f }.shapes().iter().any(|q| q.class == "swing"));
    }

    /// Section and front are the same moment: ring, grab, neck and boots lie at the heights that the section has.
    #[test]
    fn a_moment_from_in_front_has_the_heights_of_the_section() {
        let s = Scenario::default();
        let set_up = s.set_up().expect("possible");
        let g = set_up.geometry();
        let t = crate::physics::simulate(&set_up);
        for time_s in [0.0, 0.3, 0.59, 1.0] {
            let q = crate::scene::at(&s, g, &t, time_s).expect("a moment");
            let all = Front { moment: Some((&q, time_s)), ..Front::of(&s, g) }.moving();
            let of = |class: &str| {
                all.iter().filter(|x| x.class == class).map(|x| x.d.clone()).collect::<Vec<_>>()
            };
            let y = |d: &str| {
                d[1..].split(['L', ' ', 'a']).nth(1).and_then(|n| n.parse::<f64>().ok()).expect("a number")
            };
            assert!((y(&of("dring")[0]) / 100.0 - q.dring.y).abs() < 0.002);
            assert!((y(&of("lanyard")[0]) / 100.0 - q.grab.y).abs() < 0.002);
            let b = Bones::of(&q.limbs).expect("whole");
            assert!((y(&of("limb cloth arm")[0]) / 100.0 - b.arm[0].y).abs() < 0.002);
        }
    }

    /// A ladder that the worker has leant off goes over to that side. For small angles a rod that turns about its
    /// foot from 0.2 rad/s is at 0.2/k sinh(k t), with k² = 1.5 g/L (hand-worked from its moment of inertia, mL²/3).
    #[test]
    fn a_ladder_that_tips_sideways_is_seen_to_go() {
        let mut s = Scenario::default();
        s.ladder.tied = false;
        s.ladder.reach_out_m = 0.5;
        let set_up = s.set_up().expect("possible");
        let g = set_up.geometry();
        let t = crate::physics::simulate(&set_up);
        assert!(t.time_of(crate::physics::trace::EventKind::LadderTips).is_some());
        let q = crate::scene::at(&s, g, &t, 0.3).expect("a moment");
        let turned = Front { moment: Some((&q, 0.3)), ..Front::of(&s, g) }.tipped_rad();
        let k = (1.5 * 9.80665 / g.ladder.foot.dist(g.ladder.tip)).sqrt();
        let want = 0.2 / k * (k * 0.3).sinh();
        assert!((turned / want - 1.0).abs() < 0.05, "{turned} for {want}");
        assert!(Front::of(&s, g).tipped_rad() == 0.0);
        s.ladder.reach_out_m = 0.0;
        assert!(Front { moment: Some((&q, 0.3)), ..Front::of(&s, g) }.tipped_rad() == 0.0);
    }
}
