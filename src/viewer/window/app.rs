//! The engine, its plugins, and what happens in a frame in which order.

use std::time::{Duration, Instant};

use bevy::DefaultPlugins;
use bevy::app::{
    App, AppExit, First, Last, PanicHandlerPlugin, PluginGroup as _, PostUpdate, PreUpdate,
    Startup, TerminalCtrlCHandlerPlugin, ctrlc,
};
use bevy::asset::AssetEventSystems;
use bevy::camera::visibility::RenderLayers;
use bevy::camera::{Camera, Camera2d, CameraOutputMode, ClearColorConfig};
use bevy::color::Color;
use bevy::ecs::message::{MessageReader, MessageWriter};
use bevy::ecs::prelude::*;
use bevy::log::LogPlugin;
use bevy::render::error_handler::{ErrorType, RenderErrorHandler};
use bevy::render::pipelined_rendering::PipelinedRenderingPlugin;
use bevy::render::render_resource::BlendState;
use bevy::render::view::Msaa;
use bevy::utils::default;
use bevy::window::{
    MonitorSelection, PrimaryWindow, Window, WindowCloseRequested, WindowFocused, WindowMode,
    WindowPlugin,
};
use bevy::winit::{EventLoopProxyWrapper, WinitSettings};
use bevy_egui::{
    EguiContextSettings, EguiGlobalSettings, EguiInputSystemSettings, EguiPlugin,
    EguiPostUpdateSet, EguiPreUpdateSet, PrimaryEguiContext,
};

use super::ask_path::AskPath;
use super::autosave::{Keeper, Rescue};
use super::mail::{Letterbox, Mail};
use super::office::{Office, Order};
use super::pace::{self, Pace};
use super::pass::{self, Asked, View, Wishes};
use super::studies::Studies;
use super::{failure, frame, trace};
use crate::panels::{Action, Desk};
use crate::viewer::probe::Adapter;
use crate::viewer::scene::ScenePlugin;
use crate::viewer::{Fault, OpenDesk, Quality, engine};

/// Opens the window and returns when it is closed. `studied_in` is what the study on the desk took.
pub(super) fn run(mut desk: Desk, studied_in: Duration, adapter: &Adapter) -> Result<(), Fault> {
    let rescue = Rescue::default();
    failure::watch_for_panics(rescue.clone());
    end_when_interrupted(rescue.clone());

    let mut app = App::new();
    app.add_plugins(
        DefaultPlugins
            .build()
            // Everything there is to say is said by the window or, once, at the end.
            .disable::<LogPlugin>()
            .disable::<PanicHandlerPlugin>()
            .disable::<TerminalCtrlCHandlerPlugin>()
            // Drawing only on change gains nothing from drawing one frame beside the next.
            .disable::<PipelinedRenderingPlugin>()
            .set(WindowPlugin {
                primary_window: Some(frame::window(&desk)),
                close_when_requested: false,
                ..default()
            })
            .set(engine::drawing(adapter))
            .set(engine::shading()),
    )
    .add_plugins((EguiPlugin::default(), ScenePlugin));
    trace::trace("the engine is made");

    // Without a graphics card, what costs most is left out, and the person is told.
    let quality = Quality {
        shadows: !adapter.is_software,
        samples: if adapter.is_software { 1 } else { 4 },
    };
    if adapter.is_software {
        desk.badge = Some("drawn by the processor: no shadows, no smoothing".into());
    }
    let wake = (**app.world().resource::<EventLoopProxyWrapper>()).clone();
    let (letterbox, post) = Letterbox::new(wake);
    let complain = post.clone();
    let keeper = Keeper::start(rescue, move |why| complain.send(Mail::Trouble(why)));
    let office = Office::start(&mut desk, post.clone(), keeper);

    app.insert_resource(EguiGlobalSettings {
        auto_create_primary_context: false,
        ..default()
    })
    .insert_resource(WinitSettings::desktop_app())
    .insert_resource(RenderErrorHandler(end_when_drawing_fails))
    .insert_resource(quality)
    .insert_resource(OpenDesk(desk))
    .insert_resource(letterbox)
    .insert_resource(Studies::new(post, studied_in))
    .insert_resource(office)
    .insert_resource(Pace::at_start())
    .init_resource::<AskPath>()
    .init_resource::<Wishes>()
    .init_resource::<Asked>()
    .init_resource::<View>()
    .configure_sets(
        PostUpdate,
        // Letters that were never shown before are drawn in the frame that needs them.
        AssetEventSystems.after(EguiPostUpdateSet::PostProcessOutput),
    )
    .add_systems(Startup, add_panel_camera)
    .add_systems(
        First,
        (
            trace::trace_frames,
            trace::lose_device,
            read_mail,
            close_when_asked,
            look_when_back,
            frame::fit_the_screen,
            move_by_itself,
        )
            .chain(),
    )
    .add_systems(
        PreUpdate,
        (pass::run, fulfil_wishes, pass::place_view)
            .chain()
            .in_set(EguiPreUpdateSet::BeginPass),
    )
    .add_systems(
        Last,
        (
            look_after_files,
            frame::name_the_window,
            trace::trace_state,
            pace::decide,
        )
            .chain(),
    );

    let exit = app.run();
    drop(std::panic::take_hook());
    match exit {
        AppExit::Success => Ok(()),
        AppExit::Error(_) => Err(failure::render("the window system ended")),
    }
}

