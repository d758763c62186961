//! Today's set-up as words, each with the card that it opens.

use crate::rules::place;
use crate::scenario::{HarnessFit, Scenario};
use crate::texts::say::Reader;
use crate::texts::{Key, Stage as S};
use crate::units::{Quantity, Rounding};

/// The harness's card, as counted in the form.
pub const HARNESS_CARD: usize = 5;
/// The gear's.
pub const GEAR_CARD: usize = 6;

/// The words of the sentence and the number of the card that each opens; 0 is the page's own settings.
pub fn words(r: Reader, s: &Scenario) -> Vec<(String, usize)> {
    let near = |q: Quantity, x: f64| r.q(q, x, Rounding::Nearest);
    let place_name = place(&s.place).map_or(String::new(), |p| r.lang.of(&p.name).to_owned());
    let straps = r.t(if s.worker.harness == HarnessFit::Snug { Key::FitSnug } else { Key::FitLoose });
    let absorber = r.t(if s.lanyard.absorber.is_some() { Key::AbsorberYes } else { Key::AbsorberNo });
    vec![
        (place_name, 0),
        (r.t(s.weather.label()).to_owned(), 10),
        (near(Quantity::Mass, s.worker.mass_kg), HARNESS_CARD),
        (r.f(S::HarnessWord, &[("value", straps)]), HARNESS_CARD),
        (r.f(S::LanyardWord, &[("value", &near(Quantity::Length, s.lanyard.length_m))]), 4),
        (r.f(S::AbsorberWord, &[("value", absorber)]), 4),
        (r.f(S::RescueWord, &[("value", r.t(s.plan.rescue.label()))]), 11),
    ]
}

/// The set-up in three words.
pub fn glance(r: Reader, s: &Scenario) -> String {
    let all = words(r, s);
    all.iter().take(3).map(|w| w.0.as_str()).collect::<Vec<_>>().join(" · ")
}
