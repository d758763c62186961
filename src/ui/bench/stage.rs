//! The stage: the pane that the picture is shown in, which part of the plane it shows, what lies over it.

use super::drawing::Drawing;
use super::layers::{Layer, Layers};
use super::overlay::Overlay;
use super::player::Player;
use super::state::{Bench, Phase};
use crate::physics::trace::EventKind;
use crate::scene::camera::{self, Pane};
use leptos::html::Div;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::Closure;

/// What the picture is shown by.
#[derive(Clone, Copy)]
pub struct Stage {
    /// Size of the pane, px.
    pub size: RwSignal<(f64, f64)>,
    /// The whole house is asked for.
    pub whole: RwSignal<bool>,
    /// What lies in the picture's place.
    pub layer: RwSignal<Option<Layer>>,
    /// What opened it, to give the focus back.
    pub opener: StoredValue<String>,
    /// The flag is in hand: the ground has to be seen.
    pub flag: RwSignal<bool>,
    /// The frame on its pixels.
    pub pane: Memo<Option<Pane>>,
}

/// The stage of this page.
pub fn provide_stage(bench: Bench, player: Player) -> Stage {
    let size = RwSignal::new((0.0, 0.0));
    let (whole, flag) = (RwSignal::new(false), RwSignal::new(false));
    let pane = Memo::new(move |old: Option<&Option<Pane>>| {
        let (width_px, height_px) = size.get();
        if width_px < 10.0 || height_px < 10.0 {
            return None;
        }
        // What is dragged stays under the finger.
        if bench.has_in_hand()
            && let Some(Some(old)) = old
        {
            return Some(*old);
        }
        let shape = width_px / height_px;
        let frame = bench.geometry.with(|g| {
            let g = g.as_ref()?;
            bench.drawn.with(|s| {
                let all = || camera::whole(g, s).fit(shape, 0.5);
                let start = || camera::work(g, s, (width_px, height_px), flag.get());
                if whole.get() {
                    return Some(all());
                }
                let showing = matches!(bench.phase.get(), Phase::Playing | Phase::Shown);
                match bench.run.get().filter(|_| showing) {
                    Some(run) => {
                        let now_s = player.clock.get();
                        let fall = camera::fall(g, &run.trace, now_s, start());
                        // What has let go is looked at too, once the film stands.
                        let still = !player.playing.get() && bench.phase.get() == Phase::Shown;
                        let gave = run
                            .trace
                            .time_of(EventKind::AnchorFails)
                            .filter(|at_s| still && now_s >= *at_s && now_s < at_s + 0.4);
                        Some(
                            if gave.is_some() { fall.with(camera::round(g.anchor, 0.5)) } else { fall }
                                .fit(shape, 0.5),
                        )
                    }
                    None => Some(start()),
                }
            })
        })?;
        Some(Pane { frame, width_px, height_px })
    });
    let stage = Stage {
        size,
        whole,
        layer: RwSignal::new(None),
        opener: StoredValue::new(String::new()),
        flag,
        pane,
    };
    provide_context(stage);
    // A fall is watched from near, and nothing lies over it.
    Effect::new(move |old: Option<Phase>| {
        let now = bench.phase.get();
        if old.is_some_and(|o| o != now) {
            stage.whole.set(false);
            if now != Phase::Choosing {
                stage.layer.set(None);
            }
        }
        now
    });
    stage
}

/// The stage of this page.
pub fn stage() -> Stage {
    expect_context()
}

/// Tells a signal the size of an element, now and whenever it changes.
fn watch_size(e: &web_sys::Element, size: RwSignal<(f64, f64)>) {
    let measured = e.clone();
    let tell = move || {
        let now = (f64::from(measured.client_width()), f64::from(measured.client_height()));
        if size.get_untracked() != now {
            size.set(now);
        }
    };
    tell();
    let seen = Closure::<dyn Fn()>::new(tell);
    if let Ok(watch) = web_sys::ResizeObserver::new(seen.as_ref().unchecked_ref()) {
        watch.observe(e);
    }
    seen.forget();
}

/// Picture, what lies over it, and what takes its place.
#[component]
pub fn Picture() -> impl IntoView {
    let stage = stage();
    let pane = NodeRef::<Div>::new();
    Effect::new(move |_| {
        if let Some(e) = pane.get() {
            watch_size(&e, stage.size);
        }
    });
    view! {
        <div class="pane" node_ref=pane prop:inert=move || stage.is_covered()>
            <Drawing />
            <Overlay />
        </div>
        <Layers />
    }
}
