//! The report on a kit: what it reaches, what each pan adds, what is missing.

use crate::colour::gamut::gamut;
use crate::colour::hue::Hue;
use crate::colour::outline::{Outline, RAYS};
use crate::colour::{WheelPoint, chroma, wheel};
use crate::error::Error;
use crate::kit::targets::Targets;
use crate::mixing::path::{Crossing, CrossingKind, Path};
use crate::mixing::recipe::Recipe;
use crate::numeric::sort::in_order;
use crate::optics::view::View;
use crate::paint::Paint;
use crate::paint::number::PaintNumber;
use crate::paint::shelf::Shelf;
use crate::reach::Reach;
use crate::reach::coverage::{Coverage, Within};
use crate::reach::darks::{Dark, DarkMix, dark_family};
use crate::reach::role::{Role, own_roles, primaries};
use crate::reach::substitute::likeness;

/// Part of the horizon that a kit must reach at an angle not to have a gap there.
const GAP: f32 = 0.7;

/// Degrees from which on a gap is told.
const LEAST_GAP: usize = 10;

/// L* by which a dark must be lower to be worth telling.
const DEEPER: f32 = 1.0;

/// Part of the gamut, within the nearer limit, below which the loss of a paint is not felt.
const IDLE: f32 = 0.005;

/// What a kit can do.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct Report {
    /// All it mixes.
    pub reach: Reach,
    /// How far out it reaches.
    pub outline: Outline,
    /// Part of the gamut of real surfaces reached within each of the [`LIMITS`](crate::LIMITS), 0 to 1.
    pub reached: Within<f32>,
    /// Ranges of the wheel where it falls far short of the horizon.
    pub gaps: Vec<Gap>,
    /// The darkest mix of every hue family and near neutral, and what would deepen it.
    pub darks: Vec<Deeper>,
    /// Pairs that make a pure or near grey at masstone, the purest first.
    pub neutrals: Vec<Neutral>,
    /// What each paint adds, in the kit's order.
    pub worths: Vec<Worth>,
    /// Paints so alike that one would do.
    pub duplicates: Vec<Duplicate>,
    /// The least lightfast paint whose grade is known.
    pub least_lightfast: Option<Graded>,
}

/// A paint and its lightfastness.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Graded {
    /// The paint.
    pub paint: PaintNumber,
    /// Its Blue Wool grade, 1 fleeting to 8 excellent.
    pub grade: f32,
}

/// A range of the wheel where a kit falls far short of what the whole shelf reaches.
#[derive(Clone, Debug, PartialEq)]
pub struct Gap {
    /// Degrees at which it begins, 0 to below 360.
    pub from: f32,
    /// Degrees at which it ends, counter-clockwise from there; may pass 360.
    pub to: f32,
    /// Part of the shelf's reach that the kit has at its worst there, 0 to 1.
    pub reached: f32,
    /// The hue families there, the most frequent first.
    pub hues: Vec<Hue>,
}

/// A dark of the kit and the paint that would deepen it most.
#[derive(Clone, Debug, PartialEq)]
pub struct Deeper {
    /// The darkest the kit has.
    pub dark: Dark,
    /// A paint of the shelf, with what it mixes, where that is darker by 1 L* or more.
    pub with: Option<Deepener>,
}

/// A paint that deepens a dark.
#[derive(Clone, Debug, PartialEq)]
pub struct Deepener {
    /// The paint.
    pub paint: PaintNumber,
    /// The darkest it mixes with the kit's.
    pub mix: DarkMix,
}

impl Deeper {
    /// L* below which a mix of its family deepens it more than what is known does.
    fn told_below(&self) -> f32 {
        let now = self.dark.mix.as_ref().map_or(f32::INFINITY, |mix| mix.lab.l - DEEPER);
        self.with.as_ref().map_or(now, |deepener| deepener.mix.lab.l)
    }
}

/// A pair that greys.
#[derive(Clone, Debug, PartialEq)]
pub struct Neutral {
    /// The pair.
    pub paints: [PaintNumber; 2],
    /// In whole parts.
    pub recipe: Recipe,
    /// Where it is greyest at masstone; how dark, and which way it leans.
    pub crossing: Crossing,
}

