//! The wall's picture: one set-up at a step of the session, in section or from in front, with the few words that a
//! back row can read.

use super::falls::Fallen;
use crate::geometry::{Geometry, P, p};
use crate::physics::trace::{EventKind, Outcome, Trace};
use crate::practice::demos::{Demo, Ends};
use crate::practice::showing::Step;
use crate::scenario::{Scenario, Stance};
use crate::scene::camera::{self, Frame};
use crate::scene::figure::{figure, ghost};
use crate::scene::front::Front;
use crate::scene::house::house;
use crate::scene::ink::{Shape, closed, cm, line};
use crate::scene::{at, standing_scene};
use crate::texts::Trainer as T;
use crate::texts::say::{self, Reader};
use crate::ui::rooms::pair::Clock;
use crate::ui::shared::figure::{Moving, decisive_s, defs, still};
use crate::ui::shared::settings::settings;
use crate::ui::shared::view;
use crate::units::{Quantity, Rounding};
use leptos::html::Div;
use leptos::prelude::*;

/// Size of a word on the wall as a share of the picture's height: its digits, 0.65 to 0.73 of it in the fonts that
/// devices have, are then 3.4 % of the height.
const WORD_SHARE: f64 = 0.0525;

/// Height of a word, m: on a narrow picture less, so that it stays inside.
fn word_m(frame: Frame) -> f64 {
    (frame.height_m() * WORD_SHARE).min(frame.width_m() * 0.085)
}

/// A word on the picture.
struct Word {
    at: P,
    text: String,
    /// Where the word lies by its point: start, middle or end.
    anchor: &'static str,
}

/// A height or a way, with its figure.
struct Dimension {
    x: f64,
    from: f64,
    to: f64,
    text: String,
}

impl Dimension {
    /// The line with its two arrowheads and the two ends' ticks.
    fn shapes(&self, frame: Frame) -> Vec<Shape> {
        let (x, a, b) = (self.x, self.from.min(self.to), self.from.max(self.to));
        let head = (frame.height_m() * 0.022).min((b - a) / 2.5);
        let tick = |y: f64| line(&[p(x - head * 3.0, y), p(x + head, y)]);
        let tip = |y: f64, s: f64| {
            closed(&[p(x, y), p(x - head / 2.5, y + s * head), p(x + head / 2.5, y + s * head)])
        };
        vec![
            Shape::new("wall-dim", line(&[p(x, a), p(x, b)]) + &tick(a) + &tick(b)),
            Shape::new("wall-tip", tip(a, 1.0) + &tip(b, -1.0)),
        ]
    }

    fn word(&self, frame: Frame) -> Word {
        let at = p(self.x + frame.height_m() * 0.02, (self.from + self.to) / 2.0 - word_m(frame) / 3.0);
        Word { at, text: self.text.clone(), anchor: "start" }
    }
}

/// What a picture shows.
#[derive(Clone)]
pub struct Shown {
    /// The scenario.
    pub demo: Demo,
    /// Its set-up under the place's rules.
    pub s: Scenario,
    /// Its fall, once it may be seen.
    pub fallen: Option<Fallen>,
    /// The step.
    pub step: Step,
    /// One of two: at one frame, with nothing labelled but what changed.
    pub pair: Option<Frame>,
}

/// The frame of both pictures of a pair, before it is fitted to its pane.
pub fn both_frame(shown: &[Shown]) -> Option<Frame> {
    shown
        .iter()
        .filter_map(|q| {
            let g = Geometry::of(&q.s)?;
            if q.demo.is_along() {
                return Some(front_frame(&q.demo, &q.s, &g, q.fallen.as_ref()));
            }
            let low = q.fallen.as_ref().map_or(g.soles.y, |f| f.report.trace.lowest_point_m);
            Some(Frame {
                left_m: g.soles.x.min(g.grab.x) - 1.2,
                right_m: g.soles.x + 1.9,
                bottom_m: g.surface_below_m(g.soles.x, 0.3).min(low) - 0.35,
                top_m: (g.soles.y + q.s.worker.stature_m).max(g.grab.y).max(g.eave.y.min(g.dring.y + 1.5))
                    + 0.4,
            })
        })
        .reduce(Frame::with)
}

fn front_frame(d: &Demo, s: &Scenario, g: &Geometry, fallen: Option<&Fallen>) -> Frame {
    let swing = fallen.and_then(|f| f.swing.as_deref());
    Front { along_m: d.along_m, swing, ..Front::of(s, g) }.bounds()
}

