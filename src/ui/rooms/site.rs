//! The site walk: find and mark what matters, put ladder and anchor, fill the plan, and see what it comes to.

use super::bar::RoomBar;
use super::pair::{Clock, swing_s};
use super::paper::{Foot, Head};
use super::visit;
use crate::geometry::Geometry;
use crate::practice::site::*;
use crate::rules::{DutyKind, HARD_SWING_M_S, LimitKind, Method, Severity, place};
use crate::scene::camera::Frame;
use crate::scene::front::Front;
use crate::scene::ink::{Shape, cm};
use crate::scene::site::{front, front_frame, ladder_plan, ladder_tipping, plan, plan_frame, spot};
use crate::studies::along_wall::Swing;
use crate::texts::Room as W;
use crate::texts::Stage as S;
use crate::texts::Walk as T;
use crate::texts::say::Reader;
use crate::texts::{Gear, Text};
use crate::ui::shared::asking;
use crate::ui::shared::figure::{defs, still};
use crate::ui::shared::settings::settings;
use crate::ui::shared::signs::mark;
use crate::ui::shared::view::{self, View};
use crate::units::{Quantity, Rounding, within};
use crate::worker::questions::Swings;
use leptos::prelude::*;
use std::sync::Arc;
use wasm_bindgen::JsCast;

/// What is done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Phase {
    /// Finding and marking.
    Walk,
    /// Ladder, anchor, method.
    Place,
    /// What it comes to.
    Told,
}

/// What moves once it is told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Plays {
    Nothing,
    Slip,
    Tip,
}

/// The signals of the room.
#[derive(Clone, Copy)]
struct On {
    site: RwSignal<Site>,
    marks: RwSignal<Vec<(Sort, Mark)>>,
    /// What is being asked about.
    open: RwSignal<Option<Sort>>,
    phase: RwSignal<Phase>,
    placed: RwSignal<Placed>,
    /// The method, once one is chosen.
    method: RwSignal<Option<Method>>,
    asks: RwSignal<bool>,
    /// On a phone: the plan instead of the front.
    above: RwSignal<bool>,
    swing: RwSignal<Option<Arc<Swing>>>,
    plays: RwSignal<Plays>,
    clock: Clock,
    law: StoredValue<String>,
}

impl On {
    fn begin(self, seed: u64) {
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
        self.plays.set(Plays::Nothing);
        self.phase.set(Phase::Walk);
    }

    fn said(self) -> Vec<Said> {
        let at = Placed { method: self.method.get().unwrap_or(Method::FallArrest), ..self.placed.get() };
        self.site
            .with(|s| self.marks.with(|m| self.law.with_value(|law| s.said(m, &at, self.asks.get(), law))))
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
        self.phase.set(Phase::Told);
        view::to_view("site-told");
        let at = self.placed.get_untracked();
        let s = self.law.with_value(|law| self.site.with_untracked(|s| s.set_up(&at, law)));
        let Ok(s) = s.set_up() else { return };
        let off = (at.ladder_m - at.anchor_m).abs();
        asking::ask(Swings(s), move |answer| {
            let near = answer.ok().and_then(|all| all.into_iter().find(|w| (w.offset_m - off).abs() < 1e-6));
            let _ = self.swing.try_set(near.map(Arc::new));
        });
    }

    fn play(self, what: Plays) {
        self.clock.stop();
        self.plays.set(what);
        let end = match what {
            Plays::Slip => self.swing.with_untracked(|w| w.as_ref().map_or(1.0, |w| swing_s(w))),
            _ => TIP_S,
        };
        self.clock.end_s.set(end);
        self.clock.play_at(if what == Plays::Tip { 1.0 } else { 0.25 }, vec![]);
    }
}

/// How long a tipping ladder is looked at, s; only of the drawing.
const TIP_S: f64 = 1.6;

