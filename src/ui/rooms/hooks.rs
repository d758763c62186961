//! Hook and ring: of two, which would you hang on; then hooking up in order.

use super::bar::RoomBar;
use super::visit;
use crate::practice::hooks::{Act, Joined, PAIRS, drawn};
use crate::rules::Severity;
use crate::scenario::Scenario;
use crate::scene::hooks::joined;
use crate::texts::Gear as T;
use crate::texts::Room as W;
use crate::texts::Stage as S;
use crate::ui::shared::asking;
use crate::ui::shared::settings::settings;
use crate::ui::shared::signs::mark;
use crate::ui::shared::view::{self, View};
use crate::units::{Quantity, Rounding};
use crate::worker::questions::Fall;
use leptos::prelude::*;

/// The signals of the room.
#[derive(Clone, Copy)]
struct On {
    pairs: RwSignal<Vec<[Joined; 2]>>,
    /// What was chosen of each so far.
    chosen: RwSignal<Vec<Joined>>,
    /// The last choice is looked at.
    told: RwSignal<bool>,
    /// The pairs are over: hooking up is asked for.
    ordering: RwSignal<bool>,
    acts: RwSignal<Vec<Act>>,
    done: RwSignal<Vec<Act>>,
    /// Pull on the hook in the usual fall, N.
    pull_n: RwSignal<Option<f64>>,
}

impl On {
    fn begin(self) {
        let seed = (js_sys::Math::random() * 1e9) as u64;
        self.pairs.set(drawn(seed));
        self.acts.set(Act::shown(seed));
        self.chosen.set(vec![]);
        self.done.set(vec![]);
        self.told.set(false);
        self.ordering.set(false);
    }

    /// Which pair is looked at.
    fn at(self) -> usize {
        let n = self.chosen.with(Vec::len);
        // While the order is asked for, 'told' is about that.
        if self.told.get() && !self.ordering.get() { n.saturating_sub(1) } else { n }
    }

    fn choose(self, j: Joined) {
        if self.told.get_untracked() {
            return;
        }
        self.chosen.update(|c| c.push(j));
        self.told.set(true);
        view::to_view("hooks-told");
    }
}

/// The room.
#[component]
pub fn Hooks() -> impl IntoView {
    view::fill_the_window();
    let (visit, settings) = (visit(), settings());
    let on = On {
        pairs: RwSignal::new(vec![]),
        chosen: RwSignal::new(vec![]),
        told: RwSignal::new(false),
        ordering: RwSignal::new(false),
        acts: RwSignal::new(vec![]),
        done: RwSignal::new(vec![]),
        pull_n: RwSignal::new(None),
    };
    on.begin();
    let usual = Scenario { place: visit.set_up.with_untracked(|s| s.place.clone()), ..Scenario::default() };
    if let Ok(s) = usual.set_up() {
        asking::ask(Fall(s), move |t| {
            if let Ok(t) = t
                && t.is_sound()
            {
                let _ = on.pull_n.try_set(Some(t.peak_force_n));
            }
        });
    }
    view! {
        <main class="page hooks">
            <RoomBar back=W::BackToList to=Callback::new(|()| view::go(View::Lessons)) title=settings.s(T::HooksName) />
            {move || if on.at() < PAIRS.len() { view! { <Choose on=on /> }.into_any() } else { view! { <Order on=on /> }.into_any() }}
        </main>
    }
}

