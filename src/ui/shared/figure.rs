//! House in section, worker and line as shapes. SVG in centimetres inside one flipped group; lettering
//! stands outside it.

use super::settings::settings;
use crate::geometry::{FASCIA_DEPTH_M, Geometry, LadderTop, P, p};
use crate::physics::trace::{EventKind, Trace};
use crate::scenario::{AnchorKind, Arrow, Latch, PowerLine, Scenario};
use crate::scene::worker::Bones;
use crate::scene::{Sag, Scene, build, standing_scene};
use crate::texts::Key;
use crate::texts::Room as W;
use crate::units::{Quantity, Rounding};
use leptos::prelude::*;
use std::sync::Arc;

/// The moment a still shows best: the first blow below, else the lowest point, s.
pub fn decisive_s(t: &Trace) -> f64 {
    let landed = [EventKind::StrikesGround, EventKind::StrikesObstacle]
        .into_iter()
        .filter_map(|k| t.time_of(k))
        .reduce(f64::min);
    landed.or_else(|| t.time_of(EventKind::Lowest)).unwrap_or(0.0)
}

/// Room beside the dimension lines for their lettering, m.
pub const LETTERING_M: f64 = 1.3;

/// The ground goes on this far past what is shown of it, m: a wide window shows more.
const BEYOND_M: f64 = 8.0;

/// Visible part of the plane, m: left, bottom, right, top.
pub fn bounds(g: &Geometry, s: &Scenario) -> (f64, f64, f64, f64) {
    let left = g.ridge.x.min(g.anchor.x) - 0.5;
    let right = g.ladder.foot.x.max(g.eave.x + 1.6).max(g.obstacle.map_or(0.0, |o| o.1)) + 1.1 + LETTERING_M;
    let top = (g.ridge.y + 0.5).max(g.soles.y + s.worker.stature_m + 0.3);
    // A wire near enough to matter is drawn.
    let (right, top) = match s.power_line.filter(|w| wire_is_drawn(g, w)) {
        Some(w) => (right.max(w.distance_m + 1.0), top.max(w.height_m + 0.8)),
        None => (right, top),
    };
    let falls = crate::geometry::ground_y_m(s.house.ground_slope_rad, g.ladder.foot.x + 0.6);
    (left, falls - 0.5, right, top)
}

fn wire_is_drawn(g: &Geometry, w: &PowerLine) -> bool {
    w.distance_m < g.ladder.foot.x + 16.0 && w.height_m < g.ridge.y + 8.0
}

pub fn cm(x: f64) -> f64 {
    (x * 1000.0).round() / 10.0
}

fn path(points: &[P]) -> String {
    let mut d = String::new();
    for (i, q) in points.iter().enumerate() {
        d.push_str(&format!("{}{} {}", if i == 0 { "M" } else { "L" }, cm(q.x), cm(q.y)));
    }
    d
}

fn curve(s: &Sag) -> String {
    format!(
        "M{} {}Q{} {} {} {}",
        cm(s.from.x),
        cm(s.from.y),
        cm(s.via.x),
        cm(s.via.y),
        cm(s.to.x),
        cm(s.to.y)
    )
}

/// The torn part of an absorber: webbing let out in folds.
fn folds(a: P, b: P) -> String {
    let l = a.dist(b);
    if l < 0.01 {
        return String::new();
    }
    let n = ((l / 0.05) as usize).clamp(2, 40);
    let (ux, uy) = ((b.x - a.x) / l, (b.y - a.y) / l);
    let points: Vec<P> = (0..=n)
        .map(|i| {
            let k = i as f64 / n as f64;
            let side = if i == 0 || i == n {
                0.0
            } else if i % 2 == 0 {
                0.025
            } else {
                -0.025
            };
            p(a.x + (b.x - a.x) * k - uy * side, a.y + (b.y - a.y) * k + ux * side)
        })
        .collect();
    path(&points)
}

