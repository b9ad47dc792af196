//! Recipes: whole parts of paints, as a brush measures them.

use crate::error::Error;
use crate::mixing::doubt::Doubt;
use crate::mixing::mixture::{mix, whole_parts};
use crate::mixing::part::Part;
use crate::numeric::gcd::gcd;
use crate::optics::film::Film;
use crate::paint::number::PaintNumber;
use crate::paint::shelf::Shelf;
use crate::text::limits::counted;

/// Most paints a recipe holds.
pub const MOST_PAINTS: usize = 8;

/// Most parts of one paint in a recipe.
pub const MOST_PARTS: u16 = 999;

/// Whole parts of paints by volume; a paint alone is a recipe of one part.
///
/// Kept for later use it is a puddle. Paints stand in the order they were
/// first named, each once; parts have no common divisor.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Recipe {
    parts: Vec<Part>,
}

impl Recipe {
    /// A paint alone.
    #[must_use]
    pub fn paint(number: PaintNumber) -> Self {
        Self { parts: vec![Part { paint: number, parts: 1 }] }
    }

    /// A recipe of these parts; a paint named twice counts once with the sum.
    ///
    /// # Errors
    ///
    /// No part above 0, more than [`MOST_PAINTS`] paints, more than
    /// 999 parts of one.
    ///
    /// ```
    /// use washpath_core::{Part, Recipe};
    /// assert_eq!(Recipe::new(&[Part::new(3, 2), Part::new(5, 4)])?.parts(), [Part::new(3, 1), Part::new(5, 2)]);
    /// assert!(Recipe::new(&[Part::new(3, 0)]).is_err());
    /// # Ok::<(), washpath_core::Error>(())
    /// ```
    pub fn new(parts: &[Part]) -> Result<Self, Error> {
        Self::of_volumes(parts.iter().map(|part| Volume::of(*part, 1)))
    }

    /// `share` of `b` by volume in a mixture with `a`, in the nearest whole parts of the two.
    ///
    /// Mixes of mixes: one part of a recipe is one volume of it. Where the
    /// parts would grow past 999 they are rounded, none of them to nothing.
    ///
    /// # Errors
    ///
    /// More than [`MOST_PAINTS`] paints together.
    pub fn between(a: &Self, b: &Self, share: f32) -> Result<Self, Error> {
        let [of_a, of_b] = whole_parts(share).parts().map(u64::from);
        // One volume of a recipe is its parts over their sum; both sums come to one denominator.
        let (volume_a, volume_b) = (a.volume(), b.volume());
        let side = |recipe: &Self, factor: u64| -> Vec<Volume> {
            recipe.parts.iter().map(|part| Volume::of(*part, factor)).collect()
        };
        let volumes = [side(a, of_a * volume_b), side(b, of_b * volume_a)].concat();
        Self::of_volumes(volumes.into_iter())
    }

    /// Its paints and their parts, each at least 1.
    #[must_use]
    pub fn parts(&self) -> &[Part] {
        &self.parts
    }

    /// Its film.
    ///
    /// # Errors
    ///
    /// [`Error::UnknownPaint`] for a paint that `shelf` lacks.
    pub fn film(&self, shelf: &Shelf) -> Result<Film, Error> {
        let films: Vec<(&Film, f32)> = self
            .parts
            .iter()
            .map(|part| Ok((&shelf.get(part.paint)?.film, f32::from(part.parts))))
            .collect::<Result<_, Error>>()?;
        match films[..] {
            [(film, _)] => Ok(film.clone()),
            _ => mix(&films),
        }
    }

    /// What is not known of it.
    ///
    /// # Errors
    ///
    /// [`Error::UnknownPaint`] for a paint that `shelf` lacks.
    pub fn doubt(&self, shelf: &Shelf) -> Result<Doubt, Error> {
        let mut doubt: Option<Doubt> = None;
        let mut volume = 0.0;
        for part in &self.parts {
            let next = Doubt::of(shelf.get(part.paint)?);
            let parts = f32::from(part.parts);
            volume += parts;
            doubt = Some(doubt.map_or(next, |sum| Doubt::between(sum, next, parts / volume)));
        }
        doubt.ok_or(NOTHING)
    }

    /// Parts of different paints, each at least 1, at most [`MOST_PAINTS`] of them.
    pub(crate) fn of_whole(parts: impl Iterator<Item = Part>) -> Self {
        let mut parts: Vec<Part> = parts.collect();
        let divisor = parts.iter().fold(0, |divisor, part| gcd(divisor, u64::from(part.parts))).max(1);
        parts.iter_mut().for_each(|part| part.parts /= divisor as u16);
        Self { parts }
    }

    fn volume(&self) -> u64 {
        self.parts.iter().map(|part| u64::from(part.parts)).sum()
    }

