//! What lies over the picture in pixels: words on white plates, lenses on the parts, the flag of the guess.
//! Nothing of it is in the way of another (`scene::labels`), and while a fall plays there is none of it.

use super::hand::{lens, lens_words, part_name, told};
use super::layers::Layer;
use super::player::player;
use super::stage::stage;
use super::state::{Bench, Phase, Said, bench};
use super::strip::mark;
use crate::geometry::{Geometry, P, p};
use crate::grade::report::Report;
use crate::physics::trace::{EventKind, Outcome, Thing};
use crate::practice::hand::Held;
use crate::rules::{HARD_SWING_M_S, Severity};
use crate::scenario::Scenario;
use crate::scene::camera::Pane;
use crate::scene::labels::{Area, Wanted, along, place};
use crate::scene::worker::Bones;
use crate::scene::{Scene, at, standing_scene};
use crate::texts::Stage as S;
use crate::texts::say::Reader;
use crate::ui::shared::settings::settings;
use crate::units::{Quantity, Rounding};
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// Wide enough for lenses of full size and a ruler, px.
const WIDE_PX: f64 = 760.0;

/// A plate that has its place.
#[derive(Clone, Debug, PartialEq)]
struct Plate {
    area: Area,
    at: (f64, f64),
    line: String,
    second: String,
    mark: Option<Severity>,
}

/// A plate before it has one.
struct Words {
    at: (f64, f64),
    side: f64,
    line: String,
    second: String,
    mark: Option<Severity>,
    /// It breaks the bracket that it stands on.
    on: bool,
}

/// How large the letters on plates are, px: in a room 3.4 % of the picture's height.
fn letters_px(large: bool, pane: &Pane) -> f64 {
    if large {
        (pane.height_px * 0.034).max(16.0)
    } else if pane.width_px < WIDE_PX {
        15.0
    } else {
        16.0
    }
}

/// Size of a plate: what its words need at the most.
fn plate_size(w: &Words, px: f64) -> (f64, f64) {
    let chars = w.line.chars().count().max((w.second.chars().count() as f64 * 0.9).ceil() as usize) as f64;
    let icon = if w.mark.is_some() { px * 1.7 } else { 0.0 };
    (chars * px * 0.62 + 20.0 + icon, px * if w.second.is_empty() { 1.3 } else { 2.5 } + 13.0)
}

/// What plates keep clear of: body, rope, lanyard, ladder where it is near.
fn taken(q: &Scene, g: &Geometry, pane: &Pane) -> Vec<Area> {
    let px = |points: &[P]| points.iter().map(|q| pane.px(*q)).collect::<Vec<_>>();
    let k = pane.px_per_m();
    let mut all = Vec::new();
    if let Some(b) = Bones::of(&q.limbs) {
        let thick = |m: f64| (m * k).max(10.0);
        all.extend(along(&px(&[b.head, b.neck, b.waist, b.hip]), thick(0.32)));
        for limb in [b.arm, b.near_leg, b.far_leg] {
            all.extend(along(&px(&limb), thick(0.18)));
        }
    }
    let mut rope = q.rope.clone();
    rope.push(q.grab);
    all.extend(along(&px(&rope), 12.0));
    all.extend(along(&px(&q.tail), 12.0));
    all.extend(along(&px(&[q.grab, q.dring]), 14.0));
    // The anchor where it is, and where it was.
    for at in [q.anchor.0, g.anchor] {
        all.push(Area::round(pane.px(at), (0.35 * k, 0.25 * k)));
    }
    let (foot, tip) = q.ladder.unwrap_or((g.ladder.foot, g.ladder.tip));
    all.extend(along(&px(&[foot, tip]), 18.0));
    all
}

fn placed(pane: &Pane, px: f64, words: Vec<Words>, avoid: &[Area], brackets: &[Area]) -> Vec<Plate> {
    let wanted: Vec<Wanted> = words
        .iter()
        .map(|w| Wanted { at: w.at, size: plate_size(w, px), side_sign: w.side, on: w.on })
        .collect();
    let corner =
        |x_px: f64, y_px: f64, width_px: f64, height_px: f64| Area { x_px, y_px, width_px, height_px };
    // The thumbnail and the way back to the set-up keep their corners.
    let blocked = [
        corner(pane.width_px - 70.0, 0.0, 70.0, 70.0),
        corner(pane.width_px - px * 6.0 - 30.0, pane.height_px - 54.0, px * 6.0 + 30.0, 54.0),
    ];
    place((pane.width_px, pane.height_px), &wanted, (avoid, brackets), &blocked)
        .into_iter()
        .zip(words)
        .filter_map(|(area, w)| {
            Some(Plate { area: area?, at: w.at, line: w.line, second: w.second, mark: w.mark })
        })
        .collect()
}

