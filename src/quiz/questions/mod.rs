//! One question and its key. The set-ups are drawn from a seed; the key is computed, by whole runs of
//! the engine and by the rules, never written down.
//!
//! A draw whose key would hang on less than a tenth of a limit is thrown away and drawn again, so
//! that no answer is a matter of rounding. Left out: wording, which is `texts`'.

mod falls;
mod gear;
mod site;
mod whole;

pub use site::called_for;
pub use whole::{holds_by_runs, lean_rad, stands, worn_with};

use falls::{along, ends, higher, put_grab, room, sound};
use gear::{fault, pick_anchor, steps};
use site::{after, footing, method, wire};
use whole::{clipped, pair, stand, worn};

use crate::draw::Draw;
use crate::geometry::{Geometry, SetUp};
use crate::physics::equipment::{LineParams, link_strength_n, rope_strength_n};
use crate::physics::ladder::{self, Footing};
use crate::physics::trace::{Outcome, Trace};
use crate::physics::{room_m, settled_trace};
use crate::practice::eave::{Holds, Links, Moment};
use crate::practice::harness::Fault;
use crate::practice::inspection::GearPart;
use crate::practice::pairs::Half;
use crate::rules::{Advice, AnchorLimit, FindingCode, LimitKind, advice, judge, place, reserve};
use crate::scenario::*;
use crate::strength::{self, Ground};
use crate::studies::along_wall::{STEP_M, reach_of_m};
use serde::{Deserialize, Serialize};

macro_rules! codes {
    ($doc:literal $type:ident { $($name:ident, $says:literal;)* }) => {
        #[doc = $doc]
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
        #[serde(rename_all = "snake_case")]
        pub enum $type { $(#[doc = $says] $name,)* }
        impl $type {
            /// All, in order.
            pub const ALL: &'static [$type] = &[$($type::$name,)*];
        }
    };
}

codes! { "What a question asks."
    ItemKind {
    Ends, "How does this fall end?";
    Higher, "Which of two set-ups stops the worker higher?";
    PutGrab, "Put the grab where the free fall stays under a limit.";
    Fault, "Which part must not be used as it is?";
    Steps, "Put the steps in order.";
    PickAnchor, "Which of three is an anchor for this place?";
    Room, "Is there room to stop?";
    Along, "How far along the wall?";
    Method, "Is fall arrest the right method here?";
    After, "What now, after the stop?";
    Footing, "Does the ladder stand?";
    Wire, "May the ladder be used beside this wire?";
    Worn, "Which way of wearing a harness folds its wearer furthest?";
    Clipped, "What holds at the eave?";
    Pair, "Which of two is the better one?";
    Stand, "Where on this property may the ladder stand?";
}}

impl ItemKind {
    /// Whether a miss of it can kill: these are in every form.
    pub fn can_kill(self) -> bool {
        use ItemKind as K;
        matches!(
            self,
            K::Ends | K::PickAnchor | K::Room | K::Method | K::After | K::Wire | K::Clipped | K::Stand
        )
    }
}

/// How near to its limit a question's key lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Level {
    /// Half the limit away or more.
    Plain,
    /// A quarter.
    Middle,
    /// A tenth: the nearest that is asked.
    Close,
}

/// Share of a limit that a key stays away from it at the least.
pub const LEAST_MARGIN_SHARE: f64 = 0.1;

impl Level {
    /// All, plain first.
    pub const ALL: [Level; 3] = [Level::Plain, Level::Middle, Level::Close];

    /// The level of a margin, as a share of the limit; none under the least.
    pub fn of(margin_share: f64) -> Option<Level> {
        match margin_share {
            m if m < LEAST_MARGIN_SHARE || m.is_nan() => None,
            m if m < 0.25 => Some(Level::Close),
            m if m < 0.5 => Some(Level::Middle),
            _ => Some(Level::Plain),
        }
    }
}

codes! { "A step of setting up, in the order in which they are taken (common practice)."
    Step {
    AskMethod, "Ask whether another method would do.";
    WalkSite, "Walk the site: wires, ground, what stands below.";
    PlanRescue, "Settle the rescue, in writing.";
    LookOverGear, "Look over every part of the gear.";
    PutOnHarness, "Put the harness on and draw it up, on the ground.";
    PlaceLadder, "Set the ladder's foot and tie its top.";
    FirstUp, "Protect the first one up another way while the anchor is set.";
    SetAnchor, "Set the anchor in the framing.";
    HangLifeline, "Hang the lifeline and check the stop at its end.";
    ClampGrab, "Clamp the grab on, arrow to the anchor.";
    ClipLanyard, "Clip the lanyard to the D-ring.";
    TugTest, "Pull down on the grab to test it.";
    BeginWork, "Begin to work, and move the grab up with every step.";
}}

codes! { "A moment after a fall. In each the first of its three answers is the right one."
    AfterCase {
    HangsAwake, "The worker hangs and talks.";
    HangsStill, "The worker hangs and does not move.";
    NoPlan, "There is no rescue plan, and the crew is about to climb.";
    DownAndFine, "The worker is down and says that nothing hurts.";
    GearAfter, "The gear that caught the fall.";
    WhyItHappened, "Before work goes on.";
}}

/// One of the answers to choose from.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Choice {
    /// The fall ends so.
    Ends(Outcome),
    /// The set-up of this number.
    SetUp(u8),
    /// No difference worth the name.
    Same,
    /// This part of the gear.
    Part(GearPart),
    /// Every part is fit.
    AllFit,
    /// Room, and the reserve left.
    RoomEnough,
    /// Room, but less than the reserve.
    RoomShort,
    /// No room: the worker comes down on what is below.
    RoomNone,
    /// So far along the wall, m.
    Offset(f64),
    /// Go ahead with fall arrest.
    Arrest,
    /// Another method, or stop and ask.
    Instead(Advice),
    /// The answer of this number to a moment after a fall.
    After(AfterCase, u8),
    /// The ladder stands so.
    Footing(Footing),
    /// The distance is kept.
    WireKept,
    /// Too near: stop and ask.
    WireAsk,
    /// Near, but a dry ladder of wood or plastic makes up for it.
    WireDryLadder,
    /// A harness with this wrong.
    Worn(Fault),
    /// What holds at the eave.
    Holds(Holds),
    /// One of a pair.
    Half(Half),
    /// Either of the pair will do.
    EitherHalf,
    /// A ladder so far along the wall, m.
    Spot(f64),
    /// None of the places: stop and ask.
    NoSpot,
}

