//! What the page asks of the engine and what it answers.
//!
//! Rigid bodies run in a worker, in a module of its own: the page paints before the engine is
//! fetched, and no fall blocks it. The page's own module therefore calls nothing of
//! `physics::simulate`; it asks here. Messages are postcard bytes, which keep every bit of a float.

use crate::grade::changes::{ChangeEffect, effects};
use crate::grade::report::outcome_json;
use crate::physics::simulate;
use crate::physics::trace::Trace;
use crate::practice::day::{Risk, Stretch};
use crate::quiz::record::{Doubt, Header, Import, Names, Record, Refused, archive, csv, import, xapi};
use crate::quiz::roster::crew;
use crate::quiz::{Answered, Blueprint, Form, form};
use crate::scenario::Scenario;
use crate::scenario::file::read_scenario;
use crate::studies::along_wall::{Swing, swings};
use crate::studies::map::{Knot, Map, MapKind, go_on};
use crate::studies::spread::{SpreadFall, falls};
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};

/// Runs of a map between two answers: a fifth of a second of work.
const RUNS_AT_ONCE: usize = 9;

/// A way to write records.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Writing {
    /// The app's own JSON.
    Archive,
    /// CSV for a spreadsheet.
    Csv,
    /// xAPI statements.
    Xapi,
}

/// A question.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Ask {
    /// The fall of one set-up.
    Fall(Box<Scenario>),
    /// What single changes of a set-up would do to its score.
    Changes(Box<Scenario>),
    /// The falls along the wall.
    Swings(Box<Scenario>),
    /// Some of the many falls of a spread: the first one's number, and how many.
    Spread(Box<Scenario>, u64, u32, u32),
    /// What a slip in each stretch of a shift would have come to.
    Day(Vec<Stretch>),
    /// A map, a little further than the runs already made.
    Map(Box<Scenario>, MapKind, Vec<Knot>),
    /// The form of a blueprint.
    Form(Blueprint),
    /// A record of a finished form: header, answers, end, and whether the clock was set back.
    Seal(Box<Header>, Vec<Answered>, String, bool),
    /// What is doubtful about a record, and its form drawn again.
    Reopen(Box<Record>),
    /// What is doubtful about a record once its form is drawn again.
    Doubt(Box<Record>),
    /// Records, the texts of those that could not be read, and the crew's list as one text.
    Write(Box<Written>),
    /// A file of records against those held, by identifier.
    Import(String, Vec<String>),
    /// Names from a pasted list.
    Crew(String),
    /// The headless program's answer to a scenario file.
    Json(String),
    /// What is drawn from each of so many seeds, from this one on.
    Draws(u64, u32),
}

/// What is written to a file.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Written {
    /// How.
    pub how: Writing,
    /// For a reader of French.
    pub french: bool,
    /// The records.
    pub records: Vec<Record>,
    /// Texts of records that this version cannot read.
    pub unread: Vec<String>,
    /// The crew's list.
    pub crew: Vec<String>,
}

/// An answer.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Answer {
    /// The finished fall; none for a set-up with problems.
    Fall(Option<Box<Trace>>),
    /// The changes that help, best first.
    Changes(Vec<ChangeEffect>),
    /// The falls along the wall, by offset.
    Swings(Vec<Swing>),
    /// The risk of each stretch.
    Day(Vec<Risk>),
    /// Falls of a spread, in order.
    Spread(Vec<SpreadFall>),
    /// The map so far, its runs, and whether it is done.
    Map(Option<Box<Map>>, Vec<Knot>, bool),
    /// A form.
    Form(Box<Form>),
    /// A sealed record; none when it could not be sealed.
    Record(Option<Box<Record>>),
    /// What is doubtful about a record.
    Doubt(Option<Doubt>),
    /// What is doubtful, and the form.
    Reopened(Option<Doubt>, Box<Form>),
    /// A text.
    Text(String),
    /// What an import would do, or why it is refused.
    Import(Result<Import, Refused>),
    /// Names.
    Crew(Names),
    /// One JSON object, or one line that names the field.
    Json(Result<String, String>),
}

