//! Blends: the recipes at which a kit's reach is looked at.

use crate::mixing::mixture::{whole_parts, whole_parts_of};
use crate::mixing::part::Part;
use crate::mixing::recipe::Recipe;
use crate::optics::film::Film;
use crate::paint::number::PaintNumber;

/// Most paints whose triples are taken at every ratio; beyond, at equal masstones alone.
pub const MOST_FULL: usize = 24;

/// Ratios of a pair: this many, even in log-odds of masstones, from 32:1 to 1:32.
pub(crate) const PAIR_RATIOS: usize = 17;
const PAIR_OCTAVES: f32 = 5.0;

/// Masstones of the paints of a triple are 1, 3 or 9, in every way that differs.
const TRIPLE_BASE: f32 = 3.0;
const TRIPLE_POWERS: i32 = 3;

/// Most parts of one paint in a recipe of a reach.
pub(crate) const MOST_BLEND_PARTS: u16 = u8::MAX as u16;

/// Whole parts of one to three of a reach's paints, by their index in the kit.
///
/// Unused entries have no parts and repeat the first paint.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Blend {
    pub(crate) paints: [u8; 3],
    pub(crate) parts: [u8; 3],
}

impl Blend {
    pub(crate) fn new(paints: &[u8], parts: &[u16]) -> Self {
        let mut blend = Self { paints: [paints[0]; 3], parts: [0; 3] };
        for (i, (paint, count)) in paints.iter().zip(parts).enumerate() {
            blend.paints[i] = *paint;
            blend.parts[i] = (*count).min(MOST_BLEND_PARTS) as u8;
        }
        blend
    }

    /// Its paints and their parts.
    pub(crate) fn used(self) -> impl Iterator<Item = (usize, u8)> + Clone {
        self.paints.into_iter().map(usize::from).zip(self.parts).filter(|(_, parts)| *parts > 0)
    }

    /// Number of its paints, 1 to 3.
    pub(crate) fn count(self) -> usize {
        self.parts.iter().filter(|parts| **parts > 0).count()
    }

    pub(crate) fn total(self) -> u16 {
        self.parts.iter().map(|parts| u16::from(*parts)).sum()
    }

    pub(crate) fn film(self, films: &[Film]) -> Film {
        let total = f32::from(self.total());
        Film::sum(self.used().map(|(paint, parts)| (&films[paint], f32::from(parts) / total)))
    }

    /// Its recipe, by the numbers of the kit's paints.
    pub(crate) fn recipe(self, paints: &[PaintNumber]) -> Recipe {
        Recipe::of_whole(self.used().map(|(paint, parts)| Part::new(paints[paint], parts.into())))
    }
}

/// The sets of up to `most` of `count` paints that hold the last of them: it alone, then in pairs, then in triples.
pub(crate) fn sets_of_last(count: u8, most: usize) -> Vec<Vec<u8>> {
    let Some(last) = count.checked_sub(1) else { return Vec::new() };
    let others = if most > 1 { sets(last, most - 1) } else { Vec::new() };
    let with_last = others.into_iter().map(|set| [&set[..], &[last]].concat());
    std::iter::once(vec![last]).chain(with_last).collect()
}

/// All sets of up to `most` of `count` paints: singles, then pairs, then triples.
pub(crate) fn sets(count: u8, most: usize) -> Vec<Vec<u8>> {
    let mut sets: Vec<Vec<u8>> = (0..count).map(|paint| vec![paint]).collect();
    let mut smaller = 0..sets.len();
    for _ in 1..most {
        for i in smaller.clone() {
            for paint in sets[i][sets[i].len() - 1] + 1..count {
                sets.push([&sets[i][..], &[paint]].concat());
            }
        }
        smaller = smaller.end..sets.len();
    }
    sets
}

/// All blends of some sets of paints, set by set, and where each set begins.
pub(crate) fn blends(films: &[Film], sets: &[Vec<u8>]) -> (Vec<Blend>, Vec<u32>) {
    let (mut blends, mut starts) = (Vec::new(), vec![0]);
    let strength = |paint: u8| films[usize::from(paint)].strength;
    let triples = triple_ratios(films.len());
    for set in sets {
        match set[..] {
            [a, b] => {
                for step in 0..PAIR_RATIOS {
                    let octaves = PAIR_OCTAVES * (1.0 - 2.0 * step as f32 / (PAIR_RATIOS - 1) as f32);
                    let (of_a, of_b) = (octaves.exp2() / strength(a), 1.0 / strength(b));
                    push_new(&mut blends, Blend::new(set, &whole_parts(of_b / (of_a + of_b)).parts()));
                }
            }
            [a, b, c] => {
                for masstones in &triples {
                    let volumes = [0, 1, 2].map(|i| masstones[i] / strength([a, b, c][i]));
                    push_new(&mut blends, Blend::new(set, &whole_parts_of(&volumes)));
                }
            }
            _ => blends.push(Blend::new(set, &[1])),
        }
        starts.push(blends.len() as u32);
    }
    (blends, starts)
}

/// Neighbouring ratios may round to the same parts.
fn push_new(blends: &mut Vec<Blend>, blend: Blend) {
    if blends.last() != Some(&blend) {
        blends.push(blend);
    }
}

fn triple_ratios(paints: usize) -> Vec<[f32; 3]> {
    if paints > MOST_FULL {
        return vec![[1.0; 3]];
    }
    let powers = 0..TRIPLE_POWERS.pow(3);
    powers
        .map(|code| [code % TRIPLE_POWERS, code / TRIPLE_POWERS % TRIPLE_POWERS, code / TRIPLE_POWERS.pow(2)])
        .filter(|powers| powers.contains(&0))
        .map(|powers| powers.map(|power| TRIPLE_BASE.powi(power)))
        .collect()
}
