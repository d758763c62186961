//! The house in section as cut materials: what the picture is made of, back to front. A wall is cut where the
//! worker's wall face stands; the far half is the near one seen in a mirror.
//!
//! Everything drawn as solid stays inside the outline that the engine knows: shingles under the roof's plane,
//! siding behind the wall's face. The gutter alone hangs before the fascia, beside the plane of the fall.

use super::ink::{Shape, closed, cm, line, rect};
use crate::geometry::{FASCIA_DEPTH_M, Geometry, P, p};
use crate::practice::houses::HouseKind;
use crate::scenario::{PowerLine, Scenario};

/// The ground goes on this far past the house to either side, m: a wide window shows more.
const BEYOND_M: f64 = 14.0;
/// Layers of the roof, square to it, m: shingles, sheathing, rafter (a 2x6, 0.14 m).
const SHINGLE_M: f64 = 0.028;
const SHEATHING_M: f64 = 0.02;
const RAFTER_M: f64 = 0.14;
/// One course of shingles shows this much, m (common practice: 5 to 5 5/8 in).
const COURSE_M: f64 = 0.14;
/// The wall from its face inwards, m: siding, sheathing, studs, board.
const SIDING_M: f64 = 0.03;
const WALL_M: f64 = 0.2;
/// One lap of siding shows this much, m.
const LAP_M: f64 = 0.15;

/// The near half's sections, with the far half a mirror away.
struct Cut<'a> {
    g: &'a Geometry,
    /// Rise of the roof over run.
    rise_ratio: f64,
    /// What a metre square to the roof is, measured plumb.
    plumb_ratio: f64,
}

impl Cut<'_> {
    /// Height of the roof's plane, m.
    fn roof_y(&self, x: f64) -> f64 {
        self.g.eave.y + (self.g.eave.x - x) * self.rise_ratio
    }
    /// A point `up` along the slope from the eave, and so deep under the plane.
    fn under(&self, up_m: f64, deep_m: f64) -> P {
        let d = self.g.down_slope;
        p(self.g.eave.x - up_m * d.x, self.g.eave.y - up_m * d.y - deep_m * self.plumb_ratio)
    }
    /// Top of the wall: under the rafters.
    fn wall_top(&self) -> f64 {
        (self.roof_y(0.0) - (SHINGLE_M + SHEATHING_M + RAFTER_M) * self.plumb_ratio - 0.03)
            .max(self.g.fascia.y - 0.05)
    }
    fn mirror(&self, q: P) -> P {
        p(2.0 * self.g.ridge.x - q.x, q.y)
    }
    /// Both halves of an outline.
    fn both(&self, class: &'static str, points: &[P], out: &mut Vec<Shape>) {
        let far: Vec<P> = points.iter().map(|q| self.mirror(*q)).collect();
        out.push(Shape::new(class, closed(&far)));
        out.push(Shape::new(class, closed(points)));
    }
}

/// Whether a wire is near enough to matter.
pub fn wire_is_drawn(g: &Geometry, w: &PowerLine) -> bool {
    w.distance_m < g.ladder.foot.x + 16.0 && w.height_m < g.ridge.y + 8.0
}

/// Heights of the floors, m.
fn floors(wall_top_m: f64) -> Vec<f64> {
    [0.16, 2.75, 5.1].into_iter().filter(|y| *y < 0.5 || y + 1.9 < wall_top_m).collect()
}

/// Sill and head of the window that is worked at, m.
fn window(g: &Geometry) -> (f64, f64) {
    let sill = (g.fascia.y - 2.0).max(0.8);
    (sill, sill + 1.1)
}

/// Everything that stands still, back to front; the anchor and its gear are drawn with what moves.
pub fn house(g: &Geometry, s: &Scenario) -> Vec<Shape> {
    let (sin, cos) = (-g.down_slope.y, g.down_slope.x);
    let cut = Cut { g, rise_ratio: sin / cos, plumb_ratio: 1.0 / cos };
    let mut out = Vec::new();
    trees(&cut, &mut out);
    behind(&cut, s, &mut out);
    soil(&cut, &mut out);
    rooms(&cut, &mut out);
    wall(&cut, &mut out);
    roof(&cut, &mut out);
    ground(&cut, &mut out);
    deck(g, &mut out);
    if let Some(w) = s.power_line.filter(|w| wire_is_drawn(g, w)) {
        wire(g, &w, &mut out);
    }
    out
}

