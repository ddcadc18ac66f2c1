//! How far everything may be from where the file says it is.

use std::f64::consts::FRAC_PI_2;

use glam::{DVec2, DVec3};

use super::leaning::Leaning;
use crate::bay::{Bay, Corner, Floor};
use crate::solids::ParkingError;

/// The ± of everything, in metres and radians. All zero for the nominal study.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Uncertainty {
    /// Each measured dimension of room, door and obstacles.
    pub garage_m: f64,
    /// Each measured dimension of the lift.
    pub lift_m: f64,
    /// Each measured dimension of the vehicle.
    pub vehicle_m: f64,
    /// The top of a pad, whichever may be off most: its lowest place, and what it is raised by.
    pub pad_top_m: f64,
    /// What is left of a twist between pads and lift points once the pads are screwed to touch.
    pub loose_pad_m: f64,
    /// How far one carriage may stand above the other.
    pub mismatch_m: f64,
    /// How far any point of the lift may be from where plumb posts in their places have it, beyond
    /// its own ±: across, along, up.
    pub posts_m: DVec3,
    /// How far what it carries goes sideways with that: across, along.
    pub carried_m: DVec2,
    /// What of both goes with the travel, along columns that lean; none of plumb ones.
    pub leaning: Option<Leaning>,
    /// Half sizes of the parking box.
    pub parking: ParkingError,
    /// Sine of the most that the vehicle's axes are turned off the bay's.
    pub askew: f64,
}

impl Uncertainty {
    /// Everything exactly as the file says.
    pub const NONE: Self = Self {
        garage_m: 0.0,
        lift_m: 0.0,
        vehicle_m: 0.0,
        pad_top_m: 0.0,
        loose_pad_m: 0.0,
        mismatch_m: 0.0,
        posts_m: DVec3::ZERO,
        carried_m: DVec2::ZERO,
        leaning: None,
        parking: ParkingError {
            across_m: 0.0,
            along_m: 0.0,
            yaw_rad: 0.0,
        },
        askew: 0.0,
    };

    /// Every ± of the bay at once.
    #[must_use]
    pub fn worst(bay: &Bay) -> Self {
        let policy = &bay.policy;
        let measured = policy.measured_vehicle.m() + policy.measured_lift.m();
        let yaw_rad = bay.parking.repeat_yaw.rad() + carried_yaw_rad(bay);
        Self {
            askew: (bay.parking.yaw.rad().abs() + yaw_rad).min(FRAC_PI_2).sin(),
            garage_m: policy.measured_garage.m(),
            lift_m: policy.measured_lift.m(),
            vehicle_m: policy.measured_vehicle.m(),
            pad_top_m: Corner::ALL
                .map(|corner| pad_top_off_m(bay, corner))
                .into_iter()
                .fold(0.0, f64::max),
            // With nothing uncertain there is no twist to leave behind.
            loose_pad_m: if measured > 0.0 {
                policy.loose_pad.m()
            } else {
                0.0
            },
            mismatch_m: bay.lift.side_mismatch.m(),
            posts_m: posts_off(bay),
            carried_m: carried_off(bay),
            leaning: bay.lift.posts_off.leaning.as_ref().map(Leaning::of),
            parking: ParkingError {
                across_m: bay.parking.repeat_across.m(),
                along_m: bay.parking.repeat_along.m(),
                yaw_rad,
            },
        }
    }

    /// How far a face of something in the room may be off: its place by one ±, and half its size
    /// by half of one.
    #[must_use]
    pub fn room_spread(&self) -> DVec3 {
        DVec3::splat(1.5 * self.garage_m)
    }

    /// The same for door, tracks and opener, whose places add up several measures. Upward, of a
    /// level track: the opening's height, the extra of a high lift, the radius, half the section
    /// or the bracket. Across: half the opening, the track's offset, half its section. Inward: the
    /// radius, the length of the level track, half a section.
    #[must_use]
    pub fn door_spread(&self) -> DVec3 {
        DVec3::new(2.0, 2.5, 3.5) * self.garage_m
    }

