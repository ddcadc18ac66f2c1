use super::*;
use crate::bay::Bay;
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
        day: None,
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
fn no_file_is_all_go_before_lift_and_vehicle_are_said_to_be_measured() {
    use crate::bay::Arrangements;
    let first = |arrangements: Option<Arrangements>| {
        let plan = plan(|bay| bay.arrangements = arrangements);
        let states: Vec<State> = plan.items.iter().take(2).map(|item| item.state).collect();
        assert_eq!(
            plan.items[0].what,
            "lift's figures compared with its manual"
        );
        assert_eq!(plan.items[1].what, "vehicle measured and weighed");
        states
    };
    let said = |lift, vehicle| {
        first(Some(Arrangements {
            lift_compared: lift,
            vehicle_measured: vehicle,
            ..Arrangements::default()
        }))
    };
    assert_eq!(first(None), [State::Unknown; 2]);
    assert_eq!(said(Some(true), Some(false)), [State::Go, State::Unknown]);
    assert_eq!(said(Some(false), Some(true)), [State::Unknown, State::Go]);
}

#[test]
fn every_item_has_a_source_and_what_is_not_known_says_so() {
    let plan = plan(|_| ());
    for item in &plan.items {
        assert!(!item.source.is_empty(), "{item:?}");
        if item.state == State::Unknown {
            assert!(!item.figure.is_empty(), "{item:?}");
        }
    }
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

#[test]
fn the_way_of_a_columns_top_is_a_go_only_where_it_was_walked() {
    let state = |way: Option<bool>| {
        let plan = plan(|bay| {
            bay.arrangements = Some(crate::bay::Arrangements {
                stand_up_way: way,
                ..crate::bay::Arrangements::default()
            });
        });
        item(&plan, "columns are stood up").state
    };
    assert_eq!(state(None), State::Unknown);
    assert_eq!(state(Some(true)), State::Go);
    assert_eq!(state(Some(false)), State::Stop);
    // The study says no longer that it was not looked at.
    let mut bay = test_bay();
    let path = |bay: &crate::bay::Bay| {
        let found = study(bay).unwrap();
        found
            .unknown
            .contains(&crate::clearance::Unknown::StandUpPath)
    };
    assert!(path(&bay));
    bay.arrangements = Some(crate::bay::Arrangements {
        stand_up_way: Some(true),
        ..crate::bay::Arrangements::default()
    });
    assert!(!path(&bay));
}

#[test]
fn a_column_is_stood_up_by_its_mass_among_the_pieces() {
    use crate::bay::{Arrangements, Piece};
    use crate::units::{Length, Mass};
    let state = |raising: f64| {
        let plan = plan(|bay| {
            bay.lift.pieces = vec![Piece {
                name: "left column".into(),
                mass: Mass::kilograms(300.0),
                length: Length::mm(3600.0),
                width: Length::mm(400.0),
                height: Length::mm(350.0),
                column: true,
            }];
            bay.lift.shipping_mass = None;
            bay.arrangements = Some(Arrangements {
                raising: Some(Mass::kilograms(raising)),
                ..Arrangements::default()
            });
        });
        item(&plan, "column to stand up").state
    };
    assert_eq!(state(300.0), State::Go);
    assert_eq!(state(299.0), State::Stop);
}

#[test]
fn a_motor_on_the_wrong_voltage_withholds_every_lock() {
    use crate::bay::{Motor, PowerSupply};
    use crate::units::{Power, Voltage};
    let wrong = |bay: &mut Bay| {
        bay.lift.motor = Some(Motor {
            power: Some(Power::watts(1492.0)),
            voltage: Some(Voltage::volts(115.0)),
            current: None,
            phases: None,
            protected: None,
        });
        bay.power = Some(PowerSupply {
            voltage: Some(Voltage::volts(230.0)),
            breaker: None,
            run: None,
            conductor: None,
            overload: None,
        });
    };
    assert_eq!(
        item(&plan(wrong), "voltage at the motor").state,
        State::Stop
    );
    let mut bay = test_bay();
    let before = study(&bay).unwrap().withheld.len();
    wrong(&mut bay);
    let found = study(&bay).unwrap();
    assert_eq!(found.withheld.len(), before + 1, "{:?}", found.withheld);
    assert_eq!(found.highest_safe_lock, None);
    assert_eq!(item(&plan(wrong), "a lock is safe").state, State::Stop);
}

#[test]
fn the_page_is_a_page_and_leaves_out_no_stop() {
    use crate::report::text::Look;
    let look = Look {
        colour: false,
        width: 100,
    };
    let page_of = |feet: f64| {
        let mut bay = test_bay();
        bay.garage.ceiling = crate::bay::Ceiling::Flat {
            height: crate::units::Length::feet(feet),
        };
        let study = study(&bay).unwrap();
        let report = Report {
            bay: &bay,
            study: &study,
            warnings: &[],
            needs: &[],
            fingerprint: "",
            day: None,
        };
        let plan = Plan::new(&report);
        (render(&report, &plan, look), plan.count(State::Stop))
    };
    for feet in [7.0, 12.0] {
        let (page, stops) = page_of(feet);
        let shown = page.lines().filter(|line| line.starts_with("  STOP"));
        assert_eq!(shown.count(), stops, "{page}");
    }
    let (page, _) = page_of(12.0);
    assert!(page.lines().count() <= 80, "{page}");
}
