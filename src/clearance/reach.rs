//! Do the arms reach, with every ± against them?

use glam::DVec2;

use super::findings::ArmFinding;
use super::movers::MoverError;
use super::uncertainty::Uncertainty;
use crate::bay::{Bay, Corner};
use crate::solids::arms::{self, ArmReach};
use crate::solids::{ParkingError, attitude, vehicle};
use crate::units::{Angle, Length};

/// What of a pad's radius must lie beyond its lift point, so that the point bears on the pad and
/// not on its rim. Common practice, no source.
const RIM_M: f64 = 0.010;

/// How far a lift point may lie from the middle of its pad.
pub(crate) fn bearing_radius_m(bay: &Bay) -> f64 {
    (bay.lift.pad.diameter.m() * 0.5 - RIM_M).max(0.0)
}

/// How far a pad may miss its lift point in plan, along the arm or across it: the arm's length
/// and its pivot are measured on the lift, the lift point's place on the vehicle, and both places
/// that are lined up on either.
pub(crate) fn miss_m(uncertainty: &Uncertainty) -> f64 {
    miss_plan_m(uncertainty).length() + uncertainty.lift_m
}

/// How far a lift point may be off to its arm's pivot: across, along.
pub(crate) fn miss_plan_m(uncertainty: &Uncertainty) -> DVec2 {
    let (lift, vehicle) = (uncertainty.lift_m, uncertainty.vehicle_m);
    let place = uncertainty.lined_up_spread();
    // Across: half spacing of the points, middle of the posts, pivot. Along: station, lining up,
    // pivot.
    // The pivot goes with its post, the point with what is carried.
    let point = uncertainty.in_plan(DVec2::splat(vehicle));
    let pivot = DVec2::splat(lift);
    point + place.truncate() + pivot + uncertainty.posts_m.truncate()
}

/// The bay with its arms' limits drawn in by what may be off, so that what these arms reach the
/// true ones reach too. An arm whose limits meet keeps the middle between them.
#[must_use]
pub fn with_doubtful_arms(bay: &Bay, uncertainty: &Uncertainty) -> Bay {
    let miss = miss_m(uncertainty);
    let mut drawn_in = bay.clone();
    for arm in &mut drawn_in.lift.arms {
        let turn = miss / arm.shortest.m().max(miss).max(1e-3);
        let (low, high) = between(arm.shortest.m() + miss, arm.longest.m() - miss);
        arm.shortest = Length::metres(low);
        arm.longest = Length::metres(high);
        let (low, high) = between(arm.swing_min.rad() + turn, arm.swing_max.rad() - turn);
        arm.swing_min = Angle::radians(low);
        arm.swing_max = Angle::radians(high);
    }
    drawn_in
}

fn between(low: f64, high: f64) -> (f64, f64) {
    if low <= high {
        (low, high)
    } else {
        let middle = (low + high) * 0.5;
        (middle, middle)
    }
}

/// Where one arm's lift point may lie in plan, bay axes, metres: as parked, and over the parking
/// box.
#[derive(Debug, Clone)]
pub(crate) struct Places {
    /// Which arm.
    pub(crate) corner: Corner,
    /// As parked.
    pub(crate) nominal: DVec2,
    /// At the corners of the parking box.
    pub(crate) corners: Vec<DVec2>,
    /// The box about those.
    pub(crate) low: DVec2,
    /// Its other corner.
    pub(crate) high: DVec2,
}

impl Places {
    /// Of one arm.
    ///
    /// # Errors
    /// When the vehicle's place is not known.
    pub(crate) fn new(
        bay: &Bay,
        corner: Corner,
        uncertainty: &Uncertainty,
    ) -> Result<Self, MoverError> {
        let index = vehicle::lift_point_at(corner, bay.parking.facing);
        let point = vehicle::lift_point_m(&bay.vehicle, index);
        let at = |error: ParkingError| {
            attitude::at_rest(bay, error).map(|rest| rest.point(point).truncate())
        };
        let corners = uncertainty
            .parking_corners()
            .into_iter()
            .map(at)
            .collect::<Result<Vec<_>, _>>()?;
        let nominal = at(ParkingError::default())?;
        let (low, high) = corners
            .iter()
            .fold((nominal, nominal), |(low, high), place| {
                (low.min(*place), high.max(*place))
            });
        Ok(Self {
            corner,
            nominal,
            corners,
            low,
            high,
        })
    }

