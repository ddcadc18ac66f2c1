//! Which pulls, in which order, and what does each read?
//!
//! **Tolerance.** What the study counted with is what the tape has to keep: distances in the room
//! to the ± of room dimensions, everything of the lift to the ± of the lift's. The pull that
//! squares the centre line is held tighter where the triangle is small: off by that much it turns
//! the lift no farther than its ± at the ends of its lines.

use super::points::{FloorPoint, PointKind, triangle};
use super::reading::Reading;
use crate::bay::{Bay, Side, Tie};

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
    /// From which point to which, by their letters.
    pub ends: [String; 2],
    /// What it is for.
    pub why: String,
    /// What the tape shows.
    pub reading: Reading,
}

struct Puller<'a> {
    points: &'a [FloorPoint],
    next: usize,
    pulls: Vec<Pull>,
}

impl Puller<'_> {
    fn pull(&mut self, from: &str, to: &str, why: impl Into<String>, tolerance_m: f64) {
        let at = |letter: &str| self.points.iter().find(|p| p.letter == letter);
        let (Some(a), Some(b)) = (at(from), at(to)) else {
            return;
        };
        self.pulls.push(Pull {
            number: self.next,
            ends: [from.into(), to.into()],
            why: why.into(),
            reading: Reading {
                expected_m: a.at_m.distance(b.at_m),
                tolerance_m,
            },
        });
        self.next += 1;
    }

    fn step(&mut self, title: &'static str, says: impl Into<String>) -> Step {
        Step {
            title,
            says: says.into(),
            pulls: std::mem::take(&mut self.pulls),
        }
    }
}

/// The steps of a bay.
pub(super) fn steps(bay: &Bay, points: &[FloorPoint]) -> Vec<Step> {
    let room = bay.policy.measured_garage.m();
    let lift = bay.policy.measured_lift.m();
    let has = |letter: &str| points.iter().any(|point| point.letter == letter);
    let mut pull = Puller {
        points,
        next: 1,
        pulls: Vec::new(),
    };
    let mut steps = Vec::new();
    let middle = if has("D") { "D" } else { "C" };

    pull.pull("A", "B", "the room's width along the door wall", room);
    pull.pull(
        "A",
        "C",
        "left wall to the middle of the door opening",
        room,
    );
    if has("D") {
        pull.pull("C", "D", "the lift stands off the door's middle", lift);
    }
    steps.push(pull.step(
        "Base line",
        "Stretch a line along the inner face of the door wall, across the opening, from corner A to \
         corner B. Find C half-way between the jambs. Where a reading is not accepted the room is \
         not as the file says: correct the file and study it again before going on.",
    ));

    if let Some((_, [three, four, five])) = triangle(bay) {
        // Off by d, the pull E-F turns the centre line by d * five / (three * four).
        let turn = five / (three * four);
        let reach = bay.lift.post_line.m().max(bay.lift.spacing.m() * 0.5);
        let square = lift.min(lift / (turn * reach));
        pull.pull(
            middle,
            "E",
            "3 parts, along the base line",
            lift.min(square),
        );
        pull.pull(middle, "F", "4 parts, into the bay", lift.min(square));
        pull.pull("E", "F", "5 parts: swing F until both fit", square);
        steps.push(pull.step(
            "Centre line",
            format!(
                "Square to the base line at {middle}: swing both tapes until they cross at F, then \
                 snap a line from {middle} through F."
            ),
        ));
    }

    pull.pull(middle, "G", "the post line, along the centre line", lift);
    for (letter, what) in [("H", "left"), ("J", "right")] {
        pull.pull(
            middle,
            letter,
            format!("half the posts' spacing, {what}"),
            lift,
        );
    }
    for (letter, what) in [("K", "left"), ("L", "right")] {
        pull.pull("G", letter, format!("inner face of the {what} post"), lift);
    }
    pull.pull(
        "K",
        "L",
        "the spacing between the posts' nearest faces",
        lift,
    );
    pull.pull("H", "K", "as far as the post line, left", lift);
    pull.pull("J", "L", "as far as the post line, right", lift);
    pull.pull("H", "L", "diagonal", lift);
    pull.pull("J", "K", "diagonal: reads as the one before", lift);
    pull.pull("A", "K", "check from corner A", room + lift);
    pull.pull("A", "L", "check from corner A", room + lift);
    steps.push(pull.step(
        "Post line",
        "Mark G on the centre line, K and L on the post line. Both diagonals read alike, or it is \
         not square.",
    ));

    plates(&mut pull, lift);
    let plate = match bay.lift.tie {
        Tie::FloorPlate { .. } => {
            "Lay the plates to their corner marks, and the floor plate between the posts. "
        }
        Tie::OverheadBeam { .. } => "Lay the plates to their corner marks. ",
    };
    steps.push(pull.step(
        "Base plates",
        format!(
            "{plate}Each corner is where two tapes cross, one from H and one from J. Shims don't \
             move it."
        ),
    ));

    holes(&mut pull, points, lift);
    if !pull.pulls.is_empty() {
        steps.push(pull.step(
            "Anchor holes",
            "Check each hole of the laid plate before drilling through it. The maker's manual \
             governs bit, depth, cleaning, order and torque. Before drilling, scan the slab once \
             more.",
        ));
    }
    let parking = &bay.parking;
    let repeat = parking.repeat_along.m().min(parking.repeat_across.m());
    for (letter, word) in [("M", "front"), ("N", "rear")] {
        pull.pull(
            "H",
            letter,
            format!("middle between the {word} tyres"),
            repeat,
        );
        pull.pull("J", letter, "the same", repeat);
    }
    if !pull.pulls.is_empty() {
        // A line across the bay would be wrong by the heading.
        let across = if parking.yaw.rad() == 0.0 {
            "a line across the bay"
        } else {
            "a line square to the line M\u{2013}N, for the vehicle stands askew"
        };
        steps.push(pull.step(
            "Stop lines for parking",
            format!(
                "Mark M and N where two tapes cross, and through each {across}: the tyres stand \
                 with their middles on these lines."
            ),
        ));
    }
    steps
}

fn plates(pull: &mut Puller<'_>, lift: f64) {
    for (name, side, near, far) in [("L", "left", "H", "J"), ("R", "right", "J", "H")] {
        for (number, what) in [
            (1, "rear outer corner"),
            (2, "rear inner corner"),
            (3, "front inner corner"),
            (4, "front outer corner"),
        ] {
            let corner = format!("{name}P{number}");
            pull.pull(near, &corner, format!("{side} plate, {what}"), lift);
            pull.pull(far, &corner, "the same", lift);
        }
    }
    pull.pull("LP1", "RP4", "diagonal over both plates", lift);
    pull.pull("RP1", "LP4", "diagonal: reads as the one before", lift);
}

fn holes(pull: &mut Puller<'_>, points: &[FloorPoint], lift: f64) {
    for point in points {
        let PointKind::Hole(side) = point.kind else {
            continue;
        };
        let (word, near, far) = match side {
            Side::Left => ("left", "H", "J"),
            Side::Right => ("right", "J", "H"),
        };
        let why = format!("{word} plate, hole {}", point.letter);
        pull.pull(near, &point.letter, why, lift);
        pull.pull(far, &point.letter, "the same", lift);
    }
}
