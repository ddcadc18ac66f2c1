//! A piece of the parking box: what is shown apart over all of it is apart wherever in it the vehicle
//! stands.

use glam::{DVec2, DVec3};

use super::super::movers::parking_pivot;
use super::super::reach::miss_plan_m;
use super::super::uncertainty::Uncertainty;
use crate::bay::{Bay, Floor};
use crate::solids::shell::floor_level_m;
use crate::solids::{ParkingError, Pose, vehicle};

/// A piece in which nothing moves farther than this is not cut any more, metres: what may touch in
/// it counts as touching.
const SMALL_M: f64 = 0.001;

/// How far from the place that is lined up a turn of the vehicle is weighed when a piece is cut: no
/// bound, only the choice of the way to cut.
const LEVER_M: f64 = 2.0;

/// All places of the vehicle that differ from the middle one by at most `half` each way.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Piece {
    pub(super) middle: ParkingError,
    half: ParkingError,
}

impl Piece {
    /// The whole parking box, larger by what a lift point may be off to its arm's pivot: the vehicle
    /// may as well stand that much farther.
    pub(super) fn whole(uncertainty: &Uncertainty) -> Self {
        let parking = uncertainty.parking;
        let miss = miss_plan_m(uncertainty);
        Self {
            middle: ParkingError::default(),
            half: ParkingError {
                across_m: parking.across_m + miss.x,
                along_m: parking.along_m + miss.y,
                yaw_rad: parking.yaw_rad,
            },
        }
    }

    /// One place.
    pub(super) const fn at(middle: ParkingError) -> Self {
        Self {
            middle,
            half: ParkingError {
                across_m: 0.0,
                along_m: 0.0,
                yaw_rad: 0.0,
            },
        }
    }

    /// Whether it is too small to cut; what is no number is.
    pub(super) fn is_small(&self) -> bool {
        !self.sizes().into_iter().any(|size| size > SMALL_M)
    }

    /// How far it lets the vehicle go: across, along, and at a lever by turning.
    fn sizes(&self) -> [f64; 3] {
        let ParkingError {
            across_m,
            along_m,
            yaw_rad,
        } = self.half;
        [across_m, along_m, yaw_rad * LEVER_M]
    }

    /// Its two halves, cut where it is longest.
    pub(super) fn halves(self) -> [Self; 2] {
        let [across, along, turn] = self.sizes();
        let mut half = self.half;
        let mut part = |of: fn(&mut ParkingError) -> &mut f64| {
            *of(&mut half) *= 0.5;
            let by = *of(&mut half);
            [-by, by].map(|by| {
                let mut middle = self.middle;
                *of(&mut middle) += by;
                Self { middle, half }
            })
        };
        if across >= along && across >= turn {
            part(|of| &mut of.across_m)
        } else if along >= turn {
            part(|of| &mut of.along_m)
        } else {
            part(|of| &mut of.yaw_rad)
        }
    }
}

/// How the vehicle's places in a piece differ from the middle one. It is taken to stand there, and what
/// belongs to the lift to go about it.
#[derive(Debug, Clone)]
pub(super) struct Roam {
    /// How far it may stand lower, metres, where the floor falls.
    pub(super) lower_m: f64,
    plan: DVec2,
    yaw_rad: f64,
    /// The tilt that a fall adds when the vehicle turns on it.
    tilt_rad: f64,
    /// How far the floor under one tyre may be off what it is under the middle one.
    floor_m: f64,
    /// The place that is lined up, for the middle one.
    pivot: DVec3,
}

impl Roam {
    /// About where the vehicle stands in the piece's middle.
    pub(super) fn new(bay: &Bay, piece: Piece, rest: Pose) -> Self {
        let ParkingError {
            across_m,
            along_m,
            yaw_rad,
        } = piece.half;
        let plan = DVec2::new(across_m, along_m);
        let off = DVec3::new(piece.middle.across_m, piece.middle.along_m, 0.0);
        let up = rest.rotation * DVec3::Z;
        let slope = up.truncate().length() / up.z;
        let lower_m = match bay.garage.floor {
            Floor::Level | Floor::Levels(_) => 0.0,
            Floor::Fall { slope, .. } => slope * plan.length(),
        };
        let mut roam = Self {
            lower_m,
            plan,
            yaw_rad,
            tilt_rad: slope * yaw_rad,
            floor_m: 0.0,
            pivot: parking_pivot(bay) + off,
        };
        roam.floor_m = floor_off_m(bay, rest, &roam);
        roam
    }

