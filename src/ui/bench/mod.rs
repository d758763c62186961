//! The first download: the bench. Signals live in `state`; a fall is computed whole, graded, and then
//! played back by `player`, a clock over the finished trace. `drawing` and `plot` only read.

mod along_wall;
mod drawing;
mod forms;
mod gear;
mod hand;
mod houses;
mod map;
pub mod page;
mod player;
mod plot;
mod setup;
mod spread;
mod state;
mod verdict;
