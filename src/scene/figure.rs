//! What moves, as paths: ladder, anchor, rope, worker, lanyard, grab. The list is the same length at every
//! moment and its classes never change, so that a page can draw it once and move it.

use super::ink::{Shape, Turned, circle, closed, curve, folds, line, rect};
use super::worker::Bones;
use super::{Gone, Scene};
use crate::geometry::{Geometry, LadderTop, P, p};
use crate::scenario::{AnchorKind, Arrow, Bolt, ConnectorState, Latch, RopeEnd, Scenario};

/// Between two rungs, m (29 CFR 1926.1053(a)(3)(i): 10 to 14 in; 12 in is common).
const RUNG_M: f64 = 0.305;
/// The far rail is seen beside the near one by this, m.
const FAR_RAIL_M: f64 = 0.085;

/// The worker's classes and those of what moves with it, in the order of [`figure`].
pub fn figure(q: &Scene, s: &Scenario, g: &Geometry) -> Vec<Shape> {
    let mut out = Vec::with_capacity(48);
    ladder(q, g, &mut out);
    anchor(q, s, g, &mut out);
    rope(q, s, &mut out);
    worker(q, g, &mut out);
    link(q, s, &mut out);
    grab(q, s, &mut out);
    out
}

/// A fall that is over, for comparison: bones, lanyard, the boots' line.
pub fn ghost(q: &Scene, g: &Geometry) -> Vec<Shape> {
    let Some(b) = Bones::of(&q.limbs).map(|b| b.beside(g)) else { return vec![] };
    let low = b.boots.iter().flatten().fold(f64::INFINITY, |a, q| a.min(q.y));
    let mid = b.boots[0][1].x;
    vec![
        Shape::new("bone", circle(b.head, b.head_radius_m)),
        Shape::new("bone", line(&[b.neck, b.waist, b.hip])),
        Shape::new("bone", line(&b.arm)),
        Shape::new("bone", line(&b.near_leg)),
        Shape::new("bone", line(&b.far_leg)),
        Shape::new("bone", curve(&q.lanyard_end)),
        Shape::new("bone", line(&[p(mid - 0.5, low), p(mid + 0.7, low)])),
    ]
}

fn ladder(q: &Scene, g: &Geometry, out: &mut Vec<Shape>) {
    let (foot, tip) = q.ladder.unwrap_or((g.ladder.foot, g.ladder.tip));
    let long_m = foot.dist(tip).max(0.1);
    let t = Turned { at: foot, by_rad: libm::atan2(tip.y - foot.y, tip.x - foot.x) };
    // The far rail, seen beside the near one on the house's side.
    let far = line(&[t.place(0.05, FAR_RAIL_M), t.place(long_m - 0.02, FAR_RAIL_M)]);
    let rungs: String = (1..=((long_m / RUNG_M) as usize))
        .map(|i| {
            let x = RUNG_M * i as f64;
            line(&[t.place(x, 0.012), t.place(x + 0.012, FAR_RAIL_M)])
        })
        .collect();
    let rail = closed(&t.all(&[(0.0, -0.03), (long_m, -0.03), (long_m, 0.03), (0.0, 0.03)]));
    // Shoe below, pad on the wall above.
    let shoe = closed(&[
        p(foot.x - 0.09, foot.y),
        p(foot.x + 0.09, foot.y),
        p(foot.x + 0.05, foot.y + 0.05),
        p(foot.x - 0.05, foot.y + 0.05),
    ]);
    let pad =
        if g.ladder.top == LadderTop::Wall { circle(t.place(long_m, 0.03), 0.05) } else { String::new() };
    out.push(Shape::new("rail far", far));
    out.push(Shape::new("rung", rungs));
    out.push(Shape::new("rail", rail));
    out.push(Shape::new("shoe", shoe + &pad));
}

/// What an anchor is made of.
#[derive(Default)]
struct Tied {
    solid: String,
    fine: String,
    plate: String,
    /// What it left behind.
    left: String,
    ring: P,
}

