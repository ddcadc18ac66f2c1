//! How is each solid of the bay painted?

use std::sync::Arc;

use glam::DVec3;

use super::{Decal, Livery, Paint, wheel_decals};
use crate::bay::{Bay, ObstacleKind, SlabLineKind};
use crate::drawing::facets::{Facet, HalfSpace};
use crate::drawing::palette::{Colour, things};
use crate::solids::{Role, Shape, Solid};

/// Width of a saw cut as drawn, metres: wider than it is, so that it is seen.
const JOINT_M: f64 = 0.012;
/// Width of a crack as drawn, metres.
const CRACK_M: f64 = 0.006;

/// How a solid is painted.
#[derive(Debug, Clone)]
pub struct Painting {
    base: Base,
    /// On top of the base, in the solid's own frame.
    pub decals: Arc<[Decal]>,
}

#[derive(Debug, Clone, PartialEq)]
enum Base {
    Plain(Paint),
    /// One paint, another from below.
    Under(Paint, Paint),
}

impl PartialEq for Painting {
    fn eq(&self, other: &Self) -> bool {
        let decals = Arc::ptr_eq(&self.decals, &other.decals) || self.decals == other.decals;
        decals && self.base == other.base
    }
}

impl Painting {
    /// The paint of a face where no decal lies.
    #[must_use]
    pub fn base(&self, facet: &Facet) -> Paint {
        match &self.base {
            Base::Plain(paint) => *paint,
            Base::Under(paint, below) => {
                if facet.normal.z < -0.7 {
                    *below
                } else {
                    *paint
                }
            }
        }
    }
}

/// The painting of a solid of the bay; `livery` is that of the vehicle as it stands.
#[must_use]
pub fn paint_of(bay: &Bay, solid: &Solid, livery: &Livery) -> Painting {
    let matt = |colour: Colour| Base::Plain(Paint::matt(colour));
    let gloss = |colour: Colour| Base::Plain(Paint::gloss(colour));
    let mut decals: Arc<[Decal]> = Arc::new([]);
    let base = match solid.role {
        Role::Floor => {
            decals = floor_lines(bay, solid).into();
            matt(things::FLOOR)
        }
        Role::Wall | Role::DoorWall => matt(things::WALL),
        Role::Ceiling => matt(things::CEILING),
        Role::Obstacle(index) => obstacle(bay, index),
        Role::DoorPanel => {
            decals = grooves(solid).into();
            matt(things::DOOR)
        }
        Role::DoorFitting => matt(things::GALVANISED),
        Role::Opener => matt(if solid.name.contains("rail") {
            things::GALVANISED
        } else {
            things::OPENER
        }),
        Role::Post(_) | Role::BasePlate(_) | Role::TieBeam | Role::FloorPlate => {
            gloss(things::COLUMN)
        }
        Role::PowerUnit(_) => matt(things::POWER_UNIT),
        Role::ShutOffBar => matt(things::BAR),
        Role::Carriage(_) | Role::Arm(_) => gloss(things::ARM),
        Role::Pad(_) => matt(things::RUBBER),
        Role::Mirror => gloss(things::MIRROR),
        Role::Wheel(_) => {
            if let Shape::Cylinder { radius, .. } = solid.shape {
                decals = wheel_decals(radius).into();
            }
            matt(things::RUBBER)
        }
        Role::Body => match part_of_body(bay, solid) {
            BodyPart::Shell => {
                if let Shape::Prism { vertices } = &solid.shape {
                    decals = livery.decals_on(vertices).into();
                }
                Base::Under(livery.body(), Paint::matt(things::UNDERBODY))
            }
            BodyPart::Load => Base::Under(Paint::gloss(things::LOAD), Paint::matt(things::LOAD)),
            BodyPart::Below => matt(things::UNDERBODY),
        },
    };
    Painting { base, decals }
}

