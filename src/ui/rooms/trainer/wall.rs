//! The wall: what the back row sees, driven by what a clicker sends. It is the one truth of a session; the second
//! window only wishes.

use super::facts;
use super::falls::{Fallen, Falls};
use super::picture::{Picture, SameShown, Shown, both_frame, film_s, hangs, told_s};
use super::store::{self, Line, Said};
use crate::physics::trace::{EventKind, Trace};
use crate::practice::demos::{Ends, stop_of};
use crate::practice::showing::{Lead, Session, Step, Turn, Wish};
use crate::rules::{FindingCode, Severity};
use crate::texts::Trainer as T;
use crate::texts::say::{self, Reader};
use crate::ui::rooms::pair::Clock;
use crate::ui::rooms::visit;
use crate::ui::shared::settings::settings;
use crate::ui::shared::signs::mark;
use crate::ui::shared::view::{self, View};
use crate::units::{G_M_S2, Quantity, Rounding};
use leptos::prelude::*;
use std::time::Duration;
use wasm_bindgen::prelude::*;

/// The bar stays so long after the pointer has moved.
const BAR_FOR: Duration = Duration::from_secs(3);
/// Slow replay.
const SLOW: f64 = 0.125;
/// Two on one clock.
const QUARTER: f64 = 0.25;

/// The signals of the wall.
#[derive(Clone, Copy)]
struct On {
    session: RwSignal<Session>,
    falls: Falls,
    clock: Clock,
    /// The device would not keep the session.
    unkept: RwSignal<bool>,
    /// The second window was not opened.
    blocked: RwSignal<bool>,
}

/// What the fall has done by now, as its name.
pub fn moment(r: Reader, t: &Trace, now_s: f64) -> String {
    let told = [
        EventKind::Slip,
        EventKind::Taut,
        EventKind::GrabRuns,
        EventKind::OffRope,
        EventKind::AnchorFails,
        EventKind::RopeBreaks,
        EventKind::LinkBreaks,
        EventKind::StrikesLadder,
        EventKind::StrikesObstacle,
        EventKind::StrikesGround,
        EventKind::PeakForce,
        EventKind::Lowest,
    ];
    let last = told
        .into_iter()
        .filter_map(|k| t.time_of(k).map(|at_s| (k, at_s)))
        .filter(|(_, at_s)| *at_s <= now_s + 1e-9)
        .max_by(|a, b| a.1.total_cmp(&b.1));
    r.t(last.map_or(EventKind::Slip, |l| l.0).label()).to_owned()
}

/// When the slow replay stands, s.
fn stops_s(t: &Trace) -> Vec<f64> {
    [
        EventKind::Taut,
        EventKind::PeakForce,
        EventKind::Lowest,
        EventKind::StrikesGround,
        EventKind::StrikesObstacle,
    ]
    .into_iter()
    .filter_map(|k| t.time_of(k))
    .collect()
}

/// The sentence of what happened, with its mark.
pub fn verdict(r: Reader, f: &Fallen) -> (Severity, String) {
    let rep = &f.report;
    let t = &rep.trace;
    match (f.ended(), f.swing.as_deref()) {
        (None, _) => (Severity::Note, r.t(T::NotShown).to_owned()),
        (Some(Ends::Asks), _) => {
            let why = match stop_of(rep).map(|x| x.code) {
                Some(FindingCode::RescueMissing) => T::StopRescue,
                Some(FindingCode::PowerLine) => T::StopNear,
                _ => T::StopWire,
            };
            (Severity::Major, r.f(T::AskedFirst, &[("why", r.t(why))]))
        }
        (Some(Ends::Swings), Some(w)) => {
            // The height is that of the speed as it is shown.
            let v = (w.free.speed_m_s * 10.0).ceil() / 10.0;
            let speed = r.q(Quantity::Speed, v, Rounding::Up);
            let height = r.q(Quantity::Length, v * v / (2.0 * G_M_S2), Rounding::Up);
            (Severity::Major, r.f(T::SwungHard, &[("speed", &speed), ("height", &height)]))
        }
        (Some(Ends::Down), Some(_)) => (Severity::Critical, r.t(T::SwungDown).to_owned()),
        (Some(Ends::Holds), swing) => {
            let h = say::headline(r, rep);
            let room = swing.map_or(t.clearance_margin_m, |w| w.room_m());
            match room.filter(|m| *m > 0.0 && h.severity >= Severity::Note && hangs(rep.set_up.scenario(), t))
            {
                Some(m) => {
                    (h.severity, r.f(T::HeldRoom, &[("room", &r.q(Quantity::Length, m, Rounding::Down))]))
                }
                None => (h.severity, h.sentence),
            }
        }
        _ => {
            let h = say::headline(r, rep);
            (h.severity, h.sentence)
        }
    }
}