/// A plate with its nails, over the ridge or on the slope; or gone from there, with holes and splinters.
fn ridge_plate(t: &mut Tied, s: &Scenario, g: &Geometry, (here, there): (Turned, Turned), away: bool) {
    let home = g.anchor;
    // Where a plate lies over the ridge it bends with it.
    let on_ridge = (home.x - g.ridge.x).abs() < 0.25 && !away;
    let sag = if on_ridge { 0.3 * libm::tan(libm::acos(g.down_slope.x)) } else { 0.0 };
    t.plate = closed(&here.all(&[
        (-0.3, 0.012 - sag),
        (0.0, 0.012),
        (0.3, 0.012 - sag),
        (0.3, 0.032 - sag),
        (0.0, 0.04),
        (-0.3, 0.032 - sag),
    ]));
    // Nails: into the wood, or still in the plate when it has gone.
    let deep = if s.anchor.kind == AnchorKind::RidgePlateInFraming { 0.11 } else { 0.075 };
    for x in [-0.24, -0.14, 0.14, 0.24] {
        let y = 0.03 - sag * (f64::abs(x) / 0.3);
        t.fine.push_str(&line(&[here.place(x, y), here.place(x * 1.02, y - deep)]));
    }
    if away {
        // Holes and splinters where it was.
        let rise = 0.3
            * libm::tan(libm::acos(g.down_slope.x))
            * f64::from(u8::from((home.x - g.ridge.x).abs() < 0.25));
        for x in [-0.24, -0.14, 0.14, 0.24] {
            let y = -rise * (f64::abs(x) / 0.3);
            t.left.push_str(&closed(&there.all(&[
                (x - 0.035, y),
                (x - 0.01, y + 0.05),
                (x, y - 0.05),
                (x + 0.012, y + 0.065),
                (x + 0.035, y),
            ])));
        }
    }
}

/// A chimney with a sling round it; gone (where to), its upper courses have shifted on the bed joint.
fn chimney(t: &mut Tied, s: &Scenario, home: P, gone: Option<Turned>) {
    let away = gone.is_some();
    let (w, h, sling) =
        (s.anchor.chimney.width_m, s.anchor.chimney.height_m, s.anchor.chimney.sling_height_m);
    let base = p(home.x, home.y - 0.3);
    // The joint that opens lies under the sling's pull: what is over it has shifted.
    let joint = (0.3 + sling * 0.5).min(h);
    let shift = if away { 0.16 } else { 0.0 };
    t.solid = rect(p(base.x - w / 2.0, base.y), p(base.x + w / 2.0, base.y + joint));
    let top = Turned { at: p(base.x + shift, base.y + joint), by_rad: if away { -0.09 } else { 0.0 } };
    let over = (h + 0.3 - joint).max(0.1);
    t.solid.push_str(&closed(&top.all(&[
        (-w / 2.0, 0.0),
        (w / 2.0, 0.0),
        (w / 2.0, over),
        (-w / 2.0, over),
    ])));
    let n = (over / 0.13) as usize;
    for i in 1..=n {
        t.fine.push_str(&line(&top.all(&[(-w / 2.0, 0.13 * i as f64), (w / 2.0, 0.13 * i as f64)])));
    }
    let b = gone.unwrap_or(Turned { at: p(base.x, base.y + 0.3 + sling), by_rad: 0.0 });
    let half = if away { 0.16 } else { w / 2.0 + 0.02 };
    t.plate = closed(&b.all(&[(-half, -0.03), (half, -0.03), (half, 0.03), (-half, 0.03)]));
    t.ring = b.place(half + 0.05, 0.0);
}

