//! Nodes, meshes, materials and the animation of a model.

use std::collections::BTreeMap;

use glam::{DQuat, DVec3};
use gltf_json::animation::{Channel, Interpolation, Property, Sampler, Target};
use gltf_json::buffer::{Buffer, Target as BufferTarget};
use gltf_json::material::{
    EmissiveFactor, PbrBaseColorFactor, PbrMetallicRoughness, StrengthFactor,
};
use gltf_json::mesh::{Mode, Primitive, Semantic};
use gltf_json::scene::UnitQuaternion;
use gltf_json::validation::Checked::Valid;
use gltf_json::validation::USize64;
use gltf_json::{Animation, Index, Material, Mesh, Node, Root, Scene};
use serde_json::value::to_raw_value;

use super::buffer::Bytes;
use super::{METRES_A_SECOND, ModelError, ModelOrder, OFF_M, door, said, top_m};
use crate::drawing::climb::{Climb, Climber, climb};
use crate::drawing::facets::around;
use crate::drawing::paint::{Finish, Paint, painted};
use crate::solids::{Layer, Pose};

pub(super) fn glb(order: &ModelOrder<'_>) -> Result<Vec<u8>, ModelError> {
    let top_m = top_m(order.study);
    let way = climb(
        order.bay,
        &order.study.phases,
        door(order.study),
        top_m.unwrap_or(0.0),
    )?;
    let mut root = Root::default();
    root.asset.generator = Some(format!("bayrise {}", env!("CARGO_PKG_VERSION")));
    root.asset.extras = Some(to_raw_value(&said(order))?);
    let mut bytes = Bytes::default();
    let mut materials = Materials::default();
    let mut nodes = Vec::with_capacity(way.parts.len());
    for part in &way.parts {
        let mesh = mesh(&mut root, &mut bytes, &mut materials, part);
        let layer = serde_json::json!({ "layer": layer_name(part.solid.layer()) });
        let node = Node {
            mesh: Some(mesh),
            name: Some(part.solid.name.clone()),
            extras: Some(to_raw_value(&layer)?),
            ..placed(part.solid.bay_from_solid)
        };
        nodes.push(root.push(node));
    }
    if top_m.is_some() {
        animation(&mut root, &mut bytes, &way, &nodes);
    }
    // A quarter turn about x: the bay's z becomes y, its y goes away from the viewer.
    let turn = DQuat::from_rotation_x(-std::f64::consts::FRAC_PI_2);
    let bay = root.push(Node {
        children: Some(nodes),
        name: Some("bay".into()),
        rotation: Some(quaternion(turn)),
        ..Node::default()
    });
    let scene = root.push(Scene {
        extensions: None,
        extras: None,
        name: Some("bay".into()),
        nodes: vec![bay],
    });
    root.scene = Some(scene);
    root.push(Buffer {
        byte_length: USize64::from(bytes.0.len()),
        name: None,
        uri: None,
        extensions: None,
        extras: None,
    });
    let json = gltf_json::serialize::to_vec(&root)?;
    Ok(packed(json, bytes.0))
}

/// One file: a head, then both chunks, each filled up to four bytes.
fn packed(mut json: Vec<u8>, mut binary: Vec<u8>) -> Vec<u8> {
    let fill = |chunk: &mut Vec<u8>, with: u8| chunk.resize(chunk.len().next_multiple_of(4), with);
    fill(&mut json, b' ');
    fill(&mut binary, 0);
    let mut out = Vec::with_capacity(28 + json.len() + binary.len());
    // A model of a bay is far smaller than 4 GiB.
    let size = |bytes: usize| u32::try_from(bytes).unwrap_or(u32::MAX).to_le_bytes();
    out.extend(b"glTF");
    out.extend(2_u32.to_le_bytes());
    out.extend(size(28 + json.len() + binary.len()));
    for (chunk, kind) in [(json, b"JSON"), (binary, b"BIN\0")] {
        out.extend(size(chunk.len()));
        out.extend(kind);
        out.extend(chunk);
    }
    out
}

const fn layer_name(layer: Layer) -> &'static str {
    match layer {
        Layer::Shell => "shell",
        Layer::Overhead => "overhead",
        Layer::Door => "door",
        Layer::Post => "post",
        Layer::MovingLift => "moving_lift",
        Layer::Vehicle => "vehicle",
    }
}

#[allow(clippy::cast_possible_truncation)] // single precision is what the format has
fn single<const N: usize>(values: [f64; N]) -> [f32; N] {
    // No negative zero: the same bytes on every machine.
    values.map(|value| value as f32 + 0.0)
}

fn quaternion(turn: DQuat) -> UnitQuaternion {
    UnitQuaternion(single(turn.to_array()))
}

fn placed(pose: Pose) -> Node {
    Node {
        rotation: Some(quaternion(pose.rotation)),
        translation: Some(single(pose.translation.to_array())),
        ..Node::default()
    }
}

/// One material for each paint, in the order in which they are met.
#[derive(Default)]
struct Materials(Vec<(Paint, Index<Material>)>);

