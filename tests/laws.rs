//! Laws that hold for every fall, over random inputs.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used)]

use proptest::prelude::*;
use proptest::test_runner::{TestCaseError, TestRunner};
use shortfall::geometry::{Geometry, p, path_length, taut_path};
use shortfall::physics::constants::DT_S;
use shortfall::physics::equipment::{AbsorberParams, LineParams};
use shortfall::physics::trace::{EventKind, Outcome, Trace};
use shortfall::physics::world::World;
use shortfall::physics::{Run, Start, settled_trace};
use shortfall::scenario::*;
use shortfall::units::G_M_S2;
use std::cell::Cell;

fn any_f64() -> impl Strategy<Value = f64> {
    prop_oneof![
        any::<f64>(),
        Just(f64::NAN),
        Just(f64::INFINITY),
        Just(-0.0),
        Just(0.0),
        -20.0..20.0f64,
        0.0..1e5f64
    ]
}

prop_compose! {
    /// A plausible set-up; `problems` decides whether it can be built.
    fn set_up()(
        house in (2.4..9.0f64, 0.1..0.9f64, 2.0..6.0f64, 0.0..0.8f64), slope in prop_oneof![Just(0.0), 0.0..0.3f64],
        ladder in (0.6..2.6f64, 2.5..11.0f64, any::<bool>(), 0.0..0.4f64), weather in 0usize..3,
        on_ladder in prop::bool::weighted(0.7), at in (0.4..7.0f64, 0.3..4.0f64),
        worker in (50.0..140.0f64, 1.5..2.0f64, any::<bool>()),
        anchor in (0usize..AnchorKind::ALL.len(), -2.0..3.0f64),
        rope in (5.0..25.0f64, 20e3..45e3f64, any::<bool>(), prop_oneof![Just(0.0), 0.0..1.5f64]),
        grab in (-1.2..1.2f64, prop::bool::weighted(0.8), prop::bool::weighted(0.8), prop::bool::weighted(0.8)),
        lanyard in (0.4..1.8f64, prop::option::of((2e3..6e3f64, 0.3..1.6f64, 0usize..3)), prop::bool::weighted(0.95)),
        below in prop::option::of((0.2..1.5f64, 0.0..3.0f64, 0.4..1.6f64)),
    ) -> Scenario {
        Scenario {
            house: House { eave_height_m: house.0, roof_pitch_rad: house.1, half_span_m: house.2, overhang_m: house.3, ground_slope_rad: slope,
                below: below.map_or(Below::BareGround, |b| Below::Obstacle { height_m: b.0, distance_m: b.1, width_m: b.2 }) },
            ladder: Ladder { foot_distance_m: ladder.0, length_m: ladder.1, tied: ladder.2, reach_out_m: ladder.3 },
            stance: if on_ladder { Stance::Ladder { standing_height_m: at.0 } } else { Stance::Roof { from_eave_m: at.1 } },
            worker: Worker { mass_kg: worker.0, stature_m: worker.1,
                harness: if worker.2 { HarnessFit::Snug } else { HarnessFit::Loose } },
            anchor: Anchor { kind: AnchorKind::ALL[anchor.0], from_ridge_m: anchor.1, ..Anchor::default() },
            lifeline: Lifeline {
                length_m: rope.0,
                kind: RopeKind::Stated,
                modulus_n: rope.1,
                end: if rope.2 { RopeEnd::Knot } else { RopeEnd::Nothing },
                slack_m: rope.3,
                edge: RopeEdge::Bare,
            },
            grab: RopeGrab { above_dring_m: grab.0,
                arrow: if grab.1 { Arrow::Up } else { Arrow::Down },
                bolt: if grab.2 { Bolt::Tight } else { Bolt::Loose },
                latch: if grab.3 { Latch::Closed } else { Latch::Open } },
            lanyard: Lanyard { length_m: lanyard.0, clipped: lanyard.2,
                absorber: lanyard.1.map(|a| Absorber { class: AbsorberClass::ALL[a.2], deploy_force_n: a.0, max_extension_m: a.1 }) },
            weather: Weather::ALL[weather],
            ..Scenario::default()
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 2000, failure_persistence: None, ..ProptestConfig::default() })]

    /// Whatever the numbers are, nothing panics, and what is not finite is named.
    #[test]
    fn problems_never_panics(values in prop::collection::vec(any_f64(), Field::ALL.len()), roof: bool, deck: bool) {
        let mut s = Scenario::default();
        if roof { s.stance = Stance::Roof { from_eave_m: 1.0 } }
        if deck { s.house.below = ORDINARY_OBSTACLE }
        let mut odd = false;
        for (f, v) in Field::ALL.iter().zip(values) {
            if f.get(&s).is_some() {
                odd |= !v.is_finite();
                f.set(&mut s, v);
            }
        }
        let found = s.problems();
        prop_assert!(!odd || found.iter().any(|p| p.code == ProblemCode::NotFinite));
        prop_assert_eq!(s.set_up().is_ok(), found.is_empty());
    }

    /// Peak force of a point mass never falls when mass or free fall grows, all else equal.
    #[test]
    fn heavier_or_further_is_never_softer(m in 50.0..140.0f64, h in 0.1..3.0f64, l in 1.0..12.0f64, dm in 0.5..20.0f64, dh in 0.02..0.5f64) {
        let peak = |m: f64, h: f64| {
            let line = LineParams { lanyard_length_m: 4.0, ..LineParams::ideal(30_000.0, l) };
            let mut run = Run::point_mass(m, h, line, l);
            while run.time_s() < 1.8 && !run.step() {}
            run.finish().peak_force_n
        };
        let base = peak(m, h);
        // Half a thousandth is the stepper's own error.
        prop_assert!(peak(m + dm, h) >= base * 0.9995);
        prop_assert!(peak(m, h + dh) >= base * 0.9995);
    }

    /// Where the scene stands does not matter: the same fall a long way off, within what single
    /// precision leaves there.
    #[test]
    fn a_fall_is_the_same_elsewhere(m in 50.0..140.0f64, h in 0.2..3.0f64, l in 1.0..10.0f64, side in 0.0..1.5f64,
                                    x in -20.0..20.0f64, y in -20.0..20.0f64) {
        let fall = |x: f64, y: f64| {
            let params = LineParams { lanyard_length_m: 1.0, ..LineParams::ideal(30_000.0, l) };
            let at = p(x + side, y + h - l - 1.0);
            let mut run = Run::point_mass_at(m, p(x, y), &[], at, params, l);
            while run.time_s() < 1.6 && !run.step() {}
            let t = run.finish();
            (t.peak_force_n, t.total_fall_m)
        };
        let (here, there) = (fall(0.0, 0.0), fall(x, y));
        prop_assert!((there.0 / here.0 - 1.0).abs() < 2e-3, "{here:?} {there:?}");
        prop_assert!((there.1 - here.1).abs() < 2e-3, "{here:?} {there:?}");
    }

    /// Energy of a point mass on a line with absorber, damping and a slipping grab balances.
    #[test]
    fn energy_balances_on_a_point_mass(m in 50.0..140.0f64, h in 0.2..3.6f64, l in 1.0..12.0f64, f in 2e3..6e3f64,
                                       grip in 1.5e3..9e3f64, zeta in 0.0..0.1f64) {
        let mut params = LineParams::ideal(30_000.0, l + 30.0);
        params.lanyard_length_m = 4.0;
        params.absorber = Some(AbsorberParams::steady(f, 0.8));
        params.grab.grip_n = grip.max(1.2 * m * G_M_S2);
        params.relaxation_s = zeta * 0.1;
        let mut run = Run::point_mass(m, h, params, l);
        while run.time_s() < 2.0 && !run.step() {}
        let t = run.finish();
        prop_assert!(t.energy_residual < 0.01, "{}", t.energy_residual);
        prop_assert!(t.samples.iter().all(|s| s.force_n >= 0.0));
    }

    /// Momentum: free of contacts and line, the worker's centre of mass falls as a stone, whatever
    /// joints and muscles do.
    #[test]
    fn joints_do_not_push_the_whole_worker(mass in 50.0..140.0f64, stature in 1.5..2.0f64, steps in 20usize..200) {
        let mut s = Scenario { worker: Worker { mass_kg: mass, stature_m: stature, ..Worker::default() }, ..Scenario::default() };
        s.lanyard.length_m = 1.6;
        let mut w = World::worker(&s.set_up().expect("possible"), false, Start::default(), DT_S);
        let before = w.momentum();
        let steps = steps.min(120);
        for _ in 0..steps { w.step(p(0.0, 0.0), DT_S); }
        let after = w.momentum();
        let fell = -mass * G_M_S2 * DT_S * steps as f64;
        prop_assert!((after.y - before.y - fell).abs() < 1e-3 * fell.abs(), "{} {}", after.y - before.y, fell);
        prop_assert!((after.x - before.x).abs() < 1e-2 * mass);
    }
}

