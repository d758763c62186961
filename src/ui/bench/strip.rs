//! The strip under the picture: the question and its answers, the film while it plays, and after it one
//! sentence, the guess beside it, the moments, and what to do next.

use super::player::{Player, player};
use super::stage::{Layer, stage};
use super::state::{ANSWERS, Bench, Phase, Said, answer, bench, start_m};
use crate::grade::report::Report;
use crate::grade::scoring::Grade;
use crate::physics::trace::{EventKind, Outcome, Trace};
use crate::rules::{Severity, advice};
use crate::scenario::Below;
use crate::texts::say::{self, Reader};
use crate::texts::{Key, Stage as S};
use crate::ui::shared::settings::{Settings, settings};
use crate::ui::shared::signs::mark;
use crate::ui::shared::view::{self, View};
use crate::units::{FT_M, Quantity, Rounding, Units, round_to};
use leptos::prelude::*;
use wasm_bindgen::JsCast;

fn said_words(said: Said, deck: bool) -> S {
    match said {
        Said::Ends(Outcome::Stopped) => S::Holds,
        Said::Ends(Outcome::Strikes) if deck => S::HitsBelow,
        Said::Ends(Outcome::Strikes) => S::HitsGround,
        Said::Ends(Outcome::LetGo) => S::Loose,
        Said::Ask => S::AskFirst,
    }
}

/// The strip.
#[component]
pub fn Strip() -> impl IntoView {
    let bench = bench();
    view! {
        <section class="strip" id="strip">{move || match bench.phase.get() {
            Phase::Choosing => view! { <Question /> }.into_any(),
            Phase::Computing | Phase::Playing => view! { <Showing /> }.into_any(),
            Phase::Shown => view! { <Outcomes /> }.into_any(),
        }}</section>
    }
}

/// The question before every fall.
#[component]
fn Question() -> impl IntoView {
    let (bench, settings, player) = (bench(), settings(), player());
    let problems = move || bench.problems.get();
    let deck = Memo::new(move |_| bench.scenario.with(|s| matches!(s.house.below, Below::Obstacle { .. })));
    let answers = move || {
        let deck = deck.get();
        ANSWERS
            .into_iter()
            .map(|o| {
                view! {
                    <label class="pill answer">
                        <input type="radio" name="prediction" prop:checked=move || bench.prediction.get() == Some(o)
                            on:change=move |_| bench.prediction.set(Some(o)) />
                        <span>{settings.s(said_words(o, deck))}</span>
                    </label>
                }
            })
            .collect_view()
    };
    let ready = move || bench.prediction.get().is_some();
    // 1 to 4 answer from anywhere in the strip.
    let key = move |ev: web_sys::KeyboardEvent| {
        let typing = |t: web_sys::EventTarget| {
            t.dyn_into::<web_sys::HtmlInputElement>().is_ok_and(|i| i.type_() == "text")
        };
        if !ev.target().is_some_and(typing) {
            answer(bench, &ev.key());
        }
    };
    view! {
        <div class="predict" on:keydown=key>
            <Show when=move || problems().is_empty() fallback=move || view! {
                <div class="problems" role="alert">
                    <p>{mark(Severity::Major)}{settings.s(Key::ProblemsHeading)}</p>
                    <ul>{move || problems().iter().map(|p| view! {
                        <li>{say::problem(settings.reader(), p)}</li>
                    }).collect_view()}</ul>
                </div>
            }>
                <form on:submit=move |ev| { ev.prevent_default(); player.lock_and_play() }>
                    <fieldset>
                        <legend><h2>{settings.s(S::Ask)}</h2></legend>
                        <div class="pills">{answers}</div>
                    </fieldset>
                    <div class="go">
                        <Show when=move || bench.prediction.get() == Some(Said::Ends(Outcome::Stopped))><Guess /></Show>
                        <button type="submit" class="main play" id="play" aria-disabled=move || (!ready()).to_string()>
                            <Show when=ready><i class="i-play" aria-hidden="true"></i></Show>
                            {move || settings.t(if ready() { S::Go } else { S::SayFirst })}
                        </button>
                    </div>
                </form>
                <p class="practice">{settings.s(S::Practice)}</p>
            </Show>
        </div>
    }
}

