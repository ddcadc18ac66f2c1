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
    for thickness in [5.0, 6.0] {
        for subgrade in [None, Some(50.0), Some(100.0)] {
            let found = with(&bay(subgrade), thickness, 400.0, |_| {});
            for id in CHECKS {
                assert_eq!(standing(&found, id), Some(Standing::Passes), "{id}");
            }
        }
    }
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
    assert!(note.contains("assumed, not known"), "{note}");
    let (usual, note) = bent(Some(100.0));
    assert!(!note.contains("assumed"), "{note}");
    assert!(taken > usual);
    assert!((taken - bent(Some(50.0)).0).abs() < 1e-6);
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
