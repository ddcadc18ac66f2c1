//! The sketches of vehicle and parking. Millimetres of paper.

use super::sketch::{Sketch, at};
use crate::drawing::palette::paper::{BODY, DOOR, STEEL, TYRE, WALL};

/// From the side, and from behind.
pub(super) fn whole() -> Sketch {
    let mut s = Sketch::new("vehicle", 182.0, 51.0);
    s.word(at(0.0, 48.0), "from the side, front at the left");
    side(&mut s);
    s.rect((36.0, 24.0), (38.0, 28.0), STEEL);
    s.dim("vehicle.length", at(4.0, 45.0), at(104.0, 45.0));
    s.dashed(at(4.0, 24.0), at(4.0, 45.0));
    s.dashed(at(104.0, 25.0), at(104.0, 45.0));
    s.dim("vehicle.front_overhang", at(4.0, 41.0), at(24.0, 41.0));
    s.dim("vehicle.wheelbase", at(24.0, 41.0), at(82.0, 41.0));
    s.dashed(at(24.0, 16.0), at(24.0, 41.0));
    s.dashed(at(82.0, 16.0), at(82.0, 41.0));
    s.dim_at(
        "vehicle.mirrors.station",
        at(4.0, 34.0),
        at(37.0, 34.0),
        0.3,
    );
    s.dashed(at(37.0, 28.0), at(37.0, 34.0));
    s.dim("vehicle.height", at(110.0, 9.0), at(110.0, 37.0));
    s.dim("vehicle.tyre.diameter", at(14.0, 9.0), at(14.0, 22.0));
    s.dashed(at(14.0, 22.0), at(24.0, 22.0));
    s.dim_at("vehicle.sill", at(53.0, 9.0), at(53.0, 14.0), 1.8);

    s.word(at(122.0, 48.0), "from behind");
    s.line(at(116.0, 9.0), at(180.0, 9.0));
    behind(&mut s);
    s.rect((121.0, 25.0), (127.0, 29.0), BODY);
    s.rect((167.0, 25.0), (173.0, 29.0), BODY);
    s.dim(
        "vehicle.mirrors.width_over",
        at(121.0, 41.0),
        at(173.0, 41.0),
    );
    s.dim_at("vehicle.body_width", at(127.0, 31.0), at(167.0, 31.0), 0.3);
    s.dim_at("vehicle.belt", at(152.0, 9.0), at(152.0, 26.0), 0.5);
    s.dashed(at(152.0, 26.0), at(167.0, 26.0));
    s.dim("vehicle.tyre.width", at(160.0, 5.0), at(166.0, 5.0));
    s.dim("vehicle.mirrors.bottom", at(118.5, 9.0), at(118.5, 25.0));
    s.dashed(at(118.5, 25.0), at(121.0, 25.0));
    s.dim("vehicle.mirrors.top", at(177.0, 9.0), at(177.0, 29.0));
    s.dashed(at(173.0, 29.0), at(177.0, 29.0));
    s.spot("vehicle.mirrors.depth", at(37.0, 26.0), at(46.0, 30.5));
    s
}

