//! What can go wrong, in words for the person who can mend it.

use std::fmt;

/// Everything this crate refuses, as one type.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum Error {
    /// There is nothing to print: no paint, no pan.
    Nothing,
    /// A load that is no number above 0, up to masstone.
    Load,
    /// A link of so many bytes, longer than [`LONGEST_LINK`](crate::LONGEST_LINK).
    LongLink(usize),
    /// What the core refuses: a paint that is not on the shelf.
    Core(washpath_core::Error),
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Nothing => write!(f, "no paint to print: pack some first"),
            Self::Load => write!(f, "a load lies above 0 and is at most 1, masstone"),
            Self::LongLink(length) => {
                write!(f, "a link of {length} bytes: a QR code holds at most {}", crate::LONGEST_LINK)
            }
            Self::Core(error) => error.fmt(f),
        }
    }
}

impl std::error::Error for Error {}

impl From<washpath_core::Error> for Error {
    fn from(error: washpath_core::Error) -> Self {
        Self::Core(error)
    }
}
