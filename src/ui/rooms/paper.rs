//! What printed pages share: the head, ruled lines, the foot with its caution in both languages and the versions.

use crate::grade::report::APP_VERSION;
use crate::physics::PHYSICS_VERSION;
use crate::rules::RULES_VERSION;
use crate::scenario::Scenario;
use crate::texts::{Lang, Text, Worded};
use crate::ui::shared::settings::settings;
use leptos::prelude::*;

/// What it is, its title, and what stands at the right.
#[component]
pub fn Head(over: String, title: String, right: String, under: String) -> impl IntoView {
    view! { <div class="paper-head"><div><p>{over}</p><h1>{title}</h1></div><div class="right"><b>{right}</b><p>{under}</p></div></div> }
}

/// Ruled lines to write on.
#[component]
pub fn Lines(count: usize) -> impl IntoView {
    (0..count).map(|_| view! { <p class="rule"></p> }).collect_view()
}

/// The replay of a set-up as a short hash: enough to tell two sheets apart.
fn replay(s: &Scenario) -> String {
    let text = serde_json::to_string(s).unwrap_or_default();
    // FNV-1a.
    let hash =
        text.bytes().fold(0xcbf2_9ce4_8422_2325_u64, |h, b| (h ^ u64::from(b)).wrapping_mul(0x100_0000_01b3));
    format!("{hash:016x}")
}

/// The caution, the reader's language first, and what computed the page.
#[component]
pub fn Foot(caution: Text, set_up: Scenario) -> impl IntoView {
    let lang = settings().reader_now().lang;
    let versions = format!(
        "Shortfall {APP_VERSION} · physics {PHYSICS_VERSION} · rules {RULES_VERSION} · replay {}",
        replay(&set_up)
    );
    view! {
        <p class="caution"><b>{caution.words(lang)}</b></p><p class="caution">{caution.words(other(lang))}</p><p class="id">{versions}</p>
    }
}

/// The other language.
pub fn other(lang: Lang) -> Lang {
    if lang == Lang::En { Lang::Fr } else { Lang::En }
}
