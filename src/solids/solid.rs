//! What a solid is: a named convex thing with a role, a shape and a pose.

use glam::{DQuat, DVec3};

use crate::bay::{Corner, Side};

/// A rigid pose: rotate, then translate. Maps points of the solid's own frame into the bay (or,
/// where a name says so, into the vehicle). Metres and unit quaternions.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pose {
    /// The rotation.
    pub rotation: DQuat,
    /// The translation, metres.
    pub translation: DVec3,
}

impl Pose {
    /// No rotation, no translation.
    pub const IDENTITY: Self = Self {
        rotation: DQuat::IDENTITY,
        translation: DVec3::ZERO,
    };

    /// A pure translation.
    #[must_use]
    pub const fn at(translation: DVec3) -> Self {
        Self {
            rotation: DQuat::IDENTITY,
            translation,
        }
    }

    /// A rotation and a translation.
    #[must_use]
    pub const fn new(rotation: DQuat, translation: DVec3) -> Self {
        Self {
            rotation,
            translation,
        }
    }

    /// The point carried into the outer frame.
    #[must_use]
    pub fn point(&self, point: DVec3) -> DVec3 {
        self.rotation * point + self.translation
    }

    /// `a.then_inner(b)` maps a point of `b`'s inner frame through `b`, then through `a`:
    /// `bay_from_vehicle.after(vehicle_from_solid)` is `bay_from_solid`.
    #[must_use]
    pub fn after(&self, inner: Self) -> Self {
        Self {
            rotation: self.rotation * inner.rotation,
            translation: self.point(inner.translation),
        }
    }

    /// The same pose moved by `shift` in the outer frame.
    #[must_use]
    pub fn moved(&self, shift: DVec3) -> Self {
        Self {
            rotation: self.rotation,
            translation: self.translation + shift,
        }
    }
}

/// A convex shape in its own frame. Metres.
#[derive(Debug, Clone, PartialEq)]
pub enum Shape {
    /// A box about the origin.
    Box {
        /// Half its size along each axis.
        half: DVec3,
    },
    /// A cylinder about the origin, its axis along the solid's own `z`.
    Cylinder {
        /// Radius.
        radius: f64,
        /// Half its length.
        half_height: f64,
    },
    /// The convex hull of points.
    Prism {
        /// The corners, in no particular order.
        vertices: Vec<DVec3>,
    },
}

impl Shape {
    /// The box's corners or the prism's; none for a cylinder.
    #[must_use]
    pub fn corners(&self) -> Vec<DVec3> {
        match self {
            Self::Box { half } => (0..8)
                .map(|i| {
                    let sign = |bit: usize| if i >> bit & 1 == 1 { 1.0 } else { -1.0 };
                    DVec3::new(sign(0) * half.x, sign(1) * half.y, sign(2) * half.z)
                })
                .collect(),
            Self::Prism { vertices } => vertices.clone(),
            Self::Cylinder { .. } => Vec::new(),
        }
    }

    /// The point of the shape so posed that is farthest along `direction` (any length but zero),
    /// outer frame.
    #[must_use]
    pub fn support(&self, pose: Pose, direction: DVec3) -> DVec3 {
        let local = pose.rotation.inverse() * direction;
        let point = match self {
            Self::Box { half } => DVec3::new(
                half.x.copysign(local.x),
                half.y.copysign(local.y),
                half.z.copysign(local.z),
            ),
            Self::Cylinder {
                radius,
                half_height,
            } => {
                let flat = DVec3::new(local.x, local.y, 0.0);
                let rim = flat.normalize_or_zero() * *radius;
                DVec3::new(rim.x, rim.y, half_height.copysign(local.z))
            }
            Self::Prism { vertices } => {
                let mut best = DVec3::ZERO;
                let mut best_dot = f64::NEG_INFINITY;
                for &vertex in vertices {
                    let dot = vertex.dot(local);
                    if dot > best_dot {
                        best_dot = dot;
                        best = vertex;
                    }
                }
                best
            }
        };
        pose.point(point)
    }
}

/// The coarse group a solid belongs to, for switching on and off in pictures and exports.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Layer {
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

/// What a solid is, as far as pairs and margins care.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Role {
    /// The floor slab.
    Floor,
    /// A side or back wall.
    Wall,
    /// The door wall's parts beside and over the opening.
    DoorWall,
    /// The ceiling or a roof plane.
    Ceiling,
    /// Something in the room; the index into `garage.obstacles`.
    Obstacle(usize),
    /// A door panel, curtain or leaf.
    DoorPanel,
    /// A door track, spring, shaft or drum.
    DoorFitting,
    /// The opener: rail, head unit, arm, cord, wall unit.
    Opener,
    /// A column.
    Post(Side),
    /// A base plate.
    BasePlate(Side),
    /// Motor, pump and tank.
    PowerUnit(Side),
    /// The overhead beam.
    TieBeam,
    /// The plate on the floor between the columns.
    FloorPlate,
    /// The padded shut-off bar.
    ShutOffBar,
    /// A carriage.
    Carriage(Side),
    /// An arm.
    Arm(Corner),
    /// A pad with its screw and adapters.
    Pad(Corner),
    /// The vehicle's body, what hangs under it and what is fixed to it.
    Body,
    /// A door mirror.
    Mirror,
    /// A wheel of the front (0) or rear (1) axle.
    Wheel(usize),
}

