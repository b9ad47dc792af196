//! Colours as the painter gives them: typed, or taken from a picture.

use washpath_core::{Picture, notation};
use wasm_bindgen::prelude::*;

use crate::swatch::{lab_of, numbers};

/// Mean colour of a picture over a disc: L*, a*, b*.
///
/// # Errors
///
/// Bytes that are no picture; a place off it, or transparent.
#[wasm_bindgen]
pub fn sample(rgba: &[u8], width: usize, x: f32, y: f32, radius: f32) -> Result<Vec<f32>, JsError> {
    Ok(numbers(Picture::new(rgba, width)?.sample(x, y, radius)?))
}

/// A picture balanced so that a disc is a neutral of this lightness; RGBA bytes.
///
/// # Errors
///
/// As [`sample`]; a disc too dark to tell the light by.
#[wasm_bindgen]
pub fn white_balance(
    rgba: &[u8],
    width: usize,
    x: f32,
    y: f32,
    radius: f32,
    lightness: f32,
) -> Result<Vec<u8>, JsError> {
    Ok(Picture::new(rgba, width)?.balanced(x, y, radius, lightness)?)
}

/// A colour as typed: L*, a*, b*.
///
/// # Errors
///
/// What is wrong with the text, and what may be typed.
#[wasm_bindgen]
pub fn read_colour(text: &str) -> Result<Vec<f32>, JsError> {
    Ok(numbers(notation::parse(text)?))
}

/// L*, a*, b* as `#rrggbb`.
///
/// # Errors
///
/// What is no colour.
#[wasm_bindgen]
pub fn hex_of(lab: &[f32]) -> Result<String, JsError> {
    Ok(notation::hex(lab_of(lab)?))
}