    /// The same for the lift's fixed parts, against what moves between them and is measured from them.
    /// Across: half the spacing, the middle of the posts, half a section. Upward, of the shut-off bar: the
    /// beam's underside and the drop.
    #[must_use]
    pub fn lift_spread(&self) -> DVec3 {
        DVec3::splat(2.0 * self.lift_m) + self.posts_m
    }

    /// What comes to that against the room. Across: half the spacing, the middle of the posts, half the
    /// column's and half the part's own width, and how far a plate or a power unit stands off it: 3.5 in
    /// all. Along: the post line, how far off it the part stands, half its size: 2.5.
    #[must_use]
    pub fn lift_in_room_more(&self) -> DVec3 {
        DVec3::new(1.5, 0.5, 0.0) * self.lift_m
    }

    /// The same for the lift's moving parts: also how far a carriage or a pivot stands in from the
    /// column, and upward the lock's travel.
    #[must_use]
    pub fn moving_lift_spread(&self) -> DVec3 {
        DVec3::splat(3.0 * self.lift_m) + self.posts_m
    }

    /// The same without what leaning columns add with the height, for parts that are taken along them.
    #[must_use]
    pub fn placed_lift_spread(&self) -> DVec3 {
        let posts = self
            .leaning
            .map_or(self.posts_m, |of| of.placed_m.extend(self.posts_m.z));
        DVec3::splat(3.0 * self.lift_m) + posts
    }

    /// The same for any part of the vehicle, in its own frame: a face's place, and half its size. Along
    /// the bay's axes a vehicle that is turned is off by some of both.
    #[must_use]
    pub fn vehicle_spread(&self) -> DVec3 {
        let off = 1.5 * self.vehicle_m;
        let plan = self.in_plan(DVec2::splat(off));
        plan.extend(off)
    }

    /// The same for a wheel, beyond what any part of the vehicle may be off: of the rear ones the front
    /// overhang, the wheelbase and the tyre are measured.
    #[must_use]
    pub fn wheel_spread(&self, axle: Option<usize>) -> DVec3 {
        if axle == Some(1) {
            let off = DVec2::new(0.0, self.vehicle_m);
            self.in_plan(off).extend(0.0)
        } else {
            DVec3::ZERO
        }
    }

    /// Across and along the vehicle, across and along the bay.
    #[must_use]
    pub fn in_plan(&self, off: DVec2) -> DVec2 {
        off + DVec2::new(off.y, off.x) * self.askew
    }

    /// The same for a vehicle at rest on its tyres. Columns that lean do not move it.
    #[must_use]
    pub fn standing_vehicle_spread(&self) -> DVec3 {
        self.vehicle_spread() + self.set_spread()
    }

    /// How far the whole vehicle may be off for want of knowing the two places that are lined up:
    /// the post line and the middle of the posts by one ± of the lift, the station on the vehicle
    /// by one ± of the vehicle.
    #[must_use]
    pub fn lined_up_spread(&self) -> DVec3 {
        self.lined_up_within(self.carried_m)
    }

    /// The same where the vehicle is set on the pads, before columns that lean have taken it along.
    #[must_use]
    pub fn set_spread(&self) -> DVec3 {
        self.lined_up_within(self.leaning.map_or(self.carried_m, |of| of.set_m))
    }

    fn lined_up_within(&self, off_m: DVec2) -> DVec3 {
        let station = self.in_plan(DVec2::new(0.0, self.vehicle_m));
        (DVec2::splat(self.lift_m) + station + off_m).extend(0.0)
    }

    /// How far a lift part may be off against what the lift carries, for posts that are off: each of
    /// the two by all of it.
    #[must_use]
    pub fn posts_to_carried(&self) -> DVec3 {
        self.posts_m + self.carried_m.extend(self.posts_m.z)
    }

