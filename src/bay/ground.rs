//! What is known of the slab and of the electric supply.

use crate::units::{Current, Length, Pressure, Voltage};

/// What is known of the slab.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Slab {
    /// Thickness readings at drilled holes.
    pub readings: Vec<SlabReading>,
    /// What the slab is said to be, by someone who did not drill.
    pub claimed_thickness: Option<Length>,
    /// Compressive strength.
    pub strength: Option<Pressure>,
    /// Age in days.
    pub age_days: Option<f64>,
    /// Outline corners; empty: the room's outline.
    pub outline: Vec<[Length; 2]>,
    /// Joints, cracks, edges and drains as lines.
    pub lines: Vec<SlabLine>,
    /// Post-tensioned; none when not known.
    pub post_tensioned: Option<bool>,
    /// Heating in the slab; none when not known.
    pub heated: Option<bool>,
    /// Services in or under the slab; none when not known.
    pub buried_services: Option<bool>,
    /// A void or a room below; none when not known.
    pub void_below: Option<bool>,
}

/// One thickness reading.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SlabReading {
    /// Across.
    pub x: Length,
    /// Into the bay.
    pub y: Length,
    /// Thickness found.
    pub thickness: Length,
}

/// What a line on the slab is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SlabLineKind {
    /// A joint.
    Joint,
    /// A crack.
    Crack,
    /// A free edge.
    Edge,
    /// A drain.
    Drain,
}

/// A line on the slab.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SlabLine {
    /// What it is.
    pub kind: SlabLineKind,
    /// One end.
    pub from: [Length; 2],
    /// The other end.
    pub to: [Length; 2],
}

/// What is known of the electric supply.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PowerSupply {
    /// Voltage.
    pub voltage: Option<Voltage>,
    /// Breaker rating.
    pub breaker: Option<Current>,
    /// Length of the run, panel to motor.
    pub run: Option<Length>,
    /// The conductors of that run.
    pub conductor: Option<Conductor>,
}

/// Copper conductors by their size in the American wire gauge.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Conductor {
    /// 14 AWG.
    Awg14,
    /// 12 AWG.
    Awg12,
    /// 10 AWG.
    Awg10,
    /// 8 AWG.
    Awg8,
    /// 6 AWG.
    Awg6,
}
