//! The screen. The only folder that knows Leptos and web-sys; nothing else sees it.
//!
//! Signals live in `state`; a fall is computed whole, graded, and then played back by `player`, a
//! clock over the finished trace. `drawing` and `plot` only read.

mod bench;
mod rooms;
mod shared;

use self::shared::{asking, view};
use crate::worker::questions::{Draws, Outcome};
use wasm_bindgen::prelude::*;

/// Mounts the app over the static shell.
pub fn mount() {
    for gone in ["shell", "ended"] {
        if let Some(e) = leptos::prelude::document().get_element_by_id(gone) {
            e.remove();
        }
    }
    tell_panics();
    leptos::mount::mount_to_body(bench::page::App);
    asking::start();
}

/// A panic ends the module it happens in: it is logged, and the person is told, with a way to save
/// everything (`public/boot.js`).
fn tell_panics() {
    std::panic::set_hook(Box::new(|info| {
        console_error_panic_hook::hook(info);
        let tell = js_sys::Reflect::get(&leptos::prelude::window(), &"shortfallEnded".into());
        if let Ok(tell) = tell.and_then(JsCast::dyn_into::<js_sys::Function>) {
            let _ = tell.call0(&JsValue::NULL);
        }
    }));
}

/// Mounts the rooms where the page has left a place for them.
pub fn mount_rooms() {
    use leptos::prelude::document;
    let place = document().get_element_by_id("rooms").and_then(|e| e.dyn_into::<web_sys::HtmlElement>().ok());
    let Some(place) = place else { return };
    place.set_inner_html("");
    tell_panics();
    leptos::mount::mount_to(place, rooms::Rooms).forget();
    view::rooms_are_up();
    asking::start();
}

/// The headless program's answer, in the browser: a scenario file in, a promise of the outcome as
/// JSON out. Tests use it to prove that both compute the same bits.
#[wasm_bindgen]
pub fn fall_json(scenario: String) -> js_sys::Promise {
    js_sys::Promise::new(&mut |yes, no| {
        asking::ask(Outcome(scenario.clone()), move |answer| {
            let _ = match answer {
                Ok(Ok(text)) => yes.call1(&JsValue::NULL, &text.into()),
                Ok(Err(line)) => no.call1(&JsValue::NULL, &line.into()),
                Err(_) => no.call1(&JsValue::NULL, &"the engine cannot run".into()),
            };
        });
    })
}

/// Everything that is drawn from each of `count` seeds from `first` on, as hashes. Tests use it to prove
/// that the browser asks the same questions as were proved natively.
#[wasm_bindgen]
pub fn draws(first: u32, count: u32) -> js_sys::Promise {
    js_sys::Promise::new(&mut |yes, no| {
        asking::ask(Draws { first: u64::from(first), count }, move |answer| {
            let _ = match answer {
                Ok(text) => yes.call1(&JsValue::NULL, &text.into()),
                Err(_) => no.call1(&JsValue::NULL, &"the engine cannot run".into()),
            };
        });
    })
}
