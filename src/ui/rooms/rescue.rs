//! After the stop: the same hanging worker, people and gear that go where they work, and minutes that pass with the
//! steps. What each step needs is the core's (`practice::rescue`); here it is seen.

use super::bar::{RoomBar, WIDE_PX};
use super::visit;
use crate::geometry::{Geometry, P, p};
use crate::physics::trace::Trace;
use crate::practice::rescue::*;
use crate::rules::Severity;
use crate::scenario::{RescuePlan, Scenario};
use crate::scene::camera::{Frame, Pane};
use crate::scene::figure::figure;
use crate::scene::house::house;
use crate::scene::ink::{Shape, circle, line};
use crate::scene::labels::{Area, Wanted, along, place};
use crate::scene::people::{Doing, bag, ladder, person};
use crate::scene::worker::Bones;
use crate::scene::{at, standing_scene};
use crate::texts::Key;
use crate::texts::Room as W;
use crate::texts::say::Reader;
use crate::ui::shared::asking;
use crate::ui::shared::figure::{defs, still};
use crate::ui::shared::settings::settings;
use crate::ui::shared::signs::mark;
use crate::ui::shared::store;
use crate::ui::shared::view::{self, View};
use crate::units::{Quantity, Rounding};
use crate::worker::questions::Fall;
use leptos::html::Div;
use leptos::prelude::*;
use std::sync::Arc;
use wasm_bindgen::JsCast;

/// Minutes that the clock round the worker and the bar under the picture show.
const SHOWN_MIN: f64 = 30.0;
/// Minutes that pass in a second of ours.
const MIN_A_SECOND: f64 = 4.0;

fn why(r: Reader, h: Hindered) -> String {
    let m = |mm: u32| r.q(Quantity::Length, f64::from(mm) / 1e3, Rounding::Up);
    match h {
        Hindered::TooShortMm(mm) => r.f(W::HinderShort, &[("value", &m(mm))]),
        Hindered::TooHeavyN(n) => r.f(
            W::HinderHeavy,
            &[
                ("value", &r.q(Quantity::Force, f64::from(n), Rounding::Up)),
                ("pull", &r.q(Quantity::Force, TWO_PULL_N, Rounding::Down)),
            ],
        ),
        Hindered::OutOfReachMm(mm) => r.f(W::HinderReach, &[("value", &m(mm))]),
        Hindered::NobodyCalled => r.t(W::HinderNobody).to_owned(),
        Hindered::LadderGone => r.t(W::HinderGone).to_owned(),
        Hindered::NoRungMm(mm) => r.f(W::HinderRung, &[("value", &m(mm))]),
        Hindered::Hurt => r.t(W::HinderHurt).to_owned(),
        Hindered::NoKit => r.t(W::HinderKit).to_owned(),
        Hindered::NotAloneN(n) => {
            r.f(W::HinderAlone, &[("value", &r.q(Quantity::Force, f64::from(n), Rounding::Up))])
        }
    }
}

/// What the drill is about.
#[derive(Clone)]
struct Case {
    set_up: Scenario,
    g: Geometry,
    trace: Arc<Trace>,
    hangs: Hanging,
    /// Not the set-up of the bench.
    ordinary: bool,
}

/// The fall of a set-up if it leaves somebody hanging, else that of the next one.
fn find_case(
    set_up: Scenario,
    next: Option<Scenario>,
    case: RwSignal<Option<Case>>,
    missing: RwSignal<bool>,
) {
    let Ok(checked) = set_up.set_up() else {
        match next {
            Some(next) => find_case(next, None, case, missing),
            None => missing.set(true),
        }
        return;
    };
    asking::ask(Fall(checked.clone()), move |answer| {
        let Ok(trace) = answer else {
            let _ = missing.try_set(true);
            return;
        };
        let trace = Some(trace).filter(Trace::is_sound);
        let found = trace.and_then(|t| hanging(&checked, &t).map(|hangs| (Arc::new(t), hangs)));
        match (found, next) {
            (Some((trace, hangs)), next) => {
                let g = checked.geometry().clone();
                let _ = case.try_set(Some(Case { set_up, g, trace, hangs, ordinary: next.is_none() }));
            }
            (None, Some(next)) => find_case(next, None, case, missing),
            (None, None) => {
                let _ = missing.try_set(true);
            }
        }
    });
}

/// The place's own limit on the time to a rescue.
fn own_limit(set_up: &Scenario) -> Option<&'static crate::rules::Limit> {
    crate::rules::place(&set_up.place)?.limit(crate::rules::LimitKind::RescueMinutes)
}

/// In time or late; of a plan that was read nobody is told that it should have been.
fn late_words(in_time: bool, plan: RescuePlan) -> W {
    match (in_time, plan) {
        (true, _) => W::RescueInTime,
        (false, RescuePlan::Written) => W::RescueLateOnly,
        (false, _) => W::RescueLate,
    }
}

