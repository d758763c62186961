//! The quiz: begin or go on, one question at a time, and what came out.

use super::asked::shown as shown_beside;
use super::desk::{Desk, Note, Sitting, desk, fresh_seed};
use super::sheet::{Sheet, Write};
use super::visit;
use crate::practice::harness::Fault;
use crate::quiz::questions::{Ask, Choice, Given, Item, ItemKind, worn_with};
use crate::quiz::{Answered, CUT_SHARE, CUTS, Mode};
use crate::rules::Severity;
use crate::scenario::Scenario;
use crate::scene::harness::{back, front as worn_front};
use crate::scene::lens::{self, Lens};
use crate::scene::pairs::half;
use crate::texts::Room as W;
use crate::texts::{Key, ask, say};
use crate::ui::shared::figure::Still;
use crate::ui::shared::front::front;
use crate::ui::shared::settings::settings;
use crate::ui::shared::signs::mark as sign_of;
use crate::ui::shared::view;
use crate::units::{Quantity, Rounding};
use crate::worker::questions::Writing;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// What is told about keeping, as long as it matters.
#[component]
pub fn Notes() -> impl IntoView {
    let (desk, settings) = (desk(), settings());
    let words = move || match desk.note.get() {
        Note::None => None,
        Note::NotKept => Some(settings.t(W::NoteNotKept)),
        Note::OtherTab => Some(settings.t(W::NoteOtherTab)),
        Note::EndedElsewhere => Some(settings.t(W::NoteEndedElsewhere)),
        Note::ClockBack => Some(settings.t(W::NoteClockBack)),
        Note::Cleared => Some(settings.t(W::NoteCleared)),
        Note::NoEngine => Some(settings.t(W::NoteNoEngine)),
        Note::NotSealed => Some(settings.t(W::NoteNotSealed)),
    };
    view! {
        <div role="alert" id="note">{move || words().map(|t| view! {
            <p class="problems"><b aria-hidden="true">"△ "</b>{t}
                " "<button type="button" on:click=move |_| desk.note.set(Note::None)>{settings.s(W::NoteGone)}</button></p>
        })}</div>
    }
}

/// The quiz view.
#[component]
pub fn Quiz() -> impl IntoView {
    let desk = desk();
    let stage = Memo::new(move |_| {
        if desk.done.with(Option::is_some) {
            2
        } else if desk.sitting.with(Option::is_some) && desk.form.with(Option::is_some) {
            1
        } else {
            0
        }
    });
    view! {
        <main class="page quiz">
            <Notes />
            {move || match stage.get() {
                0 => view! { <Begin /> }.into_any(),
                1 => view! { <Question /> }.into_any(),
                _ => view! { <Result /> }.into_any(),
            }}
        </main>
    }
}

