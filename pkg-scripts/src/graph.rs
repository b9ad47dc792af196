//! The page's modules, from its first one on, under names that need no address.
//!
//! A module inside a `data:` address cannot import relative to itself. So each
//! relative name is rewritten to a bare one (`app/js/wheel.js`), which an
//! import map then gives an address. A worker has no import map: a module that
//! is only asked for its address, `import.meta.resolve("./x.js")`, is taken
//! along but must not import anything.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use anyhow::{Context, Result, bail};

/// Modules by their path below the site, sources rewritten.
pub(crate) type Modules = BTreeMap<String, String>;

/// Words before a quoted name that make it a module's name.
const IMPORTING: [&str; 3] = ["from", "import", "import("];
const RESOLVING: &str = "import.meta.resolve(";

/// The name a module has in the import map.
pub(crate) fn bare(path: &str) -> String {
    format!("app/{path}")
}

/// Reads a module and all it names.
pub(crate) fn read(site: &Path, first: &str) -> Result<Modules> {
    let mut modules = Modules::new();
    let mut waiting = vec![(first.to_owned(), false)];
    let mut alone = Vec::new();
    while let Some((path, resolved)) = waiting.pop() {
        if resolved {
            alone.push(path.clone());
        }
        if modules.contains_key(&path) {
            continue;
        }
        let source =
            fs::read_to_string(site.join(&path)).with_context(|| format!("cannot read module {path}"))?;
        let rewritten = rewrite(&source, |name, resolved| {
            let named = join(&path, name)?;
            let bare = bare(&named);
            waiting.push((named, resolved));
            Ok(bare)
        })?;
        modules.insert(path, rewritten);
    }
    for path in alone {
        let source = fs::read_to_string(site.join(&path))?;
        rewrite(&source, |name, _| {
            bail!("{path} is asked for by address and so must not import \"{name}\"")
        })?;
    }
    Ok(modules)
}

/// Gives every relative name the text `rename` answers; the flag says that only its address is asked for.
fn rewrite(source: &str, mut rename: impl FnMut(&str, bool) -> Result<String>) -> Result<String> {
    let mut out = String::with_capacity(source.len());
    let mut rest = source;
    while let Some(at) = rest.find(['"', '\'', '`']) {
        let quote = &rest[at..=at];
        let after = &rest[at + 1..];
        out += &rest[..=at];
        rest = after;
        if !after.starts_with("./") && !after.starts_with("../") {
            continue;
        }
        let before = out[..out.len() - 1].trim_end();
        let resolved = before.ends_with(RESOLVING);
        if resolved || IMPORTING.iter().any(|word| before.ends_with(word)) {
            let end = after.find(quote).context("a module's name is not closed")?;
            out += &rename(&after[..end], resolved)?;
            rest = &after[end..];
        }
    }
    Ok(out + rest)
}

/// The path below the site of what a module there calls `name`.
fn join(module: &str, name: &str) -> Result<String> {
    let mut parts: Vec<&str> = module.split('/').collect();
    parts.pop();
    for part in name.split('/') {
        match part {
            "." => {}
            ".." => {
                parts.pop().with_context(|| format!("{module} imports \"{name}\" from outside the site"))?;
            }
            part => parts.push(part),
        }
    }
    Ok(parts.join("/"))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn renamed(source: &str) -> String {
        rewrite(source, |name, resolved| Ok(format!("{}{name}", if resolved { "@" } else { "#" }))).unwrap()
    }

    #[test]
    fn every_way_to_name_a_module_is_found() {
        assert_eq!(renamed("import a from \"./a.js\";"), "import a from \"#./a.js\";");
        assert_eq!(renamed("import {\n  a,\n} from '../a.js'"), "import {\n  a,\n} from '#../a.js'");
        assert_eq!(renamed("export * from \"./a.js\""), "export * from \"#./a.js\"");
        assert_eq!(renamed("import \"./a.js\""), "import \"#./a.js\"");
        assert_eq!(renamed("await import(\"./a.js\")"), "await import(\"#./a.js\")");
        assert_eq!(renamed("import(`./a.js`)"), "import(`#./a.js`)");
        assert_eq!(renamed("import.meta.resolve(\"./a.js\")"), "import.meta.resolve(\"@./a.js\")");
    }

    #[test]
    fn other_strings_stay() {
        for source in ["let a = \"./a.js\";", "import \"app/a.js\"", "don't(\"./a\")", "new URL(\"./a\", b)"]
        {
            assert_eq!(renamed(source), source);
        }
    }

    #[test]
    fn names_are_joined_below_the_site() {
        assert_eq!(join("js/main.js", "./a.js").unwrap(), "js/a.js");
        assert_eq!(join("js/main.js", "../pkg/b.js").unwrap(), "pkg/b.js");
        assert!(join("main.js", "../b.js").is_err());
    }

    #[test]
    fn a_worker_that_imports_is_refused() {
        let site = std::env::temp_dir().join(format!("washpath-graph-{}", std::process::id()));
        fs::create_dir_all(&site).unwrap();
        fs::write(site.join("main.js"), "import.meta.resolve(\"./worker.js\")").unwrap();
        fs::write(site.join("worker.js"), "import \"./a.js\"").unwrap();
        fs::write(site.join("a.js"), "").unwrap();
        let error = read(&site, "main.js").unwrap_err().to_string();
        fs::write(site.join("worker.js"), "").unwrap();
        let modules = read(&site, "main.js").unwrap();
        fs::remove_dir_all(&site).unwrap();
        assert!(error.contains("worker.js") && error.contains("./a.js"), "{error}");
        assert_eq!(modules["main.js"], "import.meta.resolve(\"app/worker.js\")");
    }
}
