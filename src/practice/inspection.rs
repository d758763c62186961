//! A look at the gear before the climb: what each part shows, which of it is a fault, and what
//! taking it out of service does. Pure data; the pictures are drawn by `ui`.

use crate::draw::Draw;
use crate::rules::FindingCode;
use crate::scenario::{
    AnchorKind, Arrow, Bolt, ConnectorState, LabelState, Latch, PackState, RopeState, Scenario, WebbingState,
};
use serde::{Deserialize, Serialize};

/// A part to look at, in the order of the system from the anchor down.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum GearPart {
    /// The anchor's fasteners, seen from below.
    Fasteners,
    /// The lifeline.
    Rope,
    /// The grab's arrow.
    Arrow,
    /// The grab's bolt.
    Bolt,
    /// The grab's latch.
    Latch,
    /// The lanyard's connectors.
    Connector,
    /// The absorber's pack.
    Pack,
    /// The harness webbing.
    Webbing,
    /// The harness label.
    Label,
}

/// What a look at a part shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Look {
    /// How many fasteners missed the rafters.
    Fasteners(u32),
    /// The lifeline.
    Rope(RopeState),
    /// The arrow's direction.
    Arrow(Arrow),
    /// The bolt.
    Bolt(Bolt),
    /// The latch.
    Latch(Latch),
    /// The connector.
    Connector(ConnectorState),
    /// The pack.
    Pack(PackState),
    /// The webbing.
    Webbing(WebbingState),
    /// The label.
    Label(LabelState),
}

impl Look {
    /// Whether it is a fault.
    pub fn is_fault(self) -> bool {
        match self {
            Look::Fasteners(missed) => missed > 0,
            Look::Rope(x) => x != RopeState::Sound,
            Look::Arrow(x) => x == Arrow::Down,
            Look::Bolt(x) => x == Bolt::Loose,
            Look::Latch(x) => x == Latch::Open,
            Look::Connector(x) => x != ConnectorState::Sound,
            Look::Pack(x) => x != PackState::Sound,
            Look::Webbing(x) => x != WebbingState::Sound,
            Look::Label(x) => x != LabelState::Legible,
        }
    }
}

impl GearPart {
    /// All parts.
    pub const ALL: [GearPart; 9] = [
        GearPart::Fasteners,
        GearPart::Rope,
        GearPart::Arrow,
        GearPart::Bolt,
        GearPart::Latch,
        GearPart::Connector,
        GearPart::Pack,
        GearPart::Webbing,
        GearPart::Label,
    ];

    /// The parts that a set-up has.
    pub fn of(s: &Scenario) -> Vec<GearPart> {
        GearPart::ALL
            .into_iter()
            .filter(|p| match p {
                GearPart::Fasteners => {
                    matches!(
                        s.anchor.kind,
                        AnchorKind::RidgePlateInFraming | AnchorKind::RidgePlateInSheathing
                    )
                }
                GearPart::Pack => s.lanyard.absorber.is_some(),
                _ => true,
            })
            .collect()
    }

    /// What a look at it shows.
    pub fn look(self, s: &Scenario) -> Look {
        match self {
            GearPart::Fasteners => Look::Fasteners(crate::strength::anchor(s).fasteners.1),
            GearPart::Rope => Look::Rope(s.gear.rope),
            GearPart::Arrow => Look::Arrow(s.grab.arrow),
            GearPart::Bolt => Look::Bolt(s.grab.bolt),
            GearPart::Latch => Look::Latch(s.grab.latch),
            GearPart::Connector => Look::Connector(s.gear.connector),
            GearPart::Pack => Look::Pack(s.gear.pack),
            GearPart::Webbing => Look::Webbing(s.gear.webbing),
            GearPart::Label => Look::Label(s.gear.label),
        }
    }