#[component]
fn Begin() -> impl IntoView {
    let (desk, visit, settings) = (desk(), visit(), settings());
    let who = RwSignal::new(String::new());
    let trainer = RwSignal::new(String::new());
    let practice = RwSignal::new(true);
    let cut = RwSignal::new(CUT_SHARE);
    let seed = RwSignal::new(fresh_seed());
    let nameless = RwSignal::new(false);
    let begin = move |ev: web_sys::SubmitEvent| {
        ev.prevent_default();
        let mode = if practice.get_untracked() { Mode::Practice } else { Mode::Assessment };
        if mode == Mode::Assessment && who.with_untracked(|w| w.trim().is_empty()) {
            nameless.set(true);
            return;
        }
        let place = visit.set_up.with_untracked(|s| s.place.clone());
        let lang = settings.lang.get_untracked().tag();
        desk.begin(
            (who.get_untracked(), trainer.get_untracked()),
            lang,
            (place, seed.get_untracked()),
            mode,
            cut.get_untracked(),
        );
    };
    let place_name = move || {
        let id = visit.set_up.with(|s| s.place.clone());
        crate::rules::place(&id).map_or(String::new(), |p| settings.lang.get().of(&p.name).to_owned())
    };
    let pill = move |label: W, is: bool| {
        view! {
            <label class="pill"><input type="radio" name="mode" prop:checked=move || practice.get() == is
                on:change=move |_| practice.set(is) /><span>{settings.s(label)}</span></label>
        }
    };
    let halves = move || {
        desk.halves
            .get()
            .into_iter()
            .map(|s: Sitting| {
                let r = settings.reader();
                let words = r.f(
                    W::QuizHalf,
                    &[
                        ("who", if s.header.who.is_empty() { "—" } else { &s.header.who }),
                        ("done", &s.answers.len().to_string()),
                        ("all", &s.header.questions.to_string()),
                        ("day", s.header.started.get(..10).unwrap_or_default()),
                    ],
                );
                let (again, gone) = (s.clone(), s);
                view! {
                    <li><p>{words}</p><div class="row buttons">
                        <button type="button" class="main resume" on:click=move |_| desk.resume(again.clone())>{r.t(W::QuizResume)}</button>
                        <button type="button" on:click=move |_| desk.drop_half(&gone)>{r.t(W::QuizDrop)}</button></div></li>
                }
            })
            .collect_view()
    };
    view! {
        <section>
            <h2>{settings.s(W::QuizHeading)}</h2>
            <p class="lead">{settings.s(W::QuizLead)}</p>
            <Show when=move || desk.halves.with(|h| !h.is_empty())>
                <section class="card"><h3>{settings.s(W::QuizHalves)}</h3><ul class="halves">{halves}</ul></section>
            </Show>
            <form class="card" on:submit=begin>
                <fieldset><legend>{settings.s(W::QuizMode)}</legend>
                    <div class="pills">{pill(W::QuizPractice, true)}{pill(W::QuizAssessment, false)}</div>
                    <p class="hint">{move || settings.t(if practice.get() { W::QuizPracticeHint } else { W::QuizAssessmentHint })}</p>
                </fieldset>
                <label class="line"><span>{settings.s(W::QuizWho)}</span>
                    <input type="text" id="who" list="crew-names" maxlength="80" autocomplete="off" prop:value=move || who.get()
                        on:input=move |ev| { nameless.set(false); who.set(event_target_value(&ev)) } /></label>
                <datalist id="crew-names">{move || desk.crew.get().into_iter().map(|n| view! { <option value=n></option> }).collect_view()}</datalist>
                <p class="hint" role="alert">{move || nameless.get().then(|| settings.t(W::QuizNameless))}</p>
                <Show when=move || !practice.get()>
                    <label class="line"><span>{settings.s(W::QuizTrainer)}</span>
                        <input type="text" id="trainer" maxlength="80" autocomplete="off" prop:value=move || trainer.get()
                            on:input=move |ev| trainer.set(event_target_value(&ev)) /></label>
                    <label class="line"><span>{settings.s(W::QuizCut)}</span>
                        <select id="cut" on:change=move |ev| { if let Ok(x) = event_target_value(&ev).parse() { cut.set(x) } }>
                            {CUTS.map(|c| view! { <option value=c.to_string() prop:selected=move || cut.get() == c>
                                {format!("{:.0}\u{a0}%", c * 100.0)}</option> }).collect_view()}
                        </select></label>
                    <p class="hint">{settings.s(W::QuizCutHint)}</p>
                </Show>
                <label class="line"><span>{settings.s(W::QuizSeed)}</span>
                    <input type="text" inputmode="numeric" id="seed" prop:value=move || seed.get().to_string()
                        on:change=move |ev| seed.set(event_target_value(&ev).trim().parse().unwrap_or_else(|_| fresh_seed())) /></label>
                <p class="hint">{settings.s(W::QuizSeedHint)}" "{move || settings.reader().f(W::QuizPlace, &[("place", &place_name())])}</p>
                <button type="submit" class="main" id="begin" aria-disabled=move || desk.drawing.get().to_string()>
                    {move || if desk.drawing.get() { settings.t(Key::RoomsComing) } else { settings.t(W::QuizBegin) }}</button>
            </form>
            <p class="fine">{settings.s(W::QuizNotCertificate)}</p>
        </section>
    }
}

fn rows_of(list: Vec<(String, String)>) -> impl IntoView {
    let rows = list.into_iter().map(|(k, v)| view! { <div><dt>{k}</dt><dd>{v}</dd></div> }).collect_view();
    view! { <dl class="facts">{rows}</dl> }
}

