//! Two set-ups side by side on one clock: each in its own pane, at one scale, with a flag where the boots are said
//! to stop and a line where they did.

use crate::geometry::{Geometry, p};
use crate::physics::trace::{EventKind, Trace};
use crate::scenario::Scenario;
use crate::scene::camera::Frame;
use crate::scene::figure::figure;
use crate::scene::front::Front;
use crate::scene::house::house;
use crate::scene::ink::{cm, line};
use crate::scene::lens::Lens;
use crate::scene::{at, standing_scene};
use crate::studies::along_wall::Swing;
use crate::texts::Room as W;
use crate::texts::say;
use crate::ui::shared::figure::{Moving, decisive_s, defs, still};
use crate::ui::shared::settings::settings;
use crate::ui::shared::view;
use crate::units::{Quantity, Rounding, within};
use leptos::html::Div;
use leptos::prelude::*;
use std::sync::Arc;
use wasm_bindgen::JsCast;

/// Both falls, once they are there.
pub type Fallen = (Arc<Trace>, Arc<Trace>);

/// So long the clock stands at a named moment, ms.
const STOP_MS: f64 = 1000.0;
/// Stills in place of a film, for who asked for less motion, and how long each stands.
const STILLS: u32 = 5;
const STILL_FOR: std::time::Duration = std::time::Duration::from_millis(900);

/// A clock over finished falls.
#[derive(Clone, Copy)]
pub struct Clock {
    /// Now, s.
    pub now_s: RwSignal<f64>,
    /// Its end, s.
    pub end_s: RwSignal<f64>,
    /// Whether it runs.
    pub runs: RwSignal<bool>,
    turn: StoredValue<u32>,
}

impl Clock {
    /// One that stands at the slip; it stops with its component.
    pub fn new() -> Clock {
        let turn = StoredValue::new(0_u32);
        on_cleanup(move || {
            turn.try_update_value(|t| *t += 1);
        });
        Clock { now_s: RwSignal::new(0.0), end_s: RwSignal::new(1.0), runs: RwSignal::new(false), turn }
    }

    /// Stops where it is. Whoever was waiting for it may be gone, and then it does nothing.
    pub fn stop(self) {
        self.turn.try_update_value(|t| *t += 1);
        let _ = self.runs.try_set(false);
    }

    /// Goes to a time, s, and stays.
    pub fn seek(self, time_s: f64) {
        self.stop();
        self.now_s.set(within(time_s, 0.0, self.end_s.get_untracked()));
    }

    /// Runs from the slip at a quarter of true speed; for who asked for less motion as five stills.
    pub fn play(self) {
        self.play_at(0.25, vec![]);
    }

    /// Runs from the slip at a speed, and stands for a second at each of these times, s.
    pub fn play_at(self, speed: f64, stops_s: Vec<f64>) {
        self.stop();
        let (Some(mine), Some(end_s)) = (self.turn.try_get_value(), self.end_s.try_get_untracked()) else {
            return;
        };
        self.now_s.set(0.0);
        self.runs.set(true);
        if view::wants_less_motion() {
            return self.next_still(mine, end_s, 1);
        }
        let now_ms = window().performance().map_or(0.0, |p| p.now());
        self.frame(mine, (now_ms, 0.0), speed, stops_s);
    }

    /// The stills after the first, one after the other.
    fn next_still(self, mine: u32, end_s: f64, n: u32) {
        set_timeout(
            move || {
                if self.turn.try_get_value() != Some(mine) {
                    return;
                }
                self.now_s.set(end_s * f64::from(n) / f64::from(STILLS - 1));
                if n + 1 < STILLS {
                    self.next_still(mine, end_s, n + 1);
                } else {
                    self.runs.set(false);
                }
            },
            STILL_FOR,
        );
    }

