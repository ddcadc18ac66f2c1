//! The sketches of the lift. Millimetres of paper.

use super::sketch::{Sketch, at};
use crate::drawing::palette::paper::{BODY, DOOR, PAPER, STEEL, WALL};

/// From the door, and a base plate from above.
pub(super) fn whole() -> Sketch {
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
    s.spot("lift.base_plate.thickness", at(22.0, 4.6), at(31.0, 8.0));
    s.rect((14.0, 46.5), (78.0, 49.5), STEEL);
    s.circle(at(46.0, 44.6), 1.0, Some(STEEL));
    s.dim("#tie.underside", at(58.0, 4.0), at(58.0, 46.5));
    s.word(at(30.0, 51.0), "overhead beam, with its bar");

    s.word(at(110.0, 53.0), "a base plate, from above");
    s.rect((114.0, 12.0), (152.0, 46.0), DOOR);
    s.rect((120.0, 20.0), (138.0, 38.0), STEEL);
    s.dim("lift.base_plate.width", at(114.0, 8.0), at(152.0, 8.0));
    s.dim("lift.base_plate.depth", at(158.0, 12.0), at(158.0, 46.0));
    s.dim("lift.column.width", at(120.0, 15.0), at(138.0, 15.0));
    s.dim("lift.column.depth", at(144.0, 20.0), at(144.0, 38.0));
    s.dashed(at(129.0, 18.0), at(129.0, 50.5));
    s.dashed(at(133.0, 18.0), at(133.0, 50.5));
    s.spot("lift.base_plate.inward", at(131.0, 49.0), at(142.0, 49.5));
    s.word(at(110.0, 1.5), "the vehicle at the right, the door below");
    s
}

/// What ties the columns together, from the side.
pub(super) fn tie() -> Sketch {
    let mut s = Sketch::new("lift", 176.0, 44.0);
    s.word(at(0.0, 41.0), "overhead beam, from the side");
    s.line(at(0.0, 3.0), at(76.0, 3.0));
    s.rect((20.0, 3.0), (34.0, 34.0), STEEL);
    s.rect((17.0, 28.0), (37.0, 34.0), DOOR);
    s.circle(at(27.0, 21.0), 1.4, Some(DOOR));
    s.line(at(27.0, 28.0), at(27.0, 22.4));
    s.dim("#tie.width", at(17.0, 37.0), at(37.0, 37.0));
    s.dim_at("#tie.height", at(43.0, 28.0), at(43.0, 34.0), 0.5);
    s.dashed(at(37.0, 34.0), at(43.0, 34.0));
    s.dashed(at(37.0, 28.0), at(59.0, 28.0));
    s.dim("#tie.underside", at(59.0, 3.0), at(59.0, 28.0));
    s.dim("#bar.drop", at(52.0, 19.6), at(52.0, 28.0));
    s.dashed(at(28.0, 19.6), at(52.0, 19.6));
    s.spot("#bar", at(26.0, 21.0), at(12.0, 24.0));
    s.dim_at("#bar.diameter", at(14.0, 19.6), at(14.0, 22.4), -1.2);
    s.dashed(at(14.0, 19.6), at(26.0, 19.6));
    s.dashed(at(14.0, 22.4), at(26.0, 22.4));

    s.word(at(62.0, 41.0), "from the door");
    s.rect((64.0, 28.0), (96.0, 34.0), DOOR);
    s.line(at(66.0, 3.0), at(66.0, 28.0));
    s.line(at(94.0, 3.0), at(94.0, 28.0));
    s.rect((70.0, 19.6), (90.0, 22.4), DOOR);
    s.line(at(73.0, 22.4), at(73.0, 28.0));
    s.line(at(87.0, 22.4), at(87.0, 28.0));
    s.dim("#bar.length", at(70.0, 14.0), at(90.0, 14.0));

    s.word(at(104.0, 41.0), "floor plate, from the side");
    s.line(at(104.0, 3.0), at(176.0, 3.0));
    s.rect((124.0, 3.0), (138.0, 34.0), STEEL);
    s.rect((116.0, 3.0), (146.0, 6.0), DOOR);
    s.dim_at("#plate.width", at(116.0, 10.0), at(146.0, 10.0), 0.5);
    s.dim_at("#plate.height", at(152.0, 3.0), at(152.0, 6.0), 2.3);
    s.dashed(at(146.0, 6.0), at(152.0, 6.0));
    s
}

