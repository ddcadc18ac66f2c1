//! Does the garage door shut with the vehicle on the lift?

use super::thing;
use crate::bay::{Bay, DoorHeld};
use crate::clearance::{DoorState, LockState, Study};
use crate::ground::{Figure, Quantity, Said};

/// Whether the garage door runs shut on a lock: it stands shut with its margins, is nowhere tight
/// beside the vehicle as parked, and may be run.
pub(super) fn shuts_on(study: &Study, lock: usize) -> bool {
    let shut = study.doors.shut.locks.get(lock - 1) == Some(&LockState::Clear);
    let tight = study
        .tight_as_parked
        .iter()
        .any(|pair| pair.door == Some(DoorState::Shut));
    let runs = study
        .locks
        .iter()
        .any(|found| found.lock == lock && found.door_may_run);
    shut && !tight && runs
}

pub(super) fn garage_door(bay: &Bay, study: &Study, figures: &mut Vec<Figure>) {
    let words = |words: &str| Quantity::Words(words.into());
    if let Some(shut) = &study.access.shut {
        let what = "garage door with the vehicle down";
        figures.push(match &shut.meets {
            None => Figure::noted("door_shuts_down", what, words("shuts")),
            Some((moving, fixed)) => Figure::noted(
                "door_shuts_down",
                what,
                words(if shut.while_running {
                    "does not run shut with its margins"
                } else {
                    "does not shut with its margins"
                }),
            )
            .undecided(
                "park elsewhere, or settle whether the door stays open whenever the vehicle is \
                 there",
            )
            .note(format!("{} and {}", thing(moving), thing(fixed))),
        });
        if let Some(lock) = study.highest_clear_lock {
            let shuts = shuts_on(study, lock);
            let held_open = bay.policy.door_held == Some(DoorHeld::Open);
            let figure = Figure::noted(
                "door_shuts_lock",
                format!("garage door on lock {lock}"),
                words(match (shuts, held_open) {
                    (true, _) => "shuts",
                    (false, true) => "stays open",
                    (false, false) => "must stay open",
                }),
            );
            figures.push(if held_open && !shuts {
                figure.note("the policy holds it open while the vehicle is up")
            } else if shuts {
                figure
            } else {
                // Open or shut is then decided by nobody, and the door may run.
                figure
                    .undecided(
                        "say what holds the door open while the vehicle is up, and write \
                         policy.door_held: Open, or stay on locks under which it shuts",
                    )
                    .note("it is not shown to run shut with its margins there")
            });
        }
    }
    if bay.garage.door != crate::bay::Door::None {
        turned(study, figures);
    }
}

fn turned(study: &Study, figures: &mut Vec<Figure>) {
    let what = "garage door with the vehicle turned round, down";
    let again = "set parking.facing the other way round and check again";
    let Some(turned) = &study.access.turned else {
        figures.push(Figure::unknown("door_shuts_turned", what, again));
        return;
    };
    let room = Said::new("by boxes about its parts: ")
        .down(Quantity::Length(turned.to_door_m))
        .and(" to the shut door or its wall and ")
        .down(Quantity::Length(turned.to_back_m))
        .and(" to the back; arms and raise turned round are not looked at here");
    if let Some((moving, fixed)) = &turned.meets {
        figures.push(
            Figure::noted(
                "door_shuts_turned",
                what,
                Quantity::Words("not shown to fit turned round".into()),
            )
            .note(
                Said::new(format!(
                    "{} comes too near {}; ",
                    thing(moving),
                    thing(fixed)
                ))
                .and_said(room),
            )
            .cure(again),
        );
        return;
    }
    figures.push(if turned.shuts {
        Figure::noted("door_shuts_turned", what, Quantity::Words("shuts".into())).note(room)
    } else {
        Figure {
            found: Some(Quantity::Words("not shown to shut".into())),
            ..Figure::noted("door_shuts_turned", what, Quantity::Words(String::new()))
        }
        .note(room)
        .cure(again)
    });
}
