//! Questions about the rest of the job: how a harness is worn, two to choose from, the eave, the site walk.

use super::*;
use crate::physics::simulate_worn;
use crate::practice::eave::{self, Holds, Link, Links, Moment};
use crate::practice::harness::{Chest, Fault, Harness, Leg, MOST_CM, Ring, case, hung};
use crate::practice::pairs::Rack;
use crate::practice::site::{JOB_REACH_M, Site, Sort};

/// A harness with one thing wrong, of what a fall tells apart.
pub fn worn_with(f: Fault) -> Option<Harness> {
    let right = Harness::right();
    let leg = |closed: bool, slack_cm: u32| Leg { closed, slack_cm };
    Some(match f {
        Fault::RingWaist => Harness { ring: Ring::Waist, ..right },
        Fault::RingLow => Harness { ring: Ring::Low, ..right },
        Fault::ChestHigh => Harness { chest: Chest::High, ..right },
        Fault::LegSlack => Harness { legs: [leg(true, MOST_CM); 2], ..right },
        Fault::TailsLoose => Harness { tucked: false, ..right },
        _ => return None,
    })
}

/// How far the trunk of somebody in the usual set-up leans at rest, rad, with one thing wrong; none where the run
/// fails its own check.
pub fn lean_rad(s: &Scenario, f: Fault) -> Option<f64> {
    let worn = worn_with(f)?;
    let t = simulate_worn(&s.set_up().ok()?, worn.worn());
    t.is_sound().then(|| hung(&worn, &t).rest_rad)
}

pub(super) fn worn(seed: u64, place: &str, pick: &mut Draw) -> Option<Item> {
    let mut s = case(place);
    s.worker.mass_kg = between(pick, 60.0, 100.0, 10.0);
    s.worker.stature_m = between(pick, 1.62, 1.86, 0.08);
    let low = if pick.coin() { Fault::RingWaist } else { Fault::RingLow };
    let others = shuffled(pick, vec![Fault::LegSlack, Fault::TailsLoose, Fault::ChestHigh]);
    // Beside the waist the low ring may stand too: further still is what is asked.
    let second = if low == Fault::RingWaist && pick.coin() { Fault::RingLow } else { others[0] };
    let all = shuffled(pick, vec![low, second, others[1]]);
    let leans: Vec<f64> = all.iter().map(|f| lean_rad(&s, *f)).collect::<Option<_>>()?;
    let most = leans.iter().copied().fold(0.0, f64::max);
    let next = leans.iter().copied().filter(|l| *l < most).fold(0.0, f64::max);
    let level = Level::of(1.0 - next / most)?;
    let right = all.iter().zip(&leans).find(|q| *q.1 >= most).map(|q| *q.0)?;
    let choices = all.into_iter().map(Choice::Worn).collect();
    one(ItemKind::Worn, seed, level, vec![s], choices, Choice::Worn(right))
}

/// What holds when somebody slips at this moment, by whole runs: each link alone, as far as it reaches; none where it
/// cannot be told.
pub fn holds_by_runs(at: Moment, links: Links, place: &str) -> Option<Holds> {
    let alone = |link: Link| -> Option<bool> {
        if link == Link::Off {
            return Some(false);
        }
        let s = eave::set_up(at, Links { a: link, b: Link::Off, slack: links.slack }, place)?;
        let t = sound(settled_trace(&s.set_up().ok()?, LineParams::of(&s)))?;
        Some(t.outcome == Outcome::Stopped)
    };
    Some(match (alone(links.a)?, alone(links.b)?) {
        (true, true) => Holds::Either,
        (true, false) => Holds::A,
        (false, true) => Holds::B,
        (false, false) => Holds::Nothing,
    })
}

pub(super) fn clipped(seed: u64, place: &str, pick: &mut Draw) -> Option<Item> {
    let at = Moment::ALL[pick.index(Moment::ALL.len())];
    let mut links = Links::right(at);
    let level = match pick.u32(..5) {
        0 => Level::Plain,
        // The first link comes off before the second is on.
        1 | 2 => {
            (links.a, links.b) = (Link::Off, Link::Off);
            Level::Close
        }
        3 => {
            links.a = Link::Off;
            Level::Middle
        }
        _ => {
            links.b = Link::Off;
            Level::Middle
        }
    };
    let right = holds_by_runs(at, links, place)?;
    // What is clipped and does not hold is another question.
    if right != links.holds() {
        return None;
    }
    let s = eave::set_up(at, links, place)?;
    let choices = Holds::ALL.map(Choice::Holds).to_vec();
    let item = one(ItemKind::Clipped, seed, level, vec![s], choices, Choice::Holds(right))?;
    Some(Item { shows: Some(Shows::Links(at, links)), ..item })
}