    fn frame(self, mine: u32, (last_ms, mut wait_ms): (f64, f64), speed: f64, stops_s: Vec<f64>) {
        request_animation_frame(move || {
            if self.turn.try_get_value() != Some(mine) {
                return;
            }
            let now_ms = window().performance().map_or(last_ms, |p| p.now());
            let (end_s, at_s) = (self.end_s.get_untracked(), self.now_s.get_untracked());
            let passed_ms = (now_ms - last_ms).min(100.0);
            if wait_ms > 0.0 {
                wait_ms -= passed_ms;
                return self.frame(mine, (now_ms, wait_ms), speed, stops_s);
            }
            let next_s = (at_s + passed_ms / 1e3 * speed).min(end_s);
            let stop_s = stops_s.iter().copied().filter(|s| *s > at_s && *s <= next_s).reduce(f64::min);
            let next_s = stop_s.unwrap_or(next_s);
            self.now_s.set(next_s);
            if next_s < end_s {
                let wait_ms = if stop_s.is_some() { STOP_MS } else { 0.0 };
                self.frame(mine, (now_ms, wait_ms), speed, stops_s);
            } else {
                self.runs.set(false);
            }
        });
    }
}

/// So long both falls are looked at: until just past what decides the later one, s.
pub fn film_s(falls: &Fallen) -> f64 {
    // Who comes down is seen to the ground.
    let end = |t: &Trace| {
        let landed =
            [EventKind::StrikesGround, EventKind::StrikesObstacle].into_iter().filter_map(|k| t.time_of(k));
        landed.fold(decisive_s(t), f64::max)
    };
    end(&falls.0).max(end(&falls.1)) + 0.05
}

/// Named moments of a fall that matter for comparing, and when, s.
pub fn moments(t: &Trace) -> Vec<(EventKind, f64)> {
    use EventKind as E;
    [
        E::Lowest,
        E::Taut,
        E::GrabRuns,
        E::OffRope,
        E::AnchorFails,
        E::RopeBreaks,
        E::LinkBreaks,
        E::StrikesGround,
    ]
    .into_iter()
    .filter_map(|k| t.time_of(k).map(|at_s| (k, at_s)))
    .collect()
}

/// The part of the plane that both panes show: from over the head down to where the lower one can come.
pub fn frame(pair: &[Scenario; 2]) -> Option<Frame> {
    let mut all: Option<Frame> = None;
    for s in pair {
        let g = Geometry::of(s)?;
        let f = Frame {
            left_m: g.soles.x.min(g.grab.x) - 1.1,
            right_m: g.soles.x + 1.25,
            bottom_m: g.surface_below_m(g.soles.x, 0.3).min(g.ground_y_m(g.ladder.foot.x)) - 0.35,
            top_m: (g.soles.y + s.worker.stature_m).max(g.grab.y).max(g.eave.y) + 0.35,
        };
        all = Some(all.map_or(f, |a| a.with(f)));
    }
    all
}

/// Where the soles are before the slip, m over the datum.
pub fn boots_m(s: &Scenario) -> f64 {
    Geometry::of(s).map_or(0.0, |g| g.soles.y)
}

/// What a pane shows of one of the two.
pub struct Side {
    /// A or B.
    pub letter: &'static str,
    /// What differs, from near.
    pub lens: Option<Lens>,
    /// Where its boots are said to stop, m; none where that is not asked.
    pub flag: Option<RwSignal<f64>>,
}