/// The same steps with another plan.
fn again(taken: &[(Step, u32)], h: &Hanging, plan: RescuePlan) -> Drill {
    let mut d = Drill::default();
    for (step, _) in taken {
        d.take(*step, h, plan);
    }
    d
}

/// Where a step is done, m.
fn at_part(step: Step, c: &Case) -> P {
    let g = &c.g;
    let ring = c.trace.samples.last().map_or(g.dring, |q| q.dring);
    let ground = |x: f64| p(g.ladder.foot.x + x, g.ground_y_m(g.ladder.foot.x + x));
    match step {
        Step::Straps => p(ring.x + 0.2, ring.y - 0.9),
        Step::Climb => p(ring.x + 0.3, ring.y - 0.2),
        Step::Ladder => p(g.ladder.foot.x + 0.2, ground(0.2).y + 0.5),
        Step::Haul => p(g.eave.x - 1.6, g.eave.y + 2.3),
        Step::Call => p(ground(2.6).x, ground(2.6).y + 1.75),
        Step::Wait => p(ground(2.9).x, ground(2.9).y + 2.6),
        Step::Lower => p(ground(3.5).x, ground(3.5).y + 0.6),
    }
}

/// Part of a turn round a point, from a minute to another.
fn arc(at: P, radius_m: f64, from_min: f64, to_min: f64) -> String {
    let n = ((to_min - from_min).abs() * 2.0).ceil().max(1.0) as usize;
    let points: Vec<P> = (0..=n)
        .map(|i| from_min + (to_min - from_min) * i as f64 / n as f64)
        .map(|m| core::f64::consts::TAU * m / SHOWN_MIN)
        .map(|a| p(at.x + radius_m * libm::sin(a), at.y + radius_m * libm::cos(a)))
        .collect();
    if from_min >= to_min { String::new() } else { line(&points) }
}

/// Who or what can be taken to where it works.
#[derive(Clone, Copy, PartialEq)]
enum Taken {
    /// The one who goes to the worker.
    First,
    /// The one with the phone.
    Second,
    /// The bag with the rescue line.
    Bag,
}

impl Taken {
    const ALL: [Taken; 3] = [Taken::First, Taken::Second, Taken::Bag];

    /// Where it stands now, m, and how tall it is, m.
    fn from(self, c: &Case, d: &Drill) -> Option<(P, f64)> {
        let last = d.taken.last().map(|t| t.0);
        match self {
            Taken::First => Some((first_at(c, d, last), 1.7)),
            Taken::Second => Some((second_at(c, d, last), 1.7)),
            Taken::Bag => (c.set_up.plan.rescue == RescuePlan::Written).then(|| (bag_at(c, d, last), 0.7)),
        }
    }

    /// What it can do, and where, m.
    fn to(self, c: &Case) -> Vec<(Step, P)> {
        let steps: &[Step] = match self {
            Taken::First => &[Step::Straps, Step::Ladder, Step::Haul],
            Taken::Second => &[Step::Haul],
            Taken::Bag => &[Step::Lower],
        };
        let ring = c.trace.samples.last().map_or(c.g.dring, |q| q.dring);
        let place = |s: Step| match s {
            // Beside the worker's head is where a second ladder brings somebody; at the feet one talks.
            Step::Ladder => p(ring.x + 1.0, ring.y + 0.4),
            Step::Straps => p(ring.x + 0.9, ring.y - 1.4),
            _ => {
                let at = on_roof(c, 1.1);
                p(at.x, at.y + 0.5)
            }
        };
        steps.iter().map(|s| (*s, place(*s))).collect()
    }
}

/// So near to its place it is let go of, m.
const DROP_M: f64 = 0.8;

/// Radius of the clock, m.
const CLOCK_M: f64 = 1.3;

/// A point of the roof so far up from the eave's line, m.
fn on_roof(c: &Case, back_m: f64) -> P {
    let g = &c.g;
    p(g.eave.x - back_m, g.eave.y + (g.ridge.y - g.eave.y) * (back_m / (g.eave.x - g.ridge.x)))
}

fn on_ground(c: &Case, from_foot_m: f64) -> P {
    let x = c.g.ladder.foot.x + from_foot_m;
    p(x, c.g.ground_y_m(x))
}

/// Who climbed back stands where the slip was.
fn climbed(d: &Drill, last: Option<Step>) -> bool {
    d.down_min.is_some() && last == Some(Step::Climb)
}

