//! Does the edit panel change the file as the person means it, and nothing else?

use bayrise::bay::Ceiling;
use bayrise::bayfile::edit::Origin;
use bayrise::panels::settings::Section;
use bayrise::panels::{Action, Desk};
use bayrise::solids::{DoorTravel, Role as Part, list};
use bayrise::units;
use egui::Key;
use egui::accesskit::Role;
use egui_kittest::kittest::{NodeT, Queryable};

use crate::helpers::{Panel, choose, click, enter, panel, safe_lock, says, scene, text, type_into};

const SCENE: &str = "tall-pickup.ron";

#[test]
fn a_bad_length_says_what_is_wrong_and_changes_nothing() {
    let mut panel = panel(SCENE, Section::Garage);
    let before = scene(SCENE);
    type_into(&mut panel, "Ceiling height", "12 fot");
    assert!(
        says(&panel, "`fot` is not a unit known here"),
        "while typing"
    );
    assert!(says(&panel, "in, ft, mm, cm or m"), "and what fits");
    assert_eq!(text(&panel), before);
    panel.key_press(Key::Enter);
    panel.run();
    assert_eq!(text(&panel), before, "Enter does not take it");
    assert!(!panel.state().document.can_undo());
    let field = panel.get_by_label("Ceiling height");
    assert_eq!(
        field.value().as_deref(),
        Some("12 fot"),
        "nothing typed is lost"
    );
    assert!(says(&panel, "`fot` is not a unit known here"));

    panel.get_by_label("Ceiling height").focus();
    panel.run();
    panel.key_press(Key::Escape);
    panel.run();
    let field = panel.get_by_label("Ceiling height");
    assert_eq!(field.value().as_deref(), Some("12 ft"), "Escape drops it");
    assert!(!says(&panel, "`fot`"));
}

#[test]
fn defaults_stand_in_the_units_of_the_file() {
    let imperial = [
        ("Over the vehicle", "3 in"),
        ("Beside the posts", "2 in"),
        ("Around the lift's parts", "1 in"),
        ("Room and door", "1/4 in"),
    ];
    let metric = [
        ("Over the vehicle", "75 mm"),
        ("Beside the posts", "50 mm"),
        ("Around the lift's parts", "25 mm"),
        ("Room and door", "6 mm"),
    ];
    for (name, defaults) in [(SCENE, imperial), ("coupe-full-rise.ron", metric)] {
        let mut panel = panel(name, Section::Policy);
        // Without a policy of its own every margin is the default.
        let path = "policy".into();
        panel.state_mut().apply(Action::Remove { path });
        panel.run();
        for (label, default) in defaults {
            let shown = panel.get_by_label(label).value();
            assert_eq!(shown.as_deref(), Some(default), "{name}: {label}");
        }
        let report = bayrise::report::Show {
            units: panel.state().document.read().unwrap().bay.units,
        };
        let policy = &panel.state().document.read().unwrap().bay.policy;
        assert_eq!(report.need(policy.over_vehicle.m()), defaults[0].1);
    }
}

#[test]
fn a_good_length_changes_the_verdict_and_undo_brings_it_back() {
    let mut panel = panel(SCENE, Section::Garage);
    let before = scene(SCENE);
    let safe = safe_lock(&mut panel);
    assert!(safe.is_some(), "the scene has a safe lock");
    enter(&mut panel, "Ceiling height", "9 ft 11 in");
    assert_eq!(
        text(&panel),
        before.replace("\"12 ft\"),", "\"9 ft 11 in\"),")
    );
    assert!(
        !panel.state().is_current(),
        "the old verdict is not shown as this one's"
    );
    assert_ne!(
        safe_lock(&mut panel),
        safe,
        "a lower ceiling is another verdict"
    );
    panel.state_mut().apply(Action::Undo);
    panel.run();
    assert_eq!(text(&panel), before);
    let field = panel.get_by_label("Ceiling height");
    assert_eq!(field.value().as_deref(), Some("12 ft"));
    assert_eq!(safe_lock(&mut panel), safe);
    assert!(!panel.state().document.is_unsaved());
}

#[test]
fn tab_takes_a_value_and_goes_on_to_the_next_field() {
    let mut panel = panel(SCENE, Section::Garage);
    type_into(&mut panel, "Inside width", "7.4 m");
    panel.key_press(Key::Tab);
    panel.run();
    assert!(text(&panel).contains("width: \"7.4 m\",\n        depth: \"28 ft\""));
    assert!(panel.get_by_label("Inside depth").is_focused());
}

