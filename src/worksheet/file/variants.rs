//! Kinds of ceiling, floor, door and opener: variants of the bay file, with placeholders where a
//! figure was not measured.

use std::fmt::Write as _;

use super::build::Text;
use super::{Answers, Refused, label};

impl Answers {
    /// Kinds of ceiling, floor, door and opener: variants, with placeholders to be filled.
    pub(super) fn choices(&self, text: &mut Text) -> Result<(), Refused> {
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
            None => text.mark("garage.ceiling.height", &label("#ceiling")),
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
            text.mark("garage.opener.x", &label("#opener"));
        }
        Ok(())
    }

    fn steps(&self, text: &mut Text, high: &str) -> Result<(), Refused> {
        let zero = text.either("0 in", "0 mm");
        let known = |key: &str| self.plain(key).map(str::to_owned);
        let from = known("#step.from").unwrap_or_else(|| text.either("12 ft", "3600 mm"));
        let first = known("#step.height").unwrap_or_else(|| high.to_owned());
        let next = known("#step.next").unwrap_or_else(|| high.to_owned());
        let mut steps = vec![(zero, first), (from, next)];
        let mut asked = vec![
            ("#step.height", "garage.ceiling.steps[0].height"),
            ("#step.from", "garage.ceiling.steps[1].from"),
            ("#step.next", "garage.ceiling.steps[1].height"),
        ];
        if self.word("#step.more").as_deref() == Some("yes") {
            let second = known("#step.second").unwrap_or_else(|| text.either("24 ft", "7200 mm"));
            let last = known("#step.last").unwrap_or_else(|| high.to_owned());
            steps.push((second, last));
            asked.push(("#step.second", "garage.ceiling.steps[2].from"));
            asked.push(("#step.last", "garage.ceiling.steps[2].height"));
        }
        let steps: Vec<String> = steps
            .iter()
            .map(|(from, height)| format!("            (from: {from}, height: {height}),\n"))
            .collect();
        text.set(
            "garage.ceiling",
            &format!("Stepped(steps: [\n{}        ])", steps.concat()),
        )?;
        for (key, path) in asked {
            if self.plain(key).is_none() {
                text.mark(path, &label(key));
            }
        }
        if self.plain("#step.more").is_none() {
            text.withhold(
                label("#step.more"),
                vec![
                    "Look along the ceiling; put each further step into garage.ceiling, steps: [..], \
                     as"
                        .into(),
                    "    (from: ?, height: ?),".into(),
                ],
            );
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
        text.mark("garage.floor", &label("#floor"));
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
                        None => text.mark(&path, &label(&key)),
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
                    text.mark("garage.door.layout", &label("#layout"));
                }
                if self.plain("#layout") == Some("HighLift") && self.plain("#extra").is_none() {
                    text.mark("garage.door.layout.extra", &label("#extra"));
                }
            }
            None => text.mark("garage.door.layout", &label("#door")),
        }
        Ok(())
    }
}