    /// The places that decide once the vehicle is moved by `shift`: the corners of the parking
    /// box, and the point of the box about them that is nearest to the arm's pivot (what is too
    /// near may lie between corners).
    fn deciding(&self, bay: &Bay, shift: DVec2) -> impl Iterator<Item = DVec2> + '_ {
        let nearest = arms::pivot_m(bay, self.corner).clamp(self.low + shift, self.high + shift);
        self.corners
            .iter()
            .map(move |place| *place + shift)
            .chain([nearest])
    }

    /// Whether the arm's sectors hold every place with the vehicle moved by `shift`, teeth not
    /// counted. `doubtful` is the bay [`with_doubtful_arms`].
    pub(crate) fn within_sectors(&self, bay: &Bay, doubtful: &Bay, shift: DVec2) -> bool {
        let reaches =
            |bay: &Bay, place: DVec2| arms::reach_to(bay, self.corner, place).shortfall_m <= 0.0;
        reaches(bay, self.nominal + shift)
            && self
                .deciding(bay, shift)
                .all(|place| reaches(doubtful, place))
    }

    /// How the arm reaches with the vehicle moved by `shift`.
    pub(crate) fn reach(
        &self,
        bay: &Bay,
        doubtful: &Bay,
        uncertainty: &Uncertainty,
        shift: DVec2,
    ) -> Reached {
        let nominal = arms::reach_to(bay, self.corner, self.nominal + shift);
        let mut short_m = nominal.shortfall_m;
        let mut short = nominal.short;
        let mut asked = vec![nominal];
        for place in self.deciding(bay, shift) {
            asked.push(arms::reach_to(bay, self.corner, place));
            let reach = arms::reach_to(doubtful, self.corner, place);
            if reach.shortfall_m.is_nan() || reach.shortfall_m > short_m {
                short_m = reach.shortfall_m;
                short = reach.short;
            }
        }
        let nearest = asked
            .iter()
            .map(|one| one.reach_m)
            .fold(f64::INFINITY, f64::min);
        let turn = miss_m(uncertainty) / nearest.max(1e-3);
        let off_m = tooth_off_m(bay, self.corner, &asked, turn);
        Reached {
            nominal,
            short_m,
            short,
            off_m,
            teeth_m: (off_m - bearing_radius_m(bay)).max(0.0),
        }
    }
}

/// How one arm reaches over the parking box.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Reached {
    /// As parked and written.
    pub(crate) nominal: ArmReach,
    /// What its sector falls short at worst, metres; 0 when it holds every place.
    pub(crate) short_m: f64,
    /// Why it does.
    pub(crate) short: Option<arms::Short>,
    /// How far the restraint's teeth keep the pad's middle from its point at worst, metres.
    pub(crate) off_m: f64,
    /// What of that is beyond where a pad still bears, metres.
    pub(crate) teeth_m: f64,
}

impl Reached {
    /// Whether the pad comes under its point wherever the driver may stop. What is no number does
    /// not.
    pub(crate) fn holds(&self) -> bool {
        self.short_m + self.teeth_m <= 0.0
    }
}

/// How far from the swing asked of it an arm may come to rest, to the nearer tooth within its
/// limits; none when no tooth is.
fn to_nearer_tooth(reach: &ArmReach) -> Option<f64> {
    reach
        .rests
        .iter()
        .filter(|rest| rest.within_limits)
        .map(|rest| (rest.swing_rad - reach.swing_rad).abs())
        .min_by(f64::total_cmp)
}