/// Two to choose from; after the choice what each bears.
#[component]
fn Choose(on: On) -> impl IntoView {
    let settings = settings();
    let pair = move || on.pairs.with(|p| p.get(on.at()).copied());
    let cards = move || {
        let r = settings.reader();
        let told = on.told.get();
        let chosen = on.chosen.with(|c| c.last().copied()).filter(|_| told);
        let all = pair()?
            .into_iter()
            .zip(["A", "B"])
            .map(|(j, letter)| {
                let paths = joined(j).into_iter().map(|(c, d)| view! { <path class=c d=d /> }).collect_view();
                let label = format!("{letter}{}{}", r.colon(), r.t(j.label()));
                // Words under the picture only once it is told; who cannot see it hears them before.
                view! {
                    <button type="button" class="hook-card" class:right=told && j.is_right() class:wrong=told && !j.is_right() aria-label=label
                        aria-disabled=told.to_string() data-right=told.then(|| j.is_right().to_string()) on:click=move |_| on.choose(j)>
                        <b class="letter" aria-hidden="true">{letter}</b><svg class="lens" viewBox="0 0 120 120" aria-hidden="true">{paths}</svg>
                        {told.then(|| view! { <span>{if j.is_right() { "✓ " } else { "✕ " }}{r.t(j.label())}</span> })}
                        {(chosen == Some(j)).then(|| view! { <small>{r.t(T::HooksYes)}</small> })}</button>
                }
            })
            .collect_view();
        Some(all)
    };
    let told = move || {
        let [a, b] = pair().filter(|_| on.told.get())?;
        let wrong = if a.is_right() { b } else { a };
        let r = settings.reader();
        let n = |f: f64, how| r.q(Quantity::Force, f, how);
        let pull = on.pull_n.get().map_or("—".to_owned(), |f| n(f, Rounding::Up));
        let fine = on.chosen.with(|c| c.last().is_some_and(|j| j.is_right()));
        let what = r.f(if fine { T::HooksOther } else { T::HooksThis }, &[("what", r.t(wrong.label()))]);
        let words = match wrong.strength_n() {
            Some([old, new]) => {
                let (old, new) = (n(old, Rounding::Down), n(new, Rounding::Down));
                r.f(T::HooksPull, &[("what", &what), ("pull", &pull), ("old", &old), ("new", &new)])
            }
            None => r.f(T::HooksNone, &[("what", &what), ("pull", &pull)]),
        };
        let next = move |_| {
            on.told.set(false);
            on.ordering.set(on.chosen.with_untracked(Vec::len) == PAIRS.len());
            view::to_view(if on.chosen.with_untracked(Vec::len) < PAIRS.len() {
                "hooks-ask"
            } else {
                "hooks-order"
            });
        };
        Some(view! {
            <div class="head">{mark(if fine { Severity::Good } else { Severity::Major })}<div class="told-lines"><p class="sentence" id="hooks-told" tabindex="-1">{words}</p></div></div>
            <div class="next"><button type="button" class="main" id="hooks-next" on:click=next>{r.t(T::EaveOn)}</button></div>
        })
    };
    let count = move || {
        let n = (on.at() + 1).to_string();
        settings.reader().f(T::HooksOf, &[("n", &n), ("all", &PAIRS.len().to_string())])
    };
    view! {
        <div class="hook-pair">{cards}</div>
        <section class="strip hooks-strip dress-foot">
            <Show when=move || !on.told.get()><p class="stem"><strong id="hooks-ask" tabindex="-1">{settings.s(T::HooksAsk)}</strong>" "<span class="hint">{count}</span></p></Show>
            {told}
            <details class="guide"><summary>{settings.s(S::Why)}</summary><p class="hint">{settings.s(T::HooksNote)}</p><p class="source">{settings.s(T::HooksSources)}</p></details>
        </section>
    }
}

/// Hooking up.
#[component]
fn Order(on: On) -> impl IntoView {
    let (visit, settings) = (visit(), settings());
    let acts = move || {
        on.acts
            .get()
            .into_iter()
            .map(|a| {
                let n = move || on.done.with(|d| d.iter().position(|x| *x == a).map(|i| i + 1));
                let take = move |_| {
                    let next = on.done.with_untracked(Vec::len);
                    if n().is_some() {
                        return;
                    }
                    let r = settings.reader_now();
                    if Act::ALL.get(next) == Some(&a) {
                        on.done.update(|d| d.push(a));
                        on.told.set(false);
                        if on.done.with_untracked(Vec::len) == Act::ALL.len() {
                            view::to_view("hooks-done");
                        }
                        visit.said.set(format!("{}. {}", next + 1, r.t(a.label())));
                    } else {
                        visit.said.set(r.t(T::HooksLater).to_owned());
                        on.told.set(true);
                    }
                };
                view! { <li><button type="button" class="hook-act" aria-pressed=move || n().is_some().to_string() on:click=take><b aria-hidden="true">{move || n().map_or("·".to_owned(), |n| n.to_string())}</b>{settings.s(a.label())}</button></li> }
            })
            .collect_view()
    };
    // The picture follows: ring beside, hook through, gate shut, tugged.
    let picture = move || {
        let state = match on.done.with(Vec::len) {
            0..=1 => Joined::Ajar,
            2 => Joined::Small,
            3..=4 => Joined::Shut,
            _ => Joined::Along,
        };
        let paths = joined(state).into_iter().map(|(c, d)| view! { <path class=c d=d /> }).collect_view();
        view! { <svg class="lens" viewBox="0 0 120 120" aria-hidden="true">{paths}</svg> }
    };
    let told = move || {
        let r = settings.reader();
        if on.done.with(Vec::len) == Act::ALL.len() {
            let n = on.chosen.with(|c| c.iter().filter(|j| j.is_right()).count());
            let score = r.f(T::HooksScore, &[("n", &n.to_string()), ("all", &PAIRS.len().to_string())]);
            return view! { <p class="sentence" id="hooks-done" tabindex="-1">{r.t(T::HooksDone)}" "{score}</p>
                <div class="next"><button type="button" class="main" id="hooks-again" on:click=move |_| { on.begin(); view::to_view("hooks-ask") }>{r.t(T::HooksAgain)}</button></div> }.into_any();
        }
        let late = on.told.get().then(|| r.t(T::HooksLater));
        view! { <p class="stem"><strong id="hooks-order" tabindex="-1">{r.t(T::HooksOrder)}</strong></p><p class="figure-line">{late}</p> }.into_any()
    };
    view! {
        <div class="hook-pair order"><div class="hook-card">{picture}</div><ul class="hook-acts">{acts}</ul></div>
        <section class="strip hooks-strip dress-foot">{told}</section>
    }
}
