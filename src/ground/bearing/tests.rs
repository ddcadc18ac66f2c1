//! Is a usual slab shown to hold, and what is not known or not shown never a pass?

use super::section;
use crate::bay::{Bay, Side, Slab};
use crate::ground::anchors::tests::base;
use crate::ground::slab::{PlateSlab, SlabMap};
use crate::ground::{Section, Standing};
use crate::solids::test_bay::test_bay;
use crate::units::{M_PER_INCH, PA_PER_PSI, Subgrade};

fn bay(subgrade_pci: Option<f64>) -> Bay {
    let mut bay = test_bay();
    bay.slab = Some(Slab {
        void_below: Some(false),
        suspended: Some(false),
        subgrade: subgrade_pci.map(|k| Subgrade::pascals_per_metre(k * PA_PER_PSI / M_PER_INCH)),
        ..Slab::default()
    });
    bay
}

fn slab(side: Side, thickness_in: f64) -> PlateSlab {
    PlateSlab {
        side,
        least_thickness_m: Some(thickness_in * M_PER_INCH),
        readings_used: 2,
        strength_pa: Some(3500.0 * PA_PER_PSI),
        nearest_joint_m: None,
        nearest_crack_m: None,
        nearest_edge_m: Some(2.0),
        nearest_drain_m: None,
        lines_listed: true,
        broken: false,
    }
}

fn with(bay: &Bay, thickness_in: f64, pull: f64, change: impl Fn(&mut PlateSlab)) -> Section {
    let sides = [Side::Left, Side::Right];
    let slabs = sides.map(|side| {
        let mut one = slab(side, thickness_in);
        change(&mut one);
        one
    });
    let bases = sides.map(|side| base(bay, side, pull, 0.0));
    section(bay, &SlabMap::of(bay), &slabs, Some(&bases))
}

fn standing(section: &Section, id: &str) -> Option<Standing> {
    let found = section.figures.iter().find(|one| one.id == id);
    found.map(|one| one.standing)
}

const CHECKS: [&str; 4] = ["bearing", "punch", "bend", "bend.up"];

#[test]
fn usual_slabs_hold_a_pickup() {
    // 4,000 lbf on each post, 400 lbf of pull on each outer anchor; 5 and 6 in of 3500 psi.
    for (thickness, grounds) in [
        (5.0, &[Some(50.0), Some(100.0)][..]),
        (6.0, &[None, Some(50.0), Some(100.0)]),
    ] {
        for &subgrade in grounds {
            let found = with(&bay(subgrade), thickness, 400.0, |_| {});
            for id in CHECKS {
                assert_eq!(standing(&found, id), Some(Standing::Passes), "{id}");
            }
        }
    }
}

#[test]
fn a_ground_that_nobody_knows_is_taken_as_very_poor() {
    let found = with(&bay(None), 5.0, 400.0, |_| {});
    assert_eq!(standing(&found, "bend"), Some(Standing::Unknown));
}

#[test]
fn a_ground_that_is_taken_says_so_and_bends_more_than_a_usual_one() {
    let bent = |subgrade| {
        let found = with(&bay(subgrade), 5.0, 400.0, |_| {});
        let one = found.figures.into_iter().find(|one| one.id == "bend");
        let one = one.unwrap();
        let note = format!("{:?}", one.note);
        (one.found.unwrap().number().unwrap(), note)
    };
    let (taken, note) = bent(None);
    assert!(note.contains("very poor ground"), "{note}");
    let (usual, note) = bent(Some(100.0));
    assert!(!note.contains("poor"), "{note}");
    assert!(taken > usual);
    // What passes without a ground holds on every ground from 5 MPa/m (18.4 psi/in) up.
    for subgrade in [18.4, 25.0, 50.0, 75.0, 150.0, 300.0, 550.0] {
        assert!(taken >= bent(Some(subgrade)).0, "{subgrade}");
    }
    let lead = |subgrade| format!("{:?}", with(&bay(subgrade), 6.0, 400.0, |_| {}).lead);
    assert!(lead(None).contains("whatever ground"));
    assert!(!lead(Some(100.0)).contains("whatever ground"));
}

