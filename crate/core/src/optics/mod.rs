//! Light in a film of paint on paper: from spectra to what the eye sees.

pub(crate) mod film;
pub mod layer;
pub mod observer;
pub(crate) mod paper;
pub(crate) mod smooth;
pub mod spectrum;
pub(crate) mod surface;
pub(crate) mod view;
