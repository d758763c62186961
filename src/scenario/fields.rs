//! Every number of a set-up: where it stands, its range, and what is wrong with it.

use super::SCHEMA;
use super::choices::*;
use super::parts::*;
use serde::Serialize;

/// Smallest and largest value a number may have, and the step of a button.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range {
    /// Smallest value, SI.
    pub min: f64,
    /// Largest value, SI.
    pub max: f64,
    /// One press of a button, SI.
    pub step: f64,
}

macro_rules! fields {
    ($($name:ident, $path:literal, $min:expr, $max:expr, $step:expr, $doc:literal,
        get $get:expr, set $set:expr;)*) => {
        /// Each number of a scenario: its name in a file, its range, how to read and write it.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        pub enum Field { $(#[doc = $doc] $name,)* }

        impl Field {
            /// Every number, in the order of the system.
            pub const ALL: &'static [Field] = &[$(Field::$name,)*];

            /// Its dotted name in a scenario file.
            pub fn path(self) -> &'static str {
                match self { $(Field::$name => $path,)* }
            }

            /// Its declared range, SI.
            pub fn range(self) -> Range {
                match self { $(Field::$name => Range { min: $min, max: $max, step: $step },)* }
            }

            /// Its value, or `None` where the set-up has no such number (no absorber, no obstacle).
            pub fn get(self, s: &Scenario) -> Option<f64> {
                match self { $(Field::$name => { let f: fn(&Scenario) -> Option<f64> = $get; f(s) },)* }
            }

            /// Writes `value` (SI) where the set-up has such a number; does nothing elsewhere.
            pub fn set(self, s: &mut Scenario, value: f64) {
                match self { $(Field::$name => { let f: fn(&mut Scenario, f64) = $set; f(s, value) },)* }
            }
        }
    };
}

