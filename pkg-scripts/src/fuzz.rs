//! The core's readers against texts and bytes nobody would write.

use anyhow::Result;
use lexopt::{Arg, Parser, ValueExt};

use crate::Command;
use crate::process::{cargo, run as run_program};

pub(crate) const COMMAND: Command = Command {
    name: "fuzz",
    summary: "feed the core's readers with random and spoilt texts and bytes",
    help: "
  --count N   fragments, 1000000 if not said
  --seed S    what they are drawn from, 1 if not said; one seed always gives the same

Links, colours, logs, measurements (CSV and CGATS), shelves and pictures, in
release. Prints the count and the slowest; fails where a reader panics or takes
over 50 ms, and names the fragment.
",
    run,
};

fn run(words: &[String]) -> Result<()> {
    let (mut count, mut seed) = (1_000_000, 1);
    let mut words = Parser::from_args(words);
    while let Some(word) = words.next()? {
        match word {
            Arg::Long("count") => count = words.value()?.parse()?,
            Arg::Long("seed") => seed = words.value()?.parse()?,
            _ => return Err(word.unexpected().into()),
        }
    }
    fuzz(count, seed)
}

/// Runs so many fragments of a seed.
pub(crate) fn fuzz(count: u64, seed: u64) -> Result<()> {
    let words = ["run", "--locked", "--release", "--quiet", "-p", "washpath-core", "--example", "fuzz", "--"];
    run_program(cargo(&words).args([count.to_string(), seed.to_string()]))
}
