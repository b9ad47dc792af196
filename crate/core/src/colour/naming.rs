//! Names of colours by a published system.
//!
//! The ISCC-NBS system of 267 names: brown, olive and pink are names of their
//! own in it, as they are for a painter, and not a dark orange, a dark yellow
//! or a light red. A colour has the name whose middle is nearest in CIEDE2000.

use std::sync::LazyLock;

use crate::colour::hue::{Hue, NEAR_GREY, PURE_GREY};
use crate::colour::{Lab, chroma, delta_e, lab_of_rgb};

struct Name {
    middle: Lab,
    words: &'static str,
    /// A word in everyday use, or nothing.
    also: &'static str,
}

/// Kelly and Judd, NBS Special Publication 440; the table's head has more.
static NAMES: LazyLock<Vec<Name>> = LazyLock::new(|| {
    let rows = include_str!("../../data/iscc_nbs.csv").lines().filter(|line| !line.starts_with('#')).skip(1);
    rows.filter_map(read).collect()
});

fn read(row: &'static str) -> Option<Name> {
    let (words, rest) = row.split_once(',')?;
    let (srgb, also) = rest.split_once(',')?;
    let [_, r, g, b] = u32::from_str_radix(srgb, 16).ok()?.to_be_bytes();
    Some(Name { middle: lab_of_rgb([r, g, b]), words, also })
}

/// The name of a grey by its L*, at the limits between the system's middles.
fn grey(lightness: f32) -> &'static str {
    match lightness {
        l if l < 24.0 => "black",
        l if l < 45.0 => "dark grey",
        l if l < 65.0 => "medium grey",
        l if l < 84.0 => "light grey",
        _ => "white",
    }
}

/// The colour in words: "dark bluish green", "strong yellowish brown (ochre)"; near neutral, the grey and
/// which way it leans.
///
/// ```
/// use washpath_core::{Lab, colour::describe};
/// assert_eq!(describe(Lab::new(42.0, 19.0, 35.0)), "strong brown");
/// assert_eq!(describe(Lab::new(30.0, -4.0, 0.0)), "dark grey leaning blue green");
/// ```
#[must_use]
pub fn describe(lab: Lab) -> String {
    match chroma(lab) {
        c if c <= PURE_GREY => grey(lab.l).to_owned(),
        c if c <= NEAR_GREY => format!("{} leaning {}", grey(lab.l), Hue::of(lab).name()),
        _ => match nearest(lab) {
            Some(Name { words, also: "", .. }) => (*words).to_owned(),
            Some(Name { words, also, .. }) => format!("{words} ({also})"),
            // What is no number.
            None => "no colour".to_owned(),
        },
    }
}

/// The name of a colour that is not grey.
#[inline(never)]
fn nearest(lab: Lab) -> Option<&'static Name> {
    let mut best: Option<(&Name, f32)> = None;
    for name in NAMES.iter() {
        let far = best.map_or(f32::INFINITY, |(_, far)| far);
        // CIEDE2000 counts a difference in L* as 1 / 1.75 at the least.
        if chroma(name.middle) <= NEAR_GREY || (name.middle.l - lab.l).abs() > 1.75 * far {
            continue;
        }
        let apart = delta_e(name.middle, lab);
        if apart < far {
            best = Some((name, apart));
        }
    }
    best.map(|(name, _)| name)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_table_is_whole() {
        assert_eq!(NAMES.len(), 267, "Special Publication 440 has 267 names");
        assert!(NAMES.iter().all(|name| name.words.len() > 2));
    }

    #[test]
    fn every_middle_that_is_not_grey_has_its_own_name() {
        for name in NAMES.iter().filter(|name| chroma(name.middle) > NEAR_GREY) {
            assert_eq!(nearest(name.middle).unwrap().words, name.words);
        }
    }

    /// Common practice, no source: what painters call browns, olives, pinks.
    #[test]
    fn painters_have_words_for_dark_and_light_hues() {
        for (rgb, word) in [
            ([0x8b, 0x5a, 0x2b], "brown"),
            ([0x6b, 0x66, 0x35], "olive"),
            ([0xff, 0xc0, 0xcb], "pink"),
            ([0x80, 0x00, 0x20], "red"),
            ([0xb8, 0x86, 0x3c], "ochre"),
            ([0x36, 0x45, 0x4f], "slate"),
            ([0x00, 0x2f, 0x6c], "blue"),
        ] {
            let words = describe(lab_of_rgb(rgb));
            assert!(words.contains(word), "{rgb:?} is {words}, not {word}");
        }
    }

    #[test]
    fn greys_are_called_greys() {
        assert_eq!(describe(Lab::new(50.0, 0.5, 0.5)), "medium grey");
        assert_eq!(describe(Lab::new(12.0, 0.0, 0.0)), "black");
        assert_eq!(describe(Lab::new(96.0, 0.0, 1.0)), "white");
    }

    #[test]
    fn no_number_is_without_words() {
        for odd in [f32::NAN, f32::INFINITY, -200.0, 1e9] {
            assert!(!describe(Lab::new(odd, odd, 3.0)).is_empty());
        }
    }
}
