//! The kit chosen, and why.

use crate::paint::number::PaintNumber;

/// The kit chosen.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Choice {
    /// Its paints, and why each is in it, the most needed first.
    pub reasons: Vec<Reason>,
    /// Its cost, 0 to 1.
    pub cost: f32,
    /// No kit that keeps the rules costs less than this.
    pub bound: f32,
    /// Whether all kits were tried: then none is better.
    pub exact: bool,
}

/// Why a paint is in a kit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reason {
    /// The paint.
    pub paint: PaintNumber,
    /// What the kit would cost more without it.
    pub lost: f32,
    /// Whether the rules name it.
    pub required: bool,
}

impl Choice {
    /// How much less another kit could cost at most.
    #[must_use]
    pub fn gap(&self) -> f32 {
        (self.cost - self.bound).max(0.0)
    }
}
