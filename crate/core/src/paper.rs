//! The papers a wash may lie on.

use crate::spectrum::{Spectrum, from_fn, wavelength};

/// A paper, by the reflectance a meter reads of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Paper {
    /// What the painter calls it.
    pub name: String,
    /// Measured reflectance, 0 to 1, its own surface included.
    pub reflectance: Spectrum<f64>,
}

/// The papers offered by name.
///
/// Their curves are our own smooth ones, drawn from memory of what such papers
/// look like: a level in the red, and a fall towards the violet. Real sheets
/// differ by a few percent.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Stock {
    /// Bright white watercolour paper, L* 97.
    #[default]
    BrightWhite,
    /// Natural white, undyed, L* 95.
    Natural,
    /// Cream, L* 92.
    Cream,
    /// Neutral mid grey, L* 66.
    Grey,
    /// Tan, as a toned sketchbook, L* 70.
    Tan,
}

impl Stock {
    /// Every stock, in the order of its numbers in a link.
    pub const ALL: [Self; 5] = [Self::BrightWhite, Self::Natural, Self::Cream, Self::Grey, Self::Tan];

    /// Name for a painter.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::BrightWhite => "bright white",
            Self::Natural => "natural white",
            Self::Cream => "cream",
            Self::Grey => "grey",
            Self::Tan => "tan",
        }
    }

    /// The paper itself.
    #[must_use]
    pub fn paper(self) -> Paper {
        // Level in the red, depth of the fall at 380 nm, its reach in nm.
        let (level, fall, reach) = match self {
            Self::BrightWhite => (0.930, 0.10, 30.0),
            Self::Natural => (0.905, 0.22, 60.0),
            Self::Cream => (0.880, 0.38, 90.0),
            Self::Grey => (0.360, 0.03, 60.0),
            Self::Tan => (0.540, 0.38, 170.0),
        };
        let reflectance = from_fn(|band| level - fall * (-f64::from(wavelength(band) - 380) / reach).exp());
        Paper { name: self.name().to_owned(), reflectance }
    }
}
