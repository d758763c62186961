//! From the ladder onto the roof and back: nine moments, two links, and a slip at any of them.
//!
//! What falls is what was clipped then: each moment, with the links as they are, is a set-up that the engine runs.
//! Left out: the throw of a line over the ridge, hands on rails, balance. Two links are drawn on one line; a maker may
//! ask for a second line (`Gear::EaveTwo`).

use crate::draw::Draw;
use crate::geometry::Geometry;
use crate::scenario::{Scenario, Stance};
use serde::{Deserialize, Serialize};

/// Metres of rail past the eave (29 CFR 1926.1053(b)(1): 3 ft; Quebec S-2.1, r. 4, s. 3.5.6: 900 mm; both read).
pub const RAILS_PAST_M: f64 = 0.9;
/// Slack that somebody leaves on the shingles, m.
pub const SLACK_M: f64 = 1.0;
/// Length of a link, m: as long as a grab may carry anywhere.
pub(super) const LINK_M: f64 = 0.9;
/// A grab is moved no nearer to its link's end than this, m.
const SHORT_M: f64 = 0.05;
/// A grab over the edge is at least so far up the slope from it, m, one under it as far down.
const CLEAR_M: f64 = 0.15;
/// Over the ring no higher than a hand reaches with ease, m.
const REACH_M: f64 = 0.45;

/// Where somebody is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Moment {
    /// Climbing, below the edge.
    Climb,
    /// At the edge: the second link is clipped above it.
    ClipAbove,
    /// The first link goes over the pad.
    OverPad,
    /// Between the rails, onto the roof.
    StepOn,
    /// At work on the roof.
    OnRoof,
    /// Back at the edge, facing the slope.
    Back,
    /// A foot to the rung.
    FootDown,
    /// At the edge: the first link goes below it.
    ClipBelow,
    /// Down.
    Down,
}

impl Moment {
    /// All, in order.
    pub const ALL: [Moment; 9] = [
        Moment::Climb,
        Moment::ClipAbove,
        Moment::OverPad,
        Moment::StepOn,
        Moment::OnRoof,
        Moment::Back,
        Moment::FootDown,
        Moment::ClipBelow,
        Moment::Down,
    ];

    /// Where the boots are: so far under the eave on the ladder, or so far up from it on the roof, m.
    fn boots_m(self) -> Result<f64, f64> {
        match self {
            Moment::Climb | Moment::Down => Ok(1.9),
            // Higher up the grab over the edge would be below the ring.
            Moment::ClipAbove | Moment::ClipBelow | Moment::OverPad | Moment::FootDown => Ok(1.2),
            Moment::StepOn | Moment::Back => Err(0.5),
            Moment::OnRoof => Err(1.8),
        }
    }

    /// Whether the boots are on the roof.
    pub fn is_on_roof(self) -> bool {
        self.boots_m().is_err()
    }
}

/// Where a link is clipped.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Link {
    /// To a grab below the edge.
    Below,
    /// To a grab above it.
    Above,
    /// On its keeper, or in the hand.
    Off,
}

/// The two links and the line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Links {
    /// The first one.
    pub a: Link,
    /// The second one; never below.
    pub b: Link,
    /// A metre of line lies slack on the shingles.
    pub slack: bool,
}

/// What holds when somebody slips.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Holds {
    /// The first link.
    A,
    /// The second.
    B,
    /// Whichever comes taut first.
    Either,
    /// None.
    Nothing,
}

impl Holds {
    /// All, as answers.
    pub const ALL: [Holds; 4] = [Holds::A, Holds::B, Holds::Either, Holds::Nothing];
}

impl Links {
    /// As they should be at a moment: one link is always on.
    pub fn right(at: Moment) -> Links {
        use Link::{Above, Below, Off};
        let (a, b) = match at {
            Moment::Climb | Moment::Down => (Below, Off),
            Moment::ClipAbove => (Below, Above),
            Moment::OverPad | Moment::ClipBelow => (Off, Above),
            Moment::StepOn | Moment::Back | Moment::FootDown => (Above, Above),
            Moment::OnRoof => (Above, Off),
        };
        Links { a, b, slack: false }
    }

