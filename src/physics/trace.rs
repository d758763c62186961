//! A finished fall: samples, events, peaks, energy residual, and what it looked like at any time.
//!
//! A trace is all that the grade, the player and the headless program see of physics. It can be
//! hashed: the same scenario gives the same bits natively and in a browser.

use super::line::LineEnergy;
use crate::geometry::P;
use crate::geometry::body::Pose;
use serde::{Deserialize, Serialize};

/// What a body can strike.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Thing {
    /// The ground.
    Ground,
    /// The obstacle below.
    Obstacle,
    /// The wall.
    Wall,
    /// The roof, its eave or its soffit.
    Roof,
    /// The ladder.
    Ladder,
}

/// What happened at a moment of the fall.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum EventKind {
    /// The worker loses footing.
    Slip,
    /// The ladder slides out.
    LadderSlides,
    /// The ladder goes over.
    LadderTips,
    /// The worker goes over the eave.
    OverEave,
    /// The line goes taut.
    Taut,
    /// The grab locks on the rope.
    GrabLocks,
    /// The grab slides on without locking.
    GrabRuns,
    /// The absorber begins to tear.
    AbsorberOpens,
    /// The absorber has torn to its end.
    AbsorberSpent,
    /// The grab meets the knot at the rope's end.
    RopeEnd,
    /// Largest force at the D-ring.
    PeakForce,
    /// Lowest point of the D-ring.
    Lowest,
    /// Strikes the wall.
    StrikesWall,
    /// Strikes the ladder.
    StrikesLadder,
    /// Strikes the roof or its eave.
    StrikesRoof,
    /// Strikes the obstacle.
    StrikesObstacle,
    /// Strikes the ground.
    StrikesGround,
    /// The anchor gives way.
    AnchorFails,
    /// The rope leaves the grab.
    OffRope,
    /// The rope breaks.
    RopeBreaks,
    /// The lanyard, its connector or the harness lets go.
    LinkBreaks,
    /// The lanyard was never clipped to the D-ring.
    NotClipped,
    /// The run ends: at rest, or held in a slow swing with nothing more to learn.
    End,
}

/// An event and its time.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Event {
    /// What.
    pub kind: EventKind,
    /// When, s after the slip.
    pub time_s: f64,
}

/// The hardest blow against one thing.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Impact {
    /// What was struck.
    pub what: Thing,
    /// Approach speed along the normal before the contact, m/s.
    pub speed_m_s: f64,
    /// When, s.
    pub time_s: f64,
}

/// How a fall ended, in the three answers a person predicts from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Outcome {
    /// Stopped before striking anything below: in the air, against the wall, or still on the roof.
    Stopped,
    /// Struck the ground or the obstacle, still on the line.
    Strikes,
    /// The rope left the grab or the anchor gave way.
    LetGo,
}

/// State at one moment.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Sample {
    /// s after the slip.
    pub time_s: f64,
    /// Poses of all bodies.
    pub poses: Vec<Pose>,
    /// Foot and tip of the ladder, while it is in the plane of the fall.
    pub ladder: Option<(P, P)>,
    /// D-ring.
    pub dring: P,
    /// Grab.
    pub grab: P,
    /// Largest force at the D-ring since the last sample, N.
    pub force_n: f64,
    /// Largest anchor load since the last sample, N.
    pub anchor_n: f64,
    /// Rope between anchor and grab, m.
    pub grab_rope_m: f64,
    /// Lanyard, torn absorber and harness slide between grab and D-ring, m.
    pub below_grab_m: f64,
    /// Absorber extension, m.
    pub absorber_m: f64,
    /// The line still joins worker and house.
    pub holds: bool,
    /// The rope is still in the grab.
    pub on_rope: bool,
}

/// Where the energy went, J, at the end of the run.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Ledger {
    /// Potential energy given up and kinetic energy at the start.
    pub work_in_j: f64,
    /// Kinetic energy left.
    pub kinetic_j: f64,
    /// The line's part.
    pub line: LineEnergy,
    /// Spent in joints and contacts.
    pub body_j: f64,
}

