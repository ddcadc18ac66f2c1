//! The program from end to end: what it prints, where, and how it ends.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "helpers of tests may fail the test too"
)]

#[path = "cli/asked.rs"]
mod asked;
#[path = "cli/broken.rs"]
mod broken;
#[path = "cli/ended.rs"]
mod ended;
#[path = "cli/kept.rs"]
mod kept;
#[path = "cli/later.rs"]
mod later;
#[path = "cli/letters.rs"]
mod letters;
#[path = "cli/program.rs"]
mod program;
#[path = "cli/schema.rs"]
mod schema;

use std::fs;

use program::{bayrise, bayrise_in, scenes, tall_pickup};
use serde_json::Value;

fn json(args: &[&str]) -> Value {
    let run = bayrise(args);
    assert!(matches!(run.code, 0 | 1), "{run:?}");
    serde_json::from_str(&run.stdout).unwrap()
}

#[test]
fn every_scene_gets_its_verdict() {
    let mut safe = 0;
    for scene in scenes() {
        let run = bayrise(&["check", &scene]);
        let report = json(&["check", &scene, "--format", "json"]);
        let lock = report["verdict"]["highest_safe_lock"].as_u64();
        assert_eq!(run.code, i32::from(lock.is_none()), "{scene}: {run:?}");
        assert_eq!(run.stderr, "", "{scene}");
        assert!(run.stdout.contains("Caution"), "{scene}");
        let said = run.stdout.split_whitespace().collect::<Vec<_>>().join(" ");
        match lock {
            Some(lock) => {
                safe += 1;
                let locks = report["locks"].as_array().unwrap().len();
                let sentence = format!("Lock {lock} of {locks} is the highest safe lock");
                assert!(said.contains(&sentence), "{scene}: {said}");
                assert!(said.contains("Stop the raise"), "{scene}: {said}");
            }
            None => assert!(
                !said.contains("is the highest safe lock"),
                "{scene}: {said}"
            ),
        }
    }
    assert!(safe >= 5, "most scenes have a safe lock: {safe}");
}

#[test]
fn the_scenes_keep_what_their_names_promise() {
    let verdict = |name: &str| json(&["check", &program::scene(name), "--format", "json"]);
    let full = verdict("coupe-full-rise");
    assert_eq!(full["verdict"]["full_rise"], true);
    assert_eq!(full["verdict"]["limited_by"]["kind"], "travel");
    let none = verdict("no-safe-lock");
    assert_eq!(none["verdict"]["highest_safe_lock"], Value::Null);
    let out = verdict("engine-out");
    assert_eq!(out["verdict"]["highest_safe_lock"], Value::Null);
    assert!(out["verdict"]["highest_clear_lock"].is_u64());
    let sections = out["sections"].as_array().unwrap();
    let loads = sections.iter().find(|s| s["topic"] == "loads").unwrap();
    let standing = |id: &str| {
        let figures = loads["figures"].as_array().unwrap();
        figures.iter().find(|f| f["id"] == id).unwrap()["standing"].clone()
    };
    assert_eq!(standing("before.window.rear"), "passes");
    assert_eq!(standing("window.rear"), "stops");
    let ties = verdict("camper-under-ties");
    let fixed = ties["verdict"]["limited_by"]["fixed"].as_str().unwrap();
    assert!(fixed.contains("collar tie"), "{fixed}");
    let light = verdict("light-in-the-way");
    let fixed = light["verdict"]["limited_by"]["fixed"].as_str().unwrap();
    assert!(fixed.contains("light"), "{fixed}");
    let barred = verdict("barred-way-up");
    let states: Vec<&str> = barred["locks"]
        .as_array()
        .unwrap()
        .iter()
        .map(|lock| lock["state"].as_str().unwrap())
        .collect();
    assert!(states.contains(&"barred"), "{states:?}");
    // Every lock is clear, and the slab alone withholds them.
    let thin = verdict("thin-slab");
    assert_eq!(thin["verdict"]["highest_safe_lock"], Value::Null);
    let locks = thin["locks"].as_array().unwrap().len();
    assert_eq!(thin["verdict"]["highest_clear_lock"], locks);
    let sections = thin["sections"].as_array().unwrap();
    let slab = sections.iter().find(|s| s["topic"] == "slab").unwrap();
    let stops: Vec<&Value> = slab["figures"]
        .as_array()
        .unwrap()
        .iter()
        .filter(|figure| figure["standing"] == "stops")
        .collect();
    assert_eq!(stops.len(), 1, "{stops:?}");
    assert_eq!(stops[0]["id"], "thickness.right");
    assert_eq!(stops[0]["value"], 0.0508);
}

