//! Of two, which would you hang on: hooks and rings, lines and edges, supports; after the hooks, hooking up in order,
//! after the supports, what is asked of one.

use super::bar::RoomBar;
use super::order::InOrder;
use super::visit;
use crate::physics::equipment::rope_strength_n;
use crate::physics::trace::Trace;
use crate::practice::hooks::{Act, Joined};
use crate::practice::pairs::{BESIDE_M, Half, Lined, Question, Rack, Slung};
use crate::rules::{DutyKind, Severity, place};
use crate::scenario::Scenario;
use crate::scene::hooks::joined;
use crate::scene::pairs::half;
use crate::strength;
use crate::texts::Room as W;
use crate::texts::Stage as S;
use crate::texts::say::{Reader, upper_first};
use crate::texts::{Gear as T, Pairs as P};
use crate::ui::shared::asking;
use crate::ui::shared::settings::settings;
use crate::ui::shared::signs::mark;
use crate::ui::shared::view::{self, View};
use crate::units::{Quantity, Rounding};
use crate::worker::questions::{Fall, Swings};
use leptos::prelude::*;

/// The signals of the room.
#[derive(Clone, Copy)]
struct On {
    rack: Rack,
    /// The place whose rules count.
    place: Memo<String>,
    pairs: RwSignal<Vec<[Half; 2]>>,
    /// What was chosen of each so far.
    chosen: RwSignal<Vec<Half>>,
    /// The last choice is looked at.
    told: RwSignal<bool>,
    /// The pairs are over: what comes after them is asked for.
    ordering: RwSignal<bool>,
    acts: RwSignal<Vec<Act>>,
    done: RwSignal<Vec<usize>>,
    asked: RwSignal<Vec<Question>>,
    /// The usual fall.
    usual: RwSignal<Option<Trace>>,
    /// The fall of the worse half that is looked at.
    worse: RwSignal<Option<Trace>>,
    /// How far the line drags along the edge in a slip beside the anchor, m.
    drags_m: RwSignal<Option<f64>>,
}

impl On {
    fn new(rack: Rack, place: Memo<String>) -> On {
        On {
            rack,
            place,
            pairs: RwSignal::new(vec![]),
            chosen: RwSignal::new(vec![]),
            told: RwSignal::new(false),
            ordering: RwSignal::new(false),
            acts: RwSignal::new(vec![]),
            done: RwSignal::new(vec![]),
            asked: RwSignal::new(vec![]),
            usual: RwSignal::new(None),
            worse: RwSignal::new(None),
            drags_m: RwSignal::new(None),
        }
    }

    fn begin(self) {
        let seed = (js_sys::Math::random() * 1e9) as u64;
        self.pairs.set(self.rack.drawn(seed));
        self.acts.set(Act::shown(seed));
        self.chosen.set(vec![]);
        self.done.set(vec![]);
        self.asked.set(vec![]);
        self.told.set(false);
        self.ordering.set(false);
    }

    fn count(self) -> usize {
        self.pairs.with(Vec::len)
    }

    /// Which pair is looked at.
    fn at(self) -> usize {
        let n = self.chosen.with(Vec::len);
        // While the order is asked for, 'told' is about that.
        if self.told.get() && !self.ordering.get() { n.saturating_sub(1) } else { n }
    }

    fn choose(self, j: Half) {
        if self.told.get_untracked() {
            return;
        }
        let pair = untrack(|| self.pairs.with(|p| p.get(self.at()).copied()));
        self.chosen.update(|c| c.push(j));
        self.told.set(true);
        self.worse.set(None);
        let worse = pair.into_iter().flatten().find(|h| !h.is_right());
        let set_up = worse.and_then(|h| self.place.with_untracked(|p| h.set_up(p)));
        if let Some(Ok(s)) = set_up.map(|s| s.set_up()) {
            let still = move || {
                self.told.try_get_untracked() == Some(true)
                    && self.chosen.try_with_untracked(|c| c.last() == Some(&j)) == Some(true)
            };
            if worse == Some(Half::Line(Lined::Bare)) {
                asking::ask(Swings(s), move |all| {
                    let beside = all
                        .ok()
                        .and_then(|all| all.into_iter().find(|w| (w.offset_m - BESIDE_M).abs() < 1e-6));
                    let _ = self.drags_m.try_set(beside.and_then(|w| w.held).map(|f| f.dragged_m));
                });
            } else {
                asking::ask(Fall(s), move |t| {
                    // Another pair may be looked at by now.
                    if let Some(t) = t.ok().filter(|t| t.is_sound() && still()) {
                        let _ = self.worse.try_set(Some(t));
                    }
                });
            }
        }
        view::to_view("pairs-told");
    }
}

