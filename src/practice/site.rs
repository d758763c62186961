//! The walk round an invented property before anybody climbs: what there is to find, where the ladder may stand, and
//! what the plan still leaves open.
//!
//! x runs along the front wall from its left corner, z out from the wall face, y up. Computed: how near the ladder
//! comes to a wire however it turns about its foot, what its foot, its top and the door meet, the rope's way over the
//! roof, and the set-up that is played. Told only: wasps, a dog, passers-by, wind. Left out: the pole in a hand, and a
//! ladder that slides before it tips.

use crate::draw::Draw;
use crate::rules::{HARD_SWING_M_S, LimitKind, Method, common, place, reserve};
use crate::scenario::{
    Anchor, AnchorKind, House, Ladder, Lifeline, OtherMethod, Plan, PowerLine, RescuePlan, Scenario, Stance,
    Voltage, Weather,
};
use crate::studies::along_wall::Swing;
use serde::{Deserialize, Serialize};

/// Length of the front wall, m.
pub const WALL_M: f64 = 8.5;
/// The property along the wall, m from the wall's left corner.
pub const ALONG_M: [f64; 2] = [-4.9, 13.6];
/// The near edge of the sidewalk and the edge of the property, m out from the wall.
pub const WALK_M: [f64; 2] = [5.4, 6.9];
/// Ladder and anchor are put on a grid of this, m: that of the falls along the wall.
pub const GRID_M: f64 = 0.25;
/// How far beside the middle of the job a ladder may stand with its work within the rails, m (common practice).
pub const JOB_REACH_M: f64 = 0.75;
/// What an upstretched arm and a common pole reach from the ground, m (assumed).
pub const POLE_REACH_M: f64 = 4.9;
/// Half a ladder's foot, m.
const FOOT_HALF_M: f64 = 0.25;
/// Half a door and its frame; how far it swings, m.
pub const DOOR_M: [f64; 2] = [0.45, 0.9];
/// A nest is let alone within this, m (assumed: an arm and a ladder's width).
const NEST_M: f64 = 1.5;
/// Half of what is rotten, m.
pub const ROT_HALF_M: f64 = 0.5;
/// Half a skylight, m.
pub const SKY_HALF_M: f64 = 0.45;
/// How far down the roof a skylight's lower edge is, as a share of the way from ridge to eave.
const SKY_DOWN_SHARE: f64 = 0.62;
/// Half of the upper windows' width, and where their middles are, m.
pub const WINDOWS_M: [f64; 3] = [1.25, 4.25, 7.25];
/// From a window one reaches as far to the side, m (assumed).
const WINDOW_REACH_M: f64 = 1.0;
/// Out to one in four: the foot's distance is the height by this.
const FOUR_TO_ONE_RATIO: f64 = 3.872_983_346_207_417; // sqrt 15

/// What there is to find, and two things that are nothing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Sort {
    /// The cable from the pole to the house.
    ServiceDrop,
    /// Bare wires on the pole's arm.
    Line,
    /// The thin one, lowest.
    Phone,
    /// Dug earth.
    SoftBed,
    /// Ground that falls to the side.
    Slope,
    /// A door that opens outwards.
    Door,
    /// A window in the roof.
    Skylight,
    /// Fascia and roof's edge gone soft.
    Rot,
    /// A nest under the eave.
    Wasps,
    /// A dog on a chain.
    Dog,
    /// People on the sidewalk.
    People,
    /// A bush away from the wall: nothing.
    Bush,
    /// A letter box: nothing.
    Letters,
}

impl Sort {
    /// All that matter, in the order of the plan.
    pub const ALL: [Sort; 11] = [
        Sort::ServiceDrop,
        Sort::Line,
        Sort::Phone,
        Sort::SoftBed,
        Sort::Slope,
        Sort::Door,
        Sort::Skylight,
        Sort::Rot,
        Sort::Wasps,
        Sort::Dog,
        Sort::People,
    ];

    /// Whether it matters to who climbs.
    pub fn matters(self) -> bool {
        !matches!(self, Sort::Bush | Sort::Letters)
    }

    /// Whether it is a wire, of whatever kind.
    pub fn is_wire(self) -> bool {
        matches!(self, Sort::ServiceDrop | Sort::Line | Sort::Phone)
    }

    /// The row of the plan it belongs to.
    pub fn row(self) -> Option<Row> {
        match self {
            Sort::ServiceDrop | Sort::Line | Sort::Phone => Some(Row::Wires),
            Sort::SoftBed | Sort::Slope => Some(Row::Ground),
            Sort::Door | Sort::Skylight | Sort::Rot | Sort::Wasps => Some(Row::Around),
            Sort::Dog | Sort::People => Some(Row::People),
            Sort::Bush | Sort::Letters => None,
        }
    }
}

/// What somebody says of a thing: of a wire its kind, of anything else what to do about it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Mark {
    /// A wire of this kind.
    Wire(Sort),
    /// What is right.
    Right,
    /// What is often done instead.
    Wrong,
    /// The second thing that is often done.
    Other,
    /// Cannot tell: ask.
    Asks,
}

/// A thing on the property.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Thing {
    /// What.
    pub sort: Sort,
    /// Its middle along the wall, m.
    pub x_m: f64,
    /// Its middle out from the wall, m; for what is on wall or roof nought.
    pub z_m: f64,
    /// Half its width along the wall, m.
    pub half_m: f64,
}

/// What has to be painted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Work {
    /// Soffit boards, with a roller: a pole will do where it reaches.
    Roller,
    /// Scraping and caulking, with both hands there.
    Hands,
}

