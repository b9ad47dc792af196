//! Text as it is read and written: decimals, words, tables, packed numbers.

pub(crate) mod csv;
pub(crate) mod decimal;
pub(crate) mod limits;
pub(crate) mod rows;
pub(crate) mod varint;
pub(crate) mod words;
