//! Find the framing: tap along a roof, mark the rafters, drive the plate's fasteners, look under.
//!
//! A tap is heard, drawn and told in words: none of the three is needed for the others.

use super::{Visit, visit};
use crate::practice::framing::{Driven, PLATE_HOLES, RAFTER_M, Roof, Sound, WIDTH_M, build, holds_n, left};
use crate::texts::Room as W;
use crate::texts::say;
use crate::ui::shared::settings::{Settings, settings};
use crate::ui::shared::view::{self, View, to_bench};
use crate::units::{Quantity, Rounding};
use leptos::prelude::*;
use web_sys::{AudioContext, OscillatorType};

/// Blows that a fastener takes.
const BLOWS: f64 = 3.0;
/// Moves of the hammer by button or key, m.
const MOVES_M: [f64; 2] = [0.01, 0.1];

/// A knock: short and high over wood, long and low over nothing.
fn knock(context: &AudioContext, sound: Sound) -> Option<()> {
    let (pitch_hz, decay_s) = match sound {
        Sound::Solid => (310.0, 0.07),
        Sound::Between => (210.0, 0.14),
        Sound::Hollow => (120.0, 0.32),
    };
    let now = context.current_time();
    let (tone, gain) = (context.create_oscillator().ok()?, context.create_gain().ok()?);
    tone.set_type(OscillatorType::Triangle);
    tone.frequency().set_value_at_time(pitch_hz, now).ok()?;
    gain.gain().set_value_at_time(0.35, now).ok()?;
    gain.gain().exponential_ramp_to_value_at_time(0.001, now + decay_s).ok()?;
    tone.connect_with_audio_node(&gain).ok()?;
    gain.connect_with_audio_node(&context.destination()).ok()?;
    tone.start().ok()?;
    tone.stop_with_when(now + decay_s).ok()
}

/// Whether a person has touched the page: before that a browser makes no sound, and complains.
fn touched() -> bool {
    let navigator: wasm_bindgen::JsValue = window().navigator().into();
    let get = |o: &wasm_bindgen::JsValue, k: &str| js_sys::Reflect::get(o, &k.into()).ok();
    get(&navigator, "userActivation").and_then(|a| get(&a, "hasBeenActive")).is_none_or(|b| b.is_truthy())
}

/// A search: the roof, the hammer, and what was done so far.
#[derive(Clone, Copy)]
struct Search {
    visit: Visit,
    settings: Settings,
    roof: RwSignal<Roof>,
    at: RwSignal<f64>,
    taps: RwSignal<Vec<(f64, Sound)>>,
    chalk: RwSignal<Vec<f64>>,
    work: RwSignal<Vec<Driven>>,
    sound_on: RwSignal<bool>,
    looked: RwSignal<bool>,
    audio: StoredValue<Option<AudioContext>, LocalStorage>,
}

/// The fastener driven last.
struct Last {
    index: usize,
    driven: Driven,
    holds_n: f64,
    /// What one driven home in a rafter holds, N.
    most_n: f64,
}

impl Search {
    fn say(self, t: String) {
        let Search { visit, .. } = self;
        visit.said.set(t);
    }

    fn go_to(self, m: f64) {
        let Search { at, .. } = self;
        at.set(((m * 100.0).round() / 100.0).clamp(0.0, WIDTH_M));
    }

    fn tap(self) {
        let Search { settings, roof, at, taps, sound_on, audio, .. } = self;
        let (x, r) = (at.get_untracked(), settings.reader_now());
        let sound = roof.with_untracked(|q| q.tap(x));
        taps.update(|t| {
            t.retain(|(o, _)| (o - x).abs() > 0.004);
            t.push((x, sound));
        });
        if sound_on.get_untracked() && touched() {
            audio.update_value(|c| {
                if c.is_none() {
                    *c = AudioContext::new().ok();
                }
            });
            audio.with_value(|c| c.as_ref().and_then(|c| knock(c, sound)));
        }
        self.say(r.f(
            W::TapTold,
            &[("at", &r.q(Quantity::Length, x, Rounding::Nearest)), ("sound", r.t(sound.label()))],
        ));
    }

    fn mark(self) {
        let Search { at, chalk, .. } = self;
        let x = at.get_untracked();
        chalk.update(|c| {
            let before = c.len();
            c.retain(|o| (o - x).abs() > 0.004);
            if c.len() == before {
                c.push(x);
            }
        });
    }

