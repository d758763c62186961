//! Today's set-up as one sentence whose words open their choice, and every choice with its number field under it.

use super::page::{Files, Glossary, PlaceRules};
use super::setup::SetUp;
use super::state::bench;
use crate::rules::place;
use crate::scenario::{HarnessFit, Scenario};
use crate::texts::say::{self, Reader};
use crate::texts::{Bench as W, Key, Stage as S};
use crate::ui::shared::settings::settings;
use crate::ui::shared::view;
use crate::units::{Quantity, Rounding};
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// The words of the sentence and the number of the card that each opens; 0 is the page's own settings.
fn words(r: Reader, s: &Scenario) -> Vec<(String, usize)> {
    let near = |q: Quantity, x: f64| r.q(q, x, Rounding::Nearest);
    let place_name = place(&s.place).map_or(String::new(), |p| r.lang.of(&p.name).to_owned());
    let straps = r.t(if s.worker.harness == HarnessFit::Snug { Key::FitSnug } else { Key::FitLoose });
    let absorber = r.t(if s.lanyard.absorber.is_some() { Key::AbsorberYes } else { Key::AbsorberNo });
    vec![
        (place_name, 0),
        (r.t(s.weather.label()).to_owned(), 10),
        (near(Quantity::Mass, s.worker.mass_kg), 5),
        (r.f(S::HarnessWord, &[("value", straps)]), 5),
        (r.f(S::LanyardWord, &[("value", &near(Quantity::Length, s.lanyard.length_m))]), 4),
        (r.f(S::AbsorberWord, &[("value", absorber)]), 4),
        (r.f(S::RescueWord, &[("value", r.t(s.plan.rescue.label()))]), 11),
    ]
}

/// The set-up in three words.
pub fn glance(r: Reader, s: &Scenario) -> String {
    let all = words(r, s);
    all.iter().take(3).map(|w| w.0.as_str()).collect::<Vec<_>>().join(" · ")
}

/// Opens a card and brings it into view.
fn open_card(number: usize) {
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
