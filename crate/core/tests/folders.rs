//! The sources stand in folders, and each folder uses only those above it in the list; no files of a folder go in circles.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

/// Each uses those before it.
const ORDER: [&str; 13] = [
    "numeric",
    "text::decimal",
    "error",
    "text",
    "colour",
    "optics",
    "paint",
    "mixing",
    "swatches",
    "kit",
    "reach",
    "choose",
    "matching",
];

/// A source without its comments and unit tests: tests may use the whole crate.
fn code(text: &str) -> String {
    let lines = text.lines().filter(|line| !line.trim_start().starts_with("//"));
    let code = lines.collect::<Vec<_>>().join("\n");
    match code.find("#[cfg(test)]\nmod tests") {
        Some(end) => code[..end].to_owned(),
        None => code,
    }
}

fn sources(folder: &Path, found: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).expect("the sources are beside the tests") {
        let path = entry.expect("a folder of sources can be listed").path();
        if path.is_dir() {
            sources(&path, found);
        } else if !path.to_string_lossy().ends_with("tests.rs") {
            found.push(path);
        }
    }
}

/// Every file but the root, as `folder::file` or `folder`, and what it uses of the crate.
fn modules() -> BTreeMap<String, Vec<String>> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut files = Vec::new();
    sources(&root, &mut files);
    let mut modules = BTreeMap::new();
    for file in files {
        let name = file.strip_prefix(&root).expect("found below it").with_extension("");
        let parts: Vec<_> = name
            .iter()
            .map(|part| part.to_string_lossy().into_owned())
            .filter(|part| part != "mod")
            .collect();
        let name = parts.join("::");
        if name != "lib" {
            modules.insert(name, code(&fs::read_to_string(&file).expect("sources are text")));
        }
    }
    modules.iter().map(|(name, code)| (name.clone(), used(name, code))).collect()
}

/// The paths of the crate that a module uses, however it writes them.
fn used(module: &str, code: &str) -> Vec<String> {
    let parent = module.rsplit_once("::").map_or("", |(parent, _)| parent);
    let mut found = paths(code, "crate::");
    for path in paths(code, "super::") {
        assert!(
            !path.starts_with("super"),
            "{module} climbs out of its folder: say crate:: and where it stands"
        );
        found.push(if parent.is_empty() { path } else { format!("{parent}::{path}") });
    }
    // What a folder's root uses of its own files; what it only hands on with `pub use` it does not use.
    for child in code.lines().filter_map(|line| line.trim().strip_suffix(';')?.split("mod ").nth(1)) {
        let name = format!("{child}::");
        let lines = code.lines().filter(|line| !line.trim_start().starts_with("pub"));
        let uses = lines.filter(|line| line.trim_start().trim_start_matches("use ").starts_with(&name));
        found.extend(uses.map(|_| format!("{module}::{child}")));
    }
    found
}

/// Paths behind a root such as `crate::`, one for every name of a group in braces.
fn paths(code: &str, root: &str) -> Vec<String> {
    let is_path = |c: char| c.is_alphanumeric() || c == '_' || c == ':';
    let mut found = Vec::new();
    for rest in code.split(root).skip(1) {
        let path = rest.split(|c| !is_path(c)).next().unwrap_or_default();
        match rest[path.len()..].strip_prefix('{').and_then(|group| group.split_once('}')) {
            Some((group, _)) => found.extend(group.split(',').map(|name| format!("{path}{}", name.trim()))),
            None => found.push(path.to_owned()),
        }
    }
    found
}

fn rank(path: &str) -> Option<usize> {
    let longest = ORDER.iter().filter(|known| within(path, known)).max_by_key(|known| known.len());
    ORDER.iter().position(|known| Some(&known) == longest.as_ref())
}

#[test]
fn every_folder_uses_only_those_before_it() {
    let modules = modules();
    assert!(modules.len() > 60, "only {} sources were found", modules.len());
    let mut wrong = Vec::new();
    for (module, paths) in &modules {
        let own = rank(module).unwrap_or_else(|| panic!("{module} stands in no folder of the list"));
        for path in paths {
            match rank(path) {
                Some(used) if used <= own => {}
                Some(_) => wrong.push(format!("{module} uses {path}, which stands above it")),
                None => wrong.push(format!("{module} uses crate::{path} and not where it stands")),
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn no_files_go_in_circles() {
    let modules = modules();
    let uses: BTreeMap<&str, BTreeSet<&str>> = modules
        .iter()
        .map(|(module, paths)| {
            let used = paths.iter().filter_map(|path| longest(&modules, path));
            (module.as_str(), used.filter(|used| used != module).collect())
        })
        .collect();
    let mut rest = uses;
    // What uses none of the rest, and what none of the rest uses, is in no circle: it goes, again and again.
    loop {
        let before = rest.len();
        let users: BTreeSet<&str> = rest.values().flatten().copied().collect();
        rest.retain(|module, _| users.contains(module));
        let left: BTreeSet<&str> = rest.keys().copied().collect();
        rest.values_mut().for_each(|used| used.retain(|used| left.contains(used)));
        rest.retain(|_, used| !used.is_empty());
        if rest.len() == before {
            break;
        }
    }
    assert!(rest.is_empty(), "in circles: {rest:#?}");
}

/// The module that a path leads to: the longest one that it begins with.
fn longest<'a>(modules: &'a BTreeMap<String, Vec<String>>, path: &str) -> Option<&'a str> {
    modules.keys().filter(|module| within(path, module)).max_by_key(|module| module.len()).map(String::as_str)
}

/// Whether a path leads to a module or into it.
fn within(path: &str, module: &str) -> bool {
    path.strip_prefix(module).is_some_and(|rest| rest.is_empty() || rest.starts_with("::"))
}

#[test]
fn every_way_to_write_a_path_is_seen() {
    let code = "mod own;\npub mod bytes;\nuse crate::paint::{Paint, shelf::Shelf};\nuse super::Kit;\nuse own::write;\npub use bytes::Input;";
    let found = used("kit::link", code);
    assert_eq!(found, ["paint::Paint", "paint::shelf::Shelf", "kit::Kit", "kit::link::own"]);
}
