//! The same falls at a finer step: what the step does to a number must be less than what is shown.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used)]

use shortfall::draw::Draw;
use shortfall::physics::trace::{Outcome, Trace};
use shortfall::physics::{simulate, simulate_alone, simulate_finer};
use shortfall::scenario::*;

/// A set-up on a roof as crews have them: snug harness, class E4 or E6, grab from a little over the
/// D-ring to a good deal under it.
fn roof_set_up(pick: &mut Draw) -> Scenario {
    let mut between = |least: f64, most: f64| least + (most - least) * pick.unit();
    let mut s = Scenario::default();
    s.house.eave_height_m = between(3.0, 8.0);
    s.house.roof_pitch_rad = between(0.25, 0.8);
    s.house.half_span_m = between(3.0, 6.0);
    s.house.overhang_m = between(0.2, 0.6);
    s.worker.mass_kg = between(50.0, 130.0);
    s.worker.stature_m = between(1.55, 1.95);
    s.stance = Stance::Roof { from_eave_m: between(0.3, 3.0) };
    s.lanyard.length_m = between(0.6, 1.2);
    s.grab.above_dring_m = between(-0.8, 0.5) * s.lanyard.length_m;
    s.lifeline.length_m = 25.0;
    s.lifeline.kind = RopeKind::Stated;
    s.lifeline.modulus_n = between(30_000.0, 100_000.0);
    s.anchor.kind = AnchorKind::RatedEye;
    s.ladder.length_m = 9.0;
    s.ladder.foot_distance_m = 2.0;
    if let (Some(a), true) = (&mut s.lanyard.absorber, between(0.0, 1.0) < 0.5) {
        a.class = AbsorberClass::E6;
    }
    s
}

fn many(count: usize) -> Vec<Scenario> {
    let mut pick = Draw::with_seed(13);
    let mut out = Vec::new();
    while out.len() < count {
        let s = roof_set_up(&mut pick);
        if s.problems().is_empty() {
            out.push(s);
        }
    }
    out
}

fn off(a: f64, b: f64) -> f64 {
    (a - b).abs() / b.max(600.0)
}

fn at(sorted: &[f64], share: f64) -> f64 {
    sorted[((sorted.len() - 1) as f64 * share).round() as usize]
}

/// Runs everything on two threads.
fn over<T: Send>(all: &[Scenario], ask: fn(&Scenario) -> T) -> Vec<T> {
    let some = |part: &[Scenario]| -> Vec<T> { part.iter().map(ask).collect() };
    let (first, second) = all.split_at(all.len() / 2);
    std::thread::scope(|scope| {
        let rest = scope.spawn(|| some(second));
        let mut out = some(first);
        out.extend(rest.join().expect("runs"));
        out
    })
}

/// A bug: on roofs the step decided the peak (1 % in the middle, 16 % in one of twenty, 122 % at worst), and
/// 7 % failed their own energy check. Steps four times as fine are the second way.
#[test]
fn a_fall_from_a_roof_does_not_depend_on_the_step() {
    let got = over(&many(90), |s| {
        (simulate_alone(&s.set_up().expect("possible")), simulate_finer(&s.set_up().expect("possible"), 4))
    });
    assert!(got.iter().all(|(a, b)| a.is_sound() && b.is_sound()));
    assert!(got.iter().all(|(a, b)| a.outcome == b.outcome));
    let sorted = |f: fn(&(Trace, Trace)) -> f64| {
        let mut all: Vec<f64> = got.iter().map(f).collect();
        all.sort_by(f64::total_cmp);
        all
    };
    let force = sorted(|(a, b)| off(a.peak_force_n, b.peak_force_n));
    assert!(at(&force, 0.5) < 0.002 && at(&force, 0.95) < 0.025, "{force:?}");
    let room =
        sorted(|(a, b)| (a.clearance_margin_m.unwrap_or(0.0) - b.clearance_margin_m.unwrap_or(0.0)).abs());
    assert!(at(&room, 0.5) < 0.002 && at(&room, 0.95) < 0.02, "{room:?}");
}

/// A set-up on a ladder as crews have them, and worse.
fn ladder_set_up(pick: &mut Draw) -> Scenario {
    let mut s = roof_set_up(pick);
    let mut between = |least: f64, most: f64| least + (most - least) * pick.unit();
    s.stance = Stance::Ladder { standing_height_m: between(1.5, 5.5) };
    s.ladder.length_m = 8.0;
    s.ladder.foot_distance_m = between(1.2, 2.2);
    s.lifeline.slack_m = between(-0.5, 0.5).max(0.0);
    s
}

