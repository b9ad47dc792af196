use super::*;
use crate::kit::named_targets::NamedTargets;
use crate::kit::puddle::Puddle;
use crate::kit::targets::Target;
use crate::mixing::load::Load;
use crate::optics::paper::OwnPaper;
use crate::swatches::own_paint::OwnPaint;
use crate::swatches::patch::{Patch, Wash};
use proptest::prelude::*;

#[test]
fn fifteen_pans_fit_in_160_characters() {
    let shelf = Shelf::built_in();
    let numbers: Vec<_> = shelf.paints().iter().rev().map(|paint| paint.number).collect();
    let pans = (0..15).map(|i| Pan::Split(numbers[2 * i], numbers[2 * i + 1])).collect();
    let kit = Kit::new("Four October days on the harbour wall", 15, Stock::Tan, pans).unwrap();
    assert!(encode(&kit).len() <= 160, "{} characters", encode(&kit).len());
}

#[test]
fn a_newer_version_is_told_from_damage() {
    assert_eq!(
        decode(&text_of(vec![9, 1, 2, 3]), Shelf::built_in()),
        Err(Error::UnknownVersion { version: 9, newest: NEWEST })
    );
}

#[test]
fn a_paint_of_a_later_shelf_is_named() {
    let kit = Kit::new("", 1, Stock::Cream, vec![Pan::Whole(60_000.into())]).unwrap();
    let error = decode(&encode(&kit), Shelf::built_in()).unwrap_err();
    assert_eq!(error.to_string(), "no paint \"number 60000\" on the shelf");
}

/// Bytes of a later program, or of nobody, with a right checksum.
fn text_of(mut bytes: Vec<u8>) -> String {
    bytes.extend(CRC.checksum(&bytes).to_le_bytes());
    Base64UrlUnpadded::encode_string(&bytes)
}

#[test]
fn a_section_of_a_later_program_is_named() {
    let mut bytes = vec![SECTIONS];
    push_section(&mut bytes, BODY, &[12, 0, 0]);
    push_section(&mut bytes, 9, &[1, 2, 3]);
    let error = decode(&text_of(bytes), Shelf::built_in()).unwrap_err();
    assert_eq!(
        error.to_string(),
        "the link holds something this version does not know (section 9): open it with a newer one"
    );
}

#[test]
fn one_kit_has_one_text() {
    let section = |tag, payload: &[u8]| {
        let mut bytes = Vec::new();
        push_section(&mut bytes, tag, payload);
        bytes
    };
    let (body, paper) = (section(BODY, &[12, 0, 0]), section(OWN_PAPER, &[180, 0, 9]));
    let puddle = section(PUDDLES, &[1, 0, 1, 1, 1]);
    let read = |sections: &[&[u8]]| {
        decode(&text_of([&[SECTIONS], sections.concat().as_slice()].concat()), Shelf::built_in())
    };
    assert!(read(&[&body, &paper, &puddle]).is_ok());
    for (why, sections) in [
        ("version 1 says all of it", vec![&body]),
        ("no kit", vec![&paper]),
        ("descending tags", vec![&paper, &body]),
        ("a section twice", vec![&body, &paper, &paper]),
        ("a stock beside an own paper", vec![&section(BODY, &[12, 2, 0]), &paper]),
        ("no puddles", vec![&body, &section(PUDDLES, &[0])]),
        ("bytes after a puddle", vec![&body, &section(PUDDLES, &[1, 0, 1, 1, 1, 0])]),
        ("parts with a common divisor", vec![&body, &section(PUDDLES, &[1, 0, 1, 1, 2])]),
        ("a puddle of nothing", vec![&body, &section(PUDDLES, &[1, 0, 0])]),
        ("a load nobody lays", vec![&body, &section(PUDDLES, &[1, 100, 1, 1, 1])]),
        ("a long number", vec![&body, &section(PUDDLES, &[1, 0, 1, 0x81, 0, 1])]),
        ("a brief that says nothing", vec![&body, &section(BRIEF, &[0, 0])]),
        ("a task with a space too many", vec![&body, &section(BRIEF, &[0, 1, 2, b' ', b'x'])]),
        ("a note that is no text", vec![&body, &section(BRIEF, &[1, 0xff, 0])]),
        ("a section cut short", vec![&body, &paper[..4].to_vec()]),
    ] {
        let sections: Vec<&[u8]> = sections.into_iter().map(Vec::as_slice).collect();
        assert!(matches!(read(&sections), Err(Error::DamagedLink(_))), "{why}: {:?}", read(&sections));
    }
    assert!(read(&[&body, &section(OWN_PAPER, &[20, 0, 0])]).is_err(), "too dark a paper");
    assert!(read(&[&body, &section(BRIEF, &[0, 1, 0])]).is_err(), "a task without words");
    let many = [&[0, 9][..], &[1, b'x'].repeat(9)].concat();
    assert!(read(&[&body, &section(BRIEF, &many)]).is_err(), "too many tasks");
    assert!(matches!(
        read(&[&body, &section(PUDDLES, &[1, 0, 1, 0x90, 0x4e, 1])]),
        Err(Error::UnknownPaint(_))
    ));
}