/// The clock's end for a fall, s: where somebody comes down, else a little after what decides it.
pub fn film_s(f: &Fallen) -> f64 {
    match &f.swing {
        Some(w) => w.free.lands_s().unwrap_or_else(|| w.free.lasts_s()),
        None => landed_s(&f.report.trace).unwrap_or_else(|| decisive_s(&f.report.trace) + 0.35),
    }
}

/// When it is looked at while it is told, s.
pub fn told_s(f: &Fallen) -> f64 {
    match &f.swing {
        Some(w) => w.free.lands_s().unwrap_or_else(|| w.free.lowest_s()),
        None => landed_s(&f.report.trace).unwrap_or_else(|| decisive_s(&f.report.trace)),
    }
}

/// Whether somebody hangs in the end: held, and not still on the roof.
pub fn hangs(s: &Scenario, t: &Trace) -> bool {
    t.outcome == Outcome::Stopped && (t.left_roof || matches!(s.stance, Stance::Ladder { .. }))
}

impl Shown {
    fn trace(&self) -> Option<&Trace> {
        self.fallen.as_ref().map(|f| &f.report.trace).filter(|t| t.is_sound())
    }

    /// Nobody should go up as it is: how the fall would have ended is not what is told.
    fn asks(&self) -> bool {
        self.fallen.as_ref().and_then(Fallen::ended) == Some(Ends::Asks)
    }

    /// Whether the fall is seen in this step.
    fn falls(&self) -> bool {
        matches!(self.step, Step::Play | Step::Slow | Step::Verdict | Step::Both)
    }

    fn frame(&self, g: &Geometry, (width_px, height_px): (f64, f64), now_s: f64) -> Frame {
        let shape = width_px / height_px.max(1.0);
        if let Some(f) = self.pair {
            // What is added in width goes to the side where the words stand.
            return f.fit(shape, 0.2);
        }
        if self.demo.is_along() {
            return front_frame(&self.demo, &self.s, g, self.fallen.as_ref().filter(|_| self.falls()))
                .fit(shape, 0.5);
        }
        let near = || camera::work(g, &self.s, (width_px, height_px), true);
        let frame = match (self.step, self.trace()) {
            (Step::Scene, _) => {
                let all = camera::whole(g, &self.s);
                Frame { top_m: all.top_m + 0.08 * all.height_m(), ..all }
            }
            (Step::Play | Step::Slow, Some(t)) => camera::fall(g, t, now_s, near()).with(self.ground(g)),
            (Step::Verdict, Some(t)) => camera::fall(g, t, now_s.max(0.6), near()).with(near()),
            _ => near(),
        };
        frame.fit(shape, 0.5)
    }

    /// The ground under the worker: a fall is seen over it.
    fn ground(&self, g: &Geometry) -> Frame {
        let y = g.surface_below_m(g.soles.x, 0.3);
        Frame { left_m: g.soles.x - 0.5, right_m: g.soles.x + 0.5, bottom_m: y - 0.3, top_m: y }
    }

    /// What moves, at a moment.
    fn moving(&self, g: &Geometry, now_s: f64) -> Vec<Shape> {
        if self.demo.is_along() {
            let swing = self.fallen.as_ref().and_then(|f| f.swing.as_deref()).filter(|_| self.falls());
            let swung = swing.and_then(|w| w.free.at(now_s));
            return Front { along_m: self.demo.along_m, swung, ..Front::of(&self.s, g) }.moving();
        }
        let now = self.trace().filter(|_| self.falls()).and_then(|t| at(&self.s, g, t, now_s));
        figure(&now.unwrap_or_else(|| standing_scene(&self.s, g)), &self.s, g)
    }

    /// Where the worker began, while the fall is seen.
    fn began(&self, g: &Geometry) -> Vec<Shape> {
        if !self.falls() || self.demo.is_along() {
            return vec![];
        }
        let mut all = vec![Shape::new("wall-start", line(&[p(-30.0, g.soles.y), p(30.0, g.soles.y)]))];
        if self.pair.is_none() {
            all.extend(ghost(&standing_scene(&self.s, g), g));
        }
        all
    }

