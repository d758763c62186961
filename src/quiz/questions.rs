//! One question and its key. The set-ups are drawn from a seed; the key is computed, by whole runs of
//! the engine and by the rules, never written down.
//!
//! A draw whose key would hang on less than a tenth of a limit is thrown away and drawn again, so
//! that no answer is a matter of rounding. Left out: wording, which is `texts`'.

use crate::draw::Draw;
use crate::geometry::{Geometry, SetUp};
use crate::physics::equipment::{LineParams, link_strength_n, rope_strength_n};
use crate::physics::ladder::{self, Footing};
use crate::physics::trace::{Outcome, Trace};
use crate::physics::{room_m, settled_trace};
use crate::practice::inspection::GearPart;
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
}}

impl ItemKind {
    /// Kinds in which a wrong answer can be one that kills: always in a form.
    pub fn can_be_critical(self) -> bool {
        use ItemKind::*;
        matches!(self, Ends | PickAnchor | Room | Method | After | Wire)
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
            _ => false,
        }
    }

    /// The set-up that shows what the question was about as a fall, if there is one.
    pub fn fall(&self) -> Option<&Scenario> {
        match (self.kind, self.right()) {
            (ItemKind::Steps | ItemKind::After, _) => None,
            (ItemKind::PickAnchor, _) => {
                self.set_ups.iter().find(|s| strength::anchor(s).ground == Ground::Unsuitable)
            }
            (ItemKind::Higher, Some(Choice::SetUp(n))) => self.set_ups.get(1 - usize::from(n.min(1))),
            _ => self.set_ups.first(),
        }
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
    Some(Item { kind, seed, level, set_ups, ask: Ask::One { choices, key }, because: vec![] })
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
    }
}

/// A trace that passes its own energy check.
fn sound(t: Trace) -> Option<Trace> {
    t.is_sound().then_some(t)
}

/// Distance of a fall's outcome from another one, as a share: of the drop for room, of the strength
/// for what held or let go.
fn outcome_margin_share(s: &SetUp, t: &Trace) -> f64 {
    let line = LineParams::of(s);
    let force = |has: f64, bears: f64| (1.0 - has / bears).abs();
    let room_m = if t.outcome == Outcome::Strikes { room_m(s) } else { t.clearance_margin_m };
    let room = room_m.map_or(1.0, |m| m.abs() / t.total_fall_m.max(0.5));
    room.min(force(t.anchor_peak_n, line.anchor_capacity_n))
        .min(force(t.peak_force_n, rope_strength_n(&s.gear)))
        .min(force(t.peak_force_n, link_strength_n(&s.gear)))
}

fn ends(seed: u64, place: &str, pick: &mut Draw) -> Option<Item> {
    let mut s = job(pick, place)?;
    match pick.u32(..10) {
        0 => s.grab.arrow = Arrow::Down,
        1 => s.grab.latch = Latch::Open,
        2 => s.grab.bolt = Bolt::Loose,
        3 => s.anchor.kind = AnchorKind::VentPipe,
        4 => {
            s.anchor.kind = AnchorKind::RidgePlateInSheathing;
            s.grab.above_dring_m = -s.lanyard.length_m + 0.3;
        }
        5 => s.gear.rope = RopeState::Frayed,
        6 => {
            s.house.below = ORDINARY_OBSTACLE;
            s.ladder.foot_distance_m = s.ladder.foot_distance_m.max(1.45);
            s.grab.above_dring_m = -s.lanyard.length_m + 0.3;
        }
        7 => {
            s.stance = Stance::Ladder { standing_height_m: between(pick, 1.2, 2.2, 0.2) };
            s.grab.above_dring_m = -0.4;
        }
        8 => s.stance = Stance::Roof { from_eave_m: between(pick, 0.6, 1.6, 0.2) },
        _ => {}
    }
    let set_up = s.set_up().ok()?;
    let t = sound(settled_trace(&set_up, LineParams::of(&s)))?;
    let level = Level::of(outcome_margin_share(&set_up, &t))?;
    let choices =
        shuffled(pick, [Outcome::Stopped, Outcome::Strikes, Outcome::LetGo].map(Choice::Ends).to_vec());
    one(ItemKind::Ends, seed, level, vec![s], choices, Choice::Ends(t.outcome))
}

/// Room that a difference has to make to count, and under which it does not, m.
const DIFFERENT_M: f64 = 0.25;
const SAME_M: f64 = 0.03;