/// The room.
#[component]
pub fn SiteRoom() -> impl IntoView {
    view::fill_the_window();
    let (visit, settings) = (visit(), settings());
    let law = visit.set_up.with_untracked(|s| s.place.clone());
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
        law: StoredValue::new(law),
    };
    on.begin((js_sys::Math::random() * 1e9) as u64);
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
            s.things.iter().map(|t| {
                let at = spot(s, t)[usize::from(above)];
                let sort = t.sort;
                let n = on.marks.with(|m| m.iter().position(|q| q.0 == sort)).map(|i| (i + 1).to_string());
                let label = n.as_ref().map_or_else(|| r.t(sort.looks()).to_owned(), |n| format!("{n}{}{}", r.colon(), r.t(sort.looks())));
                let go = move || { on.open.set(Some(sort)); view::to_view("site-h") };
                let key = move |ev: web_sys::KeyboardEvent| if matches!(ev.key().as_str(), "Enter" | " ") { ev.prevent_default(); go() };
                let disc = n.map(|n| view! { <circle class="walk-disc" r="36" /><text class="walk-number" y="15" text-anchor="middle">{n}</text> });
                let transform = format!("translate({} {})", cm(at.x), cm(-at.y));
                if walking {
                    view! { <g class="walk-spot" class:here=open == Some(sort) transform=transform role="button" tabindex="0" aria-label=label data-sort=format!("{sort:?}") on:click=move |_| go() on:keydown=key>
                        <circle class="walk-hit" r="78" />{disc}</g> }.into_any()
                } else {
                    view! { <g transform=transform>{disc}</g> }.into_any()
                }
            }).collect_view()
        })
    };
    let name = if above { T::Plan } else { T::Front };
    // The ladder is taken along the wall.
    let pull = move |ev: &web_sys::PointerEvent| {
        if on.phase.get_untracked() != Phase::Place {
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
        if on.phase.get_untracked() == Phase::Place {
            ev.prevent_default();
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
            <svg class="drawing walk-drawing" viewBox=frame.view_box() preserveAspectRatio="xMidYMid meet" role="group" aria-label=settings.s(name)
                on:pointerdown=down on:pointermove=move |ev: web_sys::PointerEvent| if ev.buttons() != 0 { pull(&ev) }>
                {defs()}{built}{moving}{spots}</svg></div>
    }
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
            let set_up = on.law.with_value(|law| s.set_up(at, law));
            let Some(g) = Geometry::of(&set_up) else { return ().into_any() };
            let off = at.ladder_m - at.anchor_m;
            let side = if off < 0.0 { -1.0 } else { 1.0 };
            let swing = on.swing.get().filter(|_| plays == Plays::Slip);
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
            view! { <li><button type="button" class="walk-row" on:click=move |_| { on.open.set(Some(sort)); view::to_view("site-h") }><b aria-hidden="true">{i + 1}</b><span><strong>{r.t(sort.looks())}</strong><small>{words}</small></span></button></li> }
        });
        all.collect_view()
    };
    view! {
        {move || match on.open.get() {
            Some(sort) => view! { <About on=on sort=sort /> }.into_any(),
            None => view! {
                <p class="stem"><strong id="site-h" tabindex="-1">{settings.s(T::Lead)}</strong></p>
                <p class="hint">{job}</p>
                <ul class="walk-list">{list}</ul>
                <div class="next"><button type="button" class="main" id="to-place" on:click=move |_| { on.phase.set(Phase::Place); on.above.set(true); view::to_view("site-h") }>{settings.s(T::ToPlan)}</button></div>
                <Why />
            }.into_any(),
        }}
    }
}

/// What somebody said of a thing.
fn said_of(r: Reader, sort: Sort, m: Mark) -> &'static str {
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
        <p class="stem"><strong id="site-h" tabindex="-1"><span class="walk-looks">{settings.s(sort.looks())}</span>". "{settings.s(asked)}</strong></p>
        <div class="walk-answers">{pills.collect_view()}</div>
        <div class="next"><button type="button" id="walk-off" on:click=move |_| on.mark(sort, None)>{move || settings.t(if before.is_some() { T::Unmark } else { T::NotHere })}</button></div>
    }
}

/// Sources and what is left out.
#[component]
fn Why() -> impl IntoView {
    let settings = settings();
    view! { <details class="guide"><summary>{settings.s(S::Why)}</summary><p class="hint">{settings.s(T::Note)}</p><p class="source">{settings.s(T::Sources)}</p></details> }
}

