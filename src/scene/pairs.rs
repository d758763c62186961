//! Lines and supports from near, two by two: classes and paths in a box of 120 by 120, each differing from its other
//! half by one big shape.

use super::hooks::joined;
use super::lens::{self, Lens};
use crate::practice::pairs::{Half, Lined, Slung};
use crate::scenario::AnchorKind;

type Paths = &'static [(&'static str, &'static str)];

/// The roof's edge, cut.
const EDGE: (&str, &str) = ("wood", "M0 30L74 62V84H60V120H46V84H0Z");
const BRICK: (&str, &str) = ("wood", "M34 6H86V104H34Z");
const JOINTS: (&str, &str) = (
    "thin",
    "M34 22H86M34 38H86M34 54H86M34 70H86M34 86H86M60 6V22M47 22V38M73 22V38M60 38V54M47 54V70M73 54V70M60 70V86M47 86V104M73 86V104",
);
const ROOF: (&str, &str) = ("line bold", "M0 88L34 100M86 104L120 116");

/// As it is seen.
pub fn half(h: Half) -> Lens {
    match h {
        Half::Hook(j) => joined(j),
        Half::Line(l) => own(line(l)),
        // What the bench knows already is drawn as there.
        Half::Support(Slung::Rafters) => lens::anchor(AnchorKind::RidgePlateInFraming),
        Half::Support(Slung::Boards) => lens::anchor(AnchorKind::RidgePlateInSheathing),
        Half::Support(Slung::Eye) => lens::anchor(AnchorKind::RatedEye),
        Half::Support(Slung::Pipe) => lens::anchor(AnchorKind::VentPipe),
        Half::Support(s) => own(support(s)),
    }
}

fn own(all: Paths) -> Lens {
    all.iter().map(|(c, d)| (*c, (*d).to_owned())).collect()
}

fn line(l: Lined) -> Paths {
    match l {
        Lined::Padded => &[
            EDGE,
            ("solid", "M22 32L34 22L78 42Q90 48 90 62V88H78V66L70 58Z"),
            ("rope", "M4 18L36 30L76 48Q84 54 84 66V120"),
        ],
        Lined::Bare => &[
            EDGE,
            ("rope", "M2 26L72 56Q79 60 79 70V120"),
            ("line", "M88 46L98 38M92 58H106M88 70L98 78"),
            ("thin", "M74 50L66 46M74 56L64 56M82 62L90 64"),
        ],
        Lined::Straight => &[("rope", "M60 2V118")],
        Lined::Knotted => {
            &[("rope", "M60 2V34C60 54 32 46 34 62C36 80 82 74 82 60C82 46 44 46 56 74L60 84V118")]
        }
        Lined::Whole => &[
            ("rope", "M60 2V118"),
            ("thin", "M54 12L66 18M54 26L66 32M54 40L66 46M54 54L66 60M54 68L66 74M54 82L66 88M54 96L66 102"),
        ],
        Lined::Frayed => &[
            ("rope", "M60 2V38M60 80V118"),
            (
                "thin",
                "M56 38C46 50 54 66 56 80M60 38C64 52 56 64 60 80M64 38C78 50 66 68 64 80M54 42L34 54M66 68L88 58M55 60L32 72M65 46L90 38M56 72L40 88",
            ),
        ],
        Lined::Clean => &[
            ("rope", "M24 4C24 50 96 40 96 84C96 110 60 112 40 104"),
            ("thin", "M20 18L30 22M24 36L34 34M44 50L50 42M68 56L70 46M88 70L96 62M92 92L100 96"),
        ],
        Lined::Stiff => &[
            ("rope", "M60 2V118"),
            (
                "solid",
                "M52 30C46 44 48 62 50 74C44 80 50 92 54 84L56 96L62 88L66 96L68 78C74 62 72 40 68 30Z",
            ),
            ("thin", "M44 98A5 7 0 1 0 44.1 98M76 92A4 6 0 1 0 76.1 92"),
        ],
        Lined::Alone => &[
            ("rope", "M60 2V118"),
            ("line body", "M34 50V80M34 80L26 106M34 80L42 106M34 58L52 50"),
            ("fill", "M34 30A9 9 0 1 1 34 48A9 9 0 1 1 34 30Z"),
            ("fill", "M54 42H66V58H54Z"),
        ],
        Lined::Shared => &[
            ("rope", "M60 2V118"),
            (
                "line body",
                "M34 30V54M34 54L26 74M34 54L42 74M34 36L52 30M86 76V98M86 98L78 116M86 98L94 116M86 82L68 76",
            ),
            ("fill", "M34 12A8 8 0 1 1 34 28A8 8 0 1 1 34 12ZM86 58A8 8 0 1 1 86 74A8 8 0 1 1 86 58Z"),
            ("fill", "M54 22H66V36H54ZM54 68H66V82H54Z"),
        ],
        Lined::Stopped => &[
            ("rope", "M60 2V104"),
            ("solid", "M50 84H70V104H50Z"),
            ("fill", "M50 24H70V46H50Z"),
            ("line bold", "M14 112H106"),
        ],
        Lined::Short => &[
            ("rope", "M60 2V52"),
            ("thin", "M56 52L54 60M60 52V62M64 52L66 60"),
            ("fill", "M50 24H70V46H50Z"),
            ("line bold", "M14 112H106"),
        ],
        Lined::Taut => {
            &[("line bold", "M0 30L88 92"), ("solid", "M4 16A7 7 0 1 1 4.1 16Z"), ("rope", "M8 22L92 82V118")]
        }
        Lined::Slack => &[
            ("line bold", "M0 30L88 92"),
            ("solid", "M4 16A7 7 0 1 1 4.1 16Z"),
            ("rope", "M8 22C20 60 44 20 48 46C52 70 76 38 74 64C74 76 92 76 92 88V118"),
        ],
        Lined::Thick => {
            &[("rope", "M56 2V118M62 2V118"), ("thin", "M50 14L68 26M50 36L68 48M50 58L68 70M50 80L68 92")]
        }
        Lined::Nylon => {
            &[("line bold", "M60 2V118"), ("line", "M88 30V94M80 84L88 96L96 84M80 40L88 28L96 40")]
        }
    }
}

