//! A true world: one way in which everything may really be, inside the uncertainty of a bay.
//!
//! The parts are posed anew from a bay with other dimensions; the engine's bodies are not used.

use bayrise::bay::{Bay, Corner, Side};
use bayrise::clearance::uncertainty::Uncertainty;
use bayrise::solids::{ParkingError, Pose, Role, Solid, arms, attitude, posts, shell, vehicle};
use bayrise::units::Length;
use glam::DVec3;

use crate::rng::Rng;

/// One true world.
pub(crate) struct World {
    pub(crate) uncertainty: Uncertainty,
    /// The bay as it really is, the pads' heights with one carriage ahead.
    bay: Bay,
    /// The same with both carriages level and the screws as written: for arms, pads and carriages,
    /// which are moved as a whole. (What a pad is screwed up by stays under its lift point.)
    level: Bay,
    /// The vehicle's parts as written: each is then moved by its own error.
    parts: Vec<vehicle::VehiclePart>,
    parking: ParkingError,
    /// How far each side's carriage is ahead: left, right.
    ahead: [f64; 2],
    rest: Pose,
    contact: attitude::Contact,
    attitudes: Vec<attitude::Attitude>,
    /// Which tooth each arm rests at.
    teeth: [usize; 4],
    /// The place of every solid is off by this.
    shifts: Rng,
    /// The travel is off by this.
    travel_off: f64,
}

/// A moving solid in the true world; some stand in more than one attitude.
pub(crate) struct TruePart {
    pub(crate) name: String,
    pub(crate) role: Role,
    pub(crate) solid: Solid,
}

impl World {
    /// A random world about the bay.
    pub(crate) fn new(nominal: &Bay, uncertainty: Uncertainty, rng: &mut Rng) -> Self {
        let mut level = nominal.clone();
        for point in &mut level.vehicle.lift_points {
            point.height = off(point.height, uncertainty.vehicle_m, rng);
            point.station = off(point.station, uncertainty.vehicle_m, rng);
            point.half_spacing = off(point.half_spacing, uncertainty.vehicle_m, rng);
        }
        for raise in &mut level.parking.pad_raise {
            *raise = off(*raise, uncertainty.lift_m, rng);
        }
        let written = level.parking.pad_raise;
        let box_ = uncertainty.parking;
        let parking = ParkingError {
            across_m: rng.within(box_.across_m),
            along_m: rng.within(box_.along_m),
            yaw_rad: rng.within(box_.yaw_rad),
        };
        screw_to_touch(nominal, &mut level, parking, rng);
        let lead = rng.within(uncertainty.mismatch_m);
        let ahead = [lead.max(0.0), (-lead).max(0.0)];
        let mut bay = level.clone();
        // The vehicle is lined up with posts that stand where they do.
        bay.lift.post_line = off(bay.lift.post_line, uncertainty.lift_m, rng);
        bay.lift.across = off(bay.lift.across, uncertainty.lift_m, rng);
        for corner in Corner::ALL {
            let ahead = ahead[usize::from(corner.side() == Side::Right)];
            bay.parking.pad_raise[corner.index()] += Length::metres(ahead);
            level.parking.pad_raise[corner.index()] = written[corner.index()];
        }
        // When the pads meet their points is taken for screws as written: what a screw is turned
        // up by later belongs into the file.
        let mut as_written = bay.clone();
        for corner in Corner::ALL {
            let ahead = ahead[usize::from(corner.side() == Side::Right)];
            as_written.parking.pad_raise[corner.index()] =
                written[corner.index()] + Length::metres(ahead);
        }
        Self {
            uncertainty,
            rest: attitude::at_rest(&bay, parking).unwrap(),
            contact: attitude::contact(&as_written, parking).unwrap(),
            attitudes: attitude::attitudes(&bay, parking, [0.0; 4]).unwrap(),
            bay,
            level,
            parts: vehicle::parts(nominal),
            parking,
            ahead,
            teeth: [0; 4].map(|_| rng.below(2)),
            shifts: rng.clone(),
            travel_off: rng.within(uncertainty.lift_m),
        }
    }

    /// Travels at which something happens to the vehicle.
    pub(crate) fn turning_points(&self) -> Vec<f64> {
        let mut at = vec![self.contact.first_touch_m, self.contact.carry_m];
        for attitude in &self.attitudes {
            at.extend(attitude.lift_off_m);
            at.extend(attitude.lift_off_last_m);
        }
        at
    }