/// The carriage on its way, and a lock close by.
pub(super) fn locks() -> Sketch {
    let mut s = Sketch::new("lift", 176.0, 64.0);
    s.word(at(0.0, 61.0), "carriage down, and (broken) at its highest");
    s.rect((14.0, 4.0), (40.0, 5.5), STEEL);
    s.rect((20.0, 5.5), (32.0, 59.0), STEEL);
    s.rect((32.0, 8.0), (38.0, 24.0), DOOR);
    for ends in [
        [(32.0, 40.0), (38.0, 40.0)],
        [(38.0, 40.0), (38.0, 56.0)],
        [(38.0, 56.0), (32.0, 56.0)],
    ] {
        s.dashed(at(ends[0].0, ends[0].1), at(ends[1].0, ends[1].1));
    }
    s.dim("lift.carriage.marked_edge", at(9.0, 5.5), at(9.0, 24.0));
    s.dashed(at(9.0, 24.0), at(64.0, 24.0));
    s.dim_at("lift.travel", at(46.0, 24.0), at(46.0, 56.0), 0.65);
    s.dashed(at(38.0, 56.0), at(46.0, 56.0));
    for y in [33.0, 41.0, 49.0] {
        s.line(at(28.0, y), at(32.0, y));
        s.dashed(at(38.0, y), at(66.0, y));
    }
    s.dim("#locks.first", at(56.0, 24.0), at(56.0, 33.0));
    s.dim("#locks.pitch", at(56.0, 33.0), at(56.0, 41.0));
    s.dim_at("#locks.each", at(66.0, 24.0), at(66.0, 49.0), 0.5);

    s.word(
        at(96.0, 61.0),
        "a lock close by: the carriage's edge on its way",
    );
    s.rect((100.0, 8.0), (112.0, 56.0), STEEL);
    s.rect((103.0, 20.0), (109.0, 44.0), PAPER);
    s.line(at(112.0, 20.0), at(150.0, 20.0));
    s.word(at(151.0, 19.0), "at rest in the lock");
    s.dashed(at(112.0, 34.0), at(150.0, 34.0));
    s.word(at(151.0, 33.0), "its latch drops in");
    s.dashed(at(112.0, 44.0), at(150.0, 44.0));
    s.word(at(151.0, 43.0), "it can be pulled");
    s.dim("lift.set_overtravel", at(124.0, 20.0), at(124.0, 34.0));
    s.dim_at(
        "lift.release_overtravel",
        at(139.0, 20.0),
        at(139.0, 44.0),
        0.3,
    );
    s
}

/// A pad from the side, the arms from above.
pub(super) fn arms() -> Sketch {
    let mut s = Sketch::new("lift", 176.0, 52.0);
    s.word(
        at(0.0, 49.0),
        "a pad, from the side, and (broken) screwed out",
    );
    s.line(at(0.0, 4.0), at(80.0, 4.0));
    s.rect((6.0, 14.0), (48.0, 18.0), STEEL);
    s.rect((40.0, 18.0), (43.0, 22.0), STEEL);
    s.rect((35.0, 22.0), (48.0, 24.0), DOOR);
    s.dim("lift.pad.lowest", at(56.0, 4.0), at(56.0, 24.0));
    s.dashed(at(48.0, 24.0), at(66.0, 24.0));
    s.dashed(at(35.0, 36.0), at(66.0, 36.0));
    s.dashed(at(35.0, 34.0), at(48.0, 34.0));
    s.dim("lift.pad.screw_travel", at(66.0, 24.0), at(66.0, 36.0));
    s.dim("lift.pad.diameter", at(35.0, 41.0), at(48.0, 41.0));
    s.dashed(at(35.0, 36.0), at(35.0, 41.0));
    s.dashed(at(48.0, 36.0), at(48.0, 41.0));

    s.word(at(96.0, 49.0), "from above, the front (inward) above");
    for (x, way, front, rear) in [
        (106.0, 1.0, (20.0, 17.0), (19.0, -17.0)),
        (164.0, -1.0, (11.0, 10.0), (11.0, -10.0)),
    ] {
        s.rect((x - 5.0, 19.0), (x + 5.0, 31.0), STEEL);
        for (from, (side, up)) in [(28.0, front), (22.0, rear)] {
            let end = at(x + way * (5.0 + side), from + up);
            s.line(at(x + way * 5.0, from), end);
            s.circle(end, 2.0, Some(STEEL));
        }
    }
    s.dim("lift.arms.front.longest", at(111.0, 28.0), at(131.0, 45.0));
    s.dim("lift.arms.rear.longest", at(111.0, 22.0), at(130.0, 5.0));
    s.dim("lift.arms.front.shortest", at(159.0, 28.0), at(148.0, 38.0));
    s.dim("lift.arms.rear.shortest", at(159.0, 22.0), at(148.0, 12.0));
    s.word(at(98.0, 1.0), "drawn out");
    s.word(at(150.0, 1.0), "pushed in");
    s
}

