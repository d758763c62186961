//! The set-up panel: the choices in the order of the system, from the anchor down.

use super::forms::{Choice, Count, Day, NumberField};
use super::gear::{AnchorSection, GearCheck};
use super::houses::Houses;
use super::state::bench;
use crate::physics::equipment::rope_modulus_n;
use crate::scenario::{
    Absorber, AbsorberClass, AnchorChosenBy, AnchorKind, Arrow, Below, Bolt, FastenerKind, Field, HarnessFit,
    Latch, MOST_FASTENERS_PER_SIDE, Moisture, Mortar, ORDINARY_OBSTACLE, OtherMethod, PowerLine, RescuePlan,
    RopeEdge, RopeEnd, RopeKind, Scenario, Species, Stance, Voltage, Weather,
};
use crate::texts::Bench as W;
use crate::texts::Worded;
use crate::texts::{Key, Text, say};
use crate::ui::shared::settings::settings;
use crate::units::{Quantity, Rounding};
use leptos::prelude::*;

/// The classes in the order of the form: the ordinary one first.
const CLASSES: [AbsorberClass; 3] = [AbsorberClass::E4, AbsorberClass::E6, AbsorberClass::Stated];

/// One part of the system: a summary that tells today's choice, opening to its controls.
#[component]
fn PartCard(
    number: u8,
    title: Key,
    summary: fn(say::Reader, &Scenario) -> String,
    #[prop(optional)] open: bool,
    children: Children,
) -> impl IntoView {
    let (bench, settings) = (bench(), settings());
    view! {
        <details class="part" open=open>
            <summary>
                <span class="no" aria-hidden="true">{number}</span>
                <span class="what">
                    <strong>{move || settings.t(bench.scenario.with(|s| title.in_place(&s.place)))}</strong>
                    <span class="now">{move || {
                        let r = settings.reader();
                        bench.scenario.with(|s| summary(r, s))
                    }}</span>
                </span>
            </summary>
            <div class="controls">{children()}</div>
        </details>
    }
}

fn near(r: say::Reader, q: Quantity, si: f64) -> String {
    r.q(q, si, Rounding::Nearest)
}

fn has_absorber(s: &Scenario) -> bool {
    s.lanyard.absorber.is_some()
}

/// The options of a choice, in its own order.
fn labels<T: Copy, K>(all: &[T], label: fn(T) -> K) -> Vec<K> {
    all.iter().copied().map(label).collect()
}

fn at<T: PartialEq>(all: &[T], x: T) -> usize {
    all.iter().position(|a| *a == x).unwrap_or(0)
}

fn is_plate(s: &Scenario) -> bool {
    matches!(s.anchor.kind, AnchorKind::RidgePlateInFraming | AnchorKind::RidgePlateInSheathing)
}

/// Nothing that would give a fault away.
fn gear_summary(r: say::Reader, _: &Scenario) -> String {
    r.t(Key::GearSummary).to_owned()
}

