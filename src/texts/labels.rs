//! What choices, parts and reasons are called: each label belongs to its choice.

use super::{Bench as W, Key, Room, Trainer};
use crate::grade::changes::Change;
use crate::physics::ladder::Footing;
use crate::practice::day::Task;
use crate::practice::demos::{Ends, Family};
use crate::practice::framing::Sound;
use crate::practice::houses::HouseKind;
use crate::practice::inspection::GearPart;
use crate::practice::rescue::Step;
use crate::practice::showing;
use crate::practice::thumbs::Fares;
use crate::quiz::export::Refused;
use crate::rules::clearance::Term;
use crate::rules::{DutyKind, LimitKind, Severity};
use crate::scenario::file::Fault;
use crate::scenario::{
    AbsorberClass, AnchorChosenBy, Arrow, Bolt, FastenerKind, HarnessFit, Latch, Moisture, Mortar,
    OtherMethod, RescuePlan, RopeEdge, RopeEnd, RopeKind, Species, Voltage, Weather,
};
use crate::studies::map::MapKind;
use crate::studies::spread::Uncertain;

impl FastenerKind {
    /// A fastener's name.
    pub fn label(self) -> Key {
        match self {
            FastenerKind::Nail16d => Key::FastenerNail16d,
            FastenerKind::Nail10d => Key::FastenerNail10d,
            FastenerKind::Nail20d => Key::FastenerNail20d,
            FastenerKind::RingNail16d => Key::FastenerRing,
            FastenerKind::Screw10 => Key::FastenerScrew,
        }
    }
}

impl GearPart {
    /// A part's name.
    pub fn label(self) -> Key {
        match self {
            GearPart::Fasteners => Key::PartNails,
            GearPart::Rope => Key::PartRope,
            GearPart::Arrow => Key::PartArrow,
            GearPart::Bolt => Key::PartBolt,
            GearPart::Latch => Key::PartLatch,
            GearPart::Connector => Key::PartConnector,
            GearPart::Pack => Key::PartPack,
            GearPart::Webbing => Key::PartWebbing,
            GearPart::Label => Key::PartLabel,
        }
    }
}

impl Change {
    /// A change's name.
    pub fn label(self) -> Key {
        match self {
            Change::Framing => Key::ChFraming,
            Change::Rated => Key::ChRated,
            Change::RopeEnd => Key::ChKnot,
            Change::NoSlack => Key::ChSlack,
            Change::PadEdge => Key::ChPad,
            Change::GrabUp => Key::ChGrabUp,
            Change::ArrowUp => Key::ChArrow,
            Change::BoltTight => Key::ChBolt,
            Change::LatchClosed => Key::ChLatch,
            Change::WithAbsorber => Key::ChAbsorber,
            Change::ShortLanyard => Key::ChLanyard,
            Change::HarnessSnug => Key::ChHarness,
            Change::ClipIn => Key::ChClip,
            Change::TieLadder => Key::ChTie,
            Change::StandInLine => Key::ChInLine,
            Change::SoundGear => Key::ChGear,
            Change::LadderFoot => Key::ChLadder,
            Change::RescueWritten => Key::ChRescue,
            Change::CompetentChooser => Key::ChChooser,
        }
    }
}

impl Voltage {
    /// What a wire's owner says of it.
    pub fn label(self) -> Key {
        match self {
            Voltage::Unknown => Key::VoltUnknown,
            Voltage::Service => Key::VoltService,
            Voltage::To50Kv => Key::Volt50,
            Voltage::To75Kv => Key::Volt75,
            Voltage::To150Kv => Key::Volt150,
            Voltage::To250Kv => Key::Volt250,
            Voltage::Over250Kv => Key::VoltMore,
        }
    }
}

impl RopeKind {
    /// A rope's name.
    pub fn label(self) -> Key {
        match self {
            RopeKind::PolyBlend16 => Key::RopePolyBlend,
            RopeKind::Kernmantle11 => Key::RopeKernmantle,
            RopeKind::Polyester12 => Key::RopePolyester,
            RopeKind::Nylon12 => Key::RopeNylon,
            RopeKind::Stated => Key::RopeStated,
        }
    }
}

impl RopeEnd {
    /// What is at its end.
    pub fn label(self) -> Key {
        match self {
            RopeEnd::MakersStop => Key::EndStop,
            RopeEnd::Knot => Key::EndKnotYes,
            RopeEnd::Nothing => Key::EndKnotNo,
        }
    }
}

