//! Where there is room: a map over two choices, filled by the engine from coarse to fine, and a
//! cursor that tells a cell and loads it.

use super::state::{Bench, bench};
use crate::rules::reserve;
use crate::scenario::Stance;
use crate::studies::map::{COLUMNS, Cell, Knot, Map, MapKind, ROWS, cell_scenario};
use crate::texts::Key;
use crate::ui::shared::asking;
use crate::ui::shared::settings::{Settings, settings};
use crate::units::{Quantity, Rounding};
use crate::worker::questions::{MapSoFar, MoreOfMap};
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// Side of a cell in the drawing.
const SIDE: f64 = 3.6;

/// How a cell is drawn: worst first.
const CLASSES: [(&str, Key); 7] = [
    ("impossible", Key::MapImpossible),
    ("unknown", Key::MapUnknown),
    ("r0", Key::MapMissing),
    ("r1", Key::MapShort),
    ("r2", Key::MapEnough),
    ("r3", Key::MapOne),
    ("r4", Key::MapTwo),
];

fn class(c: Cell, reserve_m: f64) -> usize {
    match c {
        Cell::Impossible => 0,
        Cell::Unknown => 1,
        Cell::Room(m) if m < 0.0 => 2,
        Cell::Room(m) if m < reserve_m => 3,
        Cell::Room(m) if m < 1.0 => 4,
        Cell::Room(m) if m < 2.0 => 5,
        Cell::Room(_) => 6,
    }
}

/// One path for each class, from runs of equal cells.
fn fills(map: &Map, reserve_m: f64) -> [String; 7] {
    let mut out: [String; 7] = Default::default();
    for r in 0..ROWS {
        let y = (ROWS - 1 - r) as f64 * SIDE;
        let row = &map.cells[r * COLUMNS..(r + 1) * COLUMNS];
        let mut from = 0;
        for c in 1..=COLUMNS {
            let k = class(row[from], reserve_m);
            if c == COLUMNS || class(row[c], reserve_m) != k {
                let (x, w) = (from as f64 * SIDE, (c - from) as f64 * SIDE);
                out[k].push_str(&format!("M{x:.1} {y:.1}h{w:.1}v{SIDE}h-{w:.1}z"));
                from = c;
            }
        }
    }
    out
}

/// The line of no room, by marching squares between the middles of the cells.
fn zero_line(map: &Map) -> String {
    let at = |c: usize, r: usize| match map.cells[r * COLUMNS + c] {
        Cell::Room(m) => Some(m),
        _ => None,
    };
    let mut out = String::new();
    for r in 0..ROWS - 1 {
        for c in 0..COLUMNS - 1 {
            let corners = [(c, r), (c + 1, r), (c + 1, r + 1), (c, r + 1)];
            let Some(m) = corners.iter().map(|&(c, r)| at(c, r)).collect::<Option<Vec<_>>>() else {
                continue;
            };
            let mut cuts = Vec::new();
            for k in 0..4 {
                let (a, b) = (m[k], m[(k + 1) % 4]);
                if (a < 0.0) != (b < 0.0) {
                    let f = a / (a - b);
                    let ((x0, y0), (x1, y1)) = (corners[k], corners[(k + 1) % 4]);
                    let mix = |p: usize, q: usize| p as f64 + (q as f64 - p as f64) * f + 0.5;
                    cuts.push((mix(x0, x1) * SIDE, (ROWS as f64 - mix(y0, y1)) * SIDE));
                }
            }
            for pair in cuts.chunks_exact(2) {
                out.push_str(&format!(
                    "M{:.1} {:.1}L{:.1} {:.1}",
                    pair[0].0, pair[0].1, pair[1].0, pair[1].1
                ));
            }
        }
    }
    out
}

