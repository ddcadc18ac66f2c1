//! What is said of the delivery and the oil?

use super::{Handling, cylinders_take_m3, handling, passes_opening, tips_up_m};
use crate::bay::{Bay, Piece};
use crate::clearance::StandUp;
use crate::ground::{Bound, Figure, Quantity, Said, Section, Standing, Topic};
use crate::units::Rounding;

const GOVERNS: &str = "the maker's manual governs what is filled in, how the pieces are lifted and \
                       how the columns are stood up";

/// A piece shorter than this is not stood up.
const TIPPED_FROM_M: f64 = 2.0;

/// The section on delivery and oil.
pub(in crate::ground) fn section(bay: &Bay, off_m: f64, stand_up: StandUp) -> Section {
    let mut figures = Vec::with_capacity(4 + bay.lift.pieces.len());
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
        figures.push(one_piece(bay, off_m, stand_up, index, piece));
    }
    figures.push(column(stand_up));
    Section {
        topic: Topic::Delivery,
        lead: lead(bay, &figures),
        figures,
        notes: notes(bay),
        governs: Some(GOVERNS),
    }
}

fn lead(bay: &Bay, figures: &[Figure]) -> Said {
    let stops = figures.iter().find(|one| one.standing == Standing::Stops);
    if let Some(reason) = stops.and_then(|one| one.reason.as_ref()) {
        return Said::new("It can't come in like that: ")
            .and_said(reason.clone())
            .and(".");
    }
    if !adds_up(bay) {
        return "What is delivered is not known: the pieces do not add up to the shipping mass."
            .into();
    }
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

/// The tank as filled, cylinders empty, against what both cylinders take.
fn oil(bay: &Bay) -> Option<Figure> {
    let hydraulics = bay.lift.hydraulics.as_ref()?;
    let takes = cylinders_take_m3(hydraulics.bore.m(), hydraulics.stroke.m());
    let what = "oil in the tank against what both cylinders take";
    let note = Said::new("both cylinders, their full bore over their full stroke, take ")
        .up(Quantity::Volume(takes))
        .and("; lines and filter take more, and how much must stay over the pump is the manual's to say");
    let Some(least) = hydraulics.tank_min else {
        return Some(
            Figure::unknown(
                "oil",
                what,
                "read how far the tank is filled in the manual into lift.hydraulics.tank_min and \
                 tank_max",
            )
            .note(note),
        );
    };
    let figure = Figure::judged(
        "oil",
        what,
        Quantity::Volume(least.si()),
        Bound::AtLeast,
        Quantity::Volume(takes),
    )
    .undecided_unless_it_passes(
        "a tank filled to its least would run dry before the top: check bore, stroke and tank \
         against the manual, or ask the maker",
    );
    // Enough for the cylinders is no word of what must stay over the pump.
    let standing = match figure.standing {
        Standing::Passes => Standing::Noted,
        other => other,
    };
    Some(Figure { standing, ..figure }.note(note))
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
    figures.push(if adds_up(bay) {
        figure
    } else {
        figure
            .undecided("ask the seller again: one of the two is wrong, or a piece is missing")
            .note(Said::new("the pieces add up to ").near(Quantity::Mass(pieces)))
    });
}

/// Whether the pieces come to the shipping mass, where both are given; a tenth is pallets and crates.
fn adds_up(bay: &Bay) -> bool {
    let pieces: f64 = bay.lift.pieces.iter().map(|piece| piece.mass.kg()).sum();
    let whole = bay.lift.shipping_mass.map(|mass| mass.kg());
    whole.is_none_or(|whole| pieces <= 0.0 || (pieces - whole).abs() <= 0.1 * whole)
}

/// One piece: by whom it is moved, through the opening, and on its end where it is long.
fn one_piece(bay: &Bay, off: f64, stand_up: StandUp, index: usize, piece: &Piece) -> Figure {
    let opening = &bay.garage.opening;
    let sides = [piece.length.m(), piece.width.m(), piece.height.m()];
    let (width, height) = (opening.width.m() - off, opening.height.m() - off);
    let longest = sides.into_iter().fold(0.0, f64::max);
    let figure = Figure::noted(
        format!("piece_{}", index + 1),
        piece.name.clone(),
        Quantity::Mass(piece.mass.kg()),
    )
    .rounded(Rounding::Up);
    let by = gear(handling(piece.mass.kg()));
    if !passes_opening(sides, width, height) {
        return figure
            .stopping("as packed it does not pass the door: unpack it, or find another way in")
            .reason(format!("{} does not pass the door as packed", piece.name))
            .note(
                Said::new(format!("{by}; the opening is "))
                    .down(Quantity::Length(width))
                    .and(" by ")
                    .down(Quantity::Length(height)),
            );
    }
    if longest > bay.garage.depth.m() {
        return figure
            .undecided("it passes the door but is longer than the room is deep: measure the way in")
            .note(by);
    }
    let note = Said::new(format!(
        "{by}; passes the door where nothing hangs into its opening"
    ));
    if longest < TIPPED_FROM_M {
        return figure.note(note);
    }
    let needs = tips_up_m(sides);
    let note = note
        .and("; tipped up onto its end as packed it needs ")
        .up(Quantity::Length(needs));
    let ceiling = stand_up.ceiling_at_posts_m;
    if needs <= ceiling {
        return figure.note(note.and(" and has it under the ceiling at the posts"));
    }
    figure
        .undecided("unpack it where it lies, and see that what is in it can be stood up bare")
        .note(
            note.and(", more than the ")
                .down(Quantity::Length(ceiling))
                .and(" under the ceiling at the posts"),
        )
}

/// A bare column tipped up, from what the study found; what it can't do is told there.
fn column(stand_up: StandUp) -> Figure {
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
        figure
            .undecided(
                "it would have to be tipped up where the ceiling is higher and walked over \
                        upright: see whether that can be done",
            )
            .note(
                room.and(" and the highest ceiling ")
                    .down(Quantity::Length(stand_up.highest_ceiling_m)),
            )
    } else {
        // The verdict tells it by itself.
        Figure {
            told: true,
            ..figure
                .stopping("use shorter columns, or a room with a higher ceiling")
                .reason("a column can't be tipped up in this room")
                .note(room)
        }
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bay::Hydraulics;
    use crate::clearance::{Study, study};
    use crate::solids::test_bay::test_bay;
    use crate::units::{Length, Mass, Volume};

    fn of_study(bay: &Bay, study: &Study) -> Section {
        section(bay, study.uncertainty.garage_m, study.stand_up)
    }

    fn of(bay: &Bay, id: &str) -> Figure {
        let section = of_study(bay, &study(bay).unwrap());
        let found = section.figures.iter().find(|figure| figure.id == id);
        found.cloned().unwrap()
    }

    #[test]
    fn a_tank_smaller_than_the_cylinders_is_flagged_and_stops_nothing() {
        let mut bay = test_bay();
        let gallons = |value: f64| Some(Volume::cubic_metres(value * 0.003_785_411_784));
        bay.lift.hydraulics = Some(Hydraulics {
            bore: Length::inches(2.0),
            stroke: Length::inches(36.0),
            tank_min: None,
            tank_max: gallons(1.0),
        });
        assert_eq!(of(&bay, "oil").standing, Standing::Unknown);
        // 2 * pi/4 * 2^2 * 36 = 226.2 in3 = 0.979 gal.
        for (least, standing) in [(0.97, Standing::Unknown), (0.98, Standing::Noted)] {
            bay.lift.hydraulics.as_mut().unwrap().tank_min = gallons(least);
            assert_eq!(of(&bay, "oil").standing, standing, "{least}");
        }
    }

    #[test]
    fn a_piece_that_does_not_pass_the_door_withholds_every_lock() {
        let mut bay = test_bay();
        assert_eq!(of(&bay, "pieces").standing, Standing::Unknown);
        let piece = |width: f64, length: f64| Piece {
            name: "crate".into(),
            mass: Mass::pounds(400.0),
            length: Length::feet(length),
            width: Length::feet(width),
            height: Length::feet(width),
            column: false,
        };
        // The opening is 10 ft by 8 ft, each up to 6 mm less; the room is 28 ft deep.
        bay.lift.pieces = vec![piece(7.9, 12.0), piece(8.0, 12.0), piece(1.0, 30.0)];
        assert_ne!(of(&bay, "piece_1").standing, Standing::Stops);
        assert_eq!(of(&bay, "piece_2").standing, Standing::Stops);
        assert_eq!(of(&bay, "piece_3").standing, Standing::Unknown);
        let found = study(&bay).unwrap();
        assert_eq!(found.highest_safe_lock, None);
        assert!(found.highest_clear_lock.is_some());
        let lead = of_study(&bay, &found).lead;
        assert!(
            format!("{lead:?}").contains("does not pass the door"),
            "{lead:?}"
        );
        bay.lift.pieces.remove(1);
        let without = study(&bay).unwrap();
        assert_eq!(without.withheld.len() + 1, found.withheld.len());
    }

    #[test]
    fn pieces_that_do_not_add_up_are_not_known() {
        let mut bay = test_bay();
        bay.lift.shipping_mass = Some(Mass::pounds(1500.0));
        bay.lift.pieces = vec![Piece {
            name: "column".into(),
            mass: Mass::pounds(50.0),
            length: Length::feet(9.0),
            width: Length::feet(1.0),
            height: Length::feet(1.0),
            column: true,
        }];
        assert_eq!(of(&bay, "shipping_mass").standing, Standing::Unknown);
        let lead = of_study(&bay, &study(&bay).unwrap()).lead;
        assert!(!format!("{lead:?}").contains("person"), "{lead:?}");
    }
}
