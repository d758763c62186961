//! The property of the site walk from in front and from above: one scale, the same x. The front has x along the wall
//! and y up; in the plan y is turned round from z, out from the wall, so that the street lies below.

use super::camera::Frame;
use super::ink::{Shape, circle, closed, line, rect};
use super::people::{Doing, person};
use crate::geometry::{P, p};
use crate::practice::site::{
    ALONG_M, DOOR_M, PHONE_IN_M, POLE_M, POLE_OUT_M, Placed, ROT_HALF_M, SKY_HALF_M, Site, Sort, Thing,
    WALK_M, WALL_M, WINDOWS_M,
};
use crate::scenario::House;

/// How the ridge stands over the eave; the house's own pitch, 6 in 12.
const RIDGE_BACK_M: f64 = 3.4;
/// The roof's end past the wall, m.
const VERGE_M: f64 = 0.35;
/// How steeply the lawn falls where it does.
const FALLS_SHARE: f64 = 0.12;

fn over() -> f64 {
    House::default().overhang_m
}

/// Height of the ridge, m.
fn ridge_m(s: &Site) -> f64 {
    s.eave_m + (RIDGE_BACK_M + over()) * 0.5
}

/// What the front shows, m.
pub fn front_frame() -> Frame {
    Frame { left_m: ALONG_M[0] - 0.7, right_m: ALONG_M[1] + 0.7, bottom_m: -1.0, top_m: 9.9 }
}

/// What the plan shows, m.
pub fn plan_frame() -> Frame {
    Frame { left_m: ALONG_M[0] - 0.7, right_m: ALONG_M[1] + 0.7, bottom_m: -7.2, top_m: 3.7 }
}

/// Height of the ground along the wall, m.
fn ground_m(s: &Site, x_m: f64) -> f64 {
    let Some(t) = s.thing(Sort::Slope) else { return 0.0 };
    let inside_m = if t.x_m < WALL_M / 2.0 { t.x_m + t.half_m - x_m } else { x_m - (t.x_m - t.half_m) };
    -FALLS_SHARE * inside_m.max(0.0)
}

fn right_of(s: &Site) -> bool {
    s.pole_m > WALL_M / 2.0
}

/// A corner of the house on the pole's side, so far in, m.
fn corner_m(s: &Site, in_m: f64) -> f64 {
    if right_of(s) { WALL_M - in_m } else { in_m }
}

/// Where a thing is looked at: in the front, in the plan.
pub fn spot(s: &Site, t: &Thing) -> [P; 2] {
    let ground = ground_m(s, t.x_m);
    let flat = p(t.x_m, -t.z_m);
    match t.sort {
        Sort::ServiceDrop | Sort::Phone => {
            let all = s.wire(t.sort);
            let q = all.get(if t.sort == Sort::Phone { 6 } else { 15 }).copied().unwrap_or_default();
            [p(q[0], q[1]), p(q[0], -q[2])]
        }
        Sort::Line => [p(t.x_m, POLE_M[0]), p(t.x_m, -6.1)],
        Sort::SoftBed => [p(t.x_m, ground + 0.2), flat],
        Sort::Slope => {
            let x = if t.x_m < 0.0 { -2.2 } else { WALL_M + 2.2 };
            [p(x, ground_m(s, x) - 0.3), p(x, -2.4)]
        }
        Sort::Door => [p(t.x_m, ground + 1.1), p(t.x_m, -0.75)],
        Sort::Skylight => [p(t.x_m, s.eave_m + 0.95), p(t.x_m, 1.5)],
        Sort::Rot => [p(t.x_m, s.eave_m), p(t.x_m, -over())],
        Sort::Wasps => [p(t.x_m, s.eave_m - 0.35), p(t.x_m, -0.15)],
        Sort::Dog | Sort::Bush | Sort::Letters | Sort::People => [p(t.x_m, ground + 0.5), flat],
    }
}