    /// The eight corners of the parking box (one where the box is a point).
    #[must_use]
    pub fn parking_corners(&self) -> Vec<ParkingError> {
        let ends = |half: f64| {
            if half > 0.0 {
                vec![-half, half]
            } else {
                vec![0.0]
            }
        };
        let mut corners = Vec::with_capacity(8);
        for across_m in ends(self.parking.across_m) {
            for along_m in ends(self.parking.along_m) {
                for yaw_rad in ends(self.parking.yaw_rad) {
                    corners.push(ParkingError {
                        across_m,
                        along_m,
                        yaw_rad,
                    });
                }
            }
        }
        corners
    }

    /// Places, and a spread, that cover the parking box together: the hull over a body in these places,
    /// widened by that, is the hull over the body at all its corners. On a level floor the vehicle goes
    /// across and along as it is, so that its two headings will do.
    #[must_use]
    pub fn parking_hull(&self, floor: &Floor) -> (Vec<ParkingError>, DVec3) {
        if *floor != Floor::Level {
            return (self.parking_corners(), DVec3::ZERO);
        }
        let ParkingError {
            across_m,
            along_m,
            yaw_rad,
        } = self.parking;
        let turned = Self {
            parking: ParkingError {
                yaw_rad,
                ..ParkingError::default()
            },
            ..*self
        };
        let spread = DVec3::new(across_m, along_m, 0.0).max(DVec3::ZERO);
        (turned.parking_corners(), spread)
    }
}

/// How far a pad's top may be off: its lowest place is measured, and what it is raised by where it is.
pub(super) fn pad_top_off_m(bay: &Bay, corner: Corner) -> f64 {
    let is_raised = bay.parking.pad_raise[corner.index()].m().abs() > 0.0;
    bay.policy.measured_lift.m() * if is_raised { 2.0 } else { 1.0 }
}

fn posts_off(bay: &Bay) -> DVec3 {
    let off = bay.lift.posts_off;
    DVec3::new(off.across.m(), off.along.m(), off.up.m())
}

fn carried_off(bay: &Bay) -> DVec2 {
    let off = bay.lift.posts_off;
    DVec2::new(off.carried_across.m(), off.carried_along.m())
}

/// How far posts that lean apart turn what they carry about the vertical: each pad goes all of it,
/// against its neighbours.
fn carried_yaw_rad(bay: &Bay) -> f64 {
    let most = carried_off(bay).max_element();
    if most <= 0.0 {
        return 0.0;
    }
    let points = &bay.vehicle.lift_points;
    let across = points.iter().map(|point| 2.0 * point.half_spacing.m());
    // Front points come first.
    let along = (0..4).map(|index| {
        let (front, rear) = (&points[index % 2], &points[2 + index / 2]);
        (front.station - rear.station).m().abs()
    });
    let apart = across.chain(along).fold(f64::INFINITY, f64::min);
    2.0 * most / apart.max(0.1)
}

/// How errors in the four support heights move any point of the body.
///
/// The body's height over a plan point is the plane fitted through the four lift points; each
/// support height enters it with a weight that is affine in the plan point. A twist that no plane
/// can follow is taken up by the pads' screws down to the loose gap the policy allows; what is
/// left of it tips the body onto three pads. Screwing one pad up to its point leaves the body on the
/// plane of the other three, so every plane through three supports counts beside the fitted one.
#[derive(Debug, Clone, Copy)]
pub struct SupportLevers {
    /// Lift points in plan, vehicle frame, lift corner order.
    points: [glam::DVec2; 4],
    /// Rows of the pseudo-inverse: weight of each support = row · (1, x, y).
    rows: [DVec3; 4],
    /// For each support left out the planes through the other three: weight of each support =
    /// row · (1, x, y). None where those three lie on one line.
    triples: [Option<[DVec3; 4]>; 4],
    /// For each support left out how a loose gap on its pad moves the plane through the other three
    /// against the fitted one: shift = row · (1, x, y) times the gap.
    loose: [DVec3; 4],
}

