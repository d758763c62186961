//! A plan with its own scenarios as a file, in and out.

use super::store::{OWN_FROM, Own, Plan};
use crate::practice::demos::demo;
use crate::scenario::SCHEMA;
use serde::{Deserialize, Serialize};

/// Number of the file's format.
const PLAN_FORMAT: u32 = 1;
/// Largest file read, bytes.
const LARGEST_BYTES: usize = 2_000_000;
/// Most scenarios of one's own that a file brings, and longest text in one, characters.
const MOST_OWN: usize = 200;
const LONGEST: usize = 2_000;

/// The file.
#[derive(Serialize, Deserialize)]
struct PlanFile {
    shortfall_plan: u32,
    schema: u32,
    plan: Plan,
    own: Vec<Own>,
}

/// What a file brings.
pub struct ReadPlan {
    /// The plan.
    pub plan: Plan,
    /// Scenarios of one's own with it.
    pub own: Vec<Own>,
    /// How many of its numbers nobody knows here.
    pub left_out: usize,
}

/// Why a file is not taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoPlan {
    /// It cannot be read.
    Broken,
    /// A later version wrote it.
    Newer,
}

/// The plan as a text: with those of one's own that it names, or their partners.
pub fn write(plan: &Plan, mine: &[Own]) -> String {
    let named = |o: &&Own| {
        plan.ids.contains(&o.demo.id)
            || mine.iter().any(|p| plan.ids.contains(&p.demo.id) && p.demo.partner == o.demo.id)
    };
    let own = mine.iter().filter(named).cloned().collect();
    let file = PlanFile { shortfall_plan: PLAN_FORMAT, schema: SCHEMA, plan: plan.clone(), own };
    serde_json::to_string_pretty(&file).unwrap_or_default()
}

/// Reads one: the plan, and the scenarios of one's own with it, under numbers that are free here.
///
/// # Errors
/// Why it is refused. Nothing is changed then.
pub fn read(text: &str, mine: &[Own]) -> Result<ReadPlan, NoPlan> {
    if text.len() > LARGEST_BYTES {
        return Err(NoPlan::Broken);
    }
    let value: serde_json::Value =
        serde_json::from_str(text.trim_start_matches('\u{feff}')).map_err(|_| NoPlan::Broken)?;
    let number = |k: &str| value.get(k).and_then(serde_json::Value::as_u64);
    match (number("shortfall_plan"), number("schema")) {
        (Some(p), _) if p > u64::from(PLAN_FORMAT) => return Err(NoPlan::Newer),
        (Some(_), Some(s)) if s > u64::from(SCHEMA) => return Err(NoPlan::Newer),
        (Some(_), Some(_)) => {}
        _ => return Err(NoPlan::Broken),
    }
    let mut file: PlanFile = serde_json::from_value(value).map_err(|_| NoPlan::Broken)?;
    let texts = |o: &Own| {
        let d = &o.demo;
        [&d.name, &d.point, &d.say, &d.after]
            .into_iter()
            .flat_map(|b| [b.en.len(), b.fr.len()])
            .max()
            .unwrap_or(0)
    };
    let fits = |o: &Own| {
        texts(o) <= LONGEST
            && o.note.len() <= LONGEST
            && o.demo.set_up.range_problems().is_empty()
            && (0.0..=8.0).contains(&o.demo.along_m)
            && o.demo.minutes <= 240
    };
    if file.own.len() > MOST_OWN || !file.own.iter().all(fits) || file.plan.name.len() > LONGEST {
        return Err(NoPlan::Broken);
    }
    // Two devices number their own alike: the same one stays, another gets a number that is free.
    let mut next =
        mine.iter().chain(&file.own).map(|o| o.demo.id + 1).max().unwrap_or(OWN_FROM).max(OWN_FROM);
    let mut fresh = Vec::new();
    for i in 0..file.own.len() {
        let o = file.own[i].clone();
        let old = o.demo.id;
        if mine.contains(&o) {
            continue;
        }
        let taken = old < OWN_FROM || mine.iter().any(|m| m.demo.id == old);
        let id = if taken { next } else { old };
        if taken {
            next += 1;
            file.plan.ids.iter_mut().filter(|x| **x == old).for_each(|x| *x = id);
            file.own.iter_mut().filter(|p| p.demo.partner == old).for_each(|p| p.demo.partner = id);
        }
        let mut o = file.own[i].clone();
        o.demo.id = id;
        fresh.push(o);
    }
    // Partners that were renumbered after their scenario had been taken.
    let known = |id: u32| demo(id).is_some() || mine.iter().chain(&fresh).any(|o| o.demo.id == id);
    let named = file.plan.ids.len();
    file.plan.ids.retain(|id| known(*id));
    let left_out = named - file.plan.ids.len();
    // A plan of which nothing is left says nothing.
    if file.plan.ids.is_empty() && left_out > 0 {
        return Err(NoPlan::Broken);
    }
    Ok(ReadPlan { plan: file.plan, own: fresh, left_out })
}
