//! The front view of a fall along the wall.

use crate::studies::along_wall::Swing;
use leptos::prelude::*;

/// Roof between anchor and eave, m.
pub fn along_roof_m(s: &crate::scenario::Scenario) -> Option<f64> {
    crate::geometry::Geometry::of(s).map(|g| g.anchor.dist(g.eave))
}

/// Front view: anchor on the roof, eave, wall; the rope where the worker stands, the way of the
/// D-ring, the rope at the end of it, and how far along the eave one may go. Widths and heights in
/// metres.
pub fn front(
    w: &Swing,
    roof_m: f64,
    thing_m: Option<f64>,
    reach_m: Option<f64>,
    label: String,
) -> impl IntoView {
    let cm = |x: f64| (x * 100.0).round();
    let down_m = w.free.path.first().map_or(1.0, |q| q.down_m);
    let lowest_m = w.free.path.iter().fold(down_m, |a, q| a.max(q.down_m));
    let left =
        w.free.path.iter().fold(thing_m.unwrap_or(0.0).min(-reach_m.unwrap_or(0.0)), |a, q| a.min(q.x_m))
            - 0.7;
    let (right, bottom) =
        (w.offset_m.max(thing_m.unwrap_or(0.0)).max(reach_m.unwrap_or(0.0)).max(3.0) + 0.8, lowest_m + 1.4);
    let stand = (w.offset_m, down_m);
    // Where it passes under the anchor, or as low as it gets.
    let end = w
        .free
        .path
        .iter()
        .find(|q| q.x_m <= 0.0)
        .or_else(|| w.free.path.iter().max_by(|a, b| a.down_m.total_cmp(&b.down_m)))
        .map_or(stand, |q| (q.x_m.max(0.0), q.down_m));
    let way: String = w
        .free
        .path
        .iter()
        .enumerate()
        .map(|(i, q)| format!("{}{} {}", if i == 0 { "M" } else { "L" }, cm(q.x_m), cm(q.down_m)))
        .collect();
    // On the roof it may be a dormer's cheek or a chimney.
    let thing_top_m = if down_m < roof_m { 0.2 } else { roof_m };
    let band = reach_m.map(|m| {
        let (x, y) = (cm(m), cm(roof_m));
        view! {
            <path class="band" d=format!("M{} {y}H{x}", -x) />
            <path class="band end" d=format!("M{x} {}v36M{} {}v36", y - 18.0, -x, y - 18.0) />
        }
    });
    let sawn = w
        .held
        .as_ref()
        .map_or(String::new(), |f| format!("M{} {}H{}", cm(f.edge_m.0), cm(roof_m), cm(f.edge_m.1)));
    let figure = |x: f64, y: f64| {
        format!(
            "M{0} {1}v45M{0} {2}l-16 45M{0} {2}l16 45M{3} {4}h36",
            cm(x),
            cm(y),
            cm(y) + 45.0,
            cm(x) - 18.0,
            cm(y) + 12.0
        )
    };
    let wide = cm(right - left);
    view! {
        <svg class="front" viewBox=format!("{} -40 {} {}", cm(left), wide, cm(bottom) + 40.0) role="img" aria-label=label>
            <rect class="roofplane" x=cm(left) y="-40" width=wide height=cm(roof_m) + 40.0 />
            <rect class="wallplane" x=cm(left) y=cm(roof_m) width=wide height=cm(bottom - roof_m) />
            <path class="eave" d=format!("M{} {}H{}", cm(left), cm(roof_m), cm(right)) />
            {band}
            <path class="plumb" d=format!("M0 0V{}", cm(bottom)) />
            {thing_m.map(|x| view! { <path class="thing" d=format!("M{0} {1}V{2}", cm(x), cm(thing_top_m), cm(bottom)) /> })}
            <path class="rope" d=format!("M0 0L{} {}", cm(stand.0), cm(stand.1)) />
            <path class="rope gone" d=format!("M0 0L{} {}", cm(end.0), cm(end.1)) />
            <path class="swing" d=way />
            <path class="sawn" d=sawn />
            <path class="figure" d=figure(stand.0, stand.1) />
            <circle class="figure" cx=cm(stand.0) cy=cm(stand.1) - 14.0 r="13" />
            <path class="figure gone" d=figure(end.0, end.1) />
            <circle class="figure gone" cx=cm(end.0) cy=cm(end.1) - 14.0 r="13" />
            <circle class="ring" cx="0" cy="0" r="10" />
        </svg>
    }
}