impl SupportLevers {
    /// From the lift points' plan places. None when they lie on one line.
    #[must_use]
    pub fn new(points: [glam::DVec2; 4]) -> Option<Self> {
        let mut normal = glam::DMat3::ZERO;
        for point in points {
            let row = DVec3::new(1.0, point.x, point.y);
            normal += glam::DMat3::from_cols(row * row.x, row * row.y, row * row.z);
        }
        if normal.determinant().abs() < 1e-9 {
            return None;
        }
        let inverse = normal.inverse();
        let rows = points.map(|point| inverse * DVec3::new(1.0, point.x, point.y));
        // The twist is what a unit height at one support leaves after the fit; any support gives
        // the same pattern, so take the one with the largest residue.
        let mut twist = [0.0; 4];
        for (lifted, row) in rows.iter().enumerate() {
            let mut residue = [0.0; 4];
            for (i, point) in points.iter().enumerate() {
                let fitted = row.dot(DVec3::new(1.0, point.x, point.y));
                residue[i] = if i == lifted { 1.0 - fitted } else { -fitted };
            }
            let largest = |values: &[f64; 4]| values.iter().fold(0.0_f64, |a, b| a.max(b.abs()));
            if largest(&residue) > largest(&twist) {
                twist = residue;
            }
        }
        let largest = twist.iter().fold(0.0_f64, |a, b| a.max(b.abs()));
        if largest > 0.0 {
            twist = twist.map(|value| value / largest);
        }
        let triples = std::array::from_fn(|left_out| triple(&points, left_out));
        Some(Self {
            points,
            rows,
            triples,
            loose: std::array::from_fn(|left_out| {
                triples[left_out].map_or(DVec3::ZERO, |rows: [DVec3; 4]| {
                    loose(&rows, twist, points[left_out], left_out)
                })
            }),
        })
    }

    /// Sum of the absolute weights at a plan point, over the fitted plane and every plane through
    /// three supports: by how much a ± at every support can move it.
    #[must_use]
    pub fn weight_sum(&self, point: glam::DVec2) -> f64 {
        let place = DVec3::new(1.0, point.x, point.y);
        let fitted = self.rows.iter().map(|row| row.dot(place).abs()).sum();
        (0..4)
            .filter_map(|left_out| self.triple_weights(point, left_out))
            .map(|weights| weights.iter().map(|weight| weight.abs()).sum())
            .fold(fitted, f64::max)
    }

    /// How far support heights between 0 and `rise[i]` can lower and lift a plan point, over the fitted
    /// plane and over every three-pad attitude; neither is negative.
    #[must_use]
    pub fn shift_range(&self, point: glam::DVec2, rise: [f64; 4]) -> [f64; 2] {
        let place = DVec3::new(1.0, point.x, point.y);
        let fitted = self.rows.map(|row| row.dot(place));
        let of_three = (0..4).filter_map(|left_out| self.triple_weights(point, left_out));
        of_three
            .chain([fitted])
            .map(|weights| bounds(weights, rise))
            .fold([0.0; 2], |[most_down, most_up], [down, up]| {
                [f64::max(most_down, down), f64::max(most_up, up)]
            })
    }

    /// How far the loose gap on one pad can move a plan point against the fitted plane.
    #[must_use]
    pub fn twist_shift(&self, point: glam::DVec2, loose_m: f64) -> f64 {
        let place = DVec3::new(1.0, point.x, point.y);
        let shifts = self.loose.map(|row| row.dot(place).abs() * loose_m);
        shifts.into_iter().fold(0.0, f64::max)
    }

