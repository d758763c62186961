//! The house from in front: what a section cannot show, the way along the wall. x runs along the wall from the
//! anchor's plumb line, y is height; the roof is seen as it rises, so a rope that lies on it is drawn where its
//! straight line on the unfolded roof and wall comes to lie.
//!
//! Windows, door and downspout are the house's own and stand for scale; what a swing meets is asked of the
//! person, since no set-up says where it stands.

use super::house::courses;
use super::ink::{Shape, Turned, circle, closed, cm, line, rect};
use crate::geometry::{DRING_SHARE, Geometry, P, p, taut_path};
use crate::practice::houses::HouseKind;
use crate::scenario::{Scenario, Stance};
use crate::studies::along_wall::Swing;

/// Half the house's length along the wall, m.
const HALF_M: f64 = 6.2;
/// Width of the ladder between its rails, m (29 CFR 1926.1053(a)(4): at least 11.5 in; 16 in is common).
const RAILS_M: f64 = 0.4;

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
    /// Something in the way, m along the wall.
    pub thing_m: Option<f64>,
    /// How far along one may work, m.
    pub reach_m: Option<f64>,
}

impl Front<'_> {
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
        let mut out = Vec::new();
        self.house(&mut out);
        self.reach(&mut out);
        self.ladder(&mut out);
        self.fall(&mut out);
        out
    }

    fn house(&self, out: &mut Vec<Shape>) {
        let g = self.g;
        let (eave, ridge, floor) = (g.eave.y, g.ridge.y, 0.0);
        let ground = g.ground_y_m(g.ladder.foot.x);
        out.push(Shape::new("earth", rect(p(-20.0, ground), p(20.0, ground - 12.0))));
        out.push(Shape::new("concrete", rect(p(-HALF_M, 0.2), p(HALF_M, ground))));
        out.push(Shape::new("siding", rect(p(-HALF_M, 0.2), p(HALF_M, eave))));
        let laps: String = (1..)
            .map(|i| 0.2 + 0.18 * f64::from(i))
            .take_while(|y| *y < eave)
            .map(|y| line(&[p(-HALF_M, y), p(HALF_M, y)]))
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
        out.push(Shape::new("board", rect(p(HALF_M - 0.28, floor), p(HALF_M - 0.18, eave))));
        // The roof rises behind the eave; its courses lie level.
        out.push(Shape::new("roofing", rect(p(-HALF_M - 0.35, eave), p(HALF_M + 0.35, ridge))));
        let sheets: String = (1..)
            .map(|i| eave + 0.14 * (ridge - eave) / g.ridge.dist(g.eave) * 2.0 * f64::from(i))
            .take_while(|y| *y < ridge - 0.03)
            .map(|y| line(&[p(-HALF_M - 0.35, y), p(HALF_M + 0.35, y)]))
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
        out.push(Shape::new("gutter", rect(p(-HALF_M - 0.35, eave - 0.13), p(HALF_M + 0.35, eave))));
        out.push(Shape::new("ground", line(&[p(-20.0, ground), p(20.0, ground)])));
        out.push(Shape::new("plumb", line(&[g_anchor(g), p(0.0, ground)])));
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
        out.push(Shape::new("beyond", line(&[p(-HALF_M, y), p(-m, y)]) + &line(&[p(m, y), p(HALF_M, y)])));
    }

    fn ladder(&self, out: &mut Vec<Shape>) {
        if !matches!(self.s.stance, Stance::Ladder { .. }) {
            return;
        }
        let (foot, tip) = (self.g.ladder.foot.y, self.g.ladder.tip.y);
        let x = self.along_m;
        let half = RAILS_M / 2.0;
        let n = ((tip - foot) / 0.3).max(1.0) as usize;
        let rungs: String = (1..=n)
            .map(|i| foot + (tip - foot) * i as f64 / (n as f64 + 0.5))
            .map(|y| line(&[p(x - half, y), p(x + half, y)]))
            .collect();
        out.push(Shape::new("rung", rungs));
        for side in [-1.0, 1.0] {
            let at = x + side * half;
            out.push(Shape::new("rail", rect(p(at - 0.035, foot), p(at + 0.035, tip))));
        }
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
        out.push(Shape::new("casing", rope(ring.x, down)));
        out.push(Shape::new("rope", rope(ring.x, down)));
        out.push(Shape::new(
            "rope tail",
            line(&[p(ring.x - 0.12, ring.y + 0.1), p(ring.x - 0.12, g.ground_y_m(g.ladder.foot.x) + 0.03)]),
        ));
        // Who leans out keeps the boots on the rung.
        let lean_rad = libm::atan2(lean, self.s.worker.stature_m * DRING_SHARE);
        out.extend(behind(ring, self.s.worker.stature_m, false, -lean_rad));
        out.push(Shape::new("anchor", circle(g_anchor(g), 0.09)));
    }
}

