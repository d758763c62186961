//! The plan: rescue, who chose the anchor, training.

use super::ladder::working_height_m;
use crate::geometry::SetUp;
use crate::rules::{DutyKind, Finding, FindingCode, LimitKind, Place, Severity};
use crate::scenario::{AnchorChosenBy, RescuePlan};
use crate::units::{date, years_on};
use FindingCode as C;
use Severity::Major;

pub(super) fn plan(out: &mut Vec<Finding>, s: &SetUp, place: &'static Place) {
    let height_m = working_height_m(s);
    let by_height =
        place.limit(LimitKind::WrittenPlanHeight).filter(|l| l.comparison.holds(height_m, l.value));
    let must_write = place.sets(DutyKind::RescueWritten) || by_height.is_some();
    let enough = match s.plan.rescue {
        RescuePlan::Written => true,
        RescuePlan::Spoken => !must_write,
        RescuePlan::NoPlan => false,
    };
    if !enough {
        let kind = if place.sets(DutyKind::RescueWritten) {
            DutyKind::RescueWritten
        } else {
            DutyKind::RescuePlanned
        };
        let f = Finding::new(C::RescueMissing, Major);
        out.push(match by_height {
            Some(l) => Finding { limit: Some(l), ..f },
            None => f.duty(place.duty(kind)),
        });
    }
    if s.plan.anchor_by == AnchorChosenBy::Worker {
        out.push(Finding::new(C::AnchorChooser, Major).duty(place.duty(DutyKind::AnchorByCompetentPerson)));
    }
    if let (Some(l), Some(trained), Some(work)) =
        (place.limit(LimitKind::TrainingYears), date(&s.plan.trained_on), date(&s.plan.work_on))
    {
        let ends = years_on(trained, l.value as i32);
        if ends.is_some_and(|ends| work >= ends) {
            out.push(Finding { limit: Some(l), met: Some(false), ..Finding::new(C::TrainingExpired, Major) });
        }
    }
}
