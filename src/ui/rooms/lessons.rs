//! Lessons: two set-ups that differ in one thing; predict, see both fall, compare, then the principle.
//! And the endings that a person has found by trying.

use super::visit;
use crate::physics::trace::Trace;
use crate::practice::lessons::{ALONG_M, Better, Ending, Lesson, better};
use crate::practice::thumbs::Thumb;
use crate::quiz::questions::ItemKind;
use crate::scenario::Scenario;
use crate::studies::along_wall::Swing;
use crate::studies::published;
use crate::texts::Room as W;
use crate::texts::Text;
use crate::texts::{Key, ask, say};
use crate::ui::shared::asking;
use crate::ui::shared::figure::{Falls, Still};
use crate::ui::shared::front::front;
use crate::ui::shared::settings::{Settings, settings};
use crate::ui::shared::store;
use crate::ui::shared::view::{self, View};
use crate::units::{Quantity, Rounding};
use crate::worker::questions::{Fall, Swings};
use leptos::prelude::*;
use std::sync::Arc;

/// One of the three answers.
const ANSWERS: [Better; 3] = [Better::First, Better::Second, Better::Alike];

fn name(b: Better, r: crate::texts::say::Reader) -> String {
    match b {
        Better::First => r.f(W::QSetUp, &[("letter", "A")]),
        Better::Second => r.f(W::QSetUp, &[("letter", "B")]),
        Better::Alike => r.t(W::QSame).to_owned(),
    }
}

/// The lessons view.
#[component]
pub fn Lessons() -> impl IntoView {
    let settings = settings();
    let open = RwSignal::new(None::<Lesson>);
    let done = RwSignal::new(store::load_lessons());
    let cleared = RwSignal::new(0);
    let visit = visit();
    let cards = move || {
        Lesson::ALL
            .iter()
            .enumerate()
            .map(|(n, &l)| {
                let is_done = move || done.with(|d| d.contains(&l));
                view! {
                    <li><button type="button" class="lesson" on:click=move |_| open.set(Some(l))>
                        <span class="no" aria-hidden="true">{n + 1}</span>
                        <span>{settings.s(l.label())}</span>
                        <span class="sev">{move || is_done().then(|| format!("✓ {}", settings.t(W::LessonDone)))}</span>
                    </button></li>
                }
            })
            .collect_view()
    };
    let more = move || {
        [
            (View::Day, W::DayName, W::DayLine, "day"),
            (View::Framing, W::FramingName, W::FramingLine, "framing"),
            (View::Rescue, W::RescueName, W::RescueLine, "rescue"),
        ]
        .map(|(v, name, line, id)| {
            view! {
                <li><button type="button" class="lesson" id=format!("to-{id}") on:click=move |_| view::go(v)>
                    <span class="no" aria-hidden="true">"→"</span>
                    <span><strong>{settings.s(name)}</strong><br/><span class="sev">{settings.s(line)}</span></span></button></li>
            }
        })
        .into_iter()
        .collect_view()
    };
    view! {
        <main class="page lessons">
            {move || match open.get() {
                Some(Lesson::AlongTheWall) => view! { <Along open=open done=done /> }.into_any(),
                Some(l) => view! { <One lesson=l open=open done=done /> }.into_any(),
                None => view! {
                    <section>
                        <h2>{settings.s(W::LessonsHeading)}</h2>
                        <p class="lead">{settings.s(W::LessonsLead)}</p>
                        <ol class="lesson-list">{cards()}</ol>
                        <h3>{settings.s(W::MoreHeading)}</h3>
                        <ul class="lesson-list more">{more()}</ul>
                        {move || { cleared.track(); view! { <Endings /> } }}
                        <HowWeKnow /><Thumbs />
                        <button type="button" id="clear-progress" on:click=move |_| {
                            store::clear_progress();
                            done.set(vec![]);
                            visit.said.set(settings.reader_now().t(W::ClearedProgress).to_owned());
                            cleared.update(|n| *n += 1);
                        }>{settings.s(W::ClearProgress)}</button>
                    </section>
                }.into_any(),
            }}
        </main>
    }
}

