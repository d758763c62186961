//! Records: sealed, written, read back, merged, replayed; the crew's list and what it is due for.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used)]

use shortfall::quiz::export::*;
use shortfall::quiz::questions::{Ask, Given};
use shortfall::quiz::record::*;
use shortfall::quiz::roster::*;
use shortfall::quiz::roster::{DueKind, analysis, due, next_due};
use shortfall::quiz::{Answered, Blueprint, CUT_SHARE, form};
use shortfall::units::date;

fn blueprint(seed: u64) -> Blueprint {
    Blueprint { seed, place: "on".to_owned(), again: vec![] }
}

/// A record with the first `wrong` questions with choices missed.
fn record(who: &str, seed: u64, wrong: usize, finished: &str) -> Record {
    let f = form(&blueprint(seed));
    let mut left = wrong;
    let answers: Vec<Answered> = f
        .items
        .iter()
        .map(|q| {
            let given = match &q.ask {
                Ask::One { choices, key } if left > 0 => {
                    left -= 1;
                    Given::One((key + 1) % choices.len() as u8)
                }
                _ => q.key(),
            };
            Answered::of(q, given)
        })
        .collect();
    let header = Header::new(
        who,
        "Maud Larivière",
        "fr",
        blueprint(seed),
        f.items.len() as u32,
        CUT_SHARE,
        "2026-05-04T09:00:00-04:00",
    );
    Record::seal(header, answers, finished, false).expect("seals")
}

const MAY_4: &str = "2026-05-04T09:20:00-04:00";

#[test]
fn a_record_reads_back_the_same_and_replays() {
    let r = record("Noor Field", 9, 1, MAY_4);
    let back: Record = serde_json::from_str(&serde_json::to_string(&r).expect("writes")).expect("reads");
    assert_eq!(back, r);
    assert_eq!(back.doubt(), None);
    assert_eq!(back.id().len(), 64);
}

#[test]
fn an_edit_anywhere_is_seen() {
    let r = record("Noor Field", 9, 2, MAY_4);
    let edits: [fn(&mut Record); 7] = [
        |r| r.header.who = "Somebody Else".to_owned(),
        |r| r.header.cut_share = 0.1,
        |r| r.header.from.seed += 1,
        |r| r.answers[0].credit_share = 1.0 - r.answers[0].credit_share,
        |r| r.answers.swap(0, 1),
        |r| r.finished = "2026-06-04T09:20:00-04:00".to_owned(),
        |r| drop(r.answers.pop()),
    ];
    for (n, edit) in edits.iter().enumerate() {
        let mut e = r.clone();
        edit(&mut e);
        assert_eq!(e.doubt(), Some(Doubt::Edited), "edit {n}");
    }
    // Sealed anew after the edit, the hashes fit, but the form does not replay.
    let mut answers = r.answers.clone();
    answers[0].credit_share = 1.0 - answers[0].credit_share;
    let forged = Record::seal(r.header.clone(), answers, &r.finished, false).expect("seals");
    assert_eq!(forged.doubt(), Some(Doubt::DoesNotReplay));
    let others = [
        Header { physics: r.header.physics + 1, ..r.header.clone() },
        Header { rules: r.header.rules + 1, ..r.header.clone() },
        // A bug: a question reworded in a later version told a trainer that the answers do not fit.
        Header { quiz: r.header.quiz + 1, ..r.header.clone() },
    ];
    for other in others {
        let r = Record::seal(other, r.answers.clone(), MAY_4, false).expect("seals");
        assert_eq!(r.doubt(), Some(Doubt::OtherVersion));
    }
}

