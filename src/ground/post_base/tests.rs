//! Post bases against statics by hand and against random true worlds.

use proptest::prelude::*;

use super::*;
use crate::bay::{Aim, NamedMass};
use crate::ground::loads::pad_loads;
use crate::solids::test_bay::test_bay;
use crate::units::{Angle, Length, Mass};

/// The test bay with nothing uncertain.
fn exact() -> Bay {
    let mut bay = test_bay();
    bay.lift.side_mismatch = Length::ZERO;
    bay.parking.repeat_along = Length::ZERO;
    bay.parking.repeat_across = Length::ZERO;
    bay.parking.repeat_yaw = Angle::ZERO;
    bay.policy.measured_lift = Length::ZERO;
    bay.policy.measured_vehicle = Length::ZERO;
    for arm in &mut bay.lift.arms {
        arm.tooth = None;
    }
    if let Some(height) = &mut bay.vehicle.cg_height {
        height.estimated = false;
    }
    bay
}

fn bases(bay: &Bay) -> [PostBase; 2] {
    post_bases(bay, &pad_loads(bay).unwrap()).unwrap()
}

#[test]
fn forces_by_hand() {
    let bay = exact();
    let [left, right] = bases(&bay);
    let pound = 0.453_592_37 * GRAVITY;
    let inch = 0.0254;
    // Half of 5200 lb, and half of 1500 lb shipping mass.
    assert!((left.axial_n - 3_350.0 * pound).abs() < 0.1);
    assert!((left.least_axial_n - 2_600.0 * pound).abs() < 0.1);
    // Posts 116 in apart, columns of 12 in, the plate 1 in in: plate middles 63 in from the
    // middle. Lift points 20 in from it: a lever of 43 in. Someone pulls with 500 N at 4 + 3 + 72
    // in.
    let hand = HAND_N * 79.0 * inch;
    // Of 1500 lb shipping mass 30 % on four arms: 112.5 lb each, half way between a pivot 7 in in
    // from the plate's middle and its pad 43 in in: 25 in. Along: pivots at 6 in, pads at 25.346 in
    // forward and 50.654 in back: 15.673 less 28.327 in, to the rear.
    let arm = 112.5 * pound * inch;
    let arms_along = arm * 12.653_846;
    let across = 2_600.0 * pound * 43.0 * inch + 2.0 * arm * 25.0 + hand;
    assert!((left.moment_across_nm - across).abs() < 1.0);
    // On springs the weight acts on the post line: no moment along. On three pads all of one end's
    // load is on one post: 3465.8 lb at 25.346 in forward on one, less on its rear pad.
    assert!((left.shared_moments_nm[1] - hand - arms_along).abs() < 1.0);
    let front = 5_200.0 * (150.0 - 99.346_154) / 76.0;
    let rear = 5_200.0 - front;
    // The least twist empties the rear left and the front right by the smaller pair's half.
    let tipped = ((front * 0.5 + rear * 0.5) * 25.346_154) * pound * inch;
    assert!(
        (left.moment_along_nm - tipped - hand - arms_along).abs() / tipped < 0.01,
        "{left:?}"
    );
    // Left and right are alike.
    assert!((left.moment_across_nm - right.moment_across_nm).abs() < 1e-6);
    assert!((left.compression_n - right.compression_n).abs() < 1e-6);
}

#[test]
fn anchors_by_hand() {
    let bay = exact();
    let [left, _] = bases(&bay);
    // The plate presses half way between the column's face (6 - 1 = 5 in) and its edge (9 in): at
    // 7 in. Anchors at -7, 0 and 7 in, two each: 14, 7 and 0 in away, squares 2·(196 + 49) = 490.
    let inch = 0.0254;
    let about_line = left.moment_across_nm - left.least_axial_n * 7.0 * inch;
    let outermost = about_line * 14.0 / (490.0 * inch);
    // Along it presses half way between 7 and 10 in: anchors at -8 and 8 in are 16.5 and 0.5 in
    // away, squares 3·(272.25 + 0.25) = 817.5.
    let along = left.shared_moments_nm[1] * 16.5 / (817.5 * inch);
    let found = left
        .anchors
        .iter()
        .map(|a| a.shared_tension_n)
        .fold(0.0, f64::max);
    assert!(
        (found - outermost - along).abs() < 1.0,
        "{found} {outermost} {along}"
    );
    assert_eq!(left.anchors.len(), 6);
    assert!((left.anchors[0].shear_n * 6.0 - HAND_N).abs() < 1e-9);
}

#[test]
fn a_pattern_that_holds_nothing_stops() {
    let mut bay = exact();
    bay.lift.base_plate.anchors = vec![[Length::inches(8.0), Length::ZERO]];
    let bases = bases(&bay);
    assert!(bases[0].anchors[0].tension_n.is_infinite());
    let section = section(&bay, Some(&bases));
    let anchor = section
        .figures
        .iter()
        .find(|f| f.id == "left.anchor")
        .unwrap();
    assert_eq!(anchor.standing, crate::ground::Standing::Stops);
    let lead = format!("{:?}", section.lead);
    assert!(lead.contains("can't hold it upright"), "{lead}");
    assert!(!lead.contains("pulls with"), "{lead}");
    bay.lift.base_plate.anchors.clear();
    let section = super::section(&bay, Some(&self::bases(&bay)));
    assert_eq!(section.standing(), crate::ground::Standing::Unknown);
}

