//! How do panels look: light or dark, and how large is the text?

use std::sync::Arc;

use egui::style::WidgetVisuals;
use egui::{Color32, CornerRadius, FontFamily, FontId, Stroke, Style, TextStyle, Visuals};

use super::settings::{Settings, Theme};
use crate::drawing::palette::Colour;
use crate::drawing::palette::screen::{self, Screen};

/// A colour of the palette for egui.
#[must_use]
pub const fn egui_colour(colour: Colour) -> Color32 {
    Color32::from_rgb(colour.0, colour.1, colour.2)
}

/// The inks and papers of the chosen theme.
#[must_use]
pub const fn screen(settings: &Settings) -> &'static Screen {
    match settings.theme {
        Theme::Light => &screen::LIGHT,
        Theme::Dark => &screen::DARK,
    }
}

/// The factor on text and on what is as large as text.
#[must_use]
#[allow(clippy::cast_possible_truncation)] // a small factor
pub const fn scale(settings: &Settings) -> f32 {
    settings.text_scale as f32
}

/// The style of a large line: the verdict's lock.
#[must_use]
pub fn large() -> TextStyle {
    TextStyle::Name("large".into())
}

/// What was set last, so that setting it again costs nothing.
#[derive(Clone, PartialEq)]
struct Set {
    theme: Theme,
    text_scale: f64,
}

/// Sets colours and text sizes; costs nothing when they are set already.
pub fn apply(context: &egui::Context, settings: &Settings) {
    let wanted = Set {
        theme: settings.theme,
        text_scale: settings.text_scale,
    };
    let key = egui::Id::new("bayrise style");
    if context.data(|data| data.get_temp::<Set>(key)) == Some(wanted.clone()) {
        return;
    }
    let theme = match settings.theme {
        Theme::Light => egui::Theme::Light,
        Theme::Dark => egui::Theme::Dark,
    };
    context.set_theme(theme);
    context.set_style_of(theme, Arc::new(style(settings)));
    // Text is scaled here, and the view must not be: its camera counts in points.
    context.options_mut(|options| options.zoom_with_keyboard = false);
    context.data_mut(|data| data.insert_temp(key, wanted));
}

fn style(settings: &Settings) -> Style {
    let scale = scale(settings);
    let mut style = Style {
        visuals: visuals(settings),
        // What moves by itself costs frames and tells nothing.
        animation_time: 0.0,
        ..Style::default()
    };
    let text = |size: f32| FontId::new(size * scale, FontFamily::Proportional);
    style.text_styles = [
        (TextStyle::Small, text(12.0)),
        (TextStyle::Body, text(14.0)),
        (TextStyle::Button, text(14.0)),
        (TextStyle::Heading, text(17.0)),
        (large(), text(26.0)),
        (
            TextStyle::Monospace,
            FontId::new(13.0 * scale, FontFamily::Monospace),
        ),
    ]
    .into();
    let spacing = &mut style.spacing;
    spacing.item_spacing = egui::vec2(7.0, 4.0) * scale;
    spacing.button_padding = egui::vec2(6.0, 2.0) * scale;
    spacing.interact_size = egui::vec2(36.0, 22.0) * scale;
    spacing.indent *= scale;
    spacing.slider_width = 150.0 * scale;
    spacing.slider_rail_height *= scale;
    spacing.combo_width *= scale;
    spacing.text_edit_width = 120.0 * scale;
    spacing.icon_width *= scale;
    spacing.icon_width_inner *= scale;
    spacing.icon_spacing *= scale;
    spacing.tooltip_width *= scale;
    spacing.menu_width *= scale;
    style
}

fn visuals(settings: &Settings) -> Visuals {
    let mut visuals = match settings.theme {
        Theme::Light => Visuals::light(),
        Theme::Dark => Visuals::dark(),
    };
    let screen = screen(settings);
    let [panel, field, button, over] = [
        screen.panel,
        screen.field,
        screen.button,
        screen.button_over,
    ]
    .map(egui_colour);
    let [ink, rule, accent] = [screen.ink, screen.rule, screen.accent].map(egui_colour);
    visuals.panel_fill = panel;
    visuals.window_fill = panel;
    visuals.window_stroke = Stroke::new(1.0, rule);
    visuals.extreme_bg_color = field;
    visuals.text_edit_bg_color = Some(field);
    visuals.faint_bg_color = button.gamma_multiply(0.4);
    visuals.code_bg_color = button;
    visuals.weak_text_color = Some(egui_colour(screen.faint));
    visuals.hyperlink_color = accent;
    visuals.error_fg_color = egui_colour(screen.error);
    visuals.warn_fg_color = egui_colour(screen.error);
    visuals.selection.bg_fill = accent;
    visuals.selection.stroke = Stroke::new(1.0, egui_colour(screen.on_accent));
    let widget = |fill: Color32, edge: Stroke, line: f32| WidgetVisuals {
        bg_fill: fill,
        weak_bg_fill: fill,
        bg_stroke: edge,
        corner_radius: CornerRadius::same(2),
        fg_stroke: Stroke::new(line, ink),
        expansion: 0.0,
    };
    let widgets = &mut visuals.widgets;
    widgets.noninteractive = widget(panel, Stroke::new(1.0, rule), 1.0);
    widgets.inactive = widget(button, Stroke::new(1.0, rule), 1.0);
    widgets.hovered = widget(over, Stroke::new(1.0, ink), 1.2);
    widgets.active = widget(over, Stroke::new(2.0, accent), 1.5);
    widgets.open = widget(over, Stroke::new(1.0, accent), 1.0);
    // A cursor that blinks draws the whole window twice a second.
    visuals.text_cursor.blink = false;
    visuals.slider_trailing_fill = true;
    visuals
}

/// A frame for a panel: its paper, and room about what is in it.
pub fn panel_frame(settings: &Settings) -> egui::Frame {
    #[allow(clippy::cast_possible_truncation)] // a few points
    let margin = (6.0 * scale(settings)).round() as i8;
    egui::Frame::new()
        .fill(egui_colour(screen(settings).panel))
        .inner_margin(egui::Margin::symmetric(margin + 2, margin))
}