    fn dimensions(&self, r: Reader, g: &Geometry, frame: Frame, done: bool) -> Vec<Dimension> {
        let len = |m: f64, how| r.q(Quantity::Length, m, how);
        let ground = g.surface_below_m(g.soles.x, 0.3);
        // From the roof the way down is outside the eave.
        let x =
            g.soles.x.max(if matches!(self.s.stance, Stance::Roof { .. }) { g.eave.x } else { g.soles.x });
        let x = (x + 1.1).min(frame.right_m - frame.width_m() * 0.12);
        let along = self.demo.is_along();
        match (self.step, self.trace()) {
            (Step::Scene | Step::Ask | Step::Locked, _) if along => vec![],
            (Step::Scene | Step::Ask | Step::Locked, _) if matches!(self.s.stance, Stance::Ladder { .. }) => {
                let up = g.soles.y - ground;
                vec![Dimension { x, from: ground, to: g.soles.y, text: len(up, Rounding::Nearest) }]
            }
            (Step::Verdict | Step::Both, Some(t)) if !along && done && !self.asks() => {
                let low = if t.outcome == Outcome::Stopped { t.lowest_point_m } else { ground };
                let fell = Dimension {
                    x,
                    from: g.soles.y,
                    to: low,
                    text: r.f(T::Fell, &[("value", &len(g.soles.y - low, Rounding::Up))]),
                };
                let room =
                    t.clearance_margin_m.filter(|m| *m > 0.05 && hangs(&self.s, t)).map(|m| Dimension {
                        x,
                        from: ground,
                        to: ground + m,
                        text: r.f(T::RoomLeft, &[("value", &len(m, Rounding::Down))]),
                    });
                // Beside a deck's edge the boots are elsewhere than what is struck: no way of theirs says that fall.
                let on_deck = t.time_of(EventKind::StrikesObstacle).is_some();
                let fell = (self.pair.is_none() && !on_deck && g.soles.y - low > 0.3).then_some(fell);
                fell.into_iter().chain(room).collect()
            }
            _ => vec![],
        }
    }

    fn words(&self, r: Reader, g: &Geometry, frame: Frame) -> Vec<Word> {
        let step = frame.height_m() * 0.03;
        match self.step {
            Step::Scene if !self.demo.is_along() => vec![
                Word {
                    at: p(g.anchor.x, g.anchor.y + step * 2.0),
                    text: r.t(T::LabelAnchor).to_owned(),
                    anchor: "middle",
                },
                Word {
                    at: p(
                        (g.anchor.x + g.eave.x) / 2.0 + step * 0.6,
                        (g.anchor.y + g.eave.y) / 2.0 + step * 0.6,
                    ),
                    text: r.t(T::LabelRope).to_owned(),
                    anchor: "start",
                },
                Word {
                    at: p(g.grab.x - step * 1.5, g.grab.y),
                    text: r.t(T::LabelGrab).to_owned(),
                    anchor: "end",
                },
            ],
            Step::Scene => {
                vec![Word {
                    at: p(step, g.anchor.y + step),
                    text: r.t(T::LabelAnchor).to_owned(),
                    anchor: "start",
                }]
            }
            Step::Play | Step::Slow if !self.demo.is_along() => vec![Word {
                at: p(frame.right_m - step, g.soles.y + step * 0.6),
                text: r.t(T::BootsStart).to_owned(),
                anchor: "end",
            }],
            _ => vec![],
        }
    }
}

