//! Rounding: from a continuous optimum to parts and loads that a brush measures.

use std::sync::LazyLock;

use crate::colour::difference::EQUALLY_NEAR;
use crate::colour::{Lab, delta_e};
use crate::matching::optimum::{Optimum, Set, parts_between};
use crate::mixing::load::Load;
use crate::numeric::descent::sum_of_squares;
use crate::numeric::gcd::gcd;
use crate::optics::film::Film;
use crate::optics::view::THINNEST;
use crate::reach::Reach;

/// Most parts of a paint that are measured out; a trace is one part beside so many of what is.
const MOST_PARTS: u16 = 8;

/// Masstones of another paint to one of a trace, at most: as far as a reach looks.
const TRACE: f32 = 32.0;

/// Most parts to one of a trace.
const MOST_TO_ONE: f32 = 255.0;

/// Recipes of a set that are worked out.
const WORKED_OUT: usize = 16;

/// Logarithm of 2.
const OCTAVE: f32 = std::f32::consts::LN_2;

/// Whole parts of a set of paints at a load.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Rounded {
    pub(crate) set: Set,
    /// Of each paint of the set, without a common divisor; unused ones 0.
    pub(crate) parts: Parts,
    /// How much lies on the paper.
    load: Load,
    /// CIEDE2000.
    pub(crate) error: f32,
}

impl Rounded {
    /// How much lies on the paper; 1 is masstone.
    pub(crate) fn load(&self) -> f32 {
        self.load.value()
    }

    /// Error by steps that no eye tells apart, then paints, then parts, in one number.
    pub(crate) fn rank(&self) -> f32 {
        let step = (self.error / EQUALLY_NEAR).floor();
        // Parts are below 1024, and f32 holds 24 bits.
        let parts = self.parts.iter().sum::<u16>();
        (4.0 * step + self.set.paints().len() as f32) * 1024.0 + f32::from(parts)
    }
}

/// The recipe of least rank near an optimum; `None` where its masstones are no numbers.
///
/// A linear model of the colour round the optimum ranks every recipe that a brush
/// measures; those that it puts first are worked out. Each number rounded for
/// itself would miss that the errors of two may make up for each other.
pub(crate) fn round(optimum: &Optimum, target: Lab, reach: &Reach) -> Option<Rounded> {
    let model = Model::new(optimum, target, reach);
    let mut tried = model.first();
    // The model is linear and the colour is not: the last steps are walked.
    while let Some(nearest) = nearest_small(&tried) {
        for (parts, load) in model.neighbours(&nearest) {
            if !tried.iter().any(|tried| tried.parts == parts && tried.load == load) {
                tried.push(model.work_out(parts, load));
            }
        }
        let next = nearest_small(&tried);
        if next.is_none_or(|next| (next.parts, next.load) == (nearest.parts, nearest.load)) {
            break;
        }
    }
    tried.into_iter().min_by(|a, b| a.rank().total_cmp(&b.rank()).then(a.error.total_cmp(&b.error)))
}

fn nearest_small(tried: &[Rounded]) -> Option<Rounded> {
    let small = tried.iter().filter(|tried| is_small(&tried.parts));
    small.copied().min_by(|a, b| a.error.total_cmp(&b.error))
}

fn is_small(parts: &Parts) -> bool {
    parts.iter().all(|part| *part <= MOST_PARTS)
}

/// Parts of up to three paints.
type Parts = [u16; 3];

/// Parts at a load in quarter octaves, and the square of the error that the model expects.
struct Guess {
    parts: Parts,
    load: Load,
    squared: f32,
}

/// The colours of a set of paints round its optimum, as linear in the logarithms of masstones.
struct Model<'a> {
    set: Set,
    films: Vec<&'a Film>,
    target: Lab,
    reach: &'a Reach,
    /// Logarithms of masstones at the optimum, and of the load.
    logs: [f32; 3],
    load: f32,
    /// The difference from the target there, and what each logarithm does to it.
    miss: [f32; 3],
    slopes: [[f32; 3]; 3],
}

impl<'a> Model<'a> {
    fn new(optimum: &Optimum, target: Lab, reach: &'a Reach) -> Self {
        /// Of a logarithm: about the step between neighbouring parts.
        const STEP: f32 = 0.1;
        let films = optimum.set.films(reach);
        let whole: f32 = optimum.masstones.iter().sum();
        let load = whole.clamp(THINNEST, 1.0);
        let masstones = optimum.masstones.map(|masstone| masstone * load / whole);
        let colour = |masstones: [f32; 3]| {
            let load: f32 = masstones.iter().sum();
            let shares = films.iter().zip(masstones).map(|(film, masstone)| (*film, masstone / load));
            reach.view().colour(&Film::blend(shares), load)
        };
        let miss = parts_between(target, colour(masstones));
        let mut slopes = [[0.0; 3]; 3];
        for (i, slope) in slopes.iter_mut().enumerate().take(films.len()) {
            let mut moved = masstones;
            moved[i] *= STEP.exp();
            let moved = parts_between(target, colour(moved));
            *slope = [0, 1, 2].map(|row| (moved[row] - miss[row]) / STEP);
        }
        let (logs, load) = (masstones.map(f32::ln), load.ln());
        Self { set: optimum.set, films, target, reach, logs, load, miss, slopes }
    }

    /// A paint alone at every load; of more paints what the model puts first.
    fn first(&self) -> Vec<Rounded> {
        let small = &SMALL[self.films.len() - 1];
        if let [alone] = small[..] {
            return Load::washes().map(|load| self.work_out(alone, load)).collect();
        }
        let all = small.iter().copied().chain(self.traces());
        let mut guesses: Vec<Guess> = all.flat_map(|parts| self.guesses(parts)).collect();
        guesses.select_nth_unstable_by(WORKED_OUT, |a, b| a.squared.total_cmp(&b.squared));
        guesses[..WORKED_OUT].iter().map(|guess| self.work_out(guess.parts, guess.load)).collect()
    }

