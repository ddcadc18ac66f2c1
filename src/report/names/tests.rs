//! Names in sentences.

use super::*;

#[test]
fn one_thing() {
    for (name, expect) in [
        ("vehicle/roof 3", "the vehicle's roof (piece 3)"),
        ("vehicle/roof box", "the vehicle's roof box"),
        ("vehicle/ladder rack", "the vehicle's ladder rack"),
        ("vehicle/spare left", "the vehicle's spare left"),
        ("vehicle/mirror left", "the vehicle's left mirror"),
        ("vehicle/wheel rear right", "the vehicle's rear right wheel"),
        ("vehicle/underbody rear axle", "the vehicle's rear axle"),
        ("lift/arm front left", "the front left arm"),
        ("lift/post left", "the lift's left post"),
        ("lift/overhead beam", "the overhead beam"),
        ("lift/power unit", "the lift's power unit"),
        ("door/panel 4", "door panel 4"),
        ("door/panel left", "the door's left panel"),
        ("door/top bracket", "the door's top bracket"),
        ("door/running bracket 25", "the running door's bracket"),
        ("door/running leaf left 2", "the running door's left leaf"),
        ("door/running", "the running door's curtain"),
        ("door/track left curve 3", "the door's left track"),
        ("opener/release cord", "the opener's release cord"),
        ("opener/release cord 16", "the opener's release cord"),
        ("shell/ceiling", "the ceiling"),
        ("shell/ceiling left", "the left side of the ceiling"),
        ("shell/door header", "the header over the door"),
        ("shell/wall back", "the back wall"),
        ("obstacle/strip light left", "the strip light left"),
        ("obstacle/collar tie 4", "collar tie 4"),
        ("obstacle/Marta's bench", "Marta's bench"),
        ("no path", "the no path"),
        ("obstacle/\u{1b}[31mred", "the  [31mred"),
    ] {
        assert_eq!(the(name), expect, "{name}");
    }
}

#[test]
fn several_at_once() {
    for (names, text, many) in [
        (
            &["vehicle/side 5", "vehicle/side 4", "vehicle/side 5"][..],
            "the vehicle's side (pieces 4 and 5)",
            false,
        ),
        (
            &["vehicle/mirror left", "vehicle/mirror right"],
            "the vehicle's mirrors",
            true,
        ),
        (
            &["lift/post left", "lift/post right"],
            "the lift's posts",
            true,
        ),
        (
            &["opener/release cord 3", "opener/release cord"],
            "the opener's release cord",
            false,
        ),
        (
            &["door/panel 2", "door/panel 10"],
            "door panels 2 and 10",
            true,
        ),
        (&["lift/arm front left"], "the front left arm", false),
    ] {
        let text = text.to_owned();
        assert_eq!(together(names), Called { text, many });
        assert!(names.iter().all(|name| alike(name, names[0])));
    }
    assert!(!alike("vehicle/roof 3", "vehicle/roof box"));
    assert!(!alike("obstacle/collar tie 3", "obstacle/collar tie 4"));
    assert!(!alike("lift/arm front left", "lift/pad front left"));
}
