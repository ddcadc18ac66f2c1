//! Can people get out, walk round, stand under the vehicle, and shut the door?

mod people;
mod section;

pub use people::{
    PERCENTILES, Percentile, sits_under_m, stands_under_m, tallest_percentile_standing,
};
pub use section::posture;
pub(super) use section::section;
