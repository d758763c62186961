//! The picture against the house that a fall meets: nothing that is drawn passes through roof or wall.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used)]

use shortfall::geometry::{Geometry, P};
use shortfall::physics::simulate;
use shortfall::practice::houses::HouseKind;
use shortfall::scenario::{AnchorKind, Arrow, Latch, Scenario, Stance};
use shortfall::scene::worker::Bones;
use shortfall::scene::{Sag, Scene, at};

/// Numbers from 0 to 1 from a seed (the constants of Knuth's MMIX).
struct Draw(u64);

impl Draw {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) as f64 / (1u64 << 31) as f64
    }
    fn between(&mut self, a: f64, b: f64) -> f64 {
        a + (b - a) * self.next()
    }
}

fn drawn(seed: u64) -> Scenario {
    let mut d = Draw(seed * 7919 + 17);
    d.next();
    let mut s = Scenario::default();
    HouseKind::ALL[(seed % 5) as usize].move_in(&mut s);
    if d.next() < 0.4 {
        s.stance = Stance::Roof { from_eave_m: d.between(0.4, 2.5) };
    }
    s.worker.stature_m = d.between(1.55, 1.95);
    s.worker.mass_kg = d.between(55.0, 110.0);
    s.lanyard.length_m = d.between(0.5, 1.4);
    s.grab.above_dring_m = d.between(-0.9, 0.9) * s.lanyard.length_m;
    if d.next() < 0.15 {
        s.grab.arrow = Arrow::Down;
    }
    if d.next() < 0.15 {
        s.grab.latch = Latch::Open;
    }
    if d.next() < 0.3 {
        s.lifeline.slack_m = d.between(0.1, 0.8);
    }
    if d.next() < 0.3 {
        s.anchor.kind = AnchorKind::ALL[(d.next() * 8.0) as usize % 8];
    }
    s
}

fn curve(s: &Sag) -> Vec<P> {
    (0..=12)
        .map(|i| {
            let k = f64::from(i) / 12.0;
            s.from.lerp(s.via, k).lerp(s.via.lerp(s.to, k), k)
        })
        .collect()
}

fn along(points: &[P]) -> Vec<P> {
    points
        .windows(2)
        .flat_map(|w| (0..=12).map(|i| w[0].lerp(w[1], f64::from(i) / 12.0)).collect::<Vec<_>>())
        .collect()
}

/// How deep the deepest of some points is in roof or wall on the worker's side, m.
fn deepest(g: &Geometry, points: &[P]) -> f64 {
    points.iter().filter(|q| q.x > g.ridge.x).fold(f64::NEG_INFINITY, |a, q| a.max(g.depth_in_house_m(*q)))
}

fn lines(q: &Scene) -> Vec<P> {
    let mut all = along(&q.rope);
    all.extend(curve(&q.rope_to_grab));
    all.extend(along(&q.tail));
    all.extend(along(&q.lanyard));
    all.extend(curve(&q.lanyard_end));
    all
}

/// A hundred falls from the five houses, ten moments each. Rope and lanyard: 3 cm, which a rope is thick with its
/// casing. Joints: 8 cm, since flesh gives where the body lies on an edge (its contact is soft, and a joint lies a
/// limb's radius inside the body).
#[test]
fn nothing_passes_through_roof_or_wall_in_a_hundred_falls() {
    let (mut falls, mut seed) = (0, 0);
    while falls < 100 {
        seed += 1;
        let s = drawn(seed);
        let Ok(set_up) = s.set_up() else { continue };
        falls += 1;
        let g = set_up.geometry();
        let t = simulate(&set_up);
        for k in 0..=10 {
            let time_s = t.duration_s().min(3.0) * f64::from(k) / 10.0;
            let q = at(&s, g, &t, time_s).expect("a moment");
            let deep_m = deepest(g, &lines(&q));
            assert!(
                deep_m < 0.03,
                "seed {seed} at {time_s:.2} s: rope or lanyard {deep_m:.3} m deep, {:?}",
                s.stance
            );
            let b = Bones::of(&q.limbs).expect("whole").beside(g);
            let mut joints = along(&[b.neck, b.waist, b.hip]);
            joints.extend(along(&b.near_leg));
            joints.extend(along(&b.far_leg));
            joints.extend(b.arm_round(g));
            let deep_m = deepest(g, &joints);
            assert!(deep_m < 0.08, "seed {seed} at {time_s:.2} s: a limb {deep_m:.3} m deep, {:?}", s.stance);
        }
    }
}
