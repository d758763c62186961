//! The gear list: each part with its serial, its dates, and why it was withdrawn. Dates are ISO days.

use crate::quiz::export::written;
use crate::units::date;
use serde::{Deserialize, Serialize};
use serde_json::Value;

/// Number of the list's format.
pub const GEAR_SCHEMA: u32 = 1;
/// So many days before it is due a part is told.
pub const SOON_DAYS: i64 = 7;

/// What it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PieceKind {
    /// Harness.
    Harness,
    /// Lanyard with energy absorber.
    Lanyard,
    /// Rope grab.
    Grab,
    /// Lifeline.
    Lifeline,
    /// Anchor.
    Anchor,
    /// Connector.
    Connector,
    /// Ladder.
    Ladder,
}

impl PieceKind {
    /// All.
    pub const ALL: [PieceKind; 7] = [
        PieceKind::Harness,
        PieceKind::Lanyard,
        PieceKind::Grab,
        PieceKind::Lifeline,
        PieceKind::Anchor,
        PieceKind::Connector,
        PieceKind::Ladder,
    ];
}

/// Why a part is used no more.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Why {
    /// It stopped a fall.
    Fall,
    /// Cut, torn, bent, burnt, stiff.
    Damage,
    /// No label that can be read.
    Label,
    /// Past the age that its maker gives.
    Age,
    /// Lost.
    Lost,
}

impl Why {
    /// All.
    pub const ALL: [Why; 5] = [Why::Fall, Why::Damage, Why::Label, Why::Age, Why::Lost];
}

/// A part.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Piece {
    /// Its own, never shown.
    pub id: String,
    /// Format number.
    pub gear_schema: u32,
    /// What it is.
    pub kind: PieceKind,
    /// What the crew calls it.
    #[serde(default)]
    pub name: String,
    /// Serial.
    #[serde(default)]
    pub serial: String,
    /// Day it was made; empty where nobody knows.
    #[serde(default)]
    pub made: String,
    /// Day of the last inspection by a competent person; empty where there was none.
    #[serde(default)]
    pub inspected: String,
    /// By whom.
    #[serde(default)]
    pub by: String,
    /// Who has it.
    #[serde(default)]
    pub holder: String,
    /// Day on which it is to be inspected again. The interval is the maker's or the company's: none is set here.
    #[serde(default)]
    pub due: String,
    /// Withdrawn: the day and why.
    #[serde(default)]
    pub withdrawn: Option<(String, Why)>,
}

/// How a part stands on a day.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum State {
    /// Its inspection is past due.
    Overdue,
    /// Due within [`SOON_DAYS`].
    Soon,
    /// Never inspected, or nobody wrote it down.
    Unknown,
    /// Inspected, but nobody wrote down when it is due again.
    NoDue,
    /// In use, not due.
    InUse,
    /// Withdrawn.
    Withdrawn,
}

impl Piece {
    /// A new one.
    pub fn new(id: &str, kind: PieceKind) -> Piece {
        Piece {
            id: id.to_owned(),
            gear_schema: GEAR_SCHEMA,
            kind,
            name: String::new(),
            serial: String::new(),
            made: String::new(),
            inspected: String::new(),
            by: String::new(),
            holder: String::new(),
            due: String::new(),
            withdrawn: None,
        }
    }

    /// The day on which it is due; none where nobody said.
    pub fn due_day(&self) -> Option<time::Date> {
        date(&self.due)
    }

    /// Was inspected on a day; a due day that it has passed by then is over.
    pub fn inspect(&mut self, today: &str) {
        today.clone_into(&mut self.inspected);
        if self.due.as_str() <= today {
            self.due.clear();
        }
    }

    /// How it stands on a day (ISO).
    pub fn state(&self, today: &str) -> State {
        if self.withdrawn.is_some() {
            return State::Withdrawn;
        }
        let Some(now) = date(today) else { return State::Unknown };
        if let Some(days) = self.due_day().map(|d| (d - now).whole_days()).filter(|d| *d <= SOON_DAYS) {
            return if days < 0 { State::Overdue } else { State::Soon };
        }
        // An inspection of tomorrow is none.
        match (date(&self.inspected).filter(|d| *d <= now), self.due_day()) {
            (None, _) => State::Unknown,
            (Some(_), None) => State::NoDue,
            (Some(_), Some(_)) => State::InUse,
        }
    }
}

/// The entries of a kept list, each as it is: what this version cannot read stays among them, and a text that is no list
/// at all is one such entry, so that writing a part loses nothing.
pub fn entries(kept: Option<&str>) -> Vec<Value> {
    let Some(text) = kept else { return vec![] };
    serde_json::from_str(text).unwrap_or_else(|_| vec![Value::String(text.to_owned())])
}

/// The parts among entries, and how many entries are none that this version can read.
pub fn parts(entries: Vec<Value>) -> (Vec<Piece>, usize) {
    let count = entries.len();
    let all: Vec<Piece> = entries.into_iter().filter_map(|v| serde_json::from_value(v).ok()).collect();
    let unread = count - all.len();
    (all, unread)
}

