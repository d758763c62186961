//! A working day: eight jobs round one house, with what each asks for before it can be done and what
//! an hour of climbing does to bolt and latch. A slip comes at a seeded minute; what falls then is
//! the set-up of that minute.
//!
//! Bolt and latch work loose at seeded times (assumed: forty and seventy minutes of work on average;
//! that they do, and that one looks every 15 to 20 minutes, is common practice). What would follow a
//! slip at each minute is worked out by whole runs and by the falls along the wall. Left out: other
//! people, fatigue, breaks.

use crate::draw::Draw;
use crate::grade::report::Report;
use crate::grade::scoring::Grade;
use crate::physics::trace::{Outcome, Trace};
use crate::practice::hand::{Held, moved};
use crate::practice::houses::HouseKind;
use crate::rules::HARD_SWING_M_S;
use crate::scenario::{Below, Bolt, HarnessFit, Latch, RopeEdge, Scenario, Stance, Weather};
use crate::studies::along_wall::swing;
use serde::{Deserialize, Serialize};

/// Jobs of a shift.
pub const JOBS: usize = 8;
/// Minutes of work after which bolt and latch come loose, on average (assumed).
pub const LOOSE_MIN: [f64; 2] = [40.0, 70.0];
/// Minutes that each thing takes (assumed): moving the grab, a look at bolt and latch, moving the
/// ladder, moving the anchor, a partner's look at the harness, the line taken up and padded.
pub const TAKES_MIN: [u32; 6] = [1, 1, 5, 12, 2, 2];
/// After as many jobs everybody has eaten, and put the harness on again.
pub const NOON_JOB: usize = 4;
/// A second look comes after this many minutes of a job (common practice: every 15 to 20).
pub const LOOK_AGAIN_MIN: u32 = 15;

/// What a job is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Task {
    /// Soffit, from the ladder.
    Soffit,
    /// Fascia and gutter board, from the ladder.
    Fascia,
    /// A high window, from the ladder.
    Window,
    /// A dormer's cheek, from the roof.
    Dormer,
}

/// One job.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Job {
    /// What.
    pub task: Task,
    /// Along the wall from the corner, m.
    pub along_m: f64,
    /// Where the worker stands for it.
    pub stance: Stance,
    /// Minutes of work.
    pub minutes: u32,
}

/// What a person does before a job.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Before {
    /// Slides the grab up to above the D-ring.
    pub grab: bool,
    /// Looks at bolt and latch, and puts them right.
    pub look: bool,
    /// Looks again half-way.
    pub look_again: bool,
    /// Moves the ladder under the work, and does not lean out.
    pub ladder: bool,
    /// Moves the anchor over the work.
    pub anchor: bool,
    /// Somebody else looks the harness over.
    #[serde(default)]
    pub partner: bool,
    /// The line is taken up, and padded where it goes over the edge.
    #[serde(default)]
    pub line: bool,
}

/// The state of the shift.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Shift {
    /// The jobs.
    pub jobs: Vec<Job>,
    /// The set-up now.
    pub set_up: Scenario,
    /// Jobs done.
    pub done: usize,
    /// Minutes since the start.
    pub minute: u32,
    /// Minute at which rain comes, as the forecast says.
    pub rain_min: u32,
    /// Minute at which a strong wind comes up, as the forecast says; it may be after the shift.
    pub wind_min: u32,
    /// Minute at which everybody goes home: what is not begun by then stays unpainted.
    pub home_min: u32,
    /// Anchor along the wall, m.
    pub anchor_m: f64,
    /// Ladder along the wall, m.
    pub ladder_m: f64,
    /// Minutes of work until the bolt and the latch come loose, drawn one after the other.
    loose_min: [f64; 2],
    /// Minutes of work until the slip.
    slip_min: u32,
    /// Each stretch of work: first minute, how many, the set-up, the offset from the anchor, m.
    pub log: Vec<Stretch>,
    /// The slip has come.
    pub slipped: bool,
    seed: u64,
    /// The harness was put on loosely again at noon.
    #[serde(default)]
    loose_at_noon: bool,
    /// Somebody has looked since they were put on or hung: at the harness, at the line. A day kept before there was
    /// such a look began with both in order.
    #[serde(default = "looked")]
    checked: [bool; 2],
}

