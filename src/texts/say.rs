//! Whole sentences about a set-up and a fall: verdict, findings, the scene in words.

use super::{Bench as W, Room, Stage as S, Worded};
use super::{Key, Lang, fill, limit_quantity, number, quantity, quantity_against};
use crate::grade::report::Report;
use crate::grade::scoring::Grade;
use crate::physics::equipment::{ABSORBER_SHARE_MIDDLE, AbsorberParams};
use crate::physics::trace::{EventKind, Outcome, Thing, Trace};
use crate::practice::inspection::Look;
use crate::practice::thumbs::Thumb;
use crate::rules::{Duty, Finding, FindingCode, Limit, LimitKind, ReadIn, Severity, Source, place};
use crate::scenario::file::FileError;
use crate::scenario::{
    Arrow, Below, Bolt, ConnectorState, Field, LabelState, Latch, OtherMethod, PackState, Problem,
    ProblemCode, RopeState, Scenario, Stance, WebbingState,
};
use crate::strength::Ground;
use crate::units::{G_M_S2, Quantity, Rounding, Units};

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
    pub fn t(self, key: impl Worded) -> &'static str {
        key.words(self.lang)
    }
    /// A text with its places filled.
    pub fn f(self, key: impl Worded, values: &[(&str, &str)]) -> String {
        fill(self.t(key), values)
    }
    /// What joins a label and its value.
    pub fn colon(self) -> &'static str {
        if self.lang == Lang::Fr { "\u{a0}: " } else { ": " }
    }
    /// A number with its unit.
    pub fn q(self, q: Quantity, si: f64, rounding: Rounding) -> String {
        quantity(self.lang, self.units, q, si, rounding)
    }
    /// A limit's value.
    pub fn limit(self, l: &Limit) -> String {
        match limit_unit(l) {
            Some(q) => limit_quantity(self.lang, self.units, q, l.value),
            None if l.unit != crate::rules::LimitUnit::Ratio => number(self.lang, l.value, 0),
            None => number(self.lang, l.value, 2),
        }
    }
    /// A percentage, rounded up, two figures.
    pub fn percent(self, share: f64) -> String {
        format!("{}\u{a0}%", number(self.lang, (share * 1e4).ceil() / 1e2, 2))
    }
    /// Document and clause of a limit, and what is doubtful about it.
    pub fn source(self, l: &Limit) -> String {
        self.source_of(&l.source)
    }
    /// The same of a duty.
    pub fn duty(self, d: &Duty) -> String {
        self.source_of(&d.source)
    }
    /// Document and clause, and what it was read in, when.
    pub fn source_of(self, s: &Source) -> String {
        let line = self.f(
            Key::SourceLine,
            &[("document", self.lang.of(&s.document)), ("clause", self.lang.of(&s.clause))],
        );
        let key = match s.read_in {
            ReadIn::Text => Key::CheckedOn,
            ReadIn::OfficialGuide => Key::CheckedGuide,
            ReadIn::Secondary => Key::CheckedSecondary,
            ReadIn::Memory => Key::FromMemory,
            ReadIn::CommonPractice => return line,
        };
        format!("{line} ({})", self.f(key, &[("date", &s.checked_on)]))
    }
}

