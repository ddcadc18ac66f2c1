//! The vehicle in a piece of the parking box with the arms swung under it.

use std::cell::{LazyCell, OnceCell};

use glam::{DVec2, DVec3};

use super::super::body::Body;
use super::super::movers::MoverError;
use super::super::uncertainty::corners_on;
use super::Look;
use super::allowed::Allowed;
use super::lift_part::{LiftPart, Posed, meet, meets_carried, meets_climbing};
use super::pairs::{KINDS, Pairs};
use super::parked::{About, Parked, Part, side_of};
use super::partings::is_parted;
use super::points::ON_THE_POINT_M;
use crate::bay::Side;
use crate::solids::{Role, attitude};

/// How far a pad is lowered so that meeting its own lift point does not count, beyond the ±.
const OWN_POINT_M: f64 = 0.002;

/// Rise per length that a body's underside may have over its own pad, on a floor that falls or
/// with the pads set unevenly.
const TILT_OVER_PAD: f64 = 0.05;

/// A piece of the parking box, with one carriage leading or none.
pub(super) struct Scene<'a> {
    pub(super) parked: &'a Parked<'a>,
    /// How far each lift part may be off, by what it is looked at with.
    pub(super) spread: [DVec3; 4],
    /// The lift parts' bodies, so widened; made where they are wanted.
    pub(super) bodies: Vec<[OnceCell<Body>; 4]>,
    pub(super) attitudes: Vec<attitude::Attitude>,
    parts: &'a [Part],
    allowed: &'a Allowed,
    /// No part is farther from where the vehicle's own frame starts, metres.
    size_m: f64,
    /// How much of its climb to the standing vehicle the leading carriage has done before the
    /// other starts.
    lead: Option<(Side, f64)>,
    /// How much lower than they are pads are looked at.
    pad_drop: f64,
    /// The place that is lined up, vehicle frame.
    pivot: DVec3,
}

/// What a lift part is looked at with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum With {
    /// An arm or a carriage with a vehicle part; how far it may be off in height hangs on the part.
    Arm,
    /// A pad with a vehicle part: lowered, since it meets its own point by design.
    Pad,
    /// A pad with a part that may hang lower than its own point: it is met first, and not by the height
    /// of the point that a pad is lowered for.
    BesideOwnPoint,
    /// A part of the lift with another.
    EachOther,
}

impl Scene<'_> {
    /// How far a lift part stands above its place.
    pub(super) fn shift_m(&self, index: usize, with: With) -> f64 {
        let (role, _) = self.parked.lift[index];
        let ahead = self.ahead_m(role);
        match with {
            With::Arm | With::EachOther => ahead,
            With::Pad => ahead - self.pad_drop,
            With::BesideOwnPoint => ahead - ON_THE_POINT_M,
        }
    }
}

impl<'a> Scene<'a> {
    pub(super) fn new(
        look: &Look<'a>,
        parked: &'a Parked<'a>,
        lead: Option<Side>,
    ) -> Result<Self, MoverError> {
        let Look {
            bay,
            uncertainty,
            allowed,
            parts,
            ..
        } = *look;
        let lead = lead.map(|side| (side, uncertainty.mismatch_m));
        let relative = 1.5 * (uncertainty.vehicle_m + uncertainty.lift_m);
        let off = uncertainty.posts_to_carried();
        let plan = DVec2::splat(allowed.plan_m);
        let arm = plan.extend(0.0) + off;
        let pad = plan.extend(relative) + off;
        let beside_own_point = (plan + off.truncate()).extend(allowed.over_point_m);
        // Of two arms: each one's lift point on the vehicle; each one's pivot and half its width, half the
        // spacing. In height of an arm the underside and the height, of a pad the lowest place and what it
        // is raised by.
        let points = uncertainty.in_plan(DVec2::splat(2.0 * uncertainty.vehicle_m));
        let apart = points + DVec2::splat(3.5 * uncertainty.lift_m);
        let in_height = f64::max(
            1.5 * uncertainty.vehicle_m + 2.0 * uncertainty.lift_m,
            4.0 * uncertainty.lift_m,
        );
        let each_other = apart.extend(in_height) + off;
        let pad_drop = relative + off.z + OWN_POINT_M + TILT_OVER_PAD * bay.lift.pad.diameter.m();
        let ahead = lead.map_or([0.0; 4], |(side, by)| {
            corners_on(side).map(|share| share * by)
        });
        let rest = parked.rest;
        Ok(Self {
            parked,
            parts,
            allowed,
            // And as far as it roams.
            size_m: parts
                .iter()
                .map(|part| part.reach_m(DVec3::ZERO))
                .fold(1.0, f64::max)
                + 1.0,
            spread: [arm, pad, beside_own_point, each_other],
            bodies: parked.lift.iter().map(|_| Default::default()).collect(),
            attitudes: attitude::attitudes_from(bay, rest, ahead)?,
            lead,
            pad_drop,
            pivot: rest.rotation.inverse() * (parked.roam.pivot() - rest.translation),
        })
    }

