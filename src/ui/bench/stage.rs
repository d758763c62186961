//! The stage: the pane that the picture is shown in, which part of the plane it shows, what lies over it.

use super::player::Player;
use super::state::{Bench, Phase};
use crate::physics::trace::{EventKind, Outcome};
use crate::scene::camera::{self, Pane};
use crate::scene::labels::Area;
use crate::texts::Stage as S;
use crate::ui::shared::view;
use leptos::prelude::*;

/// Wide enough for lenses of full size and a ruler, px.
pub const WIDE_PX: f64 = 760.0;

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
    /// The house from in front.
    Front,
    /// The same fall along the wall.
    Wall,
    /// Where there is room.
    Room,
    /// How sure the numbers are.
    Sure,
}

impl Layer {
    /// What it is called.
    pub fn name(self) -> S {
        match self {
            Layer::Part | Layer::SetUp => S::SetUpTab,
            Layer::Why => S::Why,
            Layer::Change => S::ChangeOne,
            Layer::Front => S::FrontTab,
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
            Layer::Front => "front",
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
            if t.is_sound() {
                all.push(Layer::Front);
            }
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
        // What came is about a place along the wall.
        if bench.from_front.get() && now == Phase::Choosing {
            bench.from_front.set(false);
            stage.layer.set(Some(Layer::Front));
        }
        now
    });
    stage
}

/// The stage of this page.
pub fn stage() -> Stage {
    expect_context()
}

/// How large the letters on plates are, px: in a room 3.4 % of the picture's height.
pub fn letters_px(large: bool, pane: &Pane) -> f64 {
    if large {
        (pane.height_px * 0.034).max(16.0)
    } else if pane.width_px < WIDE_PX {
        15.0
    } else {
        16.0
    }
}

/// Where something lies on the pane, as a style.
pub fn style_of(a: &Area, px: f64) -> String {
    format!(
        "left:{:.0}px;top:{:.0}px;width:{:.0}px;height:{:.0}px;font-size:{px:.0}px",
        a.x_px, a.y_px, a.width_px, a.height_px
    )
}
