//! Records: what was asked, what was answered, by whom and when; sealed by a chain of hashes, written
//! as JSON, CSV and xAPI statements, read back and merged.
//!
//! A record says what it is not: no certificate of approved training. Its chain shows an edit by
//! somebody who did not seal it anew, and no more: there is no secret in it, so anybody who wants to
//! can seal anew. That its answers fit its form is shown by drawing the form again; who sat there is
//! shown by nothing here. Left out: signatures by keys.

use crate::grade::report::APP_VERSION;
use crate::physics::PHYSICS_VERSION;
use crate::quiz::{Answered, Blueprint, QUIZ_VERSION, Score, form, score};
use crate::rules::RULES_VERSION;
use crate::units::instant_s;
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};

/// The record format's number.
///
/// 2: the version of the quiz stands in the header. 3: an answer can be that one would stop and ask.
pub const RECORD_SCHEMA: u32 = 3;

/// Longest name kept, characters.
pub const LONGEST_NAME: usize = 200;

/// Most questions of a form.
const MOST_QUESTIONS: u32 = 60;

/// Instants that a record can have: from 1970 to the end of 2199, s since 1970.
const INSTANTS_S: core::ops::Range<i64> = 0..7_258_118_400;

/// What a record is about, before any answer.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Header {
    /// Format number.
    pub schema: u32,
    /// Version of the app.
    pub app: String,
    /// Version of the physics.
    pub physics: u32,
    /// Version of the rules.
    pub rules: u32,
    /// Version of the quiz; 0 in records of schema 1, which did not hold it.
    #[serde(default, skip_serializing_if = "is_zero")]
    pub quiz: u32,
    /// Name or code of the person.
    pub who: String,
    /// Name of the trainer, as far as told.
    pub trainer: String,
    /// Language the form was answered in: `en` or `fr`.
    pub lang: String,
    /// What the form was drawn from: seed, place, kinds asked again.
    pub from: Blueprint,
    /// How many questions the form has.
    pub questions: u32,
    /// Share of points from which it is passed.
    pub cut_share: f64,
    /// When it was begun (ISO 8601 with offset).
    pub started: String,
}

fn is_zero(n: &u32) -> bool {
    *n == 0
}

/// A name as it is kept: without spaces around it, not longer than [`LONGEST_NAME`].
pub fn name(text: &str) -> String {
    text.trim().chars().take(LONGEST_NAME).collect()
}

impl Header {
    /// A header of this version.
    pub fn new(
        who: &str,
        trainer: &str,
        lang: &str,
        from: Blueprint,
        questions: u32,
        cut_share: f64,
        started: &str,
    ) -> Header {
        Header {
            schema: RECORD_SCHEMA,
            app: APP_VERSION.to_owned(),
            physics: PHYSICS_VERSION,
            rules: RULES_VERSION,
            quiz: QUIZ_VERSION,
            who: name(who),
            trainer: name(trainer),
            lang: lang.to_owned(),
            from,
            questions,
            cut_share,
            started: started.to_owned(),
        }
    }
}

/// A finished form.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Record {
    /// What it is about.
    pub header: Header,
    /// The answers, in order.
    pub answers: Vec<Answered>,
    /// When it was finished (ISO 8601 with offset).
    pub finished: String,
    /// The device's clock stood earlier than at a record before this one.
    pub clock_set_back: bool,
    /// SHA-256 over the header, then over the last hash and each answer, then the end; hexadecimal.
    pub chain: Vec<String>,
}

fn hash(before: &str, part: &impl Serialize) -> Option<String> {
    let text = serde_json::to_string(part).ok()?;
    let mut h = Sha256::new();
    h.update(before.as_bytes());
    h.update(text.as_bytes());
    Some(h.finalize().iter().map(|b| format!("{b:02x}")).collect())
}

fn chain(header: &Header, answers: &[Answered], finished: &str, clock_set_back: bool) -> Option<Vec<String>> {
    let mut out = vec![hash("", header)?];
    for a in answers {
        out.push(hash(out.last()?, a)?);
    }
    out.push(hash(out.last()?, &(finished, clock_set_back))?);
    Some(out)
}

/// What is doubtful about a record.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Doubt {
    /// Its hashes do not fit its text: it was edited.
    Edited,
    /// A number, a name or a day in it cannot be: credit over 1, a year 9999.
    OutOfRange,
    /// Written by another version of physics, rules or quiz: its form cannot be drawn again here.
    OtherVersion,
    /// Drawn again, the form gives other questions or marks.
    DoesNotReplay,
}

impl Record {
    /// Seals a finished form; `None` when it cannot be sealed, because something in it cannot be.
    pub fn seal(
        header: Header,
        answers: Vec<Answered>,
        finished: &str,
        clock_set_back: bool,
    ) -> Option<Record> {
        let chain = chain(&header, &answers, finished, clock_set_back)?;
        let r = Record { header, answers, finished: finished.to_owned(), clock_set_back, chain };
        r.is_in_range().then_some(r)
    }

    /// Its identifier: the last hash. Two records with one identifier are one record.
    pub fn id(&self) -> &str {
        self.chain.last().map_or("", String::as_str)
    }

    /// Its score.
    pub fn score(&self) -> Score {
        score(&self.answers, self.header.questions as usize, self.header.cut_share)
    }

    /// Whether its hashes fit its text.
    pub fn is_whole(&self) -> bool {
        chain(&self.header, &self.answers, &self.finished, self.clock_set_back).as_ref() == Some(&self.chain)
    }

    /// Whether every number, name and instant in it can be.
    pub fn is_in_range(&self) -> bool {
        let h = &self.header;
        let share = |x: f64| (0.0..=1.0).contains(&x);
        let short = |t: &str, most: usize| t.chars().count() <= most;
        (1..=RECORD_SCHEMA).contains(&h.schema)
            && (1..=MOST_QUESTIONS).contains(&h.questions)
            && self.answers.len() <= h.questions as usize
            && h.from.again.len() <= MOST_QUESTIONS as usize
            && share(h.cut_share)
            && self.answers.iter().all(|a| share(a.credit_share))
            && ["en", "fr"].contains(&h.lang.as_str())
            && short(&h.who, LONGEST_NAME)
            && short(&h.trainer, LONGEST_NAME)
            && short(&h.app, 40)
            && short(&h.from.place, 40)
            && [&h.started, &self.finished]
                .iter()
                .all(|t| t.len() <= 40 && instant_s(t).is_some_and(|s| INSTANTS_S.contains(&s)))
    }

    /// What is doubtful before its form is drawn again: hashes and ranges alone.
    pub fn doubt_at_sight(&self) -> Option<Doubt> {
        if !self.is_whole() {
            Some(Doubt::Edited)
        } else if !self.is_in_range() {
            Some(Doubt::OutOfRange)
        } else {
            None
        }
    }

    /// Draws its form again and marks its answers again.
    pub fn doubt(&self) -> Option<Doubt> {
        if let Some(d) = self.doubt_at_sight() {
            return Some(d);
        }
        let h = &self.header;
        if (h.physics, h.rules, h.quiz) != (PHYSICS_VERSION, RULES_VERSION, QUIZ_VERSION) {
            return Some(Doubt::OtherVersion);
        }
        let f = form(&h.from);
        let again: Vec<Answered> =
            f.items.iter().zip(&self.answers).map(|(q, a)| Answered::of(q, a.given.clone())).collect();
        let same = f.items.len() == h.questions as usize && again == self.answers;
        (!same).then_some(Doubt::DoesNotReplay)
    }
}
