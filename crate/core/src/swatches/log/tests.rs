use super::*;
use crate::mixing::recipe::Recipe;
use crate::optics::spectrum::from_fn;
use crate::paint::Paint;
use crate::paint::number::PaintNumber;
use crate::text::rows::LONGEST_TABLE;
use proptest::prelude::*;

fn read(text: &str) -> LogRead {
    read_log(text, Shelf::built_in(), None).unwrap_or_else(|error| panic!("{error}: {text}"))
}

fn faults(read: &LogRead) -> Vec<String> {
    read.faults.iter().map(ToString::to_string).collect()
}

fn row(recipe: &str, load: &str, paper: &str) -> String {
    format!("recipe,load,l,a,b,paper\n\"{recipe}\",{load},50,0,0,{paper}\n")
}

#[test]
fn tables_of_spreadsheets_are_read() {
    let wanted = read(
        "date,recipe,load,L,a,b,paper,note\n2024-10-05,2 pb29 + 1 pbr7-burnt-sienna,1/4,52.5,4,-18,cream,\"tide, \"\"low\"\"\"\n",
    );
    assert_eq!((wanted.records.len(), faults(&wanted)), (1, vec![]));
    let text = "\u{feff}Note;extra;b*;a*;L*;Paper;Load;Recipe;DATE\r\n\r\n\"tide, \"\"low\"\"\";x;-18;4,0;52,5;Cream;0,25;PB29 + 2 PBr7-burnt-sienna + 3 pb29;2024-10-05\r\n;;;;;;;;\r\n";
    assert_eq!(read(text).records, wanted.records);
    let broken = read("recipe,load,L,a,b,note\n1 pb29,medium wash,50,0,0,\"two\nlines\"\n");
    assert_eq!(broken.records[0].note(), "two lines");
}

#[test]
fn loads_and_papers_have_names() {
    for (text, load) in [
        ("masstone", 1.0),
        ("Strong", 0.5),
        ("medium wash", 0.25),
        ("light", 0.125),
        ("pale wash", 0.0625),
        ("1/32", 1.0 / 32.0),
        ("3 / 2", 1.5),
        ("4", 4.0),
        ("2.5e-1", 0.25),
    ] {
        assert_eq!(read(&row("pb29", text, "")).records[0].load(), load, "{text}");
    }
    for stock in Stock::ALL {
        assert_eq!(read(&row("pb29", "1", stock.name())).records[0].paper(), KitPaper::Stock(stock));
    }
    let own = KitPaper::Own(OwnPaper::new(Lab::new(93.0, 0.0, 9.0)).unwrap());
    assert_eq!(read(&row("pb29", "1", "lab(93 0 9)")).records[0].paper(), own);
}

#[test]
fn bad_rows_are_named_and_left_out() {
    let text = "recipe,load,L,a,b,paper,date,note\n\
        1 pb29,1,50,0,0,,,good\n\
        1 pb999,1,50,0,0,,,\n\
        ,1,50,0,0,,,\n\
        1 pb29,thick,50,0,0,,,\n\
        1 pb29,0,50,0,0,,,\n\
        1 pb29,1/0,50,0,0,,,\n\
        1 pb29,1,,0,0,,,\n\
        1 pb29,1,50,x,0,,,\n\
        1 pb29,1,500,0,0,,,\n\
        1 pb29,1,50,0,0,kraft,,\n\
        1 pb29,1,50,0,0,,5.13.2024,\n\
        99999 pb29,1,50,0,0,,,\n\
        1 'pb29,1,50,0,0,,,\n\
        1 'pb29' py150,1,50,0,0,,,\n\
        1 pb29,1,50,0,0,,,\"open\n\
        1 pb29,1,50,0,0,,,last\n\
        \"1 \n#60000\",1,50,0,0,,,\n";
    let found = read(text);
    let notes: Vec<&str> = found.records.iter().map(Record::note).collect();
    assert_eq!(notes, ["good", "last"]);
    assert_eq!(
        faults(&found),
        [
            "line 3: no paint \"pb999\" on the shelf",
            "line 4: no recipe",
            "line 5: load \"thick\" is not a number, fraction or wash",
            "line 6: load 0: a record's is within 1/32 and 4",
            "line 7: load over 1000000000: a record's is within 1/32 and 4",
            "line 8: no L",
            "line 9: a is \"x\", not a number",
            "line 10: L* is 500, not between 0 and 100",
            "line 11: paper \"kraft\" is not bright white, natural white, cream, grey, tan, nor a colour such as lab(93 0 9)",
            "line 12: date \"5.13.2024\": a day is written yyyy-mm-dd",
            "line 13: 99999 parts: too many",
            "line 14: a paint's ' is not closed in the recipe",
            "line 15: \"py150\" in a recipe: paints stand between +",
            "line 16: text behind a closing quotation mark",
            "line 18: no paint \"number 60000\" on the shelf",
            "line 19: no paint \"#60000\"\" on the shelf",
        ]
    );
}

