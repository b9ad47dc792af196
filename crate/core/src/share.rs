//! A kit as a short text for a link's fragment.
//!
//! ```text
//! text     = base64url without padding of the bytes
//! bytes    = version  body  checksum
//! version  = 1
//! body     = capacity  stock  count  pan*count  title in UTF-8
//! pan      = varint(2 n)               a whole pan of paint n
//!          | varint(2 m + 1) varint(n) a split pan of paints m and n
//! checksum = CRC-16/IBM-SDLC of version and body, low byte first
//! varint   = 7 bits a byte, low bits first, high bit set on all but the last
//! ```
//!
//! One kit has one text: numbers are as short as they can be, and a text that
//! decodes to a kit which encodes otherwise is refused. Version 1 stays
//! readable for ever; golden vectors in the tests keep it so.

use base64::Engine;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;

use crate::error::Error;
use crate::kit::{Kit, Pan};
use crate::paper::Stock;
use crate::shelf::Shelf;

/// Version this program writes.
pub const VERSION: u8 = 1;

/// Longest text it reads; far above any kit's.
pub const LONGEST: usize = 2_000;

const CRC: crc::Crc<u16> = crc::Crc::<u16>::new(&crc::CRC_16_IBM_SDLC);

/// The kit as text: letters, digits, `-` and `_` only.
#[must_use]
pub fn encode(kit: &Kit) -> String {
    let mut bytes = vec![VERSION, kit.capacity() as u8, kit.stock() as u8, kit.pans().len() as u8];
    for pan in kit.pans() {
        match *pan {
            Pan::Whole(paint) => push_varint(&mut bytes, u32::from(paint) << 1),
            Pan::Split(left, right) => {
                push_varint(&mut bytes, u32::from(left) << 1 | 1);
                push_varint(&mut bytes, u32::from(right));
            }
        }
    }
    bytes.extend(kit.title().as_bytes());
    bytes.extend(CRC.checksum(&bytes).to_le_bytes());
    URL_SAFE_NO_PAD.encode(bytes)
}

/// Reads a kit back.
///
/// # Errors
///
/// [`Error::UnknownVersion`], [`Error::DamagedLink`] for a text cut short or
/// changed, [`Error::UnknownPaint`] for a paint `shelf` lacks.
///
/// ```
/// use washpath_core::{Kit, Pan, Shelf, Stock, share};
/// let kit = Kit::new("Harbour", 12, Stock::Cream, vec![Pan::Whole(1), Pan::Split(2, 3)])?;
/// assert_eq!(share::decode(&share::encode(&kit), Shelf::built_in())?, kit);
/// # Ok::<(), washpath_core::Error>(())
/// ```
pub fn decode(text: &str, shelf: &Shelf) -> Result<Kit, Error> {
    if text.len() > LONGEST {
        return Err(Error::DamagedLink("it is longer than any kit"));
    }
    let bytes = URL_SAFE_NO_PAD
        .decode(text)
        .map_err(|_| Error::DamagedLink("it is cut short or holds characters no link has"))?;
    let (content, checksum) = bytes.split_last_chunk::<2>().ok_or(Error::DamagedLink("it is cut short"))?;
    if CRC.checksum(content) != u16::from_le_bytes(*checksum) {
        return Err(Error::DamagedLink("it was changed or cut short on its way"));
    }
    let mut input = Input(content);
    match input.byte()? {
        VERSION => {}
        version => return Err(Error::UnknownVersion(version)),
    }
    let kit = body(&mut input)?;
    if encode(&kit) != text {
        return Err(Error::DamagedLink("it is not written as this program writes it"));
    }
    for paint in kit.paints() {
        shelf.get(paint)?;
    }
    Ok(kit)
}

