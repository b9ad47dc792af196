//! The sheet of one pair: ratio across, load down, and where it turns neutral.

use washpath_core::{
    Crossing, CrossingKind, Decimal, Film, Laid, NAMED_LOADS, NamedLoad, Part, Path, Ratio, Recipe,
    SHEET_RATIOS, position_of, whole_parts,
};

use crate::area::Area;
use crate::chart::sign_in;
use crate::error::Error;
use crate::font::{fit, wrap};
use crate::leaf::{Anchor, INK, Leaf, QUIET, Stroke};
use crate::order::Order;

/// Cells are no higher than this.
const MOST_HEIGHT: f32 = 42.0;
const NAMES: f32 = 21.0;

/// Two ends of a path and how they are laid.
#[derive(Clone, Debug)]
pub struct Pair {
    /// A and B: paints or mixes.
    pub ends: [Recipe; 2],
    /// Mixed or glazed.
    pub laid: Laid,
}

/// The sheet of a pair.
///
/// # Errors
///
/// A paint that is not on the shelf.
pub fn pair(order: &Order<'_>, pair: &Pair) -> Result<Vec<Leaf>, Error> {
    let films = [pair.ends[0].film(order.shelf)?, pair.ends[1].film(order.shelf)?];
    let names = [name(order, &pair.ends[0])?, name(order, &pair.ends[1])?];
    let mut leaf = order.leaf();
    let body = order.body();
    let headings = ends(&mut leaf, body, &names) + 9.0;
    let cells = body.after(NAMES).below(headings);
    let cells = cells.above(cells.height.min(MOST_HEIGHT * NAMED_LOADS.len() as f32));
    for (i, ratio) in SHEET_RATIOS.into_iter().enumerate() {
        let x = cells.column(i, SHEET_RATIOS.len()).middle()[0];
        leaf.text([x, cells.top - 2.0], 3.2, INK, Anchor::Middle, ratio_name(ratio));
    }
    let mut turns = Vec::new();
    for (i, NamedLoad { load, name: wash, plain_sign: sign, .. }) in NAMED_LOADS.into_iter().enumerate() {
        let row = cells.row(i, NAMED_LOADS.len());
        let path = path(&films, pair.laid, order, load);
        let crossing = path.crossing();
        draw_row(&mut leaf, order, row, &path);
        let heading = Area { left: body.left, width: NAMES - 2.0, ..row };
        row_heading(&mut leaf, heading, [wash, sign], &crossing);
        if crossing.kind != CrossingKind::None {
            turns.push([across(cells, crossing.share), row.middle()[1]]);
        }
    }
    neutral_line(&mut leaf, &turns);
    let laid = match pair.laid {
        Laid::Mixed => "Mixed, in parts A:B",
        Laid::AOverB => "A glazed over dry B, in parts A:B",
        Laid::BOverA => "B glazed over dry A, in parts A:B",
    };
    let reading = format!("{laid}; {}; ring: nearest to neutral", order.halves());
    Ok(order.bound(vec![leaf], "Sheet of a pair", &reading))
}

fn path<'a>(films: &'a [Film; 2], laid: Laid, order: &'a Order<'_>, load: f32) -> Path<'a> {
    Path::new(&films[0], &films[1], &order.view, load).laid(laid)
}

/// "Ultramarine blue, PB29"; a mix by its parts.
fn name(order: &Order<'_>, recipe: &Recipe) -> Result<String, Error> {
    let mut words = Vec::new();
    for Part { paint, parts } in recipe.parts() {
        let paint = order.shelf.get(*paint)?;
        words.push(match recipe.parts() {
            [_] => format!("{}, {}", paint.name, paint.code),
            _ => format!("{parts} {} {}", paint.name, paint.code),
        });
    }
    Ok(words.join(" + "))
}

