//! The empty full rise, and the first with a load.

use super::{Order, Piece, head, row, vehicle, warn};
use crate::bay::Door;
use crate::clearance::PairFinding;
use crate::drawing::card::why_not;
use crate::drawing::palette::paper::INK;
use crate::report::{Sayings, called};
use crate::setting_out::{Drill, Reading};
use crate::units::{Rounding, both};

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
    if Drill::of(bay, order.study) == Drill::Stopped {
        pieces.push(Piece::Band(
            "NOT TO BE DONE before what part 4 names is cured".into(),
            4.6,
            warn(),
        ));
    }
    pieces.push(Piece::says(
        "Nobody under the arms, nothing on them. Lower onto every lock on the way and read where the \
         marked edges come to rest, from the top of the base plates, then climb on; every latch \
         must drop in by itself, on both sides. Stop at the first sound that is not in the manual.",
    ));
    if bay.garage.door != Door::None {
        pieces.push(Piece::says(format!(
            "The door stands {} before the rise and is locked out: nobody runs it meanwhile.",
            order.study.headline_door.word()
        )));
    }
    let breach = own_breach(order);
    let breach_m = breach.and_then(|pair| pair.first_breach_m.or(pair.first_touch_m));
    if let (Some(pair), Some(at_m)) = (breach, breach_m) {
        let show = Sayings::of(bay, order.study).show();
        pieces.push(Piece::warns(format!(
            "NOT TO THE TOP: {} comes too near {} from {} of travel on. Stop below it.",
            called(&pair.moving),
            called(&pair.fixed),
            show.room(at_m)
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
                warn(),
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
        "Accepted is what keeps within {}, the \u{b1} that the study counted with for the lift. A \
         reading outside it means that the bay file is wrong: correct it, study again, make new \
         marks.",
        both(bay.policy.measured_lift, bay.units, Rounding::Down)
    )));
    pieces.push(Piece::fields(&[
        ("Let down to the floor; oil topped up, no leak", 1.6),
        ("by", 0.6),
    ]));
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
    let said = Sayings::of(bay, study);
    pieces.push(Piece::Heading(format!(
        "4. First loaded raise: {}",
        vehicle(order)
    )));
    let (Some(lock), Some(stop)) = (study.highest_safe_lock, said.stop_mark()) else {
        pieces.push(Piece::Band(
            "NOT TO BE DONE: no lock is safe for this vehicle".into(),
            4.6,
            warn(),
        ));
        for reason in why_not(bay, study) {
            pieces.push(Piece::item(reason));
        }
        pieces.push(Piece::says(
            "Cure that, study again, print a new sheet. Nothing is raised for part 5 before.",
        ));
        again(pieces);
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
        "With the lock card at the post. From outside, nobody under or beside the vehicle. Locks \
         that are barred or not lifting on the card are not used.",
    ));
    let never = said
        .never_above()
        .unwrap_or_else(|| "see the lock card".into());
    let at_stop = format!(
        "At the STOP mark for lock {lock}, {stop}: both latches have dropped in at it or below it \
         (never above: {never})"
    );
    let rest = lock
        .checked_sub(1)
        .and_then(|index| bay.lift.locks.get(index));
    let rest = rest.map_or_else(String::new, |travel| {
        reading(order, travel.m()).both(bay.units)
    });
    let at_rest = format!("On lock {lock}, both sides: the marked edges rest at {rest}");
    for what in [
        "Tyres just off the floor: four pads bear, restraints hold, it sits steady; posts and \
         anchors don't stir",
        "Lowest lock that lifts: lowered onto it, both latches in, carriages level",
        at_stop.as_str(),
        at_rest.as_str(),
        "Left on the lock for the time that the manual asks, else an hour: nothing has settled",
        "Raised off the lock, latches pulled, let down to the floor: evenly on both sides",
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
