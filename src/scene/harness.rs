//! A worker from in front and from behind, with a harness as it is worn: classes and paths, y down, in a box of 280 by
//! 570 about the body's middle. One general pattern (a vest with crossed back), drawn by us; makers' patterns differ.

use super::lens::Lens;
use crate::practice::harness::{Chest, Harness, Leg, Ring, SNUG_CM};

/// The box of either view: left, top, width, height.
pub const BOX: (f64, f64, f64, f64) = (-140.0, -8.0, 280.0, 578.0);

const ARM: &str = "M-74 124L-106 208A12 12 0 0 0 -84 217L-43 138A17 17 0 1 0 -74 124ZM-107 210L-120 288A9 9 0 0 0 -102 292L-83 215A12 12 0 1 0 -107 210Z";
const OTHER_ARM: &str = "M43 138L84 217A12 12 0 0 0 106 208L74 124A17 17 0 1 0 43 138ZM83 215L102 292A9 9 0 0 0 120 288L107 210A12 12 0 1 0 83 215Z";
const HANDS: &str = "M-121 298L-126 316A8 8 0 0 0 -112 321L-105 303A8 8 0 1 0 -121 298ZM-126 319L-122 335A4 4 0 0 0 -114 334L-112 319A7 7 0 1 0 -126 319ZM105 303L112 321A8 8 0 0 0 126 316L121 298A8 8 0 1 0 105 303ZM112 319L114 334A4 4 0 0 0 122 335L126 319A7 7 0 1 0 112 319Z";
const BODY: &str = "M-18 92C-28 101 -44 105 -58 112C-66 116 -70 124 -68 134L-58 170C-57 195 -51 216 -50 238C-52 258 -58 274 -60 294C-62 332 -58 380 -53 420C-53 452 -50 490 -47 524H-19C-17 490 -17 455 -15 425C-13 385 -7 345 0 320C7 345 13 385 15 425C17 455 17 490 19 524H47C50 490 53 452 53 420C58 380 62 332 60 294C58 274 52 258 50 238C51 216 57 195 58 170L68 134C70 124 66 116 58 112C44 105 28 101 18 92Z";
const BOOTS: &str =
    "M-20 522H-47V536Q-53 550 -49 556H-19Q-15 550 -20 536ZM20 522H47V536Q53 550 49 556H19Q15 550 20 536Z";

fn body() -> Lens {
    vec![
        ("hw-skin", HANDS.to_owned()),
        ("hw-cloth", ARM.to_owned()),
        ("hw-cloth", OTHER_ARM.to_owned()),
        ("hw-boot", BOOTS.to_owned()),
        ("hw-cloth", BODY.to_owned()),
        ("hw-crease", "M-57 114Q-53 140 -58 168M57 114Q53 140 58 168M-44 420q10 8 22 2M22 422q12 6 24 -2M-46 512q12 4 26 0M20 512q14 4 26 0".to_owned()),
    ]
}

/// Webbing along a way: outline, face, stitch.
fn strap(out: &mut Lens, d: &str) {
    for class in ["hw-strap ink", "hw-strap", "hw-strap stitch"] {
        out.push((class, d.to_owned()));
    }
}

/// Two half twists: the light back face shows between two crossings.
fn twist(out: &mut Lens, x: f64, y: f64) {
    out.push(("hw-strap back", format!("M{x} {}V{}", y - 16.0, y + 16.0)));
    for at in [y - 16.0, y + 16.0] {
        let (l, r) = (x - 8.0, x + 8.0);
        out.push(("hw-metal", format!("M{l} {}L{r} {}H{l}L{r} {}Z", at - 8.0, at + 8.0, at - 8.0)));
    }
}

/// A buckle: a plate with its bar, turned by so much.
fn buckle(out: &mut Lens, (x, y): (f64, f64), turn_deg: f64) {
    let a = turn_deg.to_radians();
    let q =
        |u: f64, v: f64| format!("{:.1} {:.1}", x + u * a.cos() - v * a.sin(), y + u * a.sin() + v * a.cos());
    out.push((
        "hw-metal",
        format!("M{}L{}L{}L{}Z", q(-11.0, -9.0), q(11.0, -9.0), q(11.0, 9.0), q(-11.0, 9.0)),
    ));
    out.push(("hw-bar", format!("M{}L{}", q(-6.0, 0.0), q(6.0, 0.0))));
}

