//! Draws the wheel, what lies over it, and dabs.

use std::rc::Rc;

use washpath_core::{Error, Lab};
use wasm_bindgen::prelude::*;
use web_sys::CanvasRenderingContext2d as Context;

use crate::border::{canvas_failed, into};
use crate::own_paint::lab_seen;
use crate::parts::Parts;
use crate::shelf::shelf;
use crate::studio::Studio;
use crate::studio::dab::{self, Dab};
use crate::studio::geometry::{Frame, Spot};
use crate::studio::labels::Labels;
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

    /// Draws the dabs and what lies over them: paths, kept mixes, records, the colour to match. None of it follows the
    /// share of the mix.
    ///
    /// # Errors
    ///
    /// A scene that is not one, an unknown paint, a canvas that fails.
    pub fn draw_path(&self, context: &Context, scene: JsValue) -> Result<(), JsError> {
        let scene: Scene = into(scene)?;
        let frame = Frame::new(scene.size);
        let strand = self.strand(&scene)?;
        let mut pins = Vec::new();
        for pin in &scene.pins {
            if let Some(ready) = pin.pair.ready()? {
                pins.push(pinned(&ready, &self.sight, pin.load, &frame));
            }
        }
        let mut records = Vec::new();
        for mark in &scene.seen {
            let (predicted, _) = self.sight.spot(self.drop_colour(&mark.laid)?);
            let (point, css) = self.sight.spot(lab_seen(&mark.seen)?);
            records.push([(frame.spot(predicted), String::new()), (frame.spot(point), css)]);
        }
        let target = scene.target.map(|[l, a, b]| self.placed(&scene, Lab::new(l, a, b)));
        let drops = self.drops(&scene)?;
        let over = Over { pins: &pins, drops: &drops, records: &records, target: target.as_ref() };
        wheel::draw_paths(context, &scene, &self.dabs(&scene), strand.as_deref(), &over)
            .map_err(canvas_failed)
    }

    /// Draws what is written over the paths: codes, the crossing's name, the letters of the ends. Some of it steps aside
    /// for the mark of the mix; the answer says later whether it still stands right.
    ///
    /// # Errors
    ///
    /// A scene that is not one, an unknown paint, a canvas that fails.
    pub fn draw_labels(&self, context: &Context, scene: JsValue) -> Result<Labels, JsError> {
        let scene: Scene = into(scene)?;
        let drops: Vec<Spot> = self.drops(&scene)?.into_iter().map(|(spot, _)| spot).collect();
        let mark = self.mark(&scene)?.map(|(spot, _)| spot);
        Labels::draw(context, &scene, &self.dabs(&scene), self.strand(&scene)?, &drops, mark)
            .map_err(canvas_failed)
    }

    /// Draws the mark of the mix and the keyboard's cross, and answers whether the labels, as they were drawn, are out of
    /// the mark's way.
    ///
    /// # Errors
    ///
    /// A scene that is not one, an unknown paint, a canvas that fails.
    pub fn draw_mark(&self, context: &Context, scene: JsValue, labels: &Labels) -> Result<bool, JsError> {
        let scene: Scene = into(scene)?;
        let mark = self.mark(&scene)?;
        labels.draw_mark(context, &scene, mark.as_ref()).map_err(canvas_failed)?;
        Ok(labels.stand_right(mark.map(|(spot, _)| spot)))
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

impl Studio {
    /// The path of a scene, ready to be drawn; nothing where an end is not chosen.
    pub(crate) fn strand(&self, scene: &Scene) -> Result<Option<Rc<Strand>>, Error> {
        self.last_strand.borrow_mut().of(scene, &self.sight)
    }

    /// Where the mix at hand stands, and its CSS colour; nothing where an end is not chosen.
    fn mark(&self, scene: &Scene) -> Result<Option<(Spot, String)>, Error> {
        let Some(ready) = scene.pair.ready()? else { return Ok(None) };
        let lab = ready.path(&self.sight.view, scene.load).colour(scene.share);
        Ok(Some(self.placed(scene, lab)))
    }

    /// Where the kept mixes stand, and their CSS colours.
    fn drops(&self, scene: &Scene) -> Result<Vec<(Spot, String)>, Error> {
        scene.puddles.iter().map(|drop| Ok(self.placed(scene, self.drop_colour(drop)?))).collect()
    }

    fn placed(&self, scene: &Scene, lab: Lab) -> (Spot, String) {
        let (point, css) = self.sight.spot(lab);
        (Frame::new(scene.size).spot(point), css)
    }
}
