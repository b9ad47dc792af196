//! Darks: the darkest mix of each hue family.

use crate::colour::hue::Hue;
use crate::colour::{Lab, chroma};
use crate::mixing::recipe::Recipe;
use crate::reach::Reach;

/// C* from which a dark counts for a hue, and not as near neutral.
pub const DARK_CHROMA: f32 = 8.0;

/// The darkest mix of a hue family.
#[derive(Clone, Debug, PartialEq)]
pub struct Dark {
    /// Its family; `None` near neutral.
    pub hue: Option<Hue>,
    /// The darkest recipe at masstone; `None` where the kit mixes none.
    pub mix: Option<DarkMix>,
}

/// A dark mix at masstone.
#[derive(Clone, Debug, PartialEq)]
pub struct DarkMix {
    /// Of what.
    pub recipe: Recipe,
    /// Its colour.
    pub lab: Lab,
}

impl Reach {
    /// The darkest mix of each hue family, and last the darkest near neutral, all at masstone.
    ///
    /// A mix counts for a hue from C* 8 on.
    #[must_use]
    pub fn darks(&self) -> Vec<Dark> {
        let hues = Hue::ALL.into_iter().map(Some).chain(std::iter::once(None));
        let mix = |blend: usize| DarkMix { recipe: self.recipe(blend), lab: self.labs[blend][0] };
        hues.zip(self.darkest(&self.families(), |_| true))
            .map(|(hue, blend)| Dark { hue, mix: blend.map(mix) })
            .collect()
    }

    /// For each paint the families whose darkest mix is lighter by `step` of L* without it.
    pub(crate) fn darks_lost(&self, step: f32) -> Vec<Vec<Option<Hue>>> {
        let families = self.families();
        let all = self.darkest(&families, |_| true);
        let uses = |blend: usize, paint: usize| self.blends[blend].used().any(|(used, _)| used == paint);
        let depth = |blend: Option<usize>| blend.map_or(f32::INFINITY, |blend| self.labs[blend][0].l);
        let lost = |paint: usize| {
            if !all.iter().flatten().any(|blend| uses(*blend, paint)) {
                return Vec::new();
            }
            let others = self.darkest(&families, |blend| !uses(blend, paint));
            let hues = Hue::ALL.into_iter().map(Some).chain(std::iter::once(None));
            let lighter = hues.zip(all.iter().zip(others));
            lighter
                .filter(|(_, (with, without))| depth(*without) > depth(**with) + step)
                .map(|(hue, _)| hue)
                .collect()
        };
        (0..self.numbers.len()).map(lost).collect()
    }

    /// Each blend's family among the darks, by its index in [`Hue::ALL`]; one past it near neutral.
    fn families(&self) -> Vec<usize> {
        self.labs.iter().map(|row| dark_family(row[0]).map_or(Hue::ALL.len(), |hue| hue as usize)).collect()
    }

    /// The darkest masstone of each family and near neutral among some blends.
    fn darkest(
        &self,
        families: &[usize],
        counts: impl Fn(usize) -> bool,
    ) -> [Option<usize>; Hue::ALL.len() + 1] {
        let mut darkest: [Option<usize>; Hue::ALL.len() + 1] = [None; Hue::ALL.len() + 1];
        for (blend, family) in families.iter().enumerate() {
            let known = &mut darkest[*family];
            let darker = known.is_none_or(|known| self.labs[blend][0].l < self.labs[known][0].l);
            if darker && counts(blend) {
                *known = Some(blend);
            }
        }
        darkest
    }
}

/// The family a masstone counts for among the darks; `None` near neutral.
pub(crate) fn dark_family(lab: Lab) -> Option<Hue> {
    (chroma(lab) > DARK_CHROMA).then(|| Hue::of(lab))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::optics::observer::Light;
    use crate::optics::paper::Stock;
    use crate::optics::view::View;
    use crate::paint::shelf::Shelf;

    #[test]
    fn darks_are_the_darkest_of_their_families() {
        let (shelf, view) = (Shelf::built_in(), View::new(&Stock::BrightWhite.paper(), Light::D65));
        let keys = ["pb29", "pbr7-burnt-sienna", "py154", "pv19-rose", "pg7"];
        let numbers = keys.map(|key| shelf.find(key).unwrap().number);
        let reach = Reach::new(&numbers, shelf, &view).unwrap();
        let darks = reach.darks();
        assert_eq!(darks.len(), Hue::ALL.len() + 1);
        for mix in reach.mixes().filter(|mix| mix.load() == 1.0) {
            let family = dark_family(mix.lab());
            let dark = darks.iter().find(|dark| dark.hue == family).unwrap();
            assert!(dark.mix.as_ref().unwrap().lab.l <= mix.lab().l);
        }
        // Green darks need the green: without it the kit mixes none as dark.
        let DarkMix { recipe, lab } = darks[Hue::Green as usize].mix.clone().unwrap();
        assert_eq!(recipe.film(shelf).map(|film| view.colour(&film, 1.0)), Ok(lab));
    }
}