/// What is peculiar to the kind of anchor, and what it holds.
#[component]
fn AnchorDetails() -> impl IntoView {
    let (bench, settings) = (bench(), settings());
    let plate = Memo::new(move |_| bench.scenario.with(is_plate));
    let framing =
        Memo::new(move |_| bench.scenario.with(|s| s.anchor.kind == AnchorKind::RidgePlateInFraming));
    let chimney = Memo::new(move |_| bench.scenario.with(|s| s.anchor.kind == AnchorKind::ChimneySling));
    let rated = Memo::new(move |_| bench.scenario.with(|s| s.anchor.kind == AnchorKind::RatedEye));
    view! {
        <div class="strength">{move || {
            let r = settings.reader();
            bench.scenario.with(|s| say::strength(r, s)).into_iter()
                .map(|line| view! { <p>{line}</p> }).collect_view()
        }}</div>
        <Show when=move || plate.get()>
            <AnchorSection />
            <Count name="per-side" label=Key::FastenersPerSide least=1
                get=|s| s.anchor.fasteners.per_side set=|s, n| {
                    s.anchor.fasteners.per_side = n;
                    s.anchor.fasteners.missed = s.anchor.fasteners.missed.min(2 * n);
                } most=|_| MOST_FASTENERS_PER_SIDE />
            <Show when=move || framing.get()>
                <Count name="missed" label=Key::FastenersMissed
                    get=|s| s.anchor.fasteners.missed set=|s, n| s.anchor.fasteners.missed = n
                    most=|s| 2 * s.anchor.fasteners.per_side />
            </Show>
            <Choice name="fastener" label=Key::FastenerKindLabel
                options=labels(FastenerKind::ALL, FastenerKind::label)
                get=|s| at(FastenerKind::ALL, s.anchor.fasteners.kind)
                set=|s, i| if let Some(x) = FastenerKind::ALL.get(i) { s.anchor.fasteners.kind = *x } />
            <Choice name="species" label=Key::SpeciesLabel
                options=labels(Species::ALL, Species::label)
                get=|s| at(Species::ALL, s.anchor.fasteners.species)
                set=|s, i| if let Some(x) = Species::ALL.get(i) { s.anchor.fasteners.species = *x } />
            <Choice name="moisture" label=Key::MoistureLabel
                options=labels(Moisture::ALL, Moisture::label)
                get=|s| at(Moisture::ALL, s.anchor.fasteners.moisture)
                set=|s, i| if let Some(x) = Moisture::ALL.get(i) { s.anchor.fasteners.moisture = *x } />
        </Show>
        <Show when=move || chimney.get()>
            <p class="problems caution">{settings.s(W::ChimneyCaution)}</p>
            <Choice name="mortar" label=Key::MortarLabel
                options=labels(Mortar::ALL, Mortar::label)
                get=|s| at(Mortar::ALL, s.anchor.chimney.mortar)
                set=|s, i| if let Some(x) = Mortar::ALL.get(i) { s.anchor.chimney.mortar = *x } />
            <NumberField field=Field::SlingHeight />
            <NumberField field=Field::ChimneyHeight />
            <NumberField field=Field::ChimneyWidth />
            <NumberField field=Field::ChimneyWeight />
        </Show>
        <Show when=move || rated.get()><NumberField field=Field::StatedBreaking /></Show>
    }
}

#[component]
fn AnchorCard() -> impl IntoView {
    view! {
        <PartCard number=1 title=Key::PartAnchor
            summary=|r, s| r.t(s.anchor.kind.label()).to_owned()>
            <Choice name="anchor" label=Text::of(Key::AnchorKindLabel)
                options=labels(&AnchorKind::ALL, AnchorKind::label)
                get=|s| AnchorKind::ALL.iter().position(|k| *k == s.anchor.kind).unwrap_or(0)
                set=|s, i| if let Some(k) = AnchorKind::ALL.get(i) { s.anchor.kind = *k } />
            <AnchorDetails />
            <NumberField field=Field::AnchorFromRidge />
        </PartCard>
    }
}

#[component]
fn LifelineCard() -> impl IntoView {
    let (bench, settings) = (bench(), settings());
    let other_rope = Memo::new(move |_| bench.scenario.with(|s| s.lifeline.kind == RopeKind::Stated));
    let finer = settings.s(Key::MoreChoices);
    view! {
        <PartCard number=2 title=Key::PartLifeline
            summary=|r, s| {
                let l = &s.lifeline;
                let mut out = format!("{}, {}, {}", near(r, Quantity::Length, l.length_m),
                    r.t(l.kind.label()), r.t(l.end.label()));
                if l.slack_m > 0.0 {
                    out.push_str(&format!(", {} {}", r.t(Key::RopeSlack).to_lowercase(), near(r, Quantity::Length, l.slack_m)));
                }
                if l.edge == RopeEdge::Bare {
                    out.push_str(&format!(", {}", r.t(Key::EdgeBare)));
                }
                out
            }>
            <NumberField field=Field::LifelineLength />
            <NumberField field=Field::LifelineSlack />
            <Choice name="edge" label=Key::RopeEdgeLabel
                options=labels(RopeEdge::ALL, RopeEdge::label)
                get=|s| at(RopeEdge::ALL, s.lifeline.edge)
                set=|s, i| if let Some(x) = RopeEdge::ALL.get(i) { s.lifeline.edge = *x } />
            <Choice name="knot" label=Key::EndKnot
                options=labels(RopeEnd::ALL, RopeEnd::label)
                get=|s| at(RopeEnd::ALL, s.lifeline.end)
                set=|s, i| if let Some(x) = RopeEnd::ALL.get(i) { s.lifeline.end = *x } />
            <Choice name="rope" label=Key::RopeKindLabel
                options=labels(RopeKind::ALL, RopeKind::label)
                get=|s| at(RopeKind::ALL, s.lifeline.kind)
                set=|s, i| if let Some(k) = RopeKind::ALL.get(i) {
                    s.lifeline.modulus_n = rope_modulus_n(&s.lifeline);
                    s.lifeline.kind = *k;
                } />
            <Show when=move || other_rope.get()>
                <details class="finer" open=true><summary>{finer}</summary>
                    <NumberField field=Field::LifelineModulus /></details></Show>
        </PartCard>
    }
}

