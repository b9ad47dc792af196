//! Builds, packs, serves, tests and measures Washpath.
//!
//! `cargo run -p pkg-scripts -- COMMAND`. A command is a file of its name with
//! a [`Command`] in it; it takes the words after its name and says what went
//! wrong as an [`anyhow::Error`]. Commands call each other's parts and keep no
//! state but the files below `target`.

mod bench;
mod build;
mod bundle;
mod check;
mod dependencies;
mod evaluate;
mod facts;
mod fuzz;
mod library;
mod pack;
mod page;
mod process;
mod serve;
mod size;
mod start;
mod test;
mod tools;
mod watch;
mod workspace;

use std::process::ExitCode;

use anyhow::{Result, bail};

/// One thing this program does.
pub(crate) struct Command {
    /// The word that calls it.
    name: &'static str,
    /// One line for the list of commands.
    summary: &'static str,
    /// What `--help` prints below the summary.
    help: &'static str,
    /// Does it, given the words after the name.
    run: fn(&[String]) -> Result<()>,
}

const COMMANDS: [Command; 9] = [
    serve::COMMAND,
    build::COMMAND,
    pack::COMMAND,
    test::COMMAND,
    check::COMMAND,
    bench::COMMAND,
    fuzz::COMMAND,
    evaluate::COMMAND,
    library::COMMAND,
];

fn main() -> ExitCode {
    // Before anything is built; whoever needs it says what is wrong.
    let _ = workspace::program();
    let words: Vec<String> = std::env::args().skip(1).collect();
    match dispatch(&words) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("error: {error:#}");
            ExitCode::FAILURE
        }
    }
}

fn dispatch(words: &[String]) -> Result<()> {
    let Some((name, rest)) = words.split_first() else {
        print!("{}", overview());
        return Ok(());
    };
    if is_help(name) || name == "help" {
        print!("{}", overview());
        return Ok(());
    }
    let Some(command) = COMMANDS.iter().find(|command| command.name == name) else {
        bail!("no command \"{name}\"; --help lists them");
    };
    if rest.first().is_some_and(|word| is_help(word)) {
        println!("{}: {}\n\n{}", command.name, command.summary, command.help.trim());
        return Ok(());
    }
    (command.run)(rest)
}

fn is_help(word: &str) -> bool {
    word == "--help" || word == "-h"
}

fn overview() -> String {
    let mut text = String::from(
        "Builds, packs, serves, tests and measures Washpath.\n\n\
         cargo run -p pkg-scripts -- COMMAND [--help]\n\n",
    );
    for command in &COMMANDS {
        text += &format!("  {:<12} {}\n", command.name, command.summary);
    }
    text
}

/// Refuses words given to a command that takes none.
pub(crate) fn no_words(words: &[String]) -> Result<()> {
    match lexopt::Parser::from_args(words).next()? {
        Some(word) => Err(word.unexpected().into()),
        None => Ok(()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_command_is_listed_with_a_summary() {
        let text = overview();
        for command in &COMMANDS {
            assert!(text.contains(command.name) && text.contains(command.summary));
            assert!(!command.help.trim().is_empty(), "{} has no help", command.name);
        }
    }

    #[test]
    fn unknown_words_are_named() {
        let words = ["bild".to_owned()];
        let message = dispatch(&words).unwrap_err().to_string();
        assert!(message.contains("\"bild\""), "{message}");
        let words = ["build".to_owned(), "--fast".to_owned()];
        let message = dispatch(&words).unwrap_err().to_string();
        assert!(message.contains("--fast"), "{message}");
    }
}