/// The room of a rack.
#[component]
pub fn Racks(rack: Rack) -> impl IntoView {
    view::fill_the_window();
    let (visit, settings) = (visit(), settings());
    let on = On::new(rack, Memo::new(move |_| visit.set_up.with(|s| s.place.clone())));
    on.begin();
    if let Ok(s) = (Scenario { place: on.place.get_untracked(), ..Scenario::default() }).set_up() {
        asking::ask(Fall(s), move |t| {
            if let Some(t) = t.ok().filter(Trace::is_sound) {
                let _ = on.usual.try_set(Some(t));
            }
        });
    }
    let title = move || match rack {
        Rack::Hooks => settings.t(T::HooksName),
        Rack::Ropes => settings.t(P::RopesName),
        Rack::Supports => settings.t(P::SupportsName),
    };
    view! {
        <main class="page hooks">
            <RoomBar back=W::BackToList to=Callback::new(|()| view::go(View::Lessons)) title=Signal::derive(title) />
            {move || if on.at() < on.count() { view! { <Choose on=on /> }.into_any() } else {
                match rack {
                    Rack::Hooks => view! { <Order on=on /> }.into_any(),
                    Rack::Ropes => view! { <section class="strip hooks-strip dress-foot"><Over on=on /></section> }.into_any(),
                    Rack::Supports => view! { <Questions on=on /> }.into_any(),
                }
            }}
        </main>
    }
}

/// What tells the worse one of a pair from the better, in numbers where there are any.
fn told_of(r: Reader, worse: Half, on: On) -> String {
    let n = |f: f64, how| r.q(Quantity::Force, f, how);
    let len = |m: f64| r.q(Quantity::Length, m, Rounding::Up);
    let dash = || "…".to_owned();
    let usual = |get: fn(&Trace) -> f64| on.usual.with(|t| t.as_ref().map(get));
    let other = |get: fn(&Trace) -> f64| on.worse.with(|t| t.as_ref().map(get));
    let pull = usual(|t| t.peak_force_n).map_or_else(dash, |f| n(f, Rounding::Up));
    let at_anchor = usual(|t| t.anchor_peak_n).map_or_else(dash, |f| n(f, Rounding::Up));
    match worse {
        Half::Hook(j) => match j.strength_n() {
            Some([old, new]) => {
                let (old, new) = (n(old, Rounding::Down), n(new, Rounding::Down));
                r.f(T::HooksPull, &[("pull", &pull), ("old", &old), ("new", &new)])
            }
            None => r.f(T::HooksNone, &[("pull", &pull)]),
        },
        Half::Line(l) => {
            let whole = n(rope_strength_n(&Scenario::default().gear), Rounding::Down);
            let left = on.place.with(|p| worse.set_up(p)).map_or(0.0, |s| rope_strength_n(&s.gear));
            let left = n(left, Rounding::Down);
            let pair = |get: fn(&Trace) -> f64| {
                (usual(get).map_or_else(dash, len), other(get).map_or_else(dash, len))
            };
            match l {
                Lined::Bare => {
                    let m = on.drags_m.get().map_or_else(dash, len);
                    r.f(P::OfBare, &[("off", &r.q(Quantity::Length, BESIDE_M, Rounding::Nearest)), ("m", &m)])
                }
                Lined::Knotted => r.f(P::OfKnot, &[("left", &left), ("whole", &whole)]),
                Lined::Frayed => r.f(P::OfFrayed, &[("left", &left), ("pull", &at_anchor)]),
                Lined::Stiff => r.t(P::OfStiff).to_owned(),
                Lined::Shared => r.f(P::OfShared, &[("pull", &at_anchor)]),
                Lined::Short => r.t(P::OfShort).to_owned(),
                Lined::Slack => {
                    let (a, b) = pair(|t| t.free_fall_m);
                    r.f(P::OfSlack, &[("a", &a), ("b", &b)])
                }
                _ => {
                    let (a, b) = pair(|t| t.total_fall_m);
                    r.f(P::OfNylon, &[("a", &a), ("b", &b)])
                }
            }
        }
        Half::Support(s) => {
            let bears =
                |h: Slung| on.place.with(|p| Half::Support(h).set_up(p)).map(|s| strength::anchor(&s));
            let low = bears(s).map_or(String::new(), |q| n(q.low.0, Rounding::Down));
            let why = match s {
                Slung::High => P::OfHigh,
                Slung::Soft => P::OfSoft,
                Slung::HookedBack => {
                    return r.f(
                        P::OfHookedBack,
                        &[
                            ("pull", &at_anchor),
                            ("old", &n(crate::practice::hooks::OLD_GATE_N[1], Rounding::Down)),
                        ],
                    );
                }
                Slung::Boards => P::OfBoards,
                Slung::Pipe => P::OfPipe,
                _ => {
                    let tie = bears(Slung::TiedBack).map_or(String::new(), |q| n(q.low.0, Rounding::Down));
                    return r.f(P::OfLoose, &[("low", &low), ("tie", &tie), ("pull", &at_anchor)]);
                }
            };
            r.f(P::OfSupport, &[("low", &low), ("pull", &at_anchor), ("why", r.t(why))])
        }
    }
}

