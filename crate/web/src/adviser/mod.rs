//! What takes longer than a frame: the report on a kit, the next paint, what stands in for a paint.
//!
//! Meant for a worker; a page without one may call it too.

mod choosing;
mod films;
mod matching;
mod printing;
mod records;

use serde::Serialize;
use washpath_core::{
    Display, Gap, Hue, Lab, Light, Outline, PaintNumber, Report, Role, Target, Targets, View, Wish, horizon,
    next_paints, substitute,
};
use wasm_bindgen::prelude::*;

use crate::adviser::choosing::Choosing;
use crate::border::{into, out};
use crate::last_reach::LastReach;
use crate::paper::PaperChoice;
use crate::parts::{Parts, paints_of};
use crate::shelf::shelf;
use crate::sight::Sight;
use crate::swatch::Swatch;

/// One paper in daylight, and how far all paints of the shelf reach on it.
#[wasm_bindgen]
pub struct Adviser {
    pub(crate) sight: Sight,
    pub(crate) reach: LastReach,
    horizon: Outline,
}

/// [`Report`] as the page shows it.
#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct ReportReadout {
    /// Part of the gamut of real surfaces reached within CIEDE2000 2 and 5.
    reached: [f32; 2],
    gaps: Vec<GapReadout>,
    darks: Vec<DarkReadout>,
    neutrals: Vec<NeutralReadout>,
    worths: Vec<WorthReadout>,
    duplicates: Vec<DuplicateReadout>,
    /// Number and Blue Wool grade.
    least_lightfast: Option<(u16, f32)>,
}

#[derive(Serialize)]
struct GapReadout {
    /// Part of the shelf's reach that the kit has at its worst there.
    reach: f32,
    hues: Vec<&'static str>,
}

#[derive(Serialize)]
struct DarkReadout {
    hue: &'static str,
    parts: Parts,
    swatch: Option<Swatch>,
    /// Paint that would go lower, and the L* it would bring.
    with: Option<(u16, f32)>,
}

#[derive(Serialize)]
struct NeutralReadout {
    paints: [u16; 2],
    parts: Parts,
    lightness: f32,
    chroma: f32,
    lean: &'static str,
    warm: bool,
}

#[derive(Serialize)]
struct WorthReadout {
    paint: u16,
    lost: [f32; 2],
    darks: Vec<&'static str>,
    roles: Vec<RoleReadout>,
    idle: bool,
}

#[derive(Serialize)]
struct RoleReadout {
    name: &'static str,
    /// The paint it is a complement of.
    of: Option<u16>,
}

#[derive(Serialize)]
struct DuplicateReadout {
    paints: [u16; 2],
    error: f32,
}

#[derive(Serialize)]
struct CandidateReadout {
    paint: u16,
    gain: f32,
}

#[derive(Serialize)]
struct SubstituteReadout {
    parts: Parts,
    /// Mean CIEDE2000 alone.
    alone: f32,
    /// Mean CIEDE2000 in mixes.
    mixed: f32,
}

#[wasm_bindgen]
impl Adviser {
    /// An adviser on a paper, named as for a studio; colours are those of daylight.
    ///
    /// # Errors
    ///
    /// An own paper that is none.
    #[wasm_bindgen(constructor)]
    pub fn new(paper: JsValue, wide: bool) -> Result<Self, JsError> {
        let paper: PaperChoice = into(paper)?;
        let view = View::new(&paper.paper()?, Light::D65);
        let horizon = horizon(&shelf(), &view)?;
        let display = if wide { Display::P3 } else { Display::Srgb };
        Ok(Self { sight: Sight { view, display }, reach: LastReach::default(), horizon })
    }

    /// What a kit of paints can do and lacks.
    ///
    /// # Errors
    ///
    /// No such paint; more paints than a kit holds.
    pub fn report(&self, paints: &[u16]) -> Result<JsValue, JsError> {
        let report = Report::new(&paints_of(paints), &shelf(), &self.sight.view, &self.horizon)?;
        out(&self.readout(&report))
    }

    /// Candidates ranked by what they would add for a wish: `reach`, `darks` or `neutrals`.
    ///
    /// # Errors
    ///
    /// No such paint; no such wish.
    pub fn next(&self, paints: &[u16], candidates: &[u16], wish: &str) -> Result<JsValue, JsError> {
        let wish = match wish {
            "reach" => Wish::Reach,
            "darks" => Wish::Darks,
            "neutrals" => Wish::Neutrals,
            other => return Err(JsError::new(&format!("no wish \"{other}\""))),
        };
        self.rank(paints, candidates, wish)
    }

    /// Candidates ranked by what they would add to what is reached of some targets: `[[[L*, a*, b*], weight], ...]`.
    ///
    /// # Errors
    ///
    /// No such paint; targets that are none.
    pub fn next_for_place(
        &self,
        paints: &[u16],
        candidates: &[u16],
        targets: JsValue,
    ) -> Result<JsValue, JsError> {
        let targets = read_targets(targets)?;
        self.rank(paints, candidates, Wish::Targets(&targets))
    }

