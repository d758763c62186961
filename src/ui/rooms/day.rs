//! A working day on the house's front: jobs where they are, what can be done first with its minutes, and limits: paint,
//! rain, wind, going home. The end is told in `day_end`.

use super::bar::{RoomBar, WIDE_PX};
use super::day_end::End;
use super::today::{Today, clock};
use super::visit;
use crate::geometry::{Geometry, P, p};
use crate::practice::day::{Before, JOBS, Job, NOON_JOB, Shift, TAKES_MIN, Task};
use crate::practice::hand::Held;
use crate::scenario::{Bolt, Latch, Scenario, Stance, Weather};
use crate::scene::camera::{Frame, Pane};
use crate::scene::front::{Front, HALF_M};
use crate::scene::ink::{Shape, line, rect};
use crate::scene::labels::{Area, Wanted, along, place};
use crate::scene::lens;
use crate::texts::Key;
use crate::texts::Room as W;
use crate::texts::say::{self, Reader};
use crate::ui::shared::figure::{defs, still};
use crate::ui::shared::settings::settings;
use crate::ui::shared::view::{self, View};
use crate::units::{Quantity, Rounding};
use leptos::html::Div;
use leptos::prelude::*;

/// The middle of the jobs along the wall, m: the house stands round it.
fn middle_m(s: &Shift) -> f64 {
    let all = s.jobs.iter().map(|j| j.along_m);
    (all.clone().fold(f64::INFINITY, f64::min) + all.fold(0.0, f64::max)) / 2.0
}

/// Half of the house, m.
fn half_m(s: &Shift) -> f64 {
    let all = s.jobs.iter().map(|j| (j.along_m - middle_m(s)).abs());
    (all.fold(0.0, f64::max) + 1.4).max(HALF_M)
}

/// Where a job is on the front, m.
fn job_at(s: &Shift, g: &Geometry, j: &Job) -> P {
    let y = match j.task {
        Task::Soffit => g.eave.y - 0.25,
        Task::Fascia => g.eave.y + 0.05,
        Task::Window => g.eave.y - 1.5,
        Task::Dormer => g.eave.y + 0.45 * (g.ridge.y - g.eave.y),
    };
    p(j.along_m - middle_m(s), y)
}

/// A thing that can be done first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Act {
    Grab,
    Look,
    LookAgain,
    Ladder,
    Anchor,
    Partner,
    Line,
}

impl Act {
    const ALL: [Act; 7] =
        [Act::Grab, Act::Look, Act::LookAgain, Act::Ladder, Act::Anchor, Act::Partner, Act::Line];

    fn name(self) -> W {
        match self {
            Act::Grab => W::ActGrab,
            Act::Look => W::ActLook,
            Act::LookAgain => W::ActLookAgain,
            Act::Ladder => W::ActMoveLadder,
            Act::Anchor => W::ActMoveAnchor,
            Act::Partner => W::ActPartner,
            Act::Line => W::ActLine,
        }
    }

    /// What it does, in full.
    fn label(self) -> W {
        match self {
            Act::Grab => W::DoGrab,
            Act::Look => W::DoLook,
            Act::LookAgain => W::DoLookAgain,
            Act::Ladder => W::DoLadder,
            Act::Anchor => W::DoAnchor,
            Act::Partner => W::DoPartner,
            Act::Line => W::DoLine,
        }
    }

    fn minutes(self) -> u32 {
        TAKES_MIN[match self {
            Act::Grab => 0,
            Act::Look | Act::LookAgain => 1,
            Act::Ladder => 2,
            Act::Anchor => 3,
            Act::Partner => 4,
            Act::Line => 5,
        }]
    }

    fn is_on(self, b: &Before) -> bool {
        match self {
            Act::Grab => b.grab,
            Act::Look => b.look,
            Act::LookAgain => b.look_again,
            Act::Ladder => b.ladder,
            Act::Anchor => b.anchor,
            Act::Partner => b.partner,
            Act::Line => b.line,
        }
    }

