//! What is said of a question where somebody asks for more: what a kind means, or why it is asked.
//! Only where that is more than what stands with the question anyway.

/// Section, key and the words.
const MORE: &[(&str, &str, &str)] = &[
    (
        "door",
        "#door",
        "Roll-up: a curtain that winds up into a coil over the opening. Swing-up: a panel in one \
         piece that tips up under the ceiling. Side-hinged: leaves that turn like a room's door. \
         None: an opening without a door.",
    ),
    (
        "door",
        "#layout",
        "Standard: up the wall, one curve just over the opening, then level under the ceiling. \
         Low-headroom: two tracks one over the other at each side, so that the door turns closer to \
         the header.",
    ),
    (
        "room",
        "#ceiling",
        "Flat: one height all over. Sloped: it rises evenly from one wall to the wall across from it. \
         Gable: it rises from two walls to a ridge between them. Stepped: flat parts of different \
         heights, one behind the other as seen from the door.",
    ),
    (
        "slab",
        "slab.post_tensioned",
        "Tendons are steel cables in the slab under a great pull: a drill that meets one can kill, \
         and the slab loses its strength.",
    ),
    (
        "slab",
        "slab.heated",
        "Its pipes or cables lie where anchors would be drilled.",
    ),
    (
        "lift",
        "lift.set_overtravel",
        "To set the lift down on a lock the carriage climbs a little past it until the latch drops \
         in: so far the vehicle goes higher than it will stand.",
    ),
    (
        "lift",
        "lift.release_overtravel",
        "To come down from a lock the carriage climbs off it first, until the latch is free to be \
         pulled: so far the vehicle goes higher than it stood.",
    ),
    (
        "lift",
        "#arm.hold",
        "Nothing: no part of the lift keeps an arm where it was swung to.",
    ),
    (
        "vehicle",
        "vehicle.belt",
        "Up to this height the body counts as wide as it is anywhere; above it as its outline says.",
    ),
];

/// More words on a question; none where there are none.
pub(in crate::worksheet) fn more(section: &str, key: &str) -> Option<&'static str> {
    let found = MORE.iter().find(|(id, of, _)| (*id, *of) == (section, key));
    found.map(|(_, _, words)| *words)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_question_with_more_to_say_is_asked() {
        for (section, key, _) in MORE {
            assert!(
                crate::worksheet::number(section, key).is_some(),
                "{section} {key}"
            );
        }
    }
}