/// The figures that a set-up is judged by, SI.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Judged {
    /// Largest force at the D-ring.
    pub peak_force_n: f64,
    /// Free fall.
    pub free_fall_m: f64,
    /// Room left; as [`Trace::clearance_margin_m`].
    pub room_m: Option<f64>,
    /// Absorber, grab and harness together.
    pub stop_m: f64,
}

/// They are told when forces differ by more than this share ...
const TOLD_SHARE: f64 = 0.03;
/// ... or rooms by more than this, m.
const TOLD_M: f64 = 0.05;

/// Least and largest of a figure.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Span {
    /// Least.
    pub low: f64,
    /// Largest.
    pub high: f64,
}

impl Span {
    pub(super) fn of(values: impl Iterator<Item = f64>) -> Option<Span> {
        values.fold(None, |s: Option<Span>, x| {
            Some(s.map_or(Span { low: x, high: x }, |s| Span { low: s.low.min(x), high: s.high.max(x) }))
        })
    }

    /// How far apart they are.
    pub fn width(self) -> f64 {
        self.high - self.low
    }
}

/// What a fall and its neighbours say together.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Neighbours {
    /// How many falls, the fall itself among them.
    pub count: usize,
    /// Of these, how many ended as the one that is shown.
    pub alike: usize,
    /// Largest force at the D-ring, N.
    pub peak_force_n: Span,
    /// Free fall, m.
    pub free_fall_m: Span,
    /// Room left, m, of those that stopped.
    pub room_m: Option<Span>,
    /// Length of the stop (absorber, grab and harness), m.
    pub stop_m: Span,
}

impl Neighbours {
    /// Whether they are worth telling beside the fall: they differ by more than a person would round off.
    pub fn differ(&self) -> bool {
        self.alike < self.count
            || self.peak_force_n.width() > TOLD_SHARE * self.peak_force_n.high
            || self.room_m.is_some_and(|m| m.width() > TOLD_M)
    }
}

/// A finished fall.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Trace {
    /// 240 samples a second, from the slip to the end.
    pub samples: Vec<Sample>,
    /// In order of time.
    pub events: Vec<Event>,
    /// Hardest blow against each thing struck.
    pub impacts: Vec<Impact>,
    /// Largest force at the D-ring, N.
    pub peak_force_n: f64,
    /// Largest load on the anchor, N.
    pub anchor_peak_n: f64,
    /// Drop of the D-ring until the line went taut for the arrest, m.
    pub free_fall_m: f64,
    /// Largest drop of the D-ring, m.
    pub total_fall_m: f64,
    /// Absorber extension, m.
    pub absorber_extension_m: f64,
    /// Largest stretch of the rope, m.
    pub rope_stretch_m: f64,
    /// Slip of the grab along the rope, m.
    pub grab_slip_m: f64,
    /// How much of that was before the grab bit, m: part of the free fall, not of the stop.
    pub dead_travel_m: f64,
    /// Slide of the D-ring on the harness, m.
    pub harness_slide_m: f64,
    /// Lowest point any part of the body reached, m above the ground.
    pub lowest_point_m: f64,
    /// Room left between the body and what lies below, m; negative is how much was missing.
    /// `None` when nothing held the worker's weight: no amount of room would have been enough.
    pub clearance_margin_m: Option<f64>,
    /// How it ended.
    pub outcome: Outcome,
    /// The worker left the roof, or had no roof to stay on.
    pub left_roof: bool,
    /// The absorber tore to its end.
    pub absorber_spent: bool,
    /// Energy balance.
    pub ledger: Ledger,
    /// Largest error of the energy balance as a share of the work in.
    pub energy_residual: f64,
    /// Largest gap in any joint, m.
    pub joint_gap_m: f64,
    /// Body weight, N.
    pub weight_n: f64,
    /// What falls with differences that nobody could measure say with it, from a roof.
    pub neighbours: Option<Neighbours>,
}