    fn turn(self, b: &mut Before) {
        let x = match self {
            Act::Grab => &mut b.grab,
            Act::Look => &mut b.look,
            Act::LookAgain => &mut b.look_again,
            Act::Ladder => &mut b.ladder,
            Act::Anchor => &mut b.anchor,
            Act::Partner => &mut b.partner,
            Act::Line => &mut b.line,
        };
        *x = !*x;
    }

    /// Whether it makes sense before the next job.
    fn is_there(self, s: &Shift, j: &Job, b: &Before) -> bool {
        let to_ladder_m = (j.along_m - s.ladder_m).abs();
        match self {
            Act::Ladder => {
                matches!(j.stance, Stance::Ladder { .. })
                    && to_ladder_m > 0.05
                    && to_ladder_m <= Shift::LEAN_M
            }
            Act::Anchor => (j.along_m - s.anchor_m).abs() > 0.05,
            Act::Partner => !s.is_checked()[0],
            // Hung anew it wants a look again.
            Act::Line => !s.is_checked()[1] || b.anchor,
            _ => true,
        }
    }
}

/// The room.
#[component]
pub fn Day() -> impl IntoView {
    view::fill_the_window();
    let (visit, settings) = (visit(), settings());
    let today = Today::new();
    let place = move || visit.set_up.with_untracked(|s| s.place.clone());
    // Nothing is asked first: the day begins, or goes on where it was left.
    if !today.take_up() {
        today.start(&place());
    }
    Effect::new(move |_| today.keep());
    let start = Callback::new(move |()| today.start(&place()));
    let again = move || {
        view! {
            <section class="strip"><p class="problems">{settings.s(Key::EngineMissing)}" "
                <button type="button" on:click=move |_| today.finish()>{settings.s(Key::TryAgain)}</button></p></section>
        }
    };
    let body = move || match (today.over.get(), today.failed.get()) {
        (true, true) => again().into_any(),
        (true, false) => view! { <End today=today start=start /> }.into_any(),
        (false, _) => view! { <Working today=today /> }.into_any(),
    };
    view! {
        <main class="page day">
            <RoomBar back=W::BackToList to=Callback::new(|()| view::go(View::Lessons)) title=settings.s(W::DayName) />
            {body}
        </main>
    }
}

/// The front as the shift stands, with what would be moved where.
fn front_shapes(
    s: &Shift,
    shown: &Scenario,
    g: &Geometry,
    before: &Before,
) -> (Vec<Shape>, Vec<Shape>, Vec<Shape>) {
    let f = Front { half_m: half_m(s), ..Front::of(shown, g) };
    let mut house = f.behind();
    let mid = middle_m(s);
    // What is painted, under the eave or on the slope.
    for j in s.jobs.iter().take(s.done) {
        let at = job_at(s, g, j);
        let (low, high) = match j.task {
            Task::Dormer => (g.eave.y + 0.1, at.y + 0.5),
            _ => (at.y - 0.9, g.eave.y - 0.14),
        };
        house.push(Shape::new("painted", rect(p(at.x - 0.6, low), p(at.x + 0.6, high.max(low + 0.2)))));
    }
    let ladder_m = if matches!(shown.stance, Stance::Ladder { .. }) {
        s.ladder_m
    } else {
        s.next().map_or(s.ladder_m, |j| j.along_m)
    };
    let moving = Front { along_m: ladder_m - s.anchor_m, ..f }.moving();
    // Where ladder and anchor would go.
    let mut would = Vec::new();
    if let Some(j) = s.next() {
        let x = j.along_m - mid;
        if before.ladder
            || (matches!(j.stance, Stance::Ladder { .. }) && (j.along_m - s.ladder_m).abs() > Shift::LEAN_M)
        {
            let (a, b) = (g.ladder.foot.y, g.ladder.tip.y);
            would.push(Shape::new(
                "would",
                line(&[p(x - 0.2, a), p(x - 0.2, b)]) + &line(&[p(x + 0.2, a), p(x + 0.2, b)]),
            ));
        }
        if before.anchor {
            would.push(Shape::new("would", line(&[p(x, g.anchor.y), p(x, g.eave.y)])));
        }
    }
    (house, moving, would)
}

