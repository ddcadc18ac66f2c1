//! What a solid becomes for the study: a convex body with every uncertainty already added.
//!
//! A body is the convex hull of one solid in one or more poses, widened by an axis-aligned box
//! (the *spread*). The spread holds what moves the solid bodily in `x`, `y` or `z`: parking
//! repeatability and the ± of measured dimensions. Several poses hold what turns it: yaw and
//! roll. Everything a body adds makes it larger, so a gap measured between bodies is never larger
//! than the gap between the solids they stand for.

use std::sync::Arc;

use glam::{DMat3, DVec3};

use crate::solids::{Pose, Shape, Solid};

/// A convex body in the bay's axes, metres.
#[derive(Debug, Clone)]
pub struct Body {
    cores: Vec<Core>,
    spread: DVec3,
    low: DVec3,
    high: DVec3,
}

/// One posed shape.
#[derive(Debug, Clone)]
enum Core {
    /// Middle and half axes.
    Box { middle: DVec3, axes: [DVec3; 3] },
    /// Middle, unit axis, half length, and two radii square to each other and to the axis.
    Cylinder {
        middle: DVec3,
        axis: DVec3,
        half: f64,
        radii: [DVec3; 2],
    },
    /// Corners; shared, since a body is often the same as another but for its spread.
    Points(Arc<Vec<DVec3>>),
}

impl Core {
    fn new(shape: &Shape, pose: &Pose) -> Self {
        let turn = DMat3::from_quat(pose.rotation);
        match shape {
            Shape::Box { half } => Self::Box {
                middle: pose.translation,
                axes: [
                    turn.x_axis * half.x,
                    turn.y_axis * half.y,
                    turn.z_axis * half.z,
                ],
            },
            Shape::Cylinder {
                radius,
                half_height,
            } => Self::Cylinder {
                middle: pose.translation,
                axis: turn.z_axis,
                half: *half_height,
                radii: [turn.x_axis * *radius, turn.y_axis * *radius],
            },
            Shape::Prism { vertices } => {
                let placed = vertices
                    .iter()
                    .map(|&vertex| turn * vertex + pose.translation);
                Self::Points(Arc::new(placed.collect()))
            }
        }
    }

    /// Lowest and highest corner of the box about it: as far as [`Core::support`] reaches along each
    /// axis.
    fn bounds(&self) -> (DVec3, DVec3) {
        match self {
            Self::Box { middle, axes } => {
                axes.iter().fold((*middle, *middle), |(low, high), axis| {
                    (low - axis.abs(), high + axis.abs())
                })
            }
            Self::Cylinder {
                middle,
                axis,
                half,
                radii: [one, other],
            } => {
                let rim = (*one * *one + *other * *other).map(f64::sqrt);
                let reach = axis.abs() * *half + rim;
                (*middle - reach, *middle + reach)
            }
            Self::Points(points) => {
                let first = points.first().copied().unwrap_or(DVec3::ZERO);
                let (mut low, mut high, mut sum) = (first, first, DVec3::ZERO);
                for &point in points.iter() {
                    low = low.min(point);
                    high = high.max(point);
                    sum += point;
                }
                // The lesser of a number and what is none is the number: what is none shows in the
                // sum.
                let none = sum * 0.0;
                (low + none, high + none)
            }
        }
    }

    /// The farthest point along `direction`.
    fn support(&self, direction: DVec3) -> DVec3 {
        match self {
            Self::Box { middle, axes } => axes.iter().fold(*middle, |point, axis| {
                if axis.dot(direction) >= 0.0 {
                    point + *axis
                } else {
                    point - *axis
                }
            }),
            Self::Cylinder {
                middle,
                axis,
                half,
                radii,
            } => {
                let along = axis.dot(direction);
                // Not the direction less its part along the axis: where the two are nearly
                // parallel, what is left is rounding, which may point along the axis.
                let across = radii.map(|radius| radius.dot(direction));
                let length = (across[0] * across[0] + across[1] * across[1]).sqrt();
                let rim = if length > 0.0 {
                    radii[0] * (across[0] / length) + radii[1] * (across[1] / length)
                } else {
                    DVec3::ZERO
                };
                *middle + *axis * half.copysign(along) + rim
            }
            Self::Points(points) => {
                let mut best = 0;
                let mut best_dot = f64::NEG_INFINITY;
                for (index, point) in points.iter().enumerate() {
                    let dot = point.dot(direction);
                    if dot > best_dot {
                        best_dot = dot;
                        best = index;
                    }
                }
                points.get(best).copied().unwrap_or(DVec3::ZERO)
            }
        }
    }
}

