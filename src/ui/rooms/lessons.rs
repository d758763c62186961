//! The landing of all practice: today's day, the lessons as cards, the ways a fall can end, and behind them how we
//! know.

use super::lesson::{Along, One};
use super::visit;
use crate::practice::hooks::Joined;
use crate::practice::lessons::{Ending, Lesson};
use crate::practice::pairs::{Half, Lined, Slung};
use crate::practice::thumbs::Thumb;
use crate::scenario::Scenario;
use crate::scene::lens::{self, Lens};
use crate::scene::pairs::half;
use crate::studies::published;
use crate::texts::Gear as T;
use crate::texts::Room as W;
use crate::texts::say;
use crate::texts::{Pairs as P, Text, Walk};
use crate::ui::shared::front::front;
use crate::ui::shared::settings::settings;
use crate::ui::shared::store;
use crate::ui::shared::view::{self, View};
use crate::units::{Quantity, Rounding};
use leptos::prelude::*;

/// The lessons by what they practise.
const GROUPS: [(W, &[Lesson]); 3] = [
    (
        W::GroupHold,
        &[
            Lesson::GrabHeight,
            Lesson::GrabArrow,
            Lesson::BoltAndLatch,
            Lesson::GrabBolt,
            Lesson::AbsorberOrNot,
        ],
    ),
    (W::GroupTie, &[Lesson::AnchorGround, Lesson::AnchorChimney]),
    (W::GroupRoom, &[Lesson::RoomToStop, Lesson::SlackOnTheRoof, Lesson::AlongTheWall]),
];

/// Minutes that a lesson takes: one, or two along the wall.
fn minutes(l: Lesson) -> u32 {
    if l == Lesson::AlongTheWall { 2 } else { 1 }
}

fn paths(all: Lens) -> impl IntoView {
    all.into_iter().map(|(c, d)| view! { <path class=c d=d /> }).collect_view()
}

/// A lesson as a card: what it is about from near, a verb, and how long it takes or how near the best guess was.
fn card(l: Lesson, next: bool, done: RwSignal<Vec<Lesson>>, open: RwSignal<Option<Lesson>>) -> impl IntoView {
    let settings = settings();
    let is_done = move || done.with(|d| d.contains(&l));
    let state = move || {
        let r = settings.reader();
        if !is_done() {
            return view! { <small>{r.f(W::CardMinutes, &[("minutes", &minutes(l).to_string())])}</small> }
                .into_any();
        }
        let best = store::load_guesses()
            .into_iter()
            .find(|g| g.0 == l)
            .map(|g| r.f(W::CardOff, &[("value", &r.q(Quantity::Length, g.1, Rounding::Up))]));
        view! { <small class="is-done"><b aria-hidden="true">"✓"</b><span class:vh=best.is_some()>{r.t(W::LessonDone)}</span>" "<span>{best}</span></small> }.into_any()
    };
    view! {
        <li><button type="button" class="lesson" class:next=next id=format!("lesson-{}", number(l)) on:click=move |_| open.set(Some(l))>
            <svg class="lens" viewBox="0 0 120 120" aria-hidden="true">{paths(lens::lesson(l))}</svg>
            <strong>{settings.s(l.verb())}</strong>{state}
        </button></li>
    }
}

/// Which lesson it is, from 1.
fn number(l: Lesson) -> usize {
    Lesson::ALL.iter().position(|x| *x == l).map_or(0, |i| i + 1)
}