/// An invented property, and the job there.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Site {
    /// What it was drawn from.
    pub seed: u64,
    /// Height of the eave, m.
    pub eave_m: f64,
    /// The middle of the job along the wall, m.
    pub job_m: f64,
    /// The job.
    pub work: Work,
    /// A lift stands in the yard for it.
    pub lift: bool,
    /// The pole's middle along the wall, m, out by [`POLE_OUT_M`].
    pub pole_m: f64,
    /// What there is, in the order of the plan.
    pub things: Vec<Thing>,
    /// Wind when the crew arrives, km/h.
    pub wind_km_h: u32,
    /// The roof is wet.
    pub wet: bool,
}

/// The phone line's box is so far in from the corner, m.
pub const PHONE_IN_M: f64 = 2.15;
/// How far out from the wall the pole stands, m.
pub const POLE_OUT_M: f64 = 3.0;
/// Height of the wires on its arm; where the drop and the phone line leave it, m.
pub const POLE_M: [f64; 3] = [9.2, 6.8, 5.2];

/// Where the ladder and the anchor are put, and the rest of the plan.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Placed {
    /// The method.
    pub method: Method,
    /// The ladder's middle along the wall, m.
    pub ladder_m: f64,
    /// Its foot out from under its support, m.
    pub foot_m: f64,
    /// The anchor on the ridge, m along the wall.
    pub anchor_m: f64,
    /// How the first one up is protected.
    pub first: Option<First>,
    /// From where somebody who hangs is reached.
    pub reach: Option<Reach>,
    /// Work stops at this wind, km/h: the maker's or the company's own figure.
    pub stop_km_h: Option<u32>,
}

/// How the first one up is protected.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum First {
    /// A line over the ridge, set from the ground.
    Thrown,
    /// From a lift or a scaffold.
    Lift,
    /// Up quickly.
    Quick,
}

/// From where a hanging person is reached.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Reach {
    /// The nearest upper window.
    Window,
    /// A second ladder beside the first.
    SecondLadder,
    /// The fire service, and nobody before.
    FireService,
}

/// A row of the plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Row {
    /// Wires.
    Wires,
    /// The ground.
    Ground,
    /// Above and around.
    Around,
    /// People and animals.
    People,
    /// The method.
    Method,
    /// The ladder.
    Ladder,
    /// The anchor.
    Anchor,
    /// The first one up.
    FirstUp,
    /// If somebody hangs.
    Hangs,
    /// Weather.
    Weather,
}

impl Row {
    /// All, in order.
    pub const ALL: [Row; 10] = [
        Row::Wires,
        Row::Ground,
        Row::Around,
        Row::People,
        Row::Method,
        Row::Ladder,
        Row::Anchor,
        Row::FirstUp,
        Row::Hangs,
        Row::Weather,
    ];
}

/// What the plan comes to, against what is there.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Said {
    /// The ladder, however it turns about its foot, comes so near to a wire, m.
    NearWire(Sort, f64),
    /// The ladder's foot, top or rope meets it.
    Meets(Sort),
    /// It was not found.
    Missed(Sort),
    /// What was said of it would not do.
    Wrongly(Sort, Mark),
    /// It was to be asked about: open until there is an answer.
    Asked(Sort),
    /// The crew asks first, and so near would the ladder come, m.
    ToAsk(Sort, f64),
    /// A slip there comes down on the ground, so much too low, m.
    ComesDown(f64),
    /// A slip there swings so fast, m/s.
    SwingsHard(f64),
    /// A slip there leaves less room than is kept, m.
    LittleRoom(f64),
    /// The slip could not be computed.
    NotComputed,
    /// A method that comes before it can be used here.
    Before(Method),
    /// The method cannot be used here.
    Cannot(Method),
    /// The ladder stands this far from the job, m.
    FarFromJob(f64),
    /// The ladder leans at so many degrees from the ground.
    Angle(f64),
    /// Nothing holds the first one up.
    FirstBare,
    /// Not said how the first one up is protected.
    FirstOpen,
    /// No lift is there for the first one up.
    NoLift,
    /// The window is too far away, or no ground for a second ladder.
    OutOfReach(Reach),
    /// Nobody of the crew reaches who hangs.
    NobodyReaches,
    /// Not said from where who hangs is reached.
    ReachOpen,
    /// No figure at which work stops.
    WindOpen,
    /// The wind is over that figure already.
    WindOver,
    /// Nothing asks to stop here: asking cost a call, no more.
    NeedNotAsk,
}

impl Said {
    /// Whether somebody could be killed by it today.
    pub fn is_grave(self) -> bool {
        matches!(
            self,
            Said::NearWire(..)
                | Said::Meets(Sort::SoftBed | Sort::Slope | Sort::Door | Sort::Rot)
                | Said::FirstBare
                | Said::ComesDown(_)
                | Said::SwingsHard(_)
                | Said::NobodyReaches
                | Said::Cannot(_)
        )
    }
}

/// The bare wires on the pole's arm stand so far apart, m.
pub const LINE_APART_M: f64 = 0.85;

/// Whether what was said of a thing takes it out of the way: a door that is locked, a dog that is taken in. A skylight
/// that is covered still has its edge.
fn is_settled(sort: Sort, marks: &[(Sort, Mark)]) -> bool {
    matches!(sort, Sort::Door | Sort::Dog) && marks.contains(&(sort, Mark::Right))
}

