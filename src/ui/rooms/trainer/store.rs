//! What the trainer's room keeps on the device: scenarios of one's own, the plan, the session. And how the wall and
//! the second window talk.

use crate::practice::demos::{Demo, demo};
use crate::practice::plan::{Own, Plan};
use crate::practice::showing::{Session, Turn, Wish};
use crate::ui::shared::store::{keep_text, kept_text};
use leptos::prelude::*;
use serde::{Deserialize, Serialize};
use wasm_bindgen::prelude::*;
use web_sys::{BroadcastChannel, MessageEvent};

const MINE: &str = "shortfall.scenarios";
const PLAN: &str = "shortfall.plan";
const SESSION: &str = "shortfall.session";
const CHANNEL: &str = "shortfall-wall";

/// Scenarios of one's own, as far as this version can read them.
pub fn load_mine() -> Vec<Own> {
    let all: Vec<serde_json::Value> = kept_text(MINE).unwrap_or_default();
    all.into_iter().filter_map(|v| serde_json::from_value(v).ok()).collect()
}

/// Keeps them; false when the device keeps nothing. What this version cannot read stays as it is.
pub fn keep_mine(mine: &[Own]) -> bool {
    let old: Vec<serde_json::Value> = kept_text(MINE).unwrap_or_default();
    let unread = old.into_iter().filter(|v| serde_json::from_value::<Own>(v.clone()).is_err());
    let mut all: Vec<serde_json::Value> = mine.iter().filter_map(|o| serde_json::to_value(o).ok()).collect();
    all.extend(unread);
    keep_text(MINE, &all)
}

pub fn load_plan() -> Plan {
    kept_text(PLAN).unwrap_or_default()
}

pub fn keep_plan(plan: &Plan) -> bool {
    keep_text(PLAN, plan)
}

pub fn load_session() -> Option<Session> {
    kept_text(SESSION)
}

pub fn keep_session(session: &Session) -> bool {
    keep_text(SESSION, session)
}

/// The scenario of a number, one's own among them.
pub fn found(id: u32, mine: &[Own]) -> Option<Demo> {
    mine.iter().find(|o| o.demo.id == id).map(|o| o.demo.clone()).or_else(|| demo(id).cloned())
}

/// A session of a plan.
pub fn session_of(plan: &Plan, mine: &[Own]) -> Session {
    let turn = |id: &u32| {
        let d = found(*id, mine)?;
        let partner = found(d.partner, mine).filter(|p| p.id != d.id && p.set_up.set_up().is_ok());
        Some(Turn::of(d, partner))
    };
    Session::of(&plan.name, plan.ids.iter().filter_map(turn).collect(), js_sys::Date::now() / 1e3)
}

/// What goes between the two windows.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub enum Said {
    /// The wall's: this is the session now.
    Now(Box<Session>),
    /// The second window's: somebody is here, say where you are.
    Hello,
    /// The second window's wish.
    Wish(Wish),
    /// The wall is gone.
    Gone,
    /// A wall's: it shows the session from now on; its own number, so that it does not heed itself.
    Wall(f64),
}

/// One end of the line between the windows of one browser.
#[derive(Clone, Copy)]
pub struct Line(StoredValue<Option<(BroadcastChannel, Ear)>, LocalStorage>);

/// What hears; it goes with its line.
type Ear = Closure<dyn Fn(MessageEvent)>;

impl Line {
    /// Opens it, and hears what the other end says as long as the component lives.
    pub fn open(hear: impl Fn(Said) + 'static) -> Line {
        let channel = BroadcastChannel::new(CHANNEL).ok().map(|c| {
            let ear = Ear::new(move |ev: MessageEvent| {
                let said = ev.data().as_string().and_then(|t| serde_json::from_str(&t).ok());
                if let Some(said) = said {
                    hear(said);
                }
            });
            c.set_onmessage(Some(ear.as_ref().unchecked_ref()));
            (c, ear)
        });
        let line = Line(StoredValue::new_local(channel));
        on_cleanup(move || {
            line.0.try_with_value(|c| {
                if let Some((c, _)) = c {
                    c.set_onmessage(None);
                    c.close();
                }
            });
        });
        line
    }

    /// Says something to the other end.
    pub fn say(self, what: &Said) {
        let Ok(text) = serde_json::to_string(what) else { return };
        self.0.try_with_value(|c| c.as_ref().map(|(c, _)| c.post_message(&JsValue::from_str(&text))));
    }
}
