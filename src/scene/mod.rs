//! What the drawing shows, as plain shapes in metres: no colour, no pixel, no language.
//!
//! A scene comes from the set-up alone (before the slip) or from one moment of a finished trace, so the
//! drawing can never disagree with the grade. Slack rope is drawn as a sagging curve of the right length; it
//! carries no force in the simulation. What has let go is drawn where it went by its length or by free fall,
//! which the simulation no longer follows.

pub mod camera;
pub mod eave;
pub mod figure;
pub mod first;
pub mod front;
pub mod harness;
pub mod hooks;
pub mod house;
pub mod ink;
pub mod labels;
pub mod lens;
pub mod pairs;
pub mod people;
pub mod site;
pub mod worker;

use crate::geometry::body::{Capsule, PARTS, Part, Pose, capsules, dring_on_torso, standing};
use crate::geometry::{Geometry, P, p, path_length, taut_path};
use crate::physics::trace::{EventKind, Sample, Trace};
use crate::scenario::{Scenario, Stance};
use crate::units::G_M_S2;

/// One body part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limb {
    /// Which.
    pub part: Part,
    /// Where.
    pub pose: Pose,
    /// Its shape.
    pub shape: Capsule,
}

/// A curve from `from` to `to` with one control point.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sag {
    /// Start.
    pub from: P,
    /// Control point of a quadratic curve.
    pub via: P,
    /// End.
    pub to: P,
}

/// What has let go.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Gone {
    /// Nothing.
    Nothing,
    /// The anchor, which the rope has dragged so far along its way, m.
    Anchor(f64),
    /// The rope has broken over the eave.
    Rope,
    /// The rope has left the grab, which stays on the lanyard.
    OffRope,
    /// The lanyard, its connector or the harness: the grab stays on the rope.
    Link,
}

/// Everything that moves.
#[derive(Clone, Debug, PartialEq)]
pub struct Scene {
    /// The worker, far limbs first.
    pub limbs: Vec<Limb>,
    /// Rope from the anchor over the edges, straight parts.
    pub rope: Vec<P>,
    /// Rope from the last edge to the grab; or, where rope and grab have parted, its end that hangs.
    pub rope_to_grab: Sag,
    /// Rope below the grab, to its end.
    pub tail: Vec<P>,
    /// The tail's end hangs free (and may show its knot).
    pub tail_end: P,
    /// Lanyard from the grab to the absorber pack: over the roof's edge where it meets it, else one sag.
    pub lanyard: Vec<P>,
    /// Its last part, slack or straight.
    pub lanyard_end: Sag,
    /// The absorber: packed end at the D-ring side, and where the torn part begins.
    pub absorber: (P, P),
    /// Where the pack ends: at the D-ring, or hanging free.
    pub pack_end: P,
    /// Torn length, m.
    pub torn_m: f64,
    /// The grab.
    pub grab: P,
    /// Direction of the rope at the grab, rad from the vertical.
    pub grab_tilt_rad: f64,
    /// Where the anchor is now, and the roof's slope under it, rad.
    pub anchor: (P, f64),
    /// Foot and tip of the ladder, while it is in the plane of the fall.
    pub ladder: Option<(P, P)>,
    /// D-ring.
    pub dring: P,
    /// What has let go.
    pub gone: Gone,
}

/// Order of drawing: far arm and leg behind the body.
const BACK_TO_FRONT: [Part; PARTS] = [
    Part::ThighRight,
    Part::ShinRight,
    Part::Head,
    Part::Pelvis,
    Part::Torso,
    Part::ThighLeft,
    Part::ShinLeft,
    Part::UpperArms,
    Part::Forearms,
];

/// Rope that hangs on over the eave after it parted there, m.
const STUMP_M: f64 = 0.45;

/// A curve between two points for a rope of `length_m`: straight when taut, sagging when slack.
/// Parabola: length = d + 8 s^2 / 3 d.
pub fn sag(from: P, to: P, length_m: f64) -> Sag {
    let d = from.dist(to);
    let slack = (length_m - d).max(0.0);
    let drop = (3.0 * d.max(0.05) * slack / 8.0).sqrt().min(0.5 * length_m);
    Sag { from, via: p((from.x + to.x) / 2.0, (from.y + to.y) / 2.0 - 2.0 * drop), to }
}

impl Sag {
    /// The same, drawn up until it lies on the house instead of in it.
    fn above(mut self, g: &Geometry) -> Sag {
        let flat = self.from.lerp(self.to, 0.5);
        for _ in 0..16 {
            let inside = (1..10).any(|i| {
                let k = f64::from(i) / 10.0;
                let q = self.from.lerp(self.via, k).lerp(self.via.lerp(self.to, k), k);
                q.x > g.ridge.x && g.depth_in_house_m(q) > 0.01
            });
            if !inside {
                break;
            }
            self.via = self.via.lerp(flat, 0.3);
        }
        self
    }
}