/// Sorts by who needs looking after first.
pub fn sorted(mut all: Vec<Piece>, today: &str) -> Vec<Piece> {
    all.sort_by(|a, b| {
        let key = |p: &Piece| (p.state(today), p.due_day(), p.kind);
        key(a).cmp(&key(b)).then_with(|| a.name.cmp(&b.name))
    });
    all
}

/// Headings of the CSV file, in English and French.
const HEADS: [(&str, &str); 10] = [
    ("kind", "sorte"),
    ("name", "nom"),
    ("serial", "numéro"),
    ("made", "fabriqué"),
    ("inspected", "inspecté"),
    ("by", "par"),
    ("with", "chez"),
    ("due", "échéance"),
    ("withdrawn", "retiré"),
    ("why", "motif"),
];

/// The list as CSV (RFC 4180, with a byte order mark; semicolons for a French reader).
pub fn gear_csv(all: &[Piece], french: bool) -> String {
    fn code(v: &impl Serialize) -> String {
        serde_json::to_value(v).ok().and_then(|v| v.as_str().map(str::to_owned)).unwrap_or_default()
    }
    let rows = all.iter().map(|p| {
        let (day, why) = p.withdrawn.clone().map_or((String::new(), String::new()), |(d, w)| (d, code(&w)));
        let due = p.due_day().map_or(String::new(), |d| d.to_string());
        vec![
            code(&p.kind),
            p.name.clone(),
            p.serial.clone(),
            p.made.clone(),
            p.inspected.clone(),
            p.by.clone(),
            p.holder.clone(),
            due,
            day,
            why,
        ]
    });
    written(&HEADS, rows, french)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By the calendar: 2026-12-04 is seven days after 2026-11-27, 2026-12-05 is eight.
    /// A bug: a kept list that was no list was overwritten by the next part.
    #[test]
    fn what_cannot_be_read_is_kept_and_counted() {
        assert_eq!(entries(None), Vec::<Value>::new());
        let broken = "[{\"id\":\"a\"";
        assert_eq!(entries(Some(broken)), vec![Value::String(broken.to_owned())]);
        let piece = Piece::new("b", PieceKind::Harness);
        let mut list = entries(Some(broken));
        list.push(serde_json::to_value(&piece).expect("writes"));
        let kept = serde_json::to_string(&list).expect("writes");
        assert_eq!(parts(entries(Some(&kept))), (vec![piece], 1));
        assert!(kept.contains("\\\"id\\\""), "{kept}");
    }

    #[test]
    fn a_part_is_told_before_it_is_due() {
        let mut p = Piece::new("1", PieceKind::Harness);
        let today = "2026-11-27";
        assert_eq!(p.state(today), State::Unknown);
        p.inspected = "2025-12-20".to_owned();
        assert_eq!(p.state(today), State::NoDue);
        p.due = "2026-12-05".to_owned();
        assert_eq!((p.state(today), p.state("2026-11-28")), (State::InUse, State::Soon));
        assert_eq!((p.state("2026-12-05"), p.state("2026-12-06")), (State::Soon, State::Overdue));
        // Inspected, a day that is past is due no more; one to come stays.
        p.inspect(today);
        assert_eq!((p.due.as_str(), p.state(today)), ("2026-12-05", State::InUse));
        p.inspect("2026-12-06");
        assert_eq!((p.due.as_str(), p.state("2026-12-06")), ("", State::NoDue));
        p.withdrawn = Some((today.to_owned(), Why::Fall));
        assert_eq!(p.state(today), State::Withdrawn);
        // What is no day is no inspection, and neither is one to come.
        let odd = Piece { inspected: "2026-02-30".to_owned(), ..Piece::new("2", PieceKind::Grab) };
        assert_eq!(odd.state(today), State::Unknown);
        let ahead = Piece { inspected: "2099-01-01".to_owned(), ..odd.clone() };
        assert_eq!(ahead.state(today), State::Unknown);
        let late = Piece { due: "2026-11-26".to_owned(), ..odd.clone() };
        let order: Vec<State> = sorted(vec![p, odd, late], today).iter().map(|p| p.state(today)).collect();
        assert_eq!(order, [State::Overdue, State::Unknown, State::Withdrawn]);
    }

    #[test]
    fn the_list_is_one_line_a_part_and_no_cell_a_formula() {
        let mut p = Piece::new("1", PieceKind::Lanyard);
        (p.name, p.serial, p.inspected) = ("=Blue".to_owned(), "A,7".to_owned(), "2026-04-02".to_owned());
        p.withdrawn = Some(("2026-06-01".to_owned(), Why::Fall));
        (p.due, p.holder) = ("2027-04-02".to_owned(), "Tad Quill".to_owned());
        assert_eq!(
            gear_csv(&[p.clone()], false),
            "\u{feff}kind,name,serial,made,inspected,by,with,due,withdrawn,why\r\n\
             lanyard,'=Blue,\"A,7\",,2026-04-02,,Tad Quill,2027-04-02,2026-06-01,fall\r\n"
        );
        // A part kept by an earlier version, with less in it, reads.
        let old = r#"{"id":"7","gear_schema":1,"kind":"grab"}"#;
        assert_eq!(serde_json::from_str::<Piece>(old).expect("reads"), Piece::new("7", PieceKind::Grab));
    }
}
