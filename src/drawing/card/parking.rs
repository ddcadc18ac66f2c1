//! Where does the vehicle stand, and what was it studied with?

use super::edge;
use crate::bay::{Bay, Facing};
use crate::clearance::Study;
use crate::report::on_one_line;
use crate::setting_out::{place, setting_out};
use crate::units::{Length, Rounding, both};

/// Where the tyres stand, and whether that is known.
pub(super) fn lines(bay: &Bay, study: &Study) -> (String, bool) {
    let parking = &bay.parking;
    let way = match parking.facing {
        Facing::NoseIn => "nose in",
        Facing::TailIn => "tail in",
    };
    let out = setting_out(bay, study);
    let at = |letter: &str| out.point(letter).map(|point| point.at_m);
    let (Some(front), Some(rear)) = (at("M"), at("N")) else {
        let text = "where the tyres stand can't be said: do not raise it before it is".into();
        return (text, false);
    };
    let line = |metres: f64| place(metres, bay.units);
    let room = |length: Length| both(length, bay.units, Rounding::Down);
    let across = |x: f64| {
        let off = x - bay.lift.across.m();
        let side = if off > 0.0 { "right" } else { "left" };
        if off.abs() < 0.0005 {
            "on the middle between the posts".to_owned()
        } else {
            format!("{} {side} of the middle between the posts", line(off.abs()))
        }
    };
    let sideways = if (front.x - rear.x).abs() < 0.0005 {
        format!("Both {}", across(front.x))
    } else {
        format!("Front {}, rear {}", across(front.x), across(rear.x))
    };
    let Some(marks) = out.stop_marks else {
        let text = "the marks to park by can't be set: do not raise it before they can".into();
        return (text, false);
    };
    // The study counts the box once, for marks and driver together.
    let left = marks.left_for_driver(bay);
    let yaw = (left.yaw_rad.to_degrees() * 100.0 + 1e-6).floor() / 100.0;
    let text = format!(
        "{way}. Lines under the middles of the tyres, from the inner face of the door wall: front \
         {}, rear {}. {sideways}. No farther off the lines than {} along, {} across and {yaw} deg \
         askew: else park again.",
        line(front.y),
        line(rear.y),
        room(Length::metres(left.along_m)),
        room(Length::metres(left.across_m)),
    );
    (text, true)
}

/// What was raised in the study.
pub(super) fn as_studied(bay: &Bay, study: &Study) -> String {
    let vehicle = &bay.vehicle;
    let attached = vehicle.attached.iter();
    let top = attached
        .map(|part| part.top.m())
        .fold(vehicle.height.m(), f64::max);
    let mass = study
        .rating
        .mass_kg
        .map_or_else(|| "mass NOT KNOWN".into(), |kg| edge::load(kg, bay.units));
    format!(
        "{} high over all, {mass}, lift rated {}. {}",
        both(Length::metres(top), bay.units, Rounding::Up),
        edge::capacity(study.rating.capacity_kg, bay.units),
        with(bay)
    )
}

/// What it carries and what is taken out of it: the study holds for that and nothing else.
pub(super) fn with(bay: &Bay) -> String {
    let vehicle = &bay.vehicle;
    let mut named: Vec<String> = Vec::new();
    named.extend(vehicle.attached.iter().map(|part| on_one_line(&part.name)));
    for mass in &vehicle.masses {
        let name = on_one_line(&mass.name);
        let much = edge::load(mass.mass.kg().abs(), bay.units);
        named.push(if mass.mass.kg() < 0.0 {
            format!("{name} taken out, {much}")
        } else {
            format!("{name}, {much}")
        });
    }
    if named.is_empty() {
        "Nothing on the roof, no load, nothing taken out".into()
    } else {
        format!("With: {}; nothing else", named.join("; "))
    }
}
