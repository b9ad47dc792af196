//! How many bytes a visitor loads.

use std::fmt;
use std::fs;
use std::io::{self, Write};
use std::ops::AddAssign;
use std::path::Path;

use anyhow::{Context, Result};
use flate2::Compression;
use flate2::write::GzEncoder;

/// Bytes as they lie on the disk and as a server sends them.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Size {
    /// Bytes of the file.
    pub(crate) raw: usize,
    /// Bytes of the same after gzip.
    pub(crate) gzip: usize,
}

impl Size {
    /// Measures a file.
    pub(crate) fn of(file: &Path) -> Result<Self> {
        let bytes = fs::read(file).with_context(|| format!("cannot read {}", file.display()))?;
        Ok(Self { raw: bytes.len(), gzip: gzip(&bytes)?.len() })
    }
}

impl AddAssign for Size {
    fn add_assign(&mut self, other: Self) {
        self.raw += other.raw;
        self.gzip += other.gzip;
    }
}

impl fmt::Display for Size {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} bytes, {} after gzip", self.raw, self.gzip)
    }
}

/// Compresses as far as gzip goes.
pub(crate) fn gzip(bytes: &[u8]) -> io::Result<Vec<u8>> {
    let mut encoder = GzEncoder::new(Vec::new(), Compression::best());
    encoder.write_all(bytes)?;
    encoder.finish()
}
