//! Whether a run's energy balances.

use super::line::LineEnergy;
use super::world::Step;

/// The books of a run, J.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Balance {
    pub(super) start_potential_j: f64,
    pub(super) start_kinetic_j: f64,
    /// What flesh held at the start: who begins a little in the roof brings that much along.
    start_flesh_j: f64,
    /// Now.
    pub(super) kinetic_j: f64,
    /// Taken by joints and contacts, and its largest so far.
    body_j: f64,
    body_most_j: f64,
    /// Handed to the roof.
    roof_j: f64,
    /// Rubbed away there, its largest so far.
    rubbed_most_j: f64,
    /// Energy that joints, contacts and roof gave, which may only take ...
    gave_j: f64,
    /// ... and how far the whole was off.
    off_j: f64,
}

impl Balance {
    /// At the start, with the bodies' potential energy.
    pub(super) fn new(start_potential_j: f64) -> Balance {
        Balance { start_potential_j, ..Balance::default() }
    }

    /// Books one step. `first` is the run's first; what does not `count` (after a strike below it is a body
    /// folding up) enters no error. The kinetic energy at the step's start, J.
    pub(super) fn book(
        &mut self,
        step: &Step,
        potential_j: f64,
        line: &LineEnergy,
        first: bool,
        counts: bool,
    ) -> f64 {
        // Positions are here, velocities half a step either side, and the step's work at joints and
        // contacts is done as far as here.
        let share = step.before_share;
        self.kinetic_j = (1.0 - share) * step.kinetic_before_j + share * step.kinetic_after_j;
        if first {
            self.start_kinetic_j = self.kinetic_j;
            self.start_flesh_j = step.flesh_j;
        }
        let have_j =
            self.kinetic_j + potential_j + line.elastic_j + line.spent_j() + self.body_j + step.roof_j
                - share * step.constraint_work_j;
        let had_j = self.start_kinetic_j + self.start_potential_j;
        // What the roof took and does not give back may only grow; joints and contacts may only take.
        self.roof_j = step.roof_j;
        let rubbed_j = step.roof_j - step.flesh_j + self.start_flesh_j;
        self.rubbed_most_j = self.rubbed_most_j.max(rubbed_j);
        self.body_j -= step.constraint_work_j;
        self.body_most_j = self.body_most_j.max(self.body_j);
        if counts {
            self.off_j = self.off_j.max((have_j - had_j).abs());
            self.gave_j = self.gave_j.max(self.rubbed_most_j - rubbed_j).max(self.body_most_j - self.body_j);
        }
        self.kinetic_j
    }

    /// The largest error so far, J.
    pub(super) fn error_j(&self) -> f64 {
        self.gave_j.max(self.off_j)
    }

    /// Taken by joints, contacts and roof, J.
    pub(super) fn body_j(&self) -> f64 {
        self.body_j + self.roof_j
    }
}
