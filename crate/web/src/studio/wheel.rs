//! Draws the hue wheel: its disc, its paints, the kit's reach; and what lies over it, in order.

use washpath_core::hue::HUE_NAMES;
use wasm_bindgen::JsValue;
use web_sys::CanvasRenderingContext2d as Context;

use crate::studio::dab;
use crate::studio::geometry::{Frame, RIM, Spot};
use crate::studio::marks::{draw_drops, draw_records, draw_target};
use crate::studio::names::name_spot;
use crate::studio::pen::{Drawn, FAMILY, SMALL, circle, dashed, line, polyline, solid};
use crate::studio::scene::Scene;
use crate::studio::stand::Stand;
use crate::studio::strand::{Strand, draw_band, draw_pin, draw_ribbon, draw_strand, draw_ticks};

/// The disc, its rings and names, reaches, the shelf's dots, the tails of the paints.
///
/// The first outline is the kit's own, further ones are drawn dashed.
pub(crate) fn draw_ground(
    context: &Context,
    scene: &Scene,
    stands: &[&Stand],
    outlines: &[Vec<Spot>],
) -> Drawn {
    let frame = Frame::new(scene.size);
    disc(context, scene, &frame)?;
    names(context, scene, &frame)?;
    for (i, outline) in outlines.iter().enumerate() {
        draw_outline(context, scene, outline, i == 0)?;
    }
    let (dabs, dots): (Vec<&Stand>, _) = stands.iter().partition(|stand| scene.shows(stand.paint.number));
    for stand in dots {
        dot(context, stand, frame.spot(stand.point), scene)?;
    }
    for stand in dabs {
        tail(context, stand, &frame);
    }
    Ok(())
}

/// What lies on the wheel besides its paints and its path: points and CSS colours.
pub(crate) struct Over<'a> {
    /// Paths that were kept.
    pub pins: &'a [Vec<(Spot, String)>],
    /// Puddles.
    pub drops: &'a [(Spot, String)],
    /// Records: where each was predicted, and where it was seen.
    pub records: &'a [[(Spot, String); 2]],
    /// The colour to match.
    pub target: Option<&'a (Spot, String)>,
}

/// The dabs and what lies over them: paths, drops, records, the colour to match.
pub(crate) fn draw_paths(
    context: &Context,
    scene: &Scene,
    stands: &[&Stand],
    strand: Option<&Strand>,
    over: &Over<'_>,
) -> Drawn {
    let frame = Frame::new(scene.size);
    if let Some(strand) = strand {
        // Under the dabs: nothing may tint them.
        draw_ribbon(context, strand);
        draw_band(context, scene, strand);
    }
    for stand in stands {
        dab::draw(context, &stand.dab, frame.spot(stand.point), frame.dab())?;
    }
    for pin in over.pins {
        draw_pin(context, scene, pin);
    }
    draw_drops(context, scene, over.drops)?;
    if let Some(strand) = strand {
        draw_strand(context, scene, strand);
        draw_ticks(context, scene, strand);
    }
    draw_records(context, scene, over.records)?;
    if let Some((spot, css)) = over.target {
        draw_target(context, scene, *spot, css);
    }
    Ok(())
}

fn disc(context: &Context, scene: &Scene, frame: &Frame) -> Drawn {
    let centre = Spot { x: frame.centre, y: frame.centre };
    context.set_fill_style_str(&scene.ink.paper);
    circle(context, centre, frame.radius + 1.0)?;
    context.fill();
    context.set_stroke_style_str(&scene.ink.line);
    context.set_line_width(1.0);
    for ring in [10.0, 20.0, 30.0, f64::from(RIM)] {
        circle(context, centre, frame.radius * ring / f64::from(RIM))?;
        context.stroke();
    }
    for step in 0..12 {
        let spoke = |radius: f64| frame.polar(f64::from(step) * 30.0, radius);
        line(context, spoke(frame.radius * 0.06), spoke(frame.radius));
    }
    Ok(())
}

fn names(context: &Context, scene: &Scene, frame: &Frame) -> Drawn {
    context.set_fill_style_str(&scene.ink.rim);
    context.set_text_align("center");
    context.set_text_baseline("middle");
    context.set_font(&format!("400 {}px {FAMILY}", if scene.size < SMALL { 13 } else { 15 }));
    for (angle, name) in HUE_NAMES {
        let spot = name_spot(scene, frame, angle);
        context.save();
        context.translate(spot.x, spot.y)?;
        // Names follow the rim and are never upside down.
        let turn = 90.0 - angle + if angle > 180.0 { 180.0 } else { 0.0 };
        context.rotate(turn.to_radians())?;
        context.fill_text(name, 0.0, 0.0)?;
        context.restore();
    }
    Ok(())
}

fn draw_outline(context: &Context, scene: &Scene, outline: &[Spot], own: bool) -> Result<(), JsValue> {
    context.set_stroke_style_str(&scene.ink.quiet);
    context.set_line_width(1.5);
    if !own {
        dashed(context, 5.0)?;
    }
    polyline(context, &smoothed(outline));
    context.close_path();
    context.stroke();
    solid(context)
}

/// A closed line without the small steps that whole ratios leave in it: each corner as the mean of itself and its
/// neighbours, by the weights of a bell, three times. No corner moves by more than a pixel or two.
fn smoothed(line: &[Spot]) -> Vec<Spot> {
    const BELL: [f64; 5] = [1.0 / 16.0, 4.0 / 16.0, 6.0 / 16.0, 4.0 / 16.0, 1.0 / 16.0];
    let count = line.len();
    let mut line = line.to_vec();
    for _ in 0..3 {
        let mean = |i: usize, of: fn(&Spot) -> f64| -> f64 {
            BELL.iter().enumerate().map(|(k, weight)| weight * of(&line[(i + count + k - 2) % count])).sum()
        };
        line = (0..count).map(|i| Spot { x: mean(i, |spot| spot.x), y: mean(i, |spot| spot.y) }).collect();
    }
    line
}

fn dot(context: &Context, stand: &Stand, at: Spot, scene: &Scene) -> Drawn {
    circle(context, at, 4.5)?;
    context.set_fill_style_str(&stand.css);
    context.fill();
    context.set_stroke_style_str(&scene.ink.quiet);
    context.set_line_width(0.75);
    context.stroke();
    Ok(())
}

fn tail(context: &Context, stand: &Stand, frame: &Frame) {
    context.set_line_cap("round");
    context.set_line_width(2.0);
    for pair in stand.tail.windows(2) {
        context.set_stroke_style_str(&pair[0].1);
        line(context, frame.spot(pair[0].0), frame.spot(pair[1].0));
    }
}
