//! The painter's own paints, as they were described.

use crate::colour::hue::{Hue, NEAR_GREY};
use crate::colour::{Lab, chroma};
use crate::error::Error;
use crate::mixing::load::Load;
use crate::mixing::recipe::Recipe;
use crate::optics::film::Film;
use crate::optics::observer::Light;
use crate::optics::paper::{KitPaper, Stock};
use crate::optics::view::View;
use crate::paint::number::PaintNumber;
use crate::paint::shelf::Shelf;
use crate::paint::{DoubtLeft, Paint, Tier};
use crate::swatches::own_id::OwnId;
use crate::swatches::patch::{Patch, Wash};
use crate::text::limits::within;
use crate::text::words::{clean, short_line};

/// Longest name of an own paint, in characters.
pub const LONGEST_PAINT_NAME: usize = 40;

/// Longest pigment line, in characters; `PB29 PV19`.
const LONGEST_CODE: usize = 24;

/// Longest caution, in characters.
const LONGEST_CAUTION: usize = 160;

/// What a painter's own paint was made from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Origin {
    /// Swatches of it alone on a paper: masstone, and perhaps a wash.
    Swatches {
        /// The paper they lie on.
        paper: KitPaper,
        /// As heavy as the paint is painted out: load 1.
        masstone: Patch,
        /// Thinned with water.
        wash: Option<Wash>,
    },
    /// A mixture of paints of the built-in shelf, filled as one.
    Mixture(Recipe),
}

/// A painter's own paint.
///
/// What it was made from is what it is, not the film: so it travels in few bytes,
/// and a better fit in a later program makes it better.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OwnPaint {
    name: String,
    code: String,
    caution: String,
    ratings: [Option<u8>; 4],
    origin: Origin,
    id: Option<OwnId>,
}

/// Ratings in the order they are kept, with their least and greatest value.
const RATINGS: [(&str, u8, u8); 4] =
    [("transparency", 0, 4), ("staining", 0, 4), ("granulation", 0, 4), ("lightfastness", 1, 8)];

impl OwnPaint {
    /// A paint of this origin. Control characters in the name become spaces.
    ///
    /// # Errors
    ///
    /// No name or one longer than [`LONGEST_PAINT_NAME`]; a mixture that holds
    /// an own paint; a wash whose load is not between 1/32 and masstone.
    pub fn new(name: &str, origin: Origin) -> Result<Self, Error> {
        let name = short_line(name, "a paint's name", LONGEST_PAINT_NAME)?;
        if name.is_empty() {
            return Err(Error::Missing("a paint needs a name"));
        }
        match &origin {
            Origin::Mixture(recipe)
                if recipe.parts().iter().any(|part| part.paint >= PaintNumber::FIRST_OWN) =>
            {
                return Err(Error::Refused("a mixture is made of paints of the built-in shelf"));
            }
            Origin::Swatches { wash: Some(wash), .. } if wash.load >= Load::MASSTONE => {
                return Err(Error::Refused("a wash is thinner than masstone, down to 1/32 of it"));
            }
            _ => {}
        }
        Ok(Self { name, code: String::new(), caution: String::new(), ratings: [None; 4], origin, id: None })
    }

    /// The same with a pigment line, as on the label.
    ///
    /// # Errors
    ///
    /// Longer than 24 characters.
    pub fn with_code(self, code: &str) -> Result<Self, Error> {
        Ok(Self { code: short_line(code, "the pigments", LONGEST_CODE)?, ..self })
    }

    /// The same with a caution of the painter's.
    ///
    /// # Errors
    ///
    /// Longer than 160 characters.
    pub fn with_caution(self, caution: &str) -> Result<Self, Error> {
        Ok(Self { caution: short_line(caution, "the caution", LONGEST_CAUTION)?, ..self })
    }

    /// The same with transparency, staining and granulation, 0 to 4, and a Blue Wool grade, 1 to 8.
    ///
    /// # Errors
    ///
    /// A rating out of its range.
    pub fn with_ratings(self, ratings: [Option<u8>; 4]) -> Result<Self, Error> {
        for ((name, least, most), rating) in RATINGS.into_iter().zip(ratings) {
            if let Some(rating) = rating {
                within(name, rating.into(), [least.into(), most.into()])?;
            }
        }
        Ok(Self { ratings, ..self })
    }

    /// The same under this id.
    #[must_use]
    pub fn with_id(self, id: OwnId) -> Self {
        Self { id: Some(id), ..self }
    }

    /// Its id; none of a paint that was described before paints had ids.
    #[must_use]
    pub const fn id(&self) -> Option<OwnId> {
        self.id
    }

    /// Takes out of its texts what nobody sees.
    pub fn clean(&mut self) {
        [&mut self.name, &mut self.code, &mut self.caution].into_iter().for_each(clean);
        if self.name.is_empty() {
            self.name.push_str("unnamed");
        }
    }

    /// Calls it by a name and a number, which stand where the name's end has no room.
    pub(crate) fn rename(&mut self, name: &str, number: usize) {
        let number = format!(" {number}");
        self.name = name.chars().take(LONGEST_PAINT_NAME - number.len()).collect::<String>() + &number;
    }

    /// Its name, never empty.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Its pigments, perhaps empty.
    #[must_use]
    pub fn code(&self) -> &str {
        &self.code
    }

    /// What to beware of, in the painter's words; perhaps empty.
    #[must_use]
    pub fn caution(&self) -> &str {
        &self.caution
    }

