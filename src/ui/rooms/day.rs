//! A working day: job after job, and at the end where the time at risk was.

use super::visit;
use crate::physics::trace::Trace;
use crate::practice::day::{Before, JOBS, Risk, Shift, Stretch, TAKES_MIN};
use crate::practice::houses::HouseKind;
use crate::scenario::{Bolt, Latch, Stance, Weather};
use crate::studies::along_wall::Swing;
use crate::texts::Key;
use crate::texts::Room as W;
use crate::texts::say::Reader;
use crate::ui::shared::asking;
use crate::ui::shared::figure::{Falls, Still};
use crate::ui::shared::front::front;
use crate::ui::shared::house_picture::picture;
use crate::ui::shared::settings::settings;
use crate::ui::shared::view::{self, View, to_bench};
use crate::units::{Quantity, Rounding};
use crate::worker::questions::{Fall, Shift as ShiftLog, Swings};
use leptos::prelude::*;
use std::sync::Arc;

/// Minute of the day when the shift begins.
const STARTS_MIN: u32 = 8 * 60;

fn clock(r: Reader, minute: u32) -> String {
    let m = STARTS_MIN + minute;
    let mark = if r.lang == crate::texts::Lang::Fr { " h " } else { ":" };
    format!("{}{mark}{:02}", m / 60, m % 60)
}

fn risk(x: Risk) -> (W, &'static str, &'static str) {
    match x {
        Risk::Held => (W::RiskHeld, "held", "✓"),
        Risk::Over => (W::RiskOver, "over", "△"),
        Risk::Strikes => (W::RiskStrikes, "strikes", "✕"),
        Risk::LetsGo => (W::RiskLetsGo, "lets-go", "╳"),
        Risk::NotGraded => (W::RiskNotGraded, "none", "?"),
    }
}

/// What stood out in a stretch.
fn causes(r: Reader, x: &Stretch) -> String {
    let s = &x.set_up;
    let len = |m: f64| r.q(Quantity::Length, m, Rounding::Nearest);
    let mut all = Vec::new();
    if s.grab.latch == Latch::Open {
        all.push(r.t(W::CauseLatch).to_owned());
    }
    if s.grab.bolt == Bolt::Loose {
        all.push(r.t(W::CauseBolt).to_owned());
    }
    if s.grab.above_dring_m < -0.05 {
        all.push(r.t(W::CauseGrab).to_owned());
    }
    if x.offset_m > 0.2 {
        all.push(r.f(W::CauseSide, &[("value", &len(x.offset_m))]));
    }
    if s.ladder.reach_out_m > 0.05 {
        all.push(r.f(W::CauseLean, &[("value", &len(s.ladder.reach_out_m))]));
    }
    if s.weather == Weather::Wet {
        all.push(r.t(W::CauseWet).to_owned());
    }
    all.join(", ")
}

#[component]
pub fn Day() -> impl IntoView {
    let (visit, settings) = (visit(), settings());
    let house = RwSignal::new(HouseKind::TwoStorey);
    let seed = RwSignal::new(super::desk::fresh_seed() % 1000);
    let shift = RwSignal::new(None::<Shift>);
    let over = RwSignal::new(false);
    let risks = RwSignal::new(None::<Vec<Risk>>);
    let fall = RwSignal::new(None::<Arc<Trace>>);
    let failed = RwSignal::new(false);
    let turn = StoredValue::new(0_u32);
    let start = move || {
        let place = visit.set_up.with_untracked(|s| s.place.clone());
        shift.set(Some(Shift::of(seed.get_untracked(), house.get_untracked(), &place)));
        over.set(false);
        risks.set(None);
        fall.set(None);
        turn.update_value(|t| *t += 1);
    };
    let finish = move || {
        let Some(s) = shift.get_untracked() else { return };
        over.set(true);
        failed.set(false);
        risks.set(None);
        fall.set(None);
        turn.update_value(|t| *t += 1);
        // An answer to a shift that is gone says nothing of this one.
        let mine = turn.get_value();
        let is_mine = move || turn.try_get_value() == Some(mine);
        if let Some(set_up) = s.slipped.then(|| s.set_up.set_up().ok()).flatten() {
            asking::ask(Fall(set_up), move |answer| {
                if let Some(t) = answer.ok().filter(|t| is_mine() && t.is_sound()) {
                    let _ = fall.try_set(Some(Arc::new(t)));
                }
            });
        }
        asking::ask(ShiftLog(s.log), move |answer| {
            if is_mine() {
                match answer {
                    Ok(all) => risks.set(Some(all)),
                    Err(_) => failed.set(true),
                }
            }
        });
    };
    let again = move || {
        view! {
            <p class="problems">{settings.s(Key::EngineMissing)}" "
                <button type="button" on:click=move |_| finish()>{settings.s(Key::TryAgain)}</button></p>
        }
    };
    let body = move || match (shift.with(Option::is_some), over.get()) {
        (true, true) if failed.get() => again().into_any(),
        (false, _) => begin(house, seed, start).into_any(),
        (true, false) => job(shift, finish).into_any(),
        (true, true) => end(shift, risks, fall, start, move || shift.set(None)).into_any(),
    };
    view! {
        <main class="page day"><section>
            <button type="button" class="plain" on:click=move |_| view::go(View::Lessons)>"← "{settings.s(W::BackToList)}</button>
            <h2>{settings.s(W::DayName)}</h2>
            {body}
        </section></main>
    }
}