#[test]
fn a_swallowed_row_is_read_after_all() {
    let text = "note,recipe,load,L,a,b\n\"open,1 pb29,1,50,0,0\nlost,1 pb29,1,50,0,0\n\",1 pb999,1,50,0,0\n";
    let found = read(text);
    assert_eq!(found.records.iter().map(Record::note).collect::<Vec<_>>(), ["lost"]);
    assert_eq!(faults(&found)[0], "line 2: no paint \"pb999\" on the shelf");
}

#[test]
fn half_a_spectrum_is_none() {
    let header: Vec<String> = (0..BANDS).map(band_name).collect();
    let text = format!(
        "recipe,load,{}\npb29,1,{}\npb29,1,0.5\npb29,1\n",
        header.join(","),
        ["0.5"; BANDS].join(",")
    );
    let found = read(&text);
    assert_eq!(found.records[0].seen(), &Seen::Spectrum(Box::new([0.5; BANDS])));
    assert_eq!(faults(&found), ["line 3: no r390", "line 4: no L"]);
}

#[test]
fn files_that_are_no_log_are_refused_in_words() {
    let refusal = |text: &str| read_log(text, Shelf::built_in(), None).unwrap_err().to_string();
    for text in ["", "recipe,load\n", "a;b\n1;2\n", "BEGIN_DATA"] {
        assert!(refusal(text).starts_with("the table: no header with the columns recipe"), "{text}");
    }
    assert_eq!(refusal(&"x".repeat(LONGEST_TABLE + 1)), "the table: longer than 2000000 bytes");
}

#[test]
fn hostile_logs_end_soon() {
    for piece in ["pb29,1,50,0,0\n", "x\n", "\"\n", "\"a\n\"\"b\n", "\"a\n\",\"", "1 pb29 + ", "'", ",,,,x\n"]
    {
        let text = format!("recipe,load,L,a,b\n{}", piece.repeat(LONGEST_TABLE / piece.len() - 30));
        let found = read(&text);
        assert!(found.records.len() <= MOST_RECORDS && found.faults.len() <= 501, "{piece}");
    }
}

/// The built-in shelf's paints and some of a painter's own names.
fn own_shelf() -> Shelf {
    let names =
        ["own:Moss green", "own:Bob's + \"blue\"", "own:", "own:1/2; 'x', y", "own:grün\u{a0}+", "own:''"];
    let built_in = Shelf::built_in().paints()[..4].to_vec();
    let model = built_in[0].clone();
    let own = names.iter().enumerate().map(|(i, name)| Paint {
        number: PaintNumber::new(40_000 + i as u16),
        key: (*name).to_owned(),
        ..model.clone()
    });
    Shelf::of(built_in.iter().cloned().chain(own)).unwrap()
}

