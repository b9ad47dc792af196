//! The single-file page: everything of the site in one HTML file that opens from a disk.
//!
//! Browsers refuse modules and wasm next to a page without a host. So they lie in
//! the file as one text, packed, and the style sheet and the body with them; a
//! short script unpacks it and gives each module a `data:` address in an import map.

mod text;

use std::collections::BTreeMap;
use std::fs;
use std::io::Write;
use std::path::Path;

use anyhow::{Context, Result, bail};
use base64::Engine;
use base64::engine::general_purpose::STANDARD as BASE64;
use lzma_rust2::{LzmaOptions, LzmaWriter};

use crate::page::{attribute, edit_tags, policy_tag};
use crate::size::{self, Size};
use crate::{Command, build, graph, minify, workspace};

pub(crate) const COMMAND: Command = Command {
    name: "pack",
    summary: "make target/washpath.html, the page as one file, from target/site",
    help: "
The file opens by a double click, needs no host and asks for nothing: its
content security policy lets the browser refuse every request. Prints its size
and that of the hosted page.
",
    run: |words| {
        crate::no_words(words)?;
        pack()
    },
};

/// Nothing may be loaded but what is in the file.
const POLICY: &str = "default-src 'none'; script-src 'unsafe-inline' 'wasm-unsafe-eval' data:; \
    style-src 'unsafe-inline'; font-src data:; img-src data: blob:; worker-src data:; base-uri 'none'; form-action 'none'";

/// The module the page starts with.
pub(crate) const FIRST: &str = "js/main.js";

/// A module of it that a hosted page starts before the others have come.
const AHEAD: &str = "js/core.js";

/// Budgets of the design in bytes: the file as it lies, the site after gzip.
pub(crate) const FILE_BUDGET: usize = 450_000;
pub(crate) const SITE_BUDGET: usize = 250_000;

/// What the core with both its halves is called.
const CORE: &str = "core";

/// Nothing shows until the style sheet is unpacked and takes this one's place; where no script runs, all that there is.
const VEIL: &str = "<style id=\"veil\">@media (scripting: enabled) { body { visibility: hidden } }</style>";

/// The script that unpacks, with three words to be filled in.
const UNPACK: &str = include_str!("pack/unpack.js");

/// Writes the file and prints sizes.
pub(crate) fn pack() -> Result<()> {
    let site = workspace::site();
    let html = fs::read_to_string(site.join("index.html")).context("no target/site: build first")?;
    let file = workspace::packed();
    // Packed, one core answers both the page and its worker: what the halves share is there once.
    build::compile(CORE, &build::HALVES.join(","), &[&build::small_code()], &workspace::whole_core())?;
    fs::write(&file, packed(&site, &html)?)?;
    println!("Packed page: {}", file.display());
    print_sizes()
}

fn print_sizes() -> Result<()> {
    let row = |title: &str, size: Size, told: &str| println!("  {title:<22}{size}{told}");
    for (part, size) in size::parts()? {
        row(part, size, "");
    }
    row("all hosted files", size::all()?, "");
    let first = size::first_load()?;
    row("hosted first load", first, &against(first.gzip, SITE_BUDGET, "after gzip"));
    let one = Size::of(&workspace::packed())?;
    row("one file", one, &against(one.raw, FILE_BUDGET, "bytes"));
    Ok(())
}

fn against(bytes: usize, budget: usize, unit: &str) -> String {
    let verdict = if bytes <= budget { "within" } else { "over" };
    format!(" ({verdict} the budget of {budget} {unit})")
}

fn packed(site: &Path, html: &str) -> Result<String> {
    let html = edit_tags(html, "meta", |tag| {
        Ok((attribute(tag, "http-equiv") == Some("Content-Security-Policy")).then(|| policy_tag(POLICY)))
    })?;
    let mut style = String::new();
    let html = edit_tags(&html, "link", |tag| link(site, tag, &mut style).map(Some))?;
    let mut starts = 0;
    let html = edit_tags(&html, "script", |tag| {
        match attribute(tag, "src").and_then(|src| src.strip_prefix("./")) {
            Some(FIRST) => starts += 1,
            Some(AHEAD) => {}
            _ => bail!("the page may have no script but {FIRST} and {AHEAD}: {tag}"),
        }
        Ok(Some("<script>".to_owned()))
    })?;
    if starts != 1 {
        bail!("the page needs one <script type=\"module\" src=\"./{FIRST}\"></script>");
    }
    let html = html.replace("<script></script>", "");
    let (head, rest) = html.split_once("<body>").context("the page has no <body>")?;
    // Links of the hosted page alone left their lines empty.
    let head: String = head.split_inclusive('\n').filter(|line| !line.trim().is_empty()).collect();
    let (body, end) = rest.rsplit_once("</body>").context("the page has no </body>")?;
    let unscripted = element(body, "noscript")?;
    let packed = scripts(site, &style, &body.replacen(unscripted, "", 1))?;
    Ok(format!("{head}<body>\n{unscripted}\n{packed}</body>{end}"))
}

/// The first element of a name, with its tags.
fn element<'a>(html: &'a str, name: &str) -> Result<&'a str> {
    let end = format!("</{name}>");
    let found = html.find(&format!("<{name}>")).and_then(|start| {
        let length = html[start..].find(&end)? + end.len();
        Some(&html[start..start + length])
    });
    found.with_context(|| format!("the page has no <{name}>"))
}

