//! The worker's bodies, the ladder, and everything that they can strike.
//!
//! Builds the house, the ground and the worker (or a single point mass), advances them one step
//! under gravity and one given force at the D-ring, and reports what was struck and where the energy went.
//! Bodies and hinges are `bodies`; whatever presses on whatever does so through `skin`.
//!
//! Velocities are kept half a step behind positions (leapfrog): each body starts with half a
//! step's gravity taken off.

use super::Start;
use super::bodies::{Bodies, Body, Hinge, Motion};
use super::constants::{
    DT_S, FOOT_STICK_M_S, LANDING_STIFF_RATIO, LIMIT_DAMPING_RAD_S, LIMIT_NM_PER_RAD, NEAR_M, RAIL_RADIUS_M,
    ROUGH_ENERGY_J, SKIN_STICK_M_S, TOUCH_SPEED_M_S,
};
use super::equipment::{BODY_FRICTION, SLIP_DOWN_ROOF_M_S, SLIP_OFF_LADDER_M_S};
use super::ladder::{
    FOOT_SLIDES_M_S, Footing, SLIDING_SHARE, TIPS_RAD_S, foot_friction, mass_kg as ladder_mass_kg, stand,
};
use super::skin::Solid;
use super::trace::Thing;
use crate::geometry::body::{self, PARTS, Part, Pose, capsules, dring_on_torso, standing};
use crate::geometry::{P, SetUp, p};
use crate::scenario::Stance;
use crate::units::G_M_S2;

/// The ladder while it is in the plane of the fall: at rest until it gives way or is struck.
struct Ladder {
    body: Body,
    half_length_m: f64,
    friction: f64,
    /// Tied or held: never moves.
    tied: bool,
    moves: bool,
    /// The rails as they are now.
    rails: Solid,
    /// Foot and tip as the drawing has them, on the body, m.
    drawn: (P, P),
}

/// How far the rails reach towards the house, as far as bodies meet them, m: a little more than they are
/// drawn, so that a limb that is pressed hard against them does not come out behind.
const RAILS_BEHIND_M: f64 = 0.06;

impl Ladder {
    /// The rails' two sides as a solid, corners clockwise. The outer side is the right one.
    fn solid(&self) -> Solid {
        let h = self.half_length_m;
        let corner = |x: f64, y: f64| self.body.place(p(x, y));
        Solid::new(&[
            corner(-RAILS_BEHIND_M, h),
            corner(RAIL_RADIUS_M, h),
            corner(RAIL_RADIUS_M, -h),
            corner(-RAILS_BEHIND_M, -h),
        ])
    }
}

/// What the bodies can strike.
struct Fixed {
    thing: Thing,
    solid: Solid,
    friction: f64,
    /// Arms meet it too: they start against the house, so they meet only what is below.
    arms: bool,
    /// Only the ladder meets it.
    ladder_alone: bool,
}

impl Fixed {
    fn against(&self, friction: f64) -> Against<'_> {
        let below = matches!(self.thing, Thing::Ground | Thing::Obstacle);
        Against {
            solid: &self.solid,
            friction,
            stick_m_s: SKIN_STICK_M_S,
            stiff_ratio: if below { LANDING_STIFF_RATIO } else { 1.0 },
        }
    }
}

/// What a limb leans on.
struct Against<'a> {
    solid: &'a Solid,
    friction: f64,
    /// Slip under which friction fades towards rest, m/s.
    stick_m_s: f64,
    /// Stiffness as a multiple of flesh's.
    stiff_ratio: f64,
}

/// A body that is leant on, how it moves, and whether it does.
struct Other<'a> {
    body: &'a mut Body,
    moving: Motion,
    gives: bool,
}

