use super::*;

const SHAPES: usize = 4;

fn shape(which: usize) -> Shape {
    match which {
        0 => Shape::Box {
            half: DVec3::new(1.0, 2.0, 0.5),
        },
        1 => Shape::Cylinder {
            radius: 0.4,
            half_height: 0.1,
        },
        // A slice of a body: wider at its foot, no two side corners in one plane.
        2 => Shape::Prism {
            vertices: vec![
                DVec3::new(-1.0, 0.0, 0.5),
                DVec3::new(1.0, 0.0, 0.5),
                DVec3::new(-0.8, 0.0, 1.1),
                DVec3::new(0.8, 0.0, 1.1),
                DVec3::new(-1.0, -0.7, 0.5),
                DVec3::new(1.0, -0.7, 0.5),
                DVec3::new(-0.6, -0.7, 1.4),
                DVec3::new(0.6, -0.7, 1.4),
            ],
        },
        _ => Shape::Prism {
            vertices: vec![DVec3::ZERO, DVec3::X, DVec3::Y, DVec3::Z, DVec3::splat(0.1)],
        },
    }
}

/// Volume enclosed by faces, by the divergence theorem.
fn volume(facets: &[Facet]) -> f64 {
    facets
        .iter()
        .flat_map(|f| {
            let first = f.corners[0];
            f.corners
                .windows(2)
                .skip(1)
                .map(move |pair| first.dot(pair[0].cross(pair[1])) / 6.0)
        })
        .sum()
}

#[test]
fn faces_close_and_look_outward() {
    for which in 0..SHAPES {
        let facets = facets(&shape(which));
        let middle = facets.iter().flat_map(|f| &f.corners).sum::<DVec3>()
            / facets.iter().map(|f| f.corners.len()).sum::<usize>() as f64;
        for facet in &facets {
            let [a, b, c] = [facet.corners[0], facet.corners[1], facet.corners[2]];
            let turned = (b - a).cross(c - b).normalize();
            assert!(turned.dot(facet.normal) > 0.999, "{which}: {facet:?}");
            assert!(facet.normal.dot(a - middle) > 0.0, "{which}: {facet:?}");
        }
        // Each edge is met once each way: nothing is open.
        let mut ways = std::collections::HashMap::new();
        for facet in &facets {
            for (i, from) in facet.corners.iter().enumerate() {
                let to = facet.corners[(i + 1) % facet.corners.len()];
                let key = |p: &DVec3| p.to_array().map(|x| (x * 1e6).round() as i64);
                *ways.entry((key(from), key(&to))).or_insert(0) += 1;
            }
        }
        for ((a, b), count) in &ways {
            assert_eq!((*count, ways.get(&(*b, *a))), (1, Some(&1)), "{which}");
        }
    }
}

#[test]
fn volumes_by_hand() {
    let close = |a: f64, b: f64| assert!((a - b).abs() < 1e-9, "{a} is not {b}");
    close(volume(&facets(&shape(0))), 2.0 * 4.0 * 1.0);
    // A corner of a cube; its fifth point lies inside and is no corner.
    close(volume(&facets(&shape(3))), 1.0 / 6.0);
    // A prism of 48 sides: 48/2 r² sin(360°/48) h.
    let area = 24.0 * 0.16 * (std::f64::consts::TAU / 48.0).sin();
    close(volume(&facets(&shape(1))), area * 0.2);
}

#[test]
fn every_corner_of_a_prism_is_a_corner_of_its_faces() {
    let shape = shape(2);
    let facets = facets(&shape);
    for vertex in shape.corners() {
        assert!(facets.iter().any(|f| f.corners.contains(&vertex)));
        for facet in &facets {
            assert!(facet.normal.dot(vertex - facet.corners[0]) < 1e-7);
        }
    }
}

#[test]
fn a_cut_leaves_both_parts_closed() {
    for which in 0..SHAPES {
        let whole = facets(&shape(which));
        let normal = DVec3::new(0.3, -0.8, 0.5).normalize();
        let by = HalfSpace {
            normal,
            offset: normal.dot(DVec3::new(0.02, -0.05, 0.03)),
        };
        let other = HalfSpace {
            normal: -normal,
            offset: -by.offset,
        };
        let mut sum = 0.0;
        for by in [by, other] {
            let (mut left, opened) = section(&whole, &by);
            left.extend(opened);
            sum += volume(&left);
        }
        assert!((sum - volume(&whole)).abs() < 1e-9, "{which}: {sum}");
    }
}

#[test]
fn a_box_has_twelve_edges_and_a_cylinder_its_two_rims() {
    assert_eq!(edges(&facets(&shape(0))).len(), 12);
    assert_eq!(edges(&facets(&shape(1))).len(), 2 * ROUND_SIDES as usize);
}

#[test]
fn a_prism_about_a_cylinder_is_nowhere_smaller_and_hardly_larger() {
    for (radius, off_m) in [(0.02, 5e-5), (0.45, 5e-5), (0.45, 1e-3), (3.0, 5e-5)] {
        let shape = Shape::Cylinder {
            radius,
            half_height: 0.1,
        };
        let faces = around(&shape, off_m);
        for step in 0..1000 {
            let angle = f64::from(step) * 0.006_28;
            let way = DVec3::new(angle.cos(), angle.sin(), 0.0);
            let corners = faces.iter().flat_map(|face| &face.corners);
            let reach = corners.map(|c| c.dot(way)).fold(0.0, f64::max);
            assert!(reach >= radius - 1e-12, "{radius}: {reach}");
            assert!(reach <= radius + off_m, "{radius}: {reach}");
        }
        for face in &faces {
            let away = face.normal.dot(face.corners[0]);
            let inside = if face.round { radius } else { 0.1 };
            assert!((away - inside).abs() < 1e-9, "a side touches the cylinder");
        }
    }
}
