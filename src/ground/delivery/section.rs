//! What is said of the delivery and the oil?

use super::{Handling, cylinders_take_m3, handling, passes_opening, tips_up_m};
use crate::bay::{Bay, Piece};
use crate::clearance::Study;
use crate::ground::screen::screened;
use crate::ground::{Bound, Figure, Quantity, Said, Section, Topic};
use crate::units::Rounding;

const GOVERNS: &str = "the maker's manual governs what is filled in, how the pieces are lifted and \
                       how the columns are stood up";

/// The section on delivery and oil.
pub(in crate::ground) fn section(bay: &Bay, study: &Study) -> Section {
    let mut figures = Vec::with_capacity(4 + 2 * bay.lift.pieces.len());
    figures.extend(oil(bay));
    mass(bay, &mut figures);
    if bay.lift.pieces.is_empty() {
        figures.push(Figure::unknown(
            "pieces",
            "pieces of the delivery",
            "ask the seller for name, mass, length, width and height of each into lift.pieces",
        ));
    }
    for (index, piece) in bay.lift.pieces.iter().enumerate() {
        figures.extend(one_piece(bay, study, index, piece));
    }
    figures.push(column(study));
    Section {
        topic: Topic::Delivery,
        lead: lead(bay),
        figures,
        notes: notes(bay),
        governs: Some(GOVERNS),
    }
}

fn lead(bay: &Bay) -> Said {
    let heaviest = bay
        .lift
        .pieces
        .iter()
        .max_by(|a, b| a.mass.kg().total_cmp(&b.mass.kg()));
    match (heaviest, bay.lift.shipping_mass) {
        (Some(piece), _) => Said::new(format!("The heaviest piece, {}, is ", piece.name))
            .up(Quantity::Mass(piece.mass.kg()))
            .and(format!(": {}.", gear(handling(piece.mass.kg())))),
        (None, Some(mass)) => Said::new("The lift comes as ")
            .up(Quantity::Mass(mass.kg()))
            .and("; its pieces are not given."),
        (None, None) => Said::new("What is delivered is not known."),
    }
}

fn gear(handling: Handling) -> String {
    match handling {
        Handling::Hands(1) => "one person carries it".into(),
        Handling::Hands(hands) => format!("{hands} people carry it"),
        Handling::Machine => {
            "not by hand, it takes a hoist, a fork truck or a pallet truck, with room to work it"
                .into()
        }
    }
}

/// The tank against what both cylinders take.
fn oil(bay: &Bay) -> Option<Figure> {
    let hydraulics = bay.lift.hydraulics.as_ref()?;
    let takes = cylinders_take_m3(hydraulics.bore.m(), hydraulics.stroke.m());
    let what = "oil in the tank against what both cylinders take";
    let note = Said::new("both cylinders, their full bore over their full stroke, take ")
        .up(Quantity::Volume(takes))
        .and("; lines and filter take more, and the pump must stay covered");
    let Some(most) = hydraulics.tank_max.or(hydraulics.tank_min) else {
        return Some(
            Figure::unknown(
                "oil",
                what,
                "read the tank's filling in the manual into lift.hydraulics",
            )
            .note(note),
        );
    };
    let most = most.si();
    let least = hydraulics.tank_min.map_or(most, |least| least.si());
    let figure = screened(
        Figure::judged(
            "oil",
            what,
            Quantity::Volume(most),
            Bound::AtLeast,
            Quantity::Volume(takes),
        ),
        "the tank would run dry before the top: check bore, stroke and tank against the manual, \
         or ask the maker",
    );
    Some(if most >= takes && least < takes {
        figure.note(note.and("; filled to its least mark it would run dry before the top"))
    } else {
        figure.note(note)
    })
}

