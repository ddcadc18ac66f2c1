//! Where does the eye stand, and where on the screen does a point of the bay appear?
//!
//! Bay axes and metres throughout (`z` up). The engine's camera is set from this one, and what is
//! written over the picture is placed by it, so that both agree.

use glam::{DVec2, DVec3};

/// A place to look from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Sight {
    /// From above a corner by the door.
    Corner,
    /// From outside the door, square on.
    Front,
    /// From the left side wall, square on.
    Side,
    /// From above, square on, the door at the bottom.
    Plan,
    /// From where someone stands at the driver's door.
    Door,
}

impl Sight {
    /// All, in the order they are offered.
    pub const ALL: [Self; 5] = [
        Self::Corner,
        Self::Front,
        Self::Side,
        Self::Plan,
        Self::Door,
    ];

    /// One word for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Corner => "corner",
            Self::Front => "front",
            Self::Side => "side",
            Self::Plan => "plan",
            Self::Door => "door",
        }
    }
}

/// How depth is shown.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Lens {
    /// As an eye sees.
    Perspective {
        /// Whole angle from the picture's bottom to its top, radians.
        fov_rad: f64,
    },
    /// Parallel lines stay parallel.
    Parallel {
        /// What the picture shows from bottom to top, metres.
        height_m: f64,
    },
}

/// An eye.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Camera {
    /// Where it stands.
    pub eye_m: DVec3,
    /// What it looks at: the point it is turned about.
    pub target_m: DVec3,
    /// What is up in the picture; not along the line of sight.
    pub up: DVec3,
    /// How depth is shown.
    pub lens: Lens,
}

/// The whole angle of the perspective lens: 38 degrees, about that of a 50 mm lens on its side.
pub const FOV_RAD: f64 = 0.663;

/// Steepest look down or up, short of straight so that "up" stays defined.
const STEEPEST_RAD: f64 = 1.553;

/// Corners of the polygons that stand for the circles of what turns.
const ROUND: u32 = 48;

impl Camera {
    /// Unit vectors of the picture in the bay: to the right, up, and into it.
    #[must_use]
    pub fn axes(&self) -> [DVec3; 3] {
        let into = (self.target_m - self.eye_m).normalize_or(DVec3::Y);
        let right = into.cross(self.up).normalize_or(DVec3::X);
        [right, right.cross(into), into]
    }

    /// Where a point appears: from -1 at the left and bottom edge to 1 at the right and top; none
    /// when it lies behind the eye. `aspect` is the picture's width over its height.
    #[must_use]
    pub fn project(&self, point: DVec3, aspect: f64) -> Option<DVec2> {
        let [right, up, into] = self.axes();
        let away = point - self.eye_m;
        let (x, y, depth) = (away.dot(right), away.dot(up), away.dot(into));
        let half = match self.lens {
            Lens::Perspective { fov_rad } => {
                if depth < 1e-3 {
                    return None;
                }
                depth * (fov_rad * 0.5).tan()
            }
            Lens::Parallel { height_m } => height_m * 0.5,
        };
        Some(DVec2::new(x / (half * aspect), y / half)).filter(|at| at.is_finite())
    }

    /// What the picture shows from bottom to top at the target's depth, metres.
    #[must_use]
    pub fn height_at_target_m(&self) -> f64 {
        match self.lens {
            Lens::Perspective { fov_rad } => {
                2.0 * (self.target_m - self.eye_m).length() * (fov_rad * 0.5).tan()
            }
            Lens::Parallel { height_m } => height_m,
        }
    }

    /// Turned about the target: `right_rad` moves the eye to its right, `up_rad` up.
    #[must_use]
    pub fn orbited(&self, right_rad: f64, up_rad: f64) -> Self {
        let back = self.eye_m - self.target_m;
        let distance = back.length().max(0.1);
        let flat = back.truncate().length();
        // Straight from above the heading is that of the picture's upper edge.
        let heading = if flat > 1e-6 * distance {
            back.y.atan2(back.x)
        } else {
            (-self.up.y).atan2(-self.up.x)
        } + right_rad;
        let pitch = (back.z.atan2(flat) + up_rad).clamp(-STEEPEST_RAD, STEEPEST_RAD);
        let back = DVec3::new(
            pitch.cos() * heading.cos(),
            pitch.cos() * heading.sin(),
            pitch.sin(),
        ) * distance;
        Self {
            eye_m: self.target_m + back,
            up: DVec3::Z,
            ..*self
        }
    }

    /// Moved across the picture by shares of its height; what is seen moves the other way.
    #[must_use]
    pub fn panned(&self, right: f64, up: f64) -> Self {
        let [x, y, _] = self.axes();
        let shift = (x * right + y * up) * self.height_at_target_m();
        Self {
            eye_m: self.eye_m + shift,
            target_m: self.target_m + shift,
            ..*self
        }
    }

