//! What records of swatches teach about the paints of a kit.

use crate::error::Error;
use crate::mixing::part::Part;
use crate::mixing::recipe::Recipe;
use crate::optics::paper::Paper;
use crate::optics::surface::Surface;
use crate::paint::number::PaintNumber;
use crate::paint::shelf::Shelf;
use crate::paint::{Learned, Tier};
use crate::swatches::calibrate::{Evidence, Known, Learner, Lesson, Plan};
use crate::swatches::record::Record;

/// Standard deviation of the logarithm of a load named by its look: a quarter.
const LOAD_BY_EYE: f64 = 0.25;

/// Swatches a plan holds.
const PLANNED: usize = 6;

/// What records taught.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Taught {
    /// Paints to correct: those that were recorded and are not held.
    pub learned: Vec<Learned>,
    /// Every record, in order.
    pub records: Vec<Judged>,
    /// How far the kit's mixes may be off now, median CIEDE2000.
    pub now: f32,
    /// The same of those mixes of the kit whose paints have all been recorded; nothing where none has.
    pub recorded: Option<f32>,
    /// Swatches worth painting next, each with those before it.
    pub plan: Vec<PlannedSwatch>,
}

/// How a record fits, in CIEDE2000 between what was seen and what is predicted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Judged {
    /// By the paints as they were.
    pub before: f32,
    /// By the paints as they are now expected.
    pub after: f32,
    /// By the paints as all other records teach them.
    pub without: f32,
    /// How much it was believed, 0 to 1.
    pub believed: f32,
}

/// A swatch that makes the kit's mixes surer.
#[derive(Clone, Debug, PartialEq)]
pub struct PlannedSwatch {
    /// What to mix.
    pub recipe: Recipe,
    /// At which load; 1 is masstone.
    pub load: f32,
    /// How far the kit's mixes may be off once it is recorded, median CIEDE2000.
    pub after: f32,
}

/// What records teach of their paints, and what is worth painting next with the paints of a kit on a paper.
///
/// `shelf` is the shelf before anything was learned; paints of `held` stay as they are on it.
///
/// # Errors
///
/// [`Error::UnknownPaint`] for a paint that is not on the shelf; records that contradict each other.
pub fn teach(
    records: &[Record],
    kit: &[PaintNumber],
    held: &[PaintNumber],
    paper: &Paper,
    shelf: &Shelf,
) -> Result<Taught, Error> {
    let class = Class::new(records, kit);
    let known = class.0.iter().map(|number| known(*number, held, shelf)).collect::<Result<_, Error>>()?;
    let evidence: Vec<Evidence> =
        records.iter().map(|record| class.evidence(record)).collect::<Result<_, Error>>()?;
    let lesson = Learner::new(known, Surface::WASH).learn(&evidence)?;
    let without = lesson.left_out(&evidence);
    let indices: Vec<usize> = kit.iter().filter_map(|paint| class.index(*paint)).collect();
    let Plan { now, steps } = lesson.plan(&indices, paper, PLANNED);
    let recorded: Vec<usize> = indices
        .iter()
        .copied()
        .filter(|i| evidence.iter().any(|record| record.parts.iter().any(|(paint, _)| paint == i)))
        .collect();
    let judged = (0..records.len()).map(|i| Judged {
        before: lesson.before[i] as f32,
        after: lesson.after[i] as f32,
        without: without[i] as f32,
        believed: lesson.believed[i] as f32,
    });
    let planned = steps.iter().map(|step| PlannedSwatch {
        recipe: Recipe::of_whole(step.parts.iter().map(|part| Part::new(class.0[part.paint], part.parts))),
        load: step.load as f32,
        after: step.after as f32,
    });
    Ok(Taught {
        learned: class.learned(records, held, &lesson, paper),
        records: judged.collect(),
        now: now as f32,
        recorded: (!recorded.is_empty()).then(|| lesson.error_among(&recorded, paper) as f32),
        plan: planned.collect(),
    })
}

/// Paints that are learned about: those of the kit and of the records, each once.
struct Class(Vec<PaintNumber>);

impl Class {
    fn new(records: &[Record], kit: &[PaintNumber]) -> Self {
        let mut all = Vec::new();
        let recorded = records.iter().flat_map(|record| record.recipe().parts()).map(|part| &part.paint);
        for paint in kit.iter().chain(recorded) {
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
            parts: parts.filter_map(|part| Some((self.index(part.paint)?, f64::from(part.parts)))).collect(),
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
        paper: &Paper,
    ) -> Vec<Learned> {
        let recorded = |number: PaintNumber| {
            let mut parts = records.iter().flat_map(|record| record.recipe().parts());
            parts.any(|part| part.paint == number) && !held.contains(&number)
        };
        let others: Vec<usize> = (0..self.0.len()).collect();
        let taught = self.0.iter().enumerate().filter(|(_, number)| recorded(**number));
        taught
            .map(|(i, number)| Learned {
                number: *number,
                film: lesson.films[i].clone(),
                doubt_left: lesson.doubt_left(i, &others, paper),
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::Lab;
    use crate::optics::observer::Light;
    use crate::optics::paper::{KitPaper, Stock};
    use crate::optics::view::View;
    use crate::swatches::calibrate::Seen;

    /// A record of a recipe, seen as the shelf has it but so much darker.
    fn record(parts: &[(u16, u16)], darker: f64) -> Record {
        let recipe = Recipe::of_numbers(parts);
        let view = View::new(&Stock::BrightWhite.paper(), Light::D65);
        let lab = view.colour(&recipe.film(Shelf::built_in()).unwrap(), 0.25);
        let seen = Lab::new(f64::from(lab.l) - darker, lab.a.into(), lab.b.into());
        Record::new(recipe, 0.25, Seen::Lab(seen), KitPaper::Stock(Stock::BrightWhite)).unwrap()
    }

    #[test]
    fn recorded_paints_are_learned_and_held_ones_stay() {
        let records = [record(&[(1, 1)], 4.0), record(&[(1, 1), (3, 1)], 4.0), record(&[(3, 1)], 0.0)];
        let paper = Stock::BrightWhite.paper();
        let taught =
            teach(&records, &[1, 3, 7].map(PaintNumber::new), &[3.into()], &paper, Shelf::built_in())
                .unwrap();
        assert_eq!(
            taught.learned.iter().map(|paint| paint.number).collect::<Vec<_>>(),
            [PaintNumber::new(1)]
        );
        assert!(taught.learned[0].doubt_left.alone < 1.0);
        assert_eq!((taught.records.len(), taught.plan.len()), (3, PLANNED));
        assert!(taught.records[0].after < taught.records[0].before);
        assert!(taught.plan.last().unwrap().after < taught.now);
        assert!(taught.recorded.unwrap() < taught.now, "paint 7 was not recorded");
    }

    #[test]
    fn nothing_recorded_teaches_nothing_and_still_plans() {
        let taught =
            teach(&[], &[1, 3].map(PaintNumber::new), &[], &Stock::Cream.paper(), Shelf::built_in()).unwrap();
        assert!(taught.learned.is_empty() && taught.records.is_empty() && taught.recorded.is_none());
        assert_eq!(taught.plan.len(), PLANNED);
        let unknown = teach(&[], &[60_000.into()], &[], &Stock::Cream.paper(), Shelf::built_in());
        assert_eq!(unknown.unwrap_err(), Error::UnknownPaint("number 60000".into()));
    }
}