#[test]
fn what_is_not_shown_is_neither_a_pass_nor_a_stop() {
    let plain = bay(None);
    for (id, found) in [
        ("punch", with(&plain, 2.0, 400.0, |_| {})),
        ("bend", with(&plain, 2.5, 400.0, |_| {})),
        ("bend.up", with(&plain, 3.0, 3000.0, |_| {})),
        (
            "bearing",
            with(&plain, 5.0, 400.0, |s| s.strength_pa = Some(1000.0)),
        ),
        ("bend", with(&plain, 5.0, 400.0, |s| s.lines_listed = false)),
        ("punch", with(&plain, 5.0, 400.0, |s| s.broken = true)),
        (
            "bend",
            with(&plain, 5.0, 400.0, |s| s.least_thickness_m = None),
        ),
        ("bend", with(&plain, 5.0, 400.0, |s| s.strength_pa = None)),
        ("bend", with(&plain, f64::NAN, 400.0, |_| {})),
        ("bend", with(&plain, 5.0, f64::NAN, |_| {})),
        ("bend.up", with(&plain, 5.0, f64::NAN, |_| {})),
        ("bearing", with(&plain, 5.0, f64::NAN, |_| {})),
    ] {
        assert_eq!(standing(&found, id), Some(Standing::Unknown), "{id}");
        assert_eq!(found.standing(), Standing::Unknown, "{id}");
    }
    for suspended in [true, false] {
        let mut over = bay(None);
        if let Some(slab) = &mut over.slab {
            slab.suspended = Some(suspended);
            slab.void_below = Some(!suspended);
        }
        let found = with(&over, 8.0, 0.0, |_| {});
        assert_eq!(standing(&found, "bend"), Some(Standing::Unknown));
    }
    let map = SlabMap::of(&plain);
    let slabs = [slab(Side::Left, 6.0), slab(Side::Right, 6.0)];
    let no_loads = section(&plain, &map, &slabs, None);
    assert_eq!(no_loads.standing(), Standing::Unknown);
}

#[test]
fn unknown_pull_weight_or_floor_is_no_pass() {
    let good = bay(Some(100.0));
    let all = |bay: &Bay| {
        let found = with(bay, 8.0, 100.0, |_| {});
        ["bearing", "punch", "bend"].map(|id| standing(&found, id).unwrap())
    };
    assert_eq!(all(&good), [Standing::Passes; 3]);
    let mut no_holes = good.clone();
    no_holes.lift.base_plate.anchors.clear();
    assert_eq!(all(&no_holes), [Standing::Unknown; 3]);
    let mut no_weight = good.clone();
    no_weight.lift.shipping_mass = None;
    assert_eq!(all(&no_weight), [Standing::Unknown; 3]);
    for suspended in [true, false] {
        let mut not_said = good.clone();
        if let Some(slab) = &mut not_said.slab {
            *if suspended {
                &mut slab.suspended
            } else {
                &mut slab.void_below
            } = None;
        }
        assert_eq!(all(&not_said)[1..], [Standing::Unknown; 2]);
        assert_eq!(
            with(&not_said, 8.0, 100.0, |_| {}).standing(),
            Standing::Unknown
        );
    }
    // How much more another method lets it carry is no word for the first sentence.
    let thin = with(&good, 2.5, 400.0, |_| {});
    let lead = format!("{:?}", thin.lead);
    assert!(lead.contains("does not show"), "{lead}");
    assert!(!lead.contains("times the load"), "{lead}");
}

#[test]
fn a_joint_near_bends_more() {
    use crate::bay::{SlabLine, SlabLineKind};
    use crate::units::Length;
    let bent = |away: &[f64]| {
        let mut bay = bay(Some(100.0));
        let lines = away.iter().map(|y| {
            let y = bay.lift.post_line + Length::inches(*y);
            SlabLine {
                kind: SlabLineKind::Joint,
                from: [Length::feet(-12.0), y],
                to: [Length::feet(12.0), y],
            }
        });
        let lines = lines.collect();
        if let Some(slab) = &mut bay.slab {
            slab.lines = lines;
        }
        let found = with(&bay, 5.0, 400.0, |_| {});
        let of = |id| {
            let one = found.figures.iter().find(|one| one.id == id).unwrap();
            one.found.as_ref().unwrap().number().unwrap()
        };
        [of("bend"), of("bend.up")]
    };
    let far = bent(&[]);
    let off = bent(&[90.0]);
    assert!((far[0] - off[0]).abs() < 1e-6 && (far[1] - off[1]).abs() < 1e-6);
    let near = bent(&[30.0]);
    let corner = bent(&[30.0, -30.0]);
    for k in [0, 1] {
        assert!(near[k] > 1.5 * far[k], "{near:?} {far:?}");
        assert!(corner[k] >= near[k]);
    }
}

#[test]
fn a_cracks_end_beside_a_plate_is_as_near_as_it_is() {
    use crate::bay::{SlabLine, SlabLineKind};
    use crate::units::Length;
    // The right plate reaches from 54 to 72 in across, 158 to 178 in along. A crack that ends 2 in
    // off its side, in the middle of that side and between places on it.
    let punched = |y: f64| {
        let mut bay = bay(Some(100.0));
        if let Some(slab) = &mut bay.slab {
            slab.lines = vec![SlabLine {
                kind: SlabLineKind::Crack,
                from: [Length::inches(74.0), Length::inches(y)],
                to: [Length::inches(140.0), Length::inches(y)],
            }];
        }
        let found = with(&bay, 5.0, 400.0, |_| {});
        let one = found.figures.iter().find(|one| one.id == "punch").unwrap();
        one.found.as_ref().unwrap().number().unwrap()
    };
    let middle = punched(168.0);
    for y in [160.0, 163.0, 173.5] {
        assert!((punched(y) - middle).abs() < 1e-6 * middle, "{y}");
    }
}
