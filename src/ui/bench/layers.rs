//! What can lie in the picture's place, one at a time: a part from near, today's set-up, why a fall went as it
//! did, one change, and three further pictures of it.

use super::along_wall::Sideways;
use super::drawer::Drawer;
use super::hand::{Hand, part_name};
use super::map::RoomMap;
use super::plot::Plot;
use super::spread::Spread;
use super::stage::{Stage, stage};
use super::state::{Bench, Phase, bench};
use super::sums::{DropPieces, EnergyPieces};
use super::verdict::{Changes, Findings, Told};
use crate::physics::trace::Outcome;
use crate::texts::Stage as S;
use crate::ui::shared::settings::settings;
use crate::ui::shared::view;
use leptos::prelude::*;

/// What lies there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Layer {
    /// The part in hand, from near.
    Part,
    /// Everything else of the set-up.
    SetUp,
    /// Why the fall went so.
    Why,
    /// One change.
    Change,
    /// The same fall along the wall.
    Wall,
    /// Where there is room.
    Room,
    /// How sure the numbers are.
    Sure,
}

impl Layer {
    fn name(self) -> S {
        match self {
            Layer::Part | Layer::SetUp => S::SetUpTab,
            Layer::Why => S::Why,
            Layer::Change => S::ChangeOne,
            Layer::Wall => S::WallTab,
            Layer::Room => S::RoomTab,
            Layer::Sure => S::SureTab,
        }
    }

    /// For a test or a style sheet.
    pub fn id(self) -> &'static str {
        match self {
            Layer::Part => "part",
            Layer::SetUp => "set-up",
            Layer::Why => "why",
            Layer::Change => "change",
            Layer::Wall => "wall",
            Layer::Room => "room",
            Layer::Sure => "sure",
        }
    }

    /// Those of a fall, as far as it has them.
    pub fn of_fall(bench: Bench) -> Vec<Layer> {
        bench.run.with(|r| {
            let Some(t) = r.as_ref().map(|r| &r.trace) else { return vec![] };
            let mut all = vec![Layer::Why, Layer::Change];
            if t.is_sound() && t.outcome == Outcome::Stopped {
                all.push(Layer::Wall);
            }
            if t.is_sound() && t.outcome != Outcome::LetGo {
                all.extend([Layer::Room, Layer::Sure]);
            }
            all
        })
    }
}

impl Stage {
    /// Puts a layer in the picture's place, with the focus in it.
    pub fn open(self, layer: Layer) {
        if self.layer.get_untracked().is_none() {
            self.opener.set_value(document().active_element().map_or(String::new(), |e| e.id()));
        }
        self.layer.set(Some(layer));
        view::to_view("layer-h");
    }

    /// Takes it away again; the focus goes back to what opened it.
    pub fn close(self) {
        self.layer.set(None);
        view::focus_on(self.opener.get_value(), "scene");
    }

    /// Whether a layer lies over the whole picture.
    pub fn is_covered(self) -> bool {
        let beside = |l| matches!(l, Layer::Part | Layer::SetUp) && self.size.get().0 >= 760.0;
        self.layer.get().is_some_and(|l| !beside(l))
    }
}

/// The layer that lies there, if any.
#[component]
pub fn Layers() -> impl IntoView {
    let (bench, settings, stage) = (bench(), settings(), stage());
    let open = Memo::new(move |_| {
        stage.layer.get().filter(|l| {
            let before = matches!(l, Layer::Part | Layer::SetUp);
            let phase = bench.phase.get();
            if before {
                phase == Phase::Choosing || *l == Layer::SetUp && phase == Phase::Shown
            } else {
                phase == Phase::Shown
            }
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
