//! Which answers belong together, so that all of them find room on a screen or two?

use super::sections;

/// The parts that answers are shown by, each with its sections.
pub(super) const PARTS: [(&str, &[&str]); 5] = [
    ("GARAGE", &["start", "room", "things", "people", "trust"]),
    ("DOOR", &["door", "opener"]),
    ("SLAB AND SUPPLY", &["readings", "lines", "slab", "supply"]),
    ("VEHICLE", &["vehicle", "roof", "under", "fixed", "parking"]),
    ("LIFT", &["place", "lift"]),
];

/// Where a group of answers begins, and what it is of: it goes on to the next in its section.
const GROUPS: &[(&str, &str, &str)] = &[
    ("start", "title", "bay"),
    (
        "door",
        "garage.opening.width",
        "opening: wide, high, off, wall",
    ),
    ("door", "#door", "kind"),
    ("door", "garage.door.panel_thickness", "panel, track"),
    ("door", "garage.door.spring.height", "springs, bracket"),
    ("door", "garage.door.curtain_thickness", "leaf or coil"),
    ("door", "#open_lowest", "open, its lowest"),
    ("room", "garage.width", "width, depth"),
    ("room", "#ceiling", "ceiling"),
    ("room", "#floor", "floor"),
    ("opener", "#opener", "opener"),
    ("opener", "garage.opener.head_width", "its motor, arm, cord"),
    ("opener", "garage.opener.side", "on the wall"),
    ("place", "lift.post_line", "post line, middle"),
    ("slab", "slab.claimed_thickness", "slab"),
    ("slab", "#to_walls", "its edges"),
    ("slab", "slab.post_tensioned", "what is in it"),
    ("supply", "power.voltage", "supply"),
    (
        "supply",
        "arrangements.panel_space.width",
        "before the panel",
    ),
    ("supply", "arrangements.permit", "leave"),
    ("supply", "#note", "to remember"),
    ("lift", "lift.preset", "started from"),
    ("lift", "lift.column.height", "column"),
    ("lift", "lift.spacing", "between columns, carriages"),
    ("lift", "lift.base_plate.width", "base plate"),
    ("lift", "#tie", "tie"),
    ("lift", "lift.travel", "travel, marked edge"),
    ("lift", "#locks.first", "locks"),
    (
        "lift",
        "lift.set_overtravel",
        "past a lock, coasting, level",
    ),
    ("lift", "lift.carriage.proud", "carriage"),
    ("lift", "#unit", "power unit"),
    ("lift", "lift.pad.lowest", "pads"),
    ("lift", "lift.arms.front.shortest", "arms: front, rear"),
    (
        "lift",
        "lift.arms.front.pivot_inward",
        "pivots: front, rear",
    ),
    ("lift", "lift.arms.front.swing_min", "swings: front, rear"),
    ("lift", "#arm.hold", "restraint, section"),
    ("lift", "lift.capacity", "ratings"),
    ("lift", "#cg", "centre of gravity"),
    ("lift", "#holes", "holes, anchors"),
    ("lift", "lift.manual.thickness", "slab asked for"),
    ("vehicle", "vehicle.preset", "started from"),
    (
        "vehicle",
        "vehicle.height",
        "body: high, long, wide, sill, belt",
    ),
    ("vehicle", "vehicle.mirrors.width_over", "mirrors"),
    ("vehicle", "vehicle.wheelbase", "wheelbase, front overhang"),
    ("vehicle", "vehicle.track.front", "tracks, tyre"),
    (
        "vehicle",
        "vehicle.lift_points.front.station",
        "front lift points",
    ),
    (
        "vehicle",
        "vehicle.lift_points.rear.station",
        "rear lift points",
    ),
    ("vehicle", "vehicle.droop.front", "droop"),
    ("vehicle", "vehicle.axle_loads.front", "axle loads"),
    ("parking", "parking.facing", "parking"),
    ("parking", "parking.repeat.along", "spread, pads raised"),
    ("trust", "policy.measured_garage", "readings off by"),
    ("trust", "policy.over_vehicle", "room to keep"),
];

/// What a group that begins at this question is of; none where none does.
pub(super) fn group(section: &str, key: &str) -> Option<&'static str> {
    let found = GROUPS
        .iter()
        .find(|(of, first, _)| (*of, *first) == (section, key));
    found.map(|(_, _, words)| *words)
}

/// Question numbers in the order of the walk, each once, those that follow one another as
/// `11.2 to 11.9`. What is no number comes first, by itself.
#[must_use]
pub fn in_ranges(numbers: &[&str]) -> String {
    let place = |number: &str| {
        let (section, question) = number.split_once('.')?;
        Some((
            section.parse::<usize>().ok()?,
            question.parse::<usize>().ok()?,
        ))
    };
    let mut numbers = numbers.to_vec();
    numbers.sort_by_key(|number| place(number));
    numbers.dedup();
    let mut runs: Vec<(&str, &str)> = Vec::new();
    for number in &numbers {
        let goes_on = runs.last().and_then(|(_, last)| {
            let ((a, b), (c, d)) = (place(last)?, place(number)?);
            Some(a == c && d == b + 1)
        });
        match runs.last_mut() {
            Some((_, last)) if goes_on == Some(true) => *last = number,
            _ => runs.push((number, number)),
        }
    }
    let runs = runs.iter().map(|(first, last)| {
        if first == last {
            (*first).to_owned()
        } else {
            format!("{first} to {last}")
        }
    });
    runs.collect::<Vec<_>>().join(", ")
}

/// The place of a section in the walk, counted from 1.
pub(super) fn at(section: &str) -> Option<usize> {
    Some(1 + sections().iter().position(|one| one.id == section)?)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_section_is_shown_once_and_every_plain_one_begins_with_a_group() {
        let shown: Vec<&str> = PARTS
            .iter()
            .flat_map(|(_, ids)| ids.iter().copied())
            .collect();
        assert_eq!(shown.len(), sections().len());
        for section in sections() {
            assert!(shown.contains(&section.id), "{}", section.id);
            let first = section.questions[0].key;
            let begins = group(section.id, first).is_some();
            assert_eq!(begins, section.repeat.is_none(), "{}", section.id);
        }
        for (section, key, _) in GROUPS {
            assert!(
                crate::worksheet::number(section, key).is_some(),
                "{section} {key}"
            );
        }
    }

    #[test]
    fn numbers_that_follow_one_another_are_told_by_the_first_and_the_last() {
        let told = in_ranges(&[
            "2.10", "2.1", "2.2", "2.3", "2.2", "2.9", "3.1", "slab", "3.3",
        ]);
        assert_eq!(told, "slab, 2.1 to 2.3, 2.9 to 2.10, 3.1, 3.3");
        assert_eq!(in_ranges(&[]), "");
    }
}
