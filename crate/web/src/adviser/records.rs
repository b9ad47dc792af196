//! Records of what was painted, what they teach, and files of them.

use serde::Serialize;
use washpath_core::calibrate::{Evidence, Known, Learner, Lesson};
use washpath_core::{
    Error, PaintNumber, Paper, Record, Shelf, Surface, Tier, read_log, read_measurements, write_log,
};
use wasm_bindgen::prelude::*;

use crate::border::{into, out};
use crate::own_paint::numbers_of;
use crate::paper::PaperChoice;
use crate::parts::Parts;
use crate::record::RecordReadout;
use crate::shelf::{shelf, untaught};

/// Standard deviation of the logarithm of a load named by its look: a quarter.
const LOAD_BY_EYE: f64 = 0.25;

/// Swatches a plan holds.
const STEPS: usize = 6;

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

/// Records of a table, `{found, faults}`: rows that could not be read are named.
///
/// # Errors
///
/// A file that is no log at all.
#[wasm_bindgen]
pub fn records_of(text: &str) -> Result<JsValue, JsError> {
    let read = read_log(text, &shelf())?;
    out(&FileReadout {
        found: read.records.iter().map(RecordReadout::from).collect(),
        faults: words(&read.faults),
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
    records: Vec<Judged>,
    /// How far the kit's mixes may be off now, median CIEDE2000.
    now: f32,
    plan: Vec<StepReadout>,
}

#[derive(Serialize)]
struct LearnedReadout {
    number: PaintNumber,
    strength: f32,
    /// The same on the shelf.
    was: f32,
    left: [f32; 2],
    k: Vec<f32>,
    s: Vec<f32>,
}

#[derive(Serialize)]
struct Judged {
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
pub fn learn(
    records: JsValue,
    paints: &[PaintNumber],
    held: &[PaintNumber],
    paper: JsValue,
) -> Result<JsValue, JsError> {
    let records = all(records)?;
    let paper = into::<PaperChoice>(paper)?.paper()?;
    let shelf = untaught();
    let class = Class::new(&records, paints);
    let known = class.0.iter().map(|number| known(*number, held, &shelf)).collect::<Result<_, Error>>()?;
    let evidence: Vec<Evidence> =
        records.iter().map(|record| class.evidence(record)).collect::<Result<_, Error>>()?;
    let lesson = Learner::new(known, Surface::WASH).learn(&evidence)?;
    let without = lesson.left_out(&evidence);
    let kit: Vec<usize> = paints.iter().filter_map(|paint| class.index(*paint)).collect();
    let (now, plan) = lesson.plan(&kit, &paper, STEPS);
    let judged = (0..records.len()).map(|i| Judged {
        before: lesson.before[i] as f32,
        after: lesson.after[i] as f32,
        without: without[i] as f32,
        believed: lesson.believed[i] as f32,
    });
    out(&LessonReadout {
        learned: class.learned(&records, held, &lesson, &shelf, &paper)?,
        records: judged.collect(),
        now: now as f32,
        plan: plan
            .iter()
            .map(|step| StepReadout {
                parts: step.parts.iter().map(|(i, parts)| (class.0[*i], *parts)).collect(),
                load: step.load as f32,
                after: step.after as f32,
            })
            .collect(),
    })
}

/// Paints that are learned about: those of the kit and of the records, each once.
struct Class(Vec<PaintNumber>);

impl Class {
    fn new(records: &[Record], paints: &[PaintNumber]) -> Self {
        let mut all = Vec::new();
        let recorded = records.iter().flat_map(|record| record.recipe().parts()).map(|(paint, _)| paint);
        for paint in paints.iter().chain(recorded) {
            if !all.contains(paint) {
                all.push(*paint);
            }
        }
        Self(all)
    }

    fn index(&self, paint: PaintNumber) -> Option<usize> {
        self.0.iter().position(|known| *known == paint)
    }

    fn evidence(&self, record: &Record) -> Result<Evidence, Error> {
        let parts = record.recipe().parts().iter();
        Ok(Evidence {
            parts: parts
                .filter_map(|(paint, parts)| Some((self.index(*paint)?, f64::from(*parts))))
                .collect(),
            load: record.load().into(),
            load_doubt: LOAD_BY_EYE,
            paper: record.paper().paper()?.reflectance,
            seen: record.seen().clone(),
        })
    }

    /// Of every paint that was recorded and not held.
    fn learned(
        &self,
        records: &[Record],
        held: &[PaintNumber],
        lesson: &Lesson,
        shelf: &Shelf,
        paper: &Paper,
    ) -> Result<Vec<LearnedReadout>, Error> {
        let recorded = |number: PaintNumber| {
            let mut parts = records.iter().flat_map(|record| record.recipe().parts());
            parts.any(|(paint, _)| *paint == number) && !held.contains(&number)
        };
        let others: Vec<usize> = (0..self.0.len()).collect();
        let taught = self.0.iter().enumerate().filter(|(_, number)| recorded(**number));
        taught
            .map(|(i, number)| {
                let film = &lesson.films[i];
                Ok(LearnedReadout {
                    number: *number,
                    strength: film.strength,
                    was: shelf.get(*number)?.film.strength,
                    left: lesson.left(i, &others, paper).map(|part| part as f32),
                    k: film.k.to_vec(),
                    s: film.s.to_vec(),
                })
            })
            .collect()
    }
}

fn known(number: PaintNumber, held: &[PaintNumber], shelf: &Shelf) -> Result<Known, Error> {
    let paint = shelf.get(number)?;
    // Beside a measured paint of some maker's: an estimate may lie farther off, what the painter swatched less far.
    let doubt = match paint.tier {
        _ if held.contains(&number) => 0.0,
        Tier::CrossChecked | Tier::Measured => 1.0,
        Tier::Estimated => 1.3,
        Tier::Swatched => 0.7,
        Tier::OwnMeasured => 0.5,
    };
    Ok(Known { film: paint.film.clone(), doubt })
}
