//! The others of the crew, and what they bring: drawn in the same cloth as the worker, without a harness.

use super::ink::{Shape, Turned, circle, closed, line, rect};
use crate::geometry::{P, p};

/// What a person is doing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Doing {
    /// Stands and looks.
    Stands,
    /// A hand at the ear.
    Phones,
    /// Both arms up.
    Reaches,
    /// On one knee beside somebody.
    Kneels,
    /// Sits on the ground, knees up.
    Sits,
}

/// Neck, hip, head; shoulder to hand; hip to ankle, far and near: m from between the feet, facing +x.
struct Joints {
    head: (f64, f64),
    neck: (f64, f64),
    hip: (f64, f64),
    arm: [(f64, f64); 3],
    far_leg: [(f64, f64); 3],
    near_leg: [(f64, f64); 3],
}

fn joints(doing: Doing) -> Joints {
    let standing = Joints {
        head: (0.02, 1.58),
        neck: (0.0, 1.4),
        hip: (-0.01, 0.88),
        arm: [(0.0, 1.36), (0.03, 1.08), (0.12, 0.84)],
        far_leg: [(-0.01, 0.86), (-0.04, 0.47), (-0.1, 0.1)],
        near_leg: [(-0.01, 0.86), (0.06, 0.48), (0.05, 0.1)],
    };
    match doing {
        Doing::Stands => standing,
        Doing::Phones => Joints { arm: [(0.0, 1.36), (0.2, 1.2), (0.1, 1.52)], ..standing },
        Doing::Reaches => Joints { arm: [(0.0, 1.36), (0.2, 1.56), (0.28, 1.84)], ..standing },
        Doing::Kneels => Joints {
            head: (0.2, 1.14),
            neck: (0.12, 0.98),
            hip: (0.0, 0.52),
            arm: [(0.12, 0.94), (0.3, 0.78), (0.5, 0.72)],
            far_leg: [(0.0, 0.5), (0.3, 0.46), (0.28, 0.1)],
            near_leg: [(0.0, 0.5), (0.02, 0.1), (-0.36, 0.1)],
        },
        Doing::Sits => Joints {
            head: (-0.12, 0.82),
            neck: (-0.16, 0.64),
            hip: (-0.2, 0.14),
            arm: [(-0.15, 0.6), (0.06, 0.44), (0.24, 0.46)],
            far_leg: [(-0.2, 0.14), (0.16, 0.46), (0.4, 0.1)],
            near_leg: [(-0.2, 0.14), (0.22, 0.5), (0.46, 0.1)],
        },
    }
}

/// A person on the ground at a point, facing +x or -x; back to front.
pub fn person(at: P, faces_sign: f64, doing: Doing) -> Vec<Shape> {
    let j = joints(doing);
    let q = |(x, y): (f64, f64)| p(at.x + faces_sign * x, at.y + y);
    let all = |a: &[(f64, f64)]| a.iter().map(|x| q(*x)).collect::<Vec<P>>();
    let boot = |(x, y): (f64, f64)| {
        let low = y - 0.1;
        closed(&all(&[
            (x - 0.07, y + 0.03),
            (x - 0.08, low),
            (x + 0.19, low),
            (x + 0.18, low + 0.05),
            (x + 0.05, y + 0.03),
        ]))
    };
    let leg = |l: &[(f64, f64); 3]| line(&all(l));
    let head = Turned { at: q(j.head), by_rad: 0.0 };
    let f = |x: f64, y: f64| head.place(faces_sign * x, y);
    let dome: Vec<P> = (0..=8)
        .map(|i| core::f64::consts::PI * f64::from(i) / 8.0)
        .map(|a| f(0.13 * libm::cos(a), 0.02 + 0.125 * libm::sin(a)))
        .chain([f(-0.13, 0.0), f(0.18, 0.0), f(0.18, 0.015)])
        .collect();
    vec![
        Shape::new("limb ink thigh far", leg(&j.far_leg)),
        Shape::new("limb cloth thigh far", leg(&j.far_leg)),
        Shape::new("boot far", boot(j.far_leg[2])),
        Shape::new("limb ink trunk", line(&all(&[j.neck, j.hip]))),
        Shape::new("limb cloth trunk", line(&all(&[j.neck, j.hip]))),
        Shape::new("face", circle(head.place(0.0, -0.015), 0.1)),
        Shape::new("helmet", closed(&dome)),
        Shape::new("limb ink thigh", leg(&j.near_leg)),
        Shape::new("limb cloth thigh", leg(&j.near_leg)),
        Shape::new("boot", boot(j.near_leg[2])),
        Shape::new("limb ink arm", line(&all(&j.arm))),
        Shape::new("limb cloth arm", line(&all(&j.arm))),
        Shape::new("hand", circle(q(j.arm[2]), 0.055)),
    ]
}

/// A bag with a coiled line and a lifting device.
pub fn bag(at: P) -> Vec<Shape> {
    vec![
        Shape::new(
            "brick",
            closed(&[
                p(at.x - 0.3, at.y),
                p(at.x + 0.3, at.y),
                p(at.x + 0.24, at.y + 0.42),
                p(at.x - 0.24, at.y + 0.42),
            ]),
        ),
        Shape::new("rope", circle(p(at.x - 0.06, at.y + 0.5), 0.12)),
        Shape::new("case", rect(p(at.x + 0.08, at.y + 0.4), p(at.x + 0.22, at.y + 0.66))),
    ]
}

/// A ladder from foot to tip, seen from the side.
pub fn ladder(foot: P, tip: P) -> Vec<Shape> {
    let long_m = foot.dist(tip).max(0.1);
    let t = Turned { at: foot, by_rad: libm::atan2(tip.y - foot.y, tip.x - foot.x) };
    let rungs: String = (1..(long_m / 0.305) as usize)
        .map(|i| 0.305 * i as f64)
        .map(|x| line(&[t.place(x, 0.012), t.place(x + 0.012, 0.085)]))
        .collect();
    vec![
        Shape::new("rail far", line(&[t.place(0.05, 0.085), t.place(long_m - 0.02, 0.085)])),
        Shape::new("rung", rungs),
        Shape::new("rail", closed(&t.all(&[(0.0, -0.03), (long_m, -0.03), (long_m, 0.03), (0.0, 0.03)]))),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Whatever they do, nobody sinks into the ground, and each has a head over the hip.
    #[test]
    fn people_stay_on_the_ground() {
        for doing in [Doing::Stands, Doing::Phones, Doing::Reaches, Doing::Kneels, Doing::Sits] {
            let j = joints(doing);
            assert!(j.head.1 > j.neck.1 && j.neck.1 > j.hip.1, "{doing:?}");
            for (_, y) in [j.hip, j.arm[2], j.far_leg[2], j.near_leg[2]] {
                assert!(y >= 0.1 - 1e-9, "{doing:?}: {y}");
            }
            // Both ways round it is the same person.
            let (a, b) = (person(p(0.0, 0.0), 1.0, doing), person(p(0.0, 0.0), -1.0, doing));
            assert_eq!(a.len(), b.len());
        }
    }
}
