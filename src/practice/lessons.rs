//! Short lessons, one idea each: two set-ups that differ in one thing, to predict and compare; in
//! the last, one set-up in two places.
//!
//! A lesson holds no result: both falls are run by the engine when it is played. Which of the two
//! comes off better is worked out from them.

use crate::physics::trace::{EventKind, Outcome, Thing, Trace};
use crate::practice::houses::HouseKind;
use crate::scenario::*;
use serde::{Deserialize, Serialize};

macro_rules! lessons {
    ($($name:ident, $doc:literal, $other:expr;)*) => {
        /// A lesson.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
        #[serde(rename_all = "snake_case")]
        pub enum Lesson { $(#[doc = $doc] $name,)* }
        impl Lesson {
            /// All, in the order of teaching.
            pub const ALL: &'static [Lesson] = &[$(Lesson::$name,)*];

            /// The second set-up, made of the first by one change.
            fn change(self, s: &mut Scenario) {
                match self { $(Lesson::$name => { let f: fn(&mut Scenario) = $other; f(s) })* }
            }
        }
    };
}

lessons! {
    GrabHeight, "The grab high or low.", |s| s.grab.above_dring_m = -0.45;
    GrabArrow, "The grab's arrow up or down.", |s| s.grab.arrow = Arrow::Down;
    BoltAndLatch, "The grab's latch closed or open.", |s| s.grab.latch = Latch::Open;
    GrabBolt, "The grab's bolt tight or worked loose.", |s| s.grab.bolt = Bolt::Loose;
    AbsorberOrNot, "An absorber or none.", |s| s.lanyard.absorber = None;
    AnchorGround, "An anchor in the framing or in the sheathing.", |s| s.anchor.kind = AnchorKind::RidgePlateInSheathing;
    AnchorChimney, "An anchor in the framing or a sling round a chimney.", |s| s.anchor.kind = AnchorKind::ChimneySling;
    RoomToStop, "The same gear high up or low down.", |s| s.stance = Stance::Ladder { standing_height_m: 1.2 };
    SlackOnTheRoof, "On the roof, the line drawn straight or left slack.", |s| s.lifeline.slack_m = 1.0;
    AlongTheWall, "Under the anchor or along the wall: the set-up stays, the place changes.", |_| ();
}

impl Lesson {
    /// The two set-ups under a place's rules, in the order in which they are shown.
    pub fn pair(self, place: &str) -> [Scenario; 2] {
        let mut a = Scenario { place: place.to_owned(), ..Scenario::default() };
        // Not always the same house and the same fine day.
        if let Some(house) = self.house() {
            house.move_in(&mut a);
        }
        if self == Lesson::GrabArrow {
            a.weather = Weather::Wet;
        }
        match self {
            Lesson::AbsorberOrNot => {
                // A short rope shows it: a long one is soft by itself.
                a.anchor.kind = AnchorKind::RatedEye;
                a.anchor.from_ridge_m = 3.6;
                a.lanyard.length_m = 1.2;
                a.grab.above_dring_m = -0.4;
            }
            Lesson::AnchorGround | Lesson::AnchorChimney | Lesson::BoltAndLatch => {
                a.grab.above_dring_m = -0.45
            }
            Lesson::GrabBolt => {
                // A loose bolt is a brake that slips: it shows in the room it takes.
                a.worker.mass_kg = 110.0;
                a.grab.above_dring_m = -0.45;
                a.stance = Stance::Ladder { standing_height_m: 2.6 };
            }
            Lesson::RoomToStop => a.grab.above_dring_m = -0.3,
            _ => {}
        }
        let mut b = a.clone();
        self.change(&mut b);
        if self.second_is_better() { [b, a] } else { [a, b] }
    }

    /// The house it is played at, if not the ordinary one.
    fn house(self) -> Option<HouseKind> {
        match self {
            Lesson::GrabArrow => Some(HouseKind::WalkOut),
            Lesson::AnchorChimney => Some(HouseKind::TallGable),
            Lesson::SlackOnTheRoof => Some(HouseKind::Cape),
            _ => None,
        }
    }

    /// Whether the guess is two heights at which the boots stop. Where the difference lies elsewhere it is which of
    /// the two comes off better.
    pub fn asks_boots(self) -> bool {
        !matches!(self, Lesson::AbsorberOrNot | Lesson::AlongTheWall)
    }

    /// Whether the two differ in a part so small that, standing, they look alike from where the worker is seen whole.
    pub fn differs_in_a_part(self) -> bool {
        use Lesson as L;
        matches!(self, L::GrabArrow | L::BoltAndLatch | L::GrabBolt | L::AbsorberOrNot | L::AnchorGround)
    }

    /// Which of the two comes off better must not be a matter of which is shown first.
    fn second_is_better(self) -> bool {
        matches!(self, Lesson::GrabArrow | Lesson::AnchorGround | Lesson::RoomToStop)
    }
}

/// How far along the wall the last lesson's second worker is, m.
pub const ALONG_M: f64 = 3.0;

/// Which of two falls came off better.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Better {
    /// The first.
    First,
    /// The second.
    Second,
    /// Neither by much.
    Alike,
}

/// How bad a fall is: outcome first, then force and free fall together.
fn badness(t: &Trace) -> (u8, f64) {
    let rank = match t.outcome {
        Outcome::Stopped => 0,
        Outcome::Strikes => 1,
        Outcome::LetGo => 2,
    };
    (rank, t.peak_force_n / 1_000.0 + 2.0 * t.free_fall_m + t.grab_slip_m)
}

/// Compares two falls.
pub fn better(a: &Trace, b: &Trace) -> Better {
    let (x, y) = (badness(a), badness(b));
    if x.0 != y.0 {
        return if x.0 < y.0 { Better::First } else { Better::Second };
    }
    match x.1 - y.1 {
        d if d < -0.3 => Better::First,
        d if d > 0.3 => Better::Second,
        _ => Better::Alike,
    }
}

/// A way in which a fall can end, to be found by trying: all of them real results of the engine.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Ending {
    /// Stopped in the air.
    Stopped,
    /// Stopped on the roof.
    OnRoof,
    /// The absorber was spent.
    Spent,
    /// Struck wall or ladder hard on the way.
    Swing,
    /// Down to the ground.
    Ground,
    /// Down on a deck.
    Deck,
    /// The rope left the grab.
    OffRope,
    /// The anchor gave way.
    Anchor,
    /// The rope broke.
    Rope,
    /// A connector, the lanyard or the harness let go.
    Link,
    /// The ladder went first.
    Ladder,
}

