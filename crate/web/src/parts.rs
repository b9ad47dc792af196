//! Recipes and pans as the page writes them.

use washpath_core::{PaintNumber, Pan, Recipe};
use wasm_bindgen::JsError;

/// Whole parts of paints: `[[number, parts], ...]`; empty where nothing is chosen.
pub(crate) type Parts = Vec<(PaintNumber, u16)>;

pub(crate) fn recipe(parts: &Parts) -> Result<Recipe, JsError> {
    Ok(Recipe::new(parts)?)
}

pub(crate) fn pan(paints: &[PaintNumber]) -> Result<Pan, JsError> {
    match *paints {
        [paint] => Ok(Pan::Whole(paint)),
        [left, right] => Ok(Pan::Split(left, right)),
        _ => Err(JsError::new(&format!("a pan holds one paint or two, not {}", paints.len()))),
    }
}
