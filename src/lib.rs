//! Shortfall: a fall-arrest training simulator. The map of the crate.
//!
//! Arrows go one way: `units, draw, scenario, geometry, strength, physics, rules, grade, studies, practice,
//! quiz, scene, texts, worker`, each using only what stands before it; `ui` sees all, nothing sees `ui`.
//! `tests/tidy.rs` holds the order.

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
