//! Moving the set-up by hand: which part can be taken hold of, where it is, and the set-up after it
//! was moved. A part goes as far as the set-up allows and stops there.
//!
//! Climbing is told apart from editing: a worker who climbs leaves the grab where it is on the rope,
//! until the lanyard drags it along. Left out: hauling in the rope's tail.

use crate::geometry::{Geometry, P, p, path_length, taut_path};
use crate::scenario::{Field, Scenario, Stance};
use crate::units::within;
use serde::{Deserialize, Serialize};

/// A part that can be moved.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Held {
    /// The anchor, along the roof.
    Anchor,
    /// The grab, along the rope.
    Grab,
    /// The worker, up and down the ladder or the roof.
    Worker,
    /// The ladder's foot, out from the wall.
    LadderFoot,
}

/// Places are rounded to this, m.
const GRID_M: f64 = 0.05;
/// The grab trails behind the worker to this, m.
const DRAG_M: f64 = 0.01;
/// How much nearer the pointer has to be to the other way for the worker to step over, m.
const STEP_OVER_M: f64 = 0.25;
/// Where a hand takes hold of the worker: above the soles, m.
const SHIN_M: f64 = 0.35;

impl Held {
    /// All, in the order of the system.
    pub const ALL: [Held; 4] = [Held::Anchor, Held::Grab, Held::Worker, Held::LadderFoot];

    /// The number that moves.
    pub fn field(self, s: &Scenario) -> Field {
        match (self, s.stance) {
            (Held::Anchor, _) => Field::AnchorFromRidge,
            (Held::Grab, _) => Field::GrabAboveDring,
            (Held::Worker, Stance::Ladder { .. }) => Field::StandingHeight,
            (Held::Worker, Stance::Roof { .. }) => Field::FromEave,
            (Held::LadderFoot, _) => Field::LadderFoot,
        }
    }

    /// Where to take hold of it, m.
    pub fn at(self, g: &Geometry) -> P {
        match self {
            Held::Anchor => p(g.anchor.x, g.anchor.y + 0.06),
            Held::Grab => g.grab,
            Held::Worker => p(g.soles.x, g.soles.y + SHIN_M),
            Held::LadderFoot => g.ladder.foot,
        }
    }

    /// The way it can go, as a unit vector in the direction of a growing number.
    pub fn way(self, s: &Scenario, g: &Geometry) -> P {
        let unit = |a: P, b: P| {
            let d = a.dist(b).max(1e-9);
            p((b.x - a.x) / d, (b.y - a.y) / d)
        };
        match (self, s.stance) {
            (Held::Anchor, _) => g.down_slope,
            (Held::Grab, Stance::Roof { .. }) => unit(g.dring, g.grab),
            (Held::Grab, Stance::Ladder { .. }) => p(0.0, 1.0),
            (Held::Worker, Stance::Roof { .. }) => p(-g.down_slope.x, -g.down_slope.y),
            (Held::Worker, Stance::Ladder { .. }) => unit(g.ladder.foot, g.ladder.support),
            (Held::LadderFoot, _) => p(1.0, 0.0),
        }
    }
}

fn round(x: f64) -> f64 {
    (x / GRID_M).round() * GRID_M
}

/// Rope between anchor and grab, m.
fn rope_m(s: &Scenario) -> Option<f64> {
    Geometry::of(s).map(|g| g.grab_rope_m)
}

