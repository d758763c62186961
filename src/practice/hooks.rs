//! Hook and ring from near: which connections hold, and at what load the others need not.
//!
//! Computed: the pull on the hook in a fall, beside the published strength for the way it is loaded. Told only: that a
//! twist opens a gate (no chance is given), and what no standard gives a strength for.

use crate::draw::Draw;
use serde::{Deserialize, Serialize};

/// Along the hook, gate shut: the least that the standards ask, N (22.2 kN, CSA Z259.12-01 and ANSI Z359.1-1999; a
/// table of these standards, read in a summary).
pub const BODY_N: f64 = 22_200.0;
/// On the gate's face and on its side in the older standards, N (1 kN and 1.55 kN; the same table. An OSHA letter of
/// 2009-10-13 quotes 220 and 350 lb).
pub const OLD_GATE_N: [f64; 2] = [1_000.0, 1_550.0];
/// The same two since ANSI Z359.1-2007, N (16 kN; the same table).
pub const NEW_GATE_N: f64 = 16_000.0;

/// How a hook is joined.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Joined {
    /// Gate shut and locked, one ring of its size.
    Shut,
    /// The gate ajar, its lever up.
    Ajar,
    /// Pulled along the hook.
    Along,
    /// Pulled across the gate.
    Across,
    /// In a ring of its size.
    Fits,
    /// In a ring so small that it holds the gate open.
    Small,
    /// Alone in its ring.
    Alone,
    /// Two hooks in one ring.
    Two,
    /// On the anchor's ring.
    OnRing,
    /// Back on its own lanyard.
    OnItself,
    /// The ring lies in the hook's bow.
    InBow,
    /// Turned over the gate, which the ring presses in.
    Turned,
}

/// A pair to choose from: what holds, then what need not.
pub const PAIRS: [[Joined; 2]; 6] = [
    [Joined::Shut, Joined::Ajar],
    [Joined::Along, Joined::Across],
    [Joined::Fits, Joined::Small],
    [Joined::Alone, Joined::Two],
    [Joined::OnRing, Joined::OnItself],
    [Joined::InBow, Joined::Turned],
];

impl Joined {
    /// Strengths for the way it is loaded: by the older standards, and by the newer; none where none is published.
    pub fn strength_n(self) -> Option<[f64; 2]> {
        match self {
            Joined::Across => Some([OLD_GATE_N[1], NEW_GATE_N]),
            Joined::Two | Joined::Turned => Some([OLD_GATE_N[0], NEW_GATE_N]),
            Joined::Ajar | Joined::Small | Joined::OnItself => None,
            _ => Some([BODY_N, BODY_N]),
        }
    }

    /// Whether it is as it should be.
    pub fn is_right(self) -> bool {
        PAIRS.iter().any(|p| p[0] == self)
    }

    /// Whether a pull is over the least that the older standards ask.
    pub fn is_over(self, pull_n: f64) -> bool {
        self.strength_n().is_none_or(|s| pull_n > s[0])
    }
}

/// Hooking up, in the order in which it is done (common practice).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Act {
    /// Look at hook and ring.
    Look,
    /// Hook through the ring.
    Through,
    /// The gate shuts by itself.
    Shuts,
    /// The lever is home, nothing in the gate.
    Home,
    /// Tug twice, the way a fall would pull.
    Tug,
}

impl Act {
    /// All, in order.
    pub const ALL: [Act; 5] = [Act::Look, Act::Through, Act::Shuts, Act::Home, Act::Tug];

    /// Shown in another order.
    pub fn shown(seed: u64) -> Vec<Act> {
        let mut draw = Draw::with_seed(seed ^ 0x7475_6721);
        let mut all = Act::ALL.to_vec();
        while all.is_sorted() {
            draw.shuffle(&mut all);
        }
        all
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::physics::simulate;
    use crate::scenario::Scenario;

    /// By the published figures: the pull of a usual fall with an absorber (EN 355 and the rules here keep it under
    /// 6 kN) is a quarter of what a hook bears along, over what an old gate bears, and under what a new one does.
    #[test]
    fn a_usual_fall_is_too_much_for_an_old_gate_alone() {
        let pull_n = simulate(&Scenario::default().set_up().expect("possible")).peak_force_n;
        assert!((2_000.0..6_000.0).contains(&pull_n));
        for [right, wrong] in PAIRS {
            assert!(!right.is_over(pull_n) && wrong.is_over(pull_n), "{right:?} {wrong:?}");
            assert!(right.is_right() && !wrong.is_right());
            assert!(wrong.strength_n().is_none_or(|s| s[1] > 2.0 * pull_n));
        }
        // A letter of OSHA in pounds: 220 lbf on the gate's face, 350 on its side, 3,600 in the newer standard.
        let n = |lbf: f64| lbf * 4.448_222;
        for (ours, lbf) in [(OLD_GATE_N[0], 220.0), (OLD_GATE_N[1], 350.0), (NEW_GATE_N, 3_600.0)] {
            assert!((ours / n(lbf) - 1.0).abs() < 0.03, "{ours} {lbf}");
        }
    }

    #[test]
    fn hooking_up_is_shown_in_another_order() {
        for seed in 0..40 {
            let acts = Act::shown(seed);
            assert!(!acts.is_sorted() && acts.len() == Act::ALL.len());
        }
    }
}
