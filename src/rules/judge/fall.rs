//! What happened, and the limits on it.

use super::HARD_BLOW_M_S;
use super::HARD_SWING_M_S;
use crate::geometry::SetUp;
use crate::physics::equipment::{link_strength_n, rope_strength_n};
use crate::physics::trace::{EventKind, Outcome, Thing, Trace};
use crate::rules::{Finding, FindingCode, LimitKind, Place, Severity, common};
use crate::strength::{self, Ground};
use crate::units::{Quantity, Rounding};
use FindingCode as C;
use Severity::{Critical, Major, Minor, Note};

/// Coming down on something: what a fall leads to, not what it comes of.
pub(super) fn lands(code: FindingCode) -> bool {
    matches!(code, C::StrikesGround | C::StrikesObstacle)
}

pub(super) fn happened(out: &mut Vec<Finding>, s: &SetUp, t: &Trace) {
    for (thing, code) in [(Thing::Ground, C::StrikesGround), (Thing::Obstacle, C::StrikesObstacle)] {
        if let Some(i) = t.impacts.iter().find(|i| i.what == thing) {
            out.push(Finding::new(code, Critical).value(Quantity::Speed, i.speed_m_s, Rounding::Up));
        }
    }
    if !s.lanyard.clipped {
        out.push(Finding::new(C::NotClipped, Critical));
    }
    if t.time_of(EventKind::OffRope).is_some() {
        out.push(Finding::new(C::OffRope, Critical));
    }
    let broke =
        |code, n: f64| Finding::new(code, Critical).value(Quantity::Force, n, Rounding::Down).assumed();
    if t.time_of(EventKind::RopeBreaks).is_some() {
        out.push(broke(C::RopeBroke, rope_strength_n(&s.gear)));
    }
    if t.time_of(EventKind::LinkBreaks).is_some() {
        out.push(broke(C::LinkBroke, link_strength_n(&s.gear)));
    }
    if t.time_of(EventKind::AnchorFails).is_some() {
        let a = strength::anchor(s);
        let f = Finding::new(C::AnchorGaveWay, Critical).value(Quantity::Force, a.low.0, Rounding::Down);
        out.push(if a.ground == Ground::Unsuitable { f.assumed() } else { f });
    }
}

pub(super) fn limits(out: &mut Vec<Finding>, t: &Trace, place: &'static Place) {
    let judged = t.judged();
    // Where something stopped the worker.
    let stopped = t.outcome == Outcome::Stopped;
    if stopped {
        let force = place
            .limit(LimitKind::BodyForce)
            .map(|l| Finding::against(C::PeakForce, judged.peak_force_n, l, Critical));
        let fall = place
            .limit(LimitKind::FreeFall)
            .map(|l| Finding::against(C::FreeFall, judged.free_fall_m, l, Critical));
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
        for (kind, code, d_m, missed) in [
            (LimitKind::StoppingDistance, C::StoppingDistance, judged.stop_m, Major),
            (LimitKind::AbsorberExtension, C::AbsorberExtension, t.absorber_extension_m, Minor),
            // EN 353-2 counts every movement of the grab.
            (LimitKind::ArrestDistance, C::ArrestDistance, judged.stop_m + t.dead_travel_m, Minor),
        ] {
            out.extend(place.limit(kind).map(|l| Finding::against(code, d_m, l, missed)));
        }
    }
    if let Some(l) = common(LimitKind::ClearanceReserve)
        && t.outcome != Outcome::LetGo
        && t.left_roof
        && let Some(m) = judged.room_m
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
        // A rope that hangs beside the worker always swings her in; a hard blow more is worth a change.
        let severity = if i.speed_m_s < HARD_BLOW_M_S { Note } else { Minor };
        out.push(Finding::new(C::HardSwing, severity).value(Quantity::Speed, i.speed_m_s, Rounding::Up));
    }
}
