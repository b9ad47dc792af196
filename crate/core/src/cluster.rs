//! The colours of a picture, gathered into a few with weights.

use kmeans_colors::get_kmeans_hamerly;

use crate::colour::{Lab, lab_of_rgb, narrow_ciede2000};
use crate::error::Error;
use crate::order::in_order;
use crate::picture::Picture;

/// Fewest and most colours that are asked for.
pub const CLUSTERS: std::ops::RangeInclusive<usize> = 8..=24;

/// CIEDE2000 below which two clusters are one.
const SAME: f32 = 4.0;

/// Most pixels that are looked at; of a larger picture every so manieth.
const MOST_LOOKED_AT: usize = 40_000;

const MOST_ROUNDS: usize = 40;

/// Mean move of the clusters, in CIELAB, at which they have settled.
const SETTLED: f32 = 0.1;

/// Where the choice of the first clusters begins: the same picture always gives the same colours.
const SEED: u64 = 1;

/// Up to so many colours of a picture, each with its part of the picture, the largest first.
///
/// K-means in CIELAB; clusters nearer than CIEDE2000 4 are one, so there may be
/// fewer. Pixels more transparent than not take no part.
///
/// # Errors
///
/// A number outside [`CLUSTERS`]; a picture that is all transparent.
pub fn cluster(picture: Picture<'_>, count: usize) -> Result<Vec<(Lab, f32)>, Error> {
    if !CLUSTERS.contains(&count) {
        let (least, most) = (CLUSTERS.start(), CLUSTERS.end());
        return Err(Error::Value(format!("{count} colours: from {least} to {most} can be found")));
    }
    let opaque: Vec<[u8; 4]> = picture.pixels().filter(|[.., alpha]| *alpha >= 128).collect();
    let step = opaque.len().div_ceil(MOST_LOOKED_AT).max(1);
    let labs: Vec<Lab> = opaque.iter().step_by(step).map(|[r, g, b, _]| lab_of_rgb([*r, *g, *b])).collect();
    if labs.is_empty() {
        return Err(Error::Value("the picture is all transparent".into()));
    }
    let found = get_kmeans_hamerly(count, MOST_ROUNDS, SETTLED, false, &labs, SEED);
    let mut weights = vec![0.0; found.centroids.len()];
    for index in &found.indices {
        weights[usize::from(*index)] += 1.0 / labs.len() as f32;
    }
    let clusters: Vec<(Lab, f32)> = found.centroids.into_iter().zip(weights).collect();
    let clusters = clusters.into_iter().filter(|(_, weight)| *weight > 0.0).collect();
    Ok(in_order(joined(clusters), |(_, weight)| -weight))
}

/// Joins clusters that look alike, the lightest into the heaviest near it.
fn joined(clusters: Vec<(Lab, f32)>) -> Vec<(Lab, f32)> {
    let mut joined: Vec<(Lab, f32)> = Vec::new();
    for (lab, weight) in in_order(clusters, |(_, weight)| -weight) {
        match joined.iter_mut().find(|(known, _)| narrow_ciede2000(*known, lab) < SAME) {
            Some((known, sum)) => {
                let part = weight / (*sum + weight);
                let between = |a: f32, b: f32| a + part * (b - a);
                *known = Lab::new(between(known.l, lab.l), between(known.a, lab.a), between(known.b, lab.b));
                *sum += weight;
            }
            None => joined.push((lab, weight)),
        }
    }
    joined
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Stripes of these colours, as wide as told.
    fn stripes(colours: &[([u8; 4], usize)]) -> Vec<u8> {
        let row: Vec<u8> = colours.iter().flat_map(|(colour, width)| colour.repeat(*width)).collect();
        row.repeat(30)
    }

    #[test]
    fn stripes_come_back_with_their_widths() {
        let colours = [
            ([200, 40, 30, 255], 50),
            ([30, 60, 180, 255], 30),
            ([240, 235, 220, 255], 15),
            ([20, 20, 20, 255], 5),
        ];
        let bytes = stripes(&colours);
        let found = cluster(Picture::new(&bytes, 100).unwrap(), 8).unwrap();
        assert_eq!(found.len(), 4, "{found:?}");
        for ((lab, weight), ([r, g, b, _], width)) in found.iter().zip(colours) {
            assert!(narrow_ciede2000(*lab, lab_of_rgb([r, g, b])) < 0.5);
            assert!((weight - width as f32 / 100.0).abs() < 0.01);
        }
    }

    #[test]
    fn one_picture_gives_one_answer_and_the_transparent_takes_no_part() {
        let bytes = stripes(&[([200, 40, 30, 255], 50), ([0, 255, 0, 0], 50)]);
        let picture = Picture::new(&bytes, 100).unwrap();
        let found = cluster(picture, 12).unwrap();
        assert_eq!(found, cluster(picture, 12).unwrap());
        assert_eq!(found.len(), 1);
        let nothing = stripes(&[([0, 255, 0, 0], 10)]);
        assert!(cluster(Picture::new(&nothing, 10).unwrap(), 12).is_err());
        assert!(cluster(picture, 7).is_err());
    }
}
