use super::*;
use proptest::prelude::*;

fn read(text: &str) -> Vec<Result<Vec<String>, String>> {
    Rows::new(text, b',')
        .map(|row| match row {
            Ok(row) => Ok(row.cells.iter().map(|cell| cell.to_string()).collect()),
            Err(fault) => Err(fault.to_string()),
        })
        .collect()
}

#[test]
fn a_broken_row_costs_its_line_alone() {
    let rows = read("a,b\n\"open,1\nc,d\n\"x\"y,1\r\n\re,\"f\n\"\"g\"\"\"\nh,i");
    let cells = |cells: [&str; 2]| Ok(cells.map(str::to_owned).to_vec());
    assert_eq!(
        rows,
        [
            cells(["a", "b"]),
            Err("line 2: text behind a closing quotation mark".into()),
            cells(["c", "d"]),
            Err("line 4: text behind a closing quotation mark".into()),
            cells(["e", "f\n\"g\""]),
            cells(["h", "i"]),
        ]
    );
    assert_eq!(
        read("\"open\nb")[..],
        [
            Err("line 1: a quotation mark that is not closed within 4000 bytes".into()),
            Ok(vec!["b".to_owned()])
        ]
    );
}

#[test]
fn numbers_may_have_exponents() {
    for (text, value) in [("1.25e-1", 0.125), ("+3", 3.0), ("-2.5E+2", -250.0)] {
        assert_eq!(number(text), Some(value));
    }
    for text in ["", "e5", "1e", "1e99", "1e0.5", "NaN", "inf", "1,5"] {
        assert_eq!(number(text), None, "{text}");
    }
}

#[test]
fn no_line_of_a_hostile_text_begins_two_rows() {
    let full = |piece: &str| piece.repeat(LONGEST_TABLE / piece.len());
    for piece in
        ["\"", "\"\"", "\"\n", "\"\",\n", "\"a\n\"\"b\n", "\"\n\",", ",", "\r", "a\"\n", "\"\"\"\n\"\"\"\","]
    {
        let text = full(piece);
        let (mut rows, mut read) = (Rows::new(&text, b','), 0);
        while let Some(row) = rows.next() {
            read += 1;
            if row.is_ok() {
                rows.reread();
            }
        }
        assert!(read <= line_ends(&text) + 1, "{piece}: {read} rows");
    }
}

proptest! {
    /// The `csv` crate is the reference.
    #[test]
    fn what_a_library_writes_is_read(table in proptest::collection::vec(proptest::collection::vec("[a-z\",\n ;]{1,6}", 3), 1..6)) {
        let mut writer = csv::Writer::from_writer(Vec::new());
        for row in &table {
            writer.write_record(row).unwrap();
        }
        let text = String::from_utf8(writer.into_inner().unwrap()).unwrap();
        let found = read(&text);
        let kept: Vec<_> = table.into_iter().filter(|row| row.iter().any(|cell| !cell.trim().is_empty())).map(Ok).collect();
        prop_assert_eq!(found, kept);
    }

    #[test]
    fn no_text_is_a_panic(text in "[a\",;\t\r\n\u{feff}é]{0,60}") {
        for separator in [b',', b';', b'\t'] {
            prop_assert!(Rows::new(&text, separator).count() <= text.len());
        }
    }
}