impl Materials {
    fn of(&mut self, root: &mut Root, paint: Paint) -> Index<Material> {
        if let Some((_, known)) = self.0.iter().find(|(known, _)| *known == paint) {
            return *known;
        }
        let [r, g, b] = paint.colour.srgb().map(linear);
        let (finish, roughness) = match paint.finish {
            Finish::Matt => ("matt", 0.9),
            Finish::Gloss => ("gloss", 0.45),
            Finish::Glow => ("glow", 0.9),
        };
        let colour = paint.colour;
        let made = root.push(Material {
            name: Some(format!(
                "{finish} #{:02x}{:02x}{:02x}",
                colour.0, colour.1, colour.2
            )),
            pbr_metallic_roughness: PbrMetallicRoughness {
                base_color_factor: PbrBaseColorFactor([r, g, b, 1.0]),
                metallic_factor: StrengthFactor(0.0),
                roughness_factor: StrengthFactor(roughness),
                ..PbrMetallicRoughness::default()
            },
            emissive_factor: EmissiveFactor(match paint.finish {
                Finish::Glow => [r, g, b],
                Finish::Matt | Finish::Gloss => [0.0; 3],
            }),
            ..Material::default()
        });
        self.0.push((paint, made));
        made
    }
}

/// A channel of sRGB in linear light (IEC 61966-2-1), to six decimals.
fn linear(channel: f32) -> f32 {
    let light = if channel <= 0.040_45 {
        channel / 12.92
    } else {
        ((channel + 0.055) / 1.055).powf(2.4)
    };
    (light * 1e6).round() / 1e6
}

/// Corners, normals and triangles of one paint.
#[derive(Default)]
struct Surface {
    places: Vec<[f32; 3]>,
    normals: Vec<[f32; 3]>,
    corners: Vec<u32>,
}

fn mesh(
    root: &mut Root,
    bytes: &mut Bytes,
    materials: &mut Materials,
    part: &Climber,
) -> Index<Mesh> {
    let painting = &part.painting;
    let faces = around(&part.solid.shape, OFF_M);
    let patches = painted(faces, |facet| painting.base(facet), &painting.decals);
    let mut surfaces: Vec<(Paint, Surface)> = Vec::new();
    for patch in patches {
        let at = surfaces.iter().position(|(paint, _)| *paint == patch.paint);
        let at = at.unwrap_or_else(|| {
            surfaces.push((patch.paint, Surface::default()));
            surfaces.len() - 1
        });
        let surface = &mut surfaces[at].1;
        // Some thousand corners.
        let first = u32::try_from(surface.places.len()).unwrap_or(u32::MAX);
        for corner in &patch.facet.corners {
            surface.places.push(single(corner.to_array()));
            let normal: DVec3 = patch.facet.shading(*corner);
            surface.normals.push(single(normal.to_array()));
        }
        for i in 2..u32::try_from(patch.facet.corners.len()).unwrap_or(0) {
            surface.corners.extend([first, first + i - 1, first + i]);
        }
    }
    let primitives = surfaces.into_iter().map(|(paint, surface)| {
        let target = Some(BufferTarget::ArrayBuffer);
        let places = bytes.rows(root, &surface.places, target, true);
        let normals = bytes.rows(root, &surface.normals, target, false);
        let corners = bytes.corners(root, &surface.corners);
        Primitive {
            attributes: BTreeMap::from([
                (Valid(Semantic::Positions), places),
                (Valid(Semantic::Normals), normals),
            ]),
            extensions: None,
            extras: None,
            indices: Some(corners),
            material: Some(materials.of(root, paint)),
            mode: Valid(Mode::Triangles),
            targets: None,
        }
    });
    let primitives = primitives.collect();
    root.push(Mesh {
        extensions: None,
        extras: None,
        name: Some(part.solid.name.clone()),
        primitives,
        weights: None,
    })
}

fn animation(root: &mut Root, bytes: &mut Bytes, way: &Climb, nodes: &[Index<Node>]) {
    let seconds = way
        .travels_m
        .iter()
        .map(|travel| single([travel / METRES_A_SECOND]));
    let seconds: Vec<[f32; 1]> = seconds.collect();
    let times = bytes.rows(root, &seconds, None, true);
    let mut raise = Animation {
        extensions: None,
        extras: None,
        channels: Vec::new(),
        name: Some("raise".into()),
        samplers: Vec::new(),
    };
    for (part, &node) in way.parts.iter().zip(nodes) {
        let Some(first) = part.poses.first() else {
            continue;
        };
        let places = part
            .poses
            .iter()
            .map(|pose| single(pose.translation.to_array()));
        let places = bytes.rows(root, &places.collect::<Vec<_>>(), None, false);
        let mut tracks = vec![(Property::Translation, places)];
        if part
            .poses
            .iter()
            .any(|pose| pose.rotation != first.rotation)
        {
            let turns = part
                .poses
                .iter()
                .map(|pose| single(pose.rotation.to_array()));
            let turns = bytes.rows(root, &turns.collect::<Vec<_>>(), None, false);
            tracks.push((Property::Rotation, turns));
        }
        for (property, output) in tracks {
            let sampler = Index::push(
                &mut raise.samplers,
                Sampler {
                    extensions: None,
                    extras: None,
                    input: times,
                    interpolation: Valid(Interpolation::Linear),
                    output,
                },
            );
            raise.channels.push(Channel {
                sampler,
                target: Target {
                    extensions: None,
                    extras: None,
                    node,
                    path: Valid(property),
                },
                extensions: None,
                extras: None,
            });
        }
    }
    root.push(raise);
}
