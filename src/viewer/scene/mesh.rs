//! How do painted faces and edges become meshes?

use std::collections::BTreeMap;

use bevy::asset::RenderAssetUsages;
use bevy::mesh::{Indices, PrimitiveTopology};
use bevy::prelude::*;

use crate::viewer::convert::{light, vector};
use crate::viewer::facets::Edge;
use crate::viewer::paint::{Finish, Patch};

/// How far lines stand off the edge they mark, metres, so that they don't flicker with the faces.
const OFF_EDGE_M: f64 = 0.002;

/// One mesh for each finish that occurs, the colours at the corners.
pub(super) fn meshes(patches: &[Patch]) -> Vec<(Finish, Mesh)> {
    let mut by_finish: BTreeMap<u8, (Finish, Vec<&Patch>)> = BTreeMap::new();
    for patch in patches {
        let finish = patch.paint.finish;
        let entry = by_finish.entry(finish as u8);
        entry.or_insert((finish, Vec::new())).1.push(patch);
    }
    by_finish
        .into_values()
        .map(|(finish, patches)| (finish, mesh(&patches)))
        .collect()
}

fn mesh(patches: &[&Patch]) -> Mesh {
    let (mut places, mut normals, mut colours, mut corners) =
        (Vec::new(), Vec::new(), Vec::new(), Vec::new());
    for patch in patches {
        let first = places.len() as u32;
        let colour = light(patch.paint.colour).to_f32_array();
        for &corner in &patch.facet.corners {
            places.push(vector(corner).to_array());
            normals.push(vector(patch.facet.shading(corner)).to_array());
            colours.push(colour);
        }
        let count = patch.facet.corners.len() as u32;
        for i in 1..count.saturating_sub(1) {
            corners.extend([first, first + i, first + i + 1]);
        }
    }
    Mesh::new(
        PrimitiveTopology::TriangleList,
        RenderAssetUsages::RENDER_WORLD | RenderAssetUsages::MAIN_WORLD,
    )
    .with_inserted_attribute(Mesh::ATTRIBUTE_POSITION, places)
    .with_inserted_attribute(Mesh::ATTRIBUTE_NORMAL, normals)
    .with_inserted_attribute(Mesh::ATTRIBUTE_COLOR, colours)
    .with_inserted_indices(Indices::U32(corners))
}

/// Thin lines along edges; none when there are none.
pub(super) fn lines(edges: &[Edge]) -> Option<Mesh> {
    if edges.is_empty() {
        return None;
    }
    let off = |edge: &Edge| edge.outward * OFF_EDGE_M;
    let places: Vec<[f32; 3]> = edges
        .iter()
        .flat_map(|edge| edge.ends.map(|end| vector(end + off(edge)).to_array()))
        .collect();
    let normals: Vec<[f32; 3]> = edges
        .iter()
        .flat_map(|edge| [vector(edge.outward).to_array(); 2])
        .collect();
    Some(
        Mesh::new(
            PrimitiveTopology::LineList,
            RenderAssetUsages::RENDER_WORLD | RenderAssetUsages::MAIN_WORLD,
        )
        .with_inserted_attribute(Mesh::ATTRIBUTE_POSITION, places)
        .with_inserted_attribute(Mesh::ATTRIBUTE_NORMAL, normals),
    )
}
