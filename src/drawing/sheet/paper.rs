//! Which paper is there, and to which scales does one draw on it?

use glam::DVec2;

use crate::bay::UnitSystem;
use crate::units::parse_length;

/// A paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Paper {
    /// 8 1/2 by 11 in.
    Letter,
    /// 210 by 297 mm.
    A4,
    /// 297 by 420 mm.
    A3,
}

impl Paper {
    /// What it is called.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Letter => "Letter",
            Self::A4 => "A4",
            Self::A3 => "A3",
        }
    }

    /// Its short and its long side, millimetres (ISO 216; ANSI Y14.1, size A).
    #[must_use]
    pub const fn sides_mm(self) -> (f64, f64) {
        match self {
            Self::Letter => (215.9, 279.4),
            Self::A4 => (210.0, 297.0),
            Self::A3 => (297.0, 420.0),
        }
    }

    /// Lying or upright.
    #[must_use]
    pub const fn page_mm(self, lying: bool) -> DVec2 {
        let (short, long) = self.sides_mm();
        if lying {
            DVec2::new(long, short)
        } else {
            DVec2::new(short, long)
        }
    }

    /// The paper of a house that measures so.
    #[must_use]
    pub const fn usual(units: UnitSystem) -> Self {
        match units {
            UnitSystem::Imperial => Self::Letter,
            UnitSystem::Metric => Self::A4,
        }
    }
}

/// Scales of a metric drawing (the series of ISO 5455, and steps between that are in use).
const METRIC: [f64; 20] = [
    1.0, 2.0, 4.0, 5.0, 10.0, 15.0, 20.0, 25.0, 30.0, 40.0, 50.0, 60.0, 75.0, 80.0, 100.0, 125.0,
    150.0, 200.0, 300.0, 500.0,
];

/// Scales of an architect's and an engineer's rule, and what a foot is drawn as.
const IMPERIAL: [(f64, &str); 18] = [
    (1.0, "full size"),
    (2.0, "6 in = 1 ft"),
    (4.0, "3 in = 1 ft"),
    (8.0, "1 1/2 in = 1 ft"),
    (12.0, "1 in = 1 ft"),
    (16.0, "3/4 in = 1 ft"),
    (24.0, "1/2 in = 1 ft"),
    (32.0, "3/8 in = 1 ft"),
    (48.0, "1/4 in = 1 ft"),
    (60.0, "1 in = 5 ft"),
    (64.0, "3/16 in = 1 ft"),
    (72.0, "1 in = 6 ft"),
    (96.0, "1/8 in = 1 ft"),
    (120.0, "1 in = 10 ft"),
    (128.0, "3/32 in = 1 ft"),
    (192.0, "1/16 in = 1 ft"),
    (240.0, "1 in = 20 ft"),
    (480.0, "1 in = 40 ft"),
];

/// The scales of a system, the largest drawing first.
pub(super) fn scales(units: UnitSystem) -> Vec<f64> {
    match units {
        UnitSystem::Imperial => IMPERIAL.iter().map(|(scale, _)| *scale).collect(),
        UnitSystem::Metric => METRIC.to_vec(),
    }
}

/// How a scale is stated: `1/4 in = 1 ft (1:48)`.
#[must_use]
pub fn stated(scale: f64, units: UnitSystem) -> String {
    let of_a_foot = IMPERIAL.iter().find(|(one, _)| (one - scale).abs() < 1e-9);
    match (units, of_a_foot) {
        (UnitSystem::Imperial, Some((_, words))) => format!("{words} (1:{scale})"),
        _ => format!("1:{scale}"),
    }
}

/// Drawings smaller than 1 to this are no drawings of a bay.
const SMALLEST: f64 = 1000.0;

/// A scale as it is written: `1:50`, `1/4 in = 1 ft`, `1/4" = 1'-0"`, `full size`. Never an enlargement;
/// none where it is no scale.
#[must_use]
pub fn scale_of(text: &str) -> Option<f64> {
    let text = text.trim();
    let scale = if text.eq_ignore_ascii_case("full size") {
        1.0
    } else if let Some((one, scale)) = text.split_once(':') {
        let number = |text: &str| text.trim().parse::<f64>().ok();
        number(scale)? / Some(number(one)?).filter(|one| *one > 0.0)?
    } else {
        let (drawn, real) = text.split_once('=')?;
        let length = |text: &str| parse_length(text).ok().map(|length| length.m());
        length(real)? / length(drawn).filter(|drawn| *drawn > 0.0)?
    };
    let mut known = IMPERIAL.iter().map(|(known, _)| *known);
    let scale = known
        .find(|known| (known - scale).abs() < 1e-6)
        .unwrap_or(scale);
    (1.0..=SMALLEST).contains(&scale).then_some(scale)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_foot_is_drawn_as_the_scale_says() {
        for (scale, words) in IMPERIAL.iter().skip(1) {
            let (inches, feet) = words.split_once(" in = ").unwrap();
            let feet: f64 = feet.strip_suffix(" ft").unwrap().parse().unwrap();
            let inches: f64 = inches
                .split(' ')
                .map(|part| match part.split_once('/') {
                    Some((a, b)) => a.parse::<f64>().unwrap() / b.parse::<f64>().unwrap(),
                    None => part.parse().unwrap(),
                })
                .sum();
            assert!((feet * 12.0 / inches - scale).abs() < 1e-9, "{words}");
        }
        assert_eq!(stated(48.0, UnitSystem::Imperial), "1/4 in = 1 ft (1:48)");
        assert_eq!(stated(50.0, UnitSystem::Metric), "1:50");
    }

    #[test]
    fn a_scale_is_read_as_the_trade_writes_it() {
        for (text, scale) in [
            ("1:50", 50.0),
            (" 1 : 48 ", 48.0),
            ("1/4 in = 1 ft", 48.0),
            ("1/4\"=1'", 48.0),
            ("1/4\" = 1'-0\"", 48.0),
            ("1 1/2 in = 1 ft", 8.0),
            ("1 in = 5 ft", 60.0),
            ("20 mm = 1 m", 50.0),
            ("full size", 1.0),
        ] {
            assert_eq!(scale_of(text), Some(scale), "{text}");
        }
        for (scale, words) in IMPERIAL {
            assert_eq!(scale_of(words), Some(scale), "{words}");
        }
        for text in [
            "",
            "50",
            "1:0",
            "0:50",
            "1:-50",
            "2:1",
            "1:1001",
            "1:NaN",
            "1:inf",
            "inf:inf",
            "1/4 in",
            "0 in = 1 ft",
            "1 in = 0 ft",
            "1/4 in = 1 lb",
            "-1 in = -1 ft",
        ] {
            assert_eq!(scale_of(text), None, "{text}");
        }
    }
}
