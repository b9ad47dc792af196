//! Marks on the wheel: ends, crossing, the mix at hand, kept mixes, wheel points asked for.

use washpath_core::{CrossingKind, whole_parts};
use wasm_bindgen::JsValue;
use web_sys::CanvasRenderingContext2d as Context;

use crate::studio::geometry::{Frame, Label, Spot};
use crate::studio::pen::{Drawn, centred_text, circle, dashed, line, ring, solid};
use crate::studio::scene::Scene;
use crate::studio::stand::Stand;
use crate::studio::strand::Strand;

/// Rings round the dabs of the ends and of the keyboard's cursor; dashes where the display falls short.
pub(crate) fn draw_rings(context: &Context, scene: &Scene, frame: &Frame, stands: &[&Stand]) -> Drawn {
    for stand in stands {
        let number = stand.paint.number;
        let spot = frame.spot(stand.point);
        context.set_stroke_style_str(&scene.ink.strong);
        if !stand.exact {
            context.set_line_width(1.25);
            dashed(context, 2.5)?;
            circle(context, spot, frame.dab() - 3.0)?;
            context.stroke();
            solid(context)?;
        }
        context.set_line_width(2.0);
        for (marked, beyond) in [(scene.is_end(number), 1.5), (scene.cursor == number, 5.0)] {
            if marked {
                circle(context, spot, frame.dab() + beyond)?;
                context.stroke();
            }
        }
    }
    Ok(())
}

/// Kept mixes: a drop each.
pub(crate) fn draw_drops(context: &Context, scene: &Scene, drops: &[(Spot, String)]) -> Drawn {
    for (spot, css) in drops {
        drop_shape(context, *spot)?;
        context.set_fill_style_str(css);
        context.fill();
        context.set_stroke_style_str(&scene.ink.paper);
        context.set_line_width(4.0);
        context.stroke();
        context.set_stroke_style_str(&scene.ink.strong);
        context.set_line_width(1.75);
        context.stroke();
    }
    Ok(())
}

/// The number of a kept mix by its place in the list, from 0: over the path, on which most of them lie.
pub(crate) fn draw_number(context: &Context, scene: &Scene, place: usize, at: Spot) -> Drawn {
    centred_text(context, 600, 12);
    context.set_line_width(4.0);
    context.set_stroke_style_str(&scene.ink.paper);
    context.set_fill_style_str(&scene.ink.strong);
    let name = format!("{}", place + 1);
    context.stroke_text(&name, at.x, at.y)?;
    context.fill_text(&name, at.x, at.y)
}

/// Where the number of a mix kept at this place stands.
pub(crate) fn number_spot(at: Spot) -> Spot {
    Spot { x: at.x + 13.0, y: at.y - 9.0 }
}

/// Records as small squares, each on a thin line from where it was predicted.
pub(crate) fn draw_records(context: &Context, scene: &Scene, records: &[[(Spot, String); 2]]) -> Drawn {
    const HALF: f64 = 5.0;
    for [(predicted, _), (seen, css)] in records {
        context.set_stroke_style_str(&scene.ink.strong);
        context.set_line_width(1.0);
        line(context, *predicted, *seen);
        context.set_fill_style_str(css);
        context.fill_rect(seen.x - HALF, seen.y - HALF, 2.0 * HALF, 2.0 * HALF);
        for (ink, off, width) in [(&scene.ink.paper, 1.0, 2.0), (&scene.ink.strong, 2.0, 1.25)] {
            let (half, side) = (HALF + off - 0.5, 2.0 * (HALF + off) - 1.0);
            context.set_stroke_style_str(ink);
            context.set_line_width(width);
            context.stroke_rect(seen.x - half, seen.y - half, side, side);
        }
    }
    Ok(())
}

/// The colour to match as a diamond.
pub(crate) fn draw_target(context: &Context, scene: &Scene, at: Spot, css: &str) {
    const HALF: f64 = 11.0;
    context.begin_path();
    for (x, y) in [(0.0, -HALF), (HALF, 0.0), (0.0, HALF), (-HALF, 0.0)] {
        context.line_to(at.x + x, at.y + y);
    }
    context.close_path();
    for (ink, width) in [(&scene.ink.strong, 7.0), (&scene.ink.paper, 4.0)] {
        context.set_stroke_style_str(ink);
        context.set_line_width(width);
        context.stroke();
    }
    context.set_fill_style_str(css);
    context.fill();
}

