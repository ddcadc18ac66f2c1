//! Which entity stands for each solid, and what of it changed?

use std::collections::{HashMap, HashSet};
use std::marker::PhantomData;
use std::sync::Arc;

use bevy::camera::visibility::RenderLayers;
use bevy::light::NotShadowCaster;
use bevy::prelude::*;
use glam::DVec3;

use super::cut_away::{Inner, Mode};
use super::materials::Materials;
use super::seen::{Seen, lit};
use super::{Shown, Side, mesh};
use crate::bay::Bay;
use crate::drawing::palette::things;
use crate::panels::settings::Theme;
use crate::solids::vehicle::wheel_middle_m;
use crate::solids::{Layer, Pose, Role, Shape, Solid};
use crate::viewer::OpenDesk;
use crate::viewer::facets::{Edge, Facet, HalfSpace, edges, facets, section};
use crate::viewer::paint::{Finish, Livery, Paint, Painting, Patch, paint_of, painted};

/// What stands on the stage of one side: one entity for each solid, by name.
#[derive(Debug, Default, Resource)]
pub(super) struct Stage<S: Side> {
    parts: HashMap<String, Part>,
    /// Of the list and of the cut.
    done: Option<(u64, Option<(f64, bool)>)>,
    /// For which bay and with what its vehicle is painted.
    livery: Option<(Arc<Bay>, Livery)>,
    theme: Option<Theme>,
    side: PhantomData<S>,
}

/// The entities of one solid.
#[derive(Debug)]
struct Part {
    root: Entity,
    faces: Vec<(Finish, Entity)>,
    lines: Option<Entity>,
    recipe: Recipe,
    skin: Skin,
    role: Role,
    inner: Option<Inner>,
    seen: Option<Seen>,
}

/// What a solid's meshes depend on.
#[derive(Debug, PartialEq)]
struct Recipe {
    shape: Shape,
    painting: Arc<Painting>,
    /// What is kept of it, in its own frame.
    kept: Option<HalfSpace>,
}

impl Recipe {
    /// True when only the paint may differ.
    fn has_the_form_of(&self, other: &Self) -> bool {
        self.shape == other.shape && self.kept == other.kept
    }
}

/// The faces of a solid, less what the cut takes away.
#[derive(Debug)]
struct Skin {
    left: Vec<Facet>,
    /// The face that the cut opens.
    opened: Option<Facet>,
}

impl Skin {
    fn of(recipe: &Recipe) -> Self {
        let whole = facets(&recipe.shape);
        let (left, opened) = match &recipe.kept {
            Some(kept) => section(&whole, kept),
            None => (whole, None),
        };
        Self { left, opened }
    }

    fn painted(&self, painting: &Painting) -> Vec<Patch> {
        let mut patches = painted(
            self.left.clone(),
            |facet| painting.base(facet),
            &painting.decals,
        );
        patches.extend(self.opened.clone().map(|facet| Patch {
            facet,
            paint: Paint::matt(things::CUT),
        }));
        patches
    }

    fn edges(&self) -> Vec<Edge> {
        let mut closed = self.left.clone();
        closed.extend(self.opened.clone());
        edges(&closed)
    }
}

