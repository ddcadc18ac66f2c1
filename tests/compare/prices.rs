//! What has no price is missing, never nothing; and a cheaper lift may be the dearer whole.

use bayrise::bayfile::options::{Money, Pick, Work};
use bayrise::choose::bill::Line;
use bayrise::choose::choice::{Because, Candidate, Choice, Open, choice};
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
        "a joint is too near for its manual"
    );
    assert_eq!(cheap_as_is.total(), None);
    // Far enough for the dear one's manual, and all else is shown to hold: 3150 + 390 + 210 + 520.
    assert_eq!(dear_as_is.of(Work::Pad), Line::NotNeeded);
    assert_eq!(dear_as_is.total(), Some(Money(427_000)));
    // 2480 + 390 + 2950 + 210 + 520.
    assert_eq!(bill(&matrix, 1, 0).total(), Some(Money(655_000)));
    let Choice::One {
        best,
        next: Some(next),
        because,
    } = choice(&matrix)
    else {
        panic!("all prices are known, and they differ");
    };
    assert_eq!((best.pick.change, best.pick.lift), (0, 1));
    assert_eq!((next.pick.change, next.pick.lift), (1, 0));
    assert_eq!(because, Because::Cheaper);
}

/// A bay whose every check of slab, anchors and plates is shown to hold.
fn shown_in_full(more: &str) -> Matrix {
    let scene = |name: &str| {
        let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("scenes");
        std::fs::read_to_string(folder.join(name)).unwrap()
    };
    let files = Files::shipped().with(
        "paper.ron",
        &scene("anchors-on-paper.ron").replace("poured: \"1968-06-01\"", "age_days: 20000"),
    );
    let text = format!(
        "(format: 1, title: \"t\", base: \"paper.ron\", prices: (lift: 1, freight: 1, anchors: 1, \
         electrics: 1), {more})"
    );
    quick(&read(&text, &files), &files)
}

#[test]
fn no_pad_is_needed_only_where_all_that_thicker_concrete_cures_is_shown() {
    let pad = |lists: &str| bill(&shown_in_full(lists), 0, 0).of(Work::Pad);
    assert_eq!(pad(""), Line::NotNeeded);
    for (open, slab) in [
        ("a void below", "void_below: true"),
        ("a side not known", "outline: []"),
        (
            "a crack at a post",
            "lines: [(kind: Crack, from: (\"-1700 mm\", \"0 m\"), to: (\"-1700 mm\", \"6 m\"))]",
        ),
    ] {
        let found = pad(&format!("garages: [(name: \"x\", slab: ({slab}))]"));
        assert_ne!(found, Line::NotNeeded, "{open}");
    }
    // Who asks for no test report of the anchors is shown nothing.
    let unknown = "lifts: [(name: \"x\", lift: (preset: \"overhead-beam-3600-mm\"))]";
    assert_eq!(pad(unknown), Line::NotKnown);
}

#[test]
fn work_that_any_option_lays_over_the_bay_is_needed() {
    let files = Files::shipped();
    let run = |lists: &str| {
        let text = format!(
            "(format: 1, title: \"t\", base: \"creamery.ron\", prices: (lift: 1, freight: 1, \
             anchors: 1, electrics: 1), {lists})"
        );
        bill(&quick(&read(&text, &files), &files), 0, 0)
    };
    let with_lift = run(
        "lifts: [(name: \"l\", garage: (opener: None, obstacles: []), \
                         slab: (strength: \"30 MPa\"))]",
    );
    for work in [Work::Door, Work::Other, Work::Pad] {
        assert_eq!(with_lift.of(work), Line::Missing, "{work:?}");
    }
    let with_vehicle = run("vehicles: [(name: \"v\", garage: (opener: None))]");
    assert_eq!(with_vehicle.of(Work::Door), Line::Missing);
    // A garage may only be described: whether work is meant is not known.
    let with_garage = run("garages: [(name: \"g\", garage: (opener: None))]");
    assert_eq!(with_garage.of(Work::Door), Line::NotKnown);
    assert_eq!(with_garage.total(), None);
}

