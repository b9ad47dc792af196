//! How one colour differs from another, in a painter's words.
//!
//! Of a pair that differs at all, each component is weighed as the CIE94
//! formula weighs it (CIE 116-1995):
//!
//! ```text
//! dL      dC / (1 + 0.045 C)      dH / (1 + 0.015 C)      C of the reference
//! ```
//!
//! A turn of hue is named by the next main hue it turns to, as dyers and
//! printers name shades: a red is yellower or bluer, never "greener". Where
//! one of the colours has hardly a hue, or the turn is wide, the direction in
//! a* and b* is named instead.

use crate::colour::hue::{Hue, NEAR_GREY};
use crate::colour::{Lab, chroma, delta_e, hue_angle};
use crate::numeric::sort::in_order;

/// Component, and CIEDE2000 as a whole, below which nobody sees a difference.
const SEEN: f32 = 1.0;

/// Component below which it is "a little", and from which it is "much": common practice, no source.
const LITTLE_TO_MUCH: [f32; 2] = [3.0, 10.0];

/// Widest turn of hue in degrees that is still told as a turn.
const WIDEST_TURN: f32 = 60.0;

/// Step of CIEDE2000 within which mixes count as equally near a colour: half of what is just seen.
pub const EQUALLY_NEAR: f32 = 0.5;

/// How a colour differs from a reference.
#[derive(Clone, Debug, PartialEq)]
pub struct Difference {
    /// CIEDE2000; about 1 is just seen.
    pub delta_e: f32,
    /// Largest component first: "much darker, a little greener", "hardly different".
    pub words: String,
}

/// How `lab` differs from `reference`.
///
/// ```
/// use washpath_core::{Lab, compare};
/// let grey = Lab::new(50.0, 0.0, 0.0);
/// assert_eq!(compare(Lab::new(46.0, -3.5, 1.5), grey).words, "darker, greener");
/// assert_eq!(compare(grey, grey).words, "hardly different");
/// ```
#[must_use]
pub fn compare(lab: Lab, reference: Lab) -> Difference {
    let delta_e = delta_e(lab, reference);
    let words =
        if delta_e < SEEN { "hardly different".to_owned() } else { words(&components(lab, reference)) };
    Difference { delta_e, words }
}

/// Size in CIE94's units, and its word.
type Component = (f32, &'static str);

fn components(lab: Lab, reference: Lab) -> Vec<Component> {
    let rise = lab.l - reference.l;
    let mut components = chromatic(lab, reference);
    components.push((rise.abs(), if rise < 0.0 { "darker" } else { "lighter" }));
    let mut components = in_order(components, |(size, _)| -size);
    let seen = components.iter().filter(|(size, _)| *size >= SEEN).count();
    // CIEDE2000 sees a little more among greys: then the largest alone is told.
    components.truncate(seen.max(1));
    components
}

fn chromatic(lab: Lab, reference: Lab) -> Vec<Component> {
    let [ours, other] = [lab, reference].map(chroma);
    let growth = ours - other;
    let brightness = (growth.abs() / (1.0 + 0.045 * other), if growth < 0.0 { "duller" } else { "brighter" });
    let turn = (hue_angle(lab) - hue_angle(reference) + 540.0).rem_euclid(360.0) - 180.0;
    if other > NEAR_GREY && ours <= NEAR_GREY {
        return vec![brightness];
    }
    if other <= NEAR_GREY || turn.abs() > WIDEST_TURN {
        let step = Lab::new(0.0, lab.a - reference.a, lab.b - reference.b);
        return vec![(chroma(step) / (1.0 + 0.045 * other), direction(hue_angle(step)))];
    }
    let swing = 2.0 * (ours * other).sqrt() * (0.5 * turn.to_radians()).sin();
    let middle = hue_angle(reference) + 0.5 * turn;
    vec![brightness, (swing.abs() / (1.0 + 0.015 * other), turned(middle, turn > 0.0))]
}

/// The word for a step in a* and b* at this angle.
fn direction(angle: f32) -> &'static str {
    match Hue::of_angle(angle) {
        Hue::Red => "redder",
        Hue::RedOrange | Hue::Orange => "more orange",
        Hue::YellowOrange => "more yellow orange",
        Hue::Yellow => "yellower",
        Hue::YellowGreen => "more yellow green",
        Hue::Green => "greener",
        Hue::BlueGreen => "more blue green",
        Hue::Blue => "bluer",
        Hue::BlueViolet => "more blue violet",
        Hue::Violet => "more violet",
        Hue::RedViolet => "more red violet",
    }
}

