//! Moving the set-up by hand: ringed handles in the drawing for pointer and keys, and beside them the
//! same with buttons and a number field, under a magnifier that shows the part from near.

use super::forms::NumberField;
use super::stage::stage;
use super::state::{Bench, Phase, Stop, bench};
use crate::geometry::{Geometry, P, p};
use crate::practice::hand::{Held, dragged, moved};
use crate::scenario::{AnchorKind, Arrow, Bolt, HarnessFit, Latch, Scenario, Stance};
use crate::scene::ink::cm;
use crate::scene::lens;
use crate::texts::Bench as W;
use crate::texts::Worded;
use crate::texts::{Key, Stage as S, say};
use crate::ui::shared::settings::{Settings, settings};
use crate::units::{Quantity, Rounding};
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// Radius of a handle's ring, px: with its arrowheads a finger's width.
const RING_PX: f64 = 24.0;
/// A pointer this far past where the part has stopped shows what stopped it, m.
const PAST_M: f64 = 0.08;
/// One press of an arrow key; with Shift, and with the Page keys, m.
const KEY_M: [f64; 3] = [0.1, 0.02, 0.5];

fn name(part: Held, r: say::Reader, s: &Scenario) -> &'static str {
    match part {
        Held::Anchor => r.t(Key::PartAnchor),
        Held::Grab => r.t(Key::PartGrab.in_place(&s.place)),
        Held::Worker => r.t(W::HandWorker),
        Held::LadderFoot => r.t(Key::PartLadder),
    }
}

/// The part and its number, as the live region says it.
pub fn told(part: Held, r: say::Reader, s: &Scenario, how: W) -> String {
    let field = part.field(s);
    let value = format!(
        "{} {}",
        say::lower_first(r.t(say::field(field).0)),
        r.q(Quantity::Length, field.get(s).unwrap_or(0.0), Rounding::Nearest)
    );
    r.f(how, &[("part", name(part, r, s)), ("value", &value)])
}

/// Where a pointer is in the plane, m.
fn plane(ev: &web_sys::PointerEvent) -> Option<P> {
    let svg = ev.current_target()?.dyn_into::<web_sys::Element>().ok()?;
    let svg = svg.closest("svg").ok()??.dyn_into::<web_sys::SvgGraphicsElement>().ok()?;
    let m = svg.get_screen_ctm()?;
    let x = (f64::from(ev.client_x()) - f64::from(m.e())) / f64::from(m.a());
    let y = (f64::from(ev.client_y()) - f64::from(m.f())) / f64::from(m.d());
    Some(p(x / 100.0, -y / 100.0))
}

/// The ringed handles, while a set-up is chosen.
#[component]
pub fn Handles() -> impl IntoView {
    let (bench, stage) = (bench(), stage());
    // Where the pointer took hold, beside the handle's middle.
    let hold = StoredValue::new(None::<(Held, P)>);
    let ring = move || stage.pane.get().map_or(20.0, |p| cm(RING_PX / p.px_per_m()));
    let handles = Held::ALL.map(|part| {
        let at = move || {
            bench.geometry.with(|g| g.as_ref().map(|g| (part.at(g), bench.drawn.with(|s| part.way(s, g)))))
        };
        let place = move || {
            at().map_or(String::new(), |(q, way)| {
                format!("translate({},{}) rotate({:.1})", cm(q.x), cm(q.y), way.y.atan2(way.x).to_degrees())
            })
        };
        let marks = move || {
            let r = ring();
            let a = r * 0.32;
            // An arrowhead outside the ring on either side of the way.
            format!(
                "M{} {a}L{} 0L{} {}ZM{} {a}L{} 0L{} {}Z",
                r * 1.12, r * 1.5, r * 1.12, -a, -r * 1.12, -r * 1.5, -r * 1.12, -a
            )
        };
        let down = move |ev: web_sys::PointerEvent| {
            let Some(((q, _), to)) = at().zip(plane(&ev)) else { return };
            ev.prevent_default();
            bench.held.set(part);
            if let Some(e) = ev.target().and_then(|t| t.dyn_into::<web_sys::Element>().ok()) {
                let _ = e.set_pointer_capture(ev.pointer_id());
            }
            hold.set_value(Some((part, p(to.x - q.x, to.y - q.y))));
            bench.pick_up();
        };
        let go = move |ev: web_sys::PointerEvent| {
            let Some((part, off)) = hold.get_value() else { return };
            if let Some(to) = plane(&ev) {
                let to = p(to.x - off.x, to.y - off.y);
                let now = dragged(&bench.scenario.get_untracked(), part, to);
                bench.stop.set(stopped_at(part, &now, to));
                bench.carry(now);
            }
        };
        let settings = settings();
        let end = move |keep: bool| {
            if let Some((part, _)) = hold.get_value() {
                hold.set_value(None);
                bench.stop.set(None);
                bench.put_down(keep);
                bench.said.set(bench.scenario.with_untracked(|s| told(part, settings.reader_now(), s, W::HandHas)));
            }
        };
        view! {
            <g class="handle" class:held=move || bench.held.get() == part transform=place>
                <circle class="ring" r=ring />
                <path class="way" d=marks />
                <circle class="spot" data-part=format!("{part:?}") r=move || ring() * 1.6 on:touchstart=|ev| ev.prevent_default() on:pointerdown=down on:pointermove=go
                    on:pointerup=move |_| end(true) on:pointercancel=move |_| end(false) />
            </g>
        }
    });
    view! {
        <g class="handles" class:away=move || bench.phase.get() != Phase::Choosing transform="scale(1,-1)">{handles}</g>
    }
}

