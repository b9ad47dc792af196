//! What is not a test but must hold: form, lints, documents, derived data.

use std::error::Error;
use std::fmt;
use std::process::Command as Process;

use anyhow::{Result, bail};

use crate::process::{cargo, program, run};
use crate::{Command, build, dependencies, library, tools, workspace};

pub(crate) const COMMAND: Command = Command {
    name: "check",
    summary: "check form, lints, documents, derived data and dependencies",
    help: "
Runs rustfmt, clippy for this machine and for the browser, Biome for the page's
scripts and styles, TypeScript for the types that its scripts tell in comments,
rustdoc, all with warnings as errors; compares the shelf's table with what its
sources give; holds dependencies to pkg-scripts/deny.toml and asks what is known
against them. What needs cargo-deny or a network that is not there is skipped,
and the counts say so. A failure does not stop the other checks.
",
    run: check,
};

/// Why a check cannot be made on this machine: no failure, but said and counted.
#[derive(Debug)]
pub(crate) struct Skipped(pub(crate) String);

impl fmt::Display for Skipped {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.0)
    }
}

impl Error for Skipped {}

type Check = fn() -> Result<()>;

fn check(words: &[String]) -> Result<()> {
    crate::no_words(words)?;
    let checks: [(&str, Check); 12] = [
        ("Form", form),
        ("Lints, this machine", || lint(&["--workspace", "--all-targets"])),
        ("Lints, browser", || lint(&["--target", tools::WASM, "-p", "washpath-web", "--all-targets"])),
        ("Lints, the core's halves", || build::HALVES.iter().try_for_each(|half| lint_half(half))),
        ("The page's form and lints", page),
        ("The page's types", types),
        ("Documents", documents),
        ("The shelf's table", library::check),
        ("Licences", dependencies::licences),
        ("Rules for crates", dependencies::rules),
        ("Advisories on crates", dependencies::advisories),
        ("Advisories on npm packages", dependencies::audit),
    ];
    let mut failed = Vec::new();
    let mut skipped = 0;
    for (title, run) in checks {
        println!("\n== {title} ==\n");
        match run() {
            Ok(()) => {}
            Err(error) if error.is::<Skipped>() => {
                println!("skipped: {error}");
                skipped += 1;
            }
            Err(error) => {
                eprintln!("error: {error:#}");
                failed.push(title);
            }
        }
    }
    let passed = checks.len() - failed.len() - skipped;
    println!("\n{passed} checks passed, {} failed, {skipped} skipped", failed.len());
    if failed.is_empty() { Ok(()) } else { bail!("failed: {}", failed.join("; ")) }
}

fn form() -> Result<()> {
    tools::need_component("fmt", "rustfmt")?;
    run(&mut cargo(&["fmt", "--all", "--check"]))
}

fn lint(what: &[&str]) -> Result<()> {
    tools::need_component("clippy", "clippy")?;
    tools::need_wasm_target()?;
    let mut clippy: Process = cargo(&["clippy", "--locked", "--quiet"]);
    run(clippy.args(what).args(["--", "-D", "warnings"]))
}

/// Form and lints of the page's scripts and style sheets, and of its tests, as `biome.json` has them.
fn page() -> Result<()> {
    let packages = workspace::build_packages();
    tools::need_node_packages(&packages)?;
    let mut biome = program(packages.join("node_modules/.bin/biome"), workspace::root());
    run(biome.args(["ci", "--error-on-warnings", "--colors=off"]))
}

/// The types of the page's scripts and of the offline worker.
fn types() -> Result<()> {
    let packages = workspace::build_packages();
    tools::need_node_packages(&packages)?;
    if !build::HALVES.iter().all(|half| build::types_of(half).exists()) {
        build::halves()?;
    }
    for project in [".", "tsconfig.offline.json"] {
        let mut tsc = program(packages.join("node_modules/.bin/tsc"), workspace::root());
        run(tsc.args(["--project", project, "--pretty", "false"]))?;
    }
    Ok(())
}

fn lint_half(feature: &str) -> Result<()> {
    lint(&["--target", tools::WASM, "-p", "washpath-web", "--no-default-features", "--features", feature])
}

fn documents() -> Result<()> {
    let mut doc = cargo(&["doc", "--locked", "--quiet", "--workspace", "--no-deps"]);
    run(doc.env("RUSTDOCFLAGS", "-D warnings"))
}
