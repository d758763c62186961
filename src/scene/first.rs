//! What a phone sees before the app has started: the default set-up, drawn by the same code as afterwards.

use super::camera::work;
use super::figure::figure;
use super::house::house;
use super::ink::{Shape, cm};
use super::standing_scene;
use crate::geometry::Geometry;
use crate::scenario::Scenario;

/// What is too fine to be missed in the first second.
const LEFT_OUT: [&str; 5] = ["grain", "fine", "soil", "feature", "nails"];
/// The panes that it is drawn for, px: a phone's, and a laptop's.
const PHONE_PX: (f64, f64) = (390.0, 398.0);
const LAPTOP_PX: (f64, f64) = (1366.0, 594.0);

/// Whether all of a path lies left of the ridge, where no first frame reaches.
fn is_far(d: &str, ridge_cm: f64) -> bool {
    let numbers = d.split(|c: char| !(c.is_ascii_digit() || c == '.' || c == '-')).filter(|t| !t.is_empty());
    d.starts_with('M')
        && !d.contains(['a', 'h', 'v', 'l'])
        && numbers.step_by(2).all(|x| x.parse().is_ok_and(|x: f64| x < ridge_cm))
}

/// Path data without what a parser does not need: whole centimetres.
fn coarse(d: &str) -> String {
    let mut out = String::with_capacity(d.len());
    let mut decimals = false;
    for c in d.chars() {
        decimals = c == '.' || decimals && c.is_ascii_digit();
        if !decimals {
            out.push(c);
        }
    }
    out
}

/// The default set-up as SVG elements for the page's first HTML: one framed for a phone, one for a wide window.
pub fn picture() -> String {
    let s = Scenario::default();
    let Some(g) = Geometry::of(&s) else { return String::new() };
    let small = |q: &Shape| ["helmet", "face", "boot", "arrow"].iter().any(|c| q.class.starts_with(c));
    let all: String = house(&g, &s)
        .into_iter()
        .chain(figure(&standing_scene(&s, &g), &s, &g))
        .filter(|q| !q.d.is_empty() && !LEFT_OUT.contains(&q.class) && !is_far(&q.d, cm(g.ridge.x)))
        .map(|q| {
            let d = if small(&q) { q.d.clone() } else { coarse(&q.d) };
            format!("<path class=\"{}\" d=\"{d}\"/>", q.class)
        })
        .collect();
    let frame = |px| work(&g, &s, px, false).view_box();
    format!(
        "<svg class=\"drawing near\" viewBox=\"{}\" preserveAspectRatio=\"xMidYMid slice\" aria-hidden=\"true\"><g id=\"first\" transform=\"scale(1,-1)\">{all}</g></svg>\
         <svg class=\"drawing wide\" viewBox=\"{}\" preserveAspectRatio=\"xMidYMid slice\" aria-hidden=\"true\"><use href=\"#first\"/></svg>",
        frame(PHONE_PX),
        frame(LAPTOP_PX)
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Light enough to come with the page (8 KiB before it is packed), and the worker is in it.
    #[test]
    fn the_first_picture_is_light_and_has_the_worker_in_it() {
        let p = picture();
        assert!(p.len() < 8 * 1024, "{} bytes", p.len());
        assert!(p.contains("limb cloth trunk") && p.contains("class=\"rope\"") && p.contains("roofing"));
        assert_eq!(coarse("M-12.3 4.56L7 -0.2Z"), "M-12 4L7 -0Z");
    }
}