impl On {
    fn wish(self, w: Wish) {
        match w {
            Wish::Full => full_screen(),
            Wish::Second => {
                let opened = window().open_with_url_and_target_and_features(
                    "#second",
                    "shortfall-second",
                    "width=390,height=720",
                );
                self.blocked.set(!matches!(opened, Ok(Some(_))));
            }
            _ => {}
        }
        self.session.update(|s| s.wish(w, js_sys::Date::now() / 1e3));
    }

    /// The fall of what is shown.
    fn fallen(self) -> Option<Fallen> {
        let id = self.session.with(|s| s.now().map(|t| t.demo.id))?;
        self.falls.of(id)
    }

    fn shown(self, place: &str) -> Option<Shown> {
        let (demo, step) = self.session.with(|s| s.now().map(|t| (t.demo.clone(), s.step)))?;
        let s = demo.under(place);
        let fallen = self.falls.of(demo.id);
        Some(Shown { demo, s, fallen, step, pair: None })
    }

    /// The two of a pair, the first one first.
    fn pair(self, place: &str) -> Option<[Shown; 2]> {
        let first = self.shown(place)?;
        let partner = self.session.with(|s| s.now().and_then(|t| t.partner.clone()))?;
        let s = partner.under(place);
        let fallen = self.falls.of(partner.id);
        let second = Shown { demo: partner, s, fallen, step: Step::Both, pair: None };
        let mut both = [first, second];
        let frame = both_frame(&both);
        both.iter_mut().for_each(|q| q.pair = frame);
        Some(both)
    }

    /// The clock has come to its end.
    fn is_done(self) -> bool {
        self.clock.now_s.get() >= self.clock.end_s.get() - 1e-9
    }

    /// What the clock does in this step.
    fn start(self) {
        let step = self.session.with_untracked(|s| s.step);
        let Some(f) = untrack(|| self.fallen()) else { return self.clock.stop() };
        let other = self
            .session
            .with_untracked(|s| s.now().and_then(|t| t.partner.as_ref().map(|p| p.id)))
            .and_then(|id| untrack(|| self.falls.of(id)));
        let end_s = match (step, &other) {
            (Step::Both, Some(o)) => film_s(&f).max(film_s(o)),
            _ => film_s(&f),
        };
        self.clock.end_s.set(end_s);
        let _ = self.clock.now_s.try_set(0.0);
        match step {
            Step::Play => self.clock.play_at(1.0, vec![]),
            Step::Slow => self.clock.play_at(SLOW, stops_s(&f.report.trace)),
            Step::Both => self.clock.play_at(QUARTER, vec![]),
            Step::Verdict => self.clock.seek(told_s(&f)),
            _ => self.clock.seek(0.0),
        }
    }
}

/// A browser goes full screen only for a key or a click of the moment.
fn just_touched() -> bool {
    let navigator: JsValue = window().navigator().into();
    let get = |o: &JsValue, k: &str| js_sys::Reflect::get(o, &k.into()).ok();
    get(&navigator, "userActivation").and_then(|a| get(&a, "isActive")).is_some_and(|b| b.is_truthy())
}

fn full_screen() {
    if document().fullscreen_element().is_some() {
        document().exit_fullscreen();
    } else if let Some(e) = document().document_element().filter(|_| just_touched()) {
        let _ = e.request_fullscreen();
    }
}