/// What a paint adds to its kit.
#[derive(Clone, Debug, PartialEq)]
pub struct Worth {
    /// The paint.
    pub paint: PaintNumber,
    /// Part of the gamut lost without it, within each of the limits.
    pub lost: Within<f32>,
    /// Families, `None` for near neutral, whose dark is lighter by 1 L* or more without it.
    pub darks: Vec<Option<Hue>>,
    /// What it is there for.
    pub roles: Vec<Role>,
    /// Nobody would miss it: hardly any reach, no dark and no texture is lost without it.
    pub idle: bool,
}

/// Two paints so alike that one would do.
#[derive(Clone, Debug, PartialEq)]
pub struct Duplicate {
    /// The two.
    pub paints: [PaintNumber; 2],
    /// Mean CIEDE2000 between them, alone and mixed with the kit's other paints; up to 3.5.
    pub error: f32,
}

impl Report {
    /// The report on some paints, held against a shelf and its [`horizon`](crate::horizon()).
    ///
    /// # Errors
    ///
    /// [`Error::UnknownPaint`] for a paint that `shelf` lacks; more paints than a
    /// [`Coverage`] spans.
    ///
    /// ```
    /// use washpath_core::{Light, PaintNumber, Report, Shelf, Stock, View, horizon};
    /// let (shelf, view) = (Shelf::built_in(), View::new(&Stock::BrightWhite.paper(), Light::D65));
    /// let report = Report::new(&[1, 72, 102].map(PaintNumber::new), shelf, &view, &horizon(shelf, &view)?)?;
    /// assert!(!report.gaps.is_empty(), "three paints leave gaps");
    /// # Ok::<(), washpath_core::Error>(())
    /// ```
    pub fn new(paints: &[PaintNumber], shelf: &Shelf, view: &View, horizon: &Outline) -> Result<Self, Error> {
        let reach = Reach::new(paints, shelf, view)?;
        let kit: Vec<&Paint> =
            reach.paints().iter().map(|paint| shelf.get(*paint)).collect::<Result<_, _>>()?;
        let pairs = reach.pair_outlines();
        let outline = reach.outline_of(&pairs);
        let coverage = Coverage::new(&reach, &Targets::gamut())?;
        let neutrals = neutrals(&kit, view)?;
        let worths = worths(&kit, &reach, &pairs, &coverage, &neutrals);
        let weakest = kit
            .iter()
            .filter_map(|paint| Some(Graded { paint: paint.number, grade: paint.lightfastness()? }));
        Ok(Self {
            reached: coverage.reached(),
            gaps: gaps(&outline, horizon),
            darks: deeper(&reach, shelf, view)?,
            duplicates: duplicates(&reach),
            least_lightfast: weakest.min_by(|a, b| a.grade.total_cmp(&b.grade)),
            neutrals,
            worths,
            outline,
            reach,
        })
    }
}

fn gaps(outline: &Outline, horizon: &Outline) -> Vec<Gap> {
    let share = |ray: usize| {
        let degrees = (ray % RAYS) as f32;
        outline.radius(degrees) / horizon.radius(degrees).max(f32::MIN_POSITIVE)
    };
    let wanting: Vec<bool> = (0..RAYS).map(|ray| share(ray) < GAP).collect();
    let gap = |from: usize, to: usize| Gap {
        from: from as f32,
        to: to as f32,
        reached: (from..=to).map(share).fold(1.0, f32::min),
        hues: hues_between(from as f32, to as f32),
    };
    // Begun where nothing is wanting, so that no gap is cut in two.
    let Some(start) = wanting.iter().position(|wanting| !wanting) else {
        return vec![gap(0, RAYS)];
    };
    let mut gaps = Vec::new();
    let mut begin = None;
    for ray in start..=start + RAYS {
        match (wanting[ray % RAYS], begin) {
            (true, None) => begin = Some(ray),
            (false, Some(from)) => {
                if ray - from >= LEAST_GAP {
                    let turns = from / RAYS * RAYS;
                    gaps.push(gap(from - turns, ray - 1 - turns));
                }
                begin = None;
            }
            _ => {}
        }
    }
    gaps
}

/// Hue families of real paint between two angles of the wheel, the most frequent first.
fn hues_between(from: f32, to: f32) -> Vec<Hue> {
    /// C* from which a colour is of a hue family beyond doubt.
    const PLAIN: f32 = 30.0;
    let mut counts = [0; Hue::ALL.len()];
    for lab in gamut().iter().filter(|lab| chroma(**lab) >= PLAIN) {
        if (wheel(*lab).angle() - from).rem_euclid(360.0) <= to - from {
            counts[Hue::of(*lab) as usize] += 1;
        }
    }
    let all: usize = counts.iter().sum();
    let mut hues: Vec<Hue> = Hue::ALL.into_iter().filter(|hue| 20 * counts[*hue as usize] > all).collect();
    hues = in_order(hues, |hue| -(counts[*hue as usize] as f32));
    hues
}

