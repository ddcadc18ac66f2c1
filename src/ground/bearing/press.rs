//! What does a post press onto the slab, where, and over which part of its plate?
//!
//! Inches and pounds-force, without any load factor.

use crate::bay::{Bay, Lift};
use crate::ground::anchors::post::Forces;
use crate::ground::post_base::{PostBase, presses_at_m};
use crate::units::{M_PER_INCH, N_PER_POUND_FORCE};

/// What a post presses down, while it turns inward and to one end.
#[derive(Debug, Clone, PartialEq)]
pub struct Press {
    /// The plate on the concrete, lbf: with what the anchors' pull adds.
    pub load_lbf: f64,
    /// The rectangle that the load is spread over, across and along the bay.
    pub loaded_in: [f64; 2],
    /// Its middle, from the plate's: inward and to the front.
    pub off_in: [f64; 2],
    /// What the post brings down in all, lbf.
    pub down_lbf: f64,
    /// The moments it brings about the plate's middle, across and along the bay, lbf in.
    pub moments_lbf_in: [f64; 2],
    /// The part of the plate that carries a load in its middle, across and along the bay.
    pub whole_in: [f64; 2],
    /// What the anchors pull up with at the same time, lbf, in their order.
    pub pulls_lbf: Vec<f64>,
}

/// How far from a plate's middle lie, inward (or outward) and to an end: the column's face, and
/// the plate's edge. A turned column is taken as it reaches.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Edge {
    face_in: f64,
    plate_in: f64,
}

impl Edge {
    /// Where the plate presses when it turns that way: as the post's base takes it.
    fn presses_in(self) -> f64 {
        presses_at_m(self.face_in, self.plate_in)
    }

    /// How far it stands out past the column.
    fn overhang_in(self) -> f64 {
        2.0 * (self.plate_in - self.presses_in())
    }
}

/// Inward, outward, and to either end.
fn edges(lift: &Lift) -> [Edge; 3] {
    let (plate, column) = (&lift.base_plate, &lift.column);
    let (sin, cos) = column.turned.rad().sin_cos();
    let (sin, cos) = (sin.abs(), cos.abs());
    let (width, depth) = (column.width.in_inches(), column.depth.in_inches());
    let half_x = 0.5 * (width * cos + depth * sin);
    let half_y = 0.5 * (width * sin + depth * cos);
    let inward = plate.inward.in_inches();
    let edge = |face_in: f64, size: f64| Edge {
        face_in,
        plate_in: 0.5 * size,
    };
    [
        edge(half_x - inward, plate.width.in_inches()),
        edge(half_x + inward, plate.width.in_inches()),
        edge(half_y, plate.depth.in_inches()),
    ]
}

impl Press {
    /// What a post presses while it turns inward and to the front, and inward and to the rear.
    ///
    /// In the middle of its column a plate carries as far as halfway to its edges (ACI 318-19,
    /// Table 13.2.7.1). A moment moves the load off the middle, as far as the line about which
    /// the plate turns, and leaves so much less to carry on both sides of it; at that line it is
    /// what stands out past the column.
    #[must_use]
    pub fn of(base: &PostBase, forces: &Forces, bay: &Bay) -> [Self; 2] {
        let lift = &bay.lift;
        let [inner, outer, end] = edges(lift);
        let thin = 2.0 * lift.base_plate.thickness.in_inches();
        let axial = base.axial_n / N_PER_POUND_FORCE;
        let (rear, front) = base.moment_along_range_nm;
        let place = |moment_nm: f64, load: f64, to: Edge, whole: f64| {
            let per_inch = moment_nm / N_PER_POUND_FORCE / M_PER_INCH;
            let off = if per_inch < 0.0 { 0.0 } else { per_inch / load };
            let least = if to.overhang_in() < thin {
                thin
            } else {
                to.overhang_in()
            };
            let left = 2.0 * (to.presses_in() - off);
            let spread = if left < least {
                least
            } else if left > whole {
                whole
            } else {
                left
            };
            let off = if off > to.presses_in() {
                to.presses_in()
            } else {
                off
            };
            (spread, off)
        };
        let case = |pulls: &[f64], along_nm: f64, way: f64| {
            let load = axial + pulls.iter().sum::<f64>();
            let across = inner.presses_in() + outer.presses_in();
            let (width, inward) = place(base.moment_across_nm, load, inner, across);
            let (depth, to_end) = place(along_nm, load, end, 2.0 * end.presses_in());
            Self {
                load_lbf: load,
                loaded_in: [width, depth],
                off_in: [inward, way * to_end],
                down_lbf: axial,
                moments_lbf_in: [base.moment_across_nm, along_nm]
                    .map(|nm| nm / N_PER_POUND_FORCE / M_PER_INCH),
                whole_in: [across, 2.0 * end.presses_in()],
                pulls_lbf: pulls.to_vec(),
            }
        };
        [
            case(&forces.pulls_lbf[0], front, 1.0),
            case(&forces.pulls_lbf[1], -rear, -1.0),
        ]
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
