//! Whole sentences about a set-up and a fall: verdict, findings, the scene in words.

use super::{Key, Lang, fill, limit_quantity, number, quantity, quantity_against, text};
use crate::physics::trace::{EventKind, Outcome, Trace};
use crate::report::Report;
use crate::rules::{Finding, FindingCode, Limit, Severity};
use crate::scenario::{Arrow, Below, Bolt, Field, Latch, Problem, ProblemCode, Scenario, Stance};
use crate::units::{Quantity, Rounding, Units};

/// Language and units of one reader.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reader {
    /// Language.
    pub lang: Lang,
    /// Units.
    pub units: Units,
}

impl Reader {
    /// A text.
    pub fn t(self, key: Key) -> &'static str {
        text(self.lang, key)
    }
    /// A text with its places filled.
    pub fn f(self, key: Key, values: &[(&str, &str)]) -> String {
        fill(self.t(key), values)
    }
    /// A number with its unit.
    pub fn q(self, q: Quantity, si: f64, rounding: Rounding) -> String {
        quantity(self.lang, self.units, q, si, rounding)
    }
    /// A limit's value.
    pub fn limit(self, l: &Limit) -> String {
        match limit_unit(l) {
            Some(q) => limit_quantity(self.lang, self.units, q, l.value),
            None => number(self.lang, l.value, 2),
        }
    }
    /// A percentage, rounded up, two figures.
    pub fn percent(self, share: f64) -> String {
        format!("{}\u{a0}%", number(self.lang, (share * 1e4).ceil() / 1e2, 2))
    }
    /// Document and clause of a limit, and what is doubtful about it.
    pub fn source(self, l: &Limit) -> String {
        let mut s = self.f(
            Key::SourceLine,
            &[("document", self.lang.of(&l.document)), ("clause", self.lang.of(&l.clause))],
        );
        let note = if l.from_memory {
            self.t(Key::FromMemory).to_owned()
        } else {
            self.f(Key::CheckedOn, &[("date", &l.checked_on)])
        };
        s.push_str(" (");
        s.push_str(&note);
        s.push(')');
        s
    }
}

fn limit_unit(l: &Limit) -> Option<Quantity> {
    use crate::rules::LimitUnit::*;
    match l.unit {
        M => Some(Quantity::Length),
        N => Some(Quantity::Force),
        Ratio => None,
    }
}

/// What a finding says, and where its limit comes from.
pub fn finding(r: Reader, f: &Finding) -> String {
    let value = f.value.map_or(String::new(), |v| match f.limit {
        Some(l) if limit_unit(l) == Some(v.quantity) && f.code != FindingCode::TriggerHeight => {
            quantity_against(r.lang, r.units, v.quantity, v.si, l.value, v.rounding)
        }
        _ => r.q(v.quantity, v.si, v.rounding),
    });
    let limit = f.limit.map_or(String::new(), |l| r.limit(l));
    let key = if f.met == Some(true) { Key::SaysMet(f.code) } else { Key::Says(f.code) };
    r.f(key, &[("value", &value), ("limit", &limit)])
}

/// The word for a severity.
pub fn severity(r: Reader, s: Severity) -> &'static str {
    r.t(match s {
        Severity::Critical => Key::SeverityCritical,
        Severity::Major => Key::SeverityMajor,
        Severity::Minor => Key::SeverityMinor,
        Severity::Note => Key::SeverityNote,
        Severity::Good => Key::SeverityGood,
    })
}

