//! Partners of a paint: what greys it, and what shades it.
//!
//! A *neutral partner* takes the hue away: mixed, the two come near grey. A
//! *shading partner* keeps the hue and takes the light away: what a painter
//! adds to a red that must stay red in the shadow. Complements shade badly and
//! shades neutralise badly: a paint stands in one of the lists at most.
//!
//! Both name only mixes of whole parts that a brush can measure, and judge
//! them there.

use crate::colour::hue::NEAR_GREY;
use crate::colour::{Lab, chroma, hue_angle};
use crate::mixing::mixture::whole_parts;
use crate::mixing::path::{Crossing, Path, share_at};
use crate::mixing::ratio::Ratio;
use crate::numeric::sort::in_order;
use crate::optics::film::Film;
use crate::optics::view::View;
use crate::paint::Paint;

/// Greatest C* of a mix that is told as neutral: near greys and a little around them.
pub const NEARLY_GREY: f32 = 2.0 * NEAR_GREY;

/// Chroma of a crossing beside that of the duller paint up to which the two grey each other.
const GREYED: f32 = 0.5;

/// Widest turn of hue in degrees that a shade may bring; families of hue are two to four times as wide.
const HUE_HELD: f32 = 10.0;

/// Least share of its chroma that a paint keeps in a shade.
///
/// Chroma falls with value even where only light is taken away: of a colour at
/// L* 60 dimmed to L* 24, X, Y and Z to a seventh, CIELAB leaves about half.
/// A quarter lower still is the same paint in shadow; less is a grey.
const CHROMA_KEPT: f32 = 0.4;

/// Least fall in L* that is a shade and no nuance.
const LEAST_DROP: f32 = 3.0;

/// Places on a path from which the brush's ratios are taken.
const LOOKS: u8 = 33;

/// A paint that neutralises another.
#[derive(Clone, Debug)]
pub struct NeutralPartner<'a> {
    /// The paint.
    pub paint: &'a Paint,
    /// Whole parts of the film and of the paint.
    pub parts: Ratio,
    /// The mix of these parts at the load asked for.
    pub crossing: Crossing,
    /// The same parts at masstone.
    pub at_masstone: Lab,
}

/// A paint that darkens another and keeps its hue.
#[derive(Clone, Debug)]
pub struct ShadingPartner<'a> {
    /// The paint.
    pub paint: &'a Paint,
    /// Its share by volume.
    pub share: f32,
    /// Whole parts of the film and of the paint.
    pub parts: Ratio,
    /// The shade.
    pub lab: Lab,
    /// By how much L* falls.
    pub value_drop: f32,
    /// By how many degrees h turns, counter-clockwise above 0.
    pub hue_drift: f32,
    /// Share of the chroma that is kept; above 1 where the shade is the brighter.
    pub chroma_kept: f32,
}

/// The paints that neutralise a film at a load, greyest mix first.
///
/// The mix has at most C* 10 and at most half the chroma of either
/// paint alone at that load. Paints that are near grey themselves are no
/// complements and are left out.
#[must_use]
pub fn neutral_partners<'a>(
    film: &Film,
    load: f32,
    view: &View,
    candidates: impl IntoIterator<Item = &'a Paint>,
) -> Vec<NeutralPartner<'a>> {
    let pair = |paint: &'a Paint| {
        let path = Path::new(film, &paint.film, view, load);
        let parts = whole_parts(greying(&path)?.share);
        let crossing = path.crossing_at(parts.share());
        let at_masstone = view.colour_between(film, &paint.film, crossing.share, 1.0);
        let neutral = crossing.chroma <= NEARLY_GREY && greys(&path, crossing);
        neutral.then_some(NeutralPartner { paint, parts, crossing, at_masstone })
    };
    in_order(candidates.into_iter().filter_map(pair).collect(), |partner| partner.crossing.chroma)
}

/// The paints that shade a film at a load, darkest shade first.
///
/// Of each paint the darkest mix that turns the hue by at most 10
/// degrees, keeps at least 0.4 of the chroma, is no near grey and lies at
/// least L* 3 below. The partner has at most half of the masstones:
/// with more of it, it is the partner that is shaded. Paints that grey the film
/// are left out: a little of them darkens too, and is on its way to grey.
#[must_use]
pub fn shading_partners<'a>(
    film: &Film,
    load: f32,
    view: &View,
    candidates: impl IntoIterator<Item = &'a Paint>,
) -> Vec<ShadingPartner<'a>> {
    let alone = view.colour(film, load);
    if chroma(alone) <= NEAR_GREY {
        return Vec::new();
    }
    let ratios = ratios();
    let shade = |paint: &'a Paint, parts: Ratio| {
        let share = parts.share();
        let lab = view.colour_between(film, &paint.film, share, load);
        ShadingPartner {
            paint,
            share,
            parts,
            lab,
            value_drop: alone.l - lab.l,
            hue_drift: (hue_angle(lab) - hue_angle(alone) + 540.0).rem_euclid(360.0) - 180.0,
            chroma_kept: chroma(lab) / chroma(alone),
        }
    };
    let darkest = |paint: &'a Paint| {
        let shades = ratios
            .iter()
            .filter(|parts| Film::masstones(film, &paint.film, parts.share()).of_b <= 0.5)
            .map(|parts| shade(paint, *parts));
        let darkest = shades.filter(ShadingPartner::holds).min_by(|a, b| a.lab.l.total_cmp(&b.lab.l))?;
        let path = Path::new(film, &paint.film, view, load);
        greying(&path).is_none().then_some(darkest)
    };
    in_order(candidates.into_iter().filter_map(darkest).collect(), |partner| partner.lab.l)
}