/// The main hue next to `angle` on the side a colour turns to.
fn turned(angle: f32, counter_clockwise: bool) -> &'static str {
    // Middles of the four families in measured paints, as `Hue` has them.
    const MAIN: [(f32, &str); 4] =
        [(30.0, "redder"), (88.0, "yellower"), (150.0, "greener"), (265.0, "bluer")];
    let angle = angle.rem_euclid(360.0);
    let after = MAIN.iter().position(|(middle, _)| *middle > angle).unwrap_or(0);
    MAIN[if counter_clockwise { after } else { (after + 3) % 4 }].1
}

/// Joins components; neighbours of one adverb share it.
fn words(components: &[Component]) -> String {
    let groups = components.chunk_by(|one, other| adverb(one.0) == adverb(other.0));
    let told = groups.map(|group| {
        let adverb = adverb(group[0].0);
        let words: Vec<&str> = group.iter().map(|(_, word)| *word).collect();
        format!("{adverb}{}", words.join(if adverb.is_empty() { ", " } else { " and " }))
    });
    told.collect::<Vec<_>>().join(", ")
}

fn adverb(size: f32) -> &'static str {
    match size {
        size if size < LITTLE_TO_MUCH[0] => "a little ",
        size if size < LITTLE_TO_MUCH[1] => "",
        _ => "much ",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn lch(l: f32, c: f32, h: f32) -> Lab {
        Lab::new(l, c * h.to_radians().cos(), c * h.to_radians().sin())
    }

    fn told(lab: Lab, reference: Lab) -> String {
        compare(lab, reference).words
    }

    #[test]
    fn value_and_chroma() {
        let blue = lch(45.0, 40.0, 270.0);
        assert_eq!(told(lch(47.0, 40.0, 270.0), blue), "a little lighter");
        assert_eq!(told(lch(30.0, 10.0, 270.0), blue), "much darker and duller");
        assert_eq!(told(lch(45.0, 52.0, 270.0), blue), "brighter");
        assert_eq!(told(lch(45.2, 40.0, 270.0), blue), "hardly different");
    }

    /// Dyers and printers say reds are yellower or bluer, greens yellower or bluer, blues redder or
    /// greener, yellows redder or greener: common practice, no source.
    #[test]
    fn turns_of_hue_are_named_as_the_trade_names_shades() {
        for (hue, clockwise, counter_clockwise) in [
            (28.0, "bluer", "yellower"),
            (90.0, "redder", "greener"),
            (150.0, "yellower", "bluer"),
            (270.0, "greener", "redder"),
            (320.0, "bluer", "redder"),
        ] {
            let from = lch(50.0, 40.0, hue);
            assert_eq!(told(lch(50.0, 40.0, hue - 12.0), from), clockwise, "h {hue}");
            assert_eq!(told(lch(50.0, 40.0, hue + 12.0), from), counter_clockwise, "h {hue}");
        }
    }

    #[test]
    fn greys_lean_and_vivid_colours_grey() {
        let grey = Lab::new(50.0, 0.4, -0.3);
        assert_eq!(told(lch(50.0, 6.0, 30.0), grey), "redder");
        assert_eq!(told(lch(50.0, 6.0, 315.0), grey), "more violet");
        assert_eq!(told(grey, lch(50.0, 40.0, 150.0)), "much duller");
        assert_eq!(told(lch(50.0, 4.0, 330.0), lch(50.0, 30.0, 150.0)), "much duller");
        assert_eq!(told(lch(50.0, 12.0, 30.0), lch(50.0, 12.0, 210.0)), "much redder");
    }

    proptest! {
        #[test]
        fn whatever_is_seen_is_told(
            one in (0f32..100.0, -100f32..100.0, -100f32..100.0),
            other in (0f32..100.0, -100f32..100.0, -100f32..100.0),
        ) {
            let [one, other] = [one, other].map(|(l, a, b)| Lab::new(l, a, b));
            let found = compare(one, other);
            prop_assert_eq!(found.words == "hardly different", found.delta_e < 1.0);
            let back = told(other, one);
            prop_assert!(!(found.words.contains("darker") && back.contains("darker")), "{}, {back}", found.words);
        }
    }

    #[test]
    fn no_number_is_a_panic() {
        for odd in [f32::NAN, f32::INFINITY, f32::NEG_INFINITY, f32::MAX] {
            let _ = compare(Lab::new(odd, odd, odd), Lab::new(50.0, 0.0, odd));
        }
    }
}