/// Published figures beside ours, as the test command holds them together.
#[component]
fn HowWeKnow() -> impl IntoView {
    let settings = settings();
    let list = move || {
        let r = settings.reader();
        published::rows()
            .into_iter()
            .map(|row| {
                let (shape, word) = match row.agrees() {
                    Some(true) => ("✓ ", W::KnowAgrees),
                    Some(false) => ("✕ ", W::KnowNot),
                    None => ("• ", W::KnowNoFigure),
                };
                let read = match row.read.as_str() {
                    "text" => W::KnowText,
                    "abstract" => W::KnowAbstract,
                    "memory" => W::KnowMemory,
                    _ => W::KnowSummary,
                };
                let ours = r.q(row.figure.quantity(), row.ours_si, Rounding::Nearest);
                view! {
                    <li class="known-row"><p><strong>{r.lang.of(&row.what).to_owned()}</strong></p>
                        <p>{r.f(W::KnowPublished, &[("text", r.lang.of(&row.published))])}</p>
                        <p>{r.f(W::KnowOurs, &[("value", &ours)])}" · "<b aria-hidden="true">{shape}</b>{r.t(word)}</p>
                        <p class="source">{row.document}" ("{r.t(read)}")"</p></li>
                }
            })
            .collect_view()
    };
    view! {
        <details class="part" id="how-we-know">
            <summary><span class="what"><strong>{settings.s(W::KnowHeading)}</strong></span></summary>
            <div class="controls"><p class="hint">{settings.s(W::KnowLead)}</p>
                <ul class="known">{list}</ul>
                <p class="hint">{settings.s(W::KnowOpen)}</p></div>
        </details>
    }
}

/// The endings found so far; the others are only counted.
#[component]
fn Endings() -> impl IntoView {
    let settings = settings();
    let found = store::load_endings();
    let n = found.len();
    let list = Ending::ALL
        .into_iter()
        .map(|e| {
            let known = found.contains(&e);
            view! { <li class:known=known><b aria-hidden="true">{if known { "✓ " } else { "? " }}</b>
            {move || settings.t(if known { e.label() } else { Text::of(W::EndingUnknown) })}</li> }
        })
        .collect_view();
    view! {
        <section class="card endings"><h3>{settings.s(W::EndingsHeading)}</h3>
            <p>{settings.s(W::EndingsLead)}</p>
            <p class="sev">{move || settings.reader().f(W::EndingsCount, &[("found", &n.to_string()), ("all", &Ending::ALL.len().to_string())])}</p>
            <ul>{list}</ul></section>
    }
}

/// Both set-ups drawn, each with the facts in which it differs.
fn side_by_side(pair: &[Scenario; 2], settings: Settings) -> impl IntoView + use<> {
    pair
        .iter()
        .enumerate()
        .map(|(n, s)| {
            let (mine, other) = (s.clone(), pair[1 - n].clone());
            let differs = move || {
                let r = settings.reader();
                let facts = |s: &Scenario| ask::facts(r, ItemKind::Ends, s);
                let others = facts(&other);
                facts(&mine)
                    .into_iter()
                    .filter(|f| !others.contains(f))
                    .map(|(k, v)| view! { <div><dt>{k}</dt><dd>{v}</dd></div> })
                    .collect_view()
            };
            view! {
                <div class="setupcard"><h3>{move || settings.reader().f(W::QSetUp, &[("letter", &ask::letter(n as u8))])}</h3>
                    <Still set_up=RwSignal::new(s.clone()) /><dl class="facts">{differs}</dl></div>
            }
        })
        .collect_view()
}

/// What both falls came to, row by row.
fn rows(x: Arc<Trace>, y: Arc<Trace>, settings: Settings) -> impl Fn() -> AnyView {
    move || {
        let r = settings.reader();
        let row = |key: W, q: Quantity, a: Option<f64>, b: Option<f64>, how: Rounding| {
            let show = |v: Option<f64>| v.map_or("—".to_owned(), |v| r.q(q, v, how));
            let gap = a.zip(b).map(|(a, b)| r.q(q, (a - b).abs(), Rounding::Nearest));
            view! { <tr><th scope="row">{r.t(key)}</th><td>{show(a)}</td><td>{show(b)}</td><td>{gap.unwrap_or("—".to_owned())}</td></tr> }
        };
        view! {
            <tr><th scope="row">{r.t(W::CmpEnd)}</th><td>{r.t(x.outcome.label())}</td><td>{r.t(y.outcome.label())}</td><td></td></tr>
            {row(W::CmpForce, Quantity::Force, Some(x.peak_force_n), Some(y.peak_force_n), Rounding::Up)}
            {row(W::CmpFree, Quantity::Length, Some(x.free_fall_m), Some(y.free_fall_m), Rounding::Up)}
            {row(W::CmpFall, Quantity::Length, Some(x.total_fall_m), Some(y.total_fall_m), Rounding::Up)}
            {row(W::CmpRoom, Quantity::Length, x.clearance_margin_m, y.clearance_margin_m, Rounding::Down)}
        }
        .into_any()
    }
}

