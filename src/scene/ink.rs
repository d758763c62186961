//! Paths of a picture, in centimetres with y up: the same strings in the page, in its first HTML and in tests.

use super::Sag;
use crate::geometry::{P, p};

/// One path of a picture: what it is drawn as, and where.
#[derive(Clone, Debug, PartialEq)]
pub struct Shape {
    /// What it is, for the style sheet.
    pub class: &'static str,
    /// SVG path data, cm, y up.
    pub d: String,
}

impl Shape {
    /// A shape of a class.
    pub fn new(class: &'static str, d: String) -> Shape {
        Shape { class, d }
    }
}

/// Metres as centimetres, to a millimetre.
pub fn cm(x: f64) -> f64 {
    (x * 1000.0).round() / 10.0
}

/// A line through points.
pub fn line(points: &[P]) -> String {
    let mut d = String::new();
    for (i, q) in points.iter().enumerate() {
        d.push_str(&format!("{}{} {}", if i == 0 { "M" } else { "L" }, cm(q.x), cm(q.y)));
    }
    d
}

/// A closed outline.
pub fn closed(points: &[P]) -> String {
    if points.is_empty() { String::new() } else { line(points) + "Z" }
}

/// A rectangle from corner to corner.
pub fn rect(a: P, b: P) -> String {
    closed(&[a, p(b.x, a.y), b, p(a.x, b.y)])
}

/// A circle.
pub fn circle(c: P, radius_m: f64) -> String {
    let (r, d) = (cm(radius_m), cm(2.0 * radius_m));
    format!("M{} {}a{r} {r} 0 1 0 {d} 0a{r} {r} 0 1 0 -{d} 0Z", cm(c.x - radius_m), cm(c.y))
}

/// A curve with one control point.
pub fn curve(s: &Sag) -> String {
    format!(
        "M{} {}Q{} {} {} {}",
        cm(s.from.x),
        cm(s.from.y),
        cm(s.via.x),
        cm(s.via.y),
        cm(s.to.x),
        cm(s.to.y)
    )
}

/// The torn part of an absorber: webbing let out in folds.
pub fn folds(a: P, b: P) -> String {
    let l = a.dist(b);
    if l < 0.01 {
        return String::new();
    }
    let n = ((l / 0.05) as usize).clamp(2, 40);
    let (ux, uy) = ((b.x - a.x) / l, (b.y - a.y) / l);
    let points: Vec<P> = (0..=n)
        .map(|i| {
            let k = i as f64 / n as f64;
            let side = if i == 0 || i == n {
                0.0
            } else if i % 2 == 0 {
                0.035
            } else {
                -0.035
            };
            p(a.x + (b.x - a.x) * k - uy * side, a.y + (b.y - a.y) * k + ux * side)
        })
        .collect();
    line(&points)
}

/// A place with two directions of its own: along and across.
#[derive(Clone, Copy, Debug)]
pub struct Turned {
    /// Its middle.
    pub at: P,
    /// Turned to the left by this much, rad.
    pub by_rad: f64,
}

impl Turned {
    /// A point `x` along and `y` across.
    pub fn place(self, x: f64, y: f64) -> P {
        let (s, c) = (libm::sin(self.by_rad), libm::cos(self.by_rad));
        p(self.at.x + c * x - s * y, self.at.y + s * x + c * y)
    }

    /// Points in its own directions.
    pub fn all(self, points: &[(f64, f64)]) -> Vec<P> {
        points.iter().map(|q| self.place(q.0, q.1)).collect()
    }
}
