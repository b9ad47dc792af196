//! What a kit can mix, as the page asks for it.

use serde::Serialize;
use washpath_core::{Hue, PaintNumber, Reach, Shelf, View};
use wasm_bindgen::prelude::*;

use crate::border::out;
use crate::pair::Parts;
use crate::readout::Swatch;
use crate::studio::Studio;

/// The reach looked at last: the page asks several things of one kit.
#[derive(Default)]
pub(crate) struct LastReach(Option<Reach>);

impl LastReach {
    fn of(&mut self, paints: &[PaintNumber], view: &View) -> Result<&Reach, JsError> {
        if self.0.as_ref().is_none_or(|reach| reach.paints() != paints) {
            self.0 = None;
        }
        let reach = match self.0.take() {
            Some(reach) => reach,
            None => Reach::new(paints, Shelf::built_in(), view)?,
        };
        Ok(self.0.insert(reach))
    }
}

/// The mix that comes nearest to a place of the wheel.
#[derive(Serialize)]
struct Nearest {
    parts: Parts,
    /// Distance from the place, in CAM16-UCS.
    off: f32,
}

/// The darkest mix of a hue family.
#[derive(Serialize)]
struct DarkReadout {
    name: &'static str,
    /// Nothing where the kit has none.
    swatch: Option<Swatch>,
    parts: Parts,
}

#[wasm_bindgen]
impl Studio {
    /// Outline of all that paints can mix, in CAM16-UCS x, y, x, y, ...
    ///
    /// # Errors
    ///
    /// No such paint.
    pub fn outline(&mut self, paints: &[PaintNumber]) -> Result<Vec<f32>, JsError> {
        let reach = self.reach.of(paints, &self.sight.view)?;
        Ok(reach.outline().corners().iter().flat_map(|corner| [corner.x, corner.y]).collect())
    }

    /// The recipe of paints that comes nearest to a place of the wheel's plane at a load; nothing for no paints.
    ///
    /// # Errors
    ///
    /// No such paint.
    pub fn nearest_recipe(
        &mut self,
        paints: &[PaintNumber],
        x: f32,
        y: f32,
        load: f32,
    ) -> Result<JsValue, JsError> {
        let found = self.reach.of(paints, &self.sight.view)?.nearest_place(x, y, Some(load));
        out(&found.map(|found| Nearest { parts: found.recipe.parts().to_vec(), off: found.distance }))
    }

    /// The darkest mix of each hue family, and of the greys last.
    ///
    /// # Errors
    ///
    /// No such paint.
    pub fn darks(&mut self, paints: &[PaintNumber]) -> Result<JsValue, JsError> {
        let darks = self.reach.of(paints, &self.sight.view)?.darks();
        let readout = darks.into_iter().map(|dark| DarkReadout {
            name: dark.hue.map_or("grey", Hue::name),
            parts: dark.mix.as_ref().map(|(recipe, _)| recipe.parts().to_vec()).unwrap_or_default(),
            swatch: dark.mix.map(|(_, lab)| self.sight.swatch(lab)),
        });
        out(&readout.collect::<Vec<_>>())
    }
}