/// Where the one who goes to the worker stands, m.
fn first_at(c: &Case, d: &Drill, last: Option<Step>) -> P {
    match last {
        _ if climbed(d, last) => on_ground(c, 1.0),
        _ if d.down_min.is_some() => on_ground(c, 1.95),
        Some(Step::Ladder) => {
            let ring = c.trace.samples.last().map_or(c.g.dring, |q| q.dring);
            let low = ring.x + 1.5;
            p(ring.x + 0.85, (ring.y - 1.7).max(c.g.ground_y_m(low)))
        }
        Some(Step::Haul | Step::Lower) => on_roof(c, 0.7),
        Some(Step::Straps) => on_ground(c, 0.9),
        _ => on_ground(c, 1.0),
    }
}

/// Where the one with the phone stands, m.
fn second_at(c: &Case, d: &Drill, last: Option<Step>) -> P {
    if last == Some(Step::Haul) && d.down_min.is_none() { on_roof(c, 1.5) } else { on_ground(c, 2.6) }
}

/// Where the bag lies, m.
fn bag_at(c: &Case, d: &Drill, last: Option<Step>) -> P {
    if last == Some(Step::Lower) && d.down_min.is_none() { on_roof(c, 1.5) } else { on_ground(c, 3.5) }
}

/// Worker, people and gear as the drill stands.
fn moving(c: &Case, d: &Drill, last: Option<Step>) -> Vec<Shape> {
    let g = &c.g;
    let Some(q) = at(&c.set_up, g, &c.trace, c.trace.duration_s()) else { return vec![] };
    let ground = |x: f64| p(x, g.ground_y_m(x));
    let foot = g.ladder.foot.x;
    let down = d.down_min.is_some();
    let body = ["limb", "boot", "face", "feature", "helmet", "strap", "hand", "dring", "hook"];
    let alone = climbed(d, last);
    let mut out =
        if alone { figure(&standing_scene(&c.set_up, g), &c.set_up, g) } else { figure(&q, &c.set_up, g) };
    // A ladder that slid or tipped lies on the grass.
    if !c.hangs.ladder_stands {
        out.retain(|s| !s.class.starts_with("rail") && s.class != "rung" && s.class != "shoe");
        let long_m = g.ladder.foot.dist(g.ladder.tip);
        let (a, b) = (ground(foot + 0.6), ground(foot + 0.6 + long_m));
        out.extend(ladder(p(a.x, a.y + 0.05), p(b.x, b.y + 0.05)));
    }
    if alone {
        // Nothing of the hanging is left.
    } else if down {
        out.retain(|s| !body.iter().any(|b| s.class.starts_with(b)));
        out.extend(person(ground(foot + 0.9), 1.0, Doing::Sits));
    } else if d.straps_min.is_some()
        && let Some(b) = Bones::of(&q.limbs)
    {
        out.push(Shape::new("torn", line(&[b.belt[1], b.boots[0][1], b.belt[0]])));
    }
    // One goes to the worker, one to the phone.
    let (doing, faces) = match last {
        _ if alone => (Doing::Stands, -1.0),
        _ if down => (Doing::Kneels, -1.0),
        Some(Step::Ladder) => {
            let top = p(q.dring.x + 0.2, q.dring.y + 0.9);
            let low = ground(q.dring.x + 1.5);
            if !c.hangs.ladder_stands || (low.x - foot).abs() > 0.6 {
                out.extend(ladder(low, top));
            }
            (Doing::Reaches, -1.0)
        }
        Some(Step::Haul | Step::Lower) => (Doing::Kneels, 1.0),
        Some(Step::Straps) => (Doing::Reaches, -1.0),
        _ => (Doing::Stands, -1.0),
    };
    out.extend(person(first_at(c, d, last), faces, doing));
    let second = second_at(c, d, last);
    let phones = if d.called_min.is_some() { Doing::Phones } else { Doing::Stands };
    out.extend(person(second, if second.y > g.eave.y { 1.0 } else { -1.0 }, phones));
    // The kit is there only where it was planned.
    if c.set_up.plan.rescue == RescuePlan::Written {
        out.extend(bag(bag_at(c, d, last)));
    }
    out
}

/// What is shown: all of it where there is room, else the worker, and the ground once somebody is down.
fn frame(c: &Case, d: &Drill, wide: bool) -> Frame {
    let g = &c.g;
    let foot = g.ladder.foot.x;
    let ring = c.trace.samples.last().map_or(g.dring, |q| q.dring);
    let low = g.ground_y_m(foot + 1.0) - 0.35;
    if wide {
        Frame {
            left_m: g.eave.x - 2.4,
            right_m: foot + 4.4,
            bottom_m: low.min(g.ground_y_m(foot + 4.0) - 0.3),
            top_m: (g.eave.y + 2.4).max(ring.y + 1.7),
        }
    } else if d.down_min.is_some() && !d.taken.last().is_some_and(|t| t.0 == Step::Climb) {
        Frame { left_m: foot - 0.6, right_m: foot + 3.2, bottom_m: low, top_m: low + 3.0 }
    } else {
        Frame { left_m: ring.x - 1.7, right_m: ring.x + 1.9, bottom_m: ring.y - 1.75, top_m: ring.y + 1.65 }
    }
}