/// A record of schema 1, as an earlier version wrote and sealed it, by its hand-worked hashes: SHA-256
/// of the header's text, then of the hash before and each part.
#[test]
fn a_record_of_the_first_schema_still_fits_its_seal() {
    use sha2::{Digest, Sha256};
    let sha = |before: &str, text: &str| -> String {
        Sha256::digest(format!("{before}{text}")).iter().map(|b| format!("{b:02x}")).collect()
    };
    let header = r#"{"schema":1,"app":"0.1.0","physics":3,"rules":4,"who":"Noor Field","trainer":"","lang":"en","from":{"seed":7,"place":"on","again":[]},"questions":12,"cut_share":0.8,"started":"2026-05-04T09:00:00-04:00"}"#;
    let answer = r#"{"kind":"wire","seed":11,"given":{"one":1},"credit_share":1.0,"critical":false}"#;
    let end = r#"["2026-05-04T09:20:00-04:00",false]"#;
    let a = sha("", header);
    let b = sha(&a, answer);
    let c = sha(&b, end);
    let text = format!(
        r#"{{"header":{header},"answers":[{answer}],"finished":"2026-05-04T09:20:00-04:00","clock_set_back":false,"chain":["{a}","{b}","{c}"]}}"#
    );
    let i = import(&text, &[]).expect("reads");
    assert_eq!((i.fresh.len(), i.edited, i.out_of_range, i.unread), (1, 0, 0, 0));
    assert_eq!(i.fresh[0].header.quiz, 0);
    assert_eq!(i.fresh[0].doubt(), Some(Doubt::OtherVersion));
}

/// Two bugs: a record of the year 9999 ended the crew's room, and credit of a thousand million was
/// shown as 100,000,000,000 %.
#[test]
fn a_record_that_cannot_be_is_left_out_and_counted() {
    let r = record("Noor Field", 9, 0, MAY_4);
    let seal = |h: &Header, a: &[Answered], at: &str| {
        // Sealed anew by somebody, past our own door: through the text.
        let mut v = serde_json::to_value(&r).expect("writes");
        v["header"] = serde_json::to_value(h).expect("writes");
        v["answers"] = serde_json::to_value(a).expect("writes");
        v["finished"] = at.into();
        reseal(&mut v);
        v.to_string()
    };
    let mut rich = r.answers.clone();
    rich[0].credit_share = 1e9;
    let long = Header { who: "x".repeat(5000), ..r.header.clone() };
    let many = Header { questions: 4_000_000, ..r.header.clone() };
    for text in [
        seal(&r.header, &r.answers, "9999-12-31T09:00:00Z"),
        seal(&r.header, &r.answers, "not a day"),
        seal(&r.header, &rich, MAY_4),
        seal(&long, &r.answers, MAY_4),
        seal(&many, &r.answers, MAY_4),
    ] {
        let i = import(&text, &[]).expect("reads");
        assert_eq!((i.fresh.len(), i.edited, i.out_of_range), (0, 0, 1), "{}", &text[..120]);
    }
    assert_eq!(import(&seal(&r.header, &r.answers, MAY_4), &[]).expect("reads").fresh, vec![r.clone()]);
    assert!(Record::seal(many, r.answers.clone(), MAY_4, false).is_none());
    // Kept from before that check, such a record still ends nothing.
    let old = Record { finished: "9999-12-31T09:00:00Z".to_owned(), ..r };
    let all = due(&[&old], None);
    assert_eq!(all.iter().map(|d| d.kind).collect::<Vec<_>>(), [DueKind::First]);
}

/// Writes the chain of an edited record anew, as anybody can (SHA-256, no secret).
fn reseal(v: &mut serde_json::Value) {
    use sha2::{Digest, Sha256};
    let sha = |before: &str, text: &str| -> String {
        Sha256::digest(format!("{before}{text}")).iter().map(|b| format!("{b:02x}")).collect()
    };
    let header: Header = serde_json::from_value(v["header"].clone()).expect("a header");
    let mut chain = vec![sha("", &serde_json::to_string(&header).expect("writes"))];
    let answers: Vec<Answered> = serde_json::from_value(v["answers"].clone()).expect("answers");
    for a in &answers {
        chain.push(sha(chain.last().expect("one"), &serde_json::to_string(a).expect("writes")));
    }
    let end = serde_json::to_string(&(v["finished"].as_str().expect("an end"), false)).expect("writes");
    chain.push(sha(chain.last().expect("one"), &end));
    v["chain"] = serde_json::to_value(chain).expect("writes");
}