#[test]
fn another_lift_is_another_verdict() {
    let mut panel = panel(SCENE, Section::Lift);
    let before = scene(SCENE);
    let safe = safe_lock(&mut panel);
    choose(
        &mut panel,
        "Lift preset",
        "Short columns 9 ft 6 in, floor plate, 10,000 lb",
    );
    let after = before.replace("tall-columns-11-10", "floor-plate-9-6");
    assert_eq!(text(&panel), after, "where it stands is kept");
    assert_eq!(
        panel.get_by_label("Post line").value().as_deref(),
        Some("14 ft")
    );
    assert_ne!(safe_lock(&mut panel), safe);
    assert_eq!(panel.state().locks_m().len(), 17);
    panel.state_mut().apply(Action::Undo);
    assert_eq!(safe_lock(&mut panel), safe);
}

#[test]
fn a_value_over_the_preset_is_written_and_taken_out_again() {
    let mut panel = panel(SCENE, Section::Lift);
    let before = scene(SCENE);
    let value = |desk: &Desk, path: &str| desk.document.written().unwrap().value(path).unwrap();
    let preset = value(panel.state(), "lift.travel");
    assert_eq!(preset.origin, Origin::Preset("tall-columns-11-10".into()));
    enter(&mut panel, "Carriage travel", "70 in");
    let own = value(panel.state(), "lift.travel");
    assert_eq!((own.text.as_str(), own.origin), ("70 in", Origin::File));
    assert!(says(&panel, "Yours, over the preset: travel."));
    click(&mut panel, "Take out: Carriage travel");
    assert_eq!(value(panel.state(), "lift.travel"), preset);
    assert_eq!(text(&panel), before, "the file is as it was");

    // Several at once, as one step.
    enter(&mut panel, "Carriage travel", "70 in");
    enter(&mut panel, "Pad diameter", "130 mm");
    enter(&mut panel, "Beam underside", "11 ft 5 in");
    let with_three = text(&panel).to_string();
    assert!(
        panel.query_by_label("Take out: Beam underside").is_none(),
        "the tie is taken whole"
    );
    click(&mut panel, "Take all 3 out");
    assert_eq!(text(&panel), before);
    panel.state_mut().apply(Action::Undo);
    assert_eq!(text(&panel), with_three);
}

#[test]
fn a_light_is_added_moved_and_removed() {
    let mut panel = panel(SCENE, Section::Obstacles);
    let before = scene(SCENE);
    choose(&mut panel, "Add to the room", "Light");
    let document = &panel.state().document;
    let bay = &document.read().unwrap().bay;
    let light = bay.garage.obstacles.last().unwrap();
    assert_eq!(light.name, "light");
    let is_light = |name: &str| name.split('/').any(|part| part == "light");
    let solids = list::solids(bay, DoorTravel::Shut, 0.0).unwrap();
    let solid = solids.iter().find(|solid| is_light(&solid.name)).unwrap();
    let (low, high) = solid.bounds();
    assert!(high.z < 12.0 * 0.3048, "under the ceiling");
    let beam = solids.iter().find(|solid| solid.role == Part::TieBeam);
    let (beam_low, beam_high) = beam.unwrap().bounds();
    assert!(
        high.y < beam_low.y || low.y > beam_high.y,
        "beside the beam over the lift, not in it"
    );
    let near = 3.0 * 0.3048;
    assert!(
        low.y < beam_high.y + near && high.y > beam_low.y - near,
        "and no farther off than need be"
    );
    let written = document.written().unwrap();
    assert_eq!(written.len("garage.obstacles"), 3);
    assert_eq!(
        written.value("garage.obstacles[2].kind").unwrap().text,
        "Light"
    );
    let y = |desk: &Desk| {
        let written = desk.document.written().unwrap();
        written.value("garage.obstacles[2].y").unwrap().text
    };
    let inches = |text: String| units::parse_length(&text).unwrap().m() / 0.0254;
    let at = inches(y(panel.state()));
    let moved = |panel: &Panel, by: f64| {
        let now = inches(y(panel.state()));
        assert!((now - at - by).abs() < 1e-6, "{now} from {at}");
    };
    click(&mut panel, "To the door");
    moved(&panel, -1.0);
    let shift = egui::Modifiers::SHIFT;
    panel.get_by_label("To the back").click_modifiers(shift);
    panel.run();
    moved(&panel, 11.0);
    panel.state_mut().apply(Action::Undo);
    panel.state_mut().apply(Action::Undo);
    moved(&panel, 0.0);
    panel.run();

    // A second one has a name of its own.
    choose(&mut panel, "Add to the room", "Light");
    let read = panel.state().document.read().unwrap();
    assert_eq!(read.bay.garage.obstacles.last().unwrap().name, "light 2");
    click(&mut panel, "Remove light 2");
    click(&mut panel, "light \u{b7} light");
    click(&mut panel, "Remove light");
    assert_eq!(text(&panel), before);
    panel.state_mut().apply(Action::Undo);
    let read = panel.state().document.read().unwrap();
    assert_eq!(read.bay.garage.obstacles.len(), 3, "undo brings it back");
}