/// The facts of a set-up: of several, what differs; of one, what is out of the ordinary, the rest a tap away.
fn facts(q: &Item, n: usize) -> AnyView {
    let settings = settings();
    let (kind, all) = (q.kind, q.set_ups.clone());
    (move || {
        let r = settings.reader();
        let mine = ask::facts(r, kind, &all[n]);
        if all.len() > 1 {
            let others: Vec<_> = all.iter().map(|s| ask::facts(r, kind, s)).collect();
            let list: Vec<_> = mine.into_iter().filter(|f| others.iter().any(|o| !o.contains(f))).collect();
            return (!list.is_empty()).then(|| rows_of(list).into_any());
        }
        let usual = ask::facts(r, kind, &Scenario { place: all[n].place.clone(), ..Scenario::default() });
        let (same, own): (Vec<_>, Vec<_>) = mine.into_iter().partition(|f| usual.contains(f));
        let more = (!same.is_empty()).then(|| {
            let words = r.f(W::FactsUsual, &[("n", &same.len().to_string())]);
            view! { <details class="guide usual"><summary>{words}</summary>{rows_of(same)}</details> }
        });
        Some(view! { {(!own.is_empty()).then(|| rows_of(own))}{more} }.into_any())
    })
    .into_any()
}

/// What an answer is about, from near.
fn close_up(q: &Item, c: Choice) -> Option<AnyView> {
    let draw = |all: Lens, class: &'static str, frame: &'static str| {
        let paths = all.into_iter().map(|(c, d)| view! { <path class=c d=d /> }).collect_view();
        view! { <svg class=class viewBox=frame aria-hidden="true">{paths}</svg> }.into_any()
    };
    match c {
        Choice::SetUp(n) if q.kind == ItemKind::PickAnchor => {
            Some(draw(lens::anchor(q.set_ups.get(usize::from(n))?.anchor.kind), "lens", "0 0 120 120"))
        }
        Choice::Half(h) => Some(draw(half(h), "lens", "0 0 120 120")),
        // On the back, where the ring is; the legs and the chest from in front.
        Choice::Worn(f) => {
            let h = worn_with(f)?;
            let behind = matches!(f, Fault::RingLow | Fault::RingWaist);
            Some(draw(if behind { back(&h) } else { worn_front(&h) }, "worn-figure", "-110 84 220 340"))
        }
        Choice::Part(p) => Some(draw(lens::look(p.look(q.set_ups.first()?)), "close", "0 0 96 72")),
        _ => None,
    }
}

/// Whether the answers themselves are the pictures.
fn by_picture(q: &Item) -> bool {
    matches!(q.kind, ItemKind::PickAnchor | ItemKind::Fault | ItemKind::Pair | ItemKind::Worn)
}

/// Where on the front view a pointer is, m along the wall from the anchor's plumb line.
fn along_at(ev: &web_sys::PointerEvent) -> Option<f64> {
    let place = ev.current_target()?.dyn_into::<web_sys::Element>().ok()?;
    let svg = place.query_selector("svg").ok()??;
    let seen = svg.get_bounding_client_rect();
    let shown: Vec<f64> =
        svg.get_attribute("viewBox")?.split_whitespace().filter_map(|n| n.parse().ok()).collect();
    let [x_cm, _, width_cm, height_cm] = shown[..] else { return None };
    let px = (seen.width() / width_cm).min(seen.height() / height_cm).max(1e-6);
    let left_px = seen.left() + (seen.width() - width_cm * px) / 2.0;
    Some((x_cm + (f64::from(ev.client_x()) - left_px) / px) / 100.0)
}

