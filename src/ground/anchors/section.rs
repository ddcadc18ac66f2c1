//! What is said of the anchors?

use super::given::Given;
use super::hold::{LOAD_FACTOR, cone, most_lbf, pulled, steel};
use super::measure::{asked_depth, depth_in_slab, edge, spacing, through, under_tip};
use super::post::Post;
use super::pull_out::pull_out;
use super::show::{greatest, inches, is_beyond, lbf, worse_of};
use super::sideways::sideways;
use super::test_hole::test_hole;
use crate::bay::{AnchorKind, Bay, Side};
use crate::ground::bearing::stays_uncracked;
use crate::ground::post_base::PostBase;
use crate::ground::slab::{PlateSlab, SlabMap};
use crate::ground::{Figure, Quantity, Said, Section, Standing, Topic};
use crate::units::Rounding;

const GOVERNS: &str = "the lift's manual, the anchor maker's instructions and test report, the local code and a \
     licensed engineer govern";

/// The anchors of both posts. `bases` is what the posts ask of them, none when that could not be
/// worked out.
pub(in crate::ground) fn section(
    bay: &Bay,
    map: &SlabMap,
    slabs: &[PlateSlab; 2],
    bases: Option<&[PostBase; 2]>,
) -> Section {
    let given = Given::of(bay);
    // Only what the file takes as uncracked needs to be shown so.
    let under = |k: usize| Given {
        stays_uncracked: given.anchor.cracked == Some(false)
            && bases.is_some_and(|both| stays_uncracked(bay, map, &slabs[k], &both[k])),
        ..given
    };
    let posts = [Side::Left, Side::Right].map(|side| {
        let k = usize::from(side == Side::Right);
        Post::of(bay, map, side, &slabs[k], bases.map(|both| &both[k]))
    });
    let [left, right] = &posts;
    let figures = if left.at_in.is_empty() {
        vec![Figure::unknown(
            "pattern",
            "places of the anchors",
            "give `anchors` of the base plate: where each hole lies, from the lift's manual",
        )]
    } else {
        worse_of(
            of_post(&under(0), bay, left),
            of_post(&under(1), bay, right),
            "cone",
        )
    };
    Section {
        topic: Topic::Anchors,
        lead: lead(&given, &figures),
        figures,
        notes: vec![
            Said::new(
                "The load is taken as standing still. Impact, loads repeated thousands of times \
                 and earthquake are not looked at. Drill, clean and set each anchor as its maker \
                 says: the figures hold for no other.",
            ),
            Said::new(
                "Not looked at: side-face blowout of headed and undercut anchors deep beside an \
                 edge (ACI 318-19, 17.6.4), and splitting while they are set beyond what spacing \
                 and edge distances keep off.",
            ),
        ],
        governs: Some(GOVERNS),
    }
}

/// The figures of one post.
fn of_post(given: &Given, bay: &Bay, post: &Post) -> Vec<Figure> {
    let mut out = vec![kind(given)];
    out.extend(asked_depth(given, &bay.lift));
    out.extend(through(given, post));
    out.extend(under_tip(given, post));
    out.extend(depth_in_slab(given, post));
    out.extend(spacing(given, post));
    out.extend(edge(given, post));
    out.extend(test_hole(given, post));
    match pulled(post) {
        None => out.push(Figure::unknown(
            "pull",
            "pull on the anchors",
            "it needs the loads on the pads, which are not known in full",
        )),
        Some(pulled) => {
            let most = most_lbf(&pulled);
            out.push(
                Figure::noted(
                    "load_factor",
                    "load factor on the vehicle",
                    number(LOAD_FACTOR),
                )
                .source("ACI 318-19, 5.3.1: a live load"),
            );
            let sums = pulled
                .iter()
                .map(|case| case.iter().map(|one| one.pull_lbf).sum());
            let total = greatest(sums);
            let pull = Figure::noted("pull", "pull on the anchors of a post", lbf(total))
                .note("with the load factor; what the post base says, as it was worked out there");
            out.push(pull.rounded(Rounding::Up));
            let mut held = Vec::new();
            if !(pulled[0].is_empty() && pulled[1].is_empty()) {
                held.extend(steel(given, most));
                held.extend(cone(given, post, &pulled));
                held.extend(pull_out(given, post, most));
            }
            let beside = sideways(given, post, &held);
            out.extend(held);
            out.extend(beside);
        }
    }
    out.extend(torque(given));
    out
}

