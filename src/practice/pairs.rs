//! Of two, which would you hang on: racks of pairs, of hooks and rings, of lines and edges, of what a line is tied to.
//!
//! Each half that physics can tell apart is a set-up that the engine runs, or a strength that `strength` gives. Told
//! only: paint, solvent, sun and heat (no figure: out of use), two people on a line, a hook loaded by its own line.

use super::hooks::{self, Joined};
use crate::draw::Draw;
use crate::scenario::{
    Anchor, AnchorKind, Chimney, Lifeline, Mortar, RopeEdge, RopeEnd, RopeKind, RopeState, Scenario,
};
use serde::{Deserialize, Serialize};

/// A line, and what it runs over.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Lined {
    /// Over a pad.
    Padded,
    /// Over the bare edge.
    Bare,
    /// Without a knot.
    Straight,
    /// A knot along it.
    Knotted,
    /// Sheath whole.
    Whole,
    /// Sheath worn through.
    Frayed,
    /// Supple and clean.
    Clean,
    /// Stiff from paint or solvent.
    Stiff,
    /// One person on it.
    Alone,
    /// Two people on it.
    Shared,
    /// Reaches the ground, a stop at its end.
    Stopped,
    /// Ends a little below the grab.
    Short,
    /// Taut to the anchor.
    Taut,
    /// A metre slack on the shingles.
    Slack,
    /// 16 mm polyester and polypropylene.
    Thick,
    /// 12 mm nylon.
    Nylon,
}

/// What a line is tied to, and how.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Slung {
    /// A sling a hand above the roof.
    Low,
    /// A sling just under the top.
    High,
    /// Joints hard and full.
    Hard,
    /// Joints soft.
    Soft,
    /// A sling choked through its own eye.
    Choked,
    /// The line round the chimney, hooked back on itself.
    HookedBack,
    /// A plate in the rafters.
    Rafters,
    /// A plate in the boards alone.
    Boards,
    /// A rated eye.
    Eye,
    /// A vent pipe.
    Pipe,
    /// A sling tied back to a plate in the rafters behind it.
    TiedBack,
    /// The same sling alone.
    Loose,
}

/// One of two.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Half {
    /// A hook.
    Hook(Joined),
    /// A line.
    Line(Lined),
    /// A support.
    Support(Slung),
}

/// A rack of pairs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Rack {
    /// Hooks and rings.
    Hooks,
    /// Lines and edges.
    Ropes,
    /// Supports.
    Supports,
}

/// The better one first.
const ROPES: [[Lined; 2]; 8] = [
    [Lined::Padded, Lined::Bare],
    [Lined::Straight, Lined::Knotted],
    [Lined::Whole, Lined::Frayed],
    [Lined::Clean, Lined::Stiff],
    [Lined::Alone, Lined::Shared],
    [Lined::Stopped, Lined::Short],
    [Lined::Taut, Lined::Slack],
    [Lined::Thick, Lined::Nylon],
];

/// The better one first.
const SUPPORTS: [[Slung; 2]; 6] = [
    [Slung::Low, Slung::High],
    [Slung::Hard, Slung::Soft],
    [Slung::Choked, Slung::HookedBack],
    [Slung::Rafters, Slung::Boards],
    [Slung::Eye, Slung::Pipe],
    [Slung::TiedBack, Slung::Loose],
];

/// How far beside the anchor the slip over an edge is, m.
pub const BESIDE_M: f64 = 2.0;

/// A broad, heavy chimney: its figures are invented, a mason's would differ.
const STOUT: Chimney = Chimney {
    width_m: 0.9,
    height_m: 1.6,
    sling_height_m: 0.3,
    weight_n_per_m: 8_000.0,
    mortar: Mortar::Sound,
};

impl Rack {
    /// The pairs, the better one first.
    pub fn pairs(self) -> Vec<[Half; 2]> {
        match self {
            Rack::Hooks => hooks::PAIRS.iter().map(|p| p.map(Half::Hook)).collect(),
            Rack::Ropes => ROPES.iter().map(|p| p.map(Half::Line)).collect(),
            Rack::Supports => SUPPORTS.iter().map(|p| p.map(Half::Support)).collect(),
        }
    }

