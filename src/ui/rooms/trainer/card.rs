//! A scenario as a card: its picture, its name, its minutes.

use super::facts;
use crate::geometry::Geometry;
use crate::practice::demos::{Demo, Part};
use crate::practice::plan::{OWN_FROM, Plan};
use crate::scene::camera;
use crate::scene::figure::figure;
use crate::scene::front::Front;
use crate::scene::house::house;
use crate::scene::standing_scene;
use crate::texts::Trainer as T;
use crate::ui::shared::figure::still;
use crate::ui::shared::settings::settings;
use crate::ui::shared::view;
use leptos::prelude::*;

/// Width and height of a card's picture, px: what its frame is chosen for.
const CARD_PX: (f64, f64) = (150.0, 104.0);

/// Under this the plan and the chosen one stand below the cards, px (as in the style sheet).
const ONE_COLUMN_PX: f64 = 1100.0;

/// The picture of a scenario, small.
pub fn thumbnail(d: &Demo) -> Option<impl IntoView + use<>> {
    let s = &d.set_up;
    let g = Geometry::of(s)?;
    let shape = CARD_PX.0 / CARD_PX.1;
    let (frame, shapes) = if d.is_along() {
        let f = Front { along_m: d.along_m, ..Front::of(s, &g) };
        (f.bounds(), f.shapes())
    } else {
        let mut all = house(&g, s);
        all.extend(figure(&standing_scene(s, &g), s, &g));
        (camera::work(&g, s, (CARD_PX.0 * 2.0, CARD_PX.1 * 2.0), false), all)
    };
    let lens = facts::close_up(d, s)
        .filter(|_| matches!(d.part, Part::Grab | Part::Anchor | Part::Lifeline))
        .map(|all| {
            let paths = all.into_iter().map(|(c, d)| view! { <path class=c d=d /> }).collect_view();
            view! { <svg class="lens" viewBox="0 0 120 120" aria-hidden="true">{paths}</svg> }
        });
    Some(view! {
        <span class="demo-still"><svg class="drawing thinned" class:front=d.is_along() viewBox=frame.fit(shape, 0.5).view_box() preserveAspectRatio="xMidYMid slice" aria-hidden="true">{still(shapes)}</svg>{lens}</span>
    })
}

/// The card.
pub fn card(d: Demo, chosen: RwSignal<u32>, plan: RwSignal<Plan>) -> impl IntoView {
    let settings = settings();
    let id = d.id;
    let picture = thumbnail(&d);
    let (name, minutes) = (d.name.clone(), d.minutes);
    let places = move || {
        plan.with(|p| {
            let all: Vec<String> = p
                .ids
                .iter()
                .enumerate()
                .filter(|(_, x)| **x == id)
                .map(|(i, _)| (i + 1).to_string())
                .collect();
            (!all.is_empty()).then(|| all.join(", "))
        })
    };
    let badge = move || {
        places().map(|n| view! { <b class="badge"><span class="vh">{settings.reader().f(T::InPlan, &[("n", "")])}</span>{n}</b> })
    };
    let pick = move |id: u32| {
        chosen.set(id);
        // In one column what is told of it stands far below.
        let wide = window().inner_width().ok().and_then(|w| w.as_f64()).unwrap_or(0.0);
        if wide < ONE_COLUMN_PX {
            view::to_view("chosen-h");
        }
    };
    let own = (id >= OWN_FROM).then(|| view! { <b class="badge own">{settings.s(T::OwnBadge)}</b> });
    view! {
        <li><button type="button" class="demo" data-demo=id.to_string() aria-pressed=move || (chosen.get() == id).to_string() on:click=move |_| pick(id)>
            {picture}{badge}{own}<strong>{move || settings.lang.get().of(&name).to_owned()}</strong>" "<small>{move || settings.reader().f(T::Minutes, &[("n", &minutes.to_string())])}</small></button></li>
    }
}
