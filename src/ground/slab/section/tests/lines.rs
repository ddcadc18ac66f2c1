//! Do plates and anchors keep off joints, cracks, edges and drains?

use super::*;

#[test]
fn a_joint_6_in_from_a_plate_is_accepted_where_the_manual_asks_no_more() {
    // Common practice, no source. The right plate ends at 72 in, its anchors at 70 in.
    let mut bay = good();
    let joint = |x: f64| vec![line(SlabLineKind::Joint, (x, 0.0), (x, 330.0))];
    slab(&mut bay).lines = joint(78.0);
    assert_eq!(stands(&bay, "distance.right.joint"), Standing::Passes);
    // Anchors 6 in off as written: it holds, but not by more than measuring errs.
    slab(&mut bay).lines = joint(76.0);
    assert_eq!(stands(&bay, "distance.right.joint"), Standing::Unknown);
    // A cure is told where there is something to cure.
    slab(&mut bay).lines = joint(90.0);
    let far = figure(&bay, LATER, "distance.right.joint").unwrap();
    assert_eq!((far.standing, far.cure), (Standing::Passes, None));
    slab(&mut bay).lines = joint(75.9);
    assert_eq!(stands(&bay, "distance.right.joint"), Standing::Stops);
    slab(&mut bay).lines = joint(78.0);
    bay.lift.manual.edge_distance = Some(inch(9.0));
    assert_eq!(stands(&bay, "distance.right.joint"), Standing::Stops);
    // Asked nothing: eight diameters of 3/4 in tell near from far.
    bay.lift.manual.edge_distance = None;
    assert_eq!(stands(&bay, "distance.right.joint"), Standing::Noted);
    slab(&mut bay).lines = joint(75.0);
    assert_eq!(stands(&bay, "distance.right.joint"), Standing::Unknown);
}

#[test]
fn joint_crack_edge_and_drain_are_each_looked_at() {
    for (kind, id) in [
        (SlabLineKind::Joint, "joint"),
        (SlabLineKind::Crack, "crack"),
        (SlabLineKind::Edge, "edge"),
        (SlabLineKind::Drain, "drain"),
    ] {
        let mut bay = good();
        // The nearest anchor of the left post stands at x = -70 in, y = 176 in.
        slab(&mut bay).lines = vec![line(kind, (-75.0, 181.0), (-75.0, 300.0))];
        let left = figure(&bay, LATER, &format!("distance.left.{id}")).unwrap();
        let off = left.found.unwrap().number().unwrap() / 0.0254;
        assert!((off - 50.0_f64.sqrt()).abs() < 1e-9, "{off}");
        assert_eq!(left.standing, Standing::Passes);
        slab(&mut bay).lines = vec![line(kind, (-60.0, 0.0), (-66.0, 330.0))];
        assert_eq!(stands(&bay, &format!("through.left.{id}")), Standing::Stops);
        assert!(figure(&bay, LATER, &format!("distance.left.{id}")).is_none());
        assert!(figure(&bay, LATER, &format!("through.right.{id}")).is_none());
    }
    let mut bay = good();
    slab(&mut bay).lines_listed = false;
    assert_eq!(stands(&bay, "lines"), Standing::Unknown);
}

#[test]
fn walls_are_no_edge_that_anyone_measured() {
    let mut bay = good();
    assert_eq!(stands(&bay, "distance.right.edge"), Standing::Passes);
    slab(&mut bay).outline.clear();
    for asked in [bay.lift.manual.edge_distance, None] {
        bay.lift.manual.edge_distance = asked;
        assert_eq!(stands(&bay, "distance.right.edge"), Standing::Unknown);
        assert_eq!(stands(&bay, "distance.left.edge"), Standing::Unknown);
    }
    let under = |bay: &Bay| crate::ground::slab::under_plate(bay, Side::Left, LATER);
    assert!(!under(&bay).lines_listed, "where it ends was not told");
    assert!(under(&good()).lines_listed);
}

#[test]
fn a_post_beyond_an_edge_does_not_pass() {
    let mut bay = good();
    let edge = |x: f64| line(SlabLineKind::Edge, (x, 0.0), (x, 336.0));
    slab(&mut bay).lines = vec![edge(-30.0)];
    assert_eq!(stands(&bay, "edge_between"), Standing::Stops);
    // Both edges of a pit: whether it is one is not known.
    slab(&mut bay).lines = vec![edge(-15.0), edge(15.0)];
    assert_eq!(stands(&bay, "edge_between"), Standing::Unknown);
    slab(&mut bay).lines = vec![edge(100.0)];
    assert_eq!(figure(&bay, LATER, "edge_between"), None);
}

#[test]
fn the_slabs_own_edge_counts() {
    let mut bay = good();
    let outline = |right: f64| -> Vec<[Length; 2]> {
        [(-144.0, 0.0), (right, 0.0), (right, 330.0), (-144.0, 330.0)]
            .map(|(x, y)| [inch(x), inch(y)])
            .into()
    };
    slab(&mut bay).outline = outline(90.0);
    assert_eq!(stands(&bay, "distance.right.edge"), Standing::Passes);
    slab(&mut bay).outline = outline(74.0);
    assert_eq!(stands(&bay, "distance.right.edge"), Standing::Stops);
    slab(&mut bay).outline = outline(68.0);
    assert_eq!(stands(&bay, "overhang.right"), Standing::Stops);
    slab(&mut bay).outline.truncate(2);
    assert_eq!(stands(&bay, "outline"), Standing::Unknown);
    // A reading outside the slab is told.
    slab(&mut bay).outline = outline(90.0);
    slab(&mut bay)
        .readings
        .extend(readings(&[(100.0, 20.0, 9.0)]));
    assert_eq!(stands(&bay, "readings.off_slab"), Standing::Unknown);
}
