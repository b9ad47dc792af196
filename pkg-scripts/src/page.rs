//! Edits of the page's HTML. It is our own and plain: attributes in double
//! quotes, no `>` inside a tag.

use anyhow::{Context, Result, bail};

/// Stands in the sources where the content security policy goes.
const POLICY_MARK: &str = "<!-- csp -->";

/// The page with a content security policy in the place kept for it.
pub(crate) fn with_policy(html: &str, policy: &str) -> Result<String> {
    if html.matches(POLICY_MARK).count() != 1 {
        bail!("index.html needs one \"{POLICY_MARK}\" in its head");
    }
    Ok(html.replacen(POLICY_MARK, &policy_tag(policy), 1))
}

/// Stands in the sources where the page names the modules it cannot start without.
const MODULES_MARK: &str = "<!-- modules -->";

/// The page with its modules named at its head, so that none waits until another has told of it.
pub(crate) fn with_preloads<'a>(html: &str, modules: impl Iterator<Item = &'a str>) -> Result<String> {
    if html.matches(MODULES_MARK).count() != 1 {
        bail!("index.html needs one \"{MODULES_MARK}\" in its head");
    }
    let links: Vec<_> =
        modules.map(|path| format!("<link rel=\"modulepreload\" href=\"./{path}\">")).collect();
    Ok(html.replacen(MODULES_MARK, &links.join("\n"), 1))
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
    fn the_policy_takes_its_place() {
        let html = with_policy("<head><!-- csp --></head>", "default-src 'none'").unwrap();
        let tag = "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'\">";
        assert_eq!(html, format!("<head>{tag}</head>"));
        assert!(with_policy("<head></head>", "").is_err());
    }

    #[test]
    fn modules_are_named_at_the_head() {
        let html =
            with_preloads("<head><!-- modules --></head>", ["js/a.js", "js/b.js"].into_iter()).unwrap();
        let [a, b] = ["a", "b"].map(|name| format!("<link rel=\"modulepreload\" href=\"./js/{name}.js\">"));
        assert_eq!(html, format!("<head>{a}\n{b}</head>"));
        assert!(with_preloads("<head></head>", [].into_iter()).is_err());
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
