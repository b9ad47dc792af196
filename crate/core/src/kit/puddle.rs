//! Puddles: mixes kept on the palette.

use crate::error::Error;
use crate::mixing::load::Load;
use crate::mixing::recipe::Recipe;

/// A recipe at a load. The load is kept in quarter octaves, finer than a brush.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Puddle {
    recipe: Recipe,
    load: Load,
}

impl Puddle {
    /// A recipe at the quarter octave nearest to a load.
    ///
    /// # Errors
    ///
    /// [`Error::Load`] for a load that is not within 1/32 and 4.
    ///
    /// ```
    /// use washpath_core::{Puddle, Recipe};
    /// assert_eq!(Puddle::new(Recipe::paint(1.into()), 0.26)?.load().value(), 0.25);
    /// assert!(Puddle::new(Recipe::paint(1.into()), 0.0).is_err());
    /// # Ok::<(), washpath_core::Error>(())
    /// ```
    pub fn new(recipe: Recipe, load: f32) -> Result<Self, Error> {
        let kept = Load::nearest(load).ok_or(Error::Load { load, of: "a puddle" })?;
        Ok(Self::at(recipe, kept))
    }

    /// A recipe at one of the loads that are kept.
    #[must_use]
    pub const fn at(recipe: Recipe, load: Load) -> Self {
        Self { recipe, load }
    }

    /// What it is mixed of.
    #[must_use]
    pub const fn recipe(&self) -> &Recipe {
        &self.recipe
    }

    /// Its load, 1/32 to 4; 1 is masstone.
    #[must_use]
    pub const fn load(&self) -> Load {
        self.load
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::text::decimal::Decimal;

    #[test]
    fn limits_are_named() {
        for load in [0.0, -1.0, 0.02, 5.0, f32::NAN, f32::INFINITY] {
            let error = Puddle::new(Recipe::paint(1.into()), load).unwrap_err().to_string();
            assert_eq!(error, format!("load {}: a puddle's is within 1/32 and 4", Decimal(load)));
        }
    }
}
