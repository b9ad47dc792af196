//! What can go wrong, in words for the person who can mend it.

use std::fmt;

/// Everything this crate refuses, as one type.
///
/// The kinds are public because the page answers each differently: an unknown
/// version asks for a newer program, a damaged link for the link again.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Error {
    /// No paint of this key or number is on the shelf.
    UnknownPaint(String),
    /// The link says a version of the format this program does not read.
    UnknownVersion {
        /// The link's.
        version: u8,
        /// The newest that this program reads.
        newest: u8,
    },
    /// The link holds a section of this tag that this program does not read.
    UnknownSection(u32),
    /// The link is cut short, changed or not one of ours; says which.
    DamagedLink(&'static str),
    /// The kit breaks one of its limits; says which.
    Kit(String),
    /// A table could not be read; names the line and the reason.
    Table {
        /// Line in the file, counted from 1; 0 for the file as a whole.
        line: usize,
        /// What is wrong there.
        reason: String,
    },
    /// A number is missing, not finite or out of its range; names it.
    Value(String),
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::UnknownPaint(key) => write!(f, "no paint \"{key}\" on the shelf"),
            Self::UnknownVersion { version, newest } => {
                write!(f, "the link is of version {version}; this program reads versions up to {newest}")
            }
            Self::UnknownSection(tag) => write!(
                f,
                "the link holds something this version does not know (section {tag}): open it with a newer one"
            ),
            Self::DamagedLink(reason) => write!(f, "the link is damaged: {reason}"),
            Self::Kit(reason) => write!(f, "{reason}"),
            Self::Table { line: 0, reason } => write!(f, "the table: {reason}"),
            Self::Table { line, reason } => write!(f, "line {line}: {reason}"),
            Self::Value(reason) => write!(f, "{reason}"),
        }
    }
}

impl std::error::Error for Error {}

impl Error {
    /// A table's fault at a line (counted from 1).
    pub(crate) fn table(line: usize, reason: impl Into<String>) -> Self {
        Self::Table { line, reason: reason.into() }
    }
}
