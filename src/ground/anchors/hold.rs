//! Does each anchor and each group hold its pull?

use super::european;
use super::given::Given;
use super::group::{Breakout, Pulled, breakouts};
use super::limits::{phi_concrete, phi_steel};
use super::post::Post;
use super::show::{LINES, REPORT, greatest, inches, lbf, screened, sq_in};
use super::tension::{Placing, counted_futa_psi, steel_lbf};
use crate::ground::{Bound, Figure, Quantity, Said};
use crate::units::Rounding;

/// On all of the pull: the vehicle is a live load, and what else acts is taken with it
/// (ACI 318-19, 5.3.1).
pub(super) const LOAD_FACTOR: f64 = 1.6;

/// Pulls of a post that act together, with the load factor, lbf: each anchor that is pulled while
/// the post turns to the front, and to the rear.
pub(super) fn pulled(post: &Post) -> Option<[Vec<Pulled>; 2]> {
    let forces = post.forces.as_ref()?;
    Some([0, 1].map(|case: usize| {
        let pairs = post.at_in.iter().zip(&forces.pulls_lbf[case]);
        pairs
            // No number counts as a pull.
            .filter(|(_, pull)| **pull > 0.0 || pull.is_nan())
            .map(|(at, pull)| Pulled {
                at_in: *at,
                pull_lbf: LOAD_FACTOR * pull,
            })
            .collect()
    }))
}

/// The greatest pull on one anchor, lbf; no number stays no number.
pub(super) fn most_lbf(pulled: &[Vec<Pulled>; 2]) -> f64 {
    greatest(pulled.iter().flatten().map(|one| one.pull_lbf))
}

/// The steel of the anchor that is pulled most.
pub(super) fn steel(given: &Given, most: f64) -> Vec<Figure> {
    const ID: &str = "steel";
    const WHAT: &str = "pull on the steel of one anchor";
    const SOURCE: &str = "ACI 318-19, 17.6.1";
    let Some((area, futa, fya)) = given.steel() else {
        let missing = given.steel_missing().join(", ");
        return vec![
            Figure::unknown(
                ID,
                WHAT,
                format!("get from the anchor's maker what is missing of its steel: {missing}"),
            )
            .source(SOURCE),
        ];
    };
    let phi = phi_steel(given.anchor.ductile == Some(true), true);
    let nominal = steel_lbf(area, futa, fya);
    let mut factor = Figure::noted(
        "steel.phi",
        "φ of the steel in tension",
        Quantity::Number(phi),
    )
    .source("ACI 318-19, Table 17.5.3(a)");
    if given.anchor.ductile.is_none() {
        factor = factor.note("the file does not say that it is ductile: taken as brittle");
    }
    let holds = Figure::judged(ID, WHAT, lbf(most), Bound::AtMost, lbf(phi * nominal));
    vec![
        Figure::noted(
            "steel.futa",
            "tensile strength counted, futa",
            Quantity::Pressure(counted_futa_psi(futa, fya) * crate::units::PA_PER_PSI),
        )
        .source("at most 1.9 fya and 125 ksi: ACI 318-19, 17.6.1.2")
        .rounded(Rounding::Down),
        Figure::noted("steel.area", "stress area, Ase", sq_in(area)).rounded(Rounding::Down),
        Figure::noted("steel.strength", "steel strength, Nsa", lbf(nominal))
            .source(SOURCE)
            .rounded(Rounding::Down),
        factor,
        screened(holds.source(SOURCE), REPORT),
    ]
}

/// The cone of the group that is used most.
pub(super) fn cone(given: &Given, post: &Post, pulled: &[Vec<Pulled>; 2]) -> Vec<Figure> {
    const ID: &str = "cone";
    const WHAT: &str = "pull on the cone of concrete";
    const SOURCE: &str = "ACI 318-19, 17.6.2";
    let unknown = |how: &'static str| vec![Figure::unknown(ID, WHAT, how).source(SOURCE)];
    let Some(thickness) = post.thickness_in else {
        return unknown("read the slab's thickness in two holes near each plate");
    };
    let Some(fc) = post.fc_psi else {
        return unknown(
            "give strength and age of the concrete: from the delivery note, or from a test of the slab",
        );
    };
    let Some(setting) = given.setting(thickness, fc) else {
        return unknown("give diameter and embedment of the anchors, from the lift's manual");
    };
    let use_of = |cone: &Breakout| cone.pull_lbf / cone.strength_lbf;
    let groups = pulled
        .iter()
        .flat_map(|case| breakouts(case, &post.lines, &setting));
    let Some(worst) = groups.max_by(|a, b| use_of(a).total_cmp(&use_of(b))) else {
        return Vec::new();
    };
    let phi = phi_concrete(setting.placing == Placing::CastIn, given.category());
    let mut out = factors(given, &setting, &worst, phi);
    let holds = Figure::judged(
        ID,
        WHAT,
        lbf(worst.pull_lbf),
        Bound::AtMost,
        lbf(phi * worst.strength_lbf),
    )
    .source(SOURCE);
    let holds = if worst.parted {
        holds.undecided(
            "a joint, a crack or an edge runs between the anchors that are pulled: nothing is \
             counted for them; move the lift or ask a licensed engineer",
        )
    } else if !post.lines_known {
        screened(holds, REPORT).undecided(LINES)
    } else {
        screened(holds, REPORT)
    };
    out.push(holds);
    out
}