/// Worker, rope, lanyard and grab of one scene. `ghost` draws outlines only.
#[component]
pub fn Figure(
    scene: Signal<Option<Scene>>,
    set_up: Signal<Scenario>,
    #[prop(optional)] ghost: bool,
) -> impl IntoView {
    let get = move |f: fn(&Scene) -> String| {
        Signal::derive(move || scene.with(|s| s.as_ref().map_or(String::new(), f)))
    };
    let bone = move |f: fn(&Bones) -> String| {
        Signal::derive(move || {
            scene.with(|s| s.as_ref().and_then(|s| Bones::of(&s.limbs)).map_or(String::new(), |b| f(&b)))
        })
    };
    // Each limb is one stroke through its joints: ink under, cloth over. A ghost is the bones alone.
    let limb = move |class: &'static str, d: Signal<String>| {
        if ghost {
            return view! { <path class="bone" d=d /> }.into_any();
        }
        view! {
            <path class=format!("limb ink {class}") d=d />
            <path class=format!("limb cloth {class}") d=d />
        }
        .into_any()
    };
    // As thick as the bodies that the engine moves, so that no knee is drawn into what it rests on.
    let leg = move |side: &'static str, thigh: Signal<String>, shin: Signal<String>| {
        if ghost {
            return view! { <path class="bone" d=thigh /><path class="bone" d=shin /> }.into_any();
        }
        view! {
            <path class=format!("limb ink shin{side}") d=shin />
            <path class=format!("limb ink thigh{side}") d=thigh />
            <path class=format!("limb cloth shin{side}") d=shin />
            <path class=format!("limb cloth thigh{side}") d=thigh />
        }
        .into_any()
    };
    let far_boot = bone(|b| format!("{}Z", path(&b.boots[1])));
    let near_boot = bone(|b| format!("{}Z", path(&b.boots[0])));
    let behind = view! {
        {leg(" far", bone(|b| path(&b.far_leg[..2])), bone(|b| path(&b.far_leg[1..])))}
        <path class="boot far" d=far_boot />
    };
    let body = view! {
        {limb("trunk", bone(|b| path(&[b.neck, b.waist, b.hip])))}
        <g class="limb head" transform=bone(|b| format!("translate({},{}) rotate({:.2})", cm(b.head.x), cm(b.head.y),
            b.head_turn_rad.to_degrees()))>
            <circle class="face" r=bone(|b| cm(b.head_radius_m).to_string()) />
            {(!ghost).then(|| view! {
                <path class="helmet" d=bone(|b| {
                    let r = b.head_radius_m * 1.1;
                    // Over the brow and the crown, the peak to the front.
                    format!(
                        "M{} {}A{} {} 0 0 1 {} {}L{} {}L{} {}Z",
                        cm(r), cm(0.1 * r), cm(r), cm(r), cm(-r), cm(0.1 * r),
                        cm(-1.5 * r), cm(0.06 * r), cm(-1.45 * r), cm(-0.1 * r)
                    )
                }) />
            })}
        </g>
        {leg("", bone(|b| path(&b.near_leg[..2])), bone(|b| path(&b.near_leg[1..])))}
        <path class="boot" d=near_boot />
    };
    // The only webbing in colour: over the chest to the ring between the shoulder blades, belt and leg loop.
    let straps = (!ghost).then(|| {
        view! {
            <path class="strap" d=bone(|b| {
                format!("{}{}{}", path(&[b.neck, b.chest[1], b.belt[1]]), path(&b.belt), path(&[b.belt[1], b.leg_loop[0], b.leg_loop[1]]))
            }) />
        }
    });
    let arm = limb("arm", bone(|b| path(&b.arm)));
    let hand = (!ghost).then(|| {
        view! { <circle class="hand" r="5.5" cx=bone(|b| cm(b.arm[2].x).to_string()) cy=bone(|b| cm(b.arm[2].y).to_string()) /> }
    });
    let grab_place = get(|s| {
        format!("translate({},{}) rotate({:.1})", cm(s.grab.x), cm(s.grab.y), -s.grab_tilt_rad.to_degrees())
    });
    let arrow = move || {
        set_up.with(|s| if s.grab.arrow == Arrow::Up { "M-5 -3L0 7L5 -3Z" } else { "M-5 3L0 -7L5 3Z" })
    };
    let latch =
        move || set_up.with(|s| if s.grab.latch == Latch::Closed { "M8 -8L8 8" } else { "M8 -8L19 3" });
    view! {
        <g class=if ghost { "ghost" } else { "figure" }>
            <path class="rope" d=get(|s| if s.anchored { path(&s.rope) } else { String::new() }) />
            <path class="rope" d=get(|s| curve(&s.rope_to_grab)) />
            {(!ghost).then(|| view! {
                <path class="rope tail" d=get(|s| path(&s.tail)) />
                <circle class="knot" r=move || if set_up.with(|s| s.lifeline.end != crate::scenario::RopeEnd::Nothing) { "6" } else { "0" }
                    cx=get(|s| cm(s.tail_end.x).to_string()) cy=get(|s| cm(s.tail_end.y).to_string()) />
            })}
            {behind}{body}{straps}{arm}{hand}
            <path class="lanyard" d=get(|s| curve(&s.lanyard)) />
            {(!ghost).then(|| view! {
                <path class="torn" d=move || if set_up.with(|s| s.lanyard.absorber.is_some()) {
                    scene.with(|s| s.as_ref().map_or(String::new(), |s| folds(s.absorber.1, s.absorber.0)))
                } else {
                    scene.with(|s| s.as_ref().map_or(String::new(), |s| path(&[s.absorber.1, s.absorber.0])))
                } />
                <path class=move || if set_up.with(|s| s.lanyard.absorber.is_some()) { "pack" } else { "lanyard" }
                    d=get(|s| path(&[s.absorber.0, s.pack_end])) />
                <circle class="dring" r="5" cx=get(|s| cm(s.dring.x).to_string())
                    cy=get(|s| cm(s.dring.y).to_string()) />
                <g class="grab" transform=grab_place>
                    <rect x="-8" y="-13" width="16" height="26" rx="4" />
                    <path class="arrow" d=arrow />
                    <path class="latch" d=latch />
                </g>
            })}
        </g>
    }
}

