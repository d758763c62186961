//! Fall physics: a set-up in, a finished trace out.
//!
//! [`simulate`] is the door. Only `world` names rapier.

pub mod constants;
pub mod equipment;
pub mod ladder;
pub mod line;
pub mod neighbours;
pub mod point;
pub mod skin;
pub mod trace;
pub mod world;

use crate::geometry::body::Part;
use crate::geometry::{Geometry, P, SetUp, p, path_length, taut_path};
use crate::scenario::Stance;
use constants::*;
use equipment::LineParams;
use ladder::Footing;
use line::{Line, Pull};
use trace::{Event, EventKind, Impact, Ledger, Outcome, Sample, Thing, Trace};
use world::{Touch, World};

/// Version of the physics: a record replays bit for bit on the same version only.
///
/// 4: ropes by their make, the usual one a 16 mm polyester blend; free fall read between two steps; peaks
/// end with a blow below; energy of moving rope by its elastic tension.
/// 5: flesh that gives on the roof, finer steps while tumbling, neighbours of a fall from a roof; a grab's
/// dead travel before it bites; slack above the grab; 0.3 m of harness; both feet of the worker off the
/// rails; a plate lets go at its first row; an anchor judged without the edge's help; falls along the wall
/// that do not hang on the step.
/// 6: the energy check covers the whole run; finer steps for as long as a body moves on the roof; the run of
/// a held worker ends two seconds after its last figure; double steps in undisturbed free fall.
pub const PHYSICS_VERSION: u32 = 6;

/// Runs a whole fall, and from a roof its neighbours with it.
pub fn simulate(s: &SetUp) -> Trace {
    neighbours::ask(s, simulate_alone(s))
}

/// Runs a whole fall without asking its neighbours. Where it strikes, a second run with nothing below
/// tells how much room was missing.
pub fn simulate_alone(s: &SetUp) -> Trace {
    let mut run = Run::worker(s, true);
    while !run.step() {}
    // Where the line never bore the worker's weight, no room would have been enough.
    let trailing = run.line.grab_slip_m() > 0.3 && run.peak.0 < run.weight_n;
    let roomy = run.struck_below() && run.line.holds() && !trailing;
    let mut t = run.finish();
    if t.outcome == Outcome::Strikes {
        t.clearance_margin_m = roomy.then(|| missing_m(s)).flatten();
    }
    t
}

/// How much room was missing, m: nought or negative; `None` where the rope lets go.
fn missing_m(s: &SetUp) -> Option<f64> {
    let mut run = Run::worker(s, false);
    while !run.step() {}
    run.line.holds().then(|| run.lowest_gap_m.min(0.0))
}

/// The same at steps `fineness` times as fine, to see what a finer step changes.
pub fn simulate_finer(s: &SetUp, fineness: usize) -> Trace {
    let mut run = Run::worker_on(s, true, LineParams::of(s), Start::default(), fineness.max(1));
    while !run.step() {}
    run.finish()
}

/// How a slip begins, as far as nobody knows it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Start {
    /// Speed of the slip as a share of the assumed one.
    pub slip_share: f64,
    /// Friction of the body on the roof.
    pub roof_friction: f64,
}

impl Default for Start {
    fn default() -> Start {
        Start { slip_share: 1.0, roof_friction: equipment::ROOF_SLIP_FRICTION }
    }
}

/// What is asked of one fall among many.
#[derive(Clone, Copy, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct Settled {
    /// How it ended.
    pub outcome: Outcome,
    /// Largest force at the D-ring, N.
    pub peak_force_n: f64,
    /// Least room between the worker and what lies below, m; 0 where something was struck.
    pub room_left_m: f64,
    /// The run passes its own energy check.
    pub sound: bool,
}

