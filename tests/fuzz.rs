//! Bounded fuzzing of what reads other people's text: set-ups, links, records, crew lists, and the CSV
//! that is written of them. Each file of `tests/corpus` is read as it is and in thousands of damaged
//! forms (bytes flipped, cut, doubled, numbers and names swapped for nasty ones), the same each time.
//! What reads must be harmless to everything behind it; what does not is refused in one short line.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used)]

use shortfall::draw::Draw;
use shortfall::geometry::p;
use shortfall::grade::report::outcome_json;
use shortfall::practice::hand::{Held, dragged, moved};
use shortfall::quiz::export::*;
use shortfall::quiz::record::*;
use shortfall::quiz::roster::*;
use shortfall::quiz::roster::{crew, due};
use shortfall::quiz::{Answered, Blueprint, CUT_SHARE, form};
use shortfall::scenario::Scenario;
use shortfall::scenario::file::{read_scenario, read_whole};
use shortfall::scenario::link::read_fragment;
use shortfall::texts::Lang;
use shortfall::texts::say::{self, Reader};
use shortfall::units::Units;
use std::path::Path;

/// Damaged forms of each file.
const FORMS: usize = 3_000;

const NASTY: [&str; 14] = [
    "-1",
    "0",
    "1e400",
    "-1e9",
    "99999999999999999999",
    "null",
    "true",
    "[]",
    "{}",
    "\"\"",
    "NaN",
    "\u{0}",
    "\u{1b}[31m\n",
    "9999-12-31T23:59:59Z",
];

fn corpus(begins: &str) -> Vec<(String, Vec<u8>)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/corpus");
    let mut all: Vec<_> = std::fs::read_dir(folder)
        .expect("a corpus")
        .flatten()
        .map(|e| (e.file_name().to_string_lossy().into_owned(), std::fs::read(e.path()).expect("reads")))
        .filter(|(n, _)| n.starts_with(begins))
        .collect();
    all.sort();
    assert!(!all.is_empty(), "no {begins} in the corpus");
    all
}

fn damaged(text: &[u8], pick: &mut Draw) -> Vec<u8> {
    let mut out = text.to_vec();
    for _ in 0..=pick.index(3) {
        let at = pick.index(out.len().max(1));
        let to = (at + pick.index(12)).min(out.len());
        match pick.index(6) {
            0 if !out.is_empty() => out[at] ^= 1 << pick.index(8),
            1 => out.truncate(at),
            2 => {
                let part = out[at..to].to_vec();
                out.splice(at..at, part);
            }
            3 => drop(out.drain(at..to)),
            // A value, from after a colon to the next end of it.
            4 => {
                let colons: Vec<usize> =
                    out.iter().enumerate().filter(|(_, c)| **c == b':').map(|(n, _)| n + 1).collect();
                if let Some(from) = colons.get(pick.index(colons.len())).copied() {
                    let end =
                        out[from..].iter().position(|c| b",}]".contains(c)).map_or(out.len(), |n| from + n);
                    out.splice(from..end, NASTY[pick.index(NASTY.len())].bytes());
                }
            }
            _ => {
                let nasty = NASTY[pick.index(NASTY.len())];
                out.splice(at..to, nasty.bytes());
            }
        }
    }
    out
}

fn forms(begins: &str, mut see: impl FnMut(&str, &str)) {
    for (name, text) in corpus(begins) {
        see(&name, &String::from_utf8_lossy(&text));
        let mut pick = Draw::with_seed(text.len() as u64);
        for _ in 0..FORMS {
            see(&name, &String::from_utf8_lossy(&damaged(&text, &mut pick)));
        }
    }
}

/// What the page does with a set-up that it took.
fn use_it(s: &Scenario, runs: &mut u32) {
    for part in Held::ALL {
        let _ = moved(s, part, 2.0);
        let _ = dragged(s, part, p(-1.0, 3.0));
    }
    let r = Reader { lang: Lang::Fr, units: Units::FeetPounds };
    assert!(!say::state(r, s).is_empty());
    if s.problems().is_empty() && *runs > 0 {
        *runs -= 1;
        assert!(outcome_json(s)["outcome"].is_string());
    }
}

#[test]
fn set_ups_and_links_are_read_or_refused_in_a_line() {
    let mut runs = 60;
    let (mut read, mut refused) = (0, 0);
    let mut seen = |got: Result<Scenario, shortfall::scenario::file::FileError>| match got {
        Ok(s) => {
            read += 1;
            use_it(&s, &mut runs);
        }
        Err(e) => {
            refused += 1;
            let line = e.to_string();
            assert!(line.chars().count() < 160 && !line.chars().any(char::is_control), "{line:?}");
            for lang in Lang::ALL {
                let told = say::file_error(Reader { lang, units: Units::Metric }, &e);
                assert!(told.chars().count() < 320 && !told.contains(['{', '\n']), "{told:?}");
            }
        }
    };
    forms("scenario-", |_, text| {
        let _ = read_scenario(text).map(|s| s.problems());
        seen(read_whole(text));
    });
    forms("link-", |_, text| {
        if let Some(got) = read_fragment(text) {
            seen(got);
        }
    });
    assert!(read > 200 && refused > 5_000, "{read} read, {refused} refused");
}

#[test]
fn crew_lists_are_read_whatever_they_hold() {
    forms("roster-", |name, text| {
        let got = crew(text);
        assert!(got.names.len() <= MOST_CREW, "{name}");
        assert!(got.names.iter().all(|n| !n.is_empty() && n.chars().count() <= LONGEST_NAME), "{name}");
    });
}

#[test]
fn files_of_records_are_taken_in_part_or_refused_whole() {
    let from = Blueprint { seed: 9, place: "on".to_owned(), again: vec![] };
    let f = form(&from);
    let answers: Vec<Answered> = f.items.iter().map(|q| Answered::of(q, q.key())).collect();
    let n = f.items.len() as u32;
    let header = Header::new("Noor;=Field", "", "fr", from, n, CUT_SHARE, "2026-05-04T09:00:00Z");
    let r = Record::seal(header, answers, "2026-05-04T09:20:00Z", false).expect("seals");
    let whole = archive(std::slice::from_ref(&r), &[], &["Tad".to_owned()]).into_bytes();
    let mut pick = Draw::with_seed(3);
    let mut taken = 0;
    for _ in 0..2 * FORMS {
        let text = String::from_utf8_lossy(&damaged(&whole, &mut pick)).into_owned();
        let Ok(i) = import(&text, &[]) else { continue };
        // An edit never comes in as the record it was.
        for got in &i.fresh {
            assert!(got.is_whole() && got.is_in_range());
            taken += 1;
        }
        let all: Vec<&Record> = i.fresh.iter().collect();
        let _ = due(&all, None);
        for french in [false, true] {
            let text = csv(&i.fresh, french);
            assert!(text.starts_with('\u{feff}'));
        }
        assert!(serde_json::from_str::<serde_json::Value>(&xapi(&i.fresh)).is_ok());
    }
    assert!(taken > 50, "{taken}");
}