fn higher(seed: u64, place: &str, pick: &mut Draw) -> Option<Item> {
    let a = job(pick, place)?;
    let mut b = a.clone();
    match pick.u32(..8) {
        0 => b.grab.above_dring_m -= between(pick, 0.4, 0.8, 0.1),
        1 => b.lanyard.length_m += between(pick, 0.6, 0.9, 0.1),
        2 => b.worker.harness = HarnessFit::Loose,
        3 => b.grab.bolt = Bolt::Loose,
        4 => b.anchor.kind = AnchorKind::RatedEye,
        5 => b.lifeline.end = RopeEnd::Nothing,
        6 => b.lifeline.slack_m = between(pick, 0.4, 1.0, 0.1),
        _ => b.gear.label = LabelState::Missing,
    }
    let (high, low) = (room_m(&a.set_up().ok()?)?, room_m(&b.set_up().ok()?)?);
    let gap_m = (high - low).abs();
    let (right, level) = if gap_m < SAME_M {
        (Choice::Same, Level::Middle)
    } else if gap_m > DIFFERENT_M {
        // A metre is plain to see.
        (Choice::SetUp(0), Level::of(0.5 * gap_m)?)
    } else {
        return None;
    };
    let swap = pick.coin();
    let (set_ups, right) = match (swap, right) {
        (true, Choice::SetUp(_)) => (vec![b, a], Choice::SetUp(1)),
        (true, same) => (vec![b, a], same),
        (false, right) => (vec![a, b], right),
    };
    one(ItemKind::Higher, seed, level, set_ups, vec![Choice::SetUp(0), Choice::SetUp(1), Choice::Same], right)
}

fn put_grab(seed: u64, place: &str, wanted: Level, pick: &mut Draw) -> Option<Item> {
    let mut s = job(pick, place)?;
    s.lanyard.length_m = 0.9;
    let mut grid = Vec::new();
    let mut tenths = -(s.lanyard.length_m * 10.0).round() as i32;
    while tenths <= 12 {
        s.grab.above_dring_m = f64::from(tenths) / 10.0;
        if let Ok(set_up) = s.set_up() {
            let t = sound(settled_trace(&set_up, LineParams::of(&s)))?;
            if t.outcome == Outcome::Stopped {
                grid.push((s.grab.above_dring_m, t.free_fall_m));
            }
        }
        tenths += 2;
    }
    // The law: higher is shorter. A grid that bends back is no question.
    let n = grid.len();
    if n < 5 || grid.windows(2).any(|w| w[1].1 > w[0].1 + 0.02) {
        return None;
    }
    // A limit between two neighbours, a tenth from both at the least; some heights on either side.
    let mut limits: Vec<(f64, Level)> = (1..n - 2)
        .filter_map(|at| {
            let (over, under) = (grid[at].1, grid[at + 1].1);
            let limit_m = ((over + under) / 2.0 * 20.0).round() / 20.0;
            Some((limit_m, Level::of((over / limit_m - 1.0).min(1.0 - under / limit_m))?))
        })
        .collect();
    pick.shuffle(&mut limits);
    let (limit_m, level) = *limits.iter().find(|l| l.1 == wanted).or(limits.first())?;
    s.grab.above_dring_m = grid[0].0;
    Some(Item {
        kind: ItemKind::PutGrab,
        seed,
        level,
        set_ups: vec![s],
        ask: Ask::Height { limit_m, grid },
        because: vec![],
    })
}

fn fault(seed: u64, place: &str, pick: &mut Draw) -> Option<Item> {
    let mut s = job(pick, place)?;
    let parts = shuffled(pick, GearPart::of(&s));
    let faulty = pick.u32(..4) > 0;
    if faulty {
        parts[0].spoil(&mut s, pick);
    }
    let mut choices: Vec<Choice> = parts.iter().take(3).map(|p| Choice::Part(*p)).collect();
    pick.shuffle(&mut choices);
    choices.push(Choice::AllFit);
    let right = if faulty { Choice::Part(parts[0]) } else { Choice::AllFit };
    // A missing label or a loose bolt is easier to pass over than a cut strap.
    let level = match (faulty, parts[0]) {
        (false, _) => Level::Close,
        (_, GearPart::Label | GearPart::Fasteners | GearPart::Pack) => Level::Middle,
        _ => Level::Plain,
    };
    one(ItemKind::Fault, seed, level, vec![s], choices, right)
}

fn steps(seed: u64, pick: &mut Draw) -> Option<Item> {
    let level = pick.one(Level::ALL);
    let count = match level {
        Level::Plain => 4,
        Level::Middle => 5,
        Level::Close => 6,
    };
    let mut all = shuffled(pick, Step::ALL.to_vec());
    all.truncate(count);
    let mut sorted = all.clone();
    sorted.sort_unstable();
    (all != sorted).then_some(Item {
        kind: ItemKind::Steps,
        seed,
        level,
        set_ups: vec![],
        ask: Ask::Order { shown: all },
        because: vec![],
    })
}

