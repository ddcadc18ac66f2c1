//! The bay with its posts where they stand.
//!
//! Both columns' mean place, their spacing and the mean height of their feet go into the bay as they
//! are. How the columns lean goes in too: on the way up carriages, arms, pads and what they carry are
//! taken along it ([`crate::clearance::leaning`]). What is left beside that counts against the rise as
//! a ± of every body of the lift, at all heights: one post ahead of the other, a turn at the farthest
//! pad, a lean in height over the arms, a plate higher than the other, three standard deviations of
//! each, and what one slip of the tape or of the plumb that may not show can move. Whatever is judged without the way
//! up (the columns themselves, whether arms reach, what an arm may touch) has the lean over the
//! column's whole height as a ± too.

use super::contact::Contact;
use super::places::{Planned, SIDES, index};
use super::plumb::Lean;
use super::shims::{PostShims, corners, levels};
use super::{COVERAGE, Held, IN_STUDY, PostPlace};
use crate::bay::{Bay, Corner, LeaningColumns, Lift, Measured, PostsOff, Side, Tie};
use crate::solids::posts::{self, column_middle_x_m};
use crate::solids::{ParkingError, Role, arms, attitude, vehicle};
use crate::units::Length;
use glam::DVec2;

/// The bay as it stands.
#[derive(Debug, Clone, PartialEq)]
pub struct Standing {
    /// The bay for the study, without the pairs of one post and what it carries or has beside it.
    pub bay: Bay,
    /// The bay for those pairs, which are off together: without [`PostsOff`], and the lift's ± wider
    /// by what a turned post does to an arm that points where it is wanted. What either bay stops is
    /// stopped.
    pub one_post: Bay,
    /// The part of its ± that is lean, metres at the top of the column.
    pub lean_m: [f64; 2],
    /// How far both columns' feet together are over the floor that the bay file has them on.
    pub raised_m: f64,
    /// How far the right column's foot is higher than the left one's by levels and shims; none where
    /// the floor was not levelled under both.
    pub right_higher_m: Option<f64>,
}

/// The bay with its posts where they stand.
#[must_use]
pub fn as_they_stand(
    bay: &Bay,
    planned: &Planned,
    (posts, held): (&[PostPlace; 2], &[Held; 2]),
    leans: &[[Option<Lean>; 2]; 2],
    (shims, measured): (&[PostShims; 2], &Measured),
) -> Standing {
    let lift = &bay.lift;
    let moved = SIDES.map(|side| {
        let i = index(side);
        let from_plate = planned.column_m[i] - planned.middle_m[i];
        posts[i].off_m + DVec2::from_angle(posts[i].turn_rad).rotate(from_plate) - from_plate
    });
    let mean = (moved[0] + moved[1]) * 0.5;
    let wider = moved[1].x - moved[0].x;
    let mut world = bay.clone();
    world.lift.across = lift.across + Length::metres(mean.x);
    world.lift.post_line = lift.post_line + Length::metres(mean.y);
    world.lift.spacing = lift.spacing + Length::metres(wider);
    // Between the carriages there is as much more or less room.
    world.lift.drive_through = lift.drive_through + Length::metres(wider.min(0.0));

    let high = lift.column.height.m();
    let mut off = DVec2::ZERO;
    let mut placed = DVec2::ZERO;
    let mut carried = DVec2::ZERO;
    let mut set = DVec2::ZERO;
    let mut leaning = [DVec2::ZERO; 2];
    let mut within = [DVec2::ZERO; 2];
    let mut lean_m = [0.0; 2];
    let mut up: f64 = 0.0;
    for side in SIDES {
        let i = index(side);
        let post = &posts[i];
        let reach = farthest_m(bay, side);
        let leans = [0, 1]
            .map(|axis| leans[i][axis].map_or([0.0; 2], |lean| may_lean(lean, &shims[i], axis)));
        leaning[i] = DVec2::from(leans.map(|[low, high]| 0.5 * (low + high)));
        let read = DVec2::from(leans.map(|[low, high]| 0.5 * (high - low)));
        // It was read at one place of what its plate can rock, and may stand at any under a load.
        within[i] = read + shims[i].rocking(lift);
        let slope = leaning[i].abs() + within[i];
        lean_m[i] = (slope * high).length();
        // Parts reach as far from the plate's middle as from the column's, and what lies between.
        let far = reach + (planned.column_m[i] - planned.middle_m[i]).abs();
        let turn = post.turn_rad.abs();
        // A turn moves a point across by how far it is along, and the other way round; what is left of
        // the circle is less than half its square.
        let most = post.most_turn_rad();
        let turned = turn * DVec2::new(far.y, far.x) + 0.5 * most * most * far.length();
        let apart = (moved[i] - mean).abs() * DVec2::Y;
        let foot = held[i].within_m(far) + turned + apart;
        off = off.max(foot + slope * high);
        // What a tipped column is off the straight line that a slope makes of its way.
        let bent = 0.5 * slope.length_squared() * (high + far.length());
        placed = placed.max(foot + DVec2::splat(bent));
        let known = held[i].within_m(DVec2::ZERO);
        set = set.max(known);
        // Set on the pads where it was parked, the vehicle goes with them as they go sideways.
        carried = carried.max(known + slope * lift.travel.m());
        // A column that leans tips its carriage, and lowers its top.
        let drops = 0.5 * high * slope.length_squared();
        up = up.max(slope.dot(reach) + drops);
    }
    let feet = feet(planned, shims, measured);
    up += feet.within_m;
    world.lift.posts_off = PostsOff {
        across: Length::metres(off.x),
        along: Length::metres(off.y),
        up: Length::metres(up),
        carried_across: Length::metres(carried.x),
        carried_along: Length::metres(carried.y),
        leaning: leans_at_all(&leaning, &within).then(|| LeaningColumns {
            slope: leaning.map(Into::into),
            within: within.map(Into::into),
            foot: [feet.raised_m - feet.within_m, feet.raised_m + feet.within_m]
                .map(Length::metres),
            placed: [placed.x, placed.y].map(Length::metres),
            set: [set.x, set.y].map(Length::metres),
        }),
    };
    raise(&mut world.lift, feet.raised_m);
    let mut one_post = world.clone();
    // Its own plate comes up with a column; where the plate's thickness spreads a load it is not
    // taken to be thicker.
    one_post.lift.base_plate.thickness += Length::metres(feet.raised_m);
    one_post.lift.posts_off = PostsOff::default();
    let turn = posts
        .iter()
        .map(PostPlace::most_turn_rad)
        .fold(0.0, f64::max);
    one_post.policy.measured_lift += Length::metres(turn * about_a_pivot_m(lift) / LIFT_SPREADS);
    Standing {
        bay: world,
        one_post,
        lean_m,
        raised_m: feet.raised_m,
        right_higher_m: feet.right_higher_m,
    }
}

