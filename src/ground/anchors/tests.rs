//! Is what is not known, or not shown, never a pass?

mod depth;
mod shown;

use super::section;
use crate::bay::{Anchor, AnchorKind, Bay, Side};
use crate::ground::post_base::{AnchorForce, PostBase};
use crate::ground::slab::{PlateSlab, SlabMap};
use crate::ground::{Part, Quantity, Section, Standing};
use crate::solids::test_bay::test_bay;
use crate::units::{
    Area, Force, Length, M_PER_INCH, N_PER_POUND_FORCE, PA_PER_PSI, Pressure, Torque,
};

/// Everything that a manual and a test report say of good anchors.
fn known() -> Anchor {
    Anchor {
        kind: Some(AnchorKind::Wedge),
        effective_embedment: Some(Length::inches(3.25)),
        tensile_strength: Some(Pressure::pascals(90_000.0 * PA_PER_PSI)),
        yield_strength: Some(Pressure::pascals(72_000.0 * PA_PER_PSI)),
        stress_area: Some(Area::square_metres(0.24 * M_PER_INCH * M_PER_INCH)),
        ductile: Some(true),
        category: Some(1),
        kc: Some(17.0),
        cracked: Some(true),
        pull_out: Some(Force::newtons(6000.0 * N_PER_POUND_FORCE)),
        bearing_area: None,
        // Common practice, no source: for sleeves of 3/4 in figures from 40 to 150 ft lbf are
        // quoted, which is why none is shown where the file gives none. This one is invented.
        torque: Some(Torque::newton_metres(100.0)),
        min_spacing: None,
        min_edge: None,
        min_thickness: None,
        critical_edge: None,
    }
}

fn bay(anchor: Option<Anchor>) -> Bay {
    let mut bay = test_bay();
    bay.lift.base_plate.anchor = anchor;
    bay
}

fn slab(side: Side) -> PlateSlab {
    PlateSlab {
        side,
        least_thickness_m: Some(6.0 * M_PER_INCH),
        readings_used: 2,
        strength_pa: Some(3000.0 * PA_PER_PSI),
        nearest_joint_m: None,
        nearest_crack_m: None,
        nearest_edge_m: Some(2.0),
        nearest_drain_m: None,
        lines_listed: true,
        broken: false,
    }
}

/// Pulls so many pounds on each of the two outer anchors and pushes so many sideways on each.
pub(in crate::ground) fn base(bay: &Bay, side: Side, pull: f64, sideways: f64) -> PostBase {
    let anchors: Vec<AnchorForce> = bay
        .lift
        .base_plate
        .anchors
        .iter()
        .map(|at| AnchorForce {
            at_m: at.map(Length::m),
            tension_n: if at[0].m() < -0.1 {
                pull * N_PER_POUND_FORCE
            } else {
                0.0
            },
            shared_tension_n: 0.0,
            shear_n: sideways * N_PER_POUND_FORCE,
        })
        .collect();
    let axial_n = 4000.0 * N_PER_POUND_FORCE;
    let total: f64 = anchors.iter().map(|one| one.tension_n).sum();
    let pulls: Vec<f64> = anchors.iter().map(|one| one.tension_n).collect();
    // Half of what the plate's edge would carry, and what the anchors hold over 12 in.
    let across = 0.5 * axial_n * 7.0 * M_PER_INCH + total * 12.0 * M_PER_INCH;
    PostBase {
        side,
        axial_n,
        least_axial_n: axial_n,
        shear_n: anchors.iter().map(|one| one.shear_n).sum(),
        moment_across_nm: across,
        moment_along_nm: 0.0,
        moment_along_range_nm: (0.0, 0.0),
        shared_moments_nm: [across, 0.0],
        pulls_together_n: [pulls.clone(), pulls],
        compression_n: axial_n + total,
        shared_compression_n: axial_n + total,
        anchors,
    }
}

fn with(bay: &Bay, pull: f64, sideways: f64, change: impl Fn(&mut PlateSlab)) -> Section {
    let sides = [Side::Left, Side::Right];
    let slabs = sides.map(|side| {
        let mut one = slab(side);
        change(&mut one);
        one
    });
    let bases = sides.map(|side| base(bay, side, pull, sideways));
    section(bay, &SlabMap::of(bay), &slabs, Some(&bases))
}

fn standing(section: &Section, id: &str) -> Option<Standing> {
    let found = section.figures.iter().find(|one| one.id == id);
    found.map(|one| one.standing)
}

fn lead(section: &Section) -> String {
    let words = section.lead.0.iter().map(|part| match part {
        Part::Words(words) => words.clone(),
        Part::Quantity(..) => "..".into(),
    });
    words.collect()
}

