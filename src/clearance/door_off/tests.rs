//! Against the solids themselves: built again with every measure off at once, by chance.

use rand_pcg::Pcg64Mcg;
use rand_pcg::rand_core::{Rng, SeedableRng};

use super::super::fixed_off::Off;
use super::super::uncertainty::Uncertainty;
use super::*;
use crate::solids::door::test_doors::moving_doors;

const BY_M: f64 = 0.006;

/// Every measure of the opening, the door and the opener, as far off as it may be or less.
fn off_by_chance(garage: &mut Garage, mut draw: impl FnMut() -> f64) {
    let mut change = |length: &mut Length| *length = Length::metres((length.m() + draw()).max(0.0));
    let opening = &mut garage.opening;
    for length in [&mut opening.width, &mut opening.height, &mut opening.offset] {
        change(length);
    }
    match &mut garage.door {
        Door::Sectional(d) => {
            if let TrackLayout::HighLift { extra } = &mut d.layout {
                change(extra);
            }
            for length in [
                &mut d.panel_thickness,
                &mut d.panel_height,
                &mut d.track_radius,
                &mut d.track_offset,
                &mut d.track_section,
                &mut d.track_length,
                &mut d.top_bracket,
            ] {
                change(length);
            }
        }
        Door::SwingUp(d) => {
            for length in [
                &mut d.panel_thickness,
                &mut d.panel_height,
                &mut d.track_height,
                &mut d.track_offset,
                &mut d.track_section,
            ] {
                change(length);
            }
        }
        Door::SideHinged(d) => change(&mut d.leaf_thickness),
        Door::RollUp(_) | Door::None => {}
    }
    if let Opener::Trolley(o) = &mut garage.opener {
        for length in [
            &mut o.x,
            &mut o.rail_bottom,
            &mut o.rail_width,
            &mut o.rail_depth,
            &mut o.rail_length,
            &mut o.head_width,
            &mut o.head_depth,
            &mut o.head_height,
            &mut o.head_bottom,
            &mut o.arm_drop,
            &mut o.cord_drop,
        ] {
            change(length);
        }
    }
}

#[test]
fn no_part_of_a_door_goes_farther_with_its_measures_than_is_counted() {
    let uncertainty = Uncertainty {
        garage_m: BY_M,
        ..Uncertainty::NONE
    };
    let mut rng = Pcg64Mcg::seed_from_u64(20_261_130);
    let (mut looked_at, mut short) = (0, Vec::new());
    for (kind, bay) in moving_doors() {
        for (travel, state) in [
            (DoorTravel::Shut, DoorState::Shut),
            (DoorTravel::Open, DoorState::Open),
        ] {
            let off = Off::of(&bay, &uncertainty, state);
            let as_filed = solids(&bay, travel);
            for round in 0..300 {
                let mut world = bay.clone();
                off_by_chance(&mut world.garage, || {
                    // Mostly as far as may be.
                    let share = f64::from(rng.next_u32()) / f64::from(u32::MAX);
                    let share = (8.0 * (share - 0.5)).clamp(-1.0, 1.0);
                    BY_M * if round == 0 { 1.0 } else { share }
                });
                let world = solids(&world, travel);
                if world.len() != as_filed.len() {
                    continue;
                }
                for (solid, other) in as_filed.iter().zip(&world) {
                    looked_at += 1;
                    let ((low, high), (off_low, off_high)) = (solid.bounds(), other.bounds());
                    let out = (low - off_low).max(off_high - high) - off.spread(solid);
                    if out.max_element() > 1e-4 {
                        let name = &solid.name;
                        short.push(format!("{kind}, {travel:?}, {name}: {:.1} mm", out * 1e3));
                    }
                }
            }
        }
    }
    assert!(looked_at > 20_000, "{looked_at}");
    short.sort();
    short.dedup_by(|a, b| a.split(':').next() == b.split(':').next());
    assert!(short.is_empty(), "{short:#?}");
}