/// Runs a fall on a line of the given parameters until its outcome is settled.
pub fn settle(s: &SetUp, params: LineParams, start: Start) -> Settled {
    let t = settled_from(s, params, start);
    Settled {
        outcome: t.outcome,
        peak_force_n: t.peak_force_n,
        room_left_m: if t.outcome == Outcome::Stopped { t.clearance_margin_m.unwrap_or(0.0) } else { 0.0 },
        sound: t.is_sound(),
    }
}

/// The trace of such a fall, as far as it was run.
pub fn settled_trace(s: &SetUp, params: LineParams) -> Trace {
    settled_from(s, params, Start::default())
}

fn settled_from(s: &SetUp, params: LineParams, start: Start) -> Trace {
    let mut run = Run::worker_on(s, true, params, start, 1);
    while !run.is_settled() && !run.step() {}
    run.finish()
}

/// Room left under the worker if there were no ground to stop the fall, m: negative is how much is
/// missing. Run until past the lowest point.
///
/// `None` when the rope lets go, or the run fails its own energy check.
pub fn room_m(s: &SetUp) -> Option<f64> {
    let mut run = Run::worker(s, false);
    while !run.is_settled() && !run.step() {}
    let (room_m, holds) = (run.lowest_gap_m, run.line.holds());
    (holds && run.finish().is_sound()).then_some(room_m)
}

/// Bodies, line and everything measured along the way.
pub struct Run {
    world: World,
    line: Line,
    geometry: Option<Geometry>,
    landing: bool,
    on_roof: bool,
    /// Steps of this run in one of [`DT_S`].
    fineness: usize,
    dt_s: f64,
    step_no: usize,
    flesh_low_j: f64,
    start_flesh_j: f64,
    start_dring: P,
    start_potential_j: f64,
    start_kinetic_j: f64,
    weight_n: f64,
    grab: P,
    samples: Vec<Sample>,
    events: Vec<Event>,
    impacts: Vec<Impact>,
    last_touch_s: [f64; 5],
    window_force_n: f64,
    window_anchor_n: f64,
    peak: (f64, f64),
    anchor_peak_n: f64,
    slack_drop_m: f64,
    free_fall_m: Option<f64>,
    /// The first step since the line was last slack: drop, m, and force, N.
    first_taut: Option<(f64, f64)>,
    /// Drop at which the line came taut, between two steps, m.
    taut_drop_m: Option<f64>,
    /// Drop of the D-ring and slip of the grab at the first blow below, m: what follows is a body folding up.
    landed: Option<(f64, f64)>,
    lowest_dring: (f64, f64),
    lowest_point_m: f64,
    lowest_gap_m: f64,
    last_lower_s: f64,
    rope_stretch_m: f64,
    body_j: f64,
    roof_j: f64,
    body_low_j: f64,
    /// Errors so far: energy that joints and contacts gave, and that of the whole balance, J.
    errors_j: (f64, f64),
    /// A figure of the trace was taken at this moment.
    figure: bool,
    /// When the last one was taken, s.
    last_figure_s: f64,
    calm_s: f64,
    was_taut: bool,
    joint_gap_m: f64,
    kinetic_j: f64,
    end: Option<f64>,
}

impl Run {
    fn worker(s: &SetUp, landing: bool) -> Run {
        Run::worker_on(s, landing, LineParams::of(s), Start::default(), 1)
    }

    fn worker_on(s: &SetUp, landing: bool, params: LineParams, start: Start, fineness: usize) -> Run {
        let g = s.geometry();
        let dt_s = DT_S / fineness as f64;
        let world = World::worker(s, landing, start, dt_s);
        let d = world.dring();
        let mut line = Line::new(params, g.anchor, &g.corners, d, g.grab_rope_m + s.lifeline.slack_m);
        line.link_parted = !s.lanyard.clipped;
        let on_roof = matches!(s.stance, Stance::Roof { .. });
        let mut run = Run::new(world, line, Some(g.clone()), landing, on_roof, g.grab);
        (run.fineness, run.dt_s) = (fineness, dt_s);
        if !s.lanyard.clipped {
            run.mark(EventKind::NotClipped, 0.0);
        }
        // A ladder that does not hold is what begins the fall.
        match ladder::stand(s, g).map(|q| q.footing) {
            Some(Footing::SlidesOut) => run.mark(EventKind::LadderSlides, 0.0),
            Some(Footing::TipsBack | Footing::TipsSideways) => run.mark(EventKind::LadderTips, 0.0),
            _ => {}
        }
        run
    }

