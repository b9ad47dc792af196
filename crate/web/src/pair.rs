//! Two ends of a path, as the page names them.

use washpath_core::{Doubt, Error, Film, Laid, Path, Recipe, Sheet, View};
use wasm_bindgen::JsValue;

use crate::from_page::{Fields, FromPage};
use crate::parts::Parts;
use crate::shelf::shelf;

/// Two ends, and whether they are mixed or glazed.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Pair {
    /// A and B.
    pub ends: [Parts; 2],
    /// Number of the way they are laid, in the order of [`Laid::ALL`].
    pub laid: usize,
}

impl FromPage for Pair {
    fn from_page(value: &JsValue) -> Result<Self, String> {
        let fields = Fields::of(value)?;
        Ok(Self { ends: fields.get("ends")?, laid: fields.get::<Option<_>>("laid")?.unwrap_or_default() })
    }
}

/// A pair whose films are at hand.
pub(crate) struct Ready {
    pub recipes: [Recipe; 2],
    pub doubts: [Doubt; 2],
    films: [Film; 2],
    laid: Laid,
}

impl Pair {
    /// Nothing where an end is not chosen.
    pub(crate) fn ready(&self) -> Result<Option<Ready>, Error> {
        if self.ends.iter().any(Parts::is_empty) {
            return Ok(None);
        }
        let shelf = shelf();
        let [a, b] = &self.ends;
        let recipes = [a.recipe()?, b.recipe()?];
        Ok(Some(Ready {
            doubts: [recipes[0].doubt(&shelf)?, recipes[1].doubt(&shelf)?],
            films: [recipes[0].film(&shelf)?, recipes[1].film(&shelf)?],
            laid: Laid::ALL.get(self.laid).copied().unwrap_or_default(),
            recipes,
        }))
    }
}

impl Ready {
    pub(crate) fn path<'a>(&'a self, view: &'a View, load: f32) -> Path<'a> {
        self.path_laid(self.laid, view, load)
    }

    pub(crate) fn path_laid<'a>(&'a self, laid: Laid, view: &'a View, load: f32) -> Path<'a> {
        Path::new(&self.films[0], &self.films[1], view, load).laid(laid)
    }

    pub(crate) fn sheet(&self, view: &View, shares: &[f32], loads: &[f32]) -> Sheet {
        Sheet::new(&self.films[0], &self.films[1], self.laid, view, shares, loads)
    }

    /// How far a place on a path of the pair may be off, median CIEDE2000.
    pub(crate) fn expected(&self, path: &Path<'_>, share: f32) -> f32 {
        Doubt::between(self.doubts[0], self.doubts[1], share).error_where(path.steepness(share))
    }
}