fn trees(cut: &Cut, out: &mut Vec<Shape>) {
    let far_wall = 2.0 * cut.g.ridge.x;
    let crown = |x: f64, half: f64, high: f64| {
        let y = cut.g.ground_y_m(x);
        format!(
            "M{} {}C{} {} {} {} {} {}S{} {} {} {}Z",
            cm(x - half),
            cm(y),
            cm(x - half),
            cm(y + 0.6 * high),
            cm(x - 0.55 * half),
            cm(y + high),
            cm(x),
            cm(y + high),
            cm(x + half),
            cm(y + 0.6 * high),
            cm(x + half),
            cm(y)
        )
    };
    out.push(Shape::new(
        "tree",
        crown(6.4, 1.15, 2.4)
            + &crown(7.6, 1.1, 1.6)
            + &crown(far_wall - 2.6, 1.2, 2.7)
            + &crown(11.0, 1.3, 2.9),
    ));
}

/// What stands behind the plane that is cut: a dormer, a chimney.
fn behind(cut: &Cut, s: &Scenario, out: &mut Vec<Shape>) {
    let g = cut.g;
    match HouseKind::of(s) {
        Some(HouseKind::Cape) => {
            // Its cheek stands on the slope, its own roof runs back into it.
            let x = g.ridge.x * 0.42;
            let (base, head) = (cut.roof_y(x), cut.roof_y(x) + 1.35);
            let back = x - 1.75 / cut.rise_ratio.max(0.2);
            out.push(Shape::new("behind", closed(&[p(x, base), p(x, head), p(back, head), p(back, base)])));
            let laps: String = (1..8)
                .map(|i| {
                    line(&[
                        p(x, base + 0.17 * f64::from(i)),
                        p(x - 0.17 * f64::from(i) / cut.rise_ratio.max(0.2), base + 0.17 * f64::from(i)),
                    ])
                })
                .collect();
            out.push(Shape::new("grain", laps));
            out.push(Shape::new(
                "roofing",
                closed(&[
                    p(x + 0.22, head - 0.04),
                    p(x + 0.22, head + 0.06),
                    p(back, head + 0.42),
                    p(back - 0.2, head + 0.3),
                ]),
            ));
        }
        Some(HouseKind::TallGable) => {
            let (x, top) = (g.ridge.x - 1.0, g.ridge.y + 0.75);
            out.push(Shape::new("brick", rect(p(x - 0.4, cut.g.eave.y), p(x + 0.3, top))));
            out.push(Shape::new("grain", courses(x - 0.4, x + 0.3, cut.g.eave.y, top)));
            out.push(Shape::new("brick", rect(p(x - 0.46, top), p(x + 0.36, top + 0.1))));
        }
        _ => {}
    }
}

/// Joints of brickwork.
pub(super) fn courses(x0: f64, x1: f64, y0: f64, y1: f64) -> String {
    let mut d = String::new();
    let n = ((y1 - y0) / 0.13).max(0.0) as usize;
    for i in 0..=n {
        let y = y0 + 0.13 * i as f64;
        d.push_str(&line(&[p(x0, y), p(x1, y)]));
        let x = x0 + (x1 - x0) * if i % 2 == 0 { 0.35 } else { 0.7 };
        d.push_str(&line(&[p(x, y), p(x, (y + 0.13).min(y1))]));
    }
    d
}

fn soil(cut: &Cut, out: &mut Vec<Shape>) {
    let g = cut.g;
    let (left, right) = (2.0 * g.ridge.x - BEYOND_M, BEYOND_M);
    let low = g.ground_y_m(right);
    let under = low.min(0.0) - BEYOND_M;
    let all = closed(&[p(left, 0.0), p(0.0, 0.0), p(right, low), p(right, under), p(left, under)]);
    out.push(Shape::new("earth", all.clone()));
    out.push(Shape::new("soil", all));
}

fn ground(cut: &Cut, out: &mut Vec<Shape>) {
    let g = cut.g;
    let far = cut.mirror(p(0.0, 0.0));
    out.push(Shape::new("lawn", line(&[p(0.02, -0.03), p(BEYOND_M, g.ground_y_m(BEYOND_M) - 0.03)])));
    out.push(Shape::new("lawn", line(&[p(far.x - BEYOND_M, -0.03), p(far.x - 0.02, -0.03)])));
    out.push(Shape::new("ground", line(&[p(0.0, 0.0), p(BEYOND_M, g.ground_y_m(BEYOND_M))])));
    out.push(Shape::new("ground", line(&[p(far.x - BEYOND_M, 0.0), far])));
}