/// Asks for the next few runs while this turn goes on.
fn part(
    s: crate::scenario::Scenario,
    kind: MapKind,
    mine: u32,
    done: Vec<Knot>,
    to: (RwSignal<u32>, RwSignal<Option<Map>>, RwSignal<usize>),
) {
    let (going, map, runs) = to;
    asking::ask(MoreOfMap { scenario: s.clone(), kind, done }, move |answer| {
        if going.try_get_untracked() != Some(mine) {
            return;
        }
        let Ok(MapSoFar { map: drawn, done, finished }) = answer else { return going.set(0) };
        runs.set(done.len());
        let none = drawn.is_none();
        map.set(drawn);
        if finished || none {
            going.set(0);
        } else {
            part(s, kind, mine, done, to);
        }
    });
}
/// The map as far as it is, and where one looks.
#[derive(Clone, Copy)]
struct Chart {
    bench: Bench,
    settings: Settings,
    kind: RwSignal<MapKind>,
    map: RwSignal<Option<Map>>,
    runs: RwSignal<usize>,
    going: RwSignal<u32>,
    turn: StoredValue<u32>,
    cursor: RwSignal<(usize, usize)>,
}

impl Chart {
    fn len(self, x: f64, how: Rounding) -> String {
        let Chart { settings, .. } = self;
        settings.reader().q(Quantity::Length, x, how)
    }

    fn across_key(self) -> Key {
        let Chart { kind, .. } = self;
        kind.get().label()
    }

    fn start(self, k: MapKind) {
        let Chart { bench, kind, map, runs, going, turn, .. } = self;
        turn.update_value(|t| *t += 1);
        kind.set(k);
        map.set(None);
        runs.set(0);
        going.set(turn.get_value());
        // The cursor begins at today's set-up.
        part(bench.scenario.get_untracked(), k, turn.get_value(), Vec::new(), (going, map, runs));
    }

    /// Where today's set-up lies, as shares of the sides.
    fn here(self, m: &Map) -> (f64, f64) {
        let Chart { bench, kind, .. } = self;
        let s = bench.scenario.get();
        let Stance::Ladder { standing_height_m } = s.stance else { return (0.5, 0.5) };
        let across = match kind.get() {
            MapKind::GrabAndHeight => s.grab.above_dring_m,
            MapKind::OffsetAndHeight => bench.along.get(),
        };
        m.sides.share(across, standing_height_m)
    }

    /// The two choices under the cursor.
    fn pair(self, m: &Map) -> (f64, f64) {
        let Chart { cursor, .. } = self;
        let (c, r) = cursor.get();
        m.sides.at((c as f64 + 0.5) / COLUMNS as f64, (r as f64 + 0.5) / ROWS as f64)
    }

    /// What the square under the cursor says.
    fn told(self) -> Option<String> {
        let Chart { settings, map, cursor, .. } = self;
        map.with(|m| {
            let m = m.as_ref()?;
            let (across, up) = self.pair(m);
            let r = settings.reader();
            let (c, row) = cursor.get();
            let says = match m.cells[row * COLUMNS + c] {
                Cell::Room(x) if x < 0.0 => r.f(Key::SideMissing, &[("value", &self.len(-x, Rounding::Up))]),
                Cell::Room(x) => r.f(Key::SideRoom, &[("value", &self.len(x, Rounding::Down))]),
                Cell::Impossible => r.t(Key::MapImpossible).to_owned(),
                Cell::Unknown => r.t(Key::MapUnknown).to_owned(),
            };
            Some(r.f(
                Key::MapCell,
                &[
                    ("name", r.t(self.across_key())),
                    ("across", &self.len(across, Rounding::Nearest)),
                    ("up", &self.len(up, Rounding::Nearest)),
                    ("says", &says),
                ],
            ))
        })
    }

    /// Puts that square's choices on the bench.
    fn load(self) {
        let Chart { bench, kind, map, .. } = self;
        let Some(p) = map.with_untracked(|m| m.as_ref().map(|m| self.pair(m))) else { return };
        let k = kind.get_untracked();
        if k == MapKind::OffsetAndHeight {
            bench
                .along
                .set((p.0 / crate::studies::along_wall::STEP_M).round() * crate::studies::along_wall::STEP_M);
        }
        // To the centimetre: a set-up that a person can read back.
        let cm = |x: f64| (x * 100.0).round() / 100.0;
        bench.edit(|s| *s = cell_scenario(s, k, (cm(p.0), cm(p.1))));
    }