/// Whether an anchor is one that this place takes, and by how much, as a share of what it asks.
fn anchor_fits(s: &Scenario) -> Option<(bool, f64)> {
    let a = strength::anchor(s);
    if a.ground == Ground::Unsuitable {
        return Some((false, 1.0));
    }
    let (_, asked) = place(&s.place)?.anchor(s.lanyard.absorber.is_some())?;
    let (has_n, asks_n) = match (asked, a.allowable) {
        (AnchorLimit::Working(asked), Some(has)) => (has.0, asked.0),
        (AnchorLimit::Breaking(asked), _) => (a.low.0, asked.0),
        (AnchorLimit::Working(_), None) => return None,
    };
    Some((has_n >= asks_n, (has_n / asks_n - 1.0).abs()))
}

fn pick_anchor(seed: u64, place_id: &str, pick: &mut Draw) -> Option<Item> {
    let base = job(pick, place_id)?;
    let mut good = base.clone();
    // What is nailed on the site is never better than open: the anchor of the three is the rated one.
    good.anchor.kind = AnchorKind::RatedEye;
    good.anchor.stated_breaking_n = between(pick, 25_000.0, 35_000.0, 500.0);
    let worst = [AnchorKind::VentPipe, AnchorKind::Gutter, AnchorKind::RoofVent, AnchorKind::AntennaMast];
    let mut none = base.clone();
    none.anchor.kind = pick.one(worst);
    let mut weak = base;
    // Where the place has no figure, only what anybody can see to be weak is a fair answer.
    let has_figure = place(place_id)?.anchor(true).is_some();
    match if has_figure { pick.u32(..3) } else { 2 } {
        0 => weak.anchor.kind = AnchorKind::RidgePlateInSheathing,
        1 => {
            weak.anchor.fasteners.per_side = 2;
        }
        _ => {
            weak.anchor.kind = AnchorKind::ChimneySling;
            weak.anchor.chimney.mortar = Mortar::Weak;
        }
    }
    // A place that takes working loads has no figure for rated hardware of stated breaking load, or
    // for masonry: a qualified person judges. The stated one is then still the anchor of the three.
    let good_share = anchor_fits(&good).map_or(1.0, |f| if f.0 { f.1 } else { 0.0 });
    let weak_share = anchor_fits(&weak).map_or(1.0, |f| if f.0 { 0.0 } else { f.1 });
    let level = Level::of(good_share.min(weak_share))?;
    // Where a place takes a multiple of the arrest force instead, the weak one must miss that too.
    if let Some(factor) = place(place_id)?.limit(LimitKind::AnchorFactor) {
        let set_up = weak.set_up().ok()?;
        let t = sound(settled_trace(&set_up, LineParams::of(&weak)))?;
        let asks_n = factor.value * crate::rules::system_most_n(&set_up, &t);
        if strength::anchor(&weak).low.0 > (1.0 - LEAST_MARGIN_SHARE) * asks_n {
            return None;
        }
    }
    let order = shuffled(pick, vec![0_usize, 1, 2]);
    let all = [good, weak, none];
    let set_ups: Vec<Scenario> = order.iter().map(|i| all[*i].clone()).collect();
    let right = order.iter().position(|i| *i == 0)? as u8;
    let choices = (0..3).map(Choice::SetUp).collect();
    one(ItemKind::PickAnchor, seed, level, set_ups, choices, Choice::SetUp(right))
}

fn room(seed: u64, place: &str, pick: &mut Draw) -> Option<Item> {
    let mut s = job(pick, place)?;
    s.stance =
        Stance::Ladder { standing_height_m: between(pick, 0.8, (s.house.eave_height_m - 1.8).min(3.4), 0.2) };
    s.grab.above_dring_m = between(pick, -0.5, 0.2, 0.1);
    if pick.u32(..3) == 0 {
        s.house.below = ORDINARY_OBSTACLE;
        s.ladder.foot_distance_m = s.ladder.foot_distance_m.max(1.45);
    }
    let set_up = s.set_up().ok()?;
    let (room_m, kept) = (room_m(&set_up)?, reserve()?.value);
    let (right, margin_m) = if room_m < 0.0 {
        (Choice::RoomNone, -room_m)
    } else if room_m < kept {
        (Choice::RoomShort, room_m.min(kept - room_m))
    } else {
        (Choice::RoomEnough, room_m - kept)
    };
    let level = Level::of(margin_m / kept)?;
    let choices = vec![Choice::RoomEnough, Choice::RoomShort, Choice::RoomNone];
    // What the run says must also be what the fall shows.
    let t = sound(crate::physics::simulate(&set_up))?;
    let shown = match (t.outcome, t.clearance_margin_m) {
        (Outcome::Strikes, _) => Choice::RoomNone,
        (_, Some(m)) if m < kept => Choice::RoomShort,
        (_, Some(_)) => Choice::RoomEnough,
        (_, None) => return None,
    };
    if shown != right {
        return None;
    }
    one(ItemKind::Room, seed, level, vec![s], choices, right)
}

