//! A session's plan, and scenarios of one's own: what they are, and the file that carries both.

use crate::practice::demos::{Demo, demo};
use crate::scenario::SCHEMA;
use serde::{Deserialize, Serialize};

/// Numbers of one's own scenarios begin here.
pub const OWN_FROM: u32 = 1001;
/// How long a session is planned for by itself, min.
const SLOT_MIN: u32 = 20;

/// A scenario of one's own, with a note that stays on the device.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Own {
    /// The scenario.
    pub demo: Demo,
    /// For the second window.
    #[serde(default)]
    pub note: String,
}

/// The plan: numbers of scenarios in their order, and the time for it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Plan {
    /// What it is called.
    pub name: String,
    /// Time for it, min.
    pub slot_min: u32,
    /// The scenarios' numbers.
    pub ids: Vec<u32>,
}

impl Default for Plan {
    fn default() -> Plan {
        Plan { name: String::new(), slot_min: SLOT_MIN, ids: vec![] }
    }
}

/// Number of the file's format.
const PLAN_FORMAT: u32 = 1;
/// Largest file read, bytes.
const LARGEST_BYTES: usize = 2_000_000;
/// A higher number is none of ours.
const HIGHEST: u32 = 1_000_000;
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
#[derive(Debug)]
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
            && o.demo.id < HIGHEST
    };
    if file.own.len() > MOST_OWN || !file.own.iter().all(fits) || file.plan.name.len() > LONGEST {
        return Err(NoPlan::Broken);
    }
    // Two devices number their own alike: the same one stays, another gets a number that is free.
    let free = mine.iter().chain(&file.own).map(|o| o.demo.id + 1).max().unwrap_or(OWN_FROM).max(OWN_FROM);
    let is_new = |o: &&Own| !mine.contains(o);
    let taken = |id: u32| id < OWN_FROM || mine.iter().any(|m| m.demo.id == id);
    let moved: Vec<u32> = file.own.iter().filter(is_new).map(|o| o.demo.id).filter(|id| taken(*id)).collect();
    let number = |id: u32| moved.iter().position(|m| *m == id).map_or(id, |n| free + n as u32);
    let fresh: Vec<Own> = file
        .own
        .iter()
        .filter(is_new)
        .map(|o| {
            let mut o = o.clone();
            (o.demo.id, o.demo.partner) = (number(o.demo.id), number(o.demo.partner));
            o
        })
        .collect();
    file.plan.ids.iter_mut().for_each(|id| *id = number(*id));
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

#[cfg(test)]
mod tests {
    use super::*;

    fn own(id: u32, partner: u32, name: &str) -> Own {
        let mut d = demo(1).expect("is there").clone();
        (d.id, d.partner) = (id, partner);
        d.name.en = name.to_owned();
        Own { demo: d, note: "Ask first".to_owned() }
    }

    fn plan(ids: &[u32]) -> Plan {
        Plan { ids: ids.to_vec(), ..Plan::default() }
    }

    /// A bug: a partner that stood before its scenario in the file kept a number that another has here.
    #[test]
    fn scenarios_from_another_device_keep_their_partners_under_free_numbers() {
        let theirs = [own(1001, 1002, "A"), own(1002, 1001, "B")];
        let text = write(&plan(&[1001, 22, 1002]), &theirs);
        let mine = [own(1001, 1, "mine"), own(1002, 1, "mine too")];
        let got = read(&text, &mine).expect("reads");
        assert_eq!(
            got.own.iter().map(|o| (o.demo.id, o.demo.partner)).collect::<Vec<_>>(),
            [(1003, 1004), (1004, 1003)]
        );
        assert_eq!((got.plan.ids, got.left_out), (vec![1003, 22, 1004], 0));
        assert!(got.own.iter().all(|o| o.note == "Ask first"));
        // On its own device nothing is doubled, on an empty one nothing renumbered.
        assert!(
            read(&text, &theirs).ok().is_some_and(|g| g.own.is_empty() && g.plan.ids == [1001, 22, 1002])
        );
        assert!(read(&text, &[]).ok().is_some_and(|g| g.own == theirs));
    }

    #[test]
    fn what_is_broken_later_or_unknown_changes_nothing() {
        let text = write(&plan(&[1, 1001]), &[own(1001, 1, "A")]);
        for (from, to, why) in [
            ("\"shortfall_plan\": 1", "\"shortfall_plan\": 2", NoPlan::Newer),
            ("\"schema\": 6,\n  \"plan\"", "\"schema\": 99,\n  \"plan\"", NoPlan::Newer),
            ("\"id\": 1001", "\"id\": 4294967295", NoPlan::Broken),
            ("\"mass_kg\": 85.0", "\"mass_kg\": 8500.0", NoPlan::Broken),
            ("{", "", NoPlan::Broken),
        ] {
            let other = text.replacen(from, to, 1);
            assert_ne!(other, text, "{from}");
            assert_eq!(read(&other, &[]).err(), Some(why), "{from}");
        }
        assert_eq!(read(&write(&plan(&[77]), &[]), &[]).err(), Some(NoPlan::Broken));
        assert_eq!(read(&write(&plan(&[77, 1]), &[]), &[]).ok().map(|g| g.left_out), Some(1));
    }
}
