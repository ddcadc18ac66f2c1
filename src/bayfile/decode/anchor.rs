//! What is known of the anchors under the base plates?

use super::all;
use super::fields::Fields;
use super::readers::{Flag, Read, area, custom, force, number, pressure, size, torque, words};
use crate::bay::{Anchor, AnchorKind};
use crate::units::Pressure;

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
    let ksi = |p: Pressure| format!("{:.0} psi", p.si() / crate::units::PA_PER_PSI);
    f.error(
        f.newer("yield_strength", "tensile_strength"),
        "the anchor's steel yields above its tensile strength",
        &format!(
            "`yield_strength` is {}, `tensile_strength` {}",
            ksi(yielding),
            ksi(tensile)
        ),
        "check both, or swap them: steel yields before it breaks",
    );
    None
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