impl RopeEdge {
    /// What it runs over at the eave.
    pub fn label(self) -> Key {
        match self {
            RopeEdge::Padded => Key::EdgePadded,
            RopeEdge::Bare => Key::EdgeBare,
        }
    }
}

impl LimitKind {
    /// What a limit of a place is about.
    pub fn label(self) -> W {
        match self {
            LimitKind::TriggerHeight => W::LimitTriggerHeight,
            LimitKind::TriggerHeightLadder => W::LimitTriggerHeightLadder,
            LimitKind::BodyForce => W::LimitBodyForce,
            LimitKind::FreeFall => W::LimitFreeFall,
            LimitKind::StoppingDistance => W::LimitStoppingDistance,
            LimitKind::Anchor => W::LimitAnchor,
            LimitKind::AnchorWithAbsorber => W::LimitAnchorWithAbsorber,
            LimitKind::LadderFootLeast => W::LimitLadderFootLeast,
            LimitKind::LadderFootMost => W::LimitLadderFootMost,
            LimitKind::ClearanceReserve => W::LimitClearanceReserve,
            LimitKind::AnchorFactor => W::LimitAnchorFactor,
            LimitKind::AbsorberExtension => W::LimitAbsorberExtension,
            LimitKind::ArrestDistance => W::LimitArrestDistance,
            LimitKind::TrainingYears => W::LimitTrainingYears,
            LimitKind::WrittenPlanHeight => W::LimitWrittenPlanHeight,
            LimitKind::AnchorOffset => W::LimitAnchorOffset,
            LimitKind::AnchorLean => W::LimitAnchorLean,
            LimitKind::ApproachDistance => W::LimitApproachDistance,
            LimitKind::ApproachUnknown => W::LimitApproachUnknown,
            LimitKind::GrabLink => W::LimitGrabLink,
            LimitKind::RescueMinutes => W::LimitRescueMinutes,
            LimitKind::LadderTolerance => W::LimitLadderTolerance,
            LimitKind::RailsPastLanding => W::LimitRailsPastLanding,
        }
    }
}

impl DutyKind {
    /// What a place requires.
    pub fn label(self) -> W {
        match self {
            DutyKind::RescueWritten => W::DutyRescueWritten,
            DutyKind::RescuePlanned => W::DutyRescuePlanned,
            DutyKind::AnchorByCompetentPerson => W::DutyAnchorByCompetentPerson,
            DutyKind::NoKnots => W::DutyNoKnots,
            DutyKind::GearWithdrawn => W::DutyGearWithdrawn,
            DutyKind::TrainingRecord => W::DutyTrainingRecord,
            DutyKind::MethodOrder => W::DutyMethodOrder,
            DutyKind::LadderExempt => W::DutyLadderExempt,
            DutyKind::LadderConditions => W::DutyLadderConditions,
            DutyKind::AbsorberRequired => W::DutyAbsorberRequired,
            DutyKind::LineReachesGround => W::DutyLineReachesGround,
            DutyKind::OnePersonALine => W::DutyOnePersonALine,
            DutyKind::EdgeProtected => W::DutyEdgeProtected,
            DutyKind::InspectEachUse => W::DutyInspectEachUse,
            DutyKind::OutAfterFall => W::DutyOutAfterFall,
            DutyKind::LadderSecured => W::DutyLadderSecured,
            DutyKind::RescueDrill => W::DutyRescueDrill,
            DutyKind::Retrain => W::DutyRetrain,
            DutyKind::NoMetalLadder => W::DutyNoMetalLadder,
            DutyKind::ShortLink => W::DutyShortLink,
        }
    }
}

impl Footing {
    /// What it is called.
    pub fn label(self) -> Key {
        match self {
            Footing::Holds => Key::QFootHolds,
            Footing::SlidesOut => Key::QFootSlides,
            Footing::TipsBack => Key::QFootBack,
            Footing::TipsSideways => Key::QFootSide,
        }
    }
}

impl Mortar {
    /// What it is called.
    pub fn label(self) -> Key {
        match self {
            Mortar::Sound => Key::MortarSound,
            Mortar::Weak => Key::MortarWeak,
        }
    }
}

impl Weather {
    /// What it is called.
    pub fn label(self) -> Key {
        match self {
            Weather::Dry => Key::WeatherDry,
            Weather::Wet => Key::WeatherWet,
            Weather::Frozen => Key::WeatherFrozen,
        }
    }
}

