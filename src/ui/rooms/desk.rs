//! The signals of quiz and crew: the form being answered, the records, the crew's list, and how they
//! are kept. Each change is made in the store first, one transaction each; then the other tabs are
//! told, and read anew.

use super::keep::{self, Ended, Shelf};
use crate::quiz::questions::{Given, Item};
use crate::quiz::record::{Doubt, Header, Record};
use crate::quiz::roster::{MOST_CREW, Names};
use crate::quiz::{Answered, Blueprint, CUT_SHARE, Form, Mode};
use crate::ui::shared::asking;
use crate::units::instant_s;
use crate::worker::questions::{Doubts, DrawForm, Seal};
use leptos::prelude::*;
use serde::{Deserialize, Serialize};
use std::collections::{HashMap, HashSet};
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::spawn_local;
use web_sys::{BroadcastChannel, MessageEvent};

/// Names of what is kept beside the records.
const CREW: &str = "crew";
const MID_SEASON: &str = "mid season";
const LAST_END: &str = "last end";
const HALF: &str = "sitting ";
/// What drawing records again has shown, and by which versions.
const CHECKED: &str = "checked";

/// A form half done, as it is kept.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Sitting {
    pub header: Header,
    pub mode: Mode,
    pub answers: Vec<Answered>,
}

/// What drawing records again has shown: it holds for these versions only.
#[derive(Default, Serialize, Deserialize)]
struct Checked {
    versions: (u32, u32, u32),
    by_id: HashMap<String, Option<Doubt>>,
}

impl Checked {
    fn now() -> (u32, u32, u32) {
        (crate::physics::PHYSICS_VERSION, crate::rules::RULES_VERSION, crate::quiz::QUIZ_VERSION)
    }

    /// What is kept, unless other versions found it.
    fn read(text: Option<String>) -> Checked {
        let kept = text.and_then(|t| serde_json::from_str::<Checked>(&t).ok());
        kept.filter(|c| c.versions == Self::now())
            .unwrap_or_else(|| Checked { versions: Self::now(), by_id: HashMap::new() })
    }
}

/// The crew's list as it is kept.
fn crew_of(kept: Option<String>) -> Vec<String> {
    kept.and_then(|t| serde_json::from_str(&t).ok()).unwrap_or_default()
}

impl Sitting {
    fn key(&self) -> String {
        format!("{HALF}{} {}", self.header.started, self.header.from.seed)
    }

    fn is_answered(&self) -> bool {
        self.answers.len() >= self.header.questions as usize
    }
}

/// What the person is told about keeping.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Note {
    None,
    /// The device keeps nothing: save before leaving.
    NotKept,
    /// Another tab was further with the same form.
    OtherTab,
    /// Another tab has ended or dropped the same form.
    EndedElsewhere,
    /// The device's clock stood earlier than at an earlier record of this device.
    ClockBack,
    /// Everything on this device was cleared.
    Cleared,
    /// The engine could not draw, mark or seal.
    NoEngine,
    /// The record could not be sealed.
    NotSealed,
}

#[derive(Clone, Copy)]
pub struct Desk {
    pub records: RwSignal<Vec<Record>>,
    /// Texts of records that this version cannot read: kept, counted, written to files.
    pub unread: RwSignal<Vec<String>>,
    /// What drawing each record's form again has shown, by identifier.
    pub doubts: RwSignal<HashMap<String, Option<Doubt>>>,
    pub crew: RwSignal<Vec<String>>,
    pub mid_season: RwSignal<String>,
    /// Forms half done on this device.
    pub halves: RwSignal<Vec<Sitting>>,
    pub sitting: RwSignal<Option<Sitting>>,
    pub form: RwSignal<Option<Form>>,
    /// In practice: the answer just given, until the person goes on.
    pub told: RwSignal<bool>,
    /// The record just sealed.
    pub done: RwSignal<Option<Record>>,
    pub note: RwSignal<Note>,
    /// A form is being drawn.
    pub drawing: RwSignal<bool>,
    /// Whether the open form has been kept at least once.
    was_kept: StoredValue<bool>,
    /// Records that the device would not keep: held as long as the page is open.
    loose: StoredValue<HashSet<String>>,
    channel: StoredValue<Option<BroadcastChannel>, LocalStorage>,
}

