//! Which bay file do the answers make?
//!
//! The starter file is the ground: each answer is put in its place in it. What the file can't do
//! without and nobody measured keeps the starter's placeholder and is marked on its line, counted
//! in the title and listed at the top. What the file can do without stays out.

use std::collections::BTreeMap;
use std::fmt::Write as _;

use super::answer::Refused;
use super::question::{Kind, Question, Section};
use super::{number, sections};
use crate::bay::{Bay, UnitSystem};
use crate::bayfile::edit::{Origin, Value, Written, quoted};
use crate::bayfile::presets::EmbeddedOnly;
use crate::bayfile::read;
use crate::diagnostics::Diagnostic;
use crate::solids::list::solids;
use crate::solids::{DoorTravel, Role};
use crate::starter;
use crate::units::{Length, Rounding, both, parse_length};

mod build;
mod lists;

use build::Text;

/// What stands in for a lift and a vehicle that nobody named.
const EXAMPLE_LIFT: &str = "tall-columns-11-10";
const EXAMPLE_VEHICLE: &str = "pickup-half-ton-crew-cab";

/// What was answered: the question's section and key, the number of the thing, and how a bay file
/// writes the answer.
#[derive(Debug, Clone, Default)]
pub struct Answers {
    given: BTreeMap<(&'static str, usize, &'static str), String>,
    /// How many things of a repeated section are described.
    counts: BTreeMap<&'static str, usize>,
    /// Repeated sections that were looked at and have nothing more.
    closed: BTreeMap<&'static str, bool>,
}

/// The bay file that answers make.
#[derive(Debug, Clone)]
pub struct Made {
    /// The file.
    pub text: String,
    /// What holds a placeholder because it was not measured.
    pub not_measured: Vec<String>,
    /// What keeps a preset's typical figure.
    pub typical: Vec<String>,
    /// What else is to be known.
    pub notes: Vec<String>,
}

impl Answers {
    /// Keeps an answer as a bay file writes it.
    pub fn put(&mut self, section: &'static str, item: usize, key: &'static str, ron: String) {
        self.given.insert((section, item, key), ron);
    }

    /// Takes an answer back.
    pub fn clear(&mut self, section: &'static str, item: usize, key: &'static str) {
        self.given.remove(&(section, item, key));
    }

    /// An answer as a bay file writes it.
    #[must_use]
    pub fn get(&self, section: &str, item: usize, key: &str) -> Option<&str> {
        let found = self
            .given
            .iter()
            .find(|((s, i, k), _)| (*s, *i, *k) == (section, item, key));
        found.map(|(_, ron)| ron.as_str())
    }

    /// How many things of a repeated section are described.
    #[must_use]
    pub fn count(&self, section: &str) -> usize {
        self.counts.get(section).copied().unwrap_or(0)
    }

    /// A further thing of a repeated section is being described.
    pub fn more(&mut self, section: &'static str) {
        *self.counts.entry(section).or_default() += 1;
    }

    /// Forgets all of a repeated section.
    pub fn forget(&mut self, section: &'static str) {
        self.counts.remove(section);
        self.closed.remove(section);
        self.given.retain(|(of, _, _), _| *of != section);
    }

    /// A repeated section has nothing more; `known` when that was said, not merely left empty.
    pub fn close(&mut self, section: &'static str, known: bool) {
        self.closed.insert(section, known);
    }

    /// The answer to a question outside the repeated sections.
    fn plain(&self, key: &str) -> Option<&str> {
        let found = self
            .given
            .iter()
            .find(|((_, item, k), _)| *item == 0 && *k == key);
        found.map(|(_, ron)| ron.as_str())
    }

    /// True when a question is to be asked after what was answered so far.
    #[must_use]
    pub fn asks(&self, question: &Question) -> bool {
        match question.when {
            super::When::Always => true,
            super::When::If(key, words) => self
                .word(key)
                .is_some_and(|said| words.contains(&said.as_str())),
        }
    }

