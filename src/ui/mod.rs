//! The screen. The only folder that knows Leptos and web-sys; nothing else sees it.
//!
//! Signals live in `state`; a fall is computed whole, graded, and then played back by `player`, a
//! clock over the finished trace. `drawing` and `plot` only read.

mod crew;
mod day;
mod desk;
mod door;
mod drawing;
mod engine;
mod forms;
mod framing;
mod gear;
mod hand;
mod houses;
mod keep;
mod lessons;
mod map;
mod page;
mod player;
mod plot;
mod quiz;
mod rescue;
mod rooms;
mod setup;
mod sheet;
mod sideways;
mod spread;
mod state;
mod storage;
mod verdict;

use crate::engine::{Answer, Ask};
use wasm_bindgen::prelude::*;

/// Two switches in the address, for trying the app out: `#random` drives it with random input,
/// `#long` doubles every text.
fn try_out() {
    let hash = leptos::prelude::window().location().hash().unwrap_or_default();
    crate::texts::set_long(hash.contains("long"));
    let document = leptos::prelude::document();
    if hash.contains("random")
        && let (Ok(script), Some(head)) = (document.create_element("script"), document.head())
        && script.set_attribute("src", "./random.js").is_ok()
    {
        let _ = head.append_child(&script);
    }
}

/// Mounts the app over the static shell.
pub fn mount() {
    if let Some(shell) = leptos::prelude::document().get_element_by_id("shell") {
        shell.remove();
    }
    try_out();
    leptos::mount::mount_to_body(page::App);
    engine::start();
    storage::work_offline();
}

/// Mounts the rooms where the page has left a place for them.
pub fn mount_rooms() {
    use leptos::prelude::document;
    let place = document().get_element_by_id("rooms").and_then(|e| e.dyn_into::<web_sys::HtmlElement>().ok());
    let Some(place) = place else { return };
    place.set_inner_html("");
    leptos::mount::mount_to(place, rooms::Rooms).forget();
    engine::start();
}

/// The headless program's answer, in the browser: a scenario file in, a promise of the outcome as
/// JSON out. Tests use it to prove that both compute the same bits.
#[wasm_bindgen]
pub fn fall_json(scenario: String) -> js_sys::Promise {
    js_sys::Promise::new(&mut |yes, no| {
        engine::ask(&Ask::Json(scenario.clone()), move |answer| {
            let _ = match answer {
                Some(Answer::Json(Ok(text))) => yes.call1(&JsValue::NULL, &text.into()),
                Some(Answer::Json(Err(line))) => no.call1(&JsValue::NULL, &line.into()),
                _ => no.call1(&JsValue::NULL, &"the engine cannot run".into()),
            };
        });
    })
}