/// A contact in this step.
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
    /// Places that were pressed.
    pub touches: Vec<Touch>,
    /// Kinetic energy half a step before the positions' time, J.
    pub kinetic_before_j: f64,
    /// Kinetic energy half a step after it, J.
    pub kinetic_after_j: f64,
    /// The part of this step's work that was done up to the positions' time, 0 to 1: half of it, unless
    /// this step is longer or shorter than the one before.
    pub before_share: f64,
    /// Energy taken by flesh, friction, muscles and the ends of the joints' ranges up to the positions'
    /// time, J: stored or spent.
    pub taken_j: f64,
    /// Of that, taken by springs, J ...
    pub sprung_j: f64,
    /// ... and what these store by how far they are pressed, J: the same, but for what was stored at the start.
    pub stored_j: f64,
}

/// Bodies, hinges and everything they can strike.
pub struct World {
    bodies: Bodies,
    house: Vec<Fixed>,
    /// The D-ring on the first body, m.
    dring: P,
    half_length_m: Vec<f64>,
    radius_m: Vec<f64>,
    ladder: Option<Ladder>,
    /// The step that brought the positions here, s, and the one before it.
    last_dt_s: (f64, f64),
    /// Something presses on something, or is about to.
    near_contact: bool,
    /// Something of the worker presses on the roof, or is about to.
    near_roof: bool,
    /// The worker began on the roof: then a blow against the wall is solved finely too.
    from_roof: bool,
    kinetic_j: Option<f64>,
    /// Energy taken so far, J, and the part of springs.
    taken_j: f64,
    sprung_j: f64,
    /// Loads from skin, muscles and limits in this step with their springs' part, and motions before it: kept to
    /// save the room.
    soft: Vec<((P, f64), (P, f64))>,
    before: Vec<Motion>,
}

/// The house and what lies below: what a worker can strike.
fn house(s: &SetUp, landing: bool, roof_friction: f64) -> Vec<Fixed> {
    let g = s.geometry();
    let mut all = Vec::new();
    let mut put = |thing: Thing, corners: &[P]| {
        let below = matches!(thing, Thing::Ground | Thing::Obstacle);
        all.push(Fixed {
            thing,
            solid: Solid::new(corners),
            friction: if thing == Thing::Roof { roof_friction } else { BODY_FRICTION },
            arms: below,
            // With nothing to land on, the ladder still stands on something.
            ladder_alone: below && !landing,
        });
    };
    // The ground's top passes through the foot of the wall and falls away from it.
    let (sin, cos) = (libm::sin(g.ground_slope_rad), libm::cos(g.ground_slope_rad));
    let on_ground = |along: f64, down: f64| p(along * cos - down * sin, -along * sin - down * cos);
    put(
        Thing::Ground,
        &[on_ground(-80.0, 0.0), on_ground(80.0, 0.0), on_ground(80.0, 2.0), on_ground(-80.0, 2.0)],
    );
    if let Some((l, r, top)) = g.obstacle.filter(|_| landing) {
        put(Thing::Obstacle, &[p(l, top), p(r, top), p(r, 0.0), p(l, 0.0)]);
    }
    let deep = -2.0 * g.ridge.x.abs();
    let wall_top = g.fascia.y;
    // Without landing the wall goes on down, so that the worker can hang against it.
    let wall_foot = if landing { 0.0 } else { -60.0 };
    put(Thing::Wall, &[p(deep, wall_top), p(0.0, wall_top), p(0.0, wall_foot), p(deep, wall_foot)]);
    let far_fascia = p(g.far_eave.x, g.fascia.y);
    put(Thing::Roof, &[g.ridge, g.eave, g.fascia, far_fascia, g.far_eave]);
    all
}

