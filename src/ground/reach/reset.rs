//! Which other setting of the pads would keep arms and pads off the vehicle?

use super::propose::touching;
use super::{Reset, kit, points_m, rooms_m};
use crate::bay::Bay;
use crate::clearance::StudyError;
use crate::clearance::gap::Solver;
use crate::clearance::uncertainty::Uncertainty;
use crate::units::Length;

/// Settings looked at, at most.
const MOST: usize = 12;

/// The setting nearest to the one in the file on which the body stands level and nothing touches,
/// with at most one adapter to a pad; and how many were looked at.
///
/// # Errors
/// When the vehicle's place is not known.
pub(super) fn pads(
    bay: &Bay,
    uncertainty: Uncertainty,
    solver: &mut Solver,
) -> Result<Reset, StudyError> {
    let (kit, points) = (kit(bay), points_m(bay));
    let raises = bay.parking.pad_raise.map(Length::m);
    let rooms = rooms_m(bay, &uncertainty)?;
    let least = points.into_iter().fold(f64::INFINITY, f64::min);
    let above = points.map(|point| point - least);
    let screw = bay.lift.pad.screw_travel.m();
    let bare = std::iter::once(0.0);
    let stacks = bare.chain(bay.lift.pad.adapters.iter().map(|height| height.m()));
    let mut commons: Vec<f64> = stacks
        .flat_map(|stack| [0.0, 0.5, 1.0].map(|share| stack + share * screw))
        .collect();
    let now = raises[0] - above[0];
    commons.sort_by(|a, b| (a - now).abs().total_cmp(&(b - now).abs()));
    commons.dedup();
    let mut tried = 0;
    for common in commons {
        let sets = above.map(|above| kit.set(above + common));
        let [Some(a), Some(b), Some(c), Some(d)] = sets else {
            continue;
        };
        let sets = [a, b, c, d];
        let fits =
            (0..4).all(|i| sets[i].adapters_m.len() < 2 && sets[i].raise_m <= raises[i] + rooms[i]);
        let is_as_now = (0..4).all(|i| (sets[i].raise_m - raises[i]).abs() < 1e-6);
        if !fits || is_as_now {
            continue;
        }
        if tried == MOST {
            break;
        }
        tried += 1;
        let mut set = bay.clone();
        set.parking.pad_raise = [0, 1, 2, 3].map(|i| Length::metres(sets[i].raise_m));
        if touching(&set, uncertainty, solver)?.is_none() {
            return Ok((Some(Box::new(sets)), tried));
        }
    }
    Ok((None, tried))
}