#[test]
fn the_report_keeps_to_its_schema() {
    let schema: Value = serde_json::from_str(&bayrise(&["schema"]).stdout).unwrap();
    for scene in scenes() {
        let report = json(&["check", &scene, "--format", "json", "--need-lock", "3"]);
        let faults = schema::faults(&schema, &report);
        assert!(faults.is_empty(), "{scene}: {faults:#?}");
    }
}

#[test]
fn the_comparison_keeps_to_its_schema() {
    let schema: Value =
        serde_json::from_str(&bayrise(&["schema", "--of", "compare"]).stdout).unwrap();
    let folder = tempfile::tempdir().unwrap();
    let compared = format!("{}/scenes/compare", env!("CARGO_MANIFEST_DIR"));
    fs::copy(
        format!("{compared}/south-bay.ron"),
        folder.path().join("south-bay.ron"),
    )
    .unwrap();
    // One that is studied, one with a fault, and no prices.
    let odd = folder.path().join("odd.ron");
    fs::write(
        &odd,
        "(format: 1, title: \"odd\", base: \"south-bay.ron\", lifts: [\"floor-plate-9-6\", \
         (name: \"wrong\", lift: (post_line: \"twelve\"))], vehicles: [\"saloon\"])",
    )
    .unwrap();
    for (file, quick) in [
        (format!("{compared}/short-or-tall.ron"), false),
        (format!("{compared}/cheaper-or-dearer.ron"), true),
        (odd.to_string_lossy().into_owned(), true),
    ] {
        let mut args = vec!["compare", &file, "--format", "json"];
        args.extend(quick.then_some("--quick"));
        let report = json(&args);
        assert_ne!(report["cells"], Value::Array(Vec::new()));
        let faults = schema::faults(&schema, &report);
        assert!(faults.is_empty(), "{file}: {faults:#?}");
        let mut strange = report.clone();
        strange["cells"][0]["found"]["locks"] = "many".into();
        assert!(!schema::faults(&schema, &strange).is_empty());
    }
}

#[test]
fn the_report_is_the_same_each_time() {
    let run = || bayrise(&["check", &tall_pickup(), "--format", "json"]).stdout;
    assert_eq!(run(), run());
}

#[test]
fn the_fingerprint_follows_the_file() {
    let folder = tempfile::tempdir().unwrap();
    let text = fs::read_to_string(tall_pickup()).unwrap();
    let print = |text: &str| {
        fs::write(folder.path().join("bay.ron"), text).unwrap();
        let run = bayrise_in(folder.path(), &["check", "bay.ron", "--format", "json"]);
        let report: Value = serde_json::from_str(&run.stdout).unwrap();
        report["program"]["input_fingerprint"].clone()
    };
    let first = print(&text);
    assert_eq!(first, print(&text));
    assert_ne!(first, print(&text.replace("12 ft", "12 ft 1 in")));
    assert_eq!(first.as_str().map(str::len), Some(16));
}

#[test]
fn needs_decide_the_exit() {
    let scene = program::scene("coupe-full-rise");
    let highest = json(&["check", &scene, "--format", "json"])["verdict"]["highest_safe_lock"]
        .as_u64()
        .unwrap();
    let lock = |n: u64| bayrise(&["check", &scene, "--need-lock", &n.to_string()]);
    assert_eq!(lock(highest).code, 0);
    let above = lock(highest + 1);
    assert_eq!(above.code, 1);
    assert!(above.stdout.contains("not met"), "{}", above.stdout);

    let under = |height: &str| bayrise(&["check", &scene, "--need-underbody", height]);
    assert_eq!(under("500 mm").code, 0);
    let short = under("4 m");
    assert_eq!(short.code, 1);
    assert!(short.stdout.contains("short"), "{}", short.stdout);

    let both = bayrise(&[
        "check",
        &scene,
        "--need-lock",
        "1",
        "--need-underbody",
        "4 m",
    ]);
    assert_eq!(both.code, 1, "one need that is not met is enough");
}

