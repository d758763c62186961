//! The second window: the trainer's own, phone-sized. It shows where the wall is and sends wishes; the wall decides.

use super::facts;
use super::picture::{Picture, SameShown, Shown};
use super::store::{self, Line, Said};
use super::wall::{next_name, told};
use crate::practice::showing::{Session, Step, Wish};
use crate::texts::Trainer as T;
use crate::ui::rooms::pair::Clock;
use crate::ui::rooms::visit;
use crate::ui::shared::settings::settings;
use crate::ui::shared::view;
use leptos::prelude::*;
use std::time::Duration;

/// Silence after a question after which the wall counts as gone.
const SILENT: Duration = Duration::from_millis(1500);

/// Minutes and seconds.
fn clock(seconds: f64) -> String {
    let s = seconds.max(0.0) as u64;
    format!("{:02}:{:02}", s / 60, s % 60)
}

/// The room.
#[component]
pub fn Second() -> impl IntoView {
    view::fill_the_window();
    let (visit, settings) = (visit(), settings());
    let session = RwSignal::new(store::load_session());
    let gone = RwSignal::new(true);
    let heard = StoredValue::new(None::<Callback<Said>>);
    let line = Line::open(move |said| {
        if let Some(Some(then)) = heard.try_get_value() {
            then.run(said);
        }
    });
    heard.set_value(Some(Callback::new(move |said| match said {
        Said::Now(s) => {
            gone.set(false);
            session.set(Some(*s));
        }
        Said::Gone => gone.set(true),
        _ => {}
    })));
    // Whether the wall is there is asked now and again: a crash says no goodbye.
    line.say(&Said::Hello);
    let silent = StoredValue::new(false);
    let every = set_interval_with_handle(
        move || {
            if silent.get_value() {
                gone.set(true);
            }
            silent.set_value(true);
            line.say(&Said::Hello);
        },
        SILENT,
    );
    Effect::new(move |_| {
        session.track();
        silent.set_value(false);
    });
    let now_s = RwSignal::new(js_sys::Date::now() / 1e3);
    let tick = set_interval_with_handle(move || now_s.set(js_sys::Date::now() / 1e3), Duration::from_secs(1));
    on_cleanup(move || {
        for h in [every, tick].into_iter().filter_map(Result::ok) {
            h.clear();
        }
    });
    let place = Memo::new(move |_| visit.set_up.with(|s| s.place.clone()));
    let there = Memo::new(move |_| session.with(|s| s.as_ref().is_some_and(|s| !s.turns.is_empty())));
    let wish = move |w: Wish| line.say(&Said::Wish(w));
    let head = move || {
        let r = settings.reader();
        session.with(|s| {
            let s = s.as_ref()?;
            let n = (s.step.number() + 1).to_string();
            let step = if s.is_over() { r.t(T::SessionOver).to_owned() } else { r.f(T::StepOf, &[("n", &n), ("what", r.t(s.step.label()))]) };
            let gone_s = s.ended_s.unwrap_or_else(|| now_s.get()) - s.began_s;
            let planned_s = f64::from(s.minutes()) * 60.0;
            let time = if gone_s > planned_s { format!("+{}", clock(gone_s - planned_s)) } else { clock(gone_s) };
            let of = r.f(T::OfMinutes, &[("n", &s.minutes().to_string())]);
            Some(view! { <div class="second-head"><h1 id="second-h" tabindex="-1">{step}</h1><p><b>{time}</b>" "<small>{of}</small></p></div> })
        })
    };
    view! {
        <main class="page second">
            {head}
            <div role="alert"><Show when=move || gone.get() && there.get()>
                <p class="problems"><a href="#wall" target="shortfall-wall">{settings.s(T::WallClosed)}</a>" "{settings.s(T::NothingLost)}</p></Show></div>
            <Show when=move || !there.get()><h1 class="second-none">{settings.s(T::Second)}</h1><p class="lead">{settings.s(T::NoSession)}</p></Show>
            <Show when=move || there.get()>
                <div class="second-body"><Now session=session place=place /><Hands session=session wish=Callback::new(wish) /><Answer session=session place=place /></div>
                <Foot session=session wish=Callback::new(wish) />
            </Show>
        </main>
    }
}