/// Now, as ISO 8601 with the device's offset.
pub fn now() -> String {
    local(js_sys::Date::new_0().get_time() / 1e3)
}

/// An instant of the device's clock, s since 1970, as ISO 8601 with the device's offset.
pub fn local(at_s: f64) -> String {
    let d = js_sys::Date::new(&(at_s * 1e3).into());
    let off = -d.get_timezone_offset();
    let local = js_sys::Date::new(&(d.get_time() + off * 60_000.0).into());
    let iso = String::from(local.to_iso_string());
    let sign = if off < 0.0 { '-' } else { '+' };
    let off = off.abs() as u32;
    format!("{}{sign}{:02}:{:02}", iso.get(..19).unwrap_or_default(), off / 60, off % 60)
}

/// Today, as 2026-05-04.
pub fn today() -> String {
    now().get(..10).unwrap_or_default().to_owned()
}

/// A fresh seed, short enough to read out.
pub fn fresh_seed() -> u64 {
    u64::from(getrandom::u32().unwrap_or(1)) % 1_000_000
}

pub fn provide_desk() -> Desk {
    let desk = Desk {
        records: RwSignal::new(vec![]),
        unread: RwSignal::new(vec![]),
        doubts: RwSignal::new(HashMap::new()),
        crew: RwSignal::new(vec![]),
        mid_season: RwSignal::new(String::new()),
        halves: RwSignal::new(vec![]),
        sitting: RwSignal::new(None),
        form: RwSignal::new(None),
        told: RwSignal::new(false),
        done: RwSignal::new(None),
        note: RwSignal::new(Note::None),
        drawing: RwSignal::new(false),
        was_kept: StoredValue::new(false),
        loose: StoredValue::new(HashSet::new()),
        channel: StoredValue::new_local(BroadcastChannel::new("shortfall").ok()),
    };
    provide_context(desk);
    desk.hear_other_tabs();
    desk
}

pub fn desk() -> Desk {
    expect_context()
}

impl Desk {
    /// What other tabs of this browser do: `kept`, or `ended` and the key of a form.
    fn hear_other_tabs(self) {
        let hear = Closure::<dyn Fn(MessageEvent)>::new(move |ev: MessageEvent| {
            let text = ev.data().as_string().unwrap_or_default();
            if let Some(key) = text.strip_prefix("ended ")
                && self.done.with_untracked(Option::is_none)
                && self.sitting.with_untracked(|s| s.as_ref().is_some_and(|s| s.key() == key))
            {
                self.leave(Note::EndedElsewhere);
            }
            self.reload();
        });
        self.channel.with_value(|c| {
            if let Some(c) = c {
                c.set_onmessage(Some(hear.as_ref().unchecked_ref()));
            }
        });
        hear.forget();
    }

    fn tell_other_tabs(self, what: &str) {
        self.channel.with_value(|c| {
            if let Some(c) = c {
                let _ = c.post_message(&JsValue::from_str(what));
            }
        });
    }

    /// Leaves the open form, which stays on this device unless it is gone already.
    pub fn leave(self, why: Note) {
        self.sitting.set(None);
        self.form.set(None);
        self.told.set(false);
        if why != Note::None {
            self.note.set(why);
        }
        self.reload();
    }

    /// Reads everything kept. Also when another tab may have added to it.
    pub async fn load(self) {
        let (Some(records), Some(kept)) = (keep::all(Shelf::Records).await, keep::all(Shelf::Kept).await)
        else {
            return self.note.set(Note::NotKept);
        };
        let mut all: Vec<Record> = Vec::with_capacity(records.len());
        let mut unread = Vec::new();
        for (_, text) in records {
            match serde_json::from_str(&text) {
                Ok(r) => all.push(r),
                Err(_) => unread.push(text),
            }
        }
        sort(&mut all);
        let kept_now: HashSet<String> = all.iter().map(|r| r.id().to_owned()).collect();
        self.loose.update_value(|l| l.retain(|id| !kept_now.contains(id)));
        self.records.update(|now| {
            all.extend(now.drain(..).filter(|r| self.loose.with_value(|l| l.contains(r.id()))));
            *now = all;
        });
        self.unread.set(unread);
        let find = |name: &str| kept.iter().find(|(k, _)| k == name).map(|(_, v)| v.clone());
        self.crew.set(crew_of(find(CREW)));
        self.mid_season.set(find(MID_SEASON).unwrap_or_default());
        self.doubts.update(|now| {
            for (id, d) in Checked::read(find(CHECKED)).by_id {
                now.entry(id).or_insert(d);
            }
        });
        let halves = kept.iter().filter(|(k, _)| k.starts_with(HALF));
        self.halves.set(halves.filter_map(|(_, t)| serde_json::from_str(t).ok()).collect());
    }

