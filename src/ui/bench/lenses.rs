//! The parts as lenses: while a set-up is chosen each shows what is seen, never whether it is right; while a part is
//! in hand it is shown from near on the other side of the picture, with what stops it.

use super::drawer::open_card;
use super::hand::{lens_words, part_name};
use super::sentence::{GEAR_CARD, HARNESS_CARD};
use super::stage::{Layer, WIDE_PX, letters_px, stage, style_of};
use super::state::{Phase, bench};
use crate::geometry::{Geometry, P, p};
use crate::practice::hand::Held;
use crate::practice::inspection::GearPart;
use crate::scenario::{HarnessFit, Scenario};
use crate::scene::Scene;
use crate::scene::camera::Pane;
use crate::scene::labels::Area;
use crate::scene::lens::{self, Lens};
use crate::scene::standing_scene;
use crate::scene::worker::Bones;
use crate::texts::say::Reader;
use crate::texts::{Key, Stage as S};
use crate::ui::shared::settings::settings;
use crate::units::{Quantity, Rounding};
use leptos::prelude::*;

/// What a lens shows.
#[derive(Clone, Copy, PartialEq)]
enum Seen {
    /// A part that can be moved.
    Part(Held),
    /// The harness's straps.
    Harness,
    /// What else is to be looked at before the climb.
    Gear,
}

impl Seen {
    const ALL: [Seen; 6] = [
        Seen::Part(Held::Anchor),
        Seen::Part(Held::Grab),
        Seen::Part(Held::Worker),
        Seen::Gear,
        Seen::Harness,
        Seen::Part(Held::LadderFoot),
    ];

    /// Where it is in the scene, m; the gear is all of it, and nowhere.
    fn at(self, scene: &Scene, g: &Geometry) -> Option<P> {
        match self {
            Seen::Part(Held::Worker) => Some(scene.dring),
            Seen::Part(part) => Some(part.at(g)),
            Seen::Harness => Some(Bones::of(&scene.limbs)?.belt[1]),
            Seen::Gear => None,
        }
    }

    fn paths(self, s: &Scenario) -> Lens {
        match self {
            Seen::Part(part) => lens::of(part, s),
            Seen::Harness => lens::harness(s.worker.harness),
            Seen::Gear => lens::gear(),
        }
    }
}

/// The parts as lenses while a set-up is chosen: what is seen, never whether it is right.
#[component]
pub fn Lenses() -> impl IntoView {
    let (bench, settings, stage) = (bench(), settings(), stage());
    move || {
        if bench.phase.get() != Phase::Choosing || stage.whole.get() || bench.has_in_hand() {
            return None;
        }
        let pane = stage.pane.get()?;
        let g = bench.geometry.get()?;
        let r = settings.reader();
        let wide = pane.width_px >= WIDE_PX;
        let px = if settings.large.get() {
            letters_px(true, &pane) * 0.8
        } else if wide {
            15.0
        } else {
            14.0
        };
        // Where the pane is small or the letters are large, what is left is a tap further: in the set-up.
        let parts = if wide && !settings.large.get() { &Seen::ALL[..] } else { &Seen::ALL[..3] };
        let places = lens_places(&pane, &g, parts.len(), px);
        let now = bench.drawn.get();
        let scene = standing_scene(&now, &g);
        let mut leaders = String::new();
        let lenses = parts
            .iter()
            .zip(places)
            .map(|(&part, a)| {
                if let Some(at) = part.at(&scene, &g) {
                    leaders.push_str(&lens_leader(&a, px * if wide { 2.9 } else { 1.4 }, pane.px(at), &pane));
                }
                lens_button(part, &a, px, r, &now, wide)
            })
            .collect_view();
        Some(
            view! { <svg class="lines" aria-hidden="true"><path class="leader dotted" d=leaders /></svg>{lenses} },
        )
    }
}