fn body(input: &mut Input<'_>) -> Result<Kit, Error> {
    let capacity = usize::from(input.byte()?);
    let stock = *Stock::ALL.get(usize::from(input.byte()?)).ok_or(Error::DamagedLink("it names no paper"))?;
    let count = input.byte()?;
    let mut pans = Vec::with_capacity(usize::from(count));
    for _ in 0..count {
        let first = input.varint()?;
        let paint = (first >> 1) as u16;
        pans.push(match first & 1 {
            0 => Pan::Whole(paint),
            _ => Pan::Split(paint, input.varint()? as u16),
        });
    }
    let title = std::str::from_utf8(input.0).map_err(|_| Error::DamagedLink("its title is no text"))?;
    Kit::new(title, capacity, stock, pans)
}

fn push_varint(bytes: &mut Vec<u8>, mut value: u32) {
    while value >= 0x80 {
        bytes.push(value as u8 | 0x80);
        value >>= 7;
    }
    bytes.push(value as u8);
}

struct Input<'a>(&'a [u8]);

impl Input<'_> {
    fn byte(&mut self) -> Result<u8, Error> {
        let (first, rest) = self.0.split_first().ok_or(Error::DamagedLink("it ends too early"))?;
        self.0 = rest;
        Ok(*first)
    }

    /// Three bytes hold any doubled paint number.
    fn varint(&mut self) -> Result<u32, Error> {
        let mut value = 0;
        for shift in [0, 7, 14] {
            let byte = self.byte()?;
            value |= u32::from(byte & 0x7f) << shift;
            if byte & 0x80 == 0 {
                return Ok(value);
            }
        }
        Err(Error::DamagedLink("it holds a number no paint has"))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn fifteen_pans_fit_in_160_characters() {
        let shelf = Shelf::built_in();
        let numbers: Vec<u16> = shelf.paints().iter().rev().map(|paint| paint.number).collect();
        let pans = (0..15).map(|i| Pan::Split(numbers[2 * i], numbers[2 * i + 1])).collect();
        let kit = Kit::new("Four October days on the harbour wall", 15, Stock::Tan, pans).unwrap();
        assert!(encode(&kit).len() <= 160, "{} characters", encode(&kit).len());
    }

    #[test]
    fn a_newer_version_is_told_from_damage() {
        let mut bytes = vec![9, 1, 2, 3];
        bytes.extend(CRC.checksum(&bytes).to_le_bytes());
        let text = URL_SAFE_NO_PAD.encode(bytes);
        assert_eq!(decode(&text, Shelf::built_in()), Err(Error::UnknownVersion(9)));
    }

    #[test]
    fn a_paint_of_a_later_shelf_is_named() {
        let kit = Kit::new("", 1, Stock::Cream, vec![Pan::Whole(60_000)]).unwrap();
        let error = decode(&encode(&kit), Shelf::built_in()).unwrap_err();
        assert_eq!(error.to_string(), "no paint \"number 60000\" on the shelf");
    }

    fn kits() -> impl Strategy<Value = Kit> {
        let pan = (1u16..20, 1u16..20, any::<bool>())
            .prop_map(|(m, n, split)| if split { Pan::Split(m, n) } else { Pan::Whole(m) });
        (".{0,40}", 0usize..5, proptest::collection::vec(pan, 0..15))
            .prop_map(|(title, stock, pans)| Kit::new(&title, 15, Stock::ALL[stock], pans).unwrap())
    }

    proptest! {
        #[test]
        fn every_kit_comes_back(kit in kits()) {
            prop_assert_eq!(decode(&encode(&kit), Shelf::built_in()), Ok(kit));
        }

        #[test]
        fn every_cut_and_every_changed_letter_is_noticed(kit in kits(), at in 0usize..200, letter in "[A-Za-z0-9_-]") {
            let text = encode(&kit);
            let at = at % text.len();
            prop_assert!(decode(&text[..at], Shelf::built_in()).is_err());
            let changed = format!("{}{letter}{}", &text[..at], &text[at + 1..]);
            prop_assert!(changed == text || decode(&changed, Shelf::built_in()).is_err());
        }

        #[test]
        fn no_text_is_a_panic(text in ".{0,100}") {
            let _ = decode(&text, Shelf::built_in());
        }
    }
}
