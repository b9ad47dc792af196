//! The derived shelf against the handbook's measured watercolours.
//!
//! Colours, tint hues and ratings: B. MacEvoy, handprint.com/HP/WCL, averages
//! over makers, 1998 to 2008 (`data/handbook.csv`).

use std::sync::LazyLock;

use washpath_core::Lab;
use washpath_library::{Anchored, derive, shelf_csv};

static PAINTS: LazyLock<Vec<Anchored>> = LazyLock::new(|| derive().unwrap());
static TABLE: LazyLock<String> = LazyLock::new(|| shelf_csv().unwrap());

/// A row of the table by column name.
fn cell(record: &csv::StringRecord, header: &csv::StringRecord, column: &str) -> String {
    record[header.iter().position(|name| name == column).unwrap()].to_owned()
}

fn rows(mut each: impl FnMut(&dyn Fn(&str) -> String)) {
    let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_reader(TABLE.as_bytes());
    let header = reader.headers().unwrap().clone();
    for record in reader.records() {
        let record = record.unwrap();
        each(&|column| cell(&record, &header, column));
    }
}

fn median(mut values: Vec<f64>) -> f64 {
    values.sort_by(f64::total_cmp);
    values[values.len() / 2]
}

#[test]
fn report() {
    for p in PAINTS.iter() {
        let [d, s, g, t1, t2] = p.correction;
        let (k, sc): (Vec<f64>, Vec<f64>) = (0..36).map(|b| p.film_at(b)).unzip();
        println!(
            "{:24} {:20} dE {:.2} misfit {:5.1} d {:.2} s {:.2} g {:+.2} t {:+.2} {:+.2} maxK {:.1} S {:.2} CR {:.2} tint {:.0} want {:?}",
            p.key, p.sample, p.difference, p.misfit, d.exp(), s.exp(), g, t1, t2,
            k.iter().fold(0.0f64, |a, b| a.max(*b)), median(sc), p.contrast_ratio, p.tint_hue, p.wanted_tint_hue
        );
    }
    println!("median {:.2}", median(PAINTS.iter().map(|p| p.difference).collect()));
}