/// The grab after the worker moved from `before`: where it was on the rope, or as near to it as the
/// lanyard reaches.
fn trail(before: &Scenario, s: &mut Scenario) {
    if core::mem::discriminant(&before.stance) != core::mem::discriminant(&s.stance) {
        // Stepping over the eave, a worker sets the grab anew.
        s.grab.above_dring_m = 0.15_f64.min(s.lanyard.length_m);
        return;
    }
    let Some(want_m) = rope_m(before) else { return };
    // One metre of rope more is one metre less above the D-ring, near enough for a step; then the
    // difference that is left.
    for _ in 0..3 {
        let Some(now_m) = rope_m(s) else { return };
        s.grab.above_dring_m += now_m - want_m;
    }
    // Beyond the lanyard's reach it is dragged along.
    let range = Field::GrabAboveDring.range();
    let most = within(s.lanyard.length_m, 0.0, range.max);
    s.grab.above_dring_m = within((s.grab.above_dring_m * 1e3).round() / 1e3, -most, most);
    let step = DRAG_M.copysign(s.grab.above_dring_m);
    while s.grab.above_dring_m.abs() > DRAG_M {
        let Some(g) = Geometry::of(s) else { return };
        if g.grab.dist(g.dring) <= s.lanyard.length_m {
            return;
        }
        s.grab.above_dring_m -= step;
    }
}

fn put(before: &Scenario, part: Held, value: f64) -> Scenario {
    let mut s = before.clone();
    let field = part.field(&s);
    let r = field.range();
    field.set(&mut s, within(value, r.min, r.max));
    if part == Held::Worker {
        trail(before, &mut s);
    }
    s
}

/// Moves `part` so that its number becomes `value`, or as near to it as can be from where it is. A
/// set-up that has problems already can be moved anywhere in range.
pub fn moved(before: &Scenario, part: Held, value: f64) -> Scenario {
    let Some(from) = part.field(before).get(before) else { return before.clone() };
    let whole = put(before, part, value);
    if !before.problems().is_empty() || whole.problems().is_empty() {
        return whole;
    }
    // Back towards where it was, by a grid step at a time.
    let steps = ((value - from).abs() / GRID_M).ceil().min(400.0) as u32;
    (1..steps)
        .map(|i| put(before, part, round(value + (from - value) * f64::from(i) / f64::from(steps))))
        .find(|s| s.problems().is_empty())
        .unwrap_or_else(|| before.clone())
}

