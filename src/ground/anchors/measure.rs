//! Do size, place and depth of the anchors keep what manual, product data and code ask?

use super::given::Given;
use super::limits::{least_edge, least_spacing};
use super::line::nearest;
use super::post::Post;
use super::show::{REPORT, inches, screened};
use crate::bay::{AnchorKind, Lift};
use crate::ground::{Bound, Figure, Quantity, Said, Standing};

const MANUAL: &str = "the lift's manual";
const PRODUCT: &str = "the anchor's product data";

/// Depth against what the manual asks: its word stops; an advertisement's does not.
pub(super) fn asked_depth(given: &Given, lift: &Lift) -> Option<Figure> {
    let asked = [
        (lift.manual.embedment, MANUAL),
        (lift.advertised.embedment, "the lift's advertisement"),
    ];
    // The more demanding of both; at a tie the manual.
    let (least, source) = asked
        .into_iter()
        .filter_map(|(depth, source)| Some((depth?, source)))
        .reduce(|one, other| if other.0 > one.0 { other } else { one })?;
    let what = "embedment asked for";
    let Some(embedment) = given.embedment_in else {
        return Some(
            Figure::unknown(
                "embedment.asked",
                what,
                "take the embedment from the anchors that come with the lift, or from its manual",
            )
            .source(source),
        );
    };
    let figure = Figure::judged(
        "embedment.asked",
        what,
        inches(embedment),
        Bound::AtLeast,
        Quantity::Length(least.m()),
    )
    .source(source)
    .cure("longer anchors, if the slab is thick enough for them");
    if figure.standing == Standing::Passes && lift.manual.embedment.is_none() {
        return Some(
            figure.undecided("ask the lift's maker: only an advertisement says what is asked"),
        );
    }
    let manual_holds = lift
        .manual
        .embedment
        .is_none_or(|manual| inches(embedment).number() >= Some(manual.m()));
    Some(if manual_holds {
        screened(figure, "ask the lift's maker which embedment holds")
    } else {
        figure
    })
}

/// Concrete below a bolt that is cast in against the ground, inches (ACI 318-19, Table
/// 20.5.1.3.1; from memory).
const COVER_IN: f64 = 3.0;

/// An anchor as deep as the slab, or deeper, holds in nothing: no product data allow that. A
/// single reading that is too thin counts.
pub(super) fn through(given: &Given, post: &Post) -> Option<Figure> {
    let deepest = given.tip_in()?;
    let thinnest = post.thinnest_in?;
    if deepest < thinnest {
        return None;
    }
    let (depth, slab) = (inches(deepest), inches(thinnest));
    let mut figure = Figure::judged(
        "embedment.through",
        "embedment in the thickness of the slab",
        depth.clone(),
        Bound::AtMost,
        slab.clone(),
    )
    .source("geometry")
    .reason(
        Said::new("anchors ")
            .up(depth)
            .and(" deep go through the slab, which was found ")
            .down(slab)
            .and(" thick"),
    )
    .cure("pour pads thick enough for these anchors, or get a lift whose manual asks shorter ones");
    figure.standing = Standing::Stops;
    Some(figure)
}

/// Too little concrete under the tips of anchors that are drilled in: the back of the slab breaks
/// out while the hole is drilled. A single reading that is too thin counts; none where there is
/// enough, and where they go through.
pub(super) fn under_tip(given: &Given, post: &Post) -> Option<Figure> {
    let left = post.thinnest_in? - given.tip_in()?;
    let asked = given.under_tip_in()?;
    (left > 0.0 && left < asked).then(|| {
        Figure::judged(
            "embedment.under",
            "concrete under the tips of the anchors",
            inches(left),
            Bound::AtLeast,
            inches(asked),
        )
        .source("1 1/4 in or two diameters, whichever is more: common practice, no source")
        .undecided(
            "the hole comes so near to the ground that the back of the slab may break out: take \
             shorter anchors that the manual allows, pour pads, or have the anchor's maker say in \
             writing that this depth holds in this thickness",
        )
    })
}