/// The lowest point of the boots.
fn boots(q: &Scene) -> Option<P> {
    let b = Bones::of(&q.limbs)?;
    b.boots.into_iter().flatten().min_by(|a, b| a.y.total_cmp(&b.y))
}

/// Where a blow was: the joint nearest to what was struck, at its time.
fn blow(run: &Report, what: Thing, time_s: f64) -> Option<P> {
    let g = run.set_up.geometry();
    let q = at(&run.set_up, g, &run.trace, time_s)?;
    let b = Bones::of(&q.limbs)?;
    let joints = [b.head, b.neck, b.hip, b.near_leg[1], b.near_leg[2], b.far_leg[1], b.far_leg[2]];
    let far = |q: &P| match what {
        Thing::Ground | Thing::Obstacle => q.y,
        Thing::Wall | Thing::Roof => -g.depth_in_house_m(*q),
        Thing::Ladder => q.x - g.ladder.x_at(q.y),
    };
    joints.into_iter().min_by(|a, b| far(a).total_cmp(&far(b)))
}

/// What is shown over a fall that is over.
#[derive(Default)]
struct Shown {
    words: Vec<Words>,
    /// Brackets, from and to, m.
    lines: Vec<(P, P)>,
    /// Blows, m.
    rings: Vec<(P, Severity)>,
}

/// What is told on the picture after a fall, and the bracket lines beside the body.
fn after(r: Reader, run: &Report, (now, now_s): (&Scene, f64), pane: &Pane) -> Shown {
    let (t, g) = (&run.trace, run.set_up.geometry());
    let len = |m: f64, how| r.q(Quantity::Length, m, how);
    let Shown { mut words, mut lines, mut rings } = Shown::default();
    if !t.is_sound() {
        return Shown { words, lines, rings };
    }
    let beside = now.dring.x.max(g.dring.x) + 0.75;
    let low = boots(now).unwrap_or(now.dring);
    for i in &t.impacts {
        let below = matches!(i.what, Thing::Ground | Thing::Obstacle);
        let hard = i.speed_m_s >= HARD_SWING_M_S;
        let told = (below || t.outcome == Outcome::Stopped && i.speed_m_s > 1.5) && i.time_s <= now_s + 0.02;
        if let Some(q) = blow(run, i.what, i.time_s).filter(|_| told && words.len() < 2) {
            let q = if below { low } else { q };
            // A touch that is no hard blow is shown, not marked.
            let severity = if below {
                Severity::Critical
            } else if hard {
                Severity::Minor
            } else {
                Severity::Note
            };
            rings.push((q, severity));
            let speed = r.q(Quantity::Speed, i.speed_m_s, Rounding::Up);
            words.push(Words {
                at: pane.px(q),
                side: if below { 1.0 } else { -1.0 },
                // The sentence says that it was ground or deck.
                line: if below {
                    speed
                } else {
                    r.f(S::Blow, &[("thing", r.t(i.what.label())), ("speed", &speed)])
                },
                second: String::new(),
                mark: Some(severity).filter(|s| *s != Severity::Note),
                on: false,
            });
        }
    }
    let drop_m = g.dring.y - now.dring.y;
    if drop_m > 0.05 {
        lines.push((p(beside, g.dring.y), p(beside, now.dring.y)));
        // At the middle of what is seen of it.
        let top = g.dring.y.min(pane.frame.top_m - 0.2);
        words.push(Words {
            at: pane.px(p(beside, (top + now.dring.y) / 2.0)),
            side: 1.0,
            line: r.f(S::Fell, &[("value", &len(drop_m, Rounding::Up))]),
            second: if t.outcome == Outcome::LetGo {
                // Not caught: the picture stands, the worker does not.
                let landed = t
                    .impacts
                    .iter()
                    .any(|i| matches!(i.what, Thing::Ground | Thing::Obstacle) && i.time_s <= now_s + 0.02);
                if landed { String::new() } else { r.t(S::FallsOn).to_owned() }
            } else if pane.width_px < 360.0 {
                String::new()
            } else {
                r.f(S::FreeOfIt, &[("value", &len(t.free_fall_m, Rounding::Up))])
            },
            mark: None,
            on: true,
        });
    }
    match t.clearance_margin_m {
        Some(m) if m > 0.0 && t.left_roof => {
            // Drawn where it was measured: over the ground, or over a deck that the body went past.
            let under = g.surface_below_m(low.x, 0.3);
            let (x, foot) = match g.obstacle {
                Some((_, right, top)) if (low.y - under - m).abs() > 0.1 => (right + 0.06, top),
                _ => (low.x + 0.5, low.y - m),
            };
            lines.push((p(x, foot + m), p(x, foot)));
            let seen = foot.max(pane.frame.bottom_m + 0.3);
            words.push(Words {
                at: pane.px(p(x, (foot + m + seen.min(foot + m)) / 2.0)),
                side: 1.0,
                line: r.f(S::RoomPlate, &[("value", &len(m, Rounding::Down))]),
                second: String::new(),
                mark: None,
                on: true,
            });
        }
        Some(m) if m < 0.0 => words.push(Words {
            at: pane.px(low),
            side: -1.0,
            line: r.f(S::MissingPlate, &[("value", &len(-m, Rounding::Up))]),
            second: String::new(),
            mark: None,
            on: false,
        }),
        _ => {}
    }
    let gave = t.time_of(EventKind::AnchorFails).is_some();
    if gave || t.outcome == Outcome::Stopped {
        words.push(Words {
            at: pane.px(if gave { now.anchor.0 } else { now.dring }),
            side: -1.0,
            line: if gave {
                r.f(S::GaveWay, &[("value", &r.q(Quantity::Force, t.anchor_peak_n, Rounding::Down))])
            } else {
                r.q(Quantity::Force, t.peak_force_n, Rounding::Up)
            },
            second: String::new(),
            mark: None,
            on: false,
        });
    }
    // What is not in the picture has no plate.
    words.retain(|w| {
        w.at.0 > -20.0 && w.at.1 > -20.0 && w.at.0 < pane.width_px + 20.0 && w.at.1 < pane.height_px + 20.0
    });
    Shown { words, lines, rings }
}

