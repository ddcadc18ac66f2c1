//! Are two bays of one garage and one lift?
//!
//! Each field is named: a new one can't be forgotten, since the compiler then asks for it here.

use std::fmt::Debug;

use super::Entry;
use super::differs::{exactly, where_and_what};
use crate::bay::{Garage, Lift, Policy, UnitSystem};
use crate::units::Length;

/// What differs between two bays of which one card was asked.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Difference {
    /// The first bay, and the one that differs from it.
    pub files: [String; 2],
    /// What differs, in words, with both values where they are told in a few.
    pub what: Vec<String>,
}

/// What differs; none where a card may carry both.
pub(super) fn difference(first: &Entry<'_>, other: &Entry<'_>) -> Option<Difference> {
    let (a, b) = (first.bay, other.bay);
    let mut found = Found(Vec::new(), a.units);
    found.plain("units of the file", &a.units, &b.units);
    garage(&mut found, &a.garage, &b.garage);
    lift(&mut found, &a.lift, &b.lift);
    found.plain("slab", &a.slab, &b.slab);
    // What nobody measured, and how well the rest was, is the same garage's and the same lift's.
    found.plain("not_measured", &a.not_measured, &b.not_measured);
    policy(&mut found, &a.policy, &b.policy);
    found.plain("power", &a.power, &b.power);
    (!found.0.is_empty()).then(|| Difference {
        files: [first.file.into(), other.file.into()],
        what: found.0,
    })
}

struct Found(Vec<String>, UnitSystem);

impl Found {
    fn plain<T: PartialEq + Debug>(&mut self, name: &str, a: &T, b: &T) {
        if a != b {
            self.0
                .push(format!("{name}{}", where_and_what(a, b, self.1)));
        }
    }

    fn list<T: PartialEq + Debug>(&mut self, name: &str, a: &[T], b: &[T]) {
        if a.len() == b.len() {
            self.plain(name, &a, &b);
        } else {
            self.0
                .push(format!("{name} ({} and {} of them)", a.len(), b.len()));
        }
    }

    fn length(&mut self, name: &str, a: Length, b: Length) {
        if a != b {
            let show = |one: Length| exactly(one, self.1);
            self.0.push(format!("{name} ({} and {})", show(a), show(b)));
        }
    }
}

/// What is asked of every vehicle alike: one card says nothing of margins, so that all on it have the
/// same.
fn policy(found: &mut Found, a: &Policy, b: &Policy) {
    let Policy {
        over_vehicle,
        beside_vehicle,
        beside_post,
        lift_parts,
        under_bar,
        measured_garage,
        measured_lift,
        // Each vehicle is measured by itself, and people differ by the day.
        measured_vehicle: _,
        loose_pad,
        inside_pads,
        door_held,
        people: _,
    } = a;
    found.length("policy.over_vehicle", *over_vehicle, b.over_vehicle);
    found.length("policy.beside_vehicle", *beside_vehicle, b.beside_vehicle);
    found.length("policy.beside_post", *beside_post, b.beside_post);
    found.length("policy.lift_parts", *lift_parts, b.lift_parts);
    found.length("policy.under_bar", *under_bar, b.under_bar);
    found.length(
        "policy.measured_garage",
        *measured_garage,
        b.measured_garage,
    );
    found.length("policy.measured_lift", *measured_lift, b.measured_lift);
    found.length("policy.loose_pad", *loose_pad, b.loose_pad);
    found.length("policy.inside_pads", *inside_pads, b.inside_pads);
    found.plain("policy.door_held", door_held, &b.door_held);
}
fn garage(found: &mut Found, a: &Garage, b: &Garage) {
    let Garage {
        width,
        depth,
        opening,
        ceiling,
        floor,
        door,
        opener,
        obstacles,
    } = a;
    found.length("garage.width", *width, b.width);
    found.length("garage.depth", *depth, b.depth);
    found.plain("garage.opening", opening, &b.opening);
    found.plain("garage.ceiling", ceiling, &b.ceiling);
    found.plain("garage.floor", floor, &b.floor);
    found.plain("garage.door", door, &b.door);
    found.plain("garage.opener", opener, &b.opener);
    found.list("garage.obstacles", obstacles, &b.obstacles);
}

fn lift(found: &mut Found, a: &Lift, b: &Lift) {
    let Lift {
        name,
        post_line,
        across,
        column,
        spacing,
        drive_through,
        base_plate,
        power_unit,
        tie,
        carriage,
        arms,
        pad,
        travel,
        locks,
        set_overtravel,
        release_overtravel,
        overshoot,
        side_mismatch,
        cg_window,
        capacity,
        arm_capacity,
        post_capacity,
        motor,
        hydraulics,
        shipping_mass,
        pieces,
        // What it costs makes no other lift of it.
        price: _,
        manual,
        advertised,
        shim_limit,
        plumb_limit,
        posts_off,
    } = a;
    found.plain("lift.name", name, &b.name);
    found.length("lift.post_line", *post_line, b.post_line);
    found.length("lift.across", *across, b.across);
    found.plain("lift.column", column, &b.column);
    found.length("lift.spacing", *spacing, b.spacing);
    found.length("lift.drive_through", *drive_through, b.drive_through);
    found.plain("lift.base_plate", base_plate, &b.base_plate);
    found.plain("lift.power_unit", power_unit, &b.power_unit);
    found.plain("lift.tie", tie, &b.tie);
    found.plain("lift.carriage", carriage, &b.carriage);
    found.plain("lift.arms", arms, &b.arms);
    found.plain("lift.pad", pad, &b.pad);
    found.length("lift.travel", *travel, b.travel);
    found.list("lift.locks", locks, &b.locks);
    found.length("lift.set_overtravel", *set_overtravel, b.set_overtravel);
    found.length(
        "lift.release_overtravel",
        *release_overtravel,
        b.release_overtravel,
    );
    found.length("lift.overshoot", *overshoot, b.overshoot);
    found.length("lift.side_mismatch", *side_mismatch, b.side_mismatch);
    found.plain("lift.cg_window", cg_window, &b.cg_window);
    found.plain("lift.capacity", capacity, &b.capacity);
    found.plain("lift.arm_capacity", arm_capacity, &b.arm_capacity);
    found.plain("lift.post_capacity", post_capacity, &b.post_capacity);
    found.plain("lift.motor", motor, &b.motor);
    found.plain("lift.hydraulics", hydraulics, &b.hydraulics);
    found.plain("lift.shipping_mass", shipping_mass, &b.shipping_mass);
    found.plain("lift.pieces", pieces, &b.pieces);
    found.plain("lift.manual", manual, &b.manual);
    found.plain("lift.advertised", advertised, &b.advertised);
    found.plain("lift.shim_limit", shim_limit, &b.shim_limit);
    found.plain("lift.plumb_limit", plumb_limit, &b.plumb_limit);
    found.plain("where the posts stand", posts_off, &b.posts_off);
}
