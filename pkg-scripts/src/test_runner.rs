//! The program cargo calls for each file of wasm tests.

use std::env;

use wasm_bindgen_cli::wasm_bindgen_test_runner;

use crate::Command;

pub(crate) const COMMAND: Command = Command {
    name: "test-runner",
    summary: "run one compiled file of wasm tests in headless Chromium (cargo calls this)",
    help: "
  FILE [FILTER]   the compiled tests, and a part of the names to run

Needs CHROMEDRIVER to name the browser's driver. `test` sets it all up.
",
    run: |words| {
        let program = env::args().next().unwrap_or_default();
        wasm_bindgen_test_runner::run_cli_with_args([program].into_iter().chain(words.iter().cloned()))
    },
};
