//! Scripts, style sheet and page without what only readers need: comments, spaces, long local names.
//!
//! Each module stays a module of its own, with the names it exports.

mod style;

use std::ffi::OsStr;
use std::fs;
use std::path::Path;

use anyhow::{Context, Result, bail};
use oxc_allocator::Allocator;
use oxc_codegen::{Codegen, CodegenOptions};
use oxc_minifier::{CompressOptions, MangleOptions, Minifier, MinifierOptions};
use oxc_parser::Parser;
use oxc_span::SourceType;

/// Rewrites a file in fewer bytes, if it is of a kind that has some to spare.
pub(crate) fn file(path: &Path) -> Result<()> {
    let small = match path.extension().and_then(OsStr::to_str) {
        Some("js") => script,
        Some("css") => style::sheet,
        Some("html") => |source: &str| Ok(page(source)),
        _ => return Ok(()),
    };
    let source = fs::read_to_string(path).with_context(|| format!("cannot read {}", path.display()))?;
    let small = small(&source).with_context(|| format!("cannot minify {}", path.display()))?;
    Ok(fs::write(path, small)?)
}

/// The same page without indents and empty lines. A break between two elements stays: between words it is a space.
/// The page has no text whose lines count, as in `pre`.
fn page(source: &str) -> String {
    let lines = source.lines().map(str::trim).filter(|line| !line.is_empty());
    lines.collect::<Vec<_>>().join("\n") + "\n"
}

/// The same module in fewer bytes.
pub(crate) fn script(source: &str) -> Result<String> {
    let allocator = Allocator::default();
    let mut parsed = Parser::new(&allocator, source, SourceType::mjs()).parse();
    if let Some(error) = parsed.errors.first() {
        bail!("{error}");
    }
    let options = MinifierOptions {
        mangle: Some(MangleOptions { top_level: true, ..MangleOptions::default() }),
        compress: Some(CompressOptions::smallest()),
    };
    let minified = Minifier::new(options).minify(&allocator, &mut parsed.program);
    let codegen = Codegen::new().with_options(CodegenOptions::minify()).with_scoping(minified.scoping);
    Ok(codegen.build(&parsed.program).code)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_module_keeps_what_it_imports_and_exports() {
        let source = "// Words.\nimport { one } from \"./one.js\";\n\nexport const sum = (first, second) => {\n  const all = first + second;\n  return all * one;\n};\n";
        let small = script(source).unwrap();
        assert!(small.len() < source.len() / 2, "{small}");
        assert!(
            small.contains("\"./one.js\"") && small.contains("sum") && !small.contains("Words"),
            "{small}"
        );
    }

    #[test]
    fn a_page_keeps_a_break_between_words() {
        let source = "<p>\n  <b>one</b>\n\n  <i>two</i> three\n</p>\n";
        assert_eq!(page(source), "<p>\n<b>one</b>\n<i>two</i> three\n</p>\n");
    }

    #[test]
    fn what_is_no_script_is_an_error() {
        assert!(script("export const =").is_err());
    }
}
