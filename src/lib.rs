//! Shortfall: a fall-arrest training simulator. The map of the crate.
//!
//! Arrows go one way: each module may use those before it, never those after.
//! `units <- scenario <- strength <- physics <- rules <- scoring <- report`, with `scene`, `link`, `inspection`, `thumbs`, `sideways`, `spread`, `map`, `changes`, `engine` beside them;
//! `texts` sees only codes and numbers; `ui` sees all, nothing sees `ui`. `tests/tidy.rs` checks it.

#![warn(missing_docs)]

pub mod changes;
pub mod day;
pub mod draw;
pub mod engine;
pub mod file;
pub mod framing;
pub mod hand;
pub mod houses;
pub mod inspection;
pub mod lessons;
pub mod link;
pub mod map;
pub mod physics;
pub mod published;
pub mod quiz;
pub mod records;
pub mod report;
pub mod rescue;
pub mod roster;
pub mod rules;
pub mod scenario;
pub mod scene;
pub mod scoring;
pub mod sideways;
pub mod spread;
pub mod strength;
pub mod texts;
pub mod thumbs;
#[cfg(feature = "ui")]
pub mod ui;
pub mod units;
