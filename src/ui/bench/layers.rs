//! What can lie in the picture's place, one at a time: a part from near, today's set-up, why a fall went as it
//! did, one change, and three further pictures of it.

use super::along_wall::{FromFront, Sideways};
use super::drawer::Drawer;
use super::hand::{Hand, part_name};
use super::map::RoomMap;
use super::plot::Plot;
use super::spread::Spread;
use super::stage::{Layer, stage};
use super::state::{Phase, bench};
use super::sums::{DropPieces, EnergyPieces};
use super::verdict::{Changes, Findings, Told};
use crate::texts::Stage as S;
use crate::ui::shared::settings::settings;
use leptos::prelude::*;

/// The layer that lies there, if any.
#[component]
pub fn Layers() -> impl IntoView {
    let (bench, settings, stage) = (bench(), settings(), stage());
    let open = Memo::new(move |_| {
        stage.layer.get().filter(|l| match bench.phase.get() {
            Phase::Choosing => matches!(l, Layer::Part | Layer::SetUp | Layer::Front),
            Phase::Shown => *l != Layer::Part,
            _ => false,
        })
    });
    // A run that fails its own check shows no figure of it.
    let graded = Memo::new(move |_| bench.run.with(|r| r.as_ref().is_some_and(|r| r.trace.is_sound())));
    let tabs = move || {
        let now = open.get()?;
        let all = if bench.phase.get() == Phase::Shown { Layer::of_fall(bench) } else { vec![] };
        Some(
            all.into_iter()
                .map(|l| {
                    view! {
                        <button type="button" class="seg" id=format!("tab-{}", l.id()) aria-pressed=(l == now).to_string()
                            on:click=move |_| stage.open(l)>{settings.s(l.name())}</button>
                    }
                })
                .collect_view(),
        )
    };
    let body = move || {
        open.get().map(|l| match l {
            Layer::Part => view! { <Hand /> }.into_any(),
            Layer::SetUp => view! { <Drawer /> }.into_any(),
            Layer::Why => view! {
                <Told />
                <Show when=move || graded.get()>
                    <div class="sums"><DropPieces /><Plot /><EnergyPieces /></div>
                    <Findings />
                </Show>
            }
            .into_any(),
            Layer::Change => view! { <Changes /> }.into_any(),
            Layer::Front => view! { <FromFront /> }.into_any(),
            Layer::Wall => view! { <Sideways /> }.into_any(),
            Layer::Room => view! { <RoomMap /> }.into_any(),
            Layer::Sure => view! { <Spread /> }.into_any(),
        })
    };
    view! {
        <Show when=move || open.get().is_some()>
            <div class="layer" role="group" data-layer=move || open.get().map_or("", Layer::id) aria-labelledby="layer-h"
                on:keydown=move |ev| if ev.key() == "Escape" { ev.prevent_default(); stage.close() }>
                <div class="layer-head">
                    <h2 id="layer-h" tabindex="-1">{move || open.get().map_or("", |l| settings.t(if l == Layer::Part { part_name(bench.held.get()) } else { l.name() }))}</h2>
                    <div class="tabs">{tabs}</div>
                    <button type="button" class="shut" id="shut" on:click=move |_| stage.close()>
                        <b aria-hidden="true" class="cross"></b><span>{settings.s(S::BackToPicture)}</span></button>
                </div>
                <div class="layer-body" tabindex="0">{body}</div>
            </div>
        </Show>
    }
}