/// What keeps a part from going on to where the pointer is, as one word; none where it went along.
fn stopped_at(part: Held, now: &Scenario, to: P) -> Option<Stop> {
    let g = Geometry::of(now)?;
    let (at, way) = (part.at(&g), part.way(now, &g));
    let past_m = (to.x - at.x) * way.x + (to.y - at.y) * way.y;
    if past_m.abs() < PAST_M {
        return None;
    }
    let on_roof = matches!(now.stance, Stance::Roof { .. });
    let more = past_m > 0.0;
    let word = match (part, more) {
        (Held::Grab, true) if !on_roof && g.grab.y > g.eave.y - 0.1 => S::StopEave,
        (Held::Grab, _) => S::StopTaut,
        (Held::Worker, true) if on_roof => S::StopRidge,
        (Held::Worker, false) if on_roof => S::StopEave,
        (Held::Worker, true) => S::StopRung,
        (Held::Worker, false) => S::StopGround,
        (Held::LadderFoot, true) => S::StopLength,
        (Held::LadderFoot, false) => S::StopWall,
        (Held::Anchor, _) => S::StopEave,
    };
    Some(Stop { at, way: p(way.x * past_m.signum(), way.y * past_m.signum()), word })
}

/// Keys of the drawing while a set-up is chosen.
pub fn key(ev: &web_sys::KeyboardEvent, bench: Bench, settings: Settings) {
    let part = bench.held.get_untracked();
    let r = settings.reader_now();
    let say = move |how: W| {
        let part = bench.held.get_untracked();
        bench.said.set(bench.scenario.with_untracked(|s| told(part, r, s, how)));
    };
    let code = ev.key();
    let arrow = match code.as_str() {
        "ArrowUp" => Some(p(0.0, 1.0)),
        "ArrowDown" => Some(p(0.0, -1.0)),
        "ArrowRight" => Some(p(1.0, 0.0)),
        "ArrowLeft" => Some(p(-1.0, 0.0)),
        "PageUp" => Some(p(0.0, 1.0)),
        "PageDown" => Some(p(0.0, -1.0)),
        _ => None,
    };
    if !bench.has_in_hand() {
        match code.as_str() {
            "Enter" | " " => {
                bench.pick_up();
                say(W::HandTaken);
            }
            _ => {
                let Some(a) = arrow else { return };
                let at = Held::ALL.iter().position(|q| *q == part).unwrap_or(0);
                let n = Held::ALL.len();
                let next = if a.x + a.y < 0.0 { at + 1 } else { at + n - 1 };
                let next = if code == "ArrowRight" {
                    at + 1
                } else if code == "ArrowLeft" {
                    at + n - 1
                } else {
                    next
                };
                bench.held.set(Held::ALL[next % n]);
                say(W::HandAt);
            }
        }
        return ev.prevent_default();
    }
    match code.as_str() {
        "Enter" | " " => {
            bench.stop.set(None);
            bench.put_down(true);
            say(W::HandHas);
        }
        "Escape" => {
            bench.stop.set(None);
            bench.put_down(false);
            bench.said.set(r.t(W::HandBack).to_owned());
        }
        _ => {
            let Some(a) = arrow else { return };
            let now = bench.scenario.get_untracked();
            let Some(g) = Geometry::of(&now) else { return };
            let way = part.way(&now, &g);
            let toward = a.x * way.x + a.y * way.y;
            // Across its way an arrow still moves it: up and right are more.
            let sign = if toward.abs() > 0.15 { toward.signum() } else { a.x + a.y };
            let step = if code.starts_with("Page") {
                KEY_M[2]
            } else if ev.shift_key() {
                KEY_M[1]
            } else {
                KEY_M[0]
            };
            let value = part.field(&now).get(&now).unwrap_or(0.0);
            let after = moved(&now, part, ((value + sign * step) * 1e3).round() / 1e3);
            // At its end the part says what stops it.
            let stuck = (part.field(&after).get(&after).unwrap_or(0.0) - value).abs() < 1e-9;
            let at = part.at(&g);
            let to = p(at.x + way.x * sign * step.max(0.1), at.y + way.y * sign * step.max(0.1));
            bench.stop.set(if stuck { stopped_at(part, &after, to) } else { None });
            bench.carry(after);
            say(W::HandHas);
            if let Some(stop) = bench.stop.get_untracked() {
                bench.said.update(|s| {
                    s.push_str(". ");
                    s.push_str(r.t(stop.word));
                });
            }
        }
    }
    ev.prevent_default();
}

