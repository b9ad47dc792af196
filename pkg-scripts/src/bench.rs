//! How fast the core is, against the budgets.

use anyhow::{Result, bail};

use crate::Command;

pub(crate) const COMMAND: Command = Command {
    name: "bench",
    summary: "measure speed and size against the budgets",
    help: "
Compiles the core as it ships and prints a table of figures and budgets.
",
    run: |_| run(),
};

fn run() -> Result<()> {
    bail!("the core has nothing to measure yet")
}
