//! The engine against an independent integrator: Dormand-Prince 8(5,3) with adaptive steps (Hairer,
//! Nørsett, Wanner, 'Solving Ordinary Differential Equations I'), from a well-kept library. It
//! shares no line of code with the engine: the line's law is written here again, from its
//! definition, and events (taut, tearing, spent) are resolved by the step control.

#![allow(clippy::expect_used, clippy::panic, clippy::unwrap_used)]

use ode_solvers::{Dop853, SVector, System};
use shortfall::geometry::{P, body, p};
use shortfall::physics::Run;
use shortfall::physics::bodies::Hinge;
use shortfall::physics::constants::DT_S;
use shortfall::physics::equipment::{AbsorberParams, LineParams};
use shortfall::physics::world::World;
use shortfall::scenario::Stance;
use shortfall::units::G_M_S2;

/// x, y, angle of the second mass from straight down, their rates, and how far the absorber tore.
type State = SVector<f64, 7>;

#[derive(Clone, Copy)]
struct Case {
    masses_kg: [f64; 2],
    link_m: f64,
    inertia_kg_m2: f64,
    start_rad: f64,
    free_m: f64,
    rope_m: f64,
    modulus_n: f64,
    lanyard_m: f64,
    tear: Option<(f64, f64)>,
}

impl Case {
    /// Tension for a distance from the anchor and a tear, and whether the absorber is tearing.
    fn tension(&self, d_m: f64, torn_m: f64) -> (f64, bool) {
        let k = self.modulus_n / self.rope_m;
        let t = (k * (d_m - self.rope_m - self.lanyard_m - torn_m)).max(0.0);
        match self.tear {
            Some((force, most)) if t >= force && torn_m < most => (force, true),
            _ => (t, false),
        }
    }
}

impl System<f64, State> for Case {
    fn system(&self, _t: f64, s: &State, ds: &mut State) {
        let (x, y, q, vx, vy, w, torn) = (s[0], s[1], s[2], s[3], s[4], s[5], s[6]);
        let d = x.hypot(y);
        let (t, tearing) = self.tension(d, torn);
        let (fx, fy) = (-t * x / d, -t * y / d);
        let [m1, m2] = self.masses_kg;
        let (m, l) = (m1 + m2, self.link_m);
        let (sin, cos) = q.sin_cos();
        // Lagrange's equations of two masses on a link, for x, y and the link's angle:
        //   m ax + m2 l (cos a - sin w^2) = fx, m ay + m2 l (sin a + cos w^2) = fy - m g,
        //   m2 l (cos ax + sin ay) + (m2 l^2 + i) a = -m2 g l sin.
        let (bx, by) = (fx + m2 * l * sin * w * w, fy - m * G_M_S2 - m2 * l * cos * w * w);
        let ml = m2 * l;
        let lhs = ml * l + self.inertia_kg_m2 - ml * ml / m;
        let rhs = -ml * G_M_S2 * sin - ml * (cos * bx + sin * by) / m;
        let a = if lhs > 0.0 { rhs / lhs } else { 0.0 };
        let rate = (x * vx + y * vy) / d;
        *ds = State::from([
            vx,
            vy,
            w,
            (bx - ml * cos * a) / m,
            (by - ml * sin * a) / m,
            a,
            if tearing { rate.max(0.0) } else { 0.0 },
        ]);
    }
}

/// Peak force, largest drop and tear, by the independent integrator over `time_s`.
fn oracle(c: &Case, time_s: f64) -> (f64, f64, f64) {
    let y0 = c.free_m - c.rope_m - c.lanyard_m;
    let start = State::from([0.0, y0, c.start_rad, 0.0, 0.0, 0.0, 0.0]);
    let mut ode = Dop853::new(*c, 0.0, time_s, 2e-4, start, 1e-10, 1e-10);
    ode.integrate().expect("integrates");
    let (mut peak, mut drop, mut torn) = (0.0_f64, 0.0_f64, 0.0_f64);
    for s in ode.y_out() {
        peak = peak.max(c.tension(s[0].hypot(s[1]), s[6]).0);
        drop = drop.max(y0 - s[1]);
        torn = torn.max(s[6]);
    }
    (peak, drop, torn)
}

