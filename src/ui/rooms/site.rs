//! The site walk: find and mark what matters, put ladder and anchor, fill the plan, and see what it comes to.

use super::bar::RoomBar;
use super::pair::Clock;
use super::site_told::{Card, Told};
use super::visit;
use crate::geometry::Geometry;
use crate::practice::site::*;
use crate::rules::{Method, place};
use crate::scenario::Scenario;
use crate::scene::camera::Frame;
use crate::scene::front::Front;
use crate::scene::ink::{Shape, cm};
use crate::scene::site::{
    front, front_frame, ladder_plan, ladder_tipping, plan, plan_frame, spots as all_spots,
};
use crate::studies::along_wall::Swing;
use crate::texts::Room as W;
use crate::texts::Stage as S;
use crate::texts::Walk as T;
use crate::texts::say::{Reader, upper_first};
use crate::ui::shared::asking;
use crate::ui::shared::figure::{defs, still};
use crate::ui::shared::settings::settings;
use crate::ui::shared::store;
use crate::ui::shared::view::{self, View};
use crate::units::{Quantity, Rounding, within};
use crate::worker::questions::Swings;
use leptos::prelude::*;
use serde::{Deserialize, Serialize};
use std::sync::Arc;
use wasm_bindgen::JsCast;

/// What is done.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Phase {
    /// Finding and marking.
    Walk,
    /// Ladder, anchor, method.
    Place,
    /// What it comes to.
    Told,
}

/// What moves once it is told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Plays {
    Nothing,
    Slip,
    Tip,
}

/// The signals of the room.
#[derive(Clone, Copy)]
pub struct On {
    pub site: RwSignal<Site>,
    pub marks: RwSignal<Vec<(Sort, Mark)>>,
    /// What is being asked about.
    pub open: RwSignal<Option<Sort>>,
    pub phase: RwSignal<Phase>,
    pub placed: RwSignal<Placed>,
    /// The method, once one is chosen.
    pub method: RwSignal<Option<Method>>,
    pub asks: RwSignal<bool>,
    /// On a phone: the plan instead of the front.
    pub above: RwSignal<bool>,
    /// The slip there, once the engine has answered; the inner one is none where it could not.
    pub swing: RwSignal<Option<Option<Arc<Swing>>>>,
    /// Answers to an earlier plan say nothing of this one.
    pub turn: StoredValue<u32>,
    pub plays: RwSignal<Plays>,
    pub clock: Clock,
    /// The place whose rules count.
    pub law: Memo<String>,
    /// The wind at which work stops, as typed.
    pub wind: RwSignal<String>,
}

/// What a reload or the browser's Back brings back.
#[derive(Serialize, Deserialize)]
struct Kept {
    seed: u64,
    marks: Vec<(Sort, Mark)>,
    placed: Placed,
    method: Option<Method>,
    phase: Phase,
    asks: bool,
    wind: String,
}

impl On {
    /// Begins at the property of a seed.
    pub fn begin(self, seed: u64) {
        let s = Site::drawn(seed);
        self.clock.stop();
        // It leans where the truck was unloaded: nobody has chosen yet.
        self.placed.set(Placed { anchor_m: WALL_M / 2.0, ..s.placed_at(0.75) });
        self.site.set(s);
        self.marks.set(vec![]);
        self.open.set(None);
        self.method.set(None);
        self.asks.set(false);
        self.swing.set(None);
        self.turn.update_value(|t| *t += 1);
        self.plays.set(Plays::Nothing);
        self.wind.set(String::new());
        self.phase.set(Phase::Walk);
    }

    /// Keeps it for this tab; reads every signal that it keeps, so an effect around it runs on each change.
    fn keep(self) {
        let kept = Kept {
            seed: self.site.with(|s| s.seed),
            marks: self.marks.get(),
            placed: self.placed.get(),
            method: self.method.get(),
            phase: self.phase.get(),
            asks: self.asks.get(),
            wind: self.wind.get(),
        };
        store::keep_here(store::SITE, &kept);
    }