/// A point of the property, m.
type At = [f64; 3];

fn dist(a: At, b: At) -> f64 {
    libm::sqrt((a[0] - b[0]) * (a[0] - b[0]) + (a[1] - b[1]) * (a[1] - b[1]) + (a[2] - b[2]) * (a[2] - b[2]))
}

/// Distance of a point from a straight piece of wire.
fn dist_to(q: At, a: At, b: At) -> f64 {
    let along = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
    let long2 = along[0] * along[0] + along[1] * along[1] + along[2] * along[2];
    let to = (q[0] - a[0]) * along[0] + (q[1] - a[1]) * along[1] + (q[2] - a[2]) * along[2];
    let k = if long2 > 0.0 { (to / long2).clamp(0.0, 1.0) } else { 0.0 };
    dist(q, [a[0] + k * along[0], a[1] + k * along[1], a[2] + k * along[2]])
}

impl Site {
    /// A property drawn from a seed: four to seven things to find, a wire among them, and an answer: a place for the
    /// ladder where nothing is in its way, a method that comes before, or a reason to ask.
    pub fn drawn(seed: u64) -> Site {
        let mut draw = Draw::with_seed(seed ^ 0x7369_7465);
        loop {
            let s = Site::once(seed, &mut draw);
            let n = s.things.iter().filter(|t| t.sort.matters()).count();
            // Ladders have room somewhere on the ground, whatever the wires say.
            if (4..=7).contains(&n) && s.spots().into_iter().any(|x| s.meets(&s.placed_at(x)).is_empty()) {
                return s;
            }
        }
    }

    fn once(seed: u64, draw: &mut Draw) -> Site {
        let right = draw.coin();
        let mirror = |x: f64| if right { x } else { WALL_M - x };
        let eave_m = draw.one([4.6, 5.4, 5.6]);
        let job_m: f64 = draw.one([2.0, 3.0, 4.25, 5.5, 6.5]);
        let pole_m = mirror(WALL_M + draw.one([3.0, 3.75, 4.5]));
        let mut things = Vec::new();
        let mut add = |yes: bool, sort: Sort, x_m: f64, z_m: f64, half_m: f64| {
            if yes {
                things.push(Thing { sort, x_m, z_m, half_m });
            }
        };
        let corner = mirror(WALL_M - 0.2);
        let drop = draw.below(10) < 7;
        add(
            drop,
            Sort::ServiceDrop,
            (corner + pole_m) / 2.0,
            POLE_OUT_M / 2.0,
            (corner - pole_m).abs() / 2.0,
        );
        add(!drop || draw.coin(), Sort::Line, pole_m, POLE_OUT_M, 0.6);
        let box_m = mirror(WALL_M - PHONE_IN_M);
        add(
            draw.below(3) == 0,
            Sort::Phone,
            (box_m + pole_m) / 2.0,
            POLE_OUT_M / 2.0,
            (box_m - pole_m).abs() / 2.0,
        );
        let near = |draw: &mut Draw| draw.one([-1.25, -0.75, 0.5, 0.75, 1.25]);
        // A bed as deep as a foot stands out.
        let at = job_m + near(draw);
        add(draw.below(5) < 3, Sort::SoftBed, at.clamp(1.1, WALL_M - 1.1), 1.1, 1.0);
        let off = mirror(-1.6);
        add(draw.below(5) < 2, Sort::Slope, off, 2.5, 3.2);
        let at = job_m + draw.one([-1.5, -1.0, 1.0, 1.5]);
        add(draw.below(5) < 3, Sort::Door, at.clamp(0.9, WALL_M - 0.9), 0.0, DOOR_M[0]);
        add(draw.below(5) < 2, Sort::Skylight, job_m + draw.one([-1.0, 0.25, 0.75]), 0.0, SKY_HALF_M);
        let at = job_m + near(draw);
        add(draw.coin(), Sort::Rot, at.clamp(0.6, WALL_M - 0.6), 0.0, ROT_HALF_M);
        let at = job_m + draw.one([-2.5, -1.75, 1.75, 2.5]);
        add(draw.below(5) < 2, Sort::Wasps, at.clamp(0.4, WALL_M - 0.4), 0.0, 0.3);
        add(draw.below(5) < 2, Sort::Dog, mirror(WALL_M + draw.one([0.4, 1.2])), 2.6, 1.6);
        add(
            draw.below(5) < 3,
            Sort::People,
            draw.one([-2.5, 1.25, 6.0, 8.0]),
            (WALK_M[0] + WALK_M[1]) / 2.0,
            0.5,
        );
        add(draw.coin(), Sort::Bush, mirror(-3.2), 3.2, 0.5);
        add(draw.coin(), Sort::Letters, mirror(WALL_M + 1.9), 5.0, 0.25);
        things.sort_by_key(|t| t.sort);
        Site {
            seed,
            eave_m,
            job_m,
            work: if draw.below(3) == 0 { Work::Hands } else { Work::Roller },
            lift: draw.below(3) == 0,
            pole_m,
            things,
            wind_km_h: draw.one([10, 15, 20, 25, 35]),
            wet: draw.below(4) == 0,
        }
    }

    /// A thing, where it is here.
    pub fn thing(&self, sort: Sort) -> Option<&Thing> {
        self.things.iter().find(|t| t.sort == sort)
    }