/// The light wall unless the dark one is chosen, whatever the page is shown in.
fn dress(session: RwSignal<Session>) {
    let root = || document().document_element();
    let before = StoredValue::new(root().and_then(|e| e.get_attribute("data-theme")));
    let dark = Memo::new(move |_| session.with(|s| s.dark));
    Effect::new(move |_| {
        if let Some(e) = root() {
            let _ = e.set_attribute("data-theme", if dark.get() { "dark" } else { "light" });
        }
        if let Some(body) = document().body() {
            let _ = body.class_list().add_1("wall-on");
        }
    });
    on_cleanup(move || {
        if let (Some(e), Some(t)) = (root(), before.try_get_value().flatten()) {
            let _ = e.set_attribute("data-theme", &t);
        }
        if let Some(body) = document().body() {
            let _ = body.class_list().remove_1("wall-on");
        }
    });
}

/// The room.
#[component]
pub fn Wall() -> impl IntoView {
    view::fill_the_window();
    let (visit, settings) = (visit(), settings());
    let session = RwSignal::new(store::load_session().unwrap_or_else(|| Session::of("", vec![], 0.0)));
    let falls = Falls::new();
    let clock = Clock::new();
    let place = Memo::new(move |_| visit.set_up.with(|s| s.place.clone()));
    let wished = StoredValue::new(None::<Callback<Said>>);
    let line = Line::open(move |said| {
        if let Some(Some(then)) = wished.try_get_value() {
            then.run(said);
        }
    });
    let on = On { session, falls, clock, unkept: RwSignal::new(false), blocked: RwSignal::new(false) };
    // Another window has become the wall: this one only waits.
    let elsewhere = RwSignal::new(false);
    let mine = js_sys::Math::random();
    wished.set_value(Some(Callback::new(move |said| match said {
        Said::Wall(other) if other != mine => elsewhere.set(true),
        _ if elsewhere.get_untracked() => {}
        Said::Wish(w) => on.wish(w),
        Said::Hello => line.say(&Said::Now(Box::new(session.get_untracked()))),
        _ => {}
    })));
    line.say(&Said::Wall(mine));
    let here = Callback::new(move |()| {
        if let Some(s) = store::load_session() {
            session.set(s);
        }
        elsewhere.set(false);
        line.say(&Said::Wall(mine));
    });
    // Every change is kept, and told to the second window.
    Effect::new(move |_| {
        let now = session.get();
        if elsewhere.get_untracked() {
            return;
        }
        on.unkept.set(!now.turns.is_empty() && !store::keep_session(&now));
        line.say(&Said::Now(Box::new(now)));
    });
    let gone = move || {
        if elsewhere.try_get_untracked() == Some(false) {
            line.say(&Said::Gone);
        }
    };
    on_cleanup(gone);
    view::on_window("pagehide", gone);
    // The falls of what is shown and of its partner, asked for before they are wanted.
    let now = Memo::new(move |_| session.with(|s| s.now().map(|t| (t.demo.clone(), t.partner.clone()))));
    Effect::new(move |_| {
        let Some((d, partner)) = now.get() else { return };
        let place = place.get();
        falls.ask(&d, &place);
        if let Some(p) = partner {
            falls.ask(&p, &place);
        }
    });
    // Once it is there, the session knows how it ended.
    Effect::new(move |_| {
        let Some((d, _)) = now.get() else { return };
        if falls.is_bad(d.id) && session.with_untracked(|s| s.now().is_some_and(|t| t.came != Some(None))) {
            return session.update(|s| s.came(d.id, None));
        }
        if let Some(f) = falls.of(d.id)
            && session.with_untracked(|s| s.now().is_some_and(|t| t.came != Some(f.ended())))
        {
            session.update(|s| s.came(d.id, f.ended()));
        }
    });
    // Each step sets the clock going; so does 'again', and a fall that comes late.
    let starts = Memo::new(move |_| {
        let there =
            now.get().map(|(d, p)| (falls.of(d.id).is_some(), p.is_some_and(|p| falls.of(p.id).is_some())));
        session.with(|s| (s.at, s.step.number(), s.again, there))
    });
    Effect::new(move |_| {
        starts.get();
        on.start();
    });
    let keys = window_event_listener(leptos::ev::keydown, move |ev| {
        let name = ev.key();
        if name == "F5" || name == "Escape" {
            // Many clickers send these for 'start'; a reload would end the show.
            return ev.prevent_default();
        }
        // A key that is held down is one wish.
        if ev.repeat() {
            return ev.prevent_default();
        }
        let digit = ev.code().starts_with("Digit") && ev.shift_key();
        // A button under the keyboard's hand keeps its own Enter and Space.
        let at_button = matches!(name.as_str(), " " | "Enter")
            && document().active_element().is_some_and(|e| e.tag_name() == "BUTTON");
        if ev.ctrl_key() || ev.meta_key() || ev.alt_key() || at_button || elsewhere.get_untracked() {
            return;
        }
        let wish = Wish::of_key(if digit { ev.code() } else { name }.as_str(), ev.shift_key());
        if let Some(w) = wish {
            ev.prevent_default();
            on.wish(w);
        }
    });
    on_cleanup(move || keys.remove());
    dress(session);
    view::to_view("wall");
    let over = Memo::new(move |_| session.with(Session::is_over));
    let blank = Memo::new(move |_| session.with(|s| s.blank));
    view! {
        <main class="page wall" id="wall" tabindex="-1" aria-label=settings.s(T::WallKeys) class:blank=move || blank.get()>
            {move || match (blank.get(), over.get()) {
                _ if elsewhere.get() => view! { <div class="wall-over" role="alert"><h1>{settings.s(T::WallElsewhere)}</h1>
                    <div class="next"><button type="button" class="main" id="wall-here" on:click=move |_| here.run(())>{settings.s(T::WallHere)}</button></div></div> }.into_any(),
                (true, _) => ().into_any(),
                (false, true) => view! { <Over on=on /> }.into_any(),
                (false, false) => view! { <Showing on=on place=place /> }.into_any(),
            }}
            <Bar on=on />
        </main>
    }
}