/// The first interrupt from the terminal, or request to end, ends the program; what is not saved stays beside its file.
fn end_when_interrupted(rescue: Rescue) {
    // Where no handler can be set, an interrupt ends the program all the same.
    let _ = ctrlc::set_handler(move || {
        rescue.write();
        crate::cli::unfinished::take_away();
        std::process::exit(130);
    });
}

fn end_when_drawing_fails(
    error: &bevy::render::error_handler::RenderError,
    main: &mut World,
    _: &mut World,
) -> bevy::render::error_handler::RenderErrorPolicy {
    let kept = main.get_resource::<Office>().and_then(Office::leave);
    let fault = match error.ty {
        ErrorType::DeviceLost => failure::lost(),
        _ => failure::render(&error.description),
    };
    failure::end(&fault, kept)
}

/// The panels have a camera of their own that covers the whole window, over the view's.
fn add_panel_camera(mut commands: Commands) {
    commands.spawn((
        PrimaryEguiContext,
        EguiContextSettings {
            run_manually: true,
            // Ours tells each key with what is held beside it.
            input_system_settings: EguiInputSystemSettings {
                run_write_keyboard_input_messages_system: false,
                ..default()
            },
            ..default()
        },
        Camera2d,
        Msaa::Off,
        RenderLayers::none(),
        Camera {
            order: 10,
            output_mode: CameraOutputMode::Write {
                blend_state: Some(BlendState::ALPHA_BLENDING),
                clear_color: ClearColorConfig::None,
            },
            clear_color: ClearColorConfig::Custom(Color::NONE),
            ..default()
        },
    ));
}

fn read_mail(
    letterbox: Res<Letterbox>,
    mut desk: ResMut<OpenDesk>,
    mut office: ResMut<Office>,
    mut studies: ResMut<Studies>,
    mut ask: ResMut<AskPath>,
    mut asked: ResMut<Asked>,
    mut pace: ResMut<Pace>,
) {
    while let Some(mail) = letterbox.take() {
        pace.stir();
        if let Some(Mail::Studied(done, took)) = office.receive(mail, &mut desk.0, &mut ask) {
            studies.finished(&mut desk.0, *done, took);
        }
    }
    asked.0.extend(office.take_asked());
    if studies.wants(&desk.0) {
        studies.advance(&mut desk.0);
    }
}

/// The person comes back to the window, perhaps from a program that changed a file.
fn look_when_back(mut focuses: MessageReader<WindowFocused>, office: Res<Office>) {
    if focuses.read().any(|focus| focus.focused) {
        office.look();
    }
}

/// The window's own button asks as the key does, by way of the panels: what is being typed goes into
/// the file first.
fn close_when_asked(
    mut closes: MessageReader<WindowCloseRequested>,
    mut asked: ResMut<Asked>,
    mut pace: ResMut<Pace>,
) {
    if closes.read().last().is_some() {
        asked.0.push(Action::Quit);
        pace.stir();
    }
}

/// A carriage that plays, and show mode.
fn move_by_itself(
    mut last: Local<Option<Instant>>,
    mut desk: ResMut<OpenDesk>,
    mut wishes: ResMut<Wishes>,
) {
    let plays = desk.0.rise.playing || desk.0.settings.show_mode;
    if !plays {
        *last = None;
        return;
    }
    let now = Instant::now();
    let seconds = last
        .replace(now)
        .map_or(0.0, |last| (now - last).as_secs_f64().min(0.5));
    wishes.0.extend(desk.0.apply(Action::Tick(seconds)));
}

#[expect(clippy::too_many_arguments, reason = "a system names what it reads")]
fn fulfil_wishes(
    mut wishes: ResMut<Wishes>,
    mut desk: ResMut<OpenDesk>,
    mut office: ResMut<Office>,
    mut studies: ResMut<Studies>,
    mut ask: ResMut<AskPath>,
    mut pace: ResMut<Pace>,
    mut window: Single<&mut Window, With<PrimaryWindow>>,
    mut exits: MessageWriter<AppExit>,
) {
    if wishes.0.is_empty() {
        return;
    }
    pace.stir();
    for wish in std::mem::take(&mut wishes.0) {
        match office.fulfil(wish, &mut desk.0, &mut ask) {
            Some(Order::FullScreen(on)) => {
                window.mode = if on {
                    WindowMode::BorderlessFullscreen(MonitorSelection::Current)
                } else {
                    WindowMode::Windowed
                };
            }
            Some(Order::Close) => {
                exits.write(AppExit::Success);
            }
            None => {}
        }
    }
    studies.advance(&mut desk.0);
}

fn look_after_files(
    mut desk: ResMut<OpenDesk>,
    mut office: ResMut<Office>,
    mut pace: ResMut<Pace>,
) {
    let desk = &mut desk.bypass_change_detection().0;
    let told = (desk.notices.len(), desk.autosave.is_some());
    office.keep(desk);
    if (desk.notices.len(), desk.autosave.is_some()) != told {
        pace.stir();
    }
}