/// Lift points and tracks: from the side, and from above.
pub(super) fn lift_points() -> Sketch {
    let mut s = Sketch::new("vehicle", 176.0, 46.0);
    s.word(at(0.0, 43.0), "lift points, from the side");
    side(&mut s);
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
    s.dashed(at(4.0, 2.5), at(4.0, 14.0));
    s.dashed(at(39.0, 6.0), at(39.0, 14.0));
    s.dashed(at(68.0, 2.5), at(68.0, 14.0));
    s.spot("vehicle.droop.front", at(24.0, 15.5), at(24.0, 26.0));
    s.spot("vehicle.droop.rear", at(82.0, 15.5), at(82.0, 26.0));
    s.circle(at(39.0, 14.0), 0.8, None);
    s.circle(at(68.0, 14.0), 0.8, None);
    s.dim_at(
        "vehicle.lift_points.front.height",
        at(45.0, 9.0),
        at(45.0, 14.0),
        1.8,
    );
    s.dim_at(
        "vehicle.lift_points.rear.height",
        at(60.0, 9.0),
        at(60.0, 14.0),
        1.8,
    );

    s.word(at(120.0, 43.0), "from above, front at the top");
    s.rect((126.0, 1.0), (166.0, 41.0), BODY);
    for y in [30.0, 4.0] {
        s.rect((128.0, y), (133.0, y + 7.0), TYRE);
        s.rect((159.0, y), (164.0, y + 7.0), TYRE);
    }
    s.dashed(at(146.0, 1.0), at(146.0, 41.0));
    for y in [26.0, 15.0] {
        s.circle(at(136.0, y), 0.8, None);
        s.circle(at(156.0, y), 0.8, None);
    }
    s.dim("vehicle.track.front", at(130.5, 35.0), at(161.5, 35.0));
    s.dim("vehicle.track.rear", at(130.5, 6.5), at(161.5, 6.5));
    s.dim(
        "vehicle.lift_points.front.half_spacing",
        at(146.0, 26.0),
        at(156.0, 26.0),
    );
    s.dim(
        "vehicle.lift_points.rear.half_spacing",
        at(146.0, 15.0),
        at(156.0, 15.0),
    );
    s
}

/// A vehicle from behind.
fn behind(s: &mut Sketch) {
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
}

/// Where the outline bends: from the side, and one place of it from behind.
pub(super) fn roof() -> Sketch {
    let mut s = Sketch::new("roof", 176.0, 46.0);
    side(&mut s);
    for (x, y) in [
        (5.0, 24.0),
        (34.0, 27.0),
        (44.0, 37.0),
        (100.0, 37.0),
        (104.0, 25.0),
    ] {
        s.circle(at(x, y), 1.0, Some(STEEL));
    }
    s.dim("station", at(4.0, 42.0), at(44.0, 42.0));
    s.dashed(at(4.0, 24.0), at(4.0, 42.0));
    s.dashed(at(44.0, 37.0), at(44.0, 42.0));
    s.dim("height", at(44.0, 9.0), at(44.0, 36.0));
    s.line(at(116.0, 9.0), at(176.0, 9.0));
    behind(&mut s);
    s.dashed(at(147.0, 9.0), at(147.0, 42.0));
    s.dim_at("half_width", at(147.0, 42.0), at(162.0, 42.0), 1.5);
    s.dashed(at(162.0, 37.0), at(162.0, 42.0));
    s
}

