//! A handout: one page from the fall of the set-up page. Five stills, the curve, the finding, one change, one question.

use crate::geometry::Geometry;
use crate::geometry::p;
use crate::grade::changes::ChangeEffect;
use crate::grade::report::Report;
use crate::physics::trace::{EventKind, Outcome, Trace};
use crate::practice::demos::demos;
use crate::rules::{LimitKind, Severity};
use crate::scenario::Scenario;
use crate::scene::camera::Frame;
use crate::scene::figure::figure;
use crate::scene::house::house;
use crate::scene::ink::Shape;
use crate::scene::ink::line;
use crate::scene::{at, standing_scene};
use crate::texts::say::{self, Reader};
use crate::texts::{Room as W, Trainer as T, limit_quantity};
use crate::ui::rooms::pair::frame;
use crate::ui::rooms::paper::{Foot, Head, Lines};
use crate::ui::rooms::visit;
use crate::ui::shared::asking;
use crate::ui::shared::figure::{defs, still};
use crate::ui::shared::settings::settings;
use crate::ui::shared::view::{self, View};
use crate::units::{Quantity, Rounding};
use crate::worker::questions::{Changes, Fall};
use leptos::prelude::*;
use std::fmt::Write as _;
use std::sync::Arc;

/// Width over height of a still.
const STILL_SHAPE: f64 = 0.52;

/// Five moments of a fall: slip, tight, the hardest or what is struck, the lowest, and hanging; after a strike the
/// last is just before the contact.
fn moments(r: Reader, t: &Trace) -> Vec<(String, f64)> {
    use EventKind as E;
    let name = |k: E| r.t(k.label()).to_owned();
    let landed =
        [E::StrikesGround, E::StrikesObstacle].into_iter().filter_map(|k| t.time_of(k).map(|s| (k, s)));
    let landed = landed.min_by(|a, b| a.1.total_cmp(&b.1));
    let until_s = landed.map_or(f64::INFINITY, |l| l.1 - 0.02);
    let mut all: Vec<(E, f64)> = [
        E::Taut,
        E::OffRope,
        E::AnchorFails,
        E::RopeBreaks,
        E::LinkBreaks,
        E::LadderSlides,
        E::LadderTips,
        E::StrikesLadder,
        E::PeakForce,
        E::Lowest,
    ]
    .into_iter()
    .filter_map(|k| t.time_of(k).map(|s| (k, s)))
    .filter(|(_, s)| *s < until_s && *s > 0.02)
    .collect();
    all.sort_by(|a, b| a.1.total_cmp(&b.1));
    all.dedup_by(|b, a| (b.1 - a.1).abs() < 0.03);
    let mut out = vec![(name(E::Slip), 0.0)];
    let last = match landed {
        Some((k, _)) => (name(k), until_s.max(0.0)),
        None => (name(E::End), t.duration_s()),
    };
    // Three in between: those there are, else the fall itself, evenly.
    let mut between: Vec<(String, f64)> = all.into_iter().map(|(k, s)| (name(k), s)).collect();
    while between.len() > 3 {
        between.remove(if between.len() > 4 { 2 } else { 1 });
    }
    let end_s = if landed.is_some() { last.1 } else { t.time_of(E::Lowest).unwrap_or(1.0) };
    while between.len() < 3 {
        let s = end_s * (between.len() + 1) as f64 / 4.0;
        between.push((String::new(), s));
    }
    between.sort_by(|a, b| a.1.total_cmp(&b.1));
    out.extend(between);
    out.push(last);
    out
}

/// A still at a moment, on the frame that all share, with the boots' first height dashed.
fn still_at(s: &Scenario, g: &Geometry, t: &Trace, shown: Frame, time_s: f64) -> impl IntoView + use<> {
    let q = at(s, g, t, time_s).unwrap_or_else(|| standing_scene(s, g));
    let start = Shape::new("paper-start", line(&[p(-30.0, g.soles.y), p(30.0, g.soles.y)]));
    view! {
        <svg class="drawing thinned" viewBox=shown.view_box() preserveAspectRatio="xMidYMid slice" aria-hidden="true">
            {defs()}{still(house(g, s))}{still(vec![start])}<g class="figure">{still(figure(&q, s, g))}</g></svg>
    }
}

