//! Coverage: which of the colours aimed at a kit reaches, and which only by one of its paints.

use wide::f32x4;

use crate::colour::Lab;
use crate::colour::cells::{ALL_CELLS, cell_of, runs};
use crate::colour::ellipsoid::Ellipsoid;
use crate::error::Error;
use crate::kit::targets::Targets;
use crate::numeric::descent::{Trial, descend, powers};
use crate::numeric::sort::order;
use crate::optics::film::Film;
use crate::optics::view::{THINNEST, View};
use crate::paint::number::PaintNumber;
use crate::reach::blend::Blend;
use crate::reach::{LOADS, Reach};
use crate::text::limits::counted;

/// CIEDE2000 within which a colour counts as reached.
pub const LIMITS: Within<f32> = Within { same: 2.0, close: 5.0 };

/// Something told for each of the two [`LIMITS`].
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Within<T> {
    /// For what is as good as the same.
    pub same: T,
    /// For what is close.
    pub close: T,
}

impl<T> Within<T> {
    /// The narrower limit first.
    pub fn into_array(self) -> [T; 2] {
        [self.same, self.close]
    }

    fn of([same, close]: [T; 2]) -> Self {
        Self { same, close }
    }
}

/// Most paints of a coverage.
pub const MOST_COVERING: usize = 128;

/// How far round a colour mixes are looked for, in CIEDE2000 as an [`Ellipsoid`] has it.
///
/// A mix farther off than this at every ratio and load of the reach is not refined;
/// a look of 8 finds 0.3 % more of the gamut for fifteen paints, in twice the time.
const LOOK: f32 = 6.0;

/// Trials of a refinement.
const STEPS: usize = 4;

/// What a kit reaches of some targets.
///
/// A colour is reached within a limit if a single, a pair or a triple of the kit
/// comes so near, at the best load and ratio: the nearest mix of the reach is
/// refined, continuously, for each set of paints by itself. So one paint more
/// never takes a colour away. Of each set the mix that is nearest by an ellipsoid of
/// equal CIEDE2000 is refined; so a colour that is just within a limit may be
/// passed over, but none nearer than 0.7 of it was in 1800 kits drawn at random.
#[derive(Clone, Debug)]
pub struct Coverage {
    paints: Vec<PaintNumber>,
    weights: Vec<f32>,
    /// For each colour and limit the paints that every set that reaches it has in common.
    needs: Vec<[PaintSet; 2]>,
}

/// Paints by their index in the kit, one bit each.
type PaintSet = u128;

/// No set reaches the colour: more paints in common than any set has.
const UNREACHED: PaintSet = PaintSet::MAX;

impl Coverage {
    /// What `reach` covers of some targets.
    ///
    /// # Errors
    ///
    /// More than 128 paints.
    pub fn new(reach: &Reach, targets: &Targets) -> Result<Self, Error> {
        counted(reach.paints().len(), 0..=MOST_COVERING, "paints", "a coverage spans")?;
        let mut search = Search::new(reach);
        let needs = targets.colours().iter().map(|colour| search.needs(*colour)).collect();
        Ok(Self { paints: reach.paints().to_vec(), weights: targets.weights().to_vec(), needs })
    }

    /// Part of the targets, by weight, reached within each of the [`LIMITS`]; 0 to 1.
    #[must_use]
    pub fn reached(&self) -> Within<f32> {
        self.covered_part(|needs| needs != UNREACHED)
    }

    /// Part of the targets that is reached with this paint and not without it; 0 to 1.
    #[must_use]
    pub fn lost_without(&self, paint: PaintNumber) -> Within<f32> {
        match self.paints.iter().position(|known| *known == paint) {
            Some(index) => self.covered_part(|needs| needs != UNREACHED && needs >> index & 1 == 1),
            None => Within::default(),
        }
    }

    /// Whether a target, by its index, is reached within each of the [`LIMITS`].
    #[must_use]
    pub fn reaches(&self, colour: usize) -> Option<Within<bool>> {
        self.needs.get(colour).map(|needs| Within::of(needs.map(|needs| needs != UNREACHED)))
    }