impl Ending {
    /// All.
    pub const ALL: [Ending; 11] = [
        Ending::Stopped,
        Ending::OnRoof,
        Ending::Spent,
        Ending::Swing,
        Ending::Ground,
        Ending::Deck,
        Ending::OffRope,
        Ending::Anchor,
        Ending::Rope,
        Ending::Link,
        Ending::Ladder,
    ];

    /// A set-up whose fall ends so, under a place's rules.
    pub fn example(self, place: &str) -> Scenario {
        let mut s = Scenario { place: place.to_owned(), ..Scenario::default() };
        match self {
            Ending::Stopped => {}
            Ending::OnRoof => s.stance = Stance::Roof { from_eave_m: 3.0 },
            Ending::Spent => s.gear.pack = PackState::Deployed,
            Ending::Ground => s.grab.arrow = Arrow::Down,
            Ending::Swing => s.grab.above_dring_m = -0.5,
            Ending::Deck => {
                s.grab.arrow = Arrow::Down;
                s.house.below = ORDINARY_OBSTACLE;
                s.ladder.foot_distance_m = 1.45;
            }
            Ending::OffRope => {
                s.grab.latch = Latch::Open;
                s.grab.above_dring_m = -0.4;
            }
            Ending::Anchor => s.anchor.kind = AnchorKind::VentPipe,
            Ending::Rope => s.gear.rope = RopeState::Frayed,
            Ending::Link => s.gear.webbing = WebbingState::Cut,
            Ending::Ladder => {
                s.ladder.tied = false;
                s.weather = Weather::Frozen;
            }
        }
        s
    }

