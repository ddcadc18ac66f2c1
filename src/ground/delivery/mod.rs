//! Does the delivery come through the door, who carries it, and does the oil suffice?

mod pieces;
mod section;

pub use pieces::{Handling, handling, passes_opening, tips_up_m};
pub(super) use section::section;

/// Both cylinders of a two-post lift.
const CYLINDERS: f64 = 2.0;

/// What both cylinders take from bottom to top, cubic metres: the full bore over the full stroke.
/// A plunger narrower than its bore takes less, so this is the most.
#[must_use]
pub fn cylinders_take_m3(bore_m: f64, stroke_m: f64) -> f64 {
    CYLINDERS * std::f64::consts::FRAC_PI_4 * bore_m * bore_m * stroke_m
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_cylinders_by_bore_and_stroke() {
        // 2 in bore, 36 in stroke: pi / 4 * 4 * 36 * 2 = 226.19 cubic inches, 0.9792 US gallons of
        // 231 cubic inches.
        let gallons = cylinders_take_m3(2.0 * 0.0254, 36.0 * 0.0254) / 0.003_785_411_784;
        assert!((gallons - 0.979_2).abs() < 5e-5, "{gallons}");
    }
}
