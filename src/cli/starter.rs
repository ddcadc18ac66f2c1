//! What does a new bay file say, and what must be measured for it?

use crate::bay::UnitSystem;

/// The figures to be measured: the word in the template, in feet and inches, in millimetres.
const FIGURES: &[(&str, &str, &str)] = &[
    ("ROOM_WIDTH", "24 ft", "7300 mm"),
    ("ROOM_DEPTH", "30 ft", "9100 mm"),
    ("OPENING_WIDTH", "10 ft", "3000 mm"),
    ("OPENING_HEIGHT", "9 ft", "2750 mm"),
    ("WALL", "6 in", "150 mm"),
    ("CEILING", "13 ft", "3960 mm"),
    ("PANEL_HEIGHT", "21 in", "530 mm"),
    ("PANEL", "2 in", "50 mm"),
    ("TRACK_RADIUS", "15 in", "380 mm"),
    ("TRACK_OFFSET", "3 1/2 in", "90 mm"),
    ("TRACK_SECTION", "3 in", "75 mm"),
    ("TRACK_LENGTH", "9 ft 6 in", "2900 mm"),
    ("SPRING_HEIGHT", "10 ft 2 in", "3100 mm"),
    ("SPRING_OUT", "5 in", "125 mm"),
    ("SPRING_DIAMETER", "6 in", "150 mm"),
    ("BRACKET", "3 in", "75 mm"),
    ("RAIL_BOTTOM", "10 ft 6 in", "3200 mm"),
    ("RAIL_SECTION", "2 in", "50 mm"),
    ("RAIL_LENGTH", "11 ft", "3350 mm"),
    ("HEAD_WIDTH", "10 in", "250 mm"),
    ("HEAD_DEPTH", "14 in", "350 mm"),
    ("HEAD_HEIGHT", "8 in", "200 mm"),
    ("HEAD_BOTTOM", "10 ft 3 in", "3120 mm"),
    ("ARM_DROP", "12 in", "300 mm"),
    ("CORD_DROP", "24 in", "600 mm"),
    ("LIGHT_X", "-6 ft", "-1800 mm"),
    ("LIGHT_Y", "15 ft", "4600 mm"),
    ("LIGHT_BOTTOM", "12 ft 6 in", "3800 mm"),
    ("LIGHT_WIDTH", "6 in", "150 mm"),
    ("LIGHT_DEPTH", "4 ft", "1200 mm"),
    ("LIGHT_HEIGHT", "4 in", "100 mm"),
    ("POST_LINE", "15 ft", "4600 mm"),
    ("REPEAT_ALONG", "2 in", "50 mm"),
    ("REPEAT_ACROSS", "1 in", "25 mm"),
    ("OVER", "3 in", "75 mm"),
    ("BESIDE", "2 in", "50 mm"),
    ("ROOM_TRUST", "1/4 in", "6 mm"),
    ("LIFT_TRUST", "1/8 in", "3 mm"),
    ("PERSON", "5 ft 10 in", "1780 mm"),
    ("ZERO", "0 in", "0 mm"),
];

const TEMPLATE: &str = include_str!("starter.ron");

/// The text of a new bay file for two shipped presets.
pub(super) fn starter(lift: &str, vehicle: &str, units: UnitSystem) -> String {
    let system = match units {
        UnitSystem::Imperial => "Imperial",
        UnitSystem::Metric => "Metric",
    };
    let mut text = TEMPLATE
        .replace("{UNITS}", system)
        .replace("{LIFT}", lift)
        .replace("{VEHICLE}", vehicle);
    for (word, imperial, metric) in FIGURES {
        let figure = match units {
            UnitSystem::Imperial => imperial,
            UnitSystem::Metric => metric,
        };
        text = text.replace(&format!("{{{word}}}"), figure);
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bayfile::presets::{EmbeddedOnly, lifts, vehicles};
    use crate::diagnostics::{Style, render};

    #[test]
    fn every_lift_with_every_vehicle_is_read_without_a_warning() {
        for units in [UnitSystem::Imperial, UnitSystem::Metric] {
            for lift in lifts() {
                for vehicle in vehicles() {
                    let text = starter(lift.name, vehicle.name, units);
                    let read = crate::bayfile::read("new", text.as_bytes(), &EmbeddedOnly);
                    let read = read.unwrap_or_else(|f| panic!("{}", render(&f, Style::default())));
                    assert_eq!(read.warnings, [], "{} {}", lift.name, vehicle.name);
                    assert_eq!(read.bay.units, units);
                }
            }
        }
    }

    #[test]
    fn no_word_is_left_unfilled() {
        for units in [UnitSystem::Imperial, UnitSystem::Metric] {
            let text = starter("a", "b", units);
            assert!(!text.contains(['{', '}']), "{text}");
        }
    }

    #[test]
    fn it_says_of_itself_that_nothing_is_measured() {
        let text = starter("a", "b", UnitSystem::Imperial);
        assert!(text.contains("not measured yet"));
        assert!(text.matches("MEASURE").count() > 15);
    }
}
