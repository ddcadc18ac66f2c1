//! The page for a customer in a real browser: it draws, it raises, it holds nothing back and runs
//! nothing that a name in a file brings along.
#![allow(clippy::unwrap_used, clippy::expect_used)] // a failed unwrap here is a failed test

mod driver;

use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::{Duration, Instant};

use driver::Browser;
use serde_json::{Value, json};

const DESK: (u32, u32) = (1440, 900);
const PHONE: (u32, u32) = (390, 844);

fn bayrise(args: &[&str]) -> String {
    let output = Command::new(env!("CARGO_BIN_EXE_bayrise"))
        .args(args)
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .output()
        .unwrap();
    let said = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.code().is_some_and(|code| code < 2), "{said}");
    String::from_utf8(output.stdout).unwrap()
}

fn scene(name: &str) -> String {
    format!("scenes/{name}.ron")
}

/// Pages and pictures are left here for people to look at.
fn left(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("page");
    std::fs::create_dir_all(&folder).unwrap();
    folder.join(name)
}

fn page(bay: &str, name: &str) -> PathBuf {
    let out = left(&format!("{name}.html"));
    bayrise(&["report", bay, out.to_str().unwrap(), "--on", "2026-05-14"]);
    out
}

fn check(bay: &str) -> Value {
    let text = bayrise(&["check", bay, "--format", "json", "--on", "2026-05-14"]);
    serde_json::from_str(&text).unwrap()
}

/// Sets the slider as a hand does, and waits until that is drawn; how far up the carriage then is.
fn slide(browser: &Browser, millimetres: f64) -> f64 {
    browser.ask(&format!(
        "const s = document.getElementById('travel'); s.value = '{millimetres}'; \
         s.dispatchEvent(new Event('input'));"
    ));
    drawn(browser)
}

fn drawn(browser: &Browser) -> f64 {
    let start = Instant::now();
    loop {
        let at = browser.ask(
            "const c = document.getElementById('canvas').dataset; \
             return c.drawn === c.travel ? Number(c.travel) : null;",
        );
        if let Some(travel_m) = at.as_f64() {
            return travel_m;
        }
        assert!(
            start.elapsed() < Duration::from_secs(60),
            "nothing is drawn"
        );
        std::thread::sleep(Duration::from_millis(30));
    }
}

/// What stands beside the slider: the word and the sentence.
fn told(browser: &Browser) -> (String, String) {
    let text = |id: &str| {
        let script = format!("return document.getElementById('{id}').textContent;");
        browser.ask(&script).as_str().unwrap().to_owned()
    };
    (text("word"), text("says"))
}

fn fits_its_width(browser: &Browser) {
    let widths = browser.ask(
        "const d = document.documentElement; return [d.scrollWidth, d.clientWidth, \
         document.body.scrollWidth];",
    );
    let [page, window, body] = [0, 1, 2].map(|i| widths[i].as_f64().unwrap());
    assert!(page <= window && body <= window, "{widths}");
}

#[test]
fn it_draws_and_raises_what_the_study_found() {
    let mut seen = 0;
    for name in [
        "tall-pickup",
        "barred-way-up",
        "no-safe-lock",
        "thin-slab",
        "coupe-full-rise",
        "camper-under-the-bar",
    ] {
        let bay = scene(name);
        let file = page(&bay, name);
        let check = check(&bay);
        let browser = Browser::open(DESK.0, DESK.1, true);
        browser.show(&file);
        assert_eq!(
            browser.ask("return document.getElementById('turn').hidden;"),
            json!(false)
        );
        let start_m = drawn(&browser);
        browser.picture(&left(&format!("{name}-desk.png")), true);
        fits_its_width(&browser);
        let safe = check["verdict"]["highest_safe_lock"].as_u64();
        let locks = check["locks"].as_array().unwrap();
        let headline = check["verdict"]["door"].as_str().unwrap_or_default();
        for (index, lock) in locks.iter().enumerate() {
            let travel_m = lock["travel_m"].as_f64().unwrap();
            let at_m = slide(&browser, (travel_m * 1000.0).round());
            assert!(
                (at_m - travel_m).abs() < 1e-5,
                "the carriage stands on the lock"
            );
            let (word, says) = told(&browser);
            assert!(
                says.starts_with(&format!("Lock {} of", index + 1)),
                "{says}"
            );
            let state = lock["state"].as_str().unwrap().replace('_', " ");
            let number = lock["lock"].as_u64().unwrap();
            let is_safe = safe.is_some_and(|safe| number <= safe);
            if state == "clear" {
                let expect = if is_safe { "clear" } else { "not safe" };
                assert_eq!(word, expect, "{name}, lock {number} {headline}");
            } else {
                assert_ne!(word, "clear", "{name}, lock {number}");
                if !["no release", "not lifting"].contains(&state.as_str()) {
                    let alike = state == "not shown" && word == "not decided";
                    let worse = word == "strikes";
                    assert!(word == state || alike || worse, "{name}: {word}, {state}");
                }
            }
            seen += 1;
        }
        // It starts on the highest safe lock; where none is safe, on the floor.
        let expect = safe.map_or(0.0, |safe| {
            let lock = locks.iter().find(|one| one["lock"] == safe).unwrap();
            lock["travel_m"].as_f64().unwrap()
        });
        assert!((start_m - expect).abs() < 1e-5);
        assert_eq!(browser.complaints(), Vec::<String>::new(), "{name}");
    }
    assert!(seen > 60);
}

