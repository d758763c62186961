//! Putting the harness on: a large figure from both sides, nine steps in any order, and the fall in what is left wrong
//! beside the same fall rightly worn.

use super::bar::RoomBar;
use super::pair::{Clock, Panel, Side, film_s, frame};
use super::visit;
use crate::physics::trace::Trace;
use crate::practice::harness::*;
use crate::practice::inspection::Look;
use crate::rules::Severity;
use crate::scenario::{LabelState, WebbingState};
use crate::scene::harness::{BOX, back, front, ring_at};
use crate::scene::lens;
use crate::texts::Gear as T;
use crate::texts::Room as W;
use crate::texts::say::{self, Reader, lower_first};
use crate::texts::{Key, Lang, Stage as S};
use crate::ui::shared::asking;
use crate::ui::shared::settings::{Settings, settings};
use crate::ui::shared::signs::mark;
use crate::ui::shared::view::{self, View};
use crate::units::{Quantity, Rounding, Units};
use crate::worker::questions::FallWorn;
use leptos::html::Div;
use leptos::prelude::*;
use std::sync::Arc;
use wasm_bindgen::JsCast;

/// Pixels of the box that a leg strap is pulled for a centimetre of slack.
const PULL: f64 = 5.0;

/// What the room does.
#[derive(Clone, Copy, PartialEq)]
enum Doing {
    /// One's own is put on.
    Own,
    /// Another's is looked at.
    Another,
    /// Both fall.
    Falls,
}

/// The signals of the room.
#[derive(Clone, Copy)]
struct Dress {
    worn: RwSignal<Harness>,
    step: RwSignal<Step>,
    doing: RwSignal<Doing>,
    /// Another's, and the steps marked on it.
    other: RwSignal<Harness>,
    marked: RwSignal<Vec<Step>>,
    said: RwSignal<bool>,
    /// What a look at webbing and label shows, and what was said of each: fit, or not.
    seen: RwSignal<(WebbingState, LabelState)>,
    fit: RwSignal<[Option<bool>; 2]>,
}

impl Dress {
    fn shown(self) -> Harness {
        if self.doing.get() == Doing::Another { self.other.get() } else { self.worn.get() }
    }

    fn open(self) -> bool {
        self.doing.get_untracked() == Doing::Own
    }
}

/// How a step stands, in words; no judgement.
fn state(r: Reader, h: &Harness, step: Step) -> String {
    let yes = |is: bool, a: T, b: T| r.t(if is { a } else { b }).to_owned();
    let leg = |i: usize| yes(h.legs[i].closed, T::Closed, T::Open);
    match step {
        Step::LookOver => yes(h.looked, T::DoneYet, T::NotYet),
        Step::ShakeOut => yes(h.shaken, T::DoneYet, T::NotYet),
        Step::Shoulders => yes(h.twisted, T::Twisted, T::Flat),
        Step::Chest => chest(r, h.chest).to_owned(),
        Step::Legs if h.legs[0].closed == h.legs[1].closed => leg(0),
        Step::Legs => format!(
            "{}{}{}, {}{}{}",
            r.t(T::LeftLeg).to_lowercase(),
            r.colon(),
            leg(0),
            r.t(T::RightLeg).to_lowercase(),
            r.colon(),
            leg(1)
        ),
        Step::Snug => format!("{}, {}", small(r, h.legs[0].slack_cm), small(r, h.legs[1].slack_cm)),
        Step::Tails => yes(h.tucked, T::Tucked, T::Loose),
        Step::Ring => ring(r, h.ring).to_owned(),
        Step::Other => yes(h.checked, T::DoneYet, T::NotYet),
    }
}

/// A few centimetres, or inches to the half above.
fn small(r: Reader, cm: u32) -> String {
    match (r.units, r.lang) {
        (Units::Metric, _) => format!("{cm}\u{a0}cm"),
        (Units::FeetPounds, lang) => {
            let halves = (f64::from(cm) / 2.54 * 2.0).ceil();
            let number = format!("{}", halves / 2.0);
            if lang == Lang::En {
                format!("{number}\u{a0}in")
            } else {
                format!("{}\u{a0}po", number.replace('.', ","))
            }
        }
    }
}