    /// Transparency, staining, granulation and lightfastness, as [`Self::with_ratings`] takes them.
    #[must_use]
    pub const fn ratings(&self) -> [Option<u8>; 4] {
        self.ratings
    }

    /// What it was made from.
    #[must_use]
    pub const fn origin(&self) -> &Origin {
        &self.origin
    }

    /// The paint itself, under a number. `film` is that of its swatches,
    /// [`Self::film_of_swatches`]; a mixture's is what its recipe makes of paints of `shelf`.
    ///
    /// What was not rated is taken from the mixture's paints or left open.
    ///
    /// # Errors
    ///
    /// [`Error::UnknownPaint`] for a mixture of a paint that `shelf` lacks;
    /// [`Error::UnknownFilm`] for swatches without their film.
    pub fn paint(&self, number: PaintNumber, film: Option<&Film>, shelf: &Shelf) -> Result<Paint, Error> {
        let blank = Paint {
            number,
            key: key_of(&self.name),
            code: self.code.clone(),
            name: self.name.clone(),
            aliases: Vec::new(),
            family: String::new(),
            hue: String::new(),
            transparency: None,
            staining: None,
            granulation: None,
            lightfast_tint: None,
            lightfast_masstone: None,
            caution: String::new(),
            strength_source: String::new(),
            tier: Tier::Swatched,
            source: String::new(),
            film: Film::CLEAR,
            doubt_left: DoubtLeft::ALL,
        };
        let mut paint = match &self.origin {
            Origin::Swatches { masstone, wash, .. } => {
                let lacking = || Error::UnknownFilm(self.name.clone());
                Self::of_swatches(blank, masstone, wash.as_ref(), film.ok_or_else(lacking)?)
            }
            Origin::Mixture(recipe) => Self::of_mixture(blank, recipe, shelf)?,
        };
        let [transparency, staining, granulation, lightfast] =
            self.ratings.map(|rating| rating.map(f32::from));
        paint.transparency = transparency.or(paint.transparency);
        paint.staining = staining.or(paint.staining);
        paint.granulation = granulation.or(paint.granulation);
        paint.lightfast_tint = lightfast.or(paint.lightfast_tint);
        if !self.caution.is_empty() {
            paint.caution.clone_from(&self.caution);
        }
        Ok(paint)
    }

    fn of_swatches(blank: Paint, masstone: &Patch, wash: Option<&Wash>, film: &Film) -> Paint {
        let is_measured = |patch: &Patch| matches!(patch, Patch::Measured(_));
        let measured = is_measured(masstone) && wash.is_none_or(|wash| is_measured(&wash.patch));
        let lab = masstone.seen().lab();
        Paint {
            hue: hue_word(Lab::new(lab.l as f32, lab.a as f32, lab.b as f32)).to_owned(),
            tier: if measured && wash.is_some() { Tier::OwnMeasured } else { Tier::Swatched },
            source: if measured { "your measurement" } else { "your swatches" }.to_owned(),
            film: film.clone(),
            ..blank
        }
    }

    fn of_mixture(blank: Paint, recipe: &Recipe, shelf: &Shelf) -> Result<Paint, Error> {
        let parts: Vec<&Paint> =
            recipe.parts().iter().map(|part| shelf.get(part.paint)).collect::<Result<_, _>>()?;
        let least = |rating: fn(&Paint) -> Option<f32>| -> Option<f32> {
            parts.iter().map(|paint| rating(paint)).collect::<Option<Vec<_>>>()?.into_iter().reduce(f32::min)
        };
        let most = |rating: fn(&Paint) -> Option<f32>| -> Option<f32> {
            parts.iter().map(|paint| rating(paint)).collect::<Option<Vec<_>>>()?.into_iter().reduce(f32::max)
        };
        let film = recipe.film(shelf)?;
        let paper = Stock::BrightWhite.paper();
        let colour = View::new(&paper, Light::D65).colour(&film, 1.0);
        let mut cautions: Vec<&str> =
            parts.iter().map(|paint| paint.caution.as_str()).filter(|text| !text.is_empty()).collect();
        cautions.dedup();
        Ok(Paint {
            hue: hue_word(colour).to_owned(),
            // Cautious where paints differ: a mixture hides, stains and grains as its most willing
            // paint and fades with its most fleeting (common practice, no source).
            transparency: least(|paint| paint.transparency),
            staining: most(|paint| paint.staining),
            granulation: most(|paint| paint.granulation),
            lightfast_tint: least(|paint| paint.lightfast_tint),
            lightfast_masstone: least(|paint| paint.lightfast_masstone),
            caution: cautions.join(" "),
            tier: parts.iter().map(|paint| paint.tier).max().unwrap_or(Tier::Estimated),
            source: "a mixture of paints of the shelf".to_owned(),
            film,
            ..blank
        })
    }
}

/// Key of an own paint: it is told from the shelf's by its prefix. Letters beyond ASCII keep their case.
fn key_of(name: &str) -> String {
    format!("own:{}", name.to_ascii_lowercase())
}

/// Hue family of a masstone, in a word.
fn hue_word(lab: Lab) -> &'static str {
    match chroma(lab) {
        grey if grey > NEAR_GREY => Hue::of(lab).name(),
        _ if lab.l < 35.0 => "black",
        _ if lab.l > 90.0 => "white",
        _ => "grey",
    }
}

#[cfg(test)]
#[path = "own_paint_tests.rs"]
mod tests;
