//! The paper the page asks for.

use washpath_core::{Error, Lab, OwnPaper, Paper, Stock};
use wasm_bindgen::JsValue;

use crate::from_page::{Fields, FromPage};

/// A paper as the page names it.
pub(crate) struct PaperChoice {
    stock: usize,
    own: Option<[f32; 3]>,
}

impl FromPage for PaperChoice {
    fn from_page(value: &JsValue) -> Result<Self, String> {
        let fields = Fields::of(value)?;
        Ok(Self { stock: fields.get("stock")?, own: fields.get("own")? })
    }
}

impl PaperChoice {
    pub(crate) fn paper(&self) -> Result<Paper, Error> {
        match self.own {
            Some([l, a, b]) => OwnPaper::new(Lab::new(l, a, b))?.paper(),
            None => Ok(Stock::ALL.get(self.stock).copied().unwrap_or_default().paper()),
        }
    }
}
