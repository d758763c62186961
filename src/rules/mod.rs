//! Limits of each place, as data, and what a fall means under them.
//!
//! A place is one file in `src/rules/places`; a new place is a new file and no code. Values that
//! no place sets (the reserve under the feet) stand in `common.json`. [`judge`] turns a scenario
//! and its trace into findings; it computes no physics and writes no sentence. A working load and
//! a breaking load are different types (see `strength`) and cannot be compared.

pub mod clearance;
mod judge;

pub use crate::strength::{BreakingLoadN, WorkingLoadN};
pub use judge::{Advice, HARD_SWING_M_S, advice, judge, system_most_n};

use crate::scenario::Voltage;
use crate::units::{Quantity, Rounding};
use include_dir::{Dir, include_dir};
use serde::{Deserialize, Serialize};
use std::sync::OnceLock;

/// Version of the rules data and of [`judge`].
///
/// 4: each line says which edition was read and in what; ladders, wires, rope ends, links on a grab and
/// site-made anchors as corrected against sources.
/// 5: slack above the grab, a bare edge and a ladder that barely holds are findings; a blow is that of trunk and thighs; the worse end
/// of a fall's neighbours is judged.
pub const RULES_VERSION: u32 = 5;

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
    fn quantity(self) -> Quantity {
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

impl Source {
    /// Nobody has read it in anything.
    pub fn is_from_memory(&self) -> bool {
        self.read_in == ReadIn::Memory
    }
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

/// Least distance from any line, by common practice: no place held here lets anybody nearer to a line of
/// more than 750 V.
pub fn least_approach() -> Option<&'static Limit> {
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_place_file_reads() {
        let all = read_places().expect("reads");
        assert!(all.iter().any(|p| p.id == "common"));
        assert_eq!(all.len(), 17);
        for p in &all {
            for l in &p.limits {
                assert!(l.value.is_finite() && l.value > 0.0, "{} {:?}", p.id, l.what);
                let anchor = matches!(
                    l.what,
                    LimitKind::Anchor | LimitKind::AnchorWithAbsorber | LimitKind::AnchorFactor
                );
                assert_eq!(anchor, l.basis.is_some(), "{} {:?}", p.id, l.what);
                assert_eq!(l.what == LimitKind::ApproachDistance && p.id != "common", l.up_to_v.is_some());
            }
        }
    }

    /// A bug: 'checked on' stood beside lines that nobody had read in anything.
    #[test]
    fn no_line_from_memory_says_that_it_was_checked() {
        for p in read_places().expect("reads") {
            let sources = p.limits.iter().map(|l| &l.source).chain(p.duties.iter().map(|d| &d.source));
            for s in sources {
                let what = format!("{} {} {}", p.id, s.document.en, s.clause.en);
                assert!(!s.document.fr.is_empty() && !s.clause.fr.is_empty(), "{what}");
                match s.read_in {
                    ReadIn::Memory => assert!(s.checked_on.is_empty() && s.edition.is_empty(), "{what}"),
                    ReadIn::CommonPractice => assert!(s.checked_on.is_empty(), "{what}"),
                    _ => assert!(
                        crate::units::date(&s.checked_on).is_some() && !s.edition.is_empty(),
                        "{what}"
                    ),
                }
            }
        }
    }

    /// The data and its version: a change of a place without a new version fails here. SHA-256 of the
    /// files in order of their names.
    #[test]
    fn the_rules_version_goes_with_the_data() {
        use sha2::{Digest, Sha256};
        let mut files: Vec<_> = FILES.files().collect();
        files.sort_by_key(|f| f.path().to_owned());
        let mut h = Sha256::new();
        for f in files {
            h.update(f.contents());
        }
        h.update(include_bytes!("../grade/weights.json"));
        let hex: String = h.finalize().iter().take(6).map(|b| format!("{b:02x}")).collect();
        assert_eq!((RULES_VERSION, hex.as_str()), (5, "4201fbfa02c6"));
    }

    /// The published sense of each boundary, by hand: at most, at least, more than.
    #[test]
    fn boundaries_have_the_published_sense() {
        use LimitKind::*;
        // Place, limit, the value as published, whether it holds at it, just under, just over.
        for (id, what, value, under, at, over) in [
            // "falling more than 3 metres"
            ("on", TriggerHeight, 3.0, false, false, true),
            // "une chute de plus de 3 m"
            ("qc", TriggerHeight, 3.0, false, false, true),
            // "6 feet (1.8 m) or more": 6 x 0.3048
            ("us_construction", TriggerHeight, 1.8288, false, true, true),
            // "4 feet (1.2 m) or more"
            ("us_general", TriggerHeight, 1.2192, false, true, true),
            // "in excess of 7 1/2 feet"
            ("us_california", TriggerHeight, 2.286, false, false, true),
            // "3 metres or more"
            ("ab", TriggerHeight, 3.0, false, true, true),
            ("mb", TriggerHeight, 3.0, false, true, true),
            ("nb", TriggerHeight, 3.0, false, true, true),
            // "a peak fall-arrest force greater than 8 kilonewtons" must not be
            ("on", BodyForce, 8_000.0, true, true, false),
            ("sk", BodyForce, 8_000.0, true, true, false),
            // 1,800 lbf, 4.4482216152605 N each
            ("us_construction", BodyForce, 8_006.798_9, true, true, false),
            ("qc", BodyForce, 6_000.0, true, true, false),
            ("ab", BodyForce, 6_000.0, true, true, false),
            ("qc", FreeFall, 1.8, true, true, false),
            // "neither free fall more than six feet"
            ("us_construction", FreeFall, 1.8288, true, true, false),
            // 3.5 ft
            ("us_construction", StoppingDistance, 1.0668, true, true, false),
            // "at least 8 kilonewtons", with an absorber 6
            ("on", Anchor, 8_000.0, false, true, true),
            ("on", AnchorWithAbsorber, 6_000.0, false, true, true),
            ("mb", AnchorWithAbsorber, 6_000.0, false, true, true),
            ("qc", Anchor, 18_000.0, false, true, true),
            ("ab", Anchor, 16_000.0, false, true, true),
            ("au", Anchor, 15_000.0, false, true, true),
            // 5,000 lbf
            ("us_construction", Anchor, 22_241.108_1, false, true, true),
            // "by more than 3 m or an angle of 22 degrees"
            ("qc", AnchorOffset, 3.0, true, true, false),
            ("qc", AnchorLean, 22.0 * core::f64::consts::PI / 180.0, true, true, false),
            // "dans un délai d'au plus 15 minutes"
            ("qc", RescueMinutes, 15.0, true, true, false),
            // 3 ft
            ("common", GrabLink, 0.9144, true, true, false),
            // 1/4 and 1/3
            ("on", LadderFootLeast, 0.25, false, true, true),
            ("on", LadderFootMost, 1.0 / 3.0, true, true, false),
            ("ab", LadderFootMost, 0.25, true, true, false),
            ("us_construction", LadderFootMost, 0.25, true, true, false),
            ("ab", ApproachUnknown, 7.0, false, true, true),
        ] {
            let l = all().iter().find(|p| p.id == id).and_then(|p| p.limit(what)).expect("held");
            let step = 1e-6 * value;
            assert!((l.value / value - 1.0).abs() < 1e-8, "{id} {what:?}: {}", l.value);
            let holds = |x: f64| l.comparison.holds(x, l.value);
            assert_eq!(
                (holds(l.value - step), holds(l.value), holds(l.value + step)),
                (under, at, over),
                "{id} {what:?}"
            );
        }
    }

    /// Approach distances by voltage, by hand from each place's own table.
    #[test]
    fn approach_distances_by_voltage_and_place() {
        use Voltage::*;
        for (id, voltage, m) in [
            ("ab", Unknown, Some(7.0)),
            ("ab", Service, Some(1.0)),
            // 40 kV and then 69/72 kV: 50 kV is over the first.
            ("ab", To50Kv, Some(3.5)),
            ("ab", To150Kv, Some(5.0)),
            ("qc", To50Kv, Some(3.0)),
            // From 125 kV on.
            ("qc", To150Kv, Some(5.0)),
            ("qc", Over250Kv, None),
            ("bc", To75Kv, Some(3.0)),
            ("bc", To150Kv, Some(4.5)),
            ("on", To150Kv, Some(3.0)),
            ("on", To250Kv, Some(4.5)),
            // 10 ft; 10 ft and 4 in for each 10 kV over 50: 10 in, 40 in.
            ("us_general", To50Kv, Some(3.048)),
            ("us_general", To75Kv, Some(3.302)),
            ("us_construction", To150Kv, Some(4.064)),
            ("on", Unknown, None),
            ("on", Service, None),
            ("qc", Service, None),
            ("uk", To50Kv, None),
        ] {
            let got = place(id).and_then(|p| p.approach(voltage)).map(|l| l.value);
            let same = match (got, m) {
                (Some(a), Some(b)) => (a - b).abs() < 1e-4,
                (a, b) => a == b,
            };
            assert!(same, "{id} {voltage:?}: {got:?}, not {m:?}");
        }
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
