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
    run_tests(&mut node_tests(&browser)?, counts)
}

fn node_tests(browser: &Browser) -> Result<Process> {
    let folder = workspace::browser_tests();
    let mut names: Vec<OsString> = Vec::new();
    for entry in fs::read_dir(&folder)? {
        names.push(entry?.file_name());
    }
    names.retain(|name| name.to_string_lossy().ends_with(".test.js"));
    names.sort();
    let mut node = program("node", &folder);
    node.args(["--test", "--test-reporter=tap"]).args(names);
    node.env("CHROMIUM", &browser.chromium).env("PKG_SCRIPTS", workspace::program()?);
    Ok(node)
}
