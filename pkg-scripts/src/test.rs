//! Every test there is.

use std::env;
use std::ffi::OsString;
use std::fs;
use std::process::{self, Command as Process};

use anyhow::{Result, bail};

use crate::process::{Counts, cargo, program, run as run_program, run_tests};
use crate::tools::{self, Browser};
use crate::{Command, build, fuzz, pack, workspace};

pub(crate) const COMMAND: Command = Command {
    name: "test",
    summary: "run every test: native, fuzzed, wasm in Chromium, and the built page in Chromium",
    help: "
Installs what it lacks where it can: rustc's wasm target, the browser tests'
npm packages, and on Debian, as root, Chromium and its driver. A failure does
not stop the other tests. The last lines are the runners' own counts and their
sum.
",
    run,
};

fn run(words: &[String]) -> Result<()> {
    crate::no_words(words)?;
    let mut tally = Tally::default();
    tally.step("Native tests", native);
    tally.step("Spoilt texts and bytes", fuzzed);
    tally.step("Wasm tests in headless Chromium", wasm);
    tally.step("The page, hosted and packed", |_| build::build().and_then(|()| pack::pack()));
    tally.step("Browser tests of the built page", browser);
    if tally.finish() > 0 {
        // Not as an error: its message would come after the counts.
        process::exit(1);
    }
    Ok(())
}

/// Counts over all steps, and the steps that could not count.
#[derive(Default)]
struct Tally {
    counts: Counts,
    broken: Vec<String>,
}

impl Tally {
    fn step(&mut self, title: &str, run: impl FnOnce(&mut Counts) -> Result<()>) {
        println!("\n== {title} ==\n");
        if let Err(error) = run(&mut self.counts) {
            let line = format!("{title}: {error:#}");
            eprintln!("error: {line}");
            self.broken.push(line);
        }
    }

    /// Prints all counts, the sum last; answers how many failed.
    fn finish(self) -> usize {
        println!("\n== Counts ==\n");
        for line in self.broken.iter().chain(&self.counts.lines) {
            println!("{line}");
        }
        let failed = self.counts.failed as usize + self.broken.len();
        println!("{} passed, {failed} failed", self.counts.passed);
        failed
    }
}

/// What proptest takes its random numbers from.
const SEED: &str = "PROPTEST_RNG_SEED";

fn native(counts: &mut Counts) -> Result<()> {
    let mut tests = cargo(&["test", "--locked", "--workspace", "--no-fail-fast"]);
    // Property tests draw the same cases on every machine; `cargo test` by hand draws new ones.
    if env::var_os(SEED).is_none() {
        tests.env(SEED, "1");
    }
    run_tests(&mut tests, counts)
}

/// Fragments of every test run: a second's worth.
const FRAGMENTS: u64 = 20_000;

fn fuzzed(counts: &mut Counts) -> Result<()> {
    fuzz::fuzz(FRAGMENTS, 1)?;
    counts.passed += 1;
    Ok(())
}

/// The program of this package that runs wasm tests; compiled here, as nothing else needs it.
const TEST_RUNNER: &str = "wasm-test-runner";

fn wasm(counts: &mut Counts) -> Result<()> {
    tools::need_wasm_target()?;
    let browser = tools::need_browser()?;
    let words = ["build", "--locked", "-p", "pkg-scripts", "--features", "test-runner", "--bin", TEST_RUNNER];
    run_program(&mut cargo(&words))?;
    let program = workspace::program()?.with_file_name(TEST_RUNNER);
    // As a list, so that a folder's name may hold a space.
    let runner = format!("target.{}.runner=[{:?}]", tools::WASM, program.display().to_string());
    let mut tests = cargo(&["test", "--locked", "--no-fail-fast", "--lib", "--tests"]);
    tests.args(["--target", tools::WASM, "-p", "washpath-web", "--config", &runner]);
    run_tests(tests.env("CHROMEDRIVER", browser.driver), counts)
}

fn browser(counts: &mut Counts) -> Result<()> {
    tools::need_node_packages(&workspace::browser_tests())?;
    let browser = tools::need_browser()?;
    if !workspace::packed().exists() {
        bail!("there is no built page to test");
    }
    let mut first = Counts::default();
    run_tests(&mut node_tests(&browser, &files()?)?, &mut first)?;
    if (1..=MOST_TRIED_AGAIN).contains(&first.failed) && !first.failed_files.is_empty() {
        first = tried_again(&browser, first)?;
    }
    counts.passed += first.passed;
    counts.failed += first.failed;
    counts.lines.append(&mut first.lines);
    Ok(())
}

/// Up to so many failed browser tests are tried once more.
///
/// They share two cores with others; what a busy machine made late passes alone. What passed only
/// the second time is named, as it has a fault of its own: it does not wait for what it needs.
const MOST_TRIED_AGAIN: u32 = 4;

fn tried_again(browser: &Browser, first: Counts) -> Result<Counts> {
    let files: Vec<OsString> = first.failed_files.iter().map(OsString::from).collect();
    println!("\n== Tried again alone: {} ==\n", files_said(&first));
    let mut again = Counts::default();
    run_tests(&mut node_tests(browser, &files)?, &mut again)?;
    if again.failed > 0 {
        return Ok(first);
    }
    let mut lines = vec![format!(
        "tried again: {} failed at first and passed alone, in {}",
        first.failed,
        files_said(&first)
    )];
    lines.append(&mut again.lines);
    Ok(Counts { passed: first.passed + first.failed, failed: 0, lines, ..first })
}

fn files_said(counts: &Counts) -> String {
    Vec::from_iter(counts.failed_files.iter().cloned()).join(", ")
}

/// Every file of browser tests, by name.
fn files() -> Result<Vec<OsString>> {
    let mut names: Vec<OsString> = Vec::new();
    for entry in fs::read_dir(workspace::browser_tests())? {
        names.push(entry?.file_name());
    }
    names.retain(|name| name.to_string_lossy().ends_with(".test.js"));
    names.sort();
    Ok(names)
}

fn node_tests(browser: &Browser, files: &[OsString]) -> Result<Process> {
    let mut node = program("node", &workspace::browser_tests());
    node.args(["--test", "--test-reporter=tap"]).args(files);
    node.env("CHROMIUM", &browser.chromium).env("PKG_SCRIPTS", workspace::program()?);
    Ok(node)
}
