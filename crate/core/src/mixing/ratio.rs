//! A ratio: whole parts of two paints.

use std::fmt;

/// Whole parts of two paints by volume, not both 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Ratio {
    /// Parts of the first.
    pub a: u16,
    /// Parts of the second.
    pub b: u16,
}

impl Ratio {
    /// So many parts of each.
    #[must_use]
    pub const fn new(a: u16, b: u16) -> Self {
        Self { a, b }
    }

    /// The share of the second, 0 to 1.
    #[must_use]
    pub fn share(self) -> f32 {
        f32::from(self.b) / (f32::from(self.a) + f32::from(self.b))
    }

    /// The same the other way round.
    #[must_use]
    pub const fn turned(self) -> Self {
        Self { a: self.b, b: self.a }
    }

    /// Both parts, the first's before the second's.
    #[must_use]
    pub const fn parts(self) -> [u16; 2] {
        [self.a, self.b]
    }
}

/// As painters write it: "2:1".
impl fmt::Display for Ratio {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}:{}", self.a, self.b)
    }
}
