//! One lesson: two set-ups that differ in one thing. Say where the boots of each stop, see both fall at a quarter of
//! true speed, then the sentence by cause, the guess beside it and the two rows that differ most.

use super::bar::RoomBar;
use super::pair::{Clock, FlagField, Panel, Side, SwingPane, boots_m, film_s, frame, moments, swing_s};
use super::visit;
use crate::grade::report::Report;
use crate::physics::trace::{Outcome, Trace};
use crate::practice::hand::Held;
use crate::practice::lessons::{ALONG_M, Better, Lesson, better};
use crate::rules::Severity;
use crate::scenario::Scenario;
use crate::scene::camera::Frame;
use crate::scene::lens::{self, Lens};
use crate::studies::along_wall::Swing;
use crate::texts::Room as W;
use crate::texts::{Key, Stage as S, say};
use crate::ui::shared::asking;
use crate::ui::shared::front::front;
use crate::ui::shared::settings::{Settings, settings};
use crate::ui::shared::signs::mark;
use crate::ui::shared::store;
use crate::ui::shared::view;
use crate::units::{Quantity, Rounding};
use crate::worker::questions::{Fall, Swings};
use leptos::prelude::*;
use std::sync::Arc;

/// One of the three answers where heights are not asked.
const ANSWERS: [Better; 3] = [Better::First, Better::Second, Better::Alike];
/// So long an event's word stands, s.
const WORD_S: f64 = 0.3;
const LETTERS: [&str; 2] = ["A", "B"];

fn name(b: Better, r: say::Reader) -> String {
    match b {
        Better::First => r.f(W::QSetUp, &[("letter", "A")]),
        Better::Second => r.f(W::QSetUp, &[("letter", "B")]),
        Better::Alike => r.t(W::QSame).to_owned(),
    }
}

/// What differs, from near; none where it is a place and not a part.
fn close_up(l: Lesson, s: &Scenario) -> Option<Lens> {
    match l {
        Lesson::GrabArrow | Lesson::BoltAndLatch | Lesson::GrabBolt => Some(lens::of(Held::Grab, s)),
        Lesson::AnchorGround | Lesson::AnchorChimney => Some(lens::of(Held::Anchor, s)),
        Lesson::AbsorberOrNot => Some(lens::link(s.lanyard.absorber.is_some())),
        _ => None,
    }
}

/// Marks a lesson as done, with how far off the guess was where it is one of heights, m.
fn keep(lesson: Lesson, off_m: Option<f64>, done: RwSignal<Vec<Lesson>>) {
    let mut all = store::load_lessons();
    if !all.contains(&lesson) {
        all.push(lesson);
    }
    store::save_lessons(&all);
    if let Some(m) = off_m {
        store::add_guess(lesson, m);
    }
    // The person may have gone on: then there is nobody to show it to.
    let _ = done.try_set(all);
}

/// What both falls came to: the two rows that differ most, or all.
fn rows(r: say::Reader, x: &Trace, y: &Trace, most: usize) -> Vec<(&'static str, [String; 2])> {
    let show = |q: Quantity, v: Option<f64>, how| v.map_or("—".to_owned(), |v| r.q(q, v, how));
    let row = |key: W, q: Quantity, a: Option<f64>, b: Option<f64>, how: Rounding| {
        let (u, v) = (a.unwrap_or(0.0).abs(), b.unwrap_or(0.0).abs());
        let gap = (a.unwrap_or(0.0) - b.unwrap_or(0.0)).abs() / u.max(v).max(1e-6);
        (gap, (r.t(key), [show(q, a, how), show(q, b, how)]))
    };
    // A force on somebody who was not held says nothing.
    let force = |t: &Trace| (t.outcome == Outcome::Stopped).then_some(t.peak_force_n);
    let room = |t: &Trace| t.clearance_margin_m.filter(|m| *m >= 0.0);
    let mut all = vec![
        row(W::CmpForce, Quantity::Force, force(x), force(y), Rounding::Up),
        row(W::CmpFree, Quantity::Length, Some(x.free_fall_m), Some(y.free_fall_m), Rounding::Up),
        row(W::CmpFall, Quantity::Length, Some(x.total_fall_m), Some(y.total_fall_m), Rounding::Up),
        row(W::CmpRoom, Quantity::Length, room(x), room(y), Rounding::Down),
    ];
    all.sort_by(|a, b| b.0.total_cmp(&a.0));
    all.into_iter().take(most).map(|(_, row)| row).collect()
}