fn plate(k: AnchorKind) -> bool {
    matches!(k, AnchorKind::RidgePlateInFraming | AnchorKind::RidgePlateInSheathing)
}

/// What a part is called on its lens.
pub fn part_name(part: Held) -> S {
    match part {
        Held::Anchor => S::PartAnchor,
        Held::Grab => S::PartGrab,
        Held::Worker => S::PartDring,
        Held::LadderFoot => S::PartFoot,
    }
}

type Toggle = (fn(&Scenario) -> Option<W>, fn(&mut Scenario));

/// What can be done to a part beside moving it.
fn toggles(part: Held) -> Vec<Toggle> {
    match part {
        Held::Grab => vec![
            (
                |_| Some(W::TurnOver),
                |s| s.grab.arrow = if s.grab.arrow == Arrow::Up { Arrow::Down } else { Arrow::Up },
            ),
            (
                |s| Some(if s.grab.latch == Latch::Closed { W::LatchOpenIt } else { W::LatchCloseIt }),
                |s| s.grab.latch = if s.grab.latch == Latch::Closed { Latch::Open } else { Latch::Closed },
            ),
            (
                |s| Some(if s.grab.bolt == Bolt::Tight { W::BoltLoosenIt } else { W::BoltTightenIt }),
                |s| s.grab.bolt = if s.grab.bolt == Bolt::Tight { Bolt::Loose } else { Bolt::Tight },
            ),
        ],
        Held::Worker => vec![
            (
                |s| Some(if s.lanyard.clipped { W::ClipOut } else { W::ClipIn }),
                |s| s.lanyard.clipped = !s.lanyard.clipped,
            ),
            (
                |s| Some(if s.worker.harness == HarnessFit::Snug { W::StrapsSlack } else { W::StrapsUp }),
                |s| {
                    s.worker.harness = if s.worker.harness == HarnessFit::Snug {
                        HarnessFit::Loose
                    } else {
                        HarnessFit::Snug
                    }
                },
            ),
        ],
        Held::LadderFoot => vec![(
            |s| Some(if s.ladder.tied { W::UntieLadder } else { W::TieLadder }),
            |s| s.ladder.tied = !s.ladder.tied,
        )],
        Held::Anchor => vec![(
            |s| match s.anchor.kind {
                AnchorKind::RidgePlateInFraming => Some(W::SwapGround),
                AnchorKind::RidgePlateInSheathing => Some(W::SwapFraming),
                _ => None,
            },
            |s| {
                if plate(s.anchor.kind) {
                    s.anchor.kind = if s.anchor.kind == AnchorKind::RidgePlateInFraming {
                        AnchorKind::RidgePlateInSheathing
                    } else {
                        AnchorKind::RidgePlateInFraming
                    };
                }
            },
        )],
    }
}

/// Where each toggle lies in the lens, in the order of [`toggles`].
fn zones(part: Held) -> &'static [&'static str] {
    match part {
        Held::Grab => &["M33 28H65V92H33Z", "M65 22H108V96H65Z", "M0 34H33V86H0Z"],
        Held::Worker => &["M40 30H120V78H40ZM40 30V0H120V30Z", "M0 78H120V120H0ZM0 0H40V78H0Z"],
        Held::LadderFoot | Held::Anchor => &["M0 0H120V120H0Z"],
    }
}