fn seen() -> impl Strategy<Value = Seen> {
    prop_oneof![
        (0.0..100.0, -150.0..150.0, -150.0..150.0).prop_map(|(l, a, b)| Seen::Lab(Lab::new(l, a, b))),
        proptest::collection::vec(0.0..1.2, BANDS)
            .prop_map(|values| Seen::Spectrum(Box::new(from_fn(|band| values[band])))),
    ]
}

fn record() -> impl Strategy<Value = Record> {
    let paint = prop_oneof![1u16..=4, 40_000u16..=40_005];
    let paper = prop_oneof![
        (0..Stock::ALL.len()).prop_map(|i| KitPaper::Stock(Stock::ALL[i])),
        (60f32..95.0, -4f32..4.0, 0f32..15.0)
            .prop_map(|(l, a, b)| { KitPaper::Own(OwnPaper::new(Lab::new(l, a, b)).unwrap()) }),
    ];
    let date = prop_oneof![
        Just(String::new()),
        (1900u16..2100, 1u8..13, 1u8..29).prop_map(|(y, m, d)| format!("{y}-{m:02}-{d:02}"))
    ];
    (
        proptest::collection::vec((paint, 1u16..1000), 1..6),
        -5f32..2.0,
        seen(),
        paper,
        date,
        "['=+@\\-]{0,3}[a-z ,;\"'\t\né=+]{0,30}",
    )
        .prop_map(|(parts, octaves, seen, paper, date, note)| {
            Record::new(Recipe::of_numbers(&parts), octaves.exp2(), seen, paper)
                .unwrap()
                .with_date(&date)
                .unwrap()
                .with_note(&note)
                .unwrap()
        })
}

/// Days of a log with these dates, and what is unsure; the faults go along.
fn days(dates: &[&str], order: Option<DayOrder>) -> (Vec<String>, Option<UnsureDate>, Vec<String>) {
    let rows: String = dates.iter().map(|date| format!("{date};1 pb29;1;40;0;0\n")).collect();
    let found = read_log(&format!("date;recipe;load;L;a;b\n{rows}"), Shelf::built_in(), order).unwrap();
    let days = found.records.iter().map(|record| record.date().to_owned()).collect();
    (days, found.unsure, found.faults.iter().map(ToString::to_string).collect())
}

#[test]
fn one_date_tells_the_order_of_all() {
    assert_eq!(
        days(&["4/10/2024", "13/10/2024"], None),
        (vec!["2024-10-04".into(), "2024-10-13".into()], None, vec![])
    );
    assert_eq!(
        days(&["4/10/2024", "10/13/2024"], None),
        (vec!["2024-04-10".into(), "2024-10-13".into()], None, vec![])
    );
    // What the file tells goes before what somebody said.
    assert_eq!(days(&["4/10/2024", "13/10/2024"], Some(DayOrder::MonthFirst)).0[0], "2024-10-04");
}

#[test]
fn where_no_date_tells_the_order_it_is_asked_for() {
    let dates = ["05.11.2024", "4/10/2024", "2024-10-05 00:00:00", "6/10/2024"];
    let (found, unsure, faults) = days(&dates, None);
    assert_eq!(
        (found.as_slice(), faults),
        (["2024-11-05", "", "2024-10-05", ""].map(String::from).as_slice(), vec![])
    );
    let unsure = unsure.unwrap();
    assert_eq!(
        [unsure.written, unsure.day_first, unsure.month_first],
        ["4/10/2024", "2024-10-04", "2024-04-10"]
    );
    for (order, wanted) in [
        (DayOrder::DayFirst, ["2024-11-05", "2024-10-04", "2024-10-05", "2024-10-06"]),
        (DayOrder::MonthFirst, ["2024-11-05", "2024-04-10", "2024-10-05", "2024-06-10"]),
    ] {
        assert_eq!(days(&dates, Some(order)), (wanted.map(String::from).to_vec(), None, vec![]));
    }
    // A file that tells both ways tells nothing.
    assert!(days(&["13/10/2024", "10/13/2024", "4/10/2024"], None).1.is_some());
}

