//! Which margins were asked, and how far was each dimension trusted?

use super::page::Page;
use super::{Report, show};
use crate::bay::DoorHeld;
use crate::report::words::{list, plain};
use crate::units::{Length, plus_minus};

pub(super) fn write(report: &Report<'_>, page: &mut Page) {
    let show = show(report);
    let policy = &report.study.policy;
    let lift = &report.bay.lift;
    page.heading("Margins asked");
    for (what, margin) in [
        ("Over the vehicle", policy.over_vehicle),
        ("Beside the vehicle", policy.beside_vehicle),
        ("Beside a post, body and mirrors", policy.beside_post),
        ("The lift's own moving parts", policy.lift_parts),
        ("Under the shut-off bar", policy.under_bar),
        ("A pad may hang loose by", policy.loose_pad),
        (
            "Centre of gravity inside the pads' span",
            policy.inside_pads,
        ),
    ] {
        page.entry(what, &show.need(margin.m()));
    }
    let held = match policy.door_held {
        None => "shut or open, the worse governs",
        Some(DoorHeld::Shut) => "held shut while the vehicle is up",
        Some(DoorHeld::Open) => "held open while the vehicle is up",
    };
    page.entry("Door", held);
    let people: Vec<String> = policy
        .people
        .iter()
        .map(|p| format!("{}, {}", plain(&p.name), show.need(p.height.m())))
        .collect();
    let people = if people.is_empty() {
        "none named".into()
    } else {
        list(&people)
    };
    page.entry("People", &people);
    page.entry(
        "Climb past a lock",
        &format!(
            "{} to set it, {} to leave it, and {} of overshoot on the larger of the two",
            show.need(lift.set_overtravel.m()),
            show.need(lift.release_overtravel.m()),
            show.need(lift.overshoot.m())
        ),
    );

    let trust = &report.study.uncertainty;
    let off = |metres| plus_minus(Length::metres(metres), report.bay.units);
    page.heading("Uncertainty counted against every pair");
    for (what, off_m) in [
        (
            "Room, door and what is in it, each dimension \u{b1}",
            trust.garage_m,
        ),
        ("Lift, each dimension \u{b1}", trust.lift_m),
        ("Vehicle, each dimension \u{b1}", trust.vehicle_m),
        ("Twist left between pads and lift points", trust.loose_pad_m),
        ("One carriage above the other", trust.mismatch_m),
    ] {
        page.entry(what, &off(off_m));
    }
    page.entry(
        "Parking",
        &format!(
            "\u{b1} {} along, \u{b1} {} across, \u{b1} {:.2} deg of heading",
            off(trust.parking.along_m),
            off(trust.parking.across_m),
            trust.parking.yaw_rad.to_degrees()
        ),
    );
}
