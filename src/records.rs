//! Records: what was asked, what was answered, by whom and when; sealed by a chain of hashes, written
//! as JSON, CSV and xAPI statements, read back and merged.
//!
//! A record says what it is not: no certificate of approved training. Its chain makes an edit visible
//! (tamper-evident); it is no proof of who sat there. Left out: signatures by keys.

use crate::physics::PHYSICS_VERSION;
use crate::quiz::items::ItemKind;
use crate::quiz::{Answered, Blueprint, Score, form, score};
use crate::report::APP_VERSION;
use crate::rules::RULES_VERSION;
use serde::{Deserialize, Serialize};
use serde_json::{Value, json};
use sha2::{Digest, Sha256};

/// The record format's number.
pub const RECORD_SCHEMA: u32 = 1;
/// Largest file read, bytes.
pub const LARGEST_IMPORT_BYTES: usize = 5_000_000;

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
            who: who.trim().to_owned(),
            trainer: trainer.trim().to_owned(),
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

fn hash(before: &str, part: &impl Serialize) -> String {
    let text = serde_json::to_string(part).unwrap_or_default();
    let mut h = Sha256::new();
    h.update(before.as_bytes());
    h.update(text.as_bytes());
    h.finalize().iter().map(|b| format!("{b:02x}")).collect()
}

fn chain(header: &Header, answers: &[Answered], finished: &str, clock_set_back: bool) -> Vec<String> {
    let mut out = vec![hash("", header)];
    for a in answers {
        let before = out[out.len() - 1].clone();
        out.push(hash(&before, a));
    }
    let before = out[out.len() - 1].clone();
    out.push(hash(&before, &(finished, clock_set_back)));
    out
}

/// What is doubtful about a record.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Doubt {
    /// Its hashes do not fit its text: it was edited.
    Edited,
    /// Written by another version of physics or rules: its questions cannot be drawn again here.
    OtherVersion,
    /// Drawn again, the form gives other questions or marks.
    DoesNotReplay,
}

impl Record {
    /// Seals a finished form.
    pub fn seal(header: Header, answers: Vec<Answered>, finished: &str, clock_set_back: bool) -> Record {
        let chain = chain(&header, &answers, finished, clock_set_back);
        Record { header, answers, finished: finished.to_owned(), clock_set_back, chain }
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
        self.chain == chain(&self.header, &self.answers, &self.finished, self.clock_set_back)
    }

    /// Draws its form again and marks its answers again.
    pub fn doubt(&self) -> Option<Doubt> {
        if !self.is_whole() {
            return Some(Doubt::Edited);
        }
        if (self.header.physics, self.header.rules) != (PHYSICS_VERSION, RULES_VERSION) {
            return Some(Doubt::OtherVersion);
        }
        let f = form(&self.header.from);
        let again: Vec<Answered> =
            f.items.iter().zip(&self.answers).map(|(q, a)| Answered::of(q, a.given.clone())).collect();
        let same = f.items.len() == self.header.questions as usize && again == self.answers;
        (!same).then_some(Doubt::DoesNotReplay)
    }
}

/// A file of records and of the crew's list.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Archive {
    /// Marks the file as ours; the format number of its records.
    pub shortfall_records: u32,
    /// Names on the crew list.
    #[serde(default)]
    pub crew: Vec<String>,
    /// The records.
    pub records: Vec<Record>,
}

/// Why a file is refused whole. Nothing has changed then.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Refused {
    /// Over [`LARGEST_IMPORT_BYTES`].
    TooLarge,
    /// Not JSON, or cut off.
    Broken,
    /// JSON, but not a file of records.
    Foreign,
    /// Written by a newer version.
    Newer,
}

/// What an import would do.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Import {
    /// Records not held yet, whole.
    pub fresh: Vec<Record>,
    /// How many are held already.
    pub held: u32,
    /// How many were edited, and are left out.
    pub edited: u32,
    /// Names on the file's crew list.
    pub crew: Vec<String>,
}

/// Writes records and crew as a file of our own.
pub fn archive(records: &[Record], crew: &[String]) -> String {
    let all = Archive { shortfall_records: RECORD_SCHEMA, crew: crew.to_vec(), records: records.to_vec() };
    serde_json::to_string_pretty(&all).unwrap_or_default()
}

/// Reads a file of records against those held (by identifier).
///
/// # Errors
/// Why the whole file is refused.
pub fn import(text: &str, held: &[String]) -> Result<Import, Refused> {
    if text.len() > LARGEST_IMPORT_BYTES {
        return Err(Refused::TooLarge);
    }
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let value: Value = serde_json::from_str(text).map_err(|_| Refused::Broken)?;
    // One record alone is a file too.
    let number = value.get("shortfall_records").and_then(Value::as_u64);
    let alone = value.get("header").and_then(|h| h.get("schema")).and_then(Value::as_u64);
    match number.or(alone) {
        None => return Err(Refused::Foreign),
        Some(n) if n > u64::from(RECORD_SCHEMA) => return Err(Refused::Newer),
        Some(_) => {}
    }
    let all = if number.is_some() {
        serde_json::from_value::<Archive>(value).map_err(|_| Refused::Broken)?
    } else {
        let one = serde_json::from_value::<Record>(value).map_err(|_| Refused::Broken)?;
        Archive { shortfall_records: RECORD_SCHEMA, crew: vec![], records: vec![one] }
    };
    let mut out = Import { fresh: vec![], held: 0, edited: 0, crew: all.crew };
    for r in all.records {
        if !r.is_whole() {
            out.edited += 1;
        } else if held.iter().any(|h| h == r.id()) || out.fresh.iter().any(|f| f.id() == r.id()) {
            out.held += 1;
        } else {
            out.fresh.push(r);
        }
    }
    Ok(out)
}

