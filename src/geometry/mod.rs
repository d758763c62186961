//! House, ladder, worker's stance and the rope's path over edges. No time, no force.
//!
//! The section plane: x grows away from the wall face (x = 0), y grows upward from the ground at the
//! wall (y = 0); beyond it the ground may fall away. The roof is a solid with three corners on the worker's side that a rope can bend over:
//! ridge, eave edge and the lower edge of the fascia. Left out: the gutter's shape, rope thickness,
//! anything across the section (sideways falls).

pub mod body;
pub mod house;
pub mod plane;
pub mod set_up;

pub use house::{
    BODY_OFF_LADDER_M, DRING_BACK_SHARE, DRING_SHARE, FASCIA_DEPTH_M, Geometry, LadderLine, LadderTop,
    TOP_OF_LADDER_M, ground_y_m, ladder_line,
};
pub use plane::{P, p, path_length, taut_path};
pub use set_up::SetUp;
