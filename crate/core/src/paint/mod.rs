//! A paint: its film, its names and what else a painter asks of it.

pub(crate) mod number;
pub mod packed;
pub mod rating;
pub(crate) mod shelf;
pub(crate) mod texture;

use crate::optics::film::Film;
use crate::paint::number::PaintNumber;
use crate::paint::rating::{GRANULATES, TRANSPARENT};

/// How far predictions are expected to be off, CIEDE2000.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ExpectedError {
    /// Half of them are nearer.
    pub median: f32,
    /// Nine of ten are nearer.
    pub p90: f32,
}

/// How well a paint's spectrum is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[non_exhaustive]
pub enum Tier {
    /// Measured, and a second independent measurement agrees.
    CrossChecked,
    /// Measured once.
    Measured,
    /// The painter measured its spectrum, as masstone and as a wash.
    OwnMeasured,
    /// Made from colours of the painter's swatches.
    Swatched,
    /// Reconstructed from measured colours and its chemical relatives.
    Estimated,
}

impl Tier {
    /// The word in tables and on the page.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::CrossChecked => "cross-checked",
            Self::Measured => "measured",
            Self::OwnMeasured => "your measurement",
            Self::Swatched => "from your swatches",
            Self::Estimated => "estimated",
        }
    }

    /// What not knowing its spectrum better adds to a mix.
    ///
    /// Of one such paint with paints that are exactly known; errors of two add
    /// as squares. Cross-validated by `leave_one_out` and `second_spectra` of
    /// `washpath-library`, whose tests hold these numbers; its page says how.
    /// A second set that agrees in shape did not bring the two films nearer, so
    /// the first two tiers share a figure. Makers and the painter's hand come on top.
    /// Those of own paints are measured paints of the shelf remade from two swatches,
    /// read by eye (1.5 off in each of L*, a*, b*) or by a meter (0.003 of reflectance):
    /// `swatched.rs` holds them.
    #[must_use]
    pub const fn expected_error(self) -> ExpectedError {
        let (median, p90) = match self {
            Self::CrossChecked | Self::Measured => (1.2, 4.6),
            Self::OwnMeasured => (1.2, 5.4),
            Self::Swatched => (1.8, 6.5),
            Self::Estimated => (1.9, 6.6),
        };
        ExpectedError { median, p90 }
    }

    /// Whether it is the painter's own paint that was looked at: makers do not differ in it.
    #[must_use]
    pub const fn is_own(self) -> bool {
        matches!(self, Self::OwnMeasured | Self::Swatched)
    }

    pub(crate) fn parse(word: &str) -> Option<Self> {
        [Self::CrossChecked, Self::Measured, Self::Estimated].into_iter().find(|tier| tier.name() == word)
    }
}

/// One paint.
///
/// Ratings are averages over makers and sheets (MacEvoy, handprint.com/HP/WCL), as
/// `crate/library/src/ratings.rs` turns them into the page's words, and are missing where nobody rated.
#[derive(Clone, Debug, PartialEq)]
pub struct Paint {
    /// Permanent number, from 1.
    pub number: PaintNumber,
    /// Permanent key in lower case; `pbr7-burnt-sienna`.
    pub key: String,
    /// Colour Index name; `PBr7`.
    pub code: String,
    /// Generic name; `Burnt sienna`.
    pub name: String,
    /// Further generic names.
    pub aliases: Vec<String>,
    /// Chemical class of the pigment.
    pub family: String,
    /// Hue family of its masstone, in words.
    pub hue: String,
    /// 0 opaque to 4 transparent.
    pub transparency: Option<f32>,
    /// 0 lifts off to 4 stains.
    pub staining: Option<f32>,
    /// 0 smooth to 4 granulates.
    pub granulation: Option<f32>,
    /// Blue Wool grade of its tint, 1 fleeting to 8 excellent.
    pub lightfast_tint: Option<f32>,
    /// Blue Wool grade of its masstone.
    pub lightfast_masstone: Option<f32>,
    /// What to beware of; empty where ordinary care does.
    pub caution: String,
    /// Where the film's strength comes from.
    pub strength_source: String,
    /// How well the spectrum is known.
    pub tier: Tier,
    /// Where the spectrum and the anchoring colour come from.
    pub source: String,
    /// Absorption and scattering per unit load.
    pub film: Film,
    /// What is still not known of it once records were learned from.
    pub doubt_left: DoubtLeft,
}

/// The part of what was not known of a paint that is left, 0 to 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DoubtLeft {
    /// Of the paint alone.
    pub alone: f32,
    /// In mixes.
    pub mixed: f32,
}

impl DoubtLeft {
    /// Before anything was learned.
    pub const ALL: Self = Self { alone: 1.0, mixed: 1.0 };
}

/// What records taught of a paint.
#[derive(Clone, Debug, PartialEq)]
pub struct Learned {
    /// The paint.
    pub number: PaintNumber,
    /// Its film as it is now expected.
    pub film: Film,
    /// As [`Paint::doubt_left`].
    pub doubt_left: DoubtLeft,
}

impl Paint {
    /// The lower Blue Wool grade of its tint and masstone, where one is known.
    #[must_use]
    pub fn lightfastness(&self) -> Option<f32> {
        match (self.lightfast_tint, self.lightfast_masstone) {
            (Some(tint), Some(masstone)) => Some(tint.min(masstone)),
            (tint, masstone) => tint.or(masstone),
        }
    }

    /// Whether it granulates: rated 2 or more of 4.
    #[must_use]
    pub fn granulates(&self) -> bool {
        self.granulation.is_some_and(|rating| rating >= GRANULATES)
    }

    /// Whether it is transparent: rated 3 or more of 4.
    #[must_use]
    pub fn is_transparent(&self) -> bool {
        self.transparency.is_some_and(|rating| rating >= TRANSPARENT)
    }

    /// Whether it is an earth: iron oxides and humic earths, natural or made, blacks excepted.
    #[must_use]
    pub fn is_earth(&self) -> bool {
        let earthy = ["iron oxide", "iron manganese", "earth"].iter().any(|word| self.family.contains(word));
        earthy && self.hue != "black"
    }
}
