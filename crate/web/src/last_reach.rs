//! The reach of the kit asked about last.

use washpath_core::{Reach, View};
use wasm_bindgen::JsError;

use crate::parts::paints_of;
use crate::shelf::shelf;

/// The reach looked at last: the page asks several things of one kit.
#[derive(Default)]
pub(crate) struct LastReach(Option<Reach>);

impl LastReach {
    /// Of paints by their numbers.
    pub(crate) fn of(&mut self, paints: &[u16], view: &View) -> Result<&Reach, JsError> {
        let paints = paints_of(paints);
        if self.0.as_ref().is_none_or(|reach| reach.paints() != &paints[..]) {
            self.0 = None;
        }
        let reach = match self.0.take() {
            Some(reach) => reach,
            None => Reach::new(&paints, &shelf(), view)?,
        };
        Ok(self.0.insert(reach))
    }
}
