//! What a painter's records teach about the paints of the shelf.
//!
//! A record says what was mixed, how much of it was laid and what it looked like.
//! Makers' paints differ from the shelf's in strength and, smoothly, in K and S:
//!
//! ```text
//! ln strength = ln strength0 + a
//! ln K(t) = ln K0(t) + sum c_j cos(j pi t)     j < 8        t: 0 at 380 nm to 1 at 730
//! ln S(t) = ln S0(t) + sum d_j cos(j pi t)     j < 4
//! ```
//!
//! a, c and d are expected to be 0, with the standard deviations of `learner.rs`; a load named
//! by eye is off by a factor of its own. How far this painter's paints differ from the
//! shelf's at all is learned too: all standard deviations are multiplied by the one
//! of its `SPREADS` that makes the records likeliest (D. J. C. MacKay, Neural
//! Computation 4 (1992) 415, from memory). A measured spectrum counts by its colour: it
//! is colours that are predicted, and fitting 36 bands by 12 numbers made them worse.
//!
//! ```text
//! ln evidence = -1/2 (sum + ln det H - ln det H0)       H, H0: second slopes with and without records
//! ```
//!
//! The likeliest numbers are found by
//! Levenberg and Marquardt's method. A record is doubted as a whole, by Cauchy's
//! loss, so that one wrong dip does not spoil a paint. Round the solution the sum is a
//! square: its inverse says how sure each prediction has become ([`Lesson::error`]),
//! and what another record would teach ([`Lesson::plan`]).

use std::fmt;

use super::band_matrix::Factor;
use super::evidence::Evidence;
use super::forward::State;
use super::learner::{ENOUGH_TO_TELL, Learner, STEPS_WITHOUT_ONE};
use super::normal::{noise, residuals};
use super::residual::LAB_WEIGHT;
use super::row::{Row, Slope, dot};
use super::swatch::{Seen, daylight};
use super::variance::expected;
use crate::error::Error;
use crate::optics::film::Film;
use crate::optics::paper::Paper;
use crate::optics::spectrum::Spectrum;
use crate::paint::DoubtLeft;

/// What was learned.
pub struct Lesson {
    /// The paints as they are now expected, in the order given.
    pub films: Vec<Film>,
    /// CIEDE2000 of each record by the paints as they were.
    pub before: Vec<f64>,
    /// The same by the paints as they are now.
    pub after: Vec<f64>,
    /// How much each record was believed, 0 to 1.
    pub believed: Vec<f64>,
    learner: Learner,
    state: State,
    /// Inverse covariance of all numbers, by its root.
    certainty: Factor,
    /// How far off the records were, beside what their spread would have let one expect; 1 at most.
    told: f64,
}

impl fmt::Debug for Lesson {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Lesson")
            .field("films", &self.films)
            .field("after", &self.after)
            .finish_non_exhaustive()
    }
}

impl Learner {
    /// What the records teach.
    ///
    /// # Errors
    ///
    /// [`Error::Value`] for a record without paint or of an unknown one, for a
    /// number out of its range.
    pub fn learn(mut self, records: &[Evidence]) -> Result<Lesson, Error> {
        self.check(records)?;
        let all = vec![true; records.len()];
        let start = State { numbers: vec![0.0; self.forward.size()], loads: vec![0.0; records.len()] };
        let before = self.misses(&start, records);
        let state = self.likeliest(&start, records, &all);
        let after = self.misses(&state, records);
        let (normal, believed) = self.normal(&state, records, &all);
        let certainty = normal.matrix.factor().ok_or(Error::Refused("the records contradict each other"))?;
        let films = (0..self.forward.paints.len()).map(|paint| self.forward.film(&state, paint)).collect();
        let mut lesson =
            Lesson { films, before, after, believed, learner: self, state, certainty, told: 1.0 };
        lesson.told = lesson.told_by(records);
        Ok(lesson)
    }
}

impl Lesson {
    /// CIEDE2000 of each record, by paints that learned from all the others.
    ///
    /// `records` are those it was learned from.
    #[must_use]
    pub fn left_out(&self, records: &[Evidence]) -> Vec<f64> {
        let mut used = vec![true; records.len()];
        let mut errors = Vec::with_capacity(records.len());
        for (i, record) in records.iter().enumerate() {
            used[i] = false;
            let state = self.learner.solve(self.state.clone(), records, &used, STEPS_WITHOUT_ONE);
            used[i] = true;
            errors.push(self.learner.miss(&state, record));
        }
        errors
    }

