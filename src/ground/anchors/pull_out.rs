//! How much does an anchor hold before it slips or pulls its head through?

use super::given::{Given, REPORTED_FC_PSI};
use super::limits::phi_concrete;
use super::post::Post;
use super::show::{REPORT, lbf, screened};
use super::tension::{Placing, headed_pull_out_lbf};
use crate::bay::AnchorKind;
use crate::ground::{Bound, Figure, Quantity};
use crate::units::Rounding;

/// What the anchor that is pulled most holds before it slips or pulls its head through.
pub(super) fn pull_out(given: &Given, post: &Post, most: f64) -> Vec<Figure> {
    const ID: &str = "pull_out";
    const WHAT: &str = "pull on one anchor before it slips out";
    let cast_in = given.placing() == Placing::CastIn;
    let phi = phi_concrete(cast_in, given.category());
    let head = given.anchor.bearing_area.filter(|_| cast_in);
    let (nominal, source) = match (given.reported_pull_out_lbf(), head, post.fc_psi) {
        (Some(reported), _, _) => (reported, "the anchor's test report; ACI 318-19, 17.6.3"),
        (None, Some(area), Some(fc)) => (
            headed_pull_out_lbf(
                area.si() / super::given::M2_PER_SQ_IN,
                fc.min(Placing::CastIn.most_fc_psi()),
            ),
            "ACI 318-19, 17.6.3.2.2",
        ),
        _ => {
            let how = match given.anchor.kind {
                Some(AnchorKind::Adhesive) => {
                    "the bond of an adhesive anchor is not screened here: get its test report, and \
                     mind that it must hold a lasting pull"
                }
                Some(AnchorKind::CastIn) => {
                    "give the bearing area of the head and the concrete's strength"
                }
                _ => {
                    "what an anchor holds before it slips may come from tests only: get the \
                     anchor's test report and give `pull_out`, `category` and `kc` from it"
                }
            };
            return vec![Figure::unknown(ID, WHAT, how).source("ACI 318-19, 17.6.3")];
        }
    };
    let holds = Figure::judged(ID, WHAT, lbf(most), Bound::AtMost, lbf(phi * nominal));
    let mut holds = screened(holds.source(source), REPORT);
    let reported = given.reported_pull_out_lbf().is_some() && !cast_in;
    if reported && !post.fc_psi.is_some_and(|fc| fc >= REPORTED_FC_PSI) {
        holds = holds.undecided(
            "test reports are for concrete of 2500 psi (17 MPa) and more, which is not known here",
        );
    }
    if reported && given.claims_too_much() {
        holds = holds.undecided(
            "the report's pull-out strength is for uncracked concrete, and the slab is not shown to \
             stay uncracked under the plates: give the one for cracked concrete, and `cracked: true`",
        );
    }
    if given.anchor.kind == Some(AnchorKind::Adhesive) {
        holds = holds.undecided(
            "a lasting pull on an adhesive anchor is not screened here: get its test report, or ask \
             a licensed engineer",
        );
    }
    vec![
        Figure::noted("pull_out.strength", "pull-out strength, Np", lbf(nominal))
            .source(source)
            .rounded(Rounding::Down),
        Figure::noted("pull_out.phi", "φ of pull-out", Quantity::Number(phi))
            .source("ACI 318-19, Table 17.5.3(c)"),
        holds,
    ]
}
