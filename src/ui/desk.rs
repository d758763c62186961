//! The signals of quiz and crew: the form being answered, the records, the crew's list, and how they
//! are kept.

use super::engine;
use super::keep::{self, Shelf};
use crate::engine::{Answer, Ask};
use crate::quiz::items::{Given, Item};
use crate::quiz::{Answered, Blueprint, CUT_SHARE, Form, Mode};
use crate::records::{Header, Record};
use leptos::prelude::*;
use serde::{Deserialize, Serialize};
use wasm_bindgen_futures::spawn_local;

/// A form half done, as it is kept.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Sitting {
    pub header: Header,
    pub mode: Mode,
    pub answers: Vec<Answered>,
}

impl Sitting {
    fn key(&self) -> String {
        format!("sitting {} {}", self.header.started, self.header.from.seed)
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
    /// The device's clock stood earlier than at an earlier record.
    ClockBack,
    /// Everything on this device was cleared.
    Cleared,
}

#[derive(Clone, Copy)]
pub struct Desk {
    pub records: RwSignal<Vec<Record>>,
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
}

/// Now, as ISO 8601 with the device's offset.
pub fn now() -> String {
    let d = js_sys::Date::new_0();
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
        crew: RwSignal::new(vec![]),
        mid_season: RwSignal::new(String::new()),
        halves: RwSignal::new(vec![]),
        sitting: RwSignal::new(None),
        form: RwSignal::new(None),
        told: RwSignal::new(false),
        done: RwSignal::new(None),
        note: RwSignal::new(Note::None),
    };
    provide_context(desk);
    desk
}

pub fn desk() -> Desk {
    expect_context()
}

impl Desk {
    /// Reads everything kept. Also when another tab may have added to it.
    pub async fn load(self) {
        let (Some(records), Some(kept)) = (keep::all(Shelf::Records).await, keep::all(Shelf::Kept).await)
        else {
            return self.note.set(Note::NotKept);
        };
        let mut all: Vec<Record> = records.iter().filter_map(|(_, t)| serde_json::from_str(t).ok()).collect();
        all.sort_by(|a, b| a.finished.cmp(&b.finished));
        self.records.set(all);
        let find = |name: &str| kept.iter().find(|(k, _)| k == name).map(|(_, v)| v.clone());
        self.crew.set(find("crew").and_then(|t| serde_json::from_str(&t).ok()).unwrap_or_default());
        self.mid_season.set(find("mid season").unwrap_or_default());
        let halves = kept.iter().filter(|(k, _)| k.starts_with("sitting "));
        self.halves.set(halves.filter_map(|(_, t)| serde_json::from_str(t).ok()).collect());
    }

    /// Reads everything kept, in its own time.
    pub fn reload(self) {
        spawn_local(self.load());
    }

    async fn keep(self, key: String, text: String) {
        if !keep::put(Shelf::Kept, &key, &text).await {
            self.note.set(Note::NotKept);
        }
    }

    /// Keeps the crew's list.
    pub fn keep_crew(self) {
        let text = self.crew.with_untracked(|c| serde_json::to_string(c).unwrap_or_default());
        spawn_local(self.keep("crew".to_owned(), text));
    }

    /// Keeps the day of mid-season.
    pub fn keep_mid_season(self, day: String) {
        self.mid_season.set(day.clone());
        spawn_local(self.keep("mid season".to_owned(), day));
    }

