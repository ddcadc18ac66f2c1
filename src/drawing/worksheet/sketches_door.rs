//! The sketches of opening, door and opener. Millimetres of paper.

use super::sketch::{Sketch, at};
use crate::drawing::palette::paper::{DOOR, STEEL, WALL};

/// A wall of the door with its opening, from inside.
fn from_inside(s: &mut Sketch) {
    s.rect((0.0, 4.0), (76.0, 43.0), WALL);
    s.rect((20.0, 4.0), (60.0, 31.0), DOOR);
}

/// The door wall from the side, the room at its right, its floor.
fn from_the_side(s: &mut Sketch, says: &str) {
    s.word(at(92.0, 47.0), says);
    s.rect((90.0, 33.0), (95.0, 45.0), WALL);
    s.line(at(90.0, 4.0), at(174.0, 4.0));
    s.dashed(at(90.0, 4.0), at(90.0, 33.0));
    s.dashed(at(95.0, 4.0), at(95.0, 33.0));
}

/// From inside, and from above.
pub(super) fn opening() -> Sketch {
    let mut s = Sketch::new("door", 176.0, 50.0);
    s.word(
        at(0.0, 47.0),
        "the opening from inside; all that is measured where there is no door",
    );
    from_inside(&mut s);
    s.dim("garage.opening.width", at(20.0, 10.0), at(60.0, 10.0));
    s.dim("garage.opening.height", at(52.0, 4.0), at(52.0, 31.0));
    s.word(at(6.5, 18.0), "left");
    s.line(at(0.5, 16.5), at(19.5, 16.5));
    s.word(at(64.5, 18.0), "right");
    s.line(at(60.5, 16.5), at(75.5, 16.5));
    s.dashed(at(38.0, 0.5), at(38.0, 41.0));
    s.dashed(at(40.0, 0.5), at(40.0, 41.0));
    s.spot("garage.opening.offset", at(39.0, 2.0), at(48.0, 1.6));
    s.word(at(3.0, 0.5), "middle of room, of opening");

    s.word(at(104.0, 47.0), "from above");
    s.rect((104.0, 14.0), (122.0, 26.0), WALL);
    s.rect((156.0, 14.0), (174.0, 26.0), WALL);
    s.dashed(at(122.0, 26.0), at(156.0, 26.0));
    s.dim(
        "garage.opening.wall_thickness",
        at(130.0, 14.0),
        at(130.0, 26.0),
    );
    s.dashed(at(122.0, 14.0), at(156.0, 14.0));
    s.word(at(134.0, 31.0), "room");
    s.word(at(134.0, 8.0), "outside");
    s
}

/// From inside, and from the side with the door open.
pub(super) fn sectional() -> Sketch {
    let mut s = Sketch::new("door", 176.0, 50.0);
    s.word(at(0.0, 47.0), "sectional, from inside, door shut");
    from_inside(&mut s);
    for y in [10.75, 17.5, 24.25] {
        s.line(at(20.0, y), at(60.0, y));
    }
    for x in [16.5, 62.0] {
        s.rect((x, 4.0), (x + 1.5, 35.0), STEEL);
    }
    s.rect((16.0, 37.0), (64.0, 38.5), STEEL);
    s.dim("garage.door.panel_height", at(30.0, 10.75), at(30.0, 17.5));
    s.dim("garage.door.spring.height", at(71.0, 4.0), at(71.0, 37.7));
    s.dashed(at(64.0, 37.7), at(71.0, 37.7));
    s.spot(
        "garage.door.spring.diameter",
        at(39.0, 37.7),
        at(39.0, 41.2),
    );
    s.dashed(at(17.2, 22.0), at(17.2, 28.0));
    s.spot("garage.door.track_offset", at(18.6, 25.0), at(8.0, 25.0));
    s.spot("garage.door.track_section", at(17.2, 12.0), at(8.0, 12.0));

    from_the_side(&mut s, "from the side, door open (wall at the left)");
    s.line(at(97.0, 4.0), at(97.0, 27.0));
    let curve = [
        (97.0, 27.0),
        (97.8, 31.0),
        (100.5, 34.5),
        (104.5, 36.3),
        (108.0, 36.5),
    ];
    for pair in curve.windows(2) {
        s.line(at(pair[0].0, pair[0].1), at(pair[1].0, pair[1].1));
    }
    s.line(at(108.0, 36.5), at(166.0, 36.5));
    s.rect((103.0, 33.4), (160.0, 35.6), DOOR);
    s.rect((106.0, 30.6), (107.5, 33.4), STEEL);
    s.circle(at(99.0, 42.0), 1.6, Some(STEEL));
    s.dim("garage.door.track_length", at(108.0, 39.5), at(166.0, 39.5));
    s.dim_at(
        "garage.door.track_radius",
        at(108.0, 27.0),
        at(98.6, 33.0),
        0.35,
    );
    s.spot("#extra", at(97.0, 23.0), at(104.0, 20.0));
    s.dim("#open_lowest", at(124.0, 4.0), at(124.0, 33.4));
    s.spot(
        "garage.door.panel_thickness",
        at(150.0, 34.5),
        at(150.0, 28.0),
    );
    s.spot("garage.door.spring.out", at(97.2, 42.0), at(112.0, 44.0));
    s.spot("garage.door.top_bracket", at(107.0, 31.5), at(114.0, 21.0));
    s
}