/// What the manual says of balance, anchors and slab.
pub(super) fn papers() -> Sketch {
    let mut s = Sketch::new("lift", 176.0, 36.0);
    s.word(at(0.0, 33.0), "from above, the door below");
    for x in [6.0, 44.0] {
        s.rect((x, 13.0), (x + 8.0, 21.0), STEEL);
    }
    s.dashed(at(0.0, 17.0), at(60.0, 17.0));
    s.word(at(61.0, 16.3), "post line");
    s.shape(
        &[(20.0, 9.0), (38.0, 9.0), (38.0, 27.0), (20.0, 27.0)],
        BODY,
    );
    s.dashed(at(14.0, 17.0), at(44.0, 17.0));
    s.dim("lift.cg_window.front", at(25.0, 17.0), at(25.0, 27.0));
    s.dim("lift.cg_window.rear", at(33.0, 9.0), at(33.0, 17.0));
    s.word(at(8.0, 4.0), "where the centre of gravity may lie");

    s.word(at(88.0, 33.0), "plate and anchors, cut through");
    s.rect((88.0, 4.0), (168.0, 18.0), WALL);
    s.rect((110.0, 18.0), (142.0, 19.5), STEEL);
    for x in [116.0, 136.0] {
        s.rect((x - 0.8, 8.0), (x + 0.8, 21.5), STEEL);
    }
    s.dim("lift.manual.thickness", at(98.0, 4.0), at(98.0, 18.0));
    s.dim(
        "lift.manual.edge_distance",
        at(136.0, 25.0),
        at(168.0, 25.0),
    );
    s.dashed(at(136.0, 21.5), at(136.0, 25.0));
    s.dashed(at(168.0, 18.0), at(168.0, 25.0));
    s.dim(
        "lift.base_plate.anchor_embedment",
        at(146.0, 8.0),
        at(146.0, 18.0),
    );
    s.dashed(at(136.8, 8.0), at(146.0, 8.0));
    s.spot(
        "lift.base_plate.anchor_diameter",
        at(116.0, 14.0),
        at(126.0, 12.0),
    );
    s.word(at(150.0, 7.0), "edge, joint");
    s
}

/// A carriage and the power unit: from the door, and from above.
pub(super) fn carriage() -> Sketch {
    let mut s = Sketch::new("lift", 176.0, 46.0);
    s.word(at(0.0, 43.0), "from the door, the carriage down");
    s.line(at(0.0, 3.0), at(80.0, 3.0));
    s.rect((36.0, 3.0), (48.0, 40.0), STEEL);
    s.rect((48.0, 7.0), (56.0, 25.0), DOOR);
    s.rect((20.0, 17.0), (36.0, 33.0), BODY);
    s.dim_at("lift.carriage.bottom", at(63.0, 3.0), at(63.0, 7.0), 2.0);
    s.dashed(at(56.0, 7.0), at(72.0, 7.0));
    s.dim("lift.carriage.height", at(72.0, 7.0), at(72.0, 25.0));
    s.dashed(at(56.0, 25.0), at(72.0, 25.0));
    s.dim_at("lift.carriage.proud", at(48.0, 30.0), at(56.0, 30.0), 1.8);
    s.dashed(at(56.0, 25.0), at(56.0, 30.0));
    s.dim("lift.power_unit.bottom", at(28.0, 3.0), at(28.0, 17.0));
    s.dim("lift.power_unit.height", at(12.0, 17.0), at(12.0, 33.0));
    s.dashed(at(12.0, 17.0), at(20.0, 17.0));
    s.dashed(at(12.0, 33.0), at(20.0, 33.0));
    s.dim("lift.power_unit.width", at(20.0, 37.0), at(36.0, 37.0));
    s.dashed(at(20.0, 33.0), at(20.0, 37.0));

    s.word(
        at(98.0, 43.0),
        "from above, the door below, the vehicle at the right",
    );
    s.rect((126.0, 12.0), (140.0, 32.0), STEEL);
    s.rect((140.0, 14.0), (148.0, 30.0), DOOR);
    s.rect((110.0, 15.0), (126.0, 29.0), BODY);
    s.dim("lift.carriage.depth", at(158.0, 14.0), at(158.0, 30.0));
    s.dashed(at(148.0, 14.0), at(158.0, 14.0));
    s.dashed(at(148.0, 30.0), at(158.0, 30.0));
    s.dim("lift.power_unit.depth", at(103.0, 15.0), at(103.0, 29.0));
    s.dashed(at(103.0, 15.0), at(110.0, 15.0));
    s.dashed(at(103.0, 29.0), at(110.0, 29.0));
    s.spot("#unit", at(118.0, 22.0), at(118.0, 36.0));
    s
}