    /// The fastener under the hammer, that can go further.
    fn here(self, w: &[Driven]) -> Option<usize> {
        let Search { at, .. } = self;
        w.iter().rposition(|d| !d.pulled && (d.x_m - at.get_untracked()).abs() < 0.004 && d.in_share < 0.99)
    }

    fn in_place(self) -> usize {
        let Search { work, .. } = self;
        work.with(|w| w.iter().filter(|d| !d.pulled).count())
    }

    fn strike(self) {
        let Search { at, work, .. } = self;
        if self.here(&work.get_untracked()).is_none()
            && work.with_untracked(|w| w.iter().filter(|d| !d.pulled).count()) >= PLATE_HOLES
        {
            return;
        }
        work.update(|w| {
            let i = self.here(w).unwrap_or_else(|| {
                w.push(Driven { x_m: at.get_untracked(), in_share: 0.0, pulled: false, sealed: false });
                w.len() - 1
            });
            let d = &mut w[i];
            d.in_share = ((d.in_share * BLOWS).round() + 1.0).min(BLOWS) / BLOWS;
        });
    }

    /// What the last fastener holds.
    fn last(self) -> Option<Last> {
        let Search { visit, roof, work, .. } = self;
        work.with(|w| {
            let i = w.iter().rposition(|d| !d.pulled)?;
            let d = w[i];
            let n = visit.set_up.with(|s| roof.with(|q| holds_n(s, q, d.x_m, d.in_share)));
            let most = visit.set_up.with(|s| roof.with(|q| holds_n(s, q, q.rafters_m()[0], 1.0)));
            Some(Last { index: i, driven: d, holds_n: n, most_n: most })
        })
    }

    fn told(self) -> String {
        let Search { settings, work, .. } = self;
        let r = settings.reader();
        self.last().map_or(r.t(W::DriveNone).to_owned(), |Last { driven: d, holds_n: n, .. }| {
            let nth = work.with(|w| w.iter().filter(|d| !d.pulled).count());
            r.f(
                W::DriveTold,
                &[
                    ("n", &nth.to_string()),
                    ("done", &format!("{:.0}", d.in_share * BLOWS)),
                    ("force", &r.q(Quantity::Force, n, Rounding::Down)),
                ],
            )
        })
    }

    /// The rising bar.
    fn bar(self) -> impl IntoView {
        let share = self.last().map_or(0.0, |l| (l.holds_n / l.most_n.max(1.0)).min(1.0));
        view! { <svg class="bar" viewBox="0 0 300 24" aria-hidden="true">
        <rect class="whole" x="1" y="1" width="298" height="22" /><rect class="part" x="1" y="1" width=298.0 * share height="22" /></svg> }
    }

    fn pull(self) {
        let Search { settings, work, .. } = self;
        let Some(Last { index: i, driven: d, .. }) = self.last() else { return };
        work.update(|w| {
            if let Some(x) = w.get_mut(i) {
                x.pulled = true
            }
        });
        let r = settings.reader_now();
        self.say(r.f(W::PulledTold, &[("at", &r.q(Quantity::Length, d.x_m, Rounding::Nearest))]));
    }

    fn has_open_hole(self) -> bool {
        let Search { work, .. } = self;
        work.with(|w| w.iter().any(|d| d.pulled && !d.sealed))
    }

    fn seal(self) {
        let Search { settings, work, .. } = self;
        work.update(|w| {
            if let Some(d) = w.iter_mut().rev().find(|d| d.pulled && !d.sealed) {
                d.sealed = true
            }
        });
        self.say(settings.reader_now().t(W::SealedTold).to_owned());
    }

    fn again(self) {
        let Search { roof, taps, chalk, work, looked, .. } = self;
        roof.set(Roof::of(u64::from(super::desk::fresh_seed() as u32)));
        taps.set(vec![]);
        chalk.set(vec![]);
        work.set(vec![]);
        looked.set(false);
    }
}

