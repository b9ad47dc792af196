//! What is not a test but must hold: form, lints, documents, derived data.

use std::process::Command as Process;

use anyhow::{Result, bail};

use crate::process::{cargo, run};
use crate::{Command, build, library, tools};

pub(crate) const COMMAND: Command = Command {
    name: "check",
    summary: "check form, lints, documents and derived data",
    help: "
Runs rustfmt, clippy for this machine and for the browser, rustdoc, all with
warnings as errors, and compares the shelf's table with what its sources give.
A failure does not stop the other checks.
",
    run: check,
};

type Check = fn() -> Result<()>;

fn check(words: &[String]) -> Result<()> {
    crate::no_words(words)?;
    let checks: [(&str, Check); 6] = [
        ("Form", form),
        ("Lints, this machine", || lint(&["--workspace", "--all-targets"])),
        ("Lints, browser", || lint(&["--target", tools::WASM, "-p", "washpath-web", "--all-targets"])),
        ("Lints, the core's halves", || build::HALVES.iter().try_for_each(|half| lint_half(half))),
        ("Documents", documents),
        ("The shelf's table", library::check),
    ];
    let mut failed = Vec::new();
    for (title, run) in checks {
        println!("\n== {title} ==\n");
        if let Err(error) = run() {
            eprintln!("error: {error:#}");
            failed.push(title);
        }
    }
    println!("\n{} checks passed, {} failed", checks.len() - failed.len(), failed.len());
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

fn lint_half(feature: &str) -> Result<()> {
    lint(&["--target", tools::WASM, "-p", "washpath-web", "--no-default-features", "--features", feature])
}

fn documents() -> Result<()> {
    let mut doc = cargo(&["doc", "--locked", "--quiet", "--workspace", "--no-deps"]);
    run(doc.env("RUSTDOCFLAGS", "-D warnings"))
}
