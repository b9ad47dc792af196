//! Swatches: painted and measured patches.

use crate::colour::{Lab, lab};
use crate::optics::observer::Light;
use crate::optics::spectrum::Spectrum;

/// What a swatch was measured as.
#[derive(Clone, Debug, PartialEq)]
pub enum Seen {
    /// Reflectance, 0 to 1, surface included.
    Spectrum(Box<Spectrum<f64>>),
    /// CIELAB in D65.
    Lab(Lab<f64>),
}

impl Seen {
    /// CIELAB in D65.
    #[must_use]
    pub fn lab(&self) -> Lab<f64> {
        match self {
            Self::Spectrum(reflectance) => daylight(reflectance),
            Self::Lab(lab) => *lab,
        }
    }
}

/// A painted and measured patch.
#[derive(Clone, Debug, PartialEq)]
pub struct Swatch {
    /// Index of each paint and its quantity; 1 is masstone, above 0.
    pub parts: Vec<(usize, f64)>,
    /// The measurement.
    pub seen: Seen,
    /// How far it is trusted: errors are multiplied by it; 1 as measured, 0 not at all.
    pub trust: f64,
}

pub(super) fn daylight(reflectance: &Spectrum<f64>) -> Lab<f64> {
    let weights = Light::D65.weights();
    lab(weights.tristimulus(reflectance), weights.white)
}
