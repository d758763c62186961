//! The gear list: parts, serials, dates, what was withdrawn and why.

use super::desk::{Desk, Note, desk, local};
use super::keep::{self, Shelf};
use super::paper::{Foot, Head};
use super::quiz::Notes;
use super::sheet::download;
use super::visit;
use crate::quiz::gear_list::{Piece, PieceKind, State, Why, entries, parts, sorted};
use crate::texts::Gear as T;
use crate::texts::say::{Reader, lower_first};
use crate::texts::{Lang, Room as W, Text, Trainer};
use crate::ui::shared::asking;
use crate::ui::shared::settings::settings;
use crate::ui::shared::view::{self, View};
use crate::worker::questions::WriteGear;
use leptos::prelude::*;
use serde_json::Value;
use wasm_bindgen_futures::spawn_local;

const KEY: &str = "gear";

fn today() -> String {
    local(js_sys::Date::now() / 1e3).get(..10).unwrap_or_default().to_owned()
}

/// The signals of the room.
#[derive(Clone, Copy)]
struct Shed {
    all: RwSignal<Vec<Piece>>,
    open: RwSignal<Option<String>>,
    /// Entries that this version cannot read.
    unread: RwSignal<usize>,
    desk: Desk,
}

impl Shed {
    /// Shows a part as it is kept now; none: it is gone.
    fn show(self, id: &str, piece: Option<Piece>) {
        let _ = self.all.try_update(|all| {
            match (all.iter().position(|p| p.id == id), piece) {
                (Some(i), Some(p)) => all[i] = p,
                (None, Some(p)) => all.push(p),
                (Some(i), None) => drop(all.remove(i)),
                (None, None) => {}
            };
        });
    }

    /// Reads everything anew: another tab may have changed it.
    fn load(self) {
        spawn_local(async move {
            let Some(all) = keep::all(Shelf::Kept).await else { return self.desk.note.set(Note::NotKept) };
            let list = entries(all.iter().find(|(k, _)| k == KEY).map(|(_, t)| t.as_str()));
            let (all, unread) = parts(list);
            let _ = self.all.try_set(all);
            let _ = self.unread.try_set(unread);
        });
    }

    /// Puts a new part on the list.
    fn add(self, piece: Piece) {
        self.show(&piece.id.clone(), Some(piece.clone()));
        self.write(piece.id.clone(), move |_| serde_json::to_value(&piece).ok());
    }

    /// Changes the open part: shown at once, and written into what is kept of it, so that what another tab has
    /// written of the same part stays.
    fn edit(self, how: impl Fn(&mut Piece) + 'static) {
        let Some(Some(id)) = self.open.try_get_untracked() else { return };
        let _ = self.all.try_update(|all| {
            if let Some(p) = all.iter_mut().find(|p| p.id == id) {
                how(p);
            }
        });
        self.write(id, move |old| {
            // Gone in another tab: it stays gone. What this version cannot read stays as it is.
            let old = old?;
            let Ok(mut p) = serde_json::from_value::<Piece>(old.clone()) else { return Some(old) };
            how(&mut p);
            serde_json::to_value(p).ok()
        });
    }

    /// One part in one transaction: `make` sees what is kept of it and gives what is to be kept; none: nothing.
    fn write(self, id: String, make: impl FnOnce(Option<Value>) -> Option<Value> + 'static) {
        spawn_local(async move {
            let key = id.clone();
            let edit = move |old: Option<String>| {
                let mut list = entries(old.as_deref());
                let at = list.iter().position(|v| v["id"] == key.as_str());
                let made = make(at.map(|i| list[i].clone()));
                match (at, made.clone()) {
                    (Some(i), Some(v)) => list[i] = v,
                    (None, Some(v)) => list.push(v),
                    (Some(i), None) => drop(list.remove(i)),
                    (None, None) => {}
                }
                (serde_json::to_string(&list).ok(), made)
            };
            match keep::change(Shelf::Kept, KEY, edit).await {
                Some(made) => self.show(&id, made.and_then(|v| serde_json::from_value(v).ok())),
                None => self.desk.note.set(Note::NotKept),
            }
        });
    }
}

/// What a part is called in a row.
fn called(r: Reader, p: &Piece) -> String {
    let kind = r.t(p.kind.label());
    match (p.name.as_str(), p.serial.as_str()) {
        ("", "") => kind.to_owned(),
        ("", s) => format!("{kind} {s}"),
        (n, "") => format!("{kind} {n}"),
        (n, s) => format!("{kind} {n} ({s})"),
    }
}

