//! What does each post ask of its base plate and anchors?

use crate::bay::Side;

/// What one post asks of its base at its worst. N, N m.
#[derive(Debug, Clone, PartialEq)]
pub struct PostBase {
    /// Which post.
    pub side: Side,
    /// Down, with the column's and carriage's weight share where known.
    pub axial_n: f64,
    /// Sideways.
    pub shear_n: f64,
    /// About the y axis: pads pull inward.
    pub moment_across_nm: f64,
    /// About the x axis.
    pub moment_along_nm: f64,
    /// In the order of the base plate's anchors.
    pub anchors: Vec<AnchorForce>,
    /// What the plate presses on the concrete.
    pub compression_n: f64,
}

/// What one anchor gets.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AnchorForce {
    /// Inward, front from the plate's middle.
    pub at_m: [f64; 2],
    /// Pull.
    pub tension_n: f64,
    /// Sideways.
    pub shear_n: f64,
}
