//! The answers. The one place that runs bodies for the page; only the worker calls it.

use super::questions::*;
use super::wire::pack;
use crate::grade::changes::effects;
use crate::grade::report::outcome_json;
use crate::physics::{simulate, simulate_worn};
use crate::quiz::export::{archive, csv, import, xapi};
use crate::quiz::form;
use crate::quiz::gear_list::gear_csv;
use crate::quiz::record::Record;
use crate::quiz::roster::crew;
use crate::quiz::session::sessions_csv;
use crate::scenario::Scenario;
use crate::scenario::file::read_scenario;
use crate::studies::along_wall::swings;
use crate::studies::map::go_on;
use crate::studies::spread::falls;
use sha2::{Digest, Sha256};

/// Runs of a map between two answers: a fifth of a second of work.
const RUNS_AT_ONCE: usize = 9;

/// A question that this module can answer.
trait Answers: Question {
    fn answer(self) -> Self::Answer;
}

macro_rules! answers {
    ($($name:ident, $q:pat => $answer:expr;)*) => {
        $(impl Answers for $name {
            fn answer(self) -> Self::Answer {
                let $q = self;
                $answer
            }
        })*
    };
}

answers! {
    Fall, Fall(s) => simulate(&s);
    Changes, Changes(s) => effects(&s);
    Swings, Swings(s) => swings(&s);
    SomeOfSpread, SomeOfSpread { set_up, seed, first, count } => falls(&set_up, seed, first, count);
    Shift, Shift(log) => crate::practice::day::judge(&log);
    MoreOfMap, MoreOfMap { scenario, kind, mut done } => {
        let (map, finished) = go_on(&scenario, kind, &mut done, RUNS_AT_ONCE);
        MapSoFar { map, done, finished }
    };
    DrawForm, DrawForm(from) => form(&from);
    Seal, Seal { header, answers, finished, clock_back } => Record::seal(header, answers, &finished, clock_back);
    Reopen, Reopen(r) => Reopened { doubt: r.doubt(), form: form(&r.header.from) };
    Doubts, Doubts(r) => r.doubt();
    Write, Write { how, french, records, unread, crew } => match how {
        Writing::Archive => archive(&records, &unread, &crew),
        Writing::Csv => csv(&records, french),
        Writing::Xapi => xapi(&records),
    };
    TakeIn, TakeIn { text, held } => import(&text, &held);
    ReadNames, ReadNames(text) => crew(&text);
    Outcome, Outcome(text) => read_scenario(&text)
        .map_err(|e| e.to_string())
        .and_then(|s| serde_json::to_string(&outcome_json(&s)).map_err(|e| e.to_string()));
    WriteSessions, WriteSessions { french, sessions } => sessions_csv(&sessions, french);
    WriteGear, WriteGear { french, pieces } => gear_csv(&pieces, french);
    FallWorn, FallWorn { set_up, worn } => simulate_worn(&set_up, worn);
    Draws, Draws { first, count } => (0..u64::from(count)).map(|n| drawn(first + n) + "\n").collect();
}

/// Answers a question, as bytes.
///
/// # Errors
/// When the answer cannot be written.
pub fn reply(id: u32, ask: Ask) -> Result<Vec<u8>, postcard::Error> {
    with_question!(ask, q => pack(id, &q.answer()))
}

/// Everything that is drawn from a seed (form, shift, roof, gear from the shed), whole, as one hash:
/// the browser's must be the same as the one drawn natively, or a record would not replay.
pub fn drawn(seed: u64) -> String {
    let all: Vec<_> = crate::rules::places().map(|p| p.id.clone()).collect();
    let place = all[(seed % all.len() as u64) as usize].clone();
    let kinds = crate::quiz::questions::ItemKind::ALL;
    let again = vec![kinds[(seed % kinds.len() as u64) as usize]];
    let houses = crate::practice::houses::HouseKind::ALL;
    let house = houses[(seed % houses.len() as u64) as usize];
    let shift = crate::practice::day::Shift::of(seed, house, &place);
    let roof = crate::practice::framing::Roof::of(seed);
    let mut shed = Scenario::default();
    crate::practice::inspection::from_the_shed(&mut shed, seed);
    let form = form(&crate::quiz::Blueprint { seed, place, again });
    let bytes = postcard::to_allocvec(&(form, shift, roof, shed)).unwrap_or_default();
    let mut hash = Sha256::new();
    hash.update(&bytes);
    let hex: String = hash.finalize().iter().take(8).map(|b| format!("{b:02x}")).collect();
    format!("{seed} {hex} {}", bytes.len())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quiz::record::Header;
    use crate::quiz::{Answered, Blueprint};
    use crate::scenario::Stance;
    use crate::worker::wire::{number, unpack};

    /// A question to the worker and its answer back, through bytes both ways.
    fn there<Q: Question>(q: Q) -> Q::Answer {
        let bytes = pack(7, &(Q::NUMBER, &q)).expect("packs");
        assert_eq!(
            bytes,
            pack(7, &q.into()).expect("packs"),
            "a question is the same bytes as one among all"
        );
        let (id, rest) = number(&bytes).expect("a number");
        let bytes = reply(id, unpack::<Ask>(rest).expect("unpacks")).expect("packs");
        let (id, rest) = number(&bytes).expect("a number");
        assert_eq!(id, 7);
        unpack(rest).expect("unpacks")
    }

    #[test]
    fn a_form_and_its_record_cross_to_the_page_and_back() {
        let from = Blueprint { seed: 4, place: "on".to_owned(), again: vec![] };
        let f = there(DrawForm(from.clone()));
        assert_eq!(f, form(&from));
        let given = crate::quiz::questions::Given::One(0);
        let answers: Vec<Answered> = f.items.iter().map(|q| Answered::of(q, given.clone())).collect();
        let header =
            Header::new("Noor Field", "", "en", from, f.items.len() as u32, 0.8, "2026-05-04T09:00:00Z");
        let seal = Seal { header, answers, finished: "2026-05-04T09:10:00Z".to_owned(), clock_back: false };
        let r = there(seal).expect("sealed");
        assert!(r.is_whole());
        assert_eq!(there(Reopen(r)), Reopened { doubt: None, form: f });
    }

    #[test]
    fn a_fall_crosses_to_the_page_bit_for_bit() {
        let s = Scenario { stance: Stance::Roof { from_eave_m: 1.1 }, ..Scenario::default() };
        let s = s.set_up().expect("possible");
        assert_eq!(there(Fall(s.clone())).hash(), simulate(&s).hash());
    }

    /// What is no set-up does not become one on the way, and what is no message is refused.
    #[test]
    fn an_impossible_set_up_does_not_cross() {
        let mut s = Scenario::default();
        s.ladder.length_m = 1.0;
        let bytes = postcard::to_allocvec(&s).expect("packs");
        assert!(unpack::<crate::geometry::SetUp>(&bytes).is_err());
        assert!(unpack::<Ask>(&[200, 2, 3]).is_err());
    }
}
