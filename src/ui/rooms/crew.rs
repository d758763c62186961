//! The crew: who did what, who is due, what the crew has not understood; files in and out.

use super::desk::{Desk, Note, desk, today};
use super::quiz::Notes;
use super::sheet::{Sheet, Write};
use crate::quiz::export::{LARGEST_IMPORT_BYTES, Refused};
use crate::quiz::questions::{Item, ItemKind};
use crate::quiz::record::{Doubt, Record};
use crate::quiz::roster::{DueKind, analysis, next_due};
use crate::texts::Key;
use crate::texts::Room as W;
use crate::texts::say::Reader;
use crate::ui::shared::asking;
use crate::ui::shared::settings::{Settings, settings};
use crate::ui::shared::view;
use crate::units::date;
use crate::worker::questions::{ReadNames, Reopen, Reopened, TakeIn, Writing};
use leptos::prelude::*;
use std::collections::{HashMap, HashSet};
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::{JsFuture, spawn_local};

/// Why a chosen file gives no text.
enum NoText {
    TooLarge,
    Unreadable,
}

/// The text of a chosen file, if it is not too large: UTF-8, else what older spreadsheets write
/// (Windows-1252).
async fn file_text(ev: &web_sys::Event) -> Option<Result<String, NoText>> {
    let input = ev.target()?.dyn_into::<web_sys::HtmlInputElement>().ok()?;
    let file = input.files()?.get(0)?;
    let text = if file.size() > LARGEST_IMPORT_BYTES as f64 {
        Err(NoText::TooLarge)
    } else {
        let bytes = JsFuture::from(file.array_buffer()).await.map(|b| js_sys::Uint8Array::new(&b).to_vec());
        bytes.ok().and_then(decoded).ok_or(NoText::Unreadable)
    };
    input.set_value("");
    Some(text)
}

fn decoded(bytes: Vec<u8>) -> Option<String> {
    String::from_utf8(bytes)
        .or_else(|e| {
            let decoder = web_sys::TextDecoder::new_with_label("windows-1252").map_err(drop)?;
            decoder.decode_with_u8_array(e.as_bytes()).map_err(drop)
        })
        .ok()
}

/// People from whom on questions are looked at.
const FEWEST: usize = 5;
/// People shown before the rest is asked for.
const SHOWN_AT_FIRST: usize = 100;

/// What is doubtful about a record, in words.
fn doubt_words(r: Reader, doubt: Option<Doubt>) -> &'static str {
    match doubt {
        None => r.t(W::DoubtNone),
        Some(Doubt::Edited) => r.t(W::DoubtEdited),
        Some(Doubt::OutOfRange) => r.t(W::DoubtRange),
        Some(Doubt::OtherVersion) => r.t(W::DoubtVersion),
        Some(Doubt::DoesNotReplay) => r.t(W::DoubtReplay),
    }
}

/// What this page says of what was done, in its one line.
#[derive(Clone, Copy)]
struct Told {
    said: RwSignal<String>,
    settings: Settings,
}

impl Told {
    fn tell(self, words: String) {
        let _ = self.said.try_set(words);
    }

    fn missing(self) {
        self.tell(self.settings.reader_now().t(Key::EngineMissing).to_owned());
    }
}

/// Puts the names of a pasted list or a file on the crew's list.
fn add(desk: Desk, told: Told, pasted: RwSignal<String>, text: String) {
    let (settings, tell) = (told.settings, move |words| told.tell(words));
    asking::ask(ReadNames(text), move |answer| {
        let Ok(names) = answer else {
            return told.missing();
        };
        desk.add_crew(names, move |done| {
            let r = settings.reader_now();
            let Some((added, over)) = done else { return tell(r.t(W::CrewNotKept).to_owned()) };
            let mut words = r.f(W::CrewAdded, &[("n", &added.to_string())]);
            if over > 0 {
                words = format!("{words} {}", r.f(W::CrewTooMany, &[("n", &over.to_string())]));
            }
            tell(words);
            // What did not fit stays to be seen.
            if over == 0 {
                let _ = pasted.try_set(String::new());
            }
        });
    });
}

