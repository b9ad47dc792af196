//! Puddles: mixes kept on the palette.

use crate::error::Error;
use crate::mixing::recipe::Recipe;
use crate::text::decimal::Decimal;

/// Thinnest and heaviest load in quarter octaves: a thirty-second of masstone to four times masstone.
const STOPS: std::ops::RangeInclusive<i8> = -20..=8;

/// A recipe at a load. The load is kept in quarter octaves, finer than a brush.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Puddle {
    recipe: Recipe,
    stop: i8,
}

impl Puddle {
    /// A recipe at the quarter octave nearest to a load.
    ///
    /// # Errors
    ///
    /// [`Error::Value`] for a load that is not within 1/32 and 4.
    ///
    /// ```
    /// use washpath_core::{Puddle, Recipe};
    /// assert_eq!(Puddle::new(Recipe::paint(1), 0.26)?.load(), 0.25);
    /// assert!(Puddle::new(Recipe::paint(1), 0.0).is_err());
    /// # Ok::<(), washpath_core::Error>(())
    /// ```
    pub fn new(recipe: Recipe, load: f32) -> Result<Self, Error> {
        let stop = (4.0 * load.log2()).round();
        // NaN would be cast to 0, masstone.
        Self::at_stop(recipe, if stop.is_nan() { i8::MAX } else { stop as i8 })
            .ok_or_else(|| Error::Value(format!("load {}: a puddle's is within 1/32 and 4", Decimal(load))))
    }

    /// The recipe at a load of so many quarter octaves, if a puddle may have it.
    pub(crate) fn at_stop(recipe: Recipe, stop: i8) -> Option<Self> {
        STOPS.contains(&stop).then_some(Self { recipe, stop })
    }

    /// What it is mixed of.
    #[must_use]
    pub const fn recipe(&self) -> &Recipe {
        &self.recipe
    }

    /// Its load, 1/32 to 4; 1 is masstone.
    #[must_use]
    pub fn load(&self) -> f32 {
        (0.25 * f32::from(self.stop)).exp2()
    }

    /// Its load in quarter octaves; 0 is masstone.
    pub(crate) const fn stop(&self) -> i8 {
        self.stop
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn loads_keep_their_quarter_octave() {
        for stop in STOPS {
            let load = (0.25 * f32::from(stop)).exp2();
            let puddle = Puddle::new(Recipe::paint(1), load * 1.05).unwrap();
            assert_eq!((puddle.stop(), puddle.load()), (stop, load));
        }
        for load in [0.0, -1.0, 0.02, 5.0, f32::NAN, f32::INFINITY] {
            let error = Puddle::new(Recipe::paint(1), load).unwrap_err().to_string();
            assert_eq!(error, format!("load {}: a puddle's is within 1/32 and 4", Decimal(load)));
        }
    }
}
