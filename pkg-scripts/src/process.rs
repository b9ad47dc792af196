//! Other programs: run them, show what they say, count the tests they report.

use std::collections::BTreeSet;
use std::env;
use std::ffi::OsStr;
use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Command, Stdio};

use anyhow::{Context, Result, bail};

use crate::workspace;

/// `cargo`, the one that runs this program, at the root.
pub(crate) fn cargo(words: &[&str]) -> Command {
    let mut command = program(env::var_os("CARGO").unwrap_or_else(|| "cargo".into()), workspace::root());
    command.args(words);
    command
}

/// A program to be run in a folder.
pub(crate) fn program(name: impl AsRef<OsStr>, folder: &Path) -> Command {
    let mut command = Command::new(name);
    command.current_dir(folder);
    command
}

/// Runs a program to its end; an error names it.
pub(crate) fn run(command: &mut Command) -> Result<()> {
    let name = name(command);
    let status = command.status().with_context(|| format!("cannot start {name}"))?;
    if !status.success() {
        bail!("{name} failed ({status})");
    }
    Ok(())
}

/// Runs a program to its end and answers what it printed; what it complains of is shown.
pub(crate) fn output(command: &mut Command) -> Result<String> {
    let name = name(command);
    let output = command.stderr(Stdio::inherit()).output().with_context(|| format!("cannot start {name}"))?;
    if !output.status.success() {
        bail!("{name} failed ({})", output.status);
    }
    String::from_utf8(output.stdout).with_context(|| format!("{name} printed what is no text"))
}

/// Whether a program can be started and then succeeds; its output is dropped.
pub(crate) fn succeeds(command: &mut Command) -> bool {
    let quiet = command.stdin(Stdio::null()).stdout(Stdio::null()).stderr(Stdio::null());
    quiet.status().is_ok_and(|status| status.success())
}

fn name(command: &Command) -> String {
    let program = Path::new(command.get_program()).file_name().unwrap_or_default().to_string_lossy();
    match command.get_args().next() {
        Some(word) => format!("{program} {}", word.to_string_lossy()),
        None => program.into_owned(),
    }
}

/// What test runners reported.
#[derive(Debug, Default, PartialEq, Eq)]
pub(crate) struct Counts {
    /// Tests that passed.
    pub(crate) passed: u32,
    /// Tests that failed, or were cancelled.
    pub(crate) failed: u32,
    /// The runners' own lines with these counts, and with how many were skipped.
    pub(crate) lines: Vec<String>,
    /// The files of tests that failed, by name; node's runner alone tells them.
    pub(crate) failed_files: BTreeSet<String>,
}

impl Counts {
    /// Reads one line of a runner's output: libtest's, or node's in TAP form.
    fn read(&mut self, line: &str) {
        if let Some(result) = line.strip_prefix("test result: ") {
            self.passed += number_before(result, " passed");
            self.failed += number_before(result, " failed");
        } else if let Some(count) = line.strip_prefix("# pass ") {
            self.passed += count.trim().parse().unwrap_or(0);
        } else if let Some(count) = line.strip_prefix("# fail ").or_else(|| line.strip_prefix("# cancelled "))
        {
            self.failed += count.trim().parse().unwrap_or(0);
        } else if !line.starts_with("# skipped ") || line.ends_with(" 0") {
            self.failed_files.extend(failed_file(line));
            return;
        }
        self.lines.push(line.to_owned());
    }
}

/// The file in `location: '/folder/name.test.js:66:3'`, which node's runner prints of a failed test.
fn failed_file(line: &str) -> Option<String> {
    let place = line.trim_start().strip_prefix("location: '")?;
    let (path, _) = place.split_once(".js:")?;
    Some(format!("{}.js", Path::new(path).file_name()?.to_string_lossy()))
}

fn number_before(text: &str, word: &str) -> u32 {
    let before = text.split(word).next().unwrap_or_default();
    before.rsplit(' ').next().and_then(|number| number.parse().ok()).unwrap_or(0)
}

/// Runs a test runner, passes its output on and adds its counts to `counts`.
///
/// An error only where the runner itself could not be run: failed tests are
/// in the counts.
pub(crate) fn run_tests(command: &mut Command, counts: &mut Counts) -> Result<()> {
    let name = name(command);
    let failed_before = counts.failed;
    let mut child = command.stdout(Stdio::piped()).spawn().with_context(|| format!("cannot start {name}"))?;
    let output = child.stdout.take().context("the runner has no output")?;
    for line in BufReader::new(output).split(b'\n') {
        let line = line?;
        let line = String::from_utf8_lossy(&line);
        println!("{line}");
        counts.read(&line);
    }
    let status = child.wait()?;
    if !status.success() && counts.failed == failed_before {
        bail!("{name} stopped before it could count ({status})");
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn counts_are_read_from_both_runners() {
        let mut counts = Counts::default();
        // Lines as cargo 1.95 and node 20.20 print them.
        counts.read("test result: FAILED. 12 passed; 2 failed; 0 ignored; 0 measured; 0 filtered out; finished in 0.02s");
        counts.read(
            "test result: ok. 1 passed; 0 failed; 0 ignored; 0 measured; 3 filtered out; finished in 0.00s",
        );
        counts.read("# tests 9");
        counts.read("# pass 5");
        counts.read("# fail 3");
        counts.read("# cancelled 1");
        counts.read("# skipped 10");
        counts.read("# skipped 0");
        counts.read("test layer::passes ... ok");
        counts.read("  location: '/a folder/tests/view.test.js:66:3'");
        assert_eq!(counts.failed_files, BTreeSet::from(["view.test.js".to_owned()]));
        assert_eq!((counts.passed, counts.failed, counts.lines.len()), (18, 6, 6));
    }

    #[test]
    fn a_runner_that_stops_early_is_an_error() {
        let mut command = program("sh", workspace::root());
        let mut counts = Counts::default();
        let error = run_tests(command.args(["-c", "exit 3"]), &mut counts).unwrap_err();
        assert!(error.to_string().contains("sh -c"), "{error}");
        assert_eq!(counts, Counts::default());
    }

    #[test]
    fn failed_tests_are_counted_and_no_error() {
        let mut command = program("sh", workspace::root());
        let mut counts = Counts::default();
        run_tests(command.args(["-c", "echo '# pass 1'; echo '# fail 2'; exit 1"]), &mut counts).unwrap();
        assert_eq!((counts.passed, counts.failed), (1, 2));
    }
}
