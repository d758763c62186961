//! What is kept on the device: settings and the set-up, in localStorage. Nothing leaves it.

use super::settings::{Settings, Theme};
use crate::practice::lessons::{Ending, Lesson};
use crate::scenario::Scenario;
use crate::scenario::file::{Fault, FileError, read_whole};
use crate::scenario::link::read_fragment;
use crate::texts::{Key, Lang, say};
use crate::units::Units;
use leptos::prelude::*;

const SETTINGS: &str = "shortfall.settings";
const SCENARIO: &str = "shortfall.scenario";
const LESSONS: &str = "shortfall.lessons";
const ENDINGS: &str = "shortfall.endings";
const GUESSES: &str = "shortfall.guesses";
/// The lesson that the bench was visited from, for this tab alone.
const FROM_LESSON: &str = "shortfall.from-lesson";
/// How far beside its anchor the set-up that a room sends to the bench stands, for this tab alone.
const ASIDE: &str = "shortfall.aside";
/// The working day of this tab, the roof that is tapped.
pub const DAY: &str = "shortfall.day";
pub const FRAMING: &str = "shortfall.framing";
pub const RESCUE: &str = "shortfall.rescue";
/// The property that is walked.
pub const SITE: &str = "shortfall.site";
/// The note after a fall, half written.
pub const INCIDENT: &str = "shortfall.incident";
/// The set-up that a link took the place of.
const MINE: &str = "shortfall.mine";

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
    Settings::of(
        RwSignal::new(lang),
        RwSignal::new(units),
        RwSignal::new(theme),
        RwSignal::new([&kept["large"], &kept["room"]].contains(&&serde_json::Value::Bool(true))),
    )
}

/// Keeps the settings; reads every one, so an effect around it runs on each change.
pub fn save_settings(s: Settings) {
    let text = serde_json::json!({
        "lang": s.lang.get().tag(),
        "units": if s.units.get() == Units::FeetPounds { "feet" } else { "metric" },
        "theme": s.theme.get().name(),
        "large": s.large.get(),
    });
    put(SETTINGS, &text.to_string());
}

/// Provides the settings, keeps them and shows them on the page's root.
pub fn provide_settings() -> Settings {
    let s = load_settings();
    provide_context(s);
    Effect::new(move |_| {
        save_settings(s);
        if let Some(html) = document().document_element() {
            let _ = html.set_attribute("lang", s.lang.get().tag());
            let _ = html.set_attribute("data-theme", s.theme.get().name());
            let _ = html.class_list().toggle_with_force("large", s.large.get());
        }
        document().set_title(s.t(Key::AppName));
    });
    s
}

/// This tab's own store, so that a reload brings back what this tab showed, whatever others did.
fn tab() -> Option<web_sys::Storage> {
    window().session_storage().ok().flatten()
}

fn read(from: Option<web_sys::Storage>, key: &str) -> Option<Scenario> {
    read_whole(&from?.get_item(key).ok().flatten()?).ok()
}

/// What the bench opens with.
pub struct Opened {
    /// The set-up.
    pub now: Scenario,
    /// The ones that links took the place of, the last one last.
    pub mine: Vec<Scenario>,
    /// Whether `now` is only looked at, and not kept yet.
    pub looked_at: bool,
    /// A sentence on a link that cannot be read.
    pub notice: String,
}

/// The set-up from the address, else the one this tab had, else the one kept last, else the default. A
/// link is looked at: what was kept stays kept.
pub fn load_scenario(s: Settings) -> Opened {
    let hash = window().location().hash().unwrap_or_default();
    let kept = read(tab(), SCENARIO).or_else(|| read(store(), SCENARIO));
    let mut mine = load_mine();
    let (now, looked_at, notice) = match read_fragment(&hash).map(known) {
        Some(Ok(now)) if kept.as_ref() != Some(&now) => {
            if let Some(own) = kept.filter(|k| mine.last() != Some(k)) {
                mine.push(own);
            }
            (now, true, String::new())
        }
        Some(Err(e)) => {
            super::view::forget_link();
            (kept.unwrap_or_default(), false, say::file_error(s.reader_now(), &e))
        }
        _ => (kept.unwrap_or_default(), false, String::new()),
    };
    // What is on the bench itself is not something to go back to.
    while mine.last() == Some(&now) {
        mine.pop();
    }
    Opened { now, mine, looked_at, notice }
}

/// A set-up whose place this version knows.
pub fn known(read: Result<Scenario, FileError>) -> Result<Scenario, FileError> {
    read.and_then(|s| match crate::rules::place(&s.place) {
        Some(_) => Ok(s),
        None => Err(FileError { path: "place".to_owned(), ..Fault::WrongValue.into() }),
    })
}

/// Set-ups that links took the place of, as many as are kept.
const MOST_MINE: usize = 5;

fn load_mine() -> Vec<Scenario> {
    let text = [tab(), store()].into_iter().flatten().find_map(|s| s.get_item(MINE).ok().flatten());
    let all: Vec<serde_json::Value> = text.and_then(|t| serde_json::from_str(&t).ok()).unwrap_or_default();
    all.iter().filter_map(|v| read_whole(&v.to_string()).ok()).collect()
}

