//! The two ways to write a text: a table of texts that stand alone, and a table of what the values of a type
//! are called. In both the languages stand side by side, and a missing one does not compile.

use super::Lang;

/// Something with a text in both languages.
pub trait Worded: Copy + Send + Sync + 'static {
    /// The text.
    fn words(self, lang: Lang) -> &'static str;
    /// The term that a place's own rules use for the same thing, where they have one.
    fn in_place(self, _place: &str) -> Self {
        self
    }
}

/// A text in both languages.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Text {
    /// English.
    pub en: &'static str,
    /// French.
    pub fr: &'static str,
}

impl Text {
    /// The text of anything that has one.
    pub fn of(x: impl Worded) -> Text {
        Text { en: x.words(Lang::En), fr: x.words(Lang::Fr) }
    }
}

impl Worded for Text {
    fn words(self, lang: Lang) -> &'static str {
        match lang {
            Lang::En => self.en,
            Lang::Fr => self.fr,
        }
    }
}

macro_rules! words {
    ($(#[$doc:meta])* $table:ident $(in $place:path)?; $($name:ident, $en:literal, $fr:literal;)*) => {
        $(#[$doc])*
        #[allow(missing_docs)]
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, serde::Serialize, serde::Deserialize)]
        pub enum $table { $($name,)* }
        impl $table {
            /// Every text.
            pub const ALL: &'static [$table] = &[$($table::$name,)*];
        }
        impl $crate::texts::table::Worded for $table {
            fn words(self, lang: $crate::texts::Lang) -> &'static str {
                // One long text packs far smaller than a choice among many.
                static INDEX: std::sync::OnceLock<Vec<&'static str>> = std::sync::OnceLock::new();
                let index = INDEX.get_or_init(|| concat!($($en, "\u{0}", $fr, "\u{0}",)*).split('\u{0}').collect());
                index.get(2 * self as usize + lang as usize).copied().unwrap_or_default()
            }
            $(fn in_place(self, place: &str) -> $table {
                $place(self, place)
            })?
        }
    };
}

macro_rules! texts {
    ($(#[$doc:meta])* $kind:ident::$method:ident; $($name:ident, $en:literal, $fr:literal;)*) => {
        impl $kind {
            $(#[$doc])*
            pub fn $method(self) -> Text {
                match self { $($kind::$name => Text { en: $en, fr: $fr },)* }
            }
        }
    };
}

pub(super) use {texts, words};