/// The lower of two corners, axis by axis; what is no number stays so.
pub(super) fn lower(a: DVec3, b: DVec3) -> DVec3 {
    let least = |a: f64, b: f64| if b < a || b.is_nan() { b } else { a };
    DVec3::new(least(a.x, b.x), least(a.y, b.y), least(a.z, b.z))
}

/// The higher of two corners, axis by axis; what is no number stays so.
pub(super) fn higher(a: DVec3, b: DVec3) -> DVec3 {
    let most = |a: f64, b: f64| if b > a || b.is_nan() { b } else { a };
    DVec3::new(most(a.x, b.x), most(a.y, b.y), most(a.z, b.z))
}

/// Several polytopes as one list of corners: one loop instead of many.
fn flattened(cores: Vec<Core>) -> Vec<Core> {
    if cores.len() < 2 {
        return cores;
    }
    let in_all = cores.iter().map(|core| match core {
        Core::Points(points) => points.len(),
        Core::Box { .. } => 8,
        Core::Cylinder { .. } => 0,
    });
    let mut corners: Vec<DVec3> = Vec::with_capacity(in_all.sum());
    let mut kept: Vec<Core> = Vec::with_capacity(cores.len());
    for core in cores {
        match core {
            Core::Points(points) => corners.extend(points.iter()),
            Core::Box { middle, axes } => corners.extend((0..8).map(|i| {
                let sign = |bit: usize| if i >> bit & 1 == 1 { 1.0 } else { -1.0 };
                middle + axes[0] * sign(0) + axes[1] * sign(1) + axes[2] * sign(2)
            })),
            round @ Core::Cylinder { .. } => kept.push(round),
        }
    }
    if !corners.is_empty() {
        kept.push(Core::Points(Arc::new(corners)));
    }
    kept
}

impl Body {
    /// The solid as it is, nothing added.
    #[must_use]
    pub fn exact(solid: &Solid) -> Self {
        Self::of(
            &solid.shape,
            std::slice::from_ref(&solid.bay_from_solid),
            DVec3::ZERO,
        )
    }

    /// The convex hull of a shape in the given poses, widened by `spread` (never negative) each
    /// way along each axis.
    #[must_use]
    pub fn of(shape: &Shape, poses: &[Pose], spread: DVec3) -> Self {
        let cores = match (shape, poses) {
            // The corners of all poses as one list.
            (Shape::Prism { vertices }, [_, _, ..]) => {
                let mut corners = Vec::with_capacity(poses.len() * vertices.len());
                for pose in poses {
                    let turn = DMat3::from_quat(pose.rotation);
                    let placed = vertices.iter();
                    corners.extend(placed.map(|&vertex| turn * vertex + pose.translation));
                }
                vec![Core::Points(Arc::new(corners))]
            }
            _ => poses.iter().map(|pose| Core::new(shape, pose)).collect(),
        };
        Self::from_cores(cores, spread)
    }

    /// The convex hull of several bodies; the widest spread of all is kept.
    #[must_use]
    pub fn hull_of(bodies: &[Self]) -> Self {
        Self::hull(bodies.to_vec())
    }

    /// The same of bodies that are not wanted any more.
    #[must_use]
    pub fn hull(bodies: Vec<Self>) -> Self {
        let spread = bodies
            .iter()
            .fold(DVec3::ZERO, |spread, body| spread.max(body.spread));
        let cores = bodies.into_iter().flat_map(|body| body.cores).collect();
        Self::from_cores(cores, spread)
    }

    fn from_cores(cores: Vec<Core>, spread: DVec3) -> Self {
        let spread = spread.max(DVec3::ZERO);
        let cores = flattened(cores);
        let mut bounds = cores.iter().map(Core::bounds);
        let (mut low, mut high) = bounds.next().unwrap_or((DVec3::ZERO, DVec3::ZERO));
        for (next_low, next_high) in bounds {
            low = lower(low, next_low);
            high = higher(high, next_high);
        }
        Self {
            cores,
            spread,
            low: low - spread,
            high: high + spread,
        }
    }

