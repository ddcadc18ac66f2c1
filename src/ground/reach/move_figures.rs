//! How should the vehicle be moved, in words and figures?

use glam::DVec2;

use super::Reach;
use super::pad_figures::LEVEL_M;
use super::pads::Level;
use super::propose::{Against, Moves, Proposal};
use super::shift::NoMove;
use super::swing::SwingIn;
use super::words;
use crate::bay::Bay;
use crate::clearance::Heights;
use crate::ground::{Figure, Quantity, Said};
use crate::units::Rounding;

/// What to do: starts in lower case, no full stop.
pub(super) fn cure(bay: &Bay, reach: &Reach) -> String {
    let moves = match &reach.moves {
        Some(Ok(moves)) => moves,
        Some(Err(NoMove::Teeth)) => {
            return "no move was found at which the restraint's teeth hold all four: use wider \
                    pads or finer teeth, or park more repeatably"
                .into();
        }
        Some(Err(NoMove::Beyond)) | None => {
            return "no move of the vehicle makes all four reach: use arms that reach, or park \
                    more repeatably"
                .into();
        }
    };
    let by = |by_m: DVec2| words::by(by_m, bay.units);
    let Some(proposal) = &moves.proposal else {
        return format!(
            "moved {} all four arms reach, but with less play than a tape shows",
            by(moves.least.by_m)
        );
    };
    if let Some(setting) = set_pads(bay, reach) {
        return setting;
    }
    let moved = by(proposal.by_m);
    match &proposal.against {
        None => {
            let arms = match proposal.swing {
                SwingIn::Found { .. } => "the arms touch nothing and can be swung in",
                SwingIn::NotFound { .. } => {
                    "the arms touch nothing, but how to swing them in is not known"
                }
            };
            format!(
                "move the vehicle {moved}: there all four arms reach, {arms}; {}check again with it",
                in_the_room(proposal)
            )
        }
        Some(Against::Room) => format!(
            "moved {moved} all four arms reach and touch nothing, but there the room is against it \
             (driving in, walls, the door, or the way up); of {} moves looked at none is free of \
             that",
            proposal.tried
        ),
        Some(Against::Balance) => format!(
            "moved {moved} all four arms reach and touch nothing, but the centre of gravity lies \
             outside the lift's window there"
        ),
        Some(Against::Touches(part, other)) => format!(
            "moved {moved} all four arms reach, but {} touches {} there; of {} moves looked at \
             none is free of that",
            words::short_name(part),
            words::short_name(other),
            proposal.tried
        ),
        Some(Against::Reach) => {
            format!("on a level floor all four arms would reach moved {moved}, but not on this one")
        }
    }
}

/// What the room says of the proposed place, ending with a semicolon and a space; nothing where it
/// was not looked at.
fn in_the_room(proposal: &Proposal) -> String {
    let Some([here, there]) = proposal.room else {
        return String::new();
    };
    let room = if there.reasons == 0 {
        "it can be driven in and stands clear of the room"
    } else {
        "what the room has against it here it has there too"
    };
    let lock = |heights: Heights| match heights.highest_clear_lock {
        Some(lock) => format!("lock {lock}"),
        None => "no lock".into(),
    };
    let (now, then) = (lock(here), lock(there));
    if now == then {
        format!("{room}, and {then} stays the highest clear one; ")
    } else {
        format!("{room}, and {then} would be the highest clear one instead of {now}; ")
    }
}

/// How the pads must be set, where the arms reach as they are and touch because the pads are set
/// unevenly.
fn set_pads(bay: &Bay, reach: &Reach) -> Option<String> {
    let Some(Ok(moves)) = &reach.moves else {
        return None;
    };
    let stays = moves.least.by_m.length() <= words::NO_MOVE_M;
    let touches = matches!(moves.proposal.as_ref()?.against, Some(Against::Touches(..)));
    let is_uneven = reach.pads.out_of_level_m >= LEVEL_M;
    (stays && touches && is_uneven && matches!(reach.pads.level, Level::Sets(_))).then(|| {
        let said = words::level(&reach.pads.level, bay);
        let set = words::in_units(&said, bay.units);
        format!("set the pads so that the body stands {set}; then check again")
    })
}

/// The same in a few words, for each arm.
pub(super) fn short_cure(bay: &Bay, reach: &Reach) -> String {
    match &reach.moves {
        Some(Ok(Moves {
            proposal: Some(proposal),
            ..
        })) if proposal.against.is_none() => {
            format!("move the vehicle {}", words::by(proposal.by_m, bay.units))
        }
        _ => cure(bay, reach),
    }
}

fn is_proposed(moves: &Moves) -> bool {
    let proposal = moves.proposal.as_ref();
    proposal.is_some_and(|proposal| proposal.against.is_none())
}

/// How far the vehicle should be moved.
pub(super) fn figures(bay: &Bay, reach: &Reach) -> Vec<Figure> {
    let Some(Ok(moves)) = &reach.moves else {
        return Vec::new();
    };
    let least = &moves.least;
    if least.by_m.length() <= words::NO_MOVE_M && !is_proposed(moves) {
        return Vec::new();
    }
    let mut figures = vec![
        Figure::noted(
            "move.least",
            "shortest move for reach",
            Quantity::Length(least.by_m.length()),
        )
        .rounded(Rounding::Up)
        .note(if least.is_proved {
            format!("{}: no shorter move does", words::by(least.by_m, bay.units))
        } else {
            format!(
                "{}: the shortest found; the restraint's teeth decide, so a shorter one may do",
                words::by(least.by_m, bay.units)
            )
        }),
    ];
    let Some(proposal) = &moves.proposal else {
        return figures;
    };
    // A move that something is against is no proposal; the sentence on top tells of it.
    if proposal.against.is_some() {
        return figures;
    }
    let longer = (proposal.by_m.length() - least.by_m.length()).max(0.0);
    let (along, across) = (proposal.by_m.y, proposal.by_m.x);
    figures.push(
        Figure::noted(
            "move.along",
            "proposed: into the bay (-: toward the door)",
            Quantity::Length(along),
        )
        .note(
            Said::new(format!(
                "in whole steps, with what the arms meet, driving in, the room and the way up looked at \
                 ({}); ",
                match proposal.tried {
                    1 => "one move tried".to_owned(),
                    n => format!("{n} moves tried"),
                }
            ))
            .up(Quantity::Length(longer))
            .and(
                " longer than the shortest for reach. Study the bay again with the vehicle there: \
                 loads and doors change too",
            ),
        ),
    );
    figures.push(Figure::noted(
        "move.across",
        "proposed: to the right (-: to the left)",
        Quantity::Length(across),
    ));
    figures
}
