//! Whether a run's energy balances.

use super::line::LineEnergy;
use super::world::Step;

/// The books of a run, J.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Balance {
    pub(super) start_potential_j: f64,
    pub(super) start_kinetic_j: f64,
    /// What flesh held at the start: who begins a little in the roof brings that much along.
    start_stored_j: f64,
    /// Now.
    pub(super) kinetic_j: f64,
    /// Taken by the body: flesh, friction, muscles and ligaments.
    taken_j: f64,
    /// Spent there, its largest so far.
    spent_most_j: f64,
    /// Energy that came back of what was spent: none may ...
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
        // Positions are here, velocities half a step either side.
        let share = step.before_share;
        self.kinetic_j = (1.0 - share) * step.kinetic_before_j + share * step.kinetic_after_j;
        if first {
            self.start_kinetic_j = self.kinetic_j;
            self.start_stored_j = step.stored_j;
        }
        let have_j = self.kinetic_j + potential_j + line.elastic_j + line.spent_j() + step.taken_j;
        let had_j = self.start_kinetic_j + self.start_potential_j;
        // What the body took and does not give back may only grow.
        self.taken_j = step.taken_j;
        let spent_j = step.taken_j - step.stored_j + self.start_stored_j;
        self.spent_most_j = self.spent_most_j.max(spent_j);
        if counts {
            // What is no number is no balance.
            // Springs hold what went into them, and no more comes out: else a contact could make energy that friction
            // elsewhere hides.
            let sprung_j = step.sprung_j - step.stored_j + self.start_stored_j;
            for off_j in [have_j - had_j, sprung_j] {
                self.off_j = if off_j.is_nan() { f64::INFINITY } else { self.off_j.max(off_j.abs()) };
            }
            self.gave_j = self.gave_j.max(self.spent_most_j - spent_j);
        }
        self.kinetic_j
    }

    /// The largest error so far, J.
    pub(super) fn error_j(&self) -> f64 {
        self.gave_j.max(self.off_j)
    }

    /// Taken by flesh, friction, muscles and ligaments, J.
    pub(super) fn body_j(&self) -> f64 {
        self.taken_j
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// What is no number must not pass for a balance: `max` would leave it out.
    #[test]
    fn a_run_that_is_no_number_is_not_graded() {
        let mut b = Balance::new(100.0);
        let step = Step { before_share: 0.5, kinetic_before_j: f64::NAN, ..Step::default() };
        b.book(&step, 100.0, &LineEnergy::default(), false, true);
        assert!(b.error_j().is_infinite());
    }
}
