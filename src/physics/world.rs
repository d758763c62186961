//! The rigid bodies. THE ONLY FILE THAT NAMES RAPIER.
//!
//! Builds the house, the ground and the worker (or a single point mass), advances them one step
//! under gravity and one given force at the D-ring, and reports what was struck and how much work
//! the joints and contacts did. Everything outside is `f64`; rapier runs in `f32` with
//! `enhanced-determinism`, so the bits are the same on every platform.
//!
//! Velocities are kept half a step behind positions (leapfrog): each body starts with half a
//! step's gravity taken off, which makes rapier's semi-implicit Euler second-order accurate.

use super::Start;
use super::constants::{
    CONTACT_STABILIZATION, DT_S, LANDING_ITERATIONS, NEAR_ROOF_M, PGS_ITERATIONS, RAIL_RADIUS_M,
    ROUGH_ENERGY_J, SOLVER_ITERATIONS, TOUCH_SPEED_M_S,
};
use super::equipment::{BODY_FRICTION, SLIP_DOWN_ROOF_M_S, SLIP_OFF_LADDER_M_S};
use super::ladder::{
    FOOT_SLIDES_M_S, Footing, SLIDING_SHARE, TIPS_RAD_S, foot_friction, mass_kg as ladder_mass_kg, stand,
};
use super::skin::{Press, presses};
use super::trace::Thing;
use crate::geometry::body::{PARTS, Part, Pose, capsules, dring_on_torso, hinges, standing};
use crate::geometry::{P, SetUp, p};
use crate::scenario::Stance;
use crate::units::G_M_S2;
use rapier2d::prelude::*;

const WORKER_GROUP: Group = Group::GROUP_1;
const ARM_GROUP: Group = Group::GROUP_2;
const LANDING_GROUP: Group = Group::GROUP_3;
const HOUSE_GROUP: Group = Group::GROUP_4;
const LADDER_GROUP: Group = Group::GROUP_5;

/// The ladder while it is in the plane of the fall: at rest until it gives way or is struck.
struct LadderBody {
    handle: RigidBodyHandle,
    mass_kg: f64,
    half_length_m: f64,
    /// Tied or held: never moves.
    tied: bool,
}

/// A contact that carried an impulse in this step.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Touch {
    /// What was touched.
    pub thing: Thing,
    /// With which part.
    pub part: usize,
    /// Approach speed along the normal before the step, m/s.
    pub speed_m_s: f64,
}

/// What one step did.
#[derive(Clone, Debug, Default)]
pub struct Step {
    /// Contacts with an impulse.
    pub touches: Vec<Touch>,
    /// Work done on the bodies by joints and contacts, J: negative when they dissipate.
    pub constraint_work_j: f64,
    /// Kinetic energy half a step before the positions' time, J.
    pub kinetic_before_j: f64,
    /// Kinetic energy half a step after it, J.
    pub kinetic_after_j: f64,
    /// The part of this step's work that was done up to the positions' time, 0 to 1: half of it, unless
    /// this step is longer or shorter than the one before.
    pub before_share: f64,
    /// Energy handed to the roof up to the positions' time, J: stored in flesh, or spent there.
    pub roof_j: f64,
    /// Of that, stored in flesh, J.
    pub flesh_j: f64,
}

/// Bodies, joints and everything they can strike.
pub struct World {
    rapier: PhysicsWorld,
    parts: Vec<RigidBodyHandle>,
    things: Vec<(ColliderHandle, Thing)>,
    dring: Vector,
    half_length_m: Vec<f64>,
    radius_m: Vec<f64>,
    masses_kg: Vec<f64>,
    ladder: Option<LadderBody>,
    near_contact: bool,
    kinetic_j: Option<f64>,
    /// The step that brought the positions here, s, and the one before it.
    last_dt_s: (f64, f64),
    /// Something of the worker presses on the roof, or is about to.
    near_roof: bool,
    /// The worker began on the roof: then a blow against the wall is solved finely too.
    from_roof: bool,
    /// Friction of the body on the roof.
    roof_friction: f64,
    /// The roof's corners, clockwise; empty where there is none.
    roof: Vec<P>,
    /// Energy handed to the roof so far, J: stored in flesh or spent.
    roof_j: f64,
    /// Velocities of the parts a step before theirs, to tell them at the positions' own time.
    earlier: Vec<(Vector, f32)>,
}

