//! Are published and hand-worked groups reproduced?

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
