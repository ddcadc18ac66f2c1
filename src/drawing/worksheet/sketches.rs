//! The sketches of the form, one for a section that needs one. Millimetres of paper.

use super::sketch::{Sketch, at};
use super::sketches_lift::{fixed, lift, parking, place, vehicle};
use crate::drawing::palette::paper::{DOOR, PAPER, STEEL, WALL};

/// The sketch of a section; none where words do.
pub(super) fn sketch(section: &str) -> Option<Sketch> {
    Some(match section {
        "door" => door(),
        "room" => room(),
        "opener" => opener(),
        "things" => things(),
        "place" => place(),
        "readings" => readings(),
        "lines" => lines(),
        "lift" => lift(),
        "vehicle" => vehicle(),
        "fixed" => fixed(),
        "parking" => parking(),
        _ => return None,
    })
}

/// From inside, and from the side with the door open.
fn door() -> Sketch {
    let mut s = Sketch::new("door", 176.0, 54.0);
    s.word(at(0.0, 51.0), "from inside, door shut");
    s.rect((0.0, 4.0), (70.0, 46.0), WALL);
    s.rect((16.0, 4.0), (58.0, 34.0), DOOR);
    for y in [11.5, 19.0, 26.5] {
        s.line(at(16.0, y), at(58.0, y));
    }
    for x in [12.5, 60.0] {
        s.rect((x, 4.0), (x + 1.5, 38.0), STEEL);
    }
    s.rect((12.0, 39.0), (62.0, 40.5), STEEL);
    s.dim("garage.opening.width", at(16.0, 8.0), at(58.0, 8.0));
    s.dim("garage.opening.height", at(50.0, 4.0), at(50.0, 34.0));
    s.dim("garage.door.panel_height", at(24.0, 11.5), at(24.0, 19.0));
    s.dim("garage.door.spring.height", at(67.0, 4.0), at(67.0, 39.7));
    s.spot(
        "garage.door.spring.diameter",
        at(37.0, 39.7),
        at(37.0, 44.0),
    );
    s.spot("garage.door.track_offset", at(14.5, 24.0), at(6.0, 24.0));
    s.spot("garage.door.track_section", at(13.2, 16.0), at(6.0, 16.0));
    s.dashed(at(35.0, 0.5), at(35.0, 4.0));
    s.dashed(at(37.0, 0.5), at(37.0, 4.0));
    s.spot("garage.opening.offset", at(36.0, 2.0), at(28.0, 1.6));

    s.word(
        at(92.0, 51.0),
        "from the side, door open (wall at the left)",
    );
    s.rect((90.0, 36.0), (95.0, 48.0), WALL);
    s.line(at(90.0, 4.0), at(174.0, 4.0));
    s.dashed(at(90.0, 4.0), at(90.0, 36.0));
    s.dashed(at(95.0, 4.0), at(95.0, 36.0));
    s.line(at(97.0, 4.0), at(97.0, 30.0));
    let curve = [
        (97.0, 30.0),
        (97.8, 34.0),
        (100.5, 37.5),
        (104.5, 39.3),
        (108.0, 39.5),
    ];
    for pair in curve.windows(2) {
        s.line(at(pair[0].0, pair[0].1), at(pair[1].0, pair[1].1));
    }
    s.line(at(108.0, 39.5), at(166.0, 39.5));
    s.rect((103.0, 36.4), (160.0, 38.6), DOOR);
    s.rect((106.0, 33.6), (107.5, 36.4), STEEL);
    s.circle(at(99.0, 45.0), 1.6, Some(STEEL));
    s.dim("garage.door.track_length", at(108.0, 42.5), at(166.0, 42.5));
    s.dim_at(
        "garage.door.track_radius",
        at(108.0, 30.0),
        at(98.6, 36.0),
        0.35,
    );
    s.spot("#extra", at(97.0, 26.0), at(104.0, 23.0));
    s.dim("#open_lowest", at(122.0, 4.0), at(122.0, 36.4));
    s.spot(
        "garage.door.panel_thickness",
        at(150.0, 37.5),
        at(150.0, 31.0),
    );
    s.spot("garage.door.spring.out", at(97.2, 45.0), at(110.0, 47.5));
    s.spot("garage.door.top_bracket", at(107.0, 34.5), at(114.0, 24.0));
    s.spot(
        "garage.opening.wall_thickness",
        at(92.5, 42.0),
        at(86.0, 42.0),
    );
    s
}

