//! Can people get out, walk round, stand under the vehicle, and shut the door?

mod people;
mod section;

pub use people::{
    sits_under_m, stands_under_m, tallest_percentile_sitting, tallest_percentile_standing,
};
pub(super) use section::section;
pub use section::{posture, tall};
