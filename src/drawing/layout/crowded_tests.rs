//! Do the sheets of a large, crowded shop keep apart what they say, and tell of everything?

use rand_pcg::rand_core::Rng as _;

use super::tests::{DAY, check, order, scenes};
use super::*;
use crate::bay::{
    Obstacle, ObstacleKind, ObstacleShape, Slab, SlabLine, SlabLineKind, SlabReading,
};
use crate::clearance::study_on;
use crate::units::{Angle, Length};

struct Draw(rand_pcg::Pcg32);

impl Draw {
    fn between(&mut self, low: f64, high: f64) -> Length {
        let share = f64::from(self.0.next_u32()) / f64::from(u32::MAX);
        Length::metres(low + share * (high - low))
    }
}

/// A scene's bay in a larger hall, with so many things in the room, lines and readings.
fn crowded(mut bay: Bay, seed: u64, [things, lines, readings]: [usize; 3]) -> Bay {
    let mut draw = Draw(rand_pcg::Pcg32::new(seed, 11));
    let (wide, deep) = (draw.between(10.0, 32.0), draw.between(10.0, 30.0));
    let half = wide.m() * 0.5 - 0.5;
    bay.garage.width = wide;
    bay.garage.depth = deep;
    let x = |draw: &mut Draw| draw.between(-half, half);
    let y = |draw: &mut Draw| draw.between(0.5, deep.m() - 0.5);
    for number in 0..things {
        let shape = if number % 4 == 3 {
            let height = draw.between(2.9, 3.2);
            ObstacleShape::Cylinder {
                from: [x(&mut draw), y(&mut draw), height],
                to: [x(&mut draw), y(&mut draw), height],
                diameter: draw.between(0.03, 0.2),
            }
        } else {
            ObstacleShape::Box {
                x: x(&mut draw),
                y: y(&mut draw),
                bottom: draw.between(2.6, 3.0),
                width: draw.between(0.05, 2.0),
                depth: draw.between(0.05, 2.0),
                height: draw.between(0.05, 0.3),
                turned: Angle::degrees(draw.between(0.0, 170.0).m()),
            }
        };
        bay.garage.obstacles.push(Obstacle {
            name: format!("thing {number} of the works"),
            kind: ObstacleKind::Light,
            shape,
            removable: None,
            only_at_times: false,
            row: [0, 0],
        });
    }
    let slab = bay.slab.get_or_insert_with(Slab::default);
    slab.lines = (0..lines)
        .map(|_| SlabLine {
            kind: SlabLineKind::Joint,
            from: [x(&mut draw), y(&mut draw)],
            to: [x(&mut draw), y(&mut draw)],
        })
        .collect();
    slab.readings = (0..readings)
        .map(|_| SlabReading {
            x: x(&mut draw),
            y: y(&mut draw),
            thickness: draw.between(0.1, 0.2),
        })
        .collect();
    bay
}

/// Sizes of crowds: things in the room, lines and readings; up to more than a page can name.
const CROWDS: [[usize; 3]; 3] = [[9, 3, 4], [28, 8, 10], [80, 25, 40]];

fn near(bay: &Bay, study: &Study) -> Vec<HerePair> {
    let lock = study.highest_safe_lock.or(study.highest_clear_lock);
    let lock = lock.map(|lock| &study.locks[lock - 1]);
    let order = order(bay, study, Paper::A4);
    lock.map_or_else(Vec::new, |lock| Made::new(&order).near(lock).to_vec())
}

#[test]
fn in_a_crowded_hall_no_leader_runs_through_a_text_and_no_text_lies_on_another() {
    let scenes = scenes();
    let mut numbers = 0;
    for (seed, crowd) in (1..).zip(CROWDS) {
        let index = crowd[0] % scenes.len();
        let bay = crowded(scenes[index].1.clone(), seed, crowd);
        let study = study_on(&bay, Some(DAY)).unwrap();
        // What is near is the same on every paper, and takes a study to find.
        let near = near(&bay, &study);
        for paper in [Paper::Letter, Paper::A4, Paper::A3] {
            let order = order(&bay, &study, paper);
            let mut made = Made::new(&order);
            made.near = OnceCell::from(near.clone());
            let name = format!("{} with {crowd:?}", scenes[index].0);
            let pages = made.pages(0, true).unwrap();
            for page in &pages {
                check(&name, page);
            }
            let said = |tag: &str| -> Vec<&str> {
                let pages = pages.iter().filter(|page| page.tag == tag);
                pages
                    .flat_map(Sheet::texts)
                    .map(|text| text.says.as_str())
                    .collect()
            };
            let (list, plan) = (said(things::TAG), said("PLAN"));
            // The list has each, by its number and by its name.
            let before = bay.garage.obstacles.len();
            for number in 1..=before + crowd[1] + crowd[2] {
                assert!(
                    list.contains(&number.to_string().as_str()),
                    "{name}: {number}"
                );
            }
            let whole = list.join(" ");
            for one in &bay.garage.obstacles {
                assert!(
                    whole.contains(&format!("{}:", one.name)),
                    "{name}: {}",
                    one.name
                );
            }
            numbers += plan
                .iter()
                .filter(|text| text.parse::<usize>().is_ok())
                .count();
        }
    }
    assert!(
        numbers > 100,
        "some plan is too crowded for words: {numbers}"
    );
}

#[test]
fn the_plan_has_the_scale_that_is_asked_for_or_says_which_would_do() {
    for (name, bay) in scenes().into_iter().step_by(3) {
        let study = study_on(&bay, Some(DAY)).unwrap();
        let with = |scale| {
            floor_plan(&Order {
                scale,
                ..order(&bay, &study, Paper::A4)
            })
        };
        let largest = with(None).unwrap()[0].scale;
        let smaller = with(Some(largest * 1.5)).unwrap();
        assert!((smaller[0].scale - largest * 1.5).abs() < 1e-9, "{name}");
        check(&name, &smaller[0]);
        match with(Some(largest * 0.4)) {
            Err(LayoutError::Scale {
                fits: Some(fits), ..
            }) => {
                assert!((fits - largest).abs() < 1e-9, "{name}");
            }
            other => panic!("{name}: {other:?}"),
        }
    }
}

#[test]
fn the_list_says_where_the_boxes_of_the_file_are() {
    let mut seen = 0;
    for (name, bay) in scenes() {
        let study = study_on(&bay, Some(DAY)).unwrap();
        let order = order(&bay, &study, Paper::A4);
        let pages = things::pages(&Made::new(&order), None, [1, 1]).unwrap();
        let said: Vec<&str> = pages
            .iter()
            .flat_map(Sheet::texts)
            .map(|text| text.says.as_str())
            .collect();
        for one in &bay.garage.obstacles {
            let ObstacleShape::Box {
                x,
                y,
                width,
                depth,
                turned,
                ..
            } = &one.shape
            else {
                continue;
            };
            if turned.rad().abs() > 1e-9 {
                continue;
            }
            // From the inner faces of the left wall and of the door wall.
            let left = bay.garage.width.m() * 0.5 + bay.garage.opening.offset.m() + x.m();
            for (middle, size) in [(left, width.m()), (y.m(), depth.m())] {
                for end in [middle - size * 0.5, middle + size * 0.5] {
                    let reads = crate::setting_out::place(end, bay.units);
                    assert!(
                        said.contains(&reads.as_str()),
                        "{name}, {}: {reads}",
                        one.name
                    );
                    seen += 1;
                }
            }
        }
    }
    assert!(seen > 8);
}