/// Taking hold of people and gear on the picture.
#[derive(Clone, Copy)]
struct Drag {
    case: RwSignal<Option<Case>>,
    drill: RwSignal<Drill>,
    pane: Memo<Option<Pane>>,
    node: NodeRef<Div>,
    /// What is held, and where its foot is now, m.
    held: RwSignal<Option<(Taken, P)>>,
}

impl Drag {
    fn at(self, ev: &web_sys::PointerEvent) -> Option<P> {
        let r = self.node.get_untracked()?.get_bounding_client_rect();
        let at = (f64::from(ev.client_x()) - r.left(), f64::from(ev.client_y()) - r.top());
        Some(self.pane.get_untracked()?.point(at))
    }

    /// Takes what stands under a finger.
    fn take(self, ev: &web_sys::PointerEvent, open: bool) {
        let (Some(at), true) = (self.at(ev), open) else { return };
        let drill = self.drill.get_untracked();
        let found = self.case.with_untracked(|c| {
            let c = c.as_ref()?;
            Taken::ALL.into_iter().find(|t| {
                t.from(c, &drill).is_some_and(|(foot, tall_m)| {
                    (at.x - foot.x).abs() < 0.45 && at.y > foot.y - 0.3 && at.y < foot.y + tall_m + 0.3
                })
            })
        });
        let Some(found) = found else { return };
        ev.prevent_default();
        if let Some(e) = ev.current_target().and_then(|t| t.dyn_into::<web_sys::Element>().ok()) {
            let _ = e.set_pointer_capture(ev.pointer_id());
        }
        self.held.set(Some((found, at)));
    }

    fn moves(self, ev: &web_sys::PointerEvent) {
        if let (Some((what, _)), Some(at)) = (self.held.get_untracked(), self.at(ev)) {
            self.held.set(Some((what, at)));
        }
    }

    /// Lets go: the step whose place is near.
    fn drop(self) -> Option<Step> {
        let (what, at) = self.held.get_untracked()?;
        self.held.set(None);
        self.case.with_untracked(|c| {
            let all = what.to(c.as_ref()?);
            let near = all.into_iter().filter(|(_, to)| to.dist(at) < DROP_M);
            near.min_by(|a, b| a.1.dist(at).total_cmp(&b.1.dist(at))).map(|(s, _)| s)
        })
    }

    /// What is held, and where it can go.
    fn shapes(self) -> Option<Vec<Shape>> {
        let (what, at) = self.held.get()?;
        self.case.with(|c| {
            let c = c.as_ref()?;
            let mut out: Vec<Shape> =
                what.to(c).into_iter().map(|(_, to)| Shape::new("drop-at", circle(to, 0.45))).collect();
            out.extend(match what {
                Taken::Bag => bag(p(at.x, at.y - 0.3)),
                _ => person(p(at.x, at.y - 0.9), -1.0, Doing::Stands),
            });
            Some(out)
        })
    }
}

