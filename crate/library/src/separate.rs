//! Absorption and scattering of one card, given its grounds.

use std::sync::LazyLock;

use nalgebra::{DMatrix, DVector};
use washpath_core::Surface;

use crate::cards::{CARD_BANDS, Card, CardSpectrum, GROUNDS};
use crate::patchy;

/// What is common to all cards.
pub struct Setup {
    /// Surface of the films in each band.
    pub surfaces: [Surface<f64>; CARD_BANDS],
    /// Reflectance of the grounds below the surface, darkest to white.
    pub grounds: [CardSpectrum; GROUNDS],
}

impl Setup {
    /// What a reader sees of a film over one ground.
    pub fn reading(&self, band: usize, ln_k: f64, ln_s: f64, ground: f64) -> f64 {
        self.surfaces[band].outer(patchy::reflectance(ln_k.exp(), ln_s.exp(), ground))
    }
}

/// ln K and ln S of a film at its mean thickness.
#[derive(Clone, Copy)]
pub struct Logs {
    pub ln_k: CardSpectrum,
    pub ln_s: CardSpectrum,
}

/// Expected error of a reading: noise, unevenness, stray light in the violet.
pub fn error(band: usize, reading: f64) -> f64 {
    0.004 + 0.02 * reading + 0.05 * (-10.0 * band as f64 / 12.0).exp()
}

/// Neighbouring bands' scattering differs by about so much in ln S ...
const LEVEL_S: f64 = 0.2;
/// ... its slope by so much, ...
const BEND_S: f64 = 0.15;
/// ... and absorption's slope by so much.
const BEND_K: f64 = 0.3;
/// Mean and spread of ln K and ln S; wide, to keep what nothing shows finite.
const PRIOR: [(f64, f64); 2] = [(0.0, 4.0), (-1.0, 3.0)];

const UNKNOWNS: usize = 2 * CARD_BANDS;

/// A first guess: K over S of an endless film for ln K, -1 for ln S.
pub fn guess(card: &Card, setup: &Setup) -> Logs {
    let ln_k = std::array::from_fn(|band| {
        let r = setup.surfaces[band].inner(card.readings[GROUNDS - 1][band]).max(1e-3);
        0.8 * ((1.0 - r).powi(2) / (2.0 * r)).clamp(0.01, 20.0).ln()
    });
    Logs { ln_k, ln_s: [-1.0; CARD_BANDS] }
}

/// Improves the logs by at most `steps` damped Gauss-Newton steps.
pub fn separate(card: &Card, setup: &Setup, start: Logs, steps: usize) -> Logs {
    let mut at = start;
    let mut damping = 1e-2;
    let mut cost = total(card, setup, &at);
    for _ in 0..steps {
        let (normal, slope) = normal_equations(card, setup, &at);
        let mut damped = normal.clone();
        for i in 0..UNKNOWNS {
            damped[(i, i)] *= 1.0 + damping;
        }
        let Some(factor) = damped.cholesky() else { break };
        let next = moved(&at, &factor.solve(&slope));
        let next_cost = total(card, setup, &next);
        if next_cost < cost {
            (at, cost) = (next, next_cost);
            damping /= 4.0;
        } else {
            damping *= 6.0;
        }
    }
    at
}

fn moved(at: &Logs, step: &DVector<f64>) -> Logs {
    let by = |i: usize, value: f64| (value + step[i].clamp(-1.5, 1.5)).clamp(-9.0, 6.0);
    Logs {
        ln_k: std::array::from_fn(|band| by(band, at.ln_k[band])),
        ln_s: std::array::from_fn(|band| by(CARD_BANDS + band, at.ln_s[band])),
    }
}

fn unknowns(at: &Logs) -> DVector<f64> {
    DVector::from_iterator(UNKNOWNS, at.ln_k.iter().chain(&at.ln_s).copied())
}

fn prior_means() -> DVector<f64> {
    DVector::from_fn(UNKNOWNS, |i, _| PRIOR[i / CARD_BANDS].0)
}

fn total(card: &Card, setup: &Setup, at: &Logs) -> f64 {
    let mut sum = 0.0;
    for band in 0..CARD_BANDS {
        for ground in 0..GROUNDS {
            let reading = card.readings[ground][band];
            let model = setup.reading(band, at.ln_k[band], at.ln_s[band], setup.grounds[ground][band]);
            sum += ((reading - model) / error(band, reading)).powi(2);
        }
    }
    let u = unknowns(at);
    let off = &u - prior_means();
    sum + (u.transpose() * &PENALTY.smooth * &u)[0] + off.component_mul(&off).dot(&PENALTY.width)
}

fn normal_equations(card: &Card, setup: &Setup, at: &Logs) -> (DMatrix<f64>, DVector<f64>) {
    const STEP: f64 = 1e-4;
    let u = unknowns(at);
    let mut normal = PENALTY.smooth.clone();
    let mut slope = -(&PENALTY.smooth * &u) - (&u - prior_means()).component_mul(&PENALTY.width);
    for i in 0..UNKNOWNS {
        normal[(i, i)] += PENALTY.width[i];
    }
    for band in 0..CARD_BANDS {
        let (k, s) = (band, CARD_BANDS + band);
        for ground in 0..GROUNDS {
            let reading = card.readings[ground][band];
            let below = setup.grounds[ground][band];
            let model = |dk: f64, ds: f64| setup.reading(band, at.ln_k[band] + dk, at.ln_s[band] + ds, below);
            let weight = error(band, reading).powi(-2);
            let here = model(0.0, 0.0);
            let by_k = (model(STEP, 0.0) - here) / STEP;
            let by_s = (model(0.0, STEP) - here) / STEP;
            normal[(k, k)] += weight * by_k * by_k;
            normal[(s, s)] += weight * by_s * by_s;
            normal[(k, s)] += weight * by_k * by_s;
            normal[(s, k)] += weight * by_k * by_s;
            slope[k] += weight * by_k * (reading - here);
            slope[s] += weight * by_s * (reading - here);
        }
    }
    (normal, slope)
}

struct Penalty {
    smooth: DMatrix<f64>,
    width: DVector<f64>,
}

static PENALTY: LazyLock<Penalty> = LazyLock::new(|| {
    let bend = bend_penalty();
    let mut smooth = DMatrix::zeros(UNKNOWNS, UNKNOWNS);
    smooth.view_mut((0, 0), (CARD_BANDS, CARD_BANDS)).copy_from(&(&bend / BEND_K.powi(2)));
    let s = &bend / BEND_S.powi(2) + difference_penalty(&[-1.0, 1.0]) / LEVEL_S.powi(2);
    smooth.view_mut((CARD_BANDS, CARD_BANDS), (CARD_BANDS, CARD_BANDS)).copy_from(&s);
    Penalty { smooth, width: DVector::from_fn(UNKNOWNS, |i, _| PRIOR[i / CARD_BANDS].1.powi(-2)) }
});

/// Sum of squared second differences over the bands, as a matrix.
pub fn bend_penalty() -> DMatrix<f64> {
    difference_penalty(&[1.0, -2.0, 1.0])
}

fn difference_penalty(stencil: &[f64]) -> DMatrix<f64> {
    let rows = CARD_BANDS + 1 - stencil.len();
    let d = DMatrix::from_fn(rows, CARD_BANDS, |row, column| {
        column.checked_sub(row).and_then(|i| stencil.get(i)).copied().unwrap_or(0.0)
    });
    d.transpose() * d
}