fn straight(from: P, to: P) -> Sag {
    Sag { from, via: from.lerp(to, 0.5), to }
}

/// The scene before the slip.
pub fn standing_scene(s: &Scenario, g: &Geometry) -> Scene {
    let pose = standing(g.soles, s.worker.stature_m, &s.stance, s.house.roof_pitch_rad);
    let dring = pose[0].place(dring_on_torso(s.worker.stature_m));
    let now = Sample {
        time_s: 0.0,
        poses: pose.to_vec(),
        ladder: matches!(s.stance, Stance::Ladder { .. }).then_some((g.ladder.foot, g.ladder.tip)),
        dring,
        grab: g.grab,
        force_n: 0.0,
        anchor_n: 0.0,
        grab_rope_m: g.grab_rope_m + s.lifeline.slack_m,
        below_grab_m: s.lanyard.length_m,
        absorber_m: 0.0,
        holds: true,
        on_rope: true,
    };
    build(s, g, &now, None)
}

/// The scene at one moment of a fall, s.
pub fn at(s: &Scenario, g: &Geometry, t: &Trace, time_s: f64) -> Option<Scene> {
    use EventKind as E;
    let lost = [E::AnchorFails, E::RopeBreaks, E::LinkBreaks, E::OffRope]
        .into_iter()
        .filter_map(|k| t.time_of(k).map(|at_s| (k, at_s)))
        .filter(|(_, at_s)| *at_s <= time_s)
        .min_by(|a, b| a.1.total_cmp(&b.1));
    Some(build(s, g, &t.at(time_s)?, lost.map(|(kind, at_s)| (kind, time_s - at_s))))
}

/// The scene of a moment, and what has let go how long ago, s.
fn build(s: &Scenario, g: &Geometry, q: &Sample, lost: Option<(EventKind, f64)>) -> Scene {
    let shapes = capsules(s.worker.mass_kg, s.worker.stature_m);
    let limbs = BACK_TO_FRONT
        .into_iter()
        .filter_map(|part| {
            let pose = *q.poses.get(part as usize)?;
            Some(Limb { part, pose, shape: shapes[part as usize] })
        })
        .collect();
    let clipped = s.lanyard.clipped;
    // The rope's end over the eave, for a grab or a rope that hangs there on its own.
    let over_eave = |below_m: f64| p(g.eave.x + 0.05, (g.eave.y - below_m).max(0.25));
    let roof_m = path_length(&taut_path(g.anchor, &g.corners, over_eave(0.6))) - 0.6;
    let grab = match lost {
        Some((EventKind::LinkBreaks, _)) => over_eave((q.grab_rope_m - roof_m).max(0.3)),
        // Off the rope it is dragged by the lanyard, over the roof and not through it.
        Some((EventKind::OffRope, _)) => worker::out_of_house(g, q.grab, 0.05),
        _ => q.grab,
    };
    let mut gone = Gone::Nothing;
    let mut anchor = g.anchor;
    let (rope, to_grab) = match lost.filter(|_| clipped) {
        Some((EventKind::AnchorFails, _)) => {
            let (way, moved_m) = dragged(g, grab, q.grab_rope_m, q.grab.y);
            gone = Gone::Anchor(moved_m);
            anchor = way[0];
            let last = way[way.len() - 2];
            (way[..way.len() - 1].to_vec(), straight(last, grab))
        }
        Some((EventKind::RopeBreaks, _)) => {
            gone = Gone::Rope;
            let mut rope = taut_path(g.anchor, &g.corners, over_eave(STUMP_M));
            let end = rope.pop().unwrap_or(g.eave);
            let last = rope.last().copied().unwrap_or(g.anchor);
            (rope, sag(last, end, STUMP_M))
        }
        Some((EventKind::OffRope, _)) => {
            gone = Gone::OffRope;
            let mut rope = taut_path(g.anchor, &g.corners, over_eave(1.0));
            rope.pop();
            let last = rope.last().copied().unwrap_or(g.anchor);
            (rope, straight(last, over_eave(1.0)))
        }
        found => {
            if found.is_some() {
                gone = Gone::Link;
            }
            let full = taut_path(g.anchor, &g.corners, grab);
            let (rope, last) = lying(s, g, &full, q.grab_rope_m);
            let used_m = path_length(&rope);
            (rope, sag(last, grab, q.grab_rope_m - used_m))
        }
    };
    let from = if gone == Gone::OffRope || gone == Gone::Rope { to_grab.to } else { grab };
    let left_m = (s.lifeline.length_m - q.grab_rope_m).max(0.0);
    let tail = match (gone, lost) {
        // Below the break the rope falls with the grab that it goes through.
        (Gone::Rope, Some((_, since_s))) => fallen(g, grab, left_m, since_s),
        _ => tail(g, from, left_m),
    };
    let tail_end = tail.last().copied().unwrap_or(from);
    let last = to_grab.from;
    let tilt = if gone == Gone::OffRope { 0.5 } else { libm::atan2(last.x - grab.x, last.y - grab.y) };

    // Absorber pack beside the D-ring, on the line to the grab. Unclipped, it hangs from the grab; where the
    // link parted, its rest hangs there.
    let hangs = !clipped || gone == Gone::Link;
    let below_m = if gone == Gone::Link { 0.35 } else { q.below_grab_m };
    let pack_end = if hangs { p(grab.x + 0.04, grab.y - below_m.max(0.3)) } else { q.dring };
    // It bends over the roof's edge only where the grab lies on the roof.
    let on_roof = grab.x < g.eave.x + 0.02 && grab.y > g.eave.y - 0.02;
    let mut way =
        if hangs || !on_roof { vec![grab, pack_end] } else { taut_path(grab, &g.corners, pack_end) };
    let start = way[way.len() - 2];
    let d = start.dist(pack_end).max(1e-6);
    let pack = 0.2_f64.min(d * 0.5);
    let pack_top = pack_end.lerp(start, pack / d);
    let torn_top = pack_end.lerp(start, ((pack + q.absorber_m) / d).min(0.95));
    way.pop();
    let lanyard_end = sag(start, torn_top, below_m - pack - q.absorber_m - path_length(&way));
    Scene {
        limbs,
        rope,
        rope_to_grab: to_grab.above(g),
        tail,
        tail_end,
        lanyard: way,
        lanyard_end: lanyard_end.above(g),
        absorber: (pack_top, torn_top),
        pack_end,
        torn_m: q.absorber_m,
        grab,
        grab_tilt_rad: tilt,
        anchor: (anchor, slope_at(g, anchor)),
        ladder: q.ladder,
        dring: q.dring,
        gone,
    }
}

