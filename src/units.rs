//! SI constants and conversions.
//!
//! The core computes in SI `f64`; every name ends in its unit. Feet, pounds and kilonewtons exist
//! here and where a number is shown, nowhere else. Left out: temperature, pressure, anything the
//! fall does not need.

/// Standard acceleration of gravity, m/s² (CGPM 1901; ISO 80000-3).
pub const G_M_S2: f64 = 9.806_65;
/// One international foot, m (exact by definition, 1959).
pub const FT_M: f64 = 0.3048;
/// One inch, m (exact).
pub const IN_M: f64 = 0.0254;
/// One avoirdupois pound, kg (exact).
pub const LB_KG: f64 = 0.453_592_37;
/// One pound-force, N (exact: `LB_KG * G_M_S2`).
pub const LBF_N: f64 = LB_KG * G_M_S2;
/// One kilonewton, N.
pub const KN_N: f64 = 1_000.0;

/// A day of the calendar, written as 2026-05-01.
pub fn date(text: &str) -> Option<time::Date> {
    let mut parts = text.split('-');
    let (y, m, d) = (parts.next()?, parts.next()?, parts.next()?);
    if parts.next().is_some() || (y.len(), m.len(), d.len()) != (4, 2, 2) {
        return None;
    }
    let month = time::Month::try_from(m.parse::<u8>().ok()?).ok()?;
    time::Date::from_calendar_date(y.parse().ok()?, month, d.parse().ok()?).ok()
}

/// Seconds since 1970-01-01 UTC of an instant written by ISO 8601 as 2026-05-04T09:20:00-04:00 (or
/// with Z, or with parts of a second, which are dropped).
pub fn instant_s(text: &str) -> Option<i64> {
    let (day, rest) = text.split_once('T')?;
    let zone_at = rest.find(['Z', '+', '-'])?;
    let (clock, zone) = rest.split_at(zone_at);
    let clock = clock.split_once('.').map_or(clock, |(whole, _)| whole);
    let two = |t: &str| (t.len() == 2).then(|| t.parse::<u8>().ok()).flatten();
    let mut parts = clock.split(':').map(two);
    let (h, m, s) = (parts.next()??, parts.next()??, parts.next()??);
    if parts.next().is_some() {
        return None;
    }
    let offset_s = match zone.strip_prefix(['+', '-']) {
        None => (zone == "Z").then_some(0)?,
        Some(hm) => {
            let (oh, om) = hm.split_once(':')?;
            let (oh, om) = (two(oh).filter(|h| *h < 24)?, two(om).filter(|m| *m < 60)?);
            let s = i64::from(oh) * 3600 + i64::from(om) * 60;
            if zone.starts_with('-') { -s } else { s }
        }
    };
    let time = time::Time::from_hms(h, m, s).ok()?;
    Some(time::PrimitiveDateTime::new(date(day)?, time).assume_utc().unix_timestamp() - offset_s)
}

/// `x`, but no less than `least` and no more than `most`. Unlike `clamp` it takes bounds that cross
/// (then `most` counts), so that no typed number can end the page.
pub fn within(x: f64, least: f64, most: f64) -> f64 {
    x.max(least).min(most)
}

/// The same day some years on; 29 February becomes 28.
pub fn years_on(day: time::Date, years: i32) -> Option<time::Date> {
    let year = day.year() + years;
    day.replace_year(year).or_else(|_| day.replace_day(28).and_then(|d| d.replace_year(year))).ok()
}

/// Which unit system a number is shown in. The core never sees it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Units {
    /// Metres, kilograms, kilonewtons.
    #[default]
    Metric,
    /// Feet, pounds, pounds-force.
    FeetPounds,
}

/// What a number measures, so that it can be shown in either unit system.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Quantity {
    /// Metres; shown as m or ft.
    Length,
    /// Newtons; shown as kN or lbf.
    Force,
    /// Kilograms; shown as kg or lb.
    Mass,
    /// Radians; shown as degrees.
    Angle,
    /// Metres per second; shown as m/s or ft/s.
    Speed,
    /// Seconds.
    Time,
    /// Newtons per unit strain (a rope's modulus); shown as kN or lbf.
    Modulus,
    /// Newtons per metre; shown as kN/m or lbf/ft.
    LinearWeight,
    /// Joules; shown as J or foot-pounds.
    Energy,
    /// How many.
    Count,
    /// A plain number without a unit.
    Ratio,
}

