//! Which outline does a solid show, seen square on?

use glam::{DVec2, DVec3};

use crate::solids::{Shape, Solid, convex_outline};

/// From where one looks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Look {
    /// From above: `x` to the right, `y` up the page.
    Plan,
    /// From the right wall: `y` to the right, the door at the left; `z` up.
    Side,
    /// From the door into the bay: `x` to the right, `z` up.
    Front,
}

/// What a solid shows, metres.
#[derive(Debug, Clone, PartialEq)]
pub enum Outline {
    /// A convex polygon.
    Polygon(Vec<DVec2>),
    /// A circle: middle and radius.
    Circle(DVec2, f64),
}

/// Corners that stand for the rim of a cylinder seen askew: its outline then lies within a
/// hundredth of a millimetre for any wheel.
const RIM: u32 = 512;

impl Look {
    /// A point of the bay on the page, metres.
    #[must_use]
    pub const fn flat(self, point: DVec3) -> DVec2 {
        match self {
            Self::Plan => DVec2::new(point.x, point.y),
            Self::Side => DVec2::new(point.y, point.z),
            Self::Front => DVec2::new(point.x, point.z),
        }
    }

    /// Toward the eye.
    #[must_use]
    pub const fn toward_eye(self) -> DVec3 {
        match self {
            Self::Plan => DVec3::Z,
            Self::Side => DVec3::X,
            Self::Front => DVec3::NEG_Y,
        }
    }

    /// How near to the eye a solid comes: what is nearer is drawn later.
    #[must_use]
    pub fn nearness(self, solid: &Solid) -> f64 {
        let eye = self.toward_eye();
        solid.support(eye).dot(eye)
    }

    /// What a solid shows.
    #[must_use]
    pub fn outline(self, solid: &Solid) -> Outline {
        let pose = solid.bay_from_solid;
        let Shape::Cylinder {
            radius,
            half_height,
        } = solid.shape
        else {
            let corners = solid.shape.corners().into_iter();
            let flat = corners.map(|corner| self.flat(pose.point(corner)));
            return Outline::Polygon(convex_outline(flat.collect()));
        };
        let axis = pose.rotation * DVec3::Z;
        let eye = self.toward_eye();
        let across = axis.cross(eye);
        if across.length() < 1e-9 {
            return Outline::Circle(self.flat(pose.translation), radius);
        }
        // The rims' farthest points across are among the corners: a bar seen from its side is
        // exact.
        let u = across.normalize();
        let v = u.cross(axis);
        let corners = (0..RIM).flat_map(|step| {
            let (sin, cos) = (std::f64::consts::TAU * f64::from(step) / f64::from(RIM)).sin_cos();
            let rim = (u * cos + v * sin) * radius;
            [axis, -axis].map(|end| self.flat(pose.translation + end * half_height + rim))
        });
        Outline::Polygon(convex_outline(corners.collect()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::solids::DoorTravel;
    use crate::solids::list::solids;
    use crate::solids::test_bay::test_bay;

    #[test]
    fn an_outline_reaches_as_far_as_its_solid() {
        for solid in solids(&test_bay(), DoorTravel::At(0.3), 0.9).unwrap() {
            for look in [Look::Plan, Look::Side, Look::Front] {
                let outline = look.outline(&solid);
                for step in 0..16 {
                    let angle = f64::from(step) * 0.39;
                    let way = DVec2::new(angle.cos(), angle.sin());
                    let way_in_bay = match look {
                        Look::Plan => DVec3::new(way.x, way.y, 0.0),
                        Look::Side => DVec3::new(0.0, way.x, way.y),
                        Look::Front => DVec3::new(way.x, 0.0, way.y),
                    };
                    let reach = solid.support(way_in_bay).dot(way_in_bay);
                    let drawn = match &outline {
                        Outline::Circle(middle, radius) => middle.dot(way) + radius,
                        Outline::Polygon(points) => points
                            .iter()
                            .map(|point| point.dot(way))
                            .fold(f64::NEG_INFINITY, f64::max),
                    };
                    assert!((reach - drawn).abs() < 1e-5, "{} {look:?}", solid.name);
                }
            }
        }
    }
}