/// The ladder, if it is in the plane of the fall: a worker on the roof has climbed off it, and one that
/// goes over sideways leaves the plane.
fn ladder(s: &SetUp, dt_s: f64) -> Option<Ladder> {
    let g = s.geometry();
    let stand = stand(s, g).filter(|q| q.footing != Footing::TipsSideways)?;
    let angle = g.ladder.angle_rad();
    let (sin, cos) = (libm::sin(angle), libm::cos(angle));
    let length_m = g.ladder.foot.dist(g.ladder.tip);
    // The rails lie on the support and stand on the ground, not in them.
    let up = RAIL_RADIUS_M * (1.0 - cos) / sin;
    let off = p(RAIL_RADIUS_M * sin - up * cos, RAIL_RADIUS_M * cos + up * sin);
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
    let pose = Pose {
        at: p(middle.x + off.x, middle.y + off.y),
        // Its own axis is up; the rails lean to the wall.
        angle_rad: core::f64::consts::FRAC_PI_2 - angle,
    };
    let velocity = if moves { p(velocity.x, velocity.y + G_M_S2 * dt_s / 2.0) } else { velocity };
    let mut l = Ladder {
        body: Body::new(mass_kg, mass_kg * length_m * length_m / 12.0, pose, velocity, turn),
        half_length_m: half_m,
        friction: (foot_friction(s.weather) * if moves { SLIDING_SHARE } else { 1.0 }).min(BODY_FRICTION),
        tied: s.ladder.tied,
        moves,
        rails: Solid::default(),
        drawn: (p(0.0, 0.0), p(0.0, 0.0)),
    };
    l.rails = l.solid();
    l.drawn = (l.body.local(g.ladder.foot), l.body.local(g.ladder.tip));
    Some(l)
}

/// What resists the turning of a hinge's two parts against each other when they are straight and nothing else
/// holds them, kg m².
fn turning_kg_m2(h: &body::Hinge, caps: &[body::Capsule; PARTS]) -> f64 {
    let (a, b) = (&caps[h.parent as usize], &caps[h.child as usize]);
    let (ra, rb) = (h.on_parent.y, h.on_child.y);
    // Inverse inertia of the turning with the hinge open, and what holding the hinge takes off it.
    let open = 1.0 / a.inertia_kg_m2 + 1.0 / b.inertia_kg_m2;
    let beside = ra / a.inertia_kg_m2 + rb / b.inertia_kg_m2;
    let across = 1.0 / a.mass_kg + ra * ra / a.inertia_kg_m2 + 1.0 / b.mass_kg + rb * rb / b.inertia_kg_m2;
    1.0 / (open - beside * beside / across)
}

impl World {
    /// The worker of `s`, at the moment of the slip. With `landing` false the
    /// ground and the obstacle are left out: how far would the fall go if there were room?
    pub fn worker(s: &SetUp, landing: bool, start: Start, dt_s: f64) -> World {
        let g = s.geometry();
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
        let all = caps.iter().zip(pose).map(|(c, q)| Body::new(c.mass_kg, c.inertia_kg_m2, q, slip, 0.0));
        let hinges = body::hinges(st).map(|h| Hinge {
            parent: h.parent as usize,
            on_parent: h.on_parent,
            child: h.child as usize,
            on_child: h.on_child,
            limits_rad: h.limits_rad,
            tone_per_s: h.tone_per_s,
            inertia_kg_m2: turning_kg_m2(&h, &caps),
        });
        let usual = dring_on_torso(st);
        World {
            dring: p(usual.x, usual.y - start.ring_drop_m),
            half_length_m: caps.iter().map(|c| c.half_length_m).collect(),
            radius_m: caps.iter().map(|c| c.radius_m).collect(),
            house: house(s, landing, start.roof_friction),
            ladder: ladder(s, dt_s),
            near_contact: true,
            from_roof: matches!(s.stance, Stance::Roof { .. }),
            ..World::bare(Bodies::new(all.collect(), hinges.to_vec()), dt_s)
        }
    }

    /// Bodies (mass, kg; moment of inertia, kg m²; pose) at rest with nothing to strike; the line pulls at `ring`, a place of the first one.
    pub fn tree(bodies: Vec<(f64, f64, Pose)>, hinges: Vec<Hinge>, ring: P) -> World {
        let all = bodies
            .into_iter()
            .map(|(mass_kg, inertia_kg_m2, at)| at_rest(mass_kg, inertia_kg_m2, at.at, at.angle_rad));
        World { dring: ring, ..World::bare(Bodies::new(all.collect(), hinges), DT_S) }
    }

