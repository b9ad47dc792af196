//! The built-in shelf's files, derived from their sources.

use std::fs;
use std::path::PathBuf;

use anyhow::{Context, Result, bail};
use lexopt::{Arg, Parser};
use washpath_library::{File, derive, files};

use crate::{Command, workspace};

pub(crate) const COMMAND: Command = Command {
    name: "library",
    summary: "derive the built-in shelf's files from their sources",
    help: "
  --check   compare with the files that are there instead of writing them

Writes shelf.csv, paints.tsv and spectra.bin of crate/core/data from the data in
crate/library.
",
    run,
};

/// Where the files go.
const DATA: &str = "crate/core/data";

fn run(words: &[String]) -> Result<()> {
    let mut words = Parser::from_args(words);
    match words.next()? {
        Some(Arg::Long("check")) => check(),
        Some(word) => Err(word.unexpected().into()),
        None => write(),
    }
}

/// Fails where a file is not what its sources give.
pub(crate) fn check() -> Result<()> {
    for File { name, bytes } in derived()? {
        let path = path(name);
        let there = fs::read(&path).with_context(|| format!("cannot read {}", path.display()))?;
        if let Some(line) = first_difference(&there, &bytes) {
            bail!(
                "line {line} of {DATA}/{name} is not what its sources give: run `library` and look at the change"
            );
        }
        println!("{DATA}/{name} is what its sources give");
    }
    Ok(())
}

fn write() -> Result<()> {
    for File { name, bytes } in derived()? {
        let path = path(name);
        fs::write(&path, bytes).with_context(|| format!("cannot write {}", path.display()))?;
        println!("wrote {}", path.display());
    }
    Ok(())
}

fn derived() -> Result<[File; 3]> {
    Ok(files(&derive()?)?)
}

fn path(name: &str) -> PathBuf {
    workspace::root().join(DATA).join(name)
}

/// Number of the first line, from 1, in which two files differ.
fn first_difference(a: &[u8], b: &[u8]) -> Option<usize> {
    if a == b {
        return None;
    }
    let end = |byte: &u8| *byte == b'\n';
    let same = a.split(end).zip(b.split(end)).take_while(|(a, b)| a == b).count();
    Some(same + 1)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_line_that_differs_is_told() {
        assert_eq!(first_difference(b"a\nb\n", b"a\nb\n"), None);
        assert_eq!(first_difference(b"a\nb\n", b"a\nc\n"), Some(2));
        assert_eq!(first_difference(b"a\n", b"a\nb\n"), Some(2));
        assert_eq!(first_difference(b"a\nb", b"a\nb\n"), Some(3));
    }
}