    /// The most tilt (rise per length along x and along y) that support heights between 0 and
    /// `rise[i]` can make, over the fitted plane and every three-pad attitude.
    #[must_use]
    pub fn most_turn(&self, rise: [f64; 4]) -> glam::DVec2 {
        let origin = self.points.iter().sum::<glam::DVec2>() / 4.0;
        let slope = |axis: usize, step: glam::DVec2| {
            let fitted = bound(self.rows.map(|row| row[axis]), rise);
            let triple = |left_out| {
                let there = self.triple_weights(origin + step, left_out)?;
                let here = self.triple_weights(origin, left_out)?;
                Some(bound(std::array::from_fn(|i| there[i] - here[i]), rise))
            };
            (0..4).filter_map(triple).fold(fitted, f64::max)
        };
        glam::DVec2::new(slope(1, glam::DVec2::X), slope(2, glam::DVec2::Y))
    }

    /// The tilt (about across and along axes: rise per length along x and along y) that a ± of
    /// `each_m` at every support and a loose gap can add.
    #[must_use]
    pub fn most_tilt(&self, each_m: f64, loose_m: f64) -> glam::DVec2 {
        let origin = self.points.iter().sum::<glam::DVec2>() / 4.0;
        let slope = |axis: usize, step: glam::DVec2| -> f64 {
            let fitted = self.rows.iter().map(|row| row[axis].abs()).sum::<f64>();
            let triple = |left_out| {
                let there = self.triple_weights(origin + step, left_out)?;
                let here = self.triple_weights(origin, left_out)?;
                Some(there.iter().zip(here).map(|(t, h)| (t - h).abs()).sum())
            };
            (0..4).filter_map(triple).fold(fitted, f64::max) * each_m
        };
        // The twist shift is affine in the point for each triple; its slope is bounded by the
        // difference over a metre.
        let loose = |step: glam::DVec2| {
            self.twist_shift(origin + step, loose_m) + self.twist_shift(origin, loose_m)
        };
        glam::DVec2::new(
            slope(1, glam::DVec2::X) + loose(glam::DVec2::X),
            slope(2, glam::DVec2::Y) + loose(glam::DVec2::Y),
        )
    }

    /// Barycentric weights of a plan point in the triangle without `left_out`.
    fn triple_weights(&self, point: glam::DVec2, left_out: usize) -> Option<[f64; 4]> {
        let place = DVec3::new(1.0, point.x, point.y);
        self.triples[left_out].map(|rows| rows.map(|row| row.dot(place)))
    }
}

/// How far the plane through three supports at the heights of a twist is off the fitted one, which is
/// 0, at each plan place = row · (1, x, y), for a gap of 1 at the pad left out; nothing where the twist
/// leaves no gap there.
fn loose(rows: &[DVec3; 4], twist: [f64; 4], pad: DVec2, left_out: usize) -> DVec3 {
    let plane: DVec3 = rows
        .iter()
        .zip(twist)
        .map(|(row, height)| *row * height)
        .sum();
    let gap = (twist[left_out] - plane.dot(DVec3::new(1.0, pad.x, pad.y))).abs();
    if gap > 1e-9 { plane / gap } else { DVec3::ZERO }
}

/// Barycentric weights in the triangle without `left_out`: weight of each support = row · (1, x, y).
fn triple(points: &[DVec2; 4], left_out: usize) -> Option<[DVec3; 4]> {
    let corners: [usize; 3] = std::array::from_fn(|i| if i < left_out { i } else { i + 1 });
    let [a, b, c] = corners.map(|i| points[i]);
    let (to_b, to_c) = (b - a, c - a);
    let area = to_b.perp_dot(to_c);
    if area.abs() < 1e-9 {
        return None;
    }
    let mut rows = [DVec3::ZERO; 4];
    // (p - a) × (c - a) and (b - a) × (p - a), over the area, written out by x and y of p.
    rows[corners[1]] = DVec3::new(-a.perp_dot(to_c), to_c.y, -to_c.x) / area;
    rows[corners[2]] = DVec3::new(-to_b.perp_dot(a), -to_b.y, to_b.x) / area;
    rows[corners[0]] = DVec3::X - rows[corners[1]] - rows[corners[2]];
    Some(rows)
}

