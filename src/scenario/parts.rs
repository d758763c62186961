//! The parts of a set-up, each with what it usually is.

use super::SCHEMA;
use super::choices::*;
use serde::{Deserialize, Serialize};

/// A whole set-up.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "headless", derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct Scenario {
    /// File format number, [`SCHEMA`] or lower.
    pub schema: u32,
    /// Identifier of the place whose rules apply, as in `src/rules/places`.
    pub place: String,
    /// The house in section.
    pub house: House,
    /// The ladder.
    pub ladder: Ladder,
    /// Where the worker stands.
    pub stance: Stance,
    /// The worker and the harness.
    pub worker: Worker,
    /// What the lifeline is tied to.
    pub anchor: Anchor,
    /// The rope.
    pub lifeline: Lifeline,
    /// The clamp on the rope.
    pub grab: RopeGrab,
    /// What joins the grab to the D-ring.
    pub lanyard: Lanyard,
    /// What a look at the gear would show.
    pub gear: Gear,
    /// What was settled before anybody climbed.
    pub plan: Plan,
    /// The weather.
    pub weather: Weather,
    /// The overhead line nearby, if there is one.
    pub power_line: Option<PowerLine>,
}

/// An overhead power line that runs along the wall.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "headless", derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct PowerLine {
    /// Height of its lowest wire above the ground, m.
    pub height_m: f64,
    /// Distance of that wire from the wall face, m.
    pub distance_m: f64,
    /// What its owner says it carries.
    pub voltage: Voltage,
}

/// The house in section: the wall face stands at x = 0, the ground at the wall at y = 0. Heights are
/// counted from the ground at the wall.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "headless", derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct House {
    /// Height of the eave's edge above the ground, m.
    pub eave_height_m: f64,
    /// Roof slope from the horizontal, rad.
    pub roof_pitch_rad: f64,
    /// Horizontal distance from the wall face to the ridge, m.
    pub half_span_m: f64,
    /// Horizontal distance from the wall face to the eave's edge, m.
    pub overhang_m: f64,
    /// How steeply the ground falls away from the wall, rad.
    pub ground_slope_rad: f64,
    /// What stands on the ground below.
    pub below: Below,
}

/// What the worker would land on.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "headless", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Below {
    /// Nothing but the ground.
    BareGround,
    /// A deck, fence or unit beside the wall.
    Obstacle {
        /// Height of its top above the ground, m.
        height_m: f64,
        /// Distance from the wall face to its near side, m.
        distance_m: f64,
        /// Its width away from the wall, m.
        width_m: f64,
    },
}

/// A portable ladder leaning on the eave or, when too short for that, on the wall.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "headless", derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct Ladder {
    /// Horizontal distance from the foot to the plumb line under the top support, m.
    pub foot_distance_m: f64,
    /// Length of the rails, m.
    pub length_m: f64,
    /// Tied or held at the top, so that it neither slides nor tips.
    pub tied: bool,
    /// How far the worker leans out: the body's middle beside the ladder's own, m.
    pub reach_out_m: f64,
}

/// Where the worker stands when the slip comes.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "headless", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Stance {
    /// On a rung.
    Ladder {
        /// Height of the soles above the ground, m.
        standing_height_m: f64,
    },
    /// On the roof slope.
    Roof {
        /// Distance of the soles from the eave's edge, along the slope, m.
        from_eave_m: f64,
    },
}

/// The worker.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "headless", derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct Worker {
    /// Mass with clothes and tools, kg.
    pub mass_kg: f64,
    /// Standing height, m.
    pub stature_m: f64,
    /// How the harness was done up.
    pub harness: HarnessFit,
}

/// The anchor.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "headless", derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct Anchor {
    /// What the lifeline is made fast to.
    pub kind: AnchorKind,
    /// Where it is, m along the slope from the ridge: positive down the worker's slope, negative
    /// down the far one.
    pub from_ridge_m: f64,
    /// What holds a ridge plate.
    pub fasteners: Fasteners,
    /// The chimney a sling goes round.
    pub chimney: Chimney,
    /// Breaking load that the maker of a rated anchor states, N.
    pub stated_breaking_n: f64,
}

