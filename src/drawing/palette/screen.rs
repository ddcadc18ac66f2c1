//! Which colours do panels and what is written over the view have, light and dark?

use super::{CLEAR, Colour, STRIKES, TIGHT};

/// The inks and papers of one theme.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Screen {
    /// What panels, plates and the title block are filled with.
    pub panel: Colour,
    /// What fields are filled with.
    pub field: Colour,
    /// What buttons are filled with.
    pub button: Colour,
    /// What buttons are filled with under the pointer or with the keyboard on them.
    pub button_over: Colour,
    /// Text, and outlines of shapes.
    pub ink: Colour,
    /// Text that explains other text.
    pub faint: Colour,
    /// What is no longer, or not yet, so.
    pub stale: Colour,
    /// Lines between panels and cells.
    pub rule: Colour,
    /// What is chosen, links, the ring around what has the keyboard.
    pub accent: Colour,
    /// Text on the accent.
    pub on_accent: Colour,
    /// Bad news.
    pub error: Colour,
    /// Thin lines in the colours of states, where those are too near the paper: each colour, and
    /// what is drawn instead.
    pub lines: [(Colour, Colour); 3],
}

/// Dark on light.
pub const LIGHT: Screen = Screen {
    panel: Colour(0xf7, 0xf6, 0xf2),
    field: Colour(0xff, 0xff, 0xff),
    button: Colour(0xe4, 0xe2, 0xda),
    button_over: Colour(0xd3, 0xdb, 0xe0),
    ink: Colour(0x1b, 0x24, 0x2c),
    faint: Colour(0x4a, 0x55, 0x5f),
    stale: Colour(0x66, 0x6e, 0x76),
    rule: Colour(0xb9, 0xbe, 0xc2),
    accent: Colour(0x17, 0x5a, 0x87),
    on_accent: Colour(0xff, 0xff, 0xff),
    error: Colour(0x9e, 0x1c, 0x30),
    lines: [(CLEAR, CLEAR), (TIGHT, TIGHT), (STRIKES, STRIKES)],
};

/// Light on dark.
pub const DARK: Screen = Screen {
    panel: Colour(0x18, 0x22, 0x2c),
    field: Colour(0x0f, 0x17, 0x1f),
    button: Colour(0x2c, 0x3a, 0x48),
    button_over: Colour(0x3b, 0x4d, 0x5e),
    ink: Colour(0xea, 0xef, 0xf3),
    faint: Colour(0xb4, 0xc0, 0xca),
    stale: Colour(0x92, 0x9e, 0xaa),
    rule: Colour(0x46, 0x54, 0x62),
    accent: Colour(0x8f, 0xc7, 0xec),
    on_accent: Colour(0x0d, 0x17, 0x20),
    error: Colour(0xff, 0x9a, 0xa2),
    lines: [
        (CLEAR, Colour(0x5c, 0xc8, 0xee)),
        (TIGHT, Colour(0xf6, 0xe0, 0x5a)),
        (STRIKES, Colour(0xff, 0x8f, 0x8a)),
    ],
};

impl Screen {
    /// What a thin line in the colour of a state is drawn in.
    #[must_use]
    pub fn line(&self, colour: Colour) -> Colour {
        let found = self.lines.iter().find(|(state, _)| *state == colour);
        found.map_or(colour, |(_, line)| *line)
    }

    /// Every pair of text and ground that is used, with what the text is.
    #[must_use]
    pub const fn texts(&self) -> [(&'static str, Colour, Colour); 12] {
        [
            ("text on a panel", self.ink, self.panel),
            ("explanation on a panel", self.faint, self.panel),
            ("stale text on a panel", self.stale, self.panel),
            ("chosen text on a panel", self.accent, self.panel),
            ("bad news on a panel", self.error, self.panel),
            ("text in a field", self.ink, self.field),
            ("hint in a field", self.faint, self.field),
            ("bad news in a field", self.error, self.field),
            ("text on a button", self.ink, self.button),
            ("explanation on a button", self.faint, self.button),
            ("text on a button in use", self.ink, self.button_over),
            ("text on the accent", self.on_accent, self.accent),
        ]
    }
}

#[cfg(test)]
mod tests {
    use super::super::things::BEHIND_DARK;
    use super::super::{BARRED, IDLE, UNDECIDED};
    use super::*;

    /// Linear light from an sRGB channel: IEC 61966-2-1, as the contrast rule uses it.
    fn linear(colour: Colour) -> [f64; 3] {
        colour.srgb().map(|channel| {
            let channel = f64::from(channel);
            if channel <= 0.040_45 {
                channel / 12.92
            } else {
                ((channel + 0.055) / 1.055).powf(2.4)
            }
        })
    }

    fn luminance(colour: Colour) -> f64 {
        let [r, g, b] = linear(colour);
        0.2126 * r + 0.7152 * g + 0.0722 * b
    }

