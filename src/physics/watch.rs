//! What is noted along a run: events, blows, and every figure that a fall is judged by.

use super::constants::{BOOTS_S, LEANS_M, LOWER_M, RUNS_M, SAME_BLOW_S, TAUT_FORCE_N, TOUCH_SPEED_M_S};
use super::line::{Line, Pull};
use super::trace::{Event, EventKind, Impact, Thing};
use super::world::{Touch, World};
use crate::geometry::body::Part;
use crate::geometry::{Geometry, P};

/// The line's state before a step, as far as it is compared.
pub(super) struct LineBefore {
    absorber_m: f64,
    grab_slip_m: f64,
    holds: bool,
    anchor_failed: bool,
}

impl LineBefore {
    pub(super) fn of(line: &Line) -> LineBefore {
        LineBefore {
            absorber_m: line.absorber_m(),
            grab_slip_m: line.grab_slip_m(),
            holds: line.holds(),
            anchor_failed: line.anchor_failed,
        }
    }
}

/// A largest or lowest value and when it was, s.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Extreme {
    pub(super) value: f64,
    pub(super) at_s: f64,
}

/// Where the line first bore something since it was last slack.
#[derive(Clone, Copy, Debug)]
struct FirstTaut {
    drop_m: f64,
    force_n: f64,
}

/// The D-ring's drop and the grab's slip at the first blow below: what follows is a body folding up.
#[derive(Clone, Copy, Debug)]
pub(super) struct Landed {
    pub(super) drop_m: f64,
    pub(super) grab_slip_m: f64,
}

/// What a run has noted so far.
pub(super) struct Watch {
    pub(super) start_dring: P,
    pub(super) on_roof: bool,
    pub(super) weight_n: f64,
    pub(super) events: Vec<Event>,
    pub(super) impacts: Vec<Impact>,
    /// Largest force at the D-ring, N.
    pub(super) peak_n: Extreme,
    pub(super) anchor_peak_n: f64,
    /// Deepest drop on a slack line, m.
    pub(super) slack_drop_m: f64,
    pub(super) free_fall_m: Option<f64>,
    pub(super) landed: Option<Landed>,
    /// Lowest D-ring, m.
    pub(super) lowest_dring_m: Extreme,
    pub(super) lowest_point_m: f64,
    pub(super) lowest_gap_m: f64,
    pub(super) last_lower_s: f64,
    pub(super) rope_stretch_m: f64,
    /// When the last figure was taken, s.
    pub(super) last_figure_s: f64,
    first_taut: Option<FirstTaut>,
    /// Drop at which the line came taut, between two steps, m.
    taut_drop_m: Option<f64>,
    was_taut: bool,
    last_touch_s: [f64; 5],
}

impl Watch {
    pub(super) fn new(start_dring: P, on_roof: bool, weight_n: f64) -> Watch {
        Watch {
            start_dring,
            on_roof,
            weight_n,
            events: vec![Event { kind: EventKind::Slip, time_s: 0.0 }],
            impacts: Vec::new(),
            peak_n: Extreme::default(),
            anchor_peak_n: 0.0,
            slack_drop_m: 0.0,
            free_fall_m: None,
            landed: None,
            lowest_dring_m: Extreme { value: start_dring.y, at_s: 0.0 },
            lowest_point_m: f64::INFINITY,
            lowest_gap_m: f64::INFINITY,
            last_lower_s: 0.0,
            rope_stretch_m: 0.0,
            last_figure_s: 0.0,
            first_taut: None,
            taut_drop_m: None,
            was_taut: false,
            last_touch_s: [-1.0; 5],
        }
    }

    pub(super) fn has(&self, kind: EventKind) -> bool {
        self.events.iter().any(|e| e.kind == kind)
    }

    /// Notes the first of its kind.
    pub(super) fn mark(&mut self, kind: EventKind, time_s: f64) {
        if !self.has(kind) {
            self.events.push(Event { kind, time_s });
        }
    }

    pub(super) fn struck_below(&self) -> bool {
        self.impacts.iter().any(|i| matches!(i.what, Thing::Ground | Thing::Obstacle))
    }

    /// The line after a step that ended at `t`, with the D-ring at `d`.
    pub(super) fn line(&mut self, t: f64, d: P, pull: &Pull, line: &Line, before: &LineBefore) {
        self.free_fall(d, pull, line);
        if pull.dring_n > TAUT_FORCE_N && !self.was_taut {
            self.mark(EventKind::Taut, t);
        }
        self.was_taut = pull.dring_n > TAUT_FORCE_N;
        // What the line does to somebody who lies on the ground is no part of the stop.
        if !self.struck_below() {
            if pull.dring_n > self.peak_n.value {
                self.peak_n = Extreme { value: pull.dring_n, at_s: t };
                self.last_figure_s = t;
            }
            if pull.anchor_n > self.anchor_peak_n {
                self.anchor_peak_n = pull.anchor_n;
                self.last_figure_s = t;
            }
        }
        self.rope_stretch_m = self.rope_stretch_m.max(line.rope_stretch_m());
        let slip = line.grab_slip_m();
        if slip > before.grab_slip_m || line.absorber_m() > before.absorber_m {
            self.last_figure_s = t;
        }
        if line.absorber_m() > before.absorber_m {
            self.mark(EventKind::AbsorberOpens, t);
            if line.absorber_spent() {
                self.mark(EventKind::AbsorberSpent, t);
            }
        }
        if slip > before.grab_slip_m && slip > RUNS_M {
            self.mark(EventKind::GrabRuns, t);
        }
        if slip > 0.0 && slip == before.grab_slip_m && pull.dring_n > self.weight_n {
            self.mark(EventKind::GrabLocks, t);
        }
        if line.at_end {
            self.mark(EventKind::RopeEnd, t);
        }
        if before.holds && !line.holds() {
            let kind = if line.anchor_failed && !before.anchor_failed {
                EventKind::AnchorFails
            } else if line.rope_parted {
                EventKind::RopeBreaks
            } else if line.link_parted {
                EventKind::LinkBreaks
            } else {
                EventKind::OffRope
            };
            self.mark(kind, t);
        }
    }

