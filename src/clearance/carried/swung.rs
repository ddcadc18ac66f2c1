//! An arm and its pad that go with a vehicle which may stand elsewhere: all that they may cover.

use std::cell::OnceCell;
use std::f64::consts::TAU;

use glam::{DVec2, DVec3};

use super::super::body::Body;
use super::super::movers::chord_bulge_m;
use super::parked::About;
use super::piece::Roam;
use crate::bay::{Bay, Corner};
use crate::solids::arms;

/// From where arms are looked at that go with a vehicle which may stand elsewhere.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum SeenFrom {
    /// From the vehicle: that stays where the piece's middle has it, and the pivot goes about.
    Vehicle,
    /// From the bay: the pivot stays, and the lift point goes about.
    Bay,
}

/// The arm and the pad of one corner, wherever they may come to rest.
pub(super) struct Swung<'a> {
    bay: &'a Bay,
    corner: Corner,
    /// The lift point with the vehicle in the piece's middle.
    point: DVec2,
    /// How far the one end goes about.
    off: DVec2,
    from: SeenFrom,
    abouts: [About; 2],
    /// Made where they are wanted.
    bodies: OnceCell<[Body; 2]>,
}

impl<'a> Swung<'a> {
    pub(super) fn new(
        bay: &'a Bay,
        corner: Corner,
        point: DVec3,
        roam: &Roam,
        from: SeenFrom,
    ) -> Self {
        let off = match from {
            SeenFrom::Vehicle => roam.of_the_lift(arms::pivot_m(bay, corner).extend(0.0)),
            SeenFrom::Bay => roam.of_the_vehicle(point),
        };
        let point = point.truncate();
        Self {
            bay,
            corner,
            point,
            off,
            from,
            abouts: abouts(bay, corner, point, off, from),
            bodies: OnceCell::new(),
        }
    }

    /// Arm and pad: never less than they may cover.
    pub(super) fn bodies(&self) -> &[Body; 2] {
        let made = || wherever(self.bay, self.corner, self.point, self.off, self.from).0;
        self.bodies.get_or_init(made)
    }

    /// Boxes about all that arm and pad may cover, which cost less.
    pub(super) const fn abouts(&self) -> [About; 2] {
        self.abouts
    }
}

/// How far one end of what turns by a small angle goes is no more than the arc: so far the pad may be off
/// its point for the tooth. The arm goes from its pivot to the pad.
fn abouts(bay: &Bay, corner: Corner, point: DVec2, off: DVec2, from: SeenFrom) -> [About; 2] {
    let arm = &bay.lift.arms[corner.index()];
    let pivot = arms::pivot_m(bay, corner);
    let tooth = arm.tooth.map_or(0.0, |tooth| tooth.rad().max(0.0));
    let turned = tooth * ((point - pivot).length() + off.length());
    let (pivot_off, point_off) = match from {
        SeenFrom::Vehicle => (off, DVec2::ZERO),
        SeenFrom::Bay => (DVec2::ZERO, off),
    };
    let (swing, reach_m) = arms::toward(bay, corner, point);
    let [beam, pad] = arms::arm_and_pad(bay, corner, swing, reach_m).map(|solid| solid.bounds());
    let about = |at: DVec2, by: DVec2, (low, high): (DVec3, DVec3)| About {
        low: (at - by).extend(low.z),
        high: (at + by).extend(high.z),
    };
    // From the middle of an arm's end to its corners; past the pad it goes on for half a width at most.
    let width = DVec2::splat(arm.section_width.m() * std::f64::consts::FRAC_1_SQRT_2);
    let radius = DVec2::splat(bay.lift.pad.diameter.m() * 0.5);
    let point_off = point_off + DVec2::splat(turned);
    [
        about(point, point_off + width, beam).and(about(pivot, pivot_off + width, beam)),
        about(point, point_off + radius, pad),
    ]
}

