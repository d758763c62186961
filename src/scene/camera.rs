//! Which part of the plane is shown: a function of fall and time, so that scrubbing back shows the same.
//!
//! Four frames: the whole house; the work (worker, eave and grab, and the ground where it fits without making
//! the worker small); the fall, which begins as the work, follows the D-ring within half a second, and never
//! lets go of what is looked at: the body, the grab, and ground or deck once it is near; and rest, where the
//! fall's frame ends.

use super::house::wire_is_drawn;
use super::ink::cm;
use crate::geometry::{Geometry, P, p};
use crate::physics::trace::{Sample, Trace};
use crate::scenario::{Scenario, Stance};

/// A part of the plane, m.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Frame {
    /// Left edge.
    pub left_m: f64,
    /// Lower edge.
    pub bottom_m: f64,
    /// Right edge.
    pub right_m: f64,
    /// Upper edge.
    pub top_m: f64,
}

/// Smallest height of a frame on a falling worker, m: a worker of 1.75 m takes half of it.
const CLOSE_M: f64 = 3.4;
/// A grab further than this from the ring is no longer held in the frame, m.
const LEFT_BEHIND_M: f64 = 2.6;
/// Room round what is held in the frame, m.
const ROUND_M: f64 = 0.25;
/// The frame is the mean of what it wants to be this long before and after, s.
const SMOOTH_S: f64 = 0.3;
/// From the whole house to the worker, s.
const COME_NEAR_S: f64 = 0.6;
/// Ground or deck nearer than this under the body comes into the frame, m ...
const NEAR_GROUND_M: f64 = 1.5;
/// ... wholly once it is nearer by this, m.
const COMES_IN_M: f64 = 0.75;

impl Frame {
    /// The least that holds both.
    pub fn with(self, o: Frame) -> Frame {
        Frame {
            left_m: self.left_m.min(o.left_m),
            bottom_m: self.bottom_m.min(o.bottom_m),
            right_m: self.right_m.max(o.right_m),
            top_m: self.top_m.max(o.top_m),
        }
    }

    /// From this one to another, 0 to 1.
    pub fn towards(self, o: Frame, share: f64) -> Frame {
        let mix = |a: f64, b: f64| a + (b - a) * share;
        Frame {
            left_m: mix(self.left_m, o.left_m),
            bottom_m: mix(self.bottom_m, o.bottom_m),
            right_m: mix(self.right_m, o.right_m),
            top_m: mix(self.top_m, o.top_m),
        }
    }

    /// As an SVG's view box, cm, y down.
    pub fn view_box(self) -> String {
        format!("{} {} {} {}", cm(self.left_m), cm(-self.top_m), cm(self.width_m()), cm(self.height_m()))
    }

    /// Width, m.
    pub fn width_m(self) -> f64 {
        self.right_m - self.left_m
    }

    /// Height, m.
    pub fn height_m(self) -> f64 {
        self.top_m - self.bottom_m
    }

    /// Grown to a width over height: what is added in width goes to the left by this share, what is added in
    /// height half to each side.
    pub fn fit(self, shape: f64, left_share: f64) -> Frame {
        let wider_m = (self.height_m() * shape - self.width_m()).max(0.0);
        let higher_m = (self.width_m() / shape - self.height_m()).max(0.0);
        Frame {
            left_m: self.left_m - wider_m * left_share,
            right_m: self.right_m + wider_m * (1.0 - left_share),
            bottom_m: self.bottom_m - higher_m / 2.0,
            top_m: self.top_m + higher_m / 2.0,
        }
    }

    /// Grown to hold a point with some room round it, m.
    fn holding(self, q: P, room_m: f64) -> Frame {
        self.with(round(q, room_m))
    }

    /// As wide as it is high at the least.
    fn square(self) -> Frame {
        let more_m = (self.height_m() - self.width_m()).max(0.0) / 2.0;
        let higher_m = (self.width_m() - self.height_m()).max(0.0) / 2.0;
        Frame {
            left_m: self.left_m - more_m,
            right_m: self.right_m + more_m,
            bottom_m: self.bottom_m - higher_m,
            top_m: self.top_m + higher_m,
        }
    }
}

