//! Links that were once given out must be read for ever.

mod support;

use support::table;
use washpath_core::calibrate::Seen;
use washpath_core::{
    Brief, Kit, KitPaper, Lab, Load, NamedTargets, Origin, OwnPaint, OwnPaper, PaintNumber, Pan, Part, Patch,
    Puddle, Recipe, Shelf, Stock, Target, Wash, link,
};

/// Rows are only ever added to tests/reference/links_v1.csv, never changed.
#[test]
fn links_of_version_1_are_read() {
    for row in table("links_v1.csv") {
        let pans = row.text("pans").split_whitespace().map(pan).collect();
        let stock = Stock::ALL[row.number("stock") as usize];
        let kit = Kit::new(row.text("title"), row.number("capacity") as usize, stock, pans).unwrap();
        let text = row.text("text");
        assert_eq!(link::decode(text, Shelf::built_in()).as_ref(), Ok(&kit), "{text}");
        assert_eq!(link::encode(&kit), text, "one kit has one text");
    }
}

/// Rows are only ever added to tests/reference/links_v2.csv, never changed.
///
/// A second writer, made from the format's description alone, gave the same texts.
#[test]
fn links_of_version_2_are_read() {
    for row in table("links_v2.csv") {
        let pans = row.text("pans").split_whitespace().map(pan).collect();
        let puddles = row.text("puddles").split_terminator(';').map(puddle).collect();
        let kit = Kit::new(row.text("title"), row.number("capacity") as usize, Stock::default(), pans)
            .and_then(|kit| kit.with_paper(paper(row.text("paper"))).with_puddles(puddles))
            .and_then(|kit| kit.with_targets(row.text("places").split_terminator(';').map(targets).collect()))
            .unwrap();
        let text = row.text("text");
        assert_eq!(link::decode(text, Shelf::built_in()).as_ref(), Ok(&kit), "{text}");
        assert_eq!(link::encode(&kit), text, "one kit has one text");
    }
}

/// Rows are only ever added to tests/reference/links_own.csv, never changed.
///
/// A second writer, made from the format's description alone, gave the same texts.
#[test]
fn links_with_own_paints_are_read() {
    for row in table("links_own.csv") {
        let own = row.text("own").split_terminator('|').map(own).collect();
        let pans = row.text("pans").split_whitespace().map(pan).collect();
        let kit =
            Kit::new(row.text("title"), 12, Stock::default(), pans).unwrap().with_own_paints(own).unwrap();
        let text = row.text("text");
        assert_eq!(link::decode(text, Shelf::built_in()).as_ref(), Ok(&kit), "{text}");
        assert_eq!(link::encode(&kit), text, "one kit has one text");
    }
}

/// Rows are only ever added to tests/reference/links_ids.csv, never changed.
///
/// A second writer, made from the format's description alone, gave the same texts.
#[test]
fn links_with_ids_are_read() {
    for row in table("links_ids.csv") {
        let own = row.text("own").split_terminator('|').map(own);
        let ids = row.text("ids").split(' ').map(|id| id.parse().unwrap());
        let own = own.zip(ids).map(|(paint, id)| paint.with_id(id)).collect();
        let pans = row.text("pans").split_whitespace().map(pan).collect();
        let kit =
            Kit::new(row.text("title"), 12, Stock::default(), pans).unwrap().with_own_paints(own).unwrap();
        let text = row.text("text");
        assert_eq!(link::decode(text, Shelf::built_in()).as_ref(), Ok(&kit), "{text}");
        assert_eq!(link::encode(&kit), text, "one kit has one text");
    }
}

/// The same second writer: FNV-1a of the paint's bytes.
#[test]
fn a_paint_without_an_id_has_one_that_follows_from_it() {
    let wanted =
        [("a mixture alone", "0c6de2d5cc44"), ("eight", "3ee035e6abfb"), ("black meter", "6608a6c6811b")];
    for (title, id) in wanted {
        let rows = table("links_own.csv");
        let row = rows.iter().find(|row| row.text("title") == title).unwrap();
        let kit = link::decode(row.text("text"), Shelf::built_in()).unwrap();
        let paint = kit.own_paints()[0].clone();
        assert_eq!((paint.id(), link::id_of(&paint).to_string().as_str()), (None, id));
        // Said or not, it is the same: so the link stays as short as it was.
        let said = kit.clone().with_own_paints(vec![paint.clone().with_id(link::id_of(&paint))]).unwrap();
        assert_eq!(link::encode(&said), row.text("text"));
    }
}