/// Words, brackets and rings after a fall.
#[component]
fn Marks() -> impl IntoView {
    let (bench, settings, player, stage) = (bench(), settings(), player(), stage());
    move || {
        if bench.phase.get() != Phase::Shown || player.playing.get() {
            return None;
        }
        let (run, pane) = (bench.run.get()?, stage.pane.get()?);
        let r = settings.reader();
        let g = run.set_up.geometry();
        let now = at(&run.set_up, g, &run.trace, player.clock.get())?;
        let px = letters_px(settings.large.get(), &pane);
        let Shown { words, lines, rings } = after(r, &run, (&now, player.clock.get()), &pane);
        let avoid = taken(&now, g, &pane);
        let brackets: Vec<Area> =
            lines.iter().flat_map(|(a, b)| along(&[pane.px(*a), pane.px(*b)], 8.0)).collect();
        let plates = placed(&pane, px, words, &avoid, &brackets);
        let brackets: String = lines
            .iter()
            .map(|(a, b)| {
                let ((x, y0), (_, y1)) = (pane.px(*a), pane.px(*b));
                format!("M{:.0} {y0:.0}h-24M{:.0} {y1:.0}h-24M{x:.0} {y0:.0}V{y1:.0}", x + 6.0, x + 6.0)
            })
            .collect();
        let rings = rings
            .into_iter()
            .map(|(q, s)| {
                let (x, y) = pane.px(q);
                let class = match s {
                    Severity::Critical => "blow fail",
                    Severity::Note => "blow",
                    _ => "blow caution",
                };
                view! { <circle class=class cx=x.round() cy=y.round() r="15" /> }
            })
            .collect_view();
        let leaders: String = plates.iter().map(|q| leader(&q.area, q.at)).collect();
        Some(view! {
            <svg class="lines" aria-hidden="true"><path class="bracket" d=brackets /><path class="leader" d=leaders />{rings}</svg>
            {plates.into_iter().map(|q| plate(q, px, move || stage.open(Layer::Why))).collect_view()}
        })
    }
}

/// A line from a plate's nearest edge to what it names.
fn leader(a: &Area, at: (f64, f64)) -> String {
    let x = at.0.clamp(a.x_px, a.x_px + a.width_px);
    let y = at.1.clamp(a.y_px, a.y_px + a.height_px);
    if (x - at.0).hypot(y - at.1) < 6.0 {
        String::new()
    } else {
        format!("M{x:.0} {y:.0}L{:.0} {:.0}", at.0, at.1)
    }
}

fn style_of(a: &Area, px: f64) -> String {
    format!(
        "left:{:.0}px;top:{:.0}px;width:{:.0}px;height:{:.0}px;font-size:{px:.0}px",
        a.x_px, a.y_px, a.width_px, a.height_px
    )
}

fn plate(q: Plate, px: f64, does: impl Fn() + 'static) -> impl IntoView {
    view! {
        <button type="button" class="plate-button" prop:style=style_of(&q.area, px) on:click=move |_| does()>
            {q.mark.map(mark)}<span>{q.line}{(!q.second.is_empty()).then(|| view! { <small>{q.second}</small> })}</span></button>
    }
}

