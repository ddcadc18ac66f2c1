use super::*;
use crate::clearance::study;
use crate::ground::Standing;
use crate::solids::test_bay::test_bay;
use crate::units::{Length, Mass};

#[test]
fn a_panel_needs_its_space_before_it() {
    let mut bay = test_bay();
    let with = |bay: &mut Bay, depth: f64| {
        bay.arrangements = Some(Arrangements {
            panel_space: Some([
                Length::inches(30.0),
                Length::inches(depth),
                Length::inches(78.0),
            ]),
            ..Arrangements::default()
        });
        panel_space(bay).iter().map(|one| one.standing).max()
    };
    assert_eq!(with(&mut bay, 36.0), Some(Standing::Passes));
    assert_eq!(with(&mut bay, 35.9), Some(Standing::Stops));
    bay.arrangements = None;
    assert_eq!(panel_space(&bay)[0].standing, Standing::Unknown);
}

#[test]
fn gear_that_carries_less_stops() {
    let mut bay = test_bay();
    bay.arrangements = Some(Arrangements {
        unloading: Some(Mass::kilograms(500.0)),
        ..Arrangements::default()
    });
    let unloading = |kg| gear(&bay, kg, None)[0].standing;
    assert_eq!(unloading(Some(500.0)), Standing::Passes);
    assert_eq!(unloading(Some(501.0)), Standing::Stops);
    assert_eq!(unloading(Some(f64::NAN)), Standing::Stops);
    assert_eq!(unloading(None), Standing::Unknown);
}

#[test]
fn a_heater_that_is_not_in_the_room_is_not_known() {
    let mut bay = test_bay();
    let study = study(&bay).unwrap();
    assert_eq!(heaters(&bay, &study)[0].standing, Standing::Unknown);
    bay.arrangements = Some(Arrangements {
        burning: Some(Vec::new()),
        ..Arrangements::default()
    });
    assert_eq!(heaters(&bay, &study)[0].standing, Standing::Passes);
    bay.arrangements = Some(Arrangements {
        burning: Some(vec![crate::bay::Burning {
            name: "stove".into(),
            clearance: Some(Length::mm(100.0)),
        }]),
        ..Arrangements::default()
    });
    assert_eq!(heaters(&bay, &study)[0].standing, Standing::Unknown);
}
