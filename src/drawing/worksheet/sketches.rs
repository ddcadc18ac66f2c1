//! The sketches of the form, one for a section that needs one. Millimetres of paper.

use super::sketch::{Sketch, at};
use super::{sketches_door as door, sketches_lift as lift, sketches_vehicle as vehicle};
use crate::drawing::palette::paper::{BODY, DOOR, PAPER, STEEL, WALL};

/// The sketch that stands before a question; none where words do.
pub(super) fn sketch(section: &str, key: &str) -> Option<Sketch> {
    Some(match (section, key) {
        ("door", "garage.opening.width") => door::opening(),
        ("door", "#layout") => door::sectional(),
        ("door", "garage.door.curtain_thickness") => door::roll_up(),
        ("door", "#swing.panel_thickness") => door::swing_up(),
        ("door", "garage.door.leaf_thickness") => door::side_hinged(),
        ("room", "garage.width") => room(),
        ("room", "#floor") => fall(),
        ("opener", "#opener") => door::trolley(),
        ("opener", "garage.opener.side") => door::wall_mounted(),
        ("things", "name") => things(),
        ("place", "lift.post_line") => lift::place(),
        ("readings", "x") => readings(),
        ("lines", "kind") => lines(),
        ("slab", "slab.claimed_thickness") => slab(),
        ("supply", "power.voltage") => supply(),
        ("lift", "lift.preset") => lift::whole(),
        ("lift", "#tie") => lift::tie(),
        ("lift", "lift.travel") => lift::locks(),
        ("lift", "lift.carriage.proud") => lift::carriage(),
        ("lift", "lift.pad.lowest") => lift::arms(),
        ("lift", "lift.arms.front.pivot_inward") => lift::pivots(),
        ("lift", "lift.capacity") => lift::papers(),
        ("vehicle", "vehicle.preset") => vehicle::whole(),
        ("vehicle", "vehicle.track.front") => vehicle::lift_points(),
        ("roof", "station") => vehicle::roof(),
        ("under", "name") => vehicle::under(),
        ("fixed", "name") => vehicle::fixed(),
        ("parking", "parking.facing") => vehicle::parking(),
        ("people", "name") => person(),
        _ => return None,
    })
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
            _ => &[
                (0.0, 26.0),
                (8.0, 26.0),
                (8.0, 38.0),
                (16.0, 38.0),
                (16.0, 32.0),
                (24.0, 32.0),
            ],
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
    s.dim("#step.height", at(154.0, 6.0), at(154.0, 26.0));
    s.dim_at("#step.next", at(162.0, 6.0), at(162.0, 38.0), 0.7);
    s.dim("#step.last", at(170.0, 6.0), at(170.0, 32.0));
    s.dim_at("#step.from", at(150.0, 3.5), at(158.0, 3.5), -0.5);
    s.dim_at("#step.second", at(150.0, 0.5), at(166.0, 0.5), 1.35);
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
    let mut s = Sketch::new("readings", 170.0, 50.0);
    s.word(
        at(0.0, 47.0),
        "from above, the door below: two holes by each plate, at opposite sides",
    );
    s.rect((0.0, 1.0), (92.0, 3.0), WALL);
    s.rect((22.0, 1.0), (62.0, 3.0), DOOR);
    for x in [18.0, 66.0] {
        s.dashed(at(x - 14.0, 12.0), at(x + 14.0, 12.0));
        s.dashed(at(x - 14.0, 42.0), at(x + 14.0, 42.0));
        s.dashed(at(x - 14.0, 12.0), at(x - 14.0, 42.0));
        s.dashed(at(x + 14.0, 12.0), at(x + 14.0, 42.0));
        s.rect((x - 5.0, 22.0), (x + 5.0, 32.0), STEEL);
        s.circle(at(x - 8.0, 18.0), 0.9, None);
        s.circle(at(x + 8.0, 37.0), 0.9, None);
    }
    s.word(at(1.0, 8.5), "within 2 ft (600 mm) of the plate");
    s.dim("x", at(42.0, 37.0), at(74.0, 37.0));
    s.dashed(at(42.0, 3.0), at(42.0, 42.0));
    s.word(at(36.5, 43.5), "middle");
    s.dim_at("y", at(58.0, 3.0), at(58.0, 18.0), 0.3);

    s.word(at(104.0, 47.0), "a hole, cut through");
    s.rect((104.0, 20.0), (126.0, 38.0), WALL);
    s.rect((132.0, 20.0), (156.0, 38.0), WALL);
    s.line(at(129.0, 44.0), at(129.0, 19.0));
    s.line(at(129.0, 19.0), at(124.0, 19.0));
    s.word(at(118.0, 14.0), "wire hooked under the slab");
    s.dim("thickness", at(144.0, 20.0), at(144.0, 38.0));
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

/// A board, its low end raised until it is level.
fn fall() -> Sketch {
    let mut s = Sketch::new("room", 120.0, 26.0);
    s.word(
        at(0.0, 23.0),
        "a floor that falls toward the right: the board is level",
    );
    s.shape(&[(0.0, 1.0), (110.0, 1.0), (110.0, 3.0), (0.0, 9.0)], WALL);
    s.rect((8.0, 8.9), (96.0, 11.0), DOOR);
    s.rect((46.0, 11.0), (58.0, 13.0), STEEL);
    s.rect((92.0, 4.2), (95.0, 8.9), STEEL);
    s.dim_at("#fall.drop", at(100.0, 3.6), at(100.0, 8.9), 1.6);
    s.dim("#fall.run", at(8.0, 16.5), at(96.0, 16.5));
    s
}

/// From above where the slab ends before the walls, and cut through.
fn slab() -> Sketch {
    let mut s = Sketch::new("slab", 160.0, 46.0);
    s.word(
        at(0.0, 43.0),
        "from above, the door below: a slab that ends before the walls",
    );
    s.rect((0.0, 1.0), (86.0, 40.0), WALL);
    s.shape(&[(3.0, 4.0), (83.0, 4.0), (83.0, 37.0), (3.0, 37.0)], PAPER);
    s.rect((24.0, 1.0), (62.0, 4.0), DOOR);
    s.rect((9.0, 9.0), (73.0, 33.0), BODY);
    s.dashed(at(43.0, 4.0), at(43.0, 33.0));
    s.dim("#slab.left", at(9.0, 21.0), at(43.0, 21.0));
    s.dim("#slab.right", at(43.0, 21.0), at(73.0, 21.0));
    s.dim_at("#slab.near", at(55.0, 4.0), at(55.0, 9.0), 1.7);
    s.dim_at("#slab.far", at(30.0, 4.0), at(30.0, 33.0), 0.75);
    s.word(at(104.0, 43.0), "cut through");
    s.rect((104.0, 12.0), (154.0, 30.0), WALL);
    s.dim("slab.claimed_thickness", at(130.0, 12.0), at(130.0, 30.0));
    s
}

/// Before the panel, and along the wall.
fn supply() -> Sketch {
    let mut s = Sketch::new("supply", 170.0, 44.0);
    s.word(at(0.0, 41.0), "the panel, from the room");
    s.line(at(0.0, 3.0), at(60.0, 3.0));
    s.rect((18.0, 20.0), (34.0, 34.0), STEEL);
    s.dashed(at(12.0, 3.0), at(12.0, 37.0));
    s.dashed(at(42.0, 3.0), at(42.0, 37.0));
    s.dashed(at(12.0, 37.0), at(42.0, 37.0));
    s.dim(
        "arrangements.panel_space.width",
        at(12.0, 10.0),
        at(42.0, 10.0),
    );
    s.dim(
        "arrangements.panel_space.height",
        at(50.0, 3.0),
        at(50.0, 37.0),
    );
    s.dashed(at(42.0, 37.0), at(50.0, 37.0));
    s.word(at(84.0, 41.0), "from above");
    s.rect((84.0, 34.0), (166.0, 37.0), WALL);
    s.rect((92.0, 31.0), (106.0, 34.0), STEEL);
    s.dim(
        "arrangements.panel_space.depth",
        at(99.0, 8.0),
        at(99.0, 31.0),
    );
    s.dashed(at(88.0, 8.0), at(110.0, 8.0));
    s.rect((144.0, 8.0), (152.0, 14.0), STEEL);
    s.word(at(136.0, 3.5), "post with its motor");
    s.line(at(106.0, 32.5), at(148.0, 32.5));
    s.line(at(148.0, 32.5), at(148.0, 14.0));
    s.spot("power.run", at(130.0, 32.5), at(130.0, 26.0));
    s
}

/// From heel to hat.
fn person() -> Sketch {
    let mut s = Sketch::new("people", 60.0, 32.0);
    s.line(at(6.0, 2.0), at(54.0, 2.0));
    s.line(at(28.0, 2.0), at(30.0, 14.0));
    s.line(at(32.0, 2.0), at(30.0, 14.0));
    s.line(at(30.0, 14.0), at(30.0, 24.0));
    s.line(at(25.0, 16.0), at(30.0, 22.0));
    s.line(at(35.0, 16.0), at(30.0, 22.0));
    s.circle(at(30.0, 26.5), 2.5, Some(PAPER));
    s.rect((26.5, 28.0), (33.5, 29.0), STEEL);
    s.dim("height", at(43.0, 2.0), at(43.0, 29.0));
    s.dashed(at(33.5, 29.0), at(43.0, 29.0));
    s
}