    /// These parts at the two quarter octaves next to the best load.
    fn guesses(&self, parts: Parts) -> impl Iterator<Item = Guess> {
        let masstones: [f32; 3] = std::array::from_fn(|i| {
            self.films.get(i).map_or(0.0, |film| film.strength * f32::from(parts[i]))
        });
        let whole = masstones.iter().sum::<f32>().ln();
        let (mut miss, mut thicker) = (self.miss, [0.0; 3]);
        for (i, masstone) in masstones.iter().enumerate().take(self.films.len()) {
            let moved = masstone.ln() - whole + self.load - self.logs[i];
            for row in 0..3 {
                miss[row] += moved * self.slopes[i][row];
                thicker[row] += self.slopes[i][row];
            }
        }
        let step: f32 = -(0..3).map(|row| miss[row] * thicker[row]).sum::<f32>() / sum_of_squares(&thicker);
        let best = (self.load + step) / OCTAVE * 4.0;
        let thinnest = f32::from(Load::THINNEST.quarters());
        let stops =
            [best.floor(), best.ceil()].map(|stop| if stop > thinnest { stop.min(0.0) } else { thinnest });
        let count = if stops[0] == stops[1] { 1 } else { 2 };
        stops.into_iter().take(count).map(move |stop| {
            let step = 0.25 * OCTAVE * stop - self.load;
            let squared = sum_of_squares(&[0, 1, 2].map(|row| miss[row] + step * thicker[row]));
            Guess { parts, load: Load::MASSTONE.washed(stop as i8), squared }
        })
    }

    fn work_out(&self, parts: Parts, load: Load) -> Rounded {
        let total = f32::from(parts.iter().sum::<u16>());
        let shares = self.films.iter().zip(parts).map(|(film, parts)| (*film, f32::from(parts) / total));
        let lab = self.reach.view().colour(&Film::sum(shares), load.value());
        Rounded { set: self.set, parts, load, error: delta_e(lab, self.target) }
    }

    /// Small parts one part away, and the parts themselves, at this load and those next to it.
    fn neighbours(&self, rounded: &Rounded) -> Vec<(Parts, Load)> {
        let used = self.films.len();
        let mut all = vec![rounded.parts];
        for i in 0..used {
            for part in [rounded.parts[i] - 1, rounded.parts[i] + 1] {
                let mut parts = rounded.parts;
                parts[i] = part;
                if is_small(&parts) && !parts[..used].contains(&0) {
                    all.push(reduced(parts));
                }
            }
        }
        let loads = [-1, 0, 1].map(|step| rounded.load.washed(step));
        all.iter().flat_map(|parts| loads.map(|load| (*parts, load))).collect()
    }

    /// One part of the least paint to so many times the others' parts, as near to the optimum as may be.
    fn traces(&self) -> Vec<Parts> {
        let strength = |i: usize| self.films[i].strength;
        let volume = |i: usize| self.logs[i].exp() / strength(i);
        let paints = 0..self.films.len();
        let Some(trace) = paints.clone().min_by(|a, b| volume(*a).total_cmp(&volume(*b))) else {
            return vec![];
        };
        let others: Vec<usize> = paints.filter(|i| *i != trace).collect();
        let Some(bases) = others.len().checked_sub(1).map(|count| &SMALL[count]) else { return vec![] };
        let ratio = others.iter().map(|i| volume(*i)).sum::<f32>() / volume(trace);
        let mut all = Vec::new();
        for base in bases {
            let times = ratio / f32::from(base.iter().sum::<u16>());
            for times in [times.floor(), times.ceil()].map(|times| times.min(MOST_TO_ONE) as u16) {
                let mut parts = [0; 3];
                others.iter().zip(base).for_each(|(i, part)| parts[*i] = times * part);
                parts[trace] = 1;
                let is_trace = |i: usize| f32::from(parts[i]) * strength(i) <= TRACE * strength(trace);
                if !is_small(&parts) && others.iter().all(|i| is_trace(*i)) {
                    all.push(parts);
                }
            }
        }
        all
    }
}

fn reduced(parts: Parts) -> Parts {
    let divisor = parts.iter().fold(0, |divisor, part| gcd(divisor, u64::from(*part))).max(1) as u16;
    parts.map(|part| part / divisor)
}

/// Parts up to [`MOST_PARTS`], without a common divisor, of one, two and three paints.
static SMALL: LazyLock<[Vec<Parts>; 3]> = LazyLock::new(|| {
    let each = || 1..=MOST_PARTS;
    let pairs = each().flat_map(|a| each().map(move |b| [a, b, 0]));
    let triples = each().flat_map(|a| each().flat_map(move |b| each().map(move |c| [a, b, c])));
    let coprime = |parts: &Parts| parts.iter().fold(0, |divisor, part| gcd(divisor, u64::from(*part))) == 1;
    [vec![[1, 0, 0]], pairs.filter(coprime).collect(), triples.filter(coprime).collect()]
});

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn small_parts_are_all_there_once() {
        // Coprime pairs up to 8: twice the sum of Euler's phi of 2 to 8, and 1:1.
        assert_eq!(SMALL[1].len(), 2 * (1 + 2 + 2 + 4 + 2 + 6 + 4) + 1);
        // Coprime triples by Moebius' sum: 8^3 - 4^3 - 2^3 - 1 - 1 + 1.
        assert_eq!(SMALL[2].len(), 512 - 64 - 8 - 1 + 1 - 1);
    }
}