/// What came of the guess.
fn compared(r: say::Reader, said: Said, x: &Trace, y: &Trace) -> String {
    match said {
        Said::Boots(a, b) => {
            let len = |m: f64| r.q(Quantity::Length, m.abs(), Rounding::Nearest);
            let real = x.lowest_point_m - y.lowest_point_m;
            // The right distance the wrong way round is no near miss.
            let key = if (a - b) * real < 0.0 { W::LessonGapTurned } else { W::LessonGap };
            r.f(key, &[("said", &len(a - b)), ("real", &len(x.lowest_point_m - y.lowest_point_m))])
        }
        Said::Better(guess) => {
            let came = better(x, y);
            let key = if guess == came { W::LessonRight } else { W::LessonOther };
            r.f(key, &[("came", &name(came, r)), ("said", &name(guess, r))])
        }
    }
}

/// A guess that is locked.
#[derive(Clone, Copy)]
enum Said {
    /// Heights of the boots, m.
    Boots(f64, f64),
    /// Which comes off better.
    Better(Better),
}

/// A lesson with two set-ups.
#[component]
pub fn One(lesson: Lesson, open: RwSignal<Option<Lesson>>, done: RwSignal<Vec<Lesson>>) -> impl IntoView {
    view::fill_the_window();
    let (visit, settings) = (visit(), settings());
    let place = visit.set_up.with_untracked(|s| s.place.clone());
    let pair = lesson.pair(&place);
    let Some(shown) = frame(&pair) else { return ().into_any() };
    let asks_boots = lesson.asks_boots();
    let flags = pair.each_ref().map(|s| RwSignal::new(boots_m(s)));
    let start = flags.map(|f| f.get_untracked());
    let which = RwSignal::new(None::<Better>);
    let said = RwSignal::new(None::<Said>);
    let falls = RwSignal::new(None::<(Arc<Trace>, Arc<Trace>)>);
    let clock = Clock::new();
    let told = RwSignal::new(false);
    let ready = move || {
        if asks_boots { flags.iter().zip(start).any(|(f, s)| f.get() != s) } else { which.get().is_some() }
    };
    let [a, b] = pair.clone();
    let lock = move |ev: web_sys::SubmitEvent| {
        ev.prevent_default();
        if !untrack(ready) || said.get_untracked().is_some() {
            return;
        }
        let (Ok(a), Ok(b)) = (a.set_up(), b.set_up()) else { return };
        let guess = if asks_boots {
            Said::Boots(flags[0].get_untracked(), flags[1].get_untracked())
        } else {
            Said::Better(which.get_untracked().unwrap_or(Better::Alike))
        };
        said.set(Some(guess));
        view::to_view("skip");
        asking::ask(Fall(a), move |first| {
            asking::ask(Fall(b), move |second| match (first, second) {
                (Ok(x), Ok(y)) if x.is_sound() && y.is_sound() => {
                    let off_m = match guess {
                        Said::Boots(a, b) => Some(((a - b) - (x.lowest_point_m - y.lowest_point_m)).abs()),
                        Said::Better(_) => None,
                    };
                    keep(lesson, off_m, done);
                    let both = (Arc::new(x), Arc::new(y));
                    let _ = clock.end_s.try_set(film_s(&both));
                    let _ = falls.try_set(Some(both));
                    clock.play();
                }
                _ => {
                    let _ = said.try_set(None);
                }
            });
        });
    };
    // The sentence comes once both have been seen.
    Effect::new(move |_| {
        if falls.with(Option::is_some)
            && clock.now_s.get() >= clock.end_s.get() - 1e-9
            && !told.get_untracked()
        {
            told.set(true);
            view::to_view("lesson-told");
        }
    });
    let open_now = Signal::derive(move || said.get().is_none());
    let pair = StoredValue::new(pair);
    let side = move |i: usize| Side {
        letter: LETTERS[i],
        lens: pair.with_value(|p| close_up(lesson, &p[i])),
        flag: asks_boots.then_some(flags[i]),
    };
    let panel = move |i: usize, sides: Vec<Side>| {
        // Two flags with their letters stand clear of the body.
        let more_m = if sides.len() > 1 { 0.9 } else { 0.0 };
        let shown = Frame { right_m: shown.right_m + more_m, ..shown };
        let fall = Signal::derive(move || {
            falls.with(|f| f.as_ref().map(|f| if i == 0 { f.0.clone() } else { f.1.clone() }))
        });
        let other_low = Signal::derive(move || {
            falls
                .with(|f| f.as_ref().map(|f| if i == 0 { f.1.lowest_point_m } else { f.0.lowest_point_m }))
                .filter(|_| told.get())
        });
        view! { <Panel sides=sides set_up=pair.with_value(|p| p[i].clone()) frame=shown clock=clock fall=fall other_low=other_low open=open_now /> }
    };
    // Where only a small part differs one picture serves until they fall.
    let one = Memo::new(move |_| lesson.differs_in_a_part() && open_now.get());
    let panels = move || {
        if one.get() {
            vec![panel(0, vec![side(0), side(1)])]
        } else {
            [0, 1].map(|i| panel(i, vec![side(i)])).into()
        }
    };
    let stem = move || {
        let r = settings.reader();
        let ask = r.t(if asks_boots { W::LessonBoots } else { W::LessonBetter });
        view! { <p class="stem"><strong>{r.t(lesson.differs())}</strong>" "{ask}</p> }
    };
    let answers = move || {
        if asks_boots {
            view! { <div class="flag-fields">{[0, 1].map(|i| view! { <FlagField letter=LETTERS[i] flag=flags[i] frame=shown open=open_now /> })}</div> }.into_any()
        } else {
            let pills = ANSWERS.map(|b| view! {
                <label class="pill"><input type="radio" name="better" on:change=move |_| which.set(Some(b)) /><span>{move || name(b, settings.reader())}</span></label>
            });
            view! { <fieldset><legend class="vh">{settings.s(W::QuizYourAnswer)}</legend><div class="pills">{pills}</div></fieldset> }.into_any()
        }
    };
    view! {
        <div class="lesson-room">
            <RoomBar back=W::LessonsHeading to=Callback::new(move |()| { open.set(None); view::to_view("landing-h") }) title=settings.s(lesson.label()) />
            <div class="pair-panes" class:one=move || one.get() class:seen=move || told.get()>{panels}</div>
            <section class="strip lesson-strip">
                <Show when=move || said.get().is_none()>
                    <form on:submit=lock.clone()>
                        {stem}{answers}
                        <button type="submit" class="main play" id="lock" aria-disabled=move || (!ready()).to_string()>
                            {move || settings.t(if ready() { W::LessonGo } else if asks_boots { W::LessonMoveFirst } else { W::QuizPickFirst })}</button>
                    </form>
                </Show>
                <Show when=move || said.get().is_some() && !told.get()>
                    <div class="row buttons"><p class="locked">{settings.s(if view::wants_less_motion() { W::LessonStills } else { W::LessonRuns })}</p>
                        <button type="button" class="main" id="skip" on:click=move |_| clock.seek(f64::MAX)>{settings.s(Key::Skip)}</button></div>
                </Show>
                <Show when=move || told.get()>
                    <Told lesson=lesson pair=pair falls=falls said=said clock=clock open=open />
                </Show>
            </section>
        </div>
    }
    .into_any()
}

