//! What the page has to know of the core: its limits, lists, words and thresholds.

use serde::Serialize;
use washpath_core::rating;
use washpath_core::{
    BANDS, FIRST_OWN, LIMITS, LONGEST_BRIEF_NOTE, LONGEST_CAUTION, LONGEST_CODE, LONGEST_NOTE,
    LONGEST_PAINT_NAME, LONGEST_TARGETS_NAME, LONGEST_TASK, LONGEST_TITLE, Laid, Light, Load,
    MOST_KEPT_COLOURS, MOST_NAMED_TARGETS, MOST_OWN_PAINTS, MOST_PAINTS, MOST_PANS, MOST_PUDDLES,
    MOST_RECORDS, MOST_TASKS, NAMED_LOADS, PaintNumber, SHEET_RATIOS, Stock,
};
use wasm_bindgen::prelude::*;

use crate::border::out;

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct Facts {
    /// Number of the first own paint.
    first_own: PaintNumber,
    /// Bands of a spectrum.
    bands: usize,
    /// Most of everything that is counted.
    most: Counts,
    /// Most characters of every text.
    longest: Lengths,
    /// Lights, papers and ways to lay paint, each in the order of its numbers.
    lights: Vec<&'static str>,
    papers: Vec<&'static str>,
    ways: Vec<&'static str>,
    /// Loads by name, thickest first: load, name, sign.
    loads: Vec<(f32, &'static str, &'static str)>,
    /// The least load that is kept.
    least_load: f32,
    /// Parts of A and B of every column of a sheet.
    ratios: Vec<[u16; 2]>,
    /// Words for ratings of 0 to 4.
    words: Words,
    /// Where a paint is called something: from or below these.
    traits: Traits,
    /// CIEDE2000 within which a colour counts as closely reached, and as reached.
    reached: [f32; 2],
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct Counts {
    pans: usize,
    puddles: usize,
    places: usize,
    place_colours: usize,
    own_paints: usize,
    records: usize,
    tasks: usize,
    /// Paints of a mix.
    mixed: usize,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct Lengths {
    title: usize,
    place_name: usize,
    paint_name: usize,
    pigments: usize,
    caution: usize,
    record_note: usize,
    class_note: usize,
    task: usize,
}

#[derive(Serialize)]
struct Words {
    transparency: [&'static str; 5],
    granulation: [&'static str; 5],
    staining: [&'static str; 5],
}

#[derive(Serialize)]
struct Traits {
    transparent: f32,
    opaque: f32,
    granulating: f32,
    smooth: f32,
    lifting: f32,
    lightfast: f32,
    strong: f32,
    weak: f32,
}

/// What the page has to know of the core: limits, lists, words and thresholds, as one plain object.
///
/// # Errors
///
/// None in practice: the border's own.
#[wasm_bindgen]
pub fn page_facts() -> Result<JsValue, JsError> {
    out(&Facts {
        first_own: FIRST_OWN,
        bands: BANDS,
        most: Counts {
            pans: MOST_PANS,
            puddles: MOST_PUDDLES,
            places: MOST_NAMED_TARGETS,
            place_colours: MOST_KEPT_COLOURS,
            own_paints: MOST_OWN_PAINTS,
            records: MOST_RECORDS,
            tasks: MOST_TASKS,
            mixed: MOST_PAINTS,
        },
        longest: Lengths {
            title: LONGEST_TITLE,
            place_name: LONGEST_TARGETS_NAME,
            paint_name: LONGEST_PAINT_NAME,
            pigments: LONGEST_CODE,
            caution: LONGEST_CAUTION,
            record_note: LONGEST_NOTE,
            class_note: LONGEST_BRIEF_NOTE,
            task: LONGEST_TASK,
        },
        lights: Light::ALL.map(Light::name).to_vec(),
        papers: Stock::ALL.map(Stock::name).to_vec(),
        ways: Laid::ALL.map(Laid::name).to_vec(),
        loads: NAMED_LOADS.map(|named| (named.load, named.name, named.sign)).to_vec(),
        least_load: Load::THINNEST.value(),
        ratios: SHEET_RATIOS.to_vec(),
        words: Words {
            transparency: rating::TRANSPARENCY_WORDS,
            granulation: rating::GRANULATION_WORDS,
            staining: rating::STAINING_WORDS,
        },
        traits: Traits {
            transparent: rating::TRANSPARENT,
            opaque: rating::OPAQUE,
            granulating: rating::GRANULATES,
            smooth: rating::SMOOTH,
            lifting: rating::LIFTS,
            lightfast: rating::LIGHTFAST,
            strong: rating::STRONG,
            weak: rating::WEAK,
        },
        reached: LIMITS,
    })
}