    fn of_volumes(volumes: impl Iterator<Item = Volume>) -> Result<Self, Error> {
        let mut sums: Vec<Volume> = Vec::new();
        for volume in volumes.filter(|volume| volume.volume > 0) {
            match sums.iter_mut().find(|sum| sum.paint == volume.paint) {
                Some(sum) => sum.volume += volume.volume,
                None => sums.push(volume),
            }
        }
        if sums.is_empty() {
            return Err(NOTHING);
        }
        counted(sums.len(), 0..=MOST_PAINTS, "paints", "a recipe holds")?;
        reduce(&mut sums);
        let most = sums.iter().map(|sum| sum.volume).max().unwrap_or(1);
        let scale = most.div_ceil(u64::from(MOST_PARTS));
        for Volume { volume, .. } in &mut sums {
            *volume = ((*volume + scale / 2) / scale).clamp(1, u64::from(MOST_PARTS));
        }
        // Rounded parts may have found a new divisor.
        reduce(&mut sums);
        let part = |Volume { paint, volume }| Part { paint, parts: volume as u16 };
        Ok(Self { parts: sums.into_iter().map(part).collect() })
    }
}

/// So much of a paint while recipes are added up: parts before they are reduced.
#[derive(Clone, Copy)]
struct Volume {
    paint: PaintNumber,
    volume: u64,
}

impl Volume {
    fn of(part: Part, factor: u64) -> Self {
        Self { paint: part.paint, volume: u64::from(part.parts) * factor }
    }
}

/// Takes the common divisor out of the volumes.
fn reduce(volumes: &mut [Volume]) {
    let divisor = volumes.iter().fold(0, |divisor, volume| gcd(divisor, volume.volume));
    for volume in volumes {
        volume.volume /= divisor;
    }
}

const NOTHING: Error = Error::Missing("a recipe needs at least one part of a paint");

#[cfg(test)]
impl Recipe {
    /// Of paint numbers and parts, for tests.
    pub(crate) fn of_numbers(parts: &[(u16, u16)]) -> Self {
        let parts: Vec<Part> = parts.iter().map(|(paint, parts)| Part::new(*paint, *parts)).collect();
        Self::new(&parts).unwrap()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn mixes_of_mixes_keep_their_volumes() {
        let green = Recipe::of_numbers(&[(1, 2), (2, 1)]);
        let earth = Recipe::paint(3.into());
        let mixed = Recipe::between(&green, &earth, 2.0 / 3.0).unwrap();
        assert_eq!(mixed, Recipe::of_numbers(&[(1, 2), (2, 1), (3, 6)]));
        assert_eq!(Recipe::between(&green, &earth, 0.0).unwrap(), green);
        assert_eq!(Recipe::between(&green, &green, 0.3).unwrap(), green);
    }

    #[test]
    fn rounded_parts_have_no_common_divisor() {
        // Halved they are 352 and 500.
        assert_eq!(Recipe::of_numbers(&[(1, 703), (2, 1000)]).parts(), [Part::new(1, 88), Part::new(2, 125)]);
    }

    #[test]
    fn limits_are_named() {
        assert_eq!(Recipe::new(&[]).unwrap_err().to_string(), "a recipe needs at least one part of a paint");
        let many: Vec<_> = (1..=9).map(|paint| Part::new(paint, 1)).collect();
        assert_eq!(Recipe::new(&many).unwrap_err().to_string(), "9 paints: a recipe holds at most 8");
    }

    #[test]
    fn a_recipe_is_the_film_of_its_parts() {
        let shelf = Shelf::built_in();
        let [a, b] = [1, 3].map(|number| &shelf.get(number.into()).unwrap().film);
        assert_eq!(
            Recipe::of_numbers(&[(1, 3), (3, 1)]).film(shelf).unwrap(),
            mix(&[(a, 3.0), (b, 1.0)]).unwrap()
        );
        assert_eq!(Recipe::paint(1.into()).film(shelf).unwrap(), *a);
        assert!(Recipe::paint(60_000.into()).film(shelf).is_err());
    }

    #[test]
    fn a_mixture_of_mixtures_is_not_surer_than_its_worst_part() {
        let shelf = Shelf::built_in();
        let error = |recipe: Recipe| recipe.doubt(shelf).unwrap().error();
        assert!(error(Recipe::of_numbers(&[(1, 1)])) < error(Recipe::of_numbers(&[(1, 1), (3, 1)])));
        assert!(
            error(Recipe::of_numbers(&[(1, 1), (3, 1)]))
                <= error(Recipe::of_numbers(&[(1, 1), (3, 1), (2, 1)])) + 1e-4
        );
    }

    proptest! {
        #[test]
        fn parts_stay_whole_and_few(counts in proptest::collection::vec((1u16..9, 0u16..2000), 1..8), share in 0f32..1.0) {
            if counts.iter().any(|(_, count)| *count > 0) {
                let recipe = Recipe::of_numbers(&counts);
                let chained = Recipe::between(&recipe, &Recipe::paint(5.into()), share).unwrap();
                for part in chained.parts() {
                    prop_assert!((1..=MOST_PARTS).contains(&part.parts));
                }
                prop_assert_eq!(Recipe::new(chained.parts()), Ok(chained));
            }
        }
    }
}