/// The flag's height by buttons, field and keys.
#[component]
fn Guess() -> impl IntoView {
    let (bench, settings) = (bench(), settings());
    let step = move || if settings.units.get() == Units::Metric { 0.1 } else { 0.5 * FT_M };
    let now =
        move || bench.guess.get().or_else(|| bench.geometry.with(|g| g.as_ref().map(start_m))).unwrap_or(0.0);
    let per_m = move || Quantity::Length.shown_per_si(settings.units.get());
    let nudge = move |n: f64| {
        let s = step();
        bench.set_guess(((untrack(now) / s).round() + n) * s);
    };
    let shown = move || {
        crate::texts::number(settings.lang.get(), round_to(now() * per_m(), 1, Rounding::Nearest), 1)
            .replace('\u{2212}', "-")
    };
    view! {
        <div class="guess" role="group" aria-label=settings.s(S::GuessLabel)>
            <label for="guess" class="vh">{settings.s(S::GuessLabel)}</label>
            <button type="button" class="step" aria-label=move || format!("{} −", settings.t(S::GuessLabel)) on:click=move |_| nudge(-1.0)>"−"</button>
            <input id="guess" type="text" inputmode="decimal" autocomplete="off" prop:value=shown
                on:change=move |ev| {
                    if let Ok(x) = event_target_value(&ev).trim().replace(',', ".").parse::<f64>() {
                        bench.set_guess(x / untrack(per_m));
                    }
                    // What is no number goes again: the field says what counts.
                    if let Some(e) = ev.target().and_then(|t| t.dyn_into::<web_sys::HtmlInputElement>().ok()) {
                        e.set_value(&untrack(shown));
                    }
                }
                on:keydown=move |ev| match ev.key().as_str() {
                    "ArrowUp" => { ev.prevent_default(); nudge(1.0) }
                    "ArrowDown" => { ev.prevent_default(); nudge(-1.0) }
                    "PageUp" => { ev.prevent_default(); nudge(5.0) }
                    "PageDown" => { ev.prevent_default(); nudge(-5.0) }
                    _ => {}
                } />
            <span class="unit">{move || crate::texts::symbol(settings.lang.get(), Quantity::Length, settings.units.get())}</span>
            <button type="button" class="step" aria-label=move || format!("{} +", settings.t(S::GuessLabel)) on:click=move |_| nudge(1.0)>"+"</button>
        </div>
    }
}

/// While the fall is computed and first shown.
#[component]
fn Showing() -> impl IntoView {
    let (bench, settings, player) = (bench(), settings(), player());
    let locked = move || {
        let r = settings.reader();
        let deck = bench.scenario.with(|s| matches!(s.house.below, Below::Obstacle { .. }));
        bench.prediction.get().map(|o| r.f(Key::Locked, &[("answer", r.t(said_words(o, deck)))]))
    };
    let time = move || settings.reader().q(Quantity::Time, player.clock.get(), Rounding::Nearest);
    let speed = move || settings.t(if player.slow.get() { Key::SlowPlay } else { Key::TruePlay });
    view! {
        <div class="player" role="group" aria-label=settings.s(Key::PlayerRegion)>
            <Show when=move || bench.phase.get() == Phase::Playing fallback=move || view! { <p class="stage">{settings.s(Key::Computing)}</p> }>
                <div class="buttons">
                    <button type="button" on:click=move |_| player.toggle()>
                        {move || if player.playing.get() { settings.t(Key::Pause) } else { settings.t(Key::Resume) }}</button>
                    <button type="button" class="main" on:click=move |_| player.skip()>{settings.s(Key::Skip)}</button>
                </div>
            <p class="stage"><strong>{move || stage_word(bench, settings, player)}</strong><span>{time}</span><span class="speed">{speed}</span></p>
            </Show>
            <p class="locked">{locked}</p>
        </div>
    }
}

/// So long an event's word stands, s.
const WORD_S: f64 = 0.3;

/// What has just happened, as a word.
fn stage_word(bench: Bench, settings: Settings, player: Player) -> &'static str {
    let t = player.clock.get();
    bench.run.with(|r| {
        r.as_ref()
            .and_then(|r| {
                r.trace.events.iter().rfind(|e| e.time_s <= t + 1e-9 && e.time_s > t - WORD_S).map(|e| e.kind)
            })
            .map_or("", |k| settings.t(k.label()))
    })
}

