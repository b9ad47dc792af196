//! What the painter typed or measured, checked as it will be kept.

use serde::Serialize;
use washpath_core::{Lab, PaintNumber};
use wasm_bindgen::prelude::*;

use crate::border::{into, out};
use crate::own_paint::{OwnReadout, lab_seen};
use crate::record::RecordReadout;
use crate::swatch::lab_of;

/// An own paint as it will be kept: checked, rounded to what a link carries.
///
/// # Errors
///
/// What is wrong with it, in words for the painter.
#[wasm_bindgen]
pub fn read_own(paint: JsValue) -> Result<JsValue, JsError> {
    let paint: OwnReadout = into(paint)?;
    out(&OwnReadout::from(&paint.paint()?))
}

/// First number of an own paint.
#[wasm_bindgen]
#[must_use]
pub fn first_own() -> u16 {
    PaintNumber::FIRST_OWN.get()
}

/// L*, a*, b* of what was seen: itself, or that of 36 reflectances in daylight.
///
/// # Errors
///
/// Neither of the two.
#[wasm_bindgen]
pub fn lab_of_seen(numbers: &[f32]) -> Result<Vec<f32>, JsError> {
    let Lab { l, a, b, .. } = lab_seen(numbers)?;
    Ok(vec![l, a, b])
}

/// A record as it will be kept: checked.
///
/// # Errors
///
/// What is wrong with it, in words for the painter.
#[wasm_bindgen]
pub fn read_record(record: JsValue) -> Result<JsValue, JsError> {
    let record: RecordReadout = into(record)?;
    out(&RecordReadout::from(&record.record()?))
}

/// How one colour differs from another: `{error, words}`.
#[derive(Serialize)]
struct Comparison {
    /// CIEDE2000.
    error: f32,
    words: String,
}

/// How a colour differs from another, both L*, a*, b*.
///
/// # Errors
///
/// What is no colour.
#[wasm_bindgen]
pub fn compare(colour: &[f32], other: &[f32]) -> Result<JsValue, JsError> {
    let (colour, other) = (lab_of(colour)?, lab_of(other)?);
    let difference = washpath_core::compare(colour, other);
    out(&Comparison { error: difference.delta_e, words: difference.words })
}
