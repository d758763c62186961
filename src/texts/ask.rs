//! Questions, their answers and why an answer was wrong, as sentences.

use super::Worded;
use super::say::{self, Reader};
use super::{Gear, Key, Room};
use crate::geometry::Geometry;
use crate::physics::ladder::{self, Footing};
use crate::practice::eave::{Holds, Link};
use crate::practice::site::{Site, Sort};
use crate::quiz::questions::{Ask, Choice, Given, Item, ItemKind, Shows};
use crate::rules::{Advice, HARD_SWING_M_S, place, reserve};
use crate::scenario::*;
use crate::strength::{self, Ground};
use crate::units::{Quantity, Rounding};

fn len(r: Reader, m: f64) -> String {
    r.q(Quantity::Length, m, Rounding::Nearest)
}

fn kept(r: Reader) -> String {
    reserve().map_or(String::new(), |l| r.limit(l))
}

/// The question.
pub fn stem(r: Reader, q: &Item) -> String {
    let limit = match &q.ask {
        Ask::Height { limit_m, .. } => len(r, *limit_m),
        _ => String::new(),
    };
    let fast = r.q(Quantity::Speed, HARD_SWING_M_S, Rounding::Nearest);
    let (moment, a, b) = match q.shows {
        Some(Shows::Links(at, l)) => {
            (say::upper_first(r.t(at.label())), link(r, l.a, false), link(r, l.b, true))
        }
        _ => (String::new(), "", ""),
    };
    let values = [
        ("limit", limit.as_str()),
        ("reserve", &kept(r)),
        ("fast", &fast),
        ("moment", &moment),
        ("a", a),
        ("b", b),
    ];
    let asked = r.f(q.kind.stem(), &values);
    match q.right() {
        Some(Choice::After(case, _)) => format!("{} {asked}", r.t(case.stem())),
        _ => asked,
    }
}

/// Where a link is clipped; the second one, off, is on its keeper.
pub fn link(r: Reader, l: Link, second: bool) -> &'static str {
    r.t(match l {
        Link::Below => Gear::Below,
        Link::Above => Gear::Above,
        Link::Off if second => Gear::Parked,
        Link::Off => Gear::Off,
    })
}

/// What holds.
pub fn holds(h: Holds) -> Gear {
    match h {
        Holds::A => Gear::HoldsA,
        Holds::B => Gear::HoldsB,
        Holds::Either => Gear::HoldsEither,
        Holds::Nothing => Gear::HoldsNothing,
    }
}

/// Name of a set-up among several.
pub fn letter(n: u8) -> String {
    char::from(b'A' + n.min(25)).to_string()
}

/// An answer to choose.
pub fn choice(r: Reader, q: &Item, c: Choice) -> String {
    match c {
        Choice::Ends(o) => r.t(o.label()).to_owned(),
        Choice::SetUp(n) => {
            let name = r.f(Room::QSetUp, &[("letter", &letter(n))]);
            match (q.kind, q.set_ups.get(usize::from(n))) {
                (ItemKind::PickAnchor, Some(s)) => format!("{name}{}{}", r.colon(), anchor(r, s)),
                _ => name,
            }
        }
        Choice::Same => r.t(Room::QSame).to_owned(),
        Choice::Part(p) => {
            let look = q.set_ups.first().map_or(String::new(), |s| say::look(r, p.look(s)));
            r.f(Room::QPart, &[("part", r.t(p.label())), ("look", &look)])
        }
        Choice::AllFit => r.t(Room::QAllFit).to_owned(),
        Choice::RoomEnough => r.f(Room::QRoomEnough, &[("reserve", &kept(r))]),
        Choice::RoomShort => r.f(Room::QRoomShort, &[("reserve", &kept(r))]),
        Choice::RoomNone => r.t(Room::QRoomNone).to_owned(),
        Choice::Offset(m) => len(r, m),
        Choice::Arrest => r.t(Room::QArrest).to_owned(),
        Choice::Instead(Advice::OtherMethod) => r.t(Room::QOtherMethod).to_owned(),
        Choice::Instead(Advice::StopAndAsk) => r.t(Room::QStopAndAsk).to_owned(),
        Choice::After(case, n) => case.choices().get(usize::from(n)).map_or("", |t| r.t(*t)).to_owned(),
        Choice::Footing(f) => r.t(f.label()).to_owned(),
        Choice::WireKept => r.t(Room::QWireKept).to_owned(),
        Choice::WireAsk => r.t(Room::QWireAsk).to_owned(),
        Choice::WireDryLadder => r.t(Room::QWireDry).to_owned(),
        Choice::Worn(f) => say::upper_first(r.t(f.label())),
        Choice::Holds(h) => r.t(holds(h)).to_owned(),
        Choice::Half(h) => say::upper_first(r.t(h.label())),
        Choice::EitherHalf => r.t(Room::QEither).to_owned(),
        Choice::Spot(m) => {
            let n = spots(q).iter().position(|x| (x - m).abs() < 1e-9).unwrap_or(0);
            r.f(Room::QSpot, &[("letter", &letter(n as u8)), ("at", &len(r, m))])
        }
        Choice::NoSpot => r.t(Room::QNoSpot).to_owned(),
    }
}

