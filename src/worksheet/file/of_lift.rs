//! What of the lift hangs together: its beam with its columns, the rating of its arms with its own.

use super::build::Text;
use super::{Answers, Refused, label, quoted, unquoted};
use crate::units::{self, Length, parse_length};

impl Answers {
    pub(super) fn of_lift(&self, text: &mut Text) -> Result<(), Refused> {
        // A preset's arm beside another capacity would carry what nobody said. Taken away, a quarter
        // of the capacity is what the study takes.
        if self.plain("lift.capacity").is_some() && self.plain("lift.arm_capacity").is_none() {
            text.set("lift.arm_capacity", "None")?;
            text.not_kept("lift.arm_capacity");
            text.mark("lift.arm_capacity", &label("lift.arm_capacity"));
            text.notes.push(
                "One arm is taken to carry a quarter of the rated capacity, for want of a figure from \
                 the manual."
                    .into(),
            );
        }
        self.tie(text)?;
        self.power_unit(text)?;
        self.arms(text)?;
        self.window(text)?;
        self.holes(text)?;
        // Another source of the same demand, and nobody's here.
        for path in ["thickness", "strength", "edge_distance", "embedment"] {
            let path = format!("lift.advertised.{path}");
            if text.value(&path).is_some() {
                text.set(&path, "None")?;
            }
        }
        for (path, usual) in [
            ("lift.overshoot", ["1 in", "25 mm"]),
            ("lift.side_mismatch", ["1/2 in", "12 mm"]),
        ] {
            if self.plain(path).is_none() {
                // Nobody measured it, and marks and locks hang on it.
                text.set(path, &text.either(usual[0], usual[1]))?;
                text.not_kept(path);
                text.mark(path, &label(path));
            }
        }
        Ok(())
    }

    /// Motor, pump and tank: on a column, or none there.
    fn power_unit(&self, text: &mut Text) -> Result<(), Refused> {
        match self.word("#unit").as_deref() {
            Some("left") => text.set("lift.power_unit.side", "Left"),
            Some("right") => text.set("lift.power_unit.side", "Right"),
            Some(_) => text.set("lift.power_unit", "None"),
            None => {
                text.lacks("lift.power_unit", &label("#unit"));
                Ok(())
            }
        }
    }

    /// What is asked of all four arms at once, and where their swings are counted from.
    fn arms(&self, text: &mut Text) -> Result<(), Refused> {
        for end in ["front", "rear"] {
            let field = |name: &str| format!("lift.arms.{end}.{name}");
            for name in ["underside", "section_height", "section_width"] {
                let key = format!("#arm.{name}");
                match self.plain(&key) {
                    Some(ron) => text.set(&field(name), ron)?,
                    None => text.lacks(&field(name), &label(&key)),
                }
            }
            match (self.word("#arm.hold").as_deref(), self.plain("#arm.tooth")) {
                (Some("teeth"), Some(pitch)) => text.set(&field("tooth"), pitch)?,
                (Some("teeth"), None) => text.lacks(&field("tooth"), &label("#arm.tooth")),
                (Some(word), _) => {
                    text.set(&field("tooth"), "None")?;
                    let held = if word == "stepless" { "true" } else { "false" };
                    text.set(&field("stepless_restraint"), held)?;
                }
                (None, _) => text.lacks(&field("tooth"), &label("#arm.hold")),
            }
            let swings = ["swing_min", "swing_max"].map(|name| self.plain(&field(name)));
            if swings.iter().any(Option::is_some) {
                text.set(&field("zero"), "\"0 deg\"")?;
            }
        }
        let adapters = self.listed("#adapters", "3 in, 5 in")?;
        text.set("lift.pad.adapters", &format!("[{}]", adapters.join(", ")))
    }