/// Which way a shown number is rounded. Rounding goes against the worker: forces and falls up,
/// clearances and capacities down.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rounding {
    /// Towards the larger value.
    Up,
    /// Towards the smaller value.
    Down,
    /// To the nearest: for inputs that the person chose, which nothing is judged by.
    Nearest,
}

impl Quantity {
    /// Factor from SI to the shown unit: `shown = si * factor`.
    pub fn shown_per_si(self, units: Units) -> f64 {
        match (self, units) {
            (Quantity::Length | Quantity::Speed, Units::FeetPounds) => 1.0 / FT_M,
            (Quantity::Force | Quantity::Modulus, Units::Metric) => 1.0 / KN_N,
            (Quantity::Force | Quantity::Modulus, Units::FeetPounds) => 1.0 / LBF_N,
            (Quantity::Mass, Units::FeetPounds) => 1.0 / LB_KG,
            (Quantity::LinearWeight, Units::Metric) => 1.0 / KN_N,
            (Quantity::LinearWeight, Units::FeetPounds) => FT_M / LBF_N,
            (Quantity::Energy, Units::FeetPounds) => 1.0 / (FT_M * LBF_N),
            (Quantity::Angle, _) => 180.0 / core::f64::consts::PI,
            _ => 1.0,
        }
    }

    /// Decimals a person is shown.
    pub fn decimals(self, units: Units) -> usize {
        match (self, units) {
            (Quantity::Length, Units::Metric) => 2,
            (Quantity::Length, Units::FeetPounds) => 1,
            (Quantity::Force | Quantity::Modulus, Units::Metric) => 1,
            (Quantity::Force | Quantity::Modulus | Quantity::Mass, Units::FeetPounds) => 0,
            (Quantity::Mass, Units::Metric) | (Quantity::Angle, _) => 0,
            (Quantity::Speed, _) | (Quantity::LinearWeight, Units::Metric) => 1,
            (Quantity::Count | Quantity::Energy, _) | (Quantity::LinearWeight, Units::FeetPounds) => 0,
            (Quantity::Time, _) => 2,
            (Quantity::Ratio, _) => 2,
        }
    }

    /// The unit's symbol (SI brochure; ASTM SI 10); `texts` writes feet as French does.
    pub fn symbol(self, units: Units) -> &'static str {
        match (self, units) {
            (Quantity::Length, Units::Metric) => "m",
            (Quantity::Length, Units::FeetPounds) => "ft",
            (Quantity::Force | Quantity::Modulus, Units::Metric) => "kN",
            (Quantity::Force | Quantity::Modulus, Units::FeetPounds) => "lbf",
            (Quantity::Mass, Units::Metric) => "kg",
            (Quantity::Mass, Units::FeetPounds) => "lb",
            (Quantity::Angle, _) => "°",
            (Quantity::Speed, Units::Metric) => "m/s",
            (Quantity::Speed, Units::FeetPounds) => "ft/s",
            (Quantity::Time, _) => "s",
            (Quantity::Energy, Units::Metric) => "J",
            (Quantity::Energy, Units::FeetPounds) => "ft·lbf",
            (Quantity::LinearWeight, Units::Metric) => "kN/m",
            (Quantity::LinearWeight, Units::FeetPounds) => "lbf/ft",
            (Quantity::Ratio | Quantity::Count, _) => "",
        }
    }
}

/// Rounds `value` to `decimals` places in the direction asked for.
///
/// A value within 1e-9 of a representable one counts as that one, so that 6.0 computed as
/// 6.000000000001 is not shown as 6.1.
pub fn round_to(value: f64, decimals: usize, rounding: Rounding) -> f64 {
    let scale = 10f64.powi(decimals as i32);
    let x = value * scale;
    let nearest = x.round();
    let r = if (x - nearest).abs() < 1e-7 {
        nearest
    } else {
        match rounding {
            Rounding::Up => x.ceil(),
            Rounding::Down => x.floor(),
            Rounding::Nearest => nearest,
        }
    };
    // Adding zero turns -0.0 into 0.0.
    r / scale + 0.0
}

