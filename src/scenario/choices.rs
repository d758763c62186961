//! What can be one of a few.

use serde::{Deserialize, Serialize};

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
