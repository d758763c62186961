//! After the stop: the worker hangs, the clock runs, somebody has to do something.

use super::visit;
use crate::physics::trace::Trace;
use crate::practice::rescue::{
    CONTACT_MIN, Drill, HALF_MIN, Hanging, Hindered, SERIOUS_MIN, Step, TWO_PULL_N, hanging, minutes,
};
use crate::scenario::{RescuePlan, Scenario};
use crate::texts::Key;
use crate::texts::Room as W;
use crate::texts::say::Reader;
use crate::ui::shared::asking;
use crate::ui::shared::figure::Falls;
use crate::ui::shared::settings::settings;
use crate::ui::shared::view::{self, View};
use crate::units::{Quantity, Rounding};
use crate::worker::questions::Fall;
use leptos::prelude::*;
use std::sync::Arc;

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
                let _ = case.try_set(Some(Case { set_up, trace, hangs, ordinary: next.is_none() }));
            }
            (None, Some(next)) => find_case(next, None, case, missing),
            (None, None) => {
                let _ = missing.try_set(true);
            }
        }
    });
}

/// The place's own limit on the time to a rescue.
fn own_limit(case: RwSignal<Option<Case>>) -> Option<&'static crate::rules::Limit> {
    let id = case.with(|c| c.as_ref().map(|c| c.set_up.place.clone()))?;
    crate::rules::place(&id)?.limit(crate::rules::LimitKind::RescueMinutes)
}

/// Minutes since the stop, with the guidance marked.
#[component]
fn Clock(case: RwSignal<Option<Case>>, drill: RwSignal<Drill>) -> impl IntoView {
    let settings = settings();
    move || {
        let r = settings.reader();
        let minute = drill.with(|d| d.minute);
        // 0 to 36 minutes, the two marks of the guidance on it.
        let x = |m: u32| f64::from(m.min(36)) / 36.0 * 300.0;
        view! {
            <p class="sentence">{r.f(W::RescueClock, &[("minute", &minute.to_string())])}</p>
            <svg class="bar clock" viewBox="0 0 300 34" aria-hidden="true">
                <rect class="whole" x="1" y="1" width="298" height="20" />
                <rect class="part" x="1" y="1" width=x(minute).max(2.0) - 2.0 height="20" />
                <path class="tick" d=format!("M{0} 0V24M{1} 0V24", x(CONTACT_MIN), x(SERIOUS_MIN[0])) />
                <text x=x(CONTACT_MIN) y="34" text-anchor="middle">{CONTACT_MIN}</text><text x=x(SERIOUS_MIN[0]) y="34" text-anchor="middle">{SERIOUS_MIN[0]}</text>
            </svg>
            <p class="hint">{r.f(W::RescueGuide, &[("contact", &CONTACT_MIN.to_string()), ("plan", &SERIOUS_MIN[0].to_string()),
                ("most", &SERIOUS_MIN[1].to_string()), ("half", &HALF_MIN.to_string())])}</p>
            {own_limit(case).map(|l| view! { <p class="hint">{r.f(W::RescueOwn, &[("limit", &r.limit(l))])}" "<span class="source">{r.source(l)}</span></p> })}
        }
    }
}

/// What it came to, once the worker is down.
#[component]
fn Down(
    case: RwSignal<Option<Case>>,
    drill: RwSignal<Drill>,
    told: RwSignal<Option<(Step, Option<Hindered>)>>,
) -> impl IntoView {
    let settings = settings();
    move || {
        let d = drill.get();
        d.down_min.map(|down| {
            let r = settings.reader();
            let reached = d.reached_min.unwrap_or(down);
            let contact = CONTACT_MIN.to_string();
            let line = if reached <= CONTACT_MIN { W::RescueInTime } else { W::RescueLate };
            let own = own_limit(case).map(|l| {
                let key = if l.comparison.holds(f64::from(down), l.value) { W::RescueOwnMet } else { W::RescueOwnNot };
                r.f(key, &[("limit", &r.limit(l)), ("down", &down.to_string())])
            });
            view! {
                <section class="card" id="rescue-end" role="status">
                    <p class="sentence"><span class=if reached <= CONTACT_MIN { "mark ok" } else { "mark caution" } aria-hidden="true">
                        {if reached <= CONTACT_MIN { "✓" } else { "△" }}</span>
                        {r.f(W::RescueDown, &[("down", &down.to_string()), ("reached", &reached.to_string())])}</p>
                    <p>{r.f(line, &[("contact", &contact)])}</p>
                    {own.map(|t| view! { <p>{t}</p> })}
                    <p>{match d.straps_min {
                        Some(m) => r.f(W::StrapsFrom, &[("minute", &m.to_string())]),
                        None => r.t(W::StrapsNone).to_owned(),
                    }}</p>
                    {d.called_min.is_none().then(|| view! { <p>{r.t(W::RescueNoCall)}</p> })}
                    <p>{r.t(W::RescueAfter)}</p>
                    <button type="button" class="main" on:click=move |_| { drill.set(Drill::default()); told.set(None) }>{r.t(W::RescueAgain)}</button>
                </section>
            }
        })
    }
}

