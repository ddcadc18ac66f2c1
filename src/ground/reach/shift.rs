//! How must the vehicle be moved so that all four arms reach?

use glam::DVec2;

use super::least::{Curve, shortest};
use crate::bay::{Aim, Bay, Corner, UnitSystem};
use crate::clearance::StudyError;
use crate::clearance::reach::{Places, bearing_radius_m, miss_m, with_doubtful_arms};
use crate::clearance::uncertainty::Uncertainty;
use crate::solids::arms;
use crate::units::{Angle, Length};

/// Moves are looked for up to here, metres: farther than any arm could follow.
const LONGEST_M: f64 = 2.0;
/// Moves for which the restraint's teeth are looked at, at most.
const MOST_TEETH_TRIED: usize = 1000;
/// Teeth looked at to either side of those about the swing asked for.
const TEETH_AROUND: i32 = 1;

/// What the four arms ask of the vehicle's place.
pub(super) struct Wanted<'a> {
    bay: &'a Bay,
    doubtful: Bay,
    uncertainty: Uncertainty,
    /// The arm that falls farthest short first, since it rules out most moves.
    places: Vec<Places>,
}

/// The shortest move after which all four arms reach wherever the driver may stop.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Least {
    /// To the right and into the bay, metres.
    pub by_m: DVec2,
    /// True when no shorter one does; else restraint teeth decide, and it is the shortest of those
    /// tried.
    pub is_proved: bool,
}

/// Why there is no move.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NoMove {
    /// None up to two metres brings every point within reach of its arm.
    Beyond,
    /// Some do, but none was found at which the restraint's teeth hold every arm.
    Teeth,
}

impl<'a> Wanted<'a> {
    pub(super) fn new(bay: &'a Bay, uncertainty: Uncertainty) -> Result<Self, StudyError> {
        let doubtful = with_doubtful_arms(bay, &uncertainty);
        let mut places = Vec::with_capacity(4);
        for corner in Corner::ALL {
            let places_of = Places::new(bay, corner, &uncertainty)?;
            let short_m = places_of
                .reach(bay, &doubtful, &uncertainty, DVec2::ZERO)
                .short_m;
            places.push((short_m, places_of));
        }
        places.sort_by(|a, b| b.0.total_cmp(&a.0));
        Ok(Self {
            bay,
            doubtful,
            uncertainty,
            places: places.into_iter().map(|(_, places)| places).collect(),
        })
    }

    /// Whether every arm's sectors hold its point for every place, teeth not counted.
    pub(super) fn within_sectors(&self, move_m: DVec2) -> bool {
        self.places
            .iter()
            .all(|places| places.within_sectors(self.bay, &self.doubtful, move_m))
    }

    /// Whether every arm reaches wherever the driver may stop, as the study asks it.
    pub(super) fn all_reach(&self, move_m: DVec2) -> bool {
        self.within_sectors(move_m)
            && self.places.iter().all(|places| {
                places
                    .reach(self.bay, &self.doubtful, &self.uncertainty, move_m)
                    .holds()
            })
    }

    /// The shortest move.
    ///
    /// # Errors
    /// When there is none, or none was found.
    pub(super) fn least(&self) -> Result<Least, NoMove> {
        let mut curves = self.sector_curves();
        let by_m = shortest(&curves, LONGEST_M, |move_m| self.within_sectors(move_m))
            .ok_or(NoMove::Beyond)?;
        if self.all_reach(by_m) {
            return Ok(Least {
                by_m,
                is_proved: true,
            });
        }
        curves.extend(self.teeth_curves(by_m));
        let mut tried = 0;
        let by_m = shortest(&curves, LONGEST_M, |move_m| {
            if tried >= MOST_TEETH_TRIED || !self.within_sectors(move_m) {
                return false;
            }
            tried += 1;
            self.all_reach(move_m)
        })
        .ok_or(NoMove::Teeth)?;
        Ok(Least {
            by_m,
            is_proved: false,
        })
    }

    /// Everything that bounds the moves for which all sectors hold their points.
    fn sector_curves(&self) -> Vec<Curve> {
        let mut curves = Vec::new();
        for places in &self.places {
            let arm = &self.doubtful.lift.arms[places.corner.index()];
            let pivot = arms::pivot_m(self.bay, places.corner);
            let (shortest, longest) = (arm.shortest.m(), arm.longest.m());
            let limits = [arm.swing_min, arm.swing_max].map(Angle::rad);
            let along = |swing: f64| arms::pad_m(self.bay, places.corner, swing, 1.0) - pivot;
            let bounded = |place: DVec2, with_outer: bool, curves: &mut Vec<Curve>| {
                let through = pivot - place;
                let circle = |radius| Curve::Circle {
                    middle: through,
                    radius,
                };
                curves.push(circle(shortest));
                if with_outer {
                    curves.push(circle(longest));
                }
                curves.extend(limits.map(|swing| Curve::Line {
                    through,
                    along: along(swing),
                }));
            };
            for &place in &places.corners {
                bounded(place, true, &mut curves);
            }
            if places.corners.len() < 2 {
                continue;
            }
            // The point of the box about them nearest to the pivot: a corner of that box, or on
            // one of its sides straight beside the pivot.
            let (low, high) = (places.low, places.high);
            for place in [
                low,
                high,
                DVec2::new(low.x, high.y),
                DVec2::new(high.x, low.y),
            ] {
                bounded(place, false, &mut curves);
            }
            let (to_low, to_high) = (pivot - low, pivot - high);
            for through in [
                to_low,
                to_high,
                to_low + DVec2::splat(shortest),
                to_high - DVec2::splat(shortest),
            ] {
                for along in [DVec2::X, DVec2::Y] {
                    curves.push(Curve::Line { through, along });
                }
            }
        }
        curves
    }