/// Set-ups of a question, drawn and told.
#[component]
fn SetUps(
    q: Item,
    #[prop(optional)] shown: Option<RwSignal<Scenario>>,
    /// Where along the wall the worker is shown, m.
    #[prop(optional)]
    along: Option<RwSignal<f64>>,
    /// Hears how far along somebody has dragged the worker, m.
    #[prop(optional)]
    dragged: Option<Callback<f64>>,
) -> impl IntoView {
    let settings = settings();
    if by_picture(&q) {
        return ().into_any();
    }
    if let Some(picture) = shown_beside(&q) {
        return picture;
    }
    if q.kind == ItemKind::Along {
        let s = q.set_ups[0].clone();
        let picture = move || {
            let words = say::state(settings.reader(), &s).join(" ");
            front(&s, along.map_or(0.0, |a| a.get()), None, (None, None), words)
        };
        let held = StoredValue::new(false);
        let to = move |ev: &web_sys::PointerEvent| {
            if let (Some(then), Some(m)) = (dragged, along_at(ev)) {
                then.run(m);
            }
        };
        let take = move |ev: web_sys::PointerEvent| {
            if dragged.is_some() {
                ev.prevent_default();
                held.set_value(true);
                to(&ev);
            }
        };
        let drops = move |_: web_sys::PointerEvent| held.set_value(false);
        return view! { <div class="setups"><div class="setupcard"><div class="drag-along" class:open=dragged.is_some() on:pointerdown=take
                on:pointermove=move |ev| if held.get_value() { to(&ev) } on:pointerup=drops on:pointercancel=drops on:pointerleave=drops>{picture}</div>
                {dragged.is_some().then(|| view! { <p class="hint">{settings.s(W::QuizDragAlong)}</p> })}{facts(&q, 0)}</div></div> }
            .into_any();
    }
    let several = q.set_ups.len() > 1;
    let cards = (0..q.set_ups.len())
        .map(|n| {
            let set_up = shown.unwrap_or_else(|| RwSignal::new(q.set_ups[n].clone()));
            let name = several.then(|| {
                view! { <h3>{move || settings.reader().f(W::QSetUp, &[("letter", &ask::letter(n as u8))])}</h3> }
            });
            view! { <div class="setupcard">{name}<Still set_up=set_up />{facts(&q, n)}</div> }
        })
        .collect_view();
    view! { <div class="setups" class:several=several>{cards}</div> }.into_any()
}

/// The choices after the answer: the right one with a tick, yours with a cross where it is another.
fn chosen(q: &Item, given: &Given) -> AnyView {
    let (Ask::One { choices, key }, Given::One(mine)) = (q.ask.clone(), given.clone()) else {
        return ().into_any();
    };
    let settings = settings();
    let rows = choices
        .into_iter()
        .enumerate()
        .map(|(n, c)| {
            let (right, yours) = (n as u8 == key, n as u8 == mine);
            let (class, sign) = match (right, yours) {
                (true, _) => ("card-told right", Some(Severity::Good)),
                (false, true) => ("card-told yours", Some(Severity::Critical)),
                _ => ("card-told", None),
            };
            let q2 = q.clone();
            view! { <li class=class>{close_up(q, c)}<span>{move || ask::choice(settings.reader(), &q2, c)}</span>{sign.map(sign_of)}</li> }
        })
        .collect_view();
    view! { <ul class="options-told" aria-hidden="true">{rows}</ul> }.into_any()
}

#[component]
fn Question() -> impl IntoView {
    view::fill_the_window();
    let (desk, settings) = (desk(), settings());
    let now = Memo::new(move |_| desk.open_item());
    let body = move || {
        let Some((n, q)) = now.get() else {
            // The last answer is given; the record is being sealed.
            return Some(view! { <p role="status">{settings.t(Key::Computing)}</p> }.into_any());
        };
        let count = desk.form.with(|f| f.as_ref().map_or(0, |f| f.items.len()));
        let told = desk.told.get();
        let progress = move || {
            settings.reader().f(W::QuizProgress, &[("n", &(n + 1).to_string()), ("all", &count.to_string())])
        };
        let boxes = (0..count).map(|i| view! { <i class:full=i < n class:now=i == n></i> }).collect_view();
        let given = desk.sitting.with_untracked(|s| s.as_ref().and_then(|s| s.answers.last().cloned()));
        let q2 = q.clone();
        // Each question from its top.
        view::to_view(if told { "told" } else { "stem" });
        Some(view! {
            <section class="question">
                <div class="progress"><span aria-hidden="true">{boxes}</span><p class="sev" id="progress">{progress}</p></div>
                {if told {
                    let given = given.map(|a| a.given);
                    let fall = q.fall().cloned().map(|s| view! {
                        <button type="button" class="see" on:click=move |_| view::to_bench(&s)>{settings.s(W::QuizSee)}</button> });
                    view! {
                        <div class="question-body">
                            <h2 id="stem">{move || ask::stem(settings.reader(), &q2)}</h2>
                            {given.clone().map(|g| view! { <Told q=q.clone() given=g in_place=true /> })}
                            {given.map(|g| chosen(&q, &g))}
                            {(!q.set_ups.is_empty() || q.shows.is_some()).then(|| view! { <SetUps q=q.clone() /> })}
                        </div>
                        <div class="question-foot">{fall}<button type="button" class="main" id="on" on:click=move |ev| if !view::is_second(&ev) { desk.next() }>{settings.s(W::QuizOn)}</button></div>
                    }.into_any()
                } else {
                    view! { <Answering q=q /> }.into_any()
                }}
            </section>
        }
        .into_any())
    };
    view! { {body} }
}