    /// The pairs in an order of their own, each with the better one first or second.
    pub fn drawn(self, seed: u64) -> Vec<[Half; 2]> {
        let mut draw = Draw::with_seed(seed ^ 0x686f_6f6b ^ self as u64);
        let mut all: Vec<[Half; 2]> =
            self.pairs().into_iter().map(|[a, b]| if draw.coin() { [b, a] } else { [a, b] }).collect();
        draw.shuffle(&mut all);
        all
    }
}

impl Half {
    /// The rack that it stands in.
    pub fn rack(self) -> Rack {
        match self {
            Half::Hook(_) => Rack::Hooks,
            Half::Line(_) => Rack::Ropes,
            Half::Support(_) => Rack::Supports,
        }
    }

    /// Whether it is the better one of its pair.
    pub fn is_right(self) -> bool {
        self.rack().pairs().iter().any(|p| p[0] == self)
    }

    /// The set-up that tells it from its other half; none where nothing that is computed does.
    pub fn set_up(self, place: &str) -> Option<Scenario> {
        let usual = Scenario { place: place.to_owned(), ..Scenario::default() };
        match self {
            Half::Hook(_) => None,
            Half::Line(l) => l.set_up(usual),
            Half::Support(s) => s.set_up(usual),
        }
    }
}

impl Lined {
    fn set_up(self, mut s: Scenario) -> Option<Scenario> {
        match self {
            Lined::Clean | Lined::Stiff | Lined::Alone | Lined::Shared => return None,
            Lined::Bare => s.lifeline.edge = RopeEdge::Bare,
            Lined::Knotted => s.gear.rope = RopeState::Knotted,
            Lined::Frayed => s.gear.rope = RopeState::Frayed,
            // As long as from the anchor to a hand above the ring.
            Lined::Short => s.lifeline = Lifeline { length_m: 5.0, end: RopeEnd::Nothing, ..s.lifeline },
            Lined::Slack => s.lifeline.slack_m = 1.0,
            Lined::Nylon => s.lifeline.kind = RopeKind::Nylon12,
            Lined::Padded | Lined::Straight | Lined::Whole | Lined::Stopped | Lined::Taut | Lined::Thick => {}
        }
        Some(s)
    }
}

impl Slung {
    fn set_up(self, mut s: Scenario) -> Option<Scenario> {
        let sling =
            |chimney: Chimney| Anchor { kind: AnchorKind::ChimneySling, chimney, ..Anchor::default() };
        let kind = |kind: AnchorKind| Anchor { kind, ..Anchor::default() };
        s.anchor = match self {
            Slung::Low => sling(STOUT),
            Slung::High | Slung::Loose => sling(Chimney { sling_height_m: 1.5, ..STOUT }),
            Slung::Hard => sling(Chimney { sling_height_m: 1.0, ..STOUT }),
            Slung::Soft => sling(Chimney { sling_height_m: 1.0, mortar: Mortar::Weak, ..STOUT }),
            // How chimney and tie-back share nobody knows: the tie-back has to bear it all.
            Slung::Rafters | Slung::TiedBack => kind(AnchorKind::RidgePlateInFraming),
            Slung::Boards => kind(AnchorKind::RidgePlateInSheathing),
            Slung::Eye => kind(AnchorKind::RatedEye),
            Slung::Pipe => kind(AnchorKind::VentPipe),
            Slung::Choked | Slung::HookedBack => return None,
        };
        Some(s)
    }
}

/// What is asked of a support before anything is tied to it: five that a competent person asks, and three that tell
/// nothing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Question {
    /// Is it brick all through, or a shell on a frame?
    Solid,
    /// Are its joints hard, up to the sling?
    Joints,
    /// Which way would a fall pull it, and how high?
    Way,
    /// What does it bear, by whom, in writing?
    Bears,
    /// Is the sling rated for it, and clear of sharp corners?
    Sling,
    /// Does it look strong?
    Looks,
    /// Did the last crew tie to it?
    Before,
    /// When was it painted?
    Painted,
}

impl Question {
    /// All, in an order that tells nothing.
    pub const ALL: [Question; 8] = [
        Question::Looks,
        Question::Solid,
        Question::Way,
        Question::Before,
        Question::Joints,
        Question::Sling,
        Question::Painted,
        Question::Bears,
    ];