    fn point(self, ev: &web_sys::MouseEvent) {
        let Chart { cursor, .. } = self;
        let Some(el) = ev.current_target().and_then(|t| t.dyn_into::<web_sys::Element>().ok()) else {
            return;
        };
        let b = el.get_bounding_client_rect();
        let (u, v) = (
            (f64::from(ev.client_x()) - b.left()) / b.width(),
            1.0 - (f64::from(ev.client_y()) - b.top()) / b.height(),
        );
        let cell = |k: f64, n: usize| ((k * n as f64).max(0.0) as usize).min(n - 1);
        cursor.set((cell(u, COLUMNS), cell(v, ROWS)));
    }

    fn trust(self) -> Option<String> {
        let Chart { settings, map, runs, .. } = self;
        map.with(|m| m.as_ref().and_then(|m| m.off_by_m)).map(|off| {
            settings
                .reader()
                .f(Key::MapTrust, &[("runs", &runs.get().to_string()), ("off", &self.len(off, Rounding::Up))])
        })
    }
}

/// The squares, the line of no room, the cross and today's set-up.
#[component]
fn Picture(chart: Chart) -> impl IntoView {
    let Chart { settings, map, cursor, .. } = chart;
    let reserve_m = reserve().map_or(0.6, |l| l.value);
    move || {
        map.with(|m| {
            let m = m.as_ref()?;
            let paths = fills(m, reserve_m)
                .into_iter()
                .zip(CLASSES)
                .map(|(d, (name, _))| view! { <path class=name d=d /> })
                .collect_view();
            let (x, y) = chart.here(m);
            let (w, h) = (COLUMNS as f64 * SIDE, ROWS as f64 * SIDE);
            let mark = format!("M{} {}l0 -9l0 18M{} {}h18", x * w, (1.0 - y) * h, x * w - 9.0, (1.0 - y) * h);
            let cross = move || {
                let (c, r) = cursor.get();
                let (x, y) = ((c as f64 + 0.5) * SIDE, (ROWS as f64 - r as f64 - 0.5) * SIDE);
                format!("M{x} 0V{h}M0 {y}H{w}")
            };
            let (left, right) = (chart.len(m.sides.across.0, Rounding::Nearest), chart.len(m.sides.across.1, Rounding::Nearest));
            let (low, high) = (chart.len(m.sides.up.0, Rounding::Nearest), chart.len(m.sides.up.1, Rounding::Nearest));
            Some(view! {
                <div class="mapbox">
                    <p class="axis up"><span>{high}</span><span>{settings.s(Key::StandingHeight)}</span><span>{low}</span></p>
                    <svg class="map" viewBox=format!("0 0 {w} {h}") role="img" aria-label=move || chart.told() on:click=move |ev| chart.point(&ev)>
                        <defs>
                            <pattern id="m-no" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
                                <rect class="back" width="7" height="7" /><path d="M0 0V7" />
                            </pattern>
                            <pattern id="m-few" width="8" height="8" patternUnits="userSpaceOnUse">
                                <rect class="back" width="8" height="8" /><circle cx="4" cy="4" r="1.3" />
                            </pattern>
                            <pattern id="m-un" width="8" height="8" patternUnits="userSpaceOnUse">
                                <path d="M0 0L8 8M8 0L0 8" />
                            </pattern>
                        </defs>
                        {paths}
                        <path class="zero" d=zero_line(m) />
                        <path class="cross" d=cross />
                        <path class="mark" d=mark.clone() /><path class="mark in" d=mark />
                    </svg>
                    <p class="axis across"><span>{left}</span><span>{move || settings.t(chart.across_key())}</span><span>{right}</span></p>
                </div>
                <ul class="key">{CLASSES.into_iter().rev().map(|(name, key)| view! {
                    <li><svg viewBox="0 0 20 14" aria-hidden="true"><path class=name d="M0 0h20v14h-20z" /></svg>
                        {move || settings.reader().f(key, &[("reserve", &reserve().map_or(String::new(), |l| settings.reader().limit(l)))])}</li>
                }).collect_view()}</ul>
            })
        })
    }
}

