//! Which entity stands for each solid, and what of it changed?

use std::collections::{HashMap, HashSet};

use bevy::light::NotShadowCaster;
use bevy::prelude::*;
use glam::DVec3;

use super::cut_away::{Inner, Mode};
use super::materials::Materials;
use super::seen::{Seen, lit};
use super::{SceneSet, Shown, mesh};
use crate::bay::Bay;
use crate::drawing::palette::things;
use crate::panels::settings::Theme;
use crate::solids::vehicle::wheel_middle_m;
use crate::solids::{Layer, Pose, Role, Shape, Solid};
use crate::viewer::OpenDesk;
use crate::viewer::convert::Origin;
use crate::viewer::facets::{Edge, HalfSpace, edges, facets, section};
use crate::viewer::paint::{Finish, Livery, Paint, Painting, Patch, paint_of, painted};

/// One entity for each solid, by name.
pub(super) struct EntitiesPlugin;

impl Plugin for EntitiesPlugin {
    fn build(&self, app: &mut App) {
        app.init_resource::<Materials>()
            .init_resource::<Stage>()
            .add_systems(Update, (theme, place, see).chain().in_set(SceneSet::Show));
    }
}

/// What stands on the stage.
#[derive(Debug, Default, Resource)]
struct Stage {
    parts: HashMap<String, Part>,
    /// Of the list and of the cut.
    done: Option<(u64, Option<(f64, bool)>)>,
    livery: Option<Livery>,
    theme: Option<Theme>,
}

/// The entities of one solid.
#[derive(Debug)]
struct Part {
    root: Entity,
    faces: Vec<(Finish, Entity)>,
    lines: Option<Entity>,
    recipe: Recipe,
    role: Role,
    inner: Option<Inner>,
    seen: Option<Seen>,
}

/// What a solid's meshes depend on.
#[derive(Debug, PartialEq)]
struct Recipe {
    shape: Shape,
    painting: Painting,
    /// What is kept of it, in its own frame.
    kept: Option<HalfSpace>,
}

fn theme(
    desk: Res<OpenDesk>,
    mut stage: ResMut<Stage>,
    materials: Res<Materials>,
    mut assets: ResMut<Assets<StandardMaterial>>,
) {
    let theme = desk.0.settings.theme;
    if stage.theme != Some(theme) {
        stage.theme = Some(theme);
        materials.set_theme(theme, &mut assets);
    }
}

/// Puts every solid of the list where it stands; builds meshes only where a shape, its paint or
/// the cut through it changed.
fn place(
    mut commands: Commands,
    desk: Res<OpenDesk>,
    shown: Res<Shown>,
    origin: Res<Origin>,
    mut stage: ResMut<Stage>,
    mut meshes: ResMut<Assets<Mesh>>,
    mut transforms: Query<&mut Transform>,
) {
    let cut = desk.0.settings.cut_m.map(|at_m| {
        let [_, _, into] = desk.0.camera.axes();
        (at_m, into.y >= -1e-6)
    });
    if stage.done == Some((shown.revision, cut)) {
        return;
    }
    stage.done = Some((shown.revision, cut));
    let Some(bay) = &shown.bay else {
        for part in stage.parts.drain().map(|(_, part)| part) {
            commands.entity(part.root).despawn();
        }
        return;
    };
    let kept = cut.map(|(at_m, from_the_door)| kept(at_m, from_the_door));
    let livery = livery(bay, &shown.solids, stage.livery.take());
    let middle_m = (desk.0.bounds_m[0] + desk.0.bounds_m[1]) * 0.5;

    let names: HashSet<&str> = shown.solids.iter().map(|s| s.name.as_str()).collect();
    stage.parts.retain(|name, part| {
        let stays = names.contains(name.as_str());
        if !stays {
            commands.entity(part.root).despawn();
        }
        stays
    });
    for solid in &shown.solids {
        let recipe = Recipe {
            shape: solid.shape.clone(),
            painting: paint_of(bay, solid, &livery),
            kept: kept.and_then(|kept| meets(solid, &kept)),
        };
        let transform = origin.transform(&solid.bay_from_solid);
        let inner = Inner::of(solid, middle_m);
        match stage.parts.get_mut(&solid.name) {
            Some(part) if part.recipe == recipe && part.role == solid.role => {
                if let Ok(mut at) = transforms.get_mut(part.root) {
                    at.set_if_neq(transform);
                }
                part.inner = inner;
            }
            known => {
                if let Some(old) = known {
                    commands.entity(old.root).despawn();
                }
                let part = build(&mut commands, &mut meshes, solid, transform, recipe, inner);
                stage.parts.insert(solid.name.clone(), part);
            }
        }
    }
    stage.livery = Some(livery);
}

/// What is kept of the bay: what lies beyond the cut, seen from where the eye is.
fn kept(at_m: f64, from_the_door: bool) -> HalfSpace {
    let normal = if from_the_door {
        DVec3::NEG_Y
    } else {
        DVec3::Y
    };
    HalfSpace::behind(normal, DVec3::Y * at_m)
}

/// The half-space in the solid's own frame, where it takes anything of it away.
fn meets(solid: &Solid, kept: &HalfSpace) -> Option<HalfSpace> {
    let Pose {
        rotation,
        translation,
    } = solid.bay_from_solid;
    let touched = kept.outside_m(solid.support(kept.normal)) > 0.0;
    touched.then(|| kept.seen_from(rotation, translation))
}

