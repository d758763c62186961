//! A quiz whose key is the engine: questions drawn from seeds, forms after a blueprint, scores.
//!
//! The same seed gives the same form on the same versions of physics and rules, in either language
//! and either unit system: a form holds codes and SI numbers, no words.

pub mod export;
pub mod gear_list;
pub mod questions;
pub mod record;
pub mod roster;
pub mod session;

use crate::draw::Draw;
use questions::{Given, Item, ItemKind, item};
use serde::{Deserialize, Serialize};

/// Version of the quiz: the generator, the drawing of forms, the questions and their keys. A record
/// holds it; a form is drawn again only by the version that asked it.
///
/// 1: forms of a generator whose draws hung on the width of a machine word.
/// 2: draws of fixed width from a specified generator (`draw`).
/// 3: set-ups with a link of 0.75 m on the grab, keyed by version 5 of the physics.
/// 4: keyed by version 6 of the physics.
/// 5: a working day has rain, wind and going home at drawn minutes; questions as before.
/// 6: no question over a deck that the boots are not over; a day has no deck below.
/// 7: four kinds more (harness worn, eave, pairs, where the ladder stands); a form asks twelve of the sixteen: every
/// one whose miss can kill, and four of the others; a working day begins with harness and line unlooked at.
/// 8: keyed by version 7 of the physics.
pub const QUIZ_VERSION: u32 = 8;

/// Questions of a form, before those asked again.
pub const FORM_QUESTIONS: usize = 12;

/// What a form is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Mode {
    /// Feedback after each answer; leaves no record.
    Practice,
    /// Feedback after the form; ends in a record.
    Assessment,
}

/// What a form is drawn from.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Blueprint {
    /// Seed, shown to the person.
    pub seed: u64,
    /// Place whose rules apply.
    pub place: String,
    /// Kinds missed before: each comes once more, in new clothes.
    pub again: Vec<ItemKind>,
}

/// Share of points from which a form is passed, unless the trainer sets another: four in five. A
/// dozen questions then leave room for two slips of the pen, and none for a miss that kills.
pub const CUT_SHARE: f64 = 0.8;
/// Cuts that a trainer can set.
pub const CUTS: [f64; 5] = [0.6, 0.7, 0.8, 0.9, 1.0];

/// A form: its questions in order.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Form {
    /// What it was drawn from.
    pub from: Blueprint,
    /// The questions.
    pub items: Vec<Item>,
}

/// Draws a form: one question of every kind whose miss can kill, of others as many as fill it, one more of each kind
/// missed before, shuffled.
pub fn form(from: &Blueprint) -> Form {
    let mut pick = Draw::with_seed(from.seed);
    let (mut kinds, mut others): (Vec<ItemKind>, Vec<ItemKind>) =
        ItemKind::ALL.iter().copied().partition(|k| k.can_kill());
    pick.shuffle(&mut others);
    kinds.extend(others.into_iter().take(FORM_QUESTIONS.saturating_sub(kinds.len())));
    kinds.extend(from.again.iter().take(6));
    pick.shuffle(&mut kinds);
    let mut items: Vec<Item> = Vec::with_capacity(kinds.len());
    for kind in kinds {
        for _ in 0..8 {
            let Some(next) = item(kind, pick.below(1 << 53), &from.place) else { continue };
            if !items.iter().any(|i| alike(i, &next)) {
                items.push(next);
                break;
            }
        }
    }
    Form { from: from.clone(), items }
}

/// Whether two questions would look the same to a person.
pub fn alike(a: &Item, b: &Item) -> bool {
    a.kind == b.kind && a.set_ups == b.set_ups && a.ask == b.ask
}

/// An answered question of a form.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Answered {
    /// Kind of the question.
    pub kind: ItemKind,
    /// Its seed.
    pub seed: u64,
    /// What was answered.
    pub given: Given,
    /// Credit, 0 to 1.
    pub credit_share: f64,
    /// A miss that would kill.
    pub critical: bool,
}

impl Answered {
    /// An answer to a question, marked.
    pub fn of(item: &Item, given: Given) -> Answered {
        Answered {
            kind: item.kind,
            seed: item.seed,
            credit_share: item.credit(&given),
            critical: item.is_critical_miss(&given),
            given,
        }
    }
}

/// How a form was answered.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Score {
    /// Mean credit, 0 to 1.
    pub points_share: f64,
    /// Misses that would kill.
    pub critical: u32,
    /// At or above the cut, with no critical miss.
    pub passes: bool,
}

/// Scores answers against a cut. A form with a question left open does not pass.
pub fn score(answers: &[Answered], questions: usize, cut_share: f64) -> Score {
    let sum: f64 = answers.iter().map(|a| a.credit_share).sum();
    let share = if questions == 0 { 0.0 } else { sum / questions as f64 };
    let critical = answers.iter().filter(|a| a.critical).count() as u32;
    let whole = answers.len() == questions && questions > 0;
    Score { points_share: share, critical, passes: whole && critical == 0 && share >= cut_share - 1e-9 }
}

/// The kinds missed, for the next form.
pub fn missed(answers: &[Answered]) -> Vec<ItemKind> {
    let mut out: Vec<ItemKind> = answers.iter().filter(|a| a.credit_share < 1.0).map(|a| a.kind).collect();
    out.sort_unstable();
    out.dedup();
    out
}

/// Days after the first pass at which a re-check is due (spaced retrieval: Latimier and others,
/// Educational Psychology Review 33 (2021) 959).
pub const RECHECK_DAYS: [i64; 3] = [2, 7, 30];