/// A cell that no spreadsheet takes for a formula.
fn plain(cell: &str) -> String {
    match cell.chars().next() {
        Some('=' | '+' | '-' | '@' | '\t' | '\r') => format!("'{cell}"),
        _ => cell.to_owned(),
    }
}

/// Records as CSV (RFC 4180: CRLF, quotes doubled; with a byte order mark for spreadsheets).
pub fn csv(records: &[Record]) -> String {
    let mut w = ::csv::WriterBuilder::new().terminator(::csv::Terminator::CRLF).from_writer(Vec::new());
    let head = [
        "name",
        "finished",
        "started",
        "place",
        "language",
        "form_seed",
        "questions",
        "points_percent",
        "cut_percent",
        "critical_misses",
        "passed",
        "trainer",
        "app_version",
        "physics_version",
        "rules_version",
        "clock_set_back",
        "missed",
        "record_id",
    ];
    let mut write = |cells: Vec<String>| w.write_record(cells.iter().map(|c| plain(c))).is_ok();
    write(head.map(str::to_owned).to_vec());
    for r in records {
        let (h, s) = (&r.header, r.score());
        let missed: Vec<String> = crate::quiz::missed(&r.answers).iter().map(|k| kind_code(*k)).collect();
        write(vec![
            h.who.clone(),
            r.finished.clone(),
            h.started.clone(),
            h.from.place.clone(),
            h.lang.clone(),
            h.from.seed.to_string(),
            h.questions.to_string(),
            format!("{:.0}", (s.points_share * 100.0).floor()),
            format!("{:.0}", h.cut_share * 100.0),
            s.critical.to_string(),
            if s.passes { "yes" } else { "no" }.to_owned(),
            h.trainer.clone(),
            h.app.clone(),
            h.physics.to_string(),
            h.rules.to_string(),
            if r.clock_set_back { "yes" } else { "no" }.to_owned(),
            missed.join(" "),
            r.id().to_owned(),
        ]);
    }
    let bytes = w.into_inner().unwrap_or_default();
    format!("\u{feff}{}", String::from_utf8(bytes).unwrap_or_default())
}

fn kind_code(k: ItemKind) -> String {
    serde_json::to_value(k).ok().and_then(|v| v.as_str().map(str::to_owned)).unwrap_or_default()
}

/// A UUID made of a hash (RFC 9562, version 8: custom).
fn uuid(hash: &str) -> String {
    let mut d: String = hash.chars().filter(char::is_ascii_hexdigit).take(32).collect();
    while d.len() < 32 {
        d.push('0');
    }
    d.replace_range(12..13, "8");
    d.replace_range(16..17, "9");
    format!("{}-{}-{}-{}-{}", &d[..8], &d[8..12], &d[12..16], &d[16..20], &d[20..])
}

/// Records as xAPI statements (IEEE 9274.1.1): one for each form, one for each answer.
pub fn xapi(records: &[Record]) -> String {
    let mut out = Vec::new();
    for r in records {
        let (h, s) = (&r.header, r.score());
        let actor = json!({ "objectType": "Agent", "name": h.who,
            "account": { "homePage": "urn:shortfall:crew", "name": if h.who.is_empty() { "-" } else { &h.who } } });
        let activity = |id: String, name: &str| {
            json!({ "objectType": "Activity", "id": id,
                "definition": { "type": "http://adlnet.gov/expapi/activities/assessment", "name": { "en": name } } })
        };
        let verb = |name: &str| json!({ "id": format!("http://adlnet.gov/expapi/verbs/{name}"), "display": { "en": name } });
        let form_id = format!("urn:shortfall:form:{}:{}", h.from.place, h.from.seed);
        for (n, a) in r.answers.iter().enumerate() {
            out.push(json!({
                "id": uuid(&r.chain[(n + 1).min(r.chain.len() - 1)]),
                "actor": actor,
                "verb": verb("answered"),
                "object": activity(format!("{form_id}:{}:{}", kind_code(a.kind), a.seed), &kind_code(a.kind)),
                "result": { "success": a.credit_share >= 1.0, "score": { "scaled": a.credit_share },
                    "response": serde_json::to_string(&a.given).unwrap_or_default() },
                "timestamp": r.finished,
                "context": { "language": h.lang, "contextActivities": { "parent": [activity(form_id.clone(), "form")] } },
            }));
        }
        out.push(json!({
            "id": uuid(r.id()),
            "actor": actor,
            "verb": verb(if s.passes { "passed" } else { "failed" }),
            "object": activity(form_id, "Shortfall quiz form"),
            "result": { "success": s.passes, "completion": r.answers.len() == h.questions as usize,
                "score": { "scaled": s.points_share, "min": 0, "max": 1, "raw": s.points_share } },
            "timestamp": r.finished,
            "context": { "language": h.lang, "platform": "Shortfall", "extensions": {
                "urn:shortfall:app": h.app, "urn:shortfall:physics": h.physics, "urn:shortfall:rules": h.rules,
                "urn:shortfall:critical-misses": s.critical } },
        }));
    }
    serde_json::to_string_pretty(&out).unwrap_or_default()
}