/// A day that is being worked.
#[component]
fn Working(today: Today) -> impl IntoView {
    let (visit, settings) = (visit(), settings());
    let (before, looked) = (today.before, today.looked);
    let size = RwSignal::new((0.0, 0.0));
    let node = NodeRef::<Div>::new();
    Effect::new(move |_| {
        if let Some(e) = node.get() {
            view::watch_size(&e, size);
        }
    });
    let shift = today.shift;
    // What is seen: bolt and latch as last looked at.
    let shown = Memo::new(move |_| {
        shift.with(|s| {
            let s = s.as_ref()?;
            let mut now = s.arrived();
            if !before.with(|b| b.look) {
                now.grab.latch = Latch::Closed;
                now.grab.bolt = Bolt::Tight;
            }
            Some(now)
        })
    });
    let pane = Memo::new(move |_| {
        let (width_px, height_px) = size.get();
        if width_px < 10.0 || height_px < 10.0 {
            return None;
        }
        let g = Geometry::of(&shown.get()?)?;
        let (mid, half, at) = shift.with(|s| {
            s.as_ref().map(|s| (middle_m(s), half_m(s), s.next().map_or(s.ladder_m, |j| j.along_m)))
        })?;
        let ground = g.ground_y_m(g.ladder.foot.x);
        let wide = width_px >= WIDE_PX;
        let x = at - mid;
        let f = if wide {
            Frame { left_m: -half - 0.9, right_m: half + 0.9, bottom_m: ground - 0.4, top_m: g.ridge.y + 0.5 }
        } else {
            let (low, high) = (g.soles.y.min(g.eave.y - 2.2) - 0.6, (g.dring.y + 1.4).max(g.eave.y + 1.9));
            Frame { left_m: x - 2.6, right_m: x + 2.6, bottom_m: low.max(ground - 0.4), top_m: high }
        };
        Some(Pane { frame: f.fit(width_px / height_px, 0.5), width_px, height_px })
    });
    let shapes = Memo::new(move |_| {
        let s = shift.get()?;
        let now = shown.get()?;
        let g = Geometry::of(&now)?;
        Some((front_shapes(&s, &now, &g, &before.get()), s.anchor_m - middle_m(&s)))
    });
    let drawn = move || {
        let ((house, moving, would), x) = shapes.get()?;
        let shift_to = format!("translate({:.0} 0)", 100.0 * x);
        Some(view! { {still(house)}{still(would)}<g transform=shift_to>{still(moving)}</g> })
    };
    let words = move || shift.with(|s| s.as_ref().map_or(String::new(), |s| said(settings.reader(), s)));
    let work = move |ev: web_sys::MouseEvent| {
        if view::is_second(&ev) {
            return;
        }
        let how = before.get_untracked();
        let mut slipped = false;
        let mut gone_on = true;
        shift.update(|s| {
            if let Some(s) = s {
                let begun = s.minute;
                slipped = s.work(how);
                if how.look_again {
                    looked.set(Some(s.minute.saturating_sub(s.log.last().map_or(0, |x| x.minutes))));
                } else if how.look {
                    looked.set(Some(begun));
                }
                gone_on = s.next().is_some();
            }
        });
        before.set(Before::default());
        if slipped || !gone_on {
            today.finish();
        } else if let Some(s) = shift.get_untracked() {
            visit.said.set(said(settings.reader_now(), &s));
        }
    };
    let minutes = move || shift.with(|s| s.as_ref().and_then(Shift::next).map_or(0, |j| j.minutes));
    view! {
        <div class="room-pane day-pane" node_ref=node>
            <svg class="drawing front" class:rain=move || shift.with(|s| s.as_ref().is_some_and(|s| s.weather(s.minute) == Weather::Wet))
                viewBox=move || pane.get().map_or("0 0 100 100".to_owned(), |q| q.frame.view_box()) preserveAspectRatio="xMidYMid meet" role="img" aria-label=words>
                {defs()}{drawn}</svg>
            <Flags shift=shift pane=pane />
            <Facts shift=shift />
            <LastSeen shift=shift before=before looked=looked />
        </div>
        <section class="strip day-strip">
            <Line shift=shift />
            <JobWords shift=shift before=before />
            <DayActs shift=shift before=before pane=pane />
            <div class="next">
                <button type="button" id="day-down" on:click=move |_| today.finish()>{settings.s(W::DayDown)}</button>
                <button type="button" class="main" id="day-work" on:click=work>{move || settings.reader().f(W::DayWork, &[("minutes", &minutes().to_string())])}</button>
            </div>
        </section>
    }
}

