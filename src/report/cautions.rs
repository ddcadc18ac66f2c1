//! What must every report say, whatever it found?

/// The cautions, one sentence or two each. Every report, sheet and screen that gives a verdict
/// carries them.
pub const CAUTIONS: [&str; 6] = [
    "A raised vehicle kills. This is a screening of a plan; it certifies and approves nothing.",
    "The lift maker's manual, the local codes and a qualified installer, engineer or electrician \
     govern, whatever is written here.",
    "Never exceed the rating of the lift or of one arm.",
    "See every arm's restraint caught and every pad bear; just off the floor stop, and see that the \
     vehicle is balanced and steady.",
    "Raise to a mark only; watch the first raise from outside, with nobody under or beside the vehicle.",
    "Lower onto the locks before anyone goes under, and never go under a vehicle that hangs on the \
     hydraulics.",
];

/// All of them in the few words that a picture has room for.
pub const IN_A_PICTURE: [&str; 2] = [
    "A raised vehicle kills. This screens a plan; it certifies and approves nothing.",
    "The maker's manual, local codes and qualified people govern. Keep within every rating, see \
     each arm's restraint caught and the vehicle balanced, watch the first raise from outside, stop \
     at the mark, lower onto the locks before going under.",
];

/// The caution that goes with every picture of someone under the vehicle.
pub const GOING_UNDER: &str = CAUTIONS[5];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_picture_has_every_caution_in_short() {
        let said = IN_A_PICTURE.join(" ");
        for word in [
            "kills",
            "certifies",
            "manual",
            "codes",
            "qualified",
            "rating",
            "restraint",
            "balanced",
            "outside",
            "mark",
            "locks",
        ] {
            assert!(said.contains(word), "{word}");
            assert!(CAUTIONS.join(" ").contains(word), "{word}");
        }
    }

    #[test]
    fn who_is_shown_under_it_is_told_of_locks_and_hydraulics() {
        assert!(GOING_UNDER.contains("onto the locks") && GOING_UNDER.contains("hydraulics"));
    }
}