impl Trace {
    /// Length of the run, s.
    pub fn duration_s(&self) -> f64 {
        self.samples.last().map_or(0.0, |s| s.time_s)
    }

    /// Whether the run passes its own checks of energy and joints and may be graded.
    pub fn is_sound(&self) -> bool {
        self.energy_residual <= super::constants::RESIDUAL_LIMIT
            && self.joint_gap_m <= super::constants::OPEN_JOINT_M
    }

    /// Length of the stop: absorber, grab once it bites, and harness, m.
    pub fn stop_m(&self) -> f64 {
        self.absorber_extension_m + self.braked_slip_m() + self.harness_slide_m
    }

    /// Slip of the grab once it bites, m.
    pub fn braked_slip_m(&self) -> f64 {
        self.grab_slip_m - self.dead_travel_m
    }

    /// The figures that a set-up is judged by: of a fall and its neighbours, the worse end of each.
    pub fn judged(&self) -> Judged {
        let own_m = self.stop_m();
        let n = self.neighbours.as_ref();
        Judged {
            peak_force_n: n.map_or(self.peak_force_n, |n| self.peak_force_n.max(n.peak_force_n.high)),
            free_fall_m: n.map_or(self.free_fall_m, |n| self.free_fall_m.max(n.free_fall_m.high)),
            room_m: match (self.clearance_margin_m, n.and_then(|n| n.room_m)) {
                (Some(a), Some(b)) => Some(a.min(b.low)),
                (a, _) => a,
            },
            stop_m: n.map_or(own_m, |n| own_m.max(n.stop_m.high)),
        }
    }

    /// Time of the first event of a kind, s.
    pub fn time_of(&self, kind: EventKind) -> Option<f64> {
        self.events.iter().find(|e| e.kind == kind).map(|e| e.time_s)
    }

    /// State at `time_s`, clamped to the run and interpolated between samples.
    pub fn at(&self, time_s: f64) -> Option<Sample> {
        let i = self.samples.partition_point(|s| s.time_s <= time_s);
        if i == 0 {
            return self.samples.first().cloned();
        }
        let Some(b) = self.samples.get(i) else { return self.samples.last().cloned() };
        let a = &self.samples[i - 1];
        let k = (time_s - a.time_s) / (b.time_s - a.time_s);
        let mix = |x: f64, y: f64| x + (y - x) * k;
        Some(Sample {
            time_s,
            poses: a
                .poses
                .iter()
                .zip(&b.poses)
                .map(|(p, q)| {
                    // The short way round.
                    let mut turn = q.angle_rad - p.angle_rad;
                    if turn > core::f64::consts::PI {
                        turn -= core::f64::consts::TAU;
                    } else if turn < -core::f64::consts::PI {
                        turn += core::f64::consts::TAU;
                    }
                    Pose { at: p.at.lerp(q.at, k), angle_rad: p.angle_rad + turn * k }
                })
                .collect(),
            ladder: a.ladder.zip(b.ladder).map(|(p, q)| (p.0.lerp(q.0, k), p.1.lerp(q.1, k))),
            dring: a.dring.lerp(b.dring, k),
            grab: a.grab.lerp(b.grab, k),
            force_n: mix(a.force_n, b.force_n),
            anchor_n: mix(a.anchor_n, b.anchor_n),
            grab_rope_m: mix(a.grab_rope_m, b.grab_rope_m),
            below_grab_m: mix(a.below_grab_m, b.below_grab_m),
            absorber_m: mix(a.absorber_m, b.absorber_m),
            holds: a.holds,
            on_rope: a.on_rope,
        })
    }

    /// FNV-1a over the bits of every sample and figure: equal hashes mean equal falls.
    pub fn hash(&self) -> u64 {
        let bytes = postcard::to_allocvec(self).unwrap_or_default();
        bytes
            .iter()
            .fold(0xcbf2_9ce4_8422_2325, |h, b| (h ^ u64::from(*b)).wrapping_mul(0x0000_0100_0000_01b3))
    }
}
