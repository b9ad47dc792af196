//! The built-in shelf's table, derived from its sources.

use std::fs;
use std::path::PathBuf;

use anyhow::{Context, Result, bail};
use lexopt::{Arg, Parser};

use crate::{Command, workspace};

pub(crate) const COMMAND: Command = Command {
    name: "library",
    summary: "derive the built-in shelf's table from its sources",
    help: "
  --check   compare with the table that is there instead of writing it

Writes crate/core/data/shelf.csv from the data in crate/library.
",
    run,
};

fn run(words: &[String]) -> Result<()> {
    let mut words = Parser::from_args(words);
    match words.next()? {
        Some(Arg::Long("check")) => check(),
        Some(word) => Err(word.unexpected().into()),
        None => write(),
    }
}

/// Fails where the table is not what its sources give.
pub(crate) fn check() -> Result<()> {
    let file = file();
    let there = fs::read_to_string(&file).with_context(|| format!("cannot read {}", file.display()))?;
    let derived = washpath_library::shelf_csv()?;
    if let Some(line) = first_difference(&there, &derived) {
        bail!(
            "line {line} of crate/core/data/shelf.csv is not what its sources give: run `library` and look at the change"
        );
    }
    println!("crate/core/data/shelf.csv is what its sources give");
    Ok(())
}

fn write() -> Result<()> {
    let file = file();
    fs::write(&file, washpath_library::shelf_csv()?)
        .with_context(|| format!("cannot write {}", file.display()))?;
    println!("wrote {}", file.display());
    Ok(())
}

fn file() -> PathBuf {
    workspace::root().join("crate/core/data/shelf.csv")
}

/// Number of the first line, from 1, in which two texts differ.
fn first_difference(a: &str, b: &str) -> Option<usize> {
    if a == b {
        return None;
    }
    let same = a.split('\n').zip(b.split('\n')).take_while(|(a, b)| a == b).count();
    Some(same + 1)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_line_that_differs_is_told() {
        assert_eq!(first_difference("a\nb\n", "a\nb\n"), None);
        assert_eq!(first_difference("a\nb\n", "a\nc\n"), Some(2));
        assert_eq!(first_difference("a\n", "a\nb\n"), Some(2));
        assert_eq!(first_difference("a\nb", "a\nb\n"), Some(3));
    }
}