/// The curve of the force on the body, with its limit named on the line and the stills' numbers under it.
fn curve(r: Reader, rep: &Report, marks: &[(String, f64)]) -> impl IntoView + use<> {
    const SIZE: (f64, f64) = (460.0, 200.0);
    let t = &rep.trace;
    let limit = crate::rules::place(&rep.set_up.place).and_then(|p| p.limit(LimitKind::BodyForce));
    let end_s = (t.time_of(EventKind::Lowest).unwrap_or(1.0) + 1.2).min(t.duration_s()).max(0.5);
    let top_n = limit.map_or(0.0, |l| l.value).max(t.peak_force_n).max(1000.0) * 1.15;
    let x = |s: f64| 10.0 + (SIZE.0 - 20.0) * (s / end_s).clamp(0.0, 1.0);
    let y = |n: f64| SIZE.1 - 26.0 - (SIZE.1 - 46.0) * n / top_n;
    let mut d = String::new();
    for q in t.samples.iter().take_while(|q| q.time_s <= end_s) {
        let _ = write!(d, "{}{:.1} {:.1}", if d.is_empty() { 'M' } else { 'L' }, x(q.time_s), y(q.force_n));
    }
    let peak = t.time_of(EventKind::PeakForce).map(|s| {
        let (px, py) = (x(s), y(t.peak_force_n));
        view! { <circle class="dot" cx=px cy=py r="5" /><text x=px + 9.0 y=py - 4.0 class="strong">{r.q(Quantity::Force, t.peak_force_n, Rounding::Up)}</text> }
    });
    let limit = limit.map(|l| {
        let value = limit_quantity(r.lang, r.units, Quantity::Force, l.value);
        let words = r.f(T::HandLimit, &[("value", &value)]);
        view! { <path class="limit" d=format!("M10 {0:.1}H{1}", y(l.value), SIZE.0 - 10.0) /><text x=SIZE.0 - 12.0 y=y(l.value) - 5.0 text-anchor="end">{words}</text> }
    });
    let marks = marks
        .iter()
        .enumerate()
        .filter(|(_, m)| m.1 <= end_s)
        .map(|(i, m)| view! { <path class="base" d=format!("M{0:.1} {1:.1}v6", x(m.1), y(0.0)) /><text x=x(m.1) y=SIZE.1 - 6.0 text-anchor="middle" class="strong">{i + 1}</text> })
        .collect_view();
    view! {
        <svg class="paper-curve" viewBox=format!("0 0 {} {}", SIZE.0, SIZE.1) aria-hidden="true">
            <text x="10" y="14">{r.t(T::HandPull)}</text><path class="base" d=format!("M10 20V{0:.1}H{1}", y(0.0), SIZE.0 - 10.0) />
            {limit}<path class="curve" d=d />{peak}{marks}</svg>
    }
}

/// A change, and the fall with it.
type Better = (ChangeEffect, Arc<Trace>);

/// What the room has worked out.
#[derive(Clone, Copy)]
struct Hand {
    report: RwSignal<Option<Arc<Report>>>,
    /// The best single change and its fall.
    better: RwSignal<Option<Option<Better>>>,
    failed: RwSignal<bool>,
}

impl Hand {
    fn ask(self, s: &Scenario) {
        let Ok(set_up) = s.set_up() else { return self.failed.set(true) };
        let (first, second) = (set_up.clone(), set_up.clone());
        asking::ask(Fall(set_up), move |answer| {
            let rep = answer.ok().filter(Trace::is_sound).and_then(|t| Report::of(first, t));
            let _ = match rep {
                Some(rep) => self.report.try_set(Some(Arc::new(rep))).is_none(),
                None => self.failed.try_set(true).is_none(),
            };
        });
        let scenario = s.clone();
        asking::ask(Changes(second), move |answer| {
            let best = answer.ok().and_then(|all| all.into_iter().next());
            let Some(best) = best else { return drop(self.better.try_set(Some(None))) };
            let mut changed = scenario;
            best.change.apply(&mut changed);
            let Ok(changed) = changed.set_up() else { return drop(self.better.try_set(Some(None))) };
            asking::ask(Fall(changed), move |answer| {
                let found = answer.ok().filter(Trace::is_sound).map(|t| (best, Arc::new(t)));
                let _ = self.better.try_set(Some(found));
            });
        });
    }
}

/// What is told of a fall in figures: how far, and what was left.
fn figures(r: Reader, t: &Trace) -> String {
    let len = |m: f64, how| r.q(Quantity::Length, m, how);
    let fell = r.f(T::Fell, &[("value", &len(t.total_fall_m, Rounding::Up))]);
    match t.clearance_margin_m.filter(|m| *m > 0.0 && t.outcome == Outcome::Stopped) {
        Some(m) => format!("{fell}, {}", r.f(T::RoomLeft, &[("value", &len(m, Rounding::Down))])),
        None => fell,
    }
}

