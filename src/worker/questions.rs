//! Every question, tied to its answer.

use crate::geometry::SetUp;
use crate::grade::changes::ChangeEffect;
use crate::physics::Worn;
use crate::physics::trace::Trace;
use crate::practice::day::{Risk, Stretch};
use crate::quiz::export::{Import, Refused};
use crate::quiz::gear_list::Piece;
use crate::quiz::record::{Doubt, Header, Record};
use crate::quiz::roster::Names;
use crate::quiz::session::Held;
use crate::quiz::{Answered, Blueprint, Form};
use crate::scenario::Scenario;
use crate::studies::along_wall::Swing;
use crate::studies::map::{Knot, Map, MapKind};
use crate::studies::spread::SpreadFall;
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};

/// A question that has one kind of answer.
pub trait Question: Into<Ask> + Serialize {
    /// What comes back.
    type Answer: Serialize + DeserializeOwned + 'static;
    /// Its number among the questions. Written before the question it is the same bytes as [`Ask`], so that who
    /// asks need not be able to write every question.
    const NUMBER: u32;
}

macro_rules! questions {
    ($($(#[$doc:meta])* $name:ident $fields:tt -> $answer:ty;)*) => {
        $(questions!(@one $(#[$doc])* $name $fields);
        impl Question for $name {
            type Answer = $answer;
            const NUMBER: u32 = Number::$name as u32;
        }
        impl From<$name> for Ask {
            fn from(q: $name) -> Ask {
                Ask::$name(Box::new(q))
            }
        })*

        enum Number { $($name,)* }

        /// Any question, as it goes to the worker.
        #[allow(missing_docs)]
        #[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
        pub enum Ask { $($name(Box<$name>),)* }

        /// Calls `$with` with the question inside.
        macro_rules! with_question {
            ($ask:expr, $q:ident => $with:expr) => {
                match $ask { $(Ask::$name($q) => $with,)* }
            };
        }
        pub(super) use with_question;
    };
    (@one $(#[$doc:meta])* $name:ident { $($field:ident: $kind:ty),* $(,)? }) => {
        $(#[$doc])*
        #[allow(missing_docs)]
        #[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
        pub struct $name { $(pub $field: $kind,)* }
    };
    (@one $(#[$doc:meta])* $name:ident ($kind:ty)) => {
        $(#[$doc])*
        #[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
        pub struct $name(pub $kind);
    };
}

questions! {
    /// The fall of a set-up.
    Fall(SetUp) -> Trace;
    /// What single changes of a set-up would do to its score: those that help, best first.
    Changes(SetUp) -> Vec<ChangeEffect>;
    /// The falls along the wall, by offset.
    Swings(SetUp) -> Vec<Swing>;
    /// Some of the many falls of a spread, in order: `count` of them from number `first` on.
    SomeOfSpread { set_up: SetUp, seed: u64, first: u32, count: u32 } -> Vec<SpreadFall>;
    /// What a slip in each stretch of a shift would have come to.
    Shift(Vec<Stretch>) -> Vec<Risk>;
    /// A map, a little further than the runs already made.
    MoreOfMap { scenario: Scenario, kind: MapKind, done: Vec<Knot> } -> MapSoFar;
    /// The form of a blueprint.
    DrawForm(Blueprint) -> Form;
    /// The record of a finished form; none when it could not be sealed.
    Seal { header: Header, answers: Vec<Answered>, finished: String, clock_back: bool } -> Option<Record>;
    /// What is doubtful about a record, and its form drawn again.
    Reopen(Record) -> Reopened;
    /// What is doubtful about a record once its form is drawn again.
    Doubts(Record) -> Option<Doubt>;
    /// Records, the texts of those that could not be read, and the crew's list as one text.
    Write { how: Writing, french: bool, records: Vec<Record>, unread: Vec<String>, crew: Vec<String> } -> String;
    /// What taking in a file would do, against the identifiers held; or why it is refused.
    TakeIn { text: String, held: Vec<String> } -> Result<Import, Refused>;
    /// Names from a pasted list.
    ReadNames(String) -> Names;
    /// The headless program's answer to a scenario file: one JSON object, or one line that names the field.
    Outcome(String) -> Result<String, String>;
    /// Sessions that were held, as CSV.
    WriteSessions { french: bool, sessions: Vec<Held> } -> String;
    /// The gear list as CSV.
    WriteGear { french: bool, pieces: Vec<Piece> } -> String;
    /// The fall of a set-up in a harness that is worn so.
    FallWorn { set_up: SetUp, worn: Worn } -> Trace;
    /// What is drawn from each of `count` seeds, from `first` on.
    Draws { first: u64, count: u32 } -> String;
}

/// A way to write records.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Writing {
    /// The app's own JSON.
    Archive,
    /// CSV for a spreadsheet.
    Csv,
    /// xAPI statements.
    Xapi,
}

/// A map as far as it is.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct MapSoFar {
    /// The map; none where next to nothing can be built.
    pub map: Option<Map>,
    /// Its runs.
    pub done: Vec<Knot>,
    /// Nothing is left to run.
    pub finished: bool,
}

/// A record and its form drawn again.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Reopened {
    /// What is doubtful about it.
    pub doubt: Option<Doubt>,
    /// The form.
    pub form: Form,
}
