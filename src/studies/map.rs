//! Maps: the room left under the worker over two choices at once.
//!
//! A cell's figure is a quick sum (energy balance of a weight falling straight down on the line,
//! all at rest at the lowest point) plus a correction: what whole runs at a few knots say beyond
//! the sum, spread between the knots in straight lines. A whole run in the middle of each patch
//! between four knots checks it; a patch that is off by more than [`TRUSTED_M`] is cut in four with
//! knots of its own and checked again, and once more; what is still off is not shown. Left out:
//! set-ups in which the rope lets go.

use crate::geometry::SetUp;
use crate::physics::equipment::LineParams;
use crate::physics::room_m;
use crate::scenario::{Scenario, Stance};
use crate::studies::along_wall;
use crate::units::G_M_S2;
use serde::{Deserialize, Serialize};

/// Columns and rows of a finished map.
pub const COLUMNS: usize = 80;
/// See [`COLUMNS`].
pub const ROWS: usize = 50;
/// Steps of the lattice along either side on which whole runs are made.
pub const LATTICE: usize = 32;
/// Lattice steps along a side of a patch, and of what it is cut into where it is off.
const SIZES: [usize; 3] = [8, 4, 2];
/// Error of the map, at a place where it was checked, up to which it is shown around there, m.
pub const TRUSTED_M: f64 = 0.1;

/// What a map lies over.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum MapKind {
    /// Grab height over the D-ring (across) and standing height (up).
    GrabAndHeight,
    /// Distance along the wall (across) and standing height (up).
    OffsetAndHeight,
}

/// The sides of a map, in SI.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Sides {
    /// Across: first and last column.
    pub across: (f64, f64),
    /// Up: first and last row.
    pub up: (f64, f64),
}

impl Sides {
    /// The sides of a map of a set-up: what can be built, with a little round it; none off the
    /// ladder, or where next to nothing can be built.
    pub fn of(s: &Scenario, kind: MapKind) -> Option<Sides> {
        let Stance::Ladder { .. } = s.stance else { return None };
        let l = s.lanyard.length_m;
        let widest = match kind {
            MapKind::GrabAndHeight => (-l, l),
            MapKind::OffsetAndHeight => (0.0, 6.0),
        };
        let all = Sides { across: widest, up: (0.5, s.house.eave_height_m) };
        let n = 24;
        let (mut across, mut up) = ((1.0_f64, 0.0_f64), (1.0_f64, 0.0_f64));
        for j in 0..=n {
            for i in 0..=n {
                let (u, v) = (f64::from(i) / f64::from(n), f64::from(j) / f64::from(n));
                if cell_scenario(s, kind, all.at(u, v)).problems().is_empty() {
                    (across.0, across.1) = (across.0.min(u), across.1.max(u));
                    (up.0, up.1) = (up.0.min(v), up.1.max(v));
                }
            }
        }
        let side = |whole: (f64, f64), k: (f64, f64)| {
            (whole.0 + (whole.1 - whole.0) * k.0, whole.0 + (whole.1 - whole.0) * k.1)
        };
        let sides = Sides { across: side(all.across, across), up: side(all.up, up) };
        (across.1 > across.0 && up.1 > up.0).then_some(sides)
    }

    /// The pair at a share of either side, 0 to 1.
    pub fn at(&self, across: f64, up: f64) -> (f64, f64) {
        let mix = |side: (f64, f64), k: f64| side.0 + (side.1 - side.0) * k;
        (mix(self.across, across), mix(self.up, up))
    }

    /// The share of either side at which a pair lies.
    pub fn share(&self, across: f64, up: f64) -> (f64, f64) {
        let back = |side: (f64, f64), x: f64| ((x - side.0) / (side.1 - side.0)).clamp(0.0, 1.0);
        (back(self.across, across), back(self.up, up))
    }
}

