//! The worker as nine capsules: lengths, masses, joints and the posture before the slip.
//!
//! Segment masses and lengths follow de Leva, 'Adjustments to Zatsiorsky-Seluyanov's segment
//! inertia parameters', J. Biomechanics 29 (1996) 1223-1230, male subjects, as shares of body mass
//! and stature (masses of trunk, thigh and head read; lengths and the smaller masses from memory).
//! Tools and clothes are spread over all segments. The worker faces the wall (towards -x); both
//! arms are one body. Left out: feet as bodies of their own, muscles that act, the neck's two
//! joints, anything across the section.

use super::house::{DRING_BACK_SHARE, DRING_SHARE};
use super::plane::{P, p};
use crate::scenario::Stance;
use serde::{Deserialize, Serialize};

/// Number of bodies.
pub const PARTS: usize = 9;

/// The nine bodies, in the order of every pose array.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[repr(usize)]
pub enum Part {
    /// Chest and upper belly; carries the D-ring.
    Torso = 0,
    /// Pelvis.
    Pelvis,
    /// Head and neck.
    Head,
    /// Both upper arms.
    UpperArms,
    /// Both forearms and hands.
    Forearms,
    /// Left thigh.
    ThighLeft,
    /// Left shin and foot.
    ShinLeft,
    /// Right thigh.
    ThighRight,
    /// Right shin and foot.
    ShinRight,
}

impl Part {
    /// All parts in order.
    pub const ALL: [Part; PARTS] = [
        Part::Torso,
        Part::Pelvis,
        Part::Head,
        Part::UpperArms,
        Part::Forearms,
        Part::ThighLeft,
        Part::ShinLeft,
        Part::ThighRight,
        Part::ShinRight,
    ];

    /// Whether it is a shin with its foot.
    pub fn is_shin(self) -> bool {
        matches!(self, Part::ShinLeft | Part::ShinRight)
    }

    /// Whether it whips about its joint like a flail for want of muscles: against house and ladder that is
    /// a kick, and says nothing of the blow that the body takes.
    pub fn whips(self) -> bool {
        self.is_shin() || self == Part::Head
    }

    /// Whether it is an arm: arms start against the house and collide only with what is below.
    pub fn is_arm(self) -> bool {
        matches!(self, Part::UpperArms | Part::Forearms)
    }
}

/// Share of body mass, length as share of stature, radius as share of stature.
struct Segment {
    mass: f64,
    length: f64,
    radius: f64,
}

const fn seg(mass: f64, length: f64, radius: f64) -> Segment {
    Segment { mass, length, radius }
}

/// In the order of [`Part`]. Masses sum to 1; heights sum to the stature.
const SEGMENTS: [Segment; PARTS] = [
    seg(0.3229, 0.2628, 0.066),
    seg(0.1117, 0.0837, 0.066),
    seg(0.0694, 0.1395, 0.052),
    seg(0.0542, 0.1618, 0.026),
    seg(0.0446, 0.2040, 0.022),
    seg(0.1416, 0.2425, 0.042),
    seg(0.0570, 0.2715, 0.029),
    seg(0.1416, 0.2425, 0.042),
    seg(0.0570, 0.2715, 0.029),
];

/// A capsule of the worker.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Capsule {
    /// Mass, kg.
    pub mass_kg: f64,
    /// Moment of inertia about its centre, kg m².
    pub inertia_kg_m2: f64,
    /// Half the distance between its end centres, m.
    pub half_length_m: f64,
    /// Radius, m.
    pub radius_m: f64,
}

/// A hinge: which two parts, where on each (local, m), its range and its damping.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hinge {
    /// The part nearer the torso.
    pub parent: Part,
    /// The other.
    pub child: Part,
    /// On the parent.
    pub on_parent: P,
    /// On the child.
    pub on_child: P,
    /// Least and most angle of child against parent, rad, counter-clockwise positive. The worker
    /// faces -x, so a knee bends to positive angles, hips, elbows and neck to negative ones.
    pub limits_rad: [f64; 2],
    /// Rate at which muscle tone damps the joint's turning, 1/s (assumed).
    pub tone_per_s: f64,
}

/// Position and angle of a body.
#[derive(Clone, Copy, Debug, PartialEq, Default, Serialize, Deserialize)]
pub struct Pose {
    /// Centre, m.
    pub at: P,
    /// Counter-clockwise, rad.
    pub angle_rad: f64,
}