impl ShadingPartner<'_> {
    fn holds(&self) -> bool {
        self.value_drop >= LEAST_DROP
            && self.hue_drift.abs() <= HUE_HELD
            && self.chroma_kept >= CHROMA_KEPT
            && chroma(self.lab) > NEAR_GREY
    }
}

/// The crossing of a path whose paints grey each other.
fn greying(path: &Path<'_>) -> Option<Crossing> {
    let crossing = path.crossing();
    greys(path, crossing).then_some(crossing)
}

/// Whether a mix is far greyer than both paints; a near grey paint has nothing to be greyed.
fn greys(path: &Path<'_>, mix: Crossing) -> bool {
    let duller = chroma(path.colour(0.0)).min(chroma(path.colour(1.0)));
    duller > NEAR_GREY && mix.chroma <= GREYED * duller
}

/// What a brush can measure, each once, from a trace of the partner to a trace of the film.
fn ratios() -> Vec<Ratio> {
    let mut ratios: Vec<Ratio> =
        (1..LOOKS - 1).map(|i| whole_parts(share_at(f32::from(i) / f32::from(LOOKS - 1)))).collect();
    ratios.dedup();
    ratios
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Light, Shelf, Stock};

    const LOADS: [f32; 2] = [1.0, 0.25];

    fn view() -> View {
        View::new(&Stock::BrightWhite.paper(), Light::D65)
    }

    fn film(key: &str) -> &'static Film {
        &Shelf::built_in().find(key).unwrap().film
    }

    fn neutral(key: &str, load: f32) -> Vec<NeutralPartner<'static>> {
        neutral_partners(film(key), load, &view(), Shelf::built_in().paints())
    }

    fn shading(key: &str, load: f32) -> Vec<ShadingPartner<'static>> {
        shading_partners(film(key), load, &view(), Shelf::built_in().paints())
    }

    /// Common practice, no source: phthalo green greys a rose or a red, perylene violet shades it;
    /// ultramarine greys an orange, umber shades it.
    #[test]
    fn what_greys_a_paint_and_what_shades_it_are_two_things() {
        for (key, greys, shades) in [
            ("pv19-rose", "pg36", "pv29"),
            ("pr254", "pg7", "pv29"),
            ("pr108", "pb15-3", "pv29"),
            ("po62", "pb29", "pbr7-burnt-umber"),
        ] {
            for load in LOADS {
                let (neutral, shading) = (neutral(key, load), shading(key, load));
                let stands = |paint: &str| {
                    [
                        neutral.iter().any(|partner| partner.paint.key == paint),
                        shading.iter().any(|partner| partner.paint.key == paint),
                    ]
                };
                assert_eq!(stands(greys), [true, false], "{key} with {greys} at {load}");
                assert_eq!(stands(shades), [false, true], "{key} with {shades} at {load}");
            }
        }
    }

    #[test]
    fn a_paint_stands_in_one_list_at_most_and_keeps_what_its_list_says() {
        let view = view();
        for paint in Shelf::built_in().paints().iter().step_by(5) {
            for load in LOADS {
                let alone = view.colour(&paint.film, load);
                let (neutral, shading) = (neutral(&paint.key, load), shading(&paint.key, load));
                assert!(neutral.is_sorted_by(|a, b| a.crossing.chroma <= b.crossing.chroma));
                assert!(shading.is_sorted_by(|a, b| a.lab.l <= b.lab.l));
                for partner in &neutral {
                    assert!(shading.iter().all(|shade| shade.paint.key != partner.paint.key));
                    let other = view.colour(&partner.paint.film, load);
                    assert!(partner.crossing.chroma <= 0.5 * chroma(alone).min(chroma(other)));
                    assert!(partner.crossing.chroma <= 10.0);
                    let mix = Film::between(&paint.film, &partner.paint.film, partner.parts.share());
                    assert_eq!(partner.at_masstone, view.colour(&mix, 1.0));
                    assert_eq!(partner.crossing.lab, view.colour(&mix, load));
                }
                for shade in &shading {
                    assert!(shade.lab.l <= alone.l - 3.0 && chroma(shade.lab) >= 0.4 * chroma(alone));
                    let turn = (hue_angle(shade.lab) - hue_angle(alone)).rem_euclid(360.0);
                    assert!(turn <= 10.01 || turn >= 349.99, "{turn}");
                }
            }
        }
    }

    #[test]
    fn greys_have_no_partners() {
        for key in ["pbk6", "pw6"] {
            assert!(neutral(key, 1.0).is_empty() && shading(key, 1.0).is_empty(), "{key}");
        }
    }

    #[test]
    fn odd_loads_are_no_panic() {
        for load in [0.0, -1.0, f32::NAN, f32::INFINITY] {
            let _ = (neutral("pb29", load), shading("pb29", load));
        }
    }
}
