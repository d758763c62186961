//! House, ladder, stance and gear with every place worked out.

use super::plane::{P, p, path_length, taut_path};
use crate::scenario::{Below, Scenario, Stance};

/// Depth of the fascia board below the eave's edge, m (common practice: a 2x8 board, 0.184 m).
pub const FASCIA_DEPTH_M: f64 = 0.184;
/// Height of the dorsal D-ring over the soles as a share of stature. A 1.83 m worker's is commonly
/// taken as 1.5 m (5 ft of 6 ft; OSHA Technical Manual V-4, from memory), 0.82; a little lower
/// here, between the shoulder blades.
pub const DRING_SHARE: f64 = 0.80;
/// Distance of the dorsal D-ring behind the body's mid-line as a share of stature: on the torso's
/// surface, so that a worker lying on the back does not push the ring into the roof.
pub const DRING_BACK_SHARE: f64 = 0.066;
/// Distance of the body's mid-line in front of the rails at the soles, m.
pub const BODY_OFF_LADDER_M: f64 = 0.22;
/// Rungs that must stay below the ladder's top for a stance to be possible, as length, m.
pub const TOP_OF_LADDER_M: f64 = 0.3;

/// Where the ladder's top rests.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LadderTop {
    /// On the eave's edge, rails reaching past it.
    Eave,
    /// On the wall face.
    Wall,
}

/// The ladder in place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LadderLine {
    /// Foot, on the ground.
    pub foot: P,
    /// The point of support.
    pub support: P,
    /// End of the rails.
    pub tip: P,
    /// What supports it.
    pub top: LadderTop,
}

impl LadderLine {
    /// Angle from the ground, rad.
    pub fn angle_rad(&self) -> f64 {
        libm::atan2(self.support.y - self.foot.y, self.foot.x - self.support.x)
    }
    /// x of the rails at height `y_m`.
    pub fn x_at(&self, y_m: f64) -> f64 {
        let t = (y_m - self.foot.y) / (self.support.y - self.foot.y);
        self.foot.x + (self.support.x - self.foot.x) * t
    }
}

/// The scene with every place worked out.
#[derive(Clone, Debug, PartialEq)]
pub struct Geometry {
    /// Ridge.
    pub ridge: P,
    /// Eave's edge on the worker's side.
    pub eave: P,
    /// Lower edge of the fascia on the worker's side.
    pub fascia: P,
    /// Eave's edge on the far side.
    pub far_eave: P,
    /// Anchor ring.
    pub anchor: P,
    /// The ladder.
    pub ladder: LadderLine,
    /// Middle of the soles.
    pub soles: P,
    /// D-ring before the slip.
    pub dring: P,
    /// The grab before the slip.
    pub grab: P,
    /// Rope coordinate of the grab: rope between the anchor and it, m.
    pub grab_rope_m: f64,
    /// Corners that a rope from this anchor can bend over, in order from the anchor.
    pub corners: Vec<P>,
    /// The obstacle as (left, right, top), if there is one.
    pub obstacle: Option<(f64, f64, f64)>,
    /// Unit vector down the worker's slope.
    pub down_slope: P,
    /// How steeply the ground falls away from the wall, rad.
    pub ground_slope_rad: f64,
}

/// Height of ground that falls away from the wall, m.
pub fn ground_y_m(slope_rad: f64, x_m: f64) -> f64 {
    if slope_rad > 0.0 { -x_m.max(0.0) * libm::sin(slope_rad) / libm::cos(slope_rad) } else { 0.0 }
}

/// The ladder in place for a scenario, or `None` when its foot is out by more than its length.
pub fn ladder_line(s: &Scenario) -> Option<LadderLine> {
    let (f, l) = (s.ladder.foot_distance_m, s.ladder.length_m);
    let reach2 = l * l - f * f;
    if reach2 <= 0.01 {
        return None;
    }
    let reach = reach2.sqrt();
    let at_eave_y = ground_y_m(s.house.ground_slope_rad, s.house.overhang_m + f);
    if reach + at_eave_y >= s.house.eave_height_m {
        let support = p(s.house.overhang_m, s.house.eave_height_m);
        let foot = p(support.x + f, at_eave_y);
        let k = l / foot.dist(support);
        Some(LadderLine { foot, support, tip: foot.lerp(support, k), top: LadderTop::Eave })
    } else {
        let foot = p(f, ground_y_m(s.house.ground_slope_rad, f));
        let support = p(0.0, reach + foot.y);
        if support.y < 0.1 {
            return None;
        }
        Some(LadderLine { foot, support, tip: support, top: LadderTop::Wall })
    }
}