fn add_file(desk: Desk, told: Told, pasted: RwSignal<String>, ev: web_sys::Event) {
    let (settings, tell) = (told.settings, move |words| told.tell(words));
    spawn_local(async move {
        let key = match file_text(&ev).await {
            None => return,
            Some(Ok(t)) => return add(desk, told, pasted, t),
            Some(Err(NoText::TooLarge)) => settings.reader_now().t(Key::RefusedTooLarge),
            Some(Err(NoText::Unreadable)) => settings.reader_now().t(W::RefusedUnreadable),
        };
        tell(key.to_owned());
    });
}

/// Takes a file of records in.
fn take(desk: Desk, told: Told, ev: web_sys::Event) {
    let (settings, tell) = (told.settings, move |words| told.tell(words));
    spawn_local(async move {
        let refused = move |r: Refused| {
            let key = r.label();
            tell(settings.reader_now().t(key).to_owned());
        };
        let text = match file_text(&ev).await {
            None => return,
            Some(Err(NoText::TooLarge)) => return refused(Refused::TooLarge),
            Some(Err(NoText::Unreadable)) => {
                return tell(settings.reader_now().t(W::RefusedUnreadable).to_owned());
            }
            Some(Ok(t)) => t,
        };
        let held = desk.records.with_untracked(|all| all.iter().map(|r| r.id().to_owned()).collect());
        asking::ask(TakeIn { text, held }, move |answer| match answer {
            Ok(Ok(i)) => {
                let (range, unread) = (i.out_of_range, i.unread);
                let (fresh, held, edited) = (i.fresh.len(), i.held, i.edited);
                let names = i.crew;
                desk.take_in(i.fresh, move |kept| {
                    let r = settings.reader_now();
                    if !kept {
                        return tell(r.t(W::ImportNotKept).to_owned());
                    }
                    let mut words = r.f(
                        W::ImportDone,
                        &[
                            ("fresh", &fresh.to_string()),
                            ("held", &held.to_string()),
                            ("edited", &edited.to_string()),
                        ],
                    );
                    if range + unread > 0 {
                        let more = [("range", range.to_string()), ("unread", unread.to_string())];
                        let more = [(more[0].0, more[0].1.as_str()), (more[1].0, more[1].1.as_str())];
                        words = format!("{words} {}", r.f(W::ImportLeftOut, &more));
                    }
                    tell(words.clone());
                    desk.add_crew(names, move |done| {
                        if let Some((_, over)) = done.filter(|d| d.1 > 0) {
                            let r = settings.reader_now();
                            let more = r.f(W::CrewTooMany, &[("n", &over.to_string())]);
                            tell(format!("{words} {more}"));
                        }
                    });
                });
            }
            Ok(Err(r)) => refused(r),
            Err(_) => told.missing(),
        });
    });
}

/// Draws a record's form again and opens it.
fn reopen(desk: Desk, told: Told, r: Record) {
    let (settings, tell) = (told.settings, move |words| told.tell(words));
    asking::ask(Reopen(r.clone()), move |answer| {
        if let Ok(Reopened { doubt, form }) = answer {
            desk.found(r.id().to_owned(), doubt);
            tell(doubt_words(settings.reader_now(), doubt).to_owned());
            if doubt.is_none() {
                let s = super::desk::Sitting {
                    header: r.header.clone(),
                    mode: crate::quiz::Mode::Assessment,
                    answers: r.answers.clone(),
                };
                desk.form.set(Some(form));
                desk.sitting.set(Some(s));
                desk.done.set(Some(r));
                crate::ui::shared::view::go(crate::ui::shared::view::View::Quiz);
            }
        }
    });
}

/// Prints a record on one page, with its questions drawn again.
fn print(told: Told, sheet: RwSignal<Option<(Record, Vec<Item>)>>, r: Record) {
    asking::ask(Reopen(r.clone()), move |answer| {
        let Ok(Reopened { form, .. }) = answer else { return told.missing() };
        let _ = sheet.try_set(Some((r, form.items)));
        request_animation_frame(|| {
            let _ = window().print();
        });
    });
}

