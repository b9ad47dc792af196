//! Kits as the page holds them, and as the text of a link.

use serde::{Deserialize, Serialize};
use washpath_core::{Kit, PaintNumber, Pan, Shelf, Stock, share};
use wasm_bindgen::prelude::*;

use crate::border::{into, out};

/// A kit; a pan is one paint number or two.
#[derive(Serialize, Deserialize)]
struct KitReadout {
    title: String,
    capacity: usize,
    stock: usize,
    pans: Vec<Vec<PaintNumber>>,
}

/// The kit as text for a link.
///
/// # Errors
///
/// An object that is no kit; a kit beyond its limits.
#[wasm_bindgen]
pub fn encode_kit(kit: JsValue) -> Result<String, JsError> {
    let kit: KitReadout = into(kit)?;
    let pans = kit.pans.iter().map(|paints| pan(paints)).collect::<Result<_, _>>()?;
    let stock = Stock::ALL.get(kit.stock).copied().unwrap_or_default();
    Ok(share::encode(&Kit::new(&kit.title, kit.capacity, stock, pans)?))
}

/// The kit of a link's text.
///
/// # Errors
///
/// A damaged text, an unknown version or paint, in words for the painter.
#[wasm_bindgen]
pub fn decode_kit(text: &str) -> Result<JsValue, JsError> {
    let kit = share::decode(text, Shelf::built_in())?;
    out(&KitReadout {
        title: kit.title().to_owned(),
        capacity: kit.capacity(),
        stock: kit.stock() as usize,
        pans: kit.pans().iter().map(|pan| pan.paints().collect()).collect(),
    })
}

fn pan(paints: &[PaintNumber]) -> Result<Pan, JsError> {
    match *paints {
        [paint] => Ok(Pan::Whole(paint)),
        [left, right] => Ok(Pan::Split(left, right)),
        _ => Err(JsError::new(&format!("a pan holds one paint or two, not {}", paints.len()))),
    }
}
