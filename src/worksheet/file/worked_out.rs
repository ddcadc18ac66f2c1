//! What follows from several answers: the slab's outline, room enough, the vehicle's place, whether
//! the open door hangs as its figures say.

use super::build::Text;
use super::{Answers, Refused, label, unquoted};
use crate::bay::Bay;
use crate::solids::list::solids;
use crate::solids::{DoorTravel, Role};
use crate::starter;
use crate::units::{Length, Rounding, both, parse_length};

/// The corners of a rectangle, as a bay file writes them.
fn rectangle([left, right]: [Length; 2], [near, far]: [Length; 2]) -> String {
    let mm = |length: Length| {
        let text = format!("{:.4}", length.m() * 1000.0);
        format!(
            "\"{} mm\"",
            text.trim_end_matches('0').trim_end_matches('.')
        )
    };
    let corners = [(left, near), (right, near), (right, far), (left, far)];
    let corners = corners.map(|(x, y)| format!("({}, {})", mm(x), mm(y)));
    format!("[{}]", corners.join(", "))
}

impl Answers {
    /// Where the slab reaches to the walls its outline is the room's.
    pub(super) fn slab_outline(&self, text: &mut Text) -> Result<(), Refused> {
        match self.plain("#to_walls") {
            Some("true") => {}
            Some(_) => return self.slab_edges(text),
            None => return Ok(()),
        }
        let (Some(width), Some(depth)) = (self.length("garage.width"), self.length("garage.depth"))
        else {
            text.notes.push(
                "The slab's outline is left out: the room's width and depth are needed for it."
                    .into(),
            );
            return Ok(());
        };
        let Some(offset) = self.length("garage.opening.offset") else {
            text.notes.push(
                "The slab's outline is left out: where the door lies in its wall is needed for it."
                    .into(),
            );
            return Ok(());
        };
        let (left, right) = (width * -0.5 - offset, width * 0.5 - offset);
        text.set(
            "slab.outline",
            &rectangle([left, right], [Length::ZERO, depth]),
        )
    }

    /// A slab that ends before the walls: as far as its edges were measured; while one is missing
    /// an anchor might go into air.
    fn slab_edges(&self, text: &mut Text) -> Result<(), Refused> {
        let keys = ["#slab.left", "#slab.right", "#slab.near", "#slab.far"];
        let [Some(left), Some(right), Some(near), Some(far)] = keys.map(|key| self.length(key))
        else {
            for key in keys.iter().filter(|key| self.plain(key).is_none()) {
                text.withhold(
                    format!("{}, so the slab's outline is not in the file", label(key)),
                    vec![
                        "Measure the slab's edges, and write its corners into".into(),
                        "slab.outline: [(x, y), ..], from the door's middle and the door wall."
                            .into(),
                    ],
                );
            }
            return Ok(());
        };
        if near >= far {
            return Err(Refused::new(
                "the slab's edge toward the back lies no farther in than the one toward the door",
                "both are measured from the door wall into the room",
            ));
        }
        text.set(
            "slab.outline",
            &rectangle([left * -1.0, right], [near, far]),
        )
    }

    /// Placeholders give way to what was measured: no measured door is refused for the size of a
    /// room that nobody measured.
    pub(super) fn room_for_all(&self, text: &mut Text) -> Result<(), Refused> {
        let at_least = |text: &mut Text, path: &str, least: Length| -> Result<(), Refused> {
            let now = text
                .value(path)
                .and_then(|ron| parse_length(&unquoted(&ron)).ok());
            if self.plain(path).is_none() && now.is_some_and(|now| now < least) {
                return text.set(path, &text.shown(least));
            }
            Ok(())
        };
        let opening = self.length("garage.opening.width").unwrap_or(Length::ZERO);
        let offset = self.length("garage.opening.offset").unwrap_or(Length::ZERO);
        let high = self.length("garage.opening.height").unwrap_or(Length::ZERO);
        let line = self.length("lift.post_line").unwrap_or(Length::ZERO);
        let step = |key: &str| self.length(key).unwrap_or(Length::ZERO);
        let step = step("#step.from").max(step("#step.second"));
        let metre = Length::metres(1.0);
        self.opening_that_fits(text)?;
        at_least(text, "garage.width", opening + offset.abs() * 2.0 + metre)?;
        at_least(
            text,
            "garage.depth",
            (line + metre * 4.0).max(step + metre * 2.0),
        )?;
        for path in ["height", "first", "last", "eaves", "steps[0].height"] {
            if path == "steps[0].height" && self.plain("#step.height").is_some() {
                continue;
            }
            at_least(text, &format!("garage.ceiling.{path}"), high + metre)?;
        }
        let eaves = self.length("garage.ceiling.eaves").unwrap_or(Length::ZERO);
        at_least(text, "garage.ceiling.ridge", eaves + metre)
    }