    /// Part of the targets, by weight, that count.
    fn covered_part(&self, counts: impl Fn(PaintSet) -> bool) -> Within<f32> {
        let whole: f32 = self.weights.iter().sum();
        Within::of([0, 1].map(|limit| {
            let colours = self.needs.iter().zip(&self.weights);
            let sum: f32 = colours.filter(|(needs, _)| counts(needs[limit])).map(|(_, weight)| weight).sum();
            sum / whole
        }))
    }
}

/// A mix in the index.
#[derive(Clone, Copy)]
struct Entry {
    lab: Lab,
    set: u32,
    blend: u32,
    level: u8,
}

/// The nearest mixes of one set of paints.
#[derive(Clone, Copy)]
struct Nearest {
    squared: f32,
    entry: Entry,
}

/// As many entries are compared at once.
const FOUR: usize = 4;

/// All mixes of a reach, by cells of CIELAB.
struct Search<'a> {
    reach: &'a Reach,
    blends: Vec<Blend>,
    sets: Vec<PaintSet>,
    entries: Vec<Entry>,
    /// L*, a* and b* of the entries, with [`FOUR`] - 1 more that are no colours, so that vectors can end past the last.
    coordinates: [Vec<f32>; 3],
    /// Where each cell's entries begin; one more at the end.
    cells: Vec<u32>,
    /// By set, the nearest mix to the colour at hand.
    nearest: Vec<Option<Nearest>>,
    found: Vec<u32>,
}

impl<'a> Search<'a> {
    fn new(reach: &'a Reach) -> Self {
        let (blends, rows): (Vec<Blend>, Vec<&[Lab; LOADS.len()]>) = reach.rows().unzip();
        let mut sets = Vec::new();
        let mut all = Vec::with_capacity(reach.len());
        for range in reach.sets() {
            let set = sets.len() as u32;
            sets.push(blends[range.start].used().fold(0, |bits, (paint, _)| bits | 1 << paint));
            for blend in range {
                for (level, lab) in rows[blend].iter().enumerate() {
                    all.push(Entry { lab: *lab, set, blend: blend as u32, level: level as u8 });
                }
            }
        }
        let (entries, cells) = sorted(&all);
        let nearest = vec![None; sets.len()];
        let coordinate = |of: fn(Lab) -> f32| {
            let values = entries.iter().map(|entry| of(entry.lab));
            values.chain([f32::INFINITY; FOUR - 1]).collect::<Vec<f32>>()
        };
        let coordinates = [coordinate(|lab| lab.l), coordinate(|lab| lab.a), coordinate(|lab| lab.b)];
        Self { reach, blends, sets, entries, coordinates, cells, nearest, found: Vec::new() }
    }

    fn needs(&mut self, colour: Lab) -> [PaintSet; 2] {
        let ellipsoid = Ellipsoid::round(colour);
        let mut needs = [UNREACHED; 2];
        // A near look settles most colours well inside the reach.
        for look in [LIMITS.same, LOOK] {
            self.gather(&ellipsoid, look);
            let squared = |set: u32| self.nearest[set as usize].map_or(f32::MAX, |n| n.squared);
            let found = order(self.found.drain(..).map(|set| (squared(set), set)).collect());
            self.tighten(&mut needs, &ellipsoid, &found, |nearest| nearest.lab);
            // What serves as it is comes first: a set that would only tell the same need not be refined.
            if look == LOOK {
                self.tighten(&mut needs, &ellipsoid, &found, |nearest| self.refined(nearest, &ellipsoid));
            }
            for set in &found {
                self.nearest[*set as usize] = None;
            }
            if needs == [0, 0] {
                break;
            }
        }
        needs
    }

    /// Narrows what the sets that reach a colour have in common by some sets, each by a mix of its own.
    fn tighten(
        &self,
        needs: &mut [PaintSet; 2],
        colour: &Ellipsoid,
        found: &[u32],
        mix: impl Fn(&Entry) -> Lab,
    ) {
        for set in found {
            let paints = self.sets[*set as usize];
            let settled = needs.iter().all(|needs| needs & paints == *needs);
            let (false, Some(nearest)) = (settled, &self.nearest[*set as usize]) else { continue };
            let mix = mix(&nearest.entry);
            for (needs, limit) in needs.iter_mut().zip(LIMITS.into_array()) {
                if *needs & paints != *needs && colour.lies_within(limit, mix) {
                    *needs &= paints;
                }
            }
            if *needs == [0, 0] {
                break;
            }
        }
    }

