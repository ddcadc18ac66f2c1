use super::*;

fn plan(low: [f64; 2], high: [f64; 2]) -> Plan<'static> {
    Plan {
        name: "a",
        role: Role::Body,
        low: DVec3::new(low[0], low[1], 0.0),
        high: DVec3::new(high[0], high[1], 1.0),
    }
}

#[test]
fn past_a_corner_the_way_is_the_distance_between_the_corners() {
    let vehicle = plan([-1.0, 0.0], [1.0, 4.0]);
    // 0.3 m beside and 0.4 m beyond the corner: 0.5 m.
    let bench = plan([1.3, 4.4], [2.0, 5.0]);
    assert!((vehicle.distance(&bench) - 0.5).abs() < 1e-12);
    assert_eq!(beside(&vehicle, &bench), WayKind::Back);
    assert!(vehicle.distance(&plan([0.5, 1.0], [3.0, 2.0])) <= 0.0);
}

#[test]
fn each_thing_lies_on_the_side_it_is_farther_off_by() {
    let vehicle = plan([-1.0, 0.0], [1.0, 4.0]);
    for (low, high, expected) in [
        (
            [-3.0, -1.0],
            [-2.0, 9.0],
            WayKind::BesideVehicle(Side::Left),
        ),
        ([2.0, -1.0], [3.0, 9.0], WayKind::BesideVehicle(Side::Right)),
        ([-3.0, 5.0], [3.0, 6.0], WayKind::Back),
        ([-3.0, -2.0], [3.0, -1.0], WayKind::Door),
    ] {
        assert_eq!(beside(&vehicle, &plan(low, high)), expected);
    }
}

#[test]
fn the_narrowest_counts_and_what_is_no_number_is_no_way() {
    let vehicle = plan([-1.0, 0.0], [1.0, 4.0]);
    let mut found = Found(Vec::new());
    for at in [1.9, 1.5, 1.7] {
        found.take(WayKind::Back, &vehicle, &plan([at, 1.0], [3.0, 2.0]));
    }
    assert!((found.0[0].1 - 0.5).abs() < 1e-12);
    found.take(WayKind::Back, &vehicle, &plan([f64::NAN, 1.0], [3.0, 2.0]));
    assert!(found.0[0].1 <= 0.0);
}