    /// No measured room is refused for the size of an opening that nobody measured.
    fn opening_that_fits(&self, text: &mut Text) -> Result<(), Refused> {
        let at_most = |text: &mut Text, path: &str, most: Option<Length>| -> Result<(), Refused> {
            let now = text
                .value(path)
                .and_then(|ron| parse_length(&unquoted(&ron)).ok());
            match (most, now) {
                (Some(most), Some(now))
                    if self.plain(path).is_none() && most > Length::ZERO && now > most =>
                {
                    // A little less: read again it must not be a hair more.
                    let mm = (most.m() * 1000.0 - 0.5).floor();
                    text.set(path, &format!("\"{mm} mm\""))
                }
                _ => Ok(()),
            }
        };
        let offset = self.length("garage.opening.offset").unwrap_or(Length::ZERO);
        let wall = self.length("garage.width");
        let wall = wall.map(|wall| wall - offset.abs() * 2.0);
        at_most(text, "garage.opening.width", wall)?;
        let ceilings =
            ["height", "first", "last", "eaves"].map(|at| format!("garage.ceiling.{at}"));
        let ceilings = ceilings.iter().map(String::as_str).chain(["#step.height"]);
        let lowest = ceilings.filter_map(|key| self.length(key));
        let lowest = lowest.reduce(|one, other| if other < one { other } else { one });
        at_most(text, "garage.opening.height", lowest)
    }

    /// Where the vehicle stands, unless it was said: where all four arms reach.
    pub(super) fn find_aim(&self, text: &mut Text, bay: &Bay) -> Result<(), Refused> {
        if self.plain("#aim").is_some() {
            return Ok(());
        }
        match starter::nearest_aim(bay) {
            Some(aim) => {
                text.set(
                    "parking.aim",
                    &format!("CentreOfGravity({})", text.shown(aim)),
                )?;
                text.notes.push(format!(
                    "The vehicle's centre of gravity is aimed at {} behind the post line, a place \
                     from which all four arms reach.",
                    both(aim, bay.units, Rounding::Nearest)
                ));
            }
            None => {
                let zero = text.either("0 in", "0 mm");
                text.set("parking.aim", &format!("CentreOfGravity({zero})"))?;
                text.notes.push(
                    "No place of the vehicle was found from which all four arms reach: see what \
                     `bayrise check` says of the arms."
                        .into(),
                );
            }
        }
        Ok(())
    }

    /// The open door as read against the open door of the file's figures.
    pub(super) fn against_the_open_door(&self, text: &mut Text, bay: &Bay) {
        let Some(read) = self.length("#open_lowest") else {
            return;
        };
        text.head.push(format!(
            "The open door was read {} at its lowest point inside.",
            self.text("#open_lowest").unwrap_or_default()
        ));
        let Ok(all) = solids(bay, DoorTravel::Open, 0.0) else {
            return;
        };
        let door = all.iter().filter(|one| {
            matches!(one.role, Role::DoorPanel | Role::DoorFitting) && one.bounds().1.y > 0.05
        });
        // Upright tracks reach down to the floor at both sides and tell nothing.
        let inside = door.filter(|one| !one.name.contains("track"));
        let lowest = inside
            .map(|one| one.bounds().0.z)
            .fold(f64::INFINITY, f64::min);
        if read.m() < lowest - bay.policy.measured_garage.m() {
            let words = format!(
                "THE OPEN DOOR HANGS LOWER than the figures of the door say: {} read, {} worked out. \
                 Measure panels and tracks again, or put what hangs lower into the file as a thing in \
                 the room.",
                both(read, bay.units, Rounding::Down),
                both(Length::metres(lowest), bay.units, Rounding::Down)
            );
            text.withhold(
                format!(
                    "{}: read {}, lower than the figures of the door say",
                    label("#open_lowest"),
                    both(read, bay.units, Rounding::Down)
                ),
                vec![
                    "Measure the figures of garage.door again, or put what hangs lower into".into(),
                    "garage.obstacles: [..].".into(),
                ],
            );
            text.head.push(words.clone());
            text.notes.push(words);
        }
    }
}
