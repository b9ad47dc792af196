//! The folder to host: the core as wasm, the page's files, the offline worker's list.

use std::env;
use std::ffi::OsStr;
use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};
use flate2::Crc;
use wasm_bindgen_cli_support::Bindgen;

use crate::page::Head;
use crate::process::{cargo, program, run};
use crate::{Command, bundle, facts, page, tools, workspace};

pub(crate) const COMMAND: Command = Command {
    name: "build",
    summary: "make target/site, the folder to host",
    help: "
Compiles the core for the browser, bundles scripts and style sheet beside it, and
gives the offline worker its list of files and version. The folder can be hosted
anywhere, below any path, over https.
",
    run: |words| {
        crate::no_words(words)?;
        build()
    },
};

/// The core's two downloads, each a feature of the border: for the page, and for the worker's questions.
pub(crate) const HALVES: [&str; 2] = ["studio", "adviser"];

/// Makes the folder anew; if that fails the last one stays.
pub(crate) fn build() -> Result<()> {
    let (sources, site) = (workspace::sources(), workspace::site());
    copy(&workspace::www(), &emptied(&sources)?, |_| true)?;
    halves()?;
    let fresh = emptied(&site.with_extension("new"))?;
    host(&sources, &fresh)?;
    if site.exists() {
        fs::remove_dir_all(&site).context("cannot remove target/site")?;
    }
    fs::rename(fresh, &site)?;
    println!("Hosted page: {}", site.display());
    Ok(())
}

/// Fills a folder with what is hosted.
fn host(sources: &Path, site: &Path) -> Result<()> {
    let modules = bundle::hosted(sources, site)?;
    copy(sources, site, |file| !bundle::is_read(file) && !is_glue(file))?;
    let (index, style) = (site.join(page::INDEX), site.join(bundle::STYLE));
    let head = Head { style: fs::read_to_string(&style)?, looks: bundle::script(sources, bundle::LOOKS)? };
    let html = page::with_head(&fs::read_to_string(&index)?, &head)?;
    fs::write(&index, page::with_preloads(&html, &modules)?)?;
    fs::remove_file(style)?;
    let (version, assets) = contents(site)?;
    bundle::offline(sources, site, &version, &assets)
}

/// Compiles the core's two halves beside the page's sources.
pub(crate) fn halves() -> Result<()> {
    let [studio, adviser] = HALVES;
    let folder = workspace::sources().join(CORE);
    compile(studio, studio, &SMALL, &folder)?;
    shrink(&wasm_of(&folder, studio))?;
    compile(adviser, adviser, &[], &folder)
}

/// Compiles both halves as one core beside other sources: what they share is there once. Answers its wasm.
pub(crate) fn whole(sources: &Path) -> Result<PathBuf> {
    let [studio, adviser] = HALVES;
    let folder = sources.join(CORE);
    compile(studio, &HALVES.join(","), &SMALL, &folder)?;
    let same = format!("export * from \"./{studio}.js\";\nexport {{ default }} from \"./{studio}.js\";\n");
    fs::write(folder.join(format!("{adviser}.js")), same)?;
    Ok(wasm_of(&folder, studio))
}

fn wasm_of(folder: &Path, name: &str) -> PathBuf {
    folder.join(format!("{name}_bg.wasm"))
}

/// Says the same wasm in fewer bytes, by Binaryen: what the compiler may use is what it may use too.
pub(crate) fn shrink(wasm: &Path) -> Result<()> {
    let packages = workspace::build_packages();
    tools::need_node_packages(&packages)?;
    let mut binaryen = program(packages.join("node_modules/.bin/wasm-opt"), &packages);
    let features = ["simd", "bulk-memory", "nontrapping-float-to-int", "sign-ext", "mutable-globals"]
        .iter()
        .chain(&["reference-types", "multivalue"])
        .map(|feature| format!("--enable-{feature}"));
    // Once more for what is known of all values after the first; sections that only tools read go.
    let ways = ["-Os", "--gufa-optimizing", "-Os", "--strip-producers", "--strip-target-features"];
    run(binaryen.args(ways).args(features).arg(wasm).arg("-o").arg(wasm))
}