    /// Where a wire hangs: points along it, m (along the wall, up, out). Empty for what is no wire.
    pub fn wire(&self, sort: Sort) -> Vec<At> {
        let right = self.pole_m > WALL_M / 2.0;
        let corner = |in_m: f64| if right { WALL_M - in_m } else { in_m };
        let (from, to, sag): (At, At, f64) = match sort {
            Sort::ServiceDrop => {
                ([self.pole_m, POLE_M[1], POLE_OUT_M], [corner(0.2), self.eave_m + 0.9, 0.3], 0.5)
            }
            Sort::Phone => (
                [self.pole_m, POLE_M[2], POLE_OUT_M + 0.3],
                [corner(PHONE_IN_M), self.eave_m - 1.5, 0.0],
                0.35,
            ),
            // Along the side street, past the house.
            Sort::Line => ([self.pole_m, POLE_M[0], -9.0], [self.pole_m, POLE_M[0], WALK_M[1] + 9.0], 0.0),
            _ => return vec![],
        };
        (0..=24)
            .map(|i| {
                let k = f64::from(i) / 24.0;
                let mix = |a: f64, b: f64| a + (b - a) * k;
                [mix(from[0], to[0]), mix(from[1], to[1]) - 4.0 * sag * k * (1.0 - k), mix(from[2], to[2])]
            })
            .collect()
    }

    /// The usual plan with the ladder at a place: foot at one in four, the anchor above it, nothing else said.
    pub fn placed_at(&self, ladder_m: f64) -> Placed {
        let foot_m = (self.eave_m / FOUR_TO_ONE_RATIO / 0.05).round() * 0.05;
        Placed {
            method: Method::FallArrest,
            ladder_m,
            foot_m,
            anchor_m: ladder_m,
            first: None,
            reach: None,
            stop_km_h: None,
        }
    }

    /// Where a ladder for the job may stand, by its work alone, m.
    pub fn spots(&self) -> Vec<f64> {
        let n = (JOB_REACH_M / GRID_M).round() as i32;
        (-n..=n).map(|i| self.job_m + GRID_M * f64::from(i)).collect()
    }

    /// Length of the rails, m: 0.9 m past the eave.
    pub fn ladder_long_m(&self, at: &Placed) -> f64 {
        ((libm::hypot(self.eave_m, at.foot_m) + super::eave::RAILS_PAST_M) * 10.0).ceil() / 10.0
    }

    /// Where the ladder's foot is, m.
    fn foot(&self, at: &Placed) -> At {
        [at.ladder_m, 0.0, House::default().overhang_m + at.foot_m]
    }

    /// How near the ladder comes to a wire, however it turns about its foot, m: nought where it can touch it. None
    /// where there is no such wire.
    pub fn wire_m(&self, sort: Sort, at: &Placed) -> Option<f64> {
        self.thing(sort)?;
        let foot = self.foot(at);
        // Of the three bare wires the nearest.
        let apart = if sort == Sort::Line { LINE_APART_M } else { 0.0 };
        let wire = self.wire(sort);
        let near = [-apart, 0.0, apart].into_iter().flat_map(|off| {
            let foot = [foot[0] - off, foot[1], foot[2]];
            wire.windows(2).map(move |w| dist_to(foot, w[0], w[1])).collect::<Vec<_>>()
        });
        Some((near.fold(f64::INFINITY, f64::min) - self.ladder_long_m(at)).max(0.0))
    }

    /// What has to be kept from a wire here, m: a line by the place's own figure until its owner has said; of a
    /// service drop and a phone line, not to be within a metre (our own choice: an arm and a brush).
    pub fn keep_m(sort: Sort, law: &str) -> f64 {
        if sort != Sort::Line {
            return 1.0;
        }
        let own = place(law).and_then(|p| p.approach(Voltage::Unknown));
        own.or_else(|| common(LimitKind::ApproachDistance)).map_or(f64::INFINITY, |l| l.value)
    }

    /// Wires that the ladder comes too near to, with the distance, m.
    pub fn near_wires(&self, at: &Placed, law: &str) -> Vec<(Sort, f64)> {
        [Sort::ServiceDrop, Sort::Line, Sort::Phone]
            .into_iter()
            .filter_map(|s| self.wire_m(s, at).map(|m| (s, m)))
            .filter(|(s, m)| *m < Site::keep_m(*s, law))
            .collect()
    }

    /// What the ladder's foot, its top, the door or the rope meets.
    pub fn meets(&self, at: &Placed) -> Vec<Sort> {
        let foot = self.foot(at);
        self.things
            .iter()
            .filter(|t| {
                let aside = (at.ladder_m - t.x_m).abs();
                match t.sort {
                    Sort::SoftBed => aside < t.half_m + FOOT_HALF_M && foot[2] < 2.0 * t.z_m,
                    Sort::Slope => aside < t.half_m + FOOT_HALF_M,
                    // Its leaf, open, and who comes out.
                    Sort::Door => aside < DOOR_M[1],
                    Sort::Rot => aside < t.half_m + FOOT_HALF_M,
                    Sort::Wasps => aside < NEST_M,
                    Sort::Dog => libm::hypot(aside, foot[2] - t.z_m) < t.half_m + FOOT_HALF_M,
                    // The rope from the ridge, and where a fall sweeps it: from there to plumb under the anchor.
                    Sort::Skylight => {
                        let line_m = at.anchor_m + (at.ladder_m - at.anchor_m) * SKY_DOWN_SHARE;
                        let (a, b) = (at.anchor_m.min(line_m), at.anchor_m.max(line_m));
                        a < t.x_m + t.half_m && b > t.x_m - t.half_m
                    }
                    _ => false,
                }
            })
            .map(|t| t.sort)
            .collect()
    }

