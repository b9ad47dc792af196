//! How many bytes a visitor loads.

use std::fmt;
use std::fs;
use std::io::{self, Write};
use std::ops::AddAssign;
use std::path::Path;

use anyhow::{Context, Result};
use flate2::Compression;
use flate2::write::GzEncoder;

use crate::{build, workspace};

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

/// What of the site is loaded only once the page is ready: the worker with its half of the core, what keeps the page
/// for offline use, and a licence to read.
fn is_later(name: &str) -> bool {
    let [_, adviser] = build::HALVES;
    name.starts_with(&format!("pkg/{adviser}"))
        || ["js/worker.js", "sw.js"].contains(&name)
        || name.ends_with(".txt")
}

/// The kinds of files a site has, in the order they are listed.
const PARTS: [&str; 6] =
    ["wasm, first load", "wasm, later", "scripts", "style sheet", "letters", "page, icon, the rest"];

fn part(name: &str) -> &'static str {
    let kind = match name.rsplit('.').next() {
        Some("wasm") => usize::from(is_later(name)),
        Some("js") => 2,
        Some("css") => 3,
        Some("woff2") => 4,
        _ => 5,
    };
    PARTS[kind]
}

/// Sizes of the site by kind of file.
pub(crate) fn parts() -> Result<Vec<(&'static str, Size)>> {
    PARTS.iter().map(|kind| Ok((*kind, sum(|name| part(name) == *kind)?))).collect()
}

/// All files of the site.
pub(crate) fn all() -> Result<Size> {
    sum(|_| true)
}

/// What is loaded before the page is ready.
pub(crate) fn first_load() -> Result<Size> {
    sum(|name| !is_later(name))
}

fn sum(counts: impl Fn(&str) -> bool) -> Result<Size> {
    let site = workspace::site();
    let mut sum = Size::default();
    for file in build::files(&site)? {
        if counts(&build::address(&file)) {
            sum += Size::of(&site.join(file))?;
        }
    }
    Ok(sum)
}

/// Compresses as far as gzip goes.
pub(crate) fn gzip(bytes: &[u8]) -> io::Result<Vec<u8>> {
    let mut encoder = GzEncoder::new(Vec::new(), Compression::best());
    encoder.write_all(bytes)?;
    encoder.finish()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_worker_and_its_half_come_later() {
        for later in ["pkg/adviser_bg.wasm", "pkg/adviser.js", "js/worker.js", "sw.js", "fonts/OFL.txt"] {
            assert!(is_later(later), "{later}");
        }
        for first in ["pkg/studio_bg.wasm", "pkg/studio.js", "js/adviser.js", "index.html"] {
            assert!(!is_later(first), "{first}");
        }
    }
}
