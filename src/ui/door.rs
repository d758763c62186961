//! How the page's two modules meet. The bench is loaded first; the rooms (lessons, quiz, crew and the
//! other practice) are fetched when somebody first goes there. Which room is open stands in the
//! address; what the reader chose and the set-up stand in one note on the window; a set-up comes back
//! to the bench as an address.

use super::state::Settings;
use crate::link::{fragment, read_fragment};
use crate::report::read_scenario;
use crate::scenario::Scenario;
use crate::texts::{Lang, is_long, set_long};
use crate::units::Units;
use leptos::prelude::*;
use wasm_bindgen::prelude::*;

/// Name of the note on the window, and of the event that says it changed.
const NOTE: &str = "shortfall";

macro_rules! views {
    ($($name:ident, $hash:literal;)*) => {
        /// What the page shows.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum View { Bench, $($name,)* }
        impl View {
            /// Whether it is one of the practice rooms.
            pub fn is_practice(self) -> bool {
                matches!(self, View::Lessons | View::Day | View::Framing | View::Rescue)
            }
            fn hash(self) -> &'static str {
                match self { View::Bench => "", $(View::$name => $hash,)* }
            }
            fn now() -> View {
                match window().location().hash().unwrap_or_default().trim_start_matches('#') {
                    $($hash => View::$name,)*
                    _ => View::Bench,
                }
            }
        }
    };
}

views! {
    Lessons, "lessons";
    Quiz, "quiz";
    Crew, "crew";
    Day, "day";
    Framing, "framing";
    Rescue, "rescue";
}

fn on_window(event: &str, hear: impl Fn() + 'static) {
    let hear = Closure::<dyn Fn()>::new(hear);
    let _ = window().add_event_listener_with_callback(event, hear.as_ref().unchecked_ref());
    hear.forget();
}

/// The view of the address, followed.
pub fn provide_view() -> RwSignal<View> {
    let view = RwSignal::new(View::now());
    on_window("hashchange", move || {
        let now = View::now();
        if view.get_untracked() != now {
            view.set(now);
            window().scroll_to_with_x_and_y(0.0, 0.0);
        }
    });
    provide_context(view);
    view
}

/// Goes to a view.
pub fn go(view: View) {
    let _ = window().location().set_hash(view.hash());
}

/// Writes the note; every signal that it reads is followed.
pub fn post(s: Settings, set_up: &Scenario) {
    let note = serde_json::json!({
        "lang": s.lang.get().tag(),
        "feet": s.units.get() == Units::FeetPounds,
        "room": s.room.get(),
        "long": is_long(),
        "set_up": set_up,
    });
    let _ = js_sys::Reflect::set(&window(), &NOTE.into(), &note.to_string().into());
    if let Ok(e) = web_sys::Event::new(NOTE) {
        let _ = window().dispatch_event(&e);
    }
}

fn read(s: Settings, set_up: RwSignal<Scenario>) {
    let note = js_sys::Reflect::get(&window(), &NOTE.into()).ok().and_then(|t| t.as_string());
    let Some(note) = note.and_then(|t| serde_json::from_str::<serde_json::Value>(&t).ok()) else { return };
    set_long(note["long"] == true);
    let put = |lang: Lang, units: Units, room: bool| {
        if s.lang.get_untracked() != lang {
            s.lang.set(lang);
        }
        if s.units.get_untracked() != units {
            s.units.set(units);
        }
        if s.room.get_untracked() != room {
            s.room.set(room);
        }
    };
    put(
        if note["lang"] == "fr" { Lang::Fr } else { Lang::En },
        if note["feet"] == true { Units::FeetPounds } else { Units::Metric },
        note["room"] == true,
    );
    if let Ok(now) = read_scenario(&note["set_up"].to_string()) {
        set_up.set(now);
    }
}

/// Reads the note now and whenever it changes.
pub fn follow(s: Settings, set_up: RwSignal<Scenario>) {
    read(s, set_up);
    on_window(NOTE, move || read(s, set_up));
}

/// Sends a set-up to the bench and goes there.
pub fn to_bench(s: &Scenario) {
    let _ = window().location().set_hash(&fragment(s));
    window().scroll_to_with_x_and_y(0.0, 0.0);
}

/// Takes a set-up that was read out of the address.
pub fn forget_link() {
    let path = window().location().pathname().unwrap_or_default();
    let _ = window().history().map(|h| h.replace_state_with_url(&JsValue::NULL, "", Some(&path)));
}

/// Hands on the set-ups that come by the address while the page is open.
pub fn take_set_ups(now: RwSignal<Scenario>, take: impl Fn(Result<Scenario, String>) + 'static) {
    on_window("hashchange", move || {
        let hash = window().location().hash().unwrap_or_default();
        // A link that was just copied is the set-up on the bench itself.
        if hash.trim_start_matches('#') == now.with_untracked(fragment) {
            return;
        }
        if let Some(found) = read_fragment(&hash) {
            take(found);
            forget_link();
        }
    });
}

/// Fetches the rooms, once. `failed` is told when they cannot be had.
pub fn fetch_rooms(failed: impl Fn() + 'static) {
    let document = document();
    if document.get_element_by_id("rooms-module").is_some() {
        return;
    }
    let Ok(script) = document.create_element("script") else { return failed() };
    let _ = script.set_attribute("id", "rooms-module");
    let _ = script.set_attribute("src", "./rooms.js");
    let start = Closure::<dyn Fn()>::new(|| {
        if let Ok(script) = leptos::prelude::document().create_element("script") {
            let _ = script.set_attribute("src", "./rooms-start.js");
            if let Some(head) = leptos::prelude::document().head() {
                let _ = head.append_child(&script);
            }
        }
    });
    let _ = script.add_event_listener_with_callback("load", start.as_ref().unchecked_ref());
    start.forget();
    let fail = Closure::<dyn Fn()>::new(move || {
        if let Some(gone) = leptos::prelude::document().get_element_by_id("rooms-module") {
            gone.remove();
        }
        failed();
    });
    let _ = script.add_event_listener_with_callback("error", fail.as_ref().unchecked_ref());
    fail.forget();
    if let Some(head) = document.head() {
        let _ = head.append_child(&script);
    }
}