/// The parts as lenses while a set-up is chosen: what is seen, never whether it is right.
#[component]
fn Lenses() -> impl IntoView {
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
        let parts: &[Held] = if wide && !settings.large.get() {
            &[Held::Anchor, Held::Grab, Held::Worker, Held::LadderFoot]
        } else {
            &[Held::Anchor, Held::Grab, Held::Worker]
        };
        let places = lens_places(&pane, &g, parts.len(), px);
        let now = bench.drawn.get();
        let scene = standing_scene(&now, &g);
        let mut leaders = String::new();
        let lenses = parts
            .iter()
            .zip(places)
            .map(|(&part, a)| {
                let at = pane.px(match part {
                    Held::Worker => scene.dring,
                    other => other.at(&g),
                });
                leaders.push_str(&lens_leader(&a, px * if wide { 2.9 } else { 1.4 }, at, &pane));
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
    let side = (pane.height_px * 0.2).clamp(84.0, 150.0);
    let (cell_w, cell_h) = (side + 48.0, side + px * 2.9);
    let per_row = (((wall - 40.0) / cell_w) as usize).clamp(1, count.div_ceil(2));
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

fn lens_button(part: Held, a: &Area, px: f64, r: Reader, s: &Scenario, wide: bool) -> impl IntoView + use<> {
    let (bench, stage) = (bench(), stage());
    let paths = lens(part, s).into_iter().map(|(c, d)| view! { <path class=c d=d /> }).collect_view();
    let state = state_words(part, r, s);
    let name = r.t(part_name(part));
    // What is seen comes first, so that it can be spoken to.
    let seen = if wide { format!("{name} {state}") } else { name.to_owned() };
    let label = format!("{seen}. {}", lens_words(part, r, s));
    view! {
        <button type="button" class="lens-button" id=format!("lens-{part:?}") data-part=format!("{part:?}") prop:style=style_of(a, px) aria-label=label
            on:click=move |_| { bench.held.set(part); stage.open(Layer::Part) }>
            <svg class="lens" viewBox="0 0 120 120" aria-hidden="true">{paths}</svg>
            <span><strong>{name}</strong>" "{wide.then(|| view! { <small>{state}</small> })}</span>
        </button>
    }
}

/// What a lens shows, in three words.
fn state_words(part: Held, r: Reader, s: &Scenario) -> String {
    use crate::texts::{Bench as W, Key};
    match part {
        Held::Anchor => r.t(s.anchor.kind.label()).to_owned(),
        Held::Grab => crate::texts::say::offset(r, s.grab.above_dring_m),
        Held::Worker => r.t(if s.lanyard.clipped { W::Clipped } else { W::NotClipped }).to_owned(),
        Held::LadderFoot => {
            r.t(if s.ladder.tied { Key::LadderTiedYes } else { Key::LadderTiedNo }).to_owned()
        }
    }
}

/// The ruler and the flag: where do the boots stop?
#[component]
fn Flag() -> impl IntoView {
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
        // Above the corner that opens the set-up, under the thumbnail.
        let at_y = pane
            .px(p(0.0, height.get()))
            .1
            .clamp(96.0, (pane.height_px - if wide { 86.0 } else { 80.0 }).max(96.0));
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

/// While a part is in hand: the part from near on the other side of the picture, and what stops it.
#[component]
fn InHand() -> impl IntoView {
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
        let paths = lens(part, &now).into_iter().map(|(c, d)| view! { <path class=c d=d /> }).collect_view();
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

/// Where the flag stands before anybody has moved it, m: a metre under the boots.
pub fn start_m(g: &Geometry) -> f64 {
    (g.soles.y - 1.0).max(g.surface_below_m(g.soles.x, 0.2))
}

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
        <Show when=choosing>
            <button type="button" class="today" id="today" on:click=move |_| stage.open(Layer::SetUp)>
                <span>{settings.s(S::SetUpTab)}</span><small>{move || bench.scenario.with(|s| super::drawer::glance(settings.reader(), s))}</small></button>
            <div class="hand-tools">
                <button type="button" class="icon" id="undo" prop:disabled=move || !bench.can_undo() aria-label=settings.s(crate::texts::Key::Undo)
                    on:click=move |_| stepped(Bench::undo)><i class="i-undo" aria-hidden="true"></i></button>
                <button type="button" class="icon" id="redo" prop:disabled=move || !bench.can_redo() aria-label=settings.s(crate::texts::Key::Redo)
                    on:click=move |_| stepped(Bench::redo)><i class="i-redo" aria-hidden="true"></i></button>
            </div>
        </Show>
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
            <Corners />
        </div>
    }
}
