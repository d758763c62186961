//! The part that matters of what is shown: its lens, and its plain fact.

use crate::practice::demos::{Demo, Part};
use crate::practice::hand::Held;
use crate::practice::inspection::Look;
use crate::scenario::{AnchorKind, Arrow, Below, Latch, RopeState, Scenario, Stance};
use crate::scene::lens::{self, Lens};
use crate::texts::say::{self, Reader};
use crate::texts::{Key, Trainer as T};
use crate::units::{Quantity, Rounding};

/// The part from near; none where it is the place.
pub fn close_up(d: &Demo, s: &Scenario) -> Option<Lens> {
    match d.part {
        Part::Grab => Some(lens::of(Held::Grab, s)),
        Part::Anchor => Some(lens::of(Held::Anchor, s)),
        Part::Lanyard if s.lanyard.clipped => Some(lens::link(s.lanyard.absorber.is_some())),
        Part::Lifeline if s.gear.rope != RopeState::Sound => Some(lens::look(Look::Rope(s.gear.rope))),
        _ => None,
    }
}

/// Its plain fact, short.
pub fn fact(r: Reader, d: &Demo, s: &Scenario) -> String {
    let len = |m: f64| r.q(Quantity::Length, m, Rounding::Nearest);
    match d.part {
        Part::Grab if s.grab.latch == Latch::Open => say::look(r, Look::Latch(Latch::Open)),
        Part::Grab if s.grab.arrow == Arrow::Down => {
            format!("{} {}", r.t(Key::GrabArrow), r.t(Key::ArrowDown))
        }
        Part::Grab => r.f(T::FactGrab, &[("offset", &say::offset(r, s.grab.above_dring_m))]),
        Part::Lifeline if s.lifeline.slack_m >= 0.05 => {
            r.f(T::FactSlack, &[("value", &len(s.lifeline.slack_m))])
        }
        Part::Anchor if s.anchor.kind == AnchorKind::ChimneySling => r.f(
            T::FactSling,
            &[
                ("value", &len(s.anchor.chimney.sling_height_m)),
                ("joints", &r.t(s.anchor.chimney.mortar.label()).to_lowercase()),
            ],
        ),
        Part::Anchor => r.t(s.anchor.kind.label()).to_owned(),
        Part::Lifeline if s.gear.rope == RopeState::Sound => {
            r.f(T::FactRope, &[("what", &len(s.lifeline.length_m))])
        }
        Part::Lifeline => say::look(r, Look::Rope(s.gear.rope)),
        Part::Lanyard if !s.lanyard.clipped => r.t(T::FactClipped).to_owned(),
        Part::Lanyard => r.f(T::FactLink, &[("value", &len(s.lanyard.length_m))]),
        Part::Ladder if s.power_line.is_some() => r.t(T::FactWire).to_owned(),
        Part::Place if d.is_along() && d.along_m < 0.05 => r.t(T::FactUnder).to_owned(),
        Part::Place if d.is_along() => r.f(T::FactAside, &[("value", &len(d.along_m))]),
        Part::Place if s.plan.rescue == crate::scenario::RescuePlan::NoPlan => r.t(T::FactNoPlan).to_owned(),
        Part::Ladder | Part::Place => match s.stance {
            Stance::Ladder { standing_height_m } => r.f(T::FactBoots, &[("value", &len(standing_height_m))]),
            Stance::Roof { .. } => r.t(s.anchor.kind.label()).to_owned(),
        },
    }
}

/// What sets one of a pair apart from the other, whichever part it is.
pub fn beside(r: Reader, (d, s): (&Demo, &Scenario), (other, o): (&Demo, &Scenario), part: Part) -> String {
    let len = |m: f64| r.q(Quantity::Length, m, Rounding::Nearest);
    if s.plan != o.plan {
        return r.t(s.plan.rescue.label()).to_owned();
    }
    if s.house.below != o.house.below {
        return match s.house.below {
            Below::Obstacle { height_m, .. } => r.f(T::FactDeck, &[("value", &len(height_m))]),
            Below::BareGround => r.t(T::FactNoDeck).to_owned(),
        };
    }
    if s.power_line != o.power_line && s.power_line.is_none() {
        return r.t(T::FactNoWire).to_owned();
    }
    match s.stance {
        Stance::Ladder { standing_height_m } if s.stance != o.stance => {
            r.f(T::FactBoots, &[("value", &len(standing_height_m))])
        }
        _ if d.along_m != other.along_m => fact(r, d, s),
        _ => fact(r, &Demo { part, ..d.clone() }, s),
    }
}
