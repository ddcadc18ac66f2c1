//! The sketches of lift, vehicle and parking. Millimetres of paper.

use super::sketch::{Sketch, at};
use crate::drawing::palette::paper::{BODY, DOOR, STEEL, TYRE, WALL};

/// From the door, and from above.
pub(super) fn lift() -> Sketch {
    let mut s = Sketch::new("lift", 176.0, 56.0);
    s.word(at(0.0, 53.0), "from the door");
    s.line(at(0.0, 4.0), at(92.0, 4.0));
    for (x, way) in [(18.0, 1.0), (74.0, -1.0)] {
        s.rect((x - 4.0, 5.2), (x + 4.0, 50.0), STEEL);
        s.rect((x - 7.0, 4.0), (x + 7.0, 5.2), STEEL);
        let carriage = [x + way * 4.0, x + way * 7.0];
        s.rect(
            (carriage[0].min(carriage[1]), 12.0),
            (carriage[0].max(carriage[1]), 26.0),
            STEEL,
        );
        let pad = x + way * 16.0;
        s.rect(
            (pad.min(x + way * 7.0), 12.0),
            (pad.max(x + way * 7.0), 13.5),
            STEEL,
        );
        s.rect((pad - 1.5, 13.5), (pad + 1.5, 16.0), STEEL);
    }
    s.dim("lift.column.height", at(7.0, 5.2), at(7.0, 50.0));
    s.dim_at("lift.spacing", at(22.0, 34.0), at(70.0, 34.0), 0.3);
    s.dim("lift.drive_through", at(25.0, 22.0), at(67.0, 22.0));
    s.dim("lift.base_plate.width", at(67.0, 1.5), at(81.0, 1.5));
    s.dim("lift.pad.lowest", at(38.0, 4.0), at(38.0, 16.0));
    s.dim("lift.travel", at(85.0, 12.0), at(85.0, 43.0));
    s.dashed(at(71.0, 12.0), at(85.0, 12.0));
    s.spot("lift.base_plate.thickness", at(22.0, 4.6), at(30.0, 8.0));
    for y in [30.0, 34.0, 38.0] {
        s.line(at(76.0, y), at(79.0, y));
    }
    s.dim("#locks.pitch", at(90.0, 34.0), at(90.0, 38.0));
    s.spot("#locks.first", at(77.5, 30.0), at(66.0, 29.0));

    s.rect((14.0, 46.5), (78.0, 49.5), STEEL);
    s.circle(at(46.0, 44.6), 1.0, Some(STEEL));
    s.dim("#tie.underside", at(62.0, 4.0), at(62.0, 46.5));
    s.spot("#tie.height", at(34.0, 48.0), at(34.0, 53.0));
    s.spot("#bar.drop", at(46.0, 44.6), at(54.0, 38.5));

    s.word(at(104.0, 53.0), "from above, the front (inward) above");
    for (x, way) in [(110.0, 1.0), (160.0, -1.0)] {
        s.rect((x - 5.0, 20.0), (x + 5.0, 32.0), STEEL);
        s.rect((x - 3.5, 22.0), (x + 3.5, 30.0), STEEL);
        for (up, away) in [(29.0, 44.0), (23.0, 6.0)] {
            s.line(at(x + way * 5.0, up), at(x + way * 17.0, away));
            s.circle(at(x + way * 17.0, away), 2.0, Some(STEEL));
        }
    }
    s.dim("lift.arms.front.longest", at(115.0, 29.0), at(127.0, 44.0));
    s.dim("lift.arms.rear.longest", at(115.0, 23.0), at(127.0, 6.0));
    s.dim("lift.base_plate.depth", at(170.0, 20.0), at(170.0, 32.0));
    s
}

/// From above.
pub(super) fn place() -> Sketch {
    let mut s = Sketch::new("place", 120.0, 46.0);
    s.word(at(0.0, 43.0), "from above, the door below");
    s.rect((0.0, 1.0), (92.0, 3.0), WALL);
    s.rect((22.0, 1.0), (62.0, 3.0), DOOR);
    for x in [17.0, 61.0] {
        s.rect((x, 26.0), (x + 10.0, 36.0), STEEL);
    }
    s.dashed(at(10.0, 31.0), at(78.0, 31.0));
    s.dashed(at(42.0, 3.0), at(42.0, 40.0));
    s.dashed(at(44.0, 18.0), at(44.0, 38.0));
    s.dim("lift.post_line", at(34.0, 3.0), at(34.0, 31.0));
    s.spot("lift.across", at(43.0, 38.0), at(54.0, 40.0));
    s.word(at(46.5, 12.0), "middle of the door, of the lift");
    s
}

