//! What is practised beside the bench: lessons, a working day, framing, rescue, the gear in hand.

pub mod day;
pub mod demos;
pub mod eave;
pub mod framing;
pub mod hand;
pub mod harness;
pub mod hooks;
pub mod houses;
pub mod inspection;
pub mod lessons;
pub mod pairs;
pub mod photo;
pub mod plan;
pub mod rescue;
pub mod showing;
pub mod site;
pub mod thumbs;
