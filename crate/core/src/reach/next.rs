//! The next paint: what each paint not in a kit would add to it.

use crate::colour::Lab;
use crate::colour::hue::Hue;
use crate::error::Error;
use crate::kit::targets::{Target, Targets};
use crate::mixing::path::{CrossingKind, Path};
use crate::numeric::sort::in_order;
use crate::optics::view::View;
use crate::paint::number::PaintNumber;
use crate::paint::shelf::Shelf;
use crate::reach::Reach;
use crate::reach::coverage::Coverage;
use crate::reach::darks::dark_family;

/// What the next paint is wanted for.
#[derive(Clone, Copy, Debug)]
pub enum Wish<'a> {
    /// More of the gamut of real surfaces.
    Reach,
    /// Deeper darks, family by family.
    Darks,
    /// Greys with paints that have no neutral partner yet.
    Neutrals,
    /// More of some targets.
    Targets(&'a Targets),
}

/// A paint that might come next.
#[derive(Clone, Debug, PartialEq)]
pub struct Candidate {
    /// The paint.
    pub paint: PaintNumber,
    /// What it adds, on the wish's own scale: the mean part of the targets gained
    /// within both [`LIMITS`](crate::LIMITS), L* taken off all families' darks together, or
    /// paints that gain a neutral partner.
    pub gain: f32,
}

/// Candidates for [`Wish::Reach`] and [`Wish::Targets`] whose triples are looked at too.
const LEADING: usize = 8;

/// L* that a family without any dark counts as having.
const NO_DARK: f32 = 60.0;

/// Ranks paints by what they would add to a kit, the most first; paints that add nothing are left out.
///
/// For reach and targets the mixes of each candidate with one paint of the kit rank
/// all, and those with two the leading ones; for those the gain is the whole one.
///
/// # Errors
///
/// [`Error::UnknownPaint`] for a paint that `shelf` lacks; a kit too large for a
/// [`Coverage`].
pub fn next_paints(
    paints: &[PaintNumber],
    candidates: &[PaintNumber],
    shelf: &Shelf,
    view: &View,
    wish: Wish<'_>,
) -> Result<Vec<Candidate>, Error> {
    let reach = Reach::new(paints, shelf, view)?;
    let paints = reach.paints();
    let new: Vec<PaintNumber> = candidates.iter().copied().filter(|paint| !paints.contains(paint)).collect();
    let with = |paint: PaintNumber| -> Vec<PaintNumber> {
        paints.iter().copied().chain(std::iter::once(paint)).collect()
    };
    let ranked = |gain: &dyn Fn(PaintNumber) -> Result<f32, Error>, new: &[PaintNumber]| {
        let gains = new.iter().map(|paint| Ok(Candidate { paint: *paint, gain: gain(*paint)? }));
        let mut found: Vec<Candidate> = gains.collect::<Result<_, Error>>()?;
        found = in_order(found, |candidate| -candidate.gain);
        Ok(found)
    };
    let mut found = match wish {
        Wish::Darks => {
            let darks: Vec<f32> =
                depths(reach.darks().iter().map(|dark| (dark.hue, dark.mix.as_ref().map(|mix| mix.lab))));
            ranked(
                &|paint| {
                    let masstones = Reach::masstones_of_last(&with(paint), shelf, view)?;
                    let mixes = masstones.iter().map(|(_, lab)| (dark_family(*lab), Some(*lab)));
                    let deeper = depths(mixes);
                    Ok(darks.iter().zip(deeper).map(|(now, then)| (now - then).max(0.0)).sum())
                },
                &new,
            )
        }
        Wish::Neutrals => {
            let greys = |a: PaintNumber, b: PaintNumber| -> Result<bool, Error> {
                let crossing = Path::new(&shelf.get(a)?.film, &shelf.get(b)?.film, view, 1.0).crossing();
                Ok(matches!(crossing.kind, CrossingKind::Pure | CrossingKind::Near))
            };
            let mut lonely = Vec::new();
            for paint in paints {
                let partners = paints.iter().map(|other| Ok(other != paint && greys(*paint, *other)?));
                if !partners.collect::<Result<Vec<bool>, Error>>()?.contains(&true) {
                    lonely.push(*paint);
                }
            }
            let gain = |paint| {
                let greyed = lonely.iter().map(|other| greys(paint, *other));
                Ok(greyed.collect::<Result<Vec<bool>, Error>>()?.iter().filter(|grey| **grey).count() as f32)
            };
            ranked(&gain, &new)
        }
        Wish::Reach => wider(&reach, &Targets::gamut(), shelf, view, &with, &new, &ranked),
        Wish::Targets(targets) => wider(&reach, targets, shelf, view, &with, &new, &ranked),
    }?;
    found.retain(|candidate| candidate.gain > 0.0);
    Ok(found)
}

type Ranked<'a> =
    dyn Fn(&dyn Fn(PaintNumber) -> Result<f32, Error>, &[PaintNumber]) -> Result<Vec<Candidate>, Error> + 'a;

