//! What has no price is missing, never nothing; and a cheaper lift may be the dearer whole.

use bayrise::bayfile::options::{Money, Work};
use bayrise::choose::bill::Line;
use bayrise::choose::choice::{Because, Choice, choice};
use bayrise::choose::{Matrix, matrix};

use super::{Files, quick, read, shipped};

fn bill(matrix: &Matrix, change: usize, lift: usize) -> bayrise::choose::bill::Bill {
    let cell = matrix
        .cells
        .iter()
        .find(|cell| cell.pick.change == change && cell.pick.lift == lift);
    cell.unwrap().found().unwrap().bill
}

#[test]
fn the_slab_makes_the_cheaper_lift_the_dearer_whole() {
    let files = Files::shipped();
    let matrix = quick(&read(&shipped("cheaper-or-dearer.ron"), &files), &files);
    let (cheap_as_is, dear_as_is) = (bill(&matrix, 0, 0), bill(&matrix, 0, 1));
    assert_eq!(
        cheap_as_is.of(Work::Pad),
        Line::Missing,
        "its slab is too thin"
    );
    assert_eq!(cheap_as_is.total(), None);
    assert_eq!(dear_as_is.of(Work::Pad), Line::NotNeeded);
    // 3150 + 390 + 85 + 520, and 2480 + 390 + 1750 + 85 + 520.
    assert_eq!(dear_as_is.total(), Some(Money(414_500)));
    let cheap_with_pads = bill(&matrix, 1, 0);
    assert_eq!(cheap_with_pads.total(), Some(Money(522_500)));
    let Choice::One { best, because, .. } = choice(&matrix) else {
        panic!("one is chosen");
    };
    assert_eq!((best.pick.change, best.pick.lift), (0, 1));
    assert_eq!(because, Because::Cheaper);
}

#[test]
fn what_has_no_price_is_missing() {
    let files = Files::shipped();
    let matrix = quick(&read(&shipped("short-or-tall.ron"), &files), &files);
    let (as_is, opened) = (bill(&matrix, 0, 0), bill(&matrix, 1, 0));
    assert_eq!(as_is.of(Work::Other), Line::NotNeeded);
    assert_eq!(
        opened.of(Work::Other),
        Line::Missing,
        "nobody priced the roof"
    );
    assert_eq!(opened.total(), None);
    let open: Vec<Work> = opened.open().map(|(work, _)| work).collect();
    assert!(open.contains(&Work::Other), "{open:?}");
}

const DOORS: &str = r#"(
    format: 1, title: "t", base: "creamery.ron",
    prices: (lift: 100, freight: 10, anchors: 1, electrics: 5, PRICE),
    changes: [
        (name: "as it is"),
        (name: "another door", garage: (door: None)),
        (name: "farther in", parking: (aim: LiftPoints("1 in"))),
    ],
)"#;

#[test]
fn door_work_is_asked_for_where_the_door_changes() {
    let files = Files::shipped();
    let run = |price: &str| {
        let text = DOORS.replace("PRICE", price);
        let matrix = quick(&read(&text, &files), &files);
        [0, 1, 2].map(|change| bill(&matrix, change, 0).of(Work::Door))
    };
    let (none, missing) = (Line::NotNeeded, Line::Missing);
    assert_eq!(run(""), [none, missing, none]);
    assert_eq!(run("door: 70"), [none, Line::Priced(Money(7_000)), none]);
}

#[test]
fn equals_are_called_equal() {
    let files = Files::shipped();
    let equal = |prices: [&str; 2]| {
        let text = format!(
            "(format: 1, title: \"t\", base: \"creamery.ron\", prices: (freight: 1, anchors: 1, \
             electrics: 1), lifts: [(name: \"a\", prices: ({})), (name: \"b\", prices: ({}))])",
            prices[0], prices[1]
        );
        choice(&matrix(
            &read(&text, &files),
            &files,
            Default::default(),
            &|| (),
        ))
    };
    let Choice::Equal {
        best,
        price_is_missing,
    } = equal(["lift: 9", "lift: 9"])
    else {
        panic!("they are equal");
    };
    assert_eq!((best.len(), price_is_missing), (2, false));
    // One price missing decides nothing, however low the other one is.
    let Choice::Equal {
        price_is_missing, ..
    } = equal(["lift: 1", ""])
    else {
        panic!("a missing price decided");
    };
    assert!(price_is_missing);
    assert!(matches!(
        equal(["lift: 9", "lift: 8"]),
        Choice::One { best, because: Because::Cheaper, .. } if best.pick.lift == 1
    ));
}