/// The topics of a form as dots: right, partly or not, and those that were not asked.
fn dots(r: Reader, q: &Record) -> impl IntoView + use<> {
    let mut right = 0;
    let mut asked = 0;
    let all = ItemKind::ALL
        .iter()
        .map(|kind| {
            let mine: Vec<f64> =
                q.answers.iter().filter(|a| a.kind == *kind).map(|a| a.credit_share).collect();
            let class = if mine.is_empty() {
                "dot none"
            } else if mine.iter().all(|c| *c >= 1.0) {
                asked += 1;
                right += 1;
                "dot right"
            } else {
                asked += 1;
                "dot miss"
            };
            view! { <i class=class title=r.t(kind.label())></i> }
        })
        .collect_view();
    let words = r.f(W::CrewTopics, &[("right", &right.to_string()), ("all", &asked.to_string())]);
    view! { <p class="topics"><span class="dots" aria-hidden="true">{all}</span><span class="sev">{words}</span></p> }
}

/// When somebody is due: at once, on a day, or not at all; who is due first comes first.
fn due_key(mine: &[&Record], mid: Option<time::Date>, now: Option<time::Date>) -> (u8, Option<time::Date>) {
    match now.and_then(|now| next_due(mine, mid, now)) {
        Some((d, true)) => (0, d.on),
        Some((d, false)) => (1, d.on),
        None => (2, None),
    }
}

/// One of the crew, with the records of that name, the last one last.
fn person(
    desk: Desk,
    told: Told,
    sheet: RwSignal<Option<(Record, Vec<Item>)>>,
    who: String,
    mine: &[&Record],
    (mid, now): (Option<time::Date>, Option<time::Date>),
) -> impl IntoView + use<> {
    let settings = told.settings;
    let r = settings.reader();
    let last = mine.last().map(|q| (*q).clone());
    let sentence = last.as_ref().map_or(r.t(W::CrewNone).to_owned(), |q| {
        let s = q.score();
        r.f(
            if s.passes { W::CrewPassed } else { W::CrewNotPassed },
            &[
                ("day", q.finished.get(..10).unwrap_or_default()),
                ("points", &format!("{:.0}\u{a0}%", (s.points_share * 100.0).floor())),
            ],
        )
    });
    let due =
        now.and_then(|now| next_due(mine, mid, now)).map_or(r.t(W::DueNothing).to_owned(), |(d, come)| {
            let what = match d.kind {
                DueKind::First => r.t(W::DueFirst).to_owned(),
                DueKind::Recheck(n) => r.f(W::DueRecheck, &[("days", &n.to_string())]),
                DueKind::MidSeason => r.t(W::DueMid).to_owned(),
            };
            let when = d.on.map_or(String::new(), |d| d.to_string());
            r.f(if come { W::DueNow } else { W::DueLater }, &[("what", &what), ("day", &when)])
        });
    let mark = last.as_ref().map(|q| {
        desk.doubts.with(|d| match d.get(q.id()) {
            Some(None) => ("✓ ", r.t(W::MarkReplayed)),
            Some(doubt) => ("△ ", doubt_words(r, *doubt)),
            None => ("", r.t(W::MarkWaiting)),
        })
    });
    let (show, name) = (last.clone(), who.clone());
    view! {
        <li><p class="who"><strong>{if who.is_empty() { "—".to_owned() } else { who.clone() }}</strong></p>
            <p class="due">{due}</p><div class="last"><p>{sentence}</p>{last.as_ref().map(|q| dots(r, q))}</div>
            {mark.map(|(shape, words)| view! { <p class="sev mark-of"><b aria-hidden="true">{shape}</b>{words}</p> })}
            <div class="row buttons">
            {last.map(|q| { let again = q.clone(); view! {
                <button type="button" class="reopen" on:click=move |_| reopen(desk, told, again.clone())>{r.t(W::CrewOpen)}</button>
                <button type="button" class="sheet-of" on:click=move |_| if let Some(q) = show.clone() { print(told, sheet, q) }>{r.t(W::Print)}</button>
            } })}
            {mine.is_empty().then(|| view! {
                <button type="button" aria-label=format!("{}{}{}", r.t(W::CrewRemove), r.colon(), name)
                    on:click=move |_| {
                        told.tell(settings.reader_now().f(W::CrewRemoved, &[("who", &name)]));
                        desk.remove_crew(name.clone());
                    }>{r.t(W::CrewRemove)}</button>
            })}
            </div></li>
    }
}

