//! Limits, duties and places as data.

use super::{all, place};
use crate::scenario::Voltage;
use crate::strength::{BreakingLoadN, WorkingLoadN};
use crate::units::Quantity;
use serde::{Deserialize, Serialize};

/// A sentence in both languages.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Bilingual {
    /// English.
    pub en: String,
    /// French.
    pub fr: String,
}

/// What a limit limits.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LimitKind {
    /// Height from which protection against falls is required, m.
    TriggerHeight,
    /// The same for a worker on a portable ladder, where the place sets one of its own, m.
    TriggerHeightLadder,
    /// Longest link between a grab on a rope and the D-ring, m.
    GrabLink,
    /// Minutes within which a hanging worker has to be down.
    RescueMinutes,
    /// Measuring tolerance of a ladder's foot, as a share of its length to the support.
    LadderTolerance,
    /// Rails past a landing, m.
    RailsPastLanding,
    /// Force on the body, N.
    BodyForce,
    /// Free fall, m.
    FreeFall,
    /// Deceleration distance without the lifeline's stretch, m.
    StoppingDistance,
    /// Anchor load, N.
    Anchor,
    /// Anchor load where an absorber is worn, N.
    AnchorWithAbsorber,
    /// Least foot distance of a ladder as a share of its length to the support.
    LadderFootLeast,
    /// Most foot distance.
    LadderFootMost,
    /// Room that should be left under the feet, m.
    ClearanceReserve,
    /// What an anchor may bear as a multiple of the arrest force, instead of [`LimitKind::Anchor`].
    AnchorFactor,
    /// Tear-out of an absorber, m.
    AbsorberExtension,
    /// Whole arrest of a guided-type arrester: slip, tear-out and slide, m.
    ArrestDistance,
    /// Years for which training is valid.
    TrainingYears,
    /// Height from which a written plan is required, m.
    WrittenPlanHeight,
    /// Distance along the wall from the anchor's plumb line, m.
    AnchorOffset,
    /// Lean of the rope from that line, rad.
    AnchorLean,
    /// Distance kept from an overhead power line, m, up to the voltage that stands beside it.
    ApproachDistance,
    /// The same until the line's owner has said what it carries, m.
    ApproachUnknown,
}

/// How a value stands to its limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Comparison {
    /// Applies above the value, not at it.
    MoreThan,
    /// Applies at the value and above.
    AtLeast,
    /// Met at the value and below.
    AtMost,
}

impl Comparison {
    /// Whether `value` satisfies it against `limit`, to one part in 10^9.
    pub fn holds(self, value: f64, limit: f64) -> bool {
        let tolerance = 1e-9 * limit.abs().max(1.0);
        match self {
            Comparison::MoreThan => value > limit + tolerance,
            Comparison::AtLeast => value >= limit - tolerance,
            Comparison::AtMost => value <= limit + tolerance,
        }
    }
}

/// Unit of a limit in its file; all SI.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LimitUnit {
    /// Metres.
    M,
    /// Newtons.
    N,
    /// A plain number.
    Ratio,
    /// Years of the calendar.
    Years,
    /// Radians.
    Rad,
    /// Minutes.
    Minutes,
}

impl LimitUnit {
    pub(super) fn quantity(self) -> Quantity {
        match self {
            LimitUnit::M => Quantity::Length,
            LimitUnit::N => Quantity::Force,
            LimitUnit::Rad => Quantity::Angle,
            LimitUnit::Ratio | LimitUnit::Years | LimitUnit::Minutes => Quantity::Ratio,
        }
    }
}

/// Which of the two an anchor limit is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Basis {
    /// A load within allowable stress.
    WorkingLoad,
    /// A load at which it may break.
    BreakingLoad,
}

/// What a place asks of an anchor.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum AnchorLimit {
    /// A working load.
    Working(WorkingLoadN),
    /// A breaking load.
    Breaking(BreakingLoadN),
}

/// What a figure was read in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum ReadIn {
    /// The document itself, or a copy of it.
    Text,
    /// A guide of the authority or of a safety association it names.
    OfficialGuide,
    /// Somebody else's account of it.
    Secondary,
    /// Nothing: from memory.
    Memory,
    /// No document: what the trade does, or what this project chose.
    CommonPractice,
}

/// Where a line of a place comes from.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Source {
    /// The document.
    pub document: Bilingual,
    /// The clause in it.
    pub clause: Bilingual,
    /// Edition or date of the text that was read; empty where none was.
    pub edition: String,
    /// What it was read in.
    pub read_in: ReadIn,
    /// Day on which the line was compared with what it was read in; empty where it was not.
    pub checked_on: String,
}

/// One limit with its source.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Limit {
    /// What it limits.
    pub what: LimitKind,
    /// How a value stands to it.
    pub comparison: Comparison,
    /// The value, SI.
    pub value: f64,
    /// Its unit.
    pub unit: LimitUnit,
    /// Working or breaking load, for anchors.
    #[serde(default)]
    pub basis: Option<Basis>,
    /// Who must stand behind it for it to count.
    #[serde(default)]
    pub needs: Option<Needs>,
    /// For approach distances: up to this voltage, V.
    #[serde(default)]
    pub up_to_v: Option<f64>,
    /// For a ladder's foot: only where the ladder is not fastened.
    #[serde(default)]
    pub only_untied: bool,
    /// Where it comes from.
    pub source: Source,
}