/// A length as people write it, m: `5,18` or `5.18` in metric, `17'`, `17 6`, `17' 6"` or `17.5` in feet and inches.
/// None where it is not one.
pub fn read_length(text: &str, units: Units) -> Option<f64> {
    let plain: String = text
        .trim()
        .to_lowercase()
        .replace(',', ".")
        .replace(['’', '′'], "'")
        .replace(['”', '″', '“'], "\"")
        .replace("ft", "'")
        .replace("pi", "'")
        .replace("in", "\"")
        .replace("po", "\"");
    // Feet are feet, whatever the page is set to.
    if units == Units::Metric && !plain.contains(['\'', '"']) {
        let metres = plain.trim_end_matches('m').trim();
        return metres.parse().ok().filter(|x: &f64| x.is_finite());
    }
    let number = |t: &str| t.trim().parse::<f64>().ok().filter(|x| x.is_finite() && *x >= 0.0);
    let (sign, plain) = match plain.strip_prefix(['-', '−']) {
        Some(rest) => (-1.0, rest.to_owned()),
        None => (1.0, plain),
    };
    let (feet, inches) = match plain.split_once('\'') {
        Some((feet, rest)) => (number(feet)?, rest.trim().trim_end_matches('"').trim().to_owned()),
        None if plain.trim().ends_with('"') => (0.0, plain.trim().trim_end_matches('"').trim().to_owned()),
        None => match plain.trim().split_once(char::is_whitespace) {
            Some((feet, rest)) => (number(feet)?, rest.trim().to_owned()),
            None => (number(&plain)?, String::new()),
        },
    };
    let inches = if inches.is_empty() { 0.0 } else { number(&inches)? };
    Some(sign * (feet + inches / 12.0) * FT_M)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 17 ft 6 in is 5.334 m.
    #[test]
    fn lengths_are_read_as_people_write_them() {
        let feet = |t| read_length(t, Units::FeetPounds);
        for t in ["17 6", "17' 6\"", "17’6”", "17.5", "17,5", "17 ft 6 in", "17 pi 6 po", "210\""] {
            assert!(feet(t).is_some_and(|m| (m - 5.334).abs() < 1e-9), "{t} {:?}", feet(t));
        }
        assert!(feet("17'").is_some_and(|m| (m - 5.181_6).abs() < 1e-9));
        assert_eq!(feet("-1'"), Some(-0.304_8));
        for t in ["", "x", "17 x", "1 2 3", "nan", "'"] {
            assert_eq!(feet(t), None, "{t}");
        }
        for t in ["5,18", "5.18", " 5.18 m "] {
            assert_eq!(read_length(t, Units::Metric), Some(5.18), "{t}");
        }
        assert_eq!(read_length("inf", Units::Metric), None);
        // Feet are feet, whatever the page is set to.
        assert_eq!(read_length("17 ft 6 in", Units::Metric), feet("17.5"));
    }

    #[test]
    fn pound_force_matches_nist() {
        // NIST SP 811, appendix B.8: 1 lbf = 4.448222 N.
        assert!((LBF_N - 4.448_222).abs() < 1e-6);
    }

    #[test]
    fn instants_count_from_1970_whatever_the_zone() {
        // 2026-05-04 is day 20,577 after 1970-01-01: 56 years of 365 days, 14 leap days, 123 days.
        let noon = 20_577 * 86_400 + 12 * 3_600;
        for text in ["2026-05-04T12:00:00Z", "2026-05-04T08:00:00-04:00", "2026-05-04T17:30:00.25+05:30"] {
            assert_eq!(instant_s(text), Some(noon), "{text}");
        }
        for text in ["", "2026-05-04", "2026-05-04T08:00:00", "2026-13-04T08:00:00Z", "2026-05-04T8:00:00Z"] {
            assert_eq!(instant_s(text), None, "{text}");
        }
    }

    #[test]
    fn bounds_that_cross_do_not_panic() {
        assert_eq!((within(5.0, 0.0, 2.0), within(-1.0, 0.0, 2.0), within(0.0, 1.0, -1.0)), (2.0, 0.0, -1.0));
    }

    #[test]
    fn rounding_goes_the_way_asked() {
        assert_eq!(round_to(4.01, 1, Rounding::Up), 4.1);
        assert_eq!(round_to(4.09, 1, Rounding::Down), 4.0);
        assert_eq!(round_to(4.05, 1, Rounding::Nearest), 4.1);
        assert_eq!(round_to(6.0 + 1e-12, 1, Rounding::Up), 6.0);
        assert_eq!(round_to(-0.001, 2, Rounding::Up), 0.0);
        assert_eq!(round_to(-0.001, 2, Rounding::Down), -0.01);
    }
}