/// The folder of the sources with the core in it.
const CORE: &str = "pkg";

/// The types of a half of the core, beside the page's sources: what the page's scripts are checked against.
pub(crate) fn types_of(half: &str) -> PathBuf {
    workspace::sources().join(CORE).join(format!("{half}.d.ts"))
}

/// Whether a file of the sources is a script of the core, or told to those who read one.
fn is_glue(file: &Path) -> bool {
    file.starts_with(CORE) && file.extension() != Some("wasm".as_ref())
}

/// A folder with nothing in it.
pub(crate) fn emptied(folder: &Path) -> Result<PathBuf> {
    if folder.exists() {
        fs::remove_dir_all(folder).with_context(|| format!("cannot empty {}", folder.display()))?;
    }
    fs::create_dir_all(folder)?;
    Ok(folder.to_owned())
}

/// Copies some of a folder's files into another; what was there of the same names is gone.
pub(crate) fn copy(from: &Path, to: &Path, counts: impl Fn(&Path) -> bool) -> Result<()> {
    for file in files(from)?.iter().filter(|file| counts(file)) {
        let copied = to.join(file);
        fs::create_dir_all(copied.parent().unwrap_or(to))?;
        fs::copy(from.join(file), copied)?;
    }
    Ok(())
}

/// What the last step of compiling is told to make a core small: only small functions are copied into their callers, and
/// loops of unknown length stay as written. Paths, sheets, reaches and partners take as long as before, and long searches
/// some 4 % longer; so it is for the half that waits at the door, and for the one file. Not
/// "s" or "z": they leave out vector code, and a reach takes twice as long.
const SMALL: [&str; 3] =
    ["-Copt-level=2", "-Cllvm-args=--inline-threshold=5", "-Cllvm-args=--unroll-runtime=false"];

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
///
/// Flags reach its own crate alone, so that what it is made of is compiled once for all cores.
fn compile(name: &str, features: &str, flags: &[&str], folder: &Path) -> Result<()> {
    tools::need_wasm_target()?;
    let words = ["rustc", "--locked", "--release", "--target", tools::WASM, "-p", "washpath-web", "--lib"];
    let mut rustc = cargo(&words);
    rustc
        .args(["--crate-type", "cdylib", "--no-default-features", "--features", features])
        .arg(short_paths()?);
    run(rustc.arg("--").args(flags))?;
    let wasm = workspace::cargo_target().join(tools::WASM).join("release/washpath_web.wasm");
    let mut bindgen = Bindgen::new();
    // The page says where the wasm is: in one file it has no address.
    bindgen.input_path(wasm).out_name(name).web(true)?.omit_default_module_path(true);
    bindgen.remove_name_section(true).remove_producers_section(true).typescript(true);
    bindgen.generate(folder).context("cannot bind the compiled core")?;
    fs::write(folder.join(facts::FILE), facts::module()).context("cannot write the core's facts")
}

/// The site's version, told by all its bytes, and the addresses of what the page may ask for.
fn contents(site: &Path) -> Result<(String, Vec<String>)> {
    let mut crc = Crc::new();
    let mut assets = vec!["./".to_owned()];
    for file in files(site)?.iter().filter(|file| !bundle::is_map(file)) {
        let name = address(file);
        crc.update(name.as_bytes());
        crc.update(&fs::read(site.join(file))?);
        if name != page::INDEX {
            assets.push(format!("./{name}"));
        }
    }
    Ok((format!("{:08x}", crc.sum()), assets))
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
    fn files_are_relative_sorted_and_visible() {
        let found = files(&workspace::root().join("pkg-scripts")).unwrap();
        assert!(found.is_sorted());
        assert!(found.contains(&PathBuf::from("src/main.rs")));
    }
}