/// A frame round a point, m.
pub fn round(at: P, room_m: f64) -> Frame {
    Frame { left_m: at.x - room_m, bottom_m: at.y - room_m, right_m: at.x + room_m, top_m: at.y + room_m }
}

/// A frame on so many pixels.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pane {
    /// What is shown, of the same shape as the pane.
    pub frame: Frame,
    /// Width, px.
    pub width_px: f64,
    /// Height, px.
    pub height_px: f64,
}

impl Pane {
    /// Pixels to a metre.
    pub fn px_per_m(&self) -> f64 {
        self.height_px / self.frame.height_m().max(1e-6)
    }
    /// A point of the plane in pixels from the upper left.
    pub fn px(&self, q: P) -> (f64, f64) {
        let k = self.px_per_m();
        ((q.x - self.frame.left_m) * k, (self.frame.top_m - q.y) * k)
    }

    /// A pixel from the upper left as a point of the plane, m.
    pub fn point(&self, (x_px, y_px): (f64, f64)) -> P {
        let k = self.px_per_m().max(1e-6);
        P { x: self.frame.left_m + x_px / k, y: self.frame.top_m - y_px / k }
    }
}

/// The worker is never less high than this while a set-up is chosen, px, unless the whole house is asked for.
pub const WORKER_PX: f64 = 152.0;

/// The whole house with its ladder, and a wire that is near enough to matter.
pub fn whole(g: &Geometry, s: &Scenario) -> Frame {
    let mut all = Frame {
        left_m: g.ridge.x.min(g.anchor.x) - 0.6,
        bottom_m: g.ground_y_m(g.ladder.foot.x + 0.6) - 0.45,
        right_m: g.ladder.foot.x.max(g.eave.x + 1.6).max(g.obstacle.map_or(0.0, |o| o.1)) + 0.9,
        top_m: (g.ridge.y + 0.6).max(g.soles.y + s.worker.stature_m + 0.3).max(g.ladder.tip.y + 0.2),
    };
    if let Some(w) = s.power_line.filter(|w| wire_is_drawn(g, w)) {
        all = all.holding(p(w.distance_m, w.height_m), 1.0);
    }
    all
}

/// The worker at work, for a pane of so many pixels: down to the ground where the worker stays
/// [`WORKER_PX`] high or a quarter of the pane; else near. `ground` asks for the ground whatever it costs.
pub fn work(g: &Geometry, s: &Scenario, (width_px, height_px): (f64, f64), ground: bool) -> Frame {
    let stature_m = s.worker.stature_m;
    let on_roof = matches!(s.stance, Stance::Roof { .. });
    let head = p(g.soles.x, g.soles.y + stature_m);
    let room_m = if on_roof { 0.35 } else { 0.3 };
    let at = |q: P| Frame { left_m: q.x, bottom_m: q.y, right_m: q.x, top_m: q.y };
    let mut near = at(g.soles).holding(head, room_m).holding(g.grab, 0.35).holding(g.eave, 0.6);
    near.bottom_m = near.bottom_m.min(g.soles.y - 0.5);
    near.right_m = near.right_m.max(g.soles.x + 0.9);
    near.left_m = near.left_m.min(g.soles.x - 1.3);
    let shape = (width_px / height_px.max(1.0)).clamp(0.3, 5.0);
    let floor_m = g.surface_below_m(g.soles.x, 0.3).min(g.ground_y_m(g.ladder.foot.x));
    let down = Frame {
        bottom_m: near.bottom_m.min(floor_m - 0.4),
        right_m: near.right_m.max(g.ladder.foot.x + 0.3),
        ..near
    };
    // A wide pane shows the house to the left and the air to the right; a narrow one the worker.
    let share = if shape > 1.3 { 0.46 } else { 0.5 };
    let all = down.fit(shape, share);
    let worker_px = stature_m * height_px / all.height_m();
    if ground || worker_px >= WORKER_PX.max(height_px / 4.0) { all } else { near.fit(shape, share) }
}

