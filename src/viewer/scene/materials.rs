//! What is each thing made of, as the engine sees it?
//!
//! Colours lie on the meshes' corners; there is one material for each finish, and one more for
//! each state that a solid can be lit in.

use std::collections::HashMap;

use bevy::prelude::*;

use super::seen::Lit;
use crate::drawing::palette::{self, things};
use crate::panels::settings::Theme;
use crate::viewer::convert::{colour, light};
use crate::viewer::paint::Finish;

/// The materials of the scene.
#[derive(Debug, Resource)]
pub(super) struct Materials {
    solid: HashMap<(Finish, Option<Lit>), Handle<StandardMaterial>>,
    glassy: HashMap<Option<Lit>, Handle<StandardMaterial>>,
    /// Along the edges of what is drawn whole.
    pub(super) edge: Handle<StandardMaterial>,
    /// Along the edges of what is cut away.
    pub(super) edge_away: Handle<StandardMaterial>,
}

impl Materials {
    /// For a solid's faces.
    pub(super) fn faces(&self, finish: Finish, lit: Option<Lit>) -> Handle<StandardMaterial> {
        self.solid.get(&(finish, lit)).cloned().unwrap_or_default()
    }

    /// For faces that are looked through.
    pub(super) fn glassy(&self, lit: Option<Lit>) -> Handle<StandardMaterial> {
        self.glassy.get(&lit).cloned().unwrap_or_default()
    }

    /// Lines suit the ground they are drawn on.
    pub(super) fn set_theme(&self, theme: Theme, materials: &mut Assets<StandardMaterial>) {
        let line = match theme {
            Theme::Light => things::EDGE_LIGHT,
            Theme::Dark => things::EDGE_DARK,
        };
        for (handle, alpha) in [(&self.edge, 0.55), (&self.edge_away, 0.45)] {
            if let Some(mut material) = materials.get_mut(handle) {
                material.base_color = colour(line).with_alpha(alpha);
            }
        }
    }
}

impl FromWorld for Materials {
    fn from_world(world: &mut World) -> Self {
        let mut assets = world.resource_mut::<Assets<StandardMaterial>>();
        let lits = [
            None,
            Some(Lit::Strikes),
            Some(Lit::Tight),
            Some(Lit::Picked),
        ];
        let mut solid = HashMap::new();
        let mut glassy = HashMap::new();
        for lit in lits {
            for finish in Finish::ALL {
                solid.insert((finish, lit), assets.add(faces(finish, lit)));
            }
            glassy.insert(lit, assets.add(looked_through(lit)));
        }
        let line = || StandardMaterial {
            unlit: true,
            alpha_mode: AlphaMode::Blend,
            ..default()
        };
        let (edge, edge_away) = (assets.add(line()), assets.add(line()));
        Self {
            solid,
            glassy,
            edge,
            edge_away,
        }
    }
}

fn state(lit: Lit) -> palette::Colour {
    match lit {
        Lit::Strikes => palette::STRIKES,
        Lit::Tight => palette::TIGHT,
        Lit::Picked => palette::CLEAR,
    }
}

fn faces(finish: Finish, lit: Option<Lit>) -> StandardMaterial {
    let (roughness, reflectance) = match finish {
        Finish::Matt => (0.95, 0.15),
        Finish::Gloss => (0.42, 0.35),
        Finish::Glow => (0.9, 0.2),
    };
    let mut material = StandardMaterial {
        perceptual_roughness: roughness,
        reflectance,
        unlit: finish == Finish::Glow && lit.is_none(),
        ..default()
    };
    if let Some(lit) = lit {
        // A weak tint of the thing's own colours, and a glow in the state's.
        material.base_color = colour(state(lit)).mix(&Color::WHITE, 0.35);
        material.emissive = light(state(lit)) * GLOW;
    }
    material
}

/// How strongly a lit solid glows: its colour is added to what the light gives.
const GLOW: f32 = 0.3;

fn looked_through(lit: Option<Lit>) -> StandardMaterial {
    let mut material = faces(Finish::Matt, lit);
    material.alpha_mode = AlphaMode::Blend;
    let alpha = if lit.is_some() { 0.42 } else { 0.16 };
    material.base_color = material.base_color.with_alpha(alpha);
    material
}