    /// Goes on where this tab was left; false where there is nothing.
    fn take_up(self) -> bool {
        let Some(k) = store::kept_here::<Kept>(store::SITE) else { return false };
        let within = |x: f64| (0.0..=WALL_M).contains(&x);
        if !within(k.placed.ladder_m)
            || !within(k.placed.anchor_m)
            || !Site::drawn(k.seed).is_possible(&k.placed)
        {
            return false;
        }
        self.begin(k.seed);
        self.marks.set(k.marks);
        self.placed.set(k.placed);
        self.method.set(k.method);
        self.wind.set(k.wind);
        match k.phase {
            Phase::Told => self.lock(k.asks),
            phase => self.phase.set(phase),
        }
        true
    }

    /// Whether it is done from a ladder, with rope and grab.
    pub fn is_arrest(self) -> bool {
        self.method.get() == Some(Method::FallArrest)
    }

    /// What the plan comes to; none while the engine has not answered of the slip.
    pub fn said(self) -> Option<Vec<Said>> {
        let at = Placed { method: self.method.get().unwrap_or(Method::FallArrest), ..self.placed.get() };
        let mut all = self
            .site
            .with(|s| self.marks.with(|m| self.law.with(|law| s.said(m, &at, self.asks.get(), law))));
        if self.is_arrest() {
            let swing = self.swing.get()?;
            all.extend(Site::of_slip(swing.as_deref()));
            all.sort_by_key(|s| !s.is_grave());
        }
        Some(all)
    }

    /// The plan as a set-up of the bench.
    pub fn set_up(self) -> Scenario {
        let at = self.placed.get_untracked();
        let law = self.law.get_untracked();
        self.site.with_untracked(|s| self.marks.with_untracked(|m| s.set_up(&at, m, &law)))
    }

    fn mark(self, sort: Sort, as_what: Option<Mark>) {
        self.marks.update(|m| {
            m.retain(|q| q.0 != sort);
            if let Some(w) = as_what {
                m.push((sort, w));
            }
        });
        self.open.set(None);
        view::to_view("site-h");
    }

    /// Moves the ladder along the wall, on the grid.
    fn ladder_to(self, x_m: f64) {
        let x = (within(x_m, 0.5, WALL_M - 0.5) / GRID_M).round() * GRID_M;
        if self.placed.with_untracked(|p| (p.ladder_m - x).abs() > 1e-9) {
            self.placed.update(|p| p.ladder_m = x);
        }
    }

    fn anchor_to(self, x_m: f64) {
        let x = (within(x_m, 0.5, WALL_M - 0.5) / GRID_M).round() * GRID_M;
        self.placed.update(|p| p.anchor_m = x);
    }

    fn lock(self, asks: bool) {
        if self.method.with_untracked(Option::is_none) {
            return;
        }
        self.asks.set(asks);
        self.swing.set(None);
        self.turn.update_value(|t| *t += 1);
        self.phase.set(Phase::Told);
        view::to_view("site-told");
        let mine = self.turn.get_value();
        let at = self.placed.get_untracked();
        let Ok(s) = self.set_up().set_up() else { return self.swing.set(Some(None)) };
        let off = (at.ladder_m - at.anchor_m).abs();
        asking::ask(Swings(s), move |answer| {
            if self.turn.try_get_value() == Some(mine) {
                let near =
                    answer.ok().and_then(|all| all.into_iter().find(|w| (w.offset_m - off).abs() < 1e-6));
                let _ = self.swing.try_set(Some(near.map(Arc::new)));
            }
        });
    }

    /// Plays the slip or the tipping ladder for so long, s.
    pub fn play(self, what: Plays, lasts_s: f64) {
        self.clock.stop();
        self.plays.set(what);
        self.clock.end_s.set(lasts_s);
        self.clock.play_at(if what == Plays::Tip { 1.0 } else { 0.25 }, vec![]);
    }
}

/// How long a tipping ladder is looked at, s; only of the drawing.
pub const TIP_S: f64 = 1.6;

