//! Whether a leaning ladder stands: statics of one rigid ladder, and what a slip of it does.
//!
//! The ladder leans on a wall (the push is square to the wall) or on the eave's edge (square to the
//! rails), both without friction: against the worker. Foot friction is all that keeps it from
//! sliding out. In a fall the boots leave the rungs at once; what happens to the ladder then is for the rigid
//! bodies. Left out: bending, rungs, levellers, soft ground, a helper at the foot.

use crate::geometry::{BODY_OFF_LADDER_M, Geometry, LadderTop};
use crate::scenario::{Scenario, Stance, Weather};
use crate::units::G_M_S2;
use serde::{Deserialize, Serialize};

/// Mass of a metre of ladder, kg (assumed: 150 N over 6.7 m).
pub const LADDER_KG_PER_M: f64 = 2.3;
/// Half the distance between the rails, m (assumed).
pub const HALF_WIDTH_M: f64 = 0.2;
/// Friction between feet and firm ground, dry (assumed, as the next two).
pub const DRY_FOOT_FRICTION: f64 = 0.5;
/// The same on wet ground or wet boards.
pub const WET_FOOT_FRICTION: f64 = 0.3;
/// The same on ice.
pub const ICE_FOOT_FRICTION: f64 = 0.1;
/// Sliding friction of the feet as a share of what holds them at rest (assumed).
pub const SLIDING_SHARE: f64 = 0.6;
/// Speed of a sliding foot when the boots leave the rungs, m/s (assumed: until then the worker's
/// weight drives it).
pub const FOOT_SLIDES_M_S: f64 = 1.5;
/// Turning speed of a ladder that begins to tip, rad/s (assumed).
pub const TIPS_RAD_S: f64 = 0.2;

/// A weight that the ladder carries.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Load {
    /// N.
    pub weight_n: f64,
    /// Where it stands, along the rails from the foot, m.
    pub along_m: f64,
    /// How far it hangs out from the rails, away from the wall, m.
    pub out_m: f64,
}

/// What ground and support bear.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reactions {
    /// Sideways push at the foot that friction must take, N.
    pub foot_push_n: f64,
    /// Weight on the foot, N.
    pub foot_weight_n: f64,
    /// Push of the support, N; negative when the ladder would leave it.
    pub top_n: f64,
}

impl Reactions {
    /// Friction coefficient that the foot needs.
    pub fn friction_needed(&self) -> f64 {
        self.foot_push_n / self.foot_weight_n
    }

    /// The same on ground that falls away from the wall: the load leans further from its square.
    /// tan(a + b) of the push's lean and the slope; infinite where no friction would do.
    pub fn friction_needed_on(&self, slope_rad: f64) -> f64 {
        if slope_rad <= 0.0 {
            return self.friction_needed();
        }
        let (sin, cos) = (libm::sin(slope_rad), libm::cos(slope_rad));
        let square_n = self.foot_weight_n * cos - self.foot_push_n * sin;
        if square_n <= 0.0 {
            f64::INFINITY
        } else {
            (self.foot_push_n * cos + self.foot_weight_n * sin) / square_n
        }
    }
}

/// Reactions of a ladder at `angle_rad` whose support is `support_m` up the rails: moments about
/// the foot.
pub fn reactions(angle_rad: f64, support_m: f64, top: LadderTop, loads: &[Load]) -> Reactions {
    let (sin, cos) = (libm::sin(angle_rad), libm::cos(angle_rad));
    let weight_n: f64 = loads.iter().map(|l| l.weight_n).sum();
    let moment_nm: f64 = loads.iter().map(|l| l.weight_n * (l.along_m * cos - l.out_m)).sum();
    match top {
        LadderTop::Wall => {
            let top_n = moment_nm / (support_m * sin);
            Reactions { foot_push_n: top_n, foot_weight_n: weight_n, top_n }
        }
        LadderTop::Eave => {
            let top_n = moment_nm / support_m;
            Reactions { foot_push_n: top_n * sin, foot_weight_n: weight_n - top_n * cos, top_n }
        }
    }
}

/// Friction that the feet can rely on.
pub fn foot_friction(weather: Weather) -> f64 {
    match weather {
        Weather::Dry => DRY_FOOT_FRICTION,
        Weather::Wet => WET_FOOT_FRICTION,
        Weather::Frozen => ICE_FOOT_FRICTION,
    }
}

/// How a ladder stands under its worker.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Footing {
    /// It holds.
    Holds,
    /// Its foot slides out from the wall.
    SlidesOut,
    /// It tips back over its foot, away from the wall.
    TipsBack,
    /// It goes over sideways: the common centre of mass is outside a rail.
    TipsSideways,
}