    /// The same body with its spread enlarged.
    #[must_use]
    pub fn widened(mut self, by: DVec3) -> Self {
        let by = by.max(DVec3::ZERO);
        self.spread += by;
        self.low -= by;
        self.high += by;
        self
    }

    /// The same body moved.
    #[must_use]
    pub fn moved(&self, shift: DVec3) -> Self {
        let mut body = self.clone();
        for core in &mut body.cores {
            match core {
                Core::Box { middle, .. } | Core::Cylinder { middle, .. } => *middle += shift,
                Core::Points(points) => {
                    *points = Arc::new(points.iter().map(|point| *point + shift).collect());
                }
            }
        }
        body.low += shift;
        body.high += shift;
        body
    }

    /// What the body sweeps when it is moved by `shift` in a straight line: for a convex body
    /// exactly the hull of its two ends.
    #[must_use]
    pub fn swept(&self, shift: DVec3) -> Self {
        Self::hull(vec![self.clone(), self.moved(shift)])
    }

    /// Lowest corner of the box about the body.
    #[must_use]
    pub fn low(&self) -> DVec3 {
        self.low
    }

    /// Highest corner of the box about the body.
    #[must_use]
    pub fn high(&self) -> DVec3 {
        self.high
    }

    /// The farthest point of the body along `direction` (need not be a unit vector).
    #[must_use]
    #[inline]
    pub fn support(&self, direction: DVec3) -> DVec3 {
        let mut best = match self.cores.first() {
            Some(core) => core.support(direction),
            None => DVec3::ZERO,
        };
        if self.cores.len() > 1 {
            let mut best_dot = best.dot(direction);
            for core in &self.cores[1..] {
                let point = core.support(direction);
                let dot = point.dot(direction);
                if dot > best_dot {
                    best_dot = dot;
                    best = point;
                }
            }
        }
        best + DVec3::new(
            self.spread.x.copysign(direction.x),
            self.spread.y.copysign(direction.y),
            self.spread.z.copysign(direction.z),
        )
    }

    /// How far the body reaches along the unit vector `direction`: the offset of its support
    /// plane from the origin.
    #[must_use]
    #[inline]
    pub fn reach(&self, direction: DVec3) -> f64 {
        self.support(direction).dot(direction)
    }
}

impl parry3d_f64::shape::SupportMap for Body {
    fn local_support_point(&self, dir: parry3d_f64::math::Vector) -> parry3d_f64::math::Vector {
        self.support(dir)
    }

    // The study moves bodies by translation only, so the rotation of `transform` is the identity
    // and need not be applied.
    fn support_point(
        &self,
        transform: &parry3d_f64::math::Pose,
        dir: parry3d_f64::math::Vector,
    ) -> parry3d_f64::math::Vector {
        self.support(dir) + transform.translation
    }

    fn support_point_toward(
        &self,
        transform: &parry3d_f64::math::Pose,
        dir: parry3d_f64::math::Vector,
    ) -> parry3d_f64::math::Vector {
        self.support(dir) + transform.translation
    }
}

#[cfg(test)]
mod tests {
    use glam::DQuat;

    use super::*;

    #[test]
    fn a_cylinder_reaches_its_rim_along_directions_beside_its_axis() {
        // A direction less its part along the axis is nothing but rounding here. Taken for the
        // way to the rim it cost a wheel its whole radius: the certified gap came out too large.
        let (radius, half_height) = (0.4, 0.14);
        for turn in 0..200 {
            let tilt = DQuat::from_rotation_x(0.01 * f64::from(turn))
                * DQuat::from_rotation_y(0.7 + 0.03 * f64::from(turn));
            let shape = Shape::Cylinder {
                radius,
                half_height,
            };
            let body = Body::of(&shape, &[Pose::new(tilt, DVec3::ZERO)], DVec3::ZERO);
            for power in 0..20 {
                let beside = tilt * DVec3::X * 10.0_f64.powi(-power);
                let direction = (tilt * DVec3::Z + beside).normalize();
                // In the cylinder's own frame: half its height along, its radius across.
                let own = tilt.inverse() * direction;
                let expected = half_height * own.z + radius * own.x.hypot(own.y);
                let found = body.reach(direction);
                assert!(
                    (found - expected).abs() < 1e-12,
                    "turn {turn}, 1e-{power}: {found} is not {expected}"
                );
            }
        }
    }
}
