//! One fall, step by step.

use super::balance::Balance;
use super::constants::*;
use super::equipment::LineParams;
use super::ladder::{self, Footing};
use super::line::Line;
use super::trace::{EventKind, Ledger, Outcome, Sample, Trace};
use super::watch::{LineBefore, Watch};
use super::world::World;
use crate::geometry::{Geometry, P, SetUp, p, path_length, taut_path};
use crate::scenario::Stance;

/// How a slip begins, as far as nobody knows it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Start {
    /// Speed of the slip as a share of the assumed one.
    pub slip_share: f64,
    /// Friction of the body on the roof.
    pub roof_friction: f64,
    /// How far down the trunk the ring sits below its place between the shoulder blades, m.
    pub ring_drop_m: f64,
}

impl Default for Start {
    fn default() -> Start {
        Start { slip_share: 1.0, roof_friction: super::equipment::ROOF_SLIP_FRICTION, ring_drop_m: 0.0 }
    }
}

/// Bodies, line and everything noted along the way.
pub struct Run {
    pub(super) world: World,
    pub(super) line: Line,
    pub(super) watch: Watch,
    balance: Balance,
    geometry: Option<Geometry>,
    /// There is something to land on.
    landing: bool,
    /// Steps of this run in one of [`DT_S`].
    fineness: usize,
    dt_s: f64,
    step_no: usize,
    grab: P,
    samples: Vec<Sample>,
    /// Largest forces since the last sample, N.
    window_force_n: f64,
    window_anchor_n: f64,
    joint_gap_m: f64,
    calm_s: f64,
    is_over: bool,
}

impl Run {
    pub(super) fn worker(s: &SetUp, landing: bool) -> Run {
        Run::worker_on(s, landing, LineParams::of(s), Start::default(), 1)
    }

    pub(super) fn worker_on(
        s: &SetUp,
        landing: bool,
        params: LineParams,
        start: Start,
        fineness: usize,
    ) -> Run {
        let g = s.geometry();
        let dt_s = DT_S / fineness as f64;
        let world = World::worker(s, landing, start, dt_s);
        let d = world.dring();
        let mut line = Line::new(params, g.anchor, &g.corners, d, g.grab_rope_m + s.lifeline.slack_m);
        line.link_parted = !s.lanyard.clipped;
        let mut run = Run::new(world, line, g.grab);
        run.watch.on_roof = matches!(s.stance, Stance::Roof { .. });
        (run.geometry, run.landing) = (Some(g.clone()), landing);
        (run.fineness, run.dt_s) = (fineness, dt_s);
        if !s.lanyard.clipped {
            run.watch.mark(EventKind::NotClipped, 0.0);
        }
        // A ladder that does not hold is what begins the fall.
        match ladder::stand(s, g).map(|q| q.footing) {
            Some(Footing::SlidesOut) => run.watch.mark(EventKind::LadderSlides, 0.0),
            Some(Footing::TipsBack | Footing::TipsSideways) => run.watch.mark(EventKind::LadderTips, 0.0),
            _ => {}
        }
        run
    }

    /// Bodies on a line with nothing to strike.
    pub(super) fn new(world: World, line: Line, grab: P) -> Run {
        let weight_n = world.mass_kg() * crate::units::G_M_S2;
        Run {
            watch: Watch::new(world.dring(), false, weight_n),
            balance: Balance::new(world.potential_j()),
            geometry: None,
            landing: false,
            fineness: 1,
            dt_s: DT_S,
            step_no: 0,
            grab,
            samples: Vec::new(),
            window_force_n: 0.0,
            window_anchor_n: 0.0,
            joint_gap_m: 0.0,
            calm_s: 0.0,
            is_over: false,
            world,
            line,
        }
    }

    /// Time run so far, s.
    pub fn time_s(&self) -> f64 {
        self.step_no as f64 * self.dt_s
    }

    /// The D-ring now, m.
    pub fn dring(&self) -> P {
        self.world.dring()
    }

    /// Held, and not struck.
    fn is_held(&self) -> bool {
        self.line.holds() && !self.watch.struck_below()
    }

    /// Whether the outcome is settled: struck, let go, at rest, or held and past the lowest point.
    pub fn is_settled(&self) -> bool {
        let held_s = self.time_s() - self.watch.last_lower_s.max(self.watch.lowest_dring_m.at_s);
        self.is_over || !self.is_held() || (self.watch.free_fall_m.is_some() && held_s > SETTLED_TIME_S)
    }