#[component]
fn GrabCard() -> impl IntoView {
    view! {
        <PartCard number=3 title=Key::PartGrab open=true
            summary=|r, s| {
                let up = s.grab.above_dring_m;
                let arrow = r.t(if s.grab.arrow == Arrow::Up { Key::ArrowUp } else { Key::ArrowDown });
                format!("{}{}, {} {}", if up > 0.0 { "+" } else { "" }, near(r, Quantity::Length, up),
                    r.t(Key::GrabArrow).to_lowercase(), arrow)
            }>
            <NumberField field=Field::GrabAboveDring slider=true />
            <Choice name="arrow" label=Key::GrabArrow icons=&["▲", "▼"]
                options=labels(&[Arrow::Up, Arrow::Down], Arrow::label)
                get=|s| usize::from(s.grab.arrow == Arrow::Down)
                set=|s, i| s.grab.arrow = [Arrow::Up, Arrow::Down][i.min(1)] />
            <Choice name="bolt" label=Key::GrabBolt
                options=labels(&[Bolt::Tight, Bolt::Loose], Bolt::label)
                get=|s| usize::from(s.grab.bolt == Bolt::Loose)
                set=|s, i| s.grab.bolt = [Bolt::Tight, Bolt::Loose][i.min(1)] />
            <Choice name="latch" label=Key::GrabLatch
                options=labels(&[Latch::Closed, Latch::Open], Latch::label)
                get=|s| usize::from(s.grab.latch == Latch::Open)
                set=|s, i| s.grab.latch = [Latch::Closed, Latch::Open][i.min(1)] />
        </PartCard>
    }
}

#[component]
fn LanyardCard() -> impl IntoView {
    let (bench, settings) = (bench(), settings());
    let absorber = Memo::new(move |_| bench.scenario.with(has_absorber));
    let stated = Memo::new(move |_| bench.scenario.with(|s| Field::DeployForce.get(s).is_some()));
    let finer = settings.s(Key::MoreChoices);
    view! {
        <PartCard number=4 title=Key::PartLanyard
            summary=|r, s| format!("{}, {} {}", near(r, Quantity::Length, s.lanyard.length_m),
                r.t(Key::AbsorberLabel).to_lowercase(),
                r.t(if s.lanyard.absorber.is_some() { Key::AbsorberYes } else { Key::AbsorberNo }))>
            <NumberField field=Field::LanyardLength />
            <Choice name="clipped" label=W::ClipLabel options=vec![W::ClipYes, W::ClipNo]
                get=|s| usize::from(!s.lanyard.clipped) set=|s, i| s.lanyard.clipped = i == 0 />
            <Choice name="absorber" label=Key::AbsorberLabel
                options=vec![Key::AbsorberYes, Key::AbsorberNo]
                get=|s| usize::from(!has_absorber(s))
                set=|s, i| s.lanyard.absorber = (i == 0).then(Absorber::default) />
            <Show when=move || absorber.get()>
                <Choice name="class" label=Key::AbsorberClassLabel
                    options=labels(&CLASSES, AbsorberClass::label)
                    get=|s| s.lanyard.absorber.map_or(0, |a| at(&CLASSES, a.class))
                    set=|s, i| if let (Some(a), Some(c)) = (&mut s.lanyard.absorber, CLASSES.get(i)) { a.class = *c } />
                <details class="finer"><summary>{finer}</summary>
                    <Show when=move || stated.get()><NumberField field=Field::DeployForce /></Show>
                    <NumberField field=Field::MaxExtension /></details>
            </Show>
        </PartCard>
    }
}

