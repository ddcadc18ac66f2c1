//! Does one piece of the delivery pass the opening, can it be tipped up, and how many carry it?

/// Kilograms one person takes at best: the load constant of the NIOSH lifting equation (1994, from
/// memory), for two hands at knuckle height close to the body. How it is shared out below is common
/// practice, no source.
const ONE_PERSON_KG: f64 = 23.0;
/// As many hands as find room on a column. Common practice, no source.
const MOST_HANDS: u32 = 4;

/// How a piece is moved.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Handling {
    /// By so many people.
    Hands(u32),
    /// By a machine: hoist, fork truck, pallet truck.
    Machine,
}

/// Who or what moves a piece of this mass.
#[must_use]
pub fn handling(mass_kg: f64) -> Handling {
    (1..=MOST_HANDS)
        .find(|&hands| mass_kg <= ONE_PERSON_KG * f64::from(hands))
        .map_or(Handling::Machine, Handling::Hands)
}

/// Whether a piece with these sides passes straight through an opening, its longest side along
/// the way in, flat or on edge.
#[must_use]
pub fn passes_opening(sides_m: [f64; 3], width_m: f64, height_m: f64) -> bool {
    if !sides_m.iter().all(|side| side.is_finite()) {
        return false;
    }
    let mut sides = sides_m;
    sides.sort_by(f64::total_cmp);
    let [small, middle, _] = sides;
    let (narrow, wide) = if width_m <= height_m {
        (width_m, height_m)
    } else {
        (height_m, width_m)
    };
    small <= narrow && middle <= wide
}

/// The height that tipping a piece up onto its end needs: the diagonal of its longest and its
/// shortest side, about the edge it stands on.
#[must_use]
pub fn tips_up_m(sides_m: [f64; 3]) -> f64 {
    let mut sides = sides_m;
    sides.sort_by(f64::total_cmp);
    sides[2].hypot(sides[0])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn hands_by_mass() {
        // Common practice, no source, counted from 23 kg (51 lb) a person.
        for (mass, expected) in [
            (23.0, Handling::Hands(1)),
            (23.1, Handling::Hands(2)),
            (46.0, Handling::Hands(2)),
            (92.0, Handling::Hands(4)),
            (92.1, Handling::Machine),
            (f64::NAN, Handling::Machine),
        ] {
            assert_eq!(handling(mass), expected, "{mass} kg");
        }
    }

    #[test]
    fn a_piece_goes_in_lengthwise_flat_or_on_edge() {
        let column = [3.6, 0.5, 0.4];
        assert!(passes_opening(column, 0.5, 2.0));
        assert!(passes_opening(column, 0.4, 0.5));
        assert!(!passes_opening(column, 0.39, 2.0));
        assert!(!passes_opening([3.0, 2.5, 2.2], 2.3, 2.4));
        assert!(!passes_opening([3.0, f64::NAN, 0.4], 3.0, 2.4));
        assert!(!passes_opening(column, f64::NAN, f64::NAN));
    }

    #[test]
    fn the_diagonal_of_a_column() {
        // 3, 4, 5.
        assert!((tips_up_m([0.3, 0.4, 0.35]) - 0.5).abs() < 1e-12);
        assert!((tips_up_m([3.0, 4.0, 9.0]) - 90.0_f64.sqrt()).abs() < 1e-12);
    }
}
