//! Values on their way between the page and the core.

use serde::Serialize;
use wasm_bindgen::prelude::*;

use crate::from_page::FromPage;

pub(crate) fn out<T: Serialize + ?Sized>(value: &T) -> Result<JsValue, JsError> {
    Ok(serde_wasm_bindgen::to_value(value)?)
}

#[expect(clippy::needless_pass_by_value, reason = "values of the page come by value")]
pub(crate) fn into<T: FromPage>(value: JsValue) -> Result<T, JsError> {
    T::from_page(&value).map_err(|fault| JsError::new(&format!("what the page sent {fault}")))
}

#[expect(clippy::needless_pass_by_value, reason = "the shape map_err asks for")]
pub(crate) fn canvas_failed(error: JsValue) -> JsError {
    // Not by its `Debug`, whose glue alone is as long as all of the wash.
    let reason = error.dyn_ref::<js_sys::Error>().map(|error| String::from(error.message()));
    JsError::new(&format!("the canvas failed: {}", reason.unwrap_or_default()))
}
