//! The table of published figures: every row computed again, and held against what its source says.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used)]

use shortfall::geometry::{Geometry, LadderTop};
use shortfall::physics::equipment::{GrabParams, LineParams};
use shortfall::physics::ladder::{Load, reactions};
use shortfall::physics::{Run, settled_trace};
use shortfall::scenario::*;
use shortfall::studies::published::{Drop, Figure, Row, rows};

/// A climber of 800 N at nine tenths of a ladder of 150 N, against a wall without friction.
fn foot_needs(deg: f64) -> f64 {
    let loads = [
        Load { weight_n: 800.0, along_m: 0.9, out_m: 0.0 },
        Load { weight_n: 150.0, along_m: 0.5, out_m: 0.0 },
    ];
    reactions(deg.to_radians(), 1.0, LadderTop::Wall, &loads).friction_needed()
}

/// Peak on a bare steel mass over that on a whole worker in a harness: the same line, the same fall, no
/// absorber, a grab that grips at once.
fn steel_over_person() -> f64 {
    let mut s = Scenario::default();
    s.house.eave_height_m = 9.0;
    s.house.overhang_m = 0.6;
    s.ladder.length_m = 10.0;
    s.ladder.foot_distance_m = 2.25;
    s.stance = Stance::Ladder { standing_height_m: 6.9 };
    s.worker.mass_kg = 100.0;
    s.anchor.kind = AnchorKind::RatedEye;
    s.anchor.from_ridge_m = 4.2;
    s.lanyard = Lanyard { length_m: 1.2, absorber: None, clipped: true };
    s.grab.above_dring_m = -0.6;
    let mut line = LineParams::of(&s);
    line.grab = GrabParams { grip_n: 1e6, dead_travel_m: 0.0, bite_m: 0.0, ..line.grab };
    (line.edge_friction, line.anchor_capacity_n) = (0.0, 1e6);
    let person = settled_trace(&s.set_up().expect("possible"), line);
    let rope_m = Geometry::of(&s).expect("stands").grab_rope_m;
    (line.harness_compliance_m_per_n, line.harness_slide_m) = (0.0, 0.0);
    let mut steel = Run::point_mass(100.0, person.free_fall_m, line, rope_m);
    while steel.time_s() < 3.0 && !steel.step() {}
    steel.finish().peak_force_n / person.peak_force_n
}

fn ours(r: &Row) -> f64 {
    match (r.figure, &r.drop) {
        (Figure::Peak, Some(d)) => d.run().peak_force_n,
        (Figure::Arrest, Some(d)) => d.run().arrest_m,
        (Figure::Tear, Some(d)) => d.run().absorber_extension_m,
        (Figure::EndMass, Some(d)) => d.mass_at_the_end_kg(),
        (Figure::SteelRatio, None) => steel_over_person(),
        (Figure::LadderRatio, None) => foot_needs(65.0) / foot_needs(75.0),
        other => panic!("{}: {other:?}", r.id),
    }
}

#[test]
fn every_published_row_is_computed_again_and_agrees() {
    let all = rows();
    assert!(all.len() >= 8, "{}", all.len());
    for r in &all {
        let now = ours(r);
        assert!((now / r.ours_si - 1.0).abs() < 2e-3, "{}: {now}, the table says {}", r.id, r.ours_si);
        assert_ne!(r.agrees(), Some(false), "{}: {now} against {:?} to {:?}", r.id, r.low, r.high);
        assert!(["text", "abstract", "summary", "memory"].contains(&r.read.as_str()), "{}", r.id);
    }
}

/// The first row by hand: F = mg + sqrt((mg)^2 + 2 mg M f), the peak of a mass on a spring.
#[test]
fn a_bare_drop_is_the_closed_form() {
    let d = Drop {
        mass_kg: 100.0,
        free_fall_m: 0.6,
        rope_m: 2.0,
        rope_modulus_n: 30_000.0,
        link_m: 0.0,
        absorber: None,
        max_extension_m: 0.0,
        grab: false,
    };
    let weight_n: f64 = 980.665;
    let want_n = weight_n + (weight_n * weight_n + 2.0 * weight_n * 30_000.0 * 0.3).sqrt();
    assert!((d.run().peak_force_n / want_n - 1.0).abs() < 1e-3, "{} {want_n}", d.run().peak_force_n);
}