/// What the rules of a place ask about it.
fn duty_of(h: Half) -> Option<DutyKind> {
    match h {
        Half::Line(Lined::Bare) => Some(DutyKind::EdgeProtected),
        Half::Line(Lined::Knotted) => Some(DutyKind::NoKnots),
        Half::Line(Lined::Frayed | Lined::Stiff) => Some(DutyKind::GearWithdrawn),
        Half::Line(Lined::Shared) => Some(DutyKind::OnePersonALine),
        Half::Line(Lined::Short) => Some(DutyKind::LineReachesGround),
        Half::Support(_) => Some(DutyKind::AnchorByCompetentPerson),
        _ => None,
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
                let paths = half(j).into_iter().map(|(c, d)| view! { <path class=c d=d /> }).collect_view();
                let words = r.t(j.label());
                let name = format!("{letter}{}{words}", r.colon());
                // No tick on a support: what is open is asked after the pairs.
                let sign = match (j.is_right(), on.rack) {
                    (true, Rack::Supports) => "? ",
                    (true, _) => "✓ ",
                    (false, _) => "✕ ",
                };
                // Hooks are known by their look: there the words come once it is told; who cannot see hears them before.
                let named = told || on.rack != Rack::Hooks;
                let sign = if told { sign } else { "" };
                view! {
                    <button type="button" class="hook-card" class:right=told && j.is_right() class:wrong=told && !j.is_right() aria-label=(!named).then_some(name)
                        aria-disabled=told.to_string() data-right=told.then(|| j.is_right().to_string()) on:click=move |_| on.choose(j)>
                        <b class="letter" aria-hidden=(!named).then_some("true")>{letter}</b>" "<svg class="lens" viewBox="0 0 120 120" aria-hidden="true">{paths}</svg>
                        {named.then(|| view! { <span>{sign}{words}{(told && j.is_right() && on.rack == Rack::Supports).then(|| format!(" ({})", r.t(P::StillAsk)))}</span> })}
                        {(chosen == Some(j)).then(|| view! { <small>{r.t(T::HooksYes)}</small> })}</button>
                }
            })
            .collect_view();
        Some(all)
    };
    let told = move || {
        let [a, b] = pair().filter(|_| on.told.get())?;
        let worse = if a.is_right() { b } else { a };
        let r = settings.reader();
        let fine = on.chosen.with(|c| c.last().is_some_and(|j| j.is_right()));
        let what = r.f(if fine { T::HooksOther } else { T::HooksThis }, &[("what", r.t(worse.label()))]);
        let words = format!("{}. {}", upper_first(&what), told_of(r, worse, on));
        let asked = on.place.with(|p| place(p)?.duty(duty_of(worse)?)).map(|d| r.duty(d));
        let next = move |_| {
            on.told.set(false);
            let over = on.chosen.with_untracked(Vec::len) == on.pairs.with_untracked(Vec::len);
            on.ordering.set(over);
            view::to_view(match (over, on.rack) {
                (false, _) => "pairs-ask",
                (true, Rack::Supports) => "pairs-questions",
                (true, Rack::Hooks) => "pairs-order",
                (true, Rack::Ropes) => "pairs-after",
            });
        };
        Some(view! {
            <div class="head">{mark(match (fine, on.rack) {
                (true, Rack::Supports) => Severity::Note,
                (true, _) => Severity::Good,
                (false, _) => Severity::Major,
            })}<div class="told-lines"><p class="sentence" id="pairs-told" tabindex="-1">{words}</p>{asked.map(|t| view! { <p class="source">{t}</p> })}</div></div>
            <div class="next"><button type="button" class="main" id="pairs-next" on:click=next>{r.t(T::EaveOn)}</button></div>
        })
    };
    let count = move || {
        let n = (on.at() + 1).to_string();
        settings.reader().f(T::HooksOf, &[("n", &n), ("all", &on.count().to_string())])
    };
    let ask = move || settings.t(if on.rack == Rack::Hooks { T::HooksAsk } else { T::PairsAsk });
    view! {
        <div class="hook-pair">{cards}</div>
        <section class="strip hooks-strip dress-foot">
            <Show when=move || !on.told.get()><p class="stem"><strong id="pairs-ask" tabindex="-1">{ask}</strong>" "<span class="hint">{count}</span></p></Show>
            {told}<Why rack=on.rack />
        </section>
    }
}

