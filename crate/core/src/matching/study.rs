//! Value studies: a picture repainted with the nearest mixes of a reach.

use std::collections::BTreeMap;

use crate::colour::display::shown;
use crate::colour::{Lab, delta_e, lab_of_rgb};
use crate::error::Error;
use crate::matching::picture::Picture;
use crate::matching::shapes::Map;
use crate::reach::Reach;

/// Levels of red, green and blue for which the nearest mix is looked up; pixels take the nearest level.
const LEVELS: usize = 24;

/// Side of a cell of the index of mixes, in CIELAB; mixes of a cell are one to the eye.
const CELL: f32 = 3.0;

/// Mixes nearest in CIELAB, among which CIEDE2000 decides.
const COMPARED: usize = 6;

/// L* of the darkest and the lightest value of a study.
const VALUES: [f32; 2] = [20.0, 97.0];

/// Most values of a study: steps of less than one L* are none.
const MOST_VALUES: usize = 77;

/// How often the square around a pixel goes, from its middle, into the longer side of a picture.
const RADII: usize = 128;

/// How often a map of values is smoothed: what one majority leaves ragged, the next ones round.
const PASSES: usize = 3;

/// A picture repainted: RGBA bytes, alpha as it was.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Study {
    /// With the nearest mixes.
    pub colours: Vec<u8>,
    /// With the greys of their lightness.
    pub greys: Vec<u8>,
}

/// Repaints a picture with the mixes of a reach; in so many values of L*, or in all for 0 or 1.
///
/// Few values come in shapes, as a brush lays them.
///
/// # Errors
///
/// A reach without a paint, or more than 77 values.
pub fn study(picture: Picture<'_>, reach: &Reach, values: usize) -> Result<Study, Error> {
    let mixes = thinned(reach);
    if mixes.is_empty() {
        return Err(Error::Missing("no paint to repaint with"));
    }
    if values > MOST_VALUES {
        return Err(Error::Value(format!("{values} values are more than {MOST_VALUES}")));
    }
    let painted = repainted(picture, &mixes);
    let laid = if values < 2 { painted } else { in_shapes(picture, &painted, &mixes, values) };
    let mut known = BTreeMap::new();
    let (mut colours, mut greys) = (Vec::new(), Vec::new());
    for (lab, [_, _, _, alpha]) in laid.into_iter().zip(picture.pixels()) {
        let key = [lab.l, lab.a, lab.b].map(f32::to_bits);
        let [colour, grey] =
            *known.entry(key).or_insert_with(|| [lab, Lab::new(lab.l, 0.0, 0.0)].map(|lab| shown(lab).rgb));
        colours.extend([colour[0], colour[1], colour[2], alpha]);
        greys.extend([grey[0], grey[1], grey[2], alpha]);
    }
    Ok(Study { colours, greys })
}

/// The mix nearest to each pixel.
fn repainted(picture: Picture<'_>, mixes: &[Lab]) -> Vec<Lab> {
    let mut known: Vec<Option<Lab>> = vec![None; LEVELS * LEVELS * LEVELS];
    let mix_of = |[r, g, b, _]: [u8; 4]| {
        let [i, j, k] = [r, g, b].map(level);
        *known[(i * LEVELS + j) * LEVELS + k]
            .get_or_insert_with(|| nearest(mixes, lab_of_rgb([i, j, k].map(byte))))
    };
    picture.pixels().map(mix_of).collect()
}

/// Each pixel in the value that most around it have, and in the hue of the mix nearest to what they are on average.
fn in_shapes(picture: Picture<'_>, painted: &[Lab], mixes: &[Lab], values: usize) -> Vec<Lab> {
    let width = picture.width();
    let radius = width.max(painted.len() / width).div_ceil(RADII);
    let mut map = Map {
        label: painted.iter().map(|lab| step(lab.l, values)).collect(),
        seen: picture.pixels().map(|[_, _, _, alpha]| alpha > 0).collect(),
        width,
        kinds: values,
    };
    for _ in 0..PASSES {
        map.smooth(radius);
    }
    let hues: Vec<[f32; 2]> = painted.iter().map(|lab| [lab.a, lab.b]).collect();
    let mut known = BTreeMap::new();
    let laid = map.around(radius, &hues).into_iter().map(|(step, hue)| {
        let l = lightness(step, values);
        let cell = hue.map(|part| (part / CELL).round() as i16);
        *known.entry((step, cell)).or_insert_with(|| {
            let [a, b] = cell.map(|part| f32::from(part) * CELL);
            let mix = nearest(mixes, Lab::new(l, a, b));
            Lab::new(l, mix.a, mix.b)
        })
    });
    laid.collect()
}

/// One mix a cell of CIELAB.
fn thinned(reach: &Reach) -> Vec<Lab> {
    let mut seen = std::collections::BTreeSet::new();
    let cell = |lab: Lab| [lab.l, lab.a, lab.b].map(|value| (value / CELL).round() as i16);
    reach.mixes().map(|mix| mix.lab()).filter(|lab| seen.insert(cell(*lab))).collect()
}

