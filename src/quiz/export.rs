//! Records as files: the app's own JSON, CSV, xAPI; and what is taken in from one.

use super::record::*;
use super::roster::Names;
use crate::quiz::questions::ItemKind;
use crate::units::instant_s;
use serde::{Deserialize, Serialize};
use serde_json::{Value, json};
use std::collections::HashSet;

/// Largest file read, bytes: some twenty thousand records.
pub const LARGEST_IMPORT_BYTES: usize = 64_000_000;

/// A file of records and of the crew's list. The records are read one by one, so that one that cannot
/// be read takes no other with it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
struct Archive {
    /// Marks the file as ours; the format number of its records.
    shortfall_records: u32,
    /// Names on the crew list.
    #[serde(default)]
    crew: Vec<String>,
    /// The records, and what was kept of records that could not be read.
    records: Vec<Value>,
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
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Import {
    /// Records not held yet, whole and in range; each still to be drawn again.
    pub fresh: Vec<Record>,
    /// How many are held already.
    pub held: u32,
    /// How many were edited, and are left out.
    pub edited: u32,
    /// How many hold something that cannot be, and are left out.
    pub out_of_range: u32,
    /// How many cannot be read at all (a later version's, or damaged), and are left out.
    pub unread: u32,
    /// Names on the file's crew list.
    pub crew: Names,
}

/// Writes records, the texts of records that could not be read, and the crew as a file of our own.
pub fn archive(records: &[Record], unread: &[String], crew: &[String]) -> String {
    let read = records.iter().filter_map(|r| serde_json::to_value(r).ok());
    let kept = unread.iter().map(|t| serde_json::from_str(t).unwrap_or_else(|_| Value::String(t.clone())));
    let all = Archive {
        shortfall_records: RECORD_SCHEMA,
        crew: crew.to_vec(),
        records: read.chain(kept).collect(),
    };
    serde_json::to_string(&all).unwrap_or_default()
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
        Archive { shortfall_records: RECORD_SCHEMA, crew: vec![], records: vec![value] }
    };
    let mut out = Import { crew: Names::of(all.crew.iter().map(String::as_str)), ..Import::default() };
    let mut seen: HashSet<String> = held.iter().cloned().collect();
    for v in all.records {
        let Ok(r) = serde_json::from_value::<Record>(v) else {
            out.unread += 1;
            continue;
        };
        match r.doubt_at_sight() {
            Some(Doubt::Edited) => out.edited += 1,
            Some(_) => out.out_of_range += 1,
            None if !seen.insert(r.id().to_owned()) => out.held += 1,
            None => out.fresh.push(r),
        }
    }
    Ok(out)
}

/// A cell that no spreadsheet takes for a formula, wherever it cuts the line: an apostrophe stands
/// before each sign that would begin one, at the start and after any separator.
fn plain(cell: &str) -> String {
    let mut out = String::with_capacity(cell.len() + 2);
    let mut at_start = true;
    for c in cell.chars() {
        if at_start && matches!(c, '=' | '+' | '-' | '@' | '＝' | '＋' | '－' | '＠' | '\t' | '\r') {
            out.push('\'');
        }
        out.push(c);
        at_start = matches!(c, ';' | ',' | '\t' | '\r' | '\n' | '|')
            || at_start && matches!(c, ' ' | '"' | '\u{a0}');
    }
    out
}

/// Headings of the CSV file, in English and French.
const HEADS: [(&str, &str); 19] = [
    ("name", "nom"),
    ("finished", "fini"),
    ("started", "commencé"),
    ("place", "règlement"),
    ("language", "langue"),
    ("form_number", "numéro_du_questionnaire"),
    ("questions", "questions"),
    ("points_percent", "points_pour_cent"),
    ("cut_percent", "seuil_pour_cent"),
    ("critical_misses", "erreurs_critiques"),
    ("passed", "réussi"),
    ("trainer", "formateur"),
    ("app_version", "version_application"),
    ("physics_version", "version_physique"),
    ("rules_version", "version_règles"),
    ("quiz_version", "version_questionnaire"),
    ("clock_set_back", "horloge_reculée"),
    ("missed", "manqué"),
    ("record_id", "identifiant"),
];

/// Records as CSV (RFC 4180: CRLF, quotes doubled; with a byte order mark for spreadsheets). For a
/// French reader the headings are French and semicolons separate, as spreadsheets set to French ask.
pub fn csv(records: &[Record], french: bool) -> String {
    let yes = |is: bool| match (is, french) {
        (true, false) => "yes",
        (true, true) => "oui",
        (false, false) => "no",
        (false, true) => "non",
    };
    let row = |r: &Record| {
        let (h, s) = (&r.header, r.score());
        let missed: Vec<String> = crate::quiz::missed(&r.answers).iter().map(|k| kind_code(*k)).collect();
        vec![
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
            yes(s.passes).to_owned(),
            h.trainer.clone(),
            h.app.clone(),
            h.physics.to_string(),
            h.rules.to_string(),
            h.quiz.to_string(),
            yes(r.clock_set_back).to_owned(),
            missed.join(" "),
            r.id().to_owned(),
        ]
    };
    written(&HEADS, records.iter().map(row), french)
}

