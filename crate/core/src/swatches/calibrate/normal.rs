//! The equations of a step of the lesson, and what each record adds to them.

use super::band_matrix::BandMatrix;
use super::evidence::Evidence;
use super::forward::Sight;
use super::residual::{LAB_WEIGHT, Residual, lab_residuals};
use super::row::{Row, Slope};
use super::swatch::Seen;
use super::variance::seen_variance;
use crate::optics::spectrum::BANDS;

/// Residuals of a record, as their root mean square over what is expected, from which it is doubted.
const DOUBTED: f64 = 2.0;

/// The equations of a step; loads are eliminated from them.
pub(super) struct Normal {
    pub(super) matrix: BandMatrix,
    pub(super) gradient: Vec<f64>,
    pub(super) loads: Vec<LoadRow>,
}

/// What is needed to find a record's load once the numbers are known.
pub(super) struct LoadRow {
    /// Index of the record.
    pub(super) record: usize,
    pub(super) row: Row,
    pub(super) gradient: f64,
    pub(super) curvature: f64,
}

impl Normal {
    pub(super) fn add(
        &mut self,
        index: usize,
        sight: &Sight,
        residuals: &[Residual; 3],
        believed: f64,
        record: &Evidence,
        load: f64,
    ) {
        let mut by_load = LoadRow {
            record: index,
            row: sight.slopes.iter().map(|(number, _)| Slope { number: *number, value: 0.0 }).collect(),
            gradient: record.load_hold() * load,
            curvature: record.load_hold(),
        };
        for Residual { value, slopes: by_band } in residuals {
            let row = sight.row(by_band, 1.0);
            let to_load: f64 = (0..BANDS).map(|band| by_band[band] * sight.by_load[band]).sum();
            for (at, slope) in row.iter().enumerate() {
                self.gradient[slope.number] += believed * slope.value * value;
                for other in &row[..=at] {
                    self.matrix.add(slope.number, other.number, believed * slope.value * other.value);
                }
                by_load.row[at].value += believed * slope.value * to_load;
            }
            by_load.gradient += believed * to_load * value;
            by_load.curvature += believed * to_load * to_load;
        }
        if record.load_doubt <= 0.0 {
            return;
        }
        // Schur's complement: the load answers to whatever the numbers do.
        for (at, slope) in by_load.row.iter().enumerate() {
            self.gradient[slope.number] -= slope.value * by_load.gradient / by_load.curvature;
            for other in &by_load.row[..=at] {
                self.matrix.add(slope.number, other.number, -slope.value * other.value / by_load.curvature);
            }
        }
        self.loads.push(by_load);
    }
}

/// What a record misses, in standard deviations, and its slopes by the reflectance at every band.
pub(super) fn residuals(sight: &Sight, seen: &Seen) -> [Residual; 3] {
    let scale = 1.0 / noise(seen);
    lab_residuals(&sight.reflectance, seen.lab()).map(|Residual { value, slopes }| Residual {
        value: scale * value,
        slopes: slopes.map(|slope| scale * slope),
    })
}

/// Standard deviation of a residual of the calibration: [`LAB_WEIGHT`] makes a CIELAB unit.
pub(super) fn noise(seen: &Seen) -> f64 {
    LAB_WEIGHT * seen_variance(matches!(seen, Seen::Spectrum(_))).sqrt()
}

/// Cauchy's loss of a record's summed squares.
pub(super) fn loss(square: f64) -> f64 {
    let doubted = 3.0 * DOUBTED * DOUBTED;
    doubted * (square / doubted).ln_1p()
}

/// The slope of [`loss`]: 1 for a record that fits, towards 0 for one that cannot be true.
pub(super) fn belief(square: f64) -> f64 {
    1.0 / (1.0 + square / (3.0 * DOUBTED * DOUBTED))
}