/// What is shown beside the set-ups.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Shows {
    /// A moment at the eave, with the links so.
    Links(Moment, Links),
    /// A property, and the place whose rules count there.
    Site {
        /// What it is drawn from.
        seed: u64,
        /// The place.
        law: String,
    },
}

/// How a question is answered.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Ask {
    /// By one of a few choices; `key` is the number of the right one.
    One {
        /// What to choose from.
        choices: Vec<Choice>,
        /// The right one.
        key: u8,
    },
    /// By putting steps in order; shown shuffled, right when sorted.
    Order {
        /// As shown.
        shown: Vec<Step>,
    },
    /// By a grab height over the D-ring on a grid.
    Height {
        /// Free fall to stay under, m.
        limit_m: f64,
        /// Heights to choose from, m, and the free fall of each by a whole run, m.
        grid: Vec<(f64, f64)>,
    },
}

/// What a person answered.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Given {
    /// The choice of this number.
    One(u8),
    /// The steps in this order (numbers of the shown ones).
    Order(Vec<u8>),
    /// The grid height of this number.
    Height(u8),
    /// None: the worker would stop and ask somebody. It earns nothing, and is no miss that could kill.
    Asks,
}

/// A question.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Item {
    /// What it asks.
    pub kind: ItemKind,
    /// The seed it was drawn from.
    pub seed: u64,
    /// How near its key is to a limit.
    pub level: Level,
    /// What is shown: none, one, or the ones to choose between.
    pub set_ups: Vec<Scenario>,
    /// How it is answered.
    pub ask: Ask,
    /// What the rules find that decides it, where that is not plain to see.
    pub because: Vec<FindingCode>,
    /// What else is shown.
    pub shows: Option<Shows>,
}

