//! Puddles, targets and what is asked of a class as bytes of a link.

use crate::error::Error;
use crate::kit::brief::Brief;
use crate::kit::link::bytes::{Input, push_recipe, push_text};
use crate::kit::named_targets::NamedTargets;
use crate::kit::puddle::Puddle;
use crate::mixing::recipe::Recipe;
use crate::text::varint;

pub(super) fn puddles(puddles: &[Puddle]) -> Vec<u8> {
    let mut bytes = vec![puddles.len() as u8];
    for puddle in puddles {
        varint::push_signed(&mut bytes, puddle.load().quarters().into());
        push_recipe(&mut bytes, puddle.recipe());
    }
    bytes
}

pub(super) fn targets(targets: &[NamedTargets]) -> Vec<u8> {
    let mut bytes = vec![targets.len() as u8];
    for targets in targets {
        push_text(&mut bytes, targets.name());
        bytes.push(targets.halves().len() as u8);
        for ([l, a, b], weight) in targets.halves() {
            for value in [*l, *a, *b] {
                varint::push_signed(&mut bytes, value);
            }
            bytes.push(*weight);
        }
    }
    bytes
}

pub(super) fn brief(brief: &Brief) -> Vec<u8> {
    let mut bytes = Vec::new();
    push_text(&mut bytes, brief.note());
    bytes.push(brief.tasks().len() as u8);
    brief.tasks().iter().for_each(|task| push_text(&mut bytes, task));
    bytes
}

pub(super) fn read_puddles(input: &mut Input<'_>) -> Result<Vec<Puddle>, Error> {
    let count = input.byte()?;
    (0..count).map(|_| read_puddle(input)).collect()
}

pub(super) fn read_targets_list(input: &mut Input<'_>) -> Result<Vec<NamedTargets>, Error> {
    let count = input.byte()?;
    (0..count).map(|_| read_targets(input)).collect()
}

pub(super) fn read_targets(input: &mut Input<'_>) -> Result<NamedTargets, Error> {
    let name = input.text("a place's name is not text")?;
    let count = input.byte()?;
    let colours = (0..count)
        .map(|_| Ok(([input.signed()?, input.signed()?, input.signed()?], input.byte()?)))
        .collect::<Result<_, Error>>()?;
    NamedTargets::of_halves(name, colours)
}

pub(super) fn read_brief(input: &mut Input<'_>) -> Result<Brief, Error> {
    const NO_TEXT: &str = "its note or a task is not text";
    let note = input.text(NO_TEXT)?;
    let count = input.byte()?;
    let tasks = (0..count).map(|_| input.text(NO_TEXT)).collect::<Result<Vec<_>, _>>()?;
    Brief::new(note, &tasks)
}

pub(super) fn read_puddle(input: &mut Input<'_>) -> Result<Puddle, Error> {
    let load = input.load()?;
    let parts = input.parts()?;
    load.and_then(|load| Some(Puddle::at(Recipe::new(&parts).ok()?, load)))
        .ok_or(Error::DamagedLink("it holds a puddle nobody can mix"))
}