fn looked() -> [bool; 2] {
    [true; 2]
}

/// Minutes of work in one set-up.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Stretch {
    /// Job, from 0.
    pub job: usize,
    /// First minute of the shift.
    pub from_min: u32,
    /// How many.
    pub minutes: u32,
    /// The set-up.
    pub set_up: Scenario,
    /// Work to the side of the anchor, m.
    pub offset_m: f64,
}

/// What a slip in a stretch would have come to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Risk {
    /// Stopped, and nothing critical found.
    Held,
    /// Stopped, but over a limit, or into something in the swing.
    Over,
    /// Down on the ground or the deck.
    Strikes,
    /// The line lets go.
    LetsGo,
    /// The run failed its own check.
    NotGraded,
}

/// Slack of a line that was just hung, m (assumed).
const HUNG_ANEW_M: f64 = 0.4;

impl Risk {
    /// Whether a slip would have ended badly. What is not graded is neither.
    pub fn is_bad(self) -> bool {
        matches!(self, Risk::Over | Risk::Strikes | Risk::LetsGo)
    }
}

fn until_loose(pick: &mut Draw, mean_min: f64) -> f64 {
    -mean_min * libm::log(1.0 - pick.unit())
}

impl Shift {
    /// The shift of a seed on a house, under a place's rules.
    pub fn of(seed: u64, house: HouseKind, place: &str) -> Shift {
        let mut pick = Draw::with_seed(seed);
        let mut s = Scenario { place: place.to_owned(), ..Scenario::default() };
        house.move_in(&mut s);
        // Over a deck most jobs are too low for fall arrest, and no care helps: a day is worked where nothing stands
        // below.
        s.house.below = Below::BareGround;
        // A shift is worked from ladder and roof of the same house.
        let eave_m = s.house.eave_height_m;
        let along_m = (s.house.half_span_m + s.house.overhang_m) / libm::cos(s.house.roof_pitch_rad);
        let mut at_m = 0.0;
        let jobs: Vec<Job> = (0..JOBS)
            .map(|_| {
                let task = pick.one([Task::Soffit, Task::Fascia, Task::Window, Task::Dormer]);
                at_m += pick.one([0.6, 1.2, 1.8]);
                let low_m = |down: f64| Stance::Ladder {
                    standing_height_m: ((eave_m - down).max(0.5) * 10.0).round() / 10.0,
                };
                let stance = match task {
                    Task::Soffit => low_m(2.1),
                    Task::Fascia => low_m(1.9),
                    // A hand lower would be too low for fall arrest by the usual sum.
                    Task::Window => low_m(2.1),
                    Task::Dormer => Stance::Roof { from_eave_m: (along_m * 0.3).clamp(0.8, 2.0) },
                };
                Job { task, along_m: at_m, stance, minutes: pick.one([20, 25, 30, 35]) }
            })
            .collect();
        let all: u32 = jobs.iter().map(|j| j.minutes).sum();
        let loose_min = [until_loose(&mut pick, LOOSE_MIN[0]), until_loose(&mut pick, LOOSE_MIN[1])];
        // Anywhere in the shift but its first tenth, and in one of six not at all.
        let slip_min = pick.u32(all / 10..all + all / 6);
        s.ladder.tied = true;
        // Rain in the second half, wind sometimes, and never the time for every check before every job.
        let rain_min = pick.u32(all / 2..all);
        let wind_min = pick.u32(all / 2..all + all / 2);
        let home_min = all + pick.one([35, 45, 60]);
        let seed = pick.bits();
        // In the morning nobody has looked yet: the harness as it was pulled on, the line as it was hung.
        if pick.coin() {
            s.worker.harness = HarnessFit::Loose;
        }
        s.lifeline.edge = RopeEdge::Bare;
        s.lifeline.slack_m = pick.one([0.0, 0.4, 0.8]);
        let loose_at_noon = pick.coin();
        Shift {
            rain_min,
            wind_min,
            home_min,
            set_up: s,
            done: 0,
            minute: 0,
            anchor_m: jobs.first().map_or(0.0, |j| j.along_m),
            ladder_m: jobs.first().map_or(0.0, |j| j.along_m),
            jobs,
            loose_min,
            slip_min,
            log: Vec::new(),
            slipped: false,
            seed,
            loose_at_noon,
            checked: [false; 2],
        }
    }

