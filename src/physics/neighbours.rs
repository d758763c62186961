//! The neighbours of a fall: the same set-up with differences that nobody could measure.
//!
//! A worker who tumbles down a roof falls a little otherwise for ten grams or a millimetre more, and
//! now and then quite otherwise. Such a fall is no one number: it is told as the span of its
//! neighbours and judged by the worse end of each figure. Falls from a ladder do not depend on such
//! differences (peak within 0.1 %) and are run once.

use super::trace::{Neighbours, Outcome, Span, Trace};
use super::{LineParams, Start, settled_from, simulate_alone};
use crate::geometry::SetUp;
use crate::scenario::Stance;

/// How much heavier or lighter a neighbour is, kg, and how much further up or down the roof, m.
const BY: (f64, f64) = (0.01, 0.001);
/// The first neighbours asked, in those units: if they agree, the rest are not.
const FIRST: [(f64, f64); 4] = [(-1.0, 0.0), (1.0, 0.0), (0.0, -1.0), (0.0, 1.0)];
/// Neighbours asked of a fall on which the first do not agree, the first among them.
pub const MOST: usize = 24;
/// The first agree when their forces lie within this share of each other ...
const AGREE_SHARE: f64 = 0.01;
/// ... and their rooms within this, m.
const AGREE_M: f64 = 0.01;

fn rank(o: Outcome) -> u8 {
    match o {
        Outcome::Stopped => 0,
        Outcome::Strikes => 1,
        Outcome::LetGo => 2,
    }
}

fn told(all: &[&Trace], shown: Outcome) -> Option<Neighbours> {
    let of = |f: fn(&Trace) -> f64| Span::of(all.iter().map(|t| f(t)));
    Some(Neighbours {
        count: all.len(),
        alike: all.iter().filter(|t| t.outcome == shown).count(),
        peak_force_n: of(|t| t.peak_force_n)?,
        free_fall_m: of(|t| t.free_fall_m)?,
        room_m: Span::of(all.iter().filter_map(|t| t.clearance_margin_m)),
        stop_m: of(Trace::stop_m)?,
    })
}

fn neighbour(s: &SetUp, by: (f64, f64)) -> Option<(SetUp, Trace)> {
    let near = s.with(|near| {
        near.worker.mass_kg += by.0 * BY.0;
        if let Stance::Roof { from_eave_m } = &mut near.stance {
            *from_eave_m += by.1 * BY.1;
        }
    });
    // At the very end of a range there is none on one side.
    let near = near.ok()?;
    let t = settled_from(&near, LineParams::of(&near), Start::default());
    t.is_sound().then_some((near, t))
}

/// Asks the neighbours of a fall from a roof. The fall comes back with what they say; where one of them
/// ended worse, that one comes back in its place, run to its end.
pub fn ask(s: &SetUp, shown: Trace) -> Trace {
    if !matches!(s.stance, Stance::Roof { .. }) || !shown.is_sound() {
        return shown;
    }
    let mut near: Vec<(SetUp, Trace)> = FIRST.iter().filter_map(|by| neighbour(s, *by)).collect();
    let agree = |near: &[(SetUp, Trace)]| {
        let all: Vec<&Trace> = near.iter().map(|q| &q.1).chain([&shown]).collect();
        told(&all, shown.outcome).is_some_and(|n| {
            n.alike == n.count
                && n.peak_force_n.width() <= AGREE_SHARE * n.peak_force_n.high
                && n.room_m.is_none_or(|m| m.width() <= AGREE_M)
        })
    };
    if !agree(&near) {
        // A grid between and beside the first.
        let grid = [-0.8, -0.4, 0.4, 0.8]
            .into_iter()
            .flat_map(|m| [-0.9, -0.5, 0.0, 0.5, 0.9].into_iter().map(move |x| (m, x)));
        near.extend(grid.take(MOST - FIRST.len()).filter_map(|by| neighbour(s, by)));
    }
    let worst =
        near.iter().max_by_key(|q| rank(q.1.outcome)).filter(|q| rank(q.1.outcome) > rank(shown.outcome));
    let instead =
        worst.map(|q| simulate_alone(&q.0)).filter(|t| t.is_sound() && rank(t.outcome) > rank(shown.outcome));
    let all: Vec<&Trace> = near.iter().map(|q| &q.1).chain([&shown]).collect();
    let outcome = instead.as_ref().map_or(shown.outcome, |t| t.outcome);
    let neighbours = told(&all, outcome);
    let mut t = instead.unwrap_or(shown);
    t.neighbours = neighbours;
    t
}
