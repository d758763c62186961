//! Limits of each place, as data, and what a fall means under them.
//!
//! A place is one file in `src/rules/places`; a new place is a new file and no code. Values that
//! no place sets (the reserve under the feet) stand in `common.json`. [`judge`] turns a scenario
//! and its trace into findings; it computes no physics and writes no sentence. A working load and
//! a breaking load are different types and cannot be compared.

use crate::physics::equipment::assumed_anchor_capacity_n;
use crate::physics::geometry::Geometry;
use crate::physics::trace::{EventKind, Outcome, Thing, Trace};
use crate::scenario::{Arrow, Bolt, HarnessFit, Latch, Scenario, Stance};
use crate::units::{Quantity, Rounding};
use include_dir::{Dir, include_dir};
use serde::{Deserialize, Serialize};
use std::sync::OnceLock;

/// Version of the rules data and of [`judge`].
pub const RULES_VERSION: u32 = 1;

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
}

impl LimitUnit {
    fn quantity(self) -> Quantity {
        match self {
            LimitUnit::M => Quantity::Length,
            LimitUnit::N => Quantity::Force,
            LimitUnit::Ratio => Quantity::Ratio,
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

/// A load within allowable stress, N. Compares with its own kind only:
///
/// ```compile_fail
/// use shortfall::rules::{BreakingLoadN, WorkingLoadN};
/// assert!(WorkingLoadN(8000.0) < BreakingLoadN(18000.0));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct WorkingLoadN(pub f64);

/// A load at which a thing may break, N. Compares with its own kind only.
///
/// ```
/// use shortfall::rules::BreakingLoadN;
/// assert!(BreakingLoadN(9000.0) < BreakingLoadN(18000.0));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct BreakingLoadN(pub f64);

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
    /// The document.
    pub document: Bilingual,
    /// The clause in it.
    pub clause: Bilingual,
    /// Day on which the value was compared with its source, or (from memory) entered.
    pub checked_on: String,
    /// Not read in the source.
    pub from_memory: bool,
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
    /// The limits.
    pub limits: Vec<Limit>,
}

impl Place {
    /// The limit of a kind, if the place sets one.
    pub fn limit(&self, what: LimitKind) -> Option<&Limit> {
        self.limits.iter().find(|l| l.what == what)
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
    /// The limit it was held against.
    pub limit: Option<&'static Limit>,
    /// The number rests on an assumed figure.
    pub assumed: bool,
}

impl Finding {
    fn new(code: FindingCode, severity: Severity) -> Finding {
        Finding { code, severity, met: None, value: None, limit: None, assumed: false }
    }
    fn value(mut self, quantity: Quantity, si: f64, rounding: Rounding) -> Finding {
        self.value = Some(Value { quantity, si, rounding });
        self
    }
    fn assumed(mut self) -> Finding {
        self.assumed = true;
        self
    }
    fn against(code: FindingCode, si: f64, limit: &'static Limit, missed: Severity) -> Finding {
        let met = limit.comparison.holds(si, limit.value);
        let rounding = if limit.comparison == Comparison::AtMost { Rounding::Up } else { Rounding::Down };
        Finding {
            met: Some(met),
            limit: Some(limit),
            ..Finding::new(code, if met { Severity::Good } else { missed })
        }
        .value(limit.unit.quantity(), si, rounding)
    }
}

/// Speed of a blow against wall, ladder or roof from which it is worth a finding, m/s (assumed:
/// a drop from 0.46 m).
pub const HARD_SWING_M_S: f64 = 3.0;

/// Everything a fall says about a set-up under a place's limits, most severe first.
pub fn judge(s: &Scenario, t: &Trace, place: &'static Place) -> Vec<Finding> {
    use FindingCode as C;
    use Severity::*;
    let mut out = Vec::new();

    // What happened.
    let blow = |what: Thing| t.impacts.iter().find(|i| i.what == what);
    for (thing, code) in [(Thing::Ground, C::StrikesGround), (Thing::Obstacle, C::StrikesObstacle)] {
        if let Some(i) = blow(thing) {
            out.push(Finding::new(code, Critical).value(Quantity::Speed, i.speed_m_s, Rounding::Up));
        }
    }
    if t.time_of(EventKind::OffRope).is_some() {
        out.push(Finding::new(C::OffRope, Critical));
    }
    if t.time_of(EventKind::AnchorFails).is_some() {
        let capacity = assumed_anchor_capacity_n(s.anchor.kind);
        out.push(
            Finding::new(C::AnchorGaveWay, Critical)
                .value(Quantity::Force, capacity, Rounding::Down)
                .assumed(),
        );
    }

    // Limits, where something stopped the worker.
    let stopped = t.outcome == Outcome::Stopped;
    if stopped {
        let force = place
            .limit(LimitKind::BodyForce)
            .map(|l| Finding::against(C::PeakForce, t.peak_force_n, l, Critical));
        let fall = place
            .limit(LimitKind::FreeFall)
            .map(|l| Finding::against(C::FreeFall, t.free_fall_m, l, Critical));
        if place.force_or_free_fall {
            // One of the two is enough: the one that is met, or the force when neither is.
            let met = |f: &Option<Finding>| f.as_ref().is_some_and(|f| f.met == Some(true));
            let chosen = if met(&force) || !met(&fall) { force } else { fall };
            if let Some(f) = chosen {
                out.push(f);
                out.push(Finding::new(C::ForceOrFreeFall, Note));
            }
        } else {
            out.extend(force);
            out.extend(fall);
        }
        if let Some(l) = place.limit(LimitKind::StoppingDistance) {
            let d = t.absorber_extension_m + t.grab_slip_m + t.harness_slide_m;
            out.push(Finding::against(C::StoppingDistance, d, l, Major));
        }
    }
    if let Some(l) = common(LimitKind::ClearanceReserve)
        && t.outcome != Outcome::LetGo
        && t.left_roof
        && let Some(m) = t.clearance_margin_m
    {
        out.push(Finding::against(C::ClearanceMargin, m, l, Major));
    }
    if let Some(i) = t
        .impacts
        .iter()
        .filter(|i| !matches!(i.what, Thing::Ground | Thing::Obstacle))
        .max_by(|a, b| a.speed_m_s.total_cmp(&b.speed_m_s))
        && stopped
        && i.speed_m_s >= HARD_SWING_M_S
    {
        out.push(Finding::new(C::HardSwing, Minor).value(Quantity::Speed, i.speed_m_s, Rounding::Up));
    }

    // The gear.
    if t.absorber_spent {
        out.push(Finding::new(C::AbsorberSpent, Major).value(
            Quantity::Length,
            t.absorber_extension_m,
            Rounding::Up,
        ));
    }
    if s.lanyard.absorber.is_none() {
        out.push(Finding::new(C::NoAbsorber, Major));
    }
    if s.grab.arrow == Arrow::Down {
        out.push(Finding::new(C::GrabReversed, Critical));
    }
    if s.grab.latch == Latch::Open {
        out.push(Finding::new(C::LatchOpen, Critical));
    }
    if s.grab.bolt == Bolt::Loose {
        out.push(Finding::new(C::BoltLoose, Major));
    }
    if s.grab.above_dring_m < -1e-9 {
        out.push(Finding::new(C::GrabLow, Major).value(
            Quantity::Length,
            -s.grab.above_dring_m,
            Rounding::Up,
        ));
    }
    if !s.lifeline.end_knot {
        out.push(Finding::new(C::EndKnotMissing, Minor));
    }
    if s.worker.harness == HarnessFit::Loose {
        out.push(Finding::new(C::HarnessLoose, Minor));
    }

    // Anchor: like with like only.
    if let Some((l, asked)) = place.anchor(s.lanyard.absorber.is_some()) {
        let assumed = BreakingLoadN(assumed_anchor_capacity_n(s.anchor.kind));
        match asked {
            AnchorLimit::Breaking(asked) => {
                let met = assumed >= asked;
                out.push(Finding {
                    met: Some(met),
                    limit: Some(l),
                    ..Finding::new(C::AnchorCapacity, if met { Good } else { Major })
                        .value(Quantity::Force, assumed.0, Rounding::Down)
                        .assumed()
                });
            }
            AnchorLimit::Working(_) => out.push(Finding {
                limit: Some(l),
                ..Finding::new(C::AnchorBasis, Note)
                    .value(Quantity::Force, assumed.0, Rounding::Down)
                    .assumed()
            }),
        }
    }

    // Ladder and height.
    if let (Stance::Ladder { standing_height_m }, Some(g)) = (s.stance, Geometry::of(s)) {
        let share = s.ladder.foot_distance_m / g.ladder.foot.dist(g.ladder.support);
        let find = |w| place.limit(w).or_else(|| common(w));
        let least = find(LimitKind::LadderFootLeast);
        let most = find(LimitKind::LadderFootMost);
        // A foot set by eye: within a twentieth of the length counts as on the mark.
        let slack = 0.03;
        let (ok, limit) = match (least, most) {
            (Some(a), _) if share < a.value - slack => (false, least),
            (_, Some(b)) if share > b.value + slack => (false, most),
            _ => (true, least),
        };
        out.push(Finding {
            met: Some(ok),
            limit,
            ..Finding::new(C::LadderAngle, if ok { Good } else { Major }).value(
                Quantity::Angle,
                g.ladder.angle_rad(),
                Rounding::Nearest,
            )
        });
        trigger(&mut out, place, standing_height_m);
    } else if let Some(g) = Geometry::of(s) {
        trigger(&mut out, place, g.eave.y);
    }
    out.sort_by_key(|f| f.severity);
    out
}

fn trigger(out: &mut Vec<Finding>, place: &'static Place, height_m: f64) {
    if let Some(l) = place.limit(LimitKind::TriggerHeight) {
        out.push(Finding {
            met: Some(l.comparison.holds(height_m, l.value)),
            limit: Some(l),
            ..Finding::new(FindingCode::TriggerHeight, Severity::Note).value(
                Quantity::Length,
                height_m,
                Rounding::Nearest,
            )
        });
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_place_file_reads() {
        let all = read_places().expect("reads");
        assert!(all.iter().any(|p| p.id == "common"));
        for p in &all {
            for l in &p.limits {
                assert!(l.value.is_finite() && l.value > 0.0, "{} {:?}", p.id, l.what);
                assert_eq!(l.checked_on.len(), 10, "{} {:?}", p.id, l.what);
                assert!(!l.document.fr.is_empty() && !l.clause.fr.is_empty());
                let anchor = matches!(l.what, LimitKind::Anchor | LimitKind::AnchorWithAbsorber);
                assert_eq!(anchor, l.basis.is_some(), "{} {:?}", p.id, l.what);
            }
        }
    }

    #[test]
    fn check_16_trigger_heights_of_the_places_held() {
        let required = |id: &str, h: f64| {
            let l = place(id).and_then(|p| p.limit(LimitKind::TriggerHeight)).expect("set");
            l.comparison.holds(h, l.value)
        };
        // At 2.9 m only the US requires; at 3.0 m not yet ON and QC; at 3.01 m all.
        assert!(required("us_construction", 2.9) && !required("on", 2.9) && !required("qc", 2.9));
        assert!(!required("on", 3.0) && !required("qc", 3.0));
        assert!(required("on", 3.01) && required("qc", 3.01));
    }
}
