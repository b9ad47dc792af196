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
    /// Usual distance in nm of its bands from those of the paint it stands for.
    pub shift: f64,
}

impl Measured {
    /// A film that hid no ground, of the very pigment it stands for.
    pub fn new(ln_k: Spectrum<f64>, ln_s: Spectrum<f64>) -> Self {
        Self { ln_k, ln_s, hidden: 0.0, shift: 0.0 }
    }

    /// ln K moved by so many nm to the red.
    fn moved(&self, nm: f64) -> Spectrum<f64> {
        let last = (BANDS - 1) as f64;
        from_fn(|band| {
            let at = (band as f64 - nm / 10.0).clamp(0.0, last);
            let low = (at.floor() as usize).min(BANDS - 2);
            let part = at - low as f64;
            (1.0 - part) * self.ln_k[low] + part * self.ln_k[low + 1]
        })
    }

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
        Self::new(film.k.map(f64::ln), film.s.map(f64::ln))
    }
}

/// Eight numbers, all 0 for the film as measured; the crate's page has the formula.
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
    /// Of ln K to the red, in units of the film's usual shift.
    pub shift: f64,
}

/// How many they are.
pub const NUMBERS: usize = 8;

/// Expected size of scattering, contrast, tilt and bend.
const EXPECTED: [f64; 4] = [0.35, 0.3, 0.4, 0.4];

/// Of tilt and bend of S where the film hid all grounds in every band, and where it hid none in any.
const GUESSED_S: f64 = 0.3;
const MEASURED_S: f64 = 0.01;

impl From<[f64; NUMBERS]> for Correction {
    fn from([strength, scattering, contrast, tilt, bend, tilt_s, bend_s, shift]: [f64; NUMBERS]) -> Self {
        Self { strength, scattering, contrast, tilt, bend, tilt_s, bend_s, shift }
    }
}

impl Correction {
    /// The paint.
    pub fn apply(&self, film: &Measured) -> Film {
        let ln_k = film.moved(self.shift * film.shift);
        let peak = ln_k.iter().fold(f64::MIN, |a, b| a.max(*b));
        let x = |band: usize| PI * band as f64 / (BANDS - 1) as f64;
        let k = from_fn(|band| {
            let below = (1.0 + self.contrast) * (ln_k[band] - peak);
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
        let [of_scattering, of_contrast, of_tilt, of_bend] = EXPECTED;
        let of_s = (GUESSED_S * film.hidden).max(MEASURED_S);
        [
            self.scattering / of_scattering,
            self.contrast / of_contrast,
            self.tilt / of_tilt,
            self.bend / of_bend,
            self.tilt_s / of_s,
            self.bend_s / of_s,
            self.shift,
        ]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bands_move_to_the_red_by_whole_and_part_bands() {
        let moved = Measured::new(from_fn(|band| band as f64), [0.0; BANDS]).moved(15.0);
        assert_eq!(moved[0], 0.0);
        assert!((moved[10] - 8.5).abs() < 1e-12 && (moved[35] - 33.5).abs() < 1e-12);
    }
}