#[component]
fn HarnessCard() -> impl IntoView {
    let settings = settings();
    let finer = settings.s(Key::MoreChoices);
    view! {
        <PartCard number=5 title=Key::PartHarness
            summary=|r, s| format!("{} {}, {}", r.t(Key::HarnessFitLabel).to_lowercase(),
                r.t(if s.worker.harness == HarnessFit::Snug { Key::FitSnug } else { Key::FitLoose }),
                near(r, Quantity::Mass, s.worker.mass_kg))>
            <Choice name="harness" label=Key::HarnessFitLabel
                options=labels(&[HarnessFit::Snug, HarnessFit::Loose], HarnessFit::label)
                get=|s| usize::from(s.worker.harness == HarnessFit::Loose)
                set=|s, i| s.worker.harness = [HarnessFit::Snug, HarnessFit::Loose][i.min(1)] />
            <NumberField field=Field::Mass slider=true />
            <details class="finer"><summary>{finer}</summary>
                <NumberField field=Field::Stature /></details>
        </PartCard>
    }
}

#[component]
fn GearCard() -> impl IntoView {
    view! {
        <PartCard number=6 title=Key::PartGear summary=gear_summary>
            <GearCheck />
        </PartCard>
    }
}

#[component]
fn StanceCard() -> impl IntoView {
    let bench = bench();
    let is_roof = Memo::new(move |_| bench.scenario.with(|s| matches!(s.stance, Stance::Roof { .. })));
    view! {
        <PartCard number=7 title=Key::PartStance
            summary=|r, s| match s.stance {
                Stance::Ladder { standing_height_m } => format!("{}, {}", r.t(Key::StanceLadder),
                    near(r, Quantity::Length, standing_height_m)),
                Stance::Roof { from_eave_m } => format!("{}, {}", r.t(Key::StanceRoof),
                    near(r, Quantity::Length, from_eave_m)),
            }>
            <Choice name="stance" label=Key::StanceLabel
                options=vec![Key::StanceLadder, Key::StanceRoof]
                get=|s| usize::from(matches!(s.stance, Stance::Roof { .. }))
                set=|s, i| s.stance = if i == 1 { Stance::Roof { from_eave_m: 1.2 } }
                    else { Stance::Ladder { standing_height_m: (s.house.eave_height_m - 2.0).max(0.5) } } />
            <Show when=move || is_roof.get()
                fallback=|| view! { <NumberField field=Field::StandingHeight slider=true /> }>
                <NumberField field=Field::FromEave slider=true />
            </Show>
        </PartCard>
    }
}

#[component]
fn LadderCard() -> impl IntoView {
    view! {
        <PartCard number=8 title=Key::PartLadder
            summary=|r, s| format!("{}, {}", near(r, Quantity::Length, s.ladder.length_m),
                r.q(Quantity::Angle, crate::geometry::ladder_line(s).map_or(0.0, |l| l.angle_rad()), Rounding::Nearest))>
            <NumberField field=Field::LadderFoot slider=true />
            <NumberField field=Field::LadderLength />
            <Choice name="tied" label=Key::LadderTiedLabel
                options=vec![Key::LadderTiedYes, Key::LadderTiedNo]
                get=|s| usize::from(!s.ladder.tied) set=|s, i| s.ladder.tied = i == 0 />
            <NumberField field=Field::ReachOut slider=true />
        </PartCard>
    }
}

#[component]
fn HouseCard() -> impl IntoView {
    let (bench, settings) = (bench(), settings());
    let is_deck =
        Memo::new(move |_| bench.scenario.with(|s| matches!(s.house.below, Below::Obstacle { .. })));
    let finer = settings.s(Key::MoreChoices);
    view! {
        <PartCard number=9 title=Key::PartHouse
            summary=|r, s| format!("{} {}, {}", r.t(Key::EaveHeight).to_lowercase(),
                near(r, Quantity::Length, s.house.eave_height_m),
                r.t(match s.house.below { Below::BareGround => Key::BelowGround, _ => Key::BelowObstacle }))>
            <Choice name="below" label=Key::BelowLabel
                options=vec![Key::BelowGround, Key::BelowObstacle]
                get=|s| usize::from(matches!(s.house.below, Below::Obstacle { .. }))
                set=|s, i| s.house.below = if i == 1 { ORDINARY_OBSTACLE } else { Below::BareGround } />
            <Show when=move || is_deck.get()>
                <NumberField field=Field::ObstacleHeight />
                <NumberField field=Field::ObstacleDistance />
                <NumberField field=Field::ObstacleWidth />
            </Show>
            <NumberField field=Field::EaveHeight />
            <details class="finer"><summary>{finer}</summary>
                <NumberField field=Field::GroundSlope />
                <NumberField field=Field::RoofPitch />
                <NumberField field=Field::HalfSpan />
                <NumberField field=Field::Overhang /></details>
        </PartCard>
    }
}

