//! Every kind of sheet, made as a test asks.

#![allow(clippy::unwrap_used, reason = "helpers of tests: what fails is the test")]

use washpath_core::{Kit, Laid, PaintNumber, Pan, Recipe, Shelf, Stock};
use washpath_print::{Code, Format, Labels, Leaf, Order, Pair, cards, chart, pair, tin, wheel};

pub const TITLES: [&str; 8] = [
    "Harbour",
    "",
    "<script>alert(1)</script>&amp;\"'",
    "a\u{0}b\u{1b}c\u{7f}\u{85}\u{fffe}\t\r\n",
    "WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW",
    "צבעי מים \u{202e}מים\u{202c} ألوان",
    "🖌🎨👩🏽‍🎨 水彩",
    "Ée\u{301} (\\) ) ( <</Type/Page>> stream endstream %",
];

/// An order of a format, a side and inks.
pub fn order<'a>(title: &'a str, format: Format, landscape: bool, outlines: bool) -> Order<'a> {
    let paper = Stock::BrightWhite.paper();
    let order = Order::new(Shelf::built_in(), title, "12 October 2026", &paper);
    Order { format, landscape, outlines, ..order }
}

/// So many paints of the shelf from a place on.
pub fn paints(count: usize, from: usize) -> Vec<PaintNumber> {
    Shelf::built_in().paints().iter().cycle().skip(from).take(count).map(|paint| paint.number).collect()
}

/// A kit of these paints, the first two side by side.
pub fn kit(title: &str, paints: &[PaintNumber]) -> Kit {
    let mut pans: Vec<Pan> = paints.iter().take(48).map(|paint| Pan::Whole(*paint)).collect();
    if let [first, second, ..] = paints {
        pans[0] = Pan::Split(*first, *second);
    }
    let title: String = title.chars().take(60).collect();
    Kit::new(&title, pans.len().max(1), Stock::BrightWhite, pans).unwrap()
}

/// Every kind of sheet of these paints, by name.
pub fn sheets(order: &Order<'_>, paints: &[PaintNumber]) -> Vec<(&'static str, Vec<Leaf>)> {
    let ends = [Recipe::paint(paints[0]), Recipe::paint(paints[paints.len() - 1])];
    let link = Code::of("https://example.org/#kit=AQwAAA").unwrap();
    let labels = Labels { half: true, full: true };
    vec![
        ("chart", chart(order, paints, 0.5, false).unwrap()),
        ("chart with strips", chart(order, paints, 1.0, true).unwrap()),
        ("pair", pair(order, &Pair { ends, laid: Laid::AOverB }).unwrap()),
        ("wheel", wheel(order, paints).unwrap()),
        ("tin", tin(order, &kit("Tin", paints), labels, Some(&link)).unwrap()),
        ("cards", cards(order, paints).unwrap()),
    ]
}