/// Every factor of the cone.
fn factors(
    given: &Given,
    setting: &super::group::Setting,
    cone: &Breakout,
    phi: f64,
) -> Vec<Figure> {
    let number = |id: &'static str, what: &'static str, value: f64, section: &'static str| {
        Figure::noted(id, what, Quantity::Number(value)).source(section)
    };
    let mut depth = Figure::noted(
        "cone.hef",
        "effective embedment counted, hef",
        inches(setting.hef_in),
    )
    .rounded(Rounding::Down);
    if given.is_shortened() {
        depth = depth.note(
            "the embedment written, less one diameter below the part that bears, as the file \
             gives no `effective_embedment` (common practice, no source); no more than 17.9.4 \
             lets count in this slab",
        );
    }
    let mut kc = number(
        "cone.kc",
        "kc, for inches and pounds",
        cone.kc,
        "ACI 318-19, 17.6.2.2.1",
    );
    if given.anchor.kc.is_some() && given.anchor.kc == given.tested_kc() {
        kc = kc.source("the anchor's test report");
    } else if given.anchor.kc.is_some() {
        kc =
            kc.note("the test report's is for uncracked concrete, which this is not shown to stay");
    }
    let mut psi_c = number("cone.psi_c", "ψc,N", cone.psi_c, "ACI 318-19, 17.6.2.5");
    if given.claims_too_much() {
        psi_c = psi_c.note(
            "the file says uncracked, but the slab is not shown to stay so under the plates (see \
             its bending): the concrete is taken as cracked",
        );
    } else if given.anchor.cracked.is_none() {
        psi_c = psi_c.note("the concrete is taken as cracked");
    }
    let mut reduction = number(
        "cone.phi",
        "φ of the concrete",
        phi,
        "ACI 318-19, Table 17.5.3(b)",
    );
    if given.anchor.category.is_none() && setting.placing == Placing::PostInstalled {
        reduction = reduction.note("the category is not given: the lowest, 3, is taken");
    }
    let mut edge = number("cone.psi_ed", "ψed,N", cone.psi_ed, "ACI 318-19, 17.6.2.4");
    if let Some(distance) = cone.edge_in {
        edge = edge.note(
            Said::new("the nearest edge, joint, crack or drain is ")
                .down(inches(distance))
                .and(" from the group; all are taken as edges"),
        );
    }
    let european = given.metric.then(|| {
        let cast_in = setting.placing == Placing::CastIn;
        let mpa = setting.fc_psi * crate::units::PA_PER_PSI / 1e6;
        let hef_mm = setting.hef_in * crate::units::M_PER_INCH * 1e3;
        let newtons = european::cone_n(european::k1(cast_in, setting.cracked), mpa, hef_mm);
        Figure::noted(
            "cone.european",
            "one anchor's cone, N0Rk,c, characteristic",
            Quantity::Force(newtons),
        )
        .source("EN 1992-4, 7.2.1.4; for comparison, it decides nothing")
        .rounded(Rounding::Down)
    });
    let [across, along] = cone.eccentricity_in;
    let count = cone.anchors;
    let mut out = vec![
        depth,
        Figure::noted("cone.area", "ANc, of the group", sq_in(cone.area_in2))
            .source("ACI 318-19, 17.6.2.1")
            .note(match count {
                1 => "it breaks out alone".to_string(),
                _ => format!("{count} anchors break out together"),
            })
            .rounded(Rounding::Down),
        Figure::noted("cone.whole", "ANco, of one anchor", sq_in(cone.whole_in2))
            .source("ACI 318-19, 17.6.2.1.4")
            .rounded(Rounding::Up),
        number("cone.psi_ec", "ψec,N", cone.psi_ec, "ACI 318-19, 17.6.2.3").note(
            Said::new("the pull lies ")
                .up(inches(across))
                .and(" across and ")
                .up(inches(along))
                .and(" along the bay from the group's middle"),
        ),
        edge,
        psi_c,
        number("cone.psi_cp", "ψcp,N", cone.psi_cp, "ACI 318-19, 17.6.2.6"),
        number(
            "cone.lambda",
            "λa, concrete of normal weight",
            setting.lambda_a,
            "ACI 318-19, 17.2.4",
        ),
        kc,
        Figure::noted("cone.basic", "one anchor's cone, Nb", lbf(cone.basic_lbf))
            .source("ACI 318-19, 17.6.2.2")
            .rounded(Rounding::Down),
        Figure::noted(
            "cone.strength",
            "the group's cone, Ncbg",
            lbf(cone.strength_lbf),
        )
        .source("ACI 318-19, 17.6.2.1")
        .rounded(Rounding::Down),
        reduction,
    ];
    out.extend(european);
    out
}
