//! What lies over the picture in pixels: lenses on the parts, the flag of the guess, marks after a fall, and the
//! corners: the whole house, the set-up, one step back.

use super::flag::Flag;
use super::hand::told;
use super::lenses::{InHand, Lenses};
use super::marks::Marks;
use super::sentence::glance;
use super::stage::{Layer, stage};
use super::state::{Bench, Phase, Said, bench};
use crate::geometry::p;
use crate::physics::trace::Outcome;
use crate::scene::at;
use crate::scene::worker::Bones;
use crate::texts::Stage as S;
use crate::ui::shared::figure::decisive_s;
use crate::ui::shared::settings::settings;
use leptos::prelude::*;

/// The set-up in one glance, and the whole house.
#[component]
fn Corners() -> impl IntoView {
    let (bench, settings, stage) = (bench(), settings(), stage());
    let choosing = move || bench.phase.get() == Phase::Choosing;
    let stepped = move |step: fn(Bench)| {
        step(bench);
        bench.said.set(bench.scenario.with_untracked(|s| {
            told(bench.held.get_untracked(), settings.reader_now(), s, crate::texts::Bench::HandHas)
        }));
    };
    let still = move || choosing() || bench.phase.get() == Phase::Shown;
    let thumb = move || {
        let pane = stage.pane.get()?;
        bench.geometry.with(|g| {
            let g = g.as_ref()?;
            let all = bench.drawn.with(|s| crate::scene::camera::whole(g, s)).fit(1.0, 0.5);
            let k = 56.0 / all.width_m();
            let x = |m: f64| ((m - all.left_m) * k).clamp(1.0, 55.0);
            let y = |m: f64| ((all.top_m - m) * k).clamp(1.0, 55.0);
            let far = 2.0 * g.ridge.x;
            let house = format!(
                "M{:.1} {:.1}L{:.1} {:.1}L{:.1} {:.1}M{:.1} {:.1}V{:.1}M{:.1} {:.1}V{:.1}M1 {:.1}H55",
                x(g.far_eave.x), y(g.far_eave.y), x(g.ridge.x), y(g.ridge.y), x(g.eave.x), y(g.eave.y),
                x(0.0), y(g.fascia.y), y(0.0), x(far), y(g.fascia.y), y(0.0), y(0.0)
            );
            let f = pane.frame;
            let frame = format!(
                "M{:.1} {:.1}H{:.1}V{:.1}H{:.1}Z",
                x(f.left_m), y(f.top_m), x(f.right_m), y(f.bottom_m), x(f.left_m)
            );
            Some(view! { <svg viewBox="0 0 56 56" aria-hidden="true"><path d=house /><path class="frame" d=frame /></svg> })
        })
    };
    view! {
        <Show when=still>
            <button type="button" class="thumb" id="thumb" aria-pressed=move || stage.whole.get().to_string()
                aria-label=move || settings.t(if stage.whole.get() { S::Near } else { S::WholeHouse })
                on:click=move |_| stage.whole.update(|w| *w = !*w)>{thumb}</button>
        </Show>
        <Show when=move || bench.phase.get() == Phase::Shown>
            <button type="button" class="today" id="leave-fall" aria-label=settings.s(crate::texts::Bench::BackToSetUp)
                on:click=move |_| { bench.leave_fall(); crate::ui::shared::view::to_view("scene") }>{settings.s(S::SetUpTab)}</button></Show>
        <Show when=still>
            <button type="button" class="thumb front-thumb" id="front" aria-label=settings.s(S::FrontTab)
                on:click=move |_| stage.open(Layer::Front)>
                <svg viewBox="0 0 56 56" aria-hidden="true"><path d="M8 24V46H48V24M4 24H52L46 10H10ZM16 29h9v8h-9ZM33 29h8v17h-8Z" /></svg></button></Show>
        <Show when=choosing>
            <button type="button" class="today" id="today" on:click=move |_| stage.open(Layer::SetUp)>
                <span>{settings.s(S::SetUpTab)}</span><small>{move || bench.scenario.with(|s| glance(settings.reader(), s))}</small></button>
            <div class="hand-tools">
                <button type="button" class="icon" id="undo" prop:disabled=move || !bench.can_undo() aria-label=settings.s(crate::texts::Key::Undo)
                    on:click=move |_| stepped(Bench::undo)><i class="i-undo" aria-hidden="true"></i></button>
                <button type="button" class="icon" id="redo" prop:disabled=move || !bench.can_redo() aria-label=settings.s(crate::texts::Key::Redo)
                    on:click=move |_| stepped(Bench::redo)><i class="i-redo" aria-hidden="true"></i></button>
            </div>
        </Show>
    }
}

/// What the bones beside the worker are: the fall before, named at the line of its boots.
#[component]
fn GhostName() -> impl IntoView {
    let (bench, settings, stage) = (bench(), settings(), stage());
    move || {
        if bench.phase.get() != Phase::Choosing || bench.has_in_hand() {
            return None;
        }
        let (pane, run) = (stage.pane.get()?, bench.ghost.get()?);
        if bench.drawn.with(|s| s.house != run.set_up.house) {
            return None;
        }
        let g = run.set_up.geometry();
        let q = at(&run.set_up, g, &run.trace, decisive_s(&run.trace))?;
        let b = Bones::of(&q.limbs)?.beside(g);
        let low = b.boots.iter().flatten().fold(f64::INFINITY, |a, q| a.min(q.y));
        let (x, y) = pane.px(p(b.boots[0][1].x + 0.7, low));
        // Under its line where there is room for it: over the corner with the set-up, within the pane.
        let room = x > 110.0 && x < pane.width_px - 8.0 && y > 4.0 && y < pane.height_px - 90.0;
        room.then(|| {
            view! { <span class="ghost-name" prop:style=format!("right:{:.0}px;top:{:.0}px", pane.width_px - x, y + 2.0)>{settings.s(S::GhostName)}</span> }
        })
    }
}

/// All of it.
#[component]
pub fn Overlay() -> impl IntoView {
    let bench = bench();
    // Where the boots stop is asked of who says that it holds.
    let holds = move || bench.prediction.get() == Some(Said::Ends(Outcome::Stopped));
    view! {
        <div class="overlay">
            <Lenses />
            <InHand />
            <Show when=holds><Flag /></Show>
            <Marks />
            <GhostName />
            <Corners />
        </div>
    }
}