/// What a link of the hosted page becomes; the style sheet goes to the packed text.
fn link(site: &Path, tag: &str, style: &mut String) -> Result<String> {
    let href = attribute(tag, "href").unwrap_or_default();
    match attribute(tag, "rel") {
        Some("stylesheet") => {
            let css = fs::read_to_string(site.join(href)).with_context(|| format!("no {href}"))?;
            style.push_str(&sheet(site, &css)?);
            Ok(VEIL.to_owned())
        }
        Some("icon") => icon(site, href),
        // Manifest, larger icons, preloads: of use to a hosted page only.
        _ => Ok(String::new()),
    }
}

fn sheet(site: &Path, css: &str) -> Result<String> {
    if css.contains("@import") {
        bail!("a style sheet with \"@import\" cannot go into one file");
    }
    with_fonts(site, css)
}

/// The style sheet with every `url("./fonts/...")` made part of it.
fn with_fonts(site: &Path, css: &str) -> Result<String> {
    const OPEN: &str = "url(\"./";
    let mut pieces = css.split(OPEN);
    let mut whole = pieces.next().unwrap_or_default().to_owned();
    for piece in pieces {
        let (path, rest) = piece.split_once("\")").context("a url( without its end in the style sheet")?;
        let bytes = fs::read(site.join(path)).with_context(|| format!("no {path}"))?;
        whole += &format!("url(\"data:font/woff2;base64,{}\"){rest}", BASE64.encode(bytes));
    }
    Ok(whole)
}

fn icon(site: &Path, href: &str) -> Result<String> {
    if !href.ends_with(".svg") {
        bail!("the icon \"{href}\" is no svg");
    }
    let svg = fs::read_to_string(site.join(href)).with_context(|| format!("no {href}"))?;
    // As text: an address may hold all of it but these, and the attribute no double quotes.
    let svg = svg.trim().replace('%', "%25").replace('#', "%23").replace('"', "'");
    Ok(format!("<link rel=\"icon\" href=\"data:image/svg+xml,{svg}\">"))
}

fn scripts(site: &Path, style: &str, body: &str) -> Result<String> {
    let core = workspace::whole_core();
    let mut modules = graph::read(site, FIRST)?;
    let halves = build::HALVES.map(|half| format!("pkg/{half}.js"));
    modules.retain(|path, _| !halves.contains(path));
    let core_path = format!("pkg/{CORE}.js");
    for source in modules.values_mut() {
        for half in &halves {
            *source = source.replace(&graph::bare(half), &graph::bare(&core_path));
        }
    }
    modules.insert(core_path, fs::read_to_string(core.join(format!("{CORE}.js")))?);
    let modules: BTreeMap<_, _> = modules.iter().map(|(path, source)| (graph::bare(path), source)).collect();
    let wasm = fs::read(core.join(format!("{CORE}_bg.wasm")))?;
    let texts = serde_json::json!({ "style": style, "body": body, "modules": modules });
    let whole = blob(&texts.to_string(), &wasm);
    let bytes = smallest(&whole)?;
    let unpack = UNPACK
        .replace("(PACKED)", &format!("({})", bytes.len()))
        .replace("(UNPACKED)", &format!("({})", whole.len()))
        .replace("(FIRST)", &format!("({:?})", graph::bare(FIRST)));
    Ok(format!(
        "<script type=\"application/octet-stream\" id=\"packed\">{}</script>\n<script>{}</script>\n",
        text::encode(&bytes),
        minify::script(&unpack)?,
    ))
}

/// Length of the texts as four bytes, lowest first, the texts, the core.
fn blob(texts: &str, wasm: &[u8]) -> Vec<u8> {
    [&(texts.len() as u32).to_le_bytes(), texts.as_bytes(), wasm].concat()
}

/// LZMA as the unpacking script reads it: no header, no end mark. A quarter smaller than gzip, at some milliseconds
/// to unpack.
fn smallest(bytes: &[u8]) -> Result<Vec<u8>> {
    let options = LzmaOptions { lc: 3, lp: 0, pb: 0, ..LzmaOptions::with_preset(9) };
    let mut writer = LzmaWriter::new_no_header(Vec::new(), &options, false)?;
    writer.write_all(bytes)?;
    Ok(writer.finish()?)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_unpacking_script_has_its_three_words() {
        for word in ["(PACKED)", "(UNPACKED)", "import(FIRST)"] {
            assert_eq!(UNPACK.matches(word).count(), 1, "{word}");
        }
    }

    #[test]
    fn a_blob_begins_with_its_texts() {
        assert_eq!(blob("{}", b"wasm"), *b"\x02\0\0\0{}wasm");
    }

    #[test]
    fn links_of_the_hosted_page_go() {
        let (site, mut style) = (Path::new("nowhere"), String::new());
        assert_eq!(
            link(site, "<link rel=\"manifest\" href=\"./manifest.webmanifest\">", &mut style).unwrap(),
            ""
        );
        assert!(link(site, "<link rel=\"stylesheet\" href=\"./missing.css\">", &mut style).is_err());
        assert!(sheet(site, "@import \"x\";").is_err());
        assert!(sheet(site, "src: url(\"./fonts/missing.woff2\")").is_err());
    }

    #[test]
    fn a_page_without_its_start_is_refused() {
        let error = packed(Path::new("nowhere"), "<body></body>").unwrap_err().to_string();
        assert!(error.contains(FIRST), "{error}");
        let foreign = "<body><script src=\"https://example.org/x.js\"></script></body>";
        assert!(packed(Path::new("nowhere"), foreign).is_err());
    }
}
