//! The second module of the page: the rooms beside the bench. It is fetched when one is first opened.

mod asked;
mod bar;
mod crew;
mod day;
mod day_end;
mod desk;
mod eave;
mod framing;
mod gear_list;
mod harness;
mod incident;
mod keep;
mod lesson;
mod lessons;
mod order;
mod pair;
mod paper;
mod quiz;
mod racks;
mod rescue;
mod sheet;
mod site;
mod site_told;
mod today;
mod trainer;

use self::crew::Crew;
use self::day::Day;
use self::desk::provide_desk;
use self::eave::Eave;
use self::framing::Framing;
use self::harness::HarnessRoom;
use self::lessons::Lessons;
use self::quiz::Quiz;
use self::racks::Racks;
use self::rescue::Rescue;
use self::site::SiteRoom;
use crate::practice::pairs::Rack;
use crate::scenario::Scenario;
use crate::ui::shared::asking::Lost;
use crate::ui::shared::store;
use crate::ui::shared::view::{View, follow, provide_view};
use leptos::prelude::*;

/// What a room knows of the bench, and its own live region.
#[derive(Clone, Copy)]
pub struct Visit {
    /// The set-up on the bench.
    pub set_up: RwSignal<Scenario>,
    /// What the live region says.
    pub said: RwSignal<String>,
}

/// The visit of this room.
pub fn visit() -> Visit {
    expect_context()
}

/// The rooms.
#[component]
pub fn Rooms() -> impl IntoView {
    let settings = store::load_settings();
    provide_context(settings);
    let visit = Visit { set_up: RwSignal::new(Scenario::default()), said: RwSignal::new(String::new()) };
    provide_context(visit);
    follow(settings, visit.set_up);
    let view = provide_view();
    let desk = provide_desk();
    Effect::new(move |_| {
        view.track();
        desk.reload();
    });
    view! {
        <Lost />
        {move || match view.get() {
            View::Bench => ().into_any(),
            View::Lessons => view! { <Lessons /> }.into_any(),
            View::Quiz => view! { <Quiz /> }.into_any(),
            View::Crew => view! { <Crew /> }.into_any(),
            View::Day => view! { <Day /> }.into_any(),
            View::Framing => view! { <Framing /> }.into_any(),
            View::Harness => view! { <HarnessRoom /> }.into_any(),
            View::Eave => view! { <Eave /> }.into_any(),
            View::Site => view! { <SiteRoom /> }.into_any(),
            View::Hooks => view! { <Racks rack=Rack::Hooks /> }.into_any(),
            View::Rope => view! { <Racks rack=Rack::Ropes /> }.into_any(),
            View::Supports => view! { <Racks rack=Rack::Supports /> }.into_any(),
            View::GearList => view! { <gear_list::GearList /> }.into_any(),
            View::Incident => view! { <incident::Incident /> }.into_any(),
            View::Rescue => view! { <Rescue /> }.into_any(),
            View::Wall => view! { <trainer::Wall /> }.into_any(),
            View::Second => view! { <trainer::Second /> }.into_any(),
            View::Trainer => view! { <trainer::Trainer /> }.into_any(),
            View::Numbered(id) => view! { <trainer::Numbered id=id /> }.into_any(),
            View::Held => view! { <trainer::HeldRoom /> }.into_any(),
            View::Handout => view! { <trainer::Handout /> }.into_any(),
            View::House => view! { <trainer::House /> }.into_any(),
        }}
        <div class="vh" role="status" aria-live="polite">{move || visit.said.get()}</div>
    }
}