fn v(q: P) -> Vector {
    Vector::new(q.x as f32, q.y as f32)
}

fn rot(angle_rad: f64) -> Rotation {
    Rotation::from_cos_sin_unchecked(libm::cos(angle_rad) as f32, libm::sin(angle_rad) as f32)
}

fn groups(memberships: Group, filter: Group) -> InteractionGroups {
    InteractionGroups::new(memberships, filter, InteractionTestMode::And)
}

/// Step and gravity are set at each step.
fn empty() -> PhysicsWorld {
    let mut w = PhysicsWorld::new();
    let ip = &mut w.integration_parameters;
    ip.num_solver_iterations = SOLVER_ITERATIONS;
    ip.num_internal_pgs_iterations = PGS_ITERATIONS;
    ip.warmstart_joints = true;
    ip.contact_recycling = false;
    // 12 m/s moves 12 mm a step, less than half of the thinnest body: nothing can tunnel.
    ip.max_ccd_substeps = 0;
    w
}

/// A slab whose top passes through the foot of the wall and falls away from it.
fn ground(slope_rad: f64) -> ColliderBuilder {
    let slab = ColliderBuilder::cuboid(80.0, 1.0);
    if slope_rad > 0.0 {
        let (sin, cos) = (libm::sin(slope_rad), libm::cos(slope_rad));
        slab.position(rapier2d::math::Pose::from_parts(v(p(-sin, -cos)), rot(-slope_rad)))
    } else {
        slab.translation(v(p(0.0, -1.0)))
    }
}

impl World {
    /// The worker of `s`, at the moment of the slip. With `landing` false the
    /// ground and the obstacle are left out: how far would the fall go if there were room?
    pub fn worker(s: &SetUp, landing: bool, start: Start, dt_s: f64) -> World {
        let g = s.geometry();
        let mut w = World::with_bodies(s, start, dt_s);
        let body = WORKER_GROUP | ARM_GROUP;
        let mut fix = |thing: Thing, collider: Option<ColliderBuilder>| {
            let Some(c) = collider else { return };
            let groups = match thing {
                Thing::Ground | Thing::Obstacle => groups(LANDING_GROUP, body | LADDER_GROUP),
                // The worker meets the roof through `skin`.
                Thing::Roof => groups(HOUSE_GROUP, LADDER_GROUP),
                _ => groups(HOUSE_GROUP, WORKER_GROUP | LADDER_GROUP),
            };
            let h = w.rapier.insert_collider(
                c.friction(BODY_FRICTION as f32)
                    .friction_combine_rule(CoefficientCombineRule::Min)
                    .collision_groups(groups),
                None,
            );
            w.things.push((h, thing));
        };
        if landing {
            fix(Thing::Ground, Some(ground(g.ground_slope_rad)));
            if let Some((l, r, top)) = g.obstacle {
                fix(
                    Thing::Obstacle,
                    Some(
                        ColliderBuilder::cuboid(((r - l) / 2.0) as f32, (top / 2.0) as f32)
                            .translation(v(p((l + r) / 2.0, top / 2.0))),
                    ),
                );
            }
        }
        let deep = -2.0 * g.ridge.x.abs();
        let wall_top = g.fascia.y;
        // Without landing the wall goes on down, so that the worker can hang against it.
        let wall_foot = if landing { 0.0 } else { -60.0 };
        fix(
            Thing::Wall,
            Some(
                ColliderBuilder::cuboid((-deep / 2.0) as f32, ((wall_top - wall_foot) / 2.0) as f32)
                    .translation(v(p(deep / 2.0, (wall_top + wall_foot) / 2.0))),
            ),
        );
        let far_fascia = p(g.far_eave.x, g.fascia.y);
        let roof = [g.ridge, g.eave, g.fascia, far_fascia, g.far_eave];
        fix(Thing::Roof, ColliderBuilder::convex_hull(&roof.map(v)));
        w.roof = roof.to_vec();
        w.stand_ladder(s, landing);
        w
    }

