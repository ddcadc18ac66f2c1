//! Which pulled anchors break out together, and how much does their cone of concrete hold?
//!
//! ACI 318-19, 17.6.2, in inches, pounds-force and psi. Anchors whose cones overlap are one group;
//! only those that are pulled count (17.5.1.3.1). Where three or more edges are near the code lets
//! the embedment be taken smaller, which gives more strength; that is not done here.

use super::area::{Cut, union_area};
use super::tension::{Placing, basic_breakout_lbf, psi_cp, psi_ec, psi_ed, whole_cone_in2};

/// A pulled anchor: where it stands in plan, inches, and its pull, lbf.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pulled {
    /// Place in plan, inches.
    pub at_in: [f64; 2],
    /// Its pull, lbf; more than zero.
    pub pull_lbf: f64,
}

/// An edge, joint or crack in plan, inches: all are taken as the end of the concrete.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Line {
    /// One end.
    pub from_in: [f64; 2],
    /// The other end.
    pub to_in: [f64; 2],
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

/// Of some points the one nearest to a line, the line's point nearest to it, and their distance.
pub(in crate::ground) fn nearest(
    points: &[[f64; 2]],
    line: &Line,
) -> Option<([f64; 2], [f64; 2], f64)> {
    let (a, b) = (line.from_in, line.to_in);
    let along = [b[0] - a[0], b[1] - a[1]];
    let square = along[0] * along[0] + along[1] * along[1];
    points
        .iter()
        .map(|p| {
            let t = if square > 0.0 {
                let dot = (p[0] - a[0]) * along[0] + (p[1] - a[1]) * along[1];
                (dot / square).clamp(0.0, 1.0)
            } else {
                0.0
            };
            let q = [a[0] + t * along[0], a[1] + t * along[1]];
            (*p, q, (q[0] - p[0]).hypot(q[1] - p[1]))
        })
        .min_by(|one, other| one.2.total_cmp(&other.2))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(found: f64, expected: f64, within: f64) {
        assert!((found - expected).abs() <= within, "{found} not {expected}");
    }

    fn square(size: f64, pulls: [f64; 4]) -> Vec<Pulled> {
        [[0.0, 0.0], [size, 0.0], [0.0, size], [size, size]]
            .iter()
            .zip(pulls)
            .map(|(at, pull_lbf)| Pulled {
                at_in: *at,
                pull_lbf,
            })
            .collect()
    }

    const CAST: Setting = Setting {
        hef_in: 4.5,
        placing: Placing::CastIn,
        tested_kc: None,
        cracked: true,
        fc_psi: 4000.0,
        lambda_a: 1.0,
        critical_edge_in: 18.0,
    };

    const POST: Setting = Setting {
        hef_in: 3.25,
        placing: Placing::PostInstalled,
        fc_psi: 3000.0,
        ..CAST
    };

    #[test]
    fn four_studs_near_an_edge() {
        // PCA notes on the concrete code, group in tension near an edge (from memory; arithmetic
        // redone): four 1/2 in studs 6 in by 6 in, hef 4.5 in, 4000 psi, first row 3 in from an
        // edge. ANc 15.75 x 19.5 = 307, ANco 182, psi_ed 0.833, Nb 14,490, Ncbg 20,348 (20,287 with
        // rounded factors), 0.70 of it 14,244 (14,201).
        let edge = Line {
            from_in: [-3.0, -200.0],
            to_in: [-3.0, 200.0],
        };
        let found = breakouts(&square(6.0, [3500.0; 4]), &[edge], &CAST);
        assert_eq!(found.len(), 1);
        let cone = &found[0];
        assert_eq!(cone.anchors, 4);
        near(cone.pull_lbf, 14_000.0, 1e-9);
        near(cone.area_in2, 15.75 * 19.5, 1e-9);
        near(cone.whole_in2, 182.25, 1e-9);
        near(cone.psi_ed, 0.8333, 5e-5);
        near(cone.psi_ec, 1.0, 1e-12);
        near(cone.psi_c, 1.0, 0.0);
        near(cone.psi_cp, 1.0, 0.0);
        near(cone.basic_lbf, 14_490.0, 0.5);
        near(cone.strength_lbf, 20_348.0, 1.0);
        near(0.70 * cone.strength_lbf, 14_244.0, 1.0);
        near(cone.strength_lbf, 20_287.0, 0.005 * 20_287.0);
        assert_eq!(cone.edge_in, Some(3.0));
    }

    #[test]
    fn four_post_installed_without_edges() {
        // (8 + 9.75)^2 = 315.06, 3.314 of 9 x 3.25^2, Ncbg 18,081 lbf: worked out.
        let found = breakouts(&square(8.0, [1000.0; 4]), &[], &POST);
        let cone = &found[0];
        near(cone.area_in2, 315.06, 0.005);
        near(cone.area_in2 / cone.whole_in2, 3.314, 5e-4);
        near(cone.strength_lbf, 18_081.0, 1.0);
        assert_eq!(cone.edge_in, None);
    }

    #[test]
    fn uneven_pulls_weigh_on_both_axes() {
        // All of the pull on two anchors' side but a tenth: e = 8 x (0.9 - 0.5) = 3.2 in.
        let found = breakouts(&square(8.0, [100.0, 900.0, 100.0, 900.0]), &[], &POST);
        let cone = &found[0];
        near(cone.eccentricity_in[0], 3.2, 1e-9);
        near(cone.eccentricity_in[1], 0.0, 1e-9);
        near(cone.psi_ec, 1.0 / (1.0 + 3.2 / 4.875), 1e-9);
        let both = &breakouts(&square(8.0, [100.0, 100.0, 100.0, 1700.0]), &[], &POST)[0];
        near(both.psi_ec, (1.0_f64 / (1.0 + 3.2 / 4.875)).powi(2), 1e-9);
    }

    #[test]
    fn anchors_far_apart_break_out_alone() {
        let found = breakouts(&square(10.0, [1.0, 2.0, 3.0, 4.0]), &[], &POST);
        assert_eq!(found.len(), 4);
        for cone in found {
            near(cone.strength_lbf, cone.basic_lbf, 1e-9);
        }
    }

    #[test]
    fn a_crack_between_them_leaves_nothing() {
        let crack = Line {
            from_in: [4.0, -20.0],
            to_in: [4.0, 20.0],
        };
        let cone = &breakouts(&square(8.0, [1.0; 4]), &[crack], &POST)[0];
        assert!(cone.parted);
        near(cone.strength_lbf, 0.0, 0.0);
        let under = Line {
            from_in: [0.0, -20.0],
            to_in: [0.0, 20.0],
        };
        assert!(breakouts(&square(8.0, [1.0; 4]), &[under], &POST)[0].parted);
    }

    #[test]
    fn uncracked_concrete_holds_more_unless_it_splits() {
        let uncracked = Setting {
            cracked: false,
            critical_edge_in: 13.0,
            ..POST
        };
        let cone = &breakouts(&square(8.0, [1.0; 4]), &[], &uncracked)[0];
        near(cone.psi_c, 1.4, 0.0);
        near(cone.psi_cp, 1.0, 0.0);
        let edge = Line {
            from_in: [-4.0, -99.0],
            to_in: [-4.0, 99.0],
        };
        let near_edge = &breakouts(&square(8.0, [1.0; 4]), &[edge], &uncracked)[0];
        near(near_edge.psi_cp, 4.875 / 13.0, 1e-9);
        // A tested factor stands for its own kind of concrete.
        let tested = Setting {
            tested_kc: Some(21.0),
            ..uncracked
        };
        near(
            breakouts(&square(8.0, [1.0; 4]), &[], &tested)[0].psi_c,
            1.0,
            0.0,
        );
    }
}