    /// CIEDE2000 of other records than it was learned from.
    ///
    /// # Errors
    ///
    /// As [`Learner::learn`].
    pub fn errors(&self, records: &[Evidence]) -> Result<Vec<f64>, Error> {
        self.learner.check(records)?;
        Ok(self.learner.misses(&self.state, records))
    }

    /// How far a mix at a load may be off, median CIEDE2000: before any record, and now.
    ///
    /// What makers differ by and the model is included, what the eye misjudges is not.
    #[must_use]
    pub fn error(&self, parts: &[(usize, f64)], load: f64, paper: &Paper) -> ErrorChange {
        let variance = self.variances(parts, load, paper);
        ErrorChange { before: expected(variance.before), now: self.expected_now(variance.now) }
    }

    /// Median CIEDE2000 of a summed variance of three axes, as far as the records bear it out.
    pub(super) fn expected_now(&self, variance: f64) -> f64 {
        self.told * expected(variance)
    }

    /// How far off the records were before they taught, beside what could be expected of paints so strange.
    ///
    /// Slopes round the solution make much of a wide spread, as colours saturate, and the spread itself is told in
    /// steps. What painters saw of their own mixes sets it right, where there is enough of it.
    fn told_by(&self, records: &[Evidence]) -> f64 {
        if records.len() < ENOUGH_TO_TELL {
            return 1.0;
        }
        let strange = |record: &Evidence| {
            let rows = self.rows(&record.parts, record.load, &record.paper);
            let variance: f64 = rows
                .iter()
                .flatten()
                .map(|slope| slope.value * slope.value / self.learner.hold(slope.number))
                .sum();
            expected(variance)
        };
        let told = median(&self.before) / median(&records.iter().map(strange).collect::<Vec<_>>());
        if told.is_finite() { told.min(1.0) } else { 1.0 }
    }

    /// Part of what was not known of a paint that remains: alone, and in mixes with others.
    #[must_use]
    pub fn doubt_left(&self, paint: usize, others: &[usize], paper: &Paper) -> DoubtLeft {
        let ratio = |parts: &[(usize, f64)], load: f64| {
            let Variances { before, now } = self.variances(parts, load, paper);
            (now / before.max(f64::MIN_POSITIVE)).sqrt()
        };
        let alone = 0.5 * (ratio(&[(paint, 1.0)], 1.0) + ratio(&[(paint, 1.0)], 0.25));
        let mixes = others
            .iter()
            .filter(|other| **other != paint)
            .map(|other| ratio(&[(paint, 1.0), (*other, 1.0)], 0.5));
        let (sum, count) = mixes.fold((0.0, 0), |(sum, count), ratio| (sum + ratio, count + 1));
        let mixed = if count == 0 { alone } else { sum / f64::from(count) };
        DoubtLeft { alone: alone.min(1.0) as f32, mixed: mixed.min(1.0) as f32 }
    }

    /// Slopes of the three weighted axes of a mix's colour by every number.
    /// Chroma counts for less, as CIEDE2000 has it.
    pub(super) fn rows(&self, parts: &[(usize, f64)], load: f64, paper: &Spectrum<f64>) -> Vec<Row> {
        let sight = self.learner.forward.look(&self.state, parts, load, paper, true);
        let seen = Seen::Lab(daylight(&sight.reflectance));
        residuals(&sight, &seen)
            .iter()
            .map(|residual| sight.row(&residual.slopes, noise(&seen) / LAB_WEIGHT))
            .collect()
    }

    /// Summed variance of a mix's colour: before any record, and now.
    fn variances(&self, parts: &[(usize, f64)], load: f64, paper: &Paper) -> Variances {
        let rows = self.rows(parts, load, &paper.reflectance);
        let before = |slope: &Slope| slope.value * slope.value / self.learner.first_hold(slope.number);
        Variances {
            before: rows.iter().flatten().map(before).sum(),
            now: rows.iter().map(|row| dot(row, &self.spread(row))).sum(),
        }
    }

    /// How every number varies together with what answers to a row.
    pub(super) fn spread(&self, row: &[Slope]) -> Vec<f64> {
        let mut right = vec![0.0; self.learner.forward.size()];
        row.iter().for_each(|slope| right[slope.number] = slope.value);
        self.certainty.solve(&right)
    }
}

/// How far a mix may be off, median CIEDE2000.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ErrorChange {
    /// Before any record.
    pub before: f64,
    /// After the records.
    pub now: f64,
}

/// Summed variances of a mix's three axes, before any record and after them.
struct Variances {
    before: f64,
    now: f64,
}

fn median(values: &[f64]) -> f64 {
    let mut values = values.to_vec();
    values.sort_by(f64::total_cmp);
    values[values.len() / 2]
}

#[cfg(test)]
#[path = "lesson_tests.rs"]
mod tests;
