//! Where words go on the picture, in pixels: beside what they name, never over one another, never out of the
//! pane, and over body, rope and lens only where there is nowhere else.

/// A rectangle, px from the upper left.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Area {
    /// Left, px.
    pub x_px: f64,
    /// Top, px.
    pub y_px: f64,
    /// Width, px.
    pub width_px: f64,
    /// Height, px.
    pub height_px: f64,
}

impl Area {
    /// From its middle and half its sides, px.
    pub fn round(at: (f64, f64), half: (f64, f64)) -> Area {
        Area { x_px: at.0 - half.0, y_px: at.1 - half.1, width_px: 2.0 * half.0, height_px: 2.0 * half.1 }
    }

    /// How much two cover of each other, px².
    pub fn overlap(&self, o: &Area) -> f64 {
        let w = (self.x_px + self.width_px).min(o.x_px + o.width_px) - self.x_px.max(o.x_px);
        let h = (self.y_px + self.height_px).min(o.y_px + o.height_px) - self.y_px.max(o.y_px);
        if w > 0.0 && h > 0.0 { w * h } else { 0.0 }
    }

    /// Grown on every side, px.
    pub fn grown(&self, by_px: f64) -> Area {
        Area {
            x_px: self.x_px - by_px,
            y_px: self.y_px - by_px,
            width_px: self.width_px + 2.0 * by_px,
            height_px: self.height_px + 2.0 * by_px,
        }
    }

    /// Its middle, px.
    pub fn middle(&self) -> (f64, f64) {
        (self.x_px + self.width_px / 2.0, self.y_px + self.height_px / 2.0)
    }

    fn inside(&self, width_px: f64, height_px: f64) -> bool {
        self.x_px >= 0.0
            && self.y_px >= 0.0
            && self.x_px + self.width_px <= width_px
            && self.y_px + self.height_px <= height_px
    }
}

/// A plate that is to be placed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wanted {
    /// What it names, px.
    pub at: (f64, f64),
    /// Its size, px.
    pub size: (f64, f64),
    /// Which side it would rather be on: -1 left, 1 right.
    pub side_sign: f64,
    /// It may lie on what it names: a line that is broken at its text.
    pub on: bool,
}

/// Between two plates, and between a plate and the edge, px.
const GAP_PX: f64 = 6.0;
/// How far from its point a plate is tried, px.
const AWAY_PX: [f64; 6] = [22.0, 46.0, 80.0, 124.0, 180.0, 250.0];

/// Places plates one after the other in a pane; what comes first has the better place. `none` where the pane
/// has no room left at all. `avoid` is what a plate should not cover (the brackets of its own kind it may),
/// `blocked` what it never does.
pub fn place(
    pane: (f64, f64),
    wanted: &[Wanted],
    (avoid, brackets): (&[Area], &[Area]),
    blocked: &[Area],
) -> Vec<Option<Area>> {
    let mut placed: Vec<Area> = blocked.to_vec();
    wanted
        .iter()
        .map(|w| {
            let fits = |a: &Area| {
                a.grown(2.0).inside(pane.0, pane.1)
                    && placed.iter().all(|q| q.grown(GAP_PX).overlap(a) == 0.0)
            };
            let best = candidates(pane, w)
                .into_iter()
                .filter(fits)
                .map(|a| (cost(&a, w, avoid, brackets), a))
                .min_by(|a, b| a.0.total_cmp(&b.0))
                .map(|(_, a)| a);
            placed.extend(best);
            best
        })
        .collect()
}

fn cost(a: &Area, w: &Wanted, avoid: &[Area], brackets: &[Area]) -> f64 {
    let (x, y) = a.middle();
    let at = Area::round(w.at, (10.0, 10.0));
    let (dx, dy) = (x - w.at.0, y - w.at.1);
    let wrong_side = if dx * w.side_sign < 0.0 { 60.0 } else { 0.0 };
    let lines = if w.on { &[] } else { brackets };
    let covered: f64 = avoid.iter().chain(lines).map(|q| q.overlap(a)).sum();
    // A line from the plate to its point that would cross the body says the wrong thing.
    let (fx, fy) = (w.at.0.clamp(a.x_px, a.x_px + a.width_px), w.at.1.clamp(a.y_px, a.y_px + a.height_px));
    let crossed = (1..12)
        .map(|i| f64::from(i) / 12.0)
        .map(|k| Area::round((fx + (w.at.0 - fx) * k, fy + (w.at.1 - fy) * k), (1.0, 1.0)))
        .filter(|q| avoid.iter().any(|b| b.overlap(q) > 0.0 && b.overlap(&at) == 0.0))
        .count();
    let over_its_point = if w.on { 0.0 } else { a.grown(2.0).overlap(&Area::round(w.at, (4.0, 4.0))) };
    (dx * dx + dy * dy).sqrt() + wrong_side + covered + 40.0 * crossed as f64 + 50.0 * over_its_point
}