/// The state of the shift as a sentence.
fn said(r: Reader, s: &Shift) -> String {
    let Some(j) = s.next() else { return String::new() };
    r.f(
        W::DayJob,
        &[("n", &(s.done + 1).to_string()), ("all", &JOBS.to_string()), ("task", r.t(j.task.label()))],
    )
}

/// Which job, and how far it is.
#[component]
fn JobWords(shift: RwSignal<Option<Shift>>, before: RwSignal<Before>) -> impl IntoView {
    let settings = settings();
    move || {
        let s = shift.get()?;
        let j = s.next()?;
        let r = settings.reader();
        let on_ladder = matches!(j.stance, Stance::Ladder { .. });
        let (to_anchor_m, to_ladder_m) = ((j.along_m - s.anchor_m).abs(), (j.along_m - s.ladder_m).abs());
        let len = |m: f64| r.q(Quantity::Length, m, Rounding::Nearest);
        let grab = r.f(W::DayGrab, &[("offset", &say::offset(r, s.arrived().grab.above_dring_m))]);
        let here = to_anchor_m < 0.05 && (!on_ladder || to_ladder_m < 0.05);
        let whereat = r.f(
            match (on_ladder, here) {
                (false, _) => W::DayOnRoof,
                (true, true) => W::DayHere,
                (true, false) => W::DayWhere,
            },
            &[("anchor", &len(to_anchor_m)), ("ladder", &len(if on_ladder { to_ladder_m } else { 0.0 }))],
        );
        let far = (on_ladder && to_ladder_m > Shift::LEAN_M)
            .then(|| r.f(W::LadderFar, &[("minutes", &TAKES_MIN[2].to_string())]));
        let [harness, line] = s.is_checked();
        let b = before.get();
        let noon = s.done == NOON_JOB;
        let unseen = match [harness || b.partner, (line && !b.anchor) || b.line] {
            [false, _] if noon => r.t(W::DayUnseenNoon),
            [false, false] => r.t(W::DayUnseenBoth),
            [false, true] => r.t(W::DayUnseenHarness),
            [true, false] => r.t(W::DayUnseenLine),
            [true, true] => "",
        };
        Some(view! {
            <div class="job-words"><h3 id="day-job" tabindex="-1">{said(r, &s)}</h3>
                <p class="figure-line">{whereat}" "{grab}" "{far}" "{unseen}</p></div>
        })
    }
}

/// Jobs as numbers where they are: done, now, to come.
#[component]
fn Flags(shift: RwSignal<Option<Shift>>, pane: Memo<Option<Pane>>) -> impl IntoView {
    move || {
        let (s, pane) = (shift.get()?, pane.get()?);
        let g = Geometry::of(&s.set_up)?;
        let all = s
            .jobs
            .iter()
            .enumerate()
            .filter_map(|(i, j)| {
                let (x, y) = pane.px(job_at(&s, &g, j));
                if x < 14.0 || y < 14.0 || x > pane.width_px - 14.0 || y > pane.height_px - 14.0 {
                    return None;
                }
                let class = match i.cmp(&s.done) {
                    core::cmp::Ordering::Less => "job-flag done",
                    core::cmp::Ordering::Equal => "job-flag now",
                    core::cmp::Ordering::Greater => "job-flag",
                };
                let text = if i < s.done { "✓".to_owned() } else { (i + 1).to_string() };
                Some(view! { <b class=class aria-hidden="true" prop:style=format!("left:{x:.0}px;top:{y:.0}px")>{text}</b> })
            })
            .collect_view();
        Some(all)
    }
}

