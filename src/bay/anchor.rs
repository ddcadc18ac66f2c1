//! The anchors under a base plate, as manual and test report know them.

use crate::units::{Area, Force, Length, Pressure, Torque};

/// How an anchor holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AnchorKind {
    /// A bolt whose cone spreads a clip as it is tightened.
    Wedge,
    /// A bolt in a sleeve that spreads as it is tightened.
    Sleeve,
    /// A sleeve that is spread by driving a plug.
    DropIn,
    /// One that bears on a groove cut into the concrete.
    Undercut,
    /// A screw that cuts its thread into the concrete.
    Screw,
    /// A rod glued in.
    Adhesive,
    /// A headed bolt set before the concrete.
    CastIn,
}

/// What is known of the anchors beside diameter, place and depth. All alike.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Anchor {
    /// How they hold.
    pub kind: Option<AnchorKind>,
    /// Depth to where the anchor bears on the concrete, h<sub>ef</sub>: less than the depth of
    /// the hole and of the embedded part.
    pub effective_embedment: Option<Length>,
    /// Tensile strength of the steel, f<sub>uta</sub>.
    pub tensile_strength: Option<Pressure>,
    /// Yield strength of the steel, f<sub>ya</sub>.
    pub yield_strength: Option<Pressure>,
    /// Effective area of the steel, A<sub>se</sub>.
    pub stress_area: Option<Area>,
    /// Whether the steel is ductile by the concrete code.
    pub ductile: Option<bool>,
    /// Category 1, 2 or 3 of the test report.
    pub category: Option<u8>,
    /// Effectiveness factor k<sub>c</sub> of the test report, for inches, psi and pounds-force.
    pub kc: Option<f64>,
    /// Whether the concrete may be cracked where they stand, and whether `kc` and `pull_out` are for
    /// cracked concrete. False counts only where the slab is shown to stay uncracked.
    pub cracked: Option<bool>,
    /// Characteristic pull-out strength of the test report, N<sub>p</sub>, for this concrete.
    pub pull_out: Option<Force>,
    /// Bearing area of a cast-in anchor's head, A<sub>brg</sub>.
    pub bearing_area: Option<Area>,
    /// Tightening torque as the anchor's maker gives it.
    pub torque: Option<Torque>,
    /// Least spacing from product data.
    pub min_spacing: Option<Length>,
    /// Least edge distance from product data.
    pub min_edge: Option<Length>,
    /// Least thickness of the concrete from product data, at this embedment.
    pub min_thickness: Option<Length>,
    /// Critical edge distance from product data, c<sub>ac</sub>.
    pub critical_edge: Option<Length>,
}
