//! Close looks: the anchor in section, and each part of the gear as a person would hold it.
//!
//! Drawn by us from how such parts work in general. Every picture has its words beside it, and the
//! words never judge: finding the fault is the person's work.

use super::state::bench;
use crate::practice::inspection::{GearPart, Look, from_the_shed};
use crate::scenario::{
    Arrow, Bolt, ConnectorState, LabelState, Latch, MOST_FASTENERS_PER_SIDE, PackState, RopeState,
    WebbingState,
};
use crate::texts::{Key, say};
use crate::ui::shared::settings::settings;
use leptos::prelude::*;

/// Section through the ridge at the anchor: plate, sheathing, rafters, and where each fastener ends.
#[component]
pub fn AnchorSection() -> impl IntoView {
    let (bench, settings) = (bench(), settings());
    let drawing = move || {
        let r = settings.reader();
        let (hit, miss, per_side) = bench.scenario.with(|s| {
            let a = crate::strength::anchor(s).fasteners;
            (a.0, a.1, s.anchor.fasteners.per_side.clamp(1, MOST_FASTENERS_PER_SIDE))
        });
        let label = r.f(Key::StrengthDrawing, &[("hit", &hit.to_string()), ("miss", &miss.to_string())]);
        // The near side is on the right; misses count there first, as in the strength.
        let (miss_near, miss_far) = (miss.min(per_side), miss.saturating_sub(per_side));
        let side = |sign: f64, missed: u32| {
            (0..per_side)
                .map(|i| {
                    let share = (f64::from(i) + 0.7) / (f64::from(per_side) + 0.4);
                    let (x, y) = (160.0 + sign * (14.0 + 96.0 * share), 34.0 + (14.0 + 96.0 * share) * 0.45);
                    let bad = i >= per_side.saturating_sub(missed);
                    // Square to the slope: long in the rafter, short and beside it where it missed.
                    let long = if bad { 22.0 } else { 52.0 };
                    let (dx, dy) = (-sign * 0.41 * long, 0.91 * long);
                    let tip = format!("translate({:.1} {:.1})", x + dx, y + dy);
                    view! {
                        <line class=if bad { "nail bad" } else { "nail" } x1=x y1=y x2=x + dx y2=y + dy />
                        {if bad {
                            view! { <path class="nail bad" transform=tip d="M-5 -1L5 9M5 -1L-5 9" /> }.into_any()
                        } else {
                            view! { <path class="nail" transform=tip d="M-5 3L-1 8L6 -2" /> }.into_any()
                        }}
                    }
                })
                .collect_view()
        };
        view! {
            <svg class="section" viewBox="0 0 320 176" role="img" aria-label=label>
                // Rafters, sheathing, plate, ring.
                <path class="wood" d="M160 44L302 108L302 166L160 102L18 166L18 108Z" />
                <path class="sheet" d="M160 34L310 101.5L310 110L160 42.5L10 110L10 101.5Z" />
                <path class="plate" d="M160 30L276 82L276 86L160 34L44 86L44 82Z" />
                <circle class="ring" cx="160" cy="20" r="10" />
                {side(-1.0, miss_far)}
                {side(1.0, miss_near)}
                <path class="pull" d="M172 22L250 57M240 48L250 57L237 58" />
            </svg>
        }
    };
    view! {
        <figure class="anchor-section">
            {drawing}
            <figcaption class="hint">"✓ "{settings.s(Key::StrengthHit)}" · ✕ "{settings.s(Key::StrengthMiss)}</figcaption>
        </figure>
    }
}

