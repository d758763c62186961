//! Force against time: the curve is drawn once for a run, only the cursor moves.

use super::player::player;
use super::state::bench;
use crate::grade::report::Report;
use crate::physics::trace::Outcome;
use crate::rules::{LimitKind, place};
use crate::texts::{Key, limit_quantity, number, quantity_against};
use crate::ui::shared::settings::settings;
use crate::units::{Quantity, Rounding, round_to};
use leptos::prelude::*;

const W: f64 = 640.0;
const H: f64 = 300.0;
const LEFT: f64 = 58.0;
const BOTTOM: f64 = 56.0;
const TOP: f64 = 30.0;
const RIGHT: f64 = 8.0;

/// Axes of one plot: longest time (s) and largest force (N) shown.
#[derive(Clone, Copy)]
struct Axes {
    end_s: f64,
    top_n: f64,
}

impl Axes {
    fn of(r: &Report, limit_n: Option<f64>) -> Axes {
        let top = r.trace.peak_force_n.max(limit_n.unwrap_or(0.0)).max(1000.0) * 1.12;
        Axes { end_s: r.trace.duration_s().min(4.0), top_n: top }
    }
    fn x(self, t: f64) -> f64 {
        LEFT + (W - LEFT - RIGHT) * (t / self.end_s).clamp(0.0, 1.0)
    }
    fn y(self, n: f64) -> f64 {
        H - BOTTOM - (H - BOTTOM - TOP) * (n / self.top_n)
    }
}

fn force_limit(r: &Report) -> Option<&'static crate::rules::Limit> {
    place(&r.set_up.place)?.limit(LimitKind::BodyForce)
}

/// A round step that gives three to six marks.
fn tick(top: f64) -> f64 {
    let raw = top / 4.0;
    let mag = 10f64.powf(raw.log10().floor());
    [1.0, 2.0, 5.0, 10.0].into_iter().map(|k| k * mag).find(|s| top / s <= 5.0).unwrap_or(raw)
}

