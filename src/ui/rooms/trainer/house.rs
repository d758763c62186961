//! A sheet for tomorrow's house: its measures, the crew's gear and the place's rules on one page to print. It
//! supports and does not replace a competent person's plan; boxes are never ticked by us.

use crate::geometry::{Geometry, p};
use crate::grade::pieces::Piece;
use crate::grade::report::Report;
use crate::physics::ladder;
use crate::physics::trace::Outcome;
use crate::rules::Severity;
use crate::rules::clearance::{Term, terms};
use crate::rules::{AnchorLimit, FindingCode, HARD_SWING_M_S, LimitKind, Place, place, reserve};
use crate::scenario::{AnchorKind, PowerLine, Scenario, Stance};
use crate::scene::camera::Frame;
use crate::scene::figure::figure;
use crate::scene::front::Front;
use crate::scene::house::house;
use crate::scene::ink::{Shape, line};
use crate::scene::standing_scene;
use crate::studies::along_wall::{Swing, reach_m};
use crate::texts::say::{self, Reader};
use crate::texts::{Key, Room as W, Trainer as T};
use crate::ui::rooms::desk::desk;
use crate::ui::rooms::paper::{Foot, Lines};
use crate::ui::rooms::visit;
use crate::ui::shared::asking;
use crate::ui::shared::figure::{defs, still};
use crate::ui::shared::settings::settings;
use crate::ui::shared::store as kept;
use crate::ui::shared::view::{self, View};
use crate::units::{Quantity, Rounding, Units, read_length};
use crate::worker::questions::{Fall, Swings};
use leptos::prelude::*;
use serde::{Deserialize, Serialize};
use std::sync::Arc;
use wasm_bindgen::JsCast;

/// Where the sheet's own draft is kept.
const DRAFT: &str = "shortfall.house";
/// Most signers on a sheet; more sign on the session record.
const MOST_SIGNERS: usize = 6;

/// What is written on the sheet besides the set-up.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
struct Words {
    address: String,
    work: String,
    day: String,
    crew: String,
    by: String,
    hospital: String,
}

/// The draft: kept on the device as it is typed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
struct Draft {
    set_up: Scenario,
    words: Words,
}

/// A measure of the house: how it is got and put, and the range that the scenario allows.
#[derive(Clone, Copy)]
struct Measure {
    key: Key,
    id: &'static str,
    get: fn(&Scenario) -> Option<f64>,
    put: fn(&mut Scenario, f64),
}

const HOUSE: [Measure; 3] = [
    Measure {
        key: Key::EaveHeight,
        id: "m-eave",
        get: |s| Some(s.house.eave_height_m),
        put: |s, m| s.house.eave_height_m = m,
    },
    Measure {
        key: Key::HalfSpan,
        id: "m-span",
        get: |s| Some(s.house.half_span_m),
        put: |s, m| s.house.half_span_m = m,
    },
    Measure {
        key: Key::Overhang,
        id: "m-over",
        get: |s| Some(s.house.overhang_m),
        put: |s, m| s.house.overhang_m = m,
    },
];

const LADDER: [Measure; 3] = [
    Measure {
        key: Key::LadderLength,
        id: "m-long",
        get: |s| Some(s.ladder.length_m),
        put: |s, m| s.ladder.length_m = m,
    },
    Measure {
        key: Key::LadderFoot,
        id: "m-foot",
        get: |s| Some(s.ladder.foot_distance_m),
        put: |s, m| s.ladder.foot_distance_m = m,
    },
    Measure {
        key: Key::StandingHeight,
        id: "m-boots",
        get: |s| match s.stance {
            Stance::Ladder { standing_height_m } => Some(standing_height_m),
            Stance::Roof { .. } => None,
        },
        put: |s, m| s.stance = Stance::Ladder { standing_height_m: m },
    },
];

/// The gear's own, under the names of its parts.
const GEAR: [(T, Measure); 3] = [
    (
        T::SheetGrabRow,
        Measure {
            key: Key::GrabHeight,
            id: "m-grab",
            get: |s| Some(s.grab.above_dring_m),
            put: |s, m| s.grab.above_dring_m = m,
        },
    ),
    (
        T::SheetLinkRow,
        Measure {
            key: Key::LanyardLength,
            id: "m-link",
            get: |s| Some(s.lanyard.length_m),
            put: |s, m| s.lanyard.length_m = m,
        },
    ),
    (
        T::SheetRopeRow,
        Measure {
            key: Key::RopeLength,
            id: "m-rope",
            get: |s| Some(s.lifeline.length_m),
            put: |s, m| s.lifeline.length_m = m,
        },
    ),
];

/// A judged fall, and the falls along the wall.
type Computed = (Arc<Report>, Arc<Vec<Swing>>);
/// Puts a number into a set-up.
type Put = Box<dyn FnOnce(&mut Scenario, f64)>;

/// The signals of the room.
#[derive(Clone, Copy)]
struct Desk {
    draft: RwSignal<Draft>,
    /// What was computed, and of which set-up.
    found: RwSignal<Option<Computed>>,
    /// The set-up cannot be played: what is wrong with it.
    wrong: RwSignal<String>,
    turn: StoredValue<u32>,
    told: RwSignal<String>,
    unkept: RwSignal<bool>,
}