/// After both have fallen.
#[component]
fn Told(
    lesson: Lesson,
    pair: StoredValue<[Scenario; 2]>,
    falls: RwSignal<Option<(Arc<Trace>, Arc<Trace>)>>,
    said: RwSignal<Option<Said>>,
    clock: Clock,
    open: RwSignal<Option<Lesson>>,
) -> impl IntoView {
    let settings = settings();
    let more = RwSignal::new(false);
    let head = move || {
        let (x, y) = falls.get()?;
        let r = settings.reader();
        let beside = compared(r, said.get()?, &x, &y);
        // The one that comes off worse is what the lesson is about.
        let worse = if better(&x, &y) == Better::First { 1 } else { 0 };
        let t = if worse == 0 { x } else { y };
        let set_up = pair.with_value(|p| p[worse].set_up()).ok()?;
        let h = say::headline(r, &Report::of(set_up, (*t).clone())?);
        let sentence = format!("{}{}{}", LETTERS[worse], r.colon(), say::lower_first(&h.sentence));
        let severity = if h.severity == Severity::Good { Severity::Note } else { h.severity };
        Some(view! {
            {mark(severity)}
            <div class="told-lines"><p class="sentence" id="lesson-told" tabindex="-1">{sentence}</p><p class="compare">{beside}</p></div>
        })
    };
    let table = move || {
        let (x, y) = falls.get()?;
        let r = settings.reader();
        let all = rows(r, &x, &y, if more.get() { 4 } else { 2 });
        Some(
            all.into_iter()
                .map(|(key, [a, b])| view! { <tr><th scope="row">{key}</th><td>{a}</td><td>{b}</td></tr> })
                .collect_view(),
        )
    };
    let named = move || {
        let (x, y) = falls.get()?;
        let now_s = clock.now_s.get();
        let r = settings.reader();
        let all: Vec<String> = [(&x, "A"), (&y, "B")]
            .into_iter()
            .filter_map(|(t, letter)| {
                let (k, _) = moments(t)
                    .into_iter()
                    .filter(|(_, at_s)| *at_s <= now_s + 1e-9 && *at_s > now_s - WORD_S)
                    .max_by(|a, b| a.1.total_cmp(&b.1))?;
                Some(format!("{letter}{}{}", r.colon(), r.t(k.label())))
            })
            .collect();
        Some(all.join(" · "))
    };
    let dots = move || {
        let (x, y) = falls.get()?;
        let end_s = clock.end_s.get().max(1e-6);
        let mut all = moments(&x);
        all.extend(moments(&y));
        let dots = all.into_iter().filter(|(_, at_s)| *at_s <= end_s).map(|(_, at_s)| {
            view! { <span class="dot" prop:style=format!("left:{:.1}%", 100.0 * at_s / end_s)></span> }
        });
        Some(dots.collect_view())
    };
    let time = move || settings.reader().q(Quantity::Time, clock.now_s.get(), Rounding::Nearest);
    let next = Lesson::ALL.iter().skip_while(|l| **l != lesson).nth(1).copied();
    let number = next.and_then(|n| Lesson::ALL.iter().position(|l| *l == n)).map(|i| (i + 1).to_string());
    let try_it = move |i: usize| {
        move |_| {
            store::note_lesson(Some(lesson));
            pair.with_value(|p| view::to_bench(&p[i]));
        }
    };
    view! {
        <div class="result">
            <div class="head">{head}</div>
            <div class="film">
                <div class="track" aria-hidden="true">{dots}</div>
                <input type="range" id="pair-time" class="scrub" min="0" max=move || clock.end_s.get().to_string() step="0.0125" aria-label=settings.s(Key::LessonTime)
                    aria-valuetext=move || format!("{}, {}", time(), named().unwrap_or_default()) prop:value=move || clock.now_s.get().to_string()
                    on:input=move |ev| { if let Ok(t) = event_target_value(&ev).parse::<f64>() { clock.seek(t) } } />
                <p class="stage"><strong>{named}</strong><span>{time}</span></p>
            </div>
            <table class="analysis two"><thead><tr><td></td><th scope="col">"A"</th><th scope="col">"B"</th></tr></thead><tbody>{table}</tbody></table>
            <Show when=move || more.get()>
                <div class="principle"><p>{settings.s(lesson.principle())}</p><p class="source">{settings.s(lesson.principle_source())}</p>
                    <div class="row buttons">{[0, 1].map(|i| view! { <button type="button" class="plain" on:click=try_it(i)>{move || settings.reader().f(W::LessonTry, &[("letter", LETTERS[i])])}</button> })}</div></div>
            </Show>
            <div class="next">
                <button type="button" id="slow" on:click=move |_| if clock.runs.get_untracked() { clock.stop() } else { clock.play() }>
                    {move || if clock.runs.get() { settings.t(Key::Pause) } else { settings.t(S::Slow) }}</button>
                <button type="button" id="why" aria-expanded=move || more.get().to_string() on:click=move |_| more.update(|m| *m = !*m)>{settings.s(S::Why)}</button>
                {match (next, number) {
                    (Some(l), Some(n)) => view! { <button type="button" class="main" id="next-lesson" on:click=move |_| open.set(Some(l))>{move || settings.reader().f(W::LessonNumber, &[("number", &n)])}</button> }.into_any(),
                    _ => view! { <button type="button" class="main" id="all-lessons" on:click=move |_| open.set(None)>{settings.s(W::LessonsHeading)}</button> }.into_any(),
                }}
            </div>
        </div>
    }
}