/// Lens and the words under it, beside the house on a wide pane, down the left edge on a phone.
fn lens_places(pane: &Pane, g: &Geometry, count: usize, px: f64) -> Vec<Area> {
    let wide = pane.width_px >= WIDE_PX;
    if !wide {
        let high = ((pane.height_px - 8.0) / count as f64).min(118.0);
        let side = (high - px * 1.4 - 6.0).clamp(48.0, 84.0);
        return (0..count)
            .map(|i| Area {
                x_px: 4.0,
                y_px: 6.0 + high * i as f64,
                width_px: 106.0,
                height_px: side + px * 1.4,
            })
            .collect();
    }
    let wall = pane.px(p(0.0, 0.0)).0.clamp(320.0, pane.width_px * 0.62);
    let side = (pane.height_px * 0.19).clamp(76.0, 150.0);
    let (cell_w, cell_h) = (side + 40.0, side + px * 2.9);
    let per_row = (((wall - 20.0) / cell_w) as usize).clamp(1, count.div_ceil(2));
    let rows = count.div_ceil(per_row);
    // Under the eave, where the house is only house.
    let eave = pane.px(g.eave).1.clamp(0.0, pane.height_px);
    let top = (eave + 26.0).min(pane.height_px - cell_h * rows as f64 - 8.0).max(8.0);
    (0..count)
        .map(|i| Area {
            x_px: 16.0 + cell_w * (i % per_row) as f64,
            y_px: top + (cell_h + 6.0) * (i / per_row) as f64,
            width_px: cell_w - 12.0,
            height_px: cell_h,
        })
        .collect()
}

/// From the lens's rim to its part, or to where the part leaves the picture.
fn lens_leader(a: &Area, words_px: f64, at: (f64, f64), pane: &Pane) -> String {
    let r = a.width_px.min(a.height_px - words_px) / 2.0;
    let (cx, cy) = (a.x_px + a.width_px / 2.0, a.y_px + r.min(a.height_px / 2.0));
    let (dx, dy) = (at.0 - cx, at.1 - cy);
    let far = dx.hypot(dy);
    if far < r * 1.2 {
        return String::new();
    }
    let end = (at.0.clamp(0.0, pane.width_px), at.1.clamp(0.0, pane.height_px));
    format!("M{:.0} {:.0}L{:.0} {:.0}", cx + dx / far * r, cy + dy / far * r, end.0, end.1)
}

fn lens_button(seen: Seen, a: &Area, px: f64, r: Reader, s: &Scenario, wide: bool) -> impl IntoView + use<> {
    let (bench, stage) = (bench(), stage());
    let paths = seen.paths(s).into_iter().map(|(c, d)| view! { <path class=c d=d /> }).collect_view();
    let (name, state, told) = match seen {
        Seen::Part(part) => (r.t(part_name(part)), state_words(part, r, s), lens_words(part, r, s)),
        Seen::Harness => {
            let fit = r.t(if s.worker.harness == HarnessFit::Snug { Key::FitSnug } else { Key::FitLoose });
            (r.t(S::PartHarness), fit.to_owned(), String::new())
        }
        Seen::Gear => {
            let all = GearPart::of(s);
            let n = bench.looked.with(|l| l.iter().filter(|x| all.contains(&x.0)).count());
            (
                r.t(S::PartGear),
                r.f(Key::GearSeen, &[("seen", &n.to_string()), ("all", &all.len().to_string())]),
                String::new(),
            )
        }
    };
    // What is seen comes first, so that it can be spoken to.
    let shown = if wide { format!("{name} {state}") } else { name.to_owned() };
    let label = format!("{shown}. {told}");
    let id = match seen {
        Seen::Part(part) => format!("{part:?}"),
        Seen::Harness => "Harness".to_owned(),
        Seen::Gear => "Gear".to_owned(),
    };
    let open = move |_| match seen {
        Seen::Part(part) => {
            bench.held.set(part);
            stage.open(Layer::Part);
        }
        // Its card in the drawer.
        Seen::Harness | Seen::Gear => {
            stage.open(Layer::SetUp);
            let card = if seen == Seen::Gear { GEAR_CARD } else { HARNESS_CARD };
            request_animation_frame(move || request_animation_frame(move || open_card(card)));
        }
    };
    view! {
        <button type="button" class="lens-button" id=format!("lens-{id}") data-part=id prop:style=style_of(a, px) aria-label=label on:click=open>
            <svg class="lens" viewBox="0 0 120 120" aria-hidden="true">{paths}</svg>
            <span><strong>{name}</strong>" "{wide.then(|| view! { <small>{state}</small> })}</span>
        </button>
    }
}

