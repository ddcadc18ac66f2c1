use super::*;
use crate::bayfile::presets::{Embedded, vehicles};
use crate::drawing::facets::facets;
use crate::drawing::paint::{paint_of, painted};
use crate::solids::vehicle::{parts, wheel_middle_m};

/// The shipped vehicles, each in a bay.
fn shipped() -> Vec<(&'static str, crate::bay::Bay)> {
    vehicles()
        .iter()
        .map(|Embedded { name, .. }| (*name, crate::solids::test_bay::test_bay()))
        .filter_map(|(name, mut bay)| {
            let text = include_str!("../../../../scenes/tall-pickup.ron")
                .replace("pickup-half-ton-crew-cab", name);
            let read = crate::bayfile::read(
                "test",
                text.as_bytes(),
                &crate::bayfile::presets::EmbeddedOnly,
            );
            bay.vehicle = read.ok()?.bay.vehicle;
            Some((name, bay))
        })
        .collect()
}

/// Area in a paint on faces that look one way.
fn area(bay: &crate::bay::Bay, paint: Paint, toward: DVec3) -> f64 {
    let wheels = std::array::from_fn(|i| wheel_middle_m(&bay.vehicle, i));
    let livery = Livery::of(&bay.vehicle, &wheels);
    parts(bay)
        .iter()
        .filter(|part| {
            part.solid.name.starts_with("vehicle/side ")
                || part.solid.name.starts_with("vehicle/roof ")
        })
        .filter(|part| matches!(part.solid.shape, crate::solids::Shape::Prism { .. }))
        .flat_map(|part| {
            let painting = paint_of(bay, &part.solid, &livery);
            painted(
                facets(&part.solid.shape),
                |f| painting.base(f),
                &painting.decals,
            )
        })
        .filter(|patch| patch.paint == paint && patch.facet.normal.dot(toward) > 0.2)
        .map(|patch| {
            let corners = &patch.facet.corners;
            let fan = corners.windows(2).skip(1);
            fan.map(|p| (p[0] - corners[0]).cross(p[1] - corners[0]).length() * 0.5)
                .sum::<f64>()
        })
        .sum()
}

#[test]
fn every_shipped_vehicle_has_glass_lamps_and_wheels_in_their_places() {
    let shipped = shipped();
    assert_eq!(shipped.len(), vehicles().len());
    for (name, bay) in shipped {
        let glass = Paint::gloss(things::GLASS);
        let style = bay.vehicle.style;
        let screen = area(&bay, glass, DVec3::Y);
        assert!(
            (0.3..4.0).contains(&screen),
            "{name}: windscreen {screen} m²"
        );
        for side in SIDES {
            let windows = area(&bay, glass, side);
            assert!(
                (0.2..2.5).contains(&windows),
                "{name}: windows {windows} m²"
            );
            let rims = area(&bay, Paint::gloss(things::RIM), side);
            assert!(rims > 0.01, "{name}: rims {rims} m²");
        }
        let rear = area(&bay, glass, DVec3::NEG_Y);
        let closed = matches!(style, BodyStyle::Van | BodyStyle::Camper);
        assert_eq!(rear < 0.05, closed, "{name}: rear window {rear} m²");
        assert!(
            area(&bay, Paint::gloss(things::HEAD_LAMP), DVec3::Y) > 0.02,
            "{name}"
        );
        assert!(
            area(&bay, Paint::gloss(things::TAIL_LAMP), DVec3::NEG_Y) > 0.01,
            "{name}"
        );
        let bed = area(&bay, Paint::matt(things::BED), DVec3::Z);
        assert_eq!(
            bed > 1.5,
            style == BodyStyle::Pickup,
            "{name}: bed {bed} m²"
        );
    }
}
