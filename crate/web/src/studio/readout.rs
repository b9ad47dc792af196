//! Plain objects for the page.

use serde::Serialize;
use washpath_core::{
    Crossing, CrossingKind, Difference, Error, Laid, Paint, Path, Ratio, Recipe, Texture, whole_parts,
};

use crate::pair::Ready;
use crate::parts::{Parts, two_parts};
use crate::shelf::shelf;
use crate::swatch::Swatch;

/// A place on a path.
#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(crate) struct Mix {
    /// Share of B.
    pub share: f32,
    /// Whole parts of A and B nearest to it.
    #[serde(serialize_with = "two_parts")]
    pub parts: Ratio,
    /// The same as whole parts of paints, each once.
    pub recipe: Parts,
    /// Its colour.
    pub swatch: Swatch,
    /// How far real paint may be from it: median CIEDE2000.
    pub expected: f32,
    /// How it lies on the paper, as a sentence.
    pub texture: String,
}

impl Mix {
    pub(crate) fn new(ready: &Ready, path: &Path<'_>, share: f32, swatch: Swatch) -> Result<Self, Error> {
        let [a, b] = &ready.recipes;
        let recipe = Recipe::between(a, b, share)?;
        Ok(Self {
            share,
            parts: whole_parts(share),
            recipe: Parts::of(&recipe),
            swatch,
            expected: ready.expected(path, share),
            texture: texture(&recipe)?.words(),
        })
    }
}

/// How a recipe lies on the paper.
pub(crate) fn texture(recipe: &Recipe) -> Result<Texture, Error> {
    let shelf = shelf();
    let parts: Vec<(&Paint, f32)> = recipe
        .parts()
        .iter()
        .map(|part| Ok((shelf.get(part.paint)?, f32::from(part.parts))))
        .collect::<Result<_, Error>>()?;
    Ok(Texture::of(&parts))
}

/// One way to lay the paints of a mix.
#[derive(Serialize)]
pub(crate) struct Way {
    /// Its colour.
    pub swatch: Swatch,
    /// How it differs from the mix, in words; empty for the mix itself.
    pub difference: String,
}

impl Way {
    pub(crate) fn new(laid: Laid, swatch: Swatch, difference: Difference) -> Self {
        let difference = if laid == Laid::Mixed { String::new() } else { difference.words };
        Self { swatch, difference }
    }
}

/// Where a path comes closest to neutral.
#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(crate) struct CrossingReadout {
    /// The mix there.
    pub mix: Mix,
    /// `pure`, `near`, `dull` or `none`.
    pub kind: &'static str,
    /// Hue family it leans to.
    pub lean: &'static str,
}

impl CrossingReadout {
    pub(crate) fn new(
        ready: &Ready,
        path: &Path<'_>,
        crossing: Crossing,
        swatch: Swatch,
    ) -> Result<Self, Error> {
        Ok(Self {
            mix: Mix::new(ready, path, crossing.share, swatch)?,
            kind: kind_name(crossing.kind),
            lean: crossing.lean.name(),
        })
    }
}

const fn kind_name(kind: CrossingKind) -> &'static str {
    match kind {
        CrossingKind::Pure => "pure",
        CrossingKind::Near => "near",
        CrossingKind::Dull => "dull",
        CrossingKind::None => "none",
    }
}
