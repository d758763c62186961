//! Codes to sentences, in English and French; and numbers as a person reads them.
//!
//! Both languages of every text stand side by side (`table`), so a missing one does not compile. Texts
//! hold named places like `{value}` that [`fill`] fills; `tests/tidy.rs` checks that both
//! languages name the same ones. What comes from the rules of a place (documents, clauses, limits) is data
//! beside its source, in `src/rules/places`. No verdict uses the word 'safe'.

pub mod ask;
mod bench;
mod codes;
mod findings;
mod gear;
mod labels;
mod page;
mod pairs;
mod rooms;
pub mod say;
mod site;
mod stage;
pub mod table;
mod trainer;

pub use bench::Bench;
pub use gear::Gear;
pub use page::Key;
pub use pairs::Pairs;
pub use rooms::Room;
pub use site::Walk;
pub use stage::Stage;
pub use table::{Text, Worded};
pub use trainer::Trainer;

use crate::units::{Quantity, Rounding, Units, round_to};

/// The language of the screen. It does not set the place whose rules apply.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Lang {
    /// English.
    #[default]
    En,
    /// French.
    Fr,
}

impl Lang {
    /// Both.
    pub const ALL: [Lang; 2] = [Lang::En, Lang::Fr];

    /// Its BCP 47 tag.
    pub fn tag(self) -> &'static str {
        match self {
            Lang::En => "en",
            Lang::Fr => "fr",
        }
    }

    /// The text of a sentence held in both languages.
    pub fn of(self, b: &crate::rules::Bilingual) -> &str {
        match self {
            Lang::En => &b.en,
            Lang::Fr => &b.fr,
        }
    }
}

/// Fills named places: `fill("{a} of {b}", &[("a", "1"), ("b", "2")])`.
pub fn fill(template: &str, values: &[(&str, &str)]) -> String {
    let mut out = template.to_owned();
    for (name, value) in values {
        out = out.replace(&format!("{{{name}}}"), value);
    }
    out
}

/// Names of the places in a template, sorted.
pub fn places_in(template: &str) -> Vec<&str> {
    let mut names: Vec<&str> =
        template.split('{').skip(1).filter_map(|p| p.split_once('}').map(|(n, _)| n)).collect();
    names.sort_unstable();
    names.dedup();
    names
}

/// Space between a number and its unit: no break.
const UNIT_SPACE: char = '\u{a0}';

/// A plain number with `decimals` places in a language's notation.
pub fn number(lang: Lang, value: f64, decimals: usize) -> String {
    let plain = format!("{value:.decimals$}");
    let (int, frac) = plain.split_once('.').unwrap_or((&plain, ""));
    let (sign, digits) = int.strip_prefix('-').map_or(("", int), |d| ("\u{2212}", d));
    let mut grouped = String::new();
    for (i, c) in digits.chars().enumerate() {
        if i > 0 && (digits.len() - i).is_multiple_of(3) && digits.len() > 3 {
            grouped.push(if lang == Lang::En { ',' } else { '\u{202f}' });
        }
        grouped.push(c);
    }
    if frac.is_empty() {
        format!("{sign}{grouped}")
    } else {
        format!("{sign}{grouped}{}{frac}", if lang == Lang::En { '.' } else { ',' })
    }
}

/// A unit's symbol as a language writes it: feet are 'pi' in French (pieds).
pub fn symbol(lang: Lang, q: Quantity, units: Units) -> &'static str {
    match (lang, q.symbol(units)) {
        (Lang::Fr, "ft") => "pi",
        (Lang::Fr, "ft/s") => "pi/s",
        (Lang::Fr, "lbf/ft") => "lbf/pi",
        (Lang::Fr, "ft·lbf") => "pi·lbf",
        (_, s) => s,
    }
}

fn with_unit(lang: Lang, number: &str, q: Quantity, units: Units) -> String {
    match symbol(lang, q, units) {
        "" => number.to_owned(),
        "°" => format!("{number}°"),
        unit => format!("{number}{UNIT_SPACE}{unit}"),
    }
}

/// A number with its unit.
pub fn quantity(lang: Lang, units: Units, q: Quantity, si: f64, rounding: Rounding) -> String {
    let d = q.decimals(units);
    let shown = round_to(si * q.shown_per_si(units), d, rounding);
    with_unit(lang, &number(lang, shown, d), q, units)
}

/// A limit: as many decimals as it needs, three at most.
pub fn limit_quantity(lang: Lang, units: Units, q: Quantity, si: f64) -> String {
    let x = si * q.shown_per_si(units);
    // A metric limit may be no round number in feet; then the usual decimals do.
    let d = (0..=2)
        .find(|d| (x - round_to(x, *d, Rounding::Nearest)).abs() < 2e-3 * x.abs().max(0.05))
        .unwrap_or(2);
    with_unit(lang, &number(lang, round_to(x, d, Rounding::Nearest), d), q, units)
}

/// A number held against a limit: more decimals when rounding would hide on which side it is.
pub fn quantity_against(
    lang: Lang,
    units: Units,
    q: Quantity,
    si: f64,
    limit_si: f64,
    rounding: Rounding,
) -> String {
    let k = q.shown_per_si(units);
    let mut d = q.decimals(units);
    while d < 5 {
        let shown = round_to(si * k, d, rounding);
        let same_side = (shown > limit_si * k) == (si > limit_si);
        if same_side && ((shown - limit_si * k).abs() > 1e-9 || (si - limit_si).abs() < 1e-9) {
            break;
        }
        d += 1;
    }
    with_unit(lang, &number(lang, round_to(si * k, d, rounding), d), q, units)
}