    /// What is clipped.
    pub fn holds(self) -> Holds {
        match (self.a != Link::Off, self.b != Link::Off) {
            (true, true) => Holds::Either,
            (true, false) => Holds::A,
            (false, true) => Holds::B,
            (false, false) => Holds::Nothing,
        }
    }

    /// The link that comes taut first: one above the edge before one below it.
    fn first(self) -> Link {
        match (self.a, self.b) {
            (Link::Above, _) | (_, Link::Above) => Link::Above,
            (Link::Below, _) | (_, Link::Below) => Link::Below,
            _ => Link::Off,
        }
    }
}

/// Taking it all down at the end of the day, in the order in which it is done (common practice): whoever is on the roof
/// is tied in until the last step off it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum TakeDown {
    /// Tools down, nobody below.
    Clear,
    /// A second line over the ridge, tied off on the far side from the ground.
    SecondLine,
    /// The plate off, on that line.
    PlateOff,
    /// Its holes sealed.
    Seal,
    /// Down, on the line all the way.
    Down,
    /// Untied from the ground and pulled over.
    Untie,
    /// Written down.
    Write,
}

impl TakeDown {
    /// All, in order.
    pub const ALL: [TakeDown; 7] = [
        TakeDown::Clear,
        TakeDown::SecondLine,
        TakeDown::PlateOff,
        TakeDown::Seal,
        TakeDown::Down,
        TakeDown::Untie,
        TakeDown::Write,
    ];

    /// Shown in another order: their numbers.
    pub fn shown(seed: u64) -> Vec<usize> {
        let mut draw = Draw::with_seed(seed ^ 0x646f_776e);
        let mut all: Vec<usize> = (0..TakeDown::ALL.len()).collect();
        while all.is_sorted() {
            draw.shuffle(&mut all);
        }
        all
    }
}

/// Whether a link reaches from a moment to where it would be clipped.
pub fn reaches(at: Moment, link: Link) -> bool {
    let alone = Links { a: link, b: Link::Off, slack: false };
    link == Link::Off || set_up(at, alone, &Scenario::default().place).is_some()
}