/// What the rope is tied to, where it is now; and what it left behind.
fn anchor(q: &Scene, s: &Scenario, g: &Geometry, out: &mut Vec<Shape>) {
    let away = matches!(q.gone, Gone::Anchor(_));
    let (at, slope) = q.anchor;
    let home = g.anchor;
    let here = Turned { at, by_rad: slope };
    let there = Turned {
        at: home,
        by_rad: if (home.x - g.ridge.x).abs() < 0.02 {
            0.0
        } else {
            libm::atan2(g.down_slope.y, g.down_slope.x).copysign(if home.x < g.ridge.x { 1.0 } else { -1.0 })
        },
    };
    let mut t = Tied { ring: here.place(0.0, 0.075), ..Tied::default() };
    match s.anchor.kind {
        AnchorKind::RidgePlateInFraming | AnchorKind::RidgePlateInSheathing => {
            ridge_plate(&mut t, s, g, (here, there), away);
        }
        AnchorKind::ChimneySling => chimney(&mut t, s, home, away.then_some(here)),
        AnchorKind::VentPipe => {
            let lean = Turned { at: home, by_rad: if away { -1.0 } else { 0.0 } };
            t.solid = closed(&lean.all(&[(-0.05, -0.12), (0.05, -0.12), (0.05, 0.5), (-0.05, 0.5)]));
            t.plate = closed(&there.all(&[(-0.16, 0.0), (0.16, 0.0), (0.1, 0.03), (-0.1, 0.03)]));
            t.ring = if away { at } else { p(home.x, home.y + 0.12) };
        }
        AnchorKind::RoofVent => {
            let lean =
                Turned { at: if away { at } else { home }, by_rad: if away { slope - 0.4 } else { 0.0 } };
            t.solid =
                closed(&lean.all(&[(-0.16, -0.08), (0.16, -0.08), (0.16, 0.2), (0.0, 0.34), (-0.16, 0.2)]));
            t.fine = line(&lean.all(&[(-0.1, 0.06), (0.1, 0.06)]))
                + &line(&lean.all(&[(-0.1, 0.13), (0.1, 0.13)]));
            t.ring = lean.place(0.16, 0.1);
        }
        AnchorKind::AntennaMast => {
            let lean = Turned { at: home, by_rad: if away { -1.15 } else { 0.0 } };
            t.plate = closed(&lean.all(&[(-0.02, -0.05), (0.02, -0.05), (0.02, 1.5), (-0.02, 1.5)]));
            t.fine = line(&lean.all(&[(-0.3, 1.35), (0.3, 1.35)]))
                + &line(&lean.all(&[(-0.2, 1.15), (0.2, 1.15)]));
            t.ring = if away { at } else { p(home.x, home.y + 0.2) };
        }
        AnchorKind::Gutter => {
            // A trough fixed to a board by one bracket; opened, it hangs from the other end.
            let open = Turned { at: home, by_rad: if away { -0.7 } else { 0.0 } };
            t.plate =
                line(&open.all(&[(-0.09, 0.16), (-0.09, 0.03), (0.06, 0.03), (0.09, 0.08), (0.09, 0.14)]));
            t.fine = line(&open.all(&[(-0.09, 0.14), (0.09, 0.12)]));
            t.solid = closed(&there.all(&[(-0.13, -0.02), (-0.09, -0.02), (-0.09, 0.2), (-0.13, 0.2)]));
            t.ring = if away { at } else { p(home.x, home.y + 0.06) };
        }
        AnchorKind::RatedEye => {
            t.plate = closed(&here.all(&[(-0.09, 0.0), (0.09, 0.0), (0.07, 0.035), (-0.07, 0.035)]));
            t.fine = line(&here.all(&[(0.0, 0.0), (0.0, -0.2)]))
                + &line(&here.all(&[(-0.04, -0.2), (0.04, -0.2)]));
        }
    }
    out.push(Shape::new("brick", t.solid));
    out.push(Shape::new("hole", t.left));
    out.push(Shape::new("nails", t.fine));
    out.push(Shape::new("plate", t.plate));
    out.push(Shape::new("anchor", circle(t.ring, 0.06)));
}

fn rope(q: &Scene, s: &Scenario, out: &mut Vec<Shape>) {
    // A casing in the colour of what is behind, so that it reads over ladder and shingles.
    let to_grab = line(&q.rope) + &curve(&q.rope_to_grab);
    out.push(Shape::new("casing", to_grab.clone()));
    out.push(Shape::new("rope", to_grab));
    out.push(Shape::new("rope tail", line(&q.tail)));
    let end = match s.lifeline.end {
        RopeEnd::Nothing => String::new(),
        _ => circle(q.tail_end, 0.055),
    };
    out.push(Shape::new("knot", end));
    // Strands at an end that has parted.
    let frayed = if q.gone == Gone::Rope {
        let strands = |at: P, up: f64| {
            [-0.06, 0.0, 0.05]
                .into_iter()
                .map(|x| line(&[at, p(at.x + x, at.y + up * 0.13)]))
                .collect::<String>()
        };
        strands(q.rope_to_grab.to, -1.0) + &q.tail.first().map_or(String::new(), |t| strands(*t, 1.0))
    } else {
        String::new()
    };
    out.push(Shape::new("frayed", frayed));
}