fn rooms(cut: &Cut, out: &mut Vec<Shape>) {
    let top = cut.wall_top();
    let r = cut.g.ridge;
    let inner = -WALL_M;
    let deep = (SHINGLE_M + SHEATHING_M) * cut.plumb_ratio;
    let far = cut.mirror(p(inner, 0.0)).x;
    out.push(Shape::new(
        "room",
        closed(&[
            p(inner, -0.1),
            p(inner, cut.roof_y(inner) - deep),
            p(r.x, r.y - deep),
            p(far, cut.roof_y(inner) - deep),
            p(far, -0.1),
        ]),
    ));
    // Foundation under both walls.
    cut.both("concrete", &[p(-0.02, 0.14), p(-0.02, -1.1), p(-0.26, -1.1), p(-0.26, 0.14)], out);
    let floors = floors(top);
    let mut fine = String::new();
    for (i, y) in floors.iter().enumerate() {
        let head = floors.get(i + 1).copied().unwrap_or(top - 0.2);
        // A door below, windows in the far wall above: a scale that everybody knows.
        if i == 0 {
            fine.push_str(&line(&[p(-3.4, *y), p(-3.4, y + 2.03), p(-2.6, y + 2.03), p(-2.6, *y)]));
            fine.push_str(&line(&[p(-2.72, y + 0.95), p(-2.68, y + 0.95)]));
        }
        if head - y > 2.0 {
            fine.push_str(&rect(p(-5.6, y + 0.9), p(-4.7, y + 1.85)));
            fine.push_str(&line(&[p(-5.15, y + 0.9), p(-5.15, y + 1.85)]));
        }
    }
    out.push(Shape::new("fine", fine));
    let mut grain = String::new();
    for y in floors.iter().copied().chain([top]) {
        let low = y - if y > 0.5 { 0.22 } else { 0.18 };
        out.push(Shape::new("timber", rect(p(far, low), p(inner, y))));
        for k in [0.35, 0.68] {
            grain.push_str(&line(&[p(far + 0.3, low + (y - low) * k), p(inner - 0.3, low + (y - low) * k)]));
        }
    }
    out.push(Shape::new("grain", grain));
}

fn wall(cut: &Cut, out: &mut Vec<Shape>) {
    let g = cut.g;
    let top = cut.wall_top();
    let (sill, head) = window(g);
    let (studs, sheath) = (-WALL_M + 0.015, -SIDING_M - 0.02);
    for (y0, y1) in [(0.14, sill), (head, top)] {
        cut.both("timber pale", &[p(-WALL_M, y0), p(-WALL_M, y1), p(sheath, y1), p(sheath, y0)], out);
        let n = ((y1 - y0) / 0.11) as usize;
        // Insulation between the studs.
        let wool: String = (0..n)
            .map(|i| {
                let y = y0 + 0.11 * (i as f64 + 0.5);
                format!(
                    "M{} {}Q{} {} {} {}",
                    cm(studs + 0.01),
                    cm(y),
                    cm((studs + sheath) / 2.0),
                    cm(y + 0.06),
                    cm(sheath - 0.01),
                    cm(y)
                )
            })
            .collect();
        out.push(Shape::new("grain", wool));
        // Laps of siding, each over the one below, behind the face.
        let laps = ((y1.min(g.fascia.y) - y0) / LAP_M).ceil() as usize;
        let mut teeth = vec![p(-SIDING_M, y0)];
        for i in 0..laps {
            let (a, b) = (y0 + LAP_M * i as f64, (y0 + LAP_M * (i + 1) as f64).min(y1));
            teeth.push(p(0.0, a));
            teeth.push(p(-SIDING_M + 0.006, b));
        }
        teeth.push(p(-SIDING_M, y1));
        cut.both("siding", &teeth, out);
    }
    // The window: sill, head, two sashes and the pane.
    let pane = -WALL_M / 2.0;
    cut.both(
        "timber pale",
        &[p(-WALL_M, sill - 0.03), p(0.0, sill - 0.03), p(0.0, sill + 0.02), p(-WALL_M, sill + 0.04)],
        out,
    );
    cut.both(
        "timber pale",
        &[p(-WALL_M, head - 0.03), p(-0.01, head - 0.03), p(-0.01, head + 0.03), p(-WALL_M, head + 0.03)],
        out,
    );
    let glass = |x: f64| line(&[p(x, sill + 0.03), p(x, head - 0.03)]);
    let far = cut.mirror(p(pane, 0.0)).x;
    out.push(Shape::new("sash", glass(pane - 0.02) + &glass(far)));
    out.push(Shape::new("glass", glass(pane + 0.015) + &glass(far - 0.03)));
}