/// Speed of a swing up to which a place along the wall counts as within reach, m/s.
const REACH_M_S: f64 = crate::rules::HARD_SWING_M_S;

fn along(seed: u64, place: &str, wanted: Level, pick: &mut Draw) -> Option<Item> {
    let s = job(pick, place)?;
    let reach_m = reach_of_m(&s.set_up().ok()?, reserve()?.value, REACH_M_S)?;
    if !(0.75..6.0).contains(&reach_m) {
        return None;
    }
    // The right one is within reach and the next one past it, both by as much as the level says.
    let by = match wanted {
        Level::Plain => 0.5,
        Level::Middle => 0.25,
        Level::Close => 0.12,
    };
    let (down, up) = (|x: f64| (x / STEP_M).floor() * STEP_M, |x: f64| (x / STEP_M).ceil() * STEP_M);
    let right = down(reach_m / (1.0 + by));
    let more = [up((reach_m + STEP_M) * (1.0 + by)), up((reach_m + STEP_M) * (1.6 + by))];
    let less = down(right * 0.5);
    if less <= 0.0 || right <= less {
        return None;
    }
    let set = if pick.coin() { [less, right, more[0]] } else { [right, more[0], more[1]] };
    let level = Level::of((more[0] / (reach_m + STEP_M) - 1.0).min(reach_m / right - 1.0))?;
    let choices = set.map(Choice::Offset).to_vec();
    one(ItemKind::Along, seed, level, vec![s], choices, Choice::Offset(right))
}

/// What the rules call for in place of going ahead; none where both are called for, which is no
/// question.
pub fn called_for(s: &SetUp, t: &Trace) -> Option<Choice> {
    let findings = judge(s, t, place(&s.place)?);
    let has = |a| findings.iter().any(|f| advice(f) == Some(a));
    match (has(Advice::OtherMethod), has(Advice::StopAndAsk)) {
        (true, false) => Some(Choice::Instead(Advice::OtherMethod)),
        (false, true) => Some(Choice::Instead(Advice::StopAndAsk)),
        (false, false) => Some(Choice::Arrest),
        (true, true) => None,
    }
}

fn method(seed: u64, place_id: &str, pick: &mut Draw) -> Option<Item> {
    let mut s = job(pick, place_id)?;
    // Hardware that every place takes, with an engineer behind it, so that the anchor is not the question.
    s.anchor.kind = AnchorKind::RatedEye;
    s.anchor.stated_breaking_n = 27_000.0;
    s.plan.anchor_by = AnchorChosenBy::QualifiedPerson;
    let mut level = Level::Plain;
    match pick.u32(..7) {
        0 => s.plan.other_method = OtherMethod::Guardrail,
        1 => s.plan.other_method = OtherMethod::TravelRestraint,
        2 => {
            // So low that the sum has no room.
            s.stance = Stance::Ladder { standing_height_m: between(pick, 0.8, 1.4, 0.2) };
            level = Level::Middle;
        }
        3 => s.plan.rescue = RescuePlan::NoPlan,
        4 => {
            s.plan.anchor_by = AnchorChosenBy::Worker;
            level = Level::Close;
        }
        _ => level = Level::Middle,
    }
    let height_m = match s.stance {
        Stance::Ladder { standing_height_m } => standing_height_m,
        Stance::Roof { .. } => return None,
    };
    // Heights near the place's own trigger are not asked about.
    let triggers = [LimitKind::TriggerHeight, LimitKind::TriggerHeightLadder];
    for l in triggers.into_iter().filter_map(|w| place(place_id)?.limit(w)) {
        if (height_m / l.value - 1.0).abs() < LEAST_MARGIN_SHARE {
            return None;
        }
    }
    let set_up = s.set_up().ok()?;
    let t = sound(settled_trace(&set_up, LineParams::of(&s)))?;
    let right = called_for(&set_up, &t)?;
    if right == Choice::Arrest && t.outcome != Outcome::Stopped {
        return None;
    }
    let choices =
        vec![Choice::Arrest, Choice::Instead(Advice::OtherMethod), Choice::Instead(Advice::StopAndAsk)];
    let because = match right {
        Choice::Instead(a) => {
            let findings = judge(&set_up, &t, place(place_id)?);
            findings.iter().filter(|f| advice(f) == Some(a)).map(|f| f.code).collect()
        }
        _ => vec![],
    };
    Some(Item { because, ..one(ItemKind::Method, seed, level, vec![s], choices, right)? })
}

