//! Whole grades as a person reads them: 40 set-ups, in English and in French.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used)]

use shortfall::grade::report::Report;
use shortfall::grade::scoring::Grade;
use shortfall::rules::Severity;
use shortfall::scenario::*;
use shortfall::texts::{Lang, say};
use shortfall::units::Units;
use std::fmt::Write;

type Change = fn(&mut Scenario);

/// One name and one change each, from the default set-up.
const SET_UPS: [(&str, Change); 40] = [
    ("as it comes", |_| {}),
    ("grab high", |s| s.grab.above_dring_m = 0.2),
    ("grab low", |s| s.grab.above_dring_m = -0.4),
    ("grab reversed", |s| s.grab.arrow = Arrow::Down),
    ("reversed, no knot", |s| {
        s.grab.arrow = Arrow::Down;
        s.lifeline.end = RopeEnd::Nothing;
    }),
    ("bolt loose", |s| s.grab.bolt = Bolt::Loose),
    ("latch open", |s| s.grab.latch = Latch::Open),
    ("no absorber", |s| s.lanyard.absorber = None),
    ("no absorber, grab low", |s| {
        s.lanyard.absorber = None;
        s.grab.above_dring_m = -0.4;
    }),
    ("long lanyard", |s| s.lanyard.length_m = 1.8),
    ("short lanyard", |s| {
        s.lanyard.length_m = 0.8;
        s.grab.above_dring_m = 0.0;
    }),
    ("harness loose", |s| s.worker.harness = HarnessFit::Loose),
    ("heavy worker", |s| s.worker.mass_kg = 140.0),
    ("light worker", |s| s.worker.mass_kg = 52.0),
    ("over a deck", |s| {
        s.house.below = ORDINARY_OBSTACLE;
        s.ladder.foot_distance_m = 1.45;
    }),
    ("over a deck, grab low", |s| {
        s.house.below = ORDINARY_OBSTACLE;
        s.ladder.foot_distance_m = 1.45;
        s.grab.above_dring_m = -0.4;
    }),
    ("bungalow", |s| {
        s.house.eave_height_m = 3.4;
        s.ladder = Ladder { foot_distance_m: 0.9, length_m: 4.2, ..Ladder::default() };
        s.stance = Stance::Ladder { standing_height_m: 1.9 };
        s.grab.above_dring_m = 0.0;
    }),
    ("ladder steep", |s| s.ladder.foot_distance_m = 0.8),
    ("on the roof", |s| s.stance = Stance::Roof { from_eave_m: 1.2 }),
    ("on the roof, anchor over the ridge", |s| {
        s.stance = Stance::Roof { from_eave_m: 1.2 };
        s.anchor.from_ridge_m = -1.0;
    }),
    ("four nails a side", |s| s.anchor.fasteners.per_side = 4),
    ("three missed", |s| s.anchor.fasteners.missed = 3),
    ("sheathing only", |s| s.anchor.kind = AnchorKind::RidgePlateInSheathing),
    ("sheathing only, grab low", |s| {
        s.anchor.kind = AnchorKind::RidgePlateInSheathing;
        s.grab.above_dring_m = -0.5;
    }),
    ("wet rafters", |s| s.anchor.fasteners.moisture = Moisture::Wet),
    ("chimney", |s| s.anchor.kind = AnchorKind::ChimneySling),
    ("chimney, weak mortar", |s| {
        s.anchor.kind = AnchorKind::ChimneySling;
        s.anchor.chimney.mortar = Mortar::Weak;
    }),
    ("vent pipe", |s| s.anchor.kind = AnchorKind::VentPipe),
    ("aerial mast", |s| s.anchor.kind = AnchorKind::AntennaMast),
    ("rated eye", |s| s.anchor.kind = AnchorKind::RatedEye),
    ("frayed rope", |s| s.gear.rope = RopeState::Frayed),
    ("knot, torn pack", |s| {
        s.gear.rope = RopeState::Knotted;
        s.gear.pack = PackState::Deployed;
    }),
    ("gate, label", |s| {
        s.gear.connector = ConnectorState::Unlocked;
        s.gear.label = LabelState::Missing;
    }),
    ("cut webbing, rust", |s| {
        s.gear.webbing = WebbingState::Cut;
        s.gear.connector = ConnectorState::Corroded;
    }),
    ("no rescue, card run out, anchor chosen alone", |s| {
        s.plan.rescue = RescuePlan::NoPlan;
        s.plan.trained_on = "2023-05-01".to_owned();
        s.plan.work_on = "2026-05-01".to_owned();
        s.plan.anchor_by = AnchorChosenBy::Worker;
    }),
    ("a guardrail would do", |s| s.plan.other_method = OtherMethod::Guardrail),
    ("Quebec, grab low", |s| {
        s.place = "qc".to_owned();
        s.grab.above_dring_m = -0.4;
    }),
    ("US construction, nine kilonewton eye, engineered", |s| {
        s.place = "us_construction".to_owned();
        s.anchor.kind = AnchorKind::RatedEye;
        s.anchor.stated_breaking_n = 9_000.0;
        s.plan.anchor_by = AnchorChosenBy::QualifiedPerson;
    }),
    ("Alberta, nine kilonewton eye", |s| {
        s.place = "ab".to_owned();
        s.anchor.kind = AnchorKind::RatedEye;
        s.anchor.stated_breaking_n = 9_000.0;
    }),
    ("Europe, long lanyard, grab low", |s| {
        s.place = "eu".to_owned();
        s.lanyard.length_m = 1.6;
        s.grab.above_dring_m = -0.4;
    }),
];

