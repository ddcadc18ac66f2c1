//! What an arm and its pad may cover, over the parking box and the restraint's teeth.

use glam::DVec3;

use super::body::Body;
use super::movers::chord_bulge_m;
use super::reach::miss_m;
use super::uncertainty::Uncertainty;
use crate::bay::{Arm, Bay, Corner};
use crate::solids::{Pose, Solid, arms};
use crate::units::Angle;

/// The arm and the pad of one corner over the parking box, resting at either neighbouring tooth; without
/// what leaning columns add with the height.
///
/// `rest` is the vehicle on its tyres as parked, `rests` at the corners of the parking box.
pub(super) fn arm_bodies(
    bay: &Bay,
    corner: Corner,
    uncertainty: &Uncertainty,
    rest: Pose,
    rests: &[Pose],
) -> Vec<(Solid, Body)> {
    let nominal = arms::reach_from(bay, corner, rest);
    let solids = arms::arm_and_pad(bay, corner, nominal.swing_rad, nominal.reach_m);
    if *uncertainty == Uncertainty::NONE {
        return solids
            .into_iter()
            .map(|solid| {
                let body = Body::exact(&solid);
                (solid, body)
            })
            .collect();
    }
    // The pad follows its lift point, whose place on the vehicle is measured.
    let follows = DVec3::new(uncertainty.vehicle_m, uncertainty.vehicle_m, 0.0);
    let spread = uncertainty.placed_lift_spread() + follows;
    let arm = &bay.lift.arms[corner.index()];
    let (mut least, mut most) = (nominal.swing_rad, nominal.swing_rad);
    let (mut nearest, mut farthest) = (nominal.reach_m, nominal.reach_m);
    for rest in rests {
        let place = arms::reach_from(bay, corner, *rest);
        nearest = nearest.min(place.reach_m);
        farthest = farthest.max(place.reach_m);
        least = least.min(place.swing_rad);
        most = most.max(place.swing_rad);
    }
    // What may be off turns the arm as well, and may carry it over to the next tooth.
    let turn = miss_m(uncertainty) / nearest.max(1e-3);
    let (least, most) = outer_teeth(arm, least - turn, most + turn);
    // A tooth holds for a range of places, so any swing may come with any reach.
    let mut bodies = [Vec::new(), Vec::new()];
    for swing in [least, most] {
        for reach in [nearest, farthest] {
            let posed = arms::arm_and_pad(bay, corner, swing, reach);
            for (bodies, solid) in bodies.iter_mut().zip(posed) {
                bodies.push(Body::of(&solid.shape, &[solid.bay_from_solid], spread));
            }
        }
    }
    // The hull's straight sides cut across the arcs between the swings; the same allowance covers
    // the reach to a place between two corners of the parking box.
    let longest = arm.longest.m() + bay.lift.pad.diameter.max(arm.section_width).m();
    let bulge = chord_bulge_m(longest, most - least);
    solids
        .into_iter()
        .zip(bodies)
        .map(|(solid, bodies)| {
            let body = Body::hull(bodies).widened(DVec3::new(bulge, bulge, 0.0));
            (solid, leading(&body, uncertainty))
        })
        .collect()
}

/// The outermost swings at which an arm wanted anywhere between two swings may come to rest: the
/// teeth about them, within the limits.
pub(crate) fn outer_teeth(arm: &Arm, least: f64, most: f64) -> (f64, f64) {
    let (low, high) = arm
        .tooth
        .map(Angle::rad)
        .filter(|tooth| *tooth > 0.0)
        .map_or((least, most), |tooth| {
            (
                (least / tooth).floor() * tooth,
                (most / tooth).ceil() * tooth,
            )
        });
    let (from, to) = (arm.swing_min.rad(), arm.swing_max.rad());
    // An arm that is wanted beyond a limit stands at the limit.
    (low.max(from).min(to), high.min(to).max(from))
}

/// A lift part whose carriage may lead: the travel is that of the lower carriage, so it stands
/// anywhere up to the mismatch higher.
pub(super) fn leading(body: &Body, uncertainty: &Uncertainty) -> Body {
    if uncertainty.mismatch_m > 0.0 {
        body.swept(DVec3::Z * uncertainty.mismatch_m)
    } else {
        body.clone()
    }
}

/// The swings at which an arm may come to rest: either neighbouring tooth within the limits, or
/// the swing itself when no tooth is.
pub(crate) fn resting_swings(reach: &arms::ArmReach) -> Vec<f64> {
    let mut swings: Vec<f64> = reach
        .rests
        .iter()
        .filter(|rest| rest.within_limits)
        .map(|rest| rest.swing_rad)
        .collect();
    swings.push(reach.swing_rad);
    // On a tooth, and without any, they are one and the same.
    swings.dedup_by_key(|swing| swing.to_bits());
    swings
}
