//! Records of what was painted, what they teach, and files of them.

use serde::Serialize;
use washpath_core::{
    DayOrder, Error, Judged, Learned, PlannedSwatch, Record, Shelf, UnsureDate, read_log, read_measurements,
    teach, write_log,
};
use wasm_bindgen::prelude::*;

use crate::border::{into, out};
use crate::own_paint::numbers_of;
use crate::paper::PaperChoice;
use crate::parts::{Parts, paints_of};
use crate::record::RecordReadout;
use crate::shelf::{shelf, untaught};

/// Records as a table.
///
/// # Errors
///
/// A record that is none.
#[wasm_bindgen]
pub fn log_of(records: JsValue) -> Result<String, JsError> {
    Ok(write_log(&all(records)?, &shelf()))
}

/// What could be read of a file, and what not.
#[derive(Serialize)]
struct FileReadout<T> {
    found: Vec<T>,
    faults: Vec<String>,
}

/// What could be read of a log, and what it does not tell.
#[derive(Serialize)]
struct LogReadout {
    found: Vec<RecordReadout>,
    faults: Vec<String>,
    unsure: Option<UnsureReadout>,
}

/// A date that may be of two days.
#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct UnsureReadout {
    written: String,
    day_first: String,
    month_first: String,
}

/// Records of a table, `{found, faults, unsure}`: rows that could not be read are named.
///
/// `unsure` is the first date that may be of two days, where neither the file nor `day_first` tells which.
///
/// # Errors
///
/// A file that is no log at all.
#[wasm_bindgen]
pub fn records_of(text: &str, day_first: Option<bool>) -> Result<JsValue, JsError> {
    let order = day_first.map(|day_first| if day_first { DayOrder::DayFirst } else { DayOrder::MonthFirst });
    let read = read_log(text, &shelf(), order)?;
    out(&LogReadout {
        found: read.records.iter().map(RecordReadout::from).collect(),
        faults: words(&read.faults),
        unsure: read.unsure.map(|UnsureDate { written, day_first, month_first }| UnsureReadout {
            written,
            day_first,
            month_first,
        }),
    })
}

/// A measured sample.
#[derive(Serialize)]
struct SampleReadout {
    name: String,
    /// L*, a*, b* or 36 reflectances.
    seen: Vec<f32>,
}

/// Samples of a meter's file, `{found, faults}`.
///
/// # Errors
///
/// A file without a sample.
#[wasm_bindgen]
pub fn samples_of(text: &str) -> Result<JsValue, JsError> {
    let read = read_measurements(text)?;
    let found = read
        .samples
        .iter()
        .map(|sample| SampleReadout { name: sample.name.clone(), seen: numbers_of(&sample.seen) });
    out(&FileReadout { found: found.collect(), faults: words(&read.faults) })
}

fn words(faults: &[Error]) -> Vec<String> {
    faults.iter().map(ToString::to_string).collect()
}

fn all(records: JsValue) -> Result<Vec<Record>, JsError> {
    let records: Vec<RecordReadout> = into(records)?;
    records.iter().map(RecordReadout::record).collect()
}

/// What was learned, for the page.
#[derive(Serialize)]
struct LessonReadout {
    /// What is to be put on the shelf.
    learned: Vec<LearnedReadout>,
    /// CIEDE2000 of each record: before, after, and learned from all others.
    records: Vec<JudgedReadout>,
    /// How far the kit's mixes may be off now, median CIEDE2000.
    now: f32,
    /// The same of those whose paints were all recorded.
    recorded: Option<f32>,
    plan: Vec<StepReadout>,
}

#[derive(Serialize)]
struct LearnedReadout {
    number: u16,
    strength: f32,
    /// The same on the shelf.
    was: f32,
    left: [f32; 2],
    k: Vec<f32>,
    s: Vec<f32>,
}

#[derive(Serialize)]
struct JudgedReadout {
    before: f32,
    after: f32,
    without: f32,
    believed: f32,
}

#[derive(Serialize)]
struct StepReadout {
    parts: Parts,
    load: f32,
    after: f32,
}

/// What records teach of their paints, and what is worth painting next with the paints of a kit on its paper.
///
/// Paints of `held` stay as they are on the shelf.
///
/// # Errors
///
/// A record that is none, a paint that is not on the shelf.
#[wasm_bindgen]
pub fn learn(records: JsValue, paints: &[u16], held: &[u16], paper: JsValue) -> Result<JsValue, JsError> {
    let records = all(records)?;
    let paper = into::<PaperChoice>(paper)?.paper()?;
    let shelf = untaught();
    let taught = teach(&records, &paints_of(paints), &paints_of(held), &paper, &shelf)?;
    let learned = taught.learned.iter().map(|paint| LearnedReadout::new(paint, &shelf));
    out(&LessonReadout {
        learned: learned.collect::<Result<_, _>>()?,
        records: taught.records.iter().map(JudgedReadout::from).collect(),
        now: taught.now,
        recorded: taught.recorded,
        plan: taught.plan.iter().map(StepReadout::from).collect(),
    })
}

impl LearnedReadout {
    fn new(paint: &Learned, shelf: &Shelf) -> Result<Self, Error> {
        let Learned { number, film, doubt_left } = paint;
        Ok(Self {
            number: number.get(),
            strength: film.strength,
            was: shelf.get(*number)?.film.strength,
            left: [doubt_left.alone, doubt_left.mixed],
            k: film.k.to_vec(),
            s: film.s.to_vec(),
        })
    }
}

impl From<&Judged> for JudgedReadout {
    fn from(Judged { before, after, without, believed }: &Judged) -> Self {
        Self { before: *before, after: *after, without: *without, believed: *believed }
    }
}

impl From<&PlannedSwatch> for StepReadout {
    fn from(swatch: &PlannedSwatch) -> Self {
        Self { parts: Parts::of(&swatch.recipe), load: swatch.load, after: swatch.after }
    }
}