/// How it stands, with its shape.
fn stands(r: Reader, p: &Piece, today: &str) -> (&'static str, String) {
    let due = p.due_day().map_or(String::new(), |d| d.to_string());
    match (p.state(today), &p.withdrawn) {
        (State::Overdue, _) => ("▲", r.t(T::StateOverdue).to_owned()),
        (State::Unknown, _) => ("?", r.t(T::StateUnknown).to_owned()),
        (State::NoDue, _) => ("?", r.t(T::StateNoDue).to_owned()),
        (State::Soon, _) => ("△", r.f(T::StateSoon, &[("day", &due)])),
        (State::InUse, _) => ("●", r.f(T::StateInUse, &[("day", &due)])),
        (State::Withdrawn, w) => {
            let (day, why) = w.as_ref().map_or(("", Why::Damage), |w| (w.0.as_str(), w.1));
            ("✕", r.f(T::StateWithdrawn, &[("day", day), ("why", r.t(why.label()))]))
        }
    }
}

/// The room.
#[component]
pub fn GearList() -> impl IntoView {
    let (settings, desk) = (settings(), desk());
    let shed = Shed { all: RwSignal::new(vec![]), open: RwSignal::new(None), unread: RwSignal::new(0), desk };
    shed.load();
    view::on_window("focus", move || shed.load());
    let today = StoredValue::new(today());
    let rows = move || {
        let r = settings.reader();
        let now = today.get_value();
        let all = sorted(shed.all.get(), &now);
        if all.is_empty() {
            return view! { <p class="hint">{r.t(T::ListEmpty)}</p> }.into_any();
        }
        let rows = all.into_iter().map(|p| {
            let (shape, words) = stands(r, &p, &now);
            let (id, name) = (p.id.clone(), called(r, &p));
            let label = r.f(T::ListOpen, &[("what", &name)]);
            let open = move |_| {
                shed.open.set(Some(id.clone()));
                view::to_view("piece-name");
            };
            view! { <tr><th scope="row"><button type="button" class="plain" aria-label=label on:click=open>{name}</button></th>
                <td><b aria-hidden="true">{shape}</b>" "{words}</td><td>{p.inspected.clone()}</td><td>{p.holder.clone()}</td></tr> }
        }).collect_view();
        view! { <table class="analysis gear-rows"><thead><tr><th scope="col">{r.t(T::ListKind)}</th><th scope="col">{r.t(T::ListState)}</th><th scope="col">{r.t(T::ListInspected)}</th><th scope="col">{r.t(T::ListWith)}</th></tr></thead><tbody>{rows}</tbody></table> }.into_any()
    };
    let add = PieceKind::ALL.map(|kind| {
        let add = move |_| {
            let id = format!("{:.0}-{:.0}", js_sys::Date::now(), js_sys::Math::random() * 1e6);
            shed.add(Piece::new(&id, kind));
            shed.open.set(Some(id));
            view::to_view("piece-name");
        };
        view! { <button type="button" class="add-piece" on:click=add>{settings.s(kind.label())}</button> }
    });
    let csv = move |_| {
        let french = settings.lang.get_untracked() == Lang::Fr;
        let pieces = sorted(shed.all.get_untracked(), &today.get_value());
        asking::ask(WriteGear { french, pieces }, |answer| {
            if let Ok(t) = answer {
                download("shortfall-gear.csv", "text/csv;charset=utf-8", &t);
            }
        });
    };
    view! {
        <main class="page gear-list">
            <Notes />
            <section><h2 id="gear-h" tabindex="-1">{settings.s(T::ListName)}</h2><p class="lead">{settings.s(T::ListLead)}</p>
                <p><strong>{settings.s(T::ListAdd)}</strong></p><div class="row buttons">{add}</div></section>
            {move || shed.open.get().map(|id| view! { <Form shed=shed id=id today=today.get_value() /> })}
            <section class="card gear-table">{rows}{move || (shed.unread.get() > 0).then(|| view! { <p class="problems">{settings.reader().f(T::ListUnread, &[("n", &shed.unread.get().to_string())])}</p> })}
                <div class="row buttons"><button type="button" class="main" id="print" on:click=move |_| { let _ = window().print(); }>{settings.s(W::Print)}</button>
                    <button type="button" id="gear-csv" on:click=csv>{settings.s(T::ListCsv)}</button>
                    <button type="button" id="to-trainer" on:click=move |_| view::go(View::Trainer)>{settings.s(Trainer::BackToTrainer)}</button></div>
                <p class="hint">{settings.s(T::ListNote)}</p></section>
            <Page shed=shed today=today.get_value() />
        </main>
    }
}