    /// Whether it is one that can be worked: what is kept may have been changed by hand.
    pub fn is_possible(&self) -> bool {
        self.done <= JOBS
            && self.jobs.len() == JOBS
            && self.set_up.problems().is_empty()
            && self.log.iter().all(|x| x.set_up.problems().is_empty())
    }

    /// The next job; none when the shift is over.
    pub fn next(&self) -> Option<Job> {
        if self.slipped || self.minute >= self.home_min { None } else { self.jobs.get(self.done).copied() }
    }

    /// Whether somebody has looked since it was put on or hung: at the harness, at the line.
    pub fn is_checked(&self) -> [bool; 2] {
        [self.checked[0] && self.done != NOON_JOB, self.checked[1]]
    }

    /// The weather at a minute of the shift.
    pub fn weather(&self, minute: u32) -> Weather {
        if minute >= self.rain_min { Weather::Wet } else { Weather::Dry }
    }

    /// Minutes of work in a strong wind.
    pub fn windy_min(&self) -> u32 {
        self.log.iter().map(|x| (x.from_min + x.minutes).saturating_sub(x.from_min.max(self.wind_min))).sum()
    }

    /// Furthest that a worker leans out instead of moving the ladder, m; beyond it the ladder is moved.
    pub const LEAN_M: f64 = 0.7;

    /// The set-up as the worker arrives at the next job, before anything is done.
    pub fn arrived(&self) -> Scenario {
        let Some(job) = self.next() else { return self.set_up.clone() };
        let mut s = self.set_up.clone();
        s.weather = self.weather(self.minute);
        s.ladder.reach_out_m = 0.0;
        match (s.stance, job.stance) {
            (Stance::Ladder { .. }, Stance::Ladder { standing_height_m }) => {
                moved(&s, Held::Worker, standing_height_m)
            }
            (Stance::Roof { .. }, Stance::Roof { from_eave_m }) => moved(&s, Held::Worker, from_eave_m),
            (_, to) => {
                // Over the eave the grab has to be set anew in any case: where it comes to hand.
                s.stance = to;
                s.grab.above_dring_m = 0.0;
                s
            }
        }
    }

    /// Does a job. True when the slip came in it.
    pub fn work(&mut self, before: Before) -> bool {
        let Some(job) = self.next() else { return false };
        let mut s = self.arrived();
        let mut takes = |yes: bool, i: usize| self.minute += if yes { TAKES_MIN[i] } else { 0 };
        takes(before.grab, 0);
        takes(before.look, 1);
        takes(before.look_again, 1);
        let far = (job.along_m - self.ladder_m).abs() > Self::LEAN_M;
        takes(before.ladder || far, 2);
        takes(before.anchor, 3);
        takes(before.partner, 4);
        takes(before.line, 5);
        let mut pick = Draw::with_seed(self.seed.wrapping_add(self.done as u64));
        if before.grab {
            s = moved(&s, Held::Grab, 0.3);
        }
        if before.anchor {
            self.anchor_m = job.along_m;
            // A line that is hung anew lies as it falls.
            s.lifeline.edge = RopeEdge::Bare;
            s.lifeline.slack_m = HUNG_ANEW_M;
            self.checked[1] = false;
        }
        if self.done == NOON_JOB {
            self.checked[0] = false;
            if self.loose_at_noon {
                s.worker.harness = HarnessFit::Loose;
            }
        }
        if before.partner {
            s.worker.harness = HarnessFit::Snug;
            self.checked[0] = true;
        }
        if before.line {
            s.lifeline.edge = RopeEdge::Padded;
            s.lifeline.slack_m = 0.0;
            self.checked[1] = true;
        }
        let on_ladder = matches!(job.stance, Stance::Ladder { .. });
        // Too far to lean, the ladder is moved whether or not one meant to.
        if before.ladder || !on_ladder || far {
            self.ladder_m = job.along_m;
        }
        s.ladder.reach_out_m = if on_ladder { (job.along_m - self.ladder_m).abs() } else { 0.0 };
        let offset_m = (job.along_m - self.anchor_m).abs();
        if before.look {
            self.put_right(&mut s, &mut pick);
        }
        let mut left = job.minutes;
        let mut worked = 0;
        while left > 0 {
            s.weather = self.weather(self.minute);
            // To the next thing that happens.
            let mut span = left;
            if self.minute < self.rain_min {
                span = span.min(self.rain_min - self.minute);
            }
            for (loose, is) in
                self.loose_min.iter().zip([s.grab.bolt == Bolt::Loose, s.grab.latch == Latch::Open])
            {
                if !is {
                    span = span.min(loose.ceil().max(1.0) as u32);
                }
            }
            if before.look_again && worked < LOOK_AGAIN_MIN {
                span = span.min(LOOK_AGAIN_MIN - worked);
            }
            let slips = self.slip_min <= span;
            if slips {
                span = self.slip_min.max(1);
            }
            self.log.push(Stretch {
                job: self.done,
                from_min: self.minute,
                minutes: span,
                set_up: s.clone(),
                offset_m,
            });
            self.minute += span;
            left -= span.min(left);
            worked += span;
            self.slip_min = self.slip_min.saturating_sub(span);
            for l in &mut self.loose_min {
                *l -= f64::from(span);
            }
            if slips {
                self.slipped = true;
                self.set_up = s;
                return true;
            }
            if self.loose_min[0] <= 0.0 {
                s.grab.bolt = Bolt::Loose;
            }
            if self.loose_min[1] <= 0.0 {
                s.grab.latch = Latch::Open;
            }
            if before.look_again && worked == LOOK_AGAIN_MIN {
                self.put_right(&mut s, &mut pick);
            }
        }
        self.set_up = s;
        self.done += 1;
        false
    }

