//! One engine for all tests, and what a test asks of it.

use std::path::{Path, PathBuf};
use std::sync::mpsc::{Sender, channel};
use std::sync::{Arc, LazyLock, Mutex};

use bayrise::bayfile::presets::EmbeddedOnly;
use bayrise::clearance::probe::Here;
use bayrise::panels::camera::{Camera, Sight};
use bayrise::panels::{Action, Desk, Document};
use bayrise::solids::Solid;
use bayrise::solids::list::solids;
use bayrise::viewer::capture::{Pixels, Studio};

/// A picture that a test wants.
#[derive(Debug, Clone)]
pub(crate) struct Shot {
    pub(crate) scene: &'static str,
    pub(crate) from: Sight,
    /// What is done on the desk before the picture is taken.
    pub(crate) actions: Vec<Action>,
    pub(crate) size: [u32; 2],
    pub(crate) captions: bool,
}

impl Shot {
    /// A small picture without captions, the vehicle on the floor.
    pub(crate) fn plain(scene: &'static str, from: Sight) -> Self {
        Self {
            scene,
            from,
            actions: vec![Action::Dimensions(false)],
            size: [640, 360],
            captions: false,
        }
    }

    pub(crate) fn with(mut self, action: Action) -> Self {
        self.actions.push(action);
        self
    }

    pub(crate) fn captioned(mut self) -> Self {
        self.captions = true;
        self.actions.push(Action::Dimensions(true));
        self
    }
}

/// A picture, and what stood on the desk when it was taken.
#[derive(Debug, Clone)]
pub(crate) struct Taken {
    pub(crate) pixels: Pixels,
    /// What the program takes as a picture whose words can be read.
    pub(crate) legible: bool,
    /// The part of the picture that the view fills, from the top: pixels.
    pub(crate) view: [u32; 2],
    pub(crate) camera: Camera,
    pub(crate) aspect: f64,
    pub(crate) here: Here,
    pub(crate) solids: Vec<Solid>,
    /// What is framed: lowest and highest corner.
    pub(crate) bounds_m: [glam::DVec3; 2],
    /// The pairs (moving, fixed) whose distance is drawn.
    pub(crate) drawn: Vec<(String, String)>,
}

impl Taken {
    /// Where a point of the bay appears, pixels from the left and the top.
    pub(crate) fn pixel(&self, point: glam::DVec3) -> Option<[f64; 2]> {
        let at = self.camera.project(point, self.aspect)?;
        let [width, height] = self.view.map(f64::from);
        Some([(at.x + 1.0) * 0.5 * width, (1.0 - at.y) * 0.5 * height])
    }
}

type Job = (Shot, Sender<Taken>);

/// The thread that the engine lives on.
static STUDIO: LazyLock<Mutex<Sender<Job>>> = LazyLock::new(|| {
    let (sender, jobs) = channel::<Job>();
    std::thread::spawn(move || {
        let mut studio: Option<Studio> = None;
        for (shot, answer) in jobs {
            let desk = desk(&shot);
            let studio = match &mut studio {
                Some(known) => {
                    *known.desk() = desk;
                    known.set(shot.size, shot.captions);
                    known
                }
                None => studio.insert(Studio::open(desk, shot.size, shot.captions).unwrap()),
            };
            let pixels = studio.shoot().unwrap();
            let legible = studio.is_legible();
            let taken = taken(studio.desk(), pixels, legible);
            let _ = answer.send(taken);
        }
    });
    Mutex::new(sender)
});

/// Takes a picture.
pub(crate) fn take(shot: Shot) -> Taken {
    let (answer, taken) = channel();
    STUDIO.lock().unwrap().send((shot, answer)).unwrap();
    taken.recv().expect("the engine draws")
}

pub(crate) fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).into()
}

/// The shipped scenes' names.
pub(crate) const SCENES: [&str; 12] = [
    "anchors-on-paper",
    "barred-way-up",
    "camper-under-the-bar",
    "camper-under-ties",
    "coupe-full-rise",
    "engine-out",
    "light-in-the-way",
    "no-safe-lock",
    "short-columns",
    "tall-columns",
    "tall-pickup",
    "thin-slab",
];

fn desk(shot: &Shot) -> Desk {
    let file = root().join("scenes").join(format!("{}.ron", shot.scene));
    let text = std::fs::read_to_string(&file).unwrap();
    let document = Document::new(
        Some(format!("scenes/{}.ron", shot.scene).into()),
        text.clone(),
        Some(text),
        Arc::new(EmbeddedOnly),
    );
    let mut desk = Desk::new(document);
    desk.study_now();
    assert!(desk.is_current(), "{}: {:?}", shot.scene, desk.study_failed);
    desk.apply(Action::Look(shot.from));
    for action in &shot.actions {
        desk.apply(action.clone());
    }
    desk
}

fn taken(desk: &Desk, pixels: Pixels, legible: bool) -> Taken {
    let width = pixels.width;
    let height = (f64::from(width) / desk.aspect).round() as u32;
    let verdict = desk.verdict.as_ref().unwrap();
    Taken {
        view: [width, height],
        camera: desk.camera,
        aspect: desk.aspect,
        here: desk.here.clone().unwrap(),
        bounds_m: desk.bounds_m,
        drawn: drawn(desk, [width, height]),
        solids: solids(&verdict.bay, desk.door_travel(), desk.rise.travel_m).unwrap(),
        legible,
        pixels,
    }
}

fn drawn(desk: &Desk, [width, height]: [u32; 2]) -> Vec<(String, String)> {
    let size = egui::vec2(width as f32, height as f32);
    let view = egui::Rect::from_min_size(egui::Pos2::ZERO, size);
    bayrise::panels::overlay::lines(desk, view)
        .into_iter()
        .map(|line| (line.moving, line.fixed))
        .collect()
}
