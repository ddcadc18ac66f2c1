//! The sketches of the lift. Millimetres of paper.

use super::sketch::{Sketch, at};
use crate::drawing::palette::paper::{DOOR, PAPER, STEEL, WALL};

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
    s.dashed(at(129.0, 16.0), at(129.0, 50.5));
    s.dashed(at(133.0, 16.0), at(133.0, 50.5));
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
    s.dashed(at(37.0, 28.0), at(52.0, 28.0));
    s.dim("#bar.drop", at(52.0, 19.6), at(52.0, 28.0));
    s.dashed(at(28.0, 19.6), at(52.0, 19.6));
    s.spot("#bar", at(27.0, 21.0), at(12.0, 21.0));

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
    s.dim("lift.travel", at(46.0, 24.0), at(46.0, 56.0));
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
    s.dim("lift.release_overtravel", at(139.0, 20.0), at(139.0, 44.0));
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

/// What the manual asks of the slab, cut through.
pub(super) fn demand() -> Sketch {
    let mut s = Sketch::new("lift", 120.0, 34.0);
    s.word(at(0.0, 31.0), "plate and anchors, cut through");
    s.rect((4.0, 4.0), (100.0, 18.0), WALL);
    s.rect((30.0, 18.0), (62.0, 19.5), STEEL);
    for x in [36.0, 56.0] {
        s.rect((x - 0.6, 8.0), (x + 0.6, 21.5), STEEL);
    }
    s.dim("lift.manual.thickness", at(16.0, 4.0), at(16.0, 18.0));
    s.dim("lift.manual.edge_distance", at(56.0, 25.0), at(100.0, 25.0));
    s.dashed(at(100.0, 18.0), at(100.0, 25.0));
    s.word(at(102.0, 10.0), "edge, joint");
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