    /// By how much a lift part's carriage leads.
    fn ahead_m(&self, role: Role) -> f64 {
        match (self.lead, side_of(role)) {
            (Some((leading, by)), Some((side, _))) if leading == side => by,
            _ => 0.0,
        }
    }

    /// How far a part reaches from the place that is lined up.
    pub(super) fn reach_of_m(&self, part: &Part, droop: f64) -> f64 {
        part.reach_m(self.pivot) + droop
    }

    /// The box about a lift part.
    fn about(&self, index: usize) -> About {
        let (role, _) = self.parked.lift[index];
        let exact = self.parked.about(index);
        let most = self.allowed.most_m(role, self.size_m);
        // As low and as high as it is ever looked at.
        let (down, up) = match role {
            Role::Pad(_) => {
                let lowered = self.pad_drop + self.spread[With::Pad as usize].z;
                (lowered, self.spread[With::BesideOwnPoint as usize].z)
            }
            _ => {
                let most = most.z + self.spread[With::Arm as usize].z;
                (most, most)
            }
        };
        let ahead = DVec3::Z * self.ahead_m(role);
        let plan = self.spread[With::Pad as usize].truncate() + most.truncate();
        let plan = plan.max(DVec2::ZERO);
        About {
            low: exact.low + ahead - plan.extend(down.max(0.0)),
            high: exact.high + ahead + plan.extend(up.max(0.0)),
        }
    }

    /// The box about a lift part as it is looked at with a vehicle part.
    fn about_with(&self, index: usize, with: With, more_m: DVec3) -> About {
        let exact = self.parked.about(index);
        let shift = DVec3::Z * self.shift_m(index, with);
        let spread = self.spread[with as usize] + more_m;
        let spread = spread.max(DVec3::ZERO);
        About {
            low: exact.low + shift - spread,
            high: exact.high + shift + spread,
        }
    }

    /// The boxes about a part on its tyres, and on the pads in any attitude.
    fn about_part(&self, part: &Part, droop: f64) -> [About; 2] {
        let roam = &self.parked.roam;
        let reach = self.reach_of_m(part, droop);
        let carried = self
            .attitudes
            .iter()
            .map(|attitude| part.about(attitude.bay_from_vehicle_at_zero, droop))
            .fold(About::NOTHING, About::and);
        [
            part.about(self.parked.rest, 0.0)
                .widened(roam.standing(reach)),
            carried.widened(roam.carried(reach)),
        ]
    }

    /// How high a lift part climbs past a vehicle part while that stands on its tyres, from travel 0.
    fn climb_m(&self, role: Role, wheel: Option<usize>) -> f64 {
        let contact = &self.parked.contact;
        let until = match (role, wheel) {
            // It climbs to where it meets it,
            (Role::Pad(corner), None) => contact.touch_m[corner.index()],
            (_, None) => contact.carry_m,
            // or for a wheel until that has sunk as far as it can.
            (_, Some(axle)) => self
                .attitudes
                .iter()
                .map(|attitude| attitude.lift_off_last_m[axle])
                .fold(contact.carry_m, f64::max),
        };
        (until - self.ahead_m(role)).max(0.0)
    }

    /// No lift part climbs higher past any vehicle part.
    fn most_climb_m(&self) -> f64 {
        let contact = &self.parked.contact;
        let sunk = self
            .attitudes
            .iter()
            .map(|attitude| attitude.lift_off_last_m);
        let touched = contact
            .touch_m
            .iter()
            .chain(std::iter::once(&contact.carry_m));
        touched.copied().chain(sunk.flatten()).fold(0.0, f64::max)
    }

    /// Puts in which of the pairs may touch.
    pub(super) fn touching(&self, pairs: &Pairs, look: &mut Look<'_>, found: &mut Pairs) {
        let abouts: Vec<About> = (0..self.parked.lift.len())
            .map(|index| self.about(index))
            .collect();
        let of_kinds: [About; KINDS] = std::array::from_fn(|kind| {
            let of_kind = &abouts[self.parked.of_kind[kind].clone()];
            of_kind.iter().copied().fold(About::NOTHING, About::and)
        });
        self.touching_vehicle(pairs, &of_kinds, look, found);
        self.touching_each_other(pairs, look, found);
    }

