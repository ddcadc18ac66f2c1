//! How long does a frame take without a window, at 1920 x 1080 with four samples and shadows?
//!
//! `cargo bench --bench frames` draws a shipped scene, turning and raising a little before each
//! frame, and prints the median and the worst time, from the change to the driver's word that the
//! frame is drawn. The first frames, in which the driver still prepares its programs, don't count.

use std::sync::Arc;
use std::time::Duration;

use bayrise::bayfile::presets::EmbeddedOnly;
use bayrise::panels::{Action, Desk, Document};
use bayrise::viewer::capture::Studio;

const SIZE: [u32; 2] = [1920, 1080];
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
        let mut studio = Studio::open(desk, SIZE, false)?;
        studio.shoot()?;
        let mut times: Vec<Duration> = Vec::with_capacity(frames);
        for frame in 0..WARM_UP + frames {
            #[expect(clippy::cast_precision_loss, reason = "a few hundred frames")]
            let share = frame as f64 / (WARM_UP + frames) as f64;
            let desk = studio.desk();
            desk.apply(Action::Orbit(0.01, 0.0));
            desk.apply(Action::Travel(share * desk.full_travel_m()));
            let took = studio.draw()?;
            if frame >= WARM_UP {
                times.push(took);
            }
        }
        times.sort();
        println!(
            "{name}: median {:.2} ms, worst {:.2} ms of {} frames",
            times[times.len() / 2].as_secs_f64() * 1e3,
            times[times.len() - 1].as_secs_f64() * 1e3,
            times.len(),
        );
    }
    Ok(())
}