/// Slope of the roof under a point, rad: down to the right is negative.
fn slope_at(g: &Geometry, at: P) -> f64 {
    let down = libm::atan2(g.down_slope.y, g.down_slope.x);
    if at.x > g.eave.x + 1e-6 {
        -core::f64::consts::FRAC_PI_2
    } else if at.x < g.ridge.x - 1e-6 {
        -down
    } else if (at.x - g.ridge.x).abs() < 0.02 {
        0.0
    } else {
        down
    }
}

/// The way of a rope whose anchor has let go, from the anchor where it is now to the grab, and how far it was
/// dragged, m: the rope keeps its length, so the anchor has come as far as the grab has fallen.
fn dragged(g: &Geometry, grab: P, rope_m: f64, low_m: f64) -> (Vec<P>, f64) {
    let full = taut_path(g.anchor, &g.corners, grab);
    let moved_m = (path_length(&full) - rope_m).max(0.0);
    let mut left_m = moved_m;
    let mut way = full.clone();
    while way.len() > 2 && left_m >= way[0].dist(way[1]) {
        left_m -= way[0].dist(way[1]);
        way.remove(0);
    }
    let first_m = way[0].dist(way[1]).max(1e-9);
    let most = if way.len() > 2 { 1.0 } else { 0.95 };
    way[0] = way[0].lerp(way[1], (left_m / first_m).min(most));
    // Off the roof it falls like the rest: never above where the rope lets it hang, never into the ground.
    if way[0].x > g.eave.x + 0.01 && low_m < g.eave.y {
        way[0].y = way[0].y.max(g.ground_y_m(way[0].x) + 0.05);
    }
    (way, moved_m)
}

/// A rope that has parted above the grab and falls with it: the piece above comes down to the grab in free fall,
/// and lies with the tail on what is below.
fn fallen(g: &Geometry, grab: P, left_m: f64, since_s: f64) -> Vec<P> {
    let drop_m = 0.5 * G_M_S2 * since_s * since_s;
    let top = p(grab.x + 0.04, (g.eave.y - STUMP_M - drop_m).max(grab.y + 0.02));
    let mut out = vec![top];
    out.extend(tail(g, grab, left_m));
    out
}