fn nearest(mixes: &[Lab], target: Lab) -> Lab {
    let away =
        |lab: &Lab| (lab.l - target.l).powi(2) + (lab.a - target.a).powi(2) + (lab.b - target.b).powi(2);
    let mut best = [(f32::INFINITY, mixes[0]); COMPARED];
    for lab in mixes {
        let distance = away(lab);
        if distance < best[COMPARED - 1].0 {
            let at = best.partition_point(|(known, _)| *known <= distance);
            best[at..].rotate_right(1);
            best[at] = (distance, *lab);
        }
    }
    let seen = best.iter().map(|(_, lab)| (delta_e(*lab, target), *lab));
    seen.min_by(|a, b| a.0.total_cmp(&b.0)).map_or(mixes[0], |(_, lab)| lab)
}

/// Which of so many steps of value, from the darkest on, an L* is nearest to.
fn step(l: f32, values: usize) -> usize {
    let last = (values - 1) as f32;
    ((l - VALUES[0]) / (VALUES[1] - VALUES[0]) * last).round().clamp(0.0, last) as usize
}

/// L* of a step of value.
fn lightness(step: usize, values: usize) -> f32 {
    VALUES[0] + (VALUES[1] - VALUES[0]) * step as f32 / (values - 1) as f32
}

fn level(byte: u8) -> usize {
    (usize::from(byte) * (LEVELS - 1) + 127) / 255
}

fn byte(level: usize) -> u8 {
    (level * 255 / (LEVELS - 1)) as u8
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Light, PaintNumber, Shelf, Stock, View};

    fn reach() -> Reach {
        let view = View::new(&Stock::BrightWhite.paper(), Light::D65);
        Reach::new(&[1, 72, 102].map(PaintNumber::new), Shelf::built_in(), &view).unwrap()
    }

    #[test]
    fn a_mixable_picture_stays_itself_and_another_comes_near() {
        let reach = reach();
        let mixes: Vec<Lab> = reach.mixes().step_by(97).map(|mix| mix.lab()).collect();
        let bytes: Vec<u8> = mixes.iter().flat_map(|lab| [&shown(*lab).rgb[..], &[255]].concat()).collect();
        let found = study(Picture::new(&bytes, mixes.len()).unwrap(), &reach, 0).unwrap();
        let mut off: Vec<f32> = (mixes.iter().zip(found.colours.chunks_exact(4)))
            .filter(|(lab, _)| shown(**lab).exact)
            .map(|(lab, pixel)| delta_e(*lab, lab_of_rgb([pixel[0], pixel[1], pixel[2]])))
            .collect();
        off.sort_by(f32::total_cmp);
        // Levels of the look-up lie 11 of 255 apart, cells of mixes 3 units.
        assert!(off[off.len() / 2] < 2.5 && off[off.len() - 1] < 9.0, "{off:?}");
        for (colour, grey) in found.colours.chunks_exact(4).zip(found.greys.chunks_exact(4)) {
            assert_eq!((grey[0], grey[3]), (grey[1], 255));
            let [l, m] = [colour, grey].map(|p| lab_of_rgb([p[0], p[1], p[2]]).l);
            assert!((l - m).abs() < 1.0, "{l} {m}");
        }
    }

    #[test]
    fn few_values_are_few() {
        let bytes: Vec<u8> = (0..=255u8).flat_map(|v| [v, v, v, 255]).collect();
        let found = study(Picture::new(&bytes, 256).unwrap(), &reach(), 3).unwrap();
        let values: std::collections::BTreeSet<u8> =
            found.greys.chunks_exact(4).map(|pixel| pixel[0]).collect();
        assert_eq!(values.len(), 3);
    }

    #[test]
    fn few_values_come_in_shapes() {
        // Dark and light halves, 120 pixels wide, under noise that now and then crosses the middle of the values.
        let noise = |i: usize| (i * 2_654_435_761 % 211) as i32 - 105;
        let shade = |i: usize| (128 + if i % 120 < 60 { -60 } else { 60 } + noise(i)).clamp(0, 255) as u8;
        let bytes: Vec<u8> = (0..120 * 80).flat_map(|i| [shade(i), shade(i), shade(i), 255]).collect();
        let edges = |values: &[u8]| {
            let pixel = |i: usize| values[4 * i];
            (0..120 * 80).filter(|i| i % 120 > 0 && pixel(*i) != pixel(i - 1)).count()
        };
        let found = study(Picture::new(&bytes, 120).unwrap(), &reach(), 2).unwrap();
        // One edge a row; the photo itself has one at nearly every pixel.
        assert!((80..120).contains(&edges(&found.greys)), "{}", edges(&found.greys));
    }

    #[test]
    fn too_many_values_are_refused() {
        let picture = Picture::new(&[9, 9, 9, 255], 1).unwrap();
        assert!(study(picture, &reach(), MOST_VALUES + 1).is_err());
    }

    #[test]
    fn without_paint_nothing_is_repainted() {
        let view = View::new(&Stock::BrightWhite.paper(), Light::D65);
        let nothing = Reach::new(&[], Shelf::built_in(), &view).unwrap();
        assert!(study(Picture::new(&[0, 0, 0, 255], 1).unwrap(), &nothing, 0).is_err());
    }
}