impl RescuePlan {
    /// What it is called.
    pub fn label(self) -> Key {
        match self {
            RescuePlan::NoPlan => Key::RescueNone,
            RescuePlan::Spoken => Key::RescueSpoken,
            RescuePlan::Written => Key::RescueWritten,
        }
    }
}

impl AnchorChosenBy {
    /// What it is called.
    pub fn label(self) -> Key {
        match self {
            AnchorChosenBy::Worker => Key::ChooserWorker,
            AnchorChosenBy::CompetentPerson => Key::ChooserCompetent,
            AnchorChosenBy::QualifiedPerson => Key::ChooserQualified,
        }
    }
}

impl OtherMethod {
    /// Its name; a place may have its own term ([`super::Worded::in_place`]).
    pub fn label(self) -> Key {
        match self {
            OtherMethod::NoneFound => Key::OtherNone,
            OtherMethod::FromGround => Key::OtherGround,
            OtherMethod::Platform => Key::OtherPlatform,
            OtherMethod::Guardrail => Key::OtherGuardrail,
            OtherMethod::TravelRestraint => Key::OtherRestraint,
            OtherMethod::FallRestrict => Key::OtherRestrict,
        }
    }
}

impl Species {
    /// What it is called.
    pub fn label(self) -> Key {
        match self {
            Species::SprucePineFir => Key::SpeciesSpf,
            Species::DouglasFirLarch => Key::SpeciesFir,
            Species::SouthernPine => Key::SpeciesPine,
        }
    }
}

impl Moisture {
    /// What it is called.
    pub fn label(self) -> Key {
        match self {
            Moisture::Dry => Key::MoistureDry,
            Moisture::Wet => Key::MoistureWet,
        }
    }
}

impl Arrow {
    /// What it is called.
    pub fn label(self) -> Key {
        match self {
            Arrow::Up => Key::ArrowUp,
            Arrow::Down => Key::ArrowDown,
        }
    }
}

impl Bolt {
    /// What it is called.
    pub fn label(self) -> Key {
        match self {
            Bolt::Tight => Key::BoltTight,
            Bolt::Loose => Key::BoltLoose,
        }
    }
}

impl Latch {
    /// What it is called.
    pub fn label(self) -> Key {
        match self {
            Latch::Closed => Key::LatchClosed,
            Latch::Open => Key::LatchOpen,
        }
    }
}

impl HarnessFit {
    /// What it is called.
    pub fn label(self) -> Key {
        match self {
            HarnessFit::Snug => Key::FitSnug,
            HarnessFit::Loose => Key::FitLoose,
        }
    }
}

impl AbsorberClass {
    /// What it is called.
    pub fn label(self) -> Key {
        match self {
            AbsorberClass::E4 => Key::ClassE4,
            AbsorberClass::E6 => Key::ClassE6,
            AbsorberClass::Stated => Key::ClassStated,
        }
    }
}

impl Severity {
    /// What it is called.
    pub fn label(self) -> Key {
        match self {
            Severity::Critical => Key::SeverityCritical,
            Severity::Major => Key::SeverityMajor,
            Severity::Minor => Key::SeverityMinor,
            Severity::Note => Key::SeverityNote,
            Severity::Good => Key::SeverityGood,
        }
    }
}

impl Fares {
    /// What it is called.
    pub fn label(self) -> Room {
        match self {
            Fares::Holds => Room::ThumbHolds,
            Fares::Partly => Room::ThumbPartly,
            Fares::Unknown => Room::ThumbUnknown,
        }
    }
}

impl MapKind {
    /// What it changes across.
    pub fn label(self) -> Key {
        match self {
            MapKind::GrabAndHeight => Key::GrabHeight,
            MapKind::OffsetAndHeight => Key::SideOffset,
        }
    }
}

impl Uncertain {
    /// What it is called.
    pub fn label(self) -> Key {
        match self {
            Uncertain::Mass => Key::UncMass,
            Uncertain::AbsorberForce => Key::UncAbsorber,
            Uncertain::RopeModulus => Key::UncRope,
            Uncertain::DeadTravel => Key::UncGrab,
            Uncertain::GrabGrip => Key::UncGrip,
            Uncertain::EdgeFriction => Key::UncEdge,
            Uncertain::AnchorStrength => Key::UncAnchor,
            Uncertain::SlipSpeed => Key::UncSlip,
            Uncertain::RoofFriction => Key::UncRoof,
        }
    }
}

