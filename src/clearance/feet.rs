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
    use crate::clearance::findings::DoorState;
    use crate::clearance::fixed_off::Off;
    use crate::clearance::uncertainty::Uncertainty;
    use crate::solids::test_bay::test_bay;
    use crate::solids::{obstacles, shell};

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

    /// What is over the lift comes nearer by that, and nothing of the lift itself, which goes up together.
    #[test]
    fn it_counts_against_the_room_and_not_against_the_lift() {
        let up_m = raised_m(&falling(0.008, FallToward::Left));
        assert!(up_m > 0.01);
        let spread_m = |bay: &Bay| {
            let off = Uncertainty::worst(bay);
            let off = Off::of(bay, &off, DoorState::Open);
            let least = |wanted: fn(Role) -> bool| {
                let solids = shell::shell(bay).into_iter().chain(posts(bay));
                let of_them = solids.chain(obstacles::obstacles(bay));
                let of_them = of_them.filter(|solid| wanted(solid.role));
                of_them.map(|solid| off.spread(&solid).z).reduce(f64::min)
            };
            [
                least(|role| role == Role::Ceiling),
                least(|role| matches!(role, Role::Obstacle(_))),
                least(|role| matches!(role, Role::Post(_))),
            ]
            .map(Option::unwrap)
        };
        let level = spread_m(&test_bay());
        let falls = spread_m(&falling(0.008, FallToward::Left));
        for (index, more) in [up_m, up_m, 0.0].into_iter().enumerate() {
            let found = falls[index] - level[index];
            assert!((found - more).abs() < 1e-12, "{index}: {found} {more}");
        }
    }
}