    /// Reads everything kept, in its own time.
    pub fn reload(self) {
        spawn_local(self.load());
    }

    /// Adds names to the crew's list; `then` hears how many were added and how many are too many, or
    /// `None` when the device would not keep them.
    pub fn add_crew(self, names: Names, then: impl FnOnce(Option<(u32, u32)>) + 'static) {
        spawn_local(async move {
            let edit = |old: Option<String>| {
                let mut list = crew_of(old);
                let mut seen: HashSet<String> = list.iter().cloned().collect();
                let (mut added, mut over) = (0, names.left_out);
                for n in names.names {
                    if !seen.insert(n.clone()) {
                        continue;
                    }
                    if list.len() < MOST_CREW {
                        list.push(n);
                        added += 1;
                    } else {
                        over += 1;
                    }
                }
                (serde_json::to_string(&list).ok(), (list, added, over))
            };
            let done = keep::change(Shelf::Kept, CREW, edit).await;
            if let Some((list, added, over)) = done {
                self.crew.set(list);
                self.tell_other_tabs("kept");
                then(Some((added, over)));
            } else {
                self.note.set(Note::NotKept);
                then(None);
            }
        });
    }

    /// Takes a name off the crew's list.
    pub fn remove_crew(self, name: String) {
        spawn_local(async move {
            let edit = |old: Option<String>| {
                let mut list = crew_of(old);
                list.retain(|n| *n != name);
                (serde_json::to_string(&list).ok(), list)
            };
            match keep::change(Shelf::Kept, CREW, edit).await {
                Some(list) => {
                    self.crew.set(list);
                    self.tell_other_tabs("kept");
                }
                None => self.note.set(Note::NotKept),
            }
        });
    }

    /// Keeps the day of mid-season.
    pub fn keep_mid_season(self, day: String) {
        self.mid_season.set(day.clone());
        spawn_local(async move {
            if keep::put(Shelf::Kept, MID_SEASON, &day).await {
                self.tell_other_tabs("kept");
            } else {
                self.note.set(Note::NotKept);
            }
        });
    }

    /// The kinds that a person missed in the last form.
    pub fn missed_by(self, who: &str) -> Vec<crate::quiz::questions::ItemKind> {
        let who = crate::quiz::record::name(who);
        self.records.with_untracked(|all| {
            let last = all.iter().rev().find(|r| r.header.who == who);
            last.map_or(vec![], |r| crate::quiz::missed(&r.answers))
        })
    }

    /// Begins a form.
    pub fn begin(
        self,
        (who, trainer): (String, String),
        lang: &'static str,
        (place, seed): (String, u64),
        mode: Mode,
        cut: f64,
    ) {
        if self.drawing.get_untracked() {
            return;
        }
        self.drawing.set(true);
        let from = Blueprint { seed, place, again: self.missed_by(&who) };
        self.done.set(None);
        let started = now();
        asking::ask(DrawForm(from.clone()), move |answer| {
            self.drawing.set(false);
            let Ok(f) = answer else { return self.note.set(Note::NoEngine) };
            let cut = if cut > 0.0 { cut } else { CUT_SHARE };
            let header = Header::new(&who, &trainer, lang, from, f.items.len() as u32, cut, &started);
            let s = Sitting { header, mode, answers: vec![] };
            self.form.set(Some(f));
            self.told.set(false);
            self.was_kept.set_value(false);
            let (key, text) = (s.key(), serde_json::to_string(&s).unwrap_or_default());
            self.sitting.set(Some(s));
            spawn_local(async move {
                let kept = keep::put(Shelf::Kept, &key, &text).await;
                self.was_kept.set_value(kept);
                if !kept {
                    self.note.set(Note::NotKept);
                }
                // The browser is asked to keep what will be made.
                keep::persist().await;
            });
        });
    }