fn g_anchor(g: &Geometry) -> P {
    p(0.0, g.anchor.y)
}

/// The worker from behind with the ring at a point; turned so far, rad; as bones where it is only how
/// it ends.
fn behind(ring: P, stature_m: f64, bones: bool, turned_rad: f64) -> Vec<Shape> {
    let k = stature_m * DRING_SHARE / 1.4;
    let t = Turned { at: ring, by_rad: turned_rad };
    let q = |x: f64, y: f64| t.place(x * k, y * k);
    let leg = |side: f64| [q(0.08 * side, -0.46), q(0.13 * side, -0.9), q(0.11 * side, -1.33)];
    let arm = |side: f64| {
        if bones {
            [q(0.17 * side, 0.1), q(0.25 * side, -0.15), q(0.22 * side, -0.4)]
        } else {
            [q(0.17 * side, 0.1), q(0.3 * side, -0.06), q(0.21 * side, 0.27)]
        }
    };
    let back =
        [q(-0.19, 0.13), q(0.19, 0.13), q(0.155, -0.2), q(0.15, -0.5), q(-0.15, -0.5), q(-0.155, -0.2)];
    let head = circle(q(0.0, 0.3), 0.105 * k);
    if bones {
        return vec![
            Shape::new("bone", head),
            Shape::new("bone", closed(&back)),
            Shape::new("bone", line(&leg(-1.0)) + &line(&leg(1.0)) + &line(&arm(-1.0)) + &line(&arm(1.0))),
        ];
    }
    let mut out = Vec::new();
    for side in [-1.0, 1.0] {
        out.push(Shape::new("limb ink arm", line(&arm(side))));
        out.push(Shape::new("limb cloth arm", line(&arm(side))));
        out.push(Shape::new("hand", circle(arm(side)[2], 0.05)));
    }
    for side in [-1.0, 1.0] {
        let l = leg(side);
        out.push(Shape::new("limb ink thigh", line(&l)));
        out.push(Shape::new("limb cloth thigh", line(&l)));
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
    out.push(Shape::new("face", circle(q(0.0, 0.24), 0.085 * k)));
    out.push(Shape::new("torso", closed(&back)));
    // Straps cross at the ring; belt and leg loops below.
    out.push(Shape::new(
        "strap",
        line(&[q(-0.14, 0.13), ring, q(0.13, -0.42)])
            + &line(&[q(0.14, 0.13), ring, q(-0.13, -0.42)])
            + &line(&[q(-0.145, -0.43), q(0.145, -0.43)])
            + &line(&[q(-0.16, -0.62), q(-0.03, -0.66)])
            + &line(&[q(0.03, -0.66), q(0.16, -0.62)]),
    ));
    // A helmet from behind has no peak, but a rim.
    let (a, b) = (q(-0.135, 0.27), q(0.135, 0.27));
    out.push(Shape::new(
        "helmet",
        format!("M{} {}A{r} {r} 0 0 0 {} {}Z", cm(a.x), cm(a.y), cm(b.x), cm(b.y), r = cm(0.135 * k)),
    ));
    out.push(Shape::new("dring", circle(ring, 0.055)));
    out
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
        let f = Front { s: &s, g: &g, along_m: 2.0, swing: None, thing_m: None, reach_m: None };
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
        let f = Front { s: &s, g: &g, along_m: 2.0, swing: None, thing_m: None, reach_m: None };
        assert!(f.shapes().iter().all(|q| !["swing", "bone", "band", "blow-ring"].contains(&q.class)));
        let all = crate::studies::along_wall::swings(&s.set_up().expect("possible"));
        let w = all.iter().find(|w| (w.offset_m - 2.0).abs() < 0.1);
        assert!(Front { swing: w, ..f }.shapes().iter().any(|q| q.class == "swing"));
    }
}
