//! A paint as the page lists it.

use serde::Serialize;
use washpath_core::Paint;

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
            number: paint.number.get(),
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
