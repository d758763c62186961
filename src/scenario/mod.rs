//! Every choice a person can make, in SI, and what is wrong with it.
//!
//! A scenario is plain data: it can be saved, linked, compared and replayed. It knows the range of
//! each number ([`Field`]); it knows no time, no force and no rule. `Scenario::problems`, which
//! also asks whether the set-up is geometrically possible, stands in `geometry::set_up`, because
//! only there the ladder and the rope have a place.

mod choices;
mod fields;
pub mod file;
pub mod link;
mod parts;

pub use choices::*;
pub use fields::*;
pub use parts::*;

/// The file format's number. Older files keep loading: a missing field takes its default.
///
/// 5: the rope by its kind, what stops at its end, the wire's voltage, work from the ground or a platform.
/// 6: slack above the grab, what the rope runs over at the eave.
pub const SCHEMA: u32 = 6;