#[test]
fn a_price_on_any_option_counts() {
    let files = Files::shipped();
    let text = "(format: 1, title: \"t\", base: \"creamery.ron\", prices: (lift: 1, freight: 1, \
                anchors: 1, electrics: 1), lifts: [(name: \"l\", prices: (door: 900, pad: 70))], \
                vehicles: [(name: \"v\", prices: (other: 60))], \
                garages: [(name: \"g\", prices: (other: 5000, door: 100))])";
    let found = bill(&quick(&read(text, &files), &files), 0, 0);
    assert_eq!(
        found.of(Work::Door),
        Line::Priced(Money(100_000)),
        "added up"
    );
    assert_eq!(
        found.of(Work::Other),
        Line::Priced(Money(506_000)),
        "added up"
    );
    assert_eq!(found.of(Work::Pad), Line::Priced(Money(7_000)));
    assert_eq!(found.total(), Some(Money(613_400)));
}

#[test]
fn a_price_that_counts_nowhere_is_named() {
    let files = Files::shipped();
    let warned = |more: &str| -> Vec<String> {
        let text = format!("(format: 1, title: \"t\", base: \"creamery.ron\", {more})");
        let warnings = read(&text, &files).warnings;
        warnings.into_iter().map(|one| one.message).collect()
    };
    assert_eq!(warned("prices: (freight: 1, pad: 1)"), Vec::<String>::new());
    let found = warned("prices: (door: 111)");
    assert!(
        found.len() == 1 && found[0].contains("door work"),
        "{found:?}"
    );
    let found = warned(
        "lifts: [(name: \"l\", prices: (electrics: 9))], \
         changes: [(name: \"c\", prices: (electrics: 5))]",
    );
    assert!(
        found.len() == 1 && found[0].contains("electrics given with \"l\""),
        "{found:?}"
    );
}

