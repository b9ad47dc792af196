//! A part: so much of one paint in a recipe.

use crate::paint::number::PaintNumber;

/// Whole parts of a paint by volume.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Part {
    /// The paint.
    pub paint: PaintNumber,
    /// How many; in a recipe 1 to 999.
    pub parts: u16,
}

impl Part {
    /// So many parts of a paint.
    pub fn new(paint: impl Into<PaintNumber>, parts: u16) -> Self {
        Self { paint: paint.into(), parts }
    }
}