/// From where to where a column may lean in one direction (0 across, 1 along), as slopes toward +x or +y.
/// Three standard deviations of the plumb; of one that was read once, a slip or a level out of true would
/// not show before the floor's levels contradict it: what those leave open counts with it. Read again, the
/// level turned end for end, it checks itself.
pub(super) fn may_lean(lean: Lean, shims: &PostShims, axis: usize) -> [f64; 2] {
    let off = IN_STUDY * lean.sd;
    let mut may = [lean.slope - off, lean.slope + off];
    if let (1, Some(contact)) = (lean.reads, shims.contact) {
        let off = IN_STUDY * shims.contact_sd[axis];
        let lies = contact.slopes.map(|slope| -slope[axis]);
        let by_plate = shims.plate_lean.map_or(lies, |plate| [plate[axis]; 2]);
        for one in by_plate {
            may = [may[0].min(one - off), may[1].max(one + off)];
        }
    }
    may
}

/// True where either column leans, or may.
fn leans_at_all(slopes: &[DVec2; 2], within: &[DVec2; 2]) -> bool {
    let mut any = slopes.iter().chain(within);
    any.any(|one| *one != DVec2::ZERO)
}

/// Everything that stands on the plates, or goes up and down on the columns, is this much higher over
/// the floor. Marks on the column count from the plate, and stay.
fn raise(lift: &mut Lift, by_m: f64) {
    let by = Length::metres(by_m);
    lift.column.height += by;
    lift.carriage.bottom += by;
    lift.pad.lowest += by;
    for arm in &mut lift.arms {
        arm.underside += by;
    }
    if let Some(unit) = &mut lift.power_unit {
        unit.bottom += by;
    }
    if let Tie::OverheadBeam { underside, .. } = &mut lift.tie {
        *underside += by;
    }
}

/// How many ± of the lift the study puts between a post and an arm of it: two about what stands,
/// three about what moves.
const LIFT_SPREADS: f64 = 5.0;

