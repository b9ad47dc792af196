//! Paths: what happens between two paints, and where they grey each other.

use crate::colour::hue::{Hue, NEAR_GREY, PURE_GREY};
use crate::colour::{Lab, chroma, delta_e};
use crate::numeric::minimum::minimise;
use crate::optics::film::{Film, Masstones};
use crate::optics::spectrum::Spectrum;
use crate::optics::view::View;

/// The colours from A to B as the ratio runs from all A to all B, at one load.
///
/// A point on a path is its *share* of B by volume, 0 to 1. Paints differ in
/// strength, so equal steps of share bunch the colours at one end; steps of
/// [`share_at`] do not.
#[derive(Clone, Debug)]
pub struct Path<'a> {
    ends: [&'a Film; 2],
    view: &'a View,
    load: f32,
    laid: Laid,
}

/// How two paints come together on the paper.
///
/// The same paint lies there each way: a glaze has in two layers what the mix
/// of the same share and load has in one.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Laid {
    /// Mixed in one wash.
    #[default]
    Mixed = 0,
    /// A as a glaze over a dry wash of B.
    AOverB = 1,
    /// B as a glaze over a dry wash of A.
    BOverA = 2,
}

impl Laid {
    /// Every way.
    pub const ALL: [Self; 3] = [Self::Mixed, Self::AOverB, Self::BOverA];

    /// Name for a painter.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Mixed => "mixed",
            Self::AOverB => "A over B",
            Self::BOverA => "B over A",
        }
    }
}

/// One point on a path.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PathPoint {
    /// Share of B, 0 to 1.
    pub share: f32,
    /// Colour in the view's light.
    pub lab: Lab,
}

/// Where a path comes closest to neutral.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Crossing {
    /// Share of B there, 0 to 1.
    pub share: f32,
    /// Colour there.
    pub lab: Lab,
    /// Its chroma C*, the least on the path.
    pub chroma: f32,
    /// The hue family it leans to.
    pub lean: Hue,
    /// What a painter may call it.
    pub kind: CrossingKind,
}

/// How near to neutral a path comes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CrossingKind {
    /// C* at most 2: a pure grey.
    Pure,
    /// C* at most 5: a near grey.
    Near,
    /// The paints dull each other, but no further than this.
    Dull,
    /// No mix is noticeably duller than the duller paint alone.
    None,
}

/// Least loss of C* that makes a mix duller than the duller paint alone.
const SEEN: f32 = 0.5;

/// Number of points at which a search first looks along a path.
const LOOKS: usize = 49;

/// Widest log-odds of [`share_at`]: 1 part in 245 next to the ends.
const WIDEST: f32 = 5.5;

/// Share of B at a position 0 to 1 along a path, with even steps of log-odds.
///
/// 0 and 1 are the paints themselves; 1/2 is one part each.
#[must_use]
pub fn share_at(position: f32) -> f32 {
    let (low, high) = (logistic(-WIDEST), logistic(WIDEST));
    let share = (logistic((2.0 * position - 1.0) * WIDEST) - low) / (high - low);
    share.clamp(0.0, 1.0)
}

/// Position of a share of B along a path; the inverse of [`share_at`].
#[must_use]
pub fn position_of(share: f32) -> f32 {
    let (low, high) = (logistic(-WIDEST), logistic(WIDEST));
    let odds = low + share.clamp(0.0, 1.0) * (high - low);
    let position = 0.5 + (odds / (1.0 - odds)).ln() / (2.0 * WIDEST);
    position.clamp(0.0, 1.0)
}

fn logistic(q: f32) -> f32 {
    1.0 / (1.0 + (-q).exp())
}

impl<'a> Path<'a> {
    /// The path from `a` to `b` at a load, as seen in a view.
    #[must_use]
    pub const fn new(a: &'a Film, b: &'a Film, view: &'a View, load: f32) -> Self {
        Self { ends: [a, b], view, load, laid: Laid::Mixed }
    }

    /// The same path with the paints brought together in another way.
    #[must_use]
    pub const fn laid(self, laid: Laid) -> Self {
        Self { laid, ..self }
    }

    /// Load of every mix on the path; 1 is masstone.
    #[must_use]
    pub const fn load(&self) -> f32 {
        self.load
    }

