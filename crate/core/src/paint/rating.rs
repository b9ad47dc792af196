//! Ratings of paints in words, and the ratings from which a paint is called something.
//!
//! Where a word begins is common practice, no source; the ratings themselves are measured ([`Paint`](crate::Paint)).

/// Words for transparency, 0 to 4: the handbook's own, but from [`TRANSPARENT`] on the last one holds.
pub const TRANSPARENCY_WORDS: [&str; 5] =
    ["very opaque", "opaque", "semi-opaque", "semi-transparent", "transparent"];

/// Words for granulation, 0 to 4.
pub const GRANULATION_WORDS: [&str; 5] =
    ["smooth", "hardly granulates", "granulates a little", "granulates", "granulates strongly"];

/// Words for staining, 0 to 4.
pub const STAINING_WORDS: [&str; 5] = ["lifts well", "lifts", "stains a little", "stains", "stains strongly"];

/// Rating from which a paint granulates.
pub const GRANULATES: f32 = 2.0;

/// Granulation below which a paint lies smooth.
pub const SMOOTH: f32 = 1.0;

/// Rating from which a paint stains.
pub const STAINS: f32 = 3.0;

/// Staining below which a paint is one that lifts.
pub const LIFTS: f32 = 1.5;

/// Transparency from which a paint is called transparent: quinacridones, at 3, are by all.
pub const TRANSPARENT: f32 = 3.0;

/// Transparency below which a paint is one that hides.
pub const OPAQUE: f32 = 1.5;

/// Blue Wool grade from which a tint is called lightfast: 7 and 8 are excellent (ASTM D4303's category I).
pub const LIGHTFAST: f32 = 7.0;

/// Strength in mixes from which a paint is called strong; about 1 is usual.
pub const STRONG: f32 = 1.75;

/// Strength in mixes up to which a paint is called weak.
pub const WEAK: f32 = 0.6;

/// The word for a rating of 0 to 4.
pub(crate) fn word(words: [&'static str; 5], rating: f32) -> &'static str {
    words[(rating.max(0.0).round() as usize).min(4)]
}

/// The word for a transparency of 0 to 4.
pub(crate) fn cover(rating: f32) -> &'static str {
    if rating >= TRANSPARENT { TRANSPARENCY_WORDS[4] } else { word(TRANSPARENCY_WORDS, rating) }
}
