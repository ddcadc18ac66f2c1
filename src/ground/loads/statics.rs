//! How does a rigid body share its weight over four pads?
//!
//! Three equations hold for four loads: their sum is the weight, and they balance about two axes.
//! What is left open is the *twist*: load that moves from one pair of opposite pads to the other
//! and changes neither sum nor balance. Pads push and never pull, so the twist has two ends, at
//! each of which a pad has nothing left to give: there the body stands on three pads. Between them
//! the loads depend on how stiff everything is; with four equal springs the twist is the one of
//! least squares.

use glam::DVec2;

/// Loads this far below nothing (as a share of the weight) are rounding.
const ROUNDING: f64 = 1e-12;

/// The loads of four pads in plan. Forces in the unit of the weight, places in metres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shares {
    /// On four equal springs, in the order of the pads; where one would have to pull, that one
    /// carries nothing and three carry all.
    pub springs: [f64; 4],
    /// The pad that four springs would have to pull down.
    pub lifts: Option<usize>,
    /// At the two ends of the twist, where a pad carries nothing.
    pub ends: [[f64; 4]; 2],
}

/// The loads of four pads at `pads` under a weight that acts at `cg`; none where no loads that
/// push can carry it (it acts outside the pads' span), the pads lie in one line, or something is
/// no number.
#[must_use]
pub fn share(pads: [DVec2; 4], cg: DVec2, weight: f64) -> Option<Shares> {
    let free = springs(pads, cg, weight)?;
    let twist = twist(pads)?;
    let rounding = weight.abs() * ROUNDING;
    let (mut low, mut high) = (f64::NEG_INFINITY, f64::INFINITY);
    for (load, way) in free.into_iter().zip(twist) {
        if way > 1e-9 {
            low = low.max(-load / way);
        } else if way < -1e-9 {
            high = high.min(-load / way);
        } else if load < -rounding {
            // A pad that no twist moves is one of three that fix everything.
            return None;
        }
    }
    if !(low.is_finite() && high.is_finite()) || low > high + rounding {
        return None;
    }
    let at = |t: f64| std::array::from_fn(|i| twist[i].mul_add(t, free[i]).max(0.0));
    let settled = 0.0_f64.max(low).min(high.max(low));
    let least = (0..4).min_by(|&a, &b| free[a].total_cmp(&free[b]))?;
    Some(Shares {
        springs: at(settled),
        lifts: (free[least] < -rounding).then_some(least),
        ends: [at(low), at(high.max(low))],
    })
}

/// The loads on four equal springs that can pull as well as push: each load is affine in its pad's
/// place. None when the pads lie in one line.
///
/// For pads that mirror each other about both axes this is the known
/// `R = W/4 + M_x·x/Σx² + M_y·y/Σy²` with `M_x = W·cg.x`, `M_y = W·cg.y` from the pads' middle.
#[must_use]
pub fn springs(pads: [DVec2; 4], cg: DVec2, weight: f64) -> Option<[f64; 4]> {
    let middle = pads.iter().sum::<DVec2>() / 4.0;
    let (mut xx, mut xy, mut yy) = (0.0, 0.0, 0.0);
    for pad in pads {
        let from = pad - middle;
        xx += from.x * from.x;
        xy += from.x * from.y;
        yy += from.y * from.y;
    }
    let determinant = xx * yy - xy * xy;
    // Against the square of the spread, so that no unit matters.
    let spread = xx + yy;
    if determinant.is_nan() || determinant <= 1e-12 * spread * spread {
        return None;
    }
    let arm = cg - middle;
    let per_x = (arm.x * yy - arm.y * xy) / determinant;
    let per_y = (arm.y * xx - arm.x * xy) / determinant;
    let loads = pads.map(|pad| {
        let from = pad - middle;
        weight * (0.25 + from.x * per_x + from.y * per_y)
    });
    loads.iter().all(|load| load.is_finite()).then_some(loads)
}

/// The loads that change neither sum nor balance, the largest 1: the areas of the triangles that
/// the other three make, with alternating signs.
fn twist(pads: [DVec2; 4]) -> Option<[f64; 4]> {
    let area = |a: usize, b: usize, c: usize| (pads[b] - pads[a]).perp_dot(pads[c] - pads[a]);
    let raw = [area(1, 2, 3), -area(0, 2, 3), area(0, 1, 3), -area(0, 1, 2)];
    let largest = raw.iter().fold(0.0_f64, |most, one| most.max(one.abs()));
    (largest > 0.0).then(|| raw.map(|one| one / largest))
}

/// The loads of three pads under a weight, in their order; a pad that would have to pull has a
/// negative one. None when the three lie in one line.
#[must_use]
pub fn three(pads: [DVec2; 3], cg: DVec2, weight: f64) -> Option<[f64; 3]> {
    // Twice the areas of the triangle and of those that the weight makes with each side: each pad
    // carries the share of the triangle across from it.
    let [to_b, to_c] = [pads[1] - pads[0], pads[2] - pads[0]];
    let area = to_b.perp_dot(to_c);
    let longest = to_b.length().max(to_c.length());
    if area.is_nan() || area.abs() <= 1e-6 * longest * longest {
        return None;
    }
    let across_from = |one: DVec2, other: DVec2| (one - cg).perp_dot(other - cg);
    let loads = [
        across_from(pads[1], pads[2]),
        across_from(pads[2], pads[0]),
        across_from(pads[0], pads[1]),
    ]
    .map(|share| weight * (share / area));
    loads.iter().all(|load| load.is_finite()).then_some(loads)
}

/// How far a place lies inside the span of the pads (the hull of their places), metres: to the
/// nearest edge, negative outside.
#[must_use]
pub fn inside_m(pads: [DVec2; 4], place: DVec2) -> f64 {
    let mut nearest = f64::INFINITY;
    for from in 0..4 {
        for to in 0..4 {
            let along = (pads[to] - pads[from]).normalize_or_zero();
            // An edge of the hull has all pads on its left.
            let is_edge = from != to
                && along != DVec2::ZERO
                && pads
                    .iter()
                    .all(|&pad| along.perp_dot(pad - pads[from]) >= -1e-12);
            if is_edge {
                nearest = nearest.min(along.perp_dot(place - pads[from]));
            }
        }
    }
    // Without an edge there is no span, and nothing lies inside.
    if nearest.is_finite() {
        nearest
    } else {
        f64::NEG_INFINITY
    }
}

#[cfg(test)]
mod tests;