#[test]
fn a_price_of_the_bay_file_stands_where_options_give_none() {
    let base = shipped("creamery.ron").replace(
        "post_line: \"14 ft\",",
        "post_line: \"14 ft\", price: \"$3,250\",",
    );
    let files = Files::shipped().with("creamery.ron", &base);
    let run = |more: &str| {
        let text =
            format!("(format: 1, title: \"t\", base: \"creamery.ron\", currency: \"$\", {more})");
        bill(&quick(&read(&text, &files), &files), 0, 0).of(Work::Lift)
    };
    assert_eq!(run("prices: (freight: 1)"), Line::Priced(Money(325_000)));
    assert_eq!(run("prices: (lift: 1)"), Line::Priced(Money(100)));
    let other = "currency: \"$\", lifts: [\"tall-columns-12-8\"]".replace("currency: \"$\", ", "");
    assert_eq!(
        run(&format!("prices: (freight: 1), {other}")),
        Line::Missing
    );
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
             electrics: 1, pad: 1), changes: [(name: \"poured\", prices: (pad: 1))], lifts: [(name: \"a\", prices: ({})), (name: \"b\", prices: ({}))])",
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
    // What is missing decides nothing while what is known of the one is not more than the other.
    for open in [["lift: 1", ""], ["lift: 11", "freight: 9"]] {
        let Choice::Equal {
            price_is_missing, ..
        } = equal(open)
        else {
            panic!("a missing price decided");
        };
        assert!(price_is_missing);
    }
    // Known sums that part them do, whatever is missing.
    let Choice::One { best, because, .. } = equal(["lift: 9", "freight: 11"]) else {
        panic!("the second is dearer whatever is missing");
    };
    assert_eq!((best.pick.lift, because), (0, Because::Cheaper));
    assert!(matches!(
        equal(["lift: 9", "lift: 8"]),
        Choice::One { best, because: Because::Cheaper, .. } if best.pick.lift == 1
    ));
}

#[test]
fn what_is_open_of_both_alike_does_not_hide_that_one_costs_more() {
    let files = Files::shipped();
    let text = "(format: 1, title: \"t\", base: \"creamery.ron\", prices: (freight: 1, anchors: 1, \
                electrics: 1), lifts: [(name: \"a\", lift: (preset: \"tall-columns-11-10\"), prices: \
                (lift: 9000)), (name: \"b\", lift: (preset: \"tall-columns-11-10\"), prices: (lift: \
                2000))])";
    let options = read(text, &files);
    let matrix = quick(&options, &files);
    assert_eq!(bill(&matrix, 0, 0).of(Work::Pad), Line::NotKnown);
    let Choice::One { best, because, .. } = choice(&matrix) else {
        panic!("whether a pad is needed is open of both");
    };
    assert_eq!((best.pick.lift, because), (1, Because::Cheaper));
    let said = bayrise::report::compare::says(&options, &matrix);
    assert!(
        said.contains("7,000 more as far as prices are known"),
        "{said}"
    );
    assert!(!said.contains("in all"), "{said}");
}

#[test]
fn one_broken_vehicle_spoils_the_choice_for_no_other() {
    let files = Files::shipped();
    let text = "(format: 1, title: \"t\", base: \"creamery.ron\", prices: (freight: 1, anchors: 1, \
                electrics: 1, pad: 1), changes: [(name: \"poured\", prices: (pad: 1))], lifts: [(name: \
                \"a\", prices: (lift: 9)), (name: \"b\", prices: (lift: 8))], vehicles: [(name: \
                \"saloon\", vehicle: (preset: \"saloon\")), (name: \"typo\", vehicle: (preset: \
                \"salon\"))])";
    let options = read(text, &files);
    let matrix = quick(&options, &files);
    assert!(matches!(
        choice(&matrix),
        Choice::One { best, because: Because::Cheaper, .. } if best.pick.lift == 1
    ));
    let said = bayrise::report::compare::says(&options, &matrix);
    assert!(
        said.contains("Could not be studied, and counts for nothing here: typo"),
        "{said}"
    );
}

#[test]
fn the_cheapest_that_serves_as_many_is_named_with_what_is_lost_and_saved() {
    let files = Files::shipped();
    let text = "(format: 1, title: \"t\", base: \"south-bay.ron\", currency: \"$\", prices: (freight: \
                1, anchors: 1, electrics: 1), lifts: [(name: \"short\", prices: (lift: 1, pad: 1))], \
                changes: [(name: \"low\"), (name: \"high\", garage: (ceiling: Flat(height: \"14 \
                ft\")), prices: (other: 9000))])";
    let options = read(text, &files);
    let said = bayrise::report::compare::says(&options, &quick(&options, &files));
    assert!(said.starts_with("Take short (high)"), "{said}");
    assert!(
        said.contains("The cheapest that serves as many is short (low): $9,000 less ($5)"),
        "{said}"
    );
    assert!(said.contains("lower, with"), "{said}");
}

#[test]
fn without_a_change_means_the_one_that_lays_nothing() {
    let files = Files::shipped();
    let text = "(format: 1, title: \"t\", base: \"south-bay.ron\", changes: [(name: \"lower\", garage: \
                (ceiling: Flat(height: \"9 ft\"))), (name: \"as it is\"), (name: \"higher\", garage: \
                (ceiling: Flat(height: \"14 ft\")))])";
    let options = read(text, &files);
    let said = bayrise::report::compare::says(&options, &quick(&options, &files));
    assert!(said.starts_with("Take the lift (higher)"), "{said}");
    assert!(
        said.contains("Without that the best is the lift (as it is)"),
        "{said}"
    );
}

#[test]
fn what_taking_away_costs_is_read_from_the_bay_file() {
    let things = "obstacles: [Box(name: \"lamp\", kind: Light, x: \"0 in\", y: \"12 ft\", bottom: \
                  \"11 ft\", width: \"1 ft\", depth: \"1 ft\", height: \"2 in\", removable: (cost: \
                  \"$45\"))],";
    let base = shipped("creamery.ron").replace("obstacles: [],", things);
    assert!(base.contains("lamp") && base.matches("obstacles:").count() == 1);
    let files = Files::shipped().with("creamery.ron", &base);
    let text = "(format: 1, title: \"t\", base: \"creamery.ron\", currency: \"$\", changes: [(name: \
                \"away\", garage: (obstacles: [])), (name: \"and a ceiling\", garage: (obstacles: [], \
                ceiling: Flat(height: \"14 ft\")))], prices: (freight: 1))";
    let matrix = quick(&read(text, &files), &files);
    assert_eq!(
        bill(&matrix, 0, 0).of(Work::Other),
        Line::Priced(Money(4_500))
    );
    assert_eq!(bill(&matrix, 1, 0).of(Work::Other), Line::Missing);
}

#[test]
fn the_price_of_one_piece_of_work_pays_for_no_other() {
    let files = Files::shipped();
    let text = "(format: 1, title: \"t\", base: \"creamery.ron\", prices: (lift: 1, freight: 1, \
                anchors: 1, electrics: 1), lifts: [(name: \"l\", prices: (door: 50, other: 60, pad: 0))], \
                changes: [(name: \"as it is\"), (name: \"door\", garage: (door: None)), (name: \
                \"roof\", garage: (ceiling: Flat(height: \"15 ft\"))), (name: \"strip\", slab: \
                (strength: \"4000 psi\")), (name: \"priced\", garage: (door: None), prices: (door: \
                100))])";
    let matrix = quick(&read(text, &files), &files);
    let of = |change: usize, work: Work| bill(&matrix, change, 0).of(work);
    assert_eq!(of(0, Work::Door), Line::Priced(Money(5_000)));
    assert_eq!(of(1, Work::Door), Line::Missing);
    assert_eq!(of(2, Work::Other), Line::Missing);
    assert_eq!(of(3, Work::Pad), Line::Missing);
    assert_eq!(
        of(4, Work::Door),
        Line::Priced(Money(15_000)),
        "both are priced"
    );
    assert_eq!(bill(&matrix, 1, 0).total(), None);
}

#[test]
fn what_is_surely_to_be_paid_is_not_like_what_may_not_be_needed() {
    let candidate = |at_least: i64, pad: Open| {
        let mut open = [Open::Nothing; 7];
        open[Work::Pad as usize] = pad;
        Candidate {
            pick: Pick {
                garage: 0,
                change: 0,
                lift: 0,
                vehicle: 0,
            },
            served: 1,
            of: 1,
            underbody_m: Some(1.0),
            lowest: 0,
            total: None,
            at_least: Money(at_least),
            open,
        }
    };
    let (need, price) = (candidate(4_100, Open::Need), candidate(4_000, Open::Price));
    assert!(!need.is_dearer_than(&price) && !price.is_dearer_than(&need));
    assert!(candidate(4_100, Open::Price).is_dearer_than(&candidate(4_000, Open::Need)));
    assert!(candidate(4_100, Open::Need).is_dearer_than(&candidate(4_000, Open::Need)));
    // As much is known of both, and the one has work beside it to pay for.
    let (all, whole) = (
        candidate(4_000, Open::Price),
        candidate(4_000, Open::Nothing),
    );
    assert!(all.is_dearer_than(&whole) && !whole.is_dearer_than(&all));
    assert!(
        !candidate(4_000, Open::Need).is_dearer_than(&whole),
        "none may be needed"
    );
    assert!(!whole.is_dearer_than(&whole));
}

#[test]
fn an_option_with_a_price_that_is_none_keeps_its_name() {
    let files = Files::shipped();
    let text = "(format: 1, title: \"t\", base: \"creamery.ron\", lifts: [(name: \"first\", prices: \
                (lift: \"much\")), (name: \"second\")])";
    let options = read(text, &files);
    let names: Vec<&str> = options
        .lifts
        .iter()
        .map(|lift| lift.name.as_str())
        .collect();
    assert_eq!(names, ["first", "second"]);
    assert!(!options.lifts[0].faults.is_empty() && options.lifts[1].faults.is_empty());
}