    /// The word of a choice that was answered, as it is asked.
    fn word(&self, key: &str) -> Option<String> {
        let ron = self.plain(key)?;
        let asked = sections().iter().flat_map(|section| section.questions);
        for question in asked.filter(|question| question.key == key) {
            if let Kind::Choice(words) = question.kind {
                let same = |(word, says): &&(&str, &str)| *word == ron || *says == ron;
                return words.iter().find(same).map(|(word, _)| (*word).to_owned());
            }
        }
        None
    }

    fn text(&self, key: &str) -> Option<String> {
        self.plain(key).map(unquoted)
    }

    fn length(&self, key: &str) -> Option<Length> {
        parse_length(&self.text(key)?).ok()
    }

    /// The units that the file shows lengths in.
    #[must_use]
    pub fn units(&self) -> UnitSystem {
        match self.plain("units") {
            Some("Metric") => UnitSystem::Metric,
            _ => UnitSystem::Imperial,
        }
    }

    /// The bay file, and what it lacks. With `finish` the place of the vehicle is looked for where
    /// it was not given.
    ///
    /// # Errors
    /// What does not go together, as the reader of bay files says it.
    pub fn bay_file(&self, finish: bool) -> Result<Made, Refused> {
        let lift = self.text("lift.preset");
        let vehicle = self.text("vehicle.preset");
        let ground = starter::placeholder(
            lift.as_deref().unwrap_or(EXAMPLE_LIFT),
            vehicle.as_deref().unwrap_or(EXAMPLE_VEHICLE),
            self.units(),
        );
        let ground = ground.map_err(|faults| refusal(&faults))?;
        let mut text = Text::new(ground, self.units());
        self.choices(&mut text)?;
        self.values(&mut text)?;
        self.lists(&mut text)?;
        self.room_for_all(&mut text)?;
        for (key, what) in [
            ("lift.preset", "which lift"),
            ("vehicle.preset", "which vehicle"),
        ] {
            if self.plain(key).is_none() {
                text.mark(key, &format!("{what} (an example stands in its place)"));
            }
        }
        // Only now is it known whether it is a bay.
        let bay = bay_of(&text.text)?;
        if finish {
            self.find_aim(&mut text, &bay)?;
        }
        self.against_the_open_door(&mut text, &bay);
        Ok(self.finished(text))
    }

    /// Kinds of ceiling, floor, door and opener: variants, with placeholders to be filled.
    fn choices(&self, text: &mut Text) -> Result<(), Refused> {
        let feet = |text: &Text| text.value("garage.ceiling.height");
        let high = feet(text).unwrap_or_default();
        match self.word("#ceiling").as_deref() {
            Some("sloped") => text.set(
                "garage.ceiling",
                &format!("Sloped(run: DoorToBack, first: {high}, last: {high})"),
            )?,
            Some("gable") => {
                let ridge = text.either("16 ft", "4900 mm");
                let zero = text.either("0 in", "0 mm");
                text.set(
                    "garage.ceiling",
                    &format!(
                        "Gable(ridge_along: DoorToBack, eaves: {high}, ridge: {ridge}, \
                         ridge_offset: {zero})"
                    ),
                )?;
            }
            Some("stepped") => self.steps(text, &high)?,
            Some(_) => {}
            None => text.mark("garage.ceiling.height", "shape of the ceiling"),
        }
        self.floor(text)?;
        self.door(text)?;
        match self.word("#opener").as_deref() {
            Some("none") => text.set("garage.opener", "None")?,
            Some("wall-mounted") => {
                let [w, h, low, beside] = [
                    text.either("8 in", "200 mm"),
                    text.either("18 in", "450 mm"),
                    text.either("7 ft 6 in", "2300 mm"),
                    text.either("8 in", "200 mm"),
                ];
                text.set(
                    "garage.opener",
                    &format!(
                        "WallMounted(\n            side: Right,\n            width: {w},\n            \
                         depth: {w},\n            height: {h},\n            bottom: {low},\n            \
                         beside: {beside},\n        )"
                    ),
                )?;
            }
            _ => {}
        }
        if self.plain("#opener").is_none() {
            text.mark("garage.opener.x", "kind of opener");
        }
        Ok(())
    }

