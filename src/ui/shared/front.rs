//! The front view as a picture.

use super::figure::{defs, still};
use crate::geometry::Geometry;
use crate::scenario::Scenario;
use crate::scene::front::Front;
use crate::studies::along_wall::Swing;
use leptos::prelude::*;

/// A set-up from in front: the worker so far along the wall, the fall from there once it may be seen, something
/// in its way and how far one may work, m.
pub fn front(
    s: &Scenario,
    along_m: f64,
    swing: Option<&Swing>,
    (thing_m, reach_m): (Option<f64>, Option<f64>),
    label: String,
) -> impl IntoView + use<> {
    let g = Geometry::of(s);
    let shown = g.map(|g| {
        let f = Front { along_m, swing, thing_m, reach_m, ..Front::of(s, &g) };
        (f.bounds().view_box(), f.shapes())
    });
    shown.map(|(frame, shapes)| {
        view! { <svg class="drawing front" viewBox=frame preserveAspectRatio="xMidYMid meet" role="img" aria-label=label>{defs()}{still(shapes)}</svg> }
    })
}
