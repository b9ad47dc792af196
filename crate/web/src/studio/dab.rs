//! A painted dab: an uneven edge, a pooled rim, grain where paint granulates.
//!
//! The middle of the dab is exactly the predicted colour; rim and grain only
//! play around it.

use std::f64::consts::TAU;

use wasm_bindgen::JsValue;
use web_sys::CanvasRenderingContext2d as Context;

use crate::studio::geometry::Spot;

/// What a dab looks like.
pub(crate) struct Dab<'a> {
    /// Colour of its middle.
    pub fill: &'a str,
    /// Colour of its rim, where paint pools.
    pub rim: &'a str,
    /// 0 smooth to 4 granulating.
    pub grain: f32,
    /// Gives each paint its own edge.
    pub seed: u32,
}

/// Draws a dab round `at`.
pub(crate) fn draw(context: &Context, dab: &Dab<'_>, at: Spot, radius: f64) -> Result<(), JsValue> {
    context.save();
    outline(context, dab.seed, at, radius);
    context.set_fill_style_str(dab.fill);
    context.fill();
    context.clip();
    context.set_global_alpha(0.55);
    context.set_stroke_style_str(dab.rim);
    context.set_line_width((radius * 0.16).max(1.2));
    context.stroke();
    grain(context, dab, at, radius)?;
    context.restore();
    Ok(())
}

/// The edge: a circle with three slow waves on it.
fn outline(context: &Context, seed: u32, at: Spot, radius: f64) {
    const STEPS: u32 = 40;
    let phase = |i: u32| TAU * f64::from(hash(seed * 7 + i) % 1000) / 1000.0;
    let phases = [phase(1), phase(2), phase(3)];
    context.begin_path();
    for step in 0..STEPS {
        let angle = TAU * f64::from(step) / f64::from(STEPS);
        let wave = 0.035 * (2.0 * angle + phases[0]).sin()
            + 0.03 * (3.0 * angle + phases[1]).sin()
            + 0.018 * (7.0 * angle + phases[2]).sin();
        let r = radius * (0.95 + wave);
        context.line_to(at.x + r * angle.cos(), at.y + r * angle.sin());
    }
    context.close_path();
}

/// Specks outside the middle half, as many as the paint granulates.
fn grain(context: &Context, dab: &Dab<'_>, at: Spot, radius: f64) -> Result<(), JsValue> {
    let specks = (dab.grain.clamp(0.0, 4.0) * 0.6 * radius as f32) as u32;
    context.set_fill_style_str(dab.rim);
    context.set_global_alpha(0.5);
    for speck in 0..specks {
        let random = |i: u32| f64::from(hash(dab.seed * 131 + speck * 3 + i) % 4096) / 4096.0;
        let (angle, out) = (TAU * random(0), radius * (0.5 + 0.45 * random(1)));
        context.begin_path();
        context.arc(at.x + out * angle.cos(), at.y + out * angle.sin(), 0.4 + 0.5 * random(2), 0.0, TAU)?;
        context.fill();
    }
    Ok(())
}

/// Scatters bits; the same seed always paints the same dab.
const fn hash(value: u32) -> u32 {
    let value = (value ^ (value >> 16)).wrapping_mul(0x45d9_f3b5);
    let value = (value ^ (value >> 16)).wrapping_mul(0x45d9_f3b5);
    value ^ (value >> 16)
}
