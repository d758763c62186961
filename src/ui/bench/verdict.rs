//! Why a fall went as it did: the whole sentence, everything found, and what one change would do.

use super::state::bench;
use crate::grade::report::APP_VERSION;
use crate::grade::scoring::Grade;
use crate::physics::PHYSICS_VERSION;
use crate::practice::inspection::GearPart;
use crate::rules::{RULES_VERSION, Severity};
use crate::texts::{Key, Stage as S, say};
use crate::ui::shared::settings::settings;
use crate::ui::shared::signs::mark;
use crate::ui::shared::view::{self, View};
use leptos::prelude::*;

/// The whole sentence of a fall with its limit's source, the score, and what its neighbours say.
#[component]
pub fn Told() -> impl IntoView {
    let bench = bench();
    let settings = settings();
    let body = move || {
        let run = bench.run.get()?;
        let r = settings.reader();
        let Grade::Graded { score, passes, .. } = run.grade else {
            let text = r.f(Key::NotGraded, &[("value", &r.percent(run.trace.energy_residual))]);
            return Some(view! { <p>{text}</p> }.into_any());
        };
        let (sentence, limit) = say::verdict(r, &run);
        Some(
            view! {
                <p id="told">{sentence}</p>
                {limit.map(|l| view! { <p class="source">{r.source(l)}</p> })}
                {say::neighbours(r, &run.trace).map(|t| view! { <p class="hint" id="neighbours">{t}</p> })}
                <p class="score"><strong>{r.f(Key::ScoreLine, &[("score", &score.to_string())])}</strong>" "
                    {r.t(if passes { Key::Passes } else { Key::DoesNotPass })}</p>
            }
            .into_any(),
        )
    };
    view! { <section class="told-whole">{body}</section> }
}

/// Everything found, most severe first, each with what to change.
#[component]
pub fn Findings() -> impl IntoView {
    let (bench, settings) = (bench(), settings());
    let items = move || {
        let run = bench.run.get()?;
        let r = settings.reader();
        if !run.trace.is_sound() {
            return None;
        }
        let points = match &run.grade {
            Grade::Graded { deductions, .. } => deductions.clone(),
            Grade::NotGraded { .. } => vec![],
        };
        Some(
            run.findings
                .iter()
                .map(|f| {
                    let off = points.iter().find(|d| d.code == f.code).map(|d| format!("−{}", d.points));
                    let change = (f.severity <= Severity::Minor).then(|| say::change_in(r, &run, f));
                    let source = f.limit.map(|l| r.source(l)).or_else(|| f.duty.map(|d| r.duty(d)));
                    let why = say::why(r, &run, f);
                    let margin = say::margin(r, f);
                    let looked = GearPart::of_finding(f.code).map(|part| {
                        let passed = bench.looked.with(|l| l.contains(&(part, true)));
                        r.t(if passed { Key::GearYouPassed } else { Key::GearNotLooked })
                    });
                    view! {
                        <li>
                            <p class="head">{mark(f.severity)}
                                <strong>{r.t(f.code.title())}</strong>
                                <span class="sev">{r.t(f.severity.label())}</span>
                                {off.map(|o| view! { <span class="off">{o}</span> })}</p>
                            <p>{say::finding(r, f)}
                                {f.assumed.then(|| view! { <em>" ("{r.t(Key::Assumed)}")"</em> })}</p>
                            {margin.map(|m| view! { <p class="margin">{m}</p> })}
                            {looked.map(|l| view! { <p>{l}</p> })}
                            {why.map(|w| view! { <p class="why"><span>{r.t(Key::WhyLabel)}</span>" "{w}</p> })}
                            {change.map(|c| view! { <p class="change"><span>{r.t(Key::WhatToChange)}</span>" "{c}</p> })}
                            {source.map(|s| view! { <p class="source">{s}</p> })}
                        </li>
                    }
                })
                .collect_view(),
        )
    };
    let versions = move || {
        let run = bench.run.get()?;
        let r = settings.reader();
        Some(r.f(
            Key::VersionLine,
            &[
                ("app", APP_VERSION),
                ("physics", &PHYSICS_VERSION.to_string()),
                ("rules", &RULES_VERSION.to_string()),
                ("residual", &r.percent(run.trace.energy_residual)),
            ],
        ))
    };
    view! {
        <section class="findings" aria-labelledby="findings-h">
            <h2 id="findings-h">{settings.s(Key::FindingsHeading)}</h2>
            <p class="hint">{settings.s(Key::ChangeOne)}</p>
            <ol>{items}</ol>
            <p class="fine">{settings.s(Key::ModelNote)}" "{versions}</p>
            <button type="button" class="plain" id="to-handout" on:click=|_| view::go(View::Handout)>{settings.s(S::Handout)}</button>
        </section>
    }
}

/// What one change would do to the score, from whole runs of the engine.
#[component]
pub fn Changes() -> impl IntoView {
    let (bench, settings) = (bench(), settings());
    let body = move || {
        let r = settings.reader();
        let run = bench.run.get()?;
        let Grade::Graded { score: before, .. } = run.grade else { return None };
        let Some(effects) = bench.effects.get() else {
            return Some(view! { <p class="hint">{r.t(Key::ChangesWaiting)}</p> }.into_any());
        };
        let Ok(effects) = effects else {
            return Some(view! { <p>{r.t(Key::EngineMissing)}</p> }.into_any());
        };
        if effects.is_empty() {
            let none = if matches!(run.grade, Grade::Graded { passes: true, .. }) {
                r.t(Key::ChangesNone)
            } else {
                r.t(S::NothingHelps)
            };
            return Some(view! { <p>{none}</p> }.into_any());
        }
        let rows = effects
            .into_iter()
            .enumerate()
            .map(|(i, e)| {
                let line = r.f(
                    Key::ChangesLine,
                    &[
                        ("change", r.t(e.change.label())),
                        ("before", &before.to_string()),
                        ("after", &e.score.to_string()),
                    ],
                );
                let shape = mark(if e.passes { Severity::Good } else { Severity::Critical });
                let label = format!("{}: {}", r.t(Key::ChangesMake), r.t(e.change.label()));
                view! {
                    <li>
                        {(i == 0).then(|| view! { <p class="sev">{r.t(Key::ChangesBest)}</p> })}
                        <p class="head">{shape}{line}" "
                            {r.t(if e.passes { Key::ChangesPass } else { Key::ChangesFail })}</p>
                        <button type="button" aria-label=label on:click=move |_| bench.edit(|s| e.change.apply(s))>
                            {r.t(Key::ChangesMake)}</button>
                    </li>
                }
            })
            .collect_view();
        Some(view! { <ol>{rows}</ol> }.into_any())
    };
    view! {
        <section class="findings changes" aria-labelledby="changes-h">
            <h2 id="changes-h">{settings.s(Key::ChangesHeading)}</h2>
            <p class="hint">{settings.s(Key::ChangesHint)}</p>
            {body}
        </section>
    }
}