    fn steps(&self, text: &mut Text, high: &str) -> Result<(), Refused> {
        let zero = text.either("0 in", "0 mm");
        let known = |key: &str| self.plain(key).map(str::to_owned);
        let from = known("#step.from").unwrap_or_else(|| text.either("12 ft", "3600 mm"));
        let first = known("#step.height").unwrap_or_else(|| high.to_owned());
        let next = known("#step.next").unwrap_or_else(|| high.to_owned());
        text.set(
            "garage.ceiling",
            &format!(
                "Stepped(steps: [\n            (from: {zero}, height: {first}),\n            \
                 (from: {from}, height: {next}),\n        ])"
            ),
        )?;
        for (key, path) in [
            ("#step.height", "garage.ceiling.steps[0].height"),
            ("#step.from", "garage.ceiling.steps[1].from"),
            ("#step.next", "garage.ceiling.steps[1].height"),
        ] {
            if self.plain(key).is_none() {
                text.mark(path, asked(key));
            }
        }
        Ok(())
    }

    fn floor(&self, text: &mut Text) -> Result<(), Refused> {
        let way = self.word("#floor");
        match way.as_deref() {
            Some("level") => return Ok(()),
            None => {}
            Some(_) => {
                let toward = self.plain("#floor").unwrap_or("Door");
                if let (Some(drop), Some(run)) =
                    (self.length("#fall.drop"), self.length("#fall.run"))
                {
                    let slope = drop.m() / run.m();
                    return text.set(
                        "garage.floor",
                        &format!("Fall(slope: {slope}, toward: {toward})"),
                    );
                }
            }
        }
        text.mark("garage.floor", "fall of the floor");
        Ok(())
    }

    fn door(&self, text: &mut Text) -> Result<(), Refused> {
        let record = |name: &str, fields: &[(&str, String)]| {
            let mut out = format!("{name}(\n");
            for (field, value) in fields {
                // Writing to a string cannot fail.
                let _ = writeln!(out, "            {field}: {value},");
            }
            out.push_str("        )");
            out
        };
        match self.word("#door").as_deref() {
            Some("none") => text.set("garage.door", "None")?,
            Some("roll-up") => {
                let fields = [
                    ("curtain_thickness", text.either("1 in", "25 mm")),
                    ("coil_diameter", text.either("18 in", "450 mm")),
                    ("coil_height", text.either("10 ft", "3000 mm")),
                    ("coil_out", text.either("11 in", "280 mm")),
                ];
                text.set("garage.door", &record("RollUp", &fields))?;
            }
            Some("swing-up") => {
                let fields = [
                    ("panel_thickness", text.either("2 in", "50 mm")),
                    ("panel_height", text.either("7 ft", "2100 mm")),
                    ("track_height", text.either("7 ft 3 in", "2200 mm")),
                    ("track_offset", text.either("3 in", "75 mm")),
                    ("track_section", text.either("3 in", "75 mm")),
                ];
                text.set("garage.door", &record("SwingUp", &fields))?;
                for name in [
                    "panel_thickness",
                    "panel_height",
                    "track_height",
                    "track_offset",
                    "track_section",
                ] {
                    let key = format!("#swing.{name}");
                    let path = format!("garage.door.{name}");
                    match self.plain(&key) {
                        Some(ron) => text.set(&path, ron)?,
                        None => text.mark(&path, asked(&key)),
                    }
                }
            }
            Some("side-hinged") => {
                let fields = [
                    ("leaf_thickness", text.either("2 in", "50 mm")),
                    ("inward", "true".into()),
                    ("opens", "\"90 deg\"".into()),
                ];
                text.set("garage.door", &record("SideHinged", &fields))?;
            }
            Some(_) => {
                let layout = match (self.plain("#layout"), self.plain("#extra")) {
                    (Some("HighLift"), Some(extra)) => format!("HighLift(extra: {extra})"),
                    (Some("HighLift"), None) => {
                        format!("HighLift(extra: {})", text.either("1 ft", "300 mm"))
                    }
                    (Some(layout), _) => layout.to_owned(),
                    (None, _) => "Standard".into(),
                };
                text.set("garage.door.layout", &layout)?;
                if self.plain("#layout").is_none() {
                    text.mark("garage.door.layout", asked("#layout"));
                }
                if self.plain("#layout") == Some("HighLift") && self.plain("#extra").is_none() {
                    text.mark("garage.door.layout.extra", asked("#extra"));
                }
            }
            None => text.mark("garage.door.layout", "kind of door"),
        }
        Ok(())
    }