impl Desk {
    /// Has the set-up computed; an answer to an earlier one is let go.
    fn ask(self, r: Reader) {
        let Some(mine) = self.turn.try_update_value(|t| {
            *t += 1;
            *t
        }) else {
            return;
        };
        self.found.set(None);
        let s = self.draft.with_untracked(|d| d.set_up.clone());
        let set_up = match s.set_up() {
            Ok(set_up) => set_up,
            Err(problems) => {
                let words = problems.first().map_or(String::new(), |p| say::problem(r, p));
                return self.wrong.set(if words.is_empty() { r.t(T::HandNone).to_owned() } else { words });
            }
        };
        self.wrong.set(String::new());
        let is_mine = move || self.turn.try_get_value() == Some(mine);
        let asked = set_up.clone();
        asking::ask(Fall(set_up.clone()), move |answer| {
            let rep = answer.ok().filter(|t| is_mine() && t.is_sound()).and_then(|t| Report::of(asked, t));
            let Some(rep) = rep else {
                if is_mine() {
                    self.wrong.set(r.t(T::NotShown).to_owned());
                }
                return;
            };
            asking::ask(Swings(set_up), move |answer| {
                if is_mine() {
                    self.found.set(Some((Arc::new(rep), Arc::new(answer.unwrap_or_default()))));
                }
            });
        });
    }

    fn edit(self, r: Reader, how: impl FnOnce(&mut Draft)) {
        let before = self.draft.with_untracked(|d| d.set_up.clone());
        self.draft.update(how);
        self.unkept.set(!kept::keep_text(DRAFT, &self.draft.get_untracked()));
        if self.draft.with_untracked(|d| d.set_up != before) {
            self.ask(r);
        }
    }
}

/// The room.
#[component]
pub fn House() -> impl IntoView {
    let (visit, settings) = (visit(), settings());
    let from_bench = move || visit.set_up.get_untracked();
    let mut draft = kept::kept_text::<Draft>(DRAFT)
        .filter(|d| d.set_up.range_problems().is_empty())
        .unwrap_or_else(|| Draft { set_up: from_bench(), words: Words::default() });
    draft.set_up.place = from_bench().place;
    if matches!(draft.set_up.stance, Stance::Roof { .. }) {
        draft.set_up.stance = Scenario::default().stance;
    }
    let desk = Desk {
        draft: RwSignal::new(draft),
        found: RwSignal::new(None),
        wrong: RwSignal::new(String::new()),
        turn: StoredValue::new(0),
        told: RwSignal::new(String::new()),
        unkept: RwSignal::new(false),
    };
    desk.ask(settings.reader_now());
    // The rules are those of the menu, also while the sheet is open.
    Effect::new(move |_| {
        let law = visit.set_up.with(|s| s.place.clone());
        if desk.draft.with_untracked(|d| d.set_up.place != law) {
            desk.edit(settings.reader_now(), |d| d.set_up.place = law);
        }
    });
    Effect::new(move |_| {
        desk.found.track();
        desk.draft.track();
        settings.lang.track();
        fit_the_page();
    });
    let anew = move |_| {
        let mut s = from_bench();
        if matches!(s.stance, Stance::Roof { .. }) {
            s.stance = Scenario::default().stance;
        }
        desk.edit(settings.reader_now(), |d| d.set_up = s);
    };
    view! {
        <main class="page house-room">
            <section class="no-print"><h2 id="house-h" tabindex="-1">{settings.s(T::HandSheet)}</h2><p class="lead">{settings.s(T::SheetLead)}</p><p class="hint">{settings.s(T::SheetStart)}</p>
                <div class="measures"><WordsOf desk=desk /><Measures desk=desk /></div>
                <super::photo::PhotoRead take=Callback::new(move |q: crate::practice::photo::Read| {
                    let r = settings.reader_now();
                    let mut tried = desk.draft.with_untracked(|d| d.set_up.clone());
                    tried.house.eave_height_m = cm(q.eave_m);
                    tried.house.half_span_m = cm(q.span_m);
                    tried.house.overhang_m = cm(q.overhang_m);
                    tried.house.roof_pitch_rad = q.pitch_rad;
                    match tried.range_problems().first() {
                        Some(p) => desk.told.set(say::problem(r, p)),
                        None => desk.edit(r, |d| d.set_up = tried),
                    }
                }) />
                <p class="problems" role="alert" class:away=move || desk.wrong.with(String::is_empty)>{move || desk.wrong.get()}</p>
                <p class="hint" role="status">{move || if desk.unkept.get() { settings.t(T::NotKept).to_owned() } else if desk.told.with(String::is_empty) { settings.t(T::SheetDraft).to_owned() } else { desk.told.get() }}</p>
                <div class="row buttons"><button type="button" class="main" id="print" on:click=move |_| { let _ = window().print(); }>{settings.s(W::Print)}</button>
                    <button type="button" id="house-try" on:click=move |_| view::to_bench(&desk.draft.with_untracked(|d| d.set_up.clone()))>{settings.s(T::SheetToTry)}</button>
                    <button type="button" id="house-anew" on:click=anew>{settings.s(T::SheetAnew)}</button>
                    <button type="button" id="hand-back" on:click=move |_| view::go(View::Bench)>{settings.s(T::HandBack)}</button></div></section>
            {move || match desk.found.get() {
                Some((rep, swings)) => page(settings.reader(), &desk.draft.with(|d| d.words.clone()), &rep, &swings).into_any(),
                None => view! { <p class="hint no-print" role="status">{desk.wrong.with(String::is_empty).then(|| settings.t(T::SheetWaiting))}</p> }.into_any(),
            }}
        </main>
    }
}

