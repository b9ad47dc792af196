//! Plain objects for the page.

use serde::Serialize;
use washpath_core::{
    Crossing, CrossingKind, Difference, Error, Laid, Paint, Recipe, Shelf, Texture, whole_parts,
};

use crate::pair::Ready;
use crate::parts::Parts;
use crate::swatch::Swatch;

/// A place on a path.
#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(crate) struct Mix {
    /// Share of B.
    pub share: f32,
    /// Whole parts of A and B nearest to it.
    pub parts: [u16; 2],
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
    pub(crate) fn new(ready: &Ready, share: f32, swatch: Swatch) -> Result<Self, Error> {
        let [a, b] = &ready.recipes;
        let recipe = Recipe::between(a, b, share)?;
        Ok(Self {
            share,
            parts: whole_parts(share),
            recipe: recipe.parts().to_vec(),
            swatch,
            expected: ready.expected(share),
            texture: texture(&recipe)?.words(),
        })
    }
}

/// How a recipe lies on the paper.
pub(crate) fn texture(recipe: &Recipe) -> Result<Texture, Error> {
    let shelf = Shelf::built_in();
    let parts: Vec<(&Paint, f32)> = recipe
        .parts()
        .iter()
        .map(|(paint, count)| Ok((shelf.get(*paint)?, f32::from(*count))))
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
    pub(crate) fn new(ready: &Ready, crossing: Crossing, swatch: Swatch) -> Result<Self, Error> {
        Ok(Self {
            mix: Mix::new(ready, crossing.share, swatch)?,
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

/// A paint of the shelf.
#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
pub(crate) struct PaintReadout<'a> {
    number: u16,
    key: &'a str,
    code: &'a str,
    name: &'a str,
    aliases: &'a [String],
    family: &'a str,
    hue: &'a str,
    transparency: Option<f32>,
    staining: Option<f32>,
    granulation: Option<f32>,
    lightfast_tint: Option<f32>,
    lightfast_masstone: Option<f32>,
    caution: &'a str,
    strength: f32,
    earth: bool,
    tier: &'static str,
    source: &'a str,
}

impl<'a> From<&'a Paint> for PaintReadout<'a> {
    fn from(paint: &'a Paint) -> Self {
        Self {
            number: paint.number,
            key: &paint.key,
            code: &paint.code,
            name: &paint.name,
            aliases: &paint.aliases,
            family: &paint.family,
            hue: &paint.hue,
            transparency: paint.transparency,
            staining: paint.staining,
            granulation: paint.granulation,
            lightfast_tint: paint.lightfast_tint,
            lightfast_masstone: paint.lightfast_masstone,
            caution: &paint.caution,
            strength: paint.film.strength,
            earth: paint.is_earth(),
            tier: paint.tier.name(),
            source: &paint.source,
        }
    }
}