#[component]
pub fn Plot() -> impl IntoView {
    let (bench, settings, player) = (bench(), settings(), player());
    let body = move || {
        let run = bench.run.get()?;
        let r = settings.reader();
        let limit = force_limit(&run);
        let limit_n = limit.map(|l| l.value);
        let ax = Axes::of(&run, limit_n);
        let mut curve = String::new();
        for s in run.trace.samples.iter().take_while(|s| s.time_s <= ax.end_s) {
            let cmd = if curve.is_empty() { 'M' } else { 'L' };
            curve.push_str(&format!("{cmd}{:.1} {:.1}", ax.x(s.time_s), ax.y(s.force_n)));
        }
        let area = format!("{curve}L{:.1} {:.1}L{LEFT} {:.1}Z", ax.x(ax.end_s), ax.y(0.0), ax.y(0.0));
        let peak = run.trace.peak_force_n;
        let peak_t = run.trace.time_of(crate::physics::trace::EventKind::PeakForce);
        // Where nothing stopped the worker, a force under its limit is no good news.
        let failed = match run.trace.outcome {
            Outcome::LetGo => Some(Key::PlotTitleLetGo),
            Outcome::Strikes => Some(Key::PlotTitleStrikes),
            Outcome::Stopped => None,
        };
        let title = match (failed, limit_n) {
            (Some(key), _) => r.f(key, &[("value", &r.q(Quantity::Force, peak, Rounding::Up))]),
            (None, Some(l)) => {
                let value = quantity_against(r.lang, r.units, Quantity::Force, peak, l, Rounding::Up);
                let lim = limit_quantity(r.lang, r.units, Quantity::Force, l);
                let key = if peak <= l { Key::PlotTitleUnder } else { Key::PlotTitleOver };
                r.f(key, &[("value", &value), ("limit", &lim)])
            }
            (None, None) => r.f(Key::PlotTitleNone, &[("value", &r.q(Quantity::Force, peak, Rounding::Up))]),
        };
        let k = Quantity::Force.shown_per_si(r.units);
        let step = tick(ax.top_n * k);
        let marks = (0..=((ax.top_n * k / step) as usize))
            .map(|i| {
                let v = i as f64 * step;
                let y = ax.y(v / k);
                view! {
                    <path class="grid" d=format!("M{LEFT} {y:.1}L{:.1} {y:.1}", W - RIGHT) />
                    <text x=LEFT - 6.0 y=format!("{:.1}", y + 4.5) text-anchor="end">
                        {number(r.lang, round_to(v, 1, Rounding::Nearest), usize::from(step < 1.0))}</text>
                }
            })
            .collect_view();
        let tstep = if ax.end_s > 2.0 { 0.5 } else { 0.2 };
        let times = (0..=((ax.end_s / tstep) as usize))
            .map(|i| {
                let t = i as f64 * tstep;
                view! { <text x=format!("{:.1}", ax.x(t)) y=H - BOTTOM + 24.0 text-anchor="middle">{number(r.lang, t, 1)}</text> }
            })
            .collect_view();
        let limit_line = limit_n.map(|l| {
            let name = place(&run.set_up.place).map_or("", |p| r.lang.of(&p.name)).to_owned();
            let label = r.f(Key::PlotLimit, &[("limit", &limit_quantity(r.lang, r.units, Quantity::Force, l)), ("place", &name)]);
            let y = ax.y(l);
            view! {
                <clipPath id="over"><rect x=LEFT y=TOP width=W - LEFT - RIGHT height=(y - TOP).max(0.0) /></clipPath>
                <path class="excess" d=area.clone() clip-path="url(#over)" />
                <path class="limit" d=format!("M{LEFT} {y:.1}L{:.1} {y:.1}", W - RIGHT) />
                <text class="limit-name" x=W - RIGHT - 4.0 y=format!("{:.1}", y + 24.0) text-anchor="end">{label}</text>
            }
        });
        let peak_mark = peak_t.map(|t| {
            let (x, y) = (ax.x(t), ax.y(peak));
            let label = r.f(Key::PlotPeak, &[("value", &r.q(Quantity::Force, peak, Rounding::Up))]);
            let (anchor, dx) = if x > W * 0.6 { ("end", -10.0) } else { ("start", 10.0) };
            view! {
                <path class="peak" d=format!("M{:.1} {:.1}l6 -6l6 6l-6 6Z", x - 6.0, y) />
                <text x=format!("{:.1}", x + dx) y=format!("{:.1}", y + 4.0) text-anchor=anchor>{label}</text>
            }
        });
        let ghost = bench.ghost.get().map(|g| {
            let mut d = String::new();
            for s in g.trace.samples.iter().take_while(|s| s.time_s <= ax.end_s) {
                let cmd = if d.is_empty() { 'M' } else { 'L' };
                d.push_str(&format!("{cmd}{:.1} {:.1}", ax.x(s.time_s), ax.y(s.force_n.min(ax.top_n))));
            }
            view! { <path class="curve-ghost" d=d /> }
        });
        let unit = crate::texts::symbol(r.lang, Quantity::Force, r.units);
        let cursor = move || format!("M{0:.1} {TOP}L{0:.1} {1:.1}", ax.x(player.clock.get()), H - BOTTOM);
        let label = title.clone();
        Some(view! {
            <h3>{title}</h3>
            <svg class="plot" viewBox=format!("0 0 {W} {H}") role="img" aria-label=label>
                {marks}{times}
                <text class="axis" x=LEFT y=TOP - 9.0>{r.f(Key::PlotAxisForce, &[("unit", unit)])}</text>
                <text class="axis" x=W - RIGHT y=H - 2.0 text-anchor="end">{r.t(Key::PlotAxisTime)}</text>
                <path class="base" d=format!("M{LEFT} {TOP}L{LEFT} {0:.1}L{1:.1} {0:.1}", H - BOTTOM, W - RIGHT) />
                {ghost}
                <path class="curve" d=curve />
                {limit_line}
                {peak_mark}
                <path class="cursor" d=cursor />
            </svg>
        })
    };
    view! { <section class="force" aria-label=settings.s(Key::PlotRegion)>{body}</section> }
}