    /// A point mass under an anchor with nothing to strike: `slack_m` of free fall on a line of
    /// `params` with `grab_rope_m` of rope. For checks against closed forms.
    pub fn point_mass(mass_kg: f64, slack_m: f64, params: LineParams, grab_rope_m: f64) -> Run {
        let anchor = p(0.0, 0.0);
        let at = p(0.0, slack_m - grab_rope_m - params.lanyard_length_m);
        Run::point_mass_at(mass_kg, anchor, &[], at, params, grab_rope_m)
    }

    /// A point mass anywhere, with the rope over `corners`.
    pub fn point_mass_at(
        mass_kg: f64,
        anchor: P,
        corners: &[P],
        at: P,
        params: LineParams,
        grab_rope_m: f64,
    ) -> Run {
        let world = World::point_mass(mass_kg, at);
        let line = Line::new(params, anchor, corners, world.dring(), grab_rope_m);
        Run::new(world, line, None, false, false, at)
    }

    /// Whether the outcome is settled: struck, let go, at rest, or held and past the lowest point.
    pub fn is_settled(&self) -> bool {
        let held_s = self.time_s() - self.last_lower_s.max(self.lowest_dring.1);
        self.end.is_some()
            || self.struck_below()
            || !self.line.holds()
            || (self.free_fall_m.is_some() && held_s > SETTLED_TIME_S)
    }

    /// Bodies of any kind under an anchor at the origin with nothing to strike.
    pub fn hung(world: World, params: LineParams, grab_rope_m: f64) -> Run {
        let at = world.dring();
        let line = Line::new(params, p(0.0, 0.0), &[], at, grab_rope_m);
        Run::new(world, line, None, false, false, at)
    }

    fn new(
        world: World,
        line: Line,
        geometry: Option<Geometry>,
        landing: bool,
        on_roof: bool,
        grab: P,
    ) -> Run {
        let d = world.dring();
        Run {
            start_dring: d,
            start_potential_j: world.potential_j(),
            start_kinetic_j: 0.0,
            weight_n: world.mass_kg() * crate::units::G_M_S2,
            grab,
            geometry,
            landing,
            on_roof,
            fineness: 1,
            dt_s: DT_S,
            step_no: 0,
            flesh_low_j: 0.0,
            start_flesh_j: 0.0,
            samples: Vec::new(),
            events: vec![Event { kind: EventKind::Slip, time_s: 0.0 }],
            impacts: Vec::new(),
            last_touch_s: [-1.0; 5],
            window_force_n: 0.0,
            window_anchor_n: 0.0,
            peak: (0.0, 0.0),
            anchor_peak_n: 0.0,
            slack_drop_m: 0.0,
            free_fall_m: None,
            first_taut: None,
            taut_drop_m: None,
            landed: None,
            lowest_dring: (d.y, 0.0),
            lowest_point_m: f64::INFINITY,
            lowest_gap_m: f64::INFINITY,
            last_lower_s: 0.0,
            rope_stretch_m: 0.0,
            body_j: 0.0,
            roof_j: 0.0,
            body_low_j: 0.0,
            errors_j: (0.0, 0.0),
            figure: false,
            last_figure_s: 0.0,
            calm_s: 0.0,
            was_taut: false,
            joint_gap_m: 0.0,
            kinetic_j: 0.0,
            end: None,
            world,
            line,
        }
    }

    /// The bodies, to push them before the first step.
    pub fn world_mut(&mut self) -> &mut World {
        &mut self.world
    }

    /// Time run so far, s.
    pub fn time_s(&self) -> f64 {
        self.step_no as f64 * self.dt_s
    }