/// Answers a question.
pub fn answer(ask: Ask) -> Answer {
    match ask {
        Ask::Fall(s) => Answer::Fall(simulate(&s).map(Box::new)),
        Ask::Changes(s) => Answer::Changes(effects(&s)),
        Ask::Day(log) => Answer::Day(crate::practice::day::judge(&log)),
        Ask::Swings(s) => Answer::Swings(swings(&s)),
        Ask::Spread(s, seed, first, count) => Answer::Spread(falls(&s, seed, first, count)),
        Ask::Map(s, kind, mut done) => {
            let (map, finished) = go_on(&s, kind, &mut done, RUNS_AT_ONCE);
            Answer::Map(map.map(Box::new), done, finished)
        }
        Ask::Form(from) => Answer::Form(Box::new(form(&from))),
        Ask::Seal(header, answers, finished, back) => {
            Answer::Record(Record::seal(*header, answers, &finished, back).map(Box::new))
        }
        Ask::Reopen(r) => Answer::Reopened(r.doubt(), Box::new(form(&r.header.from))),
        Ask::Doubt(r) => Answer::Doubt(r.doubt()),
        Ask::Write(w) => Answer::Text(match w.how {
            Writing::Archive => archive(&w.records, &w.unread, &w.crew),
            Writing::Csv => csv(&w.records, w.french),
            Writing::Xapi => xapi(&w.records),
        }),
        Ask::Import(text, held) => Answer::Import(import(&text, &held)),
        Ask::Crew(text) => Answer::Crew(crew(&text)),
        Ask::Json(text) => Answer::Json(
            read_scenario(&text)
                .map_err(|e| e.to_string())
                .and_then(|s| serde_json::to_string(&outcome_json(&s)).map_err(|e| e.to_string())),
        ),
        Ask::Draws(first, count) => {
            Answer::Text((0..u64::from(count)).map(|n| drawn(first + n) + "\n").collect())
        }
    }
}

/// Everything that is drawn from a seed (form, shift, roof, gear from the shed), whole, as one hash:
/// the browser's must be the same as the one drawn natively, or a record would not replay.
pub fn drawn(seed: u64) -> String {
    let all: Vec<_> = crate::rules::places().map(|p| p.id.clone()).collect();
    let place = all[(seed % all.len() as u64) as usize].clone();
    let kinds = crate::quiz::questions::ItemKind::ALL;
    let again = vec![kinds[(seed % kinds.len() as u64) as usize]];
    let house = crate::practice::houses::HouseKind::ALL[(seed % 5) as usize];
    let shift = crate::practice::day::Shift::of(seed, house, &place);
    let roof = crate::practice::framing::Roof::of(seed);
    let mut shed = Scenario::default();
    crate::practice::inspection::from_the_shed(&mut shed, seed);
    let form = form(&Blueprint { seed, place, again });
    let bytes = postcard::to_allocvec(&(form, shift, roof, shed)).unwrap_or_default();
    let mut hash = Sha256::new();
    hash.update(&bytes);
    let hex: String = hash.finalize().iter().take(8).map(|b| format!("{b:02x}")).collect();
    format!("{seed} {hex} {}", bytes.len())
}

/// A message as bytes, with the number that joins an answer to its question.
///
/// # Errors
/// When the message cannot be written.
pub fn pack<T: Serialize>(id: u32, message: &T) -> Result<Vec<u8>, postcard::Error> {
    postcard::to_allocvec(&(id, message))
}

/// Reads what [`pack`] wrote.
///
/// # Errors
/// When the bytes are not such a message.
pub fn unpack<T: for<'a> Deserialize<'a>>(bytes: &[u8]) -> Result<(u32, T), postcard::Error> {
    postcard::from_bytes(bytes)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scenario::Stance;

    #[test]
    fn a_form_and_its_record_cross_to_the_page_and_back() {
        let from = Blueprint { seed: 4, place: "on".to_owned(), again: vec![] };
        let there = |ask: Ask| -> Answer {
            let (_, ask) = unpack::<Ask>(&pack(1, &ask).expect("packs")).expect("unpacks");
            unpack::<Answer>(&pack(1, &answer(ask)).expect("packs")).expect("unpacks").1
        };
        let Answer::Form(f) = there(Ask::Form(from.clone())) else { unreachable!("no form") };
        assert_eq!(*f, form(&from));
        let given = crate::quiz::questions::Given::One(0);
        let answers: Vec<Answered> = f.items.iter().map(|q| Answered::of(q, given.clone())).collect();
        let header =
            Header::new("Noor Field", "", "en", from, f.items.len() as u32, 0.8, "2026-05-04T09:00:00Z");
        let Answer::Record(Some(r)) =
            there(Ask::Seal(Box::new(header), answers, "2026-05-04T09:10:00Z".to_owned(), false))
        else {
            unreachable!("no record")
        };
        assert!(r.is_whole());
        assert!(matches!(there(Ask::Reopen(r)), Answer::Reopened(None, again) if again == f));
    }

    #[test]
    fn a_fall_crosses_to_the_page_bit_for_bit() {
        let s = Scenario { stance: Stance::Roof { from_eave_m: 1.1 }, ..Scenario::default() };
        let ask = Ask::Fall(Box::new(s.clone()));
        let (id, got) = unpack::<Ask>(&pack(7, &ask).expect("packs")).expect("unpacks");
        assert_eq!((id, &got), (7, &ask));
        let (_, back) = unpack::<Answer>(&pack(7, &answer(got)).expect("packs")).expect("unpacks");
        let Answer::Fall(Some(t)) = back else { unreachable!("no fall") };
        assert_eq!(t.hash(), simulate(&s).expect("falls").hash());
        assert!(unpack::<Answer>(&[1, 2, 3]).is_err());
    }
}
