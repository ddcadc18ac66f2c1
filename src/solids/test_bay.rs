//! A plain, realistic bay for unit tests, built from bay types without any file.
//!
//! A 24 ft by 28 ft garage under a flat 12 ft ceiling, a sectional door with a trolley opener,
//! tall columns with an overhead beam and fifteen locks, a half-ton pickup nose-in.

use crate::bay::*;
use crate::units::{Angle, Length, Mass};

const fn ft(value: f64) -> Length {
    Length::feet(value)
}

const fn inch(value: f64) -> Length {
    Length::inches(value)
}

const fn deg(value: f64) -> Angle {
    Angle::degrees(value)
}

/// The bay. Tests change the fields that they are about.
pub(crate) fn test_bay() -> Bay {
    Bay {
        title: "A plain bay for tests".into(),
        units: UnitSystem::Imperial,
        not_measured: Vec::new(),
        garage: garage(),
        lift: lift(),
        vehicle: vehicle(),
        parking: Parking {
            facing: Facing::NoseIn,
            aim: Aim::CentreOfGravity(Length::ZERO),
            across: Length::ZERO,
            yaw: Angle::ZERO,
            repeat_along: inch(2.0),
            repeat_across: inch(1.0),
            repeat_yaw: deg(0.5),
            pad_raise: [inch(3.0); 4],
        },
        policy: Policy::default(),
        slab: None,
        power: None,
        arrangements: None,
    }
}

/// The sectional door of the test bay: 2 in panels of 24 in, 15 in radius, 8 ft 6 in level track.
pub(crate) fn test_sectional_door() -> SectionalDoor {
    SectionalDoor {
        layout: TrackLayout::Standard,
        panel_thickness: inch(2.0),
        panel_height: inch(24.0),
        track_radius: inch(15.0),
        track_offset: inch(3.5),
        track_section: inch(3.0),
        track_length: inch(102.0),
        spring: Some(SpringShaft {
            height: inch(109.0),
            out: inch(5.0),
            diameter: inch(6.0),
        }),
        top_bracket: inch(3.0),
    }
}

fn garage() -> Garage {
    Garage {
        width: ft(24.0),
        depth: ft(28.0),
        opening: Opening {
            width: ft(10.0),
            height: ft(8.0),
            offset: Length::ZERO,
            wall_thickness: inch(6.0),
        },
        ceiling: Ceiling::Flat { height: ft(12.0) },
        floor: Floor::Level,
        door: Door::Sectional(test_sectional_door()),
        opener: Opener::Trolley(TrolleyOpener {
            x: Length::ZERO,
            rail_bottom: inch(113.0),
            rail_width: inch(2.0),
            rail_depth: inch(2.0),
            rail_length: ft(10.0),
            head_width: inch(10.0),
            head_depth: inch(14.0),
            head_height: inch(8.0),
            head_bottom: inch(110.0),
            arm_drop: inch(12.0),
            cord_drop: inch(24.0),
        }),
        obstacles: vec![
            Obstacle {
                name: "strip light left".into(),
                kind: ObstacleKind::Light,
                shape: ObstacleShape::Box {
                    x: ft(-6.0),
                    y: ft(14.0),
                    bottom: inch(140.0),
                    width: inch(5.0),
                    depth: ft(4.0),
                    height: inch(3.0),
                    turned: Angle::ZERO,
                },
                removable: Some(Removable {
                    cost: Some("$90".into()),
                }),
                only_at_times: false,
                row: [0, 0],
            },
            Obstacle {
                name: "sprinkler pipe".into(),
                kind: ObstacleKind::Pipe,
                shape: ObstacleShape::Cylinder {
                    from: [ft(-12.0), ft(20.0), inch(141.0)],
                    to: [ft(12.0), ft(20.0), inch(141.0)],
                    diameter: inch(2.0),
                },
                removable: None,
                only_at_times: false,
                row: [0, 0],
            },
        ],
    }
}