/// Where each thing is looked at, in the front and in the plan: as far from the next as a finger is wide, no further
/// from its own place than `MOST_ASIDE_M`.
pub fn spots(s: &Site) -> Vec<[P; 2]> {
    let own: Vec<[P; 2]> = s.things.iter().map(|t| spot(s, t)).collect();
    let mut all = own.clone();
    for view in 0..2 {
        for _ in 0..60 {
            for i in 0..all.len() {
                for k in i + 1..all.len() {
                    let (a, b) = (all[i][view], all[k][view]);
                    let short = APART_M - a.dist(b);
                    if short > 0.0 {
                        let by = if a.x <= b.x { short / 2.0 } else { -short / 2.0 };
                        let held = |q: f64, at: f64| q.clamp(at - MOST_ASIDE_M, at + MOST_ASIDE_M);
                        all[i][view].x = held(a.x - by, own[i][view].x);
                        all[k][view].x = held(b.x + by, own[k][view].x);
                    }
                }
            }
        }
    }
    all
}

/// Two spots are at least so far apart, m.
const APART_M: f64 = 0.9;
/// A spot is moved no further than this, m.
const MOST_ASIDE_M: f64 = 0.8;

/// The property from in front; nothing in it tells what matters.
pub fn front(s: &Site) -> Vec<Shape> {
    let mut out = Vec::new();
    let (l, r) = (ALONG_M[0] - 20.0, ALONG_M[1] + 20.0);
    tree(s, &mut out);
    let bends =
        s.thing(Sort::Slope).map(|t| if t.x_m < WALL_M / 2.0 { t.x_m + t.half_m } else { t.x_m - t.half_m });
    let mut top = vec![p(l, ground_m(s, l))];
    top.extend(bends.map(|x| p(x, 0.0)));
    top.push(p(r, ground_m(s, r)));
    house(s, &mut out);
    let mut soil = top.clone();
    soil.extend([p(r, -4.0), p(l, -4.0)]);
    out.push(Shape::new("earth", closed(&soil)));
    out.push(Shape::new("ground", line(&top)));
    for t in &s.things {
        thing_front(s, t, &mut out);
    }
    pole(s, &mut out);
    out
}

fn tree_m(s: &Site) -> f64 {
    if right_of(s) { -4.6 } else { WALL_M + 4.6 }
}

/// A tree that bends as the wind blows.
fn tree(s: &Site, out: &mut Vec<Shape>) {
    let x = tree_m(s);
    let y = ground_m(s, x);
    let blown = f64::from(s.wind_km_h) * 0.02;
    out.push(Shape::new(
        "timber dark",
        closed(&[p(x - 0.1, y), p(x + 0.1, y), p(x + blown + 0.06, y + 2.2), p(x + blown - 0.06, y + 2.2)]),
    ));
    out.push(Shape::new(
        "crown",
        circle(p(x + blown * 1.3, y + 2.8), 0.95) + &circle(p(x + blown * 2.0, y + 3.5), 0.65),
    ));
    let streaks: String = (0..s.wind_km_h / 10)
        .map(f64::from)
        .map(|i| line(&[p(x - 0.9 + 0.2 * i, y + 4.6 + 0.35 * i), p(x + 0.5 + 0.2 * i, y + 4.6 + 0.35 * i)]))
        .collect();
    out.push(Shape::new("fine", streaks));
}

fn house(s: &Site, out: &mut Vec<Shape>) {
    let (eave, ridge) = (s.eave_m, ridge_m(s));
    out.push(Shape::new("concrete", rect(p(0.0, 0.2), p(WALL_M, -0.9))));
    out.push(Shape::new("siding", rect(p(0.0, 0.2), p(WALL_M, eave))));
    let laps: String = (1..)
        .map(|i| 0.2 + 0.22 * f64::from(i))
        .take_while(|y| *y < eave)
        .map(|y| line(&[p(0.0, y), p(WALL_M, y)]))
        .collect();
    out.push(Shape::new("fine", laps));
    let door = s.thing(Sort::Door).map(|t| t.x_m);
    let (mut frames, mut panes) = (String::new(), String::new());
    for x in WINDOWS_M {
        for (low, high) in [(0.95, 2.05), (eave - 1.95, eave - 0.85)] {
            // No window where the door is.
            if low < 1.0 && door.is_some_and(|d| (d - x).abs() < 1.1) {
                continue;
            }
            frames.push_str(&rect(p(x - 0.5, low), p(x + 0.5, high)));
            let mid = (low + high) / 2.0;
            panes.push_str(&(line(&[p(x, low), p(x, high)]) + &line(&[p(x - 0.5, mid), p(x + 0.5, mid)])));
        }
    }
    out.push(Shape::new("room", frames.clone()));
    out.push(Shape::new("grain", panes));
    out.push(Shape::new("outline", frames));
    out.push(Shape::new(
        "roofing",
        closed(&[p(-VERGE_M, eave), p(0.1, ridge), p(WALL_M - 0.1, ridge), p(WALL_M + VERGE_M, eave)]),
    ));
    let courses: String = (1..8)
        .map(|i| f64::from(i) / 8.0)
        .map(|k| {
            line(&[
                p(-VERGE_M + k * (VERGE_M + 0.1), eave + k * (ridge - eave)),
                p(WALL_M + VERGE_M - k * (VERGE_M + 0.1), eave + k * (ridge - eave)),
            ])
        })
        .collect();
    out.push(Shape::new("courses", courses));
    out.push(Shape::new("gutter", rect(p(-VERGE_M, eave - 0.16), p(WALL_M + VERGE_M, eave))));
    // The job: a broken line under its part of the eave.
    let half = crate::practice::site::JOB_REACH_M;
    out.push(Shape::new("job", line(&[p(s.job_m - half, eave - 0.28), p(s.job_m + half, eave - 0.28)])));
    if s.lift {
        lift(s, out);
    }
}

