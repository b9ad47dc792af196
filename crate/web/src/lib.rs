//! The border between the core and the page.
//!
//! Arguments come in as numbers and plain objects, answers go out as typed
//! arrays, plain objects and strokes on a canvas. No formula lives here: the
//! core computes, `studio::geometry` lays out, `studio::wheel` and `studio::dab` draw.
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
mod from_page;
mod last_reach;
mod own_paint;
mod paint;
mod pair;
mod paper;
mod parts;
mod record;
mod shelf;
mod sight;
#[cfg(feature = "studio")]
pub mod studio;
mod swatch;

pub use shelf::{paints, set_shelf};
