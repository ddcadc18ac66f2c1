//! What is known of the anchors under the base plates?

use super::all;
use super::checks::both;
use super::fields::Fields;
use super::readers::{Flag, Read, area, custom, force, number, pressure, size, torque, words};
use crate::bay::{Anchor, AnchorKind, BasePlate};
use crate::units::{Kind, Pressure, show_quantity};

const KINDS: &[(&str, AnchorKind)] = &[
    ("Wedge", AnchorKind::Wedge),
    ("Sleeve", AnchorKind::Sleeve),
    ("DropIn", AnchorKind::DropIn),
    ("Undercut", AnchorKind::Undercut),
    ("Screw", AnchorKind::Screw),
    ("Adhesive", AnchorKind::Adhesive),
    ("CastIn", AnchorKind::CastIn),
];

/// Reads the anchors' record; what is left out is not known.
pub(super) fn anchor(f: &Fields<'_>) -> Option<Anchor> {
    let read = all!(Anchor {
        kind: f.maybe("kind", &words("a kind of anchor", KINDS)),
        effective_embedment: f.maybe("effective_embedment", &size()),
        tensile_strength: f.maybe("tensile_strength", &pressure()),
        yield_strength: f.maybe("yield_strength", &pressure()),
        stress_area: f.maybe("stress_area", &area()),
        ductile: f.maybe("ductile", &Flag),
        category: f.maybe("category", &category()),
        // The code lets tests give more than 17 for a post-installed anchor and no more than 24.
        kc: f.maybe("kc", &number("an effectiveness factor", 7.0, 24.0)),
        cracked: f.maybe("cracked", &Flag),
        pull_out: f.maybe("pull_out", &force()),
        bearing_area: f.maybe("bearing_area", &area()),
        torque: f.maybe("torque", &torque()),
        min_spacing: f.maybe("min_spacing", &size()),
        min_edge: f.maybe("min_edge", &size()),
        min_thickness: f.maybe("min_thickness", &size()),
        critical_edge: f.maybe("critical_edge", &size()),
    })?;
    let (Some(tensile), Some(yielding)) = (read.tensile_strength, read.yield_strength) else {
        return Some(read);
    };
    if yielding <= tensile {
        return Some(read);
    }
    let both = |p: Pressure| {
        let psi = p.si() / crate::units::PA_PER_PSI;
        format!("{psi:.0} psi ({:.0} MPa)", p.si() / 1e6)
    };
    f.error(
        f.newer("yield_strength", "tensile_strength"),
        "the anchor's steel yields above its tensile strength",
        &format!(
            "`yield_strength` is {}, `tensile_strength` {}",
            both(yielding),
            both(tensile)
        ),
        "check both, or swap them: steel yields before it breaks",
    );
    None
}

/// True when what is known of the anchors goes with their size; else that is noted.
pub(super) fn anchor_fits(f: &Fields<'_>, plate: &BasePlate) -> bool {
    let Some(anchor) = &plate.anchor else {
        return true;
    };
    let mut fits = true;
    if let (Some(effective), Some(whole)) = (anchor.effective_embedment, plate.anchor_embedment)
        && effective > whole
    {
        fits = false;
        f.error(
            f.newer("anchor.effective_embedment", "anchor_embedment"),
            "the anchor's effective embedment is more than its embedment",
            &format!(
                "`effective_embedment` is {}, `anchor_embedment` {}",
                both(effective),
                both(whole)
            ),
            "check both: the effective one ends where the anchor bears, above its tip",
        );
    }
    let deepest = [
        ("anchor_embedment", plate.anchor_embedment),
        ("anchor.effective_embedment", anchor.effective_embedment),
    ]
    .into_iter()
    .filter_map(|(name, depth)| Some((name, depth?)))
    .reduce(|one, other| if other.1 > one.1 { other } else { one });
    if let (Some(least), Some((name, depth))) = (anchor.min_thickness, deepest)
        && least <= depth
    {
        fits = false;
        f.error(
            f.newer("anchor.min_thickness", name),
            "the anchor is as deep as the thinnest slab that its maker is said to allow",
            &format!(
                "`min_thickness` is {}, `{name}` {}",
                both(least),
                both(depth)
            ),
            "check both: no maker allows an anchor in a slab that it goes through; \
             `min_thickness` is that of the concrete, from the anchor's product data",
        );
    }
    if let (Some(area), Some(diameter)) = (anchor.stress_area, plate.anchor_diameter)
        && area.si() > std::f64::consts::FRAC_PI_4 * diameter.m() * diameter.m()
    {
        fits = false;
        f.error(
            f.newer("anchor.stress_area", "anchor_diameter"),
            "the anchor's stress area is more than its whole section",
            &format!(
                "a round of {} has {}",
                both(diameter),
                show_quantity(
                    Kind::Area,
                    std::f64::consts::FRAC_PI_4 * diameter.m() * diameter.m()
                )
            ),
            "check `stress_area` and `anchor_diameter`: a thread has less than the whole section",
        );
    }
    fits
}

/// 1, 2 or 3.
fn category() -> impl Read<Out = u8> {
    custom("1", |cx, node| {
        let typed = number("a category of an anchor", 1.0, 3.0).read(cx, node)?;
        let found = [1_u8, 2, 3]
            .into_iter()
            .find(|k| (f64::from(*k) - typed).abs() < f64::EPSILON);
        if found.is_none() {
            cx.error(
                node.span,
                "a category of an anchor is a whole number",
                "expected 1, 2 or 3",
                "take it from the anchor's test report",
            );
        }
        found
    })
}
