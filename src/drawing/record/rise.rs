//! The empty full rise, and the first with a load.

use super::{Order, Piece, head, row, vehicle};
use crate::bay::Door;
use crate::clearance::{LockState, PairFinding};
use crate::drawing::card::{Edge, joined, why_not, written};
use crate::drawing::palette::paper::{INK, WARN};
use crate::report::called;
use crate::setting_out::Reading;
use crate::units::plus_minus;

const SHARES: [f64; 8] = [0.6, 2.5, 2.0, 2.0, 1.0, 1.0, 0.8, 0.8];

/// The first breach in which a part of the lift itself comes too near something, the door standing as
/// it governs, shut or open.
pub(super) fn own_breach<'a>(order: &Order<'a>) -> Option<&'a PairFinding> {
    let study = order.study;
    let doors = [&study.doors.shut, &study.doors.open];
    let of_doors = doors
        .into_iter()
        .filter_map(|door| door.first_short.as_ref());
    study
        .pairs
        .iter()
        .chain(of_doors)
        .filter(|pair| pair.moving.starts_with("lift/"))
        .filter_map(|pair| Some((pair.first_breach_m.or(pair.first_touch_m)?, pair)))
        .min_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, pair)| pair)
}

pub(super) fn empty(pieces: &mut Vec<Piece>, order: &Order<'_>) {
    let (bay, lift) = (order.bay, &order.bay.lift);
    pieces.push(Piece::Heading("3. Full rise, empty".into()));
    pieces.push(Piece::says(
        "Nobody under the arms, nothing on them. Lower onto every lock on the way and read where the \
         marked edges come to rest, from the top of the base plates, then climb on; every latch \
         must drop in by itself, on both sides. Stop at the first sound that is not in the manual.",
    ));
    door(pieces, order);
    let breach = own_breach(order);
    let breach_m = breach.and_then(|pair| pair.first_breach_m.or(pair.first_touch_m));
    if let (Some(pair), Some(at_m)) = (breach, breach_m) {
        pieces.push(Piece::warns(format!(
            "NOT TO THE TOP: {} comes too near {} with the lower carriage's marked edge at {}. It \
             never climbs above {}: what a slow hand and coasting add is taken off.",
            called(&pair.moving),
            called(&pair.fixed),
            Edge(bay).met(at_m),
            Edge(bay).met(at_m - lift.overshoot.m())
        )));
    }
    let titles = [
        "lock",
        "marked edge at rest",
        "accepted from",
        "up to",
        "left",
        "right",
        "latch L",
        "latch R",
    ];
    let titles: Vec<(&str, f64)> = titles.into_iter().zip(SHARES).collect();
    pieces.push(head(&titles));
    let top = lift.release_overtravel.m().max(lift.set_overtravel.m()) + lift.overshoot.m();
    for (index, lock) in lift.locks.iter().enumerate() {
        let name = (index + 1).to_string();
        let out_of_reach = match order.study.highest_releasable_lock {
            Some(highest) => index + 1 > highest,
            None => true,
        };
        let barred = breach_m.is_some_and(|breach| lock.m() + top > breach);
        if barred || out_of_reach {
            let why = if barred {
                "not to be climbed to, see above"
            } else {
                "out of reach: the latches could not let go"
            };
            pieces.push(row(
                &[(name.as_str(), SHARES[0]), (why, SHARES[1..].iter().sum())],
                7.0,
                WARN,
            ));
            continue;
        }
        let reading = reading(order, lock.m());
        let [least, most] = reading.accepted(bay.units);
        let expected = reading.both(bay.units);
        let cells = [name.as_str(), &expected, &least, &most, "", "", "", ""];
        let cells: Vec<(&str, f64)> = cells.into_iter().zip(SHARES).collect();
        pieces.push(row(&cells, 7.0, INK));
    }
    pieces.push(Piece::says(format!(
        "Read to the nearest whole millimetre or 1/32 in, with a tape that is divided so: what is accepted then \
         keeps within {}, the \u{b1} that the study counted with for the lift. A reading outside it means that \
         the bay file is wrong: correct it, study again, make new marks.",
        plus_minus(bay.policy.measured_lift, bay.units)
    )));
    pieces.push(Piece::fields(&[
        ("Let down to the floor; oil topped up, no leak", 1.6),
        ("by", 0.6),
    ]));
}

/// How the overhead door stands meanwhile; nothing where there is none.
fn door(pieces: &mut Vec<Piece>, order: &Order<'_>) {
    if order.bay.garage.door != Door::None {
        pieces.push(Piece::says(format!(
            "The door stands {} before the rise and is locked out: nobody runs it meanwhile.",
            order.study.headline_door.word()
        )));
    }
}

/// What the tape shows from the top of the base plate to the marked edge on a lock.
pub(super) fn reading(order: &Order<'_>, travel_m: f64) -> Reading {
    Reading {
        expected_m: order.bay.lift.carriage.marked_edge.m() + travel_m,
        tolerance_m: order.bay.policy.measured_lift.m(),
    }
}

