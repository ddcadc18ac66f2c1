//! What must every report say, whatever it found?

/// The cautions, one sentence or two each. Every report, sheet and screen that gives a verdict
/// carries them.
pub const CAUTIONS: [&str; 5] = [
    "A raised vehicle kills. This is a screening of a plan; it certifies and approves nothing.",
    "The lift maker's manual, the local codes and a qualified installer, engineer or electrician \
     govern, whatever is written here.",
    "Never exceed the rating of the lift or of one arm.",
    "Watch the first raise from outside, with nobody under or beside the vehicle, and stop at the mark.",
    "Lower onto the locks before anyone goes under, and never go under a vehicle that hangs on the \
     hydraulics.",
];

/// The caution that goes with every picture of someone under the vehicle.
pub const GOING_UNDER: &str = CAUTIONS[4];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn who_is_shown_under_it_is_told_of_locks_and_hydraulics() {
        assert!(GOING_UNDER.contains("onto the locks") && GOING_UNDER.contains("hydraulics"));
    }
}
