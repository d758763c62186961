//! Along the wall: a front view, and what the same slip does further along.

use super::player::player;
use super::stage::stage;
use super::state::{Phase, bench};
use crate::geometry::Geometry;
use crate::rules::{HARD_SWING_M_S, LimitKind, Place, place, reserve};
use crate::scenario::{AnchorKind, Scenario, Stance};
use crate::scene::at;
use crate::scene::front::Front;
use crate::scene::ink::Shape;
use crate::studies::along_wall::{FURTHEST_M, STEP_M, Swing, offset_within_m, reach_m};
use crate::texts::Bench as W;
use crate::texts::say::Reader;
use crate::texts::{Key, Stage as S};
use crate::ui::shared::asking::{self, NoAnswer};
use crate::ui::shared::figure::{defs, still};
use crate::ui::shared::front::front;
use crate::ui::shared::settings::settings;
use crate::units::{G_M_S2, Quantity, Rounding, within};
use crate::worker::questions::Swings;
use leptos::prelude::*;

/// Lean of the rope past which it is told that the rafter is pushed out of its plane, rad (our own choice).
const LEANS_RAD: f64 = 0.26;

/// What one fall along the wall comes to, in sentences.
struct SwingWords {
    free: String,
    held: String,
    /// What stands in its way.
    met: String,
    room: String,
}