/// The places for a ladder that a question asks about, m along the wall.
pub fn spots(q: &Item) -> Vec<f64> {
    match &q.ask {
        Ask::One { choices, .. } => {
            choices.iter().filter_map(|c| if let Choice::Spot(m) = c { Some(*m) } else { None }).collect()
        }
        _ => vec![],
    }
}

/// An anchor in a few words: kind, and what holds it.
fn anchor(r: Reader, s: &Scenario) -> String {
    let mut out = r.t(s.anchor.kind.label()).to_owned();
    match s.anchor.kind {
        AnchorKind::RidgePlateInFraming | AnchorKind::RidgePlateInSheathing => {
            let f = &s.anchor.fasteners;
            out.push_str(&format!(
                ", {} × {}, {}",
                f.per_side,
                r.t(f.kind.label()),
                r.t(Key::FastenersPerSide).to_lowercase()
            ));
        }
        AnchorKind::ChimneySling => {
            let mortar = s.anchor.chimney.mortar.label();
            out.push_str(&format!(", {} {}", r.t(Key::MortarLabel).to_lowercase(), r.t(mortar)));
        }
        AnchorKind::RatedEye => {
            let n = r.q(Quantity::Force, s.anchor.stated_breaking_n, Rounding::Down);
            out.push_str(&format!(", {} {n}", r.t(Key::StatedBreaking).to_lowercase()));
        }
        _ => {}
    }
    out
}

