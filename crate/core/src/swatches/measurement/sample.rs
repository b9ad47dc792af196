//! A measured sample, and what a meter can read at all.

use super::bands::MOST_REFLECTANCE;
use crate::error::Error;
use crate::swatches::calibrate::Seen;
use crate::text::limits::within;

/// One measured sample.
#[derive(Clone, Debug, PartialEq)]
pub struct Measurement {
    /// What the file calls it, else its number in the file; never empty.
    pub name: String,
    /// What the meter read.
    pub seen: Seen,
}

/// Refuses what no meter reads of a surface.
pub(crate) fn check(seen: &Seen) -> Result<(), Error> {
    match seen {
        Seen::Spectrum(reflectance) => {
            reflectance.iter().try_for_each(|value| within("reflectance", *value, [0.0, MOST_REFLECTANCE]))
        }
        Seen::Lab(lab) => {
            within("L*", lab.l, [0.0, 100.0])?;
            within("a*", lab.a, OPPONENT)?;
            within("b*", lab.b, OPPONENT)
        }
    }
}

/// Every colour of a surface lies well within.
const OPPONENT: [f64; 2] = [-150.0, 150.0];
