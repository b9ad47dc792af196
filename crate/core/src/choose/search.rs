//! Kits that are tried, and how they are improved.

use crate::choose::pair_costs::Table;
use crate::choose::rules::Group;
use crate::choose::served::Served;

/// What is asked of a kit; paints by their index among the candidates.
#[derive(Debug)]
pub(crate) struct Asked {
    /// Candidates there are.
    pub(crate) count: usize,
    /// Paints of the kit.
    pub(crate) size: usize,
    /// Those it must hold.
    pub(crate) required: Vec<usize>,
    /// Those of which it must hold some.
    pub(crate) groups: Vec<Group>,
}

/// A kit by indices among the candidates, what it lacks of the rules and costs.
#[derive(Clone, Debug)]
pub(crate) struct Scored {
    pub(crate) kit: Vec<usize>,
    pub(crate) lacks: usize,
    pub(crate) cost: f32,
}

impl Scored {
    /// Whether it is the better of two.
    pub(crate) fn beats(&self, other: &Self) -> bool {
        (self.lacks, self.cost) < (other.lacks, other.cost)
    }
}

/// The search for a kit in a table that is filled.
pub(crate) struct Search<'a> {
    pub(crate) table: &'a Table,
    pub(crate) asked: &'a Asked,
}

impl Search<'_> {
    /// The kit of the required paints and of some of the others, by their order.
    pub(crate) fn with_required(&self, picks: &[usize]) -> Vec<usize> {
        let free: Vec<usize> = (0..self.asked.count).filter(|i| !self.asked.required.contains(i)).collect();
        self.asked.required.iter().copied().chain(picks.iter().map(|pick| free[*pick])).collect()
    }

    /// How many paints of the groups it lacks.
    pub(crate) fn lacks(&self, kit: &[usize]) -> usize {
        self.asked.groups.iter().map(|group| group.lacks(kit.iter().copied())).sum()
    }

    /// The kit with what it lacks and costs.
    pub(crate) fn score(&self, kit: Vec<usize>) -> Scored {
        let cost = Served::by(self.table, &kit).cost();
        Scored { lacks: self.lacks(&kit), cost, kit }
    }

    /// The kit with the paint added that serves best.
    fn best_addition(&self, kit: &[usize]) -> Option<Scored> {
        let served = Served::by(self.table, kit);
        let mut best: Option<(usize, usize, f32)> = None;
        for paint in (0..self.asked.count).filter(|paint| !kit.contains(paint)) {
            let members = kit.iter().copied().chain(std::iter::once(paint));
            let lacks = self.asked.groups.iter().map(|group| group.lacks(members.clone())).sum();
            if best.is_some_and(|(_, known, _)| known < lacks) {
                continue;
            }
            let cost = served.with(self.table, kit, paint).cost();
            if best.is_none_or(|(_, known, least)| (lacks, cost) < (known, least)) {
                best = Some((paint, lacks, cost));
            }
        }
        let (paint, lacks, cost) = best?;
        Some(Scored { kit: kit.iter().copied().chain(std::iter::once(paint)).collect(), lacks, cost })
    }

    /// Paints added one by one, each the one that serves best.
    pub(crate) fn greedy(&self) -> Scored {
        let mut kit = self.asked.required.clone();
        while kit.len() < self.asked.size {
            match self.best_addition(&kit) {
                Some(better) => kit = better.kit,
                None => break,
            }
        }
        self.score(kit)
    }

    /// A kit with a third of its paints exchanged at random; each fourth time all of them.
    pub(crate) fn disturbed(&self, kit: &[usize], start: u32) -> Scored {
        let mut kit = kit.to_vec();
        // D. E. Knuth's linear congruential generator: the same kits every time.
        let mut state = u64::from(start);
        let mut random = |below: usize| {
            state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            (state >> 33) as usize % below
        };
        let exchanges =
            if start.is_multiple_of(4) { 3 * self.asked.size } else { self.asked.size.div_ceil(3) };
        for _ in 0..exchanges {
            let at = random(kit.len());
            let paint = random(self.asked.count);
            if !self.asked.required.contains(&kit[at]) && !kit.contains(&paint) {
                kit[at] = paint;
            }
        }
        self.score(kit)
    }

    /// Greedy and disturbed kits that are improved: the more, the quicker each is.
    pub(crate) fn starts(&self) -> u32 {
        (10 + 4_000 / (self.asked.size * self.asked.count)).min(40) as u32
    }

    /// The best kit that differs in one paint, if it is better.
    pub(crate) fn best_exchange(&self, from: &Scored) -> Option<Scored> {
        let free = from.kit.iter().filter(|paint| !self.asked.required.contains(paint));
        let exchanged = free.filter_map(|out| {
            let rest: Vec<usize> = from.kit.iter().copied().filter(|paint| paint != out).collect();
            self.best_addition(&rest)
        });
        let best = exchanged.reduce(|best, next| if next.beats(&best) { next } else { best })?;
        // Less than this is rounding.
        (best.lacks < from.lacks || best.lacks == from.lacks && best.cost < from.cost - 1e-6).then_some(best)
    }
}

/// The next choice of so many out of `count`, in order; `None` after the last.
pub(crate) fn next_picks(mut picks: Vec<usize>, count: usize) -> Option<Vec<usize>> {
    let size = picks.len();
    let at = (0..size).rev().find(|i| picks[*i] + size - i < count)?;
    picks[at] += 1;
    for i in at + 1..size {
        picks[i] = picks[i - 1] + 1;
    }
    Some(picks)
}