    /// The kinds that a person missed in the last form.
    pub fn missed_by(self, who: &str) -> Vec<crate::quiz::items::ItemKind> {
        self.records.with_untracked(|all| {
            let last = all.iter().rev().find(|r| r.header.who == who.trim());
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
        let from = Blueprint { seed, place, again: self.missed_by(&who) };
        self.done.set(None);
        let started = now();
        engine::ask(&Ask::Form(from.clone()), move |answer| {
            let Some(Answer::Form(f)) = answer else { return };
            let cut = if cut > 0.0 { cut } else { CUT_SHARE };
            let header = Header::new(&who, &trainer, lang, from, f.items.len() as u32, cut, &started);
            let s = Sitting { header, mode, answers: vec![] };
            self.form.set(Some(*f));
            self.told.set(false);
            self.keep_sitting(&s);
            self.sitting.set(Some(s));
            // The browser is asked to keep what will be made.
            spawn_local(async {
                keep::persist().await;
            });
        });
    }

    /// Goes on with a form half done, at the same question.
    pub fn resume(self, s: Sitting) {
        self.done.set(None);
        engine::ask(&Ask::Form(s.header.from.clone()), move |answer| {
            let Some(Answer::Form(f)) = answer else { return };
            self.form.set(Some(*f));
            self.told.set(false);
            self.sitting.set(Some(s));
        });
    }

    /// Drops a form half done.
    pub fn drop_half(self, s: &Sitting) {
        let key = s.key();
        self.halves.update(|h| h.retain(|x| x.key() != key));
        spawn_local(async move {
            keep::remove(Shelf::Kept, &key).await;
        });
    }

    fn keep_sitting(self, s: &Sitting) {
        let (key, text) = (s.key(), serde_json::to_string(s).unwrap_or_default());
        spawn_local(self.keep(key, text));
    }

    /// The question now open, and its number.
    pub fn open_item(self) -> Option<(usize, Item)> {
        let n = self.sitting.with(|s| s.as_ref().map(|s| s.answers.len()))?;
        let n = if self.told.get() { n.saturating_sub(1) } else { n };
        self.form.with(|f| f.as_ref().and_then(|f| f.items.get(n)).map(|q| (n, q.clone())))
    }

    /// Answers the open question. Another tab may have been further: then its answers stand.
    pub fn answer(self, given: Given) {
        let Some(mut s) = self.sitting.get_untracked() else { return };
        let Some(q) =
            self.form.with_untracked(|f| f.as_ref().and_then(|f| f.items.get(s.answers.len()).cloned()))
        else {
            return;
        };
        let before = s.answers.len();
        s.answers.push(Answered::of(&q, given));
        let practice = s.mode == Mode::Practice;
        spawn_local(async move {
            let kept =
                keep::get(Shelf::Kept, &s.key()).await.and_then(|t| serde_json::from_str::<Sitting>(&t).ok());
            if let Some(other) = kept.filter(|k| k.answers.len() > before) {
                self.note.set(Note::OtherTab);
                self.sitting.set(Some(other));
            } else {
                self.keep_sitting(&s);
                self.told.set(practice);
                self.sitting.set(Some(s));
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
        if s.answers.len() < s.header.questions as usize {
            return;
        }
        let finished = now();
        let back =
            self.records.with_untracked(|all| all.iter().any(|r| r.finished.get(..19) > finished.get(..19)));
        let ask = Ask::Seal(Box::new(s.header.clone()), s.answers.clone(), finished, back);
        engine::ask(&ask, move |answer| {
            let Some(Answer::Record(r)) = answer else { return };
            self.done.set(Some((*r).clone()));
            if back {
                self.note.set(Note::ClockBack);
            }
            if s.mode == Mode::Practice {
                return self.drop_half(&s);
            }
            self.records.update(|all| all.push((*r).clone()));
            let text = serde_json::to_string(&*r).unwrap_or_default();
            spawn_local(async move {
                // The half is let go only once the whole is kept.
                if keep::put(Shelf::Records, r.id(), &text).await {
                    self.drop_half(&s);
                } else {
                    self.note.set(Note::NotKept);
                }
            });
        });
    }

    /// Takes in records of a file.
    pub fn take_in(self, fresh: Vec<Record>) {
        for r in &fresh {
            let (id, text) = (r.id().to_owned(), serde_json::to_string(r).unwrap_or_default());
            spawn_local(async move {
                if !keep::put(Shelf::Records, &id, &text).await {
                    self.note.set(Note::NotKept);
                }
            });
        }
        self.records.update(|all| {
            all.extend(fresh);
            all.sort_by(|a, b| a.finished.cmp(&b.finished));
        });
    }

    /// Clears this device: records, crew, halves, settings and set-up.
    pub fn clear(self) {
        spawn_local(async move {
            let gone = keep::clear().await;
            super::storage::clear();
            self.records.set(vec![]);
            self.crew.set(vec![]);
            self.halves.set(vec![]);
            self.sitting.set(None);
            self.form.set(None);
            self.done.set(None);
            self.mid_season.set(String::new());
            self.note.set(if gone { Note::Cleared } else { Note::NotKept });
        });
    }
}
