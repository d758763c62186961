//! What both downloads show or use.

pub mod asking;
pub mod figure;
pub mod front;
pub mod house_picture;
pub mod settings;
pub mod signs;
pub mod store;
pub mod view;
