//! What the page asks of the engine and what it answers.
//!
//! Rigid bodies run in a worker, in a module of its own: the page paints before the engine is
//! fetched, and no fall blocks it. The page's own modules use `questions` and `wire` alone; the bodies run
//! in `answers`, which only the worker calls. Messages are postcard bytes, which keep every bit of a float.

pub mod answers;
pub mod questions;
pub mod wire;

pub use answers::{drawn, reply};
pub use questions::{Ask, Question};
