//! A painted wash as pixels: its grain plays round the predicted colour and never shifts it.
//!
//! Each pixel takes its colour from a ladder between two colours, the settled
//! and the bare; the ladder's middle is the prediction, and grain and edge
//! ([`relief`](crate::studio::relief)) are as often above as below, so the mean over the wash, in linear
//! light, is the prediction.

use palette::{LinSrgb, Srgb};
use washpath_core::{Error, Recipe};

use crate::pair::Ready;
use crate::shelf::shelf;
use crate::studio::readout::texture;
use crate::studio::relief::Spot;

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
        .try_fold(0.0, |most: f32, part| Ok(most.max(shelf.get(part.paint)?.granulation.unwrap_or(0.0))))
}

/// Rungs of the ladder; odd, so that the middle is one.
const RUNGS: usize = 129;

/// Strongest play of the grain, as a share of the linear light.
const DEEPEST: f32 = 0.34;

/// How much of that the pool at the edge of any paint takes.
const POOLED: f32 = 0.9;

/// RGBA pixels of a wash, row by row.
///
/// `settled` is what grain and edge go towards where paint gathers; `strength` 0 to 1 says how far the grain goes.
/// Colours are of the display's own space, 0 to 1 in linear light.
pub(crate) fn pixels(middle: LinSrgb<f32>, settled: LinSrgb<f32>, strength: f32, relief: &[Spot]) -> Vec<u8> {
    let ladder = ladder(middle, settled);
    let [per_grain, per_edge] = [strength.clamp(0.0, 1.0), POOLED].map(fraction);
    let mut bytes = vec![0; 4 * relief.len()];
    for (spot, pixel) in relief.iter().zip(bytes.chunks_exact_mut(4)) {
        let rung = MIDDLE + per_grain * i32::from(spot.grain) + per_edge * i32::from(spot.edge);
        let [red, green, blue] = ladder[(rung >> BITS).clamp(0, RUNGS as i32 - 1) as usize];
        pixel.copy_from_slice(&[red, green, blue, spot.cover]);
    }
    bytes
}

/// Rungs are counted in whole numbers with so many bits behind the point: there are some hundred thousand pixels in a
/// frame.
const BITS: u32 = 16;

/// The middle rung, and half a rung to round by.
const MIDDLE: i32 = (((RUNGS as i32 - 1) / 2) << BITS) + (1 << (BITS - 1));

/// How many rungs one step of 127 of a relief goes at a strength of 0 to 1.
fn fraction(strength: f32) -> i32 {
    (strength / 127.0 * ((RUNGS - 1) / 2) as f32 * (1 << BITS) as f32).round() as i32
}

fn ladder(middle: LinSrgb<f32>, settled: LinSrgb<f32>) -> Vec<[u8; 3]> {
    let towards = settled - middle;
    // No rung may leave the cube, or the mean would shift.
    let room = |value: f32, step: f32| {
        if step.abs() < 1e-6 { 1.0 } else { value.min(1.0 - value).max(0.0) / step.abs() }
    };
    let most = room(middle.red, towards.red)
        .min(room(middle.green, towards.green))
        .min(room(middle.blue, towards.blue))
        .min(DEEPEST);
    (0..RUNGS)
        .map(|rung| {
            let depth = most * (2.0 * rung as f32 / (RUNGS - 1) as f32 - 1.0);
            let colour = Srgb::<u8>::from_linear(middle + towards * depth);
            [colour.red, colour.green, colour.blue]
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::studio::relief::Relief;

    fn mean(bytes: &[u8]) -> [f64; 3] {
        let linear = |byte: u8| f64::from(Srgb::new(byte, 0, 0).into_linear::<f32>().red);
        let cover = |pixel: &[u8]| f64::from(pixel[3]);
        let painted: f64 = bytes.chunks_exact(4).map(cover).sum();
        let sum = |c| bytes.chunks_exact(4).map(|pixel| linear(pixel[c]) * cover(pixel)).sum::<f64>();
        [0, 1, 2].map(|c| sum(c) / painted)
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
                let found = mean(&pixels(middle, settled, strength, Relief::default().of((120, 60), 1.0)));
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
        // Of what lies far from the edge.
        let spread = |strength: f32| {
            let bytes = pixels(middle, settled, strength, Relief::default().of((120, 60), 1.0));
            let rows = bytes.chunks_exact(120 * 4).skip(24).take(12);
            let reds: Vec<u8> =
                rows.flat_map(|row| row[4 * 30..4 * 90].chunks_exact(4).map(|pixel| pixel[0])).collect();
            reds.iter().max().unwrap() - reds.iter().min().unwrap()
        };
        assert_eq!(spread(0.0), 0);
        assert!(spread(1.0) > 20, "{}", spread(1.0));
    }

    #[test]
    fn paint_pools_at_the_edge_and_lies_as_predicted_in_the_middle() {
        let (middle, settled) = (LinSrgb::new(0.3, 0.3, 0.5), LinSrgb::new(0.05, 0.05, 0.2));
        let bytes = pixels(middle, settled, 0.0, Relief::default().of((120, 60), 1.0));
        let red = |x: usize, y: usize| bytes[4 * (120 * y + x)];
        let first = (0..60).find(|y| bytes[4 * (120 * y + 60) + 3] == 255).expect("the middle is painted");
        assert!(red(60, first) + 8 < red(60, 30), "{} and {}", red(60, first), red(60, 30));
        assert_eq!(red(60, 30), Srgb::<u8>::from_linear(middle).red);
    }
}
