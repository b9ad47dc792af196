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

/// What a page carries in its head, so that it looks right from its first picture on.
pub(crate) struct Head {
    /// The style sheet.
    pub(crate) style: String,
    /// The script that must have run before anything shows.
    pub(crate) looks: String,
}

/// Where a policy of the sources lets style sheet and scripts be files of their own.
const STYLE_RULE: &str = "style-src 'self'";
const SCRIPT_RULE: &str = "script-src 'self'";

/// The page with its head in it: what shows first needs no second answer. The policy knows both texts by their hashes.
pub(crate) fn with_head(html: &str, head: &Head) -> Result<String> {
    let style = format!("style-src {}", hash(&head.style));
    let looks = format!("{SCRIPT_RULE} {}", hash(&head.looks));
    let html = replaced(html, STYLE_RULE, &style, "the page's policy")?;
    let html = replaced(&html, SCRIPT_RULE, &looks, "the page's policy")?;
    let sheet = format!("<link rel=\"stylesheet\" href=\"./{}\">", bundle::STYLE);
    let html =
        replaced(&html, &sheet, &format!("<style>{}</style>", inside(&head.style, "style")?), "the page")?;
    let script = format!("<script src=\"./{}\"></script>", bundle::LOOKS);
    replaced(&html, &script, &format!("<script>{}</script>", inside(&head.looks, "script")?), "the page")
}

/// A text with the one piece of it replaced.
fn replaced(text: &str, piece: &str, new: &str, what: &str) -> Result<String> {
    if text.matches(piece).count() != 1 {
        bail!("{what} needs one {piece}");
    }
    Ok(text.replacen(piece, new, 1))
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
    fn the_head_goes_into_the_page_and_its_policy() {
        let page = "<meta content=\"script-src 'self'; style-src 'self'\">\
            <script src=\"./js/looks.js\"></script><link rel=\"stylesheet\" href=\"./style.css\">";
        let head = Head { style: "a{}".to_owned(), looks: "look()".to_owned() };
        // As `printf 'look()' | openssl dgst -sha256 -binary | base64` says, and of 'a{}'.
        let (looks, style) = (
            "sha256-9aoYu6AhR1u6WyoZ4nqQeCAR2uacraS+m/WWfdfKUrk=",
            "sha256-X1RutGBrXCt9KkSaXMK7tHftWiRscFHOhxsS8tv8hBk=",
        );
        let wanted = format!(
            "<meta content=\"script-src 'self' '{looks}'; style-src '{style}'\"><script>look()</script><style>a{{}}</style>"
        );
        assert_eq!(with_head(page, &head).unwrap(), wanted);
        for piece in ["script-src 'self'", "style-src 'self'", "<script src=\"./js/looks.js\"></script>"] {
            let error = with_head(&page.replace(piece, ""), &head).unwrap_err().to_string();
            assert!(error.contains(piece), "{error}");
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
