//! Limits of each place, as data, and what a fall means under them.
//!
//! A place is one file in `src/rules/places`; a new place is a new file and no code. Values that
//! no place sets (the reserve under the feet) stand in `common.json`. [`judge`] turns a scenario
//! and its trace into findings; it computes no physics and writes no sentence. A working load and
//! a breaking load are different types (see `strength`) and cannot be compared.

pub mod clearance;
mod findings;
mod judge;
mod limits;

pub use crate::strength::{BreakingLoadN, WorkingLoadN};
pub use findings::{Finding, FindingCode, Severity, Value};
pub use judge::{Advice, HARD_SWING_M_S, advice, judge, system_most_n};
pub use limits::*;

use include_dir::{Dir, include_dir};
use std::sync::OnceLock;

/// Version of the rules data and of [`judge`].
///
/// 4: each line says which edition was read and in what; ladders, wires, rope ends, links on a grab and
/// site-made anchors as corrected against sources.
/// 5: slack above the grab, a bare edge and a ladder that barely holds are findings; a blow is that of trunk and thighs; the worse end
/// of a fall's neighbours is judged.
pub const RULES_VERSION: u32 = 5;

static FILES: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/src/rules/places");

/// Reads every place file.
///
/// # Errors
/// The file's name and what is wrong with it.
pub fn read_places() -> Result<Vec<Place>, String> {
    let mut all = Vec::new();
    for f in FILES.files() {
        let name = f.path().display().to_string();
        let text = f.contents_utf8().ok_or_else(|| format!("{name}: not UTF-8"))?;
        all.push(serde_json::from_str::<Place>(text).map_err(|e| format!("{name}: {e}"))?);
    }
    all.sort_by_key(|p| p.order);
    Ok(all)
}

fn all() -> &'static [Place] {
    static ALL: OnceLock<Vec<Place>> = OnceLock::new();
    // A test reads every file; a build with a broken one does not pass.
    ALL.get_or_init(|| read_places().unwrap_or_default())
}

/// All places a person can choose, in order.
pub fn places() -> impl Iterator<Item = &'static Place> {
    all().iter().filter(|p| p.id != "common")
}

/// The place with this identifier.
pub fn place(id: &str) -> Option<&'static Place> {
    places().find(|p| p.id == id)
}

/// Room that should be left under the feet, by common practice.
pub fn reserve() -> Option<&'static Limit> {
    common(LimitKind::ClearanceReserve)
}

