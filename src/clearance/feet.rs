//! How far over the post line's middle may the columns stand where the floor is not level?

use crate::bay::{Bay, PostsOff};
use crate::solids::shell::floor_level_range_m;
use crate::solids::{Role, Solid, posts::posts};

/// How much higher than on a level floor the lift may stand, metres: a plumb post stands on the highest
/// place under its plate and can only be shimmed up from there, and both carriages are as high as the higher
/// post has them. Posts that were measured as they stand have their heights over the mean floor under their
/// plates: that may lie higher than the post line's middle.
pub(super) fn raised_m(bay: &Bay) -> f64 {
    let plates = posts(bay);
    let plates = plates
        .iter()
        .filter(|solid| matches!(solid.role, Role::BasePlate(_)))
        .map(Solid::bounds);
    if bay.lift.posts_off == PostsOff::default() {
        return plates
            .map(|(low, high)| floor_level_range_m(bay, [low.x, low.y], [high.x, high.y]).1)
            .fold(0.0, f64::max);
    }
    let corners = plates.flat_map(|(low, high)| {
        [
            [low.x, low.y],
            [high.x, low.y],
            [high.x, high.y],
            [low.x, high.y],
        ]
    });
    let highest = corners.map(|at| floor_level_range_m(bay, at, at).1);
    let (sum, count) = highest.fold((0.0, 0.0), |(sum, count), one| (sum + one, count + 1.0));
    (sum / f64::max(count, 1.0)).max(0.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bay::{FallToward, Floor, FloorLevel};
    use crate::clearance::findings::DoorState;
    use crate::clearance::fixed_off::Off;
    use crate::clearance::uncertainty::Uncertainty;
    use crate::solids::test_bay::test_bay;
    use crate::solids::{obstacles, shell};
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

    /// As built, feet are told over the floor under the plates, which may lie higher than between them.
    #[test]
    fn posts_as_they_stand_are_as_high_as_the_floor_that_they_were_measured_from() {
        let mut bay = test_bay();
        let (across, line) = (bay.lift.across, bay.lift.post_line);
        let level = |x: f64, y: f64| FloorLevel {
            x: across + Length::metres(x),
            y: line + Length::metres(y),
            level: Length::mm(20.0),
        };
        // So many about each plate that the middle of the post line is never among the nearest four.
        let about = [-0.3, 0.0, 0.3];
        let half = bay.lift.spacing.m() * 0.5 + 0.1;
        let both = [-half, half].into_iter();
        let levels = both.flat_map(|x| about.map(|y| [level(x - 0.2, y), level(x + 0.2, y)]));
        bay.garage.floor = Floor::Levels(levels.flatten().collect());
        bay.policy.measured_garage = Length::mm(6.0);
        assert!((raised_m(&bay) - 0.026).abs() < 1e-12);
        bay.lift.posts_off.up = Length::mm(1.0);
        assert!((raised_m(&bay) - 0.026).abs() < 1e-12);
        // A fall has as much under the one post as it lacks under the other.
        let mut falls = falling(0.008, FallToward::Left);
        falls.lift.posts_off.up = Length::mm(1.0);
        assert!(raised_m(&falls).abs() < 1e-12);
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