fn support(s: Slung) -> Paths {
    match s {
        Slung::Low => &[ROOF, BRICK, JOINTS, ("strap", "M30 92H90"), ("rope", "M88 92L118 104")],
        Slung::High => &[ROOF, BRICK, JOINTS, ("strap", "M30 16H90"), ("rope", "M88 16L118 90")],
        Slung::Hard => &[ROOF, BRICK, JOINTS, ("strap", "M30 62H90"), ("rope", "M88 62L118 98")],
        Slung::Soft => &[
            ROOF,
            ("wood", "M34 6H86V104H34Z"),
            (
                "line bold",
                "M34 22H52M62 22H86M34 38H44M56 38H78M34 54H60M70 54H86M34 70H48M58 70H86M34 86H70",
            ),
            (
                "thin",
                "M60 6V22M47 22V38M73 22V38M60 38V54M47 54V70M60 70V86M92 60L98 66M90 74L94 82M26 74L22 82",
            ),
            ("strap", "M30 62H90"),
            ("rope", "M88 62L118 98"),
        ],
        Slung::Choked => &[
            BRICK,
            JOINTS,
            ("strap", "M30 62H90M88 62L100 70"),
            ("ring", "M104 64A9 9 0 1 1 104 82A9 9 0 1 1 104 64Z"),
            ("rope", "M106 82L116 112"),
        ],
        Slung::HookedBack => &[
            BRICK,
            JOINTS,
            ("rope", "M30 62H96L116 112"),
            ("hk-body ink", "M92 52C104 52 104 74 92 74"),
            ("hk-body", "M92 52C104 52 104 74 92 74"),
            ("line", "M90 42L96 34M98 44L108 38M86 84L90 94"),
        ],
        Slung::TiedBack => &[
            ("line bold", "M0 66L34 92M86 104L120 116"),
            BRICK,
            JOINTS,
            ("strap", "M30 16H90M32 16L8 66"),
            ("nail", "M2 62L14 72M6 70L2 84"),
            ("rope", "M88 16L118 90"),
        ],
        Slung::Loose => &[
            ("line bold", "M0 66L34 92M86 104L120 116"),
            BRICK,
            JOINTS,
            ("strap", "M30 16H90"),
            ("rope", "M88 16L118 90"),
        ],
        Slung::Rafters | Slung::Boards | Slung::Eye | Slung::Pipe => &[],
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::practice::pairs::Rack;

    /// The two of a pair differ in what is drawn, and none is empty.
    #[test]
    fn the_halves_of_a_pair_can_be_told_apart() {
        for rack in [Rack::Hooks, Rack::Ropes, Rack::Supports] {
            for [a, b] in rack.pairs() {
                assert!(!half(a).is_empty() && !half(b).is_empty(), "{a:?} {b:?}");
                assert_ne!(half(a), half(b));
            }
        }
    }
}