fn chest(r: Reader, c: Chest) -> &'static str {
    r.t(match c {
        Chest::Open => T::Open,
        Chest::Closed => T::Closed,
        Chest::High => T::TooHigh,
    })
}

fn ring(r: Reader, at: Ring) -> &'static str {
    r.t(match at {
        Ring::Blades => T::Blades,
        Ring::Low => T::RingLow,
        Ring::Waist => T::Waist,
        Ring::Aside => T::Aside,
    })
}

const CHESTS: [Chest; 3] = [Chest::Open, Chest::Closed, Chest::High];
const RINGS: [Ring; 4] = [Ring::Blades, Ring::Low, Ring::Waist, Ring::Aside];

/// Names of faults as one list.
fn names(r: Reader, all: &[Fault]) -> String {
    if all.is_empty() {
        return r.t(T::Nothing).to_owned();
    }
    all.iter().map(|f| r.t(f.label())).collect::<Vec<_>>().join(", ")
}

/// The gravest three, and how many more.
fn gravest(r: Reader, all: &[Fault]) -> String {
    let more = all.len().saturating_sub(3);
    let first = names(r, &all[..all.len().min(3)]);
    if more > 0 { format!("{first} (+ {more})") } else { first }
}

/// The room.
#[component]
pub fn HarnessRoom() -> impl IntoView {
    view::fill_the_window();
    let (visit, settings) = (visit(), settings());
    let d = Dress {
        worn: RwSignal::new(Harness::pulled_on()),
        step: RwSignal::new(Step::LookOver),
        doing: RwSignal::new(Doing::Own),
        other: RwSignal::new(Harness::right()),
        marked: RwSignal::new(vec![]),
        said: RwSignal::new(false),
        seen: RwSignal::new(from_the_hook((js_sys::Math::random() * 1e9) as u64)),
        fit: RwSignal::new([None; 2]),
    };
    let falls = RwSignal::new(None::<(Arc<Trace>, Arc<Trace>)>);
    let missing = RwSignal::new(false);
    let clock = Clock::new();
    let set_up = case(&visit.set_up.with_untracked(|s| s.place.clone()));
    let kept = StoredValue::new(set_up);
    // What a change came to is said.
    Effect::new(move |old: Option<Harness>| {
        let now = d.worn.get();
        if old.is_some_and(|o| o != now) {
            let r = settings.reader_now();
            let step = d.step.get_untracked();
            visit.said.set(format!("{}{}{}", r.t(step.label()), r.colon(), state(r, &now, step)));
        }
        now
    });
    let let_go = Callback::new(move |()| {
        let Ok(checked) = kept.with_value(|s| s.set_up()) else { return };
        let worn = d.worn.get_untracked().worn();
        d.doing.set(Doing::Falls);
        falls.set(None);
        let right = FallWorn { set_up: checked.clone(), worn: Harness::right().worn() };
        asking::ask(right, move |first| {
            asking::ask(FallWorn { set_up: checked, worn }, move |second| match (first, second) {
                (Ok(x), Ok(y)) => {
                    let both = (Arc::new(x), Arc::new(y));
                    let _ = clock.end_s.try_set(film_s(&both) + 0.6);
                    let _ = falls.try_set(Some(both));
                    clock.play();
                    view::to_view("harness-told");
                }
                _ => {
                    let _ = missing.try_set(true);
                    let _ = d.doing.try_set(Doing::Own);
                }
            });
        });
    });
    let dressing = move || {
        view! { <div class="dressing"><Steps d=d /><Figures d=d /><Card d=d /></div> }
    };
    view! {
        <main class="page harness">
            <RoomBar back=W::BackToList to=Callback::new(|()| view::go(View::Lessons)) title=settings.s(T::HarnessName) />
            <Show when=move || missing.get()><p class="problems" role="alert">{settings.s(Key::EngineMissing)}</p></Show>
            {move || if d.doing.get() == Doing::Falls { view! { <Both kept=kept falls=falls clock=clock /> }.into_any() } else { dressing().into_any() }}
            <section class="strip harness-strip">
                {move || match d.doing.get() {
                    Doing::Falls => view! { <Told d=d falls=falls clock=clock /> }.into_any(),
                    Doing::Another => view! { <Another d=d /> }.into_any(),
                    Doing::Own => view! { <Own d=d let_go=let_go /> }.into_any(),
                }}
            </section>
        </main>
    }
}

