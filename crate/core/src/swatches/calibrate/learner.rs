//! The search for the corrections that records make likeliest.

use std::fmt;

use super::band_matrix::BandMatrix;
use super::evidence::{Evidence, Known};
use super::forward::{Forward, IN_K, OF_PAINT, Sight, State};
use super::normal::{Normal, belief, loss, residuals};
use super::residual::square;
use super::row::dot;
use super::swatch::daylight;
use crate::colour::ciede2000;
use crate::error::Error;
use crate::numeric::levenberg::{Limits, Squares, minimise};
use crate::optics::surface::Surface;

/// Standard deviation of ln strength: common practice tells it to a factor of 1.5.
const STRENGTH: f64 = 0.4;

/// Of the level of ln K and of ln S. Chosen so that paints alone are expected to be off
/// by what makers' are (`mixing/doubt.rs`): see `what_is_expected_at_first_is_what_makers_differ_by`.
const LEVEL_K: f64 = 0.16;
const LEVEL_S: f64 = 0.25;

/// Of the first cosine; the j-th has a j-th of it.
const SHAPE_K: f64 = 0.16;
const SHAPE_S: f64 = 0.15;

/// How much farther than makers differ in the median the paints at hand may lie.
const SPREADS: [f64; 4] = [0.7, 1.0, 2.0, 4.0];

/// Records from which the spread is told: of fewer, one wrong dip would look like strange paints.
pub(super) const ENOUGH_TO_TELL: usize = 8;

/// Most steps from nothing known; and from all records but one.
const MOST_STEPS: usize = 25;
pub(super) const STEPS_WITHOUT_ONE: usize = 4;

/// Paints that records teach about.
pub struct Learner {
    pub(super) forward: Forward,
    /// Factor of all standard deviations.
    spread: f64,
}

impl fmt::Debug for Learner {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Learner")
            .field("paints", &self.forward.paints)
            .field("surface", &self.forward.surface)
            .finish_non_exhaustive()
    }
}

impl Learner {
    /// Of these paints, on papers and in films of this surface.
    #[must_use]
    pub fn new(paints: Vec<Known>, surface: Surface<f64>) -> Self {
        Self { forward: Forward::new(paints, surface), spread: 1.0 }
    }

    /// The same with a k1 of each paint's own, in mixes the mean by volume: see [`Ground::floors`](super::Ground::floors).
    #[must_use]
    pub fn with_floors(mut self, floors: Vec<f64>) -> Self {
        self.forward.floors = floors;
        self
    }

    /// The state of the spread that makes the records likeliest; the spread is kept.
    pub(super) fn likeliest(&mut self, start: &State, records: &[Evidence], all: &[bool]) -> State {
        let mut best = (f64::NEG_INFINITY, 1.0, start.clone());
        let spreads = if records.len() < ENOUGH_TO_TELL { &[1.0][..] } else { &SPREADS };
        for spread in spreads {
            self.spread = *spread;
            let state = self.solve(start.clone(), records, all, MOST_STEPS);
            let held: f64 = (0..self.forward.size()).map(|i| self.hold(i).ln()).sum();
            let (normal, _) = self.normal(&state, records, all);
            let Some(factor) = normal.matrix.factor() else { continue };
            let evidence = -0.5 * (self.cost(&state, records, all) + factor.ln_determinant() - held);
            if evidence > best.0 {
                best = (evidence, *spread, state);
            }
        }
        self.spread = best.1;
        best.2
    }

    pub(super) fn check(&self, records: &[Evidence]) -> Result<(), Error> {
        let paints = self.forward.paints.len();
        records.iter().enumerate().try_for_each(|(i, record)| record.check(i + 1, paints))
    }

    pub(super) fn misses(&self, state: &State, records: &[Evidence]) -> Vec<f64> {
        records.iter().map(|record| self.miss(state, record)).collect()
    }

    /// CIEDE2000 between a record and what is predicted at the load it names.
    pub(super) fn miss(&self, state: &State, record: &Evidence) -> f64 {
        let shown = self.forward.look(state, &record.parts, record.load, &record.paper, false);
        ciede2000(daylight(&shown.reflectance), record.seen.lab())
    }