/// What must be seen at a moment: body and grab, with some room.
fn held(q: &Sample) -> Frame {
    let at = |x: f64, y: f64| Frame { left_m: x, bottom_m: y, right_m: x, top_m: y };
    let mut all = at(q.dring.x, q.dring.y);
    for pose in &q.poses {
        all = all.with(at(pose.at.x, pose.at.y));
    }
    // Limbs reach further than their middles.
    all = Frame {
        left_m: all.left_m - ROUND_M,
        bottom_m: all.bottom_m - ROUND_M,
        right_m: all.right_m + ROUND_M,
        top_m: all.top_m + ROUND_M,
    };
    // A grab that stays behind on its own is left behind.
    if q.on_rope && q.grab.dist(q.dring) < LEFT_BEHIND_M {
        all = all.with(at(q.grab.x - 0.1, q.grab.y - 0.1)).with(at(q.grab.x + 0.1, q.grab.y + 0.15));
    }
    all
}

/// How much of what lies below is to be seen, 0 to 1, with `gap_m` of room to it.
fn nearness(gap_m: f64) -> f64 {
    ((NEAR_GROUND_M - gap_m) / COMES_IN_M).clamp(0.0, 1.0)
}

/// What the frame wants to be at a moment: centred on the D-ring, no closer than [`CLOSE_M`].
fn wanted(g: &Geometry, q: &Sample) -> Frame {
    let half_m = CLOSE_M / 2.0;
    let close = Frame {
        left_m: q.dring.x - half_m,
        bottom_m: q.dring.y - 0.6 * CLOSE_M,
        right_m: q.dring.x + half_m,
        top_m: q.dring.y + 0.4 * CLOSE_M,
    };
    let body = held(q);
    let mut all = close.with(body);
    // The ground, and a deck under the body, come in as they come near.
    let mut floors = vec![(g.ground_y_m(q.dring.x), 1.0)];
    if let Some((left_m, right_m, top_m)) = g.obstacle {
        let beside_m = (left_m - q.dring.x).max(q.dring.x - right_m).max(0.0);
        floors.push((top_m, (1.0 - beside_m / COMES_IN_M).max(0.0)));
    }
    for (floor_m, share) in floors {
        let down_m = (all.bottom_m - (floor_m - 0.3)).max(0.0);
        all.bottom_m -= down_m * share * nearness(body.bottom_m - floor_m);
    }
    all.square()
}

