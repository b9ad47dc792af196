//! The single-file page: everything of the site in one HTML file that opens from a disk.
//!
//! Browsers refuse modules and wasm next to a page without a host. So the core, the
//! page's script and its worker's lie in the file as gzip, in base64, and a short
//! script starts them with what the browser has for that (`unpack.js`).

use std::fs;

use anyhow::{Context, Result, bail};
use base64::Engine;
use base64::engine::general_purpose::STANDARD as BASE64;

use crate::page::{Head, attribute, edit_tags, hash, inside, own, policy_tag, with_head};
use crate::size::{self, Size};
use crate::{Command, build, bundle, page, workspace};

pub(crate) const COMMAND: Command = Command {
    name: "pack",
    summary: "make target/washpath.html, the page as one file",
    help: "
The file opens by a double click, needs no host and asks for nothing: its
content security policy lets the browser refuse every request. Prints its size
and that of the hosted page as it was built last.
",
    run: |words| {
        crate::no_words(words)?;
        pack()
    },
};

/// Budgets of the design in bytes: the file as it lies, the site after gzip.
pub(crate) const FILE_BUDGET: usize = 700_000;
pub(crate) const SITE_BUDGET: usize = 250_000;

/// Writes the file and prints sizes.
pub(crate) fn pack() -> Result<()> {
    let whole = workspace::whole();
    build::copy(&workspace::www(), &build::emptied(&whole)?, |_| true)?;
    let core = build::whole(&whole)?;
    build::shrink(&core)?;
    let core = fs::read(core)?;
    let html = fs::read_to_string(whole.join(page::INDEX)).context("www has no page")?;
    let parts = Parts {
        head: bundle::head(&whole)?,
        unpack: bundle::script(&workspace::build_packages(), UNPACK)?,
        script: bundle::script(&whole, bundle::FIRST)?,
        worker: bundle::script(&whole, bundle::ADVISER)?,
        core,
        icon: fs::read_to_string(whole.join(ICON)).with_context(|| format!("www has no {ICON}"))?,
    };
    let file = workspace::packed();
    fs::write(&file, packed(&html, &parts)?)?;
    println!("Packed page: {}", file.display());
    print_sizes()
}

fn print_sizes() -> Result<()> {
    let row = |title: &str, size: Size, told: &str| println!("  {title:<22}{size}{told}");
    if workspace::site().exists() {
        for (part, size) in size::parts()? {
            row(part, size, "");
        }
        row("all hosted files", size::all()?, "");
        let first = size::first_load()?;
        row("hosted first load", first, &against(first.gzip, SITE_BUDGET, "after gzip"));
    }
    let one = Size::of(&workspace::packed())?;
    row("one file", one, &against(one.raw, FILE_BUDGET, "bytes"));
    Ok(())
}

fn against(bytes: usize, budget: usize, unit: &str) -> String {
    let verdict = if bytes <= budget { "within" } else { "over" };
    format!(" ({verdict} the budget of {budget} {unit})")
}

const ICON: &str = "icon.svg";

/// The script that unpacks the others.
const UNPACK: &str = "src/unpack.js";

/// What goes into the page.
struct Parts {
    head: Head,
    unpack: String,
    script: String,
    worker: String,
    core: Vec<u8>,
    icon: String,
}

fn packed(html: &str, parts: &Parts) -> Result<String> {
    let html = with_head(html, &parts.head)?;
    let html = edit_tags(&html, "meta", |tag| {
        Ok((attribute(tag, "http-equiv") == Some("Content-Security-Policy"))
            .then(|| policy_tag(&policy(parts))))
    })?;
    let html = edit_tags(&html, "link", |tag| link(tag, &parts.icon).map(Some))?;
    let mut starts = 0;
    let html = edit_tags(&html, "script", |tag| {
        if attribute(tag, "src").and_then(own) != Some(bundle::FIRST) {
            bail!("the page may have no script but {} and {}: {tag}", bundle::LOOKS, bundle::FIRST);
        }
        starts += 1;
        scripts(parts).map(Some)
    })?;
    if starts != 1 {
        bail!("the page needs one <script type=\"module\" src=\"./{}\"></script>", bundle::FIRST);
    }
    Ok(html)
}

/// Nothing may be loaded but what is in the file, and nothing run but its own scripts.
fn policy(Parts { head, unpack, script, .. }: &Parts) -> String {
    format!(
        "default-src 'none'; script-src {} {} {} 'wasm-unsafe-eval'; style-src {}; font-src data:; \
         img-src data: blob:; worker-src blob:; base-uri 'none'; form-action 'none'",
        hash(&head.looks),
        hash(unpack),
        hash(script),
        hash(&head.style)
    )
}

