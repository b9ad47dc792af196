//! The papers a wash may lie on.

use crate::colour::Lab;
use crate::error::Error;
use crate::optics::smooth::reflectance_below;
use crate::optics::spectrum::{Spectrum, from_fn, wavelength};
use crate::optics::surface::Surface;

/// A paper, by the reflectance a meter reads of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Paper {
    /// What the painter calls it.
    pub name: String,
    /// Measured reflectance, 0 to 1, its own surface included.
    pub reflectance: Spectrum<f64>,
}

/// Darkest paper that washes are still seen on, L*: a little above what the surface alone sends back, 20.04.
pub const DARKEST_PAPER: f32 = 21.0;

impl Paper {
    /// A paper of this colour in D65, by a smooth curve.
    ///
    /// The curve never falls below what the surface alone sends back, as no
    /// real sheet's does.
    ///
    /// # Errors
    ///
    /// [`Error::DarkPaper`] for a colour darker than L* 21, [`Error::Colour`] for one too near a
    /// perfect white, or too vivid for a sheet.
    ///
    /// ```
    /// use washpath_core::{Lab, Paper};
    /// assert!(Paper::of_colour("kraft", Lab::new(62.0, 7.0, 22.0)).is_ok());
    /// assert!(Paper::of_colour("night", Lab::new(12.0, 0.0, -8.0)).is_err());
    /// ```
    pub fn of_colour(name: &str, colour: Lab) -> Result<Self, Error> {
        let lab = [colour.l, colour.a, colour.b];
        if colour.l < DARKEST_PAPER {
            return Err(Error::DarkPaper { lab, darkest: DARKEST_PAPER });
        }
        let wide = Lab::new(colour.l.into(), colour.a.into(), colour.b.into());
        match reflectance_below(wide, Surface::WASH) {
            Some(reflectance) => Ok(Self { name: name.to_owned(), reflectance }),
            None => Err(Error::Colour { lab, what: "a paper: no sheet is as white or as vivid as this" }),
        }
    }
}

/// A painter's own paper, by its colour to the nearest half of L*, a* and b*.
///
/// Half a unit is less than two sheets of one block differ by.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct OwnPaper {
    halves: [i16; 3],
}

impl OwnPaper {
    /// Of a colour in D65.
    ///
    /// # Errors
    ///
    /// As [`Paper::of_colour`].
    pub fn new(colour: Lab) -> Result<Self, Error> {
        Paper::of_colour(OWN, colour)?;
        Self::of_halves([colour.l, colour.a, colour.b].map(|value| (2.0 * value).round() as i16))
    }

    /// Of twice L*, a* and b*; refused as [`Self::new`] refuses.
    pub(crate) fn of_halves(halves: [i16; 3]) -> Result<Self, Error> {
        let own = Self { halves };
        own.paper().map(|_| own)
    }

    pub(crate) const fn halves(self) -> [i16; 3] {
        self.halves
    }

    /// Its colour in D65.
    #[must_use]
    pub fn colour(self) -> Lab {
        let [l, a, b] = self.halves.map(|half| 0.5 * f32::from(half));
        Lab::new(l, a, b)
    }

    /// The paper itself.
    ///
    /// # Errors
    ///
    /// As [`Paper::of_colour`]; none for a paper that [`Self::new`] made.
    pub fn paper(self) -> Result<Paper, Error> {
        Paper::of_colour(OWN, self.colour())
    }
}

/// What a painter's own paper is called.
const OWN: &str = "own paper";

/// The papers offered by name.
///
/// Their curves are our own smooth ones, drawn from memory of what such papers
/// look like: a level in the red, and a fall towards the violet. Real sheets
/// differ by a few percent. Links carry their numbers.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Stock {
    /// Bright white watercolour paper, L* 97.
    #[default]
    BrightWhite = 0,
    /// Natural white, undyed, L* 95.
    Natural = 1,
    /// Cream, L* 92.
    Cream = 2,
    /// Neutral mid grey, L* 66.
    Grey = 3,
    /// Tan, as a toned sketchbook, L* 70.
    Tan = 4,
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
        // Level in the red, depth of the fall at 380 nm, its length in nm.
        let (level, fall, length) = match self {
            Self::BrightWhite => (0.930, 0.10, 30.0),
            Self::Natural => (0.905, 0.22, 60.0),
            Self::Cream => (0.880, 0.38, 90.0),
            Self::Grey => (0.360, 0.03, 60.0),
            Self::Tan => (0.540, 0.38, 170.0),
        };
        let reflectance = from_fn(|band| level - fall * (-f64::from(wavelength(band) - 380) / length).exp());
        Paper { name: self.name().to_owned(), reflectance }
    }
}

/// The paper a kit paints on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum KitPaper {
    /// One of those offered by name.
    Stock(Stock),
    /// The painter's own.
    Own(OwnPaper),
}

impl KitPaper {
    /// The paper itself.
    ///
    /// # Errors
    ///
    /// As [`OwnPaper::paper`].
    pub fn paper(self) -> Result<Paper, Error> {
        match self {
            Self::Stock(stock) => Ok(stock.paper()),
            Self::Own(own) => own.paper(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Film, Light, View, compare};

    #[test]
    fn a_paper_is_seen_in_its_colour() {
        for (l, a, b) in
            [(97.0, 0.0, 1.5), (88.0, 1.0, 14.0), (62.0, 7.0, 22.0), (30.0, 2.0, -9.0), (45.0, -20.0, 8.0)]
        {
            let colour = Lab::new(l, a, b);
            let view = View::new(&Paper::of_colour("own", colour).unwrap(), Light::D65);
            let found = compare(view.colour(&Film::CLEAR, 1.0), colour);
            assert!(found.delta_e < 0.1, "{colour:?}: {}", found.delta_e);
        }
    }

    #[test]
    fn an_own_paper_keeps_half_units() {
        let own = OwnPaper::new(Lab::new(88.2, -1.3, 14.26)).unwrap();
        assert_eq!(own.colour(), Lab::new(88.0, -1.5, 14.5));
        assert_eq!(OwnPaper::new(own.colour()), Ok(own));
        assert!(OwnPaper::new(Lab::new(20.9, 0.0, 0.0)).is_err());
    }

    #[test]
    fn what_is_no_paper_is_refused_in_words() {
        let refusal = |l, a, b| Paper::of_colour("own", Lab::new(l, a, b)).unwrap_err().to_string();
        assert_eq!(
            refusal(10.0, 0.0, 0.0),
            "L* 10 a* 0 b* 0 cannot be a paper: washes are not seen on paper darker than L* 21"
        );
        for odd in [f32::NAN, f32::INFINITY, f32::MAX] {
            assert!(refusal(odd, 0.0, 0.0).ends_with("no sheet is as white or as vivid as this"));
            assert!(refusal(50.0, odd, 0.0).ends_with("no sheet is as white or as vivid as this"));
        }
        assert!(Paper::of_colour("black", Lab::new(DARKEST_PAPER, 0.0, 0.0)).is_ok());
        assert!(refusal(50.0, 120.0, 0.0).ends_with("vivid as this"));
    }
}
