//! The record of a session: what was shown, who was there, signed on paper or on the screen.

use super::store;
use super::wall::{came, said};
use crate::practice::showing::{Session, Turn};
use crate::quiz::roster::MOST_CREW;
use crate::quiz::session::{Attended, Held, ShownThere};
use crate::rules::DutyKind;
use crate::texts::say::Reader;
use crate::texts::{Lang, Room as W, Text, Trainer as T, Worded};
use crate::ui::rooms::desk::{Desk, Note, desk, local};
use crate::ui::rooms::keep::{self, Shelf};
use crate::ui::rooms::quiz::Notes;
use crate::ui::rooms::sheet::download;
use crate::ui::rooms::visit;
use crate::ui::shared::asking;
use crate::ui::shared::settings::settings;
use crate::ui::shared::view::{self, View};
use crate::units::Units;
use crate::worker::questions::WriteSessions;
use leptos::prelude::*;
use std::fmt::Write as _;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::spawn_local;

/// Names of kept sessions begin so.
const SESSION: &str = "session ";
/// The box that is signed in: its width and height, as the path's numbers.
const PAD: (f64, f64) = (200.0, 60.0);
/// Longest signature kept, characters of its path.
const LONGEST_STROKE: usize = 6_000;

fn key(h: &Held) -> String {
    format!("{SESSION}{}", h.began)
}

/// What a turn came to, in one language.
fn shown(lang: Lang, t: &Turn) -> ShownThere {
    let r = Reader { lang, units: Units::Metric };
    ShownThere {
        name: lang.of(&t.demo.name).to_owned(),
        said: said(r, t),
        came: came(r, t),
        taught: lang.of(&t.demo.point).to_owned(),
    }
}

/// A record of a session, as far as it went.
fn of_session(s: &Session, lang: Lang, law: &str) -> Held {
    let mut h = Held::new(&local(s.began_s), law);
    h.subject.clone_from(&s.name);
    h.ended = s.ended_s.map_or(String::new(), local);
    h.shown = s.turns.iter().filter(|t| t.told).map(|t| shown(lang, t)).collect();
    h
}

/// The records that are kept, the newest first.
async fn load() -> Option<Vec<Held>> {
    let all = keep::all(Shelf::Kept).await?;
    let mut held: Vec<Held> = all
        .into_iter()
        .filter(|(k, _)| k.starts_with(SESSION))
        .filter_map(|(_, t)| serde_json::from_str(&t).ok())
        .collect();
    held.sort_by(|a, b| b.began.cmp(&a.began));
    Some(held)
}

/// Keeps what a session came to before another takes its place; what is kept of it already stays.
pub fn keep_session(lang: Lang, law: &str) {
    let Some(s) = store::load_session().filter(|s| s.turns.iter().any(|t| t.told)) else { return };
    let h = of_session(&s, lang, law);
    let Ok(text) = serde_json::to_string(&h) else { return };
    spawn_local(async move {
        let edit = |old: Option<String>| (old.is_none().then_some(text), ());
        keep::change(Shelf::Kept, &key(&h), edit).await;
    });
}

/// The signals of the room.
#[derive(Clone, Copy)]
struct Book {
    all: RwSignal<Vec<Held>>,
    open: RwSignal<Option<Held>>,
    kept: RwSignal<bool>,
    desk: Desk,
}

impl Book {
    /// Changes the open record and keeps it.
    fn edit(self, how: impl FnOnce(&mut Held)) {
        self.open.update(|h| {
            if let Some(h) = h {
                how(h);
            }
        });
        let Some(h) = self.open.get_untracked() else { return };
        // The list holds what was typed: whoever opens it again finds it.
        self.all.update(|all| match all.iter_mut().find(|x| x.began == h.began) {
            Some(x) => x.clone_from(&h),
            None => all.insert(0, h.clone()),
        });
        let Ok(text) = serde_json::to_string(&h) else { return };
        spawn_local(async move {
            let is_kept = keep::put(Shelf::Kept, &key(&h), &text).await;
            let _ = self.kept.try_set(is_kept);
            if !is_kept {
                self.desk.note.set(Note::NotKept);
            }
        });
    }
}

