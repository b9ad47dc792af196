//! Swatch cards: all there is to know of a paint, with places to paint it.

use washpath_core::{Decimal, NAMED_LOADS, NamedLoad, Paint, PaintNumber, Texture};

use crate::area::Area;
use crate::chart::sign_in;
use crate::error::Error;
use crate::font::{fit, wrap};
use crate::leaf::{Anchor, INK, Leaf, QUIET, Stroke};
use crate::order::Order;
use crate::words::capital;

/// Width and height of a card, mm.
pub const CARD: [f32; 2] = [62.0, 76.0];

/// Size of what is told of a paint, mm.
const TEXT: f32 = 2.5;

/// A card for each of these paints, several to a page.
///
/// # Errors
///
/// No paint; one that is not on the shelf.
pub fn cards(order: &Order<'_>, paints: &[PaintNumber]) -> Result<Vec<Leaf>, Error> {
    let paints = order.paints(paints)?;
    let body = order.body();
    let [width, height] = CARD;
    let columns = ((body.width / width) as usize).max(1);
    let rows = ((body.height / height) as usize).max(1);
    let page = |paints: &[&Paint]| {
        let mut leaf = order.leaf();
        let used = paints.len().min(columns);
        let left = body.left + (body.width - width * columns as f32) / 2.0;
        for (i, paint) in paints.iter().enumerate() {
            let card = Area::new(
                left + width * (i % columns) as f32,
                body.top + height * (i / columns) as f32,
                width,
                height,
            );
            draw(&mut leaf, order, card, paint);
        }
        let grid =
            Area::new(left, body.top, width * used as f32, height * paints.len().div_ceil(columns) as f32);
        cut_marks(&mut leaf, grid);
        leaf
    };
    let leaves = paints.chunks(columns * rows).map(page).collect();
    let reading = format!("{}; cut at the marks", capital(order.halves()));
    Ok(order.bound(leaves, "Swatch cards", &reading))
}

fn draw(leaf: &mut Leaf, order: &Order<'_>, card: Area, paint: &Paint) {
    let inner = card.inset(4.0);
    leaf.text([inner.left, inner.top + 4.6], 5.6, INK, Anchor::Start, fit(&paint.code, inner.width, 5.6));
    leaf.text([inner.left, inner.top + 9.2], 3.2, INK, Anchor::Start, fit(&paint.name, inner.width, 3.2));
    let boxes = inner.below(12.0).above(28.0);
    for (i, NamedLoad { load, plain_sign: sign, .. }) in NAMED_LOADS.into_iter().enumerate() {
        let column = boxes.column(i, NAMED_LOADS.len()).inset(0.5);
        let [upper, lower] = [column.above(10.0), column.below(11.0)];
        let colour = order.view.colour(&paint.film, load);
        leaf.rectangle(upper, order.fill(colour), Some(Stroke::HAIRLINE));
        leaf.rectangle(lower, None, Some(Stroke::HAIRLINE));
        if order.outlines {
            sign_in(leaf, upper, &["L*", &Decimal(colour.l.round()).to_string()]);
        }
        leaf.text([column.middle()[0], boxes.bottom() + 2.2], 2.3, QUIET, Anchor::Middle, sign);
    }
    let mut y = inner.top + 46.6;
    for (words, ink, most) in about(paint) {
        for line in wrap(&words, inner.width, TEXT, most) {
            leaf.text([inner.left, y], TEXT, ink, Anchor::Start, line);
            y += 3.0;
        }
        y += 0.5;
    }
}

/// What is known of a paint: words, ink, most lines.
fn about(paint: &Paint) -> Vec<(String, [u8; 3], usize)> {
    let mut about = vec![(capital(&Texture::of(&[(paint, 1.0)]).words()), INK, 2)];
    let fast = paint.lightfast_tint.map_or(String::new(), |grade| {
        format!("; its tint Blue Wool {} of 8", Decimal((grade * 10.0).round() / 10.0))
    });
    about.push((format!("Spectrum {}{fast}", paint.tier.name()), QUIET, 2));
    if !paint.caution.is_empty() {
        about.push((format!("Caution. {}", paint.caution), INK, 5));
    }
    about
}

/// Short lines off the grid's edges and small crosses within it, where a knife goes.
fn cut_marks(leaf: &mut Leaf, grid: Area) {
    const ARM: f32 = 1.6;
    let [width, height] = CARD;
    let columns = (grid.width / width).round() as usize;
    let rows = (grid.height / height).round() as usize;
    for row in 0..=rows {
        for column in 0..=columns {
            let [x, y] = [grid.left + width * column as f32, grid.top + height * row as f32];
            leaf.line(&[[x - ARM, y], [x + ARM, y]], Stroke::HAIRLINE);
            leaf.line(&[[x, y - ARM], [x, y + ARM]], Stroke::HAIRLINE);
        }
    }
}
