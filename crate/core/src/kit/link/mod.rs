//! A kit as a short text for a link's fragment.
//!
//! ```text
//! text     = base64url without padding of the bytes
//! bytes    = version  content  checksum
//! version  = 1 | 2
//! content  = body                      in version 1
//!          | section*                  in version 2, by ascending tag
//! checksum = CRC-16/IBM-SDLC of version and content, low byte first
//!
//! section  = varint(tag)  varint(length)  payload of that many bytes
//! 1        = body
//! 2        = L  a  b                   own paper, in halves: a byte, two signed
//! 3        = count  puddle*
//! 4        = count  targets*
//! 5        = count  own*
//! 6        = text(note)  count  text(task)*     for a class: up to 280 and 120 characters, up to 8 tasks
//! 7        = id*                       of all own paints; left out where each is what follows from the paint
//!
//! body     = capacity  stock  count  pan*count  title in UTF-8
//! pan      = varint(2 n)               a whole pan of paint n
//!          | varint(2 m + 1) varint(n) a split pan of paints m and n
//! puddle   = signed(load in quarter octaves)  count  (varint(paint) varint(parts))*count
//! targets  = length  name in UTF-8  count  (L  a  b  weight)*count, L, a and b signed halves
//! own      = text(name) text(code) text(caution) rating*4 origin      numbered from 4096 on
//! id       = 6 bytes               without section 7: the last 6 of FNV-1a, 64 bits, over own, high byte first
//! text     = length  UTF-8
//! rating   = a byte: 0 where it is not rated, else 1 more than it is
//! origin   = 0  count  (varint(paint) varint(parts))*count                a mixture
//!          | 1  paper  patch                                              masstone alone
//!          | 2  paper  patch  signed(load in quarter octaves)  patch      and a wash
//! paper    = stock | 255  L  a  b      L a byte, a and b signed, in halves
//! patch    = 0  L  a  b                signed halves
//!          | 1  signed*36              reflectance in 2000ths: off the line through the two bands before
//! varint   = 7 bits a byte, low bits first, high bit set on all but the last
//! signed   = varint of 2 n from 0 up, of -2 n - 1 below
//! ```
//!
//! One kit has one text: it is of version 1 where that says all, a section
//! with nothing to say is left out, numbers are as short as they can be, and a
//! text that decodes to a kit which encodes otherwise is refused. A new thing
//! gets a new tag; a program that does not know it says so. Both versions stay
//! readable for ever; golden vectors in the tests keep them so.

use base64ct::{Base64UrlUnpadded, Encoding};

use crate::error::Error;
use crate::kit::brief::Brief;
use crate::kit::link::bytes::{Input, own_paper, push_paint, push_section, read_own_paper};
use crate::kit::link::sections::{brief, puddles, read_brief, read_puddles, read_targets_list, targets};
use crate::kit::{Kit, Pan};
use crate::mixing::recipe::Recipe;
use crate::optics::paper::{KitPaper, Stock};
use crate::paint::number::PaintNumber;
use crate::paint::shelf::Shelf;
use crate::swatches::own_paint::Origin;
use crate::text::varint;

mod bytes;
mod own;
mod sections;

pub use own::id_of;

/// Newest version this program reads and writes.
pub const NEWEST: u8 = SECTIONS;

/// Longest text it reads; above any kit's.
pub const LONGEST: usize = 120_000;

const PLAIN: u8 = 1;
const SECTIONS: u8 = 2;

const BODY: u32 = 1;
const OWN_PAPER: u32 = 2;
const PUDDLES: u32 = 3;
const TARGETS: u32 = 4;
const OWN_PAINTS: u32 = 5;
const BRIEF: u32 = 6;
const OWN_IDS: u32 = 7;

const CRC: crc::Crc<u16> = crc::Crc::<u16>::new(&crc::CRC_16_IBM_SDLC);

/// The kit as text: letters, digits, `-` and `_` only.
#[must_use]
pub fn encode(kit: &Kit) -> String {
    let own = match kit.paper() {
        KitPaper::Stock(_) => None,
        KitPaper::Own(own) => Some(own),
    };
    let mut bytes = Vec::new();
    let is_plain = own.is_none()
        && kit.puddles().is_empty()
        && kit.targets().is_empty()
        && kit.own_paints().is_empty()
        && kit.brief().is_empty();
    if is_plain {
        bytes.push(PLAIN);
        bytes.extend(body(kit));
    } else {
        bytes.push(SECTIONS);
        push_section(&mut bytes, BODY, &body(kit));
        if let Some(own) = own {
            push_section(&mut bytes, OWN_PAPER, &own_paper(own));
        }
        if !kit.puddles().is_empty() {
            push_section(&mut bytes, PUDDLES, &puddles(kit.puddles()));
        }
        if !kit.targets().is_empty() {
            push_section(&mut bytes, TARGETS, &targets(kit.targets()));
        }
        if !kit.own_paints().is_empty() {
            push_section(&mut bytes, OWN_PAINTS, &own::write(kit.own_paints()));
        }
        if !kit.brief().is_empty() {
            push_section(&mut bytes, BRIEF, &brief(kit.brief()));
        }
        if let Some(ids) = own::write_ids(kit.own_paints()) {
            push_section(&mut bytes, OWN_IDS, &ids);
        }
    }
    bytes.extend(CRC.checksum(&bytes).to_le_bytes());
    Base64UrlUnpadded::encode_string(&bytes)
}