fn limit_unit(l: &Limit) -> Option<Quantity> {
    use crate::rules::LimitUnit::*;
    match l.unit {
        M => Some(Quantity::Length),
        N => Some(Quantity::Force),
        Rad => Some(Quantity::Angle),
        Ratio | Years | Minutes => None,
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
    let key = if f.met == Some(true) { f.code.says_met() } else { f.code.says() };
    let other = f.other.map_or(String::new(), |v| r.q(v.quantity, v.si, v.rounding));
    let range = if f.code == FindingCode::LadderAngle { ladder_range(r, f) } else { String::new() };
    r.f(key, &[("value", &value), ("limit", &limit), ("other", &other), ("range", &range)])
}

/// The share of its length by which a ladder's foot stands out, as its limits have it.
pub fn ladder_range(r: Reader, f: &Finding) -> String {
    let ends = [f.limit.map_or(0.25, |l| l.value), f.other.map_or(0.25, |v| v.si)];
    r.t(if ends.iter().any(|x| *x > 0.3) { Key::QuarterToThird } else { Key::Quarter }).to_owned()
}

/// What to do about a finding.
pub fn change_of(r: Reader, f: &Finding) -> String {
    let range = if f.code == FindingCode::LadderAngle { ladder_range(r, f) } else { String::new() };
    let limit = f.limit.map_or(String::new(), |l| r.limit(l));
    r.f(f.code.change(), &[("range", &range), ("limit", &limit)])
}

/// How far a finding's number is from its limit, as a line.
pub fn margin(r: Reader, f: &Finding) -> Option<String> {
    if f.code == FindingCode::TriggerHeight {
        return None;
    }
    let (m, v) = (f.margin_si()?, f.value?);
    let shown = r.q(v.quantity, m.abs(), if m < 0.0 { Rounding::Up } else { Rounding::Down });
    Some(r.f(if m < 0.0 { Key::MarginMissing } else { Key::MarginLine }, &[("value", &shown)]))
}

/// A text with its first letter large, where it stands as a sentence.
pub fn upper_first(text: &str) -> String {
    let mut all = text.chars();
    all.next().map_or(String::new(), |c| c.to_uppercase().chain(all).collect())
}

/// In the middle of a sentence; names like D-ring keep their capital.
pub fn lower_first(text: &str) -> String {
    let mut letters = text.chars();
    // A word in capitals is a signal word.
    if text.chars().nth(1).is_some_and(char::is_uppercase) {
        return text.to_owned();
    }
    letters.next().map_or(String::new(), |c| c.to_lowercase().chain(letters).collect())
}

/// What else that was found led to a finding.
fn cause_of(rep: &Report, code: FindingCode) -> Option<FindingCode> {
    use FindingCode as C;
    let causes: &[FindingCode] = match code {
        C::StrikesGround | C::StrikesObstacle => &[
            C::NotClipped,
            C::GrabReversed,
            C::LatchOpen,
            C::OffRope,
            C::AnchorGaveWay,
            C::RopeBroke,
            C::LinkBroke,
        ],
        C::OffRope => &[C::LatchOpen, C::GrabReversed, C::RopeEndOpen],
        _ => &[],
    };
    causes.iter().copied().find(|c| rep.findings.iter().any(|g| g.code == *c))
}

/// What to change for a finding of a fall. Where something else that was found led to it, that comes first.
pub fn change_in(r: Reader, rep: &Report, f: &Finding) -> String {
    match cause_of(rep, f.code) {
        Some(c) => r.f(W::FirstThat, &[("title", &lower_first(r.t(c.title())))]),
        None => change_of(r, f),
    }
}

/// Why a finding came out as it did, from the trace.
pub fn why(r: Reader, rep: &Report, f: &Finding) -> Option<String> {
    let (s, t) = (&rep.set_up, &rep.trace);
    let len = |x: f64| r.q(Quantity::Length, x, Rounding::Nearest);
    let force = |x: f64| r.q(Quantity::Force, x, Rounding::Nearest);
    Some(match f.code {
        FindingCode::FreeFall => r.f(
            Key::WhyFreeFall,
            &[
                ("lanyard", &len(s.lanyard.length_m)),
                ("offset", &offset(r, s.grab.above_dring_m)),
                ("slack", &len((s.lanyard.length_m - s.grab.above_dring_m).max(0.0))),
            ],
        ),
        FindingCode::PeakForce | FindingCode::AbsorberSpent | FindingCode::AbsorberExtension => {
            let rope = len(t.rope_stretch_m);
            let torn = len(t.absorber_extension_m);
            match AbsorberParams::of(s, ABSORBER_SHARE_MIDDLE) {
                Some(a) if t.absorber_spent => {
                    r.f(Key::WhyForceSpent, &[("length", &len(a.max_extension_m))])
                }
                Some(a) if t.absorber_extension_m > 1e-3 => {
                    let left = r.q(Quantity::Length, a.max_extension_m - t.absorber_extension_m, Rounding::Down);
                    r.f(
                        Key::WhyForceAbsorber,
                        &[("force", &force(a.force_n)), ("length", &torn), ("left", &left)],
                    )
                }
                Some(a) => r.f(Key::WhyForceWhole, &[("force", &force(a.opening_n)), ("length", &rope)]),
                _ => r.f(Key::WhyForceRope, &[("length", &rope)]),
            }
        }
        FindingCode::ClearanceMargin | FindingCode::StrikesGround | FindingCode::StrikesObstacle
            if t.outcome != Outcome::LetGo =>
        {
            let named_m =
                t.free_fall_m + t.stop_m() + t.rope_stretch_m;
            let rest_m = t.total_fall_m - named_m;
            // Where nothing held, what slid is part of the free fall: there is no sum to tell.
            if rest_m < -0.1 {
                return None;
            }
            r.f(
                Key::WhyClearance,
                &[
                    ("fall", &len(t.total_fall_m)),
                    ("free", &r.q(Quantity::Length, t.free_fall_m, Rounding::Up)),
                    ("absorber", &len(t.absorber_extension_m)),
                    ("slip", &len(t.braked_slip_m())),
                    ("rope", &len(t.rope_stretch_m)),
                    ("harness", &len(t.harness_slide_m)),
                    ("rest", &len(rest_m.max(0.0))),
                ],
            )
        }
        FindingCode::AnchorGaveWay
        | FindingCode::AnchorAllowable
        | FindingCode::AnchorCapacity
        | FindingCode::AnchorFactor
            // Where no edge held anything back there is nothing to tell.
            if t.anchor_peak_n < 0.97 * t.peak_force_n =>
        {
            r.f(Key::WhyAnchor, &[("anchor", &force(t.anchor_peak_n)), ("force", &force(t.peak_force_n))])
        }
        FindingCode::BoltLoose
        | FindingCode::GrabReversed
        | FindingCode::StoppingDistance
        | FindingCode::ArrestDistance => r.f(Key::WhySlip, &[("slip", &len(t.grab_slip_m))]),
        _ => return None,
    })
}

/// What an anchor holds, in sentences.
pub fn strength(r: Reader, s: &Scenario) -> Vec<String> {
    let a = crate::strength::anchor(s);
    let n = |x: f64| r.q(Quantity::Force, x, Rounding::Down);
    let key = match a.ground {
        Ground::Fasteners | Ground::Masonry => Key::StrengthComputed,
        Ground::Stated => Key::StrengthStated,
        Ground::Unsuitable => Key::StrengthUnsuitable,
    };
    let allowable = match a.allowable {
        Some(w) => r.f(Key::StrengthAllowable, &[("value", &n(w.0))]),
        None => r.t(Key::StrengthNoAllowable).to_owned(),
    };
    let crowded =
        a.ground == Ground::Fasteners && s.anchor.fasteners.per_side > crate::strength::MOST_IN_A_ROW;
    let mut out = vec![
        r.f(key, &[("mean", &n(a.mean.0)), ("low", &n(a.low.0))]),
        allowable,
        r.t(match a.ground {
            Ground::Fasteners => Key::StrengthJudge,
            Ground::Masonry => Key::StrengthJudgeStack,
            Ground::Stated | Ground::Unsuitable => Key::StrengthJudgeAny,
        })
        .to_owned(),
    ];
    out.extend(crowded.then(|| r.t(W::SplitNote).to_owned()));
    out
}

/// What a look at a part shows, without a judgement.
pub fn look(r: Reader, look: Look) -> String {
    let key = match look {
        Look::Fasteners(0) => Key::LooksNailsHit,
        Look::Fasteners(n) => {
            return r.f(Key::LooksNailsMissed, &[("value", &n.to_string())]);
        }
        Look::Rope(RopeState::Sound) => Key::LooksRopeSound,
        Look::Rope(RopeState::Frayed) => Key::LooksRopeFrayed,
        Look::Rope(RopeState::Knotted) => Key::LooksRopeKnotted,
        Look::Arrow(Arrow::Up) => Key::LooksArrowUp,
        Look::Arrow(Arrow::Down) => Key::LooksArrowDown,
        Look::Bolt(Bolt::Tight) => Key::LooksBoltTight,
        Look::Bolt(Bolt::Loose) => Key::LooksBoltLoose,
        Look::Latch(Latch::Closed) => Key::LooksLatchClosed,
        Look::Latch(Latch::Open) => Key::LooksLatchOpen,
        Look::Connector(ConnectorState::Sound) => Key::LooksConnectorSound,
        Look::Connector(ConnectorState::Unlocked) => Key::LooksConnectorUnlocked,
        Look::Connector(ConnectorState::Corroded) => Key::LooksConnectorCorroded,
        Look::Pack(PackState::Sound) => Key::LooksPackSound,
        Look::Pack(PackState::Deployed) => Key::LooksPackDeployed,
        Look::Webbing(WebbingState::Sound) => Key::LooksWebbingSound,
        Look::Webbing(WebbingState::Cut) => Key::LooksWebbingCut,
        Look::Label(LabelState::Legible) => Key::LooksLabelLegible,
        Look::Label(LabelState::Missing) => Key::LooksLabelMissing,
    };
    r.t(key).to_owned()
}

/// A rule of thumb: what is said, how it fares, and what the numbers say.
pub fn thumb(r: Reader, t: Thumb) -> (&'static str, &'static str, String) {
    let (says, told) = match t {
        Thumb::Harness => (Room::ThumbHarness, Room::ThumbHarnessTold),
        Thumb::Anchor => (Room::ThumbAnchor, Room::ThumbAnchorTold),
        Thumb::Force => (Room::ThumbForce, Room::ThumbForceTold),
        Thumb::Absorber => (Room::ThumbAbsorber, Room::ThumbAbsorberTold),
        Thumb::Below => (Room::ThumbBelow, Room::ThumbBelowTold),
        Thumb::Face => (Room::ThumbFace, Room::ThumbFaceTold),
        Thumb::Nails => (Room::ThumbNails, Room::ThumbNailsTold),
        Thumb::Look => (Room::ThumbLook, Room::ThumbLookTold),
        Thumb::Arrow => (Room::ThumbArrow, Room::ThumbArrowTold),
        Thumb::Low => (Room::ThumbLow, Room::ThumbLowTold),
        Thumb::Chimney => (Room::ThumbChimney, Room::ThumbChimneyTold),
        Thumb::Holes => (Room::ThumbHoles, Room::ThumbHolesTold),
    };
    let fares = t.fares().label();
    let shown: Vec<(&str, String)> =
        t.numbers().into_iter().map(|n| (n.name, r.q(n.quantity, n.si, n.rounding))).collect();
    let values: Vec<(&str, &str)> = shown.iter().map(|(n, v)| (*n, v.as_str())).collect();
    (r.t(says), r.t(fares), r.f(told, &values))
}

/// What stands at the head of a result.
#[derive(Clone, Debug, PartialEq)]
pub struct Headline {
    /// What its mark is for.
    pub severity: Severity,
    /// One sentence, the cause first.
    pub sentence: String,
    /// The force or the speed, smaller.
    pub figure: String,
}

/// The head of a result: the sentence is about what the mark is for. A fall that held by luck says what was
/// wrong with it, one that struck says why.
pub fn headline(r: Reader, rep: &Report) -> Headline {
    let t = &rep.trace;
    if !t.is_sound() {
        let figure = r.f(Key::NotGraded, &[("value", &r.percent(t.energy_residual))]);
        return Headline { severity: Severity::Note, sentence: r.t(S::NotGradedShort).to_owned(), figure };
    }
    let first = rep.findings.first();
    let passes = matches!(rep.grade, Grade::Graded { passes: true, .. });
    // What is only good to know puts no mark on a fall that held.
    let worst = first
        .map_or(Severity::Good, |f| if f.severity < Severity::Note { f.severity } else { Severity::Good });
    let mut severity = if passes { worst } else { Severity::Critical };
    let blow = t.impacts.iter().max_by(|a, b| a.speed_m_s.total_cmp(&b.speed_m_s));
    let find = |code| rep.findings.iter().find(|f: &&Finding| f.code == code);
    let title = |c: FindingCode| r.t(c.title());
    let sentence = if t.outcome == Outcome::Stopped {
        // The blow against the ladder and the like are told with their speed on the picture.
        match first.filter(|f| f.severity <= Severity::Minor) {
            Some(f) => r.f(S::HeldBut, &[("title", &lower_first(title(f.code)))]),
            None => match blow.filter(|_| find(FindingCode::HardSwing).is_some()) {
                Some(i) => {
                    severity = Severity::Minor;
                    let speed = r.q(Quantity::Speed, i.speed_m_s, Rounding::Up);
                    r.f(S::HeldBlow, &[("thing", r.t(i.what.label())), ("speed", &speed)])
                }
                None => r.t(S::HeldFine).to_owned(),
            },
        }
    } else {
        let on_deck = first_struck_is_obstacle(t);
        let struck = t.time_of(EventKind::StrikesGround).or(t.time_of(EventKind::StrikesObstacle)).is_some();
        let strike = if on_deck { FindingCode::StrikesObstacle } else { FindingCode::StrikesGround };
        let lost = [
            FindingCode::AnchorGaveWay,
            FindingCode::RopeBroke,
            FindingCode::LinkBroke,
            FindingCode::OffRope,
        ];
        let cause = cause_of(rep, strike).or_else(|| lost.into_iter().find(|c| find(*c).is_some()));
        match (cause, struck, on_deck) {
            (Some(c), true, true) => r.f(S::CauseDeck, &[("title", title(c))]),
            (Some(c), true, false) => r.f(S::CauseGround, &[("title", title(c))]),
            (Some(c), false, _) => r.f(S::CauseOnly, &[("title", title(c))]),
            (None, _, true) => r.t(S::NoRoomDeck).to_owned(),
            (None, _, false) => r.t(S::NoRoomGround).to_owned(),
        }
    };
    Headline { severity, sentence, figure: figure(r, rep) }
}

/// The one number under the sentence: the speed of a strike, else the force against its limit.
fn figure(r: Reader, rep: &Report) -> String {
    let t = &rep.trace;
    let landed = [Thing::Ground, Thing::Obstacle];
    if t.outcome != Outcome::Stopped
        && let Some(i) =
            t.impacts.iter().filter(|i| landed.contains(&i.what)).min_by(|a, b| a.time_s.total_cmp(&b.time_s))
    {
        let like_m = i.speed_m_s * i.speed_m_s / (2.0 * G_M_S2);
        return r.f(
            S::MutedSpeed,
            &[
                ("speed", &r.q(Quantity::Speed, i.speed_m_s, Rounding::Up)),
                ("height", &r.q(Quantity::Length, like_m, Rounding::Up)),
            ],
        );
    }
    let force_n = t.judged().peak_force_n;
    match place(&rep.set_up.place).and_then(|p| p.limit(LimitKind::BodyForce)) {
        Some(l) => {
            let value = quantity_against(r.lang, r.units, Quantity::Force, force_n, l.value, Rounding::Up);
            r.f(S::MutedForce, &[("value", &value), ("limit", &r.limit(l))])
        }
        None => r.f(S::MutedForceAlone, &[("value", &r.q(Quantity::Force, force_n, Rounding::Up))]),
    }
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
            // By the usual sum there is no room at all: that is the headline, and this run stands beside it.
            if let Some(f) = find(FindingCode::ArrestTooLow)
                && let (Some(need), Some(room)) = (f.value, f.other)
            {
                let q = |v: crate::rules::Value| r.q(v.quantity, v.si, v.rounding);
                return (r.f(Key::VerdictTooLow, &[("value", &q(need)), ("other", &q(room))]), None);
            }
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
    r.t(o.label())
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
    } else if p.code == ProblemCode::OutOfRange {
        // The counts of fasteners.
        let most = crate::scenario::MOST_FASTENERS_PER_SIDE;
        let missed = p.field.ends_with("missed");
        name = r.t(if missed { Key::FastenersMissed } else { Key::FastenersPerSide }).to_owned();
        (min, max) =
            (if missed { "0" } else { "1" }.to_owned(), if missed { 2 * most } else { most }.to_string());
    }
    let code = if p.code == ProblemCode::NotFinite { ProblemCode::OutOfRange } else { p.code };
    r.f(code.says(), &[("field", &name), ("min", &min), ("max", &max)])
}