fn worker(q: &Scene, g: &Geometry, out: &mut Vec<Shape>) {
    let b = Bones::of(&q.limbs).map(|b| b.beside(g));
    let of = |f: &dyn Fn(&Bones) -> String| b.as_ref().map_or(String::new(), f);
    let limb = |out: &mut Vec<Shape>, ink: &'static str, cloth: &'static str, d: String| {
        out.push(Shape::new(ink, d.clone()));
        out.push(Shape::new(cloth, d));
    };
    let leg = |out: &mut Vec<Shape>, joints: &dyn Fn(&Bones) -> [P; 3], far: bool| {
        let (thigh, shin) = (of(&|b| line(&joints(b)[..2])), of(&|b| line(&joints(b)[1..])));
        let [a, c, d, e] = if far {
            ["limb ink shin far", "limb ink thigh far", "limb cloth shin far", "limb cloth thigh far"]
        } else {
            ["limb ink shin", "limb ink thigh", "limb cloth shin", "limb cloth thigh"]
        };
        out.push(Shape::new(a, shin.clone()));
        out.push(Shape::new(c, thigh.clone()));
        out.push(Shape::new(d, shin));
        out.push(Shape::new(e, thigh));
    };
    // The far arm goes a little before the near one.
    let far_arm = of(&|b| {
        let off = |q: P| p(q.x - 0.05, q.y + 0.06);
        line(&[b.arm[0], out_of(g, off(b.arm[1])), out_of(g, off(b.arm[2]))])
    });
    limb(out, "limb ink arm far", "limb cloth arm far", far_arm);
    out.push(Shape::new(
        "hand far",
        of(&|b| circle(out_of(g, p(b.arm[2].x - 0.05, b.arm[2].y + 0.06)), 0.05)),
    ));
    leg(out, &|b| b.far_leg, true);
    out.push(Shape::new("boot far", of(&|b| closed(&b.boots[1]))));
    out.push(Shape::new("face neck", of(&|b| line(&[b.neck, b.head]))));
    limb(out, "limb ink trunk", "limb cloth trunk", of(&|b| line(&[b.neck, b.waist, b.hip])));
    let head = |b: &Bones| Turned { at: b.head, by_rad: b.head_turn_rad };
    out.push(Shape::new("face", of(&|b| profile(head(b), b.head_radius_m))));
    out.push(Shape::new("feature", of(&|b| features(head(b), b.head_radius_m))));
    out.push(Shape::new("helmet", of(&|b| helmet(head(b), b.head_radius_m))));
    leg(out, &|b| b.near_leg, false);
    out.push(Shape::new("boot", of(&|b| closed(&b.boots[0]))));
    // The only webbing in colour: over the chest to the ring between the shoulder blades, belt and leg loop.
    let straps = of(&|b| {
        let ring = q.dring;
        line(&[ring, b.neck, b.chest[0], b.belt[0]])
            + &line(&[ring, b.chest[1], b.belt[1]])
            + &line(&b.belt)
            + &line(&[b.belt[1], b.leg_loop[0], b.leg_loop[1]])
            + &line(&[b.chest[0].lerp(b.chest[1], 0.05), b.chest[0].lerp(b.chest[1], 0.9)])
    });
    out.push(Shape::new("strap", straps));
    limb(out, "limb ink arm", "limb cloth arm", of(&|b| line(&b.arm_round(g))));
    out.push(Shape::new("hand", of(&|b| circle(b.arm[2], 0.055))));
}

fn out_of(g: &Geometry, q: P) -> P {
    super::worker::out_of_house(g, q, 0.05)
}