#[test]
fn anchors_that_are_known_may_pass_and_every_factor_is_shown() {
    let found = with(&bay(Some(known())), 400.0, 20.0, |_| {});
    assert_eq!(found.standing(), Standing::Passes, "{found:#?}");
    assert!(lead(&found).starts_with("By the screening the anchors hold"));
    let number = |id: &str| {
        let figure = found.figures.iter().find(|one| one.id == id).unwrap();
        figure.found.as_ref().unwrap().number().unwrap()
    };
    // Two anchors 16 in apart with hef 3.25 in: each its own cone of 9.75 in by 9.75 in.
    // Nb = 17 x sqrt 3000 x 3.25^1.5 = 5,455.4 lbf.
    let in2 = M_PER_INCH * M_PER_INCH;
    assert!((number("cone.area") / in2 - 95.0625).abs() < 1e-6);
    assert!((number("cone.whole") / in2 - 95.0625).abs() < 1e-6);
    assert!((number("cone.basic") / N_PER_POUND_FORCE - 5455.4).abs() < 0.5);
    assert!((number("cone.phi") - 0.65).abs() < 1e-12);
    // 1.6 x 400 on it.
    assert!((number("cone") / N_PER_POUND_FORCE - 640.0).abs() < 1e-6);
    assert!((number("load_factor") - 1.6).abs() < 1e-12);
    assert!((number("steel.strength") / N_PER_POUND_FORCE - 0.24 * 90_000.0).abs() < 1e-3);
    for id in [
        "cone.psi_ec",
        "cone.psi_ed",
        "cone.psi_c",
        "cone.psi_cp",
        "cone.lambda",
    ] {
        assert!((number(id) - 1.0).abs() < 1e-12, "{id}");
    }
}

#[test]
fn what_is_left_out_is_not_known_or_taken_low() {
    let all = known();
    let cases: [(&str, Anchor); 6] = [
        ("kind", Anchor { kind: None, ..all }),
        (
            "steel",
            Anchor {
                tensile_strength: None,
                ..all
            },
        ),
        (
            "steel",
            Anchor {
                yield_strength: None,
                ..all
            },
        ),
        (
            "steel",
            Anchor {
                stress_area: None,
                ..all
            },
        ),
        (
            "pull_out",
            Anchor {
                pull_out: None,
                ..all
            },
        ),
        (
            "torque",
            Anchor {
                torque: None,
                ..all
            },
        ),
    ];
    for (id, anchor) in cases {
        let found = with(&bay(Some(anchor)), 100.0, 5.0, |_| {});
        assert_eq!(standing(&found, id), Some(Standing::Unknown), "{id}");
        let figure = found.figures.iter().find(|one| one.id == id).unwrap();
        assert!(figure.cure.is_some(), "{id}");
    }
    // Lower than with what the file says: category 3, no more of the embedment than is sure.
    let found = |anchor| {
        let found = with(&bay(Some(anchor)), 100.0, 0.0, |_| {});
        let cone = found.figures.iter().find(|one| one.id == "cone").unwrap();
        cone.limit.as_ref().unwrap().1.number().unwrap()
    };
    let told = found(all);
    assert!(
        found(Anchor {
            category: None,
            ..all
        }) < told
    );
    // 4 1/4 in as written less 3/4 in, of which the slab lets 3.5 in count.
    let shortened = with(
        &bay(Some(Anchor {
            effective_embedment: None,
            ..all
        })),
        100.0,
        0.0,
        |slab| slab.least_thickness_m = Some(12.0 * M_PER_INCH),
    );
    let hef = shortened.figures.iter().find(|one| one.id == "cone.hef");
    let hef = hef.unwrap().found.as_ref().unwrap().number().unwrap();
    assert!((hef / M_PER_INCH - 3.5).abs() < 1e-9);
}

#[test]
fn nothing_of_the_anchors_is_no_pass_and_says_how_to_know() {
    let found = with(&bay(None), 100.0, 0.0, |_| {});
    assert_eq!(found.standing(), Standing::Unknown);
    assert!(lead(&found).contains("does not say which they are"));
    for id in ["kind", "steel", "pull_out", "torque"] {
        assert_eq!(standing(&found, id), Some(Standing::Unknown), "{id}");
    }
    let mut no_pattern = bay(Some(known()));
    no_pattern.lift.base_plate.anchors.clear();
    let found = with(&no_pattern, 100.0, 0.0, |_| {});
    assert_eq!(found.standing(), Standing::Unknown);
    let mut no_size = bay(Some(Anchor {
        effective_embedment: None,
        ..known()
    }));
    no_size.lift.base_plate.anchor_diameter = None;
    no_size.lift.base_plate.anchor_embedment = None;
    let found = with(&no_size, 100.0, 5.0, |_| {});
    for id in ["spacing", "edge", "embedment.slab", "cone", "shear.edge"] {
        assert_eq!(standing(&found, id), Some(Standing::Unknown), "{id}");
    }
}

