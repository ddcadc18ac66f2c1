//! One bay per sort of door, for the tests of this folder and of the opener.

use crate::bay::{Bay, Door, RollUpDoor, SectionalDoor, SideHingedDoor, SwingUpDoor, TrackLayout};
use crate::solids::test_bay::{test_bay, test_sectional_door};
use crate::units::{Angle, Length};

pub(crate) fn with_door(door: Door) -> Bay {
    let mut bay = test_bay();
    bay.garage.door = door;
    bay
}

fn sectional(name: &'static str, change: impl Fn(&mut SectionalDoor)) -> (&'static str, Bay) {
    let mut door = test_sectional_door();
    change(&mut door);
    (name, with_door(Door::Sectional(door)))
}

/// Every track layout, with panels that fit the opening and with panels that don't.
pub(crate) fn sectional_layouts() -> Vec<(&'static str, Bay)> {
    let high = TrackLayout::HighLift {
        extra: Length::inches(20.0),
    };
    vec![
        sectional("standard", |_| {}),
        sectional("standard, panels taller in sum", |door| {
            door.panel_height = Length::inches(21.0);
        }),
        sectional("standard, no radius", |door| {
            door.track_radius = Length::ZERO;
        }),
        sectional("high lift", |door| door.layout = high),
        sectional("low headroom", |door| {
            door.layout = TrackLayout::LowHeadroom;
        }),
        sectional("low headroom, panels taller in sum", |door| {
            door.layout = TrackLayout::LowHeadroom;
            door.panel_height = Length::inches(20.0);
        }),
        sectional("low headroom, wide curve", |door| {
            door.layout = TrackLayout::LowHeadroom;
            door.track_radius = Length::inches(30.0);
        }),
        sectional("vertical lift", |door| {
            door.layout = TrackLayout::VerticalLift;
        }),
    ]
}

pub(crate) fn swing_up() -> SwingUpDoor {
    SwingUpDoor {
        panel_thickness: Length::inches(1.75),
        panel_height: Length::inches(96.0),
        track_height: Length::inches(99.0),
        track_offset: Length::inches(2.0),
        track_section: Length::inches(2.0),
    }
}

pub(crate) fn side_hinged(inward: bool) -> SideHingedDoor {
    SideHingedDoor {
        leaf_thickness: Length::inches(1.75),
        inward,
        opens: Angle::degrees(105.0),
    }
}

pub(crate) fn roll_up() -> RollUpDoor {
    RollUpDoor {
        curtain_thickness: Length::inches(1.0),
        coil_diameter: Length::inches(18.0),
        coil_height: Length::inches(107.0),
        coil_out: Length::inches(11.0),
    }
}

/// Every sort of door whose panels move through the bay.
pub(crate) fn moving_doors() -> Vec<(&'static str, Bay)> {
    let mut low_track = swing_up();
    low_track.track_height = Length::inches(93.0);
    let mut doors = sectional_layouts();
    doors.extend([
        ("swing-up", with_door(Door::SwingUp(swing_up()))),
        ("swing-up, low track", with_door(Door::SwingUp(low_track))),
        (
            "side-hinged in",
            with_door(Door::SideHinged(side_hinged(true))),
        ),
        (
            "side-hinged out",
            with_door(Door::SideHinged(side_hinged(false))),
        ),
    ]);
    doors
}
