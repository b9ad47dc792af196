//! The paper as the page names it.

use serde::Serialize;
use washpath_core::{Error, KitPaper, Lab, OwnPaper, Paper, Stock};
use wasm_bindgen::JsValue;

use crate::from_page::{Fields, FromPage};

/// The number of a stock, and the L*, a*, b* of an own paper, which goes first.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub(crate) struct PaperChoice {
    pub stock: usize,
    pub own: Option<[f32; 3]>,
}

impl FromPage for PaperChoice {
    fn from_page(value: &JsValue) -> Result<Self, String> {
        let fields = Fields::of(value)?;
        Ok(Self { stock: fields.get("stock")?, own: fields.get("own")? })
    }
}

impl PaperChoice {
    pub(crate) fn kit_paper(&self) -> Result<KitPaper, Error> {
        Ok(match self.own {
            Some([l, a, b]) => KitPaper::Own(OwnPaper::new(Lab::new(l, a, b))?),
            None => KitPaper::Stock(Stock::ALL.get(self.stock).copied().unwrap_or_default()),
        })
    }

    pub(crate) fn paper(&self) -> Result<Paper, Error> {
        self.kit_paper()?.paper()
    }
}

impl From<KitPaper> for PaperChoice {
    fn from(paper: KitPaper) -> Self {
        match paper {
            KitPaper::Stock(stock) => Self { stock: stock as usize, own: None },
            KitPaper::Own(own) => {
                let lab = own.colour();
                Self { stock: Stock::default() as usize, own: Some([lab.l, lab.a, lab.b]) }
            }
        }
    }
}