/// What a Letter page leaves for the sheet, and how wide it is printed there, px (96 to an inch, margins of 10 mm).
const PAGE_PX: (f64, f64) = (718.0, 930.0);
/// The sheet's own margins on the screen, px.
const SHOWN_MARGIN_PX: f64 = 92.0;

/// Longer laws, longer words: the sheet is printed smaller where it would need a second page.
fn fit_the_page() {
    request_animation_frame(|| {
        let Ok(Some(e)) = document().query_selector(".set-up-sheet") else { return };
        let (wide, high) = (f64::from(e.client_width()), f64::from(e.scroll_height()));
        // What is set narrower on the screen runs longer there, by about as much.
        let printed = (high - SHOWN_MARGIN_PX) * (wide - SHOWN_MARGIN_PX) / PAGE_PX.0;
        let fit = (PAGE_PX.1 / printed.max(1.0)).min(1.0);
        if let Some(e) = e.dyn_ref::<web_sys::HtmlElement>() {
            let _ = e.style().set_property("--fit", &format!("{fit:.3}"));
        }
    });
}

/// Why what was typed is not taken: out of its range, or no number at all.
fn refused(r: Reader, tried: &Scenario, text: &str, value: &str) -> String {
    match tried.range_problems().first() {
        Some(p) => say::problem(r, p),
        None => r.f(T::SheetNotRead, &[("text", text), ("value", value)]),
    }
}

/// To the centimetre: a photo gives no more.
fn cm(x_m: f64) -> f64 {
    (x_m * 100.0).round() / 100.0
}