/// What a person is told of a set-up for a question: label and value, in the order of the system.
pub fn facts(r: Reader, kind: ItemKind, s: &Scenario) -> Vec<(String, String)> {
    let mut out: Vec<(String, String)> = Vec::new();
    let field = |f: Field| {
        let (label, q) = say::field(f);
        // A length alone does not say of what.
        let part = match f {
            Field::LanyardLength => Some(Key::PartLanyard),
            Field::LadderLength | Field::LadderFoot => Some(Key::PartLadder),
            Field::GrabAboveDring => Some(Key::PartGrab),
            _ => None,
        };
        let label = match part {
            Some(p) => format!("{} · {}", r.t(p.in_place(&s.place)), r.t(label)),
            None => r.t(label).to_owned(),
        };
        f.get(s).map(|v| (label, r.q(q, v, Rounding::Nearest)))
    };
    let t = |label: Key, value: Key| (r.t(label).to_owned(), r.t(value).to_owned());
    let line = matches!(
        kind,
        ItemKind::Ends | ItemKind::Higher | ItemKind::PutGrab | ItemKind::Room | ItemKind::Along
    );
    if line {
        out.push((r.t(Key::AnchorKindLabel).to_owned(), anchor(r, s)));
        out.push(t(Key::EndKnot, s.lifeline.end.label()));
        if kind != ItemKind::PutGrab {
            out.extend(field(Field::GrabAboveDring));
        }
        if s.lifeline.slack_m > 0.0 {
            out.extend(field(Field::LifelineSlack));
        }
        out.push(t(Key::GrabArrow, s.grab.arrow.label()));
        out.push(t(Key::GrabBolt, s.grab.bolt.label()));
        out.push(t(Key::GrabLatch, s.grab.latch.label()));
        out.extend(field(Field::LanyardLength));
        out.push(t(
            Key::AbsorberLabel,
            if s.lanyard.absorber.is_some() { Key::AbsorberYes } else { Key::AbsorberNo },
        ));
        out.push(t(Key::HarnessFitLabel, s.worker.harness.label()));
        if s.gear.rope != RopeState::Sound {
            out.push((
                r.t(Key::PartRope).to_owned(),
                say::look(r, crate::practice::inspection::Look::Rope(s.gear.rope)),
            ));
        }
        if s.gear.label != LabelState::Legible {
            out.push((r.t(Key::PartLabel).to_owned(), r.t(Key::LooksLabelMissing).to_owned()));
        }
    }
    if !matches!(kind, ItemKind::Fault | ItemKind::PickAnchor) {
        out.extend(field(Field::Mass));
        out.extend(field(Field::StandingHeight));
        out.extend(field(Field::FromEave));
    }
    if matches!(kind, ItemKind::Footing | ItemKind::Wire) {
        out.extend([Field::LadderLength, Field::LadderFoot].into_iter().filter_map(field));
    }
    if kind == ItemKind::Footing {
        out.extend(field(Field::ReachOut));
        out.push(t(Key::WeatherLabel, s.weather.label()));
    }
    out.extend([Field::LineHeight, Field::LineDistance].into_iter().filter_map(field));
    if let Some(line) = s.power_line {
        out.push(t(Key::VoltageLabel, line.voltage.label()));
    }
    if kind == ItemKind::Method {
        out.extend(field(Field::GrabAboveDring));
        out.extend(field(Field::LanyardLength));
        out.push((r.t(Key::AnchorKindLabel).to_owned(), anchor(r, s)));
        out.push(t(Key::OtherMethodLabel, say::other_method(s.plan.other_method, &s.place)));
        out.push(t(Key::RescueLabel, s.plan.rescue.label()));
        out.push(t(Key::ChooserLabel, s.plan.anchor_by.label()));
    }
    if let Below::Obstacle { height_m, .. } = s.house.below {
        out.push((r.t(Key::ObstacleHeight).to_owned(), len(r, height_m)));
    }
    out
}

/// An answer as it was given.
pub fn given(r: Reader, q: &Item, g: &Given) -> String {
    match (&q.ask, g) {
        (_, Given::Asks) => r.t(Room::QuizAsks).to_owned(),
        (Ask::Order { shown }, Given::Order(order)) => {
            steps(r, order.iter().filter_map(|i| shown.get(usize::from(*i))).copied().collect())
        }
        (Ask::Height { grid, .. }, Given::Height(n)) => {
            grid.get(usize::from(*n)).map_or(String::new(), |h| len(r, h.0))
        }
        _ => q.chosen(g).map_or(String::new(), |c| choice(r, q, c)),
    }
}

/// The right answer.
pub fn right(r: Reader, q: &Item) -> String {
    let told = given(r, q, &q.key());
    match q.ask {
        Ask::Height { .. } => r.f(Room::QFrom, &[("value", &told)]),
        _ => told,
    }
}

fn steps(r: Reader, all: Vec<crate::quiz::questions::Step>) -> String {
    let words: Vec<String> =
        all.iter().enumerate().map(|(n, s)| format!("{}. {}", n + 1, r.t(s.label()))).collect();
    words.join("; ")
}