/// The list as it is printed.
#[component]
fn Page(shed: Shed, today: String) -> impl IntoView {
    let (visit, settings) = (visit(), settings());
    move || {
        let r = settings.reader();
        let rows = sorted(shed.all.get(), &today)
            .into_iter()
            .map(|p| {
                let (shape, words) = stands(r, &p, &today);
                view! { <tr><td><b>{r.t(p.kind.label())}" "{p.name.clone()}</b></td><td>{p.serial.clone()}</td><td>{shape}" "{words}</td>
                    <td>{p.inspected.clone()}</td><td>{p.by.clone()}</td><td>{p.holder.clone()}</td></tr> }
            })
            .collect_view();
        let heads = [T::ListKind, T::ListSerial, T::ListState, T::ListInspected, T::ListBy, T::ListWith]
            .map(|k| view! { <th>{r.t(k)}</th> });
        view! {
            <section class="sheet paper" aria-hidden="true">
                <Head over="Shortfall".to_owned() title=r.t(T::ListName).to_owned() right=today.clone() under=String::new() />
                <table><thead><tr>{heads}</tr></thead><tbody>{rows}</tbody></table>
                <Foot caution=Text::of(T::ListPrint) set_up=visit.set_up.get() />
            </section>
        }
    }
}

/// One part.
#[component]
fn Form(shed: Shed, id: String, today: String) -> impl IntoView {
    let settings = settings();
    let id = StoredValue::new(id);
    let piece = Memo::new(move |_| {
        shed.all.with(|all| id.with_value(|id| all.iter().find(|p| p.id == *id).cloned()))
    });
    let field = move |k: T,
                      name: &'static str,
                      kind: &'static str,
                      get: fn(&Piece) -> &String,
                      get_mut: fn(&mut Piece) -> &mut String| {
        view! { <label class="line"><span>{settings.s(k)}</span><input type=kind id=name maxlength="60" max="2099-12-31" autocomplete="off"
        prop:value=move || piece.with(|p| p.as_ref().map_or(String::new(), |p| get(p).clone()))
        on:input=move |ev| { let t = event_target_value(&ev); shed.edit(move |p| t.clone_into(get_mut(p))) } /></label> }
    };
    let title = move || piece.with(|p| p.as_ref().map(|p| called(settings.reader(), p)));
    let out = StoredValue::new(today);
    let withdraw = Why::ALL.map(|w| {
        view! { <button type="button" class="withdraw" on:click=move |_| { let day = out.get_value(); shed.edit(move |p| p.withdrawn = Some((day.clone(), w))); view::to_view("piece-back") }>{settings.s(w.label())}</button> }
    });
    let withdraw = StoredValue::new_local(Some(withdraw));
    let is_out = move || piece.with(|p| p.as_ref().is_some_and(|p| p.withdrawn.is_some()));
    let back = move |_| {
        let r = settings.reader_now();
        let why =
            piece.with_untracked(|p| p.as_ref().and_then(|p| p.withdrawn.as_ref().map(|w| r.t(w.1.label()))));
        let ask = r.f(T::ListBackAsk, &[("why", why.unwrap_or_default())]);
        if window().confirm_with_message(&ask).unwrap_or(false) {
            shed.edit(|p| p.withdrawn = None);
            view::to_view("piece-name");
        }
    };
    let delete = move |_| {
        let r = settings.reader_now();
        let Some(p) = piece.get_untracked() else { return };
        let ask = r.f(T::ListDeleteAsk, &[("what", &lower_first(&called(r, &p)))]);
        if window().confirm_with_message(&ask).unwrap_or(false) {
            shed.open.set(None);
            shed.show(&p.id, None);
            shed.write(p.id, |_| None);
            view::to_view("gear-h");
        }
    };
    view! {
        <section class="card piece"><h3>{title}</h3>
            <div class="piece-fields">
            {field(T::ListCalled, "piece-name", "text", |p| &p.name, |p| &mut p.name)}
            {field(T::ListSerial, "piece-serial", "text", |p| &p.serial, |p| &mut p.serial)}
            {field(T::ListMade, "piece-made", "date", |p| &p.made, |p| &mut p.made)}
            {field(T::ListInspected, "piece-inspected", "date", |p| &p.inspected, |p| &mut p.inspected)}
            {field(T::ListBy, "piece-by", "text", |p| &p.by, |p| &mut p.by)}
            {field(T::ListWith, "piece-with", "text", |p| &p.holder, |p| &mut p.holder)}
            {field(T::ListDue, "piece-due", "date", |p| &p.due, |p| &mut p.due)}</div>
            <div hidden=is_out><p><strong>{settings.s(T::ListWithdraw)}</strong></p><div class="row buttons">{withdraw.try_update_value(Option::take).flatten()}</div></div>
            <Show when=is_out><button type="button" id="piece-back" on:click=back>{settings.s(T::ListBack)}</button></Show>
            <div class="row buttons"><button type="button" id="piece-today" on:click=move |_| { let day = out.get_value(); shed.edit(move |p| p.inspect(&day)) }>{settings.s(T::ListToday)}</button>
                <button type="button" class="main" id="piece-shut" on:click=move |_| { shed.open.set(None); view::to_view("gear-h") }>{settings.s(T::ListShut)}</button>
                <button type="button" class="plain" id="piece-delete" hidden=is_out on:click=delete>{settings.s(T::ListDelete)}</button></div>
        </section>
    }
}
