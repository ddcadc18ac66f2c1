//! Which pulls, in which order, and what does each read?
//!
//! **Tolerance.** The study counts a part of the lift off by twice the lift's ± at most
//! (`clearance::Uncertainty::lift_spread`): that is what a chain of pulls may add up to. Those that
//! square the centre line are held so close that it is off by less than the ± at the post line, as
//! far as a tape can be read; those that set marks share what is left. How far off the marks then are
//! where every reading lies at an end of what is accepted, and was read to the nearest graduation,
//! is worked out ([`super::drift`]) and said beside the pulls. Pulls that only check what is marked
//! keep the ± itself, and that of room dimensions where they cross the room.

use super::holes::{Checked, holes};
use super::points::{FloorPoint, PointKind, feet, is_turned, triangle};
use super::puller::Puller;
use super::reading::{Reading, readable_m};
use super::says::{of_marks, of_stop_marks};
use super::stop_lines::{STOP_LINES, stop_lines};
use super::stop_marks::StopMarks;
use super::way::{Standing, standing};
use crate::bay::{Bay, Tie};

/// A step of the work.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// What it is called.
    pub title: &'static str,
    /// What is done.
    pub says: String,
    /// Its pulls.
    pub pulls: Vec<Pull>,
}

/// One pull of the tape.
#[derive(Debug, Clone, PartialEq)]
pub struct Pull {
    /// Its number, from 1 through all steps.
    pub number: usize,
    /// From which point to which, by their letters. An end of a stop line has none: it is told in
    /// words ("each end of M's line"), and the tape reads alike to both.
    pub ends: [String; 2],
    /// What it is for.
    pub why: String,
    /// Whether it sets a mark that has a letter; otherwise it checks one that is there, or sets the
    /// ends of a stop line.
    pub sets: bool,
    /// What the tape shows.
    pub reading: Reading,
}

/// The most of the lift's ± that a pull may be off which sets a mark.
const SETS: f64 = 0.5;
/// The share of it that the centre line may be off at the post line, for not being square.
const SQUARE: f64 = 0.75;
/// Pulls one after another to a plate's corner beside the triangle, and some for tapes that don't
/// cross quite square.
const CHAIN: f64 = 2.2;

/// Steps, and how far off the stop marks may be.
type Found = (Vec<Step>, Option<StopMarks>);

/// Shares of what pulls may be off that are tried one after another: a tape is read to its nearest
/// graduation, and where few of them lie near what it should show, closer readings may be of more use
/// than the ones that are just close enough.
const SHARES: [f64; 8] = [1.0, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3];

/// The steps of a bay, and how far off the stop marks may be.
pub(super) fn steps(bay: &Bay, points: &[FloorPoint]) -> Found {
    let counted = 2.0 * bay.policy.measured_lift.m();
    let things = standing(bay);
    let mut best: Option<(f64, Found)> = None;
    for share in SHARES {
        let (off, steps) = held_to(bay, points, &things, share);
        if best.as_ref().is_none_or(|(least, _)| off < least - 1e-9) {
            best = Some((off, steps));
        }
        if off <= counted {
            break;
        }
    }
    best.map_or_else(|| (Vec::new(), None), |(_, steps)| steps)
}