const fn number(value: f64) -> Quantity {
    Quantity::Number(value)
}

const fn kind_words(kind: AnchorKind) -> &'static str {
    match kind {
        AnchorKind::Wedge => "wedge anchors",
        AnchorKind::Sleeve => "sleeve anchors",
        AnchorKind::DropIn => "drop-in anchors",
        AnchorKind::Undercut => "undercut anchors",
        AnchorKind::Screw => "screw anchors",
        AnchorKind::Adhesive => "adhesive anchors",
        AnchorKind::CastIn => "headed bolts cast in",
    }
}

/// Which anchors they are.
fn kind(given: &Given) -> Figure {
    const WHAT: &str = "anchors";
    let Some(kind) = given.anchor.kind else {
        return Figure::unknown(
            "kind",
            "kind of anchor",
            "look into the lift's manual for kind, diameter and embedment, then get the anchor's \
             test report and product data from its maker",
        );
    };
    let words = Quantity::Words(kind_words(kind).into());
    let figure = Figure::noted("kind", WHAT, words);
    match given.diameter_in {
        Some(diameter) => figure.note(Said::new("diameter ").near(inches(diameter))),
        None => figure,
    }
}

/// The torque as the maker gives it: for want of it nothing is guessed.
fn torque(given: &Given) -> Option<Figure> {
    const WHAT: &str = "tightening torque";
    if let Some(torque) = given.anchor.torque {
        return Some(
            Figure::noted("torque", WHAT, Quantity::Moment(torque.si()))
                .source("the anchor's maker, as the file gives it"),
        );
    }
    let tightened = !matches!(
        given.anchor.kind,
        Some(AnchorKind::Adhesive | AnchorKind::CastIn | AnchorKind::Screw)
    );
    tightened.then(|| {
        Figure::unknown(
            "torque",
            WHAT,
            "get it from the anchor's maker: too little leaves the anchor loose, too much strips \
             it or cracks the slab, and no usual figure is shown in its place",
        )
    })
}

/// The plain sentence.
fn lead(given: &Given, figures: &[Figure]) -> Said {
    let standing = figures.iter().map(|one| one.standing).max();
    let stops = figures.iter().find(|one| one.standing == Standing::Stops);
    match stops {
        Some(first) if first.id == "embedment.asked" => {
            return Said::new("The anchors are not set as the lift's manual asks.");
        }
        Some(first) => {
            let said = Said::new("The anchors can't be set like that: ");
            return Said([said.0, first.why().0].concat()).and(".");
        }
        _ if !given.told => {
            return Said::new(
                "The anchors could not be screened in full: the file does not say which they are \
                 (their kind, steel and test report). Do not raise a vehicle on anchors that \
                 nobody can name.",
            );
        }
        _ => {}
    }
    let failing = figures
        .iter()
        .find(|one| one.standing == Standing::Unknown && is_beyond(one));
    if let Some(failing) = failing {
        return Said::new(format!(
            "The screening does not show that the anchors hold ({}). That is not settled either \
             way: the lift's manual and the anchor's test report may allow what a screening can't \
             show.",
            failing.what
        ));
    }
    if standing == Some(Standing::Unknown) {
        let open: Vec<&str> = figures
            .iter()
            .filter(|one| one.standing == Standing::Unknown)
            .map(|one| one.what.as_ref())
            .collect();
        return Said::new(format!(
            "Nothing speaks against the anchors so far, but not all is known: {}.",
            open.join("; ")
        ));
    }
    Said::new(
        "By the screening the anchors hold what the posts ask of them, if they are set as their \
         maker says.",
    )
}
