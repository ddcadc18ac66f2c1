//! Where are the solids of a pair as they are drawn?

use glam::DVec3;

use crate::bay::Bay;
use crate::clearance::body::Body;
use crate::clearance::movers::Movers;
use crate::clearance::study::StudyError;
use crate::solids::raise::{Place, Raise};
use crate::solids::{DoorTravel, Layer, Pose, Solid, door, opener, vehicle};

/// The moving solids, ready to be posed at any travel.
#[derive(Debug, Clone)]
pub(super) struct Drawn {
    raise: Raise,
    /// In the order of the movers' solids.
    parts: Vec<Part>,
}

#[derive(Debug, Clone)]
struct Part {
    solid: Solid,
    of_vehicle: bool,
    /// For a wheel its axle.
    wheel: Option<usize>,
}

impl Drawn {
    pub(super) fn new(bay: &Bay, movers: &Movers) -> Result<Self, StudyError> {
        let lift = |solid: &&Solid| solid.role.layer() != Layer::Vehicle;
        let carried = movers.solids.iter().filter(lift).map(|solid| Part {
            solid: solid.clone(),
            of_vehicle: false,
            wheel: None,
        });
        let vehicle = vehicle::parts(bay).into_iter().map(|part| Part {
            solid: part.solid,
            of_vehicle: true,
            wheel: part.wheel,
        });
        Ok(Self {
            raise: Raise::new(bay)?,
            parts: carried.chain(vehicle).collect(),
        })
    }

    /// Where the vehicle is at a travel.
    pub(super) fn place(&self, travel_m: f64) -> Place {
        self.raise.at(travel_m)
    }

    /// A moving solid as drawn, by its index into the movers' solids.
    pub(super) fn body(&self, solid: usize, travel_m: f64, place: &Place) -> Option<Body> {
        let part = self.parts.get(solid)?;
        let own = part.solid.bay_from_solid;
        let pose: Pose = if part.of_vehicle {
            let droop = part.wheel.map_or(0.0, |axle| place.1[axle]);
            place.0.after(own.moved(DVec3::NEG_Z * droop))
        } else {
            own.moved(DVec3::Z * travel_m)
        };
        Some(Body::of(&part.solid.shape, &[pose], DVec3::ZERO))
    }
}

/// Parts of door and opener that move, as drawn part of the way; kept until the door is moved.
#[derive(Debug, Clone)]
pub(super) struct DrawnDoor {
    fraction: f64,
    pub(super) parts: Vec<DoorPart>,
}

#[derive(Debug, Clone)]
pub(super) struct DoorPart {
    pub(super) name: String,
    pub(super) of_opener: bool,
    pub(super) body: Body,
}

impl DrawnDoor {
    /// The moving parts with the door at `fraction` of its way. What is `standing` (the solids of
    /// the running door) as it is drawn does not move.
    pub(super) fn at(bay: &Bay, fraction: f64, standing: &[Solid]) -> Self {
        let of_door = door::door(bay, DoorTravel::At(fraction));
        let of_opener = opener::opener(bay, DoorTravel::At(fraction));
        let part = |solid: Solid, of_opener: bool| DoorPart {
            body: Body::exact(&solid),
            name: solid.name,
            of_opener,
        };
        let parts = of_door
            .into_iter()
            .map(|solid| (solid, false))
            .chain(of_opener.into_iter().map(|solid| (solid, true)))
            .filter(|(solid, _)| !standing.contains(solid))
            .map(|(solid, of_opener)| part(solid, of_opener))
            .collect();
        Self { fraction, parts }
    }

    pub(super) fn is_at(&self, fraction: f64) -> bool {
        self.fraction.total_cmp(&fraction).is_eq()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::clearance::movers::movers;
    use crate::clearance::uncertainty::Uncertainty;
    use crate::solids::test_bay::test_bay;

    #[test]
    fn parts_come_in_the_order_of_the_movers() {
        let bay = test_bay();
        let movers = movers(&bay, &Uncertainty::worst(&bay)).unwrap();
        let drawn = Drawn::new(&bay, &movers).unwrap();
        let names = drawn.parts.iter().map(|part| &part.solid.name);
        assert!(names.eq(movers.solids.iter().map(|solid| &solid.name)));
    }

    #[test]
    fn only_what_moves_is_drawn_part_of_the_way() {
        let bay = test_bay();
        let mut standing = door::envelope(&bay);
        standing.extend(opener::envelope(&bay));
        let door = DrawnDoor::at(&bay, 0.5, &standing);
        let moves = |name: &str| door.parts.iter().any(|part| part.name == name);
        assert!(moves("door/panel 1") && moves("opener/arm"));
        assert!(!moves("opener/rail") && !door.parts.iter().any(|p| p.name.contains("track")));
    }
}
