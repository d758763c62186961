//! The table of published figures: every row computed again, and held against what its source says.

use shortfall::physics::geometry::LadderTop;
use shortfall::physics::ladder::{Load, reactions};
use shortfall::published::{Drop, Figure, Row, rows};

/// A climber of 800 N at nine tenths of a ladder of 150 N, against a wall without friction.
fn foot_needs(deg: f64) -> f64 {
    let loads = [
        Load { weight_n: 800.0, along_m: 0.9, out_m: 0.0 },
        Load { weight_n: 150.0, along_m: 0.5, out_m: 0.0 },
    ];
    reactions(deg.to_radians(), 1.0, LadderTop::Wall, &loads).friction_needed()
}

fn ours(r: &Row) -> f64 {
    match (r.figure, &r.drop) {
        (Figure::Peak, Some(d)) => d.run().peak_force_n,
        (Figure::Arrest, Some(d)) => d.run().arrest_m,
        (Figure::Tear, Some(d)) => d.run().absorber_extension_m,
        (Figure::EndMass, Some(d)) => d.mass_at_the_end_kg(),
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
        assert!(["text", "abstract", "summary"].contains(&r.read.as_str()), "{}", r.id);
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
