//! Many falls of the same set-up: a sentence and a small plot that fill as the engine goes on.

use super::state::bench;
use crate::geometry::SetUp;
use crate::physics::trace::Outcome;
use crate::scenario::Scenario;
use crate::studies::spread::{FALLS, FEW, SpreadFall, summary};
use crate::texts::Key;
use crate::ui::shared::asking;
use crate::ui::shared::settings::settings;
use crate::units::{Quantity, Rounding};
use crate::worker::questions::SomeOfSpread;
use leptos::prelude::*;

/// Falls asked for at once: under half a second of work, so that a Play in between does not wait.
const AT_ONCE: u32 = 16;
/// Width of one bar, m.
const BAR_M: f64 = 0.25;
const BARS: usize = 18;

/// Draws with this seed and number; asks for the next part while `going` stays the same.
fn part(going: RwSignal<u32>, mine: u32, ask: (SetUp, u64), out: RwSignal<Vec<SpreadFall>>) {
    let first = out.with_untracked(|o| o.len() as u32);
    if first >= FALLS {
        going.set(0);
        return;
    }
    let count = AT_ONCE.min(FALLS - first);
    let (s, seed) = ask;
    asking::ask(SomeOfSpread { set_up: s.clone(), seed, first, count }, move |answer| {
        if going.try_get_untracked() != Some(mine) {
            return;
        }
        match answer {
            Ok(falls) if !falls.is_empty() => {
                out.update(|o| o.extend(falls));
                part(going, mine, (s, seed), out);
            }
            _ => drop(going.try_set(0)),
        }
    });
}

/// Shares of the falls by room left: one bar for those that struck or let go, then a quarter of a
/// metre each.
fn bars(all: &[SpreadFall]) -> [usize; BARS] {
    let mut out = [0; BARS];
    for f in all.iter().filter(|f| f.settled.sound) {
        let i = if f.settled.outcome == Outcome::Stopped {
            1 + (f.settled.room_left_m.max(0.0) / BAR_M) as usize
        } else {
            0
        };
        out[i.min(BARS - 1)] += 1;
    }
    out
}

/// The spread of a set-up, on request.
#[component]
pub fn Spread() -> impl IntoView {
    let (bench, settings) = (bench(), settings());
    let falls = RwSignal::new(Vec::<SpreadFall>::new());
    let going = RwSignal::new(0u32);
    let turn = StoredValue::new(0u32);
    let seed = RwSignal::new(0u64);
    on_cleanup(move || {
        let _ = going.try_set(0);
    });
    let all = || FALLS.to_string();
    let start = move |_| {
        turn.update_value(|t| *t += 1);
        falls.set(vec![]);
        seed.set((js_sys::Math::random() * 1e6) as u64);
        let Ok(s) = bench.scenario.with_untracked(Scenario::set_up) else { return };
        going.set(turn.get_value());
        part(going, turn.get_value(), (s, seed.get_untracked()), falls);
    };
    let words = move || {
        let r = settings.reader();
        falls.with(|f| {
            if f.is_empty() {
                return vec![];
            }
            let s = summary(f);
            let n = |x: usize| x.to_string();
            let mut out = vec![r.f(
                Key::SpreadStruck,
                &[("counted", &n(s.counted)), ("struck", &n(s.struck)), ("letgo", &n(s.let_go))],
            )];
            if let Some(b) = s.room_m {
                let low = r.q(Quantity::Length, b.low, Rounding::Down);
                let middle = r.q(Quantity::Length, b.middle, Rounding::Down);
                out.push(r.f(Key::SpreadRoom, &[("low", &low), ("middle", &middle)]));
            }
            if let Some(b) = s.force_n {
                let high = r.q(Quantity::Force, b.high, Rounding::Up);
                let middle = r.q(Quantity::Force, b.middle, Rounding::Up);
                out.push(r.f(Key::SpreadForce, &[("high", &high), ("middle", &middle)]));
            }
            // A few falls say nothing yet of what matters.
            if s.counted >= FEW {
                out.push(match s.matters {
                    Some((u, _)) => r.f(Key::SpreadMatters, &[("what", r.t(u.label()))]),
                    None => r.t(Key::SpreadMattersNone).to_owned(),
                });
            }
            if s.unsound > 0 {
                out.push(r.f(Key::SpreadUnsound, &[("value", &n(s.unsound))]));
            }
            out
        })
    };
    let plot = move || {
        let r = settings.reader();
        falls.with(|f| {
            if f.is_empty() {
                return None;
            }
            let bars = bars(f);
            let top = bars.iter().copied().max().unwrap_or(1).max(1) as f64;
            let rects = bars
                .into_iter()
                .enumerate()
                .map(|(i, n)| {
                    let h = 96.0 * n as f64 / top;
                    let x = 8.0 + i as f64 * 17.0 + if i > 0 { 6.0 } else { 0.0 };
                    view! { <rect class=if i == 0 { "struck" } else { "" } x=x y=104.0 - h width="15" height=h /> }
                })
                .collect_view();
            let far = r.q(Quantity::Length, (BARS - 2) as f64 * BAR_M, Rounding::Nearest);
            let zero = r.q(Quantity::Length, 0.0, Rounding::Nearest);
            Some(view! {
                <svg class="bars" viewBox="0 0 330 132" role="img" aria-label=r.t(Key::SpreadPlot)>
                    {rects}
                    <path d="M4 104.5H324M28 98V110" />
                    <text x="30" y="122">{zero}</text>
                    <text x="318" y="122" text-anchor="end">{far}</text>
                    <text class="left" x="4" y="131">"✕"</text>
                </svg>
                <p class="hint">"✕ "{r.t(Key::SpreadBarStruck)}". "{r.t(Key::SpreadPlot)}</p>
            })
        })
    };
    view! {
        <section class="findings spread" aria-labelledby="spread-h">
            <h2 id="spread-h">{settings.s(Key::SpreadHeading)}</h2>
            <p class="hint">{move || settings.reader().f(Key::SpreadHint, &[("all", &all())])}</p>
            <Show when=move || going.get() == 0 fallback=move || view! {
                <button type="button" on:click=move |_| going.set(0)>{settings.s(Key::SpreadStop)}</button>
            }>
                <button type="button" id="spread" on:click=start>
                    {move || settings.reader().f(Key::SpreadRun, &[("all", &all())])}</button>
            </Show>
            {move || {
                let done = falls.with(Vec::len);
                (done > 0).then(|| view! {
                    <p class="sev" id="spread-so">{settings.reader().f(Key::SpreadSo, &[("done", &done.to_string()), ("all", &all())])}
                        " "{settings.reader().f(Key::SpreadSeed, &[("seed", &seed.get().to_string())])}</p>
                })
            }}
            {move || words().into_iter().map(|w| view! { <p>{w}</p> }).collect_view()}
            {plot}
        </section>
    }
}
