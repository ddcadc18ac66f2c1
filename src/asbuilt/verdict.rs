//! What stands against a safe lock beside the study: readings that can't be trusted, and the
//! manual's limits of plumb and shims.

use super::snoop::State;
use super::{AsBuilt, IN_STUDY, SIDES, index};
use crate::bay::{Bay, PlateCorner, Side};

/// Comparing what was converted to metres and back: a hair.
const NOISE_M: f64 = 1e-9;

/// One thing that stands against it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Finding {
    /// A reading does not fit: its place in the file's list.
    Misfit(usize),
    /// One of several readings is wrong; this is one of them.
    Suspect(usize),
    /// Nothing else checks a reading.
    Unchecked(usize),
    /// A post's plumb was not read: across the bay, or along it.
    PlumbNotRead(Side, bool),
    /// The bay file has no limit of the manual for the plumb.
    NoPlumbLimit,
    /// A post leans more than the manual lets it: by how much over its height, and the limit.
    OutOfPlumb(Side, f64, f64),
    /// It may, by the ± of the reading.
    MaybeOutOfPlumb(Side, f64, f64),
    /// Shims lie there or are wanted, and the bay file has no limit of the manual for them.
    NoShimLimit,
    /// A stack that lies there or is wanted is higher than the manual lets it be.
    ShimsTooHigh(PlateCorner, f64, f64),
    /// The floor under both plates was not levelled: how much higher one post stands is not known.
    NotLevelled,
}

impl Finding {
    /// True where the posts can't be used as they stand; else it is not known.
    #[must_use]
    pub const fn stops(self) -> bool {
        matches!(self, Self::OutOfPlumb(..) | Self::ShimsTooHigh(..))
    }
}

/// Everything that stands against a safe lock beside the study.
#[must_use]
pub fn findings(bay: &Bay, built: &AsBuilt) -> Vec<Finding> {
    let mut found = Vec::new();
    for (at, one) in built.readings.iter().enumerate() {
        match one.state {
            State::Misfit => found.push(Finding::Misfit(at)),
            State::Suspect => found.push(Finding::Suspect(at)),
            State::Unchecked => found.push(Finding::Unchecked(at)),
            State::Fits => {}
        }
    }
    let high = bay.lift.column.height.m();
    for side in SIDES {
        let [across, along] = built.leans[index(side)];
        for (lean, is_across) in [(across, true), (along, false)] {
            if lean.is_none() {
                found.push(Finding::PlumbNotRead(side, is_across));
            }
        }
        let slope = |lean: Option<super::Lean>| lean.map_or(0.0, |lean| lean.slope.abs());
        let most = |lean: Option<super::Lean>| {
            lean.map_or(0.0, |lean| lean.slope.abs() + IN_STUDY * lean.sd)
        };
        let out = slope(across).hypot(slope(along)) * high;
        let at_most = most(across).hypot(most(along)) * high;
        let Some(limit) = bay.lift.plumb_limit else {
            continue;
        };
        if out > limit.m() + NOISE_M {
            found.push(Finding::OutOfPlumb(side, out, limit.m()));
        } else if at_most > limit.m() + NOISE_M {
            found.push(Finding::MaybeOutOfPlumb(side, at_most, limit.m()));
        }
    }
    if bay.lift.plumb_limit.is_none() {
        found.push(Finding::NoPlumbLimit);
    }
    let mut any = false;
    for post in &built.shims {
        let wanted = post.wanted_m.unwrap_or([0.0; 4]);
        for (number, (now, wanted)) in (1_u8..).zip(post.now_m.into_iter().zip(wanted)) {
            let most = now.max(wanted);
            // Less than the thinnest shim is none.
            any |= most > THINNEST_M;
            if let Some(limit) = bay.lift.shim_limit
                && most > limit.m() + NOISE_M
            {
                let side = post.side;
                let at = PlateCorner { side, number };
                found.push(Finding::ShimsTooHigh(at, most, limit.m()));
            }
        }
    }
    if any && bay.lift.shim_limit.is_none() {
        found.push(Finding::NoShimLimit);
    }
    if built.standing.right_higher_m.is_none() {
        found.push(Finding::NotLevelled);
    }
    found
}

/// The thinnest shim in use, metres. Common practice, no source.
const THINNEST_M: f64 = 0.000_5;
