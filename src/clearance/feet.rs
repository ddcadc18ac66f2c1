//! How far over the post line's middle may the columns stand where the floor is not level?

use crate::bay::{Bay, PostsOff};
use crate::solids::shell::floor_level_range_m;
use crate::solids::{Role, posts::posts};

/// How much higher than on a level floor the lift may stand, metres: a plumb post stands on the highest
/// place under its plate and can only be shimmed up from there, and both carriages are as high as the higher
/// post has them. Nothing where posts were measured as they stand: that counts instead.
pub(super) fn raised_m(bay: &Bay) -> f64 {
    if bay.lift.posts_off != PostsOff::default() {
        return 0.0;
    }
    posts(bay)
        .iter()
        .filter(|solid| matches!(solid.role, Role::BasePlate(_)))
        .map(|plate| {
            let (low, high) = plate.bounds();
            floor_level_range_m(bay, [low.x, low.y], [high.x, high.y]).1
        })
        .fold(0.0, f64::max)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bay::{FallToward, Floor};
    use crate::clearance::study;
    use crate::solids::test_bay::test_bay;
    use crate::units::Length;

    fn falling(slope: f64, toward: FallToward) -> Bay {
        let mut bay = test_bay();
        bay.garage.floor = Floor::Fall { slope, toward };
        bay
    }

    #[test]
    fn the_lift_stands_on_the_highest_place_under_its_plates() {
        assert!(raised_m(&test_bay()).abs() < 1e-12);
        let bay = falling(0.01, FallToward::Left);
        // The right plate's outer edge is farthest up the slope.
        let plates = posts(&bay);
        let outer = plates.iter().map(|solid| solid.bounds().1.x);
        let plates_only = plates.iter().zip(outer);
        let outer = plates_only
            .filter(|(solid, _)| matches!(solid.role, Role::BasePlate(_)))
            .fold(0.0, |most: f64, (_, x)| most.max(x));
        assert!((raised_m(&bay) - 0.01 * (outer - bay.lift.across.m())).abs() < 1e-12);
        // Along: half a plate's depth.
        let along = raised_m(&falling(0.01, FallToward::Door));
        assert!((along - 0.01 * bay.lift.base_plate.depth.m() * 0.5).abs() < 1e-12);
    }

    /// A lift that stands so much higher is no kinder to what is over the vehicle than the fall that
    /// raises it.
    #[test]
    fn a_floor_that_falls_across_costs_as_much_as_it_raises_the_lift() {
        let bay = falling(0.008, FallToward::Left);
        let up_m = raised_m(&bay);
        assert!(up_m > 0.01);
        let top = |bay: &Bay| study(bay).unwrap().locks[0].top_m;
        let mut shimmed = bay.clone();
        let up = Length::metres(up_m);
        shimmed.lift.pad.lowest += up;
        shimmed.lift.carriage.bottom += up;
        for arm in &mut shimmed.lift.arms {
            arm.underside += up;
        }
        // The same height, by the file: without what the fall adds to it once more.
        let by_file = top(&shimmed) - up_m;
        assert!(top(&bay) >= by_file - 1e-9, "{} {by_file}", top(&bay));
    }
}
