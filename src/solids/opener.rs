//! Which solids are the opener, and what do its arm and its cord take up while the door runs?
//!
//! A trolley opener's arm runs from the door's top edge to a trolley a little ahead of it on the
//! rail; the release cord hangs from the trolley. Each part of the opener covers every reading of
//! its height over the floor below it.

use glam::{DVec2, DVec3};

use super::door::top_edge;
use super::shell::floor_level_range_m;
use super::{DoorTravel, Role, Solid};
use crate::bay::{Bay, Opener, Side, TrolleyOpener, WallOpener};

/// How far the trolley runs ahead of the door's top edge: 12 in. Common practice, no source.
const ARM_REACH_M: f64 = 0.3048;
/// Least half width of the arm, and half the width of the cord's handle: 1 in. Common practice, no
/// source.
const HALF_ARM_M: f64 = 0.0254;
/// How many intervals the door's travel is cut into for the envelope.
const INTERVALS: u32 = 16;

/// The opener with its arm and cord where this travel of the door puts them. Bay axes, metres.
///
/// A trolley opener on a door without a top edge to pull (none, roll-up, side-hinged) may leave
/// its arm and cord anywhere: they are built along the whole rail.
#[must_use]
pub fn opener(bay: &Bay, travel: DoorTravel) -> Vec<Solid> {
    match &bay.garage.opener {
        Opener::None => Vec::new(),
        Opener::WallMounted(unit) => vec![wall_unit(bay, unit)],
        Opener::Trolley(trolley) => {
            let mut solids = rail_and_head(bay, trolley);
            let edge = top_edge(bay, travel.fraction());
            solids.extend(arm_and_cord(
                bay,
                trolley,
                "",
                edge.map(|edge| [edge, edge]),
            ));
            solids
        }
    }
}

/// What the opener takes up while the door runs from shut to open.
///
/// The door's top edge only moves inward and up as the door opens. Over an interval of travel the
/// arm thus stays between the edge's place at the interval's start and the trolley's at its end,
/// and never reaches lower than it may at the start.
#[must_use]
pub fn envelope(bay: &Bay) -> Vec<Solid> {
    let Opener::Trolley(trolley) = &bay.garage.opener else {
        return opener(bay, DoorTravel::Shut);
    };
    let mut solids = rail_and_head(bay, trolley);
    for i in 0..INTERVALS {
        let edge = |i: u32| top_edge(bay, f64::from(i) / f64::from(INTERVALS));
        let Some((start, end)) = edge(i).zip(edge(i + 1)) else {
            solids.extend(arm_and_cord(bay, trolley, "", None));
            break;
        };
        let label = format!(" {}", i + 1);
        solids.extend(arm_and_cord(bay, trolley, &label, Some([start, end])));
    }
    solids
}

/// The arm and the cord while the door's top edge runs between two places; anywhere on the rail
/// where there is no such edge.
fn arm_and_cord(
    bay: &Bay,
    trolley: &TrolleyOpener,
    label: &str,
    edges: Option<[DVec2; 2]>,
) -> Vec<Solid> {
    let x = trolley.x.m();
    let rail = rail_bottom_m(bay, trolley);
    let (mut low, from, to) = match edges {
        Some([start, end]) => (start.y.min(end.y), start.x, end.x + ARM_REACH_M),
        None => (rail, 0.0, trolley.rail_length.m()),
    };
    // The arm reaches down to the edge it pulls, and hangs by its drop wherever it is.
    low = low.min(rail - trolley.arm_drop.m());
    let half = HALF_ARM_M.max(0.5 * trolley.rail_width.m());
    let mut solids = vec![Solid::aligned_box(
        format!("opener/arm{label}"),
        Role::Opener,
        DVec3::new(x - half, from, low),
        DVec3::new(x + half, to, rail),
    )];
    let drop = trolley.cord_drop.m();
    if drop > 0.0 {
        let trolley_from = if edges.is_some() {
            from + ARM_REACH_M
        } else {
            from
        };
        solids.push(Solid::aligned_box(
            format!("opener/release cord{label}"),
            Role::Opener,
            DVec3::new(x - HALF_ARM_M, trolley_from - HALF_ARM_M, rail - drop),
            DVec3::new(x + HALF_ARM_M, to + HALF_ARM_M, rail),
        ));
    }
    solids
}

/// `z` of the rail's underside over the lowest floor under it.
fn rail_bottom_m(bay: &Bay, trolley: &TrolleyOpener) -> f64 {
    let (low, high) = rail_plan(trolley);
    floor_level_range_m(bay, low, high).0 + trolley.rail_bottom.m()
}

fn rail_plan(trolley: &TrolleyOpener) -> ([f64; 2], [f64; 2]) {
    let (x, half) = (trolley.x.m(), 0.5 * trolley.rail_width.m());
    ([x - half, 0.0], [x + half, trolley.rail_length.m()])
}

