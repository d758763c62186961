//! Golden traces: the same bits on every platform. `tests/browser` computes the same hash in wasm.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used)]

use shortfall::grade::report::outcome_json;
use shortfall::physics::simulate;
use shortfall::scenario::file::read_scenario;
use shortfall::scenario::*;

/// One of each: a plain stop, a reversed grab, a roof slide over the ridge rope, a failing anchor.
fn scenes() -> Vec<(&'static str, Scenario)> {
    let base = Scenario::default();
    let mut reversed = base.clone();
    reversed.grab.arrow = Arrow::Down;
    let mut roof = base.clone();
    roof.stance = Stance::Roof { from_eave_m: 1.0 };
    roof.anchor.from_ridge_m = -1.0;
    let mut vent = base.clone();
    vent.anchor.kind = AnchorKind::VentPipe;
    let mut low = base.clone();
    low.grab.above_dring_m = -0.4;
    low.house.below = ORDINARY_OBSTACLE;
    low.ladder.foot_distance_m = 1.45;
    vec![("plain", base), ("reversed", reversed), ("roof", roof), ("vent", vent), ("low_deck", low)]
}

#[test]
fn golden_traces() {
    let all: Vec<serde_json::Value> = scenes()
        .into_iter()
        .map(|(name, s)| {
            let out = outcome_json(&s);
            serde_json::json!({
                "name": name,
                "file": serde_json::to_string(&s).expect("writes"),
                "hash": out["trace_hash"],
                "outcome": out["outcome"],
                "score": out["grade"]["score"],
                "versions": out["versions"],
                "findings": out["findings"].as_array().map(|f| f.iter().map(|f| f["code"].clone()).collect::<Vec<_>>()),
            })
        })
        .collect();
    insta::assert_json_snapshot!(all);
}

/// Nothing of one run leaks into the next.
#[test]
fn a_run_made_again_is_the_same_to_the_bit() {
    let s = Scenario::default().set_up().expect("possible");
    let first = simulate(&s);
    let between = Scenario { stance: Stance::Roof { from_eave_m: 1.0 }, ..Scenario::default() };
    assert_ne!(simulate(&between.set_up().expect("possible")).hash(), first.hash());
    assert_eq!(simulate(&s).hash(), first.hash());
}

#[test]
fn an_old_file_with_fields_missing_still_loads() {
    let s = read_scenario(r#"{"schema":1,"grab":{"arrow":"down"}}"#).expect("loads");
    assert_eq!(s.grab.arrow, Arrow::Down);
    assert_eq!(s.house, House::default());
}

#[test]
fn a_bad_file_names_its_field() {
    for (text, field) in [
        (r#"{"grab":{"above_dring_m":"high"}}"#, "grab.above_dring_m"),
        (r#"{"house":{"eave_hight_m":5}}"#, "house.eave_hight_m"),
        ("[]", "scenario"),
        (r#"{"stance":{"ladder":{"standing_height_m":null}}}"#, "stance.ladder.standing_height_m"),
    ] {
        let line = read_scenario(text).expect_err("refused").to_string();
        assert!(line.starts_with(field), "{line}");
        assert!(!line.contains('\n'));
    }
}

/// Everything that is drawn from seeds 0 to 199, as hashes: `tests/browser` draws them again in wasm.
/// A change of these is a change of the quiz's version.
#[test]
fn what_is_drawn_from_a_seed_stays_the_same() {
    let some = |from: u64| (from..from + 100).map(|n| shortfall::worker::drawn(n) + "\n").collect::<String>();
    let got = std::thread::scope(|scope| {
        let second = scope.spawn(|| some(100));
        some(0) + &second.join().expect("draws")
    });
    let at = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/snapshots/draws.txt");
    if std::env::var_os("DRAWS_ANEW").is_some() {
        std::fs::write(&at, &got).expect("writes");
    }
    let want = std::fs::read_to_string(&at).expect("reads");
    for (a, b) in want.lines().zip(got.lines()) {
        assert_eq!(a, b);
    }
    assert_eq!(want.lines().count(), got.lines().count());
}