impl Pose {
    /// World place of a local point.
    pub fn place(&self, local: P) -> P {
        let (s, c) = (libm::sin(self.angle_rad), libm::cos(self.angle_rad));
        p(self.at.x + c * local.x - s * local.y, self.at.y + s * local.x + c * local.y)
    }
}

/// The capsules for a mass and a stature.
pub fn capsules(mass_kg: f64, stature_m: f64) -> [Capsule; PARTS] {
    core::array::from_fn(|i| {
        let s = &SEGMENTS[i];
        let (len, r, m) = (s.length * stature_m, s.radius * stature_m, s.mass * mass_kg);
        Capsule {
            mass_kg: m,
            // A cylinder of the same length and radius.
            inertia_kg_m2: m * (len * len / 12.0 + r * r / 4.0),
            half_length_m: (len / 2.0 - r).max(0.02),
            radius_m: r,
        }
    })
}

fn half(part: Part, stature_m: f64) -> f64 {
    SEGMENTS[part as usize].length * stature_m / 2.0
}

/// Height of the hip over the soles as a share of stature.
const HIP_SHARE: f64 = 0.2715 + 0.2425;

/// The D-ring on the torso, local, m.
pub fn dring_on_torso(stature_m: f64) -> P {
    let torso_centre = (HIP_SHARE + 0.0837 + 0.2628 / 2.0) * stature_m;
    p(DRING_BACK_SHARE * stature_m, DRING_SHARE * stature_m - torso_centre)
}

/// The eight hinges for a stature.
pub fn hinges(stature_m: f64) -> [Hinge; PARTS - 1] {
    use Part::*;
    let end = |part, k: f64| p(0.0, k * half(part, stature_m));
    let h = |parent, child, on_parent, limits_deg: [f64; 2], tone_per_s| Hinge {
        parent,
        child,
        on_parent,
        // Arms and legs hang from their upper end; pelvis too; the head stands on its lower end.
        on_child: end(child, if child == Head { -1.0 } else { 1.0 }),
        limits_rad: limits_deg.map(f64::to_radians),
        tone_per_s,
    };
    [
        h(Torso, Pelvis, end(Torso, -1.0), [-15.0, 45.0], 14.0),
        h(Torso, Head, end(Torso, 1.0), [-45.0, 35.0], 14.0),
        h(Torso, UpperArms, p(0.0, half(Torso, stature_m) - 0.04 * stature_m), [-175.0, 50.0], 6.0),
        h(UpperArms, Forearms, end(UpperArms, -1.0), [-145.0, 0.0], 6.0),
        h(Pelvis, ThighLeft, end(Pelvis, -1.0), [-115.0, 15.0], 8.0),
        h(ThighLeft, ShinLeft, end(ThighLeft, -1.0), [0.0, 135.0], 8.0),
        h(Pelvis, ThighRight, end(Pelvis, -1.0), [-115.0, 15.0], 8.0),
        h(ThighRight, ShinRight, end(ThighRight, -1.0), [0.0, 135.0], 8.0),
    ]
}

/// How far before the left foot the right one stands on a ladder, and how much higher, as shares of stature.
const LADDER_STEP_SHARE: f64 = 0.045;
const LADDER_STEP_UP_SHARE: f64 = 0.005;
/// How far the right foot stands before the left on a roof, as a share of stature.
const STEP_SHARE: f64 = 0.085;

/// Angles of thigh and shin, degrees, that bring the round end of a foot to a place `forward` and `up`
/// from where it is on a straight leg (shares of stature), the knee in front.
fn bent_leg_deg(forward: f64, up: f64) -> (f64, f64) {
    let (thigh, shin) = (SEGMENTS[5].length, SEGMENTS[6].length - SEGMENTS[6].radius);
    let (x, y) = (forward, thigh + shin - up);
    let d = libm::sqrt(x * x + y * y).clamp(1e-6, thigh + shin - 1e-6);
    let corner = |a: f64, b: f64, opposite: f64| {
        libm::acos(((a * a + b * b - opposite * opposite) / (2.0 * a * b)).clamp(-1.0, 1.0))
    };
    // From straight down to the foot, forward is negative; the thigh stands further forward.
    let to_foot = -libm::atan2(x, y);
    let at_hip = corner(thigh, d, shin);
    let at_knee = corner(thigh, shin, d);
    let thigh_rad = to_foot - at_hip;
    (thigh_rad.to_degrees(), (thigh_rad + core::f64::consts::PI - at_knee).to_degrees())
}

