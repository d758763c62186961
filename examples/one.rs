use shortfall::{physics::*, scenario::*};
fn main() {
    let s: Scenario = serde_json::from_reader(std::io::stdin()).unwrap();
    let t = simulate(&s).unwrap();
    println!(
        "{:?} resid {} peak {} anchor {}",
        t.outcome, t.energy_residual, t.peak_force_n, t.anchor_peak_n
    );
    println!("{:?}", t.events);
}
