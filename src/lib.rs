//! Shortfall: a fall-arrest training simulator. The map of the crate.
//!
//! Arrows go one way: each module may use those before it, never those after.
//! `units <- scenario <- strength <- physics <- rules <- scoring <- report`, with `scene`, `link`, `inspection`, `thumbs`, `sideways`, `spread`, `map`, `changes`, `engine` beside them;
//! `texts` sees only codes and numbers; `ui` sees all, nothing sees `ui`. `tests/tidy.rs` checks it.

#![warn(missing_docs)]

pub mod draw;
pub mod geometry;
pub mod grade;
pub mod physics;
pub mod practice;
pub mod quiz;
pub mod rules;
pub mod scenario;
pub mod scene;
pub mod strength;
pub mod studies;
pub mod texts;
#[cfg(feature = "ui")]
pub mod ui;
pub mod units;
pub mod worker;