    /// Whether a method can be used for the job here, whatever the law says of its turn.
    pub fn can(&self, m: Method) -> bool {
        let level = |half_m: f64| {
            self.things.iter().all(|t| {
                !matches!(t.sort, Sort::SoftBed | Sort::Slope)
                    || (self.job_m - t.x_m).abs() > t.half_m + half_m
            })
        };
        match m {
            Method::FromGround => self.work == Work::Roller && self.eave_m <= POLE_REACH_M,
            // A lift stands on two metres of level, firm ground before the job.
            Method::Platform => self.lift && level(1.0),
            Method::FallArrest => true,
            // Nobody works on the roof here.
            Method::Guardrail | Method::TravelRestraint | Method::FallRestrict | Method::Net => false,
        }
    }

    /// The first method in the place's order that can be used.
    pub fn first_method(&self, law: &str) -> Method {
        let before = |a: Method, b: Method| place(law).is_some_and(|p| p.ranks_before(a, b));
        [Method::FromGround, Method::Platform]
            .into_iter()
            .filter(|m| self.can(*m) && before(*m, Method::FallArrest))
            .reduce(|a, b| if before(b, a) { b } else { a })
            .unwrap_or(Method::FallArrest)
    }

    /// Whether a way to who hangs is there: a fall ends plumb under the anchor, or short of it where the edge holds the
    /// rope. What was settled is in nobody's way.
    pub fn reaches(&self, from: Reach, at: &Placed, marks: &[(Sort, Mark)], law: &str) -> bool {
        let hangs = [at.ladder_m, at.anchor_m];
        match from {
            Reach::Window => hangs.iter().all(|x| WINDOWS_M.iter().any(|w| (w - x).abs() <= WINDOW_REACH_M)),
            Reach::SecondLadder => self.ways_beside(at, marks, law).iter().any(Vec::is_empty),
            Reach::FireService => true,
        }
    }

    /// What is in the way of a second ladder a metre to either side of the anchor, a list for each side that has a wall.
    fn ways_beside(&self, at: &Placed, marks: &[(Sort, Mark)], law: &str) -> Vec<Vec<Sort>> {
        [-1.0, 1.0]
            .iter()
            .map(|side| Placed { ladder_m: at.anchor_m + side, ..at.clone() })
            .filter(|beside| (0.3..=WALL_M - 0.3).contains(&beside.ladder_m))
            .map(|beside| {
                let wires = self.near_wires(&beside, law).into_iter().map(|w| w.0);
                let meets = self.meets(&beside).into_iter();
                wires.chain(meets.filter(|s| *s != Sort::Skylight && !is_settled(*s, marks))).collect()
            })
            .collect()
    }

    /// All that is in the way of a second ladder, on either side.
    pub fn beside(&self, at: &Placed, marks: &[(Sort, Mark)], law: &str) -> Vec<Sort> {
        let mut all = self.ways_beside(at, marks, law).concat();
        all.sort_unstable();
        all.dedup();
        all
    }

    /// What is right to say of a thing: of a wire its kind, and always that it cannot be told.
    pub fn fits(sort: Sort, mark: Mark) -> bool {
        match mark {
            Mark::Asks => true,
            Mark::Wire(said) => said == sort,
            Mark::Right => !sort.is_wire(),
            Mark::Wrong | Mark::Other => false,
        }
    }

    /// What a plan comes to: grave things first. A door that is locked and a dog that is taken in are in nobody's
    /// way. `asks` is a crew that stops and asks before anybody goes up.
    pub fn said(&self, marks: &[(Sort, Mark)], at: &Placed, asks: bool, law: &str) -> Vec<Said> {
        let mut out = Vec::new();
        for t in self.things.iter().filter(|t| t.sort.matters()) {
            match marks.iter().find(|m| m.0 == t.sort) {
                None => out.push(Said::Missed(t.sort)),
                Some(m) if !Site::fits(t.sort, m.1) => out.push(Said::Wrongly(t.sort, m.1)),
                // Open until there is an answer.
                Some(m) if m.1 == Mark::Asks => out.push(Said::Asked(t.sort)),
                Some(_) => {}
            }
        }
        let first = self.first_method(law);
        if !self.can(at.method) {
            out.push(Said::Cannot(at.method));
        } else if first != at.method && place(law).is_some_and(|p| p.ranks_before(first, at.method)) {
            out.push(Said::Before(first));
        }
        if at.method == Method::FallArrest {
            let mut meets = self.meets(at);
            meets.retain(|t| !is_settled(*t, marks));
            self.of_ladder(at, (&meets, marks), asks, law, &mut out);
        }
        match at.stop_km_h {
            None => out.push(Said::WindOpen),
            Some(v) if v <= self.wind_km_h => out.push(Said::WindOver),
            Some(_) => {}
        }
        out.sort_by_key(|s| !s.is_grave());
        out
    }