    /// Nearer (under 1) or farther (over 1), within a garage's bounds.
    #[must_use]
    pub fn zoomed(&self, factor: f64) -> Self {
        let back = self.eye_m - self.target_m;
        let factor = if factor.is_finite() { factor } else { 1.0 };
        match self.lens {
            Lens::Perspective { .. } => {
                let distance = (back.length() * factor).clamp(0.3, 200.0);
                Self {
                    eye_m: self.target_m + back.normalize_or(DVec3::NEG_Y) * distance,
                    ..*self
                }
            }
            Lens::Parallel { height_m } => Self {
                lens: Lens::Parallel {
                    height_m: (height_m * factor).clamp(0.2, 200.0),
                },
                ..*self
            },
        }
    }

    /// The same look with the box between two corners just inside the picture, `room` (1.05 for 5
    /// percent) around it.
    #[must_use]
    pub fn framed(&self, low: DVec3, high: DVec3, aspect: f64, room: f64) -> Self {
        let [right, up, into] = self.axes();
        let middle = (low + high) * 0.5;
        let corners: [DVec3; 8] = std::array::from_fn(|i| {
            let pick = |bit: usize, low: f64, high: f64| if i >> bit & 1 == 1 { high } else { low };
            DVec3::new(
                pick(0, low.x, high.x),
                pick(1, low.y, high.y),
                pick(2, low.z, high.z),
            ) - middle
        });
        match self.lens {
            Lens::Parallel { .. } => {
                let half = corners
                    .iter()
                    .map(|c| c.dot(up).abs().max(c.dot(right).abs() / aspect))
                    .fold(0.1, f64::max);
                let distance = (high - low).length() + 1.0;
                Self {
                    eye_m: middle - into * distance,
                    target_m: middle,
                    up: self.up,
                    lens: Lens::Parallel {
                        height_m: 2.0 * half * room,
                    },
                }
            }
            Lens::Perspective { fov_rad } => {
                // Each side of the picture is a plane through the eye; the box is to touch them
                // with as much room at one side as at the other.
                let tan = (fov_rad * 0.5).tan() / room;
                let fit = |across: DVec3, tan: f64| {
                    let most = |sign: f64| {
                        let beyond = corners
                            .iter()
                            .map(|c| sign * c.dot(across) - tan * c.dot(into));
                        beyond.fold(f64::NEG_INFINITY, f64::max)
                    };
                    let (high, low) = (most(1.0), most(-1.0));
                    (0.5 * (high - low), (high + low) / (2.0 * tan))
                };
                let (x, back_x) = fit(right, tan * aspect);
                let (y, back_y) = fit(up, tan);
                let target_m = middle + right * x + up * y;
                let distance = back_x.max(back_y).max(0.3);
                Self {
                    eye_m: target_m - into * distance,
                    target_m,
                    ..*self
                }
            }
        }
    }

    /// The same look down or up, about the upright line through the middle of the box between two
    /// corners, from where the box stays inside the picture all the way around; `room` as in
    /// [`Camera::framed`].
    #[must_use]
    pub fn framed_all_round(&self, low: DVec3, high: DVec3, aspect: f64, room: f64) -> Self {
        let [right, up, into] = self.axes();
        let middle = (low + high) * 0.5;
        // Whatever turns about that line stays within an upright cylinder. The circles are polygons
        // drawn about them, so that nothing of the cylinder is left out.
        let half = (high - low) * 0.5;
        let step = std::f64::consts::TAU / f64::from(ROUND);
        let radius_m = half.truncate().length() / (step * 0.5).cos();
        let points: Vec<DVec3> = (0..ROUND)
            .flat_map(|i| {
                let (sin, cos) = (f64::from(i) * step).sin_cos();
                [-half.z, half.z].map(|z| DVec3::new(radius_m * cos, radius_m * sin, z))
            })
            .collect();
        match self.lens {
            Lens::Parallel { .. } => {
                let half_m = points
                    .iter()
                    .map(|c| c.dot(up).abs().max(c.dot(right).abs() / aspect))
                    .fold(0.1, f64::max);
                Self {
                    eye_m: middle - into * (2.0 * (radius_m + half.z) + 1.0),
                    target_m: middle,
                    up: self.up,
                    lens: Lens::Parallel {
                        height_m: 2.0 * half_m * room,
                    },
                }
            }
            Lens::Perspective { fov_rad } => {
                let tan = (fov_rad * 0.5).tan() / room;
                // How far back the eye must stand to look at this height of the line.
                let back_m = |z: f64| {
                    let needs = points.iter().map(|c| {
                        let c = *c - DVec3::Z * z;
                        let across = (c.dot(right).abs() / aspect).max(c.dot(up).abs());
                        across / tan - c.dot(into)
                    });
                    needs.fold(0.3, f64::max)
                };
                // The greatest of straight lines has one valley: from where the eye may be nearest.
                let (mut below, mut above) = (-half.z, half.z);
                for _ in 0..40 {
                    let third = (above - below) / 3.0;
                    if back_m(below + third) < back_m(above - third) {
                        above -= third;
                    } else {
                        below += third;
                    }
                }
                let z = (below + above) * 0.5;
                let target_m = middle + DVec3::Z * z;
                Self {
                    eye_m: target_m - into * back_m(z),
                    target_m,
                    ..*self
                }
            }
        }
    }