fn rail_and_head(bay: &Bay, trolley: &TrolleyOpener) -> Vec<Solid> {
    let (low, high) = rail_plan(trolley);
    let rail = [trolley.rail_bottom.m(), trolley.rail_depth.m()];
    let (x, half) = (trolley.x.m(), 0.5 * trolley.head_width.m());
    let start = trolley.rail_length.m();
    let head_low = [x - half, start];
    let head_high = [x + half, start + trolley.head_depth.m()];
    let head = [trolley.head_bottom.m(), trolley.head_height.m()];
    vec![
        over_floor(bay, "opener/rail", low, high, rail),
        over_floor(bay, "opener/head unit", head_low, head_high, head),
    ]
}

fn wall_unit(bay: &Bay, unit: &WallOpener) -> Solid {
    let near = 0.5 * bay.garage.opening.width.m() + unit.beside.m();
    let far = near + unit.width.m();
    let x = match unit.side {
        Side::Left => [-far, -near],
        Side::Right => [near, far],
    };
    let (low, high) = ([x[0], 0.0], [x[1], unit.depth.m()]);
    let upright = [unit.bottom.m(), unit.height.m()];
    over_floor(bay, "opener/wall unit", low, high, upright)
}

/// A box over a patch of floor, from its underside over the lowest floor in the patch to its top
/// over the highest.
fn over_floor(
    bay: &Bay,
    name: &str,
    low: [f64; 2],
    high: [f64; 2],
    [bottom, height]: [f64; 2],
) -> Solid {
    let (lowest, highest) = floor_level_range_m(bay, low, high);
    Solid::aligned_box(
        name,
        Role::Opener,
        DVec3::new(low[0], low[1], lowest + bottom),
        DVec3::new(high[0], high[1], highest + bottom + height),
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bay::Door;
    use crate::solids::door::test_doors::{moving_doors, roll_up, with_door};
    use crate::solids::test_bay::test_bay;
    use crate::units::Length;

    const INCH: f64 = 0.0254;

    fn named(solids: &[Solid], name: &str) -> (DVec3, DVec3) {
        solids.iter().find(|s| s.name == name).unwrap().bounds()
    }

    #[test]
    fn the_arm_reaches_from_the_door_to_the_trolley() {
        let bay = test_bay();
        let shut = opener(&bay, DoorTravel::Shut);
        // Shut: down to the door's top edge at 96 in, up to the rail at 113 in.
        let (low, high) = named(&shut, "opener/arm");
        assert!((low.z - 96.0 * INCH).abs() < 1e-9 && (high.z - 113.0 * INCH).abs() < 1e-9);
        assert!((low.y - 1.5 * INCH).abs() < 1e-9 && (high.y - 13.5 * INCH).abs() < 1e-9);
        // Open: 12 in below the rail; the cord 24 in below it.
        let open = opener(&bay, DoorTravel::Open);
        let (low, _) = named(&open, "opener/arm");
        assert!((low.z - 101.0 * INCH).abs() < 1e-9);
        let (cord, _) = named(&open, "opener/release cord");
        assert!((cord.z - 89.0 * INCH).abs() < 1e-9);
        let (low, high) = named(&open, "opener/head unit");
        assert!((low.y - 120.0 * INCH).abs() < 1e-9 && (high.z - 118.0 * INCH).abs() < 1e-9);
    }

    #[test]
    fn the_envelope_holds_arm_and_cord_at_every_travel() {
        for (name, bay) in moving_doors() {
            let boxes: Vec<_> = envelope(&bay).iter().map(Solid::bounds).collect();
            for i in 0..=400 {
                for solid in opener(&bay, DoorTravel::At(f64::from(i) / 400.0)) {
                    let (low, high) = solid.bounds();
                    let held = boxes
                        .iter()
                        .any(|(l, h)| l.cmple(low + 1e-12).all() && h.cmpge(high - 1e-12).all());
                    assert!(held, "{name}: {} at {i}", solid.name);
                }
            }
        }
    }

    #[test]
    fn a_cord_tied_up_is_not_there() {
        let mut bay = test_bay();
        if let Opener::Trolley(trolley) = &mut bay.garage.opener {
            trolley.cord_drop = Length::ZERO;
        }
        assert!(!envelope(&bay).iter().any(|s| s.name.contains("cord")));
    }

    #[test]
    fn without_an_edge_to_pull_the_arm_may_be_anywhere_on_the_rail() {
        let bay = with_door(Door::RollUp(roll_up()));
        let (low, high) = named(&opener(&bay, DoorTravel::Shut), "opener/arm");
        assert!(low.y.abs() < 1e-12 && (high.y - 120.0 * INCH).abs() < 1e-9);
    }

    #[test]
    fn a_wall_unit_stands_beside_the_opening() {
        let mut bay = test_bay();
        bay.garage.opener = Opener::WallMounted(WallOpener {
            side: Side::Left,
            width: Length::inches(8.0),
            depth: Length::inches(10.0),
            height: Length::inches(16.0),
            bottom: Length::inches(90.0),
            beside: Length::inches(6.0),
        });
        let solids = opener(&bay, DoorTravel::Open);
        let (low, high) = named(&solids, "opener/wall unit");
        assert!((low.x + 74.0 * INCH).abs() < 1e-9 && (high.x + 66.0 * INCH).abs() < 1e-9);
        assert!((low.z - 90.0 * INCH).abs() < 1e-9 && (high.z - 106.0 * INCH).abs() < 1e-9);
        assert_eq!(solids, envelope(&bay));
    }
}
