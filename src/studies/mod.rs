//! Many falls and what they come to: along the wall, over what nobody knows, over two choices, and beside published figures.

pub mod along_wall;
pub mod map;
pub mod published;
pub mod spread;
