//! The engine without a window: which picture does it give of a desk?

use std::time::{Duration, Instant};

use bevy::app::TerminalCtrlCHandlerPlugin;
use bevy::camera::{ImageRenderTarget, RenderTarget, Viewport};
use bevy::log::LogPlugin;
use bevy::prelude::*;
use bevy::render::RenderApp;
use bevy::render::error_handler::{RenderErrorHandler, RenderErrorPolicy};
use bevy::render::pipelined_rendering::PipelinedRenderingPlugin;
use bevy::render::render_resource::{
    CachedPipelineState, PipelineCache, PipelineDescriptor, PollType, TextureFormat, TextureUsages,
};
use bevy::render::renderer::RenderDevice;
use bevy::render::view::screenshot::{Screenshot, ScreenshotCaptured};
use bevy::window::ExitCondition;
use bevy::winit::WinitPlugin;
use bevy_egui::EguiOutput;

use super::Pixels;
use super::fence::{DRIVER_HELP, fenced};
use super::overlay::{Captions, OverlayPlugin, scale};
use crate::panels::{Desk, overlay};
use crate::viewer::scene::{SceneCamera, ScenePlugin};
use crate::viewer::{Fault, OpenDesk, Quality, engine, probe};

/// A picture that is not there after this time never will be.
const PATIENCE: Duration = Duration::from_secs(90);

/// Frames within which the captions know their scale.
const FRAMES_TO_SCALE: u32 = 8;

/// The engine with the scene and an image in place of the screen.
pub struct Studio {
    app: App,
    image: RenderTarget,
    size: [u32; 2],
}

impl std::fmt::Debug for Studio {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Studio").field("size", &self.size).finish()
    }
}

/// The picture that just came in.
#[derive(Debug, Default, Resource)]
struct Taken(Option<Image>);

/// What the graphics driver said last.
#[derive(Debug, Resource)]
struct Trouble(String);

impl Studio {
    /// Starts the engine with a desk to be looked at.
    ///
    /// # Errors
    /// When there is nothing to draw with, or the graphics driver fails.
    pub fn open(desk: Desk, size: [u32; 2], captions: bool) -> Result<Self, Fault> {
        let adapter = probe::adapter()?;
        fenced(|| {
            let mut app = App::new();
            app.insert_resource(OpenDesk(desk))
                .insert_resource(Quality {
                    shadows: true,
                    samples: 4,
                })
                .insert_resource(Captions::new(captions, size))
                .init_resource::<Taken>()
                .insert_resource(RenderErrorHandler(|error, main, _| {
                    main.insert_resource(Trouble(error.description.clone()));
                    RenderErrorPolicy::StopRendering
                }))
                .add_plugins(
                    DefaultPlugins
                        .set(WindowPlugin {
                            primary_window: None,
                            exit_condition: ExitCondition::DontExit,
                            ..default()
                        })
                        .set(engine::drawing(&adapter))
                        .set(engine::shading())
                        .disable::<WinitPlugin>()
                        .disable::<LogPlugin>()
                        .disable::<TerminalCtrlCHandlerPlugin>()
                        // One frame after the other: what comes back is what was asked for.
                        .disable::<PipelinedRenderingPlugin>(),
                )
                .add_plugins((ScenePlugin, OverlayPlugin));
            app.finish();
            app.cleanup();
            let image = target(&mut app, size);
            let mut studio = Self { app, image, size };
            // The camera is there after the first frame.
            studio.app.update();
            studio.aim();
            Ok(studio)
        })
    }

    /// The desk that is looked at.
    pub fn desk(&mut self) -> &mut Desk {
        &mut self
            .app
            .world_mut()
            .resource_mut::<OpenDesk>()
            .into_inner()
            .0
    }

    /// Another size and captions or not, from the next picture on.
    pub fn set(&mut self, size: [u32; 2], captions: bool) {
        self.app.insert_resource(Captions::new(captions, size));
        if size != self.size {
            self.size = size;
            self.image = target(&mut self.app, size);
            self.aim();
        }
    }

    /// The desk as it stands.
    ///
    /// # Errors
    /// When the graphics driver fails, or takes over a minute.
    pub fn shoot(&mut self) -> Result<Pixels, Fault> {
        fenced(|| {
            let until = Instant::now() + PATIENCE;
            self.make_room();
            self.set_letters();
            loop {
                self.look(true);
                self.app
                    .world_mut()
                    .spawn(Screenshot(self.image.clone()))
                    .observe(
                        |captured: On<ScreenshotCaptured>, mut taken: ResMut<Taken>| {
                            taken.0 = Some(captured.image.clone());
                        },
                    );
                self.app.update();
                let complete = self.everything_was_ready();
                self.look(false);
                let image = self.developed(until)?;
                if complete {
                    return pixels(image);
                }
            }
        })
    }

    /// Whether all that was written on the last picture has room there, in letters that can be read.
    pub fn is_legible(&self) -> bool {
        self.app.world().resource::<Captions>().legible
    }

    /// Draws the desk as it stands without bringing the picture back, and says how long that took:
    /// to the driver's word that all of it is drawn.
    ///
    /// # Errors
    /// When the graphics driver fails.
    pub fn draw(&mut self) -> Result<Duration, Fault> {
        fenced(|| {
            self.look(true);
            let start = Instant::now();
            self.app.update();
            if let Some(device) = self.app.world().get_resource::<RenderDevice>() {
                device
                    .poll(PollType::wait_indefinitely())
                    .map_err(|error| fault(&format!("the graphics driver failed: {error}")))?;
            }
            Ok(start.elapsed())
        })
    }

