//! What turns a measured film into a paint at full strength.

use std::f64::consts::PI;

use washpath_core::{BANDS, Spectrum, spectrum::from_fn};

use crate::appearance::Film;

/// A measured film: ln K and ln S.
#[derive(Clone, Copy)]
pub struct Measured {
    pub ln_k: Spectrum<f64>,
    pub ln_s: Spectrum<f64>,
    /// Share of the bands in which the film hid its grounds, so that S there is a guess.
    pub hidden: f64,
}

impl Measured {
    /// From ln mua and ln mus' of a resin: K = 2 mua, S = 3/4 mus'.
    pub fn of_phantom(self) -> Self {
        Self {
            ln_k: self.ln_k.map(|ln| ln + 2.0_f64.ln()),
            ln_s: self.ln_s.map(|ln| ln + 0.75_f64.ln()),
            ..self
        }
    }
}

impl From<&Film> for Measured {
    fn from(film: &Film) -> Self {
        Self { ln_k: film.k.map(f64::ln), ln_s: film.s.map(f64::ln), hidden: 0.0 }
    }
}

/// Seven numbers, all 0 for the film as measured; the crate's page has the formula.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Correction {
    /// ln of the film's strength, K and S together.
    pub strength: f64,
    /// ln of the factor on S alone.
    pub scattering: f64,
    /// Widening of ln K below its peak.
    pub contrast: f64,
    /// ln K up in the violet, down in the red.
    pub tilt: f64,
    /// ln K up at both ends, down in the green.
    pub bend: f64,
    /// ln S up in the violet, down in the red.
    pub tilt_s: f64,
    /// ln S up at both ends, down in the green.
    pub bend_s: f64,
}

/// How many they are.
pub const NUMBERS: usize = 7;

/// Expected size of scattering, contrast, tilt and bend.
const EXPECTED: [f64; 4] = [0.35, 0.3, 0.4, 0.4];

/// Of tilt and bend of S where the film hid all grounds in every band, and where it hid none in any.
const GUESSED_S: f64 = 0.3;
const MEASURED_S: f64 = 0.01;

impl From<[f64; NUMBERS]> for Correction {
    fn from([strength, scattering, contrast, tilt, bend, tilt_s, bend_s]: [f64; NUMBERS]) -> Self {
        Self { strength, scattering, contrast, tilt, bend, tilt_s, bend_s }
    }
}

impl Correction {
    /// The paint.
    pub fn apply(&self, film: &Measured) -> Film {
        let peak = film.ln_k.iter().fold(f64::MIN, |a, b| a.max(*b));
        let x = |band: usize| PI * band as f64 / (BANDS - 1) as f64;
        let k = from_fn(|band| {
            let below = (1.0 + self.contrast) * (film.ln_k[band] - peak);
            (self.strength + peak + below + self.tilt * x(band).cos() + self.bend * (2.0 * x(band)).cos())
                .exp()
        });
        let s = from_fn(|band| {
            let shape = self.tilt_s * x(band).cos() + self.bend_s * (2.0 * x(band)).cos();
            (self.strength + self.scattering + film.ln_s[band] + shape).exp()
        });
        Film { k, s }
    }

    /// Each part but the strength, in units of its expected size for this film.
    pub fn sizes(&self, film: &Measured) -> [f64; NUMBERS - 1] {
        let parts = [self.scattering, self.contrast, self.tilt, self.bend, self.tilt_s, self.bend_s];
        let of_s = (GUESSED_S * film.hidden).max(MEASURED_S);
        std::array::from_fn(|i| parts[i] / EXPECTED.get(i).copied().unwrap_or(of_s))
    }
}