/// What hangs below: from the side, and from behind.
pub(super) fn under() -> Sketch {
    let mut s = Sketch::new("under", 176.0, 42.0);
    side(&mut s);
    s.rect((40.0, 11.5), (66.0, 14.0), STEEL);
    s.dim("from", at(4.0, 5.5), at(40.0, 5.5));
    s.dim_at("to", at(4.0, 1.8), at(66.0, 1.8), 0.75);
    s.dashed(at(4.0, 1.8), at(4.0, 14.0));
    s.dashed(at(40.0, 5.5), at(40.0, 11.5));
    s.dashed(at(66.0, 1.8), at(66.0, 11.5));
    s.dim_at("height", at(52.0, 9.0), at(52.0, 11.5), 2.9);
    s.line(at(116.0, 9.0), at(176.0, 9.0));
    behind(&mut s);
    s.rect((141.0, 11.5), (155.0, 14.0), STEEL);
    s.dashed(at(147.0, 5.0), at(147.0, 24.0));
    s.dim_at("half_width", at(147.0, 5.0), at(155.0, 5.0), 1.7);
    s.dashed(at(155.0, 5.0), at(155.0, 11.5));
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

/// A box on the roof: from the side, and from behind.
pub(super) fn fixed() -> Sketch {
    let mut s = Sketch::new("fixed", 176.0, 53.0);
    side(&mut s);
    s.rect((56.0, 39.0), (90.0, 45.0), STEEL);
    s.line(at(62.0, 37.0), at(62.0, 39.0));
    s.line(at(84.0, 37.0), at(84.0, 39.0));
    s.dim("from", at(4.0, 48.5), at(56.0, 48.5));
    s.dashed(at(4.0, 4.0), at(4.0, 48.5));
    s.dashed(at(56.0, 45.0), at(56.0, 48.5));
    s.dim_at("to", at(4.0, 4.0), at(90.0, 4.0), 0.6);
    s.dashed(at(90.0, 4.0), at(90.0, 39.0));
    s.dim("bottom", at(108.0, 9.0), at(108.0, 39.0));
    s.dashed(at(90.0, 39.0), at(108.0, 39.0));
    s.dim_at("top", at(116.0, 9.0), at(116.0, 45.0), 0.7);
    s.dashed(at(90.0, 45.0), at(116.0, 45.0));
    s.word(at(58.0, 41.2), "over all, with its feet");
    s.line(at(120.0, 9.0), at(176.0, 9.0));
    behind(&mut s);
    s.rect((137.0, 39.0), (157.0, 45.0), STEEL);
    s.line(at(140.0, 37.0), at(140.0, 39.0));
    s.line(at(154.0, 37.0), at(154.0, 39.0));
    s.dim("width", at(137.0, 48.5), at(157.0, 48.5));
    s
}

/// From above, askew, and a pad that is raised.
pub(super) fn parking() -> Sketch {
    let mut s = Sketch::new("parking", 176.0, 46.0);
    s.word(at(0.0, 43.0), "from above, the door at the left, nose in");
    s.rect((0.0, 2.0), (3.0, 36.0), WALL);
    s.rect((0.0, 8.0), (3.0, 30.0), DOOR);
    s.rect((22.0, 11.0), (96.0, 27.0), BODY);
    for x in [30.0, 76.0] {
        for y in [10.0, 24.5] {
            s.rect((x, y), (x + 9.0, y + 3.5), TYRE);
        }
    }
    s.dashed(at(56.0, 2.0), at(56.0, 36.0));
    s.word(at(50.0, 37.0), "post line");
    s.circle(at(64.0, 19.0), 1.2, None);
    s.dim_at("#aim", at(56.0, 22.5), at(64.0, 22.5), -0.6);
    s.dashed(at(78.0, 6.0), at(78.0, 31.0));
    s.dashed(at(84.0, 6.0), at(84.0, 31.0));
    s.dim_at("parking.repeat.along", at(78.0, 33.0), at(84.0, 33.0), 2.2);
    s.dim_at(
        "parking.repeat.across",
        at(102.0, 23.0),
        at(102.0, 28.0),
        0.5,
    );
    s.dashed(at(85.0, 28.0), at(102.0, 28.0));
    s.dashed(at(85.0, 23.0), at(102.0, 23.0));
    s.dashed(at(10.0, 19.0), at(108.0, 19.0));
    s.dashed(at(10.0, 15.0), at(108.0, 21.5));
    s.spot("parking.repeat.yaw", at(14.0, 17.2), at(13.0, 31.0));

    s.word(at(124.0, 43.0), "a pad as it takes the load");
    s.line(at(124.0, 4.0), at(174.0, 4.0));
    s.rect((124.0, 10.0), (154.0, 14.0), STEEL);
    s.rect((146.0, 14.0), (149.0, 28.0), STEEL);
    s.rect((141.0, 28.0), (154.0, 30.0), DOOR);
    s.dashed(at(141.0, 18.0), at(164.0, 18.0));
    s.dashed(at(154.0, 30.0), at(164.0, 30.0));
    s.dim("parking.pad_raise", at(164.0, 18.0), at(164.0, 30.0));
    s.word(at(124.0, 19.0), "at its lowest");
    s
}