pub(super) fn pair(seed: u64, place: &str, pick: &mut Draw) -> Option<Item> {
    let rack = pick.one([Rack::Hooks, Rack::Ropes, Rack::Supports]);
    let all = rack.pairs();
    let [better, worse] = all[pick.index(all.len())];
    let level = match rack {
        Rack::Hooks => Level::Middle,
        // What nothing but a look tells apart is the harder one.
        _ if worse.set_up(place).is_none() => Level::Close,
        _ => Level::Plain,
    };
    let two = if pick.coin() { [better, worse] } else { [worse, better] };
    let mut choices = two.map(Choice::Half).to_vec();
    choices.push(Choice::EitherHalf);
    one(ItemKind::Pair, seed, level, vec![], choices, Choice::Half(better))
}

/// Whether a ladder for the job may stand at a place along the wall: what it meets, and the wires.
pub fn stands(s: &Site, x_m: f64, law: &str) -> bool {
    let at = s.placed_at(x_m);
    s.meets(&at).is_empty() && s.near_wires(&at, law).is_empty()
}

/// Whether a ladder there is beside a wire, goes over, or is walked into; nest, dog and skylight only hinder.
pub(super) fn kills(seed: u64, law: &str, x_m: f64) -> bool {
    let s = Site::drawn(seed);
    let at = s.placed_at(x_m);
    let over = |t: &Sort| matches!(t, Sort::SoftBed | Sort::Slope | Sort::Door | Sort::Rot);
    !s.near_wires(&at, law).is_empty() || s.meets(&at).iter().any(over)
}

/// Whether that hangs on less than can be seen: a hand's breadth along the wall, or a wire that is neither touched nor
/// well away (twice what is kept from a service drop, a quarter over what is kept from a line).
fn is_close_call(s: &Site, x_m: f64, law: &str) -> bool {
    let by = 0.06;
    let wires = [Sort::ServiceDrop, Sort::Line, Sort::Phone];
    let near = wires.into_iter().any(|w| {
        let (keep_m, m) = (Site::keep_m(w, law), s.wire_m(w, &s.placed_at(x_m)));
        let (touched_m, away_m) =
            if w == Sort::Line { (0.75 * keep_m, 1.25 * keep_m) } else { (0.3, 2.0 * keep_m) };
        m.is_some_and(|m| m > touched_m && m < away_m)
    });
    near || stands(s, x_m - by, law) != stands(s, x_m + by, law)
}

pub(super) fn stand(seed: u64, law: &str, pick: &mut Draw) -> Option<Item> {
    // One is free, or none; of four questions three have one. Few properties are as plain as that.
    let with_free = pick.u32(..4) > 0;
    let plain = |drawn: u64| {
        let s = Site::drawn(drawn);
        // The middle of the job and its two ends: letters that can be told apart on the picture.
        let all = [-1.0, 0.0, 1.0].map(|k| s.job_m + k * JOB_REACH_M);
        if all.iter().any(|x| is_close_call(&s, *x, law)) {
            return None;
        }
        let free: Vec<f64> = all.iter().copied().filter(|x| stands(&s, *x, law)).collect();
        (free.len() == usize::from(with_free)).then_some((drawn, all, free))
    };
    let (drawn, all, free) = (0..60).find_map(|_| plain(pick.below(1 << 40)))?;
    let right = free.first().map_or(Choice::NoSpot, |x| Choice::Spot(*x));
    let mut choices = all.map(Choice::Spot).to_vec();
    choices.push(Choice::NoSpot);
    let level = if with_free { Level::Plain } else { Level::Middle };
    let item = one(ItemKind::Stand, seed, level, vec![], choices, right)?;
    Some(Item { shows: Some(Shows::Site { seed: drawn, law: law.to_owned() }), ..item })
}
