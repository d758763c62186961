//! How a working day ends: its minutes as the picture's hero, each with what a slip in it would have come to.

use super::pair::{Clock, Panel, SwingPane, frame, swing_s};
use super::today::{Today, clock};
use super::visit;
use crate::grade::report::Report;
use crate::physics::trace::{Outcome, Trace};
use crate::practice::day::{JOBS, Risk, Shift, Stretch};
use crate::practice::houses::HouseKind;
use crate::rules::Severity;
use crate::scenario::{Bolt, Latch, Weather};
use crate::studies::along_wall::Swing;
use crate::texts::Room as W;
use crate::texts::say::{self, Reader};
use crate::ui::shared::asking;
use crate::ui::shared::figure::decisive_s;
use crate::ui::shared::house_picture::picture;
use crate::ui::shared::settings::settings;
use crate::ui::shared::signs::mark;
use crate::ui::shared::store;
use crate::ui::shared::view;
use crate::units::{Quantity, Rounding};
use crate::worker::questions::{Fall, Swings};
use leptos::prelude::*;
use std::sync::Arc;

/// Along the wall by more than this the fall is seen from in front, m.
const ASIDE_M: f64 = 0.2;

/// Its words, its class and how high its block stands, of 100.
fn risk(x: Risk) -> (W, &'static str, f64) {
    match x {
        Risk::Held => (W::RiskHeld, "held", 34.0),
        Risk::Over => (W::RiskOver, "over", 58.0),
        Risk::Strikes => (W::RiskStrikes, "strikes", 84.0),
        Risk::LetsGo => (W::RiskLetsGo, "lets-go", 100.0),
        Risk::NotGraded => (W::RiskNotGraded, "none", 34.0),
    }
}

/// What stood out in a stretch.
fn causes(r: Reader, x: &Stretch) -> Vec<String> {
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
    if x.offset_m > ASIDE_M {
        all.push(r.f(W::CauseSide, &[("value", &len(x.offset_m))]));
    }
    if s.ladder.reach_out_m > 0.05 {
        all.push(r.f(W::CauseLean, &[("value", &len(s.ladder.reach_out_m))]));
    }
    if s.weather == Weather::Wet {
        all.push(r.t(W::CauseWet).to_owned());
    }
    all
}

/// A stretch's fall: in the section, or along the wall from in front.
#[derive(Clone)]
enum Seen {
    Section(Arc<Trace>),
    Front(Arc<Swing>),
}

/// The worst of what would have come, and when: shown first. A slip that came is shown before all.
fn first_shown(s: &Shift, risks: &[Risk]) -> usize {
    if s.slipped {
        return s.log.len().saturating_sub(1);
    }
    let worst = |i: &usize| {
        (risks.get(*i).copied().filter(|r| *r != Risk::NotGraded).unwrap_or(Risk::Held), s.log.len() - i)
    };
    (0..s.log.len()).max_by_key(worst).unwrap_or(0)
}

