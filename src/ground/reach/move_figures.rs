//! How should the vehicle be moved, in words and figures?

use glam::DVec2;

use super::Reach;
use super::pad_figures::LEVEL_M;
use super::pads::Level;
use super::propose::{Against, Moves, Proposal};
use super::shift::{NoMove, moved};
use super::swing::SwingIn;
use super::words;
use crate::bay::{Aim, Bay};
use crate::clearance::Heights;
use crate::ground::{Figure, Quantity, Said};
use crate::units::{self, Length, Rounding};

/// What to do: starts in lower case, no full stop.
pub(super) fn cure(bay: &Bay, reach: &Reach) -> String {
    if reach.move_not_looked_for {
        return "see the report of `bayrise check` on this bay for a move of the vehicle that does it"
            .into();
    }
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
    let searched = searched(bay, proposal);
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
             (driving in, walls, the door, or the way up); {searched} is free of that"
        ),
        Some(Against::Balance) => format!(
            "moved {moved} all four arms reach and touch nothing, but there balance or an arm's \
             load would stop it; {searched} is free of that"
        ),
        Some(Against::Touches(..)) if stays(moves) => format!(
            "{searched} is free of that, and none of {} other settings of the pads: use other lift \
             points that the vehicle's maker allows, smaller pads, or a lift with other arms",
            reach.reset.1
        ),
        Some(Against::Touches(part, other)) => format!(
            "moved {moved} all four arms reach, but {} touches {} there; {searched} is free of that",
            words::short_name(part),
            words::short_name(other),
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
        "the room is against it there too, perhaps for other reasons"
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

/// How far was looked for another place: "of 24 moves looked at, up to 8 in long, none".
fn searched(bay: &Bay, proposal: &Proposal) -> String {
    let farthest = Length::metres(proposal.farthest_m);
    format!(
        "of {} moves looked at, up to {} long, none",
        proposal.tried,
        units::length(farthest, bay.units, Rounding::Nearest)
    )
}

/// Whether the arms reach from where the vehicle stands.
fn stays(moves: &Moves) -> bool {
    moves.least.by_m.length() <= words::NO_MOVE_M
}

/// How the pads must be set, where the arms reach as they are and touch because of how the pads are
/// set.
fn set_pads(bay: &Bay, reach: &Reach) -> Option<String> {
    let Some(Ok(moves)) = &reach.moves else {
        return None;
    };
    let touches = matches!(moves.proposal.as_ref()?.against, Some(Against::Touches(..)));
    if !stays(moves) || !touches {
        return None;
    }
    let set = |level: &Level| words::in_units(&words::level(level, bay), bay.units);
    if let Some(sets) = &reach.reset.0 {
        let set = set(&Level::Sets(sets.clone()));
        return Some(format!(
            "set the pads so that the body stands {set}: so they touch nothing; then check again"
        ));
    }
    let is_uneven = reach.pads.out_of_level_m >= LEVEL_M;
    (is_uneven && matches!(reach.pads.level, Level::Sets(_))).then(|| {
        let set = set(&reach.pads.level);
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
    let open = if set_pads(bay, reach).is_some() {
        None
    } else {
        open(moves)
    };
    if stays(moves) && !is_proposed(moves) {
        return open.into_iter().collect();
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
        figures.extend(open);
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
                 loads and doors change too. In the file: ",
            )
            .and(in_the_file(bay, proposal.by_m)[0].clone()),
        ),
    );
    figures.push(
        Figure::noted(
            "move.across",
            "proposed: to the right (-: to the left)",
            Quantity::Length(across),
        )
        .note(format!(
            "in the file: {}",
            in_the_file(bay, proposal.by_m)[1]
        )),
    );
    figures
}

/// What to write as `parking.aim` and `parking.across` to park the vehicle there.
fn in_the_file(bay: &Bay, by_m: DVec2) -> [String; 2] {
    let there = moved(bay, by_m).parking;
    let shown = |length| units::length(length, bay.units, Rounding::Nearest);
    let aim = match there.aim {
        Aim::CentreOfGravity(offset) => format!("CentreOfGravity(\"{}\")", shown(offset)),
        Aim::LiftPoints(offset) => format!("LiftPoints(\"{}\")", shown(offset)),
    };
    [
        format!("aim: {aim}"),
        format!("across: \"{}\"", shown(there.across)),
    ]
}

/// What the search leaves open where no move is free.
fn open(moves: &Moves) -> Option<Figure> {
    let proposal = moves.proposal.as_ref()?;
    proposal.against.as_ref()?;
    let figure = Figure::noted(
        "move.searched_to",
        "longest move looked at, none of them free",
        Quantity::Length(proposal.farthest_m),
    );
    Some(
        figure.note(
            Said::new(format!(
                "{} moves were looked at, in whole steps, the shortest first, and for reach alone the \
                 shortest is ",
                proposal.tried
            ))
            .near(Quantity::Length(moves.least.by_m.length()))
            .and(": a free move between those, or a longer one, is not ruled out"),
        ),
    )
}
