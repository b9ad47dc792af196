//! The reach of the kit asked about last.

use washpath_core::{PaintNumber, Reach, View};
use wasm_bindgen::JsError;

use crate::shelf::shelf;

/// The reach looked at last: the page asks several things of one kit.
#[derive(Default)]
pub(crate) struct LastReach(Option<Reach>);

impl LastReach {
    pub(crate) fn of(&mut self, paints: &[PaintNumber], view: &View) -> Result<&Reach, JsError> {
        if self.0.as_ref().is_none_or(|reach| reach.paints() != paints) {
            self.0 = None;
        }
        let reach = match self.0.take() {
            Some(reach) => reach,
            None => Reach::new(paints, &shelf(), view)?,
        };
        Ok(self.0.insert(reach))
    }
}
