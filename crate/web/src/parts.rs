//! Recipes, pans and paints as the page writes them.

use serde::{Serialize, Serializer};
use washpath_core::{Error, PaintNumber, Pan, Part, Ratio, Recipe};
use wasm_bindgen::prelude::{JsError, JsValue};

use crate::from_page::FromPage;

/// Whole parts of paints: `[[number, parts], ...]`; empty where nothing is chosen.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Parts(pub Vec<Part>);

impl Parts {
    pub(crate) fn of(recipe: &Recipe) -> Self {
        Self(recipe.parts().to_vec())
    }

    pub(crate) fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    pub(crate) fn recipe(&self) -> Result<Recipe, Error> {
        Recipe::new(&self.0)
    }
}

impl FromPage for Parts {
    fn from_page(value: &JsValue) -> Result<Self, String> {
        Vec::from_page(value).map(Self)
    }
}

impl Serialize for Parts {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_seq(self.0.iter().map(|part| (part.paint.get(), part.parts)))
    }
}

/// A ratio as the page has it: both parts, the first's before the second's.
pub(crate) fn two_parts<S: Serializer>(ratio: &Ratio, serializer: S) -> Result<S::Ok, S::Error> {
    ratio.parts().serialize(serializer)
}

impl FromPage for Part {
    fn from_page(value: &JsValue) -> Result<Self, String> {
        let (paint, parts) = FromPage::from_page(value)?;
        Ok(Self { paint, parts })
    }
}

impl FromPage for PaintNumber {
    fn from_page(value: &JsValue) -> Result<Self, String> {
        u16::from_page(value).map(Self::new)
    }
}

pub(crate) fn paints_of(numbers: &[u16]) -> Vec<PaintNumber> {
    numbers.iter().copied().map(PaintNumber::new).collect()
}

/// Paints of a pan: one, or two side by side.
pub(crate) struct PanPaints(pub Vec<PaintNumber>);

impl FromPage for PanPaints {
    fn from_page(value: &JsValue) -> Result<Self, String> {
        Vec::from_page(value).map(Self)
    }
}

impl Serialize for PanPaints {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_seq(self.0.iter().map(|paint| paint.get()))
    }
}

impl PanPaints {
    pub(crate) fn pan(&self) -> Result<Pan, JsError> {
        match self.0[..] {
            [paint] => Ok(Pan::Whole(paint)),
            [left, right] => Ok(Pan::Split(left, right)),
            _ => Err(JsError::new(&format!("a pan holds one paint or two, not {}", self.0.len()))),
        }
    }
}