/// The set-up of a cell, for the kind of map that changes it; a distance along the wall is not part
/// of a set-up.
pub fn cell_scenario(s: &Scenario, kind: MapKind, pair: (f64, f64)) -> Scenario {
    let mut cell = s.clone();
    cell.stance = Stance::Ladder { standing_height_m: pair.1 };
    if kind == MapKind::GrabAndHeight {
        cell.grab.above_dring_m = pair.0;
    }
    cell
}

/// Room left under the feet by the quick sum, m; none where nothing stops it.
///
/// The weight falls free to where the lanyard is taut, and on until the work of the line equals
/// what gravity gave: the line's force over its stretch is that of springs in series (rope,
/// lanyard, harness) with three sliders at their own forces (harness, grab, absorber).
pub fn quick_room_m(s: &SetUp) -> Option<f64> {
    let g = s.geometry();
    let line = LineParams::of(s);
    let free_m =
        (s.lanyard.length_m - s.grab.above_dring_m).max(0.0) + s.lifeline.slack_m + line.grab.dead_travel_m;
    let drop_m = free_m + stretch_m(&line, s.worker.mass_kg * G_M_S2, free_m, g.grab_rope_m)?;
    Some(g.soles.y - g.surface_below_m(g.soles.x, 0.25) - drop_m)
}

/// Stretch of the line at the lowest point of a straight fall, m; none where nothing stops it.
fn stretch_m(line: &LineParams, weight_n: f64, free_m: f64, rope_m: f64) -> Option<f64> {
    if !line.grab.locks {
        return None;
    }
    let c = rope_m / line.rope_modulus_n
        + line.lanyard_length_m / line.lanyard_modulus_n
        + line.harness_compliance_m_per_n;
    // Along the force: what has stretched and slid when the line pulls with it, and the work done.
    let (mut force_n, mut out_m, mut work_j) = (0.0_f64, 0.0_f64, 0.0_f64);
    let step_n = 20.0;
    let mut absorber_m = 0.0;
    let gave_j = |out_m: f64| weight_n * (free_m + out_m);
    while force_n < 60_000.0 {
        if work_j >= gave_j(out_m) {
            return Some(out_m);
        }
        // Sliders at this force move before the springs stretch on.
        let slides = |at_n: f64| force_n <= at_n && at_n < force_n + step_n;
        if slides(line.harness_slide_force_n) {
            out_m += line.harness_slide_m;
            work_j += line.harness_slide_force_n * line.harness_slide_m;
        }
        if force_n >= line.grab.grip_n {
            // It slides on at its grip until the rest is spent.
            let left_j = gave_j(out_m) - work_j;
            return (line.grab.grip_n > weight_n).then(|| out_m + left_j / (line.grab.grip_n - weight_n));
        }
        if let Some(a) = line.absorber
            && absorber_m < a.max_extension_m
            && force_n >= a.limit_n(absorber_m)
        {
            let by_m = 0.002;
            (absorber_m, out_m) = (absorber_m + by_m, out_m + by_m);
            work_j += a.limit_n(absorber_m) * by_m;
            force_n = force_n.min(a.limit_n(absorber_m));
            continue;
        }
        // The grab's grip rises over its locking travel: so much slip for so much force.
        let slip = line.grab.bite_m / (line.grab.grip_n - line.grab.drag_n).max(1.0);
        let by_m = (c + slip) * step_n;
        out_m += by_m;
        work_j += (force_n + step_n / 2.0) * by_m;
        force_n += step_n;
    }
    None
}

/// What a whole run says of a cell: room left, m. None where it cannot be built, the rope lets go or
/// the run fails its own energy check.
pub fn run_room_m(s: &Scenario, kind: MapKind, pair: (f64, f64)) -> Option<f64> {
    let cell = cell_scenario(s, kind, pair).set_up().ok()?;
    match kind {
        MapKind::GrabAndHeight => room_m(&cell),
        MapKind::OffsetAndHeight => along_wall::swing(&cell, pair.0)?.room_m(),
    }
}

