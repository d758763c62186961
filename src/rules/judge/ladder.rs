//! The ladder, the height and the wire.

use crate::geometry::SetUp;
use crate::physics::ladder::{self, Footing};
use crate::rules::{DutyKind, Finding, FindingCode, Limit, LimitKind, Place, Severity, common};
use crate::scenario::{Stance, Voltage};
use crate::units::{Quantity, Rounding};
use FindingCode as C;
use Severity::{Critical, Good, Major, Minor, Note};

/// A foot that needs more than this share of the friction it has holds barely: friction of feet scatters by
/// a fifth (assumed).
const BARELY_SHARE: f64 = 0.8;

/// Height at which a person works, m: the feet on a ladder, the eave on a roof.
pub(super) fn working_height_m(s: &SetUp) -> f64 {
    let g = s.geometry();
    match s.stance {
        Stance::Ladder { standing_height_m } => standing_height_m,
        Stance::Roof { .. } => g.eave.y,
    }
}

pub(super) fn ladder_and_height(out: &mut Vec<Finding>, s: &SetUp, place: &'static Place) {
    let g = s.geometry();
    if matches!(s.stance, Stance::Ladder { .. }) {
        let share = s.ladder.foot_distance_m / g.ladder.foot.dist(g.ladder.support);
        let applies = |l: &&Limit| !(l.only_untied && s.ladder.tied);
        // A place that sets either bound sets both: a bound it leaves out is none.
        let own = [LimitKind::LadderFootLeast, LimitKind::LadderFootMost].map(|w| place.limit(w));
        let [least, most] = if own.iter().any(Option::is_some) {
            own.map(|l| l.filter(applies))
        } else {
            [LimitKind::LadderFootLeast, LimitKind::LadderFootMost].map(common)
        };
        // A foot is measured with a tape from a rung: by so much either way it counts as on the mark.
        let tolerance = common(LimitKind::LadderTolerance).map_or(0.0, |l| l.value);
        let (ok, limit) = match (least, most) {
            (Some(a), _) if share < a.value - tolerance => (false, least),
            (_, Some(b)) if share > b.value + tolerance => (false, most),
            _ => (true, most.or(least)),
        };
        if limit.is_some() {
            let far = if limit.is_some_and(|l| l.what == LimitKind::LadderFootMost) { least } else { most };
            let f = Finding {
                met: Some(ok),
                limit,
                ..Finding::new(C::LadderAngle, if ok { Good } else { Major })
            }
            .value(Quantity::Angle, g.ladder.angle_rad(), Rounding::Nearest);
            let other = far.or(limit).map_or(0.0, |l| l.value);
            out.push(f.other(Quantity::Ratio, other, Rounding::Nearest));
        }
    }
    if let Some(stand) = ladder::stand(s, g) {
        let assumed = |code, severity| Finding::new(code, severity).assumed();
        match stand.footing {
            Footing::SlidesOut => out.push(
                assumed(C::LadderSlides, Major)
                    .value(Quantity::Ratio, stand.needed_friction, Rounding::Up)
                    .other(Quantity::Ratio, stand.has_friction, Rounding::Down),
            ),
            Footing::TipsBack => out.push(assumed(C::LadderTips, Major)),
            Footing::Holds if !s.ladder.tied && stand.needed_friction > BARELY_SHARE * stand.has_friction => {
                out.push(
                    assumed(C::LadderBarely, Minor)
                        .value(Quantity::Ratio, stand.needed_friction, Rounding::Up)
                        .other(Quantity::Ratio, stand.has_friction, Rounding::Down),
                )
            }
            Footing::Holds | Footing::TipsSideways => {}
        }
        if stand.off_middle_m > ladder::HALF_WIDTH_M {
            let severity = if s.ladder.tied { Minor } else { Major };
            out.push(
                assumed(C::LadderReach, severity)
                    .value(Quantity::Length, stand.off_middle_m, Rounding::Up)
                    .other(Quantity::Length, ladder::HALF_WIDTH_M, Rounding::Down),
            );
        }
        if !s.ladder.tied {
            out.push(Finding::new(C::LadderUntied, Minor));
        }
    }
    wire(out, s, place);
    let on_ladder = matches!(s.stance, Stance::Ladder { .. });
    for (kind, code) in
        [(DutyKind::LadderExempt, C::LadderNotRequired), (DutyKind::LadderConditions, C::LadderConditions)]
    {
        if on_ladder && place.sets(kind) {
            out.push(Finding::new(code, Note).duty(place.duty(kind)));
        }
    }
    let trigger = Some(LimitKind::TriggerHeightLadder)
        .filter(|_| on_ladder)
        .and_then(|w| place.limit(w))
        .or_else(|| place.limit(LimitKind::TriggerHeight));
    if let Some(l) = trigger.filter(|_| !(on_ladder && place.sets(DutyKind::LadderExempt))) {
        let height_m = working_height_m(s);
        // Where it is asked for, the set-up is what answers it; where not, that is worth knowing.
        let asked = l.comparison.holds(height_m, l.value);
        out.push(Finding {
            met: Some(asked),
            limit: Some(l),
            ..Finding::new(C::TriggerHeight, if asked { Good } else { Note }).value(
                Quantity::Length,
                height_m,
                Rounding::Nearest,
            )
        });
    }
}

