//! Points of the section plane, and a taut rope's way over corners.

use serde::{Deserialize, Serialize};

/// A point or a vector in the section plane, m.
#[derive(Clone, Copy, Debug, PartialEq, Default, Serialize, Deserialize)]
pub struct P {
    /// Away from the wall, m.
    pub x: f64,
    /// Up, m.
    pub y: f64,
}

/// Shorthand for a point.
pub const fn p(x: f64, y: f64) -> P {
    P { x, y }
}

impl P {
    /// Distance to `o`, m.
    pub fn dist(self, o: P) -> f64 {
        let (dx, dy) = (self.x - o.x, self.y - o.y);
        (dx * dx + dy * dy).sqrt()
    }
    /// `self + k (o - self)`.
    pub fn lerp(self, o: P, k: f64) -> P {
        p(self.x + (o.x - self.x) * k, self.y + (o.y - self.y) * k)
    }
}

/// Twice the signed area of a, b, c: negative when the turn is clockwise.
fn turn(a: P, b: P, c: P) -> f64 {
    (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)
}

/// The taut rope from `anchor` to `end` round the solid whose corners, clockwise, are `corners`:
/// the points it passes, both ends included. A corner is bent over while `end` lies below the
/// straight line past it; the first corner that is clear ends the walk. An `end` that lies on the
/// roof, or a little in it (a D-ring under a worker's back), is not past the eave.
pub fn taut_path(anchor: P, corners: &[P], end: P) -> Vec<P> {
    let mut out: Vec<P> = Vec::with_capacity(corners.len() + 2);
    let mut last = anchor;
    out.push(anchor);
    for &c in corners {
        let past = end.x > c.x || corners.last().is_some_and(|lowest| end.y < lowest.y);
        if !past || turn(last, c, end) >= 0.0 {
            break;
        }
        out.push(c);
        last = c;
    }
    out.push(end);
    out
}

/// Length of a polyline, m.
pub fn path_length(points: &[P]) -> f64 {
    points.windows(2).map(|w| w[0].dist(w[1])).sum()
}
