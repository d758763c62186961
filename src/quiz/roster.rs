//! The crew: who did what, who is due, and what the crew has not understood.
//!
//! Re-checks come at days 2, 7 and 30 after the first pass and at mid-season (spaced retrieval).
//! Left out: rights and roles; whoever holds the device sees all.

use crate::quiz::RECHECK_DAYS;
use crate::quiz::questions::ItemKind;
use crate::quiz::record::{Record, name};
use crate::units::date;
use serde::{Deserialize, Serialize};
use std::collections::HashSet;
use time::{Date, Duration};

/// Names for the crew's list: each once, no more than the list holds.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Names {
    /// The names, in the order given.
    pub names: Vec<String>,
    /// How many more there were.
    pub left_out: u32,
}

/// Most names on a crew list.
pub const MOST_CREW: usize = 500;

impl Names {
    /// Names out of a list that may hold empty ones, doubles and too many.
    pub fn of<'a>(all: impl Iterator<Item = &'a str>) -> Names {
        let mut seen = HashSet::new();
        let mut out = Names::default();
        for text in all {
            let bare: String = text.chars().filter(|c| !c.is_control()).collect();
            let one = name(&bare);
            if one.is_empty() || !seen.insert(one.clone()) {
                continue;
            }
            if out.names.len() < MOST_CREW {
                out.names.push(one);
            } else {
                out.left_out += 1;
            }
        }
        out
    }
}

/// The character that separates cells: whichever of tab, semicolon and comma the first line has most
/// of outside quotes.
fn separator(text: &str) -> u8 {
    let line = text.lines().find(|l| !l.trim().is_empty()).unwrap_or_default();
    let bare: String = line.split('"').step_by(2).collect();
    let count = |c: char| bare.matches(c).count();
    let most = count('\t').max(count(';')).max(count(','));
    match most {
        n if n == count('\t') && n > 0 => b'\t',
        n if n == count(';') && n > 0 => b';',
        _ => b',',
    }
}

/// Names from a pasted list or a CSV file: the first column, without a heading, each once.
pub fn crew(text: &str) -> Names {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let mut rows = ::csv::ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .delimiter(separator(text))
        .from_reader(text.as_bytes());
    let mut cells: Vec<String> = rows
        .records()
        .flatten()
        .map(|row| row.get(0).unwrap_or_default().trim().trim_start_matches('\'').to_owned())
        .collect();
    let heading = |n: &str| ["name", "nom", "names", "noms"].contains(&n.to_lowercase().as_str());
    if cells.first().is_some_and(|n| heading(n)) {
        cells.remove(0);
    }
    Names::of(cells.iter().map(String::as_str))
}

/// What a person is due for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum DueKind {
    /// A first form that passes.
    First,
    /// A re-check so many days after it.
    Recheck(u16),
    /// The re-check at mid-season.
    MidSeason,
}

/// Something due.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Due {
    /// What.
    pub kind: DueKind,
    /// From which day; none for a first form.
    pub on: Option<Date>,
    /// Done.
    pub done: bool,
}

/// The day of a record's end.
pub fn day(r: &Record) -> Option<Date> {
    date(r.finished.get(..10)?)
}

/// What a person is due for, in order of days.
pub fn due(records: &[&Record], mid_season: Option<Date>) -> Vec<Due> {
    let days: Vec<Date> = records.iter().filter_map(|r| day(r)).collect();
    let first = records.iter().filter(|r| r.score().passes).filter_map(|r| day(r)).min();
    let Some(first) = first else { return vec![Due { kind: DueKind::First, on: None, done: false }] };
    let at = |kind, on: Date| Due { kind, on: Some(on), done: days.iter().any(|d| *d >= on) };
    let mut out = vec![Due { kind: DueKind::First, on: Some(first), done: true }];
    // At the end of the calendar there is no such day.
    out.extend(
        RECHECK_DAYS
            .iter()
            .filter_map(|&n| Some(at(DueKind::Recheck(n as u16), first.checked_add(Duration::days(n))?))),
    );
    out.extend(mid_season.filter(|d| *d > first).map(|d| at(DueKind::MidSeason, d)));
    out.sort_by_key(|d| d.on);
    out
}

/// The next thing a person is due for, and whether its day has come.
pub fn next_due(records: &[&Record], mid_season: Option<Date>, today: Date) -> Option<(Due, bool)> {
    let next = due(records, mid_season).into_iter().find(|d| !d.done)?;
    let come = next.on.is_none_or(|d| d <= today);
    Some((next, come))
}

/// How a kind of question fared with the crew.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct KindRow {
    /// The kind.
    pub kind: ItemKind,
    /// How often it was answered.
    pub answered: u32,
    /// Mean credit.
    pub right_share: f64,
    /// Correlation of its credit with the rest of the form (corrected item-total): near 0 or below,
    /// who knows the rest does no better on it. None with fewer than five answers or no spread.
    pub discrimination_ratio: Option<f64>,
}

fn correlation(pairs: &[(f64, f64)]) -> Option<f64> {
    let n = pairs.len() as f64;
    if pairs.len() < 5 {
        return None;
    }
    let (ma, mb) = (pairs.iter().map(|p| p.0).sum::<f64>() / n, pairs.iter().map(|p| p.1).sum::<f64>() / n);
    let (mut ab, mut aa, mut bb) = (0.0, 0.0, 0.0);
    for (a, b) in pairs {
        ab += (a - ma) * (b - mb);
        aa += (a - ma) * (a - ma);
        bb += (b - mb) * (b - mb);
    }
    (aa > 1e-12 && bb > 1e-12).then(|| ab / libm::sqrt(aa * bb))
}

/// Each kind that was asked, worst first.
pub fn analysis(records: &[Record]) -> Vec<KindRow> {
    let mut out: Vec<KindRow> = ItemKind::ALL
        .iter()
        .filter_map(|&kind| {
            let mut pairs = Vec::new();
            for r in records {
                let all: f64 = r.answers.iter().map(|a| a.credit_share).sum();
                let n = r.answers.len() as f64;
                for a in r.answers.iter().filter(|a| a.kind == kind) {
                    let rest_share = if n > 1.0 { (all - a.credit_share) / (n - 1.0) } else { 0.0 };
                    pairs.push((a.credit_share, rest_share));
                }
            }
            let answered = pairs.len() as u32;
            (answered > 0).then(|| KindRow {
                kind,
                answered,
                right_share: pairs.iter().map(|p| p.0).sum::<f64>() / f64::from(answered),
                discrimination_ratio: correlation(&pairs),
            })
        })
        .collect();
    out.sort_by(|a, b| a.right_share.total_cmp(&b.right_share));
    out
}
