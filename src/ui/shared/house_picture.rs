//! The five houses as pictures: each is the geometry that a fall will meet.

use super::figure::still;
use crate::geometry::Geometry;
use crate::practice::houses::HouseKind;
use crate::scenario::Scenario;
use crate::scene::camera::Frame;
use crate::scene::house::house;
use leptos::prelude::*;

/// A house in section: all at one scale, so that tall is tall.
pub fn picture(kind: HouseKind) -> impl IntoView {
    let mut s = Scenario::default();
    kind.move_in(&mut s);
    let shown = Frame { left_m: -9.4, bottom_m: -1.1, right_m: 3.6, top_m: 12.2 }.view_box();
    let drawn = Geometry::of(&s).map(|g| still(house(&g, &s)));
    view! { <svg class="drawing small" viewBox=shown aria-hidden="true" preserveAspectRatio="xMidYMax meet">{drawn}</svg> }
}