/// Two thousand random set-ups that can be built, each after `mend`. What the law says of one is checked by `law`;
/// what it returns is counted.
fn over_set_ups(
    mend: fn(&mut Scenario),
    law: impl Fn(&Scenario) -> Result<bool, TestCaseError>,
) -> (u32, u32) {
    let config = ProptestConfig {
        cases: 2000,
        failure_persistence: None,
        max_global_rejects: 400_000,
        ..ProptestConfig::default()
    };
    let (counted, all) = (Cell::new(0), Cell::new(0));
    let run = TestRunner::new(config).run(&set_up(), |mut s| {
        mend(&mut s);
        prop_assume!(s.problems().is_empty());
        all.set(all.get() + 1);
        counted.set(counted.get() + u32::from(law(&s)?));
        Ok(())
    });
    assert!(run.is_ok(), "{}", run.expect_err("failed"));
    (counted.get(), all.get())
}

/// Any set-up without problems: the run ends, every number is finite, the line never pushes, pulls
/// only when it is taut, and (but for a few that are not graded) no energy comes from nowhere.
#[test]
fn every_possible_fall_ends_in_finite_numbers() {
    let (sound, all) = over_set_ups(
        |_| {},
        |s| {
            let g = Geometry::of(s).expect("no problems");
            let t = settled_trace(&s.set_up().expect("possible"), LineParams::of(s));
            prop_assert!(t.duration_s() <= 8.0 + DT_S);
            for q in &t.samples {
                prop_assert!(q.force_n.is_finite() && q.force_n >= 0.0 && q.anchor_n >= 0.0);
                prop_assert!(
                    q.poses
                        .iter()
                        .all(|p| p.at.x.is_finite() && p.at.y.is_finite() && p.angle_rad.is_finite())
                );
                // A sample holds the largest force of four steps, in which the D-ring moves 6 cm at most.
                let slack_m =
                    q.grab_rope_m + q.below_grab_m - path_length(&taut_path(g.anchor, &g.corners, q.dring));
                prop_assert!(slack_m < 0.06 || q.force_n == 0.0, "{} N at {slack_m} m of slack", q.force_n);
            }
            prop_assert!(t.joint_gap_m < 1e-6, "joint gap {}", t.joint_gap_m);
            prop_assert!(t.energy_residual.is_finite());
            let l = t.ledger.line;
            prop_assert!(
                [l.elastic_j, l.absorber_j, l.grab_j, l.harness_j, l.edge_j, l.lost_j]
                    .iter()
                    .all(|e| *e >= 0.0)
            );
            Ok(t.is_sound())
        },
    );
    assert!(f64::from(sound) >= 0.97 * f64::from(all), "{sound} of {all} pass their own energy check");
}

