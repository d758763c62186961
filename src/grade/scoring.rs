//! From findings to a grade: points off, line by line, and whether the set-up passes.
//!
//! The weights are data (`src/grade/weights.json`), each with its reason. A critical finding fails the
//! set-up whatever the score; a run that fails its own energy check has no grade at all.

use crate::physics::trace::Trace;
use crate::rules::{Finding, FindingCode, Severity};
use serde::{Deserialize, Serialize};
use std::collections::HashMap;
use std::sync::OnceLock;

/// A weight and why.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Weight {
    /// Points off.
    pub points: u32,
    /// Why that many.
    pub reason: String,
}

/// Reads the weights.
///
/// # Errors
/// What is wrong with the file.
pub fn read_weights() -> Result<HashMap<FindingCode, Weight>, serde_json::Error> {
    serde_json::from_str(include_str!("weights.json"))
}

fn weights() -> &'static HashMap<FindingCode, Weight> {
    static ALL: OnceLock<HashMap<FindingCode, Weight>> = OnceLock::new();
    ALL.get_or_init(|| read_weights().unwrap_or_default())
}

/// Points off for one finding.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Deduction {
    /// Which finding.
    pub code: FindingCode,
    /// How many points.
    pub points: u32,
}

/// The grade of a run.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "state", rename_all = "snake_case")]
pub enum Grade {
    /// The run failed its own energy check.
    NotGraded {
        /// Error of the energy balance as a share of the work in.
        energy_residual: f64,
    },
    /// The run was graded.
    Graded {
        /// 0 to 100.
        score: u32,
        /// No critical finding.
        passes: bool,
        /// Why not 100.
        deductions: Vec<Deduction>,
    },
}

/// Grades a run.
pub fn grade(t: &Trace, findings: &[Finding]) -> Grade {
    if !t.is_sound() {
        return Grade::NotGraded { energy_residual: t.energy_residual };
    }
    let deductions: Vec<Deduction> = findings
        .iter()
        .filter(|f| f.severity <= Severity::Minor)
        .map(|f| Deduction { code: f.code, points: weights().get(&f.code).map_or(0, |w| w.points) })
        .filter(|d| d.points > 0)
        .collect();
    let off: u32 = deductions.iter().map(|d| d.points).sum();
    Grade::Graded {
        score: 100u32.saturating_sub(off),
        passes: findings.iter().all(|f| f.severity != Severity::Critical),
        deductions,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_finding_has_a_weight_with_a_reason() {
        let w = read_weights().expect("reads");
        for code in FindingCode::ALL {
            let entry = w.get(code).unwrap_or_else(|| panic!("{code:?} has no weight"));
            assert!(entry.reason.ends_with('.'), "{code:?}");
        }
    }
}