/// The measures, typed as people write them.
#[component]
fn Measures(desk: Desk) -> impl IntoView {
    let settings = settings();
    let shown = move |m: Measure| {
        desk.draft
            .with(|d| (m.get)(&d.set_up))
            .map_or(String::new(), |x| settings.reader().q(Quantity::Length, x, Rounding::Nearest))
    };
    let put = move |m: Measure, text: String| {
        let r = settings.reader_now();
        let mut tried = desk.draft.with_untracked(|d| d.set_up.clone());
        let read = read_length(&text, r.units);
        if let Some(x) = read {
            (m.put)(&mut tried, x);
        }
        if read.is_none() || !tried.range_problems().is_empty() {
            let value = untrack(|| shown(m));
            desk.told.set(refused(r, &tried, &text, &value));
            // The field shows again what stands.
            return desk.draft.update(|_| ());
        }
        desk.told.set(String::new());
        desk.edit(r, |d| d.set_up = tried);
    };
    let field = move |name: Option<T>, m: Measure| {
        let label = move || match name {
            Some(n) => format!("{}, {}", settings.t(n), say::lower_first(settings.t(m.key))),
            None => settings.t(m.key).to_owned(),
        };
        view! { <label class="line"><span>{label}</span><input type="text" id=m.id autocomplete="off" prop:value=move || shown(m) on:change=move |ev| put(m, event_target_value(&ev)) /></label> }
    };
    let pitch =
        move || format!("{:.1}", desk.draft.with(|d| libm::tan(d.set_up.house.roof_pitch_rad) * 12.0));
    let mass = move || {
        desk.draft.with(|d| settings.reader().q(Quantity::Mass, d.set_up.worker.mass_kg, Rounding::Nearest))
    };
    let number =
        |text: &str| text.split_whitespace().next().unwrap_or_default().replace(',', ".").parse::<f64>().ok();
    let try_put = move |text: String, whole: bool, how: Put, value: String| {
        let r = settings.reader_now();
        let mut tried = desk.draft.with_untracked(|d| d.set_up.clone());
        let read = number(&text.replace('\u{a0}', " ")).filter(|x| !whole || x.fract() == 0.0);
        if let Some(x) = read {
            how(&mut tried, x);
        }
        if read.is_none() || !tried.range_problems().is_empty() {
            desk.told.set(refused(r, &tried, &text, &value));
            return desk.draft.update(|_| ());
        }
        desk.told.set(String::new());
        desk.edit(r, |d| d.set_up = tried);
    };
    let wired = move || desk.draft.with(|d| d.set_up.power_line.is_some());
    let wire: [(T, Measure); 2] = [
        (
            T::SheetWireHigh,
            Measure {
                key: Key::RopeLength,
                id: "m-wire-high",
                get: |s| s.power_line.map(|w| w.height_m),
                put: |s, m| {
                    if let Some(w) = &mut s.power_line {
                        w.height_m = m
                    }
                },
            },
        ),
        (
            T::SheetWireFar,
            Measure {
                key: Key::RopeLength,
                id: "m-wire-far",
                get: |s| s.power_line.map(|w| w.distance_m),
                put: |s, m| {
                    if let Some(w) = &mut s.power_line {
                        w.distance_m = m
                    }
                },
            },
        ),
    ];
    let anchors = move || {
        let r = settings.reader();
        let now = desk.draft.with(|d| d.set_up.anchor.kind);
        [AnchorKind::RidgePlateInFraming, AnchorKind::RatedEye, AnchorKind::ChimneySling]
            .into_iter()
            .enumerate()
            .map(|(i, k)| view! { <option value=i.to_string() prop:selected=k == now>{r.t(k.label())}</option> })
            .collect_view()
    };
    let set_anchor = move |ev: web_sys::Event| {
        let kinds = [AnchorKind::RidgePlateInFraming, AnchorKind::RatedEye, AnchorKind::ChimneySling];
        if let Some(k) = event_target_value(&ev).parse::<usize>().ok().and_then(|i| kinds.get(i).copied()) {
            desk.edit(settings.reader_now(), |d| d.set_up.anchor.kind = k);
        }
    };
    let per_side = move || desk.draft.with(|d| d.set_up.anchor.fasteners.per_side.to_string());
    view! {
        <fieldset class="card"><legend>{settings.s(T::SheetHouse)}</legend>{HOUSE.map(|m| field(None, m)).into_iter().collect_view()}
            <label class="line"><span>{settings.s(T::SheetPitch)}</span><input type="text" inputmode="decimal" id="m-pitch" prop:value=pitch
                on:change=move |ev| try_put(event_target_value(&ev), false, Box::new(|s, x| s.house.roof_pitch_rad = libm::atan(x / 12.0)), untrack(pitch)) /></label></fieldset>
        <fieldset class="card"><legend>{settings.s(T::SheetLadderWires)}</legend>{LADDER.map(|m| field(None, m)).into_iter().collect_view()}
            <label class="pill"><input type="checkbox" id="m-wire" prop:checked=wired on:change=move |ev| { let on = event_target_checked(&ev); desk.edit(settings.reader_now(), |d| d.set_up.power_line = on.then(PowerLine::default)) } /><span>{settings.s(T::SheetWireNear)}</span></label>
            <Show when=wired>{wire.map(|(n, m)| view! { <label class="line"><span>{settings.s(n)}</span><input type="text" id=m.id prop:value=move || shown(m) on:change=move |ev| put(m, event_target_value(&ev)) /></label> }).into_iter().collect_view()}</Show></fieldset>
        <fieldset class="card"><legend>{settings.s(T::SheetGear)}</legend>{GEAR.map(|(n, m)| field(Some(n), m)).into_iter().collect_view()}
            <label class="line"><span>{settings.s(T::SheetMass)}</span><input type="text" inputmode="decimal" id="m-mass" prop:value=mass
                on:change=move |ev| { let k = Quantity::Mass.shown_per_si(settings.reader_now().units); try_put(event_target_value(&ev), false, Box::new(move |s, x| s.worker.mass_kg = x / k), untrack(mass)) } /></label>
            <label class="line"><span>{settings.s(T::SheetAnchorKind)}</span><select id="m-anchor" on:change=set_anchor>{anchors}</select></label>
            <label class="line"><span>{settings.s(T::SheetPerSide)}</span><input type="text" inputmode="numeric" id="m-side" prop:value=per_side
                on:change=move |ev| try_put(event_target_value(&ev), true, Box::new(|s, x| s.anchor.fasteners.per_side = x as u32), untrack(per_side)) /></label></fieldset>
    }
}

/// Who and where.
#[component]
fn WordsOf(desk: Desk) -> impl IntoView {
    let settings = settings();
    let crew = self::desk();
    let text = move |k: T,
                     id: &'static str,
                     get: fn(&Words) -> &String,
                     put: fn(&mut Words) -> &mut String| {
        view! { <label class="line"><span>{settings.s(k)}</span><input type="text" id=id maxlength="120" autocomplete="off" prop:value=move || desk.draft.with(|d| get(&d.words).clone())
        on:input=move |ev| { let t = event_target_value(&ev); desk.edit(settings.reader_now(), |d| *put(&mut d.words) = t) } /></label> }
    };
    let names = move || crew.crew.get().into_iter().take(MOST_SIGNERS).collect::<Vec<_>>().join("\n");
    view! {
        <fieldset class="card"><legend>{settings.s(T::SheetWords)}</legend>
            {text(T::SheetAddress, "w-address", |w| &w.address, |w| &mut w.address)}
            {text(T::SheetWork, "w-work", |w| &w.work, |w| &mut w.work)}
            {text(T::SheetDay, "w-day", |w| &w.day, |w| &mut w.day)}
            {text(T::SheetBy, "w-by", |w| &w.by, |w| &mut w.by)}
            {text(T::SheetHospital, "w-hospital", |w| &w.hospital, |w| &mut w.hospital)}
            <label class="line"><span>{settings.s(T::SheetCrew)}</span><textarea id="w-crew" rows="3" maxlength="400" prop:placeholder=names prop:value=move || desk.draft.with(|d| d.words.crew.clone())
                on:input=move |ev| { let t = event_target_value(&ev); desk.edit(settings.reader_now(), |d| d.words.crew = t) }></textarea></label></fieldset>
    }
}

