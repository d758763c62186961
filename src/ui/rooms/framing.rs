//! Find the framing: tap along a roof, mark the rafters, drive the plate's fasteners, look under.
//!
//! A tap is heard, drawn and told in words: none of the three is needed for the others.

use super::bar::RoomBar;
use super::{Visit, visit};
use crate::geometry::{P, p};
use crate::practice::framing::{
    Blow, Driven, HEIGHT_M, PLATE_HOLES, RAFTER_M, Roof, Sound, WIDTH_M, blow, build, holds_n, left,
};
use crate::rules::Severity;
use crate::texts::Room as W;
use crate::texts::say;
use crate::ui::shared::settings::{Settings, settings};
use crate::ui::shared::signs::mark;
use crate::ui::shared::store;
use crate::ui::shared::view::{self, View, to_bench};
use crate::units::{Quantity, Rounding};
use leptos::prelude::*;
use serde::{Deserialize, Serialize};
use web_sys::{AudioContext, OscillatorType};

/// Blows that a fastener takes.
const BLOWS: f64 = 3.0;
/// Moves of the hammer by button or key, m: along the wall, and by more; up the slope.
const MOVES_M: [f64; 2] = [0.01, 0.1];
const UP_M: f64 = 0.05;

/// The roof as it is seen from its foot: rows come closer and lines run together up the slope. Units are cm of the
/// lower edge.
mod view_of {
    use super::{HEIGHT_M, P, WIDTH_M, p};
    /// Height of the roof in the picture, and of the sky over it.
    pub const ROOF: f64 = 112.0;
    pub const SKY: f64 = 12.0;
    /// Height of the tape under it.
    pub const TAPE: f64 = 15.0;
    /// How much smaller the upper edge is.
    const FAR: f64 = 0.58;

    fn scale(y_m: f64) -> f64 {
        1.0 / (1.0 + (1.0 / FAR - 1.0) * y_m / HEIGHT_M)
    }

    /// Where a point of the roof is seen, y down.
    pub fn at(x_m: f64, y_m: f64) -> P {
        let s = scale(y_m);
        let mid = 50.0 * WIDTH_M;
        p(mid + (100.0 * x_m - mid) * s, SKY + ROOF * (1.0 - (1.0 - s) / (1.0 - FAR)))
    }

    /// The point of the roof that is seen there.
    pub fn under(x: f64, y: f64) -> (f64, f64) {
        let s = (1.0 - (1.0 - FAR) * (1.0 - (y - SKY) / ROOF)).clamp(FAR, 1.0);
        let mid = 50.0 * WIDTH_M;
        let y_m = (1.0 / s - 1.0) / (1.0 / FAR - 1.0) * HEIGHT_M;
        ((mid + (x - mid) / s) / 100.0, y_m)
    }
}

/// A straight line on the roof, as it is seen.
fn seen_line(from: (f64, f64), to: (f64, f64)) -> String {
    let (a, b) = (view_of::at(from.0, from.1), view_of::at(to.0, to.1));
    format!("M{:.1} {:.1}L{:.1} {:.1}", a.x, a.y, b.x, b.y)
}

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
    /// How far up the slope the hammer is, m.
    up: RwSignal<f64>,
    /// What the last blow could not do.
    refused: RwSignal<Option<Blow>>,
    taps: RwSignal<Vec<(f64, f64, Sound)>>,
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

/// A search as this tab keeps it.
#[derive(Serialize, Deserialize)]
struct Kept {
    roof: Roof,
    hammer_m: (f64, f64),
    taps: Vec<(f64, f64, Sound)>,
    chalk: Vec<f64>,
    work: Vec<Driven>,
    looked: bool,
}

impl Search {
    /// Keeps what was done for this tab; reads every signal that it keeps.
    fn keep(self, begun: bool) {
        let kept = Kept {
            roof: self.roof.get(),
            hammer_m: (self.at.get(), self.up.get()),
            taps: self.taps.get(),
            chalk: self.chalk.get(),
            work: self.work.get(),
            looked: self.looked.get(),
        };
        if begun {
            store::keep_here(store::FRAMING, &kept);
        }
    }

