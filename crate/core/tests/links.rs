//! Links that were once given out must be read for ever.

mod support;

use support::table;
use washpath_core::{Kit, Pan, Shelf, Stock, share};

/// Rows are only ever added to tests/reference/links_v1.csv, never changed.
#[test]
fn links_of_version_1_are_read() {
    for row in table("links_v1.csv") {
        let pans = row.text("pans").split_whitespace().map(pan).collect();
        let stock = Stock::ALL[row.number("stock") as usize];
        let kit = Kit::new(row.text("title"), row.number("capacity") as usize, stock, pans).unwrap();
        let text = row.text("text");
        assert_eq!(share::decode(text, Shelf::built_in()).as_ref(), Ok(&kit), "{text}");
        assert_eq!(share::encode(&kit), text, "one kit has one text");
    }
}

/// `7` is a whole pan of paint 7, `7+8` a split one.
fn pan(text: &str) -> Pan {
    let number = |text: &str| text.parse().expect("a paint's number");
    match text.split_once('+') {
        Some((left, right)) => Pan::Split(number(left), number(right)),
        None => Pan::Whole(number(text)),
    }
}