/// A place of the lattice: steps across and up.
pub type Place = (u8, u8);

/// A whole run at one place of a map.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Knot {
    /// Where.
    pub place: Place,
    /// Room by the run, m.
    pub room_m: Option<f64>,
}

fn share(steps: u8) -> f64 {
    f64::from(steps) / LATTICE as f64
}

/// Whole runs at these places.
pub fn knots(s: &Scenario, kind: MapKind, places: &[Place]) -> Vec<Knot> {
    let Some(sides) = Sides::of(s, kind) else { return Vec::new() };
    places
        .iter()
        .map(|&place| Knot { place, room_m: run_room_m(s, kind, sides.at(share(place.0), share(place.1))) })
        .collect()
}

/// A cell.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub enum Cell {
    /// Room left, m.
    Room(f64),
    /// The set-up cannot be built.
    Impossible,
    /// Not known: no run around it, or its check was off.
    Unknown,
}

/// A map.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Map {
    /// Its sides.
    pub sides: Sides,
    /// Row by row from the bottom, [`COLUMNS`] in each.
    pub cells: Vec<Cell>,
    /// Largest error at the places checked that are shown, m; none before any check.
    pub off_by_m: Option<f64>,
}

/// Whole runs so far, and what the quick sum says at the same places.
struct Runs<'a> {
    s: &'a Scenario,
    kind: MapKind,
    sides: Sides,
    runs: Vec<Vec<Option<Option<f64>>>>,
}

/// How a square of the lattice fares at its own check.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Check {
    /// Not checked yet, or nothing to check there.
    Open,
    /// Off by so much, m.
    Off(f64),
}

impl Runs<'_> {
    fn of<'a>(s: &'a Scenario, kind: MapKind, knots: &[Knot]) -> Option<Runs<'a>> {
        let sides = Sides::of(s, kind)?;
        let mut runs = vec![vec![None; LATTICE + 1]; LATTICE + 1];
        for k in knots {
            if let Some(r) =
                runs.get_mut(usize::from(k.place.1)).and_then(|r| r.get_mut(usize::from(k.place.0)))
            {
                *r = Some(k.room_m);
            }
        }
        Some(Runs { s, kind, sides, runs })
    }

    fn quick(&self, across: f64, up: f64) -> Option<f64> {
        let pair = self.sides.at(across, up);
        let cell = cell_scenario(self.s, self.kind, pair).set_up().ok()?;
        let extra_m =
            if self.kind == MapKind::OffsetAndHeight { drop_by_offset_m(&cell, pair.0) } else { 0.0 };
        quick_room_m(&cell).map(|m| m - extra_m)
    }

    fn has(&self, i: usize, j: usize) -> bool {
        self.runs[j][i].is_some()
    }

    /// What the run at a place says beyond the sum, m.
    fn beyond(&self, i: usize, j: usize) -> Option<f64> {
        let run_m = self.runs[j][i]??;
        let n = LATTICE as f64;
        self.quick(i as f64 / n, j as f64 / n).map(|q| run_m - q)
    }

    /// The same at a corner of a square; one without a run takes the nearest run around.
    fn corner(&self, table: &[Vec<Option<f64>>], i: usize, j: usize) -> Option<f64> {
        table[j][i].or_else(|| {
            (0..=LATTICE)
                .flat_map(|b| (0..=LATTICE).map(move |a| (a, b)))
                .filter_map(|(a, b)| Some((a.abs_diff(i).pow(2) + b.abs_diff(j).pow(2), table[b][a]?)))
                .min_by_key(|q| q.0)
                .map(|q| q.1)
        })
    }

    fn table(&self) -> Vec<Vec<Option<f64>>> {
        (0..=LATTICE).map(|j| (0..=LATTICE).map(|i| self.beyond(i, j)).collect()).collect()
    }

    /// Corrections at the corners of every square of `size` steps: runs that check a coarser square
    /// are corners of the finer ones.
    fn corners(&self, size: usize) -> Vec<Vec<Option<f64>>> {
        let mut table = self.table();
        for (j, row) in table.iter_mut().enumerate() {
            for (i, k) in row.iter_mut().enumerate() {
                if i % size != 0 || j % size != 0 {
                    *k = None;
                }
            }
        }
        let n = LATTICE / size;
        (0..=n).map(|j| (0..=n).map(|i| self.corner(&table, i * size, j * size)).collect()).collect()
    }

    /// The sum with the correction of the square it lies in.
    fn corrected(&self, corners: &[Vec<Option<f64>>], across: f64, up: f64) -> Option<f64> {
        let n = corners.len() - 1;
        let (x, y) = (across * n as f64, up * n as f64);
        let (i, j) = ((x as usize).min(n - 1), (y as usize).min(n - 1));
        let (u, v) = (x - i as f64, y - j as f64);
        let (a, b) = (corners[j][i]?, corners[j][i + 1]?);
        let (c, d) = (corners[j + 1][i]?, corners[j + 1][i + 1]?);
        let more_m = (a * (1.0 - u) + b * u) * (1.0 - v) + (c * (1.0 - u) + d * u) * v;
        self.quick(across, up).map(|q| q + more_m)
    }

    /// The check in the middle of a square, `i` and `j` counted in squares.
    fn check(&self, corners: &[Vec<Option<f64>>], i: usize, j: usize) -> Check {
        let size = LATTICE / (corners.len() - 1);
        let (a, b) = (i * size + size / 2, j * size + size / 2);
        let n = LATTICE as f64;
        match (self.runs[b][a].flatten(), self.corrected(corners, a as f64 / n, b as f64 / n)) {
            (Some(run_m), Some(map_m)) => Check::Off((run_m - map_m).abs()),
            _ => Check::Open,
        }
    }
}