/// One sentence for the whole fall, and the limit behind it where one decided.
pub fn verdict(r: Reader, rep: &Report) -> (String, Option<&'static Limit>) {
    let t = &rep.trace;
    let find = |code| rep.findings.iter().find(|f: &&Finding| f.code == code);
    let speed = |code| find(code).and_then(|f| f.value).map(|v| r.q(v.quantity, v.si, v.rounding));
    let ground = speed(FindingCode::StrikesGround);
    let deck = speed(FindingCode::StrikesObstacle);
    let landed = ground.clone().or(deck.clone());
    match t.outcome {
        Outcome::LetGo => {
            let anchor = find(FindingCode::AnchorGaveWay);
            let s = match (anchor, landed) {
                (Some(_), Some(v)) => r.f(Key::VerdictAnchorGround, &[("value", &v)]),
                (Some(f), None) => r.f(
                    Key::VerdictAnchor,
                    &[("value", &f.value.map_or(String::new(), |v| r.q(v.quantity, v.si, v.rounding)))],
                ),
                (None, Some(v)) => r.f(Key::VerdictLetGoGround, &[("value", &v)]),
                (None, None) => r.t(Key::VerdictLetGo).to_owned(),
            };
            (s, None)
        }
        Outcome::Strikes => {
            let missing = t.clearance_margin_m.map(|m| r.q(Quantity::Length, -m, Rounding::Up));
            let on_deck = deck.is_some() && first_struck_is_obstacle(t);
            let value = if on_deck { deck } else { ground }.unwrap_or_default();
            let s = match (missing, on_deck) {
                (Some(m), true) => r.f(Key::VerdictObstacleShort, &[("value", &value), ("missing", &m)]),
                (Some(m), false) => r.f(Key::VerdictGroundShort, &[("value", &value), ("missing", &m)]),
                (None, true) => r.f(Key::VerdictObstacle, &[("value", &value)]),
                (None, false) => r.f(Key::VerdictGround, &[("value", &value)]),
            };
            (s, None)
        }
        Outcome::Stopped => {
            let failed = [FindingCode::PeakForce, FindingCode::FreeFall]
                .into_iter()
                .filter_map(find)
                .find(|f| f.met == Some(false));
            let decided =
                failed.or_else(|| find(FindingCode::PeakForce)).or_else(|| find(FindingCode::FreeFall));
            if let Some(f) = decided
                && let (Some(v), Some(l)) = (f.value, f.limit)
            {
                let value = quantity_against(r.lang, r.units, v.quantity, v.si, l.value, v.rounding);
                let key = match (f.code, f.met == Some(true)) {
                    (FindingCode::FreeFall, false) => Key::VerdictFreeFall,
                    (_, false) => Key::VerdictStoppedOver,
                    (FindingCode::FreeFall, true) => {
                        let force = r.q(Quantity::Force, t.peak_force_n, Rounding::Up);
                        return (r.f(Key::VerdictNoForce, &[("value", &force)]), Some(l));
                    }
                    _ if t.left_roof => Key::VerdictStopped,
                    _ => Key::VerdictOnRoof,
                };
                return (r.f(key, &[("value", &value), ("limit", &r.limit(l))]), Some(l));
            }
            let force = r.q(Quantity::Force, t.peak_force_n, Rounding::Up);
            (r.f(Key::VerdictNoForce, &[("value", &force)]), None)
        }
    }
}

fn first_struck_is_obstacle(t: &Trace) -> bool {
    let at = |k| t.time_of(k).unwrap_or(f64::INFINITY);
    at(EventKind::StrikesObstacle) < at(EventKind::StrikesGround)
}

/// Whether a prediction was right: the outcome as the three answers see it.
pub fn outcome(r: Reader, o: Outcome) -> &'static str {
    r.t(Key::Outcome(o))
}

/// What is wrong with a set-up, in a sentence.
pub fn problem(r: Reader, p: &Problem) -> String {
    let (mut name, mut min, mut max) = (p.field.to_owned(), String::new(), String::new());
    if let Some(f) = Field::ALL.iter().find(|f| f.path() == p.field) {
        let (label, q) = field(*f);
        let range = f.range();
        name = r.t(label).to_owned();
        min = r.q(q, range.min, Rounding::Up);
        max = r.q(q, range.max, Rounding::Down);
    }
    let code = if p.code == ProblemCode::NotFinite { ProblemCode::OutOfRange } else { p.code };
    r.f(Key::Problem(code), &[("field", &name), ("min", &min), ("max", &max)])
}

