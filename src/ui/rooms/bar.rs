//! The bar of a room that fills the window.

use crate::texts::Room as W;
use crate::ui::shared::settings::settings;
use crate::ui::shared::view;
use leptos::prelude::*;

/// From this width of the picture on, actions lie on it, px.
pub const WIDE_PX: f64 = 760.0;

/// The room's own bar: back, and what it is.
#[component]
pub fn RoomBar(back: W, to: Callback<()>, #[prop(into)] title: Signal<&'static str>) -> impl IntoView {
    let settings = settings();
    // Whoever comes by keyboard begins at the room's name.
    view::to_view("room-h");
    view! {
        <div class="room-bar">
            <button type="button" class="back" aria-label=settings.s(back) on:click=move |_| to.run(())><b aria-hidden="true" class="chevron"></b></button>
            <h2 id="room-h" tabindex="-1">{title}</h2>
        </div>
    }
}
