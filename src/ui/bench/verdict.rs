//! Predict before, compare after: the prediction form, the verdict and the findings.

use super::player::player;
use super::state::{Phase, Said, bench};
use crate::grade::report::APP_VERSION;
use crate::grade::scoring::Grade;
use crate::physics::PHYSICS_VERSION;
use crate::physics::trace::Outcome;
use crate::practice::inspection::GearPart;
use crate::rules::{Advice, FindingCode, RULES_VERSION, Severity, advice};
use crate::texts::Bench as W;
use crate::texts::{Key, Text, say};
use crate::ui::shared::settings::settings;
use leptos::prelude::*;

const ANSWERS: [(Said, &str); 5] = [
    (Said::Ends(Outcome::Stopped), "◯"),
    (Said::Ends(Outcome::Strikes), "▽"),
    (Said::Ends(Outcome::LetGo), "╳"),
    (Said::Instead(Advice::OtherMethod), "⇄"),
    (Said::Instead(Advice::StopAndAsk), "?"),
];

fn said_words(said: Said) -> Text {
    match said {
        Said::Ends(o) => o.label(),
        Said::Instead(Advice::OtherMethod) => Text::of(Key::SayOtherMethod),
        Said::Instead(Advice::StopAndAsk) => Text::of(Key::SayStopAndAsk),
    }
}

/// The question before every fall.
#[component]
pub fn Predict() -> impl IntoView {
    let (bench, settings, player) = (bench(), settings(), player());
    let problems = move || bench.problems.get();
    let answers = move || {
        ANSWERS
        .into_iter()
        .map(|(o, icon)| {
            view! {
                <label class="pill answer">
                    <input type="radio" name="prediction" prop:checked=move || bench.prediction.get() == Some(o)
                        on:change=move |_| bench.prediction.set(Some(o)) />
                    <span><b aria-hidden="true">{icon}</b>" "{settings.s(said_words(o))}</span>
                </label>
            }
        })
        .collect_view()
    };
    view! {
        <section class="predict">
            <Show when=move || problems().is_empty() fallback=move || view! {
                <div class="problems" role="alert">
                    <p><b aria-hidden="true">"△ "</b>{settings.s(Key::ProblemsHeading)}</p>
                    <ul>{move || problems().iter().map(|p| view! {
                        <li>{say::problem(settings.reader(), p)}</li>
                    }).collect_view()}</ul>
                </div>
            }>
                <form on:submit=move |ev| { ev.prevent_default(); player.lock_and_play() }>
                    <fieldset>
                        <legend><h2>{settings.s(Key::PredictHeading)}</h2></legend>
                        <p class="hint">{settings.s(Key::PredictHint)}</p>
                        <div class="pills">{answers()}</div>
                    </fieldset>
                    <button type="submit" class="main play" id="play"
                        aria-disabled=move || bench.prediction.get().is_none().to_string()>
                        <b aria-hidden="true">"▶ "</b>
                        {move || settings.t(if bench.prediction.get().is_some() { Key::LockAndPlay } else { Key::PredictFirst })}
                    </button>
                </form>
            </Show>
        </section>
    }
}

/// What is locked while the fall is computed and shown.
#[component]
pub fn LockedLine() -> impl IntoView {
    let (bench, settings) = (bench(), settings());
    view! {
        <p class="locked">{move || {
            let r = settings.reader();
            bench.prediction.get().map(|o| r.f(Key::Locked, &[("answer", r.t(said_words(o)))]))
        }}
        <Show when=move || bench.phase.get() == Phase::Computing>
            " "{settings.s(Key::Computing)}
        </Show></p>
    }
}

/// The shape that goes with a severity: colour, shape and word, never colour alone.
fn mark(s: Severity) -> (&'static str, &'static str) {
    match s {
        Severity::Critical => ("mark fail", "✕"),
        Severity::Major => ("mark caution", "▲"),
        Severity::Minor => ("mark caution", "△"),
        Severity::Note => ("mark note", "•"),
        Severity::Good => ("mark ok", "✓"),
    }
}