/// The room.
#[component]
pub fn SiteRoom() -> impl IntoView {
    view::fill_the_window();
    let (visit, settings) = (visit(), settings());
    let law = Memo::new(move |_| visit.set_up.with(|s| s.place.clone()));
    let site = Site::drawn(0);
    let on = On {
        placed: RwSignal::new(site.placed_at(0.75)),
        site: RwSignal::new(site),
        marks: RwSignal::new(vec![]),
        open: RwSignal::new(None),
        phase: RwSignal::new(Phase::Walk),
        method: RwSignal::new(None),
        asks: RwSignal::new(false),
        above: RwSignal::new(false),
        swing: RwSignal::new(None),
        plays: RwSignal::new(Plays::Nothing),
        clock: Clock::new(),
        law,
        turn: StoredValue::new(0),
        wind: RwSignal::new(String::new()),
    };
    if !on.take_up() {
        on.begin((js_sys::Math::random() * 1e9) as u64);
    }
    Effect::new(move |_| on.keep());
    view! {
        <main class="page walk" class:from-above=move || on.above.get()>
            <RoomBar back=W::BackToList to=Callback::new(|()| view::go(View::Lessons)) title=settings.s(T::Name) />
            <div class="walk-both">
                <div class="walk-pictures">
                    <div class="walk-which" role="group" aria-label=settings.s(T::Name)>
                        <button type="button" id="see-front" aria-pressed=move || (!on.above.get()).to_string() on:click=move |_| on.above.set(false)>{settings.s(T::Front)}</button>
                        <button type="button" id="see-plan" aria-pressed=move || on.above.get().to_string() on:click=move |_| on.above.set(true)>{settings.s(T::Plan)}</button></div>
                    <Picture on=on above=false /><Picture on=on above=true />
                </div>
                <section class="strip walk-strip">
                    {move || match on.phase.get() {
                        Phase::Walk => view! { <Walk on=on /> }.into_any(),
                        Phase::Place => view! { <Place on=on /> }.into_any(),
                        Phase::Told => view! { <Told on=on /> }.into_any(),
                    }}
                </section>
            </div>
            <Card on=on />
        </main>
    }
}

