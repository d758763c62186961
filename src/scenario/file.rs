//! Reading a set-up from text: a file, a link, what the device kept. What cannot be read is refused
//! whole, with a code, the place in the text and the field, so that either language can say it.

use crate::scenario::{SCHEMA, Scenario};
use serde::{Deserialize, Serialize};
use serde_json::Value;
use serde_json::error::Category;

/// Largest set-up file read, bytes.
pub const LARGEST_FILE_BYTES: usize = 1_000_000;
/// Longest name of a field that is repeated to the reader, characters.
const LONGEST_PATH: usize = 60;

/// Why a text is not a set-up.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Fault {
    /// Over [`LARGEST_FILE_BYTES`].
    TooLarge,
    /// Could not be read as text at all.
    NotText,
    /// Not an object in braces.
    NotASetUp,
    /// A file of records.
    Records,
    /// It ends too early.
    Cut,
    /// No JSON.
    Broken,
    /// Written by a newer version.
    Newer,
    /// A name that a set-up does not have.
    UnknownField,
    /// A value that does not fit its field.
    WrongValue,
    /// A number outside its range.
    OutOfRange,
}

impl Fault {
    /// All, for tests of texts.
    pub const ALL: [Fault; 10] = [
        Fault::TooLarge,
        Fault::NotText,
        Fault::NotASetUp,
        Fault::Records,
        Fault::Cut,
        Fault::Broken,
        Fault::Newer,
        Fault::UnknownField,
        Fault::WrongValue,
        Fault::OutOfRange,
    ];

    fn english(self) -> &'static str {
        match self {
            Fault::TooLarge => "the file is larger than 1,000,000 bytes",
            Fault::NotText => "not a text",
            Fault::NotASetUp => "not a set-up file",
            Fault::Records => "a file of records, not a set-up",
            Fault::Cut => "the file ends too early",
            Fault::Broken => "not JSON",
            Fault::Newer => "written by a newer version",
            Fault::UnknownField => "a set-up has no such field",
            Fault::WrongValue => "this value does not fit here",
            Fault::OutOfRange => "outside its range",
        }
    }
}

/// Why a text was refused, and where.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct FileError {
    /// Why.
    pub fault: Fault,
    /// Dotted name of the field, cut to a length and to plain characters; empty for the whole text.
    pub path: String,
    /// Line in the text, from 1; 0 when it is about no line.
    pub line: u32,
    /// Column in that line, from 1; 0 when it is about no line.
    pub column: u32,
}

impl core::fmt::Display for FileError {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        let field = if self.path.is_empty() { "scenario" } else { &self.path };
        write!(f, "{field}: {}", self.fault.english())?;
        if self.line > 0 {
            write!(f, " (line {}, column {})", self.line, self.column)?;
        }
        Ok(())
    }
}

impl From<Fault> for FileError {
    fn from(fault: Fault) -> FileError {
        FileError { fault, path: String::new(), line: 0, column: 0 }
    }
}

/// A name from a file as it may be shown: short, without control codes or line breaks.
fn plain(path: &str) -> String {
    path.chars()
        .take(LONGEST_PATH)
        .map(|c| if c.is_alphanumeric() || "._[]-".contains(c) { c } else { '?' })
        .collect()
}

/// The field that the text has come to after so many bytes of a line, dotted, as in `house.eave_height_m`. A library
/// that follows the path while it reads weighs as much as the whole reader again, on a phone that only reads.
fn path_at(text: &str, line: usize, column: usize) -> String {
    let begin: usize = text.split_inclusive('\n').take(line.saturating_sub(1)).map(str::len).sum();
    let read = text.get(..(begin + column).min(text.len())).unwrap_or(text);
    // Each object by the name it has come to, each list by its place.
    let mut way: Vec<(Option<String>, usize)> = Vec::new();
    let mut string_from = None;
    let mut escaped = false;
    let mut names = false;
    for (i, c) in read.char_indices() {
        if let Some(from) = string_from {
            match c {
                _ if escaped => escaped = false,
                '\\' => escaped = true,
                '"' => {
                    string_from = None;
                    if names && let Some((Some(name), _)) = way.last_mut() {
                        *name = serde_json::from_str(&read[from..=i]).unwrap_or_default();
                        names = false;
                    }
                }
                _ => {}
            }
            continue;
        }
        match c {
            '"' => string_from = Some(i),
            '{' => {
                way.push((Some(String::new()), 0));
                names = true;
            }
            '[' => way.push((None, 0)),
            '}' | ']' => {
                way.pop();
                names = false;
            }
            ',' => match way.last_mut() {
                Some((None, place)) => *place += 1,
                Some(_) => names = true,
                None => {}
            },
            _ => {}
        }
    }
    let mut path = String::new();
    for (name, place) in way {
        match name {
            Some(n) if n.is_empty() => {}
            Some(n) if path.is_empty() => path = n,
            Some(n) => path = format!("{path}.{n}"),
            None => path = format!("{path}[{place}]"),
        }
    }
    path
}