/// The nine steps: which one is in hand, and how each stands.
#[component]
fn Steps(d: Dress) -> impl IntoView {
    let settings = settings();
    let all = Step::ALL
        .into_iter()
        .enumerate()
        .map(|(i, step)| {
            let marked = move || d.doing.get() == Doing::Another && d.marked.with(|m| m.contains(&step));
            let under = move || {
                if d.doing.get() == Doing::Another {
                    return settings.t(step.says()).to_owned();
                }
                state(settings.reader(), &d.shown(), step)
            };
            view! {
                <label class="dress-step" class:marked=marked>
                    <input type="radio" name="dress-step" id=format!("dress-{}", i + 1) prop:checked=move || d.step.get() == step on:change=move |_| d.step.set(step) />
                    <b aria-hidden="true">{i + 1}</b><span><strong>{settings.s(step.label())}</strong><small>{under}</small></span>
                    {move || marked().then(|| view! { <em>"✕"<span class="vh">{settings.t(T::MarkIt)}</span></em> })}
                </label>
            }
        })
        .collect_view();
    view! { <fieldset class="dress-steps"><legend class="vh">{settings.s(T::HarnessName)}</legend>{all}</fieldset> }
}

/// What is under a finger on the figure.
#[derive(Clone, Copy, PartialEq)]
enum Grip {
    Ring,
    Chest,
    Leg(usize),
    Twist,
    Tails,
}