/// The front or the plan, with what was marked.
#[component]
fn Picture(on: On, above: bool) -> impl IntoView {
    let settings = settings();
    let frame: Frame = if above { plan_frame() } else { front_frame() };
    let built = move || on.site.with(|s| still(if above { plan(s) } else { front(s) }));
    let moving = move || {
        let stands = on.phase.get() != Phase::Walk && on.method.get().is_none_or(|m| m == Method::FallArrest);
        stands.then(|| if above { ladder_above(on) } else { ladder_front(on) })
    };
    let spots = move || {
        let r = settings.reader();
        let open = on.open.get();
        let walking = on.phase.get() == Phase::Walk;
        on.site.with(|s| {
            s.things.iter().zip(all_spots(s)).map(|(t, at)| {
                let at = at[usize::from(above)];
                let sort = t.sort;
                let n = on.marks.with(|m| m.iter().position(|q| q.0 == sort)).map(|i| (i + 1).to_string());
                let here = r.q(Quantity::Length, t.x_m, Rounding::Nearest);
                let looks = r.f(T::LooksAt, &[("what", r.t(sort.looks())), ("at", &here)]);
                let label = n.as_ref().map_or_else(|| looks.clone(), |n| format!("{n}{}{}", r.colon(), r.t(sort.looks())));
                let go = move || { on.open.set(Some(sort)); view::to_view("site-h") };
                let key = move |ev: web_sys::KeyboardEvent| if matches!(ev.key().as_str(), "Enter" | " ") { ev.prevent_default(); go() };
                let disc = n.map(|n| // Beside the thing, not on it.
                    view! { <g transform="translate(48 -52)"><circle class="walk-disc" r="36" /><text class="walk-number" y="15" text-anchor="middle">{n}</text></g> });
                let transform = format!("translate({} {})", cm(at.x), cm(-at.y));
                if walking {
                    view! { <g class="walk-spot" class:here=open == Some(sort) transform=transform role="button" tabindex="0" aria-label=label data-sort=format!("{sort:?}") on:click=move |_| go() on:keydown=key>
                        <circle class="walk-hit" r="92" />{disc}</g> }.into_any()
                } else {
                    view! { <g transform=transform>{disc}</g> }.into_any()
                }
            }).collect_view()
        })
    };
    let name = if above { T::Plan } else { T::Front };
    // Where nothing can be tapped, the picture itself says what stands where.
    let words = move || {
        let r = settings.reader();
        if on.phase.get() == Phase::Walk {
            r.t(name).to_owned()
        } else {
            format!("{}{}{}", r.t(name), r.colon(), on.site.with(|s| where_all(r, s)))
        }
    };
    // The ladder is taken along the wall.
    let held = StoredValue::new(false);
    let pull = move |ev: &web_sys::PointerEvent| {
        if !held.get_value() {
            return;
        }
        let Some(e) = ev.current_target().and_then(|t| t.dyn_into::<web_sys::Element>().ok()) else { return };
        let b = e.get_bounding_client_rect();
        let scale = (b.width() / frame.width_m()).min(b.height() / frame.height_m());
        if scale > 0.0 {
            on.ladder_to(
                (f64::from(ev.client_x()) - b.left() - b.width() / 2.0) / scale
                    + (frame.left_m + frame.right_m) / 2.0,
            );
        }
    };
    let down = move |ev: web_sys::PointerEvent| {
        let shown = on.method.with_untracked(|m| m.is_none_or(|m| m == Method::FallArrest));
        if on.phase.get_untracked() == Phase::Place && shown && ev.button() == 0 {
            ev.prevent_default();
            held.set_value(true);
            if let Some(e) = ev.current_target().and_then(|t| t.dyn_into::<web_sys::Element>().ok()) {
                let _ = e.set_pointer_capture(ev.pointer_id());
            }
            pull(&ev);
        }
    };
    // On a phone the picture is wider than the pane: the house in the middle.
    let pane = NodeRef::<leptos::html::Div>::new();
    Effect::new(move |_| {
        on.above.track();
        if let Some(e) = pane.get() {
            e.set_scroll_left((e.scroll_width() - e.client_width()) / 2);
        }
    });
    view! {
        <div node_ref=pane class="walk-view" class:plan-view=above class:front-view=!above class:can-take=move || on.phase.get() == Phase::Place><strong class="walk-name">{settings.s(name)}</strong>
            <svg class="drawing walk-drawing" viewBox=frame.view_box() preserveAspectRatio="xMidYMid meet" role="group" aria-label=words
                on:pointerdown=down on:pointermove=move |ev: web_sys::PointerEvent| pull(&ev) on:pointerup=move |_| held.set_value(false) on:pointercancel=move |_| held.set_value(false)>
                {defs()}{built}{moving}{spots}</svg></div>
    }
}

/// What stands where along the wall, in words.
pub fn where_all(r: Reader, s: &Site) -> String {
    let len = |m: f64| r.q(Quantity::Length, m, Rounding::Nearest);
    let things = s.things.iter().map(|t| {
        let (a, b) = (len(t.x_m - t.half_m), len(t.x_m + t.half_m));
        r.f(T::StandsAt, &[("what", r.t(t.sort.looks())), ("a", &a), ("b", &b)])
    });
    let windows = WINDOWS_M.iter().map(|x| r.f(T::WindowAt, &[("at", &len(*x))]));
    let pole = std::iter::once(r.f(T::PoleAt, &[("at", &len(s.pole_m))]));
    things.chain(windows).chain(pole).collect::<Vec<_>>().join("; ")
}

fn ladder_above(on: On) -> AnyView {
    let turned = if on.plays.get() == Plays::Tip { tip_turn(on) } else { 0.0 };
    on.site.with(|s| on.placed.with(|at| still(ladder_plan(s, at, turned)).into_any()))
}

/// How far the ladder has gone over by now, towards the nearest wire.
fn tip_turn(on: On) -> f64 {
    let k = (on.clock.now_s.get() / TIP_S).clamp(0.0, 1.0);
    let side = on.site.with(|s| if s.pole_m > on.placed.with(|p| p.ladder_m) { 1.0 } else { -1.0 });
    side * (k * k).min(1.0)
}