/// A bug: from a ladder the step decided the peak by more than 0.7 % in one of ten falls and the blow against it by
/// more than 1 m/s in one of twenty, since rigid contacts did. Steps eight times as fine are the second way.
#[test]
fn a_fall_from_a_ladder_does_not_depend_on_the_step() {
    let mut pick = Draw::with_seed(21);
    let mut all = Vec::new();
    while all.len() < 80 {
        let s = ladder_set_up(&mut pick);
        if s.problems().is_empty() {
            all.push(s);
        }
    }
    let got = over(&all, |s| {
        (simulate_alone(&s.set_up().expect("possible")), simulate_finer(&s.set_up().expect("possible"), 8))
    });
    assert!(got.iter().all(|(a, b)| a.is_sound() && b.is_sound() && a.outcome == b.outcome));
    let sorted = |f: fn(&(Trace, Trace)) -> Option<f64>| {
        let mut all: Vec<f64> = got.iter().filter_map(f).collect();
        all.sort_by(f64::total_cmp);
        all
    };
    let force = sorted(|(a, b)| Some(off(a.peak_force_n, b.peak_force_n)));
    assert!(at(&force, 0.5) < 0.001 && at(&force, 0.95) < 0.005, "{force:?}");
    let room = sorted(|(a, b)| Some((a.clearance_margin_m? - b.clearance_margin_m?).abs()));
    assert!(room.len() > 40 && at(&room, 0.5) < 0.0005 && at(&room, 0.95) < 0.002, "{room:?}");
    let hardest = |t: &Trace| t.impacts.iter().map(|i| i.speed_m_s).fold(0.0, f64::max);
    let mut blow: Vec<f64> = got.iter().map(|(a, b)| (hardest(a) - hardest(b)).abs()).collect();
    blow.sort_by(f64::total_cmp);
    assert!(at(&blow, 0.5) < 0.02 && at(&blow, 0.95) < 0.15, "{blow:?}");
}

/// A bug: ten grams more changed the peak by over 10 % in one of twenty falls from a roof.
#[test]
fn ten_grams_more_are_ten_grams() {
    let mut force = over(&many(90), |s| {
        let mut heavier = s.clone();
        heavier.worker.mass_kg += 0.01;
        let (a, b) = (
            simulate_alone(&s.set_up().expect("possible")),
            simulate_alone(&heavier.set_up().expect("possible")),
        );
        off(a.peak_force_n, b.peak_force_n)
    });
    force.sort_by(f64::total_cmp);
    assert!(at(&force, 0.5) < 0.002 && at(&force, 0.95) < 0.02 && at(&force, 1.0) < 0.1, "{force:?}");
}

/// What is told of a fall holds for falls that nobody could tell from it: 7 g and 0.3 mm, not among the
/// neighbours that were asked.
#[test]
fn another_neighbour_lies_within_the_span_that_is_told() {
    let outside = over(&many(40), |s| {
        let t = simulate(&s.set_up().expect("possible"));
        let n = t.neighbours.expect("from a roof");
        let mut other = s.clone();
        other.worker.mass_kg += 0.007;
        if let Stance::Roof { from_eave_m } = &mut other.stance {
            *from_eave_m -= 0.000_3;
        }
        let o = simulate_alone(&other.set_up().expect("possible"));
        let width_n = n.peak_force_n.width().max(0.01 * t.peak_force_n);
        let force = (n.peak_force_n.low - width_n..=n.peak_force_n.high + width_n).contains(&o.peak_force_n);
        // The worse end is judged, never the better.
        assert!(t.judged().peak_force_n >= n.peak_force_n.high && t.judged().free_fall_m >= t.free_fall_m);
        usize::from(!force)
    });
    assert!(outside.iter().sum::<usize>() <= 2, "{outside:?}");
}

/// Laws over roofs as over ladders, within the span of the neighbours: a heavier worker, a further free fall
/// and a stiffer rope pull no less; a higher eave leaves no less room.
#[test]
fn laws_hold_over_roofs_within_the_span() {
    type Law = (fn(&mut Scenario), fn(&Trace) -> f64);
    let laws: [Law; 4] = [
        (|s| s.worker.mass_kg *= 1.15, |t| t.peak_force_n),
        (|s| s.lifeline.slack_m += 0.4, |t| t.free_fall_m),
        (|s| s.lifeline.modulus_n *= 1.5, |t| t.peak_force_n),
        (|s| s.house.eave_height_m += 1.0, |t| t.clearance_margin_m.unwrap_or(0.0)),
    ];
    for (i, (more, figure)) in laws.into_iter().enumerate() {
        let mut broken = 0;
        for s in many(24) {
            let mut after = s.clone();
            more(&mut after);
            if !after.problems().is_empty() {
                continue;
            }
            let (a, b) = (
                simulate_alone(&s.set_up().expect("possible")),
                simulate_alone(&after.set_up().expect("possible")),
            );
            if a.outcome != Outcome::Stopped || b.outcome != Outcome::Stopped || a.peak_force_n < 650.0 {
                continue;
            }
            broken += usize::from(figure(&b) < 0.95 * figure(&a));
        }
        // Another tumble may come down softer: one in ten.
        assert!(broken <= 2, "law {i}: {broken}");
    }
}
