use super::*;
use crate::clearance::study;
use crate::solids::test_bay::test_bay;

fn plan(change: impl FnOnce(&mut crate::bay::Bay)) -> Plan {
    let mut bay = test_bay();
    change(&mut bay);
    let study = study(&bay).unwrap();
    Plan::new(&Report {
        bay: &bay,
        study: &study,
        warnings: &[],
        needs: &[],
        fingerprint: "",
    })
}

fn item<'a>(plan: &'a Plan, what: &str) -> &'a Item {
    let found = plan.items.iter().find(|item| item.what == what);
    found.unwrap_or_else(|| panic!("{what} in {:#?}", plan.items))
}

#[test]
fn what_nobody_said_is_never_a_go() {
    let plan = plan(|bay| bay.arrangements = None);
    for what in ["building permit", "insurer", "helpers", "torque wrench"] {
        let item = item(&plan, what);
        assert_eq!(item.state, State::Unknown);
        assert!(!item.to_do.is_empty());
    }
    assert!(!plan.is_go());
}

#[test]
fn steps_come_in_order_and_each_is_there() {
    let plan = plan(|_| ());
    let steps: Vec<Step> = plan.items.iter().map(|item| item.step).collect();
    assert!(steps.is_sorted());
    for step in [
        Step::Space,
        Step::Rise,
        Step::Slab,
        Step::Permission,
        Step::Power,
        Step::Heaters,
        Step::Delivery,
        Step::Helpers,
        Step::Tools,
        Step::Inspection,
    ] {
        assert!(steps.contains(&step), "{step:?}");
    }
}

#[test]
fn what_is_refused_stops() {
    use crate::bay::{Arrangements, Leave};
    let plan = plan(|bay| {
        bay.arrangements = Some(Arrangements {
            permit: Some(Leave::Given),
            landlord: Some(Leave::NotNeeded),
            insurer: Some(Leave::Refused),
            ..Arrangements::default()
        });
    });
    assert_eq!(item(&plan, "building permit").state, State::Go);
    assert_eq!(
        item(&plan, "landlord or owners' association").state,
        State::Go
    );
    assert_eq!(item(&plan, "insurer").state, State::Stop);
}

#[test]
fn no_room_is_a_stop() {
    let plan = plan(|bay| {
        bay.garage.ceiling = crate::bay::Ceiling::Flat {
            height: crate::units::Length::feet(7.0),
        };
    });
    assert_eq!(item(&plan, "a lock is safe").state, State::Stop);
    assert_eq!(item(&plan, "lift stands in the room").state, State::Stop);
}
