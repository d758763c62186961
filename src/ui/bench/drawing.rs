//! The bench's picture: house, what moves, the fall before as bones, handles. Only paths change while a fall
//! plays.

use super::hand::{self, Handles};
use super::player::player;
use super::stage::{Layer, stage};
use super::state::{Phase, answer, bench};
use crate::scene::figure::{figure, ghost};
use crate::scene::house::house;
use crate::scene::{at, standing_scene};
use crate::texts::Key;
use crate::ui::shared::figure::{Moving, decisive_s, defs, still};
use crate::ui::shared::settings::settings;
use crate::ui::shared::view;
use leptos::prelude::*;

/// The whole drawing.
#[component]
pub fn Drawing() -> impl IntoView {
    let (bench, settings, player, stage) = (bench(), settings(), player(), stage());
    let shown = move || stage.pane.get().map_or("0 0 100 100".to_owned(), |p| p.frame.view_box());
    // What is drawn now: a moment of the run, or the set-up.
    // Once a moment, whoever reads it.
    let moving = Memo::new(move |_| {
        let showing = matches!(bench.phase.get(), Phase::Playing | Phase::Shown);
        if showing && let Some(r) = bench.run.get() {
            let g = r.set_up.geometry();
            return at(&r.set_up, g, &r.trace, player.clock.get())
                .map_or(vec![], |q| figure(&q, &r.set_up, g));
        }
        bench.geometry.with(|g| {
            let Some(g) = g.as_ref() else { return vec![] };
            bench.drawn.with(|s| figure(&standing_scene(s, g), s, g))
        })
    });
    let before = Memo::new(move |_| {
        let Some(r) = bench.ghost.get() else { return vec![] };
        // The fall at another house says nothing here.
        if bench.drawn.with(|s| s.house != r.set_up.house) {
            return vec![];
        }
        let g = r.set_up.geometry();
        at(&r.set_up, g, &r.trace, decisive_s(&r.trace)).map_or(vec![], |q| ghost(&q, g))
    });
    let has_ghost = Memo::new(move |_| before.with(|b| !b.is_empty()));
    let drawn = Memo::new(move |_| moving.with(|m| !m.is_empty()));
    // What stands still is drawn anew only where it changes.
    let stands = Memo::new(move |_| {
        bench.geometry.with(|g| g.as_ref().map_or(vec![], |g| bench.drawn.with(|s| house(g, s))))
    });
    let struck = move || player.is_struck(bench);
    let key = move |ev: web_sys::KeyboardEvent| {
        let (phase, name) = (bench.phase.get_untracked(), ev.key().to_lowercase());
        if ev.ctrl_key() || ev.meta_key() {
            match (phase, name.as_str()) {
                (Phase::Choosing, "z") => bench.undo(),
                (Phase::Choosing, "y") => bench.redo(),
                _ => return,
            }
            return ev.prevent_default();
        }
        match (phase, name.as_str()) {
            (Phase::Shown, "w") => stage.open(Layer::Why),
            (Phase::Shown, "c") => stage.open(Layer::Change),
            (Phase::Choosing, "f") => view::to_view("guess"),
            (Phase::Choosing, "1" | "2" | "3" | "4") => answer(bench, &name),
            (Phase::Choosing, _) => hand::key(&ev, bench, settings),
            _ => player.key(&ev),
        }
    };
    view! {
        <svg class="drawing" class:struck=struck viewBox=shown preserveAspectRatio="xMidYMid meet" role="application" tabindex="0"
            id="scene" aria-label=settings.s(Key::SceneRegion) aria-describedby="scene-words"
            on:blur=move |_| { bench.stop.set(None); bench.put_down(true) } on:keydown=key>
            {defs()}
            {move || still(stands.get())}
            <Show when=move || has_ghost.get()><Moving shapes=before.into() class="ghost" /></Show>
            <Show when=move || drawn.get()><Moving shapes=moving.into() class="figure" /></Show>
            <Handles />
        </svg>
    }
}
