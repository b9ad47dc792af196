//! The Colour Index names beside the dabs.

use wasm_bindgen::JsValue;
use web_sys::CanvasRenderingContext2d as Context;

use crate::studio::geometry::{Frame, Label, Spot, place_label};
use crate::studio::marks::HANDLE;
use crate::studio::names::name_spot;
use crate::studio::pen::{Drawn, FAMILY, SMALL, line};
use crate::studio::scene::Scene;
use crate::studio::stand::Stand;
use washpath_core::hue::HUE_NAMES;

/// A code, its box where no mark pushes it aside, and the dab it belongs to.
struct Code {
    text: String,
    label: Label,
    dab: Spot,
}

/// The codes of the paints that are drawn as dabs.
pub(crate) struct Codes {
    codes: Vec<Code>,
    /// What none of them may cover, each other included.
    taken: Vec<Label>,
}

/// Beyond so many pixels from its dab's edge a code is led back to it by a line.
const FAR: f64 = 10.0;

impl Codes {
    /// Measures the codes and finds a free place for each; one that has none is left out.
    pub(crate) fn new(
        context: &Context,
        scene: &Scene,
        frame: &Frame,
        stands: &[&Stand],
    ) -> Result<Self, JsValue> {
        let height = set_font(context, scene) + 2.0;
        let mut taken: Vec<Label> =
            stands.iter().map(|stand| Label::around(frame.spot(stand.point), frame.dab())).collect();
        taken.extend(HUE_NAMES.map(|(angle, _)| Label::around(name_spot(scene, frame, angle), 18.0)));
        let mut codes = Vec::new();
        for stand in stands {
            let text = stand.paint.code.clone();
            let size = (context.measure_text(&text)?.width() + 4.0, height);
            let dab = frame.spot(stand.point);
            if let Some(label) = place_label(frame, dab, size, &taken) {
                taken.push(label);
                codes.push(Code { text, label, dab });
            }
        }
        Ok(Self { codes, taken })
    }

    /// Where each stands beside a mark.
    ///
    /// A code that the mark would cover steps aside; no other one moves for it, so that
    /// the names stand still while the mark is dragged past them.
    pub(crate) fn beside(&self, frame: &Frame, mark: Option<Spot>) -> Vec<Label> {
        let mut labels: Vec<Label> = self.codes.iter().map(|code| code.label).collect();
        let Some(mark) = mark else { return labels };
        let mut taken = self.taken.clone();
        taken.push(Label::around(mark, HANDLE));
        for (label, Code { dab, .. }) in
            labels.iter_mut().zip(&self.codes).filter(|(label, _)| label.distance(mark) < HANDLE)
        {
            taken.retain(|other| other != label);
            *label = place_label(frame, *dab, (label.width, label.height), &taken).unwrap_or(*label);
            taken.push(*label);
        }
        labels
    }

    /// The dabs they belong to.
    pub(crate) fn dabs(&self) -> impl Iterator<Item = Spot> {
        self.codes.iter().map(|code| code.dab)
    }

    /// Letters with a rim of paper, so that they read over a path too; a line leads back from where one stands far off.
    pub(crate) fn draw(&self, context: &Context, scene: &Scene, frame: &Frame, labels: &[Label]) -> Drawn {
        context.set_stroke_style_str(&scene.ink.quiet);
        context.set_line_width(1.0);
        for (label, dab) in labels.iter().zip(self.dabs()) {
            if label.distance(dab) <= frame.dab() + FAR {
                continue;
            }
            let near = label.nearest(dab);
            let part = frame.dab() / near.distance(dab);
            let edge = Spot { x: dab.x + (near.x - dab.x) * part, y: dab.y + (near.y - dab.y) * part };
            line(context, edge, near);
        }
        set_font(context, scene);
        context.set_text_align("left");
        context.set_text_baseline("middle");
        context.set_line_width(3.0);
        context.set_line_join("round");
        context.set_stroke_style_str(&scene.ink.paper);
        context.set_fill_style_str(&scene.ink.strong);
        for (Code { text, .. }, label) in self.codes.iter().zip(labels) {
            let (x, y) = (label.left + 2.0, label.middle().y);
            context.stroke_text(text, x, y)?;
            context.fill_text(text, x, y)?;
        }
        Ok(())
    }
}

/// Sets the letters of codes and answers their size.
fn set_font(context: &Context, scene: &Scene) -> f64 {
    let size = if scene.size < SMALL { 12u8 } else { 14 };
    context.set_font(&format!("600 {size}px {FAMILY}"));
    size.into()
}
