//! What the drawing shows, as plain shapes in metres: no colour, no pixel, no language.
//!
//! A scene comes from the set-up alone (before the slip) or from one sample of a finished trace,
//! so the drawing can never disagree with the grade. Slack rope is drawn as a sagging curve of the
//! right length; it carries no force in the simulation.

pub mod camera;
pub mod worker;

use crate::geometry::body::{Capsule, PARTS, Part, Pose, capsules, dring_on_torso, standing};
use crate::geometry::{Geometry, P, p, path_length, taut_path};
use crate::physics::trace::Sample;
use crate::scenario::{Scenario, Stance};

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

/// Everything that moves.
#[derive(Clone, Debug, PartialEq)]
pub struct Scene {
    /// The worker, far limbs first.
    pub limbs: Vec<Limb>,
    /// Rope from the anchor over the edges, straight parts.
    pub rope: Vec<P>,
    /// Rope from the last edge to the grab.
    pub rope_to_grab: Sag,
    /// Rope below the grab, to its end.
    pub tail: Vec<P>,
    /// The tail's end hangs free (and may show its knot).
    pub tail_end: P,
    /// Lanyard from grab to absorber pack.
    pub lanyard: Sag,
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
    /// Foot and tip of the ladder, while it is in the plane of the fall.
    pub ladder: Option<(P, P)>,
    /// D-ring.
    pub dring: P,
    /// Rope still fast to the anchor.
    pub anchored: bool,
    /// Rope still in the grab.
    pub on_rope: bool,
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

/// A curve between two points for a rope of `length_m`: straight when taut, sagging when slack.
/// Parabola: length = d + 8 s^2 / 3 d.
pub fn sag(from: P, to: P, length_m: f64) -> Sag {
    let d = from.dist(to);
    let slack = (length_m - d).max(0.0);
    let drop = (3.0 * d.max(0.05) * slack / 8.0).sqrt().min(0.5 * length_m);
    Sag { from, via: p((from.x + to.x) / 2.0, (from.y + to.y) / 2.0 - 2.0 * drop), to }
}

/// The scene before the slip.
pub fn standing_scene(s: &Scenario, g: &Geometry) -> Scene {
    let pose = standing(g.soles, s.worker.stature_m, &s.stance, s.house.roof_pitch_rad);
    let dring = pose[0].place(dring_on_torso(s.worker.stature_m));
    build(
        s,
        g,
        &Sample {
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
        },
    )
}

/// The scene at one moment of a fall.
pub fn build(s: &Scenario, g: &Geometry, q: &Sample) -> Scene {
    let shapes = capsules(s.worker.mass_kg, s.worker.stature_m);
    let limbs = BACK_TO_FRONT
        .into_iter()
        .filter_map(|part| {
            let pose = *q.poses.get(part as usize)?;
            Some(Limb { part, pose, shape: shapes[part as usize] })
        })
        .collect();
    let anchored = q.holds || !q.on_rope;
    let at =
        if q.on_rope || !s.lanyard.clipped { q.grab } else { p(g.eave.x + 0.05, (g.eave.y - 1.0).max(0.2)) };
    let full = taut_path(g.anchor, &g.corners, at);
    let (rope, last) = if anchored {
        lying(s, g, &full, q.grab_rope_m)
    } else {
        // The anchor has let go: the rope trails from the grab.
        (vec![], p(at.x - 0.25, at.y + 0.9))
    };
    let used: f64 = if anchored { path_length(&rope) } else { 0.0 };
    let rope_to_grab = if anchored { sag(last, at, q.grab_rope_m - used) } else { sag(last, at, 1.2) };
    let left_m = (s.lifeline.length_m - q.grab_rope_m).max(0.0);
    let tail = tail(s, g, at, left_m);
    let tail_end = tail.last().copied().unwrap_or(at);
    let tilt = libm::atan2(last.x - at.x, last.y - at.y);

    // Absorber pack beside the D-ring, on the line to the grab.
    // Unclipped, it hangs from the grab.
    let pack_end =
        if s.lanyard.clipped { q.dring } else { p(q.grab.x + 0.04, q.grab.y - s.lanyard.length_m) };
    let d = q.grab.dist(pack_end).max(1e-6);
    let pack = 0.2_f64.min(d * 0.5);
    let pack_top = pack_end.lerp(q.grab, pack / d);
    let torn_top = pack_end.lerp(q.grab, ((pack + q.absorber_m) / d).min(0.95));
    let lanyard = sag(q.grab, torn_top, q.below_grab_m - pack - q.absorber_m);
    Scene {
        limbs,
        rope,
        rope_to_grab,
        tail,
        tail_end,
        lanyard,
        absorber: (pack_top, torn_top),
        pack_end,
        torn_m: q.absorber_m,
        grab: q.grab,
        grab_tilt_rad: tilt,
        ladder: q.ladder,
        dring: q.dring,
        anchored,
        on_rope: q.on_rope,
    }
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

/// Rope below the grab: down to the roof or the ladder's rungs, over the eave, to the ground.
fn tail(s: &Scenario, g: &Geometry, from: P, length_m: f64) -> Vec<P> {
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
    // On a ladder the free end hangs down along the rungs.
    if matches!(s.stance, Stance::Ladder { .. }) && x < g.ladder.foot.x {
        let y = out.last().map_or(from.y, |q| q.y);
        let rung_y = if x > g.ladder.support.x {
            let t = (g.ladder.foot.x - x) / (g.ladder.foot.x - g.ladder.support.x);
            (g.ladder.foot.y + (g.ladder.support.y - g.ladder.foot.y) * t).min(y)
        } else {
            y
        };
        if rung_y < y - 0.05 && !go(&mut out, p(x, rung_y)) {
            return out;
        }
        go(&mut out, p(g.ladder.foot.x + 0.03, g.ladder.foot.y + 0.03));
    } else {
        go(&mut out, p(x, g.surface_below_m(x, 0.02) + 0.03));
    }
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
        let last = build(&s, &g, &t.at(t.duration_s()).expect("ends"));
        assert!(last.grab.dist(g.grab) < 1e-9 && last.anchored);
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