    fn touching_vehicle(
        &self,
        pairs: &Pairs,
        of_kinds: &[About; KINDS],
        look: &mut Look<'_>,
        found: &mut Pairs,
    ) {
        // The vehicle may stand lower than in the middle place, and be met as much earlier.
        let from = -self.parked.roam.lower_m;
        let all = of_kinds.iter().copied().fold(About::NOTHING, About::and);
        let all_climbing = all.climbing(from, self.most_climb_m());
        for (number, part) in self.parts.iter().enumerate() {
            if !pairs.has_part(number) {
                continue;
            }
            let droop = part.droop_m(look.bay);
            let [standing, carried] = self.about_part(part, droop);
            if !(standing.meets(all_climbing) || carried.meets(all)) {
                continue;
            }
            let posed = LazyCell::new(|| Posed::new(self, part, droop));
            for (kind, about_kind) in of_kinds.iter().enumerate() {
                if !pairs.has(number, kind) || found.has(number, kind) {
                    continue;
                }
                let of_kind = self.parked.of_kind[kind].clone();
                let Some(first) = of_kind.clone().next() else {
                    continue;
                };
                let role = self.parked.lift[first].0;
                // Where it holds its own lift point it meets what that is on.
                if let Role::Pad(corner) = role
                    && look.points.holds(number, corner)
                {
                    continue;
                }
                let climb = [from, self.climb_m(role, part.part.wheel)];
                let [low, high] = climb;
                if !(standing.meets(about_kind.climbing(low, high)) || carried.meets(*about_kind)) {
                    continue;
                }
                let over_m = self.allowed.over_point_m;
                let withs: &[With] = match role {
                    Role::Pad(corner) if look.points.may_hang_lower(part, corner, over_m) => {
                        &[With::BesideOwnPoint, With::Pad]
                    }
                    Role::Pad(_) => &[With::Pad],
                    _ => &[With::Arm],
                };
                let more_m = self.allowed.more_m(number, part, droop, role, look.points);
                let each = of_kind.flat_map(|index| withs.iter().map(move |with| (index, *with)));
                let touches = each.into_iter().any(|(index, with)| {
                    let lift = LiftPart::new(self, index, with, more_m);
                    let about = self.about_with(index, with, more_m);
                    let on_the_way = standing.meets(about.climbing(low, high));
                    let on_the_pads = carried.meets(about);
                    let solver = &mut *look.solver;
                    on_the_way && {
                        let parting = look.partings.standing(number, role);
                        meets_climbing(&lift, climb, &posed, parting, solver)
                    } || on_the_pads && {
                        let parting = look.partings.carried(number, role);
                        (0..self.attitudes.len())
                            .any(|attitude| meets_carried(&lift, &posed, attitude, parting, solver))
                    }
                });
                if touches {
                    found.put(number, kind);
                }
            }
        }
    }

    /// Arms and pads of different corners, and the other side's carriage: they climb together, so
    /// one standing comparison tells.
    fn touching_each_other(&self, pairs: &Pairs, look: &mut Look<'_>, found: &mut Pairs) {
        let each = (0..KINDS).flat_map(|one| (one + 1..KINDS).map(move |other| (one, other)));
        let Parked { lift, of_kind, .. } = self.parked;
        let spread = self.spread[With::EachOther as usize].max(DVec3::ZERO);
        let abouts: [About; KINDS] = std::array::from_fn(|kind| {
            let each = of_kind[kind].clone();
            let each = each.map(|index| self.parked.about_in_bay(index).widened(spread));
            each.fold(About::NOTHING, About::and)
        });
        for (one, other) in each {
            if !pairs.has_each_other(one, other) || found.has_each_other(one, other) {
                continue;
            }
            // In plan only: a leading side is higher.
            if !abouts[one].meets_in_plan(abouts[other]) {
                continue;
            }
            let touches = of_kind[one].clone().any(|index| {
                of_kind[other].clone().any(|other_index| {
                    let [part, other_part] = [index, other_index]
                        .map(|index| LiftPart::new(self, index, With::EachOther, DVec3::ZERO));
                    let (role, other_role) = (lift[index].0, lift[other_index].0);
                    let parting = look.partings.each_other(role, other_role);
                    let is_apart = is_parted(parting.get(), |direction| {
                        -other_part.reach_m(-direction) - part.reach_m(direction)
                    });
                    !is_apart && meet(part.body(), other_part.body(), parting, look.solver)
                })
            });
            if touches {
                found.put_each_other(one, other);
            }
        }
    }
}
