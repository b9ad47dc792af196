//! Recipes for a colour, and colours out of a photo.

pub(crate) mod cluster;
pub(crate) mod matches;
pub(crate) mod optimum;
pub(crate) mod picture;
pub(crate) mod rounding;
pub(crate) mod shapes;
pub(crate) mod shortfall;
pub(crate) mod study;