fn roof(cut: &Cut, out: &mut Vec<Shape>) {
    let g = cut.g;
    let run = g.ridge.dist(g.eave);
    let (a, b) = (SHINGLE_M, SHINGLE_M + SHEATHING_M);
    let c = b + RAFTER_M;
    // Rafter: plumb cut behind the fascia, level cut over the soffit, plumb at the ridge.
    let tail = g.eave.x - 0.03;
    let level = g.fascia.y + 0.015;
    let bottom = |x: f64| cut.roof_y(x) - c * cut.plumb_ratio;
    let low = g.eave.x - (level - (g.eave.y - c * cut.plumb_ratio)) / cut.rise_ratio.max(0.05);
    let mut rafter = vec![p(tail, cut.roof_y(tail) - b * cut.plumb_ratio)];
    if bottom(tail) < level {
        rafter.push(p(tail, level));
        rafter.push(p(low.min(tail), level));
    } else {
        rafter.push(p(tail, bottom(tail)));
    }
    rafter.push(p(g.ridge.x + 0.02, bottom(g.ridge.x + 0.02)));
    rafter.push(p(g.ridge.x + 0.02, g.ridge.y - b * cut.plumb_ratio));
    cut.both("timber", &rafter, out);
    let grain: String = [0.3, 0.55, 0.8]
        .into_iter()
        .map(|k| {
            let d = b + RAFTER_M * k;
            line(&[cut.under(0.35, d), cut.under(run - 0.25, d)])
        })
        .collect();
    out.push(Shape::new("grain", grain));
    out.push(Shape::new(
        "timber dark",
        rect(
            p(g.ridge.x - 0.02, g.ridge.y - (c + 0.04) * cut.plumb_ratio),
            p(g.ridge.x + 0.02, g.ridge.y - b),
        ),
    ));
    // Sheathing, then shingles: each course comes out over the next one down.
    cut.both(
        "timber dark",
        &[cut.under(0.0, a), cut.under(run, a), cut.under(run, b), cut.under(0.0, b)],
        out,
    );
    let mut course = vec![cut.under(0.0, SHINGLE_M)];
    let n = (run / COURSE_M) as usize;
    for i in 0..=n {
        let (at, to) = (COURSE_M * i as f64, (COURSE_M * (i + 1) as f64).min(run));
        course.push(cut.under(at, 0.0));
        course.push(cut.under(to, 0.016));
    }
    course.push(p(g.ridge.x, g.ridge.y));
    course.push(p(g.ridge.x, g.ridge.y - SHINGLE_M * cut.plumb_ratio));
    cut.both("roofing", &course, out);
    // Fascia, soffit, gutter.
    cut.both(
        "board",
        &[
            g.eave,
            p(g.eave.x, g.fascia.y),
            p(g.eave.x - 0.03, g.fascia.y),
            p(g.eave.x - 0.03, cut.roof_y(g.eave.x - 0.03)),
        ],
        out,
    );
    cut.both(
        "board",
        &[
            p(0.0, g.fascia.y),
            p(g.eave.x - 0.03, g.fascia.y),
            p(g.eave.x - 0.03, g.fascia.y + 0.014),
            p(0.0, g.fascia.y + 0.014),
        ],
        out,
    );
    let (gx, gy) = (g.eave.x, g.eave.y - 0.035);
    let depth = 0.1_f64.min(FASCIA_DEPTH_M * 0.6);
    cut.both(
        "gutter",
        &[
            p(gx, gy),
            p(gx, gy - depth),
            p(gx + 0.08, gy - depth),
            p(gx + 0.115, gy - 0.03),
            p(gx + 0.115, gy - 0.005),
            p(gx + 0.1, gy - 0.005),
            p(gx + 0.1, gy - 0.03),
            p(gx + 0.07, gy - depth + 0.015),
            p(gx + 0.012, gy - depth + 0.015),
            p(gx + 0.012, gy),
        ],
        out,
    );
}