/// The picture with what can be done on it.
#[component]
fn Scene(
    case: RwSignal<Option<Case>>,
    drill: RwSignal<Drill>,
    last: Signal<Option<Step>>,
    minute: RwSignal<f64>,
    size: RwSignal<(f64, f64)>,
    pane: Memo<Option<Pane>>,
    /// A step can be taken.
    #[prop(into)]
    open: Signal<bool>,
    take: Callback<Step>,
) -> impl IntoView {
    let settings = settings();
    let node = NodeRef::<Div>::new();
    Effect::new(move |_| {
        if let Some(e) = node.get() {
            view::watch_size(&e, size);
        }
    });
    let built = move || case.with(|c| c.as_ref().map(|c| still(house(&c.g, &c.set_up))));
    let moves = move || case.with(|c| c.as_ref().map(|c| still(drill.with(|d| moving(c, d, last.get())))));
    let clock = move || {
        let ring = case.with(|c| c.as_ref()?.trace.samples.last().map(|q| q.dring))?;
        let now = minute.get().min(SHOWN_MIN);
        let six = f64::from(CONTACT_MIN);
        drill.with(|d| d.down_min.is_none()).then(|| {
            let tick = core::f64::consts::TAU * six / SHOWN_MIN;
            let out = |r: f64| p(ring.x + r * libm::sin(tick), ring.y + r * libm::cos(tick));
            view! {
                <g class="rescue-clock" transform="scale(1,-1)">
                    <path class="ground" d=arc(ring, CLOCK_M, 0.0, SHOWN_MIN) /><path class="rest" d=arc(ring, CLOCK_M, six.max(now), SHOWN_MIN) />
                    <path class="left" d=arc(ring, CLOCK_M, now, six) /><path class="passed" d=arc(ring, CLOCK_M, 0.0, now) />
                    <path class="mark" d=line(&[out(CLOCK_M - 0.1), out(CLOCK_M + 0.1)]) /></g>
            }
        })
    };
    let words = move || {
        case.with(|c| {
            // Before the fall has come, the picture has the room's own name.
            let Some(c) = c else { return settings.t(W::RescueName).to_owned() };
            let r = settings.reader();
            let len = |m: f64| r.q(Quantity::Length, m, Rounding::Nearest);
            r.f(W::RescueWhere, &[("height", &len(c.hangs.dring_m)), ("grasp", &len(c.hangs.grasp_m))])
        })
    };
    let plate = move || {
        let pane = pane.get()?;
        let ring = case.with(|c| c.as_ref()?.trace.samples.last().map(|q| q.dring))?;
        let a = core::f64::consts::TAU * minute.get().min(SHOWN_MIN) / SHOWN_MIN;
        let (x, y) = pane.px(p(ring.x + CLOCK_M * libm::sin(a), ring.y + CLOCK_M * libm::cos(a)));
        let text =
            settings.reader().f(W::RescueMinute, &[("minute", &(minute.get().round() as u32).to_string())]);
        drill.with(|d| d.down_min.is_none()).then(|| {
            // On the side where there is room for it.
            let side = if x > pane.width_px * 0.55 {
                format!("right:{:.0}px", (pane.width_px - x - 8.0).max(4.0))
            } else {
                format!("left:{:.0}px", (x + 12.0).max(4.0))
            };
            view! { <span class="minute-plate" prop:style=format!("{side};top:{:.0}px", (y - 38.0).max(4.0))>{text}</span> }
        })
    };
    let drag = Drag { case, drill, pane, node, held: RwSignal::new(None) };
    view! {
        <div class="room-pane" class:can-take=move || open.get() node_ref=node
            on:pointerdown=move |ev| drag.take(&ev, open.get_untracked()) on:pointermove=move |ev| drag.moves(&ev)
            on:pointerup=move |_| { if let Some(s) = drag.drop() { take.run(s) } } on:pointercancel=move |_| drag.held.set(None)>
            <svg class="drawing" viewBox=move || pane.get().map_or("0 0 100 100".to_owned(), |q| q.frame.view_box()) preserveAspectRatio="xMidYMid meet" role="img" aria-label=words>
                {defs()}{built}{clock}{moves}{move || drag.shapes().map(still)}</svg>
            {plate}
        </div>
    }
}

/// Minutes as blocks; what failed has a cross.
#[component]
fn Minutes(drill: RwSignal<Drill>, told: RwSignal<Vec<Option<Hindered>>>) -> impl IntoView {
    let settings = settings();
    let x = |m: u32| 100.0 * f64::from(m).min(SHOWN_MIN + 6.0) / (SHOWN_MIN + 6.0);
    move || {
        let d = drill.get();
        let mut from = 0;
        let blocks = d
            .taken
            .iter()
            .zip(told.get())
            .map(|((step, to), failed)| {
                let (left, wide) = (x(from), (x(*to) - x(from)).max(0.6));
                from = *to;
                let name = settings.t(step.short());
                view! { <span class="block" class:failed=failed.is_some() prop:style=format!("left:{left:.2}%;width:{wide:.2}%") title=name></span> }
            })
            .collect_view();
        view! {
            <div class="minutes" aria-hidden="true">
                <div class="line">{blocks}<i class="six" prop:style=format!("left:{:.2}%", x(CONTACT_MIN))></i><i class="now" prop:style=format!("left:{:.2}%", x(d.minute))></i></div>
                <p><span prop:style=format!("left:{:.2}%", x(CONTACT_MIN))>{settings.s(W::RescueSix)}</span><span class="end">{SHOWN_MIN}" min"</span></p>
            </div>
        }
    }
}