/// The arm and its pad wherever they may come to rest, while the one end goes about by `off` each way
/// and the other stays.
///
/// The pad is under its point but for the tooth, by which the arm is turned at most a whole pitch
/// either way. For one turn the pad's place is a linear function of either end's, so that the hull over
/// the corners of where that may be holds all between; what turns bulges out of it by no more than an
/// arc off its chord. That is given too, metres.
fn wherever(
    bay: &Bay,
    corner: Corner,
    point: DVec2,
    off: DVec2,
    from: SeenFrom,
) -> ([Body; 2], f64) {
    let arm = &bay.lift.arms[corner.index()];
    let tooth = arm.tooth.map_or(0.0, |tooth| tooth.rad().max(0.0));
    let (mut least, mut most) = (f64::INFINITY, f64::NEG_INFINITY);
    let mut longest = arm.longest.m();
    let (middle, _) = arms::toward(bay, corner, point);
    let (mut arm_bodies, mut pad_bodies) = (Vec::with_capacity(8), Vec::with_capacity(8));
    for (x, y) in [(-1.0, -1.0), (-1.0, 1.0), (1.0, -1.0), (1.0, 1.0)] {
        let off = off * DVec2::new(x, y);
        // The corner may lie beyond what the arm reaches, where no place of the vehicle does: its
        // limits must not draw the hull in. Where a place does the arm is told not to reach.
        let (swing, reach_m) = arms::toward(bay, corner, point + off);
        let swing = swing - TAU * ((swing - middle) / TAU).round();
        longest = longest.max(reach_m);
        let back = match from {
            SeenFrom::Vehicle => -off.extend(0.0),
            SeenFrom::Bay => DVec3::ZERO,
        };
        for swing in [swing - tooth, swing + tooth] {
            least = least.min(swing);
            most = most.max(swing);
            let [arm, pad] = arms::arm_and_pad(bay, corner, swing, reach_m);
            arm_bodies.push(Body::exact(&arm).moved(back));
            pad_bodies.push(Body::exact(&pad).moved(back));
        }
    }
    let past = bay.lift.pad.diameter.max(arm.section_width).m();
    let bulge = chord_bulge_m(longest + past, most - least);
    let by = DVec3::new(bulge, bulge, 0.0);
    let hulls = [arm_bodies, pad_bodies].map(|bodies| Body::hull(bodies).widened(by));
    (hulls, bulge)
}

#[cfg(test)]
mod tests {
    use super::super::super::uncertainty::Uncertainty;
    use super::super::piece::Piece;
    use super::*;
    use crate::solids::attitude;
    use crate::solids::test_bay::test_bay;
    use crate::units::Angle;

    /// The boxes hold the bodies but for what those are wider by for their arcs.
    #[test]
    fn the_boxes_hold_what_arm_and_pad_may_cover() {
        for degrees in [0.0_f64, 1.0, 5.0, 12.0] {
            let mut bay = test_bay();
            for arm in &mut bay.lift.arms {
                arm.tooth = (degrees > 0.0).then(|| Angle::radians(degrees.to_radians()));
            }
            let piece = Piece::whole(&Uncertainty::worst(&bay));
            let rest = attitude::at_rest(&bay, piece.middle).unwrap();
            let roam = Roam::new(&bay, piece, rest);
            for corner in Corner::ALL {
                let index = crate::solids::vehicle::lift_point_at(corner, bay.parking.facing);
                let point = rest.point(crate::solids::vehicle::lift_point_m(&bay.vehicle, index));
                for from in [SeenFrom::Vehicle, SeenFrom::Bay] {
                    let swung = Swung::new(&bay, corner, point, &roam, from);
                    for (about, body) in swung.abouts().into_iter().zip(swung.bodies()) {
                        let (_, bulge) = wherever(&bay, corner, point.truncate(), swung.off, from);
                        let bulge = bulge + 1e-12;
                        let by = DVec3::new(bulge, bulge, 1e-12);
                        let is_held = body.low().cmpge(about.low - by).all()
                            && body.high().cmple(about.high + by).all();
                        assert!(is_held, "{corner:?} {from:?} {degrees}: {about:?} {body:?}");
                    }
                }
            }
        }
    }
}