fields! {
    AnchorFromRidge, "anchor.from_ridge_m", -8.0, 8.0, 0.1, "Anchor's place along the slope, m.",
        get |s| Some(s.anchor.from_ridge_m), set |s, v| s.anchor.from_ridge_m = v;
    StatedBreaking, "anchor.stated_breaking_n", 1_000.0, 60_000.0, 500.0, "Stated breaking load, N.",
        get |s| (s.anchor.kind == AnchorKind::RatedEye).then_some(s.anchor.stated_breaking_n),
        set |s, v| s.anchor.stated_breaking_n = v;
    ChimneyWidth, "anchor.chimney.width_m", 0.2, 1.5, 0.05, "Chimney width, m.",
        get |s| chimney(s).map(|c| c.width_m), set |s, v| s.anchor.chimney.width_m = v;
    ChimneyHeight, "anchor.chimney.height_m", 0.3, 4.0, 0.1, "Chimney height, m.",
        get |s| chimney(s).map(|c| c.height_m), set |s, v| s.anchor.chimney.height_m = v;
    SlingHeight, "anchor.chimney.sling_height_m", 0.05, 2.0, 0.05, "Sling height, m.",
        get |s| chimney(s).map(|c| c.sling_height_m), set |s, v| s.anchor.chimney.sling_height_m = v;
    ChimneyWeight, "anchor.chimney.weight_n_per_m", 500.0, 10_000.0, 100.0, "Chimney weight, N/m.",
        get |s| chimney(s).map(|c| c.weight_n_per_m), set |s, v| s.anchor.chimney.weight_n_per_m = v;
    LifelineLength, "lifeline.length_m", 1.0, 40.0, 0.5, "Lifeline length, m.",
        get |s| Some(s.lifeline.length_m), set |s, v| s.lifeline.length_m = v;
    LifelineSlack, "lifeline.slack_m", 0.0, 2.0, 0.1, "Slack between anchor and grab, m.",
        get |s| Some(s.lifeline.slack_m), set |s, v| s.lifeline.slack_m = v;
    LifelineModulus, "lifeline.modulus_n", 5_000.0, 200_000.0, 1_000.0, "Lifeline modulus, N.",
        get |s| (s.lifeline.kind == RopeKind::Stated).then_some(s.lifeline.modulus_n),
        set |s, v| s.lifeline.modulus_n = v;
    GrabAboveDring, "grab.above_dring_m", -2.0, 2.0, 0.1, "Grab height above the D-ring, m.",
        get |s| Some(s.grab.above_dring_m), set |s, v| s.grab.above_dring_m = v;
    LanyardLength, "lanyard.length_m", 0.3, 2.0, 0.1, "Lanyard length, m.",
        get |s| Some(s.lanyard.length_m), set |s, v| s.lanyard.length_m = v;
    DeployForce, "lanyard.absorber.deploy_force_n", 1_500.0, 8_000.0, 100.0,
        "Absorber deployment force, N.",
        get |s| s.lanyard.absorber.filter(|a| a.class == AbsorberClass::Stated).map(|a| a.deploy_force_n),
        set |s, v| if let Some(a) = &mut s.lanyard.absorber { a.deploy_force_n = v };
    MaxExtension, "lanyard.absorber.max_extension_m", 0.1, 2.0, 0.05, "Absorber extension, m.",
        get |s| s.lanyard.absorber.map(|a| a.max_extension_m),
        set |s, v| if let Some(a) = &mut s.lanyard.absorber { a.max_extension_m = v };
    Mass, "worker.mass_kg", 40.0, 180.0, 1.0, "Mass with clothes and tools, kg.",
        get |s| Some(s.worker.mass_kg), set |s, v| s.worker.mass_kg = v;
    Stature, "worker.stature_m", 1.4, 2.1, 0.01, "Stature, m.",
        get |s| Some(s.worker.stature_m), set |s, v| s.worker.stature_m = v;
    StandingHeight, "stance.ladder.standing_height_m", 0.3, 11.0, 0.1, "Height of the soles, m.",
        get |s| match s.stance { Stance::Ladder { standing_height_m } => Some(standing_height_m), Stance::Roof { .. } => None },
        set |s, v| if let Stance::Ladder { standing_height_m } = &mut s.stance { *standing_height_m = v };
    FromEave, "stance.roof.from_eave_m", 0.1, 12.0, 0.1, "Distance from the eave, m.",
        get |s| match s.stance { Stance::Roof { from_eave_m } => Some(from_eave_m), Stance::Ladder { .. } => None },
        set |s, v| if let Stance::Roof { from_eave_m } = &mut s.stance { *from_eave_m = v };
    LadderFoot, "ladder.foot_distance_m", 0.2, 8.0, 0.1, "Ladder foot distance, m.",
        get |s| Some(s.ladder.foot_distance_m), set |s, v| s.ladder.foot_distance_m = v;
    LadderLength, "ladder.length_m", 2.0, 14.0, 0.1, "Ladder length, m.",
        get |s| Some(s.ladder.length_m), set |s, v| s.ladder.length_m = v;
    ReachOut, "ladder.reach_out_m", 0.0, 1.2, 0.05, "Leaning out beside the ladder, m.",
        get |s| Some(s.ladder.reach_out_m), set |s, v| s.ladder.reach_out_m = v;
    LineHeight, "power_line.height_m", 3.0, 20.0, 0.1, "Height of the wire, m.",
        get |s| s.power_line.map(|l| l.height_m),
        set |s, v| if let Some(l) = &mut s.power_line { l.height_m = v };
    LineDistance, "power_line.distance_m", 0.5, 30.0, 0.1, "Distance of the wire from the wall, m.",
        get |s| s.power_line.map(|l| l.distance_m),
        set |s, v| if let Some(l) = &mut s.power_line { l.distance_m = v };
    EaveHeight, "house.eave_height_m", 2.2, 12.0, 0.1, "Eave height, m.",
        get |s| Some(s.house.eave_height_m), set |s, v| s.house.eave_height_m = v;
    RoofPitch, "house.roof_pitch_rad", 0.05, 1.1, 0.017_453_292_519_943_295, "Roof slope, rad.",
        get |s| Some(s.house.roof_pitch_rad), set |s, v| s.house.roof_pitch_rad = v;
    HalfSpan, "house.half_span_m", 1.0, 10.0, 0.1, "Wall to ridge, m.",
        get |s| Some(s.house.half_span_m), set |s, v| s.house.half_span_m = v;
    Overhang, "house.overhang_m", 0.0, 1.2, 0.05, "Overhang, m.",
        get |s| Some(s.house.overhang_m), set |s, v| s.house.overhang_m = v;
    GroundSlope, "house.ground_slope_rad", 0.0, 0.35, 0.017_453_292_519_943_295, "Fall of the ground, rad.",
        get |s| Some(s.house.ground_slope_rad), set |s, v| s.house.ground_slope_rad = v;
    ObstacleHeight, "house.below.obstacle.height_m", 0.1, 4.0, 0.1, "Obstacle height, m.",
        get |s| obstacle(s).map(|o| o.0),
        set |s, v| if let Below::Obstacle { height_m, .. } = &mut s.house.below { *height_m = v };
    ObstacleDistance, "house.below.obstacle.distance_m", 0.0, 6.0, 0.1, "Obstacle distance, m.",
        get |s| obstacle(s).map(|o| o.1),
        set |s, v| if let Below::Obstacle { distance_m, .. } = &mut s.house.below { *distance_m = v };
    ObstacleWidth, "house.below.obstacle.width_m", 0.1, 6.0, 0.1, "Obstacle width, m.",
        get |s| obstacle(s).map(|o| o.2),
        set |s, v| if let Below::Obstacle { width_m, .. } = &mut s.house.below { *width_m = v };
}