/// How far from an arm's pivot any point of its own column is at most: where an arm points is set by
/// the vehicle, so that a turned column turns about its pivots against its arms.
fn about_a_pivot_m(lift: &Lift) -> f64 {
    let column = lift.column.width.m().hypot(lift.column.depth.m());
    let pivots = lift.arms.iter();
    let off = pivots
        .map(|arm| arm.pivot_inward.m().hypot(arm.pivot_away.m()))
        .fold(0.0, f64::max);
    column + off
}

/// How far from a column's middle, across and along, any part on its side reaches: plate, power
/// unit, carriage, the arms as parked, and the pads under the vehicle over the parking box. What ties
/// the columns rides on both. Where the vehicle can't be set on its pads, the longest arm.
fn farthest_m(bay: &Bay, side: Side) -> DVec2 {
    let lift = &bay.lift;
    let column = DVec2::new(column_middle_x_m(bay, side), lift.post_line.m());
    let own = |role: Role| match role {
        Role::Post(of) | Role::BasePlate(of) | Role::PowerUnit(of) | Role::Carriage(of) => {
            of == side
        }
        Role::Arm(corner) | Role::Pad(corner) => corner.side() == side,
        _ => false,
    };
    let mut far = posts::posts(bay)
        .into_iter()
        .chain(posts::carriages(bay))
        .chain(arms::parked(bay))
        .filter(|solid| own(solid.role))
        .map(|solid| {
            let (low, high) = solid.bounds();
            let low = (low.truncate() - column).abs();
            low.max((high.truncate() - column).abs())
        })
        .fold(DVec2::ZERO, DVec2::max);
    let longest = lift
        .arms
        .iter()
        .map(|arm| arm.pivot_inward.m().hypot(arm.pivot_away.m()) + arm.longest.m())
        .fold(0.0, f64::max);
    let pad = lift.pad.diameter.m() * 0.5;
    let parking = &bay.parking;
    let parked = DVec2::new(parking.repeat_across.m(), parking.repeat_along.m());
    let rest = attitude::at_rest(bay, ParkingError::default());
    for corner in Corner::ALL.into_iter().filter(|one| one.side() == side) {
        let under = rest.as_ref().map_or(DVec2::splat(longest), |rest| {
            let index = vehicle::lift_point_at(corner, parking.facing);
            let at = rest.point(vehicle::lift_point_m(&bay.vehicle, index));
            let from = (at.truncate() - column).abs();
            // The vehicle yaws about a place within its own length.
            let yaw = parking.repeat_yaw.rad() * bay.vehicle.length.m();
            from + parked + DVec2::splat(yaw)
        });
        far = far.max(under + DVec2::splat(pad));
    }
    far
}

/// The heights of the columns' feet.
struct Feet {
    /// Both together, over the floor.
    raised_m: f64,
    /// How far either may be off that, either way.
    within_m: f64,
    right_higher_m: Option<f64>,
}

/// How far the columns' feet are off the floor that the study has them on: by their shims, and by what
/// the floor under the two plates is. Each plate stands on the corners that carry it; the floor is the
/// mean of its levels. Feet below that (plates lie in a hollow) count as a ±.
fn feet(planned: &Planned, shims: &[PostShims; 2], measured: &Measured) -> Feet {
    let mean = |values: [f64; 4]| values.iter().sum::<f64>() / 4.0;
    let floors = SIDES.map(|side| levels(measured, side).map(mean));
    let (feet, known, level_sd) = match (floors, [shims[0].foot_m, shims[1].foot_m]) {
        ([Some(left), Some(right)], [Some(one), Some(other)]) => {
            let floor = (left + right) * 0.5;
            let sd = measured.level_tolerance.m() / COVERAGE;
            ([one - floor, other - floor], true, sd)
        }
        // On a floor that was not levelled: by the shims alone.
        _ => {
            let on_shims = SIDES.map(|side| {
                let places = corners(side).map(|at| planned.corner_m(at));
                Contact::on(&places, &shims[index(side)].now_m).middle_m
            });
            (on_shims, false, 0.0)
        }
    };
    let raised_m = (0.5 * (feet[0] + feet[1])).max(0.0);
    let within = feet.map(|foot| (foot - raised_m).abs());
    // What is no number is not lost among the others: nothing is then shown clear.
    let most = if within.iter().any(|one| one.is_nan()) {
        f64::NAN
    } else {
        within[0].max(within[1])
    };
    Feet {
        raised_m,
        within_m: most + IN_STUDY * level_sd,
        right_higher_m: known.then_some(feet[1] - feet[0]),
    }
}