/// What the rope is tied to: the part that the roof covers, and the part before it.
fn tied_to(g: &Geometry, s: &Scenario) -> (impl IntoView + use<>, impl IntoView + use<>) {
    let chimney = (s.anchor.kind == AnchorKind::ChimneySling).then(|| {
        let x = g.anchor.x;
        view! { <rect class="chimney" x=cm(x - 0.55) y=cm(g.anchor.y - 0.35) width="50" height="125" /> }
    });
    let pipe = (s.anchor.kind == AnchorKind::VentPipe).then(|| {
        view! {
            <rect class="chimney" x=cm(g.anchor.x - 0.05) y=cm(g.anchor.y - 0.1) width="10" height="50" />
        }
    });
    let gutter = (s.anchor.kind == AnchorKind::Gutter).then(|| view! {
        <path class="plate" d=format!("M{} {}l0 -12l14 0l0 12", cm(g.anchor.x - 0.07), cm(g.anchor.y + 0.06)) />
    });
    let a = g.anchor;
    let plate = matches!(
        s.anchor.kind,
        AnchorKind::RidgePlateInFraming | AnchorKind::RidgePlateInSheathing
    )
    .then(|| {
        let (c, t) = (g.down_slope.x, -g.down_slope.y);
        view! { <path class="plate" d=format!("M{} {}L{} {}L{} {}", cm(a.x - 0.3 * c),
            cm(a.y - if s.anchor.from_ridge_m.abs() < 0.3 { 0.3 * t } else { -0.3 * t } + 0.03), cm(a.x), cm(a.y + 0.04),
            cm(a.x + 0.3 * c), cm(a.y - 0.3 * t + 0.03)) /> }
    });
    let nails = (s.anchor.kind == AnchorKind::RidgePlateInFraming).then(|| {
        view! { <path class="rafter" d=format!("M{} {}L{} {}", cm(g.ridge.x), cm(g.ridge.y - 0.3),
        cm(g.eave.x - 0.1), cm(g.fascia.y + 0.02)) /> }
    });
    (view! { {nails}{chimney}{pipe} }, view! { {gutter}{plate} })
}