/// The room.
#[component]
pub fn Handout() -> impl IntoView {
    let (visit, settings) = (visit(), settings());
    let s = visit.set_up.get_untracked();
    let hand =
        Hand { report: RwSignal::new(None), better: RwSignal::new(None), failed: RwSignal::new(false) };
    hand.ask(&s);
    let title = RwSignal::new(String::new());
    let usual = demos().iter().find(|d| d.under(&s.place) == s);
    let question = RwSignal::new(match usual {
        Some(d) => settings.lang.get_untracked().of(&d.after).to_owned(),
        None => settings.reader_now().t(T::HandUsual).to_owned(),
    });
    let trainer = RwSignal::new(String::new());
    // The title says the cause.
    Effect::new(move |_| {
        let Some(rep) = hand.report.get() else { return };
        let r = settings.reader_now();
        let cause = rep
            .findings
            .first()
            .filter(|f| f.severity <= Severity::Minor)
            .map(|f| r.t(f.code.title()).to_owned());
        title.set(cause.unwrap_or_else(|| say::headline(r, &rep).sentence));
    });
    let text = move |k: T, id: &'static str, of: RwSignal<String>| {
        view! { <label class="line"><span>{settings.s(k)}</span><input type="text" id=id maxlength="160" prop:value=move || of.get() on:input=move |ev| of.set(event_target_value(&ev)) /></label> }
    };
    let page = move || {
        let rep = hand.report.get()?;
        let r = settings.reader();
        let s = rep.set_up.scenario().clone();
        let g = Geometry::of(&s)?;
        let t = &rep.trace;
        let marks = moments(r, t);
        let landed = t.outcome != Outcome::Stopped;
        let shown = frame(&[s.clone(), s.clone()])?.fit(STILL_SHAPE, 0.4);
        let stills = marks
            .iter()
            .enumerate()
            .map(|(i, (name, time_s))| {
                let time = r.q(Quantity::Time, *time_s, Rounding::Nearest);
                let class = if landed && i == 4 { "struck" } else { "" };
                view! { <div class=class>{still_at(&s, &g, t, shown, *time_s)}<p><b>{i + 1}</b>" "{name.clone()}" "<small>{time}</small></p></div> }
            })
            .collect_view();
        let h = say::headline(r, &rep);
        let why = rep.findings.iter().find_map(|f| say::why(r, &rep, f));
        let change = match hand.better.get() {
            None => None,
            Some(None) if h.severity >= Severity::Note => None,
            Some(None) => Some(r.t(T::HandNoChange).to_owned()),
            Some(Some((best, after))) => {
                Some(format!("{}. {}.", r.t(best.change.label()), say::upper_first(&figures(r, &after))))
            }
        };
        let now = say::upper_first(&figures(r, t));
        let where_to = say::state(r, &s).into_iter().next().unwrap_or_default();
        Some(view! {
            <section class="sheet paper shown handout" tabindex="0" aria-label=settings.s(T::HandName)>
                <Head over=r.t(T::HandTalk).to_owned() title=title.get() right=crate::ui::rooms::desk::today() under=where_to />
                <div class="stills">{stills}</div>
                <div class="two"><div>{curve(r, &rep, &marks)}</div><div><h2>{h.sentence}</h2><p>{h.figure}" "{now}"."</p>{why.map(|w| view! { <p>{w}</p> })}
                    {change.map(|c| view! { <p><b>{r.t(T::HandChange)}{r.colon()}</b>{c}</p> })}</div></div>
                <div class="question-box"><p><b>{question.get()}</b></p><Lines count=5 /></div>
                <p class="signs-line">{r.t(T::NameBlank)}<i></i>{r.t(T::HeldDate)}<i class="brief"></i>{r.t(T::HeldTrainer)}" "{trainer.get()}<i class="brief"></i></p>
                <Foot caution=crate::texts::Text::of(T::HandNot) set_up=s />
            </section>
        })
    };
    view! {
        <main class="page handout-room">
            <section class="no-print"><h2 id="hand-h" tabindex="-1">{settings.s(T::HandName)}</h2><p class="lead">{settings.s(T::HandLead)}</p>
                <div class="card">{text(T::HandTitle, "hand-title", title)}{text(T::HandQuestion, "hand-question", question)}{text(T::HeldTrainer, "hand-by", trainer)}
                <div class="row buttons"><button type="button" class="main" id="print" on:click=move |_| { let _ = window().print(); }>{settings.s(W::Print)}</button>
                    <button type="button" id="hand-back" on:click=move |_| view::go(View::Bench)>{settings.s(T::HandBack)}</button></div></div>
                <Show when=move || hand.failed.get()><p class="problems" role="alert">{settings.s(T::HandNone)}</p></Show></section>
            {page}
        </main>
    }
}
