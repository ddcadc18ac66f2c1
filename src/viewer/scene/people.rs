//! How tall are the people beside all this?
//!
//! A plain figure of each person's height stands under the raised vehicle where it rests on a safe
//! lock and there is room, else outside before the door. The figures are a help for the eye: they are
//! no solids of the bay, nothing is checked against them, and nothing of the verdict comes from them.

use std::marker::PhantomData;

use bevy::prelude::*;
use glam::DVec3;

use super::{Shown, Side};
use crate::bay::Bay;
use crate::drawing::palette::things;
use crate::panels::shown;
use crate::solids::shell::floor_level_m;
use crate::solids::{Layer, Solid};
use crate::viewer::OpenDesk;
use crate::viewer::convert::colour;

/// Air over the head at which there is room to stand, metres.
const AIR_M: f64 = 0.02;
/// How far from the wall with the door someone waits outside, metres.
const OUTSIDE_M: f64 = 1.2;
/// Distance between two people, metres.
const APART_M: f64 = 0.75;
/// Half the room that a figure takes, metres.
const ELBOWS_M: f64 = 0.3;

/// A drawn person: a help for the eye, not a solid of the bay.
#[derive(Debug, Component)]
pub(super) struct Figure<S: Side>(PhantomData<S>);

/// How tall someone is, metres, and whether they may stand under the vehicle.
type Who = (f64, bool);

/// Puts them where they stand, anew whenever anything changed.
pub(super) fn people<S: Side>(
    mut commands: Commands,
    open: Res<OpenDesk>,
    shown: Res<Shown<S>>,
    mut meshes: ResMut<Assets<Mesh>>,
    mut materials: ResMut<Assets<StandardMaterial>>,
    old: Query<Entity, With<Figure<S>>>,
    mut done: Local<Option<(u64, Vec<Who>)>>,
) {
    let desk = S::desk(&open.0).filter(|desk| desk.settings.people);
    let bay = shown.bay.as_ref().zip(desk);
    let who: Vec<Who> = bay
        .iter()
        .flat_map(|(bay, desk)| bay.policy.people.iter().map(|person| (person, *desk)))
        .map(|(person, desk)| (person.height.m(), desk))
        .map(|(height_m, desk)| (height_m, shown::may_stand_under(desk, height_m)))
        .collect();
    let now = (shown.revision, who);
    if done.as_ref() == Some(&now) {
        return;
    }
    for figure in &old {
        commands.entity(figure).despawn();
    }
    let who = &done.insert(now).1;
    let Some((bay, _)) = bay else {
        return;
    };
    let material = materials.add(StandardMaterial {
        base_color: colour(things::PERSON),
        perceptual_roughness: 0.95,
        reflectance: 0.15,
        ..default()
    });
    for (index, (person, who)) in bay.policy.people.iter().zip(who).enumerate() {
        let place = place(bay, &shown.solids, index, *who);
        let root = commands
            .spawn((
                Figure::<S>(PhantomData),
                Name::new(format!("drawing aid: {}", person.name)),
                Transform::from_translation(shown.origin.place(place)),
                Visibility::default(),
            ))
            .id();
        for (mesh, transform) in body(person.height.m() as f32) {
            commands.spawn((
                Mesh3d(meshes.add(mesh)),
                MeshMaterial3d(material.clone()),
                transform,
                S::layer(),
                ChildOf(root),
            ));
        }
    }
}

/// Where someone of this height stands: under the vehicle where they may and nothing of it or of
/// the lift hangs lower than their head, else outside, before the wall with the door.
fn place(bay: &Bay, solids: &[Solid], index: usize, (height_m, may): Who) -> DVec3 {
    let step = index as f64 * APART_M;
    // The middle of the opening is where `x` and `y` begin.
    let outside = DVec3::new(-step, -OUTSIDE_M, floor_level_m(bay, 0.0, 0.0));
    if !may {
        return outside;
    }
    let vehicle: Vec<(DVec3, DVec3)> = solids
        .iter()
        .filter(|s| s.layer() == Layer::Vehicle)
        .map(Solid::bounds)
        .collect();
    let (low, high) = vehicle
        .iter()
        .copied()
        .reduce(|a, b| (a.0.min(b.0), a.1.max(b.1)))
        .unwrap_or((DVec3::ZERO, DVec3::ZERO));
    let middle = (low + high) * 0.5;
    let on_floor = |x: f64, y: f64| DVec3::new(x, y, floor_level_m(bay, x, y));
    // A little toward the door from the middle: not behind a column from most sides.
    let under =
        [-0.9, 0.9, -1.5, 1.5, -0.3].map(|along| on_floor(middle.x, middle.y + along - step));
    let has_room = |at: &DVec3| {
        solids
            .iter()
            .filter(|s| is_above_people(s.layer()))
            .all(|solid| {
                let (low, high) = solid.bounds();
                let beside = low.x > at.x + ELBOWS_M
                    || high.x < at.x - ELBOWS_M
                    || low.y > at.y + ELBOWS_M
                    || high.y < at.y - ELBOWS_M;
                beside || low.z > at.z + height_m + AIR_M
            })
    };
    under.into_iter().find(has_room).unwrap_or(outside)
}

/// True for what someone who stands under the vehicle may bump their head on.
const fn is_above_people(layer: Layer) -> bool {
    matches!(layer, Layer::Vehicle | Layer::MovingLift | Layer::Post)
}

/// A plain standing figure about its feet: legs, trunk and head.
fn body(height: f32) -> Vec<(Mesh, Transform)> {
    let part = |low: f32, high: f32, radius: f32, x: f32| {
        let (low, high) = (low * height, high * height);
        let radius = radius * height;
        let mesh = Mesh::from(Capsule3d::new(radius, (high - low - 2.0 * radius).max(0.0)));
        // The engine's capsules stand along its y.
        let transform = Transform::from_xyz(x * height, 0.0, 0.5 * (low + high))
            .with_rotation(Quat::from_rotation_x(std::f32::consts::FRAC_PI_2));
        (mesh, transform)
    };
    vec![
        part(0.0, 0.52, 0.045, -0.055),
        part(0.0, 0.52, 0.045, 0.055),
        part(0.44, 0.855, 0.1, 0.0),
        part(0.47, 0.82, 0.032, -0.135),
        part(0.47, 0.82, 0.032, 0.135),
        part(0.855, 1.0, 0.058, 0.0),
    ]
}