/// What holds a ridge plate: the same number on either slope.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "headless", derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct Fasteners {
    /// Number on each slope, 1 to 12.
    pub per_side: u32,
    /// Kind.
    pub kind: FastenerKind,
    /// Wood of the rafters.
    pub species: Species,
    /// Dry or wet.
    pub moisture: Moisture,
    /// How many of them all missed the framing and hold in the sheathing alone.
    pub missed: u32,
}

/// An unreinforced brick chimney above the roof.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "headless", derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct Chimney {
    /// Width along the pull, m.
    pub width_m: f64,
    /// Height above the roof, m.
    pub height_m: f64,
    /// Height of the sling above the roof, m.
    pub sling_height_m: f64,
    /// Weight of a metre of its height, N/m.
    pub weight_n_per_m: f64,
    /// Its joints.
    pub mortar: Mortar,
}

/// What a look at the gear would show.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "headless", derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct Gear {
    /// The lifeline.
    pub rope: RopeState,
    /// The lanyard's connectors.
    pub connector: ConnectorState,
    /// The absorber's pack.
    pub pack: PackState,
    /// The harness webbing.
    pub webbing: WebbingState,
    /// The harness label.
    pub label: LabelState,
}

/// What was settled before anybody climbed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "headless", derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct Plan {
    /// Another method that could be used.
    pub other_method: OtherMethod,
    /// The rescue.
    pub rescue: RescuePlan,
    /// Who chose and set the anchor.
    pub anchor_by: AnchorChosenBy,
    /// Day of the worker's approved training, as 2026-05-01; empty when not told.
    pub trained_on: String,
    /// Day of the work; empty when not told.
    pub work_on: String,
}

/// The vertical lifeline.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "headless", derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct Lifeline {
    /// Length from the anchor to the end, m.
    pub length_m: f64,
    /// Its make. A file that does not say one states a modulus.
    #[serde(default = "stated_rope")]
    pub kind: RopeKind,
    /// Force per unit strain, N; read where the kind is `stated`.
    pub modulus_n: f64,
    /// What is at its lower end. Files before schema 5 say whether there is a knot.
    #[serde(alias = "end_knot", deserialize_with = "rope_end")]
    #[cfg_attr(feature = "headless", schemars(with = "RopeEnd"))]
    pub end: RopeEnd,
    /// Rope that hangs or lies slack between the anchor and the grab, m.
    pub slack_m: f64,
    /// What it runs over at the eave.
    pub edge: RopeEdge,
}

fn stated_rope() -> RopeKind {
    RopeKind::Stated
}

fn rope_end<'d, D: serde::Deserializer<'d>>(d: D) -> Result<RopeEnd, D::Error> {
    #[derive(Deserialize)]
    #[serde(untagged)]
    enum Either {
        Knot(bool),
        End(RopeEnd),
    }
    // The worker's messages name no types: there it is always the newest.
    if !d.is_human_readable() {
        return RopeEnd::deserialize(d);
    }
    Ok(match Either::deserialize(d)? {
        Either::Knot(true) => RopeEnd::Knot,
        Either::Knot(false) => RopeEnd::Nothing,
        Either::End(end) => end,
    })
}

/// The rope grab (the clamp).
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "headless", derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct RopeGrab {
    /// Height above the D-ring, m (on the roof: distance along the rope towards the anchor);
    /// negative is below.
    pub above_dring_m: f64,
    /// Which way its arrow points: up is towards the anchor.
    pub arrow: Arrow,
    /// Its bolt.
    pub bolt: Bolt,
    /// Its latch.
    pub latch: Latch,
}

/// The lanyard.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "headless", derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct Lanyard {
    /// Length with its connectors, absorber packed, m.
    pub length_m: f64,
    /// The energy absorber, if there is one.
    pub absorber: Option<Absorber>,
    /// Clipped to the D-ring.
    pub clipped: bool,
}

fn stated() -> AbsorberClass {
    AbsorberClass::Stated
}

/// An energy absorber: tears until it is spent.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "headless", derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct Absorber {
    /// Its class. A file that does not say one states a force.
    #[serde(default = "stated")]
    pub class: AbsorberClass,
    /// Steady deployment force that its maker states, N; read where the class is `stated`.
    pub deploy_force_n: f64,
    /// Most it can tear out, m.
    pub max_extension_m: f64,
}