/// What it came to, once the worker is down.
#[component]
fn Down(
    case: RwSignal<Option<Case>>,
    drill: RwSignal<Drill>,
    on_again: Callback<()>,
    on_next: Callback<()>,
) -> impl IntoView {
    let settings = settings();
    let bare = RwSignal::new(false);
    let more = RwSignal::new(false);
    move || {
        let d = drill.get();
        let c = case.get()?;
        let down = d.down_min?;
        let r = settings.reader();
        let reached = d.reached_min.unwrap_or(down);
        let in_time = reached <= CONTACT_MIN;
        // Who climbed back alone was with nobody.
        let alone = d.taken.last().is_some_and(|t| t.0 == Step::Climb) && reached == down;
        let own = own_limit(&c.set_up).map(|l| {
            let met = l.comparison.holds(f64::from(down), l.value);
            (
                met,
                r.f(
                    if met { W::RescueOwnMet } else { W::RescueOwnNot },
                    &[("limit", &r.limit(l)), ("down", &down.to_string())],
                ),
            )
        });
        let fine = in_time && d.called_min.is_some() && own.as_ref().is_none_or(|o| o.0);
        let contact = CONTACT_MIN.to_string();
        let without = bare.get().then(|| {
            let other = again(&d.taken, &c.hangs, RescuePlan::NoPlan);
            match other.down_min {
                Some(m) => r.f(W::RescueBareDown, &[("minute", &m.to_string())]),
                None => r.f(W::RescueBareNot, &[("minute", &other.minute.to_string())]),
            }
        });
        let has_plan = c.set_up.plan.rescue != RescuePlan::NoPlan;
        Some(view! {
            <div class="result" id="rescue-end" tabindex="-1" role="status">
                <div class="head">{mark(if fine { Severity::Good } else { Severity::Major })}
                    <div class="told-lines"><p class="sentence">{r.f(if alone { W::RescueSelf } else { W::RescueDown }, &[("down", &down.to_string()), ("reached", &reached.to_string())])}</p>
                    <p class="figure-line">{(!alone).then(|| r.f(late_words(in_time, c.set_up.plan.rescue), &[("contact", &contact)]))}</p>
                    {own.map(|(_, t)| view! { <p class="figure-line">{t}</p> })}
                    {d.called_min.is_none().then(|| view! { <p class="compare">{r.t(W::RescueNoCall)}</p> })}
                    {without.map(|t| view! { <p class="compare" id="bare-told">{t}</p> })}</div></div>
                <Show when=move || more.get()><div class="principle"><p>{match d.straps_min {
                        Some(m) => r.f(W::StrapsFrom, &[("minute", &m.to_string())]),
                        None => r.t(W::StrapsNone).to_owned(),
                    }}" "{r.t(W::RescueAfter)}</p></div></Show>
                <div class="next">
                    <button type="button" id="rescue-why" on:click=move |_| more.update(|m| *m = !*m)>{r.t(crate::texts::Stage::Why)}</button>
                    {if has_plan {
                        view! { <button type="button" id="bare" on:click=move |_| bare.set(true)>{r.t(W::RescueBare)}</button> }.into_any()
                    } else {
                        view! { <button type="button" id="rescue-again" on:click=move |_| { bare.set(false); on_again.run(()) }>{r.t(W::RescueAgain)}</button> }.into_any()
                    }}
                    <button type="button" class="main" id="rescue-next" on:click=move |_| { bare.set(false); on_next.run(()) }>{r.t(W::RescueNext)}</button>
                </div>
            </div>
        })
    }
}