/// Face from the side: brow, nose, chin; the worker faces left.
fn profile(t: Turned, r: f64) -> String {
    let q = |x: f64, y: f64| t.place(x * r, y * r);
    closed(&[
        q(0.75, 0.5),
        q(-0.78, 0.5),
        q(-0.95, 0.1),
        q(-1.2, -0.22),
        q(-0.95, -0.3),
        q(-1.0, -0.62),
        q(-0.72, -0.98),
        q(-0.1, -0.9),
        q(0.4, -0.72),
        q(0.8, -0.25),
    ])
}

fn features(t: Turned, r: f64) -> String {
    let q = |x: f64, y: f64| t.place(x * r, y * r);
    // An eye, and the helmet's chin strap.
    line(&[q(-0.72, 0.12), q(-0.66, -0.08)]) + &line(&[q(0.28, 0.35), q(0.1, -0.4), q(-0.62, -0.95)])
}

fn helmet(t: Turned, r: f64) -> String {
    let q = |x: f64, y: f64| t.place(x * r, y * r);
    let n = 10;
    let mut points: Vec<P> = (0..=n)
        .map(|i| {
            let a = core::f64::consts::PI * f64::from(i) / f64::from(n);
            q(1.12 * libm::cos(a), 0.22 + 1.08 * libm::sin(a))
        })
        .collect();
    points.extend([q(-1.55, 0.16), q(-1.5, 0.02), q(1.05, 0.02)]);
    closed(&points)
}

fn link(q: &Scene, s: &Scenario, out: &mut Vec<Shape>) {
    let way = if q.lanyard.len() > 1 { line(&q.lanyard) } else { String::new() };
    out.push(Shape::new("lanyard", way + &curve(&q.lanyard_end)));
    let absorber = s.lanyard.absorber.is_some();
    let (a, b) = q.absorber;
    out.push(Shape::new("torn", if absorber { folds(b, a) } else { String::new() }));
    out.push(Shape::new("lanyard", if absorber { String::new() } else { line(&[b, a, q.pack_end]) }));
    // The pack: a pouch with a label, between the torn part and the ring.
    let by_rad = libm::atan2(a.y - q.pack_end.y, a.x - q.pack_end.x);
    let t = Turned { at: q.pack_end, by_rad };
    let long_m = q.pack_end.dist(a).max(0.05);
    let (pack, label) = if absorber {
        (
            closed(&t.all(&[(0.05, -0.055), (long_m, -0.055), (long_m, 0.055), (0.05, 0.055)])),
            line(&t.all(&[(0.05 + (long_m - 0.05) * 0.45, -0.05), (0.05 + (long_m - 0.05) * 0.45, 0.05)])),
        )
    } else {
        (String::new(), String::new())
    };
    out.push(Shape::new("pack", pack));
    out.push(Shape::new("label-mark", label));
    // The connector at the ring: its gate shut; ajar where it does not lock; wide open where it has let the ring out.
    let gate = match (q.gone == Gone::Link, s.gear.connector) {
        (true, _) => [(-0.05, 0.05), (-0.1, 0.12)],
        (_, ConnectorState::Unlocked) => [(-0.05, 0.05), (0.04, 0.09)],
        _ => [(-0.05, 0.05), (0.06, 0.05)],
    };
    out.push(Shape::new(
        "hook",
        line(&t.all(&[(0.06, 0.04), (0.08, 0.0), (0.06, -0.05), (-0.02, -0.06), (-0.065, -0.02), gate[0]]))
            + &line(&t.all(&gate)),
    ));
    out.push(Shape::new("dring", circle(q.dring, 0.055)));
}

