//! Targets: what the painter wants to reach; the page calls a set of them a place.

use crate::colour::Lab;
use crate::colour::gamut::{GAMUT_STEP, gamut};
use crate::error::Error;
use crate::text::limits::counted;

/// Most colours of a set of targets.
pub const MOST_COLOURS: usize = 2_000;

/// A colour to be reached.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Target {
    /// The colour.
    pub colour: Lab,
    /// How much it counts beside the others, from 0 up.
    pub weight: f32,
}

impl Target {
    /// A colour of this weight.
    #[must_use]
    pub const fn new(colour: Lab, weight: f32) -> Self {
        Self { colour, weight }
    }
}

/// Target colours with weights, none of them negative, the sum above 0.
#[derive(Clone, Debug, PartialEq)]
pub struct Targets {
    colours: Vec<Lab>,
    weights: Vec<f32>,
}

impl Targets {
    /// Targets of these colours.
    ///
    /// # Errors
    ///
    /// No colour, more than 2,000, a colour that is not finite, a
    /// weight that is negative or not finite, no weight above 0.
    pub fn new(colours: &[Target]) -> Result<Self, Error> {
        counted(colours.len(), 1..=MOST_COLOURS, "colours", "a place holds")?;
        for Target { colour, weight } in colours {
            if ![colour.l, colour.a, colour.b].iter().all(|value| value.is_finite()) {
                return Err(Error::NotFinite("a colour of the place"));
            }
            if !weight.is_finite() || *weight < 0.0 {
                return Err(Error::Weight(*weight));
            }
        }
        let targets = Self::of(colours.iter().copied());
        let sum = targets.weights.iter().sum::<f32>();
        if sum > 0.0 && sum.is_finite() {
            Ok(targets)
        } else {
            Err(Error::Missing("a place needs at least one weight above 0"))
        }
    }

    /// The gamut of real surfaces, every colour with the same weight.
    #[must_use]
    pub fn gamut() -> Self {
        Self::of(gamut().iter().map(|lab| Target::new(*lab, 1.0)))
    }

    /// Every second colour of the gamut, as on a chessboard of three dimensions: as even, half as many.
    #[must_use]
    pub fn sparse_gamut() -> Self {
        let even = |lab: &&Lab| ((lab.l + lab.a + lab.b) as i32 / GAMUT_STEP) % 2 == 0;
        Self::of(gamut().iter().filter(even).map(|lab| Target::new(*lab, 1.0)))
    }

    /// Its colours.
    #[must_use]
    pub fn colours(&self) -> &[Lab] {
        &self.colours
    }

    /// Their weights, in the same order.
    #[must_use]
    pub fn weights(&self) -> &[f32] {
        &self.weights
    }

    pub(crate) fn of(targets: impl Iterator<Item = Target>) -> Self {
        let (colours, weights) = targets.map(|target| (target.colour, target.weight)).unzip();
        Self { colours, weights }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn limits_are_named() {
        let grey = Lab::new(50.0, 0.0, 0.0);
        let error = |colours: &[Target]| Targets::new(colours).unwrap_err().to_string();
        assert_eq!(error(&[]), "0 colours: a place holds 1 to 2000");
        assert_eq!(error(&[Target::new(grey, -1.0)]), "weight -1: a weight is a number from 0 up");
        assert_eq!(error(&[Target::new(grey, 0.0)]), "a place needs at least one weight above 0");
        assert_eq!(
            error(&[Target::new(Lab::new(f32::NAN, 0.0, 0.0), 1.0)]),
            "a colour of the place is not finite"
        );
        assert_eq!(Targets::new(&[Target::new(grey, 2.0)]).unwrap().weights(), [2.0]);
    }
}
