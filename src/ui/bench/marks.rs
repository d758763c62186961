//! What is told on the picture once a fall is over: brackets, rings at the blows, words on white plates. None is in
//! another's way (`scene::labels`).

use super::player::player;
use super::stage::{Layer, WIDE_PX, letters_px, stage, style_of};
use super::state::{Phase, bench};
use crate::geometry::{Geometry, P, p};
use crate::grade::report::Report;
use crate::physics::trace::{EventKind, Impact, Outcome, Thing};
use crate::rules::{HARD_SWING_M_S, Severity};
use crate::scene::camera::Pane;
use crate::scene::labels::{Area, Wanted, along, place};
use crate::scene::worker::Bones;
use crate::scene::{Scene, at};
use crate::texts::Stage as S;
use crate::texts::say::Reader;
use crate::ui::shared::settings::settings;
use crate::ui::shared::signs::mark;
use crate::units::{Quantity, Rounding};
use leptos::prelude::*;

/// Below this speed a touch on the way is not told, m/s.
const TOLD_M_S: f64 = 1.5;
/// A blow counts as seen this long before its time, s: half a frame of the trace.
const SEEN_S: f64 = 0.02;

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

impl Words {
    fn of(at: (f64, f64), side: f64, line: String) -> Words {
        Words { at, side, line, second: String::new(), mark: None, on: false }
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
    // The thumbnails and the way back to the set-up keep their corners.
    let narrow = pane.width_px < WIDE_PX;
    let blocked = [
        corner(pane.width_px - 70.0, 0.0, 70.0, if narrow { 70.0 } else { 128.0 }),
        if narrow { corner(0.0, 0.0, 70.0, 62.0) } else { corner(0.0, 0.0, 0.0, 0.0) },
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

/// A moment of a fall that is over, on its pane.
struct Moment<'a> {
    r: Reader,
    run: &'a Report,
    now: &'a Scene,
    now_s: f64,
    pane: &'a Pane,
}

impl Moment<'_> {
    /// Everything that is told at this moment.
    fn told(&self) -> Shown {
        let mut all = Shown::default();
        if self.run.trace.is_sound() {
            self.blows(&mut all);
            self.drop(&mut all);
            self.room(&mut all);
            self.pull(&mut all);
            // What is not in the picture has no plate.
            let (wide, high) = (self.pane.width_px + 20.0, self.pane.height_px + 20.0);
            all.words.retain(|w| w.at.0 > -20.0 && w.at.1 > -20.0 && w.at.0 < wide && w.at.1 < high);
        }
        all
    }

    fn len(&self, m: f64, how: Rounding) -> String {
        self.r.q(Quantity::Length, m, how)
    }

    fn low(&self) -> P {
        boots(self.now).unwrap_or(self.now.dring)
    }

    /// Whether it has come down by now.
    fn landed(&self, i: &Impact) -> bool {
        matches!(i.what, Thing::Ground | Thing::Obstacle) && i.time_s <= self.now_s + SEEN_S
    }

    /// A ring where something was struck, and how fast.
    fn blows(&self, all: &mut Shown) {
        let t = &self.run.trace;
        for i in &t.impacts {
            let below = self.landed(i);
            let on_the_way =
                t.outcome == Outcome::Stopped && i.speed_m_s > TOLD_M_S && i.time_s <= self.now_s + SEEN_S;
            let Some(q) =
                blow(self.run, i.what, i.time_s).filter(|_| (below || on_the_way) && all.words.len() < 2)
            else {
                continue;
            };
            let q = if below { self.low() } else { q };
            // A touch that is no hard blow is shown, not marked.
            let severity = match (below, i.speed_m_s >= HARD_SWING_M_S) {
                (true, _) => Severity::Critical,
                (false, true) => Severity::Minor,
                (false, false) => Severity::Note,
            };
            all.rings.push((q, severity));
            let speed = self.r.q(Quantity::Speed, i.speed_m_s, Rounding::Up);
            // The sentence says that it was ground or deck.
            let line = if below {
                speed
            } else {
                self.r.f(S::Blow, &[("thing", self.r.t(i.what.label())), ("speed", &speed)])
            };
            all.words.push(Words {
                mark: Some(severity).filter(|s| *s != Severity::Note),
                ..Words::of(self.pane.px(q), if below { 1.0 } else { -1.0 }, line)
            });
        }
    }

    /// How far the ring has fallen, beside the body.
    fn drop(&self, all: &mut Shown) {
        let (t, g, now) = (&self.run.trace, self.run.set_up.geometry(), self.now);
        let drop_m = g.dring.y - now.dring.y;
        if drop_m <= 0.05 {
            return;
        }
        let beside = now.dring.x.max(g.dring.x) + 0.75;
        all.lines.push((p(beside, g.dring.y), p(beside, now.dring.y)));
        // At the middle of what is seen of it.
        let top = g.dring.y.min(self.pane.frame.top_m - 0.2);
        let second = if t.outcome == Outcome::LetGo {
            // Not caught: the picture stands, the worker does not.
            if t.impacts.iter().any(|i| self.landed(i)) {
                String::new()
            } else {
                self.r.t(S::FallsOn).to_owned()
            }
        } else if self.pane.width_px < 360.0 {
            String::new()
        } else {
            self.r.f(S::FreeOfIt, &[("value", &self.len(t.free_fall_m.min(drop_m), Rounding::Up))])
        };
        let line = self.r.f(S::Fell, &[("value", &self.len(drop_m, Rounding::Up))]);
        let at = self.pane.px(p(beside, (top + now.dring.y) / 2.0));
        all.words.push(Words { second, on: true, ..Words::of(at, 1.0, line) });
    }

    /// How much room is left under the boots, or was missing.
    fn room(&self, all: &mut Shown) {
        let (t, g, low) = (&self.run.trace, self.run.set_up.geometry(), self.low());
        match t.clearance_margin_m {
            Some(m) if m > 0.0 && t.left_roof => {
                // Drawn where it was measured: over the ground, or over a deck that the body went past.
                let under = g.surface_below_m(low.x, 0.3);
                let (x, foot) = match g.obstacle {
                    Some((_, right, top)) if (low.y - under - m).abs() > 0.1 => (right + 0.06, top),
                    _ => (low.x + 0.5, low.y - m),
                };
                all.lines.push((p(x, foot + m), p(x, foot)));
                let seen = foot.max(self.pane.frame.bottom_m + 0.3);
                let line = self.r.f(S::RoomPlate, &[("value", &self.len(m, Rounding::Down))]);
                let at = self.pane.px(p(x, (foot + m + seen.min(foot + m)) / 2.0));
                all.words.push(Words { on: true, ..Words::of(at, 1.0, line) });
            }
            Some(m) if m < 0.0 => {
                let line = self.r.f(S::MissingPlate, &[("value", &self.len(-m, Rounding::Up))]);
                all.words.push(Words::of(self.pane.px(low), -1.0, line));
            }
            _ => {}
        }
    }

    /// The force on the body, or that at which the anchor let go.
    fn pull(&self, all: &mut Shown) {
        let t = &self.run.trace;
        let gave = t.time_of(EventKind::AnchorFails).is_some();
        if !gave && t.outcome != Outcome::Stopped {
            return;
        }
        let (at, line) = if gave {
            let value = self.r.q(Quantity::Force, t.anchor_peak_n, Rounding::Down);
            (self.now.anchor.0, self.r.f(S::GaveWay, &[("value", &value)]))
        } else {
            (self.now.dring, self.r.q(Quantity::Force, t.peak_force_n, Rounding::Up))
        };
        all.words.push(Words::of(self.pane.px(at), -1.0, line));
    }
}

/// Words, brackets and rings after a fall.
#[component]
pub fn Marks() -> impl IntoView {
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
        let moment = Moment { r, run: &run, now: &now, now_s: player.clock.get(), pane: &pane };
        let Shown { words, lines, rings } = moment.told();
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

fn plate(q: Plate, px: f64, does: impl Fn() + 'static) -> impl IntoView {
    view! {
        <button type="button" class="plate-button" prop:style=style_of(&q.area, px) on:click=move |_| does()>
            {q.mark.map(mark)}<span>{q.line}{(!q.second.is_empty()).then(|| view! { <small>{q.second}</small> })}</span></button>
    }
}
