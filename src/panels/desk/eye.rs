//! Where does the eye go?

use glam::DVec3;

use super::Desk;
use crate::panels::camera::{Camera, FOV_RAD, Lens, Sight};
use crate::solids::Solid;

impl Desk {
    /// What is to be framed, from the solids that are drawn.
    pub fn set_bounds(&mut self, solids: &[Solid]) {
        let bounds = solids
            .iter()
            .map(Solid::bounds)
            .filter(|(low, high)| low.is_finite() && high.is_finite())
            .reduce(|a, b| (a.0.min(b.0), a.1.max(b.1)));
        if let Some((low, high)) = bounds {
            self.bounds_m = [low, high];
            self.own_bounds_m = [low, high];
            if let Some(sight) = self.sight {
                self.look(sight);
            }
            self.follow();
        }
    }

    /// The size of the view; a named look is framed again.
    pub fn set_aspect(&mut self, aspect: f64) {
        if !aspect.is_finite() || aspect <= 0.0 || (aspect - self.aspect).abs() < 1e-6 {
            return;
        }
        self.aspect = aspect;
        if let Some(sight) = self.sight {
            self.look(sight);
        }
        self.follow();
    }

    pub(super) fn look(&mut self, sight: Sight) {
        let [low, high] = self.bounds_m;
        self.camera = Camera::at(sight, low, high, self.driver_m(), self.aspect);
        self.sight = Some(sight);
    }

    /// Where the eyes of someone at the driver's door are.
    pub(super) fn driver_m(&self) -> DVec3 {
        let [low, high] = self.bounds_m;
        let middle = (low + high) * 0.5;
        DVec3::new(low.x + 0.5, middle.y - 0.6, 1.6)
    }

    pub(super) fn move_camera(&mut self, moved: impl FnOnce(Camera) -> Camera) {
        self.camera = moved(self.camera);
        self.sight = None;
    }

    pub(super) fn show_pair(&mut self, moving: String, fixed: String) {
        let points = self.here.as_ref().and_then(|here| {
            here.pairs
                .iter()
                .find(|pair| pair.moving == moving && pair.fixed == fixed)
                .and_then(|pair| pair.points_m)
        });
        if let Some((a, b)) = points {
            self.move_camera(|camera| {
                let middle = (a + b) * 0.5;
                let back = (camera.eye_m - camera.target_m).normalize_or(DVec3::NEG_Y);
                Camera {
                    eye_m: middle + back * 2.5,
                    target_m: middle,
                    ..camera
                }
            });
        }
        self.picked = Some((moving, fixed));
    }
}

/// The same view with lines that stay parallel, or with none that do.
pub(super) fn with_lens(camera: Camera, parallel: bool) -> Camera {
    let height_m = camera.height_at_target_m();
    match (camera.lens, parallel) {
        (Lens::Perspective { .. }, true) => Camera {
            lens: Lens::Parallel { height_m },
            ..camera
        },
        (Lens::Parallel { .. }, false) => {
            let lens = Lens::Perspective { fov_rad: FOV_RAD };
            let back = (camera.eye_m - camera.target_m).normalize_or(DVec3::NEG_Y);
            let distance = height_m / (2.0 * (FOV_RAD * 0.5).tan());
            Camera {
                eye_m: camera.target_m + back * distance,
                lens,
                ..camera
            }
        }
        _ => camera,
    }
}