    /// The nearest mix of every set within a distance.
    fn gather(&mut self, ellipsoid: &Ellipsoid, look: f32) {
        for run in runs(ellipsoid, look) {
            let run = self.cells[*run.start()] as usize..self.cells[*run.end() + 1] as usize;
            // The last four may reach into the next cell: mixes like any others, looked at once more.
            for first in run.step_by(FOUR) {
                let four = |values: &Vec<f32>| f32x4::from(&values[first..first + FOUR]);
                let squared = ellipsoid.squared_of_four(self.coordinates.each_ref().map(four));
                let mut near = squared.simd_le(f32x4::splat(look * look)).to_bitmask();
                while near != 0 {
                    let lane = near.trailing_zeros() as usize;
                    near &= near - 1;
                    self.hold(first + lane, squared.as_array()[lane]);
                }
            }
        }
    }

    /// Keeps an entry if it is the nearest of its set so far.
    fn hold(&mut self, entry: usize, squared: f32) {
        let entry = self.entries[entry];
        let nearest = &mut self.nearest[entry.set as usize];
        match nearest {
            None => self.found.push(entry.set),
            Some(known) if known.squared <= squared => return,
            Some(_) => {}
        }
        *nearest = Some(Nearest { squared, entry });
    }

    /// The nearest mix of the same paints.
    fn refined(&self, entry: &Entry, ellipsoid: &Ellipsoid) -> Lab {
        let blend = self.blends[entry.blend as usize];
        let load = LOADS[usize::from(entry.level)];
        let films: Vec<&Film> = blend.used().map(|(paint, _)| &self.reach.films()[paint]).collect();
        let parts: Vec<f32> = blend.used().map(|(_, parts)| f32::from(parts)).collect();
        refine(&films, &parts, load, entry.lab, self.reach.view(), ellipsoid)
    }
}

/// The colour nearest to an ellipsoid's centre that films mix, starting from some parts at a load and their colour.
///
/// The unknowns are the logarithms of the masstones of each film; together they
/// lie between the thinnest wash and one masstone.
pub(crate) fn refine(
    films: &[&Film],
    parts: &[f32],
    load: f32,
    lab: Lab,
    view: &View,
    ellipsoid: &Ellipsoid,
) -> Lab {
    let mut start = [0.0; 3];
    let strengths = films.iter().zip(parts).map(|(film, parts)| film.strength * parts);
    let whole: f32 = strengths.clone().sum();
    for (log, strength) in start.iter_mut().zip(strengths) {
        *log = (load * strength / whole).ln();
    }
    let colour = |logs: [f32; 3]| {
        let masstones = powers(logs);
        let load = masstones[..films.len()].iter().sum::<f32>();
        let shares = films.iter().zip(masstones).map(|(film, masstones)| (*film, masstones / load));
        view.colour(&Film::blend(shares), load.clamp(THINNEST, 1.0))
    };
    let enough = LIMITS.same * LIMITS.same * 0.8;
    let trial = |at: [f32; 3], lab: Lab| Trial { at, miss: ellipsoid.parts(lab), found: lab };
    descend(trial(start, lab), films.len(), STEPS, |at| trial(at, colour(at)), |sum| sum < enough).found
}

/// Entries by cell, and where each cell begins: a counting sort.
fn sorted(all: &[Entry]) -> (Vec<Entry>, Vec<u32>) {
    let cell = |entry: &Entry| cell_of(entry.lab);
    let mut cells = vec![0u32; ALL_CELLS + 1];
    for entry in all {
        cells[cell(entry) + 1] += 1;
    }
    for i in 1..cells.len() {
        cells[i] += cells[i - 1];
    }
    let mut next = cells.clone();
    let mut entries = all.to_vec();
    for entry in all {
        let slot = &mut next[cell(entry)];
        entries[*slot as usize] = *entry;
        *slot += 1;
    }
    (entries, cells)
}

#[cfg(test)]
#[path = "coverage_tests.rs"]
mod tests;