/// One of the two; or, before they fall, both in one picture where only a small part differs.
#[component]
pub fn Panel(
    sides: Vec<Side>,
    set_up: Scenario,
    frame: Frame,
    clock: Clock,
    /// Its fall.
    fall: Signal<Option<Arc<Trace>>>,
    /// Where the other's boots stopped, m, once it is known.
    #[prop(into)]
    other_low: Signal<Option<f64>>,
    /// The guess is open.
    #[prop(into)]
    open: Signal<bool>,
) -> impl IntoView {
    let settings = settings();
    let pane = NodeRef::<Div>::new();
    let g = StoredValue::new(Geometry::of(&set_up));
    let set_up = StoredValue::new(set_up);
    let moving = Memo::new(move |_| {
        let now_s = clock.now_s.get();
        let t = fall.get();
        g.with_value(|g| {
            let Some(g) = g.as_ref() else { return vec![] };
            set_up.with_value(|s| {
                let q = t.as_ref().and_then(|t| at(s, g, t, now_s)).unwrap_or_else(|| standing_scene(s, g));
                figure(&q, s, g)
            })
        })
    });
    let house = g.with_value(|g| g.as_ref().map(|g| set_up.with_value(|s| still(house(g, s)))));
    let words = move || set_up.with_value(|s| say::state(settings.reader(), s).join(" "));
    let letter = sides.first().map_or("A", |s| s.letter);
    let both = sides.len() > 1;
    let dashes = move || {
        let y = other_low.get()?;
        let own = fall.get().map(|t| t.lowest_point_m)?;
        let at = |y: f64| line(&[p(frame.left_m - 3.0, y), p(frame.right_m + 3.0, y)]);
        let other = if letter == "A" { "B" } else { "A" };
        // Two names on one line would hide each other.
        let apart = (y - own).abs() > 0.35;
        let name = |y: f64, text: &'static str| view! { <text class="low-name" transform="scale(1,-1)" x=cm(frame.left_m + 0.06) y=cm(-y - 0.06)>{text}</text> };
        Some(
            view! { <path class="other-low" d=at(y) /><path class="own-low" d=at(own) />{name(own, letter)}{apart.then(|| name(y, other))} },
        )
    };
    let flags: Vec<_> = sides.iter().filter_map(|s| s.flag.map(|f| (s.letter, f))).collect();
    let marks = sides.into_iter().map(|side| {
        let lens = side.lens.map(|all| {
            let paths = all.into_iter().map(|(c, d)| view! { <path class=c d=d /> }).collect_view();
            view! { <svg class="lens" viewBox="0 0 120 120" aria-hidden="true">{paths}</svg> }
        });
        view! { <div class="side" class:is-b=side.letter == "B"><b class="letter" aria-hidden="true">{side.letter}</b>{lens}</div> }
    });
    let marks = view! { <div class="sides">{marks.collect_view()}</div> };
    // Pixels of the pane to metres, as 'meet' shows the frame.
    let metres = move |client_y: f64| {
        let r = pane.get_untracked()?.get_bounding_client_rect();
        let k = (r.width() / frame.width_m()).min(r.height() / frame.height_m());
        let top = r.top() + (r.height() - frame.height_m() * k) / 2.0;
        Some(frame.top_m - (client_y - top) / k.max(1e-6))
    };
    let kept = StoredValue::new(flags);
    // The flag that is held: the nearer one to where it was taken.
    let held = StoredValue::new(None::<RwSignal<f64>>);
    let to = move |ev: &web_sys::PointerEvent| {
        if let (Some(f), true, Some(y)) =
            (held.get_value(), open.get_untracked(), metres(f64::from(ev.client_y())))
        {
            f.set(clamped(frame, y));
        }
    };
    let take = move |ev: web_sys::PointerEvent| {
        let Some(y) = metres(f64::from(ev.client_y())).filter(|_| open.get_untracked()) else { return };
        let away = |f: &RwSignal<f64>| (f.get_untracked() - y).abs();
        let nearest =
            kept.with_value(|all| all.iter().map(|(_, f)| *f).min_by(|a, b| away(a).total_cmp(&away(b))));
        if nearest.is_none() {
            return;
        }
        ev.prevent_default();
        held.set_value(nearest);
        if let Some(e) = ev.current_target().and_then(|t| t.dyn_into::<web_sys::Element>().ok()) {
            let _ = e.set_pointer_capture(ev.pointer_id());
        }
        to(&ev);
    };
    let flag = move |(letter, f): (&'static str, RwSignal<f64>)| {
        move || {
            let y = f.get();
            let len = settings.reader().q(Quantity::Length, y, Rounding::Nearest);
            let value = if both { format!("{letter} {len}") } else { len };
            // Once it is locked it steps back from the body: a stump on the right.
            let right = frame.right_m;
            let from = if open.get() { frame.left_m + 0.5 } else { right - 0.22 };
            let d = line(&[p(from, y), p(right, y)]);
            // Of two the higher is written over its line, the lower under it.
            let over = both
                && kept.with_value(|all| {
                    all.iter()
                        .all(|(other, o)| *other == letter || o.get() < y || (o.get() == y && letter == "A"))
                });
            let dy = if over { -0.08 } else { 0.3 };
            view! {
                <g class="pair-flag" class:open=move || open.get() class:is-b=letter == "B">
                    <path class="pole" d=d transform="scale(1,-1)" />
                    {open.get().then(|| view! { <text x=cm(right - 0.06) y=cm(-y + dy) text-anchor="end">{value}</text> })}
                </g>
            }
        }
    };
    let flag_shapes = kept.with_value(|all| all.iter().map(|f| flag(*f)).collect_view());
    view! {
        <div class="pair-pane" node_ref=pane on:pointerdown=take
            on:pointermove=move |ev| to(&ev)
            on:pointerup=move |_| held.set_value(None) on:pointercancel=move |_| held.set_value(None)>
            <svg class="drawing" viewBox=frame.view_box() preserveAspectRatio="xMidYMid meet" role="img" aria-label=words>
                {defs()}
                {house}
                <g transform="scale(1,-1)">{dashes}</g>
                <Moving shapes=moving.into() class="figure" />
                {flag_shapes}
            </svg>
            {marks}
        </div>
    }
}

