//! Shares and positions along any path.

use washpath_core::{next_parts, position_of, share_at, snap};
use wasm_bindgen::prelude::*;

use crate::studio::Studio;
use crate::studio::strand::STEPS;

#[wasm_bindgen]
impl Studio {
    /// The share of B at a position 0 to 1 along any path.
    #[must_use]
    pub fn share_of(&self, position: f32) -> f32 {
        share_at(position)
    }

    /// The position of a share of B along any path, 0 to 1.
    #[must_use]
    pub fn position_of(&self, share: f32) -> f32 {
        position_of(share)
    }

    /// The share of the whole parts nearest to a share, if they are within `reach` of its position.
    #[must_use]
    pub fn snap(&self, share: f32, distance: f32) -> Option<f32> {
        snap(share, distance)
    }

    /// The share of the next whole parts of a brush, towards B or towards A.
    #[must_use]
    pub fn next_parts(&self, share: f32, towards_b: bool) -> f32 {
        next_parts(share, towards_b)
    }

    /// The share some steps of a path further towards B.
    #[must_use]
    pub fn step_share(&self, share: f32, steps: f32) -> f32 {
        share_at((position_of(share) + steps / (STEPS - 1) as f32).clamp(0.0, 1.0))
    }
}