/// Both views, with what can be pulled.
#[component]
fn Figures(d: Dress) -> impl IntoView {
    let settings = settings();
    let node = NodeRef::<Div>::new();
    let size = RwSignal::new((0.0, 0.0));
    Effect::new(move |_| {
        if let Some(e) = node.get() {
            view::watch_size(&e, size);
        }
    });
    // Where there is little room the picture comes near to what is in hand.
    let shown = Memo::new(move |_| {
        let (wide_px, tall_px) = size.get();
        let near = wide_px < 400.0 || tall_px < 330.0;
        match d.step.get() {
            Step::Shoulders | Step::Chest | Step::Tails if near => (-95.0, 84.0, 190.0, 216.0),
            Step::Ring if near => (-95.0, 84.0, 190.0, 216.0),
            Step::Legs | Step::Snug if near => (-95.0, 244.0, 190.0, 180.0),
            _ => BOX,
        }
    });
    let view_box = move || {
        let (x, y, w, h) = shown.get();
        format!("{x} {y} {w} {h}")
    };
    let held = StoredValue::new(None::<(Grip, f64, Harness, bool)>);
    let take = move |grip: Grip| {
        move |ev: web_sys::PointerEvent| {
            if !d.open() {
                return;
            }
            ev.prevent_default();
            if let Some(e) = ev.current_target().and_then(|t| t.dyn_into::<web_sys::Element>().ok()) {
                let _ = e.set_pointer_capture(ev.pointer_id());
            }
            d.step.set(match grip {
                Grip::Ring => Step::Ring,
                Grip::Chest => Step::Chest,
                Grip::Leg(_) => Step::Snug,
                Grip::Twist => Step::Shoulders,
                Grip::Tails => Step::Tails,
            });
            held.set_value(Some((grip, f64::from(ev.client_y()), d.worn.get_untracked(), false)));
        }
    };
    let moves = move |ev: web_sys::PointerEvent| {
        let Some((grip, from_px, was, moved)) = held.get_value() else { return };
        let Some(e) = ev.current_target().and_then(|t| t.dyn_into::<web_sys::Element>().ok()) else { return };
        let tall = e.closest("svg").ok().flatten().map_or(1.0, |s| s.get_bounding_client_rect().height());
        let by = (f64::from(ev.client_y()) - from_px) * shown.get_untracked().3 / tall.max(1.0);
        if !moved && by.abs() < 6.0 {
            return;
        }
        held.set_value(Some((grip, from_px, was, true)));
        let mut h = was;
        match grip {
            Grip::Ring => {
                let y = ring_at(was.ring).1 + by;
                let near = |a: &&Ring| (ring_at(**a).1 - y).abs();
                let down = [Ring::Blades, Ring::Low, Ring::Waist];
                if let Some(n) = down.iter().min_by(|a, b| near(a).total_cmp(&near(b))) {
                    h.ring = *n;
                }
            }
            Grip::Leg(i) => {
                let cm = (f64::from(was.legs[i].slack_cm) + by / PULL).round();
                h.legs[i].slack_cm = cm.max(0.0).min(f64::from(MOST_CM)) as u32;
            }
            _ => {}
        }
        d.worn.set(h);
    };
    // A tap changes what has two states.
    let end = move |_: web_sys::PointerEvent| {
        let Some((grip, _, was, moved)) = held.get_value() else { return };
        held.set_value(None);
        if moved {
            return;
        }
        let mut h = was;
        match grip {
            Grip::Chest => h.chest = if was.chest == Chest::Closed { Chest::Open } else { Chest::Closed },
            Grip::Leg(i) => h.legs[i].closed = !was.legs[i].closed,
            Grip::Twist => h.twisted = !was.twisted,
            Grip::Tails => h.tucked = !was.tucked,
            Grip::Ring => {}
        }
        d.worn.set(h);
    };
    let grip = move |g: Grip, (x, y): (f64, f64), r: f64| {
        let here = move || {
            let step = d.step.get();
            match g {
                Grip::Ring => step == Step::Ring,
                Grip::Chest => step == Step::Chest,
                Grip::Leg(_) => matches!(step, Step::Legs | Step::Snug),
                Grip::Twist => step == Step::Shoulders,
                Grip::Tails => step == Step::Tails,
            }
        };
        view! { <circle class="dress-grip" class:here=here cx=x cy=y r=r on:pointerdown=take(g) on:pointermove=moves on:pointerup=end on:pointercancel=move |_| held.set_value(None) /> }
    };
    let paths = |all: crate::scene::lens::Lens| {
        all.into_iter().map(|(c, d)| view! { <path class=c d=d /> }).collect_view()
    };
    let words = move || {
        let r = settings.reader();
        let all = Step::ALL.map(|s| format!("{}{}{}", r.t(s.label()), r.colon(), state(r, &d.shown(), s)));
        format!("{}. {}", r.t(T::HarnessState), all.join(". "))
    };
    let ring = move || ring_at(d.shown().ring);
    view! {
        <div class="dress-figures" node_ref=node class:from-behind=move || d.step.get().is_behind()>
            <svg class="dress-figure from-front" viewBox=view_box preserveAspectRatio="xMidYMid meet" role="img" aria-label=words>
                {move || paths(front(&d.shown()))}
                {grip(Grip::Chest, (0.0, 182.0), 26.0)}{grip(Grip::Twist, (38.0, 136.0), 20.0)}{grip(Grip::Tails, (-44.0, 254.0), 22.0)}
                {grip(Grip::Leg(1), (-36.0, 340.0), 34.0)}{grip(Grip::Leg(0), (36.0, 340.0), 34.0)}
                <text class="dress-side" x="-136" y="562">{settings.s(T::Front)}</text>
            </svg>
            <svg class="dress-figure from-back" viewBox=view_box preserveAspectRatio="xMidYMid meet" aria-hidden="true">
                {move || paths(back(&d.shown()))}
                {move || grip(Grip::Ring, ring(), 32.0)}
                <text class="dress-side" x="-136" y="562">{settings.s(T::Back)}</text>
            </svg>
        </div>
    }
}

/// Two or more states of one thing, one of them chosen.
fn pills(
    d: Dress,
    name: &'static str,
    labels: Vec<&'static str>,
    get: impl Fn(&Harness) -> usize + Copy + Send + Sync + 'static,
    set: impl Fn(&mut Harness, usize) + Copy + 'static,
) -> impl IntoView {
    let all = labels
        .into_iter()
        .enumerate()
        .map(|(i, text)| {
            view! { <label class="pill"><input type="radio" name=name prop:checked=move || d.worn.with(|h| get(h) == i)
                on:change=move |_| d.worn.update(|h| set(h, i)) /><span>{text}</span></label> }
        })
        .collect_view();
    view! { <div class="pills">{all}</div> }
}