#[test]
fn an_import_merges_without_loss_or_doubles() {
    let (a, b) = (record("Noor Field", 9, 0, MAY_4), record("Tad Quill", 10, 0, MAY_4));
    let mut edited = record("Tad Quill", 11, 3, MAY_4);
    edited.answers[0].credit_share = 1.0 - edited.answers[0].credit_share;
    let later = r#"{"header":{"schema":7,"face":"scan"},"answers":"elsewhere"}"#.to_owned();
    let file = archive(&[a.clone(), b.clone(), b.clone(), edited], &[later], &["Noor Field".to_owned()]);
    let i = import(&file, &[a.id().to_owned()]).expect("reads");
    assert_eq!((i.fresh, i.held, i.edited, i.unread), (vec![b.clone()], 2, 1, 1));
    assert_eq!(i.crew, Names { names: vec!["Noor Field".to_owned()], left_out: 0 });
    // One record alone, and with a byte order mark.
    let alone = format!("\u{feff}{}", serde_json::to_string(&b).expect("writes"));
    assert_eq!(import(&alone, &[]).expect("reads").fresh, vec![b]);
}

#[test]
fn a_broken_foreign_newer_or_huge_file_is_refused() {
    let file = archive(&[record("Noor Field", 9, 0, MAY_4)], &[], &[]);
    assert_eq!(import(&file[..file.len() / 2], &[]), Err(Refused::Broken));
    assert_eq!(import("", &[]), Err(Refused::Broken));
    assert_eq!(import("{\"hello\":1}", &[]), Err(Refused::Foreign));
    assert_eq!(import("[1,2]", &[]), Err(Refused::Foreign));
    assert_eq!(
        import(&file.replacen("\"shortfall_records\":3", "\"shortfall_records\":4", 1), &[]),
        Err(Refused::Newer)
    );
    assert_eq!(import("{\"shortfall_records\":1,\"records\":3}", &[]), Err(Refused::Broken));
    assert_eq!(import(&" ".repeat(LARGEST_IMPORT_BYTES + 1), &[]), Err(Refused::TooLarge));
}

/// Cuts a line of CSV the way a spreadsheet does that takes `by` for the separator and heeds quotes
/// only at a cell's start.
fn cells(line: &str, by: char) -> Vec<String> {
    let mut out = vec![String::new()];
    let mut quoted = false;
    for c in line.chars() {
        let cell = out.last_mut().expect("one");
        match c {
            '"' if cell.is_empty() && !quoted => quoted = true,
            '"' if quoted => quoted = false,
            c if c == by && !quoted => out.push(String::new()),
            c => cell.push(c),
        }
    }
    out
}

/// A bug: a name with `;=` in it was a live formula where semicolons separate.
#[test]
fn csv_is_rfc_4180_and_no_cell_is_a_formula_by_any_separator() {
    let names = [
        "=1+1",
        "+cmd",
        "-2",
        "@sum",
        "\tx",
        "O\"Neil, \"Bee\"",
        "Élise\nLow",
        "Noor;=1+1",
        "Noor; =1+1",
        "Noor,\"=1+1",
        "a\t=2",
        "x|=cmd",
        "Quill, Tad",
        "Anne-Marie",
        " ＝1",
    ];
    for name in names {
        for french in [false, true] {
            let r = record(name, 9, 0, MAY_4);
            let text = csv(&[r], french);
            assert!(text.starts_with('\u{feff}') && text.ends_with("\r\n"));
            let mut rows = csv::ReaderBuilder::new()
                .delimiter(if french { b';' } else { b',' })
                .from_reader(text.trim_start_matches('\u{feff}').as_bytes());
            let row = rows.records().next().expect("one").expect("parses");
            assert_eq!(row.len(), 19);
            assert_eq!(row[0].replace('\'', ""), name.trim().replace('\'', ""));
            let body = text.split_once("\r\n").expect("a head").1;
            for by in [',', ';', '\t', '|'] {
                for line in body.lines() {
                    for cell in cells(line, by) {
                        let bare = cell.trim_start_matches([' ', '"', '\u{a0}']);
                        assert!(
                            !bare.starts_with(['=', '+', '-', '@', '＝']),
                            "{name:?} by {by:?}: {cell:?}"
                        );
                    }
                }
            }
        }
    }
    assert!(csv(&[record("Anne-Marie Low", 9, 0, MAY_4)], false).contains("\nAnne-Marie Low,"));
    assert!(csv(&[], true).contains("nom;fini;commencé"));
}

