//! Is the depth of the anchors held against manual, product data, code and slab?

use super::*;
use crate::bay::SlabDemand;

#[test]
fn only_the_manuals_own_word_stops() {
    let mut asked = bay(Some(known()));
    asked.lift.manual.embedment = Some(Length::inches(4.5));
    let found = with(&asked, 1.0, 0.0, |_| {});
    assert_eq!(standing(&found, "embedment.asked"), Some(Standing::Stops));
    assert!(lead(&found).contains("not set as the lift's manual asks"));
    asked.lift.manual.embedment = Some(Length::inches(4.25));
    let found = with(&asked, 1.0, 0.0, |_| {});
    assert_eq!(standing(&found, "embedment.asked"), Some(Standing::Passes));
    // An advertisement that asks more leaves it open, and the more demanding is shown.
    asked.lift.advertised = SlabDemand {
        embedment: Some(Length::inches(6.0)),
        ..SlabDemand::default()
    };
    let found = with(&asked, 1.0, 0.0, |_| {});
    assert_eq!(standing(&found, "embedment.asked"), Some(Standing::Unknown));
    // The manual's word stops however much more an advertisement asks.
    asked.lift.manual.embedment = Some(Length::inches(4.5));
    let found = with(&asked, 1.0, 0.0, |_| {});
    assert_eq!(standing(&found, "embedment.asked"), Some(Standing::Stops));
}

#[test]
fn an_anchor_as_deep_as_the_slab_stops_whatever_its_kind_and_its_data() {
    use AnchorKind::{Adhesive, CastIn, DropIn, Screw, Sleeve, Undercut, Wedge};
    // 4 1/4 in as written; product data waive the code's rule, not geometry.
    let of = |kind, thickness_in: f64| {
        let anchor = Anchor {
            kind,
            min_thickness: Some(Length::inches(2.0)),
            ..known()
        };
        with(&bay(Some(anchor)), 1.0, 0.0, |slab| {
            slab.least_thickness_m = Some(thickness_in * M_PER_INCH);
        })
    };
    let kinds = [Wedge, Sleeve, DropIn, Undercut, Screw, Adhesive, CastIn].map(Some);
    for kind in kinds.into_iter().chain([None]) {
        for thickness in [1.0, 4.0, 4.25] {
            let found = of(kind, thickness);
            assert_eq!(
                standing(&found, "embedment.through"),
                Some(Standing::Stops),
                "{kind:?} {thickness}"
            );
            assert!(lead(&found).contains("go through the slab"), "{kind:?}");
        }
        assert_eq!(standing(&of(kind, 4.3), "embedment.through"), None);
    }
    // Cast in without product data: 3 in of concrete are left below it.
    let cast = |thickness_in: f64| {
        let anchor = Anchor {
            kind: Some(CastIn),
            ..known()
        };
        let found = with(&bay(Some(anchor)), 1.0, 0.0, |slab| {
            slab.least_thickness_m = Some(thickness_in * M_PER_INCH);
        });
        standing(&found, "embedment.slab")
    };
    assert_eq!(cast(6.2), Some(Standing::Unknown));
    assert_eq!(cast(6.3), Some(Standing::Passes));
}

#[test]
fn what_only_an_advertisement_asks_of_the_depth_is_no_pass() {
    let mut asked = bay(Some(known()));
    asked.lift.advertised.embedment = Some(Length::inches(2.0));
    let found = with(&asked, 1.0, 0.0, |_| {});
    assert_eq!(standing(&found, "embedment.asked"), Some(Standing::Unknown));
    asked.lift.manual.embedment = Some(Length::inches(2.0));
    let found = with(&asked, 1.0, 0.0, |_| {});
    assert_eq!(standing(&found, "embedment.asked"), Some(Standing::Passes));
}

#[test]
fn product_data_stand_for_the_codes_rule() {
    let tested = |thickness: f64| {
        bay(Some(Anchor {
            min_thickness: Some(Length::inches(thickness)),
            ..known()
        }))
    };
    let thin = |slab: &mut PlateSlab| slab.least_thickness_m = Some(4.5 * M_PER_INCH);
    let found = with(&tested(4.5), 1.0, 0.0, thin);
    assert_eq!(standing(&found, "thickness"), Some(Standing::Passes));
    assert_eq!(standing(&found, "embedment.slab"), None);
    let found = with(&tested(5.0), 1.0, 0.0, thin);
    assert_eq!(standing(&found, "thickness"), Some(Standing::Unknown));
}