/// Label and kind of a number field.
pub fn field(f: Field) -> (Key, Quantity) {
    use Quantity::*;
    match f {
        Field::AnchorFromRidge => (Key::AnchorPlace, Length),
        Field::StatedBreaking => (Key::StatedBreaking, Force),
        Field::ChimneyWidth => (Key::ChimneyWidth, Length),
        Field::ChimneyHeight => (Key::ChimneyHeight, Length),
        Field::SlingHeight => (Key::SlingHeight, Length),
        Field::ChimneyWeight => (Key::ChimneyWeight, LinearWeight),
        Field::LifelineLength => (Key::RopeLength, Length),
        Field::LifelineSlack => (Key::RopeSlack, Length),
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
        Field::ReachOut => (Key::ReachOut, Length),
        Field::LineHeight => (Key::LineHeight, Length),
        Field::LineDistance => (Key::LineDistance, Length),
        Field::EaveHeight => (Key::EaveHeight, Length),
        Field::RoofPitch => (Key::RoofPitch, Angle),
        Field::HalfSpan => (Key::HalfSpan, Length),
        Field::Overhang => (Key::Overhang, Length),
        Field::GroundSlope => (Key::GroundSlope, Angle),
        Field::ObstacleHeight => (Key::ObstacleHeight, Length),
        Field::ObstacleDistance => (Key::ObstacleDistance, Length),
        Field::ObstacleWidth => (Key::ObstacleWidth, Length),
    }
}

