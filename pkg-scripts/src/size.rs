//! How many bytes a visitor loads.

use std::fmt;
use std::fs;
use std::io::{self, Write};
use std::ops::AddAssign;
use std::path::Path;

use anyhow::{Context, Result};
use flate2::Compression;
use flate2::write::GzEncoder;

use crate::page::{self, attribute, own};
use crate::{build, bundle, workspace};

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

/// The kinds of files a site has, in the order they are listed.
const PARTS: [&str; 5] = ["wasm, first load", "wasm, later", "scripts", "letters", "page, icon, the rest"];

fn part(name: &str) -> &'static str {
    let kind = match name.rsplit('.').next() {
        Some("wasm") => usize::from(name.contains(build::HALVES[1])),
        Some("js") => 2,
        Some("woff2") => 3,
        _ => 4,
    };
    PARTS[kind]
}

/// Sizes of the site by kind of file.
pub(crate) fn parts() -> Result<Vec<(&'static str, Size)>> {
    PARTS.iter().map(|kind| Ok((*kind, sum(|name| part(name) == *kind)?))).collect()
}

/// All files of the site that the page may ask for.
pub(crate) fn all() -> Result<Size> {
    sum(|_| true)
}

/// What is loaded before the page is ready: the page and all that it names itself.
pub(crate) fn first_load() -> Result<Size> {
    let html =
        fs::read_to_string(workspace::site().join(page::INDEX)).context("no target/site: build first")?;
    let named = named(&html)?;
    sum(|name| name == page::INDEX || named.iter().any(|other| other == name))
}

/// The files that a page's links and scripts name.
fn named(html: &str) -> Result<Vec<String>> {
    let mut named = Vec::new();
    for (element, kind) in [("link", "href"), ("script", "src")] {
        page::edit_tags(html, element, |tag| {
            named.extend(attribute(tag, kind).and_then(own).map(str::to_owned));
            Ok(None)
        })?;
    }
    Ok(named)
}

fn sum(counts: impl Fn(&str) -> bool) -> Result<Size> {
    let site = workspace::site();
    let mut sum = Size::default();
    for file in build::files(&site)?.into_iter().filter(|file| !bundle::is_map(file)) {
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
    fn links_and_scripts_are_what_a_page_names() {
        let html = "<link rel=\"icon\" href=\"./a.svg\"><script src=\"./b.js\"></script><a href=\"./c.html\">c</a><link rel=\"x\" href=\"data:,\">";
        assert_eq!(named(html).unwrap(), ["a.svg", "b.js"]);
    }
}
