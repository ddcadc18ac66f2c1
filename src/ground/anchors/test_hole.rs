//! Is an anchor set beside a hole through which the slab was read?

use super::given::Given;
use super::post::Post;
use super::show::inches;
use crate::ground::{Bound, Figure};

/// How far from an anchor its cone breaks out, of its effective embedment (ACI 318-19, 17.6.2.1.1).
const CONE: f64 = 1.5;

/// The anchor nearest to a place where the slab was read, where it is so near that the hole would lie in
/// its cone: no rule of the code is for that.
pub(super) fn test_hole(given: &Given, post: &Post) -> Option<Figure> {
    let asked = CONE * given.hef_in()?;
    let each = post.at_in.iter().flat_map(|at| {
        let read = post.read_in.iter();
        read.map(|read| (at[0] - read[0]).hypot(at[1] - read[1]))
    });
    let nearest = each.min_by(f64::total_cmp)?;
    let holds = nearest - post.measured_in >= asked;
    (!holds).then(|| {
        Figure::judged(
            "test_hole",
            "an anchor to the nearest place where the slab was read",
            inches(nearest),
            Bound::AtLeast,
            inches(asked),
        )
        .source("ACI 318-19, 17.6.2.1.1: how far a cone breaks out, 1.5 hef; it has no rule for a hole there")
        .undecided(
            "ask the anchor's maker how that hole is filled before this anchor is set, or read the slab \
             farther off",
        )
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bay::Side;
    use crate::ground::slab::{PlateSlab, SlabMap, anchors_m};
    use crate::ground::{Date, Standing};
    use crate::solids::test_bay::test_bay;
    use crate::units::Length;

    #[test]
    fn a_hole_in_the_cone_of_an_anchor_is_told() {
        for (off_in, told) in [(2.0, true), (4.0, true), (6.0, false)] {
            let mut bay = test_bay();
            let plate = &mut bay.lift.base_plate;
            plate.anchor = Some(crate::bay::Anchor {
                effective_embedment: Some(Length::inches(3.25)),
                ..Default::default()
            });
            let map = SlabMap::of(&bay);
            let at = anchors_m(&bay, &map, Side::Left)[0];
            bay.slab.get_or_insert_default().readings = vec![crate::bay::SlabReading {
                x: Length::metres(at.x) - Length::inches(off_in),
                y: Length::metres(at.y),
                thickness: Length::inches(5.0),
            }];
            let map = SlabMap::of(&bay);
            let slab: PlateSlab = crate::ground::slab::under_plate(&bay, Side::Left, None::<Date>);
            let post = Post::of(&bay, &map, Side::Left, &slab, None);
            let found = test_hole(&Given::of(&bay), &post);
            assert_eq!(found.is_some(), told, "{off_in}");
            assert!(found.is_none_or(|one| one.standing == Standing::Unknown));
        }
    }
}