fn begin(
    house: RwSignal<HouseKind>,
    seed: RwSignal<u64>,
    start: impl Fn() + Copy + Send + Sync + 'static,
) -> impl IntoView {
    let settings = settings();
    let houses = HouseKind::ALL
        .map(|k| {
            view! { <label><input type="radio" name="day-house" prop:checked=move || house.get() == k on:change=move |_| house.set(k) />
            {picture(k)}<span>{settings.s(k.label())}</span></label> }
        })
        .into_iter()
        .collect_view();
    view! {
        <p class="lead">{settings.s(W::DayLead)}</p>
        <fieldset class="houses"><div class="row">{houses}</div></fieldset>
        <label class="line"><span>{settings.s(W::DaySeed)}</span><input id="day-seed" type="text" inputmode="numeric" prop:value=move || seed.get().to_string()
            on:change=move |ev| { if let Ok(n) = event_target_value(&ev).trim().parse::<u64>() { seed.set(n % 1_000_000) } } /></label>
        <button type="button" class="main" id="day-start" on:click=move |_| start()>{settings.s(W::DayStart)}</button>
    }
}

fn job(shift: RwSignal<Option<Shift>>, finish: impl Fn() + Copy + Send + Sync + 'static) -> impl IntoView {
    let (visit, settings) = (visit(), settings());
    let before = RwSignal::new(Before::default());
    let looked = RwSignal::new(false);
    let view_now = move || {
        let s = shift.get()?;
        let j = s.next()?;
        let r = settings.reader();
        let arrived = s.arrived();
        let on_ladder = matches!(j.stance, Stance::Ladder { .. });
        let (to_anchor_m, to_ladder_m) = ((j.along_m - s.anchor_m).abs(), (j.along_m - s.ladder_m).abs());
        let len = |m: f64| r.q(Quantity::Length, m, Rounding::Nearest);
        let weather = r.t(if j.weather == Weather::Wet { Key::WeatherWet } else { Key::WeatherDry });
        let head = r.f(
            W::DayJob,
            &[("n", &(s.done + 1).to_string()), ("all", &JOBS.to_string()), ("task", r.t(j.task.label()))],
        );
        let here = to_anchor_m < 0.05 && (!on_ladder || to_ladder_m < 0.05);
        let whereat = r.f(
            if here { W::DayHere } else { W::DayWhere },
            &[
                ("anchor", &len(to_anchor_m)),
                ("ladder", &len(if on_ladder { to_ladder_m } else { 0.0 })),
                ("grab", &len(arrived.grab.above_dring_m)),
            ],
        );
        let found = format!(
            "{}, {}",
            r.t(if arrived.grab.bolt == Bolt::Loose { Key::LooksBoltLoose } else { Key::LooksBoltTight }),
            r.t(if arrived.grab.latch == Latch::Open { Key::LooksLatchOpen } else { Key::LooksLatchClosed })
        );
        let box_for = move |id: &'static str,
                            label: W,
                            i: usize,
                            get: fn(&Before) -> bool,
                            set: fn(&mut Before, bool),
                            can: bool| {
            can.then(|| view! {
                <label class="pill option"><input type="checkbox" id=id prop:checked=move || before.with(get)
                    on:change=move |ev| { let on = event_target_checked(&ev); before.update(|b| set(b, on)); if id == "do-look" && on { looked.set(true) } } />
                    <span><b class="tick" aria-hidden="true"></b>{settings.s(label)}<small>{move || settings.reader().f(W::DoMinutes, &[("minutes", &TAKES_MIN[i].to_string())])}</small></span></label>
            })
        };
        let work = move || {
            let how = before.get_untracked();
            let mut slipped = false;
            let mut gone_on = true;
            shift.update(|s| {
                if let Some(s) = s {
                    slipped = s.work(how);
                    gone_on = s.next().is_some();
                }
            });
            before.set(Before::default());
            looked.set(false);
            if slipped || !gone_on {
                finish();
            } else if let Some(s) = shift.get_untracked() {
                let r = settings.reader_now();
                visit.said.set(r.f(
                    W::DayJob,
                    &[
                        ("n", &(s.done + 1).to_string()),
                        ("all", &JOBS.to_string()),
                        ("task", s.next().map_or("", |j| r.t(j.task.label()))),
                    ],
                ));
            }
        };
        // The drawing does not tell what only a look would show.
        let mut shown = arrived.clone();
        if !looked.get() {
            shown.grab.latch = Latch::Closed;
        }
        Some(view! {
            <h3 id="day-job">{head}</h3>
            <p>{r.f(W::DayClock, &[("time", &clock(r, s.minute)), ("weather", weather)])}</p>
            {(j.weather == Weather::Wet).then(|| view! { <p class="problems"><b aria-hidden="true">"△ "</b>{r.t(W::DayWet)}</p> })}
            <Still set_up=RwSignal::new(shown) />
            <p>{whereat}</p>
            {(on_ladder && to_ladder_m > Shift::LEAN_M).then(|| view! { <p class="hint">{r.f(W::LadderFar, &[("minutes", &TAKES_MIN[2].to_string())])}</p> })}
            <fieldset class="options-list"><legend>{r.t(W::DayBefore)}</legend>
                {box_for("do-grab", W::DoGrab, 0, |b| b.grab, |b, x| b.grab = x, true)}
                {box_for("do-look", W::DoLook, 1, |b| b.look, |b, x| b.look = x, true)}
                {box_for("do-again", W::DoLookAgain, 1, |b| b.look_again, |b, x| b.look_again = x, true)}
                {box_for("do-ladder", W::DoLadder, 2, |b| b.ladder, |b, x| b.ladder = x, on_ladder && to_ladder_m > 0.05 && to_ladder_m <= Shift::LEAN_M)}
                {box_for("do-anchor", W::DoAnchor, 3, |b| b.anchor, |b, x| b.anchor = x, to_anchor_m > 0.05)}
            </fieldset>
            {looked.get().then(|| view! { <p class="told" role="status">{r.f(W::DayLooked, &[("found", &found)])}</p> })}
            <div class="row buttons">
                <button type="button" class="main" id="day-work" on:click=move |_| work()>{r.f(W::DayWork, &[("minutes", &j.minutes.to_string())])}</button>
                <button type="button" id="day-down" on:click=move |_| finish()>{r.t(W::DayDown)}</button>
            </div>
        })
    };
    view! { {view_now} }
}

