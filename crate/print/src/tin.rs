//! The tin: a plan of its pans, and labels to cut out at true size.

use washpath_core::{Kit, Paint, Pan};

use crate::area::Area;
use crate::error::Error;
use crate::font::{fit, width, wrap};
use crate::leaf::{Anchor, INK, Leaf, QUIET, Stroke};
use crate::order::Order;
use crate::qr::Code;

/// Outer sizes of pans, mm. Common practice, no source; makers differ by a millimetre or two.
pub const HALF_PAN: [f32; 2] = [19.0, 15.0];
/// The same of a full pan.
pub const FULL_PAN: [f32; 2] = [30.0, 19.0];

/// Load of the colours that show a paint: a strong wash.
const SHOWN: f32 = 0.5;

/// Numbers of pans side by side in the plan.
const COLUMNS: [usize; 4] = [4, 6, 8, 12];
/// Largest pan of the plan.
const MOST: [f32; 2] = [46.0, 30.0];

/// Which labels go with the plan.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Labels {
    /// Those of half pans.
    pub half: bool,
    /// Those of full pans.
    pub full: bool,
}

/// The plan of a kit's tin with the code of its link, if there is one, and its labels.
///
/// # Errors
///
/// No pan; a paint that is not on the shelf.
pub fn tin(order: &Order<'_>, kit: &Kit, labels: Labels, link: Option<&Code>) -> Result<Vec<Leaf>, Error> {
    if kit.pans().is_empty() {
        return Err(Error::Nothing);
    }
    let pans = kit.pans().iter().map(|pan| filled(order, *pan)).collect::<Result<Vec<_>, _>>()?;
    let mut leaves = vec![plan(order, kit.capacity(), &pans, link)];
    let sizes = [(labels.half, ("half pans", HALF_PAN)), (labels.full, ("full pans", FULL_PAN))];
    let sizes: Vec<_> = sizes.into_iter().filter(|(wanted, _)| *wanted).map(|(_, size)| size).collect();
    leaves.extend(label_leaves(order, &pans, &sizes));
    let reading = format!("{} of {} pans, in their places", pans.len(), kit.capacity());
    Ok(order.bound(leaves, "Tin", &reading))
}

type Filled<'a> = Vec<&'a Paint>;

fn filled<'a>(order: &Order<'a>, pan: Pan) -> Result<Filled<'a>, Error> {
    Ok(pan.paints().map(|paint| order.shelf.get(paint)).collect::<Result<_, _>>()?)
}

fn plan(order: &Order<'_>, capacity: usize, pans: &[Filled<'_>], link: Option<&Code>) -> Leaf {
    let mut leaf = order.leaf();
    let body = order.body();
    let side = link.map_or(0.0, Code::printed_side);
    // The code stands below the tin of an upright page, else beside it.
    let beside = order.landscape && link.is_some();
    let room = if beside { body.first(body.width - side - 8.0) } else { body };
    let room = if link.is_some() && !beside { room.above(room.height - side - 4.0) } else { room };
    let columns = columns(capacity, room);
    let rows = capacity.div_ceil(columns);
    let width = ((room.width - 4.0) / columns as f32).min(MOST[0]);
    let height = ((room.height - 4.0) / rows as f32).min(MOST[1]);
    let tray = Area::new(room.left, room.top, width * columns as f32 + 4.0, height * rows as f32 + 4.0);
    leaf.rectangle(tray, None, Some(Stroke::STRONG));
    let inner = tray.inset(2.0);
    for i in 0..capacity {
        let pan = inner.row(i / columns, rows).column(i % columns, columns).inset(0.8);
        match pans.get(i) {
            Some(paints) => draw_pan(&mut leaf, order, pan, paints),
            None => leaf.rectangle(pan, None, Some(Stroke::DASHED)),
        }
    }
    if let Some(code) = link {
        let [left, top] =
            if beside { [body.right() - side, body.top] } else { [body.left, tray.bottom() + 4.0] };
        code.draw(&mut leaf, left, top);
        let words = "Scan to open this kit on a phone";
        if beside {
            for (i, line) in wrap(words, side - 4.0, 2.8, 3).into_iter().enumerate() {
                leaf.text([left + 2.0, top + side + 3.0 + 3.6 * i as f32], 2.8, QUIET, Anchor::Start, line);
            }
        } else {
            let lines = wrap(words, (body.width - side - 3.0).min(40.0), 2.8, 4);
            let first = top + side / 2.0 - 1.8 * (lines.len() as f32 - 1.0);
            for (i, line) in lines.into_iter().enumerate() {
                leaf.text([left + side + 2.0, first + 3.6 * i as f32], 2.8, QUIET, Anchor::Start, line);
            }
        }
    }
    leaf
}

