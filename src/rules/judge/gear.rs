//! The gear: absorber, grab, harness, rope, connectors.

use crate::geometry::SetUp;
use crate::physics::equipment::class_masses_kg;
use crate::physics::trace::Trace;
use crate::rules::{DutyKind, Finding, FindingCode, LimitKind, Place, Severity, common};
use crate::scenario::{
    Arrow, Bolt, ConnectorState, HarnessFit, LabelState, Latch, PackState, RopeEdge, RopeEnd, RopeState,
    Stance, WebbingState,
};
use crate::units::{Quantity, Rounding};
use FindingCode as C;
use Severity::{Critical, Major, Minor, Note};

pub(super) fn gear(out: &mut Vec<Finding>, s: &SetUp, t: &Trace, place: &'static Place) {
    let mut when = |yes: bool, code, severity| {
        if yes {
            out.push(Finding::new(code, severity));
        }
    };
    when(s.lanyard.absorber.is_none(), C::NoAbsorber, Major);
    when(s.grab.arrow == Arrow::Down, C::GrabReversed, Critical);
    when(s.grab.latch == Latch::Open, C::LatchOpen, Critical);
    when(s.grab.bolt == Bolt::Loose, C::BoltLoose, Major);
    when(s.worker.harness == HarnessFit::Loose, C::HarnessLoose, Major);
    let reaches = place.duty(DutyKind::LineReachesGround);
    match s.lifeline.end {
        RopeEnd::MakersStop => {}
        RopeEnd::Nothing => out.push(Finding::new(C::RopeEndOpen, Minor).duty(reaches)),
        RopeEnd::Knot => {
            let forbidden = place.sets(DutyKind::NoKnots);
            let severity = if forbidden { Minor } else { Note };
            let duty = forbidden.then(|| place.duty(DutyKind::NoKnots)).flatten();
            out.push(Finding::new(C::RopeEndKnot, severity).duty(duty));
        }
    }
    if let Some(short_m) = rope_short_m(s) {
        out.push(Finding::new(C::RopeShort, Minor).duty(reaches).value(
            Quantity::Length,
            short_m,
            Rounding::Up,
        ));
    }
    if s.lifeline.slack_m > SLACK_M {
        let severity = if s.lifeline.slack_m > MUCH_SLACK_M { Major } else { Minor };
        out.push(Finding::new(C::RopeSlack, severity).value(
            Quantity::Length,
            s.lifeline.slack_m,
            Rounding::Up,
        ));
    }
    // From a ladder it always hangs over the eave; on a roof it does so once the worker is past it.
    if s.lifeline.edge == RopeEdge::Bare && (matches!(s.stance, Stance::Ladder { .. }) || t.left_roof) {
        out.push(Finding::new(C::EdgeBare, Minor).duty(place.duty(DutyKind::EdgeProtected)));
    }
    if let Some(l) = place.limit(LimitKind::GrabLink).or_else(|| common(LimitKind::GrabLink)) {
        let f = Finding::against(C::GrabLink, s.lanyard.length_m, l, Major);
        let short = place.duty(DutyKind::ShortLink).filter(|_| s.lanyard.length_m > SHORT_LINK_M);
        if f.met == Some(false) {
            out.push(f);
        } else if short.is_some() {
            out.push(Finding::new(C::GrabLinkAsk, Note).duty(short));
        }
    }
    if let Some((least, most)) = s.lanyard.absorber.and_then(|a| class_masses_kg(a.class))
        && !(least..=most).contains(&s.worker.mass_kg)
    {
        out.push(Finding::new(C::AbsorberMass, Major).value(
            Quantity::Mass,
            s.worker.mass_kg,
            Rounding::Nearest,
        ));
    }
    if t.absorber_spent {
        out.push(Finding::new(C::AbsorberSpent, Major).value(
            Quantity::Length,
            t.absorber_extension_m,
            Rounding::Up,
        ));
    }
    if s.grab.above_dring_m < -1e-9 {
        out.push(Finding::new(C::GrabLow, Major).value(
            Quantity::Length,
            -s.grab.above_dring_m,
            Rounding::Up,
        ));
    }
    // What a look before the climb would have shown.
    let withdrawn = place.duty(DutyKind::GearWithdrawn);
    let g = &s.gear;
    for (yes, code, severity) in [
        (g.rope == RopeState::Frayed, C::GearFrayed, Critical),
        (g.connector == ConnectorState::Unlocked, C::GearGate, Critical),
        (g.connector == ConnectorState::Corroded, C::GearRust, Major),
        (g.pack == PackState::Deployed && s.lanyard.absorber.is_some(), C::GearPack, Critical),
        (g.webbing == WebbingState::Cut, C::GearWebbing, Critical),
        (g.label == LabelState::Missing, C::GearLabel, Minor),
    ] {
        if yes {
            out.push(Finding::new(code, severity).duty(withdrawn));
        }
    }
    if g.rope == RopeState::Knotted {
        let duty = place.duty(DutyKind::NoKnots).or(withdrawn);
        out.push(Finding::new(C::GearKnot, Major).duty(duty));
    }
}

/// Less slack than this is a rope that is only not tight, m (our own choice).
const SLACK_M: f64 = 0.05;

/// More than this is no small finding, m (our own choice: it adds as much again to the free fall).
const MUCH_SLACK_M: f64 = 0.3;

/// What one account of the Canadian standard gives for the link between grab and D-ring, m (30 in): told,
/// not graded by, until somebody has read it in the standard.
const SHORT_LINK_M: f64 = 0.762;

/// A rope's end counts as on the ground within this, m (our own choice: a hand over the grass).
const ON_THE_GROUND_M: f64 = 0.3;

/// How far over the ground the lifeline ends, m, where that is more than [`ON_THE_GROUND_M`].
pub(super) fn rope_short_m(s: &SetUp) -> Option<f64> {
    let g = s.geometry();
    // From the grab, or on a roof from the eave, it hangs straight down.
    let (from, used_m) = match s.stance {
        Stance::Ladder { .. } => (g.grab, g.grab_rope_m),
        Stance::Roof { .. } => (g.eave, g.grab_rope_m + g.grab.dist(g.eave)),
    };
    let end_m = from.y - (s.lifeline.length_m - used_m);
    let over_m = end_m - g.surface_below_m(from.x, 0.05);
    (over_m > ON_THE_GROUND_M).then_some(over_m)
}