/// The plan, and the shapes of ceilings.
fn room() -> Sketch {
    let mut s = Sketch::new("room", 176.0, 50.0);
    s.word(at(0.0, 47.0), "from above, the door below");
    s.rect((0.0, 3.0), (58.0, 44.0), WALL);
    s.shape(&[(3.0, 6.0), (55.0, 6.0), (55.0, 41.0), (3.0, 41.0)], PAPER);
    s.rect((17.0, 3.0), (44.0, 6.0), DOOR);
    s.dim("garage.width", at(3.0, 30.0), at(55.0, 30.0));
    s.dim("garage.depth", at(12.0, 6.0), at(12.0, 41.0));
    for x in [25.0, 35.0, 45.0] {
        for y in [13.0, 21.0, 37.0] {
            s.circle(at(x, y), 0.5, None);
        }
    }
    s.word(at(22.0, 8.5), "read the height here");

    let names = ["flat", "sloped", "gable", "stepped"];
    for (index, name) in names.iter().enumerate() {
        #[allow(clippy::cast_precision_loss)] // four of them
        let x = 66.0 + 28.0 * index as f64;
        s.word(at(x, 47.0), name);
        s.line(at(x, 6.0), at(x + 24.0, 6.0));
        let top: &[(f64, f64)] = match index {
            0 => &[(0.0, 32.0), (24.0, 32.0)],
            1 => &[(0.0, 26.0), (24.0, 40.0)],
            2 => &[(0.0, 26.0), (14.0, 42.0), (24.0, 26.0)],
            _ => &[(0.0, 26.0), (11.0, 26.0), (11.0, 38.0), (24.0, 38.0)],
        };
        let (first, last) = (top[0], top[top.len() - 1]);
        s.line(at(x, 6.0), at(x, first.1));
        s.line(at(x + 24.0, 6.0), at(x + 24.0, last.1));
        for pair in top.windows(2) {
            s.line(at(x + pair[0].0, pair[0].1), at(x + pair[1].0, pair[1].1));
        }
    }
    s.dim("garage.ceiling.height", at(78.0, 6.0), at(78.0, 32.0));
    s.dim("garage.ceiling.first", at(97.0, 6.0), at(97.0, 27.5));
    s.dim("garage.ceiling.last", at(115.0, 6.0), at(115.0, 38.5));
    s.dim_at("garage.ceiling.eaves", at(125.0, 6.0), at(125.0, 28.5), 0.4);
    s.dim_at("garage.ceiling.ridge", at(136.0, 6.0), at(136.0, 42.0), 0.6);
    s.dashed(at(134.0, 26.0), at(134.0, 46.0));
    s.spot(
        "garage.ceiling.ridge_offset",
        at(135.0, 43.0),
        at(143.0, 43.5),
    );
    s.dim("#step.height", at(155.0, 6.0), at(155.0, 26.0));
    s.dim("#step.next", at(169.0, 6.0), at(169.0, 38.0));
    s.dim("#step.from", at(150.0, 2.0), at(161.0, 2.0));
    s
}

/// A trolley from the side, a wall-mounted one from inside.
fn opener() -> Sketch {
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

    s.word(at(124.0, 41.0), "wall-mounted, from inside");
    s.rect((124.0, 3.0), (176.0, 38.0), WALL);
    s.rect((124.0, 3.0), (150.0, 26.0), DOOR);
    s.rect((157.0, 16.0), (165.0, 34.0), STEEL);
    s.dim("garage.opener.bottom", at(161.0, 3.0), at(161.0, 16.0));
    s.dim("garage.opener.height", at(171.0, 16.0), at(171.0, 34.0));
    s.spot("garage.opener.width", at(161.0, 34.0), at(161.0, 37.0));
    s.dim("garage.opener.beside", at(150.0, 29.5), at(157.0, 29.5));
    s
}