fn chimney(s: &Scenario) -> Option<&Chimney> {
    (s.anchor.kind == AnchorKind::ChimneySling).then_some(&s.anchor.chimney)
}

fn obstacle(s: &Scenario) -> Option<(f64, f64, f64)> {
    match s.house.below {
        Below::BareGround => None,
        Below::Obstacle { height_m, distance_m, width_m } => Some((height_m, distance_m, width_m)),
    }
}

/// What is wrong with a set-up.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum ProblemCode {
    /// Not a finite number.
    NotFinite,
    /// Outside the field's declared range.
    OutOfRange,
    /// Written by a newer version.
    SchemaNewer,
    /// No rules are held for this place.
    PlaceUnknown,
    /// Not a day of the calendar, as 2026-05-01.
    NotADate,
    /// The sling would be above the chimney's top.
    SlingAboveChimney,
    /// The foot is out by more than the ladder is long.
    LadderTooShort,
    /// The soles would be above the ladder's usable part.
    StandsAboveLadder,
    /// The ladder would pass through the obstacle.
    LadderInObstacle,
    /// Part of the worker would be inside the wall or the roof.
    WorkerInHouse,
    /// The soles would be off the roof slope.
    StandsOffRoof,
    /// The anchor would be off the roof.
    AnchorOffRoof,
    /// The worker's slope does not fall away from the anchor: the anchor is below the worker.
    AnchorBelowWorker,
    /// The lanyard does not reach from the grab to the D-ring.
    GrabOutOfReach,
    /// The lifeline ends before the grab.
    LifelineTooShort,
    /// The grab would be at or past the anchor.
    GrabPastAnchor,
}

/// One thing wrong, and the field it is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Problem {
    /// What is wrong.
    pub code: ProblemCode,
    /// Dotted name of the field.
    pub field: &'static str,
}

impl Scenario {
    /// Every number that is not finite or outside its declared range, and a newer schema.
    /// `Scenario::problems` adds what is geometrically impossible.
    pub fn range_problems(&self) -> Vec<Problem> {
        let mut found = Vec::new();
        if self.schema > SCHEMA {
            found.push(Problem { code: ProblemCode::SchemaNewer, field: "schema" });
        }
        let f = &self.anchor.fasteners;
        let most = crate::scenario::MOST_FASTENERS_PER_SIDE;
        if f.per_side == 0 || f.per_side > most {
            found.push(Problem { code: ProblemCode::OutOfRange, field: "anchor.fasteners.per_side" });
        }
        if f.missed > 2 * f.per_side.min(most) {
            found.push(Problem { code: ProblemCode::OutOfRange, field: "anchor.fasteners.missed" });
        }
        if chimney(self).is_some_and(|c| c.sling_height_m > c.height_m) {
            found.push(Problem {
                code: ProblemCode::SlingAboveChimney,
                field: "anchor.chimney.sling_height_m",
            });
        }
        for (text, field) in
            [(&self.plan.trained_on, "plan.trained_on"), (&self.plan.work_on, "plan.work_on")]
        {
            if !text.is_empty() && crate::units::date(text).is_none() {
                found.push(Problem { code: ProblemCode::NotADate, field });
            }
        }
        for &field in Field::ALL {
            let Some(v) = field.get(self) else { continue };
            let r = field.range();
            if !v.is_finite() {
                found.push(Problem { code: ProblemCode::NotFinite, field: field.path() });
            } else if v < r.min - 1e-9 || v > r.max + 1e-9 {
                found.push(Problem { code: ProblemCode::OutOfRange, field: field.path() });
            }
        }
        found
    }
}