/// The set-up with `part` taken to `to`.
pub fn dragged(before: &Scenario, part: Held, to: P) -> Scenario {
    let Some(g) = Geometry::of(before) else { return before.clone() };
    let along = |a: P, way: P| (to.x - a.x) * way.x + (to.y - a.y) * way.y;
    match part {
        Held::Anchor => {
            // The nearer of the two slopes.
            let near = along(g.ridge, g.down_slope);
            let far = along(g.ridge, p(-g.down_slope.x, g.down_slope.y));
            let value = if to.x >= g.ridge.x { near } else { -far };
            moved(before, part, round(value))
        }
        Held::Grab => {
            let value = match before.stance {
                Stance::Ladder { .. } => to.y - g.dring.y,
                Stance::Roof { .. } => {
                    let path = taut_path(g.anchor, &g.corners, g.dring);
                    let last = path[path.len() - 2];
                    let d = g.dring.dist(last).max(1e-9);
                    along(g.dring, p((last.x - g.dring.x) / d, (last.y - g.dring.y) / d))
                        .min(path_length(&path) - 0.15)
                }
            };
            moved(before, part, round(value))
        }
        Held::LadderFoot => moved(before, part, round(to.x - g.ladder.support.x)),
        Held::Worker => {
            // On the ladder or on the roof: the nearer way, with a little will to stay.
            let up = p(-g.down_slope.x, -g.down_slope.y);
            let on_roof_m = along(g.eave, up).max(0.1);
            let roof_at = p(g.eave.x + up.x * on_roof_m, g.eave.y + up.y * on_roof_m);
            let feet_y = within(to.y - SHIN_M, g.ladder.foot.y + 0.3, g.eave.y);
            let ladder_at = p(g.ladder.x_at(feet_y), feet_y);
            let feet = p(to.x, to.y - SHIN_M);
            let (to_roof_m, to_ladder_m) = (roof_at.dist(feet), ladder_at.dist(feet));
            let is_roof = matches!(before.stance, Stance::Roof { .. });
            let roof_now = if is_roof {
                to_roof_m < to_ladder_m + STEP_OVER_M
            } else {
                to_roof_m + STEP_OVER_M < to_ladder_m
            };
            if roof_now == is_roof {
                return moved(before, part, round(if is_roof { on_roof_m } else { feet_y }));
            }
            let mut over = before.clone();
            over.stance = if roof_now {
                Stance::Roof { from_eave_m: round(on_roof_m.max(0.3)) }
            } else {
                Stance::Ladder { standing_height_m: round((g.eave.y - 1.9).min(feet_y).max(0.3)) }
            };
            trail(before, &mut over);
            if over.problems().is_empty() { over } else { before.clone() }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::practice::houses::HouseKind;

    fn above(s: &Scenario) -> f64 {
        s.grab.above_dring_m
    }

    #[test]
    fn a_worker_who_climbs_leaves_the_grab_behind_until_the_lanyard_drags_it() {
        let s = Scenario::default();
        let up = moved(&s, Held::Worker, 3.8);
        assert!((above(&up) - (above(&s) - 0.2)).abs() < 0.03, "{}", above(&up));
        assert!((rope_m(&up).expect("stands") - rope_m(&s).expect("stands")).abs() < 0.02);
        // From far below, it trails at the lanyard's length.
        let low = moved(&s, Held::Worker, 1.5);
        assert!(above(&low) > 0.2 && low.problems().is_empty());
        let high = moved(&low, Held::Worker, 3.6);
        assert!(above(&high) < -0.5 && high.problems().is_empty(), "{}", above(&high));
    }

    #[test]
    fn a_part_stops_where_the_set_up_would_be_impossible() {
        for kind in HouseKind::ALL {
            let mut s = Scenario::default();
            kind.move_in(&mut s);
            for part in Held::ALL {
                for to in [p(-20.0, 20.0), p(20.0, -20.0), p(0.0, 30.0), p(-3.0, 5.0), p(1.0, 0.0)] {
                    let after = dragged(&s, part, to);
                    assert_eq!(after.problems(), vec![], "{kind:?} {part:?} {to:?}");
                }
            }
        }
    }

    /// Two bugs: a lanyard of -1 m, then the worker moved, and an eave at 0, then anything dragged,
    /// ended the page.
    #[test]
    fn numbers_out_of_range_can_be_moved_about() {
        let bad = [-1e9, -1.0, 0.0, 1e-4, 1e9, f64::INFINITY, f64::NEG_INFINITY];
        for &field in Field::ALL {
            for v in bad {
                for roof in [false, true] {
                    let mut s = Scenario::default();
                    if roof {
                        s.stance = Stance::Roof { from_eave_m: 1.0 };
                    }
                    field.set(&mut s, v);
                    for part in Held::ALL {
                        for to in [-5.0, 0.3, 4.0] {
                            let _ = moved(&s, part, to);
                            let _ = dragged(&s, part, p(to, 4.0 - to));
                        }
                    }
                }
            }
        }
    }

    #[test]
    fn what_is_dragged_lies_under_the_pointer() {
        let s = Scenario::default();
        let g = Geometry::of(&s).expect("stands");
        let at = p(g.grab.x + 0.2, g.grab.y - 0.4);
        let after = Geometry::of(&dragged(&s, Held::Grab, at)).expect("stands");
        assert!((after.grab.y - at.y).abs() < 0.03);
        let down = p(g.ridge.x + 1.0, g.ridge.y - 0.5);
        let after = Geometry::of(&dragged(&s, Held::Anchor, down)).expect("stands");
        assert!(after.anchor.dist(down) < 0.08);
    }

    #[test]
    fn a_worker_dragged_onto_the_roof_stands_there_and_can_come_back() {
        let s = Scenario::default();
        let g = Geometry::of(&s).expect("stands");
        let up = dragged(&s, Held::Worker, p(g.eave.x - 1.5, g.eave.y + 1.2));
        assert!(matches!(up.stance, Stance::Roof { from_eave_m } if from_eave_m > 0.9));
        let back = dragged(&up, Held::Worker, p(g.ladder.x_at(3.0), 3.2));
        assert!(matches!(back.stance, Stance::Ladder { .. }));
    }
}
