//! QR codes read back by another program.

#![allow(clippy::unwrap_used, reason = "helpers of tests: what fails is the test")]

use proptest::prelude::*;
use washpath_print::{Code, LEAST_MODULE, LONGEST_LINK};

/// Renders a code at some pixels a module and reads it.
fn read(code: &Code, pixels: usize) -> String {
    let side = code.side() * pixels;
    let mut picture = rqrr::PreparedImage::prepare_from_greyscale(side, side, |x, y| {
        if code.is_dark(x / pixels, y / pixels) { 0 } else { 255 }
    });
    let grids = picture.detect_grids();
    assert_eq!(grids.len(), 1, "one code");
    grids[0].decode().unwrap().1
}

/// Text in the letters of a link, as long as wanted.
fn link(length: usize) -> String {
    let letters = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
    let tail = (0..).map(|i: usize| char::from(letters[(i * i + 7 * i) % letters.len()]));
    "https://example.org/#kit=".chars().chain(tail).take(length).collect()
}

#[test]
fn codes_of_every_length_are_read_back() {
    for length in [26, 80, 200, 400, 700, 1000, 1500, LONGEST_LINK] {
        let text = link(length);
        let code = Code::of(&text).unwrap();
        assert_eq!(read(&code, 4), text, "{length} characters");
        assert!(code.printed_side() / code.side() as f32 >= LEAST_MODULE - 1e-4);
    }
}

#[test]
fn short_links_are_corrected_more() {
    let corrections =
        [60, 250, 350, 500, 700, 2000].map(|length| Code::of(&link(length)).unwrap().correction());
    assert_eq!(corrections[0], 30);
    assert_eq!(corrections[5], 7);
    assert!(corrections.is_sorted_by(|a, b| a >= b), "{corrections:?}");
    // The usual printed side holds them, and only the longest needs more.
    assert!(Code::of(&link(600)).unwrap().printed_side() < 42.01);
    assert!(Code::of(&link(2000)).unwrap().printed_side() < 75.0);
}

#[test]
fn a_code_with_a_blot_is_still_read() {
    let text = link(150);
    let code = Code::of(&text).unwrap();
    let (side, pixels) = (code.side(), 4);
    let middle = side / 2;
    let mut picture = rqrr::PreparedImage::prepare_from_greyscale(side * pixels, side * pixels, |x, y| {
        let (column, row) = (x / pixels, y / pixels);
        let blot = column.abs_diff(middle) < side / 10 && row.abs_diff(middle) < side / 10;
        if blot || code.is_dark(column, row) { 0 } else { 255 }
    });
    assert_eq!(picture.detect_grids()[0].decode().unwrap().1, text);
}

#[test]
fn the_svg_of_a_code_is_its_modules() {
    let code = Code::of("https://example.org/").unwrap();
    let text = code.svg();
    let read = roxmltree::Document::parse(&text).unwrap();
    let path = read.descendants().find_map(|node| node.attribute("d")).unwrap();
    let mut dark = 0;
    for run in path.split('M').filter(|run| !run.is_empty()) {
        let (place, rest) = run.split_once('h').unwrap();
        let (column, row) = place.split_once(' ').unwrap();
        let (column, row): (usize, usize) = (column.parse().unwrap(), row.parse().unwrap());
        let length: usize = rest.split_once('v').unwrap().0.parse().unwrap();
        assert!((column..column + length).all(|column| code.is_dark(column, row)));
        dark += length;
    }
    let side = code.side();
    let all = (0..side * side).filter(|i| code.is_dark(i % side, i / side)).count();
    assert_eq!(dark, all);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn any_text_is_read_back(text in "[ -~]{1,300}") {
        prop_assert_eq!(read(&Code::of(&text).unwrap(), 4), text);
    }

    #[test]
    fn no_text_is_too_much(text in "\\PC{0,1500}") {
        prop_assert_eq!(Code::of(&text).is_ok(), text.len() <= LONGEST_LINK);
    }
}