    /// What the ladder comes to, with what it still meets.
    fn of_ladder(
        &self,
        at: &Placed,
        (meets, marks): (&[Sort], &[(Sort, Mark)]),
        asks: bool,
        law: &str,
        out: &mut Vec<Said>,
    ) {
        let wires = self.near_wires(at, law);
        // Who stops and asks has not gone near.
        if asks {
            if wires.is_empty() && meets.is_empty() && !marks.iter().any(|m| m.1 == Mark::Asks) {
                out.push(Said::NeedNotAsk);
            }
            out.extend(wires.into_iter().map(|(s, m)| Said::ToAsk(s, m)));
        } else {
            out.extend(wires.into_iter().map(|(s, m)| Said::NearWire(s, m)));
        }
        out.extend(meets.iter().copied().map(Said::Meets));
        let far_m = (at.ladder_m - self.job_m).abs();
        if far_m > JOB_REACH_M + 1e-9 {
            out.push(Said::FarFromJob(far_m));
        }
        let lean_deg = libm::atan2(self.eave_m, at.foot_m).to_degrees();
        // 75.5 degrees is one in four; a couple of degrees either way is no difference on grass.
        if (lean_deg - 75.5).abs() > 2.5 {
            out.push(Said::Angle(lean_deg));
        }
        match at.first {
            None => out.push(Said::FirstOpen),
            Some(First::Quick) => out.push(Said::FirstBare),
            Some(First::Lift) if !self.lift => out.push(Said::NoLift),
            Some(First::Thrown | First::Lift) => {}
        }
        match at.reach {
            None => out.push(Said::ReachOpen),
            Some(Reach::FireService) => out.push(Said::NobodyReaches),
            Some(r) if !self.reaches(r, at, marks, law) => out.push(Said::OutOfReach(r)),
            Some(_) => {}
        }
    }

    /// What a slip there comes to, by the falls along the wall; none of them: it could not be computed.
    pub fn of_slip(swing: Option<&Swing>) -> Option<Said> {
        let Some(w) = swing else { return Some(Said::NotComputed) };
        let kept_m = reserve().map_or(0.0, |l| l.value);
        match w.room_m() {
            Some(m) if m < 0.0 => Some(Said::ComesDown(-m)),
            _ if w.free.speed_m_s >= HARD_SWING_M_S => Some(Said::SwingsHard(w.free.speed_m_s)),
            Some(m) if m < kept_m => Some(Said::LittleRoom(m)),
            _ => None,
        }
    }

    /// Whether a row of the plan is still open, by what its plan comes to.
    pub fn is_open(row: Row, said: &[Said]) -> bool {
        said.iter().any(|s| match s {
            Said::Missed(t) | Said::Wrongly(t, _) | Said::Meets(t) | Said::Asked(t) => t.row() == Some(row),
            Said::NearWire(..) | Said::ToAsk(..) => row == Row::Wires,
            Said::ComesDown(_) | Said::SwingsHard(_) | Said::LittleRoom(_) | Said::NotComputed => {
                row == Row::Anchor
            }
            Said::Before(_) | Said::Cannot(_) => row == Row::Method,
            Said::FarFromJob(_) | Said::Angle(_) => row == Row::Ladder,
            Said::FirstBare | Said::FirstOpen | Said::NoLift => row == Row::FirstUp,
            Said::OutOfReach(_) | Said::NobodyReaches | Said::ReachOpen => row == Row::Hangs,
            Said::WindOpen | Said::WindOver => row == Row::Weather,
            Said::NeedNotAsk => false,
        })
    }

    /// Whether a ladder that stands so is one that the bench can build: line and link reach, its foot is under it.
    pub fn is_possible(&self, at: &Placed) -> bool {
        self.set_up(at, &[], "on").problems().is_empty()
    }

