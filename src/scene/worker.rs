//! The worker as one figure: joints and outlines that follow from the nine bodies of a scene.

use super::Limb;
use crate::geometry::body::Part;
use crate::geometry::{Geometry, P, p};

/// Where the joints are, m. The worker faces -x.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bones {
    /// Base of the neck.
    pub neck: P,
    /// Between trunk and pelvis.
    pub waist: P,
    /// Where the thighs hang.
    pub hip: P,
    /// Shoulder, elbow, hand.
    pub arm: [P; 3],
    /// Hip, knee, sole of the left leg.
    pub near_leg: [P; 3],
    /// The same of the right one.
    pub far_leg: [P; 3],
    /// The boots' outlines, near and far, heel first.
    pub boots: [[P; 5]; 2],
    /// The head's middle, m.
    pub head: P,
    /// How far it is turned, rad.
    pub head_turn_rad: f64,
    /// Its radius, m.
    pub head_radius_m: f64,
    /// Front and back of the trunk at the chest, then at the belt.
    pub chest: [P; 2],
    /// Front and back at the belt.
    pub belt: [P; 2],
    /// Round the near thigh, front and back.
    pub leg_loop: [P; 2],
}

impl Bones {
    /// Of the limbs of a scene; `None` where one is missing.
    pub fn of(limbs: &[Limb]) -> Option<Bones> {
        let find = |part: Part| limbs.iter().find(|l| l.part == part);
        let end =
            |l: &Limb, side: f64| l.pose.place(p(0.0, side * (l.shape.half_length_m + l.shape.radius_m)));
        let (torso, pelvis, head) = (find(Part::Torso)?, find(Part::Pelvis)?, find(Part::Head)?);
        let (upper, fore) = (find(Part::UpperArms)?, find(Part::Forearms)?);
        let leg = |thigh: Part, shin: Part| -> Option<([P; 3], [P; 5])> {
            let (t, s) = (find(thigh)?, find(shin)?);
            let sole_m = -(s.shape.half_length_m + s.shape.radius_m);
            let at = |x: f64, up: f64| s.pose.place(p(x, sole_m + up));
            let r = s.shape.radius_m;
            let boot = [
                at(0.9 * r, 2.2 * r),
                at(1.0 * r, 0.0),
                at(-3.4 * r, 0.0),
                at(-3.3 * r, 0.8 * r),
                at(-0.9 * r, 2.2 * r),
            ];
            Some(([end(t, 1.0), end(s, 1.0), s.pose.place(p(0.0, sole_m + 2.3 * r))], boot))
        };
        let (near_leg, near_boot) = leg(Part::ThighLeft, Part::ShinLeft)?;
        let (far_leg, far_boot) = leg(Part::ThighRight, Part::ShinRight)?;
        let across = |l: &Limb, up_share: f64, wide: f64| {
            let y = up_share * l.shape.half_length_m;
            [l.pose.place(p(-wide * l.shape.radius_m, y)), l.pose.place(p(wide * l.shape.radius_m, y))]
        };
        let thigh = find(Part::ThighLeft)?;
        Some(Bones {
            neck: end(torso, 1.0),
            waist: end(torso, -1.0),
            // Its capsule is rounder than long: the thighs say where the joint is.
            hip: near_leg[0],
            arm: [end(upper, 1.0), end(fore, 1.0), end(fore, -1.0)],
            near_leg,
            far_leg,
            boots: [near_boot, far_boot],
            head: head.pose.place(p(0.0, 0.1 * head.shape.half_length_m)),
            head_turn_rad: head.pose.angle_rad,
            head_radius_m: head.shape.radius_m * 1.12,
            chest: across(torso, 0.45, 1.0),
            belt: across(pelvis, 0.3, 1.05),
            leg_loop: across(thigh, 0.75, 1.15),
        })
    }