/// What a solid of the body is.
enum BodyPart {
    /// Its outer skin, built in the vehicle's own frame.
    Shell,
    /// Fixed to it.
    Load,
    /// Hanging under it.
    Below,
}

fn part_of_body(bay: &Bay, solid: &Solid) -> BodyPart {
    let name = solid.name.trim_start_matches("vehicle/");
    let is_prism = matches!(solid.shape, Shape::Prism { .. });
    if is_prism && (name.starts_with("side ") || name.starts_with("roof ")) {
        return BodyPart::Shell;
    }
    // A load's name may carry a number that made it unique.
    let is_load = |part: &crate::bay::AttachedPart| name.starts_with(part.name.as_str());
    if bay.vehicle.attached.iter().any(is_load) {
        BodyPart::Load
    } else {
        BodyPart::Below
    }
}

fn obstacle(bay: &Bay, index: usize) -> Base {
    let kind = bay.garage.obstacles.get(index).map(|o| o.kind);
    Base::Plain(match kind.unwrap_or(ObstacleKind::Other) {
        ObstacleKind::Light => Paint::glow(things::LAMP_ON),
        ObstacleKind::Beam
        | ObstacleKind::CollarTie
        | ObstacleKind::Shelf
        | ObstacleKind::Bench
        | ObstacleKind::Post => Paint::matt(things::TIMBER),
        ObstacleKind::Duct | ObstacleKind::Pipe | ObstacleKind::Fan => {
            Paint::gloss(things::GALVANISED)
        }
        ObstacleKind::Heater | ObstacleKind::SecondVehicle | ObstacleKind::Other => {
            Paint::matt(things::OTHER)
        }
    })
}

/// Two grooves along a door panel, on both of its faces.
fn grooves(solid: &Solid) -> Vec<Decal> {
    let Shape::Box { half } = solid.shape else {
        return Vec::new();
    };
    // The panel's own z runs from its lower to its upper edge.
    if half.z < 0.12 || half.x < 3.0 * half.z {
        return Vec::new();
    }
    let mut decals = Vec::new();
    for toward in [DVec3::Y, DVec3::NEG_Y] {
        for share in [-0.34, 0.34] {
            let at = share * half.z;
            decals.push(Decal {
                region: vec![
                    HalfSpace::behind(DVec3::Z, DVec3::new(0.0, 0.0, at + 0.012)),
                    HalfSpace::behind(DVec3::NEG_Z, DVec3::new(0.0, 0.0, at - 0.012)),
                ],
                toward,
                least: 0.9,
                paint: Paint::matt(things::DOOR_GROOVE),
            });
        }
    }
    decals
}

/// Joints, cracks and drains on the floor, where the file has them.
fn floor_lines(bay: &Bay, solid: &Solid) -> Vec<Decal> {
    let Some(slab) = &bay.slab else {
        return Vec::new();
    };
    slab.lines
        .iter()
        .filter_map(|line| {
            let width = match line.kind {
                SlabLineKind::Joint | SlabLineKind::Edge => JOINT_M,
                SlabLineKind::Crack => CRACK_M,
                SlabLineKind::Drain => 8.0 * JOINT_M,
            };
            let [from, to] = [line.from, line.to].map(|[x, y]| DVec3::new(x.m(), y.m(), 0.0));
            let along = (to - from).try_normalize()?;
            let beside = DVec3::new(-along.y, along.x, 0.0);
            let region = [
                (along, to),
                (-along, from),
                (beside, from + beside * (width * 0.5)),
                (-beside, from - beside * (width * 0.5)),
            ];
            let pose = solid.bay_from_solid;
            Some(Decal {
                region: region
                    .map(|(normal, point)| {
                        HalfSpace::behind(normal, point).seen_from(pose.rotation, pose.translation)
                    })
                    .to_vec(),
                toward: DVec3::Z,
                least: 0.8,
                paint: Paint::matt(things::FLOOR_LINE),
            })
        })
        .collect()
}