/// The lens in words.
pub fn lens_words(part: Held, r: say::Reader, s: &Scenario) -> String {
    match part {
        Held::Grab => r.f(
            W::LensGrab,
            &[
                ("arrow", r.t(if s.grab.arrow == Arrow::Up { Key::ArrowUp } else { Key::ArrowDown })),
                ("latch", r.t(if s.grab.latch == Latch::Closed { Key::LatchClosed } else { Key::LatchOpen })),
                ("bolt", r.t(if s.grab.bolt == Bolt::Tight { Key::BoltTight } else { Key::BoltLoose })),
            ],
        ),
        Held::Worker => r.f(
            W::LensBack,
            &[
                ("clip", r.t(if s.lanyard.clipped { W::Clipped } else { W::NotClipped })),
                (
                    "straps",
                    r.t(if s.worker.harness == HarnessFit::Snug { Key::FitSnug } else { Key::FitLoose }),
                ),
            ],
        ),
        Held::LadderFoot => {
            let angle = crate::geometry::ladder_line(s).map_or(0.0, |l| l.angle_rad());
            r.f(
                W::LensFoot,
                &[
                    ("angle", &r.q(Quantity::Angle, angle, Rounding::Nearest)),
                    ("tied", r.t(if s.ladder.tied { Key::LadderTiedYes } else { Key::LadderTiedNo })),
                ],
            )
        }
        Held::Anchor => r.f(W::LensAnchor, &[("kind", r.t(s.anchor.kind.label()))]),
    }
}

/// The part in hand: which, how far, and what can be done to it.
#[component]
pub fn Hand() -> impl IntoView {
    let (bench, settings) = (bench(), settings());
    let parts = Held::ALL.map(|part| {
        view! {
            <button type="button" class="seg" aria-pressed=move || (bench.held.get() == part).to_string()
                on:click=move |_| bench.held.set(part)>{move || bench.scenario.with(|s| name(part, settings.reader(), s))}</button>
        }
    });
    let field = Memo::new(move |_| bench.scenario.with(|s| bench.held.get().field(s)));
    let number = move || {
        let part = bench.held.get_untracked();
        view! { <NumberField field=field.get() by_hand=part /> }
    };
    let paths = move || {
        let part = bench.held.get();
        bench
            .drawn
            .with(|s| lens::of(part, s))
            .into_iter()
            .map(|(c, d)| view! { <path class=c d=d /> })
            .collect_view()
    };
    let words = move || bench.drawn.with(|s| lens_words(bench.held.get(), settings.reader(), s));
    let touch = move |part: Held, does: fn(&mut Scenario)| {
        bench.edit(does);
        bench.said.set(bench.scenario.with_untracked(|s| lens_words(part, settings.reader_now(), s)));
    };
    let buttons = move || {
        let part = bench.held.get();
        toggles(part)
            .into_iter()
            .map(|(says, does)| {
                let label = move || bench.scenario.with(|s| says(s).map_or("", |k| settings.t(k)));
                let none = move || bench.scenario.with(|s| says(s).is_none());
                view! { <button type="button" class:gone=none on:click=move |_| touch(part, does)>{label}</button> }
            })
            .collect_view()
    };
    // The part itself can be touched; the buttons beside it do the same.
    let zones = move || {
        let part = bench.held.get();
        let does = toggles(part);
        zones(part)
            .iter()
            .zip(does)
            .map(|(d, (_, does))| view! { <path class="zone" d=*d on:click=move |_| touch(part, does) /> })
            .collect_view()
    };
    view! {
        <section class="hand" aria-labelledby="hand-h">
            <h2 id="hand-h" class="vh">{settings.s(W::HandHeading)}</h2>
            <div class="parts-row" role="group" aria-labelledby="hand-h">{parts}</div>
            <div class="hand-body">
                <svg class="lens" viewBox="0 0 120 120" role="img" aria-label=words>{paths}{zones}</svg>
                <div class="hand-side">
                    {number}
                    <div class="buttons">
                        {buttons}
                        <button type="button" class="icon" prop:disabled=move || !bench.can_undo() aria-label=settings.s(Key::Undo)
                            on:click=move |_| bench.undo()>"↶"</button>
                        <button type="button" class="icon" prop:disabled=move || !bench.can_redo() aria-label=settings.s(Key::Redo)
                            on:click=move |_| bench.redo()>"↷"</button>
                    </div>
                </div>
            </div>
            <p class="hint">{move || settings.t(if bench.held.get() == Held::Worker { W::ClimbNote } else { W::HandHelp })}</p>
        </section>
    }
}
