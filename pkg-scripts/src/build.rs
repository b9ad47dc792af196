//! The folder to host: the core as wasm, the page's files, the offline worker's list.

use std::env;
use std::ffi::OsStr;
use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};
use flate2::Crc;

use crate::process::{cargo, run};
use crate::{Command, graph, minify, pack, page, tools, workspace};

pub(crate) const COMMAND: Command = Command {
    name: "build",
    summary: "make target/site, the folder to host",
    help: "
Compiles the core for the browser, puts the page's files beside it without
comments and needless spaces, gives the page its content security policy and the
offline worker its list of files and version. The folder can be hosted anywhere,
below any path, over https.
",
    run: |words| {
        crate::no_words(words)?;
        build()
    },
};

/// The page may load from its own host and from nowhere else.
const POLICY: &str = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; \
    font-src 'self'; img-src 'self' data: blob:; connect-src 'self'; manifest-src 'self'; worker-src 'self'; \
    base-uri 'none'; form-action 'none'";

/// The core's two downloads, each a feature of the border: for the page, and for the worker's questions.
pub(crate) const HALVES: [&str; 2] = ["studio", "adviser"];

/// The offline worker, a template in the sources.
const WORKER: &str = "sw.js";

/// Makes the folder anew.
pub(crate) fn build() -> Result<()> {
    tools::need_wasm_target()?;
    let site = workspace::site();
    if site.exists() {
        fs::remove_dir_all(&site).context("cannot empty target/site")?;
    }
    let [studio, adviser] = HALVES;
    compile(studio, studio, &[&small_code()], &site.join("pkg"))?;
    compile(adviser, adviser, &[], &site.join("pkg"))?;
    for file in files(&workspace::www())? {
        let to = site.join(&file);
        fs::create_dir_all(to.parent().unwrap_or(&site))?;
        fs::copy(workspace::www().join(&file), &to)?;
        // The worker's two lines are found as they are written.
        if file != Path::new(WORKER) {
            minify::file(&to)?;
        }
    }
    let index = site.join("index.html");
    let html = fs::read_to_string(&index).context("www has no index.html")?;
    let modules = graph::at_once(&site, pack::FIRST)?;
    let html = page::with_preloads(&html, modules.iter().map(String::as_str))?;
    fs::write(index, page::with_policy(&html, POLICY)?)?;
    write_worker(&site)?;
    minify::file(&site.join(WORKER))?;
    println!("Hosted page: {}", site.display());
    Ok(())
}

/// Cargo's setting that makes the core small: only small functions are copied into their callers, 5 % fewer bytes after
/// gzip, and loops of unknown length stay as written, 3 % fewer. A path and a sheet take as long as before, long
/// searches some 4 % longer; so it is for the half that waits at the door, and for the one file.
pub(crate) fn small_code() -> String {
    let flags = ["--inline-threshold=40", "--unroll-runtime=false"].map(|flag| format!("-Cllvm-args={flag}"));
    format!("--config=target.{}.rustflags={flags:?}", tools::WASM)
}

/// Cargo's setting that takes this machine's folders out of what the core says when it breaks: the same bytes wherever
/// it is built, and fewer.
fn short_paths() -> Result<String> {
    let home = env::var_os("CARGO_HOME").map(PathBuf::from).or_else(|| Some(env::home_dir()?.join(".cargo")));
    let sources = home.context("there is no home folder")?.join("registry/src");
    let mut flags = Vec::new();
    for registry in fs::read_dir(&sources).with_context(|| format!("cannot list {}", sources.display()))? {
        flags.push(format!("--remap-path-prefix={}/=", registry?.path().display()));
    }
    Ok(format!("--config=target.{}.rustflags={flags:?}", tools::WASM))
}