/// House, ground, ladder and obstacle: drawn anew only when the set-up changes.
#[component]
pub fn House(g: Geometry, s: Scenario) -> impl IntoView {
    let settings = settings();
    let (l, b, r, _) = bounds(&g, &s);
    let far = p(l - 1.0, g.eave.y);
    let far_roof_y = g.ridge.y - (g.ridge.x - (l - 1.0)) * (g.ridge.y - g.eave.y) / (g.eave.x - g.ridge.x);
    let roof_in = 0.14;
    let wall = path(&[p(0.0, 0.0), p(0.0, g.fascia.y)]);
    let room = format!(
        "{}Z",
        path(&[
            p(0.0, 0.0),
            p(0.0, g.fascia.y),
            g.fascia,
            g.eave,
            g.ridge,
            p(l - 1.0, far_roof_y.max(g.fascia.y)),
            p(far.x, 0.0)
        ])
    );
    let roof = format!(
        "{}Z",
        path(&[
            g.eave,
            g.ridge,
            p(l - 1.0, far_roof_y),
            p(l - 1.0, far_roof_y - roof_in * 1.2),
            p(g.ridge.x, g.ridge.y - roof_in * 1.2),
            p(g.eave.x, g.eave.y - FASCIA_DEPTH_M),
        ])
    );
    let soffit = path(&[g.fascia, p(0.0, g.fascia.y)]);
    let low = crate::geometry::ground_y_m(g.ground_slope_rad, r + BEYOND_M);
    let ground = path(&[p(l - 1.0, 0.0), p(0.0, 0.0), p(r + BEYOND_M, low)]);
    let soil = format!(
        "{}Z",
        path(&[
            p(l - 1.0, 0.0),
            p(0.0, 0.0),
            p(r + BEYOND_M, low),
            p(r + BEYOND_M, low.min(b) - BEYOND_M),
            p(l - 1.0, low.min(b) - BEYOND_M)
        ])
    );
    let sill = (g.fascia.y - 2.0).max(0.8);
    let window = path(&[p(0.0, sill), p(0.0, sill + 1.1)]);
    let floor = (g.fascia.y > 4.6).then(|| path(&[p(l - 1.0, 2.75), p(0.0, 2.75)]));
    let deck = g.obstacle.map(|(x0, x1, top)| {
        view! {
            <g class="deck">
                <rect x=cm(x0) y=cm(g.ground_y_m(x1)) width=cm(x1 - x0) height=cm(top - g.ground_y_m(x1)) />
                <path d=path(&[p(x0, top), p(x1, top)]) />
            </g>
        }
    });
    let deck_label = g.obstacle.map(|(x0, x1, top)| {
        view! {
            <text class="label" text-anchor="middle" x=cm((x0 + x1) / 2.0) y=cm(-top / 2.0 + 0.1)>
                {settings.s(Key::LabelDeck)}</text>
        }
    });
    let wire = s.power_line.filter(|w| wire_is_drawn(&g, w)).map(|w| {
        let reach_m = g.ladder.foot.dist(g.ladder.tip);
        let (fx, top) = (g.ladder.foot.x, reach_m);
        // As far as the ladder's top can come while it turns about its foot.
        let reach =
            format!("M{} {}A{} {} 0 0 0 {} 0", cm(fx), cm(top), cm(reach_m), cm(reach_m), cm(fx + reach_m));
        view! {
            <path class="reach" d=reach />
            <path class="thin" d=path(&[p(w.distance_m, 0.0), p(w.distance_m, w.height_m + 0.4)]) />
            <circle class="wire" r="9" cx=cm(w.distance_m) cy=cm(w.height_m) />
        }
    });
    let wire_label = s.power_line.filter(|w| wire_is_drawn(&g, w)).map(|w| {
        view! {
            <text class="label" text-anchor="end" x=cm(w.distance_m - 0.2) y=cm(-w.height_m - 0.15)>
                {settings.s(Key::LabelWire)}</text>
        }
    });
    let (behind, before) = tied_to(&g, &s);
    view! {
        <g transform="scale(1,-1)">
            <path class="soil" d=soil />
            <path class="inside" d=room />
            {floor.map(|d| view! { <path class="thin" d=d /> })}
            <path class="soffit" d=soffit />
            {behind}
            <path class="roof" d=roof />
            <path class="wall" d=wall />
            <path class="window" d=window />
            <path class="ground" d=ground />
            {deck}
            {before}{wire}
            <circle class="anchor" r="7" cx=cm(g.anchor.x) cy=cm(g.anchor.y + 0.06) />
        </g>
        {deck_label}{wire_label}
    }
}

