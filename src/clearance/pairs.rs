//! Which pairs are checked, and with which margin.

use crate::bay::Policy;
use crate::solids::Role;

/// How a pair can matter on the way up.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Family {
    /// Something the rise can run into.
    Over,
    /// Something upright beside the way up: it stays as near as it is.
    Beside,
    /// The shut-off bar.
    Bar,
}

/// What is asked of a pair.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rule {
    /// The distance asked, metres; 0 for "must not touch".
    pub margin_m: f64,
    /// How the pair can matter.
    pub family: Family,
}

/// What is asked of a moving and a fixed solid on the way up; none for a pair that is left out.
///
/// Left out, by name: a tyre and the floor (it stands there, then leaves); tyre and floor plate or
/// base plate (driven over); the lift's own arms, pads and carriages and the floor (they start
/// beside it by design and only climb away); a carriage and its own column. Pairs within the moving lot are the business of the `carried` check.
#[must_use]
pub fn rule(moving: Role, fixed: Role, policy: &Policy) -> Option<Rule> {
    let over = policy.over_vehicle.m();
    let beside = policy.beside_vehicle.m();
    let over_rule = |margin_m| {
        Some(Rule {
            margin_m,
            family: Family::Over,
        })
    };
    let beside_rule = |margin_m| {
        Some(Rule {
            margin_m,
            family: Family::Beside,
        })
    };
    match moving {
        Role::Body | Role::Mirror | Role::Wheel(_) => {
            let wheel = matches!(moving, Role::Wheel(_));
            match fixed {
                Role::Floor if wheel => None,
                // The tail may dip while the body turns on its pads.
                Role::Floor => beside_rule(0.0),
                Role::Wall => beside_rule(beside),
                Role::Ceiling | Role::TieBeam => over_rule(over),
                // These may be met from below or from the side, so the larger margin is asked.
                Role::DoorWall
                | Role::Obstacle(_)
                | Role::DoorPanel
                | Role::DoorFitting
                | Role::Opener => over_rule(over.max(beside)),
                Role::Post(_) | Role::PowerUnit(_) => beside_rule(policy.beside_post.m()),
                Role::BasePlate(_) | Role::FloorPlate if wheel => None,
                Role::BasePlate(_) | Role::FloorPlate => beside_rule(0.0),
                Role::ShutOffBar => Some(Rule {
                    margin_m: policy.under_bar.m(),
                    family: Family::Bar,
                }),
                Role::Carriage(_)
                | Role::Arm(_)
                | Role::Pad(_)
                | Role::Body
                | Role::Mirror
                | Role::Wheel(_) => None,
            }
        }
        // A carriage rides on its own column; its arms and pads must not touch that column either.
        Role::Carriage(side) if matches!(fixed, Role::Post(own) | Role::PowerUnit(own) if own == side) => {
            None
        }
        Role::Carriage(_) | Role::Arm(_) | Role::Pad(_) => lift_part_rule(fixed, policy),
        Role::Floor
        | Role::Wall
        | Role::DoorWall
        | Role::Ceiling
        | Role::Obstacle(_)
        | Role::DoorPanel
        | Role::DoorFitting
        | Role::Opener
        | Role::Post(_)
        | Role::BasePlate(_)
        | Role::PowerUnit(_)
        | Role::TieBeam
        | Role::FloorPlate
        | Role::ShutOffBar => None,
    }
}

/// No [`rule`] asks for more than this, metres.
#[must_use]
pub fn widest_margin_m(policy: &Policy) -> f64 {
    let asked = [
        policy.over_vehicle,
        policy.beside_vehicle,
        policy.beside_post,
        policy.under_bar,
        policy.lift_parts,
    ];
    asked
        .into_iter()
        .map(|margin| margin.m())
        .fold(0.0, f64::max)
}

/// What is asked of the lift's own moving parts.
fn lift_part_rule(fixed: Role, policy: &Policy) -> Option<Rule> {
    let margin_m = policy.lift_parts.m();
    match fixed {
        Role::Floor => None,
        Role::Post(_) | Role::PowerUnit(_) | Role::BasePlate(_) | Role::FloorPlate => Some(Rule {
            margin_m: 0.0,
            family: Family::Beside,
        }),
        Role::Wall => Some(Rule {
            margin_m,
            family: Family::Beside,
        }),
        Role::DoorWall
        | Role::Ceiling
        | Role::Obstacle(_)
        | Role::DoorPanel
        | Role::DoorFitting
        | Role::Opener
        | Role::TieBeam
        | Role::ShutOffBar => Some(Rule {
            margin_m,
            family: Family::Over,
        }),
        Role::Carriage(_)
        | Role::Arm(_)
        | Role::Pad(_)
        | Role::Body
        | Role::Mirror
        | Role::Wheel(_) => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bay::{Corner, Side};
    use crate::solids::test_bay::test_bay;
    use crate::units::Length;

    /// Each margin in its turn is the widest.
    #[test]
    fn no_rule_asks_for_more_than_the_widest_margin() {
        let roles = [
            Role::Floor,
            Role::Wall,
            Role::DoorWall,
            Role::Ceiling,
            Role::Obstacle(0),
            Role::DoorPanel,
            Role::DoorFitting,
            Role::Opener,
            Role::Post(Side::Left),
            Role::BasePlate(Side::Left),
            Role::PowerUnit(Side::Left),
            Role::TieBeam,
            Role::FloorPlate,
            Role::ShutOffBar,
            Role::Carriage(Side::Right),
            Role::Arm(Corner::FrontRight),
            Role::Pad(Corner::FrontRight),
            Role::Body,
            Role::Mirror,
            Role::Wheel(0),
        ];
        let mut policy = test_bay().policy;
        let margins: [fn(&mut Policy) -> &mut Length; 5] = [
            |policy| &mut policy.over_vehicle,
            |policy| &mut policy.beside_vehicle,
            |policy| &mut policy.beside_post,
            |policy| &mut policy.under_bar,
            |policy| &mut policy.lift_parts,
        ];
        for (turn, margin) in margins.into_iter().enumerate() {
            *margin(&mut policy) = Length::metres(0.5 + 0.1 * turn as f64);
            let all = roles
                .iter()
                .flat_map(|a| roles.iter().map(move |b| (*a, *b)));
            let most = all
                .filter_map(|(moving, fixed)| rule(moving, fixed, &policy))
                .map(|rule| rule.margin_m)
                .fold(0.0, f64::max);
            assert!(
                (most - widest_margin_m(&policy)).abs() < 1e-12,
                "{turn}: {most}"
            );
        }
    }
}
