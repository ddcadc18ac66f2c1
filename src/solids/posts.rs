//! Where the lift stands: columns, base plates, power unit, tie, and the carriages on the columns.
//!
//! The middle of the post line lies `post_line` into the bay and `across` to the right of the
//! middle of the door opening. Heights are above `z = 0`, the floor at the post line.

use glam::{DQuat, DVec3};

use super::{Pose, Role, Solid};
use crate::bay::{Bay, Side, Tie};

/// The sign of *inward* along `x` for a post: +1 for the left post, -1 for the right one.
#[must_use]
pub const fn inward(side: Side) -> f64 {
    match side {
        Side::Left => 1.0,
        Side::Right => -1.0,
    }
}

const fn side_name(side: Side) -> &'static str {
    match side {
        Side::Left => "left",
        Side::Right => "right",
    }
}

const SIDES: [Side; 2] = [Side::Left, Side::Right];

/// Where a column's nearest face (after any rotation) lies, bay `x`, metres.
#[must_use]
pub fn inner_face_x_m(bay: &Bay, side: Side) -> f64 {
    bay.lift.across.m() - inward(side) * bay.lift.spacing.m() * 0.5
}

/// Where a column's middle lies, bay `x`, metres: behind its nearest face by half the extent that
/// its turned section has across the bay.
#[must_use]
pub fn column_middle_x_m(bay: &Bay, side: Side) -> f64 {
    let column = &bay.lift.column;
    let (sin, cos) = column.turned.rad().sin_cos();
    let half_extent = 0.5 * (column.width.m() * cos.abs() + column.depth.m() * sin.abs());
    inner_face_x_m(bay, side) - inward(side) * half_extent
}

/// The column's own frame: origin on the floor in its middle, turned with it, axes those of the
/// bay when it is not turned. A positive turn moves the open side toward the front (+y): counter-
/// clockwise on the left, clockwise on the right.
fn bay_from_column(bay: &Bay, side: Side) -> Pose {
    Pose::new(
        DQuat::from_rotation_z(inward(side) * bay.lift.column.turned.rad()),
        DVec3::new(column_middle_x_m(bay, side), bay.lift.post_line.m(), 0.0),
    )
}

/// A box in the column's frame: from `near` to `far` inward of the column's middle (negative is
/// outward), `depth` along its front, from `bottom` up by `height`.
fn on_column(
    bay: &Bay,
    side: Side,
    (name, role): (&str, Role),
    (near, far): (f64, f64),
    depth: f64,
    (bottom, height): (f64, f64),
) -> Solid {
    let middle = DVec3::new(
        inward(side) * 0.5 * (near + far),
        0.0,
        bottom + 0.5 * height,
    );
    Solid::posed_box(
        name,
        role,
        DVec3::new(far - near, depth, height),
        bay_from_column(bay, side).after(Pose::at(middle)),
    )
}

/// The fixed parts of the lift: columns, base plates, power unit, and what ties the columns.
#[must_use]
pub fn posts(bay: &Bay) -> Vec<Solid> {
    let lift = &bay.lift;
    let half_width = lift.column.width.m() * 0.5;
    let mut solids = Vec::with_capacity(8);
    for side in SIDES {
        solids.push(on_column(
            bay,
            side,
            (&format!("lift/post {}", side_name(side)), Role::Post(side)),
            (-half_width, half_width),
            lift.column.depth.m(),
            (0.0, lift.column.height.m()),
        ));
    }
    for side in SIDES {
        solids.push(base_plate(bay, side));
    }
    if let Some(unit) = &lift.power_unit {
        solids.push(on_column(
            bay,
            unit.side,
            ("lift/power unit", Role::PowerUnit(unit.side)),
            (-half_width - unit.width.m(), -half_width),
            unit.depth.m(),
            (unit.bottom.m(), unit.height.m()),
        ));
    }
    solids.extend(tie(bay));
    solids
}

/// The plate under a column. It is not turned with the column: its anchors are measured along the
/// bay's axes.
fn base_plate(bay: &Bay, side: Side) -> Solid {
    let plate = &bay.lift.base_plate;
    let middle_x = column_middle_x_m(bay, side) + inward(side) * plate.inward.m();
    let size = DVec3::new(plate.width.m(), plate.depth.m(), plate.thickness.m());
    Solid::posed_box(
        format!("lift/base plate {}", side_name(side)),
        Role::BasePlate(side),
        size,
        Pose::at(DVec3::new(middle_x, bay.lift.post_line.m(), size.z * 0.5)),
    )
}

/// The overhead beam with its shut-off bar, or the floor plate.
fn tie(bay: &Bay) -> Vec<Solid> {
    let lift = &bay.lift;
    let y = lift.post_line.m();
    let across_bay = |name, role, left: f64, right: f64, width: f64, bottom: f64, top: f64| {
        Solid::aligned_box(
            name,
            role,
            DVec3::new(left, y - 0.5 * width, bottom),
            DVec3::new(right, y + 0.5 * width, top),
        )
    };
    match &lift.tie {
        Tie::OverheadBeam {
            underside,
            height,
            width,
            bar,
        } => {
            let mut solids = vec![across_bay(
                "lift/overhead beam",
                Role::TieBeam,
                column_middle_x_m(bay, Side::Left),
                column_middle_x_m(bay, Side::Right),
                width.m(),
                underside.m(),
                (*underside + *height).m(),
            )];
            if let Some(bar) = bar {
                let radius = bar.diameter.m() * 0.5;
                let middle = DVec3::new(lift.across.m(), y, (*underside - bar.drop).m() + radius);
                let half = DVec3::X * (bar.length.m() * 0.5);
                solids.push(Solid::bar(
                    "lift/shut-off bar",
                    Role::ShutOffBar,
                    middle - half,
                    middle + half,
                    radius,
                ));
            }
            solids
        }
        Tie::FloorPlate { height, width } => vec![across_bay(
            "lift/floor plate",
            Role::FloorPlate,
            inner_face_x_m(bay, Side::Left),
            inner_face_x_m(bay, Side::Right),
            width.m(),
            0.0,
            height.m(),
        )],
    }
}