#[test]
fn pigments_that_several_paints_have_are_told_apart() {
    let refused = |recipe: &str| {
        let found = read(&format!("recipe;load;L;a;b\n{recipe};1;40;0;0\n"));
        found.faults.iter().map(ToString::to_string).collect::<Vec<_>>()
    };
    assert_eq!(
        refused("2 PBr7 + 1 pb29"),
        [
            "line 2: \"PBr7\" may be any of pbr7-burnt-sienna, pbr7-raw-sienna, pbr7-raw-umber, pbr7-burnt-umber: name one"
        ]
    );
    assert_eq!(refused("PB15:3"), ["line 2: \"PB15:3\" may be any of pb15-3, pb15-3-middle: name one"]);
    assert_eq!(refused("pb15-3"), [""; 0], "a key is one paint's");
    for one in ["PB15:1", "pb 15:1", "Burnt sienna", "burnt SIENNA"] {
        assert_eq!(refused(one), [""; 0], "{one}");
    }
    assert_eq!(refused("PB999"), ["line 2: no paint \"PB999\" on the shelf"]);
    assert_eq!(refused("!!"), ["line 2: no paint \"!!\" on the shelf"]);
}

proptest! {
    #[test]
    fn what_is_written_is_read(records in proptest::collection::vec(record(), 0..8)) {
        let shelf = own_shelf();
        let text = write_log(&records, &shelf);
        let found = read_log(&text, &shelf, None).unwrap();
        prop_assert_eq!(&found.faults, &[], "{}", text);
        prop_assert_eq!(found.records.len(), records.len());
        for (found, record) in found.records.iter().zip(&records) {
            prop_assert_eq!(found.recipe(), record.recipe());
            prop_assert_eq!((found.paper(), found.date(), found.note()), (record.paper(), record.date(), record.note()));
            prop_assert!((found.load() - record.load()).abs() <= 0.5e-4 + 1e-6);
            match (found.seen(), record.seen()) {
                (Seen::Spectrum(found), Seen::Spectrum(record)) => {
                    prop_assert!(found.iter().zip(record.iter()).all(|(a, b)| (a - b).abs() <= 0.5e-4 + 1e-6));
                }
                (Seen::Lab(found), Seen::Lab(record)) => {
                    let far = [found.l - record.l, found.a - record.a, found.b - record.b];
                    prop_assert!(far.iter().all(|far| far.abs() <= 0.5e-4 + 1e-5), "{:?}", far);
                }
                other => prop_assert!(false, "{:?}", other),
            }
        }
        // What was read is written as it was.
        if found.records.iter().all(|record| matches!(record.seen(), Seen::Lab(_))) {
            prop_assert_eq!(write_log(&found.records, &shelf), text);
        }
    }

    #[test]
    fn no_cell_begins_a_formula(records in proptest::collection::vec(record(), 1..4)) {
        let text = write_log(&records, &own_shelf());
        for row in Rows::new(&text, b',').map(Result::unwrap) {
            for cell in row.cells.iter().filter(|cell| crate::text::rows::number(cell).is_none()) {
                prop_assert!(!cell.starts_with(['=', '+', '-', '@', '\t', '\r']), "{}", cell);
            }
        }
    }

    #[test]
    fn no_text_is_a_panic(text in "\\PC{0,200}") {
        let _ = read_log(&text, Shelf::built_in(), None);
        let _ = read_log(&format!("recipe,load,L,a,b,paper,date,note\n{text}"), Shelf::built_in(), None);
        let _ = recipe::read(&text, Shelf::built_in());
    }

    #[test]
    fn no_text_made_of_our_signs_is_a_panic(words in proptest::collection::vec("pb29|own:|#1|[0-9]{1,6}|1/|lab\\(|[ '\"+,;\n\te.-]", 0..60)) {
        let _ = read_log(&format!("recipe,load,L,a,b,paper,date,note\n{}", words.concat()), Shelf::built_in(), None);
        let _ = recipe::read(&words.concat(), Shelf::built_in());
    }
}
