//! The trainer's room: the library and its plan, the wall before a room, the second window, what is printed.

mod card;
mod code;
mod facts;
mod falls;
mod library;
mod picture;
mod plan_file;
mod second;
mod store;
mod wall;

pub use library::{Numbered, Trainer};
pub use second::Second;
pub use wall::Wall;