fn method_words(m: Method) -> T {
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
    let order = on.law.with_value(|law| {
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
        move |()| on.placed.update(|p| p.foot_m = (within(p.foot_m + m, 0.4, 2.6) * 20.0).round() / 20.0)
    };
    let anchor_by = move |m: f64| move |()| on.anchor_to(on.placed.with_untracked(|p| p.anchor_m) + m);
    let arrest = move || on.method.get() == Some(Method::FallArrest);
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
        <label class="walk-wind"><span>{settings.s(T::Stop)}</span><input type="text" inputmode="numeric" id="walk-wind" autocomplete="off" prop:value=move || on.placed.with(|p| p.stop_km_h.map_or(String::new(), |v| v.to_string()))
            on:input=move |ev| { let v = event_target_value(&ev).trim().parse::<u32>().ok().filter(|v| *v <= 200); on.placed.update(|p| p.stop_km_h = v) } /><small>{settings.s(T::StopWhose)}</small></label>
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

/// How near to a wire.
fn near_words(r: Reader, m: f64) -> String {
    if m < 0.01 {
        return r.t(T::Touches).to_owned();
    }
    r.f(T::Near, &[("m", &r.q(Quantity::Length, m, Rounding::Down))])
}

/// A line of what the plan comes to, and how grave it is.
fn line_of(r: Reader, q: Said, site: &Site, law: &str) -> (Severity, String) {
    let plain = |key: T| r.t(key).to_owned();
    let severity = match q {
        Said::NeedNotAsk => Severity::Note,
        q if q.is_grave() => Severity::Critical,
        Said::Missed(_) | Said::Wrongly(..) | Said::Before(_) | Said::Meets(_) => Severity::Major,
        _ => Severity::Minor,
    };
    let words = match q {
        Said::NearWire(Sort::Line, m) => {
            let keep = r.q(Quantity::Length, Site::keep_m(Sort::Line, law), Rounding::Up);
            r.f(T::NearLine, &[("near", &near_words(r, m)), ("keep", &keep)])
        }
        Said::NearWire(s, m) => {
            r.f(if s == Sort::Phone { T::NearPhone } else { T::NearDrop }, &[("near", &near_words(r, m))])
        }
        Said::Meets(s) => r.f(T::Meets, &[("what", r.t(s.label())), ("does", r.t(s.does()))]),
        Said::Missed(s) => r.f(T::Missed, &[("what", r.t(s.label())), ("does", r.t(s.does()))]),
        Said::Wrongly(s, m) => {
            r.f(T::Wrongly, &[("what", r.t(s.label())), ("said", said_of(r, s, m)), ("does", r.t(s.does()))])
        }
        Said::Before(m) => crate::texts::say::upper_first(&r.f(T::Before, &[("what", r.t(method_words(m)))])),
        Said::Cannot(Method::Platform) => plain(T::CannotLift),
        Said::Cannot(_) => {
            r.f(T::CannotGround, &[("eave", &r.q(Quantity::Length, site.eave_m, Rounding::Nearest))])
        }
        Said::FarFromJob(m) => r.f(T::FarFromJob, &[("m", &r.q(Quantity::Length, m, Rounding::Up))]),
        Said::Angle(deg) => r.f(T::Angle, &[("deg", &format!("{deg:.0}"))]),
        Said::FirstBare => plain(T::FirstBare),
        Said::FirstOpen => plain(T::FirstOpen),
        Said::OutOfReach(Reach::Window) => plain(T::NoWindow),
        Said::OutOfReach(_) => plain(T::NoGround),
        Said::NobodyReaches => {
            let within = place(law)
                .and_then(|p| p.limit(LimitKind::RescueMinutes))
                .map(|l| r.f(T::Within, &[("minutes", &r.limit(l))]));
            format!("{} {}", r.t(T::NobodyReaches), within.unwrap_or_default()).trim_end().to_owned()
        }
        Said::ReachOpen => plain(T::ReachOpen),
        Said::WindOpen => plain(T::WindOpen),
        Said::WindOver => plain(T::WindOver),
        Said::NeedNotAsk => plain(T::NeedNotAsk),
    };
    (severity, words)
}

/// What the plan comes to.
#[component]
fn Told(on: On) -> impl IntoView {
    let settings = settings();
    let head = move || {
        let r = settings.reader();
        let all = on.said();
        let open = all.iter().filter(|q| **q != Said::NeedNotAsk).count();
        let words = match open {
            0 => r.t(T::ToldFine).to_owned(),
            1 => r.t(T::ToldOne).to_owned(),
            n => r.f(T::ToldOpen, &[("n", &n.to_string())]),
        };
        let grave = all.iter().any(|q| q.is_grave());
        let severity = if open == 0 {
            Severity::Good
        } else if grave {
            Severity::Critical
        } else {
            Severity::Minor
        };
        let asked = on.asks.get().then(|| view! { <p class="figure-line">{r.t(T::ToldAsk)}</p> });
        view! { <div class="head">{mark(severity)}<div class="told-lines"><p class="sentence" id="site-told" tabindex="-1">{words}</p>{asked}</div></div> }
    };
    let list = move || {
        let r = settings.reader();
        on.site.with(|s| {
            on.law.with_value(|law| {
                on.said()
                    .into_iter()
                    .map(|q| {
                        let (severity, words) = line_of(r, q, s, law);
                        view! { <li>{mark(severity)}<p>{words}</p></li> }
                    })
                    .collect_view()
            })
        })
    };
    let arrest = move || on.method.get() == Some(Method::FallArrest);
    let to_bench = move |_| {
        let at = on.placed.get_untracked();
        view::to_bench(&on.law.with_value(|law| on.site.with_untracked(|s| s.set_up(&at, law))));
    };
    view! {
        <div class="walk-result">{head}
            <Show when=arrest><Played on=on /></Show><ul class="walk-said">{list}</ul>
            <div class="next"><button type="button" id="walk-change" on:click=move |_| { on.clock.stop(); on.plays.set(Plays::Nothing); on.phase.set(Phase::Place); view::to_view("site-h") }>{settings.s(T::Change)}</button>
                <Show when=arrest><button type="button" id="walk-bench" on:click=to_bench>{settings.s(T::Bench)}</button></Show>
                <button type="button" class="main" id="walk-again" on:click=move |_| { on.begin((js_sys::Math::random() * 1e9) as u64); on.above.set(false); view::to_view("site-h") }>{settings.s(T::Another)}</button></div>
            <Rows on=on /></div>
    }
}

/// The slip and the ladder that tips, to play.
#[component]
fn Played(on: On) -> impl IntoView {
    let settings = settings();
    let words = move || {
        let r = settings.reader();
        match on.plays.get() {
            Plays::Nothing => None,
            Plays::Tip => on.site.with(|s| {
                on.placed.with(|at| {
                    let near = [Sort::ServiceDrop, Sort::Line, Sort::Phone]
                        .into_iter()
                        .filter_map(|w| s.wire_m(w, at).map(|m| (w, m)))
                        .min_by(|a, b| a.1.total_cmp(&b.1));
                    Some(match near {
                        Some((w, m)) if m < 3.0 => {
                            r.f(T::Tipped, &[("near", &near_words(r, m)), ("what", r.t(w.label()))])
                        }
                        _ => r.t(T::TippedFree).to_owned(),
                    })
                })
            }),
            Plays::Slip => on.swing.get().map(|w| {
                let off = r.q(Quantity::Length, w.offset_m, Rounding::Up);
                let speed = r.q(Quantity::Speed, w.free.speed_m_s, Rounding::Up);
                let (key, room) = match w.room_m() {
                    Some(m) if m < 0.0 => (T::SlipDown, r.q(Quantity::Length, -m, Rounding::Up)),
                    m => (T::SlipRoom, r.q(Quantity::Length, m.unwrap_or(0.0), Rounding::Down)),
                };
                let hard = if w.free.speed_m_s > HARD_SWING_M_S { r.t(T::SlipHard) } else { "" };
                format!("{} {hard}", r.f(key, &[("off", &off), ("speed", &speed), ("room", &room)]))
                    .trim_end()
                    .to_owned()
            }),
        }
    };
    view! {
        <div class="walk-play"><button type="button" class="play" id="walk-slip" aria-disabled=move || on.swing.with(Option::is_none).to_string() on:click=move |_| if on.swing.with_untracked(Option::is_some) { on.above.set(false); on.play(Plays::Slip) }>{settings.s(T::Slip)}</button>
            <button type="button" class="play" id="walk-tip" on:click=move |_| on.play(Plays::Tip)>{settings.s(T::Tip)}</button></div>
        <p class="figure-line" role="status" id="walk-played">{words}</p>
    }
}

/// What a row of the card holds.
fn row_text(r: Reader, row: Row, on: On) -> String {
    let len = |m: f64| r.q(Quantity::Length, m, Rounding::Nearest);
    let at = on.placed.get();
    let arrest = on.method.get() == Some(Method::FallArrest);
    match row {
        Row::Wires | Row::Ground | Row::Around | Row::People => {
            let all = on.marks.get().into_iter().filter(|m| m.0.row() == Some(row));
            let all: Vec<String> = all
                .map(|(s, m)| match m {
                    Mark::Wire(kind) => format!("{}{}{}", r.t(kind.label()), r.colon(), r.t(kind.right())),
                    m => format!("{}{}{}", r.t(s.label()), r.colon(), said_of(r, s, m)),
                })
                .collect();
            all.join("; ")
        }
        Row::Method => on.method.get().map_or(String::new(), |m| r.t(method_words(m)).to_owned()),
        Row::Weather => at.stop_km_h.map_or(String::new(), |v| format!("{} {v}", r.t(T::Stop))),
        _ if !arrest => "—".to_owned(),
        Row::Ladder => format!(
            "{}, {}",
            r.f(T::LadderAt, &[("at", &len(at.ladder_m))]),
            r.f(T::Foot, &[("at", &len(at.foot_m))])
        ),
        Row::Anchor => r.f(T::AnchorAt, &[("at", &len(at.anchor_m))]),
        Row::FirstUp => at.first.map_or(String::new(), |f| {
            r.t(match f {
                First::Thrown => T::FirstThrown,
                First::Lift => T::FirstLift,
                First::Quick => T::FirstQuick,
            })
            .to_owned()
        }),
        Row::Hangs => at.reach.map_or(String::new(), |w| r.t(w.label()).to_owned()),
    }
}

/// Whether a row says nothing, or what it says does not hold. Who set the anchor is open until somebody signs.
fn row_open(row: Row, text: &str, said: &[Said]) -> bool {
    let must = !matches!(row, Row::Wires | Row::Ground | Row::Around | Row::People);
    row == Row::Anchor && text != "—" || must && text.is_empty() || Site::is_open(row, said)
}

/// The card on the screen.
#[component]
fn Rows(on: On) -> impl IntoView {
    let settings = settings();
    let rows = move || {
        let r = settings.reader();
        let said = on.said();
        Row::ALL.map(|row| {
            let text = row_text(r, row, on);
            let open = row_open(row, &text, &said);
            let (shape, word) = if open { ("△ ", T::CardOpen) } else { ("✓ ", T::CardDone) };
            view! { <tr><th scope="row">{r.t(row.label())}</th><td>{text}</td><td><b aria-hidden="true">{shape}</b>{r.t(word)}</td></tr> }
        })
    };
    let duties = move || {
        let r = settings.reader();
        let kinds = [
            DutyKind::MethodOrder,
            DutyKind::AnchorByCompetentPerson,
            DutyKind::RescueWritten,
            DutyKind::RescuePlanned,
        ];
        let all = on.law.with_value(|law| {
            let own = place(law);
            kinds.iter().filter_map(|k| Some((*k, r.duty(own?.duty(*k)?)))).collect::<Vec<_>>()
        });
        all.into_iter().map(|(k, t)| view! { <p><strong>{r.t(k.label())}</strong><br /><span class="source">{t}</span></p> }).collect_view()
    };
    view! {
        <details class="guide walk-card"><summary>{settings.s(T::Card)}</summary><table>{rows}</table><p class="hint">{settings.s(T::CardNote)}</p>{duties}
            <button type="button" id="print" on:click=move |_| { let _ = window().print(); }>{settings.s(W::Print)}</button></details>
        <Why />
    }
}

/// The card on paper.
#[component]
fn Card(on: On) -> impl IntoView {
    let (visit, settings) = (visit(), settings());
    move || {
        if on.phase.get() != Phase::Told {
            return None;
        }
        let r = settings.reader();
        let said = on.said();
        let mut open = 0;
        let rows = Row::ALL.map(|row| {
            let text = row_text(r, row, on);
            let is = row_open(row, &text, &said);
            open += usize::from(is);
            let word = r.t(if is { T::CardOpen } else { T::CardDone });
            view! { <p class="signs-line walk-line"><strong>{r.t(row.label())}{r.colon()}</strong>{text}" ("{word}")"<i></i></p> }
        });
        let len = |m: f64| r.q(Quantity::Length, m, Rounding::Nearest);
        let under = on.site.with(|s| r.f(T::CardFirst, &[("at", &len(s.job_m)), ("eave", &len(s.eave_m))]));
        let state = if open > 0 { r.f(T::CardNot, &[("n", &open.to_string())]) } else { String::new() };
        Some(view! {
            <section class="sheet paper walk-page" aria-hidden="true">
                <Head over="Shortfall".to_owned() title=r.t(T::Card).to_owned() right=state under=under />
                <p class="signs-line"><strong>{r.t(T::Danger)}</strong></p>
                {rows.collect_view()}
                <p class="signs-line">{r.t(T::Owner)}<i></i></p><p class="signs-line">{r.t(T::Signs)}<i></i></p>
                <Foot caution=Text::of(Gear::Caution) set_up=visit.set_up.get() />
            </section>
        })
    }
}
