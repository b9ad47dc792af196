//! What a film of paint looks like.

use std::sync::LazyLock;

use washpath_core::{Lab, Light, Spectrum, Stock, Surface, colour, layer, spectrum::from_fn};

/// Absorption and scattering per unit load, in `f64`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Film {
    pub k: Spectrum<f64>,
    pub s: Spectrum<f64>,
}

/// Bright white paper below its surface.
static PAPER: LazyLock<Spectrum<f64>> =
    LazyLock::new(|| Stock::BrightWhite.paper().reflectance.map(|r| Surface::WASH.inner(r)));

const BLACK: Spectrum<f64> = [0.0; washpath_core::BANDS];

impl Film {
    /// CIELAB of a load on bright white paper in daylight.
    pub fn lab(&self, load: f64) -> Lab<f64> {
        lab(&self.reflectance(load, &PAPER))
    }

    /// Hue of the tint half as dark as the masstone in degrees, and its chroma.
    pub fn tint(&self) -> (f64, f64) {
        let half = 0.5 * (self.lab(1.0).l + self.lab(0.0).l);
        let (mut thin, mut thick) = (-9.0_f64, 0.0_f64);
        for _ in 0..24 {
            let middle = 0.5 * (thin + thick);
            if self.lab(middle.exp2()).l > half { thin = middle } else { thick = middle }
        }
        let tint = self.lab(thin.exp2());
        (hue(tint), tint.a.hypot(tint.b))
    }

    /// Light from the film at load 1 over black, as a share of that over paper.
    ///
    /// Surface light is taken off both: a dark film hides less than it seems.
    pub fn contrast_ratio(&self) -> f64 {
        let y = |ground: &Spectrum<f64>| {
            let below = self.reflectance(1.0, ground).map(|r| r - Surface::WASH.k1);
            Light::D65.weights().tristimulus(&below)[1]
        };
        y(&BLACK) / y(&PAPER)
    }

    /// Reflectance of a load on bright white paper.
    pub fn on_paper(&self, load: f64) -> Spectrum<f64> {
        self.reflectance(load, &PAPER)
    }

    /// This film and another, `share` of the other.
    pub fn mixed(&self, other: &Self, share: f64) -> Self {
        let mix = |a: f64, b: f64| (1.0 - share) * a + share * b;
        Self {
            k: from_fn(|band| mix(self.k[band], other.k[band])),
            s: from_fn(|band| mix(self.s[band], other.s[band])),
        }
    }

    fn reflectance(&self, load: f64, ground: &Spectrum<f64>) -> Spectrum<f64> {
        from_fn(|band| {
            let inner = layer::reflectance(self.k[band], self.s[band], load, ground[band]);
            Surface::WASH.outer(inner)
        })
    }
}

fn lab(reflectance: &Spectrum<f64>) -> Lab<f64> {
    let weights = Light::D65.weights();
    colour::lab(weights.tristimulus(reflectance), weights.white)
}

/// Hue angle in degrees, 0 to below 360.
pub fn hue(lab: Lab<f64>) -> f64 {
    lab.b.atan2(lab.a).to_degrees().rem_euclid(360.0)
}

/// Signed difference of two hue angles, -180 to 180 degrees.
pub fn hue_between(a: f64, b: f64) -> f64 {
    (b - a + 180.0).rem_euclid(360.0) - 180.0
}