/// Time, weather, what is painted, when it ends.
#[component]
fn Facts(shift: RwSignal<Option<Shift>>) -> impl IntoView {
    let settings = settings();
    move || {
        let s = shift.get()?;
        let r = settings.reader();
        let at = |m: u32| clock(r, m);
        let rain = if s.minute >= s.rain_min {
            r.t(W::DayRainNow).to_owned()
        } else {
            format!("{}, {}", r.t(W::DayDryNow), r.f(W::DayRainAt, &[("time", &at(s.rain_min))]))
        };
        let wind = if s.minute >= s.wind_min {
            Some(r.t(W::DayWindNow).to_owned())
        } else {
            (s.wind_min < s.home_min).then(|| r.f(W::DayWindAt, &[("time", &at(s.wind_min))]))
        };
        let painted = r.f(W::DayPainted, &[("n", &s.done.to_string()), ("all", &JOBS.to_string())]);
        let home = r.f(W::DayHome, &[("time", &at(s.home_min))]);
        Some(
            view! { <div class="day-facts"><strong>{at(s.minute)}</strong><span>{rain}</span>{wind.map(|w| view! { <span>{w}</span> })}<span>{painted}</span><span>{home}</span></div> },
        )
    }
}

/// Bolt and latch as they were last seen; how they are now is known only after a look.
#[component]
fn LastSeen(
    shift: RwSignal<Option<Shift>>,
    before: RwSignal<Before>,
    looked: RwSignal<Option<u32>>,
) -> impl IntoView {
    let settings = settings();
    move || {
        let s = shift.get()?;
        let r = settings.reader();
        let mut now = s.arrived();
        let fresh = before.with(|b| b.look);
        if !fresh {
            now.grab.latch = Latch::Closed;
            now.grab.bolt = Bolt::Tight;
        }
        let paths = lens::of(Held::Grab, &now)
            .into_iter()
            .map(|(c, d)| view! { <path class=c d=d /> })
            .collect_view();
        let words = if fresh {
            let bolt = r.t(if now.grab.bolt == Bolt::Loose { Key::BoltLoose } else { Key::BoltTight });
            let latch = r.t(if now.grab.latch == Latch::Open { Key::LatchOpen } else { Key::LatchClosed });
            let found = r.f(W::DayFound, &[("bolt", bolt), ("latch", latch)]);
            let right = (now.grab.bolt == Bolt::Loose || now.grab.latch == Latch::Open)
                .then(|| format!(" {}", r.t(W::DayPutRight)));
            view! { <span id="looked" role="status">{r.f(W::DayLooked, &[("found", &found)])}{right}</span> }
                .into_any()
        } else {
            let text = match looked.get() {
                Some(m) => r.f(W::DaySeen, &[("minutes", &s.minute.saturating_sub(m).to_string())]),
                None => r.t(W::DayNotSeen).to_owned(),
            };
            view! { <span>{text}</span> }.into_any()
        };
        Some(view! {
            <div class="last-seen"><svg class="lens" viewBox="0 0 120 120" aria-hidden="true">{paths}
                {(!fresh).then(|| view! { <path class="unknown" d="M18 60a15 15 0 1 0 .1 0ZM84 40a20 20 0 1 0 .1 0Z" /> })}</svg>{words}</div>
        })
    }
}

/// The shift as a line of minutes: work, what else was done, rain to come, going home. No colour of risk yet.
#[component]
fn Line(shift: RwSignal<Option<Shift>>) -> impl IntoView {
    let settings = settings();
    move || {
        let s = shift.get()?;
        let r = settings.reader();
        let whole = f64::from(s.home_min.max(s.minute)) + 10.0;
        let x = |m: u32| 100.0 * f64::from(m) / whole;
        let blocks = s
            .log
            .iter()
            .map(|b| view! { <span class="block" prop:style=format!("left:{:.2}%;width:{:.2}%", x(b.from_min), x(b.minutes))></span> })
            .collect_view();
        Some(view! {
            <div class="minutes day-line" aria-hidden="true">
                <div class="line"><span class="rain" prop:style=format!("left:{:.2}%;right:0", x(s.rain_min))></span>{blocks}
                    <i class="home" prop:style=format!("left:{:.2}%", x(s.home_min))></i><i class="now" prop:style=format!("left:{:.2}%", x(s.minute))></i></div>
                <p><span class="from">{clock(r, 0)}</span><span class="end">{clock(r, s.home_min)}</span></p>
            </div>
        })
    }
}