/// The carriages at travel 0: what stands proud of each column's inner face, turned with the
/// column.
#[must_use]
pub fn carriages(bay: &Bay) -> Vec<Solid> {
    let carriage = &bay.lift.carriage;
    let face = bay.lift.column.width.m() * 0.5;
    SIDES
        .into_iter()
        .map(|side| {
            on_column(
                bay,
                side,
                (
                    &format!("lift/carriage {}", side_name(side)),
                    Role::Carriage(side),
                ),
                (face, face + carriage.proud.m()),
                carriage.depth.m(),
                (carriage.bottom.m(), carriage.height.m()),
            )
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bay::Tie;
    use crate::solids::test_bay::test_bay;
    use crate::units::{Angle, Length};

    const INCH: f64 = 0.0254;

    fn named(solids: &[Solid], name: &str) -> Solid {
        solids.iter().find(|s| s.name == name).unwrap().clone()
    }

    /// Bounds in inches against what is expected.
    #[track_caller]
    fn check_bounds(solid: &Solid, low: [f64; 3], high: [f64; 3]) {
        let bounds = solid.bounds();
        let (found_low, found_high) = (bounds.0 / INCH, bounds.1 / INCH);
        assert!(
            (found_low - DVec3::from(low)).length() < 1e-9,
            "{found_low} {}",
            solid.name
        );
        assert!(
            (found_high - DVec3::from(high)).length() < 1e-9,
            "{found_high} {}",
            solid.name
        );
    }

    #[test]
    fn the_lift_stands_where_its_figures_say() {
        // Post line 168 in into the bay, faces 116 in apart: +-58 in; columns 12 in by 14 in.
        let solids = posts(&test_bay());
        check_bounds(
            &named(&solids, "lift/post left"),
            [-70.0, 161.0, 0.0],
            [-58.0, 175.0, 142.0],
        );
        check_bounds(
            &named(&solids, "lift/post right"),
            [58.0, 161.0, 0.0],
            [70.0, 175.0, 142.0],
        );
        // Plate middle 1 in inward of 64 in: 63 in; 18 in by 20 in by 3/4 in.
        check_bounds(
            &named(&solids, "lift/base plate right"),
            [54.0, 158.0, 0.0],
            [72.0, 178.0, 0.75],
        );
        check_bounds(
            &named(&solids, "lift/power unit"),
            [70.0, 162.0, 48.0],
            [80.0, 174.0, 76.0],
        );
        check_bounds(
            &named(&solids, "lift/overhead beam"),
            [-64.0, 164.0, 136.0],
            [64.0, 172.0, 141.0],
        );
        // The bar's lowest point hangs 5 in under the beam's 136 in; 3 in thick, 7 ft long.
        check_bounds(
            &named(&solids, "lift/shut-off bar"),
            [-42.0, 166.5, 131.0],
            [42.0, 169.5, 134.0],
        );
        let carriages = carriages(&test_bay());
        check_bounds(
            &named(&carriages, "lift/carriage left"),
            [-58.0, 163.0, 3.0],
            [-54.0, 173.0, 37.0],
        );
        check_bounds(
            &named(&carriages, "lift/carriage right"),
            [54.0, 163.0, 3.0],
            [58.0, 173.0, 37.0],
        );
    }

    #[test]
    fn turned_columns_keep_the_spacing_between_their_nearest_faces() {
        let mut bay = test_bay();
        bay.lift.column.turned = Angle::degrees(30.0);
        bay.lift.across = Length::inches(7.0);
        // Half the turned extent: 6 cos 30 + 7 sin 30 = 5.19615 + 3.5 = 8.69615 in.
        let half = 6.0 * 0.75_f64.sqrt() + 3.5;
        let left = column_middle_x_m(&bay, Side::Left) / INCH;
        assert!((left - (7.0 - 58.0 - half)).abs() < 1e-9);
        let solids = posts(&bay);
        let (_, high) = named(&solids, "lift/post left").bounds();
        let (low, _) = named(&solids, "lift/post right").bounds();
        assert!((high.x / INCH - (7.0 - 58.0)).abs() < 1e-9);
        assert!((low.x / INCH - (7.0 + 58.0)).abs() < 1e-9);
        // The open sides turn toward the front: both carriages move to +y, alike.
        let carriages: Vec<DVec3> = carriages(&bay)
            .iter()
            .map(|carriage| carriage.bay_from_solid.translation)
            .collect();
        assert!(carriages[0].y > bay.lift.post_line.m() + 0.1);
        assert!((carriages[0].y - carriages[1].y).abs() < 1e-12);
        assert!((carriages[0].x + carriages[1].x - 2.0 * 7.0 * INCH).abs() < 1e-12);
    }

    #[test]
    fn a_floor_plate_lies_between_the_inner_faces() {
        let mut bay = test_bay();
        bay.lift.tie = Tie::FloorPlate {
            height: Length::inches(1.5),
            width: Length::inches(14.0),
        };
        let solids = posts(&bay);
        check_bounds(
            &named(&solids, "lift/floor plate"),
            [-58.0, 161.0, 0.0],
            [58.0, 175.0, 1.5],
        );
        assert!(solids.iter().all(|solid| solid.role != Role::ShutOffBar));
    }
}
