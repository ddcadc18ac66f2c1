//! What is asked of the slab where two sources ask it?

use crate::bay::{Lift, SlabDemand};

/// Who asks something of the slab.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Asker {
    /// The lift maker's manual.
    Manual,
    /// An advertisement or another source that is not the manual.
    Advertised,
}

/// One thing asked of the slab, in SI.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Demand {
    /// What governs: the more demanding of the two.
    pub value: f64,
    /// Whose word governs; the manual's where both say the same.
    pub by: Asker,
    /// What the manual says.
    pub manual: Option<f64>,
    /// What the other source says.
    pub advertised: Option<f64>,
}

impl Demand {
    /// The more demanding of two sources; none when neither asks anything.
    #[must_use]
    pub fn of(manual: Option<f64>, advertised: Option<f64>) -> Option<Self> {
        let (value, by) = match (manual, advertised) {
            (Some(manual), Some(other)) if other > manual => (other, Asker::Advertised),
            (Some(manual), _) => (manual, Asker::Manual),
            (None, Some(other)) => (other, Asker::Advertised),
            (None, None) => return None,
        };
        Some(Self {
            value,
            by,
            manual,
            advertised,
        })
    }

    /// True when the manual is silent: holding what an advertisement says proves nothing.
    #[must_use]
    pub const fn manual_is_silent(&self) -> bool {
        self.manual.is_none()
    }
}

/// All that is asked of the slab.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Demands {
    /// Thickness, metres.
    pub thickness: Option<Demand>,
    /// Compressive strength, pascals.
    pub strength: Option<Demand>,
    /// Distance of an anchor from joint, crack and edge, metres.
    pub edge: Option<Demand>,
    /// Age of the concrete, days.
    pub age: Option<Demand>,
}

impl Demands {
    /// What manual and advertisement of a lift ask.
    #[must_use]
    pub fn of(lift: &Lift) -> Self {
        let of = |read: fn(&SlabDemand) -> Option<f64>| {
            Demand::of(read(&lift.manual), read(&lift.advertised))
        };
        Self {
            thickness: of(|demand| demand.thickness.map(|t| t.m())),
            strength: of(|demand| demand.strength.map(|s| s.si())),
            edge: of(|demand| demand.edge_distance.map(|d| d.m())),
            age: of(|demand| demand.age_days),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_more_demanding_governs() {
        // Common practice, no source: 4 in advertised against 7 in in the manual gives 7 in.
        let demand = Demand::of(Some(7.0), Some(4.0)).unwrap();
        assert_eq!((demand.value, demand.by), (7.0, Asker::Manual));
        // And the other way round: the model's definition, not the manual for its own sake.
        let demand = Demand::of(Some(4.0), Some(7.0)).unwrap();
        assert_eq!((demand.value, demand.by), (7.0, Asker::Advertised));
        assert_eq!(demand.manual, Some(4.0), "both are kept to be shown");
        let demand = Demand::of(None, Some(4.0)).unwrap();
        assert!(demand.manual_is_silent());
        assert_eq!(Demand::of(None, None), None);
    }
}
