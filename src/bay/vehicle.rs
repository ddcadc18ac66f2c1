//! The vehicle: outline, wheels, lift points, masses.
//!
//! Places on the vehicle: `station` runs rearward from the front bumper, `across` to the
//! vehicle's right, heights above the ground at ride height.

use super::Side;
use crate::units::{Angle, Length, Mass};

/// A vehicle.
#[derive(Debug, Clone, PartialEq)]
pub struct Vehicle {
    /// What it is called.
    pub name: String,
    /// Its shape in broad terms; for drawing.
    pub style: BodyStyle,
    /// Overall length.
    pub length: Length,
    /// Body width without mirrors.
    pub body_width: Length,
    /// Overall height without attached things.
    pub height: Length,
    /// The mirrors; none when folded or missing.
    pub mirrors: Option<Mirrors>,
    /// Wheelbase.
    pub wheelbase: Length,
    /// From the front bumper to the front axle.
    pub front_overhang: Length,
    /// Track, front and rear, between tyre middles.
    pub track: [Length; 2],
    /// Tyre diameter.
    pub tyre_diameter: Length,
    /// Tyre width.
    pub tyre_width: Length,
    /// The outline over the body, from the front bumper to the rear, straight between stations.
    pub roof: Vec<RoofStation>,
    /// Height up to which the body keeps its full width; above it narrows to the roof stations.
    pub belt: Length,
    /// Height of the body's underside along its sides.
    pub sill: Length,
    /// What hangs lower than the sill.
    pub underbody: Vec<LowPart>,
    /// Things fixed to the body: racks, boxes, ladders, load.
    pub attached: Vec<AttachedPart>,
    /// Parts that open.
    pub opening_parts: Vec<OpeningPart>,
    /// On which side of the vehicle the driver sits; none when not known.
    pub driver: Option<Side>,
    /// Droop of the front and the rear axle: how far the wheels hang below ride height.
    pub droop: [Length; 2],
    /// The four lift points: vehicle front left, front right, rear left, rear right.
    pub lift_points: [LiftPoint; 4],
    /// Axle loads at the kerb, front and rear; none when not known.
    pub axle_loads: Option<[Mass; 2]>,
    /// Cargo and removed parts.
    pub masses: Vec<NamedMass>,
    /// Height of the centre of gravity at the kerb.
    pub cg_height: Option<CgHeight>,
}

/// The shape in broad terms.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BodyStyle {
    /// Small car with a hatch.
    Hatch,
    /// Saloon.
    Saloon,
    /// Two-door coupé.
    Coupe,
    /// Estate.
    Estate,
    /// Sport utility.
    Suv,
    /// Pickup.
    Pickup,
    /// Panel van.
    Van,
    /// Camper on a van.
    Camper,
}

/// Door mirrors, both alike.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Mirrors {
    /// Width over both mirrors.
    pub width_over: Length,
    /// Station of their middle.
    pub station: Length,
    /// Height of their lower edge.
    pub bottom: Length,
    /// Height of their upper edge.
    pub top: Length,
    /// Size along the vehicle.
    pub depth: Length,
}

/// One station of the roof outline.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RoofStation {
    /// From the front bumper.
    pub station: Length,
    /// Height of the outline here.
    pub height: Length,
    /// Half the width at this height.
    pub half_width: Length,
}

/// A low part that is no longer than this and lies under an axle sinks with it, where the file does not say
/// what it goes with: a beam, a housing, arms. Longer ones are frames, engines and exhausts, which do not.
const LONGEST_OF_AN_AXLE: Length = Length::mm(1200.0);

