//! Whether fall arrest is the method, and the usual sum.

use crate::geometry::SetUp;
use crate::physics::trace::{Outcome, Trace};
use crate::rules::{DutyKind, Finding, FindingCode, LimitKind, Method, Place, Severity, clearance, common};
use crate::scenario::{OtherMethod, Stance};
use crate::units::{Quantity, Rounding};
use FindingCode as C;
use Severity::{Critical, Good, Major, Minor, Note};

pub(super) fn method(out: &mut Vec<Finding>, s: &SetUp, t: &Trace, place: &'static Place) {
    let other = match s.plan.other_method {
        OtherMethod::NoneFound => None,
        OtherMethod::FromGround => Some(Method::FromGround),
        OtherMethod::Platform => Some(Method::Platform),
        OtherMethod::Guardrail => Some(Method::Guardrail),
        OtherMethod::TravelRestraint => Some(Method::TravelRestraint),
        OtherMethod::FallRestrict => Some(Method::FallRestrict),
    };
    if other.is_some_and(|m| place.ranks_before(m, Method::FallArrest)) {
        out.push(Finding::new(C::HigherMethod, Major).duty(place.duty(DutyKind::MethodOrder)));
    }
    // The usual sum, from a ladder, against what there is under the feet.
    let g = s.geometry();
    let Some(reserve) = common(LimitKind::ClearanceReserve) else { return };
    if !matches!(s.stance, Stance::Ladder { .. }) {
        return;
    }
    let room_m = g.soles.y - g.surface_below_m(g.soles.x, 0.25);
    let needed_m = clearance::needed_under_feet_m(s, s.grab.above_dring_m, reserve.value);
    // What this gear needs at the least: grab as high as the lanyard reaches beside the rope, slack out.
    let best = s.with(|best| best.lifeline.slack_m = 0.0);
    let beside_m = (g.grab.x - g.dring.x).abs();
    let up_m = libm::sqrt((s.lanyard.length_m * s.lanyard.length_m - beside_m * beside_m).max(0.0));
    let least_m = best.map_or(needed_m, |best| clearance::needed_under_feet_m(&best, up_m, reserve.value));
    let (code, need_m, severity) = if least_m > room_m {
        (C::ArrestTooLow, least_m, Critical)
    } else if needed_m > room_m {
        (C::ClearanceSum, needed_m, Minor)
    } else {
        // The sum knows no swing and no stretch: beside a strike it is no comfort.
        (C::ClearanceSum, needed_m, if t.outcome == Outcome::Stopped { Good } else { Note })
    };
    out.push(
        Finding { met: Some(need_m <= room_m), ..Finding::new(code, severity) }
            .value(Quantity::Length, need_m, Rounding::Up)
            .other(Quantity::Length, room_m, Rounding::Down),
    );
}