/// Nearer than this to a service drop a painter can come to touch it with a brush or a ladder, m (our own
/// choice: an arm and a brush).
const SERVICE_DROP_M: f64 = 1.0;

/// Nearer than this to it counts as touching it, m (Alberta's distance from an insulated service drop:
/// OHS Code, Schedule 4, by its guide).
const TOUCH_M: f64 = 0.3;

/// The overhead wire: what it carries comes first, and the owner says it.
pub(super) fn wire(out: &mut Vec<Finding>, s: &SetUp, place: &'static Place) {
    let Some(line) = s.power_line else { return };
    let g = s.geometry();
    let all = [ladder::nearest_to_wire_m(s, g), ladder::hand_to_wire_m(s, g)];
    let near_m = all.into_iter().flatten().fold(f64::INFINITY, f64::min);
    let near = |f: Finding| f.value(Quantity::Length, near_m, Rounding::Down);
    match (line.voltage, place.approach(line.voltage)) {
        (Voltage::Service, None) => {
            let severity = match near_m {
                m if m < TOUCH_M => Critical,
                m if m < SERVICE_DROP_M => Major,
                _ => Note,
            };
            out.push(near(Finding::new(C::ServiceDrop, severity)));
        }
        (Voltage::Unknown, own) => {
            // Under the distance of every line the worker is too near whatever it carries.
            let limit = own.or_else(|| common(LimitKind::ApproachDistance));
            let short = limit.is_some_and(|l| near_m < l.value);
            let severity = if short { Critical } else { Major };
            out.push(Finding { limit, ..near(Finding::new(C::WireUnknown, severity)) });
        }
        (_, Some(l)) => out.push(Finding::against(C::PowerLine, near_m, l, Critical)),
        // The place has no figure for it: as if nobody had said.
        (_, None) => {
            let limit = common(LimitKind::ApproachDistance);
            let short = limit.is_some_and(|l| near_m < l.value);
            let severity = if short { Critical } else { Major };
            out.push(Finding { limit, ..near(Finding::new(C::WireUnknown, severity)) });
        }
    }
    if let Some(m) = ladder::carried_to_wire_m(s, g).filter(|_| line.voltage != Voltage::Service) {
        let least_m = common(LimitKind::ApproachDistance).map_or(0.0, |l| l.value);
        if m < least_m {
            out.push(Finding::new(C::WireCarried, Note).value(Quantity::Length, m, Rounding::Down));
        }
    }
}