/// Whether the ladder of a set-up stands, and the numbers behind it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stand {
    /// How it stands as it is tied.
    pub footing: Footing,
    /// How it would stand if it were not tied.
    pub untied: Footing,
    /// Friction that the foot needs.
    pub needed_friction: f64,
    /// Friction that it has.
    pub has_friction: f64,
    /// Distance of the common centre of mass from the ladder's middle, m.
    pub off_middle_m: f64,
}

/// Mass of the set-up's ladder, kg.
pub fn mass_kg(g: &Geometry) -> f64 {
    LADDER_KG_PER_M * g.ladder.foot.dist(g.ladder.tip)
}

/// How the ladder stands with the worker on it; none for a worker on the roof.
pub fn stand(s: &Scenario, g: &Geometry) -> Option<Stand> {
    let Stance::Ladder { standing_height_m } = s.stance else { return None };
    let angle_rad = g.ladder.angle_rad();
    let whole_m = g.ladder.foot.dist(g.ladder.tip);
    let ladder_n = mass_kg(g) * G_M_S2;
    let worker_n = s.worker.mass_kg * G_M_S2;
    // A climber's weight stands near the line of the rungs when she leans in, and off them when she does
    // not: each against her, at the rungs for sliding out, off them for tipping back.
    let loads = |out_m: f64| {
        [
            Load { weight_n: ladder_n, along_m: whole_m / 2.0, out_m: 0.0 },
            Load {
                weight_n: worker_n,
                along_m: (standing_height_m - g.ladder.foot.y) / libm::sin(angle_rad),
                out_m,
            },
        ]
    };
    let to_support_m = g.ladder.foot.dist(g.ladder.support);
    let r = reactions(angle_rad, to_support_m, g.ladder.top, &loads(0.0));
    let back = reactions(angle_rad, to_support_m, g.ladder.top, &loads(BODY_OFF_LADDER_M));
    let off_middle_m = worker_n * s.ladder.reach_out_m / (worker_n + ladder_n);
    let (needed, has) = (r.friction_needed_on(g.ground_slope_rad), foot_friction(s.weather));
    let untied = if off_middle_m > HALF_WIDTH_M {
        Footing::TipsSideways
    } else if back.top_n < 0.0 {
        Footing::TipsBack
    } else if needed > has {
        Footing::SlidesOut
    } else {
        Footing::Holds
    };
    let footing = if s.ladder.tied { Footing::Holds } else { untied };
    Some(Stand { footing, untied, needed_friction: needed.clamp(0.0, 99.0), has_friction: has, off_middle_m })
}

/// Fingertips over the soles with an arm straight up, as a share of the stature (vertical reach of adults:
/// about 1.27; from memory).
pub const HAND_REACH_SHARE: f64 = 1.27;

/// Nearest that a worker's bare hand comes to the overhead wire from where the soles are, m, however the
/// body leans about them. None without a wire. A pole adds its own length to the reach.
pub fn hand_to_wire_m(s: &Scenario, g: &Geometry) -> Option<f64> {
    let wire = s.power_line?;
    let (dx, dy) = (wire.distance_m - g.soles.x, wire.height_m - g.soles.y);
    Some((libm::hypot(dx, dy) - HAND_REACH_SHARE * s.worker.stature_m).max(0.0))
}

/// Nearest that the ladder comes to the wire when it is carried upright under it, m. None without a wire.
pub fn carried_to_wire_m(s: &Scenario, g: &Geometry) -> Option<f64> {
    let wire = s.power_line?;
    Some((wire.height_m - g.ground_y_m(wire.distance_m) - s.ladder.length_m).max(0.0))
}