/// Rows under their headings as CSV.
pub(super) fn written(
    heads: &[(&str, &str)],
    rows: impl Iterator<Item = Vec<String>>,
    french: bool,
) -> String {
    let mut w = ::csv::WriterBuilder::new()
        .terminator(::csv::Terminator::CRLF)
        .delimiter(if french { b';' } else { b',' })
        .from_writer(Vec::new());
    let heads = heads.iter().map(|(en, fr)| if french { fr } else { en }.to_string()).collect();
    for cells in std::iter::once(heads).chain(rows) {
        let cells: Vec<String> = cells;
        // Into memory: it cannot fail.
        let _ = w.write_record(cells.iter().map(|c| plain(c)));
    }
    let bytes = w.into_inner().unwrap_or_default();
    format!("\u{feff}{}", String::from_utf8(bytes).unwrap_or_default())
}

fn kind_code(k: ItemKind) -> String {
    serde_json::to_value(k).ok().and_then(|v| v.as_str().map(str::to_owned)).unwrap_or_default()
}

/// A UUID made of a hash (RFC 9562, version 5: by name, in a space of our own).
fn uuid(hash: &str) -> String {
    // The space is the name `urn:shortfall:record` among URLs.
    let space = uuid::Uuid::new_v5(&uuid::Uuid::NAMESPACE_URL, b"urn:shortfall:record");
    uuid::Uuid::new_v5(&space, hash.as_bytes()).to_string()
}

/// A span as ISO 8601 has it.
fn duration(seconds: i64) -> String {
    format!("PT{}S", seconds.max(0))
}

/// Records as xAPI statements (IEEE 9274.1.1): one for each form, one for each answer.
pub fn xapi(records: &[Record]) -> String {
    let mut out = Vec::new();
    for r in records {
        let (h, s) = (&r.header, r.score());
        // An account needs an address and a name (4.2.2): the address is one that leads nowhere
        // (RFC 2606), the name of somebody without one is the record's.
        let account = if h.who.is_empty() { format!("record {}", r.id()) } else { h.who.clone() };
        let mut actor = json!({ "objectType": "Agent",
            "account": { "homePage": "https://shortfall.invalid/crew", "name": account } });
        if !h.who.is_empty() {
            actor["name"] = json!(h.who);
        }
        let activity = |id: String, en: &str, fr: &str| {
            json!({ "objectType": "Activity", "id": id,
                "definition": { "type": "http://adlnet.gov/expapi/activities/assessment",
                    "name": { "en": en, "fr": fr } } })
        };
        let verb = |name: &str, fr: &str| json!({ "id": format!("http://adlnet.gov/expapi/verbs/{name}"), "display": { "en": name, "fr": fr } });
        let form_id = format!("urn:shortfall:form:{}:{}", h.from.place, h.from.seed);
        let whole = activity(form_id.clone(), "Shortfall form", "Questionnaire Shortfall");
        let versions = json!({
            "urn:shortfall:app": h.app, "urn:shortfall:physics": h.physics, "urn:shortfall:rules": h.rules,
            "urn:shortfall:quiz": h.quiz, "urn:shortfall:critical-misses": s.critical });
        for (n, a) in r.answers.iter().enumerate() {
            let code = kind_code(a.kind);
            out.push(json!({
                "id": uuid(&format!("{} {n}", r.id())),
                "actor": actor,
                "verb": verb("answered", "a répondu"),
                "object": activity(format!("{form_id}:{code}:{}", a.seed), &code, &code),
                "result": { "success": a.credit_share >= 1.0, "score": { "scaled": a.credit_share },
                    "response": serde_json::to_string(&a.given).unwrap_or_default() },
                "timestamp": r.finished,
                "context": { "language": h.lang, "contextActivities": { "parent": [whole] } },
            }));
        }
        let took_s = instant_s(&r.finished).zip(instant_s(&h.started)).map_or(0, |(b, a)| b - a);
        out.push(json!({
            "id": uuid(r.id()),
            "actor": actor,
            "verb": if s.passes { verb("passed", "a réussi") } else { verb("failed", "a échoué") },
            "object": whole,
            "result": { "success": s.passes, "completion": r.answers.len() == h.questions as usize,
                "duration": duration(took_s),
                "score": { "scaled": s.points_share, "min": 0, "max": 1, "raw": s.points_share } },
            "timestamp": r.finished,
            "context": { "language": h.lang, "platform": "Shortfall", "extensions": versions },
        }));
    }
    serde_json::to_string_pretty(&out).unwrap_or_default()
}