    /// Whether a competent person asks it (common practice).
    pub fn is_asked(self) -> bool {
        !matches!(self, Question::Looks | Question::Before | Question::Painted)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::physics::simulate;
    use crate::physics::trace::{EventKind, Outcome, Trace};
    use crate::strength;
    use crate::studies::along_wall::swing;

    fn fall(h: Half) -> Trace {
        let t = simulate(&h.set_up("on").expect("computed").set_up().expect("possible"));
        assert!(t.is_sound(), "{h:?}");
        t
    }

    /// What tells the halves of a pair of lines apart, by whole runs: 12 mm nylon gives 27 % at 8 kN and the 16 mm
    /// line 10 % (makers' figures), so the drop is longer by the difference of their stretch; a metre of slack is a
    /// metre of free fall and what the grab runs more at that speed; a frayed line parts, a short one lets the grab
    /// off; a knot leaves half of 22 kN (common figure).
    #[test]
    fn the_worse_line_falls_further_or_parts() {
        let usual = fall(Half::Line(Lined::Taut));
        assert_eq!(usual.outcome, Outcome::Stopped);
        let slack = fall(Half::Line(Lined::Slack));
        assert!((0.95..1.4).contains(&(slack.free_fall_m - usual.free_fall_m)), "{}", slack.free_fall_m);
        let nylon = fall(Half::Line(Lined::Nylon));
        assert!(
            nylon.rope_stretch_m > 1.8 * usual.rope_stretch_m
                && nylon.total_fall_m > usual.total_fall_m + 0.1
        );
        let frayed = fall(Half::Line(Lined::Frayed));
        assert!(frayed.time_of(EventKind::RopeBreaks).is_some() && frayed.outcome == Outcome::LetGo);
        let short = fall(Half::Line(Lined::Short));
        assert!(short.time_of(EventKind::OffRope).is_some() && short.outcome == Outcome::LetGo);
        let s = Half::Line(Lined::Knotted).set_up("on").expect("computed");
        assert!((crate::physics::equipment::rope_strength_n(&s.gear) - 11_000.0).abs() < 1.0);
        let s = Half::Line(Lined::Bare).set_up("on").expect("computed").set_up().expect("possible");
        let w = swing(&s, BESIDE_M).expect("computed");
        assert!(w.held.is_some_and(|f| f.dragged_m > 0.1));
    }

    /// Of the supports, by hand. W b / 2 h at 1.5 m: 8,000 · 1.6 · 0.9 / 3.0 = 3.84 kN, at 0.3 m 19.2; it slides at
    /// 0.6 · 12.8 kN = 7.68, in soft joints at 0.6 · 8,000 · 0.6 = 2.88. Over 2.6 kN of pull the better one stays, and
    /// the worse one goes where the weakest in twenty counts.
    #[test]
    fn the_worse_support_lets_go_of_the_usual_fall() {
        let mean = |s: Slung| strength::anchor(&Half::Support(s).set_up("on").expect("computed")).mean.0;
        for (s, want_n) in
            [(Slung::High, 3_840.0), (Slung::Low, 7_680.0), (Slung::Hard, 5_760.0), (Slung::Soft, 2_880.0)]
        {
            assert!((mean(s) - want_n).abs() < 1.0, "{s:?}: {}", mean(s));
        }
        for [right, wrong] in SUPPORTS {
            if Half::Support(right).set_up("on").is_none() {
                continue;
            }
            assert_eq!(fall(Half::Support(right)).outcome, Outcome::Stopped, "{right:?}");
            assert_eq!(fall(Half::Support(wrong)).outcome, Outcome::LetGo, "{wrong:?}");
        }
    }

    #[test]
    fn each_pair_is_drawn_once_and_the_better_one_is_on_either_side() {
        for rack in [Rack::Hooks, Rack::Ropes, Rack::Supports] {
            let n = rack.pairs().len();
            let mut first = 0;
            for seed in 0..40 {
                let all = rack.drawn(seed);
                assert_eq!(all.len(), n);
                for p in rack.pairs() {
                    assert_eq!(all.iter().filter(|q| q.contains(&p[0]) && q.contains(&p[1])).count(), 1);
                }
                first += all.iter().filter(|q| q[0].is_right()).count();
            }
            assert!(first > 40 * n / 3 && first < 40 * n * 2 / 3, "{rack:?} {first}");
        }
        assert_eq!(Question::ALL.iter().filter(|q| q.is_asked()).count(), 5);
    }
}
