//! One fall, whole: scenario text in, one JSON object out. The headless program and the browser
//! both end here, so they cannot disagree.

use crate::geometry::SetUp;
use crate::grade::scoring::{Grade, grade};
use crate::physics::trace::{EventKind, Impact, Trace};
use crate::physics::{PHYSICS_VERSION, simulate};
use crate::rules::{Finding, RULES_VERSION, Source, judge, place};
use crate::scenario::{Problem, ProblemCode, SCHEMA, Scenario};
use serde::Serialize;
use serde_json::{Value, json};

/// Version of the app.
pub const APP_VERSION: &str = env!("CARGO_PKG_VERSION");

/// A finished, judged and graded fall.
#[derive(Clone, Debug, PartialEq)]
pub struct Report {
    /// The set-up.
    pub set_up: SetUp,
    /// What happened.
    pub trace: Trace,
    /// What it means under the place's limits.
    pub findings: Vec<Finding>,
    /// The grade.
    pub grade: Grade,
}

/// Everything wrong with a set-up, its place included.
pub fn problems(s: &Scenario) -> Vec<Problem> {
    let mut found = s.problems();
    if place(&s.place).is_none() {
        found.push(Problem { code: ProblemCode::PlaceUnknown, field: "place" });
    }
    found
}

impl Report {
    /// Judges and grades a finished trace; `None` for a place that this version does not know.
    pub fn of(set_up: SetUp, trace: Trace) -> Option<Report> {
        let findings = judge(&set_up, &trace, place(&set_up.place)?);
        let grade = grade(&trace, &findings);
        Some(Report { set_up, trace, findings, grade })
    }

    /// Simulates, judges and grades.
    ///
    /// # Errors
    /// What is wrong with the set-up.
    pub fn run(s: &Scenario) -> Result<Report, Vec<Problem>> {
        let set_up = s.set_up().map_err(|_| problems(s))?;
        let trace = simulate(&set_up);
        Report::of(set_up, trace).ok_or_else(|| problems(s))
    }
}

fn versions() -> Value {
    json!({ "app": APP_VERSION, "physics": PHYSICS_VERSION, "rules": RULES_VERSION, "schema": SCHEMA })
}

/// The outcome of a scenario as one JSON object: `problems`, or the whole fall.
pub fn outcome_json(s: &Scenario) -> Value {
    #[derive(Serialize)]
    struct EventOut {
        kind: EventKind,
        time_s: f64,
    }
    match Report::run(s) {
        Err(problems) => json!({ "versions": versions(), "problems": problems }),
        Ok(r) => {
            let t = &r.trace;
            let events: Vec<EventOut> =
                t.events.iter().map(|e| EventOut { kind: e.kind, time_s: e.time_s }).collect();
            let impacts: &[Impact] = &t.impacts;
            json!({
                "versions": versions(),
                "problems": [],
                "outcome": t.outcome,
                "peak_force_n": t.peak_force_n,
                "anchor_peak_n": t.anchor_peak_n,
                "free_fall_m": t.free_fall_m,
                "total_fall_m": t.total_fall_m,
                "absorber_extension_m": t.absorber_extension_m,
                "rope_stretch_m": t.rope_stretch_m,
                "grab_slip_m": t.grab_slip_m,
                "harness_slide_m": t.harness_slide_m,
                "neighbours": t.neighbours,
                "lowest_point_m": t.lowest_point_m,
                "clearance_margin_m": t.clearance_margin_m,
                "impacts": impacts,
                "events": events,
                "energy_residual": t.energy_residual,
                "trace_hash": format!("{:016x}", t.hash()),
                "findings": r.findings.iter().map(finding_json).collect::<Vec<_>>(),
                "grade": r.grade,
            })
        }
    }
}

fn source_json(s: &Source) -> Value {
    json!({
        "document": s.document.en,
        "clause": s.clause.en,
        "edition": s.edition,
        "read_in": s.read_in,
        "checked_on": s.checked_on,
    })
}

fn finding_json(f: &Finding) -> Value {
    json!({
        "code": f.code,
        "severity": f.severity,
        "met": f.met,
        "value_si": f.value.map(|v| v.si),
        "other_si": f.other.map(|v| v.si),
        "margin_si": f.margin_si(),
        "assumed": f.assumed,
        "limit": f.limit.map(|l| json!({
            "what": l.what,
            "comparison": l.comparison,
            "value_si": l.value,
            "source": source_json(&l.source),
        })),
        "duty": f.duty.map(|d| json!({ "what": d.what, "source": source_json(&d.source) })),
    })
}