    /// Goes on where this tab was left; false where there is nothing to go on with.
    fn take_up(self) -> bool {
        let Some(kept) = store::kept_here::<Kept>(store::FRAMING) else { return false };
        self.roof.set(kept.roof);
        self.go_to(kept.hammer_m.0);
        self.up_to(kept.hammer_m.1);
        self.taps.set(kept.taps);
        self.chalk.set(kept.chalk);
        self.work.set(kept.work);
        self.looked.set(kept.looked);
        true
    }

    fn say(self, t: String) {
        let Search { visit, .. } = self;
        visit.said.set(t);
    }

    fn go_to(self, m: f64) {
        let Search { at, .. } = self;
        at.set(((m * 100.0).round() / 100.0).clamp(0.0, WIDTH_M));
    }

    fn up_to(self, m: f64) {
        self.up.set(((m * 100.0).round() / 100.0).clamp(0.05, HEIGHT_M - 0.1));
    }

    fn tap(self) {
        let Search { settings, roof, at, up, taps, sound_on, audio, .. } = self;
        let (x, y, r) = (at.get_untracked(), up.get_untracked(), settings.reader_now());
        let sound = roof.with_untracked(|q| q.tap(x));
        taps.update(|t| {
            t.retain(|(ox, oy, _)| (ox - x).hypot(oy - y) > 0.03);
            t.push((x, y, sound));
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

    fn in_place(self) -> usize {
        let Search { work, .. } = self;
        work.with(|w| w.iter().filter(|d| !d.pulled && d.in_share > 0.99).count())
    }

    fn strike(self) {
        let Search { settings, at, up, work, refused, .. } = self;
        let (x_m, y_m) = (at.get_untracked(), up.get_untracked());
        let does = work.with_untracked(|w| blow(w, x_m, y_m));
        refused.set(matches!(does, Blow::TooNear(_) | Blow::Full).then_some(does));
        let r = settings.reader_now();
        match does {
            Blow::TooNear(m) => return self.say(too_near(r, m)),
            Blow::Full => return self.say(r.f(W::HomeTold, &[("n", &PLATE_HOLES.to_string())])),
            Blow::On(_) | Blow::New => {}
        }
        work.update(|w| {
            let i = match does {
                Blow::On(i) => i,
                _ => {
                    w.push(Driven { x_m, y_m, in_share: 0.0, pulled: false, sealed: false });
                    w.len() - 1
                }
            };
            let d = &mut w[i];
            d.in_share = ((d.in_share * BLOWS).round() + 1.0).min(BLOWS) / BLOWS;
        });
        self.say(self.told());
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

    /// The nail from the side, and how hard it pulls beside what boards and a rafter give.
    fn gauge(self) -> impl IntoView {
        let Search { visit, settings, roof, .. } = self;
        let l = self.last()?;
        let r = settings.reader();
        let boards_n =
            visit.set_up.with(|s| roof.with(|q| holds_n(s, q, q.rafters_m()[0] + q.spacing_m / 2.0, 1.0)));
        let y = |n: f64| 92.0 - 76.0 * (n / l.most_n.max(1.0)).min(1.0);
        let climbs = l.holds_n > boards_n * 1.05;
        // Boards, then what is under them, told by the gauge alone until somebody looks.
        let tip = 26.0 + 62.0 * l.driven.in_share;
        let nail = format!(
            "M38 {0}V{1}L42 {2}L46 {1}V{0}M33 {0}H51V{3}H33Z",
            tip - 56.0,
            tip - 6.0,
            tip,
            tip - 61.0
        );
        let words = |n: f64| r.q(Quantity::Force, n, Rounding::Down);
        Some(view! {
            <svg class="gauge" viewBox="0 0 200 100" aria-hidden="true">
                <path class="boards" d="M2 34H82V48H2Z" /><path class="shingles" d="M2 28H82V34H2Z" /><path class="nail" d=nail />
                <path class="tube" d="M96 12H116V94H96Z" /><path class=if climbs { "fill climbs" } else { "fill" } d=format!("M98 92H114V{:.1}H98Z", y(l.holds_n)) />
                <path class="line" d=format!("M92 {0:.1}H120M92 {1:.1}H120", y(l.most_n), y(boards_n)) />
                <text x="124" y=y(l.most_n) + 6.0>{r.t(W::GaugeRafter)}</text><text x="124" y=y(boards_n) + 6.0>{r.t(W::GaugeBoards)}</text>
                <text class="now" x="124" y=(y(l.holds_n) + 6.0).clamp(y(l.most_n) + 26.0, y(boards_n) - 14.0)>{words(l.holds_n)}</text>
            </svg>
        })
    }

    fn pull(self) {
        self.refused.set(None);
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
        if !untrack(|| self.has_open_hole()) {
            return;
        }
        self.refused.set(None);
        let Search { settings, work, .. } = self;
        work.update(|w| {
            if let Some(d) = w.iter_mut().rev().find(|d| d.pulled && !d.sealed) {
                d.sealed = true
            }
        });
        self.say(settings.reader_now().t(W::SealedTold).to_owned());
    }

    fn again(self) {
        let Search { roof, taps, chalk, work, looked, refused, .. } = self;
        refused.set(None);
        roof.set(Roof::of(u64::from(super::desk::fresh_seed() as u32)));
        taps.set(vec![]);
        chalk.set(vec![]);
        work.set(vec![]);
        looked.set(false);
    }
}

fn too_near(r: say::Reader, m: f64) -> String {
    r.f(W::FramingTooNear, &[("value", &r.q(Quantity::Length, m, Rounding::Down))])
}

/// What a tap sounded like, by its shape.
fn tap_sign(at: P, s: Sound) -> impl IntoView {
    let (x, y) = (format!("{:.1}", at.x), format!("{:.1}", at.y));
    let ring = |r: f64, class: &'static str| view! { <circle class=class cx=x.clone() cy=y.clone() r=r /> };
    match s {
        Sound::Solid => view! { {ring(4.4, "tap ring")}{ring(2.9, "tap full")} }.into_any(),
        Sound::Between => {
            let half = format!("M{:.1} {:.1}a4 4 0 0 0 8 0Z", at.x - 4.0, at.y);
            view! { {ring(4.0, "tap ring")}<path class="tap full" d=half /> }.into_any()
        }
        Sound::Hollow => view! { {ring(4.4, "tap ring")}{ring(2.4, "tap ring")} }.into_any(),
    }
}

/// Ridge, rows of shingles, and the tape along the lower edge.
fn roofing(r: say::Reader) -> impl IntoView + use<> {
    use view_of::{ROOF, SKY, TAPE, at};
    let rows = 11;
    let mut d = String::new();
    for i in 0..=rows {
        let y_m = HEIGHT_M * f64::from(i) / f64::from(rows);
        d.push_str(&seen_line((-3.0, y_m), (WIDTH_M + 3.0, y_m)));
        if i < rows {
            let next = HEIGHT_M * f64::from(i + 1) / f64::from(rows);
            for k in -10..18 {
                let x_m = f64::from(k) * 0.3 + if i % 2 == 0 { 0.0 } else { 0.15 };
                d.push_str(&seen_line((x_m, y_m), (x_m, next)));
            }
        }
    }
    let foot = SKY + ROOF;
    let mut ticks = String::new();
    let numbers = (0..=24)
        .map(|i| {
            let x_m = f64::from(i) * 0.1;
            let x = at(x_m, 0.0).x;
            ticks.push_str(&format!("M{x:.1} {foot}v{}", if i % 2 == 0 { 5.0 } else { 3.0 }));
            (i % 4 == 0).then(|| view! { <text x=x y=foot + 12.5 text-anchor="middle">{r.q(Quantity::Length, x_m, Rounding::Nearest)}</text> })
        })
        .collect_view();
    view! {
        <rect class="deck" x="-400" y=SKY width="1040" height=ROOF /><rect class="ridge" x="-400" y=SKY - 4.0 width="1040" height="4" />
        <path class="shingle" d=d /><rect class="tape" x="-400" y=foot width="1040" height=TAPE /><path class="tick" d=ticks />{numbers}
    }
}

/// The roof from its foot, with what was heard, chalked and driven.
#[component]
fn Strip(search: Search) -> impl IntoView {
    use view_of::{ROOF, SKY, TAPE};
    let Search { settings, roof, at, up, taps, chalk, work, looked, .. } = search;
    let len = move |m: f64| settings.reader().q(Quantity::Length, m, Rounding::Nearest);
    let size = RwSignal::new((0.0, 0.0));
    let node = NodeRef::<leptos::html::Div>::new();
    Effect::new(move |_| {
        if let Some(e) = node.get() {
            view::watch_size(&e, size);
        }
    });
    let high = SKY + ROOF + TAPE;
    // As much of the roof as fits, with the hammer in it.
    let frame = Memo::new(move |_| {
        let (w, h) = size.get();
        let wide = if h > 1.0 { high * w / h } else { 100.0 * WIDTH_M };
        let all = 100.0 * WIDTH_M;
        let left = if wide >= all {
            (all - wide) / 2.0
        } else {
            (100.0 * at.get() - wide / 2.0).clamp(-6.0, all + 6.0 - wide)
        };
        (left, wide)
    });
    let key = move |ev: web_sys::KeyboardEvent| {
        let step = if ev.shift_key() { MOVES_M[1] } else { MOVES_M[0] };
        let (x, y) = (at.get_untracked(), up.get_untracked());
        match ev.key().as_str() {
            "ArrowLeft" => search.go_to(x - step),
            "ArrowRight" => search.go_to(x + step),
            "ArrowUp" => search.up_to(y + UP_M),
            "ArrowDown" => search.up_to(y - UP_M),
            "PageUp" => search.go_to(x + MOVES_M[1]),
            "PageDown" => search.go_to(x - MOVES_M[1]),
            "Enter" | " " => search.tap(),
            _ => return,
        }
        ev.prevent_default();
    };
    // The view stands still while a finger is down.
    let held = StoredValue::new(None::<(f64, f64)>);
    let to = move |ev: &web_sys::PointerEvent| {
        let (Some(e), Some((left, wide))) = (node.get_untracked(), held.get_value()) else { return };
        let b = e.get_bounding_client_rect();
        let k = wide / b.width().max(1.0);
        // The head stands over the finger.
        let lift = if ev.pointer_type() == "touch" { 70.0 } else { 0.0 };
        let (x, y) = (
            left + (f64::from(ev.client_x()) - b.left()) * k,
            (f64::from(ev.client_y()) - lift - b.top()) * k,
        );
        let (x_m, y_m) = view_of::under(x, y);
        search.go_to(x_m);
        search.up_to(y_m);
    };
    let take = move |ev: web_sys::PointerEvent| {
        use wasm_bindgen::JsCast;
        held.set_value(Some(frame.get_untracked()));
        if let Some(e) = ev.current_target().and_then(|t| t.dyn_into::<web_sys::Element>().ok()) {
            let _ = e.set_pointer_capture(ev.pointer_id());
        }
        to(&ev);
    };
    let lift = move |ev: web_sys::PointerEvent| {
        if held.get_value().is_some() {
            to(&ev);
            held.set_value(None);
            search.tap();
        }
    };
    let roof_words =
        move || settings.reader().f(W::FramingRoof, &[("width", &len(WIDTH_M)), ("at", &len(at.get()))]);
    let under = move || {
        looked.get().then(|| {
            let half = RAFTER_M / 2.0;
            let corner = |x: f64, y: f64| view_of::at(x, y);
            roof.with(|q| q.rafters_m())
                .into_iter()
                .map(|r| {
                    let (a, b, c, d) = (
                        corner(r - half, 0.0),
                        corner(r + half, 0.0),
                        corner(r + half, HEIGHT_M),
                        corner(r - half, HEIGHT_M),
                    );
                    let path = format!(
                        "M{:.1} {:.1}L{:.1} {:.1}L{:.1} {:.1}L{:.1} {:.1}Z",
                        a.x, a.y, b.x, b.y, c.x, c.y, d.x, d.y
                    );
                    view! { <path class="rafter" d=path /> }
                })
                .collect_view()
        })
    };
    let heard = move || taps.get().into_iter().map(|(x, y, s)| tap_sign(view_of::at(x, y), s)).collect_view();
    let lines = move || {
        chalk
            .get()
            .into_iter()
            .map(|x| view! { <path class="chalk" d=seen_line((x, 0.0), (x, HEIGHT_M)) /> })
            .collect_view()
    };
    let driven = move || {
        work.get()
            .into_iter()
            .map(|d| {
                let q = view_of::at(d.x_m, d.y_m);
                if d.pulled {
                    let class = if d.sealed { "hole sealed" } else { "hole" };
                    return view! { <path class=class d=format!("M{:.1} {:.1}l4 4m0 -4l-4 4", q.x - 2.0, q.y - 2.0) /> }.into_any();
                }
                let up = 9.0 * (1.0 - d.in_share);
                let sign = looked.get().then(|| {
                    let hit = roof.with(|r| r.is_framing(d.x_m));
                    let (class, path) = if hit { ("found hit", "l2 2.2l3.6 -4.6") } else { ("found miss", "l4 4m0 -4l-4 4") };
                    view! { <path class=class d=format!("M{:.1} {:.1}{path}", q.x + 4.0, q.y - if hit { 0.0 } else { 2.0 }) /> }
                });
                view! { <path class="shaft" d=format!("M{:.1} {:.1}v{:.1}", q.x, q.y, -up) /><ellipse class="nail" cx=format!("{:.1}", q.x) cy=format!("{:.1}", q.y - up) rx="2.6" ry="1.5" />{sign} }.into_any()
            })
            .collect_view()
    };
    let hammer = move || {
        let q = view_of::at(at.get(), up.get());
        let head = format!(
            "M{0:.1} {1:.1}h5v-13l2.4 -3l-2 -2l-8 -1.5q-5 -0.5 -7.5 3.5q4 -1 6.4 1.2l-0.6 2.8z",
            q.x - 1.0,
            q.y - 0.5
        );
        let handle = format!("M{:.1} {:.1}L{:.1} {:.1}", q.x + 4.0, q.y - 16.5, q.x + 30.0, q.y - 6.0);
        (!looked.get()).then(|| view! { <path class="handle" d=handle /><path class="hammer" d=head /><circle class="face" cx=format!("{:.1}", q.x) cy=format!("{:.1}", q.y) r="1.1" /> })
    };
    let word = move || {
        let (x, y, s) = taps.with(|t| t.last().copied())?;
        let q = view_of::at(x, y);
        (!looked.get() && (x - at.get()).abs() < 0.004).then(|| view! { <text class="tap-word" x=format!("{:.1}", q.x) y=format!("{:.1}", q.y + 13.0) text-anchor="middle">{settings.t(s.label())}</text> })
    };
    view! {
        <div class="room-pane framing-pane" class:looked=move || looked.get() node_ref=node>
            <svg class="roof-view" viewBox=move || { let (x, w) = frame.get(); format!("{x:.1} 0 {w:.1} {high}") } preserveAspectRatio="none" role="application" tabindex="0" aria-label=roof_words
                on:keydown=key on:pointerdown=take on:pointermove=move |ev| to(&ev) on:pointerup=lift on:pointercancel=move |_| held.set_value(None)>
                {move || roofing(settings.reader())}{under}{lines}{heard}{driven}{hammer}{word}</svg>
        </div>
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
            let most_n = set.with(|s| roof.with(|q| holds_n(s, q, q.rafters_m()[0], 1.0)));
            let bars = work.with(|w| {
                w.iter()
                    .filter(|d| !d.pulled)
                    .enumerate()
                    .map(|(i, d)| {
                        let holds = set.with(|s| roof.with(|q| holds_n(s, q, d.x_m, d.in_share)));
                        let class = if roof.with(|q| q.is_framing(d.x_m)) { "bar-of hit" } else { "bar-of miss" };
                        let high = format!("height:{:.0}%", (100.0 * holds / most_n.max(1.0)).clamp(3.0, 100.0));
                        view! { <li class=class><i prop:style=high></i><small>{i + 1}" · "{r.q(Quantity::Force, holds, Rounding::Down)}</small></li> }
                    })
                    .collect_view()
            });
            let severity = if found.misses + found.proud + found.open_holes == 0 && found.hits > 0 { Severity::Note } else { Severity::Major };
            view! {
                <div class="result" role="status" tabindex="-1" id="under-roof">
                    <div class="head">{mark(severity)}<div class="told-lines"><p class="sentence">{line}</p><p class="figure-line">{marks}" "{r.t(W::FramingFar)}</p></div></div>
                    <ol class="nail-bars">{bars}</ol>
                    {strength.map(|s| view! { <details class="guide"><summary>{r.t(crate::texts::Stage::Why)}</summary>{s}</details> })}
                    <div class="next">
                        <button type="button" on:click=move |_| again()>{r.t(W::FramingAgain)}</button>
                        {match built {
                            Some(s) => view! { <button type="button" class="main" id="fall-on-it" on:click=move |_| to_bench(&s)>{r.t(W::FramingFall)}</button> }.into_any(),
                            None => view! { <p>{r.t(W::FramingNothing)}</p> }.into_any(),
                        }}</div>
                </div>
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
                {move_by(MOVES_M[0], "+")}{move_by(MOVES_M[1], "++")}
                <button type="button" class="step" id="hammer-down" aria-label=settings.s(W::HammerDown) on:click=move |_| search.up_to(search.up.get_untracked() - UP_M)>"↓"</button>
                <button type="button" class="step" id="hammer-up" aria-label=settings.s(W::HammerUp) on:click=move |_| search.up_to(search.up.get_untracked() + UP_M)>"↑"</button></div></div>
    }
}

/// What can be done with the hammer.
#[component]
fn Tools(search: Search) -> impl IntoView {
    let Search { settings, sound_on, looked, refused, .. } = search;
    let told = move || {
        let r = settings.reader();
        match refused.get() {
            Some(Blow::TooNear(m)) => too_near(r, m),
            _ => search.told(),
        }
    };
    view! {
        <div class="framing-card">
            <div class="framing-told"><p role="status" id="drive-told">{told}</p>
                <p class="figure-line">{move || settings.reader().f(W::HomeTold, &[("n", &search.in_place().to_string())])}</p></div>
            {move || search.gauge()}
        </div>
        <Hammer search=search />
        <div class="tool-row">
            <button type="button" class="main" id="tap" on:click=move |_| search.tap()>{settings.s(W::FramingTap)}</button>
            <button type="button" id="chalk" on:click=move |_| search.mark()>{settings.s(W::FramingMark)}</button>
            <button type="button" id="strike" on:click=move |_| search.strike()>{settings.s(W::FramingStrike)}</button>
            <button type="button" id="pull" aria-disabled=move || search.last().is_none().to_string() on:click=move |_| search.pull()>{settings.s(W::FramingPull)}</button>
            <button type="button" id="seal" aria-disabled=move || (!search.has_open_hole()).to_string() on:click=move |_| search.seal()>{settings.s(W::FramingSeal)}</button>
            <label class="pill"><input type="checkbox" prop:checked=move || sound_on.get() on:change=move |_| sound_on.update(|s| *s = !*s) /><span>{settings.s(W::FramingSound)}</span></label>
            <button type="button" id="look-under" on:click=move |_| { looked.set(true); view::to_view("under-roof") }>{settings.s(W::FramingDone)}</button>
        </div>
    }
}

#[component]
pub fn Framing() -> impl IntoView {
    view::fill_the_window();
    let settings = settings();
    let search = Search {
        visit: visit(),
        settings,
        roof: RwSignal::new(Roof::of(u64::from(super::desk::fresh_seed() as u32))),
        at: RwSignal::new(0.3),
        up: RwSignal::new(0.6),
        refused: RwSignal::new(None),
        taps: RwSignal::new(vec![]),
        chalk: RwSignal::new(vec![]),
        work: RwSignal::new(vec![]),
        sound_on: RwSignal::new(true),
        looked: RwSignal::new(false),
        audio: StoredValue::new_local(None),
    };
    let looked = search.looked;
    let begun = RwSignal::new(search.take_up());
    Effect::new(move |_| search.keep(begun.get()));
    view! {
        <main class="page framing">
            <RoomBar back=W::BackToList to=Callback::new(|()| view::go(View::Lessons)) title=settings.s(W::FramingName) />
            <Strip search=search />
            <section class="strip framing-strip">
                <Show when=move || !begun.get()>
                    <p class="rescue-caution">{settings.s(W::FramingCaution)}</p>
                    <p class="stem">{settings.s(W::FramingLead)}</p>
                    <button type="button" class="main" id="framing-begin" on:click=move |_| { begun.set(true); view::to_view("tap") }>{settings.s(W::DayGo)}</button>
                </Show>
                <Show when=move || begun.get() && !looked.get()><Tools search=search /></Show>
                <UnderRoof search=search />
            </section>
        </main>
    }
}