/// The frame of a fall at `time_s`, which begins as `whole`.
pub fn fall(g: &Geometry, t: &Trace, time_s: f64, whole: Frame) -> Frame {
    let near = |q: &&Sample| (q.time_s - time_s).abs() <= SMOOTH_S;
    let (mut sum, mut n) = (None::<Frame>, 0.0);
    for q in t.samples.iter().filter(near) {
        let w = wanted(g, q);
        n += 1.0;
        sum = Some(sum.map_or(w, |s: Frame| s.towards(w, 1.0 / n)));
    }
    let Some(mean) = sum else { return whole };
    let share = (time_s / COME_NEAR_S).clamp(0.0, 1.0);
    let frame = whole.towards(mean, share * share * (3.0 - 2.0 * share));
    // However fast it goes, nothing that matters is cut off.
    t.at(time_s).map_or(frame, |q| frame.with(held(&q)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::physics::simulate;
    use crate::scenario::{Arrow, ORDINARY_OBSTACLE, Scenario, Stance};

    fn falls() -> Vec<Scenario> {
        let base = Scenario::default();
        let with = |f: fn(&mut Scenario)| {
            let mut s = base.clone();
            f(&mut s);
            s
        };
        vec![
            base.clone(),
            with(|s| s.grab.above_dring_m = -0.4),
            with(|s| s.grab.arrow = Arrow::Down),
            with(|s| s.stance = Stance::Roof { from_eave_m: 1.2 }),
            with(|s| s.lanyard.clipped = false),
            with(|s| {
                s.house.below = ORDINARY_OBSTACLE;
                s.ladder.foot_distance_m = 1.45;
            }),
        ]
    }

    /// Before the fall the worker is at least 150 px high on a phone's pane and on a laptop's, and a quarter of a
    /// projector's; in the fall 250 px on the laptop. On each of the five houses, worker and grab in the frame.
    #[test]
    fn the_worker_is_large_enough_at_every_size() {
        for kind in crate::practice::houses::HouseKind::ALL {
            let mut s = Scenario::default();
            kind.move_in(&mut s);
            let set_up = s.set_up().expect("possible");
            let g = set_up.geometry();
            for (pane, least_px) in
                [((390.0, 380.0), 150.0), ((1366.0, 600.0), 150.0), ((1920.0, 900.0), 225.0)]
            {
                let f = work(g, &s, pane, false);
                let px = s.worker.stature_m * pane.1 / f.height_m();
                assert!(px >= least_px, "{kind:?} on {pane:?}: {px}");
                assert!((f.width_m() / f.height_m() - pane.0 / pane.1).abs() < 1e-9);
                let inside = |q: P| q.x > f.left_m && q.x < f.right_m && q.y > f.bottom_m && q.y < f.top_m;
                assert!(
                    inside(g.soles) && inside(g.grab) && inside(g.dring) && inside(g.eave),
                    "{kind:?} {pane:?}"
                );
            }
            let t = simulate(&set_up);
            let held = t.time_of(crate::physics::trace::EventKind::StrikesGround).is_none();
            let lowest_s = t.time_of(crate::physics::trace::EventKind::Lowest).unwrap_or(0.7).max(0.7);
            let begin = work(g, &s, (1366.0, 600.0), false);
            let f = fall(g, &t, lowest_s, begin).fit(1366.0 / 600.0, 0.5);
            assert!(!held || s.worker.stature_m * 600.0 / f.height_m() >= 250.0, "{kind:?}: {f:?}");
        }
    }

    const WHOLE: Frame = Frame { left_m: -4.5, bottom_m: -0.5, right_m: 4.5, top_m: 8.1 };

    /// At every moment of six falls the whole body is inside, and the grab while it is on the rope: measured
    /// at the limbs' own ends, not at what the camera takes for them.
    #[test]
    fn the_body_and_the_grab_are_always_in_the_frame() {
        for s in falls() {
            let set_up = s.set_up().expect("possible");
            let t = simulate(&set_up);
            let caps = crate::geometry::body::capsules(s.worker.mass_kg, s.worker.stature_m);
            for q in &t.samples {
                let f = fall(set_up.geometry(), &t, q.time_s, WHOLE);
                let inside = |x: f64, y: f64| x > f.left_m && x < f.right_m && y > f.bottom_m && y < f.top_m;
                for (pose, c) in q.poses.iter().zip(caps) {
                    for k in [-1.0, 1.0] {
                        let end = pose.place(crate::geometry::p(0.0, k * c.half_length_m));
                        assert!(inside(end.x, end.y), "{end:?} at {} in {f:?}", q.time_s);
                    }
                }
                assert!(
                    !q.on_rope || q.grab.dist(q.dring) > LEFT_BEHIND_M || inside(q.grab.x, q.grab.y),
                    "the grab at {}",
                    q.time_s
                );
            }
        }
    }

    /// It begins as the whole house, comes near, and never jumps: less than 8 cm in a 240th of a second.
    #[test]
    fn the_frame_comes_near_without_a_jump() {
        for s in falls() {
            let set_up = s.set_up().expect("possible");
            let t = simulate(&set_up);
            let at = |time_s: f64| fall(set_up.geometry(), &t, time_s, WHOLE);
            assert_eq!(at(0.0), WHOLE);
            // Held in the air, the worker of 1.75 m takes over a third of the height.
            if t.time_of(crate::physics::trace::EventKind::StrikesGround).is_none() {
                assert!(1.75 / at(1.0).height_m() > 0.33, "{:?}", at(1.0));
            }
            for w in t.samples.windows(2) {
                let (a, b) = (at(w[0].time_s), at(w[1].time_s));
                for (x, y) in [
                    (a.left_m, b.left_m),
                    (a.right_m, b.right_m),
                    (a.top_m, b.top_m),
                    (a.bottom_m, b.bottom_m),
                ] {
                    assert!((x - y).abs() < 0.08, "{x} to {y} at {}", w[0].time_s);
                }
            }
        }
    }
}