/// The larger of what positive weights can lift and what negative weights can lower.
fn bound(weights: [f64; 4], rise: [f64; 4]) -> f64 {
    let [down, up] = bounds(weights, rise);
    f64::max(down, up)
}

/// What negative weights can lower, and what positive ones can lift.
fn bounds(weights: [f64; 4], rise: [f64; 4]) -> [f64; 2] {
    let mut up = 0.0;
    let mut down = 0.0;
    for (weight, rise) in weights.into_iter().zip(rise) {
        if weight > 0.0 {
            up += weight * rise;
        } else {
            down -= weight * rise;
        }
    }
    [down, up]
}

/// How far a point at `radius_m` can stand off the straight line between its places in two poses
/// while the body turns by `angle` (radians) from one to the other.
#[must_use]
pub fn turning_bulge_m(angle: f64, radius_m: f64) -> f64 {
    radius_m * angle * angle * 0.5
}

/// The left and the right corners.
#[must_use]
pub fn corners_on(side: crate::bay::Side) -> [f64; 4] {
    Corner::ALL.map(|corner| if corner.side() == side { 1.0 } else { 0.0 })
}

#[cfg(test)]
mod tests {
    use glam::DVec2;

    use super::*;

    /// Lift points 2 m apart along and 1 m across, in lift corner order.
    fn square() -> SupportLevers {
        SupportLevers::new([
            DVec2::new(-0.5, 1.0),
            DVec2::new(0.5, 1.0),
            DVec2::new(-0.5, -1.0),
            DVec2::new(0.5, -1.0),
        ])
        .unwrap()
    }

    #[test]
    fn the_middle_moves_by_the_mean_of_the_supports() {
        assert!((square().weight_sum(DVec2::ZERO) - 1.0).abs() < 1e-12);
    }

    #[test]
    fn an_overhang_moves_by_the_lever() {
        // At x = 0.75, y = 2.5 the fitted plane's weights are (1 ± 2.5 ± 1.5) / 4:
        // (1 + 2.5 - 1.5, 1 + 2.5 + 1.5, 1 - 2.5 - 1.5, 1 - 2.5 + 1.5) / 4 = (2, 5, -3, 0) / 4,
        // together 2.5. The plane through three supports, front right left out, has
        // rear right 0.75 + 0.5 = 1.25, front left (2.5 + 1) / 2 = 1.75 and rear left
        // 1 - 1.25 - 1.75 = -2, together 5: the body tips more where a pad is screwed up to it.
        let sum = square().weight_sum(DVec2::new(0.75, 2.5));
        assert!((sum - 5.0).abs() < 1e-12, "{sum}");
    }

    #[test]
    fn a_loose_gap_tips_the_overhang_by_a_quarter_of_the_product_of_levers() {
        // Twist pattern (1, -1, -1, 1): leaving one pad out opens a gap of 4 and moves the point
        // against the fitted plane by 2.5 * 1.5 - what the chosen triple adds. Worst triple: the
        // one across from the point's corner. Height of the twist's triple plane there: for the
        // triple without front right, z = -1 at front left... the plane through (-.5,1,-1),
        // (-.5,-1,1), (.5,-1,-1) (one sign of the pattern) is z = -x*2 - y*1 - 1, at (.75,2.5):
        // -5; with the gap of 4 made 3 mm: 5 / 4 * 3 = 3.75 mm.
        let shift = square().twist_shift(DVec2::new(0.75, 2.5), 0.003);
        assert!((shift - 0.00375).abs() < 1e-9, "{shift}");
    }

    #[test]
    fn points_in_a_line_have_no_levers() {
        let line = [0.0, 1.0, 2.0, 3.0].map(|y| DVec2::new(0.0, y));
        assert!(SupportLevers::new(line).is_none());
    }
}