/// The room.
#[component]
pub fn Rescue() -> impl IntoView {
    view::fill_the_window();
    let (visit, settings) = (visit(), settings());
    let case = RwSignal::new(None::<Case>);
    let missing = RwSignal::new(false);
    let drill = RwSignal::new(Drill::default());
    let hindered = RwSignal::new(Vec::<Option<Hindered>>::new());
    let plan = RwSignal::new(None::<RescuePlan>);
    let number = RwSignal::new(0_usize);
    let minute = RwSignal::new(0.0_f64);
    let turn = StoredValue::new(0_u32);
    let size = RwSignal::new((0.0, 0.0));
    let last = Signal::derive(move || drill.with(|d| d.taken.last().map(|t| t.0)));
    let pane = Memo::new(move |_| {
        let (width_px, height_px) = size.get();
        if width_px < 10.0 || height_px < 10.0 {
            return None;
        }
        let wide = width_px >= WIDE_PX;
        let f = case.with(|c| c.as_ref().map(|c| drill.with(|d| frame(c, d, wide))))?;
        Some(Pane { frame: f.fit(width_px / height_px, 0.5), width_px, height_px })
    });
    // The case of this number, with the plan that the crew is said to have.
    let find = move || {
        let now = visit.set_up.get_untracked();
        let kind = plan.get_untracked().unwrap_or(now.plan.rescue);
        let all = cases(&now.place, kind);
        let n = number.get_untracked();
        drill.set(Drill::default());
        hindered.set(vec![]);
        turn.update_value(|t| *t += 1);
        minute.set(0.0);
        if n == 0 {
            let mut mine = now;
            mine.plan.rescue = kind;
            find_case(mine, all.first().cloned(), case, missing);
        } else if let Some(s) = all.get(n % all.len()).cloned() {
            find_case(s.clone(), Some(s), case, missing);
        }
    };
    // A reload goes on with the same fall and plan, from its first minute.
    if let Some((n, kind)) = store::kept_here::<(usize, Option<RescuePlan>)>(store::RESCUE) {
        number.set(n);
        plan.set(kind);
    }
    find();
    Effect::new(move |_| store::keep_here(store::RESCUE, &(number.get(), plan.get())));
    let choose = move |kind: RescuePlan| {
        plan.set(Some(kind));
        // The fall is the same whatever was planned.
        case.update(|c| {
            if let Some(c) = c {
                c.set_up.plan.rescue = kind;
            }
        });
        if case.with_untracked(Option::is_none) {
            find();
        }
        view::to_view("rescue-ask");
    };
    let take = move |step: Step| {
        let Some(c) = case.get_untracked() else { return };
        let mut d = drill.get_untracked();
        if d.down_min.is_some() {
            return;
        }
        let h = d.take(step, &c.hangs, c.set_up.plan.rescue);
        let to = f64::from(d.minute);
        drill.set(d.clone());
        hindered.update(|all| all.push(h));
        if d.down_min.is_some() {
            view::to_view("rescue-end");
        }
        pass(minute, turn, to);
        let r = settings.reader_now();
        let done = r.f(W::StepDone, &[("minute", &d.minute.to_string())]);
        visit.said.set(format!("{}. {}", r.t(step.label()), h.map_or(done, |h| why(r, h))));
    };
    let told = move || {
        let r = settings.reader();
        let (Some(step), Some(h)) = (last.get(), hindered.with(|all| all.last().copied())) else {
            let ordinary = number.get() == 0 && case.with(|c| c.as_ref().is_some_and(|c| c.ordinary));
            let hurt = case
                .with(|c| c.as_ref().is_some_and(|c| c.hangs.hurt))
                .then(|| format!(" {}", r.t(W::RescueHurt)));
            return view! { <p class="figure-line lead-in">{r.t(if ordinary { W::RescueOrdinary } else { W::RescueLead })}{hurt}</p> }.into_any();
        };
        let at_minute = drill.with(|d| d.minute.to_string());
        let words = h.map_or_else(|| r.f(W::StepDone, &[("minute", &at_minute)]), |h| why(r, h));
        let class = if h.is_some() { "step-told failed" } else { "step-told" };
        view! { <p class=class><strong>{r.t(step.short())}</strong>{r.colon()}{words}</p> }.into_any()
    };
    let begun = move || plan.get().is_some();
    let is_down = move || drill.with(|d| d.down_min.is_some());
    let restart = Callback::new(move |()| find());
    let next = Callback::new(move |()| {
        number.update(|n| *n += 1);
        find();
        view::to_view("rescue-ask");
    });
    view! {
        <main class="page rescue">
            <RoomBar back=W::BackToList to=Callback::new(|()| view::go(View::Lessons)) title=settings.s(W::RescueName) />
            <Show when=move || missing.get()><p class="problems" role="alert">{settings.s(Key::EngineMissing)}</p></Show>
            <Scene case=case drill=drill last=last minute=minute size=size pane=pane open=Signal::derive(move || begun() && !is_down()) take=Callback::new(take) />
            <section class="strip rescue-strip">
                <Show when=move || !begun()>
                    <p class="rescue-caution">{settings.s(W::RescueCaution)}</p>
                    <p class="stem"><strong>{settings.s(W::RescueWhichPlan)}</strong></p>
                    <div class="plans">{[RescuePlan::Written, RescuePlan::Spoken, RescuePlan::NoPlan].map(|kind| view! {
                        <button type="button" class="plan-of" on:click=move |_| choose(kind)>{settings.s(kind.label())}</button> })}</div>
                </Show>
                <Show when=begun>
                    <Minutes drill=drill told=hindered />
                    <Show when=move || !is_down()>
                        <div class="rescue-now" id="rescue-ask" tabindex="-1"><h3>{settings.s(W::RescueAsk)}</h3>{told}</div>
                        <Acts case=case drill=drill pane=pane take=Callback::new(take) />
                    </Show>
                    <Down case=case drill=drill on_again=restart on_next=next />
                    <Guide case=case />
                </Show>
            </section>
        </main>
    }
}

/// Stills in place of passing minutes, for who asked for less motion, and how long each stands.
const STILLS: u32 = 5;
const STILL_FOR: std::time::Duration = std::time::Duration::from_millis(450);

/// Minutes pass in sight; as five stills for who asked for less motion. A later call, or a new drill, ends an earlier
/// one.
fn pass(minute: RwSignal<f64>, turn: StoredValue<u32>, to: f64) {
    turn.update_value(|t| *t += 1);
    if view::wants_less_motion() {
        let (from, mine) = (minute.get_untracked(), turn.get_value());
        for n in 1..STILLS {
            let at = from + (to - from) * f64::from(n) / f64::from(STILLS - 1);
            let show = move || {
                if turn.try_get_value() == Some(mine) {
                    let _ = minute.try_set(at);
                }
            };
            set_timeout(show, STILL_FOR * (n - 1));
        }
        return;
    }
    fn frame(minute: RwSignal<f64>, (turn, mine): (StoredValue<u32>, u32), to: f64, last_ms: f64) {
        request_animation_frame(move || {
            let now_ms = window().performance().map_or(last_ms, |p| p.now());
            let Some(now) = minute.try_get_untracked().filter(|_| turn.try_get_value() == Some(mine)) else {
                return;
            };
            let next = (now + ((now_ms - last_ms) / 1e3).min(0.1) * MIN_A_SECOND).min(to);
            minute.set(next);
            if next < to {
                frame(minute, (turn, mine), to, now_ms);
            }
        });
    }
    let now_ms = window().performance().map_or(0.0, |p| p.now());
    frame(minute, (turn, turn.get_value()), to, now_ms);
}

