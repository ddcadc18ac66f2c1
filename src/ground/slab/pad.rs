//! What does a new pad take: concrete, mass, bags, a ready-mix order?

use crate::bay::NewPad;
use crate::units::{KG_PER_POUND, M_PER_FOOT};

/// Normal-weight concrete, kg/m3; a usual round figure, from memory.
pub(super) const DENSITY_KG_M3: f64 = 2_400.0;
/// A bag of dry mix, kilograms: 80 lb.
pub(super) const BAG_KG: f64 = 80.0 * KG_PER_POUND;
/// Concrete that such a bag yields, m3: about 0.60 cu ft, from memory; the bag says it.
pub(super) const BAG_YIELD_M3: f64 = 0.60 * M_PER_FOOT * M_PER_FOOT * M_PER_FOOT;

/// The figures of some pads alike.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PadWork {
    /// What the forms hold, m3.
    pub volume_m3: f64,
    /// Mass of that, kg.
    pub mass_kg: f64,
    /// The share ordered over it.
    pub waste: f64,
    /// Bags of `BAG_KG`, waste counted, whole.
    pub bags: f64,
    /// A ready-mix order, waste counted, m3.
    pub order_m3: f64,
}

impl PadWork {
    /// Of the pads that are wanted.
    #[must_use]
    #[allow(clippy::cast_precision_loss)] // at most a hundred
    pub fn of(pad: &NewPad) -> Self {
        let volume_m3 = pad.count as f64 * pad.length.m() * pad.width.m() * pad.depth.m();
        let waste = pad.waste;
        let order_m3 = volume_m3 * (1.0 + waste);
        Self {
            volume_m3,
            mass_kg: volume_m3 * DENSITY_KG_M3,
            waste,
            // A millionth of a bag is noise of the conversion.
            bags: (order_m3 / BAG_YIELD_M3 - 1e-6).ceil(),
            order_m3,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Length;

    #[test]
    fn two_pads_by_hand() {
        // Two of 4 ft by 4 ft by 1 ft: 32 cu ft = 0.906139 m3, 2174.73 kg; with a tenth over it
        // 35.2 cu ft, 58.67 bags of 0.60 cu ft.
        let mut pad = NewPad {
            count: 2,
            length: Length::feet(4.0),
            width: Length::feet(4.0),
            depth: Length::feet(1.0),
            strength: None,
            waste: NewPad::USUAL_WASTE,
        };
        let work = PadWork::of(&pad);
        assert!((work.volume_m3 - 0.906_139).abs() < 1e-6);
        assert!((work.mass_kg - 2_174.73).abs() < 0.01);
        assert!((work.order_m3 - 0.996_753).abs() < 1e-6);
        assert_eq!(work.bags as u32, 59);
        // 3 cu ft and no waste are five bags, not six.
        pad.count = 1;
        pad.length = Length::feet(3.0);
        pad.width = Length::feet(1.0);
        pad.waste = 0.0;
        assert_eq!(PadWork::of(&pad).bags as u32, 5);
    }
}