/// From inside, and from the side with the door open.
pub(super) fn roll_up() -> Sketch {
    let mut s = Sketch::new("door", 176.0, 50.0);
    s.word(at(0.0, 47.0), "roll-up, from inside, door shut");
    from_inside(&mut s);
    for slat in 1..9 {
        let y = 4.0 + 3.0 * f64::from(slat);
        s.line(at(20.0, y), at(60.0, y));
    }
    s.rect((16.0, 31.0), (64.0, 40.0), STEEL);
    s.dim("garage.door.coil_height", at(70.0, 4.0), at(70.0, 35.5));
    s.dashed(at(64.0, 35.5), at(70.0, 35.5));

    from_the_side(&mut s, "from the side, door open (wall at the left)");
    s.circle(at(104.0, 36.0), 6.0, Some(STEEL));
    s.circle(at(104.0, 36.0), 0.5, None);
    s.rect((97.0, 27.0), (98.6, 36.0), DOOR);
    s.dim("garage.door.coil_diameter", at(98.0, 44.0), at(110.0, 44.0));
    s.dashed(at(98.0, 36.0), at(98.0, 44.0));
    s.dashed(at(110.0, 36.0), at(110.0, 44.0));
    s.dim_at(
        "garage.door.coil_out",
        at(95.0, 22.5),
        at(104.0, 22.5),
        1.65,
    );
    s.dashed(at(104.0, 22.5), at(104.0, 36.0));
    s.spot(
        "garage.door.curtain_thickness",
        at(97.8, 28.0),
        at(84.0, 24.0),
    );
    s.dim("#open_lowest", at(124.0, 4.0), at(124.0, 27.0));
    s.dashed(at(98.6, 27.0), at(124.0, 27.0));
    s
}

/// From inside, and from the side with the door open.
pub(super) fn swing_up() -> Sketch {
    let mut s = Sketch::new("door", 176.0, 50.0);
    s.word(at(0.0, 47.0), "swing-up, from inside, door shut");
    from_inside(&mut s);
    for x in [15.0, 63.0] {
        s.rect((x, 31.5), (x + 2.0, 34.0), STEEL);
    }
    s.dim("#swing.panel_height", at(40.0, 4.0), at(40.0, 31.0));
    s.dashed(at(16.0, 24.0), at(16.0, 31.5));
    s.spot("#swing.track_offset", at(18.0, 26.0), at(7.0, 24.0));
    s.spot("#swing.track_section", at(15.5, 33.0), at(7.0, 38.0));

    from_the_side(&mut s, "from the side, door open (wall at the left)");
    s.rect((97.0, 35.2), (168.0, 36.8), STEEL);
    s.rect((99.0, 31.8), (146.0, 34.0), DOOR);
    s.rect((120.0, 30.0), (122.0, 31.8), STEEL);
    s.dashed(at(97.0, 4.0), at(97.0, 35.0));
    s.dim("#swing.track_height", at(158.0, 4.0), at(158.0, 36.0));
    s.spot("#swing.panel_thickness", at(140.0, 32.8), at(140.0, 26.0));
    s.dim("#open_lowest", at(121.0, 4.0), at(121.0, 30.0));
    s
}

/// Both leaves from above, one of them open.
pub(super) fn side_hinged() -> Sketch {
    let mut s = Sketch::new("door", 150.0, 44.0);
    s.word(
        at(0.0, 41.0),
        "side-hinged, from above: the left leaf open, the room above",
    );
    s.rect((4.0, 6.0), (34.0, 12.0), WALL);
    s.rect((98.0, 6.0), (128.0, 12.0), WALL);
    s.rect((66.0, 9.6), (98.0, 12.0), DOOR);
    s.shape(
        &[(34.0, 11.0), (36.2, 11.8), (26.2, 36.5), (24.0, 35.7)],
        DOOR,
    );
    s.dashed(at(34.0, 10.8), at(66.0, 10.8));
    // The way of its edge.
    let swing = [
        (60.0, 14.5),
        (58.0, 22.0),
        (52.0, 29.0),
        (44.0, 34.0),
        (36.0, 36.0),
        (28.0, 36.0),
    ];
    for pair in swing.windows(2) {
        s.dashed(at(pair[0].0, pair[0].1), at(pair[1].0, pair[1].1));
    }
    s.spot("garage.door.opens", at(52.0, 29.0), at(64.0, 33.0));
    s.spot("garage.door.leaf_thickness", at(88.0, 10.8), at(88.0, 19.0));
    s.spot("garage.door.inward", at(30.0, 24.0), at(18.0, 24.0));
    s
}

