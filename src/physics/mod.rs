//! Fall physics: a set-up in, a finished trace out.
//!
//! [`simulate`] is the door.

mod balance;
pub mod bodies;
pub mod constants;
pub mod equipment;
pub mod ladder;
pub mod line;
pub mod neighbours;
pub mod point;
mod rig;
mod run;
pub mod skin;
pub mod trace;
mod watch;
pub mod world;

use crate::geometry::SetUp;
use constants::RUNS_M;
use equipment::LineParams;
pub use run::{Run, Start};
use trace::{Outcome, Trace};

/// Version of the physics: a record replays bit for bit on the same version only.
///
/// 4: ropes by their make, the usual one a 16 mm polyester blend; free fall read between two steps; peaks
/// end with a blow below; energy of moving rope by its elastic tension.
/// 5: flesh that gives on the roof, finer steps while tumbling, neighbours of a fall from a roof; a grab's
/// dead travel before it bites; slack above the grab; 0.3 m of harness; both feet of the worker off the
/// rails; a plate lets go at its first row; an anchor judged without the edge's help; falls along the wall
/// that do not hang on the step.
/// 6: the energy check covers the whole run; finer steps for as long as a body moves on the roof; the run of
/// a held worker ends two seconds after its last figure; double steps in undisturbed free fall.
/// 7: bodies of our own: hinges closed exactly in double precision, joints that give at their ends, and flesh
/// that gives wherever the body strikes, as on the roof before.
pub const PHYSICS_VERSION: u32 = 7;

/// Runs a whole fall, and from a roof its neighbours with it.
pub fn simulate(s: &SetUp) -> Trace {
    neighbours::ask(s, simulate_alone(s))
}

/// Runs a whole fall without asking its neighbours. Where it strikes, a second run with nothing below
/// tells how much room was missing.
pub fn simulate_alone(s: &SetUp) -> Trace {
    let mut run = Run::worker(s, true);
    while !run.step() {}
    // Where the line never bore the worker's weight, no room would have been enough.
    let trailing = run.line.grab_slip_m() > RUNS_M && run.watch.peak_n.value < run.watch.weight_n;
    let roomy = run.watch.struck_below() && run.line.holds() && !trailing;
    let mut t = run.finish();
    if t.outcome == Outcome::Strikes {
        t.clearance_margin_m = roomy.then(|| missing_m(s)).flatten();
    }
    t
}

/// How much room was missing, m: nought or negative; `None` where the rope lets go.
fn missing_m(s: &SetUp) -> Option<f64> {
    let mut run = Run::worker(s, false);
    while !run.step() {}
    run.line.holds().then(|| run.watch.lowest_gap_m.min(0.0))
}

/// How a harness is worn, as far as it changes a fall.
#[derive(Clone, Copy, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct Worn {
    /// How far down the trunk the ring sits below its place between the shoulder blades, m.
    pub ring_drop_m: f64,
    /// How far the ring slides up when the line pulls, m.
    pub slide_m: f64,
}

/// Runs a whole fall in a harness that is worn so, without asking its neighbours: it is one from a ladder.
pub fn simulate_worn(s: &SetUp, worn: Worn) -> Trace {
    let line = LineParams { harness_slide_m: worn.slide_m, ..LineParams::of(s) };
    let start = Start { ring_drop_m: worn.ring_drop_m, ..Start::default() };
    let mut run = Run::worker_on(s, true, line, start, 1);
    while !run.step() {}
    run.finish()
}

/// The same at steps `fineness` times as fine, to see what a finer step changes.
pub fn simulate_finer(s: &SetUp, fineness: usize) -> Trace {
    let mut run = Run::worker_on(s, true, LineParams::of(s), Start::default(), fineness.max(1));
    while !run.step() {}
    run.finish()
}

/// What is asked of one fall among many.
#[derive(Clone, Copy, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct Settled {
    /// How it ended.
    pub outcome: Outcome,
    /// Largest force at the D-ring, N.
    pub peak_force_n: f64,
    /// Least room between the worker and what lies below, m; 0 where something was struck.
    pub room_left_m: f64,
    /// The run passes its own energy check.
    pub sound: bool,
}

/// Runs a fall on a line of the given parameters until its outcome is settled.
pub fn settle(s: &SetUp, params: LineParams, start: Start) -> Settled {
    let t = settled_from(s, params, start);
    Settled {
        outcome: t.outcome,
        peak_force_n: t.peak_force_n,
        room_left_m: if t.outcome == Outcome::Stopped { t.clearance_margin_m.unwrap_or(0.0) } else { 0.0 },
        sound: t.is_sound(),
    }
}

/// The trace of such a fall, as far as it was run.
pub fn settled_trace(s: &SetUp, params: LineParams) -> Trace {
    settled_from(s, params, Start::default())
}

fn settled_from(s: &SetUp, params: LineParams, start: Start) -> Trace {
    let mut run = Run::worker_on(s, true, params, start, 1);
    while !run.is_settled() && !run.step() {}
    run.finish()
}

/// Room left under the worker if there were no ground to stop the fall, m: negative is how much is
/// missing. Run until past the lowest point.
///
/// `None` when the rope lets go, or the run fails its own energy check.
pub fn room_m(s: &SetUp) -> Option<f64> {
    let mut run = Run::worker(s, false);
    while !run.is_settled() && !run.step() {}
    let (room_m, holds) = (run.watch.lowest_gap_m, run.line.holds());
    (holds && run.finish().is_sound()).then_some(room_m)
}