/// A lift, parked beside the house away from the pole.
fn lift(s: &Site, out: &mut Vec<Shape>) {
    let x = if right_of(s) { -1.9 } else { WALL_M + 1.9 };
    let y = ground_m(s, x);
    out.push(Shape::new("timber pale", rect(p(x - 0.8, y + 0.25), p(x + 0.8, y + 0.7))));
    out.push(Shape::new("outline", circle(p(x - 0.5, y + 0.2), 0.2) + &circle(p(x + 0.5, y + 0.2), 0.2)));
    out.push(Shape::new(
        "outline",
        rect(p(x - 0.75, y + 1.0), p(x + 0.75, y + 2.0))
            + &line(&[p(x - 0.75, y + 1.5), p(x + 0.75, y + 1.5)])
            + &line(&[p(x - 0.6, y + 0.7), p(x + 0.6, y + 1.0)])
            + &line(&[p(x + 0.6, y + 0.7), p(x - 0.6, y + 1.0)]),
    ));
}

fn pole(s: &Site, out: &mut Vec<Shape>) {
    let x = s.pole_m;
    let line_there = s.thing(Sort::Line).is_some();
    let top = if line_there { POLE_M[0] + 0.2 } else { POLE_M[1] + 0.4 };
    out.push(Shape::new("timber dark", rect(p(x - 0.13, ground_m(s, x)), p(x + 0.13, top))));
    if line_there {
        out.push(Shape::new("timber dark", rect(p(x - 1.0, POLE_M[0] - 0.5), p(x + 1.0, POLE_M[0] - 0.32))));
        let away = if right_of(s) { 1.0 } else { -1.0 };
        for off in [-0.85, 0.0, 0.85] {
            out.push(Shape::new(
                "insulator",
                rect(p(x + off - 0.08, POLE_M[0] - 0.32), p(x + off + 0.08, POLE_M[0])),
            ));
            // Along the side street: towards who looks, and away.
            out.push(Shape::new(
                "bare",
                line(&[p(x + off, POLE_M[0]), p(x + off + away * 3.0, POLE_M[0] + 1.6)])
                    + &line(&[p(x + off, POLE_M[0]), p(x + off - away * 0.5, POLE_M[0] - 0.25)]),
            ));
        }
        out.push(Shape::new("board", rect(p(x + 0.2, POLE_M[0] - 1.9), p(x + 0.75, POLE_M[0] - 1.0))));
    }
    let flat = |sort: Sort| line(&s.wire(sort).into_iter().map(|q| p(q[0], q[1])).collect::<Vec<_>>());
    if s.thing(Sort::ServiceDrop).is_some() {
        let c = corner_m(s, 0.2);
        out.push(Shape::new("mast", line(&[p(c, 1.4), p(c, s.eave_m + 1.0)])));
        out.push(Shape::new("board", rect(p(c - 0.22, 1.1), p(c + 0.22, 1.75))));
        out.push(Shape::new("outline", circle(p(c, 1.48), 0.13)));
        out.push(Shape::new("drop", flat(Sort::ServiceDrop)));
        out.push(Shape::new("drop-lay", flat(Sort::ServiceDrop)));
    }
    if s.thing(Sort::Phone).is_some() {
        let c = corner_m(s, PHONE_IN_M);
        out.push(Shape::new("board", rect(p(c - 0.14, s.eave_m - 1.75), p(c + 0.14, s.eave_m - 1.4))));
        out.push(Shape::new("thin-line", flat(Sort::Phone)));
    }
}