fn drop_shape(context: &Context, at: Spot) -> Drawn {
    use std::f64::consts::PI;
    context.begin_path();
    context.arc(at.x, at.y + 1.5, 8.0, -0.2 * PI, 1.2 * PI)?;
    context.line_to(at.x, at.y - 11.5);
    context.close_path();
    Ok(())
}

/// A small cross where an empty wheel point was asked for, and a line to the mix that comes nearest.
pub(crate) fn draw_asked(context: &Context, scene: &Scene, frame: &Frame, strand: &Strand) -> Drawn {
    let ends = [strand.steps.first(), strand.steps.last()];
    for (asked, step) in scene.asked.iter().zip(ends) {
        let (Some(point), Some(step)) = (asked, step) else { continue };
        let spot = frame.spot_at(*point);
        context.set_stroke_style_str(&scene.ink.strong);
        context.set_line_width(1.25);
        dashed(context, 3.0)?;
        line(context, spot, step.spot);
        solid(context)?;
        plus(context, spot, 5.0);
    }
    Ok(())
}

/// The keyboard's cross.
pub(crate) fn cross(context: &Context, scene: &Scene, at: Spot) -> Drawn {
    context.set_line_cap("butt");
    for (width, colour) in [(5.0, &scene.ink.paper), (2.0, &scene.ink.strong)] {
        context.set_stroke_style_str(colour);
        context.set_line_width(width);
        plus(context, at, 14.0);
    }
    ring(context, at, 8.0, &scene.ink.paper, &scene.ink.strong)
}

fn plus(context: &Context, at: Spot, arm: f64) {
    line(context, Spot { x: at.x - arm, y: at.y }, Spot { x: at.x + arm, y: at.y });
    line(context, Spot { x: at.x, y: at.y - arm }, Spot { x: at.x, y: at.y + arm });
}

/// What the place is called where the path is greyest, with its whole parts; nothing where it is not grey.
pub(crate) fn crossing_name(strand: &Strand) -> Option<String> {
    let name = match strand.crossing.kind {
        CrossingKind::Pure => "pure grey",
        CrossingKind::Near => "near grey",
        CrossingKind::Dull => "dullest",
        CrossingKind::None => return None,
    };
    Some(format!("{name} {}", whole_parts(strand.crossing.share)))
}

/// Width and height of a name beside the path.
pub(crate) fn tag_size(context: &Context, name: &str) -> Result<(f64, f64), JsValue> {
    centred_text(context, 600, 15);
    Ok((context.measure_text(name)?.width() + 16.0, 25.0))
}

/// The ring where the path is greyest, and its name.
pub(crate) fn crossing_mark(context: &Context, scene: &Scene, at: Spot, name: &str, label: &Label) -> Drawn {
    ring(context, at, 8.0, &scene.ink.paper, &scene.ink.strong)?;
    centred_text(context, 600, 15);
    context.begin_path();
    context.round_rect_with_f64(label.left, label.top, label.width, label.height, 12.0)?;
    context.set_fill_style_str(&scene.ink.strong);
    context.fill();
    context.set_fill_style_str(&scene.ink.paper);
    let middle = label.middle();
    context.fill_text(name, middle.x, middle.y + 0.5)
}

/// Radius of the mark of the mix at hand.
pub(crate) const HANDLE: f64 = 15.0;

/// The mix at hand.
pub(crate) fn handle(context: &Context, scene: &Scene, at: Spot, css: &str) -> Drawn {
    for (radius, colour) in
        [(HANDLE, scene.ink.strong.as_str()), (13.5, scene.ink.paper.as_str()), (10.5, css)]
    {
        circle(context, at, radius)?;
        context.set_fill_style_str(colour);
        context.fill();
    }
    Ok(())
}

/// An end's letter in a small disc.
pub(crate) fn tag(context: &Context, scene: &Scene, at: Spot, letter: &str) -> Drawn {
    circle(context, at, 10.0)?;
    context.set_fill_style_str(&scene.ink.strong);
    context.fill();
    context.set_fill_style_str(&scene.ink.paper);
    centred_text(context, 600, 13);
    context.fill_text(letter, at.x, at.y + 0.5)
}
