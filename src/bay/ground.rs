//! What is known of the slab and of the electric supply.

use jiff::civil::Date;

use crate::units::{Current, Length, Pressure, Subgrade, Voltage};

/// What is known of the slab.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Slab {
    /// Thickness readings at drilled holes, or taken from the form before pouring.
    pub readings: Vec<SlabReading>,
    /// What the slab is said to be, by someone who did not drill.
    pub claimed_thickness: Option<Length>,
    /// Compressive strength at 28 days or more.
    pub strength: Option<Pressure>,
    /// Age in days on the day that the file is read for; never given beside `poured`.
    pub age_days: Option<f64>,
    /// The day it was poured.
    pub poured: Option<Date>,
    /// How the concrete was cured; none when not known.
    pub curing: Option<Curing>,
    /// The day wanted for drilling and setting the anchors.
    pub drill_on: Option<Date>,
    /// The day wanted for the first raise: the slab is counted as it is then, and nothing is called
    /// safe before.
    pub load_on: Option<Date>,
    /// Outline corners; empty: the room's outline.
    pub outline: Vec<[Length; 2]>,
    /// Joints, cracks, edges and drains as lines.
    pub lines: Vec<SlabLine>,
    /// True when the file lists the lines, be it an empty list: someone has looked.
    pub lines_listed: bool,
    /// Post-tensioned; none when not known.
    pub post_tensioned: Option<bool>,
    /// Heating in the slab; none when not known.
    pub heated: Option<bool>,
    /// Services in or under the slab; none when not known.
    pub buried_services: Option<bool>,
    /// A void or a room below; none when not known.
    pub void_below: Option<bool>,
    /// Modulus of subgrade reaction of the ground under it.
    pub subgrade: Option<Subgrade>,
    /// A floor that spans between supports instead of lying on the ground; none when not known.
    pub suspended: Option<bool>,
    /// A pad to be poured in its place.
    pub new_pad: Option<NewPad>,
}

/// How concrete was cured, with the cement that goes with it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Curing {
    /// Kept moist, ordinary (type I) cement.
    Moist,
    /// Steam-cured, ordinary (type I) cement.
    Steam,
}

/// A pad that is to be poured.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NewPad {
    /// How many alike.
    pub count: usize,
    /// Size one way, in plan.
    pub length: Length,
    /// Size the other way, in plan.
    pub width: Length,
    /// Depth of concrete.
    pub depth: Length,
    /// Compressive strength ordered.
    pub strength: Option<Pressure>,
    /// What is ordered over what the form holds, as a share of it.
    pub waste: f64,
}

impl NewPad {
    /// The waste where the file does not say it; common practice, no source.
    pub const USUAL_WASTE: f64 = 0.10;
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
    /// What the motor's overload protection is set to.
    pub overload: Option<Current>,
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