#[component]
fn One(lesson: Lesson, open: RwSignal<Option<Lesson>>, done: RwSignal<Vec<Lesson>>) -> impl IntoView {
    let (visit, settings) = (visit(), settings());
    let place = visit.set_up.with_untracked(|s| s.place.clone());
    let pair = lesson.pair(&place);
    let said = RwSignal::new(None::<Better>);
    let falls = RwSignal::new(None::<(Arc<Trace>, Arc<Trace>)>);
    let locked = RwSignal::new(false);
    let [a, b] = pair.clone();
    let lock = move |ev: web_sys::SubmitEvent| {
        ev.prevent_default();
        if said.with_untracked(Option::is_none) || locked.get_untracked() {
            return;
        }
        let (Ok(a), Ok(b)) = (a.set_up(), b.set_up()) else { return };
        locked.set(true);
        asking::ask(Fall(a), move |first| {
            asking::ask(Fall(b), move |second| {
                if let (Ok(x), Ok(y)) = (first, second)
                    && x.is_sound()
                    && y.is_sound()
                {
                    // The person may have gone on: then there is nobody to show it to.
                    let _ = falls.try_set(Some((Arc::new(x), Arc::new(y))));
                    let mut all = store::load_lessons();
                    if !all.contains(&lesson) {
                        all.push(lesson);
                    }
                    store::save_lessons(&all);
                    let _ = done.try_set(all);
                } else {
                    let _ = locked.try_set(false);
                }
            });
        });
    };
    let stills = side_by_side(&pair, settings);
    let answers = ANSWERS
        .map(|b| {
            view! {
                <label class="pill option"><input type="radio" name="better" prop:disabled=move || locked.get()
                    prop:checked=move || said.get() == Some(b) on:change=move |_| said.set(Some(b)) />
                    <span>{move || name(b, settings.reader())}</span></label>
            }
        })
        .collect_view();
    let pair_for_view = pair.clone();
    let compared = move || {
        let (x, y) = falls.get()?;
        let came = better(&x, &y);
        let guess = said.get_untracked()?;
        let rows = rows(x.clone(), y.clone(), settings);
        let pair = pair_for_view.clone();
        let (first, second) = (pair[0].clone(), pair[1].clone());
        let next = Lesson::ALL.iter().skip_while(|l| **l != lesson).nth(1).copied();
        let try_it = move |s: Scenario| move |_| view::to_bench(&s);
        Some(view! {
            <div class="told" role="status">
                <p class="sentence">{move || {
                    let r = settings.reader();
                    r.f(if guess == came { W::LessonRight } else { W::LessonOther }, &[("came", &name(came, r)), ("said", &name(guess, r))])
                }}</p>
            </div>
            <Falls first=(pair[0].clone(), x) second=(pair[1].clone(), y) />
            <div class="scroll" tabindex="0" role="group" aria-label=settings.s(W::CmpEnd)><table class="analysis"><thead><tr><td></td><th scope="col">"A"</th><th scope="col">"B"</th>
                <th scope="col">{settings.s(W::CmpGap)}</th></tr></thead><tbody>{rows}</tbody></table></div>
            <section class="card"><h3>{settings.s(W::LessonPrinciple)}</h3><p>{settings.s(lesson.principle())}</p>
                <p class="source">{settings.s(lesson.principle_source())}</p></section>
            <div class="row buttons">
                {next.map(|l| view! { <button type="button" class="main" id="next-lesson" on:click=move |_| open.set(Some(l))>{settings.s(W::LessonNext)}</button> })}
                <button type="button" on:click=try_it(first)>{move || settings.reader().f(W::LessonTry, &[("letter", "A")])}</button>
                <button type="button" on:click=try_it(second)>{move || settings.reader().f(W::LessonTry, &[("letter", "B")])}</button>
            </div>
        })
    };
    view! {
        <section class="question">
            <button type="button" class="plain" on:click=move |_| open.set(None)>"← "{settings.s(W::LessonsHeading)}</button>
            <h2>{settings.s(lesson.label())}</h2>
            <p class="lead">{settings.s(W::LessonAsk)}</p>
            <div class="setups several">{stills}</div>
            <form on:submit=lock>
                <fieldset class="options-list"><legend class="vh">{settings.s(W::QuizYourAnswer)}</legend>{answers}</fieldset>
                <Show when=move || !locked.get()>
                    <button type="submit" class="main" id="lock" aria-disabled=move || said.with(Option::is_none).to_string()>
                        {move || settings.t(if said.with(Option::is_some) { W::LessonLock } else { W::QuizPickFirst })}</button>
                </Show>
            </form>
            {compared}
        </section>
    }
}

