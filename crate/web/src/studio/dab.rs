//! A painted dab: masstone bleeding into wash, an uneven edge where paint pools, grain where it granulates.
//!
//! So a black looks black in a list, and what a paint does when it is thinned shows at a glance. A mix
//! at a load of its own is one colour: exactly the predicted one, with rim and grain around its middle.

use std::f64::consts::TAU;

use washpath_core::Film;
use wasm_bindgen::JsValue;
use web_sys::{CanvasGradient, CanvasRenderingContext2d as Context};

use crate::sight::Sight;
use crate::studio::geometry::Spot;

/// Loads of a dab from where the brush set it down to where water took it, and how far across each stands.
const BLEED: [(f32, f32); 4] = [(1.0, 0.12), (0.55, 0.45), (0.25, 0.75), (0.07, 1.0)];

/// How much more paint than within lies at the edge, where a drying dab pools.
pub(crate) const POOLED: f32 = 1.6;

/// What a dab looks like.
pub(crate) struct Dab {
    /// Its colours from the pool to the thin side, as CSS, and how far across each stands, 0 to 1.
    within: Vec<(f32, String)>,
    /// The same of its edge.
    edge: Vec<(f32, String)>,
    /// 0 smooth to 4 granulating.
    grain: f32,
    /// Gives each paint its own edge.
    seed: u32,
}

impl Dab {
    /// A dab of a film: bleeding, or as a wash of one load. `grain` is 0 to 4; each `seed` has an edge of its own.
    pub(crate) fn new(film: &Film, load: Option<f32>, sight: &Sight, grain: f32, seed: u32) -> Self {
        let loads = load.map_or(BLEED.to_vec(), |load| vec![(load, 0.0)]);
        let colours = |heavier: f32| {
            let colour = |&(load, at): &(f32, f32)| (at, sight.css(sight.view.colour(film, load * heavier)));
            loads.iter().map(colour).collect()
        };
        Self { within: colours(1.0), edge: colours(POOLED), grain, seed }
    }
}

/// Draws a dab round `at`.
pub(crate) fn draw(context: &Context, dab: &Dab, at: Spot, radius: f64) -> Result<(), JsValue> {
    context.save();
    outline(context, dab.seed, at, radius);
    context.set_fill_style_canvas_gradient(&across(context, &dab.within, at, radius)?);
    context.fill();
    context.clip();
    let edge = across(context, &dab.edge, at, radius)?;
    context.set_stroke_style_canvas_gradient(&edge);
    // A soft inner edge and a hard outer one, as wet paint dries.
    for (width, alpha) in [(0.3, 0.14), (0.12, 0.5)] {
        context.set_global_alpha(alpha);
        context.set_line_width((radius * width).max(1.2));
        context.stroke();
    }
    context.set_fill_style_canvas_gradient(&edge);
    grain(context, dab, at, radius)?;
    context.restore();
    Ok(())
}

/// Colours run from the left, where the brush was set down, to the right: across the light, or a dab would look like a ball.
fn across(
    context: &Context,
    colours: &[(f32, String)],
    at: Spot,
    radius: f64,
) -> Result<CanvasGradient, JsValue> {
    const SLANT: (f64, f64) = (0.88, 0.34);
    let (x, y) = (SLANT.0 * radius, SLANT.1 * radius);
    let gradient = context.create_linear_gradient(at.x - x, at.y - y, at.x + x, at.y + y);
    for (stop, css) in colours {
        gradient.add_color_stop(*stop, css)?;
    }
    Ok(gradient)
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
fn grain(context: &Context, dab: &Dab, at: Spot, radius: f64) -> Result<(), JsValue> {
    let specks = (dab.grain.clamp(0.0, 4.0) * 0.6 * radius as f32) as u32;
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