    /// In how many parts the next step is made, and how many steps it is at once.
    fn stride(&self, held: bool) -> (usize, usize) {
        if self.world.is_rough() {
            return (ROUGH_PARTS, 1);
        }
        // Held and past the lowest point, what is left is a slow swing; before the line comes taut, a fall
        // that nothing disturbs: two steps are made as one.
        let falling = self.line.slack_m() > COARSE_SLACK_M && !self.world.is_in_contact();
        let coarse = (held || falling) && !self.world.is_near_roof() && self.step_no.is_multiple_of(2);
        (1, if coarse { 2 } else { 1 })
    }

    /// One step; true when the run is over. While the worker tumbles on the roof it is made in parts.
    pub fn step(&mut self) -> bool {
        if self.is_over {
            return true;
        }
        // Held, and nothing more to learn: what follows is a slow swing.
        let held = self.is_settled() && self.is_held();
        let (parts, stride) = self.stride(held);
        let step_s = self.dt_s * stride as f64;
        let kinetic_j = (0..parts).map(|i| self.part(i, step_s / parts as f64)).last().unwrap_or(0.0);
        self.step_no += stride;

        // At rest, out of time, told, or (with no ground) past the lowest point.
        let t = self.time_s();
        self.calm_s = if kinetic_j < REST_ENERGY_J && t > CALM_FROM_S { self.calm_s + step_s } else { 0.0 };
        let lower_s = self.watch.last_lower_s;
        let roomy_done =
            !self.landing && self.geometry.is_some() && (t - lower_s > ROOMY_S || !self.line.holds());
        let told = held && t - self.watch.last_figure_s.max(lower_s) > TOLD_TIME_S;
        self.is_over = self.calm_s > REST_TIME_S || t >= LONGEST_RUN_S || roomy_done || told;
        self.is_over
    }

    /// The part `i`, of `dt_s`, of a step; the kinetic energy at its start, J.
    fn part(&mut self, i: usize, dt_s: f64) -> f64 {
        let t = self.time_s() + i as f64 * dt_s;
        let d = self.world.dring();

        // The line at this moment.
        let before = LineBefore::of(&self.line);
        let pull = self.line.step(d, self.world.last_dt_s());
        self.watch.line(t, d, &pull, &self.line, &before);
        self.window_force_n = self.window_force_n.max(pull.dring_n);
        self.window_anchor_n = self.window_anchor_n.max(pull.anchor_n);
        self.watch.body(t, d, &self.world, self.geometry.as_ref());
        if self.step_no.is_multiple_of(STEPS_PER_JOINT_LOOK) {
            self.joint_gap_m = self.joint_gap_m.max(self.world.joint_gap_m());
        }
        if i == 0 && self.step_no.is_multiple_of(STEPS_PER_SAMPLE * self.fineness) {
            self.follow_grab(d, pull.dring_n > 0.0);
            self.sample(t, d);
        }

        // One step of the bodies.
        let potential_j = self.world.potential_j();
        let f = pull.dring_n;
        let step = self.world.step(p(f * pull.toward.x, f * pull.toward.y), dt_s);
        self.watch.contacts(t, &step.touches, self.world.dring(), self.line.grab_slip_m());
        // What follows a strike on the ground is shown, but enters no grade.
        let (first, counts) = (self.step_no == 0 && i == 0, !self.watch.struck_below());
        self.balance.book(&step, potential_j, &self.line.energy, first, counts)
    }

    /// Where the grab is: on the line when it is taut; dragged along by lanyard and rope before.
    fn follow_grab(&mut self, d: P, taut: bool) {
        // A lanyard that was never clipped leaves the grab where it is.
        if self.watch.has(EventKind::NotClipped) {
            return;
        }
        let Some(g) = &self.geometry else { return };
        let below = self.line.below_grab_m();
        if taut && self.line.holds() {
            // `below` back along the path from the D-ring.
            let mut left = below;
            for w in taut_path(g.anchor, &g.corners, d).windows(2).rev() {
                let l = w[0].dist(w[1]);
                if left <= l {
                    self.grab = w[1].lerp(w[0], left / l.max(1e-9));
                    return;
                }
                left -= l;
            }
            return;
        }
        let mut q = self.grab;
        for _ in 0..2 {
            let r = q.dist(d);
            if r > below {
                q = d.lerp(q, below / r);
            }
            if self.line.holds() {
                let path = taut_path(g.anchor, &g.corners, q);
                let rope = self.line.grab_rope_m();
                let r = path_length(&path);
                if r > rope {
                    let last = path[path.len() - 2];
                    let l = last.dist(q);
                    q = last.lerp(q, ((l - (r - rope)) / l.max(1e-9)).max(0.0));
                }
            }
        }
        self.grab = q;
    }