#[test]
fn between_two_locks_nothing_is_called_clear() {
    let bay = scene("tall-pickup");
    let file = page(&bay, "between");
    let check = check(&bay);
    let browser = Browser::open(DESK.0, DESK.1, true);
    browser.show(&file);
    drawn(&browser);
    let text = |script: &str| browser.ask(script).as_str().unwrap().to_owned();
    let count = browser.ask("return document.getElementById('doors').children.length;");
    assert_eq!(count, json!(3), "open, shut and running");
    let sign = "return document.getElementById('sign').style.background;";
    slide(&browser, 0.0);
    let safe = check["verdict"]["highest_safe_lock"].as_u64().unwrap();
    browser.ask(&format!(
        "document.getElementById('locks').children[{safe}].click();"
    ));
    drawn(&browser);
    let good = text(sign);
    assert_eq!(told(&browser).0, "clear");
    let locks: Vec<f64> = check["locks"]
        .as_array()
        .unwrap()
        .iter()
        .map(|lock| lock["travel_m"].as_f64().unwrap())
        .collect();
    let most = browser.ask("return Number(document.getElementById('travel').max);");
    let most = most.as_f64().unwrap();
    assert!(
        most > locks.last().unwrap() * 1000.0 + 1.0,
        "the climb past the last lock is shown"
    );
    for door in 0..3 {
        browser.ask(&format!(
            "document.getElementById('doors').children[{door}].click();"
        ));
        for millimetres in (20..most as u32).step_by(40) {
            let at_m = slide(&browser, f64::from(millimetres));
            if at_m == 0.0 || locks.iter().any(|lock| (lock - at_m).abs() < 1e-6) {
                continue;
            }
            let (word, says) = told(&browser);
            assert!(word != "clear" && text(sign) != good, "at {at_m}: {says}");
            assert!(!says.is_empty(), "at {at_m}");
            if at_m < 0.2 {
                assert!(says.contains("on its tyres"), "at {at_m}: {says}");
            }
        }
    }
    browser.ask("document.getElementById('doors').children[2].click();");
    browser.ask(&format!(
        "document.getElementById('locks').children[{safe}].click();"
    ));
    drawn(&browser);
    browser.ask("document.getElementById('turn').scrollIntoView();");
    browser.picture(&left("running-door.png"), false);
    let (_, says) = told(&browser);
    assert!(
        says.contains("door running") && says.contains("overhead door"),
        "{says}"
    );
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

/// A quaternion's turn of a vector.
fn turned(q: [f64; 4], v: [f64; 3]) -> [f64; 3] {
    let turn = glam::DQuat::from_array(q);
    (turn * glam::DVec3::from_array(v)).to_array()
}

#[test]
fn the_vehicle_stands_where_the_solids_say() {
    let bay = scene("tall-pickup");
    let file = page(&bay, "poses");
    let browser = Browser::open(DESK.0, DESK.1, true);
    browser.show(&file);
    drawn(&browser);
    let solids = |travel_m: f64| -> Value {
        let travel = format!("{travel_m:.6} m");
        let text = bayrise(&["solids", &bay, "--travel", &travel]);
        serde_json::from_str::<Value>(&text).unwrap()["solids"].clone()
    };
    let place = |list: &Value, name: &str| -> [f64; 3] {
        let all = list.as_array().unwrap().iter();
        let one = all.clone().find(|one| one["name"] == name).unwrap();
        [0, 1, 2].map(|i| one["position_m"][i].as_f64().unwrap())
    };
    let rest = solids(0.0);
    let mut before: Option<String> = None;
    for millimetres in [0.0, 150.0, 230.0, 310.0, 333.0, 500.0, 900.0] {
        let travel_m = slide(&browser, millimetres);
        let there = solids(travel_m);
        let groups = browser.ask("return document.getElementById('canvas').dataset.groups;");
        let groups: Vec<[f64; 7]> = serde_json::from_str(groups.as_str().unwrap()).unwrap();
        for name in [
            "lift/carriage left",
            "lift/pad front right",
            "vehicle/mirror left",
            "vehicle/wheel front left",
            "vehicle/wheel rear right",
        ] {
            let (from, to) = (place(&rest, name), place(&there, name));
            let carried = groups.iter().map(|&[x, y, z, a, b, c, d]| {
                let at = turned([a, b, c, d], from);
                [at[0] + x, at[1] + y, at[2] + z]
            });
            let off = carried.map(|at| {
                let off = [0, 1, 2].map(|i| (at[i] - to[i]).abs());
                off.into_iter().fold(0.0, f64::max)
            });
            let off = off.fold(f64::INFINITY, f64::min);
            assert!(off < 1e-4, "{name} at {travel_m}: {off}");
        }
        // And so it is drawn: the picture changes with the slider.
        let picture = browser.ask("return document.getElementById('canvas').toDataURL();");
        let picture = picture.as_str().unwrap().to_owned();
        assert!(picture.len() > 5000, "something is drawn");
        assert_ne!(before.as_ref(), Some(&picture), "at {travel_m}");
        before = Some(picture);
    }
}

#[test]
fn what_a_name_brings_along_stays_text() {
    let folder = tempfile::tempdir().unwrap();
    let text =
        std::fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(scene("tall-pickup")))
            .unwrap();
    let bad = "</script><script>document.title='run'</script><img src=x onerror=\\\"document.title='run'\\\">";
    let title = text.find("title: \"").unwrap() + 8;
    let mut text = format!("{}{bad}{}", &text[..title], &text[title..]);
    let name = text.find("name: \"").unwrap() + 7;
    // A name of a solid has no slash.
    let named = "<img src=x onerror=\\\"document.title='run'\\\"><script>document.title='run'";
    text.insert_str(name, named);
    let bay = folder.path().join("bay.ron");
    std::fs::write(&bay, text).unwrap();
    let file = page(bay.to_str().unwrap(), "script-in-a-name");
    let browser = Browser::open(DESK.0, DESK.1, true);
    browser.show(&file);
    drawn(&browser);
    std::thread::sleep(Duration::from_millis(300));
    let heading = browser.ask("return document.querySelector('h1').textContent;");
    assert!(heading.as_str().unwrap().contains("</script><script>"));
    assert_ne!(browser.ask("return document.title;"), json!("run"));
    assert_eq!(
        browser.ask("return [document.images.length, document.scripts.length];"),
        json!([0, 3])
    );
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

#[test]
fn nothing_else_may_run_or_load() {
    let file = page(&scene("coupe-full-rise"), "policy");
    let mut text = std::fs::read_to_string(&file).unwrap();
    assert!(text.contains("default-src 'none'"));
    // Were something to slip in after all, the policy would keep it from running.
    text = text.replace(
        "</main>",
        "<script>document.title='run'</script><style>h1{display:none}</style>\
         <img src=\"data:image/gif;base64,R0lGODlhAQABAAAAACw=\" onload=\"document.title='run'\"></main>",
    );
    let slipped = left("policy-slipped.html");
    std::fs::write(&slipped, text).unwrap();
    let browser = Browser::open(DESK.0, DESK.1, true);
    browser.show(&slipped);
    drawn(&browser);
    assert_ne!(browser.ask("return document.title;"), json!("run"));
    let shown = browser.ask("return getComputedStyle(document.querySelector('h1')).display;");
    assert_eq!(shown, json!("block"));
    assert!(browser.complaints().len() >= 3, "the policy speaks up");
}

#[test]
fn it_works_on_a_phone() {
    for name in ["tall-pickup", "anchors-on-paper", "no-safe-lock"] {
        let file = page(&scene(name), name);
        let browser = Browser::open(PHONE.0, PHONE.1, true);
        browser.show(&file);
        drawn(&browser);
        fits_its_width(&browser);
        browser.picture(&left(&format!("{name}-phone.png")), true);
        // What is to be touched is large enough for a finger.
        let least = browser.ask(
            "return Math.min(...[...document.querySelectorAll('button')].map(b => \
             Math.min(b.offsetWidth, b.offsetHeight)));",
        );
        assert!(least.as_f64().unwrap() >= 36.0, "{least}");
        assert_eq!(browser.complaints(), Vec::<String>::new(), "{name}");
        reads_on_a_phone(&browser, name);
    }
}

/// Signs of states are seen, drawings are whole or told to go on, chapters are folded and unfold.
fn reads_on_a_phone(browser: &Browser, name: &str) {
    let folded = browser.ask("return document.documentElement.scrollHeight;");
    assert!(folded.as_f64().unwrap() < 16_000.0, "{name}: {folded} px");
    browser.ask("document.querySelectorAll('details').forEach(d => { d.open = true; });");
    browser.picture(&left(&format!("{name}-phone-open.png")), true);
    let signs = browser.ask(
        "const signs = {good: '\\u25cf', poor: '\\u25d0', bad: '\\u2716'}; \
         return [...document.querySelectorAll('.many .good, .many .poor, .many .bad')].filter(e => \
         !getComputedStyle(e, '::before').content.includes(signs[e.className])).length;",
    );
    assert_eq!(signs, json!(0), "{name}: every state keeps its sign");
    let states = browser
        .ask("return document.querySelectorAll('.many .good, .many .poor, .many .bad').length;");
    assert!(states.as_u64().unwrap() > 5, "{name}: {states}");
    let wide = browser.ask(
        "return Math.max(...[...document.querySelectorAll('svg')].map(s => s.getBoundingClientRect().right));",
    );
    assert!(
        wide.as_f64().unwrap() <= 390.0,
        "{name}: drawings fit: {wide}"
    );
    browser.ask("document.querySelector('.sheet a').click();");
    let larger = browser.ask(
        "const s = document.querySelector('.sheet:target svg').getBoundingClientRect(); \
         const t = document.querySelector('.sheet:target .whole').offsetWidth; return [s.width, t];",
    );
    assert!(
        larger[0].as_f64().unwrap() > 1000.0 && larger[1].as_f64().unwrap() > 100.0,
        "{larger}"
    );
    fits_its_width(browser);
    browser.ask("document.querySelectorAll('details').forEach(d => { d.open = false; });");
    browser.ask("document.querySelector('#contents a[href=\"#inputs\"]').click();");
    std::thread::sleep(Duration::from_millis(300));
    let open = browser.ask("return document.querySelector('#inputs details').open;");
    assert_eq!(open, json!(true), "{name}: a link unfolds what it leads to");
}

#[test]
fn it_reads_without_script() {
    let file = page(&scene("tall-pickup"), "no-script");
    let check = check(&scene("tall-pickup"));
    for (width, height) in [DESK, PHONE] {
        let browser = Browser::open(width, height, false);
        browser.show(&file);
        let text = browser.ask("return document.body.innerText;");
        let text = text.as_str().unwrap();
        for caution in check["cautions"].as_array().unwrap() {
            assert!(text.contains(caution.as_str().unwrap()));
        }
        let lead = "is the highest safe lock";
        for part in [lead, "Margins asked", "Marks on the column", "All inputs"] {
            assert!(text.contains(part), "{part}");
        }
        let pictures = browser.ask(
            "return [...document.querySelectorAll('#pictures svg')].map(s => \
             Math.min(s.clientWidth, s.clientHeight));",
        );
        let pictures = pictures.as_array().unwrap();
        assert_eq!(pictures.len(), 2);
        assert!(pictures.iter().all(|size| size.as_f64().unwrap() > 100.0));
        assert_eq!(
            browser.ask("return document.getElementById('turn').hidden;"),
            json!(true)
        );
        fits_its_width(&browser);
    }
}

#[test]
fn it_prints_on_both_papers() {
    let file = page(&scene("tall-pickup"), "print");
    let browser = Browser::open(DESK.0, DESK.1, true);
    browser.show(&file);
    drawn(&browser);
    for (name, inches) in [("letter", [8.5, 11.0]), ("a4", [8.27, 11.69])] {
        let out = left(&format!("print-{name}.pdf"));
        browser.print(&out, inches);
        let bytes = std::fs::read(&out).unwrap();
        assert!(bytes.starts_with(b"%PDF"));
        let pages = bytes
            .windows(12)
            .filter(|w| w.starts_with(b"/Type /Page") && w[11] != b's');
        let pages = pages.count();
        assert!((3..40).contains(&pages), "{name}: {pages} pages");
    }
}
