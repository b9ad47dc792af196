//! Choosing a kit step by step.

use std::fmt;

use crate::choose::bound::bound;
use crate::choose::choice::{Choice, Reason};
use crate::choose::pair_costs::Filling;
use crate::choose::rules::{Group, Rules};
use crate::choose::search::{Asked, Scored, Search, next_picks};
use crate::choose::served::Served;
use crate::error::Error;
use crate::kit::targets::Targets;
use crate::numeric::sort::in_order;
use crate::optics::film::Film;
use crate::optics::view::View;
use crate::paint::Paint;
use crate::paint::number::PaintNumber;
use crate::paint::shelf::Shelf;

/// Most paints to choose from; with [`MOST_TARGETS`] it keeps the tables below 100 MB.
pub const MOST_CANDIDATES: usize = 160;

/// Most targets.
pub const MOST_TARGETS: usize = 700;

/// So many kits are tried one by one.
const MOST_TRIED: u64 = 20_000;

/// Units of work, each about a tenth of a millisecond on a desktop machine.
mod units {
    pub(super) const PAIRS: usize = 3;
    pub(super) const TRIPLES: usize = 100;
    pub(super) const KITS: usize = 8;
    pub(super) const EXCHANGES: usize = 30;
}

/// How far a choice has come.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct Progress {
    /// Part of the work done, 0 to 1, as far as it can be told beforehand.
    pub done: f32,
    /// Cost of the best kit so far that keeps the rules.
    pub best: Option<f32>,
    /// Whether there is nothing left to do.
    pub finished: bool,
}

/// Chooses a kit step by step, so that a caller can show progress and stop.
///
/// ```
/// use washpath_core::{Chooser, Light, PaintNumber, Rules, Shelf, Stock, Targets, View};
/// let (shelf, view) = (Shelf::built_in(), View::new(&Stock::BrightWhite.paper(), Light::D65));
/// let candidates: Vec<PaintNumber> = (1..=20).map(PaintNumber::new).collect();
/// let mut chooser = Chooser::new(3, &candidates, &Targets::sparse_gamut(), &Rules::default(), shelf, &view)?;
/// while !chooser.step(100).finished {}
/// assert_eq!(chooser.choice()?.reasons.len(), 3);
/// # Ok::<(), washpath_core::Error>(())
/// ```
pub struct Chooser {
    numbers: Vec<PaintNumber>,
    asked: Asked,
    filling: Filling,
    phase: Phase,
    best: Option<Scored>,
    exact: bool,
    choice: Option<Choice>,
}

#[derive(Clone)]
enum Phase {
    Pairs { a: usize, b: usize },
    Triples { at: [usize; 3] },
    Trying { picks: Vec<usize>, tried: u64 },
    Starting { start: u32 },
    Improving { start: u32, kit: Scored },
    Finishing,
    Finished,
}

impl fmt::Debug for Chooser {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Chooser")
            .field("numbers", &self.numbers)
            .field("choice", &self.choice)
            .finish_non_exhaustive()
    }
}

impl Chooser {
    /// Prepares the choice of `size` paints out of `candidates`, and those the rules name.
    ///
    /// # Errors
    ///
    /// No size, fewer paints allowed than that, more paints named than that, more
    /// than 160 paints to choose from or 700 targets, an unknown paint, or a rule that
    /// the allowed paints cannot keep.
    pub fn new(
        size: usize,
        candidates: &[PaintNumber],
        targets: &Targets,
        rules: &Rules,
        shelf: &Shelf,
        view: &View,
    ) -> Result<Self, Error> {
        let mut paints: Vec<&Paint> = Vec::new();
        for number in rules.must_have.iter().chain(candidates) {
            let paint = shelf.get(*number)?;
            if rules.allow(paint) && paints.iter().all(|known| known.number != *number) {
                paints.push(paint);
            }
        }
        let required: Vec<usize> =
            (0..paints.len()).filter(|i| rules.must_have.contains(&paints[*i].number)).collect();
        let groups = rules.groups(&paints, view);
        check(size, &paints, &required, &groups, targets)?;
        let films: Vec<Film> = paints.iter().map(|paint| paint.film.clone()).collect();
        let tried = binomial(paints.len() - required.len(), size - required.len());
        Ok(Self {
            numbers: paints.iter().map(|paint| paint.number).collect(),
            asked: Asked { count: paints.len(), size, required, groups },
            filling: Filling::new(films, targets, view),
            phase: Phase::Pairs { a: 0, b: 0 },
            best: None,
            exact: tried <= MOST_TRIED,
            choice: None,
        })
    }

