//! Washes by name, and loads that can be printed.

use crate::error::Error;

/// Loads of the sheets, thickest first, with their names and signs.
pub(crate) const WASHES: [(f32, &str, &str); 5] = [
    (1.0, "masstone", "1"),
    (0.5, "strong wash", "1/2"),
    (0.25, "medium wash", "1/4"),
    (0.125, "light wash", "1/8"),
    (0.0625, "pale wash", "1/16"),
];

/// A load, if it is one.
pub(crate) fn load(load: f32) -> Result<f32, Error> {
    if load > 0.0 && load <= 1.0 { Ok(load) } else { Err(Error::Load) }
}

/// The name of the nearest wash.
pub(crate) fn name(load: f32) -> &'static str {
    let away = |stop: f32| (stop / load).log2().abs();
    WASHES.iter().min_by(|a, b| away(a.0).total_cmp(&away(b.0))).map_or("wash", |(_, name, _)| *name)
}
