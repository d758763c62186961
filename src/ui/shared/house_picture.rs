//! The five houses as pictures: each is the geometry that a fall will meet.

use super::figure::cm;
use crate::geometry::{Geometry, P, p};
use crate::practice::houses::HouseKind;
use crate::scenario::Scenario;
use leptos::prelude::*;

fn line(points: &[P]) -> String {
    points
        .iter()
        .enumerate()
        .map(|(i, q)| format!("{}{} {}", if i == 0 { "M" } else { "L" }, cm(q.x), cm(-q.y)))
        .collect()
}

/// A house in section: all at one scale, so that tall is tall.
pub fn picture(kind: HouseKind) -> impl IntoView {
    let mut s = Scenario::default();
    kind.move_in(&mut s);
    let g = Geometry::of(&s);
    let paths = g.map(|g| {
        let far = 2.0 * g.ridge.x;
        let ground = line(&[p(far - 1.5, 0.0), p(0.0, 0.0), p(4.0, g.ground_y_m(4.0))]);
        let inside = line(&[p(0.0, 0.0), p(0.0, g.fascia.y), p(far, g.fascia.y), p(far, 0.0)]);
        let roof = format!("{}Z", line(&[g.eave, g.ridge, g.far_eave, g.fascia]));
        let dormer = (kind == HouseKind::Cape).then(|| {
            let (x, y) = (g.ridge.x * 0.45, g.eave.y + 1.0);
            format!("{}Z", line(&[p(x - 1.1, y + 1.9), p(x + 0.5, y + 1.9), p(x + 0.5, y - 0.1)]))
        });
        let chimney = (kind == HouseKind::TallGable).then(|| {
            let (x, y) = (g.ridge.x - 0.9, g.ridge.y - 0.9);
            format!("{}Z", line(&[p(x - 0.4, y - 0.6), p(x - 0.4, y + 2.0), p(x + 0.4, y + 2.0), p(x + 0.4, y + 0.1)]))
        });
        let deck = g.obstacle.map(|(l, r, top)| format!("{}Z", line(&[p(l, 0.0), p(l, top), p(r, top), p(r, 0.0)])));
        let ladder = line(&[g.ladder.foot, g.ladder.tip]);
        view! {
            <path class="inside" d=inside /><path class="wood" d=roof />
            {[dormer, chimney, deck].into_iter().flatten().map(|d| view! { <path class="wood" d=d /> }).collect_view()}
            <path class="rail" d=ladder /><path d=ground />
        }
    });
    view! { <svg viewBox="-930 -1230 1330 1340" aria-hidden="true" preserveAspectRatio="xMidYMax meet">{paths}</svg> }
}