/// The room.
#[component]
pub fn HeldRoom() -> impl IntoView {
    let (visit, settings, desk) = (visit(), settings(), desk());
    let book =
        Book { all: RwSignal::new(vec![]), open: RwSignal::new(None), kept: RwSignal::new(false), desk };
    let session = store::load_session().filter(|s| s.turns.iter().any(|t| t.told));
    let law = move || visit.set_up.with_untracked(|s| s.place.clone());
    // The session that has just been held is opened by itself; its record again, if there is one.
    let fresh = session.clone();
    spawn_local(async move {
        let Some(all) = load().await else { return desk.note.set(Note::NotKept) };
        let known = fresh.as_ref().and_then(|s| all.iter().find(|h| h.began == local(s.began_s)).cloned());
        let lang = settings.lang.get_untracked();
        let _ = book.all.try_set(all);
        if let Some(s) = fresh {
            let mut h = known.unwrap_or_else(|| of_session(&s, lang, &law()));
            // The session may have gone on since.
            let now = of_session(&s, lang, &h.law);
            if now.shown.len() > h.shown.len() {
                (h.shown, h.ended) = (now.shown, now.ended);
            }
            let _ = book.open.try_set(Some(h));
        }
    });
    let rows = move || {
        let r = settings.reader();
        book.all.with(|all| {
            all.iter()
                .map(|h| {
                    let day = h.began.get(..10).unwrap_or_default();
                    let what = format!("{day} {}", h.subject);
                    let one = h.clone();
                    view! { <li><button type="button" on:click=move |_| book.open.set(Some(one.clone()))>{r.f(T::HeldOpen, &[("what", &what)])}</button></li> }
                })
                .collect_view()
        })
    };
    let csv = move |_| {
        let mut sessions = book.all.get_untracked();
        if let Some(h) = book.open.get_untracked() {
            sessions.retain(|x| x.began != h.began);
            sessions.insert(0, h);
        }
        let french = settings.lang.get_untracked() == Lang::Fr;
        asking::ask(WriteSessions { french, sessions }, |answer| {
            if let Ok(t) = answer {
                download("shortfall-sessions.csv", "text/csv;charset=utf-8", &t);
            }
        });
    };
    let is_open = move || book.open.with(Option::is_some);
    view! {
        <main class="page held">
            <Notes />
            <section><h2 id="held-h" tabindex="-1">{settings.s(T::HeldName)}</h2><p class="lead">{settings.s(T::HeldLead)}</p>
                <div class="row buttons"><button type="button" id="held-new" on:click=move |_| { book.open.set(Some(Held::new(&local(js_sys::Date::now() / 1e3), &law()))); view::to_view("held-subject") }>{settings.s(T::HeldNew)}</button>
                    <button type="button" id="held-trainer" on:click=move |_| view::go(View::Trainer)>{settings.s(T::BackToTrainer)}</button></div>
                <Show when=move || book.all.with(|a| !a.is_empty())>
                    <details class="guide"><summary>{move || settings.reader().f(T::HeldOld, &[("n", &book.all.with(Vec::len).to_string())])}</summary><ul class="halves">{rows}</ul></details></Show></section>
            <Show when=is_open>
                <Form book=book /><People book=book />
                <section class="card"><label class="line"><span>{settings.s(T::HeldAgreed)}</span>
                    <textarea id="held-agreed" rows="2" maxlength="2000" prop:value=move || book.open.with(|h| h.as_ref().map_or(String::new(), |h| h.agreed.clone()))
                        on:change=move |ev| { let t = event_target_value(&ev); book.edit(|h| h.agreed = t) }></textarea></label>
                    <div class="row buttons"><button type="button" class="main" id="print" on:click=move |_| { let _ = window().print(); }>{settings.s(W::Print)}</button>
                        <button type="button" id="held-csv" on:click=csv>{settings.s(T::HeldCsv)}</button>
                        <button type="button" class="plain" id="held-delete" on:click=move |_| drop_open(book)>{settings.s(T::HeldDelete)}</button></div>
                    <p class="hint" role="status">{move || book.kept.get().then(|| settings.t(T::HeldKept))}</p></section>
            </Show>
            {move || book.open.get().map(|h| view! { <Page held=h /> })}
        </main>
    }
}