fn ladder_front(on: On) -> AnyView {
    let plays = on.plays.get();
    on.site.with(|s| {
        on.placed.with(|at| {
            if plays == Plays::Tip {
                return still(ladder_tipping(s, at, tip_turn(on))).into_any();
            }
            let set_up = on.law.with(|law| on.marks.with(|m| s.set_up(at, m, law)));
            let Some(g) = Geometry::of(&set_up) else { return ().into_any() };
            let off = at.ladder_m - at.anchor_m;
            let side = if off < 0.0 { -1.0 } else { 1.0 };
            let swing = on.swing.get().flatten().filter(|_| plays == Plays::Slip);
            let swung = swing.and_then(|w| w.free.at(on.clock.now_s.get()));
            let shapes: Vec<Shape> = Front { along_m: off.abs(), swung, ..Front::of(&set_up, &g) }.moving();
            let at = format!("translate({} 0) scale({side} 1)", cm(at.anchor_m));
            view! { <g transform=at>{still(shapes)}</g> }.into_any()
        })
    })
}

/// Finding and marking.
#[component]
fn Walk(on: On) -> impl IntoView {
    let settings = settings();
    let job = move || {
        let r = settings.reader();
        on.site.with(|s| {
            let len = |m: f64| r.q(Quantity::Length, m, Rounding::Nearest);
            let lift = if s.lift { r.t(T::JobLift) } else { "" };
            let job = r.f(
                T::Job,
                &[
                    ("work", r.t(s.work.label())),
                    ("a", &len(s.job_m - JOB_REACH_M)),
                    ("b", &len(s.job_m + JOB_REACH_M)),
                    ("eave", &len(s.eave_m)),
                    ("lift", lift),
                ],
            );
            let roof = r.t(if s.wet { T::Wet } else { T::Dry });
            format!("{job} {}", r.f(T::WeatherNow, &[("wind", &s.wind_km_h.to_string()), ("roof", roof)]))
        })
    };
    let list = move || {
        let r = settings.reader();
        let all = on.marks.get().into_iter().enumerate().map(|(i, (sort, m))| {
            let words = said_of(r, sort, m);
            view! { <li><button type="button" class="walk-row" on:click=move |_| { on.open.set(Some(sort)); view::to_view("site-h") }><b aria-hidden="true">{i + 1}</b><span><strong>{upper_first(r.t(sort.looks()))}</strong><small>{words}</small></span></button></li> }
        });
        all.collect_view()
    };
    view! {
        {move || match on.open.get() {
            Some(sort) => view! { <About on=on sort=sort /> }.into_any(),
            None => view! {
                <p class="stem"><strong id="site-h" tabindex="-1">{settings.s(T::Lead)}</strong></p>
                <p class="hint walk-slide">{settings.s(T::Slide)}</p><p class="hint">{job}</p>
                <ul class="walk-list">{list}</ul>
                <div class="next"><button type="button" class="main" id="to-place" on:click=move |_| { on.phase.set(Phase::Place); on.above.set(true); view::to_view("site-h") }>{settings.s(T::ToPlan)}</button></div>
                <Why />
            }.into_any(),
        }}
    }
}

/// What somebody said of a thing.
pub fn said_of(r: Reader, sort: Sort, m: Mark) -> &'static str {
    match m {
        Mark::Wire(kind) => r.t(kind.label()),
        Mark::Right => r.t(sort.right()),
        Mark::Wrong => r.t(sort.wrong()),
        Mark::Other => r.t(sort.other()),
        Mark::Asks => r.t(T::Asks),
    }
}