/// Who must stand behind a figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Needs {
    /// An engineer or another qualified person.
    QualifiedPerson,
}

/// What a place requires that is not a number.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum DutyKind {
    /// A rescue procedure in writing before use.
    RescueWritten,
    /// A rescue planned before use.
    RescuePlanned,
    /// The anchor chosen by a competent person.
    AnchorByCompetentPerson,
    /// No knot along the lifeline.
    NoKnots,
    /// Faulty gear taken out of service.
    GearWithdrawn,
    /// A signed record of training.
    TrainingRecord,
    /// The order in which methods are to be considered.
    MethodOrder,
    /// No protection against falls is asked for on a portable ladder.
    LadderExempt,
    /// On a portable ladder it is asked for under conditions of its own.
    LadderConditions,
    /// An energy absorber is asked for.
    AbsorberRequired,
    /// The lifeline reaches the ground or a level below which nobody can fall.
    LineReachesGround,
    /// One worker to a lifeline.
    OnePersonALine,
    /// The lifeline kept from edges that could cut it.
    EdgeProtected,
    /// Gear looked over before each use.
    InspectEachUse,
    /// Gear that has stopped a fall taken out of service.
    OutAfterFall,
    /// The ladder tied or held.
    LadderSecured,
    /// Rescue drilled, with its gear on the site.
    RescueDrill,
    /// Taught again when there is reason to.
    Retrain,
    /// A metal ladder kept from electric lines.
    NoMetalLadder,
    /// A shorter link between grab and D-ring than makers elsewhere allow, by an account to be confirmed.
    ShortLink,
}

/// A duty with its source.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Duty {
    /// What is required.
    pub what: DutyKind,
    /// Where it comes from.
    pub source: Source,
}

/// A method of protection.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Method {
    /// From the ground.
    FromGround,
    /// From a lift, or a scaffold with guardrails.
    Platform,
    /// A guardrail.
    Guardrail,
    /// A line too short to reach the edge.
    TravelRestraint,
    /// Stops a fall within 0.6 m.
    FallRestrict,
    /// What this program computes.
    FallArrest,
    /// A net.
    Net,
}

/// A place and its limits.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Place {
    /// Identifier, as in a scenario.
    pub id: String,
    /// Place in lists.
    pub order: u32,
    /// Name.
    pub name: Bilingual,
    /// A caution about the data.
    #[serde(default)]
    pub note: Option<Bilingual>,
    /// Either the force limit or the free-fall limit has to be met, not both.
    #[serde(default)]
    pub force_or_free_fall: bool,
    /// The methods in the order in which they are to be considered, where the place sets one.
    #[serde(default)]
    pub methods: Vec<Method>,
    /// The limits.
    pub limits: Vec<Limit>,
    /// The duties.
    #[serde(default)]
    pub duties: Vec<Duty>,
}

impl Place {
    /// The limit of a kind, if the place sets one.
    pub fn limit(&self, what: LimitKind) -> Option<&Limit> {
        self.limits.iter().find(|l| l.what == what)
    }

    /// The duty of a kind, the place's own or else common practice.
    pub fn duty(&self, what: DutyKind) -> Option<&'static Duty> {
        let own = place(&self.id).and_then(|p| p.duties.iter().find(|d| d.what == what));
        own.or_else(|| all().iter().find(|p| p.id == "common")?.duties.iter().find(|d| d.what == what))
    }

    /// Whether the place itself sets a duty.
    pub fn sets(&self, what: DutyKind) -> bool {
        self.duties.iter().any(|d| d.what == what)
    }

    /// Whether a method is to be considered before another, by the place or by common practice.
    pub fn ranks_before(&self, first: Method, second: Method) -> bool {
        let common = all().iter().find(|p| p.id == "common").map(|c| &c.methods);
        // A method that the place's own order does not name is ranked by common practice.
        let own = Some(&self.methods).filter(|o| o.contains(&first) && o.contains(&second));
        let at = |m| own.or(common).and_then(|o| o.iter().position(|x| *x == m));
        matches!((at(first), at(second)), (Some(a), Some(b)) if a < b)
    }

    /// The distance it asks for from a wire of this voltage, its own; none where it has no figure.
    pub fn approach(&self, voltage: Voltage) -> Option<&Limit> {
        let Some(v) = voltage.most_v() else {
            return (voltage == Voltage::Unknown).then(|| self.limit(LimitKind::ApproachUnknown)).flatten();
        };
        let bands = self.limits.iter().filter(|l| l.what == LimitKind::ApproachDistance);
        // What is asked from 750 V on says nothing of a service drop.
        let low = v <= 750.0;
        bands
            .filter(|l| l.up_to_v.is_some_and(|top| v <= top && (top <= 750.0) == low))
            .min_by(|a, b| a.value.total_cmp(&b.value))
    }

    /// What it asks of an anchor.
    pub fn anchor(&self, with_absorber: bool) -> Option<(&Limit, AnchorLimit)> {
        let l = with_absorber
            .then(|| self.limit(LimitKind::AnchorWithAbsorber))
            .flatten()
            .or_else(|| self.limit(LimitKind::Anchor))?;
        let typed = match l.basis? {
            Basis::WorkingLoad => AnchorLimit::Working(WorkingLoadN(l.value)),
            Basis::BreakingLoad => AnchorLimit::Breaking(BreakingLoadN(l.value)),
        };
        Some((l, typed))
    }
}
