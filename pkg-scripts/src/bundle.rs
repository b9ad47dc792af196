//! Bundles: scripts and style sheets joined, split and minified by esbuild.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;
use std::process::Command;

use anyhow::{Context, Result};
use serde_json::Value;

use crate::page::Head;
use crate::process::{output, program, run};
use crate::{tools, workspace};

/// The module the page starts with.
pub(crate) const FIRST: &str = "js/main.js";

/// The script that decides how the first picture looks.
pub(crate) const LOOKS: &str = "js/looks.js";

/// The module the page's worker starts with.
pub(crate) const ADVISER: &str = "js/worker.js";

/// The style sheet.
pub(crate) const STYLE: &str = "style.css";

/// The offline worker; the bundle gives it two words of its own, `VERSION` and `ASSETS`.
pub(crate) const OFFLINE: &str = "sw.js";

/// Bundles the page to be hosted, with source maps. Answers the modules that the first one cannot start without.
///
/// What is imported later is a file of its own, and so is what both share. The worker shares nothing with the page.
pub(crate) fn hosted(sources: &Path, site: &Path) -> Result<Vec<String>> {
    let told = workspace::root().join("target/bundle.json");
    let mut page = esbuild(site)?;
    page.args([FIRST, STYLE].map(|name| sources.join(name))).arg(format!("--outbase={}", sources.display()));
    // Letters stay files beside the style sheet.
    page.args(["--splitting", "--chunk-names=js/[name]-[hash]", "--external:./fonts/*"]);
    run(page.args(["--sourcemap", "--outdir=."]).arg(format!("--metafile={}", told.display())))?;
    run(esbuild(site)?.arg(sources.join(ADVISER)).args(["--sourcemap", "--outdir=js"]))?;
    let told = fs::read(&told).context("esbuild did not say what it made")?;
    at_once(&serde_json::from_slice(&told)?, FIRST)
}

/// A script and all that it imports, now or later, as one text.
pub(crate) fn script(sources: &Path, name: &str) -> Result<String> {
    output(esbuild(sources)?.arg(name))
}

/// What the page that is one file has in its head; the letters are in its style sheet.
pub(crate) fn head(sources: &Path) -> Result<Head> {
    let style = output(esbuild(sources)?.args([STYLE, "--loader:.woff2=dataurl"]))?;
    Ok(Head { style, looks: script(sources, LOOKS)? })
}

/// Writes the offline worker, which keeps `assets` under the name of their version.
pub(crate) fn offline(sources: &Path, site: &Path, version: &str, assets: &[String]) -> Result<()> {
    let mut esbuild = esbuild(sources)?;
    esbuild.args([OFFLINE, "--sourcemap"]).arg(format!("--outfile={}", site.join(OFFLINE).display()));
    run(esbuild.arg(format!("--define:VERSION={version:?}")).arg(format!("--define:ASSETS={assets:?}")))
}

fn esbuild(folder: &Path) -> Result<Command> {
    let packages = workspace::build_packages();
    tools::need_node_packages(&packages)?;
    let mut esbuild = program(packages.join("node_modules/.bin/esbuild"), folder);
    esbuild.args(["--bundle", "--minify", "--format=esm", "--target=es2022", "--log-level=warning"]);
    Ok(esbuild)
}

/// What a bundled module cannot start without, by the names esbuild gives its outputs.
fn at_once(told: &Value, first: &str) -> Result<Vec<String>> {
    let mut found = BTreeSet::new();
    let mut waiting = vec![first.to_owned()];
    while let Some(name) = waiting.pop() {
        let imports = told["outputs"][&name]["imports"].as_array();
        for import in imports.with_context(|| format!("esbuild made no {name}"))? {
            let path = import["path"].as_str().unwrap_or_default().to_owned();
            if import["kind"] == "import-statement" && found.insert(path.clone()) {
                waiting.push(path);
            }
        }
    }
    Ok(found.into_iter().collect())
}

/// Whether a file only helps to read another.
pub(crate) fn is_map(file: &Path) -> bool {
    file.extension().is_some_and(|extension| extension == "map")
}

/// Whether a source is read by esbuild, node or people alone, so that it is not to be copied.
pub(crate) fn is_read(source: &Path) -> bool {
    ["js", "css"].iter().any(|folder| source.starts_with(folder))
        || [STYLE, OFFLINE, "package.json", "README.md"].iter().any(|name| source == Path::new(name))
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::*;

    #[test]
    fn what_is_imported_later_can_wait() {
        let told = json!({ "outputs": {
            "js/main.js": { "imports": [
                { "path": "js/shared.js", "kind": "import-statement" },
                { "path": "js/later.js", "kind": "dynamic-import" },
            ] },
            "js/shared.js": { "imports": [{ "path": "js/deep.js", "kind": "import-statement" }] },
            "js/deep.js": { "imports": [] },
            "js/later.js": { "imports": [{ "path": "js/shared.js", "kind": "import-statement" }] },
        } });
        assert_eq!(at_once(&told, "js/main.js").unwrap(), ["js/deep.js", "js/shared.js"]);
        assert!(at_once(&told, "js/other.js").is_err());
    }

    #[test]
    fn what_esbuild_reads_is_not_copied() {
        for read in ["js/main.js", "css/page.css", "style.css", "sw.js", "package.json", "README.md"] {
            assert!(is_read(Path::new(read)), "{read}");
        }
        for copied in ["icon.svg", "fonts/OFL.txt", "kit-file.schema.json"] {
            assert!(!is_read(Path::new(copied)), "{copied}");
        }
    }
}