/// The same by the engine.
fn engine(c: &Case, time_s: f64) -> (f64, f64, f64) {
    let mut params = LineParams::ideal(c.modulus_n, c.rope_m);
    params.lanyard_length_m = c.lanyard_m;
    params.absorber = c.tear.map(|(force_n, most_m)| AbsorberParams::steady(force_n, most_m));
    let at = p(0.0, c.free_m - c.rope_m - c.lanyard_m);
    let world = if c.masses_kg[1] > 0.0 {
        World::chain(c.masses_kg, c.link_m, c.start_rad, c.inertia_kg_m2, at)
    } else {
        World::point_mass(c.masses_kg[0], at)
    };
    let mut run = Run::hung(world, params, c.rope_m);
    while run.time_s() < time_s && !run.step() {}
    let t = run.finish();
    (t.peak_force_n, t.total_fall_m, t.absorber_extension_m)
}

/// Median and worst of the force's error, worst of the fall's and of the tear's.
fn compare(cases: &[Case]) -> (f64, f64, f64, f64) {
    let (mut force, mut fall, mut tear) = (Vec::new(), 0.0_f64, 0.0_f64);
    for c in cases {
        // Past the first stop; a slack line swings back up after that.
        let time_s = (2.0 * c.free_m / G_M_S2).sqrt() + 0.9;
        let (want, got) = (oracle(c, time_s), engine(c, time_s));
        force.push((got.0 / want.0 - 1.0).abs());
        fall = fall.max((got.1 - want.1).abs());
        tear = tear.max((got.2 - want.2).abs());
    }
    force.sort_by(f64::total_cmp);
    (force[force.len() / 2], force[force.len() - 1], fall, tear)
}

fn point(m: f64, free_m: f64, rope_m: f64, modulus_n: f64, tear: Option<(f64, f64)>) -> Case {
    Case {
        masses_kg: [m, 0.0],
        link_m: 0.0,
        inertia_kg_m2: 0.0,
        start_rad: 0.0,
        free_m,
        rope_m,
        modulus_n,
        lanyard_m: 4.0,
        tear,
    }
}

#[test]
fn four_hundred_drops_of_a_point_mass() {
    let mut cases = Vec::new();
    for m in [50.0, 80.0, 110.0, 140.0] {
        for free in [0.15, 0.6, 1.2, 2.4, 3.6] {
            for rope in [1.0, 3.0, 6.0, 10.0, 15.0] {
                for tear in [None, Some((2_600.0, 9.0)), Some((4_000.0, 1.2)), Some((6_000.0, 0.3))] {
                    cases.push(point(m, free, rope, 30_000.0, tear));
                }
            }
        }
    }
    assert!(cases.len() >= 400);
    let (median, worst, fall, tear) = compare(&cases);
    println!("force: median {median:.2e}, worst {worst:.2e}; fall {fall:.2e} m; tear {tear:.2e} m");
    assert!(median < 1e-3 && worst < 5e-3, "force: median {median}, worst {worst}");
    assert!(fall < 2e-3, "fall {fall} m");
    assert!(tear < 2e-3, "tear {tear} m");
}

