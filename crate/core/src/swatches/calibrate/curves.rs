//! K and S of a paint, as they are fitted.

use crate::optics::film::Film;
use crate::optics::spectrum::{Spectrum, cast};

/// Absorption and scattering per unit of load, `f64` for fitting.
#[derive(Clone, Debug, PartialEq)]
pub struct Curves {
    /// Absorption K, above 0.
    pub k: Spectrum<f64>,
    /// Scattering S, above 0.
    pub s: Spectrum<f64>,
}

impl Curves {
    /// Of a paint of the shelf; zeros become [`LEAST`].
    #[must_use]
    pub fn of(film: &Film) -> Self {
        let floor = |value: f64| value.max(LEAST);
        Self { k: cast(&film.k).map(floor), s: cast(&film.s).map(floor) }
    }

    /// The same for the mixing kernel.
    #[must_use]
    pub fn film(&self) -> Film {
        Film { k: cast(&self.k), s: cast(&self.s), strength: 1.0 }
    }
}

/// Least K and S that fitting tells from nothing: a masstone it dims by one in ten thousand.
pub const LEAST: f64 = 1e-4;
