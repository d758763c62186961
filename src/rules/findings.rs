//! What a fall is found to say.

use super::{Comparison, Duty, Limit};
use crate::units::{Quantity, Rounding};
use Severity::Good;
use serde::{Deserialize, Serialize};

/// How much a finding weighs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Severity {
    /// Fails the set-up whatever the score.
    Critical,
    /// To be changed.
    Major,
    /// Worth changing.
    Minor,
    /// Worth knowing.
    Note,
    /// As it should be.
    Good,
}

macro_rules! finding_codes {
    ($($name:ident, $doc:literal;)*) => {
        /// What was found.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
        #[serde(rename_all = "snake_case")]
        pub enum FindingCode { $(#[doc = $doc] $name,)* }
        impl FindingCode {
            /// All codes.
            pub const ALL: &'static [FindingCode] = &[$(FindingCode::$name,)*];
        }
    };
}

finding_codes! {
    StrikesGround, "Comes down to the ground.";
    StrikesObstacle, "Comes down on the obstacle.";
    OffRope, "The rope leaves the grab.";
    AnchorGaveWay, "The anchor gives way.";
    PeakForce, "Largest force on the body against the place's limit.";
    FreeFall, "Free fall against the place's limit.";
    ForceOrFreeFall, "Either of two limits has to be met.";
    StoppingDistance, "Deceleration distance against the place's limit.";
    AbsorberSpent, "The absorber tore to its end.";
    NoAbsorber, "No absorber in the lanyard.";
    GrabReversed, "The grab's arrow points down.";
    LatchOpen, "The grab's latch is open.";
    BoltLoose, "The grab's bolt is loose.";
    GrabLow, "The grab is below the D-ring.";
    RopeEndOpen, "Nothing at the rope's end stops a grab.";
    RopeEndKnot, "A knot stands in for the maker's stop at the rope's end.";
    RopeShort, "The rope does not reach the ground.";
    RopeSlack, "Slack in the lifeline above the grab.";
    EdgeBare, "The lifeline is loaded over a bare edge.";
    GrabLink, "The lanyard's length against what a grab may carry.";
    GrabLinkAsk, "The lanyard's length against a figure that has to be confirmed.";
    LadderNotRequired, "No protection is asked for on a portable ladder.";
    LadderBarely, "The ladder's foot holds, but by less than a fifth.";
    LadderConditions, "On a portable ladder it is asked for under conditions.";
    AnchorOpen, "The fasteners' figure would do; what it leaves out is open.";
    AnchorEngineered, "A rated anchor with a qualified person behind it.";
    WireUnknown, "Nobody has asked what the wire carries.";
    WireCarried, "How near the ladder comes to the wire when carried upright.";
    ServiceDrop, "The service drop to the house.";
    HarnessLoose, "The harness is loose.";
    AnchorCapacity, "What the anchor is assumed to bear against what the place asks.";
    AnchorBasis, "The place asks for a working load; the assumed figure is a breaking load.";
    LadderAngle, "The ladder's foot distance.";
    ClearanceMargin, "Room left under the worker.";
    HardSwing, "A hard blow against wall, ladder or roof.";
    TriggerHeight, "Whether the place requires protection at this height.";
    RopeBroke, "The rope broke.";
    LinkBroke, "Lanyard, connector or harness let go.";
    AnchorUnsuitable, "Made fast to something that is no anchor.";
    AnchorAllowable, "The anchor's allowable load against the working load asked for.";
    AnchorFactor, "The anchor's breaking load as a multiple of the arrest force.";
    AnchorChooser, "The worker chose the anchor alone.";
    FastenersMissed, "Fasteners of the anchor missed the framing.";
    MortarWeak, "A sling round a chimney with weak joints.";
    HigherMethod, "A method that ranks before fall arrest could be used.";
    ArrestTooLow, "Too little height for fall arrest at all.";
    ClearanceSum, "The clearance that the usual sum asks for against what there is.";
    RescueMissing, "No rescue is planned, or not as the place requires.";
    TrainingExpired, "The training card has run out.";
    GearFrayed, "The lifeline's core shows.";
    GearKnot, "A knot along the lifeline.";
    GearGate, "A connector's gate does not lock.";
    GearRust, "A connector is pitted by rust.";
    GearPack, "The absorber tore before.";
    GearWebbing, "The harness webbing is cut.";
    GearLabel, "The harness label is missing.";
    AbsorberExtension, "Tear-out against a type-test limit.";
    ArrestDistance, "Whole arrest against a type-test limit.";
    LadderSlides, "The ladder's foot needs more friction than it has.";
    LadderTips, "The ladder tips back over its foot.";
    LadderReach, "The worker leans out past a rail.";
    LadderUntied, "The ladder is neither tied nor held.";
    PowerLine, "Nearest that the ladder can come to an overhead wire.";
    NotClipped, "The lanyard is not clipped to the D-ring.";
    AbsorberMass, "The worker's mass against the absorber's class.";
}

/// A number and how it is shown.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Value {
    /// What it measures.
    pub quantity: Quantity,
    /// SI.
    pub si: f64,
    /// Against the worker.
    pub rounding: Rounding,
}

/// One thing found.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// What.
    pub code: FindingCode,
    /// How much it weighs.
    pub severity: Severity,
    /// Whether a limit is met, where there is one.
    pub met: Option<bool>,
    /// The number.
    pub value: Option<Value>,
    /// A second number that the sentence names.
    pub other: Option<Value>,
    /// The limit it was held against.
    pub limit: Option<&'static Limit>,
    /// The duty it was held against.
    pub duty: Option<&'static Duty>,
    /// The number rests on an assumed figure.
    pub assumed: bool,
}

impl Finding {
    pub(super) fn new(code: FindingCode, severity: Severity) -> Finding {
        Finding {
            code,
            severity,
            met: None,
            value: None,
            other: None,
            limit: None,
            duty: None,
            assumed: false,
        }
    }
    pub(super) fn value(mut self, quantity: Quantity, si: f64, rounding: Rounding) -> Finding {
        self.value = Some(Value { quantity, si, rounding });
        self
    }
    pub(super) fn other(mut self, quantity: Quantity, si: f64, rounding: Rounding) -> Finding {
        self.other = Some(Value { quantity, si, rounding });
        self
    }
    pub(super) fn assumed(mut self) -> Finding {
        self.assumed = true;
        self
    }
    pub(super) fn duty(mut self, duty: Option<&'static Duty>) -> Finding {
        self.duty = duty;
        self
    }
    pub(super) fn against(code: FindingCode, si: f64, limit: &'static Limit, missed: Severity) -> Finding {
        let met = limit.comparison.holds(si, limit.value);
        let rounding = if limit.comparison == Comparison::AtMost { Rounding::Up } else { Rounding::Down };
        Finding { met: Some(met), limit: Some(limit), ..Finding::new(code, if met { Good } else { missed }) }
            .value(limit.unit.quantity(), si, rounding)
    }

    /// How far the number is on the right side of its limit, SI; negative when it is not met.
    pub fn margin_si(&self) -> Option<f64> {
        let (v, l) = (self.value?, self.limit?);
        if v.quantity != l.unit.quantity() || self.met.is_none() {
            return None;
        }
        Some(match l.comparison {
            Comparison::AtMost => l.value - v.si,
            Comparison::AtLeast | Comparison::MoreThan => v.si - l.value,
        })
    }
}