/// Picture and strip of a step.
#[component]
fn Showing(on: On, place: Memo<String>) -> impl IntoView {
    let settings = settings();
    let one = Memo::new(move |_| on.shown(&place.get()).map(SameShown));
    let both = Memo::new(move |_| {
        let is_both = on.session.with(|s| s.step == Step::Both);
        is_both.then(|| on.pair(&place.get())).flatten().map(|[a, b]| (SameShown(a), SameShown(b)))
    });
    let step = Memo::new(move |_| on.session.with(|s| s.step));
    let swapped = Memo::new(move |_| on.session.with(|s| s.swapped));
    let pictures = move || {
        if step.get() != Step::Both {
            return view! { <Picture shown=one clock=on.clock /> }.into_any();
        }
        let side = |second: bool| {
            Memo::new(move |_| both.get().map(|(a, b)| if second == swapped.get() { a } else { b }))
        };
        let tag = |second: bool| {
            move || {
                let changed = second != swapped.get();
                let fact = both.get().map(|(a, b)| {
                    let (q, o) = if changed { (&b.0, &a.0) } else { (&a.0, &b.0) };
                    facts::beside(settings.reader(), (&q.demo, &q.s), (&o.demo, &o.s), a.0.demo.part)
                });
                view! { <p class="wall-tag"><small>{settings.t(if changed { T::Changed } else { T::First })}</small>" "{fact}</p> }
            }
        };
        view! {
            <div class="wall-both">
                <div class="wall-half"><Picture shown=side(false) clock=on.clock />{tag(false)}</div>
                <div class="wall-half"><Picture shown=side(true) clock=on.clock />{tag(true)}</div>
            </div>
        }
        .into_any()
    };
    let lens = move || {
        let q = one.get()?.0;
        if !matches!(q.step, Step::Ask | Step::Locked | Step::Change) {
            return None;
        }
        let fact = facts::fact(settings.reader(), &q.demo, &q.s);
        let close = facts::close_up(&q.demo, &q.s).map(|all| {
            let paths = all.into_iter().map(|(c, d)| view! { <path class=c d=d /> }).collect_view();
            view! { <svg class="lens" viewBox="0 0 120 120" aria-hidden="true">{paths}</svg> }
        });
        Some(view! { <div class="wall-lens">{close}<p>{fact}</p></div> })
    };
    let clock_now = move || {
        let runs = matches!(step.get(), Step::Play | Step::Slow | Step::Both);
        runs.then(|| {
            let time = settings.reader().q(Quantity::Time, on.clock.now_s.get(), Rounding::Nearest);
            view! { <p class="wall-clock" aria-hidden="true">{time}</p> }
        })
    };
    let title = move || on.session.with(|s| s.now().map(|t| settings.t(t.demo.family.label())));
    view! {
        <div class="wall-pane">
            {pictures}
            <h1 class="wall-title">{title}</h1>
            {lens}{clock_now}
            {move || (step.get() == Step::Verdict).then(|| view! { <Tally on=on /> })}
        </div>
        <Strip on=on />
    }
}