fn body(kit: &Kit) -> Vec<u8> {
    let mut bytes = vec![kit.capacity() as u8, kit.stock() as u8, kit.pans().len() as u8];
    for pan in kit.pans() {
        match *pan {
            Pan::Whole(paint) => varint::push(&mut bytes, u32::from(paint.get()) << 1),
            Pan::Split(left, right) => {
                varint::push(&mut bytes, u32::from(left.get()) << 1 | 1);
                push_paint(&mut bytes, right);
            }
        }
    }
    bytes.extend(kit.title().as_bytes());
    bytes
}

/// Reads a kit back.
///
/// # Errors
///
/// [`Error::UnknownVersion`] and [`Error::UnknownSection`] for what a newer
/// program wrote, [`Error::DamagedLink`] for a text cut short or changed,
/// [`Error::UnknownPaint`] for a paint `shelf` lacks.
///
/// ```
/// use washpath_core::{Kit, Pan, Part, Puddle, Recipe, Shelf, Stock, link};
/// let kit = Kit::new("Harbour", 12, Stock::Cream, vec![Pan::Whole(1.into()), Pan::Split(2.into(), 3.into())])?
///     .with_puddles(vec![Puddle::new(Recipe::new(&[Part::new(1, 2), Part::new(3, 1)])?, 0.5)?])?;
/// assert_eq!(link::decode(&link::encode(&kit), Shelf::built_in())?, kit);
/// # Ok::<(), washpath_core::Error>(())
/// ```
pub fn decode(text: &str, shelf: &Shelf) -> Result<Kit, Error> {
    if text.len() > LONGEST {
        return Err(Error::DamagedLink("it is longer than any kit"));
    }
    let bytes = Base64UrlUnpadded::decode_vec(text)
        .map_err(|_| Error::DamagedLink("it is cut short or holds characters no link has"))?;
    let (content, checksum) = bytes.split_last_chunk::<2>().ok_or(Error::DamagedLink("it is cut short"))?;
    if CRC.checksum(content) != u16::from_le_bytes(*checksum) {
        return Err(Error::DamagedLink("it was changed or cut short on its way"));
    }
    let mut input = Input(content);
    let kit = match input.byte()? {
        PLAIN => read_body(&mut input)?,
        SECTIONS => read_sections(&mut input)?,
        version => return Err(Error::UnknownVersion { version, newest: NEWEST }),
    };
    if encode(&kit) != text {
        return Err(Error::DamagedLink("it is not written as this program writes it"));
    }
    let in_puddles = kit.puddles().iter().flat_map(|puddle| puddle.recipe().parts());
    for paint in kit.paints().into_iter().chain(in_puddles.map(|part| part.paint)) {
        match paint.own_index() {
            Some(index) if index < kit.own_paints().len() => {}
            _ => drop(shelf.get(paint)?),
        }
    }
    let mixed = kit.own_paints().iter().filter_map(|paint| match paint.origin() {
        Origin::Mixture(recipe) => Some(recipe),
        Origin::Swatches { .. } => None,
    });
    for part in mixed.flat_map(Recipe::parts) {
        shelf.get(part.paint)?;
    }
    // Behind the check, which an old link with what nobody sees in a name passes as it is written.
    Ok(kit.cleaned())
}

/// Sections in any order: another than ours is noticed when the kit is encoded again.
fn read_sections(input: &mut Input<'_>) -> Result<Kit, Error> {
    let (mut kit, mut own, mut puddles, mut targets, mut paints) =
        (None, None, Vec::new(), Vec::new(), Vec::new());
    let mut brief = Brief::default();
    while !input.0.is_empty() {
        let tag = input.varint()?;
        let length = input.varint()?;
        let mut payload = Input(input.bytes(length as usize)?);
        match tag {
            BODY => kit = Some(read_body(&mut payload)?),
            OWN_PAPER => own = Some(read_own_paper(&mut payload)?),
            PUDDLES => puddles = read_puddles(&mut payload)?,
            TARGETS => targets = read_targets_list(&mut payload)?,
            OWN_PAINTS => paints = own::read(&mut payload)?,
            BRIEF => brief = read_brief(&mut payload)?,
            OWN_IDS => paints = own::read_ids(&mut payload, paints)?,
            _ => return Err(Error::UnknownSection(tag)),
        }
    }
    let kit = kit.ok_or(Error::DamagedLink("it holds no kit"))?;
    let kit = kit.with_puddles(puddles)?.with_targets(targets)?.with_own_paints(paints)?.with_brief(brief);
    Ok(match own {
        Some(own) => kit.with_paper(KitPaper::Own(own)),
        None => kit,
    })
}

fn read_body(input: &mut Input<'_>) -> Result<Kit, Error> {
    let capacity = usize::from(input.byte()?);
    let stock = *Stock::ALL.get(usize::from(input.byte()?)).ok_or(Error::DamagedLink("it names no paper"))?;
    let count = input.byte()?;
    let mut pans = Vec::with_capacity(usize::from(count));
    for _ in 0..count {
        let first = input.varint()?;
        let paint = PaintNumber::new((first >> 1) as u16);
        pans.push(match first & 1 {
            0 => Pan::Whole(paint),
            _ => Pan::Split(paint, input.paint()?),
        });
    }
    let title = std::str::from_utf8(input.0).map_err(|_| Error::DamagedLink("its title is not text"))?;
    Kit::new(title, capacity, stock, pans)
}

#[cfg(test)]
mod tests;