    /// Leaves the room that captions take below the view.
    fn make_room(&mut self) {
        let captions = *self.app.world().resource::<Captions>();
        let scale = scale(self.size);
        let view = overlay::view_rect(captions.on, self.desk(), captions.written);
        let physical_size = UVec2::new(
            self.size[0],
            // At least a line of pixels, never more than there are.
            ((view.height() * scale).round() as u32).clamp(1, self.size[1]),
        );
        let aspect = f64::from(physical_size.x) / f64::from(physical_size.y);
        self.desk().set_aspect(aspect);
        let world = self.app.world_mut();
        let mut cameras = world.query_filtered::<&mut Camera, With<SceneCamera>>();
        for mut camera in cameras.iter_mut(world) {
            camera.viewport = Some(Viewport {
                physical_size,
                ..default()
            });
        }
    }

    /// Lets the captions be set at the picture's scale: that is known a frame late, and letters that
    /// were not written before reach the driver a frame later still.
    fn set_letters(&mut self) {
        let scale = scale(self.size);
        for _ in 0..FRAMES_TO_SCALE {
            self.app.update();
            let world = self.app.world_mut();
            let mut written = world.query::<&EguiOutput>();
            let now = written.iter(world).map(|output| output.pixels_per_point);
            if now.into_iter().all(|now| (now - scale).abs() < 1e-4) {
                break;
            }
        }
        self.app.update();
    }

    /// Waits for the picture to come back from the graphics driver.
    fn developed(&mut self, until: Instant) -> Result<Image, Fault> {
        loop {
            if let Some(device) = self.app.world().get_resource::<RenderDevice>() {
                // A driver that can't be asked shows up as trouble, or as running out of time.
                let _ = device.poll(PollType::wait_indefinitely());
            }
            self.app.update();
            if let Some(image) = self.app.world_mut().resource_mut::<Taken>().0.take() {
                return Ok(image);
            }
            if let Some(Trouble(why)) = self.app.world().get_resource::<Trouble>() {
                let first = why.as_str();
                return Err(fault(&format!("the graphics driver failed: {first}")));
            }
            if Instant::now() > until {
                let seconds = PATIENCE.as_secs();
                return Err(fault(&format!("the picture was not there in {seconds} s")));
            }
            std::thread::sleep(Duration::from_millis(1));
        }
    }

    /// True when nothing that the last frame was to show had to be left out for want of one of the
    /// driver's programs. Those that compute have no part in it, see [`engine`].
    fn everything_was_ready(&self) -> bool {
        let drawing = self.app.sub_app(RenderApp).world();
        let Some(cache) = drawing.get_resource::<PipelineCache>() else {
            return false;
        };
        let mut programs = cache
            .pipelines()
            .filter(|p| {
                matches!(
                    p.descriptor,
                    PipelineDescriptor::RenderPipelineDescriptor(_)
                )
            })
            .peekable();
        programs.peek().is_some() && programs.all(|p| matches!(p.state, CachedPipelineState::Ok(_)))
    }

    /// Draws the scene, or waits without drawing it. What is written costs little, and the library
    /// that writes loses its place when it is stopped.
    fn look(&mut self, on: bool) {
        let world = self.app.world_mut();
        let mut cameras = world.query_filtered::<&mut Camera, With<SceneCamera>>();
        for mut camera in cameras.iter_mut(world) {
            camera.is_active = on;
        }
    }

    /// Lets the cameras draw on the image.
    fn aim(&mut self) {
        let image = self.image.clone();
        let world = self.app.world_mut();
        let mut cameras = world.query_filtered::<Entity, With<Camera>>();
        let found: Vec<Entity> = cameras.iter(world).collect();
        for camera in found {
            let mut camera = world.entity_mut(camera);
            camera.insert(image.clone());
            // The engine looks at an image's size anew only where something else changed as well.
            if let Some(mut projection) = camera.get_mut::<Projection>() {
                projection.set_changed();
            }
        }
        // The engine learns the image's size a frame later, the captions one more.
        self.look(false);
        self.app.update();
    }
}

fn fault(what: &str) -> Fault {
    Fault {
        what: what.into(),
        help: DRIVER_HELP.into(),
    }
}

fn target(app: &mut App, [width, height]: [u32; 2]) -> RenderTarget {
    let mut image = Image::new_target_texture(width, height, TextureFormat::Rgba8UnormSrgb, None);
    image.texture_descriptor.usage |= TextureUsages::COPY_SRC;
    let handle = app.world_mut().resource_mut::<Assets<Image>>().add(image);
    RenderTarget::Image(ImageRenderTarget {
        handle,
        scale_factor: scale([width, height]),
    })
}

fn pixels(image: Image) -> Result<Pixels, Fault> {
    let (width, height) = (image.width(), image.height());
    let rgba = image
        .data
        .filter(|data| data.len() == width as usize * height as usize * 4)
        .ok_or_else(|| fault("the graphics driver gave back no picture"))?;
    Ok(Pixels {
        width,
        height,
        rgba,
    })
}