/// What the room said, what happened ticked and framed.
#[component]
fn Tally(on: On) -> impl IntoView {
    let settings = settings();
    let turn = Memo::new(move |_| on.session.with(|s| s.now().cloned()));
    move || {
        let t = turn.get().filter(|t| t.counted() > 0)?;
        let rows = t
            .demo
            .answers()
            .into_iter()
            .zip(t.hands)
            .map(|(e, n)| {
                let came = t.came == Some(Some(e));
                view! { <li class:came=came><span>{came.then_some("✓ ")}{settings.t(e.label())}</span><b>{n}</b></li> }
            })
            .collect_view();
        Some(view! { <ul class="wall-tally">{rows}</ul> })
    }
}

/// The strip: one sentence, and one second line or four boxes; dots for the step.
#[component]
fn Strip(on: On) -> impl IntoView {
    let settings = settings();
    let turn = Memo::new(move |_| on.session.with(|s| s.now().cloned()));
    let step = Memo::new(move |_| on.session.with(|s| s.step));
    let now_told = Memo::new(move |_| {
        let r = settings.reader();
        let (t, f) = (turn.get(), on.fallen());
        let name = f
            .as_ref()
            .filter(|f| f.swing.is_none())
            .map(|f| moment(r, &f.report.trace, on.clock.now_s.get()));
        match step.get() {
            Step::Play | Step::Slow => name.or_else(|| t.map(|t| r.t(t.demo.family.label()).to_owned())),
            _ => None,
        }
    });
    let sentence = move || {
        let t = turn.get()?;
        let r = settings.reader();
        let lang = settings.lang.get();
        let f = on.fallen();
        Some(match step.get() {
            Step::Scene => view! { <strong>{r.t(T::Notice)}</strong> }.into_any(),
            Step::Ask => {
                view! { <strong>{r.t(if t.demo.is_along() { T::WhereGoes } else { T::SlipsHands })}</strong> }
                    .into_any()
            }
            Step::Locked => {
                view! { <strong><b class="padlock" aria-hidden="true"></b>{locked(r, &t)}</strong> }
                    .into_any()
            }
            Step::Play | Step::Slow => view! { <strong>{now_told}</strong> }.into_any(),
            Step::Change => view! { <strong>{r.t(T::WouldChange)}</strong> }.into_any(),
            Step::Verdict => match f {
                Some(f) => {
                    let (severity, words) = verdict(r, &f);
                    view! { {mark(severity)}<strong>{words}</strong> }.into_any()
                }
                None if t.came == Some(None) => view! { <strong>{r.t(T::NotShown)}</strong> }.into_any(),
                None => view! { <strong>{r.t(crate::texts::Key::Computing)}</strong> }.into_any(),
            },
            Step::Both => {
                let name = t.partner.as_ref().map_or("", |p| lang.of(&p.name));
                view! { <strong>{r.f(T::OneChange, &[("name", name)])}</strong> }.into_any()
            }
        })
    };
    let done = Memo::new(move |_| on.is_done());
    let second = move || {
        let t = turn.get()?;
        let r = settings.reader();
        let f = on.fallen();
        let line = match step.get() {
            Step::Ask => return Some(boxes(on, &t, t.hands, t.demo.answers().map(|e| r.t(e.label())), r)),
            Step::Change => {
                let parts = [T::PartGrab, T::PartAnchor, T::PartLine, T::PartPlace].map(|w| r.t(w));
                return Some(boxes(on, &t, t.changes, parts, r));
            }
            Step::Scene => String::new(),
            Step::Locked => r.t(T::LockedSecond).to_owned(),
            Step::Play => r.t(T::TrueSpeed).to_owned(),
            Step::Slow => r.t(T::Eighth).to_owned(),
            Step::Verdict => {
                let figure = f
                    .as_ref()
                    .filter(|f| f.swing.is_none() && f.ended() != Some(Ends::Asks))
                    .map(|f| say::headline(r, &f.report).figure);
                let saw = t
                    .foresaw()
                    .filter(|_| t.counted() > 0)
                    .map(|n| r.f(T::SawIt, &[("n", &n.to_string()), ("all", &t.counted().to_string())]));
                saw.into_iter().chain(figure).collect::<Vec<_>>().join("  ")
            }
            Step::Both => {
                let other = t.partner.as_ref().and_then(|p| on.falls.of(p.id));
                match (f, other) {
                    // What came of both is told once both have been seen.
                    (Some(a), Some(b)) if done.get() => {
                        r.f(T::OneEffect, &[("first", &verdict(r, &a).1), ("second", &verdict(r, &b).1)])
                    }
                    _ => r.t(T::QuarterBoth).to_owned(),
                }
            }
        };
        Some(view! { <p class="wall-second">{line}</p> }.into_any())
    };
    let dots = move || {
        let now = step.get().number();
        let all = (0..8).map(|i| view! { <i class:done=i < now class:now=i == now></i> }).collect_view();
        view! { <span class="wall-dots" aria-hidden="true">{all}</span> }
    };
    view! {
        <section class="wall-strip">
            <div class="wall-line" role="status">{sentence}</div>{dots}
            {second}
        </section>
    }
}

