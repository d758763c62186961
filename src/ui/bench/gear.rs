//! Close looks: the anchor in section, and each part of the gear as a person would hold it.
//!
//! Drawn by us from how such parts work in general. Every picture has its words beside it, and the
//! words never judge: finding the fault is the person's work.

use super::state::bench;
use crate::practice::inspection::{GearPart, Look, from_the_shed};
use crate::scenario::MOST_FASTENERS_PER_SIDE;
use crate::scene::lens;
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

/// A part as it looks.
fn picture(look: Look) -> impl IntoView {
    view! {
        <svg class="close" viewBox="0 0 96 72" aria-hidden="true">
            {lens::look(look).into_iter().map(|(class, d)| view! { <path class=class d=d /> }).collect_view()}
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