    /// The D-ring now, m.
    pub fn dring(&self) -> P {
        self.world.dring()
    }

    /// Height of the D-ring now, m.
    pub fn dring_y_m(&self) -> f64 {
        self.dring().y
    }

    fn mark(&mut self, kind: EventKind, time_s: f64) {
        if !self.events.iter().any(|e| e.kind == kind) {
            self.events.push(Event { kind, time_s });
        }
    }

    fn struck_below(&self) -> bool {
        self.impacts.iter().any(|i| matches!(i.what, Thing::Ground | Thing::Obstacle))
    }

    /// One step; true when the run is over. While the worker tumbles on the roof it is made in parts.
    pub fn step(&mut self) -> bool {
        if self.end.is_some() {
            return true;
        }
        let parts = if self.world.is_rough() { ROUGH_PARTS } else { 1 };
        // Held and past the lowest point, what is left is a slow swing; before the line comes taut, a fall
        // that nothing disturbs: two steps are made as one.
        let held = self.is_settled() && self.line.holds() && !self.struck_below();
        let falling = self.line.slack_m() > COARSE_SLACK_M && !self.world.is_in_contact();
        let stride = if (held || falling)
            && parts == 1
            && !self.world.is_near_roof()
            && self.step_no.is_multiple_of(2)
        {
            2
        } else {
            1
        };
        let step_s = self.dt_s * stride as f64;
        let kinetic_j = (0..parts).map(|i| self.part(i, step_s / parts as f64)).last().unwrap_or(0.0);
        self.step_no += stride;

        // At rest, out of time, or (with no ground) past the lowest point.
        let t = self.time_s();
        self.calm_s = if kinetic_j < REST_ENERGY_J && t > 0.1 { self.calm_s + step_s } else { 0.0 };
        let roomy_done =
            !self.landing && self.geometry.is_some() && (t - self.last_lower_s > 1.0 || !self.line.holds());
        // Held, and nothing more to learn: what follows is a slow swing.
        let told = held && t - self.last_figure_s.max(self.last_lower_s) > TOLD_TIME_S;
        if self.calm_s > REST_TIME_S || t >= LONGEST_RUN_S || roomy_done || told {
            self.end = Some(t);
            return true;
        }
        false
    }

    /// The part `i`, of `dt_s`, of a step; the kinetic energy at its start, J.
    fn part(&mut self, i: usize, dt_s: f64) -> f64 {
        let t = self.time_s() + i as f64 * dt_s;
        let d = self.world.dring();

        // The line at this moment.
        let before =
            (self.line.absorber_m(), self.line.grab_slip_m(), self.line.holds(), self.line.anchor_failed);
        let pull = self.line.step(d, self.world.last_dt_s());
        self.watch_line(t, d, &pull, before);
        self.watch_body(t, d);

        if i == 0 && self.step_no.is_multiple_of(STEPS_PER_SAMPLE * self.fineness) {
            self.follow_grab(d, pull.dring_n > 0.0);
            self.sample(t, d);
        }

        // One step of the bodies.
        let potential_j = self.world.potential_j();
        let f = pull.dring_n;
        let step = self.world.step(p(f * pull.toward.x, f * pull.toward.y), dt_s);
        self.watch_contacts(t, &step.touches);

        // Energy at this moment: positions are here, velocities half a step either side, and the step's
        // work at joints and contacts is done as far as here.
        let share = step.before_share;
        let kinetic_j = (1.0 - share) * step.kinetic_before_j + share * step.kinetic_after_j;
        self.kinetic_j = kinetic_j;
        if self.step_no == 0 && i == 0 {
            self.start_kinetic_j = kinetic_j;
        }
        let have = kinetic_j
            + potential_j
            + self.line.energy.elastic_j
            + self.line.energy.spent_j()
            + self.body_j
            + step.roof_j
            - share * step.constraint_work_j;
        let had = self.start_kinetic_j + self.start_potential_j;
        // What follows a strike on the ground is shown, but enters no grade.
        let counts = !self.struck_below();
        if counts {
            self.errors_j.1 = self.errors_j.1.max((have - had).abs());
        }
        // What the roof took and does not give back may only grow.
        self.roof_j = step.roof_j;
        if self.step_no == 0 && i == 0 {
            // Who begins a little in the roof brings that much along.
            self.start_flesh_j = step.flesh_j;
        }
        let rubbed_j = step.roof_j - step.flesh_j + self.start_flesh_j;
        self.flesh_low_j = self.flesh_low_j.max(rubbed_j);
        if counts {
            self.errors_j.0 = self.errors_j.0.max(self.flesh_low_j - rubbed_j);
        }
        // Joints and contacts may only take energy.
        self.body_j -= step.constraint_work_j;
        self.body_low_j = self.body_low_j.max(self.body_j);
        if counts {
            self.errors_j.0 = self.errors_j.0.max(self.body_low_j - self.body_j);
        }
        if core::mem::take(&mut self.figure) {
            self.last_figure_s = t;
        }
        kinetic_j
    }