/// Links that were written before names were cleaned stay readable.
#[test]
fn what_nobody_sees_in_an_old_link_is_read_and_left_out() {
    let own = |name| {
        let patch = Patch::Colour([80, 20, 10]);
        let paper = KitPaper::Stock(Stock::Cream);
        OwnPaint::new(name, Origin::Swatches { paper, masstone: patch, wash: None }).unwrap()
    };
    let kit = Kit::new("\u{202e}ruobraH", 3, Stock::Cream, vec![Pan::Whole(PaintNumber::own(0))])
        .unwrap()
        .with_targets(vec![NamedTargets::of_halves("Quay\u{200b}", vec![([80, 0, 0], 1)]).unwrap()])
        .unwrap()
        .with_own_paints(vec![own("Red"), own("Red\u{200b}"), own("\u{feff}")])
        .unwrap()
        .with_brief(Brief::new("Bring\u{ad} one brush", &["\u{2066}find greys", "\u{200b}"]).unwrap());
    let found = decode(&encode(&kit), Shelf::built_in()).unwrap();
    assert_eq!((found.title(), found.targets()[0].name()), ("ruobraH", "Quay"));
    let names: Vec<&str> = found.own_paints().iter().map(OwnPaint::name).collect();
    assert_eq!(names, ["Red", "Red 2", "unnamed"]);
    assert_eq!(
        (found.brief().note(), found.brief().tasks()),
        ("Bring one brush", &["find greys".to_owned()][..])
    );
    assert_eq!(decode(&encode(&found), Shelf::built_in()), Ok(found));
}

#[test]
fn the_longest_kit_is_read() {
    let recipe = Recipe::of_numbers(&std::array::from_fn::<_, 8, _>(|i| (141 + i as u16, 991 + i as u16)));
    // The astral characters take four bytes; every band off the line before it takes three.
    let far = Patch::Measured(Box::new(std::array::from_fn(|band| if band % 2 == 0 { 0 } else { 2400 })));
    let own = |i: usize| {
        let origin = Origin::Swatches {
            paper: KitPaper::Own(OwnPaper::of_halves([180, -10, 40])?),
            masstone: far.clone(),
            wash: Some(Wash { load: Load::THINNEST, patch: far.clone() }),
        };
        OwnPaint::new(&format!("{i:2}{}", "🎨".repeat(37)).replace(' ', "x"), origin)?
            .with_code(&"🎨".repeat(24))?
            .with_caution(&"🎨".repeat(160))
    };
    let grey = Target::new(crate::colour::Lab::new(50.0, -120.0, 120.0), 1.0);
    let targets = NamedTargets::new(&"🎨".repeat(40), &[grey; 24]).unwrap();
    let pans = (0..48).map(|i| Pan::Split(PaintNumber::own(i), PaintNumber::own((i + 48) % 60))).collect();
    let brief = Brief::new(&"🎨".repeat(280), &vec!["🎨".repeat(120); 8]).unwrap();
    let kit = Kit::new(&"🎨".repeat(60), 48, Stock::Tan, pans)
        .and_then(|kit| kit.with_puddles(vec![Puddle::new(recipe, 4.0)?; 24]))
        .and_then(|kit| kit.with_targets(vec![targets; 4]))
        .and_then(|kit| kit.with_own_paints((0..60).map(own).collect::<Result<_, _>>()?))
        .unwrap()
        .with_brief(brief);
    assert!(encode(&kit).len() <= LONGEST, "{} characters", encode(&kit).len());
    assert_eq!(decode(&encode(&kit), Shelf::built_in()), Ok(kit));
}

fn papers() -> impl Strategy<Value = KitPaper> {
    let own = (120i16..190, -10i16..20, -10i16..40)
        .prop_map(|halves| KitPaper::Own(OwnPaper::of_halves(halves.into()).unwrap()));
    prop_oneof![(0usize..5).prop_map(|stock| KitPaper::Stock(Stock::ALL[stock])), own]
}

fn puddle() -> impl Strategy<Value = Puddle> {
    (proptest::collection::vec((1u16..150, 1u16..999), 1..8), -20i8..=8)
        .prop_map(|(parts, stop)| Puddle::at(Recipe::of_numbers(&parts), Load::of_quarters(stop).unwrap()))
}