/// Ranks by what is reached of what the kit leaves out.
fn wider(
    reach: &Reach,
    targets: &Targets,
    shelf: &Shelf,
    view: &View,
    with: &dyn Fn(PaintNumber) -> Vec<PaintNumber>,
    new: &[PaintNumber],
    ranked: &Ranked<'_>,
) -> Result<Vec<Candidate>, Error> {
    let known = Coverage::new(reach, targets)?;
    let whole: f32 = targets.weights().iter().sum();
    let missing: Vec<usize> = (0..targets.colours().len())
        .filter(|i| known.reaches(*i).is_some_and(|within| !within.same))
        .collect();
    if missing.is_empty() {
        return Ok(Vec::new());
    }
    let rest = Targets::of(missing.iter().map(|i| Target::new(targets.colours()[*i], targets.weights()[*i])));
    let gain = |paint: PaintNumber, most: usize| -> Result<f32, Error> {
        let found = Coverage::new(&Reach::of_last(&with(paint), shelf, view, most)?, &rest)?;
        let mut gain = 0.0;
        for (at, i) in missing.iter().enumerate() {
            let within = known.reaches(*i).unwrap_or_default();
            let gained = found.reaches(at).unwrap_or_default();
            let new = [gained.same && !within.same, gained.close && !within.close];
            gain += targets.weights()[*i] * new.map(f32::from).iter().sum::<f32>() / new.len() as f32;
        }
        Ok(gain / whole)
    };
    let mut found = ranked(&|paint| gain(paint, 2), new)?;
    let leading: Vec<PaintNumber> = found.iter().take(LEADING).map(|candidate| candidate.paint).collect();
    let whole_gains = ranked(&|paint| gain(paint, 3), &leading)?;
    found.splice(..leading.len(), whole_gains);
    Ok(found)
}

/// L* of the darkest mix of every family, and last near neutral.
fn depths(mixes: impl Iterator<Item = (Option<Hue>, Option<Lab>)>) -> Vec<f32> {
    let mut depths = vec![NO_DARK; Hue::ALL.len() + 1];
    for (hue, lab) in mixes {
        let depth = &mut depths[hue.map_or(Hue::ALL.len(), |hue| hue as usize)];
        *depth = lab.map_or(*depth, |lab| depth.min(lab.l));
    }
    depths
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::optics::observer::Light;
    use crate::optics::paper::Stock;

    fn next(keys: &[&str], wish: Wish<'_>) -> Vec<Candidate> {
        let shelf = Shelf::built_in();
        let view = View::new(&Stock::BrightWhite.paper(), Light::D65);
        let kit: Vec<_> = keys.iter().map(|key| shelf.find(key).unwrap().number).collect();
        let all: Vec<_> = shelf.paints().iter().map(|paint| paint.number).collect();
        next_paints(&kit, &all, shelf, &view, wish).unwrap()
    }

    #[test]
    fn a_kit_without_blue_wants_a_blue_or_green_or_violet() {
        let found = next(&["py154", "pr254", "pbr7-burnt-sienna", "py42"], Wish::Reach);
        let first = Shelf::built_in().get(found[0].paint).unwrap();
        assert!(["blue", "green", "violet"].iter().any(|hue| first.hue.contains(hue)), "{}", first.key);
        assert!(found[..LEADING].is_sorted_by(|a, b| a.gain >= b.gain));
    }

    #[test]
    fn the_gain_is_what_the_larger_kit_reaches_more() {
        let shelf = Shelf::built_in();
        let view = View::new(&Stock::BrightWhite.paper(), Light::D65);
        let kit: Vec<_> = ["py154", "pr254", "pb29"].map(|key| shelf.find(key).unwrap().number).to_vec();
        let all: Vec<_> = shelf.paints().iter().map(|paint| paint.number).collect();
        let first = next_paints(&kit, &all, shelf, &view, Wish::Reach).unwrap().swap_remove(0);
        let reached = |kit: &[PaintNumber]| {
            let coverage = Coverage::new(&Reach::new(kit, shelf, &view).unwrap(), &Targets::gamut()).unwrap();
            0.5 * coverage.reached().into_array().iter().sum::<f32>()
        };
        let larger: Vec<_> = kit.iter().copied().chain([first.paint]).collect();
        assert!((reached(&larger) - reached(&kit) - first.gain).abs() < 1e-4);
    }

    #[test]
    fn darks_and_neutrals_are_ranked() {
        let pale = ["py154", "pr209", "pb35"];
        let found = next(&pale, Wish::Darks);
        assert!(found.len() > 20 && found.is_sorted_by(|a, b| a.gain >= b.gain));
        // Ultramarine and burnt sienna grey each other: common practice, no source.
        let found = next(&["pb29"], Wish::Neutrals);
        let sienna = Shelf::built_in().find("pbr7-burnt-sienna").unwrap().number;
        assert!(found.iter().any(|candidate| candidate.paint == sienna && candidate.gain == 1.0));
    }
}
