//! Which way is each number of the JSON report rounded?
//!
//! Numbers keep six decimals (micrometres), so that reports don't differ in the noise of floating
//! point. What is no number becomes none: JSON knows neither NaN nor infinities, and a default in
//! their place could be taken for a finding.

/// Steps in a metre (or a radian, or a kilogram).
const STEPS: f64 = 1e6;

/// Share of a step below which a value counts as lying on it.
const SNAP: f64 = 1e-3;

fn stepped(value: f64, round: fn(f64) -> f64) -> Option<f64> {
    let count = value * STEPS;
    let nearest = count.round();
    let whole = if (count - nearest).abs() < SNAP {
        nearest
    } else {
        round(count)
    };
    // Adding zero makes a negative zero a plain one.
    let rounded = whole / STEPS + 0.0;
    rounded.is_finite().then_some(rounded)
}

/// Clearances, room, heights that are promised, travels not to be passed.
pub(in crate::report) fn down(value: f64) -> Option<f64> {
    stepped(value, f64::floor)
}

/// Overlaps, shortfalls, requirements, margins, uncertainties.
pub(in crate::report) fn up(value: f64) -> Option<f64> {
    stepped(value, f64::ceil)
}

/// Places and marks.
pub(super) fn nearest(value: f64) -> Option<f64> {
    stepped(value, f64::round)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn directions() {
        assert_eq!(down(0.100_000_9), Some(0.1));
        assert_eq!(up(0.100_000_1), Some(0.100_001));
        assert_eq!(nearest(0.100_000_4), Some(0.1));
        assert_eq!(down(-0.000_000_1), Some(-0.000_001));
        // The nearest double to 12 in lies a hair under 304800 steps or over it: neither counts.
        assert_eq!(down(12.0 * 0.0254), Some(0.3048));
        assert_eq!(up(12.0 * 0.0254), Some(0.3048));
    }

    #[test]
    fn no_negative_zero_and_nothing_that_json_lacks() {
        assert_eq!(up(-0.000_000_1).map(f64::is_sign_negative), Some(false));
        for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e303] {
            assert_eq!(down(value), None);
        }
    }
}