/// Standard scales, the largest first: metric ones, or an eighth, a sixteenth and so on of an inch to the foot.
const SCALES: [f64; 8] = [50.0, 64.0, 75.0, 100.0, 125.0, 150.0, 200.0, 300.0];
/// Room for both drawings on the page, mm.
const DRAWN_MM: (f64, f64) = (128.0, 77.0);

/// Section and front at one scale, with their dimensions.
fn drawings(r: Reader, s: &Scenario, g: &Geometry) -> impl IntoView + use<> {
    let low = g.ground_y_m(g.ladder.foot.x) - 0.95;
    let top = g.ridge.y + 0.7;
    let section =
        Frame { left_m: g.ridge.x - 0.3, right_m: g.ladder.foot.x + 1.5, bottom_m: low, top_m: top };
    let front = Frame { left_m: -4.2, right_m: 4.2, bottom_m: low, top_m: top };
    let (wide, high) = (section.width_m() + front.width_m(), section.height_m());
    let fits = |n: &&f64| wide * 1e3 / **n <= DRAWN_MM.0 && high * 1e3 / **n <= DRAWN_MM.1;
    let scale = SCALES.iter().find(fits).copied().unwrap_or(400.0);
    let mm = |f: Frame| {
        format!("width:{:.1}mm;height:{:.1}mm", f.width_m() * 1e3 / scale, f.height_m() * 1e3 / scale)
    };
    let len = |m: f64| r.q(Quantity::Length, m, Rounding::Nearest);
    let letters = 0.29 * scale;
    let ground = g.ground_y_m(g.ladder.foot.x);
    let up = |x: f64, to: f64, words: String| {
        let d = line(&[p(x, ground), p(x, to)])
            + &line(&[p(x - 0.12, ground), p(x + 0.12, ground)])
            + &line(&[p(x - 0.12, to), p(x + 0.12, to)]);
        let (tx, ty) = (100.0 * (x - 0.08), -100.0 * (ground + to) / 2.0);
        (
            Shape::new("dim", d),
            view! { <text x=tx y=ty font-size=letters text-anchor="middle" transform=format!("rotate(-90 {tx:.1} {ty:.1})")>{words}</text> },
        )
    };
    let foot = g.ladder.foot.x;
    let (eave, eave_words) = up(foot + 1.25, g.eave.y, len(g.eave.y - ground));
    let (boots, boots_words) = up(foot + 0.6, g.soles.y, len(g.soles.y - ground));
    let out = line(&[p(g.ladder.support.x, ground - 0.18), p(foot, ground - 0.18)]);
    let out_words = view! { <text x=100.0 * (g.ladder.support.x + foot) / 2.0 y=-100.0 * (ground - 0.22) + letters font-size=letters text-anchor="middle">{len(s.ladder.foot_distance_m)}</text> };
    let built = house(g, s);
    let stands = figure(&standing_scene(s, g), s, g);
    let seen = Front::of(s, g).shapes();
    view! {
        <div class="plans">
            <div><p><b>{r.t(T::SheetSection)}</b></p><svg class="drawing thinned" viewBox=section.view_box() prop:style=mm(section) aria-hidden="true">{defs()}{still(built)}<g class="figure">{still(stands)}</g>{still(vec![eave, boots, Shape::new("dim", out)])}{eave_words}{boots_words}{out_words}</svg></div>
            <div><p><b>{r.t(T::SheetFront)}</b>" "<small>{r.f(T::SheetScale, &[("n", &format!("{scale:.0}"))])}</small></p><svg class="drawing thinned front" viewBox=front.view_box() prop:style=mm(front) aria-hidden="true">{still(seen)}</svg></div>
        </div>
    }
}

/// A length rounded in the reader's own unit, m: up, or down.
fn rounded(r: Reader, m: f64, up: bool) -> f64 {
    let k = Quantity::Length.shown_per_si(r.units) * if r.units == Units::Metric { 100.0 } else { 10.0 };
    (if up { (m * k - 1e-6).ceil() } else { (m * k + 1e-6).floor() }) / k
}