    /// Goes on with a form half done, at the same question; one that only lacks its end is ended.
    pub fn resume(self, s: Sitting) {
        self.done.set(None);
        asking::ask(DrawForm(s.header.from.clone()), move |answer| {
            let Ok(f) = answer else { return self.note.set(Note::NoEngine) };
            let ends = s.is_answered();
            self.form.set(Some(f));
            self.told.set(false);
            self.was_kept.set_value(true);
            self.sitting.set(Some(s));
            if ends {
                self.finish_if_done();
            }
        });
    }

    /// Drops a form half done.
    pub fn drop_half(self, s: &Sitting) {
        let key = s.key();
        spawn_local(async move {
            if keep::remove(Shelf::Kept, &key).await {
                self.halves.update(|h| h.retain(|x| x.key() != key));
                self.tell_other_tabs(&format!("ended {key}"));
            } else {
                self.note.set(Note::NotKept);
            }
        });
    }

    /// The question now open, and its number.
    pub fn open_item(self) -> Option<(usize, Item)> {
        let n = self.sitting.with(|s| s.as_ref().map(|s| s.answers.len()))?;
        let n = if self.told.get() { n.saturating_sub(1) } else { n };
        self.form.with(|f| f.as_ref().and_then(|f| f.items.get(n)).map(|q| (n, q.clone())))
    }

    /// Answers the open question. Another tab may have been further: then its answers stand; or it may
    /// have ended the form: then there is nothing left to answer here.
    pub fn answer(self, given: Given) {
        /// What was kept of the same form.
        enum Found {
            Ours,
            Theirs(Box<Sitting>),
            Gone,
        }
        let Some(mut s) = self.sitting.get_untracked() else { return };
        let Some(q) =
            self.form.with_untracked(|f| f.as_ref().and_then(|f| f.items.get(s.answers.len()).cloned()))
        else {
            return;
        };
        let before = s.answers.len();
        s.answers.push(Answered::of(&q, given));
        let practice = s.mode == Mode::Practice;
        let was_kept = self.was_kept.get_value();
        spawn_local(async move {
            let ours = serde_json::to_string(&s).ok();
            let edit = |old: Option<String>| {
                let gone = old.is_none() && was_kept;
                match old.and_then(|t| serde_json::from_str::<Sitting>(&t).ok()) {
                    Some(other) if other.answers.len() > before => (None, Found::Theirs(Box::new(other))),
                    None if gone => (None, Found::Gone),
                    _ => (ours, Found::Ours),
                }
            };
            match keep::change(Shelf::Kept, &s.key(), edit).await {
                Some(Found::Gone) => return self.leave(Note::EndedElsewhere),
                Some(Found::Theirs(other)) => {
                    self.note.set(Note::OtherTab);
                    self.sitting.set(Some(*other));
                }
                kept => {
                    if kept.is_some() {
                        self.was_kept.set_value(true);
                    } else {
                        self.note.set(Note::NotKept);
                    }
                    self.told.set(practice);
                    self.sitting.set(Some(s));
                }
            }
            if !self.told.get_untracked() {
                self.finish_if_done();
            }
        });
    }

    /// Goes on after feedback.
    pub fn next(self) {
        self.told.set(false);
        self.finish_if_done();
    }

    fn finish_if_done(self) {
        let Some(s) = self.sitting.get_untracked() else { return };
        if !s.is_answered() {
            return;
        }
        let finished = now();
        spawn_local(async move {
            // Set back against the last form that this device itself ended; what came by a file, or
            // another zone's hours, say nothing.
            let at_s = instant_s(&finished).unwrap_or(0);
            let read = |old: Option<String>| (None, old.and_then(|t| t.parse::<i64>().ok()));
            let last_s = keep::change(Shelf::Kept, LAST_END, read).await.flatten();
            let back = last_s.is_some_and(|last_s| last_s > at_s);
            let ask =
                Seal { header: s.header.clone(), answers: s.answers.clone(), finished, clock_back: back };
            asking::ask(ask, move |answer| match answer {
                Ok(Some(r)) => spawn_local(self.end(s, r, at_s)),
                Ok(None) => self.leave(Note::NotSealed),
                Err(_) => self.leave(Note::NoEngine),
            });
        });
    }