/// The same with pulls held to this share, and the most that a mark of the lift is off by then.
fn held_to(bay: &Bay, points: &[FloorPoint], things: &[Standing], share: f64) -> (f64, Found) {
    let room = bay.policy.measured_garage.m();
    let lift = bay.policy.measured_lift.m();
    let mut pull = Puller::new(points, bay.units, things);
    let middle = if pull.at("D").is_some() { "D" } else { "C" };
    let triangle = triangle(bay);
    let line = bay.lift.post_line.m();
    // Off by d, all three pulls of the triangle: the centre line turns by d times this.
    let turn = triangle.map_or(0.0, |(_, [three, four, five])| {
        (three + four + five) / (three * four)
    });
    let square = (lift * SETS).min(lift * SQUARE / (turn * line)) * share;
    let square = square.max(readable_m(bay.units));
    let sides = triangle.map_or([0.0; 3], |(_, sides)| sides);
    let square_off = sides.map(|side| pull.most_off_m(side, square));
    let square_off = square_off.into_iter().fold(0.0, f64::max);
    // Where the triangle is small it can't be read closely enough: the others make up for it.
    let sets = (lift * SETS).min((2.0 * lift - turn * line * square_off) / CHAIN) * share;
    let mut steps = Vec::new();

    pull.check("A", "B", "the room's width along the door wall", room);
    pull.check(
        "A",
        "C",
        "left wall to the middle of the door opening",
        room,
    );
    let why = "the lift stands off the door's middle";
    pull.on_line(["C", "D"], None, why, sets);
    steps.push(pull.step(
        "Base line",
        "Stretch a line along the inner face of the door wall, across the opening, from corner A to \
         corner B. Find C half-way between the jambs. Where a reading is not accepted the room is \
         not as the file says: correct the file and study it again before going on.",
    ));

    let four = triangle.map(|(_, [_, four, _])| {
        let why = "3 parts, along the base line";
        pull.on_line([middle, "E"], None, why, square);
        let whys = [
            "4 parts, into the bay".into(),
            "5 parts: swing F until both fit".into(),
        ];
        pull.cross([middle, "E"], "F", whys, square);
        steps.push(pull.step(
            "Centre line",
            format!(
                "Square to the base line at {middle}: swing both tapes until they cross at F, then \
                 snap a line from {middle} through F."
            ),
        ));
        four
    });

    let step = post_line(&mut pull, bay, (middle, four), [room, lift, sets]);
    steps.push(step);

    // Before the plates: they cover K and L, from which these are pulled.
    let stop_marks = stop_lines(&mut pull, bay, middle, &BASES, [sets, lift]);
    if let Some(off) = &stop_marks {
        // A line across the bay would be wrong by the heading.
        let parked = if bay.parking.yaw.rad() == 0.0 {
            "across the bay"
        } else {
            "and not across the bay, for the vehicle is parked turned"
        };
        let says = format!(
            "Mark M and N. Through each goes a line square to the line M\u{2013}N, {parked}: mark its two \
             ends where the tape from its own mark and the tape from the other one cross, snap it \
             from end to end, and see that it goes through its mark. The tyres stand with their \
             middles on these lines. {}",
            of_stop_marks(bay, off)
        );
        steps.push(pull.step(STOP_LINES, says));
    }

    plates(&mut pull, sets, lift);
    let corners = of_kind(points, |kind| matches!(kind, PointKind::Plate(_)));
    let off = of_marks(bay, "the corners", pull.box_m(letters(&corners)));
    let plate = match bay.lift.tie {
        Tie::FloorPlate { .. } => {
            "Lay the plates to their corner marks, and the floor plate between the posts: they cover \
             G, K and L. "
        }
        Tie::OverheadBeam { .. } => {
            "Lay the plates to their corner marks: they may cover K and L. "
        }
    };
    steps.push(pull.step(
        "Base plates",
        format!("{plate}Each corner is where two tapes cross. Shims don't move it. {off}"),
    ));

    steps.extend(anchor_holes(&mut pull, bay, points, things, sets));
    let of_lift = of_kind(points, |kind| {
        matches!(
            kind,
            PointKind::Posts | PointKind::Plate(_) | PointKind::Hole(_)
        )
    });
    let off = pull.box_m(letters(&of_lift)).max_element();
    (off, (steps, stop_marks))
}