fn thing_front(s: &Site, t: &Thing, out: &mut Vec<Shape>) {
    let (x, g) = (t.x_m, ground_m(s, t.x_m));
    match t.sort {
        Sort::SoftBed => {
            out.push(Shape::new(
                "bed",
                closed(&[
                    p(x - t.half_m, g),
                    p(x - t.half_m + 0.2, g + 0.16),
                    p(x + t.half_m - 0.2, g + 0.16),
                    p(x + t.half_m, g),
                ]),
            ));
            let stems: String = (0..8)
                .map(|i| x - t.half_m + 0.3 + 0.2 * f64::from(i))
                .map(|a| {
                    line(&[p(a, g + 0.14), p(a - 0.06, g + 0.42)])
                        + &line(&[p(a, g + 0.14), p(a + 0.07, g + 0.36)])
                })
                .collect();
            out.push(Shape::new("plants", stems));
        }
        Sort::Door => {
            out.push(Shape::new("timber", rect(p(x - DOOR_M[0], g + 0.1), p(x + DOOR_M[0], g + 2.15))));
            // The leaf stands a little open, towards who looks.
            let leaf = [
                p(x + DOOR_M[0], g + 0.1),
                p(x + DOOR_M[0], g + 2.15),
                p(x + DOOR_M[0] + 0.38, g + 2.0),
                p(x + DOOR_M[0] + 0.38, g - 0.05),
            ];
            out.push(Shape::new("board", closed(&leaf)));
            out.push(Shape::new(
                "room",
                rect(p(x - DOOR_M[0] + 0.08, g + 0.12), p(x + DOOR_M[0] - 0.02, g + 2.08)),
            ));
        }
        Sort::Skylight => {
            // As far down the roof as in the plan.
            let (a, b) = (s.eave_m + 0.73, s.eave_m + 1.18);
            let d = closed(&[
                p(x - SKY_HALF_M, a),
                p(x - SKY_HALF_M + 0.05, b),
                p(x + SKY_HALF_M - 0.05, b),
                p(x + SKY_HALF_M, a),
            ]);
            out.push(Shape::new("glass", d));
            out.push(Shape::new("fine", line(&[p(x - 0.2, a + 0.2), p(x + 0.05, b - 0.15)])));
        }
        Sort::Rot => {
            let jag: Vec<P> = (0..=8)
                .map(|i| {
                    p(x - ROT_HALF_M + 0.125 * f64::from(i), s.eave_m - if i % 2 == 0 { 0.02 } else { 0.14 })
                })
                .chain((0..=8).rev().map(|i| {
                    p(x - ROT_HALF_M + 0.125 * f64::from(i), s.eave_m - if i % 2 == 0 { 0.2 } else { 0.34 })
                }))
                .collect();
            out.push(Shape::new("rot", closed(&jag)));
        }
        Sort::Wasps => {
            let c = p(x, s.eave_m - 0.36);
            out.push(Shape::new("nest", circle(c, 0.19)));
            out.push(Shape::new(
                "fine",
                line(&[p(x - 0.17, c.y + 0.06), p(x + 0.17, c.y + 0.06)])
                    + &line(&[p(x - 0.17, c.y - 0.06), p(x + 0.17, c.y - 0.06)]),
            ));
            let flies: String = [(-0.42, 0.1), (0.4, -0.05), (-0.3, -0.28), (0.28, 0.2)]
                .into_iter()
                .map(|(a, b)| circle(p(x + a, c.y + b), 0.035))
                .collect();
            out.push(Shape::new("flies", flies));
        }
        Sort::Dog => dog(x, g, out),
        Sort::People => {
            // On the sidewalk, nearer than the wall: a little lower in the picture.
            for dx in [-0.35, 0.35] {
                out.extend(person(p(x + dx, g - 0.85), 1.0, Doing::Stands));
            }
        }
        Sort::Bush => out.push(Shape::new(
            "crown",
            circle(p(x - 0.25, g + 0.4), 0.42) + &circle(p(x + 0.3, g + 0.35), 0.38),
        )),
        Sort::Letters => {
            out.push(Shape::new("timber dark", rect(p(x - 0.05, g - 0.6), p(x + 0.05, g + 0.5))));
            out.push(Shape::new("board", rect(p(x - 0.22, g + 0.5), p(x + 0.22, g + 0.8))));
        }
        Sort::ServiceDrop | Sort::Line | Sort::Phone | Sort::Slope => {}
    }
}