    /// Replaces it by a sound one, or puts it right.
    pub fn put_right(self, s: &mut Scenario) {
        match self {
            GearPart::Fasteners => {
                s.anchor.fasteners.missed = 0;
                if s.anchor.kind == AnchorKind::RidgePlateInSheathing {
                    s.anchor.kind = AnchorKind::RidgePlateInFraming;
                }
            }
            GearPart::Rope => s.gear.rope = RopeState::Sound,
            GearPart::Arrow => s.grab.arrow = Arrow::Up,
            GearPart::Bolt => s.grab.bolt = Bolt::Tight,
            GearPart::Latch => s.grab.latch = Latch::Closed,
            GearPart::Connector => s.gear.connector = ConnectorState::Sound,
            GearPart::Pack => s.gear.pack = PackState::Sound,
            GearPart::Webbing => s.gear.webbing = WebbingState::Sound,
            GearPart::Label => s.gear.label = LabelState::Legible,
        }
    }

    /// Puts a fault in it.
    pub fn spoil(self, s: &mut Scenario, pick: &mut Draw) {
        match self {
            GearPart::Fasteners => s.anchor.fasteners.missed = pick.u32(1..=s.anchor.fasteners.per_side),
            GearPart::Rope => s.gear.rope = pick.one([RopeState::Frayed, RopeState::Knotted]),
            GearPart::Arrow => s.grab.arrow = Arrow::Down,
            GearPart::Bolt => s.grab.bolt = Bolt::Loose,
            GearPart::Latch => s.grab.latch = Latch::Open,
            GearPart::Connector => {
                s.gear.connector = pick.one([ConnectorState::Unlocked, ConnectorState::Corroded]);
            }
            GearPart::Pack => s.gear.pack = PackState::Deployed,
            GearPart::Webbing => s.gear.webbing = WebbingState::Cut,
            GearPart::Label => s.gear.label = LabelState::Missing,
        }
    }

    /// The part whose fault a finding names.
    pub fn of_finding(code: FindingCode) -> Option<GearPart> {
        Some(match code {
            FindingCode::FastenersMissed => GearPart::Fasteners,
            FindingCode::GearFrayed | FindingCode::GearKnot => GearPart::Rope,
            FindingCode::GrabReversed => GearPart::Arrow,
            FindingCode::BoltLoose => GearPart::Bolt,
            FindingCode::LatchOpen => GearPart::Latch,
            FindingCode::GearGate | FindingCode::GearRust => GearPart::Connector,
            FindingCode::GearPack => GearPart::Pack,
            FindingCode::GearWebbing => GearPart::Webbing,
            FindingCode::GearLabel => GearPart::Label,
            _ => return None,
        })
    }
}

/// Gear as it lies in the shed: none to three faults, the same for the same seed.
pub fn from_the_shed(s: &mut Scenario, seed: u64) {
    let mut pick = Draw::with_seed(seed);
    let parts = GearPart::of(s);
    for p in &parts {
        p.put_right(s);
    }
    for _ in 0..pick.u32(0..=3) {
        parts[pick.index(parts.len())].spoil(s, &mut pick);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::physics::simulate;
    use crate::rules::{judge, place};

    #[test]
    fn every_fault_has_a_finding_and_goes_when_put_right() {
        let mut pick = Draw::with_seed(7);
        for part in GearPart::ALL {
            for _ in 0..4 {
                let mut s = Scenario::default();
                assert!(!part.look(&s).is_fault());
                part.spoil(&mut s, &mut pick);
                assert!(part.look(&s).is_fault(), "{part:?}");
                assert!(s.problems().is_empty());
                let t = simulate(&s.set_up().expect("possible"));
                let named = judge(&s.set_up().expect("possible"), &t, place("on").expect("held"))
                    .iter()
                    .any(|f| GearPart::of_finding(f.code) == Some(part));
                assert!(named, "{part:?} has no finding");
                part.put_right(&mut s);
                assert_eq!(s, Scenario::default());
            }
        }
    }

    #[test]
    fn the_shed_gives_the_same_gear_for_the_same_seed_and_some_of_it_sound() {
        let gear = |seed| {
            let mut s = Scenario::default();
            from_the_shed(&mut s, seed);
            assert!(s.problems().is_empty());
            s
        };
        assert_eq!(gear(3), gear(3));
        let sound = (0..200).filter(|i| gear(*i) == Scenario::default()).count();
        assert!((20..120).contains(&sound), "{sound} of 200 without a fault");
        for part in GearPart::ALL {
            assert!((0..200).any(|i| part.look(&gear(i)).is_fault()), "{part:?} is never faulty");
        }
    }
}