#[component]
fn Answering(q: Item) -> impl IntoView {
    let (desk, settings) = (desk(), settings());
    let picked = RwSignal::new(None::<Given>);
    let along = RwSignal::new(0.0_f64);
    let shown = (q.set_ups.len() == 1).then(|| RwSignal::new(q.set_ups[0].clone()));
    let controls = match q.ask.clone() {
        Ask::One { choices, .. } => {
            let q = q.clone();
            let rows = choices
                .into_iter()
                .enumerate()
                .map(|(n, c)| {
                    let (n, q) = (n as u8, q.clone());
                    let close = close_up(&q, c);
                    let pick = move |_| {
                        picked.set(Some(Given::One(n)));
                        if let Choice::Offset(m) = c {
                            along.set(m);
                        }
                    };
                    view! {
                        <label class="pill option"><input type="radio" name="option"
                            prop:checked=move || picked.get() == Some(Given::One(n)) on:change=pick />
                            <span>{close}{move || ask::choice(settings.reader(), &q, c)}</span></label>
                    }
                })
                .collect_view();
            view! { <fieldset class="options-list"><legend class="vh">{settings.s(W::QuizYourAnswer)}</legend>{rows}</fieldset> }.into_any()
        }
        Ask::Order { shown: steps } => {
            let order = RwSignal::new((0..steps.len() as u8).collect::<Vec<u8>>());
            picked.set(Some(Given::Order(order.get_untracked())));
            let move_by = move |at: usize, by: isize| {
                order.update(|o| {
                    let to = at as isize + by;
                    if to >= 0 && (to as usize) < o.len() {
                        o.swap(at, to as usize);
                    }
                });
                picked.set(Some(Given::Order(order.get_untracked())));
            };
            let rows = move || {
                order
                    .get()
                    .into_iter()
                    .enumerate()
                    .map(|(at, i)| {
                        let r = settings.reader();
                        let name = r.t(steps[usize::from(i)].label());
                        let last = at + 1 == steps.len();
                        view! {
                            <li><span>{format!("{}. {name}", at + 1)}</span>
                                <button type="button" class="step" prop:disabled=at == 0 aria-label=r.f(W::QuizUp, &[("what", name)])
                                    on:click=move |_| move_by(at, -1)>"↑"</button>
                                <button type="button" class="step" prop:disabled=last aria-label=r.f(W::QuizDown, &[("what", name)])
                                    on:click=move |_| move_by(at, 1)>"↓"</button></li>
                        }
                    })
                    .collect_view()
            };
            view! { <ol class="order">{rows}</ol> }.into_any()
        }
        Ask::Height { grid, .. } => {
            let at = RwSignal::new(0_usize);
            let heights: Vec<f64> = grid.iter().map(|g| g.0).collect();
            let count = heights.len();
            let heights = StoredValue::new(heights);
            let set = move |n: usize| {
                let n = n.min(count - 1);
                at.set(n);
                picked.set(Some(Given::Height(n as u8)));
                if let (Some(s), Some(h)) = (shown, heights.with_value(|h| h.get(n).copied())) {
                    s.update(|s| s.grab.above_dring_m = h);
                }
            };
            let words = move || {
                let h = heights.with_value(|h| h.get(at.get()).copied().unwrap_or(0.0));
                settings.reader().q(Quantity::Length, h, Rounding::Nearest)
            };
            view! {
                <div class="number">
                    <label for="grab-at">{settings.s(Key::GrabHeight)}": "{words}</label>
                    <div class="row">
                        <button type="button" class="step" aria-label=move || format!("{} −", settings.t(Key::GrabHeight))
                            on:click=move |_| set(at.get_untracked().saturating_sub(1))>"−"</button>
                        <input id="grab-at" type="range" min="0" max=count - 1 step="1" aria-valuetext=words prop:value=move || at.get().to_string()
                            on:input=move |ev| { if let Ok(n) = event_target_value(&ev).parse() { set(n) } } />
                        <button type="button" class="step" aria-label=move || format!("{} +", settings.t(Key::GrabHeight))
                            on:click=move |_| set(at.get_untracked() + 1)>"+"</button>
                    </div>
                </div>
            }.into_any()
        }
    };
    // The worker dragged along the wall stops at the nearest distance that can be answered.
    let offsets: Vec<(u8, f64)> = match &q.ask {
        Ask::One { choices, .. } => (0_u8..)
            .zip(choices)
            .filter_map(|(n, c)| if let Choice::Offset(m) = c { Some((n, *m)) } else { None })
            .collect(),
        _ => vec![],
    };
    let drag = move |m: f64| {
        let near = offsets.iter().min_by(|a, b| (a.1 - m).abs().total_cmp(&(b.1 - m).abs()));
        if let Some((n, m)) = near.copied() {
            picked.set(Some(Given::One(n)));
            along.set(m);
        }
    };
    let drawn = (!q.set_ups.is_empty() || q.shows.is_some()).then(|| match shown {
        Some(s) => view! { <SetUps q=q.clone() shown=s along=along dragged=Callback::new(drag) /> },
        None => view! { <SetUps q=q.clone() /> },
    });
    // 'Stop and ask' is an answer to everything but where it is one of the choices itself.
    let may_ask = q.kind != ItemKind::Method;
    let asks = move |_| picked.set(Some(Given::Asks));
    let asking = move || picked.with(|p| *p == Some(Given::Asks)).to_string();
    let lock = move |ev: web_sys::SubmitEvent| {
        ev.prevent_default();
        if let Some(g) = picked.get_untracked() {
            desk.answer(g);
        }
    };
    let stem = q.clone();
    let pictures = by_picture(&q);
    view! {
        <form class="question-form" on:submit=lock>
            <div class="question-body" class:pictures=pictures>
                <h2 id="stem" tabindex="-1">{move || ask::stem(settings.reader(), &stem)}</h2>
                {drawn}{controls}
                {may_ask.then(|| view! { <button type="button" id="asks" aria-pressed=asking on:click=asks>{settings.s(W::QuizAsks)}</button> })}
            </div>
            <div class="question-foot">
            <button type="button" class="plain" id="leave" on:click=move |_| desk.leave(Note::None)>{settings.s(W::QuizLeave)}</button>
            <button type="submit" class="main" id="lock" on:click=move |ev| if view::is_second(&ev) { ev.prevent_default() } aria-disabled=move || picked.with(Option::is_none).to_string()>
                {move || settings.t(if picked.with(Option::is_some) { W::QuizLock } else { W::QuizPickFirst })}</button></div>
        </form>
    }
}