    /// Where the manual lets the centre of gravity lie.
    fn window(&self, text: &mut Text) -> Result<(), Refused> {
        match self.word("#cg").as_deref() {
            Some("yes") => Ok(()),
            Some(_) => {
                text.set("lift.cg_window", "None")?;
                text.not_kept("lift.cg_window");
                Ok(())
            }
            None => {
                text.not_kept("lift.cg_window");
                text.lacks("lift.cg_window", &label("#cg"));
                Ok(())
            }
        }
    }

    /// The holes of a base plate; without them the study says that they are not known.
    fn holes(&self, text: &mut Text) -> Result<(), Refused> {
        let path = "lift.base_plate.anchors";
        let Some(said) = self.text("#holes") else {
            return text.not_known(path, &label("#holes"), "[]");
        };
        let mut holes = Vec::new();
        for one in said.split(';').map(str::trim).filter(|one| !one.is_empty()) {
            let sides: Vec<&str> = one.split(',').map(str::trim).collect();
            let [inward, front] = sides.as_slice() else {
                return Err(Refused::new(
                    format!("{}: {one:?} is not two lengths", label("#holes")),
                    "write both lengths of each hole with a comma, and a semicolon after each hole, \
                     as in -7 in, -8 in; -7 in, 8 in",
                ));
            };
            for side in [inward, front] {
                checked("#holes", side, "-7 in, -8 in; -7 in, 8 in")?;
            }
            holes.push(format!("({}, {})", quoted(inward), quoted(front)));
        }
        text.set(path, &format!("[{}]", holes.join(", ")))
    }

    /// Lengths that were written with commas between, each as a bay file writes it.
    fn listed(&self, key: &str, example: &str) -> Result<Vec<String>, Refused> {
        let said = self.text(key).unwrap_or_default();
        let none = said.trim().eq_ignore_ascii_case("none");
        let lengths = said.split([',', ';']).map(str::trim);
        lengths
            .filter(|one| !one.is_empty() && !none)
            .map(|one| checked(key, one, example).map(|()| quoted(one)))
            .collect()
    }

    /// The locks: evenly spaced, or each by itself.
    pub(super) fn locks(&self, text: &mut Text) -> Result<(), Refused> {
        let even = ["#locks.first", "#locks.pitch", "#locks.count"].map(|key| self.plain(key));
        if self.plain("#locks.each").is_some() {
            if even.iter().any(Option::is_some) {
                return Err(Refused::new(
                    "the locks are said twice: evenly spaced, and each by itself",
                    format!(
                        "leave out one of the two; - takes {} back",
                        label("#locks.each")
                    ),
                ));
            }
            let travels = self.listed("#locks.each", "12 in, 15 1/2 in")?;
            return text.set("lift.locks", &format!("[{}]", travels.join(", ")));
        }
        match even {
            [Some(first), Some(pitch), Some(count)] => text.set(
                "lift.locks",
                &format!("Even(first: {first}, pitch: {pitch}, count: {count})"),
            )?,
            [None, None, None] => text.lacks("lift.locks", &label("#locks.first")),
            _ => {
                text.lacks("lift.locks", &label("#locks.first"));
                text.notes.push(
                    "The locks keep the preset's places: first, pitch and count are all needed."
                        .into(),
                );
            }
        }
        Ok(())
    }

    /// A plate across the floor: as answered, else the preset's, else a placeholder.
    fn floor_plate(&self, text: &mut Text, preset_beam: bool) -> Result<(), Refused> {
        if preset_beam {
            let plate = [text.either("2 in", "50 mm"), text.either("20 in", "500 mm")];
            text.set(
                "lift.tie",
                &format!("FloorPlate(height: {}, width: {})", plate[0], plate[1]),
            )?;
        }
        for side in ["height", "width"] {
            let (key, path) = (format!("#plate.{side}"), format!("lift.tie.{side}"));
            match self.plain(&key) {
                Some(ron) => text.set(&path, ron)?,
                None => text.lacks(&path, &label(&key)),
            }
        }
        Ok(())
    }

