//! The binary part of a model: numbers one after another, and what says where they lie.

use gltf_json::accessor::{ComponentType, GenericComponentType, Type};
use gltf_json::buffer::{Target, View};
use gltf_json::validation::Checked::Valid;
use gltf_json::validation::USize64;
use gltf_json::{Accessor, Index, Root};

/// The bytes so far.
#[derive(Default)]
pub(super) struct Bytes(pub(super) Vec<u8>);

impl Bytes {
    /// Rows of numbers, `N` to a row; with the least and the greatest of each where asked.
    pub(super) fn rows<const N: usize>(
        &mut self,
        root: &mut Root,
        rows: &[[f32; N]],
        target: Option<Target>,
        bounds: bool,
    ) -> Index<Accessor> {
        let start = self.0.len();
        for number in rows.iter().flatten() {
            self.0.extend(number.to_le_bytes());
        }
        let type_ = match N {
            1 => Type::Scalar,
            2 => Type::Vec2,
            3 => Type::Vec3,
            _ => Type::Vec4,
        };
        let mut accessor =
            self.accessor(root, start, rows.len(), type_, ComponentType::F32, target);
        if bounds {
            let of = |pick: fn(f32, f32) -> f32, from: f32| -> Vec<f32> {
                let at = |i: usize| rows.iter().map(|row| row[i]).fold(from, pick);
                (0..N).map(at).collect()
            };
            accessor.min = Some(of(f32::min, f32::INFINITY).into());
            accessor.max = Some(of(f32::max, f32::NEG_INFINITY).into());
        }
        root.push(accessor)
    }

    /// Numbers of corners, three to a triangle.
    pub(super) fn corners(&mut self, root: &mut Root, corners: &[u32]) -> Index<Accessor> {
        let start = self.0.len();
        for corner in corners {
            self.0.extend(corner.to_le_bytes());
        }
        let target = Some(Target::ElementArrayBuffer);
        let (kind, size) = (Type::Scalar, ComponentType::U32);
        let accessor = self.accessor(root, start, corners.len(), kind, size, target);
        root.push(accessor)
    }

    fn accessor(
        &self,
        root: &mut Root,
        start: usize,
        count: usize,
        type_: Type,
        component: ComponentType,
        target: Option<Target>,
    ) -> Accessor {
        let view = root.push(View {
            buffer: Index::new(0),
            byte_length: USize64::from(self.0.len() - start),
            byte_offset: Some(USize64::from(start)),
            byte_stride: None,
            name: None,
            target: target.map(Valid),
            extensions: None,
            extras: None,
        });
        Accessor {
            buffer_view: Some(view),
            byte_offset: None,
            count: USize64::from(count),
            component_type: Valid(GenericComponentType(component)),
            extensions: None,
            extras: None,
            type_: Valid(type_),
            min: None,
            max: None,
            name: None,
            normalized: false,
            sparse: None,
        }
    }
}