/// The ladder, where it is now. Out of the fall's plane it is drawn faint.
#[component]
pub fn LadderShape(scene: Signal<Option<Scene>>, geometry: Memo<Option<Geometry>>) -> impl IntoView {
    let rails = Memo::new(move |_| {
        geometry.with(|g| {
            let l = g.as_ref()?.ladder;
            Some((l.foot, l.tip, l.top == LadderTop::Wall))
        })
    });
    let place = move || {
        let (foot, tip, _) = rails.get()?;
        let now = scene.with(|s| s.as_ref().and_then(|s| s.ladder)).unwrap_or((foot, tip));
        let turn = (now.1.y - now.0.y).atan2(now.1.x - now.0.x).to_degrees();
        Some(format!("translate({},{}) rotate({turn:.2})", cm(now.0.x), cm(now.0.y)))
    };
    let aside = move || scene.with(|s| s.as_ref().is_some_and(|s| s.ladder.is_none()));
    let shape = move || {
        let (foot, tip, on_wall) = rails.get()?;
        let length_m = foot.dist(tip);
        let rungs = (1..=(length_m / 0.305) as usize)
            .map(|i| view! { <circle class="rung" r="2.2" cx=cm(i as f64 * 0.305) cy="0" /> })
            .collect_view();
        let pad = on_wall.then(|| view! { <circle class="rung" r="4" cx=cm(length_m) cy="0" /> });
        Some(view! { <path d=format!("M0 0H{}", cm(length_m)) />{rungs}{pad} })
    };
    view! { <g class="ladder" class:aside=aside transform=place>{shape}</g> }
}

/// Hatching and arrowheads.
pub fn defs() -> impl IntoView {
    view! {
            <defs>
                <pattern id="hatch" width="22" height="22" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
                    <path class="hatch" d="M0 0L0 22" />
                </pattern>
                <marker id="tip" viewBox="0 0 10 6" refX="10" refY="3" markerWidth="10" markerHeight="6"
                    markerUnits="userSpaceOnUse" orient="auto-start-reverse">
                    <path class="tip" d="M0 0L10 3L0 6Z" />
                </marker>
            </defs>
    }
}

/// A set-up as it stands, drawn small: nothing moves, nothing is told that the words beside do not.
#[component]
pub fn Still(set_up: RwSignal<Scenario>) -> impl IntoView {
    let geometry = Memo::new(move |_| set_up.with(Geometry::of));
    let scene =
        Signal::derive(move || geometry.with(|g| g.as_ref().map(|g| set_up.with(|s| standing_scene(s, g)))));
    // The house stays while only the grab moves.
    let house = Memo::new(move |_| {
        set_up.with(|s| {
            let mut s = s.clone();
            s.grab = Default::default();
            s
        })
    });
    let settings = settings();
    let words = move || set_up.with(|s| crate::texts::say::state(settings.reader(), s).join(" "));
    let view_box = move || {
        geometry.with(|g| {
            g.as_ref().map_or("0 0 100 100".to_owned(), |g| {
                let (l, b, r, t) = set_up.with(|s| bounds(g, s));
                let r = r - LETTERING_M;
                format!("{} {} {} {}", cm(l), cm(-t), cm(r - l), cm(t - b))
            })
        })
    };
    let built = move || {
        let s = house.get();
        Geometry::of(&s).map(|g| view! { <House g=g s=s /> })
    };
    view! {
        <svg class="drawing still-drawing" viewBox=view_box preserveAspectRatio="xMidYMid meet" role="img" aria-label=words>
            {defs()}
            {built}
            <g transform="scale(1,-1)">
                <LadderShape scene=scene geometry=geometry />
                <Figure scene=scene set_up=set_up.into() />
            </g>
        </svg>
    }
}

/// A finished fall of a set-up.
pub type Fallen = (Scenario, Arc<Trace>);