impl Item {
    /// Credit for an answer, 0 to 1. Only an order has parts: the share of pairs the right way round.
    pub fn credit(&self, given: &Given) -> f64 {
        match (&self.ask, given) {
            (Ask::One { key, .. }, Given::One(n)) => f64::from(u8::from(n == key)),
            (Ask::Order { shown }, Given::Order(order)) => {
                let mut seen = order.clone();
                seen.sort_unstable();
                if seen != (0..shown.len() as u8).collect::<Vec<_>>() {
                    return 0.0;
                }
                let n = order.len();
                let pairs = (0..n).flat_map(|a| (a + 1..n).map(move |b| (a, b)));
                let right = pairs
                    .filter(|&(a, b)| shown[usize::from(order[a])] < shown[usize::from(order[b])])
                    .count();
                right as f64 / (n * (n - 1) / 2) as f64
            }
            (Ask::Height { limit_m, grid }, Given::Height(n)) => {
                f64::from(u8::from(grid.get(usize::from(*n)).is_some_and(|g| g.1 <= *limit_m)))
            }
            _ => 0.0,
        }
    }

    /// The right answer; of heights, the lowest that is right.
    pub fn key(&self) -> Given {
        match &self.ask {
            Ask::One { key, .. } => Given::One(*key),
            Ask::Order { shown } => {
                let mut order: Vec<u8> = (0..shown.len() as u8).collect();
                order.sort_by_key(|i| shown[usize::from(*i)]);
                Given::Order(order)
            }
            Ask::Height { limit_m, grid } => {
                Given::Height(grid.iter().position(|g| g.1 <= *limit_m).unwrap_or(0) as u8)
            }
        }
    }

    /// The choice that was given, where there are choices.
    pub fn chosen(&self, given: &Given) -> Option<Choice> {
        match (&self.ask, given) {
            (Ask::One { choices, .. }, Given::One(n)) => choices.get(usize::from(*n)).copied(),
            _ => None,
        }
    }

    /// The right choice, where there are choices.
    pub fn right(&self) -> Option<Choice> {
        self.chosen(&self.key())
    }

    /// Whether an answer is a miss that would kill: taking for a stop what is none, a rope tied to
    /// what is no anchor, a ladder beside a wire, arrest where it cannot work, no rescue.
    pub fn is_critical_miss(&self, given: &Given) -> bool {
        if self.credit(given) >= 1.0 {
            return false;
        }
        let Some(chosen) = self.chosen(given) else { return false };
        match self.kind {
            ItemKind::Ends => chosen == Choice::Ends(Outcome::Stopped),
            ItemKind::PickAnchor => match chosen {
                Choice::SetUp(n) => self
                    .set_ups
                    .get(usize::from(n))
                    .is_some_and(|s| strength::anchor(s).ground == Ground::Unsuitable),
                _ => false,
            },
            ItemKind::Room => self.right() == Some(Choice::RoomNone),
            ItemKind::Method => chosen == Choice::Arrest,
            ItemKind::After => matches!(
                chosen,
                Choice::After(AfterCase::HangsAwake | AfterCase::HangsStill | AfterCase::NoPlan, _)
            ),
            ItemKind::Wire => self.right() == Some(Choice::WireAsk),
            ItemKind::Clipped => self.right() == Some(Choice::Holds(Holds::Nothing)),
            ItemKind::Stand => match (&self.shows, chosen) {
                (Some(Shows::Site { seed, law }), Choice::Spot(x)) => whole::kills(*seed, law, x),
                _ => false,
            },
            _ => false,
        }
    }

    /// The set-up that shows what the question was about as a fall, if there is one.
    pub fn fall(&self) -> Option<&Scenario> {
        match (self.kind, self.right()) {
            (ItemKind::Steps | ItemKind::After | ItemKind::Worn, _) => None,
            (ItemKind::PickAnchor, _) => {
                self.set_ups.iter().find(|s| strength::anchor(s).ground == Ground::Unsuitable)
            }
            (ItemKind::Higher, Some(Choice::SetUp(n))) => self.set_ups.get(1 - usize::from(n.min(1))),
            _ => self.set_ups.first(),
        }
    }
}