    /// Bodies with nothing to strike; the line pulls at the first one's centre.
    fn bare(bodies: Bodies, dt_s: f64) -> World {
        let n = bodies.all.len();
        World {
            house: Vec::new(),
            dring: p(0.0, 0.0),
            half_length_m: vec![0.0; n],
            radius_m: vec![0.0; n],
            ladder: None,
            last_dt_s: (dt_s, dt_s),
            near_contact: false,
            near_roof: false,
            from_roof: false,
            kinetic_j: None,
            taken_j: 0.0,
            sprung_j: 0.0,
            soft: Vec::with_capacity(n + 1),
            before: Vec::with_capacity(n + 1),
            bodies,
        }
    }

    /// A point mass at rest with nothing to strike: the closed forms' worker.
    pub fn point_mass(mass_kg: f64, at: P) -> World {
        World::tree(vec![(mass_kg, 1.0, Pose { at, angle_rad: 0.0 })], Vec::new(), p(0.0, 0.0))
    }

    /// Two masses joined by a stiff link, at rest with nothing to strike: the smallest worker whose
    /// parts move against each other. The line pulls at the first; the second hangs `link_m` from
    /// it at `angle_rad` from straight down and has `inertia_kg_m2` about its own centre.
    pub fn chain(masses_kg: [f64; 2], link_m: f64, angle_rad: f64, inertia_kg_m2: f64, at: P) -> World {
        let second = p(at.x + link_m * libm::sin(angle_rad), at.y - link_m * libm::cos(angle_rad));
        let all = vec![
            (masses_kg[0], 1.0, Pose { at, angle_rad: 0.0 }),
            (masses_kg[1], inertia_kg_m2, Pose { at: second, angle_rad }),
        ];
        let hinge = Hinge {
            parent: 0,
            on_parent: p(0.0, 0.0),
            child: 1,
            on_child: p(0.0, link_m),
            limits_rad: [f64::NEG_INFINITY, f64::INFINITY],
            tone_per_s: 0.0,
            inertia_kg_m2: 0.0,
        };
        World::tree(all, vec![hinge], p(0.0, 0.0))
    }

    /// Throws every body sideways at `x_m_s`, for pendulum checks.
    pub fn push(&mut self, x_m_s: f64) {
        self.kinetic_j = None;
        for b in &mut self.bodies.all {
            b.velocity.x += x_m_s;
        }
    }

    /// Foot and tip of the ladder, while it is in the plane.
    pub fn ladder(&self) -> Option<(P, P)> {
        self.ladder.as_ref().map(|l| (l.body.place(l.drawn.0), l.body.place(l.drawn.1)))
    }