/// Keeps the set-up, for this tab and for the next one opened; false when the device keeps nothing.
pub fn save_scenario(s: &Scenario) -> bool {
    let Ok(text) = serde_json::to_string(s) else { return false };
    let here = tab().is_some_and(|t| t.set_item(SCENARIO, &text).is_ok());
    put(SCENARIO, &text) && here
}

/// Keeps the set-ups that links took the place of: for this tab, and for the next one, since a link
/// opens in a tab of its own.
pub fn save_mine(mine: &[Scenario]) {
    let last = &mine[mine.len().saturating_sub(MOST_MINE)..];
    for s in [tab(), store()].into_iter().flatten() {
        let _ = match serde_json::to_string(last) {
            Ok(text) if !last.is_empty() => s.set_item(MINE, &text),
            _ => s.remove_item(MINE),
        };
    }
}

/// A list that is kept, as far as this version knows its entries.
fn list<T: serde::de::DeserializeOwned>(key: &str) -> Vec<T> {
    let all: Vec<serde_json::Value> =
        get(key).and_then(|t| serde_json::from_str(&t).ok()).unwrap_or_default();
    all.into_iter().filter_map(|v| serde_json::from_value(v).ok()).collect()
}

/// The lessons done on this device.
pub fn load_lessons() -> Vec<Lesson> {
    list(LESSONS)
}

/// Keeps them.
pub fn save_lessons(done: &[Lesson]) {
    put(LESSONS, &serde_json::to_string(done).unwrap_or_default());
}

/// The best guess of each lesson on this device: how far it was off, m.
pub fn load_guesses() -> Vec<(Lesson, f64)> {
    list(GUESSES).into_iter().filter(|g: &(Lesson, f64)| (0.0..100.0).contains(&g.1)).collect()
}

/// Adds a guess; the nearer one stays.
pub fn add_guess(lesson: Lesson, off_m: f64) {
    let mut all = load_guesses();
    match all.iter_mut().find(|g| g.0 == lesson) {
        Some(g) => g.1 = g.1.min(off_m),
        None => all.push((lesson, off_m)),
    }
    put(GUESSES, &serde_json::to_string(&all).unwrap_or_default());
}

/// Notes the lesson that the bench is visited from, or that it was gone back to.
pub fn note_lesson(lesson: Option<Lesson>) {
    let Some(tab) = tab() else { return };
    let _ = match lesson.and_then(|l| serde_json::to_string(&l).ok()) {
        Some(text) => tab.set_item(FROM_LESSON, &text),
        None => tab.remove_item(FROM_LESSON),
    };
}

/// The lesson that the bench was visited from.
pub fn noted_lesson() -> Option<Lesson> {
    serde_json::from_str(&tab()?.get_item(FROM_LESSON).ok().flatten()?).ok()
}

/// Notes how far beside its anchor, m, the set-up stands that is sent to the bench.
pub fn note_aside(offset_m: f64) {
    keep_here(ASIDE, &offset_m);
}

/// Takes that note.
pub fn take_aside() -> Option<f64> {
    let noted = kept_here(ASIDE);
    drop_here(ASIDE);
    noted.filter(|m: &f64| (0.0..=100.0).contains(m))
}

/// Keeps what a room has half done, for this tab: a reload or the browser's Back brings it back.
pub fn keep_here<T: serde::Serialize>(key: &str, what: &T) {
    if let (Some(tab), Ok(text)) = (tab(), serde_json::to_string(what)) {
        let _ = tab.set_item(key, &text);
    }
}

/// What is kept so, if this version can read it.
pub fn kept_here<T: serde::de::DeserializeOwned>(key: &str) -> Option<T> {
    serde_json::from_str(&tab()?.get_item(key).ok().flatten()?).ok()
}

/// Lets go of it.
pub fn drop_here(key: &str) {
    if let Some(tab) = tab() {
        let _ = tab.remove_item(key);
    }
}

/// Keeps a text of the device's, for every tab; false when it would not.
pub fn keep_text<T: serde::Serialize>(key: &str, what: &T) -> bool {
    serde_json::to_string(what).is_ok_and(|t| put(key, &t))
}

/// What is kept so, if this version can read it.
pub fn kept_text<T: serde::de::DeserializeOwned>(key: &str) -> Option<T> {
    serde_json::from_str(&get(key)?).ok()
}

/// The endings found on this device.
pub fn load_endings() -> Vec<Ending> {
    let mut all: Vec<Ending> = list(ENDINGS);
    all.sort_unstable();
    all.dedup();
    all
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
    for key in [LESSONS, ENDINGS, GUESSES] {
        if let Some(s) = store() {
            let _ = s.remove_item(key);
        }
    }
}

/// Lets go of settings and set-up.
pub fn clear() {
    for key in [
        SETTINGS,
        SCENARIO,
        LESSONS,
        ENDINGS,
        GUESSES,
        FROM_LESSON,
        MINE,
        ASIDE,
        DAY,
        FRAMING,
        RESCUE,
        SITE,
        INCIDENT,
    ] {
        for s in [store(), tab()].into_iter().flatten() {
            let _ = s.remove_item(key);
        }
    }
}
