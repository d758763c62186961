//! Five invented houses, each another world for a fall: low eave, deck, falling ground, steep roof,
//! height with a chimney. None is a real one. A house brings its own ladder and a stance that fits.

use crate::scenario::{
    Anchor, AnchorKind, Below, House, Ladder, Lifeline, ORDINARY_OBSTACLE, RopeGrab, Scenario, Stance,
};
use serde::{Deserialize, Serialize};

/// One of the five.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum HouseKind {
    /// One storey: hardly room for fall arrest at all.
    Bungalow,
    /// Two storeys, a deck below the wall.
    TwoStorey,
    /// A basement that opens on ground falling away.
    WalkOut,
    /// A steep roof with dormers, worked from the slope.
    Cape,
    /// A tall gable beside a brick chimney.
    TallGable,
}

/// A roof that rises `rise` in 12.
fn pitch_rad(rise: f64) -> f64 {
    libm::atan(rise / 12.0)
}

impl HouseKind {
    /// All, from low to high.
    pub const ALL: [HouseKind; 5] = [
        HouseKind::Bungalow,
        HouseKind::TwoStorey,
        HouseKind::WalkOut,
        HouseKind::Cape,
        HouseKind::TallGable,
    ];

    /// House, ladder, stance, anchor and length of rope; the rest of the set-up stays.
    pub fn move_in(self, s: &mut Scenario) {
        let ground = House { below: Below::BareGround, ground_slope_rad: 0.0, ..House::default() };
        let (house, foot_distance_m, length_m, stance) = match self {
            HouseKind::Bungalow => (
                House {
                    eave_height_m: 2.7,
                    roof_pitch_rad: pitch_rad(4.0),
                    half_span_m: 4.2,
                    overhang_m: 0.5,
                    ..ground
                },
                0.7,
                3.9,
                Stance::Ladder { standing_height_m: 0.9 },
            ),
            HouseKind::TwoStorey => (
                House { eave_height_m: 5.6, below: ORDINARY_OBSTACLE, ..ground },
                1.45,
                6.9,
                Stance::Ladder { standing_height_m: 3.7 },
            ),
            HouseKind::WalkOut => (
                House {
                    eave_height_m: 5.8,
                    roof_pitch_rad: pitch_rad(5.0),
                    half_span_m: 4.0,
                    overhang_m: 0.45,
                    ground_slope_rad: 0.2,
                    ..ground
                },
                1.6,
                7.5,
                Stance::Ladder { standing_height_m: 3.9 },
            ),
            HouseKind::Cape => (
                House {
                    eave_height_m: 2.9,
                    roof_pitch_rad: pitch_rad(12.0),
                    half_span_m: 3.9,
                    overhang_m: 0.35,
                    ..ground
                },
                0.75,
                4.2,
                Stance::Roof { from_eave_m: 1.9 },
            ),
            HouseKind::TallGable => (
                House {
                    eave_height_m: 7.4,
                    roof_pitch_rad: pitch_rad(10.0),
                    half_span_m: 3.0,
                    overhang_m: 0.3,
                    ..ground
                },
                1.9,
                8.6,
                Stance::Ladder { standing_height_m: 5.5 },
            ),
        };
        s.house = house;
        s.ladder = Ladder { foot_distance_m, length_m, ..s.ladder };
        s.stance = stance;
        s.anchor = Anchor { kind: AnchorKind::RidgePlateInFraming, from_ridge_m: 0.0, ..s.anchor };
        let along_m = (house.half_span_m + house.overhang_m) / libm::cos(house.roof_pitch_rad);
        s.lifeline = Lifeline { length_m: (along_m + house.eave_height_m + 2.0).ceil(), ..s.lifeline };
        s.grab = RopeGrab { above_dring_m: 0.15, ..s.grab };
    }

    /// The house of a set-up, when it is still one of the five.
    pub fn of(s: &Scenario) -> Option<HouseKind> {
        HouseKind::ALL.into_iter().find(|k| {
            let mut there = s.clone();
            k.move_in(&mut there);
            there.house == s.house
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::physics::simulate;
    use crate::physics::trace::{Outcome, Thing};

    #[test]
    fn each_house_can_be_worked_on_and_no_two_fall_alike() {
        let mut seen = Vec::new();
        for kind in HouseKind::ALL {
            let mut s = Scenario::default();
            kind.move_in(&mut s);
            assert_eq!(s.problems(), vec![], "{kind:?}");
            assert_eq!(HouseKind::of(&s), Some(kind));
            let t = simulate(&s.set_up().expect("possible"));
            assert!(t.is_sound(), "{kind:?} {}", t.energy_residual);
            seen.push((kind, t.outcome, t.clearance_margin_m, t.peak_force_n.round()));
        }
        for (i, a) in seen.iter().enumerate() {
            assert!(seen.iter().skip(i + 1).all(|b| (a.1, a.2, a.3) != (b.1, b.2, b.3)), "{seen:?}");
        }
        // One storey leaves hardly any room, the tall gable a good deal.
        assert!(seen[0].2.is_none_or(|m| m < 0.3), "{seen:?}");
        assert!(seen[4].1 == Outcome::Stopped && seen[4].2.is_some_and(|m| m > 3.0), "{seen:?}");
    }

    #[test]
    fn on_falling_ground_a_fall_lands_lower() {
        let mut s = Scenario::default();
        HouseKind::WalkOut.move_in(&mut s);
        s.lanyard.clipped = false;
        let t = simulate(&s.set_up().expect("possible"));
        assert!(t.lowest_point_m < -0.1, "{}", t.lowest_point_m);
        assert!(t.impacts.iter().any(|i| i.what == Thing::Ground));
    }
}