fn drop_open(book: Book) {
    let Some(h) = book.open.get_untracked() else { return };
    // Asked for by its own button: a record of people is not lost by one press.
    let sure = window().confirm_with_message(&format!("{} {}?", h.subject, h.began)).unwrap_or(false);
    if !sure {
        return;
    }
    book.open.set(None);
    book.all.update(|all| all.retain(|x| x.began != h.began));
    spawn_local(async move {
        keep::remove(Shelf::Kept, &key(&h)).await;
    });
}

/// Subject, place, trainer, times, and what was shown.
#[component]
fn Form(book: Book) -> impl IntoView {
    let settings = settings();
    let field = move |k: T,
                      id: &'static str,
                      get: fn(&Held) -> &String,
                      get_mut: fn(&mut Held) -> &mut String| {
        view! { <label class="line"><span>{settings.s(k)}</span><input type="text" id=id maxlength="200" autocomplete="off"
        prop:value=move || book.open.with(|h| h.as_ref().map_or(String::new(), |h| get(h).clone()))
        on:change=move |ev| { let t = event_target_value(&ev); book.edit(|h| *get_mut(h) = t) } /></label> }
    };
    let shown = move || {
        book.open.with(|h| {
            let h = h.as_ref()?;
            let rows = h.shown.iter().enumerate().map(|(i, s)| view! {
                <tr><th scope="row">{s.name.clone()}</th><td>{s.said.clone()}</td><td>{s.came.clone()}</td>
                    <td><input type="text" maxlength="200" aria-label=settings.s(T::HeldTaught) prop:value=s.taught.clone()
                        on:change=move |ev| { let t = event_target_value(&ev); book.edit(|h| if let Some(s) = h.shown.get_mut(i) { s.taught = t }) } /></td></tr>
            }).collect_view();
            (!h.shown.is_empty()).then(|| view! {
                <h3>{settings.s(T::HeldShown)}</h3>
                <table class="analysis"><thead><tr><th scope="col">{settings.s(T::HeldScenario)}</th><th scope="col">{settings.s(T::HeldSaid)}</th><th scope="col">{settings.s(T::HeldCame)}</th><th scope="col">{settings.s(T::HeldTaught)}</th></tr></thead><tbody>{rows}</tbody></table>
            })
        })
    };
    view! {
        <section class="card">
            {field(T::HeldSubject, "held-subject", |h| &h.subject, |h| &mut h.subject)}
            {field(T::HeldAt, "held-at", |h| &h.at, |h| &mut h.at)}
            {field(T::HeldTrainer, "held-by", |h| &h.trainer, |h| &mut h.trainer)}
            {shown}
        </section>
    }
}

