//! The choice of a house, by picture.

use super::state::bench;
use crate::practice::houses::HouseKind;
use crate::texts::Bench as W;
use crate::ui::shared::house_picture::picture;
use crate::ui::shared::settings::settings;
use leptos::prelude::*;

/// The choice of a house.
#[component]
pub fn Houses() -> impl IntoView {
    let (bench, settings) = (bench(), settings());
    let now = Memo::new(move |_| bench.scenario.with(HouseKind::of));
    let rows = HouseKind::ALL.map(|k| {
        view! {
            <label><input type="radio" name="house" prop:checked=move || now.get() == Some(k)
                on:change=move |_| bench.edit(|s| k.move_in(s)) />{picture(k)}<span>{settings.s(k.label())}</span></label>
        }
    });
    view! {
        <fieldset class="houses"><legend class="vh">{settings.s(W::HouseHeading)}</legend>
            <div class="row">{rows}</div><p class="hint">{settings.s(W::HouseHint)}</p></fieldset>
    }
}