#[test]
fn four_hundred_drops_of_two_masses_on_a_link() {
    let mut cases = Vec::new();
    for (m1, m2) in [(30.0, 30.0), (45.0, 35.0), (50.0, 60.0), (80.0, 60.0)] {
        for free in [0.15, 0.6, 1.2, 2.4, 3.6] {
            for rope in [1.0, 4.0, 8.0, 15.0] {
                for start in [0.0, 0.7] {
                    for tear in [None, Some((4_000.0, 1.2)), Some((2_600.0, 9.0))] {
                        let link_m = 0.6;
                        cases.push(Case {
                            masses_kg: [m1, m2],
                            link_m,
                            inertia_kg_m2: m2 * link_m * link_m / 12.0,
                            start_rad: start,
                            ..point(0.0, free, rope, 30_000.0, tear)
                        });
                    }
                }
            }
        }
    }
    assert!(cases.len() >= 400);
    let (median, worst, fall, tear) = compare(&cases);
    println!("force: median {median:.2e}, worst {worst:.2e}; fall {fall:.2e} m; tear {tear:.2e} m");
    assert!(median < 1e-3 && worst < 5e-3, "force: median {median}, worst {worst}");
    assert!(fall < 2e-3, "fall {fall} m");
    assert!(tear < 2e-3, "tear {tear} m");
}

/// The integrator that judges is itself judged: F = mg + sqrt((mg)^2 + 2 m g M f).
#[test]
fn the_oracle_agrees_with_the_closed_form() {
    for (m, free, rope) in [(50.0, 0.3, 1.0), (100.0, 1.8, 8.0), (140.0, 3.6, 15.0)] {
        let w: f64 = m * G_M_S2;
        let want = w + (w * w + 2.0 * w * 30_000.0 * free / rope).sqrt();
        let (peak, _, _) = oracle(&point(m, free, rope, 30_000.0, None), 2.5);
        assert!((peak / want - 1.0).abs() < 1e-6, "{peak} beside {want}");
    }
}

/// Coarser steps by skipping: with the step doubled the error grows fourfold, as it must for a
/// method of the second order. The engine's own step is fixed; stiffer ropes stand for longer ones,
/// since only step times frequency matters: four times the modulus is twice the step.
#[test]
fn the_error_shrinks_with_the_square_of_the_step() {
    let error = |modulus_n: f64| {
        let c = point(80.0, 0.8, 2.0, modulus_n, None);
        let w: f64 = 80.0 * G_M_S2;
        let want = w + (w * w + 2.0 * w * modulus_n * 0.8 / 2.0).sqrt();
        // The mean over phases: where in a step the line goes taut is chance.
        let n = 24;
        let sum: f64 = (0..n)
            .map(|i| {
                let shift = f64::from(i) / f64::from(n) * DT_S * 4.0;
                let c = Case { free_m: c.free_m + shift, ..c };
                let w2 = w + (w * w + 2.0 * w * modulus_n * c.free_m / 2.0).sqrt();
                (engine(&c, 1.2).0 / w2 - 1.0).powi(2)
            })
            .sum();
        (sum / f64::from(n)).sqrt() * want / want
    };
    let (one, two, four) = (error(1e5), error(4e5), error(16e5));
    println!("relative error: {one:.2e}, {two:.2e}, {four:.2e}");
    assert!(one < two && two < four);
    let (a, b) = (two / one, four / two);
    assert!((2.2..8.0).contains(&a) && (2.2..8.0).contains(&b), "{a:.2}, {b:.2} for each doubling");
}