    /// The look from a named place with the box between two corners in the picture. From the
    /// driver's door the eye stands at `driver_m` instead.
    #[must_use]
    pub fn at(sight: Sight, low: DVec3, high: DVec3, driver_m: DVec3, aspect: f64) -> Self {
        let middle = (low + high) * 0.5;
        let seen_along = |into: DVec3, up: DVec3, lens: Lens| {
            Self {
                eye_m: middle - into,
                target_m: middle,
                up,
                lens,
            }
            .framed(low, high, aspect, 1.06)
        };
        let perspective = Lens::Perspective { fov_rad: FOV_RAD };
        let parallel = Lens::Parallel { height_m: 1.0 };
        match sight {
            Sight::Corner => seen_along(DVec3::new(0.62, 1.0, -0.42), DVec3::Z, perspective),
            Sight::Front => seen_along(DVec3::new(0.0, 1.0, -0.06), DVec3::Z, perspective),
            Sight::Side => seen_along(DVec3::X, DVec3::Z, parallel),
            Sight::Plan => seen_along(DVec3::NEG_Z, DVec3::Y, parallel),
            Sight::Door => Self {
                eye_m: driver_m,
                target_m: DVec3::new(middle.x, middle.y, driver_m.z + 0.25),
                up: DVec3::Z,
                lens: Lens::Perspective { fov_rad: 1.05 },
            },
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const LOW: DVec3 = DVec3::new(-3.0, 0.0, 0.0);
    const HIGH: DVec3 = DVec3::new(3.0, 8.0, 3.5);

    fn corners() -> impl Iterator<Item = DVec3> {
        (0..8).map(|i| {
            DVec3::new(
                if i & 1 == 1 { HIGH.x } else { LOW.x },
                if i & 2 == 2 { HIGH.y } else { LOW.y },
                if i & 4 == 4 { HIGH.z } else { LOW.z },
            )
        })
    }

    #[test]
    fn a_framed_box_lies_inside_the_picture_and_nearly_fills_it() {
        for sight in [Sight::Corner, Sight::Front, Sight::Side, Sight::Plan] {
            for aspect in [0.6, 1.0, 16.0 / 9.0] {
                let camera = Camera::at(sight, LOW, HIGH, DVec3::ZERO, aspect);
                let widest = corners()
                    .map(|corner| camera.project(corner, aspect).unwrap().abs().max_element())
                    .fold(0.0, f64::max);
                assert!(
                    (0.85..=1.0).contains(&widest),
                    "{sight:?} {aspect} {widest}"
                );
            }
        }
    }

    #[test]
    fn a_box_framed_all_round_stays_inside_the_picture_while_it_turns() {
        for sight in Sight::ALL {
            for aspect in [0.6, 1.0, 2.4] {
                let camera = Camera::at(sight, LOW, HIGH, DVec3::new(-2.5, 3.4, 1.6), aspect)
                    .orbited(0.0, 0.0)
                    .framed_all_round(LOW, HIGH, aspect, 1.05);
                let widest = |heading: f64| {
                    let turned = camera.orbited(heading, 0.0);
                    corners()
                        .map(|corner| turned.project(corner, aspect).unwrap().abs().max_element())
                        .fold(0.0, f64::max)
                };
                let most = (0..360)
                    .map(|degrees| widest(f64::from(degrees).to_radians()))
                    .fold(0.0, f64::max);
                assert!((0.75..=0.96).contains(&most), "{sight:?} {aspect}: {most}");
            }
        }
    }

    #[test]
    fn the_middle_stays_in_the_middle_while_turning_and_zooming() {
        let camera = Camera::at(Sight::Corner, LOW, HIGH, DVec3::ZERO, 1.5);
        for turned in [camera, camera.orbited(0.7, -0.2), camera.zoomed(0.5)] {
            let at = turned.project(turned.target_m, 1.5).unwrap();
            assert!(at.length() < 1e-9, "{at}");
        }
        let plan = Camera::at(Sight::Plan, LOW, HIGH, DVec3::ZERO, 1.5);
        let turned = plan.orbited(0.0, 0.0);
        let (a, b) = (plan.axes()[0], turned.axes()[0]);
        assert!(a.dot(b) > 0.99, "the plan does not spin when it is touched");
    }

    #[test]
    fn what_is_behind_the_eye_is_not_seen() {
        let camera = Camera::at(Sight::Corner, LOW, HIGH, DVec3::ZERO, 1.5);
        let behind = camera.eye_m - camera.axes()[2];
        assert_eq!(camera.project(behind, 1.5), None);
    }

    #[test]
    fn plan_shows_the_door_at_the_bottom_and_left_at_the_left() {
        let camera = Camera::at(Sight::Plan, LOW, HIGH, DVec3::ZERO, 1.5);
        let door = camera.project(DVec3::ZERO, 1.5).unwrap();
        let left = camera.project(DVec3::new(-2.0, 4.0, 0.0), 1.5).unwrap();
        assert!(door.y < -0.5 && left.x < 0.0);
    }
}