#[component]
fn AroundCard() -> impl IntoView {
    let (bench, settings) = (bench(), settings());
    let has_wire = Memo::new(move |_| bench.scenario.with(|s| s.power_line.is_some()));
    view! {
        <PartCard number=10 title=Key::PartAround
            summary=|r, s| format!("{}, {}{}{}", r.t(s.weather.label()),
                r.t(Key::WireLabel).to_lowercase(), r.colon(),
                r.t(if s.power_line.is_some() { Key::WireYes } else { Key::WireNo }))>
            <Choice name="weather" label=Key::WeatherLabel options=labels(Weather::ALL, Weather::label)
                get=|s| at(Weather::ALL, s.weather)
                set=|s, i| if let Some(x) = Weather::ALL.get(i) { s.weather = *x } />
            <Choice name="wire" label=Key::WireLabel
                options=vec![Key::WireNo, Key::WireYes]
                get=|s| usize::from(s.power_line.is_some())
                set=|s, i| s.power_line = (i == 1).then(PowerLine::default) />
            <Show when=move || has_wire.get()>
                <p class="problems caution">{settings.s(W::WireCaution)}</p>
                <Choice name="voltage" label=Key::VoltageLabel options=labels(Voltage::ALL, Voltage::label)
                    get=|s| s.power_line.map_or(0, |l| at(Voltage::ALL, l.voltage))
                    set=|s, i| if let (Some(l), Some(v)) = (&mut s.power_line, Voltage::ALL.get(i)) { l.voltage = *v } />
                <NumberField field=Field::LineHeight />
                <NumberField field=Field::LineDistance />
            </Show>
        </PartCard>
    }
}

#[component]
fn PlanCard() -> impl IntoView {
    view! {
        <PartCard number=11 title=Key::PartPlan
            summary=|r, s| format!("{} {}", r.t(Key::RescueLabel).to_lowercase(), r.t(s.plan.rescue.label()))>
            <Choice name="other" label=Key::OtherMethodLabel
                options=labels(OtherMethod::ALL, OtherMethod::label)
                get=|s| at(OtherMethod::ALL, s.plan.other_method)
                set=|s, i| if let Some(x) = OtherMethod::ALL.get(i) { s.plan.other_method = *x } />
            <Choice name="rescue" label=Key::RescueLabel
                options=labels(RescuePlan::ALL, RescuePlan::label)
                get=|s| at(RescuePlan::ALL, s.plan.rescue)
                set=|s, i| if let Some(x) = RescuePlan::ALL.get(i) { s.plan.rescue = *x } />
            <Choice name="chooser" label=Key::ChooserLabel
                options=labels(AnchorChosenBy::ALL, AnchorChosenBy::label)
                get=|s| at(AnchorChosenBy::ALL, s.plan.anchor_by)
                set=|s, i| if let Some(x) = AnchorChosenBy::ALL.get(i) { s.plan.anchor_by = *x } />
            <Day name="trained-on" label=Key::TrainedOn get=|s| &s.plan.trained_on
                set=|s, d| s.plan.trained_on = d />
            <Day name="work-on" label=Key::WorkOn get=|s| &s.plan.work_on set=|s, d| s.plan.work_on = d />
        </PartCard>
    }
}

/// All parts.
#[component]
pub fn SetUp() -> impl IntoView {
    let (bench, settings) = (bench(), settings());
    view! {
        <section class="setup" aria-labelledby="setup-h">
            <div class="setup-head">
                <h2 id="setup-h">{settings.s(Key::SetUpHeading)}</h2>
                <div class="tools">
                    <button type="button" prop:disabled=move || !bench.can_undo() on:click=move |_| bench.undo()>
                        <b aria-hidden="true">"↶ "</b>{settings.s(Key::Undo)}</button>
                    <button type="button" prop:disabled=move || !bench.can_redo() on:click=move |_| bench.redo()>
                        <b aria-hidden="true">"↷ "</b>{settings.s(Key::Redo)}</button>
                    <button type="button" on:click=move |_| bench.edit(|s| {
                        let place = s.place.clone();
                        *s = Scenario { place, ..Scenario::default() };
                    })>{settings.s(Key::StartOver)}</button>
                </div>
            </div>

            <Houses />
            <AnchorCard />
            <LifelineCard />
            <GrabCard />
            <LanyardCard />
            <HarnessCard />
            <GearCard />
            <StanceCard />
            <LadderCard />
            <HouseCard />
            <AroundCard />
            <PlanCard />
        </section>
    }
}