/// Nearest that any part of the ladder comes to the overhead wire while it turns about its foot where
/// that stands, m: raised, lowered or fallen, not moved. None without a wire.
pub fn nearest_to_wire_m(s: &Scenario, g: &Geometry) -> Option<f64> {
    let wire = s.power_line?;
    let (dx, dy) = (wire.distance_m - g.ladder.foot.x, wire.height_m - g.ladder.foot.y);
    Some((libm::hypot(dx, dy) - g.ladder.foot.dist(g.ladder.tip)).max(0.0))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scenario::PowerLine;

    /// 800 N at 0.9 of the length and a ladder of 150 N against a frictionless wall: statics. The
    /// angles of Ontario's and the common ratios (O. Reg. 213/91 s. 78); demand at 65 beside 75
    /// degrees measured as 1.77 (Chang 2004), 1.740 by statics.
    #[test]
    fn check_24_what_the_foot_of_a_ladder_needs() {
        let needed = |deg: f64| {
            let loads = [
                Load { weight_n: 800.0, along_m: 0.9, out_m: 0.0 },
                Load { weight_n: 150.0, along_m: 0.5, out_m: 0.0 },
            ];
            reactions(deg.to_radians(), 1.0, LadderTop::Wall, &loads).friction_needed()
        };
        assert!((needed(75.5) / 0.216 - 1.0).abs() < 0.01, "{}", needed(75.5));
        assert!((needed(65.0) / 0.390 - 1.0).abs() < 0.01, "{}", needed(65.0));
        let ratio = needed(65.0) / needed(75.0);
        assert!((ratio / 1.740 - 1.0).abs() < 0.01 && (ratio / 1.77 - 1.0).abs() < 0.03, "{ratio}");
        assert!((0.25_f64.acos().to_degrees() - 75.52).abs() < 0.01);
        assert!(((1.0_f64 / 3.0).acos().to_degrees() - 70.53).abs() < 0.01);
    }

    #[test]
    fn reactions_balance_at_an_eave() {
        let loads = [Load { weight_n: 900.0, along_m: 4.0, out_m: 0.2 }];
        let a = 1.3_f64;
        let r = reactions(a, 6.0, LadderTop::Eave, &loads);
        // Forces up and sideways, moments about the support.
        assert!((r.foot_weight_n + r.top_n * a.cos() - 900.0).abs() < 1e-9);
        assert!((r.foot_push_n - r.top_n * a.sin()).abs() < 1e-9);
        let lever = 6.0 * a.cos() - (4.0 * a.cos() - 0.2);
        let turn = r.foot_weight_n * 6.0 * a.cos() - r.foot_push_n * 6.0 * a.sin() - 900.0 * lever;
        assert!(turn.abs() < 1e-9, "{turn}");
    }

    #[test]
    fn a_bad_angle_a_wet_ground_and_a_long_reach_bring_it_down() {
        let free = || {
            let mut s = Scenario::default();
            s.ladder.tied = false;
            s
        };
        let footing = |s: &Scenario| stand(s, &Geometry::of(s).expect("stands")).expect("on it").footing;
        assert_eq!(footing(&free()), Footing::Holds);
        let mut flat = free();
        flat.ladder.foot_distance_m = 3.5;
        flat.weather = Weather::Wet;
        assert_eq!(footing(&flat), Footing::SlidesOut);
        flat.ladder.tied = true;
        assert_eq!(footing(&flat), Footing::Holds);
        let mut steep = free();
        steep.ladder.foot_distance_m = 0.25;
        assert_eq!(footing(&steep), Footing::TipsBack);
        let mut reach = free();
        reach.ladder.reach_out_m = 0.35;
        assert_eq!(footing(&reach), Footing::TipsSideways);
        reach.ladder.reach_out_m = 0.15;
        assert_eq!(footing(&reach), Footing::Holds);
    }

    #[test]
    fn a_raised_ladder_reaches_the_wire_as_far_as_it_is_long() {
        let mut s = Scenario::default();
        let g = Geometry::of(&s).expect("stands");
        assert_eq!(nearest_to_wire_m(&s, &g), None);
        let reach_m = g.ladder.foot.dist(g.ladder.tip);
        // Straight above the foot.
        s.power_line =
            Some(PowerLine { height_m: reach_m + 2.5, distance_m: g.ladder.foot.x, ..PowerLine::default() });
        assert!((nearest_to_wire_m(&s, &g).expect("a wire") - 2.5).abs() < 1e-9);
        s.power_line =
            Some(PowerLine { height_m: 4.0, distance_m: g.ladder.foot.x + 1.0, ..PowerLine::default() });
        assert_eq!(nearest_to_wire_m(&s, &g), Some(0.0));
    }

    /// On a slope the ground's own lean adds to the load's: tan(a + b) (statics of a body on an
    /// incline; any textbook).
    #[test]
    fn ground_that_falls_away_asks_for_more_friction() {
        let r = Reactions { foot_push_n: 200.0, foot_weight_n: 1_000.0, top_n: 0.0 };
        let want = (0.2_f64.atan() + 0.15).tan();
        assert!((r.friction_needed_on(0.15) - want).abs() < 1e-12);
        assert!((r.friction_needed_on(0.0) - 0.2).abs() < 1e-12);
        assert!(r.friction_needed_on(1.5).is_infinite());
        let mut s = Scenario::default();
        s.ladder.tied = false;
        let at = |s: &Scenario| stand(s, &Geometry::of(s).expect("stands")).expect("on it").needed_friction;
        let level = at(&s);
        s.house.ground_slope_rad = 0.15;
        s.ladder.length_m += 0.4;
        assert!(at(&s) > level + 0.1);
    }
}
