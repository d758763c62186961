//! Native speed of whole falls: `cargo xtask bench`.

use shortfall::physics::simulate;
use shortfall::scenario::*;

fn main() {
    divan::main();
}

fn scenes(name: &str) -> Scenario {
    let mut s = Scenario::default();
    match name {
        "low grab" => s.grab.above_dring_m = -0.6,
        "reversed" => s.grab.arrow = Arrow::Down,
        "off the roof" => s.stance = Stance::Roof { from_eave_m: 1.5 },
        _ => {}
    }
    s
}

#[divan::bench(args = ["plain stop", "low grab", "reversed", "off the roof"], sample_count = 20)]
fn whole_fall(bencher: divan::Bencher, name: &str) {
    let s = scenes(name);
    bencher.bench(|| simulate(divan::black_box(&s)));
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
