//! At the eave with two links: the picture of a set-up, and the link that the engine does not need drawn beside it.

use super::camera::Frame;
use super::figure::figure;
use super::ink::{Shape, Turned, closed, line};
use super::standing_scene;
use crate::geometry::{Geometry, P, p};
use crate::practice::eave::{Holds, Link, Links, RAILS_PAST_M};
use crate::scenario::Scenario;

/// Where each link's grab is, m: of the first, of the second; none where it is not clipped.
pub fn grabs(links: Links, g: &Geometry) -> [Option<P>; 2] {
    let below = p(g.eave.x + 0.03, g.eave.y - 0.32);
    // Two above are a hand apart.
    let next = |m: f64| g.grab.lerp(g.anchor, m / g.grab.dist(g.anchor).max(0.1));
    match (links.a, links.b) {
        (Link::Below, Link::Above) => [Some(below), Some(g.grab)],
        (Link::Above, Link::Above) => [Some(next(0.4)), Some(g.grab)],
        (Link::Off, Link::Off) => [None, None],
        (Link::Off, _) => [None, Some(g.grab)],
        _ => [Some(g.grab), None],
    }
}

/// What is seen of the edge from near.
pub fn near(g: &Geometry, stature_m: f64) -> Frame {
    Frame {
        left_m: g.eave.x - 2.6,
        right_m: g.eave.x + 1.9,
        bottom_m: g.soles.y.min(g.eave.y - 0.6) - 0.3,
        top_m: (g.soles.y + stature_m).max(g.ladder.tip.y) + 0.3,
    }
}

/// The worker standing there: what the engine runs, and the other link.
pub fn standing(links: Links, s: &Scenario, g: &Geometry) -> Vec<Shape> {
    let mut out = figure(&standing_scene(s, g), s, g);
    if links.holds() == Holds::Nothing {
        // What is on nobody hangs from the harness, not from the line.
        out.retain(|q| !["lanyard", "torn", "pack", "label-mark"].contains(&q.class));
        out.push(Shape::new(
            "lanyard",
            line(&[g.dring, p(g.dring.x + 0.1, g.dring.y - 0.3), p(g.dring.x + 0.07, g.dring.y - 0.62)]),
        ));
    }
    let [a, b] = grabs(links, g);
    let other = if links.holds() == Holds::Either { a.filter(|q| q.dist(g.grab) > 0.05).or(b) } else { None };
    if let Some(at) = other {
        let t = Turned { at, by_rad: libm::atan2(-g.down_slope.x, g.down_slope.y) };
        out.push(Shape::new(
            "lanyard other",
            line(&[g.dring, p((g.dring.x + at.x) / 2.0 + 0.12, (g.dring.y + at.y) / 2.0 - 0.1), at]),
        ));
        out.push(Shape::new(
            "case",
            closed(&t.all(&[(-0.08, -0.13), (0.08, -0.13), (0.08, 0.13), (-0.08, 0.13)])),
        ));
    }
    // A pad under the line, and the tie from the rails to an eye in the roof.
    let d = g.down_slope;
    let on = |back: f64, off: f64| p(g.eave.x - back * d.x - off * d.y, g.eave.y - back * d.y + off * d.x);
    out.push(Shape::new(
        "edge-pad",
        closed(&[
            on(0.32, 0.0),
            on(0.32, 0.05),
            on(-0.04, 0.06),
            p(g.eave.x + 0.06, g.eave.y - 0.16),
            p(g.eave.x, g.eave.y - 0.16),
            on(0.0, 0.0),
        ]),
    ));
    let rail = g.ladder.foot.lerp(g.ladder.tip, 1.0 - 0.8 * RAILS_PAST_M / g.ladder.foot.dist(g.ladder.tip));
    out.push(Shape::new("tie", line(&[rail, on(0.7, 0.02)])));
    out
}
