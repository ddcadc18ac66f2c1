//! The list of solids as plain data, so that any outside program can check us.

use schemars::JsonSchema;
use serde::Serialize;

use super::{Layer, Shape, Solid};

/// One solid as plain data, bay axes, metres.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct SolidExport {
    /// Stable path-like name, unique in the list.
    pub name: String,
    /// The group it is drawn in.
    pub layer: LayerExport,
    /// Whether it climbs with the carriage or the vehicle.
    pub motion: Motion,
    /// Kind and sizes.
    #[serde(flatten)]
    pub shape: ShapeExport,
    /// Where the solid's own origin lies in the bay.
    pub position_m: [f64; 3],
    /// The rotation from the solid's own frame to the bay's.
    pub quaternion: QuaternionExport,
}

/// The group a solid is drawn in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum LayerExport {
    /// Floor, walls, ceiling.
    Shell,
    /// Beams, lights and everything else in the room.
    Overhead,
    /// Door, tracks, springs, opener.
    Door,
    /// Columns, base plates, tie, power unit.
    Post,
    /// Carriages, arms, pads.
    MovingLift,
    /// The vehicle.
    Vehicle,
}

/// Whether a solid climbs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Motion {
    /// It climbs with the carriage or the vehicle.
    Moving,
    /// It stays where it is.
    Fixed,
}

/// Kind and sizes of a solid in its own frame, metres.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum ShapeExport {
    /// A box about its origin.
    Box {
        /// Full size along its own x, y and z.
        size_m: [f64; 3],
    },
    /// A cylinder about its origin, its axis along its own z.
    Cylinder {
        /// Radius.
        radius_m: f64,
        /// Full length of the axis.
        height_m: f64,
    },
    /// The convex hull of points.
    Prism {
        /// The corners in the solid's own frame, in no particular order.
        vertices_m: Vec<[f64; 3]>,
    },
}

/// A unit quaternion.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct QuaternionExport {
    /// Scalar part.
    pub w: f64,
    /// Vector part, x.
    pub x: f64,
    /// Vector part, y.
    pub y: f64,
    /// Vector part, z.
    pub z: f64,
}

/// The solids as plain data, in the same order.
#[must_use]
pub fn export(solids: &[Solid]) -> Vec<SolidExport> {
    solids.iter().map(SolidExport::from).collect()
}

impl From<&Solid> for SolidExport {
    fn from(solid: &Solid) -> Self {
        let rotation = solid.bay_from_solid.rotation;
        Self {
            name: solid.name.clone(),
            layer: solid.layer().into(),
            motion: if solid.role.moves() {
                Motion::Moving
            } else {
                Motion::Fixed
            },
            shape: (&solid.shape).into(),
            position_m: solid.bay_from_solid.translation.to_array(),
            quaternion: QuaternionExport {
                w: rotation.w,
                x: rotation.x,
                y: rotation.y,
                z: rotation.z,
            },
        }
    }
}

impl From<Layer> for LayerExport {
    fn from(layer: Layer) -> Self {
        match layer {
            Layer::Shell => Self::Shell,
            Layer::Overhead => Self::Overhead,
            Layer::Door => Self::Door,
            Layer::Post => Self::Post,
            Layer::MovingLift => Self::MovingLift,
            Layer::Vehicle => Self::Vehicle,
        }
    }
}

impl From<&Shape> for ShapeExport {
    fn from(shape: &Shape) -> Self {
        match shape {
            Shape::Box { half } => Self::Box {
                size_m: (*half * 2.0).to_array(),
            },
            Shape::Cylinder {
                radius,
                half_height,
            } => Self::Cylinder {
                radius_m: *radius,
                height_m: half_height * 2.0,
            },
            Shape::Prism { vertices } => Self::Prism {
                vertices_m: vertices.iter().map(|vertex| vertex.to_array()).collect(),
            },
        }
    }
}