    /// Keeps what a form came to, then shows it.
    async fn end(self, s: Sitting, r: Record, at_s: i64) {
        let key = s.key();
        if s.mode == Mode::Practice {
            self.done.set(Some(r));
            return self.drop_half(&s);
        }
        let text = serde_json::to_string(&r).unwrap_or_default();
        let ended = keep::end_form(&key, self.was_kept.get_value(), r.id(), &text).await;
        if ended == Ended::Elsewhere {
            return self.leave(Note::EndedElsewhere);
        }
        if r.clock_set_back {
            self.note.set(Note::ClockBack);
        }
        if ended == Ended::NotKept {
            self.loose.update_value(|l| {
                l.insert(r.id().to_owned());
            });
            self.note.set(Note::NotKept);
        } else {
            let _ = keep::put(Shelf::Kept, LAST_END, &at_s.to_string()).await;
            self.halves.update(|h| h.retain(|x| x.key() != key));
            self.tell_other_tabs(&format!("ended {key}"));
        }
        self.found(r.id().to_owned(), None);
        self.records.update(|all| all.push(r.clone()));
        self.done.set(Some(r));
    }

    /// Takes in records of a file; `then` hears whether they are kept.
    pub fn take_in(self, fresh: Vec<Record>, then: impl FnOnce(bool) + 'static) {
        let texts: Vec<(String, String)> =
            fresh.iter().filter_map(|r| Some((r.id().to_owned(), serde_json::to_string(r).ok()?))).collect();
        spawn_local(async move {
            let kept = texts.len() == fresh.len() && keep::put_all(Shelf::Records, &texts).await;
            if kept {
                self.tell_other_tabs("kept");
                self.records.update(|all| {
                    all.extend(fresh.iter().cloned());
                    sort(all);
                });
                self.draw_again(fresh, 0);
            } else {
                self.note.set(Note::NotKept);
            }
            then(kept);
        });
    }

    /// Keeps in mind, and on the device, what drawing a record again has shown.
    pub fn found(self, id: String, doubt: Option<Doubt>) {
        self.doubts.update(|all| {
            all.insert(id.clone(), doubt);
        });
        spawn_local(async move {
            let edit = |old: Option<String>| {
                let mut c = Checked::read(old);
                c.by_id.insert(id, doubt);
                (serde_json::to_string(&c).ok(), ())
            };
            // Not kept, it is drawn again at the next look.
            let _ = keep::change(Shelf::Kept, CHECKED, edit).await;
        });
    }

    /// Draws the forms of records again, one after the other, and keeps in mind what that shows.
    fn draw_again(self, records: Vec<Record>, at: usize) {
        let Some(r) = records.get(at) else { return };
        let id = r.id().to_owned();
        asking::ask(Doubts(r.clone()), move |answer| {
            if let Ok(d) = answer {
                self.found(id, d);
            }
            self.draw_again(records, at + 1);
        });
    }

    /// Clears this device: records, crew, halves, settings and set-up.
    pub fn clear(self) {
        spawn_local(async move {
            let gone = keep::clear().await;
            crate::ui::shared::store::clear();
            if gone {
                self.records.set(vec![]);
                self.unread.set(vec![]);
                self.crew.set(vec![]);
                self.halves.set(vec![]);
                self.sitting.set(None);
                self.form.set(None);
                self.done.set(None);
                self.mid_season.set(String::new());
                self.tell_other_tabs("kept");
            }
            self.note.set(if gone { Note::Cleared } else { Note::NotKept });
        });
    }
}

/// In order of their ends.
fn sort(all: &mut [Record]) {
    all.sort_by_cached_key(|r| (instant_s(&r.finished), r.finished.clone()));
}
