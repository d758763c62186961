//! Native speed of whole falls: `cargo xtask bench`.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used)]

use shortfall::physics::simulate;
use shortfall::scenario::*;

fn main() {
    if std::env::args().any(|a| a == "--bodies") {
        println!("{}", bodies());
        return;
    }
    divan::main();
}

/// The default worker's bodies and hinges as JSON, SI, for `rivals.mjs`.
fn bodies() -> serde_json::Value {
    use shortfall::geometry::body::{capsules, dring_on_torso, hinges, standing};
    let s = Scenario::default();
    let st = s.worker.stature_m;
    let pose = standing(shortfall::geometry::p(0.0, 0.0), st, &s.stance, 0.0);
    let bodies: Vec<_> = capsules(s.worker.mass_kg, st)
        .iter()
        .zip(pose)
        .map(|(c, q)| {
            serde_json::json!({ "mass": c.mass_kg, "inertia": c.inertia_kg_m2, "radius": c.radius_m,
                "x": q.at.x, "y": q.at.y, "angle": q.angle_rad })
        })
        .collect();
    let hinges: Vec<_> = hinges(st)
        .iter()
        .map(|h| {
            serde_json::json!({ "parent": h.parent as usize, "child": h.child as usize, "limits": h.limits_rad,
                "on_parent": [h.on_parent.x, h.on_parent.y], "on_child": [h.on_child.x, h.on_child.y] })
        })
        .collect();
    let d = dring_on_torso(st);
    serde_json::json!({ "bodies": bodies, "hinges": hinges, "dring": [d.x, d.y] })
}

fn scenes(name: &str) -> Scenario {
    let mut s = Scenario::default();
    match name {
        "low grab" => s.grab.above_dring_m = -0.4,
        "reversed" => s.grab.arrow = Arrow::Down,
        "off the roof" => s.stance = Stance::Roof { from_eave_m: 1.5 },
        _ => {}
    }
    s
}

#[divan::bench(args = ["plain stop", "low grab", "reversed", "off the roof"], sample_count = 20)]
fn whole_fall(bencher: divan::Bencher, name: &str) {
    let s = scenes(name);
    bencher.bench(|| simulate(&divan::black_box(&s).set_up().expect("possible")));
}

/// Point mass on the line: what the line itself costs.
#[divan::bench(sample_count = 20)]
fn point_mass_3_s(bencher: divan::Bencher) {
    use shortfall::physics::{Run, equipment::LineParams};
    bencher.bench(|| {
        let mut run = Run::point_mass(100.0, 1.8, LineParams::ideal(30_000.0, 8.0), 8.0);
        while run.time_s() < 3.0 && !run.step() {}
        run.finish().peak_force_n
    });
}
