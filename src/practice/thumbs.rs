//! Trade rules of thumb, each beside a number: 'common practice' with no source, held against the
//! engine's own figures, a closed form, or a published rule. Every number is computed here.

use crate::physics::equipment::{
    GRAB_BITE_M, GRAB_DEAD_TRAVEL_M, GRAB_DRAG_N, GRAB_GRIP_N, GRAB_LOOSE_GRIP_N, HARNESS_COMPLIANCE_M_PER_N,
    HARNESS_SLIDE_SNUG_M,
};
use crate::rules::clearance::free_fall_m;
use crate::rules::{LimitKind, place};
use crate::scenario::{AnchorKind, FastenerKind, Scenario};
use crate::strength::{anchor, chimney};
use crate::units::{FT_M, G_M_S2, KN_N, LB_KG, LBF_N, Quantity, Rounding};

/// How a rule of thumb fares.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fares {
    /// It holds.
    Holds,
    /// It holds here and not there.
    Partly,
    /// There is no figure to hold it against.
    Unknown,
}

/// A rule of thumb.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Thumb {
    /// A harness above 10 ft.
    Harness,
    /// An anchor good for 2,000 lb.
    Anchor,
    /// 120 lb falling 9 ft gives 900 lb.
    Force,
    /// An absorber adds 4 to 5 ft.
    Absorber,
    /// A grab a lanyard's length below the D-ring.
    Below,
    /// A grab at face height or above.
    Face,
    /// Four nails each side of the ridge.
    Nails,
    /// Bolt and latch every 15 to 20 minutes.
    Look,
    /// The arrow points to the anchor.
    Arrow,
    /// A low point, a vent or a duct.
    Low,
    /// A chimney must be sound.
    Chimney,
    /// Nail holes are sealed.
    Holes,
}

/// A number that a sentence names.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Named {
    /// Its name in the sentence.
    pub name: &'static str,
    /// What it measures.
    pub quantity: Quantity,
    /// SI.
    pub si: f64,
    /// Against the worker.
    pub rounding: Rounding,
}

/// Steady force of a stop from a free fall of `fall_m` over `stop_m`, N: W (h + x) / x.
pub fn steady_stop_n(mass_kg: f64, fall_m: f64, stop_m: f64) -> f64 {
    mass_kg * G_M_S2 * (fall_m + stop_m) / stop_m
}

/// Length of a stop at a steady force, m: x = W h / (F - W).
pub fn stop_m(mass_kg: f64, fall_m: f64, force_n: f64) -> f64 {
    let weight_n = mass_kg * G_M_S2;
    weight_n * fall_m / (force_n - weight_n)
}

fn limit_si(id: &str, what: LimitKind) -> f64 {
    place(id).and_then(|p| p.limit(what)).map_or(f64::NAN, |l| l.value)
}

fn four(kind: FastenerKind, missed: u32) -> Scenario {
    let mut s = Scenario::default();
    s.anchor.fasteners.per_side = 4;
    s.anchor.fasteners.kind = kind;
    s.anchor.fasteners.missed = missed;
    s
}

impl Thumb {
    /// All, in the order of the system.
    pub const ALL: [Thumb; 12] = [
        Thumb::Harness,
        Thumb::Anchor,
        Thumb::Nails,
        Thumb::Low,
        Thumb::Chimney,
        Thumb::Arrow,
        Thumb::Look,
        Thumb::Below,
        Thumb::Face,
        Thumb::Absorber,
        Thumb::Force,
        Thumb::Holes,
    ];

    /// How it fares.
    pub fn fares(self) -> Fares {
        match self {
            Thumb::Arrow | Thumb::Below | Thumb::Low => Fares::Holds,
            Thumb::Look | Thumb::Holes => Fares::Unknown,
            _ => Fares::Partly,
        }
    }