fn grades(lang: Lang) -> String {
    let r = say::Reader { lang, units: Units::Metric };
    let mut out = String::new();
    for (name, change) in SET_UPS {
        let mut s = Scenario::default();
        change(&mut s);
        let rep = Report::run(&s).unwrap_or_else(|p| panic!("{name}: {p:?}"));
        let Grade::Graded { score, passes, .. } = rep.grade else { panic!("{name}: not graded") };
        let (verdict, _) = say::verdict(r, &rep);
        writeln!(out, "## {name}: {score}{}\n{verdict}", if passes { "" } else { " ✕" }).expect("writes");
        for f in &rep.findings {
            let said = say::finding(r, f);
            assert!(!said.contains('{') && !said.contains("NaN"), "{name}: {said}");
            write!(out, "- {}: {said}", r.t(f.severity.label())).expect("writes");
            if let Some(m) = say::margin(r, f) {
                write!(out, " [{m}]").expect("writes");
            }
            if f.severity > Severity::Minor {
                writeln!(out).expect("writes");
                continue;
            }
            let source = f.limit.map(|l| r.source(l)).or_else(|| f.duty.map(|d| r.duty(d)));
            writeln!(out, " ({})", source.unwrap_or_default()).expect("writes");
            if let Some(why) = say::why(r, &rep, f) {
                assert!(!why.contains('{'), "{name}: {why}");
                writeln!(out, "  {why}").expect("writes");
            }
        }
    }
    out
}

#[test]
fn forty_grades_in_english() {
    insta::assert_snapshot!(grades(Lang::En));
}

#[test]
fn forty_grades_in_french() {
    insta::assert_snapshot!(grades(Lang::Fr));
}

#[test]
fn rules_of_thumb_read_in_both_languages_and_units() {
    for lang in Lang::ALL {
        for units in [Units::Metric, Units::FeetPounds] {
            for t in shortfall::practice::thumbs::Thumb::ALL {
                let (says, fares, told) = say::thumb(say::Reader { lang, units }, t);
                assert!(!says.is_empty() && !fares.is_empty());
                assert!(!told.contains('{') && !told.contains("NaN"), "{told}");
            }
        }
    }
}