#[test]
fn a_need_that_is_no_lock_or_height_is_bad_input() {
    let scene = tall_pickup();
    for need in [
        ["--need-lock", "0"],
        ["--need-lock", "-1"],
        ["--need-lock", "nine"],
        ["--need-underbody", "5"],
        ["--need-underbody", "5 lb"],
        ["--need-underbody", "-5 ft"],
        ["--need-underbody", ""],
    ] {
        bayrise(&["check", &scene, need[0], need[1]]).is_refused();
    }
}

#[test]
fn a_file_without_a_command_prints_the_verdict_and_says_that_there_is_no_window() {
    for name in ["coupe-full-rise", "no-safe-lock"] {
        let scene = program::scene(name);
        let alone = bayrise(&[&scene]);
        let check = bayrise(&["check", &scene]);
        assert_eq!(alone.stdout, check.stdout);
        assert_eq!(alone.code, check.code);
        assert_eq!(alone.stderr.lines().count(), 1, "{}", alone.stderr);
        assert!(alone.stderr.contains("no window"), "{}", alone.stderr);
    }
}

#[test]
fn no_escapes_where_nobody_can_see_colour() {
    for run in [
        bayrise(&["check", &tall_pickup()]),
        bayrise(&["presets"]),
        bayrise(&["--help"]),
        bayrise(&["check", "no such file"]),
    ] {
        assert!(!run.stdout.contains('\u{1b}'), "{}", run.stdout);
        assert!(!run.stderr.contains('\u{1b}'), "{}", run.stderr);
    }
}

#[test]
fn solids_are_listed_with_names_and_places() {
    let scene = tall_pickup();
    let down = json(&["solids", &scene]);
    let up = json(&["solids", &scene, "--travel", "48 in", "--door", "0.35"]);
    let solids = |list: &Value| list["solids"].as_array().unwrap().clone();
    let height = |list: &Value, name: &str| {
        solids(list)
            .iter()
            .find(|s| s["name"] == name)
            .unwrap_or_else(|| panic!("{name}"))["position_m"][2]
            .as_f64()
            .unwrap()
    };
    let carriage = "lift/carriage left";
    let climbed = height(&up, carriage) - height(&down, carriage);
    assert!((climbed - 48.0 * 0.0254).abs() < 1e-9, "{climbed}");
    assert_eq!(up["door"], 0.35);
    for solid in solids(&up) {
        assert!(solid["name"].as_str().is_some_and(|n| n.contains('/')));
        assert_eq!(solid["position_m"].as_array().map(Vec::len), Some(3));
        let q = &solid["quaternion"];
        let norm: f64 = ["w", "x", "y", "z"]
            .iter()
            .map(|k| q[*k].as_f64().unwrap().powi(2))
            .sum();
        assert!((norm - 1.0).abs() < 1e-9, "{solid}");
        let sized = match solid["kind"].as_str().unwrap() {
            "box" => "size_m",
            "cylinder" => "radius_m",
            "prism" => "vertices_m",
            other => panic!("{other}"),
        };
        assert!(!solid[sized].is_null(), "{solid}");
    }
}

#[test]
fn solids_refuse_what_cannot_be() {
    let scene = tall_pickup();
    for option in [
        ["--travel", "1.2"],
        ["--travel", "-1 in"],
        ["--travel", "20 ft"],
        ["--door", "ajar"],
        ["--door", "1.5"],
        ["--door", "NaN"],
    ] {
        bayrise(&["solids", &scene, option[0], option[1]]).is_refused();
    }
}

