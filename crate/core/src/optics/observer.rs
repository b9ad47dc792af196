//! From reflectance to tristimulus values: the CIE 1931 2-degree observer.
//!
//! Weights at 10 nm as ASTM E308 prescribes, with the ends folded into 380 and
//! 730 nm, so that the sum over the bands is the whole integral.

use std::sync::LazyLock;

use num_traits::Float;
use wide::f32x4;

use crate::colour::{Lab, lab_of_ratios};
use crate::optics::layer::at;
use crate::optics::spectrum::{BANDS, Spectrum};
use crate::text::decimal;

/// The light a painting is looked at in; the page keeps its number.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[non_exhaustive]
pub enum Light {
    /// Average daylight, 6500 K.
    #[default]
    D65 = 0,
    /// Warm daylight, 5000 K; the graphic trade's viewing booth.
    D50 = 1,
    /// Tungsten lamp, 2856 K.
    A = 2,
    /// White LED lamp, 4000 K (CIE LED-B3).
    Led = 3,
    /// Three-band fluorescent lamp, 4000 K (CIE FL11).
    Fluorescent = 4,
}

impl Light {
    /// Every light, in the order of the table's columns.
    pub const ALL: [Self; 5] = [Self::D65, Self::D50, Self::A, Self::Led, Self::Fluorescent];

    /// Name for a painter.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::D65 => "daylight",
            Self::D50 => "warm daylight",
            Self::A => "tungsten lamp",
            Self::Led => "LED lamp",
            Self::Fluorescent => "fluorescent lamp",
        }
    }

    /// Colour of a reflectance in this light; a reflectance is the same in all lights.
    #[must_use]
    pub fn colour_of(self, reflectance: &Spectrum) -> Lab {
        lab_of_ratios(self.ratios_of(reflectance))
    }

    /// X, Y and Z of a reflectance as parts of white's; what [`lab_of_ratios`] takes.
    pub(crate) fn ratios_of(self, reflectance: &Spectrum) -> f32x4 {
        let mut seen = self.observer();
        (0..BANDS / 4).for_each(|four| seen.add(four, at(reflectance, four)));
        seen.ratios()
    }

    /// An observer in this light who has seen nothing yet.
    pub(crate) fn observer(self) -> Observer {
        Observer { bands: &TABLES[self as usize].1, sums: [f32x4::ZERO; 3] }
    }

    /// The weights of this light.
    #[must_use]
    pub fn weights(self) -> &'static Weights<f64> {
        &TABLES[self as usize].0
    }
}

/// What four bands at a time add to X, Y and Z as parts of white's.
type Bands = [[f32x4; 3]; BANDS / 4];

/// Adds up what is seen, four bands at a time.
pub(crate) struct Observer {
    bands: &'static Bands,
    sums: [f32x4; 3],
}

impl Observer {
    /// Sees the reflectance of four bands, the first of which is `4 * four`.
    #[inline]
    pub(crate) fn add(&mut self, four: usize, reflectance: f32x4) {
        for (sum, weights) in self.sums.iter_mut().zip(&self.bands[four]) {
            *sum = reflectance.mul_add(*weights, *sum);
        }
    }

    /// X, Y and Z as parts of white's.
    #[inline]
    pub(crate) fn ratios(self) -> f32x4 {
        let [x, y, z] = self.sums;
        let [a, b, c, d] = f32x4::transpose([x, y, z, f32x4::ZERO]);
        (a + c) + (b + d)
    }
}

/// What each band adds to X, Y and Z; a perfect white sums to Y = 100.
#[derive(Clone, Debug, PartialEq)]
pub struct Weights<F = f32> {
    /// Weights of X, Y, Z.
    pub xyz: [Spectrum<F>; 3],
    /// X, Y, Z of the perfect white.
    pub white: [F; 3],
}

impl<F: Float> Weights<F> {
    /// X, Y and Z of a reflectance, relative to Y = 100 of the perfect white.
    #[must_use]
    pub fn tristimulus(&self, reflectance: &Spectrum<F>) -> [F; 3] {
        [0, 1, 2].map(|i| dot(&self.xyz[i], reflectance))
    }
}

fn dot<F: Float>(a: &Spectrum<F>, b: &Spectrum<F>) -> F {
    // Four running sums: one would make every addition wait for the last.
    let mut sums = [F::zero(); 4];
    for start in (0..BANDS).step_by(4) {
        for lane in 0..4 {
            sums[lane] = sums[lane] + a[start + lane] * b[start + lane];
        }
    }
    (sums[0] + sums[1]) + (sums[2] + sums[3])
}

type Both = (Weights<f64>, Bands);

static TABLES: LazyLock<Vec<Both>> = LazyLock::new(|| {
    let columns = columns(include_str!("../../data/observer.csv"));
    columns.chunks_exact(3).map(|xyz| both([xyz[0], xyz[1], xyz[2]])).collect()
});

fn both(xyz: [Spectrum<f64>; 3]) -> Both {
    let white: [f64; 3] = xyz.map(|weights| weights.iter().sum());
    let part = |i: usize, band: usize| (xyz[i][band] / white[i]) as f32;
    let four = |i: usize, first: usize| f32x4::from([0, 1, 2, 3].map(|lane| part(i, first + lane)));
    let bands = std::array::from_fn(|chunk| [0, 1, 2].map(|i| four(i, 4 * chunk)));
    (Weights { xyz, white }, bands)
}

/// The table's columns after the wavelength. The file is part of the program.
fn columns(table: &str) -> Vec<Spectrum<f64>> {
    let mut columns = vec![[0.0; BANDS]; 3 * Light::ALL.len()];
    let rows = table.lines().filter(|line| line.starts_with(|c: char| c.is_ascii_digit()));
    for (band, row) in rows.enumerate() {
        for (column, cell) in columns.iter_mut().zip(row.split(',').skip(1)) {
            column[band] = decimal::read(cell).expect("observer.csv holds numbers only: a test reads it all");
        }
    }
    columns
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn whites_are_the_published_ones() {
        // CIE 15:2018 gives D65 as 95.04, 100, 108.88; the sum by 10 nm agrees to 0.01.
        let white = Light::D65.weights().white;
        for (found, published) in white.iter().zip([95.047, 100.0, 108.883]) {
            assert!((found - published).abs() < 0.001, "{found} against {published}");
        }
        for light in Light::ALL {
            assert!((light.weights().white[1] - 100.0).abs() < 1e-6);
        }
    }
}
