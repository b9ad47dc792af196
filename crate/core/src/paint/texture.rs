//! How a mix lies on the paper: its grain, its stain, and whether it separates.
//!
//! Ratings of paints are measured ([`Paint`]); how they add up in a mix is
//! common practice, no source. A paint speaks by the masstones it brings, not
//! by its volume. Covering is shared by all, so transparency is the mean;
//! grain and stain show in full as soon as a third of the mix has them.

use crate::paint::Paint;
use crate::paint::rating::{
    GRANULATES, GRANULATION_WORDS, LIGHTFAST, SMOOTH, STAINING_WORDS, STAINS, cover, word,
};

/// Share of the masstones from which a paint's grain or stain shows in full.
const FULL_SAY: f32 = 1.0 / 3.0;

/// Share of the masstones below which neither of two paints is seen to part from the other.
const REAL_SAY: f32 = 0.2;

/// What a mix does on paper. A rating is missing where one of the paints lacks it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Texture {
    /// 0 smooth to 4 granulates.
    pub granulation: Option<f32>,
    /// Whether a granulating paint parts from a smooth, staining one.
    pub separation: Option<Separation>,
    /// 0 opaque to 4 transparent.
    pub transparency: Option<f32>,
    /// 0 lifts off to 4 stains.
    pub staining: Option<f32>,
    /// Blue Wool grade of the most fleeting paint, the lower of its tint's and its masstone's, 1 to 8.
    pub lightfastness: Option<f32>,
}

/// Two paints that part as the wash dries.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Separation {
    /// Name of the paint whose grains settle in the hollows.
    pub settles: String,
    /// Name of the paint that stains the sheet between.
    pub stains: String,
}

impl Texture {
    /// Of a mix of these volumes; what is not above 0 and finite takes no part.
    #[must_use]
    pub fn of(parts: &[(&Paint, f32)]) -> Self {
        let says = says(parts);
        let separation = separation(&says);
        // Nothing painted has no texture; a sum over nothing would claim one.
        let known = |rating: fn(&Paint) -> Option<f32>| -> Option<Vec<(f32, f32)>> {
            let ratings: Option<Vec<_>> = says.iter().map(|(p, say)| Some((rating(p)?, *say))).collect();
            ratings.filter(|ratings| !ratings.is_empty())
        };
        let loudest = |ratings: Vec<(f32, f32)>| {
            ratings.iter().map(|(rating, say)| rating * (say / FULL_SAY).min(1.0)).fold(0.0, f32::max)
        };
        Self {
            granulation: known(|paint| paint.granulation).map(loudest),
            separation,
            transparency: known(|paint| paint.transparency)
                .map(|ratings| ratings.iter().map(|(rating, say)| rating * say).sum()),
            staining: known(|paint| paint.staining).map(loudest),
            lightfastness: known(grade)
                .map(|ratings| ratings.iter().map(|(rating, _)| *rating).fold(f32::INFINITY, f32::min)),
        }
    }

    /// In a painter's sentence: grain, covering, stain, lightfastness; what is not rated is said so.
    ///
    /// ```
    /// use washpath_core::{Shelf, Texture};
    /// let shelf = Shelf::built_in();
    /// let words = Texture::of(&[(shelf.find("pb29")?, 2.0), (shelf.find("pg7")?, 1.0)]).words();
    /// assert_eq!(
    ///     words,
    ///     "granulates; Ultramarine blue settles in the hollows while Phthalo green stains the sheet \
    ///      between: the wash separates; transparent; stains strongly; lightfast",
    /// );
    /// # Ok::<(), washpath_core::Error>(())
    /// ```
    #[must_use]
    pub fn words(&self) -> String {
        let mut words = Vec::new();
        match &self.separation {
            Some(Separation { settles, stains }) => words.push(format!(
                "granulates; {} settles in the hollows while {} stains the sheet between: the wash separates",
                short(settles),
                short(stains),
            )),
            None => words.extend(self.granulation.map(grain)),
        }
        let told = [
            self.transparency.map(cover),
            self.staining.map(|rating| word(STAINING_WORDS, rating)),
            self.lightfastness.map(lasting),
        ];
        words.extend(told.into_iter().flatten().map(str::to_owned));
        let missing = [
            (self.granulation.is_none() && self.separation.is_none(), "granulation"),
            (self.transparency.is_none(), "transparency"),
            (self.staining.is_none(), "staining"),
            (self.lightfastness.is_none(), "lightfastness"),
        ];
        let missing: Vec<&str> =
            missing.iter().filter(|(missing, _)| *missing).map(|(_, name)| *name).collect();
        if !missing.is_empty() {
            words.push(format!("not rated: {}", missing.join(", ")));
        }
        words.join("; ")
    }
}

/// Each paint with its share of the mix's masstones.
fn says<'a>(parts: &[(&'a Paint, f32)]) -> Vec<(&'a Paint, f32)> {
    let masstones: Vec<(&Paint, f32)> = parts
        .iter()
        .filter(|(_, volume)| volume.is_finite() && *volume > 0.0)
        .map(|(paint, volume)| (*paint, volume * paint.film.strength))
        .collect();
    let total: f32 = masstones.iter().map(|(_, masstone)| masstone).sum();
    masstones.into_iter().map(|(paint, masstone)| (paint, masstone / total)).collect()
}