/// Another method's name, in the terms of a place.
pub fn other_method(m: OtherMethod, place: &str) -> Key {
    m.label().in_place(place)
}

/// What a fall's neighbours say, where they say more than the fall alone.
pub fn neighbours(r: Reader, t: &Trace) -> Option<String> {
    let n = t.neighbours.filter(|n| n.differ())?;
    let room = n.room_m.map_or(String::new(), |m| {
        r.f(
            W::NeighboursRoom,
            &[
                ("near", &r.q(Quantity::Length, m.low, Rounding::Down)),
                ("far", &r.q(Quantity::Length, m.high, Rounding::Down)),
            ],
        )
    });
    let mut out = r.f(
        W::Neighbours,
        &[
            ("count", &n.count.to_string()),
            ("low", &r.q(Quantity::Force, n.peak_force_n.low, Rounding::Up)),
            ("high", &r.q(Quantity::Force, n.peak_force_n.high, Rounding::Up)),
            ("room", &room),
        ],
    );
    if n.alike < n.count {
        out.push(' ');
        out.push_str(&r.f(W::NeighboursOther, &[("other", &(n.count - n.alike).to_string())]));
    }
    Some(out)
}

/// The grab beside the D-ring, in words.
pub fn offset(r: Reader, up_m: f64) -> String {
    let len = |x| r.q(Quantity::Length, x, Rounding::Nearest);
    if up_m.abs() < 5e-3 {
        r.t(Key::Level).to_owned()
    } else if up_m > 0.0 {
        r.f(Key::Above, &[("value", &len(up_m))])
    } else {
        r.f(Key::Below, &[("value", &len(-up_m))])
    }
}