#[test]
fn xapi_statements_have_what_the_standard_asks_for() {
    let text = xapi(&[record("Noor Field", 9, 1, MAY_4), record("", 9, 1, MAY_4)]);
    let all: serde_json::Value = serde_json::from_str(&text).expect("JSON");
    let all = all.as_array().expect("a list");
    assert_eq!(all.len(), 26);
    for (n, s) in all.iter().enumerate() {
        // RFC 9562: version in the 15th character, variant 10 in the 20th.
        let id = s["id"].as_str().expect("an id");
        assert!(id.len() == 36 && id.as_bytes()[14] == b'5' && b"89ab".contains(&id.as_bytes()[19]), "{id}");
        assert!(s["verb"]["id"].as_str().is_some_and(|v| v.starts_with("http")));
        assert!(s["object"]["id"].as_str().is_some_and(|v| v.contains(':')));
        // An agent's name is never an empty text, its account never nameless, its home a URL.
        assert!(s["actor"].get("name").is_none_or(|v| v != ""));
        assert!(s["actor"]["account"]["name"].as_str().is_some_and(|v| !v.is_empty()));
        assert!(s["actor"]["account"]["homePage"].as_str().is_some_and(|v| v.starts_with("https://")));
        assert_eq!(s["actor"].get("name").is_some(), n < 13);
        let scaled = s["result"]["score"]["scaled"].as_f64().expect("a score");
        assert!((0.0..=1.0).contains(&scaled));
    }
    // From 09:00 to 09:20.
    assert_eq!(all[12]["result"]["duration"], "PT1200S");
    let mut ids: Vec<_> = all.iter().map(|s| s["id"].as_str()).collect();
    ids.sort_unstable();
    ids.dedup();
    assert_eq!(ids.len(), 26);
}

fn crew(text: &str) -> Vec<String> {
    shortfall::quiz::roster::crew(text).names
}

#[test]
fn a_crew_list_is_pasted_or_read_from_csv() {
    assert_eq!(crew("Name\nNoor Field\n\n Tad Quill \nNoor Field\n"), vec!["Noor Field", "Tad Quill"]);
    assert_eq!(
        crew("\u{feff}nom,ville\r\n\"Quill, Tad\",Bas-Ruisseau\r\nLow\r\n"),
        vec!["Quill, Tad", "Low"]
    );
    // A bug: lists separated by semicolons or tabs were taken whole as names.
    assert_eq!(crew("nom;ville\r\nÉlise Low;Bas-Ruisseau\r\nTad;X\r\n"), vec!["Élise Low", "Tad"]);
    assert_eq!(crew("name\ttown\nNoor Field\tX\n"), vec!["Noor Field"]);
    assert_eq!(crew("\"Quill; Tad\";Bas-Ruisseau"), vec!["Quill; Tad"]);
    assert_eq!(crew("   "), Vec::<String>::new());
}

/// Two bugs: the 501st name was dropped without a word, and 100,000 names took half a minute.
#[test]
fn names_past_the_last_are_counted() {
    let many: String = (0..100_000).map(|n| format!("Painter {n}\n")).collect();
    let got = shortfall::quiz::roster::crew(&many);
    assert_eq!((got.names.len(), got.left_out), (500, 99_500));
}