fn swing_words(r: Reader, w: &Swing, thing_m: f64) -> SwingWords {
    let len = |x: f64, how| r.q(Quantity::Length, x, how);
    let fast = |v: f64| r.q(Quantity::Speed, v, Rounding::Up);
    let like = |v: f64| len(v * v / (2.0 * G_M_S2), Rounding::Up);
    let free = r.f(
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
    let met = match w.free.speed_at_m_s(thing_m) {
        Some(v) => r.f(Key::SideThingHit, &[("speed", &fast(v)), ("height", &like(v))]),
        None => r.t(Key::SideThingMiss).to_owned(),
    };
    let room = match w.room_m() {
        Some(m) if m >= 0.0 => r.f(Key::SideRoom, &[("value", &len(m, Rounding::Down))]),
        Some(m) => r.f(Key::SideMissing, &[("value", &len(-m, Rounding::Up))]),
        None => r.t(Key::SideStays).to_owned(),
    };
    SwingWords { free, held, met, room }
}

/// A place's own limits along the wall, and their source.
fn own_limit(r: Reader, place: Option<&'static Place>, swings: &[Swing]) -> Option<(String, String)> {
    let len = |x: f64, how| r.q(Quantity::Length, x, how);
    // The lean at one metre gives the height of anchor over D-ring.
    let down_m = swings.last().map_or(1.0, |l| l.offset_m / l.lean_rad.tan());
    let p = place?;
    let (most, lean) = (p.limit(LimitKind::AnchorOffset)?, p.limit(LimitKind::AnchorLean)?);
    let here = offset_within_m(most.value, lean.value, down_m);
    Some((
        r.f(
            Key::SideLimit,
            &[("most", &r.limit(most)), ("lean", &r.limit(lean)), ("here", &len(here, Rounding::Down))],
        ),
        r.source(most),
    ))
}

/// The house from in front: as the set-up stands, or the same moment as in the section's fall. Leaning out and
/// tipping sideways are seen here, which a section cannot show.
#[component]
pub fn FromFront() -> impl IntoView {
    let (bench, settings, player, stage) = (bench(), settings(), player(), stage());
    // The set-up that is seen: what stands, or what fell.
    let seen = Memo::new(move |_| {
        let fell = bench.run.get().filter(|_| bench.phase.get() == Phase::Shown);
        fell.map_or_else(|| bench.drawn.get(), |r| (*r.set_up).clone())
    });
    let words = move || {
        let r = settings.reader();
        if bench.phase.get() == Phase::Shown {
            return r.t(S::FrontMoment).to_owned();
        }
        let s = seen.get();
        match s.stance {
            Stance::Roof { .. } => r.t(S::FrontRoof).to_owned(),
            Stance::Ladder { .. } if s.ladder.reach_out_m > 0.0 => {
                let value = r.q(Quantity::Length, s.ladder.reach_out_m, Rounding::Nearest);
                r.f(S::FrontLeans, &[("value", &value)])
            }
            Stance::Ladder { .. } => r.t(S::FrontUnder).to_owned(),
        }
    };
    // As near as the section was when it was swapped, and going with its camera.
    let frame = move || stage.pane.get().map(|q| Front::beside(q.frame).view_box());
    let with = move |draw: &dyn Fn(&Front) -> Vec<Shape>| {
        let s = seen.get();
        let Some(g) = Geometry::of(&s) else { return vec![] };
        draw(&Front::of(&s, &g))
    };
    let house = move || still(with(&|f| f.behind()));
    let moving = move || {
        still(with(&|f| {
            let run = bench.run.get().filter(|_| bench.phase.get() == Phase::Shown);
            let now_s = player.clock.get();
            let q = run.and_then(|r| at(&r.set_up, r.set_up.geometry(), &r.trace, now_s));
            Front { moment: q.as_ref().map(|q| (q, now_s)), ..*f }.moving()
        }))
    };
    let struck = move || player.is_struck(bench);
    view! {
        <div class="from-front">
            <svg class="drawing front" class:struck=struck viewBox=frame preserveAspectRatio="xMidYMid meet" role="img" aria-label=words>{defs()}{house}{moving}</svg>
            <p class="hint">{words}</p></div>
    }
}

/// The part of the page about moving along the wall.
#[component]
pub fn Sideways() -> impl IntoView {
    let (bench, settings) = (bench(), settings());
    let offset = bench.along;
    let thing = RwSignal::new(-0.5_f64);
    let all = RwSignal::new(None::<Result<Vec<Swing>, NoAnswer>>);
    if let Ok(set_up) = bench.scenario.with_untracked(Scenario::set_up) {
        asking::ask(Swings(set_up), move |answer| {
            let _ = all.try_set(Some(answer));
        });
    }
    let body = move || {
        let r = settings.reader();
        let Ok(swings) = all.get()? else {
            return Some(view! { <p>{r.t(Key::EngineMissing)}</p> }.into_any());
        };
        if swings.is_empty() {
            return Some(view! { <p>{r.t(Key::SideRoof)}</p> }.into_any());
        }
        let at_m = offset.get();
        let Some(w) = swings.iter().find(|w| (w.offset_m - at_m).abs() < STEP_M / 2.0) else {
            return Some(view! { <p>{r.t(Key::SideUntold)}</p> }.into_any());
        };
        let told = swing_words(r, w, thing.get());
        let len = |x: f64, how| r.q(Quantity::Length, x, how);
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
        let own = own_limit(r, bench.scenario.with(|s| place(&s.place)), &swings);
        // Past this lean the rafter is pushed out of its plane.
        let plate = bench.scenario.with(|s| {
            matches!(s.anchor.kind, AnchorKind::RidgePlateInFraming | AnchorKind::RidgePlateInSheathing)
        });
        let leans = (plate && w.lean_rad > LEANS_RAD)
            .then(|| r.f(W::LeanNote, &[("lean", &r.q(Quantity::Angle, w.lean_rad, Rounding::Up))]));
        let label = r.f(
            Key::SideDrawing,
            &[("offset", &len(w.offset_m, Rounding::Nearest)), ("drop", &len(w.free.drop_m, Rounding::Up))],
        );
        Some(
            view! {
                <div class="front-box">{bench.drawn.with(|s| front(s, w.offset_m, Some(w), (Some(thing.get()), furthest), label))}
                <p class="hint">{r.t(Key::FrontLegend)}</p></div>
                <div class="front-words">
                <p id="side-words">{told.free}</p>
                <p>{told.room}</p>
                <p>{told.held}</p>
                <p id="side-met">{told.met}</p>
                {leans.map(|t| view! { <p class="hint">{t}</p> })}
                {reach.map(|t| view! { <p><strong>{t}</strong></p> })}
                {own.map(|(t, s)| view! { <p>{t}</p><p class="source">{s}</p> })}
                <p class="fine">{r.t(Key::SideModel)}</p></div>
            }
            .into_any(),
        )
    };
    view! {
        <section class="findings sideways" aria-labelledby="side-h">
            <h2 id="side-h">{settings.s(Key::SideHeading)}</h2>
            <div class="front-controls"><p class="hint">{settings.s(Key::SideHint)}</p>
            <Along id="side-offset" label=Key::SideOffset value=offset range=(0.0, FURTHEST_M) />
            <Along id="side-thing" label=Key::SideThing value=thing range=(-4.0, FURTHEST_M) /></div>
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