/// What can be done first: at its part on a wide picture, in two columns under a narrow one.
#[component]
fn DayActs(
    shift: RwSignal<Option<Shift>>,
    before: RwSignal<Before>,
    pane: Memo<Option<Pane>>,
) -> impl IntoView {
    let (visit, settings) = (visit(), settings());
    let toggle = move |a: Act| {
        // What was seen cannot be unseen: the look's minute is spent.
        if a == Act::Look && before.with_untracked(|b| b.look) {
            return;
        }
        before.update(|b| a.turn(b));
        let r = settings.reader_now();
        let on = before.with_untracked(|b| a.is_on(b));
        let word = r.t(if on { W::LessonDone } else { W::DayTap });
        visit.said.set(format!("{}: {word}", r.t(a.label())));
    };
    move || {
        let (s, pane) = (shift.get()?, pane.get()?);
        let j = s.next()?;
        let r = settings.reader();
        let g = Geometry::of(&s.arrived())?;
        let wide = pane.width_px >= WIDE_PX;
        let acts: Vec<Act> =
            Act::ALL.into_iter().filter(|a| before.with(|b| a.is_there(&s, &j, b))).collect();
        let text = |a: Act| (r.t(a.name()), r.f(W::CardMinutes, &[("minutes", &a.minutes().to_string())]));
        let mid = middle_m(&s);
        let (ladder, anchor, job) = (s.ladder_m - mid, s.anchor_m - mid, j.along_m - mid);
        let places: Vec<Option<Area>> = if wide {
            let mut body = along(&[pane.px(p(ladder, g.dring.y + 0.6)), pane.px(p(ladder, g.soles.y))], 60.0);
            body.extend(along(&[pane.px(p(anchor, g.anchor.y)), pane.px(p(ladder, g.dring.y + 0.6))], 24.0));
            body.extend(s.jobs.iter().map(|j| Area::round(pane.px(job_at(&s, &g, j)), (20.0, 20.0))));
            let wanted: Vec<Wanted> = acts
                .iter()
                .map(|a| {
                    let at = match a {
                        Act::Grab => p(ladder + 0.3, g.grab.y + 0.2),
                        Act::Look => p(ladder - 0.4, g.dring.y),
                        Act::LookAgain => p(ladder - 0.4, g.dring.y - 1.0),
                        Act::Ladder => p(job, g.ladder.foot.y + 0.6),
                        Act::Anchor => p((anchor + job) / 2.0, g.anchor.y - 0.2),
                        Act::Partner => p(ladder - 0.4, g.dring.y + 1.0),
                        Act::Line => p(anchor + 0.3, g.eave.y + 0.5),
                    };
                    let (name, cost) = text(*a);
                    let wide_px = 48.0 + 9.2 * (name.chars().count() + cost.chars().count()) as f64;
                    let side =
                        if matches!(a, Act::Look | Act::LookAgain | Act::Partner) { -1.0 } else { 1.0 };
                    Wanted { at: pane.px(at), size: (wide_px, 44.0), side_sign: side, on: false }
                })
                .collect();
            // The facts, and the lens below them, keep their corner.
            let corner = Area { x_px: 0.0, y_px: 0.0, width_px: 220.0, height_px: pane.height_px };
            place((pane.width_px, pane.height_px), &wanted, (&body, &[]), &[corner])
        } else {
            vec![None; acts.len()]
        };
        let all = acts
            .into_iter()
            .zip(places)
            .map(|(a, area)| {
                let (name, cost) = text(a);
                let on = before.with(|b| a.is_on(b));
                let label = format!("{name} {cost}. {}", r.t(a.label()));
                let style = area.map_or(String::new(), |q| format!("left:{:.0}px;top:{:.0}px;width:{:.0}px", q.x_px, q.y_px, q.width_px));
                view! {
                    <button type="button" class="step-of" data-act=format!("{a:?}") aria-pressed=on.to_string() aria-label=label prop:style=style on:click=move |_| toggle(a)>
                        <span>{on.then(|| view! { <b aria-hidden="true">"✓ "</b> })}{name}</span>" "<small>{cost}</small></button>
                }
            })
            .collect_view();
        Some(view! { <div class="acts" class:wide=wide>{all}</div> })
    }
}
