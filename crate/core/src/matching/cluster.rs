//! The colours of a picture, gathered into a few with weights.
//!
//! Lloyd's k-means (S. P. Lloyd, IEEE Trans. Inf. Theory 28 (1982) 129) in
//! CIELAB, from the heaviest colour and the ones farthest from those before. Its
//! own, small: the crate that fits needs a source of random numbers that a page
//! does not offer, and here one picture must always give the same colours.

use crate::colour::{Lab, delta_e, lab_of_rgb};
use crate::error::Error;
use crate::matching::picture::Picture;
use crate::numeric::sort::in_order;
use crate::text::limits;

/// Fewest and most colours that are asked for.
pub const CLUSTERS: std::ops::RangeInclusive<usize> = 8..=24;

/// CIEDE2000 below which two clusters are one.
const SAME: f32 = 4.0;

/// Bits of red, green and blue by which pixels are counted together.
const BITS: u32 = 5;

const ROUNDS: usize = 30;

/// Up to so many colours of a picture, each with its part of the picture, the largest first.
///
/// Clusters nearer than CIEDE2000 4 are one, so there may be
/// fewer. Pixels more transparent than not take no part.
///
/// # Errors
///
/// A number outside 8 to 24; a picture that is all transparent.
pub fn cluster(picture: Picture<'_>, count: usize) -> Result<Vec<(Lab, f32)>, Error> {
    limits::counted(count, CLUSTERS, "colours", "a picture gives")?;
    let colours = counted(picture);
    let all: f32 = colours.iter().map(|(_, weight)| weight).sum();
    if colours.is_empty() {
        return Err(Error::Picture("the picture is all transparent"));
    }
    let mut middles = first_middles(&colours, count);
    let mut clusters = Vec::new();
    for _ in 0..ROUNDS {
        clusters = gathered(&colours, &middles);
        middles = clusters.iter().map(|(lab, _)| *lab).collect();
    }
    let shares = joined(clusters).into_iter().map(|(lab, weight)| (lab, weight / all));
    Ok(in_order(shares.collect(), |(_, weight)| -weight))
}

/// Mean colours of like pixels, and how many of them there are.
fn counted(picture: Picture<'_>) -> Vec<(Lab, f32)> {
    let mut sums = vec![([0u64; 3], 0u64); 1 << (3 * BITS)];
    for [r, g, b, alpha] in picture.pixels() {
        if alpha < 128 {
            continue;
        }
        let bin = [r, g, b].iter().fold(0, |bin, byte| bin << BITS | usize::from(byte >> (8 - BITS)));
        let (sum, count) = &mut sums[bin];
        for (sum, byte) in sum.iter_mut().zip([r, g, b]) {
            *sum += u64::from(byte);
        }
        *count += 1;
    }
    let mean = |(sum, count): &([u64; 3], u64)| {
        let rgb = sum.map(|sum| ((sum + count / 2) / count) as u8);
        (lab_of_rgb(rgb), *count as f32)
    };
    sums.iter().filter(|(_, count)| *count > 0).map(mean).collect()
}

/// The heaviest colour, and each time the one that is farthest from those before, its weight considered.
fn first_middles(colours: &[(Lab, f32)], count: usize) -> Vec<Lab> {
    let mut away = vec![f32::INFINITY; colours.len()];
    let mut middles: Vec<Lab> = Vec::new();
    while middles.len() < count.min(colours.len()) {
        let pull = |i: usize| if middles.is_empty() { colours[i].1 } else { away[i] * colours[i].1.sqrt() };
        let next = (0..colours.len()).max_by(|a, b| pull(*a).total_cmp(&pull(*b)));
        let Some(next) = next.filter(|next| away[*next] > 0.0) else { break };
        let lab = colours[next].0;
        for (away, (other, _)) in away.iter_mut().zip(colours) {
            *away = away.min(squared(*other, lab));
        }
        middles.push(lab);
    }
    middles
}

/// The mean and the weight of what lies nearest to each middle.
fn gathered(colours: &[(Lab, f32)], middles: &[Lab]) -> Vec<(Lab, f32)> {
    let mut sums = vec![([0.0f32; 3], 0.0f32); middles.len()];
    for (lab, weight) in colours {
        let near = |i: &usize| squared(middles[*i], *lab);
        let Some(i) = (0..middles.len()).min_by(|a, b| near(a).total_cmp(&near(b))) else { continue };
        let (sum, total) = &mut sums[i];
        for (sum, value) in sum.iter_mut().zip([lab.l, lab.a, lab.b]) {
            *sum += weight * value;
        }
        *total += weight;
    }
    let held = sums.into_iter().filter(|(_, total)| *total > 0.0);
    held.map(|([l, a, b], total)| (Lab::new(l / total, a / total, b / total), total)).collect()
}

fn squared(a: Lab, b: Lab) -> f32 {
    (a.l - b.l).powi(2) + (a.a - b.a).powi(2) + (a.b - b.b).powi(2)
}

/// Joins clusters that look alike, the lightest into the heaviest near it.
fn joined(clusters: Vec<(Lab, f32)>) -> Vec<(Lab, f32)> {
    let mut joined: Vec<(Lab, f32)> = Vec::new();
    for (lab, weight) in in_order(clusters, |(_, weight)| -weight) {
        match joined.iter_mut().find(|(known, _)| delta_e(*known, lab) < SAME) {
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
            assert!(delta_e(*lab, lab_of_rgb([r, g, b])) < 0.5);
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