fn candidates(pane: (f64, f64), w: &Wanted) -> Vec<Area> {
    let (wide, high) = w.size;
    let area = |x: f64, y: f64| Area { x_px: x, y_px: y, width_px: wide, height_px: high };
    let mut all = vec![area(w.at.0 - wide / 2.0, w.at.1 - high / 2.0)];
    // One that breaks its line may hang off to a side.
    if w.on {
        all.extend([-0.85, -0.7, -0.3, -0.15].map(|k| area(w.at.0 + k * wide, w.at.1 - high / 2.0)));
    }
    for away in AWAY_PX {
        for up in [-3.0, -2.0, -1.0, -0.5, 0.0, 0.5, 1.0, 2.0, 3.0] {
            let y = w.at.1 - high / 2.0 + up * (high * 0.5 + away * 0.5);
            all.push(area(w.at.0 + away, y));
            all.push(area(w.at.0 - away - wide, y));
            all.push(area(w.at.0 - wide / 2.0, y));
        }
    }
    // Along both edges, from the lower corners up.
    let rows = ((pane.1 - 2.0 * GAP_PX) / (high + GAP_PX)).max(1.0) as usize;
    for i in 0..rows {
        let y = pane.1 - GAP_PX - high - (high + GAP_PX) * i as f64;
        all.push(area(GAP_PX, y));
        all.push(area(pane.0 - GAP_PX - wide, y));
    }
    all
}

/// Areas along a line through points, px, this thick: what a plate keeps clear of.
pub fn along(points: &[(f64, f64)], thick_px: f64) -> Vec<Area> {
    let mut all = Vec::new();
    for w in points.windows(2) {
        let (dx, dy) = (w[1].0 - w[0].0, w[1].1 - w[0].1);
        let long = (dx * dx + dy * dy).sqrt();
        let n = (long / (thick_px.max(8.0))).ceil().clamp(1.0, 200.0) as usize;
        for i in 0..=n {
            let k = i as f64 / n as f64;
            all.push(Area::round((w[0].0 + dx * k, w[0].1 + dy * k), (thick_px / 2.0, thick_px / 2.0)));
        }
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// None over another, none over the edge, whatever they name.
        #[test]
        fn plates_never_overlap_or_leave_the_pane(
            points in proptest::collection::vec((0.0..400.0f64, 0.0..400.0f64, 30.0..160.0f64, prop::bool::ANY), 1..7),
            wide in 300.0..1400.0f64, high in 200.0..900.0f64,
        ) {
            let wanted: Vec<Wanted> = points.iter().map(|q| Wanted {
                at: (q.0, q.1), size: (q.2, 34.0), side_sign: if q.3 { 1.0 } else { -1.0 }, on: false,
            }).collect();
            let placed: Vec<Area> = place((wide, high), &wanted, (&[], &[]), &[]).into_iter().flatten().collect();
            for (i, a) in placed.iter().enumerate() {
                prop_assert!(a.x_px >= 0.0 && a.y_px >= 0.0 && a.x_px + a.width_px <= wide && a.y_px + a.height_px <= high);
                for b in &placed[i + 1..] {
                    prop_assert!(a.overlap(b) == 0.0);
                }
            }
        }
    }

    #[test]
    fn a_plate_keeps_clear_of_the_body_and_stays_near() {
        let body = along(&[(200.0, 50.0), (200.0, 300.0)], 60.0);
        let w = Wanted { at: (200.0, 150.0), size: (110.0, 34.0), side_sign: 1.0, on: false };
        let got = place((390.0, 390.0), &[w], (&body, &[]), &[])[0].expect("there is room");
        assert!(body.iter().all(|b| b.overlap(&got) == 0.0), "{got:?}");
        assert!(got.x_px > 220.0 && (got.middle().1 - 150.0).abs() < 40.0, "{got:?}");
    }

    #[test]
    fn the_first_plate_has_the_better_place_and_the_second_still_one() {
        let w = Wanted { at: (100.0, 100.0), size: (80.0, 34.0), side_sign: 1.0, on: false };
        let got = place((300.0, 300.0), &[w, w], (&[], &[]), &[]);
        let (a, b) = (got[0].expect("room"), got[1].expect("room"));
        let far = |q: Area| (q.middle().0 - 100.0).hypot(q.middle().1 - 100.0);
        assert!(far(a) <= far(b) && a.overlap(&b) == 0.0);
    }
}