/// A part as it looks, 96 by 72.
fn picture(look: Look) -> impl IntoView {
    let rope = "M48 2V70";
    let paths: Vec<(&'static str, &'static str)> = match look {
        Look::Fasteners(missed) => vec![
            ("thin", "M6 16H90M6 24H90"),
            ("fill", "M30 24H66V68H30Z"),
            ("line", "M40 8V50M56 8V50"),
            ("line", if missed > 0 { "M14 8V34M80 8V34" } else { "M48 8V54" }),
        ],
        Look::Rope(RopeState::Sound) => {
            vec![("rope wide", rope), ("thin", "M42 8L54 14M42 20L54 26M42 32L54 38M42 44L54 50M42 56L54 62")]
        }
        Look::Rope(RopeState::Frayed) => vec![
            ("rope wide", "M48 2V24M48 50V70"),
            (
                "thin",
                "M46 24C40 32 44 42 46 50M48 24C50 34 48 40 48 50M50 24C58 32 52 44 50 50M45 26L32 34M51 46L64 40M46 38L30 46M50 30L66 28",
            ),
        ],
        Look::Rope(RopeState::Knotted) => {
            vec![("rope wide", "M48 2V22C48 34 30 30 32 40C34 50 62 46 62 38C62 28 38 30 44 44L48 52V70")]
        }
        Look::Arrow(a) => vec![
            ("thin rope", rope),
            ("fill", "M34 18H62V56H34Z"),
            (
                "line",
                if a == Arrow::Up { "M48 50V26M40 34L48 24L56 34" } else { "M48 24V48M40 40L48 50L56 40" },
            ),
        ],
        Look::Bolt(b) => vec![
            ("fill", "M22 20H60V54H22Z"),
            (
                "line",
                if b == Bolt::Tight {
                    "M60 30H70V44H60ZM70 33H76V41H70Z"
                } else {
                    "M60 35H76M60 39H76M76 28L86 33V43L76 48ZM66 22C72 14 82 14 86 20M86 20L79 20M86 20L87 13"
                },
            ),
        ],
        Look::Latch(l) => vec![
            ("thin rope", rope),
            ("fill", "M30 18H46V56H30Z"),
            (
                "line",
                if l == Latch::Closed { "M46 20H64V54H46M56 34H62M56 40H62" } else { "M46 20L78 8V40L46 54" },
            ),
        ],
        Look::Connector(c) => vec![
            ("line", "M34 60C22 56 22 16 40 10C58 6 70 16 68 30"),
            ("line", "M34 60C48 66 64 60 68 50"),
            ("line", if c == ConnectorState::Unlocked { "M68 50L52 34" } else { "M68 50V30" }),
            (
                "thin",
                match c {
                    ConnectorState::Sound => "M63 36H73V44H63Z",
                    ConnectorState::Unlocked => "M70 52L78 58L72 64L64 58Z",
                    ConnectorState::Corroded => {
                        "M63 36H73V44H63ZM26 30L30 32M27 38L24 42M30 48L34 46M40 12L42 16M50 10L50 14M36 56L40 54M28 24L33 22M25 36L30 35"
                    }
                },
            ),
        ],
        Look::Pack(p) => vec![
            ("fill", "M30 14H66V54H30Z"),
            ("thin", "M34 20H62M34 26H62M34 32H62M34 38H62M34 44H62"),
            (
                "line",
                if p == PackState::Sound {
                    "M48 2V14M48 54V70"
                } else {
                    "M48 2V14M48 54V60M56 54C62 60 54 64 60 70M62 54L70 66M60 58L52 68M66 50L76 58"
                },
            ),
        ],
        Look::Webbing(w) => vec![
            (
                "fill",
                if w == WebbingState::Sound { "M34 4H62V68H34Z" } else { "M34 4H62V30L46 36L62 41V68H34Z" },
            ),
            ("thin", "M40 6V66M56 6V28M56 44V66"),
        ],
        Look::Label(l) => vec![
            ("fill", "M22 4H74V68H22Z"),
            (
                "line",
                if l == LabelState::Legible {
                    "M32 20H64V52H32ZM36 28H60M36 35H54M36 42H58"
                } else {
                    "M32 20L36 24M64 20L60 25M32 52L37 49M63 53L60 48"
                },
            ),
        ],
    };
    view! {
        <svg class="close" viewBox="0 0 96 72" aria-hidden="true">
            {paths.into_iter().map(|(class, d)| view! { <path class=class d=d /> }).collect_view()}
        </svg>
    }
}

/// The look at the gear before the climb.
#[component]
pub fn GearCheck() -> impl IntoView {
    let (bench, settings) = (bench(), settings());
    let mark = move |part: GearPart, fit: bool| {
        bench.looked.update(|l| {
            l.retain(|x| x.0 != part);
            l.push((part, fit));
        });
        if !fit {
            bench.edit(|s| part.put_right(s));
        }
        let r = settings.reader_now();
        let outcome = r.t(if fit { Key::GearPassed } else { Key::GearRejected });
        bench.said.set(format!("{}: {outcome}", r.t(part.label())));
    };
    let rows = move || {
        let r = settings.reader();
        let parts =
            bench.scenario.with(|s| GearPart::of(s).into_iter().map(|p| (p, p.look(s))).collect::<Vec<_>>());
        parts
            .into_iter()
            .map(|(part, look)| {
                let said = bench.looked.with(|l| l.iter().find(|x| x.0 == part).map(|x| x.1));
                let name = r.t(part.label());
                let label = move |k: Key| format!("{name}: {}", r.t(k));
                view! {
                    <li>
                        {picture(look)}
                        <div>
                            <p><strong>{name}</strong></p>
                            <p>{say::look(r, look)}</p>
                            {said.map(|fit| view! {
                                <p class="sev">{r.t(if fit { Key::GearPassed } else { Key::GearRejected })}</p>
                            })}
                            <div class="buttons">
                                <button type="button" aria-label=label(Key::GearPass) on:click=move |_| mark(part, true)>
                                    {r.t(Key::GearPass)}</button>
                                <button type="button" aria-label=label(Key::GearReject) on:click=move |_| mark(part, false)>
                                    {r.t(Key::GearReject)}</button>
                            </div>
                        </div>
                    </li>
                }
            })
            .collect_view()
    };
    let seen = move || {
        let all = bench.scenario.with(GearPart::of);
        let seen = bench.looked.with(|l| l.iter().filter(|x| all.contains(&x.0)).count());
        settings.reader().f(Key::GearSeen, &[("seen", &seen.to_string()), ("all", &all.len().to_string())])
    };
    view! {
        <div class="gear">
            <p class="hint">{settings.s(Key::GearHint)}</p>
            <div class="buttons">
                <button type="button" id="shed" on:click=move |_| {
                    bench.looked.set(vec![]);
                    let seed = (js_sys::Math::random() * 9e15) as u64;
                    bench.edit(|s| from_the_shed(s, seed));
                }>{settings.s(Key::GearShed)}</button>
                <button type="button" on:click=move |_| {
                    bench.looked.set(vec![]);
                    bench.edit(|s| for p in GearPart::of(s) { p.put_right(s) });
                }>{settings.s(Key::GearNew)}</button>
            </div>
            <p class="hint">{seen}</p>
            <ul class="parts">{rows}</ul>
        </div>
    }
}