/// Squares of one size: corrections at their corners, and how each fares at its check.
struct Level {
    corners: Vec<Vec<Option<f64>>>,
    checks: Vec<Vec<Check>>,
}

fn levels(runs: &Runs) -> Vec<Level> {
    SIZES
        .iter()
        .map(|&size| {
            let (corners, n) = (runs.corners(size), LATTICE / size);
            let checks = (0..n).map(|j| (0..n).map(|i| runs.check(&corners, i, j)).collect()).collect();
            Level { corners, checks }
        })
        .collect()
}

fn is_off(c: Check) -> bool {
    matches!(c, Check::Off(m) if m > TRUSTED_M)
}

/// The places to run next: coarse knots, the rest of the knots, the checks of the patches, then knots
/// and checks of the quarters of those that are off. Empty when the map is done.
pub fn next_places(s: &Scenario, kind: MapKind, done: &[Knot]) -> Vec<Place> {
    let Some(runs) = Runs::of(s, kind, done) else { return Vec::new() };
    let missing = |all: Vec<(usize, usize)>| -> Vec<Place> {
        all.into_iter().filter(|&(i, j)| !runs.has(i, j)).map(|(i, j)| (i as u8, j as u8)).collect()
    };
    let grid = |from: usize, step: usize| {
        (from..=LATTICE)
            .step_by(step)
            .flat_map(move |j| (from..=LATTICE).step_by(step).map(move |i| (i, j)))
            .collect()
    };
    for all in [grid(0, 2 * SIZES[0]), grid(0, SIZES[0]), grid(SIZES[0] / 2, SIZES[0])] {
        let left = missing(all);
        if !left.is_empty() {
            return left;
        }
    }
    let levels = levels(&runs);
    for (k, &finer) in SIZES.iter().enumerate().skip(1) {
        let (coarse, above) = (SIZES[k - 1], &levels[..k]);
        let n = LATTICE / coarse;
        let mut wanted = Vec::new();
        for (j, i) in (0..n).flat_map(|j| (0..n).map(move |i| (j, i))) {
            // Off here, and in every larger square around.
            let off = above
                .iter()
                .zip(SIZES)
                .all(|(l, size)| is_off(l.checks[j * coarse / size][i * coarse / size]));
            if off {
                let (a, b) = (i * coarse, j * coarse);
                let knots = (0..=coarse).step_by(finer);
                wanted.extend(knots.clone().flat_map(|y| knots.clone().map(move |x| (a + x, b + y))));
                let checks = (finer / 2..coarse).step_by(finer);
                wanted.extend(checks.clone().flat_map(|y| checks.clone().map(move |x| (a + x, b + y))));
            }
        }
        wanted.sort_unstable();
        wanted.dedup();
        let left = missing(wanted);
        if !left.is_empty() {
            return left;
        }
    }
    Vec::new()
}