/// Draws a question. The same seed, kind and place give the same question.
pub fn item(kind: ItemKind, seed: u64, place: &str) -> Option<Item> {
    let mut pick = Draw::with_seed(seed ^ (kind as u64).wrapping_mul(0x9e37_79b9_7f4a_7c15));
    // Two in five plain, two in five middle, one in five close: taken where the kind has a margin.
    let wanted = pick.one([Level::Plain, Level::Plain, Level::Middle, Level::Middle, Level::Close]);
    // A kind can miss the level it was asked for; after a few finds any level will do.
    let mut found_before = 0;
    for _ in 0..80 {
        let Some(found) = draw(kind, seed, place, wanted, &mut pick) else { continue };
        found_before += 1;
        if found.level == wanted || found_before > 3 {
            return Some(found);
        }
    }
    None
}

fn draw(kind: ItemKind, seed: u64, place: &str, wanted: Level, pick: &mut Draw) -> Option<Item> {
    match kind {
        ItemKind::Ends => ends(seed, place, pick),
        ItemKind::Higher => higher(seed, place, pick),
        ItemKind::PutGrab => put_grab(seed, place, wanted, pick),
        ItemKind::Fault => fault(seed, place, pick),
        ItemKind::Steps => steps(seed, pick),
        ItemKind::PickAnchor => pick_anchor(seed, place, pick),
        ItemKind::Room => room(seed, place, pick),
        ItemKind::Along => along(seed, place, wanted, pick),
        ItemKind::Method => method(seed, place, pick),
        ItemKind::After => after(seed, pick),
        ItemKind::Footing => footing(seed, place, pick),
        ItemKind::Wire => wire(seed, place, pick),
        ItemKind::Worn => worn(seed, place, pick),
        ItemKind::Clipped => clipped(seed, place, pick),
        ItemKind::Pair => pair(seed, place, pick),
        ItemKind::Stand => stand(seed, place, pick),
    }
}

fn between(pick: &mut Draw, a: f64, b: f64, step: f64) -> f64 {
    let n = ((b - a) / step).round() as u32;
    ((a / step).round() + f64::from(pick.u32(0..=n))) * step
}

fn shuffled<T>(pick: &mut Draw, mut all: Vec<T>) -> Vec<T> {
    pick.shuffle(&mut all);
    all
}

/// A sound job at random: a house, a ladder that stands well, good gear rightly used.
fn job(pick: &mut Draw, place: &str) -> Option<Scenario> {
    let mut s = Scenario { place: place.to_owned(), ..Scenario::default() };
    s.house.eave_height_m = between(pick, 3.6, 7.6, 0.2);
    s.house.roof_pitch_rad = pick.one([0.321_750_6, 0.463_647_6, 0.588_002_6]); // 4, 6, 8 in 12
    s.house.half_span_m = between(pick, 2.8, 4.4, 0.4);
    s.house.overhang_m = between(pick, 0.3, 0.6, 0.1);
    // At one in four: h / sqrt 15.
    s.ladder.foot_distance_m = (s.house.eave_height_m / libm::sqrt(15.0) * 20.0).round() / 20.0;
    s.ladder.length_m = (s.house.eave_height_m * 1.04 * 10.0).round() / 10.0 + 1.0;
    s.stance = Stance::Ladder { standing_height_m: s.house.eave_height_m - between(pick, 1.7, 2.3, 0.1) };
    s.worker.mass_kg = between(pick, 56.0, 104.0, 4.0);
    s.worker.stature_m = between(pick, 1.60, 1.88, 0.04);
    s.lifeline.length_m = (s.house.half_span_m + s.house.eave_height_m + 4.0).round();
    // As long as a grab may carry anywhere.
    s.lanyard.length_m = between(pick, 0.8, 0.9, 0.05);
    s.grab.above_dring_m = between(pick, 0.0, 0.3, 0.1);
    s.anchor.fasteners.per_side = pick.u32(6..=8);
    s.problems().is_empty().then_some(s)
}

fn one(
    kind: ItemKind,
    seed: u64,
    level: Level,
    set_ups: Vec<Scenario>,
    choices: Vec<Choice>,
    right: Choice,
) -> Option<Item> {
    let key = choices.iter().position(|c| *c == right)? as u8;
    Some(Item { kind, seed, level, set_ups, ask: Ask::One { choices, key }, because: vec![], shows: None })
}
