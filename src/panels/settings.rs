//! How does the person want to see it?

/// Light or dark.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Theme {
    /// Dark on light: for a projector and a bright shop.
    #[default]
    Light,
    /// Light on dark.
    Dark,
}

/// A part of the bay file.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Section {
    /// Room, ceiling, door, opener.
    Garage,
    /// What hangs or stands in the room.
    Obstacles,
    /// What is known of the slab and of the electric supply.
    Ground,
    /// The lift and where it stands.
    Lift,
    /// The vehicle.
    Vehicle,
    /// How it is parked.
    Parking,
    /// Margins, trust in measurements, people.
    Policy,
}

impl Section {
    /// All, in the order of the tabs.
    pub const ALL: [Self; 7] = [
        Self::Garage,
        Self::Obstacles,
        Self::Ground,
        Self::Lift,
        Self::Vehicle,
        Self::Parking,
        Self::Policy,
    ];

    /// The tab's word.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Garage => "Garage",
            Self::Obstacles => "In the room",
            Self::Ground => "Slab, power",
            Self::Lift => "Lift",
            Self::Vehicle => "Vehicle",
            Self::Parking => "Parking",
            Self::Policy => "Margins",
        }
    }
}

/// What is shown, and how large.
#[derive(Debug, Clone, PartialEq)]
pub struct Settings {
    /// Light or dark.
    pub theme: Theme,
    /// Factor on every text.
    pub text_scale: f64,
    /// The part of the bay file in the edit panel; none while the panel is away.
    pub section: Option<Section>,
    /// Full screen, panels away, caption and slow turn.
    pub show_mode: bool,
    /// The help sheet is open.
    pub help: bool,
    /// People stand under the vehicle.
    pub people: bool,
    /// Dimension lines are drawn.
    pub dimensions: bool,
    /// Figures of the sections are written at their places.
    pub marks: bool,
    /// Where the bay is cut open, metres from the door wall.
    pub cut_m: Option<f64>,
}

impl Default for Settings {
    fn default() -> Self {
        Self {
            theme: Theme::Light,
            text_scale: 1.0,
            section: None,
            show_mode: false,
            help: false,
            people: false,
            dimensions: true,
            marks: false,
            cut_m: None,
        }
    }
}

/// Something to tell the person, until they take it away.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Notice {
    /// Bad news, or news.
    pub is_error: bool,
    /// What.
    pub text: String,
}

/// What was kept when the program ended without saving.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Kept {
    /// The text of the bay file.
    pub text: String,
    /// It is a new bay that was never saved, not a change of the open file.
    pub is_new_bay: bool,
}