    /// What the restraint's teeth add, about a move: where half a pitch is as much as the pad
    /// bridges, and where the nearer tooth is.
    fn teeth_curves(&self, about: DVec2) -> Vec<Curve> {
        let pad_m = bearing_radius_m(self.bay);
        let mut curves = Vec::new();
        for places in &self.places {
            let arm = &self.bay.lift.arms[places.corner.index()];
            let Some(pitch) = arm.tooth.map(Angle::rad).filter(|&pitch| pitch > 0.0) else {
                continue;
            };
            let pivot = arms::pivot_m(self.bay, places.corner);
            let ends: Vec<(DVec2, arms::ArmReach)> = [places.low, places.high]
                .into_iter()
                .chain(places.corners.iter().copied())
                .map(|place| {
                    (
                        place,
                        arms::reach_to(self.bay, places.corner, place + about),
                    )
                })
                .collect();
            let bridged = pad_m / (pitch * 0.5).sin();
            let farthest = ends.iter().map(|end| end.1.reach_m).fold(0.0, f64::max);
            let nearest = ends
                .iter()
                .map(|end| end.1.reach_m)
                .fold(f64::INFINITY, f64::min);
            if farthest <= bridged {
                continue;
            }
            let off = (pad_m / farthest).asin() - miss_m(&self.uncertainty) / nearest.max(1e-3);
            let by_swing = |a: &&(DVec2, arms::ArmReach), b: &&(DVec2, arms::ArmReach)| {
                a.1.swing_rad.total_cmp(&b.1.swing_rad)
            };
            let by_reach = |a: &&(DVec2, arms::ArmReach), b: &&(DVec2, arms::ArmReach)| {
                a.1.reach_m.total_cmp(&b.1.reach_m)
            };
            if let Some((place, _)) = ends.iter().max_by(by_reach) {
                curves.push(Curve::Circle {
                    middle: pivot - *place,
                    radius: bridged,
                });
            }
            // Wider than the teeth hold, no swing does.
            if off <= 0.0 {
                continue;
            }
            let extremes = [ends.iter().min_by(by_swing), ends.iter().max_by(by_swing)];
            for (place, reach) in extremes.into_iter().flatten() {
                let first = (reach.swing_rad / pitch).floor();
                for tooth in -TEETH_AROUND..=TEETH_AROUND + 1 {
                    for side in [-off, off] {
                        let swing = (first + f64::from(tooth)) * pitch + side;
                        curves.push(Curve::Line {
                            through: pivot - *place,
                            along: arms::pad_m(self.bay, places.corner, swing, 1.0) - pivot,
                        });
                    }
                }
            }
        }
        curves
    }
}

/// The bay with the vehicle parked elsewhere: so far to the right and into the bay.
#[must_use]
pub fn moved(bay: &Bay, by_m: DVec2) -> Bay {
    let mut moved = bay.clone();
    moved.parking.across = bay.parking.across + Length::metres(by_m.x);
    let along = Length::metres(by_m.y);
    moved.parking.aim = match bay.parking.aim {
        Aim::CentreOfGravity(offset) => Aim::CentreOfGravity(offset + along),
        Aim::LiftPoints(offset) => Aim::LiftPoints(offset + along),
    };
    moved
}

/// The steps that moves are told in, metres: a fine one that a tape shows, and a coarse one.
pub(super) fn steps_m(units: UnitSystem) -> [f64; 2] {
    match units {
        UnitSystem::Imperial => [0.25, 1.0].map(|inches| Length::inches(inches).m()),
        UnitSystem::Metric => [0.005, 0.025],
    }
}

/// Moves in whole steps about a place, the shortest first.
pub(super) fn whole_steps(about: DVec2, step_m: f64, around: i32) -> Vec<DVec2> {
    let middle = (about / step_m).round();
    let mut found: Vec<DVec2> = (-around..=around)
        .flat_map(|x| (-around..=around).map(move |y| DVec2::new(x.into(), y.into())))
        .map(|offset| (middle + offset) * step_m)
        .collect();
    found.sort_by(|a, b| a.length_squared().total_cmp(&b.length_squared()));
    found
}

#[cfg(test)]
mod tests;
