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
//! a, c and d are expected to be 0, with the standard deviations below; a load named
//! by eye is off by a factor of its own. How far this painter's paints differ from the
//! shelf's at all is learned too: all standard deviations are multiplied by the one
//! of [`SPREADS`] that makes the records likeliest (D. J. C. MacKay, Neural
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

use std::f64::consts::PI;

use super::band_matrix::{BandMatrix, Factor};
use super::curves::Curves;
use super::film::slopes;
use super::fit::within;
use super::ground::surface_of;
use super::problem::{LAB_WEIGHT, lab_residuals};
use super::swatch::{Seen, daylight};
use crate::colour::ciede2000;
use crate::error::Error;
use crate::numeric::levenberg::{Limits, Squares, minimise};
use crate::optics::film::Film;
use crate::optics::paper::Paper;
use crate::optics::spectrum::{BANDS, Spectrum, from_fn};
use crate::optics::surface::Surface;
use crate::paint::DoubtLeft;

/// Cosines of ln K and of ln S.
const IN_K: usize = 8;
const IN_S: usize = 4;

/// Numbers a paint may be corrected by.
const OF_PAINT: usize = 1 + IN_K + IN_S;

/// Standard deviation of ln strength: common practice tells it to a factor of 1.5.
const STRENGTH: f64 = 0.4;

/// Of the level of ln K and of ln S. Chosen so that paints alone are expected to be off
/// by what makers' are (`expected.rs`): see `what_is_expected_at_first_is_what_makers_differ_by`.
const LEVEL_K: f64 = 0.16;
const LEVEL_S: f64 = 0.25;

/// Of the first cosine; the j-th has a j-th of it.
const SHAPE_K: f64 = 0.16;
const SHAPE_S: f64 = 0.15;

/// CIELAB units by which a colour read by eye or from a photo is off, in each axis.
const BY_EYE: f64 = 1.5;

/// The same of a meter.
const BY_METER: f64 = 0.5;

/// CIELAB units, in each axis, that the film model misses of mixes of paints that are known:
/// 2.2 CIEDE2000 in the median (`evaluate mixtures`, learned from half of all pairs).
const MODEL: f64 = 1.4;

/// Median length of a normal deviate in three dimensions, over the root of its summed variances.
const MEDIAN: f64 = 0.889;

/// Residuals of a record, as their root mean square over what is expected, from which it is doubted.
const DOUBTED: f64 = 2.0;

/// How much farther than makers differ in the median the paints at hand may lie.
const SPREADS: [f64; 4] = [0.7, 1.0, 2.0, 4.0];

/// Records from which the spread is told: of fewer, one wrong dip would look like strange paints.
const ENOUGH_TO_TELL: usize = 8;

/// Most steps from nothing known; and from all records but one.
const MOST_STEPS: usize = 25;
const STEPS_WITHOUT_ONE: usize = 4;

/// A paint as the shelf has it.
#[derive(Clone, Debug)]
pub struct Known {
    /// Its film.
    pub film: Film,
    /// How far it may differ, beside a measured paint of the shelf's 1; 0 where it is not to be corrected.
    pub doubt: f64,
}

/// A record of some of these paints.
#[derive(Clone, Debug)]
pub struct Evidence {
    /// Index of each paint and its volume, above 0.
    pub parts: Vec<(usize, f64)>,
    /// Masstones laid, above 0.
    pub load: f64,
    /// Standard deviation of ln load: 0 where it was measured out, a quarter by eye.
    pub load_doubt: f64,
    /// The paper's reflectance.
    pub paper: Spectrum<f64>,
    /// What it looked like.
    pub seen: Seen,
}

/// Paints that records teach about.
pub struct Learner {
    paints: Vec<Known>,
    surface: Surface<f64>,
    /// k1 of each paint's films, where it is not the surface's.
    floors: Vec<f64>,
    /// Factor of all standard deviations.
    spread: f64,
    before: Vec<Curves>,
}

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

/// Corrections of all paints, and of each record's ln load.
#[derive(Clone)]
struct State {
    numbers: Vec<f64>,
    loads: Vec<f64>,
}

