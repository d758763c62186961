//! A record on one printed page, in both languages; and records as files.

use super::desk::desk;
use crate::quiz::questions::Item;
use crate::quiz::record::Record;
use crate::rules::DutyKind;
use crate::texts::say::Reader;
use crate::texts::{Key, Lang, Room as W, Text, Worded, ask};
use crate::ui::shared::asking;
use crate::ui::shared::settings::settings;
use crate::units::Units;
use crate::worker::questions::{Write as WriteFile, Writing};
use leptos::prelude::*;
use wasm_bindgen::{JsCast, JsValue};

/// Hands a text over as a file.
pub fn download(name: &str, kind: &str, content: &str) {
    let parts = js_sys::Array::of1(&JsValue::from_str(content));
    let bag = web_sys::BlobPropertyBag::new();
    bag.set_type(kind);
    let Ok(blob) = web_sys::Blob::new_with_str_sequence_and_options(&parts, &bag) else { return };
    let Ok(url) = web_sys::Url::create_object_url_with_blob(&blob) else { return };
    let link = document().create_element("a").ok().and_then(|e| e.dyn_into::<web_sys::HtmlElement>().ok());
    if let Some(link) = link {
        let _ = link.set_attribute("href", &url);
        let _ = link.set_attribute("download", name);
        link.click();
    }
    let _ = web_sys::Url::revoke_object_url(&url);
}

/// Name of the file of one record.
pub const ONE_RECORD: &str = "shortfall-record.json";

/// A button that writes records to a file.
#[component]
pub fn Write(how: Writing, records: Signal<Vec<Record>>, name: &'static str, label: W) -> impl IntoView {
    let (desk, settings) = (desk(), settings());
    let go = move |_| {
        let one = name == ONE_RECORD;
        let w = WriteFile {
            how,
            french: settings.lang.get_untracked() == Lang::Fr,
            records: records.get_untracked(),
            // Of one record, the file holds that one alone.
            unread: if one { vec![] } else { desk.unread.get_untracked() },
            crew: if one { vec![] } else { desk.crew.get_untracked() },
        };
        asking::ask(w, move |answer| {
            if let Ok(t) = answer {
                let kind = if how == Writing::Csv { "text/csv;charset=utf-8" } else { "application/json" };
                download(name, kind, &t);
            }
        });
    };
    view! { <button type="button" class="write" data-file=name on:click=go>{settings.s(label)}</button> }
}

fn both(key: impl Worded) -> String {
    let t = Text::of(key);
    format!("{} / {}", t.en, t.fr)
}

/// One line for each miss, in the language that it was asked in: what was asked, what was answered, what is right.
fn misses(record: &Record, items: &[Item]) -> AnyView {
    let lang = if record.header.lang == "fr" { Lang::Fr } else { Lang::En };
    let r = Reader { lang, units: Units::Metric };
    let rows: Vec<_> = items
        .iter()
        .zip(&record.answers)
        .enumerate()
        .filter(|(_, (_, a))| a.credit_share < 1.0)
        .map(|(n, (q, a))| {
            let mark = if a.critical { "✕ !" } else { "✕" };
            let yours = r.f(W::QuizYours, &[("answer", &ask::given(r, q, &a.given))]);
            let right = r.f(W::QuizKey, &[("answer", &ask::right(r, q))]);
            let stem = ask::stem(r, q);
            view! { <li>{format!("{mark} {}. {stem} {yours}. {right}.", n + 1)}</li> }
        })
        .collect();
    if rows.is_empty() {
        view! { <p class="not">{both(W::SheetNoMiss)}</p> }.into_any()
    } else {
        view! { <ol class="misses">{rows}</ol> }.into_any()
    }
}

/// The page that is printed: nothing else of the screen is.
#[component]
pub fn Sheet(
    record: Record,
    /// Its questions, drawn again.
    items: Vec<Item>,
) -> impl IntoView {
    let (h, s) = (record.header.clone(), record.score());
    let place = crate::rules::place(&h.from.place)
        .map_or(h.from.place.clone(), |p| format!("{} / {}", p.name.en, p.name.fr));
    let versions = crate::texts::fill(
        W::SheetVersionsTold.words(Lang::En),
        &[
            ("app", &h.app),
            ("physics", &h.physics.to_string()),
            ("rules", &h.rules.to_string()),
            ("quiz", &h.quiz.to_string()),
        ],
    );
    // The rule that asks for a record of training, where the place has one of its own.
    let law = crate::rules::place(&h.from.place).and_then(|p| p.duty(DutyKind::TrainingRecord)).map(|d| {
        let line = |lang: Lang| Reader { lang, units: Units::Metric }.duty(d);
        format!("{}: {} / {}", both(W::SheetLaw), line(Lang::En), line(Lang::Fr))
    });
    let percent = |x: f64| format!("{:.0}\u{a0}%", (x * 100.0).floor());
    let rows = [
        (Text::of(W::QuizWho), h.who.clone()),
        (
            Text::of(W::SheetFinished),
            record.finished.replace('T', " ").get(..16).unwrap_or_default().to_owned(),
        ),
        (Text::of(Key::PlaceLabel), place),
        (
            Text::of(Key::Language),
            if h.lang == "fr" { "French / français" } else { "English / anglais" }.to_owned(),
        ),
        (Text::of(W::QuizSeed), h.from.seed.to_string()),
        (
            Text::of(W::SheetPoints),
            format!("{} ({} {})", percent(s.points_share), both(W::QuizCut), percent(h.cut_share)),
        ),
        (Text::of(W::SheetCritical), s.critical.to_string()),
        (Text::of(W::SheetResult), both(if s.passes { W::SheetPassed } else { W::SheetNotPassed })),
        (Text::of(W::QuizTrainer), h.trainer.clone()),
    ]
    .map(|(k, v)| view! { <tr><th scope="row">{both(k)}</th><td>{v}</td></tr> })
    .collect_view();
    let told = misses(&record, &items);
    view! {
        <section class="sheet" aria-hidden="true">
            <h1>{both(W::SheetTitle)}</h1>
            <p class="not">{W::QuizNotCertificate.words(Lang::En)}</p>
            <p class="not">{W::QuizNotCertificate.words(Lang::Fr)}</p>
            <table><tbody>{rows}</tbody></table>
            {told}
            {record.clock_set_back.then(|| view! { <p>{both(W::NoteClockBack)}</p> })}
            {law.map(|l| view! { <p class="not">{l}</p> })}
            <div class="signs"><p class="sign">{both(W::SheetSignWorker)}</p><p class="sign">{both(W::SheetSign)}</p></div>
            <p class="id">{both(W::SheetVersions)}": "{versions}</p>
            <p class="id">{record.id().to_owned()}</p>
            <p class="id">{both(W::SheetChain)}</p>
        </section>
    }
}