/// Where the arms turn, how far, and how thick they are.
pub(super) fn pivots() -> Sketch {
    let mut s = Sketch::new("lift", 176.0, 54.0);
    s.word(at(0.0, 51.0), "left column, from above");
    s.rect((16.0, 20.0), (30.0, 34.0), STEEL);
    s.rect((30.0, 22.0), (36.0, 32.0), DOOR);
    s.dashed(at(4.0, 27.0), at(98.0, 27.0));
    s.word(at(74.0, 28.0), "straight across");
    s.dashed(at(23.0, 8.0), at(23.0, 46.0));
    let (front, rear) = (at(36.0, 32.0), at(36.0, 22.0));
    for (pivot, low, high) in [
        (front, at(72.0, 24.0), at(46.0, 47.0)),
        (rear, at(72.0, 30.0), at(46.0, 7.0)),
    ] {
        s.line(pivot, high);
        s.dashed(pivot, low);
        s.circle(high, 2.0, Some(STEEL));
        s.circle(pivot, 1.2, Some(PAPER));
    }
    s.dim(
        "lift.arms.front.pivot_inward",
        at(23.0, 43.0),
        at(36.0, 43.0),
    );
    s.dashed(at(36.0, 32.0), at(36.0, 43.0));
    s.dim(
        "lift.arms.rear.pivot_inward",
        at(23.0, 11.0),
        at(36.0, 11.0),
    );
    s.dashed(at(36.0, 11.0), at(36.0, 22.0));
    s.dim_at(
        "lift.arms.front.pivot_away",
        at(10.0, 27.0),
        at(10.0, 32.0),
        0.5,
    );
    s.dashed(at(10.0, 32.0), at(36.0, 32.0));
    s.dim_at(
        "lift.arms.rear.pivot_away",
        at(10.0, 22.0),
        at(10.0, 27.0),
        0.5,
    );
    s.dashed(at(10.0, 22.0), at(36.0, 22.0));
    s.spot("lift.arms.front.swing_max", at(43.3, 43.0), at(58.0, 43.0));
    s.spot("lift.arms.front.swing_min", at(60.0, 26.7), at(84.0, 22.0));
    s.spot("lift.arms.rear.swing_max", at(43.3, 11.0), at(58.0, 11.0));
    s.spot("lift.arms.rear.swing_min", at(60.0, 27.3), at(84.0, 33.0));

    s.word(at(108.0, 51.0), "an arm: from the side, and cut across");
    s.line(at(108.0, 6.0), at(174.0, 6.0));
    s.rect((108.0, 16.0), (144.0, 26.0), STEEL);
    s.rect((156.0, 16.0), (168.0, 26.0), STEEL);
    s.dim("#arm.underside", at(126.0, 6.0), at(126.0, 16.0));
    s.dim("#arm.section_height", at(150.0, 16.0), at(150.0, 26.0));
    s.dim("#arm.section_width", at(156.0, 31.0), at(168.0, 31.0));
    s.dashed(at(156.0, 26.0), at(156.0, 31.0));
    s.dashed(at(168.0, 26.0), at(168.0, 31.0));
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
