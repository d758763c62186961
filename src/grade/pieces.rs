//! Where the drop and the energy of a fall went, piece by piece.

use crate::physics::trace::Trace;

/// A piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Piece {
    /// Fallen before the line bore.
    FreeFall,
    /// The absorber tears.
    Absorber,
    /// The grab slides on the rope.
    Grab,
    /// The rope: stretched in a drop, its damping in an energy.
    Rope,
    /// The ring slides on the harness.
    Harness,
    /// The body turns under the ring; in an energy: joints, house and ladder.
    Body,
    /// What is left below.
    Room,
    /// The rope over the roof's edge.
    Edge,
    /// Not spent yet.
    Moving,
}

/// Below this a piece is not told, m and J.
const LEAST_M: f64 = 5e-3;
const LEAST_J: f64 = 1.0;

/// The drop of the ring in pieces, m, in the order in which they come; then the room that is left.
pub fn drop(t: &Trace) -> Vec<(Piece, f64)> {
    let parts = [
        (Piece::FreeFall, t.free_fall_m),
        (Piece::Absorber, t.absorber_extension_m),
        (Piece::Rope, t.rope_stretch_m),
        (Piece::Harness, t.harness_slide_m),
    ];
    // A grab that runs and never bites slides while it falls freely: what is counted there is not counted again.
    let others_m: f64 = parts.iter().map(|p| p.1).sum();
    let grab = (Piece::Grab, t.braked_slip_m().min((t.total_fall_m - others_m).max(0.0)));
    let parts = [parts[0], parts[1], grab, parts[2], parts[3]];
    let told_m: f64 = parts.iter().map(|p| p.1).sum();
    let rest = (Piece::Body, t.total_fall_m - told_m);
    let room = (Piece::Room, t.clearance_margin_m.unwrap_or(0.0));
    parts.into_iter().chain([rest, room]).filter(|p| p.1 > LEAST_M).collect()
}

/// The energy in pieces, J, the largest first.
pub fn energy(t: &Trace) -> Vec<(Piece, f64)> {
    let l = t.ledger;
    let parts = [
        (Piece::Body, l.body_j),
        (Piece::Absorber, l.line.absorber_j),
        (Piece::Grab, l.line.grab_j),
        (Piece::Rope, l.line.damping_j + l.line.elastic_j + l.line.lost_j),
        (Piece::Edge, l.line.edge_j),
        (Piece::Harness, l.line.harness_j),
        (Piece::Moving, l.kinetic_j),
    ];
    let mut all: Vec<_> = parts.into_iter().filter(|p| p.1 > LEAST_J).collect();
    all.sort_by(|a, b| b.1.total_cmp(&a.1));
    all
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::physics::simulate;
    use crate::scenario::Scenario;

    /// A bug: with the grab upside down 3.60 m of free fall and 3.18 m of sliding made a drop of 3.59 m.
    #[test]
    fn a_grab_that_runs_is_not_counted_twice() {
        let mut s = Scenario::default();
        s.grab.arrow = crate::scenario::Arrow::Down;
        let t = simulate(&s.set_up().expect("possible"));
        let m: f64 = drop(&t).iter().filter(|p| p.0 != Piece::Room).map(|p| p.1).sum();
        assert!((m - t.total_fall_m).abs() < 0.03, "{m} of {}", t.total_fall_m);
    }

    /// What is told adds up: the drop and the room to 3 cm, the energy to 1 % of what gravity gave (the limit
    /// of the run's own check).
    #[test]
    fn the_pieces_add_up() {
        for up_m in [0.15, -0.5] {
            let mut s = Scenario::default();
            s.grab.above_dring_m = up_m;
            let t = simulate(&s.set_up().expect("possible"));
            let m: f64 = drop(&t).iter().map(|p| p.1).sum();
            let whole_m = t.total_fall_m + t.clearance_margin_m.unwrap_or(0.0).max(0.0);
            assert!((m - whole_m).abs() < 0.03, "{m} of {whole_m}");
            let j: f64 = energy(&t).iter().map(|p| p.1).sum();
            assert!(
                (j - t.ledger.work_in_j).abs() < 0.011 * t.ledger.work_in_j + 7.0,
                "{j} of {}",
                t.ledger.work_in_j
            );
        }
    }
}
