//! Strokes every drawing here is made of.

use std::f64::consts::TAU;

use wasm_bindgen::JsValue;
use web_sys::CanvasRenderingContext2d as Context;

use crate::studio::geometry::Spot;

/// A canvas may fail.
pub(crate) type Drawn = Result<(), JsValue>;

/// The page's letters.
pub(crate) const FAMILY: &str = "\"Source Sans 3\", system-ui, sans-serif";

/// Below this size of the canvas, in CSS pixels, letters are smaller.
pub(crate) const SMALL: f64 = 460.0;

pub(crate) fn circle(context: &Context, at: Spot, radius: f64) -> Drawn {
    context.begin_path();
    context.arc(at.x, at.y, radius.max(0.1), 0.0, TAU)
}

/// A ring, first broad in one colour, then narrow in another: it shows on any ground.
pub(crate) fn ring(context: &Context, at: Spot, radius: f64, around: &str, line: &str) -> Drawn {
    for (width, colour) in [(4.5, around), (2.0, line)] {
        circle(context, at, radius)?;
        context.set_line_width(width);
        context.set_stroke_style_str(colour);
        context.stroke();
    }
    Ok(())
}

pub(crate) fn polyline(context: &Context, spots: &[Spot]) {
    context.begin_path();
    for spot in spots {
        context.line_to(spot.x, spot.y);
    }
}

pub(crate) fn line(context: &Context, from: Spot, to: Spot) {
    polyline(context, &[from, to]);
    context.stroke();
}

/// Lines broken into dashes of so many pixels, until [`solid`].
pub(crate) fn dashed(context: &Context, length: f64) -> Drawn {
    let dashes = js_sys::Array::of(&[JsValue::from(length), JsValue::from(length)]);
    context.set_line_dash(&dashes)
}

pub(crate) fn solid(context: &Context) -> Drawn {
    context.set_line_dash(&js_sys::Array::new())
}

/// Letters of a weight and size, set from their middle.
pub(crate) fn centred_text(context: &Context, weight: u16, size: u16) {
    context.set_font(&format!("{weight} {size}px {FAMILY}"));
    context.set_text_align("center");
    context.set_text_baseline("middle");
}