/// Depth against the slab's thickness: product data, else the code's rule.
pub(super) fn depth_in_slab(given: &Given, post: &Post) -> Option<Figure> {
    const FIND: &str = "read the slab's thickness in two holes near each plate";
    if let Some(least) = given.anchor.min_thickness {
        let what = "slab thickness for these anchors";
        let Some(thickness) = post.thickness_in else {
            return Some(Figure::unknown("thickness", what, FIND).source(PRODUCT));
        };
        let figure = Figure::judged(
            "thickness",
            what,
            inches(thickness),
            Bound::AtLeast,
            Quantity::Length(least.m()),
        );
        return Some(screened(figure.source(PRODUCT), REPORT));
    }
    const WHAT: &str = "embedment in a slab so thick";
    const SOURCE: &str = "ACI 318-19, 17.9.4";
    let cast_in = given.anchor.kind == Some(AnchorKind::CastIn);
    if !cast_in && !super::limits::depth_is_limited(given.anchor.kind) {
        return None;
    }
    let source = if cast_in {
        "ACI 318-19, Table 20.5.1.3.1: 3 in of concrete against the ground, from memory"
    } else {
        SOURCE
    };
    let Some(embedment) = given.limited_in() else {
        return Some(Figure::unknown(
            "embedment.slab",
            WHAT,
            "give `anchor_embedment` of the base plate, from the lift's manual",
        ));
    };
    let Some(thickness) = post.thickness_in else {
        return Some(Figure::unknown("embedment.slab", WHAT, FIND).source(source));
    };
    let most = if cast_in {
        thickness - COVER_IN
    } else {
        super::limits::most_embedment_in(thickness)
    };
    let figure = Figure::judged(
        "embedment.slab",
        WHAT,
        inches(embedment),
        Bound::AtMost,
        inches(most),
    )
    .source(source);
    if cast_in {
        return Some(screened(figure, REPORT));
    }
    Some(screened(
        figure,
        "the code's rule does not cover so deep an anchor in so thin a slab, and no more than the \
         rule's depth is counted below. The manual may still allow it: get the anchor's test \
         report for this thickness",
    ))
}

/// The closest two anchors.
pub(super) fn spacing(given: &Given, post: &Post) -> Option<Figure> {
    let least = post
        .at_in
        .iter()
        .enumerate()
        .flat_map(|(k, a)| {
            let rest = post.at_in[k + 1..].iter();
            rest.map(move |b| (a[0] - b[0]).hypot(a[1] - b[1]))
        })
        .min_by(f64::total_cmp)?;
    let (asked, source) = match given.anchor.min_spacing {
        Some(product) => (Some(product.in_inches()), PRODUCT),
        None => (
            given.diameter_in.map(|diameter| {
                let depth = given.limited_in().unwrap_or(f64::INFINITY);
                least_spacing(given.anchor.kind, diameter, depth)
            }),
            "ACI 318-19, Table 17.9.2(a)",
        ),
    };
    let what = "spacing of the closest anchors";
    let Some(asked) = asked.filter(|asked| asked.is_finite()) else {
        return Some(Figure::unknown("spacing", what, SIZE).source(source));
    };
    let figure = Figure::judged(
        "spacing",
        what,
        inches(least),
        Bound::AtLeast,
        inches(asked),
    );
    Some(screened(figure.source(source), REPORT))
}

const SIZE: &str = "give diameter and embedment of the anchors, from the lift's manual";

/// The anchor nearest to an edge, joint, crack or drain.
pub(super) fn edge(given: &Given, post: &Post) -> Option<Figure> {
    let least = post
        .lines
        .iter()
        .filter_map(|line| nearest(&post.at_in, line).map(|found| found.2))
        .min_by(f64::total_cmp);
    let (asked, source) = match given.anchor.min_edge {
        Some(product) => (Some(product.in_inches()), PRODUCT),
        None => (
            given
                .diameter_in
                .map(|diameter| least_edge(given.anchor.kind, diameter)),
            "ACI 318-19, Table 17.9.2(b), and no less than 3 in: cover of a side cast against \
             ground, and twice an aggregate of 1 1/2 in",
        ),
    };
    let what = "an anchor to the nearest edge, joint or crack";
    let (Some(least), Some(asked)) = (least, asked) else {
        return Some(Figure::unknown("edge", what, SIZE).source(source));
    };
    let figure = Figure::judged("edge", what, inches(least), Bound::AtLeast, inches(asked));
    let figure = screened(figure.source(source), REPORT);
    Some(if !post.lines_known {
        figure.undecided(super::show::LINES)
    } else if figure.standing == Standing::Passes && least - post.measured_in < asked {
        figure
            .note(
                Said::new("as written it holds, but places are measured to ")
                    .up(inches(post.measured_in))
                    .and(" only"),
            )
            .undecided("mark the anchor holes on the floor and measure from them")
    } else {
        figure
    })
}