/// The posture before the slip: standing at `soles`, arms out to the work; on a roof of `pitch_rad`
/// both feet on the slope, the right one higher.
pub fn standing(soles: P, stature_m: f64, stance: &Stance, pitch_rad: f64) -> [Pose; PARTS] {
    // Angles of each part in the world, degrees. One knee a little bent; arms reach to the wall
    // from a ladder, hang forward on a roof.
    let arms = match stance {
        Stance::Ladder { .. } => (-75.0, -105.0),
        Stance::Roof { .. } => (-35.0, -65.0),
    };
    let deg = |d: f64| d.to_radians();
    let mut pose = [Pose::default(); PARTS];
    let mut put = |part: Part, top: P, angle_deg: f64| -> P {
        let (a, l) = (deg(angle_deg), half(part, stature_m));
        let down = p(libm::sin(a), -libm::cos(a));
        pose[part as usize] = Pose { at: p(top.x + down.x * l, top.y + down.y * l), angle_rad: a };
        p(top.x + 2.0 * down.x * l, top.y + 2.0 * down.y * l)
    };
    let hip = p(soles.x, soles.y + HIP_SHARE * stature_m);
    let waist = p(hip.x, hip.y + SEGMENTS[1].length * stature_m);
    let neck = p(hip.x, waist.y + SEGMENTS[0].length * stature_m);
    put(Part::Pelvis, waist, 0.0);
    put(Part::Torso, neck, 0.0);
    put(Part::Head, p(neck.x, neck.y + SEGMENTS[2].length * stature_m), 0.0);
    let elbow = put(Part::UpperArms, p(neck.x, neck.y - 0.04 * stature_m), arms.0);
    put(Part::Forearms, elbow, arms.1);
    let knee = put(Part::ThighLeft, hip, 0.0);
    put(Part::ShinLeft, knee, 0.0);
    let (thigh, shin) = match stance {
        // On the next rung, knee nearly straight, so that neither knee nor shin is in the rails.
        Stance::Ladder { .. } => bent_leg_deg(LADDER_STEP_SHARE, LADDER_STEP_UP_SHARE),
        Stance::Roof { .. } => {
            // On a steep roof a shorter step, or the knee would stand in the slope.
            let rise = libm::tan(pitch_rad);
            let step = if rise > 1.0 { STEP_SHARE / rise } else { STEP_SHARE };
            bent_leg_deg(step, step * rise)
        }
    };
    let knee = put(Part::ThighRight, hip, thigh);
    put(Part::ShinRight, knee, shin);
    pose
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn masses_sum_to_the_whole_and_lengths_to_the_stature() {
        let total: f64 = SEGMENTS.iter().map(|s| s.mass).sum();
        assert!((total - 1.0).abs() < 1e-9, "{total}");
        // de Leva 1996: trunk 0.4346 of the mass.
        assert!((SEGMENTS[0].mass + SEGMENTS[1].mass - 0.4346).abs() < 1e-9);
        let tall: f64 = [0, 1, 2, 5, 6].iter().map(|&i| SEGMENTS[i].length).sum();
        assert!((tall - 1.0).abs() < 1e-9, "{tall}");
    }

    #[test]
    fn the_standing_posture_closes_every_hinge_within_its_limits() {
        for stance in [Stance::Ladder { standing_height_m: 2.0 }, Stance::Roof { from_eave_m: 1.0 }] {
            let pose = standing(p(1.0, 2.0), 1.8, &stance, 0.46);
            for h in hinges(1.8) {
                let (a, b) = (pose[h.parent as usize], pose[h.child as usize]);
                assert!(a.place(h.on_parent).dist(b.place(h.on_child)) < 1e-9, "{h:?}");
                let bend = b.angle_rad - a.angle_rad;
                assert!(bend >= h.limits_rad[0] - 1e-9 && bend <= h.limits_rad[1] + 1e-9, "{h:?}");
            }
            let foot = |part: Part, down_m: f64| pose[part as usize].place(p(0.0, -down_m));
            if let Stance::Roof { .. } = stance {
                // Both feet's round ends on one line, as steep as the roof.
                let down_m = half(Part::ShinLeft, 1.8) - SEGMENTS[6].radius * 1.8;
                let (l, r) = (foot(Part::ShinLeft, down_m), foot(Part::ShinRight, down_m));
                assert!(((r.y - l.y) / (l.x - r.x) - 0.46_f64.tan()).abs() < 1e-9, "{l:?} {r:?}");
            }
            let d = pose[0].place(dring_on_torso(1.8));
            assert!((d.y - 2.0 - DRING_SHARE * 1.8).abs() < 1e-9);
        }
    }
}