    /// The endings that a fall shows.
    pub fn of(t: &Trace) -> Vec<Ending> {
        let has = |k| t.time_of(k).is_some();
        let struck = |what, least| t.impacts.iter().any(|i| i.what == what && i.speed_m_s >= least);
        let hard = crate::rules::HARD_SWING_M_S;
        [
            (t.outcome == Outcome::Stopped && t.left_roof, Ending::Stopped),
            (t.outcome == Outcome::Stopped && !t.left_roof, Ending::OnRoof),
            (t.absorber_spent, Ending::Spent),
            (struck(Thing::Wall, hard) || struck(Thing::Ladder, hard), Ending::Swing),
            (struck(Thing::Ground, 0.0), Ending::Ground),
            (struck(Thing::Obstacle, 0.0), Ending::Deck),
            (has(EventKind::OffRope), Ending::OffRope),
            (has(EventKind::AnchorFails), Ending::Anchor),
            (has(EventKind::RopeBreaks), Ending::Rope),
            (has(EventKind::LinkBreaks), Ending::Link),
            (has(EventKind::LadderSlides) || has(EventKind::LadderTips), Ending::Ladder),
        ]
        .into_iter()
        .filter_map(|(yes, e)| yes.then_some(e))
        .collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::physics::simulate;

    #[test]
    fn each_lesson_changes_one_thing_and_one_of_the_two_comes_off_better() {
        for &l in Lesson::ALL.iter().filter(|l| **l != Lesson::AlongTheWall) {
            let [a, b] = l.pair("on");
            assert!(
                a.problems().is_empty() && b.problems().is_empty(),
                "{l:?}: {:?} {:?}",
                a.problems(),
                b.problems()
            );
            let (x, y) =
                (serde_json::to_value(&a).expect("writes"), serde_json::to_value(&b).expect("writes"));
            let parts = x.as_object().expect("fields").iter().filter(|(k, v)| y[k.as_str()] != **v).count();
            assert_eq!(parts, 1, "{l:?}");
            let (ta, tb) =
                (simulate(&a.set_up().expect("possible")), simulate(&b.set_up().expect("possible")));
            assert!(ta.is_sound() && tb.is_sound(), "{l:?}");
            let (want, other) = if l.second_is_better() {
                (Better::Second, Better::First)
            } else {
                (Better::First, Better::Second)
            };
            assert_eq!(better(&ta, &tb), want, "{l:?}: {:?} {:?}", badness(&ta), badness(&tb));
            assert_eq!(better(&tb, &ta), other);
        }
    }

    /// Where the guess is two heights, there is something to guess: at least 0.15 m lies between them.
    #[test]
    fn boots_stop_at_two_heights_that_can_be_told_apart() {
        for &l in Lesson::ALL.iter().filter(|l| l.asks_boots()) {
            let low = l.pair("on").map(|s| simulate(&s.set_up().expect("possible")).lowest_point_m);
            assert!((low[0] - low[1]).abs() > 0.15, "{l:?}: {low:?}");
        }
    }

    #[test]
    fn along_the_wall_the_same_set_up_ends_lower_and_sideways() {
        let [a, b] = Lesson::AlongTheWall.pair("on");
        assert_eq!(a, b);
        let w = crate::studies::along_wall::swing(&a.set_up().expect("possible"), ALONG_M).expect("swings");
        assert!(
            w.extra_m > 0.2 && w.free.speed_m_s > crate::rules::HARD_SWING_M_S,
            "{} {}",
            w.extra_m,
            w.free.speed_m_s
        );
        // Longer than the pendulum's closed form from the same lean, since the line gives.
        let rope_m = libm::hypot(ALONG_M, w.free.path[0].down_m);
        assert!(w.extra_m > 0.8 * (rope_m - w.free.path[0].down_m), "{}", w.extra_m);
    }

    #[test]
    fn every_ending_can_be_found() {
        for e in Ending::ALL {
            let found = Ending::of(&simulate(&e.example("on").set_up().expect("possible")));
            assert!(found.contains(&e), "{e:?} is not among {found:?}");
        }
    }
}