    /// The marks and the plan as a set-up, as the bench knows one; a wire stands there as far from the ladder's foot
    /// as it is here.
    pub fn set_up(&self, at: &Placed, marks: &[(Sort, Mark)], law: &str) -> Scenario {
        let house = House { eave_height_m: self.eave_m, half_span_m: 3.4, ..House::default() };
        let foot = self.foot(at);
        let wire = [Sort::Line, Sort::ServiceDrop].into_iter().find_map(|s| {
            self.thing(s)?;
            let q = self.wire(s).into_iter().min_by(|a, b| dist(*a, foot).total_cmp(&dist(*b, foot)))?;
            let apart = if s == Sort::Line { LINE_APART_M } else { 0.0 };
            let aside_m = libm::hypot(((q[0] - foot[0]).abs() - apart).max(0.0), q[2] - foot[2]);
            let voltage = if s == Sort::ServiceDrop { Voltage::Service } else { Voltage::Unknown };
            Some(PowerLine {
                height_m: (q[1] * 10.0).floor() / 10.0,
                distance_m: ((foot[2] + aside_m) * 10.0).floor() / 10.0,
                voltage,
            })
        });
        let other_method = match self.first_method(law) {
            Method::FromGround => OtherMethod::FromGround,
            Method::Platform => OtherMethod::Platform,
            _ => OtherMethod::NoneFound,
        };
        let rescue = match at.reach {
            Some(r) if self.reaches(r, at, marks, law) && r != Reach::FireService => RescuePlan::Written,
            _ => RescuePlan::NoPlan,
        };
        let along_m = (house.half_span_m + house.overhang_m) / libm::cos(house.roof_pitch_rad);
        let mut s = Scenario {
            place: law.to_owned(),
            house,
            ladder: Ladder {
                foot_distance_m: at.foot_m,
                length_m: self.ladder_long_m(at),
                ..Ladder::default()
            },
            stance: Stance::Ladder { standing_height_m: ((self.eave_m - 1.9) * 10.0).round() / 10.0 },
            anchor: Anchor { kind: AnchorKind::RidgePlateInFraming, ..Anchor::default() },
            lifeline: Lifeline {
                length_m: (along_m + self.eave_m + 2.0 + (at.ladder_m - at.anchor_m).abs()).ceil(),
                ..Lifeline::default()
            },
            plan: Plan { other_method, rescue, ..Plan::default() },
            weather: if self.wet { Weather::Wet } else { Weather::Dry },
            power_line: wire,
            ..Scenario::default()
        };
        // A ladder further out asks for a longer link: as long as a grab may carry anywhere.
        if !s.problems().is_empty() {
            s.lanyard.length_m = super::eave::LINK_M;
        }
        s
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::physics::simulate;
    use crate::physics::trace::Outcome;

    const SEEDS: u64 = 300;

    fn all() -> impl Iterator<Item = Site> {
        (0..SEEDS).map(Site::drawn)
    }

    /// Four to seven things that matter, a power wire among them, all on the property; each turns up, and each is
    /// missing somewhere.
    #[test]
    fn every_property_has_something_to_find_and_no_two_kinds_are_always_there() {
        let mut seen = std::collections::BTreeMap::new();
        for s in all() {
            let found: Vec<Sort> = s.things.iter().map(|t| t.sort).filter(|t| t.matters()).collect();
            assert!((4..=7).contains(&found.len()), "{}: {found:?}", s.seed);
            assert!(found.contains(&Sort::ServiceDrop) || found.contains(&Sort::Line), "{}", s.seed);
            for t in &s.things {
                assert!(t.x_m > ALONG_M[0] && t.x_m < ALONG_M[1], "{}: {t:?}", s.seed);
                *seen.entry(t.sort).or_insert(0) += 1;
            }
        }
        assert_eq!(seen.len(), 13, "{seen:?}");
        assert!(seen.values().all(|n| (30..270).contains(n)), "{seen:?}");
    }

    /// A rod about its foot: its tip is on a sphere. By hand, for a foot at x = 3, 1.8 m out, and a line at x = 12,
    /// 9.2 m up that runs out from the wall: the nearest point is 9 m aside at the foot's own z, and of the three wires the nearest 8.15 m: 12.29 m away.
    #[test]
    fn how_near_a_ladder_comes_to_a_line_is_the_distance_less_its_length() {
        let mut s = Site::drawn(1);
        s.pole_m = 12.0;
        s.eave_m = 5.4;
        s.things = vec![Thing { sort: Sort::Line, x_m: 12.0, z_m: 3.0, half_m: 0.6 }];
        let at = Placed { ladder_m: 3.0, foot_m: 1.4, ..s.placed_at(3.0) };
        // hypot(5.4, 1.4) + 0.9 = 6.478..., to the next tenth.
        assert!((s.ladder_long_m(&at) - 6.5).abs() < 1e-9);
        // The nearest of the three wires is 0.85 m nearer than the middle one.
        let want = libm::hypot(8.15, 9.2) - 6.5;
        let got = s.wire_m(Sort::Line, &at).expect("a line");
        assert!((got - want).abs() < 1e-9, "{got} {want}");
        // 5.79 m: enough in Ontario (3 m), not in Alberta until its operator has said (7 m, OHS Code s. 225).
        assert_eq!(s.near_wires(&at, "on"), vec![]);
        assert_eq!(s.near_wires(&at, "ab").len(), 1);
        assert_eq!(s.wire_m(Sort::Phone, &at), None);
    }

    /// There is always an answer: a ladder that meets nothing, an earlier method, or a wire to ask about; each of the
    /// three comes up, and so does a job whose easiest place meets something.
    #[test]
    fn every_property_has_an_answer() {
        let (mut earlier, mut clear, mut ask, mut snag) = (0, 0, 0, 0);
        for s in all() {
            let free: Vec<f64> =
                s.spots().into_iter().filter(|x| s.meets(&s.placed_at(*x)).is_empty()).collect();
            assert!(!free.is_empty(), "{}", s.seed);
            snag += u32::from(!s.meets(&s.placed_at(s.job_m)).is_empty());
            if s.first_method("on") != Method::FallArrest {
                earlier += 1;
            } else if free.iter().any(|x| s.near_wires(&s.placed_at(*x), "on").is_empty()) {
                clear += 1;
            } else {
                ask += 1;
            }
        }
        assert!(earlier > 40 && clear > 60 && ask > 20 && snag > 100, "{earlier} {clear} {ask} {snag}");
    }

    /// Done well nothing is left to say; each thing left undone is said, and opens its row.
    #[test]
    fn a_plan_done_well_leaves_nothing_and_each_gap_is_said() {
        let mut tried = 0;
        for s in all() {
            let marks: Vec<(Sort, Mark)> = s
                .things
                .iter()
                .map(|t| (t.sort, if t.sort.is_wire() { Mark::Wire(t.sort) } else { Mark::Right }))
                .collect();
            let spot = s.spots().into_iter().find(|x| {
                let at = s.placed_at(*x);
                s.meets(&at).is_empty() && s.near_wires(&at, "on").is_empty()
            });
            let (Method::FallArrest, Some(x)) = (s.first_method("on"), spot) else { continue };
            let reach = [Reach::Window, Reach::SecondLadder]
                .into_iter()
                .find(|r| s.reaches(*r, &s.placed_at(x), &marks, "on"));
            let Some(reach) = reach else { continue };
            let good = Placed {
                first: Some(First::Thrown),
                reach: Some(reach),
                stop_km_h: Some(50),
                ..s.placed_at(x)
            };
            assert_eq!(s.said(&marks, &good, false, "on"), vec![], "{}", s.seed);
            assert_eq!(s.said(&marks, &good, true, "on"), vec![Said::NeedNotAsk]);
            // One thing unseen, one wire taken for another, up without a line, nobody to reach.
            let one = marks[0].0;
            let said = s.said(&marks[1..], &good, false, "on");
            assert_eq!(said, vec![Said::Missed(one)]);
            assert!(Row::ALL.iter().filter(|r| Site::is_open(**r, &said)).count() == 1);
            let taken = (one, Mark::Wire(Sort::Phone));
            if one != Sort::Phone {
                let all: Vec<_> = [taken].into_iter().chain(marks[1..].iter().copied()).collect();
                assert_eq!(s.said(&all, &good, false, "on"), vec![Said::Wrongly(one, taken.1)]);
            }
            let bare = Placed { first: Some(First::Quick), reach: Some(Reach::FireService), ..good.clone() };
            let said = s.said(&marks, &bare, false, "on");
            assert!(
                said.contains(&Said::FirstBare) && said.contains(&Said::NobodyReaches) && said.len() == 2
            );
            // To ask is no mistake, and leaves its row open.
            let asked: Vec<_> = [(one, Mark::Asks)].into_iter().chain(marks[1..].iter().copied()).collect();
            let said = s.said(&asked, &good, true, "on");
            assert_eq!(said, vec![Said::Asked(one)]);
            assert!(one.row().is_some_and(|r| Site::is_open(r, &said)));
            let lift = Placed { first: Some(First::Lift), ..good.clone() };
            assert_eq!(s.said(&marks, &lift, false, "on").contains(&Said::NoLift), !s.lift);
            let flat = Placed { foot_m: good.foot_m + 0.6, ..good.clone() };
            assert!(
                s.said(&marks, &flat, false, "on").iter().any(|q| matches!(q, Said::Angle(d) if *d < 73.0))
            );
            tried += 1;
        }
        assert!(tried > 30, "{tried}");
    }

    /// A bug: a plan was fine with an anchor four metres aside. The swing by a pendulum: a rope of L metres that starts
    /// a metres aside drops L - sqrt(L^2 - a^2) on its way to plumb, and v = sqrt(2 g h), more by the free fall.
    #[test]
    fn a_hard_swing_and_a_landing_are_said() {
        let mut s = Site::drawn(17);
        s.eave_m = 5.4;
        s.things.clear();
        let slip = |off: f64| {
            let at = Placed { anchor_m: 4.25 - off, ..s.placed_at(4.25) };
            let set_up = s.set_up(&at, &[], "on").set_up().expect("possible");
            crate::studies::along_wall::swing(&set_up, off)
        };
        assert_eq!(Site::of_slip(slip(0.0).as_ref()), None);
        let Some(Said::SwingsHard(v) | Said::ComesDown(v)) = Site::of_slip(slip(3.5).as_ref()) else {
            unreachable!("a swing from 3.5 m aside")
        };
        assert!(v > 0.0);
        // From the ridge over the eave to the ring some 5 m: 3.5 m aside falls 1.4 m at the least, 5.2 m/s.
        assert!(slip(3.5).expect("computed").free.speed_m_s > 4.0);
        assert_eq!(Site::of_slip(None), Some(Said::NotComputed));
    }

    /// A bug: the bare wires were one, so that a ladder 6.6 m from the nearest passed for seven.
    #[test]
    fn the_nearest_of_three_wires_counts() {
        let mut s = Site::drawn(24);
        s.eave_m = 4.6;
        s.pole_m = 14.25;
        s.things = vec![Thing { sort: Sort::Line, x_m: 14.25, z_m: 3.0, half_m: 0.6 }];
        let at = s.placed_at(5.25);
        // hypot(4.6, 1.2) + 0.9 is 5.65, to the next tenth 5.7; hypot(9.0 - 0.85, 9.2) = 12.29.
        let m = s.wire_m(Sort::Line, &at).expect("a line");
        assert!((m - 6.59).abs() < 0.01, "{m}");
        assert_eq!(s.near_wires(&at, "ab").len(), 1);
    }

    /// What becomes of the marks can be played: a sound run, held or not, and the wire as far from the foot as here.
    #[test]
    fn the_plan_becomes_a_set_up_that_can_be_played() {
        for s in all().take(24) {
            let at = s.placed_at(s.job_m);
            let set_up = s.set_up(&at, &[], "on");
            assert_eq!(set_up.problems(), vec![], "{}", s.seed);
            let t = simulate(&set_up.set_up().expect("possible"));
            // A foot can be put wrong to either side, as far as the set-up is one at all.
            for by in [-0.35, 0.35] {
                let wrong = Placed { foot_m: at.foot_m + by, ..at.clone() };
                assert!(s.is_possible(&wrong), "{} {by}", s.seed);
                assert!(s.said(&[], &wrong, false, "on").iter().any(|q| matches!(q, Said::Angle(_))), "{by}");
            }
            assert!(!s.is_possible(&Placed { foot_m: 3.5, ..at.clone() }));
            assert!(t.is_sound() && t.outcome == Outcome::Stopped, "{} {:?}", s.seed, t.outcome);
            if let (Some(here), Some(w)) = (s.wire_m(Sort::Line, &at), set_up.power_line) {
                let g = crate::geometry::Geometry::of(&set_up).expect("stands");
                let there = libm::hypot(w.distance_m - g.ladder.foot.x, w.height_m) - set_up.ladder.length_m;
                // Both are rounded down to a tenth, against the worker.
                assert!(there <= here + 1e-9 && there > here - 0.3, "{here} {there}");
            }
        }
    }
}
