//! Published drops and figures, each beside what this program gives for the same thing.
//!
//! The rows are data (`tests/published.json`); the test command computes every one again. Where a source
//! was seen only in an abstract or an extract, the row says so.

use crate::physics::Run;
use crate::physics::equipment::{
    ABSORBER_SHARE_MIDDLE, AbsorberParams, GRAB_BITE_M, GRAB_DEAD_TRAVEL_M, GRAB_DRAG_N, GRAB_GRIP_N,
    GrabParams, LineParams, class_force_n,
};
use crate::rules::Bilingual;
use crate::scenario::AbsorberClass;
use crate::units::Quantity;
use serde::{Deserialize, Serialize};

/// A rigid mass that drops on a line, with nothing to strike: what test houses drop.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Drop {
    /// Mass, kg.
    pub mass_kg: f64,
    /// Free fall before the line is taut, m.
    pub free_fall_m: f64,
    /// Rope between anchor and grab (or link), m.
    pub rope_m: f64,
    /// Force per unit strain of it, N.
    pub rope_modulus_n: f64,
    /// Link between rope and mass, m.
    #[serde(default)]
    pub link_m: f64,
    /// Absorber in it.
    #[serde(default)]
    pub absorber: Option<AbsorberClass>,
    /// Most that the absorber can tear out, m.
    #[serde(default)]
    pub max_extension_m: f64,
    /// A rope grab between rope and link.
    #[serde(default)]
    pub grab: bool,
}

/// What such a drop gives.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct DropOutcome {
    /// Largest force on the mass, N.
    pub peak_force_n: f64,
    /// From release to the lowest point, m.
    pub total_fall_m: f64,
    /// Absorber extension, m.
    pub absorber_extension_m: f64,
    /// Movement of the grab, m.
    pub grab_slip_m: f64,
    /// Largest stretch of the rope, m.
    pub rope_stretch_m: f64,
    /// Movement of the grab, the rope's stretch and the absorber together, as EN 353-2 counts it, m.
    pub arrest_m: f64,
}

/// Why a drop is refused.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OutOfRange(pub &'static str);

impl Drop {
    /// Whether every size is one that can be dropped.
    ///
    /// # Errors
    /// The first that is not.
    pub fn check(&self) -> Result<(), OutOfRange> {
        let within = |x: f64, least: f64, most: f64| (least..=most).contains(&x);
        let torn = self.absorber.is_none() || within(self.max_extension_m, 0.05, 5.0);
        [
            (within(self.mass_kg, 1.0, 1_000.0), "mass_kg: 1 to 1000"),
            (within(self.rope_m, 0.05, 100.0), "rope_m: 0.05 to 100"),
            (within(self.rope_modulus_n, 1e3, 5e6), "rope_modulus_n: 1000 to 5000000"),
            (within(self.link_m, 0.0, 5.0), "link_m: 0 to 5"),
            (
                within(self.free_fall_m, 0.0, 2.0 * (self.rope_m + self.link_m)),
                "free_fall_m: 0 to twice rope and link",
            ),
            (torn, "max_extension_m: 0.05 to 5 beside an absorber"),
            (self.absorber != Some(AbsorberClass::Stated), "absorber: e4 or e6"),
        ]
        .into_iter()
        .find(|q| !q.0)
        .map_or(Ok(()), |q| Err(OutOfRange(q.1)))
    }

    /// Drops it.
    pub fn run(&self) -> DropOutcome {
        let mut line = LineParams::ideal(self.rope_modulus_n, self.rope_m + 5.0);
        line.lanyard_length_m = self.link_m;
        line.absorber = self
            .absorber
            .and_then(class_force_n)
            .map(|n| AbsorberParams::of_class(n, ABSORBER_SHARE_MIDDLE, self.max_extension_m));
        if self.grab {
            line.grab = GrabParams {
                drag_n: GRAB_DRAG_N,
                grip_n: GRAB_GRIP_N,
                dead_travel_m: GRAB_DEAD_TRAVEL_M,
                bite_m: GRAB_BITE_M,
                release_slip_m: None,
                locks: true,
            };
        }
        let mut run = Run::point_mass(self.mass_kg, self.free_fall_m, line, self.rope_m);
        while run.time_s() < 3.0 && !run.step() {}
        let t = run.finish();
        DropOutcome {
            peak_force_n: t.peak_force_n,
            total_fall_m: t.total_fall_m,
            absorber_extension_m: t.absorber_extension_m,
            grab_slip_m: t.grab_slip_m,
            rope_stretch_m: t.rope_stretch_m,
            arrest_m: t.grab_slip_m + t.rope_stretch_m + t.absorber_extension_m,
        }
    }

    /// The least mass, kg, at which the absorber is torn to its end in this drop, to 0.1 kg.
    pub fn mass_at_the_end_kg(&self) -> f64 {
        let torn = |mass_kg: f64| {
            Drop { mass_kg, ..*self }.run().absorber_extension_m >= self.max_extension_m - 1e-6
        };
        let (mut low, mut high) = (20.0, 300.0);
        while high - low > 0.1 {
            let middle = 0.5 * (low + high);
            if torn(middle) { high = middle } else { low = middle }
        }
        high
    }
}

/// What a row compares.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Figure {
    /// Largest force of a drop.
    Peak,
    /// Arrest distance of a drop, as EN 353-2 counts it.
    Arrest,
    /// Absorber extension of a drop.
    Tear,
    /// Least mass that tears an absorber to its end.
    EndMass,
    /// Peak on bare steel over that on a person in a harness.
    SteelRatio,
    /// Friction that a ladder's foot needs at 65 degrees over that at 75.
    LadderRatio,
}

impl Figure {
    /// What it measures.
    pub fn quantity(self) -> Quantity {
        match self {
            Figure::Peak => Quantity::Force,
            Figure::Arrest | Figure::Tear => Quantity::Length,
            Figure::EndMass => Quantity::Mass,
            Figure::SteelRatio | Figure::LadderRatio => Quantity::Ratio,
        }
    }
}

/// A published figure and ours.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Row {
    /// Its name in the test.
    pub id: String,
    /// Document.
    pub document: String,
    /// What of it was read: `text`, `abstract`, `summary`, or `memory` for none.
    pub read: String,
    /// The set-up, in words.
    pub what: Bilingual,
    /// What is published, in words.
    pub published: Bilingual,
    /// Least that agrees with it, SI.
    pub low: Option<f64>,
    /// Most that agrees with it, SI.
    pub high: Option<f64>,
    /// What is compared.
    pub figure: Figure,
    /// The drop, where there is one.
    pub drop: Option<Drop>,
    /// Ours, SI, as the test command finds it again.
    pub ours_si: f64,
}

impl Row {
    /// Whether ours lies where the source says; none where it gives no figure to hold ours against.
    pub fn agrees(&self) -> Option<bool> {
        (self.low.is_some() || self.high.is_some()).then(|| {
            self.low.is_none_or(|x| self.ours_si >= x) && self.high.is_none_or(|x| self.ours_si <= x)
        })
    }
}

/// All rows.
pub fn rows() -> Vec<Row> {
    serde_json::from_str(include_str!("../../tests/published.json")).unwrap_or_default()
}