    /// Puts the ladder up, if it is in the plane of the fall: a worker on the roof has climbed off
    /// it, and one that goes over sideways leaves the plane.
    fn stand_ladder(&mut self, s: &SetUp, landing: bool) {
        let g = s.geometry();
        let Some(stand) = stand(s, g).filter(|q| q.footing != Footing::TipsSideways) else { return };
        let angle = g.ladder.angle_rad();
        let (sin, cos) = (libm::sin(angle), libm::cos(angle));
        let length_m = g.ladder.foot.dist(g.ladder.tip);
        // The rails lie on the support and stand on the ground, not in them.
        let up = RAIL_RADIUS_M * (1.0 - cos) / sin;
        let off = p(RAIL_RADIUS_M * sin - up * cos, RAIL_RADIUS_M * cos + up * sin);
        let half_length_m = (length_m / 2.0 - RAIL_RADIUS_M).max(0.1);
        let middle = g.ladder.foot.lerp(g.ladder.tip, 0.5);
        let mass_kg = ladder_mass_kg(g);
        let half_m = length_m / 2.0;
        // What it begins with, where it does not hold.
        let (velocity, turn) = match stand.footing {
            Footing::SlidesOut => {
                let turn = FOOT_SLIDES_M_S / (length_m * sin);
                // Foot out along the ground: the middle follows half as fast, and comes down.
                (p(FOOT_SLIDES_M_S - turn * half_m * sin, -turn * half_m * cos), turn)
            }
            Footing::TipsBack => (p(TIPS_RAD_S * half_m * sin, TIPS_RAD_S * half_m * cos), -TIPS_RAD_S),
            _ => (p(0.0, 0.0), 0.0),
        };
        let moves = matches!(stand.footing, Footing::SlidesOut | Footing::TipsBack);
        let kind = if moves { RigidBodyBuilder::dynamic() } else { RigidBodyBuilder::fixed() };
        let body = kind
            .pose(rapier2d::math::Pose::from_parts(
                v(p(middle.x + off.x, middle.y + off.y)),
                // The capsule's own axis is up; the rails lean to the wall.
                rot(core::f64::consts::FRAC_PI_2 - angle),
            ))
            .linvel(v(velocity))
            .angvel(turn as f32)
            .additional_mass_properties(MassProperties::new(
                Vector::ZERO,
                mass_kg as f32,
                (mass_kg * length_m * length_m / 12.0) as f32,
            ))
            .can_sleep(false);
        let friction = foot_friction(s.weather) * if moves { SLIDING_SHARE } else { 1.0 };
        let collider = ColliderBuilder::capsule_y(half_length_m as f32, RAIL_RADIUS_M as f32)
            .density(0.0)
            .friction(friction.min(BODY_FRICTION) as f32)
            .friction_combine_rule(CoefficientCombineRule::Min)
            .collision_groups(groups(HOUSE_GROUP | LADDER_GROUP, WORKER_GROUP | HOUSE_GROUP | LANDING_GROUP));
        let (handle, collider) = self.rapier.insert(body, collider);
        self.things.push((collider, Thing::Ladder));
        self.ladder = Some(LadderBody { handle, mass_kg, half_length_m: half_m, tied: s.ladder.tied });
        if !landing {
            // With nothing to land on, the ladder still stands on something.
            self.rapier.insert_collider(
                ground(g.ground_slope_rad)
                    .friction(BODY_FRICTION as f32)
                    .friction_combine_rule(CoefficientCombineRule::Min)
                    .collision_groups(groups(LANDING_GROUP, LADDER_GROUP)),
                None,
            );
        }
    }

    /// Foot and tip of the ladder, while it is in the plane.
    pub fn ladder(&self) -> Option<(P, P)> {
        let l = self.ladder.as_ref()?;
        let b = &self.rapier.bodies[l.handle];
        let (t, r) = (b.translation(), b.rotation());
        let (dx, dy) = (-f64::from(r.sin()) * l.half_length_m, f64::from(r.cos()) * l.half_length_m);
        let (x, y) = (f64::from(t.x), f64::from(t.y));
        Some((p(x - dx, y - dy), p(x + dx, y + dy)))
    }