/// The end of the day.
#[component]
pub fn End(today: Today, start: Callback<()>) -> impl IntoView {
    let settings = settings();
    let at = RwSignal::new(0_usize);
    let seen = RwSignal::new(None::<(usize, Seen)>);
    let clock_now = Clock::new();
    // What the fall of the minute that is looked at would have been told by.
    let why = RwSignal::new(None::<(usize, String)>);
    Effect::new(move |_| {
        if let (Some(s), Some(all)) = (today.shift.get(), today.risks.get()) {
            at.set(first_shown(&s, &all));
            view::to_view("day-end");
        }
    });
    // The fall of the minute that is looked at.
    Effect::new(move |_| {
        let i = at.get();
        if today.risks.with(Option::is_none) {
            return;
        }
        let Some(x) = today.shift.with(|s| s.as_ref().and_then(|s| s.log.get(i).cloned())) else { return };
        let Ok(set_up) = x.set_up.set_up() else { return };
        let still_here = move || at.try_get_untracked() == Some(i);
        // What lets go, or lands, does so in the section; what holds beside the anchor swings.
        asking::ask(Fall(set_up.clone()), move |answer| {
            let Some(t) = answer.ok().filter(|t| t.is_sound() && still_here()) else { return };
            let told = Report::of(set_up.clone(), t.clone());
            why.set(told.map(|rep| (i, say::headline(settings.reader_now(), &rep).sentence)));
            if x.offset_m <= ASIDE_M || t.outcome != Outcome::Stopped {
                clock_now.stop();
                clock_now.end_s.set(decisive_s(&t) + 0.25);
                clock_now.now_s.set(decisive_s(&t));
                let _ = seen.try_set(Some((i, Seen::Section(Arc::new(t)))));
                return;
            }
            asking::ask(Swings(set_up), move |answer| {
                let far = |w: &Swing| (w.offset_m - x.offset_m).abs();
                let near = answer.unwrap_or_default().into_iter().min_by(|a, b| far(a).total_cmp(&far(b)));
                if let Some(w) = near.filter(|_| still_here()) {
                    clock_now.stop();
                    clock_now.end_s.set(swing_s(&w));
                    clock_now.now_s.set(w.free.lands_s().unwrap_or_else(|| w.free.lowest_s()));
                    let _ = seen.try_set(Some((i, Seen::Front(Arc::new(w)))));
                }
            });
        });
    });
    let picture = move || {
        let (i, what) = seen.get()?;
        let x = today.shift.with_untracked(|s| s.as_ref().and_then(|s| s.log.get(i).cloned()))?;
        match what {
            Seen::Section(t) => {
                let f = frame(&[x.set_up.clone(), x.set_up.clone()])?;
                let fall = Signal::derive(move || Some(t.clone()));
                let none = Signal::derive(|| None::<f64>);
                let shut = Signal::derive(|| false);
                Some(view! { <Panel sides=vec![] set_up=x.set_up frame=f clock=clock_now fall=fall other_low=none open=shut /> }.into_any())
            }
            Seen::Front(w) => {
                // The offset is the work's own: the lean is in it.
                let mut upright = x.set_up.clone();
                upright.ladder.reach_out_m = 0.0;
                let r = settings.reader();
                let words =
                    r.f(W::CauseSide, &[("value", &r.q(Quantity::Length, x.offset_m, Rounding::Nearest))]);
                Some(view! { <SwingPane set_up=upright along_m=x.offset_m swing=w clock=clock_now label=words /> }.into_any())
            }
        }
    };
    let can_play = move || seen.with(Option::is_some);
    let play_words = move || {
        let r = settings.reader();
        let from = today
            .shift
            .with(|s| s.as_ref().and_then(|s| s.log.get(at.get()).map(|x| x.from_min)))
            .unwrap_or(0);
        r.f(W::DayPlay, &[("time", &clock(r, from))])
    };
    let to_bench = move |_| {
        if let Some(x) =
            today.shift.with_untracked(|s| s.as_ref().and_then(|s| s.log.get(at.get_untracked()).cloned()))
        {
            store::note_aside(x.offset_m);
            view::to_bench(&x.set_up);
        }
    };
    view! {
        <div class="pair-panes one day-still">{picture}</div>
        <section class="strip day-strip end">
            <Head today=today />
            <Hero today=today at=at />
            <Picked today=today at=at why=why />
            <div class="next">
                <Show when=can_play><button type="button" id="day-play" on:click=move |_| if clock_now.runs.get_untracked() { clock_now.stop() } else { clock_now.play() }>{play_words}</button></Show>
                <Show when=move || today.shift.with(|s| s.as_ref().is_some_and(|s| !s.log.is_empty()))><button type="button" id="day-see" on:click=to_bench>{settings.s(W::SeeFall)}</button></Show>
                <button type="button" id="day-same" on:click=move |_| { today.same(); start.run(()); view::to_view("day-job") }>{settings.s(W::DaySame)}</button>
                <button type="button" class="main" id="day-new" on:click=move |_| { today.seed.set(super::desk::fresh_seed() % 1000); start.run(()) }>{settings.s(W::DayAgain)}</button>
            </div>
            <Other today=today start=start />
        </section>
    }
}

