//! Values on their way between the page and the core.

use serde::{Deserialize, Serialize};
use wasm_bindgen::prelude::*;

pub(crate) fn out<T: Serialize + ?Sized>(value: &T) -> Result<JsValue, JsError> {
    Ok(serde_wasm_bindgen::to_value(value)?)
}

pub(crate) fn into<T: for<'a> Deserialize<'a>>(value: JsValue) -> Result<T, JsError> {
    Ok(serde_wasm_bindgen::from_value(value)?)
}

#[expect(clippy::needless_pass_by_value, reason = "the shape map_err asks for")]
pub(crate) fn canvas_failed(error: JsValue) -> JsError {
    JsError::new(&format!("the canvas failed: {error:?}"))
}
