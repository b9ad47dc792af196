//! The built-in shelf's table, derived from its sources.

use anyhow::{Result, bail};

use crate::Command;

pub(crate) const COMMAND: Command = Command {
    name: "library",
    summary: "derive the built-in shelf's table from its sources",
    help: "
  --check   compare with the table that is there instead of writing it
",
    run: |_| check(),
};

/// Fails where the table is not what its sources give.
pub(crate) fn check() -> Result<()> {
    bail!("the shelf is not derived yet")
}
