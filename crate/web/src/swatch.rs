//! A colour on its way to the page and back.

use serde::Serialize;
use washpath_core::colour::{chroma, describe, hue_angle};
use washpath_core::{Lab, Shown};
use wasm_bindgen::JsError;

/// A colour as the page shows and names it.
#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(crate) struct Swatch {
    /// CSS colour.
    pub css: String,
    /// Whether the display holds it.
    pub exact: bool,
    /// CIELAB lightness.
    pub lightness: f32,
    /// CIELAB chroma.
    pub chroma: f32,
    /// CIELAB hue angle in degrees.
    pub hue: f32,
    /// In words.
    pub words: String,
}

impl Swatch {
    pub(crate) fn new(lab: Lab, shown: &Shown) -> Self {
        Self {
            css: shown.css(),
            exact: shown.exact,
            lightness: lab.l,
            chroma: chroma(lab),
            hue: hue_angle(lab),
            words: describe(lab),
        }
    }
}

/// L*, a*, b* for the page.
pub(crate) fn numbers(lab: Lab) -> Vec<f32> {
    vec![lab.l, lab.a, lab.b]
}

pub(crate) fn lab_of(lab: &[f32]) -> Result<Lab, JsError> {
    match *lab {
        [l, a, b] if lab.iter().all(|value| value.is_finite()) => Ok(Lab::new(l, a, b)),
        _ => Err(JsError::new("a colour is L*, a* and b*")),
    }
}
