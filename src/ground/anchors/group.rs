//! Which pulled anchors break out together, and how much does their cone of concrete hold?
//!
//! ACI 318-19, 17.6.2, in inches, pounds-force and psi. Anchors whose cones overlap are one group;
//! only those that are pulled count (17.5.1.3.1). Where three or more edges are near the code lets
//! the embedment be taken smaller, which gives more strength; that is not done here.

use super::area::{Cut, union_area};
use super::line::{Line, nearest};
use super::tension::{Placing, basic_breakout_lbf, psi_cp, psi_ec, psi_ed, whole_cone_in2};

/// A pulled anchor: where it stands in plan, inches, and its pull, lbf.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pulled {
    /// Place in plan, inches.
    pub at_in: [f64; 2],
    /// Its pull, lbf; more than zero.
    pub pull_lbf: f64,
}

/// What the anchors are set in and how.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Setting {
    /// Effective embedment that counts, inches.
    pub hef_in: f64,
    /// Cast in or post-installed.
    pub placing: Placing,
    /// k<sub>c</sub> of a test report; none: the code's own.
    pub tested_kc: Option<f64>,
    /// Whether the concrete may be cracked.
    pub cracked: bool,
    /// Compressive strength, psi.
    pub fc_psi: f64,
    /// λ<sub>a</sub>: 1.0 for concrete of normal weight.
    pub lambda_a: f64,
    /// Critical edge distance c<sub>ac</sub>, inches.
    pub critical_edge_in: f64,
}

/// The cone of one group, with every factor.
#[derive(Debug, Clone, PartialEq)]
pub struct Breakout {
    /// How many anchors are in it.
    pub anchors: usize,
    /// Their pull together, lbf.
    pub pull_lbf: f64,
    /// How far the pull's resultant lies from the group's middle, per axis, inches.
    pub eccentricity_in: [f64; 2],
    /// Least distance of one of them from a line, inches; none: no line at all.
    pub edge_in: Option<f64>,
    /// A line runs between them: what they hold together is not known.
    pub parted: bool,
    /// A<sub>Nc</sub>, sq in.
    pub area_in2: f64,
    /// A<sub>Nco</sub>, sq in.
    pub whole_in2: f64,
    /// ψ<sub>ec,N</sub>, the product of both axes'.
    pub psi_ec: f64,
    /// ψ<sub>ed,N</sub>.
    pub psi_ed: f64,
    /// ψ<sub>c,N</sub>.
    pub psi_c: f64,
    /// ψ<sub>cp,N</sub>.
    pub psi_cp: f64,
    /// k<sub>c</sub>.
    pub kc: f64,
    /// N<sub>b</sub>, lbf.
    pub basic_lbf: f64,
    /// N<sub>cbg</sub>, lbf; zero where a line parts the group.
    pub strength_lbf: f64,
}

/// The cones of all pulled anchors.
#[must_use]
pub fn breakouts(pulled: &[Pulled], lines: &[Line], setting: &Setting) -> Vec<Breakout> {
    let mut left: Vec<Pulled> = pulled.to_vec();
    let mut out = Vec::new();
    let reach = 3.0 * setting.hef_in;
    while let Some(first) = left.pop() {
        let mut group = vec![first];
        let mut next = 0;
        while next < group.len() {
            let at = group[next].at_in;
            left.retain(|other| {
                let near = (other.at_in[0] - at[0]).abs() < reach
                    && (other.at_in[1] - at[1]).abs() < reach;
                if near {
                    group.push(*other);
                }
                !near
            });
            next += 1;
        }
        out.push(breakout(&group, lines, setting));
    }
    out
}

/// The cone of anchors that break out together.
fn breakout(group: &[Pulled], lines: &[Line], setting: &Setting) -> Breakout {
    let hef = setting.hef_in;
    let reach = 1.5 * hef;
    let points: Vec<[f64; 2]> = group.iter().map(|one| one.at_in).collect();
    let mut edge_in: Option<f64> = None;
    let mut parted = false;
    let mut cuts = Vec::new();
    for line in lines {
        let Some((from, to, distance)) = nearest(&points, line) else {
            continue;
        };
        edge_in = Some(edge_in.map_or(distance, |least| least.min(distance)));
        if distance >= reach {
            continue;
        }
        if distance < 1e-6 {
            parted = true;
            continue;
        }
        let normal = [(to[0] - from[0]) / distance, (to[1] - from[1]) / distance];
        let cut = Cut {
            normal,
            offset: normal[0] * to[0] + normal[1] * to[1],
        };
        parted |= points.iter().any(|p| cut.inside(*p) < 0.0);
        cuts.push(cut);
    }
    let whole_in2 = whole_cone_in2(hef);
    #[allow(clippy::cast_precision_loss)] // at most a hundred anchors
    let count = group.len() as f64;
    let area_in2 = union_area(&points, reach, &cuts).min(count * whole_in2);
    let pull_lbf: f64 = group.iter().map(|one| one.pull_lbf).sum();
    let eccentricity_in = [0, 1].map(|axis| {
        let middle = points.iter().map(|p| p[axis]).sum::<f64>() / count;
        let moment: f64 = group
            .iter()
            .map(|one| one.pull_lbf * (one.at_in[axis] - middle))
            .sum();
        (moment / pull_lbf).abs()
    });
    let edge = edge_in.unwrap_or(f64::INFINITY);
    let placing = setting.placing;
    let kc = setting.tested_kc.unwrap_or(placing.kc());
    let psi_ec = psi_ec(eccentricity_in[0], hef) * psi_ec(eccentricity_in[1], hef);
    let psi_ed = psi_ed(edge, hef);
    let psi_c = match setting.tested_kc {
        Some(_) => 1.0,
        None => placing.psi_c(setting.cracked),
    };
    let psi_cp = if placing == Placing::CastIn || setting.cracked {
        1.0
    } else {
        psi_cp(edge, hef, setting.critical_edge_in)
    };
    let fc_psi = setting.fc_psi.min(placing.most_fc_psi());
    let basic_lbf = basic_breakout_lbf(kc, setting.lambda_a, fc_psi, hef);
    let strength_lbf = if parted {
        0.0
    } else {
        area_in2 / whole_in2 * psi_ec * psi_ed * psi_c * psi_cp * basic_lbf
    };
    Breakout {
        anchors: group.len(),
        pull_lbf,
        eccentricity_in,
        edge_in,
        parted,
        area_in2,
        whole_in2,
        psi_ec,
        psi_ed,
        psi_c,
        psi_cp,
        kc,
        basic_lbf,
        strength_lbf,
    }
}

#[cfg(test)]
mod tests;
