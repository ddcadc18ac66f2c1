//! How does the vehicle stand on the lift?

use super::all;
use super::fields::Fields;
use super::lift::one_or_corners;
use super::readers::{Read, angle, custom, not_negative, one_item, place, rec, variant, words};
use crate::bay::{Aim, Facing, Parking};
use crate::units::{Angle, Length};

/// Reads the parking.
pub(super) fn parking(f: &Fields<'_>) -> Option<Parking> {
    let repeat = f.need(
        "repeat",
        &rec("the repeatability", |f: &Fields<'_>| {
            let along = f.need("along", &not_negative());
            let across = f.need("across", &not_negative());
            let yaw = f.need("yaw", &angle(0.0, 15.0));
            Some((along?, across?, yaw?))
        }),
    );
    all!(Parking {
        facing: f.need(
            "facing",
            &words(
                "an end of the vehicle",
                &[("NoseIn", Facing::NoseIn), ("TailIn", Facing::TailIn),]
            )
        ),
        aim: f.need("aim", &aim()),
        across: f.or("across", Length::ZERO, &place()),
        yaw: f.or("yaw", Angle::ZERO, &angle(-30.0, 30.0)),
        repeat_along: repeat.map(|r| r.0),
        repeat_across: repeat.map(|r| r.1),
        repeat_yaw: repeat.map(|r| r.2),
        pad_raise: f.need(
            "pad_raise",
            &one_or_corners("the pads' raise", not_negative())
        ),
    })
}

fn aim() -> impl Read<Out = Aim> {
    custom("LiftPoints(\"0 in\")", |cx, node| {
        let known = ["CentreOfGravity", "LiftPoints"];
        let make = match variant(cx, node, "something to line up", &known)? {
            "CentreOfGravity" => Aim::CentreOfGravity,
            _ => Aim::LiftPoints,
        };
        one_item(cx, node, &place()).map(make)
    })
}
