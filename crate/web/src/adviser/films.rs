//! Films of the painter's own paints.

use washpath_core::Shelf;
use wasm_bindgen::prelude::*;

use crate::border::{into, out};
use crate::own_paint::OwnReadout;
use crate::shelf::FilmReadout;

/// Films of own paints, each as it comes out of its swatches; nothing of a mixture.
///
/// # Errors
///
/// A paint that is none, in words for the painter.
#[wasm_bindgen]
pub fn films_of_swatches(paints: JsValue) -> Result<JsValue, JsError> {
    let paints: Vec<OwnReadout> = into(paints)?;
    let film = |paint: &OwnReadout| -> Result<Option<FilmReadout>, JsError> {
        Ok(paint.paint()?.film_of_swatches(Shelf::built_in())?.map(FilmReadout::from))
    };
    out(&paints.iter().map(film).collect::<Result<Vec<_>, _>>()?)
}
