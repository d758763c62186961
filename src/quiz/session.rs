//! Who was taught what before a room: a session's own record, beside the records of the quiz. It holds what places
//! ask of a record of training: names, dates, the subject, the trainer (29 CFR 1926.503(b); O. Reg. 213/91 s. 26.2;
//! each place's own line stands in its rules).

use crate::grade::report::APP_VERSION;
use crate::physics::PHYSICS_VERSION;
use crate::quiz::export::written;
use crate::rules::RULES_VERSION;
use serde::{Deserialize, Serialize};

/// Number of the record's format.
pub const SESSION_SCHEMA: u32 = 1;

/// What was shown.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct ShownThere {
    /// Its name.
    pub name: String,
    /// What the room said.
    pub said: String,
    /// What happened.
    pub came: String,
    /// What was taught by it.
    pub taught: String,
}

/// Somebody who was there.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Attended {
    /// Name.
    pub name: String,
    /// The signature drawn on the screen, as an SVG path in a box of 200 by 60; none where it is signed on paper.
    #[serde(default)]
    pub stroke: Option<String>,
    /// When it was signed on the screen (ISO 8601 with offset); empty where it was not.
    #[serde(default)]
    pub signed_at: String,
}

/// A session that was held.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Held {
    /// Format number.
    pub session_schema: u32,
    /// What it was about.
    pub subject: String,
    /// Where it was held.
    pub at: String,
    /// The trainer's name.
    pub trainer: String,
    /// Identifier of the place whose rules were taught.
    pub law: String,
    /// When it began (ISO 8601 with offset); the end is empty while it is not told.
    pub began: String,
    /// When it ended.
    pub ended: String,
    /// What was shown.
    pub shown: Vec<ShownThere>,
    /// Who was there.
    pub there: Vec<Attended>,
    /// Questions, and what was agreed.
    pub agreed: String,
    /// Version of the app that computed what was shown.
    pub app: String,
    /// Version of the physics.
    pub physics: u32,
    /// Version of the rules.
    pub rules: u32,
}

impl Held {
    /// One that begins now, with this version's numbers.
    pub fn new(began: &str, law: &str) -> Held {
        Held {
            session_schema: SESSION_SCHEMA,
            subject: String::new(),
            at: String::new(),
            trainer: String::new(),
            law: law.to_owned(),
            began: began.to_owned(),
            ended: String::new(),
            shown: vec![],
            there: vec![],
            agreed: String::new(),
            app: APP_VERSION.to_owned(),
            physics: PHYSICS_VERSION,
            rules: RULES_VERSION,
        }
    }
}

/// Headings of the CSV file, in English and French.
const HEADS: [(&str, &str); 11] = [
    ("name", "nom"),
    ("date", "date"),
    ("began", "commencé"),
    ("ended", "fini"),
    ("subject", "sujet"),
    ("held_at", "lieu"),
    ("law", "règlement"),
    ("trainer", "formateur"),
    ("signed_on_screen", "signé_à_l_écran"),
    ("shown", "montré"),
    ("agreed", "convenu"),
];

/// Sessions as CSV, one line a person (RFC 4180, with a byte order mark; semicolons for a French reader).
pub fn sessions_csv(all: &[Held], french: bool) -> String {
    let rows = all.iter().flat_map(|h| {
        let shown: Vec<&str> = h.shown.iter().map(|s| s.name.as_str()).collect();
        let shown = shown.join(" / ");
        h.there.iter().map(move |p| {
            vec![
                p.name.clone(),
                h.began.get(..10).unwrap_or_default().to_owned(),
                h.began.clone(),
                h.ended.clone(),
                h.subject.clone(),
                h.at.clone(),
                h.law.clone(),
                h.trainer.clone(),
                p.signed_at.clone(),
                shown.clone(),
                h.agreed.clone(),
            ]
        })
    });
    written(&HEADS, rows, french)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_session_is_one_line_a_person_and_no_cell_a_formula() {
        let mut h = Held::new("2026-05-04T07:30:00-04:00", "on");
        h.subject = "Grab and link, where they hang".to_owned();
        h.trainer = "=Ines Vale".to_owned();
        h.shown = vec![ShownThere { name: "Grab hanging low".to_owned(), ..ShownThere::default() }];
        h.there = ["Tad Quill", "Bo \"Larch\""]
            .map(|n| Attended { name: n.to_owned(), ..Attended::default() })
            .to_vec();
        let text = sessions_csv(&[h.clone()], false);
        assert_eq!(
            text,
            "\u{feff}name,date,began,ended,subject,held_at,law,trainer,signed_on_screen,shown,agreed\r\n\
             Tad Quill,2026-05-04,2026-05-04T07:30:00-04:00,,\"Grab and link, where they hang\",,on,'=Ines Vale,,Grab hanging low,\r\n\
             \"Bo \"\"Larch\"\"\",2026-05-04,2026-05-04T07:30:00-04:00,,\"Grab and link, where they hang\",,on,'=Ines Vale,,Grab hanging low,\r\n"
        );
        assert!(sessions_csv(&[], true).starts_with("\u{feff}nom;date;commencé;fini;"));
        // A later field is no harm; a record without strokes reads.
        let kept = serde_json::to_string(&h).expect("writes").replace("\"stroke\":null,", "");
        assert_eq!(serde_json::from_str::<Held>(&kept).expect("reads"), h);
    }
}
