//! Mixes that look alike in daylight and part in another light.
//!
//! Two reflectances of one colour in one light and different ones in another
//! are metamers. As CIE 15:2018 has it for a change of illuminant, how far
//! they part is their colour difference in the other light, each light's own
//! white being white.

use crate::colour::delta_e;
use crate::mixing::recipe::Recipe;
use crate::optics::observer::Light;
use crate::optics::spectrum::Spectrum;

/// CIEDE2000 in daylight up to which two mixes are taken for the same.
///
/// Seen when laid edge to edge, lost between two washes on one sheet; below
/// the spread of makers' paints of one name (median 3.5).
pub const SAME: f32 = 2.5;

/// CIEDE2000 in another light from which they are told to part.
///
/// Twice [`SAME`], so that the light and not the first difference is the
/// reason, and more than what a prediction of a single paint is expected to be
/// off by (3.7).
pub const PARTED: f32 = 5.0;

/// A recipe that matches a mix in daylight only.
#[derive(Clone, Debug, PartialEq)]
pub struct Shift {
    /// Where the two part most.
    pub light: Light,
    /// The other recipe.
    pub recipe: Recipe,
    /// Its load.
    pub load: f32,
    /// CIEDE2000 between the two in D65, at most [`SAME`].
    pub daylight: f32,
    /// CIEDE2000 between the two in `light`, above 5.
    pub there: f32,
}

/// A recipe as it is laid and what it shows.
#[derive(Clone, Debug)]
pub struct LaidRecipe {
    /// The recipe.
    pub recipe: Recipe,
    /// Its load.
    pub load: f32,
    /// Its reflectance on the paper, with the surface.
    pub reflectance: Spectrum,
}

/// Among recipes that match a mix in daylight, the one whose difference grows most in one of `lights`.
///
/// Reflectances are of the mix and of each recipe at its load, on one paper
/// and with the surface, as [`View::reflectance`](crate::View::reflectance)
/// gives them in any light. `None` where none that matches parts.
pub fn largest_shift(
    mix: &Spectrum,
    candidates: impl IntoIterator<Item = LaidRecipe>,
    lights: &[Light],
) -> Option<Shift> {
    let in_lights = lights.iter().map(|light| (*light, light.colour_of(mix))).collect::<Vec<_>>();
    let mix = Light::D65.colour_of(mix);
    let mut largest: Option<Shift> = None;
    for LaidRecipe { recipe, load, reflectance } in candidates {
        let daylight = delta_e(mix, Light::D65.colour_of(&reflectance));
        if daylight > SAME {
            continue;
        }
        for (light, lab) in &in_lights {
            let there = delta_e(*lab, light.colour_of(&reflectance));
            let grows = there - daylight;
            let farther = largest.as_ref().is_none_or(|known| grows > known.there - known.daylight);
            if there > PARTED && farther {
                largest = Some(Shift { light: *light, recipe: recipe.clone(), load, daylight, there });
            }
        }
    }
    largest
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::mixing::part::Part;
    use crate::optics::smooth::reflectance_of;
    use crate::optics::spectrum::{from_fn, wavelength};
    use crate::{Lab, Shelf, Stock, View, optics::spectrum::cast};

    /// A grey made of three bands, solved for to have the colour of an even one
    /// in D65: a metamer of it by definition (CIE 15:2018).
    fn three_band_grey() -> Spectrum<f64> {
        let band = |at: u16, nm: f64| (-(nm - f64::from(at)).powi(2) / 800.0).exp();
        let basis: [Spectrum<f64>; 3] =
            [450, 540, 610].map(|at| from_fn(|i| band(at, f64::from(wavelength(i)))));
        let weights = Light::D65.weights();
        let columns = basis.map(|bands| weights.tristimulus(&bands));
        let matrix = nalgebra::Matrix3::from_fn(|row, column| columns[column][row]);
        let even = weights.white.map(|white| 0.3 * white);
        let amounts = matrix.lu().solve(&nalgebra::Vector3::from(even)).unwrap();
        from_fn(|i| (0..3).map(|k| amounts[k] * basis[k][i]).sum())
    }

    #[test]
    fn a_three_band_grey_parts_from_an_even_one() {
        let grey = three_band_grey();
        assert!(grey.iter().all(|value| (0.0..=1.0).contains(value)));
        let recipe = Recipe::paint(1.into());
        let look = LaidRecipe { recipe: recipe.clone(), load: 1.0, reflectance: cast(&grey) };
        let found = largest_shift(&[0.3; 36], [look.clone()], &Light::ALL).unwrap();
        assert!(found.daylight < 0.1 && found.there > PARTED && found.light != Light::D65, "{found:?}");
        assert_eq!(largest_shift(&[0.3; 36], [look], &[Light::D65]), None);
    }

    #[test]
    fn what_differs_in_daylight_or_stays_the_same_is_no_shift() {
        let [red, blue] = [(50.0, 40.0, 20.0), (40.0, 0.0, -40.0)]
            .map(|(l, a, b)| reflectance_of(Lab::new(l, a, b)).unwrap());
        let recipe = Recipe::paint(1.into());
        for other in [red, blue] {
            let red: Spectrum = cast(&red);
            let look = LaidRecipe { recipe: recipe.clone(), load: 1.0, reflectance: cast(&other) };
            assert_eq!(largest_shift(&red, [look], &Light::ALL), None);
        }
    }

    #[test]
    fn the_largest_of_real_mixes_is_found() {
        let (shelf, view) = (Shelf::built_in(), View::new(&Stock::BrightWhite.paper(), Light::D65));
        let target = view.reflectance(&shelf.find("pb29").unwrap().film, 0.5);
        let numbers: Vec<_> = shelf.paints().iter().map(|paint| paint.number).collect();
        let pairs =
            numbers.iter().flat_map(|a| numbers.iter().map(move |b| [Part::new(*a, 2), Part::new(*b, 1)]));
        let recipes: Vec<Recipe> = pairs.map(|parts| Recipe::new(&parts).unwrap()).collect();
        let looks: Vec<LaidRecipe> = recipes
            .iter()
            .map(|recipe| {
                let reflectance = view.reflectance(&recipe.film(shelf).unwrap(), 0.5);
                LaidRecipe { recipe: recipe.clone(), load: 0.5, reflectance }
            })
            .collect();
        let found = largest_shift(&target, looks.iter().cloned(), &Light::ALL);
        let growth = |reflectance: &Spectrum| {
            let apart = |light: Light| delta_e(light.colour_of(&target), light.colour_of(reflectance));
            let daylight = apart(Light::D65);
            let others = Light::ALL.map(apart).into_iter().filter(|there| *there > PARTED);
            (daylight <= SAME).then(|| others.fold(0.0, |most, there| (there - daylight).max(most)))
        };
        let most = looks.iter().filter_map(|look| growth(&look.reflectance)).fold(0.0, f32::max);
        assert_eq!(found.map(|shift| shift.there - shift.daylight), Some(most));
    }
}
