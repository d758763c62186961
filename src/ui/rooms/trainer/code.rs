//! A scenario's link, and its code for a phone's camera.

use crate::practice::demos::Demo;
use crate::practice::plan::OWN_FROM;
use crate::scenario::link::fragment;
use crate::texts::Trainer as T;
use crate::ui::rooms::visit;
use crate::ui::shared::settings::settings;
use crate::ui::shared::view;
use leptos::prelude::*;
use qrcode::{Color, EcLevel, QrCode};
use std::fmt::Write as _;
use wasm_bindgen_futures::{JsFuture, spawn_local};

/// Modules of white round a code (ISO/IEC 18004: four).
const QUIET: usize = 4;
/// A link of more characters is too long to type.
const TYPED: usize = 60;

/// The link of a scenario: a number for one that everybody has, the set-up itself for one's own.
pub fn link(d: &Demo, place: &str) -> String {
    let base = window().location().href().unwrap_or_default();
    let base = base.split('#').next().unwrap_or_default().to_owned();
    if d.id < OWN_FROM { format!("{base}#{}", d.id) } else { format!("{base}#{}", fragment(&d.under(place))) }
}

/// A text as the modules of a code, level M, as one path; and how wide it is with its quiet zone.
fn modules(text: &str) -> Option<(String, usize)> {
    let code = QrCode::with_error_correction_level(text.as_bytes(), EcLevel::M).ok()?;
    let wide = code.width();
    let mut d = String::new();
    for (i, _) in code.to_colors().iter().enumerate().filter(|(_, c)| **c == Color::Dark) {
        let _ = write!(d, "M{} {}h1v1h-1z", i % wide + QUIET, i / wide + QUIET);
    }
    Some((d, wide + 2 * QUIET))
}

/// The code, large, over the whole window.
#[component]
pub fn Code(demo: Demo, shut: Callback<()>) -> impl IntoView {
    let (visit, settings) = (visit(), settings());
    let link = link(&demo, &visit.set_up.with_untracked(|s| s.place.clone()));
    let drawn = modules(&link);
    // Nothing asked yet, or whether the clipboard took it.
    let copied = RwSignal::new(None::<bool>);
    let copy = {
        let link = link.clone();
        move |_| {
            let promise = window().navigator().clipboard().write_text(&link);
            spawn_local(async move {
                let _ = copied.try_set(Some(JsFuture::from(promise).await.is_ok()));
            });
        }
    };
    let by_hand = {
        let (link, short) = (link.clone(), link.len() <= TYPED);
        move || {
            (copied.get() == Some(false)).then(|| {
                view! {
                    <p role="status">{settings.s(T::CopyByHand)}</p>
                    {(!short).then(|| view! { <p class="typed">{link.clone()}</p> })}
                }
            })
        }
    };
    let typed = (link.len() <= TYPED).then(|| link.clone());
    let family = demo.family;
    view::to_view("code-h");
    view! {
        <section class="code-wall" aria-labelledby="code-h" on:keydown=move |ev| if ev.key() == "Escape" { shut.run(()) }>
            <div><h2 id="code-h" tabindex="-1">{settings.s(T::OpenOnPhone)}</h2><p class="lead">{settings.s(T::SameSetUp)}</p>
                <p>{settings.s(family.label())}</p>
                {match typed {
                    Some(text) => view! { <p class="typed">{text}</p> }.into_any(),
                    None => view! { <p>{settings.s(T::TooLong)}</p> }.into_any(),
                }}
                {by_hand}
                <div class="row buttons"><button type="button" id="copy-link" on:click=copy>{move || settings.t(if copied.get() == Some(true) { T::Copied } else { T::CopyLink })}</button>
                    <button type="button" class="main" id="shut-code" on:click=move |_| shut.run(())>{settings.s(T::CloseCode)}</button></div>
                <p class="vh" data-link=link.clone()></p></div>
            {drawn.map(|(d, wide)| view! {
                <svg class="code" viewBox=format!("0 0 {wide} {wide}") role="img" aria-label=settings.s(T::CodeLabel) shape-rendering="crispEdges">
                    <rect width=wide height=wide fill="#fff" /><path d=d fill="#000" /></svg>
            })}
        </section>
    }
}