fn after(seed: u64, pick: &mut Draw) -> Option<Item> {
    let case = AfterCase::ALL[pick.index(AfterCase::ALL.len())];
    let level = match case {
        AfterCase::HangsAwake | AfterCase::NoPlan | AfterCase::GearAfter => Level::Plain,
        AfterCase::HangsStill | AfterCase::WhyItHappened => Level::Middle,
        AfterCase::DownAndFine => Level::Close,
    };
    let choices = shuffled(pick, (0..3).map(|n| Choice::After(case, n)).collect());
    one(ItemKind::After, seed, level, vec![], choices, Choice::After(case, 0))
}

fn footing(seed: u64, place: &str, pick: &mut Draw) -> Option<Item> {
    let mut s = job(pick, place)?;
    s.ladder.tied = false;
    match pick.u32(..5) {
        0 => s.ladder.foot_distance_m = between(pick, 0.2, 0.5, 0.1),
        1 => {
            s.weather = Weather::Wet;
            s.ladder.foot_distance_m =
                (s.house.eave_height_m * between(pick, 0.5, 0.75, 0.05) * 10.0).round() / 10.0;
        }
        2 => s.weather = Weather::Frozen,
        3 => s.ladder.reach_out_m = between(pick, 0.3, 0.6, 0.05),
        _ => {}
    }
    s.ladder.length_m =
        (libm::hypot(s.house.eave_height_m, s.ladder.foot_distance_m) * 10.0).round() / 10.0 + 1.0;
    // Only the ladder is asked about: no rope has to reach anywhere.
    let g = Geometry::of(&s)?;
    let stand = ladder::stand(&s, &g)?;
    let friction = (stand.needed_friction / stand.has_friction - 1.0).abs();
    let reach = (stand.off_middle_m / ladder::HALF_WIDTH_M - 1.0).abs();
    // How far the weight stands in front of the foot, as a share of the foot's own distance.
    let back = match s.stance {
        Stance::Ladder { standing_height_m } => {
            let x_m = g.ladder.foot.x - g.ladder.x_at(standing_height_m);
            (x_m - crate::geometry::BODY_OFF_LADDER_M).abs() / crate::geometry::BODY_OFF_LADDER_M
        }
        Stance::Roof { .. } => return None,
    };
    let level = Level::of(friction.min(reach).min(back))?;
    let choices = [Footing::Holds, Footing::SlidesOut, Footing::TipsBack, Footing::TipsSideways];
    let choices = choices.map(Choice::Footing).to_vec();
    one(ItemKind::Footing, seed, level, vec![s], choices, Choice::Footing(stand.footing))
}

fn wire(seed: u64, place_id: &str, pick: &mut Draw) -> Option<Item> {
    let mut s = job(pick, place_id)?;
    let voltage = pick.one([Voltage::Unknown, Voltage::To50Kv, Voltage::To50Kv, Voltage::To150Kv]);
    s.power_line = Some(PowerLine {
        height_m: between(pick, 5.0, 9.0, 0.5),
        distance_m: between(pick, 4.0, 16.0, 0.5),
        voltage,
    });
    let g = Geometry::of(&s)?;
    let near_m = ladder::nearest_to_wire_m(&s, &g)?.min(ladder::hand_to_wire_m(&s, &g)?);
    // With the voltage unknown, or no figure of the place for it, there is one answer; and it is not one of
    // distance.
    let own = place(place_id)?.approach(voltage).filter(|_| voltage != Voltage::Unknown);
    let (right, level) = match own {
        None => (Choice::WireAsk, if near_m < 3.0 { Level::Plain } else { Level::Middle }),
        Some(l) => {
            let level = Level::of((near_m / l.value - 1.0).abs())?;
            (if near_m >= l.value { Choice::WireKept } else { Choice::WireAsk }, level)
        }
    };
    let choices = vec![Choice::WireKept, Choice::WireAsk, Choice::WireDryLadder];
    one(ItemKind::Wire, seed, level, vec![s], choices, right)
}