    fn sample(&mut self, t: f64, d: P) {
        self.samples.push(Sample {
            time_s: t,
            poses: self.world.poses(),
            ladder: self.world.ladder(),
            dring: d,
            grab: self.grab,
            force_n: core::mem::take(&mut self.window_force_n),
            anchor_n: core::mem::take(&mut self.window_anchor_n),
            grab_rope_m: self.line.grab_rope_m(),
            below_grab_m: self.line.below_grab_m(),
            absorber_m: self.line.absorber_m(),
            holds: self.line.holds(),
            on_rope: !(self.line.off_rope || self.line.link_parted),
        });
    }

    /// The finished trace of this run alone.
    pub fn finish(mut self) -> Trace {
        let t = self.time_s();
        let d = self.world.dring();
        self.follow_grab(d, false);
        self.sample(t, d);
        let w = &mut self.watch;
        if w.peak_n.value > TAUT_FORCE_N {
            w.mark(EventKind::PeakForce, w.peak_n.at_s);
        }
        if w.lowest_dring_m.value < w.start_dring.y - MARKED_DROP_M {
            w.mark(EventKind::Lowest, w.lowest_dring_m.at_s);
        }
        w.mark(EventKind::End, t);
        w.events.sort_by(|a, b| a.time_s.total_cmp(&b.time_s));
        let (w, b) = (&self.watch, &self.balance);
        let total_fall_m = (w.start_dring.y - w.lowest_dring_m.value).max(0.0);
        let scale_j = (w.weight_n * total_fall_m + b.start_kinetic_j).max(RESIDUAL_FLOOR_J);
        let outcome = if !self.line.holds() {
            Outcome::LetGo
        } else if w.struck_below() {
            Outcome::Strikes
        } else {
            Outcome::Stopped
        };
        // Where the line never bore the weight: as far as it was slack; where it held nothing at all, down
        // to the blow.
        let free_fall_m = w.free_fall_m.unwrap_or_else(|| {
            let never_held = w.peak_n.value < TAUT_FORCE_N || self.line.off_rope;
            if outcome == Outcome::Stopped || !never_held {
                w.slack_drop_m
            } else {
                w.landed.map_or(total_fall_m, |l| l.drop_m)
            }
        });
        let grab_slip_m = w.landed.map_or(self.line.grab_slip_m(), |l| l.grab_slip_m);
        Trace {
            peak_force_n: w.peak_n.value,
            anchor_peak_n: w.anchor_peak_n,
            free_fall_m: free_fall_m.min(total_fall_m),
            total_fall_m,
            absorber_extension_m: self.line.absorber_m(),
            rope_stretch_m: w.rope_stretch_m,
            grab_slip_m,
            dead_travel_m: self.line.dead_travel_m().min(grab_slip_m),
            harness_slide_m: self.line.slide_m(),
            lowest_point_m: w.lowest_point_m,
            clearance_margin_m: (outcome == Outcome::Stopped).then_some(w.lowest_gap_m),
            outcome,
            left_roof: !w.on_roof || w.has(EventKind::OverEave),
            absorber_spent: self.line.absorber_spent(),
            ledger: Ledger {
                work_in_j: b.start_kinetic_j + (b.start_potential_j - self.world.potential_j()).max(0.0),
                kinetic_j: b.kinetic_j,
                line: self.line.energy,
                body_j: b.body_j(),
            },
            energy_residual: b.error_j() / scale_j,
            joint_gap_m: self.joint_gap_m,
            weight_n: w.weight_n,
            neighbours: None,
            samples: self.samples,
            events: self.watch.events,
            impacts: self.watch.impacts,
        }
    }
}