/// The last lesson: one set-up, under the anchor and along the wall.
#[component]
fn Along(open: RwSignal<Option<Lesson>>, done: RwSignal<Vec<Lesson>>) -> impl IntoView {
    let (visit, settings) = (visit(), settings());
    let place = visit.set_up.with_untracked(|s| s.place.clone());
    let [set_up, _] = Lesson::AlongTheWall.pair(&place);
    let said = RwSignal::new(None::<usize>);
    let swing = RwSignal::new(None::<[Swing; 2]>);
    let locked = RwSignal::new(false);
    let (asked, drawn, kept) = (set_up.clone(), set_up.clone(), set_up);
    let len = move |m: f64, how| settings.reader().q(Quantity::Length, m, how);
    let lock = move |ev: web_sys::SubmitEvent| {
        ev.prevent_default();
        if said.with_untracked(Option::is_none) || locked.get_untracked() {
            return;
        }
        let Ok(asked) = asked.set_up() else { return };
        locked.set(true);
        asking::ask(Swings(asked), move |answer| {
            let Ok(all) = answer else {
                let _ = locked.try_set(false);
                return;
            };
            let near = all.iter().find(|w| (w.offset_m - ALONG_M).abs() < 1e-9).cloned();
            if let (Some(straight), Some(aside)) = (all.first().cloned(), near) {
                let _ = swing.try_set(Some([straight, aside]));
                let mut all = store::load_lessons();
                if !all.contains(&Lesson::AlongTheWall) {
                    all.push(Lesson::AlongTheWall);
                }
                store::save_lessons(&all);
                let _ = done.try_set(all);
            } else {
                let _ = locked.try_set(false);
            }
        });
    };
    let answers = [W::AlongSame, W::AlongLower, W::AlongHigher];
    let pills = answers
        .iter()
        .enumerate()
        .map(|(i, w)| {
            let w = *w;
            view! { <label class="pill option"><input type="radio" name="along" prop:disabled=move || locked.get()
                on:change=move |_| said.set(Some(i)) /><span>{settings.s(w)}</span></label> }
        })
        .collect_view();
    let told = move || {
        let [straight, w] = swing.get()?;
        let r = settings.reader();
        let name = |i: usize| answers.get(i).map_or("", |w| r.t(*w));
        let right = said.get_untracked() == Some(1);
        let line = r.f(
            if right { W::LessonRight } else { W::LessonOther },
            &[("came", name(1)), ("said", name(said.get_untracked()?))],
        );
        let room = |w: &Swing| w.room_m().map_or("—".to_owned(), |m| len(m, Rounding::Down));
        let words = r.f(
            W::AlongTold,
            &[
                ("extra", &len(w.extra_m, Rounding::Up)),
                ("speed", &r.q(Quantity::Speed, w.free.speed_m_s, Rounding::Up)),
                ("room", &room(&w)),
                ("straight", &room(&straight)),
            ],
        );
        let label = r.f(W::AlongWay, &[("offset", &len(ALONG_M, Rounding::Nearest))]);
        Some(view! {
            <div class="told" role="status"><p class="sentence">{line}</p></div>
            {front(&kept, w.offset_m, Some(&w), (None, None), label)}<p class="hint">{r.t(Key::FrontLegend)}</p>
            <p>{words}</p>
            <section class="card"><h3>{r.t(W::LessonPrinciple)}</h3><p>{r.t(Lesson::AlongTheWall.principle())}</p>
                <p class="source">{r.t(Lesson::AlongTheWall.principle_source())}</p></section>
        })
    };
    view! {
        <section class="question">
            <button type="button" class="plain" on:click=move |_| open.set(None)>"← "{settings.s(W::LessonsHeading)}</button>
            <h2>{settings.s(Lesson::AlongTheWall.label())}</h2>
            <p class="lead">{move || settings.reader().f(W::AlongAsk, &[("offset", &len(ALONG_M, Rounding::Nearest))])}</p>
            <Still set_up=RwSignal::new(drawn) />
            <form on:submit=lock>
                <fieldset class="options-list"><legend class="vh">{settings.s(W::QuizYourAnswer)}</legend>{pills}</fieldset>
                <Show when=move || !locked.get()>
                    <button type="submit" class="main" id="lock" aria-disabled=move || said.with(Option::is_none).to_string()>
                        {move || settings.t(if said.with(Option::is_some) { W::LessonLock } else { W::QuizPickFirst })}</button>
                </Show>
            </form>
            {told}
        </section>
    }
}

/// Rules of thumb beside the numbers.
#[component]
fn Thumbs() -> impl IntoView {
    let settings = settings();
    let rows = move || {
        let r = settings.reader();
        Thumb::ALL
            .into_iter()
            .map(|t| {
                let (says, fares, told) = say::thumb(r, t);
                view! { <li><p><strong>{fares}</strong>" "<q>{says}</q></p><p>{told}</p></li> }
            })
            .collect_view()
    };
    view! {
        <details class="part thumbs">
            <summary><span class="what"><strong>{settings.s(W::ThumbsHeading)}</strong></span></summary>
            <div class="controls findings"><p class="hint">{settings.s(W::ThumbsHint)}</p><ul>{rows}</ul></div>
        </details>
    }
}