fn deeper(reach: &Reach, shelf: &Shelf, view: &View) -> Result<Vec<Deeper>, Error> {
    let mut deepest: Vec<Deeper> =
        reach.darks().into_iter().map(|dark| Deeper { dark, with: None }).collect();
    let lightest = |deepest: &[Deeper]| deepest.iter().map(Deeper::told_below).fold(0.0, f32::max);
    // Most mixes are lighter than any that would be told: their families need not be found.
    let mut wanted = lightest(&deepest);
    for paint in shelf.paints().iter().filter(|paint| !reach.paints().contains(&paint.number)) {
        let paints: Vec<PaintNumber> =
            reach.paints().iter().copied().chain(std::iter::once(paint.number)).collect();
        for (blend, lab) in Reach::masstones_of_last(&paints, shelf, view)? {
            if lab.l >= wanted {
                continue;
            }
            let family = dark_family(lab).map_or(Hue::ALL.len(), |hue| hue as usize);
            if lab.l < deepest[family].told_below() {
                deepest[family].with = Some(Deepener {
                    paint: paint.number,
                    mix: DarkMix { recipe: blend.recipe(&paints), lab },
                });
                wanted = lightest(&deepest);
            }
        }
    }
    Ok(deepest)
}

fn neutrals(kit: &[&Paint], view: &View) -> Result<Vec<Neutral>, Error> {
    let mut neutrals = Vec::new();
    for (i, a) in kit.iter().enumerate() {
        for b in &kit[i + 1..] {
            let crossing = Path::new(&a.film, &b.film, view, 1.0).crossing();
            if matches!(crossing.kind, CrossingKind::Pure | CrossingKind::Near) {
                let [one, other] = [a, b].map(|paint| Recipe::paint(paint.number));
                let recipe = Recipe::between(&one, &other, crossing.share)?;
                neutrals.push(Neutral { paints: [a.number, b.number], recipe, crossing });
            }
        }
    }
    neutrals = in_order(neutrals, |neutral| neutral.crossing.chroma);
    Ok(neutrals)
}

fn worths(
    kit: &[&Paint],
    reach: &Reach,
    outlines: &[(Vec<usize>, Outline)],
    coverage: &Coverage,
    neutrals: &[Neutral],
) -> Vec<Worth> {
    let view = reach.view();
    let primary = primaries(reach, outlines);
    let mut spanned = Outline::default();
    for (paints, outline) in outlines {
        if paints.iter().all(|paint| primary.contains(paint)) {
            spanned.hold_all(outline);
        }
    }
    let granulating = kit.iter().filter(|paint| paint.granulates()).count();
    let lighter = reach.darks_lost(DEEPER);
    let worth = |(i, paint): (usize, &&Paint)| {
        let strongest: WheelPoint = view.wheel_point(&paint.film, view.strongest_load(&paint.film));
        let lightness = view.colour(&paint.film, 1.0).l;
        let mut roles = own_roles(paint, primary.contains(&i), &spanned, strongest, lightness);
        roles.extend(neutrals.iter().filter_map(|neutral| match neutral.paints {
            [a, b] if a == paint.number => Some(Role::Complement(b)),
            [a, b] if b == paint.number => Some(Role::Complement(a)),
            _ => None,
        }));
        let lost = coverage.lost_without(paint.number);
        let darks = lighter[i].clone();
        let only_texture = granulating == 1 && paint.granulates();
        let idle = lost.same < IDLE && lost.close < IDLE && darks.is_empty() && !only_texture;
        Worth { paint: paint.number, lost, darks, roles, idle }
    };
    kit.iter().enumerate().map(worth).collect()
}

fn duplicates(reach: &Reach) -> Vec<Duplicate> {
    let paints = reach.paints();
    let mut duplicates = Vec::new();
    for a in 0..paints.len() {
        for b in a + 1..paints.len() {
            if let Some(error) = likeness(a, b, reach.films(), reach.view()) {
                duplicates.push(Duplicate { paints: [paints[a], paints[b]], error });
            }
        }
    }
    duplicates
}

#[cfg(test)]
#[path = "report_tests.rs"]
mod tests;