/// A trolley from the side, and from the door.
pub(super) fn trolley() -> Sketch {
    let mut s = Sketch::new("opener", 176.0, 44.0);
    s.word(at(0.0, 41.0), "trolley, from the side");
    s.rect((0.0, 22.0), (4.0, 40.0), WALL);
    s.line(at(0.0, 3.0), at(110.0, 3.0));
    s.rect((4.0, 31.0), (82.0, 33.0), STEEL);
    s.rect((82.0, 25.0), (100.0, 35.0), DOOR);
    s.shape(
        &[(12.0, 31.0), (18.0, 31.0), (10.0, 22.0), (8.0, 22.0)],
        STEEL,
    );
    s.line(at(40.0, 31.0), at(40.0, 20.0));
    s.dim("garage.opener.rail_length", at(4.0, 37.0), at(82.0, 37.0));
    s.dim("garage.opener.rail_bottom", at(62.0, 3.0), at(62.0, 31.0));
    s.dim("garage.opener.head_bottom", at(91.0, 3.0), at(91.0, 25.0));
    s.dim(
        "garage.opener.head_height",
        at(105.0, 25.0),
        at(105.0, 35.0),
    );
    s.dim("garage.opener.head_depth", at(82.0, 38.5), at(100.0, 38.5));
    s.dim("garage.opener.arm_drop", at(25.0, 31.0), at(25.0, 22.0));
    s.dashed(at(9.0, 22.0), at(25.0, 22.0));
    s.spot("garage.opener.rail_depth", at(35.0, 32.0), at(35.0, 26.5));
    s.dim("garage.opener.cord_drop", at(48.0, 31.0), at(48.0, 20.0));
    s.dashed(at(40.0, 20.0), at(48.0, 20.0));

    s.word(at(122.0, 41.0), "from the door, looking in");
    s.line(at(122.0, 3.0), at(176.0, 3.0));
    s.dashed(at(128.0, 3.0), at(128.0, 22.0));
    s.dashed(at(162.0, 3.0), at(162.0, 22.0));
    s.dashed(at(128.0, 22.0), at(162.0, 22.0));
    s.dashed(at(145.0, 0.5), at(145.0, 38.0));
    s.rect((151.0, 25.0), (165.0, 35.0), DOOR);
    s.rect((157.0, 31.0), (159.0, 33.0), STEEL);
    s.dim_at("garage.opener.x", at(145.0, 37.5), at(158.0, 37.5), 0.5);
    s.dim("garage.opener.head_width", at(151.0, 18.0), at(165.0, 18.0));
    s.dashed(at(151.0, 18.0), at(151.0, 25.0));
    s.dashed(at(165.0, 18.0), at(165.0, 25.0));
    s.spot("garage.opener.rail_width", at(158.0, 31.5), at(171.0, 29.0));
    s
}

/// On the wall, from inside, and from the side.
pub(super) fn wall_mounted() -> Sketch {
    let mut s = Sketch::new("opener", 150.0, 42.0);
    s.word(at(0.0, 39.0), "wall-mounted, from inside");
    s.rect((0.0, 3.0), (76.0, 36.0), WALL);
    s.rect((0.0, 3.0), (40.0, 24.0), DOOR);
    s.rect((52.0, 14.0), (60.0, 32.0), STEEL);
    s.dim("garage.opener.bottom", at(56.0, 3.0), at(56.0, 14.0));
    s.dim("garage.opener.height", at(68.0, 14.0), at(68.0, 32.0));
    s.dim_at("garage.opener.width", at(52.0, 34.0), at(60.0, 34.0), -0.6);
    s.dim("garage.opener.beside", at(40.0, 27.5), at(52.0, 27.5));
    s.word(at(98.0, 39.0), "from the side");
    s.rect((98.0, 3.0), (103.0, 36.0), WALL);
    s.line(at(98.0, 3.0), at(146.0, 3.0));
    s.rect((103.0, 14.0), (115.0, 32.0), STEEL);
    s.dim("garage.opener.depth", at(103.0, 34.5), at(115.0, 34.5));
    s
}
