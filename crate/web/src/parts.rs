//! Recipes as the page writes them.

use washpath_core::{PaintNumber, Recipe};
use wasm_bindgen::JsError;

/// Whole parts of paints: `[[number, parts], ...]`; empty where nothing is chosen.
pub(crate) type Parts = Vec<(PaintNumber, u16)>;

pub(crate) fn recipe(parts: &Parts) -> Result<Recipe, JsError> {
    Ok(Recipe::new(parts)?)
}
