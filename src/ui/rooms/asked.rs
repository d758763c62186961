//! What a question shows that is no set-up of the bench: a moment at the eave, a property.

use super::site::where_all;
use crate::geometry::{Geometry, p};
use crate::practice::eave::Links;
use crate::practice::site::Site;
use crate::quiz::questions::{Item, Shows};
use crate::scenario::Scenario;
use crate::scene::camera::Frame;
use crate::scene::eave::{grabs, near, standing};
use crate::scene::house::house;
use crate::scene::ink::{cm, line};
use crate::scene::site::{front, front_frame, plan, plan_frame};
use crate::texts::ask;
use crate::ui::shared::figure::{defs, still};
use crate::ui::shared::settings::settings;
use leptos::prelude::*;

/// The picture; none where the question's set-ups are the picture.
pub fn shown(q: &Item) -> Option<AnyView> {
    match q.shows.as_ref()? {
        Shows::Links(_, links) => eave(q.set_ups.first()?, *links),
        Shows::Site { seed, law } => Some(property(&Site::drawn(*seed), law.clone(), ask::spots(q))),
    }
}

fn eave(s: &Scenario, links: Links) -> Option<AnyView> {
    let g = Geometry::of(s)?;
    let names = grabs(links, &g).into_iter().zip(["A", "B"]);
    let names = names
        .filter_map(|(at, name)| {
            at.map(|q| view! { <text class="eave-name" x=cm(q.x - 0.34) y=cm(-q.y - 0.12)>{name}</text> })
        })
        .collect_view();
    let frame = near(&g, s.worker.stature_m).view_box();
    Some(view! { <div class="asked-picture"><svg class="drawing asked-eave" viewBox=frame preserveAspectRatio="xMidYMid meet" aria-hidden="true">{defs()}{still(house(&g, s))}{still(standing(links, s, &g))}{names}</svg></div> }.into_any())
}

/// The property from in front and from above, with the places that are asked about.
fn property(s: &Site, law: String, spots: Vec<f64>) -> AnyView {
    let settings = settings();
    let out_m = 0.4 + s.placed_at(0.0).foot_m;
    let lettered = move |above: bool, eave_m: f64| {
        spots
            .iter()
            .zip(["A", "B", "C"])
            .map(|(x, name)| {
                let y = if above { -out_m - 0.2 } else { 1.4 };
                let rails = if above { [p(*x, -out_m), p(*x, -0.4)] } else { [p(*x, 0.0), p(*x, eave_m + 0.6)] };
                let d = line(&rails);
                view! { <g transform="scale(1,-1)"><path class="asked-rail" d=d /></g>
                    <circle class="walk-disc" cx=cm(*x) cy=cm(-y) r="34" /><text class="walk-number" x=cm(*x) y=cm(-y) + 15.0 text-anchor="middle">{name}</text> }
            })
            .collect_view()
    };
    let words = {
        let s = s.clone();
        move || where_all(settings.reader(), &s)
    };
    let eave_m = s.eave_m;
    let facts = {
        let s = s.clone();
        move || ask::stand_facts(settings.reader(), &s, &law)
    };
    // Of the plan what lies about the job and the wires.
    let near = {
        let f = plan_frame();
        let mid = if s.pole_m > s.job_m { s.job_m + 2.6 } else { s.job_m - 2.6 };
        Frame { left_m: mid - 6.0, right_m: mid + 6.0, bottom_m: f.bottom_m + 1.6, top_m: f.top_m - 1.2 }
    };
    view! {
        <div class="asked-picture asked-two" role="img" aria-label=words>
            <svg class="drawing walk-drawing asked-site" viewBox=front_frame().view_box() aria-hidden="true">{defs()}{still(front(s))}{lettered(false, eave_m)}</svg>
            <svg class="drawing walk-drawing asked-site" viewBox=near.view_box() aria-hidden="true">{still(plan(s))}{lettered(true, eave_m)}</svg></div>
        <p class="stand-facts">{facts}</p>
    }
    .into_any()
}