/// Makes up to `count` more runs and draws the map; true when nothing is left to run.
pub fn go_on(s: &Scenario, kind: MapKind, done: &mut Vec<Knot>, count: usize) -> (Option<Map>, bool) {
    let next = next_places(s, kind, done);
    done.extend(knots(s, kind, &next[..next.len().min(count)]));
    (draw(s, kind, done), next_places(s, kind, done).is_empty())
}

/// Draws a map from the runs made so far.
pub fn draw(s: &Scenario, kind: MapKind, knots: &[Knot]) -> Option<Map> {
    let runs = Runs::of(s, kind, knots)?;
    let levels = levels(&runs);
    let mut off_by_m: Option<f64> = None;
    let mut cells = Vec::with_capacity(COLUMNS * ROWS);
    for r in 0..ROWS {
        for c in 0..COLUMNS {
            let (across, up) = ((c as f64 + 0.5) / COLUMNS as f64, (r as f64 + 0.5) / ROWS as f64);
            // The largest square around the cell whose check holds; before it was checked, the
            // largest of all.
            let check = |l: &Level| {
                let n = l.checks.len();
                l.checks[(up * n as f64) as usize][(across * n as f64) as usize]
            };
            let (level, found) = match levels.iter().find(|l| !is_off(check(l))) {
                Some(l) => (l, check(l)),
                None => (&levels[0], check(&levels[0])),
            };
            // A square cut from one that was off is shown only once it was checked itself.
            let open = found == Check::Open && !std::ptr::eq(level, &levels[0]);
            cells.push(match (runs.corrected(&level.corners, across, up), found) {
                (Some(_), _) if open || is_off(found) => Cell::Unknown,
                (Some(room_m), found) => {
                    if let Check::Off(m) = found {
                        off_by_m = Some(off_by_m.unwrap_or(0.0).max(m));
                    }
                    Cell::Room(room_m)
                }
                (None, _) => {
                    let cell = cell_scenario(s, kind, runs.sides.at(across, up));
                    if cell.problems().is_empty() { Cell::Unknown } else { Cell::Impossible }
                }
            });
        }
    }
    Some(Map { sides: runs.sides, cells, off_by_m })
}

