//! From the ladder onto the roof and back: nine moments, two links to clip, and a slip at any of them.

use super::bar::RoomBar;
use super::order::InOrder;
use super::pair::Clock;
use super::visit;
use crate::geometry::Geometry;
use crate::grade::report::Report;
use crate::physics::trace::{EventKind, Outcome, Trace};
use crate::practice::eave::*;
use crate::rules::Severity;
use crate::scenario::Scenario;
use crate::scene::at;
use crate::scene::camera::Frame;
use crate::scene::eave::{grabs, near, standing};
use crate::scene::figure::figure;
use crate::scene::house::house;
use crate::scene::ink::cm;
use crate::texts::Gear as T;
use crate::texts::Room as W;
use crate::texts::ask;
use crate::texts::say;
use crate::texts::{Key, Stage as S};
use crate::ui::shared::asking;
use crate::ui::shared::figure::{decisive_s, defs, still};
use crate::ui::shared::settings::settings;
use crate::ui::shared::signs::mark;
use crate::ui::shared::view::{self, View};
use crate::units::{Quantity, Rounding};
use crate::worker::questions::Fall;
use leptos::prelude::*;
use std::sync::Arc;

/// Answers about the first one up; the last one is none.
const FIRST: [T; 4] = [T::FirstThrown, T::FirstQuick, T::FirstLift, T::FirstOther];

/// The signals of the room.
#[derive(Clone, Copy)]
struct On {
    /// How the first one up is protected, once that is said.
    first: RwSignal<Option<T>>,
    begun: RwSignal<bool>,
    at: RwSignal<usize>,
    links: RwSignal<Links>,
    guess: RwSignal<Option<Holds>>,
    fall: RwSignal<Option<Arc<Trace>>>,
    waits: RwSignal<bool>,
    /// The day is over: it all comes down.
    ends: RwSignal<bool>,
    clock: Clock,
    set_up: Memo<Option<Scenario>>,
}

impl On {
    fn moment(self) -> Moment {
        Moment::ALL[self.at.get().min(Moment::ALL.len() - 1)]
    }

    /// Goes to a moment; the focus stays where it is.
    fn turn(self, n: usize) {
        self.clock.stop();
        self.at.set(n % Moment::ALL.len());
        self.links.set(Links::right(self.moment_now()));
        self.fall.set(None);
        self.guess.set(None);
    }

    fn go(self, n: usize) {
        self.turn(n);
        view::to_view("eave-h");
    }

    fn moment_now(self) -> Moment {
        untrack(|| self.moment())
    }

    fn slip(self) {
        let Some(Ok(s)) = self.set_up.get_untracked().map(|s| s.set_up()) else { return };
        if self.guess.get_untracked().is_none() || self.waits.get_untracked() {
            return;
        }
        self.waits.set(true);
        asking::ask(Fall(s), move |answer| {
            let _ = self.waits.try_set(false);
            let Ok(t) = answer else { return };
            let landed = t.time_of(EventKind::StrikesGround);
            let _ = self.clock.end_s.try_set(landed.unwrap_or_else(|| decisive_s(&t)) + 0.4);
            let _ = self.fall.try_set(Some(Arc::new(t)));
            self.clock.play();
            view::to_view("eave-told");
        });
    }
}

/// The room.
#[component]
pub fn Eave() -> impl IntoView {
    view::fill_the_window();
    let (visit, settings) = (visit(), settings());
    let law = visit.set_up.with_untracked(|s| s.place.clone());
    let (at, links) = (RwSignal::new(0), RwSignal::new(Links::right(Moment::Climb)));
    let law = StoredValue::new(law);
    let on = On {
        first: RwSignal::new(None),
        begun: RwSignal::new(false),
        at,
        links,
        guess: RwSignal::new(None),
        fall: RwSignal::new(None),
        waits: RwSignal::new(false),
        ends: RwSignal::new(false),
        clock: Clock::new(),
        set_up: Memo::new(move |_| law.with_value(|p| set_up(Moment::ALL[at.get()], links.get(), p))),
    };
    view! {
        <main class="page eave">
            <RoomBar back=W::BackToList to=Callback::new(|()| view::go(View::Lessons)) title=settings.s(T::EaveName) />
            <Picture on=on />
            <section class="strip eave-strip">
                {move || if on.ends.get() { view! { <ComesDown on=on /> }.into_any() }
                    else if !on.begun.get() { view! { <First on=on /> }.into_any() }
                    else if on.fall.with(Option::is_some) { view! { <Told on=on /> }.into_any() }
                    else { view! { <Clip on=on /> }.into_any() }}
            </section>
        </main>
    }
}

