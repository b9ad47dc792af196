//! The best kit there can be: so many paints out of many, for some targets, under rules.
//!
//! ```text
//! cost of a kit = sum over the targets of w min(1, (d / 10)²)
//! ```
//!
//! w is a colour's share of the weight; d is CIEDE2000 to the nearest mix of one or
//! two paints of the kit, at any ratio and load, and 0 where three of them surround
//! the colour. So 0 is a kit that mixes all, 1 one that comes near nothing.
//!
//! Where the kits that keep the rules are few, all are tried. Else a greedy kit,
//! and kits disturbed from the best so far, are improved by the best exchange of
//! one paint until none helps. How much better any kit could be at most
//! is proven by a bound.

mod bound;
mod pair_costs;
pub(crate) mod rules;

use std::fmt;

use crate::choose::bound::bound;
use crate::choose::pair_costs::{Filling, Table};
use crate::choose::rules::{Group, Rules};
use crate::error::Error;
use crate::kit::targets::Targets;
use crate::numeric::minmax::lesser;
use crate::numeric::sort::in_order;
use crate::optics::film::Film;
use crate::optics::view::View;
use crate::paint::shelf::Shelf;
use crate::paint::{Paint, PaintNumber};

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

/// The kit chosen.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Choice {
    /// Its paints, and why each is in it, the most needed first.
    pub reasons: Vec<Reason>,
    /// Its cost, 0 to 1.
    pub cost: f32,
    /// No kit that keeps the rules costs less than this.
    pub bound: f32,
    /// Whether all kits were tried: then none is better.
    pub exact: bool,
}

/// Why a paint is in a kit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reason {
    /// The paint.
    pub paint: PaintNumber,
    /// What the kit would cost more without it.
    pub lost: f32,
    /// Whether the rules name it.
    pub required: bool,
}

impl Choice {
    /// How much less another kit could cost at most.
    #[must_use]
    pub fn gap(&self) -> f32 {
        (self.cost - self.bound).max(0.0)
    }
}