/// One thing: of a wire its kind, of anything else what to do.
#[component]
fn About(on: On, sort: Sort) -> impl IntoView {
    let settings = settings();
    let mut all: Vec<Mark> = if sort.is_wire() {
        [Sort::ServiceDrop, Sort::Line, Sort::Phone].map(Mark::Wire).to_vec()
    } else {
        vec![Mark::Right, Mark::Wrong, Mark::Other]
    };
    // In an order that tells nothing.
    let turn = on.site.with_untracked(|s| s.seed as usize + sort as usize);
    all.rotate_left(turn % 3);
    all.push(Mark::Asks);
    let before = on.marks.with_untracked(|m| m.iter().find(|q| q.0 == sort).map(|q| q.1));
    let pills = all.into_iter().map(|m| {
        let words = move || said_of(settings.reader(), sort, m);
        view! { <button type="button" class="walk-answer" data-mark=format!("{m:?}") aria-pressed=(before == Some(m)).to_string() on:click=move |_| on.mark(sort, Some(m))>{words}</button> }
    });
    let asked = if sort.is_wire() { T::AskWire } else { T::AskDo };
    view! {
        <p class="stem"><strong id="site-h" tabindex="-1">{move || upper_first(settings.t(sort.looks()))}". "{settings.s(asked)}</strong></p>
        <div class="walk-answers">{pills.collect_view()}</div>
        <div class="next"><button type="button" id="walk-off" on:click=move |_| on.mark(sort, None)>{move || settings.t(if before.is_some() { T::Unmark } else { T::NotHere })}</button></div>
    }
}

/// Sources and what is left out.
#[component]
pub fn Why() -> impl IntoView {
    let settings = settings();
    view! { <details class="guide"><summary>{settings.s(S::Why)}</summary><p class="hint">{settings.s(T::Note)}</p><p class="source">{settings.s(T::Sources)}</p></details> }
}

/// A method as it is called here.
pub fn method_words(m: Method) -> T {
    match m {
        Method::FromGround => T::MethodGround,
        Method::Platform => T::MethodLift,
        _ => T::MethodArrest,
    }
}

/// A value with a step to either side.
#[component]
fn Steps(
    id: &'static str,
    #[prop(into)] words: Signal<String>,
    less: (Signal<String>, Callback<()>),
    more: (Signal<String>, Callback<()>),
) -> impl IntoView {
    view! {
        <div class="walk-steps" role="group" aria-label=words><button type="button" class="step" id=format!("{id}-less") aria-label=less.0 on:click=move |_| less.1.run(())>"−"</button>
            <output>{words}</output><button type="button" class="step" id=format!("{id}-more") aria-label=more.0 on:click=move |_| more.1.run(())>"+"</button></div>
    }
}

