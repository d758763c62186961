//! The flag of the guess beside a ruler: where do the boots stop?

use super::stage::{WIDE_PX, letters_px, stage};
use super::state::{Phase, bench, start_m};
use crate::geometry::p;
use crate::texts::Stage as S;
use crate::ui::shared::settings::settings;
use crate::units::{Quantity, Rounding};
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// The ruler and the flag: where do the boots stop?
#[component]
pub fn Flag() -> impl IntoView {
    let (bench, settings, stage) = (bench(), settings(), stage());
    let shown = move || bench.phase.get() == Phase::Choosing && !stage.whole.get() && !bench.has_in_hand();
    // Where the finger took hold, px, and the flag's height then, m: a drag moves it by as much.
    let held = StoredValue::new(None::<(f64, f64)>);
    let height = Memo::new(move |_| {
        bench.geometry.with(|g| g.as_ref().map_or(0.0, |g| bench.guess.get().unwrap_or_else(|| start_m(g))))
    });
    let to = move |ev: &web_sys::PointerEvent| {
        let (Some((from_px, from_m)), Some(pane)) = (held.get_value(), stage.pane.get_untracked()) else {
            return;
        };
        bench.set_guess(from_m - (f64::from(ev.client_y()) - from_px) / pane.px_per_m());
    };
    let take = move |ev: web_sys::PointerEvent| {
        ev.prevent_default();
        held.set_value(Some((f64::from(ev.client_y()), height.get_untracked())));
        stage.flag.set(true);
        if let Some(e) = ev.current_target().and_then(|t| t.dyn_into::<web_sys::Element>().ok()) {
            let _ = e.set_pointer_capture(ev.pointer_id());
        }
    };
    let leave = move |_| {
        held.set_value(None);
        stage.flag.set(false);
    };
    move || {
        if !shown() {
            return None;
        }
        let (pane, g) = (stage.pane.get()?, bench.geometry.get()?);
        let r = settings.reader();
        let wide = pane.width_px >= WIDE_PX;
        let px = letters_px(settings.large.get(), &pane);
        let x = pane.width_px - if wide { px * 13.0 } else { 8.0 };
        // Ticks each metre on a wide pane.
        let feet = settings.units.get() == crate::units::Units::FeetPounds;
        let unit = if feet { 5.0 * crate::units::FT_M } else { 1.0 };
        let mut ticks = String::new();
        let mut numbers = Vec::new();
        if wide {
            for i in 0..=30 {
                let y_m = unit * f64::from(i);
                let y = pane.px(p(0.0, y_m)).1;
                if y > 14.0 && y < pane.height_px - 6.0 {
                    ticks.push_str(&format!("M{x:.0} {y:.0}h-10"));
                    numbers.push((y, if feet { 5 * i } else { i }));
                }
            }
            ticks.push_str(&format!("M{x:.0} 0V{:.0}", pane.px(p(0.0, 0.0)).1.min(pane.height_px)));
        }
        let boots_y = pane.px(g.soles).1;
        let now = r.f(S::BootsNow, &[("value", &r.q(Quantity::Length, g.soles.y, Rounding::Nearest))]);
        let from_x = pane.px(p(g.soles.x + 0.25, 0.0)).0;
        // Above the corner that opens the set-up, under the thumbnails.
        let at_y = pane
            .px(p(0.0, height.get()))
            .1
            .clamp(152.0, (pane.height_px - if wide { 86.0 } else { 80.0 }).max(152.0));
        let said = bench.guess.get().is_some();
        let value = r.q(Quantity::Length, height.get(), Rounding::Nearest);
        let line = format!("M{:.0} {at_y:.0}H{x:.0}", from_x.min(x - 40.0));
        let dashed = format!("M{from_x:.0} {boots_y:.0}H{x:.0}");
        Some(view! {
            <svg class="lines" aria-hidden="true"><path class="leader" d=ticks /><path class="leader dotted" d=dashed /><path class="guess-line" class:said=said d=line /></svg>
            {numbers.into_iter().map(|(y, n)| view! { <span class="tick" aria-hidden="true" prop:style=format!("left:{:.0}px;top:{:.0}px", x - 44.0, y - 10.0)>{n}</span> }).collect_view()}
            {wide.then(|| view! { <span class="boots-now" prop:style=format!("left:{:.0}px;top:{:.0}px;font-size:{px:.0}px", x + 8.0, boots_y - px * 0.8)>{now}</span> })}
            <div class="flag" class:said=said prop:style=format!("{};top:{at_y:.0}px;font-size:{px:.0}px", if wide { format!("left:{x:.0}px") } else { "right:0".to_owned() }) title=r.t(S::GuessHint)
                on:pointerdown=take on:pointermove=move |ev| to(&ev) on:pointerup=leave on:pointercancel=leave>
                {if pane.width_px < 360.0 { format!("{value}?") } else { r.f(S::GuessFlag, &[("value", &value)]) }}</div>
        })
    }
}