fn mass(bay: &Bay, figures: &mut Vec<Figure>) {
    let pieces: f64 = bay.lift.pieces.iter().map(|piece| piece.mass.kg()).sum();
    let Some(whole) = bay.lift.shipping_mass.map(|mass| mass.kg()) else {
        if pieces > 0.0 {
            figures.push(
                Figure::noted("shipping_mass", "all pieces", Quantity::Mass(pieces))
                    .rounded(Rounding::Up),
            );
        }
        return;
    };
    let figure = Figure::noted("shipping_mass", "shipping mass", Quantity::Mass(whole))
        .rounded(Rounding::Up);
    // A tenth is pallets and crates.
    let differ = pieces > 0.0 && (pieces - whole).abs() > 0.1 * whole;
    figures.push(if differ {
        figure.note(
            Said::new("the pieces add up to ")
                .near(Quantity::Mass(pieces))
                .and(": one of the two is wrong, or a piece is missing"),
        )
    } else {
        figure
    });
}

/// One piece through the opening and on its end.
fn one_piece(bay: &Bay, study: &Study, index: usize, piece: &Piece) -> [Figure; 2] {
    let off = study.uncertainty.garage_m;
    let opening = &bay.garage.opening;
    let sides = [piece.length.m(), piece.width.m(), piece.height.m()];
    let (width, height) = (opening.width.m() - off, opening.height.m() - off);
    let number = index + 1;
    let mut through = Figure::noted(
        format!("piece_{number}"),
        format!("{}, through the door", piece.name),
        Quantity::Mass(piece.mass.kg()),
    )
    .rounded(Rounding::Up);
    let room = Said::new("the opening is ")
        .down(Quantity::Length(width))
        .and(" by ")
        .down(Quantity::Length(height));
    through = if !passes_opening(sides, width, height) {
        through
            .undecided("it does not pass the door as packed: unpack it, or find another way in")
            .note(room)
    } else if piece.length.m().max(piece.width.m()).max(piece.height.m()) > bay.garage.depth.m() {
        through
            .undecided("it passes the door but is longer than the room is deep: measure the way in")
    } else {
        through.note(format!("passes the door; {}", gear(handling(piece.mass.kg()))))
    };
    let needs = tips_up_m(sides);
    let ceiling = study.stand_up.ceiling_at_posts_m;
    let tipped = Figure::noted(
        format!("piece_{number}_tipped"),
        format!("{}, tipped up onto its end, needs", piece.name),
        Quantity::Length(needs),
    )
    .rounded(Rounding::Up);
    let tipped = if needs <= ceiling {
        tipped.note("fits under the ceiling at the posts as packed")
    } else {
        tipped.note(
            Said::new("more than the ")
                .down(Quantity::Length(ceiling))
                .and(" under the ceiling at the posts: as packed it stays lying"),
        )
    };
    [through, tipped]
}

/// A bare column tipped up, from what the study found; what it can't do is told there.
fn column(study: &Study) -> Figure {
    let stand_up = &study.stand_up;
    let figure = Figure::noted(
        "column",
        "a bare column, tipped up, needs",
        Quantity::Length(stand_up.needs_m),
    )
    .rounded(Rounding::Up);
    let room = Said::new("the ceiling at the posts leaves ")
        .down(Quantity::Length(stand_up.ceiling_at_posts_m));
    if stand_up.needs_m <= stand_up.ceiling_at_posts_m {
        figure.note(room.and("; lights, door tracks and opener are not looked at"))
    } else if stand_up.needs_m <= stand_up.highest_ceiling_m {
        figure.note(
            room.and(" and the highest ceiling ")
                .down(Quantity::Length(stand_up.highest_ceiling_m))
                .and(": it would have to be tipped up there and walked over upright"),
        )
    } else {
        figure.note(room.and(": it can't be tipped up in this room"))
    }
}

fn notes(bay: &Bay) -> Vec<Said> {
    let mut notes = Vec::new();
    if let Some(hydraulics) = &bay.lift.hydraulics
        && let (Some(least), Some(most)) = (hydraulics.tank_min, hydraulics.tank_max)
    {
        notes.push(
            Said::new("Oil to buy: ")
                .up(Quantity::Volume(least.si()))
                .and(" to ")
                .up(Quantity::Volume(most.si()))
                .and(" for the tank, and what lines and cylinders hold."),
        );
    }
    if !bay.lift.pieces.is_empty() {
        notes.push(
            "Hands are counted at 23 kg (51 lb) a person, four at most: common practice, no \
             source; 23 kg is the load constant of the NIOSH lifting equation, 1994, from memory."
                .into(),
        );
    }
    notes
}