    /// Everything that moves, when the carriages are said to be at `travel`.
    pub(crate) fn at(&self, travel: f64) -> Vec<TruePart> {
        let travel = (travel + self.travel_off).max(0.0);
        let mut parts = self.lift_parts(travel);
        for pose in self.vehicle_poses(travel) {
            for part in &self.parts {
                let mut solid = part.solid.clone();
                let droop = if travel < self.contact.first_touch_m {
                    0.0
                } else {
                    self.droop(part, pose)
                };
                let lowered = solid.bay_from_solid.moved(DVec3::Z * -droop);
                solid.bay_from_solid = pose.after(lowered);
                parts.push(TruePart {
                    name: solid.name.clone(),
                    role: solid.role,
                    solid,
                });
            }
        }
        let mut shifts = self.shifts.clone();
        for part in &mut parts {
            let half = match part.role {
                Role::Body | Role::Mirror | Role::Wheel(_) => self.uncertainty.vehicle_m,
                _ => self.uncertainty.lift_m,
            };
            let mut shift = DVec3::new(
                shifts.within(half),
                shifts.within(half),
                shifts.within(half),
            );
            // The tyres stand on the floor, whatever else is off; the pads' tops are off already.
            if matches!(part.role, Role::Wheel(_) | Role::Pad(_)) {
                shift.z = 0.0;
            }
            part.solid.bay_from_solid = part.solid.bay_from_solid.moved(shift);
        }
        parts
    }

    fn lift_parts(&self, travel: f64) -> Vec<TruePart> {
        let mut parts = Vec::new();
        let mut push = |solid: Solid, side: Side| {
            let ahead = self.ahead[usize::from(side == Side::Right)];
            let mut solid = solid;
            solid.bay_from_solid = solid.bay_from_solid.moved(DVec3::Z * (travel + ahead));
            parts.push(TruePart {
                name: solid.name.clone(),
                role: solid.role,
                solid,
            });
        };
        for (carriage, side) in posts::carriages(&self.level)
            .into_iter()
            .zip([Side::Left, Side::Right])
        {
            push(carriage, side);
        }
        for corner in Corner::ALL {
            let reach = arms::reach(&self.level, corner, self.parking).unwrap();
            let rest = reach.rests[self.teeth[corner.index()]];
            let swing = if rest.within_limits {
                rest.swing_rad
            } else {
                reach.swing_rad
            };
            for solid in arms::arm_and_pad(&self.level, corner, swing, reach.reach_m) {
                push(solid, corner.side());
            }
        }
        parts
    }

    /// Where the body may be.
    fn vehicle_poses(&self, travel: f64) -> Vec<Pose> {
        let contact = &self.contact;
        if travel < contact.first_touch_m {
            return vec![self.rest];
        }
        self.attitudes
            .iter()
            .map(|attitude| {
                let raised = |at: f64| attitude.bay_from_vehicle_at_zero.moved(DVec3::Z * at);
                if travel < contact.carry_m {
                    let share = (travel - contact.first_touch_m)
                        / (contact.carry_m - contact.first_touch_m);
                    part_of_the_way(self.rest, raised(contact.carry_m), share)
                } else {
                    raised(travel)
                }
            })
            .collect()
    }

    /// How far below ride height a wheel hangs: as far as it needs to reach the floor (a spring may
    /// be pressed in instead), at most by its droop.
    fn droop(&self, part: &vehicle::VehiclePart, bay_from_vehicle: Pose) -> f64 {
        let Some(axle) = part.wheel else {
            return 0.0;
        };
        if !matches!(part.solid.role, Role::Wheel(_)) {
            // Its middle sinks as far as its two wheels do on the average.
            let wheels = self
                .parts
                .iter()
                .filter(|one| one.solid.role == Role::Wheel(axle));
            let sunk: Vec<f64> = wheels
                .map(|wheel| self.droop(wheel, bay_from_vehicle))
                .collect();
            return sunk.iter().sum::<f64>() / sunk.len() as f64;
        }
        let droop = self.bay.vehicle.droop[axle].m();
        let mut hanging = part.solid.clone();
        hanging.bay_from_solid =
            bay_from_vehicle.after(hanging.bay_from_solid.moved(DVec3::Z * -droop));
        let foot = hanging.support(DVec3::NEG_Z);
        let below = shell::floor_level_m(&self.bay, foot.x, foot.y) - foot.z;
        droop - below.max(0.0)
    }
}

fn off(length: Length, half: f64, rng: &mut Rng) -> Length {
    length + Length::metres(rng.within(half))
}

/// Where the ± leave a pad hanging by more than the policy's loose gap, it is screwed up to within
/// that gap, as the study's verdict asks. (A twist that the bay as written has is left to it.)
fn screw_to_touch(nominal: &Bay, bay: &mut Bay, parking: ParkingError, rng: &mut Rng) {
    let gap_of = |bay: &Bay| {
        attitude::attitudes(bay, parking, [0.0; 4])
            .unwrap()
            .first()
            .and_then(|attitude| attitude.loose)
    };
    if gap_of(nominal).is_some() {
        return;
    }
    let most = nominal.policy.loose_pad.m();
    if let Some((corner, gap)) = gap_of(bay)
        && gap > most
    {
        let up = gap - rng.between(0.0, most);
        bay.parking.pad_raise[corner.index()] += Length::metres(up);
    }
}

/// A share of the way from one pose to another, about the origin of the vehicle.
fn part_of_the_way(from: Pose, to: Pose, share: f64) -> Pose {
    Pose::new(
        from.rotation.slerp(to.rotation, share),
        from.translation.lerp(to.translation, share),
    )
}