/// What is on the wall, what comes next, and what to say.
#[component]
fn Now(session: RwSignal<Option<Session>>, place: Memo<String>) -> impl IntoView {
    let settings = settings();
    let clock = Clock::new();
    let shown = Memo::new(move |_| {
        let (demo, step) =
            session.with(|s| s.as_ref().and_then(|s| Some((s.now()?.demo.clone(), s.step))))?;
        let step = if step == Step::Scene { Step::Scene } else { Step::Ask };
        let s = demo.under(&place.get());
        Some(SameShown(Shown { demo, s, fallen: None, step, pair: None }))
    });
    let words = move || {
        let r = settings.reader();
        session.with(|s| {
            let s = s.as_ref().filter(|s| !s.is_over())?;
            let name = s.now().map(|t| r.lang.of(&t.demo.name).to_owned());
            let now = format!("{}{}{}", r.t(T::OnWall), r.colon(), r.t(s.step.label()).to_lowercase());
            if s.blank {
                return Some(view! { <strong>{name}</strong><p>{r.t(T::WallBlank).to_owned()}</p><p></p><p class="hint">{r.t(T::NobodySees)}</p> });
            }
            let next = format!("{}{}{}", r.t(T::NextUp), r.colon(), r.t(next_name(s)).to_lowercase());
            Some(view! { <strong>{name}</strong><p>{now}</p><p>{next}</p><p class="hint">{r.t(T::NobodySees)}</p> })
        })
    };
    let say = move || {
        let r = settings.reader();
        session.with(|s| {
            let t = s.as_ref()?.now()?;
            let note = store::load_mine().into_iter().find(|o| o.demo.id == t.demo.id).map(|o| o.note);
            let note = note.filter(|n| !n.is_empty());
            Some(view! { <div class="second-say"><p><strong>{r.t(T::Say)}</strong>" "{r.lang.of(&t.demo.say).to_owned()}</p>{note.map(|n| view! { <p>{n}</p> })}</div> })
        })
    };
    view! { <div class="second-now"><Picture shown=shown clock=clock /><div>{words}</div></div>{say} }
}

/// The tally: a tap is a hand more, the smaller button one less.
#[component]
fn Hands(session: RwSignal<Option<Session>>, wish: Callback<Wish>) -> impl IntoView {
    let settings = settings();
    move || {
        let r = settings.reader();
        session.with(|s| {
            let s = s.as_ref()?;
            let t = s.now()?;
            let (hands, words) = match s.step {
                Step::Ask => (t.hands, t.demo.answers().map(|e| r.t(e.label()))),
                Step::Change => {
                    (t.changes, [T::PartGrab, T::PartAnchor, T::PartLine, T::PartPlace].map(|w| r.t(w)))
                }
                _ => return None,
            };
            let all: u32 = hands.iter().sum();
            let rows = words
                .into_iter()
                .zip(hands)
                .enumerate()
                .map(|(i, (word, n))| {
                    let i = i as u8;
                    view! {
                        <li><button type="button" class="hand-up" on:click=move |_| wish.run(Wish::Up(i))><span>{i + 1}" "{word}</span>" "<b>{n}</b></button>
                            <button type="button" class="step" aria-label=r.f(T::HandsDown, &[("what", word)]) on:click=move |_| wish.run(Wish::Less(i))>"−"</button></li>
                    }
                })
                .collect_view();
            Some(view! { <section class="second-hands"><h3>{r.f(T::Hands, &[("n", &all.to_string())])}</h3><ul>{rows}</ul></section> })
        })
    }
}

/// The answer, closed until it is opened.
#[component]
fn Answer(session: RwSignal<Option<Session>>, place: Memo<String>) -> impl IntoView {
    let settings = settings();
    move || {
        let r = settings.reader();
        session.with(|s| {
            let t = s.as_ref()?.now()?;
            let d = &t.demo;
            let fact = facts::fact(r, d, &d.under(&place.get()));
            let came = t.came.map(|_| told(r, t));
            Some(view! {
                <details class="guide"><summary>{r.t(T::AnswerFold)}</summary>
                    <p>{fact}". "{r.t(d.expected.label())}". "{r.lang.of(&d.point).to_owned()}</p><p>{r.lang.of(&d.after).to_owned()}</p>
                    {came.map(|c| view! { <p class="hint">{c}</p> })}</details>
            })
        })
    }
}

/// The buttons at the foot.
#[component]
fn Foot(session: RwSignal<Option<Session>>, wish: Callback<Wish>) -> impl IntoView {
    let settings = settings();
    let small = move |w: Wish, key: T, id: &'static str| {
        view! { <button type="button" id=id on:click=move |_| wish.run(w)>{settings.s(key)}</button> }
    };
    let next = move || session.with(|s| s.as_ref().map_or("", |s| settings.t(next_name(s))));
    let over = move || session.with(|s| s.as_ref().is_none_or(Session::is_over));
    view! {
        <div class="second-foot">
            {small(Wish::Blank, T::DoBlank, "second-blank")}{small(Wish::Again, T::DoAgain, "second-again")}{small(Wish::Swap, T::DoSwap, "second-swap")}
            {small(Wish::Back, T::DoBack, "second-back")}
            <Show when=move || !over()><button type="button" class="main" id="second-next" on:click=move |_| wish.run(Wish::Next)>{next}</button></Show>
        </div>
    }
}
