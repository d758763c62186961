//! A scenario as an address: `#s=` and the scenario file, percent-encoded.

use crate::scenario::Scenario;
use crate::scenario::file::{Fault, FileError, read_whole};
use percent_encoding::{AsciiSet, NON_ALPHANUMERIC, percent_decode_str, utf8_percent_encode};

/// What a fragment may hold as it is (RFC 3986, section 3.5, less what chat programs cut at an end; it ends in %7D).
const KEEP: &AsciiSet =
    &NON_ALPHANUMERIC.remove(b'-').remove(b'.').remove(b'_').remove(b'~').remove(b':').remove(b',');

/// The fragment for a scenario, without `#`: the parts that are not as usual, and which schema's usual is meant.
/// A part that is there is there whole. What is usual belongs to the schema: it changes only with its number.
pub fn fragment(s: &Scenario) -> String {
    // By way of their texts: what writes and reads those is there already, and a download weighs.
    let parts = |s: &Scenario| -> serde_json::Map<String, serde_json::Value> {
        serde_json::to_string(s).ok().and_then(|t| serde_json::from_str(&t).ok()).unwrap_or_default()
    };
    let usual = parts(&Scenario::default());
    let mut all = parts(s);
    all.retain(|name, part| name == "schema" || usual.get(name) != Some(part));
    let json = serde_json::Value::Object(all).to_string();
    format!("s={}", utf8_percent_encode(&json, KEEP))
}

/// Whether a fragment holds a set-up, readable or not.
pub fn holds_set_up(fragment: &str) -> bool {
    part(fragment).is_some()
}

fn part(fragment: &str) -> Option<&str> {
    fragment.trim_start_matches('#').split('&').find_map(|p| p.strip_prefix("s="))
}

/// The scenario of a fragment (with or without `#`), every number in its range; `None` when it
/// holds none.
///
/// # Errors
/// Why it is refused.
pub fn read_fragment(fragment: &str) -> Option<Result<Scenario, FileError>> {
    let decoded = percent_decode_str(part(fragment)?).decode_utf8();
    Some(decoded.map_err(|_| Fault::NotText.into()).and_then(|t| read_whole(&t)))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A link leaves out what is as usual, so what is usual is part of the format. If this fails, a default was
    /// changed: give it a new schema, and read the older one by what was usual then.
    #[test]
    fn what_is_usual_belongs_to_the_schema() {
        let text = serde_json::to_string(&Scenario::default()).expect("writes");
        // FNV-1a, by hand: a change of any default shows.
        let hash = text
            .bytes()
            .fold(0xcbf2_9ce4_8422_2325_u64, |h, b| (h ^ u64::from(b)).wrapping_mul(0x100_0000_01b3));
        assert_eq!((crate::scenario::SCHEMA, hash), (6, 15_464_259_841_035_418_188), "{text}");
    }

    /// Every part changed, to what takes the most characters: still under 2,000, as long as chat programs and codes
    /// take it.
    #[test]
    fn a_link_is_short() {
        for d in crate::practice::demos::demos() {
            let link = fragment(&d.set_up);
            assert!(link.len() < 2_000, "{}: {}", d.id, link.len());
            assert_eq!(read_fragment(&link), Some(Ok(d.set_up.clone())));
        }
        assert!(fragment(&Scenario::default()).len() < 40);
        let mut s = Scenario {
            place: "us_california".to_owned(),
            stance: crate::scenario::Stance::Roof { from_eave_m: 1.234_567 },
            weather: crate::scenario::Weather::Frozen,
            power_line: Some(crate::scenario::PowerLine::default()),
            ..Scenario::default()
        };
        s.house.eave_height_m = 5.123_456;
        s.house.below = crate::scenario::ORDINARY_OBSTACLE;
        s.ladder.reach_out_m = 0.35;
        s.worker.mass_kg = 101.151_5;
        s.anchor.from_ridge_m = 1.234_567;
        s.lifeline.slack_m = 0.5;
        s.grab.above_dring_m = -0.45;
        s.lanyard.length_m = 0.914_4;
        s.gear.connector = crate::scenario::ConnectorState::Unlocked;
        s.plan.trained_on = "2026-05-01".to_owned();
        s.plan.work_on = "2026-05-04".to_owned();
        let link = fragment(&s);
        assert!(link.len() < 1_900, "{}", link.len());
        assert_eq!(read_fragment(&link), Some(Ok(s)));
    }

    #[test]
    fn a_link_brings_back_the_same_set_up() {
        let mut s = Scenario::default();
        s.grab.above_dring_m = -0.35;
        s.lanyard.absorber = None;
        assert_eq!(read_fragment(&format!("#{}", fragment(&s))), Some(Ok(s)));
        assert_eq!(read_fragment("#top"), None);
        assert!(matches!(read_fragment("#s=%7B%22grab%22%3A1%7D"), Some(Err(e)) if e.path == "grab"));
        assert!(matches!(read_fragment("#s=%ff%fe"), Some(Err(e)) if e.fault == Fault::NotText));
    }
}
