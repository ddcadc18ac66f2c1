//! Is what the pictures show so?

use bayrise::clearance::probe::PairState;
use bayrise::drawing::palette::{self, Colour, things};
use bayrise::panels::Action;
use bayrise::panels::camera::Sight;
use bayrise::solids::{Layer, Role};
use glam::DVec3;

use crate::shots::{SCENES, Shot, Taken, take};

/// Every pixel of the view with its place.
fn pixels(taken: &Taken) -> impl Iterator<Item = ([u32; 2], [u8; 3])> + '_ {
    let [width, height] = taken.view;
    (0..height)
        .flat_map(move |y| (0..width).map(move |x| [x, y]))
        .filter_map(|[x, y]| taken.pixels.at(x, y).map(|rgb| ([x, y], rgb)))
}

/// The body's blue paint in whatever light.
fn is_body(rgb: [u8; 3]) -> bool {
    let [r, g, b] = rgb.map(i32::from);
    b - r > 30 && b >= g && g >= r
}

fn near(rgb: [u8; 3], colour: Colour, within: u8) -> bool {
    let Colour(r, g, b) = colour;
    rgb.iter()
        .zip([r, g, b])
        .all(|(a, b)| a.abs_diff(b) <= within)
}

/// A thin line's pixel: its colour, blended with the paper around it.
fn is_ink(rgb: [u8; 3], Colour(r, g, b): Colour) -> bool {
    let Colour(pr, pg, pb) = palette::screen::LIGHT.panel;
    let paper = DVec3::new(pr.into(), pg.into(), pb.into());
    let ink = DVec3::new(r.into(), g.into(), b.into()) - paper;
    let seen = DVec3::from(rgb.map(f64::from)) - paper;
    let share = seen.dot(ink) / ink.length_squared();
    (0.4..=1.2).contains(&share) && (seen - ink * share).length() < 45.0
}

#[test]
fn the_dimension_line_is_where_the_nearest_points_are() {
    for scene in ["tall-pickup", "coupe-full-rise", "light-in-the-way"] {
        let shot = Shot {
            size: [1280, 720],
            ..Shot::plain(scene, Sight::Side).with(Action::ToSafeLock)
        };
        let shown = take(shot.clone().captioned());
        let hidden = take(Shot {
            captions: true,
            ..shot
        });
        let mut best = 0;
        for pair in &shown.here.pairs {
            let name = (pair.moving.clone(), pair.fixed.clone());
            let Some((a, b)) = pair.points_m.filter(|_| shown.drawn.contains(&name)) else {
                continue;
            };
            let (from, to) = (shown.pixel(a).unwrap(), shown.pixel(b).unwrap());
            // Shorter ones are all arrow heads.
            if (from[0] - to[0]).hypot(from[1] - to[1]) < 12.0 {
                continue;
            }
            let colour = match pair.state {
                PairState::Clear => palette::CLEAR,
                PairState::Tight => palette::TIGHT,
                PairState::Strikes => palette::STRIKES,
                PairState::NotShown => panic!("{scene} is measured"),
            };
            // Along the line its colour is there with dimensions on and not with them off.
            let with = along(&shown, from, to, colour);
            best = best.max(with.saturating_sub(along(&hidden, from, to, colour)));
        }
        // A plate may stand over one line or another, not over all.
        assert!(best >= 10, "{scene}: {best} of 23 places along a line");
    }
}

/// At how many of 23 places between two pixels there is ink of this colour.
fn along(taken: &Taken, from: [f64; 2], to: [f64; 2], colour: Colour) -> usize {
    let places = (1..24).map(|i| {
        let share = f64::from(i) / 24.0;
        [0, 1].map(|k| from[k] + (to[k] - from[k]) * share)
    });
    let is_there = |at: &[f64; 2]| {
        (-2..=2).any(|dx| {
            (-2..=2).any(|dy| {
                let x = (at[0] as i64 + dx).max(0) as u32;
                let y = (at[1] as i64 + dy).max(0) as u32;
                let pixel = taken.pixels.at(x, y);
                pixel.is_some_and(|rgb| is_ink(rgb, colour))
            })
        })
    };
    places.filter(is_there).count()
}

#[test]
fn the_vehicle_stands_higher_in_the_picture_at_a_higher_lock() {
    let height = |lock| {
        let shot = Shot::plain("tall-pickup", Sight::Side).with(Action::ToLock(lock));
        let taken = take(shot);
        let (mut sum, mut count) = (0.0, 0.0);
        for ([_, y], rgb) in pixels(&taken) {
            if is_body(rgb) {
                sum += f64::from(y);
                count += 1.0;
            }
        }
        assert!(count > 2000.0, "lock {lock}: {count} pixels of the body");
        // How high the body's middle really is, in pixels.
        let body = taken
            .solids
            .iter()
            .find(|s| s.name == "vehicle/side 3")
            .unwrap();
        let at = taken.pixel(body.bay_from_solid.translation).unwrap();
        (sum / count, at[1])
    };
    let (low, high) = (height(2), height(6));
    let (seen, real) = (low.0 - high.0, low.1 - high.1);
    assert!(real > 10.0, "the locks are apart");
    assert!(
        (seen - real).abs() < 2.0,
        "climbed {seen} pixels in the picture, {real} in the bay"
    );
}

