//! Today's set-up as one sentence whose words open their choice, and every choice with its number field under it.

use super::reference::{Files, Glossary, PlaceRules};
use super::sentence::words;
use super::setup::SetUp;
use super::state::bench;
use crate::texts::say;
use crate::texts::{Bench as W, Key, Stage as S};
use crate::ui::shared::settings::settings;
use crate::ui::shared::view;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// Opens a card and brings it into view.
pub fn open_card(number: usize) {
    let all = if number == 0 { ".options" } else { ".layer .part" };
    let Ok(found) = document().query_selector_all(all) else { return };
    let Some(card) =
        found.item(number.saturating_sub(1) as u32).and_then(|e| e.dyn_into::<web_sys::Element>().ok())
    else {
        return;
    };
    let _ = card.set_attribute("open", "");
    card.scroll_into_view();
    if let Ok(Some(head)) = card.query_selector("summary")
        && let Ok(head) = head.dyn_into::<web_sys::HtmlElement>()
    {
        let _ = head.focus();
    }
}

/// The drawer.
#[component]
pub fn Drawer() -> impl IntoView {
    let (bench, settings) = (bench(), settings());
    let sentence = move || {
        let r = settings.reader();
        let all = bench.scenario.with(|s| words(r, s));
        let last = all.len();
        all.into_iter()
            .enumerate()
            .map(|(i, (word, card))| {
                let end = if i + 1 == last { "." } else { "," };
                view! { <button type="button" class="word" on:click=move |_| open_card(card)><u>{word}</u>{end}</button>" " }
            })
            .collect_view()
    };
    let state = move || bench.scenario.with(|s| say::state(settings.reader(), s).join(" "));
    view! {
        <p class="today-sentence" id="sentence">{sentence}</p>
        <p class="hint">{settings.s(S::DrawerHint)}</p>
        <SetUp />
        <Files />
        <PlaceRules />
        <Glossary />
        <details class="part words-part"><summary><span class="what"><strong>{settings.s(Key::StateHeading)}</strong></span></summary>
            <div class="controls"><p>{state}</p><p class="hint">{settings.s(W::KeysChoosing)}</p><p class="hint">{settings.s(Key::KeyHelp)}</p></div></details>
        <div class="foot"><p>{settings.s(Key::Caution)}</p>
            <p><a href=view::part("notices.txt") target="_blank" rel="noopener">{settings.s(W::NoticesLink)}</a></p></div>
    }
}