    /// Works on for about `units` tenths of a millisecond, and somewhat longer in the search.
    pub fn step(&mut self, units: usize) -> Progress {
        let mut left = units.max(1) as f32;
        while left > 0.0 && !matches!(self.phase, Phase::Finished) {
            let phase = std::mem::replace(&mut self.phase, Phase::Finished);
            let (next, spent) = self.advance(phase);
            self.phase = next;
            left -= spent;
        }
        Progress {
            done: self.done(),
            best: self.best.as_ref().filter(|best| best.lacks == 0).map(|best| best.cost),
            finished: matches!(self.phase, Phase::Finished),
        }
    }

    /// The choice, once finished.
    ///
    /// # Errors
    ///
    /// Not finished, or no kit found that keeps the rules.
    pub fn choice(&self) -> Result<&Choice, Error> {
        self.choice.as_ref().ok_or(Error::Refused(match self.phase {
            Phase::Finished => "found no kit that keeps all the rules",
            _ => "the choice is not finished",
        }))
    }

    /// Does some work and says what comes next and how many units it took.
    fn advance(&mut self, phase: Phase) -> (Phase, f32) {
        let count = self.asked.count;
        match phase {
            Phase::Pairs { a, b } => {
                self.filling.fill_pair(a, b);
                let next = match (a + 1 < count, b + 1 < count) {
                    (_, true) => Phase::Pairs { a, b: b + 1 },
                    (true, false) => Phase::Pairs { a: a + 1, b: a + 1 },
                    (false, false) if count > 2 => Phase::Triples { at: [0, 1, 2] },
                    (false, false) => self.searching(),
                };
                (next, 1.0 / units::PAIRS as f32)
            }
            Phase::Triples { at: [a, b, c] } => {
                self.filling.fill_triple([a, b, c]);
                let next = match (a + 1 < b, b + 1 < c, c + 1 < count) {
                    (true, ..) => Phase::Triples { at: [a + 1, b, c] },
                    (_, true, _) => Phase::Triples { at: [0, b + 1, c] },
                    (_, _, true) => Phase::Triples { at: [0, 1, c + 1] },
                    _ => self.searching(),
                };
                (next, 1.0 / units::TRIPLES as f32)
            }
            Phase::Trying { picks, tried } => {
                let search = self.search();
                let kit = search.score(search.with_required(&picks));
                self.keep(kit);
                let free = count - self.asked.required.len();
                let next = next_picks(picks, free)
                    .map_or(Phase::Finishing, |picks| Phase::Trying { picks, tried: tried + 1 });
                (next, 1.0 / units::KITS as f32)
            }
            Phase::Starting { start } => {
                let kit = match &self.best {
                    Some(best) if start > 0 => self.search().disturbed(&best.kit, start),
                    _ => self.search().greedy(),
                };
                self.keep(kit.clone());
                (Phase::Improving { start, kit }, (self.asked.size * count) as f32 / units::EXCHANGES as f32)
            }
            Phase::Improving { start, kit } => {
                let next = match self.search().best_exchange(&kit) {
                    Some(better) => {
                        self.keep(better.clone());
                        Phase::Improving { start, kit: better }
                    }
                    None if start + 1 < self.search().starts() => Phase::Starting { start: start + 1 },
                    None => Phase::Finishing,
                };
                (next, (self.asked.size * count) as f32 / units::EXCHANGES as f32)
            }
            Phase::Finishing | Phase::Finished => {
                let kept = self.best.as_ref().filter(|best| best.lacks == 0);
                self.choice = kept.map(|best| self.explain(best));
                (Phase::Finished, 1.0)
            }
        }
    }