/// What kind of day it was.
#[component]
fn Head(today: Today) -> impl IntoView {
    let settings = settings();
    move || {
        let s = today.shift.get()?;
        let r = settings.reader();
        let n = s.done.to_string();
        let line = if s.slipped {
            let came = today.risks.with(|all| all.as_ref().and_then(|all| all.last().copied()));
            let came = came.map_or(String::new(), |k| format!(" {}.", say::upper_first(r.t(risk(k).0))));
            format!("{}{came}", r.f(W::DaySlip, &[("time", &clock(r, s.minute))]))
        } else if s.done == JOBS {
            r.t(W::DayOver).to_owned()
        } else if s.minute >= s.home_min {
            r.f(W::DayTimeOver, &[("n", &n), ("all", &JOBS.to_string())])
        } else {
            r.f(W::DayCame, &[("n", &n)])
        };
        let Some(all) = today.risks.get() else {
            return Some(view! { <p class="sentence" id="day-end" tabindex="-1">{line}</p><p role="status">{r.t(W::RiskWaiting)}</p> }.into_any());
        };
        let minutes = |bad: bool| {
            s.log.iter().zip(&all).filter(|(_, k)| !bad || k.is_bad()).map(|(x, _)| x.minutes).sum::<u32>()
        };
        let total =
            r.f(W::DayBad, &[("bad", &minutes(true).to_string()), ("all", &minutes(false).to_string())]);
        // Nothing was worked: nothing could have ended badly.
        if minutes(false) == 0 {
            return Some(view! { <p class="sentence" id="day-end" tabindex="-1">{line}</p> }.into_any());
        }
        let windy = s.windy_min();
        let wind = (windy > 0).then(|| r.f(W::DayWindy, &[("minutes", &windy.to_string())]));
        let ended_badly = s.slipped && all.last().is_some_and(|k| k.is_bad());
        let severity = match (ended_badly, minutes(true) == 0 && windy == 0) {
            (true, _) => Severity::Critical,
            (_, true) => Severity::Good,
            _ => Severity::Major,
        };
        Some(view! {
            <div class="head">{mark(severity)}<div class="told-lines"><p class="sentence" id="day-end" tabindex="-1">{total}</p>
                <p class="figure-line">{line}" "{wind}</p></div></div>
        }.into_any())
    }
}

