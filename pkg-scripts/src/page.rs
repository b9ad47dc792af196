//! Edits of the page's HTML. It is our own and plain: attributes in double
//! quotes, no `>` inside a tag.

use anyhow::{Context, Result, bail};
use base64::Engine;
use base64::engine::general_purpose::STANDARD as BASE64;
use sha2::{Digest, Sha256};

use crate::bundle;

/// The page, by its name in sources and site.
pub(crate) const INDEX: &str = "index.html";

/// Stands in the sources where the page names the modules it cannot start without.
const MODULES_MARK: &str = "<!-- modules -->";

/// The page with its modules named at its head, so that none waits until another has told of it.
pub(crate) fn with_preloads(html: &str, modules: &[String]) -> Result<String> {
    if html.matches(MODULES_MARK).count() != 1 {
        bail!("index.html needs one \"{MODULES_MARK}\" in its head");
    }
    let links: Vec<_> =
        modules.iter().map(|path| format!("<link rel=\"modulepreload\" href=\"./{path}\">")).collect();
    Ok(html.replacen(MODULES_MARK, &links.join("\n"), 1))
}

/// Where a policy of the sources lets the style sheet be a file of its own.
const STYLE_RULE: &str = "style-src 'self'";

/// The page with its style sheet in it: what shows first needs no second answer. The policy knows it by its hash.
pub(crate) fn with_style(html: &str, style: &str) -> Result<String> {
    if html.matches(STYLE_RULE).count() != 1 {
        bail!("the page's policy needs one \"{STYLE_RULE}\"");
    }
    let html = html.replacen(STYLE_RULE, &format!("style-src {}", hash(style)), 1);
    let mut sheets = 0;
    let html = edit_tags(&html, "link", |tag| match attribute(tag, "rel") {
        Some("stylesheet") if attribute(tag, "href").and_then(own) == Some(bundle::STYLE) => {
            sheets += 1;
            Ok(Some(format!("<style>{}</style>", inside(style, "style")?)))
        }
        Some("stylesheet") => bail!("the page may have no style sheet but {}: {tag}", bundle::STYLE),
        _ => Ok(None),
    })?;
    if sheets != 1 {
        bail!("the page needs one <link rel=\"stylesheet\" href=\"./{}\">", bundle::STYLE);
    }
    Ok(html)
}

/// The name of a file beside the page, from an address.
pub(crate) fn own(address: &str) -> Option<&str> {
    address.strip_prefix("./")
}

/// How a content security policy names a text of the page that may be run or applied.
pub(crate) fn hash(text: &str) -> String {
    format!("'sha256-{}'", BASE64.encode(Sha256::digest(text)))
}

/// A text that may stand in an element whose text is taken as it is.
pub(crate) fn inside<'a>(text: &'a str, element: &str) -> Result<&'a str> {
    for ending in [&format!("</{element}"), "<!--"] {
        if text.contains(ending) {
            bail!("a {element} with \"{ending}\" in it cannot go into the page");
        }
    }
    Ok(text)
}

/// The element that sets a policy.
pub(crate) fn policy_tag(policy: &str) -> String {
    format!("<meta http-equiv=\"Content-Security-Policy\" content=\"{policy}\">")
}

/// The value of a tag's attribute.
pub(crate) fn attribute<'a>(tag: &'a str, name: &str) -> Option<&'a str> {
    let start = tag.find(&format!(" {name}=\""))? + name.len() + 3;
    tag[start..].split('"').next()
}

/// Replaces start tags of one kind where `edit` gives a text for them.
pub(crate) fn edit_tags(
    html: &str,
    element: &str,
    mut edit: impl FnMut(&str) -> Result<Option<String>>,
) -> Result<String> {
    let opening = format!("<{element} ");
    let mut out = String::with_capacity(html.len());
    let mut rest = html;
    while let Some(start) = rest.find(&opening) {
        let end =
            rest[start..].find('>').with_context(|| format!("a \"<{element}\" is not closed"))? + start + 1;
        let tag = &rest[start..end];
        out += &rest[..start];
        out += edit(tag)?.as_deref().unwrap_or(tag);
        rest = &rest[end..];
    }
    Ok(out + rest)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_style_sheet_goes_into_the_page_and_its_policy() {
        let page = "<meta content=\"style-src 'self'\"><link rel=\"stylesheet\" href=\"./style.css\">";
        // As `printf 'a{}' | openssl dgst -sha256 -binary | base64` says.
        let hash = "sha256-X1RutGBrXCt9KkSaXMK7tHftWiRscFHOhxsS8tv8hBk=";
        let wanted = format!("<meta content=\"style-src '{hash}'\"><style>a{{}}</style>");
        assert_eq!(with_style(page, "a{}").unwrap(), wanted);
        let foreign = format!("{page}<link rel=\"stylesheet\" href=\"./other.css\">");
        for wrong in [
            "<link rel=\"stylesheet\" href=\"./style.css\">",
            "<meta content=\"style-src 'self'\">",
            &foreign,
        ] {
            assert!(with_style(wrong, "a{}").is_err(), "{wrong}");
        }
    }

    #[test]
    fn what_would_end_its_element_early_is_refused() {
        assert!(inside("\"</script>\"", "script").is_err());
        assert!(inside("\"<!--\"", "script").is_err());
        assert!(inside("\"</style>\"", "script").is_ok());
    }

    #[test]
    fn modules_are_named_at_the_head() {
        let modules = ["js/a.js", "js/b.js"].map(str::to_owned);
        let html = with_preloads("<head><!-- modules --></head>", &modules).unwrap();
        let [a, b] = ["a", "b"].map(|name| format!("<link rel=\"modulepreload\" href=\"./js/{name}.js\">"));
        assert_eq!(html, format!("<head>{a}\n{b}</head>"));
        assert!(with_preloads("<head></head>", &modules).is_err());
    }

    #[test]
    fn tags_are_edited_one_by_one() {
        let html = "<link rel=\"icon\" href=\"a\"><p><link rel=\"manifest\" href=\"b\"><linked>";
        let edited = edit_tags(html, "link", |tag| {
            Ok((attribute(tag, "rel") == Some("manifest"))
                .then(|| attribute(tag, "href").unwrap_or("").to_owned()))
        });
        assert_eq!(edited.unwrap(), "<link rel=\"icon\" href=\"a\"><p>b<linked>");
    }

    #[test]
    fn an_unclosed_tag_is_an_error() {
        assert!(edit_tags("<link rel=\"icon\"", "link", |_| Ok(None)).is_err());
    }
}