/// Rows are only ever added to tests/reference/links_class.csv, never changed.
///
/// A second writer, made from the format's description alone, gave the same texts.
#[test]
fn links_for_a_class_are_read() {
    for row in table("links_class.csv") {
        let tasks: Vec<&str> = row.text("tasks").split_terminator('|').collect();
        let pans = row.text("pans").split_whitespace().map(pan).collect();
        let stock = Stock::ALL[row.number("stock") as usize];
        let kit = Kit::new(row.text("title"), 12, stock, pans).unwrap();
        let kit = kit.with_brief(Brief::new(row.text("note"), &tasks).unwrap());
        let text = row.text("text");
        assert_eq!(link::decode(text, Shelf::built_in()).as_ref(), Ok(&kit), "{text}");
        assert_eq!(link::encode(&kit), text, "one kit has one text");
    }
}

/// `name;code;caution;t s g l;origin`: ratings, `-` where there is none; the origin `1x2/3x1` for a mixture,
/// else paper, masstone, wash's quarter octave and wash, each L*, a*, b* or every step of 36 alike.
fn own(text: &str) -> OwnPaint {
    let [name, code, caution, ratings, origin @ ..] = &text.split(';').collect::<Vec<_>>()[..] else {
        panic!("{text}")
    };
    let origin = match origin {
        [text] => Origin::Mixture(recipe(text)),
        [sheet, masstone, wash @ ..] => Origin::Swatches {
            paper: paper(sheet),
            masstone: patch(masstone),
            wash: if let [quarters, wash] = wash {
                let load = Load::of_quarters(quarters.parse().expect(text)).expect(text);
                Some(Wash { load, patch: patch(wash) })
            } else {
                None
            },
        },
        [] => panic!("{text}"),
    };
    let rating = |text: &str| text.parse().ok();
    let ratings: Vec<Option<u8>> = ratings.split(' ').map(rating).collect();
    let paint = OwnPaint::new(name, origin).expect(text).with_code(code).expect(text);
    paint.with_caution(caution).expect(text).with_ratings(ratings.try_into().expect(text)).expect(text)
}

fn patch(text: &str) -> Patch {
    match numbers(text)[..] {
        [l, a, b] => Patch::new(&Seen::Lab(Lab::new(l.into(), a.into(), b.into()))).expect(text),
        [steps] => Patch::Measured(Box::new([steps as u16; 36])),
        _ => panic!("{text}"),
    }
}

/// `3` is a stock, `88 1.5 14` an own paper's L*, a* and b*.
fn paper(text: &str) -> KitPaper {
    match numbers(text)[..] {
        [l, a, b] => KitPaper::Own(OwnPaper::new(Lab::new(l, a, b)).expect(text)),
        _ => KitPaper::Stock(Stock::ALL[text.parse::<usize>().expect(text)]),
    }
}

/// `0.5:1x3/72x5` is three parts of paint 1 and five of paint 72 at load 1/2.
fn puddle(text: &str) -> Puddle {
    let (load, parts) = text.split_once(':').expect(text);
    Puddle::new(recipe(parts), load.parse().expect(text)).expect(text)
}

/// `1x3/72x5` is three parts of paint 1 and five of paint 72.
fn recipe(text: &str) -> Recipe {
    let part = |text: &str| {
        let (paint, parts) = text.split_once('x').expect(text);
        Part::new(number(paint), parts.parse().expect(text))
    };
    Recipe::new(&text.split('/').map(part).collect::<Vec<_>>()).expect(text)
}

fn number(text: &str) -> PaintNumber {
    PaintNumber::new(text.parse().expect("a paint's number"))
}

/// `Quay:40 -1.5 -6 255/72.5 0.5 3 96` is two targets, L*, a*, b* and weight.
fn targets(text: &str) -> NamedTargets {
    let (name, colours) = text.split_once(':').expect(text);
    let colour = |text: &str| match numbers(text)[..] {
        [l, a, b, weight] => Target::new(Lab::new(l, a, b), weight),
        _ => panic!("{text}"),
    };
    NamedTargets::new(name, &colours.split('/').map(colour).collect::<Vec<_>>()).expect(text)
}

fn numbers(text: &str) -> Vec<f32> {
    text.split(' ').map(|number| number.parse().expect(text)).collect()
}

/// `7` is a whole pan of paint 7, `7+8` a split one.
fn pan(text: &str) -> Pan {
    match text.split_once('+') {
        Some((left, right)) => Pan::Split(number(left), number(right)),
        None => Pan::Whole(number(text)),
    }
}