/// Webbing and label from near: fit, or out of use. Who finds what is there has looked.
#[component]
fn Looks(d: Dress) -> impl IntoView {
    let settings = settings();
    let truth = move || d.seen.with(|s| [s.0 == WebbingState::Sound, s.1 == LabelState::Legible]);
    let say = move |i: usize, fit: bool| {
        d.fit.update(|f| f[i] = Some(fit));
        let right = d.fit.get_untracked() == untrack(truth).map(Some);
        let good = untrack(truth) == [true; 2];
        d.worn.update(|h| h.looked = right && good);
    };
    let rows = move || {
        let r = settings.reader();
        let (webbing, label) = d.seen.get();
        [Look::Webbing(webbing), Look::Label(label)].into_iter().enumerate().map(|(i, look)| {
            let paths = lens::look(look).into_iter().map(|(c, p)| view! { <path class=c d=p /> }).collect_view();
            let words = say::look(r, look);
            let all = [(true, T::LookFit), (false, T::LookOut)].map(|(fit, key)| {
                view! { <label class="pill"><input type="radio" name=format!("look-{i}") prop:checked=move || d.fit.with(|f| f[i] == Some(fit)) on:change=move |_| say(i, fit) /><span>{r.t(key)}</span></label> }
            });
            view! { <div class="dress-look"><svg class="close" viewBox="0 0 96 72" role="img" aria-label=words>{paths}</svg><div class="pills">{all}</div></div> }
        }).collect_view()
    };
    let told = move || {
        let r = settings.reader();
        let f = d.fit.get();
        if f.iter().any(Option::is_none) {
            return None;
        }
        let (webbing, label) = d.seen.get();
        let looks = [say::look(r, Look::Webbing(webbing)), say::look(r, Look::Label(label))];
        let missed: Vec<String> = looks
            .into_iter()
            .zip(f.into_iter().zip(truth()))
            .filter(|(_, (said, is))| *said != Some(*is))
            .map(|(t, _)| t)
            .collect();
        if !missed.is_empty() {
            return Some(view! { <p class="figure-line" role="status">{r.f(T::LookMissed, &[("what", &missed.join(" "))])}</p> }.into_any());
        }
        if truth() == [true; 2] {
            return None;
        }
        let another = move |_| {
            d.seen.set((WebbingState::Sound, LabelState::Legible));
            d.fit.set([None; 2]);
        };
        Some(view! { <p class="figure-line" role="status">{r.t(T::LookOutSaid)}</p><button type="button" id="look-another" on:click=another>{r.t(T::LookAnother)}</button> }.into_any())
    };
    view! { {rows}{told} }
}

