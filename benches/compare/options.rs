//! Options for a comparison of ten lifts by twenty vehicles, for the benchmark and the speed tests.

use std::path::Path;

use bayrise::bayfile::options::{self, Options};
use bayrise::bayfile::presets::{PresetError, PresetSource, lifts, vehicles};
use bayrise::choose::bays;

/// The bay file of the first comparison.
pub(crate) struct Base(Vec<u8>);

impl PresetSource for Base {
    fn load(&self, path: &str) -> Result<Vec<u8>, PresetError> {
        if path == "south-bay.ron" {
            Ok(self.0.clone())
        } else {
            Err(PresetError::Missing)
        }
    }
}

/// Ten lifts by twenty vehicles: every shipped preset, some of them in two places or twice.
pub(crate) fn ten_by_twenty() -> (Options, Base) {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("scenes/compare/south-bay.ron");
    let base = match std::fs::read(&path) {
        Ok(text) => Base(text),
        Err(error) => panic!("{}: {error}", path.display()),
    };
    let mut l: Vec<String> = lifts()
        .iter()
        .map(|lift| format!("{:?}", lift.name))
        .collect();
    for lift in lifts().iter().take(10 - l.len()) {
        let name = lift.name;
        l.push(format!(
            "(name: \"{name} nearer\", lift: (preset: \"{name}\", post_line: \"13 ft\"))"
        ));
    }
    let mut v = Vec::new();
    for (set, raise) in [("low", "0 in"), ("half an inch up", "1/2 in")] {
        for vehicle in vehicles() {
            let name = vehicle.name;
            v.push(format!(
                "(name: \"{name} {set}\", vehicle: (preset: \"{name}\"), parking: (pad_raise: {raise:?}))"
            ));
        }
    }
    v.truncate(20);
    let text = format!(
        "(format: 1, title: \"ten by twenty\", base: \"south-bay.ron\", lifts: [{}], vehicles: [{}])",
        l.join(", "),
        v.join(", ")
    );
    match options::read("options.ron", text.as_bytes(), &base) {
        Ok(options) => {
            let broken = bays(&options, &base)
                .iter()
                .filter(|(_, made)| made.is_err())
                .count();
            assert!(
                broken == 0,
                "{broken} combinations have faults and would cost no time"
            );
            (options, base)
        }
        Err(faults) => panic!("{} faults", faults.len()),
    }
}
