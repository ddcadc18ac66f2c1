//! Is the slab thick, strong and old enough where the posts stand, and may it be drilled?
//!
//! Thickness is the least reading within 600 mm of a base plate; fewer than two readings there are
//! not known, and what someone says of a slab is never counted for it. What is asked is the more
//! demanding of the lift's manual and its advertisement. Strength goes by age after ACI 209R-92.

mod ages;
mod demand;
mod drilling;
mod map;
mod near;
mod pad;
mod plane;
mod section;
mod strength;

pub use ages::{ADHESIVE_AGE_DAYS, Ages};
pub use demand::{Asker, Demand, Demands};
pub use drilling::{Drilling, Hazard, drilling_allowed};
pub use map::{APART_M, ENOUGH, MapLine, MapPlate, MapReading, REACH_M, SlabMap, plate_rect};
pub use near::{KINDS, Near, anchors_m};
pub use pad::PadWork;
pub use plane::Rect;
pub(super) use section::section;
pub use strength::{FULL_AGE_DAYS, counted, days_to, ratio};

use super::{Date, Quantity, Section, Topic};
use crate::bay::{Bay, Side, Slab, SlabLineKind};

/// The figure of the day from which all that is said holds, where age and strength are counted as of
/// a day of the first raise that lies ahead. It stops: nothing is safe before that day.
pub const HOLDS_ON: &str = "holds_on";

/// The figure of the first day for drilling, where that lies ahead.
pub const DRILL_FROM: &str = "drill_from";

/// The figure of the day wanted for loading.
pub const LOAD_DAY: &str = "load_day";

/// The day from which a study's verdict holds, where that is a later one; none where it holds today.
#[must_use]
pub fn holds_from(sections: &[Section]) -> Option<Date> {
    day_of(sections, HOLDS_ON)
}

/// The first day for drilling, where it lies ahead.
#[must_use]
pub fn drill_from(sections: &[Section]) -> Option<Date> {
    day_of(sections, DRILL_FROM)
}

/// The day of a figure of the slab.
fn day_of(sections: &[Section], id: &str) -> Option<Date> {
    let slab = sections.iter().find(|one| one.topic == Topic::Slab)?;
    match slab.figures.iter().find(|one| one.id == id)?.found {
        Some(Quantity::Day(day)) => Some(day),
        _ => None,
    }
}

/// The slab under one post's base plate.
#[derive(Debug, Clone, PartialEq)]
pub struct PlateSlab {
    /// Which post.
    pub side: Side,
    /// The least reading within 600 mm of the plate, metres; none with fewer than two.
    pub least_thickness_m: Option<f64>,
    /// Places that were read within 600 mm of the plate.
    pub readings_used: usize,
    /// Compressive strength on the day that counts (see [`Ages::day`]), pascals: never more than
    /// that at 28 days; none when strength, age or, before 28 days, cure is not known.
    pub strength_pa: Option<f64>,
    /// From the nearest anchor to the nearest joint, metres; none when there is none, which is
    /// known only where [`PlateSlab::lines_listed`] holds.
    pub nearest_joint_m: Option<f64>,
    /// The same to the nearest crack.
    pub nearest_crack_m: Option<f64>,
    /// The same to the nearest edge, that of the outline too.
    pub nearest_edge_m: Option<f64>,
    /// The same to the nearest drain.
    pub nearest_drain_m: Option<f64>,
    /// True when the file lists joints, cracks and drains, or says that there are none, and gives
    /// the slab's outline.
    pub lines_listed: bool,
    /// True where a joint, a crack, an edge or a drain runs through the plate, or the plate reaches
    /// over the slab's edge.
    pub broken: bool,
}

/// What is known of the slab under the plate of a post, on a day.
#[must_use]
pub fn under_plate(bay: &Bay, side: Side, on: Option<Date>) -> PlateSlab {
    let nothing = Slab::default();
    let slab = bay.slab.as_ref().unwrap_or(&nothing);
    let map = SlabMap::of_slab(bay, slab);
    let near = Near::of(bay, &map, side);
    let demands = Demands::of(&bay.lift);
    PlateSlab {
        side,
        least_thickness_m: map.under_plate_m(side),
        readings_used: map.plate(side).readings_used,
        strength_pa: Ages::of(slab, &demands, &bay.lift.base_plate, on).strength_pa,
        nearest_joint_m: near.distance_m(SlabLineKind::Joint),
        nearest_crack_m: near.distance_m(SlabLineKind::Crack),
        nearest_edge_m: near.distance_m(SlabLineKind::Edge),
        nearest_drain_m: near.distance_m(SlabLineKind::Drain),
        lines_listed: slab.lines_listed && !slab.outline.is_empty() && !map.outline_is_broken,
        broken: near.overhangs || near.through.contains(&true),
    }
}
