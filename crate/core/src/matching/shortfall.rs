//! What keeps a kit from a colour.

use crate::colour::hue::NEAR_GREY;
use crate::colour::{Lab, chroma};
use crate::matching::matches::Match;
use crate::matching::optimum::parts_between;

/// CIEDE2000 that nobody sees.
const SEEN: f32 = 1.0;

/// In which way a colour lies beyond the nearest recipe: the largest part of the difference.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Shortfall {
    /// It is lighter: the paper, or a wash that keeps the colour, is the limit.
    TooLight,
    /// It is darker than the paints get at masstone.
    TooDark,
    /// It has more chroma.
    TooVivid,
    /// It has less chroma: nothing in the kit greys the mix so far.
    TooDull,
    /// Its hue lies in a gap between the paints.
    Hue,
}

impl Shortfall {
    /// What keeps the nearest recipe from a colour.
    ///
    /// `None` where the difference is not seen, or lies within the recipe's own
    /// doubt: then nothing is known to keep it.
    ///
    /// ```
    /// use washpath_core::{Lab, Light, PaintNumber, Reach, Shelf, Shortfall, Stock, View, find_matches};
    /// let (shelf, view) = (Shelf::built_in(), View::new(&Stock::BrightWhite.paper(), Light::D65));
    /// let reach = Reach::new(&[1, 3, 72].map(PaintNumber::new), shelf, &view)?;
    /// let black = Lab::new(5.0, 0.0, 0.0);
    /// let nearest = &find_matches(black, &reach, shelf)?[0];
    /// assert_eq!(Shortfall::between(black, nearest), Some(Shortfall::TooDark));
    /// # Ok::<(), washpath_core::Error>(())
    /// ```
    #[must_use]
    pub fn between(target: Lab, nearest: &Match) -> Option<Self> {
        if nearest.error <= nearest.doubt.max(SEEN) {
            return None;
        }
        let [light, vivid, hue] = parts_between(target, nearest.lab);
        let grey = chroma(target) <= NEAR_GREY;
        let in_chroma = if grey { vivid.hypot(hue) } else { vivid.abs() };
        Some(if light.abs() >= in_chroma.max(hue.abs()) {
            if target.l > nearest.lab.l { Self::TooLight } else { Self::TooDark }
        } else if in_chroma < hue.abs() {
            Self::Hue
        } else if chroma(target) > chroma(nearest.lab) {
            Self::TooVivid
        } else {
            Self::TooDull
        })
    }

    /// In a painter's words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::TooLight => "lighter than a wash of these paints on this paper",
            Self::TooDark => "darker than these paints get at masstone",
            Self::TooVivid => "brighter than these paints mix",
            Self::TooDull => "duller: nothing here greys the mix so far",
            Self::Hue => "of a hue that lies in a gap between these paints",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Light, Reach, Shelf, Stock, View, find_matches};

    const PRIMARIES: [&str; 3] = ["pb29", "pr108", "py154"];

    fn of(target: Lab, keys: &[&str]) -> Option<Shortfall> {
        let (shelf, view) = (Shelf::built_in(), View::new(&Stock::Tan.paper(), Light::D65));
        let paints: Vec<_> = keys.iter().map(|key| shelf.find(key).unwrap().number).collect();
        let reach = Reach::new(&paints, shelf, &view).unwrap();
        Shortfall::between(target, &find_matches(target, &reach, shelf).unwrap()[0])
    }

    #[test]
    fn each_way_to_fall_short_is_told() {
        for (target, keys, wanted) in [
            (Lab::new(96.0, 2.0, 12.0), &PRIMARIES[..], Some(Shortfall::TooLight)),
            (Lab::new(4.0, 0.0, 0.0), &PRIMARIES, Some(Shortfall::TooDark)),
            (Lab::new(50.0, 100.0, 70.0), &PRIMARIES[1..2], Some(Shortfall::TooVivid)),
            (Lab::new(60.0, 0.0, 0.0), &PRIMARIES[1..2], Some(Shortfall::TooDull)),
            (Lab::new(50.0, -30.0, 10.0), &["pr108", "pv19-rose"], Some(Shortfall::Hue)),
            (Lab::new(40.0, 3.0, 0.0), &PRIMARIES, None),
        ] {
            assert_eq!(of(target, keys), wanted, "{target:?}");
        }
    }
}