    fn watch_line(&mut self, t: f64, d: P, pull: &Pull, before: (f64, f64, bool, bool)) {
        let (absorber, slip, held, failed) = before;
        let drop = self.start_dring.y - d.y;
        let taut = pull.dring_n > TAUT_FORCE_N;
        if self.line.is_slack(pull) && self.free_fall_m.is_none() {
            self.slack_drop_m = self.slack_drop_m.max(drop);
            (self.first_taut, self.taut_drop_m) = (None, None);
        } else if self.free_fall_m.is_none() {
            match self.first_taut {
                None => self.first_taut = Some((drop, pull.dring_n)),
                // Back along the rise of the force to where it began, between the last slack step and
                // the first taut one.
                Some((at, n)) if self.taut_drop_m.is_none() => {
                    let rise = pull.dring_n - n;
                    let back = if rise > 0.0 { n * (drop - at) / rise } else { 0.0 };
                    self.taut_drop_m = Some(crate::units::within(at - back, self.slack_drop_m, at));
                }
                Some(_) => {}
            }
        }
        if taut && !self.was_taut {
            self.mark(EventKind::Taut, t);
        }
        self.was_taut = taut;
        if pull.dring_n >= self.weight_n && self.free_fall_m.is_none() {
            // One step may take the line from slack to the whole weight: then the whole step counts.
            let first = self.first_taut.map_or(self.slack_drop_m, |f| f.0.max(self.slack_drop_m));
            self.free_fall_m = Some(self.taut_drop_m.unwrap_or(first));
        }
        // What the line does to somebody who lies on the ground is no part of the stop.
        if !self.struck_below() {
            if pull.dring_n > self.peak.0 {
                self.peak = (pull.dring_n, t);
                self.figure = true;
            }
            self.figure |= pull.anchor_n > self.anchor_peak_n;
            self.anchor_peak_n = self.anchor_peak_n.max(pull.anchor_n);
        }
        self.window_force_n = self.window_force_n.max(pull.dring_n);
        self.window_anchor_n = self.window_anchor_n.max(pull.anchor_n);
        self.rope_stretch_m = self.rope_stretch_m.max(self.line.rope_stretch_m());
        self.figure |= self.line.grab_slip_m() > slip;
        if self.line.absorber_m() > absorber {
            self.figure = true;
            self.mark(EventKind::AbsorberOpens, t);
            if self.line.absorber_spent() {
                self.mark(EventKind::AbsorberSpent, t);
            }
        }
        let moved = self.line.grab_slip_m();
        if moved > slip && moved > 0.3 {
            self.mark(EventKind::GrabRuns, t);
        }
        if moved > 0.0 && moved == slip && pull.dring_n > self.weight_n {
            self.mark(EventKind::GrabLocks, t);
        }
        if self.line.at_end {
            self.mark(EventKind::RopeEnd, t);
        }
        if held && !self.line.holds() {
            let kind = if self.line.anchor_failed && !failed {
                EventKind::AnchorFails
            } else if self.line.rope_parted {
                EventKind::RopeBreaks
            } else if self.line.link_parted {
                EventKind::LinkBreaks
            } else {
                EventKind::OffRope
            };
            self.mark(kind, t);
        }
    }

