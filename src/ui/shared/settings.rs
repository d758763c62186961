//! How this reader sees everything: language, units, colours, lettering.

use crate::texts::Lang;
use crate::texts::Worded;
use crate::texts::say::Reader;
use crate::units::Units;
use leptos::prelude::*;

/// Colours.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Theme {
    Auto,
    Light,
    Dark,
}

impl Theme {
    pub fn name(self) -> &'static str {
        match self {
            Theme::Auto => "auto",
            Theme::Light => "light",
            Theme::Dark => "dark",
        }
    }
}

/// How this reader sees everything.
#[derive(Clone, Copy)]
pub struct Settings {
    pub lang: RwSignal<Lang>,
    pub units: RwSignal<Units>,
    pub theme: RwSignal<Theme>,
    /// Large lettering, for a projector.
    pub large: RwSignal<bool>,
    /// Language and units as the views of one component read them. A signal remembers every reader it
    /// ever had; this one goes with its component, and its readers with it.
    seen: Memo<(Lang, Units)>,
}

impl Settings {
    /// Settings of these signals.
    pub fn of(
        lang: RwSignal<Lang>,
        units: RwSignal<Units>,
        theme: RwSignal<Theme>,
        large: RwSignal<bool>,
    ) -> Settings {
        Settings { lang, units, theme, large, seen: Memo::new(move |_| (lang.get(), units.get())) }
    }

    /// The reader, tracked.
    pub fn reader(self) -> Reader {
        let (lang, units) = self.seen.get();
        Reader { lang, units }
    }
    /// The reader, untracked.
    pub fn reader_now(self) -> Reader {
        Reader { lang: self.lang.get_untracked(), units: self.units.get_untracked() }
    }
    /// A text as a signal. Every text on the page shares this one type, which keeps the download
    /// small: a closure each would be compiled each on its own.
    pub fn s(self, key: impl Worded) -> Signal<&'static str> {
        Signal::derive(move || self.t(key))
    }
    /// A text, tracked.
    pub fn t(self, key: impl Worded) -> &'static str {
        key.words(self.seen.get().0)
    }
}

/// The settings, for the views of one component.
pub fn settings() -> Settings {
    let s: Settings = expect_context();
    Settings::of(s.lang, s.units, s.theme, s.large)
}
