//! Questions about a fall: how it ends, which ends higher, where to put the grab, room, how far along.

use super::*;

/// A trace that passes its own energy check.
pub(super) fn sound(t: Trace) -> Option<Trace> {
    t.is_sound().then_some(t)
}

/// Distance of a fall's outcome from another one, as a share: of the drop for room, of the strength
/// for what held or let go.
pub(super) fn outcome_margin_share(s: &SetUp, t: &Trace) -> f64 {
    let line = LineParams::of(s);
    let force = |has: f64, bears: f64| (1.0 - has / bears).abs();
    let room_m = if t.outcome == Outcome::Strikes { room_m(s) } else { t.clearance_margin_m };
    let room = room_m.map_or(1.0, |m| m.abs() / t.total_fall_m.max(0.5));
    room.min(force(t.anchor_peak_n, line.anchor_capacity_n))
        .min(force(t.peak_force_n, rope_strength_n(&s.gear)))
        .min(force(t.peak_force_n, link_strength_n(&s.gear)))
}

/// Whether the boots are well over what stands below.
fn stands_over(s: &Scenario) -> bool {
    match (s.stance, s.house.below) {
        (Stance::Ladder { standing_height_m }, Below::Obstacle { height_m, .. }) => {
            standing_height_m >= height_m + OVER_DECK_M
        }
        _ => true,
    }
}

/// So far the boots are over a deck at least, m: less is no fall onto it.
const OVER_DECK_M: f64 = 0.3;

pub(super) fn ends(seed: u64, place: &str, pick: &mut Draw) -> Option<Item> {
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
    if !stands_over(&s) {
        return None;
    }
    let set_up = s.set_up().ok()?;
    let t = sound(settled_trace(&set_up, LineParams::of(&s)))?;
    // Who strikes and only then tears the anchor out asks two things at once.
    if crate::physics::simulate_alone(&set_up).outcome != t.outcome {
        return None;
    }
    let level = Level::of(outcome_margin_share(&set_up, &t))?;
    let choices =
        shuffled(pick, [Outcome::Stopped, Outcome::Strikes, Outcome::LetGo].map(Choice::Ends).to_vec());
    one(ItemKind::Ends, seed, level, vec![s], choices, Choice::Ends(t.outcome))
}

/// Room that a difference has to make to count, and under which it does not, m.
const DIFFERENT_M: f64 = 0.25;

const SAME_M: f64 = 0.03;

pub(super) fn higher(seed: u64, place: &str, pick: &mut Draw) -> Option<Item> {
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

pub(super) fn put_grab(seed: u64, place: &str, wanted: Level, pick: &mut Draw) -> Option<Item> {
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
        shows: None,
    })
}

pub(super) fn room(seed: u64, place: &str, pick: &mut Draw) -> Option<Item> {
    let mut s = job(pick, place)?;
    s.stance =
        Stance::Ladder { standing_height_m: between(pick, 0.8, (s.house.eave_height_m - 1.8).min(3.4), 0.2) };
    s.grab.above_dring_m = between(pick, -0.5, 0.2, 0.1);
    if pick.u32(..3) == 0 {
        s.house.below = ORDINARY_OBSTACLE;
        s.ladder.foot_distance_m = s.ladder.foot_distance_m.max(1.45);
        // Who stands lower than a deck stands beside it, not over it.
        if !stands_over(&s) {
            return None;
        }
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

pub(super) fn along(seed: u64, place: &str, wanted: Level, pick: &mut Draw) -> Option<Item> {
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
