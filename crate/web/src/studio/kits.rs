//! Kits as the page holds them, and as the text of a link.

use serde::Serialize;
use washpath_core::{
    Brief, Kit, Lab, NamedTargets, OwnPaint, PaintNumber, Puddle, Shelf, Stock, Target, link,
};
use wasm_bindgen::prelude::*;

use crate::border::{into, out};
use crate::from_page::{Fields, FromPage};
use crate::own_paint::OwnReadout;
use crate::paper::PaperChoice;
use crate::parts::{PanPaints, Parts};

/// A kit; a pan is one paint number or two.
#[derive(Serialize)]
struct KitReadout {
    title: String,
    capacity: usize,
    stock: usize,
    /// L*, a*, b* of the painter's own paper; it goes before the stock.
    paper: Option<[f32; 3]>,
    pans: Vec<PanPaints>,
    puddles: Vec<PuddleReadout>,
    #[serde(rename = "places")]
    targets: Vec<TargetsReadout>,
    /// Own paints by their numbers; those that the kit does not hold stay behind.
    own: Vec<(u16, OwnReadout)>,
    /// Note and tasks for a class, if there are any.
    brief: Option<BriefReadout>,
}

impl FromPage for KitReadout {
    fn from_page(value: &JsValue) -> Result<Self, String> {
        let fields = Fields::of(value)?;
        Ok(Self {
            title: fields.get("title")?,
            capacity: fields.get("capacity")?,
            stock: fields.get("stock")?,
            paper: fields.get("paper")?,
            pans: fields.get("pans")?,
            puddles: fields.get::<Option<_>>("puddles")?.unwrap_or_default(),
            targets: fields.get::<Option<_>>("places")?.unwrap_or_default(),
            own: fields.get::<Option<_>>("own")?.unwrap_or_default(),
            brief: fields.get("brief")?,
        })
    }
}

/// What a teacher asks of a class.
#[derive(Serialize)]
struct BriefReadout {
    note: String,
    tasks: Vec<String>,
}

impl FromPage for BriefReadout {
    fn from_page(value: &JsValue) -> Result<Self, String> {
        let fields = Fields::of(value)?;
        Ok(Self { note: fields.get("note")?, tasks: fields.get("tasks")? })
    }
}

/// Targets under a name.
#[derive(Serialize)]
struct TargetsReadout {
    name: String,
    colours: Vec<ColourReadout>,
}

impl FromPage for TargetsReadout {
    fn from_page(value: &JsValue) -> Result<Self, String> {
        let fields = Fields::of(value)?;
        Ok(Self { name: fields.get("name")?, colours: fields.get("colours")? })
    }
}

#[derive(Serialize)]
struct ColourReadout {
    lab: [f32; 3],
    weight: f32,
}

impl FromPage for ColourReadout {
    fn from_page(value: &JsValue) -> Result<Self, String> {
        let fields = Fields::of(value)?;
        Ok(Self { lab: fields.get("lab")?, weight: fields.get("weight")? })
    }
}

/// A kept mix.
#[derive(Serialize)]
struct PuddleReadout {
    parts: Parts,
    load: f32,
}

impl FromPage for PuddleReadout {
    fn from_page(value: &JsValue) -> Result<Self, String> {
        let fields = Fields::of(value)?;
        Ok(Self { parts: fields.get("parts")?, load: fields.get("load")? })
    }
}

/// The kit as text for a link.
///
/// # Errors
///
/// An object that is no kit; a kit beyond its limits.
#[wasm_bindgen]
pub fn encode_kit(kit: JsValue) -> Result<String, JsError> {
    let mut kit: KitReadout = into(kit)?;
    let own = kit.number_own()?;
    let pans = kit.pans.iter().map(PanPaints::pan).collect::<Result<_, _>>()?;
    let paper = PaperChoice { stock: kit.stock, own: kit.paper }.kit_paper()?;
    let puddle = |puddle: &PuddleReadout| Puddle::new(puddle.parts.recipe()?, puddle.load);
    let puddles = kit.puddles.iter().map(puddle).collect::<Result<_, _>>()?;
    let named = |targets: &TargetsReadout| {
        let colours: Vec<Target> = targets
            .colours
            .iter()
            .map(|colour| {
                let [l, a, b] = colour.lab;
                Target::new(Lab::new(l, a, b), colour.weight)
            })
            .collect();
        NamedTargets::new(&targets.name, &colours)
    };
    let targets = kit.targets.iter().map(named).collect::<Result<_, _>>()?;
    let brief = match &kit.brief {
        Some(brief) => Brief::new(&brief.note, &brief.tasks)?,
        None => Brief::default(),
    };
    let kit = Kit::new(&kit.title, kit.capacity, Stock::default(), pans)?
        .with_paper(paper)
        .with_puddles(puddles)?
        .with_targets(targets)?
        .with_own_paints(own)?
        .with_brief(brief)
        .cleaned();
    Ok(link::encode(&kit))
}

/// The kit of a link's text.
///
/// # Errors
///
/// A damaged text, an unknown version or paint, in words for the painter.
#[wasm_bindgen]
pub fn decode_kit(text: &str) -> Result<JsValue, JsError> {
    let kit = link::decode(text, Shelf::built_in())?;
    let paper = PaperChoice::from(kit.paper());
    out(&KitReadout {
        title: kit.title().to_owned(),
        capacity: kit.capacity(),
        stock: paper.stock,
        paper: paper.own,
        pans: kit.pans().iter().map(|pan| PanPaints(pan.paints().collect())).collect(),
        puddles: kit.puddles().iter().map(PuddleReadout::from).collect(),
        targets: kit.targets().iter().map(TargetsReadout::from).collect(),
        own: (PaintNumber::FIRST_OWN.get()..).zip(kit.own_paints().iter().map(OwnReadout::from)).collect(),
        brief: (!kit.brief().is_empty()).then(|| BriefReadout {
            note: kit.brief().note().to_owned(),
            tasks: kit.brief().tasks().to_vec(),
        }),
    })
}

impl KitReadout {
    /// The own paints it holds, in the order they are met; their numbers become those of a link.
    fn number_own(&mut self) -> Result<Vec<OwnPaint>, JsError> {
        let mut met: Vec<PaintNumber> = Vec::new();
        let parts = self.puddles.iter_mut().flat_map(|puddle| &mut puddle.parts.0);
        let in_puddles = parts.map(|part| &mut part.paint);
        let is_own = |paint: &&mut PaintNumber| **paint >= PaintNumber::FIRST_OWN;
        for paint in self.pans.iter_mut().flat_map(|pan| &mut pan.0).chain(in_puddles).filter(is_own) {
            let index = met.iter().position(|known| known == paint).unwrap_or_else(|| {
                met.push(*paint);
                met.len() - 1
            });
            *paint = PaintNumber::own(index);
        }
        let find = |number: &PaintNumber| {
            let own = self.own.iter().find(|(own, _)| *own == number.get());
            own.ok_or_else(|| JsError::new(&format!("no own paint of number {number}")))?.1.paint()
        };
        met.iter().map(find).collect()
    }
}

impl From<&NamedTargets> for TargetsReadout {
    fn from(targets: &NamedTargets) -> Self {
        let colours = targets
            .colours()
            .map(|Target { colour, weight }| ColourReadout { lab: [colour.l, colour.a, colour.b], weight });
        Self { name: targets.name().to_owned(), colours: colours.collect() }
    }
}

impl From<&Puddle> for PuddleReadout {
    fn from(puddle: &Puddle) -> Self {
        Self { parts: Parts::of(puddle.recipe()), load: puddle.load().value() }
    }
}
