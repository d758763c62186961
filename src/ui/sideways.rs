//! Along the wall: a front view, and what the same slip does further along.

use super::engine;
use super::state::{bench, settings};
use crate::rules::{HARD_SWING_M_S, LimitKind, place, reserve};
use crate::scenario::AnchorKind;
use crate::studies::along_wall::{FURTHEST_M, STEP_M, Swing, offset_within_m, reach_m};
use crate::texts::Key;
use crate::texts::words::Bench as W;
use crate::units::{G_M_S2, Quantity, Rounding, within};
use crate::worker::{Answer, Ask};
use leptos::prelude::*;

/// Lean of the rope past which it is told that the rafter is pushed out of its plane, rad (our own choice).
const LEANS_RAD: f64 = 0.26;

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

/// The part of the page about moving along the wall.
#[component]
pub fn Sideways() -> impl IntoView {
    let (bench, settings) = (bench(), settings());
    let offset = bench.along;
    let thing = RwSignal::new(-0.5_f64);
    let all = RwSignal::new(None::<Vec<Swing>>);
    let asked = bench.scenario.get_untracked();
    engine::ask(&Ask::Swings(Box::new(asked)), move |answer| {
        if let Some(Answer::Swings(swings)) = answer {
            let _ = all.try_set(Some(swings));
        }
    });
    let body = move || {
        let r = settings.reader();
        let swings = all.get()?;
        if swings.is_empty() {
            return Some(view! { <p>{r.t(Key::SideRoof)}</p> }.into_any());
        }
        let at_m = offset.get();
        let Some(w) = swings.iter().find(|w| (w.offset_m - at_m).abs() < STEP_M / 2.0) else {
            return Some(view! { <p>{r.t(Key::SideUntold)}</p> }.into_any());
        };
        let len = |x: f64, how| r.q(Quantity::Length, x, how);
        let fast = |v: f64| r.q(Quantity::Speed, v, Rounding::Up);
        let like = |v: f64| len(v * v / (2.0 * G_M_S2), Rounding::Up);
        let words = r.f(
            Key::SideWords,
            &[
                ("offset", &len(w.offset_m, Rounding::Nearest)),
                ("lean", &r.q(Quantity::Angle, w.lean_rad, Rounding::Up)),
                ("drop", &len(w.free.drop_m, Rounding::Up)),
                ("extra", &len(w.extra_m.max(0.0), Rounding::Up)),
                ("speed", &fast(w.free.speed_m_s)),
                ("height", &like(w.free.speed_m_s)),
            ],
        );
        let held = w.held.as_ref().map_or(r.t(Key::SideUntold).to_owned(), |f| {
            r.f(
                if f.speed_m_s > 0.0 { Key::SideHeld } else { Key::SideHeldShort },
                &[
                    ("drop", &len(f.drop_m, Rounding::Up)),
                    ("speed", &fast(f.speed_m_s)),
                    ("at", &len(f.fastest_at_m.abs(), Rounding::Nearest)),
                    ("dragged", &len(f.dragged_m, Rounding::Up)),
                ],
            )
        });
        let met = match w.free.speed_at_m_s(thing.get()) {
            Some(v) => r.f(Key::SideThingHit, &[("speed", &fast(v)), ("height", &like(v))]),
            None => r.t(Key::SideThingMiss).to_owned(),
        };
        let room = match w.room_m() {
            Some(m) if m >= 0.0 => r.f(Key::SideRoom, &[("value", &len(m, Rounding::Down))]),
            Some(m) => r.f(Key::SideMissing, &[("value", &len(-m, Rounding::Up))]),
            None => r.t(Key::SideStays).to_owned(),
        };
        let kept = reserve();
        let furthest = kept.and_then(|l| reach_m(&swings, l.value, HARD_SWING_M_S));
        let reach = kept.map(|l| {
            let reserve = r.limit(l);
            let speed = r.q(Quantity::Speed, HARD_SWING_M_S, Rounding::Nearest);
            match furthest {
                Some(m) => r.f(
                    Key::SideReach,
                    &[("reserve", &reserve), ("fast", &speed), ("reach", &len(m, Rounding::Down))],
                ),
                None => r.f(Key::SideReachNone, &[("reserve", &reserve), ("fast", &speed)]),
            }
        });
        // The lean at one metre gives the height of anchor over D-ring.
        let down_m = swings.last().map_or(1.0, |l| l.offset_m / l.lean_rad.tan());
        let own = bench.scenario.with(|s| place(&s.place)).and_then(|p| {
            let (most, lean) = (p.limit(LimitKind::AnchorOffset)?, p.limit(LimitKind::AnchorLean)?);
            let here = offset_within_m(most.value, lean.value, down_m);
            Some((
                r.f(
                    Key::SideLimit,
                    &[
                        ("most", &r.limit(most)),
                        ("lean", &r.limit(lean)),
                        ("here", &len(here, Rounding::Down)),
                    ],
                ),
                r.source(most),
            ))
        });
        // Past this lean the rafter is pushed out of its plane.
        let plate = bench.scenario.with(|s| {
            matches!(s.anchor.kind, AnchorKind::RidgePlateInFraming | AnchorKind::RidgePlateInSheathing)
        });
        let leans = (plate && w.lean_rad > LEANS_RAD)
            .then(|| r.f(W::LeanNote, &[("lean", &r.q(Quantity::Angle, w.lean_rad, Rounding::Up))]));
        let roof_m = bench.geometry.with(|g| g.as_ref().map_or(1.0, |g| g.anchor.dist(g.eave)));
        let label = r.f(
            Key::SideDrawing,
            &[("offset", &len(w.offset_m, Rounding::Nearest)), ("drop", &len(w.free.drop_m, Rounding::Up))],
        );
        Some(
            view! {
                {front(w, roof_m, Some(thing.get()), furthest, label)}
                <p class="hint">{r.t(Key::FrontLegend)}</p>
                <p id="side-words">{words}</p>
                <p>{room}</p>
                <p>{held}</p>
                <p id="side-met">{met}</p>
                {leans.map(|t| view! { <p class="hint">{t}</p> })}
                {reach.map(|t| view! { <p><strong>{t}</strong></p> })}
                {own.map(|(t, s)| view! { <p>{t}</p><p class="source">{s}</p> })}
                <p class="fine">{r.t(Key::SideModel)}</p>
            }
            .into_any(),
        )
    };
    view! {
        <section class="findings sideways" aria-labelledby="side-h">
            <h2 id="side-h">{settings.s(Key::SideHeading)}</h2>
            <p class="hint">{settings.s(Key::SideHint)}</p>
            <Along id="side-offset" label=Key::SideOffset value=offset range=(0.0, FURTHEST_M) />
            <Along id="side-thing" label=Key::SideThing value=thing range=(-4.0, FURTHEST_M) />
            {body}
        </section>
    }
}

/// A distance along the wall: slider and buttons.
#[component]
fn Along(id: &'static str, label: Key, value: RwSignal<f64>, range: (f64, f64)) -> impl IntoView {
    let settings = settings();
    let to = move |x: f64| value.set(within((x / STEP_M).round() * STEP_M, range.0, range.1));
    let shown = move || settings.reader().q(Quantity::Length, value.get(), Rounding::Nearest);
    view! {
        <div class="number">
            <label for=id>{settings.s(label)}{move || settings.reader().colon()}{shown}</label>
            <div class="row">
                <button type="button" class="step" on:click=move |_| to(value.get_untracked() - STEP_M)
                    aria-label=move || format!("{} −", settings.t(label))>"−"</button>
                <input id=id type="range" min=range.0 max=range.1 step=STEP_M aria-valuetext=shown
                    prop:value=move || value.get().to_string()
                    on:input=move |ev| { if let Ok(x) = event_target_value(&ev).parse::<f64>() { to(x) } } />
                <button type="button" class="step" on:click=move |_| to(value.get_untracked() + STEP_M)
                    aria-label=move || format!("{} +", settings.t(label))>"+"</button>
            </div>
        </div>
    }
}
