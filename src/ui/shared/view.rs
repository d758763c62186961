//! How the page's two modules meet. The bench is loaded first; the rooms (lessons, quiz, crew and the
//! other practice) are fetched when somebody first goes there. Which room is open stands in the
//! address; what the reader chose and the set-up stand in one note on the window; a set-up comes back
//! to the bench as an address.

use super::settings::Settings;
use crate::scenario::Scenario;
use crate::scenario::file::{FileError, read_scenario};
use crate::scenario::link::{fragment, read_fragment};
use crate::texts::Lang;
use crate::units::Units;
use leptos::prelude::*;
use wasm_bindgen::prelude::*;

/// Name of the note on the window, and of the event that says it changed.
const NOTE: &str = "shortfall";

macro_rules! views {
    ($($name:ident, $hash:literal;)*) => {
        /// What the page shows.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum View {
            Bench, $($name,)*
            /// A scenario of the trainer's library by its number.
            Numbered(u32),
        }
        impl View {
            /// Whether it is one of the practice rooms.
            pub fn is_practice(self) -> bool {
                matches!(self, View::Lessons | View::Day | View::Framing | View::Rescue | View::Harness | View::Eave | View::Hooks | View::Site | View::Rope | View::Supports)
            }
            // A table packs smaller than a choice among strings.
            const NAMED: &[(View, &str)] = &[$((View::$name, $hash),)*];
            fn hash(self) -> &'static str {
                View::NAMED.iter().find(|v| v.0 == self).map_or("", |v| v.1)
            }
            fn now() -> View {
                let hash = window().location().hash().unwrap_or_default();
                let hash = hash.trim_start_matches('#');
                // A number of the library, short enough to type; the bench's own anchors are words.
                let number = || hash.parse().map_or(View::Bench, View::Numbered);
                View::NAMED.iter().find(|v| v.1 == hash).map_or_else(number, |v| v.0)
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
    Harness, "harness";
    Eave, "eave";
    Hooks, "hooks";
    Site, "site";
    Rope, "rope";
    Supports, "supports";
    Trainer, "trainer";
    Wall, "wall";
    Second, "second";
    Handout, "handout";
    House, "house";
    Held, "session";
    GearList, "gear";
    Incident, "incident";
}

/// The address of a part of the bundle. Finished, each has a hash in its name, told by the page's head.
pub fn part(name: &str) -> String {
    let told = document()
        .query_selector("meta[name=parts]")
        .ok()
        .flatten()
        .and_then(|m| m.get_attribute("content"))
        .and_then(|t| serde_json::from_str::<serde_json::Value>(&t).ok());
    let hashed = told.as_ref().and_then(|t| t[name].as_str()).unwrap_or(name);
    format!("./{hashed}")
}

/// Whether the reader asked for less motion.
pub fn wants_less_motion() -> bool {
    window().match_media("(prefers-reduced-motion: reduce)").ok().flatten().is_some_and(|m| m.matches())
}

/// A room that takes the whole window under the bar, for as long as its component lives: picture and strip, and no
/// page that scrolls.
pub fn fill_the_window() {
    let set = |on: bool| {
        if let Some(body) = document().body() {
            let _ = body.class_list().toggle_with_force("room-on", on);
        }
    };
    set(true);
    on_cleanup(move || set(false));
}

/// Tells a signal the size of an element, now and whenever it changes.
pub fn watch_size(e: &web_sys::Element, size: RwSignal<(f64, f64)>) {
    let measured = e.clone();
    // Told first before the next frame is painted: by itself that keeps the picture out of the mounting's task.
    let seen = Closure::<dyn Fn()>::new(move || {
        let now = (f64::from(measured.client_width()), f64::from(measured.client_height()));
        // What was measured may be gone.
        if size.try_get_untracked().is_some_and(|old| old != now) {
            size.set(now);
        }
    });
    if let Ok(watch) = web_sys::ResizeObserver::new(seen.as_ref().unchecked_ref()) {
        watch.observe(e);
        StoredValue::new_local(Watch(watch, seen));
    }
}

/// What measures an element, and goes with who asked: it holds the element, which else would never be let go of.
struct Watch(
    web_sys::ResizeObserver,
    #[expect(dead_code, reason = "held as long as it may be called")] Closure<dyn Fn()>,
);

impl Drop for Watch {
    fn drop(&mut self) {
        self.0.disconnect();
    }
}

/// Hears an event of the window as long as who asked is there.
pub fn on_window(event: &str, hear: impl Fn() + 'static) {
    let heard = window_event_listener_untyped(event, move |_| hear());
    on_cleanup(move || heard.remove());
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

/// Told on the window when somebody goes to where they are: a room goes back to its first screen.
pub const AGAIN: &str = "shortfall-again";

/// Whether a click is the second of a double one: it was meant for what stood there before.
pub fn is_second(ev: &web_sys::MouseEvent) -> bool {
    ev.detail() > 1
}

/// Goes to a view.
pub fn go(view: View) {
    if View::now() == view
        && let Ok(e) = web_sys::Event::new(AGAIN)
    {
        let _ = window().dispatch_event(&e);
    }
    let _ = window().location().set_hash(view.hash());
}

/// A set-up as a file for people: a line to a number.
pub fn set_up_json(s: &Scenario) -> String {
    let plain = serde_json::to_string(s).unwrap_or_default();
    let value: serde_json::Value = serde_json::from_str(&plain).unwrap_or_default();
    serde_json::to_string_pretty(&value).unwrap_or_default()
}

/// Writes the note; every signal that it reads is followed.
pub fn post(s: Settings, set_up: &Scenario) {
    let (lang, feet, large) = (s.lang.get().tag(), s.units.get() == Units::FeetPounds, s.large.get());
    let set_up = serde_json::to_string(set_up).unwrap_or_default();
    let note = format!(r#"{{"lang":"{lang}","feet":{feet},"large":{large},"set_up":{set_up}}}"#);
    let _ = js_sys::Reflect::set(&window(), &NOTE.into(), &note.into());
    if let Ok(e) = web_sys::Event::new(NOTE) {
        let _ = window().dispatch_event(&e);
    }
}

fn read(s: Settings, set_up: RwSignal<Scenario>) {
    let note = js_sys::Reflect::get(&window(), &NOTE.into()).ok().and_then(|t| t.as_string());
    let Some(note) = note.and_then(|t| serde_json::from_str::<serde_json::Value>(&t).ok()) else { return };
    let put = |lang: Lang, units: Units, large: bool| {
        if s.lang.get_untracked() != lang {
            s.lang.set(lang);
        }
        if s.units.get_untracked() != units {
            s.units.set(units);
        }
        if s.large.get_untracked() != large {
            s.large.set(large);
        }
    };
    put(
        if note["lang"] == "fr" { Lang::Fr } else { Lang::En },
        if note["feet"] == true { Units::FeetPounds } else { Units::Metric },
        note["large"] == true,
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
    // The room's button is gone: whoever comes by keyboard begins at the picture.
    set_timeout(|| to_view("scene"), std::time::Duration::from_millis(60));
}

/// Puts a set-up into the address, without a new step of history.
pub fn show_link(s: &Scenario) {
    let hash = format!("#{}", fragment(s));
    let _ = window().history().map(|h| h.replace_state_with_url(&JsValue::NULL, "", Some(&hash)));
}

/// Takes a set-up out of the address, if one is there.
pub fn forget_link() {
    if !crate::scenario::link::holds_set_up(&window().location().hash().unwrap_or_default()) {
        return;
    }
    let path = window().location().pathname().unwrap_or_default();
    let _ = window().history().map(|h| h.replace_state_with_url(&JsValue::NULL, "", Some(&path)));
}

/// Hands on the set-ups that come by the address while the page is open.
pub fn take_set_ups(now: RwSignal<Scenario>, take: impl Fn(Result<Scenario, FileError>) + 'static) {
    on_window("hashchange", move || {
        let hash = window().location().hash().unwrap_or_default();
        // A link that was just copied is the set-up on the bench itself.
        if hash.trim_start_matches('#') == now.with_untracked(fragment) {
            return;
        }
        if let Some(found) = read_fragment(&hash) {
            take(found);
        }
    });
}

/// How far the second module is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
enum Rooms {
    #[default]
    Away,
    Coming,
    Up,
}

thread_local! {
    static ROOMS: std::cell::Cell<Rooms> = const { std::cell::Cell::new(Rooms::Away) };
    /// Its script has run, and must not run twice.
    static SCRIPTED: std::cell::Cell<bool> = const { std::cell::Cell::new(false) };
}

/// After this the rooms count as lost, s.
const ROOMS_WAIT_S: u64 = 60;
/// Events on the window between the modules.
const ROOMS_LOST: &str = "shortfall-rooms-lost";
const ROOMS_UP: &str = "shortfall-rooms-up";

/// Says that the rooms stand.
pub fn rooms_are_up() {
    if let Ok(e) = web_sys::Event::new(ROOMS_UP) {
        let _ = window().dispatch_event(&e);
    }
}

/// Follows the second module's coming: `lost` is true while it was tried and could not be had. With the
/// network back it is tried again.
pub fn watch_rooms(lost: RwSignal<bool>) {
    on_window(ROOMS_UP, move || {
        ROOMS.set(Rooms::Up);
        lost.set(false);
    });
    on_window(ROOMS_LOST, move || {
        if ROOMS.get() != Rooms::Up {
            ROOMS.set(Rooms::Away);
            lost.set(true);
        }
    });
    on_window("online", move || {
        if lost.get_untracked() {
            fetch_rooms(lost);
        }
    });
}

fn rooms_lost() {
    if let Ok(e) = web_sys::Event::new(ROOMS_LOST) {
        let _ = window().dispatch_event(&e);
    }
}

/// Adds a script or a style sheet to the page.
fn add_part(name: &str, then: fn()) {
    let (tag, source) = if name.ends_with(".css") { ("link", "href") } else { ("script", "src") };
    let Ok(e) = document().create_element(tag) else { return rooms_lost() };
    // A script has no relation, and keeps its peace.
    let _ = e.set_attribute("rel", "stylesheet");
    let _ = e.set_attribute(source, &part(name));
    let done = Closure::once_into_js(then);
    let _ = e.add_event_listener_with_callback("load", done.unchecked_ref());
    let fail = Closure::once_into_js(rooms_lost);
    let _ = e.add_event_listener_with_callback("error", fail.unchecked_ref());
    if let Some(head) = document().head() {
        let _ = head.append_child(&e);
    }
}

/// Fetches the rooms unless they are there or coming.
pub fn fetch_rooms(lost: RwSignal<bool>) {
    if ROOMS.get() != Rooms::Away {
        return;
    }
    lost.set(false);
    ROOMS.set(Rooms::Coming);
    fn start() {
        SCRIPTED.set(true);
        add_part("rooms-start.js", || ());
    }
    if SCRIPTED.get() {
        start();
    } else {
        // What the rooms look like comes first.
        add_part("rooms.css", || add_part("rooms.js", start));
    }
    set_timeout(
        || {
            if ROOMS.get() == Rooms::Coming {
                rooms_lost();
            }
        },
        std::time::Duration::from_secs(ROOMS_WAIT_S),
    );
}

/// Moves focus to an element, or to another where that one is gone.
pub fn focus_on(id: String, or: &'static str) {
    request_animation_frame(move || {
        let find = |id: &str| {
            document().get_element_by_id(id).and_then(|e| e.dyn_into::<web_sys::HtmlElement>().ok())
        };
        match find(&id) {
            Some(e) => drop(e.focus()),
            None => to_view(or),
        }
    });
}

/// Moves focus to an element, and with it what is on the screen: the button that was pressed is gone.
pub fn to_view(id: &'static str) {
    request_animation_frame(move || {
        let found = document().get_element_by_id(id);
        if let Some(e) = found.and_then(|e| js_sys::Reflect::get(&e, &"focus".into()).ok().map(|f| (e, f)))
            && let Ok(focus) = e.1.dyn_into::<js_sys::Function>()
        {
            let _ = focus.call0(&e.0);
        }
    });
}
