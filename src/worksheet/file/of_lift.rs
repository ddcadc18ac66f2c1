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
            text.not_typical("lift.arm_capacity");
            text.notes.push(
                "One arm is taken to carry a quarter of the rated capacity, for want of a figure from \
                 the manual."
                    .into(),
            );
        }
        self.tie(text)
    }

    /// The locks: evenly spaced, or each by itself.
    pub(super) fn locks(&self, text: &mut Text) -> Result<(), Refused> {
        let even = ["#locks.first", "#locks.pitch", "#locks.count"].map(|key| self.plain(key));
        if let Some(each) = self.text("#locks.each") {
            if even.iter().any(Option::is_some) {
                return Err(Refused::new(
                    "the locks are said twice: evenly spaced, and each by itself",
                    format!(
                        "leave out one of the two; - takes {} back",
                        label("#locks.each")
                    ),
                ));
            }
            let mut travels = Vec::new();
            for one in each.split([',', ';']).map(str::trim) {
                if let Err(error) = parse_length(one) {
                    return Err(Refused::new(
                        format!(
                            "{}: {}",
                            label("#locks.each"),
                            error.message(units::Kind::Length)
                        ),
                        "write each travel with its unit, commas between, as in 12 in, 15 1/2 in",
                    ));
                }
                travels.push(quoted(one));
            }
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
                let drop = own("#bar.drop").unwrap_or_else(|| part("drop", "5 in", "125 mm"));
                format!(
                    "(drop: {drop}, diameter: {}, length: {})",
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
            (Some(_), _) if self.plain("#bar.drop").is_none() => {
                text.mark("lift.tie.bar.drop", &label("#bar.drop"));
            }
            (Some(_), _) => {}
        }
        Ok(())
    }
}
