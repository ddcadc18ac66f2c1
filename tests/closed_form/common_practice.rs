//! Facts of the trade. Common practice, no source.

use bayrise::clearance::Withheld;

use crate::bay::studied;

#[test]
fn columns_of_nine_feet_six_stand_under_ten_feet_with_six_inches_to_spare() {
    let study = studied(&[
        (
            r#"column: (height: "2.9 m""#,
            r#"column: (height: "9 ft 6 in""#,
        ),
        (r#"Flat(height: "3 m")"#, r#"Flat(height: "10 ft")"#),
    ]);
    for post in ["lift/post left", "lift/post right"] {
        let stands = study
            .standing
            .iter()
            .find(|one| one.part == post && one.other.starts_with("shell/ceiling"))
            .unwrap();
        assert!((stands.room_m - 6.0 * 0.0254).abs() < 1e-9, "{stands:?}");
        assert!((stands.worst_m - 6.0 * 0.0254).abs() < 1e-9, "{stands:?}");
    }
    let stands = |one: &Withheld| matches!(one, Withheld::DoesNotStand { .. });
    assert!(!study.withheld.iter().any(stands));
}

#[test]
fn a_pickup_of_seven_thousand_pounds_is_inside_a_rating_of_ten() {
    let over = |front: &str| {
        let loads = format!("axle_loads: (front: \"{front} lb\", rear: \"3000 lb\")");
        let given = r#"axle_loads: (front: "1000 kg", rear: "1000 kg")"#;
        let study = studied(&[(given, &loads)]);
        let pounds = |kg: f64| kg / 0.453_592_37;
        assert!((pounds(study.rating.capacity_kg) - 10_000.0).abs() < 1e-6);
        let mass = pounds(study.rating.mass_kg.unwrap());
        let is_over = |one: &Withheld| matches!(one, Withheld::OverRating { .. });
        (mass, study.withheld.iter().any(is_over))
    };
    let (mass, is_over) = over("4000");
    assert!((mass - 7_000.0).abs() < 1e-6 && !is_over, "{mass}");
    let (mass, is_over) = over("7001");
    assert!((mass - 10_001.0).abs() < 1e-6 && is_over, "{mass}");
}