    /// The numbers beside it.
    pub fn numbers(self) -> Vec<Named> {
        use Quantity::{Force, Length};
        use Rounding::{Down, Nearest, Up};
        let n = |name, quantity, si, rounding| Named { name, quantity, si, rounding };
        let force = |name, si| n(name, Force, si, Down);
        let slip_m =
            GRAB_DEAD_TRAVEL_M + GRAB_BITE_M + HARNESS_SLIDE_SNUG_M + HARNESS_COMPLIANCE_M_PER_N * 4.0 * KN_N;
        match self {
            Thumb::Harness => vec![
                n("ten", Length, 10.0 * FT_M, Nearest),
                n("canada", Length, limit_si("on", LimitKind::TriggerHeight), Nearest),
                n("us", Length, limit_si("us_construction", LimitKind::TriggerHeight), Nearest),
            ],
            Thumb::Anchor => vec![
                force("load", 2000.0 * LBF_N),
                n("on", Force, limit_si("on", LimitKind::AnchorWithAbsorber), Nearest),
                n("qc", Force, limit_si("qc", LimitKind::Anchor), Nearest),
                n("us", Force, limit_si("us_construction", LimitKind::Anchor), Nearest),
            ],
            Thumb::Force => {
                let (m, h, x) = (120.0 * LB_KG, 9.0 * FT_M, 3.5 * FT_M);
                vec![
                    n("stop", Length, stop_m(m, h, 900.0 * LBF_N), Nearest),
                    n("soft", Force, steady_stop_n(m, h, x), Up),
                    // A linear rope that takes the same energy over the same stretch peaks at twice
                    // the mean of force.
                    n("peak", Force, 2.0 * steady_stop_n(m, h, x), Up),
                ]
            }
            Thumb::Absorber => {
                let (low_n, high_n) = (0.65 * 4.0 * KN_N, 0.85 * 4.0 * KN_N);
                vec![
                    force("low", low_n),
                    n("long", Length, stop_m(100.0, 1.8, low_n), Up),
                    force("high", high_n),
                    n("short", Length, stop_m(100.0, 0.6, high_n), Up),
                ]
            }
            Thumb::Below => {
                vec![n("free", Length, free_fall_m(0.9, -0.9), Up), n("more", Length, slip_m, Up)]
            }
            Thumb::Face => {
                vec![n("free", Length, free_fall_m(0.9, 0.3), Up), n("more", Length, slip_m, Up)]
            }
            Thumb::Nails => {
                let (nails, screws) =
                    (anchor(&four(FastenerKind::Nail20d, 0)), anchor(&four(FastenerKind::Screw10, 0)));
                let missed = anchor(&four(FastenerKind::Nail20d, 8));
                vec![
                    force("nails", nails.low.0),
                    force("nails_allow", nails.allowable.map_or(f64::NAN, |a| a.0)),
                    force("screws", screws.low.0),
                    force("screws_allow", screws.allowable.map_or(f64::NAN, |a| a.0)),
                    n("on", Force, limit_si("on", LimitKind::AnchorWithAbsorber), Nearest),
                    force("missed", missed.low.0),
                ]
            }
            Thumb::Look => vec![force("loose", GRAB_LOOSE_GRIP_N), force("tight", GRAB_GRIP_N)],
            Thumb::Arrow => {
                vec![n("drag", Force, GRAB_DRAG_N, Nearest), n("weight", Force, 85.0 * G_M_S2, Up)]
            }
            Thumb::Low => {
                let mut s = Scenario::default();
                s.anchor.kind = AnchorKind::VentPipe;
                vec![force("vent", anchor(&s).low.0), n("weight", Force, 100.0 * G_M_S2, Up)]
            }
            Thumb::Chimney => {
                let mut c = Scenario::default().anchor.chimney;
                let sound_n = chimney::tipping_n(&c);
                c.sling_height_m = 2.0 * FT_M;
                vec![force("sound", sound_n), force("high", chimney::tipping_n(&c))]
            }
            Thumb::Holes => vec![],
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::physics::simulate;
    use crate::scenario::Arrow;

    fn number(t: Thumb, name: &str) -> f64 {
        t.numbers().iter().find(|n| n.name == name).expect("named").si
    }

    #[test]
    fn every_number_is_finite_and_positive() {
        for t in Thumb::ALL {
            for n in t.numbers() {
                assert!(n.si.is_finite() && n.si > 0.0, "{t:?} {}", n.name);
            }
        }
    }

    /// Constant-force stop, x = W h / (F - W); elastic peak of the same stop is twice.
    #[test]
    fn check_11_the_nine_hundred_pound_fall() {
        let near = |got: f64, want: f64| assert!((got - want).abs() < 0.01 * want, "{got} is not {want}");
        near(number(Thumb::Force, "stop") / FT_M, 1.385);
        near(number(Thumb::Force, "soft") / LBF_N, 429.0);
        near(number(Thumb::Force, "peak") / LBF_N, 857.0);
    }

    #[test]
    fn ten_feet_is_near_three_metres_and_well_over_six_feet() {
        let ten = number(Thumb::Harness, "ten");
        assert!((ten - number(Thumb::Harness, "canada")).abs() < 0.06);
        assert!(ten > 1.5 * number(Thumb::Harness, "us"));
    }

    /// The geometry of the thumb against a whole fall of the engine, from a ladder.
    #[test]
    fn the_engine_falls_as_the_thumb_says_and_a_little_more() {
        let free_fall = |above_m: f64| {
            let mut s = Scenario::default();
            s.grab.above_dring_m = above_m;
            s.lanyard.length_m = 0.9;
            s.house.eave_height_m = 7.6;
            s.ladder.length_m = 8.8;
            s.ladder.foot_distance_m = 1.9;
            s.stance = crate::scenario::Stance::Ladder { standing_height_m: 5.6 };
            s.anchor.kind = AnchorKind::RatedEye;
            simulate(&s.set_up().expect("possible"))
        };
        let low = free_fall(-0.7);
        assert!((low.free_fall_m - 1.6).abs() < 0.35, "{}", low.free_fall_m);
        assert!(low.total_fall_m > 1.6 + number(Thumb::Below, "more") * 0.5);
        let face = free_fall(0.3);
        assert!(face.free_fall_m < number(Thumb::Face, "free") + 0.05, "{}", face.free_fall_m);
        assert!(face.total_fall_m > 0.3048, "more than the foot of the thumb: {}", face.total_fall_m);
    }

    #[test]
    fn a_grab_turned_round_cannot_hold_a_worker() {
        assert!(number(Thumb::Arrow, "drag") < number(Thumb::Arrow, "weight"));
        let mut s = Scenario::default();
        s.grab.arrow = Arrow::Down;
        assert!(simulate(&s.set_up().expect("possible")).impacts.iter().any(|i| i.speed_m_s > 4.0));
    }

    #[test]
    fn two_thousand_pounds_meets_no_breaking_load_asked_for() {
        let load = number(Thumb::Anchor, "load");
        assert!(load < number(Thumb::Anchor, "qc") && load < number(Thumb::Anchor, "us"));
        assert!(number(Thumb::Low, "vent") < number(Thumb::Low, "weight"));
    }
}
