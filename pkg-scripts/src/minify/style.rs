//! Style sheets without comments and needless spaces.

use anyhow::{Result, bail};

/// No space is needed beside these. Before a colon it is: `a :hover` is not `a:hover`.
const EDGES: &str = "{};,";

/// The same style sheet in fewer bytes; strings stay as they are.
pub(super) fn sheet(source: &str) -> Result<String> {
    let mut small = String::with_capacity(source.len());
    let mut rest = source;
    while let Some(first) = rest.chars().next() {
        let length = match first {
            '/' if rest.starts_with("/*") => end(rest, 2, "*/")?,
            '"' | '\'' => end(rest, 1, &rest[..1])?,
            _ if first.is_whitespace() => rest.len() - rest.trim_start().len(),
            _ => first.len_utf8(),
        };
        let (piece, after) = rest.split_at(length);
        rest = after;
        if piece.starts_with("/*") || first.is_whitespace() {
            // Also where a comment alone parts two words.
            if !small.is_empty() && !small.ends_with([' ', ':', '{', '}', ';', ',']) {
                small.push(' ');
            }
            continue;
        }
        if EDGES.contains(first) && small.ends_with(' ') {
            small.pop();
        }
        if first == '}' && small.ends_with(';') {
            small.pop();
        }
        small += piece;
    }
    Ok(small.trim_end().to_owned())
}

/// How long a piece is that ends with a mark.
fn end(piece: &str, opening: usize, mark: &str) -> Result<usize> {
    match piece[opening..].find(mark) {
        Some(length) => Ok(opening + length + mark.len()),
        None => bail!("a \"{}\" is not closed", &piece[..opening]),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_needless_spaces_go() {
        let source = "/* Words. */\na,\nb  > i :hover { margin: 0 calc(1px + 2em);\n  color : red; }\n@media (width > 3em) and (hover: none) { a { top: 0 } }\n";
        let small = "a,b > i :hover{margin:0 calc(1px + 2em);color :red}@media (width > 3em) and (hover:none){a{top:0}}";
        assert_eq!(sheet(source).unwrap(), small);
    }

    #[test]
    fn strings_stay() {
        let source = "a { content: \" / * {  } \"; grid: 'a  b' }";
        assert_eq!(sheet(source).unwrap(), "a{content:\" / * {  } \";grid:'a  b'}");
    }

    #[test]
    fn what_is_not_closed_is_an_error() {
        assert!(sheet("a { } /* and").is_err());
        assert!(sheet("a { content: \"x }").is_err());
    }
}