/// One side of the cursor: slider and buttons.
#[component]
fn Axis(chart: Chart, id: &'static str, name: Signal<&'static str>, up: bool) -> impl IntoView {
    let Chart { map, cursor, .. } = chart;
    let n = if up { ROWS } else { COLUMNS };
    let get = move || if up { cursor.get().1 } else { cursor.get().0 };
    let set =
        move |x: usize| cursor.update(|c| if up { c.1 = x.min(ROWS - 1) } else { c.0 = x.min(COLUMNS - 1) });
    let shown = move || {
        map.with(|m| {
            m.as_ref().map_or(String::new(), |m| {
                let p = chart.pair(m);
                chart.len(if up { p.1 } else { p.0 }, Rounding::Nearest)
            })
        })
    };
    view! {
        <div class="number">
            <label for=id>{name}": "{shown}</label>
            <div class="row">
                <button type="button" class="step" aria-label=move || format!("{} −", name.get())
                    on:click=move |_| set(get().saturating_sub(1))>"−"</button>
                <input id=id type="range" min="0" max=n - 1 step="1" aria-valuetext=shown
                    prop:value=move || get().to_string()
                    on:input=move |ev| { if let Ok(x) = event_target_value(&ev).parse::<usize>() { set(x) } } />
                <button type="button" class="step" aria-label=move || format!("{} +", name.get())
                    on:click=move |_| set(get() + 1)>"+"</button>
            </div>
        </div>
    }
}

/// The part of the page with the map.
#[component]
pub fn RoomMap() -> impl IntoView {
    let (bench, settings) = (bench(), settings());
    let chart = Chart {
        bench,
        settings,
        kind: RwSignal::new(MapKind::GrabAndHeight),
        map: RwSignal::new(None),
        runs: RwSignal::new(0),
        going: RwSignal::new(0),
        turn: StoredValue::new(0),
        cursor: RwSignal::new((COLUMNS / 2, ROWS / 2)),
    };
    let Chart { map, runs, going, .. } = chart;
    on_cleanup(move || {
        let _ = going.try_set(0);
    });
    let across_name = Signal::derive(move || settings.t(chart.across_key()));
    let up_name = settings.s(Key::StandingHeight);
    let on_ladder = move || bench.scenario.with(|s| matches!(s.stance, Stance::Ladder { .. }));
    view! {
        <section class="findings roommap" aria-labelledby="map-h"
            data-done=move || (going.get() == 0 && map.with(Option::is_some)).to_string()>
            <h2 id="map-h">{settings.s(Key::MapHeading)}</h2>
            <p class="hint">{settings.s(Key::MapHint)}</p>
            <Show when=on_ladder fallback=move || view! { <p>{settings.s(Key::MapLadderOnly)}</p> }>
                <div class="row buttons">
                    <button type="button" id="map-grab" on:click=move |_| chart.start(MapKind::GrabAndHeight)>{settings.s(Key::MapByGrab)}</button>
                    <button type="button" id="map-side" on:click=move |_| chart.start(MapKind::OffsetAndHeight)>{settings.s(Key::MapByOffset)}</button>
                </div>
            </Show>
            <Picture chart=chart />
            <Show when=move || map.with(Option::is_some)>
                <Axis chart=chart id="map-across" name=across_name up=false />
                <Axis chart=chart id="map-up" name=up_name up=true />
                <p id="map-told" aria-live="polite">{move || chart.told()}</p>
                <button type="button" id="map-load" on:click=move |_| chart.load()>{settings.s(Key::MapLoad)}</button>
                <p class="fine">{move || if going.get() == 0 { chart.trust() } else {
                    Some(settings.reader().f(Key::MapGoing, &[("runs", &runs.get().to_string())])) }}</p>
            </Show>
        </section>
    }
}
