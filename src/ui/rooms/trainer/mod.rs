//! The trainer's room: the library and its plan, the wall before a room, the second window, what is printed.

mod card;
mod code;
mod facts;
mod falls;
mod handout;
mod held;
mod house;
mod library;
mod photo;
mod picture;
mod second;
mod store;
mod wall;

pub use handout::Handout;
pub use held::HeldRoom;
pub use house::House;
pub use library::{Numbered, Trainer};
pub use second::Second;
pub use wall::Wall;