/// A fall, or two over each other on one clock: the first solid, the second dashed. It begins where
/// the falls are decided, so that the difference shows without playing; or at the end.
#[component]
pub fn Falls(
    first: Fallen,
    #[prop(optional)] second: Option<Fallen>,
    #[prop(optional)] at_end: bool,
) -> impl IntoView {
    let settings = settings();
    let both = || core::iter::once(&first).chain(&second);
    let end_s = if at_end {
        first.1.duration_s()
    } else {
        both().fold(0.0_f64, |e, (_, t)| e.max(decisive_s(t) + 0.4))
    };
    let clock =
        RwSignal::new(if at_end { end_s } else { both().fold(0.0_f64, |e, (_, t)| e.max(decisive_s(t))) });
    let is_pair = second.is_some();
    let words = move || match (is_pair, at_end) {
        (true, _) => settings.t(Key::LessonGhost),
        (false, false) => settings.t(W::OneFall),
        (false, true) => settings.t(W::HangsStill),
    };
    let a = first.0.clone();
    let turn = StoredValue::new(0_u32);
    on_cleanup(move || {
        turn.try_update_value(|t| *t += 1);
    });
    let scene = |s: &Scenario, t: Arc<Trace>| {
        let s = s.clone();
        let g = Geometry::of(&s);
        Signal::derive(move || g.as_ref().and_then(|g| Some(build(&s, g, &t.at(clock.get())?))))
    };
    let first = scene(&a, first.1);
    let ghost = second.map(|(b, t)| {
        let scene = scene(&b, t);
        view! { <Figure scene=scene set_up=RwSignal::new(b).into() ghost=true /> }
    });
    let g = Geometry::of(&a);
    let set_a = RwSignal::new(a.clone());
    let geometry = Memo::new(move |_| set_a.with(Geometry::of));
    let view_box = g.as_ref().map_or(String::new(), |g| {
        let (l, bottom, r, t) = bounds(g, &a);
        format!("{} {} {} {}", cm(l), cm(-t), cm(r - LETTERING_M - l), cm(t - bottom))
    });
    fn frame(clock: RwSignal<f64>, end_s: f64, turn: StoredValue<u32>, mine: u32, last_ms: f64) {
        request_animation_frame(move || {
            if turn.try_get_value() != Some(mine) {
                return;
            }
            let now_ms = window().performance().map_or(last_ms, |p| p.now());
            let next_s = clock.get_untracked() + ((now_ms - last_ms) / 1e3).min(0.1) / 4.0;
            clock.set(next_s.min(end_s));
            if next_s < end_s {
                frame(clock, end_s, turn, mine, now_ms);
            }
        });
    }
    let play = move |_| {
        turn.update_value(|t| *t += 1);
        clock.set(0.0);
        let now_ms = window().performance().map_or(0.0, |p| p.now());
        frame(clock, end_s, turn, turn.get_value(), now_ms);
    };
    let time = move || settings.reader().q(Quantity::Time, clock.get(), Rounding::Nearest);
    view! {
        <div class="pair">
            <svg class="drawing still-drawing" viewBox=view_box preserveAspectRatio="xMidYMid meet" role="img"
                aria-label=words>
                {defs()}
                {g.map(|g| view! { <House g=g s=a /> })}
                <g transform="scale(1,-1)">
                    <LadderShape scene=first geometry=geometry />
                    {ghost}
                    <Figure scene=first set_up=set_a.into() />
                </g>
            </svg>
            <p class="hint">{words}</p>
            <div class="row buttons">
                <button type="button" id="play-both" on:click=play><b aria-hidden="true">"▶ "</b>{move || if is_pair { settings.t(Key::LessonPlay) } else { settings.t(W::PlayOne) }}</button>
            </div>
            <div class="number"><label for="pair-time">{settings.s(Key::LessonTime)}{move || settings.reader().colon()}{time}</label>
                <input id="pair-time" type="range" min="0" max=end_s step="0.0125" aria-valuetext=time
                    prop:value=move || clock.get().to_string()
                    on:input=move |ev| { turn.update_value(|t| *t += 1); if let Ok(t) = event_target_value(&ev).parse() { clock.set(t) } } /></div>
        </div>
    }
}