fn locked(r: Reader, t: &Turn) -> String {
    let name = |i: usize| r.t(t.demo.answers()[i].label()).to_lowercase();
    let all = t.counted().to_string();
    match t.lead() {
        Lead::Nobody => r.t(T::Locked).to_owned(),
        Lead::One(i, n) => r.f(T::LockedOne, &[("n", &n.to_string()), ("all", &all), ("what", &name(i))]),
        Lead::Split(most) => {
            let first: Vec<String> =
                (0..4).filter(|i| t.hands[*i] == most).map(|i| format!("{most} {}", name(i))).collect();
            r.f(T::LockedSplit, &[("what", &first.join(", "))])
        }
    }
}

/// Four boxes with key, word, bar and count: a tap is a hand.
fn boxes(on: On, t: &Turn, hands: [u32; 4], words: [&'static str; 4], r: Reader) -> AnyView {
    let most = hands.iter().copied().max().unwrap_or(0).max(1);
    let _ = t;
    let all = words
        .into_iter()
        .zip(hands)
        .enumerate()
        .map(|(i, (word, n))| {
            let width = format!("width:{:.0}%", 100.0 * f64::from(n) / f64::from(most));
            view! {
                <button type="button" class="wall-box" on:click=move |_| on.wish(Wish::Up(i as u8))>
                    <span class="bar-of" aria-hidden="true" prop:style=width></span>
                    <span><small aria-hidden="true">{i + 1}</small>" "{word}</span>" "<b>{n}</b>
                    <span class="vh">{r.f(T::HandsUp, &[("what", "")])}</span></button>
            }
        })
        .collect_view();
    view! { <div class="wall-boxes">{all}</div> }.into_any()
}

/// A bar that shows while the pointer moves, and for whoever comes by keyboard.
#[component]
fn Bar(on: On) -> impl IntoView {
    let settings = settings();
    let seen = RwSignal::new(false);
    let turn = StoredValue::new(0_u32);
    let moves = window_event_listener(leptos::ev::pointermove, move |_| {
        turn.update_value(|t| *t += 1);
        let mine = turn.get_value();
        seen.set(true);
        set_timeout(
            move || {
                if turn.try_get_value() == Some(mine) {
                    let _ = seen.try_set(false);
                }
            },
            BAR_FOR,
        );
    });
    on_cleanup(move || moves.remove());
    let button = move |w: Wish, key: T, id: &'static str| {
        // The keys go on working: a clicker's space is not this button's.
        let go = move |_| {
            on.wish(w);
            view::to_view("wall");
        };
        view! { <button type="button" id=id on:click=go>{settings.s(key)}</button> }
    };
    let next = move || on.session.with(next_name);
    let over = move || on.session.with(Session::is_over);
    view! {
        <div class="wall-bar" class:seen=move || seen.get()>
            {button(Wish::Back, T::DoBack, "wall-back")}
            <Show when=move || !over()><button type="button" class="main" id="wall-next" on:click=move |_| { on.wish(Wish::Next); view::to_view("wall") }>{move || settings.t(next())}</button></Show>
            {button(Wish::Blank, T::DoBlank, "wall-blank")}{button(Wish::Again, T::DoAgain, "wall-again")}{button(Wish::Swap, T::DoSwap, "wall-swap")}
            {button(Wish::Dark, T::DoDark, "wall-dark")}{button(Wish::Full, T::DoFull, "wall-full")}{button(Wish::Second, T::DoSecond, "wall-second")}
            <button type="button" id="wall-leave" on:click=move |_| view::go(View::Trainer)>{settings.s(T::Leave)}</button>
            <div role="alert">{move || on.unkept.get().then(|| view! { <p class="problems">{settings.t(T::NotKept)}</p> })}
                {move || on.blocked.get().then(|| view! { <p class="problems">{settings.t(T::PopupBlocked)}</p> })}</div>
        </div>
    }
}