    /// Steps towards the least sum over the records that are used.
    pub(super) fn solve(&self, start: State, records: &[Evidence], used: &[bool], steps: usize) -> State {
        let limits = Limits {
            damping: 1e-3,
            least_damping: 1e-9,
            rise: 8.0,
            steps,
            failures: 6,
            trials: usize::MAX,
            gain: 1e-5,
        };
        minimise(&Search { learner: self, records, used }, start, &limits).0
    }

    fn cost(&self, state: &State, records: &[Evidence], used: &[bool]) -> f64 {
        let held: f64 = (0..state.numbers.len()).map(|i| self.hold(i) * state.numbers[i].powi(2)).sum();
        let seen = records.iter().enumerate().filter(|(i, _)| used[*i]).map(|(i, record)| {
            let residuals = residuals(&self.look(state, record, i, false), &record.seen);
            loss(square(&residuals)) + record.load_hold() * state.loads[i].powi(2)
        });
        held + seen.sum::<f64>()
    }

    /// What a state shows of the record at an index, with slopes or without.
    fn look(&self, state: &State, record: &Evidence, index: usize, with_slopes: bool) -> Sight {
        let load = record.load * state.loads[index].exp();
        self.forward.look(state, &record.parts, load, &record.paper, with_slopes)
    }

    /// The equations round a state, and how much each record is believed.
    pub(super) fn normal(&self, state: &State, records: &[Evidence], used: &[bool]) -> (Normal, Vec<f64>) {
        let size = self.forward.size();
        let mut normal =
            Normal { matrix: BandMatrix::new(size, size), gradient: vec![0.0; size], loads: Vec::new() };
        for i in 0..size {
            normal.matrix.add(i, i, self.hold(i));
            normal.gradient[i] = self.hold(i) * state.numbers[i];
        }
        let mut believed = vec![0.0; records.len()];
        for (i, record) in records.iter().enumerate().filter(|(i, _)| used[*i]) {
            let sight = self.look(state, record, i, true);
            let residuals = residuals(&sight, &record.seen);
            believed[i] = belief(square(&residuals));
            normal.add(i, &sight, &residuals, believed[i], record, state.loads[i]);
        }
        (normal, believed)
    }

    /// 1 / variance of a number before any record.
    pub(super) fn first_hold(&self, number: usize) -> f64 {
        self.hold(number) * self.spread * self.spread
    }

    /// The same with the spread that the records tell of.
    pub(super) fn hold(&self, number: usize) -> f64 {
        let own = match number % OF_PAINT {
            0 => STRENGTH,
            1 => LEVEL_K,
            j if j <= IN_K => SHAPE_K / (j - 1) as f64,
            j if j == IN_K + 1 => LEVEL_S,
            j => SHAPE_S / (j - IN_K - 1) as f64,
        };
        // A paint that is not to be corrected is as good as certain.
        (own * self.spread * self.forward.paints[number / OF_PAINT].doubt.max(1e-6)).powi(-2)
    }
}

/// The search for the likeliest numbers and loads.
struct Search<'a> {
    learner: &'a Learner,
    records: &'a [Evidence],
    /// Whether each record is used.
    used: &'a [bool],
}

impl Squares for Search<'_> {
    type Number = f64;
    type Point = State;
    type Slopes = Normal;

    fn sum(&self, state: &State) -> f64 {
        self.learner.cost(state, self.records, self.used)
    }

    fn slopes(&self, state: &State) -> Normal {
        self.learner.normal(state, self.records, self.used).0
    }

    fn step(&self, from: &State, normal: &mut Normal, damping: f64) -> Option<State> {
        let mut matrix = normal.matrix.clone();
        for i in 0..from.numbers.len() {
            matrix.add(i, i, damping * matrix.diagonal(i));
        }
        let downhill: Vec<f64> = normal.gradient.iter().map(|slope| -slope).collect();
        let step = matrix.solve(&downhill)?;
        let mut next = from.clone();
        next.numbers.iter_mut().zip(&step).for_each(|(number, step)| *number += step.clamp(-1.0, 1.0));
        for load in &normal.loads {
            let along = dot(&load.row, &step);
            next.loads[load.record] -= ((load.gradient + along) / load.curvature).clamp(-1.0, 1.0);
        }
        Some(next)
    }
}
