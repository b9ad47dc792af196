//! What lies at a place on the canvas, and the other way round.

use washpath_core::{colour, snap};
use wasm_bindgen::prelude::*;

use crate::border::into;
use crate::studio::geometry::{Frame, Spot, nearest_along};
use crate::studio::scene::Scene;
use crate::studio::strand::share_along;
use crate::studio::{Studio, ready};

/// How near in pixels a drag must come to whole parts to be held there.
const SNAP: f64 = 4.0;

#[wasm_bindgen]
impl Studio {
    /// The paint drawn at a place on the canvas, or 0.
    ///
    /// `within` is how far from its middle a paint still counts as hit.
    ///
    /// # Errors
    ///
    /// A scene that is not one.
    pub fn paint_at(&self, scene: JsValue, x: f64, y: f64, within: f64) -> Result<u16, JsError> {
        let scene: Scene = into(scene)?;
        let frame = Frame::new(scene.size);
        let at = Spot { x, y };
        let nearest = self
            .drawn(&scene)
            .into_iter()
            .map(|stand| {
                // A dab of the kit is larger than a dot of the shelf, and easier to hit.
                let ease = if scene.shows(stand.paint.number) { 0.0 } else { within * 0.5 };
                (stand.paint.number, frame.spot(stand.point).distance(at) + ease)
            })
            .min_by(|a, b| a.1.total_cmp(&b.1));
        Ok(nearest.filter(|(_, distance)| *distance <= within).map_or(0, |(number, _)| number.get()))
    }

    /// The puddle drawn at a place on the canvas, counted from 0; nothing where there is none.
    ///
    /// # Errors
    ///
    /// A scene that is not one; an unknown paint.
    pub fn puddle_at(&self, scene: JsValue, x: f64, y: f64, within: f64) -> Result<Option<usize>, JsError> {
        let scene: Scene = into(scene)?;
        let frame = Frame::new(scene.size);
        let mut nearest: Option<(usize, f64)> = None;
        for (i, drop) in scene.puddles.iter().enumerate() {
            let away = frame.spot(colour::wheel(self.drop_colour(drop)?)).distance(Spot { x, y });
            if away <= within && nearest.is_none_or(|(_, least)| away < least) {
                nearest = Some((i, away));
            }
        }
        Ok(nearest.map(|(i, _)| i))
    }

    /// The point of the wheel's plane at a place on a canvas of `size`: x, y; nothing off the disc.
    #[must_use]
    pub fn wheel_point_at(&self, size: f64, x: f64, y: f64) -> Option<Vec<f32>> {
        let frame = Frame::new(size);
        let spot = Spot { x, y };
        frame.holds(spot).then(|| frame.point_at(spot).to_vec())
    }

    /// Where the mix of a pair stands in the wheel's plane: x, y.
    ///
    /// # Errors
    ///
    /// An end that is not chosen or not known.
    pub fn wheel_point_of(&self, pair: JsValue, share: f32, load: f32) -> Result<Vec<f32>, JsError> {
        let point = colour::wheel(ready(pair)?.path(&self.sight.view, load).colour(share));
        Ok(vec![point.x, point.y])
    }

    /// The place on the path nearest to a place on the canvas.
    ///
    /// Returns the share of B, held at whole parts where `snapping`, the
    /// distance in pixels, and the distance of the mix at hand; nothing where
    /// no path is drawn.
    ///
    /// # Errors
    ///
    /// A scene that is not one; an unknown paint.
    pub fn share_at(
        &self,
        scene: JsValue,
        x: f64,
        y: f64,
        snapping: bool,
    ) -> Result<Option<Vec<f64>>, JsError> {
        let scene: Scene = into(scene)?;
        let frame = Frame::new(scene.size);
        let Some((ready, strand)) = scene.pair.ready()?.zip(self.strand(&scene)?) else { return Ok(None) };
        let path = ready.path(&self.sight.view, scene.load);
        let spot = |lab| frame.spot(colour::wheel(lab));
        let at = Spot { x, y };
        Ok(nearest_along(&strand.spots(), at).map(|along| {
            let share = share_along(along);
            let at_share = |share: f32| spot(path.colour(share));
            let held = snap(share, 0.04)
                .filter(|held| snapping && at_share(*held).distance(at_share(share)) <= SNAP);
            vec![
                f64::from(held.unwrap_or(share)),
                at_share(share).distance(at),
                at_share(scene.share).distance(at),
            ]
        }))
    }
}