/// What is done at the step in hand.
#[component]
fn Card(d: Dress) -> impl IntoView {
    let settings = settings();
    let slack = move |i: usize, what: T| {
        let cm = move || d.worn.with(|h| h.legs[i].slack_cm);
        let words = move || {
            settings
                .reader()
                .f(T::SlackOf, &[("what", settings.t(what)), ("cm", &small(settings.reader(), cm()))])
        };
        let by = move |n: i32| {
            d.worn.update(|h| {
                h.legs[i].slack_cm = h.legs[i].slack_cm.saturating_add_signed(n).min(MOST_CM);
            });
        };
        view! {
            <div class="dress-slack"><span>{words}</span>
                <button type="button" class="step" aria-label=move || format!("− {}, {}", settings.t(T::Less), settings.t(what)) on:click=move |_| by(-1)>"−"</button>
                <button type="button" class="step" aria-label=move || format!("+ {}, {}", settings.t(T::More), settings.t(what)) on:click=move |_| by(1)>"+"</button></div>
        }
    };
    let act = move || {
        let r = settings.reader();
        let done = vec![r.t(T::NotYet), r.t(T::DoneYet)];
        match d.step.get() {
            Step::LookOver => view! { <Looks d=d /> }.into_any(),
            Step::ShakeOut => {
                pills(d, "shake", done, |h| usize::from(h.shaken), |h, i| h.shaken = i == 1).into_any()
            }
            Step::Other => {
                pills(d, "other", done, |h| usize::from(h.checked), |h, i| h.checked = i == 1).into_any()
            }
            Step::Shoulders => pills(
                d,
                "twist",
                vec![r.t(T::Flat), r.t(T::Twisted)],
                |h| usize::from(h.twisted),
                |h, i| h.twisted = i == 1,
            )
            .into_any(),
            Step::Tails => pills(
                d,
                "tails",
                vec![r.t(T::Loose), r.t(T::Tucked)],
                |h| usize::from(h.tucked),
                |h, i| h.tucked = i == 1,
            )
            .into_any(),
            Step::Chest => pills(
                d,
                "chest",
                CHESTS.map(|c| chest(r, c)).to_vec(),
                |h| CHESTS.iter().position(|c| *c == h.chest).unwrap_or(0),
                |h, i| h.chest = CHESTS[i.min(2)],
            )
            .into_any(),
            Step::Ring => pills(
                d,
                "ring",
                RINGS.map(|c| ring(r, c)).to_vec(),
                |h| RINGS.iter().position(|c| *c == h.ring).unwrap_or(0),
                |h, i| h.ring = RINGS[i.min(3)],
            )
            .into_any(),
            Step::Legs => {
                let open = vec![r.t(T::Open), r.t(T::Closed)];
                view! {
                    <p class="dress-which">{r.t(T::LeftLeg)}</p>
                    {pills(d, "left", open.clone(), |h| usize::from(h.legs[0].closed), |h, i| h.legs[0].closed = i == 1)}
                    <p class="dress-which">{r.t(T::RightLeg)}</p>
                    {pills(d, "right", open, |h| usize::from(h.legs[1].closed), |h, i| h.legs[1].closed = i == 1)}
                }.into_any()
            }
            Step::Snug => view! { {slack(0, T::LeftLeg)}{slack(1, T::RightLeg)} }.into_any(),
        }
    };
    let toggle = move |_| {
        let step = d.step.get_untracked();
        d.marked.update(|m| if m.contains(&step) { m.retain(|s| *s != step) } else { m.push(step) });
    };
    view! {
        <div class="dress-card" role="group" aria-labelledby="dress-h">
            <h3 id="dress-h" tabindex="-1">{move || settings.t(d.step.get().label())}</h3>
            <p class="hint">{move || settings.t(d.step.get().says())}</p>
            {move || if d.doing.get() == Doing::Another {
                view! { <button type="button" id="mark-step" aria-pressed=move || d.marked.with(|m| m.contains(&d.step.get())).to_string() disabled=move || d.said.get() on:click=toggle>{settings.s(T::MarkIt)}</button> }.into_any()
            } else {
                view! { <fieldset><legend class="vh">{settings.t(d.step.get().label())}</legend>{act}</fieldset> }.into_any()
            }}
        </div>
    }
}

/// The strip while one's own is put on.
#[component]
fn Own(d: Dress, let_go: Callback<()>) -> impl IntoView {
    let settings = settings();
    let another = move |_| {
        d.other.set(Harness::of_another((js_sys::Math::random() * 1e9) as u64));
        d.marked.set(vec![]);
        d.said.set(false);
        d.step.set(Step::Shoulders);
        d.doing.set(Doing::Another);
        view::to_view("another-h");
    };
    view! {
        <div class="dress-foot"><p class="figure-line phone-only">{settings.s(T::HarnessShort)}</p><div class="told-lines"><p class="stem wide-only" id="harness-lead" tabindex="-1">{settings.s(T::HarnessLead)}</p><p class="figure-line wide-only">{settings.s(T::ReadyToTry)}</p></div>
            <div class="next"><button type="button" id="another" on:click=another>{settings.s(T::Another)}</button>
                <button type="button" class="main play" id="let-go-in-it" on:click=move |_| let_go.run(())>{settings.s(T::LetGo)}</button></div>
            <details class="guide"><summary>{settings.s(S::Why)}</summary><p class="hint">{settings.s(T::Caution)}" "{settings.s(T::FindPart)}</p><p class="hint">{settings.s(T::HarnessNote)}</p><p class="source">{settings.s(T::HarnessSources)}</p></details></div>
    }
}