/// A film that is looked at: what it shows and how that answers to every number.
struct Sight {
    reflectance: Spectrum<f64>,
    /// Of the reflectance by each number of each paint in it.
    slopes: Vec<(usize, Spectrum<f64>)>,
    by_load: Spectrum<f64>,
}

impl fmt::Debug for Learner {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Learner")
            .field("paints", &self.paints)
            .field("surface", &self.surface)
            .finish_non_exhaustive()
    }
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
    /// Of these paints, on papers and in films of this surface.
    #[must_use]
    pub fn new(paints: Vec<Known>, surface: Surface<f64>) -> Self {
        let before = paints.iter().map(|paint| Curves::of(&paint.film)).collect();
        Self { paints, surface, floors: Vec::new(), spread: 1.0, before }
    }

    /// The same with a k1 of each paint's own, in mixes the mean by volume: see [`Ground::floors`](super::Ground::floors).
    #[must_use]
    pub fn with_floors(self, floors: Vec<f64>) -> Self {
        Self { floors, ..self }
    }

    /// What the records teach.
    ///
    /// # Errors
    ///
    /// [`Error::Value`] for a record without paint or of an unknown one, for a
    /// number out of its range.
    pub fn learn(mut self, records: &[Evidence]) -> Result<Lesson, Error> {
        self.check(records)?;
        let all = vec![true; records.len()];
        let start = State { numbers: vec![0.0; self.size()], loads: vec![0.0; records.len()] };
        let before = self.misses(&start, records);
        let state = self.likeliest(&start, records, &all);
        let after = self.misses(&state, records);
        let (normal, believed) = self.normal(&state, records, &all);
        let certainty = normal.matrix.factor().ok_or(Error::Refused("the records contradict each other"))?;
        let films = (0..self.paints.len()).map(|paint| self.film(&state, paint)).collect();
        let mut lesson =
            Lesson { films, before, after, believed, learner: self, state, certainty, told: 1.0 };
        lesson.told = lesson.told_by(records);
        Ok(lesson)
    }

    /// The state of the spread that makes the records likeliest; the spread is kept.
    fn likeliest(&mut self, start: &State, records: &[Evidence], all: &[bool]) -> State {
        let mut best = (f64::NEG_INFINITY, 1.0, start.clone());
        let spreads = if records.len() < ENOUGH_TO_TELL { &[1.0][..] } else { &SPREADS };
        for spread in spreads {
            self.spread = *spread;
            let state = self.solve(start.clone(), records, all, MOST_STEPS);
            let held: f64 = (0..self.size()).map(|i| self.hold(i).ln()).sum();
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

    fn size(&self) -> usize {
        OF_PAINT * self.paints.len()
    }

    fn check(&self, records: &[Evidence]) -> Result<(), Error> {
        for (number, record) in records.iter().enumerate() {
            let name = |what: &str| format!("record {}: {what}", number + 1);
            if record.parts.is_empty() || record.parts.iter().any(|(paint, _)| *paint >= self.paints.len()) {
                return Err(Error::Value(name("no paint in it, or one that is not known")));
            }
            within(&name("volume"), record.parts.iter().map(|(_, volume)| volume), 1e-6, 1e6)?;
            within(&name("load"), &[record.load], 1e-3, 1e3)?;
            within(&name("doubt of the load"), &[record.load_doubt], 0.0, 2.0)?;
            within(&name("paper"), &record.paper, 0.0, 1.2)?;
            match &record.seen {
                Seen::Spectrum(r) => within(&name("reflectance"), r.as_ref(), 0.0, 1.2)?,
                Seen::Lab(c) => within(&name("L*, a* or b*"), &[c.l, c.a, c.b], -200.0, 200.0)?,
            }
        }
        Ok(())
    }

    fn misses(&self, state: &State, records: &[Evidence]) -> Vec<f64> {
        records.iter().map(|record| self.miss(state, record)).collect()
    }

    /// CIEDE2000 between a record and what is predicted at the load it names.
    fn miss(&self, state: &State, record: &Evidence) -> f64 {
        let shown = self.look(state, &record.parts, record.load, &record.paper, false);
        ciede2000(daylight(&shown.reflectance), record.seen.lab())
    }

    /// The film of a paint with its corrections.
    fn film(&self, state: &State, paint: usize) -> Film {
        let strength = self.paints[paint].film.strength * state.numbers[OF_PAINT * paint].exp() as f32;
        Film { strength, ..self.curves(state, paint).film() }
    }

    fn curves(&self, state: &State, paint: usize) -> Curves {
        let numbers = &state.numbers[OF_PAINT * paint + 1..OF_PAINT * (paint + 1)];
        let (in_k, in_s) = numbers.split_at(IN_K);
        let before = &self.before[paint];
        let bent = |curve: &Spectrum<f64>, numbers: &[f64]| -> Spectrum<f64> {
            from_fn(|band| {
                let log: f64 = numbers.iter().enumerate().map(|(j, number)| number * cosine(j, band)).sum();
                curve[band] * log.exp()
            })
        };
        Curves { k: bent(&before.k, in_k), s: bent(&before.s, in_s) }
    }

    /// A mix laid on a paper, with its slopes where they are wanted.
    fn look(
        &self,
        state: &State,
        parts: &[(usize, f64)],
        load: f64,
        paper: &Spectrum<f64>,
        wanted: bool,
    ) -> Sight {
        let paints: Vec<(usize, f64, Curves)> = parts
            .iter()
            .map(|(paint, volume)| {
                let strength =
                    f64::from(self.paints[*paint].film.strength) * state.numbers[OF_PAINT * paint].exp();
                (*paint, volume * strength, self.curves(state, *paint))
            })
            .collect();
        let total: f64 = paints.iter().map(|(_, weight, _)| weight).sum();
        let mut sight = Sight { reflectance: [0.0; BANDS], slopes: Vec::new(), by_load: [0.0; BANDS] };
        let surface = surface_of(self.surface, &self.floors, parts);
        let Surface { k1, k2 } = surface;
        if wanted {
            let numbers =
                paints.iter().flat_map(|(paint, ..)| (0..OF_PAINT).map(move |i| OF_PAINT * paint + i));
            sight.slopes = numbers.map(|number| (number, [0.0; BANDS])).collect();
        }
        for (band, paper) in paper.iter().enumerate() {
            let sum = |of: fn(&Curves) -> &Spectrum<f64>| -> f64 {
                paints.iter().map(|(_, weight, curves)| weight / total * of(curves)[band]).sum::<f64>() * load
            };
            let (k, s) = (sum(|curves| &curves.k), sum(|curves| &curves.s));
            let [inner, by_k, by_s] = slopes(k, s, self.surface.inner(*paper));
            let through = (1.0 - k1) * (1.0 - k2) / (1.0 - k2 * inner).powi(2);
            let (by_k, by_s) = (through * by_k, through * by_s);
            sight.reflectance[band] = surface.outer(inner);
            sight.by_load[band] = by_k * k + by_s * s;
            if !wanted {
                continue;
            }
            for ((_, weight, curves), own) in paints.iter().zip(sight.slopes.chunks_exact_mut(OF_PAINT)) {
                let part = weight / total;
                let (of_k, of_s) = (load * part * curves.k[band] * by_k, load * part * curves.s[band] * by_s);
                // A stronger paint has more of the say, the others less.
                own[0].1[band] = of_k + of_s - part * (by_k * k + by_s * s);
                for j in 0..IN_K {
                    own[1 + j].1[band] = of_k * cosine(j, band);
                }
                for j in 0..IN_S {
                    own[1 + IN_K + j].1[band] = of_s * cosine(j, band);
                }
            }
        }
        sight
    }

    /// Steps towards the least sum over the records that are used.
    fn solve(&self, start: State, records: &[Evidence], used: &[bool], steps: usize) -> State {
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
            let sight =
                self.look(state, &record.parts, record.load * state.loads[i].exp(), &record.paper, false);
            let square = residuals(&sight, &record.seen).iter().map(|(value, _)| value * value).sum();
            loss(square) + load_hold(record) * state.loads[i].powi(2)
        });
        held + seen.sum::<f64>()
    }

    /// The equations round a state, and how much each record is believed.
    fn normal(&self, state: &State, records: &[Evidence], used: &[bool]) -> (Normal, Vec<f64>) {
        let size = self.size();
        let mut normal =
            Normal { matrix: BandMatrix::new(size, size), gradient: vec![0.0; size], loads: Vec::new() };
        for i in 0..size {
            normal.matrix.add(i, i, self.hold(i));
            normal.gradient[i] = self.hold(i) * state.numbers[i];
        }
        let mut believed = vec![0.0; records.len()];
        for (i, record) in records.iter().enumerate().filter(|(i, _)| used[*i]) {
            let sight =
                self.look(state, &record.parts, record.load * state.loads[i].exp(), &record.paper, true);
            let residuals = residuals(&sight, &record.seen);
            believed[i] = belief(residuals.iter().map(|(value, _)| value * value).sum());
            normal.add(i, &sight, &residuals, believed[i], record, state.loads[i]);
        }
        (normal, believed)
    }

    /// 1 / variance of a number before any record.
    fn first_hold(&self, number: usize) -> f64 {
        self.hold(number) * self.spread * self.spread
    }

    /// The same with the spread that the records tell of.
    fn hold(&self, number: usize) -> f64 {
        let own = match number % OF_PAINT {
            0 => STRENGTH,
            1 => LEVEL_K,
            j if j <= IN_K => SHAPE_K / (j - 1) as f64,
            j if j == IN_K + 1 => LEVEL_S,
            j => SHAPE_S / (j - IN_K - 1) as f64,
        };
        // A paint that is not to be corrected is as good as certain.
        (own * self.spread * self.paints[number / OF_PAINT].doubt.max(1e-6)).powi(-2)
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
    type Place = State;
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
        for (record, load) in &normal.loads {
            let along: f64 = load.row.iter().map(|(i, slope)| slope * step[*i]).sum();
            next.loads[*record] -= ((load.gradient + along) / load.curvature).clamp(-1.0, 1.0);
        }
        Some(next)
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
            let variance: f64 =
                rows.iter().flatten().map(|(i, slope)| slope * slope / self.learner.hold(*i)).sum();
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
    pub(super) fn rows(&self, parts: &[(usize, f64)], load: f64, paper: &Spectrum<f64>) -> Vec<Row> {
        let sight = self.learner.look(&self.state, parts, load, paper, true);
        let seen = Seen::Lab(daylight(&sight.reflectance));
        residuals(&sight, &seen)
            .iter()
            .map(|(_, slopes)| sight.row(slopes, noise(&seen) / LAB_WEIGHT))
            .collect()
    }

    /// Summed variance of a mix's colour: before any record, and now.
    fn variances(&self, parts: &[(usize, f64)], load: f64, paper: &Paper) -> Variances {
        let rows = self.rows(parts, load, &paper.reflectance);
        let before = |(i, slope): &(usize, f64)| slope * slope / self.learner.first_hold(*i);
        Variances {
            before: rows.iter().flatten().map(before).sum(),
            now: rows.iter().map(|row| dot(row, &self.spread(row))).sum(),
        }
    }

    /// How every number varies together with what answers to a row.
    pub(super) fn spread(&self, row: &Row) -> Vec<f64> {
        let mut right = vec![0.0; self.learner.size()];
        row.iter().for_each(|(i, slope)| right[*i] = *slope);
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

/// Sum over a row of its slopes times the numbers they belong to.
pub(super) fn dot(row: &Row, numbers: &[f64]) -> f64 {
    row.iter().map(|(i, slope)| slope * numbers[*i]).sum()
}

/// Slopes by number, in CIELAB units with the chroma's made smaller as CIEDE2000 makes them.
pub(super) type Row = Vec<(usize, f64)>;

/// Median CIEDE2000 of a summed variance of three axes, with what the model misses.
pub(super) fn expected(variance: f64) -> f64 {
    MEDIAN * (variance + 3.0 * MODEL * MODEL).sqrt()
}

/// Variance of one axis of a colour that is seen: the eye's and the model's.
pub(super) fn seen_variance(by_meter: bool) -> f64 {
    let own = if by_meter { BY_METER } else { BY_EYE };
    own * own + MODEL * MODEL
}

impl Sight {
    /// Slopes by number of one residual, from its slopes by band, in units of `scale`.
    fn row(&self, by_band: &Spectrum<f64>, scale: f64) -> Row {
        let dot =
            |slopes: &Spectrum<f64>| -> f64 { (0..BANDS).map(|band| by_band[band] * slopes[band]).sum() };
        self.slopes.iter().map(|(number, slopes)| (*number, scale * dot(slopes))).collect()
    }
}

/// The equations of a step; loads are eliminated from them.
struct Normal {
    matrix: BandMatrix,
    gradient: Vec<f64>,
    loads: Vec<(usize, LoadRow)>,
}

/// What is needed to find a record's load once the numbers are known.
struct LoadRow {
    row: Row,
    gradient: f64,
    curvature: f64,
}

impl Normal {
    fn add(
        &mut self,
        index: usize,
        sight: &Sight,
        residuals: &[(f64, Spectrum<f64>); 3],
        believed: f64,
        record: &Evidence,
        load: f64,
    ) {
        let mut by_load = LoadRow {
            row: sight.slopes.iter().map(|(number, _)| (*number, 0.0)).collect(),
            gradient: load_hold(record) * load,
            curvature: load_hold(record),
        };
        for (value, by_band) in residuals {
            let row = sight.row(by_band, 1.0);
            let to_load: f64 = (0..BANDS).map(|band| by_band[band] * sight.by_load[band]).sum();
            for (at, (i, slope)) in row.iter().enumerate() {
                self.gradient[*i] += believed * slope * value;
                for (j, other) in &row[..=at] {
                    self.matrix.add(*i, *j, believed * slope * other);
                }
                by_load.row[at].1 += believed * slope * to_load;
            }
            by_load.gradient += believed * to_load * value;
            by_load.curvature += believed * to_load * to_load;
        }
        if record.load_doubt <= 0.0 {
            return;
        }
        // Schur's complement: the load answers to whatever the numbers do.
        for (at, (i, slope)) in by_load.row.iter().enumerate() {
            self.gradient[*i] -= slope * by_load.gradient / by_load.curvature;
            for (j, other) in &by_load.row[..=at] {
                self.matrix.add(*i, *j, -slope * other / by_load.curvature);
            }
        }
        self.loads.push((index, by_load));
    }
}

/// What a record misses, in standard deviations, and its slopes by the reflectance at every band.
fn residuals(sight: &Sight, seen: &Seen) -> [(f64, Spectrum<f64>); 3] {
    let scale = 1.0 / noise(seen);
    lab_residuals(&sight.reflectance, seen.lab())
        .map(|residual| (scale * residual.value, residual.slopes.map(|slope| scale * slope)))
}

/// Standard deviation of a residual of the calibration: [`LAB_WEIGHT`] makes a CIELAB unit.
fn noise(seen: &Seen) -> f64 {
    LAB_WEIGHT * seen_variance(matches!(seen, Seen::Spectrum(_))).sqrt()
}

/// 1 / variance of a record's ln load; nothing is sought where it is certain.
fn load_hold(record: &Evidence) -> f64 {
    if record.load_doubt > 0.0 { record.load_doubt.powi(-2) } else { 0.0 }
}

/// Cauchy's loss of a record's summed squares.
fn loss(square: f64) -> f64 {
    let doubted = 3.0 * DOUBTED * DOUBTED;
    doubted * (square / doubted).ln_1p()
}

/// The slope of [`loss`]: 1 for a record that fits, towards 0 for one that cannot be true.
fn belief(square: f64) -> f64 {
    1.0 / (1.0 + square / (3.0 * DOUBTED * DOUBTED))
}

fn cosine(j: usize, band: usize) -> f64 {
    (PI * j as f64 * band as f64 / (BANDS - 1) as f64).cos()
}

#[cfg(test)]
#[path = "lesson_tests.rs"]
mod tests;
