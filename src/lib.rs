//! Shortfall: a fall-arrest training simulator. The map of the crate.
pub mod physics;
pub mod scenario;
pub mod units;
