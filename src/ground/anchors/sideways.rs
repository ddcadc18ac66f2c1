//! Do the anchors hold the sideways force, alone and beside the pull?

use super::given::Given;
use super::hold::LOAD_FACTOR;
use super::limits::{phi_concrete, phi_steel};
use super::line::nearest;
use super::post::Post;
use super::shear::{
    basic_breakout_lbf, low_breakout_lbf, pry_out_factor, steel_lbf, used_together,
};
use super::show::{LINES, REPORT, greatest, lbf, screened, share_of};
use super::tension::{Placing, counted_futa_psi};
use crate::ground::{Bound, Figure, Quantity, Standing};
use crate::units::Rounding;

/// The figures of the sideways force; `held` are those of the pull.
pub(super) fn sideways(given: &Given, post: &Post, held: &[Figure]) -> Vec<Figure> {
    let Some(forces) = &post.forces else {
        return Vec::new();
    };
    let each = forces
        .sideways_lbf
        .iter()
        .map(|one| LOAD_FACTOR * one.abs());
    let total: f64 = each.clone().sum();
    if total <= 0.0 {
        return vec![
            Figure::noted("shear", "sideways force at the base", lbf(0.0))
                .note("none is reckoned, so that none is screened"),
        ];
    }
    let most = greatest(each);
    let mut out = vec![
        Figure::noted("shear", "sideways force at the base", lbf(total)).rounded(Rounding::Up),
    ];
    out.extend(steel(given, most));
    out.extend(concrete(given, post, total));
    out.push(together(held, &out));
    out
}

fn steel(given: &Given, most: f64) -> Vec<Figure> {
    const WHAT: &str = "sideways force on the steel of one anchor";
    const SOURCE: &str = "ACI 318-19, 17.7.1";
    let Some((area, futa, fya)) = given.steel() else {
        let missing = given.steel_missing().join(", ");
        return vec![
            Figure::unknown(
                "shear.steel",
                WHAT,
                format!("get from the anchor's maker what is missing of its steel: {missing}"),
            )
            .source(SOURCE),
        ];
    };
    let phi = phi_steel(given.anchor.ductile == Some(true), false);
    let nominal = steel_lbf(area, counted_futa_psi(futa, fya), true);
    let figure = Figure::judged(
        "shear.steel",
        WHAT,
        lbf(most),
        Bound::AtMost,
        lbf(phi * nominal),
    );
    vec![
        Figure::noted("shear.steel.strength", "steel in shear, Vsa", lbf(nominal))
            .source(SOURCE)
            .note("0.8 of 0.6 Ase futa: shims may stand under the plate")
            .rounded(Rounding::Down),
        Figure::noted(
            "shear.steel.phi",
            "φ of the steel in shear",
            Quantity::Number(phi),
        )
        .source("ACI 318-19, Table 17.5.3(a)"),
        screened(figure.source(SOURCE), REPORT),
    ]
}

/// Concrete breaking out toward an edge, and prying out behind the anchor. Both are taken low: the
/// whole force on one anchor.
fn concrete(given: &Given, post: &Post, total: f64) -> Vec<Figure> {
    const EDGE: &str = "sideways force toward the nearest edge";
    const PRY: &str = "sideways force that pries out concrete";
    let parts = || {
        let (thickness, fc) = (post.thickness_in?, post.fc_psi?);
        let setting = given.setting(thickness, fc)?;
        let near = post
            .lines
            .iter()
            .filter_map(|line| nearest(&post.at_in, line).map(|found| found.2))
            .min_by(f64::total_cmp)?;
        Some((thickness, setting, near, given.diameter_in?))
    };
    let Some((thickness, setting, near, diameter)) = parts() else {
        const HOW: &str = "give the anchors' size and the slab's thickness and strength";
        return vec![
            Figure::unknown("shear.edge", EDGE, HOW),
            Figure::unknown("shear.pry", PRY, HOW),
        ];
    };
    let fc = setting.fc_psi.min(setting.placing.most_fc_psi());
    let phi = phi_concrete(setting.placing == Placing::CastIn, given.category());
    let basic = basic_breakout_lbf(setting.hef_in, diameter, setting.lambda_a, fc, near);
    let edge = low_breakout_lbf(basic, near, thickness);
    // One anchor's cone, as close to an edge as the nearest is.
    let kc = setting.tested_kc.unwrap_or(setting.placing.kc());
    let alone = super::tension::basic_breakout_lbf(kc, setting.lambda_a, fc, setting.hef_in)
        * super::tension::psi_ed(near, setting.hef_in)
        * (near / (1.5 * setting.hef_in)).min(1.0);
    let pry = pry_out_factor(setting.hef_in) * alone;
    let judged = |id: &'static str, what: &'static str, strength: f64, source: &'static str| {
        let figure = Figure::judged(id, what, lbf(total), Bound::AtMost, lbf(phi * strength));
        let figure = screened(figure.source(source), REPORT);
        if post.lines_known {
            figure
        } else {
            figure.undecided(LINES)
        }
    };
    vec![
        judged(
            "shear.edge",
            EDGE,
            edge,
            "ACI 318-19, 17.7.2, all on one anchor",
        ),
        judged(
            "shear.pry",
            PRY,
            pry,
            "ACI 318-19, 17.7.3, all on one anchor",
        ),
    ]
}

/// Pull and sideways force at once.
fn together(held: &[Figure], sideways: &[Figure]) -> Figure {
    const WHAT: &str = "use of pull and sideways force together";
    let worst = |figures: &[Figure], ids: &[&str]| {
        greatest(ids.iter().filter_map(|id| share_of(figures, id)))
    };
    let pull = worst(held, &["steel", "cone", "pull_out"]);
    let shear = worst(sideways, &["shear.steel", "shear.edge", "shear.pry"]);
    let known = pull.is_finite() && shear.is_finite();
    let open = held
        .iter()
        .chain(sideways)
        .any(|one| one.standing == Standing::Unknown);
    let how = "settle what is not known of pull and sideways force first";
    if !known {
        return Figure::unknown("together", WHAT, how).source("ACI 318-19, 17.8");
    }
    let figure = Figure::judged(
        "together",
        WHAT,
        Quantity::Number(used_together(pull, shear)),
        Bound::AtMost,
        Quantity::Number(1.0),
    );
    let figure = screened(figure.source("ACI 318-19, 17.8"), REPORT);
    if open { figure.undecided(how) } else { figure }
}