/// One sentence, one number, one limit, its source; and the prediction beside it.
#[component]
pub fn Verdict() -> impl IntoView {
    let (bench, settings) = (bench(), settings());
    let body = move || {
        let run = bench.run.get()?;
        let r = settings.reader();
        let Grade::Graded { score, passes, .. } = run.grade else {
            return Some(
                view! {
                    <p class="sentence"><span class="mark note" aria-hidden="true">"?"</span>
                        {r.f(Key::NotGraded, &[("value", &r.percent(run.trace.energy_residual))])}</p>
                }
                .into_any(),
            );
        };
        let (sentence, limit) = say::verdict(r, &run);
        let worst = if !passes {
            Severity::Critical
        } else {
            run.findings.first().map_or(Severity::Good, |f| f.severity)
        };
        let (class, shape) = mark(worst);
        // The sentence tells the force; where the mark has another reason, it is named.
        let told = [
            FindingCode::PeakForce,
            FindingCode::FreeFall,
            FindingCode::StrikesGround,
            FindingCode::StrikesObstacle,
            FindingCode::AnchorGaveWay,
        ];
        let for_what = run
            .findings
            .first()
            .filter(|f| f.severity <= Severity::Note && !told.contains(&f.code))
            .map(|f| r.f(W::MarkFor, &[("title", &say::lower_first(r.t(f.code.title())))]));
        let said = bench.prediction.get();
        let ends = match said {
            Some(Said::Ends(o)) => Some(o),
            _ => None,
        };
        let instead = match said {
            Some(Said::Instead(a)) => Some(a),
            _ => None,
        };
        let instead = instead.map(|a| {
            let reasons: Vec<&'static str> = run
                .findings
                .iter()
                .filter(|f| advice(f) == Some(a))
                .map(|f| r.t(f.code.title()))
                .collect();
            view! {
                <div class="instead">
                    <p class="compare">{r.f(Key::AdviceHeading, &[("said", r.t(said_words(Said::Instead(a))))])}" "
                        <strong>{r.t(if reasons.is_empty() { Key::AdviceNotCalled } else { Key::AdviceCalled })}</strong></p>
                    <ul>{reasons.into_iter().map(|t| view! { <li>{t}</li> }).collect_view()}</ul>
                    <p>{r.t(Key::AdviceFall)}</p>
                </div>
            }
        });
        let compare = ends.map(|o| {
            let real = run.trace.outcome;
            let right = if o == real { Key::PredictedRight } else { Key::PredictedWrong };
            view! {
                <p class="compare">{r.f(Key::YouPredicted, &[("said", say::outcome(r, o)), ("real", say::outcome(r, real))])}
                    " "<strong>{r.t(right)}</strong></p>
            }
        });
        Some(
            view! {
                {instead}
                <p class="sentence" id="verdict" tabindex="-1"><span class=class aria-hidden="true">{shape}</span>{sentence}</p>
                {limit.map(|l| view! { <p class="source">{r.source(l)}</p> })}
                {say::neighbours(r, &run.trace).map(|t| view! { <p class="hint" id="neighbours">{t}</p> })}
                {for_what.map(|t| view! { <p id="mark-for">{t}</p> })}
                {compare}
                <p class="score"><strong>{r.f(Key::ScoreLine, &[("score", &score.to_string())])}</strong>" "
                    {r.t(if passes { Key::Passes } else { Key::DoesNotPass })}</p>
            }
            .into_any(),
        )
    };
    view! {
        <section class="verdict" aria-labelledby="result-h">
            <h2 id="result-h">{settings.s(Key::ResultHeading)}</h2>
            {body}
        </section>
    }
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
                    let (class, shape) = mark(f.severity);
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
                            <p class="head"><span class=class aria-hidden="true">{shape}</span>
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
            return Some(view! { <p>{r.t(Key::ChangesNone)}</p> }.into_any());
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
                let (class, shape) = mark(if e.passes { Severity::Good } else { Severity::Critical });
                let label = format!("{}: {}", r.t(Key::ChangesMake), r.t(e.change.label()));
                view! {
                    <li>
                        {(i == 0).then(|| view! { <p class="sev">{r.t(Key::ChangesBest)}</p> })}
                        <p>{line}" "<span class=class aria-hidden="true">{shape}</span>" "
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
