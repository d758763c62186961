//! What stands under the choices of the drawer: files and links, what the place asks, words of the trade.

use super::state::bench;
use crate::rules::place;
use crate::scenario::file::{Fault, LARGEST_FILE_BYTES, read_whole};
use crate::scenario::link::fragment;
use crate::texts::Bench as W;
use crate::texts::{Key, say};
use crate::ui::shared::settings::settings;
use crate::ui::shared::view;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::{JsFuture, spawn_local};

/// Keeping, saving, opening and sharing a set-up.
#[component]
pub fn Files() -> impl IntoView {
    let (bench, settings) = (bench(), settings());
    let href = move || {
        let json = bench.scenario.with(view::set_up_json);
        format!("data:application/json;charset=utf-8,{}", js_sys::encode_uri_component(&json))
    };
    let open = move |ev: web_sys::Event| {
        let Some(input) = ev.target().and_then(|t| t.dyn_into::<web_sys::HtmlInputElement>().ok()) else {
            return;
        };
        let Some(file) = input.files().and_then(|f| f.get(0)) else { return };
        spawn_local(async move {
            let read = if file.size() > LARGEST_FILE_BYTES as f64 {
                Err(Fault::TooLarge.into())
            } else {
                match JsFuture::from(file.text()).await.ok().and_then(|t| t.as_string()) {
                    Some(t) => crate::ui::shared::store::known(read_whole(&t)),
                    None => Err(Fault::NotText.into()),
                }
            };
            match read {
                Ok(s) => {
                    bench.notice.set(String::new());
                    bench.edit(|now| *now = s);
                }
                Err(e) => bench.notice.set(say::file_error(settings.reader_now(), &e)),
            }
            input.set_value("");
        });
    };
    let copy = move |_| {
        let link = bench.scenario.with_untracked(fragment);
        let location = window().location();
        let base =
            format!("{}{}", location.origin().unwrap_or_default(), location.pathname().unwrap_or_default());
        let promise = window().navigator().clipboard().write_text(&format!("{base}#{link}"));
        spawn_local(async move {
            if JsFuture::from(promise).await.is_ok() {
                bench.notice.set(settings.reader_now().t(Key::LinkCopied).to_owned());
            } else {
                // Without a clipboard the link stands in the address.
                let _ = location.set_hash(&link);
            }
        });
    };
    view! {
        <section class="files">
            <a class="button" download="shortfall-set-up.json" href=href>{settings.s(Key::SaveFile)}</a>
            <label class="button"><input type="file" accept="application/json,.json" class="vh" on:change=open />
                {settings.s(Key::OpenFile)}</label>
            <button type="button" on:click=copy>{settings.s(Key::CopyLink)}</button>
            <p class="hint" role="status">{move || if bench.is_looked_at() {
                    settings.t(W::NotKeptYet)
                } else {
                    settings.t(if bench.kept.get() { Key::Kept } else { Key::NotKept })
                }}</p>
        </section>
    }
}

/// What the place asks, line by line with its sources.
#[component]
pub fn PlaceRules() -> impl IntoView {
    let (bench, settings) = (bench(), settings());
    let place_id = Memo::new(move |_| bench.scenario.with(|s| s.place.clone()));
    let rows = move || {
        let r = settings.reader();
        let p = place(&place_id.get())?;
        let limits = p.limits.iter().map(|l| {
            let volts = l.up_to_v.map(|v| {
                let kv = crate::texts::number(r.lang, v / 1e3, if v < 1e3 { 2 } else { 0 });
                format!(" ({})", r.f(W::UpToVolts, &[("kv", &kv)]))
            });
            let name = format!("{}{}", r.t(l.what.label()), volts.unwrap_or_default());
            view! { <li><p><strong>{name}</strong>{r.colon()}{r.limit(l)}</p><p class="source">{r.source(l)}</p></li> }
        });
        let duties = p.duties.iter().map(|d| {
            view! { <li><p><strong>{r.t(d.what.label())}</strong></p><p class="source">{r.duty(d)}</p></li> }
        });
        let name = view! { <p><strong>{r.lang.of(&p.name).to_owned()}</strong></p> };
        let note = p.note.as_ref().map(|n| view! { <p>{r.lang.of(n).to_owned()}</p> });
        Some(view! { {name}{note}<ul>{limits.collect_view()}{duties.collect_view()}</ul> })
    };
    view! {
        <details class="part place-rules">
            <summary><span class="what"><strong>{settings.s(W::RulesHere)}</strong></span></summary>
            <div class="controls findings"><p class="hint">{settings.s(W::RulesHint)}</p>{rows}</div>
        </details>
    }
}

/// Words of the trade in a line each.
#[component]
pub fn Glossary() -> impl IntoView {
    let settings = settings();
    let rows = say::GLOSSARY
        .map(|(word, told)| view! { <div><dt>{settings.s(word)}</dt><dd>{settings.s(told)}</dd></div> })
        .collect_view();
    view! {
        <details class="part glossary">
            <summary><span class="what"><strong>{settings.s(W::WordsHeading)}</strong></span></summary>
            <div class="controls"><dl>{rows}</dl></div>
        </details>
    }
}
