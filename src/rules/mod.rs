//! Limits of each place, as data, and what a fall means under them.
//!
//! A place is one file in `src/rules/places`; a new place is a new file and no code. Values that
//! no place sets (the reserve under the feet) stand in `common.json`. [`judge`] turns a scenario
//! and its trace into findings; it computes no physics and writes no sentence. A working load and
//! a breaking load are different types (see `strength`) and cannot be compared.

pub mod clearance;
mod judge;

pub use crate::strength::{BreakingLoadN, WorkingLoadN};
pub use judge::{Advice, HARD_SWING_M_S, advice, judge};

use crate::units::{Quantity, Rounding};
use include_dir::{Dir, include_dir};
use serde::{Deserialize, Serialize};
use std::sync::OnceLock;

/// Version of the rules data and of [`judge`].
pub const RULES_VERSION: u32 = 3;

static FILES: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/src/rules/places");

/// A sentence in both languages.
#[derive(Clone, Debug, PartialEq, Deserialize)]
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
    /// Distance kept from an overhead power line, m.
    ApproachDistance,
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
}

impl LimitUnit {
    fn quantity(self) -> Quantity {
        match self {
            LimitUnit::M => Quantity::Length,
            LimitUnit::N => Quantity::Force,
            LimitUnit::Rad => Quantity::Angle,
            LimitUnit::Ratio | LimitUnit::Years => Quantity::Ratio,
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
    /// The document.
    pub document: Bilingual,
    /// The clause in it.
    pub clause: Bilingual,
    /// Day on which the value was compared with its source, or (from memory) entered.
    pub checked_on: String,
    /// Not read in the source.
    pub from_memory: bool,
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
}

/// A duty with its source.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Duty {
    /// What is required.
    pub what: DutyKind,
    /// The document.
    pub document: Bilingual,
    /// The clause in it.
    pub clause: Bilingual,
    /// Day on which it was compared with its source, or (from memory) entered.
    pub checked_on: String,
    /// Not read in the source.
    pub from_memory: bool,
}

/// A method of protection.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Method {
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
        let common = all().iter().find(|p| p.id == "common");
        let order = if self.methods.is_empty() { common.map(|c| &c.methods) } else { Some(&self.methods) };
        let at = |m| order.and_then(|o| o.iter().position(|x| *x == m));
        matches!((at(first), at(second)), (Some(a), Some(b)) if a < b)
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

/// Reads every place file.
///
/// # Errors
/// The file's name and what is wrong with it.
pub fn read_places() -> Result<Vec<Place>, String> {
    let mut all = Vec::new();
    for f in FILES.files() {
        let name = f.path().display().to_string();
        let text = f.contents_utf8().ok_or_else(|| format!("{name}: not UTF-8"))?;
        all.push(serde_json::from_str::<Place>(text).map_err(|e| format!("{name}: {e}"))?);
    }
    all.sort_by_key(|p| p.order);
    Ok(all)
}

fn all() -> &'static [Place] {
    static ALL: OnceLock<Vec<Place>> = OnceLock::new();
    // A test reads every file; a build with a broken one does not pass.
    ALL.get_or_init(|| read_places().unwrap_or_default())
}

/// All places a person can choose, in order.
pub fn places() -> impl Iterator<Item = &'static Place> {
    all().iter().filter(|p| p.id != "common")
}

/// The place with this identifier.
pub fn place(id: &str) -> Option<&'static Place> {
    places().find(|p| p.id == id)
}

/// Room that should be left under the feet, by common practice.
pub fn reserve() -> Option<&'static Limit> {
    common(LimitKind::ClearanceReserve)
}

/// Distance kept from a power line, by common practice.
pub fn approach() -> Option<&'static Limit> {
    common(LimitKind::ApproachDistance)
}

fn common(what: LimitKind) -> Option<&'static Limit> {
    all().iter().find(|p| p.id == "common")?.limit(what)
}

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
    EndKnotMissing, "No stopper knot at the rope's end.";
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_place_file_reads() {
        let all = read_places().expect("reads");
        assert!(all.iter().any(|p| p.id == "common"));
        assert_eq!(all.len(), 11);
        for p in &all {
            for l in &p.limits {
                assert!(l.value.is_finite() && l.value > 0.0, "{} {:?}", p.id, l.what);
                assert_eq!(l.checked_on.len(), 10, "{} {:?}", p.id, l.what);
                assert!(!l.document.fr.is_empty() && !l.clause.fr.is_empty());
                let anchor = matches!(
                    l.what,
                    LimitKind::Anchor | LimitKind::AnchorWithAbsorber | LimitKind::AnchorFactor
                );
                assert_eq!(anchor, l.basis.is_some(), "{} {:?}", p.id, l.what);
            }
        }
    }

    #[test]
    fn every_boundary_at_just_under_and_just_over() {
        let mut seen = 0;
        for p in read_places().expect("reads") {
            for l in &p.limits {
                let step = 1e-6 * l.value;
                let (under, at, over) = match l.comparison {
                    Comparison::MoreThan => (false, false, true),
                    Comparison::AtLeast => (false, true, true),
                    Comparison::AtMost => (true, true, false),
                };
                let holds = |x: f64| l.comparison.holds(x, l.value);
                assert_eq!(
                    (holds(l.value - step), holds(l.value), holds(l.value + step)),
                    (under, at, over),
                    "{} {:?}",
                    p.id,
                    l.what
                );
                seen += 1;
            }
        }
        assert!(seen >= 40, "only {seen} limits");
    }

    #[test]
    fn check_16_trigger_heights_of_the_places_held() {
        let required = |id: &str, h: f64| {
            let l = place(id).and_then(|p| p.limit(LimitKind::TriggerHeight)).expect("set");
            l.comparison.holds(h, l.value)
        };
        // At 2.9 m only the US requires; at 3.0 m Alberta, British Columbia and federal Canada too,
        // not yet Ontario and Quebec; at 3.01 m all.
        for (id, at_2_9, at_3_0) in [
            ("us_construction", true, true),
            ("us_general", true, true),
            ("ab", false, true),
            ("bc", false, true),
            ("mb", false, true),
            ("ca_federal", false, true),
            ("on", false, false),
            ("qc", false, false),
        ] {
            assert_eq!(
                (required(id, 2.9), required(id, 3.0), required(id, 3.01)),
                (at_2_9, at_3_0, true),
                "{id}"
            );
        }
    }
}
