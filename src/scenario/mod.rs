//! Every choice a person can make, in SI, and what is wrong with it.
//!
//! A scenario is plain data: it can be saved, linked, compared and replayed. It knows the range of
//! each number ([`Field`]); it knows no time, no force and no rule. `Scenario::problems`, which
//! also asks whether the set-up is geometrically possible, stands in `geometry::set_up`, because
//! only there the ladder and the rope have a place.

pub mod file;
pub mod link;

use serde::{Deserialize, Serialize};

/// The file format's number. Older files keep loading: a missing field takes its default.
///
/// 5: the rope by its kind, what stops at its end, the wire's voltage, work from the ground or a platform.
/// 6: slack above the grab, what the rope runs over at the eave.
pub const SCHEMA: u32 = 6;

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

/// How the harness was done up.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "headless", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum HarnessFit {
    /// Straps drawn up.
    Snug,
    /// Straps slack: the D-ring rides up before it holds.
    Loose,
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

macro_rules! choices {
    ($(#[$doc:meta])* $name:ident { $($(#[$vdoc:meta])* $variant:ident,)* }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
        #[cfg_attr(feature = "headless", derive(schemars::JsonSchema))]
        #[serde(rename_all = "snake_case")]
        pub enum $name { $($(#[$vdoc])* $variant,)* }
        impl $name {
            /// All, in the order a form shows them.
            pub const ALL: &'static [$name] = &[$($name::$variant,)*];
        }
    };
}

choices! {
    /// A fastener of a ridge plate.
    FastenerKind {
        /// 16d common nail, 0.162 by 3.5 in.
        Nail16d,
        /// 10d common nail, 0.148 by 3 in.
        Nail10d,
        /// 20d common nail, 0.192 by 4 in.
        Nail20d,
        /// Ring-shank nail of the size of a 16d.
        RingNail16d,
        /// Number 10 wood screw, 3 in.
        Screw10,
    }
}

choices! {
    /// Wood of the rafters.
    Species {
        /// Spruce-pine-fir.
        SprucePineFir,
        /// Douglas fir-larch.
        DouglasFirLarch,
        /// Southern pine.
        SouthernPine,
    }
}

choices! {
    /// Whether the wood is dry.
    Moisture {
        /// Dry in service.
        Dry,
        /// Wet when built or in service.
        Wet,
    }
}

choices! {
    /// State of a chimney's joints.
    Mortar {
        /// Hard and full.
        Sound,
        /// Soft, cracked or missing.
        Weak,
    }
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

choices! {
    /// What the owner of a wire says it carries. The bands are those at whose ends the distances of the
    /// places held here change.
    Voltage {
        /// Nobody has asked the owner.
        Unknown,
        /// The service drop to the house, under 750 V.
        Service,
        /// 750 V to 50 kV: most lines along a street.
        To50Kv,
        /// To 75 kV.
        To75Kv,
        /// To 150 kV.
        To150Kv,
        /// To 250 kV.
        To250Kv,
        /// More.
        Over250Kv,
    }
}

impl Voltage {
    /// The most it can be, V; none where that is not known.
    pub fn most_v(self) -> Option<f64> {
        Some(match self {
            Voltage::Unknown | Voltage::Over250Kv => return None,
            Voltage::Service => 750.0,
            Voltage::To50Kv => 50e3,
            Voltage::To75Kv => 75e3,
            Voltage::To150Kv => 150e3,
            Voltage::To250Kv => 250e3,
        })
    }
}

choices! {
    /// A lifeline by its make. The modulus of each stands in `physics::equipment`.
    RopeKind {
        /// 16 mm (5/8 in) three-strand polyester and polypropylene: what most crews hang.
        PolyBlend16,
        /// 11 mm kernmantle of EN 1891 type A.
        Kernmantle11,
        /// 12 mm polyester.
        Polyester12,
        /// 12 mm nylon.
        Nylon12,
        /// Another, of a stated modulus.
        Stated,
    }
}

choices! {
    /// What is at the lifeline's lower end.
    RopeEnd {
        /// A stop that its maker put there.
        MakersStop,
        /// A knot.
        Knot,
        /// Nothing.
        Nothing,
    }
}

choices! {
    /// What the lifeline runs over at the roof's edge.
    RopeEdge {
        /// An edge pad, a roller or a sleeve.
        Padded,
        /// The bare edge: drip edge, fascia metal, shingles.
        Bare,
    }
}

choices! {
    /// The weather, as far as gear and footing feel it.
    Weather {
        /// Dry.
        Dry,
        /// Wet.
        Wet,
        /// Wet, then frozen.
        Frozen,
    }
}

choices! {
    /// What is known of an absorber's force.
    AbsorberClass {
        /// A steady force that its maker states.
        Stated,
        /// CSA Z259.11-05 class E4: 4 kN, 45 to 115 kg.
        E4,
        /// CSA Z259.11-05 class E6: 6 kN, 90 to 175 kg.
        E6,
    }
}

choices! {
    /// What a look at the lifeline shows.
    RopeState {
        /// Even, clean, no broken yarn.
        Sound,
        /// Sheath worn through, core showing.
        Frayed,
        /// A knot along it.
        Knotted,
    }
}

choices! {
    /// What a look at the lanyard's connectors shows.
    ConnectorState {
        /// Closes and locks by itself.
        Sound,
        /// The gate does not lock.
        Unlocked,
        /// Pitted by rust.
        Corroded,
    }
}

choices! {
    /// What a look at the absorber's pack shows.
    PackState {
        /// Sealed, stitching whole.
        Sound,
        /// Torn open before: stitches gone, pushed back into the cover.
        Deployed,
    }
}

choices! {
    /// What a look at the harness webbing shows.
    WebbingState {
        /// Whole.
        Sound,
        /// A cut in from the edge.
        Cut,
    }
}

choices! {
    /// What a look for the label shows.
    LabelState {
        /// There, and can be read.
        Legible,
        /// Gone, or cannot be read.
        Missing,
    }
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

choices! {
    /// Another method that could be used on this job.
    OtherMethod {
        /// None was found.
        NoneFound,
        /// From the ground, with a pole.
        FromGround,
        /// From a lift, or a scaffold with guardrails.
        Platform,
        /// A guardrail or a scaffold with one.
        Guardrail,
        /// A line too short to reach the edge.
        TravelRestraint,
        /// A system that stops a fall within 0.6 m.
        FallRestrict,
    }
}

choices! {
    /// How the rescue is planned.
    RescuePlan {
        /// Not at all.
        NoPlan,
        /// Talked over.
        Spoken,
        /// In writing, and read by the crew.
        Written,
    }
}

choices! {
    /// Who chose and set the anchor.
    AnchorChosenBy {
        /// The worker alone.
        Worker,
        /// A competent person.
        CompetentPerson,
        /// An engineer or another qualified person.
        QualifiedPerson,
    }
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

/// What the lifeline is made fast to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "headless", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum AnchorKind {
    /// A ridge plate fastened into the rafters.
    RidgePlateInFraming,
    /// A ridge plate fastened into the roof sheathing alone.
    RidgePlateInSheathing,
    /// A sling round a brick chimney.
    ChimneySling,
    /// A plumbing vent pipe.
    VentPipe,
    /// The gutter.
    Gutter,
    /// A rated anchor installed to an engineer's drawing.
    RatedEye,
    /// A sheet-metal roof vent or duct.
    RoofVent,
    /// The mast of an aerial.
    AntennaMast,
}

impl AnchorKind {
    /// All kinds, in the order a form shows them.
    pub const ALL: [AnchorKind; 8] = [
        AnchorKind::RidgePlateInFraming,
        AnchorKind::RidgePlateInSheathing,
        AnchorKind::ChimneySling,
        AnchorKind::VentPipe,
        AnchorKind::Gutter,
        AnchorKind::RatedEye,
        AnchorKind::RoofVent,
        AnchorKind::AntennaMast,
    ];
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

/// Direction of the rope grab's arrow.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "headless", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Arrow {
    /// Towards the anchor: it locks in a fall.
    Up,
    /// Away from the anchor: it runs down the rope.
    Down,
}

/// State of the rope grab's bolt.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "headless", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Bolt {
    /// Done up.
    Tight,
    /// Worked loose.
    Loose,
}

/// State of the rope grab's latch.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "headless", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Latch {
    /// Shut over the rope.
    Closed,
    /// Not shut.
    Open,
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