#[test]
fn a_round_bar_moves_with_both_its_ends() {
    let mut panel = panel(SCENE, Section::Obstacles);
    let before = scene(SCENE);
    click(&mut panel, "sprinkler pipe \u{b7} pipe");
    click(&mut panel, "Down");
    assert_eq!(text(&panel), before.replace("11 ft 9 in", "11 ft 8 in"));
    panel.state_mut().apply(Action::Undo);
    assert_eq!(text(&panel), before, "one step");
}

#[test]
fn comments_and_order_survive_every_edit() {
    let before = scene(SCENE);
    let edits = [
        (
            Section::Garage,
            "Title",
            "Another title",
            "\"Marta's north bay, crew-cab pickup\"",
            "\"Another title\"",
        ),
        (
            Section::Garage,
            "Inside depth",
            "8.6 m",
            "depth: \"28 ft\"",
            "depth: \"8.6 m\"",
        ),
        (
            Section::Garage,
            "Opening offset",
            "1/2 in",
            "offset: \"0 in\"",
            "offset: \"1/2 in\"",
        ),
        (
            Section::Garage,
            "Track radius",
            "16 in",
            "track_radius: \"15 in\"",
            "track_radius: \"16 in\"",
        ),
        (
            Section::Garage,
            "Cord below the rail",
            "0 in",
            "cord_drop: \"5 in\"",
            "cord_drop: \"0 in\"",
        ),
        (
            Section::Obstacles,
            "Cost of taking it away",
            "$120",
            "\"$90\"",
            "\"$120\"",
        ),
        (
            Section::Lift,
            "Post line",
            "14 ft 1 in",
            "post_line: \"14 ft\"",
            "post_line: \"14 ft 1 in\"",
        ),
        (
            Section::Parking,
            "Past the post line",
            "-1 in",
            "CentreOfGravity(\"0 in\")",
            "CentreOfGravity(\"-1 in\")",
        ),
        (
            Section::Parking,
            "Spread of the heading",
            "1 deg",
            "yaw: \"0.5 deg\"",
            "yaw: \"1 deg\"",
        ),
        (
            Section::Parking,
            "Pad raise",
            "2 in",
            "pad_raise: \"3 in\"",
            "pad_raise: \"2 in\"",
        ),
        (
            Section::Policy,
            "Over the vehicle",
            "100 mm",
            "over_vehicle: \"3 in\"",
            "over_vehicle: \"100 mm\"",
        ),
    ];
    for (section, label, typed, old, new) in edits {
        let mut panel = panel(SCENE, section);
        assert_eq!(before.matches(old).count(), 1, "{old}");
        enter(&mut panel, label, typed);
        assert_eq!(text(&panel), before.replace(old, new), "{label}");
        assert!(panel.state().document.is_unsaved());
        assert!(panel.state().document.read().is_ok(), "{label}");
        panel.state_mut().apply(Action::Undo);
        assert_eq!(text(&panel), before, "{label}");
    }
}

#[test]
fn a_door_wider_than_its_wall_is_told_at_the_field() {
    let mut panel = panel(SCENE, Section::Garage);
    enter(&mut panel, "Opening width", "30 ft");
    assert!(panel.state().document.read().is_err());
    let fault = panel.get_by_label_contains("the door opening is wider than its wall");
    let (fault, width, height) = (
        fault.rect(),
        panel.get_by_label("Opening width").rect(),
        panel.get_by_label("Opening height").rect(),
    );
    assert!(fault.top() >= width.bottom() - 1.0, "under the field");
    assert!(
        fault.bottom() <= height.top() + 1.0,
        "and over the next one"
    );
    // Elsewhere it is counted, with a way there.
    panel
        .state_mut()
        .apply(Action::Section(Some(Section::Parking)));
    panel.run();
    assert!(!says(&panel, "wider than its wall"));
    let link = "1 fault in \u{201c}Garage\u{201d}: show";
    click(&mut panel, link);
    assert_eq!(panel.state().settings.section, Some(Section::Garage));
}