    /// Every answer that has a place of its own in the file.
    fn values(&self, text: &mut Text) -> Result<(), Refused> {
        for section in sections().iter().filter(|section| section.repeat.is_none()) {
            for question in section.questions {
                let path = question.key;
                if path.starts_with('#')
                    || matches!(path, "title" | "units")
                    || path.ends_with(".preset")
                {
                    continue;
                }
                // Clear space is known whole or not at all.
                if path.starts_with("arrangements.panel_space") {
                    continue;
                }
                match self.plain(path) {
                    Some(ron) if self.asks(question) => text.set(path, ron)?,
                    _ if path.starts_with("policy.") => text.leave_out(path)?,
                    _ => text.lacks(path, question.what),
                }
            }
        }
        let space = ["width", "depth", "height"].map(|side| {
            (
                side,
                self.plain(&format!("arrangements.panel_space.{side}")),
            )
        });
        if space.iter().all(|(_, ron)| ron.is_some()) {
            for (side, ron) in space {
                text.set(
                    &format!("arrangements.panel_space.{side}"),
                    ron.unwrap_or_default(),
                )?;
            }
        } else if space.iter().any(|(_, ron)| ron.is_some()) {
            text.notes.push(
                "The clear space before the panel is left out: all three of its sizes are needed."
                    .into(),
            );
        }
        let body = ["vehicle.length", "vehicle.height", "vehicle.body_width"];
        if body.iter().any(|key| self.plain(key).is_some()) {
            text.set("vehicle.roof", "Derived")?;
            text.notes.push(
                "The outline of the roof is derived from the style of the body, not measured."
                    .into(),
            );
        }
        let locks = ["#locks.first", "#locks.pitch", "#locks.count"].map(|key| self.plain(key));
        match locks {
            [Some(first), Some(pitch), Some(count)] => text.set(
                "lift.locks",
                &format!("Even(first: {first}, pitch: {pitch}, count: {count})"),
            )?,
            [None, None, None] => text.typical("lift.locks", "the locks"),
            _ => {
                text.typical("lift.locks", "the locks");
                text.notes.push(
                    "The locks keep the preset's places: first, pitch and count are all needed."
                        .into(),
                );
            }
        }
        match self.plain("#aim") {
            Some(aim) => text.set("parking.aim", &format!("CentreOfGravity({aim})"))?,
            None => {}
        }
        self.slab_outline(text)
    }

    /// Where the slab reaches to the walls its outline is the room's.
    fn slab_outline(&self, text: &mut Text) -> Result<(), Refused> {
        if self.plain("#to_walls") != Some("true") {
            return Ok(());
        }
        let (Some(width), Some(depth)) = (self.length("garage.width"), self.length("garage.depth"))
        else {
            text.notes.push(
                "The slab's outline is left out: the room's width and depth are needed for it."
                    .into(),
            );
            return Ok(());
        };
        let Some(offset) = self.length("garage.opening.offset") else {
            text.notes.push(
                "The slab's outline is left out: where the door lies in its wall is needed for it."
                    .into(),
            );
            return Ok(());
        };
        let (left, right) = (width * -0.5 - offset, width * 0.5 - offset);
        let mm = |length: Length| {
            let text = format!("{:.4}", length.m() * 1000.0);
            format!(
                "\"{} mm\"",
                text.trim_end_matches('0').trim_end_matches('.')
            )
        };
        let corner = |x: Length, y: Length| format!("({}, {})", mm(x), mm(y));
        let outline = [
            corner(left, Length::ZERO),
            corner(right, Length::ZERO),
            corner(right, depth),
            corner(left, depth),
        ];
        text.set("slab.outline", &format!("[{}]", outline.join(", ")))
    }