fn dog(x: f64, g: f64, out: &mut Vec<Shape>) {
    out.push(Shape::new(
        "timber pale",
        closed(&[
            p(x + 0.5, g),
            p(x + 1.3, g),
            p(x + 1.3, g + 0.6),
            p(x + 0.9, g + 0.95),
            p(x + 0.5, g + 0.6),
        ]),
    ));
    out.push(Shape::new("room", rect(p(x + 0.75, g), p(x + 1.05, g + 0.42))));
    let body = [
        (-0.75, 0.62),
        (-0.55, 0.86),
        (-0.5, 0.72),
        (-0.38, 0.62),
        (0.1, 0.6),
        (0.32, 0.82),
        (0.28, 0.55),
        (0.24, 0.0),
        (0.14, 0.0),
        (0.1, 0.32),
        (-0.28, 0.32),
        (-0.3, 0.0),
        (-0.4, 0.0),
        (-0.42, 0.42),
        (-0.72, 0.5),
    ];
    out.push(Shape::new("dog", closed(&body.map(|(a, b)| p(x + a, g + b)))));
}

/// The property from above.
pub fn plan(s: &Site) -> Vec<Shape> {
    let mut out = Vec::new();
    let (l, r) = (ALONG_M[0] - 20.0, ALONG_M[1] + 20.0);
    out.push(Shape::new("lawn", rect(p(l, 6.0), p(r, -9.0))));
    out.push(Shape::new("concrete", rect(p(l, -WALK_M[0]), p(r, -WALK_M[1]))));
    for t in &s.things {
        thing_plan(t, &mut out);
    }
    if s.lift {
        let x = if right_of(s) { -1.9 } else { WALL_M + 1.9 };
        out.push(Shape::new("timber pale", rect(p(x - 0.8, -0.5), p(x + 0.8, -1.5))));
        out.push(Shape::new("outline", rect(p(x - 0.6, -0.65), p(x + 0.6, -1.35))));
    }
    let flat = |sort: Sort| line(&s.wire(sort).into_iter().map(|q| p(q[0], -q[2])).collect::<Vec<_>>());
    // It ends on the wall, under the roof's edge.
    if s.thing(Sort::Phone).is_some() {
        out.push(Shape::new("thin-line", flat(Sort::Phone)));
    }
    roof_plan(s, &mut out);
    out.push(Shape::new("crown", circle(p(tree_m(s), -1.0), 0.8)));
    let at = s.pole_m;
    if s.thing(Sort::Line).is_some() {
        for off in [-0.85, 0.0, 0.85] {
            out.push(Shape::new("bare", line(&[p(at + off, 6.0), p(at + off, -9.0)])));
        }
        out.push(Shape::new(
            "timber dark",
            rect(p(at - 1.0, -POLE_OUT_M + 0.09), p(at + 1.0, -POLE_OUT_M - 0.09)),
        ));
    }
    if s.thing(Sort::ServiceDrop).is_some() {
        out.push(Shape::new("drop", flat(Sort::ServiceDrop)));
        out.push(Shape::new("drop-lay", flat(Sort::ServiceDrop)));
    }
    out.push(Shape::new("timber dark", circle(p(at, -POLE_OUT_M), 0.2)));
    out
}

