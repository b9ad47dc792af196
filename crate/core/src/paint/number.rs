//! Paints by number, as links and files carry them.

use std::fmt;

/// Permanent number of a paint; never given twice.
///
/// ```
/// use washpath_core::{PaintNumber, Shelf};
/// let ultramarine = Shelf::built_in().find("pb29")?.number;
/// assert_eq!(PaintNumber::new(ultramarine.get()), ultramarine);
/// assert_eq!(PaintNumber::own(2).own_index(), Some(2));
/// assert_eq!(ultramarine.own_index(), None);
/// # Ok::<(), washpath_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PaintNumber(u16);

impl PaintNumber {
    /// First number of a painter's own paint; those below belong to the built-in shelf.
    pub const FIRST_OWN: Self = Self(4096);

    /// The paint of this number, whether or not a shelf has one.
    #[must_use]
    pub const fn new(number: u16) -> Self {
        Self(number)
    }

    /// As links and files write it.
    #[must_use]
    pub const fn get(self) -> u16 {
        self.0
    }

    /// Of the own paint at an index, 0 to 61,439, of all that a kit brings along.
    #[must_use]
    pub const fn own(index: usize) -> Self {
        Self(Self::FIRST_OWN.0 + index as u16)
    }

    /// Index of an own paint among all that its kit brings along; nothing for a paint of the built-in shelf.
    #[must_use]
    pub fn own_index(self) -> Option<usize> {
        self.0.checked_sub(Self::FIRST_OWN.0).map(usize::from)
    }
}

impl From<u16> for PaintNumber {
    fn from(number: u16) -> Self {
        Self(number)
    }
}

impl fmt::Display for PaintNumber {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}