/// How far the pad's middle misses its lift point, resting at the nearer tooth, for
/// any swing between the least and the greatest of `asked`, each up to `turn` off.
///
/// The distance to the nearer tooth rises to half a pitch between two teeth and falls again, so it
/// is the greatest at an end of the range unless the range holds such a middle.
fn tooth_off_m(bay: &Bay, corner: Corner, asked: &[ArmReach], turn: f64) -> f64 {
    let Some(tooth) = bay.lift.arms[corner.index()].tooth.map(Angle::rad) else {
        return 0.0;
    };
    if tooth <= 0.0 {
        return 0.0;
    }
    let mut farthest_m: f64 = 0.0;
    let mut off: f64 = 0.0;
    let (mut least, mut most) = (f64::INFINITY, f64::NEG_INFINITY);
    for reach in asked {
        farthest_m = farthest_m.max(reach.reach_m);
        least = least.min(reach.swing_rad);
        most = most.max(reach.swing_rad);
        match to_nearer_tooth(reach) {
            // Between two teeth it is never more than half a pitch to the nearer one; beside a
            // limit that cuts off one of the two it may be.
            Some(to_tooth) => {
                let both = reach.rests.iter().all(|rest| rest.within_limits);
                let most = if both { tooth * 0.5 } else { tooth };
                off = off.max((to_tooth + turn).min(most));
            }
            // No tooth within the limits: the restraint can't hold the arm where it is wanted.
            None => return reach.reach_m,
        }
    }
    let first_middle = (((least - turn) / tooth - 0.5).ceil() + 0.5) * tooth;
    if first_middle <= most + turn {
        off = off.max(tooth * 0.5);
    }
    farthest_m * off.sin()
}