/// Writes the core with some features of the border, and its JavaScript side, as modules of a name.
pub(crate) fn compile(name: &str, features: &str, settings: &[&str], folder: &Path) -> Result<()> {
    let words = ["build", "--locked", "--release", "--target", tools::WASM, "-p", "washpath-web"];
    run(cargo(&words)
        .args(["--no-default-features", "--features", features])
        .args(settings)
        .arg(short_paths()?))?;
    let wasm = workspace::cargo_target().join(tools::WASM).join("release/washpath_web.wasm");
    let words = [
        OsStr::new("wasm-bindgen"),
        wasm.as_os_str(),
        OsStr::new("--out-dir"),
        folder.as_os_str(),
        OsStr::new("--out-name"),
        OsStr::new(name),
        OsStr::new("--target"),
        OsStr::new("web"),
        OsStr::new("--no-typescript"),
        OsStr::new("--remove-name-section"),
        OsStr::new("--remove-producers-section"),
        // The page says where the wasm is: packed, it has no address.
        OsStr::new("--omit-default-module-path"),
    ];
    wasm_bindgen_cli::wasm_bindgen::run_cli_with_args(words).context("cannot bind the compiled core")?;
    minify::file(&folder.join(format!("{name}.js")))
}

/// Fills in the two lines at the worker's head.
fn write_worker(site: &Path) -> Result<()> {
    let mut crc = Crc::new();
    let mut assets = vec!["./".to_owned()];
    for file in files(site)? {
        let name = address(&file);
        crc.update(name.as_bytes());
        crc.update(&fs::read(site.join(&file))?);
        if name != WORKER && name != "index.html" {
            assets.push(format!("./{name}"));
        }
    }
    let worker = fs::read_to_string(site.join(WORKER)).context("www has no sw.js")?;
    let worker = with_constant(&worker, "VERSION", &format!("\"{:08x}\"", crc.sum()))?;
    let worker = with_constant(&worker, "ASSETS", &format!("{assets:?}"))?;
    fs::write(site.join(WORKER), worker)?;
    Ok(())
}

/// Gives a constant of a script its value; the constant must have a line of its own.
fn with_constant(script: &str, name: &str, value: &str) -> Result<String> {
    let start = format!("const {name} = ");
    let line = script.lines().find(|line| line.starts_with(&start));
    let line = line.with_context(|| format!("no line \"{start}…\" in the offline worker"))?;
    Ok(script.replacen(line, &format!("{start}{value};"), 1))
}

/// All files below a folder, relative to it, in order of their names; hidden ones are left out.
pub(crate) fn files(folder: &Path) -> Result<Vec<PathBuf>> {
    let mut found = Vec::new();
    let mut folders = vec![PathBuf::new()];
    while let Some(inner) = folders.pop() {
        let entries = fs::read_dir(folder.join(&inner));
        for entry in entries.with_context(|| format!("cannot list {}", folder.display()))? {
            let entry = entry?;
            let path = inner.join(entry.file_name());
            if entry.file_name().to_string_lossy().starts_with('.') {
                continue;
            }
            if entry.file_type()?.is_dir() { folders.push(path) } else { found.push(path) }
        }
    }
    found.sort();
    Ok(found)
}

/// A relative path as it stands in an address.
pub(crate) fn address(file: &Path) -> String {
    let parts: Vec<_> = file.iter().map(OsStr::to_string_lossy).collect();
    parts.join("/")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn constants_are_filled_in_once() {
        let script = "// Head.\nconst VERSION = \"\";\nconst ASSETS = [];\nuse(VERSION);\n";
        let script = with_constant(script, "VERSION", "\"1f\"").unwrap();
        let script = with_constant(&script, "ASSETS", "[\"./\"]").unwrap();
        assert_eq!(script, "// Head.\nconst VERSION = \"1f\";\nconst ASSETS = [\"./\"];\nuse(VERSION);\n");
        assert!(with_constant(&script, "OTHER", "1").is_err());
    }

    #[test]
    fn the_worker_in_the_sources_has_both_lines() {
        let worker = fs::read_to_string(workspace::www().join(WORKER)).unwrap();
        assert!(with_constant(&worker, "VERSION", "1").is_ok());
        assert!(with_constant(&worker, "ASSETS", "1").is_ok());
    }

    #[test]
    fn files_are_relative_sorted_and_visible() {
        let found = files(&workspace::root().join("pkg-scripts")).unwrap();
        assert!(found.is_sorted());
        assert!(found.contains(&PathBuf::from("src/main.rs")));
    }
}