/// Chooses a kit step by step, so that a caller can show progress and stop.
///
/// ```
/// use washpath_core::{Chooser, Light, Targets, Rules, Shelf, Stock, View};
/// let (shelf, view) = (Shelf::built_in(), View::new(&Stock::BrightWhite.paper(), Light::D65));
/// let candidates: Vec<u16> = (1..=20).collect();
/// let mut chooser = Chooser::new(3, &candidates, &Targets::sparse_gamut(), &Rules::default(), shelf, &view)?;
/// while !chooser.step(100).finished {}
/// assert_eq!(chooser.choice()?.reasons.len(), 3);
/// # Ok::<(), washpath_core::Error>(())
/// ```
pub struct Chooser {
    numbers: Vec<PaintNumber>,
    required: Vec<usize>,
    groups: Vec<Group>,
    size: usize,
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

/// A kit by indices among the candidates, what it lacks of the rules and costs.
#[derive(Clone, Debug)]
struct Scored {
    kit: Vec<usize>,
    lacks: usize,
    cost: f32,
}

impl Scored {
    fn beats(&self, other: &Self) -> bool {
        (self.lacks, self.cost) < (other.lacks, other.cost)
    }
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
            required,
            groups,
            size,
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
        let count = self.numbers.len();
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
                let kit = self.with_required(&picks);
                self.keep(self.score(kit));
                let free = count - self.required.len();
                let next = next_picks(picks, free)
                    .map_or(Phase::Finishing, |picks| Phase::Trying { picks, tried: tried + 1 });
                (next, 1.0 / units::KITS as f32)
            }
            Phase::Starting { start } => {
                let kit = if start == 0 { self.greedy() } else { self.disturbed(start) };
                self.keep(kit.clone());
                (Phase::Improving { start, kit }, (self.size * count) as f32 / units::EXCHANGES as f32)
            }
            Phase::Improving { start, kit } => {
                let next = match self.best_exchange(&kit) {
                    Some(better) => {
                        self.keep(better.clone());
                        Phase::Improving { start, kit: better }
                    }
                    None if start + 1 < self.starts() => Phase::Starting { start: start + 1 },
                    None => Phase::Finishing,
                };
                (next, (self.size * count) as f32 / units::EXCHANGES as f32)
            }
            Phase::Finishing | Phase::Finished => {
                let kept = self.best.as_ref().filter(|best| best.lacks == 0);
                self.choice = kept.map(|best| self.explain(best));
                (Phase::Finished, 1.0)
            }
        }
    }

    fn done(&self) -> f32 {
        let count = self.numbers.len() as f32;
        match &self.phase {
            Phase::Pairs { a, .. } => 0.35 * (1.0 - (1.0 - *a as f32 / count).powi(2)),
            Phase::Triples { at: [_, _, c] } => 0.35 + 0.35 * (*c as f32 / count).powi(3),
            Phase::Trying { tried, .. } => {
                let free = self.numbers.len() - self.required.len();
                let all = binomial(free, self.size - self.required.len());
                0.7 + 0.3 * *tried as f32 / all as f32
            }
            Phase::Starting { start } | Phase::Improving { start, .. } => {
                0.7 + 0.28 * *start as f32 / self.starts() as f32
            }
            Phase::Finishing => 0.98,
            Phase::Finished => 1.0,
        }
    }

    fn searching(&self) -> Phase {
        match self.exact {
            true => Phase::Trying { picks: (0..self.size - self.required.len()).collect(), tried: 0 },
            false => Phase::Starting { start: 0 },
        }
    }

    fn keep(&mut self, found: Scored) {
        if self.best.as_ref().is_none_or(|best| found.beats(best)) {
            self.best = Some(found);
        }
    }

    /// The kit of the required paints and of some of the others, by their order.
    fn with_required(&self, picks: &[usize]) -> Vec<usize> {
        let free: Vec<usize> = (0..self.numbers.len()).filter(|i| !self.required.contains(i)).collect();
        self.required.iter().copied().chain(picks.iter().map(|pick| free[*pick])).collect()
    }

    fn lacks(&self, kit: &[usize]) -> usize {
        self.groups.iter().map(|group| group.lacks(kit.iter().copied())).sum()
    }

    fn score(&self, kit: Vec<usize>) -> Scored {
        let cost = Served::by(&self.filling.table, &kit).cost();
        Scored { lacks: self.lacks(&kit), cost, kit }
    }

    /// The kit with the paint added that serves best.
    fn best_addition(&self, kit: &[usize]) -> Option<Scored> {
        let table = &self.filling.table;
        let served = Served::by(table, kit);
        let mut best: Option<(usize, usize, f32)> = None;
        for paint in (0..self.numbers.len()).filter(|paint| !kit.contains(paint)) {
            let members = kit.iter().copied().chain(std::iter::once(paint));
            let lacks = self.groups.iter().map(|group| group.lacks(members.clone())).sum();
            if best.is_some_and(|(_, known, _)| known < lacks) {
                continue;
            }
            let cost = served.with(table, kit, paint).cost();
            if best.is_none_or(|(_, known, least)| (lacks, cost) < (known, least)) {
                best = Some((paint, lacks, cost));
            }
        }
        let (paint, lacks, cost) = best?;
        Some(Scored { kit: kit.iter().copied().chain(std::iter::once(paint)).collect(), lacks, cost })
    }

    fn greedy(&self) -> Scored {
        let mut kit = self.required.clone();
        while kit.len() < self.size {
            match self.best_addition(&kit) {
                Some(better) => kit = better.kit,
                None => break,
            }
        }
        self.score(kit)
    }

    /// The best kit so far with a third of its paints exchanged at random; each fourth time all of them.
    fn disturbed(&self, start: u32) -> Scored {
        let mut kit = self.best.as_ref().map_or_else(Vec::new, |best| best.kit.clone());
        // D. E. Knuth's linear congruential generator: the same kits every time.
        let mut state = u64::from(start);
        let mut random = |below: usize| {
            state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            (state >> 33) as usize % below
        };
        let exchanges = if start.is_multiple_of(4) { 3 * self.size } else { self.size.div_ceil(3) };
        for _ in 0..exchanges {
            let at = random(kit.len());
            let paint = random(self.numbers.len());
            if !self.required.contains(&kit[at]) && !kit.contains(&paint) {
                kit[at] = paint;
            }
        }
        self.score(kit)
    }

    /// Greedy and disturbed kits that are improved: the more, the quicker each is.
    fn starts(&self) -> u32 {
        (10 + 4_000 / (self.size * self.numbers.len())).min(40) as u32
    }

    /// The best kit that differs in one paint, if it is better.
    fn best_exchange(&self, from: &Scored) -> Option<Scored> {
        let free = from.kit.iter().filter(|paint| !self.required.contains(paint));
        let exchanged = free.filter_map(|out| {
            let rest: Vec<usize> = from.kit.iter().copied().filter(|paint| paint != out).collect();
            self.best_addition(&rest)
        });
        let best = exchanged.reduce(|best, next| if next.beats(&best) { next } else { best })?;
        // Less than this is rounding.
        (best.lacks < from.lacks || best.lacks == from.lacks && best.cost < from.cost - 1e-6).then_some(best)
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
                    required: self.required.contains(paint),
                }
            })
            .collect();
        reasons = in_order(reasons, |reason| -reason.lost);
        let bound = if self.exact { best.cost } else { bound(table, self.size, &self.required, best.cost) };
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