    fn done(&self) -> f32 {
        let count = self.asked.count as f32;
        match &self.phase {
            Phase::Pairs { a, .. } => 0.35 * (1.0 - (1.0 - *a as f32 / count).powi(2)),
            Phase::Triples { at: [_, _, c] } => 0.35 + 0.35 * (*c as f32 / count).powi(3),
            Phase::Trying { tried, .. } => {
                let free = self.asked.count - self.asked.required.len();
                let all = binomial(free, self.asked.size - self.asked.required.len());
                0.7 + 0.3 * *tried as f32 / all as f32
            }
            Phase::Starting { start } | Phase::Improving { start, .. } => {
                0.7 + 0.28 * *start as f32 / self.search().starts() as f32
            }
            Phase::Finishing => 0.98,
            Phase::Finished => 1.0,
        }
    }

    fn searching(&self) -> Phase {
        match self.exact {
            true => {
                Phase::Trying { picks: (0..self.asked.size - self.asked.required.len()).collect(), tried: 0 }
            }
            false => Phase::Starting { start: 0 },
        }
    }

    fn keep(&mut self, found: Scored) {
        if self.best.as_ref().is_none_or(|best| found.beats(best)) {
            self.best = Some(found);
        }
    }

    fn search(&self) -> Search<'_> {
        Search { table: &self.filling.table, asked: &self.asked }
    }

    fn explain(&self, best: &Scored) -> Choice {
        let table = &self.filling.table;
        let mut reasons: Vec<Reason> = best
            .kit
            .iter()
            .map(|paint| {
                let rest: Vec<usize> = best.kit.iter().copied().filter(|other| other != paint).collect();
                Reason {
                    paint: self.numbers[*paint],
                    lost: (Served::by(table, &rest).cost() - best.cost).max(0.0),
                    required: self.asked.required.contains(paint),
                }
            })
            .collect();
        reasons = in_order(reasons, |reason| -reason.lost);
        let bound = if self.exact {
            best.cost
        } else {
            bound(table, self.asked.size, &self.asked.required, best.cost)
        };
        Choice { reasons, cost: best.cost, bound, exact: self.exact }
    }
}

fn check(
    size: usize,
    paints: &[&Paint],
    required: &[usize],
    groups: &[Group],
    targets: &Targets,
) -> Result<(), Error> {
    let (allowed, targets) = (paints.len(), targets.colours().len());
    Err(if size == 0 {
        Error::Missing("a kit to choose holds at least 1 paint")
    } else if allowed > MOST_CANDIDATES {
        Error::Value(format!("{allowed} paints to choose from: at most {MOST_CANDIDATES}"))
    } else if targets > MOST_TARGETS {
        Error::Value(format!("{targets} colours to choose for: at most {MOST_TARGETS}"))
    } else if required.len() > size {
        Error::TooManyRequired { required: required.len(), size }
    } else if allowed < size {
        Error::TooFewAllowed { allowed, size }
    } else if let Some(group) = groups.iter().find(|group| group.lacks(0..allowed) > 0 || group.least > size)
    {
        Error::TooFewOfGroup { group: group.name, least: group.least }
    } else {
        return Ok(());
    })
}

/// Ways to choose; as many as a `u64` holds where there are more.
fn binomial(count: usize, size: usize) -> u64 {
    let size = size.min(count - size);
    (0..size as u64)
        .try_fold(1u64, |ways, i| Some(ways.checked_mul(count as u64 - i)? / (i + 1)))
        .unwrap_or(u64::MAX)
}

#[cfg(test)]
#[path = "chooser_tests.rs"]
mod tests;