    fn watch_body(&mut self, t: f64, d: P) {
        if d.y < self.lowest_dring.0 - 1e-6 {
            self.lowest_dring = (d.y, t);
            self.figure = true;
        }
        let Some(g) = &self.geometry else { return };
        let over = self.on_roof && !self.events.iter().any(|e| e.kind == EventKind::OverEave);
        if over && d.y < g.eave.y && d.x > g.eave.x {
            self.mark(EventKind::OverEave, t);
        }
        let Some(g) = &self.geometry else { return };
        let mut gap_now_m = f64::INFINITY;
        for (q, radius) in self.world.low_points() {
            self.lowest_point_m = self.lowest_point_m.min(q.y);
            let gap = q.y - g.surface_below_m(q.x, radius);
            gap_now_m = gap_now_m.min(gap);
            if gap < self.lowest_gap_m - 1e-6 {
                self.lowest_gap_m = gap;
                self.figure = true;
                self.last_lower_s = t;
            }
        }
        // The blow itself is what counts; lying still does not.
        let landed_s = [Thing::Ground, Thing::Obstacle]
            .into_iter()
            .filter_map(|thing| self.impacts.iter().find(|i| i.what == thing))
            .map(|i| t - i.time_s)
            .fold(0.0, f64::max);
        self.world.set_care(self.landing && gap_now_m < LANDING_ZONE_M && landed_s < LANDING_BLOW_S);
        if self.step_no.is_multiple_of(16) {
            self.joint_gap_m = self.joint_gap_m.max(self.world.joint_gap_m());
        }
    }

    fn watch_contacts(&mut self, t: f64, touches: &[Touch]) {
        for touch in touches {
            let i = touch.thing as usize;
            let fresh = t - self.last_touch_s[i] > 0.1;
            self.last_touch_s[i] = t;
            if touch.speed_m_s < TOUCH_SPEED_M_S {
                continue;
            }
            let landing = matches!(touch.thing, Thing::Ground | Thing::Obstacle);
            if !landing && Part::ALL.get(touch.part).is_some_and(|q| q.whips()) {
                continue;
            }
            match self.impacts.iter_mut().find(|q| q.what == touch.thing) {
                Some(q) if touch.speed_m_s > q.speed_m_s => {
                    // A harder blow in the same contact keeps the first moment.
                    if fresh {
                        q.time_s = t;
                    }
                    q.speed_m_s = touch.speed_m_s;
                    self.figure = true;
                }
                Some(_) => {}
                None => {
                    // Boots on the roof before the fall are no blow.
                    if touch.thing == Thing::Roof && self.on_roof && t < 0.15 {
                        continue;
                    }
                    self.figure = true;
                    if landing && self.landed.is_none() {
                        let drop_m = self.start_dring.y - self.world.dring().y;
                        self.landed = Some((drop_m, self.line.grab_slip_m()));
                    }
                    self.impacts.push(Impact { what: touch.thing, speed_m_s: touch.speed_m_s, time_s: t });
                    let kind = match touch.thing {
                        Thing::Ground => EventKind::StrikesGround,
                        Thing::Obstacle => EventKind::StrikesObstacle,
                        Thing::Wall => EventKind::StrikesWall,
                        Thing::Roof => EventKind::StrikesRoof,
                        Thing::Ladder => EventKind::StrikesLadder,
                    };
                    self.mark(kind, t);
                }
            }
        }
    }