    /// Placeholders give way to what was measured: no measured door is refused for the size of a
    /// room that nobody measured.
    fn room_for_all(&self, text: &mut Text) -> Result<(), Refused> {
        let at_least = |text: &mut Text, path: &str, least: Length| -> Result<(), Refused> {
            let now = text
                .value(path)
                .and_then(|ron| parse_length(&unquoted(&ron)).ok());
            if self.plain(path).is_none() && now.is_some_and(|now| now < least) {
                return text.set(path, &text.shown(least));
            }
            Ok(())
        };
        let opening = self.length("garage.opening.width").unwrap_or(Length::ZERO);
        let offset = self.length("garage.opening.offset").unwrap_or(Length::ZERO);
        let high = self.length("garage.opening.height").unwrap_or(Length::ZERO);
        let line = self.length("lift.post_line").unwrap_or(Length::ZERO);
        let step = self.length("#step.from").unwrap_or(Length::ZERO);
        let metre = Length::metres(1.0);
        at_least(text, "garage.width", opening + offset.abs() * 2.0 + metre)?;
        at_least(
            text,
            "garage.depth",
            (line + metre * 4.0).max(step + metre * 2.0),
        )?;
        for path in ["height", "first", "last", "eaves", "steps[0].height"] {
            if path == "steps[0].height" && self.plain("#step.height").is_some() {
                continue;
            }
            at_least(text, &format!("garage.ceiling.{path}"), high + metre)?;
        }
        let eaves = self.length("garage.ceiling.eaves").unwrap_or(Length::ZERO);
        at_least(text, "garage.ceiling.ridge", eaves + metre)
    }

    /// Where the vehicle stands, unless it was said: where all four arms reach.
    fn find_aim(&self, text: &mut Text, bay: &Bay) -> Result<(), Refused> {
        if self.plain("#aim").is_some() {
            return Ok(());
        }
        match starter::nearest_aim(bay) {
            Some(aim) => {
                text.set(
                    "parking.aim",
                    &format!("CentreOfGravity({})", text.shown(aim)),
                )?;
                text.notes.push(format!(
                    "The vehicle's centre of gravity is aimed at {} behind the post line, a place \
                     from which all four arms reach.",
                    both(aim, bay.units, Rounding::Nearest)
                ));
            }
            None => {
                let zero = text.either("0 in", "0 mm");
                text.set("parking.aim", &format!("CentreOfGravity({zero})"))?;
                text.notes.push(
                    "No place of the vehicle was found from which all four arms reach: see what \
                     `bayrise check` says of the arms."
                        .into(),
                );
            }
        }
        Ok(())
    }

    /// The open door as read against the open door of the file's figures.
    fn against_the_open_door(&self, text: &mut Text, bay: &Bay) {
        let Some(read) = self.length("#open_lowest") else {
            return;
        };
        text.head.push(format!(
            "The open door was read {} at its lowest point inside.",
            self.text("#open_lowest").unwrap_or_default()
        ));
        let Ok(all) = solids(bay, DoorTravel::Open, 0.0) else {
            return;
        };
        let door = all.iter().filter(|one| {
            matches!(one.role, Role::DoorPanel | Role::DoorFitting) && one.bounds().1.y > 0.05
        });
        // Upright tracks reach down to the floor at both sides and tell nothing.
        let inside = door.filter(|one| !one.name.contains("track"));
        let lowest = inside
            .map(|one| one.bounds().0.z)
            .fold(f64::INFINITY, f64::min);
        if read.m() < lowest - bay.policy.measured_garage.m() {
            let words = format!(
                "THE OPEN DOOR HANGS LOWER than the figures of the door say: {} read, {} worked out. \
                 Measure panels and tracks again, or put what hangs lower into the file as a thing in \
                 the room.",
                both(read, bay.units, Rounding::Down),
                both(Length::metres(lowest), bay.units, Rounding::Down)
            );
            text.head.push(words.clone());
            text.notes.push(words);
        }
    }