/// A leg strap from in front: `side` is -1 for the one on the picture's left.
fn leg(out: &mut Lens, l: &Leg, side: f64) {
    let x = |v: f64| side * v;
    if !l.closed {
        // Two ends that hang.
        strap(out, &format!("M{} 297C{} 330 {} 352 {} 372", x(60.0), x(70.0), x(66.0), x(62.0)));
        strap(out, &format!("M{} 327C{} 350 {} 366 {} 384", x(5.0), x(10.0), x(9.0), x(12.0)));
        return buckle(out, (x(62.0), 372.0), side * 10.0);
    }
    // It sags by its slack.
    let k = f64::from(l.slack_cm.saturating_sub(SNUG_CM)) / 6.0;
    let low = 327.0 + 46.0 * k.min(1.6);
    strap(
        out,
        &format!(
            "M{} 297C{} {:.0} {} {:.0} {} {:.0}C{} {:.0} {} {:.0} {} 327",
            x(60.0),
            x(60.0 + 8.0 * k),
            (300.0 + low) / 2.0,
            x(54.0),
            low - 4.0,
            x(34.0),
            low - 6.0 + 4.0 * k,
            x(20.0),
            low,
            x(9.0),
            327.0 + 10.0 * k,
            x(4.0)
        ),
    );
    buckle(out, (x(34.0), low - 6.0 + 4.0 * k), side * (22.0 - 14.0 * k.min(1.5)));
}

/// From in front; the wearer's left is on the picture's right.
pub fn front(h: &Harness) -> Lens {
    let mut out = body();
    out.push(("hw-crease", "M0 104V300M-50 236Q-30 244 -14 240M50 236Q30 244 14 240".to_owned()));
    out.push(("hw-collar", "M-20 92L-30 104L-6 120L0 106L6 120L30 104L20 92Q0 108 -20 92Z".to_owned()));
    // Without the chest strap the shoulder straps spread.
    let wide = if h.chest == Chest::Open { 14.0 } else { 0.0 };
    for s in [-1.0, 1.0] {
        let x = |v: f64| s * v;
        strap(
            &mut out,
            &format!(
                "M{} 101C{} 122 {} 150 {} 178C{} 210 {} 256 {} 305",
                x(33.0),
                x(36.0 + wide),
                x(31.0 + wide),
                x(31.0 + wide),
                x(31.0 + wide),
                x(36.0 + wide / 2.0),
                x(53.0)
            ),
        );
        buckle(&mut out, (x(33.5 + wide), 222.0), s * 4.0);
        if h.tucked {
            out.push((
                "hw-strap back thin",
                format!("M{} 231L{} 254", x(36.0 + wide * 0.8), x(40.0 + wide * 0.6)),
            ));
            out.push(("hw-keeper", format!("M{} 247h{}v8h{}Z", x(31.0 + wide * 0.7), s * 18.0, -s * 18.0)));
        } else {
            out.push((
                "hw-strap back thin",
                format!(
                    "M{} 231C{} 246 {} 262 {} 292",
                    x(36.0 + wide),
                    x(64.0 + wide),
                    x(70.0),
                    x(60.0 + wide)
                ),
            ));
        }
    }
    if h.twisted {
        twist(&mut out, 33.0 + wide, 142.0);
    }
    match h.chest {
        Chest::Open => {
            for s in [-1.0, 1.0] {
                strap(
                    &mut out,
                    &format!("M{} 180C{} 196 {} 208 {} 214", s * 45.0, s * 28.0, s * 26.0, s * 24.0),
                );
            }
            buckle(&mut out, (-24.0, 212.0), 60.0);
        }
        Chest::Closed | Chest::High => {
            let y = if h.chest == Chest::High { 122.0 } else { 180.0 };
            strap(&mut out, &format!("M-32 {y}Q0 {} 32 {y}", y + 5.0));
            buckle(&mut out, (0.0, y + 2.0), 90.0);
        }
    }
    // The picture's left is the wearer's right.
    leg(&mut out, &h.legs[1], -1.0);
    leg(&mut out, &h.legs[0], 1.0);
    out.extend(
        [
            ("hw-skin", "M-11 76V99Q0 106 11 99V76Z"),
            ("hw-skin", "M-22 42V60C-22 76 -10 88 0 88C10 88 22 76 22 60V42Z"),
            ("hw-ink", "M-8.5 56v4M8.5 56v4M-12.5 51q4 -2.4 8 0M4.5 51q4 -2.4 8 0M0 60L-2 67H1.6M-5 76h10"),
            ("hw-ink", "M-20 46C-19 66 -14 82 -4 88M20 46C19 66 14 82 4 88"),
            ("hw-helmet", "M-27 42C-29 14 -17 1 0 1C17 1 29 14 27 42Q0 34 -27 42Z"),
            ("hw-helmet", "M-32 44Q0 32 32 44Q33 47 30 48Q0 39 -30 48Q-33 47 -32 44Z"),
        ]
        .map(|(c, d)| (c, d.to_owned())),
    );
    out
}

/// Where the ring is on the back, in the box.
pub fn ring_at(r: Ring) -> (f64, f64) {
    match r {
        Ring::Blades => (0.0, 158.0),
        Ring::Low => (0.0, 206.0),
        Ring::Waist => (0.0, 252.0),
        Ring::Aside => (30.0, 162.0),
    }
}

