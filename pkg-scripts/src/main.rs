//! Builds, packs, serves, tests and measures Washpath.
fn main() {}
