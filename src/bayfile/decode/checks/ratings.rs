//! Do the ratings of arms and posts go with the lift's?

use super::super::fields::Fields;
use crate::bay::{Lift, UnitSystem};
use crate::units::{self, Mass};

/// A mass in both systems, to the nearest, for messages.
pub(super) fn both(mass: Mass) -> String {
    let [imperial, metric] =
        [UnitSystem::Imperial, UnitSystem::Metric].map(|units| units::show_mass(mass, units));
    format!("{imperial} ({metric})")
}

/// How much a rating may be rounded, as a share: manuals give it in one system and round the other.
const ROUNDED: f64 = 0.005;

/// True when neither an arm nor a post may carry what the lift as a whole can't give it; else that
/// is noted.
///
/// Four arms share the rated capacity, two on each post. A manual may give one arm more than a
/// quarter and one post more than half of it; more than half on one arm, or more than all on one
/// post, are figures of something else.
pub(in crate::bayfile::decode) fn ratings(f: &Fields<'_>, lift: &Lift) -> bool {
    let mut good = true;
    let half = lift.capacity * 0.5;
    if let Some(arm) = lift.arm_capacity.filter(|arm| *arm > half) {
        good = false;
        f.error(
            f.newer("arm_capacity", "capacity"),
            &format!(
                "one arm may carry {}, more than half of the lift's capacity of {}",
                both(arm),
                both(lift.capacity)
            ),
            "four arms share the lift's capacity: one has no more than half of it",
            "take both from the manual: `capacity` is for the whole lift, `arm_capacity` for one \
             arm; remove `arm_capacity` where it does not say",
        );
    }
    let shared = |arm: Mass| arm.kg() * 4.0 > lift.capacity.kg() * (1.0 + ROUNDED);
    if let Some(arm) = lift.arm_capacity.filter(|arm| good && shared(*arm)) {
        f.cx.warning(
            f.span(f.newer("arm_capacity", "capacity")),
            &format!(
                "four arms of {} are said to carry more together than the lift, {}",
                both(arm),
                both(lift.capacity)
            ),
            "one arm may carry more than a quarter only where the lift's own manual says so",
            "take both from the same manual; remove `arm_capacity` where it does not say: a quarter \
             of the capacity is taken then",
        );
    }
    let post = lift.post_capacity.filter(|post| *post > lift.capacity);
    if let Some(post) = post {
        good = false;
        f.error(
            f.newer("post_capacity", "capacity"),
            &format!(
                "one post may carry {}, more than the lift's capacity of {}",
                both(post),
                both(lift.capacity)
            ),
            "the lift's capacity is for both posts together",
            "take both from the manual; remove `post_capacity` where it does not say",
        );
    }
    good
}