/// What a room is about, from near.
fn doing(view: View) -> Lens {
    let near = match view {
        View::Hooks => Some(Half::Hook(Joined::Shut)),
        View::Rope => Some(Half::Line(Lined::Padded)),
        View::Supports => Some(Half::Support(Slung::Choked)),
        _ => None,
    };
    if let Some(h) = near {
        return half(h);
    }
    let all: &[(&'static str, &str)] = match view {
        View::Framing => &[
            ("wood", "M0 0H120V120H0Z"),
            (
                "thin",
                "M0 34H120M0 68H120M0 102H120M40 0V34M84 0V34M18 34V68M62 34V68M106 34V68M40 68V102M84 68V102",
            ),
            ("line bold", "M62 84L92 30"),
            ("solid", "M34 74H74V94H34Z"),
            ("line", "M20 84a22 22 0 0 1 10 -18"),
        ],
        View::Harness => &[
            ("fill", "M22 120V56Q22 30 46 24H74Q98 30 98 56V120Z"),
            ("strap", "M42 26Q46 70 38 120M78 26Q74 70 82 120M43 66H77"),
            ("solid", "M52 58H68V74H52Z"),
        ],
        View::Site => &[
            ("wood", "M30 62L62 36L94 62V106H30Z"),
            ("line bold", "M24 66L62 34L100 66"),
            ("line", "M108 112V20M100 30H116M94 62Q104 54 108 44"),
            ("rope", "M42 106H52V80H42Z"),
            ("solid", "M78 78A9 9 0 1 1 78.1 78Z"),
        ],
        View::Eave => &[
            ("wood", "M0 20L84 62V80L0 38Z"),
            ("line bold", "M0 18L84 60M84 60V74"),
            ("line", "M78 0L112 120M92 0L126 120M82 14H97M88 36H103M94 58H109M100 80H115"),
            ("rope", "M10 10L84 52Q92 56 92 68V120"),
            ("fill", "M34 16L52 25L46 38L28 29Z"),
        ],
        _ => &[
            ("thin", "M60 12a48 48 0 1 0 .1 0Z"),
            ("line bold", "M60 12a48 48 0 0 1 41 24"),
            ("rope", "M60 0V40"),
            ("solid", "M60 34a8 8 0 1 0 .1 0Z"),
            ("line body", "M60 52V72M60 56L48 68M60 56L72 68M60 72L52 90M60 72L68 90"),
        ],
    };
    all.iter().map(|(c, d)| (*c, (*d).to_owned())).collect()
}

/// The lessons view.
#[component]
pub fn Lessons() -> impl IntoView {
    let settings = settings();
    // Back from the bench to the lesson that it was visited from.
    let open = RwSignal::new(store::noted_lesson());
    store::note_lesson(None);
    let done = RwSignal::new(store::load_lessons());
    view::on_window(view::AGAIN, move || {
        let _ = open.try_set(None);
    });
    view! {
        <main class="page lessons">
            {move || match open.get() {
                Some(Lesson::AlongTheWall) => view! { <Along open=open done=done /> }.into_any(),
                Some(l) => view! { <One lesson=l open=open done=done /> }.into_any(),
                None => view! { <Landing open=open done=done /> }.into_any(),
            }}
            <div class="vh" aria-hidden="true">{settings.s(W::LessonsHeading)}</div>
        </main>
    }
}

#[component]
fn Landing(open: RwSignal<Option<Lesson>>, done: RwSignal<Vec<Lesson>>) -> impl IntoView {
    let (visit, settings) = (visit(), settings());
    let cleared = RwSignal::new(0);
    let next = Memo::new(move |_| Lesson::ALL.iter().copied().find(|l| done.with(|d| !d.contains(l))));
    let groups = move || {
        let next = next.get();
        GROUPS
            .map(|(name, all)| {
                let cards = all.iter().map(|&l| card(l, next == Some(l), done, open)).collect_view();
                view! { <section class="group"><h3>{settings.s(name)}</h3><ul class="cards">{cards}</ul></section> }
            })
            .into_iter()
            .collect_view()
    };
    let rooms = move |all: &[(View, Text, u32, &'static str)]| {
        let all = all.iter().map(|&(v, verb, minutes, id)| {
            let time = move || settings.reader().f(W::CardMinutes, &[("minutes", &minutes.to_string())]);
            view! {
                <li><button type="button" class="lesson" id=format!("to-{id}") on:click=move |_| view::go(v)>
                    <svg class="lens" viewBox="0 0 120 120" aria-hidden="true">{paths(doing(v))}</svg>
                    <strong>{settings.s(verb)}</strong><small>{time}</small></button></li>
            }
        });
        view! { <ul class="cards">{all.collect_view()}</ul> }
    };
    let on_you = rooms(&[
        (View::Harness, Text::of(T::HarnessVerb), 4, "harness"),
        (View::Hooks, Text::of(T::HooksVerb), 3, "hooks"),
        (View::Rope, Text::of(P::RopesVerb), 4, "rope"),
        (View::Supports, Text::of(P::SupportsVerb), 4, "supports"),
        (View::Eave, Text::of(T::EaveVerb), 5, "eave"),
    ]);
    let doing = rooms(&[
        (View::Site, Text::of(Walk::Verb), 8, "site"),
        (View::Framing, Text::of(W::FramingVerb), 3, "framing"),
        (View::Rescue, Text::of(W::RescueVerb), 4, "rescue"),
    ]);
    let progress = move || {
        let n = done.with(|d| Lesson::ALL.iter().filter(|l| d.contains(l)).count());
        let boxes = (0..Lesson::ALL.len()).map(|i| view! { <i class:full=i < n></i> }).collect_view();
        let words = settings
            .reader()
            .f(W::ProgressDone, &[("done", &n.to_string()), ("all", &Lesson::ALL.len().to_string())]);
        view! { <p class="progress"><span aria-hidden="true">{boxes}</span><strong>{words}</strong></p> }
    };
    let today = front(&Scenario::default(), 1.0, None, (None, None), String::new());
    // Whoever comes back from a room by keyboard begins at the list.
    if document().active_element().is_none_or(|e| e.tag_name() == "BODY") {
        view::to_view("landing-h");
    }
    view! {
        <div class="landing">
            <h2 class="vh" id="landing-h" tabindex="-1">{settings.s(W::LessonsHeading)}</h2>
            <section class="today-card"><div class="today-still" aria-hidden="true">{today}</div>
                <div class="today-line"><p><strong>{settings.s(W::DayToday)}</strong><small>{settings.s(W::DayTodayLine)}</small></p>
                <button type="button" class="main" id="to-day" on:click=move |_| view::go(View::Day)>{settings.s(W::DayGo)}</button></div></section>
            <div class="lesson-list">
                {progress}{groups}
                <section class="group"><h3>{settings.s(T::GroupGear)}</h3>{on_you}</section>
                <section class="group"><h3>{settings.s(W::GroupDo)}</h3>{doing}</section>
            </div>
            {move || { cleared.track(); view! { <Endings /> } }}
            <div class="behind">
                <HowWeKnow /><Thumbs />
                <button type="button" class="plain" id="clear-progress" on:click=move |_| {
                    store::clear_progress();
                    done.set(vec![]);
                    visit.said.set(settings.reader_now().t(W::ClearedProgress).to_owned());
                    cleared.update(|n| *n += 1);
                }>{settings.s(W::ClearProgress)}</button>
            </div>
        </div>
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

/// The endings found so far as figures; of the others there is a hint.
#[component]
fn Endings() -> impl IntoView {
    let (visit, settings) = (visit(), settings());
    let found = StoredValue::new(store::load_endings());
    let n = found.with_value(Vec::len);
    let hint = RwSignal::new(None::<Ending>);
    let list = Ending::ALL
        .into_iter()
        .map(|e| {
            let known = found.with_value(|f| f.contains(&e));
            let picture = view! { <svg class="way" viewBox="0 0 88 92" aria-hidden="true">{paths(lens::ending(e))}</svg> };
            if known {
                // Found ones can be seen again on the bench.
                let again = move |_| {
                    let place = visit.set_up.with_untracked(|s| s.place.clone());
                    view::to_bench(&e.example(&place));
                };
                view! { <li class="known"><button type="button" on:click=again>{picture}<span>{settings.s(e.label())}</span></button></li> }.into_any()
            } else {
                let label = move || settings.reader().f(W::WayHint, &[("hint", settings.t(e.hint()))]);
                view! { <li><button type="button" aria-label=label aria-pressed=move || (hint.get() == Some(e)).to_string() on:click=move |_| hint.set(Some(e))>{picture}<b aria-hidden="true">"?"</b></button></li> }.into_any()
            }
        })
        .collect_view();
    let told = move || {
        hint.get().map(|e| {
            let words = settings.reader().f(W::WayHint, &[("hint", settings.t(e.hint()))]);
            view! { <p class="way-hint" role="status">{words}" "<button type="button" class="plain" on:click=move |_| view::go(View::Bench)>{settings.s(crate::texts::Key::NavBench)}</button></p> }
        })
    };
    view! {
        <section class="endings">
            <h3>{move || settings.reader().f(W::EndingsCount, &[("found", &n.to_string()), ("all", &Ending::ALL.len().to_string())])}</h3>
            <p class="hint">{settings.s(W::WaysLead)}</p>
            <ul>{list}</ul>{told}</section>
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