/// What a kit does for every colour.
#[derive(Clone)]
struct Served {
    costs: Vec<f32>,
    covered: Vec<u64>,
}

impl Served {
    fn by(table: &Table, kit: &[usize]) -> Self {
        let mut served =
            Self { costs: table.weights().to_vec(), covered: vec![0; table.weights().len().div_ceil(64)] };
        for i in 0..kit.len() {
            served = served.with(table, &kit[..i], kit[i]);
        }
        served
    }

    fn with(&self, table: &Table, kit: &[usize], paint: usize) -> Self {
        let mut served = self.clone();
        for other in kit.iter().copied().chain(std::iter::once(paint)) {
            for (cost, found) in served.costs.iter_mut().zip(table.costs(paint, other)) {
                *cost = lesser(*cost, *found);
            }
        }
        for (i, a) in kit.iter().enumerate() {
            for b in &kit[..i] {
                for (bits, found) in served.covered.iter_mut().zip(table.cover(ascending([*a, *b, paint]))) {
                    *bits |= found;
                }
            }
        }
        served
    }

    fn cost(&self) -> f32 {
        let open = |(chunk, bits): (&[f32], &u64)| -> f32 {
            chunk.iter().enumerate().map(|(i, cost)| if bits >> i & 1 == 1 { 0.0 } else { *cost }).sum()
        };
        self.costs.chunks(64).zip(&self.covered).map(open).sum()
    }
}

/// Three numbers, the least first.
fn ascending([a, b, c]: [usize; 3]) -> [usize; 3] {
    let (low, high) = (a.min(b), a.max(b));
    [low.min(c), high.min(c).max(low), high.max(c)]
}

/// The next choice of so many out of `count`, in order; `None` after the last.
fn next_picks(mut picks: Vec<usize>, count: usize) -> Option<Vec<usize>> {
    let size = picks.len();
    let at = (0..size).rev().find(|i| picks[*i] + size - i < count)?;
    picks[at] += 1;
    for i in at + 1..size {
        picks[i] = picks[i - 1] + 1;
    }
    Some(picks)
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
        let mut picks = Some((0..chooser.size - chooser.required.len()).collect::<Vec<_>>());
        while let Some(some) = picks {
            let kit = chooser.with_required(&some);
            if chooser.lacks(&kit) == 0 {
                best = best.min(plain_cost(&chooser.filling.table, &kit));
            }
            picks = next_picks(some, chooser.numbers.len() - chooser.required.len());
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
        assert_eq!(error(0, &[1, 2], &none), "a kit to choose holds at least 1 paint");
        assert_eq!(error(3, &[1, 2], &none), "the rules allow 2 paints: the kit holds 3");
        let must = Rules { must_have: vec![1, 2], ..Rules::default() };
        assert_eq!(error(1, &[1, 2], &must), "2 paints are a must: the kit holds 1");
        let rough = Rules { granulating: 2, ..Rules::default() };
        assert_eq!(
            error(2, &[3, 4], &rough),
            "the rules ask for granulating paints, at least 2: there are not so many"
        );
    }
}