    /// Every body that gravity moves.
    fn movers(&self) -> impl Iterator<Item = &Body> + '_ {
        self.bodies.all.iter().chain(self.ladder.iter().filter(|l| l.moves).map(|l| &l.body))
    }

    /// The D-ring, m.
    pub fn dring(&self) -> P {
        self.bodies.all[0].place(self.dring)
    }

    /// The worker's mass, kg.
    pub fn mass_kg(&self) -> f64 {
        self.bodies.all.iter().map(|b| b.mass_kg).sum()
    }

    /// The worker's linear momentum half a step behind the positions, kg m/s.
    pub fn momentum(&self) -> P {
        self.bodies
            .all
            .iter()
            .fold(p(0.0, 0.0), |a, b| p(a.x + b.mass_kg * b.velocity.x, a.y + b.mass_kg * b.velocity.y))
    }

    /// Potential energy against y = 0, J: the ladder's too, whether it moves or not.
    pub fn potential_j(&self) -> f64 {
        let ladder = self.ladder.iter().map(|l| &l.body);
        self.bodies.all.iter().chain(ladder).map(|b| b.mass_kg * G_M_S2 * b.at.y).sum()
    }

    fn compute_kinetic_j(&self) -> f64 {
        self.movers().map(Body::kinetic_j).sum()
    }

    /// Poses of all parts.
    pub fn poses(&self) -> Vec<Pose> {
        self.bodies.all.iter().map(Body::pose).collect()
    }

    /// Each part's lower end: centre x, lowest y and radius, m.
    pub fn low_points(&self) -> impl Iterator<Item = (P, f64)> + '_ {
        self.bodies.all.iter().zip(self.half_length_m.iter().zip(&self.radius_m)).map(|(b, (l, radius))| {
            let end = b.place(p(0.0, if b.cos > 0.0 { -l } else { *l }));
            (p(end.x, end.y - radius), *radius)
        })
    }

    /// Largest distance between the two sides of any joint, m.
    pub fn joint_gap_m(&self) -> f64 {
        self.bodies.gap_m()
    }

    /// The step that brought the positions here, s.
    pub fn last_dt_s(&self) -> f64 {
        self.last_dt_s.0
    }

    /// Whether anything touches anything, or is about to.
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
        let back = self.last_dt_s.0 / (self.last_dt_s.0 + self.last_dt_s.1);
        // Nothing changes a velocity between two steps.
        let kinetic_before_j = self.kinetic_j.unwrap_or_else(|| self.compute_kinetic_j());
        let mut touches = Vec::new();
        let stored_j = self.press(kick_s, back, &mut touches) + self.flex(kick_s, back);

        self.before.clear();
        self.soft.clear();
        let ring = self.dring();
        for (i, b) in self.bodies.all.iter_mut().enumerate() {
            self.before.push((b.velocity, b.turn_rad_s));
            let soft = b.take_load();
            self.soft.push((soft, b.take_spring()));
            b.add_load(soft);
            if i == 0 {
                b.push(pull_n, ring);
            }
            let load = b.take_load();
            b.kick(load, kick_s);
        }
        self.bodies.drift(dt_s);
        if let Some(l) = &mut self.ladder {
            self.before.push((l.body.velocity, l.body.turn_rad_s));
            let soft = l.body.take_load();
            self.soft.push((soft, l.body.take_spring()));
            if l.moves {
                l.body.kick(soft, kick_s);
                l.body.drift(dt_s);
                l.rails = l.solid();
            }
        }
        self.last_dt_s = (dt_s, self.last_dt_s.0);
        let kinetic_after_j = self.compute_kinetic_j();
        self.kinetic_j = Some(kinetic_after_j);

        let (mut taken_j, mut sprung_j) = (0.0, 0.0);
        for (b, ((soft, spring), before)) in self.movers().zip(self.soft.iter().zip(&self.before)) {
            taken_j -= b.work_j(*soft, *before, kick_s);
            sprung_j -= b.work_j(*spring, *before, kick_s);
        }
        let by_now = (self.taken_j + before_share * taken_j, self.sprung_j + before_share * sprung_j);
        self.taken_j += taken_j;
        self.sprung_j += sprung_j;
        // A ladder that nobody tied stands until it is struck.
        if let Some(l) = self.ladder.as_mut().filter(|l| !l.tied && !l.moves) {
            l.moves = touches.iter().any(|t| t.thing == Thing::Ladder && t.speed_m_s >= TOUCH_SPEED_M_S);
            if l.moves {
                l.body.rest(dt_s);
                self.kinetic_j = None;
            }
        }
        Step {
            touches,
            kinetic_before_j,
            kinetic_after_j,
            before_share,
            taken_j: by_now.0,
            sprung_j: by_now.1,
            stored_j,
        }
    }

    /// Muscle tone and the ends of the joints' ranges; what is stored in these, J.
    fn flex(&mut self, kick_s: f64, back: f64) -> f64 {
        let mut stored_j = 0.0;
        for i in 0..self.bodies.hinges().len() {
            let h = self.bodies.hinges()[i];
            if h.tone_per_s <= 0.0 {
                continue;
            }
            let (over, rate) = (self.bodies.over_rad(i), self.bodies.rate_rad_s(i, back));
            let mut torque_nm = -h.tone_per_s * h.inertia_kg_m2 * rate;
            let spring_nm = -LIMIT_NM_PER_RAD * over;
            if over != 0.0 {
                stored_j += 0.5 * LIMIT_NM_PER_RAD * over * over;
                // Ligaments damp as they are stretched, and never pull the joint on.
                let most_nm = h.inertia_kg_m2 * rate.abs() / kick_s;
                let damp_nm = spring_nm * rate * over.signum() / LIMIT_DAMPING_RAD_S;
                let damp_nm = damp_nm.clamp(-most_nm, most_nm);
                let whole = spring_nm + damp_nm;
                torque_nm += if whole * spring_nm > 0.0 { whole } else { 0.0 };
            }
            self.bodies.all[h.child].twist(torque_nm, spring_nm);
            self.bodies.all[h.parent].twist(-torque_nm, -spring_nm);
        }
        stored_j
    }

    /// What presses on what, and how fast it came; what flesh stores, J.
    fn press(&mut self, kick_s: f64, back: f64, touches: &mut Vec<Touch>) -> f64 {
        let (mut stored_j, mut near_roof, mut near_contact) = (0.0, false, false);
        let mut note = |thing: Thing, part: usize, lean: &Lean| {
            stored_j += lean.stored_j;
            near_contact |= lean.is_near;
            near_roof |= lean.is_near && thing == Thing::Roof;
            touches.extend(lean.into_m_s.map(|speed_m_s| Touch { thing, part, speed_m_s }));
        };
        for i in 0..self.half_length_m.len() {
            let b = &mut self.bodies.all[i];
            let limb = Limb::of(b, self.half_length_m[i], self.radius_m[i], back);
            let arm = Part::ALL.get(i).is_none_or(|q| q.is_arm());
            for f in self.house.iter().filter(|f| !f.ladder_alone && (f.arms || !arm)) {
                note(f.thing, i, &limb.lean(b, &f.against(f.friction), kick_s, None));
            }
            if let Some(l) = self.ladder.as_mut().filter(|_| !arm) {
                let its = if l.moves { l.body.motion_now(back) } else { (p(0.0, 0.0), 0.0) };
                let rails = Against {
                    solid: &l.rails,
                    friction: BODY_FRICTION,
                    stick_m_s: SKIN_STICK_M_S,
                    stiff_ratio: 1.0,
                };
                let other = Some(Other { body: &mut l.body, moving: its, gives: l.moves });
                note(Thing::Ladder, i, &limb.lean(b, &rails, kick_s, other));
            }
        }
        if let Some(l) = self.ladder.as_mut().filter(|l| l.moves) {
            let limb = Limb::of(&l.body, l.half_length_m, RAIL_RADIUS_M, back);
            for f in &self.house {
                let against = Against { stick_m_s: FOOT_STICK_M_S, ..f.against(f.friction.min(l.friction)) };
                stored_j += limb.lean(&mut l.body, &against, kick_s, None).stored_j;
            }
        }
        (self.near_roof, self.near_contact) = (near_roof, near_contact);
        stored_j
    }
}