#[test]
fn what_the_screening_does_not_show_is_neither_a_pass_nor_a_stop() {
    let good = bay(Some(known()));
    for (id, found) in [
        ("cone", with(&good, 3000.0, 0.0, |_| {})),
        ("pull_out", with(&good, 3000.0, 0.0, |_| {})),
        ("steel", with(&good, 20_000.0, 0.0, |_| {})),
        ("shear.steel", with(&good, 1.0, 9000.0, |_| {})),
        ("together", with(&good, 1.0, 9000.0, |_| {})),
        // Embedment 3 1/4 in, slab 4 1/2 in: two thirds are 3 in.
        (
            "embedment.slab",
            with(&good, 1.0, 0.0, |slab| {
                slab.least_thickness_m = Some(4.5 * M_PER_INCH)
            }),
        ),
        (
            "cone",
            with(&good, 1.0, 0.0, |slab| slab.lines_listed = false),
        ),
        (
            "edge",
            with(&good, 1.0, 0.0, |slab| slab.lines_listed = false),
        ),
        (
            "cone",
            with(&good, 1.0, 0.0, |slab| slab.least_thickness_m = None),
        ),
        (
            "cone",
            with(&good, 1.0, 0.0, |slab| slab.strength_pa = None),
        ),
        (
            "pull_out",
            with(&good, 1.0, 0.0, |slab| slab.strength_pa = Some(1.5e7)),
        ),
        ("cone", with(&good, f64::NAN, 0.0, |_| {})),
        ("steel", with(&good, f64::NAN, 0.0, |_| {})),
        ("shear.edge", with(&good, 1.0, f64::NAN, |_| {})),
    ] {
        assert_eq!(standing(&found, id), Some(Standing::Unknown), "{id}");
        assert_eq!(found.standing(), Standing::Unknown, "{id}");
    }
    let no_loads = section(
        &good,
        &SlabMap::of(&good),
        &[Side::Left, Side::Right].map(slab),
        None,
    );
    assert_eq!(standing(&no_loads, "pull"), Some(Standing::Unknown));
}

#[test]
fn more_pull_is_never_better() {
    let good = bay(Some(known()));
    let mut passed = true;
    for pull in [0.0, 10.0, 500.0, 1500.0, 2200.0, 2500.0, 5000.0, 1e6] {
        let passes = with(&good, pull, 5.0, |_| {}).standing() == Standing::Passes;
        assert!(passed || !passes, "{pull}");
        passed = passes;
    }
    assert!(!passed);
}

#[test]
fn the_torque_is_shown_as_given() {
    let found = with(&bay(Some(known())), 1.0, 0.0, |_| {});
    let torque = found.figures.iter().find(|one| one.id == "torque").unwrap();
    assert_eq!(torque.found, Some(Quantity::Moment(100.0)));
    let cast_in = Anchor {
        kind: Some(AnchorKind::CastIn),
        torque: None,
        ..known()
    };
    let found = with(&bay(Some(cast_in)), 1.0, 0.0, |_| {});
    assert_eq!(standing(&found, "torque"), None);
}

#[test]
fn a_bond_is_never_passed() {
    let glued = Anchor {
        kind: Some(AnchorKind::Adhesive),
        ..known()
    };
    for pull_out in [None, known().pull_out] {
        let found = with(&bay(Some(Anchor { pull_out, ..glued })), 1.0, 0.0, |_| {});
        assert_eq!(standing(&found, "pull_out"), Some(Standing::Unknown));
    }
}

#[test]
fn a_bay_with_everything_on_paper_passes_and_a_thinner_slab_does_not() {
    let text = std::fs::read_to_string("scenes/anchors-on-paper.ron").unwrap();
    let standings = |text: &str| {
        let presets = &crate::bayfile::presets::EmbeddedOnly;
        let bay = crate::bayfile::read("scene", text.as_bytes(), presets)
            .unwrap()
            .bay;
        let on = jiff::civil::date(2026, 6, 1);
        let study = crate::clearance::study_on(&bay, Some(on)).unwrap();
        study
            .sections
            .into_iter()
            .map(|one| (one.topic, one.standing()))
            .collect::<std::collections::HashMap<_, _>>()
    };
    use crate::ground::Topic::{Anchors, Bearing};
    let all = standings(&text);
    assert_eq!(all[&Anchors], Standing::Passes);
    assert_eq!(all[&Bearing], Standing::Passes);
    // At 110 mm the anchors go through.
    for (thick, anchors, bearing) in [
        ("190 mm", Standing::Unknown, Standing::Passes),
        ("110 mm", Standing::Stops, Standing::Unknown),
    ] {
        let mut thin = text.clone();
        for reading in ["310 mm", "305 mm", "302 mm", "308 mm"] {
            thin = thin.replace(reading, thick);
        }
        let all = standings(&thin);
        assert_eq!(
            (all[&Anchors], all[&Bearing]),
            (anchors, bearing),
            "{thick}"
        );
    }
    // Without the soil report so thin a slab is not shown to hold on whatever ground.
    let no_soil = text
        .replace("subgrade: \"40 MPa/m\",", "")
        .replace("302 mm", "190 mm");
    assert_eq!(standings(&no_soil)[&Bearing], Standing::Unknown);
    // Where it ends was not measured: slab and anchors are not known.
    let start = text.find("        outline: [").unwrap();
    let end = start + text[start..].find("],").unwrap() + 2;
    let no_outline = format!("{}{}", &text[..start], &text[end..]);
    assert_eq!(standings(&no_outline)[&Anchors], Standing::Unknown);
}
