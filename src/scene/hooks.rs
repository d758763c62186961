//! A hook and what it is on, from near: classes and paths in a box of 120 by 120. A plain hook drawn by us: its gate
//! is hinged by the eye and opens inwards, its lever is on the back.

use super::lens::Lens;
use crate::practice::hooks::Joined;

const BODY: &str = "M52 28C38 34 33 48 33 62C33 84 44 96 58 96C70 96 80 89 82 78";
const SHUT: &str = "M64 32L82 76";
const AJAR: &str = "M64 32L70 74";
const PRESSED: &str = "M64 32L54 68";
const LEVER_HOME: &str = "M38 40L30 56";
const LEVER_UP: &str = "M38 40L20 44";

fn circle(x: f64, y: f64, r: f64) -> String {
    format!("M{} {y}a{r} {r} 0 1 0 {} 0a{r} {r} 0 1 0 -{} 0Z", x - r, 2.0 * r, 2.0 * r)
}

fn hook(out: &mut Lens, gate: &str, lever: &str) {
    out.push(("strap", "M58 0V14".to_owned()));
    out.push(("fill", circle(58.0, 21.0, 9.0)));
    for (class, d) in [("hk-body ink", BODY), ("hk-body", BODY), ("hk-gate ink", gate), ("hk-gate", gate)] {
        out.push((class, d.to_owned()));
    }
    out.push((if lever == LEVER_UP { "hk-lever up" } else { "hk-lever" }, lever.to_owned()));
}

/// A ring behind the hook, and its near side over it.
fn ring(out: &mut Lens, x: f64, y: f64, r: f64) {
    let d = circle(x, y, r);
    out.push(("hk-ring ink", d.clone()));
    out.push(("hk-ring", d));
}

fn arrow(out: &mut Lens, d: &str) {
    out.push(("line bold", d.to_owned()));
}

/// As it is joined.
pub fn joined(j: Joined) -> Lens {
    let mut out = Lens::new();
    match j {
        Joined::Shut | Joined::Fits | Joined::Alone => {
            hook(&mut out, SHUT, LEVER_HOME);
            ring(&mut out, 58.0, 100.0, 15.0);
            if j == Joined::Alone {
                out.push(("strap", "M58 116V120".to_owned()));
            }
        }
        Joined::Ajar => {
            hook(&mut out, AJAR, LEVER_UP);
            ring(&mut out, 58.0, 100.0, 15.0);
        }
        Joined::Along => {
            hook(&mut out, SHUT, LEVER_HOME);
            ring(&mut out, 58.0, 98.0, 13.0);
            arrow(&mut out, "M100 40V96M92 86L100 98L108 86");
        }
        Joined::Across => {
            hook(&mut out, SHUT, LEVER_HOME);
            ring(&mut out, 84.0, 54.0, 14.0);
            arrow(&mut out, "M96 90H116M108 82L118 90L108 98");
        }
        Joined::Small => {
            hook(&mut out, AJAR, LEVER_UP);
            ring(&mut out, 77.0, 80.0, 8.0);
        }
        Joined::Two => {
            hook(&mut out, PRESSED, LEVER_HOME);
            ring(&mut out, 62.0, 104.0, 15.0);
            out.push(("hk-body ink", "M104 22C112 40 108 62 92 70C76 78 62 72 60 60".to_owned()));
            out.push(("hk-body", "M104 22C112 40 108 62 92 70C76 78 62 72 60 60".to_owned()));
            out.push(("strap", "M104 0V14".to_owned()));
            out.push(("fill", circle(104.0, 19.0, 7.0)));
        }
        Joined::OnRing => {
            hook(&mut out, SHUT, LEVER_HOME);
            ring(&mut out, 58.0, 98.0, 13.0);
            out.push(("wood", "M26 112H92V120H26Z".to_owned()));
        }
        Joined::OnItself => {
            out.push(("strap", "M58 14C8 6 4 120 58 112C96 106 84 82 66 90".to_owned()));
            hook(&mut out, PRESSED, LEVER_HOME);
        }
        Joined::InBow => {
            hook(&mut out, SHUT, LEVER_HOME);
            ring(&mut out, 54.0, 100.0, 15.0);
        }
        Joined::Turned => {
            hook(&mut out, PRESSED, LEVER_HOME);
            ring(&mut out, 74.0, 56.0, 16.0);
            out.push(("line", "M100 26C112 40 112 66 100 82M100 82L98 72M100 82L110 78".to_owned()));
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::practice::hooks::PAIRS;

    /// The two of a pair, and the wrong ones among themselves, differ in what is drawn.
    #[test]
    fn what_differs_is_seen() {
        for [a, b] in PAIRS {
            assert_ne!(joined(a), joined(b));
        }
        for (i, a) in PAIRS.iter().enumerate() {
            assert!(PAIRS.iter().skip(i + 1).all(|b| joined(a[1]) != joined(b[1])), "{a:?}");
        }
    }
}
