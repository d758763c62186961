//! Records: sealed, written, read back, merged, replayed; the crew's list and what it is due for.

use shortfall::quiz::items::{Ask, Given};
use shortfall::quiz::{Answered, Blueprint, CUT_SHARE, form};
use shortfall::records::*;
use shortfall::roster::{DueKind, analysis, crew, due, next_due};
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
    Record::seal(header, answers, finished, false)
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
    let forged = Record::seal(r.header.clone(), answers, &r.finished, false);
    assert_eq!(forged.doubt(), Some(Doubt::DoesNotReplay));
    let other = Header { physics: r.header.physics + 1, ..r.header.clone() };
    assert_eq!(Record::seal(other, r.answers, MAY_4, false).doubt(), Some(Doubt::OtherVersion));
}

#[test]
fn an_import_merges_without_loss_or_doubles() {
    let (a, b) = (record("Noor Field", 9, 0, MAY_4), record("Tad Quill", 10, 0, MAY_4));
    let mut edited = record("Tad Quill", 11, 3, MAY_4);
    edited.answers[0].credit_share = 1.0 - edited.answers[0].credit_share;
    let file = archive(&[a.clone(), b.clone(), b.clone(), edited], &["Noor Field".to_owned()]);
    let i = import(&file, &[a.id().to_owned()]).expect("reads");
    assert_eq!((i.fresh, i.held, i.edited, i.crew), (vec![b.clone()], 2, 1, vec!["Noor Field".to_owned()]));
    // One record alone, and with a byte order mark.
    let alone = format!("\u{feff}{}", serde_json::to_string(&b).expect("writes"));
    assert_eq!(import(&alone, &[]).expect("reads").fresh, vec![b]);
}

#[test]
fn a_broken_foreign_newer_or_huge_file_is_refused() {
    let file = archive(&[record("Noor Field", 9, 0, MAY_4)], &[]);
    assert_eq!(import(&file[..file.len() / 2], &[]), Err(Refused::Broken));
    assert_eq!(import("", &[]), Err(Refused::Broken));
    assert_eq!(import("{\"hello\":1}", &[]), Err(Refused::Foreign));
    assert_eq!(import("[1,2]", &[]), Err(Refused::Foreign));
    assert_eq!(
        import(&file.replacen("\"shortfall_records\": 1", "\"shortfall_records\": 2", 1), &[]),
        Err(Refused::Newer)
    );
    assert_eq!(import("{\"shortfall_records\":1,\"records\":3}", &[]), Err(Refused::Broken));
    assert_eq!(import(&" ".repeat(LARGEST_IMPORT_BYTES + 1), &[]), Err(Refused::TooLarge));
}

#[test]
fn csv_is_rfc_4180_and_no_cell_is_a_formula() {
    for name in ["=1+1", "+cmd", "-2", "@sum", "\tx", "O\"Neil, \"Bee\"", "Élise\nLow"] {
        let r = record(name, 9, 0, MAY_4);
        let text = csv(&[r]);
        assert!(text.starts_with('\u{feff}') && text.ends_with("\r\n"));
        let mut rows = csv::ReaderBuilder::new().from_reader(text.trim_start_matches('\u{feff}').as_bytes());
        let row = rows.records().next().expect("one").expect("parses");
        assert_eq!(row.len(), 18);
        let cell = &row[0];
        assert!(!cell.starts_with(['=', '+', '-', '@', '\t', '\r']), "{cell}");
        assert_eq!(cell.trim_start_matches('\''), name.trim());
    }
}

#[test]
fn xapi_statements_have_what_the_standard_asks_for() {
    let all: serde_json::Value =
        serde_json::from_str(&xapi(&[record("Noor Field", 9, 1, MAY_4)])).expect("JSON");
    let all = all.as_array().expect("a list");
    assert_eq!(all.len(), 13);
    for s in all {
        let id = s["id"].as_str().expect("an id");
        assert!(id.len() == 36 && id.as_bytes()[14] == b'8' && id.as_bytes()[19] == b'9', "{id}");
        assert!(s["verb"]["id"].as_str().is_some_and(|v| v.starts_with("http")));
        assert!(s["object"]["id"].as_str().is_some_and(|v| v.contains(':')));
        assert_eq!(s["actor"]["name"], "Noor Field");
        let scaled = s["result"]["score"]["scaled"].as_f64().expect("a score");
        assert!((0.0..=1.0).contains(&scaled));
    }
    let mut ids: Vec<_> = all.iter().map(|s| s["id"].as_str()).collect();
    ids.sort_unstable();
    ids.dedup();
    assert_eq!(ids.len(), 13);
}

#[test]
fn a_crew_list_is_pasted_or_read_from_csv() {
    assert_eq!(crew("Name\nNoor Field\n\n Tad Quill \nNoor Field\n"), vec!["Noor Field", "Tad Quill"]);
    assert_eq!(
        crew("\u{feff}nom,ville\r\n\"Quill, Tad\",Bas-Ruisseau\r\nLow\r\n"),
        vec!["Quill, Tad", "Low"]
    );
    assert_eq!(crew("   "), Vec::<String>::new());
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
    assert_eq!(rows.len(), 12);
    assert!(rows.windows(2).all(|w| w[0].right_share <= w[1].right_share));
    assert!(rows.iter().all(|r| r.answered == 8 && (0.0..=1.0).contains(&r.right_share)));
    assert!(rows.iter().filter_map(|r| r.discrimination_ratio).all(|d| (-1.0..=1.0).contains(&d)));
    assert!(rows[0].right_share < 1.0);
}