    fn finished(&self, mut text: Text) -> Made {
        let title = self.text("title").unwrap_or_else(|| "New bay".into());
        let count = text.marks.len();
        let title = match count {
            0 => title,
            1 => format!("{title} (1 value NOT MEASURED)"),
            _ => format!("{title} ({count} values NOT MEASURED)"),
        };
        // The starter file has a title.
        let _ = text.set("title", &quoted(&title));
        let mut head = vec![format!(
            "Answers to the questions of worksheet form {}.",
            super::FORM_VERSION
        )];
        for (key, before) in [("#measured", "Measured: "), ("#note", "To remember: ")] {
            if let Some(said) = self.text(key) {
                head.push(format!("{before}{said}"));
            }
        }
        head.append(&mut text.head);
        if !text.marks.is_empty() {
            head.push(String::new());
            head.push(
                "NOT MEASURED: the lines marked so hold placeholders. Until a figure of your own is \
                 in their place, the verdict is about somebody else's garage:"
                    .into(),
            );
            head.extend(
                text.marks
                    .iter()
                    .map(|(path, what)| format!("  {what} ({path})")),
            );
        }
        if !text.typical.is_empty() {
            head.push(String::new());
            head.push("Kept from the presets, typical figures of a class:".into());
            head.extend(
                text.typical
                    .iter()
                    .map(|(path, what)| format!("  {what} ({path})")),
            );
        }
        if !text.left_out.is_empty() {
            head.push(String::new());
            head.push("NOT IN THIS FILE, not measured enough:".into());
            head.extend(text.left_out.iter().map(|what| format!("  {what}")));
        }
        let mut notes = text
            .left_out
            .iter()
            .map(|what| format!("Left out: {what}."))
            .collect::<Vec<_>>();
        notes.append(&mut text.notes);
        let body = text.marked();
        let mut out = String::new();
        for line in head {
            for part in textwrap::wrap(&line, textwrap::Options::new(96).subsequent_indent("  ")) {
                out.push_str(format!("// {part}").trim_end());
                out.push('\n');
            }
        }
        out.push_str(&body);
        Made {
            text: out,
            not_measured: text.marks.into_iter().map(|(_, what)| what).collect(),
            typical: text.typical.into_iter().map(|(_, what)| what).collect(),
            notes,
        }
    }
}

/// What is asked by a key.
fn asked(key: &str) -> &'static str {
    let all = sections().iter().flat_map(|section| section.questions);
    let found = all.clone().find(|question| question.key == key);
    found.map_or("", |question| question.what)
}

fn unquoted(ron: &str) -> String {
    let inner = ron
        .strip_prefix('"')
        .and_then(|rest| rest.strip_suffix('"'));
    inner.map_or_else(
        || ron.to_owned(),
        |text| text.replace("\\\"", "\"").replace("\\\\", "\\"),
    )
}

/// The bay of a text, or the first thing that does not go together in it.
fn bay_of(text: &str) -> Result<Bay, Refused> {
    match read("the answers", text.as_bytes(), &EmbeddedOnly) {
        Ok(read) => Ok(read.bay),
        Err(faults) => Err(refusal(&faults)),
    }
}

fn refusal(faults: &[Diagnostic]) -> Refused {
    let error = faults.iter().find(|fault| fault.is_error());
    error.map_or_else(
        || Refused::new("the answers don't go together", ""),
        |error| {
            Refused::new(
                error.message.clone(),
                error.help.clone().unwrap_or_default(),
            )
        },
    )
}
