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
        self.choice.as_ref().ok_or_else(|| {
            Error::Value(match self.phase {
                Phase::Finished => "found no kit that keeps all the rules".into(),
                _ => "the choice is not finished".into(),
            })
        })
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
    let fault = if size == 0 {
        "a kit to choose holds at least 1 paint".into()
    } else if allowed > MOST_CANDIDATES {
        format!("{allowed} paints to choose from: at most {MOST_CANDIDATES}")
    } else if targets > MOST_TARGETS {
        format!("{targets} colours to choose for: at most {MOST_TARGETS}")
    } else if required.len() > size {
        format!("{} paints are a must: the kit holds {size}", required.len())
    } else if allowed < size {
        format!("the rules allow {allowed} paints: the kit holds {size}")
    } else if let Some(group) = groups.iter().find(|group| group.lacks(0..allowed) > 0 || group.least > size)
    {
        format!("the rules ask for {}, at least {}: there are not so many", group.name, group.least)
    } else {
        return Ok(());
    };
    Err(Error::Value(fault))
}

/// Ways to choose; as many as a `u64` holds where there are more.
fn binomial(count: usize, size: usize) -> u64 {
    let size = size.min(count - size);
    (0..size as u64)
        .try_fold(1u64, |ways, i| Some(ways.checked_mul(count as u64 - i)? / (i + 1)))
        .unwrap_or(u64::MAX)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::choose::pair_costs::Table;
    use crate::choose::rules::Avoid;
    use crate::optics::observer::Light;
    use crate::optics::paper::Stock;
    use proptest::prelude::*;

    fn view() -> View {
        View::new(&Stock::BrightWhite.paper(), Light::D65)
    }

    fn numbers() -> Vec<PaintNumber> {
        Shelf::built_in().paints().iter().map(|paint| paint.number).collect()
    }

    /// Every so many of the gamut's colours, weighted unevenly.
    fn targets(step: usize) -> Targets {
        let colours = crate::colour::gamut::gamut().iter().step_by(step).enumerate();
        let weighted: Vec<_> = colours.map(|(i, lab)| (*lab, 1.0 + (i % 3) as f32)).collect();
        Targets::new(&weighted).unwrap()
    }

    fn chooser(size: usize, candidates: &[PaintNumber], rules: &Rules) -> Result<Chooser, Error> {
        Chooser::new(size, candidates, &targets(9), rules, Shelf::built_in(), &view())
    }

    fn finish(mut chooser: Chooser) -> Result<(Choice, Chooser), Error> {
        while !chooser.step(50).finished {}
        let choice = chooser.choice()?.clone();
        Ok((choice, chooser))
    }

    fn choose(size: usize, candidates: &[PaintNumber], rules: &Rules) -> Result<Choice, Error> {
        finish(chooser(size, candidates, rules)?).map(|(choice, _)| choice)
    }

    /// The objective as it is written, set by set and colour by colour.
    fn plain_cost(table: &Table, kit: &[usize]) -> f32 {
        let serves = |t: usize| {
            let mut cost = table.weights()[t];
            for a in kit {
                for b in kit {
                    cost = cost.min(table.costs(*a, *b)[t]);
                    for c in kit.iter().filter(|c| a < b && b < c) {
                        if table.cover([*a, *b, *c])[t / 64] >> (t % 64) & 1 == 1 {
                            cost = 0.0;
                        }
                    }
                }
            }
            cost
        };
        (0..table.weights().len()).map(serves).sum()
    }

    fn exhaustive(chooser: &Chooser) -> f32 {
        let mut best = f32::INFINITY;
        let mut picks = Some((0..chooser.asked.size - chooser.asked.required.len()).collect::<Vec<_>>());
        while let Some(some) = picks {
            let kit = chooser.search().with_required(&some);
            if chooser.search().lacks(&kit) == 0 {
                best = best.min(plain_cost(&chooser.filling.table, &kit));
            }
            picks = next_picks(some, chooser.asked.count - chooser.asked.required.len());
        }
        best
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(12))]

        #[test]
        fn trying_all_finds_what_plain_exhaustive_search_finds(
            candidates in proptest::sample::subsequence(numbers(), 5..11), size in 1usize..5, granulating in 0usize..2,
        ) {
            let rules = Rules { granulating, must_have: vec![candidates[1]], ..Rules::default() };
            let Ok(chooser) = chooser(size, &candidates, &rules) else { return Ok(()) };
            match finish(chooser) {
                Ok((choice, chooser)) => {
                    prop_assert!(choice.exact && choice.gap() == 0.0);
                    prop_assert!((choice.cost - exhaustive(&chooser)).abs() < 1e-5);
                    prop_assert!(choice.reasons.iter().any(|reason| reason.required));
                }
                // The required paint may leave no room for one that granulates.
                Err(_) => prop_assert!(size == 1 && granulating == 1),
            }
        }
    }

    #[test]
    fn exchanges_find_what_trying_all_finds() {
        let numbers = numbers();
        for i in 0..60 {
            let mut candidates: Vec<_> =
                (0..14).map(|j| numbers[(7 * i + j * (i + 3)) % numbers.len()]).collect();
            candidates.sort_unstable();
            candidates.dedup();
            let mut searching = chooser(3 + i % 3, &candidates, &Rules::default()).unwrap();
            searching.exact = false;
            let (choice, chooser) = finish(searching).unwrap();
            let least = exhaustive(&chooser);
            assert!(choice.bound <= least + 1e-5, "bound {} above {least}", choice.bound);
            assert!((choice.cost - least).abs() < 1e-5, "{} for {least}, instance {i}", choice.cost);
        }
    }

    #[test]
    fn many_small_steps_are_one_large_one() {
        let candidates = &numbers()[..16];
        let rules = Rules::default();
        let mut small = chooser(4, candidates, &rules).unwrap();
        assert!(small.choice().is_err());
        let mut done = 0.0;
        loop {
            let progress = small.step(1);
            assert!(progress.done >= done, "{} after {done}", progress.done);
            done = progress.done;
            if progress.finished {
                break;
            }
        }
        let mut large = chooser(4, candidates, &rules).unwrap();
        assert!(large.step(usize::MAX).finished);
        assert_eq!(small.choice(), large.choice());
    }

    #[test]
    fn rules_are_kept() {
        let shelf = Shelf::built_in();
        let must = shelf.find("py53").unwrap().number;
        let rules = Rules {
            must_have: vec![must],
            must_not: vec![shelf.find("pb29").unwrap().number],
            avoid: vec![Avoid::Cadmium, Avoid::Cobalt],
            lightfast: Some(6.0),
            granulating: 2,
            transparent: 3,
            triad: true,
        };
        let choice = choose(8, &numbers()[..60], &rules).unwrap();
        let paints: Vec<&Paint> =
            choice.reasons.iter().map(|reason| shelf.get(reason.paint).unwrap()).collect();
        assert_eq!(paints.len(), 8);
        assert!(paints.iter().any(|paint| paint.number == must));
        for paint in paints.iter().filter(|paint| paint.number != must) {
            assert!(paint.key != "pb29" && paint.lightfastness().unwrap() >= 6.0, "{}", paint.key);
            assert!(!paint.caution.contains("Cadmium") && !paint.caution.contains("Cobalt"), "{}", paint.key);
        }
        assert!(paints.iter().filter(|paint| paint.granulates()).count() >= 2);
        assert!(paints.iter().filter(|paint| paint.is_transparent()).count() >= 3);
        assert!(choice.bound <= choice.cost && choice.gap() < 0.1, "{choice:?}");
    }

    #[test]
    fn a_larger_kit_costs_no_more() {
        let candidates = &numbers()[..14];
        let costs: Vec<f32> =
            (1..7).map(|size| choose(size, candidates, &Rules::default()).unwrap().cost).collect();
        assert!(costs.windows(2).all(|pair| pair[1] <= pair[0] + 1e-6), "{costs:?}");
    }

    #[test]
    fn limits_are_named() {
        let error = |size, candidates: &[PaintNumber], rules: &Rules| {
            chooser(size, candidates, rules).map(|_| ()).unwrap_err().to_string()
        };
        let none = Rules::default();
        let two = [1, 2].map(PaintNumber::new);
        assert_eq!(error(0, &two, &none), "a kit to choose holds at least 1 paint");
        assert_eq!(error(3, &two, &none), "the rules allow 2 paints: the kit holds 3");
        let must = Rules { must_have: two.to_vec(), ..Rules::default() };
        assert_eq!(error(1, &two, &must), "2 paints are a must: the kit holds 1");
        let rough = Rules { granulating: 2, ..Rules::default() };
        assert_eq!(
            error(2, &[3, 4].map(PaintNumber::new), &rough),
            "the rules ask for granulating paints, at least 2: there are not so many"
        );
    }
}