/// The minutes: one block for a stretch, as high as it would have been bad, with its cause over it.
#[component]
fn Hero(today: Today, at: RwSignal<usize>) -> impl IntoView {
    let settings = settings();
    let step = move |by: i32| {
        let n = today.shift.with_untracked(|s| s.as_ref().map_or(0, |s| s.log.len())) as i32;
        at.update(|i| *i = (*i as i32 + by).clamp(0, (n - 1).max(0)) as usize);
    };
    // By key the focus goes along.
    let follow = move || view::focus_on(format!("risk-{}", at.get_untracked()), "day-end");
    let blocks = move || {
        let (s, all) = (today.shift.get()?, today.risks.get()?);
        let r = settings.reader();
        let whole = f64::from(s.minute.max(1));
        Some(
            s.log
                .iter()
                .zip(&all)
                .enumerate()
                .map(|(i, (x, k))| {
                    let (word, class, high) = risk(*k);
                    let label = r.f(
                        W::RiskRow,
                        &[
                            ("n", &(x.job + 1).to_string()),
                            ("from", &clock(r, x.from_min)),
                            ("minutes", &x.minutes.to_string()),
                            ("risk", r.t(word)),
                        ],
                    );
                    let style = format!(
                        "left:{:.2}%;width:{:.2}%;height:{high}%",
                        100.0 * f64::from(x.from_min) / whole,
                        100.0 * f64::from(x.minutes) / whole
                    );
                    let wide = f64::from(x.minutes) / whole > 0.06;
                    let on = move || (at.get() == i).to_string();
                    view! { <button type="button" class=format!("risk {class}") id=format!("risk-{i}") aria-label=label aria-pressed=on tabindex=move || if at.get() == i { "0" } else { "-1" } prop:style=style on:click=move |_| at.set(i)>{wide.then(|| view! { <span aria-hidden="true">{x.job + 1}</span> })}</button> }
                })
                .collect_view(),
        )
    };
    let ends = move || {
        let s = today.shift.get()?;
        let r = settings.reader();
        Some(view! { <p class="ends"><span>{clock(r, 0)}</span><span>{clock(r, s.minute)}</span></p> })
    };
    view! {
        <div class="hero-row">
            <button type="button" class="step" aria-label=settings.s(W::DayEarlier) on:click=move |_| step(-1)>"‹"</button>
            <div class="hero-box"><div class="hero shiftline" role="group" on:keydown=move |ev| match ev.key().as_str() {
                "ArrowLeft" => { ev.prevent_default(); step(-1); follow() }
                "ArrowRight" => { ev.prevent_default(); step(1); follow() }
                _ => {}
            }>{blocks}</div>{ends}</div>
            <button type="button" class="step" aria-label=settings.s(W::DayLater) on:click=move |_| step(1)>"›"</button>
        </div>
    }
}

/// The stretch that is looked at, in words.
#[component]
fn Picked(today: Today, at: RwSignal<usize>, why: RwSignal<Option<(usize, String)>>) -> impl IntoView {
    let settings = settings();
    move || {
        let (s, all) = (today.shift.get()?, today.risks.get()?);
        let (x, k) = (s.log.get(at.get())?.clone(), *all.get(at.get())?);
        let r = settings.reader();
        let told = r.f(
            W::RiskRow,
            &[
                ("n", &(x.job + 1).to_string()),
                ("from", &clock(r, x.from_min)),
                ("minutes", &x.minutes.to_string()),
                ("risk", r.t(risk(k).0)),
            ],
        );
        let seen = causes(r, &x).join(", ");
        let seen = if seen.is_empty() { String::new() } else { format!(" ({seen})") };
        // Which rule it was, where it was a rule.
        let rule = why.get().filter(|w| w.0 == at.get() && k != Risk::Held).map(|w| format!(" {}", w.1));
        // The set-up page begins under the anchor: how far beside it waits there in its own picture.
        let aside = (x.offset_m > ASIDE_M).then(|| format!(" {}", r.t(W::SeeAside)));
        Some(view! { <p class="picked" role="status">{told}{seen}"."{rule}{aside}</p> })
    }
}

/// Another house, or a day by its number.
#[component]
fn Other(today: Today, start: Callback<()>) -> impl IntoView {
    let (settings, _) = (settings(), visit());
    let houses = HouseKind::ALL
        .map(|k| {
            view! { <label><input type="radio" name="day-house" prop:checked=move || today.house.get() == k on:change=move |_| today.house.set(k) />
            {picture(k)}<span>{settings.s(k.label())}</span></label> }
        })
        .into_iter()
        .collect_view();
    view! {
        <details class="guide"><summary>{settings.s(W::DayOther)}</summary>
            <fieldset class="houses"><div class="row">{houses}</div></fieldset>
            <div class="row"><label class="line"><span>{settings.s(W::DaySeed)}</span><input id="day-seed" type="text" inputmode="numeric" prop:value=move || today.seed.get().to_string()
                on:change=move |ev| { if let Ok(n) = event_target_value(&ev).trim().parse::<u64>() { today.seed.set(n % 1_000_000) } } /></label>
            <button type="button" id="day-start" on:click=move |_| start.run(())>{settings.s(W::DayStart)}</button></div></details>
    }
}
