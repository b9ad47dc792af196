//! Draws the wheel, what lies over it, and dabs.

use washpath_core::Lab;
use wasm_bindgen::prelude::*;
use web_sys::CanvasRenderingContext2d as Context;

use crate::border::{canvas_failed, into};
use crate::own_paint::lab_seen;
use crate::parts::Parts;
use crate::shelf::shelf;
use crate::studio::Studio;
use crate::studio::dab::{self, Dab};
use crate::studio::geometry::{Frame, Spot};
use crate::studio::scene::Scene;
use crate::studio::strand::{Strand, pinned};
use crate::studio::wheel::{self, Over};

#[wasm_bindgen]
impl Studio {
    /// Draws the wheel with its paints and the outlines of reaches, in CAM16-UCS x, y, x, y, ...
    ///
    /// # Errors
    ///
    /// A scene or outline that is not one; a canvas that fails.
    pub fn draw_wheel(&self, context: &Context, scene: JsValue, outlines: JsValue) -> Result<(), JsError> {
        let scene: Scene = into(scene)?;
        let outlines: Vec<Vec<f32>> = into(outlines)?;
        let frame = Frame::new(scene.size);
        let spots =
            |outline: &Vec<f32>| outline.chunks_exact(2).map(|at| frame.spot_at([at[0], at[1]])).collect();
        let outlines: Vec<Vec<Spot>> = outlines.iter().map(spots).collect();
        wheel::draw_ground(context, &scene, &self.drawn(&scene), &outlines).map_err(canvas_failed)
    }

    /// Draws what lies over the wheel: paths, crossing, mix, codes and marks.
    ///
    /// # Errors
    ///
    /// A scene that is not one, an unknown paint, a canvas that fails.
    pub fn draw_path(&self, context: &Context, scene: JsValue) -> Result<(), JsError> {
        let scene: Scene = into(scene)?;
        let frame = Frame::new(scene.size);
        let strand = scene.pair.ready()?.map(|ready| Strand::new(&ready, &self.sight, &scene));
        let mut pins = Vec::new();
        for pin in &scene.pins {
            if let Some(ready) = pin.pair.ready()? {
                pins.push(pinned(&ready, &self.sight, pin.load, &frame));
            }
        }
        let mut drops = Vec::new();
        for drop in &scene.puddles {
            let (point, css) = self.sight.spot(self.drop_colour(drop)?);
            drops.push((frame.spot(point), css));
        }
        let mut records = Vec::new();
        for mark in &scene.seen {
            let (predicted, _) = self.sight.spot(self.drop_colour(&mark.laid)?);
            let (point, css) = self.sight.spot(lab_seen(&mark.seen)?);
            records.push([(frame.spot(predicted), String::new()), (frame.spot(point), css)]);
        }
        let target = scene.target.map(|[l, a, b]| {
            let (point, css) = self.sight.spot(Lab::new(l, a, b));
            (frame.spot(point), css)
        });
        let over = Over { pins: &pins, drops: &drops, records: &records, target: target.as_ref() };
        wheel::draw_top(context, &scene, &self.dabs(&scene), strand.as_ref(), &over).map_err(canvas_failed)
    }

    /// Draws a dab of a recipe in the middle of a square of `size` pixels: of one load, or bleeding from masstone to wash.
    ///
    /// # Errors
    ///
    /// No such paint; a canvas that fails.
    pub fn draw_dab(
        &self,
        context: &Context,
        parts: JsValue,
        load: Option<f32>,
        size: f64,
    ) -> Result<(), JsError> {
        let recipe = into::<Parts>(parts)?.recipe()?;
        let shelf = shelf();
        let first = shelf.get(recipe.parts()[0].paint)?;
        let grain = first.granulation.unwrap_or(0.0);
        let dab = Dab::new(&recipe.film(&shelf)?, load, &self.sight, grain, first.number.get().into());
        let middle = Spot { x: size / 2.0, y: size / 2.0 };
        dab::draw(context, &dab, middle, size / 2.0 - 1.0).map_err(canvas_failed)
    }
}
