//! What is written on the wheel beside paints and path, and steps aside for the mark of the mix.

use std::rc::Rc;

use wasm_bindgen::prelude::*;
use web_sys::CanvasRenderingContext2d as Context;

use crate::studio::codes::Codes;
use crate::studio::geometry::{Frame, Label, Spot, place_aside};
use crate::studio::marks::{
    HANDLE, cross, crossing_mark, crossing_name, draw_asked, draw_number, draw_rings, handle, number_spot,
    tag, tag_size,
};
use crate::studio::pen::Drawn;
use crate::studio::scene::Scene;
use crate::studio::stand::Stand;
use crate::studio::strand::Strand;

/// Half of a number's width, at the most.
const NUMBER: f64 = 10.0;

/// The labels of a drawn wheel: measured once, as a drag asks at each step whether they still stand right.
#[wasm_bindgen]
pub struct Labels {
    frame: Frame,
    codes: Codes,
    strand: Option<Rc<Strand>>,
    /// The name of the path's greyest place, with its width and height.
    crossing: Option<(String, (f64, f64))>,
    /// Numbers of the puddles.
    numbers: Vec<Spot>,
    /// Where they were drawn: the codes, then the name.
    drawn: Vec<Label>,
}

impl Labels {
    /// Measures the labels of a scene and draws them, with the rings and tags among them.
    pub(crate) fn draw(
        context: &Context,
        scene: &Scene,
        stands: &[&Stand],
        strand: Option<Rc<Strand>>,
        drops: &[Spot],
        mark: Option<Spot>,
    ) -> Result<Self, JsValue> {
        let frame = Frame::new(scene.size);
        let name = strand.as_deref().and_then(crossing_name);
        let mut labels = Self {
            codes: Codes::new(context, scene, &frame, stands)?,
            crossing: name.map(|name| tag_size(context, &name).map(|size| (name, size))).transpose()?,
            numbers: drops.iter().copied().map(number_spot).collect(),
            drawn: Vec::new(),
            strand,
            frame,
        };
        labels.drawn = labels.beside(mark);
        labels.draw_all(context, scene, stands)?;
        Ok(labels)
    }

    /// Draws the mark of the mix and the keyboard's cross; over the mark once more the number of the puddle that a mix was
    /// just kept as.
    pub(crate) fn draw_mark(&self, context: &Context, scene: &Scene, mark: Option<&(Spot, String)>) -> Drawn {
        if let Some((spot, css)) = mark {
            handle(context, scene, *spot, css)?;
            for (place, at) in self.numbers.iter().enumerate() {
                if at.distance(*spot) < HANDLE + NUMBER {
                    draw_number(context, scene, place, *at)?;
                }
            }
        }
        match scene.cross {
            Some(point) => cross(context, scene, self.frame.spot_at(point)),
            None => Ok(()),
        }
    }

    /// Whether they stand as they would be drawn beside this mark.
    pub(crate) fn stand_right(&self, mark: Option<Spot>) -> bool {
        self.beside(mark) == self.drawn
    }

    fn beside(&self, mark: Option<Spot>) -> Vec<Label> {
        let mut labels = self.codes.beside(&self.frame, mark);
        if let (Some((_, size)), Some(strand)) = (&self.crossing, &self.strand) {
            let mut keep_off = strand.spots();
            keep_off.extend(mark);
            for (label, dab) in labels.iter().zip(self.codes.dabs()) {
                keep_off.extend(label.across());
                keep_off.push(dab);
            }
            keep_off.extend_from_slice(&self.numbers);
            labels.push(place_aside(&self.frame, strand.crossing_spot, *size, &keep_off));
        }
        labels
    }

    fn draw_all(&self, context: &Context, scene: &Scene, stands: &[&Stand]) -> Drawn {
        self.codes.draw(context, scene, &self.frame, &self.drawn)?;
        draw_rings(context, scene, &self.frame, stands)?;
        if let Some(strand) = &self.strand {
            if let (Some((name, _)), Some(label)) = (&self.crossing, self.drawn.last()) {
                crossing_mark(context, scene, strand.crossing_spot, name, label)?;
            }
            draw_asked(context, scene, &self.frame, strand)?;
            for (step, letter) in
                [strand.steps.first(), strand.steps.last()].into_iter().flatten().zip(["A", "B"])
            {
                tag(context, scene, step.spot, letter)?;
            }
        }
        for (place, at) in self.numbers.iter().enumerate() {
            draw_number(context, scene, place, *at)?;
        }
        Ok(())
    }
}
