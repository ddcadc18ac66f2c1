//! What is said of posts that carry more than their half, and of cargo that may come off.

use super::*;

/// What is not known or stops, without the maker's word on three pads.
fn open(bay: &Bay) -> Vec<(String, Standing)> {
    let found = section(bay, &states(bay)).figures.into_iter();
    found
        .filter(|one| one.standing >= Standing::Unknown && !one.id.ends_with("three_pads"))
        .map(|one| (one.id.into_owned(), one.standing))
        .collect()
}

#[test]
fn a_post_carries_no_more_than_half_of_the_rating() {
    // 5200 lb of vehicle and 1500 lb at 20 in to the right, where the pads are: 2600 and 4100 lb.
    let mut bay = exact();
    bay.vehicle.masses = vec![part("sand", 1_500.0, 112.0, 20.0)];
    bay.vehicle.masses[0].stays = true;
    bay.lift.arm_capacity = Some(Mass::pounds(4_000.0));
    bay.lift.capacity = Mass::pounds(8_300.0);
    let pounds = |bay: &Bay, id: &str| number(&section(bay, &states(bay)), id) / 0.453_592_37;
    assert!((pounds(&bay, "post_load.right") - 4_100.0).abs() < 0.1);
    assert!((pounds(&bay, "post_load.left") - 2_600.0).abs() < 0.1);
    assert_eq!(open(&bay), []);
    bay.lift.capacity = Mass::pounds(8_100.0);
    let stop = ("post_load.right".to_owned(), Standing::Stops);
    assert_eq!(open(&bay), std::slice::from_ref(&stop));
    let study = study(&bay).unwrap();
    assert_eq!(study.highest_safe_lock, None);
    assert!(stops(&study).contains(&"post_load.right"));
    // Unless the manual says otherwise, more or less.
    bay.lift.post_capacity = Some(Mass::pounds(4_200.0));
    assert_eq!(open(&bay), []);
    bay.lift.capacity = Mass::pounds(10_000.0);
    bay.lift.post_capacity = Some(Mass::pounds(4_000.0));
    assert_eq!(open(&bay), [stop]);
}

#[test]
fn cargo_that_may_come_off_while_it_is_up_is_looked_at_without() {
    // 1000 lb at 230 in: with it the weight acts (5200*99.346 + 1000*230)/6200 = 120.419 in behind
    // the bumper; lined up on that, it moves 21 in forward once the cargo is off.
    let mut bay = exact();
    bay.vehicle.masses = vec![part("sand", 1_000.0, 230.0, 0.0)];
    bay.parking.aim = Aim::CentreOfGravity(Length::ZERO);
    bay.policy.inside_pads = Length::inches(1.0);
    let found = section(&bay, &states(&bay));
    assert_eq!(figure(&found, "window.front").standing, Standing::Passes);
    let off = figure(&found, "unloaded.window.front");
    assert!((number(&found, "unloaded.window.front") / 0.0254 - 21.07).abs() < 0.01);
    assert_eq!(off.standing, Standing::Unknown);
    assert!(off.cure.as_ref().unwrap().contains("sand"), "{off:?}");
    assert!(
        found
            .figures
            .iter()
            .all(|one| one.standing != Standing::Stops)
    );
    assert!(format!("{:?}", found.lead).contains("cargo taken off"));
    let looked = study(&bay).unwrap();
    assert!(looked.unknown.contains(&Unknown::Section(Topic::Loads)));
    // Told to stay on, nothing of it is left.
    bay.vehicle.masses[0].stays = true;
    let stays = section(&bay, &states(&bay));
    assert!(
        !stays
            .figures
            .iter()
            .any(|one| one.id.starts_with("unloaded"))
    );
    // Cargo over the weight may come off.
    bay.vehicle.masses = vec![part("sand", 300.0, 100.0, 0.0)];
    let harmless = section(&bay, &states(&bay));
    assert_eq!(figure(&harmless, "unloaded").standing, Standing::Passes);
}

#[test]
fn cargo_and_parts_are_looked_at_together() {
    // Each alone moves the weight 5 to 9 in; both the same way more.
    let mut bay = exact();
    bay.parking.aim = Aim::LiftPoints(Length::inches(-12.0));
    bay.vehicle.masses = vec![
        part("engine", -500.0, 44.0, 0.0),
        part("bumper", 300.0, 0.0, 0.0),
    ];
    let all = states(&bay).unwrap();
    assert!((all.unloaded.len(), all.all_unloaded) == (2, true));
    assert!((all.as_given.mass_kg - 5_000.0 * 0.453_592_37).abs() < 1e-6);
    let mut found: Vec<f64> = all
        .unloaded
        .iter()
        .map(|s| s.mass_kg / 0.453_592_37)
        .collect();
    found.sort_by(f64::total_cmp);
    assert!((found[0] - 4_700.0).abs() < 1e-6 && (found[1] - 5_200.0).abs() < 1e-6);
    // A part that is out before counts as out in all of them.
    bay.vehicle.masses[0].stays = true;
    let all = states(&bay).unwrap();
    assert!(all.before.is_none() && all.unloaded.len() == 1);
    assert!((all.unloaded[0].mass_kg - 4_700.0 * 0.453_592_37).abs() < 1e-6);
    // So much that not every order is looked at is not known.
    bay.vehicle.masses = (0..6)
        .map(|i| part(&format!("bag {i}"), 10.0, 100.0, 0.0))
        .collect();
    assert_eq!(
        open(&bay),
        [("unloaded.sets".to_owned(), Standing::Unknown)]
    );
}

#[test]
fn a_weight_on_the_other_side_of_the_line_is_nothing_on_this_one() {
    let mut bay = exact();
    bay.parking.aim = Aim::CentreOfGravity(Length::inches(-5.0));
    let found = section(&bay, &states(&bay));
    assert!((number(&found, "window.rear") / 0.0254 - 5.0).abs() < 1e-9);
    assert!(number(&found, "window.front").abs() < 1e-12);
    assert!(figure(&found, "window.front").note.is_some());
    assert_eq!(figure(&found, "window.front").standing, Standing::Passes);
}