/// The set-up of a slip at a moment; none where the link does not reach to where it is said to be clipped.
pub fn set_up(at: Moment, links: Links, place: &str) -> Option<Scenario> {
    let mut s = Scenario { place: place.to_owned(), ..Scenario::default() };
    // Rails past the eave, measured along them.
    let eave_m = s.house.eave_height_m;
    s.ladder.length_m = libm::hypot(eave_m, s.ladder.foot_distance_m + 0.2) + RAILS_PAST_M;
    s.lifeline.slack_m = if links.slack { SLACK_M } else { 0.0 };
    s.lanyard.length_m = LINK_M;
    let first = links.first();
    let other = if links.a == first { links.b } else { links.a };
    if other != first && !reaches(at, other) {
        return None;
    }
    s.lanyard.clipped = first != Link::Off;
    s.stance = match at.boots_m() {
        Ok(under_m) => Stance::Ladder { standing_height_m: eave_m - under_m },
        Err(from_eave_m) => Stance::Roof { from_eave_m },
    };
    if at.is_on_roof() {
        // A grab left below the edge is out of the link's reach: it pulls its wearer back.
        s.grab.above_dring_m = REACH_M;
        return (first != Link::Below).then_some(s);
    }
    // On the ladder: the highest place on its side of the edge that hand and link reach.
    let steps = ((REACH_M + LINK_M) / 0.05) as u32;
    (0..=steps).map(|i| REACH_M - 0.05 * f64::from(i)).find_map(|up_m| {
        s.grab.above_dring_m = up_m;
        let g = Geometry::of(&s)?;
        let fits = match first {
            Link::Above => g.grab.x < g.eave.x && g.grab.dist(g.eave) >= CLEAR_M,
            Link::Below => g.grab.y <= g.eave.y - CLEAR_M,
            // The grab waits within reach, with nobody on it.
            Link::Off => true,
        };
        (fits && g.grab.dist(g.dring) <= LINK_M - SHORT_M).then(|| s.clone())
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::physics::simulate;
    use crate::physics::trace::{EventKind, Outcome};

    fn slip(at: Moment, links: Links) -> crate::physics::trace::Trace {
        let s = set_up(at, links, "on").unwrap_or_else(|| panic!("{at:?} {links:?}: out of reach"));
        simulate(&s.set_up().unwrap_or_else(|p| panic!("{at:?} {links:?}: {p:?}")))
    }

    /// Every moment can be tried with the links in every place where they can be; each run passes its own check.
    #[test]
    fn every_slip_can_be_shown() {
        for at in Moment::ALL {
            // What the second link adds is no other fall.
            for a in [Link::Below, Link::Above, Link::Off] {
                for slack in [false, true] {
                    let links = Links { a, b: Link::Off, slack };
                    if slack && a != Link::Above {
                        continue;
                    }
                    if set_up(at, links, "on").is_none() {
                        // From far below the edge what is above it is out of reach, and from the roof what is below.
                        let far = matches!(at, Moment::Climb | Moment::Down) && links.first() == Link::Above;
                        assert!(far || at.is_on_roof() && links.first() == Link::Below, "{at:?} {links:?}");
                        continue;
                    }
                    let t = slip(at, links);
                    assert!(t.is_sound(), "{at:?} {links:?}: {}", t.energy_residual);
                }
            }
        }
    }

    /// One link is always on, in the right order; so no right moment ends below, and none falls further than it could
    /// fall free by its link: 0.9 m each way and the grab's reach.
    #[test]
    fn done_in_order_every_slip_is_held() {
        for at in Moment::ALL {
            let links = Links::right(at);
            assert_ne!(links.holds(), Holds::Nothing);
            let t = slip(at, links);
            assert_eq!(t.outcome, Outcome::Stopped, "{at:?}");
            assert!(t.free_fall_m < 1.8, "{at:?}: {}", t.free_fall_m);
            // A bug: in the taught order itself the grab hung low over the edge.
            let s = set_up(at, links, "on").expect("reaches").set_up().expect("possible");
            let report = crate::grade::report::Report::of(s, t).expect("known place");
            let low = report.findings.iter().find(|f| f.code == crate::rules::FindingCode::GrabLow);
            assert!(low.is_none_or(|f| f.severity > crate::rules::Severity::Minor), "{at:?}: {low:?}");
        }
    }

    /// By hand: nobody is on the roof without a line. The plate goes only once another line hangs, its holes are
    /// sealed by who is still up there, and that line is untied by who is down.
    #[test]
    fn what_holds_comes_off_last() {
        use TakeDown as T;
        let at = |x: T| T::ALL.iter().position(|y| *y == x).expect("in it");
        assert!(at(T::SecondLine) < at(T::PlateOff) && at(T::PlateOff) < at(T::Seal));
        assert!(at(T::Seal) < at(T::Down) && at(T::Down) < at(T::Untie));
        for seed in 0..40 {
            let mut shown = T::shown(seed);
            assert!(!shown.is_sorted());
            shown.sort_unstable();
            assert_eq!(shown, [0, 1, 2, 3, 4, 5, 6]);
        }
    }

    /// The three that go wrong: the first link off before the second is on falls to the ground; a metre of slack falls
    /// a metre further, and what the grab runs more before it bites at the higher speed; a grab left below the edge
    /// falls further by what it sits lower, 0.3 m at the least (0.15 m on either side of the edge).
    #[test]
    fn out_of_order_it_falls_further_or_down() {
        let off = Links { a: Link::Off, b: Link::Off, slack: false };
        let t = slip(Moment::ClipAbove, off);
        assert_eq!(t.outcome, Outcome::LetGo);
        assert!(t.time_of(EventKind::NotClipped).is_some() && t.time_of(EventKind::StrikesGround).is_some());
        let right = Links::right(Moment::OverPad);
        let usual_m = slip(Moment::OverPad, right).free_fall_m;
        let more = slip(Moment::OverPad, Links { slack: true, ..right }).free_fall_m - usual_m;
        assert!((0.95..=1.4).contains(&more), "{more}");
        let below = Links { a: Link::Below, b: Link::Off, slack: false };
        let more = slip(Moment::OverPad, below).free_fall_m - usual_m;
        assert!((0.3..=0.9).contains(&more), "{more}");
    }
}