fn lift() -> Lift {
    let arm = |shortest: f64, longest: f64| Arm {
        pivot_inward: inch(8.0),
        pivot_away: inch(6.0),
        zero: Angle::ZERO,
        swing_min: deg(-20.0),
        swing_max: deg(95.0),
        shortest: inch(shortest),
        longest: inch(longest),
        tooth: Some(deg(3.0)),
        stepless_restraint: None,
        section_width: inch(4.0),
        section_height: inch(3.0),
        underside: inch(1.5),
    };
    let (front, rear) = (arm(24.0, 44.0), arm(30.0, 58.0));
    Lift {
        name: "Tall columns for tests".into(),
        post_line: ft(14.0),
        across: Length::ZERO,
        column: Column {
            height: inch(142.0),
            width: inch(12.0),
            depth: inch(14.0),
            turned: Angle::ZERO,
        },
        spacing: inch(116.0),
        drive_through: inch(98.0),
        base_plate: BasePlate {
            width: inch(18.0),
            depth: inch(20.0),
            thickness: inch(0.75),
            inward: inch(1.0),
            anchors: [-7.0, 0.0, 7.0]
                .iter()
                .flat_map(|&x| [[inch(x), inch(-8.0)], [inch(x), inch(8.0)]])
                .collect(),
            anchor_diameter: Some(inch(0.75)),
            anchor_embedment: Some(inch(4.25)),
            anchor: None,
            anchor_age_days: None,
        },
        power_unit: Some(PowerUnit {
            side: Side::Right,
            width: inch(10.0),
            depth: inch(12.0),
            height: inch(28.0),
            bottom: inch(48.0),
        }),
        tie: Tie::OverheadBeam {
            underside: inch(136.0),
            height: inch(5.0),
            width: inch(8.0),
            bar: Some(ShutOffBar {
                drop: inch(5.0),
                diameter: inch(3.0),
                length: ft(7.0),
            }),
        },
        carriage: Carriage {
            proud: inch(4.0),
            depth: inch(10.0),
            height: inch(34.0),
            bottom: inch(3.0),
            marked_edge: inch(36.0),
        },
        arms: [front, front, rear, rear],
        pad: Pad {
            diameter: inch(5.0),
            lowest: inch(4.0),
            screw_travel: inch(3.0),
            adapters: vec![inch(3.0), inch(5.0)],
        },
        travel: inch(72.0),
        locks: (0..15).map(|k| inch(12.0 + 4.0 * f64::from(k))).collect(),
        set_overtravel: inch(0.5),
        release_overtravel: inch(1.0),
        overshoot: inch(1.0),
        side_mismatch: inch(0.5),
        cg_window: Some(CgWindow {
            front: inch(12.0),
            rear: inch(12.0),
        }),
        capacity: Mass::pounds(10_000.0),
        arm_capacity: Some(Mass::pounds(2_500.0)),
        post_capacity: None,
        motor: None,
        hydraulics: None,
        shim_limit: None,
        plumb_limit: None,
        posts_off: crate::bay::PostsOff::default(),
        shipping_mass: Some(Mass::pounds(1_500.0)),
        pieces: Vec::new(),
        price: None,
        manual: SlabDemand {
            thickness: Some(inch(4.25)),
            strength: None,
            edge_distance: Some(inch(6.0)),
            embedment: None,
            age_days: None,
        },
        advertised: SlabDemand::default(),
    }
}

fn vehicle() -> Vehicle {
    let roof = [
        (0.0, 40.0, 34.0),
        (6.0, 47.0, 36.0),
        (58.0, 51.0, 34.0),
        (84.0, 75.0, 28.0),
        (104.0, 76.0, 29.0),
        (134.0, 75.0, 28.0),
        (147.0, 57.0, 35.0),
        (232.0, 57.0, 37.0),
    ];
    let low = |name: &str, from: f64, to: f64, half_width: f64, height: f64| LowPart {
        name: name.into(),
        from: inch(from),
        to: inch(to),
        half_width: inch(half_width),
        height: inch(height),
        hangs_with: None,
    };
    let lift_point = |station: f64| LiftPoint {
        station: inch(station),
        half_spacing: inch(20.0),
        height: inch(16.0),
    };
    Vehicle {
        name: "Pickup for tests".into(),
        style: BodyStyle::Pickup,
        length: inch(232.0),
        body_width: inch(80.0),
        height: inch(76.0),
        mirrors: Some(Mirrors {
            width_over: inch(96.0),
            station: inch(72.0),
            bottom: inch(46.0),
            top: inch(56.0),
            depth: inch(6.0),
        }),
        wheelbase: inch(145.0),
        front_overhang: inch(38.0),
        track: [inch(68.0); 2],
        tyre_diameter: inch(32.0),
        tyre_width: inch(11.0),
        roof: roof
            .iter()
            .map(|&(station, height, half_width)| RoofStation {
                station: inch(station),
                height: inch(height),
                half_width: inch(half_width),
            })
            .collect(),
        belt: inch(40.0),
        sill: inch(19.0),
        underbody: vec![
            low("front suspension", 30.0, 52.0, 20.0, 10.0),
            low("gearbox and exhaust", 60.0, 165.0, 13.0, 12.0),
            low("rear axle housing", 176.0, 190.0, 20.0, 9.0),
        ],
        attached: vec![AttachedPart {
            name: "headache rack".into(),
            from: inch(142.0),
            to: inch(145.0),
            across: Length::ZERO,
            width: inch(70.0),
            bottom: inch(56.0),
            top: inch(79.0),
        }],
        opening_parts: vec![OpeningPart {
            name: "hood".into(),
            kind: OpeningKind::Hood,
            hinge: inch(58.0),
            hinge_height: inch(51.0),
            length: inch(52.0),
            width: inch(64.0),
            shut: deg(-4.0),
            opens: deg(55.0),
        }],
        driver: None,
        droop: [inch(4.0), inch(5.0)],
        lift_points: [
            lift_point(74.0),
            lift_point(74.0),
            lift_point(150.0),
            lift_point(150.0),
        ],
        axle_loads: Some([Mass::pounds(3_000.0), Mass::pounds(2_200.0)]),
        masses: Vec::new(),
        cg_height: Some(CgHeight {
            height: inch(28.0),
            estimated: true,
        }),
    }
}