impl Vehicle {
    /// The axle with whose wheels a low part sinks, 0 front, 1 rear; none of what keeps its height to the
    /// body.
    #[must_use]
    pub fn sinks_with(&self, part: &LowPart) -> Option<usize> {
        match part.hangs_with {
            Some(HangsWith::Body) => None,
            Some(HangsWith::Front) => Some(0),
            Some(HangsWith::Rear) => Some(1),
            None if part.to - part.from > LONGEST_OF_AN_AXLE => None,
            None => {
                let front = self.front_overhang;
                let axles = [front, front + self.wheelbase];
                axles
                    .into_iter()
                    .position(|station| part.from <= station && station <= part.to)
            }
        }
    }
}

/// What a low part goes with once the vehicle is on the pads.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum HangsWith {
    /// The body: it keeps its height to it.
    Body,
    /// The wheels of the front axle: it sinks as far as they do.
    Front,
    /// The wheels of the rear axle.
    Rear,
}

/// Something under the body that hangs lower than its sides.
#[derive(Debug, Clone, PartialEq)]
pub struct LowPart {
    /// Its name, without a slash.
    pub name: String,
    /// Where it starts, from the front bumper.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
    /// Half its width about the vehicle's middle.
    pub half_width: Length,
    /// Height of its underside.
    pub height: Length,
    /// What it goes with; none where the file does not say, see [`Vehicle::sinks_with`].
    pub hangs_with: Option<HangsWith>,
}

/// A box fixed to the body.
#[derive(Debug, Clone, PartialEq)]
pub struct AttachedPart {
    /// Its name, without a slash.
    pub name: String,
    /// Where it starts, from the front bumper; may be negative (ahead of it).
    pub from: Length,
    /// Where it ends.
    pub to: Length,
    /// Middle, to the vehicle's right.
    pub across: Length,
    /// Width.
    pub width: Length,
    /// Height of its underside.
    pub bottom: Length,
    /// Height of its top.
    pub top: Length,
}

/// Which part opens, and so where its hinge lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OpeningKind {
    /// A hood hinged at its rear edge.
    Hood,
    /// A hatch hinged at its front, upper edge.
    Hatch,
    /// A tailgate hinged at its lower edge.
    Tailgate,
    /// The left side's front door, hinged at its front edge.
    DoorLeft,
    /// The right side's front door, hinged at its front edge.
    DoorRight,
}

/// A part that opens: a flat panel from its hinge to its free edge.
#[derive(Debug, Clone, PartialEq)]
pub struct OpeningPart {
    /// Its name, without a slash.
    pub name: String,
    /// Which part.
    pub kind: OpeningKind,
    /// Station of the hinge.
    pub hinge: Length,
    /// Height of the hinge; for a door, of its lower edge.
    pub hinge_height: Length,
    /// Hinge to free edge when shut: along the vehicle for hood and doors; for hatch and tailgate
    /// measured along the panel.
    pub length: Length,
    /// Width of a hood, hatch or tailgate; height of a door.
    pub width: Length,
    /// Angle of the shut panel, from level toward the free edge, positive upward (a tailgate shut
    /// stands at 90 degrees, a hatch hangs at a negative angle).
    pub shut: Angle,
    /// How far it opens.
    pub opens: Angle,
}

/// One lift point.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LiftPoint {
    /// From the front bumper.
    pub station: Length,
    /// From the vehicle's middle line, outward.
    pub half_spacing: Length,
    /// Above the ground at ride height.
    pub height: Length,
}

/// Cargo (positive) or a removed part (negative).
#[derive(Debug, Clone, PartialEq)]
pub struct NamedMass {
    /// Its name.
    pub name: String,
    /// Added mass; negative for a part that was taken out.
    pub mass: Mass,
    /// From the front bumper.
    pub station: Length,
    /// To the vehicle's right.
    pub across: Length,
    /// Above the ground.
    pub height: Option<Length>,
    /// True when it is so all the while the vehicle is up: cargo that nobody unloads then, a part
    /// that came out before.
    pub stays: bool,
}

/// Height of the centre of gravity and how it is known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CgHeight {
    /// Above the ground at ride height.
    pub height: Length,
    /// True when it is an estimate, not a measurement.
    pub estimated: bool,
}
