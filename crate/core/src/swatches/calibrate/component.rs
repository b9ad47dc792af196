//! Paints and swatches that hang together.

use super::swatch::Swatch;

/// Paints connected by swatches, and those swatches; both by index.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Component {
    pub(super) paints: Vec<usize>,
    pub(super) swatches: Vec<usize>,
}

/// Splits paints and swatches where nothing connects them.
pub(super) fn components(paints: usize, swatches: &[Swatch]) -> Vec<Component> {
    let mut group: Vec<usize> = (0..paints).collect();
    for swatch in swatches {
        let into = swatch.parts.iter().map(|(paint, _)| group[*paint]).min();
        let joined: Vec<usize> = swatch.parts.iter().map(|(paint, _)| group[*paint]).collect();
        for member in &mut group {
            if let (Some(into), true) = (into, joined.contains(member)) {
                *member = into;
            }
        }
    }
    let mut found = vec![Component::default(); paints];
    for (paint, root) in group.iter().enumerate() {
        found[*root].paints.push(paint);
    }
    for (index, swatch) in swatches.iter().enumerate() {
        if let Some((paint, _)) = swatch.parts.first() {
            found[group[*paint]].swatches.push(index);
        }
    }
    found.retain(|component| !component.swatches.is_empty());
    found
}