    /// Every body that gravity moves, with its mass.
    fn movers(&self) -> impl Iterator<Item = (RigidBodyHandle, f64)> + '_ {
        let ladder = self.ladder.iter().map(|l| (l.handle, l.mass_kg));
        self.parts.iter().copied().zip(self.masses_kg.iter().copied()).chain(ladder)
    }

    fn with_bodies(s: &SetUp, start: Start, dt_s: f64) -> World {
        let g = s.geometry();
        let mut w = empty();
        let st = s.worker.stature_m;
        let caps = capsules(s.worker.mass_kg, st);
        let pose = standing(g.soles, st, &s.stance, s.house.roof_pitch_rad);
        let slip = match s.stance {
            Stance::Ladder { standing_height_m } => match stand(s, g).map(|q| q.footing) {
                // The rungs go from under the boots.
                Some(Footing::SlidesOut) => p(0.0, 0.0),
                Some(Footing::TipsBack) => {
                    p((start.slip_share * SLIP_OFF_LADDER_M_S).max(TIPS_RAD_S * standing_height_m), 0.0)
                }
                _ => p(start.slip_share * SLIP_OFF_LADDER_M_S, 0.0),
            },
            Stance::Roof { .. } => {
                let speed_m_s = start.slip_share * SLIP_DOWN_ROOF_M_S;
                p(g.down_slope.x * speed_m_s, g.down_slope.y * speed_m_s)
            }
        };
        // Half a step's gravity off: leapfrog.
        let slip = p(slip.x, slip.y + G_M_S2 * dt_s / 2.0);
        let mut parts = Vec::with_capacity(PARTS);
        for (i, part) in Part::ALL.into_iter().enumerate() {
            let c = &caps[i];
            let mine = if part.is_arm() {
                groups(ARM_GROUP, LANDING_GROUP)
            } else {
                groups(WORKER_GROUP, LANDING_GROUP | HOUSE_GROUP)
            };
            let body = RigidBodyBuilder::dynamic()
                .pose(rapier2d::math::Pose::from_parts(v(pose[i].at), rot(pose[i].angle_rad)))
                .linvel(v(slip))
                .additional_mass_properties(MassProperties::new(
                    Vector::ZERO,
                    c.mass_kg as f32,
                    c.inertia_kg_m2 as f32,
                ))
                .can_sleep(false);
            let collider = ColliderBuilder::capsule_y(c.half_length_m as f32, c.radius_m as f32)
                .density(0.0)
                .friction(1.0)
                .collision_groups(mine);
            parts.push(w.insert(body, collider).0);
        }
        for h in hinges(st) {
            let joint = RevoluteJointBuilder::new()
                .local_anchor1(v(h.on_parent))
                .local_anchor2(v(h.on_child))
                .limits(h.limits_rad.map(|a| a as f32))
                .motor_velocity(0.0, h.tone_per_s as f32)
                .contacts_enabled(false);
            w.insert_impulse_joint(parts[h.parent as usize], parts[h.child as usize], joint);
        }
        World {
            rapier: w,
            parts,
            things: Vec::new(),
            dring: {
                let usual = dring_on_torso(st);
                v(p(usual.x, usual.y - start.ring_drop_m))
            },
            half_length_m: caps.iter().map(|c| c.half_length_m).collect(),
            radius_m: caps.iter().map(|c| c.radius_m).collect(),
            masses_kg: caps.iter().map(|c| c.mass_kg).collect(),
            ladder: None,
            near_contact: true,
            kinetic_j: None,
            last_dt_s: (dt_s, dt_s),
            from_roof: matches!(s.stance, Stance::Roof { .. }),
            roof_friction: start.roof_friction,
            near_roof: false,
            roof: Vec::new(),
            roof_j: 0.0,
            earlier: Vec::new(),
        }
    }

    /// A point mass at rest with nothing to strike: the closed forms' worker.
    pub fn point_mass(mass_kg: f64, at: P) -> World {
        let mut w = empty();
        let body = RigidBodyBuilder::dynamic()
            .translation(v(at))
            .linvel(v(p(0.0, G_M_S2 * DT_S / 2.0)))
            .additional_mass_properties(MassProperties::new(Vector::ZERO, mass_kg as f32, 1.0))
            .can_sleep(false);
        let parts = vec![w.insert_body(body)];
        World {
            rapier: w,
            parts,
            things: Vec::new(),
            dring: Vector::ZERO,
            half_length_m: vec![0.0],
            radius_m: vec![0.0],
            masses_kg: vec![mass_kg],
            ladder: None,
            near_contact: false,
            kinetic_j: None,
            last_dt_s: (DT_S, DT_S),
            from_roof: false,
            roof_friction: 0.0,
            near_roof: false,
            roof: Vec::new(),
            roof_j: 0.0,
            earlier: Vec::new(),
        }
    }

    /// Two masses joined by a stiff link, at rest with nothing to strike: the smallest worker whose
    /// parts move against each other. The line pulls at the first; the second hangs `link_m` from
    /// it at `angle_rad` from straight down and has `inertia_kg_m2` about its own centre.
    pub fn chain(masses_kg: [f64; 2], link_m: f64, angle_rad: f64, inertia_kg_m2: f64, at: P) -> World {
        let mut w = World::point_mass(masses_kg[0], at);
        let second = p(at.x + link_m * libm::sin(angle_rad), at.y - link_m * libm::cos(angle_rad));
        let body = RigidBodyBuilder::dynamic()
            .pose(rapier2d::math::Pose::from_parts(v(second), rot(angle_rad)))
            .linvel(v(p(0.0, G_M_S2 * DT_S / 2.0)))
            .additional_mass_properties(MassProperties::new(
                Vector::ZERO,
                masses_kg[1] as f32,
                inertia_kg_m2 as f32,
            ))
            .can_sleep(false);
        let first = w.parts[0];
        let child = w.rapier.insert_body(body);
        let joint = RevoluteJointBuilder::new()
            .local_anchor1(Vector::ZERO)
            .local_anchor2(v(p(0.0, link_m)))
            .contacts_enabled(false);
        w.rapier.insert_impulse_joint(first, child, joint);
        w.parts.push(child);
        w.half_length_m.push(0.0);
        w.radius_m.push(0.0);
        w.masses_kg.push(masses_kg[1]);
        w
    }

    /// Throws every body sideways at `x_m_s`, for pendulum checks.
    pub fn push(&mut self, x_m_s: f64) {
        self.kinetic_j = None;
        for &h in &self.parts {
            let b = &mut self.rapier.bodies[h];
            let lv = b.linvel();
            b.set_linvel(Vector::new(lv.x + x_m_s as f32, lv.y), true);
        }
    }

    /// The D-ring, m.
    pub fn dring(&self) -> P {
        let q = self.rapier.bodies[self.parts[0]].position().transform_point(self.dring);
        p(f64::from(q.x), f64::from(q.y))
    }

    /// Total mass, kg.
    pub fn mass_kg(&self) -> f64 {
        self.masses_kg.iter().sum()
    }

    /// Linear momentum half a step behind the positions, kg m/s.
    pub fn momentum(&self) -> P {
        self.parts.iter().zip(&self.masses_kg).fold(p(0.0, 0.0), |a, (&h, m)| {
            let lv = self.rapier.bodies[h].linvel();
            p(a.x + m * f64::from(lv.x), a.y + m * f64::from(lv.y))
        })
    }

    /// Potential energy against y = 0, J.
    pub fn potential_j(&self) -> f64 {
        self.movers().map(|(h, m)| m * G_M_S2 * f64::from(self.rapier.bodies[h].translation().y)).sum()
    }

    fn compute_kinetic_j(&self) -> f64 {
        self.movers()
            .map(|(h, m)| {
                let b = &self.rapier.bodies[h];
                let (lv, w) = (b.linvel(), f64::from(b.angvel()));
                let i = f64::from(b.mass_properties().local_mprops.principal_inertia());
                let (x, y) = (f64::from(lv.x), f64::from(lv.y));
                0.5 * m * (x * x + y * y) + 0.5 * i * w * w
            })
            .sum()
    }

    /// Poses of all parts.
    pub fn poses(&self) -> Vec<Pose> {
        self.parts
            .iter()
            .map(|&h| {
                let b = &self.rapier.bodies[h];
                let (t, r) = (b.translation(), b.rotation());
                Pose {
                    at: p(f64::from(t.x), f64::from(t.y)),
                    angle_rad: libm::atan2(f64::from(r.sin()), f64::from(r.cos())),
                }
            })
            .collect()
    }

    /// Each part's lower end: centre x, lowest y and radius, m.
    pub fn low_points(&self) -> impl Iterator<Item = (P, f64)> + '_ {
        self.parts.iter().enumerate().map(|(i, &h)| {
            let b = &self.rapier.bodies[h];
            let (t, r) = (b.translation(), b.rotation());
            let l = self.half_length_m[i];
            let (dx, dy) = (-f64::from(r.sin()) * l, f64::from(r.cos()) * l);
            let s = if dy > 0.0 { -1.0 } else { 1.0 };
            let radius = self.radius_m[i];
            (p(f64::from(t.x) + s * dx, f64::from(t.y) + s * dy - radius), radius)
        })
    }

    /// Largest distance between the two sides of any joint, m.
    pub fn joint_gap_m(&self) -> f64 {
        self.rapier.impulse_joints().fold(0.0, |gap: f64, (_, j)| {
            let a = self.rapier.bodies[j.body1()].position().transform_point(j.data.local_anchor1());
            let b = self.rapier.bodies[j.body2()].position().transform_point(j.data.local_anchor2());
            gap.max(f64::from((a - b).length()))
        })
    }

    /// How finely joints and contacts are solved in the next step: coarsely in free flight, more
    /// finely near a contact, and finest when about to land, where a blow goes through the whole
    /// chain of bodies.
    pub fn set_care(&mut self, landing: bool) {
        let (pgs, stabilization) = match (landing, self.near_contact) {
            (true, _) => (LANDING_ITERATIONS, LANDING_ITERATIONS),
            (false, true) => (PGS_ITERATIONS, CONTACT_STABILIZATION),
            (false, false) => (PGS_ITERATIONS, 1),
        };
        let ip = &mut self.rapier.integration_parameters;
        ip.num_internal_pgs_iterations = pgs;
        ip.num_internal_stabilization_iterations = stabilization;
    }

    /// The step that brought the positions here, s.
    pub fn last_dt_s(&self) -> f64 {
        self.last_dt_s.0
    }

    /// Whether anything touches anything.
    pub fn is_in_contact(&self) -> bool {
        self.near_contact
    }

    /// Whether something of the worker presses on the roof, or is about to.
    pub fn is_near_roof(&self) -> bool {
        self.near_roof
    }

    /// Whether the next step is to be made in parts: landing on the roof, with energy in motion.
    pub fn is_rough(&self) -> bool {
        (self.near_roof || (self.from_roof && self.near_contact))
            && self.kinetic_j.is_none_or(|j| j > ROUGH_ENERGY_J)
    }

    /// Advances by one step of `dt_s` with the force `pull_n` (N) at the D-ring.
    ///
    /// Where the step differs from the last one, what acts does so from the middle of that one to the
    /// middle of this (leapfrog with a variable step).
    pub fn step(&mut self, pull_n: P, dt_s: f64) -> Step {
        let kick_s = 0.5 * (self.last_dt_s.0 + dt_s);
        let before_share = 0.5 * self.last_dt_s.0 / kick_s;
        let scale = kick_s / dt_s;
        self.rapier.integration_parameters.dt = dt_s as f32;
        self.rapier.gravity = Vector::new(0.0, -(G_M_S2 * scale) as f32);
        let at = self.rapier.bodies[self.parts[0]].position().transform_point(self.dring);
        // The worker's parts, then the ladder.
        let before: Vec<(Vector, f32)> = self
            .movers()
            .map(|(h, _)| (self.rapier.bodies[h].linvel(), self.rapier.bodies[h].angvel()))
            .collect();
        // Nothing changes a velocity between two steps.
        let kinetic_before_j = self.kinetic_j.unwrap_or_else(|| self.compute_kinetic_j());
        let centres: Vec<Vector> = self.parts.iter().map(|&h| self.rapier.bodies[h].translation()).collect();
        for &h in &self.parts {
            let b = &mut self.rapier.bodies[h];
            b.reset_forces(false);
            b.reset_torques(false);
        }
        let (presses, mut touches) = self.press(kick_s);
        let scaled = |f: P| v(p(f.x * scale, f.y * scale));
        for (i, press, f) in &presses {
            self.rapier.bodies[self.parts[*i]].add_force_at_point(scaled(*f), v(press.at), true);
        }
        let torso = &mut self.rapier.bodies[self.parts[0]];
        if pull_n.x != 0.0 || pull_n.y != 0.0 {
            torso.add_force_at_point(scaled(pull_n), at, true);
        }
        self.rapier.step();
        self.earlier.clone_from(&before);
        self.last_dt_s = (dt_s, self.last_dt_s.0);
        let kinetic_after_j = self.compute_kinetic_j();
        self.kinetic_j = Some(kinetic_after_j);

        // Work of gravity and the line over the step, by mean velocities: exact for impulses.
        let (mut applied_j, mut taken_j) = (0.0, 0.0);
        let work_j =
            |f: P, v0: (f64, f64), v1: (f64, f64)| kick_s * (f.x * (v0.0 + v1.0) + f.y * (v0.1 + v1.1)) / 2.0;
        for (i, (h, mass_kg)) in self.movers().enumerate() {
            let (lv0, w0) = before[i];
            let (lv1, w1) = (self.rapier.bodies[h].linvel(), self.rapier.bodies[h].angvel());
            let (a, b) = ((f64::from(lv0.x), f64::from(lv0.y)), (f64::from(lv1.x), f64::from(lv1.y)));
            applied_j += work_j(p(0.0, -mass_kg * G_M_S2), a, b);
            let at_point_j = |f: P, r: (f64, f64)| {
                let spin = |lv: (f64, f64), w: f32| (lv.0 - f64::from(w) * r.1, lv.1 + f64::from(w) * r.0);
                work_j(f, spin(a, w0), spin(b, w1))
            };
            if i == 0 {
                applied_j +=
                    at_point_j(pull_n, (f64::from(at.x - centres[0].x), f64::from(at.y - centres[0].y)));
            }
            for (_, press, f) in presses.iter().filter(|q| q.0 == i) {
                let c = centres[i];
                // Through single precision, as the force goes in.
                let q = v(press.at);
                taken_j -= at_point_j(*f, (f64::from(q.x - c.x), f64::from(q.y - c.y)));
            }
        }
        applied_j -= taken_j;
        let roof_j = self.roof_j + before_share * taken_j;
        self.roof_j += taken_j;
        self.near_contact = self.rapier.contact_pairs().any(ContactPair::has_any_active_contact);
        if self.near_contact {
            touches.extend(self.touches(&before));
        }
        self.near_contact |= !presses.is_empty();
        // A ladder that nobody tied stands until it is struck.
        if let Some(l) = self.ladder.as_ref().filter(|l| !l.tied)
            && touches.iter().any(|t| t.thing == Thing::Ladder && t.speed_m_s >= TOUCH_SPEED_M_S)
            && self.rapier.bodies[l.handle].is_fixed()
        {
            let handle = l.handle;
            self.rapier.bodies[handle].set_body_type(RigidBodyType::Dynamic, true);
        }
        Step {
            touches,
            constraint_work_j: kinetic_after_j - kinetic_before_j - applied_j,
            kinetic_before_j,
            kinetic_after_j,
            before_share,
            roof_j,
            flesh_j: presses.iter().map(|q| q.1.elastic_j()).sum(),
        }
    }

    /// Where the worker presses on the roof, with which force, and how fast it came.
    fn press(&mut self, kick_s: f64) -> (Vec<(usize, Press, P)>, Vec<Touch>) {
        let back = self.last_dt_s.0 / (self.last_dt_s.0 + self.last_dt_s.1);
        let (mut out, mut touches, mut near_roof) = (Vec::new(), Vec::new(), false);
        // The eave's side of the roof: nobody who hangs below or beside it is near.
        let Some((right, low)) = self.roof.get(2).map(|fascia| (fascia.x, fascia.y)) else {
            return (out, touches);
        };
        for (i, part) in Part::ALL.into_iter().enumerate().take(self.parts.len()) {
            let (b, l, radius_m) =
                (&self.rapier.bodies[self.parts[i]], self.half_length_m[i], self.radius_m[i]);
            let (t, r) = (b.translation(), b.rotation());
            let c = p(f64::from(t.x), f64::from(t.y));
            let far_m = l + radius_m + NEAR_ROOF_M;
            if part.is_arm() || c.y < low - far_m || c.x > right + far_m {
                continue;
            }
            let (dx, dy) = (-f64::from(r.sin()) * l, f64::from(r.cos()) * l);
            let (lv, w) = (b.linvel(), b.angvel());
            let (lv, w) = self
                .earlier
                .get(i)
                .map_or((lv, w), |q| (lv + (lv - q.0) * back as f32, w + (w - q.1) * back as f32));
            let w = f64::from(w);
            let inertia = f64::from(b.mass_properties().local_mprops.principal_inertia());
            let mut fastest: Option<f64> = None;
            let (a, b) = (p(c.x + dx, c.y + dy), p(c.x - dx, c.y - dy));
            for press in presses(&self.roof, a, b, radius_m, NEAR_ROOF_M) {
                near_roof = true;
                if press.depth_m <= 0.0 {
                    continue;
                }
                let (rx, ry) = (press.at.x - c.x, press.at.y - c.y);
                let speed = p(f64::from(lv.x) - w * ry, f64::from(lv.y) + w * rx);
                let mass_kg = 1.0 / (1.0 / self.masses_kg[i] + (rx * rx + ry * ry) / inertia);
                let f = press.force_n(speed, self.roof_friction, mass_kg, kick_s);
                let into_m_s = -(speed.x * press.out.x + speed.y * press.out.y);
                fastest = Some(fastest.unwrap_or(0.0).max(into_m_s));
                out.push((i, press, f));
            }
            if let Some(speed_m_s) = fastest {
                touches.push(Touch { thing: Thing::Roof, part: i, speed_m_s });
            }
        }
        self.near_roof = near_roof;
        (out, touches)
    }

    fn touches(&self, before: &[(Vector, f32)]) -> Vec<Touch> {
        let mut out = Vec::new();
        if self.things.is_empty() {
            return out;
        }
        for pair in self.rapier.contact_pairs() {
            if !pair.has_any_active_contact() {
                continue;
            }
            let thing_of = |h| self.things.iter().find(|(c, _)| *c == h).map(|(_, t)| *t);
            let (thing, first) = match (thing_of(pair.collider1), thing_of(pair.collider2)) {
                (Some(t), None) => (t, false),
                (None, Some(t)) => (t, true),
                _ => continue,
            };
            let body_collider = if first { pair.collider1 } else { pair.collider2 };
            let Some(c) = self.rapier.colliders.get(body_collider) else { continue };
            let Some(part) = c.parent().and_then(|h| self.parts.iter().position(|q| *q == h)) else {
                continue;
            };
            let mut speed: Option<f64> = None;
            for m in pair.manifolds() {
                for contact in &m.points {
                    if contact.data.impulse <= 0.0 {
                        continue;
                    }
                    let local = if first { contact.local_p1 } else { contact.local_p2 };
                    let at = c.position().transform_point(local);
                    let r = at - self.rapier.bodies[self.parts[part]].translation();
                    let (lv, w) = before[part];
                    let mut vel = Vector::new(lv.x - w * r.y, lv.y + w * r.x);
                    if let (Thing::Ladder, Some(l), Some((lv, w))) =
                        (thing, &self.ladder, before.get(self.parts.len()))
                    {
                        let r = at - self.rapier.bodies[l.handle].translation();
                        vel -= Vector::new(lv.x - w * r.y, lv.y + w * r.x);
                    }
                    // The normal points from collider 1 to collider 2.
                    let toward = vel.dot(m.data.normal) * if first { 1.0 } else { -1.0 };
                    speed = Some(speed.unwrap_or(0.0).max(f64::from(toward)));
                }
            }
            if let Some(speed_m_s) = speed {
                out.push(Touch { thing, part, speed_m_s });
            }
        }
        // The narrow phase's order is its own; ours is fixed.
        out.sort_by_key(|a| (a.thing, a.part));
        out
    }
}