/// A limit by common practice, of a kind that no place has to set.
pub fn common(what: LimitKind) -> Option<&'static Limit> {
    all().iter().find(|p| p.id == "common")?.limit(what)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_place_file_reads() {
        let all = read_places().expect("reads");
        assert!(all.iter().any(|p| p.id == "common"));
        assert_eq!(all.len(), 17);
        for p in &all {
            for l in &p.limits {
                assert!(l.value.is_finite() && l.value > 0.0, "{} {:?}", p.id, l.what);
                let anchor = matches!(
                    l.what,
                    LimitKind::Anchor | LimitKind::AnchorWithAbsorber | LimitKind::AnchorFactor
                );
                assert_eq!(anchor, l.basis.is_some(), "{} {:?}", p.id, l.what);
                assert_eq!(l.what == LimitKind::ApproachDistance && p.id != "common", l.up_to_v.is_some());
            }
        }
    }

    /// A bug: 'checked on' stood beside lines that nobody had read in anything.
    #[test]
    fn no_line_from_memory_says_that_it_was_checked() {
        for p in read_places().expect("reads") {
            let sources = p.limits.iter().map(|l| &l.source).chain(p.duties.iter().map(|d| &d.source));
            for s in sources {
                let what = format!("{} {} {}", p.id, s.document.en, s.clause.en);
                assert!(!s.document.fr.is_empty() && !s.clause.fr.is_empty(), "{what}");
                match s.read_in {
                    ReadIn::Memory => assert!(s.checked_on.is_empty() && s.edition.is_empty(), "{what}"),
                    ReadIn::CommonPractice => assert!(s.checked_on.is_empty(), "{what}"),
                    _ => assert!(
                        crate::units::date(&s.checked_on).is_some() && !s.edition.is_empty(),
                        "{what}"
                    ),
                }
            }
        }
    }

    /// The data and its version: a change of a place without a new version fails here. SHA-256 of the
    /// files in order of their names.
    #[test]
    fn the_rules_version_goes_with_the_data() {
        use sha2::{Digest, Sha256};
        let mut files: Vec<_> = FILES.files().collect();
        files.sort_by_key(|f| f.path().to_owned());
        let mut h = Sha256::new();
        for f in files {
            h.update(f.contents());
        }
        h.update(include_bytes!("../grade/weights.json"));
        let hex: String = h.finalize().iter().take(6).map(|b| format!("{b:02x}")).collect();
        assert_eq!((RULES_VERSION, hex.as_str()), (5, "4201fbfa02c6"));
    }

    /// The published sense of each boundary, by hand: at most, at least, more than.
    #[test]
    fn boundaries_have_the_published_sense() {
        use LimitKind::*;
        // Place, limit, the value as published, whether it holds at it, just under, just over.
        for (id, what, value, under, at, over) in [
            // "falling more than 3 metres"
            ("on", TriggerHeight, 3.0, false, false, true),
            // "une chute de plus de 3 m"
            ("qc", TriggerHeight, 3.0, false, false, true),
            // "6 feet (1.8 m) or more": 6 x 0.3048
            ("us_construction", TriggerHeight, 1.8288, false, true, true),
            // "4 feet (1.2 m) or more"
            ("us_general", TriggerHeight, 1.2192, false, true, true),
            // "in excess of 7 1/2 feet"
            ("us_california", TriggerHeight, 2.286, false, false, true),
            // "3 metres or more"
            ("ab", TriggerHeight, 3.0, false, true, true),
            ("mb", TriggerHeight, 3.0, false, true, true),
            ("nb", TriggerHeight, 3.0, false, true, true),
            // "a peak fall-arrest force greater than 8 kilonewtons" must not be
            ("on", BodyForce, 8_000.0, true, true, false),
            ("sk", BodyForce, 8_000.0, true, true, false),
            // 1,800 lbf, 4.4482216152605 N each
            ("us_construction", BodyForce, 8_006.798_9, true, true, false),
            ("qc", BodyForce, 6_000.0, true, true, false),
            ("ab", BodyForce, 6_000.0, true, true, false),
            ("qc", FreeFall, 1.8, true, true, false),
            // "neither free fall more than six feet"
            ("us_construction", FreeFall, 1.8288, true, true, false),
            // 3.5 ft
            ("us_construction", StoppingDistance, 1.0668, true, true, false),
            // "at least 8 kilonewtons", with an absorber 6
            ("on", Anchor, 8_000.0, false, true, true),
            ("on", AnchorWithAbsorber, 6_000.0, false, true, true),
            ("mb", AnchorWithAbsorber, 6_000.0, false, true, true),
            ("qc", Anchor, 18_000.0, false, true, true),
            ("ab", Anchor, 16_000.0, false, true, true),
            ("au", Anchor, 15_000.0, false, true, true),
            // 5,000 lbf
            ("us_construction", Anchor, 22_241.108_1, false, true, true),
            // "by more than 3 m or an angle of 22 degrees"
            ("qc", AnchorOffset, 3.0, true, true, false),
            ("qc", AnchorLean, 22.0 * core::f64::consts::PI / 180.0, true, true, false),
            // "dans un délai d'au plus 15 minutes"
            ("qc", RescueMinutes, 15.0, true, true, false),
            // 3 ft
            ("common", GrabLink, 0.9144, true, true, false),
            // 1/4 and 1/3
            ("on", LadderFootLeast, 0.25, false, true, true),
            ("on", LadderFootMost, 1.0 / 3.0, true, true, false),
            ("ab", LadderFootMost, 0.25, true, true, false),
            ("us_construction", LadderFootMost, 0.25, true, true, false),
            ("ab", ApproachUnknown, 7.0, false, true, true),
        ] {
            let l = all().iter().find(|p| p.id == id).and_then(|p| p.limit(what)).expect("held");
            let step = 1e-6 * value;
            assert!((l.value / value - 1.0).abs() < 1e-8, "{id} {what:?}: {}", l.value);
            let holds = |x: f64| l.comparison.holds(x, l.value);
            assert_eq!(
                (holds(l.value - step), holds(l.value), holds(l.value + step)),
                (under, at, over),
                "{id} {what:?}"
            );
        }
    }

    /// Approach distances by voltage, by hand from each place's own table.
    #[test]
    fn approach_distances_by_voltage_and_place() {
        use crate::scenario::Voltage::*;
        for (id, voltage, m) in [
            ("ab", Unknown, Some(7.0)),
            ("ab", Service, Some(1.0)),
            // 40 kV and then 69/72 kV: 50 kV is over the first.
            ("ab", To50Kv, Some(3.5)),
            ("ab", To150Kv, Some(5.0)),
            ("qc", To50Kv, Some(3.0)),
            // From 125 kV on.
            ("qc", To150Kv, Some(5.0)),
            ("qc", Over250Kv, None),
            ("bc", To75Kv, Some(3.0)),
            ("bc", To150Kv, Some(4.5)),
            ("on", To150Kv, Some(3.0)),
            ("on", To250Kv, Some(4.5)),
            // 10 ft; 10 ft and 4 in for each 10 kV over 50: 10 in, 40 in.
            ("us_general", To50Kv, Some(3.048)),
            ("us_general", To75Kv, Some(3.302)),
            ("us_construction", To150Kv, Some(4.064)),
            ("on", Unknown, None),
            ("on", Service, None),
            ("qc", Service, None),
            ("uk", To50Kv, None),
        ] {
            let got = place(id).and_then(|p| p.approach(voltage)).map(|l| l.value);
            let same = match (got, m) {
                (Some(a), Some(b)) => (a - b).abs() < 1e-4,
                (a, b) => a == b,
            };
            assert!(same, "{id} {voltage:?}: {got:?}, not {m:?}");
        }
    }

    #[test]
    fn check_16_trigger_heights_of_the_places_held() {
        let required = |id: &str, h: f64| {
            let l = place(id).and_then(|p| p.limit(LimitKind::TriggerHeight)).expect("set");
            l.comparison.holds(h, l.value)
        };
        // At 2.9 m only the US requires; at 3.0 m Alberta, British Columbia and federal Canada too,
        // not yet Ontario and Quebec; at 3.01 m all.
        for (id, at_2_9, at_3_0) in [
            ("us_construction", true, true),
            ("us_general", true, true),
            ("ab", false, true),
            ("bc", false, true),
            ("mb", false, true),
            ("ca_federal", false, true),
            ("on", false, false),
            ("qc", false, false),
        ] {
            assert_eq!(
                (required(id, 2.9), required(id, 3.0), required(id, 3.01)),
                (at_2_9, at_3_0, true),
                "{id}"
            );
        }
    }
}