pub(super) fn theme<S: Side>(
    desk: Res<OpenDesk>,
    mut stage: ResMut<Stage<S>>,
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
pub(super) fn place<S: Side>(
    mut commands: Commands,
    open: Res<OpenDesk>,
    shown: Res<Shown<S>>,
    mut stage: ResMut<Stage<S>>,
    mut meshes: ResMut<Assets<Mesh>>,
    mut transforms: Query<&mut Transform>,
) {
    let desk = S::desk(&open.0);
    let cut = desk.and_then(|desk| {
        let [_, _, into] = desk.camera.axes();
        Some((desk.settings.cut_m?, into.y >= -1e-6))
    });
    if stage.done == Some((shown.revision, cut)) {
        return;
    }
    stage.done = Some((shown.revision, cut));
    let (Some(bay), Some(desk)) = (&shown.bay, desk) else {
        for part in stage.parts.drain().map(|(_, part)| part) {
            commands.entity(part.root).despawn();
        }
        return;
    };
    let kept = cut.map(|(at_m, from_the_door)| kept(at_m, from_the_door));
    let before = stage.livery.take();
    let same_bay = before.as_ref().is_some_and(|(of, _)| Arc::ptr_eq(of, bay));
    let worn = before.map(|(_, livery)| livery).filter(|_| same_bay);
    let livery = livery(bay, &shown.solids, worn.clone());
    let same_livery = worn.is_some_and(|worn| worn.is(&livery));
    let middle_m = (desk.bounds_m[0] + desk.bounds_m[1]) * 0.5;
    let layer = S::layer();

    let names: HashSet<&str> = shown.solids.iter().map(|s| s.name.as_str()).collect();
    stage.parts.retain(|name, part| {
        let stays = names.contains(name.as_str());
        if !stays {
            commands.entity(part.root).despawn();
        }
        stays
    });
    for solid in &shown.solids {
        // What a solid is painted with depends on the bay, on its own shape and, for the body, on
        // where the wheels hang.
        let painting = stage
            .parts
            .get(&solid.name)
            .filter(|part| same_bay && (same_livery || part.role != Role::Body))
            .filter(|part| part.role == solid.role && part.recipe.shape == solid.shape)
            .map_or_else(
                || Arc::new(paint_of(bay, solid, &livery)),
                |part| Arc::clone(&part.recipe.painting),
            );
        let recipe = Recipe {
            shape: solid.shape.clone(),
            painting,
            kept: kept.and_then(|kept| meets(solid, &kept)),
        };
        let transform = shown.origin.transform(&solid.bay_from_solid);
        let inner = Inner::of(solid, middle_m);
        match stage.parts.get_mut(&solid.name) {
            Some(part) if part.recipe == recipe && part.role == solid.role => {
                if let Ok(mut at) = transforms.get_mut(part.root) {
                    at.set_if_neq(transform);
                }
                part.inner = inner;
            }
            // Wheels that hang lower are seen elsewhere through their wells; the skin stays.
            Some(part) if part.recipe.has_the_form_of(&recipe) && part.role == solid.role => {
                for (_, face) in part.faces.drain(..) {
                    commands.entity(face).despawn();
                }
                part.recipe = recipe;
                let painted = part.skin.painted(&part.recipe.painting);
                part.faces = faces(
                    &mut commands,
                    &mut meshes,
                    &layer,
                    (part.root, part.role),
                    &painted,
                );
                part.seen = None;
                commands.entity(part.root).insert(transform);
                part.inner = inner;
            }
            known => {
                if let Some(old) = known {
                    commands.entity(old.root).despawn();
                }
                let at = (transform, &layer);
                let part = build(&mut commands, &mut meshes, solid, at, recipe, inner);
                stage.parts.insert(solid.name.clone(), part);
            }
        }
    }
    stage.livery = Some((Arc::clone(bay), livery));
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

/// The livery of the vehicle as its wheels now hang; `before` is that of the same vehicle, and stays
/// where nothing changed, so that nothing is painted anew.
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
    match before {
        Some(before) => before.with_wheels(&bay.vehicle, &wheels),
        None => Livery::of(&bay.vehicle, &wheels),
    }
}

fn build(
    commands: &mut Commands,
    meshes: &mut Assets<Mesh>,
    solid: &Solid,
    (transform, layer): (Transform, &RenderLayers),
    recipe: Recipe,
    inner: Option<Inner>,
) -> Part {
    let skin = Skin::of(&recipe);
    let root = commands
        .spawn((
            Name::new(solid.name.clone()),
            transform,
            Visibility::default(),
        ))
        .id();
    let painted = skin.painted(&recipe.painting);
    let faces = faces(commands, meshes, layer, (root, solid.role), &painted);
    let edges = if has_lines(solid) || recipe.kept.is_some() {
        skin.edges()
    } else {
        Vec::new()
    };
    let lines = mesh::lines(&edges).map(|mesh| {
        commands
            .spawn((
                Mesh3d(meshes.add(mesh)),
                NotShadowCaster,
                layer.clone(),
                ChildOf(root),
            ))
            .id()
    });
    Part {
        root,
        faces,
        lines,
        recipe,
        skin,
        role: solid.role,
        inner,
        seen: None,
    }
}

/// What is painted, one entity for each finish.
fn faces(
    commands: &mut Commands,
    meshes: &mut Assets<Mesh>,
    layer: &RenderLayers,
    (root, role): (Entity, Role),
    painted: &[Patch],
) -> Vec<(Finish, Entity)> {
    mesh::meshes(painted)
        .into_iter()
        .map(|(finish, mesh)| {
            let mut face = commands.spawn((Mesh3d(meshes.add(mesh)), layer.clone(), ChildOf(root)));
            if !casts_shadow(role) {
                face.insert(NotShadowCaster);
            }
            (finish, face.id())
        })
        .collect()
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
pub(super) fn see<S: Side>(
    mut commands: Commands,
    open: Res<OpenDesk>,
    mut stage: ResMut<Stage<S>>,
    materials: Res<Materials>,
) {
    let Some(desk) = S::desk(&open.0) else { return };
    let lit = lit(desk);
    for (name, part) in &mut stage.bypass_change_detection().parts {
        let mode = part
            .inner
            .map_or(Mode::Whole, |inner| inner.mode(&desk.camera));
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