/// What can be done: at its part on a wide picture, in two columns under a narrow one.
#[component]
fn Acts(
    case: RwSignal<Option<Case>>,
    drill: RwSignal<Drill>,
    pane: Memo<Option<Pane>>,
    take: Callback<Step>,
) -> impl IntoView {
    let settings = settings();
    move || {
        let c = case.get()?;
        let r = settings.reader();
        let plan = c.set_up.plan.rescue;
        let pane = pane.get()?;
        let wide = pane.width_px >= WIDE_PX;
        let text = |step: Step| {
            let m = minutes(step, plan);
            let cost = if step == Step::Wait {
                String::new()
            } else {
                r.f(W::CardMinutes, &[("minutes", &m.to_string())])
            };
            (r.t(step.short()), cost)
        };
        let places: Vec<Option<Area>> = if wide {
            let ring = c.trace.samples.last().map_or(c.g.dring, |q| q.dring);
            let half = (CLOCK_M + 0.1) * pane.px_per_m();
            let mut avoid = vec![Area::round(pane.px(ring), (half, half))];
            // People, and the minute over the clock.
            for x in [1.0, 2.6] {
                let foot = c.g.ladder.foot.x + x;
                let y = c.g.ground_y_m(foot);
                avoid.extend(along(&[pane.px(p(foot, y)), pane.px(p(foot, y + 1.7))], 0.5 * pane.px_per_m()));
            }
            avoid.push(Area::round(pane.px(p(ring.x + CLOCK_M, ring.y + CLOCK_M)), (half * 0.8, 30.0)));
            let wanted: Vec<Wanted> = Step::ALL
                .into_iter()
                .map(|s| {
                    let (name, cost) = text(s);
                    let wide_px = 44.0 + 9.2 * (name.chars().count() + cost.chars().count()) as f64;
                    Wanted { at: pane.px(at_part(s, &c)), size: (wide_px, 44.0), side_sign: 1.0, on: false }
                })
                .collect();
            place((pane.width_px, pane.height_px), &wanted, (&avoid, &[]), &[])
        } else {
            vec![None; Step::ALL.len()]
        };
        let all = Step::ALL
            .into_iter()
            .zip(places)
            .map(|(step, area)| {
                let (name, cost) = text(step);
                let took = drill.with(|d| d.taken.iter().any(|t| t.0 == step));
                let label = format!("{name} {cost}. {}", r.t(step.label()));
                let style = area.map_or(String::new(), |a| format!("left:{:.0}px;top:{:.0}px;width:{:.0}px", a.x_px, a.y_px, a.width_px));
                view! {
                    <button type="button" class="step-of" class:on-picture=area.is_some() data-step=format!("{step:?}") aria-label=label prop:style=style on:click=move |_| take.run(step)>
                        <span>{took.then(|| view! { <b aria-hidden="true">"• "</b> })}{name}</span>" "<small>{cost}</small></button>
                }
            })
            .collect_view();
        Some(view! { <div class="acts" class:wide=wide>{all}</div> })
    }
}

/// Where the six minutes and the others come from.
#[component]
fn Guide(case: RwSignal<Option<Case>>) -> impl IntoView {
    let settings = settings();
    let own = move || {
        let l = case.with(|c| c.as_ref().and_then(|c| own_limit(&c.set_up)))?;
        let r = settings.reader();
        Some(
            view! { <p class="hint">{r.f(W::RescueOwn, &[("limit", &r.limit(l))])}" "<span class="source">{r.source(l)}</span></p> },
        )
    };
    let words = move || {
        settings.reader().f(
            W::RescueGuide,
            &[
                ("contact", &CONTACT_MIN.to_string()),
                ("plan", &SERIOUS_MIN[0].to_string()),
                ("most", &SERIOUS_MIN[1].to_string()),
                ("half", &HALF_MIN.to_string()),
            ],
        )
    };
    view! {
        <details class="guide"><summary>{settings.s(W::RescueWhence)}</summary>
            <p class="hint">{words}</p>{own}<p class="hint">{settings.s(W::RescueAssumed)}</p></details>
    }
}