/// Right or not, why, and the fall to see.
#[component]
fn Told(
    q: Item,
    given: Given,
    /// Under its question: the choices stand below with their marks, and the fall is one of the room's buttons.
    #[prop(optional)]
    in_place: bool,
) -> impl IntoView {
    let settings = settings();
    let credit = q.credit(&given);
    let critical = q.is_critical_miss(&given);
    let (mark, name) = if given == Given::Asks {
        ("mark caution", W::QuizAsks)
    } else if credit >= 1.0 {
        ("mark ok", W::QuizRight)
    } else if credit > 0.0 {
        ("mark caution", W::QuizPartly)
    } else {
        ("mark fail", W::QuizWrong)
    };
    let shape = if credit >= 1.0 {
        "✓"
    } else if credit > 0.0 || given == Given::Asks {
        "△"
    } else {
        "✕"
    };
    let fall = q.fall().cloned().filter(|_| !in_place).map(|s| {
        view! {
            <button type="button" class="see" on:click=move |_| view::to_bench(&s)>{settings.s(W::QuizSee)}</button>
        }
    });
    let after = matches!(q.kind, crate::quiz::questions::ItemKind::After);
    let words = move || {
        let r = settings.reader();
        let yours = r.f(W::QuizYours, &[("answer", &ask::given(r, &q, &given))]);
        let right = (credit < 1.0).then(|| r.f(W::QuizKey, &[("answer", &ask::right(r, &q))]));
        let why = ask::why(r, &q, &given);
        view! {
            <p>{yours}</p>
            {right.map(|t| view! { <p><strong>{t}</strong></p> })}
            {why.map(|t| view! { <p>{t}</p> })}
            {after.then(|| view! { <p class="source">{r.t(W::AfterSource)}</p> })}
        }
    };
    view! {
        <div class="told" id=in_place.then_some("told") tabindex=in_place.then_some("-1") role="status">
            <p class="sentence"><span class=mark aria-hidden="true">{shape}</span>{settings.s(name)}
                {critical.then(|| view! { " "<span class="sev">{settings.s(W::QuizCritical)}</span> })}</p>
            {words}
            {fall}
        </div>
    }
}