#[test]
fn a_pull_that_no_steel_holds_stops() {
    // One 3/4 in anchor for all: at 125,000 psi its full section holds 55.2 kip.
    let mut bay = exact();
    bay.lift.base_plate.anchor_diameter = Some(Length::inches(0.75));
    let standing = |bay: &Bay| {
        let section = section(bay, Some(&bases(bay)));
        let found = section.figures.iter().find(|f| f.id == "left.anchor");
        (found.unwrap().standing, section.lead)
    };
    assert_eq!(standing(&bay).0, crate::ground::Standing::Noted);
    bay.lift.base_plate.anchors = vec![[Length::inches(6.0), Length::inches(7.5)]];
    let most = bases(&bay)[0].anchors[0].tension_n;
    assert!(most.is_finite() && most > 55_300.0 * 4.448, "{most}");
    let (stands, lead) = standing(&bay);
    assert_eq!(stands, crate::ground::Standing::Stops);
    assert!(format!("{lead:?}").contains("any steel"), "{lead:?}");
}

#[test]
fn without_the_lifts_own_weight_its_bases_are_not_known_in_full() {
    let mut bay = exact();
    let with = bases(&bay)[0].moment_across_nm;
    bay.lift.shipping_mass = None;
    assert!(bases(&bay)[0].moment_across_nm < with);
    let section = section(&bay, Some(&bases(&bay)));
    assert_eq!(section.standing(), crate::ground::Standing::Unknown);
}

#[test]
fn plates_that_may_be_turned_with_their_columns_count_with_the_greater_pull() {
    let mut bay = exact();
    bay.lift.column.turned = Angle::degrees(-30.0);
    let [left, right] = bases(&bay);
    let mut along_axes = bay.clone();
    // The same plate and forces by the axes alone.
    along_axes.lift.column.turned = Angle::ZERO;
    let column = bay.lift.column;
    let (sin, cos) = (0.5, 0.75_f64.sqrt());
    let turned = |a: Length, b: Length| Length::metres(a.m() * cos + b.m() * sin);
    along_axes.lift.column.width = turned(column.width, column.depth);
    along_axes.lift.column.depth = turned(column.depth, column.width);
    let [plain, _] = bases(&along_axes);
    assert!((plain.moment_across_nm - left.moment_across_nm).abs() < 1.0);
    for (one, other) in left.anchors.iter().zip(&plain.anchors) {
        assert!(one.tension_n >= other.tension_n - 1e-6, "{one:?} {other:?}");
    }
    let most = |base: &PostBase| base.anchors.iter().map(|a| a.tension_n).fold(0.0, f64::max);
    assert!(most(&left) > most(&plain));
    assert!((most(&left) - most(&right)).abs() < 1e-6);
    let notes = format!("{:?}", section(&bay, Some(&[left, right])).notes);
    assert!(notes.contains("columns are turned"), "{notes}");
}

#[test]
fn the_lead_tells_both_moments_and_the_row_each_anchor() {
    let bay = exact();
    let bases = bases(&bay);
    let section = section(&bay, Some(&bases));
    let has = |said: &crate::ground::Said, value: f64| {
        said.0.iter().any(|part| match part {
            crate::ground::Part::Quantity(found, _) => found.number() == Some(value),
            crate::ground::Part::Words(_) => false,
        })
    };
    let worse = bases.iter().find(|b| has(&section.lead, b.moment_along_nm));
    assert!(has(&section.lead, worse.unwrap().moment_across_nm));
    let row = section.figures.iter().find(|f| f.id == "left.anchor");
    let note = row.unwrap().note.clone().unwrap();
    assert!(bases[0].anchors.iter().all(|a| has(&note, a.tension_n)));
}

#[test]
fn the_heavier_of_before_and_after_counts() {
    let mut bay = test_bay();
    let whole = bases(&bay);
    bay.parking.aim = Aim::CentreOfGravity(Length::ZERO);
    bay.vehicle.masses = vec![NamedMass {
        name: "engine".into(),
        mass: Mass::pounds(-400.0),
        station: Length::inches(99.0),
        across: Length::ZERO,
        height: None,
        stays: false,
    }];
    let out = bases(&bay);
    assert!((whole[0].axial_n - out[0].axial_n).abs() / whole[0].axial_n < 1e-3);
}