/// Another's harness is looked at.
#[component]
fn Another(d: Dress) -> impl IntoView {
    let settings = settings();
    let told = move || {
        d.said.get().then(|| {
            let r = settings.reader();
            let all = d.other.get().faults();
            let mut there: Vec<Step> = all.iter().map(|f| f.step()).collect();
            let mut marked = d.marked.get();
            // What is slack may be marked where it is closed, and the other way round.
            for m in &mut marked {
                if *m == Step::Legs {
                    *m = Step::Snug;
                }
            }
            let key = |s: &Step| Step::ALL.iter().position(|x| x == s);
            for v in [&mut there, &mut marked] {
                v.sort_by_key(key);
                v.dedup();
            }
            let marks = d.marked.with(|m| {
                if m.is_empty() {
                    return r.t(T::Nothing).to_owned();
                }
                m.iter().map(|s| lower_first(r.t(s.label()))).collect::<Vec<_>>().join(", ")
            });
            let found = names(r, &all);
            let words = if there == marked && all.is_empty() {
                r.t(T::SaidFine).to_owned()
            } else if there == marked {
                r.f(T::SaidRight, &[("what", &found)])
            } else {
                r.f(T::SaidOther, &[("what", &found), ("said", &marks)])
            };
            let does = all.iter().map(|f| view! { <p class="figure-line">{r.t(f.does())}</p> }).collect_view();
            view! { <div class="head">{mark(if there == marked { Severity::Good } else { Severity::Major })}<div class="told-lines"><p class="sentence" id="another-told" tabindex="-1">{words}</p>{does}</div></div> }
        })
    };
    let say = move |_| {
        d.said.set(true);
        view::to_view("another-told");
    };
    let back = move |_| {
        d.doing.set(Doing::Own);
        view::to_view("dress-h");
    };
    view! {
        <div class="dress-foot">
            <Show when=move || !d.said.get()><p class="stem" id="another-h" tabindex="-1">{settings.s(T::AnotherLead)}</p></Show>
            {told}
            <div class="next"><button type="button" id="own-again" on:click=back>{settings.s(T::OwnAgain)}</button>
                <Show when=move || !d.said.get()><button type="button" class="main" id="say-it" on:click=say>{settings.s(T::SayIt)}</button></Show></div></div>
    }
}

/// The same slip twice on one clock.
#[component]
fn Both(
    kept: StoredValue<crate::scenario::Scenario>,
    falls: RwSignal<Option<(Arc<Trace>, Arc<Trace>)>>,
    clock: Clock,
) -> impl IntoView {
    let pair = kept.with_value(|s| [s.clone(), s.clone()]);
    let shown = frame(&pair);
    let none = Signal::derive(|| None::<f64>);
    let shut = Signal::derive(|| false);
    let [a, b] = pair;
    let panel = move |letter: &'static str, set_up: crate::scenario::Scenario, first: bool| {
        let fall = Signal::derive(move || {
            falls.with(|f| f.as_ref().map(|f| if first { f.0.clone() } else { f.1.clone() }))
        });
        let sides = vec![Side { letter, lens: None, flag: None }];
        shown.map(|frame| view! { <Panel sides=sides set_up=set_up frame=frame clock=clock fall=fall other_low=none open=shut /> })
    };
    view! { <div class="pair-panes">{panel("A", a, true)}{panel("B", b, false)}</div> }
}

