//! The anchor under the place's rule.

use crate::geometry::SetUp;
use crate::physics::equipment::{FROZEN_ABSORBER_N, MEAN_TO_PEAK_RATIO, class_force_n};
use crate::physics::trace::Trace;
use crate::rules::{AnchorLimit, BreakingLoadN, Finding, FindingCode, LimitKind, Needs, Place, Severity};
use crate::scenario::{AnchorChosenBy, AnchorKind, Mortar, PackState, Weather};
use crate::strength::{self, Ground};
use crate::units::{Quantity, Rounding};
use FindingCode as C;
use Severity::{Critical, Good, Major, Note};

/// The largest force that the system can put on its anchor, N: what its absorber's label allows (a class's
/// figure, or a stated mean force over the ratio of mean to largest), and what this fall pulled at the
/// D-ring if that was more. What an edge held back is not taken off.
pub fn system_most_n(s: &SetUp, t: &Trace) -> f64 {
    let label_n = match s.lanyard.absorber {
        Some(a) if s.gear.pack == PackState::Sound => {
            let dry_n = class_force_n(a.class).unwrap_or(a.deploy_force_n / MEAN_TO_PEAK_RATIO);
            dry_n + if s.weather == Weather::Frozen { FROZEN_ABSORBER_N } else { 0.0 }
        }
        _ => 0.0,
    };
    label_n.max(t.judged().peak_force_n)
}

pub(super) fn anchor(out: &mut Vec<Finding>, s: &SetUp, t: &Trace, place: &'static Place) {
    let a = strength::anchor(s);
    if a.ground == Ground::Unsuitable {
        out.push(
            Finding::new(C::AnchorUnsuitable, Critical)
                .value(Quantity::Force, a.low.0, Rounding::Down)
                .assumed(),
        );
        return;
    }
    if a.fasteners.1 > 0 {
        out.push(Finding::new(C::FastenersMissed, Major).value(
            Quantity::Count,
            f64::from(a.fasteners.1),
            Rounding::Nearest,
        ));
    }
    if s.anchor.kind == AnchorKind::ChimneySling && s.anchor.chimney.mortar == Mortar::Weak {
        out.push(Finding::new(C::MortarWeak, Major));
    }
    // Like with like only: working load with working load, breaking load with breaking load.
    let Some((l, asked)) = place.anchor(s.lanyard.absorber.is_some()) else { return };
    let shown =
        |f: Finding, n: f64| Finding { limit: Some(l), ..f }.value(Quantity::Force, n, Rounding::Down);
    // What is made on the site is never better than open: the figure knows the fasteners alone.
    let site_made = s.anchor.kind != AnchorKind::RatedEye;
    let open = |n: f64| shown(Finding::new(C::AnchorOpen, Note).assumed(), n);
    let by_qualified = s.plan.anchor_by == AnchorChosenBy::QualifiedPerson;
    match (asked, a.allowable) {
        (AnchorLimit::Working(asked), Some(allowable)) if site_made && allowable >= asked => {
            out.push(open(allowable.0));
        }
        (AnchorLimit::Working(asked), Some(allowable)) => {
            let met = allowable >= asked;
            let f = Finding {
                met: Some(met),
                ..Finding::new(C::AnchorAllowable, if met { Good } else { Major })
            };
            out.push(shown(f, allowable.0));
        }
        // A breaking load under the working load asked for cannot be enough, whoever chose it.
        (AnchorLimit::Working(w), None) if a.low.0 < w.0 => {
            out.push(shown(Finding { met: Some(false), ..Finding::new(C::AnchorCapacity, Major) }, a.low.0));
        }
        (AnchorLimit::Working(_), None) if !site_made && by_qualified => {
            out.push(shown(Finding::new(C::AnchorEngineered, Good), a.low.0));
        }
        (AnchorLimit::Working(_), None) => out.push(shown(Finding::new(C::AnchorBasis, Note), a.low.0)),
        (AnchorLimit::Breaking(asked), _) if site_made && a.low >= asked => out.push(open(a.low.0)),
        (AnchorLimit::Breaking(asked), _) => {
            let met = a.low >= asked;
            let most_n = system_most_n(s, t);
            let by_factor = place.limit(LimitKind::AnchorFactor).filter(|_| !met && most_n > 0.0);
            match by_factor {
                Some(factor) if a.low >= BreakingLoadN(factor.value * most_n) => {
                    let stands = factor.needs != Some(Needs::QualifiedPerson) || by_qualified;
                    out.push(
                        Finding {
                            met: Some(stands),
                            limit: Some(factor),
                            ..Finding::new(C::AnchorFactor, if stands { Good } else { Major })
                        }
                        .value(Quantity::Ratio, a.low.0 / most_n, Rounding::Down)
                        .other(Quantity::Force, most_n, Rounding::Up),
                    );
                }
                _ => {
                    let f = Finding {
                        met: Some(met),
                        ..Finding::new(C::AnchorCapacity, if met { Good } else { Major })
                    };
                    out.push(shown(f, a.low.0));
                }
            }
        }
    }
}
