//! SVG and PDF read back by other programs: sizes, words, one measure.

#![allow(clippy::unwrap_used, reason = "helpers of tests: what fails is the test")]

mod support;

use lopdf::Document;
use lopdf::content::Content;
use support::{TITLES, order, paints, sheets};
use washpath_print::{FULL_PAN, Format, HALF_PAN, Labels, Leaf, RULE, pdf, svg, tin};

/// Points of a millimetre: 72 to an inch of 25.4 mm (ISO 32000-1, 8.3.2.3).
const POINTS: f64 = 72.0 / 25.4;

fn labels(size: [f32; 2]) -> Vec<Leaf> {
    let order = order("Labels", Format::A4, false, false);
    let labels = Labels { half: size == HALF_PAN, full: size == FULL_PAN };
    tin(&order, &support::kit("Labels", &paints(6, 0)), labels, None).unwrap()
}

fn number(object: &lopdf::Object) -> f64 {
    object.as_float().map(f64::from).or_else(|_| object.as_i64().map(|whole| whole as f64)).unwrap()
}

/// Rectangles of a page in millimetres from its top left, by the page's own matrix.
fn rectangles(document: &Document, page: lopdf::ObjectId, height: f64) -> Vec<[f64; 4]> {
    let content = Content::decode(&document.get_page_content(page)).unwrap();
    let mut matrix = [1.0, 0.0, 0.0, 1.0, 0.0, 0.0];
    let mut found = Vec::new();
    for operation in content.operations {
        let numbers = || operation.operands.iter().map(number).collect::<Vec<f64>>();
        match operation.operator.as_str() {
            "cm" => matrix = numbers().try_into().unwrap(),
            "re" => {
                let [x, y, w, h]: [f64; 4] = numbers().try_into().unwrap();
                let left = (x * matrix[0] + matrix[4]) / POINTS;
                let bottom = (y * matrix[3] + matrix[5]) / POINTS;
                let [w, h] = [w * matrix[0] / POINTS, h * matrix[3] / POINTS];
                found.push([left, height - bottom - h, w, h]);
            }
            _ => {}
        }
    }
    found
}

#[test]
fn a_pdf_has_pages_of_true_size() {
    for format in Format::ALL {
        for landscape in [false, true] {
            let order = order("Pages", format, landscape, false);
            for (name, leaves) in sheets(&order, &paints(14, 3)) {
                let document = Document::load_mem(&pdf(&leaves, "Pages")).unwrap();
                let pages = document.get_pages();
                assert_eq!(pages.len(), leaves.len(), "{name}");
                for page in pages.values() {
                    let media = document.get_dictionary(*page).unwrap().get(b"MediaBox").unwrap();
                    let media: Vec<f64> = media.as_array().unwrap().iter().map(number).collect();
                    for (found, wanted) in media[2..].iter().zip(order.size()) {
                        assert!((found / POINTS - f64::from(wanted)).abs() < 0.01, "{name}: {media:?}");
                    }
                }
            }
        }
    }
}

#[test]
fn a_label_is_as_large_as_its_pan_in_a_pdf() {
    for size in [HALF_PAN, FULL_PAN] {
        let document = Document::load_mem(&pdf(&labels(size), "Labels")).unwrap();
        let page = document.get_pages()[&2];
        let near = |found: &[f64; 4]| {
            (0..2).all(|side| (found[2 + side] - f64::from(size[side])).abs() < 0.1) && found[0] >= 5.0
        };
        // One is split: its edge is whole all the same.
        assert_eq!(rectangles(&document, page, 297.0).iter().filter(|found| near(found)).count(), 6);
    }
}

#[test]
fn the_words_of_a_pdf_can_be_taken_out() {
    for (name, leaves) in sheets(&order("Größe – 3·4 ½", Format::A4, false, false), &paints(5, 0)) {
        let document = Document::load_mem(&pdf(&leaves, "Words")).unwrap();
        let text = document.extract_text(&[1]).unwrap();
        assert!(text.contains("Größe – 3·4 ½"), "{name}: {text}");
        assert!(text.contains("PB29") && text.contains("50 mm"), "{name}: {text}");
    }
}

#[test]
fn hostile_titles_make_sound_files() {
    for title in TITLES {
        for (name, leaves) in sheets(&order(title, Format::A5, false, true), &paints(3, 0)) {
            let document = Document::load_mem(&pdf(&leaves, title)).unwrap();
            assert_eq!(document.get_pages().len(), leaves.len(), "{name}: {title}");
            let text = document.extract_text(&[1]).unwrap();
            // What the face lacks is told as the replacement character.
            if title.contains('🖌') {
                assert!(text.contains('\u{fffd}'), "{text}");
            }
            for leaf in &leaves {
                let text = svg(leaf);
                let read = roxmltree::Document::parse(&text).unwrap();
                let names = ["svg", "rect", "circle", "polygon", "polyline", "text"];
                let known = |node: roxmltree::Node<'_, '_>| names.contains(&node.tag_name().name());
                assert!(read.descendants().filter(|node| node.is_element()).all(known), "{name}: {title}");
            }
        }
    }
    let leaves = &sheets(&order(TITLES[2], Format::A4, false, true), &paints(3, 0))[0].1;
    let text = svg(&leaves[0]);
    let read = roxmltree::Document::parse(&text).unwrap();
    assert!(read.descendants().any(|node| node.text() == Some(TITLES[2])), "the title comes back as it was");
}

#[test]
fn an_svg_has_its_true_size() {
    for size in [HALF_PAN, FULL_PAN] {
        let text = svg(&labels(size)[1]);
        let read = roxmltree::Document::parse(&text).unwrap();
        let root = read.root_element();
        assert_eq!(root.attribute("width"), Some("210mm"));
        assert_eq!(root.attribute("height"), Some("297mm"));
        assert_eq!(root.attribute("viewBox"), Some("0 0 210 297"), "a unit is a millimetre");
        let side =
            |node: roxmltree::Node<'_, '_>, name| node.attribute(name).and_then(|n| n.parse::<f32>().ok());
        let near = |node: &roxmltree::Node<'_, '_>| {
            [("width", size[0]), ("height", size[1])]
                .iter()
                .all(|(name, wanted)| side(*node, *name).is_some_and(|found| (found - wanted).abs() < 0.1))
        };
        let found =
            read.descendants().filter(|node| node.has_tag_name(("http://www.w3.org/2000/svg", "rect")));
        assert_eq!(found.filter(near).count(), 6);
    }
}

#[test]
fn the_rule_is_fifty_millimetres_in_both() {
    let leaves = labels(HALF_PAN);
    let document = Document::load_mem(&pdf(&leaves, "Rule")).unwrap();
    let content = Content::decode(&document.get_page_content(document.get_pages()[&1])).unwrap();
    let points: Vec<(&str, Vec<f64>)> = content
        .operations
        .iter()
        .filter(|operation| ["m", "l"].contains(&operation.operator.as_str()))
        .map(|operation| (operation.operator.as_str(), operation.operands.iter().map(number).collect()))
        .collect();
    let rule = points.windows(2).any(|pair| {
        pair[1].0 == "l"
            && pair[0].1[1] == pair[1].1[1]
            && (pair[1].1[0] - pair[0].1[0] - f64::from(RULE)).abs() < 0.01
    });
    assert!(rule, "in the page's millimetres");
    assert!(svg(&leaves[0]).contains("<polyline points=\"11,281.6 61,281.6\""));
}

#[test]
fn a_pdf_of_no_leaf_is_still_one() {
    assert!(pdf(&[], "").starts_with(b"%PDF-"));
}
