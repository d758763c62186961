use shortfall::{physics::*, scenario::*};
fn show(name: &str, s: &Scenario) {
    let t0 = std::time::Instant::now();
    let Some(t) = simulate(s) else {
        println!("{name}: {:?}", s.problems());
        return;
    };
    let dt = t0.elapsed();
    println!(
        "== {name} {:?} peak {:.0} anchor {:.0} ff {:.3} total {:.3} abs {:.3} stretch {:.3} slip {:.3} low {:.2} margin {:?} resid {:.5} gap {:.5} dur {:.2} in {:?}",
        t.outcome,
        t.peak_force_n,
        t.anchor_peak_n,
        t.free_fall_m,
        t.total_fall_m,
        t.absorber_extension_m,
        t.rope_stretch_m,
        t.grab_slip_m,
        t.lowest_point_m,
        t.clearance_margin_m,
        t.energy_residual,
        t.joint_gap_m,
        t.duration_s(),
        dt
    );
    println!(
        "   {:?}",
        t.events.iter().map(|e| format!("{:?}@{:.2}", e.kind, e.time_s)).collect::<Vec<_>>().join(" ")
    );
    println!(
        "   {:?} ledger {:?}",
        t.impacts
            .iter()
            .map(|i| format!("{:?} {:.2} m/s @{:.2}", i.what, i.speed_m_s, i.time_s))
            .collect::<Vec<_>>(),
        t.ledger
    );
}
fn main() {
    let s = Scenario::default();
    show("default", &s);
    let mut a = s.clone();
    a.grab.arrow = Arrow::Down;
    show("reversed", &a);
    a.lifeline.length_m = 7.0;
    a.lifeline.end_knot = false;
    show("reversed, short no knot", &a);
    a.lifeline.end_knot = true;
    show("reversed, short, knot", &a);
    let mut a = s.clone();
    a.grab.above_dring_m = -0.6;
    show("low", &a);
    a.lanyard.absorber = None;
    show("low, no absorber", &a);
    let mut a = s.clone();
    a.grab.bolt = Bolt::Loose;
    a.grab.above_dring_m = -0.6;
    show("loose", &a);
    let mut a = s.clone();
    a.grab.latch = Latch::Open;
    show("open", &a);
    let mut a = s.clone();
    a.anchor.kind = AnchorKind::VentPipe;
    show("vent", &a);
    let mut a = s.clone();
    a.stance = Stance::Roof { from_eave_m: 1.5 };
    show("roof", &a);
    a.house.roof_pitch_rad = 0.15;
    show("roof low", &a);
    let mut a = s.clone();
    a.house.below = ORDINARY_OBSTACLE;
    a.ladder.foot_distance_m = 1.6;
    show("deck", &a);
    let mut a = s.clone();
    a.stance = Stance::Ladder { standing_height_m: 1.2 };
    show("low stand", &a);
    a.grab.above_dring_m = -0.7;
    show("low stand, low grab", &a);
    let mut a = s.clone();
    a.anchor.from_ridge_m = -1.5;
    show("far", &a);
}
