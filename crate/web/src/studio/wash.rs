//! A painted wash as pixels: its grain plays round the predicted colour and never shifts it.
//!
//! Each pixel takes its colour from a ladder between two colours, the settled
//! and the bare; the ladder's middle is the prediction and the grain is as often
//! above as below, so the mean over the wash, in linear light, is the prediction.

use palette::{LinSrgb, Srgb};
use washpath_core::{Error, Recipe};

use crate::pair::Ready;
use crate::shelf::shelf;
use crate::studio::readout::texture;

/// Most pixels of one wash.
pub(crate) const MOST_PIXELS: usize = 1_000_000;

/// How a mix is grained.
pub(crate) struct Grain {
    /// 0 smooth to 1.
    pub strength: f32,
    /// Share of B in what settles in the hollows.
    pub share: f32,
}

impl Grain {
    /// How much heavier paint lies in the hollows.
    pub(crate) const HEAVIER: f32 = 1.8;

    /// The grain of a place on a path. Where paints part, the granulating end settles.
    pub(crate) fn of(ready: &Ready, share: f32) -> Result<Self, Error> {
        let [a, b] = &ready.recipes;
        let texture = texture(&Recipe::between(a, b, share)?)?;
        let strength = texture.granulation.unwrap_or(0.0) / 4.0;
        if texture.separation.is_none() {
            return Ok(Self { strength, share });
        }
        let [of_a, of_b] = [grit(a)?, grit(b)?];
        // Halfway from the mix towards the end that settles.
        let settled = if of_a > of_b { share * 0.5 } else { share + (1.0 - share) * 0.5 };
        Ok(Self { strength, share: if of_a == of_b { share } else { settled } })
    }
}

/// Granulation of the grainiest paint of a recipe.
fn grit(recipe: &Recipe) -> Result<f32, Error> {
    let shelf = shelf();
    recipe
        .parts()
        .iter()
        .try_fold(0.0, |most: f32, (paint, _)| Ok(most.max(shelf.get(*paint)?.granulation.unwrap_or(0.0))))
}

/// Rungs of the ladder; odd, so that the middle is one.
const RUNGS: usize = 65;

/// Strongest play of the grain, as a share of the linear light.
const DEEPEST: f32 = 0.34;

/// RGBA pixels of a wash, row by row.
///
/// `settled` is what the grain goes towards in the hollows; `strength` 0 to 1
/// says how far. Colours are of the display's own space, 0 to 1 in linear light.
pub(crate) fn pixels(
    middle: LinSrgb<f32>,
    settled: LinSrgb<f32>,
    strength: f32,
    size: (usize, usize),
    scale: f32,
) -> Vec<u8> {
    let ladder = ladder(middle, settled, strength.clamp(0.0, 1.0));
    let (width, height) = size;
    let mut bytes = Vec::with_capacity(width * height * 4);
    for y in 0..height {
        // The lower half is the upper half's negative, seen from the other side: they cancel out.
        let (row, sign) = if y < height / 2 { (y, 1.0) } else { (height - 1 - y, -1.0) };
        for x in 0..width {
            let column = if sign > 0.0 { x } else { width - 1 - x };
            let depth = sign * grain(column as f32 / scale, row as f32 / scale);
            let rung = ((depth * 0.5 + 0.5) * (RUNGS - 1) as f32).round() as usize;
            bytes.extend(ladder[rung.min(RUNGS - 1)]);
        }
    }
    bytes
}

fn ladder(middle: LinSrgb<f32>, settled: LinSrgb<f32>, strength: f32) -> Vec<[u8; 4]> {
    let towards = settled - middle;
    // No rung may leave the cube, or the mean would shift.
    let room = |value: f32, step: f32| {
        if step.abs() < 1e-6 { 1.0 } else { value.min(1.0 - value).max(0.0) / step.abs() }
    };
    let most = room(middle.red, towards.red)
        .min(room(middle.green, towards.green))
        .min(room(middle.blue, towards.blue));
    let most = (strength * DEEPEST).min(most);
    (0..RUNGS)
        .map(|rung| {
            let depth = most * (2.0 * rung as f32 / (RUNGS - 1) as f32 - 1.0);
            let colour = Srgb::<u8>::from_linear(middle + towards * depth);
            [colour.red, colour.green, colour.blue, 255]
        })
        .collect()
}