/// The guess beside what came of it.
fn compared(r: Reader, run: &Report, said: Option<Said>, guess: Option<f64>) -> Option<String> {
    let real = run.trace.outcome;
    let deck = matches!(run.set_up.house.below, Below::Obstacle { .. });
    match said? {
        Said::Ask => Some(match run.findings.iter().find(|f| advice(f).is_some()) {
            Some(f) => r.f(S::AskedOpen, &[("title", &say::lower_first(r.t(f.code.title())))]),
            None => r.t(S::AskedClear).to_owned(),
        }),
        Said::Ends(o) if o != real => {
            Some(r.f(S::SaidWrong, &[("said", r.t(said_words(Said::Ends(o), deck)))]))
        }
        Said::Ends(_) => match guess.filter(|_| real == Outcome::Stopped && run.trace.is_sound()) {
            Some(m) => {
                let low = run.trace.lowest_point_m;
                let len = |x: f64, how| r.q(Quantity::Length, x, how);
                Some(r.f(
                    S::GuessOff,
                    &[
                        ("said", &len(m, Rounding::Nearest)),
                        ("real", &len(low, Rounding::Down)),
                        ("off", &len((m - low).abs(), Rounding::Nearest)),
                    ],
                ))
            }
            None => Some(r.f(S::SaidRight, &[("said", r.t(said_words(Said::Ends(real), deck)))])),
        },
    }
}

/// The named moments of a fall, five at most, and the one that is shown first among them.
pub fn moments(t: &Trace, end_s: f64) -> Vec<(EventKind, f64)> {
    use EventKind as E;
    let mut all = vec![(E::Slip, 0.0)];
    let weighty = [
        E::AnchorFails,
        E::RopeBreaks,
        E::LinkBreaks,
        E::OffRope,
        E::StrikesGround,
        E::StrikesObstacle,
        E::Lowest,
        E::PeakForce,
        E::Taut,
        E::StrikesLadder,
        E::GrabRuns,
    ];
    for k in weighty {
        // Two moments that a finger cannot tell apart are one.
        if let Some(at) = t.time_of(k)
            && at <= end_s + 1e-9
            && all.len() < 4
            && all.iter().all(|(_, b)| (at - b).abs() > 0.04 * end_s)
        {
            all.push((k, at));
        }
    }
    all.push((E::End, t.duration_s()));
    all.sort_by(|a, b| a.1.total_cmp(&b.1));
    all
}

/// After the fall: mark, sentence, number, guess; the film; what next.
#[component]
fn Outcomes() -> impl IntoView {
    let (bench, settings, player, stage) = (bench(), settings(), player(), stage());
    let head = move || {
        let run = bench.run.get()?;
        let r = settings.reader();
        let h = say::headline(r, &run);
        let beside = compared(r, &run, bench.prediction.get(), bench.guess.get());
        Some(view! {
            {mark(h.severity)}
            <div class="told-lines">
                <p class="sentence" id="verdict" tabindex="-1">{h.sentence}</p>
                <p class="figure-line">{h.figure}</p>
                {beside.map(|t| view! { <p class="compare">{t}</p> })}
            </div>
        })
    };
    // What helps most, by its own name; where nothing is left that helps, back to the parts.
    let effects = move || bench.effects.get().and_then(Result::ok);
    let change = move || match effects() {
        Some(all) => all.first().map_or(settings.t(S::ChangeFreely), |e| settings.t(e.change.short())),
        None => settings.t(S::ChangeOne),
    };
    let to_change = move |_| {
        let nothing = effects().is_some_and(|all| all.is_empty())
            && bench
                .run
                .with(|r| r.as_ref().is_some_and(|r| matches!(r.grade, Grade::Graded { passes: true, .. })));
        if nothing {
            bench.leave_fall();
            view::to_view("scene");
        } else {
            stage.open(Layer::Change);
        }
    };
    let stopped = move || {
        bench
            .run
            .with(|r| r.as_ref().is_some_and(|r| r.trace.is_sound() && r.trace.outcome == Outcome::Stopped))
    };
    let more = move || {
        Layer::of_fall(bench)
            .into_iter()
            .filter(|l| !matches!(l, Layer::Why | Layer::Change | Layer::Front))
            .map(|l| {
                view! { <button type="button" class="plain" id=format!("to-{}", l.id()) on:click=move |_| stage.open(l)>{settings.s(l.name())}</button> }
            })
            .collect_view()
    };
    view! {
        <div class="result">
            <div class="head verdict" aria-labelledby="verdict">{head}</div>
            <Film />
            <div class="next">
                <button type="button" id="slow" on:click=move |_| if player.playing.get_untracked() { player.stop() } else { player.again(true) }>
                    {move || if player.playing.get() { settings.t(Key::Pause) } else { settings.t(S::Slow) }}</button>
                <button type="button" id="why" on:click=move |_| stage.open(Layer::Why)>{settings.s(S::Why)}</button>
                <button type="button" class="main" id="change" on:click=to_change>{change}</button>
            </div>
            <div class="more">
                {more}
                <Show when=stopped>
                    <button type="button" class="plain" id="to-rescue" on:click=move |_| view::go(View::Rescue)>{settings.s(crate::texts::Bench::AfterTheStop)}</button></Show>
            </div>
        </div>
    }
}

