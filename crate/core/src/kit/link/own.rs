//! The painter's own paints as bytes of a link.

use crate::error::Error;
use crate::kit::link::bytes::{BROKEN_NUMBER, Input, own_paper, push_recipe, push_text, read_own_paper};
use crate::mixing::recipe::Recipe;
use crate::optics::paper::KitPaper;
use crate::optics::paper::Stock;
use crate::paint::packed::{push_bands, take_bands};
use crate::swatches::own_id::OwnId;
use crate::swatches::own_paint::{Origin, OwnPaint};
use crate::swatches::patch::{Patch, Wash};
use crate::text::varint;

const MIXTURE: u8 = 0;
const MASSTONE: u8 = 1;
const WITH_WASH: u8 = 2;
const COLOUR: u8 = 0;
const MEASURED: u8 = 1;
/// In place of a stock's number.
const OWN_SHEET: u8 = 255;

pub(super) fn write(paints: &[OwnPaint]) -> Vec<u8> {
    let mut bytes = vec![paints.len() as u8];
    paints.iter().for_each(|paint| write_paint(&mut bytes, paint));
    bytes
}

fn write_paint(bytes: &mut Vec<u8>, paint: &OwnPaint) {
    for text in [paint.name(), paint.code(), paint.caution()] {
        push_text(bytes, text);
    }
    bytes.extend(paint.ratings().map(|rating| rating.map_or(0, |rating| rating + 1)));
    write_origin(bytes, paint.origin());
}

/// The id of a paint; where it has none, one that follows from all it is, the same wherever it is read.
///
/// FNV-1a of 64 bits over the paint as a link writes it, the lower 48 kept.
#[must_use]
pub fn id_of(paint: &OwnPaint) -> OwnId {
    paint.id().unwrap_or_else(|| derived_id(paint))
}

fn derived_id(paint: &OwnPaint) -> OwnId {
    let mut bytes = Vec::new();
    write_paint(&mut bytes, paint);
    let hash = bytes.iter().fold(0xcbf2_9ce4_8422_2325_u64, |hash, byte| {
        (hash ^ u64::from(*byte)).wrapping_mul(0x0000_0100_0000_01b3)
    });
    let [_, _, id @ ..] = hash.to_be_bytes();
    OwnId::new(id)
}

/// Ids of all paints; nothing where each follows from what the paint is.
pub(super) fn write_ids(paints: &[OwnPaint]) -> Option<Vec<u8>> {
    let tells_more = paints.iter().any(|paint| paint.id().is_some_and(|id| id != derived_id(paint)));
    tells_more.then(|| paints.iter().flat_map(|paint| id_of(paint).bytes()).collect())
}

/// The paints under their ids.
pub(super) fn read_ids(input: &mut Input<'_>, paints: Vec<OwnPaint>) -> Result<Vec<OwnPaint>, Error> {
    let named = paints.into_iter().map(|paint| {
        let bytes = input.bytes(OwnId::BYTES)?.try_into().map_err(|_| BROKEN_NUMBER)?;
        Ok(paint.with_id(OwnId::new(bytes)))
    });
    named.collect()
}

fn write_origin(bytes: &mut Vec<u8>, origin: &Origin) {
    match origin {
        Origin::Mixture(recipe) => {
            bytes.push(MIXTURE);
            push_recipe(bytes, recipe);
        }
        Origin::Swatches { paper, masstone, wash } => {
            bytes.push(if wash.is_some() { WITH_WASH } else { MASSTONE });
            match paper {
                KitPaper::Stock(stock) => bytes.push(*stock as u8),
                KitPaper::Own(own) => {
                    bytes.push(OWN_SHEET);
                    bytes.extend(own_paper(*own));
                }
            }
            write_patch(bytes, masstone);
            if let Some(wash) = wash {
                varint::push_signed(bytes, wash.load.quarters().into());
                write_patch(bytes, &wash.patch);
            }
        }
    }
}

fn write_patch(bytes: &mut Vec<u8>, patch: &Patch) {
    match patch {
        Patch::Colour(halves) => {
            bytes.push(COLOUR);
            halves.iter().for_each(|half| varint::push_signed(bytes, *half));
        }
        Patch::Measured(steps) => {
            bytes.push(MEASURED);
            push_bands(bytes, &steps.map(|step| step as i16));
        }
    }
}

pub(super) fn read(input: &mut Input<'_>) -> Result<Vec<OwnPaint>, Error> {
    let count = input.byte()?;
    (0..count).map(|_| read_paint(input)).collect()
}

fn read_paint(input: &mut Input<'_>) -> Result<OwnPaint, Error> {
    let mut text = || input.text("a name or caution of a paint is not text");
    let (name, code, caution) = (text()?, text()?, text()?);
    let mut ratings = [None; 4];
    for rating in &mut ratings {
        *rating = input.byte()?.checked_sub(1);
    }
    OwnPaint::new(name, read_origin(input)?)?.with_code(code)?.with_caution(caution)?.with_ratings(ratings)
}

fn read_origin(input: &mut Input<'_>) -> Result<Origin, Error> {
    match input.byte()? {
        MIXTURE => Ok(Origin::Mixture(Recipe::new(&input.parts()?)?)),
        kind @ (MASSTONE | WITH_WASH) => {
            let paper = match input.byte()? {
                OWN_SHEET => KitPaper::Own(read_own_paper(input)?),
                stock => KitPaper::Stock(
                    *Stock::ALL.get(usize::from(stock)).ok_or(Error::DamagedLink("it names no paper"))?,
                ),
            };
            let masstone = read_patch(input)?;
            let mut wash = None;
            if kind == WITH_WASH {
                let load = input.load()?.ok_or(BROKEN_NUMBER)?;
                wash = Some(Wash { load, patch: read_patch(input)? });
            }
            Ok(Origin::Swatches { paper, masstone, wash })
        }
        _ => Err(Error::DamagedLink("it holds a paint made of nothing it knows")),
    }
}

fn read_patch(input: &mut Input<'_>) -> Result<Patch, Error> {
    let patch = match input.byte()? {
        COLOUR => Patch::Colour([input.signed()?, input.signed()?, input.signed()?]),
        MEASURED => {
            let steps = take_bands(&mut input.0).ok_or(BROKEN_NUMBER)?;
            Patch::Measured(Box::new(steps.map(|step| step as u16)))
        }
        _ => return Err(Error::DamagedLink("it holds a swatch that is neither colour nor spectrum")),
    };
    // What no swatch can be is refused as it is refused from the page.
    Patch::new(&patch.seen())?;
    Ok(patch)
}