    /// What hangs over the vehicle: as answered; else the preset's, but never a preset's beam over
    /// columns that somebody measured.
    fn tie(&self, text: &mut Text) -> Result<(), Refused> {
        let of_preset = |text: &Text, field: &str| text.value(&format!("lift.tie.{field}"));
        let preset_beam = of_preset(text, "underside").is_some();
        let measured_column = self.plain("lift.column.height").is_some();
        let kind = self.word("#tie");
        match kind.as_deref() {
            Some("floor plate") => return self.floor_plate(text, preset_beam),
            None if !(preset_beam && measured_column) => {
                text.lacks("lift.tie", &label("#tie"));
                return Ok(());
            }
            _ => {}
        }
        let own = |key: &str| self.plain(key).map(str::to_owned);
        let height =
            own("#tie.height").or_else(|| of_preset(text, "height").filter(|_| preset_beam));
        let height = height.unwrap_or_else(|| text.either("5 in", "125 mm"));
        let width = own("#tie.width").or_else(|| of_preset(text, "width").filter(|_| preset_beam));
        let width = width.unwrap_or_else(|| text.either("8 in", "200 mm"));
        let length = |ron: &str| parse_length(&unquoted(ron)).unwrap_or(Length::ZERO);
        let column = text.value("lift.column.height");
        let column = column.map_or(Length::ZERO, |ron| length(&ron));
        let preset = of_preset(text, "underside").filter(|_| !measured_column);
        let placed = column - length(&height);
        let underside = own("#tie.underside").or_else(|| preset.clone());
        let is_placeholder = underside.is_none();
        let underside = underside.unwrap_or_else(|| text.shown(placed));
        let has_bar = preset_beam && text.value("lift.tie.bar.drop").is_some();
        let bar = match self.word("#bar").as_deref() {
            Some("no") => String::from("None"),
            None if !has_bar => String::from("None"),
            _ => {
                let part = |field: &str, imperial: &str, metric: &str| {
                    of_preset(text, &format!("bar.{field}"))
                        .filter(|_| has_bar)
                        .unwrap_or_else(|| text.either(imperial, metric))
                };
                let part = |field: &str, imperial: &str, metric: &str| {
                    own(&format!("#bar.{field}")).unwrap_or_else(|| part(field, imperial, metric))
                };
                format!(
                    "(drop: {}, diameter: {}, length: {})",
                    part("drop", "5 in", "125 mm"),
                    part("diameter", "3 in", "75 mm"),
                    part("length", "7 ft", "2100 mm")
                )
            }
        };
        text.set(
            "lift.tie",
            &format!(
                "OverheadBeam(underside: {underside}, height: {height}, width: {width}, bar: {bar})"
            ),
        )?;
        if is_placeholder {
            text.mark("lift.tie.underside", &label("#tie.underside"));
        } else if own("#tie.underside").is_none() {
            text.lacks("lift.tie.underside", &label("#tie.underside"));
        }
        for (key, path) in [
            ("#tie.height", "lift.tie.height"),
            ("#tie.width", "lift.tie.width"),
        ] {
            if self.plain(key).is_none() {
                text.lacks(path, &label(key));
            }
        }
        match (self.word("#bar").as_deref(), has_bar) {
            (Some("no"), _) => {}
            (None, true) => text.lacks("lift.tie.bar", &label("#bar")),
            // A beam of one's own, and nobody looked whether a bar hangs under it.
            (None, false) => text.mark("lift.tie.bar", &label("#bar")),
            (Some(_), _) => {
                for field in ["drop", "diameter", "length"] {
                    let key = format!("#bar.{field}");
                    if self.plain(&key).is_none() {
                        text.mark(&format!("lift.tie.bar.{field}"), &label(&key));
                    }
                }
            }
        }
        Ok(())
    }
}

/// A length of a list that was written as words.
fn checked(key: &str, length: &str, example: &str) -> Result<(), Refused> {
    parse_length(length).map(|_| ()).map_err(|error| {
        Refused::new(
            format!("{}: {}", label(key), error.message(units::Kind::Length)),
            format!("write each with its unit, commas between, as in {example}"),
        )
    })
}