/// A capsule as it moves.
struct Limb {
    ends: (P, P),
    radius_m: f64,
    middle: P,
    /// From the middle to where it ends, or nearly touches, m.
    reach_m: f64,
    moving: Motion,
}

/// What comes of a limb against a solid.
#[derive(Default)]
struct Lean {
    /// It touches, or is about to.
    is_near: bool,
    /// How fast it goes in where it touches, m/s.
    into_m_s: Option<f64>,
    stored_j: f64,
}

impl Limb {
    fn of(b: &Body, half_length_m: f64, radius_m: f64, back: f64) -> Limb {
        let end = |y_m: f64| b.place(p(0.0, y_m));
        Limb {
            ends: (end(half_length_m), end(-half_length_m)),
            radius_m,
            middle: b.at,
            reach_m: half_length_m + radius_m + NEAR_M,
            moving: b.motion_now(back),
        }
    }

    /// Lets `b`, whose limb this is, press on a solid; `other` is the body that the solid is.
    fn lean(&self, b: &mut Body, on: &Against, kick_s: f64, mut other: Option<Other>) -> Lean {
        let mut out = Lean::default();
        if on.solid.is_beyond(self.middle, self.reach_m) {
            return out;
        }
        for mut press in on.solid.presses(self.ends.0, self.ends.1, self.radius_m, NEAR_M) {
            out.is_near = true;
            if press.depth_m <= 0.0 {
                continue;
            }
            press.full_share *= on.stiff_ratio;
            let arm = |b: &Body| p(press.at.x - b.at.x, press.at.y - b.at.y);
            let at = |(v, w): Motion, r: P| p(v.x - w * r.y, v.y + w * r.x);
            let r = arm(b);
            let mut speed = at(self.moving, r);
            let mut per_kg = b.gives_most(r);
            if let Some(o) = &other {
                let r = arm(o.body);
                let its = at(o.moving, r);
                speed = p(speed.x - its.x, speed.y - its.y);
                per_kg += if o.gives { o.body.gives_most(r) } else { 0.0 };
            }
            let force = press.force_n(speed, on.friction, on.stick_m_s, 1.0 / per_kg, kick_s);
            let spring = press.spring();
            b.press(force, spring, press.at);
            if let Some(o) = &mut other {
                o.body.press(p(-force.x, -force.y), p(-spring.x, -spring.y), press.at);
            }
            out.stored_j += press.elastic_j();
            let into_m_s = -(speed.x * press.out.x + speed.y * press.out.y);
            out.into_m_s = Some(out.into_m_s.unwrap_or(0.0).max(into_m_s));
        }
        out
    }
}