/// The grab: a case on the rope with its arrow, the latch on one side and the bolt on the other. What is open
/// or loose stands out.
fn grab(q: &Scene, s: &Scenario, out: &mut Vec<Shape>) {
    let t = Turned { at: q.grab, by_rad: -q.grab_tilt_rad };
    let up = if s.grab.arrow == Arrow::Up { 1.0 } else { -1.0 };
    let case = closed(&t.all(&[
        (-0.075, -0.15),
        (0.075, -0.15),
        (0.095, -0.11),
        (0.095, 0.11),
        (0.075, 0.15),
        (-0.075, 0.15),
        (-0.095, 0.11),
        (-0.095, -0.11),
    ]));
    // A tall arrow with a shaft: which way it points is seen at eleven pixels.
    let arrow = closed(&t.all(&[
        (0.0, 0.115 * up),
        (0.062, 0.02 * up),
        (0.022, 0.02 * up),
        (0.022, -0.11 * up),
        (-0.022, -0.11 * up),
        (-0.022, 0.02 * up),
        (-0.062, 0.02 * up),
    ]));
    let latch = if s.grab.latch == Latch::Closed {
        line(&t.all(&[(0.12, -0.1), (0.12, 0.1)]))
    } else {
        line(&t.all(&[(0.1, -0.1), (0.27, 0.02)]))
    };
    let bolt = if s.grab.bolt == Bolt::Tight {
        closed(&t.all(&[(-0.095, -0.04), (-0.135, -0.04), (-0.135, 0.04), (-0.095, 0.04)]))
    } else {
        line(&t.all(&[(-0.095, 0.0), (-0.21, 0.02)]))
            + &closed(&t.all(&[(-0.2, -0.05), (-0.25, -0.04), (-0.24, 0.07), (-0.19, 0.06)]))
    };
    out.push(Shape::new("case", case));
    out.push(Shape::new("arrow", arrow));
    out.push(Shape::new("latch", latch));
    out.push(Shape::new("bolt", bolt));
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::{at, standing_scene};

    fn classes(all: &[Shape]) -> Vec<&'static str> {
        all.iter().map(|q| q.class).collect()
    }

    /// A page draws the list once: at every moment of a fall it has the same classes in the same order.
    #[test]
    fn the_list_of_what_moves_is_the_same_at_every_moment() {
        let mut anchors: Vec<Scenario> = AnchorKind::ALL
            .into_iter()
            .map(|kind| {
                let mut s = Scenario::default();
                s.anchor.kind = kind;
                s
            })
            .collect();
        let mut bare = Scenario::default();
        bare.lanyard.absorber = None;
        anchors.push(bare);
        let first = Scenario::default();
        let g = Geometry::of(&first).expect("stands");
        let want = classes(&figure(&standing_scene(&first, &g), &first, &g));
        for s in anchors {
            let set_up = s.set_up().expect("possible");
            let t = crate::physics::simulate(&set_up);
            for k in 0..8 {
                let q = at(&s, set_up.geometry(), &t, t.duration_s() * f64::from(k) / 7.0).expect("a moment");
                assert_eq!(classes(&figure(&q, &s, set_up.geometry())), want);
            }
        }
    }

    /// A bug: after the anchor let go its plate stayed at the ridge and a stub of rope stood up in the air. The
    /// rope keeps its length to a centimetre, and the plate has left its place and lies on roof or ground side.
    #[test]
    fn an_anchor_that_lets_go_is_dragged_down_the_slope_on_a_rope_of_the_same_length() {
        let mut s = Scenario::default();
        s.anchor.kind = AnchorKind::RidgePlateInSheathing;
        let set_up = s.set_up().expect("possible");
        let g = set_up.geometry();
        let t = crate::physics::simulate(&set_up);
        let gave_s =
            t.time_of(crate::physics::trace::EventKind::AnchorFails).expect("sheathing alone tears out");
        let mut seen = 0;
        for q in t.samples.iter().filter(|q| q.time_s > gave_s + 0.1) {
            let scene = at(&s, g, &t, q.time_s).expect("a moment");
            let Gone::Anchor(moved_m) = scene.gone else { panic!("at {}: {:?}", q.time_s, scene.gone) };
            let mut way = scene.rope.clone();
            way.push(scene.grab);
            let long_m = crate::geometry::path_length(&way);
            if moved_m < g.ridge.dist(g.eave) {
                assert!((long_m - q.grab_rope_m).abs() < 0.01, "{long_m} m for {} m of rope", q.grab_rope_m);
                seen += 1;
            }
            assert!(scene.anchor.0.dist(g.anchor) > 0.05 && g.depth_in_house_m(scene.anchor.0) < 0.01);
        }
        assert!(seen > 20);
    }
}