/// The worker's nine bodies, hinges free, 0.6 m of free fall onto a spring of 30 kN strain force and 8 m, from
/// standing upright: the largest force, N, and the ring's deepest drop, m, by rapier at 1/7680 s. It finds its
/// hinges' impulses by relaxation in `f32`, ours come from a factored matrix in `f64`; no code is shared.
fn nine_by_rapier() -> (f64, f64) {
    use rapier2d::prelude::*;
    let (caps, pose, hinges, ring) = nine();
    let v = |q: P| Vector::new(q.x as f32, q.y as f32);
    let mut w = PhysicsWorld::new();
    w.gravity = Vector::new(0.0, -G_M_S2 as f32);
    let ip = &mut w.integration_parameters;
    (ip.dt, ip.num_solver_iterations) = (1.0 / 7680.0, 1);
    ip.num_internal_pgs_iterations = 16;
    let all: Vec<RigidBodyHandle> = caps
        .iter()
        .zip(pose)
        .map(|(c, q)| {
            let (mass, inertia) = (c.mass_kg as f32, c.inertia_kg_m2 as f32);
            let body = RigidBodyBuilder::dynamic()
                .pose(rapier2d::math::Pose::new(v(q.at), q.angle_rad as f32))
                .additional_mass_properties(MassProperties::new(Vector::ZERO, mass, inertia))
                .can_sleep(false);
            w.insert_body(body)
        })
        .collect();
    for h in hinges {
        let joint = RevoluteJointBuilder::new()
            .local_anchor1(v(h.on_parent))
            .local_anchor2(v(h.on_child))
            .contacts_enabled(false);
        w.insert_impulse_joint(all[h.parent as usize], all[h.child as usize], joint);
    }
    let place = |w: &PhysicsWorld| {
        let q = w.bodies[all[0]].position().transform_point(v(ring));
        p(f64::from(q.x), f64::from(q.y))
    };
    let (top, anchor) = (place(&w), p(0.0, 0.0));
    let (mut most_n, mut drop_m) = (0.0_f64, 0.0_f64);
    for _ in 0..7680 {
        let d = place(&w);
        let l = d.dist(anchor);
        let f = (30_000.0 / 8.0 * (l - 8.0)).max(0.0);
        (most_n, drop_m) = (most_n.max(f), drop_m.max(top.y - d.y));
        let torso = &mut w.bodies[all[0]];
        torso.reset_forces(true);
        torso.reset_torques(true);
        if f > 0.0 {
            torso.add_force_at_point(v(p(f * (anchor.x - d.x) / l, f * (anchor.y - d.y) / l)), v(d), true);
        }
        w.step();
    }
    (most_n, drop_m)
}

/// Capsules, poses, hinges and ring of a worker of 85 kg and 1.75 m who stands as on a roof, the ring 7.4 m
/// under the origin.
fn nine() -> ([body::Capsule; 9], [body::Pose; 9], [body::Hinge; 8], P) {
    let stance = Stance::Roof { from_eave_m: 1.0 };
    let ring = body::dring_on_torso(1.75);
    let top = body::standing(p(0.0, 0.0), 1.75, &stance, 0.4)[0].place(ring);
    let pose = body::standing(p(-top.x, -7.4 - top.y), 1.75, &stance, 0.4);
    (body::capsules(85.0, 1.75), pose, body::hinges(1.75), ring)
}

/// Nine bodies against another engine.
#[test]
fn nine_bodies_fall_as_another_engine_lets_them_fall() {
    let (caps, pose, hinges, ring) = nine();
    let bodies = caps.iter().zip(pose).map(|(c, q)| (c.mass_kg, c.inertia_kg_m2, q)).collect();
    let free = hinges.map(|h| Hinge {
        parent: h.parent as usize,
        on_parent: h.on_parent,
        child: h.child as usize,
        on_child: h.on_child,
        limits_rad: h.limits_rad,
        tone_per_s: 0.0,
        inertia_kg_m2: 0.0,
    });
    let mut params = LineParams::ideal(30_000.0, 8.0);
    params.lanyard_length_m = 0.0;
    let mut run = Run::hung(World::tree(bodies, free.to_vec(), ring), params, 8.0);
    while run.time_s() < 1.0 && !run.step() {}
    let t = run.finish();
    let (most_n, drop_m) = nine_by_rapier();
    assert!((t.peak_force_n / most_n - 1.0).abs() < 2e-3, "{} {most_n}", t.peak_force_n);
    assert!((t.total_fall_m - drop_m).abs() < 2e-3, "{} {drop_m}", t.total_fall_m);
    assert!(t.joint_gap_m < 1e-7 && t.energy_residual < 1e-3, "{} {}", t.joint_gap_m, t.energy_residual);
}
