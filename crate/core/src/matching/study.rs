//! Value studies: a picture repainted with the nearest mixes of a reach.

use crate::colour::display::shown;
use crate::colour::{Lab, delta_e, lab_of_rgb};
use crate::error::Error;
use crate::matching::picture::Picture;
use crate::reach::Reach;

/// Levels of red, green and blue for which the nearest mix is looked up; pixels take the nearest level.
const LEVELS: usize = 24;

/// Side of a cell of the index of mixes, in CIELAB; mixes of a cell are one to the eye.
const CELL: f32 = 3.0;

/// Mixes nearest in CIELAB, among which CIEDE2000 decides.
const COMPARED: usize = 6;

/// A picture repainted: RGBA bytes, alpha as it was.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Study {
    /// With the nearest mixes.
    pub colours: Vec<u8>,
    /// With the greys of their lightness.
    pub greys: Vec<u8>,
}

/// Repaints a picture with the mixes of a reach; in so many values of L*, or in all for 0.
///
/// # Errors
///
/// A reach without a paint.
pub fn study(picture: Picture<'_>, reach: &Reach, values: usize) -> Result<Study, Error> {
    let mixes = thinned(reach);
    if mixes.is_empty() {
        return Err(Error::Refused("no paint to repaint with"));
    }
    let mut known: Vec<Option<[[u8; 3]; 2]>> = vec![None; LEVELS * LEVELS * LEVELS];
    let (mut colours, mut greys) = (Vec::new(), Vec::new());
    for [r, g, b, alpha] in picture.pixels() {
        let [i, j, k] = [r, g, b].map(level);
        let [colour, grey] = *known[(i * LEVELS + j) * LEVELS + k].get_or_insert_with(|| {
            let lab = nearest(&mixes, lab_of_rgb([i, j, k].map(byte)));
            [shown(stepped(lab, values)).rgb, shown(Lab::new(stepped(lab, values).l, 0.0, 0.0)).rgb]
        });
        colours.extend([colour[0], colour[1], colour[2], alpha]);
        greys.extend([grey[0], grey[1], grey[2], alpha]);
    }
    Ok(Study { colours, greys })
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

/// The colour at the middle of its step of value; as it is for 0 or 1 steps.
fn stepped(lab: Lab, values: usize) -> Lab {
    /// L* of the darkest and the lightest value of a study.
    const VALUES: [f32; 2] = [20.0, 97.0];
    if values < 2 {
        return lab;
    }
    let span = VALUES[1] - VALUES[0];
    let last = (values - 1) as f32;
    let step = ((lab.l - VALUES[0]) / span * last).round().max(0.0).min(last);
    Lab::new(VALUES[0] + span * step / last, lab.a, lab.b)
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
    use crate::{Light, Shelf, Stock, View};

    fn reach() -> Reach {
        let view = View::new(&Stock::BrightWhite.paper(), Light::D65);
        Reach::new(&[1, 72, 102], Shelf::built_in(), &view).unwrap()
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
    fn without_paint_nothing_is_repainted() {
        let view = View::new(&Stock::BrightWhite.paper(), Light::D65);
        let nothing = Reach::new(&[], Shelf::built_in(), &view).unwrap();
        assert!(study(Picture::new(&[0, 0, 0, 255], 1).unwrap(), &nothing, 0).is_err());
    }
}