/// The film: one line with a dot at each named moment; or, for readers who asked for less motion, stills.
#[component]
fn Film() -> impl IntoView {
    let (bench, settings, player) = (bench(), settings(), player());
    let end = Memo::new(move |_| bench.run.with(|r| r.as_ref().map_or(1.0, |r| player.film_end_s(&r.trace))));
    let time = move || settings.reader().q(Quantity::Time, player.clock.get(), Rounding::Nearest);
    let all =
        Memo::new(move |_| bench.run.with(|r| r.as_ref().map_or(vec![], |r| moments(&r.trace, end.get()))));
    let dots = move || {
        let end = end.get().max(1e-9);
        all.get()
            .into_iter()
            .filter(|(_, at)| *at <= end + 1e-9)
            .map(|(_, at)| {
                let on = move || (player.clock.get() - at).abs() < 0.012;
                view! { <span class="dot" class:on=on prop:style=format!("left:{:.2}%", 100.0 * at / end)></span> }
            })
            .collect_view()
    };
    // Near a moment the film goes to the moment.
    let to = move |t: f64| {
        let near =
            all.get_untracked().into_iter().find(|(_, at)| (at - t).abs() < 0.02 * end.get_untracked());
        player.seek(near.map_or(t, |n| n.1));
    };
    let stills = move || {
        all.get()
            .into_iter()
            .map(|(k, at)| {
                let r = settings.reader();
                let name = r.t(k.label());
                let time = r.q(Quantity::Time, at, Rounding::Nearest);
                let on = move || (player.clock.get() - at).abs() < 0.012;
                view! { <li><button type="button" aria-pressed=move || on().to_string() on:click=move |_| player.seek(at)>{still_of(at)}<span>{name}</span><small>{time}</small></button></li> }
            })
            .collect_view()
    };
    view! {
        <div class="film">
            <div class="track" aria-hidden="true">{dots}</div>
            <input type="range" class="scrub" min="0" step="0.005" max=move || end.get().to_string()
                aria-label=settings.s(Key::Scrub) aria-valuetext=move || format!("{}, {}", time(), stage_word(bench, settings, player))
                prop:value=move || player.clock.get().to_string()
                on:input=move |ev| { if let Ok(t) = event_target_value(&ev).parse::<f64>() { to(t) } } />
            <p class="stage"><strong>{move || stage_word(bench, settings, player)}</strong><span>{time}</span></p>
        </div>
        <ol class="storyboard" aria-label=settings.s(S::FilmHeading)>{stills}</ol>
    }
}

/// A moment as a small picture.
fn still_of(at_s: f64) -> Option<impl IntoView> {
    let run = bench().run.get()?;
    let g = run.set_up.geometry();
    let q = crate::scene::at(&run.set_up, g, &run.trace, at_s)?;
    let frame =
        crate::scene::camera::fall(g, &run.trace, at_s.max(0.6), crate::scene::camera::whole(g, &run.set_up))
            .fit(0.7, 0.5);
    let shapes = crate::scene::figure::figure(&q, &run.set_up, g);
    Some(view! {
        <svg class="drawing small" viewBox=frame.view_box() aria-hidden="true">
            {crate::ui::shared::figure::still(crate::scene::house::house(g, &run.set_up))}{crate::ui::shared::figure::still(shapes)}</svg>
    })
}
