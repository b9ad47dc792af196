//! Writes every kind of sheet as PDF into a folder, to look at:
//! `cargo run -p washpath-print --example sheets -- FOLDER [WORDS]`, words out of
//! `a5`, `letter`, `landscape`, `outlines`, `strips`, `large`.

use std::error::Error;
use std::{env, fs};

use washpath_core::{Kit, Laid, Pan, Recipe, Shelf, Stock};
use washpath_print::{Code, Format, Labels, Leaf, Order, Pair, cards, chart, pair, pdf, svg, tin, wheel};

/// An invented kit: four days of sketching in a harbour.
const PANS: [&[&str]; 12] = [
    &["py184"],
    &["py42"],
    &["po73"],
    &["pr254"],
    &["pv19-rose"],
    &["pr101-light-red"],
    &["pbr7-burnt-sienna", "pbr7-raw-umber"],
    &["pr179"],
    &["pb29"],
    &["pb15-3"],
    &["pb60", "pv23"],
    &["pg18"],
];

fn main() -> Result<(), Box<dyn Error>> {
    let words: Vec<String> = env::args().skip(1).collect();
    let folder = words.first().ok_or("name a folder")?;
    let has = |word: &str| words.iter().skip(1).any(|known| known == word);
    let shelf = Shelf::built_in();
    let number = |key: &&str| shelf.find(key).map(|paint| paint.number);
    let mut pans = Vec::new();
    for keys in PANS {
        match keys {
            [left, right] => pans.push(Pan::Split(number(left)?, number(right)?)),
            _ => pans.push(Pan::Whole(number(&keys[0])?)),
        }
    }
    if has("large") {
        pans = shelf.paints().iter().take(48).map(|paint| Pan::Whole(paint.number)).collect();
    }
    let kit = Kit::new("North Sea harbour, October", pans.len().max(12), Stock::BrightWhite, pans)?;
    let paper = Stock::BrightWhite.paper();
    let format = match (has("a5"), has("letter")) {
        (true, _) => Format::A5,
        (_, true) => Format::Letter,
        _ => Format::A4,
    };
    let order = Order {
        format,
        landscape: has("landscape"),
        outlines: has("outlines"),
        ..Order::new(shelf, kit.title(), "12 October 2026", &paper)
    };
    let ends = [Recipe::paint(number(&"pb29")?), Recipe::paint(number(&"pbr7-burnt-sienna")?)];
    let link = Code::of(&format!("https://example.org/#kit={}", washpath_core::link::encode(&kit)))?;
    let labels = Labels { half: true, full: true };
    let sheets: [(&str, Vec<Leaf>); 5] = [
        ("chart", chart(&order, &kit.paints(), 0.5, has("strips"))?),
        ("pair", pair(&order, &Pair { ends, laid: Laid::Mixed })?),
        ("wheel", wheel(&order, &kit.paints())?),
        ("tin", tin(&order, &kit, labels, Some(&link))?),
        ("cards", cards(&order, &kit.paints())?),
    ];
    fs::create_dir_all(folder)?;
    for (name, leaves) in sheets {
        fs::write(format!("{folder}/{name}.pdf"), pdf(&leaves, order.title))?;
        for (i, leaf) in leaves.iter().enumerate() {
            fs::write(format!("{folder}/{name}-{}.svg", i + 1), svg(leaf))?;
        }
    }
    Ok(())
}