    /// Begins to choose so many paints out of candidates, under rules, for targets as in
    /// [`Self::next_for_place`] or, without one, for the gamut of real surfaces.
    ///
    /// # Errors
    ///
    /// No such paint; rules that cannot be kept; targets that are none.
    pub fn choose(
        &self,
        size: usize,
        candidates: &[u16],
        targets: JsValue,
        rules: JsValue,
    ) -> Result<Choosing, JsError> {
        let targets =
            if targets.is_null_or_undefined() { Targets::sparse_gamut() } else { read_targets(targets)? };
        Choosing::new(size, candidates, &targets, rules, &self.sight.view)
    }

    /// What of the owned paints may stand in for a paint that has `partners` to mix with, the nearest first.
    ///
    /// # Errors
    ///
    /// No such paint.
    pub fn substitutes(&self, paint: u16, owned: &[u16], partners: &[u16]) -> Result<JsValue, JsError> {
        let found =
            substitute(paint.into(), &paints_of(owned), &paints_of(partners), &shelf(), &self.sight.view)?;
        let readout = found.iter().map(|found| SubstituteReadout {
            parts: Parts::of(&found.recipe),
            alone: found.alone,
            mixed: found.mixed,
        });
        out(&readout.collect::<Vec<_>>())
    }
}

impl Adviser {
    fn rank(&self, paints: &[u16], candidates: &[u16], wish: Wish<'_>) -> Result<JsValue, JsError> {
        let found =
            next_paints(&paints_of(paints), &paints_of(candidates), &shelf(), &self.sight.view, wish)?;
        let readout = found
            .iter()
            .map(|candidate| CandidateReadout { paint: candidate.paint.get(), gain: candidate.gain });
        out(&readout.collect::<Vec<_>>())
    }

    fn readout(&self, report: &Report) -> ReportReadout {
        let gap = |gap: &Gap| GapReadout {
            reach: gap.reached,
            hues: gap.hues.iter().map(|hue| hue.name()).collect(),
        };
        ReportReadout {
            reached: report.reached.into_array(),
            gaps: report.gaps.iter().map(gap).collect(),
            darks: report
                .darks
                .iter()
                .map(|deeper| DarkReadout {
                    hue: family(deeper.dark.hue),
                    parts: deeper.dark.mix.as_ref().map(|mix| Parts::of(&mix.recipe)).unwrap_or_default(),
                    swatch: deeper.dark.mix.as_ref().map(|mix| self.sight.swatch(mix.lab)),
                    with: deeper.with.as_ref().map(|with| (with.paint.get(), with.mix.lab.l)),
                })
                .collect(),
            neutrals: report
                .neutrals
                .iter()
                .map(|neutral| NeutralReadout {
                    paints: neutral.paints.map(PaintNumber::get),
                    parts: Parts::of(&neutral.recipe),
                    lightness: neutral.crossing.lab.l,
                    chroma: neutral.crossing.chroma,
                    lean: neutral.crossing.lean.name(),
                    warm: neutral.crossing.lean.is_warm(),
                })
                .collect(),
            worths: report
                .worths
                .iter()
                .map(|worth| WorthReadout {
                    paint: worth.paint.get(),
                    lost: worth.lost.into_array(),
                    darks: worth.darks.iter().map(|hue| family(*hue)).collect(),
                    roles: worth.roles.iter().map(|role| RoleReadout::from(*role)).collect(),
                    idle: worth.idle,
                })
                .collect(),
            duplicates: report
                .duplicates
                .iter()
                .map(|duplicate| DuplicateReadout {
                    paints: duplicate.paints.map(PaintNumber::get),
                    error: duplicate.error,
                })
                .collect(),
            least_lightfast: report.least_lightfast.map(|least| (least.paint.get(), least.grade)),
        }
    }
}

impl From<Role> for RoleReadout {
    fn from(role: Role) -> Self {
        let (name, of) = match role {
            Role::Primary => ("primary", None),
            Role::Secondary => ("secondary", None),
            Role::Complement(paint) => ("complement", Some(paint.get())),
            Role::Dark => ("dark", None),
            Role::Earth => ("earth", None),
            Role::Texture => ("texture", None),
        };
        Self { name, of }
    }
}

fn family(hue: Option<Hue>) -> &'static str {
    hue.map_or("grey", Hue::name)
}

pub(crate) fn read_targets(targets: JsValue) -> Result<Targets, JsError> {
    let colours: Vec<([f32; 3], f32)> = into(targets)?;
    let colours: Vec<_> =
        colours.into_iter().map(|([l, a, b], weight)| Target::new(Lab::new(l, a, b), weight)).collect();
    Ok(Targets::new(&colours)?)
}