#[test]
fn presets_are_listed_in_both_systems() {
    let text = bayrise(&["presets"]);
    assert_eq!(text.code, 0);
    let list = json(&["presets", "--format", "json"]);
    for kind in ["lifts", "vehicles"] {
        let entries = list[kind].as_array().unwrap();
        assert!(entries.len() >= 6, "{kind}: {}", entries.len());
        for entry in entries {
            let name = entry["name"].as_str().unwrap();
            assert!(text.stdout.contains(name), "{name}");
        }
    }
    for unit in [" ft ", " mm)", " lb (", " kg)"] {
        assert!(text.stdout.contains(unit), "{unit}");
    }
}

#[test]
fn a_new_file_checks_clean_whatever_it_is_made_of() {
    let list = json(&["presets", "--format", "json"]);
    let names = |kind: &str| -> Vec<String> {
        let entries = list[kind].as_array().unwrap();
        entries
            .iter()
            .map(|e| e["name"].as_str().unwrap().into())
            .collect()
    };
    let (lifts, vehicles) = (names("lifts"), names("vehicles"));
    let folder = tempfile::tempdir().unwrap();
    let many = lifts.len().max(vehicles.len());
    for i in 0..many {
        let lift = &lifts[i % lifts.len()];
        let vehicle = &vehicles[i % vehicles.len()];
        let out = format!("{lift} {vehicle}.ron");
        let new = ["new", &out, "--lift", lift, "--vehicle", vehicle];
        let made = bayrise_in(folder.path(), &new);
        assert_eq!((made.code, made.stderr.as_str()), (0, ""), "{made:?}");
        let text = fs::read_to_string(folder.path().join(&out)).unwrap();
        assert!(text.contains("MEASURE") && text.contains("How to measure"));
        // Nobody has measured it: no lock is safe.
        assert_eq!(bayrise_in(folder.path(), &["check", &out]).code, 1, "{out}");
        let measured: Vec<&str> = text
            .lines()
            .filter(|line| !line.trim_start().starts_with("not_measured:"))
            .collect();
        fs::write(folder.path().join(&out), measured.join("\n")).unwrap();
        let check = bayrise_in(folder.path(), &["check", &out, "--format", "json"]);
        let works = !made.stdout.contains("does not go up on this lift");
        assert_eq!(check.code, i32::from(!works), "{out}: {made:?} {check:?}");
        assert_eq!(check.stderr, "", "{out}");
        let report: Value = serde_json::from_str(&check.stdout).unwrap();
        assert_eq!(report["warnings"], Value::Array(Vec::new()), "{out}");
    }
}

#[test]
fn new_says_what_does_not_work_and_writes_the_file_all_the_same() {
    let folder = tempfile::tempdir().unwrap();
    let pair = [
        "--lift",
        "overhead-beam-3600-mm",
        "--vehicle",
        "pickup-heavy-crew-cab",
    ];
    let made = bayrise_in(folder.path(), &[&["new", "my bay.ron"], &pair[..]].concat());
    assert_eq!((made.code, made.stderr.as_str()), (0, ""), "{made:?}");
    let said = made.stdout.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        said.contains("the vehicle's mirrors come too near the lift's posts"),
        "{said}"
    );
    assert!(said.contains("bayrise check \"my bay.ron\""), "{said}");
    let check = bayrise_in(folder.path(), &["check", "my bay.ron"]);
    assert_eq!(check.code, 1, "{check:?}");
}

#[test]
fn new_replaces_nothing_unless_told_to() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("bay.ron");
    fs::write(&path, "mine").unwrap();
    let new = [
        "new",
        "bay.ron",
        "--lift",
        "tall-columns-11-10",
        "--vehicle",
        "estate",
    ];
    let refused = bayrise_in(folder.path(), &new);
    refused.is_refused();
    assert!(refused.stderr.contains("--force"), "{}", refused.stderr);
    assert_eq!(fs::read_to_string(&path).unwrap(), "mine");
    let forced = bayrise_in(folder.path(), &[&new[..], &["--force"]].concat());
    assert_eq!(forced.code, 0, "{forced:?}");
    assert!(fs::read_to_string(&path).unwrap().contains("format: 1"));
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1);
}

