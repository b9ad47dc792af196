//! What lies where on the leaves.

#![allow(clippy::unwrap_used, reason = "helpers of tests: what fails is the test")]

mod support;

use std::collections::{HashMap, HashSet};

use proptest::prelude::*;
use support::{TITLES, kit, order, paints, sheets};
use washpath_core::{Laid, PaintNumber, Pan, Part, Recipe, Shelf};
use washpath_print::{
    CARD, Code, FULL_PAN, Format, HALF_PAN, INK, Labels, Leaf, Order, Pair, RULE, Shape, Text, cards, chart,
    pair, tin, wheel,
};

fn texts(leaf: &Leaf) -> Vec<&Text> {
    leaf.shapes
        .iter()
        .filter_map(|shape| if let Shape::Text(text) = shape { Some(text) } else { None })
        .collect()
}

fn words(leaf: &Leaf) -> Vec<&str> {
    texts(leaf).iter().map(|text| text.words.as_str()).collect()
}

fn assert_within(name: &str, leaf: &Leaf) {
    // What printers commonly leave bare, mm: common practice, no source.
    const BARE: f32 = 5.0;
    for shape in &leaf.shapes {
        let bounds = shape.bounds();
        assert!(leaf.area().inset(BARE).holds(&bounds), "{name}: {bounds:?} of {shape:?}");
        let numbers = [bounds.left, bounds.top, bounds.width, bounds.height];
        assert!(numbers.iter().all(|number| number.is_finite()) && bounds.width >= 0.0, "{name}: {shape:?}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn every_shape_lies_where_a_printer_prints(
        count in 1usize..40, from in 0usize..150, format in 0usize..3, landscape: bool, outlines: bool, title in 0usize..8,
    ) {
        let order = order(TITLES[title], Format::ALL[format], landscape, outlines);
        for (name, leaves) in sheets(&order, &paints(count, from)) {
            prop_assert!(!leaves.is_empty());
            for leaf in &leaves {
                prop_assert_eq!([leaf.width, leaf.height], order.size());
                assert_within(name, leaf);
            }
        }
    }

    #[test]
    fn any_title_is_cut_to_its_line(title in "\\PC{0,200}", date in "\\PC{0,80}") {
        let order = Order { date: &date, ..order(&title, Format::A5, false, false) };
        for leaf in cards(&order, &paints(2, 0)).unwrap() {
            assert_within("cards", &leaf);
        }
    }

    #[test]
    fn the_chart_has_every_pair_once(count in 1usize..40, from in 0usize..150, format in 0usize..3, landscape: bool) {
        // Pages are told by the codes on them: paints that share one would be taken for each other.
        let shelf = Shelf::built_in();
        let code = |number: PaintNumber| shelf.get(number).unwrap().code.as_str();
        let mut numbers = paints(count, from);
        let mut met = HashSet::new();
        numbers.retain(|number| met.insert(code(*number)));
        let order = order("Pairs", Format::ALL[format], landscape, true);
        let mut found: HashMap<(usize, usize), usize> = HashMap::new();
        for leaf in chart(&order, &numbers, 0.5, false).unwrap() {
            for pair in pairs_of(&leaf, &numbers) {
                *found.entry(pair).or_default() += 1;
            }
        }
        for row in 0..numbers.len() {
            for column in 0..=row {
                prop_assert_eq!(found.remove(&(row, column)), Some(1), "{} and {}", row, column);
            }
        }
        prop_assert!(found.is_empty(), "{:?}", found);
    }
}

/// The pairs of a chart's page, found by where cells stand beside the names of rows and columns.
fn pairs_of(leaf: &Leaf, numbers: &[PaintNumber]) -> Vec<(usize, usize)> {
    let shelf = Shelf::built_in();
    let texts: Vec<_> =
        leaf.shapes.iter().filter_map(|s| if let Shape::Text(t) = s { Some(t) } else { None }).collect();
    // Headings of rows stand left of all cells; those of columns read upwards.
    let codes: Vec<&str> = numbers.iter().map(|number| shelf.get(*number).unwrap().code.as_str()).collect();
    let named = |t: &&&Text| t.ink == INK && t.size < 4.0;
    let rows: Vec<f32> = texts.iter().filter(named).filter(|t| !t.upwards).map(|t| t.at[1]).collect();
    let columns: Vec<f32> = texts.iter().filter(named).filter(|t| t.upwards).map(|t| t.at[0]).collect();
    let row_codes: Vec<&str> =
        texts.iter().filter(named).filter(|t| !t.upwards).map(|t| t.words.as_str()).collect();
    let column_codes: Vec<&str> =
        texts.iter().filter(named).filter(|t| t.upwards).map(|t| t.words.as_str()).collect();
    let start =
        |found: &[&str]| (0..=codes.len() - found.len()).find(|i| codes[*i..].starts_with(found)).unwrap();
    let (first_row, first_column) = (start(&row_codes), start(&column_codes));
    // A cell's edge is its last rectangle: the only one that is edged.
    let cells = leaf.shapes.iter().filter_map(|shape| match shape {
        Shape::Rectangle(area, paint) if paint.edge.is_some() => Some(*area),
        _ => None,
    });
    cells
        .map(|cell| {
            let row = rows.iter().position(|y| cell.top < *y + 1.0 && *y - 1.0 < cell.bottom()).unwrap();
            let column = columns.iter().position(|x| cell.left < *x && *x < cell.right()).unwrap();
            (first_row + row, first_column + column)
        })
        .collect()
}

#[test]
fn pages_have_the_sizes_of_their_standards() {
    // ISO 216; ANSI/ASME Y14.1: 8.5 by 11 inches of 25.4 mm.
    assert_eq!(Format::A4.size(), [210.0, 297.0]);
    assert_eq!(Format::A5.size(), [148.0, 210.0]);
    assert_eq!(Format::Letter.size(), [8.5 * 25.4, 11.0 * 25.4]);
    assert_eq!(order("", Format::A5, true, false).size(), [210.0, 148.0]);
}

#[test]
fn fourteen_paints_go_on_one_page() {
    for format in [Format::A4, Format::Letter] {
        assert_eq!(chart(&order("Kit", format, false, false), &paints(14, 0), 0.5, false).unwrap().len(), 1);
    }
    let many = chart(&order("Kit", Format::A5, false, false), &paints(40, 0), 0.5, true).unwrap();
    assert!(many.len() > 4, "{} pages", many.len());
}

#[test]
fn labels_and_cards_have_their_true_size() {
    let order = order("Tin", Format::A4, false, false);
    let kit = kit("Tin", &paints(12, 0));
    for (labels, size) in
        [(Labels { half: true, full: false }, HALF_PAN), (Labels { half: false, full: true }, FULL_PAN)]
    {
        let leaves = tin(&order, &kit, labels, None).unwrap();
        let whole = leaves[1].shapes.iter().filter(|shape| {
            let bounds = shape.bounds();
            matches!(shape, Shape::Rectangle(..)) && [bounds.width, bounds.height] == size
        });
        assert_eq!(whole.count(), 12, "a label a pan");
    }
    let leaves = cards(&order, &paints(4, 0)).unwrap();
    let mut marks: Vec<f32> = leaves[0]
        .shapes
        .iter()
        .filter_map(|shape| match shape {
            Shape::Line(points, _)
                if (points[0][0] - points[1][0]).abs() == 0.0
                    && points[0][1] < 40.0
                    && points[0][1] > 20.0 =>
            {
                Some(points[0][0])
            }
            _ => None,
        })
        .collect();
    marks.dedup();
    assert!(marks.windows(2).all(|pair| (pair[1] - pair[0] - CARD[0]).abs() < 1e-3), "{marks:?}");
    assert_eq!(marks.len(), 4);
}

#[test]
fn every_page_has_its_rule_and_its_number() {
    let order = order("Cards", Format::A5, false, false);
    let leaves = cards(&order, &paints(9, 0)).unwrap();
    for (i, leaf) in leaves.iter().enumerate() {
        let rule = leaf
            .shapes
            .iter()
            .filter(|shape| matches!(shape, Shape::Line(..)) && shape.bounds().width == RULE);
        assert_eq!(rule.count(), 1);
        assert!(words(leaf).contains(&format!("{} of {}", i + 1, leaves.len()).as_str()));
        assert!(words(leaf).contains(&"Cards") && words(leaf).contains(&"12 October 2026"));
    }
}

#[test]
fn outlines_save_ink() {
    for (name, leaves) in sheets(&order("Ink", Format::A4, false, true), &paints(9, 0)) {
        for shape in leaves.iter().flat_map(|leaf| &leaf.shapes) {
            let (Shape::Rectangle(_, paint) | Shape::Circle(_, _, paint) | Shape::Outline(_, paint)) = shape
            else {
                continue;
            };
            let grey = paint.fill.is_none_or(|[r, g, b]| r == g && g == b);
            assert!(grey, "{name} fills {shape:?}");
        }
    }
}

#[test]
fn paints_keep_their_warnings() {
    let shelf = Shelf::built_in();
    let cadmium = shelf.paints().iter().find(|paint| paint.caution.contains("Cadmium")).unwrap();
    let leaves = cards(&order("Cards", Format::A4, false, false), &[cadmium.number]).unwrap();
    let told = words(&leaves[0]).join(" ");
    assert!(told.contains(&format!("Caution. {}", cadmium.caution)), "{told}");
    // The longest caution is told to its end too.
    let longest = shelf.paints().iter().max_by_key(|paint| paint.caution.len()).unwrap();
    let leaves = cards(&order("Cards", Format::A4, false, false), &[longest.number]).unwrap();
    assert!(words(&leaves[0]).join(" ").contains(&longest.caution));
}

#[test]
fn circles_of_the_wheel_lie_side_by_side() {
    let leaves = wheel(&order("Wheel", Format::A4, false, false), &paints(24, 60)).unwrap();
    let edged: Vec<_> = leaves[0]
        .shapes
        .iter()
        .filter_map(|shape| match shape {
            Shape::Circle(middle, radius, paint) if paint.edge.is_some_and(|edge| edge.width == 0.25) => {
                Some((*middle, *radius))
            }
            _ => None,
        })
        .collect();
    assert_eq!(edged.len(), 24);
    for (i, (a, radius)) in edged.iter().enumerate() {
        for (b, _) in &edged[..i] {
            let apart = (a[0] - b[0]).hypot(a[1] - b[1]);
            assert!(apart > 2.0 * radius - 0.1, "{apart} mm apart at a radius of {radius}");
        }
    }
}

/// Yellow stands up, as the page's wheel has it.
#[test]
fn yellow_is_above_blue_on_the_wheel() {
    let shelf = Shelf::built_in();
    let number = |key: &str| shelf.find(key).unwrap().number;
    let leaves =
        wheel(&order("Wheel", Format::A4, false, false), &[number("py184"), number("pb29")]).unwrap();
    let at = |code: &str| {
        leaves[0]
            .shapes
            .iter()
            .find_map(|s| match s {
                Shape::Text(text) if text.words == code => Some(text.at[1]),
                _ => None,
            })
            .unwrap()
    };
    assert!(at("PY184") < at("PB29") - 50.0);
}

#[test]
fn a_sheet_says_where_it_crosses_neutral() {
    let shelf = Shelf::built_in();
    let number = |key: &str| shelf.find(key).unwrap().number;
    let order = order("Pair", Format::A4, false, false);
    let sheet = |a: Recipe, b: Recipe| pair(&order, &Pair { ends: [a, b], laid: Laid::Mixed }).unwrap();
    // Ultramarine and burnt sienna grey each other: common practice, no source.
    let leaves = sheet(Recipe::paint(number("pb29")), Recipe::paint(number("pbr7-burnt-sienna")));
    assert!(words(&leaves[0]).join(" ").contains("grey"));
    let rings = leaves[0].shapes.iter().filter(|shape| matches!(shape, Shape::Circle(..))).count();
    assert_eq!(rings, 5);
    let mix = Recipe::new(&[Part::new(number("pb29"), 2), Part::new(number("py42"), 1)]).unwrap();
    let leaves = sheet(mix, Recipe::paint(number("pr254")));
    assert!(words(&leaves[0]).join(" ").contains("2 Ultramarine blue PB29 + 1 Yellow iron oxide PY42"));
}

#[test]
fn what_cannot_be_printed_is_refused_in_words() {
    let order = order("None", Format::A4, false, false);
    let empty = "no paint to print: pack some first";
    assert_eq!(chart(&order, &[], 0.5, false).unwrap_err().to_string(), empty);
    assert_eq!(wheel(&order, &[]).unwrap_err().to_string(), empty);
    assert_eq!(cards(&order, &[]).unwrap_err().to_string(), empty);
    assert_eq!(tin(&order, &kit("", &[]), Labels::default(), None).unwrap_err().to_string(), empty);
    for load in [0.0, -1.0, 1.5, f32::NAN, f32::INFINITY] {
        assert!(chart(&order, &paints(2, 0), load, false).is_err());
    }
    let unknown = cards(&order, &[u16::MAX.into()]).unwrap_err().to_string();
    assert_eq!(unknown, "no paint \"number 65535\" on the shelf");
    let long = "x".repeat(2001);
    let refusal = Code::of(&long).err().unwrap().to_string();
    assert_eq!(refusal, "a link of 2001 bytes: a QR code holds at most 2000");
}

#[test]
fn the_plan_has_every_pan_and_gap() {
    let kit = washpath_core::Kit::new(
        "Tin",
        7,
        washpath_core::Stock::Cream,
        vec![Pan::Whole(1.into()), Pan::Split(2.into(), 3.into())],
    )
    .unwrap();
    let leaves = tin(&order("Tin", Format::A4, false, false), &kit, Labels::default(), None).unwrap();
    assert_eq!(leaves.len(), 1);
    let dashed = leaves[0].shapes.iter().filter(
        |shape| matches!(shape, Shape::Rectangle(_, paint) if paint.edge.is_some_and(|edge| edge.dashed)),
    );
    assert_eq!(dashed.count(), 5);
}