/// What a lens shows, in three words.
fn state_words(part: Held, r: Reader, s: &Scenario) -> String {
    use crate::texts::Bench as W;
    match part {
        Held::Anchor => r.t(s.anchor.kind.label()).to_owned(),
        Held::Grab => crate::texts::say::offset(r, s.grab.above_dring_m),
        Held::Worker => r.t(if s.lanyard.clipped { W::Clipped } else { W::NotClipped }).to_owned(),
        Held::LadderFoot => {
            r.t(if s.ladder.tied { Key::LadderTiedYes } else { Key::LadderTiedNo }).to_owned()
        }
    }
}

/// While a part is in hand: the part from near on the other side of the picture, and what stops it.
#[component]
pub fn InHand() -> impl IntoView {
    let (bench, settings, stage) = (bench(), settings(), stage());
    move || {
        if bench.phase.get() != Phase::Choosing || !bench.has_in_hand() {
            return None;
        }
        let (pane, g) = (stage.pane.get()?, bench.geometry.get()?);
        let r = settings.reader();
        let part = bench.held.get();
        let now = bench.drawn.get();
        let (x, y) = pane.px(part.at(&g));
        let side = (pane.height_px * 0.34).clamp(96.0, 190.0);
        // Opposite the finger, never over the part.
        let left = if x > pane.width_px / 2.0 { 10.0 } else { pane.width_px - side - 10.0 };
        let top = if y > pane.height_px / 2.0 { 10.0 } else { (pane.height_px - side - 44.0).max(10.0) };
        let paths =
            lens::of(part, &now).into_iter().map(|(c, d)| view! { <path class=c d=d /> }).collect_view();
        let field = part.field(&now);
        let value = r.q(Quantity::Length, field.get(&now).unwrap_or(0.0), Rounding::Nearest);
        let stop = bench.stop.get().map(|s| {
            let (sx, sy) = pane.px(s.at);
            // A bar across its way, with three strokes beyond, and one word.
            let (wx, wy) = (s.way.x, -s.way.y);
            let (bx, by) = (sx + wx * 34.0, sy + wy * 34.0);
            let mut d = format!("M{:.0} {:.0}L{:.0} {:.0}", bx - wy * 22.0, by + wx * 22.0, bx + wy * 22.0, by - wx * 22.0);
            for k in [-14.0, 0.0, 14.0] {
                d.push_str(&format!("M{:.0} {:.0}l{:.0} {:.0}", bx - wy * k, by + wx * k, wx * 9.0 - wy * 5.0, wy * 9.0 + wx * 5.0));
            }
            let style = format!("left:{:.0}px;top:{:.0}px", (bx + 30.0).min(pane.width_px - 96.0), (by - 17.0).clamp(4.0, pane.height_px - 38.0));
            view! { <svg class="lines" aria-hidden="true"><path class="stop-mark" d=d /></svg><span class="stop-word" prop:style=style>{r.t(s.word)}</span> }
        });
        Some(view! {
            <div class="hand-lens" aria-hidden="true" prop:style=format!("left:{left:.0}px;top:{top:.0}px;width:{side:.0}px")>
                <svg class="lens" viewBox="0 0 120 120">{paths}</svg><strong>{value}</strong></div>
            {stop}
        })
    }
}