/// A thing from above and from the side.
fn things() -> Sketch {
    let mut s = Sketch::new("things", 150.0, 40.0);
    s.word(at(0.0, 37.0), "from above, the door below");
    s.rect((0.0, 2.0), (58.0, 4.0), WALL);
    s.rect((18.0, 2.0), (42.0, 4.0), DOOR);
    s.rect((38.0, 22.0), (56.0, 32.0), STEEL);
    s.dashed(at(30.0, 4.0), at(30.0, 34.0));
    s.dim("x", at(30.0, 27.0), at(47.0, 27.0));
    s.dim("y", at(47.0, 4.0), at(47.0, 26.0));
    s.dim("width", at(38.0, 34.5), at(56.0, 34.5));
    s.dim("depth", at(60.0, 22.0), at(60.0, 32.0));
    s.word(at(84.0, 37.0), "from the side");
    s.line(at(84.0, 3.0), at(148.0, 3.0));
    s.line(at(84.0, 35.0), at(148.0, 35.0));
    s.line(at(112.0, 35.0), at(112.0, 31.0));
    s.line(at(118.0, 35.0), at(118.0, 31.0));
    s.rect((108.0, 24.0), (122.0, 31.0), STEEL);
    s.dim("bottom", at(115.0, 3.0), at(115.0, 24.0));
    s.dim("height", at(128.0, 24.0), at(128.0, 35.0));
    s.word(at(131.0, 30.0), "chains along");
    s
}

/// Where the holes go, and how a hole is read.
fn readings() -> Sketch {
    let mut s = Sketch::new("readings", 170.0, 46.0);
    s.word(
        at(0.0, 43.0),
        "from above: two holes by each plate, at opposite sides",
    );
    for x in [18.0, 66.0] {
        s.dashed(at(x - 14.0, 8.0), at(x + 14.0, 8.0));
        s.dashed(at(x - 14.0, 38.0), at(x + 14.0, 38.0));
        s.dashed(at(x - 14.0, 8.0), at(x - 14.0, 38.0));
        s.dashed(at(x + 14.0, 8.0), at(x + 14.0, 38.0));
        s.rect((x - 5.0, 18.0), (x + 5.0, 28.0), STEEL);
        s.circle(at(x - 8.0, 14.0), 0.9, None);
        s.circle(at(x + 8.0, 33.0), 0.9, None);
    }
    s.word(at(1.0, 4.5), "within 2 ft (600 mm) of the plate");
    s.dim("x", at(42.0, 33.0), at(74.0, 33.0));
    s.dashed(at(42.0, 8.0), at(42.0, 38.0));
    s.word(at(36.5, 39.5), "middle");
    s.dim("y", at(58.0, 3.0), at(58.0, 13.0));

    s.word(at(104.0, 43.0), "a hole, cut through");
    s.rect((104.0, 16.0), (126.0, 34.0), WALL);
    s.rect((132.0, 16.0), (156.0, 34.0), WALL);
    s.line(at(129.0, 40.0), at(129.0, 15.0));
    s.line(at(129.0, 15.0), at(124.0, 15.0));
    s.word(at(118.0, 10.0), "wire hooked under the slab");
    s.dim("thickness", at(144.0, 16.0), at(144.0, 34.0));
    s
}

/// A joint by its two ends.
fn lines() -> Sketch {
    let mut s = Sketch::new("lines", 120.0, 36.0);
    s.word(at(0.0, 33.0), "from above, the door below");
    s.rect((0.0, 2.0), (80.0, 4.0), WALL);
    s.rect((24.0, 2.0), (56.0, 4.0), DOOR);
    s.dashed(at(40.0, 4.0), at(40.0, 31.0));
    s.line(at(12.0, 20.0), at(72.0, 28.0));
    s.dim("from.x", at(40.0, 15.0), at(12.0, 15.0));
    s.dim_at("from.y", at(12.0, 4.0), at(12.0, 20.0), 0.3);
    s.dim("to.x", at(40.0, 29.5), at(72.0, 29.5));
    s.dim("to.y", at(72.0, 4.0), at(72.0, 28.0));
    s.word(at(84.0, 20.0), "joint, crack, edge, drain");
    s
}
