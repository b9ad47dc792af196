//! Whether the stated error is one: the share of mixtures nearer than it, from flat places of paths to steep ones.

use std::collections::BTreeMap;

use anyhow::Result;
use washpath_core::calibrate::{Calibration, Swatch};
use washpath_core::{Doubt, Film, Lab, Light, Paper, Path, Shelf, View, colour::ciede2000, colour::lab};

use super::quantile;

/// A mixture: its two paints, how fast its colour turns with the ratio, and its error.
pub(super) struct Mixture<P = usize> {
    pub pair: [P; 2],
    pub steepness: f64,
    pub error: f64,
}

/// The mixtures of fitted paints.
pub(super) fn of_films(fitted: &Calibration, mixtures: &[Swatch]) -> Vec<Mixture> {
    const STEP: f64 = 0.3;
    let weights = Light::D65.weights();
    mixtures
        .iter()
        .map(|swatch| {
            let [(a, of_a), (b, of_b)] = [swatch.parts[0], swatch.parts[1]];
            let colour = |step: f64| -> Lab<f64> {
                let odds = of_b / of_a * step.exp();
                let part = (of_a + of_b) * odds / (1.0 + odds);
                let parts = [(a, of_a + of_b - part), (b, part)];
                lab(weights.tristimulus(&fitted.ground.reflectance(&fitted.paints, &parts)), weights.white)
            };
            let here = colour(0.0);
            let change = ciede2000(here, colour(STEP)) + ciede2000(here, colour(-STEP));
            Mixture {
                pair: [a, b],
                steepness: 0.5 * change / STEP,
                error: ciede2000(here, swatch.seen.lab()),
            }
        })
        .collect()
}

/// Line of the medians of errors against steepness: a and b of a + b g, neither below 0.
///
/// Least absolute deviations by squares weighted anew, until nothing moves.
pub(super) fn median_line<P>(mixtures: &[&Mixture<P>]) -> [f64; 2] {
    let [mut a, mut b] = [1.0, 0.5];
    for _ in 0..200 {
        let [mut w, mut wx, mut wy, mut wxx, mut wxy] = [0.0; 5];
        for Mixture { steepness: x, error: y, .. } in mixtures {
            let weight = 1.0 / (y - a - b * x).abs().max(1e-3);
            w += weight;
            wx += weight * x;
            wy += weight * y;
            wxx += weight * x * x;
            wxy += weight * x * y;
        }
        b = ((w * wxy - wx * wy) / (w * wxx - wx * wx)).max(0.0);
        a = ((wy - b * wx) / w).max(0.0);
    }
    [a, b]
}

/// Error stated for each mixture, the line found without any mixture of its two paints.
pub(super) fn left_out<P: Copy + Ord>(mixtures: &[Mixture<P>]) -> Vec<f64> {
    let mut lines: BTreeMap<[P; 2], [f64; 2]> = BTreeMap::new();
    mixtures
        .iter()
        .map(|one| {
            let strangers =
                mixtures.iter().filter(|other| !other.pair.iter().any(|paint| one.pair.contains(paint)));
            let [a, b] = lines.entry(one.pair).or_insert_with(|| median_line(&strangers.collect::<Vec<_>>()));
            *a + *b * one.steepness
        })
        .collect()
}

/// Share of the mixtures nearer than stated, in each third of their steepness.
pub(super) fn coverage<P>(mixtures: &[Mixture<P>], stated: &[f64]) -> [f64; 3] {
    let steepness: Vec<f64> = mixtures.iter().map(|one| one.steepness).collect();
    let edges =
        [f64::NEG_INFINITY, quantile(&steepness, 1.0 / 3.0), quantile(&steepness, 2.0 / 3.0), f64::INFINITY];
    [0, 1, 2].map(|third| {
        let own = || {
            let both = mixtures.iter().zip(stated);
            both.filter(|(one, _)| edges[third] < one.steepness && one.steepness <= edges[third + 1])
        };
        own().filter(|(one, stated)| one.error < **stated).count() as f64 / own().count().max(1) as f64
    })
}

/// What the program states of mixes of the shelf's paints, and how fast they turn, on a paper.
pub(super) fn stated_of_shelf(paper: &Paper, keys: [&str; 2], share: f32, load: f32) -> Result<[f64; 2]> {
    let shelf = Shelf::built_in();
    let [a, b] = [shelf.find(keys[0])?, shelf.find(keys[1])?];
    let view = View::new(paper, Light::D65);
    let films: [&Film; 2] = [&a.film, &b.film];
    let steepness = Path::new(films[0], films[1], &view, load).steepness(share);
    let doubt = Doubt::between(Doubt::of(a), Doubt::of(b), share);
    Ok([f64::from(steepness), f64::from(doubt.error_where(steepness))])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::evaluate::mixtures::{calibrate, read_mixtures, read_singles};
    use crate::workspace;

    #[test]
    fn a_line_of_medians_ignores_how_far_the_far_ones_are() {
        let point = |x: f64, y: f64| Mixture { pair: [0, 1], steepness: x, error: y };
        let mut points: Vec<Mixture> =
            (0..20).map(|i| point(f64::from(i), 1.0 + 0.5 * f64::from(i))).collect();
        points[3].error = 90.0;
        let [a, b] = median_line(&points.iter().collect::<Vec<_>>());
        assert!((a - 1.0).abs() < 0.02 && (b - 0.5).abs() < 0.002, "{a} {b}");
    }

    /// As found without both paints: 0.46, 0.52, 0.49; the line is that of `doubt.rs`.
    #[test]
    fn half_of_all_mixtures_lie_nearer_than_stated_flat_or_steep() {
        let reference = workspace::root().join("tests/reference");
        let singles = read_singles(&reference.join("ntu_singles.csv")).unwrap();
        let mixtures = read_mixtures(&reference.join("ntu_mixtures.csv"), &singles).unwrap();
        let mixtures = of_films(&calibrate(&singles).unwrap(), &mixtures);
        for share in coverage(&mixtures, &left_out(&mixtures)) {
            assert!((0.45..=0.55).contains(&share), "{share}");
        }
        let [a, b] = median_line(&mixtures.iter().collect::<Vec<_>>());
        assert!((a - 1.48).abs() < 0.05 && (b - 0.41).abs() < 0.01, "{a} {b}");
    }
}
