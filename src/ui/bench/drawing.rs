//! The bench's drawing: the figure with dimensions, labels and handles. Only transforms and a few paths
//! change while a fall plays.

use super::hand::{self, Handles};
use super::player::player;
use super::state::{Phase, bench};
use crate::physics::trace::{EventKind, Outcome};
use crate::scene::camera::{self, Frame};
use crate::scene::{build, standing_scene};
use crate::texts::Key;
use crate::ui::shared::figure::{Figure, House, LETTERING_M, LadderShape, bounds, cm, decisive_s, defs};
use crate::ui::shared::settings::settings;
use crate::units::{FT_M, Quantity, Rounding, Units};
use leptos::prelude::*;

/// A vertical dimension with extension lines and arrowheads. Lettering stands along the line and
/// reads from the right (ISO 129-1); at a short one it stands beside the line.
fn dimension(
    x: f64,
    y0: f64,
    y1: f64,
    from_x: (f64, f64),
    label: String,
    (large, edge): (bool, f64),
) -> AnyView {
    let (a, b) = (y0.max(y1), y0.min(y1));
    // Large lettering is longer than a short line.
    let long = a - b > if large { 3.4 } else { 1.9 };
    // What would run out at the edge ends there, over the upper extension line.
    let fits = x + 0.14 + label.chars().count() as f64 * if large { 0.22 } else { 0.19 } < edge;
    let place = if long {
        format!("translate({},{}) rotate(-90)", cm(x - 0.09), cm(-(a + b) / 2.0))
    } else if fits {
        format!("translate({},{})", cm(x + 0.14), cm(-(a + b) / 2.0 + 0.09))
    } else {
        format!("translate({},{})", cm(edge - 0.05), cm(-a - 0.1))
    };
    let anchor = if long {
        "middle"
    } else if fits {
        "start"
    } else {
        "end"
    };
    view! {
        <g class="dim">
            <path class="ext" d=format!("M{} {}L{} {}M{} {}L{} {}", cm(from_x.0), cm(-y0), cm(x + 0.08),
                cm(-y0), cm(from_x.1), cm(-y1), cm(x + 0.08), cm(-y1)) />
            <path class="line" d=format!("M{} {}L{} {}", cm(x), cm(-a), cm(x), cm(-b))
                marker-start="url(#tip)" marker-end="url(#tip)" />
            <text class="label" transform=place text-anchor=anchor>{label}</text>
        </g>
    }
    .into_any()
}

/// Free fall and room after a fall, the feet's height before it.
#[component]
fn Dimensions(near: Signal<bool>) -> impl IntoView {
    let (bench, settings) = (bench(), settings());
    let reader = move || settings.reader();
    move || -> Vec<AnyView> {
        let Some(g) = bench.geometry.get() else { return vec![] };
        let s = bench.drawn.get();
        let (_, _, r, _) = bounds(&g, &s);
        let x = r - 0.55 - LETTERING_M;
        let len = |k: Key, m: f64, how: Rounding| {
            reader().f(k, &[("value", &reader().q(Quantity::Length, m, how))])
        };
        let mut out = vec![];
        match (bench.phase.get(), bench.run.get()) {
            (Phase::Shown, Some(run)) if run.trace.is_sound() && !near.get() => {
                let t = &run.trace;
                let y = g.dring.y;
                if t.outcome != Outcome::LetGo {
                    out.push(dimension(
                        x - 0.5,
                        y,
                        y - t.free_fall_m.min(y),
                        (g.dring.x + 0.1, g.dring.x + 0.1),
                        len(Key::DimFreeFall, t.free_fall_m, Rounding::Up),
                        (settings.large.get(), r),
                    ));
                }
                if let Some(m) = t.clearance_margin_m {
                    if m > 0.0 && t.left_roof {
                        let low = t.lowest_point_m;
                        let floor = low - m;
                        out.push(dimension(
                            x,
                            low,
                            floor.max(0.0),
                            (g.eave.x + 0.4, g.eave.x + 0.4),
                            len(Key::DimClearance, m, Rounding::Down),
                            (settings.large.get(), r),
                        ));
                    } else if m <= 0.0 {
                        out.push(
                            view! { <text class="label" x=cm(r - 0.1) y=cm(0.36) text-anchor="end">
                            {len(Key::DimMissing, -m, Rounding::Up)}</text> }
                            .into_any(),
                        );
                    }
                }
            }
            (Phase::Choosing, _) => {
                let floor = g.surface_below_m(g.soles.x, 0.1);
                out.push(dimension(
                    x,
                    g.soles.y,
                    floor,
                    (g.soles.x + 0.15, x - 0.4),
                    len(Key::DimStanding, g.soles.y - floor, Rounding::Nearest),
                    (settings.large.get(), r),
                ));
            }
            _ => {}
        }
        out
    }
}

/// Which part is which, before a fall.
#[component]
fn PartNames() -> impl IntoView {
    let (bench, settings) = (bench(), settings());
    move || {
        let g = bench.geometry.get()?;
        if bench.phase.get() != Phase::Choosing {
            return None;
        }
        let (a, q) = (g.anchor, g.grab);
        Some(view! {
            <text class="label" x=cm(a.x + 0.62) y=cm(-a.y - 0.18)>{settings.s(Key::LabelAnchor)}</text>
            <text class="label" x=cm(q.x - 0.55) y=cm(-q.y + 0.08) text-anchor="end">{settings.s(Key::LabelGrab)}</text>
        })
    }
}