    fn put_right(&mut self, s: &mut Scenario, pick: &mut Draw) {
        if s.grab.bolt == Bolt::Loose {
            self.loose_min[0] = until_loose(pick, LOOSE_MIN[0]);
        }
        if s.grab.latch == Latch::Open {
            self.loose_min[1] = until_loose(pick, LOOSE_MIN[1]);
        }
        s.grab.bolt = Bolt::Tight;
        s.grab.latch = Latch::Closed;
    }
}

/// What a slip would have come to: the whole run, and to the side of the anchor the fall along the
/// wall as well.
pub fn risk(s: &Scenario, offset_m: f64) -> (Risk, Option<Trace>) {
    let Ok(report) = Report::run(s) else { return (Risk::NotGraded, None) };
    let mut found = match (&report.grade, report.trace.outcome) {
        (Grade::NotGraded { .. }, _) => Risk::NotGraded,
        (_, Outcome::LetGo) => Risk::LetsGo,
        (_, Outcome::Strikes) => Risk::Strikes,
        (Grade::Graded { passes, .. }, _) => {
            if *passes {
                Risk::Held
            } else {
                Risk::Over
            }
        }
    };
    if offset_m > 0.2 && matches!(found, Risk::Held | Risk::Over) {
        found = match swing(&report.set_up, offset_m) {
            Some(w) if w.room_m().is_some_and(|m| m < 0.0) => Risk::Strikes,
            Some(w) if w.free.speed_m_s >= HARD_SWING_M_S => found.max(Risk::Over),
            Some(_) => found,
            // Without a sound fall along the wall nothing is said.
            None => Risk::NotGraded,
        };
    }
    (found, Some(report.trace))
}