/// A bug: an archive of more than 1,230 records was over the size that is read.
#[test]
fn ten_thousand_records_are_written_and_read_back() {
    let one = record("Noor Field", 9, 1, MAY_4);
    let all: Vec<Record> = (0..10_000)
        .map(|n| {
            let h = Header { who: format!("Painter {n}"), ..one.header.clone() };
            Record::seal(h, one.answers.clone(), MAY_4, false).expect("seals")
        })
        .collect();
    let text = archive(&all, &[], &[]);
    assert!(text.len() < LARGEST_IMPORT_BYTES, "{} bytes", text.len());
    assert_eq!(import(&text, &[]).expect("reads").fresh.len(), 10_000);
}

#[test]
fn re_checks_are_due_at_two_seven_thirty_days_and_mid_season() {
    assert_eq!(due(&[], None)[0].kind, DueKind::First);
    let first = record("Noor Field", 9, 0, MAY_4);
    let mid = date("2026-07-10");
    let all = due(&[&first], mid);
    let days: Vec<String> = all.iter().map(|d| d.on.expect("dated").to_string()).collect();
    assert_eq!(days, ["2026-05-04", "2026-05-06", "2026-05-11", "2026-06-03", "2026-07-10"]);
    assert_eq!(all.iter().filter(|d| d.done).count(), 1);
    let today = |t| date(t).expect("a day");
    let (next, come) = next_due(&[&first], mid, today("2026-05-05")).expect("due");
    assert!(next.kind == DueKind::Recheck(2) && !come);
    assert!(next_due(&[&first], mid, today("2026-05-06")).expect("due").1);
    // One taken on day 8 stands for days 2 and 7.
    let later = record("Noor Field", 12, 0, "2026-05-12T08:00:00-04:00");
    assert_eq!(
        next_due(&[&first, &later], mid, today("2026-05-12")).expect("due").0.kind,
        DueKind::Recheck(30)
    );
    // A form that fails starts nothing.
    let failed = record("Tad Quill", 10, 9, MAY_4);
    assert_eq!(due(&[&failed], mid)[0].kind, DueKind::First);
}

#[test]
fn item_analysis_finds_what_the_crew_has_not_understood() {
    let records: Vec<Record> =
        (0..8).map(|n| record(&format!("Painter {n}"), 20 + n, (n % 4) as usize * 2, MAY_4)).collect();
    let rows = analysis(&records);
    // Eight kinds are in each of the eight forms, four of the other eight in each.
    assert_eq!(rows.iter().filter(|r| r.answered == 8 && r.kind.can_kill()).count(), 8);
    assert_eq!(rows.iter().filter(|r| !r.kind.can_kill()).map(|r| r.answered).sum::<u32>(), 32);
    assert!(rows.windows(2).all(|w| w[0].right_share <= w[1].right_share));
    assert!(rows.iter().all(|r| (0.0..=1.0).contains(&r.right_share)));
    assert!(rows.iter().filter_map(|r| r.discrimination_ratio).all(|d| (-1.0..=1.0).contains(&d)));
    assert!(rows[0].right_share < 1.0);
}

/// The three exports of one fixed record, whole. Made by hand, not drawn: nothing of it changes with the
/// questions.
#[test]
fn the_exports_of_a_record_whole() {
    let from = Blueprint { seed: 7, place: "qc".to_owned(), again: vec![] };
    let mut header =
        Header::new("Élise Low", "Maud Larivière", "fr", from, 2, 0.8, "2026-05-04T09:00:00-04:00");
    (header.app, header.physics, header.rules, header.quiz) = ("0.1.0".to_owned(), 4, 4, 2);
    let answer = |seed, credit_share| Answered {
        kind: shortfall::quiz::questions::ItemKind::Wire,
        seed,
        given: Given::One(1),
        credit_share,
        critical: credit_share < 1.0,
    };
    let r = Record::seal(header, vec![answer(11, 1.0), answer(12, 0.0)], MAY_4, false).expect("seals");
    let all = std::slice::from_ref(&r);
    insta::assert_snapshot!("export_csv", csv(all, false).replace("\r\n", "\n"));
    insta::assert_snapshot!("export_csv_french", csv(all, true).replace("\r\n", "\n"));
    insta::assert_snapshot!("export_xapi", xapi(all));
    insta::assert_snapshot!("export_archive", archive(all, &[], &["Tad Quill".to_owned()]));
}