/// Both ends by name: A on the left, B on the right; answers how far down they go.
fn ends(leaf: &mut Leaf, area: Area, names: &[String; 2]) -> f32 {
    const LINE: f32 = 4.2;
    let mut most = 1;
    for (i, letter) in ["A", "B"].into_iter().enumerate() {
        let half = area.column(i, 2).inset(0.5);
        leaf.text([half.left, half.top + 6.0], 5.4, INK, Anchor::Start, letter);
        let lines = wrap(&names[i], half.width - 7.0, 3.4, 3);
        most = most.max(lines.len());
        for (line, words) in lines.into_iter().enumerate() {
            leaf.text([half.left + 5.5, half.top + 5.6 + LINE * line as f32], 3.4, INK, Anchor::Start, words);
        }
    }
    3.0 + LINE * most as f32
}

fn ratio_name(ratio: Ratio) -> String {
    match ratio {
        Ratio { b: 0, .. } => "A".into(),
        Ratio { a: 0, .. } => "B".into(),
        _ => ratio.to_string(),
    }
}

fn draw_row(leaf: &mut Leaf, order: &Order<'_>, row: Area, path: &Path<'_>) {
    for (i, ratio) in SHEET_RATIOS.into_iter().enumerate() {
        let cell = row.column(i, SHEET_RATIOS.len()).inset(0.7);
        let colour = path.colour(ratio.share());
        let upper = cell.row(0, 2);
        leaf.rectangle(upper, order.fill(colour), None);
        if order.outlines {
            sign_in(leaf, upper, &["L*", &Decimal(colour.l.round()).to_string()]);
        }
        leaf.line(&[[cell.left, upper.bottom()], [cell.right(), upper.bottom()]], Stroke::HAIRLINE);
        leaf.rectangle(cell, None, Some(Stroke::HAIRLINE));
    }
}

fn row_heading(leaf: &mut Leaf, area: Area, [wash, sign]: [&str; 2], crossing: &Crossing) {
    let [_, middle] = area.middle();
    let ratio = whole_parts(crossing.share);
    let told = match crossing.kind {
        CrossingKind::Pure => format!("{ratio} a pure grey"),
        CrossingKind::Near => format!("{ratio} nearly grey, leaning {}", crossing.lean.name()),
        CrossingKind::Dull => format!("{ratio} dullest, still {}", crossing.lean.name()),
        CrossingKind::None => "no mix greyer than the ends".into(),
    };
    let lines = wrap(&told, area.width, 2.2, 3);
    leaf.text([area.left, middle - 3.6], 3.0, INK, Anchor::Start, fit(wash, area.width, 3.0));
    leaf.text([area.left, middle - 0.2], 2.4, QUIET, Anchor::Start, format!("load {sign}"));
    for (i, line) in lines.into_iter().enumerate() {
        leaf.text([area.left, middle + 3.4 + 2.7 * i as f32], 2.2, QUIET, Anchor::Start, line);
    }
}

/// Where a share stands across the columns, between their middles evenly in position along the path.
fn across(cells: Area, at: f32) -> f32 {
    let columns = SHEET_RATIOS.map(|ratio| position_of(ratio.share()));
    let here = position_of(at);
    let after = columns.iter().position(|column| *column >= here).unwrap_or(SHEET_RATIOS.len() - 1).max(1);
    let (low, high) = (columns[after - 1], columns[after]);
    let between = ((here - low) / (high - low)).clamp(0.0, 1.0);
    cells.left + cells.width / SHEET_RATIOS.len() as f32 * (after as f32 - 0.5 + between)
}

/// A ring in each row, and the line they make.
fn neutral_line(leaf: &mut Leaf, turns: &[[f32; 2]]) {
    const RING: f32 = 1.5;
    let white = Stroke { width: 0.7, ink: [255; 3], dashed: false };
    for stroke in [white, Stroke { width: 0.2, ..Stroke::STRONG }] {
        if turns.len() > 1 {
            leaf.line(turns, stroke);
        }
    }
    for turn in turns {
        leaf.circle(*turn, RING, Some([255; 3]), Some(Stroke::STRONG));
    }
}