/// A fall along the wall from in front, on a clock: where the ring is now, and its whole way.
#[component]
pub fn SwingPane(
    set_up: Scenario,
    along_m: f64,
    swing: Arc<Swing>,
    clock: Clock,
    label: String,
) -> impl IntoView {
    let g = Geometry::of(&set_up);
    let shown = g.map(|g| {
        let f = Front { along_m, swing: Some(&swing), ..Front::of(&set_up, &g) };
        let frame = f.bounds().view_box();
        let way: Vec<_> = f.moving().into_iter().filter(|q| q.class == "swing").collect();
        let behind = still(Front::of(&set_up, &g).behind());
        let now = {
            let (set_up, g) = (set_up.clone(), g.clone());
            move || {
                let swung = swing.free.at(clock.now_s.get());
                still(Front { along_m, swung, ..Front::of(&set_up, &g) }.moving())
            }
        };
        view! { <svg class="drawing front" viewBox=frame preserveAspectRatio="xMidYMid meet" role="img" aria-label=label>{defs()}{behind}{still(way)}{now}</svg> }
    });
    view! { <div class="pair-pane">{shown}</div> }
}

/// How long a fall along the wall is looked at, s: to where the feet come down, else to the end of the swing.
pub fn swing_s(w: &Swing) -> f64 {
    w.free.lands_s().unwrap_or_else(|| w.free.lasts_s())
}

/// Within what the pane shows.
pub fn clamped(frame: Frame, y_m: f64) -> f64 {
    (within(y_m, frame.bottom_m + 0.35, frame.top_m - 0.2) * 10.0).round() / 10.0
}

/// A flag's height by buttons and keys, for one of the two.
#[component]
pub fn FlagField(
    letter: &'static str,
    flag: RwSignal<f64>,
    frame: Frame,
    #[prop(into)] open: Signal<bool>,
) -> impl IntoView {
    let settings = settings();
    let nudge = move |by: f64| flag.set(clamped(frame, flag.get_untracked() + by));
    let shown = move || settings.reader().q(Quantity::Length, flag.get(), Rounding::Nearest);
    let name = move || settings.reader().f(W::LessonFlag, &[("letter", letter)]);
    view! {
        <div class="flag-field" role="group" aria-label=name>
            <b aria-hidden="true">{letter}</b>
            <button type="button" class="step" aria-label=move || format!("{} −", name()) prop:disabled=move || !open.get() on:click=move |_| nudge(-0.1)>"−"</button>
            <span role="spinbutton" tabindex="0" aria-label=name aria-valuetext=shown aria-valuenow=move || flag.get().to_string()
                on:keydown=move |ev| {
                    let by = match ev.key().as_str() { "ArrowUp" => 0.1, "ArrowDown" => -0.1, "PageUp" => 0.5, "PageDown" => -0.5, _ => return };
                    ev.prevent_default();
                    if open.get_untracked() { nudge(by) }
                }>{shown}</span>
            <button type="button" class="step" aria-label=move || format!("{} +", name()) prop:disabled=move || !open.get() on:click=move |_| nudge(0.1)>"+"</button>
        </div>
    }
}
