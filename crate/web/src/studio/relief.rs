//! Where paint gathers in a wash, whatever the paint: hollows of the paper's grain, and the pool along the edge.
//!
//! The same for every mix, so it is worked out once for a size: a drag only looks colours up.

/// One pixel of a wash.
#[derive(Clone, Copy, Default)]
pub(crate) struct Spot {
    /// Depth of the paper's grain, -127 to 127.
    pub grain: i8,
    /// How much more paint than in the middle has run to the edge, or less beside it, -127 to 127.
    pub edge: i8,
    /// How much of the pixel is painted, 0 to 255.
    pub cover: u8,
}

/// The relief of the last size that was asked for.
#[derive(Default)]
pub(crate) struct Relief {
    size: (usize, usize),
    scale: f32,
    spots: Vec<Spot>,
}

impl Relief {
    /// So many pixels across and down, row by row; `scale` is pixels per CSS pixel.
    ///
    /// Weighed by what is painted, grain and edge are each zero on the mean.
    pub(crate) fn of(&mut self, size: (usize, usize), scale: f32) -> &[Spot] {
        if self.size != size || self.scale != scale {
            *self = Self { size, scale, spots: spots(size, scale) };
        }
        &self.spots
    }
}

fn spots((width, height): (usize, usize), scale: f32) -> Vec<Spot> {
    let size = (width as f32 / scale, height as f32 / scale);
    let place = |i: usize| (((i % width) as f32 + 0.5) / scale, ((i / width) as f32 + 0.5) / scale);
    let half = (width * height).div_ceil(2);
    let within: Vec<f32> = (0..half).map(|i| within(place(i), size)).collect();
    let cover = |within: f32| (within * scale + 0.5).clamp(0.0, 1.0);
    let sum = |profile: fn(f32) -> f32| -> f32 { within.iter().map(|at| cover(*at) * profile(*at)).sum() };
    // The band is as much paler as the pool is deeper; a wash that is all edge has none.
    let paler = sum(pool) / sum(band).max(1.0);
    let mut spots = vec![Spot::default(); width * height];
    for (i, within) in within.iter().enumerate() {
        let (x, y) = place(i);
        let spot = Spot {
            grain: (127.0 * grain(x, y)).round() as i8,
            edge: (127.0 * (pool(*within) - paler * band(*within))).round() as i8,
            cover: (255.0 * cover(*within)).round() as u8,
        };
        spots[i] = spot;
        // The second half is the first seen from the other side, its grain the negative: they cancel out.
        let opposite = width * height - 1 - i;
        if opposite != i {
            spots[opposite] = Spot { grain: -spot.grain, ..spot };
        }
    }
    spots
}

/// Across the pool at the edge, in CSS pixels, and across the paler band inside that it was drawn from.
const POOL: f32 = 3.0;
const DRAWN: f32 = 14.0;

/// How far inside the painted edge a place is, in CSS pixels: a sheet with soft corners whose edge wanders.
fn within((x, y): (f32, f32), (width, height): (f32, f32)) -> f32 {
    const CORNER: f32 = 12.0;
    let (dx, dy) = (x.min(width - x), y.min(height - y));
    let corner = (CORNER - dx).max(0.0).hypot((CORNER - dy).max(0.0));
    let straight = if dx < CORNER && dy < CORNER { CORNER - corner } else { dx.min(dy) };
    let wave = |x: f32, y: f32| 1.8 * noise(x / 23.0, y / 23.0, 3) + noise(x / 7.0, y / 7.0, 4);
    // Half from either side, so that both halves meet.
    straight - 2.2 + 0.5 * (wave(x, y) + wave(width - x, height - y))
}

/// How much of the pool lies so far inside the edge, 0 to 1.
fn pool(within: f32) -> f32 {
    (1.0 - within.max(0.0) / POOL).max(0.0)
}

/// The same of the paler band, 0 where the pool lies.
fn band(within: f32) -> f32 {
    if within < POOL { 0.0 } else { (1.0 - within / DRAWN).max(0.0) }
}

/// Depth of the paper's grain at a place in CSS pixels, -1 to 1: two octaves of smoothed noise.
fn grain(x: f32, y: f32) -> f32 {
    ((0.62 * noise(x / 3.1, y / 3.1, 1) + 0.38 * noise(x / 1.6, y / 1.6, 2)) * 1.5).clamp(-1.0, 1.0)
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

    #[test]
    fn grain_and_edge_are_zero_on_the_mean() {
        for (size, scale) in [((360, 220), 1.0), ((61, 41), 1.0), ((700, 300), 2.0)] {
            let mut relief = Relief::default();
            let spots = relief.of(size, scale);
            let painted: f64 = spots.iter().map(|spot| f64::from(spot.cover)).sum();
            let mean = |value: fn(&Spot) -> i8| {
                spots.iter().map(|spot| f64::from(value(spot)) * f64::from(spot.cover)).sum::<f64>() / painted
            };
            // Of 127: what pixels at the edge leave.
            assert!(mean(|spot| spot.grain).abs() < 0.5, "{}", mean(|spot| spot.grain));
            assert!(mean(|spot| spot.edge).abs() < 1.5, "{}", mean(|spot| spot.edge));
            assert_eq!(spots[0].cover, 0, "the corner is bare paper");
            assert_eq!(spots[size.1 / 2 * size.0 + size.0 / 2].cover, 255);
        }
    }
}
