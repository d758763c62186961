use shortfall::{physics::*, scenario::*};
fn main() {
    let n: u64 = std::env::args().nth(1).map_or(400, |x| x.parse().unwrap());
    let mut seed: u64 = 12345;
    let mut r = || {
        seed ^= seed << 13;
        seed ^= seed >> 7;
        seed ^= seed << 17;
        (seed >> 11) as f64 / (1u64 << 53) as f64
    };
    let (mut ok, mut tried, mut bad, mut steps) = (0, 0, 0, 0.0);
    let mut time = 0.0;
    let mut worst: Vec<f64> = vec![];
    while ok < n {
        tried += 1;
        let mut s = Scenario::default();
        s.house.eave_height_m = 2.4 + 7.0 * r();
        s.house.roof_pitch_rad = 0.1 + 0.8 * r();
        s.house.half_span_m = 2.0 + 5.0 * r();
        s.house.overhang_m = 0.8 * r();
        s.ladder.foot_distance_m = 0.6 + 2.5 * r();
        s.ladder.length_m = 2.5 + 9.0 * r();
        s.stance = if r() < 0.7 {
            Stance::Ladder { standing_height_m: 0.5 + 7.0 * r() }
        } else {
            Stance::Roof { from_eave_m: 0.2 + 4.0 * r() }
        };
        s.worker.mass_kg = 50.0 + 90.0 * r();
        s.worker.stature_m = 1.5 + 0.5 * r();
        if r() < 0.3 {
            s.worker.harness = HarnessFit::Loose
        }
        s.anchor.kind = AnchorKind::ALL[(r() * 6.0) as usize];
        s.anchor.from_ridge_m = -2.0 + 5.0 * r();
        s.lifeline.length_m = 6.0 + 20.0 * r();
        s.lifeline.modulus_n = 20e3 + 30e3 * r();
        s.lifeline.end_knot = r() < 0.6;
        s.lanyard.length_m = 0.4 + 1.4 * r();
        s.grab.above_dring_m = -1.5 + 3.0 * r();
        if r() < 0.3 {
            s.lanyard.absorber = None
        } else if let Some(a) = &mut s.lanyard.absorber {
            a.deploy_force_n = 2000.0 + 4000.0 * r();
            a.max_extension_m = 0.3 + 1.4 * r();
        }
        if r() < 0.3 {
            s.grab.arrow = Arrow::Down
        }
        if r() < 0.3 {
            s.grab.bolt = Bolt::Loose
        }
        if r() < 0.3 {
            s.grab.latch = Latch::Open
        }
        if r() < 0.3 {
            s.house.below =
                Below::Obstacle { height_m: 0.3 + 1.5 * r(), distance_m: 3.0 * r(), width_m: 0.5 + r() }
        }
        let t0 = std::time::Instant::now();
        let Some(t) = simulate(&s) else { continue };
        time += t0.elapsed().as_secs_f64();
        steps += t.duration_s();
        ok += 1;
        worst.push(t.energy_residual);
        let nan =
            t.samples.iter().any(|q| !q.force_n.is_finite() || q.poses.iter().any(|p| !p.at.x.is_finite()));
        if t.energy_residual > 0.01 || t.anchor_peak_n > 25e3 || t.joint_gap_m > 0.003 || nan {
            bad += 1;
            println!(
                "{:?} resid {:.4} peak {:.0} anchor {:.0} gap {:.4} ff {:.2} tot {:.2} {:?}\n  {}",
                t.outcome,
                t.energy_residual,
                t.peak_force_n,
                t.anchor_peak_n,
                t.joint_gap_m,
                t.free_fall_m,
                t.total_fall_m,
                t.impacts.iter().map(|i| i.what).collect::<Vec<_>>(),
                serde_json::to_string(&s).unwrap()
            );
        }
    }
    worst.sort_by(f64::total_cmp);
    println!(
        "{ok} of {tried} ran, {bad} bad; median residual {:.5} p99 {:.5}; {:.1} sim s/s",
        worst[worst.len() / 2],
        worst[worst.len() * 99 / 100],
        steps / time
    );
}
