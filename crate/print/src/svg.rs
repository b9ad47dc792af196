//! Leaves as SVG 1.1: a document a page, its unit the millimetre.
//!
//! Words are real text in the page's own face where the viewer has it, else in
//! the viewer's. No styles and no scripts: attributes alone.

use std::fmt::Write;

use washpath_core::Decimal;

use crate::area::Area;
use crate::leaf::{Anchor, Leaf, Paintwork, Point, Rgb, Shape, Stroke, Text};

const FAMILY: &str = "'Source Sans 3', 'Helvetica Neue', Arial, sans-serif";

/// A leaf as an SVG document of its true size.
///
/// ```
/// use washpath_print::{Leaf, svg};
/// let text = svg(&Leaf::new(210.0, 297.0));
/// assert!(text.contains("width=\"210mm\" height=\"297mm\" viewBox=\"0 0 210 297\""));
/// ```
#[must_use]
pub fn svg(leaf: &Leaf) -> String {
    let [width, height] = [leaf.width, leaf.height].map(Decimal);
    let mut out = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}mm\" height=\"{height}mm\" \
         viewBox=\"0 0 {width} {height}\" font-family=\"{FAMILY}\">\n\
         <rect width=\"{width}\" height=\"{height}\" fill=\"#ffffff\"/>\n"
    );
    for shape in &leaf.shapes {
        draw(&mut out, shape);
    }
    out.push_str("</svg>\n");
    out
}

fn draw(out: &mut String, shape: &Shape) {
    match shape {
        Shape::Rectangle(Area { left, top, width, height }, paint) => {
            let [x, y, width, height] = [*left, *top, *width, *height].map(Decimal);
            put(out, format_args!("<rect x=\"{x}\" y=\"{y}\" width=\"{width}\" height=\"{height}\""));
            paintwork(out, paint);
        }
        Shape::Circle([x, y], radius, paint) => {
            let [x, y, radius] = [*x, *y, *radius].map(Decimal);
            put(out, format_args!("<circle cx=\"{x}\" cy=\"{y}\" r=\"{radius}\""));
            paintwork(out, paint);
        }
        Shape::Outline(points, paint) => {
            run(out, "polygon", points);
            paintwork(out, paint);
        }
        Shape::Line(points, stroke) => {
            run(out, "polyline", points);
            paintwork(out, &Paintwork { fill: None, edge: Some(*stroke) });
        }
        Shape::Text(text) => words(out, text),
    }
    out.push('\n');
}

/// Writing to a string cannot fail.
fn put(out: &mut String, text: std::fmt::Arguments<'_>) {
    let _ = out.write_fmt(text);
}

fn run(out: &mut String, name: &str, points: &[Point]) {
    put(out, format_args!("<{name} points=\""));
    for (i, [x, y]) in points.iter().enumerate() {
        let gap = if i == 0 { "" } else { " " };
        put(out, format_args!("{gap}{},{}", Decimal(*x), Decimal(*y)));
    }
    out.push('"');
}

fn paintwork(out: &mut String, paint: &Paintwork) {
    match paint.fill {
        Some(fill) => colour(out, "fill", fill),
        None => out.push_str(" fill=\"none\""),
    }
    if let Some(Stroke { width, ink, dashed }) = paint.edge {
        colour(out, "stroke", ink);
        put(out, format_args!(" stroke-width=\"{}\"", Decimal(width)));
        if dashed {
            out.push_str(" stroke-dasharray=\"1 1\"");
        }
    }
    out.push_str("/>");
}

fn words(out: &mut String, text: &Text) {
    let [x, y] = text.at.map(Decimal);
    put(out, format_args!("<text x=\"{x}\" y=\"{y}\" font-size=\"{}\"", Decimal(text.size)));
    colour(out, "fill", text.ink);
    match text.anchor {
        Anchor::Start => {}
        Anchor::Middle => out.push_str(" text-anchor=\"middle\""),
        Anchor::End => out.push_str(" text-anchor=\"end\""),
    }
    if text.upwards {
        put(out, format_args!(" transform=\"rotate(-90 {x} {y})\""));
    }
    out.push('>');
    escape(out, &text.words);
    out.push_str("</text>");
}

fn colour(out: &mut String, name: &str, [red, green, blue]: Rgb) {
    put(out, format_args!(" {name}=\"#{red:02x}{green:02x}{blue:02x}\""));
}

/// Text as XML 1.0 allows it; what it forbids becomes U+FFFD.
fn escape(out: &mut String, words: &str) {
    for character in words.chars() {
        match character {
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '&' => out.push_str("&amp;"),
            '"' => out.push_str("&quot;"),
            '\u{0}'..='\u{1f}' | '\u{7f}'..='\u{9f}' | '\u{fffe}' | '\u{ffff}' => out.push('\u{fffd}'),
            other => out.push(other),
        }
    }
}