#[test]
fn new_suggests_the_nearest_name() {
    let folder = tempfile::tempdir().unwrap();
    for (lift, vehicle, suggestion) in [
        ("tall-columns-11-1", "estate", "tall-columns-11-10"),
        ("tall-columns-11-10", "estat", "estate"),
    ] {
        let args = ["new", "bay.ron", "--lift", lift, "--vehicle", vehicle];
        let run = bayrise_in(folder.path(), &args);
        run.is_refused();
        let meant = format!("did you mean `{suggestion}`");
        assert!(run.stderr.contains(&meant), "{}", run.stderr);
    }
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 0);
}

#[test]
fn help_names_every_command() {
    let help = bayrise(&["--help"]);
    assert_eq!(help.code, 0);
    for command in ["check", "solids", "presets", "worksheet", "new", "schema"] {
        assert!(
            help.stdout.contains(&format!("\n  {command} ")),
            "{command} in:\n{}",
            help.stdout
        );
        let own = bayrise(&[command, "--help"]);
        assert_eq!(own.code, 0, "{command}");
        assert!(own.stdout.contains("Usage: bayrise"), "{command}");
    }
    assert!(help.stdout.contains("Examples:"));
    assert!(help.stdout.contains("Exit status:"));
    let version = bayrise(&["--version"]);
    assert_eq!(
        version.stdout,
        format!("bayrise {}\n", env!("CARGO_PKG_VERSION"))
    );
}

/// `check` never starts a 3D engine: with no display and no graphics driver to be found it answers
/// as it does anywhere.
#[test]
fn a_check_needs_no_display_and_no_driver() {
    let scene = concat!(env!("CARGO_MANIFEST_DIR"), "/scenes/coupe-full-rise.ron");
    let run = |blind: bool| {
        let mut command = std::process::Command::new(env!("CARGO_BIN_EXE_bayrise"));
        command.args(["check", scene]);
        if blind {
            for name in ["DISPLAY", "WAYLAND_DISPLAY", "WAYLAND_SOCKET"] {
                command.env_remove(name);
            }
            for name in [
                "VK_DRIVER_FILES",
                "VK_ICD_FILENAMES",
                "__EGL_VENDOR_LIBRARY_FILENAMES",
            ] {
                command.env(name, "/nonexistent");
            }
        }
        let output = command.output().unwrap();
        assert_eq!(output.status.code(), Some(0));
        assert!(output.stderr.is_empty());
        output.stdout
    };
    assert_eq!(run(true), run(false));
}

/// The README quotes the program; what it quotes must be what the program says.
#[test]
fn the_readme_quotes_what_the_program_says() {
    let root = env!("CARGO_MANIFEST_DIR");
    let readme = std::fs::read_to_string(format!("{root}/README.md")).unwrap();
    let scene = format!("{root}/scenes/tall-pickup.ron");
    let output = std::process::Command::new(env!("CARGO_BIN_EXE_bayrise"))
        .args(["check", &scene])
        .output()
        .unwrap();
    let words = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
    let said = words(&String::from_utf8(output.stdout).unwrap());
    let quote = readme
        .split("```")
        .find(|block| block.contains("highest safe lock"));
    let quote = words(quote.unwrap());
    assert!(
        said.contains(&quote),
        "the README says\n{quote}\nthe program\n{said}"
    );
    assert!(
        !readme.contains('{'),
        "a place in the README was left unfilled"
    );
}

#[test]
fn sheets_for_the_floor_are_written_in_each_format() {
    let folder = tempfile::tempdir().unwrap();
    let scene = tall_pickup();
    for (name, starts) in [
        ("floor.svg", "<svg "),
        ("floor.pdf", "%PDF-"),
        ("floor.dxf", "0\r\nSECTION"),
    ] {
        let write = || {
            let run = bayrise_in(
                folder.path(),
                &["layout", &scene, name, "--on", "2026-05-14"],
            );
            assert_eq!(run.code, 0, "{run:?}");
            assert!(run.stdout.contains(name), "{run:?}");
            std::fs::read(folder.path().join(name)).unwrap()
        };
        let bytes = write();
        assert!(bytes.starts_with(starts.as_bytes()), "{name}");
        assert_eq!(bytes, write(), "{name}");
    }
    assert!(folder.path().join("floor-2.svg").exists());
    for bad in ["floor.png", "floor", "no folder/floor.pdf"] {
        bayrise_in(folder.path(), &["layout", &scene, bad]).is_refused();
    }
    bayrise_in(folder.path(), &["layout", &scene, "a.pdf", "--paper", "a9"]).is_refused();
}