/// A list to paste, or a file of names.
#[component]
fn AddPeople(told: Told) -> impl IntoView {
    let (desk, settings) = (desk(), settings());
    let pasted = RwSignal::new(String::new());
    view! {
        <form class="card" on:submit=move |ev: web_sys::SubmitEvent| { ev.prevent_default(); add(desk, told, pasted, pasted.get_untracked()) }>
            <label class="line"><span>{settings.s(W::CrewPaste)}</span>
                <textarea id="paste" rows="4" prop:value=move || pasted.get()
                    on:input=move |ev| pasted.set(event_target_value(&ev))></textarea></label>
            <div class="row buttons">
                <button type="submit" id="add-crew">{settings.s(W::CrewAdd)}</button>
                <label class="button"><input type="file" accept=".csv,text/csv,text/plain" class="vh" id="crew-file"
                    on:change=move |ev| add_file(desk, told, pasted, ev) />
                    {settings.s(W::CrewCsv)}</label>
            </div>
        </form>
    }
}

/// What the crew has not understood, by kind of question.
#[component]
fn Analysis() -> impl IntoView {
    let (desk, settings) = (desk(), settings());
    // Of fewer people it says more about them than about the questions.
    let few = Memo::new(move |_| {
        desk.records.with(|all| all.iter().map(|q| q.header.who.as_str()).collect::<HashSet<_>>().len())
            < FEWEST
    });
    let kinds = move || {
        let r = settings.reader();
        desk.records.with(|records| {
            analysis(records)
                .into_iter()
                .map(|k| {
                    let apart = k.discrimination_ratio.map_or("—".to_owned(), |d| crate::texts::number(r.lang, d, 2));
                    view! {
                        <tr><th scope="row">{r.t(k.kind.label())}</th><td>{k.answered}</td>
                            <td>{format!("{:.0}\u{a0}%", (k.right_share * 100.0).floor())}</td><td>{apart}</td></tr>
                    }
                })
                .collect_view()
        })
    };
    view! {
        <h3>{settings.s(W::CrewAnalysis)}</h3>
        <Show when=move || !few.get() fallback=move || view! { <p class="hint" id="few">{settings.s(W::CrewFew)}</p> }>
        <p class="hint">{settings.s(W::CrewAnalysisHint)}</p>
        <div class="scroll" tabindex="0" role="group" aria-label=settings.s(W::CrewAnalysis)><table class="analysis"><thead><tr><th scope="col">{settings.s(W::ColKind)}</th>
            <th scope="col">{settings.s(W::ColAnswered)}</th><th scope="col">{settings.s(W::ColRight)}</th>
            <th scope="col">{settings.s(W::ColApart)}</th></tr></thead><tbody>{kinds}</tbody></table></div></Show>
    }
}

/// Records as files, out and in.
#[component]
fn FilesCard(told: Told) -> impl IntoView {
    let (desk, settings) = (desk(), settings());
    let every = Signal::derive(move || desk.records.get());
    view! {
        <section class="card"><h3>{settings.s(W::CrewFiles)}</h3>
            <div class="row buttons">
                <Write how=Writing::Archive records=every name="shortfall-records.json" label=W::WriteArchive />
                <Write how=Writing::Csv records=every name="shortfall-records.csv" label=W::WriteCsv />
                <Write how=Writing::Xapi records=every name="shortfall-xapi.json" label=W::WriteXapi />
                <label class="button"><input type="file" accept="application/json,.json" class="vh" id="import" on:change=move |ev| take(desk, told, ev) />
                    {settings.s(W::CrewImport)}</label>
            </div>
            <p class="hint">{settings.s(W::CrewFilesHint)}</p>
        </section>
    }
}

