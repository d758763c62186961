//! Parts seen from near, as a person would hold them: classes and paths in a box of 120 by 120. Drawn by us from how
//! such parts work in general. While somebody is choosing a lens shows the state and judges nothing.

use crate::practice::hand::Held;
use crate::practice::inspection::Look;
use crate::practice::lessons::{Ending, Lesson};
use crate::scenario::{
    AnchorKind, Arrow, Bolt, ConnectorState, HarnessFit, LabelState, Latch, PackState, RopeState, Scenario,
    WebbingState,
};

/// Classes and paths of a lens.
pub type Lens = Vec<(&'static str, String)>;

/// A part that can be moved, as it is in a set-up.
pub fn of(part: Held, s: &Scenario) -> Lens {
    match part {
        Held::Grab => grab(s),
        Held::Worker => dring(s),
        Held::LadderFoot => foot(s),
        Held::Anchor => anchor(s.anchor.kind),
    }
}

fn own(list: &[(&'static str, &str)]) -> Lens {
    list.iter().map(|(c, d)| (*c, (*d).to_owned())).collect()
}

fn grab(s: &Scenario) -> Lens {
    let mut all = own(&[
        ("rope", "M60 0V120"),
        ("fill", "M38 30H76Q82 30 82 36V84Q82 90 76 90H38Q32 90 32 84V36Q32 30 38 30Z"),
    ]);
    all.push((
        "line bold",
        match s.grab.arrow {
            Arrow::Up => "M48 78V44M40 54L48 43L56 54",
            Arrow::Down => "M48 42V76M40 66L48 77L56 66",
        }
        .to_owned(),
    ));
    all.push((
        "line latch",
        match s.grab.latch {
            Latch::Closed => "M66 32V88M66 46H78M66 74H78",
            Latch::Open => "M66 32L104 22V70L66 88",
        }
        .to_owned(),
    ));
    all.push((
        "line",
        match s.grab.bolt {
            Bolt::Tight => "M32 52H24V68H32M24 56H18V64H24",
            Bolt::Loose => {
                "M32 57H14M32 63H14M14 50L4 55V65L14 70ZM20 44C12 36 6 38 3 43M3 43L3 36M3 43L10 43"
            }
        }
        .to_owned(),
    ));
    all.push(("line", "M82 78C96 82 100 100 98 118".to_owned()));
    all
}

fn dring(s: &Scenario) -> Lens {
    let slack = s.worker.harness == HarnessFit::Loose;
    let mut all = own(&[
        ("fill", "M26 120V52Q26 28 44 22H76Q94 28 94 52V120Z"),
        ("line", "M48 22Q48 8 60 8Q72 8 72 22"),
    ]);
    all.push((
        "strap",
        if slack {
            "M40 24Q30 60 56 62T96 108M80 24Q92 62 64 62T22 108"
        } else {
            "M40 24L60 58L92 110M80 24L60 58L28 110"
        }
        .to_owned(),
    ));
    all.push(("ring", "M60 44A10 10 0 1 1 60 64A10 10 0 1 1 60 44Z".to_owned()));
    all.push((
        "hook",
        if s.lanyard.clipped {
            "M60 46C52 40 54 26 62 24C70 24 72 34 66 42L60 50M64 24C76 12 92 8 118 6"
        } else {
            "M96 66C88 60 90 46 98 44C106 44 108 54 102 62M100 44C106 30 112 20 118 6"
        }
        .to_owned(),
    ));
    all
}

fn foot(s: &Scenario) -> Lens {
    let angle = crate::geometry::ladder_line(s).map_or(1.3, |l| l.angle_rad());
    let (x, y) = (84.0 - 130.0 * angle.cos(), 92.0 - 130.0 * angle.sin());
    let slope = s.house.ground_slope_rad.tan();
    let (l, r) = (92.0 - 84.0 * slope, 92.0 + 36.0 * slope);
    let mut all = vec![
        ("soil", format!("M0 {l:.1}L120 {r:.1}V120H0Z")),
        ("line bold", format!("M0 {l:.1}L120 {r:.1}")),
        ("rail", format!("M84 90L{x:.1} {y:.1}")),
        ("line bold", "M74 92L94 92".to_owned()),
        (
            "thin",
            format!("M44 92A40 40 0 0 1 {:.1} {:.1}", 84.0 - 40.0 * angle.cos(), 92.0 - 40.0 * angle.sin()),
        ),
    ];
    if s.ladder.tied {
        all.push(("strap", "M14 10H46M14 18H46M18 6L24 22M34 6L40 22".to_owned()));
    } else {
        all.push(("thin", "M14 14H46".to_owned()));
    }
    all
}

/// What a rope can be tied to.
pub fn anchor(kind: AnchorKind) -> Lens {
    own(match kind {
        AnchorKind::RidgePlateInFraming => &[
            ("wood", "M60 44L120 72V112L60 80L0 112V72Z"),
            ("line bold", "M60 40L108 62M60 40L12 62"),
            ("ring", "M60 20A9 9 0 1 1 60 38A9 9 0 1 1 60 20Z"),
            ("nail", "M30 54L36 84M90 54L84 84M44 48L49 78M76 48L71 78"),
        ],
        AnchorKind::RidgePlateInSheathing => &[
            ("wood", "M60 44L120 72V80L60 52L0 80V72Z"),
            ("line bold", "M60 40L108 62M60 40L12 62"),
            ("ring", "M60 20A9 9 0 1 1 60 38A9 9 0 1 1 60 20Z"),
            ("nail", "M30 54L36 84M90 54L84 84M44 48L49 78M76 48L71 78"),
        ],
        AnchorKind::ChimneySling => &[
            ("wood", "M36 10H84V110H36Z"),
            ("thin", "M36 30H84M36 50H84M36 70H84M36 90H84M52 10V30M68 30V50M52 50V70M68 70V90"),
            ("rope", "M32 78H88M60 78L110 104"),
        ],
        AnchorKind::VentPipe => &[
            ("line bold", "M50 110V16H70V110"),
            ("thin", "M50 16A10 4 0 1 0 70 16A10 4 0 1 0 50 16Z"),
            ("rope", "M46 84H74M60 84L110 104"),
        ],
        AnchorKind::Gutter => &[
            ("line bold", "M20 40V64Q20 78 34 78H62V40"),
            ("wood", "M62 30H110V46H62Z"),
            ("rope", "M20 52L4 110M20 52H62"),
        ],
        AnchorKind::RatedEye => &[
            ("wood", "M0 78H120V108H0Z"),
            ("line bold", "M40 78H80V68H40Z"),
            ("ring", "M60 34A17 17 0 1 1 60 68A17 17 0 1 1 60 34Z"),
        ],
        AnchorKind::RoofVent => &[
            ("line bold", "M30 100V60H90V100M22 60L60 34L98 60Z"),
            ("thin", "M36 70H84M36 80H84M36 90H84"),
            ("rope", "M26 74H94M90 74L116 104"),
        ],
        AnchorKind::AntennaMast => &[
            ("line bold", "M60 112V8M36 20H84M42 34H78"),
            ("thin", "M60 60L24 112M60 60L96 112"),
            ("rope", "M56 92H64M60 92L112 104"),
        ],
    })
}

/// Hips and thighs from in front.
const HIPS: &str = "M28 0V50Q24 84 30 120H56L60 78L64 120H90Q96 84 92 50V0Z";

/// The harness's straps at hips and thighs: snug, or with loops that hang off.
pub fn harness(fit: HarnessFit) -> Lens {
    own(&[
        ("fill", HIPS),
        (
            "strap",
            match fit {
                HarnessFit::Snug => "M30 26V58Q30 70 36 74L54 92M90 26V58Q90 70 84 74L66 92M30 58H90",
                HarnessFit::Loose => {
                    "M30 26V58Q18 80 34 104Q48 112 56 96M90 26V58Q102 80 86 104Q72 112 64 96M30 58Q60 72 90 58"
                }
            },
        ),
    ])
}

/// What else is looked at before the climb: rope, connector, label.
pub fn gear() -> Lens {
    own(&[
        ("rope", "M24 4V116"),
        ("line bold", "M72 58C58 54 58 22 74 16C92 12 100 24 98 38M72 58C86 64 98 60 98 50V38"),
        ("fill", "M56 74H104V108H56Z"),
        ("thin", "M64 84H96M64 91H88M64 98H92"),
    ])
}

/// The lanyard's end at the ring: with the absorber's pack, or bare.
pub fn link(absorber: bool) -> Lens {
    let ring = ("ring", "M60 102A9 9 0 1 1 60 120A9 9 0 1 1 60 102Z");
    own(&if absorber {
        [("line bold", "M60 0V30"), ("solid", "M42 30H78V84H42ZM58 84H62V102H58Z"), ring]
    } else {
        [("line bold", "M60 0V84"), ("line", "M60 84C52 88 52 100 60 102C68 100 68 88 60 84Z"), ring]
    })
}

/// A part of the gear as a person would find it, in a box of 96 by 72.
pub fn look(look: Look) -> Lens {
    let rope = "M48 2V70";
    let paths: Vec<(&'static str, &'static str)> = match look {
        Look::Fasteners(missed) => vec![
            ("thin", "M6 16H90M6 24H90"),
            ("fill", "M30 24H66V68H30Z"),
            ("line", "M40 8V50M56 8V50"),
            ("line", if missed > 0 { "M14 8V34M80 8V34" } else { "M48 8V54" }),
        ],
        Look::Rope(RopeState::Sound) => {
            vec![("rope wide", rope), ("thin", "M42 8L54 14M42 20L54 26M42 32L54 38M42 44L54 50M42 56L54 62")]
        }
        Look::Rope(RopeState::Frayed) => vec![
            ("rope wide", "M48 2V24M48 50V70"),
            (
                "thin",
                "M46 24C40 32 44 42 46 50M48 24C50 34 48 40 48 50M50 24C58 32 52 44 50 50M45 26L32 34M51 46L64 40M46 38L30 46M50 30L66 28",
            ),
        ],
        Look::Rope(RopeState::Knotted) => {
            vec![("rope wide", "M48 2V22C48 34 30 30 32 40C34 50 62 46 62 38C62 28 38 30 44 44L48 52V70")]
        }
        Look::Arrow(a) => vec![
            ("thin rope", rope),
            ("fill", "M34 18H62V56H34Z"),
            (
                "line",
                if a == Arrow::Up { "M48 50V26M40 34L48 24L56 34" } else { "M48 24V48M40 40L48 50L56 40" },
            ),
        ],
        Look::Bolt(b) => vec![
            ("fill", "M22 20H60V54H22Z"),
            (
                "line",
                if b == Bolt::Tight {
                    "M60 30H70V44H60ZM70 33H76V41H70Z"
                } else {
                    "M60 35H76M60 39H76M76 28L86 33V43L76 48ZM66 22C72 14 82 14 86 20M86 20L79 20M86 20L87 13"
                },
            ),
        ],
        Look::Latch(l) => vec![
            ("thin rope", rope),
            ("fill", "M30 18H46V56H30Z"),
            (
                "line",
                if l == Latch::Closed { "M46 20H64V54H46M56 34H62M56 40H62" } else { "M46 20L78 8V40L46 54" },
            ),
        ],
        Look::Connector(c) => vec![
            ("line", "M34 60C22 56 22 16 40 10C58 6 70 16 68 30"),
            ("line", "M34 60C48 66 64 60 68 50"),
            ("line", if c == ConnectorState::Unlocked { "M68 50L52 34" } else { "M68 50V30" }),
            (
                "thin",
                match c {
                    ConnectorState::Sound => "M63 36H73V44H63Z",
                    ConnectorState::Unlocked => "M70 52L78 58L72 64L64 58Z",
                    ConnectorState::Corroded => {
                        "M63 36H73V44H63ZM26 30L30 32M27 38L24 42M30 48L34 46M40 12L42 16M50 10L50 14M36 56L40 54M28 24L33 22M25 36L30 35"
                    }
                },
            ),
        ],
        Look::Pack(p) => vec![
            ("fill", "M30 14H66V54H30Z"),
            ("thin", "M34 20H62M34 26H62M34 32H62M34 38H62M34 44H62"),
            (
                "line",
                if p == PackState::Sound {
                    "M48 2V14M48 54V70"
                } else {
                    "M48 2V14M48 54V60M56 54C62 60 54 64 60 70M62 54L70 66M60 58L52 68M66 50L76 58"
                },
            ),
        ],
        Look::Webbing(w) => vec![
            (
                "fill",
                if w == WebbingState::Sound { "M34 4H62V68H34Z" } else { "M34 4H62V30L46 36L62 41V68H34Z" },
            ),
            ("thin", "M40 6V66M56 6V28M56 44V66"),
        ],
        Look::Label(l) => vec![
            ("fill", "M22 4H74V68H22Z"),
            (
                "line",
                if l == LabelState::Legible {
                    "M32 20H64V52H32ZM36 28H60M36 35H54M36 42H58"
                } else {
                    "M32 20L36 24M64 20L60 25M32 52L37 49M63 53L60 48"
                },
            ),
        ],
    };
    own(&paths)
}

/// What a lesson is about, where it is not the state of one part.
pub fn lesson(l: Lesson) -> Lens {
    let usual = Scenario::default();
    let with = |change: fn(&mut Scenario)| {
        let mut s = usual.clone();
        change(&mut s);
        s
    };
    match l {
        Lesson::GrabHeight => own(&[
            ("rope", "M46 0V120"),
            ("fill", "M34 14H66V48H34Z"),
            ("line", "M50 42V24M44 30L50 23L56 30M66 44C92 50 96 74 92 92"),
            ("ring", "M88 92A9 9 0 1 1 88 110A9 9 0 1 1 88 92Z"),
            ("line bold", "M16 104V22M6 34L16 20L26 34"),
        ]),
        Lesson::GrabArrow => grab(&with(|s| s.grab.arrow = Arrow::Down)),
        Lesson::BoltAndLatch => grab(&with(|s| s.grab.latch = Latch::Open)),
        Lesson::GrabBolt => grab(&with(|s| s.grab.bolt = Bolt::Loose)),
        Lesson::AbsorberOrNot => own(&[
            ("line bold", "M60 0V14L42 24L78 36L42 48L78 60L60 68"),
            ("solid", "M42 68H78V100H42Z"),
            ("ring", "M60 104A9 9 0 1 1 60 122A9 9 0 1 1 60 104Z"),
        ]),
        Lesson::AnchorGround => anchor(AnchorKind::RidgePlateInFraming),
        Lesson::AnchorChimney => anchor(AnchorKind::ChimneySling),
        Lesson::RoomToStop => own(&[
            ("rope", "M50 0V30"),
            ("solid", "M50 26a9 9 0 1 0 .1 0Z"),
            ("line body", "M50 46V66M50 50L38 62M50 50L62 62M50 66L42 84M50 66L58 84"),
            ("soil", "M0 104H120V120H0Z"),
            ("line bold", "M0 104H120"),
            ("line", "M90 50V98M82 58L90 48L98 58M82 90L90 100L98 90"),
        ]),
        Lesson::SlackOnTheRoof => own(&[
            ("wood", "M0 34L120 94V112L0 52Z"),
            ("line bold", "M0 32L120 92"),
            ("rope", "M0 20C24 2 38 40 54 38S66 62 84 62"),
            ("fill", "M78 54L102 66L95 80L71 68Z"),
        ]),
        Lesson::AlongTheWall => own(&[
            ("wood", "M0 20H120V34H0Z"),
            ("line bold", "M0 34H120"),
            ("thin", "M36 0V120M86 86Q60 112 30 100"),
            ("rope", "M36 4L64 34L88 74"),
            ("ring", "M88 74A9 9 0 1 1 88 92A9 9 0 1 1 88 74Z"),
        ]),
    }
}

/// A way in which a fall can end, in a box of 88 by 92: figure, rope and what it meets. No verdict, no gore.
pub fn ending(e: Ending) -> Lens {
    const HANGS: &str = "M44 44V60M44 46L32 58M44 46L56 58M44 60L37 80M44 60L51 80";
    const HEAD: &str = "M44 22a8 8 0 1 0 .1 0Z";
    const LIES: &str = "M30 74H52L76 76M40 74L48 64";
    const LOW_HEAD: &str = "M19 65a8 8 0 1 0 .1 0Z";
    const DROPS: &str = "M44 56V70M44 58L30 50M44 58L58 50M44 70L34 84M44 70L56 82";
    const HIGH_HEAD: &str = "M44 34a8 8 0 1 0 .1 0Z";
    own(match e {
        Ending::Stopped => &[("rope", "M44 0V42"), ("solid", HEAD), ("line body", HANGS)],
        Ending::OnRoof => &[
            ("line bold", "M2 34L86 78"),
            ("rope", "M2 22L34 42"),
            ("solid", "M27 28a8 8 0 1 0 .1 0Z"),
            ("line body", "M36 44L54 54L72 64M42 46L50 38"),
        ],
        Ending::Spent => &[
            ("line", "M44 0L36 6L52 12L36 18L52 24L44 30"),
            ("rope", "M44 30V50"),
            ("solid", "M44 30a8 8 0 1 0 .1 0Z"),
            ("line body", "M44 52V66M44 54L32 64M44 54L56 64M44 66L37 84M44 66L51 84"),
        ],
        Ending::Swing => &[
            ("line bold", "M14 0V92"),
            ("rope", "M70 0L50 40"),
            ("solid", "M50 22a8 8 0 1 0 .1 0Z"),
            ("line body", "M48 42L42 58M48 44L60 54M42 58L24 62L22 76"),
            ("line", "M20 58a11 11 0 1 0 .1 0Z"),
        ],
        Ending::Ground => &[
            ("line bold", "M2 84H86"),
            ("rope", "M40 0C44 30 60 40 50 66"),
            ("solid", LOW_HEAD),
            ("line body", LIES),
        ],
        Ending::Deck => &[
            ("line bold", "M8 64H80M18 64V90M70 64V90"),
            ("rope", "M44 0C48 20 58 30 50 48"),
            ("solid", "M21 45a8 8 0 1 0 .1 0Z"),
            ("line body", "M32 54H54L76 56M42 54L50 44"),
        ],
        Ending::OffRope => &[
            ("rope", "M22 0V92"),
            ("line", "M38 14H56V34H38ZM47 34L46 50"),
            ("solid", HIGH_HEAD),
            ("line body", DROPS),
        ],
        Ending::Anchor => &[
            ("line bold", "M2 6L40 26"),
            ("line bold", "M50 14H70"),
            ("rope", "M60 16C66 30 52 40 46 56"),
            ("solid", HIGH_HEAD),
            ("line body", DROPS),
        ],
        Ending::Rope => &[
            ("rope", "M44 0V12M44 26V52"),
            ("line", "M44 12L38 18M44 12L50 18M44 26L38 20M44 26L51 21"),
            ("solid", HIGH_HEAD),
            ("line body", DROPS),
        ],
        Ending::Link => &[
            ("rope", "M44 0V10"),
            ("line bold", "M44 10C34 12 34 28 44 30L50 24"),
            ("solid", HIGH_HEAD),
            ("line body", DROPS),
        ],
        Ending::Ladder => &[
            ("line", "M20 8L68 84M34 0L82 76M26 18L40 9M36 34L50 25M46 50L60 41M56 66L70 57"),
            ("solid", "M70 4a8 8 0 1 0 .1 0Z"),
            ("line body", "M66 24L58 38M66 26L78 36M58 38L48 50M58 38L64 54"),
        ],
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Whoever finds an ending, or opens a lesson, sees another picture each time.
    #[test]
    fn no_two_lessons_and_no_two_endings_look_alike() {
        let lessons: Vec<Lens> = Lesson::ALL.iter().map(|l| lesson(*l)).collect();
        let endings: Vec<Lens> = Ending::ALL.into_iter().map(ending).collect();
        for all in [lessons, endings] {
            for (i, a) in all.iter().enumerate() {
                assert!(a.len() >= 2 && all.iter().skip(i + 1).all(|b| a != b), "{i}");
            }
        }
    }

    /// A lens shows the state: each thing that can be wrong with a grab changes its picture.
    #[test]
    fn a_lens_shows_each_state_of_its_part() {
        let s = Scenario::default();
        let plain = of(Held::Grab, &s);
        let changes: [fn(&mut Scenario); 3] =
            [|s| s.grab.arrow = Arrow::Down, |s| s.grab.latch = Latch::Open, |s| s.grab.bolt = Bolt::Loose];
        for change in changes {
            let mut other = s.clone();
            change(&mut other);
            assert_ne!(of(Held::Grab, &other), plain);
        }
        assert_ne!(harness(HarnessFit::Snug), harness(HarnessFit::Loose));
    }
}