/// A body at rest: half a step's gravity off, for leapfrog.
fn at_rest(mass_kg: f64, inertia_kg_m2: f64, at: P, angle_rad: f64) -> Body {
    Body::new(mass_kg, inertia_kg_m2, Pose { at, angle_rad }, p(0.0, G_M_S2 * DT_S / 2.0), 0.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Upper arms and forearms in one line, free in space, the second turning at `rate_rad_s` about the hinge.
    fn two_parts(rate_rad_s: f64, tone_per_s: f64, limits_rad: [f64; 2]) -> World {
        let caps = capsules(85.0, 1.75);
        let h = body::hinges(1.75)[3];
        let (a, b) = (&caps[h.parent as usize], &caps[h.child as usize]);
        let hinge = Hinge {
            parent: 0,
            on_parent: h.on_parent,
            child: 1,
            on_child: h.on_child,
            limits_rad,
            tone_per_s,
            inertia_kg_m2: turning_kg_m2(&h, &caps),
        };
        let second = p(0.0, h.on_parent.y - h.on_child.y);
        let pose = |at: P| Pose { at, angle_rad: 0.0 };
        let all =
            vec![(a.mass_kg, a.inertia_kg_m2, pose(p(0.0, 0.0))), (b.mass_kg, b.inertia_kg_m2, pose(second))];
        let mut w = World::tree(all, vec![hinge], p(0.0, 0.0));
        w.bodies.all[1].turn_rad_s = rate_rad_s;
        w.bodies.all[1].velocity.x -= h.on_child.y * -rate_rad_s;
        w
    }

    fn rate_rad_s(w: &World) -> f64 {
        w.bodies.all[1].turn_rad_s - w.bodies.all[0].turn_rad_s
    }

    /// What `tone_per_s` says: two parts alone lose their turning against each other at that rate. After 0.1 s at
    /// 6 a second e^-0.6 = 0.5488 of it is left.
    #[test]
    fn muscle_tone_takes_turning_away_at_its_rate() {
        let mut w = two_parts(0.01, 6.0, [-9.0, 9.0]);
        w.step(p(0.0, 0.0), DT_S);
        let first = rate_rad_s(&w);
        for _ in 0..96 {
            w.step(p(0.0, 0.0), DT_S);
        }
        assert!((rate_rad_s(&w) / first / 0.5488 - 1.0).abs() < 0.002, "{} {first}", rate_rad_s(&w));
    }

    /// An elbow thrown at its end at 10 rad/s goes a little past it and comes back at less than a third of that: nine
    /// tenths of the turning's energy are spent. 0.5 I w^2 with I = 0.068 kg m^2
    /// is 3.4 J, which 1,500 N m/rad take within sqrt(2 x 3.4 / 1500) = 0.067 rad even without damping.
    #[test]
    fn a_joint_thrown_against_its_end_hardly_bounces() {
        let mut w = two_parts(10.0, 1e-9, [-1.0, 0.2]);
        let (mut most, mut back) = (0.0_f64, 0.0_f64);
        for _ in 0..480 {
            w.step(p(0.0, 0.0), DT_S);
            most = most.max(w.bodies.over_rad(0));
            back = back.min(rate_rad_s(&w));
        }
        assert!(most > 0.005 && most < 0.067, "{most}");
        assert!(back > -10.0 / 3.0, "{back}");
    }

    /// A bug while this was made: an arm flung back past its end by a little came out at its other end, with a
    /// thousand joules.
    #[test]
    fn an_arm_past_its_end_does_not_come_round_to_the_other() {
        let limits = [-175.0_f64, 50.0].map(f64::to_radians);
        let w = two_parts(0.0, 6.0, limits);
        let over_deg = |bend_deg: f64| {
            let mut w = World::tree(
                w.bodies.all.iter().map(|b| (b.mass_kg, b.inertia_kg_m2, b.pose())).collect(),
                w.bodies.hinges().to_vec(),
                p(0.0, 0.0),
            );
            let turned = Pose { at: w.bodies.all[1].at, angle_rad: bend_deg.to_radians() };
            w.bodies.all[1] = Body::new(1.0, 1.0, turned, p(0.0, 0.0), 0.0);
            w.bodies.over_rad(0).to_degrees()
        };
        for (bend_deg, want_deg) in [(0.0, 0.0), (-174.0, 0.0), (-185.0, -10.0), (62.0, 12.0), (100.0, 50.0)]
        {
            assert!((over_deg(bend_deg) - want_deg).abs() < 1e-9, "{bend_deg} {}", over_deg(bend_deg));
        }
    }

    /// A ladder that nobody tied goes with the worker who strikes it, and what the one loses the other gains:
    /// while neither touches anything else, momentum across is shared, not made.
    #[test]
    fn a_struck_ladder_takes_its_share_of_the_push() {
        let s = crate::scenario::Scenario::default();
        let mut s =
            crate::scenario::Scenario { ladder: crate::scenario::Ladder { tied: false, ..s.ladder }, ..s };
        s.lifeline.slack_m = 1.0;
        let set_up = s.set_up().expect("possible");
        let mut w = World::worker(&set_up, true, Start::default(), DT_S);
        assert!(w.ladder.as_ref().is_some_and(|l| !l.moves));
        let before = w.ladder().expect("stands");
        for b in &mut w.bodies.all {
            b.velocity.x = -2.0;
        }
        let mut moved = None;
        for _ in 0..300 {
            w.step(p(0.0, 0.0), DT_S);
            let ladder = w.ladder.as_ref().expect("stands");
            if ladder.moves && moved.is_none() {
                moved = Some(ladder.body.at);
            }
        }
        // A bug: the rails went through the eave, 0.2 m in 0.3 s.
        let now = w.ladder().expect("in the plane");
        let eave = set_up.geometry().eave;
        let out = (now.1.x - now.0.x) * (eave.y - now.0.y) - (now.1.y - now.0.y) * (eave.x - now.0.x);
        assert!(out / now.0.dist(now.1) > -0.01, "{out} {now:?} {eave:?}");
        assert!(moved.is_some() && now.0.dist(before.0) + now.1.dist(before.1) > 0.002, "{now:?} {before:?}");
        assert!(w.momentum().x > -2.0 * w.mass_kg(), "{:?}", w.momentum());
    }
}