impl Default for Scenario {
    fn default() -> Self {
        Scenario {
            schema: SCHEMA,
            place: "on".to_owned(),
            house: House::default(),
            ladder: Ladder::default(),
            stance: Stance::Ladder { standing_height_m: 3.6 },
            worker: Worker::default(),
            anchor: Anchor::default(),
            lifeline: Lifeline::default(),
            grab: RopeGrab::default(),
            lanyard: Lanyard::default(),
            gear: Gear::default(),
            plan: Plan::default(),
            weather: Weather::Dry,
            power_line: None,
        }
    }
}

impl Default for Gear {
    fn default() -> Self {
        Gear {
            rope: RopeState::Sound,
            connector: ConnectorState::Sound,
            pack: PackState::Sound,
            webbing: WebbingState::Sound,
            label: LabelState::Legible,
        }
    }
}

impl Default for Plan {
    fn default() -> Self {
        Plan {
            other_method: OtherMethod::NoneFound,
            rescue: RescuePlan::Written,
            anchor_by: AnchorChosenBy::CompetentPerson,
            trained_on: String::new(),
            work_on: String::new(),
        }
    }
}

impl Default for Fasteners {
    fn default() -> Self {
        // The four of common practice stay far under Ontario's working load; nine meet it on a roof too.
        Fasteners {
            per_side: 9,
            kind: FastenerKind::Nail16d,
            species: Species::SprucePineFir,
            moisture: Moisture::Dry,
            missed: 0,
        }
    }
}

impl Default for Chimney {
    fn default() -> Self {
        // Check 22: 160 lb/ft, 18 in wide, 4 ft 4 in high; the sling a foot up.
        Chimney {
            width_m: 0.457_2,
            height_m: 1.320_7,
            sling_height_m: 0.304_8,
            weight_n_per_m: 2_335.0,
            mortar: Mortar::Sound,
        }
    }
}

impl Default for House {
    fn default() -> Self {
        House {
            eave_height_m: 5.6,
            roof_pitch_rad: 0.463_647_609_000_806_1, // 6 in 12
            half_span_m: 3.6,
            overhang_m: 0.4,
            ground_slope_rad: 0.0,
            below: Below::BareGround,
        }
    }
}

impl Default for Ladder {
    fn default() -> Self {
        Ladder { foot_distance_m: 1.4, length_m: 6.7, tied: true, reach_out_m: 0.0 }
    }
}

impl Default for Worker {
    fn default() -> Self {
        Worker { mass_kg: 85.0, stature_m: 1.75, harness: HarnessFit::Snug }
    }
}

impl Default for PowerLine {
    fn default() -> Self {
        PowerLine { height_m: 7.5, distance_m: 6.0, voltage: Voltage::Unknown }
    }
}

impl Default for Anchor {
    fn default() -> Self {
        Anchor {
            kind: AnchorKind::RidgePlateInFraming,
            from_ridge_m: 0.0,
            fasteners: Fasteners::default(),
            chimney: Chimney::default(),
            // 5,000 lbf, 29 CFR 1926.502(d)(15).
            stated_breaking_n: 22_250.0,
        }
    }
}

impl Default for Lifeline {
    fn default() -> Self {
        // EN 1891 A: 5 % between 50 and 150 kg gives 19.6 kN; the midpoint of 19.6 to 41.2 kN.
        Lifeline {
            length_m: 12.0,
            kind: RopeKind::PolyBlend16,
            modulus_n: 80_000.0,
            end: RopeEnd::MakersStop,
            slack_m: 0.0,
            edge: RopeEdge::Padded,
        }
    }
}

impl Default for RopeGrab {
    fn default() -> Self {
        RopeGrab { above_dring_m: 0.15, arrow: Arrow::Up, bolt: Bolt::Tight, latch: Latch::Closed }
    }
}

impl Default for Lanyard {
    fn default() -> Self {
        // Within the length that one account of the Canadian standard gives for the link on a grab (0.76 m).
        Lanyard { length_m: 0.75, absorber: Some(Absorber::default()), clipped: true }
    }
}

impl Default for Absorber {
    fn default() -> Self {
        // The 1.2 m of extension is from memory.
        Absorber { class: AbsorberClass::E4, deploy_force_n: 4_000.0, max_extension_m: 1.2 }
    }
}

/// Most fasteners on each slope.
pub const MOST_FASTENERS_PER_SIDE: u32 = 12;

/// An obstacle of ordinary size, for a form that switches one on.
pub const ORDINARY_OBSTACLE: Below = Below::Obstacle { height_m: 1.1, distance_m: 0.0, width_m: 1.3 };
