//! What a painter painted out and measured, and what is learned from it.

pub mod calibrate;
pub(crate) mod log;
pub(crate) mod measurement;
pub(crate) mod own_id;
pub(crate) mod own_paint;
pub(crate) mod patch;
pub(crate) mod record;
pub(crate) mod swatched;
pub(crate) mod teaching;
