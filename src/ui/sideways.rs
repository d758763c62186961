//! Along the wall: a front view, and what the same slip does further along.

use super::engine;
use super::state::{bench, settings};
use crate::engine::{Answer, Ask};
use crate::rules::{LimitKind, place, reserve};
use crate::sideways::{FURTHEST_M, STEP_M, Swing, offset_within_m, reach_m};
use crate::texts::Key;
use crate::units::{G_M_S2, Quantity, Rounding};
use leptos::prelude::*;

/// Front view: anchor on the roof, eave, wall; the rope where the worker stands and where the swing
/// ends. Widths and heights in metres, `down` from the anchor to the D-ring.
fn front(w: Swing, down_m: f64, roof_m: f64, label: String) -> impl IntoView {
    let cm = |x: f64| (x * 100.0).round();
    let (right, bottom) = (FURTHEST_M + 0.8, down_m + w.drop_m.max(2.0) + 1.2);
    let stand = (w.offset_m, down_m);
    let end = (0.0, down_m + w.drop_m);
    // The rope runs straight in this plane: down until it is taut, then round the anchor.
    let r = end.1;
    let taut_m = (r * r - w.offset_m * w.offset_m).max(0.0).sqrt().max(down_m);
    let arc = format!(
        "M{} {}V{}A{} {} 0 0 1 {} {}",
        cm(stand.0),
        cm(stand.1),
        cm(taut_m),
        cm(r),
        cm(r),
        cm(end.0),
        cm(end.1)
    );
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
    view! {
        <svg class="front" viewBox=format!("-120 -40 {} {}", cm(right) + 120.0, cm(bottom) + 40.0) role="img" aria-label=label>
            <rect class="roofplane" x="-110" y="-20" width=cm(right) + 100.0 height=cm(roof_m) + 20.0 />
            <rect class="wallplane" x="-110" y=cm(roof_m) width=cm(right) + 100.0 height=cm(bottom - roof_m) />
            <path class="eave" d=format!("M-110 {0}H{1}", cm(roof_m), cm(right) - 10.0) />
            <path class="plumb" d=format!("M0 0V{}", cm(bottom)) />
            <path class="rope" d=format!("M0 0L{} {}", cm(stand.0), cm(stand.1)) />
            <path class="rope gone" d=format!("M0 0L{} {}", cm(end.0), cm(end.1)) />
            <path class="swing" d=arc />
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
    let offset = RwSignal::new(2.0_f64);
    let all = RwSignal::new(None::<Vec<Swing>>);
    let asked = bench.scenario.get_untracked();
    engine::ask(&Ask::Swings(Box::new(asked)), move |answer| {
        if let Some(Answer::Swings(swings)) = answer {
            let _ = all.try_set(Some(swings));
        }
    });
    let to = move |x: f64| offset.set(((x / STEP_M).round() * STEP_M).clamp(0.0, FURTHEST_M));
    let body = move || {
        let r = settings.reader();
        let swings = all.get()?;
        if swings.is_empty() {
            return Some(view! { <p>{r.t(Key::SideRoof)}</p> }.into_any());
        }
        let w = *swings.get((offset.get() / STEP_M).round() as usize)?;
        let len = |x: f64, how| r.q(Quantity::Length, x, how);
        let words = r.f(
            Key::SideWords,
            &[
                ("offset", &len(w.offset_m, Rounding::Nearest)),
                ("lean", &r.q(Quantity::Angle, w.lean_rad, Rounding::Up)),
                ("drop", &len(w.drop_m, Rounding::Up)),
                ("extra", &len(w.extra_m.max(0.0), Rounding::Up)),
                ("speed", &r.q(Quantity::Speed, w.speed_m_s, Rounding::Up)),
                ("height", &len(w.speed_m_s * w.speed_m_s / (2.0 * G_M_S2), Rounding::Up)),
            ],
        );
        let room = if w.room_m >= 0.0 {
            r.f(Key::SideRoom, &[("value", &len(w.room_m, Rounding::Down))])
        } else {
            r.f(Key::SideMissing, &[("value", &len(-w.room_m, Rounding::Up))])
        };
        let kept = reserve();
        let reach = kept.map(|l| {
            let reserve = r.limit(l);
            match reach_m(&swings, l.value) {
                Some(m) => r.f(Key::SideReach, &[("reserve", &reserve), ("reach", &len(m, Rounding::Down))]),
                None => r.f(Key::SideReachNone, &[("reserve", &reserve)]),
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
        let roof_m = bench.geometry.with(|g| g.as_ref().map_or(1.0, |g| g.anchor.dist(g.eave)));
        let label = r.f(
            Key::SideDrawing,
            &[("offset", &len(w.offset_m, Rounding::Nearest)), ("drop", &len(w.drop_m, Rounding::Up))],
        );
        Some(
            view! {
                {front(w, down_m, roof_m, label)}
                <p id="side-words">{words}</p>
                <p>{room}</p>
                {reach.map(|t| view! { <p><strong>{t}</strong></p> })}
                {own.map(|(t, s)| view! { <p>{t}</p><p class="source">{s}</p> })}
                <p class="fine">{r.t(Key::SideModel)}</p>
            }
            .into_any(),
        )
    };
    let shown = move || settings.reader().q(Quantity::Length, offset.get(), Rounding::Nearest);
    view! {
        <section class="findings sideways" aria-labelledby="side-h">
            <h2 id="side-h">{settings.s(Key::SideHeading)}</h2>
            <p class="hint">{settings.s(Key::SideHint)}</p>
            <div class="number">
                <label for="side-offset">{settings.s(Key::SideOffset)}": "{shown}</label>
                <div class="row">
                    <button type="button" class="step" on:click=move |_| to(offset.get_untracked() - STEP_M)
                        aria-label=move || format!("{} −", settings.t(Key::SideOffset))>"−"</button>
                    <input id="side-offset" type="range" min="0" max=FURTHEST_M step=STEP_M
                        aria-valuetext=shown
                        prop:value=move || offset.get().to_string()
                        on:input=move |ev| { if let Ok(x) = event_target_value(&ev).parse::<f64>() { to(x) } } />
                    <button type="button" class="step" on:click=move |_| to(offset.get_untracked() + STEP_M)
                        aria-label=move || format!("{} +", settings.t(Key::SideOffset))>"+"</button>
                </div>
            </div>
            {body}
        </section>
    }
}
