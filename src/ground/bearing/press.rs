//! What does a post press onto the slab, and over which part of its plate?
//!
//! Inches and pounds-force, without any load factor.

use crate::bay::Lift;
use crate::ground::post_base::PostBase;
use crate::units::{M_PER_INCH, N_PER_POUND_FORCE};

/// What a post presses down.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Press {
    /// The plate on the concrete, lbf: with what the anchors' pull adds.
    pub load_lbf: f64,
    /// The rectangle that the load is spread over, across and along the bay.
    pub loaded_in: [f64; 2],
}

/// The part of a plate that carries a load in the middle of its column: halfway between the
/// column's outline and the plate's edges (ACI 318-19, Table 13.2.7.1). Of a turned column the
/// lesser side counts both ways.
#[must_use]
pub fn loaded_in(lift: &Lift) -> [f64; 2] {
    let (plate, column) = (&lift.base_plate, &lift.column);
    let (width, depth) = (column.width.in_inches(), column.depth.in_inches());
    let lesser = width.min(depth);
    let turned = column.turned.rad().abs() > 1e-9;
    let sides = if turned { [lesser; 2] } else { [width, depth] };
    let sizes = [plate.width.in_inches(), plate.depth.in_inches()];
    let off = [plate.inward.in_inches(), 0.0];
    [0, 1].map(|axis| {
        [off[axis], -off[axis]]
            .into_iter()
            .map(|off| {
                let (column, plate) = (0.5 * sides[axis], 0.5 * sizes[axis] + off);
                // A plate that ends under the column carries to its edge.
                if plate < column {
                    plate
                } else {
                    0.5 * (column + plate)
                }
            })
            .sum()
    })
}

impl Press {
    /// What a post presses. The load moves off the middle as its moments ask, less what the
    /// anchors' pull balances; it is spread evenly around where it then stands, over twice the
    /// plate's thickness at least.
    #[must_use]
    pub fn of(base: &PostBase, lift: &Lift) -> Self {
        let whole = loaded_in(lift);
        let least = 2.0 * lift.base_plate.thickness.in_inches();
        let moments = [base.moment_across_nm, base.moment_along_nm];
        let loaded_in = [0, 1].map(|axis| {
            let balanced: f64 = base
                .anchors
                .iter()
                .map(|one| one.tension_n * one.at_m[axis])
                .sum();
            let off = (moments[axis].abs() - balanced.abs()).abs() / base.compression_n;
            let spread = whole[axis] - 2.0 * off / M_PER_INCH;
            if spread < least { least } else { spread }
        });
        Self {
            load_lbf: base.compression_n / N_PER_POUND_FORCE,
            loaded_in,
        }
    }

    /// Its area, sq in.
    #[must_use]
    pub fn area_in2(&self) -> f64 {
        self.loaded_in[0] * self.loaded_in[1]
    }

    /// Radius of the circle of the same area, inches.
    #[must_use]
    pub fn radius_in(&self) -> f64 {
        (self.area_in2() / std::f64::consts::PI).sqrt()
    }
}