/// Both swings of the last lesson: under the anchor, and along the wall.
fn swings_told(settings: Settings, straight: &Swing, w: &Swing, said: usize) -> (String, String) {
    let r = settings.reader();
    let answers = [W::AlongSame, W::AlongLower, W::AlongHigher];
    let name = |i: usize| answers.get(i).map_or("", |w| r.t(*w));
    let line = r.f(
        if said == 1 { W::LessonRight } else { W::LessonOther },
        &[("came", name(1)), ("said", name(said))],
    );
    let len = |m: f64, how| r.q(Quantity::Length, m, how);
    let room = |w: &Swing| w.room_m().map_or("—".to_owned(), |m| len(m, Rounding::Down));
    let words = r.f(
        W::AlongTold,
        &[
            ("extra", &len(w.extra_m, Rounding::Up)),
            ("speed", &r.q(Quantity::Speed, w.free.speed_m_s, Rounding::Up)),
            ("room", &room(w)),
            ("straight", &room(straight)),
        ],
    );
    (line, words)
}

/// The last lesson: one set-up, under the anchor and along the wall, from in front.
#[component]
pub fn Along(open: RwSignal<Option<Lesson>>, done: RwSignal<Vec<Lesson>>) -> impl IntoView {
    view::fill_the_window();
    let (visit, settings) = (visit(), settings());
    let place = visit.set_up.with_untracked(|s| s.place.clone());
    let [set_up, _] = Lesson::AlongTheWall.pair(&place);
    let said = RwSignal::new(None::<usize>);
    let swing = RwSignal::new(None::<[Swing; 2]>);
    let clock = Clock::new();
    let locked = RwSignal::new(false);
    let (asked, kept) = (set_up.clone(), set_up);
    let lock = move |ev: web_sys::SubmitEvent| {
        ev.prevent_default();
        if said.with_untracked(Option::is_none) || locked.get_untracked() {
            return;
        }
        let Ok(asked) = asked.set_up() else { return };
        locked.set(true);
        asking::ask(Swings(asked), move |answer| {
            let near = |all: Vec<Swing>| {
                let aside = all.iter().find(|w| (w.offset_m - ALONG_M).abs() < 1e-9).cloned()?;
                Some([all.first().cloned()?, aside])
            };
            match answer.ok().and_then(near) {
                Some(both) => {
                    let _ = clock.end_s.try_set(swing_s(&both[1]));
                    let _ = swing.try_set(Some(both));
                    clock.play();
                    keep(Lesson::AlongTheWall, None, done);
                    view::to_view("lesson-told");
                }
                None => {
                    let _ = locked.try_set(false);
                }
            }
        });
    };
    let pills = move || {
        [W::AlongSame, W::AlongLower, W::AlongHigher]
            .into_iter()
            .enumerate()
            .map(|(i, w)| {
                view! { <label class="pill"><input type="radio" name="along" prop:disabled=move || locked.get()
                    on:change=move |_| said.set(Some(i)) /><span>{settings.s(w)}</span></label> }
            })
            .collect_view()
    };
    let label = move || {
        let offset = settings.reader().q(Quantity::Length, ALONG_M, Rounding::Nearest);
        settings.reader().f(W::AlongWay, &[("offset", &offset)])
    };
    // While it plays the ring moves; before and after, all of it is seen at once.
    let runs = Memo::new(move |_| clock.runs.get());
    let picture = move || {
        let w = swing.get().map(|[_, w]| w);
        match w {
            Some(w) if runs.get() => {
                view! { <SwingPane set_up=kept.clone() along_m=ALONG_M swing=Arc::new(w) clock=clock label=label() /> }.into_any()
            }
            w => front(&kept, ALONG_M, w.as_ref(), (None, None), label()).into_any(),
        }
    };
    let told = move || {
        let [straight, w] = swing.get()?;
        let (line, words) = swings_told(settings, &straight, &w, said.get_untracked()?);
        Some(view! {
            <div class="result"><div class="told-lines"><p class="sentence" id="lesson-told" tabindex="-1">{line}</p><p class="compare">{words}</p></div>
                <p class="hint">{settings.s(Key::FrontLegend)}</p><p>{settings.s(Lesson::AlongTheWall.principle())}</p><p class="source">{settings.s(Lesson::AlongTheWall.principle_source())}</p>
                <div class="next"><button type="button" id="slow" on:click=move |_| if clock.runs.get_untracked() { clock.stop() } else { clock.play() }>
                        {move || if clock.runs.get() { settings.t(Key::Pause) } else { settings.t(S::Slow) }}</button>
                    <button type="button" class="main" id="all-lessons" on:click=move |_| open.set(None)>{settings.s(W::LessonsHeading)}</button></div></div>
        })
    };
    view! {
        <div class="lesson-room">
            <RoomBar back=W::LessonsHeading to=Callback::new(move |()| { open.set(None); view::to_view("landing-h") }) title=settings.s(Lesson::AlongTheWall.label()) />
            <div class="pair-panes one">{picture}</div>
            <section class="strip lesson-strip">
                <Show when=move || swing.with(Option::is_none)>
                    <form on:submit=lock.clone()>
                        <p class="stem">{move || settings.reader().f(W::AlongAsk, &[("offset", &settings.reader().q(Quantity::Length, ALONG_M, Rounding::Nearest))])}</p>
                        <fieldset><legend class="vh">{settings.s(W::QuizYourAnswer)}</legend><div class="pills">{pills}</div></fieldset>
                        <button type="submit" class="main play" id="lock" aria-disabled=move || said.with(Option::is_none).to_string()>
                            {move || settings.t(if said.with(Option::is_some) { W::LessonGo } else { W::QuizPickFirst })}</button>
                    </form>
                </Show>
                {told}
            </section>
        </div>
    }
}
