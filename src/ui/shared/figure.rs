//! The picture as elements: paths that the core has drawn, still ones once, moving ones by a signal. SVG in
//! centimetres inside one flipped group.

use super::settings::settings;
use crate::geometry::Geometry;
use crate::physics::trace::{EventKind, Trace};
use crate::scenario::Scenario;
use crate::scene::camera::whole;
use crate::scene::figure::figure;
use crate::scene::house::house;
use crate::scene::ink::Shape;
use crate::scene::standing_scene;
use leptos::prelude::*;

/// So long after an anchor let go it is seen on its way, s.
const SEEN_AFTER_S: f64 = 0.3;

/// The moment a still shows best: a little after the anchor has let go, else the first blow below, else the lowest
/// point, s.
pub fn decisive_s(t: &Trace) -> f64 {
    let landed = [EventKind::StrikesGround, EventKind::StrikesObstacle]
        .into_iter()
        .filter_map(|k| t.time_of(k))
        .reduce(f64::min);
    let gone = t
        .time_of(EventKind::AnchorFails)
        .map(|at_s| at_s + SEEN_AFTER_S)
        .filter(|at_s| landed.is_none_or(|l| *at_s < l));
    gone.or(landed).or_else(|| t.time_of(EventKind::Lowest)).unwrap_or(0.0)
}

/// Paths that stand still.
pub fn still(shapes: Vec<Shape>) -> impl IntoView {
    let all = shapes
        .into_iter()
        .filter(|q| !q.d.is_empty())
        .map(|q| view! { <path class=q.class d=q.d /> })
        .collect_view();
    view! { <g class="still" transform="scale(1,-1)">{all}</g> }
}

/// Paths that move: as many as there are at first, each with its class for good.
#[component]
pub fn Moving(shapes: Signal<Vec<Shape>>, class: &'static str) -> impl IntoView {
    let all = shapes.with_untracked(|all| {
        all.iter()
            .enumerate()
            .map(|(i, q)| {
                let d = move || shapes.with(|all| all.get(i).map_or(String::new(), |q| q.d.clone()));
                view! { <path class=q.class d=d /> }
            })
            .collect_view()
    });
    view! { <g class=class transform="scale(1,-1)">{all}</g> }
}

/// Hatching of the soil.
pub fn defs() -> impl IntoView {
    view! {
        <defs>
            <pattern id="hatch" width="22" height="22" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
                <path class="hatch" d="M0 0L0 22" />
            </pattern>
        </defs>
    }
}

/// A set-up as it stands, drawn small: nothing moves, nothing is told that the words beside do not.
#[component]
pub fn Still(set_up: RwSignal<Scenario>) -> impl IntoView {
    let geometry = Memo::new(move |_| set_up.with(Geometry::of));
    let shapes = Memo::new(move |_| {
        geometry.with(|g| g.as_ref().map_or(vec![], |g| set_up.with(|s| figure(&standing_scene(s, g), s, g))))
    });
    // The house stays while only the grab moves.
    let same_house = Memo::new(move |_| {
        set_up.with(|s| {
            let mut s = s.clone();
            s.grab = Default::default();
            s
        })
    });
    let settings = settings();
    let words = move || set_up.with(|s| crate::texts::say::state(settings.reader(), s).join(" "));
    let shown = move || {
        geometry.with(|g| {
            g.as_ref().map_or("0 0 100 100".to_owned(), |g| set_up.with(|s| whole(g, s)).view_box())
        })
    };
    let built = move || {
        let s = same_house.get();
        Geometry::of(&s).map(|g| still(house(&g, &s)))
    };
    view! {
        <svg class="drawing still-drawing" viewBox=shown preserveAspectRatio="xMidYMid meet" role="img" aria-label=words>
            {defs()}
            {built}
            <Moving shapes=shapes.into() class="figure" />
        </svg>
    }
}
