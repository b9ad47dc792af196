//! The gamut of real paint: an even set of colours to hold a kit's reach against.
//!
//! As M. R. Pointer, "The gamut of real surface colours", Color Research and
//! Application 5 (1980) 145, took the outermost of measured surfaces for the
//! limit of all, this gamut is the convex hull in CIELAB of some two thousand
//! measured artists' pigments and paints, dry, in oil and in watercolour; the
//! table names their sources. A watercolour on paper, whose surface sends back a
//! few percent, cannot reach all of it: L* 10 is out of its way.

use std::sync::LazyLock;

use crate::colour::Lab;

/// Distance between neighbours in L*, a* and b*.
pub const GAMUT_STEP: i32 = 10;

type Point = [f64; 3];

static COLOURS: LazyLock<Vec<Lab>> = LazyLock::new(|| lattice(&facets(&corners())));

/// Colours spread evenly, by [`GAMUT_STEP`], over the gamut of real paint; some six hundred.
#[must_use]
pub fn gamut() -> &'static [Lab] {
    &COLOURS
}

/// A plane of the hull: outward normal, and how far out along it the hull goes.
struct Facet {
    normal: Point,
    height: f64,
}

/// The table's colours. The file is part of the program.
fn corners() -> Vec<Point> {
    let mut reader =
        csv::ReaderBuilder::new().comment(Some(b'#')).from_reader(&include_bytes!("../data/gamut.csv")[..]);
    let number = |cell: Option<&str>| {
        cell.and_then(|cell| cell.parse().ok()).expect("gamut.csv holds numbers: a test reads it all")
    };
    let rows = reader.records().filter_map(Result::ok);
    rows.map(|row| [2, 3, 4].map(|column| number(row.get(column)))).collect()
}

/// Every plane through three corners that has all others on one side.
fn facets(corners: &[Point]) -> Vec<Facet> {
    /// Rounding of the table, in units of CIELAB.
    const FLAT: f64 = 1e-6;
    let mut facets = Vec::new();
    for (i, a) in corners.iter().enumerate() {
        for (j, b) in corners.iter().enumerate().skip(i + 1) {
            for c in &corners[j + 1..] {
                let normal = unit(cross(minus(*b, *a), minus(*c, *a)));
                let height = dot(normal, *a);
                let above = corners.iter().any(|corner| dot(normal, *corner) > height + FLAT);
                let below = corners.iter().any(|corner| dot(normal, *corner) < height - FLAT);
                match (above, below) {
                    (false, true) => facets.push(Facet { normal, height }),
                    (true, false) => facets.push(Facet { normal: normal.map(|n| -n), height: -height }),
                    _ => {}
                }
            }
        }
    }
    facets
}

fn lattice(facets: &[Facet]) -> Vec<Lab> {
    let inside = |point: Point| facets.iter().all(|facet| dot(facet.normal, point) <= facet.height);
    let steps = |from: i32, to: i32| (from / GAMUT_STEP..=to / GAMUT_STEP).map(|n| n * GAMUT_STEP);
    let mut colours = Vec::new();
    for l in steps(0, 100) {
        for a in steps(-130, 130) {
            for b in steps(-130, 130) {
                if inside([l, a, b].map(f64::from)) {
                    colours.push(Lab::new(l as f32, a as f32, b as f32));
                }
            }
        }
    }
    colours
}

fn minus(a: Point, b: Point) -> Point {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

fn dot(a: Point, b: Point) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

fn cross(a: Point, b: Point) -> Point {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

fn unit(a: Point) -> Point {
    let length = dot(a, a).sqrt();
    a.map(|component| component / length)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// All measured samples; their sources stand in the table's head.
    fn samples() -> Vec<Point> {
        let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/reference/surface_colours.csv");
        let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_path(path).unwrap();
        let rows: Vec<Point> = reader
            .records()
            .map(|row| [2, 3, 4].map(|i| row.as_ref().unwrap()[i].parse().unwrap()))
            .collect();
        assert!(rows.len() > 1900, "{} samples", rows.len());
        rows
    }

    #[test]
    fn the_hull_is_that_of_the_measured_samples() {
        let (samples, corners) = (samples(), corners());
        let facets = facets(&corners);
        for sample in &samples {
            for facet in &facets {
                assert!(dot(facet.normal, *sample) <= facet.height + 1e-3, "{sample:?} is outside");
            }
        }
        for corner in corners {
            assert!(samples.contains(&corner), "{corner:?} was not measured");
        }
    }

    #[test]
    fn the_hull_is_closed() {
        // Euler's polyhedron formula: triangles on n corners number 2 n - 4.
        let corners = corners();
        assert_eq!(facets(&corners).len(), 2 * corners.len() - 4);
    }

    #[test]
    fn colours_are_many_and_even() {
        let colours = gamut();
        assert!((500..1000).contains(&colours.len()), "{}", colours.len());
        assert!(colours.contains(&Lab::new(50.0, 0.0, 0.0)));
        assert!(!colours.contains(&Lab::new(50.0, 0.0, -90.0)));
    }
}
