//! What two ends make: mixes, washes, sheets, ramps.

use js_sys::Uint8ClampedArray;
use washpath_core::{Laid, compare};
use wasm_bindgen::prelude::*;

use crate::border::out;
use crate::studio::readout::{CrossingReadout, Mix, Way};
use crate::studio::wash::{self, Grain};
use crate::studio::{Studio, ready};
use crate::swatch::numbers;

#[wasm_bindgen]
impl Studio {
    /// L*, a*, b* of the mix of a pair, in daylight.
    ///
    /// # Errors
    ///
    /// An end that is not chosen or not known.
    pub fn lab_of(&self, pair: JsValue, share: f32, load: f32) -> Result<Vec<f32>, JsError> {
        Ok(numbers(ready(pair)?.path(&self.daylight, load).colour(share)))
    }

    /// The mix of a pair with a share of B, at a load.
    ///
    /// # Errors
    ///
    /// An end that is not chosen or not known.
    pub fn mix(&self, pair: JsValue, share: f32, load: f32) -> Result<JsValue, JsError> {
        let ready = ready(pair)?;
        let path = ready.path(&self.sight.view, load);
        out(&Mix::new(&ready, &path, share, self.sight.swatch(path.colour(share)))?)
    }

    /// Where the path of a pair comes closest to neutral.
    ///
    /// # Errors
    ///
    /// An end that is not chosen or not known.
    pub fn crossing(&self, pair: JsValue, load: f32) -> Result<JsValue, JsError> {
        let ready = ready(pair)?;
        let path = ready.path(&self.sight.view, load);
        let crossing = path.crossing();
        out(&CrossingReadout::new(&ready, &path, crossing, self.sight.swatch(crossing.lab))?)
    }

    /// A mix, and the same paint laid A over B and B over A; glazes tell how they differ from the mix.
    ///
    /// # Errors
    ///
    /// An end that is not chosen or not known.
    pub fn ways(&self, pair: JsValue, share: f32, load: f32) -> Result<JsValue, JsError> {
        let ready = ready(pair)?;
        let colours = Laid::ALL.map(|laid| ready.path_laid(laid, &self.sight.view, load).colour(share));
        let way = |laid: Laid, lab| Way::new(laid, self.sight.swatch(lab), compare(lab, colours[0]));
        out(&Laid::ALL.into_iter().zip(colours).map(|(laid, lab)| way(laid, lab)).collect::<Vec<_>>())
    }

    /// Puts a mix as a painted wash into `pixels`: RGBA in this studio's colour space, row by row.
    ///
    /// `scale` is pixels per CSS pixel. The mean of what is painted, in linear light, is the mix's colour.
    ///
    /// # Errors
    ///
    /// An end that is not chosen or not known; more than a million pixels; room for more or fewer than `width` by
    /// `height`.
    #[allow(clippy::too_many_arguments, reason = "a canvas is told by its numbers")]
    pub fn wash(
        &self,
        pair: JsValue,
        share: f32,
        load: f32,
        width: usize,
        height: usize,
        scale: f32,
        pixels: &Uint8ClampedArray,
    ) -> Result<(), JsError> {
        let count = width.saturating_mul(height);
        if count > wash::MOST_PIXELS || pixels.length() as usize != 4 * count {
            return Err(JsError::new("a wash has four bytes a pixel, and at most a million pixels"));
        }
        let ready = ready(pair)?;
        let grain = Grain::of(&ready, share)?;
        let path = ready.path(&self.sight.view, load);
        let settled = ready.path(&self.sight.view, load * Grain::HEAVIER).colour(grain.share);
        let [middle, settled] = [path.colour(share), settled].map(|lab| self.sight.linear(lab));
        let mut relief = self.relief.borrow_mut();
        let relief = relief.of((width, height), scale);
        pixels.copy_from(&wash::pixels(middle, settled, grain.strength, relief));
        Ok(())
    }

    /// The sheet of a pair, row by row: shares across, loads down.
    ///
    /// # Errors
    ///
    /// An end that is not chosen or not known.
    pub fn sheet(&self, pair: JsValue, shares: &[f32], loads: &[f32]) -> Result<JsValue, JsError> {
        let sheet = ready(pair)?.sheet(&self.sight.view, shares, loads);
        out(&sheet.cells.iter().map(|lab| self.sight.swatch(*lab)).collect::<Vec<_>>())
    }

    /// CSS colours along the path of a pair, even in position.
    ///
    /// # Errors
    ///
    /// An end that is not chosen or not known.
    pub fn ramp(&self, pair: JsValue, load: f32, count: usize) -> Result<JsValue, JsError> {
        let points = ready(pair)?.path(&self.sight.view, load).points(count.min(512));
        out(&points.iter().map(|point| self.sight.css(point.lab)).collect::<Vec<_>>())
    }

    /// CSS colours of the mix of a pair at each of these loads.
    ///
    /// # Errors
    ///
    /// An end that is not chosen or not known.
    pub fn fade(&self, pair: JsValue, share: f32, loads: &[f32]) -> Result<JsValue, JsError> {
        let ready = ready(pair)?;
        let css = |load: &f32| self.sight.css(ready.path(&self.sight.view, *load).colour(share));
        out(&loads.iter().map(css).collect::<Vec<_>>())
    }
}
