//! Do product data and a word in the file count no further than what is shown?

use super::*;
use crate::bay::Slab;
use crate::units::Subgrade;

/// A floor on ground that is known, so that its bending can be screened.
fn on_ground(anchor: Anchor) -> Bay {
    let mut bay = bay(Some(anchor));
    bay.slab = Some(Slab {
        void_below: Some(false),
        suspended: Some(false),
        subgrade: Some(Subgrade::pascals_per_metre(100.0 * PA_PER_PSI / M_PER_INCH)),
        ..Slab::default()
    });
    bay
}

fn number(section: &Section, id: &str) -> f64 {
    let figure = section.figures.iter().find(|one| one.id == id).unwrap();
    figure.found.as_ref().unwrap().number().unwrap()
}

#[test]
fn uncracked_counts_only_where_the_slab_is_shown_to_stay_so() {
    let claimed = |kc| {
        on_ground(Anchor {
            cracked: Some(false),
            kc,
            ..known()
        })
    };
    let thick = |inches: f64| {
        move |slab: &mut PlateSlab| slab.least_thickness_m = Some(inches * M_PER_INCH)
    };
    let bay = claimed(None);
    // 8 in of it bend little: 1.4 by ACI 318-19, 17.6.2.5.1.
    let found = with(&bay, 400.0, 0.0, thick(8.0));
    assert!((number(&found, "cone.psi_c") - 1.4).abs() < 1e-12);
    assert_eq!(standing(&found, "pull_out"), Some(Standing::Passes));
    // Bent beyond what is allowed by a greater pull, or by the load on a thinner slab; or not shown.
    let mut not_on_ground = bay.clone();
    not_on_ground.slab = None;
    for (found, what) in [
        (with(&bay, 5000.0, 0.0, thick(8.0)), "pull"),
        (with(&bay, 400.0, 0.0, thick(3.0)), "thin"),
        (with(&not_on_ground, 400.0, 0.0, thick(8.0)), "ground"),
    ] {
        assert!((number(&found, "cone.psi_c") - 1.0).abs() < 1e-12, "{what}");
        assert_eq!(
            standing(&found, "pull_out"),
            Some(Standing::Unknown),
            "{what}: a pull-out strength for uncracked concrete"
        );
    }
    // A kc for uncracked concrete goes the same way, down to the code's own; a lower one is kept.
    for (kc, shown, not_shown) in [(24.0, 24.0, 17.0), (10.0, 10.0, 10.0)] {
        let bay = claimed(Some(kc));
        let found = with(&bay, 400.0, 0.0, thick(8.0));
        assert!((number(&found, "cone.kc") - shown).abs() < 1e-12);
        let found = with(&bay, 5000.0, 0.0, thick(8.0));
        assert!((number(&found, "cone.kc") - not_shown).abs() < 1e-12);
    }
    // Cracked, as the file says: nothing needs to be shown.
    let found = with(&on_ground(known()), 400.0, 0.0, thick(8.0));
    assert!((number(&found, "cone.psi_c") - 1.0).abs() < 1e-12);
}

#[test]
fn product_data_count_only_where_concrete_is_left_under_the_tip() {
    // 4 1/4 in as written, 3/4 in thick: 1 1/2 in are asked under it.
    let of = |least: f64, thickness: f64| {
        let anchor = Anchor {
            min_thickness: Some(Length::inches(least)),
            effective_embedment: Some(Length::inches(4.25)),
            ..known()
        };
        with(&bay(Some(anchor)), 1.0, 0.0, |slab| {
            slab.least_thickness_m = Some(thickness * M_PER_INCH);
        })
    };
    let hef = |found: &Section| number(found, "cone.hef") / M_PER_INCH;
    let thin = of(4.375, 4.375);
    assert_eq!(standing(&thin, "embedment.under"), Some(Standing::Unknown));
    assert_eq!(thin.standing(), Standing::Unknown);
    // And no more counts than the code's rule lets: two thirds.
    assert!((hef(&thin) - 4.375 * 2.0 / 3.0).abs() < 1e-9);
    let enough = of(4.375, 5.75);
    assert_eq!(standing(&enough, "embedment.under"), None);
    assert!((hef(&enough) - 4.25).abs() < 1e-9);
    // Nor in a slab thinner than the data ask.
    assert!((hef(&of(6.0, 5.75)) - 5.75 * 2.0 / 3.0).abs() < 1e-9);
}

#[test]
fn an_edge_within_what_measuring_errs_is_not_known() {
    use crate::bay::{SlabLine, SlabLineKind};
    // The outer anchors stand at 70 in; a wedge anchor of 3/4 in asks 6 in.
    let at = |x: f64| {
        let mut bay = on_ground(known());
        if let Some(slab) = &mut bay.slab {
            slab.lines = vec![SlabLine {
                kind: SlabLineKind::Joint,
                from: [Length::inches(x), Length::inches(0.0)],
                to: [Length::inches(x), Length::inches(330.0)],
            }];
        }
        standing(&with(&bay, 1.0, 0.0, |_| {}), "edge")
    };
    assert_eq!(at(78.0), Some(Standing::Passes));
    assert_eq!(at(76.01), Some(Standing::Unknown));
    assert_eq!(at(75.0), Some(Standing::Unknown));
}
