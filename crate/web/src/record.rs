//! A record of what was painted, on its way between the page and the core.

use serde::Serialize;
use washpath_core::Record;
use wasm_bindgen::prelude::{JsError, JsValue};

use crate::from_page::{Fields, FromPage};
use crate::own_paint::{numbers_of, seen};
use crate::paper::PaperChoice;
use crate::parts::Parts;

/// A record as the page holds it.
#[derive(Serialize)]
pub(crate) struct RecordReadout {
    parts: Parts,
    load: f32,
    /// L*, a*, b* or 36 reflectances.
    seen: Vec<f32>,
    paper: PaperChoice,
    date: String,
    note: String,
}

impl FromPage for RecordReadout {
    fn from_page(value: &JsValue) -> Result<Self, String> {
        let fields = Fields::of(value)?;
        Ok(Self {
            parts: fields.get("parts")?,
            load: fields.get("load")?,
            seen: fields.get("seen")?,
            paper: fields.get("paper")?,
            date: fields.get("date")?,
            note: fields.get("note")?,
        })
    }
}

impl RecordReadout {
    pub(crate) fn record(&self) -> Result<Record, JsError> {
        let recipe = self.parts.recipe()?;
        let record = Record::new(recipe, self.load, seen(&self.seen)?, self.paper.kit_paper()?)?;
        Ok(record.with_date(&self.date)?.with_note(&self.note)?)
    }
}

impl From<&Record> for RecordReadout {
    fn from(record: &Record) -> Self {
        Self {
            parts: Parts::of(record.recipe()),
            load: record.load(),
            seen: numbers_of(record.seen()),
            paper: record.paper().into(),
            date: record.date().to_owned(),
            note: record.note().to_owned(),
        }
    }
}