fn end(
    shift: RwSignal<Option<Shift>>,
    risks: RwSignal<Option<Vec<Risk>>>,
    fall: RwSignal<Option<Arc<Trace>>>,
    again: impl Fn() + Copy + Send + Sync + 'static,
    other: impl Fn() + Copy + Send + Sync + 'static,
) -> impl IntoView {
    let settings = settings();
    let head = move || {
        let s = shift.get()?;
        let r = settings.reader();
        let line = if s.slipped {
            r.f(W::DaySlip, &[("time", &clock(r, s.minute))])
        } else if s.done == JOBS {
            r.t(W::DayOver).to_owned()
        } else {
            r.f(W::DayCame, &[("n", &s.done.to_string())])
        };
        let what = s.slipped.then(|| s.log.last().map(|x| causes(r, x))).flatten().filter(|c| !c.is_empty());
        Some(view! { <p class="sentence" id="day-end">{line}</p>{what.map(|w| view! { <p>{w}</p> })} })
    };
    // To the side of the anchor: the fall along the wall, from the front.
    let swung = RwSignal::new(None::<Swing>);
    if let Some(x) = shift.get_untracked().filter(|s| s.slipped).and_then(|s| s.log.last().cloned())
        && x.offset_m > 0.2
        && let Ok(set_up) = x.set_up.set_up()
    {
        asking::ask(Swings(set_up), move |answer| {
            let near = answer
                .unwrap_or_default()
                .into_iter()
                .min_by(|a, b| (a.offset_m - x.offset_m).abs().total_cmp(&(b.offset_m - x.offset_m).abs()));
            let _ = swung.try_set(near);
        });
    }
    let swing = move || {
        let w = swung.get()?;
        let last = *risks.get()?.last()?;
        let r = settings.reader();
        let told = r.f(
            W::DaySwing,
            &[
                (
                    "offset",
                    &r.q(Quantity::Length, shift.get_untracked()?.log.last()?.offset_m, Rounding::Nearest),
                ),
                ("risk", r.t(risk(last).0)),
            ],
        );
        let set_up = shift.get_untracked().map(|s| s.set_up)?;
        Some(
            view! { <p>{told.clone()}</p>{front(&set_up, w.offset_m, Some(&w), (None, None), told)}<p class="hint">{r.t(Key::FrontLegend)}</p> },
        )
    };
    let played = move || {
        let (s, t) = (shift.get_untracked()?, fall.get()?);
        let set_up = s.set_up.clone();
        let outcome = t.outcome;
        let aside_m = s.log.last().map_or(0.0, |x| x.offset_m);
        Some(view! {
            {(aside_m <= 0.2).then(|| view! { <p>{move || settings.t(outcome.label())}</p> })}
            <Falls first=(s.set_up.clone(), t) />
            <button type="button" on:click=move |_| to_bench(&set_up)>{settings.s(W::SeeFall)}</button>
        })
    };
    let line = move || {
        let s = shift.get()?;
        let r = settings.reader();
        let Some(all) = risks.get() else {
            return Some(view! { <p role="status">{r.t(W::RiskWaiting)}</p> }.into_any());
        };
        let whole = f64::from(s.minute.max(1));
        let minutes = |bad: bool| {
            s.log.iter().zip(&all).filter(|(_, k)| !bad || k.is_bad()).map(|(x, _)| x.minutes).sum::<u32>()
        };
        let total =
            r.f(W::RiskTotal, &[("bad", &minutes(true).to_string()), ("all", &minutes(false).to_string())]);
        let rects = s.log.iter().zip(&all).map(|(x, k)| {
            let (_, class, shape) = risk(*k);
            let (at, wide) = (f64::from(x.from_min) / whole * 600.0, f64::from(x.minutes) / whole * 600.0);
            view! { <rect class=class x=at y="4" width=wide height="40" />
                {(wide > 16.0).then(|| view! { <text x=at + wide / 2.0 y="62" text-anchor="middle">{shape}</text> })} }
        }).collect_view();
        let rows = s.log.iter().zip(&all).map(|(x, k)| {
            let (w, _, shape) = risk(*k);
            let told = r.f(W::RiskRow, &[("n", &(x.job + 1).to_string()), ("from", &clock(r, x.from_min)), ("minutes", &x.minutes.to_string()), ("risk", r.t(w))]);
            let why = causes(r, x);
            let set_up = x.set_up.clone();
            view! { <li><span><b aria-hidden="true">{shape}" "</b>{told}{(!why.is_empty()).then(|| format!(" ({why})"))}</span>
                <button type="button" aria-label=r.t(W::SeeFall) on:click=move |_| to_bench(&set_up)>"→"</button></li> }
        }).collect_view();
        Some(view! {
            <h3>{r.t(W::RiskHeading)}</h3>
            <p class="sentence">{total.clone()}</p>
            <svg class="shiftline" viewBox="0 0 600 68" role="img" aria-label=total>
                <defs>
                    <pattern id="d-over" width="8" height="8" patternUnits="userSpaceOnUse"><rect class="back over" width="8" height="8" /><circle cx="4" cy="4" r="1.6" /></pattern>
                    <pattern id="d-strikes" width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect class="back strikes" width="8" height="8" /><path d="M0 0V8" /></pattern>
                    <pattern id="d-go" width="8" height="8" patternUnits="userSpaceOnUse"><rect class="back strikes" width="8" height="8" /><path d="M0 0L8 8M8 0L0 8" /></pattern>
                </defs>
                <path class="axis" d="M0 44H600" />{rects}</svg>
            <ul class="shift-rows">{rows}</ul>
        }.into_any())
    };
    view! {
        {head}{played}{swing}{line}
        <div class="row buttons">
            <button type="button" class="main" id="day-same" on:click=move |_| again()>{settings.s(W::DaySame)}</button>
            <button type="button" on:click=move |_| other()>{settings.s(W::DayAgain)}</button>
        </div>
    }
}