/// From the side, and from behind.
pub(super) fn vehicle() -> Sketch {
    let mut s = Sketch::new("vehicle", 176.0, 51.0);
    s.word(at(0.0, 48.0), "from the side, front at the left");
    side(&mut s);
    s.dim("vehicle.length", at(4.0, 44.0), at(104.0, 44.0));
    s.dashed(at(4.0, 24.0), at(4.0, 44.0));
    s.dashed(at(104.0, 25.0), at(104.0, 44.0));
    s.dim("vehicle.front_overhang", at(4.0, 40.0), at(24.0, 40.0));
    s.dim("vehicle.wheelbase", at(24.0, 40.0), at(82.0, 40.0));
    s.dashed(at(24.0, 16.0), at(24.0, 40.0));
    s.dashed(at(82.0, 16.0), at(82.0, 40.0));
    s.dim("vehicle.height", at(110.0, 9.0), at(110.0, 37.0));
    s.dim("vehicle.tyre.diameter", at(14.0, 9.0), at(14.0, 22.0));
    s.dim(
        "vehicle.lift_points.front.station",
        at(4.0, 6.0),
        at(39.0, 6.0),
    );
    s.dim_at(
        "vehicle.lift_points.rear.station",
        at(4.0, 2.5),
        at(68.0, 2.5),
        0.7,
    );
    s.dashed(at(39.0, 6.0), at(39.0, 14.0));
    s.dashed(at(68.0, 2.5), at(68.0, 14.0));
    s.circle(at(39.0, 14.0), 0.8, None);
    s.circle(at(68.0, 14.0), 0.8, None);
    s.dim_at(
        "vehicle.lift_points.front.height",
        at(45.0, 9.0),
        at(45.0, 14.0),
        1.6,
    );
    s.dim_at(
        "vehicle.lift_points.rear.height",
        at(61.0, 9.0),
        at(61.0, 14.0),
        1.6,
    );

    s.word(at(122.0, 48.0), "from behind");
    s.line(at(118.0, 9.0), at(176.0, 9.0));
    s.rect((128.0, 9.0), (134.0, 22.0), TYRE);
    s.rect((160.0, 9.0), (166.0, 22.0), TYRE);
    s.shape(
        &[
            (127.0, 14.0),
            (167.0, 14.0),
            (167.0, 26.0),
            (162.0, 37.0),
            (132.0, 37.0),
            (127.0, 26.0),
        ],
        BODY,
    );
    s.rect((121.0, 25.0), (127.0, 29.0), BODY);
    s.rect((167.0, 25.0), (173.0, 29.0), BODY);
    s.dim(
        "vehicle.mirrors.width_over",
        at(121.0, 41.0),
        at(173.0, 41.0),
    );
    s.dim("vehicle.body_width", at(127.0, 31.0), at(167.0, 31.0));
    s.dim("vehicle.track.rear", at(131.0, 5.0), at(163.0, 5.0));
    s.spot("vehicle.tyre.width", at(165.0, 11.0), at(172.0, 13.5));
    s.dashed(at(147.0, 12.0), at(147.0, 24.0));
    s.dim(
        "vehicle.lift_points.rear.half_spacing",
        at(147.0, 17.0),
        at(159.0, 17.0),
    );
    s
}

/// A vehicle from the side, its front at the left.
fn side(s: &mut Sketch) {
    s.line(at(0.0, 9.0), at(112.0, 9.0));
    s.shape(
        &[
            (4.0, 14.0),
            (104.0, 14.0),
            (104.0, 25.0),
            (100.0, 37.0),
            (44.0, 37.0),
            (34.0, 27.0),
            (5.0, 24.0),
        ],
        BODY,
    );
    for x in [24.0, 82.0] {
        s.circle(at(x, 15.5), 6.5, Some(TYRE));
    }
}

/// A box on the roof.
pub(super) fn fixed() -> Sketch {
    let mut s = Sketch::new("fixed", 130.0, 52.0);
    side(&mut s);
    s.rect((56.0, 39.0), (90.0, 45.0), STEEL);
    s.line(at(62.0, 37.0), at(62.0, 39.0));
    s.line(at(84.0, 37.0), at(84.0, 39.0));
    s.dim("from", at(4.0, 48.0), at(56.0, 48.0));
    s.dashed(at(4.0, 24.0), at(4.0, 48.0));
    s.dim_at("to", at(4.0, 4.0), at(90.0, 4.0), 0.6);
    s.dashed(at(90.0, 4.0), at(90.0, 39.0));
    s.dim("bottom", at(109.0, 9.0), at(109.0, 39.0));
    s.dashed(at(90.0, 39.0), at(109.0, 39.0));
    s.dim("top", at(119.0, 9.0), at(119.0, 45.0));
    s.dashed(at(90.0, 45.0), at(119.0, 45.0));
    s.word(at(58.0, 41.2), "over all, with its feet");
    s
}

/// From above.
pub(super) fn parking() -> Sketch {
    let mut s = Sketch::new("parking", 130.0, 44.0);
    s.word(at(0.0, 41.0), "from above, the door at the left, nose in");
    s.rect((0.0, 2.0), (3.0, 36.0), WALL);
    s.rect((0.0, 8.0), (3.0, 30.0), DOOR);
    s.rect((30.0, 11.0), (104.0, 27.0), BODY);
    for x in [38.0, 84.0] {
        for y in [10.0, 24.5] {
            s.rect((x, y), (x + 9.0, y + 3.5), TYRE);
        }
    }
    s.dashed(at(64.0, 2.0), at(64.0, 36.0));
    s.word(at(57.0, 37.0), "post line");
    s.circle(at(72.0, 19.0), 1.2, None);
    s.dim("#aim", at(64.0, 22.5), at(72.0, 22.5));
    s.dashed(at(86.0, 6.0), at(86.0, 31.0));
    s.dashed(at(92.0, 6.0), at(92.0, 31.0));
    s.dim_at("parking.repeat.along", at(86.0, 33.0), at(92.0, 33.0), 2.2);
    s.dim_at(
        "parking.repeat.across",
        at(110.0, 23.0),
        at(110.0, 28.0),
        0.5,
    );
    s.dashed(at(93.0, 28.0), at(110.0, 28.0));
    s.dashed(at(93.0, 23.0), at(110.0, 23.0));
    s
}