/// Close lift points under a load to one side, where what may be off does most: every corner of
/// the box, not only those that the search goes to.
#[test]
fn no_corner_is_worse_under_close_lift_points() {
    for (front, half, aside) in [(89.7, 15.0, -27.0), (89.5, 15.0, 0.0), (80.0, 18.0, 20.0)] {
        let mut bay = test_bay();
        for (index, point) in bay.vehicle.lift_points.iter_mut().enumerate() {
            point.station = Length::inches(if index < 2 { front } else { 125.0 });
            point.half_spacing = Length::inches(half);
        }
        bay.vehicle.masses = vec![NamedMass {
            name: "load".into(),
            mass: Mass::pounds(500.0),
            station: Length::inches(110.0),
            across: Length::inches(aside),
            height: None,
            stays: false,
        }];
        let loads = pad_loads(&bay).unwrap();
        let bases = post_bases(&bay, &loads).unwrap();
        let (geometry, pads) = &loads.states[0];
        let slack = 1e-6 * geometry.weight_n;
        for bits in 0..1_u32 << 13 {
            let sign = |i: usize| if bits >> i & 1 == 1 { 1.0 } else { -1.0 };
            let moved = geometry.moved_by(std::array::from_fn(sign));
            for stance in stances(pads) {
                let carried = moved.loads(stance, geometry.weight_n).unwrap();
                for (pad, load) in loads.pads.iter().zip(carried) {
                    let most = if stance == Stance::Springs {
                        pad.shared_n
                    } else {
                        pad.most_n
                    };
                    // Where three would pull at the fourth they do not carry that way.
                    if carried.iter().all(|&load| load >= 0.0) {
                        assert!(load <= most + slack, "{load} {pad:?} {stance:?}");
                    }
                }
                for base in &bases {
                    let middle = middle_m(&bay, base.side);
                    let own = Corner::ALL.into_iter().filter(|c| c.side() == base.side);
                    let sum = own.map(|c| carried[c.index()]).sum::<f64>();
                    assert!(sum >= base.least_axial_n - slack, "{sum} {base:?}");
                    let own = Corner::ALL.into_iter().filter(|c| c.side() == base.side);
                    let across: f64 = own
                        .map(|c| {
                            let lever = moved.pads_m[c.index()].x - middle.x;
                            carried[c.index()] * lever * inward(base.side)
                        })
                        .sum();
                    assert!(across <= base.moment_across_nm + slack, "{across} {base:?}");
                }
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    /// No true world (pads, weight and parking somewhere in their boxes, carried by four springs
    /// or three pads) asks more of a pad or a post than was found.
    #[test]
    fn no_true_world_is_worse(
        front in 60.0..90.0, rear in 125.0..165.0, half_front in 15.0..30.0,
        half_rear in 15.0..30.0, aside in -6.0..6.0, along in -6.0..6.0,
        errors in prop::collection::vec(prop::array::uniform13(-1.0..1.0), 60),
        at_corners in any::<bool>(),
    ) {
        let mut bay = test_bay();
        for (index, point) in bay.vehicle.lift_points.iter_mut().enumerate() {
            let (station, half) =
                if index < 2 { (front, half_front) } else { (rear, half_rear) };
            point.station = Length::inches(station);
            point.half_spacing = Length::inches(half);
        }
        bay.vehicle.masses = vec![NamedMass {
            name: "load".into(),
            mass: Mass::pounds(500.0),
            station: Length::inches(110.0),
            across: Length::inches(aside * 5.0),
            height: None,
            stays: false,
        }];
        bay.parking.aim = Aim::CentreOfGravity(Length::inches(along));
        let loads = pad_loads(&bay);
        prop_assume!(loads.is_some());
        let loads = loads.unwrap();
        let bases = post_bases(&bay, &loads).unwrap();
        let (geometry, _) = &loads.states[0];
        let weight = geometry.weight_n;
        // A millionth of the weight is rounding.
        let slack = 1e-6 * weight;
        for error in errors {
            let error = if at_corners { error.map(f64::signum) } else { error };
            let moved = geometry.moved_by(error);
            let Some(shares) =
                crate::ground::loads::statics::share(moved.pads_m, moved.cg_m, weight)
            else { continue };
            for (pad, load) in loads.pads.iter().zip(shares.springs) {
                prop_assert!(load <= pad.shared_n + slack, "{load} {pad:?}");
            }
            for world in [shares.springs, shares.ends[0], shares.ends[1]] {
                for (pad, load) in loads.pads.iter().zip(world) {
                    prop_assert!(load <= pad.most_n + slack, "{load} {pad:?}");
                    prop_assert!(load >= pad.least_n - slack, "{load} {pad:?}");
                }
                for base in &bases {
                    let middle = middle_m(&bay, base.side);
                    let (mut down, mut across, mut ahead) = (0.0, 0.0, 0.0);
                    for corner in Corner::ALL.into_iter().filter(|c| c.side() == base.side) {
                        let load = world[corner.index()];
                        let lever = moved.pads_m[corner.index()] - middle;
                        down += load;
                        across += load * lever.x * inward(base.side);
                        ahead += load * lever.y;
                    }
                    prop_assert!(down <= base.axial_n + slack);
                    prop_assert!(down >= base.least_axial_n - slack);
                    prop_assert!(across <= base.moment_across_nm + slack);
                    prop_assert!(ahead <= base.moment_along_range_nm.1 + slack);
                    prop_assert!(ahead >= base.moment_along_range_nm.0 - slack);
                }
            }
        }
    }
}