/// Label and kind of a number field.
pub fn field(f: Field) -> (Key, Quantity) {
    use Quantity::*;
    match f {
        Field::AnchorFromRidge => (Key::AnchorPlace, Length),
        Field::LifelineLength => (Key::RopeLength, Length),
        Field::LifelineModulus => (Key::RopeModulus, Modulus),
        Field::GrabAboveDring => (Key::GrabHeight, Length),
        Field::LanyardLength => (Key::LanyardLength, Length),
        Field::DeployForce => (Key::DeployForce, Force),
        Field::MaxExtension => (Key::MaxExtension, Length),
        Field::Mass => (Key::Mass, Mass),
        Field::Stature => (Key::Stature, Length),
        Field::StandingHeight => (Key::StandingHeight, Length),
        Field::FromEave => (Key::FromEave, Length),
        Field::LadderFoot => (Key::LadderFoot, Length),
        Field::LadderLength => (Key::LadderLength, Length),
        Field::EaveHeight => (Key::EaveHeight, Length),
        Field::RoofPitch => (Key::RoofPitch, Angle),
        Field::HalfSpan => (Key::HalfSpan, Length),
        Field::Overhang => (Key::Overhang, Length),
        Field::ObstacleHeight => (Key::ObstacleHeight, Length),
        Field::ObstacleDistance => (Key::ObstacleDistance, Length),
        Field::ObstacleWidth => (Key::ObstacleWidth, Length),
    }
}

/// The scene in words.
pub fn state(r: Reader, s: &Scenario) -> Vec<String> {
    let len = |x| r.q(Quantity::Length, x, Rounding::Nearest);
    let up = s.grab.above_dring_m;
    let offset = if up.abs() < 5e-3 {
        r.t(Key::Level).to_owned()
    } else if up > 0.0 {
        r.f(Key::Above, &[("value", &len(up))])
    } else {
        r.f(Key::Below, &[("value", &len(-up))])
    };
    vec![
        r.f(Key::StateAnchor, &[("kind", r.t(Key::Anchor(s.anchor.kind)))]),
        r.f(
            Key::StateRope,
            &[
                ("length", &len(s.lifeline.length_m)),
                ("knot", r.t(if s.lifeline.end_knot { Key::EndKnotYes } else { Key::EndKnotNo })),
                ("lanyard", &len(s.lanyard.length_m)),
                (
                    "absorber",
                    r.t(if s.lanyard.absorber.is_some() { Key::AbsorberYes } else { Key::AbsorberNo }),
                ),
            ],
        ),
        r.f(
            Key::StateGrab,
            &[
                ("offset", &offset),
                ("arrow", r.t(if s.grab.arrow == Arrow::Up { Key::ArrowUp } else { Key::ArrowDown })),
                ("bolt", r.t(if s.grab.bolt == Bolt::Tight { Key::BoltTight } else { Key::BoltLoose })),
                ("latch", r.t(if s.grab.latch == Latch::Closed { Key::LatchClosed } else { Key::LatchOpen })),
            ],
        ),
        match s.stance {
            Stance::Ladder { standing_height_m } => {
                r.f(Key::StateStanding, &[("height", &len(standing_height_m))])
            }
            Stance::Roof { from_eave_m } => r.f(
                Key::StateRoof,
                &[("distance", &len(from_eave_m)), ("height", &len(s.house.eave_height_m))],
            ),
        },
        match s.house.below {
            Below::BareGround => r.t(Key::StateBelowGround).to_owned(),
            Below::Obstacle { height_m, distance_m, .. } => {
                r.f(Key::StateBelowObstacle, &[("height", &len(height_m)), ("distance", &len(distance_m))])
            }
        },
    ]
}

/// The fall in words: its events in order with their times.
pub fn events(r: Reader, t: &Trace) -> String {
    let list: Vec<String> = t
        .events
        .iter()
        .map(|e| {
            format!("{} ({})", r.t(Key::Event(e.kind)), r.q(Quantity::Time, e.time_s, Rounding::Nearest))
        })
        .collect();
    r.f(Key::StateAfter, &[("events", &list.join(", "))])
}