/// Who was there.
#[component]
fn People(book: Book) -> impl IntoView {
    let settings = settings();
    let typed = RwSignal::new(String::new());
    let told = RwSignal::new(String::new());
    let signing = RwSignal::new(None::<String>);
    let is_there =
        move |n: &str| book.open.with(|h| h.as_ref().is_some_and(|h| h.there.iter().any(|p| p.name == n)));
    let add = move |name: String| {
        book.edit(|h| {
            if h.there.len() < MOST_CREW {
                h.there.push(Attended { name, ..Attended::default() });
            }
        });
    };
    let crew = move || {
        let all = book.desk.crew.get();
        all.into_iter()
            .map(|n| {
                let (a, b) = (n.clone(), n.clone());
                view! { <label class="pill"><input type="checkbox" prop:checked=move || is_there(&a)
                    on:change=move |ev| if event_target_checked(&ev) { add(b.clone()) } else { let b = b.clone(); book.edit(move |h| h.there.retain(|p| p.name != b)) } /><span>{n}</span></label> }
            })
            .collect_view()
    };
    let add_typed = move |ev: web_sys::SubmitEvent| {
        ev.prevent_default();
        let name = crate::quiz::record::name(&typed.get_untracked());
        if name.is_empty() {
            return;
        }
        if untrack(|| is_there(&name)) {
            return told.set(settings.reader_now().f(T::HeldTwice, &[("name", &name)]));
        }
        told.set(String::new());
        typed.set(String::new());
        add(name);
    };
    let rows = move || {
        let r = settings.reader();
        book.open.with(|h| {
            let h = h.as_ref()?;
            if h.there.is_empty() {
                return Some(view! { <p class="hint">{r.t(T::HeldNobody)}</p> }.into_any());
            }
            let rows = h.there.iter().map(|p| {
                let state = match p.signed_at.get(11..16) {
                    Some(time) => r.f(T::HeldSigned, &[("time", time)]),
                    None => r.t(T::HeldOnPaper).to_owned(),
                };
                let (who, gone) = (p.name.clone(), p.clone());
                let take_off = move |_| {
                    // A signature is not lost by one press.
                    let sure = gone.stroke.is_none() || window().confirm_with_message(&r.f(T::HeldOut, &[("name", &gone.name)])).unwrap_or(false);
                    if sure {
                        let name = gone.name.clone();
                        book.edit(move |h| h.there.retain(|p| p.name != name));
                    }
                };
                view! { <li><strong>{p.name.clone()}</strong><span class="hint">{state}</span>
                    <button type="button" on:click=move |_| signing.set(Some(who.clone()))>{r.f(T::HeldSign, &[("name", &p.name)])}</button>
                    <button type="button" class="step" aria-label=r.f(T::HeldOut, &[("name", &p.name)]) on:click=take_off>"✕"</button></li> }
            }).collect_view();
            Some(view! { <ol class="there">{rows}</ol> }.into_any())
        })
    };
    view! {
        <section class="card"><h3>{settings.s(T::HeldThere)}</h3>
            <div class="pills">{crew}</div>
            <form class="row add-name" on:submit=add_typed><label class="line"><span>{settings.s(T::HeldAdd)}</span><input type="text" id="held-name" maxlength="80" autocomplete="off" prop:value=move || typed.get() on:input=move |ev| typed.set(event_target_value(&ev)) /></label>
                <button type="submit" id="held-add">{settings.s(T::HeldAddDo)}</button></form>
            <p class="hint" role="alert">{move || told.get()}</p>
            {rows}
            {move || signing.get().map(|who| view! { <Pad book=book who=who shut=Callback::new(move |()| signing.set(None)) /> })}
        </section>
    }
}

/// The box to sign in.
#[component]
fn Pad(book: Book, who: String, shut: Callback<()>) -> impl IntoView {
    let settings = settings();
    let path = RwSignal::new(String::new());
    let held = StoredValue::new(false);
    let at = |ev: &web_sys::PointerEvent| {
        let e = ev.current_target()?.dyn_into::<web_sys::Element>().ok()?;
        let b = e.get_bounding_client_rect();
        let x = (f64::from(ev.client_x()) - b.left()) / b.width().max(1.0) * PAD.0;
        let y = (f64::from(ev.client_y()) - b.top()) / b.height().max(1.0) * PAD.1;
        Some((x, y))
    };
    let draw = move |ev: &web_sys::PointerEvent, sign: char| {
        if let Some((x, y)) = at(ev) {
            path.update(|p| {
                if p.len() < LONGEST_STROKE {
                    let _ = write!(p, "{sign}{x:.1} {y:.1}");
                }
            });
        }
    };
    let (label, name) = (who.clone(), who.clone());
    view! {
        <div class="pad" role="group" aria-label=label>
            <p><strong>{name}</strong>" "{settings.s(T::HeldPad)}</p>
            <svg viewBox=format!("0 0 {} {}", PAD.0, PAD.1) preserveAspectRatio="none" aria-hidden="true"
                on:pointerdown=move |ev| { ev.prevent_default(); held.set_value(true); draw(&ev, 'M') }
                on:pointermove=move |ev| if held.get_value() { draw(&ev, 'L') }
                on:pointerup=move |_| held.set_value(false) on:pointerleave=move |_| held.set_value(false)><path d=move || path.get() /></svg>
            <div class="row buttons"><button type="button" on:click=move |_| path.set(String::new())>{settings.s(T::HeldClear)}</button>
                <button type="button" on:click=move |_| shut.run(())>{settings.s(T::HeldOnPaper)}</button>
                <button type="button" class="main" id="take-sign" aria-disabled=move || path.with(String::is_empty).to_string() on:click=move |_| {
                    let stroke = path.get_untracked();
                    if !stroke.is_empty() {
                        let time = local(js_sys::Date::now() / 1e3);
                        let who = who.clone();
                        book.edit(move |h| if let Some(p) = h.there.iter_mut().find(|p| p.name == who) { (p.stroke, p.signed_at) = (Some(stroke), time) });
                        shut.run(());
                    }
                }>{settings.s(T::HeldTake)}</button></div>
        </div>
    }
}