/// Post line, base line's marks for its diagonals, and what checks them.
fn post_line(
    pull: &mut Puller<'_>,
    bay: &Bay,
    (middle, four): (&str, Option<f64>),
    [room, lift, sets]: [f64; 3],
) -> Step {
    let line = bay.lift.post_line.m();
    let moved = feet(bay).moved;
    for (letter, what) in [("H", "left"), ("J", "right")] {
        let why = if moved {
            format!("on the base line, for the diagonals, {what}")
        } else {
            format!("half the posts' spacing, {what}")
        };
        pull.on_line([middle, letter], None, why, sets);
    }
    match four {
        Some(four) => {
            let why = "the post line, along the centre line";
            pull.on_line([middle, "G"], Some(("F", line / four)), why, sets);
        }
        None => {
            let whys = ["the post line, from both".into(), "the same".into()];
            pull.cross(["H", "J"], "G", whys, sets);
        }
    }
    for (base, letter, what) in [("H", "K", "left"), ("J", "L", "right")] {
        let face = if is_turned(bay) {
            format!("on the post line, level with the {what} post's nearest edge")
        } else {
            format!("inner face of the {what} post")
        };
        let along = if moved {
            format!("aslant to the post line, {what}")
        } else {
            format!("as far as the post line, {what}")
        };
        pull.cross(["G", base], letter, [face, along], sets);
    }
    let why = "the spacing between the posts' nearest faces";
    let why_turned = "the spacing between the posts' nearest edges";
    let why = if is_turned(bay) { why_turned } else { why };
    pull.check("K", "L", why, lift);
    pull.check("H", "L", "diagonal", lift);
    pull.check("J", "K", "diagonal: reads as the one before", lift);
    pull.check("A", "K", "check from corner A", room + lift);
    pull.check("A", "L", "check from corner A", room + lift);
    let off = of_marks(bay, "K and L", pull.box_m(["K", "L"]));
    pull.step(
        "Post line",
        format!(
            "Mark G on the centre line, K and L on the post line. Both diagonals read alike, or it \
             is not square. {off}"
        ),
    )
}

/// The check of the holes; none where no hole is shown.
fn anchor_holes(
    pull: &mut Puller<'_>,
    bay: &Bay,
    points: &[FloorPoint],
    things: &[Standing],
    sets: f64,
) -> Option<Step> {
    let Checked {
        carriages_up,
        not_reached,
    } = holes(pull, bay, points, things, sets);
    if pull.is_empty() && not_reached.is_empty() {
        return None;
    }
    let mut holes = of_kind(points, |kind| matches!(kind, PointKind::Hole(_)));
    holes.retain(|letter| !not_reached.contains(letter));
    let off = of_marks(bay, "the holes", pull.box_m(letters(&holes)));
    let up = if carriages_up {
        "Raise the carriages out of the way by hand first, as the maker's manual tells. "
    } else {
        ""
    };
    let missing = if not_reached.is_empty() {
        String::new()
    } else {
        format!(
            " No tape reaches these past the posts: {}. They are not checked: drill none of them before the \
             maker of the lift has said how.",
            not_reached.join(", ")
        )
    };
    Some(pull.step(
        "Anchor holes",
        format!(
            "Check each hole of the laid plate before drilling through it. {up}The tapes run clear of \
             the posts, from marks that no plate covers or square to the edges of the plate, which lies \
             on its corner marks. The maker's manual governs bit, depth, \
             cleaning, order and torque. Before drilling, scan the slab once more.{missing} {off}"
        ),
    ))
}

fn of_kind(points: &[FloorPoint], wanted: impl Fn(PointKind) -> bool) -> Vec<String> {
    let points = points.iter().filter(|point| wanted(point.kind));
    points.map(|point| point.letter.clone()).collect()
}

fn letters(points: &[String]) -> impl Iterator<Item = &str> {
    points.iter().map(String::as_str)
}

/// Where tapes are pulled from.
const BASES: [&str; 5] = ["H", "J", "G", "K", "L"];

/// Both plates, each from the two marks from which its corners are least off.
fn plates(pull: &mut Puller<'_>, sets: f64, lift: f64) {
    for (name, side) in [("L", "left"), ("R", "right")] {
        let corners = [
            (1, "rear outer corner"),
            (2, "rear inner corner"),
            (3, "front inner corner"),
            (4, "front outer corner"),
        ]
        .map(|(number, what)| (format!("{name}P{number}"), what));
        let letters = corners.each_ref().map(|(letter, _)| letter.clone());
        let bases = pull.best_pair(&BASES, &letters, sets);
        let bases = bases.map_or(["H", "J"], |(pair, _)| pair);
        for (corner, what) in corners {
            let whys = [format!("{side} plate, {what}"), "the same".into()];
            pull.cross(bases, &corner, whys, sets);
        }
    }
    pull.check("LP1", "RP4", "diagonal over both plates", lift);
    pull.check("RP1", "LP4", "diagonal: reads as the one before", lift);
}