/// The edge from near; the whole fall once somebody slips.
#[component]
fn Picture(on: On) -> impl IntoView {
    let settings = settings();
    let shown = Memo::new(move |_| {
        let s = on.set_up.get()?;
        let g = Geometry::of(&s)?;
        Some((s, g))
    });
    let frame = move || {
        let fell = on.fall.with(Option::is_some);
        shown.with(|q| {
            let (s, g) = q.as_ref()?;
            let near = near(g, s.worker.stature_m);
            Some(if fell { Frame { bottom_m: -0.4, right_m: g.ladder.foot.x + 0.6, ..near } } else { near })
        })
    };
    let built = move || shown.with(|q| q.as_ref().map(|(s, g)| still(house(g, s))));
    let moving = move || {
        let now_s = on.clock.now_s.get();
        shown.with(|q| {
            let (s, g) = q.as_ref()?;
            let fallen = on.fall.get();
            let all = match fallen.and_then(|t| at(s, g, &t, now_s)) {
                Some(q) => figure(&q, s, g),
                None => standing(on.links.get(), s, g),
            };
            // Before the first one up there is no line, and nobody on the ladder.
            let empty = !on.begun.get();
            let all = all
                .into_iter()
                .filter(|s| !empty || ["rail", "rung", "shoe"].iter().any(|c| s.class.starts_with(c)))
                .collect();
            Some(still(all))
        })
    };
    let names = move || {
        if on.fall.with(Option::is_some) || !on.begun.get() {
            return None;
        }
        shown.with(|q| {
            let (_, g) = q.as_ref()?;
            let all = grabs(on.links.get(), g).into_iter().zip(["A", "B"]);
            Some(
                all.filter_map(|(at, name)| at.map(|q| view! { <text class="eave-name" x=cm(q.x - 0.34) y=cm(-q.y - 0.12)>{name}</text> }))
                    .collect_view(),
            )
        })
    };
    let words = move || {
        let r = settings.reader();
        let l = on.links.get();
        format!(
            "{}. {}{}{}. {}{}{}.",
            r.t(on.moment().label()),
            r.t(T::LinkA),
            r.colon(),
            ask::link(r, l.a, false),
            r.t(T::LinkB),
            r.colon(),
            ask::link(r, l.b, true)
        )
    };
    view! {
        <div class="room-pane"><svg class="drawing" viewBox=move || frame().map_or("0 0 100 100".to_owned(), |f| f.view_box()) preserveAspectRatio="xMidYMid meet" role="img" aria-label=words>
            {defs()}{built}{moving}{names}</svg></div>
    }
}

/// Before anybody climbs: how is the first one up protected?
#[component]
fn First(on: On) -> impl IntoView {
    let settings = settings();
    let locked = RwSignal::new(false);
    let say = move |_| {
        if on.first.with_untracked(Option::is_some) {
            locked.set(true);
            view::to_view("eave-go");
        }
    };
    let told = move || {
        if !locked.get() {
            let ready = move || on.first.with(Option::is_some).to_string();
            return Some(view! { <div class="next"><button type="button" class="main" id="eave-lock" aria-disabled=move || (ready() != "true").to_string() on:click=say>{settings.s(T::EaveLock)}</button></div> }.into_any());
        }
        on.first.get().map(|f| {
            let fine = f != T::FirstQuick;
            let words = settings.t(if fine { T::FirstFine } else { T::FirstNot });
            view! { <div class="head" role="status">{mark(if fine { Severity::Note } else { Severity::Critical })}<p class="figure-line">{words}</p></div>
                <div class="next"><button type="button" class="main" id="eave-go" on:click=move |_| { on.begun.set(true); view::to_view("eave-h") }>{settings.s(T::EaveGo)}</button></div> }.into_any()
        })
    };
    let all = FIRST.map(|f| view! { <label class="pill wide"><input type="radio" name="eave-first" prop:disabled=move || locked.get() on:change=move |_| on.first.set(Some(f)) /><span>{settings.s(f)}</span></label> });
    view! {
        <p class="stem"><strong>{settings.s(T::EaveFirst)}</strong></p>
        <fieldset class="eave-first"><legend class="vh">{settings.s(T::EaveFirst)}</legend>{all}</fieldset>{told}
        <p class="hint">{settings.s(T::Caution)}</p>
    }
}