#[component]
pub fn Rescue() -> impl IntoView {
    let (visit, settings) = (visit(), settings());
    let case = RwSignal::new(None::<Case>);
    let missing = RwSignal::new(false);
    let drill = RwSignal::new(Drill::default());
    let told = RwSignal::new(None::<(Step, Option<Hindered>)>);
    let now = visit.set_up.get_untracked();
    let ordinary = Scenario { place: now.place.clone(), plan: now.plan.clone(), ..Scenario::default() };
    find_case(now, Some(ordinary), case, missing);
    let plan = move || case.with(|c| c.as_ref().map_or(RescuePlan::NoPlan, |c| c.set_up.plan.rescue));
    let take = move |step: Step| {
        let Some(c) = case.get_untracked() else { return };
        let mut d = drill.get_untracked();
        let h = d.take(step, &c.hangs, c.set_up.plan.rescue);
        drill.set(d.clone());
        told.set(Some((step, h)));
        let r = settings.reader_now();
        let done = r.f(W::StepDone, &[("minute", &d.minute.to_string())]);
        visit.said.set(h.map_or(done, |h| why(r, h)));
    };
    let scene = move || {
        case.get().map(|c| {
            let r = settings.reader();
            let len = |m: f64| r.q(Quantity::Length, m, Rounding::Nearest);
            let where_at =
                r.f(W::RescueWhere, &[("height", &len(c.hangs.dring_m)), ("grasp", &len(c.hangs.grasp_m))]);
            let plan = r.f(W::RescuePlanIs, &[("plan", r.t(c.set_up.plan.rescue.label()))]);
            view! {
                {c.ordinary.then(|| view! { <p class="hint">{r.t(W::RescueOrdinary)}</p> })}
                <Falls first=(c.set_up.clone(), c.trace.clone()) at_end=true />
                <p>{where_at}</p><p>{plan}</p>
            }
        })
    };
    let choices = move || {
        let p = plan();
        Step::ALL
            .map(|step| {
                let took = move || drill.with(|d| d.taken.iter().any(|t| t.0 == step));
                view! {
                    <button type="button" class="step-of" on:click=move |_| take(step)>
                        <b aria-hidden="true">{move || if took() { "•" } else { "→" }}</b>
                        <span>{settings.s(step.label())}</span>
                        <span class="sev">{move || (step != Step::Wait).then(|| settings.reader().f(W::RescueCost, &[("minutes", &minutes(step, p).to_string())]))}</span>
                    </button>
                }
            })
            .into_iter()
            .collect_view()
    };
    let last = move || {
        told.get().map(|(step, h)| {
            let r = settings.reader();
            let minute = drill.with(|d| d.minute.to_string());
            let line = h.map_or_else(|| r.f(W::StepDone, &[("minute", &minute)]), |h| why(r, h));
            view! { <p class="told"><strong>{r.t(step.label())}</strong>" · "{line}</p> }
        })
    };
    view! {
        <main class="page rescue"><section>
            <button type="button" class="plain" on:click=move |_| view::go(View::Lessons)>"← "{settings.s(W::BackToList)}</button>
            <h2>{settings.s(W::RescueName)}</h2>
            <p class="lead">{settings.s(W::RescueLead)}</p>
            <p class="problems caution">{settings.s(W::RescueCaution)}</p>
            <Show when=move || missing.get()><p class="problems" role="alert">{settings.s(Key::EngineMissing)}</p></Show>
            {scene}
            <Clock case=case drill=drill />
            {last}
            <Show when=move || case.with(Option::is_some) && drill.with(|d| d.down_min.is_none())>
                <h3>{settings.s(W::RescueAsk)}</h3><div class="step-list">{choices}</div></Show>
            <Down case=case drill=drill told=told />
        </section></main>
    }
}