    /// WCAG 2.1, "contrast ratio" (from memory).
    fn contrast(a: Colour, b: Colour) -> f64 {
        let (a, b) = (luminance(a), luminance(b));
        (a.max(b) + 0.05) / (a.min(b) + 0.05)
    }

    #[test]
    fn contrast_of_black_on_white() {
        let ratio = contrast(Colour(0, 0, 0), Colour(255, 255, 255));
        assert!((ratio - 21.0).abs() < 1e-9, "{ratio}");
    }

    #[test]
    fn text_has_the_contrast_that_wcag_2_1_aa_asks() {
        for screen in [LIGHT, DARK] {
            for (what, text, ground) in screen.texts() {
                let ratio = contrast(text, ground);
                assert!(ratio >= 4.5, "{what}: {ratio:.2} ({text:?} on {ground:?})");
            }
            // Shapes are outlined in ink, whatever fills them.
            assert!(contrast(screen.ink, screen.panel) >= 7.0);
        }
    }

    /// What a person without one kind of cone sees, in linear light: Machado, Oliveira and
    /// Fernandes, "A physiologically-based model for simulation of color vision deficiency", IEEE
    /// TVCG 15(6), 2009, severity 1.0 (from memory; every row adds up to 1, which is checked).
    const SEEN_BY: [(&str, [[f64; 3]; 3]); 4] = [
        (
            "all cones",
            [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]],
        ),
        (
            "protanopia",
            [
                [0.152_286, 1.052_583, -0.204_868],
                [0.114_503, 0.786_281, 0.099_216],
                [-0.003_882, -0.048_116, 1.051_998],
            ],
        ),
        (
            "deuteranopia",
            [
                [0.367_322, 0.860_646, -0.227_968],
                [0.280_085, 0.672_501, 0.047_413],
                [-0.011_820, 0.042_940, 0.968_881],
            ],
        ),
        (
            "tritanopia",
            [
                [1.255_528, -0.076_749, -0.178_779],
                [-0.078_411, 0.930_809, 0.147_602],
                [0.004_733, 0.691_367, 0.303_900],
            ],
        ),
    ];

    /// CIE 1976 L*a*b* under D65.
    fn lab([r, g, b]: [f64; 3]) -> [f64; 3] {
        let f = |t: f64| {
            if t > 216.0 / 24389.0 {
                t.cbrt()
            } else {
                (24389.0 / 27.0 * t + 16.0) / 116.0
            }
        };
        let x = f((0.412_456 * r + 0.357_576 * g + 0.180_437 * b) / 0.950_47);
        let y = f(0.212_673 * r + 0.715_152 * g + 0.072_175 * b);
        let z = f((0.019_334 * r + 0.119_192 * g + 0.950_304 * b) / 1.088_83);
        [116.0 * y - 16.0, 500.0 * (x - y), 200.0 * (y - z)]
    }

    fn seen(matrix: [[f64; 3]; 3], colour: Colour) -> [f64; 3] {
        let light = linear(colour);
        matrix.map(|row| {
            let sum: f64 = row.iter().zip(light).map(|(a, b)| a * b).sum();
            sum.clamp(0.0, 1.0)
        })
    }

    #[test]
    fn states_differ_for_every_kind_of_eye() {
        differ(&[CLEAR, TIGHT, STRIKES, BARRED, UNDECIDED, IDLE]);
        differ(&DARK.lines.map(|(_, line)| line));
    }

    #[test]
    fn a_thin_line_shows_on_the_dark_ground_and_on_its_halo() {
        // WCAG 2.1 asks 3 of what is no text (from memory); so thin a line is held to what it asks
        // of text at its strictest.
        for state in [CLEAR, TIGHT, STRIKES] {
            let line = DARK.line(state);
            for ground in [DARK.panel, BEHIND_DARK] {
                let ratio = contrast(line, ground);
                assert!(ratio >= 7.0, "{line:?} on {ground:?}: {ratio:.2}");
            }
            assert_eq!(LIGHT.line(state), state);
        }
    }

    fn differ(states: &[Colour]) {
        for (who, matrix) in SEEN_BY {
            for row in matrix {
                assert!((row.iter().sum::<f64>() - 1.0).abs() < 3e-6, "{who}");
            }
            for (i, a) in states.iter().enumerate() {
                for b in &states[i + 1..] {
                    let (p, q) = (lab(seen(matrix, *a)), lab(seen(matrix, *b)));
                    let apart = p.iter().zip(q).map(|(p, q)| (p - q).powi(2)).sum::<f64>();
                    assert!(
                        apart.sqrt() > 20.0,
                        "{who}: {a:?} {b:?} {:.1}",
                        apart.sqrt()
                    );
                }
            }
        }
    }
}