fn deck(g: &Geometry, out: &mut Vec<Shape>) {
    let Some((x0, x1, top)) = g.obstacle else { return };
    let post = |x: f64| rect(p(x, g.ground_y_m(x)), p(x + 0.1, top - 0.22));
    out.push(Shape::new("timber", post(x0 + 0.04)));
    out.push(Shape::new("timber", post(x1 - 0.14)));
    out.push(Shape::new("timber", rect(p(x0 + 0.01, top - 0.22), p(x1 - 0.01, top - 0.035))));
    out.push(Shape::new(
        "grain",
        line(&[p(x0 + 0.1, top - 0.1), p(x1 - 0.1, top - 0.1)])
            + &line(&[p(x0 + 0.1, top - 0.16), p(x1 - 0.1, top - 0.16)]),
    ));
    let n = ((x1 - x0) / 0.145).max(1.0) as usize;
    let wide = (x1 - x0) / n as f64;
    let boards: String = (0..n)
        .map(|i| {
            rect(p(x0 + wide * i as f64 + 0.004, top - 0.035), p(x0 + wide * (i + 1) as f64 - 0.004, top))
        })
        .collect();
    out.push(Shape::new("board", boards));
}

fn wire(g: &Geometry, w: &PowerLine, out: &mut Vec<Shape>) {
    let reach_m = g.ladder.foot.dist(g.ladder.tip);
    let (foot, x) = (g.ladder.foot, w.distance_m);
    // As far as the ladder's top can come while it turns about its foot.
    out.push(Shape::new(
        "reach",
        format!(
            "M{} {}A{} {} 0 0 0 {} {}",
            cm(foot.x),
            cm(foot.y + reach_m),
            cm(reach_m),
            cm(reach_m),
            cm(foot.x + reach_m),
            cm(foot.y)
        ),
    ));
    let low = g.ground_y_m(x);
    out.push(Shape::new("timber", rect(p(x - 0.55, low), p(x - 0.35, w.height_m + 0.9))));
    out.push(Shape::new("timber", rect(p(x - 0.7, w.height_m - 0.22), p(x + 0.25, w.height_m - 0.1))));
    out.push(Shape::new("insulator", rect(p(x - 0.04, w.height_m - 0.1), p(x + 0.04, w.height_m))));
    out.push(Shape::new("wire", super::ink::circle(p(x, w.height_m + 0.05), 0.09)));
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The numbers of a path, in pairs.
    fn points(d: &str) -> Vec<P> {
        let n: Vec<f64> = d
            .split(|c: char| !(c.is_ascii_digit() || c == '.' || c == '-'))
            .filter_map(|t| t.parse().ok())
            .collect();
        n.chunks_exact(2).map(|q| p(q[0] / 100.0, q[1] / 100.0)).collect()
    }

    /// What is drawn as solid stays inside the outline that a fall meets: only the gutter stands out, and that
    /// by less than 12 cm. On all five houses.
    #[test]
    fn materials_stay_inside_the_outline_that_a_fall_meets() {
        for kind in HouseKind::ALL {
            let mut s = Scenario::default();
            kind.move_in(&mut s);
            let g = Geometry::of(&s).expect("stands");
            for shape in house(&g, &s) {
                let solid = ["siding", "roofing", "timber", "timber pale", "timber dark", "board"]
                    .contains(&shape.class);
                let near = |q: &P| q.x > g.ridge.x && g.obstacle.is_none();
                for q in points(&shape.d).iter().filter(|q| near(q) && q.x < 3.0) {
                    if solid && HouseKind::of(&s) != Some(HouseKind::Cape) {
                        assert!(
                            g.depth_in_house_m(*q) > -0.006,
                            "{kind:?} {} {q:?}: {}",
                            shape.class,
                            g.depth_in_house_m(*q)
                        );
                    }
                    if shape.class == "gutter" {
                        assert!(g.depth_in_house_m(*q) > -0.12, "{kind:?} {q:?}");
                    }
                }
            }
        }
    }

    /// Each house is known by what it has.
    #[test]
    fn each_house_shows_its_own_features() {
        let classes = |kind: HouseKind| {
            let mut s = Scenario::default();
            kind.move_in(&mut s);
            let g = Geometry::of(&s).expect("stands");
            house(&g, &s).iter().map(|q| q.class).collect::<Vec<_>>()
        };
        assert!(classes(HouseKind::Cape).contains(&"behind"));
        assert!(classes(HouseKind::TallGable).contains(&"brick"));
        assert!(!classes(HouseKind::Bungalow).contains(&"brick"));
    }
}