fn roof_plan(s: &Site, out: &mut Vec<Shape>) {
    out.push(Shape::new("roofing", rect(p(-VERGE_M, 6.0), p(WALL_M + VERGE_M, -over()))));
    let courses: String = (1..14)
        .map(|i| -over() + 0.5 * f64::from(i))
        .map(|y| line(&[p(-VERGE_M, y), p(WALL_M + VERGE_M, y)]))
        .collect();
    out.push(Shape::new("courses", courses));
    out.push(Shape::new("ridge-line", line(&[p(-VERGE_M, RIDGE_BACK_M), p(WALL_M + VERGE_M, RIDGE_BACK_M)])));
    out.push(Shape::new("wall-below", line(&[p(0.0, 0.0), p(WALL_M, 0.0)])));
    let half = crate::practice::site::JOB_REACH_M;
    out.push(Shape::new(
        "job",
        line(&[p(s.job_m - half, -over() - 0.12), p(s.job_m + half, -over() - 0.12)]),
    ));
    if let Some(t) = s.thing(Sort::Skylight) {
        out.push(Shape::new("glass", rect(p(t.x_m - SKY_HALF_M, 1.05), p(t.x_m + SKY_HALF_M, 1.95))));
    }
    if let Some(t) = s.thing(Sort::Rot) {
        let jag: Vec<P> = (0..=8)
            .map(|i| {
                p(t.x_m - ROT_HALF_M + 0.125 * f64::from(i), -over() + if i % 2 == 0 { 0.3 } else { 0.18 })
            })
            .collect();
        let mut all = jag;
        all.extend([p(t.x_m + ROT_HALF_M, -over()), p(t.x_m - ROT_HALF_M, -over())]);
        out.push(Shape::new("rot", closed(&all)));
    }
}

fn thing_plan(t: &Thing, out: &mut Vec<Shape>) {
    let (x, y) = (t.x_m, -t.z_m);
    match t.sort {
        Sort::SoftBed => {
            out.push(Shape::new("bed", rect(p(x - t.half_m, 0.0), p(x + t.half_m, 2.0 * y))));
            let stems: String = (0..4)
                .flat_map(|i| {
                    (0..2).map(move |k| {
                        circle(p(x - 0.7 + 0.45 * f64::from(i), -0.9 - 0.7 * f64::from(k)), 0.12)
                    })
                })
                .collect();
            out.push(Shape::new("plants", stems));
        }
        Sort::Slope => {
            // Contours, with short strokes down the fall.
            let side = if x < WALL_M / 2.0 { -1.0 } else { 1.0 };
            let lines: String = (0..4)
                .map(|i| x - side * t.half_m + side * (0.1 + 1.3 * f64::from(i)))
                .map(|a| {
                    line(&[p(a, -0.7), p(a + side * 0.2, -2.4), p(a, -4.6)])
                        + &line(&[p(a + side * 0.1, -1.5), p(a + side * 0.55, -1.5)])
                        + &line(&[p(a + side * 0.1, -3.3), p(a + side * 0.55, -3.3)])
                })
                .collect();
            out.push(Shape::new("contour", lines));
        }
        Sort::Door => {
            let leaf = 2.0 * DOOR_M[0];
            let hinge = p(x + DOOR_M[0], 0.0);
            let arc: Vec<P> = (0..=10)
                .map(|i| f64::from(i) * 0.157)
                .map(|a| p(hinge.x - leaf * libm::cos(a), -leaf * libm::sin(a)))
                .collect();
            out.push(Shape::new("contour", line(&arc)));
            out.push(Shape::new("outline", line(&[hinge, p(hinge.x - 0.3, -leaf * 0.94)])));
        }
        Sort::Dog => {
            out.push(Shape::new("timber pale", rect(p(x + 0.5, y + 0.4), p(x + 1.3, y - 0.4))));
            out.push(Shape::new(
                "dog",
                closed(
                    &[(-0.6, 0.0), (-0.45, 0.16), (0.25, 0.14), (0.55, 0.02), (0.25, -0.14), (-0.45, -0.16)]
                        .map(|(a, b)| p(x + a, y + b)),
                ),
            ));
        }
        Sort::People => {
            for dx in [-0.35, 0.35] {
                out.push(Shape::new(
                    "shoulders",
                    closed(
                        &[(-0.24, 0.08), (0.24, 0.08), (0.24, -0.08), (-0.24, -0.08)]
                            .map(|(a, b)| p(x + dx + a, y + b)),
                    ),
                ));
                out.push(Shape::new("head", circle(p(x + dx, y), 0.12)));
            }
        }
        Sort::Bush => out.push(Shape::new("crown", circle(p(x, y), t.half_m))),
        Sort::Letters => out.push(Shape::new("board", rect(p(x - 0.22, y + 0.15), p(x + 0.22, y - 0.15)))),
        Sort::Wasps => out.push(Shape::new("nest", circle(p(x, y - 0.15), 0.16))),
        Sort::ServiceDrop | Sort::Line | Sort::Phone | Sort::Skylight | Sort::Rot => {}
    }
}

