//! Questions about gear and anchor: the fault, the order of steps, the anchor.

use super::*;

pub(super) fn fault(seed: u64, place: &str, pick: &mut Draw) -> Option<Item> {
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

pub(super) fn steps(seed: u64, pick: &mut Draw) -> Option<Item> {
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
        shows: None,
    })
}

/// Whether an anchor is one that this place takes, and by how much, as a share of what it asks.
pub(super) fn anchor_fits(s: &Scenario) -> Option<(bool, f64)> {
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

pub(super) fn pick_anchor(seed: u64, place_id: &str, pick: &mut Draw) -> Option<Item> {
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
