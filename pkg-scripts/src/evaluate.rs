//! How well the model predicts, measured against data it was not fitted to.

use anyhow::{Result, bail};

use crate::Command;

pub(crate) const COMMAND: Command = Command {
    name: "evaluate",
    summary: "measure the model's errors against open measurements",
    help: "
Names the measurement to evaluate. There is none yet.
",
    run,
};

fn run(_words: &[String]) -> Result<()> {
    bail!("there is no measurement to evaluate yet")
}
