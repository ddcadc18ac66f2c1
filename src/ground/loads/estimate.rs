//! Where would the weight act if the axle loads were as they commonly are?

use crate::bay::Vehicle;
use crate::solids::vehicle::axle_station_m;

/// Shares of the weight on the front axle between which vehicles with the engine in front commonly
/// lie: common practice, no source.
pub const FRONT_SHARE: [f64; 2] = [0.55, 0.60];

/// Between which stations behind the front bumper the centre of gravity lies for the common
/// shares, metres. An estimate: it never makes a pass.
#[must_use]
pub fn stations_m(vehicle: &Vehicle) -> [f64; 2] {
    let (front, rear) = (axle_station_m(vehicle, 0), axle_station_m(vehicle, 1));
    let [least, most] = FRONT_SHARE;
    [most, least].map(|share| front * share + rear * (1.0 - share))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::solids::test_bay::test_bay;

    #[test]
    fn a_pickups_weight_acts_near_the_front_seat_and_the_mirrors() {
        // Common practice, no source: with the engine in front a pickup's centre of gravity lies
        // near the front seat and the mirrors. Behind the mirrors (72 in), and ahead of the front
        // doors' rear edge (66 in and 44 in of door).
        let [ahead, behind] = stations_m(&test_bay().vehicle).map(|m| m / 0.0254);
        // 38 in of overhang and 40 to 45 % of 145 in.
        assert!((ahead - 96.0).abs() < 1e-9 && (behind - 103.25).abs() < 1e-9);
        assert!(ahead > 72.0 && behind < 110.0);
    }
}