    /// Where the grab is: on the line when it is taut; dragged along by lanyard and rope before.
    fn follow_grab(&mut self, d: P, taut: bool) {
        // A lanyard that was never clipped leaves the grab where it is.
        if self.events.iter().any(|e| e.kind == EventKind::NotClipped) {
            return;
        }
        let Some(g) = &self.geometry else { return };
        let below = self.line.below_grab_m();
        let path = if self.line.holds() { taut_path(g.anchor, &g.corners, d) } else { vec![d, d] };
        if taut && self.line.holds() {
            // `below` back along the path from the D-ring.
            let mut left = below;
            for w in path.windows(2).rev() {
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
            force_n: self.window_force_n,
            anchor_n: self.window_anchor_n,
            grab_rope_m: self.line.grab_rope_m(),
            below_grab_m: self.line.below_grab_m(),
            absorber_m: self.line.absorber_m(),
            holds: self.line.holds(),
            on_rope: !(self.line.off_rope || self.line.link_parted),
        });
        self.window_force_n = 0.0;
        self.window_anchor_n = 0.0;
    }

    /// The finished trace of this run alone.
    pub fn finish(mut self) -> Trace {
        let t = self.step_no as f64 * self.dt_s;
        let d = self.world.dring();
        self.follow_grab(d, false);
        self.sample(t, d);
        if self.peak.0 > TAUT_FORCE_N {
            let at = self.peak.1;
            self.mark(EventKind::PeakForce, at);
        }
        if self.lowest_dring.0 < self.start_dring.y - 0.05 {
            let at = self.lowest_dring.1;
            self.mark(EventKind::Lowest, at);
        }
        self.mark(EventKind::End, t);
        self.events.sort_by(|a, b| a.time_s.total_cmp(&b.time_s));
        let total_fall_m = (self.start_dring.y - self.lowest_dring.0).max(0.0);
        let work_in_j = self.start_kinetic_j + (self.start_potential_j - self.world.potential_j()).max(0.0);
        let scale = (self.weight_n * total_fall_m + self.start_kinetic_j).max(RESIDUAL_FLOOR_J);
        let outcome = if !self.line.holds() {
            Outcome::LetGo
        } else if self.struck_below() {
            Outcome::Strikes
        } else {
            Outcome::Stopped
        };
        let grab_slip_m = self.landed.map_or(self.line.grab_slip_m(), |l| l.1);
        let left_roof = !self.on_roof || self.events.iter().any(|e| e.kind == EventKind::OverEave);
        Trace {
            peak_force_n: self.peak.0,
            anchor_peak_n: self.anchor_peak_n,
            // Where the line never bore the weight: as far as it was slack; where it held nothing at all, down
            // to the blow.
            free_fall_m: self
                .free_fall_m
                .unwrap_or_else(|| {
                    let never_held = self.peak.0 < TAUT_FORCE_N || self.line.off_rope;
                    if outcome == Outcome::Stopped || !never_held {
                        self.slack_drop_m
                    } else {
                        self.landed.map_or(total_fall_m, |l| l.0)
                    }
                })
                .min(total_fall_m),
            total_fall_m,
            absorber_extension_m: self.line.absorber_m(),
            rope_stretch_m: self.rope_stretch_m,
            grab_slip_m,
            dead_travel_m: self.line.dead_travel_m().min(grab_slip_m),
            harness_slide_m: self.line.slide_m(),
            lowest_point_m: self.lowest_point_m,
            clearance_margin_m: (outcome == Outcome::Stopped).then_some(self.lowest_gap_m),
            outcome,
            left_roof,
            absorber_spent: self.line.absorber_spent(),
            ledger: Ledger {
                work_in_j,
                kinetic_j: self.kinetic_j,
                line: self.line.energy,
                body_j: self.body_j + self.roof_j,
            },
            energy_residual: self.errors_j.0.max(self.errors_j.1) / scale,
            joint_gap_m: self.joint_gap_m,
            weight_n: self.weight_n,
            neighbours: None,
            samples: self.samples,
            events: self.events,
            impacts: self.impacts,
        }
    }
}