/// What 'on' does now.
pub fn next_name(s: &Session) -> T {
    let last = s.now().is_none_or(|t| t.partner.is_none() || t.came == Some(None));
    match s.step {
        Step::Scene => T::DoAsk,
        Step::Ask => T::DoLock,
        Step::Locked => T::DoPlay,
        Step::Play => T::DoSlow,
        Step::Slow => T::DoTell,
        Step::Verdict => T::DoChange,
        Step::Change if !last => T::DoBoth,
        _ if s.at + 1 < s.turns.len() => T::DoNext,
        _ => T::DoEnd,
    }
}

/// What the room said: hands by answer; empty where nobody was counted.
pub fn said(r: Reader, t: &Turn) -> String {
    let hands = t.demo.answers().into_iter().zip(t.hands).filter(|(_, n)| *n > 0);
    hands.map(|(e, n)| format!("{n} {}", r.t(e.label()).to_lowercase())).collect::<Vec<_>>().join(", ")
}

/// How it came out, in a word.
pub fn came(r: Reader, t: &Turn) -> String {
    t.came.flatten().map_or("—".to_owned(), |e| r.t(e.label()).to_lowercase())
}

/// What a turn came to, as a sentence.
pub fn told(r: Reader, t: &Turn) -> String {
    let name = r.lang.of(&t.demo.name);
    let said = if t.counted() == 0 { r.t(T::NobodyCounted).to_owned() } else { said(r, t) };
    r.f(T::WhatSaid, &[("name", name), ("said", &said), ("came", &came(r, t))])
}

/// The session has ended: what was said and what happened.
#[component]
fn Over(on: On) -> impl IntoView {
    let settings = settings();
    let list = move || {
        let r = settings.reader();
        on.session.with(|s| {
            s.turns.iter().filter(|t| t.told).map(|t| view! { <li>{told(r, t)}</li> }).collect_view()
        })
    };
    let any = move || on.session.with(|s| s.turns.iter().any(|t| t.told));
    view! {
        <div class="wall-over">
            <h1 id="wall-over" tabindex="-1">{move || settings.t(if on.session.with(|s| s.turns.is_empty()) { T::NoSession } else { T::SessionOver })}</h1>
            <ul>{list}</ul>
            <div class="next">
                <button type="button" id="to-trainer" on:click=move |_| view::go(View::Trainer)>{settings.s(T::BackToTrainer)}</button>
                <Show when=any><button type="button" class="main" id="to-record" on:click=move |_| view::go(View::Held)>{settings.s(T::ToRecord)}</button></Show>
            </div>
        </div>
    }
}
