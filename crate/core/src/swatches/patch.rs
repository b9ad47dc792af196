//! Swatches of an own paint, rounded to what travels in a link.

use crate::colour::Lab;
use crate::error::Error;
use crate::mixing::load::Load;
use crate::optics::spectrum::{BANDS, Spectrum, from_fn};
use crate::swatches::calibrate::Seen;
use crate::text::decimal::Decimal;

/// A colour or a spectrum of a swatch, rounded to what travels in a link.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Patch {
    /// L*, a*, b* in D65, in halves.
    Colour([i16; 3]),
    /// Reflectance at every band, in steps of [`Patch::STEP`].
    Measured(Box<[u16; BANDS]>),
}

impl Patch {
    /// Steps of reflectance in one: a meter repeats itself no better.
    pub const STEP: f64 = 1.0 / 2000.0;

    /// A reflectance of 1.2: what brightens itself in daylight.
    const MOST_STEPS: f64 = 2400.0;

    /// Of what was seen.
    ///
    /// # Errors
    ///
    /// A colour outside L* 0 to 100 or a*, b* -150 to 150, a reflectance
    /// outside 0 to 1.2.
    pub fn new(seen: &Seen) -> Result<Self, Error> {
        match seen {
            Seen::Lab(Lab { l, a, b, .. }) => {
                let within = (0.0..=100.0).contains(l) && a.abs() <= 150.0 && b.abs() <= 150.0;
                if !within {
                    let lab = [*l, *a, *b].map(|value| value as f32);
                    return Err(Error::Colour { lab, what: "the colour of a swatch" });
                }
                Ok(Self::Colour([l, a, b].map(|value| (2.0 * value).round() as i16)))
            }
            Seen::Spectrum(reflectance) => {
                let mut steps = [0; BANDS];
                for (steps, value) in steps.iter_mut().zip(reflectance.iter()) {
                    let nearest = (value / Self::STEP).round();
                    // In steps: the page's 1.2 is the `f32` nearest to it, which is more.
                    if !(0.0..=Self::MOST_STEPS).contains(&nearest) {
                        let value = Decimal(*value as f32);
                        return Err(Error::Value(format!("reflectance {value} is not between 0 and 1.2")));
                    }
                    *steps = nearest as u16;
                }
                Ok(Self::Measured(Box::new(steps)))
            }
        }
    }

    /// What was seen, rounded.
    #[must_use]
    pub fn seen(&self) -> Seen {
        match self {
            Self::Colour(halves) => {
                let [l, a, b] = halves.map(|half| 0.5 * f64::from(half));
                Seen::Lab(Lab::new(l, a, b))
            }
            Self::Measured(steps) => {
                let reflectance: Spectrum<f64> = from_fn(|band| f64::from(steps[band]) * Self::STEP);
                Seen::Spectrum(Box::new(reflectance))
            }
        }
    }
}

/// A swatch thinned with water.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wash {
    /// How much lies on the paper: below masstone.
    pub load: Load,
    /// What was seen of it.
    pub patch: Patch,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_no_surface_has_is_no_colour_of_a_swatch() {
        let patch = Patch::new(&Seen::Lab(Lab::new(140.0, 0.0, 0.0)));
        assert_eq!(patch.unwrap_err().to_string(), "L* 140 a* 0 b* 0 cannot be the colour of a swatch");
    }

    /// The page holds numbers as `f32`, the core as `f64`.
    #[test]
    fn every_patch_survives_the_page() {
        for steps in [0, 1, 1199, 2399, 2400] {
            let patch = Patch::Measured(Box::new([steps; BANDS]));
            let Seen::Spectrum(seen) = patch.seen() else { panic!("a spectrum is one") };
            let through = seen.map(|value| f64::from(value as f32));
            assert_eq!(Patch::new(&Seen::Spectrum(Box::new(through))), Ok(patch));
        }
        for beyond in [-0.001, 1.201, f64::NAN, f64::INFINITY] {
            assert!(Patch::new(&Seen::Spectrum(Box::new([beyond; BANDS]))).is_err(), "{beyond}");
        }
    }
}