#[test]
fn from_above_the_ceiling_covers_nothing() {
    for scene in ["tall-pickup", "coupe-full-rise"] {
        let taken = take(Shot::plain(scene, Sight::Plan));
        // Places on the vehicle's roof, over its middle line.
        let roof: Vec<DVec3> = taken
            .solids
            .iter()
            .filter(|s| s.role == Role::Body && s.name.starts_with("vehicle/roof "))
            .map(|s| {
                let (low, high) = s.bounds();
                (low + high) * 0.5 + DVec3::new(0.25 * (high.x - low.x), 0.0, 0.0)
            })
            .collect();
        let painted = roof
            .iter()
            .filter(|place| {
                let [x, y] = taken.pixel(**place).unwrap();
                let rgb = taken.pixels.at(x as u32, y as u32).unwrap();
                let bed_or_glass = near(rgb, things::BED, 40) || near(rgb, things::GLASS, 40);
                is_body(rgb) || bed_or_glass
            })
            .count();
        assert!(
            painted * 3 >= roof.len() * 2,
            "{scene}: {painted} of {} places on the roof are seen",
            roof.len()
        );
    }
}

#[test]
fn every_scene_has_all_of_its_vehicle_in_the_picture() {
    for scene in SCENES {
        for from in [Sight::Corner, Sight::Front, Sight::Side, Sight::Plan] {
            let taken = take(Shot {
                size: [160, 90],
                ..Shot::plain(scene, from).with(Action::ToTop)
            });
            for solid in taken.solids.iter().filter(|s| s.layer() == Layer::Vehicle) {
                let (low, high) = solid.bounds();
                for i in 0..8 {
                    let pick = |bit: usize, a: f64, b: f64| if i >> bit & 1 == 1 { b } else { a };
                    let corner = DVec3::new(
                        pick(0, low.x, high.x),
                        pick(1, low.y, high.y),
                        pick(2, low.z, high.z),
                    );
                    let at = taken.camera.project(corner, taken.aspect).unwrap();
                    assert!(
                        at.abs().max_element() <= 1.0,
                        "{scene} {from:?}: {} at {at}, {:?}",
                        solid.name,
                        taken.bounds_m
                    );
                }
            }
        }
    }
}

#[test]
fn what_is_tight_is_lit() {
    // The same place seen with and without a lit pair differs, and in the colour of the state.
    let quiet = take(Shot::plain("coupe-full-rise", Sight::Side));
    let (moving, fixed) = ("vehicle/side 3".to_owned(), "lift/post left".to_owned());
    let lit =
        take(Shot::plain("coupe-full-rise", Sight::Side).with(Action::ShowPair(moving, fixed)));
    if lit.camera != quiet.camera {
        // The camera moved to the pair: what counts is that it is lit there.
        let teal = |taken: &Taken| {
            pixels(taken)
                .filter(|(_, [r, g, b])| i32::from(*g) - i32::from(*r) > 45 && b.abs_diff(*g) < 50)
                .count()
        };
        assert!(teal(&lit) > teal(&quiet) + 200);
        return;
    }
    let changed = pixels(&quiet)
        .zip(pixels(&lit))
        .filter(|((_, a), (_, b))| a.iter().zip(b).any(|(a, b)| a.abs_diff(*b) > 20))
        .count();
    assert!(changed > 300, "{changed} pixels changed");
}

/// Letters that were not on the picture before must be on the very first that has them: a digit
/// that is missing turns one length into another.
#[test]
fn every_letter_is_there_at_once() {
    for (size, scene) in [
        ([1280, 720], "tall-pickup"),
        ([720, 1280], "camper-under-ties"),
        ([1000, 600], "coupe-full-rise"),
    ] {
        for share in [0.13, 0.37, 0.59, 0.71, 0.93] {
            let shot = Shot {
                size,
                ..Shot::plain(scene, Sight::Corner)
                    .with(Action::Travel(share))
                    .captioned()
            };
            let first = take(shot.clone());
            let again = take(shot);
            // Edges that lie behind two panes of glass may be blended in another order; that is a
            // breath. Ink on a plate is not.
            let apart = |a: &[u8], b: &[u8]| -> u32 {
                let channels = a[..3].iter().zip(&b[..3]);
                channels.map(|(a, b)| u32::from(a.abs_diff(*b))).sum()
            };
            let differing = first.pixels.rgba.chunks_exact(4);
            let differing = differing
                .zip(again.pixels.rgba.chunks_exact(4))
                .filter(|(a, b)| apart(a, b) > 120)
                .count();
            assert_eq!(differing, 0, "{scene} at {share} m, {size:?}");
        }
    }
}

/// The words fill the title block at any shape of picture.
#[test]
fn cautions_are_written_at_every_shape() {
    for size in [
        [1280, 720],
        [720, 1280],
        [400, 1200],
        [2000, 500],
        [900, 900],
    ] {
        let shot = Shot {
            size,
            ..Shot::plain("camper-under-ties", Sight::Corner)
                .with(Action::ToSafeLock)
                .captioned()
        };
        let taken = take(shot);
        assert!(taken.legible, "{size:?}");
        // The lower half of the block: that is where the cautions stand.
        let middle = (taken.view[1] + size[1]) / 2;
        let below = (middle..size[1]).flat_map(|y| (0..size[0]).map(move |x| [x, y]));
        let (all, dark) = below.fold((0, 0), |(all, dark), [x, y]| {
            let [r, g, b] = taken.pixels.at(x, y).unwrap().map(u32::from);
            (all + 1, dark + u32::from(r + g + b < 300))
        });
        assert!(dark * 200 > all, "{size:?}: {dark} of {all} pixels are ink");
    }
    let small = Shot {
        size: [320, 180],
        ..Shot::plain("camper-under-ties", Sight::Corner).captioned()
    };
    assert!(!take(small).legible);
}