    /// Free fall ends where the line comes to bear the weight; it is told between two steps.
    fn free_fall(&mut self, d: P, pull: &Pull, line: &Line) {
        if self.free_fall_m.is_some() {
            return;
        }
        let drop_m = self.start_dring.y - d.y;
        if line.is_slack(pull) {
            self.slack_drop_m = self.slack_drop_m.max(drop_m);
            (self.first_taut, self.taut_drop_m) = (None, None);
        } else {
            match self.first_taut {
                None => self.first_taut = Some(FirstTaut { drop_m, force_n: pull.dring_n }),
                // Back along the rise of the force to where it began, between the last slack step and
                // the first taut one.
                Some(first) if self.taut_drop_m.is_none() => {
                    let rise = pull.dring_n - first.force_n;
                    let back = if rise > 0.0 { first.force_n * (drop_m - first.drop_m) / rise } else { 0.0 };
                    self.taut_drop_m =
                        Some(crate::units::within(first.drop_m - back, self.slack_drop_m, first.drop_m));
                }
                Some(_) => {}
            }
        }
        if pull.dring_n >= self.weight_n {
            // One step may take the line from slack to the whole weight: then the whole step counts.
            let first = self.first_taut.map_or(self.slack_drop_m, |f| f.drop_m.max(self.slack_drop_m));
            self.free_fall_m = Some(self.taut_drop_m.unwrap_or(first));
        }
    }

    /// The body at `t`, with the D-ring at `d`.
    pub(super) fn body(&mut self, t: f64, d: P, world: &World, g: Option<&Geometry>) {
        if d.y < self.lowest_dring_m.value - LOWER_M {
            self.lowest_dring_m = Extreme { value: d.y, at_s: t };
            self.last_figure_s = t;
        }
        let Some(g) = g else { return };
        if self.on_roof && d.y < g.eave.y && d.x > g.eave.x {
            self.mark(EventKind::OverEave, t);
        }
        for (q, radius) in world.low_points() {
            self.lowest_point_m = self.lowest_point_m.min(q.y);
            // Who leans on the side of what is below is not over it.
            let gap = q.y - g.surface_below_m(q.x, (radius - LEANS_M).max(0.0));
            if gap < self.lowest_gap_m - LOWER_M {
                self.lowest_gap_m = gap;
                self.last_figure_s = t;
                self.last_lower_s = t;
            }
        }
    }

    /// Contacts of a step that began at `t`; `dring` is the D-ring after it.
    pub(super) fn contacts(&mut self, t: f64, touches: &[Touch], dring: P, grab_slip_m: f64) {
        for touch in touches {
            let i = touch.thing as usize;
            let fresh = t - self.last_touch_s[i] > SAME_BLOW_S;
            self.last_touch_s[i] = t;
            let landing = matches!(touch.thing, Thing::Ground | Thing::Obstacle);
            let whips = !landing && Part::ALL.get(touch.part).is_some_and(|q| q.whips());
            if touch.speed_m_s < TOUCH_SPEED_M_S || whips {
                continue;
            }
            match self.impacts.iter_mut().find(|q| q.what == touch.thing) {
                Some(q) if touch.speed_m_s > q.speed_m_s => {
                    // A harder blow in the same contact keeps the first moment.
                    if fresh {
                        q.time_s = t;
                    }
                    q.speed_m_s = touch.speed_m_s;
                    self.last_figure_s = t;
                }
                Some(_) => {}
                // Boots on the roof before the fall are no blow.
                None if touch.thing == Thing::Roof && self.on_roof && t < BOOTS_S => {}
                None => {
                    self.last_figure_s = t;
                    if landing && self.landed.is_none() {
                        self.landed = Some(Landed { drop_m: self.start_dring.y - dring.y, grab_slip_m });
                    }
                    self.impacts.push(Impact { what: touch.thing, speed_m_s: touch.speed_m_s, time_s: t });
                    self.mark(strikes(touch.thing), t);
                }
            }
        }
    }
}

/// The event of a first blow.
fn strikes(thing: Thing) -> EventKind {
    match thing {
        Thing::Ground => EventKind::StrikesGround,
        Thing::Obstacle => EventKind::StrikesObstacle,
        Thing::Wall => EventKind::StrikesWall,
        Thing::Roof => EventKind::StrikesRoof,
        Thing::Ladder => EventKind::StrikesLadder,
    }
}
