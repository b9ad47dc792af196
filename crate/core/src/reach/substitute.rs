//! Substitutes: what may stand in for a paint, and how near it comes.

use crate::colour::{Lab, delta_e};
use crate::error::Error;
use crate::mixing::recipe::Recipe;
use crate::numeric::sort::in_order;
use crate::optics::film::Film;
use crate::optics::view::View;
use crate::paint::number::PaintNumber;
use crate::paint::shelf::Shelf;
use crate::reach::Reach;
use crate::reach::blend::Blend;
use crate::text::limits::counted;

/// Mean CIEDE2000 up to which two paints are alike: the spread of makers' paints of one name.
///
/// From the measured spread of 75 shades (MacEvoy, handprint.com/HP/WCL/waterfs).
pub const ALIKE: f32 = 3.5;

/// Loads at which paints are compared alone, and, from the first two, in mixes.
const COMPARED: [f32; 3] = [1.0, 0.25, 0.062_5];

/// Recipes, the nearest alone, that are also compared in mixes.
const TRIED: usize = 40;

/// What may stand in for a paint.
#[derive(Clone, Debug, PartialEq)]
pub struct Substitute {
    /// One owned paint, or a mix.
    pub recipe: Recipe,
    /// Mean CIEDE2000 alone: at masstone, at a quarter and a sixteenth of it.
    pub alone: f32,
    /// Mean CIEDE2000 half and half with each partner, at masstone and a quarter; as `alone` without partners.
    pub mixed: f32,
}

impl Substitute {
    /// Mean of both.
    #[must_use]
    pub fn error(&self) -> f32 {
        0.5 * (self.alone + self.mixed)
    }
}

/// The nearest owned paint, and the nearest pair, to stand in for a paint.
///
/// `partners` are the paints it has to mix with. The paint itself, where it is
/// owned, does not count. Empty where nothing is owned; the pair is left out
/// where it comes no nearer than the paint alone.
///
/// # Errors
///
/// [`Error::UnknownPaint`] for a paint that `shelf` lacks; more than 255 owned.
pub fn substitute(
    paint: PaintNumber,
    owned: &[PaintNumber],
    partners: &[PaintNumber],
    shelf: &Shelf,
    view: &View,
) -> Result<Vec<Substitute>, Error> {
    let others: Vec<&Film> = partners
        .iter()
        .filter(|partner| **partner != paint)
        .map(|partner| Ok(&shelf.get(*partner)?.film))
        .collect::<Result<_, Error>>()?;
    let wanted = Profile::new(&shelf.get(paint)?.film, &others, view);
    let compare = |recipe: Recipe| -> Result<Substitute, Error> {
        let found = Profile::new(&recipe.film(shelf)?, &others, view);
        Ok(Substitute { alone: wanted.alone(&found), mixed: wanted.mixed(&found), recipe })
    };
    let nearest = |found: Vec<Substitute>| found.into_iter().min_by(|a, b| a.error().total_cmp(&b.error()));
    let mut owned: Vec<PaintNumber> = owned.iter().copied().filter(|own| *own != paint).collect();
    owned = in_order(owned, |own| f32::from(own.get()));
    owned.dedup();
    counted(owned.len(), 0..=255, "paints", "a comparison spans")?;
    let singles = owned.iter().map(|own| compare(Recipe::paint(*own))).collect::<Result<_, Error>>()?;
    let mut best: Vec<Substitute> = nearest(singles).into_iter().collect();
    let mut ranked: Vec<(f32, Blend)> = Reach::masstones_of_pairs(&owned, shelf, view)?
        .into_iter()
        .map(|(blend, lab)| (delta_e(lab, wanted.alone[0]), blend))
        .collect();
    ranked = in_order(ranked, |(distance, _)| *distance);
    let nearest_pairs = ranked.into_iter().take(TRIED);
    let mixes =
        nearest_pairs.map(|(_, blend)| compare(blend.recipe(&owned))).collect::<Result<_, Error>>()?;
    best.extend(nearest(mixes).filter(|mix| best.iter().all(|single| mix.error() < single.error())));
    Ok(best)
}

/// Mean CIEDE2000 between two paints of a kit, alone and in mixes with its other
/// paints, where neither is above 3.5.
pub(crate) fn likeness(a: usize, b: usize, films: &[Film], view: &View) -> Option<f32> {
    let profiles = |partners: &[&Film]| [a, b].map(|i| Profile::new(&films[i], partners, view));
    let [one, other] = profiles(&[]);
    if one.alone(&other) > ALIKE {
        return None;
    }
    let others = films.iter().enumerate().filter(|(i, _)| *i != a && *i != b);
    let [one, other] = profiles(&others.map(|(_, film)| film).collect::<Vec<_>>());
    let mixed = one.mixed(&other);
    (mixed <= ALIKE).then(|| 0.5 * (one.alone(&other) + mixed))
}

/// The colours that tell paints apart.
struct Profile {
    alone: Vec<Lab>,
    mixed: Vec<Lab>,
}

impl Profile {
    fn new(film: &Film, partners: &[&Film], view: &View) -> Self {
        let mixed = partners.iter().flat_map(|partner| {
            let mix = Film::between(film, partner, 0.5);
            [0, 1].map(|i| view.colour(&mix, COMPARED[i]))
        });
        Self { mixed: mixed.collect(), alone: COMPARED.map(|load| view.colour(film, load)).to_vec() }
    }

    fn alone(&self, other: &Self) -> f32 {
        mean(&self.alone, &other.alone)
    }

    fn mixed(&self, other: &Self) -> f32 {
        if self.mixed.is_empty() { self.alone(other) } else { mean(&self.mixed, &other.mixed) }
    }
}

fn mean(a: &[Lab], b: &[Lab]) -> f32 {
    a.iter().zip(b).map(|(a, b)| delta_e(*a, *b)).sum::<f32>() / a.len() as f32
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::optics::observer::Light;
    use crate::optics::paper::Stock;

    fn find(paint: &str, owned: &[&str], partners: &[&str]) -> Vec<Substitute> {
        let shelf = Shelf::built_in();
        let number = |key: &&str| shelf.find(key).unwrap().number;
        let [owned, partners] = [owned, partners].map(|keys| keys.iter().map(number).collect::<Vec<_>>());
        let view = View::new(&Stock::BrightWhite.paper(), Light::D65);
        substitute(number(&paint), &owned, &partners, shelf, &view).unwrap()
    }

    #[test]
    fn another_shade_of_the_same_pigment_is_nearest() {
        let found = find("pb15-3", &["pg7", "pb15-1", "py3", "pb15-3"], &["pbr7-burnt-sienna", "py154"]);
        let shelf = Shelf::built_in();
        assert_eq!(found[0].recipe, Recipe::paint(shelf.find("pb15-1").unwrap().number));
        assert!(found[0].error() > 0.0);
    }

    #[test]
    fn a_mix_stands_in_for_a_green() {
        // Common practice, no source: a sap green is mixed from a yellow and a blue or green.
        let found = find("pg36", &["py3", "pg7", "pr254"], &["pr254"]);
        assert_eq!(found.len(), 2);
        assert!(found[1].error() < found[0].error());
        assert_eq!(found[1].recipe.parts().len(), 2);
    }

    #[test]
    fn nothing_owned_is_nothing_found() {
        assert!(find("pg36", &[], &[]).is_empty());
        assert!(find("pg36", &["pg36"], &["pg36"]).is_empty());
    }
}
