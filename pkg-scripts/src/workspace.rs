//! Where things lie.

use std::env;
use std::path::{Path, PathBuf};
use std::sync::OnceLock;

use anyhow::{Context, Result};

/// The repository's root.
pub(crate) fn root() -> &'static Path {
    let package = Path::new(env!("CARGO_MANIFEST_DIR"));
    package.parent().unwrap_or(package)
}

/// Where cargo puts what it builds: `CARGO_TARGET_DIR`, else `target`.
pub(crate) fn cargo_target() -> PathBuf {
    root().join(env::var_os("CARGO_TARGET_DIR").unwrap_or_else(|| "target".into()))
}

/// The folder to host.
pub(crate) fn site() -> PathBuf {
    root().join("target/site")
}

/// The page's sources beside the core they import: what is bundled, and
/// what `serve --watch` serves below `www`.
pub(crate) fn sources() -> PathBuf {
    root().join("target/sources")
}

/// The same with one core for page and worker, as the single-file page has it.
pub(crate) fn whole() -> PathBuf {
    root().join("target/whole")
}

/// The single-file page.
pub(crate) fn packed() -> PathBuf {
    root().join("target/washpath.html")
}

/// The page's sources.
pub(crate) fn www() -> PathBuf {
    root().join("www")
}

/// The browser tests.
pub(crate) fn browser_tests() -> PathBuf {
    root().join("tests/browser")
}

/// What measures how the page starts.
pub(crate) fn start_tests() -> PathBuf {
    root().join("tests/start")
}

/// The folder of the npm packages that the build needs.
pub(crate) fn build_packages() -> PathBuf {
    root().join("pkg-scripts")
}

/// Where this program lies, found as it starts: a test run builds it anew with other features, and asked later the system
/// names a file that is gone.
pub(crate) fn program() -> Result<&'static Path> {
    static PROGRAM: OnceLock<Option<PathBuf>> = OnceLock::new();
    PROGRAM.get_or_init(|| env::current_exe().ok()).as_deref().context("cannot find this program")
}