/// From behind; the wearer's left is on the picture's left.
pub fn back(h: &Harness) -> Lens {
    let mut out = body();
    out.push((
        "hw-crease",
        "M-36 126Q-30 160 -38 186M36 126Q30 160 38 186M0 104V130M-50 238Q0 248 50 238M0 270Q-1 300 0 320"
            .to_owned(),
    ));
    out.push(("hw-collar", "M-20 92L-26 103Q0 112 26 103L20 92Q0 101 -20 92Z".to_owned()));
    let (x, y) = ring_at(h.ring);
    for s in [-1.0, 1.0] {
        strap(
            &mut out,
            &format!(
                "M{} 102C{} {:.0} {:.0} {:.0} {x} {y}",
                s * 33.0,
                s * 28.0,
                102.0 + (y - 102.0) * 0.35,
                s * 12.0 + x / 2.0,
                102.0 + (y - 102.0) * 0.6
            ),
        );
        strap(
            &mut out,
            &format!(
                "M{x} {y}C{:.0} {:.0} {} {:.0} {} 292",
                x + s * 14.0,
                y + (292.0 - y) * 0.3,
                s * 40.0,
                y + (292.0 - y) * 0.65,
                s * 50.0
            ),
        );
    }
    let low = (y + (292.0 - y) * 0.45).min(270.0);
    strap(
        &mut out,
        &format!("M{:.0} {low:.0}Q0 {:.0} {:.0} {low:.0}", -25.0 + x / 2.0, low + 5.0, 25.0 + x / 2.0),
    );
    strap(&mut out, "M-60 292C-52 318 -26 334 0 334C26 334 52 318 60 292");
    out.push(("hw-label", "M-46 262L-23 256L-18 274L-41 280Z".to_owned()));
    out.push(("hw-thin", "M-40 265L-26 261M-39 270L-25 266M-38 275L-30 273".to_owned()));
    for (i, s) in [-1.0, 1.0].into_iter().enumerate() {
        let l = h.legs[i];
        let k = if l.closed { f64::from(l.slack_cm.saturating_sub(SNUG_CM)) / 6.0 } else { 1.4 };
        strap(
            &mut out,
            &format!(
                "M{} 322C{} {:.0} {} {:.0} {} 336",
                s * 40.0,
                s * 28.0,
                340.0 + 22.0 * k,
                s * 14.0,
                344.0 + 22.0 * k,
                s * 4.0
            ),
        );
    }
    out.push(("hw-plate", format!("M{x} {}l17 21l-17 21l-17 -21Z", y - 20.0)));
    out.push((
        "hw-ring ink",
        format!("M{} {y}C{} {} {} {} {} {y}Z", x - 15.0, x - 16.0, y - 26.0, x + 16.0, y - 26.0, x + 15.0),
    ));
    out.push((
        "hw-ring",
        format!("M{} {y}C{} {} {} {} {} {y}Z", x - 15.0, x - 16.0, y - 26.0, x + 16.0, y - 26.0, x + 15.0),
    ));
    out.extend(
        [
            ("hw-skin", "M-21 50V62C-20 70 -14 75 -12 80V98Q0 104 12 98V80C14 75 20 70 21 62V50Z"),
            ("hw-hair", "M-20 50V63C-18 69 -12 72 -9 77Q0 81 9 77C12 72 18 69 20 63V50Z"),
            ("hw-helmet", "M-29 58C-32 16 -17 1 0 1C17 1 32 16 29 58Q0 69 -29 58Z"),
            ("hw-crease", "M0 2V62M-14 5Q-19 26 -17 60M14 5Q19 26 17 60"),
        ]
        .map(|(c, d)| (c, d.to_owned())),
    );
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    /// State is a shape: each thing that can be wrong on the body changes one of the two views.
    #[test]
    fn each_state_is_seen() {
        let right = Harness::right();
        let views = |h: &Harness| (front(h), back(h));
        let mut all = vec![views(&right)];
        let slack = Leg { closed: true, slack_cm: 9 };
        let open = Leg { closed: false, slack_cm: 2 };
        for h in [
            Harness { twisted: true, ..right },
            Harness { chest: Chest::Open, ..right },
            Harness { chest: Chest::High, ..right },
            Harness { legs: [slack, right.legs[1]], ..right },
            Harness { legs: [right.legs[0], slack], ..right },
            Harness { legs: [open, right.legs[1]], ..right },
            Harness { tucked: false, ..right },
            Harness { ring: Ring::Low, ..right },
            Harness { ring: Ring::Waist, ..right },
            Harness { ring: Ring::Aside, ..right },
        ] {
            let v = views(&h);
            assert!(!all.contains(&v), "{h:?}");
            all.push(v);
        }
    }
}
