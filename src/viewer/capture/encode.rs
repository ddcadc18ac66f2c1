//! How do pixels become the bytes of a file?

use image::codecs::png::{CompressionType, FilterType, PngEncoder};
use image::{ExtendedColorType, ImageEncoder as _};

use super::Pixels;
use crate::viewer::Fault;

/// The bytes of a PNG file.
///
/// # Errors
/// When the picture is too large to be written.
pub fn png(picture: &Pixels) -> Result<Vec<u8>, Fault> {
    // Nothing is looked through: three channels say it all.
    let rgb: Vec<u8> = picture
        .rgba
        .chunks_exact(4)
        .flat_map(|p| [p[0], p[1], p[2]])
        .collect();
    let mut bytes = Vec::new();
    PngEncoder::new_with_quality(&mut bytes, CompressionType::Best, FilterType::Adaptive)
        .write_image(&rgb, picture.width, picture.height, ExtendedColorType::Rgb8)
        .map_err(cannot)?;
    Ok(bytes)
}

/// How thoroughly a frame's colours are chosen: 1 best, 30 fastest.
const SPEED: i32 = 10;
/// Channels that differ by no more than this from what is on the screen are left as they are.
const SAME: u8 = 2;

/// An animated GIF in the making.
pub struct Animation {
    encoder: gif::Encoder<Vec<u8>>,
    /// What is on the screen.
    screen: Pixels,
}

impl std::fmt::Debug for Animation {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Animation").finish_non_exhaustive()
    }
}

impl Animation {
    /// One that runs again and again, of pictures of this size.
    ///
    /// # Errors
    /// When the size is too large for the format.
    pub fn new([width, height]: [u32; 2]) -> Result<Self, Fault> {
        let mut encoder =
            gif::Encoder::new(Vec::new(), short(width)?, short(height)?, &[]).map_err(cannot)?;
        encoder.set_repeat(gif::Repeat::Infinite).map_err(cannot)?;
        Ok(Self {
            encoder,
            screen: Pixels {
                width,
                height,
                rgba: vec![0; width as usize * height as usize * 4],
            },
        })
    }

    /// Adds a picture that is shown for so many hundredths of a second; only what changed is
    /// written.
    ///
    /// # Errors
    /// When the picture has another size.
    pub fn add(&mut self, picture: &Pixels, hundredths: u16) -> Result<(), Fault> {
        if [picture.width, picture.height] != [self.screen.width, self.screen.height] {
            return Err(cannot("a frame has another size than the first"));
        }
        let mut part = self.changed(picture);
        let mut frame = gif::Frame::from_rgba_speed(
            short(part.size[0])?,
            short(part.size[1])?,
            &mut part.rgba,
            SPEED,
        );
        frame.left = short(part.at[0])?;
        frame.top = short(part.at[1])?;
        frame.delay = hundredths;
        frame.dispose = gif::DisposalMethod::Keep;
        self.encoder.write_frame(&frame).map_err(cannot)
    }

    /// The bytes of the file.
    ///
    /// # Errors
    /// Never in memory.
    pub fn finish(self) -> Result<Vec<u8>, Fault> {
        self.encoder.into_inner().map_err(cannot)
    }

    /// The part of the picture that differs from what is on the screen, clear where it does not;
    /// it is on the screen from then on.
    fn changed(&mut self, picture: &Pixels) -> Part {
        let width = self.screen.width as usize;
        let differs = |now: &[u8], then: &[u8]| {
            now[..3]
                .iter()
                .zip(&then[..3])
                .any(|(a, b)| a.abs_diff(*b) > SAME)
                || then[3] == 0
        };
        let (mut low, mut high) = ([usize::MAX; 2], [0; 2]);
        let pixels = picture.rgba.chunks_exact(4);
        for (i, (now, then)) in pixels.zip(self.screen.rgba.chunks_exact(4)).enumerate() {
            if differs(now, then) {
                let at = [i % width, i / width];
                low = [low[0].min(at[0]), low[1].min(at[1])];
                high = [high[0].max(at[0] + 1), high[1].max(at[1] + 1)];
            }
        }
        if low[0] > high[0] {
            // Where nothing changed, one clear pixel holds the frame's time.
            return Part {
                at: [0, 0],
                size: [1, 1],
                rgba: vec![0; 4],
            };
        }
        let mut rgba = Vec::with_capacity((high[0] - low[0]) * (high[1] - low[1]) * 4);
        for y in low[1]..high[1] {
            for x in low[0]..high[0] {
                let first = (y * width + x) * 4;
                let now = &picture.rgba[first..first + 4];
                let then = &mut self.screen.rgba[first..first + 4];
                if differs(now, then) {
                    then.copy_from_slice(&[now[0], now[1], now[2], 255]);
                    rgba.extend_from_slice(then);
                } else {
                    rgba.extend_from_slice(&[0; 4]);
                }
            }
        }
        Part {
            at: [low[0] as u32, low[1] as u32],
            size: [(high[0] - low[0]) as u32, (high[1] - low[1]) as u32],
            rgba,
        }
    }
}

/// A part of a picture.
struct Part {
    at: [u32; 2],
    size: [u32; 2],
    rgba: Vec<u8>,
}

fn short(x: u32) -> Result<u16, Fault> {
    u16::try_from(x).map_err(|_| cannot("it is too large for this format"))
}

fn cannot(why: impl std::fmt::Display) -> Fault {
    Fault {
        what: format!("the picture can't be written: {why}"),
        help: "try a smaller size".into(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn plain(grey: u8) -> Pixels {
        Pixels {
            width: 20,
            height: 10,
            rgba: [grey, grey, grey, 255].repeat(200),
        }
    }

    #[test]
    fn a_still_picture_comes_back_as_it_was() {
        let mut picture = plain(90);
        picture.rgba[4..7].copy_from_slice(&[1, 2, 3]);
        let bytes = png(&picture).unwrap();
        let back = image::load_from_memory(&bytes).unwrap().to_rgba8();
        assert_eq!((back.width(), back.height()), (20, 10));
        assert_eq!(back.into_raw(), picture.rgba);
    }

    #[test]
    fn frames_hold_what_changed_and_show_all_of_it() {
        let mut animation = Animation::new([20, 10]).unwrap();
        let mut second = plain(90);
        // A spot at (7, 3).
        second.rgba[(3 * 20 + 7) * 4] = 200;
        for (picture, time) in [(&plain(90), 8), (&second, 8), (&second, 100)] {
            animation.add(picture, time).unwrap();
        }
        assert!(
            animation
                .add(
                    &Pixels {
                        width: 1,
                        height: 1,
                        rgba: vec![0; 4]
                    },
                    8
                )
                .is_err()
        );
        let bytes = animation.finish().unwrap();
        let mut options = gif::DecodeOptions::new();
        options.set_color_output(gif::ColorOutput::RGBA);
        let mut decoder = options.read_info(&bytes[..]).unwrap();
        let mut sizes = Vec::new();
        while let Some(frame) = decoder.read_next_frame().unwrap() {
            sizes.push((
                frame.left,
                frame.top,
                frame.width,
                frame.height,
                frame.delay,
            ));
        }
        assert_eq!(
            sizes,
            [(0, 0, 20, 10, 8), (7, 3, 1, 1, 8), (0, 0, 1, 1, 100)]
        );
    }
}