impl Refused {
    /// Why a file is refused.
    pub fn label(self) -> Key {
        match self {
            Refused::TooLarge => Key::RefusedTooLarge,
            Refused::Broken => Key::RefusedBroken,
            Refused::Foreign => Key::RefusedForeign,
            Refused::Newer => Key::RefusedNewer,
        }
    }
}

impl HouseKind {
    /// What it is called.
    pub fn label(self) -> W {
        match self {
            HouseKind::Bungalow => W::HouseBungalow,
            HouseKind::TwoStorey => W::HouseTwoStorey,
            HouseKind::WalkOut => W::HouseWalkOut,
            HouseKind::Cape => W::HouseCape,
            HouseKind::TallGable => W::HouseTallGable,
        }
    }
}

impl Task {
    /// What it is called.
    pub fn label(self) -> Room {
        match self {
            Task::Soffit => Room::TaskSoffit,
            Task::Fascia => Room::TaskFascia,
            Task::Window => Room::TaskWindow,
            Task::Dormer => Room::TaskDormer,
        }
    }
}

impl Sound {
    /// What it is called.
    pub fn label(self) -> Room {
        match self {
            Sound::Solid => Room::SoundSolid,
            Sound::Between => Room::SoundBetween,
            Sound::Hollow => Room::SoundHollow,
        }
    }
}

impl Step {
    /// What it is called where there is little room.
    pub fn short(self) -> Room {
        match self {
            Step::Call => Room::ActCall,
            Step::Straps => Room::ActStraps,
            Step::Climb => Room::ActClimb,
            Step::Ladder => Room::ActLadder,
            Step::Lower => Room::ActLower,
            Step::Haul => Room::ActHaul,
            Step::Wait => Room::ActWait,
        }
    }

    /// What it is called.
    pub fn label(self) -> Room {
        match self {
            Step::Call => Room::StepCall,
            Step::Straps => Room::StepStraps,
            Step::Climb => Room::StepClimb,
            Step::Ladder => Room::StepLadder,
            Step::Lower => Room::StepLower,
            Step::Haul => Room::StepHaul,
            Step::Wait => Room::StepWait,
        }
    }
}

impl Fault {
    /// What it is called.
    pub fn label(self) -> W {
        match self {
            Fault::TooLarge => W::FaultTooLarge,
            Fault::NotText => W::FaultNotText,
            Fault::NotASetUp => W::FaultNotASetUp,
            Fault::Records => W::FaultRecords,
            Fault::Cut => W::FaultCut,
            Fault::Broken => W::FaultBroken,
            Fault::Newer => W::FaultNewer,
            Fault::UnknownField => W::FaultUnknownField,
            Fault::WrongValue => W::FaultWrongValue,
            Fault::OutOfRange => W::FaultOutOfRange,
        }
    }
}

impl Family {
    /// A family's name: what the room reads.
    pub fn label(self) -> Trainer {
        match self {
            Family::Soffit => Trainer::FamilySoffit,
            Family::Dormer => Trainer::FamilyDormer,
            Family::Chimney => Trainer::FamilyChimney,
            Family::Gable => Trainer::FamilyGable,
            Family::Basement => Trainer::FamilyBasement,
            Family::Along => Trainer::FamilyAlong,
        }
    }
}

impl Ends {
    /// As a room says it.
    pub fn label(self) -> Trainer {
        match self {
            Ends::Holds => Trainer::EndsHolds,
            Ends::Down => Trainer::EndsDown,
            Ends::Loose => Trainer::EndsLoose,
            Ends::Swings => Trainer::EndsSwings,
            Ends::Asks => Trainer::EndsAsks,
        }
    }
}

impl showing::Step {
    /// What a step is.
    pub fn label(self) -> Trainer {
        use showing::Step as S;
        match self {
            S::Scene => Trainer::StepScene,
            S::Ask => Trainer::StepAsk,
            S::Locked => Trainer::StepLocked,
            S::Play => Trainer::StepPlay,
            S::Slow => Trainer::StepSlow,
            S::Verdict => Trainer::StepVerdict,
            S::Change => Trainer::StepChange,
            S::Both => Trainer::StepBoth,
        }
    }
}

impl Term {
    /// What a term of the clearance sum is called.
    pub fn label(self) -> Trainer {
        match self {
            Term::FreeFall => Trainer::TermFree,
            Term::Absorber => Trainer::TermAbsorber,
            Term::Grab => Trainer::TermGrab,
            Term::Rope => Trainer::TermRope,
            Term::Harness => Trainer::TermHarness,
            Term::Reserve => Trainer::SheetReserve,
        }
    }
}
