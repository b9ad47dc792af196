//! Recipes as a log has them: `2 pb29 + 1 'py43 light'`.

use crate::error::Error;
use crate::mixing::part::Part;
use crate::mixing::recipe::{MOST_PAINTS, Recipe};
use crate::paint::number::PaintNumber;
use crate::paint::shelf::Shelf;
use crate::text::rows::{closing, plain, undoubled};
use crate::text::words::cut;

/// Each paint by its key, behind its parts.
pub(super) fn write(recipe: &Recipe, shelf: &Shelf) -> String {
    let parts = recipe.parts().iter().map(|Part { paint: number, parts }| match shelf.get(*number) {
        Ok(paint) if is_bare(&paint.key) => format!("{parts} {}", paint.key),
        Ok(paint) => format!("{parts} '{}'", paint.key.replace('\'', "''")),
        Err(_) => format!("{parts} #{number}"),
    });
    parts.collect::<Vec<_>>().join(" + ")
}

/// Whether a key can stand in a recipe without quotation marks.
fn is_bare(key: &str) -> bool {
    !key.is_empty() && key.chars().all(|c| c.is_ascii_alphanumeric() || "-_.:".contains(c))
}

/// Reads what [`write`] writes, and what people write in its stead.
pub(super) fn read(text: &str, shelf: &Shelf) -> Result<Recipe, Error> {
    let (mut parts, mut rest) = (Vec::new(), text.trim());
    if rest.is_empty() {
        return Err(Error::Missing("no recipe"));
    }
    loop {
        let (count, named) = read_count(rest)?;
        let (paint, behind) = read_paint(named, shelf)?;
        parts.push(Part { paint, parts: count });
        // Twice as many as a recipe holds, so that one named twice is still added up.
        if parts.len() > 2 * MOST_PAINTS {
            return Err(Error::Value(format!("more than {} paints in a recipe", 2 * MOST_PAINTS)));
        }
        let behind = behind.trim_start();
        match behind.strip_prefix('+') {
            Some(next) => rest = next.trim_start(),
            None if behind.is_empty() => return Recipe::new(&parts),
            None => {
                return Err(Error::Unreadable(format!(
                    "\"{}\" in a recipe: paints stand between +",
                    cut(behind)
                )));
            }
        }
    }
}

/// The parts in front of a paint, one where none are named.
fn read_count(text: &str) -> Result<(u16, &str), Error> {
    match text.split_once(char::is_whitespace) {
        Some((count, named)) if count.bytes().all(|byte| byte.is_ascii_digit()) => {
            let count =
                count.parse().map_err(|_| Error::Unreadable(format!("{} parts: too many", cut(count))))?;
            Ok((count, named.trim_start()))
        }
        _ => Ok((1, text)),
    }
}

/// The paint that a text begins with, and what stands behind it.
fn read_paint<'a>(text: &'a str, shelf: &Shelf) -> Result<(PaintNumber, &'a str), Error> {
    if let Some(quoted) = text.strip_prefix('\'') {
        let end = closing(quoted, '\'')
            .ok_or(Error::Unreadable("a paint's ' is not closed in the recipe".into()))?;
        return Ok((find(&undoubled(&quoted[..end], '\''), shelf)?, &quoted[end + 1..]));
    }
    let (key, behind) = text.split_at(text.find('+').unwrap_or(text.len()));
    let key = key.trim_end();
    let number = match key.strip_prefix('#') {
        Some(number) => {
            let number = number.parse().map_err(|_| Error::UnknownPaint(cut(key)))?;
            shelf.get(PaintNumber::new(number))?.number
        }
        None => find(key, shelf)?,
    };
    Ok((number, behind))
}

/// The paint of a key, else the only one of these pigments or this name.
fn find(key: &str, shelf: &Shelf) -> Result<PaintNumber, Error> {
    let paint = shelf.find(key).or_else(|_| shelf.find(&key.to_ascii_lowercase()));
    if let Ok(paint) = paint {
        return Ok(paint.number);
    }
    let wanted = plain(key);
    let is_it = |text: &str| !wanted.is_empty() && plain(text) == wanted;
    let alike: Vec<_> =
        shelf.paints().iter().filter(|paint| is_it(&paint.code) || is_it(&paint.name)).collect();
    match alike[..] {
        [] => Err(Error::UnknownPaint(cut(key))),
        [paint] => Ok(paint.number),
        _ => {
            let keys = alike.iter().map(|paint| paint.key.clone()).collect();
            Err(Error::Ambiguous { name: cut(key), keys })
        }
    }
}
