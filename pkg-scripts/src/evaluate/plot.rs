//! Curves of how many predictions lie within an error, and of errors against something, as SVG.

use std::path::Path;

use anyhow::{Result, anyhow};
use plotters::prelude::*;

/// One curve: its name and the errors it counts.
pub(super) type Curve<'a> = (&'a str, &'a [f64]);

const INKS: [RGBColor; 4] = [
    RGBColor(0x1c, 0x1c, 0x1c),
    RGBColor(0x23, 0x40, 0x9c),
    RGBColor(0xa4, 0x50, 0x2a),
    RGBColor(0x2e, 0x7d, 0x5b),
];

/// Draws, for each curve, the share of its errors that are at most x, for x up to `most`.
pub(super) fn cumulative(
    file: &Path,
    title: &str,
    axis: &str,
    most: f64,
    curves: &[Curve<'_>],
) -> Result<()> {
    let lines: Vec<Line> =
        curves.iter().map(|(name, errors)| (format!("{name} ({})", errors.len()), steps(errors))).collect();
    draw(file, title, [axis, "share within, %"], [most, 100.0], &lines, SeriesLabelPosition::LowerRight)
}

/// One line: its name and its points, by ascending x.
pub(crate) type Line = (String, Vec<(f64, f64)>);

/// Draws lines; both axes begin at 0.
pub(crate) fn lines(file: &Path, title: &str, axes: [&str; 2], most: [f64; 2], lines: &[Line]) -> Result<()> {
    draw(file, title, axes, most, lines, SeriesLabelPosition::UpperRight)
}

fn draw(
    file: &Path,
    title: &str,
    axes: [&str; 2],
    most: [f64; 2],
    lines: &[Line],
    key: SeriesLabelPosition,
) -> Result<()> {
    // The drawing's own error borrows from it: only its text can leave.
    try_draw(file, title, axes, most, lines, key).map_err(|error| anyhow!("{}: {error}", file.display()))
}

fn try_draw(
    file: &Path,
    title: &str,
    axes: [&str; 2],
    most: [f64; 2],
    lines: &[Line],
    key: SeriesLabelPosition,
) -> Result<(), Box<dyn std::error::Error>> {
    let area = SVGBackend::new(file, (720, 400)).into_drawing_area();
    area.fill(&WHITE)?;
    let mut chart = ChartBuilder::on(&area)
        .caption(title, ("sans-serif", 18))
        .margin(12)
        .x_label_area_size(40)
        .y_label_area_size(52)
        .build_cartesian_2d(0.0..most[0], 0.0..most[1])?;
    chart
        .configure_mesh()
        .x_desc(axes[0])
        .y_desc(axes[1])
        .light_line_style(TRANSPARENT)
        .bold_line_style(RGBColor(0xdd, 0xdd, 0xdd))
        .draw()?;
    for ((name, points), ink) in lines.iter().zip(INKS) {
        chart
            .draw_series(LineSeries::new(points.clone(), ink.stroke_width(2)))?
            .label(name)
            .legend(move |(x, y)| PathElement::new([(x, y), (x + 18, y)], ink.stroke_width(2)));
    }
    chart
        .configure_series_labels()
        .position(key)
        .background_style(WHITE)
        .border_style(RGBColor(0xdd, 0xdd, 0xdd))
        .draw()?;
    area.present()?;
    Ok(())
}

/// Corners of the curve: at the i-th smallest of n errors, i of n lie within.
fn steps(errors: &[f64]) -> Vec<(f64, f64)> {
    let mut sorted = errors.to_vec();
    sorted.sort_by(f64::total_cmp);
    let share = |i: usize| 100.0 * i as f64 / sorted.len() as f64;
    let corners = sorted.iter().enumerate().map(|(i, error)| (*error, share(i + 1)));
    std::iter::once((0.0, 0.0)).chain(corners).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_curve_rises_to_all() {
        assert_eq!(steps(&[2.0, 1.0]), [(0.0, 0.0), (1.0, 50.0), (2.0, 100.0)]);
        assert_eq!(steps(&[]), [(0.0, 0.0)]);
    }
}