/// The page that is printed.
#[component]
fn Page(held: Held) -> impl IntoView {
    let settings = settings();
    let r = settings.reader_now();
    let both = |k: T| Text::of(k);
    let place = crate::rules::place(&held.law);
    let law = place.map_or(held.law.clone(), |p| r.lang.of(&p.name).to_owned());
    let asks = place.and_then(|p| p.duty(DutyKind::TrainingRecord)).map(|d| r.duty(d));
    let day = held.began.get(..10).unwrap_or_default().to_owned();
    let time = |t: &str| t.get(11..16).unwrap_or_default().to_owned();
    let span = match held.ended.as_str() {
        "" => time(&held.began),
        end => format!("{} – {}", time(&held.began), time(end)),
    };
    let shown = held.shown.iter().map(|s| view! { <tr><td><b>{s.name.clone()}</b></td><td>{s.said.clone()}</td><td>{s.came.clone()}</td><td>{s.taught.clone()}</td></tr> }).collect_view();
    let class = if held.there.len() > 12 { "boxes small" } else { "boxes" };
    let there = held
        .there
        .iter()
        .enumerate()
        .map(|(i, p)| {
            let stroke = p.stroke.clone().map(|d| view! { <svg viewBox="0 0 200 60" preserveAspectRatio="xMidYMid meet"><path d=d /></svg> });
            view! { <div><span>{i + 1}</span><span>{p.name.clone()}</span><span class="box">{stroke}<small>{p.signed_at.get(..16).map(|t| t.replace('T', " "))}</small></span></div> }
        })
        .collect_view();
    let versions = format!("Shortfall {} · physics {} · rules {}", held.app, held.physics, held.rules);
    view! {
        <section class="sheet paper" aria-hidden="true">
            <div class="paper-head"><div><p>{r.t(T::HeldName)}</p><h1>{if held.subject.is_empty() { "—".to_owned() } else { held.subject.clone() }}</h1></div><div class="right"><b>{day}</b><p>{span}</p></div></div>
            <dl class="pairs"><div><dt>{r.t(T::HeldAt)}</dt><dd>{held.at.clone()}</dd></div><div><dt>{r.t(T::HeldLaw)}</dt><dd>{law}</dd></div>
                <div><dt>{r.t(T::HeldTrainer)}</dt><dd>{held.trainer.clone()}</dd></div>{asks.map(|a| view! { <div><dt>{r.t(T::HeldAsks)}</dt><dd>{a}</dd></div> })}</dl>
            {(!held.shown.is_empty()).then(|| view! { <h2>{r.t(T::HeldShown)}</h2><table><thead><tr><th>{r.t(T::HeldScenario)}</th><th>{r.t(T::HeldSaid)}</th><th>{r.t(T::HeldCame)}</th><th>{r.t(T::HeldTaught)}</th></tr></thead><tbody>{shown}</tbody></table><p class="small">{r.t(T::HeldHands)}</p> })}
            <h2>{r.t(T::HeldThere)}</h2><div class=class>{there}</div>
            <h2>{r.t(T::HeldAgreed)}</h2><p>{held.agreed.clone()}</p><p class="rule"></p><p class="rule"></p>
            <p class="signs-line"><b>{r.t(T::HeldTrainer)}</b>" "{held.trainer.clone()}<i></i>{r.t(T::HeldDate)}<i class="brief"></i></p>
            <p class="caution"><b>{both(T::HeldNot).words(r.lang)}</b></p><p class="caution">{both(T::HeldNot).words(if r.lang == Lang::En { Lang::Fr } else { Lang::En })}</p>
            <p class="id">{versions}</p>
        </section>
    }
}