/// The points of the rope before its last stretch to the grab, and the last of them. Slack above a worker
/// on the roof lies on the shingles, with its bight down the slope.
fn lying(s: &Scenario, g: &Geometry, full: &[P], rope_m: f64) -> (Vec<P>, P) {
    let mut rope = full[..full.len() - 1].to_vec();
    let (last, end) = (full[full.len() - 2], full[full.len() - 1]);
    let used_m = path_length(&rope);
    let left_m = rope_m - used_m;
    let w = p(last.x - end.x, last.y - end.y);
    let slack = left_m > end.dist(last) + 0.02;
    let on_slope = last.x < g.eave.x && end.x < g.eave.x && end.y > g.eave.y;
    if slack && on_slope && matches!(s.stance, Stance::Roof { .. }) {
        // |w + t d| = left - t, down the slope by t.
        let d = g.down_slope;
        let t =
            (left_m * left_m - w.x * w.x - w.y * w.y) / (2.0 * (left_m + w.x * d.x + w.y * d.y)).max(1e-9);
        let t = t.clamp(0.0, last.dist(g.eave));
        rope.push(p(last.x + t * d.x, last.y + t * d.y));
    }
    let last = rope.last().copied().unwrap_or(last);
    (rope, last)
}

/// Rope below the grab: down to the roof and over the eave, then plumb to the ground or the deck, beside the
/// ladder.
fn tail(g: &Geometry, from: P, length_m: f64) -> Vec<P> {
    let mut out = vec![from];
    let mut left = length_m;
    let mut go = |out: &mut Vec<P>, to: P| -> bool {
        let Some(&at) = out.last() else { return false };
        let l = at.dist(to);
        if l <= 1e-9 {
            return left > 0.0;
        }
        let k = (left / l).min(1.0);
        out.push(at.lerp(to, k));
        left -= l * k;
        left > 1e-6
    };
    let on_roof = from.x < g.eave.x && from.y > g.eave.y;
    if on_roof {
        let k = (g.eave.x - from.x) / (g.eave.x - g.ridge.x);
        let roof_y = g.eave.y + (g.ridge.y - g.eave.y) * k;
        if !go(&mut out, p(from.x, roof_y.min(from.y))) || !go(&mut out, g.eave) {
            return out;
        }
    }
    let x = out.last().map_or(from.x, |q| q.x);
    let x = if on_roof { x + 0.03 } else { x };
    go(&mut out, p(x, g.surface_below_m(x, 0.02) + 0.03));
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_slack_rope_is_drawn_at_its_length() {
        let s = sag(p(0.0, 0.0), p(2.0, 0.0), 2.2);
        // Length of the quadratic curve by fine steps.
        let at = |t: f64| {
            let a = s.from.lerp(s.via, t);
            a.lerp(s.via.lerp(s.to, t), t)
        };
        let l: f64 = (0..1000).map(|i| at(f64::from(i) / 1e3).dist(at(f64::from(i + 1) / 1e3))).sum();
        assert!((l - 2.2).abs() < 0.03, "{l}");
    }

    #[test]
    fn slack_above_the_grab_lies_on_the_shingles_at_its_length() {
        let mut s = Scenario { stance: Stance::Roof { from_eave_m: 2.5 }, ..Scenario::default() };
        s.lifeline.slack_m = 0.8;
        let g = Geometry::of(&s).expect("stands");
        let q = standing_scene(&s, &g);
        let bight = *q.rope.last().expect("lies");
        // On the line from ridge to eave, to a tenth of a millimetre.
        assert!(turned(g.ridge, g.eave, bight).abs() < 1e-4, "{bight:?}");
        let long_m = path_length(&q.rope) + bight.dist(q.grab);
        assert!((long_m - g.grab_rope_m - 0.8).abs() < 1e-6, "{long_m}");
    }

    fn turned(a: P, b: P, c: P) -> f64 {
        (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)
    }

    #[test]
    fn the_tail_does_not_hang_through_the_deck() {
        let s = Scenario {
            stance: Stance::Roof { from_eave_m: 1.2 },
            house: crate::scenario::House { below: crate::scenario::ORDINARY_OBSTACLE, ..Default::default() },
            ..Default::default()
        };
        let g = Geometry::of(&s).expect("stands");
        assert!(standing_scene(&s, &g).tail_end.y >= 1.1);
    }

    #[test]
    fn an_unclipped_lanyard_stays_with_the_grab_while_the_worker_falls() {
        let mut s = Scenario::default();
        s.lanyard.clipped = false;
        let g = Geometry::of(&s).expect("stands");
        let t = crate::physics::simulate(&s.set_up().expect("possible"));
        let last = at(&s, &g, &t, t.duration_s()).expect("ends");
        assert!(last.grab.dist(g.grab) < 1e-9 && last.gone == Gone::Nothing);
        assert!(last.pack_end.dist(g.grab) <= s.lanyard.length_m + 0.01 && last.dring.y < g.dring.y - 2.0);
    }

    #[test]
    fn the_tail_is_no_longer_than_the_rope_left() {
        let s = Scenario::default();
        let g = Geometry::of(&s).expect("stands");
        let q = standing_scene(&s, &g);
        let left = s.lifeline.length_m - g.grab_rope_m;
        assert!(path_length(&q.tail) <= left + 1e-9);
    }
}
