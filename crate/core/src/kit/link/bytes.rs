//! What every part of a link is made of: bytes, numbers, texts, recipes.

use crate::error::Error;
use crate::mixing::load::Load;
use crate::mixing::part::Part;
use crate::mixing::recipe::Recipe;
use crate::optics::paper::OwnPaper;
use crate::paint::number::PaintNumber;
use crate::text::varint;

pub(super) const BROKEN_NUMBER: Error =
    Error::DamagedLink("it ends too early or holds a number no paint has");

pub(super) fn push_section(bytes: &mut Vec<u8>, tag: u32, payload: &[u8]) {
    varint::push(bytes, tag);
    varint::push(bytes, payload.len() as u32);
    bytes.extend(payload);
}

pub(super) fn push_recipe(bytes: &mut Vec<u8>, recipe: &Recipe) {
    bytes.push(recipe.parts().len() as u8);
    for part in recipe.parts() {
        push_paint(bytes, part.paint);
        varint::push(bytes, u32::from(part.parts));
    }
}

pub(super) fn push_paint(bytes: &mut Vec<u8>, paint: PaintNumber) {
    varint::push(bytes, u32::from(paint.get()));
}

pub(super) fn push_text(bytes: &mut Vec<u8>, text: &str) {
    varint::push(bytes, text.len() as u32);
    bytes.extend(text.as_bytes());
}

pub(super) fn own_paper(own: OwnPaper) -> Vec<u8> {
    let [l, a, b] = own.halves();
    let mut bytes = vec![l as u8];
    varint::push_signed(&mut bytes, a);
    varint::push_signed(&mut bytes, b);
    bytes
}

pub(super) fn read_own_paper(input: &mut Input<'_>) -> Result<OwnPaper, Error> {
    let l = input.byte()?.into();
    OwnPaper::of_halves([l, input.signed()?, input.signed()?])
}

/// What is left to be read.
pub(super) struct Input<'a>(pub(super) &'a [u8]);

impl<'a> Input<'a> {
    pub(super) fn byte(&mut self) -> Result<u8, Error> {
        Ok(self.bytes(1)?[0])
    }

    pub(super) fn bytes(&mut self, count: usize) -> Result<&'a [u8], Error> {
        let (first, rest) = self.0.split_at_checked(count).ok_or(Error::DamagedLink("it ends too early"))?;
        self.0 = rest;
        Ok(first)
    }

    /// A length and so much UTF-8; `fault` says what is not text.
    pub(super) fn text(&mut self, fault: &'static str) -> Result<&'a str, Error> {
        let length = self.varint()?;
        std::str::from_utf8(self.bytes(length as usize)?).map_err(|_| Error::DamagedLink(fault))
    }

    /// Three bytes hold any doubled paint number, and any length.
    pub(super) fn varint(&mut self) -> Result<u32, Error> {
        varint::take(&mut self.0).ok_or(BROKEN_NUMBER)
    }

    /// Parts of a recipe, as they were written.
    pub(super) fn parts(&mut self) -> Result<Vec<Part>, Error> {
        let count = self.byte()?;
        (0..count).map(|_| Ok(Part { paint: self.paint()?, parts: self.varint()? as u16 })).collect()
    }

    pub(super) fn paint(&mut self) -> Result<PaintNumber, Error> {
        Ok(PaintNumber::new(self.varint()? as u16))
    }

    pub(super) fn signed(&mut self) -> Result<i16, Error> {
        varint::take_signed(&mut self.0).ok_or(BROKEN_NUMBER)
    }

    /// A load in quarter octaves; nothing where no mix has it.
    pub(super) fn load(&mut self) -> Result<Option<Load>, Error> {
        Ok(i8::try_from(self.signed()?).ok().and_then(Load::of_quarters))
    }
}