/// The scene in words.
pub fn state(r: Reader, s: &Scenario) -> Vec<String> {
    let len = |x| r.q(Quantity::Length, x, Rounding::Nearest);
    let offset = offset(r, s.grab.above_dring_m);
    let mut all = vec![
        r.f(Key::StateAnchor, &[("kind", r.t(s.anchor.kind.label()))]),
        r.f(
            Key::StateRope,
            &[
                ("length", &len(s.lifeline.length_m)),
                ("kind", r.t(s.lifeline.kind.label())),
                ("end", r.t(s.lifeline.end.label())),
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
    ];
    if s.house.ground_slope_rad > 0.0 {
        let slope = r.q(Quantity::Angle, s.house.ground_slope_rad, Rounding::Nearest);
        all.push(r.f(Key::StateGroundFalls, &[("slope", &slope)]));
    }
    if !s.lanyard.clipped {
        all.push(r.t(Key::StateNotClipped).to_owned());
    }
    all
}

/// The fall in words: its events in order with their times.
pub fn events(r: Reader, t: &Trace) -> String {
    let list: Vec<String> = t
        .events
        .iter()
        .map(|e| format!("{} ({})", r.t(e.kind.label()), r.q(Quantity::Time, e.time_s, Rounding::Nearest)))
        .collect();
    r.f(Key::StateAfter, &[("events", &list.join(", "))])
}

/// Why a file or link was not opened: a sentence for a painter, then the place for whoever made it.
pub fn file_error(r: Reader, e: &FileError) -> String {
    let why = r.t(e.fault.label());
    let mut place = Vec::new();
    if e.line > 0 {
        let at = [("line", e.line.to_string()), ("column", e.column.to_string())];
        place.push(r.f(W::FaultLine, &[(at[0].0, &at[0].1), (at[1].0, &at[1].1)]));
    }
    if !e.path.is_empty() {
        place.push(e.path.clone());
    }
    let mut all = vec![why.to_owned()];
    if !place.is_empty() {
        all.push(r.f(W::FaultAt, &[("place", &place.join(", "))]));
    }
    r.f(Key::FileBad, &[("reason", &all.join(" "))])
}

/// Words of the trade, each with one line that says what it is.
pub const GLOSSARY: [(W, W); 18] = [
    (W::WordAnchor, W::ToldAnchor),
    (W::WordLifeline, W::ToldLifeline),
    (W::WordGrab, W::ToldGrab),
    (W::WordLanyard, W::ToldLanyard),
    (W::WordDring, W::ToldDring),
    (W::WordKn, W::ToldKn),
    (W::WordRafter, W::ToldRafter),
    (W::WordBreaking, W::ToldBreaking),
    (W::WordWorking, W::ToldWorking),
    (W::WordTwenty, W::ToldTwenty),
    (W::WordAbsorber, W::ToldAbsorber),
    (W::WordFreeFall, W::ToldFreeFall),
    (W::WordClearance, W::ToldClearance),
    (W::WordEnergy, W::ToldEnergy),
    (W::WordCompetent, W::ToldCompetent),
    (W::WordQualified, W::ToldQualified),
    (W::WordArrest, W::ToldArrest),
    (W::WordRestraint, W::ToldRestraint),
];