/// The roof from above, with what was heard, chalked and driven.
#[component]
fn Strip(search: Search) -> impl IntoView {
    let Search { settings, roof, at, taps, chalk, work, looked, .. } = search;
    let len = move |m: f64| settings.reader().q(Quantity::Length, m, Rounding::Nearest);
    let go_to = move |m: f64| search.go_to(m);
    let tap = move || search.tap();
    let key = move |ev: web_sys::KeyboardEvent| {
        let step = if ev.shift_key() { MOVES_M[1] } else { MOVES_M[0] };
        match ev.key().as_str() {
            "ArrowLeft" => go_to(at.get_untracked() - step),
            "ArrowRight" => go_to(at.get_untracked() + step),
            "PageUp" => go_to(at.get_untracked() + MOVES_M[1]),
            "PageDown" => go_to(at.get_untracked() - MOVES_M[1]),
            "Enter" | " " => tap(),
            _ => return,
        }
        ev.prevent_default();
    };
    let click = move |ev: web_sys::MouseEvent| {
        use wasm_bindgen::JsCast;
        if let Some(e) = ev.current_target().and_then(|t| t.dyn_into::<web_sys::Element>().ok()) {
            let b = e.get_bounding_client_rect();
            go_to((f64::from(ev.client_x()) - b.left()) / b.width().max(1.0) * WIDTH_M);
            tap();
        }
    };
    let mm = |m: f64| m * 1000.0;
    let roof_words =
        move || settings.reader().f(W::FramingRoof, &[("width", &len(WIDTH_M)), ("at", &len(at.get()))]);
    let drawing = move || {
        let rows = (0..6)
            .map(|i| {
                let y = 40.0 + f64::from(i) * 60.0;
                let cuts: String = (0..9)
                    .map(|k| {
                        format!("M{} {y}v60", f64::from(k) * 300.0 + if i % 2 == 0 { 0.0 } else { 150.0 })
                    })
                    .collect();
                view! { <path class="shingle" d=format!("M0 {y}H2400{cuts}") /> }
            })
            .collect_view();
        let under =
            looked.get().then(|| {
                roof.with(|q| q.rafters_m()).into_iter().map(|r| view! {
            <rect class="rafter" x=mm(r - RAFTER_M / 2.0) y="0" width=mm(RAFTER_M) height="440" />
        }).collect_view()
            });
        let heard = taps
            .get()
            .into_iter()
            .map(|(x, s)| {
                // Dots that keep their shape however the strip is stretched.
                let d = format!("M{} 84h0.01", mm(x));
                view! {
                    <path class="tap" d=d.clone() />
                    {(s != Sound::Solid).then(|| view! { <path class="tap open" d=d.clone() /> })}
                    {(s == Sound::Between).then(|| view! { <path class="tap core" d=d.clone() /> })}
                }
            })
            .collect_view();
        let lines = chalk
            .get()
            .into_iter()
            .map(|x| view! { <path class="chalk" d=format!("M{} 40V400", mm(x)) /> })
            .collect_view();
        let driven = work.get().into_iter().enumerate().map(|(i, d)| {
            let (x, y) = (mm(d.x_m), 190.0 + (i % 6) as f64 * 32.0);
            if d.pulled {
                let class = if d.sealed { "hole sealed" } else { "hole" };
                view! { <path class=class d=format!("M{} {}l24 24m0 -24l-24 24", x - 12.0, y - 12.0) /> }.into_any()
            } else {
                let up = 26.0 * (1.0 - d.in_share);
                view! { <path class="nail" d=format!("M{} {}h28l-14 {}z", x - 14.0, y - 14.0 - up, 28.0 + up) /> }.into_any()
            }
        }).collect_view();
        let hammer = mm(at.get());
        view! { {under}{rows}{lines}{heard}{driven}<path class="hammer" d=format!("M{hammer} 0V440M{} 0h60v26h-60z", hammer - 30.0) /> }
    };
    view! {
        <svg class="roofstrip" viewBox="0 0 2400 440" preserveAspectRatio="none" role="application" tabindex="0" aria-label=roof_words on:click=click on:keydown=key>{drawing}</svg>
    }
}

/// What was found, once somebody looked under.
#[component]
fn UnderRoof(search: Search) -> impl IntoView {
    let Search { visit, settings, roof, chalk, work, looked, .. } = search;
    let set = visit.set_up;
    let again = move || search.again();
    move || {
        looked.get().then(|| {
            let r = settings.reader();
            let found = roof.with(|q| work.with(|w| left(q, w)));
            let n = |x: u32| x.to_string();
            let line = r.f(W::FramingFound, &[("hits", &n(found.hits)), ("misses", &n(found.misses)), ("proud", &n(found.proud)), ("open", &n(found.open_holes))]);
            let marks = chalk.with(|c| {
                let on = c.iter().filter(|x| roof.with(|q| q.off_m(**x) <= RAFTER_M / 2.0)).count();
                r.f(W::FramingMarks, &[("on", &on.to_string()), ("all", &c.len().to_string())])
            });
            let built = set.with(|s| roof.with(|q| work.with(|w| build(s, q, w))));
            let strength = built.as_ref().map(|s| say::strength(r, s).into_iter().map(|l| view! { <p>{l}</p> }).collect_view());
            view! {
                <section class="card" role="status" id="under-roof"><p class="sentence">{line}</p><p>{marks}</p>
                    {match built {
                        Some(s) => view! { {strength}<p class="hint">{r.t(W::FramingFar)}</p>
                            <div class="row buttons"><button type="button" class="main" id="fall-on-it" on:click=move |_| to_bench(&s)>{r.t(W::FramingFall)}</button>
                            <button type="button" on:click=move |_| again()>{r.t(W::FramingAgain)}</button></div> }.into_any(),
                        None => view! { <p>{r.t(W::FramingNothing)}</p><button type="button" on:click=move |_| again()>{r.t(W::FramingAgain)}</button> }.into_any(),
                    }}
                </section>
            }
        })
    }
}

