//! The border between the core and the page.
//!
//! Arguments come in as numbers and plain objects, answers go out as typed
//! arrays, plain objects and strokes on a canvas. No formula lives here: the
//! core computes, [`geometry`] lays out, `wheel` and `dab` draw.

mod dab;
pub mod geometry;
mod readout;
mod scene;
mod studio;
mod wheel;

pub use studio::{Studio, decode_kit, encode_kit, paints};
