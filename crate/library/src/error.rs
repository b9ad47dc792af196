//! What can be wrong with the tables this crate reads.

use std::fmt;

/// A table in `data/` that does not hold what it should.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Error {
    table: &'static str,
    reason: String,
}

impl Error {
    pub(crate) fn new(table: &'static str, reason: impl Into<String>) -> Self {
        Self { table, reason: reason.into() }
    }
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.table, self.reason)
    }
}

impl std::error::Error for Error {}
