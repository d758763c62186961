//! After a fall: one page to write down what happened, what was withdrawn, who was told.

use super::paper::{Foot, Head, Lines};
use super::visit;
use crate::grade::report::Report;
use crate::physics::trace::Outcome;
use crate::quiz::gear_list::PieceKind;
use crate::texts::Gear as T;
use crate::texts::Room as W;
use crate::texts::{Text, say};
use crate::ui::shared::asking;
use crate::ui::shared::settings::settings;
use crate::ui::shared::store;
use crate::ui::shared::view::{self, View};
use crate::units::{Quantity, Rounding};
use crate::worker::questions::Fall;
use leptos::prelude::*;

/// Kept on the device under this name.
const KEY: &str = store::INCIDENT;
/// What is written, in order: its text, its identifier, and how many ruled lines it has on paper where it is empty.
const FIELDS: [(T, &str, usize); 8] = [
    (T::NoteWho, "note-who", 1),
    (T::NoteWhen, "note-when", 1),
    (T::NoteWhere, "note-where", 1),
    (T::NoteSaw, "note-saw", 1),
    (T::NoteWhat, "note-what", 3),
    (T::NoteCare, "note-care", 2),
    (T::NoteTold, "note-told", 2),
    (T::NoteWhy, "note-why", 3),
];
/// Parts that caught the fall.
const OUT: [PieceKind; 5] =
    [PieceKind::Harness, PieceKind::Lanyard, PieceKind::Grab, PieceKind::Lifeline, PieceKind::Anchor];

/// The room.
#[component]
pub fn Incident() -> impl IntoView {
    let (visit, settings) = (visit(), settings());
    let (kept, was_filled): (Vec<String>, bool) = store::kept_text(KEY).unwrap_or_default();
    let texts = RwSignal::new(
        (0..FIELDS.len()).map(|i| kept.get(i).cloned().unwrap_or_default()).collect::<Vec<_>>(),
    );
    let filled = RwSignal::new(was_filled);
    let unkept = RwSignal::new(false);
    Effect::new(move |_| unkept.set(!store::keep_text(KEY, &(texts.get(), filled.get()))));
    let computed = RwSignal::new(None::<Report>);
    let fill = move || {
        let Ok(s) = visit.set_up.with_untracked(|s| s.set_up()) else { return };
        asking::ask(Fall(s.clone()), move |answer| {
            if let Ok(t) = answer
                && t.is_sound()
            {
                let _ = computed.try_set(Report::of(s, t));
            }
        });
    };
    if was_filled {
        fill();
    }
    let clear = move |_| {
        if window().confirm_with_message(settings.reader_now().t(T::NoteClearAsk)).unwrap_or(false) {
            texts.update(|t| t.iter_mut().for_each(String::clear));
            filled.set(false);
            computed.set(None);
            view::to_view("note-h");
        }
    };
    let told = move || {
        computed.with(|c| {
            let rep = c.as_ref()?;
            let (r, t) = (settings.reader(), &rep.trace);
            let len = |m: f64| r.q(Quantity::Length, m, Rounding::Up);
            let mut all = vec![say::headline(r, rep).sentence];
            all.push(r.f(T::EaveFell, &[("free", &len(t.free_fall_m)), ("drop", &len(t.total_fall_m))]));
            if t.outcome == Outcome::Stopped {
                let force = r.q(Quantity::Force, t.peak_force_n, Rounding::Up);
                all.push(r.f(T::NoteForce, &[("force", &force)]));
            }
            Some(all.join(" · "))
        })
    };
    let fields = FIELDS
        .iter()
        .enumerate()
        .map(|(i, (name, id, lines))| {
            view! { <label class="line"><span>{settings.s(*name)}</span><textarea id=*id rows=lines.to_string() maxlength="1500" prop:value=move || texts.with(|t| t[i].clone())
                on:input=move |ev| { let v = event_target_value(&ev); texts.update(|t| t[i] = v) }></textarea></label> }
        })
        .collect_view();
    let paper = move || {
        let r = settings.reader();
        let rows = FIELDS
            .iter()
            .enumerate()
            .map(|(i, (name, _, lines))| {
                let text = texts.with(|t| t[i].clone());
                let empty = text.is_empty();
                view! { <h2>{r.t(*name)}</h2>{(!empty).then(|| view! { <p class="written">{text}</p> })}{empty.then(|| view! { <Lines count=*lines /> })} }
            })
            .collect_view();
        let out = OUT.map(|k| view! { <div><span>"☐"</span><span>{r.t(k.label())}</span><span>{r.t(T::NoteSerial)}<i></i></span><span>{r.t(T::NoteKept)}<i></i></span></div> });
        let facts = told().map(|t| view! { <h2>{r.t(T::NoteComputed)}</h2><p>{t}</p> });
        view! {
            <section class="sheet paper incident-page" aria-hidden="true">
                <Head over="Shortfall".to_owned() title=r.t(T::NoteName).to_owned() right=String::new() under=String::new() />
                {rows}{facts}
                <h2>{r.t(T::NoteOut)}</h2><div class="out-rows">{out}</div>
                <p class="signs-line">"☐ "{r.t(T::NoteTeach)}<i></i></p><p class="signs-line">{r.t(T::NoteSigns)}<i></i></p>
                <Foot caution=Text::of(T::NoteNot) set_up=visit.set_up.get() />
            </section>
        }
    };
    view! {
        <main class="page incident">
            <section><h2 id="note-h" tabindex="-1">{settings.s(T::NoteName)}</h2><p class="lead">{settings.s(T::NoteLead)}</p></section>
            <section class="card">{fields}
                <div class="row buttons"><button type="button" id="note-fill" on:click=move |_| { filled.set(true); fill() }>{settings.s(T::NoteFrom)}</button></div>
                {move || told().map(|t| view! { <p class="hint" role="status" id="note-facts"><strong>{settings.s(T::NoteComputed)}{settings.reader().colon()}</strong>{t}</p> })}
                <p class="hint">{settings.s(T::NoteNot)}" "{settings.s(T::NoteHere)}</p>
                <div role="alert">{move || unkept.get().then(|| view! { <p class="problems">{settings.t(crate::texts::Trainer::NotKept)}</p> })}</div>
                <div class="row buttons"><button type="button" class="main" id="print" on:click=move |_| { let _ = window().print(); }>{settings.s(W::Print)}</button>
                    <button type="button" id="note-list" on:click=move |_| view::go(View::GearList)>{settings.s(T::ListName)}</button>
                    <button type="button" class="plain" id="note-clear" on:click=clear>{settings.s(T::NoteClear)}</button></div></section>
            {paper}
        </main>
    }
}