/// What came out, each answer, and the record.
#[component]
fn Result() -> impl IntoView {
    let (desk, settings): (Desk, _) = (desk(), settings());
    view::to_view("outcome");
    let body = move || {
        let record = desk.done.get()?;
        let form = desk.form.get()?;
        let practice = desk.sitting.with_untracked(|s| s.as_ref().is_none_or(|s| s.mode == Mode::Practice));
        let s = record.score();
        let points = format!("{:.0}\u{a0}%", (s.points_share * 100.0).floor());
        let cut = format!("{:.0}\u{a0}%", record.header.cut_share * 100.0);
        let critical = s.critical.to_string();
        let sentence = move || {
            let key = if s.passes {
                W::QuizPassed
            } else if s.critical > 0 {
                W::QuizFailedCritical
            } else {
                W::QuizFailed
            };
            settings.reader().f(key, &[("points", &points), ("cut", &cut), ("critical", &critical)])
        };
        let rows = form
            .items
            .iter()
            .zip(record.answers.clone())
            .enumerate()
            .map(|(n, (q, a)): (usize, (&Item, Answered))| {
                let (q, stem) = (q.clone(), q.clone());
                let open = a.credit_share < 1.0;
                let partly = open && a.credit_share > 0.0;
                let asked = a.given == Given::Asks;
                let shape = if partly || asked {
                    "△"
                } else if open {
                    "✕"
                } else {
                    "✓"
                };
                let word = if asked {
                    W::QuizAsks
                } else if partly {
                    W::QuizPartly
                } else if open {
                    W::QuizWrong
                } else {
                    W::QuizRight
                };
                view! {
                    <li><details open=open && !practice><summary><b aria-hidden="true">{shape}</b>
                        <span>{move || format!("{}. {}", n + 1, settings.t(stem.kind.label()))}</span>
                        <span class="sev">{settings.s(word)}</span></summary>
                        <Told q=q given=a.given /></details></li>
                }
            })
            .collect_view();
        let one = record.clone();
        Some(view! {
            <section class="result">
                <h2>{settings.s(W::QuizResult)}</h2>
                <p class="sentence" id="outcome" tabindex="-1"><span class=if s.passes { "mark ok" } else { "mark caution" } aria-hidden="true">{if s.passes { "✓" } else { "▲" }}</span>{sentence}</p>
                <p class="hint">{settings.s(W::QuizNotCertificate)}</p>
                {if practice {
                    view! { <p>{settings.s(W::QuizPracticeDone)}</p> }.into_any()
                } else {
                    view! {
                        <section class="card export"><h3>{settings.s(W::QuizExport)}</h3>
                            <p>{settings.s(W::QuizExportWhy)}</p>
                            <div class="row buttons">
                                <Write how=Writing::Archive records=Signal::derive(move || vec![one.clone()]) name=super::sheet::ONE_RECORD label=W::WriteRecord />
                                <button type="button" id="print" on:click=move |_| { let _ = window().print(); }>{settings.s(W::Print)}</button>
                            </div></section>
                        <Sheet record=record.clone() items=form.items.clone() />
                    }.into_any()
                }}
                <h3>{settings.s(W::QuizAnswers)}</h3>
                <ol class="answers">{rows}</ol>
                <button type="button" class="main" id="again" on:click=move |_| { desk.sitting.set(None); desk.form.set(None); desk.done.set(None) }>
                    {settings.s(W::QuizAgain)}</button>
            </section>
        })
    };
    view! { {body} }
}