fn own_paint() -> impl Strategy<Value = OwnPaint> {
    let colour = (10i16..190, -100i16..100, -100i16..100).prop_map(|(l, a, b)| Patch::Colour([l, a, b]));
    let measured = proptest::collection::vec(0u16..2400, 36)
        .prop_map(|steps| Patch::Measured(Box::new(steps.try_into().unwrap())));
    let patch = prop_oneof![colour, measured];
    let wash = proptest::option::of(
        (patch.clone(), -20i8..0)
            .prop_map(|(patch, quarters)| Wash { load: Load::of_quarters(quarters).unwrap(), patch }),
    );
    let swatches = (papers(), patch, wash).prop_map(|(paper, masstone, wash)| Origin::Swatches {
        paper,
        masstone,
        wash,
    });
    let mixture = puddle().prop_map(|puddle| Origin::Mixture(puddle.recipe().clone()));
    let ratings = [proptest::option::of(1u8..=4), proptest::option::of(0u8..=4)];
    ("[a-z]{1,9}[ éα水]{0,3}[a-z]", prop_oneof![swatches, mixture], ".{0,10}", ratings).prop_map(
        |(name, origin, text, [a, b])| {
            let paint = OwnPaint::new(&name, origin).unwrap();
            paint
                .with_code(&text)
                .unwrap()
                .with_caution(&text)
                .unwrap()
                .with_ratings([b, None, b, a])
                .unwrap()
        },
    )
}

#[test]
fn a_dozen_own_paints_of_two_colours_fit_in_900_characters() {
    let patch = |l| Patch::Colour([l, 70, -90]);
    let own = |i: i16| {
        let origin = Origin::Swatches {
            paper: KitPaper::Stock(Stock::Cream),
            masstone: patch(60 + i),
            wash: Some(Wash { load: Load::of_quarters(-8).unwrap(), patch: patch(150 + i) }),
        };
        let paint = OwnPaint::new(&format!("Quay colour {i}"), origin).unwrap();
        paint.with_code("PB29 PV19").unwrap().with_ratings([Some(3), Some(1), Some(4), Some(7)]).unwrap()
    };
    let pans = (0..12).map(|i| Pan::Whole(PaintNumber::own(i))).collect();
    let kit = Kit::new("Quay", 12, Stock::Cream, pans)
        .unwrap()
        .with_own_paints((0..12).map(own).collect())
        .unwrap();
    let text = encode(&kit);
    assert!(text.len() <= 900, "{} characters", text.len());
    assert_eq!(decode(&text, Shelf::built_in()), Ok(kit));
}

#[test]
fn an_own_paint_that_is_not_brought_along_is_unknown() {
    let kit = Kit::new("", 1, Stock::Cream, vec![Pan::Whole(PaintNumber::own(0))]).unwrap();
    assert!(matches!(decode(&encode(&kit), Shelf::built_in()), Err(Error::UnknownPaint(_))));
    let mixture = Origin::Mixture(Recipe::paint(4000.into()));
    let kit = kit.with_own_paints(vec![OwnPaint::new("x", mixture).unwrap()]).unwrap();
    assert!(matches!(decode(&encode(&kit), Shelf::built_in()), Err(Error::UnknownPaint(_))));
}

fn kits() -> impl Strategy<Value = Kit> {
    let paint = || (1u16..20).prop_map(PaintNumber::new);
    let pan = (paint(), paint(), any::<bool>())
        .prop_map(|(m, n, split)| if split { Pan::Split(m, n) } else { Pan::Whole(m) });
    let puddles = proptest::collection::vec(puddle(), 0..4);
    let own = proptest::collection::vec(own_paint(), 0..3);
    let brief = (".{0,20}", proptest::collection::vec("[a-zé水].{0,20}", 0..=8))
        .prop_map(|(note, tasks)| Brief::new(&note, &tasks).unwrap());
    (".{0,40}", papers(), proptest::collection::vec(pan, 0..15), puddles, own, brief).prop_map(
        |(title, paper, pans, puddles, mut own, brief)| {
            let kit = Kit::new(&title, 15, Stock::Cream, pans).unwrap();
            own.dedup_by(|a, b| a.name() == b.name());
            own.truncate(2);
            let kit = kit.with_paper(paper).with_puddles(puddles).unwrap();
            kit.with_own_paints(own).unwrap().with_brief(brief)
        },
    )
}

proptest! {
    #[test]
    fn every_kit_comes_back(kit in kits()) {
        prop_assert_eq!(decode(&encode(&kit), Shelf::built_in()), Ok(kit.cleaned()));
    }

    #[test]
    fn every_cut_and_every_changed_letter_is_noticed(kit in kits(), at in 0usize..400, letter in "[A-Za-z0-9_-]") {
        let text = encode(&kit);
        let at = at % text.len();
        prop_assert!(decode(&text[..at], Shelf::built_in()).is_err());
        let changed = format!("{}{letter}{}", &text[..at], &text[at + 1..]);
        prop_assert!(changed == text || decode(&changed, Shelf::built_in()).is_err());
    }

    #[test]
    fn no_bytes_are_a_panic(version in 0u8..4, bytes in proptest::collection::vec(any::<u8>(), 0..60)) {
        let text = text_of([vec![version], bytes].concat());
        if let Ok(kit) = decode(&text, Shelf::built_in()) {
            // What nobody sees in a name is read and not kept.
            prop_assert!(encode(&kit) == text || encode(&kit).len() < text.len());
            prop_assert_eq!(kit.clone().cleaned(), kit);
        }
    }

    #[test]
    fn no_text_is_a_panic(text in ".{0,100}") {
        let _ = decode(&text, Shelf::built_in());
    }
}