/// Why an answer was wrong; none for a right one.
pub fn why(r: Reader, q: &Item, g: &Given) -> Option<String> {
    use crate::physics::trace::Outcome;
    let credit = q.credit(g);
    let s = q.set_ups.first();
    let because: Vec<&str> = q.because.iter().map(|c| r.t(c.title())).collect();
    let because = because.join("; ");
    if *g == Given::Asks {
        return Some(r.t(Room::WhyAsks).to_owned());
    }
    if credit >= 1.0 {
        return (!because.is_empty()).then(|| r.f(Room::WhyRight, &[("because", &because)]));
    }
    Some(match (&q.ask, g) {
        (Ask::Order { shown }, _) => {
            // Of n steps, n (n - 1) / 2 pairs.
            let n = shown.len() as u32;
            let all = n * n.saturating_sub(1) / 2;
            let right_pairs = (credit * f64::from(all)).round() as u32;
            let words =
                [("right", right_pairs.to_string()), ("all", all.to_string()), ("steps", right(r, q))];
            return Some(r.f(Room::WhySteps, &words.each_ref().map(|(k, v)| (*k, v.as_str()))));
        }
        (Ask::Height { grid, .. }, Given::Height(n)) => {
            let h = grid.get(usize::from(*n))?;
            let fell = r.q(Quantity::Length, h.1, Rounding::Up);
            return Some(r.f(Room::WhyPutGrab, &[("height", &len(r, h.0)), ("value", &fell)]));
        }
        _ => match (q.kind, q.chosen(g)?) {
            (ItemKind::Ends, Choice::Ends(Outcome::Stopped)) => r.t(Room::WhyEndsStopped).to_owned(),
            (ItemKind::Ends, Choice::Ends(Outcome::Strikes)) => r.t(Room::WhyEndsStrikes).to_owned(),
            (ItemKind::Ends, _) => r.t(Room::WhyEndsLetGo).to_owned(),
            (ItemKind::Higher, Choice::Same) => r.t(Room::WhyHigherSame).to_owned(),
            (ItemKind::Higher, _) if q.right() == Some(Choice::Same) => r.t(Room::WhyHigherDiffer).to_owned(),
            (ItemKind::Higher, _) => r.t(Room::WhyHigherOther).to_owned(),
            (ItemKind::Fault, chosen) => {
                let part = match q.right() {
                    Some(Choice::Part(p)) => r.t(p.label()).to_lowercase(),
                    _ => return Some(r.t(Room::WhyFaultNone).to_owned()),
                };
                let key = if chosen == Choice::AllFit { Room::WhyFaultMissed } else { Room::WhyFaultOther };
                r.f(key, &[("part", &part)])
            }
            (ItemKind::PickAnchor, Choice::SetUp(n)) => {
                let bad = q.set_ups.get(usize::from(n))?;
                let none = strength::anchor(bad).ground == Ground::Unsuitable;
                let mut out =
                    vec![r.t(if none { Room::WhyAnchorNone } else { Room::WhyAnchorWeak }).to_owned()];
                out.extend(say::strength(r, bad).into_iter().take(1));
                out.join(" ")
            }
            (ItemKind::Room, _) => r.t(Room::WhyRoom).to_owned(),
            (ItemKind::Along, Choice::Offset(m)) => {
                let far = matches!(q.right(), Some(Choice::Offset(right)) if m > right);
                r.t(if far { Room::WhyAlongFar } else { Room::WhyAlongNear }).to_owned()
            }
            (ItemKind::Method, Choice::Arrest) => r.f(Room::WhyMethodArrest, &[("because", &because)]),
            (ItemKind::Method, Choice::Instead(Advice::OtherMethod)) if because.is_empty() => {
                r.t(Room::WhyMethodOther).to_owned()
            }
            (ItemKind::Method, Choice::Instead(Advice::OtherMethod)) => {
                r.f(Room::WhyMethodOtherAsk, &[("because", &because)])
            }
            (ItemKind::Method, _) if q.right() == Some(Choice::Arrest) => r.t(Room::WhyMethodAsk).to_owned(),
            (ItemKind::Method, _) => r.f(Room::WhyMethodRank, &[("because", &because)]),
            (ItemKind::After, Choice::After(case, n)) => {
                r.t(*case.whys().get(usize::from(n).checked_sub(1)?)?).to_owned()
            }
            (ItemKind::Footing, _) => {
                let stand = ladder::stand(s?, &Geometry::of(s?)?)?;
                let num = |x: f64, how| r.q(Quantity::Ratio, x, how);
                match stand.footing {
                    Footing::TipsSideways => r.f(
                        Room::WhyFootingSide,
                        &[("off", &len(r, stand.off_middle_m)), ("rail", &len(r, ladder::HALF_WIDTH_M))],
                    ),
                    Footing::TipsBack => r.t(Room::WhyFootingBack).to_owned(),
                    Footing::Holds | Footing::SlidesOut => r.f(
                        Room::WhyFooting,
                        &[
                            ("needed", &num(stand.needed_friction, Rounding::Up)),
                            ("has", &num(stand.has_friction, Rounding::Down)),
                        ],
                    ),
                }
            }
            (ItemKind::Wire, _) => {
                let g = Geometry::of(s?)?;
                let near = ladder::nearest_to_wire_m(s?, &g)?.min(ladder::hand_to_wire_m(s?, &g)?);
                let voltage = s?.power_line?.voltage;
                let own = place(&s?.place).and_then(|p| p.approach(voltage));
                let Some(limit) = own.filter(|_| voltage != Voltage::Unknown) else {
                    return Some(r.t(Room::WhyWireUnknown).to_owned());
                };
                let near = r.q(Quantity::Length, near, Rounding::Down);
                r.f(Room::WhyWire, &[("value", &near), ("limit", &r.limit(limit))])
            }
            (ItemKind::Worn, _) => match q.right() {
                Some(Choice::Worn(f)) => r.t(f.does()).to_owned(),
                _ => return None,
            },
            (ItemKind::Clipped, _) => r.t(Room::WhyClipped).to_owned(),
            (ItemKind::Pair, _) => {
                let Ask::One { choices, .. } = &q.ask else { return None };
                let worse = choices.iter().find_map(|c| match c {
                    Choice::Half(h) if !h.is_right() => Some(*h),
                    _ => None,
                })?;
                r.f(
                    Room::WhyPair,
                    &[("worse", &say::upper_first(r.t(worse.label()))), ("why", r.t(worse.why()))],
                )
            }
            (ItemKind::Stand, Choice::Spot(m)) => why_not_there(r, q, m),
            (ItemKind::Stand, _) => r.t(Room::WhyStandFree).to_owned(),
            _ => return None,
        },
    })
}

/// What there is to know of a property for its ladder.
pub fn stand_facts(r: Reader, s: &Site, law: &str) -> String {
    let at = s.placed_at(s.job_m);
    let keep = |sort| r.q(Quantity::Length, Site::keep_m(sort, law), Rounding::Up);
    r.f(
        Room::StandFacts,
        &[
            ("eave", &len(r, s.eave_m)),
            ("long", &len(r, s.ladder_long_m(&at))),
            ("foot", &len(r, at.foot_m)),
            ("drop", &keep(Sort::ServiceDrop)),
            ("line", &keep(Sort::Line)),
        ],
    )
}

/// What is in a ladder's way at a place along the wall.
fn why_not_there(r: Reader, q: &Item, m: f64) -> String {
    let Some(Shows::Site { seed, law }) = &q.shows else { return String::new() };
    let s = Site::drawn(*seed);
    let at = s.placed_at(m);
    let wires = s.near_wires(&at, law).into_iter().map(|w| w.0);
    let all: Vec<&str> = wires.chain(s.meets(&at)).map(|t| r.t(t.label())).collect();
    r.f(Room::WhyStand, &[("what", &all.join(", "))])
}
