//! A house read off a photo: two points of a known length scale it, four more are the house. The photo is taken square to
//! the gable; nothing else of a camera is known, so the doubt is told.

use serde::{Deserialize, Serialize};

/// A point of the photo, in pixels from its upper left.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Mark {
    /// Across.
    pub x_px: f64,
    /// Down.
    pub y_px: f64,
}

/// The six points.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Marks {
    /// The two known points.
    pub known: [Mark; 2],
    /// The ground at the wall's foot.
    pub ground: Mark,
    /// The top of the wall.
    pub wall: Mark,
    /// The edge of the eave.
    pub eave: Mark,
    /// The ridge.
    pub ridge: Mark,
}

/// What is read.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Read {
    /// Eave above the ground, m.
    pub eave_m: f64,
    /// Wall to ridge, m.
    pub span_m: f64,
    /// Overhang, m.
    pub overhang_m: f64,
    /// Roof slope, rad.
    pub pitch_rad: f64,
    /// How far a height can be off, m.
    pub doubt_m: f64,
    /// The wall leans on the photo by more than a bubble's worth.
    pub leans: bool,
}

/// A finger puts a point to this, in shares of the photo's longer side (our own choice: four pixels of a thousand).
const FINGER_SHARE: f64 = 0.004;
/// A wall that leans by more than this on the photo was not taken square, rad (our own choice).
const LEANS_RAD: f64 = 0.035;

/// Reads the house: none where the points give none. `long_px` is the photo's longer side.
pub fn read(m: &Marks, known_m: f64, long_px: f64) -> Option<Read> {
    let [a, b] = m.known;
    let between_px = libm::hypot(b.x_px - a.x_px, b.y_px - a.y_px);
    if between_px < 1.0 || known_m <= 0.0 || !known_m.is_finite() {
        return None;
    }
    let m_per_px = known_m / between_px;
    let eave_m = (m.ground.y_px - m.eave.y_px) * m_per_px;
    let span_m = (m.ridge.x_px - m.wall.x_px).abs() * m_per_px;
    let overhang_m = (m.eave.x_px - m.wall.x_px).abs() * m_per_px;
    let (run_px, rise_px) = ((m.ridge.x_px - m.eave.x_px).abs(), m.eave.y_px - m.ridge.y_px);
    // The ridge lies over the eave, the eave over the ground and outside the wall.
    let outside = (m.eave.x_px - m.wall.x_px) * (m.ridge.x_px - m.wall.x_px) <= 0.0;
    if eave_m <= 0.0 || rise_px <= 0.0 || run_px < 1.0 || !outside {
        return None;
    }
    let finger_px = FINGER_SHARE * long_px;
    // Both ends of the height and both of the known length are put by a finger.
    let doubt_m = 2.0 * finger_px * m_per_px + 2.0 * finger_px / between_px * eave_m;
    let lean_rad =
        libm::atan2((m.wall.x_px - m.ground.x_px).abs(), (m.ground.y_px - m.wall.y_px).abs().max(1.0));
    Some(Read {
        eave_m,
        span_m,
        overhang_m,
        pitch_rad: libm::atan2(rise_px, run_px),
        doubt_m,
        leans: lean_rad > LEANS_RAD,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mark(x_px: f64, y_px: f64) -> Mark {
        Mark { x_px, y_px }
    }

    /// A house drawn at 100 px to the metre: eave at 5.6 m, 3.6 m to the ridge, 0.4 m of overhang, 6 in 12; a door of
    /// 2 m is the known length.
    #[test]
    fn a_drawn_house_reads_back() {
        let m = Marks {
            known: [mark(100.0, 600.0), mark(100.0, 800.0)],
            ground: mark(500.0, 800.0),
            wall: mark(500.0, 260.0),
            eave: mark(540.0, 240.0),
            ridge: mark(140.0, 40.0),
        };
        let r = read(&m, 2.0, 1000.0).expect("a house");
        for (got, want) in
            [(r.eave_m, 5.6), (r.span_m, 3.6), (r.overhang_m, 0.4), (libm::tan(r.pitch_rad) * 12.0, 6.0)]
        {
            assert!((got - want).abs() < 1e-9, "{got} {want}");
        }
        // Four pixels at each end: 8 cm of height, and 4 in 100 of the known length's share.
        assert!((r.doubt_m - (0.08 + 0.04 * 5.6)).abs() < 1e-9, "{}", r.doubt_m);
        assert!(!r.leans);
        // The same mirrored, and leaning.
        let flip = |k: Mark| mark(1000.0 - k.x_px, k.y_px);
        let f = Marks {
            known: m.known.map(flip),
            ground: flip(m.ground),
            wall: flip(m.wall),
            eave: flip(m.eave),
            ridge: flip(m.ridge),
        };
        assert_eq!(read(&f, 2.0, 1000.0).map(|r| (r.eave_m * 1e6).round()), Some(5.6e6));
        assert!(read(&Marks { ground: mark(540.0, 800.0), ..m }, 2.0, 1000.0).expect("a house").leans);
        // No house: the ridge under the eave, the eave inside the wall, no length.
        assert_eq!(read(&Marks { ridge: mark(140.0, 400.0), ..m }, 2.0, 1000.0), None);
        assert_eq!(read(&Marks { eave: mark(460.0, 240.0), ..m }, 2.0, 1000.0), None);
        assert_eq!(read(&Marks { known: [mark(1.0, 1.0); 2], ..m }, 2.0, 1000.0), None);
        assert_eq!(read(&m, 0.0, 1000.0), None);
    }
}