/// Each stretch of a log judged; a set-up that comes twice is run once.
pub fn judge(log: &[Stretch]) -> Vec<Risk> {
    let mut seen: Vec<(&Stretch, Risk)> = Vec::new();
    log.iter()
        .map(|x| {
            if let Some((_, r)) = seen.iter().find(|(y, _)| y.set_up == x.set_up && y.offset_m == x.offset_m)
            {
                return *r;
            }
            let r = risk(&x.set_up, x.offset_m).0;
            seen.push((x, r));
            r
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    const CAREFUL: Before = Before {
        grab: true,
        look: true,
        look_again: true,
        ladder: true,
        anchor: true,
        partner: true,
        line: true,
    };

    fn whole(seed: u64, house: HouseKind, how: Before) -> Shift {
        let mut shift = Shift::of(seed, house, "on");
        while shift.next().is_some() {
            shift.work(how);
        }
        shift
    }

    #[test]
    fn a_shift_of_any_seed_on_any_house_can_be_worked() {
        for house in HouseKind::ALL {
            for seed in 0..12 {
                for how in [CAREFUL, Before::default()] {
                    let shift = whole(seed, house, how);
                    assert!(shift.slipped || shift.done == JOBS || shift.minute >= shift.home_min);
                    for x in &shift.log {
                        assert_eq!(x.set_up.problems(), vec![], "{house:?} {seed} {how:?} {:?}", x.set_up);
                        assert!(x.minutes > 0);
                    }
                    assert!(shift.log.windows(2).all(|w| w[0].from_min + w[0].minutes <= w[1].from_min));
                }
            }
        }
    }

    #[test]
    fn the_same_seed_gives_the_same_shift_and_care_does_not_move_the_slip() {
        let (a, b) = (whole(5, HouseKind::TwoStorey, CAREFUL), whole(5, HouseKind::TwoStorey, CAREFUL));
        assert_eq!(a, b);
        let worked = |s: &Shift| s.log.iter().map(|x| x.minutes).sum::<u32>();
        assert_eq!(worked(&a), worked(&whole(5, HouseKind::TwoStorey, Before::default())));
    }

    /// The day is long enough for the work and some checks, never for every one: a check is a decision.
    #[test]
    fn there_is_no_time_for_every_check() {
        for seed in 0..40 {
            let day = |how| {
                let mut shift = Shift::of(seed, HouseKind::TwoStorey, "on");
                shift.slip_min = 100_000;
                while shift.next().is_some() {
                    shift.work(how);
                }
                shift.done
            };
            assert!(day(CAREFUL) < JOBS, "{seed}");
            // Looking alone, and the ladder where it has to, leaves at most one job for tomorrow.
            assert!(day(Before { look: true, ..Before::default() }) + 1 >= JOBS, "{seed}");
        }
    }

    /// Rain that comes in the middle of a job wets what is left of it, and only that.
    #[test]
    fn rain_comes_at_its_minute() {
        let mut shift = Shift::of(1, HouseKind::TwoStorey, "on");
        shift.slip_min = 100_000;
        shift.rain_min = 10;
        shift.wind_min = 15;
        let first = shift.next().expect("a job").minutes;
        shift.work(Before::default());
        for x in &shift.log {
            let wet = x.set_up.weather == Weather::Wet;
            assert_eq!(wet, x.from_min >= 10, "{x:?}");
            assert!(wet || x.from_min + x.minutes <= 10);
        }
        assert_eq!(shift.windy_min(), first - 15);
    }

    /// A bug: at the house that a day begins with, a deck made every minute end badly, whatever was done.
    #[test]
    fn with_every_care_the_usual_day_ends_well() {
        let (mut bad, mut all) = (0, 0);
        for seed in 0..8 {
            let mut shift = Shift::of(seed, HouseKind::TwoStorey, "on");
            shift.slip_min = 100_000;
            while shift.next().is_some() {
                shift.work(CAREFUL);
            }
            for (x, r) in shift.log.iter().zip(judge(&shift.log)) {
                all += x.minutes;
                bad += if r.is_bad() { x.minutes } else { 0 };
            }
        }
        assert!(f64::from(bad) < 0.1 * f64::from(all), "{bad} of {all} min");
    }

    #[test]
    fn care_takes_most_of_the_minutes_at_risk_away() {
        let (mut with, mut without) = (0.0, 0.0);
        for seed in 0..6 {
            let share = |how| {
                let shift = whole(seed, HouseKind::TallGable, how);
                let risks = judge(&shift.log);
                let bad: u32 = shift
                    .log
                    .iter()
                    .zip(&risks)
                    .filter(|(_, r)| **r > Risk::Held)
                    .map(|(x, _)| x.minutes)
                    .sum();
                f64::from(bad) / f64::from(shift.log.iter().map(|x| x.minutes).sum::<u32>())
            };
            with += share(CAREFUL);
            without += share(Before::default());
        }
        assert!(with < 0.5 * without && without > 1.0, "{with} {without}");
    }

    #[test]
    fn where_no_fall_along_the_wall_can_be_told_nothing_is_graded() {
        // A D-ring above the eave: the unfolded wall has no place for it.
        let stance = Stance::Ladder { standing_height_m: 4.6 };
        let mut s = Scenario { stance, ..Scenario::default() };
        s.grab.above_dring_m = 0.0;
        s.lanyard.length_m = 2.0;
        assert_eq!(s.problems(), vec![]);
        assert!(swing(&s.set_up().expect("possible"), 2.0).is_none());
        assert_eq!(risk(&s, 2.0).0, Risk::NotGraded);
        assert!(!Risk::NotGraded.is_bad() && Risk::Over.is_bad());
    }

    #[test]
    fn a_ladder_that_has_to_be_moved_takes_its_time_unasked() {
        let mut shift = Shift::of(3, HouseKind::TwoStorey, "on");
        shift.slip_min = 10_000;
        while let Some(job) = shift.next() {
            let far = (job.along_m - shift.ladder_m).abs() > Shift::LEAN_M;
            let (from, job_min) = (shift.minute, job.minutes);
            shift.work(Before::default());
            assert_eq!(shift.minute - from, job_min + if far { TAKES_MIN[2] } else { 0 });
        }
    }

    /// What the morning leaves is put right by who looks, stays for who does not, and comes back: the line where the
    /// anchor is moved, the harness at noon. By hand: two minutes each.
    #[test]
    fn a_partner_and_a_taken_up_line_put_the_morning_right() {
        let (mut loose, mut slack) = (0, 0);
        for seed in 0..40 {
            let new = || {
                let mut shift = Shift::of(seed, HouseKind::TwoStorey, "on");
                shift.slip_min = 100_000;
                shift
            };
            let (mut careless, mut careful) = (new(), new());
            loose += u32::from(careless.set_up.worker.harness == HarnessFit::Loose);
            slack += u32::from(careless.set_up.lifeline.slack_m > 0.0);
            careless.work(Before::default());
            careful.work(Before { partner: true, line: true, ..Before::default() });
            assert_eq!(careful.log[0].from_min, careless.log[0].from_min + 4);
            assert_eq!(careless.log[0].set_up.lifeline.edge, RopeEdge::Bare);
            let s = &careful.log[0].set_up;
            assert_eq!((s.worker.harness, s.lifeline.slack_m), (HarnessFit::Snug, 0.0));
            assert_eq!(s.lifeline.edge, RopeEdge::Padded);
            assert_eq!(careful.is_checked(), [true; 2]);
            careful.work(Before { anchor: true, ..Before::default() });
            assert_eq!(careful.is_checked(), [true, false]);
            assert!(careful.set_up.lifeline.slack_m > 0.0);
            while careful.done < NOON_JOB {
                careful.work(Before::default());
            }
            assert!(!careful.is_checked()[0]);
        }
        assert!((10..30).contains(&loose) && (15..38).contains(&slack), "{loose} {slack}");
    }

    /// A bug: a kept day with a house of 1e308 m ended the page, and again at each reload.
    #[test]
    fn a_kept_day_that_cannot_be_is_told_from_one_that_can() {
        let mut shift = Shift::of(3, HouseKind::TwoStorey, "on");
        assert!(shift.is_possible());
        let kept = serde_json::to_string(&shift).expect("writes");
        // From before there was a look at harness and line.
        let old = kept
            .replace(",\"loose_at_noon\":false,\"checked\":[false,false]", "")
            .replace(",\"loose_at_noon\":true,\"checked\":[false,false]", "");
        assert!(old.len() < kept.len());
        assert_eq!(serde_json::from_str::<Shift>(&old).expect("reads").is_checked(), [true; 2]);
        shift.set_up.house.eave_height_m = 1e308;
        assert!(!shift.is_possible());
    }

    #[test]
    fn a_look_finds_what_came_loose() {
        let mut shift = Shift::of(2, HouseKind::TwoStorey, "on");
        shift.set_up.grab.latch = Latch::Open;
        shift.slip_min = 10_000;
        shift.loose_min = [1e9, -1.0];
        shift.work(Before { look: true, ..Before::default() });
        assert_eq!(shift.log[0].set_up.grab.latch, Latch::Closed);
    }
}