/// A stronger anchor never turns a hold into a failure; and the same set-up gives the same bits.
#[test]
fn a_stronger_anchor_never_lets_go_of_what_a_weaker_one_held() {
    let (held, all) = over_set_ups(
        |_| {},
        |s| {
            let line = LineParams::of(s);
            let before = settled_trace(&s.set_up().expect("possible"), line);
            let line = LineParams { anchor_capacity_n: 1.3 * line.anchor_capacity_n, ..line };
            let after = settled_trace(&s.set_up().expect("possible"), line);
            let lets_go = |t: &Trace| t.time_of(EventKind::AnchorFails).is_some();
            prop_assert!(lets_go(&before) || !lets_go(&after));
            if !lets_go(&before) {
                prop_assert_eq!(before.hash(), after.hash());
            }
            Ok(!lets_go(&before))
        },
    );
    assert!(held > all / 3 && held < all, "{held} of {all} anchors held");
}

/// Raising the grab never lengthens the free fall from a ladder. (On a roof the line may pull a
/// little, go slack again over the eave and only then hold: what counts as free is then no longer a
/// matter of the grab alone.)
#[test]
fn raising_the_grab_never_lengthens_the_free_fall() {
    let mend = |s: &mut Scenario| {
        if matches!(s.stance, Stance::Roof { .. }) {
            s.stance = Stance::Ladder { standing_height_m: (s.house.eave_height_m - 1.8).max(0.4) };
        }
        s.anchor.kind = AnchorKind::RatedEye;
        s.grab = RopeGrab {
            above_dring_m: s.grab.above_dring_m.min(s.lanyard.length_m - 0.2),
            ..RopeGrab::default()
        };
    };
    let (both, all) = over_set_ups(mend, |s| {
        let mut higher = s.clone();
        higher.grab.above_dring_m += 0.15;
        if !higher.problems().is_empty() {
            return Ok(false);
        }
        let run = |s: &Scenario| settled_trace(&s.set_up().expect("possible"), LineParams::of(s));
        let (low, high) = (run(s), run(&higher));
        // Free fall is told where something held.
        if low.outcome != Outcome::Stopped || high.outcome != Outcome::Stopped {
            return Ok(false);
        }
        prop_assert!(
            high.free_fall_m <= low.free_fall_m + 0.02,
            "{} then {}",
            low.free_fall_m,
            high.free_fall_m
        );
        Ok(true)
    });
    assert!(both > all / 4, "{both} of {all} compared");
}