/// The livery of the vehicle as its wheels now hang; the one before where nothing changed, so
/// that nothing is painted anew.
fn livery(bay: &Bay, solids: &[Solid], before: Option<Livery>) -> Livery {
    let body = solids
        .iter()
        .find(|s| s.role == Role::Body && matches!(s.shape, Shape::Prism { .. }));
    let mut wheels = std::array::from_fn(|index| wheel_middle_m(&bay.vehicle, index));
    if let Some(body) = body {
        let Pose {
            rotation,
            translation,
        } = body.bay_from_solid;
        let on_axles = solids.iter().filter(|s| matches!(s.role, Role::Wheel(_)));
        for (wheel, solid) in wheels.iter_mut().zip(on_axles) {
            let place = rotation.inverse() * (solid.bay_from_solid.translation - translation);
            // To a tenth of a millimetre, so that rounding paints nothing anew.
            *wheel = (place * 1e4).round() * 1e-4;
        }
    }
    let livery = Livery::of(&bay.vehicle, &wheels);
    match before {
        Some(before) if before == livery => before,
        _ => livery,
    }
}

fn build(
    commands: &mut Commands,
    meshes: &mut Assets<Mesh>,
    solid: &Solid,
    transform: Transform,
    recipe: Recipe,
    inner: Option<Inner>,
) -> Part {
    let (patches, edges) = surface(solid, &recipe);
    let root = commands
        .spawn((
            Name::new(solid.name.clone()),
            transform,
            Visibility::default(),
        ))
        .id();
    let mut faces = Vec::new();
    for (finish, mesh) in mesh::meshes(&patches) {
        let face = commands
            .spawn((Mesh3d(meshes.add(mesh)), ChildOf(root)))
            .id();
        if !casts_shadow(solid.role) {
            commands.entity(face).insert(NotShadowCaster);
        }
        faces.push((finish, face));
    }
    let lines = mesh::lines(&edges).map(|mesh| {
        commands
            .spawn((Mesh3d(meshes.add(mesh)), NotShadowCaster, ChildOf(root)))
            .id()
    });
    Part {
        root,
        faces,
        lines,
        recipe,
        role: solid.role,
        inner,
        seen: None,
    }
}

/// The painted faces and the lines of a solid, less what the cut takes away.
fn surface(solid: &Solid, recipe: &Recipe) -> (Vec<Patch>, Vec<Edge>) {
    let whole = facets(&recipe.shape);
    let (left, opened) = match &recipe.kept {
        Some(kept) => section(&whole, kept),
        None => (whole, None),
    };
    let mut closed = left.clone();
    closed.extend(opened.clone());
    let lines = if has_lines(solid) || recipe.kept.is_some() {
        edges(&closed)
    } else {
        Vec::new()
    };
    let painting = &recipe.painting;
    let mut patches = painted(left, |facet| painting.base(facet), &painting.decals);
    patches.extend(opened.map(|facet| Patch {
        facet,
        paint: Paint::matt(things::CUT),
    }));
    (patches, lines)
}

/// Lines make plain boxes readable; on what is built of many pieces they would only show the
/// joints.
fn has_lines(solid: &Solid) -> bool {
    match solid.role {
        Role::DoorFitting | Role::Mirror | Role::Wheel(_) | Role::Pad(_) => false,
        Role::Body => matches!(solid.shape, Shape::Box { .. }),
        Role::Floor => !solid.name.contains("patch"),
        _ => true,
    }
}

/// The room lets the light in from everywhere.
fn casts_shadow(role: Role) -> bool {
    role.layer() != Layer::Shell
}

/// Cuts away what stands between the eye and the inside, and lights what is tight or strikes.
fn see(
    mut commands: Commands,
    desk: Res<OpenDesk>,
    mut stage: ResMut<Stage>,
    materials: Res<Materials>,
) {
    let lit = lit(&desk.0);
    for (name, part) in &mut stage.bypass_change_detection().parts {
        let mode = part
            .inner
            .map_or(Mode::Whole, |inner| inner.mode(&desk.0.camera));
        let seen = Seen::new(mode, lit.get(name.as_str()).copied());
        if part.seen == Some(seen) {
            continue;
        }
        part.seen = Some(seen);
        for &(finish, face) in &part.faces {
            let material = match seen.mode {
                Mode::Glassy => materials.glassy(seen.lit),
                _ => materials.faces(finish, seen.lit),
            };
            let visibility = match seen.mode {
                Mode::Away => Visibility::Hidden,
                _ => Visibility::Inherited,
            };
            let mut entity = commands.entity(face);
            entity.insert((MeshMaterial3d(material), visibility));
            if seen.mode == Mode::Whole && casts_shadow(part.role) {
                entity.remove::<NotShadowCaster>();
            } else {
                entity.insert(NotShadowCaster);
            }
        }
        if let Some(lines) = part.lines {
            let material = match seen.mode {
                Mode::Whole => materials.edge.clone(),
                _ => materials.edge_away.clone(),
            };
            commands.entity(lines).insert(MeshMaterial3d(material));
        }
    }
}