/// Pieces of a length as one bar, each with a pattern of its own, and its row under it. They are rounded already.
fn bar(r: Reader, pieces: &[(&'static str, f64)], whole_m: f64) -> impl IntoView + use<> {
    let parts = pieces.iter().enumerate().map(|(i, (_, m))| view! { <i class=format!("p{}", i % 7) prop:style=format!("width:{:.2}%", 100.0 * m / whole_m.max(1e-6))></i> }).collect_view();
    let rows = pieces
        .iter()
        .enumerate()
        .map(|(i, (name, m))| view! { <li><i class=format!("key p{}", i % 7)></i><span>{*name}</span><b>{r.q(Quantity::Length, *m, Rounding::Nearest)}</b></li> })
        .collect_view();
    view! { <div class="term-bar">{parts}</div><ul class="term-rows">{rows}</ul> }
}

fn boxes(r: Reader, all: &[T]) -> impl IntoView + use<> {
    let rows = all.iter().map(|t| view! { <li><i class="tick-box"></i>{r.t(*t)}</li> }).collect_view();
    view! { <ul class="checks">{rows}</ul> }
}

/// Clearance: the usual sum and the engine's own as two bars of one length. Needs are rounded up, room is rounded
/// down, and each bar's rows add up to its whole.
fn room(r: Reader, rep: &Report, room_m: f64) -> impl IntoView + use<> {
    let s = &rep.set_up;
    let len = |m: f64| r.q(Quantity::Length, m, Rounding::Nearest);
    let room_m = rounded(r, room_m, false);
    let terms = terms(s, s.grab.above_dring_m, reserve().map_or(0.6, |l| l.value));
    let mut sum: Vec<(&'static str, f64)> = terms
        .iter()
        .filter(|t| t.1 > 5e-3)
        .map(|(t, m): &(Term, f64)| (r.t(t.label()), rounded(r, *m, true)))
        .collect();
    let needed: f64 = sum.iter().map(|t| t.1).sum();
    let spare = room_m - needed;
    if spare > 1e-6 {
        sum.push((r.t(T::SheetSpare), spare));
    }
    let whole = room_m.max(needed);
    // The boots' own way: what the pieces of the ring's drop leave is the body's turning.
    let left = rounded(r, rep.trace.clearance_margin_m.unwrap_or(0.0).max(0.0), false);
    let down = room_m - left;
    let mut pieces: Vec<(Piece, f64)> = crate::grade::pieces::drop(&rep.trace)
        .into_iter()
        .filter(|(p, _)| !matches!(p, Piece::Room | Piece::Body))
        .map(|(p, m)| (p, rounded(r, m, true)))
        .collect();
    let body = down - pieces.iter().map(|p| p.1).sum::<f64>();
    if body > 1e-6 {
        pieces.push((Piece::Body, body));
    }
    pieces.push((Piece::Room, left));
    let pieces: Vec<(&'static str, f64)> = pieces.into_iter().map(|(p, m)| (r.t(p.label()), m)).collect();
    let missing = (spare < -1e-6).then(|| format!(" {} {}", r.t(T::SheetMissing), len(-spare)));
    let limit = place(&s.place).and_then(|p| p.limit(LimitKind::BodyForce)).map(|l| {
        let force = r.q(Quantity::Force, rep.trace.judged().peak_force_n, Rounding::Up);
        (r.f(T::SheetBody, &[("force", &force), ("limit", &r.limit(l))]), r.source(l))
    });
    view! {
        <div class="room-bars"><h2>{r.f(T::SheetRoom, &[("value", &len(room_m))])}</h2>
            <p>{r.f(T::SheetSum, &[("value", &len(needed))])}{missing}</p>{bar(r, &sum, whole)}
            <p>{r.f(T::SheetEngine, &[("value", &len(down))])}</p>{bar(r, &pieces, whole)}
            {limit.map(|(t, s)| view! { <p>{t}</p><p class="small">{s}</p> })}</div>
    }
}

/// Anchor, grab and link, along the wall, ladder.
fn middle(r: Reader, rep: &Report, swings: &[Swing], own: Option<&'static Place>) -> impl IntoView + use<> {
    let s = rep.set_up.scenario();
    let len = |m: f64, how| r.q(Quantity::Length, m, how);
    let force = |n: f64, how| r.q(Quantity::Force, n, how);
    let strength = crate::strength::anchor(s);
    let asked = own.and_then(|p| p.anchor(s.lanyard.absorber.is_some())).map(|(l, kind)| {
        let basis = r.t(if matches!(kind, AnchorLimit::Working(_)) {
            T::SheetWorkingLoad
        } else {
            T::SheetBreakingLoad
        });
        (
            format!("{} ({basis}) {}", r.t(T::SheetAskedOf), r.limit(l)),
            r.source(l),
            matches!(kind, AnchorLimit::Working(_)),
        )
    });
    // Never a breaking load beside a place's working load.
    let working = asked.as_ref().is_none_or(|a| a.2);
    let carries = match (working, strength.allowable) {
        (true, Some(w)) => {
            format!("{} ({}) {}", r.t(T::SheetCarries), r.t(T::SheetWorkingLoad), force(w.0, Rounding::Down))
        }
        (true, None) => format!("{} ({}) —", r.t(T::SheetCarries), r.t(T::SheetWorkingLoad)),
        (false, _) => format!(
            "{} ({}) {}",
            r.t(T::SheetCarries),
            r.t(T::SheetBreakingLoad),
            force(strength.low.0, Rounding::Down)
        ),
    };
    let reach = reserve().and_then(|q| reach_m(swings, q.value, HARD_SWING_M_S));
    let aside = match reach.filter(|m| *m > 0.1) {
        Some(m) => r.f(T::SheetAlongMost, &[("value", &len(m, Rounding::Down))]),
        None => r.t(T::SheetAlongNone).to_owned(),
    };
    let why = r.f(T::SheetAlongWhy, &[("speed", &r.q(Quantity::Speed, HARD_SWING_M_S, Rounding::Nearest))]);
    let grab = r.f(T::SheetGrabAt, &[("offset", &say::offset(r, s.grab.above_dring_m))]);
    let ladder_line = r.f(
        T::SheetLadderLine,
        &[
            ("length", &len(s.ladder.length_m, Rounding::Nearest)),
            ("foot", &len(s.ladder.foot_distance_m, Rounding::Nearest)),
        ],
    );
    let anchor_open = [T::SheetOpenRafter, T::SheetOpenNails, T::SheetOpenWood, T::SheetOpenMaker];
    let row = |k: T, v: String| view! { <div><dt>{r.t(k)}</dt><dd>{v}</dd></div> };
    view! {
        <div class="thirds">
            <div><h2>{r.t(T::SheetAnchor)}</h2><p>{r.t(s.anchor.kind.label())}</p><p>{carries}</p>{asked.map(|a| view! { <p>{a.0}</p><p class="small">{a.1}</p> })}
                <p>{r.t(T::SheetPull)}" "{force(rep.trace.anchor_peak_n, Rounding::Up)}</p><p><b>{r.t(T::SheetOpenPoints)}</b></p>{boxes(r, &anchor_open)}</div>
            <div><h2>{r.t(T::SheetGrabLink)}</h2><dl class="pairs">{row(T::SheetRopeRow, format!("{}, {}", len(s.lifeline.length_m, Rounding::Nearest), r.t(s.lifeline.kind.label())))}{row(T::SheetGrabRow, grab)}{row(T::SheetLinkRow, len(s.lanyard.length_m, Rounding::Nearest))}
                {row(T::SheetHeaviest, r.q(Quantity::Mass, s.worker.mass_kg, Rounding::Up))}</dl>{boxes(r, &[T::SheetBoltLatch, T::SheetReaches, T::SheetPadded, T::SheetOneEach])}</div>
            <div><h2>{r.t(T::SheetAlong)}</h2><p><b>{aside}</b></p><p>{why}</p><h2>{r.t(T::SheetLadder)}</h2><p>{ladder_line}</p>
                <ul class="checks"><li><i class="tick-box"></i>{r.t(T::SheetFooting)}</li><li><i class="tick-box"></i>{r.t(T::SheetTiedBy)}<u></u></li><li><i class="tick-box"></i>{r.t(T::SheetDoors)}</li></ul></div>
        </div>
    }
}

/// The wire's bands of the place, as far as it has them.
fn wires(r: Reader, s: &Scenario, g: &Geometry, own: Option<&'static Place>) -> impl IntoView + use<> {
    let near = [ladder::nearest_to_wire_m(s, g), ladder::hand_to_wire_m(s, g)]
        .into_iter()
        .flatten()
        .reduce(f64::min);
    let near = match near {
        Some(m) => r.f(T::SheetNearest, &[("value", &r.q(Quantity::Length, m, Rounding::Down))]),
        None => r.t(T::SheetNoWire).to_owned(),
    };
    let bands: Vec<_> =
        own.map_or(vec![], |p| p.limits.iter().filter(|l| l.what == LimitKind::ApproachDistance).collect());
    let source = bands.first().map(|l| r.source(l));
    let rows = bands
        .iter()
        .map(|l| {
            let kv = l.up_to_v.map_or("—".to_owned(), |v| {
                if v <= 750.0 {
                    r.t(T::SheetUnder750).to_owned()
                } else {
                    r.f(
                        T::SheetUpTo,
                        &[("value", &r.f(T::SheetUpToV, &[("kv", &format!("{:.0}", v / 1e3))]))],
                    )
                }
            });
            view! { <div><dt>{kv}</dt><dd>{r.limit(l)}</dd></div> }
        })
        .collect_view();
    let none = bands.is_empty().then(|| view! { <p><b>{r.t(T::SheetNoTable)}</b></p> });
    view! {
        <div><h2>{r.t(T::SheetWires)}</h2><p>{near}</p><dl class="pairs">{rows}</dl>{none}{source.map(|t| view! { <p class="small">{t}</p> })}
            <p><b>{r.t(T::SheetVoltageBy)}</b><u></u></p><p>{r.t(T::SheetOf)}<u></u>{r.t(T::SheetOn)}<u class="brief"></u></p></div>
    }
}

/// What is done if somebody hangs, and who signs.
fn end(r: Reader, words: &Words, own: Option<&'static Place>) -> impl IntoView + use<> {
    // 911 is North America's; elsewhere the number is the reader's own.
    let abroad = own.is_some_and(|p| matches!(p.id.as_str(), "uk" | "eu" | "au"));
    let call = if abroad { T::SheetCallOther } else { T::SheetCall };
    let within = own.and_then(|p| p.limit(LimitKind::RescueMinutes)).map(|l| r.limit(l));
    let address =
        if words.address.trim().is_empty() { "________________".to_owned() } else { words.address.clone() };
    let mut names: Vec<String> = words
        .crew
        .lines()
        .map(str::trim)
        .filter(|n| !n.is_empty())
        .take(MOST_SIGNERS)
        .map(str::to_owned)
        .collect();
    let more = words.crew.lines().filter(|n| !n.trim().is_empty()).count().saturating_sub(MOST_SIGNERS);
    let more =
        (more > 0).then(|| view! { <p class="small">{r.f(T::SheetMore, &[("n", &more.to_string())])}</p> });
    while names.len() < 3 {
        names.push(String::new());
    }
    let signers = names.into_iter().map(|n| view! { <p class="sign-line"><span>{n}</span><u></u>{r.t(T::SheetTime)}<u class="brief"></u></p> }).collect_view();
    view! {
        <div class="halves-row">
            <div class="hangs"><h2>{r.t(T::SheetHangs)}</h2><ol><li><b>{r.f(call, &[("address", &address)])}</b></li><li>{r.t(T::SheetTalk)}</li><li>{r.t(T::SheetLadder2)}<u></u></li>
                <li>{r.t(T::SheetGoesUp)}<u></u>{r.t(T::SheetAnd)}<u></u></li><li>{r.t(T::SheetDownWithin)}" "{match within { Some(t) => view! { <b>{t}</b> }.into_any(), None => view! { <u class="brief"></u> }.into_any() }}" "{r.t(T::SheetMinPractised)}<u></u></li><li>{r.t(T::SheetNever)}</li></ol>
                <p><b>{r.t(T::SheetHospital)}{r.colon()}</b>{if words.hospital.is_empty() { view! { <u></u> }.into_any() } else { words.hospital.clone().into_any() }}</p></div>
            <div><h2>{r.t(T::SheetSigned)}</h2><p class="sign-line"><span>{r.t(T::SheetCompetent)}</span><u></u></p>{signers}{more}</div>
        </div>
    }
}

/// The page.
fn page(r: Reader, words: &Words, rep: &Report, swings: &[Swing]) -> impl IntoView + use<> {
    let s = rep.set_up.scenario().clone();
    let g = rep.set_up.geometry().clone();
    let own = place(&s.place);
    let room_m = g.soles.y - g.surface_below_m(g.soles.x, 0.25);
    let law = own.map_or(s.place.clone(), |p| r.lang.of(&p.name).to_owned());
    let blank = |t: &str| if t.trim().is_empty() { "________________".to_owned() } else { t.to_owned() };
    let crew = words.crew.lines().map(str::trim).filter(|n| !n.is_empty()).collect::<Vec<_>>().join(" · ");
    let head = view! {
        <div class="paper-head"><div><p>{r.t(T::HandSheet)}</p><h1>{blank(&words.address)}</h1></div><div class="right"><p>{blank(&words.work)}</p><b>{blank(&words.day)}</b></div></div>
        <p class="across"><span>{r.t(T::SheetCrewIs)}" "{blank(&crew)}</span><span>{law}</span><span>{r.t(T::SheetBy)}" "{blank(&words.by)}</span></p>
    };
    let foot_set_up = s.clone();
    // Where arrest cannot work the page says so, with the sum that shows why.
    let too_low = rep.findings.iter().any(|f| f.code == FindingCode::ArrestTooLow);
    if too_low || rep.trace.outcome != Outcome::Stopped {
        let why = if too_low {
            let needed: f64 = terms(&rep.set_up, s.grab.above_dring_m, reserve().map_or(0.6, |l| l.value))
                .iter()
                .map(|t| t.1)
                .sum();
            let len = |m: f64, how| r.q(Quantity::Length, m, how);
            r.f(
                T::SheetUseOtherWhy,
                &[("needed", &len(needed, Rounding::Up)), ("room", &len(room_m, Rounding::Down))],
            )
        } else {
            r.f(T::SheetFellAtAll, &[("why", &say::headline(r, rep).sentence)])
        };
        return view! {
            <section class="sheet paper shown set-up-sheet" tabindex="0" aria-label=r.t(T::HandSheet)>{head}<h1>{r.t(T::SheetUseOther)}</h1><p class="lead"><b>{why}</b></p>
                <div class="top-row">{drawings(r, &s, &g)}{room(r, rep, room_m)}</div><Lines count=4 /><Foot caution=crate::texts::Text::of(T::SheetCaution) set_up=foot_set_up /></section>
        }
        .into_any();
    }
    // What a rule is not met by stands before everything else, in a frame of its own.
    let failed: Vec<String> = rep
        .findings
        .iter()
        .filter(|f| f.severity <= Severity::Major)
        .map(|f| r.t(f.code.title()).trim_end_matches('.').to_owned())
        .collect();
    let failed = (!failed.is_empty())
        .then(|| view! { <p class="not-met"><b>"✕ "{r.t(T::SheetNotMet)}</b>" "{failed.join("; ")}"."</p> });
    view! {
        <section class="sheet paper shown set-up-sheet" tabindex="0" aria-label=r.t(T::HandSheet)>{head}{failed}
            <div class="top-row">{drawings(r, &s, &g)}{room(r, rep, room_m)}</div>
            {middle(r, rep, swings, own)}
            <div class="thirds">{wires(r, &s, &g, own)}
                <div><h2>{r.t(T::SheetFirstUp)}</h2><p>{r.t(T::NameBlank)}<u></u></p><p>{r.t(T::SheetUntil)}</p>{boxes(r, &[T::SheetLift, T::SheetFarSide])}<ul class="checks"><li><i class="tick-box"></i>{r.t(T::SheetOther)}<u></u></li></ul></div>
                <div><h2>{r.t(T::SheetWho)}</h2><p>{r.t(T::SheetWhoTold)}</p><p>{r.t(T::SheetSetBy)}<u></u></p><p>{r.t(T::SheetCheckedBy)}<u></u></p>{boxes(r, &[T::SheetHoles])}</div></div>
            {end(r, words, own)}
            <Foot caution=crate::texts::Text::of(T::SheetCaution) set_up=foot_set_up />
        </section>
    }
    .into_any()
}