pub(super) fn loaded(pieces: &mut Vec<Piece>, order: &Order<'_>) {
    let (bay, study) = (order.bay, order.study);
    pieces.push(Piece::Heading(format!(
        "4. First loaded raise: {}",
        vehicle(order)
    )));
    let (Some(lock), Some(marks)) = (study.highest_safe_lock, written(bay, study)) else {
        pieces.push(Piece::Band(
            "NOT TO BE DONE: no lock is safe for this vehicle".into(),
            4.6,
            WARN,
        ));
        for reason in why_not(bay, study) {
            pieces.push(Piece::item(reason));
        }
        pieces.push(Piece::says(
            "Cure that, study again, print a new sheet. A vehicle that has a safe lock has a sheet of \
             its own, from its own bay file.",
        ));
        pieces.push(Piece::Heading("5. Anchors checked again".into()));
        pieces.push(Piece::Band(
            "NOT TO BE DONE: there is no loaded raise before it".into(),
            4.6,
            WARN,
        ));
        return;
    };
    let unknown: Vec<&str> = study.unknown.iter().map(|one| one.words()).collect();
    if !unknown.is_empty() {
        pieces.push(Piece::warns(format!(
            "NOT KNOWN, and no pass: {}. Settle these by the report first.",
            unknown.join("; ")
        )));
    }
    pieces.push(Piece::says(
        "With the lock card at the post. From outside, nobody under or beside the vehicle. Only \
         locks that the card names are used. Marks are for the lower carriage's marked edge.",
    ));
    door(pieces, order);
    let never = marks.never.as_ref().map(joined);
    let at_stop = format!(
        "At the STOP mark for lock {lock}, {}: both latches have dropped in at it or below it ({})",
        joined(&marks.stop),
        never.as_ref().map_or_else(
            || "nothing is met within the carriage's travel".into(),
            |never| format!("never above: {never}")
        )
    );
    let off_lock = match &marks.release {
        Some(release) => format!(
            "Raised off lock {lock} until both latches let go, the lower carriage at RELEASE, {}{}: \
             latches pulled on both sides, let down to the floor evenly",
            joined(release),
            (never.as_ref()).map_or_else(String::new, |never| format!(", at most at {never}"))
        ),
        None => format!(
            "NOT ON LOCK {lock}: no graduation of the tape lies between where its latches let go and \
             NEVER ABOVE. Done on a lower lock: raised off it, latches pulled, let down evenly"
        ),
    };
    let rest = lock
        .checked_sub(1)
        .and_then(|index| bay.lift.locks.get(index));
    let rest = rest.map_or_else(String::new, |travel| {
        reading(order, travel.m()).both(bay.units)
    });
    let at_rest = format!("On lock {lock}, both sides: the marked edges rest at {rest}");
    // The lowest on which no tyre bears, whatever is off.
    let hangs = study
        .locks
        .iter()
        .find(|one| one.lock <= lock && one.state == LockState::Clear && one.tyre_m > 0.0);
    let on_the_lowest = match hangs {
        Some(one) => format!(
            "On lock {}, the lowest on which all tyres surely hang free: lowered onto it, both latches in, \
             carriages level",
            one.lock
        ),
        None => format!(
            "On lock {lock}: lowered onto it, both latches in, carriages level. A tyre may still bear on \
             the floor there: whether it sits in balance is not shown"
        ),
    };
    let set = [
        Some(format!("STOP at {}", joined(&marks.stop))),
        marks
            .release
            .as_ref()
            .map(|at| format!("RELEASE at {}", joined(at))),
        never.as_ref().map(|at| format!("NEVER ABOVE at {at}")),
    ];
    let set: Vec<String> = set.into_iter().flatten().collect();
    let are_set = format!(
        "Before it, on both columns, by the steel tape from the top of the base plate: {}",
        set.join("; ")
    );
    pieces.push(head(&[
        ("what is checked", 3.6),
        ("left post", 1.0),
        ("right post", 1.0),
        ("by", 0.7),
    ]));
    for what in [
        are_set.as_str(),
        "Tyres just off the floor: four pads bear, restraints hold, it sits steady; posts and \
         anchors don't stir",
        on_the_lowest.as_str(),
        at_stop.as_str(),
        at_rest.as_str(),
        "Left on the lock for the time that the manual asks, else an hour: nothing has settled",
        off_lock.as_str(),
    ] {
        pieces.push(row(
            &[(what, 3.6), ("", 1.0), ("", 1.0), ("", 0.7)],
            7.0,
            INK,
        ));
    }
    again(pieces);
}

fn again(pieces: &mut Vec<Piece>) {
    pieces.push(Piece::Heading("5. Anchors checked again".into()));
    pieces.push(Piece::says(
        "After the first loaded raise, with the vehicle off the lift: every anchor of part 1 at the \
         manual's torque once more, slab looked over for new cracks around both plates.",
    ));
    pieces.push(Piece::fields(&[
        ("Cracks, turned anchors", 1.6),
        ("Date", 0.6),
        ("by", 0.6),
    ]));
}
