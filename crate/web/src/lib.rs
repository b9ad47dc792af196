//! The border between the core and the page.
//!
//! Arguments come in as numbers and plain objects, answers go out as typed
//! arrays, plain objects and strokes on a canvas. No formula lives here: the
//! core computes, [`geometry`] lays out, `wheel` and `dab` draw.
//!
//! The feature `studio` is what the page needs for its first picture and for
//! dragging, `adviser` what the worker answers: hosted, they are two downloads.

#![cfg_attr(
    not(all(feature = "studio", feature = "adviser")),
    allow(dead_code, reason = "what both halves share is used whole by both together")
)]

#[cfg(feature = "adviser")]
mod adviser;
mod border;
#[cfg(feature = "adviser")]
mod choosing;
#[cfg(feature = "studio")]
mod codes;
#[cfg(feature = "studio")]
mod dab;
mod from_page;
#[cfg(feature = "studio")]
pub mod geometry;
#[cfg(feature = "studio")]
mod kits;
mod last_reach;
#[cfg(feature = "studio")]
mod marks;
#[cfg(feature = "adviser")]
mod matching;
mod own;
mod paint;
mod pair;
mod paper;
#[cfg(feature = "studio")]
mod partners;
mod parts;
#[cfg(feature = "studio")]
mod pen;
#[cfg(feature = "studio")]
mod picking;
#[cfg(feature = "adviser")]
mod printing;
#[cfg(feature = "studio")]
mod reach;
#[cfg(feature = "studio")]
mod readout;
mod record;
#[cfg(feature = "adviser")]
mod records;
#[cfg(feature = "studio")]
mod scene;
mod shelf;
mod sight;
#[cfg(feature = "studio")]
mod strand;
#[cfg(feature = "studio")]
mod studio;
mod swatch;
#[cfg(feature = "studio")]
mod wash;
#[cfg(feature = "studio")]
mod wheel;

#[cfg(feature = "adviser")]
pub use adviser::Adviser;
#[cfg(feature = "adviser")]
pub use choosing::Choosing;
#[cfg(feature = "studio")]
pub use kits::{decode_kit, encode_kit};
#[cfg(feature = "adviser")]
pub use matching::colours_of;
#[cfg(feature = "studio")]
pub use own::{compare, first_own, lab_of_seen, read_own};
#[cfg(feature = "studio")]
pub use picking::{hex_of, read_colour, sample, white_balance};
#[cfg(feature = "adviser")]
pub use printing::{print_pdf, print_svg, qr_svg};
#[cfg(feature = "studio")]
pub use record::read_record;
#[cfg(feature = "adviser")]
pub use records::{learn, log_of, records_of, samples_of};
#[cfg(feature = "adviser")]
pub use shelf::films_of_swatches;
pub use shelf::{paints, set_shelf};
#[cfg(feature = "studio")]
pub use studio::{Studio, read_paper};