/// What a link of the hosted page becomes.
fn link(tag: &str, icon: &str) -> Result<String> {
    match (attribute(tag, "rel"), attribute(tag, "href").and_then(own)) {
        (Some("icon"), Some(ICON)) => {
            Ok(format!("<link rel=\"icon\" href=\"data:image/svg+xml,{}\">", escaped(icon)))
        }
        (Some("stylesheet"), _) => bail!("the page may have no style sheet but {}: {tag}", bundle::STYLE),
        // Manifest, other icons, preloads: of use to a hosted page only.
        _ => Ok(String::new()),
    }
}

/// An image as part of an address: as text, which may hold all of it but these, and the attribute no double quotes.
fn escaped(svg: &str) -> String {
    svg.trim().replace('%', "%25").replace('#', "%23").replace('"', "'")
}

/// What is packed, and the script that unpacks it; the last is closed by what follows its tag in the page.
fn scripts(Parts { unpack, script, worker, core, .. }: &Parts) -> Result<String> {
    let mut html = String::new();
    for (id, bytes) in [("core", &core[..]), ("script", script.as_bytes()), ("worker", worker.as_bytes())] {
        let text = BASE64.encode(size::gzip(bytes)?);
        html += &format!("<script type=\"application/gzip\" id=\"packed-{id}\">{text}</script>\n");
    }
    Ok(html + "<script type=\"module\">" + inside(unpack, "script")?)
}

#[cfg(test)]
mod tests {
    use std::io::Read;

    use flate2::read::GzDecoder;

    use super::*;

    const PAGE: &str = "<meta http-equiv=\"Content-Security-Policy\" content=\"script-src 'self'; style-src 'self'\">\
        <link rel=\"manifest\" href=\"./manifest.webmanifest\"><link rel=\"icon\" href=\"./icon.svg\">\
        <script src=\"./js/looks.js\"></script><link rel=\"stylesheet\" href=\"./style.css\"><script type=\"module\" src=\"./js/main.js\"></script>";

    fn parts() -> Parts {
        let [style, looks, unpack, script, worker, icon] =
            ["a{}", "look()", "unpack()", "start()", "answer()", "<svg fill=\"#fff\"/>"].map(str::to_owned);
        Parts { head: Head { style, looks }, unpack, script, worker, core: b"wasm".to_vec(), icon }
    }

    #[test]
    fn everything_is_in_the_file() {
        let html = packed(PAGE, &parts()).unwrap();
        let (head, rest) = html.split_once("<script type=\"application/gzip\" id=\"packed-core\">").unwrap();
        assert!(head.ends_with(
            "<link rel=\"icon\" href=\"data:image/svg+xml,<svg fill='%23fff'/>\"><script>look()</script><style>a{}</style>"
        ));
        let core = BASE64.decode(rest.split('<').next().unwrap()).unwrap();
        let mut unpacked = String::new();
        GzDecoder::new(&core[..]).read_to_string(&mut unpacked).unwrap();
        assert_eq!(unpacked, "wasm");
        assert!(rest.contains(" id=\"packed-script\">") && rest.contains(" id=\"packed-worker\">"));
        assert!(rest.ends_with("<script type=\"module\">unpack()</script>"), "{rest}");
    }

    #[test]
    fn only_its_own_scripts_and_style_may_run() {
        let policy = policy(&parts());
        // As `printf 'start()' | openssl dgst -sha256 -binary | base64` says.
        assert!(
            policy.contains(" 'sha256-DIm7WJS6ZKDYe5qFLPy+h4JFI9Bol5QmYC57mt3Fb00=' 'wasm-unsafe-eval';"),
            "{policy}"
        );
        assert!(!policy.contains("unsafe-inline") && !policy.contains(" 'unsafe-eval'"), "{policy}");
    }

    #[test]
    fn a_page_without_its_start_or_with_another_is_refused() {
        let page = PAGE.replace("./js/main.js", "./js/other.js");
        let error = packed(&page, &parts()).unwrap_err().to_string();
        assert!(error.contains(bundle::FIRST), "{error}");
        for foreign in [
            "<script src=\"https://example.org/x.js\"></script>",
            "<link rel=\"stylesheet\" href=\"./other.css\">",
        ] {
            assert!(packed(&format!("{PAGE}{foreign}"), &parts()).is_err(), "{foreign}");
        }
    }
}