/// What the offset adds to a drop by the taut rope's geometry alone, m.
fn drop_by_offset_m(s: &SetUp, offset_m: f64) -> f64 {
    let g = s.geometry();
    let roof_m = crate::geometry::path_length(&crate::geometry::taut_path(g.anchor, &g.corners, g.eave));
    let down_m = roof_m + g.eave.dist(g.dring);
    libm::hypot(down_m, offset_m) - down_m
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scenario::{Arrow, ORDINARY_OBSTACLE};

    fn whole(s: &Scenario, kind: MapKind) -> Map {
        let mut done = Vec::new();
        loop {
            let next = next_places(s, kind, &done);
            if next.is_empty() {
                return draw(s, kind, &done).expect("a map");
            }
            done.extend(knots(s, kind, &next));
        }
    }

    /// Whole runs at cells away from every knot and check.
    fn errors_m(s: &Scenario, kind: MapKind) -> (Vec<f64>, Map) {
        let map = whole(s, kind);
        let mut pick = crate::draw::Draw::with_seed(3);
        let mut off = Vec::new();
        for _ in 0..40 {
            let (c, r) = (pick.index(COLUMNS), pick.index(ROWS));
            let pair = map.sides.at((c as f64 + 0.5) / COLUMNS as f64, (r as f64 + 0.5) / ROWS as f64);
            if let (Cell::Room(m), Some(run)) = (map.cells[r * COLUMNS + c], run_room_m(s, kind, pair)) {
                off.push((m - run).abs());
            }
        }
        off.sort_by(f64::total_cmp);
        (off, map)
    }

    #[test]
    fn a_map_agrees_with_whole_runs_or_does_not_show_the_place() {
        let mut deck = Scenario::default();
        deck.house.below = ORDINARY_OBSTACLE;
        deck.ladder.foot_distance_m = 1.45;
        let mut heavy = Scenario::default();
        heavy.worker.mass_kg = 120.0;
        heavy.lanyard.length_m = 1.5;
        for (name, s, shown) in
            [("plain", Scenario::default(), 3_500), ("deck", deck, 2_500), ("heavy", heavy, 3_000)]
        {
            for kind in [MapKind::GrabAndHeight, MapKind::OffsetAndHeight] {
                let (off, map) = errors_m(&s, kind);
                assert!(off.len() >= 20, "{name}: {}", off.len());
                let (median, most) = (off[off.len() / 2], off[off.len() - 1]);
                assert!(median < 0.03 && most < 2.0 * TRUSTED_M, "{name} {kind:?}: {median} {most}");
                assert!(map.off_by_m.is_some_and(|m| m <= TRUSTED_M), "{name}");
                let rooms = map.cells.iter().filter(|c| matches!(c, Cell::Room(_))).count();
                assert!(rooms >= shown, "{name} {kind:?}: {rooms} cells shown");
            }
        }
    }

    #[test]
    fn where_the_rope_lets_go_there_is_no_map() {
        let mut s = Scenario::default();
        s.grab.arrow = Arrow::Down;
        let map = whole(&s, MapKind::GrabAndHeight);
        assert!(map.cells.iter().all(|c| !matches!(c, Cell::Room(_))));
        s.stance = Stance::Roof { from_eave_m: 1.0 };
        assert!(Sides::of(&s, MapKind::GrabAndHeight).is_none());
        assert!(next_places(&s, MapKind::GrabAndHeight, &[]).is_empty());
    }

    /// The sum alone, against the closed form: a weight on a rope with nothing that slides.
    #[test]
    fn the_quick_sum_is_the_elastic_line() {
        let (m, free_m, rope_m): (f64, f64, f64) = (90.0, 1.2, 6.0);
        let w = m * G_M_S2;
        let peak = w + (w * w + 2.0 * w * 30_000.0 * free_m / rope_m).sqrt();
        let got = stretch_m(&LineParams::ideal(30_000.0, rope_m), w, free_m, rope_m).expect("stops");
        assert!((got / (peak * rope_m / 30_000.0) - 1.0).abs() < 0.01, "{got}");
    }

    #[test]
    fn coarse_places_come_first_and_none_twice() {
        let s = Scenario::default();
        let kind = MapKind::OffsetAndHeight;
        let first = next_places(&s, kind, &[]);
        assert_eq!(first.len(), 9);
        let mut done = knots(&s, kind, &first);
        let second = next_places(&s, kind, &done);
        assert!(second.iter().all(|p| !first.contains(p)));
        assert!(draw(&s, kind, &done).is_some_and(|m| m.off_by_m.is_none()));
        while done.len() < 400 {
            let next = next_places(&s, kind, &done);
            if next.is_empty() {
                break;
            }
            done.extend(knots(&s, kind, &next));
        }
        let mut places: Vec<Place> = done.iter().map(|k| k.place).collect();
        places.sort_unstable();
        places.dedup();
        assert_eq!(places.len(), done.len());
    }
}