/// Depth of the paper's grain at a place in CSS pixels, -1 to 1: two octaves of smoothed noise.
fn grain(x: f32, y: f32) -> f32 {
    (0.62 * noise(x / 3.1, y / 3.1, 1) + 0.38 * noise(x / 1.6, y / 1.6, 2)) * 1.5
}

fn noise(x: f32, y: f32, seed: u32) -> f32 {
    let (left, top) = (x.floor(), y.floor());
    let smooth = |t: f32| t * t * (3.0 - 2.0 * t);
    let (u, v) = (smooth(x - left), smooth(y - top));
    let at = |dx: u32, dy: u32| lattice(left as u32 + dx, top as u32 + dy, seed);
    let upper = at(0, 0) + u * (at(1, 0) - at(0, 0));
    let lower = at(0, 1) + u * (at(1, 1) - at(0, 1));
    (upper + v * (lower - upper)).clamp(-1.0, 1.0)
}

fn lattice(x: u32, y: u32, seed: u32) -> f32 {
    let mixed = x.wrapping_mul(0x9e37_79b1) ^ y.wrapping_mul(0x85eb_ca6b) ^ seed.wrapping_mul(0xc2b2_ae35);
    let mixed = (mixed ^ (mixed >> 15)).wrapping_mul(0x2c1b_3c6d);
    let mixed = (mixed ^ (mixed >> 12)).wrapping_mul(0x297a_2d39);
    (mixed ^ (mixed >> 15)) as f32 / u32::MAX as f32 * 2.0 - 1.0
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mean(bytes: &[u8]) -> [f64; 3] {
        let linear = |byte: u8| f64::from(Srgb::new(byte, 0, 0).into_linear::<f32>().red);
        let count = (bytes.len() / 4) as f64;
        [0, 1, 2].map(|c| bytes.chunks_exact(4).map(|pixel| linear(pixel[c])).sum::<f64>() / count)
    }

    #[test]
    fn grain_never_shifts_the_colour() {
        for (middle, settled) in [
            ([0.3, 0.2, 0.1], [0.1, 0.05, 0.02]),
            ([0.02, 0.05, 0.3], [0.0, 0.01, 0.2]),
            ([0.9, 0.85, 0.8], [0.5, 0.4, 0.7]),
        ] {
            let [middle, settled] = [middle, settled].map(|[r, g, b]| LinSrgb::new(r, g, b));
            for strength in [0.0, 0.5, 1.0] {
                let found = mean(&pixels(middle, settled, strength, (120, 60), 1.0));
                for (found, wanted) in found.iter().zip([middle.red, middle.green, middle.blue]) {
                    // What rounding to bytes leaves: half a step of 255, which is 0.009 of linear light at the light end.
                    assert!((found - f64::from(wanted)).abs() < 0.0045, "{found} for {wanted}");
                }
            }
        }
    }

    #[test]
    fn grain_shows_where_paint_granulates_and_not_where_it_is_smooth() {
        let (middle, settled) = (LinSrgb::new(0.3, 0.3, 0.5), LinSrgb::new(0.05, 0.05, 0.2));
        let spread = |strength: f32| {
            let bytes = pixels(middle, settled, strength, (60, 30), 1.0);
            let reds: Vec<u8> = bytes.chunks_exact(4).map(|pixel| pixel[0]).collect();
            reds.iter().max().unwrap() - reds.iter().min().unwrap()
        };
        assert_eq!(spread(0.0), 0);
        assert!(spread(1.0) > 20, "{}", spread(1.0));
    }
}
