//! The first download: the bench. Signals live in `state`; a fall is computed whole, graded, and then played
//! back by `player`, a clock over the finished trace. The screen is a picture (`stage`: `drawing` with
//! `overlay` over it), a `strip` under it, and one of the `layers` in the picture's place.

mod along_wall;
mod drawer;
mod drawing;
mod flag;
mod forms;
mod gear;
mod hand;
mod houses;
mod layers;
mod lenses;
mod map;
mod marks;
mod overlay;
pub mod page;
mod player;
mod plot;
mod reference;
mod sentence;
mod setup;
mod spread;
mod stage;
mod state;
mod strip;
mod sums;
mod verdict;
