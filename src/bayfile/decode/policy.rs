//! Which margins are asked, and who will stand underneath?

use super::all;
use super::fields::Fields;
use super::readers::{Read, list, name, not_negative, rec, size, words};
use crate::bay::{DoorHeld, PERCENTILES, Percentile, Person, Policy};

/// Reads the policy; what is left out keeps the project's own default.
pub(super) fn policy(f: &Fields<'_>) -> Option<Policy> {
    let d = Policy::default();
    // A margin of more than two metres is a slip of the pen.
    let margin = || not_negative().within(0.0, 2.0);
    all!(Policy {
        over_vehicle: f.or("over_vehicle", d.over_vehicle, &margin()),
        beside_vehicle: f.or("beside_vehicle", d.beside_vehicle, &margin()),
        beside_post: f.or("beside_post", d.beside_post, &margin()),
        lift_parts: f.or("lift_parts", d.lift_parts, &margin()),
        under_bar: f.or("under_bar", d.under_bar, &margin()),
        measured_garage: f.or("measured_garage", d.measured_garage, &margin()),
        measured_lift: f.or("measured_lift", d.measured_lift, &margin()),
        measured_vehicle: f.or("measured_vehicle", d.measured_vehicle, &margin()),
        loose_pad: f.or("loose_pad", d.loose_pad, &margin()),
        inside_pads: f.or("inside_pads", d.inside_pads, &margin()),
        door_held: f.maybe(
            "door_held",
            &words(
                "a state of the door",
                &[("Shut", DoorHeld::Shut), ("Open", DoorHeld::Open),]
            )
        ),
        people: f.or("people", Vec::new(), &people()),
    })
}

/// Reads the people.
pub(super) fn people() -> impl Read<Out = Vec<Person>> {
    list(
        "people",
        100,
        rec("the person", |f: &Fields<'_>| {
            let name = f.need("name", &name());
            let stature = f.maybe("stature", &words("one of the statures", &STATURES));
            let height = &size().within(0.5, 3.0);
            let height = match stature.flatten() {
                Some(stature) => {
                    if f.maybe("height", height).flatten().is_some() {
                        f.error(
                            "height",
                            "a height and a stature are given for one person",
                            "one of the two belongs here",
                            "leave out `stature` where the person was measured",
                        );
                        return None;
                    }
                    Some(stature.with_shoes())
                }
                None => f.need("height", height),
            };
            Some(Person {
                name: name?,
                height: height?,
                stature: stature?,
            })
        }),
    )
}

/// The words for a stature, [`PERCENTILES`] in their order.
const STATURES: [(&str, Percentile); PERCENTILES.len()] = {
    let mut table = [("", PERCENTILES[0]); PERCENTILES.len()];
    let mut index = 0;
    while index < table.len() {
        table[index] = (PERCENTILES[index].word, PERCENTILES[index]);
        index += 1;
    }
    table
};