/// Clip the links, say what holds, slip.
#[component]
fn Clip(on: On) -> impl IntoView {
    let settings = settings();
    let chips = move |second: bool| {
        let choices: &[Link] =
            if second { &[Link::Above, Link::Off] } else { &[Link::Below, Link::Above, Link::Off] };
        let name = if second { "link-b" } else { "link-a" };
        let all = choices.iter().map(|&l| {
            let with = move |links: Links| if second { Links { b: l, ..links } } else { Links { a: l, ..links } };
            let is = move || on.links.with(|x| if second { x.b } else { x.a }) == l;
            // What the link does not reach cannot be clipped.
            let can = move || reaches(on.moment(), l);
            view! { <label class="pill"><input type="radio" name=name prop:checked=is prop:disabled=move || !can() on:change=move |_| on.links.update(|x| *x = with(*x)) />
                <span>{move || ask::link(settings.reader(), l, second)}</span></label> }
        });
        let key = if second { T::LinkB } else { T::LinkA };
        view! { <fieldset class="eave-link"><legend>{settings.s(key)}</legend>{all.collect_view()}</fieldset> }
    };
    let where_now = move || {
        let r = settings.reader();
        r.f(T::EaveWhere, &[("n", &(on.at.get() + 1).to_string()), ("what", r.t(on.moment().label()))])
    };
    let answers = Holds::ALL.map(|h| view! { <label class="pill"><input type="radio" name="eave-holds" prop:checked=move || on.guess.get() == Some(h) on:change=move |_| on.guess.set(Some(h)) /><span>{settings.s(ask::holds(h))}</span></label> });
    view! {
        <div class="eave-now"><p class="stem"><strong id="eave-h" tabindex="-1">{where_now}</strong></p>
            <div class="eave-steps">
                <button type="button" class="step" id="eave-before" aria-label=settings.s(T::EaveBefore) on:click=move |_| on.turn(on.at.get_untracked() + Moment::ALL.len() - 1)>"‹"</button>
                <input type="range" id="eave-at" min="1" max="9" step="1" aria-label=settings.s(T::EaveName) aria-valuetext=where_now prop:value=move || (on.at.get() + 1).to_string()
                    on:change=move |ev| { if let Ok(n) = event_target_value(&ev).parse::<usize>() { on.turn(n.saturating_sub(1)) } } />
                <button type="button" class="step" id="eave-next" aria-label=settings.s(T::EaveOn) on:click=move |_| on.turn(on.at.get_untracked() + 1)>"›"</button></div></div>
        <div class="eave-links">{chips(false)}{chips(true)}
            <label class="check"><input type="checkbox" id="eave-slack" prop:checked=move || on.links.with(|l| l.slack) on:change=move |ev| { let is = event_target_checked(&ev); on.links.update(|l| l.slack = is) } />{settings.s(T::SlackLine)}</label></div>
        <div class="eave-ask"><fieldset><legend>{settings.s(T::EaveAsk)}</legend><div class="pills">{answers}</div></fieldset>
            <button type="button" class="main play" id="eave-slip" aria-disabled=move || on.guess.with(Option::is_none).to_string() on:click=move |_| on.slip()>
                {move || settings.t(if on.guess.with(Option::is_some) { T::SlipNow } else { T::PickFirst })}</button></div>
        <details class="guide"><summary>{settings.s(S::Why)}</summary><p class="hint">{settings.s(T::OfEdge)}" "{settings.s(T::EaveTwo)}</p><p class="hint">{settings.s(T::EaveNote)}</p><p class="source">{settings.s(T::EaveSources)}</p></details>
    }
}