/// Where the hammer is: slider and buttons.
#[component]
fn Hammer(search: Search) -> impl IntoView {
    let Search { settings, at, .. } = search;
    let len = move |m: f64| settings.reader().q(Quantity::Length, m, Rounding::Nearest);
    let go_to = move |m: f64| search.go_to(m);
    let move_by = move |m: f64, shown: &'static str| {
        view! {
            <button type="button" class="step" aria-label=move || format!("{} {shown}", settings.t(W::FramingAt)) on:click=move |_| go_to(at.get_untracked() + m)>{shown}</button>
        }
    };
    view! {
        <div class="number"><label for="hammer">{settings.s(W::FramingAt)}{move || settings.reader().colon()}{move || len(at.get())}</label>
            <div class="row">{move_by(-MOVES_M[1], "−−")}{move_by(-MOVES_M[0], "−")}
                <input id="hammer" type="range" min="0" max=WIDTH_M step="0.01" aria-valuetext=move || len(at.get())
                    prop:value=move || at.get().to_string() on:input=move |ev| { if let Ok(x) = event_target_value(&ev).parse() { go_to(x) } } />
                {move_by(MOVES_M[0], "+")}{move_by(MOVES_M[1], "++")}</div></div>
    }
}

#[component]
pub fn Framing() -> impl IntoView {
    let settings = settings();
    let search = Search {
        visit: visit(),
        settings,
        roof: RwSignal::new(Roof::of(u64::from(super::desk::fresh_seed() as u32))),
        at: RwSignal::new(0.3),
        taps: RwSignal::new(vec![]),
        chalk: RwSignal::new(vec![]),
        work: RwSignal::new(vec![]),
        sound_on: RwSignal::new(true),
        looked: RwSignal::new(false),
        audio: StoredValue::new_local(None),
    };
    let Search { sound_on, looked, .. } = search;
    view! {
        <main class="page framing"><section>
            <button type="button" class="plain" on:click=move |_| view::go(View::Lessons)>"← "{settings.s(W::BackToList)}</button>
            <h2>{settings.s(W::FramingName)}</h2>
            <p class="lead">{settings.s(W::FramingLead)}</p>
            <p class="problems caution">{settings.s(W::FramingCaution)}</p>
            <Strip search=search />
            <p class="hint">{settings.s(W::FramingKey)}</p>
            <Hammer search=search />
            <div class="row buttons">
                <button type="button" class="main" id="tap" on:click=move |_| search.tap()>{settings.s(W::FramingTap)}</button>
                <button type="button" id="chalk" on:click=move |_| search.mark()>{settings.s(W::FramingMark)}</button>
                <button type="button" id="strike" prop:disabled=move || looked.get() on:click=move |_| search.strike()>{settings.s(W::FramingStrike)}</button>
                <button type="button" id="pull" prop:disabled=move || looked.get() || search.last().is_none() on:click=move |_| search.pull()>{settings.s(W::FramingPull)}</button>
                <button type="button" id="seal" prop:disabled=move || !search.has_open_hole() on:click=move |_| search.seal()>{settings.s(W::FramingSeal)}</button>
                <label class="pill"><input type="checkbox" prop:checked=move || sound_on.get() on:change=move |_| sound_on.update(|s| *s = !*s) /><span>{settings.s(W::FramingSound)}</span></label>
            </div>
            {move || search.bar()}
            <p role="status" id="drive-told">{move || search.told()}</p>
            <p>{move || settings.reader().f(W::HomeTold, &[("n", &search.in_place().to_string())])}</p>
            <button type="button" class="main" id="look-under" on:click=move |_| looked.set(true)>{settings.s(W::FramingDone)}</button>
            <UnderRoof search=search />
        </section></main>
    }
}
