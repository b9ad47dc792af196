//! The program cargo calls for each file of wasm tests: it runs them in headless Chromium.
//!
//! Its words are the compiled tests and a part of the names to run; `CHROMEDRIVER`
//! names the browser's driver. `pkg-scripts test` sets it all up.

fn main() -> anyhow::Result<()> {
    wasm_bindgen_cli::wasm_bindgen_test_runner::run_cli_with_args(std::env::args())
}
