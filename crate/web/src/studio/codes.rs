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

/// A code, its box, and the dab it belongs to.
type Code<'a> = (&'a str, Label, Spot);

/// Beyond so many pixels from its dab's edge a code is led back to it by a line.
const FAR: f64 = 10.0;

/// Free places for the codes of the paints that are drawn as dabs.
///
/// A code that `mark` would cover steps aside; no other one moves for it, so that
/// the names stand still while a mark is dragged past them.
pub(crate) fn place_codes<'a>(
    context: &Context,
    scene: &Scene,
    frame: &Frame,
    stands: &[&'a Stand],
    mark: Option<Spot>,
) -> Result<Vec<Code<'a>>, JsValue> {
    let height = set_font(context, scene) + 2.0;
    let mut taken: Vec<Label> =
        stands.iter().map(|stand| Label::around(frame.spot(stand.point), frame.dab())).collect();
    taken.extend(HUE_NAMES.map(|(angle, _)| Label::around(name_spot(scene, frame, angle), 18.0)));
    let mut codes = Vec::new();
    for stand in stands {
        let code = stand.paint.code.as_str();
        let text = (context.measure_text(code)?.width() + 4.0, height);
        let spot = frame.spot(stand.point);
        if let Some(label) = place_label(frame, spot, text, &taken) {
            taken.push(label);
            codes.push((code, label, spot));
        }
    }
    if let Some(mark) = mark {
        taken.push(Label::around(mark, HANDLE));
        for (_, label, dab) in codes.iter_mut().filter(|(_, label, _)| label.distance(mark) < HANDLE) {
            taken.retain(|other| other != label);
            *label = place_label(frame, *dab, (label.width, label.height), &taken).unwrap_or(*label);
            taken.push(*label);
        }
    }
    Ok(codes)
}

/// Letters with a rim of paper, so that they read over a path too.
pub(crate) fn draw_codes(context: &Context, scene: &Scene, frame: &Frame, codes: &[Code<'_>]) -> Drawn {
    context.set_stroke_style_str(&scene.ink.quiet);
    context.set_line_width(1.0);
    for (_, label, dab) in codes.iter().filter(|(_, label, dab)| label.distance(*dab) > frame.dab() + FAR) {
        let near = label.nearest(*dab);
        let part = frame.dab() / near.distance(*dab);
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
    for (code, label, _) in codes {
        let (x, y) = (label.left + 2.0, label.middle().y);
        context.stroke_text(code, x, y)?;
        context.fill_text(code, x, y)?;
    }
    Ok(())
}

/// Sets the letters of codes and answers their size.
fn set_font(context: &Context, scene: &Scene) -> f64 {
    let size = if scene.size < SMALL { 12u8 } else { 14 };
    context.set_font(&format!("600 {size}px {FAMILY}"));
    size.into()
}