    /// How far in plan a point of the lift may be, seen from the vehicle: across and along.
    pub(super) fn of_the_lift(&self, point: DVec3) -> DVec2 {
        let turned = self.yaw_rad * (point - self.pivot).truncate().length();
        // The vehicle's own axes turn against the bay's.
        let askew = self.plan.length() * self.yaw_rad;
        self.plan + DVec2::splat(turned + askew)
    }

    /// How far in plan a point of the vehicle may be, seen from the bay: across and along.
    pub(super) fn of_the_vehicle(&self, point: DVec3) -> DVec2 {
        let lever = (point - self.pivot).length();
        self.plan + DVec2::splat((self.yaw_rad + self.tilt_rad) * lever + 2.0 * self.floor_m)
    }

    /// How far the piece's turn takes what reaches so far.
    pub(super) fn turned_m(&self, reach_m: f64) -> f64 {
        self.yaw_rad * reach_m
    }

    /// How far what reaches so far from the place that is lined up may be off for the floor, standing
    /// on its tyres.
    pub(super) fn standing(&self, reach_m: f64) -> DVec3 {
        // A floor that is off under one tyre tips the body; twice that bounds it up to as far
        // beyond the tyres as they stand apart.
        DVec3::splat(self.tilt_rad * reach_m + 2.0 * self.floor_m)
    }

    /// The same on the pads, which have it in height.
    pub(super) fn carried(&self, reach_m: f64) -> DVec3 {
        self.standing(reach_m) * DVec3::new(1.0, 1.0, 0.0)
    }

    /// The place that is lined up.
    pub(super) const fn pivot(&self) -> DVec3 {
        self.pivot
    }

    /// Whether it is one place only.
    pub(super) fn is_place(&self) -> bool {
        self.plan == DVec2::ZERO && self.yaw_rad == 0.0
    }
}

/// How many places each way under a tyre's whole roaming are looked at.
const PLACES: i32 = 4;

/// How far the floor under a tyre differs between the piece's middle and the rest of it. Only of a floor
/// that is known by levels at points: between them it is known no better than by them. It is looked at
/// at each point that a tyre may come over, where it is highest and lowest, and at places between.
fn floor_off_m(bay: &Bay, rest: Pose, roam: &Roam) -> f64 {
    let Floor::Levels(levels) = &bay.garage.floor else {
        return 0.0;
    };
    if roam.is_place() {
        return 0.0;
    }
    let grid = (-PLACES..=PLACES).map(|place| f64::from(place) / f64::from(PLACES));
    let grid: Vec<DVec2> = grid
        .clone()
        .flat_map(|x| grid.clone().map(move |y| DVec2::new(x, y)))
        .collect();
    let mut most: f64 = 0.0;
    for wheel in 0..4 {
        let at = rest.point(vehicle::wheel_middle_m(&bay.vehicle, wheel));
        let half = roam.of_the_vehicle(at);
        let here = floor_level_m(bay, at.x, at.y);
        for by in &grid {
            let place = at.truncate() + half * *by;
            most = most.max((floor_level_m(bay, place.x, place.y) - here).abs());
        }
        for point in levels {
            let off = DVec2::new(point.x.m(), point.y.m()) - at.truncate();
            if off.abs().cmple(half).all() {
                most = most.max((point.level.m() - here).abs());
            }
        }
    }
    most
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bay::FloorLevel;
    use crate::solids::attitude;
    use crate::solids::test_bay::test_bay;
    use crate::units::Length;

    /// Off the middle, the corners and the grid between.
    #[test]
    fn a_high_point_under_a_roaming_tyre_is_seen() {
        let mut bay = test_bay();
        let whole = Piece::whole(&Uncertainty::worst(&bay));
        let rest = attitude::at_rest(&bay, whole.middle).unwrap();
        let tyre = rest.point(vehicle::wheel_middle_m(&bay.vehicle, 0));
        let half = Roam::new(&bay, whole, rest).of_the_vehicle(tyre);
        let high = tyre.truncate() + half * DVec2::new(0.61, -0.37);
        let at = |x: f64, y: f64, level: f64| FloorLevel {
            x: Length::metres(x),
            y: Length::metres(y),
            level: Length::metres(level),
        };
        let around = |by: f64| at(high.x + by, high.y + by, 0.0);
        bay.garage.floor = Floor::Levels(vec![
            at(high.x, high.y, 0.02),
            around(0.1),
            around(-0.1),
            around(0.12),
        ]);
        let here = floor_level_m(&bay, tyre.x, tyre.y);
        let roam = Roam::new(&bay, whole, rest);
        assert!(here < 0.019, "{here}");
        assert!(roam.standing(0.0).x >= 2.0 * (0.02 - here) - 1e-12);
        assert!(
            Roam::new(&bay, Piece::at(whole.middle), rest)
                .standing(0.0)
                .x
                <= 0.0
        );
    }
}