/// Columns that make the largest pans; as in a real tin four where they do as well.
fn columns(capacity: usize, room: Area) -> usize {
    let size = |columns: &usize| {
        let rows = capacity.div_ceil(*columns);
        (room.width / *columns as f32).min(MOST[0]) * (room.height / rows as f32).min(MOST[1])
    };
    let best =
        COLUMNS.iter().copied().reduce(|best, next| if size(&next) > size(&best) { next } else { best });
    best.unwrap_or(1).min(capacity.max(1))
}

fn draw_pan(leaf: &mut Leaf, order: &Order<'_>, area: Area, paints: &[&Paint]) {
    for (i, paint) in paints.iter().enumerate() {
        let own = area.column(i, paints.len());
        let swatch = own.above(own.height * 0.5);
        leaf.rectangle(swatch, order.fill(order.view.colour(&paint.film, SHOWN)), None);
        let below = own.below(swatch.height);
        named(leaf, below.inset(0.6), paint);
        if i > 0 {
            leaf.line(&[[own.left, own.top], [own.left, own.bottom()]], Stroke::HAIRLINE);
        }
    }
    leaf.line(
        &[[area.left, area.top + area.height * 0.5], [area.right(), area.top + area.height * 0.5]],
        Stroke::HAIRLINE,
    );
    leaf.rectangle(area, None, Some(Stroke { width: 0.25, ..Stroke::STRONG }));
}

/// Code and name of a paint in as large letters as its area takes.
fn named(leaf: &mut Leaf, area: Area, paint: &Paint) {
    let code = (area.height * 0.34).min(area.width / width(&paint.code, 1.0)).min(3.6);
    let name = (code * 0.72).clamp(1.6, 2.4);
    let lines_fit = ((area.height - code) / (name * 1.15)).max(0.0) as usize;
    let lines = wrap(&paint.name, area.width, name, lines_fit.min(3));
    let used = code + name * 1.15 * lines.len() as f32;
    let (x, top) = (area.middle()[0], area.top + ((area.height - used) / 2.0).max(0.0));
    leaf.text([x, top + code * 0.8], code, INK, Anchor::Middle, paint.code.as_str());
    for (i, line) in lines.into_iter().enumerate() {
        let y = top + code + name * (0.95 + 1.15 * i as f32);
        leaf.text([x, y], name, QUIET, Anchor::Middle, line);
    }
}

/// Labels of each size edge to edge, so that one cut serves two.
fn label_leaves(order: &Order<'_>, pans: &[Filled<'_>], sizes: &[(&str, [f32; 2])]) -> Vec<Leaf> {
    const NOTE: f32 = 9.0;
    let body = order.body();
    let mut leaves: Vec<Leaf> = Vec::new();
    let mut top = f32::INFINITY;
    for (kind, [width, height]) in sizes {
        let columns = ((body.width / width) as usize).max(1);
        for (i, row) in pans.chunks(columns).enumerate() {
            let head = if i == 0 { NOTE } else { 0.0 };
            if top + head + height > body.bottom() {
                leaves.push(order.leaf());
                top = body.top;
            }
            let Some(leaf) = leaves.last_mut() else { continue };
            if i == 0 {
                let note = format!(
                    "Labels for {kind}, {} x {} mm: common practice, but makers differ. Try one first.",
                    *width as u8, *height as u8
                );
                leaf.text([body.left, top + 4.6], 2.8, QUIET, Anchor::Start, fit(&note, body.width, 2.8));
            }
            top += head;
            for (column, paints) in row.iter().enumerate() {
                let left = body.left + width * column as f32;
                draw_label(leaf, order, Area::new(left, top, *width, *height), paints);
            }
            top += height;
        }
        top += NOTE / 2.0;
    }
    leaves
}

fn draw_label(leaf: &mut Leaf, order: &Order<'_>, area: Area, paints: &[&Paint]) {
    for (i, paint) in paints.iter().enumerate() {
        let own = area.column(i, paints.len());
        let swatch = own.above(area.height * 0.26);
        if let Some(fill) = order.fill(order.view.colour(&paint.film, SHOWN)) {
            leaf.rectangle(swatch, Some(fill), None);
        }
        named(leaf, own.below(area.height * 0.28).inset(0.5), paint);
        if i > 0 {
            leaf.line(&[[own.left, own.top], [own.left, own.bottom()]], Stroke::DASHED);
        }
    }
    leaf.rectangle(area, None, Some(Stroke::HAIRLINE));
}