/// The ladder from above, and as far as its top can come down; `turned` is how far it has gone over to a side
/// (-1 to 1).
pub fn ladder_plan(s: &Site, at: &Placed, turned: f64) -> Vec<Shape> {
    let foot = p(at.ladder_m, -(over() + at.foot_m));
    let long = s.ladder_long_m(at);
    // The rails past the eave lie over the roof.
    let lean = at.foot_m / libm::hypot(s.eave_m, at.foot_m);
    let up = long * lean;
    let aside = long * libm::sin(turned * core::f64::consts::FRAC_PI_2);
    let tip = p(foot.x + aside, foot.y + up * (1.0 - turned.abs()));
    let d = foot.dist(tip).max(0.1);
    let (ux, uy) = ((tip.x - foot.x) / d, (tip.y - foot.y) / d);
    let off = |q: P, k: f64| p(q.x - uy * k, q.y + ux * k);
    let n = (d / 0.3).max(1.0) as usize;
    let rungs: String = (1..=n)
        .map(|i| foot.lerp(tip, i as f64 / (n as f64 + 0.5)))
        .map(|q| line(&[off(q, -0.2), off(q, 0.2)]))
        .collect();
    vec![
        Shape::new("reach-ring", circle(foot, long)),
        Shape::new("rung", rungs),
        Shape::new(
            "rail",
            line(&[off(foot, -0.2), off(tip, -0.2)]) + &line(&[off(foot, 0.2), off(tip, 0.2)]),
        ),
        Shape::new("anchor", circle(p(at.anchor_m, RIDGE_BACK_M), 0.14)),
        Shape::new("way", line(&[p(at.anchor_m, RIDGE_BACK_M), p(at.ladder_m, -over())])),
    ]
}

/// The ladder from in front as it goes over to a side: a rod about its foot.
pub fn ladder_tipping(s: &Site, at: &Placed, turned: f64) -> Vec<Shape> {
    let long = libm::hypot(s.eave_m, at.foot_m) + 0.9;
    let high = long * s.eave_m / libm::hypot(s.eave_m, at.foot_m);
    let a = turned * core::f64::consts::FRAC_PI_2;
    let foot = p(at.ladder_m + 0.2 * turned.signum(), ground_m(s, at.ladder_m));
    // Leaning on the wall it is as high as it is; lying on the ground as long.
    let reach = high + (long - high) * turned.abs();
    let (c, n) = (libm::cos(a), libm::sin(a));
    let place = |x: f64, y: f64| p(foot.x + x * c + y * n, foot.y - x * n + y * c);
    let back = -0.4 * turned.signum();
    let steps = (reach / 0.3) as usize;
    let rungs: String = (1..=steps)
        .map(|i| reach * i as f64 / (steps as f64 + 0.5))
        .map(|y| line(&[place(back, y), place(0.0, y)]))
        .collect();
    let mut out = vec![Shape::new("rung", rungs)];
    for x in [back, 0.0] {
        out.push(Shape::new(
            "rail",
            closed(&[
                place(x - 0.035, 0.0),
                place(x + 0.035, 0.0),
                place(x + 0.035, reach),
                place(x - 0.035, reach),
            ]),
        ));
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Whatever can be marked is in both pictures, apart enough from the next to be tapped, and alike along the wall.
    #[test]
    fn everything_can_be_tapped_in_both_pictures() {
        for seed in 0..400 {
            let s = Site::drawn(seed);
            let all = spots(&s);
            for (i, q) in all.iter().enumerate() {
                for (view, frame) in [front_frame(), plan_frame()].into_iter().enumerate() {
                    let at = q[view];
                    assert!(at.x > frame.left_m && at.x < frame.right_m, "{seed} {:?} {at:?}", s.things[i]);
                    assert!(at.y > frame.bottom_m && at.y < frame.top_m, "{seed} {:?} {at:?}", s.things[i]);
                    // A bug: people under a letter box, a bed under a door.
                    let near = all.iter().skip(i + 1).position(|o| o[view].dist(at) < 0.6);
                    assert_eq!(near, None, "{seed} {view} {:?}", s.things[i]);
                }
            }
            assert!(!front(&s).is_empty() && !plan(&s).is_empty());
        }
    }
}
