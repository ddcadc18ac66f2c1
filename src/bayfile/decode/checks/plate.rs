//! Do the anchors lie on their plate, each in a place of its own?

use super::super::fields::Fields;
use super::{NOISE_M, both};
use crate::bay::BasePlate;
use crate::units::Length;

/// Checks the anchors of a base plate; the first that can't be is told.
pub(in crate::bayfile::decode) fn anchors(f: &Fields<'_>, plate: &BasePlate) -> bool {
    let radius = plate.anchor_diameter.map_or(0.0, |d| d.m() * 0.5);
    for (index, [inward, front]) in plate.anchors.iter().enumerate() {
        let path = format!("anchors[{index}]");
        for (along, place, name, size) in [
            ("inward", inward, "width", plate.width),
            ("to the front", front, "depth", plate.depth),
        ] {
            let room = size.m() * 0.5 - radius;
            if place.m().abs() <= room + NOISE_M {
                continue;
            }
            f.error(
                f.newer(&path, name),
                &format!(
                    "anchor {} lies off its base plate: {} {along} of the plate's middle, where \
                     the plate ends at {}",
                    index + 1,
                    both(*place),
                    both(size * 0.5)
                ),
                "the whole anchor must lie on the plate",
                "measure anchors from the plate's middle: inward to the other post, then to the \
                 front; or check the plate's size",
            );
            return false;
        }
        let apart = |other: &[Length; 2]| (other[0] - *inward).m().hypot((other[1] - *front).m());
        let least = (2.0 * radius).max(1e-3) - NOISE_M;
        if let Some(earlier) = plate.anchors[..index].iter().position(|o| apart(o) < least) {
            f.error(
                &path,
                &format!("anchors {} and {} lie in one place", earlier + 1, index + 1),
                "every anchor needs a hole of its own",
                "give each anchor once, from the plate's middle: inward, then to the front",
            );
            return false;
        }
    }
    true
}