    /// The near arm as it is drawn: round the eave where it hangs over it.
    pub fn arm_round(&self, g: &Geometry) -> Vec<P> {
        let mut all = vec![self.arm[0]];
        for w in self.arm.windows(2) {
            let over = (1..8).any(|i| g.depth_in_house_m(w[0].lerp(w[1], f64::from(i) / 8.0)) > 0.01);
            if over && w[0].x > g.ridge.x && w[1].x > g.ridge.x {
                all.push(p(g.eave.x + ARM_M, g.eave.y + ARM_M));
                if w[0].y.min(w[1].y) < g.fascia.y && w[0].x.min(w[1].x) < g.eave.x {
                    all.push(p(g.eave.x + ARM_M, g.fascia.y - ARM_M));
                }
            }
            all.push(w[1]);
        }
        all
    }

    /// The same with the arms laid on the house where the engine lets them through it: arms meet the ground
    /// alone there, since they begin against the wall.
    pub fn beside(mut self, g: &Geometry) -> Bones {
        // A worker who lies on the roof has the arms on it, not under the soffit.
        let (d, shoulder) = (g.down_slope, self.arm[0]);
        let above_m = |q: P| (q.y - g.eave.y) * d.x - (q.x - g.eave.x) * d.y;
        if above_m(shoulder) > -ARM_M && shoulder.x < g.eave.x + 0.3 && shoulder.y > g.fascia.y {
            for joint in &mut self.arm[1..] {
                let lift_m = ARM_M - above_m(*joint);
                if lift_m > 0.0 && joint.x < g.eave.x + 0.1 {
                    *joint = p(joint.x - d.y * lift_m, joint.y + d.x * lift_m);
                }
            }
        }
        for joint in &mut self.arm[1..] {
            *joint = out_of_house(g, *joint, ARM_M);
        }
        self
    }
}

/// Half of an arm's thickness, m.
const ARM_M: f64 = 0.05;

/// A point with so much room round it, moved out of wall and roof by the shortest way.
pub(super) fn out_of_house(g: &Geometry, q: P, room_m: f64) -> P {
    let deep_m = g.depth_in_house_m(q) + room_m;
    if deep_m <= 0.0 || q.x < g.ridge.x {
        return q;
    }
    // Square to the slope, to the wall, to the fascia or to the soffit: whichever is nearest.
    let d = g.down_slope;
    let up = p(-d.y, d.x);
    let above_m = (q.x - g.eave.x) * up.x + (q.y - g.eave.y) * up.y;
    let ways = [
        p(q.x + up.x * (room_m - above_m), q.y + up.y * (room_m - above_m)),
        p(room_m, q.y),
        p(g.eave.x + room_m, q.y),
        p(q.x, g.fascia.y - room_m),
    ];
    ways.into_iter()
        .filter(|w| g.depth_in_house_m(*w) <= -0.9 * room_m)
        .min_by(|a, b| a.dist(q).total_cmp(&b.dist(q)))
        .unwrap_or(q)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::physics::simulate;
    use crate::scenario::{Scenario, Stance};
    use crate::scene::build;

    /// No limb comes apart: in every moment of a fall the upper part's lower end is the lower part's upper
    /// end, within a hand's breadth where a joint gives (the engine holds its own within a millimetre).
    #[test]
    fn limbs_hang_together_in_every_moment_of_a_fall() {
        for stance in [Stance::Ladder { standing_height_m: 3.6 }, Stance::Roof { from_eave_m: 1.2 }] {
            let s = Scenario { stance, ..Scenario::default() };
            let set_up = s.set_up().expect("possible");
            let t = simulate(&set_up);
            for q in t.samples.iter().step_by(8) {
                let scene = build(&s, set_up.geometry(), q, None);
                let b = Bones::of(&scene.limbs).expect("nine limbs");
                let lower = |part: Part| {
                    let l = scene.limbs.iter().find(|l| l.part == part).expect("drawn");
                    l.pose.place(p(0.0, -(l.shape.half_length_m + l.shape.radius_m)))
                };
                assert!(b.near_leg[1].dist(lower(Part::ThighLeft)) < 0.01, "{:?}", b.near_leg);
                assert!(b.far_leg[1].dist(lower(Part::ThighRight)) < 0.01);
                assert!(b.far_leg[0].dist(b.hip) < 0.01, "{:?}", b.far_leg);
                assert!(b.arm[1].dist(lower(Part::UpperArms)) < 0.01);
            }
        }
    }
}