/// Method, ladder, anchor, and the rest of the plan.
#[component]
fn Place(on: On) -> impl IntoView {
    let settings = settings();
    let len = move |m: f64| settings.reader().q(Quantity::Length, m, Rounding::Nearest);
    let order = on.law.with_untracked(|law| {
        let mut all = [Method::FromGround, Method::Platform, Method::FallArrest];
        if place(law).is_some_and(|p| p.ranks_before(Method::Platform, Method::FromGround)) {
            all.swap(0, 1);
        }
        all
    });
    let methods = order.map(|m| {
        view! { <label class="pill"><input type="radio" name="walk-method" prop:checked=move || on.method.get() == Some(m) on:change=move |_| on.method.set(Some(m)) /><span>{settings.s(method_words(m))}</span></label> }
    });
    let side = move |key: T, what: T| {
        Signal::derive(move || settings.reader().f(key, &[("what", settings.t(what))]))
    };
    let word = move |key: T| Signal::derive(move || settings.t(key).to_owned());
    let ladder = move || settings.reader().f(T::LadderAt, &[("at", &len(on.placed.with(|p| p.ladder_m)))]);
    let foot = move || settings.reader().f(T::Foot, &[("at", &len(on.placed.with(|p| p.foot_m)))]);
    let anchor = move || settings.reader().f(T::AnchorAt, &[("at", &len(on.placed.with(|p| p.anchor_m)))]);
    let by = move |m: f64| move |()| on.ladder_to(on.placed.with_untracked(|p| p.ladder_m) + m);
    let foot_by = move |m: f64| {
        move |()| {
            let now = on.placed.get_untracked();
            let then = Placed { foot_m: ((now.foot_m + m) * 20.0).round() / 20.0, ..now };
            if on.site.with_untracked(|s| s.is_possible(&then)) {
                on.placed.set(then);
            }
        }
    };
    let anchor_by = move |m: f64| move |()| on.anchor_to(on.placed.with_untracked(|p| p.anchor_m) + m);
    let arrest = move || on.is_arrest();
    // Kept as typed; read where it can be.
    let wind = move |ev: web_sys::Event| {
        let text = event_target_value(&ev);
        let v = text.trim().replace(',', ".").parse::<f64>().ok().filter(|v| (1.0..=200.0).contains(v));
        on.placed.update(|p| p.stop_km_h = v.map(|v| v.floor() as u32));
        on.wind.set(text);
    };
    let unread = move || on.placed.with(|p| p.stop_km_h.is_none()) && on.wind.with(|w| !w.trim().is_empty());
    view! {
        <fieldset><legend id="site-h" tabindex="-1">{settings.s(T::Method)}</legend><div class="pills walk-methods">{methods}</div></fieldset>
        <Show when=arrest>
            <div class="walk-place">
                <Steps id="ladder" words=Signal::derive(ladder) less=(side(T::Left, T::Ladder), Callback::new(by(-GRID_M))) more=(side(T::Right, T::Ladder), Callback::new(by(GRID_M))) />
                <Steps id="foot" words=Signal::derive(foot) less=(word(T::Nearer), Callback::new(foot_by(-0.1))) more=(word(T::Further), Callback::new(foot_by(0.1))) />
                <Steps id="anchor" words=Signal::derive(anchor) less=(side(T::Left, T::AnchorWord), Callback::new(anchor_by(-GRID_M))) more=(side(T::Right, T::AnchorWord), Callback::new(anchor_by(GRID_M))) />
                <button type="button" id="anchor-above" on:click=move |_| on.anchor_to(on.placed.with_untracked(|p| p.ladder_m))>{settings.s(T::Above)}</button>
                <p class="hint">{settings.s(T::Ring)}</p>
            </div>
            <Rest on=on />
        </Show>
        <label class="walk-wind"><span>{settings.s(T::Stop)}</span><input type="text" inputmode="decimal" id="walk-wind" autocomplete="off" prop:value=move || on.wind.get() on:input=wind />
            {move || if unread() { view! { <small class="problems" role="alert">{settings.s(T::StopUnread)}</small> }.into_any() } else { view! { <small>{settings.s(T::StopWhose)}</small> }.into_any() }}</label>
        <div class="next">
            <button type="button" id="walk-back" on:click=move |_| { on.phase.set(Phase::Walk); view::to_view("site-h") }>{settings.s(T::Back)}</button>
            <button type="button" id="walk-ask" aria-disabled=move || on.method.with(Option::is_none).to_string() on:click=move |_| on.lock(true)>{settings.s(T::Ask)}</button>
            <button type="button" class="main" id="walk-go" aria-disabled=move || on.method.with(Option::is_none).to_string() on:click=move |_| on.lock(false)>{move || settings.t(if on.method.with(Option::is_none) { T::PickMethod } else { T::Go })}</button></div>
    }
}

/// Who goes first, and from where somebody who hangs is reached.
#[component]
fn Rest(on: On) -> impl IntoView {
    let settings = settings();
    let firsts = [(First::Thrown, T::FirstThrown), (First::Quick, T::FirstQuick), (First::Lift, T::FirstLift)].map(|(f, w)| {
        view! { <label class="pill"><input type="radio" name="walk-first" prop:checked=move || on.placed.with(|p| p.first == Some(f)) on:change=move |_| on.placed.update(|p| p.first = Some(f)) /><span>{settings.s(w)}</span></label> }
    });
    let reaches = [Reach::FireService, Reach::Window, Reach::SecondLadder].map(|w| {
        view! { <label class="pill"><input type="radio" name="walk-reach" prop:checked=move || on.placed.with(|p| p.reach == Some(w)) on:change=move |_| on.placed.update(|p| p.reach = Some(w)) /><span>{settings.s(w.label())}</span></label> }
    });
    view! {
        <fieldset><legend>{settings.s(T::FirstUp)}</legend><div class="pills">{firsts}</div></fieldset>
        <fieldset><legend>{settings.s(T::Hangs)}</legend><div class="pills">{reaches}</div></fieldset>
    }
}