/// What the slip came to.
#[component]
fn Told(on: On) -> impl IntoView {
    let settings = settings();
    let told = move || {
        let t = on.fall.get()?;
        let s = on.set_up.get()?.set_up().ok()?;
        let r = settings.reader();
        if !t.is_sound() {
            return Some(
                view! { <p class="sentence" id="eave-told" tabindex="-1">{r.t(T::NotShown)}</p> }.into_any(),
            );
        }
        let report = Report::of(s, (*t).clone())?;
        let h = say::headline(r, &report);
        let links = on.links.get();
        let (came, said) = (links.holds(), on.guess.get()?);
        let beside = r.f(T::EaveSaid, &[("said", r.t(ask::holds(said))), ("came", r.t(ask::holds(came)))]);
        let len = |m: f64| r.q(Quantity::Length, m, Rounding::Up);
        let fell = r.f(T::EaveFell, &[("free", &len(t.free_fall_m)), ("drop", &len(t.total_fall_m))]);
        let right = Links::right(on.moment());
        let named = |key: T, l: Link, second: bool| format!("{} {}", r.t(key), ask::link(r, l, second));
        let order = ((links.a, links.b) != (right.a, right.b)).then(|| {
            r.f(
                T::EaveOrder,
                &[("a", &named(T::LinkA, right.a, false)), ("b", &named(T::LinkB, right.b, true))],
            )
        });
        // With nobody on the line there is nothing to say of the gear.
        Some(
            view! { <div class="head">{mark(h.severity)}<div class="told-lines"><p class="sentence" id="eave-told" tabindex="-1">{h.sentence}</p>
                {(t.outcome == Outcome::Stopped).then(|| view! { <p class="figure-line">{fell}</p> })}<p class="compare">{beside}</p>{order.map(|t| view! { <p class="figure-line">{t}</p> })}{links.slack.then(|| view! { <p class="figure-line">{r.t(T::EaveTakeUp)}</p> })}</div></div> }
            .into_any(),
        )
    };
    let last = move || on.at.get() + 1 == Moment::ALL.len();
    let again = move |_| {
        on.clock.stop();
        on.fall.set(None);
        on.guess.set(None);
        view::to_view("eave-h");
    };
    view! {
        <div class="result dress-foot">{told}
            <div class="next"><button type="button" id="slow" on:click=move |_| if on.clock.runs.get_untracked() { on.clock.stop() } else { on.clock.play() }>
                    {move || if on.clock.runs.get() { settings.t(Key::Pause) } else { settings.t(S::Slow) }}</button>
                <button type="button" id="eave-again" on:click=again>{settings.s(T::EaveStay)}</button>
                <button type="button" class="main" id="eave-on" on:click=move |_| if untrack(last) { on.clock.stop(); on.ends.set(true); view::to_view("down-ask") } else { on.go(on.at.get_untracked() + 1) }>{move || settings.t(if last() { T::DownGo } else { T::EaveOn })}</button></div></div>
    }
}

/// The day is over: what holds comes off last.
#[component]
fn ComesDown(on: On) -> impl IntoView {
    let settings = settings();
    let (done, late) = (RwSignal::new(vec![]), RwSignal::new(false));
    let shown = TakeDown::shown((js_sys::Math::random() * 1e9) as u64);
    let labels = TakeDown::ALL.map(TakeDown::label).to_vec();
    let told = move || {
        let r = settings.reader();
        if done.with(Vec::len) == TakeDown::ALL.len() {
            let first = move |_| {
                on.ends.set(false);
                on.go(0);
            };
            return view! { <p class="sentence" id="down-told" tabindex="-1">{r.t(T::DownDone)}</p>
                <div class="next"><button type="button" class="main" id="down-over" on:click=first>{r.t(T::EaveOver)}</button></div> }
            .into_any();
        }
        late.get().then(|| view! { <p class="figure-line">{r.t(T::HooksLater)}</p> }).into_any()
    };
    view! {
        <div class="result dress-foot down-all"><p class="stem"><strong id="down-ask" tabindex="-1">{settings.s(T::DownAsk)}</strong></p>
            <InOrder labels=labels shown=shown done=done late=late then="down-told" />{told}
            <p class="hint">{settings.s(T::EaveTwo)}</p></div>
    }
}