fn why(text: &str, inner: &serde_json::Error) -> FileError {
    let at = |fault| FileError {
        fault,
        path: plain(&path_at(text, inner.line(), inner.column())),
        line: u32::try_from(inner.line()).unwrap_or(u32::MAX),
        column: u32::try_from(inner.column()).unwrap_or(u32::MAX),
    };
    match inner.classify() {
        Category::Eof => return at(Fault::Cut),
        Category::Syntax | Category::Io => return at(Fault::Broken),
        Category::Data => {}
    }
    if let Ok(whole) = serde_json::from_str::<Value>(text) {
        if whole.get("shortfall_records").is_some() || whole.get("header").is_some() {
            return Fault::Records.into();
        }
        if whole.get("schema").and_then(Value::as_u64).is_some_and(|n| n > u64::from(SCHEMA)) {
            return Fault::Newer.into();
        }
    }
    if inner.to_string().starts_with("unknown field") {
        return at(Fault::UnknownField);
    }
    at(Fault::WrongValue)
}

/// Reads a set-up. Its numbers may be out of range: `Scenario::problems` says so.
///
/// # Errors
/// Why it is refused, and where.
pub fn read_scenario(text: &str) -> Result<Scenario, FileError> {
    if text.len() > LARGEST_FILE_BYTES {
        return Err(Fault::TooLarge.into());
    }
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    if text.trim().is_empty() {
        return Err(Fault::Cut.into());
    }
    if !text.trim_start().starts_with('{') {
        return Err(Fault::NotASetUp.into());
    }
    let mut d = serde_json::Deserializer::from_str(text);
    let s = Scenario::deserialize(&mut d).map_err(|e| why(text, &e))?;
    d.end().map_err(|_| Fault::Broken)?;
    if s.schema > SCHEMA {
        return Err(Fault::Newer.into());
    }
    Ok(s)
}

/// Reads a set-up that takes the place of the one on the bench: every number in its range.
///
/// # Errors
/// Why it is refused, and where.
pub fn read_whole(text: &str) -> Result<Scenario, FileError> {
    let s = read_scenario(text)?;
    match s.range_problems().first() {
        None => Ok(s),
        Some(p) => Err(FileError { path: p.field.to_owned(), ..Fault::OutOfRange.into() }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn fault(text: &str) -> (Fault, String) {
        let e = read_whole(text).expect_err("refused");
        let line = e.to_string();
        assert!(line.len() < 200 && !line.contains(['\n', '\u{1b}']), "{line}");
        (e.fault, e.path)
    }

    #[test]
    fn a_refusal_says_why_and_where_in_one_short_line() {
        let is = |f: Fault, path: &str| (f, path.to_owned());
        assert_eq!(fault("[]"), is(Fault::NotASetUp, ""));
        assert_eq!(fault(""), is(Fault::Cut, ""));
        assert_eq!(fault("{\"grab\":{\"arrow\":"), is(Fault::Cut, "grab.arrow"));
        assert_eq!(fault("{\"grab\" {}}").0, Fault::Broken);
        assert_eq!(fault("{} {}"), is(Fault::Broken, ""));
        assert_eq!(fault("{\"schema\":9}"), is(Fault::Newer, ""));
        // A bug: a newer file said 'unknown field'.
        assert_eq!(fault("{\"schema\":9,\"helmet\":{\"on\":true}}"), is(Fault::Newer, ""));
        // A bug: a file of records said 'unknown field' instead of where to open it.
        assert_eq!(fault("{\"shortfall_records\":1,\"records\":[]}"), is(Fault::Records, ""));
        assert_eq!(fault("{\"house\":{\"eave_hight_m\":5}}"), is(Fault::UnknownField, "house.eave_hight_m"));
        assert_eq!(
            fault("{\"grab\":{\"above_dring_m\":\"high\"}}"),
            is(Fault::WrongValue, "grab.above_dring_m")
        );
        assert_eq!(
            fault("{\"house\":{\"eave_height_m\":900}}"),
            is(Fault::OutOfRange, "house.eave_height_m")
        );
        assert_eq!(
            fault("{\"house\":{\"below\":{\"obstacle\":{\"height_m\":[1]}}}}").1,
            "house.below.obstacle.height_m"
        );
        assert_eq!(fault("{\"house\":5}"), is(Fault::WrongValue, "house"));
        assert_eq!(fault("{\"note\\u0041\":1}"), is(Fault::UnknownField, "noteA"));
        // A bug: 5 kB of what the file held, with line breaks and control codes, stood in the sentence.
        let long = format!("{{\"{}\\n\\u001b[31m\":1}}", "x".repeat(5000));
        assert_eq!(fault(&long).0, Fault::UnknownField);
        assert!(fault(&long).1.chars().count() <= LONGEST_PATH);
        let at = read_whole("{\n  \"grab\": {\n    \"arrow\": \"sideways\"}}").expect_err("refused");
        assert_eq!((at.line, at.fault), (3, Fault::WrongValue));
    }
}