#[component]
fn ScaleBar(near: Signal<bool>) -> impl IntoView {
    let (bench, settings) = (bench(), settings());
    let reader = move || settings.reader();
    move || {
        let g = bench.geometry.get().filter(|_| !near.get())?;
        let (l, b, _, _) = bench.drawn.with(|s| bounds(&g, s));
        let length = if settings.units.get() == Units::Metric { 1.0 } else { 5.0 * FT_M };
        let (x, y) = (l + 0.25, -b - 0.16);
        let label = reader().f(
            Key::ScaleBar,
            &[(
                "value",
                &crate::texts::limit_quantity(
                    settings.lang.get(),
                    settings.units.get(),
                    Quantity::Length,
                    length,
                ),
            )],
        );
        Some(view! {
            <g class="bar">
                <path d=format!("M{} {}l0 -8l0 4l{} 0l0 -4l0 8", cm(x), cm(y + 0.04), cm(length)) />
                <text class="label" x=cm(x + length + 0.12) y=cm(y + 0.1)>{label}</text>
            </g>
        })
    }
}

/// The whole drawing.
#[component]
pub fn Drawing() -> impl IntoView {
    let (bench, settings, player) = (bench(), settings(), player());
    // While a fall plays the camera is on the worker; else the whole house.
    let near = Signal::derive(move || {
        bench.phase.get() == Phase::Playing || (bench.phase.get() == Phase::Shown && player.playing.get())
    });
    let view_box = move || {
        bench.geometry.with(|g| {
            let Some(g) = g else { return "0 0 100 100".to_owned() };
            let (left_m, bottom_m, right_m, top_m) = bench.drawn.with(|s| bounds(g, s));
            let mut frame = Frame { left_m, bottom_m, right_m, top_m };
            if near.get()
                && let Some(run) = bench.run.get()
            {
                frame = camera::fall(g, &run.trace, player.clock.get(), frame);
            }
            format!(
                "{} {} {} {}",
                cm(frame.left_m),
                cm(-frame.top_m),
                cm(frame.width_m()),
                cm(frame.height_m())
            )
        })
    };
    // What is drawn now: a moment of the run, or the set-up.
    let scene = Memo::new(move |_| {
        let showing = matches!(bench.phase.get(), Phase::Playing | Phase::Shown);
        bench.geometry.with(|g| {
            let g = g.as_ref()?;
            if showing && let Some(r) = bench.run.get() {
                let q = r.trace.at(player.clock.get())?;
                return Some(build(&r.set_up, r.set_up.geometry(), &q));
            }
            bench.drawn.with(|s| Some(standing_scene(s, g)))
        })
    });
    let ghost = Memo::new(move |_| {
        let r = bench.ghost.get()?;
        // The fall at another house says nothing here.
        if bench.drawn.with(|s| s.house != r.set_up.house) {
            return None;
        }
        let at = decisive_s(&r.trace);
        Some(build(&r.set_up, r.set_up.geometry(), &r.trace.at(at)?))
    });
    let house = move || {
        let g = bench.geometry.get()?;
        let s = bench.drawn.get();
        Some(view! { <House g=g s=s /> })
    };
    view! {
        <svg class="drawing" viewBox=view_box preserveAspectRatio="xMidYMid meet" role="application" tabindex="0"
            id="scene" aria-label=settings.s(Key::SceneRegion) aria-describedby="scene-words"
            on:keydown=move |ev| if bench.phase.get_untracked() == Phase::Choosing { hand::key(&ev, bench, settings) } else { player.key(&ev) }>
            {defs()}
            {house}
            <g transform="scale(1,-1)">
                <LadderShape scene=scene.into() geometry=bench.geometry />
                <Show when=move || ghost.with(Option::is_some)>
                    <Figure scene=Signal::derive(move || ghost.get()) set_up=bench.drawn.into() ghost=true />
                </Show>
                <Show when=move || scene.with(Option::is_some)>
                    <Figure scene=scene.into() set_up=bench.drawn.into() />
                </Show>
            </g>
            <Dimensions near=near />
            <PartNames />
            <ScaleBar near=near />
            <Handles />
        </svg>
        <Show when=move || ghost.with(Option::is_some)>
            <p class="legend"><span class="dash" aria-hidden="true"></span>{settings.s(Key::GhostNote)}</p>
        </Show>
    }
}

/// Five stills for readers who asked for less motion.
#[component]
pub fn Storyboard() -> impl IntoView {
    let (bench, settings, player) = (bench(), settings(), player());
    let stills = move || {
        let run = bench.run.get()?;
        let t = &run.trace;
        // Slip, taut, largest force, lowest, end; what did not happen leaves an even spread.
        let end = player.interest_end(t);
        let mut times = vec![(EventKind::Slip, 0.0)];
        for k in [
            EventKind::Taut,
            EventKind::PeakForce,
            EventKind::Lowest,
            EventKind::StrikesGround,
            EventKind::StrikesObstacle,
        ] {
            if let Some(at) = t.time_of(k)
                && times.len() < 4
                && at <= end
            {
                times.push((k, at));
            }
        }
        times.push((EventKind::End, t.duration_s()));
        times.sort_by(|a, b| a.1.total_cmp(&b.1));
        Some(
            times
                .into_iter()
                .map(|(k, at)| {
                    let r = settings.reader();
                    let name = r.f(
                        Key::StillOf,
                        &[("event", r.t(k.label())), ("time", &r.q(Quantity::Time, at, Rounding::Nearest))],
                    );
                    view! {
                        <li><button type="button" on:click=move |_| player.seek(at)>{name}</button></li>
                    }
                })
                .collect_view(),
        )
    };
    view! {
        <section class="storyboard" aria-label=settings.s(Key::Storyboard)>
            <h3>{settings.s(Key::Storyboard)}</h3>
            <ol>{stills}</ol>
        </section>
    }
}
