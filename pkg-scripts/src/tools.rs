//! Tools of the machine: look for them, install what is missing.

use std::env;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result, bail};

use crate::process::{program, run, succeeds};

/// The target the page's core is compiled for.
pub(crate) const WASM: &str = "wasm32-unknown-unknown";

/// Makes sure that rustc can compile for the browser.
pub(crate) fn need_wasm_target() -> Result<()> {
    let output = Command::new("rustc").args(["--print", "target-libdir", "--target", WASM]).output();
    let folder = output.context("cannot start rustc")?.stdout;
    if Path::new(String::from_utf8_lossy(&folder).trim()).is_dir() {
        return Ok(());
    }
    println!("Adding rustc's target {WASM}");
    run(Command::new("rustup").args(["target", "add", WASM])).with_context(|| {
        format!("rustc has no target {WASM}: install rustup, or the target by your own means")
    })
}

/// Makes sure that a cargo subcommand of a rustup component is there.
pub(crate) fn need_component(subcommand: &str, component: &str) -> Result<()> {
    if succeeds(Command::new("cargo").args([subcommand, "--version"])) {
        return Ok(());
    }
    println!("Adding rustup's component {component}");
    run(Command::new("rustup").args(["component", "add", component]))
        .with_context(|| format!("cargo has no {subcommand}: install rustup's component {component}"))
}

/// Where Chromium and its driver lie.
pub(crate) struct Browser {
    /// The browser.
    pub(crate) chromium: PathBuf,
    /// The program through which it is driven.
    pub(crate) driver: PathBuf,
}

/// Finds Chromium and its driver; installs them on Debian if run by root.
pub(crate) fn need_browser() -> Result<Browser> {
    if let Some(browser) = find_browser() {
        return Ok(browser);
    }
    if !can_install() {
        bail!(
            "Chromium and its driver are missing: `apt-get install chromium chromium-driver` on Debian, \
             else put `chromium` and `chromedriver` of one version on the PATH"
        );
    }
    println!("Installing Chromium and its driver");
    run(Command::new("apt-get").arg("update"))?;
    let packages = ["chromium", "chromium-driver", "fonts-dejavu-core"];
    let quietly = ["install", "--yes", "--no-install-recommends"];
    run(Command::new("apt-get").env("DEBIAN_FRONTEND", "noninteractive").args(quietly).args(packages))?;
    find_browser().context("Chromium is installed but not on the PATH")
}

fn find_browser() -> Option<Browser> {
    Some(Browser { chromium: find("chromium")?, driver: find("chromedriver")? })
}

fn find(name: &str) -> Option<PathBuf> {
    env::split_paths(&env::var_os("PATH")?).map(|folder| folder.join(name)).find(|file| file.is_file())
}

fn can_install() -> bool {
    let root = Command::new("id").arg("-u").output().is_ok_and(|id| id.stdout == b"0\n");
    root && find("apt-get").is_some()
}

/// Makes sure that node is there and the npm packages of a folder are those of its lock.
pub(crate) fn need_node_packages(folder: &Path) -> Result<()> {
    if find("node").is_none() || find("npm").is_none() {
        bail!("node and npm are missing: install Node.js 20 or newer");
    }
    // npm writes this file last, so it dates the whole installation.
    let installed = modified(&folder.join("node_modules/.package-lock.json"));
    let locked = modified(&folder.join("package-lock.json"));
    if installed.is_some() && installed >= locked {
        return Ok(());
    }
    println!("Installing the npm packages of {}", folder.display());
    run(program("npm", folder).args(["ci", "--no-audit", "--no-fund"]))
}

fn modified(file: &Path) -> Option<std::time::SystemTime> {
    fs::metadata(file).and_then(|data| data.modified()).ok()
}