#[test]
fn card_and_record_are_written_in_each_format_or_not_at_all() {
    let folder = tempfile::tempdir().unwrap();
    let scene = tall_pickup();
    let inside = |args: &[&str]| bayrise_in(folder.path(), args);
    for command in ["card", "record"] {
        for (ending, starts) in [
            ("pdf", &b"%PDF-"[..]),
            ("svg", b"<svg "),
            ("png", b"\x89PNG\r\n\x1a\n"),
        ] {
            let name = format!("{command}.{ending}");
            let write = || {
                let run = inside(&[command, &scene, &name, "--on", "2026-05-14"]);
                assert_eq!(run.code, 0, "{run:?}");
                assert!(run.stdout.contains(&name), "{run:?}");
                fs::read(folder.path().join(&name)).unwrap()
            };
            let bytes = write();
            assert!(bytes.starts_with(starts), "{name}");
            assert_eq!(bytes, write(), "{name}");
        }
        assert!(folder.path().join(format!("{command}-2.png")).exists());
        for bad in ["a.dxf", "a", "no folder/a.pdf"] {
            inside(&[command, &scene, bad]).is_refused();
        }
        inside(&[command, &scene, "a.pdf", "--paper", "a9"]).is_refused();
        inside(&[command, "not there.ron", "a.pdf"]).is_refused();
        inside(&[command, &scene]).is_refused();
    }
    // Without a safe lock it is written all the same, and says so.
    let run = inside(&["card", &program::scene("no-safe-lock"), "none.svg"]);
    assert_eq!(run.code, 0, "{run:?}");
    let svg = fs::read_to_string(folder.path().join("none.svg")).unwrap();
    assert!(svg.contains("DO NOT RAISE") && !svg.contains("STOP"));
    assert!(!folder.path().join("none-2.svg").exists());
}

#[test]
fn pages_that_an_earlier_longer_card_left_are_named_each() {
    let folder = tempfile::tempdir().unwrap();
    let write = || bayrise_in(folder.path(), &["card", &tall_pickup(), "c.svg"]);
    assert!(!write().stdout.contains("NOT OF THIS SET"));
    let pages = fs::read_dir(folder.path()).unwrap().count();
    let left = [pages + 1, pages + 2];
    for page in left {
        fs::write(folder.path().join(format!("c-{page}.svg")), "old").unwrap();
    }
    let run = write();
    assert_eq!(run.code, 0, "{run:?}");
    let told = run.stdout.lines().last().unwrap();
    assert!(told.starts_with("NOT OF THIS SET"), "{run:?}");
    for page in left {
        let name = format!("c-{page}.svg");
        assert!(told.contains(&name), "{run:?}");
        // It is not known to be ours: it is left.
        let left = fs::read_to_string(folder.path().join(&name)).unwrap();
        assert_eq!(left, "old");
    }
}

#[test]
fn a_card_of_two_garages_is_refused_and_nothing_is_written() {
    let folder = tempfile::tempdir().unwrap();
    let other = program::scene("coupe-full-rise");
    let run = bayrise_in(folder.path(), &["card", &tall_pickup(), &other, "a.pdf"]);
    run.is_refused();
    for words in [
        "coupe-full-rise.ron",
        "tall-pickup.ron",
        "garage.width",
        "more",
    ] {
        assert!(run.stderr.contains(words), "{words}: {run:?}");
    }
    let run = bayrise_in(
        folder.path(),
        &["card", &tall_pickup(), &tall_pickup(), "a.pdf"],
    );
    run.is_refused();
    assert!(run.stderr.contains("says the same"), "{run:?}");
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 0);
}