#[test]
fn a_fault_without_a_field_is_told_at_the_top_with_its_line() {
    let mut panel = panel(SCENE, Section::Garage);
    let broken = scene(SCENE).replace("            // How", "").replace(
        "        width: \"24 ft\",\n",
        "        colour: \"white\",\n        width: \"24 ft\",\n",
    );
    panel.state_mut().document.change(broken.clone());
    panel.run();
    let line = 1 + broken[..broken.find("colour").unwrap()]
        .matches('\n')
        .count();
    assert!(says(
        &panel,
        &format!("line {line}: the garage has no field `colour`")
    ));
    panel
        .state_mut()
        .document
        .change(broken.replace("24 ft\",", "24 ft\""));
    panel.run();
    assert!(panel.state().document.written().is_none());
    assert!(says(&panel, "can't be taken apart into fields"));
}

#[test]
fn another_kind_of_ceiling_keeps_its_height() {
    let mut panel = panel(SCENE, Section::Garage);
    choose(&mut panel, "Ceiling", "Gable");
    let ceiling = |desk: &Desk| desk.document.read().unwrap().bay.garage.ceiling.clone();
    match ceiling(panel.state()) {
        Ceiling::Gable { eaves, ridge, .. } => {
            assert!((eaves.in_inches() - 144.0).abs() < 1e-9);
            assert!(
                ridge > eaves && ridge.in_inches() < 146.0,
                "no room is made up"
            );
        }
        other => panic!("{other:?}"),
    }
    assert_eq!(
        panel.get_by_label("Eaves height").value().as_deref(),
        Some("12 ft")
    );
    choose(&mut panel, "Ceiling", "Flat");
    assert_eq!(text(&panel), scene(SCENE));
}

#[test]
fn lists_grow_and_shrink() {
    let mut panel = panel(SCENE, Section::Vehicle);
    let before = scene(SCENE);
    click(&mut panel, "Add attached part");
    let parts = |desk: &Desk| {
        let read = desk.document.read().unwrap();
        let parts = &read.bay.vehicle.attached;
        parts
            .iter()
            .map(|part| part.name.clone())
            .collect::<Vec<_>>()
    };
    assert_eq!(
        parts(panel.state()),
        ["headache rack", "ladder rack", "roof rack"]
    );
    click(&mut panel, "roof rack");
    click(&mut panel, "Remove roof rack");
    assert_eq!(text(&panel), before);
    click(&mut panel, "headache rack");
    click(&mut panel, "Remove headache rack");
    assert_eq!(parts(panel.state()), ["ladder rack"]);
    assert!(text(&panel).contains("(name: \"ladder rack\", from: \"145 in\""));
}

#[test]
fn a_new_bay_is_what_the_command_writes_and_can_be_undone() {
    let mut panel = panel(SCENE, Section::Garage);
    let generation = panel.state().document.generation();
    panel.state_mut().apply(Action::New);
    let document = &panel.state().document;
    assert!(document.path().is_none() && document.is_unsaved());
    assert!(
        document.generation() > generation,
        "no old study is taken for it"
    );
    assert!(document.text().contains("// MEASURE inside, wall to wall"));
    assert!(document.read().is_ok());
    panel.run();
    assert_eq!(
        panel.get_by_label("Title").value().as_deref(),
        Some("New bay, not measured yet")
    );
    assert_eq!(safe_lock(&mut panel), None, "nothing of it is measured");
    panel.state_mut().apply(Action::Undo);
    assert_eq!(text(&panel), scene(SCENE), "nothing is lost");
}

#[test]
fn every_control_has_a_name() {
    for section in Section::ALL {
        // A scene that says something of the ground.
        let scene = match section {
            Section::Ground => "tall-columns.ron",
            _ => SCENE,
        };
        let panel = panel(scene, section);
        let mut count = 0;
        for role in [
            Role::TextInput,
            Role::ComboBox,
            Role::CheckBox,
            Role::Button,
        ] {
            for node in panel.query_all_by_role(role) {
                let label = node.accesskit_node().label().unwrap_or_default();
                assert!(
                    label.chars().any(char::is_alphabetic),
                    "{section:?}: {role:?} {label:?}"
                );
                count += 1;
            }
        }
        assert!(count > 5, "{section:?}: {count}");
    }
}