/// What the fall in it came to.
#[component]
fn Told(d: Dress, falls: RwSignal<Option<(Arc<Trace>, Arc<Trace>)>>, clock: Clock) -> impl IntoView {
    let settings = settings();
    let more = RwSignal::new(false);
    let told = move || {
        let (x, y) = falls.get()?;
        let h = d.worn.get();
        let r = settings.reader();
        if !x.is_sound() || !y.is_sound() {
            return Some(
                view! { <p class="sentence" id="harness-told" tabindex="-1">{r.t(T::NotShown)}</p> }
                    .into_any(),
            );
        }
        Some(findings(settings, &h, &x, &y).into_any())
    };
    let table = move || {
        let (x, y) = falls.get().filter(|(x, y)| x.is_sound() && y.is_sound())?;
        let r = settings.reader();
        let (a, b) = (hung(&Harness::right(), &x), hung(&d.worn.get(), &y));
        let angle = |rad: f64| format!("{}°", rad.to_degrees().ceil());
        let len = |m: f64, how| r.q(Quantity::Length, m, how);
        let room = |t: &Trace| t.clearance_margin_m.map_or("—".to_owned(), |m| len(m, Rounding::Down));
        let force = |t: &Trace| r.q(Quantity::Force, t.peak_force_n, Rounding::Up);
        let rows = [
            (T::RowLean, angle(a.rest_rad), angle(b.rest_rad)),
            (T::RowWorst, angle(a.worst_rad), angle(b.worst_rad)),
            (T::RowSlide, len(x.harness_slide_m, Rounding::Up), len(y.harness_slide_m, Rounding::Up)),
            (T::RowRoom, room(&x), room(&y)),
            (T::RowForce, force(&x), force(&y)),
        ];
        let rows = rows
            .into_iter()
            .map(|(k, a, b)| view! { <tr><th scope="row">{r.t(k)}</th><td>{a}</td><td>{b}</td></tr> })
            .collect_view();
        Some(
            view! { <table class="analysis two"><thead><tr><td></td><th scope="col">{r.t(T::RightlyWorn)}</th><th scope="col">{r.t(T::AsWorn)}</th></tr></thead><tbody>{rows}</tbody></table> },
        )
    };
    let back = move |_| {
        clock.stop();
        if let Some(f) = d.worn.get_untracked().faults().first() {
            d.step.set(f.step());
        }
        d.doing.set(Doing::Own);
        view::to_view("dress-h");
    };
    view! {
        <div class="dress-foot result">
            {told}
            <Show when=move || more.get()>{table}<p class="hint">{settings.s(T::HarnessNote)}</p></Show>
            <div class="next">
                <button type="button" id="slow" on:click=move |_| if clock.runs.get_untracked() { clock.stop() } else { clock.play() }>
                    {move || if clock.runs.get() { settings.t(Key::Pause) } else { settings.t(S::Slow) }}</button>
                <button type="button" id="harness-why" aria-expanded=move || more.get().to_string() on:click=move |_| more.update(|m| *m = !*m)>{settings.s(S::Why)}</button>
                <button type="button" class="main" id="put-right" on:click=back>{move || settings.t(if d.worn.get().faults().is_empty() { T::HooksAgain } else { T::PutRight })}</button></div></div>
    }
}

/// The sentence, and what is still to put right with what it can do.
fn findings(settings: Settings, h: &Harness, x: &Trace, y: &Trace) -> impl IntoView + use<> {
    let r = settings.reader();
    let (a, b) = (hung(&Harness::right(), x), hung(h, y));
    let whole = |rad: f64| rad.to_degrees().ceil().to_string();
    let len = |m: f64| r.q(Quantity::Length, m, Rounding::Up);
    let faults = h.faults();
    let sentence = if b.can_slip_out {
        r.t(T::SlipsOut).to_owned()
    } else if b.rest_rad - a.rest_rad > 0.1 {
        r.f(T::HangsMore, &[("rest", &whole(b.rest_rad)), ("other", &whole(a.rest_rad))])
    } else if y.harness_slide_m - x.harness_slide_m > 0.01 {
        r.f(T::SlidesMore, &[("slide", &len(y.harness_slide_m)), ("other", &len(x.harness_slide_m))])
    } else if faults.is_empty() {
        r.f(T::AllRight, &[("rest", &whole(b.rest_rad))])
    } else {
        r.t(faults[0].does()).to_owned()
    };
    let stays = b.rest_rad > core::f64::consts::FRAC_PI_2;
    let head_down = b.worst_rad > core::f64::consts::FRAC_PI_2;
    let severity = if b.can_slip_out {
        Severity::Critical
    } else {
        faults.first().map_or(Severity::Good, |f| f.severity())
    };
    let left = (!faults.is_empty()).then(|| r.f(T::StillWrong, &[("what", &gravest(r, &faults))]));
    let does = faults.first().map(|f| r.t(f.does()));
    view! {
        <div class="head">{mark(severity)}<div class="told-lines"><p class="sentence" id="harness-told" tabindex="-1">{sentence.clone()}</p>
            {head_down.then(|| view! { <p class="figure-line">{r.t(if stays { T::StaysDown } else { T::ComesDown })}</p> })}
            {does.filter(|t| *t != sentence).map(|t| view! { <p class="figure-line">{t}</p> })}
            {left.map(|t| view! { <p class="compare">{t}</p> })}</div></div>
    }
}
