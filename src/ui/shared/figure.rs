//! The picture as elements: paths that the core has drawn, still ones once, moving ones by a signal. SVG in
//! centimetres inside one flipped group.

use super::settings::settings;
use crate::geometry::Geometry;
use crate::physics::trace::{EventKind, Trace};
use crate::scenario::Scenario;
use crate::scene::camera::whole;
use crate::scene::figure::{figure, ghost};
use crate::scene::house::house;
use crate::scene::ink::Shape;
use crate::scene::{at, standing_scene};
use crate::texts::Key;
use crate::texts::Room as W;
use crate::units::{Quantity, Rounding};
use leptos::prelude::*;
use std::sync::Arc;

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

/// A finished fall of a set-up.
pub type Fallen = (Scenario, Arc<Trace>);

/// A fall, or two over each other on one clock: the first solid, the second dashed. It begins where
/// the falls are decided, so that the difference shows without playing; or at the end.
#[component]
pub fn Falls(
    first: Fallen,
    #[prop(optional)] second: Option<Fallen>,
    #[prop(optional)] at_end: bool,
) -> impl IntoView {
    let settings = settings();
    let both = || core::iter::once(&first).chain(&second);
    let end_s = if at_end {
        first.1.duration_s()
    } else {
        both().fold(0.0_f64, |e, (_, t)| e.max(decisive_s(t) + 0.4))
    };
    let clock =
        RwSignal::new(if at_end { end_s } else { both().fold(0.0_f64, |e, (_, t)| e.max(decisive_s(t))) });
    let is_pair = second.is_some();
    let words = move || match (is_pair, at_end) {
        (true, _) => settings.t(Key::LessonGhost),
        (false, false) => settings.t(W::OneFall),
        (false, true) => settings.t(W::HangsStill),
    };
    let a = first.0.clone();
    let turn = StoredValue::new(0_u32);
    on_cleanup(move || {
        turn.try_update_value(|t| *t += 1);
    });
    let drawn = |s: &Scenario, t: Arc<Trace>, bones: bool| {
        let s = s.clone();
        let g = Geometry::of(&s);
        Memo::new(move |_| {
            let now = g.as_ref().and_then(|g| Some((g, at(&s, g, &t, clock.get())?)));
            now.map_or(vec![], |(g, q)| if bones { ghost(&q, g) } else { figure(&q, &s, g) })
        })
    };
    let first = drawn(&a, first.1, false);
    let other = second.map(|(b, t)| {
        let shapes = drawn(&b, t, true);
        view! { <Moving shapes=shapes.into() class="ghost" /> }
    });
    let g = Geometry::of(&a);
    let shown = g.as_ref().map_or(String::new(), |g| whole(g, &a).view_box());
    fn frame(clock: RwSignal<f64>, end_s: f64, turn: StoredValue<u32>, mine: u32, last_ms: f64) {
        request_animation_frame(move || {
            if turn.try_get_value() != Some(mine) {
                return;
            }
            let now_ms = window().performance().map_or(last_ms, |p| p.now());
            let next_s = clock.get_untracked() + ((now_ms - last_ms) / 1e3).min(0.1) / 4.0;
            clock.set(next_s.min(end_s));
            if next_s < end_s {
                frame(clock, end_s, turn, mine, now_ms);
            }
        });
    }
    let play = move |_| {
        turn.update_value(|t| *t += 1);
        clock.set(0.0);
        let now_ms = window().performance().map_or(0.0, |p| p.now());
        frame(clock, end_s, turn, turn.get_value(), now_ms);
    };
    let time = move || settings.reader().q(Quantity::Time, clock.get(), Rounding::Nearest);
    view! {
        <div class="pair">
            <svg class="drawing still-drawing" viewBox=shown preserveAspectRatio="xMidYMid meet" role="img"
                aria-label=words>
                {defs()}
                {g.map(|g| still(house(&g, &a)))}
                {other}
                <Moving shapes=first.into() class="figure" />
            </svg>
            <p class="hint">{words}</p>
            <div class="row buttons">
                <button type="button" id="play-both" on:click=play><b aria-hidden="true">"▶ "</b>{move || if is_pair { settings.t(Key::LessonPlay) } else { settings.t(W::PlayOne) }}</button>
            </div>
            <div class="number"><label for="pair-time">{settings.s(Key::LessonTime)}{move || settings.reader().colon()}{time}</label>
                <input id="pair-time" type="range" min="0" max=end_s step="0.0125" aria-valuetext=time
                    prop:value=move || clock.get().to_string()
                    on:input=move |ev| { turn.update_value(|t| *t += 1); if let Ok(t) = event_target_value(&ev).parse() { clock.set(t) } } /></div>
        </div>
    }
}