/// The grainiest and the most staining of the paints that part, if any do.
fn separation(says: &[(&Paint, f32)]) -> Option<Separation> {
    let heard = || says.iter().filter(|(_, say)| *say >= REAL_SAY).map(|(paint, _)| *paint);
    let grain = heard()
        .filter(|paint| paint.granulation >= Some(GRANULATES))
        .max_by(|a, b| a.granulation.partial_cmp(&b.granulation).unwrap_or(std::cmp::Ordering::Equal))?;
    let stain = heard()
        .filter(|paint| paint.granulation.is_some_and(|rating| rating < SMOOTH))
        .filter(|paint| paint.staining >= Some(STAINS))
        .max_by(|a, b| a.staining.partial_cmp(&b.staining).unwrap_or(std::cmp::Ordering::Equal))?;
    Some(Separation { settles: grain.name.clone(), stains: stain.name.clone() })
}

fn grade(paint: &Paint) -> Option<f32> {
    [paint.lightfast_tint, paint.lightfast_masstone].into_iter().flatten().reduce(f32::min)
}

/// A name without its shade: "Phthalo green, blue shade" is phthalo green in a sentence.
fn short(name: &str) -> &str {
    name.split(',').next().unwrap_or(name)
}

/// Granulation in a sentence.
fn grain(rating: f32) -> String {
    let grain = word(GRANULATION_WORDS, rating);
    if grain == GRANULATION_WORDS[0] { format!("lies {grain}") } else { grain.to_owned() }
}

/// Blue Wool 7 and 8 are called excellent, 6 good, 4 and 5 fair, less fugitive.
fn lasting(lightfastness: f32) -> &'static str {
    match lightfastness {
        grade if grade >= LIGHTFAST => "lightfast",
        grade if grade >= 6.0 => "fairly lightfast",
        grade if grade >= 4.0 => "fades in time",
        _ => "fugitive",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Shelf;

    fn paint(key: &str) -> &'static Paint {
        Shelf::built_in().find(key).unwrap()
    }

    fn separates(a: &str, parts_a: f32, b: &str, parts_b: f32) -> bool {
        Texture::of(&[(paint(a), parts_a), (paint(b), parts_b)]).separation.is_some()
    }

    /// Common practice, no source: sediment of ultramarine or cerulean parts from phthalo and quinacridone.
    #[test]
    fn grain_and_stain_part() {
        assert!(separates("pb29", 1.0, "pg7", 1.0));
        assert!(separates("pb35", 2.0, "pv19-violet", 1.0));
        assert!(!separates("pb15-3", 1.0, "pg7", 1.0), "both are smooth");
        assert!(!separates("pb29", 1.0, "pg18", 1.0), "both settle");
    }

    #[test]
    fn masstones_and_not_volumes_have_the_say() {
        // One volume of phthalo green makes 2.7 masstones, one of ultramarine 1.
        assert!(separates("pb29", 8.0, "pg7", 1.0));
        assert!(!separates("pb29", 1.0, "pg7", 4.0), "ultramarine is a twelfth of the masstones");
        let transparency =
            |a, b| Texture::of(&[(paint("pg7"), a), (paint("pr108"), b)]).transparency.unwrap();
        assert!(transparency(1.0, 1.0) > 0.5 * (transparency(1.0, 0.0) + transparency(0.0, 1.0)));
    }

    #[test]
    fn a_paint_alone_keeps_its_ratings() {
        for paint in Shelf::built_in().paints() {
            let texture = Texture::of(&[(paint, 3.0)]);
            assert_eq!(texture.granulation, paint.granulation);
            assert_eq!(texture.staining, paint.staining);
            assert_eq!(texture.transparency, paint.transparency);
            assert!(texture.separation.is_none());
        }
    }

    #[test]
    fn the_most_fleeting_paint_decides_how_long_it_lasts() {
        let texture = Texture::of(&[(paint("pb29"), 9.0), (paint("pr83"), 1.0)]);
        assert_eq!(texture.lightfastness, grade(paint("pr83")));
    }

    #[test]
    fn what_is_not_rated_is_said_so() {
        let own = Paint { granulation: None, staining: None, ..paint("pb29").clone() };
        let texture = Texture::of(&[(paint("pg7"), 1.0), (&own, 1.0)]);
        assert_eq!((texture.granulation, texture.separation.as_ref(), texture.staining), (None, None, None));
        assert!(texture.words().ends_with("not rated: granulation, staining"), "{}", texture.words());
    }

    #[test]
    fn nothing_has_no_texture() {
        for volume in [0.0, -1.0, f32::NAN, f32::INFINITY] {
            assert_eq!(Texture::of(&[(paint("pb29"), volume)]), Texture::default());
        }
        assert_eq!(Texture::of(&[]), Texture::default());
    }
}