/// Clears the device, when asked twice.
#[component]
fn ClearCard() -> impl IntoView {
    let (desk, settings) = (desk(), settings());
    let sure = RwSignal::new(false);
    view! {
        <section class="card"><h3>{settings.s(W::ClearHeading)}</h3>
            <p>{settings.s(W::ClearHint)}</p>
            <Show when=move || sure.get() fallback=move || view! {
                <button type="button" id="clear" on:click=move |_| sure.set(true)>{settings.s(W::ClearDevice)}</button>
            }>
                <div class="row buttons">
                    // Where the first button stood, a second click does nothing.
                    <button type="button" on:click=move |_| sure.set(false)>{settings.s(W::ClearNot)}</button>
                    <button type="button" class="main" id="clear-sure" on:click=move |ev| if !view::is_second(&ev) { sure.set(false); desk.note.set(Note::None); desk.clear() }>{settings.s(W::ClearSure)}</button>
                </div>
            </Show>
        </section>
    }
}

/// The crew: who did what, who is due, files.
#[component]
pub fn Crew() -> impl IntoView {
    let (desk, settings) = (desk(), settings());
    let said = RwSignal::new(String::new());
    let sheet = RwSignal::new(None::<(Record, Vec<Item>)>);
    let told = Told { said, settings };
    let names = Memo::new(move |_| {
        let mut all = desk.crew.get();
        let mut seen: HashSet<String> = all.iter().cloned().collect();
        desk.records.with(|records| {
            all.extend(records.iter().map(|r| &r.header.who).filter(|w| seen.insert((*w).clone())).cloned());
        });
        all
    });
    let whole_list = RwSignal::new(false);
    let people = move || {
        let mid = date(&desk.mid_season.get());
        let now = date(&today());
        let records = desk.records.get();
        let mut of: HashMap<&str, Vec<&Record>> = HashMap::new();
        for q in &records {
            of.entry(q.header.who.as_str()).or_default().push(q);
        }
        let most = if whole_list.get() { usize::MAX } else { SHOWN_AT_FIRST };
        let mut shown: Vec<(String, Vec<&Record>)> = names
            .get()
            .into_iter()
            .map(|who| {
                let mine = of.remove(who.as_str()).unwrap_or_default();
                (who, mine)
            })
            .collect();
        shown.sort_by_cached_key(|(who, mine)| (due_key(mine, mid, now), who.to_lowercase()));
        shown
            .into_iter()
            .take(most)
            .map(|(who, mine)| person(desk, told, sheet, who, &mine, (mid, now)))
            .collect_view()
    };
    let some = move || desk.records.with(|r| !r.is_empty());
    view! {
        <main class="page crew">
            <Notes />
            <section>
                <h2>{settings.s(W::CrewHeading)}</h2>
                <p class="lead">{settings.s(W::CrewLead)}</p>
                <p id="crew-said" role="status">{move || said.get()}</p>
                <Show when=move || desk.unread.with(|u| !u.is_empty())>
                    <p class="problems">{move || settings.reader().f(W::CrewUnread, &[("n", &desk.unread.with(Vec::len).to_string())])}</p></Show>
                <Show when=move || names.with(|n| !n.is_empty()) fallback=move || view! { <p>{settings.s(W::CrewEmpty)}</p> }>
                    <ul class="people">{people}</ul>
                    <Show when=move || !whole_list.get() && names.with(|n| n.len() > SHOWN_AT_FIRST)>
                        <button type="button" on:click=move |_| whole_list.set(true)>
                            {move || settings.reader().f(W::CrewShowAll, &[("n", &names.with(Vec::len).to_string())])}</button></Show>
                </Show>
                <AddPeople told=told />
                <label class="line card"><span>{settings.s(W::CrewMid)}</span>
                    <input type="date" id="mid" prop:value=move || desk.mid_season.get()
                        on:change=move |ev| desk.keep_mid_season(event_target_value(&ev)) /></label>
                <Show when=some><Analysis /></Show>
                <FilesCard told=told />
                <ClearCard />
            </section>
            {move || sheet.get().map(|(r, items)| view! { <Sheet record=r items=items /> })}
        </main>
    }
}