    /// The mix with this share of B; below 0 is A, above 1 is B.
    #[must_use]
    pub fn colour(&self, share: f32) -> Lab {
        let [a, b] = self.ends;
        match self.laid {
            Laid::Mixed => self.view.colour_between(a, b, share, self.load),
            Laid::AOverB | Laid::BOverA => self.view.colour_of(&self.reflectance(share)),
        }
    }

    /// How fast the colour turns with the ratio: CIEDE2000 for 1 of ln(B : A), the mean of 0.3 to
    /// either side. 0 at the ends.
    ///
    /// ```
    /// use washpath_core::{Light, Path, Shelf, Stock, View};
    /// let shelf = Shelf::built_in();
    /// let view = View::new(&Stock::BrightWhite.paper(), Light::D65);
    /// let path = |a, b| Path::new(&shelf.find(a).unwrap().film, &shelf.find(b).unwrap().film, &view, 1.0);
    /// assert!(path("pb29", "pbr7-burnt-sienna").steepness(0.5) > path("pr108", "pr108-light").steepness(0.5));
    /// ```
    #[must_use]
    pub fn steepness(&self, share: f32) -> f32 {
        const STEP: f32 = 0.3;
        if share <= 0.0 || share >= 1.0 {
            return 0.0;
        }
        let here = self.colour(share);
        let change = |step: f32| {
            let odds = share / (1.0 - share) * step.exp();
            delta_e(here, self.colour(odds / (1.0 + odds)))
        };
        0.5 * (change(-STEP) + change(STEP)) / STEP
    }

    /// Reflectance of the mix with this share of B, 0 to 1.
    #[must_use]
    pub fn reflectance(&self, share: f32) -> Spectrum {
        let [a, b] = self.ends;
        let glazed = |upper: usize| {
            let Masstones { of_a, of_b } = Film::masstones(a, b, share);
            let loads = [of_a * self.load, of_b * self.load];
            self.view.glaze((self.ends[1 - upper], loads[1 - upper]), (self.ends[upper], loads[upper]))
        };
        match self.laid {
            Laid::Mixed => self.view.reflectance(&Film::between(a, b, share), self.load),
            Laid::AOverB => glazed(0),
            Laid::BOverA => glazed(1),
        }
    }

    /// `count` points from A to B, even in log-odds; at least the two ends.
    #[must_use]
    pub fn points(&self, count: usize) -> Vec<PathPoint> {
        let last = count.max(2) - 1;
        (0..=last)
            .map(|i| {
                let share = share_at(i as f32 / last as f32);
                PathPoint { share, lab: self.colour(share) }
            })
            .collect()
    }

    /// Where the path comes closest to neutral, by minimising C*².
    ///
    /// Found to within 1e-4 of the position; C* is the least to `f32`'s noise.
    ///
    /// ```
    /// use washpath_core::{Light, Path, Shelf, Stock, View};
    /// let shelf = Shelf::built_in();
    /// let view = View::new(&Stock::BrightWhite.paper(), Light::D65);
    /// let (a, b) = (&shelf.find("pb29")?.film, &shelf.find("pbr7-burnt-sienna")?.film);
    /// let crossing = Path::new(a, b, &view, 1.0).crossing();
    /// assert!(crossing.chroma < 8.0, "ultramarine and burnt sienna grey each other");
    /// # Ok::<(), washpath_core::Error>(())
    /// ```
    #[must_use]
    pub fn crossing(&self) -> Crossing {
        let squared = |position: f32| {
            let lab = self.colour(share_at(position));
            lab.a * lab.a + lab.b * lab.b
        };
        self.crossing_at(share_at(minimise(0.0, 1.0, LOOKS, squared)))
    }

    /// The mix with this share of B, told as a crossing is.
    #[must_use]
    pub fn crossing_at(&self, share: f32) -> Crossing {
        let lab = self.colour(share);
        let ends = [0.0, 1.0].map(|end| chroma(self.colour(end)));
        let duller = ends[0].min(ends[1]);
        let chroma = chroma(lab);
        let kind = match chroma {
            c if c > duller - SEEN => CrossingKind::None,
            c if c <= PURE_GREY => CrossingKind::Pure,
            c if c <= NEAR_GREY => CrossingKind::Near,
            _ => CrossingKind::Dull,
        };
        Crossing { share, lab, chroma, lean: Hue::of(lab), kind }
    }
}
