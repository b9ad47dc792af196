//! Lasting names of the painter's own paints.

use std::fmt;
use std::str::FromStr;

use crate::error::Error;
use crate::text::words::cut;

/// A lasting name of an own paint: it stays when the paint is described anew, and no other paint has it.
///
/// Twelve lower-case hexadecimal digits as text.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct OwnId([u8; Self::BYTES]);

impl OwnId {
    /// Bytes of an id.
    pub const BYTES: usize = 6;

    /// The id of these bytes.
    #[must_use]
    pub const fn new(bytes: [u8; Self::BYTES]) -> Self {
        Self(bytes)
    }

    /// Its bytes.
    #[must_use]
    pub const fn bytes(self) -> [u8; Self::BYTES] {
        self.0
    }
}

impl fmt::Display for OwnId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|byte| write!(f, "{byte:02x}"))
    }
}

impl FromStr for OwnId {
    type Err = Error;

    fn from_str(text: &str) -> Result<Self, Error> {
        let is_id = text.len() == 2 * Self::BYTES
            && text.bytes().all(|byte| matches!(byte, b'0'..=b'9' | b'a'..=b'f'));
        let byte = |i: usize| u8::from_str_radix(&text[2 * i..2 * i + 2], 16).ok();
        let bytes = if is_id { (0..Self::BYTES).map(byte).collect::<Option<Vec<u8>>>() } else { None };
        let bytes = bytes.and_then(|bytes| bytes.try_into().ok());
        bytes
            .map(Self)
            .ok_or_else(|| Error::Unreadable(format!("\"{}\" is not the id of a paint", cut(text))))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ids_are_read_as_they_are_written() {
        let id: OwnId = "00ff10a9b3c4".parse().unwrap();
        assert_eq!((id.bytes(), id.to_string().as_str()), ([0, 255, 16, 169, 179, 196], "00ff10a9b3c4"));
        for text in ["", "00ff10a9b3c", "00FF10A9B3C4", "00ff10a9b3c45", "ÿff10a9b3c4", "+0ff10a9b3c4"] {
            let error = text.parse::<OwnId>().unwrap_err().to_string();
            assert_eq!(error, format!("\"{text}\" is not the id of a paint"));
        }
    }
}
