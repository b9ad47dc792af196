//! Colours and mixes of the shelf's paints, for tests that put the trade's words as bounds.

#![allow(dead_code, reason = "each test file compiles its own copy of this module")]

use washpath_core::{Crossing, Film, Lab, Light, Paint, Path, Shelf, Stock, View, share_at};

/// C* up to which a painter calls a dark mix grey.
pub const GREY: f32 = 5.0;

/// White paper in daylight.
pub fn view() -> View {
    View::new(&Stock::BrightWhite.paper(), Light::D65)
}

/// The paint of a key.
pub fn paint(key: &str) -> &'static Paint {
    Shelf::built_in().find(key).expect("the shelf has it")
}

/// Its colour at full strength.
pub fn masstone(key: &str) -> Lab {
    view().colour(&paint(key).film, 1.0)
}

/// Where the path of two paints turns most neutral, at masstone.
pub fn crossing(a: &str, b: &str) -> Crossing {
    let view = view();
    Path::new(&paint(a).film, &paint(b).film, &view, 1.0).crossing()
}

/// Mixes from 8:1 to 1:8 at masstone.
pub fn mixes(a: &str, b: &str) -> Vec<Lab> {
    let view = view();
    let (a, b): (&Film, &Film) = (&paint(a).film, &paint(b).film);
    let path = Path::new(a, b, &view, 1.0);
    (0..=16).map(|i| path.colour(share_at(0.3 + 0.4 * i as f32 / 16.0))).collect()
}

/// Whether a hue angle lies from one to another, counter-clockwise.
pub fn within(hue: f32, from: f32, to: f32) -> bool {
    (hue - from).rem_euclid(360.0) <= (to - from).rem_euclid(360.0)
}

/// How many mixes between two paints are as the words say, and how many there are.
pub fn count(a: &str, b: &str, is: impl Fn(Lab) -> bool) -> (usize, usize) {
    let mixes = mixes(a, b);
    (mixes.iter().filter(|lab| is(**lab)).count(), mixes.len())
}
