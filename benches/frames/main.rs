//! How long does a frame take without a window, at 1920 x 1080 with four samples and shadows?
//!
//! `cargo bench --bench frames` draws shipped scenes and prints the median and the worst time, from
//! the change to the driver's word that the frame is drawn: turning and raising a little before each
//! frame, turning only, and with nothing changed. The same in a picture of a few pixels tells what
//! of it is not the drawing. The first frames, in which the driver still prepares its programs, don't
//! count. `BAYRISE_FRAMES` says how many do.

use std::sync::Arc;
use std::time::Duration;

use bayrise::bayfile::presets::EmbeddedOnly;
use bayrise::panels::{Action, Desk, Document};
use bayrise::viewer::capture::Studio;

const SIZES: [[u32; 2]; 2] = [[1920, 1080], [64, 36]];
const WARM_UP: usize = 20;

fn main() {
    // Cargo passes `--bench`, and the name of a filter where one is given.
    let frames = std::env::var("BAYRISE_FRAMES")
        .ok()
        .and_then(|frames| frames.parse().ok())
        .unwrap_or(300);
    if let Err(why) = run(frames) {
        eprintln!("{why}");
        std::process::exit(3);
    }
}

fn run(frames: usize) -> Result<(), Box<dyn std::error::Error>> {
    println!("{}", bayrise::viewer::probe::adapter()?.name);
    for (name, text) in [
        ("tall-pickup", include_str!("../../scenes/tall-pickup.ron")),
        (
            "camper-under-ties",
            include_str!("../../scenes/camper-under-ties.ron"),
        ),
    ] {
        let document = Document::new(None, text.into(), None, Arc::new(EmbeddedOnly));
        let mut desk = Desk::new(document);
        desk.study_now();
        let mut studio = Studio::open(desk, SIZES[0], false)?;
        for size in SIZES {
            studio.set(size, false);
            studio.shoot()?;
            for what in [Change::TurnAndRaise, Change::Turn, Change::Nothing] {
                let mut times = times(&mut studio, what, frames)?;
                times.sort();
                println!(
                    "{name}, {} x {}, {what:?}: median {:.2} ms, worst {:.2} ms of {} frames",
                    size[0],
                    size[1],
                    times[times.len() / 2].as_secs_f64() * 1e3,
                    times[times.len() - 1].as_secs_f64() * 1e3,
                    times.len(),
                );
            }
        }
    }
    Ok(())
}

/// What happens before each frame.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Change {
    TurnAndRaise,
    Turn,
    Nothing,
}

fn times(
    studio: &mut Studio,
    what: Change,
    frames: usize,
) -> Result<Vec<Duration>, Box<dyn std::error::Error>> {
    let mut times: Vec<Duration> = Vec::with_capacity(frames);
    for frame in 0..WARM_UP + frames {
        #[expect(clippy::cast_precision_loss, reason = "a few hundred frames")]
        let share = frame as f64 / (WARM_UP + frames) as f64;
        let desk = studio.desk();
        if what != Change::Nothing {
            desk.apply(Action::Orbit(0.01, 0.0));
        }
        if what == Change::TurnAndRaise {
            desk.apply(Action::Travel(share * desk.full_travel_m()));
        }
        let took = studio.draw()?;
        if frame >= WARM_UP {
            times.push(took);
        }
    }
    Ok(times)
}
