//! Do the anchors hold what the posts ask of them?
//!
//! A screening by the anchor provisions of the concrete code (ACI 318-19, chapter 17), with every
//! factor shown. What the file does not give is the code's low value where the code has one, else
//! it is not known. What fails here is not settled: the maker's manual and a test report of the
//! anchor may allow what a screening cannot show.

pub mod area;
pub mod european;
pub mod given;
pub mod group;
mod hold;
pub mod limits;
pub mod line;
mod measure;
pub mod post;
mod pull_out;
mod section;
pub mod shear;
pub(super) mod show;
mod sideways;
pub mod tension;
mod test_hole;
#[cfg(test)]
pub(super) mod tests;

pub(super) use section::section;