/// The picture.
#[component]
pub fn Picture(shown: Memo<Option<SameShown>>, clock: Clock) -> impl IntoView {
    let settings = settings();
    let size = RwSignal::new((0.0, 0.0));
    let node = NodeRef::<Div>::new();
    Effect::new(move |_| {
        if let Some(e) = node.get() {
            view::watch_size(&e, size);
        }
    });
    let geometry = Memo::new(move |_| shown.with(|q| q.as_ref().and_then(|q| Geometry::of(&q.0.s))));
    let frame = Memo::new(move |_| {
        let now_s = clock.now_s.get();
        let size = size.get();
        if size.0 < 10.0 || size.1 < 10.0 {
            return None;
        }
        geometry.with(|g| shown.with(|q| Some(q.as_ref()?.0.frame(g.as_ref()?, size, now_s))))
    });
    let moving = Memo::new(move |_| {
        let now_s = clock.now_s.get();
        geometry.with(|g| shown.with(|q| Some(q.as_ref()?.0.moving(g.as_ref()?, now_s)))).unwrap_or_default()
    });
    // How many paths there are: drawn anew where that changes.
    let count = Memo::new(move |_| moving.with(Vec::len));
    let stands = move || {
        let g = geometry.get()?;
        let q = shown.get()?.0;
        let built = if q.demo.is_along() {
            Front { along_m: q.demo.along_m, ..Front::of(&q.s, &g) }.behind()
        } else {
            house(&g, &q.s)
        };
        // The way is drawn once it has been gone.
        let way = q.fallen.as_ref().and_then(|f| f.swing.clone()).filter(|_| q.step.is_told());
        let way = way.map(|w| way_of(&q.s, &g, q.demo.along_m, &w));
        Some(view! { {still(built)}{still(way.unwrap_or_default())}{still(q.began(&g))} })
    };
    let figure = move || {
        count.get();
        view! { <Moving shapes=moving.into() class="figure" /> }
    };
    let struck = move || {
        shown.with(|q| {
            q.as_ref().is_some_and(|q| {
                let q = &q.0;
                let landed = q.trace().filter(|_| q.falls() && !q.demo.is_along()).and_then(landed_s);
                landed.is_some_and(|s| s <= clock.now_s.get() + 1e-9)
            })
        })
    };
    let done = Memo::new(move |_| clock.now_s.get() >= clock.end_s.get() - 1e-9);
    let told = move || {
        let (g, q, frame) = (geometry.get()?, shown.get()?.0, frame.get()?);
        let r = settings.reader();
        let dims = q.dimensions(r, &g, frame, done.get() || q.step == Step::Verdict);
        let mut words = q.words(r, &g, frame);
        words.extend(dims.iter().map(|d| d.word(frame)));
        // A word that would leave the picture stands on the other side of its point.
        for w in &mut words {
            let long_m = w.text.chars().count() as f64 * word_m(frame) * 0.6;
            if w.anchor == "start" && w.at.x + long_m > frame.right_m {
                w.at.x -= frame.height_m() * 0.04;
                w.anchor = "end";
            } else if w.anchor == "end" && w.at.x - long_m < frame.left_m {
                w.anchor = "start";
            }
        }
        let lines: Vec<Shape> = dims.iter().flat_map(|d| d.shapes(frame)).collect();
        let high = cm(word_m(frame));
        let words = words
            .into_iter()
            .map(|w| view! { <text class="wall-word" x=cm(w.at.x) y=cm(-w.at.y) font-size=high text-anchor=w.anchor>{w.text}</text> })
            .collect_view();
        Some(view! { {still(lines)}{words} })
    };
    // What is to be seen before the fall, in words; never how it ends.
    let label = move || {
        shown.with(|q| q.as_ref().map_or(String::new(), |q| say::state(settings.reader(), &q.0.s).join(" ")))
    };
    let shape = move || frame.get().map_or("0 0 100 100".to_owned(), Frame::view_box);
    view! {
        <div class="wall-picture" node_ref=node>
            <svg class="drawing" class:struck=struck class:front=move || shown.with(|q| q.as_ref().is_some_and(|q| q.0.demo.is_along()))
                viewBox=shape preserveAspectRatio="xMidYMid meet" role="img" aria-label=label>
                {defs()}{stands}{figure}{told}</svg>
        </div>
    }
}

/// The way of a swing as it is seen from in front.
fn way_of(s: &Scenario, g: &Geometry, along_m: f64, w: &crate::studies::along_wall::Swing) -> Vec<Shape> {
    Front { along_m, swing: Some(w), ..Front::of(s, g) }
        .moving()
        .into_iter()
        .filter(|q| q.class == "swing")
        .collect()
}

/// When a body comes down on something, s.
fn landed_s(t: &Trace) -> Option<f64> {
    use EventKind as E;
    [E::StrikesGround, E::StrikesObstacle].into_iter().filter_map(|k| t.time_of(k)).reduce(f64::min)
}

/// Shown, compared by what would be drawn otherwise: a picture is not made anew while only hands are counted.
#[derive(Clone)]
pub struct SameShown(pub Shown);

impl PartialEq for SameShown {
    fn eq(&self, o: &SameShown) -> bool {
        let (a, b) = (&self.0, &o.0);
        let fall = |q: &Shown| q.fallen.as_ref().map(|f| std::sync::Arc::as_ptr(&f.report));
        a.demo == b.demo && a.step == b.step && a.pair == b.pair && a.s == b.s && fall(a) == fall(b)
    }
}
