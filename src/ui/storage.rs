//! What is kept on the device: settings and the set-up, in localStorage. Nothing leaves it.

use super::state::{Settings, Theme};
use crate::lessons::{Ending, Lesson};
use crate::link::read_fragment;
use crate::report::read_scenario;
use crate::scenario::Scenario;
use crate::texts::{Key, Lang};
use crate::units::Units;
use leptos::prelude::*;

const SETTINGS: &str = "shortfall.settings";
const SCENARIO: &str = "shortfall.scenario";
const LESSONS: &str = "shortfall.lessons";
const ENDINGS: &str = "shortfall.endings";

fn store() -> Option<web_sys::Storage> {
    window().local_storage().ok().flatten()
}

fn get(key: &str) -> Option<String> {
    store()?.get_item(key).ok().flatten()
}

fn put(key: &str, value: &str) -> bool {
    store().is_some_and(|s| s.set_item(key, value).is_ok())
}

/// Settings as kept, else as the device speaks.
pub fn load_settings() -> Settings {
    let kept: serde_json::Value =
        get(SETTINGS).and_then(|t| serde_json::from_str(&t).ok()).unwrap_or_default();
    let device_french = window().navigator().language().is_some_and(|l| l.starts_with("fr"));
    let lang = match kept["lang"].as_str() {
        Some("fr") => Lang::Fr,
        Some("en") => Lang::En,
        _ if device_french => Lang::Fr,
        _ => Lang::En,
    };
    let units = if kept["units"] == "feet" { Units::FeetPounds } else { Units::Metric };
    let theme = match kept["theme"].as_str() {
        Some("light") => Theme::Light,
        Some("dark") => Theme::Dark,
        _ => Theme::Auto,
    };
    Settings {
        lang: RwSignal::new(lang),
        units: RwSignal::new(units),
        theme: RwSignal::new(theme),
        room: RwSignal::new(kept["room"] == true),
    }
}

/// Keeps the settings; reads every one, so an effect around it runs on each change.
pub fn save_settings(s: Settings) {
    let text = serde_json::json!({
        "lang": s.lang.get().tag(),
        "units": if s.units.get() == Units::FeetPounds { "feet" } else { "metric" },
        "theme": s.theme.get().name(),
        "room": s.room.get(),
    });
    put(SETTINGS, &text.to_string());
}

/// The set-up from the address, else the kept one, else the default; and a notice if the address
/// held one that cannot be read.
pub fn load_scenario(s: Settings) -> (Scenario, String) {
    let hash = window().location().hash().unwrap_or_default();
    let kept = || get(SCENARIO).and_then(|t| read_scenario(&t).ok()).unwrap_or_default();
    match read_fragment(&hash) {
        Some(Ok(s)) => {
            // From now on the kept one counts: a reload must not bring the link back over later edits.
            super::door::forget_link();
            (s, String::new())
        }
        Some(Err(e)) => (kept(), s.reader_now().f(Key::FileBad, &[("reason", &e)])),
        None => (kept(), String::new()),
    }
}

/// Keeps the set-up; false when the device keeps nothing.
pub fn save_scenario(s: &Scenario) -> bool {
    serde_json::to_string(s).is_ok_and(|t| put(SCENARIO, &t))
}

/// Hands the page to the service worker that the bundle made, so that it opens without a network.
/// Where there is none (a bare file, an old browser) the page works as long as it is open.
pub fn work_offline() {
    use wasm_bindgen::JsValue;
    let navigator: JsValue = window().navigator().into();
    if js_sys::Reflect::has(&navigator, &"serviceWorker".into()).unwrap_or(false) {
        let register = window().navigator().service_worker().register("./sw.js");
        wasm_bindgen_futures::spawn_local(async move {
            let _ = wasm_bindgen_futures::JsFuture::from(register).await;
        });
    }
}

/// The lessons done on this device.
pub fn load_lessons() -> Vec<Lesson> {
    get(LESSONS).and_then(|t| serde_json::from_str(&t).ok()).unwrap_or_default()
}

/// Keeps them.
pub fn save_lessons(done: &[Lesson]) {
    put(LESSONS, &serde_json::to_string(done).unwrap_or_default());
}

/// The endings found on this device.
pub fn load_endings() -> Vec<Ending> {
    get(ENDINGS).and_then(|t| serde_json::from_str(&t).ok()).unwrap_or_default()
}

/// Adds the endings that a fall showed.
pub fn add_endings(seen: Vec<Ending>) {
    let mut all = load_endings();
    all.extend(seen);
    all.sort_unstable();
    all.dedup();
    put(ENDINGS, &serde_json::to_string(&all).unwrap_or_default());
}

/// Lets go of the lessons done and the endings found.
pub fn clear_progress() {
    for key in [LESSONS, ENDINGS] {
        if let Some(s) = store() {
            let _ = s.remove_item(key);
        }
    }
}

/// Lets go of settings and set-up.
pub fn clear() {
    for key in [SETTINGS, SCENARIO, LESSONS, ENDINGS] {
        if let Some(s) = store() {
            let _ = s.remove_item(key);
        }
    }
}