/// Whether each arm reaches: as parked and written, and at worst over the parking box with every
/// ± against it.
///
/// # Errors
/// When the vehicle's place is not known.
pub(super) fn arm_findings(
    bay: &Bay,
    uncertainty: &Uncertainty,
) -> Result<[ArmFinding; 4], MoverError> {
    let doubtful = with_doubtful_arms(bay, uncertainty);
    let mut findings = Vec::with_capacity(4);
    for corner in Corner::ALL {
        let places = Places::new(bay, corner, uncertainty)?;
        let found = places.reach(bay, &doubtful, uncertainty, DVec2::ZERO);
        let why_teeth = (found.teeth_m > 0.0 && found.short.is_none())
            .then(|| "its restraint's teeth are too far apart to hold it there".to_owned());
        findings.push(ArmFinding {
            corner,
            reach_m: places.nominal.distance(arms::pivot_m(bay, corner)),
            swing_rad: found.nominal.swing_rad,
            shortfall_m: found.nominal.shortfall_m,
            worst_shortfall_m: found.short_m + found.teeth_m,
            pad_off_m: found.off_m,
            why: why_teeth.or(found.short.map(|short| {
                match short {
                    arms::Short::TooFar => "the lift point is beyond its longest reach",
                    arms::Short::TooNear => "the lift point is nearer than its shortest reach",
                    arms::Short::SwingLimit => "it cannot swing that far",
                }
                .to_owned()
            })),
        });
    }
    findings.try_into().map_err(|_| MoverError::NotANumber)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::solids::test_bay::test_bay;

    #[test]
    fn an_arm_that_only_just_reaches_on_paper_does_not_reach_for_certain() {
        let mut bay = test_bay();
        bay.lift.side_mismatch = Length::ZERO;
        let corner = Corner::RearLeft;
        let asked = arms::reach(&bay, corner, ParkingError::default())
            .unwrap()
            .reach_m;
        bay.lift.arms[corner.index()].longest = Length::metres(asked + 0.001);
        let uncertainty = Uncertainty {
            lift_m: 0.002,
            vehicle_m: 0.006,
            ..Uncertainty::NONE
        };
        let exact = arm_findings(&bay, &Uncertainty::NONE).unwrap();
        assert!(exact[corner.index()].worst_shortfall_m <= 0.0);
        let doubted = arm_findings(&bay, &uncertainty).unwrap();
        // Across 6 + 2 + 2 mm, along 6 + (2 + 6) + 2 mm, the arm's own 2 mm:
        // hypot(10, 16) + 2 - 1 = 19.868 mm short.
        let short = doubted[corner.index()].worst_shortfall_m;
        assert!((short - 0.019_868).abs() < 1e-4, "{short}");
    }

    #[test]
    fn wide_teeth_count_wherever_in_the_box_the_arm_is_wanted_between_two() {
        let mut bay = test_bay();
        let corner = Corner::FrontLeft;
        let asked = arms::reach(&bay, corner, ParkingError::default()).unwrap();
        // The arm is wanted exactly on a tooth as parked, but half a pitch beside it within the
        // box.
        bay.lift.arms[corner.index()].tooth = Some(Angle::radians(asked.swing_rad));
        let half = asked.reach_m * (asked.swing_rad * 0.5).sin() - bay.lift.pad.diameter.m() * 0.5;
        assert!(half > 0.0, "the pad would bridge half a pitch");
        let exact = arm_findings(&bay, &Uncertainty::NONE).unwrap();
        assert!(exact[corner.index()].worst_shortfall_m <= 1e-9);
        let box_of = Uncertainty {
            parking: ParkingError {
                along_m: asked.reach_m,
                ..ParkingError::default()
            },
            ..Uncertainty::NONE
        };
        bay.lift.arms[corner.index()].longest = Length::metres(9.0);
        bay.lift.arms[corner.index()].shortest = Length::metres(0.001);
        bay.lift.arms[corner.index()].swing_min = Angle::degrees(-170.0);
        bay.lift.arms[corner.index()].swing_max = Angle::degrees(170.0);
        let found = arm_findings(&bay, &box_of).unwrap();
        assert!(found[corner.index()].worst_shortfall_m >= half - 1e-9);
    }

    #[test]
    fn a_point_on_the_rim_of_its_pad_is_not_reached() {
        let mut bay = test_bay();
        let corner = Corner::FrontLeft;
        let asked = arms::reach(&bay, corner, ParkingError::default()).unwrap();
        let arm = &mut bay.lift.arms[corner.index()];
        (arm.shortest, arm.longest) = (Length::metres(0.001), Length::metres(9.0));
        arm.swing_min = Angle::degrees(-170.0);
        arm.swing_max = Angle::degrees(170.0);
        // The arm is wanted half way between two teeth.
        arm.tooth = Some(Angle::radians(asked.swing_rad / 1.5));
        let off = asked.reach_m * (asked.swing_rad / 3.0).sin();
        let short = |bay: &mut Bay, radius: f64| {
            bay.lift.pad.diameter = Length::metres(2.0 * radius);
            let found = arm_findings(bay, &Uncertainty::NONE).unwrap();
            let arm = &found[corner.index()];
            assert!((arm.pad_off_m - off).abs() < 1e-9, "{arm:?}");
            arm.worst_shortfall_m
        };
        // 5 mm inside the rim, and 11 mm inside it.
        assert!((short(&mut bay, off + 0.005) - 0.005).abs() < 1e-9);
        assert!(short(&mut bay, off + 0.011) <= 0.0);
    }

    #[test]
    fn what_is_too_near_between_two_corners_of_the_box_is_found() {
        let mut bay = test_bay();
        let corner = Corner::FrontLeft;
        let pivot = arms::pivot_m(&bay, corner);
        let asked = arms::reach(&bay, corner, ParkingError::default()).unwrap();
        // The box reaches so far along that the pivot lies beside it, not beyond a corner.
        let uncertainty = Uncertainty {
            parking: ParkingError {
                along_m: 1.0,
                ..ParkingError::default()
            },
            ..Uncertainty::NONE
        };
        let nearest = (asked.lift_point_m.x - pivot.x).abs();
        bay.lift.arms[corner.index()].shortest = Length::metres(nearest + 0.05);
        bay.lift.arms[corner.index()].longest = Length::metres(9.0);
        bay.lift.arms[corner.index()].swing_min = Angle::degrees(-170.0);
        bay.lift.arms[corner.index()].swing_max = Angle::degrees(170.0);
        let found = arm_findings(&bay, &uncertainty).unwrap();
        let short = found[corner.index()].worst_shortfall_m;
        assert!((short - 0.05).abs() < 1e-6, "{short}");
    }
}