/// Sources and what is left out.
#[component]
fn Why(rack: Rack) -> impl IntoView {
    let settings = settings();
    let words = move || match rack {
        Rack::Hooks => (settings.t(T::HooksNote), settings.t(T::HooksSources)),
        Rack::Ropes => (settings.t(P::RopesNote), settings.t(P::RopesSources)),
        Rack::Supports => (settings.t(P::SupportsNote), settings.t(P::SupportsSources)),
    };
    view! { <details class="guide"><summary>{settings.s(S::Why)}</summary><p class="hint">{move || words().0}</p><p class="source">{move || words().1}</p></details> }
}

/// How many of the choices hold, and once more.
#[component]
fn Over(on: On) -> impl IntoView {
    let settings = settings();
    let score = move || {
        let n = on.chosen.with(|c| c.iter().filter(|j| j.is_right()).count());
        settings.reader().f(T::HooksScore, &[("n", &n.to_string()), ("all", &on.count().to_string())])
    };
    let again = move || {
        let r = settings.reader();
        let all: Vec<&str> =
            on.chosen.with(|c| c.iter().filter(|j| !j.is_right()).map(|j| r.t(j.label())).collect());
        (!all.is_empty())
            .then(|| view! { <p class="figure-line">{r.f(P::LookAgain, &[("what", &all.join(", "))])}</p> })
    };
    view! {
        <p class="sentence" id="pairs-after" tabindex="-1">{score}</p>{again}
        <div class="next"><button type="button" class="main" id="pairs-again" on:click=move |_| { on.begin(); view::to_view("pairs-ask") }>{settings.s(T::HooksAgain)}</button></div>
    }
}

/// What is asked of a support before anything is tied to it.
#[component]
fn Questions(on: On) -> impl IntoView {
    let settings = settings();
    let said = RwSignal::new(false);
    let all = Question::ALL.map(|q| {
        let taken = move || on.asked.with(|a| a.contains(&q));
        let flip = move |_| {
            on.asked.update(|a| if a.contains(&q) { a.retain(|x| *x != q) } else { a.push(q) });
            said.set(false);
        };
        let sign = move || match (said.get(), q.is_asked(), taken()) {
            (false, ..) => String::new(),
            (true, true, true) => format!(" ✓ {}", settings.t(P::Asked)),
            (true, true, false) => format!(" △ {}", settings.t(P::NotTaken)),
            (true, false, _) => format!(" – {}", settings.t(P::TellsNothing)),
        };
        view! { <li><label class="check"><input type="checkbox" prop:checked=taken on:change=flip /><span>{settings.s(q.label())}<small>{sign}</small></span></label></li> }
    });
    let told = move || {
        said.get().then(|| {
            let missed =
                Question::ALL.iter().filter(|q| q.is_asked() && !on.asked.with(|a| a.contains(q))).count();
            let words = if missed == 0 {
                settings.t(P::QuestionsAll).to_owned()
            } else {
                settings.reader().f(P::QuestionsMissed, &[("n", &missed.to_string())])
            };
            view! { <p class="sentence" role="status" id="pairs-said">{words}</p> }
        })
    };
    view! {
        <div class="hook-pair order questions"><div class="walk-questions"><p class="stem"><strong id="pairs-questions" tabindex="-1">{settings.s(P::QuestionsAsk)}</strong></p><ul>{all}</ul></div></div>
        <section class="strip hooks-strip dress-foot">{told}
            <div class="next"><button type="button" id="pairs-say" on:click=move |_| said.set(true)>{settings.s(T::SayIt)}</button></div>
            <Show when=move || said.get()><Over on=on /></Show><Why rack=Rack::Supports /></section>
    }
}

/// Hooking up.
#[component]
fn Order(on: On) -> impl IntoView {
    let settings = settings();
    let labels = Act::ALL.map(Act::label).to_vec();
    let shown =
        on.acts.with_untracked(|a| a.iter().filter_map(|x| Act::ALL.iter().position(|y| x == y)).collect());
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
            return view! { <p class="figure-line">{r.t(T::HooksDone)}</p><Over on=on /> }.into_any();
        }
        let late = on.told.get().then(|| r.t(T::HooksLater));
        view! { <p class="stem"><strong id="pairs-order" tabindex="-1">{r.t(T::HooksOrder)}</strong></p><p class="figure-line">{late}</p> }.into_any()
    };
    view! {
        <div class="hook-pair order"><div class="hook-card">{picture}</div><InOrder labels=labels shown=shown done=on.done late=on.told then="pairs-after" /></div>
        <section class="strip hooks-strip dress-foot">{told}</section>
    }
}