impl Role {
    /// The layer this role is drawn in.
    #[must_use]
    pub const fn layer(self) -> Layer {
        match self {
            Self::Floor | Self::Wall | Self::DoorWall | Self::Ceiling => Layer::Shell,
            Self::Obstacle(_) => Layer::Overhead,
            Self::DoorPanel | Self::DoorFitting | Self::Opener => Layer::Door,
            Self::Post(_)
            | Self::BasePlate(_)
            | Self::PowerUnit(_)
            | Self::TieBeam
            | Self::FloorPlate
            | Self::ShutOffBar => Layer::Post,
            Self::Carriage(_) | Self::Arm(_) | Self::Pad(_) => Layer::MovingLift,
            Self::Body | Self::Mirror | Self::Wheel(_) => Layer::Vehicle,
        }
    }

    /// True for what climbs with the carriage or the vehicle.
    #[must_use]
    pub const fn moves(self) -> bool {
        matches!(self.layer(), Layer::MovingLift | Layer::Vehicle)
    }
}

/// A named convex solid. The only geometry there is: the study, the pictures, the drawings and
/// the exports all take it from the same list.
#[derive(Debug, Clone, PartialEq)]
pub struct Solid {
    /// Stable path-like name, unique in its list: `vehicle/roof rack`, `door/track left`.
    pub name: String,
    /// What it is.
    pub role: Role,
    /// Its shape, in its own frame.
    pub shape: Shape,
    /// Where it is: at travel 0 for what moves. (Vehicle parts are built in the vehicle frame
    /// first; there the same field holds `vehicle_from_solid`, see [`super::vehicle`].)
    pub bay_from_solid: Pose,
}

impl Solid {
    /// A box given by two opposite corners, axes along the bay's.
    #[must_use]
    pub fn aligned_box(name: impl Into<String>, role: Role, low: DVec3, high: DVec3) -> Self {
        Self {
            name: name.into(),
            role,
            shape: Shape::Box {
                half: (high - low) * 0.5,
            },
            bay_from_solid: Pose::at((low + high) * 0.5),
        }
    }

    /// A box of full size `size` with the given pose of its middle.
    #[must_use]
    pub fn posed_box(name: impl Into<String>, role: Role, size: DVec3, pose: Pose) -> Self {
        Self {
            name: name.into(),
            role,
            shape: Shape::Box { half: size * 0.5 },
            bay_from_solid: pose,
        }
    }

    /// A round bar between two points on its axis.
    #[must_use]
    pub fn bar(name: impl Into<String>, role: Role, from: DVec3, to: DVec3, radius: f64) -> Self {
        let axis = (to - from).normalize_or(DVec3::Z);
        Self {
            name: name.into(),
            role,
            shape: Shape::Cylinder {
                radius,
                half_height: (to - from).length() * 0.5,
            },
            bay_from_solid: Pose::new(DQuat::from_rotation_arc(DVec3::Z, axis), (from + to) * 0.5),
        }
    }

    /// The convex hull of points given in the outer frame.
    #[must_use]
    pub fn hull(name: impl Into<String>, role: Role, vertices: Vec<DVec3>) -> Self {
        Self {
            name: name.into(),
            role,
            shape: Shape::Prism { vertices },
            bay_from_solid: Pose::IDENTITY,
        }
    }

    /// The layer it is drawn in.
    #[must_use]
    pub const fn layer(&self) -> Layer {
        self.role.layer()
    }

    /// The point of the solid farthest along `direction` (any length but zero), outer frame.
    #[must_use]
    pub fn support(&self, direction: DVec3) -> DVec3 {
        self.shape.support(self.bay_from_solid, direction)
    }

    /// Lowest and highest corner of the box about the solid, outer frame.
    #[must_use]
    pub fn bounds(&self) -> (DVec3, DVec3) {
        let high = DVec3::new(
            self.support(DVec3::X).x,
            self.support(DVec3::Y).y,
            self.support(DVec3::Z).z,
        );
        let low = DVec3::new(
            self.support(DVec3::NEG_X).x,
            self.support(DVec3::NEG_Y).y,
            self.support(DVec3::NEG_Z).z,
        );
        (low, high)
    }
}