impl Geometry {
    /// Works every place out. Needs numbers in range (see [`Scenario::range_problems`]); returns
    /// `None` where the ladder cannot stand.
    pub fn of(s: &Scenario) -> Option<Geometry> {
        let h = &s.house;
        let (sin, cos) = (libm::sin(h.roof_pitch_rad), libm::cos(h.roof_pitch_rad));
        let eave = p(h.overhang_m, h.eave_height_m);
        let run = h.half_span_m + h.overhang_m;
        let ridge = p(-h.half_span_m, h.eave_height_m + run * sin / cos);
        let far_eave = p(-h.half_span_m - run, h.eave_height_m);
        let fascia = p(eave.x, eave.y - FASCIA_DEPTH_M);
        let down_slope = p(cos, -sin);

        let a = s.anchor.from_ridge_m;
        // On the surface: a rope from it lies on the roof.
        let anchor = p(ridge.x + a * cos, ridge.y - a.abs() * sin);
        let corners = if a < 0.0 { vec![ridge, eave, fascia] } else { vec![eave, fascia] };

        let ladder = ladder_line(s)?;
        let st = s.worker.stature_m;
        let soles = match s.stance {
            Stance::Ladder { standing_height_m: y } => p(ladder.x_at(y) + BODY_OFF_LADDER_M, y),
            Stance::Roof { from_eave_m: d } => {
                // Lifted so that the round end of the shin just touches the slope.
                let shin_radius_m = 0.029 * st;
                let lift = shin_radius_m * (1.0 / cos - 1.0) + 0.003;
                p(eave.x - d * cos, eave.y + d * sin + lift)
            }
        };
        let dring = p(soles.x + DRING_BACK_SHARE * st, soles.y + DRING_SHARE * st);

        let up = s.grab.above_dring_m;
        let (grab, grab_rope_m) = match s.stance {
            Stance::Ladder { .. } => {
                // The rope comes over the eave and lies on the rungs, or hangs free where the
                // ladder leans lower on the wall. Height above the eave is counted along the slope.
                let roof_m = path_to_eave(anchor, ridge, eave, a);
                let y = dring.y + up;
                if y >= eave.y {
                    let back = y - eave.y;
                    let g = p(eave.x - back * cos, eave.y + back * sin);
                    (g, roof_m - back)
                } else {
                    let g = p(eave.x.max(ladder.x_at(y) + 0.03), y);
                    (g, roof_m + hang_length(&ladder, eave, g))
                }
            }
            Stance::Roof { .. } => {
                // The rope lies from the anchor to the worker, held a little tight by the hand.
                let path = taut_path(anchor, &corners, dring);
                let last = path[path.len() - 2];
                let d = dring.dist(last);
                (dring.lerp(last, up / d), path_length(&path) - up)
            }
        };

        let obstacle = match h.below {
            Below::BareGround => None,
            Below::Obstacle { height_m, distance_m, width_m } => {
                Some((distance_m, distance_m + width_m, height_m))
            }
        };
        Some(Geometry {
            ridge,
            eave,
            fascia,
            far_eave,
            anchor,
            ladder,
            soles,
            dring,
            grab,
            grab_rope_m,
            corners,
            obstacle,
            down_slope,
            ground_slope_rad: h.ground_slope_rad,
        })
    }

    /// How deep a point is inside wall or roof, m; negative is its distance outside, measured to
    /// the nearest face's plane on the worker's side.
    pub fn depth_in_house_m(&self, q: P) -> f64 {
        let wall = (-q.x).min(self.fascia.y - q.y);
        // Roof: below the slope's plane, inside the fascia, above the soffit.
        let (dx, dy) = (q.x - self.eave.x, q.y - self.eave.y);
        let below_slope = -(dx * -self.down_slope.y + dy * self.down_slope.x);
        let roof = below_slope.min(-dx).min(q.y - self.fascia.y);
        wall.max(roof)
    }

    /// Height of the ground at `x_m`, m.
    pub fn ground_y_m(&self, x_m: f64) -> f64 {
        ground_y_m(self.ground_slope_rad, x_m)
    }

    /// Height of what lies under `x_m`, m: the ground or the obstacle's top.
    pub fn surface_below_m(&self, x_m: f64, half_width_m: f64) -> f64 {
        match self.obstacle {
            Some((l, r, top)) if x_m + half_width_m > l && x_m - half_width_m < r => top,
            _ => ground_y_m(self.ground_slope_rad, x_m),
        }
    }
}

fn path_to_eave(anchor: P, ridge: P, eave: P, from_ridge_m: f64) -> f64 {
    if from_ridge_m < 0.0 { anchor.dist(ridge) + ridge.dist(eave) } else { anchor.dist(eave) }
}

/// Length of rope from the eave's edge down to `g`, bending where it meets the ladder.
fn hang_length(ladder: &LadderLine, eave: P, g: P) -> f64 {
    if g.x <= eave.x + 1e-9 || ladder.top == LadderTop::Eave {
        return eave.dist(g);
    }
    // Plumb from the eave to where the rungs begin, then down the rungs.
    let t = (ladder.foot.x + 0.03 - eave.x) / (ladder.foot.x - ladder.support.x);
    let meet = p(eave.x, ladder.foot.y + (ladder.support.y - ladder.foot.y) * t);
    if meet.y >= eave.y || meet.y <= g.y { eave.dist(g) } else { eave.dist(meet) + meet.dist(g) }
}
